/*
 * elevation.h - how high the kitchen stands, and how surely that is known.
 *
 * Kept as whole micrometres so that feet and metres are both exact (1 ft =
 * 304,800 um, the international foot; schema/measures.csv row "foot").
 */
#ifndef STILLROOM_ENGINE_PHYSICS_ELEVATION_H
#define STILLROOM_ENGINE_PHYSICS_ELEVATION_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"

#define FOOT_UM INT64_C(304800)
#define METRE_UM INT64_C(1000000)

/* Below the lowest dry land and above the highest: -1,500 ft to 30,000 ft.
 * Outside it a typing error is far more likely than a kitchen. */
#define ELEVATION_MIN_FT (-1500)
#define ELEVATION_MAX_FT 30000

struct elevation {
	bool known;
	int64_t um;       /* best value */
	int64_t slack_um; /* the true value lies within um -/+ slack_um; >= 0 */
};

/* Read "4650ft", "4,650 ft", "1417 m", "1417.5m", "4650 feet", and with a
 * stated uncertainty "4650ft+-50" or "4650+-50 ft" ("±" too).  The unit is
 * required.  A figure in metres carries half a unit of its last printed digit
 * as its slack (1417 m is anything that rounds to it), also where a smaller
 * uncertainty is stated; feet as typed are taken as meant.  "unknown" or ""
 * gives a value with known = false.  Misuse otherwise; also for a point and exactly
 * three digits behind it after one to four ("1.417 m", "4.650 ft"), which elsewhere
 * means thousands: the sentence asks which is meant. */
bool elevation_read(const char *words, struct elevation *out, struct fault *fault);

double elevation_metres(const struct elevation *elevation);

/* Does the band whose printed top is `alt_max_ft` hold the whole of the
 * elevation, slack included?  The printed edge itself belongs to the band. */
bool elevation_within_top(const struct elevation *elevation, int alt_max_ft);

/* "4,650 ft (1,417 m)" or "not known". */
void elevation_words(const struct elevation *elevation, char *buffer, size_t size);

/* Words of which elevation_read makes the very same, slack included: "4650ft", "1417m"; "unknown".  80 bytes take any. */
void elevation_exact_words(const struct elevation *elevation, char *buffer, size_t size);

#endif
