/*
 * loop.h - the full-screen board: opens a log and runs until the person leaves.
 *
 * At rest it sleeps until something is to be shown: the second or minute of a clock
 * (ui/clock_line.h), a flash, a bell (which draws nothing), a write to the -wal
 * (log/file/log_watch.c; where the system cannot tell, the log is asked every two seconds).
 * Of a frame only rows that have become others go to curses (term/lines.h).  make bench
 * counts processor, bytes and wake-ups (tests/bench/bench_board.c).
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
