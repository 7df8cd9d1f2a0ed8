/*
 * keeping.h - how long the jars in the pantry last.
 *
 * Pure.  Instants and spans in milliseconds, jars in whole jars.
 *
 * Use: jars used and given away in this
 * week and the 25 before it, or since the product was first made when that is
 * shorter, over no less than four weeks; below six jars there is not enough use to
 * tell (house rules).
 */
#ifndef STILLROOM_ENGINE_STATS_KEEPING_H
#define STILLROOM_ENGINE_STATS_KEEPING_H

#include <stdint.h>

#define USE_WEEKS 26      /* house rule */
#define USE_WEEKS_LEAST 4 /* house rule */
#define USE_JARS_LEAST 6  /* house rule: below it no rate is told */
#define WEEKS_UNKNOWN (-1)

/* In words, for whoever asks, with the numbers above. */
#define KEEPING_HOW \
	"jars used and given away in this week and the 25 before it, or since the product was first made when that is " \
	"shorter, over no less than 4 weeks; with fewer than 6 jars no rate is given (house rules)"

/* The first week (an instant divided by the length of a week) whose use counts. */
int64_t use_from_week(int64_t now_wall_ms);

/* Whole weeks that `jars` last when `used` went in the weeks that count;
 * WEEKS_UNKNOWN: not enough use to tell. */
int weeks_left(int64_t jars, int64_t used, int64_t now_wall_ms, int64_t first_made_wall_ms);

#endif
