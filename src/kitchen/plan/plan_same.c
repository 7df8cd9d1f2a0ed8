/*
 * plan_same.c - is what the planner is told still what it was told before?
 */
#include <stdlib.h>
#include <string.h>

#include "kitchen/plan/plan_private.h"

#define DRIFT_S 60 /* of what goes on: later than that the plan is made anew anyway (plan.c) */

static bool near_enough(int a, int b)
{
	return abs(a - b) <= DRIFT_S;
}

/* Spans of work going on, each since its plan's start: they end when they did. */
struct going_on {
	int start_s;
	const struct plan_span *spans;
};

static bool same_ends(const struct going_on *a, const struct going_on *b, int count)
{
	int end_a = a->start_s;
	int end_b = b->start_s;

	for (int i = 0; i < count; i++) {
		end_a += a->spans[i].length_s;
		end_b += b->spans[i].length_s;
		if (a->spans[i].people != b->spans[i].people || !near_enough(end_a, end_b))
			return false;
	}
	return true;
}

/* The drift is looked at apart and then levelled, so that all the rest can be compared as
 * it is. */
static bool level_runs(const struct plan_input *a, struct plan_input *b)
{
	for (int i = 0; i < a->run_count; i++) {
		const struct plan_run *run = &a->runs[i];
		struct going_on was = { a->start_s, &run->set_up };
		struct going_on is = { b->start_s, &b->runs[i].set_up };

		if (run->station == PLAN_NONE)
			continue;
		if (!same_ends(&was, &is, 3) ||
		    !near_enough(a->start_s + run->look_first_s, b->start_s + b->runs[i].look_first_s))
			return false;
		memcpy(&b->runs[i].set_up, &run->set_up, 3 * sizeof(run->set_up));
		b->runs[i].look_first_s = run->look_first_s;
	}
	return true;
}

static bool level_batches(const struct plan_input *a, struct plan_input *b)
{
	for (int i = 0; i < a->batch_count; i++) {
		const struct plan_batch *batch = &a->batches[i];
		struct going_on was = { a->start_s, &batch->to_boil };
		struct going_on is = { b->start_s, &b->batches[i].to_boil };

		if (batch->stage == PLAN_FILLED)
			b->batches[i].filled_at_s = near_enough(batch->filled_at_s, b->batches[i].filled_at_s)
			                                ? batch->filled_at_s
			                                : b->batches[i].filled_at_s;
		if (batch->stage != PLAN_IN_POT)
			continue;
		if (!same_ends(&was, &is, 5))
			return false;
		memcpy(&b->batches[i].to_boil, &batch->to_boil, 5 * sizeof(batch->to_boil));
	}
	return true;
}

static bool level_loads(const struct plan_input *a, struct plan_input *b)
{
	for (int i = 0; i < a->running_load_count; i++) {
		struct going_on was = { a->start_s, &a->running_loads[i].left.load };
		struct going_on is = { b->start_s, &b->running_loads[i].left.load };

		if (!same_ends(&was, &is, 5))
			return false;
		memcpy(&b->running_loads[i].left.load, &a->running_loads[i].left.load, 5 * sizeof(struct plan_span));
	}
	return true;
}

static void level_stations(const struct plan_input *a, struct plan_input *b)
{
	for (int i = 0; i < a->station_count; i++)
		if (near_enough(a->stations[i].free_at_s, b->stations[i].free_at_s))
			b->stations[i].free_at_s = a->stations[i].free_at_s;
}

bool plan_input_same(const struct plan_input *a, const struct plan_input *b)
{
	struct plan_input level = *b;

	if (a->run_count != b->run_count || a->batch_count != b->batch_count ||
	    a->running_load_count != b->running_load_count || a->station_count != b->station_count ||
	    !level_runs(a, &level) || !level_batches(a, &level) || !level_loads(a, &level))
		return false;
	level_stations(a, &level);
	level.start_s = a->start_s;
	level.effort_percent = a->effort_percent;
	level.hold = a->hold;
	/* Both were cleared; a gap that differs all the same only makes the plan anew. */
	/* NOLINTNEXTLINE(bugprone-suspicious-memory-comparison,cert-exp42-c,cert-flp37-c) */
	return memcmp(a, &level, sizeof(level)) == 0;
}
