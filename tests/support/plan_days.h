/*
 * plan_days.h - days to plan, for tests: one that people would recognise and any number
 * by chance.  All invented.
 */
#ifndef STILLROOM_TESTS_PLAN_DAYS_H
#define STILLROOM_TESTS_PLAN_DAYS_H

#include "engine/schedule/day_plan.h"

#define MINUTES(n) ((n)*60)

/* Repeatable chance: 0 .. below - 1. */
struct dice {
	uint64_t state;
};
int roll(struct dice *dice, int below);

/* An empty day: `people` helpers, nothing limited, no station. */
void day_init(struct plan_input *in, int people);
int day_station(struct plan_input *in, enum plan_station_kind kind, bool on_burner);
/* A family whose jars (size 3, pints) go into all canners: `jars` a load. */
int day_family(struct plan_input *in, int jars, int come_up_min, int hold_min);
/* A batch as in the phase table: 15 to boil, 7 boil, 2 off, 10 fill, 3 rinse (minutes). */
int day_batch(struct plan_input *in, int family, int jars);

/* Something to dry: spread for 10 minutes, looked at every 90; add it after all runs and stations. */
int day_drying(struct plan_input *in, int ready_min, int hours);

/* Quince Hollow: 2 juicers, 2 pots, 2 boiling-water canners of 9 and 7 pints, 4 burners,
 * 3 helpers, a meal, `batches` of 12 pints; the fruit of every third comes later. */
void day_in_quince_hollow(struct plan_input *in, int batches);

/* A whole search at one go. */
bool day_plan_make(const struct plan_input *in, const struct plan_names *names, struct plan_work *work,
                   struct day_plan *plan, struct fault *fault);

/* 3 or 4 batches in whole slots of 5 minutes, and only what plan_mip.h knows of. */
void small_day_by_chance(struct plan_input *in, struct dice *dice);

/* Anything the rules know of, at most `batches`; may turn out to be refused. */
void day_by_chance(struct plan_input *in, struct dice *dice, int batches);

#endif
