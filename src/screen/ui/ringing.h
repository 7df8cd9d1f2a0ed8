/*
 * ringing.h - which stations ring, in the order in which they need somebody.
 */
#ifndef STILLROOM_SCREEN_UI_RINGING_H
#define STILLROOM_SCREEN_UI_RINGING_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/board/board.h"

struct desk;

#define RINGS_MAX 32 /* ringing stations and loads that are told apart */

/* What rings, with what its clock shows. */
struct ring {
	const struct strip *strip; /* the board's */
	struct face face;
};

/* The same, kept: which clocks of which phases rang when it was last looked. */
struct rung {
	int64_t phase_id;
	bool clock;
	bool water;
};

/* Worst first; returns how many, of which RINGS_MAX at most are in `out`. */
size_t desk_rings(const struct desk *desk, struct ring out[RINGS_MAX]);
/* Of so many, those in `out`. */
size_t rings_kept(size_t count);
/* Those that cannot wait: all but loads whose seals can be looked at. */
size_t desk_shouting(const struct desk *desk, struct ring out[RINGS_MAX]);
/* That of a strip; NULL: it does not ring. */
const struct ring *ring_of(const struct ring rings[RINGS_MAX], size_t count, const struct strip *strip);
int strip_digit(const struct strip *strip); /* the key that chooses it: 0 on the rack */
/* Look what rings: an alarm that has begun since ends the question that stands. */
void desk_watch_alarms(struct desk *desk);
void desk_go_to_ringing(struct desk *desk); /* again: to the next */
void desk_hear(struct desk *desk);          /* an alarm was heard */

#endif
