#include "engine/stats/keeping.h"

#include <limits.h>

#define WEEK_MS (INT64_C(7) * 24 * 3600 * 1000)

int64_t use_from_week(int64_t now_wall_ms)
{
	return now_wall_ms / WEEK_MS - (USE_WEEKS - 1);
}

int weeks_left(int64_t jars, int64_t used, int64_t now_wall_ms, int64_t first_made_wall_ms)
{
	int64_t from = use_from_week(now_wall_ms) * WEEK_MS;
	int64_t span;
	double weeks;

	if (used < USE_JARS_LEAST || jars < 0)
		return WEEKS_UNKNOWN;
	if (first_made_wall_ms > from)
		from = first_made_wall_ms;
	span = now_wall_ms - from;
	if (span < USE_WEEKS_LEAST * WEEK_MS)
		span = USE_WEEKS_LEAST * WEEK_MS;
	weeks = (double)jars * (double)span / (double)WEEK_MS / (double)used;
	return weeks >= (double)INT_MAX ? INT_MAX : (int)weeks;
}
