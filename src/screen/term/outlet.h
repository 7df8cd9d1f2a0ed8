/*
 * outlet.h - what goes to the terminal, taken at once and sent as there is room.
 *
 * A terminal that nobody reads (a stopped window, a dead line) takes no more after some
 * thousands of bytes, and whoever writes on sleeps. Curses can only write to a
 * descriptor, and on one that does not block it would spin. So while it draws, its
 * descriptor leads to a file in memory; at other times to the terminal, whose modes it
 * sets. Used by terminal.c and draw.c only.
 */
#ifndef STILLROOM_SCREEN_TERM_OUTLET_H
#define STILLROOM_SCREEN_TERM_OUTLET_H

#include <stdbool.h>
#include <stdio.h>

#include "base/fault.h"

struct outlet;

/* For the terminal at `fd`, which stays the caller's. */
bool outlet_open(int fd, struct outlet **out, struct fault *fault);
void outlet_close(struct outlet *outlet); /* NULL is harmless; what waits is dropped */

FILE *outlet_file(struct outlet *outlet); /* for newterm(); owned by the outlet */

/* What is written to the file between the two is taken in. */
void outlet_catch(struct outlet *outlet);
void outlet_release(struct outlet *outlet);

/* Send what the terminal takes now; true when nothing waits any more. */
bool outlet_send(struct outlet *outlet);
/* Likewise, for so long at the most. */
void outlet_send_within(struct outlet *outlet, int ms);

/* To be polled for room while something waits; never blocks. */
int outlet_fd(const struct outlet *outlet);
bool outlet_waits(const struct outlet *outlet);

#endif
