/*
 * digits.h - clocks in digits tall enough to be read across a room.
 *
 * A font of our own for 0-9, ':', '-', '+', ' ' and '_', the narrow blank between a figure
 * and its unit.  All digits have one width, so that a running clock does not shiver.  The
 * capitals in which the jobs of kitchen/board/phases.h and the units of a clock are written
 * are five rows high in both fonts and stand on the same line as the digits; with a station's
 * digit and a blank before it a job takes 66 columns at most.  Any other character is drawn as
 * a space.
 *
 *   height        rows  digit  colon  gap   "59:59"  "1:07:05"  "+25_MIN"  "+1_H_45"
 *   DIGITS_TALL      5      5      2    1        26         35         36         33
 *   DIGITS_GIANT     7      9      3    2        47         63         53         55
 *
 * Strokes are two columns wide in the tall font, three in the giant one: about
 * as wide as a row is high, which is what makes them readable from afar.
 */
#ifndef STILLROOM_SCREEN_TERM_DIGITS_H
#define STILLROOM_SCREEN_TERM_DIGITS_H

#include <stddef.h>

#include "screen/term/terminal.h"

enum digits_height { DIGITS_TALL, DIGITS_GIANT, DIGITS_HEIGHT_COUNT };

int digits_rows(enum digits_height height);
int digits_columns(const char *s, enum digits_height height);

/* One row (0 .. digits_rows - 1) of a text as '#' and ' ', cut at `size` (>= 1).
 * Returns the number of characters written without the ending zero. */
size_t digits_row(const char *s, enum digits_height height, int row, char *out, size_t size); /* public for its test */

/* Draw with the top left at row, col, on the ground of the role, which is a column wider
 * on either side: strokes in a role's color are read on its own ground only.  Clipped at
 * the window's edge. */
void digits_draw(struct terminal *terminal, int row, int col, const char *s, enum digits_height height, enum role role);

#endif
