/*
 * open_day.h - a log with its clock and its kitchen, opened and closed as one.
 *
 * The one place that decides by which clock a log runs: a practice log (house
 * row, practice_speed > 0) by its own fast clock, any other by the computer's.
 * The board and the reports both come in through here.
 */
#ifndef STILLROOM_KITCHEN_FILE_OPEN_DAY_H
#define STILLROOM_KITCHEN_FILE_OPEN_DAY_H

#include <stdbool.h>

#include "base/fault.h"
#include "kitchen/board/board.h"
#include "log/rows/file.h"

struct log;

struct day;

/* Faults are those of log_open and kitchen_open; *out is NULL then.  A log that
 * becomes a practice log while open keeps the clock it was opened with: close
 * the day and open it again. */
bool day_open(const char *path, enum log_mode mode, struct day **out, struct fault *fault);
void day_close(struct day *day); /* NULL is allowed */

/* Owned by the day, gone with day_close. */
struct kitchen *day_kitchen(const struct day *day);
struct log *day_log(const struct day *day);

#endif
