/*
 * form.h - questions one after the other: a choice out of a list, a number, a line of text.
 *
 * A view with a form has a table of its questions in the order in which they are asked; the
 * form keeps where it stands.  Its keys are the same in every view: Space or Enter takes
 * what is under the cursor, Left goes one back, Up and Down move, letters narrow a list,
 * figures are a number, Backspace takes back what was typed.  Nothing is recorded before the last question.
 */
#ifndef STILLROOM_SCREEN_UI_FORM_H
#define STILLROOM_SCREEN_UI_FORM_H

#include <stdbool.h>
#include <stddef.h>

#include "base/text.h"
#include "screen/ui/entry.h"
#include "screen/ui/picker.h"

struct desk;
struct jars_asked;

enum question_kind {
	ASK_CHOICE,
	ASK_NUMBER,
	ASK_TEXT,
	ASK_LAST, /* all is answered: take it, or go back */
};

/* Where an answer is kept, when that is all there is to it: in the answers of the form. */
enum kept_as {
	KEPT_NOWHERE, /* the question's own functions do it */
	KEPT_NUMBER,  /* an int that is typed, from `min` to `max`; below `min` nothing stands there */
	KEPT_CHOICE,  /* an enum or int: which one */
	KEPT_YES,     /* a bool: the second of two */
};

struct kept {
	enum kept_as as;
	size_t at; /* bytes from the beginning of the answers */
	int min;   /* KEPT_NUMBER, as the next three: entry_read_number */
	int max;
	int empty;
	const char *what; /* "Room for foam" */
};

/* By the type of the answers and the field; which must be as large as what is kept there. */
#define KEPT_FIELD(answers, field, type) \
	(offsetof(answers, field) + 0 * sizeof(char[sizeof(((answers *)0)->field) == sizeof(type) ? 1 : -1]))
#define KEEPS_NUMBER(answers, field, min, max, empty, what) \
	.keeps = { KEPT_NUMBER, KEPT_FIELD(answers, field, int), min, max, empty, what }
#define KEEPS_CHOICE(answers, field) .keeps = { .as = KEPT_CHOICE, .at = KEPT_FIELD(answers, field, int) }
#define KEEPS_YES(answers, field) .keeps = { .as = KEPT_YES, .at = KEPT_FIELD(answers, field, bool) }

struct question {
	enum question_kind kind;
	const char *name;  /* before its answer, where answers stand in lines: "Lids" */
	const char *asks;  /* "How many jars?" */
	const char *brief; /* instead of it in a narrow window and while letters are typed; NULL: `asks` */
	const char *(*put)(const struct desk *desk); /* asked in other words; NULL, or NULL said: in these */
	bool stop;                                   /* asked in the role of a stop: a wrong answer spoils jars */
	const char *help;                            /* what it is for, or what is right; NULL: nothing to say */

	/* Then it needs none of `offers`, `take`, `text` and `typed`; a `take` is called behind it. */
	struct kept keeps;

	/* Is it asked, after what was answered?  NULL: always. */
	bool (*asked)(const struct desk *desk);
	/* As given, for the line above: "7 half-pints"; nothing: it is not shown. */
	void (*answer)(const struct desk *desk, struct text *text);

	/* ASK_CHOICE: how many there are, the n-th in words, and the name it is found by when
	 * letters are typed (NULL: they narrow nothing; NULL after the last, which may be followed by one
	 * that is always listed).  `passes`: the
	 * only one there is goes without saying. */
	int (*count)(const struct desk *desk);
	void (*words)(const struct desk *desk, int n, char *buffer, size_t size);
	const char *(*nth)(const struct desk *desk, int n); /* instead of both; NULL behind the last */
	const char *const *list;                            /* likewise, where they are always the same */
	const char *(*word)(const struct desk *desk, int n);
	const char *(*also)(const struct desk *desk, int n); /* other names it is found by; NULL: it has none */
	const char *none;                                    /* said where there is no choice, */
	const char *(*why_none)(const struct desk *desk); /* unless this knows why; NULL, or NULL said: it does not */
	/* A caution about the n-th, whole, below the list while the cursor is there; NULL, or NULL
	 * said: nothing. */
	const char *(*caution)(const struct desk *desk, int n);
	bool passes;
	bool any_name;   /* that one is called as was typed (form_letters) */
	bool short_list; /* its lines are few, and what stands below is worth more room */

	/* ASK_CHOICE: where the cursor begins.  ASK_NUMBER: what is offered.  NULL: the first, or
	 * what stood there before. */
	int (*offers)(const struct desk *desk);
	/* ASK_NUMBER: 1 to `most`; what it counts and what is to be known of it, beside it in a row
	 * of its own (NULL: the number stands behind the question, and all rows are below); what
	 * follows from it, each time it changes (NULL: nothing). */
	int most;
	void (*unit)(const struct desk *desk, int n, struct text *text);
	const char *counts; /* instead of it, where that is always one word: "min" */
	void (*changed)(struct desk *desk, int n);

	/* Up and Down where there is nothing to choose: by so many lines.  NULL: nothing. */
	void (*moves)(struct desk *desk, int by);

	/* Takes the answer, the n-th choice or the number; true: on to the next.  False: it said
	 * why not, or went elsewhere.  ASK_LAST: n is 0. */
	bool (*take)(struct desk *desk, int n);

	/* ASK_TEXT: Space takes what is offered, as Enter does, and so does an empty line: it changes
	 * nothing. */
	bool space_takes;

	/* ASK_TEXT: what stands there to be taken or typed over ("" nothing), and the answer. */
	void (*text)(const struct desk *desk, struct text *text);
	bool (*typed)(struct desk *desk, const char *text);
};

#define FORM_QUESTIONS_MAX 64

struct form {
	const struct question *questions;
	size_t count;
	void (*leave)(struct desk *desk); /* Left at the first question; Esc in a line */
	void (*end)(struct desk *desk);   /* all that is asked was answered; NULL: the last is ASK_LAST */
	bool has_lines;                   /* the view draws what is typed, where its answer stands */
	size_t at;
	int taken[FORM_QUESTIONS_MAX]; /* by question: what was chosen, from 1; 0: nothing yet */
	struct picker picker;
	struct number_entry number;
	void *answers;           /* what `keeps` is about; NULL: no question has it */
	struct jars_asked *jars; /* of the questions about jars (jar_questions.h); NULL: it asks none */
};

/* Begin at the first question that is asked. */
void form_begin(struct desk *desk, struct form *form, const struct question *questions, size_t count,
                void (*leave)(struct desk *));
/* To that question, whether it is asked or not; answers before it stand. */
void form_to(struct desk *desk, struct form *form, const struct question *question);
/* On from the present one to the next that is asked. */
void form_on(struct desk *desk, struct form *form);
const struct question *form_question(const struct form *form);
/* What is typed to narrow the list, blanks at its end aside; ENTRY_MAX bytes take any. */
void form_letters(const struct form *form, char *buffer, size_t size);
int form_choice(const struct desk *desk, const struct form *form);               /* under the cursor; -1: none */
const char *form_none(const struct desk *desk, const struct question *question); /* NULL: nothing is said */
bool form_asks(const struct desk *desk, const struct question *question);        /* after what was answered */

/* For the tables of a view: they work on its form (view.h). */
void form_take(struct desk *desk);
void form_back(struct desk *desk);
void form_up(struct desk *desk);
void form_down(struct desk *desk);
bool form_types(const struct desk *desk, long key);
bool form_typed(struct desk *desk, long key);
bool form_takes_figures(const struct desk *desk); /* a number is asked for */

/* "1 Big kettle > grape jelly > 7 half-pints": `first`, and the answers so far. */
void form_answers(const struct desk *desk, const struct form *form, struct text *text);
/* What stands in a line, to be taken or typed over; nothing: nothing does. */
void form_text(const struct desk *desk, const struct form *form, const struct question *question, struct text *text);
/* What stands beside a number or a line: its unit, or what is to be known of it; nothing: no more. */
void form_unit(const struct desk *desk, const struct question *question, int n, struct text *text);
/* What was chosen of a question, in the words of its list: what it offers now that it was answered, or what was
 * taken; nothing: nothing was. */
void form_chosen(const struct desk *desk, const struct form *form, const struct question *question, struct text *text);
/* The question in one row, what may be answered below it, in `rows` at most; returns those used. */
int form_draw(const struct desk *desk, const struct form *form, int top, int rows, int cols);
/* The choices alone, those that hold the letters, in so many rows from that column on;
 * returns those used. */
int form_choices_rows(const struct desk *desk, const struct form *form, int rows, int left); /* that they need */
int form_choices_draw(const struct desk *desk, const struct form *form, int top, int rows, int left, int cols);

#endif
