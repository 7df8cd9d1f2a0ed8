/*
 * entry_view.c - see entry_view.h.
 */
#include "screen/ui/entry_view.h"

#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/clock.h"
#include "kitchen/stock/shelf.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

#define FIELD_LEAST 16 /* columns of what is typed, before what stands beside it is cut */
#define WORDS_BYTES_HERE 200
#define HELP_BYTES 500
#define CHOICE_COL 5
#define CHOICES_MIN 3 /* rows of a list, before earlier answers give way */

struct entry_card {
	const struct entry_form *about;
	struct form form;
	int64_t id; /* of what is changed; 0: new */
	enum view_name back;
	void *answers;
};

static void clear(void *state)
{
	struct entry_card *card = state;

	free(card->answers);
}

static const struct view_state card_state = { sizeof(struct entry_card), clear };

static struct entry_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_ENTRY);
}

const struct entry_form *entry_form_of(const struct desk *desk)
{
	return card_of(desk)->about;
}

void *entry_answers(const struct desk *desk)
{
	return card_of(desk)->answers;
}

enum view_name entry_from(const struct desk *desk)
{
	return card_of(desk)->back;
}

static struct form *form_of(const struct desk *desk)
{
	return &card_of(desk)->form;
}

void entry_ask(struct desk *desk, const char *name)
{
	struct form *form = form_of(desk);

	for (size_t i = 0; i < form->count; i++)
		if (strcmp(form->questions[i].name, name) == 0) {
			form_to(desk, form, &form->questions[i]);
			return;
		}
}

/* --- from beginning to end ------------------------------------------------------------- */

static void leave(struct desk *desk)
{
	desk_show_view(desk, card_of(desk)->back);
}

void desk_leave_entry(struct desk *desk)
{
	const struct view *back = view_of(desk, card_of(desk)->back);

	leave(desk);
	if (back->again != NULL)
		back->again(desk);
}

static void end(struct desk *desk)
{
	const struct entry_form *about = card_of(desk)->about;
	const struct view *back = view_of(desk, card_of(desk)->back);
	struct fault fault = { 0 };
	char words[FAULT_SENTENCE_MAX / 2];
	struct text noted = TEXT_OVER(words);
	const char *behind;

	if (!about->done(desk, &noted, &fault)) {
		form_to(desk, form_of(desk), form_question(form_of(desk)));
		desk_say_fault(desk, &fault);
		return;
	}
	leave(desk);
	if (back->again != NULL)
		back->again(desk);
	behind = about->behind != NULL ? about->behind : "(u undoes)";
	desk_say(desk, ROLE_DONE, "Noted: %s.%s%s", words, behind[0] != '\0' ? " " : "", behind);
	if (about->then == NULL)
		return;
	about->then(desk);
	/* The next is asked for: there u is a letter like any. */
	if (desk->view == VIEW_ENTRY && about->behind == NULL && desk->message[0] != '\0')
		desk_say(desk, ROLE_DONE, "Noted: %s.", words);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	struct entry_card *card = card_of(desk);
	const struct entry_form *about = desk->entries[opening->entry];
	void *answers = calloc(1, about->size);

	if (answers == NULL) {
		desk_say(desk, ROLE_STOP, "There is no memory left to ask for it.");
		return;
	}
	free(card->answers);
	memset(card, 0, sizeof(*card));
	card->about = about;
	card->answers = answers;
	card->id = opening->id;
	card->back = desk->view;
	if (about->begin != NULL && !about->begin(desk, opening->id))
		return;
	desk_show_view(desk, VIEW_ENTRY);
	card->form.answers = answers;
	card->form.end = end;
	card->form.has_lines = true;
	form_begin(desk, &card->form, about->questions, about->count, leave);
	if (about->starts != NULL && about->starts(desk) != NULL)
		entry_ask(desk, about->starts(desk));
}

void desk_enter(struct desk *desk, enum entry_name name, int64_t id)
{
	desk_open_for(desk, VIEW_ENTRY, (struct opening){ .id = id, .entry = (int)name });
}

/* --- what is typed ------------------------------------------------------------------------ */

bool entry_read_day(struct desk *desk, const char *text, int64_t *wall_ms)
{
	if (text[0] == '\0') {
		*wall_ms = 0;
		return true;
	}
	if (text_same_name(text, "today")) {
		*wall_ms = clock_day_start(desk->now.wall_ms);
		return true;
	}
	if (clock_read_date(text, wall_ms))
		return true;
	desk_say(desk, ROLE_CAUTION, "A day is year, month and day, like 2026-08-30; or today, or nothing.");
	return false;
}

void entry_day_words(int64_t wall_ms, struct text *text)
{
	char day[16];

	if (wall_ms == 0)
		return;
	clock_words_date(wall_ms, day, sizeof(day));
	text_add(text, "%s", day);
}

bool entry_read_number(struct desk *desk, const char *text, int min, int max, int empty, const char *what, int *out)
{
	bool may_be_empty = empty < min || empty > max;

	if (text[0] == '\0' && may_be_empty) {
		*out = empty;
		return true;
	}
	if (word_number(text, min, max, out))
		return true;
	desk_say(desk, ROLE_CAUTION, "%s: a whole number from %d to %d%s.", what, min, max,
	         may_be_empty ? ", or nothing" : "");
	return false;
}

/* Pieces: "". */
static const char *entry_unit(const struct desk *desk, enum measure measure, enum supply_kind supply)
{
	bool metric = desk_units(desk) == UNITS_METRIC;

	switch (measure) {
	case MEASURE_VOLUME: return metric ? "L" : "qt";
	case MEASURE_MASS:
		if (supply == SUPPLY_FRUIT || supply == SUPPLY_SUGAR)
			return metric ? "kg" : "lb";
		return metric ? "g" : "oz";
	default: return "";
	}
}

void entry_amount_now(const struct desk *desk, enum measure measure, enum supply_kind supply, int64_t amount,
                      struct text *text)
{
	char words[64];

	amount_exact_words(measure, supply, amount, desk_units(desk), words, sizeof(words));
	text_add(text, "%s", words);
}

void entry_unit_beside(const struct desk *desk, enum measure measure, enum supply_kind supply, struct text *text)
{
	size_t length = strlen(desk->entry.text);

	if (length == 0 || strchr("0123456789", desk->entry.text[length - 1]) != NULL)
		text_add(text, "%s", measure == MEASURE_EACH ? "pieces" : entry_unit(desk, measure, supply));
}

void entry_letters(const struct desk *desk, char *buffer, size_t size)
{
	form_letters(form_of(desk), buffer, size);
}

/* A bare number is in that unit. */
static void with_unit(const struct desk *desk, const char *text, enum measure measure, enum supply_kind supply,
                      char *buffer, size_t size)
{
	const char *unit = entry_unit(desk, measure, supply);
	size_t length = strlen(text);
	bool bare = length > 0 && text[length - 1] >= '0' && text[length - 1] <= '9' && unit[0] != '\0';

	(void)snprintf(buffer, size, "%.60s%s%s", text, bare ? " " : "", bare ? unit : "");
}

static bool is_read(struct desk *desk, bool read, const int64_t *amount, const struct fault *fault)
{
	if (!read)
		desk_say_fault(desk, fault);
	else if (*amount <= 0)
		desk_say(desk, ROLE_CAUTION, "It must be more than nothing.");
	return read && *amount > 0;
}

bool entry_read_amount(struct desk *desk, const char *text, enum measure measure, enum supply_kind supply, int64_t *out)
{
	struct fault fault = { 0 };
	char words[80];

	with_unit(desk, text, measure, supply, words, sizeof(words));
	return is_read(desk, amount_read(words, measure, supply, out, &fault), out, &fault);
}

bool entry_read_supply(struct desk *desk, const char *text, enum supply_kind supply, const char *size, int64_t *out)
{
	struct fault fault = { 0 };
	char words[80];

	with_unit(desk, text, supply_measure(supply), supply, words, sizeof(words));
	return is_read(desk, kitchen_read_amount(desk->kitchen, words, supply, size, out, &fault), out, &fault);
}

bool entry_read_left(struct desk *desk, const char *text, enum measure measure, enum supply_kind supply, int64_t by,
                     int64_t *out)
{
	struct fault fault = { 0 };
	char words[80];
	bool read;

	with_unit(desk, text, measure, supply, words, sizeof(words));
	read = amount_read_bought(words, measure, supply, by, out, &fault);
	if (!read)
		desk_say_fault(desk, &fault);
	return read;
}

/* --- drawing --------------------------------------------------------------------------------- */

static int name_cols(int cols)
{
	return cols < NARROW ? 12 : 16;
}

static void answer_words(const struct desk *desk, const struct question *question, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (question->answer != NULL)
		question->answer(desk, &text);
	else if (question->kind == ASK_TEXT)
		form_text(desk, form_of(desk), question, &text);
	else
		form_chosen(desk, form_of(desk), question, &text);
	if (question->answer == NULL && (question->unit != NULL || question->counts != NULL) && text.used > 0) {
		text_add(&text, " ");
		form_unit(desk, question, 0, &text);
	}
	if (text.used == 0)
		text_add(&text, "-");
}

static void answered_draw(const struct desk *desk, const struct question *question, int row, int cols)
{
	char words[WORDS_BYTES_HERE];

	answer_words(desk, question, words, sizeof(words));
	terminal_put(desk->terminal, row, 3, name_cols(cols), ROLE_PLAIN, question->name);
	terminal_put(desk->terminal, row, 3 + name_cols(cols), cols - 4 - name_cols(cols), ROLE_PLAIN, words);
}

/* Rows that the unit takes below the field, where it has no room beside what is typed. */
static int unit_rows(const struct desk *desk, const struct question *question, int cols)
{
	char unit[WORDS_BYTES_HERE];
	struct text text = TEXT_OVER(unit);

	form_unit(desk, question, form_of(desk)->number.value, &text);
	return (int)text.used + FIELD_LEAST > cols - 4 - name_cols(cols) ? desk_paragraph_lines(unit, cols - 4) : 0;
}

/* What is being given: the line, the number, the letters that narrow a list; its unit beside it. */
static void field_draw(const struct desk *desk, const struct question *question, int row, int cols)
{
	const struct form *form = form_of(desk);
	int col = 3 + name_cols(cols);
	int room = cols - 1 - col;
	char unit[WORDS_BYTES_HERE];
	struct text text = TEXT_OVER(unit);

	if (unit_rows(desk, question, cols) == 0)
		form_unit(desk, question, form->number.value, &text);
	if (question->kind == ASK_TEXT && desk->entry.open)
		col += entry_line_draw(
		    desk, row, col, room - (int)text.used - 1 > FIELD_LEAST ? room - (int)text.used - 1 : FIELD_LEAST);
	else if (question->kind == ASK_NUMBER && form->number.value > 0)
		col += terminal_putf(desk->terminal, row, col, room, ROLE_SELECTED, "%d_", form->number.value);
	else
		col += terminal_putf(desk->terminal, row, col, room, ROLE_STRONG, "%s_", form->picker.filter);
	terminal_put(desk->terminal, row, col + 1, cols - col - 2, ROLE_PLAIN, unit);
}

/* What is asked for, and of its help the sentences that find room in so many rows; returns the
 * rows they need.  A question is not cut for its help, and no sentence of that. */
static int help_words(const struct desk *desk, char *buffer, size_t size, int cols, int rows)
{
	const struct question *question = form_question(form_of(desk));
	const char *put = question->put != NULL ? question->put(desk) : NULL;

	(void)snprintf(buffer, size, "%s%s%s", put != NULL ? put : question->asks, question->help != NULL ? " " : "",
	               question->help != NULL ? question->help : "");
	desk_sentences(buffer, cols - 4, rows, strlen(put != NULL ? put : question->asks));
	return desk_paragraph_lines(buffer, cols - 4);
}

/* Rows of what may be chosen; where it is nothing, of what is said of that. */
static int choice_rows(const struct desk *desk, int cols)
{
	const struct form *form = form_of(desk);
	const struct question *question = form_question(form);
	int choices = question->kind == ASK_CHOICE ? form_choices_rows(desk, form, INT_MAX, CHOICE_COL) : 0;

	if (question->kind == ASK_CHOICE && choices == 0 && form_none(desk, question) != NULL)
		return desk_paragraph_lines(form_none(desk, question), cols - CHOICE_COL - 3);
	return choices;
}

/* The present question: its field, what it is, and what may be chosen; returns its rows. */
static int present_draw(const struct desk *desk, int row, int rows, int cols)
{
	const struct form *form = form_of(desk);
	const struct question *question = form_question(form);
	int choices = choice_rows(desk, cols);
	int room = rows - 1 - unit_rows(desk, question, cols) - (choices < CHOICES_MIN ? choices : CHOICES_MIN);
	char unit[WORDS_BYTES_HERE];
	struct text unit_text = TEXT_OVER(unit);
	char words[HELP_BYTES];
	int help = help_words(desk, words, sizeof(words), cols, room);
	int used = 1;

	terminal_put(desk->terminal, row, 1, 1, ROLE_STRONG, glyph(desk->terminal, GLYPH_SELECTION));
	terminal_put(desk->terminal, row, 3, name_cols(cols), ROLE_STRONG, question->name);
	field_draw(desk, question, row, cols);
	if (unit_rows(desk, question, cols) > 0) {
		form_unit(desk, question, form->number.value, &unit_text);
		used += desk_paragraph(desk, row + used, 3, cols - 4, rows - used, ROLE_PLAIN, unit);
	}
	if (help > rows - used)
		help = rows - used;
	used += desk_paragraph(desk, row + used, 3, cols - 4, help, question->stop ? ROLE_STOP : ROLE_QUIET, words);
	if (question->kind != ASK_CHOICE)
		return used;
	if (choices > rows - used)
		choices = rows - used;
	return used + form_choices_draw(desk, form, row + used, choices, CHOICE_COL, cols);
}

/* Rows that the present question would like. */
static int present_rows(const struct desk *desk, int cols)
{
	char words[HELP_BYTES];

	return 1 + unit_rows(desk, form_question(form_of(desk)), cols) +
	       help_words(desk, words, sizeof(words), cols, INT_MAX) + choice_rows(desk, cols);
}

static size_t asked_before(const struct desk *desk)
{
	const struct form *form = form_of(desk);
	size_t count = 0;

	for (size_t i = 0; i < form->at; i++)
		count += form_asks(desk, &form->questions[i]);
	return count;
}

/* Answers above it: as many as find room, the last ones; returns the rows they took. */
static int above_draw(const struct desk *desk, int row, int rows, int cols)
{
	const struct form *form = form_of(desk);
	int skip = (int)asked_before(desk) - (rows > 0 ? rows : 0);
	int used = 0;

	for (size_t i = 0; i < form->at; i++)
		if (form_asks(desk, &form->questions[i]) && skip-- <= 0)
			answered_draw(desk, &form->questions[i], row + used++, cols);
	return used;
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct entry_card *card = card_of(desk);
	const struct form *form = &card->form;
	int cols = desk_columns(desk);
	int end_row = top + rows;
	int row = top + 1;
	int least;

	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG,
	             card->id != 0 && card->about->changes != NULL ? card->about->changes : card->about->title);
	least = present_rows(desk, cols);
	if (least > rows - 1)
		least = rows - 1;
	if (least > rows - 2 && !form_question(form)->stop)
		least = rows - 2; /* the answer before it is worth a row; a stop is whole */
	row += above_draw(desk, row, rows - 1 - least, cols);
	row += present_draw(desk, row, end_row - row, cols);
	for (size_t i = form->at + 1; i < form->count && row < end_row; i++)
		if (form_asks(desk, &form->questions[i]))
			terminal_put(desk->terminal, row++, 3, cols - 4, ROLE_QUIET, form->questions[i].name);
}

/* --- keys ---------------------------------------------------------------------------------------- */

/* The answers before stand above: from the first of a list, and from a number, up goes there. */
static void up(struct desk *desk)
{
	const struct form *form = form_of(desk);

	if (form_question(form)->kind == ASK_CHOICE && form->picker.cursor > 0)
		form_up(desk);
	else if (asked_before(desk) > 0)
		form_back(desk);
}

static void down(struct desk *desk)
{
	if (form_question(form_of(desk))->kind == ASK_CHOICE)
		form_down(desk);
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "take it", "Keep the answer, then the next question.", NULL, form_take },
	{ KEY_CODE_LEFT, 0, "Left", "one back", "Back to the question before.", NULL, form_back },
	{ KEY_CODE_ESCAPE, 0, "Esc", "as it was", "Leave it; nothing is written down.", NULL, leave },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above, or the question before.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
	{ KEY_CODE_RIGHT, 0, "Right", NULL, "Same as Space.", NULL, form_take },
	{ 0, 0, "letters", NULL, "A list: only those with these letters. A number: its figures.", NULL, NULL },
};

/* No other view is gone to from a form: what the rule says of the house view is said without it. */
static const char *warned(const struct warning *warning)
{
	return strcmp(warning->id, "elevation-unset") == 0 ? "The elevation is not set yet." : NULL;
}

const struct view entry_view = {
	.title = "Entry",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.warned = warned,
	.keeps = true,
	.form = form_of,
	.typed = form_typed,
	.types = form_types,
};
