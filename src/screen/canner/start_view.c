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
#include "engine/process/product.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/stock/ahead.h"
#include "screen/canner/canner_views.h"
#include "screen/ui/desk.h"

enum start_field {
	START_PRODUCT,
	START_PACK,
	START_JAR,
	START_PRESSURE,
	START_COUNT,
	START_LIDS,
	START_ACID,    /* which acid is in: only of a food that takes some */
	START_VINEGAR, /* how strong: only of a printed recipe that lives by it */
	START_READY
};

#define START_PRODUCTS_MAX 256

struct start_card {
	struct load_order order;
	enum method method;
	enum start_field field;
	struct picker picker;
	struct number_entry count;
	struct {
		const char *name;
		const char *food;
		const char *caution;
	} products[START_PRODUCTS_MAX];
	size_t product_count;
	size_t product; /* chosen */
	struct log_lid_box *boxes;
	size_t box_count;
	bool has_process;
	struct process process;
};

static void clear(void *state)
{
	struct start_card *card = state;

	free(card->boxes);
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

static bool food_usable(enum method method, const char *food)
{
	const char *at = NULL;

	while ((at = process_next_food(method, at)) != NULL)
		if (strcmp(at, food) == 0)
			return true;
	return false;
}

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
		if (food_usable(card->method, products[i].food))
			add_product(card, products[i].name, products[i].food, products[i].caution);
	while ((food = process_next_food(card->method, food)) != NULL)
		add_product(card, food, food, "");
}

static int nth_product(const struct start_card *card, int n)
{
	for (size_t i = 0; i < card->product_count; i++)
		if (picker_matches(&card->picker, card->products[i].name) && n-- == 0)
			return (int)i;
	return -1;
}

static const char *product_name(const struct desk *desk, int n)
{
	return n < (int)card_of(desk)->product_count ? card_of(desk)->products[n].name : NULL;
}

static bool types(const struct desk *desk, long key)
{
	return card_of(desk)->field == START_PRODUCT && picker_types(desk, &card_of(desk)->picker, key, product_name);
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

static int choice_count(const struct start_card *card)
{
	enum acid answers[ACID_COUNT];
	int count = 0;

	switch (card->field) {
	case START_PRODUCT:
		while (nth_product(card, count) >= 0)
			count++;
		return count;
	case START_PACK:
		while (nth_pack(card, count) != NULL)
			count++;
		return count;
	case START_JAR: return (int)jar_size_count;
	case START_PRESSURE: return (int)card->process.option_count + 1;
	case START_LIDS: return (int)card->box_count + 1;
	case START_ACID: return (int)acid_answers(food_of(card), card->process.jar, answers);
	case START_COUNT:
	case START_VINEGAR:
	case START_READY: break;
	}
	return 0;
}

static void acid_words_at(const struct start_card *card, int n, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	enum acid answers[ACID_COUNT];

	if (n < (int)acid_answers(food_of(card), card->process.jar, answers))
		acid_answer_words(food_of(card), answers[n], card->process.jar, card->order.jars, &text);
}

static void choice_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct start_card *card = card_of(desk);
	const struct strip *strip = canner(desk);
	struct process_option option;

	buffer[0] = '\0';
	switch (card->field) {
	case START_PRODUCT: text_copy(buffer, size, card->products[nth_product(card, n)].name); break;
	case START_PACK: text_copy(buffer, size, pack_words(nth_pack(card, n))); break;
	case START_JAR: {
		int room = strip == NULL ? 0 : station_room(&strip->station, &jar_sizes[n], NULL);

		(void)snprintf(buffer, size, room > 0 ? "%s  (this canner takes %d)" : "%s  (no room set)",
		               jar_sizes[n].words, room);
		break;
	}
	case START_PRESSURE:
		option = option_at(card, n);
		(void)snprintf(buffer, size, "%d min at %d psi", option.minutes, option.pressure_psi);
		break;
	case START_LIDS: lid_box_words(card->boxes, card->box_count, n, buffer, size); break;
	case START_ACID: acid_words_at(card, n, buffer, size); break;
	case START_COUNT:
	case START_VINEGAR:
	case START_READY: break;
	}
}

/* --- moving through the card ---------------------------------------------------------- */

static int room_for_jar(const struct desk *desk)
{
	const struct strip *strip = canner(desk);
	const struct jar_size *jar = jar_size_named(card_of(desk)->order.jar);

	return strip == NULL || jar == NULL ? 0 : station_room(&strip->station, jar, NULL);
}

static void go_to(struct desk *desk, enum start_field field)
{
	struct start_card *card = card_of(desk);
	const struct strip *strip = canner(desk);

	card->field = field;
	picker_reset(&card->picker);
	if (field == START_JAR) {
		const struct product *product = product_named(card->order.product);
		const struct jar_size *usual = jar_size_named(product == NULL ? "pint" : product->usual_jar);

		card->picker.cursor = usual == NULL ? 0 : jar_size_index(usual);
		/* The usual jar, or the largest smaller one this canner has room for. */
		while (card->picker.cursor > 0 && strip != NULL &&
		       station_room(&strip->station, &jar_sizes[card->picker.cursor], NULL) == 0)
			card->picker.cursor--;
	}
	card->count.touched = false;
}

static void choose_product(struct desk *desk)
{
	struct start_card *card = card_of(desk);
	int chosen = nth_product(card, card->picker.cursor);

	if (chosen < 0 || picker_blank(desk, &card->picker, card->products[chosen].name, choice_count(card)))
		return;
	card->product = (size_t)chosen;
	text_copy(card->order.product, sizeof(card->order.product), card->products[chosen].name);
	text_copy(card->order.food, sizeof(card->order.food), card->products[chosen].food);
	go_to(desk, START_PACK);
	/* Jars boiled first have the shorter process: never what one gets by pressing
	 * on.  Begin at a pack for jars as they are, where there is one. */
	for (int n = 0; nth_pack(card, n) != NULL; n++)
		if (strstr(nth_pack(card, n), "unsterile") != NULL)
			card->picker.cursor = n;
	if (choice_count(card) == 1) {
		text_copy(card->order.pack, sizeof(card->order.pack), nth_pack(card, 0));
		go_to(desk, START_JAR);
	}
}

static void choose_jar(struct desk *desk)
{
	struct start_card *card = card_of(desk);
	struct fault fault = { 0 };

	text_copy(card->order.jar, sizeof(card->order.jar), jar_sizes[card->picker.cursor].name);
	card->order.pressure_psi = NO_PRESSURE;
	card->has_process = kitchen_process(desk->kitchen, &card->order, &card->process, &fault);
	if (!card->has_process) {
		desk_say_fault(desk, &fault);
		return;
	}
	if (room_for_jar(desk) == 0) {
		desk_say(desk, ROLE_CAUTION, "This canner has no room set for %s. Set it in the house view (h).",
		         jar_sizes[card->picker.cursor].plural);
		return;
	}
	card->count.value = room_for_jar(desk);
	go_to(desk, card->process.option_count > 0 ? START_PRESSURE : START_COUNT);
}

static void choose_pressure(struct desk *desk)
{
	struct start_card *card = card_of(desk);
	struct process_option option = option_at(card, card->picker.cursor);
	struct fault fault = { 0 };

	card->order.pressure_psi = option.pressure_psi;
	card->has_process = kitchen_process(desk->kitchen, &card->order, &card->process, &fault);
	if (card->has_process)
		go_to(desk, START_COUNT);
	else
		desk_say_fault(desk, &fault);
}

static void choose_count(struct desk *desk)
{
	struct start_card *card = card_of(desk);
	int room = room_for_jar(desk);

	card->order.jars = card->count.value;
	if (card->order.jars < 1)
		desk_say(desk, ROLE_CAUTION, "Type how many jars.");
	else if (card->order.jars > room)
		desk_say(desk, ROLE_CAUTION, "This canner takes %d; the other %d %s for the next load.", room,
		         card->order.jars - room, count_noun(card->order.jars - room, "waits").words);
	else
		go_to(desk, START_LIDS);
}

static bool asks_acid(const struct start_card *card)
{
	enum acid answers[ACID_COUNT];

	return acid_answers(food_of(card), card->process.jar, answers) > 0;
}

static void choose_lids(struct desk *desk)
{
	struct start_card *card = card_of(desk);

	if (lid_box_choose(desk, card->boxes, card->box_count, card->picker.cursor, card->order.jars,
	                   &card->order.lid_box_id))
		go_to(desk, asks_acid(card) ? START_ACID : START_READY);
}

static bool vinegar_typed(struct desk *desk, const char *text)
{
	card_of(desk)->order.vinegar_tenths = desk_vinegar(desk, text);
	if (card_of(desk)->order.vinegar_tenths == 0)
		return false;
	go_to(desk, START_READY);
	return true;
}

static void ask_vinegar(struct desk *desk)
{
	go_to(desk, START_VINEGAR);
	desk_offer(desk, "Vinegar, percent on its label:", "5", vinegar_typed);
}

static void choose_acid(struct desk *desk)
{
	struct start_card *card = card_of(desk);
	enum acid answers[ACID_COUNT];

	if (card->picker.cursor >= (int)acid_answers(food_of(card), card->process.jar, answers))
		return;
	card->order.acid = answers[card->picker.cursor];
	card->order.vinegar_tenths = 0;
	if (acid_asks_vinegar(food_of(card)->acid_rule, card->order.acid))
		ask_vinegar(desk);
	else
		go_to(desk, START_READY);
}

static bool reason_typed(struct desk *desk, const char *text);

/* True when no line need be typed for it any more. */
static bool start_because(struct desk *desk, const char *reason)
{
	struct load_order *order = &card_of(desk)->order;
	struct fault fault = { 0 };
	int64_t load_id;

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

/* Without the acid: only with a reason, and never valid. */
static void no_acid(struct desk *desk)
{
	card_of(desk)->order.acid = ACID_NOT_SAID;
	card_of(desk)->order.vinegar_tenths = 0;
	go_to(desk, START_READY);
	(void)start_because(desk, "");
}

static bool at_acid(const struct desk *desk)
{
	return card_of(desk)->field == START_ACID;
}

static void choose(struct desk *desk)
{
	switch (card_of(desk)->field) {
	case START_PRODUCT: choose_product(desk); break;
	case START_PACK:
		text_copy(card_of(desk)->order.pack, sizeof(card_of(desk)->order.pack),
		          nth_pack(card_of(desk), card_of(desk)->picker.cursor));
		go_to(desk, START_JAR);
		break;
	case START_JAR: choose_jar(desk); break;
	case START_PRESSURE: choose_pressure(desk); break;
	case START_COUNT: choose_count(desk); break;
	case START_LIDS: choose_lids(desk); break;
	case START_ACID: choose_acid(desk); break;
	case START_VINEGAR: ask_vinegar(desk); break;
	case START_READY: (void)start_because(desk, ""); break;
	}
}

static void back(struct desk *desk)
{
	struct start_card *card = card_of(desk);

	switch (card->field) {
	case START_PRODUCT: desk_show_board(desk); break;
	case START_PACK: go_to(desk, START_PRODUCT); break;
	case START_JAR:
		go_to(desk, START_PACK);
		if (choice_count(card) <= 1)
			go_to(desk, START_PRODUCT);
		break;
	case START_PRESSURE:
	case START_COUNT: go_to(desk, START_JAR); break;
	case START_LIDS: go_to(desk, START_COUNT); break;
	case START_ACID:
	case START_VINEGAR: go_to(desk, START_LIDS); break;
	case START_READY: go_to(desk, asks_acid(card) ? START_ACID : START_LIDS); break;
	}
}

static void cursor(struct desk *desk, int by)
{
	struct start_card *card = card_of(desk);

	if (card->field != START_COUNT)
		picker_move(&card->picker, by, choice_count(card));
	else if (card->count.value - by >= 1 && card->count.value - by <= 99)
		card->count.value -= by;
}

static void up(struct desk *desk)
{
	cursor(desk, -1);
}

static void down(struct desk *desk)
{
	cursor(desk, 1);
}

static bool typed(struct desk *desk, long key)
{
	struct start_card *card = card_of(desk);

	if (types(desk, key)) {
		picker_typed(desk, &card->picker, key, product_name);
		return true;
	}
	if (card->field == START_COUNT && number_typed(&card->count, key, 99))
		return true;
	if (key == KEY_CODE_BACKSPACE) {
		back(desk);
		return true;
	}
	return false;
}

static void enter(struct desk *desk, const struct opening *opening)
{
	struct start_card *card = card_of(desk);
	struct fault fault = { 0 };
	const struct strip *strip;

	free(card->boxes);
	memset(card, 0, sizeof(*card));
	card->order.station_id = opening->id;
	card->order.pressure_psi = NO_PRESSURE;
	strip = canner(desk);
	if (strip == NULL)
		return;
	if (!kitchen_board(desk->kitchen)->house.elevation.known) {
		desk_say(desk, ROLE_STOP, "The elevation is not known, so no process can be given. Set it first.");
		desk_open(desk, VIEW_HOUSE);
		return;
	}
	card->method = station_method(strip->station.kind);
	list_products(card);
	if (!kitchen_lid_boxes(desk->kitchen, &card->boxes, &card->box_count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	desk_show_view(desk, VIEW_START);
}

/* --- drawing --------------------------------------------------------------------------- */

static const char *const questions[] = {
	[START_PRODUCT] = "What goes in? Type a few letters, or move.",
	[START_PACK] = "How is it packed?",
	[START_JAR] = "Which jars?",
	[START_PRESSURE] = "Which of the published pairs?",
	[START_COUNT] = "How many jars?",
	[START_LIDS] = "Which lid box?",
	[START_ACID] = "Is its acid in? Bottled, never fresh. Space only if it is.",
	[START_VINEGAR] = "How strong is the vinegar? Space, then its percent.",
	[START_READY] = "Ready. Space starts; the clock waits.",
};

static void chosen_words(const struct desk *desk, struct text *text)
{
	const struct start_card *card = card_of(desk);
	const struct strip *strip = canner(desk);

	text_add(text, "%d %s", strip == NULL ? 0 : strip->station.digit, strip == NULL ? "" : strip->station.name);
	if (card->field > START_PRODUCT)
		text_add(text, " > %s", card->order.product);
	if (card->field > START_PACK)
		text_add(text, " > %s", pack_words(card->order.pack));
	if (card->field > START_JAR) {
		const struct jar_size *jar = jar_size_named(card->order.jar);

		int jars = card->field == START_COUNT ? card->count.value : card->order.jars;

		if (card->field >= START_COUNT)
			text_add(text, " > %d %s", jars, jar_size_words(card->order.jar, jars));
		else
			text_add(text, " > %s", jar == NULL ? "" : jar->plural);
	}
}

static void choices_draw(struct desk *desk, int top, int rows, int cols)
{
	struct start_card *card = card_of(desk);
	int count = choice_count(card);

	picker_draw(desk, &card->picker, top, rows, cols, count, choice_words);
	if (count == 0 && card->field == START_PRODUCT)
		terminal_put(desk->terminal, top, 3, cols - 4, ROLE_CAUTION,
		             "Nothing by that name has a published process for this canner.");
}

static int line(struct desk *desk, int row, int end, int cols, enum role role, const char *words)
{
	int most;

	if (words[0] == '\0' || row >= end)
		return row;
	most = cols < 60 ? 4 : 2; /* a caution is worth more than what comes after it */
	return row + desk_paragraph(desk, row, 3, cols - 4, end - row < most ? end - row : most, role, words);
}

/* What the food's own line warns of, whatever name it was chosen by. */
static int caution_draw(struct desk *desk, int row, int end, int cols)
{
	const struct start_card *card = card_of(desk);
	const struct food *food = food_of(card);
	const char *of_product = card->products[card->product].caution;

	row = line(desk, row, end, cols, ROLE_CAUTION, of_product);
	if (food == NULL || strcmp(food->caution, of_product) == 0)
		return row;
	return line(desk, row, end, cols, ROLE_CAUTION, food->caution);
}

/* What must not be in it, in as many rows as are left. */
static void must_not_draw(struct desk *desk, int row, int end, int cols)
{
	const struct food *food = food_of(card_of(desk));
	char words[CAUTION_BYTES];
	struct text text = TEXT_OVER(words);

	if (food == NULL || row >= end)
		return;
	food_must_not_words(food, &text);
	words[0] = words[0] == 'm' ? 'M' : words[0];
	(void)desk_paragraph(desk, row, 3, cols - 4, end - row, ROLE_CAUTION, words);
}

/* The process as published, and what goes with it. */
static void process_draw(struct desk *desk, int top, int rows, int cols)
{
	const struct start_card *card = card_of(desk);
	const struct process *process = &card->process;
	char words[400];
	char headspace[24];
	struct text text = TEXT_OVER(words);
	int end = top + rows;
	int row = top;

	headspace_words(process->row->headspace_thou, headspace, sizeof(headspace));
	text_add(&text, "%d min", process->minutes);
	if (process->pressure_psi != NO_PRESSURE)
		text_add(&text, " at %d psi", process->pressure_psi);
	text_add(&text, ", headspace %s", headspace);
	row = line(desk, row, end, cols, ROLE_STRONG, words);
	if (process->row->confirmed == CONFIRMED_PRACTICE)
		row = line(desk, row, end, cols, ROLE_CAUTION, IN_NO_TABLE);
	if (process->jar_sized_up) {
		text = TEXT_OVER(words);
		text_add(&text, "No row for this size in this pack: takes the %s row, the next larger tested size.",
		         process->jar_in_table->words);
		row = line(desk, row, end, cols, ROLE_CAUTION, words);
	}
	if (process->band_raised)
		row = line(desk, row, end, cols, ROLE_CAUTION,
		           "The elevation is rounded and touches a higher band: the higher one is used.");
	if (process->above_tables)
		row = line(desk, row, end, cols, ROLE_CAUTION,
		           "Above 8,000 ft another table asks for more time for other foods: ask your extension "
		           "office.");
	if (process->jars_sterile) {
		text = TEXT_OVER(words);
		text_add(&text, "For jars boiled %d min before filling, and only for those.",
		         jar_sterilising_minutes(&kitchen_board(desk->kitchen)->house.elevation));
		row = line(desk, row, end, cols, ROLE_CAUTION, words);
	}
	row = caution_draw(desk, row, end, cols);
	row = line(desk, row, end, cols, ROLE_QUIET,
	           "Your recipe, your canner's manual and your extension office outrank this program.");
	must_not_draw(desk, row, end, cols);
}

/* Of the product that is chosen, or at the cursor; then of its process and its food. */
static void sources(const struct desk *desk, struct sources *page)
{
	const struct start_card *card = card_of(desk);
	int here = card->field == START_PRODUCT ? nth_product(card, card->picker.cursor) : (int)card->product;
	bool process = card->has_process && card->field > START_JAR;
	const struct product *product;

	if (here < 0)
		return;
	product = product_named(card->products[here].name);
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
static int acid_draw(struct desk *desk, int row, int cols)
{
	const struct start_card *card = card_of(desk);
	bool is_in = acid_is_answer(food_of(card), card->process.jar, card->order.acid);
	char words[ACID_ANSWER_BYTES + 32];
	struct text text = TEXT_OVER(words);

	text_add(&text, "Acid: ");
	if (is_in)
		acid_answer_words(food_of(card), card->order.acid, card->process.jar, card->order.jars, &text);
	else
		text_add(&text, "NOT in.");
	if (card->order.vinegar_tenths > 0)
		text_add(&text, ", %d.%d percent", card->order.vinegar_tenths / 10, card->order.vinegar_tenths % 10);
	return desk_paragraph(desk, row, 3, cols - 4, 2, is_in ? ROLE_PLAIN : ROLE_STOP, words);
}

static void draw(struct desk *desk, int top, int rows)
{
	struct start_card *card = card_of(desk);
	char words[400];
	struct text text = TEXT_OVER(words);
	int window_rows;
	int cols;
	int used = 2;

	terminal_size(desk->terminal, &window_rows, &cols);
	chosen_words(desk, &text);
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, words);
	picker_question_draw(desk, &card->picker, top + 1, cols, "What goes in?", questions[card->field]);
	if (card->field == START_COUNT) {
		terminal_putf(desk->terminal, top + 2, 3, cols - 4, ROLE_SELECTED, " %d ", card->count.value);
		terminal_putf(desk->terminal, top + 2, 9, cols - 10, ROLE_QUIET, "this canner takes %d",
		              room_for_jar(desk));
		used = 4;
	} else if (card->field < START_VINEGAR) {
		int count = choice_count(card);
		bool all = card->field == START_LIDS || card->field == START_PRESSURE || card->field == START_ACID;
		int room = all ? count : rows - 2;

		choices_draw(desk, top + 2, room < rows - 2 ? room : rows - 2, cols);
		used = 3 + room;
	}
	if (card->field == START_READY && asks_acid(card))
		used = 2 + acid_draw(desk, top + 2, cols);
	if (card->has_process && card->field > START_JAR)
		process_draw(desk, top + used, rows - used, cols);
}

static const char *choose_words(const struct desk *desk)
{
	return card_of(desk)->field == START_READY  ? "START the load"
	       : card_of(desk)->field == START_ACID ? "it is in"
	                                            : "choose";
}

static const char *const pages[] = {
	"product", "pack", "jar", "pair", "count", "lids", "acid", "vinegar", "ready", NULL
};

static int page(const struct desk *desk)
{
	return (int)card_of(desk)->field;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "choose", "Choose what is under the cursor, and go to the next.", NULL,
	  choose },
	{ 'n', 0, "n", "no acid in", "Started without the acid: with a reason, and not valid.", at_acid, no_acid },
	{ KEY_CODE_LEFT, 0, "Left", "one back", "Back to the choice before.", NULL, back },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the board; nothing is recorded.", NULL, desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above; one jar more.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below; one jar less.", NULL, down },
	{ KEY_CODE_RIGHT, 0, "Right", NULL, "Same as Space.", NULL, choose },
	{ 0, 0, "letters", NULL, "Products: only those with these letters. Number: digits.", NULL, NULL },
};

const struct view start_view = {
	.title = "Load card",
	.state = &card_state,
	.pages = pages,
	.page = page,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.sources = sources,
	.keeps = true,
	.typed = typed,
	.types = types,
	.first_key_words = choose_words,
};
