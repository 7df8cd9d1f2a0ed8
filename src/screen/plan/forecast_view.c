/*
 * forecast_view.c - before the day: this fruit, these products > juice, batches,
 * jars, lids, loads; and how much fruit that many jars take.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/fault.h"
#include "base/text.h"
#include "kitchen/board/book.h"
#include "kitchen/plan/plan.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/shelf.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/list.h"
#include "screen/ui/paragraph.h"

/* The forecast, kept while the board is open. */
#define FORECAST_RECIPES_MAX 64
struct forecast_card {
	struct list_state list;
	char fruit[NAME_MAX_BYTES];
	int64_t fruit_mg;
	bool juice_in_stock;
	int in_pot; /* batches cooked in one pot at most; 0: one */
	struct {
		char recipe[NAME_MAX_BYTES];
		bool chosen;
		int batches; /* 0: as many as there is fruit for */
		int jar;     /* index among the sizes; -1: the usual one */
	} choice[FORECAST_RECIPES_MAX];
	size_t choices; /* recipes that are made of the fruit */
	bool known;
	struct ahead ahead;
	char refusal[FAULT_SENTENCE_MAX]; /* why it is not known */
};

static const struct view_state forecast_state = { sizeof(struct forecast_card), NULL };

static struct forecast_card *forecast_card(const struct desk *desk)
{
	return desk_state(desk, VIEW_FORECAST);
}

const char *forecast_fruit(const struct desk *desk)
{
	return forecast_card(desk)->fruit;
}

const struct ahead *forecast_ahead(const struct desk *desk)
{
	return &forecast_card(desk)->ahead;
}

#define DETAIL_ROWS 4

/* NULL: it has been retired meanwhile. */
static const struct recipe *recipe_at(const struct desk *desk, int n)
{
	return kitchen_recipe_named(desk->kitchen, forecast_card(desk)->choice[n].recipe);
}

static const struct jar_size *jar_at(const struct desk *desk, int n)
{
	int jar = forecast_card(desk)->choice[n].jar;

	if (jar >= 0 || recipe_at(desk, n) == NULL)
		return &jar_sizes[jar < 0 ? 0 : jar];
	return usual_jar(recipe_at(desk, n));
}

/* --- working it out -------------------------------------------------------------------- */

static void take_wishes(const struct desk *desk, struct wishes *wishes)
{
	const struct forecast_card *card = forecast_card(desk);

	memset(wishes, 0, sizeof(*wishes));
	text_copy(wishes->fruit, sizeof(wishes->fruit), card->fruit);
	wishes->fruit_mg = card->fruit_mg;
	wishes->juice_in_stock = card->juice_in_stock;
	wishes->in_pot = card->in_pot;
	for (size_t i = 0; i < card->choices && wishes->count < FORECAST_PRODUCTS_MAX; i++) {
		struct wish *wish = &wishes->wish[wishes->count];

		if (!card->choice[i].chosen)
			continue;
		text_copy(wish->recipe, sizeof(wish->recipe), card->choice[i].recipe);
		text_copy(wish->jar, sizeof(wish->jar), jar_at(desk, (int)i)->name);
		wish->batches = card->choice[i].batches;
		wishes->count++;
	}
}

/* Some of it will come, or there is juice of it already. */
static bool has_fruit(const struct forecast_card *card)
{
	return card->fruit_mg > 0 || card->juice_in_stock;
}

static void work_out(struct desk *desk)
{
	struct forecast_card *card = forecast_card(desk);
	struct fault fault = { 0 };
	struct wishes wishes;

	take_wishes(desk, &wishes);
	card->refusal[0] = '\0';
	card->known = false;
	if (!has_fruit(card)) /* asked just now: nothing follows from it yet */
		return;
	card->known = wishes.count > 0 && kitchen_look_ahead(desk->kitchen, &wishes, &card->ahead, &fault);
	if (!card->known && wishes.count > 0)
		text_copy(card->refusal, sizeof(card->refusal), fault.sentence);
}

/* Which line of the forecast the n-th recipe is; -1: it is not chosen. */
static int line_of(const struct desk *desk, int n)
{
	int line = 0;

	if (!forecast_card(desk)->known || !forecast_card(desk)->choice[n].chosen)
		return -1;
	for (int i = 0; i < n; i++)
		line += forecast_card(desk)->choice[i].chosen;
	return line;
}

/* --- the questions ------------------------------------------------------------------------- */

/* The most batches that any of the recipes that are chosen may have in one pot here. */
static int most_in_pot(const struct desk *desk)
{
	int most = 1;

	for (size_t i = 0; i < forecast_card(desk)->choices; i++) {
		const struct recipe *recipe = forecast_card(desk)->choice[i].chosen ? recipe_at(desk, (int)i) : NULL;
		int of_this = recipe == NULL ? 1 : kitchen_batches_in_pot(desk->kitchen, recipe);

		most = of_this > most ? of_this : most;
	}
	return most < IN_POT_MAX ? most : IN_POT_MAX;
}

static bool in_pot_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int64_t batches = 1;
	int most = most_in_pot(desk);

	if (text[strspn(text, " ")] != '\0' && !amount_read(text, MEASURE_EACH, SUPPLY_OTHER, &batches, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (batches < 1 || batches > most) {
		desk_say(desk, ROLE_CAUTION, "Recipes and pots here allow 1 to %d batches in one pot.", most);
		return false;
	}
	forecast_card(desk)->in_pot = (int)batches;
	desk->message[0] = '\0';
	work_out(desk);
	return true;
}

static void ask_in_pot(struct desk *desk)
{
	char prompt[80];

	(void)snprintf(prompt, sizeof(prompt), "Batches a pot, 1 to %d:", most_in_pot(desk));
	desk_ask(desk, prompt, "", in_pot_typed);
}

static bool may_multiply(const struct desk *desk)
{
	return most_in_pot(desk) > 1;
}

static int chosen_count(const struct desk *desk)
{
	int chosen = 0;

	for (size_t i = 0; i < forecast_card(desk)->choices; i++)
		chosen += forecast_card(desk)->choice[i].chosen;
	return chosen;
}

/* Is it the recipes that allow no second batch in a pot, and not the pots? */
static bool recipes_are_single(const struct desk *desk)
{
	for (size_t i = 0; i < forecast_card(desk)->choices; i++)
		if (forecast_card(desk)->choice[i].chosen && recipe_at(desk, (int)i) != NULL &&
		    multiple_allowed(recipe_at(desk, (int)i)) > 1)
			return false;
	return true;
}

static const char *why_not_multiplied(const struct desk *desk)
{
	if (recipes_are_single(desk))
		return chosen_count(desk) > 1 ? "One batch a pot: none of these recipes is multiplied."
		                              : "One batch a pot: this recipe is not multiplied.";
	return "One batch a pot: no pot here holds two.";
}

static bool weight_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (!kitchen_read_amount(desk->kitchen, text, SUPPLY_FRUIT, "", &forecast_card(desk)->fruit_mg, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk->message[0] = '\0';
	forecast_card(desk)->in_pot = 0;
	work_out(desk);
	if (!may_multiply(desk))
		return true;
	ask_in_pot(desk);
	return false; /* the line stays open for the pots */
}

static void ask_weight(struct desk *desk)
{
	desk_ask(desk, "How much of it, 60 lb or 27 kg:", "", weight_typed);
}

static bool fruit_typed(struct desk *desk, const char *text)
{
	struct forecast_card *card = forecast_card(desk);
	const struct recipe *recipe;
	size_t count = 0;

	if (text[strspn(text, " ")] == '\0' || kitchen_makes(desk->kitchen, text, 0) == NULL) {
		desk_say(desk, ROLE_CAUTION, "No recipe here is made from \"%s\".", text);
		return false;
	}
	memset(card->choice, 0, sizeof(card->choice));
	for (; count < FORECAST_RECIPES_MAX && (recipe = kitchen_makes(desk->kitchen, text, count)) != NULL; count++) {
		text_copy(card->choice[count].recipe, sizeof(card->choice[count].recipe), recipe->name);
		card->choice[count].chosen = count == 0;
		card->choice[count].jar = -1;
	}
	text_copy(card->fruit, sizeof(card->fruit), text);
	card->fruit_mg = 0;
	card->choices = count;
	card->list = (struct list_state){ 0 };
	desk->message[0] = '\0';
	ask_weight(desk);
	return false; /* the line stays open for the weight */
}

static void back(struct desk *desk)
{
	if (desk->home == VIEW_BOARD)
		desk_open(desk, VIEW_SUPPLIES);
	else
		desk_show_home(desk);
}

/* Without a fruit there is nothing to look at here: Esc goes back at once. */
static void ask_fruit(struct desk *desk)
{
	desk_offer(desk, "Which fruit:", forecast_card(desk)->fruit, fruit_typed);
	if (forecast_card(desk)->choices == 0)
		desk->entry.leave = back;
}

static void enter(struct desk *desk, const struct opening *opening)
{
	(void)opening;
	desk_show_view(desk, VIEW_FORECAST);
	if (forecast_card(desk)->choices == 0)
		ask_fruit(desk);
}

static bool want_typed(struct desk *desk, const char *text)
{
	enum unit_system units = kitchen_board(desk->kitchen)->house.units;
	int n = forecast_card(desk)->list.cursor;
	struct fault fault = { 0 };
	struct wishes wishes;
	struct ahead ahead;
	char fruit[BOUND_COUNT][64];
	int64_t jars;

	take_wishes(desk, &wishes);
	wishes.count = 1;
	text_copy(wishes.wish[0].recipe, sizeof(wishes.wish[0].recipe), forecast_card(desk)->choice[n].recipe);
	text_copy(wishes.wish[0].jar, sizeof(wishes.wish[0].jar), jar_at(desk, n)->name);
	if (!amount_read(text, MEASURE_EACH, SUPPLY_JAR, &jars, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	wishes.jars = (int)jars;
	if (jars < 1 || !kitchen_look_ahead(desk->kitchen, &wishes, &ahead, &fault)) {
		desk_say(desk, ROLE_CAUTION, "%s", jars < 1 ? "Say how many jars." : fault.sentence);
		return false;
	}
	for (int bound = 0; bound < BOUND_COUNT; bound++)
		amount_words(MEASURE_MASS, ahead.need.fruit_mg[bound], units, fruit[bound], sizeof(fruit[0]));
	desk_say(desk, ROLE_DONE, "%d %s: %s of %s, to be sure %s, at best %s.", ahead.jars,
	         jar_size_words(jar_at(desk, n)->name, ahead.jars), fruit[BOUND_LIKELY], forecast_card(desk)->fruit,
	         fruit[BOUND_HIGH], fruit[BOUND_LOW]);
	return true;
}

static void ask_want(struct desk *desk)
{
	char prompt[80];

	if (forecast_card(desk)->choices == 0)
		return;
	(void)snprintf(prompt, sizeof(prompt),
	               "How many %s of it:", jar_at(desk, forecast_card(desk)->list.cursor)->plural);
	desk_ask(desk, prompt, "", want_typed);
}

/* --- choosing -------------------------------------------------------------------------------- */

static bool has_recipes(const struct desk *desk)
{
	return forecast_card(desk)->choices > 0;
}

static void choose(struct desk *desk)
{
	struct forecast_card *card = forecast_card(desk);

	if (!card->choice[card->list.cursor].chosen && chosen_count(desk) == FORECAST_PRODUCTS_MAX) {
		desk_say(desk, ROLE_CAUTION, "At most %d products at a time.", FORECAST_PRODUCTS_MAX);
		return;
	}
	card->choice[card->list.cursor].chosen = !card->choice[card->list.cursor].chosen;
	work_out(desk);
}

static void next_jar(struct desk *desk)
{
	int n = forecast_card(desk)->list.cursor;
	int jar = jar_size_index(jar_at(desk, n));

	if (recipe_at(desk, n) == NULL)
		return;
	do
		jar = (jar + 1) % (int)jar_size_count;
	while (!recipe_allows_jar(recipe_at(desk, n), jar_sizes[jar].name));
	forecast_card(desk)->choice[n].jar = jar;
	work_out(desk);
}

/* So many of the recipe under the cursor there is fruit for. */
static int there_is_for(const struct desk *desk)
{
	int line = line_of(desk, forecast_card(desk)->list.cursor);

	return line < 0 ? 0 : forecast_card(desk)->ahead.forecast.lines[line].batches[BOUND_LIKELY];
}

/* From what stands there on: as many as are asked for, else as there is fruit for. */
static void set_batches(struct desk *desk, int by)
{
	struct forecast_card *card = forecast_card(desk);
	int *asked = &card->choice[card->list.cursor].batches;
	int wanted;

	if (!card->choice[card->list.cursor].chosen) {
		choose(desk);
		return;
	}
	if (!card->known) {
		desk_say(desk, ROLE_CAUTION, "%s",
		         has_fruit(card) ? card->refusal : "First say how much of it there will be: e.");
		return;
	}
	wanted = (*asked > 0 ? *asked : there_is_for(desk)) + by;
	if (wanted < 1) {
		desk_say(desk, ROLE_CAUTION, "One batch is the fewest: Space takes it out.");
		return;
	}
	*asked = wanted;
	work_out(desk);
	if (by < 0 || there_is_for(desk) >= wanted)
		return;
	*asked = 0;
	work_out(desk);
	desk_say(desk, ROLE_QUIET, "As many as there is fruit for: %s.",
	         count_words(there_is_for(desk), "batch").words);
}

static void more(struct desk *desk)
{
	set_batches(desk, 1);
}

static void fewer(struct desk *desk)
{
	set_batches(desk, -1);
}

static void with_stock(struct desk *desk)
{
	forecast_card(desk)->juice_in_stock = !forecast_card(desk)->juice_in_stock;
	work_out(desk);
}

/* The fruit as runs, the batches as forecast, into the day's plan. */
static bool arrival_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	struct wishes wishes;
	int arrives = PLAN_ANY_TIME;

	take_wishes(desk, &wishes);
	if ((text[0] != '\0' && !plan_time_read(text, &arrives, &fault)) ||
	    !kitchen_plan_from_wishes(desk->kitchen, &wishes, arrives, &fault)) {
		desk_say_fault(desk, &fault);
		return fault.kind != FAULT_MISUSE;
	}
	desk_open(desk, VIEW_PLAN);
	desk_say(desk, ROLE_DONE, "In the plan. g accepts it. (u undoes)");
	return true;
}

static void plan_it(struct desk *desk)
{
	desk_ask(desk, "Fruit arrives at (empty: it is here):", "", arrival_typed);
}

static bool is_known(const struct desk *desk)
{
	return forecast_card(desk)->known;
}

/* --- drawing ------------------------------------------------------------------------------------ */

/* "56 (48-100)", or "56" when there is nothing between.  Of several products that share the
 * fruit in turn one may get less of more fruit: the range holds what is likely all the same. */
static void range_words(const int values[BOUND_COUNT], char *buffer, size_t size)
{
	int likely = values[BOUND_LIKELY];
	int low = values[BOUND_LOW] < likely ? values[BOUND_LOW] : likely;
	int high = values[BOUND_HIGH] > likely ? values[BOUND_HIGH] : likely;

	if (low == high)
		(void)snprintf(buffer, size, "%d", likely);
	else
		(void)snprintf(buffer, size, "%d (%d-%d)", likely, low, high);
}

static void recipe_line(const struct desk *desk, struct list_line *at)
{
	int line = line_of(desk, at->n);
	char mark = forecast_card(desk)->choice[at->n].chosen ? 'x' : ' ';
	char batches[48] = "";
	char jars[48] = "";

	if (line >= 0) {
		range_words(forecast_card(desk)->ahead.forecast.lines[line].batches, batches, sizeof(batches));
		range_words(forecast_card(desk)->ahead.forecast.lines[line].jars, jars, sizeof(jars));
	}
	at->role = line >= 0 ? ROLE_PLAIN : ROLE_QUIET;
	if (desk_columns(desk) < NARROW)
		(void)snprintf(at->words, sizeof(at->words), "[%c] %-26.26s %.*s", mark,
		               forecast_card(desk)->choice[at->n].recipe, (int)strcspn(jars, " "), jars);
	else
		(void)snprintf(at->words, sizeof(at->words), "[%c] %-32.32s %-12s %s %s", mark,
		               forecast_card(desk)->choice[at->n].recipe, batches, jars, jar_at(desk, at->n)->plural);
}

static void sum_words(const struct desk *desk, bool narrow, struct text *text)
{
	const struct forecast_card *card = forecast_card(desk);
	const struct forecast *forecast = &card->ahead.forecast;
	enum unit_system units = kitchen_board(desk->kitchen)->house.units;
	char words[64];
	char jars[48];
	char loads[48];

	if (!has_fruit(card)) {
		text_add(text, "Type how much of it there will be; what it gives then stands here.");
		return;
	}
	if (!card->known) {
		text_add(text, "%s",
		         card->refusal[0] != '\0' ? card->refusal : "Choose with Space what to make from it.");
		return;
	}
	if (forecast->juice) {
		amount_words(MEASURE_VOLUME, forecast->juice_ul[BOUND_LIKELY], units, words, sizeof(words));
		text_add(text, "juice %s", words);
		amount_words(MEASURE_VOLUME, forecast->juice_ul[BOUND_LOW], units, words, sizeof(words));
		if (!narrow)
			text_add(text, " (%s", words);
		amount_words(MEASURE_VOLUME, forecast->juice_ul[BOUND_HIGH], units, words, sizeof(words));
		if (!narrow)
			text_add(text, " to %s)", words);
		text_add(text, "; ");
	}
	range_words(forecast->jars, jars, sizeof(jars));
	range_words(forecast->loads, loads, sizeof(loads));
	text_add(text, narrow ? "jars %s; full loads %s" : "jars and lids %s; canner loads %s if each is full", jars,
	         loads);
	if (card->ahead.trays.planned > 0)
		text_add(text, "; ");
	ahead_tray_words(&card->ahead, text);
}

/* What the line under the cursor says in full. */
static void line_words(const struct desk *desk, struct text *text)
{
	const struct forecast_card *card = forecast_card(desk);
	int line = line_of(desk, card->list.cursor);
	const struct forecast_product *product;
	char batches[48];
	char jars[48];
	char loads[48];

	if (line < 0) {
		text_add(text, card->choice[card->list.cursor].chosen ? "%s: chosen" : "%s: not chosen",
		         card->choice[card->list.cursor].recipe);
		return;
	}
	product = &card->ahead.order.products[line];
	range_words(card->ahead.forecast.lines[line].batches, batches, sizeof(batches));
	range_words(card->ahead.forecast.lines[line].jars, jars, sizeof(jars));
	range_words(card->ahead.forecast.lines[line].loads, loads, sizeof(loads));
	text_add(text, "%s: batches %s%s", product->recipe->name, batches,
	         product->batches == 0 ? "" : ", at most as asked");
	if (product->in_pot > 1)
		text_add(text, ", %d in a pot", product->in_pot);
	text_add(text, ", %s %s, ", product->jar->plural, jars);
	if (product->room > 0)
		text_add(text, desk_columns(desk) < NARROW ? "full loads %s of %d" : "full loads %s of %d in %s", loads,
		         product->room, card->ahead.canner[line]);
	else
		text_add(text, "no canner here takes it in these (j: others)");
}

/* Why pints and half-pints of the same fruit are no two halves: each pot is filled for itself. */
static void rounding_words(const struct desk *desk, struct text *text)
{
	int line = line_of(desk, forecast_card(desk)->list.cursor);
	const struct forecast_line *of = line < 0 ? NULL : &forecast_card(desk)->ahead.forecast.lines[line];

	if (of == NULL || of->batches[BOUND_HIGH] < 2)
		return;
	text_add(text,
	         " Each pot fills its own jars: a rest that fills no whole %s is none at the low end, one at "
	         "the high end.",
	         jar_size_words(forecast_card(desk)->ahead.order.products[line].jar->name, 1));
}

static void yield_words(const struct desk *desk, struct text *text)
{
	const struct juice_yield *yield = &forecast_card(desk)->ahead.order.yield;

	if (!forecast_card(desk)->known || !forecast_card(desk)->ahead.forecast.juice)
		return;
	text_add(text, "%.2f lb of fruit for a quart of juice (%.2f to %.2f), %s",
	         pounds_of_yield(yield->ul_per_kg[BOUND_LIKELY]), pounds_of_yield(yield->ul_per_kg[BOUND_HIGH]),
	         pounds_of_yield(yield->ul_per_kg[BOUND_LOW]),
	         yield->own ? "your own runs weighed in." : "as published.");
	rounding_words(desk, text);
	if (!kitchen_jars_juice(desk->kitchen, forecast_card(desk)->fruit))
		text_add(text, " No process is on file for its juice alone.");
}

static void head_words(const struct desk *desk, struct text *text)
{
	const struct forecast_card *card = forecast_card(desk);
	enum unit_system units = kitchen_board(desk->kitchen)->house.units;
	char words[64];

	amount_words(MEASURE_MASS, card->fruit_mg, units, words, sizeof(words));
	if (has_fruit(card))
		text_add(text, "%s of %s", words, card->fruit);
	else
		text_add(text, "%s", card->fruit);
	if (card->juice_in_stock) {
		amount_words(MEASURE_VOLUME, card->known ? card->ahead.order.juice_ul : 0, units, words, sizeof(words));
		text_add(text, " and %s of juice in stock", words);
	}
	if (card->known)
		ahead_spoken_words(&card->ahead, text);
}

static void draw(const struct desk *desk, int top, int rows)
{
	struct forecast_card *card = forecast_card(desk);
	char words[700];
	struct text text = TEXT_OVER(words);
	int count = (int)card->choices;
	struct list_area area;
	int window_rows;
	int detail;
	int cols;
	int row = top;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (count == 0) {
		terminal_put(desk->terminal, top, 1, cols - 2, ROLE_PLAIN, "Which fruit will there be?");
		return;
	}
	head_words(desk, &text);
	row += desk_paragraph(desk, row, 1, cols - 2, cols < NARROW ? 3 : 2, ROLE_STRONG, words);
	text = TEXT_OVER(words);
	sum_words(desk, cols < NARROW, &text);
	row +=
	    desk_paragraph(desk, row, 1, cols - 2, rows > 12 ? 3 : 2, card->known ? ROLE_STRONG : ROLE_CAUTION, words);
	detail = top + rows - row > 10 ? DETAIL_ROWS + 2 : cols < NARROW ? 3 : 2;
	if (cols >= NARROW)
		terminal_putf(desk->terminal, row++, 3, cols - 4, ROLE_QUIET, "    %-32s %-12s %s", "make this",
		              "batches", "jars: likely (from - to)");
	area = (struct list_area){
		.top = row, .rows = top + rows - row - detail, .left = 1, .count = count, .line = recipe_line
	};
	(void)list_draw(desk, &card->list, &area);
	row = top + rows - detail;
	text = TEXT_OVER(words);
	line_words(desk, &text);
	row += desk_paragraph(desk, row, 1, cols - 2, cols < NARROW ? 3 : 2, ROLE_STRONG, words);
	text = TEXT_OVER(words);
	yield_words(desk, &text);
	desk_sentences(words, cols - 2, top + rows - row, 0);
	desk_paragraph(desk, row, 1, cols - 2, top + rows - row, ROLE_QUIET, words);
}

void forecast_sources(const struct desk *desk, struct sources *page)
{
	const struct forecast_card *card = forecast_card(desk);
	char words[200];
	char how[700];
	struct text shown = TEXT_OVER(words);
	struct text text = TEXT_OVER(how);

	if (!card->known)
		return;
	yield_words(desk, &shown);
	juice_yield_how(&card->ahead.order.yield, &text);
	if (card->ahead.forecast.juice) {
		sources_add(page, &(struct source_of){ .source = card->ahead.order.yield.row->source, .how = how },
		            "%s", words);
		if (card->ahead.order.yield.own)
			sources_add(page, &(struct source_of){ .source = YIELD_MODEL_SOURCE },
			            "How own runs and what is published are weighed");
	}
	for (size_t i = 0; i < card->ahead.order.count; i++)
		sources_add_recipe(page, card->ahead.order.products[i].recipe);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)forecast_card(desk)->choices;
	return &forecast_card(desk)->list;
}

static void open_shortage(struct desk *desk)
{
	desk_open(desk, VIEW_SHORTAGE);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "choose", "Make this product from it, or not.", has_recipes, choose },
	{ 'b', 0, "b", "to buy", "What is missing for it, in the units you buy.", is_known, open_shortage },
	{ 'p', 0, "p", "plan it", "Into the day's plan: the fruit as baskets, the batches as forecast.", is_known,
	  plan_it },
	{ KEY_CODE_RIGHT, '+', "Right", "batches",
	  "One batch more, up to as many as there is fruit for; Left: one fewer.", has_recipes, more },
	{ KEY_CODE_LEFT, '-', "Left", NULL, "One batch fewer.", has_recipes, fewer },
	{ 'w', 0, "w", "want jars", "How much fruit do that many jars take?", has_recipes, ask_want },
	{ 'j', 0, "j", "jar", "The next jar size for this recipe.", has_recipes, next_jar },
	{ 'e', 0, "e", "fruit", "Another fruit, or another weight.", NULL, ask_fruit },
	{ 'v', 0, "v", "batches a pot", "How many batches are cooked in one pot.", may_multiply, ask_in_pot },
	{ 's', 0, "s", "juice in stock", "Use the juice in stock as well, or not.", has_recipes, with_stock },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the shelf, or to the first steps.", NULL, back },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

/* Keys that wait for a fruit, for its weight, for a product. */
static const char *why_not(struct desk *desk, const struct view_key *key)
{
	const struct forecast_card *card = forecast_card(desk);

	if (key->usable == NULL || key->usable(desk))
		return NULL;
	if (!has_recipes(desk))
		return "First say which fruit there will be: e.";
	if (chosen_count(desk) == 0)
		return "First choose with Space what to make from it.";
	if (key->usable == may_multiply)
		return why_not_multiplied(desk);
	return has_fruit(card) ? card->refusal : "First say how much of it there will be: e.";
}

const struct view forecast_view = {
	.title = "Forecast",
	.state = &forecast_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.look = work_out, /* an act of another terminal may have changed what is known */
	.draw = draw,
	.why_not = why_not,
	.sources = forecast_sources,
};
