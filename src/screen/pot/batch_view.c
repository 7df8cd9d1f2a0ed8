/*
 * batch_view.c - the batch card of a pot: recipe, pack, jar, how many batches;
 * then what to measure, what is short, where the jars will go, and one key.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "kitchen/board/book.h"
#include "kitchen/board/verbs.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/sheet.h"
#include "screen/plan/plan_views.h"
#include "screen/pot/pot_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/form.h"
#include "screen/ui/jar_questions.h"
#include "screen/ui/paragraph.h"
#include "screen/ui/recipe_choice.h"

enum { ASKS_RECIPE, ASKS_PACK, ASKS_JAR, ASKS_MULTIPLE, IS_READY };

struct batch_card {
	struct batch_order order;
	struct form form; /* its number: how many batches */
	struct batch_need need;
	bool need_known;
	struct list_state need_list; /* cursor: first line shown; top: how many are */
	struct fault refusal;        /* why there is no need */
	bool sure;                   /* asked already: nowhere to go */
};

static const struct view_state card_state = { sizeof(struct batch_card), NULL };

static struct batch_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_BATCH);
}

static bool is_from(const struct desk *desk, int question)
{
	return card_of(desk)->form.at >= (size_t)question;
}

static const struct recipe *chosen(const struct desk *desk)
{
	return kitchen_recipe_named(desk->kitchen, card_of(desk)->order.recipe);
}

/* --- what can be chosen ------------------------------------------------------------ */

static const char *pack_at(const struct desk *desk, int n)
{
	return recipe_pack_says(chosen(desk), n);
}

static const char *jar_at(const struct desk *desk, int n)
{
	return recipe_jar_says(chosen(desk), card_of(desk)->order.pack, n);
}

/* Jellies and what is filled like them go into boiling water, in one canner or the other. */
static const char *pack_caution(const struct desk *desk, int n)
{
	char word[WORD_MAX_BYTES];

	if (!recipe_pack(chosen(desk), n, word, sizeof(word)))
		return NULL;
	return jars_pack_caution(desk, chosen(desk)->food, word, METHOD_BOILING_WATER);
}

/* As on the load card: not the pack with the shorter process. */
static int pack_offered(const struct desk *desk)
{
	return recipe_pack_offered(chosen(desk));
}

/* --- the lines of what it needs --------------------------------------------------------- */

enum need_item { NEED_SWAP, NEED_CAUTION, NEED_ITEMS };

/* What goes in, what is done ahead, and what is to be known of it. */
static int need_count(const struct desk *desk)
{
	const struct recipe_step *steps;

	if (!card_of(desk)->need_known)
		return 0;
	return (int)card_of(desk)->need.scaled.count + (int)recipe_steps_of(chosen(desk), &steps) + NEED_ITEMS;
}

/* --- answers ----------------------------------------------------------------------------- */

static void look(struct desk *desk)
{
	struct batch_card *card = card_of(desk);
	int multiple = card->form.number.value < 1 ? 1 : card->form.number.value;

	if (multiple != card->order.multiple)
		card->order.reason[0] = '\0'; /* it was given for that number */
	card->order.multiple = multiple;
	memset(&card->refusal, 0, sizeof(card->refusal));
	card->need_list = (struct list_state){ 0 };
	card->need_known = kitchen_batch_need(desk->kitchen, &card->order, &card->need, &card->refusal);
	card->sure = false;
}

static bool take_recipe(struct desk *desk, int n)
{
	const struct recipe *recipe = kitchen_recipe(desk->kitchen, (size_t)n);
	struct batch_order *order = &card_of(desk)->order;
	struct fault fault = { 0 };

	if (!recipe_may_start(recipe, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (strcmp(order->recipe, recipe->name) != 0)
		card_of(desk)->form.number.value = 1;
	text_copy(order->recipe, sizeof(order->recipe), recipe->name);
	order->acid = ACID_NOT_SAID;
	if (recipe_awaits_sheet(recipe)) {
		picker_reset(&card_of(desk)->form.picker); /* left without it, another is chosen */
		desk_enter(desk, ENTRY_SHEET, 0);
	}
	return !recipe_awaits_sheet(recipe);
}

static bool take_pack(struct desk *desk, int n)
{
	struct batch_order *order = &card_of(desk)->order;

	return recipe_pack(chosen(desk), n, order->pack, sizeof(order->pack));
}

static bool take_jar(struct desk *desk, int n)
{
	struct batch_order *order = &card_of(desk)->order;

	return recipe_jar(chosen(desk), order->pack, n, order->jar, sizeof(order->jar));
}

static bool of_sheet(const struct desk *desk)
{
	return is_from(desk, ASKS_PACK) && recipe_has_sheet(card_of(desk)->order.recipe);
}

static void change_sheet(struct desk *desk)
{
	desk_enter(desk, ENTRY_SHEET, 0);
}

static bool reason_typed(struct desk *desk, const char *text);

/* Is there a need of so many, as it is or with the reason that stands? */
static bool may_multiply(struct desk *desk, const char *tried)
{
	struct batch_card *card = card_of(desk);

	look(desk);
	if (card->need_known && card->order.reason[0] != '\0')
		desk_say(desk, ROLE_CAUTION, "The process of its jars will count as UNKNOWN.");
	if (!card->need_known && card->refusal.kind == FAULT_STOPPED)
		desk_ask_reason(desk, &card->refusal, tried, reason_typed);
	else if (!card->need_known)
		desk_say_fault(desk, &card->refusal);
	return card->need_known;
}

static bool take_multiple(struct desk *desk, int n)
{
	(void)n;
	return may_multiply(desk, "");
}

static void multiple_changed(struct desk *desk, int n)
{
	(void)n;
	look(desk);
}

static bool juice_is_short(const struct batch_need *need)
{
	for (size_t i = 0; i < need->scaled.count; i++)
		if (need->lines[i].is_short && need->scaled.lines[i].ingredient->supply == SUPPLY_JUICE)
			return true;
	return false;
}

/* What is short, and which keys lead on from there. */
static void say_way_on(struct desk *desk, const struct fault *fault)
{
	const struct batch_card *card = card_of(desk);

	desk_say(desk, ROLE_STOP, "%s%s%s", fault->sentence, card->order.multiple > 1 ? " Left: fewer batches." : "",
	         juice_is_short(&card->need)
	             ? " Esc, then Space at a juicer makes more; j and n write down juice that is here."
	             : " Esc, then g and r write down what came in.");
}

static bool start(struct desk *desk, int n)
{
	struct batch_card *card = card_of(desk);
	struct fault fault = { 0 };
	int64_t batch_id;

	(void)n;
	if (kitchen_start_batch(desk->kitchen, &card->order, card->sure, &batch_id, &fault)) {
		desk->selected_station = card->order.station_id;
		desk->selected_load = 0;
		desk_open_for(desk, VIEW_CARD, (struct opening){ .id = batch_id });
		desk_say(desk, ROLE_DONE, "Batch started; what it needs is off the shelf. (u undoes)");
		return true;
	}
	card->sure = fault.kind == FAULT_CONFIRM;
	desk_say_fault(desk, &fault);
	if (card->need.short_lines > 0)
		say_way_on(desk, &fault);
	if (card->sure)
		desk_say(desk, ROLE_CAUTION, "%s Space again if so.", fault.sentence);
	return false;
}

static void scroll_needs(struct desk *desk, int by)
{
	scroll_move(&card_of(desk)->need_list, by, need_count(desk));
}

/* --- the questions ----------------------------------------------------------------------- */

static void recipe_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", card_of(desk)->order.recipe);
}

static void jar_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", jar_size_words(card_of(desk)->order.jar, 2));
}

static void multiple_said(const struct desk *desk, struct text *text)
{
	if (is_from(desk, IS_READY))
		text_add(text, "%s", count_words(card_of(desk)->form.number.value, "batch").words);
}

static const struct question questions[] = {
	[ASKS_RECIPE] = { .kind = ASK_CHOICE,
	                  .name = "recipe",
	                  .asks = "What are you cooking? Type a few letters, or move.",
	                  .brief = "What are you cooking?",
	                  .answer = recipe_said,
	                  .count = recipe_choices,
	                  .words = recipe_choice_words,
	                  .word = recipe_choice_name,
	                  .none = "No recipe by that name. Your own are added in the house view (h).",
	                  .take = take_recipe },
	[ASKS_PACK] = { ASKS_OF_PACK, .asks = "Which jars and pack?", .nth = pack_at, .caution = pack_caution,
	                .offers = pack_offered, .take = take_pack },
	[ASKS_JAR] = { ASKS_OF_JAR, .asks = "Which size?", .answer = jar_said, .nth = jar_at, .take = take_jar },
	[ASKS_MULTIPLE] = { .kind = ASK_NUMBER,
	                    .name = "multiple",
	                    .asks = "How many batches in this pot? Type it.",
	                    .brief = "How many batches in this pot?",
	                    .answer = multiple_said,
	                    .most = 99,
	                    .changed = multiple_changed,
	                    .take = take_multiple },
	[IS_READY] = { .kind = ASK_LAST,
	               .name = "ready",
	               .asks = "Ready. Space starts the batch and takes this off the shelf.",
	               .brief = "Ready. Space takes it off the shelf.",
	               .moves = scroll_needs,
	               .take = start },
};

static bool reason_typed(struct desk *desk, const char *text)
{
	struct batch_card *card = card_of(desk);

	text_copy(card->order.reason, sizeof(card->order.reason), text);
	if (!may_multiply(desk, text))
		return !desk->entry.open;
	form_to(desk, &card->form, &questions[IS_READY]);
	return true;
}

const char *batch_view_recipe(const struct desk *desk)
{
	return card_of(desk)->order.recipe;
}

void batch_view_go_on(struct desk *desk)
{
	struct form *form = &card_of(desk)->form;

	desk_show_view(desk, VIEW_BATCH);
	form_to(desk, form, &questions[ASKS_RECIPE]);
	if (chosen(desk) != NULL && !recipe_awaits_sheet(chosen(desk)))
		form_on(desk, form);
}

static struct form *form_of(const struct desk *desk)
{
	return &card_of(desk)->form;
}

/* What the plan has for this pot, and what is to be done with it. */
static void say_planned(struct desk *desk, const struct planned_batch *next)
{
	char what[NAME_MAX_BYTES + 16];
	char hour[16] = "";
	struct text text = TEXT_OVER(what);

	if (next->at_ms != 0) {
		text_copy(hour, sizeof(hour), " for ");
		clock_words_hour(next->at_ms, hour + strlen(hour), sizeof(hour) - strlen(hour));
	}
	if (!next->juice_to_come) {
		desk_say(desk, ROLE_QUIET, "As planned%s; Left for another.", hour);
		return;
	}
	if (next->planned->multiple > 1)
		text_add(&text, "%d x ", next->planned->multiple);
	text_add(&text, "%s", next->planned->recipe);
	desk_say(desk, ROLE_CAUTION, "Planned%s: %s, its juice is not here yet.%s", hour, what,
	         next->begin == NULL ? "" : " This can begin now.");
}

/* The batch that the plan starts here next, or the one that can be begun before it, down to the
 * last question; Left goes back to another one. */
static void take_planned(struct desk *desk)
{
	struct batch_order *order = &card_of(desk)->order;
	const struct log_plan_batch *begin;
	struct planned_batch next;

	desk_planned_batch(desk, order->station_id, &next);
	if (next.planned == NULL)
		return;
	begin = next.begin;
	if (begin == NULL || kitchen_recipe_named(desk->kitchen, begin->recipe) == NULL) {
		if (next.juice_to_come)
			say_planned(desk, &next);
		return;
	}
	text_copy(order->recipe, sizeof(order->recipe), begin->recipe);
	text_copy(order->pack, sizeof(order->pack), begin->pack);
	text_copy(order->jar, sizeof(order->jar), begin->jar);
	if (recipe_awaits_sheet(kitchen_recipe_named(desk->kitchen, begin->recipe))) {
		desk_enter(desk, ENTRY_SHEET, 0);
		return;
	}
	card_of(desk)->form.number.value = begin->multiple;
	form_to(desk, &card_of(desk)->form, &questions[ASKS_MULTIPLE]);
	if (card_of(desk)->need_known)
		form_to(desk, &card_of(desk)->form, &questions[IS_READY]);
	say_planned(desk, &next);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	memset(card_of(desk), 0, sizeof(*card_of(desk)));
	card_of(desk)->order.station_id = opening->id;
	card_of(desk)->order.multiple = 1;
	desk_show_view(desk, VIEW_BATCH);
	card_of(desk)->form.number.value = 1;
	form_begin(desk, &card_of(desk)->form, questions, sizeof(questions) / sizeof(questions[0]), desk_show_board);
	take_planned(desk);
}

/* --- drawing ------------------------------------------------------------------------------ */

/* How it goes in, where that is not just "into the pot".  What goes into each jar is told for one of
 * the size asked for, and says so: the same amount in a larger one would be too little. */
static void way_words(const struct desk *desk, const struct ingredient *ingredient, struct text *text)
{
	static const char *const ways[ADDING_COUNT] = {
		[ADD_AHEAD] = ", ahead",
		[ADD_PACKED] = ", into the jars",
	};
	const struct recipe *recipe = card_of(desk)->need.scaled.recipe;

	if (ingredient->supply == SUPPLY_VINEGAR && recipe->vinegar_percent > 0)
		text_add(text, " of %d %%", recipe->vinegar_percent);
	if (ingredient_is_alternative(ingredient))
		text_add(text, ", instead of %s", ingredient->instead_of);
	else if (ingredient->adding == ADD_IN_JAR)
		text_add(text, ", in each %s", jar_size_words(card_of(desk)->order.jar, 1));
	else if (ways[ingredient->adding] != NULL)
		text_add(text, "%s", ways[ingredient->adding]);
	if (ingredient->optional && ingredient->adding != ADD_IN_JAR)
		text_add(text, ", if wanted");
}

#define WIDE_COLS 60 /* a narrower window has its rows for what goes in */
#define AMOUNT_COLS 17
#define AMOUNT_COLS_NARROW 11
#define HEAD_STAYS_ROWS 10

/* One ingredient: its amount, and beside it all that is said of it; in a narrow window as much as a row holds, so
 * that all of them are seen at once, but what is short is said to its end.  Returns the rows it took, or -1: it has
 * no room and is not the first. */
static int need_line_draw(const struct desk *desk, size_t n, int row, int rows, int cols, bool first)
{
	const struct batch_need *need = &card_of(desk)->need;
	const struct scaled_line *line = &need->scaled.lines[n];
	const struct ingredient *ingredient = line->ingredient;
	bool is_short = need->lines[n].is_short;
	int permille = line->measured.error_permille;
	enum role role = is_short ? ROLE_STOP : ROLE_PLAIN;
	int beside = cols < WIDE_COLS ? AMOUNT_COLS_NARROW : AMOUNT_COLS;
	char measured[120];
	char amount[120];
	char here[140] = "";
	char words[400];
	struct text text = TEXT_OVER(words);
	struct text stock = TEXT_OVER(here);

	if (need->lines[n].replaced) {
		terminal_putf(desk->terminal, row, 3, cols - 4, ROLE_CAUTION, "Instead of %s: %s", ingredient->name,
		              need->instead.words);
		return 1;
	}
	scaled_line_words(line, measured, sizeof(measured));
	if ((int)strlen(measured) >= beside)
		beside = (int)strlen(measured) + 1;
	text_add(&text, "%s", ingredient->name);
	way_words(desk, ingredient, &text);
	if (permille > ROUNDING_SHOWN_PERMILLE || permille < -ROUNDING_SHOWN_PERMILLE)
		text_add(&text, "  (%+d.%d %% off)", permille / 10, (permille < 0 ? -permille : permille) % 10);
	if (is_short) {
		struct amount_both said;

		amount_both(supply_measure(ingredient->supply), ingredient->supply,
		            need->lines[n].takes + need->lines[n].at_work, need->lines[n].stock, desk_units(desk),
		            &said);
		text_add(&text, " (SHORT: %s here)", said.there);
	} else if (need->lines[n].counted) {
		amount_words(ingredient->supply == SUPPLY_JUICE ? MEASURE_VOLUME : supply_measure(ingredient->supply),
		             need->lines[n].stock, desk_units(desk), amount, sizeof(amount));
		text_add(&stock, " (%s here)", amount);
	}
	/* What is enough, and how it is bought, stands with it where there is the room. */
	if (cols >= NARROW || (int)(text.used + stock.used) <= cols - 4 - beside)
		text_add(&text, "%s", here);
	if (cols >= NARROW)
		text_add(&text, "%s%s", ingredient->form[0] != '\0' ? ", " : "", ingredient->form);
	if (!first && desk_paragraph_lines(words, cols - 4 - beside) > rows)
		return -1;
	terminal_put(desk->terminal, row, 3, beside, role, measured);
	return desk_paragraph(desk, row, 3 + beside, cols - 4 - beside, rows, role, words);
}

static void outlook_words(const struct desk *desk, struct text *text)
{
	const struct batch_need *need = &card_of(desk)->need;
	char hour[8];

	if (need->yield_known)
		text_add(text, "About %d %s", need->yield.jars_likely,
		         jar_size_words(card_of(desk)->order.jar, need->yield.jars_likely));
	if (need->yield_known && need->yield.jars_low < need->yield.jars_high)
		text_add(text, " (%d to %d)", need->yield.jars_low, need->yield.jars_high);
	if (need->jars_stock >= 0)
		text_add(text, "; %lld here", (long long)need->jars_stock);
	if (need->jars_stock >= 0 && need->jars_at_work > 0)
		text_add(text, ", %lld of them for pots at work", (long long)need->jars_at_work);
	if (need->canner_in_ms == 0) {
		text_add(text, ". A canner is free now.");
	} else if (need->canner_in_ms > 0) {
		clock_words_hour(desk->now.wall_ms + need->canner_in_ms, hour, sizeof(hour));
		text_add(text, ". Canner free at about %s.", hour);
	}
}

/* "Ahead 2: ... (12 hours)" and what is to be known; "" where there is nothing. */
static enum role note_words(const struct desk *desk, int n, struct text *text)
{
	const struct recipe *recipe = chosen(desk);
	const struct recipe_step *steps;
	int count = (int)recipe_steps_of(recipe, &steps);
	char time[40];

	if (n < count) {
		recipe_step_time(&steps[n], time, sizeof(time));
		text_add(text, "Step %d: %s%s%s.", steps[n].number, steps[n].what, time[0] != '\0' ? ": " : "", time);
		return ROLE_PLAIN;
	}
	if (n - count == NEED_SWAP && recipe->acid_swap == ACID_SWAP_LEMON_FOR_VINEGAR)
		text_add(text, "Bottled lemon juice may replace the vinegar, the same amount; never the other way.");
	else if (n - count == NEED_CAUTION) {
		text_add(text, "%s", recipe->caution);
		heat_here_words(kitchen_board(desk->kitchen), HEAT_JELLY, time, sizeof(time));
		if (recipe->gel_test != GEL_TEST_NONE)
			text_add(text, "%sJelly: %s.", recipe->caution[0] != '\0' ? " " : "", time);
	}
	return ROLE_CAUTION;
}

/* One line of it; how many rows it took, or -1: it has no room. */
static int need_item_draw(const struct desk *desk, int n, int row, int rows, int cols, bool first)
{
	int count = (int)card_of(desk)->need.scaled.count;
	char words[600];
	struct text text = TEXT_OVER(words);
	enum role role;

	if (n < count)
		return need_line_draw(desk, (size_t)n, row, rows, cols, first);
	role = note_words(desk, n - count, &text);
	if (!first && desk_paragraph_lines(words, cols - 4) > rows)
		return -1;
	return desk_paragraph(desk, row, 3, cols - 4, rows, role, words);
}

/* As many lines from the first one shown as there is room for, and how many not. */
static void need_list_draw(const struct desk *desk, int top, int rows, int cols)
{
	struct batch_card *card = card_of(desk);
	int count = need_count(desk);
	int end = top + (rows < 1 ? 1 : rows) - 1; /* the last row tells of more */
	int row = top;
	int n = card->need_list.cursor;

	while (n < count && row < end) {
		int used = need_item_draw(desk, n, row, end - row, cols, n == card->need_list.cursor);

		if (used < 0)
			break;
		row += used;
		n++;
	}
	card->need_list.top = n - card->need_list.cursor;
	if (n < count)
		terminal_putf(desk->terminal, end, 3, cols - 4, ROLE_STRONG, "%d more%s", count - n,
		              is_from(desk, IS_READY) ? ": Down" : "");
	else if (card->need_list.cursor > 0)
		terminal_putf(desk->terminal, end, 3, cols - 4, ROLE_STRONG, "%d above: Up", card->need_list.cursor);
}

/* Acid is short, and the shelf holds another that is published for these jars. */
static bool may_take_instead(const struct desk *desk)
{
	const struct batch_card *card = card_of(desk);

	return is_from(desk, ASKS_MULTIPLE) && card->need_known && card->need.instead.acid != ACID_NOT_SAID &&
	       card->order.acid != card->need.instead.acid;
}

static void take_instead(struct desk *desk)
{
	struct batch_card *card = card_of(desk);

	card->order.acid = card->need.instead.acid;
	look(desk);
	desk_say(desk, ROLE_DONE, "%s goes in instead; filling asks for it again.", acid_words(card->order.acid));
}

static void need_draw(const struct desk *desk, int top, int rows, int cols)
{
	const struct batch_card *card = card_of(desk);
	const struct recipe *recipe = chosen(desk);
	char words[300];
	struct text text = TEXT_OVER(words);
	int row = top;

	if (!card->need_known) {
		desk_paragraph(desk, row, 3, cols - 4, rows, ROLE_STOP, card->refusal.sentence);
		return;
	}
	/* In a low window what was read first makes room for what is scrolled to. */
	if (rows < HEAD_STAYS_ROWS && card->need_list.cursor > 0) {
		need_list_draw(desk, row, rows, cols);
		return;
	}
	outlook_words(desk, &text);
	row += desk_paragraph(desk, row, 3, cols - 4, 2, ROLE_STRONG, words);
	if (may_take_instead(desk) && row < top + rows) {
		text = TEXT_OVER(words);
		text_add(&text, "i uses instead: %s", card->need.instead.words);
		row += desk_paragraph(desk, row, 3, cols - 4, 2, ROLE_CAUTION, words);
	}
	if (card->need.short_lines > 0)
		row += desk_paragraph(desk, row, 3, cols - 4, 2, ROLE_STOP,
		                      cols < NARROW ? "SHORT: do not stretch it."
		                                    : "Something is SHORT. Do not stretch it.");
	if (card->need.nowhere_to_go)
		row += desk_paragraph(desk, row, 3, cols - 4, 2, ROLE_CAUTION,
		                      card->need.canner_in_ms < 0
		                          ? "No canner here has a process for it."
		                          : "No canner is free in time: the jars would wait too long.");
	if (pack_has_jars(card->order.pack, JARS_NOT_BOILED_FIRST) && cols >= WIDE_COLS && row < top + rows)
		row += desk_paragraph(desk, row, 3, cols - 4, 2, ROLE_QUIET,
		                      "Jars not boiled first, so their process is the longer one.");
	if (pack_has_jars(card->order.pack, JARS_BOILED_FIRST) && row < top + rows) {
		jars_boiled_words(&kitchen_board(desk->kitchen)->house.elevation, words, sizeof(words));
		row += desk_paragraph(desk, row, 3, cols - 4, 2, ROLE_CAUTION, words);
	}
	if (recipe != NULL && recipe->sheet_minutes > 0 && row < top + rows) {
		text = TEXT_OVER(words);
		text_add(&text, "Its sheet: %d min of process. The longer counts, this or the table's.",
		         recipe->sheet_minutes);
		row += desk_paragraph(desk, row, 3, cols - 4, 2, ROLE_CAUTION, words);
	}
	need_list_draw(desk, row, top + rows - row, cols);
}

/* "6 Wide pot > grape jelly > half-pints > 2 batches": as far as it is chosen. */
static void chosen_words(const struct desk *desk, struct text *text)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct batch_card *card = card_of(desk);

	for (size_t i = 0; i < board->stations; i++) {
		const struct log_station *station = &board->strips[i].station;

		if (station->id != card->order.station_id)
			continue;
		text_add(text, "%d", station->digit);
		if (desk_columns(desk) >= NARROW)
			text_add(text, " %s", station->name);
	}
	form_answers(desk, &card->form, text);
}

static void draw(const struct desk *desk, int top, int rows)
{
	char words[300];
	struct text text = TEXT_OVER(words);
	int cols = desk_columns(desk);
	int used;

	chosen_words(desk, &text);
	used = desk_title(desk, top, words);
	used += form_draw(desk, &card_of(desk)->form, top + used, rows - used, cols);
	if (is_from(desk, ASKS_MULTIPLE))
		need_draw(desk, top + used, rows - used, cols);
}

/* Of the recipe that is chosen, or at the cursor. */
static void sources(const struct desk *desk, struct sources *page)
{
	int here = form_choice(desk, &card_of(desk)->form);
	const struct recipe *recipe = is_from(desk, ASKS_PACK) ? chosen(desk)
	                              : here < 0               ? NULL
	                                                       : kitchen_recipe(desk->kitchen, (size_t)here);

	if (recipe == NULL)
		return;
	if (is_from(desk, ASKS_PACK) && !is_from(desk, ASKS_PACK + 1) && here >= 0 && pack_caution(desk, here) != NULL)
		sources_add(page, &(struct source_of){ .how = "common practice, no source" }, "%s",
		            pack_caution(desk, here));
	sources_add_recipe(page, recipe);
	if (recipe_has_sheet(recipe->name))
		sheet_sources(page);
	sources_add_food(page, food_named(recipe->food));
}

static const char *choose_words(const struct desk *desk)
{
	return is_from(desk, IS_READY) ? "START the batch" : "choose";
}

static void undo_sheet(struct desk *desk)
{
	desk_undo_about(desk, DONE_TO_RECIPES, "the recipes");
	batch_view_go_on(desk);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "choose", "Choose, and go to the next.", NULL, form_take },
	{ 'i', 0, "i", "instead", "Take the other acid, as published for these jars.", may_take_instead, take_instead },
	{ KEY_CODE_LEFT, 0, "Left", "one back", "Back to the choice before.", NULL, form_back },
	{ 's', 0, "s", "its sheet", "Change the amounts from its pectin's sheet.", of_sheet, change_sheet },
	{ 'u', 0, "u", NULL, "Undo the last change to a sheet or recipe.", of_sheet, undo_sheet },
	{ KEY_CODE_ESCAPE, 0, "Esc", "no batch", "Back to the board; nothing is recorded.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above; one batch more; back in a long list.", NULL, form_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below; one batch less; on in a long list.", NULL, form_down },
	{ KEY_CODE_RIGHT, 0, "Right", NULL, "Same as Space.", NULL, form_take },
	{ 0, 0, "letters", NULL, "Recipes: only those with these letters. Batches: digits.", NULL, NULL },
};

const struct view batch_view = {
	.title = "Batch card",
	.state = &card_state,
	.questions = questions,
	.question_count = sizeof(questions) / sizeof(questions[0]),
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
	.keeps = true,
	.form = form_of,
	.typed = form_typed,
	.types = form_types,
	.space_words = choose_words,
};
