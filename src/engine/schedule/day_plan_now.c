/*
 * Jars that stand filled beside a free canner go into it, and into one if one takes them.
 * A pot that stands free beside what it needs is not kept waiting for nothing: a plan is
 * changed a little until it is begun now, if nothing ends later for it.  Its jars may then
 * wait, within their limit, or share a load with those before or after them.
 */
#include <string.h>

#include "engine/schedule/day_plan_private.h"

#define TRIED_MAX 4 /* batches, of those that could begin */

static bool could_begin(const struct plan_work *work, int item)
{
	const struct plan_input *in = work->in;

	return item < PLAN_BATCHES_MAX && in->batches[item].stage == PLAN_TO_DO && in->batches[item].run_count == 0 &&
	       in->batches[item].ready_s <= in->start_s;
}

/* Pots that nothing stands in, neither now nor by what is built. */
static int pots_free_now(const struct plan_work *work)
{
	const struct plan_input *in = work->in;
	int free_now = 0;

	for (int i = 0; i < in->station_count; i++)
		free_now += in->stations[i].kind == PLAN_POT &&
		            lane_fit(&work->schedule.lanes[i], in->start_s, in->start_s + 1) == in->start_s;
	return free_now;
}

bool no_worse(const struct cost *a, const struct cost *b)
{
	return a->late_jars <= b->late_jars && a->late_jar_s <= b->late_jar_s && a->finish <= b->finish &&
	       a->standing <= b->standing;
}

/* --- jars ------------------------------------------------------------------------------------ */

/* All that stand filled are given out together, to the canners that can begin first. */
static void load_together(const struct plan_work *work, struct genes *genes, unsigned char pick)
{
	const struct plan_input *in = work->in;
	int last = PLAN_NONE;

	for (int i = 0; i < in->batch_count + in->run_count; i++) {
		int item = genes->order[i];

		if (item >= PLAN_BATCHES_MAX || in->batches[item].stage != PLAN_FILLED)
			continue;
		genes->link[item] = LINK_DEFER;
		last = item;
	}
	if (last == PLAN_NONE)
		return;
	genes->link[last] = LINK_NONE;
	genes->pick[last] = pick;
}

static bool loads_better(const struct cost *a, const struct cost *b)
{
	return no_worse(a, b) && (a->standing < b->standing || a->loads < b->loads);
}

static void load_now(struct plan_work *work, struct genes *genes, struct cost *cost)
{
	static const unsigned char picks[] = { PICK_FIRST_OUT, PICK_FIRST_IN, PICK_MOST_JARS };

	for (size_t i = 0; i < sizeof(picks) && (cost->standing > 0 || cost->loads > 1); i++) {
		struct genes changed = *genes;

		load_together(work, &changed, picks[i]);
		build_schedule(work, &changed);
		if (!loads_better(&work->schedule.cost, cost))
			continue;
		*genes = changed;
		*cost = work->schedule.cost;
	}
}

/* --- pots ------------------------------------------------------------------------------------ */

static int last_batch_before(const struct genes *genes, int at)
{
	while (--at >= 0)
		if (genes->order[at] < PLAN_BATCHES_MAX)
			return genes->order[at];
	return PLAN_NONE;
}

/* Before all that is not begun yet. */
static int to_the_front(const struct plan_work *work, struct genes *genes, int at)
{
	unsigned char item = genes->order[at];
	int first = 0;

	while (first < at &&
	       (genes->order[first] >= PLAN_BATCHES_MAX || work->in->batches[genes->order[first]].stage != PLAN_TO_DO))
		first++;
	memmove(&genes->order[first + 1], &genes->order[first], (size_t)(at - first));
	genes->order[first] = item;
	return first;
}

/* The n-th way to begin what stands there in the order; false: there are no more. */
static bool change_for(const struct plan_work *work, int n, int at, struct genes *genes)
{
	static const unsigned char links[] = { LINK_NONE, LINK_DEFER };
	int item = genes->order[at];
	int before;

	if (n >= 8)
		return false;
	if (n % 2 == 1)
		at = to_the_front(work, genes, at);
	before = last_batch_before(genes, at);
	if (before != PLAN_NONE)
		genes->link[before] = links[n / 2 % 2];
	genes->link[item] = links[n / 4];
	genes->wait_cap = PLAN_NO_LIMIT;
	return true;
}

static bool begin_one(struct plan_work *work, struct genes *genes, struct cost *cost, int at)
{
	struct genes changed = *genes;

	for (int n = 0; change_for(work, n, at, &changed); n++) {
		first_come(work, &changed);
		build_schedule(work, &changed);
		if (work->schedule.cost.begun > cost->begun && no_worse(&work->schedule.cost, cost)) {
			*genes = changed;
			*cost = work->schedule.cost;
			return true;
		}
		changed = *genes;
	}
	return false;
}

void begin_now(struct plan_work *work, struct genes *genes, struct cost *cost)
{
	int tried = 0;

	load_now(work, genes, cost);
	build_schedule(work, genes);
	for (int at = 0; at < work->in->batch_count + work->in->run_count && tried < TRIED_MAX; at++) {
		int item = genes->order[at];

		if (!could_begin(work, item) || work->schedule.pots[item].start <= work->in->start_s)
			continue;
		if (pots_free_now(work) == 0)
			return;
		tried++;
		if (begin_one(work, genes, cost, at))
			at = -1; /* the order is another */
		build_schedule(work, genes);
	}
}
