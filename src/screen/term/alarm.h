/*
 * alarm.h - how each kind of alarm sounds and flashes.
 *
 * The kinds differ by what happens when nobody comes, so they differ by ear and
 * by eye: the worse, the quicker.  Pure functions of the time since the alarm
 * began, in milliseconds of real (not practice) time.  The rhythms are this
 * program's own.
 */
#ifndef STILLROOM_SCREEN_TERM_ALARM_H
#define STILLROOM_SCREEN_TERM_ALARM_H

#include <stdbool.h>
#include <stdint.h>

#include "kitchen/board/phases.h"

/* How many bells fall in (from_ms, to_ms]; the first one is at 0. */
int alarm_bells(enum alarm alarm, int64_t from_ms, int64_t to_ms);
/* Is the strip shown reversed at this moment? */
bool alarm_lit(enum alarm alarm, int64_t since_ms);
/* Milliseconds until the strip is next shown otherwise, and until the next bell; > 0. */
int64_t alarm_next_flash_ms(enum alarm alarm, int64_t since_ms);
int64_t alarm_next_bell_ms(enum alarm alarm, int64_t since_ms);
/* From one flash to the next. */
int64_t alarm_flash_ms(enum alarm alarm);
const char *alarm_words(enum alarm alarm); /* "LIFT JARS" */

#endif
