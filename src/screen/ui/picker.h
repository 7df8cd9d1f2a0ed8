/*
 * picker.h - one choice out of a list, moved through with arrows or narrowed by
 * typing a few letters.  Shared by the cards of the screen.
 */
#ifndef STILLROOM_SCREEN_UI_PICKER_H
#define STILLROOM_SCREEN_UI_PICKER_H

#include <stdbool.h>
#include <stddef.h>

#include "screen/term/terminal.h"

struct desk;

#define PICKER_FILTER_BYTES 160 /* the longest name there is, and more */

struct picker {
	int cursor;
	bool moved;                       /* since the last letter */
	char filter[PICKER_FILTER_BYTES]; /* as it was typed */
};

void picker_reset(struct picker *picker);
/* Is the key a part of the name being typed?  A Space is, where a name goes
 * on with a blank there; else it chooses.  `name`: the n-th of all, whatever is typed;
 * NULL behind the last. */
bool picker_types(const struct desk *desk, const struct picker *picker, long key,
                  const char *(*name)(const struct desk *desk, int n));
/* Take it: the list gets shorter, and the mark goes to the name that is typed whole. */
void picker_typed(struct desk *desk, struct picker *picker, long key,
                  const char *(*name)(const struct desk *desk, int n));
/* Does a name hold what was typed?  Blanks and commas may be left out, capitals are as
 * small letters. */
bool picker_matches(const struct picker *picker, const char *name);
/* Is what was typed the whole of a name, blanks and commas aside? */
bool picker_is_whole(const struct picker *picker, const char *name);
void picker_move(struct picker *picker, int by, int count);
/* Is the Space just pressed the blank inside a name being typed, rather than a
 * choice?  So while letters stand that are not the whole of `name`, the one at the
 * mark, several names hold them and nothing was moved. */
bool picker_blank(struct desk *desk, const struct picker *picker, const char *name, int count);
/* The question, and in place of its hint what has been typed; returns the columns. */
int picker_question_draw(const struct desk *desk, const struct picker *picker, int row, int cols, const char *brief,
                         const char *question, enum role role);
/* Draw `count` choices; `words` writes the n-th. */
void picker_draw(const struct desk *desk, const struct picker *picker, int top, int rows, int count,
                 void (*words)(const struct desk *desk, int n, char *buffer, size_t size));

/* A number typed digit by digit: the first digit replaces what was offered. */
struct number_entry {
	int value;
	bool touched;
};
bool number_typed(struct number_entry *number, long key, int max);

#endif
