/*
 * desk_kit.h - the board without its loop: keys in, and what a person sees, on a
 * clock that the test moves.
 *
 * A window is drawn by the real terminal layer on a pseudo-terminal whose other end
 * nobody reads for its meaning: the picture is what curses holds.
 */
#ifndef STILLROOM_TESTS_DESK_KIT_H
#define STILLROOM_TESTS_DESK_KIT_H

#include "screen/ui/desk.h"
#include "screen/ui/frame.h"
#include "support/pot_kit.h"

struct desk_kit {
	struct kitchen_kit kit;
	struct desk desk;
	struct config config;
	struct board_wishes wishes;
	bool rehearse; /* the board was left for practice */
	int master;    /* of the pseudo-terminal */
	int before[2]; /* standard input and output of before */
	long reader;   /* the process that empties it */
};

/* The stations of pot_kit.h, in a window of that size; NULL, 0, 0 for `kind`, `rows` and
 * `cols`: without a window, for keys alone. */
void dk_begin(struct desk_kit *dk, const char *kind, int rows, int cols);
/* The kitchen of a kitchen file, at that moment of the wall clock, in a window; NULL for the
 * file: nothing is set up. */
void dk_begin_in(struct desk_kit *dk, const char *kitchen_file, int64_t wall_ms, const char *kind, int rows, int cols);
void dk_end(struct desk_kit *dk);
/* The window is made that size; what it shows stays. */
void dk_resize(struct desk_kit *dk, int rows, int cols);
/* The computer goes off for so long, and the board is opened again. */
void dk_restart(struct desk_kit *dk, int64_t off_ms);

/* After a second, and after so many milliseconds. */
void dk_key(struct desk_kit *dk, long key);
void dk_key_after(struct desk_kit *dk, int64_t ms, long key);
void dk_keys(struct desk_kit *dk, const char *keys); /* each after a second */
void dk_type(struct desk_kit *dk, const char *text); /* by a quick hand, 0.15 s apart */
void dk_pass(struct desk_kit *dk, int64_t ms);       /* and look again */

void dk_says(const struct desk_kit *dk, const char *words); /* the message holds them */
void dk_says_not(const struct desk_kit *dk, const char *words);
int dk_selected(const struct desk_kit *dk); /* its digit */

void dk_draw(struct desk_kit *dk); /* what it shows now */
/* Draw, and compare every row of the window, blanks at the end aside. */
void dk_shows(struct desk_kit *dk, const char *const *picture, int rows);
void dk_row(int row, char *words, size_t size);       /* as it was last drawn, blanks at its end aside */
bool dk_sees(struct desk_kit *dk, const char *words); /* in one row */
/* Draw, and count the rows that are these words and nothing else, but for the mark. */
int dk_rows_of(struct desk_kit *dk, const char *words);
/* Draw, and say where the terminal's own cursor stands; what its row holds from there on. */
int dk_cursor(struct desk_kit *dk, int *col, char *words, size_t size);
/* How a cell is drawn; with color only. */
enum role dk_role_at(struct desk_kit *dk, int row, int col);
/* Is the whole row one band in the role of an alarm? */
bool dk_band_at(struct desk_kit *dk, int row);
/* The row in which they stand; the test fails when there is none. */
int dk_row_of(struct desk_kit *dk, const char *words, int *col);

#endif
