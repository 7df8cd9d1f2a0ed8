/*
 * loop.h - the full-screen board: opens a log and runs until the person leaves.
 */
#ifndef STILLROOM_SCREEN_APP_LOOP_H
#define STILLROOM_SCREEN_APP_LOOP_H

#include <stdbool.h>

#include "base/fault.h"
#include "screen/ui/wishes.h"

/* True when the person left; false with a fault when the log or the terminal
 * could not be had.  The terminal is restored in either case. */
bool board_run(const char *log_path, const struct board_wishes *wishes, struct fault *fault);

#endif
