/*
 * role.c - the palette.
 *
 * What the ground of a terminal is, nobody knows.  A contrast of 4.5 : 1 (WCAG 2.1,
 * success criterion 1.4.3: (L1 + 0.05) / (L2 + 0.05)) needs a relative luminance of 0.183
 * at the most on white and of 0.233 at the least on #1e1e1e: no color does for both.  So a
 * role has either the terminal's own text on its own ground, which its owner has chosen,
 * or a color on a ground of our own.  Of 256 colors those are taken that a protanope and a
 * deuteranope read as well; of eight, those that do it in the customary values, but for
 * red, which in these a deuteranope reads at 3.8 : 1: it is bold.  Black text is never bold:
 * some terminals show that as grey.
 */
#include "screen/term/role.h"

#include "kitchen/board/board.h"
#include <assert.h>

enum { BLACK, RED, GREEN, YELLOW, BLUE, MAGENTA, CYAN, WHITE };

/* Of the 256: cube colors (r, g, b in 0..5) are 16 + 36 r + 6 g + b. */
enum {
	MANY_BLACK = 16,
	MANY_WHITE = 231,
	MANY_GREEN = 22,
	MANY_BROWN = 94,
	MANY_BLUE = 25,
	MANY_RED = 124,
	MANY_VIOLET = 90,
	MANY_YELLOW = 220,
	MANY_NIGHT = 24,
};

#define OWN_COLORS ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT /* the terminal's */

static const struct role_look looks[ROLE_COUNT] = {
	[ROLE_PLAIN] = { OWN_COLORS, ROLE_ATTR_NONE, ROLE_ATTR_NONE },
	[ROLE_QUIET] = { OWN_COLORS, ROLE_ATTR_NONE, ROLE_ATTR_NONE },
	[ROLE_STRONG] = { OWN_COLORS, ROLE_ATTR_BOLD, ROLE_ATTR_BOLD },
	[ROLE_HEADER] = { MANY_WHITE, MANY_NIGHT, WHITE, BLUE, ROLE_ATTR_BOLD, ROLE_ATTR_REVERSE },
	[ROLE_SELECTED] = { OWN_COLORS, ROLE_ATTR_REVERSE, ROLE_ATTR_REVERSE },
	[ROLE_ALARM] = { MANY_WHITE, MANY_RED, WHITE, RED, ROLE_ATTR_BOLD, ROLE_ATTR_BOLD | ROLE_ATTR_REVERSE },
	[ROLE_CAUTION] = { MANY_BLACK, MANY_YELLOW, BLACK, YELLOW, ROLE_ATTR_NONE,
	                   ROLE_ATTR_BOLD | ROLE_ATTR_UNDERLINE },
	[ROLE_STOP] = { MANY_WHITE, MANY_RED, WHITE, RED, ROLE_ATTR_BOLD, ROLE_ATTR_BOLD | ROLE_ATTR_REVERSE },
	[ROLE_RUNNING] = { MANY_WHITE, MANY_GREEN, BLACK, GREEN, ROLE_ATTR_NONE, ROLE_ATTR_BOLD },
	[ROLE_WAITING] = { MANY_WHITE, MANY_BROWN, BLACK, CYAN, ROLE_ATTR_NONE, ROLE_ATTR_UNDERLINE },
	[ROLE_DONE] = { MANY_WHITE, MANY_BLUE, WHITE, BLUE, ROLE_ATTR_NONE, ROLE_ATTR_NONE },
	[ROLE_KEY] = { OWN_COLORS, ROLE_ATTR_BOLD | ROLE_ATTR_UNDERLINE, ROLE_ATTR_BOLD | ROLE_ATTR_UNDERLINE },
	[ROLE_PRACTICE] = { MANY_WHITE, MANY_VIOLET, BLACK, CYAN, ROLE_ATTR_NONE,
	                    ROLE_ATTR_REVERSE | ROLE_ATTR_UNDERLINE },
};

const struct role_look *role_look(enum role role)
{
	assert(role < ROLE_COUNT);
	return &looks[role];
}
