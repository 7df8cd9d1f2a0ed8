/*
 * board.h - the full-screen board: opens a log and runs until the person leaves.
 */
#ifndef STILLROOM_SCREEN_BOARD_H
#define STILLROOM_SCREEN_BOARD_H

#include <stdbool.h>

#include "engine/fault.h"

struct board_wishes {
	bool ascii;
	bool no_colour;
	bool rehearsal; /* a practice log is wanted; a real one is refused, and the other way round */
};

/* True when the person left; false with a fault when the log or the terminal
 * could not be had.  The terminal is restored in either case. */
bool board_run(const char *log_path, const struct board_wishes *wishes, struct fault *fault);

#endif
