/*
 * terminal_inside.h - the inside of struct terminal, shared by terminal.c, which
 * opens it and reads keys, and draw.c.  Nobody else includes this.
 */
#ifndef STILLROOM_SCREEN_TERM_TERMINAL_INSIDE_H
#define STILLROOM_SCREEN_TERM_TERMINAL_INSIDE_H

#include <curses.h>
#include <stdbool.h>
#include <termios.h>
#include <wchar.h>

#include "screen/term/glyph.h"
#include "screen/term/lines.h"
#include "screen/term/outlet.h"
#include "screen/term/paste.h"

struct place {
	int row;
	int col;
};

struct terminal {
	SCREEN *screen;
	WINDOW *keys; /* a pad: reading a key from it never draws */
	struct termios saved;
	enum glyph_set set;
	bool color;
	int rows;
	int cols;
	struct paste paste;
	mbstate_t partial; /* a character whose last bytes have not come yet */
	bool tick_first;   /* a key came last, so a tick goes first now */
	bool hung_up;
	bool gone;
	int empty_reads;
	struct outlet *outlet;
	struct lines *lines;
	struct place cursor; /* where it shall stand in the frame being drawn */
	struct place stands; /* where it does in the one before */
	bool selected;       /* the cursor is at what is selected */
	bool owed;           /* the frame drawn last is not on its way yet */
};

/* Send the frame, or owe it to a terminal that has no room. */
void terminal_show(struct terminal *terminal);

#endif
