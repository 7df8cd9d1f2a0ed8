/*
 * role.h - how the roles of terminal.h look: the one palette of the program.
 * Used by terminal.c and its test.
 */
#ifndef STILLROOM_SCREEN_TERM_ROLE_H
#define STILLROOM_SCREEN_TERM_ROLE_H

#include <stdbool.h>

#include "screen/term/terminal.h"

#define ROLE_DEFAULT (-1) /* the terminal's own foreground or background */

enum role_attributes {
	ROLE_ATTR_NONE = 0,
	ROLE_ATTR_BOLD = 1,
	ROLE_ATTR_REVERSE = 2,
	ROLE_ATTR_UNDERLINE = 4,
};

struct role_look {
	short many_fg; /* of 256 colors, or ROLE_DEFAULT */
	short many_bg;
	short few_fg; /* of 8 colors */
	short few_bg;
	unsigned color_attributes;
	unsigned plain_attributes; /* without color */
};

const struct role_look *role_look(enum role role);

#endif
