/*
 * glyph.h - the shapes the views draw with, and the cleaning of text that
 * people typed.  Pure: no curses here, so that tests and other floors of the
 * screen can use it.
 *
 * The width of a character is what the C library's wcwidth() says, which is
 * also what curses goes by; it needs a UTF-8 locale (setlocale) for anything
 * beyond ASCII.  Every glyph is one column wide in every set.
 */
#ifndef STILLROOM_SCREEN_TERM_GLYPH_H
#define STILLROOM_SCREEN_TERM_GLYPH_H

#include <stdbool.h>
#include <stddef.h>

/* What a terminal can show. */
enum glyph_set {
	GLYPH_SET_ASCII,
	GLYPH_SET_CONSOLE, /* UTF-8 with the few hundred shapes of a text console's font */
	GLYPH_SET_FULL,    /* UTF-8 with box drawing and block elements */
	GLYPH_SET_COUNT
};

enum glyph {
	GLYPH_SPACE,
	GLYPH_HOLD,      /* ribbon: a hold that must not be shortened */
	GLYPH_TIMED,     /* ribbon: rest, vent, anything timed */
	GLYPH_WATCHED,   /* ribbon: a phase that a person watches */
	GLYPH_ESTIMATED, /* ribbon: the future as it is estimated */
	GLYPH_NOW,       /* the line of the present over the ribbons */
	GLYPH_TICK,      /* a mark on the time axis */
	GLYPH_SELECTION, /* the mark before the selected line */
	GLYPH_RULE,      /* a horizontal line */
	GLYPH_BAR,       /* a vertical line */
	GLYPH_BELL,      /* an alarm is sounding */
	GLYPH_CHECK,     /* done, sealed */
	GLYPH_CROSS,     /* failed, unsealed */
	GLYPH_ELLIPSIS,  /* text was cut here */
	GLYPH_BLOCK,     /* the ink of tall digits */
	GLYPH_TOP_LEFT,  /* outline of a jar or a box */
	GLYPH_TOP_RIGHT,
	GLYPH_BOTTOM_LEFT,
	GLYPH_BOTTOM_RIGHT,
	GLYPH_LEVEL_0, /* a liquid from empty to full in eighths: use glyph_of_level() */
	GLYPH_LEVEL_1,
	GLYPH_LEVEL_2,
	GLYPH_LEVEL_3,
	GLYPH_LEVEL_4,
	GLYPH_LEVEL_5,
	GLYPH_LEVEL_6,
	GLYPH_LEVEL_7,
	GLYPH_LEVEL_8,
	GLYPH_COUNT
};

/* The text of a glyph in a set; a constant, never NULL.  Views use glyph() of
 * terminal.h, which knows the set. */
const char *glyph_in(enum glyph_set set, enum glyph glyph);

/* The glyph of a level; eighths are held to 0..8. */
enum glyph glyph_of_level(int eighths);

/*
 * Make text harmless and printable; the result is valid UTF-8 of printable
 * characters.
 *  - tab, newline and carriage return become a space;
 *  - every other control byte (ESC and BEL among them), the C1 controls
 *    U+0080..U+009F, each byte that is not valid UTF-8, marks that turn the
 *    direction of writing (U+202A..U+202E, U+2066..U+2069, U+061C, U+200E,
 *    U+200F), line separators and unassigned characters become '?';
 *  - characters without width are dropped, except up to two combining marks
 *    after a letter, so that accents typed as marks stay.
 * True when the result equals the input; false when anything was replaced,
 * dropped or cut at a character's end for want of room.  size >= 1.
 */
bool glyph_clean(char *out, size_t size, const char *in);

/* The same, and every character outside ASCII is spelled in ASCII (accents
 * lost, fractions and dashes written out) or becomes '?'. */
bool glyph_clean_ascii(char *out, size_t size, const char *in);

/* Columns of a cleaned text. */
int glyph_columns(const char *text); /* public for its test */

/*
 * Cut a cleaned text in place to at most max_cols columns; when anything is cut
 * the last column is the ellipsis of the set, if there is room for it in
 * `size`.  Never splits a character, never leaves half a wide one.  Returns the
 * columns left.
 */
int glyph_fit(char *text, size_t size, int max_cols, enum glyph_set set);

#endif
