/*
 * card_view.c - the station card of a pot: its clock in tall digits, what goes
 * in and when, each line to read and tick off, and what really went in.
 */
#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "base/words.h"
#include "kitchen/board/book.h"
#include "kitchen/board/look.h"
#include "kitchen/pot/pot.h"
#include "screen/term/digits.h"
#include "screen/ui/clock_line.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

/* The station card of a pot: lines to read and tick off. */
struct station_card {
	int64_t batch_id;
	struct log_batch batch;
	struct list_state list;
	struct log_batch_amount *amounts;
	size_t count;
	int place; /* while a reason is asked for: the line, and what was typed */
	int64_t used;
};

static void clear(void *state)
{
	struct station_card *card = state;

	free(card->amounts);
}

static const struct view_state card_state = { sizeof(struct station_card), clear };

static struct station_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_CARD);
}

/* The pot the batch is in; NULL when it has left it. */
static const struct strip *strip_of(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content == STRIP_BATCH &&
		    strip_batch(&board->strips[i])->row.id == card_of(desk)->batch_id)
			return &board->strips[i];
	return NULL;
}

static void refresh(struct desk *desk)
{
	struct fault fault = { 0 };
	struct log_batch_amount *amounts;
	size_t count;

	if (!kitchen_batch_get(desk->kitchen, card_of(desk)->batch_id, &card_of(desk)->batch, &fault) ||
	    !kitchen_batch_amounts(desk->kitchen, card_of(desk)->batch_id, &amounts, &count, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	free(card_of(desk)->amounts);
	card_of(desk)->amounts = amounts;
	card_of(desk)->count = count;
}

/* A step that sends somebody to the card means a line of it, which may be far down. */
static void point_at_what_goes_in(struct desk *desk)
{
	const struct strip *strip = strip_of(desk);

	for (size_t i = 0; strip != NULL && i < card_of(desk)->count; i++) {
		const struct ingredient *line = ingredient_of(strip_batch(strip)->recipe, &card_of(desk)->amounts[i]);

		if (line == NULL || !batch_goes_in(strip, line->adding))
			continue;
		card_of(desk)->list.cursor = (int)i;
		return;
	}
}

static void enter(struct desk *desk, const struct opening *opening)
{
	card_of(desk)->batch_id = opening->id;
	card_of(desk)->list = (struct list_state){ 0 };
	desk_show_view(desk, VIEW_CARD);
	refresh(desk);
	point_at_what_goes_in(desk);
}

/* --- drawing ------------------------------------------------------------------- */

static const char *when_words(enum adding adding)
{
	static const char *const words[ADDING_COUNT] = {
		[ADD_AT_START] = "at the start", [ADD_AT_BOIL] = "at the boil", [ADD_LAST] = "last",
		[ADD_IN_JAR] = "in each jar",    [ADD_AHEAD] = "ahead",         [ADD_PACKED] = "into the jars",
	};

	return (unsigned)adding < ADDING_COUNT ? words[adding] : "";
}

static void clock_draw(const struct desk *desk, const struct strip *strip, int top, int cols)
{
	struct face face;
	char clock[24];
	char alarm[56];
	int width;

	strip_face(strip, &desk->now, &face);
	strip_alarm_words(desk, &face, alarm, sizeof(alarm));
	strip_clock_tall(strip, &face, clock, sizeof(clock));
	width = digits_columns(clock, DIGITS_TALL);
	digits_draw(desk->terminal, top, 1, clock, DIGITS_TALL, strip_role(desk, &face));
	terminal_putf(desk->terminal, top, width + 4, cols - width - 5, ROLE_STRONG, "%d %s", strip->station.digit,
	              strip->station.name);
	terminal_putf(desk->terminal, top + 1, width + 4, cols - width - 5, strip_role(desk, &face), "%s%s%s",
	              strip->rule->words, alarm[0] != '\0' ? "  " : "", alarm);
	terminal_putf(desk->terminal, top + 2, width + 4, cols - width - 5, ROLE_PLAIN, "%s, %s", strip->holds,
	              strip->lot.code);
	desk_paragraph(desk, top + 3, width + 4, cols - width - 5, 2, ROLE_STRONG, face.act);
}

/* The same where there is no room for tall digits. */
static int clock_words_draw(const struct desk *desk, const struct strip *strip, int top, int cols)
{
	const char *acts[2];
	struct face face;
	char clock[24];
	char words[200];

	strip_face(strip, &desk->now, &face);
	strip_clock_words(strip, &face, clock, sizeof(clock));
	acts[0] = face.act;
	acts[1] = face.brief;
	for (size_t i = 0; i < sizeof(acts) / sizeof(acts[0]); i++) {
		(void)snprintf(words, sizeof(words), "%d %s %s  %s", strip->station.digit, strip->rule->words, clock,
		               acts[i]);
		if ((int)strlen(words) <= cols - 2)
			break;
	}
	return desk_paragraph(desk, top, 1, cols - 2, 2, strip_role(desk, &face), words);
}

/* The words the card has for so much of it; false when they would not be read as just
 * that much again (spoons of what is kept by weight). */
static bool as_on_card(const struct desk *desk, const struct log_batch_amount *amount, int64_t much, char *buffer,
                       size_t size)
{
	struct measured measured;
	int64_t again;

	measure_amount(amount->measure, amount->supply, much, desk_units(desk), &measured);
	text_copy(buffer, size, measured.words);
	for (char *at = buffer; *at != '\0'; at++)
		if (*at == '-')
			*at = ' '; /* "7-1/2 cups" is typed as "7 1/2 cups" */
	return amount_read(buffer, amount->measure, amount->supply, &again, NULL) && again == much;
}

/* An alternative that was not taken is told by what it would be. */
static int64_t told_of(const struct ingredient *line, const struct log_batch_amount *amount)
{
	return line != NULL && ingredient_is_alternative(line) && amount->used == 0 ? amount->wanted : amount->used;
}

/* "2 1/2 lb, to 3 lb  chile peppers, at the start": as it stands in the recipe, or as
 * it was corrected. */
/* When it goes in.  In a narrow window what is said of nothing goes in at the start. */
static void added_words(const struct desk *desk, const struct ingredient *line, struct text *text)
{
	enum adding adding = line == NULL ? ADD_AT_START : line->adding;

	if (adding != ADD_AT_START || desk_columns(desk) >= NARROW)
		text_add(text, ", %s", when_words(adding));
	if (line != NULL && line->optional)
		text_add(text, ", if wanted");
}

static void amount_line(const struct desk *desk, const struct recipe *recipe, const struct log_batch_amount *amount,
                        struct text *text)
{
	const struct ingredient *line = ingredient_of(recipe, amount);
	int64_t much = told_of(line, amount);
	bool untaken = much != amount->used;
	char words[96];

	text_add(text, "%s%s", untaken ? "or " : "",
	         line != NULL && line->amount_most == line->amount && amount->used == amount->wanted ? "at most " : "");
	bool exact = as_on_card(desk, amount, much, words, sizeof(words));
	text_add(text, "%s", words);
	if (!exact) {
		amount_words(amount->measure, much, desk_units(desk), words, sizeof(words));
		text_add(text, " (%s)", words);
	}
	if (line != NULL && line->amount_most > line->amount && amount->used == amount->wanted) {
		(void)as_on_card(desk, amount, line->amount_most * card_of(desk)->batch.multiple, words, sizeof(words));
		text_add(text, " to %s", words);
	}
	text_add(text, "  %s", amount->ingredient);
	if (amount->supply == SUPPLY_VINEGAR && recipe != NULL && recipe->vinegar_percent > 0)
		text_add(text, " of %d %%", recipe->vinegar_percent);
	if (untaken)
		text_add(text, ", instead of %s", line->instead_of);
	else
		added_words(desk, line, text);
	if (amount->used != amount->wanted && amount->supply == SUPPLY_JUICE)
		text_add(text, " (corrected)");
}

static void amount_list_line(const struct desk *desk, struct list_line *line)
{
	const struct recipe *recipe = line->of;
	struct text text = text_over(line->words, sizeof(line->words));
	bool ticked;

	assert(line->n >= 0);
	ticked = (card_of(desk)->batch.ticks & 1u << line->n) != 0;
	amount_line(desk, recipe, &card_of(desk)->amounts[line->n], &text);
	line->role = ticked ? ROLE_QUIET : ROLE_STRONG;
	line->col = 7;
	terminal_putf(desk->terminal, line->row, 3, 3, ticked ? ROLE_DONE : ROLE_WAITING, "[%s]",
	              ticked ? glyph(desk->terminal, GLYPH_CHECK) : " ");
}

static int amounts_draw(const struct desk *desk, const struct recipe *recipe, int top, int rows)
{
	int count = (int)card_of(desk)->count;
	const struct list_area area = { .top = top,
		                        .rows = rows,
		                        .left = 1,
		                        .air = count > 0 && (rows - 3) / count >= 2, /* it is read from a step away */
		                        .count = count,
		                        .of = recipe,
		                        .line = amount_list_line };

	return list_draw(desk, &card_of(desk)->list, &area);
}

static void steps_draw(const struct desk *desk, const struct recipe *recipe, int *row, int end, int cols)
{
	const struct recipe_step *steps;
	size_t count = recipe_steps_of(recipe, &steps);

	for (size_t i = 0; i < count && *row < end; i++) {
		char time[40];
		char words[400];
		struct text text = TEXT_OVER(words);

		recipe_step_time(&steps[i], time, sizeof(time));
		text_add(&text, "Step %d: %s%s%s.", steps[i].number, steps[i].what, time[0] != '\0' ? ": " : "", time);
		if (desk_paragraph_lines(words, cols - 4) > end - *row) {
			terminal_putf(desk->terminal, *row, 3, cols - 4, ROLE_QUIET, "%s on the batch card.",
			              count_words((int64_t)(count - i), "more step").words);
			*row = end;
			return;
		}
		*row += desk_paragraph(desk, *row, 3, cols - 4, end - *row, ROLE_PLAIN, words);
	}
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct recipe *recipe = kitchen_recipe_named(desk->kitchen, card_of(desk)->batch.recipe);
	const struct strip *strip = strip_of(desk);
	int cols = desk_columns(desk);
	int head = rows < 12 || strip == NULL ? 1 : 6;
	int end = top + rows;
	int row;

	if (strip == NULL)
		terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "%d x %s, out of the pot: corrections",
		              card_of(desk)->batch.multiple, card_of(desk)->batch.recipe);
	else if (head > 1)
		clock_draw(desk, strip, top, cols);
	else
		head = clock_words_draw(desk, strip, top, cols);
	row = top + head + amounts_draw(desk, recipe, top + head, rows - head);
	if (recipe == NULL || row >= end)
		return;
	row += desk_whole(desk, row, 3, cols - 4, end - row, ROLE_CAUTION, recipe->caution);
	steps_draw(desk, recipe, &row, end, cols);
}

static void sources(const struct desk *desk, struct sources *page)
{
	const struct recipe *recipe = kitchen_recipe_named(desk->kitchen, card_of(desk)->batch.recipe);
	const struct strip *strip = strip_of(desk);

	if (recipe != NULL)
		sources_add_recipe(page, recipe);
	if (strip != NULL)
		sources_add_phase(page, kitchen_board(desk->kitchen), strip->rule);
}

/* --- keys ------------------------------------------------------------------------- */

static void tick(struct desk *desk)
{
	int line = card_of(desk)->list.cursor;
	struct fault fault = { 0 };

	if (line >= (int)card_of(desk)->count)
		return;
	if (!kitchen_tick(desk->kitchen, card_of(desk)->batch_id, line, (card_of(desk)->batch.ticks & 1u << line) == 0,
	                  &fault))
		desk_say_fault(desk, &fault);
	else
		list_move(&card_of(desk)->list, 1, (int)card_of(desk)->count);
	refresh(desk);
}

static bool reason_typed(struct desk *desk, const char *text);

/* True when no line need be typed for it any more. */
static bool correct(struct desk *desk, const char *reason)
{
	struct station_card *card = card_of(desk);
	struct fault fault = { 0 };

	if (kitchen_batch_amount(desk->kitchen, card->batch_id, card->place, card->used, reason, &fault)) {
		refresh(desk);
		desk_say(desk, ROLE_DONE, "Corrected, on the shelf too. (u undoes)");
		return true;
	}
	if (fault.kind == FAULT_STOPPED)
		desk_ask_reason(desk, &fault, reason, reason_typed);
	else
		desk_say_fault(desk, &fault);
	return false;
}

static bool reason_typed(struct desk *desk, const char *text)
{
	return correct(desk, text);
}

static bool amount_typed(struct desk *desk, const char *text)
{
	const struct log_batch_amount *amount = &card_of(desk)->amounts[card_of(desk)->list.cursor];
	struct fault fault = { 0 };

	if (!amount_read(text, amount->measure, amount->supply, &card_of(desk)->used, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	card_of(desk)->place = amount->place;
	return correct(desk, "");
}

static void edit(struct desk *desk)
{
	const struct log_batch_amount *amount;
	int64_t much;
	char words[96];

	if (card_of(desk)->list.cursor >= (int)card_of(desk)->count)
		return;
	amount = &card_of(desk)->amounts[card_of(desk)->list.cursor];
	much = told_of(ingredient_of(kitchen_recipe_named(desk->kitchen, card_of(desk)->batch.recipe), amount), amount);
	if (!as_on_card(desk, amount, much, words, sizeof(words)))
		amount_exact_words(amount->measure, amount->supply, much, desk_units(desk), words, sizeof(words));
	desk_offer(desk, "Actually used:", words, amount_typed);
}

static bool note_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };

	if (!kitchen_batch_note(desk->kitchen, card_of(desk)->batch_id, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	refresh(desk);
	return true;
}

static void note(struct desk *desk)
{
	desk_offer(desk, "Note:", card_of(desk)->batch.note, note_typed);
}

static void undo(struct desk *desk)
{
	struct log_subject subject = { SUBJECT_BATCH, card_of(desk)->batch_id };

	desk_undo(desk, subject);
	refresh(desk);
}

/* "9 half-pints": how many jars of a size the batch really filled. */
static bool jars_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	char *size;
	long jars = strtol(text, &size, 10);
	const struct jar_size *jar = jar_size_named(size + strspn(size, " "));

	if (size == text || jars < 0 || jars > 99 || jar == NULL) {
		desk_say(desk, ROLE_CAUTION, "Type the number, 0 to 99, and the size: 9 half-pints");
		return false;
	}
	if (!kitchen_batch_jars(desk->kitchen, card_of(desk)->batch_id, jar->name, (int)jars, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Corrected. (u undoes)");
	return true;
}

static void edit_jars(struct desk *desk)
{
	struct fault fault = { 0 };
	char words[64] = "0 half-pints";

	for (size_t i = jar_size_count; i-- > 0;) {
		int jars;

		if (!kitchen_jars_filled(desk->kitchen, card_of(desk)->batch_id, jar_sizes[i].name, &jars, &fault)) {
			desk_say_fault(desk, &fault);
			return;
		}
		if (jars > 0)
			(void)snprintf(words, sizeof(words), "%d %s", jars, jar_size_words(jar_sizes[i].name, jars));
	}
	desk_offer(desk, "Jars filled:", words, jars_typed);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = (int)card_of(desk)->count;
	return &card_of(desk)->list;
}

static const struct view_key keys[] = {
	{ 't', KEY_CODE_ENTER, "t", "it is in", "Check off the line under the cursor, or uncheck it.", NULL, tick },
	{ 'e', 0, "e", "actually used", "Correct what actually went in, on the shelf too.", NULL, edit },
	{ 'j', 0, "j", "jars", "Correct how many jars were filled.", NULL, edit_jars },
	{ 'n', 0, "n", "note", "Write a note for this batch.", NULL, note },
	{ 'u', 0, "u", "undo", "Undo the last action at this pot.", NULL, undo },
	{ KEY_CODE_ESCAPE, ' ', "Esc", "board", "Back to the board, where Space is the next step.", NULL,
	  desk_show_board },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

const struct view card_view = {
	.title = "Station card",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = draw,
	.sources = sources,
};
