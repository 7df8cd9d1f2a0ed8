/*
 * entry.h - one line being typed, whatever it is for.
 */
#ifndef STILLROOM_SCREEN_UI_ENTRY_H
#define STILLROOM_SCREEN_UI_ENTRY_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"

struct desk;
struct text;

/* One line being typed. */
#define ENTRY_MAX 1024 /* as long as a line of a kitchen file */
struct entry {
	bool open;
	char prompt[80];
	char text[ENTRY_MAX];
	size_t at;     /* where the next character goes, in bytes */
	bool offered;  /* the text is an offer, or was refused: the first character takes its place */
	bool answered; /* Enter was pressed in this line, and no other was opened since */
	bool (*done)(struct desk *desk, const char *text); /* true closes the line */
	void (*blank)(struct desk *desk); /* Space in the empty line, or on an offer; NULL: a blank like any */
	void (*leave)(struct desk *desk); /* Esc, beside closing the line; NULL: nothing */
	/* Left at its beginning, which may leave what is entered; Up, or Backspace in an empty line, which
	 * never do.  NULL: as in a line. */
	void (*back)(struct desk *desk, bool may_leave);
	const char *keys;       /* what its keys do; NULL: the usual words */
	const char *keys_brief; /* the same in a narrow window */
	bool in_view;           /* the view draws it, where its answer stands */
};

/* Ask for one line of text. */
void desk_ask(struct desk *desk, const char *prompt, const char *text, bool (*done)(struct desk *, const char *));

/* The same with one value that the first character takes the place of, so that "1" with
 * a 3 typed behind it is never 13; Left or Backspace changes it instead. */
void desk_offer(struct desk *desk, const char *prompt, const char *text, bool (*done)(struct desk *, const char *));

/* Whose initials stand with what is noted from now on. */
void desk_ask_who(struct desk *desk, const char *prompt);

/* A stop (FAULT_STOPPED) asks why to go on all the same; `done` tries again with the
 * reason. `tried`: the reason that was not enough, "" the first time. */
void desk_ask_reason(struct desk *desk, const struct fault *fault, const char *tried,
                     bool (*done)(struct desk *, const char *));

/* How strong the vinegar is: "5", "4.5", "6%" in tenths of a percent, 1 to 300; 0, and it
 * is said, when that is no strength. */
int desk_vinegar(struct desk *desk, const char *text);

void entry_key(struct desk *desk, long key); /* into the line being typed */
/* The line being typed in so many columns, scrolled so that the place of the next character
 * shows, and the terminal's cursor there; returns the columns it took. */
int entry_line_draw(const struct desk *desk, int row, int col, int cols);

#endif
