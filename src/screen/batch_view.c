/*
 * batch_view.c - the batch card of a pot: recipe, pack, jar, how many batches;
 * then what to measure, what is short, where the jars will go, and one key.
 */
#include <stdio.h>
#include <string.h>

#include "engine/text.h"
#include "screen/desk.h"

static const struct recipe *chosen(const struct desk *desk)
{
	return kitchen_recipe_named(desk->kitchen, desk->batch.order.recipe);
}

/* --- what can be chosen ------------------------------------------------------------ */

static const struct recipe *nth_recipe(const struct desk *desk, int n)
{
	for (size_t i = 0; i < kitchen_recipe_count(desk->kitchen); i++) {
		const struct recipe *recipe = kitchen_recipe(desk->kitchen, i);

		if (picker_matches(&desk->batch.picker, recipe->name) && n-- == 0)
			return recipe;
	}
	return NULL;
}

/* The n-th word of a blank-separated list; false when there is none. */
static bool nth_word(const char *list, int n, char *buffer, size_t size)
{
	while (*list != '\0') {
		size_t length = strcspn(list, " ");

		if (n-- == 0) {
			(void)snprintf(buffer, size, "%.*s", (int)length, list);
			return true;
		}
		list += length;
		list += strspn(list, " ");
	}
	buffer[0] = '\0';
	return false;
}

static int choice_count(const struct desk *desk)
{
	const struct recipe *recipe = chosen(desk);
	char word[WORD_MAX_BYTES];
	int count = 0;

	switch (desk->batch.field) {
	case BATCH_RECIPE:
		while (nth_recipe(desk, count) != NULL)
			count++;
		break;
	case BATCH_PACK:
		while (recipe != NULL && nth_word(recipe->packs, count, word, sizeof(word)))
			count++;
		break;
	case BATCH_JAR:
		while (recipe != NULL && nth_word(recipe->jars, count, word, sizeof(word)))
			count++;
		break;
	case BATCH_MULTIPLE:
	case BATCH_READY: break;
	}
	return count;
}

static void recipe_words(const struct recipe *recipe, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	text_add(&text, "%s", recipe->name);
	if (recipe->pectin != PECTIN_NONE)
		text_add(&text, ", %s", pectin_words(recipe->pectin));
	if (recipe->food[0] == '\0')
		text_add(&text, "  (no published process)");
}

static void choice_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct recipe *recipe = chosen(desk);
	char word[WORD_MAX_BYTES];

	buffer[0] = '\0';
	switch (desk->batch.field) {
	case BATCH_RECIPE:
		recipe_words(nth_recipe(desk, n), buffer, size);
		break;
	case BATCH_PACK:
		if (nth_word(recipe->packs, n, word, sizeof(word)))
			text_copy(buffer, size, pack_words(word));
		break;
	case BATCH_JAR:
		if (nth_word(recipe->jars, n, word, sizeof(word)) && jar_size_named(word) != NULL)
			text_copy(buffer, size, jar_size_named(word)->plural);
		break;
	case BATCH_MULTIPLE:
	case BATCH_READY: break;
	}
}

/* --- moving through the card ----------------------------------------------------------- */

static void look(struct desk *desk)
{
	struct batch_card *card = &desk->batch;
	int multiple = card->multiple.value < 1 ? 1 : card->multiple.value;

	if (multiple != card->order.multiple)
		card->order.reason[0] = '\0'; /* it was given for that number */
	card->order.multiple = multiple;
	memset(&card->refusal, 0, sizeof(card->refusal));
	card->need_known = kitchen_batch_need(desk->kitchen, &card->order, &card->need, &card->refusal);
	card->sure = false;
}

static void go_to(struct desk *desk, enum batch_field field)
{
	struct batch_card *card = &desk->batch;

	card->field = field;
	picker_reset(&card->picker);
	card->need_known = false;
	memset(&card->refusal, 0, sizeof(card->refusal));
	if (field == BATCH_MULTIPLE)
		card->multiple = (struct number_entry){ .value = 1 };
	if (field >= BATCH_MULTIPLE)
		look(desk);
}

static void choose_recipe(struct desk *desk)
{
	const struct recipe *recipe = nth_recipe(desk, desk->batch.picker.cursor);
	struct batch_order *order = &desk->batch.order;

	if (recipe == NULL || picker_blank(desk, &desk->batch.picker, recipe->name, choice_count(desk)))
		return;
	text_copy(order->recipe, sizeof(order->recipe), recipe->name);
	order->pack[0] = '\0';
	order->acid = ACID_NOT_SAID;
	go_to(desk, BATCH_PACK);
	/* As on the load card: not the pack with the shorter process. */
	for (int n = 0; nth_word(recipe->packs, n, order->pack, sizeof(order->pack)); n++)
		if (strstr(order->pack, "unsterile") != NULL)
			desk->batch.picker.cursor = n;
	if (choice_count(desk) <= 1) {
		(void)nth_word(recipe->packs, 0, order->pack, sizeof(order->pack));
		go_to(desk, BATCH_JAR);
	}
}

static bool reason_typed(struct desk *desk, const char *text);

/* True when no line need be typed for it any more. */
static bool choose_multiple(struct desk *desk, const char *tried)
{
	look(desk);
	if (desk->batch.need_known) {
		desk->batch.field = BATCH_READY;
		if (desk->batch.order.reason[0] != '\0')
			desk_say(desk, ROLE_CAUTION, "The process of its jars will count as UNKNOWN.");
		return true;
	}
	if (desk->batch.refusal.kind != FAULT_STOPPED) {
		desk_say_fault(desk, &desk->batch.refusal);
		return true;
	}
	desk_ask_reason(desk, &desk->batch.refusal, tried, reason_typed);
	return false;
}

static bool reason_typed(struct desk *desk, const char *text)
{
	text_copy(desk->batch.order.reason, sizeof(desk->batch.order.reason), text);
	return choose_multiple(desk, text);
}

static void start(struct desk *desk)
{
	struct batch_card *card = &desk->batch;
	struct fault fault = { 0 };
	int64_t batch_id;

	if (kitchen_start_batch(desk->kitchen, &card->order, card->sure, &batch_id, &fault)) {
		desk->selected_station = card->order.station_id;
		desk->selected_load = 0;
		card_view_enter(desk, batch_id);
		desk_say(desk, ROLE_DONE, "Batch started; what it takes is off the shelf. (u undoes)");
		return;
	}
	card->sure = fault.kind == FAULT_CONFIRM;
	desk_say_fault(desk, &fault);
	if (card->sure)
		desk_say(desk, ROLE_CAUTION, "%s Space again if so.", fault.sentence);
}

static void choose(struct desk *desk)
{
	struct batch_card *card = &desk->batch;
	const struct recipe *recipe = chosen(desk);

	switch (card->field) {
	case BATCH_RECIPE: choose_recipe(desk); break;
	case BATCH_PACK:
		if (nth_word(recipe->packs, card->picker.cursor, card->order.pack, sizeof(card->order.pack)))
			go_to(desk, BATCH_JAR);
		break;
	case BATCH_JAR:
		if (nth_word(recipe->jars, card->picker.cursor, card->order.jar, sizeof(card->order.jar)))
			go_to(desk, BATCH_MULTIPLE);
		break;
	case BATCH_MULTIPLE: (void)choose_multiple(desk, ""); break;
	case BATCH_READY: start(desk); break;
	}
}

static void back(struct desk *desk)
{
	switch (desk->batch.field) {
	case BATCH_RECIPE: desk_show_board(desk); break;
	case BATCH_PACK: go_to(desk, BATCH_RECIPE); break;
	case BATCH_JAR:
		go_to(desk, BATCH_PACK);
		if (choice_count(desk) <= 1)
			go_to(desk, BATCH_RECIPE);
		break;
	case BATCH_MULTIPLE: go_to(desk, BATCH_JAR); break;
	case BATCH_READY: go_to(desk, BATCH_MULTIPLE); break;
	}
}

static void cursor(struct desk *desk, int by)
{
	struct batch_card *card = &desk->batch;

	if (card->field < BATCH_MULTIPLE)
		picker_move(&card->picker, by, choice_count(desk));
	else if (card->field == BATCH_MULTIPLE && card->multiple.value - by >= 1 && card->multiple.value - by <= 99) {
		card->multiple.value -= by;
		look(desk);
	}
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
	struct batch_card *card = &desk->batch;

	if (card->field == BATCH_RECIPE && picker_typed(&card->picker, key))
		return true;
	if (card->field == BATCH_MULTIPLE && number_typed(&card->multiple, key, 99)) {
		look(desk);
		return true;
	}
	if (key == KEY_CODE_BACKSPACE) {
		back(desk);
		return true;
	}
	return false;
}

/* The batch that the plan starts here next, down to the last question; Left goes
 * back to another one. */
static void take_planned(struct desk *desk)
{
	struct batch_order *order = &desk->batch.order;
	const struct log_plan_batch *planned = desk_planned_batch(desk, order->station_id);

	if (planned == NULL || kitchen_recipe_named(desk->kitchen, planned->recipe) == NULL)
		return;
	text_copy(order->recipe, sizeof(order->recipe), planned->recipe);
	text_copy(order->pack, sizeof(order->pack), planned->pack);
	text_copy(order->jar, sizeof(order->jar), planned->jar);
	go_to(desk, BATCH_MULTIPLE);
	desk->batch.multiple.value = planned->multiple;
	look(desk);
	if (desk->batch.need_known)
		desk->batch.field = BATCH_READY;
	desk_say(desk, ROLE_QUIET, "As planned; Left for another.");
}

void batch_view_enter(struct desk *desk, int64_t station_id)
{
	memset(&desk->batch, 0, sizeof(desk->batch));
	desk->batch.order.station_id = station_id;
	desk->batch.order.multiple = 1;
	desk_show_view(desk, VIEW_BATCH);
	take_planned(desk);
}

/* --- drawing ------------------------------------------------------------------------------ */

static void need_line_draw(struct desk *desk, size_t n, int row, int cols)
{
	const struct batch_need *need = &desk->batch.need;
	const struct scaled_line *line = &need->scaled.lines[n];
	const struct ingredient *ingredient = line->ingredient;
	enum unit_system units = kitchen_board(desk->kitchen)->house.units;
	bool is_short = false;
	char stock[64] = "";
	char error[32] = "";
	int permille = line->measured.error_permille;

	if (need->lines[n].replaced) {
		terminal_putf(desk->terminal, row, 3, cols - 4, ROLE_CAUTION, "Instead of %s: %s",
		              ingredient->name, need->instead.words);
		return;
	}
	if (need->lines[n].counted) {
		char have[48];

		amount_words(ingredient->supply == SUPPLY_JUICE ? MEASURE_VOLUME : supply_measure(ingredient->supply),
		             need->lines[n].stock, units, have, sizeof(have));
		is_short = need->lines[n].is_short;
		(void)snprintf(stock, sizeof(stock), " (%s%s here)", is_short ? "SHORT: " : "", have);
	}
	if (permille > ROUNDING_SHOWN_PERMILLE || permille < -ROUNDING_SHOWN_PERMILLE)
		(void)snprintf(error, sizeof(error), "  (%+d.%d %% off)", permille / 10, (permille < 0 ? -permille : permille) % 10);
	/* What it is made into comes last: that may be cut, the stock may not. */
	terminal_putf(desk->terminal, row, 3, cols - 4, is_short ? ROLE_STOP : ROLE_PLAIN, "%-*s %s%s%s%s%s%s",
	              cols < 60 ? 10 : 16, line->measured.words, ingredient->name,
	              ingredient->adding == ADD_IN_JAR ? ", in each jar" : ingredient->optional ? ", if wanted" : "",
	              error, stock, ingredient->form[0] != '\0' ? ", " : "", ingredient->form);
}

static void outlook_words(const struct desk *desk, struct text *text)
{
	const struct batch_need *need = &desk->batch.need;
	const struct jar_size *jar = jar_size_named(desk->batch.order.jar);
	char hour[8];

	if (need->yield_known)
		text_add(text, "About %d %s (%d to %d)", need->yield.jars_likely, jar == NULL ? "jars" : jar->plural,
		         need->yield.jars_low, need->yield.jars_high);
	if (need->jars_stock >= 0)
		text_add(text, "; %lld here", (long long)need->jars_stock);
	if (need->canner_in_ms == 0) {
		text_add(text, ". A canner is free now.");
	} else if (need->canner_in_ms > 0) {
		clock_words_hour(desk->now.wall_ms + need->canner_in_ms, hour, sizeof(hour));
		text_add(text, ". Canner free at ~%s.", hour);
	}
}

/* Acid is short, and the shelf holds another that is published for these jars. */
static bool may_take_instead(const struct desk *desk)
{
	const struct batch_card *card = &desk->batch;

	return card->need_known && card->need.instead.acid != ACID_NOT_SAID &&
	       card->order.acid != card->need.instead.acid;
}

static void take_instead(struct desk *desk)
{
	struct batch_card *card = &desk->batch;

	card->order.acid = card->need.instead.acid;
	look(desk);
	desk_say(desk, ROLE_DONE, "%s goes in instead; it is asked for again at the filling.",
	         acid_words(card->order.acid));
}

static void need_draw(struct desk *desk, int top, int rows, int cols)
{
	const struct batch_card *card = &desk->batch;
	const struct recipe *recipe = chosen(desk);
	char words[600];
	struct text text = TEXT_OVER(words);
	int row = top;
	int end = top + rows;

	if (!card->need_known) {
		desk_paragraph(desk, row, 3, cols - 4, 4, ROLE_STOP, card->refusal.sentence);
		return;
	}
	for (size_t i = 0; i < card->need.scaled.count && row < end - 2; i++)
		need_line_draw(desk, i, row++, cols);
	outlook_words(desk, &text);
	row += desk_paragraph(desk, row, 3, cols - 4, end - row < 2 ? end - row : 2, ROLE_STRONG, words);
	if (may_take_instead(desk) && row < end) {
		text = TEXT_OVER(words);
		text_add(&text, "i takes instead: %s", card->need.instead.words);
		row += desk_paragraph(desk, row, 3, cols - 4, end - row < 2 ? end - row : 2,
		                      ROLE_CAUTION, words);
	}
	if (card->need.short_lines > 0 && row < end)
		terminal_put(desk->terminal, row++, 3, cols - 4, ROLE_STOP, "Something is SHORT. Do not stretch it.");
	if (card->need.nowhere_to_go && row < end)
		terminal_put(desk->terminal, row++, 3, cols - 4, ROLE_CAUTION,
		             card->need.canner_in_ms < 0 ? "No canner here has a process for it."
		                                         : "No canner is free in time: the jars would wait too long.");
	row += desk_paragraph(desk, row, 3, cols - 4, end - row - 1 > 2 ? end - row - 1 : end - row, ROLE_CAUTION,
	                      recipe->caution);
	text = TEXT_OVER(words);
	text_add(&text, "Source: %s", recipe->source);
	desk_paragraph(desk, row, 3, cols - 4, end - row, ROLE_QUIET, words);
}

/* "6 Wide pot > grape jelly > half-pints > 2 batches": as far as it is chosen. */
static void chosen_words(const struct desk *desk, struct text *text)
{
	const struct board *board = kitchen_board(desk->kitchen);
	const struct batch_card *card = &desk->batch;
	const struct jar_size *jar = jar_size_named(card->order.jar);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.id == card->order.station_id)
			text_add(text, "%d %s", board->strips[i].station.digit, board->strips[i].station.name);
	if (card->field > BATCH_RECIPE)
		text_add(text, " > %s", card->order.recipe);
	if (card->field > BATCH_JAR && jar != NULL)
		text_add(text, " > %s", jar->plural);
	if (card->field > BATCH_MULTIPLE)
		text_add(text, " > %d batch%s", card->multiple.value, card->multiple.value == 1 ? "" : "es");
}

static void draw(struct desk *desk, int top, int rows)
{
	static const char *const questions[] = {
		[BATCH_RECIPE] = "What is cooked? Type a few letters, or move.",
		[BATCH_PACK] = "Which jars and pack?",
		[BATCH_JAR] = "Into which size?",
		[BATCH_MULTIPLE] = "How many batches in this pot? Type it.",
		[BATCH_READY] = "Ready. Space starts the batch and takes this off the shelf.",
	};
	struct batch_card *card = &desk->batch;
	char words[300];
	struct text text = TEXT_OVER(words);
	int window_rows;
	int cols;
	int asked;

	terminal_size(desk->terminal, &window_rows, &cols);
	chosen_words(desk, &text);
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, words);
	asked = terminal_put(desk->terminal, top + 1, 1, cols - 2, ROLE_PLAIN, questions[card->field]);
	if (card->field == BATCH_RECIPE && card->picker.filter[0] != '\0')
		terminal_putf(desk->terminal, top + 1, cols - 20, 18, ROLE_STRONG, "%s_", card->picker.filter);
	if (card->field < BATCH_MULTIPLE) {
		picker_draw(desk, &card->picker, top + 2, rows - 2, cols, choice_count(desk), choice_words);
		if (choice_count(desk) == 0)
			terminal_put(desk->terminal, top + 2, 3, cols - 4, ROLE_CAUTION,
			             "No recipe of that name. Your own are added in the house view (h).");
		return;
	}
	if (card->field == BATCH_MULTIPLE)
		terminal_putf(desk->terminal, top + 1, asked + 2 < cols - 5 ? asked + 2 : cols - 5, 5, ROLE_SELECTED, " %d ",
		              card->multiple.value);
	need_draw(desk, top + 2, rows - 2, cols);
}

static const char *choose_words(const struct desk *desk)
{
	return desk->batch.field == BATCH_READY ? "START the batch" : "choose";
}

static const struct view_key keys[] = {
    {' ', KEY_CODE_ENTER, "Space", "choose", "Choose, and on to the next.", NULL, choose},
    {'i', 0, "i", "instead", "Take the other acid, as published for these jars.", may_take_instead,
     take_instead},
    {KEY_CODE_LEFT, 0, "Left", "one back", "Back to the choice before.", NULL, back},
    {KEY_CODE_ESCAPE, 0, "Esc", "no batch", "Back to the board; nothing is recorded.", NULL,
     desk_show_board},
    {KEY_CODE_UP, 0, "Up", NULL, "The line above; one batch more.", NULL, up},
    {KEY_CODE_DOWN, 0, "Down", NULL, "The line below; one batch less.", NULL, down},
    {KEY_CODE_RIGHT, 0, "Right", NULL, "As Space.", NULL, choose},
    {0, 0, "letters", NULL, "Recipes: only those with these letters. Batches: digits.", NULL, NULL},
};

const struct view batch_view = {
	.title = "Batch card",
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
	.typed = typed,
	.first_key_words = choose_words,
};
