/*
 * clock_line.h - the clock of a strip in words and colors.
 */
#ifndef STILLROOM_SCREEN_UI_CLOCK_LINE_H
#define STILLROOM_SCREEN_UI_CLOCK_LINE_H

#include <stddef.h>

#include "kitchen/board/board.h"
#include "screen/term/role.h"

struct desk;

/* The clock of a strip: "12:34", "+1:02" when over, counting up with a
 * trailing "^" in phases without a clock.  `hours_only` for the rack. */
void strip_clock_words(const struct strip *strip, const struct face *face, char *buffer, size_t size);
/* What its digits count, since a clock that rises and one that falls look alike. */
const char *strip_counts_words(const struct face *face);
/* The clock of a strip that needs someone first, with its name: of a juicer it may be the
 * water; `face` then is made to tell of that one. */
const char *strip_soonest(const struct strip *strip, struct face *face);
/* The role a strip is drawn in now: flashing when it rings. */
enum role strip_role(const struct desk *desk, const struct face *face);
/* The same of a clock that rings. */
enum role strip_ringing_role(const struct desk *desk, const struct face *face);

/* The most urgent clock in one line, for the views that hide the board. */
void clock_line_draw(struct desk *desk, int row);

#endif
