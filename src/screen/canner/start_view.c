/*
 * start_view.c - the load card: product, pack, jar, pressure, number, lid box;
 * then the process as published, and one key to start.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/food/acid.h"
#include "engine/food/caution.h"
#include "engine/process/pack.h"
#include "engine/process/product.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/stock/acid_asked.h"
#include "kitchen/stock/ahead.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/form.h"
#include "screen/ui/jar_questions.h"
#include "screen/ui/paragraph.h"

#define START_PRODUCTS_MAX 256

struct start_card {
	struct load_order order;
	enum method method;
	struct form form;
	struct {
		const char *name;
		const char *food;
		const char *caution;
	} products[START_PRODUCTS_MAX];
	size_t product_count;
	size_t product; /* chosen */
	struct jars_asked jars;
	enum acid acids[ACID_COUNT]; /* answers that the process asks for */
	bool has_process;
	struct process process;
};

static void clear(void *state)
{
	struct start_card *card = state;

	free(card->jars.boxes);
}

static const struct view_state card_state = { sizeof(struct start_card), clear };

static struct start_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_START);
}

static const struct strip *canner(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.id == card_of(desk)->order.station_id)
			return &board->strips[i];
	return NULL;
}

/* --- what can be chosen ------------------------------------------------------------ */

static void add_product(struct start_card *card, const char *name, const char *food, const char *caution)
{
	if (card->product_count == START_PRODUCTS_MAX)
		return;
	for (size_t i = 0; i < card->product_count; i++)
		if (text_same_name(card->products[i].name, name))
			return;
	card->products[card->product_count].name = name;
	card->products[card->product_count].food = food;
	card->products[card->product_count].caution = caution;
	card->product_count++;
}

/* Everyday products first, then every food of the tables by its own name. */
static void list_products(struct start_card *card)
{
	const char *food = NULL;

	card->product_count = 0;
	for (size_t i = 0; i < product_count; i++)
		if (process_has_food(card->method, products[i].food))
			add_product(card, products[i].name, products[i].food, products[i].caution);
	while ((food = process_next_food(card->method, food)) != NULL)
		add_product(card, food, food, "");
}

static int products_listed(const struct desk *desk)
{
	return (int)card_of(desk)->product_count;
}

/* What was typed is the name of one that this canner is not for: the reason, as the tables know it. */
static const char *why_no_product(const struct desk *desk)
{
	static struct fault why; /* until the next call */
	const struct start_card *card = card_of(desk);
	struct process_query query = { .method = card->method,
		                       .elevation = { .known = true }, /* asked without one, too */
		                       .pressure_psi = NO_PRESSURE };
	struct process process;

	for (size_t i = 0; i < product_count && query.food == NULL; i++)
		if (picker_matches(&card->form.picker, products[i].name))
			query.food = products[i].food;
	for (size_t i = 0; i < process_row_count && query.food == NULL; i++)
		if (picker_matches(&card->form.picker, process_rows[i].food))
			query.food = process_rows[i].food;
	if (query.food == NULL || process_find(&query, &process, &why) || why.rule == NULL ||
	    strcmp(why.rule, "low-acid") != 0)
		return NULL;
	return why.sentence;
}

static void product_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	text_copy(buffer, size, card_of(desk)->products[n].name);
}

static const char *product_name(const struct desk *desk, int n)
{
	return n < (int)card_of(desk)->product_count ? card_of(desk)->products[n].name : NULL;
}

static const char *nth_pack(const struct start_card *card, int n)
{
	const char *pack = NULL;

	while ((pack = process_next_pack(card->order.food, card->method, pack)) != NULL)
		if (n-- == 0)
			return pack;
	return NULL;
}

static struct process_option option_at(const struct start_card *card, int n)
{
	const struct process *process = &card->process;

	if (n == 0)
		return (struct process_option){ process->minutes, process->pressure_psi };
	return process->options[n - 1];
}

static const struct food *food_of(const struct start_card *card)
{
	return card->has_process ? food_named(card->process.row->food) : NULL;
}

static const char *pack_at(const struct desk *desk, int n)
{
	const char *pack = nth_pack(card_of(desk), n);

	return pack == NULL ? NULL : pack_words(pack);
}

static const char *pack_caution(const struct desk *desk, int n)
{
	const struct start_card *card = card_of(desk);

	return jars_pack_caution(desk, card->order.food, nth_pack(card, n), card->method);
}

/* Jars boiled first have the shorter process: never what one gets by pressing on.  Begin
 * at a pack for jars as they are, where there is one. */
static int safer_pack(const struct desk *desk)
{
	int safer = 0;

	for (int n = 0; nth_pack(card_of(desk), n) != NULL; n++)
		if (pack_has_jars(nth_pack(card_of(desk), n), JARS_NOT_BOILED_FIRST))
			safer = n;
	return safer;
}

static int jar_count(const struct desk *desk)
{
	(void)desk;
	return (int)jar_size_count;
}

static int room_for(const struct desk *desk, const struct jar_size *jar)
{
	const struct strip *strip = canner(desk);

	return strip == NULL || jar == NULL ? 0 : station_room(&strip->station, jar, NULL);
}

static void jar_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	int room = room_for(desk, &jar_sizes[n]);

	(void)snprintf(buffer, size, room > 0 ? "%s  (this canner takes %d)" : "%s  (no room set)", jar_sizes[n].words,
	               room);
}

/* The usual jar, or the largest smaller one this canner has room for. */
static int jar_offered(const struct desk *desk)
{
	const struct product *product = product_named(card_of(desk)->order.product);
	const struct jar_size *usual = jar_size_named(product == NULL ? "pint" : product->usual_jar);
	int n = usual == NULL ? 0 : jar_size_index(usual);

	while (n > 0 && canner(desk) != NULL && room_for(desk, &jar_sizes[n]) == 0)
		n--;
	return n;
}

static int pair_count(const struct desk *desk)
{
	return (int)card_of(desk)->process.option_count + 1;
}

static void pair_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	struct process_option option = option_at(card_of(desk), n);

	(void)snprintf(buffer, size, "%d min at %d psi", option.minutes, option.pressure_psi);
}

static bool has_pairs(const struct desk *desk)
{
	return card_of(desk)->process.option_count > 0;
}

static bool asks_acid(const struct desk *desk)
{
	return card_of(desk)->jars.acid_count > 0;
}

static bool asks_vinegar(const struct desk *desk)
{
	const struct start_card *card = card_of(desk);

	return asks_acid(desk) && card->jars.acid != ACID_NOT_SAID &&
	       acid_asks_vinegar(food_of(card)->acid_rule, card->jars.acid);
}

/* --- answers ------------------------------------------------------------------------------ */

static bool take_product(struct desk *desk, int n)
{
	struct start_card *card = card_of(desk);

	card->product = (size_t)n;
	text_copy(card->order.product, sizeof(card->order.product), card->products[n].name);
	text_copy(card->order.food, sizeof(card->order.food), card->products[n].food);
	return true;
}

static bool take_pack(struct desk *desk, int n)
{
	struct start_card *card = card_of(desk);

	text_copy(card->order.pack, sizeof(card->order.pack), nth_pack(card, n));
	return true;
}

/* The process of what was answered so far; false, and it is said, when there is none. */
static bool look_up(struct desk *desk, int pressure_psi)
{
	struct start_card *card = card_of(desk);
	struct fault fault = { 0 };

	card->order.pressure_psi = pressure_psi;
	card->has_process = kitchen_process(desk->kitchen, &card->order, &card->process, &fault);
	card->jars.food = food_of(card);
	card->jars.size = card->process.jar;
	card->jars.acids = card->acids;
	card->jars.acid_count =
	    kitchen_acid_answers(desk->kitchen, card->order.product, food_of(card), card->process.jar, card->acids);
	if (!card->has_process)
		desk_say_fault(desk, &fault);
	return card->has_process;
}

static bool take_jar(struct desk *desk, int n)
{
	struct start_card *card = card_of(desk);
	int room = room_for(desk, &jar_sizes[n]);

	text_copy(card->order.jar, sizeof(card->order.jar), jar_sizes[n].name);
	if (!look_up(desk, NO_PRESSURE))
		return false;
	if (room == 0)
		desk_say(desk, ROLE_CAUTION, "This canner has no room set for %s. Set it in the house view (h).",
		         jar_sizes[n].plural);
	card->form.number.value = room;
	return room > 0;
}

static bool take_pair(struct desk *desk, int n)
{
	return look_up(desk, option_at(card_of(desk), n).pressure_psi);
}

static int room_of_jar(const struct desk *desk)
{
	return room_for(desk, jar_size_named(card_of(desk)->order.jar));
}

static bool take_count(struct desk *desk, int jars)
{
	int room = room_of_jar(desk);

	card_of(desk)->jars.count = jars;
	if (jars < 1)
		desk_say(desk, ROLE_CAUTION, "Type how many jars.");
	else if (jars > room)
		desk_say(desk, ROLE_CAUTION, "This canner takes %d; the other %d %s for the next load.", room,
		         jars - room, count_noun(jars - room, "waits").words);
	return jars >= 1 && jars <= room;
}

static bool reason_typed(struct desk *desk, const char *text);

/* True when no line need be typed for it any more. */
static bool start_because(struct desk *desk, const char *reason)
{
	struct load_order *order = &card_of(desk)->order;
	const struct jars_asked *jars = &card_of(desk)->jars;
	struct fault fault = { 0 };
	int64_t load_id;

	order->jars = jars->count;
	order->lid_box_id = jars->lid_box_id;
	order->acid = jars->acid;
	order->vinegar_tenths = jars->vinegar_tenths;
	text_copy(order->reason, sizeof(order->reason), reason);
	if (kitchen_start_load(desk->kitchen, order, &load_id, &fault)) {
		desk->selected_station = order->station_id;
		desk->selected_load = 0;
		desk_show_board(desk);
		desk_say(desk, ROLE_DONE, "Load started. The clock waits for you. (u undoes)");
		return true;
	}
	if (fault.kind == FAULT_STOPPED) {
		desk_ask_reason(desk, &fault, reason, reason_typed);
		return false;
	}
	desk_say_fault(desk, &fault);
	return true;
}

static bool reason_typed(struct desk *desk, const char *text)
{
	return start_because(desk, text);
}

static bool start(struct desk *desk, int n)
{
	(void)n;
	return start_because(desk, "");
}

/* --- the questions ------------------------------------------------------------------------- */

static void product_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", card_of(desk)->order.product);
}

static void pack_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", pack_words(card_of(desk)->order.pack));
}

enum { ASKS_PRODUCT, ASKS_PACK, ASKS_JAR, ASKS_PAIR, ASKS_COUNT, ASKS_BOX, ASKS_ACID, ASKS_VINEGAR, IS_READY };

static bool is_at(const struct desk *desk, int question)
{
	return card_of(desk)->form.at == (size_t)question;
}

/* Until the number goes with it. */
static void jar_said(const struct desk *desk, struct text *text)
{
	const struct jar_size *jar = jar_size_named(card_of(desk)->order.jar);

	if (is_at(desk, ASKS_PAIR) && jar != NULL)
		text_add(text, "%s", jar->plural);
}

static void count_said(const struct desk *desk, struct text *text)
{
	const struct start_card *card = card_of(desk);
	int jars = is_at(desk, ASKS_COUNT) ? card->form.number.value : card->jars.count;

	text_add(text, "%d %s", jars, jar_size_words(card->order.jar, jars));
}

static void count_beside(const struct desk *desk, int jars, struct text *text)
{
	text_add(text, "%s; this canner takes %d", jar_size_words(card_of(desk)->order.jar, jars), room_of_jar(desk));
}

static const struct question questions[] = {
	[ASKS_PRODUCT] = { .kind = ASK_CHOICE,
	                   .name = "product",
	                   .asks = "What goes in? Type a few letters, or move.",
	                   .brief = "What goes in?",
	                   .answer = product_said,
	                   .count = products_listed,
	                   .words = product_words,
	                   .word = product_name,
	                   .none = "Nothing by that name has a published process for this canner.",
	                   .why_none = why_no_product,
	                   .take = take_product },
	[ASKS_PACK] = { ASKS_OF_PACK, .asks = "How is it packed?", .answer = pack_said, .nth = pack_at,
	                .caution = pack_caution, .offers = safer_pack, .take = take_pack },
	[ASKS_JAR] = { ASKS_OF_JAR, .asks = "Which jars?", .answer = jar_said, .count = jar_count, .words = jar_words,
	               .offers = jar_offered, .take = take_jar },
	[ASKS_PAIR] = { .kind = ASK_CHOICE,
	                .name = "pair",
	                .asks = "Which of the published pairs?",
	                .asked = has_pairs,
	                .count = pair_count,
	                .words = pair_words,
	                .short_list = true,
	                .take = take_pair },
	[ASKS_COUNT] = { ASKS_HOW_MANY_JARS, .asks = "How many jars?", .answer = count_said, .unit = count_beside,
	                 .take = take_count },
	[ASKS_BOX] = { ASKS_LIDS, .asks = "Which lid box?", .take = jars_lids_taken },
	[ASKS_ACID] = { ASKS_OF_ACID, .asks = "Is its acid in? Bottled, never fresh. Space only if it is.",
	                .brief = "Is its acid in? Bottled, never fresh.", .asked = asks_acid, .words = jars_acid_words,
	                .take = jars_acid_taken },
	[ASKS_VINEGAR] = { ASKS_OF_VINEGAR, .asked = asks_vinegar },
	[IS_READY] = { .kind = ASK_LAST,
	               .name = "ready",
	               .asks = "Ready. Space starts; the clock waits.",
	               .take = start },
};

/* Without the acid: only with a reason, and never valid. */
static void no_acid(struct desk *desk)
{
	card_of(desk)->jars.acid = ACID_NOT_SAID;
	card_of(desk)->jars.vinegar_tenths = 0;
	form_to(desk, &card_of(desk)->form, &questions[IS_READY]);
	(void)start_because(desk, "");
}

static bool at_acid(const struct desk *desk)
{
	return is_at(desk, ASKS_ACID);
}

static struct form *form_of(const struct desk *desk)
{
	return &card_of(desk)->form;
}

static void enter(struct desk *desk, const struct opening *opening)
{
	struct start_card *card = card_of(desk);
	struct fault fault = { 0 };
	const struct strip *strip;

	free(card->jars.boxes);
	memset(card, 0, sizeof(*card));
	card->order.station_id = opening->id;
	card->order.pressure_psi = NO_PRESSURE;
	strip = canner(desk);
	if (strip == NULL)
		return;
	if (!kitchen_board(desk->kitchen)->house.elevation.known) {
		desk_say(desk, ROLE_STOP, "The elevation is not known, so no process can be given. Set it first.");
		desk_open(desk, VIEW_FIRST_STEPS);
		return;
	}
	card->method = station_method(strip->station.kind);
	list_products(card);
	if (!kitchen_lid_boxes(desk->kitchen, &card->jars.boxes, &card->jars.box_count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	card->form.jars = &card->jars;
	desk_show_view(desk, VIEW_START);
	form_begin(desk, &card->form, questions, sizeof(questions) / sizeof(questions[0]), desk_show_board);
}

/* --- drawing --------------------------------------------------------------------------- */

/* Words that do without a caution's room: all of them, or none. */
static int quiet_line(const struct desk *desk, int row, int end, int cols, const char *words)
{
	if (desk_paragraph_lines(words, cols - 4) > end - row)
		return row;
	return row + desk_paragraph(desk, row, 3, cols - 4, end - row, ROLE_QUIET, words);
}

/* What the food's own line warns of, whatever name it was chosen by. */
static void cautions_of_food(const struct start_card *card, struct caution_lines *cautions)
{
	const struct food *food = food_of(card);
	const char *of_product = card->products[card->product].caution;

	caution_line_add(cautions, of_product);
	if (food != NULL && strcmp(food->caution, of_product) != 0)
		caution_line_add(cautions, food->caution);
}

/* What must not be in it. */
static void must_not_words(const struct start_card *card, char words[CAUTION_BYTES])
{
	const struct food *food = food_of(card);
	struct text text = text_over(words, CAUTION_BYTES);

	if (food != NULL)
		food_must_not_words(food, &text);
	words[0] = words[0] == 'm' ? 'M' : words[0];
}

/* The process as published, and what goes with it. */
static void process_draw(const struct desk *desk, int top, int rows, int cols)
{
	const struct start_card *card = card_of(desk);
	const struct process *process = &card->process;
	struct caution_lines cautions = { .count = 0 };
	char words[80];
	char sized_up[120];
	char boiled[JARS_BOILED_BYTES];
	char must_not[CAUTION_BYTES];
	char headspace[24];
	struct text text = TEXT_OVER(words);
	int end = top + rows;
	int row = top;

	headspace_words(process->row->headspace_thou, headspace, sizeof(headspace));
	text_add(&text, "%d min", process->minutes);
	if (process->pressure_psi != NO_PRESSURE)
		text_add(&text, " at %d psi", process->pressure_psi);
	text_add(&text, ", headspace %s", headspace);
	row += desk_paragraph(desk, row, 3, cols - 4, rows, ROLE_STRONG, words);
	if (process->row->confirmed == CONFIRMED_PRACTICE)
		caution_line_add(&cautions, IN_NO_TABLE);
	(void)snprintf(sized_up, sizeof(sized_up),
	               "No row for this size in this pack: takes the %s row, the next larger tested size.",
	               process->jar_sized_up ? process->jar_in_table->words : "");
	if (process->jar_sized_up)
		caution_line_add(&cautions, sized_up);
	if (process->band_raised)
		caution_line_add(&cautions,
		                 "The elevation is rounded and touches a higher band: the higher one is used.");
	if (process->above_tables)
		caution_line_add(&cautions, "Above 8,000 ft another table asks for more time for other foods: ask your "
		                            "extension office.");
	jars_boiled_words(&kitchen_board(desk->kitchen)->house.elevation, boiled, sizeof(boiled));
	if (process->jars_sterile)
		caution_line_add(&cautions, boiled);
	cautions_of_food(card, &cautions);
	must_not_words(card, must_not);
	caution_line_add(&cautions, must_not);
	row += desk_cautions(desk, row, end - row, &cautions);
	(void)quiet_line(desk, row, end, cols,
	                 "Your recipe, your canner's manual and your extension office outrank this program.");
}

/* Of the product that is chosen, or at the cursor; then of its process and its food. */
static void sources(const struct desk *desk, struct sources *page)
{
	const struct start_card *card = card_of(desk);
	int here = is_at(desk, ASKS_PRODUCT) ? form_choice(desk, &card->form) : (int)card->product;
	bool process = card->has_process && card->form.at > ASKS_JAR;
	const struct product *product;

	if (here < 0)
		return;
	product = product_named(card->products[here].name);
	if (is_at(desk, ASKS_PACK) && form_choice(desk, &card->form) >= 0 &&
	    pack_caution(desk, form_choice(desk, &card->form)) != NULL)
		sources_add(page, &(struct source_of){ .how = "common practice, no source" }, "%s",
		            pack_caution(desk, form_choice(desk, &card->form)));
	if (product != NULL)
		sources_add(page, &(struct source_of){ .source = product->source }, "%s, by the tables for %s%s%s",
		            product->name, product->food, product->caution[0] != '\0' ? ": " : "", product->caution);
	if (process)
		sources_add_process(page, &card->process);
	if (process && card->process.jars_sterile)
		sources_add(page, &(struct source_of){ .source = JAR_STERILISING_SOURCE },
		            "Jars are boiled %d min before filling",
		            jar_sterilising_minutes(&kitchen_board(desk->kitchen)->house.elevation));
	sources_add_food(page, food_named(card->products[here].food));
}

/* What will be put down of the acid. */
static int acid_draw(const struct desk *desk, int row, int cols)
{
	const struct start_card *card = card_of(desk);
	bool is_in = acid_is_answer(food_of(card), card->process.jar, card->jars.acid);
	char words[ACID_ANSWER_BYTES + 32];
	struct text text = TEXT_OVER(words);

	text_add(&text, "Acid: ");
	if (is_in)
		acid_answer_words(food_of(card), card->jars.acid, card->process.jar, card->jars.count, &text);
	else
		text_add(&text, "NOT in.");
	if (card->jars.vinegar_tenths > 0)
		text_add(&text, ", %d.%d percent", card->jars.vinegar_tenths / 10, card->jars.vinegar_tenths % 10);
	return desk_paragraph(desk, row, 3, cols - 4, 3, is_in ? ROLE_PLAIN : ROLE_STOP, words);
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct start_card *card = card_of(desk);
	const struct strip *strip = canner(desk);
	char words[400];
	struct text text = TEXT_OVER(words);
	int cols = desk_columns(desk);
	int titled;
	int used;

	if (strip != NULL)
		text_add(&text, "%d", strip->station.digit);
	if (strip != NULL && (cols >= NARROW || is_at(desk, ASKS_PRODUCT))) /* as long as nothing else is to be said */
		text_add(&text, " %s", strip->station.name);
	form_answers(desk, &card->form, &text);
	titled = desk_title(desk, top, words);
	used = titled + form_draw(desk, &card->form, top + titled, rows - titled, cols);
	if (is_at(desk, IS_READY) && asks_acid(desk))
		used = titled + 1 + acid_draw(desk, top + titled + 1, cols);
	if (card->has_process && card->form.at > ASKS_JAR)
		process_draw(desk, top + used, rows - used, cols);
}

static const char *choose_words(const struct desk *desk)
{
	return is_at(desk, IS_READY) ? "START the load" : is_at(desk, ASKS_ACID) ? JARS_ACID_IS_SO : "choose";
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "choose", "Choose what is under the cursor, and go to the next.", NULL,
	  form_take },
	{ 'n', 0, "n", "acid missing", "Started without the acid: with a reason, and not valid.", at_acid, no_acid },
	{ KEY_CODE_LEFT, 0, "Left", "one back", "Back to the choice before.", NULL, form_back },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board; nothing is recorded.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above; one jar more.", NULL, form_up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below; one jar less.", NULL, form_down },
	{ KEY_CODE_RIGHT, 0, "Right", NULL, "Same as Space.", NULL, form_take },
	{ 0, 0, "letters", NULL, "Products: only those with these letters. Number: digits.", NULL, NULL },
};

const struct view start_view = {
	.title = "Load card",
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
