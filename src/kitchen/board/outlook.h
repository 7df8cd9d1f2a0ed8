/*
 * outlook.h - what a load has been through and what lies ahead of it, as
 * stretches on a time axis: for the ribbon and for "canner free at".
 *
 * Times are milliseconds relative to now, negative for the past.  The running
 * clock and the lengths of timed phases are certain; how long a watched phase
 * takes is the planning time of its rule (phases.h) and only EXPECTED.
 */
#ifndef STILLROOM_KITCHEN_BOARD_OUTLOOK_H
#define STILLROOM_KITCHEN_BOARD_OUTLOOK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/board/board.h"

enum stretch_kind { STRETCH_PAST, STRETCH_RUNNING, STRETCH_EXPECTED };

struct stretch {
	enum phase_name name;
	enum phase_kind phase_kind;
	enum stretch_kind kind;
	bool lost; /* past: ended by a lost condition or a stop */
	int64_t from_ms;
	int64_t to_ms;
};

#define STRETCHES_MAX (PAST_PHASES_MAX + PHASE_NAME_COUNT)

/* Fill `out` oldest first; returns how many. None for an empty canner. */
size_t strip_outlook(const struct strip *strip, const struct moment *now, struct stretch out[STRETCHES_MAX]);

/* Is it known when the station will be free?  Not while a run goes on, or is heated
 * for, whose length the house has not set. */
bool strip_end_known(const struct strip *strip);

/* When the station is expected to be free, ms from now (>= 0); 0 for an empty
 * one or a load on the rack. */
int64_t strip_free_in_ms(const struct strip *strip, const struct moment *now);

#endif
