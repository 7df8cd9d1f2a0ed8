/*
 * role.c - the palette.
 *
 * Text in a colour on the terminal's own background must be read on black and
 * on white.  A contrast of 4.5 : 1 against both needs a relative luminance near
 * 0.18 (WCAG 2.1, success criterion 1.4.3: (L1 + 0.05) / (L2 + 0.05)); the
 * numbers below are those of the 256-colour cube nearest to that, at least
 * 3.8 : 1 on both.  Where eight colours are all there is, the dark ones with
 * bold do.  What must be seen from afar has a background of its own.
 */
#include "screen/term/role.h"

#include "kitchen/board/board.h"
#include <assert.h>

enum { BLACK, RED, GREEN, YELLOW, BLUE, MAGENTA, CYAN, WHITE };

/* Of the 256: cube colours (r, g, b in 0..5) are 16 + 36 r + 6 g + b. */
enum {
	MANY_BLACK = 16,
	MANY_WHITE = 231,
	MANY_GREY = 243,
	MANY_GREEN = 28,
	MANY_AMBER = 130,
	MANY_BLUE = 31,
	MANY_RED = 160,
	MANY_VIOLET = 133,
	MANY_YELLOW = 220,
	MANY_NIGHT = 24,
};

static const struct role_look looks[ROLE_COUNT] = {
	[ROLE_PLAIN] = { ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_ATTR_NONE, ROLE_ATTR_NONE },
	[ROLE_QUIET] = { MANY_GREY, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_ATTR_NONE, ROLE_ATTR_NONE },
	[ROLE_STRONG] = { ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_ATTR_BOLD, ROLE_ATTR_BOLD },
	[ROLE_HEADER] = { MANY_WHITE, MANY_NIGHT, WHITE, BLUE, ROLE_ATTR_BOLD, ROLE_ATTR_REVERSE },
	[ROLE_SELECTED] = { ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_ATTR_REVERSE,
	                    ROLE_ATTR_REVERSE },
	[ROLE_ALARM] = { MANY_WHITE, MANY_RED, WHITE, RED, ROLE_ATTR_BOLD, ROLE_ATTR_BOLD | ROLE_ATTR_REVERSE },
	[ROLE_CAUTION] = { MANY_BLACK, MANY_YELLOW, BLACK, YELLOW, ROLE_ATTR_NONE,
	                   ROLE_ATTR_BOLD | ROLE_ATTR_UNDERLINE },
	[ROLE_STOP] = { MANY_RED, ROLE_DEFAULT, RED, ROLE_DEFAULT, ROLE_ATTR_BOLD | ROLE_ATTR_REVERSE,
	                ROLE_ATTR_BOLD | ROLE_ATTR_REVERSE },
	[ROLE_RUNNING] = { MANY_GREEN, ROLE_DEFAULT, GREEN, ROLE_DEFAULT, ROLE_ATTR_BOLD, ROLE_ATTR_BOLD },
	[ROLE_WAITING] = { MANY_AMBER, ROLE_DEFAULT, MAGENTA, ROLE_DEFAULT, ROLE_ATTR_BOLD, ROLE_ATTR_UNDERLINE },
	[ROLE_DONE] = { MANY_BLUE, ROLE_DEFAULT, CYAN, ROLE_DEFAULT, ROLE_ATTR_NONE, ROLE_ATTR_NONE },
	[ROLE_KEY] = { ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_DEFAULT, ROLE_ATTR_BOLD | ROLE_ATTR_UNDERLINE,
	               ROLE_ATTR_BOLD | ROLE_ATTR_UNDERLINE },
	[ROLE_PRACTICE] = { MANY_WHITE, MANY_VIOLET, WHITE, MAGENTA, ROLE_ATTR_BOLD,
	                    ROLE_ATTR_REVERSE | ROLE_ATTR_UNDERLINE },
};

const struct role_look *role_look(enum role role)
{
	assert(role < ROLE_COUNT);
	return &looks[role];
}
