/*
 * lines.h - what each row of a frame was made of, so that only rows that have become
 * others are given to curses.  A frame once a second is mostly the one before.
 */
#ifndef STILLROOM_SCREEN_TERM_LINES_H
#define STILLROOM_SCREEN_TERM_LINES_H

#include <stdbool.h>
#include <stddef.h>

struct lines;

/* One thing put into a row: a text, or a glyph as often as it fits. */
struct mark {
	int col;
	int room;    /* columns it may take */
	int role;    /* enum role */
	int fill;    /* enum glyph, or -1: the text */
	int columns; /* that it took */
	bool same;   /* as the one in its place in the frame before */
	const char *text;
};

struct lines *lines_new(void);        /* NULL without memory */
void lines_free(struct lines *lines); /* NULL is allowed */

/* A frame of that size begins.  Of another size than the last: every row is another.
 * False without memory: nothing can be noted. */
bool lines_begin(struct lines *lines, int rows, int cols);

/* Put a mark behind those of `row`.  True when the same one stood there in the frame before:
 * mark->columns is filled in then.  Without memory it is left out, and the row with it. */
bool lines_put(struct lines *lines, int row, struct mark *mark);
/* How many columns the mark that was put last has taken. */
void lines_took(struct lines *lines, int row, int columns);

/* Do its marks stand in the same places as those before, each as wide?  Then it is enough to
 * draw those that are not the same, and what overlaps them behind.  To be asked when all has
 * been put. */
bool lines_keep_places(const struct lines *lines, int row);

/* Is the row another than in the frame before?  To be asked when all has been put. */
bool lines_changed(const struct lines *lines, int row);

/* The marks of a row in turn; *at is 0 at first.  False: there are no more.  mark->text
 * is good until the next lines_begin. */
bool lines_next(const struct lines *lines, int row, size_t *at, struct mark *mark);

#endif
