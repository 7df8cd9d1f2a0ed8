/*
 * form.c - see form.h.
 */
#include "screen/ui/form.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/paragraph.h"

#define ANSWER_BYTES 200

static struct form *form_here(const struct desk *desk)
{
	return view_of(desk, desk->view)->form(desk);
}

/* Where nothing has been begun. */
static const struct question nothing_asked = { .kind = ASK_TEXT, .asks = "" };

const struct question *form_question(const struct form *form)
{
	return form->count == 0 ? &nothing_asked : &form->questions[form->at];
}

bool form_asks(const struct desk *desk, const struct question *question)
{
	return question->asked == NULL || question->asked(desk);
}

/* --- the choices that are listed: those that hold the letters -------------------------------- */

static bool is_listed(const struct desk *desk, const struct form *form, int n)
{
	const struct question *question = form_question(form);

	return question->word == NULL || question->word(desk, n) == NULL ||
	       picker_matches(&form->picker, question->word(desk, n)) ||
	       (question->also != NULL && picker_matches(&form->picker, question->also(desk, n)));
}

void form_letters(const struct form *form, char *buffer, size_t size)
{
	size_t length;

	text_copy(buffer, size, form->picker.filter);
	for (length = strlen(buffer); length > 0 && buffer[length - 1] == ' '; length--)
		buffer[length - 1] = '\0';
}

static const char *nth_of(const struct desk *desk, const struct question *question, int n)
{
	if (question->nth != NULL)
		return question->nth(desk, n);
	return question->list != NULL ? question->list[n] : NULL;
}

/* How many may be chosen; of a line nothing is. */
static int count_of(const struct desk *desk, const struct question *question)
{
	int count = 0;

	if (question->count != NULL)
		return question->count(desk);
	while (nth_of(desk, question, count) != NULL)
		count++;
	return count;
}

static void words_of(const struct desk *desk, const struct question *question, int n, char *buffer, size_t size)
{
	if (question->words != NULL)
		question->words(desk, n, buffer, size);
	else
		text_copy(buffer, size, nth_of(desk, question, n));
}

/* The n-th of those listed; -1: there is none. */
static int listed(const struct desk *desk, const struct form *form, int n)
{
	int count = count_of(desk, form_question(form));

	for (int i = 0; i < count; i++)
		if (is_listed(desk, form, i) && n-- == 0)
			return i;
	return -1;
}

int form_choice(const struct desk *desk, const struct form *form)
{
	return form_question(form)->kind == ASK_CHOICE ? listed(desk, form, form->picker.cursor) : -1;
}

static int form_choices(const struct desk *desk, const struct form *form)
{
	int count = count_of(desk, form_question(form));
	int listed = 0;

	for (int i = 0; i < count; i++)
		listed += is_listed(desk, form, i);
	return listed;
}

/* --- what is kept --------------------------------------------------------------------------------- */

static void *kept_at(const struct form *form, const struct question *question)
{
	return (char *)form->answers + question->keeps.at;
}

static int kept(const struct form *form, const struct question *question)
{
	bool yes;
	int n;

	if (question->keeps.as == KEPT_YES) {
		memcpy(&yes, kept_at(form, question), sizeof(yes));
		return yes;
	}
	memcpy(&n, kept_at(form, question), sizeof(n));
	return n;
}

static void keep(const struct form *form, const struct question *question, int n)
{
	bool yes = n == 1;

	if (question->keeps.as == KEPT_YES)
		memcpy(kept_at(form, question), &yes, sizeof(yes));
	else
		memcpy(kept_at(form, question), &n, sizeof(n));
}

/* What is offered, or was answered; -1: nothing. */
static int offered(const struct desk *desk, const struct form *form, const struct question *question)
{
	if (question->offers != NULL)
		return question->offers(desk);
	return question->keeps.as != KEPT_NOWHERE ? kept(form, question) : -1;
}

static bool take(struct desk *desk, const struct form *form, const struct question *question, int n)
{
	if (question->keeps.as != KEPT_NOWHERE)
		keep(form, question, n);
	return question->take == NULL || question->take(desk, n);
}

static bool typed(struct desk *desk, const struct form *form, const struct question *question, const char *text)
{
	const struct kept *keeps = &question->keeps;
	int n;

	if (keeps->as == KEPT_NOWHERE)
		return question->typed != NULL && question->typed(desk, text);
	if (!entry_read_number(desk, text, keeps->min, keeps->max, keeps->empty, keeps->what, &n))
		return false;
	keep(form, question, n);
	return true;
}

void form_text(const struct desk *desk, const struct form *form, const struct question *question, struct text *text)
{
	if (question->text != NULL)
		question->text(desk, text);
	else if (question->keeps.as == KEPT_NUMBER && kept(form, question) >= question->keeps.min)
		text_add(text, "%d", kept(form, question));
}

/* --- from question to question ------------------------------------------------------------------ */

static bool text_done(struct desk *desk, const char *text)
{
	struct form *form = form_here(desk);
	const struct question *question = form_question(form);

	desk->message[0] = '\0'; /* it was about what was typed before */
	if (!typed(desk, form, question, text))
		return false;
	desk->entry.open = false;
	if (view_of(desk, desk->view)->form != NULL && form_here(desk) == form)
		form_on(desk, form);
	return !desk->entry.open; /* open again: the next one is typed too */
}

static void go_back(struct desk *desk, bool may_leave);

static void take_offered(struct desk *desk)
{
	entry_key(desk, KEY_CODE_ENTER);
}

static void ask_text(struct desk *desk, const struct form *form)
{
	const struct question *question = form_question(form);
	char words[ENTRY_MAX];
	struct text text = TEXT_OVER(words);

	form_text(desk, form, question, &text);
	desk_offer(desk, question->asks, words, text_done);
	desk->entry.leave = form->leave;
	desk->entry.back = go_back;
	desk->entry.blank = question->space_takes ? take_offered : NULL;
	desk->entry.in_view = form->has_lines;
}

void form_to(struct desk *desk, struct form *form, const struct question *question)
{
	form->at = (size_t)(question - form->questions);
	picker_reset(&form->picker);
	form->number.touched = false; /* it stays, and a figure takes its place */
	desk->entry.open = false;
	if (question->kind == ASK_CHOICE && offered(desk, form, question) >= 0)
		form->picker.cursor = offered(desk, form, question);
	else if (question->kind == ASK_NUMBER && offered(desk, form, question) >= 0)
		form->number.value = offered(desk, form, question);
	else if (question->kind == ASK_TEXT)
		ask_text(desk, form);
	if (question->kind == ASK_NUMBER && question->changed != NULL)
		question->changed(desk, form->number.value);
}

/* Is there nothing to choose? */
static bool goes_without_saying(const struct desk *desk, const struct question *question)
{
	return question->passes && count_of(desk, question) == 1;
}

/* To the first that is asked from there on. */
static void go_on_from(struct desk *desk, struct form *form, const struct question *question)
{
	const struct question *end = form->questions + form->count;

	for (; question < end; question++) {
		if (!form_asks(desk, question))
			continue;
		if (!goes_without_saying(desk, question))
			break;
		(void)take(desk, form, question, 0);
	}
	if (question < end)
		form_to(desk, form, question);
	else if (form->end != NULL)
		form->end(desk);
}

void form_on(struct desk *desk, struct form *form)
{
	go_on_from(desk, form, form_question(form) + 1);
}

void form_begin(struct desk *desk, struct form *form, const struct question *questions, size_t count,
                void (*leave)(struct desk *))
{
	form->questions = questions;
	form->count = count;
	form->leave = leave;
	form->at = 0;
	memset(form->taken, 0, sizeof(form->taken));
	go_on_from(desk, form, questions);
}

/* Whoever takes letters back, or goes up, means to stay: with nothing before, only Left and Esc leave. */
static void go_back(struct desk *desk, bool may_leave)
{
	struct form *form = form_here(desk);

	for (size_t i = form->at; i-- > 0;) {
		const struct question *question = &form->questions[i];

		if (form_asks(desk, question) && !goes_without_saying(desk, question)) {
			form_to(desk, form, question);
			return;
		}
	}
	if (may_leave && form->leave != NULL)
		form->leave(desk);
}

void form_back(struct desk *desk)
{
	go_back(desk, true);
}

/* --- keys ------------------------------------------------------------------------------------------ */

static void take_choice(struct desk *desk, struct form *form)
{
	const struct question *question = form_question(form);
	int chosen = listed(desk, form, form->picker.cursor);
	char words[ANSWER_BYTES];

	if (chosen < 0)
		return;
	if (question->word != NULL && question->word(desk, chosen) != NULL) {
		(void)snprintf(words, sizeof(words), "%s", question->word(desk, chosen));
		if (picker_blank(desk, &form->picker, words, form_choices(desk, form)))
			return;
	}
	if (form->at < FORM_QUESTIONS_MAX)
		form->taken[form->at] = chosen + 1;
	if (take(desk, form, question, chosen))
		form_on(desk, form);
}

void form_take(struct desk *desk)
{
	struct form *form = form_here(desk);
	const struct question *question = form_question(form);

	switch (question->kind) {
	case ASK_CHOICE: take_choice(desk, form); break;
	case ASK_NUMBER:
		form->number.touched = false; /* refused, the next figure takes its place */
		if (take(desk, form, question, form->number.value))
			form_on(desk, form);
		break;
	case ASK_TEXT:
		if (form->count > 0)
			ask_text(desk, form);
		break;
	case ASK_LAST: (void)question->take(desk, 0); break;
	}
}

static void number_is(struct desk *desk, struct form *form)
{
	const struct question *question = form_question(form);

	if (question->changed != NULL)
		question->changed(desk, form->number.value);
}

static void move(struct desk *desk, int by)
{
	struct form *form = form_here(desk);
	const struct question *question = form_question(form);
	int number = form->number.value - by;

	if (question->kind == ASK_CHOICE) {
		picker_move(&form->picker, by, form_choices(desk, form));
	} else if (question->moves != NULL) {
		question->moves(desk, by);
	} else if (question->kind == ASK_NUMBER && number >= 1 && number <= question->most) {
		form->number.value = number;
		number_is(desk, form);
	}
}

void form_up(struct desk *desk)
{
	move(desk, -1);
}

void form_down(struct desk *desk)
{
	move(desk, 1);
}

/* Inside a name of the house's own: what stands is not the whole of the name at the mark. */
static bool goes_on_typing(const struct desk *desk, const struct form *form)
{
	const struct question *question = form_question(form);
	int chosen = form_choice(desk, form);
	const char *name = chosen < 0 || question->word == NULL ? NULL : question->word(desk, chosen);

	return form->picker.filter[0] != '\0' && !form->picker.moved &&
	       (name == NULL || !picker_is_whole(&form->picker, name));
}

bool form_types(const struct desk *desk, long key)
{
	const struct form *form = form_here(desk);
	const struct question *question = form_question(form);

	if (key == ' ' && question->kind == ASK_CHOICE && question->any_name && goes_on_typing(desk, form))
		return true;
	return question->kind == ASK_CHOICE && question->word != NULL &&
	       picker_types(desk, &form->picker, key, question->word);
}

bool form_takes_figures(const struct desk *desk)
{
	return form_question(form_here(desk))->kind == ASK_NUMBER;
}

/* Letters where a number is asked for: what is right, rather than that they do nothing. */
static bool said_that_figures_are_asked(struct desk *desk, const struct question *question, long key)
{
	bool is_letter = (key >= 'a' && key <= 'z') || (key >= 'A' && key <= 'Z');

	if (is_letter)
		desk_say(desk, ROLE_CAUTION, "A number is asked for here, 1 to %d: type figures.", question->most);
	return is_letter;
}

bool form_typed(struct desk *desk, long key)
{
	struct form *form = form_here(desk);
	const struct question *question = form_question(form);

	if (form_types(desk, key)) {
		picker_typed(desk, &form->picker, key, question->word);
		return true;
	}
	if (question->kind == ASK_NUMBER && number_typed(&form->number, key, question->most)) {
		number_is(desk, form);
		return true;
	}
	if (key == KEY_CODE_BACKSPACE)
		go_back(desk, false);
	else
		return question->kind == ASK_NUMBER && said_that_figures_are_asked(desk, question, key);
	return true;
}

/* --- drawing ------------------------------------------------------------------------------------------ */

void form_unit(const struct desk *desk, const struct question *question, int n, struct text *text)
{
	if (question->unit != NULL)
		question->unit(desk, n, text);
	else if (question->counts != NULL)
		text_add(text, "%s", question->counts);
}

void form_chosen(const struct desk *desk, const struct form *form, const struct question *question, struct text *text)
{
	size_t at = (size_t)(question - form->questions);
	int chosen = at < FORM_QUESTIONS_MAX ? form->taken[at] - 1 : -1;
	char words[ANSWER_BYTES];

	if (chosen >= 0 && offered(desk, form, question) >= 0)
		chosen = offered(desk, form, question); /* another answer may have changed it since */
	if (question->kind != ASK_CHOICE || chosen < 0 || chosen >= count_of(desk, question))
		return;
	words_of(desk, question, chosen, words, sizeof(words));
	text_add(text, "%s", words);
}

static void answer_of(const struct desk *desk, const struct question *question, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (question->answer != NULL && form_asks(desk, question))
		question->answer(desk, &text);
}

void form_answers(const struct desk *desk, const struct form *form, struct text *text)
{
	for (size_t i = 0; i < form->count && i <= form->at; i++) {
		const struct question *question = &form->questions[i];
		char words[ANSWER_BYTES] = "";

		/* A number stands there while it is typed. */
		if (i < form->at || question->kind == ASK_NUMBER)
			answer_of(desk, question, words, sizeof(words));
		if (words[0] != '\0')
			text_add(text, " > %s", words);
	}
}

const char *form_none(const struct desk *desk, const struct question *question)
{
	const char *why = question->why_none != NULL ? question->why_none(desk) : NULL;

	return why != NULL ? why : question->none;
}

static void choice_line(const struct desk *desk, struct list_line *line)
{
	const struct form *form = line->of;

	words_of(desk, form_question(form), listed(desk, form, line->n), line->words, sizeof(line->words));
}

static struct list_area choices_area(const struct desk *desk, const struct form *form, int top, int rows, int left)
{
	return (struct list_area){ .top = top,
		                   .rows = rows,
		                   .left = left,
		                   .count = form_choices(desk, form),
		                   .of = form,
		                   .line = choice_line };
}

int form_choices_rows(const struct desk *desk, const struct form *form, int rows, int left)
{
	const struct list_area area = choices_area(desk, form, 0, rows, left);
	const struct list_state list = { .cursor = form->picker.cursor };

	return list_rows(desk, &list, &area);
}

int form_choices_draw(const struct desk *desk, const struct form *form, int top, int rows, int left, int cols)
{
	const struct question *question = form_question(form);
	const struct list_area area = choices_area(desk, form, top, rows, left);
	struct list_state list = { .cursor = form->picker.cursor };

	if (area.count == 0 && form_none(desk, question) != NULL)
		return desk_paragraph(desk, top, left + 2, cols - left - 3, rows, ROLE_CAUTION,
		                      form_none(desk, question));
	return list_draw(desk, &list, &area);
}

static void number_draw(const struct desk *desk, const struct form *form, int row, int cols)
{
	const struct question *question = form_question(form);
	char words[ANSWER_BYTES];
	struct text text = TEXT_OVER(words);
	int used;

	used = terminal_putf(desk->terminal, row, 3, cols - 4, ROLE_SELECTED, " %d ", form->number.value);
	form_unit(desk, question, form->number.value, &text);
	terminal_put(desk->terminal, row, 4 + used, cols - 5 - used, ROLE_QUIET, words);
}

/* What is to be known of the choice under the cursor before it is taken, at the foot of so
 * many rows; returns those it took. */
static int caution_draw(const struct desk *desk, const struct form *form, int top, int rows, int cols)
{
	const struct question *question = form_question(form);
	int here = form_choice(desk, form);
	const char *words = question->caution == NULL || here < 0 ? NULL : question->caution(desk, here);
	int count = form_choices_rows(desk, form, rows, 1);
	int needed = words == NULL ? 0 : desk_paragraph_lines(words, cols - 4);
	int lines = needed < rows ? needed : 1; /* one choice is seen */
	int below = count < rows - lines ? count : rows - lines;

	return needed == 0 ? 0 : desk_whole(desk, top + below, 3, cols - 4, lines, ROLE_CAUTION, words);
}

int form_draw(const struct desk *desk, const struct form *form, int top, int rows, int cols)
{
	const struct question *question = form_question(form);
	const char *brief = question->brief != NULL ? question->brief : question->asks;
	int count;
	const char *put = question->put != NULL ? question->put(desk) : NULL;
	bool beside = question->kind == ASK_NUMBER && question->unit == NULL &&
	              question->counts == NULL; /* the number stands behind it */
	const char *asks = beside && (int)strlen(question->asks) + 8 > cols ? brief : question->asks;
	int asked = picker_question_draw(desk, &form->picker, top, cols, put != NULL ? put : brief,
	                                 put != NULL ? put : asks, question->stop ? ROLE_STOP : ROLE_PLAIN);

	switch (question->kind) {
	case ASK_CHOICE:
		count = form_choices_rows(desk, form, rows - 1, 1);
		if (!question->short_list || count > rows - 1)
			form_choices_draw(desk, form, top + 1,
			                  rows - 1 - caution_draw(desk, form, top + 1, rows - 1, cols), 1, cols);
		else
			form_choices_draw(desk, form, top + 1, count, 1, cols);
		return question->short_list && count < rows - 1 ? 2 + count : rows;
	case ASK_NUMBER:
		if (beside) {
			terminal_putf(desk->terminal, top, asked + 2 < cols - 5 ? asked + 2 : cols - 5, 5,
			              ROLE_SELECTED, " %d ", form->number.value);
			return 1;
		}
		number_draw(desk, form, top + 1, cols);
		return 3;
	case ASK_TEXT:
	case ASK_LAST: break;
	}
	return 1;
}
