/*
 * The search: orders by a few rules of thumb, all orders of a small day, then small
 * changes to the best, kept when they are no worse.  Chance comes from a generator with
 * a fixed seed and the end from a count of batches placed, so that the same input gives
 * the same plan on every machine.
 */
#include <string.h>

#include "engine/day_plan_private.h"

#define PLACINGS_USUAL 30000 /* batches placed; some 40 ms */
#define ALL_ORDERS_UP_TO 6   /* batches: 720 orders */
#define STALE_AFTER 60       /* trials without a better one, then a kick */
#define KICK_MOVES 6

/* --- chance ---------------------------------------------------------------------------- */

/* Marsaglia 2003, "Xorshift RNGs", Journal of Statistical Software 8(14): 13, 17, 5. */
static unsigned chance(struct plan_work *work, unsigned below)
{
	unsigned x = work->chance;

	x ^= x << 13;
	x ^= x >> 17;
	x ^= x << 5;
	work->chance = x;
	return x % below;
}

/* --- rules of thumb ---------------------------------------------------------------------- */

enum rule { BY_INDEX, BY_READY, LONG_LOADS_FIRST, SHORT_POTS_FIRST, BY_FAMILY, BY_JOHNSON, RULE_COUNT };

/* Least time in canners that the jars of a batch ask for. */
static int canner_time(const struct plan_work *work, int batch)
{
	const struct plan_batch *of = &work->in->batches[batch];
	int least = PLAN_TIME_MAX_S;

	for (int i = 0; i < work->in->station_count; i++) {
		int room = room_for(work->in, i, of->family);
		int64_t all;

		if (room == 0)
			continue;
		all = (int64_t)work->loads[of->family][i].whole * of->jars / room;
		if (all < least)
			least = (int)all;
	}
	return least;
}

static int pot_time(const struct plan_work *work, int batch)
{
	return work->in->batches[batch].stage == PLAN_FILLED ? 0 : work->batches[batch].rigid;
}

/* Johnson 1954: first those with less time in the first machine than in the second, by
 * the first, rising; then the others by the second, falling. */
static int64_t johnson_key(const struct plan_work *work, int batch)
{
	int64_t first = pot_time(work, batch);
	int64_t second = canner_time(work, batch);

	return first < second ? first : 4 * (int64_t)PLAN_TIME_MAX_S - second;
}

static int64_t rule_key(const struct plan_work *work, enum rule rule, int batch)
{
	const struct plan_batch *of = &work->in->batches[batch];

	switch (rule) {
	case BY_READY:
		return of->ready_s;
	case LONG_LOADS_FIRST:
		return -canner_time(work, batch);
	case SHORT_POTS_FIRST:
		return pot_time(work, batch);
	case BY_FAMILY:
		return of->family;
	case BY_JOHNSON:
		return johnson_key(work, batch);
	case BY_INDEX:
	case RULE_COUNT:
		break;
	}
	return 0;
}

/* Before all: jars that are filled, or in a pot. */
static int64_t key_of(const struct plan_work *work, enum rule rule, int batch)
{
	static const int64_t before_all = INT64_C(-100) * PLAN_TIME_MAX_S;
	const struct plan_batch *of = &work->in->batches[batch];

	if (of->stage == PLAN_FILLED)
		return 2 * before_all + of->filled_at_s;
	if (of->stage == PLAN_IN_POT)
		return before_all + work->start.filled[batch];
	return rule_key(work, rule, batch);
}

/* Insertion keeps the order of the input among equals. */
static void order_by(const struct plan_work *work, enum rule rule, struct genes *genes)
{
	for (int i = 0; i < work->in->batch_count; i++) {
		int64_t key = key_of(work, rule, i);
		int place = i;

		while (place > 0 && key_of(work, rule, genes->order[place - 1]) > key) {
			genes->order[place] = genes->order[place - 1];
			place--;
		}
		genes->order[place] = (unsigned char)i;
	}
}

/* --- trials -------------------------------------------------------------------------------- */

/* Build the trial; keep it when it is no worse than what we have now. */
static bool try_genes(struct plan_work *work)
{
	build_schedule(work, &work->trial);
	if (cost_less(&work->now_cost, &work->schedule.cost))
		return false;
	work->now = work->trial;
	work->now_cost = work->schedule.cost;
	if (!cost_less(&work->now_cost, &work->best_cost))
		return false;
	work->best = work->now;
	work->best_cost = work->now_cost;
	return true;
}

static void try_rules(struct plan_work *work)
{
	static const unsigned char links[] = {LINK_NONE, LINK_JOIN, LINK_DEFER};
	static const unsigned char picks[] = {PICK_FIRST_OUT, PICK_MOST_JARS};

	for (int rule = 0; rule < RULE_COUNT; rule++) {
		order_by(work, (enum rule)rule, &work->trial);
		for (size_t i = 0; i < sizeof(links); i++) {
			for (size_t j = 0; j < sizeof(picks); j++) {
				memset(work->trial.link, links[i], sizeof(work->trial.link));
				memset(work->trial.pick, picks[j], sizeof(work->trial.pick));
				(void)try_genes(work);
			}
		}
	}
}

/* The next order after this one, as in a dictionary; false after the last. */
static bool next_order(unsigned char *order, int count)
{
	int pivot = count - 2;
	int swap = count - 1;
	unsigned char kept;

	while (pivot >= 0 && order[pivot] >= order[pivot + 1])
		pivot--;
	if (pivot < 0)
		return false;
	while (order[swap] <= order[pivot])
		swap--;
	kept = order[pivot];
	order[pivot] = order[swap];
	order[swap] = kept;
	for (int i = pivot + 1, j = count - 1; i < j; i++, j--) {
		kept = order[i];
		order[i] = order[j];
		order[j] = kept;
	}
	return true;
}

static void try_all_orders(struct plan_work *work, long until)
{
	static const unsigned char links[] = {LINK_NONE, LINK_JOIN, LINK_DEFER};

	for (size_t i = 0; i < sizeof(links); i++) {
		work->trial = work->best;
		order_by(work, BY_INDEX, &work->trial);
		for (int j = 0; j < work->in->batch_count; j++)
			work->trial.order[j] = (unsigned char)j;
		memset(work->trial.link, links[i], sizeof(work->trial.link));
		do
			(void)try_genes(work);
		while (work->placings < until && next_order(work->trial.order, work->in->batch_count));
	}
}

/* --- small changes --------------------------------------------------------------------------- */

static void insert_elsewhere(struct plan_work *work, struct genes *genes)
{
	unsigned count = (unsigned)work->in->batch_count;
	unsigned from = chance(work, count);
	unsigned to = chance(work, count);
	unsigned char moved = genes->order[from];

	if (from < to)
		memmove(&genes->order[from], &genes->order[from + 1], to - from);
	else
		memmove(&genes->order[to + 1], &genes->order[to], from - to);
	genes->order[to] = moved;
}

static void swap_two(struct plan_work *work, struct genes *genes)
{
	unsigned a = chance(work, (unsigned)work->in->batch_count);
	unsigned b = chance(work, (unsigned)work->in->batch_count);
	unsigned char kept = genes->order[a];

	genes->order[a] = genes->order[b];
	genes->order[b] = kept;
}

static void change_link(struct plan_work *work, struct genes *genes)
{
	genes->link[chance(work, (unsigned)work->in->batch_count)] = (unsigned char)chance(work, LINK_COUNT);
}

static void change_pick(struct plan_work *work, struct genes *genes)
{
	unsigned picks = PICK_CANNER + (unsigned)work->in->station_count;

	genes->pick[chance(work, (unsigned)work->in->batch_count)] = (unsigned char)chance(work, picks);
}

static void change_something(struct plan_work *work, struct genes *genes)
{
	switch (chance(work, 8)) {
	case 0:
	case 1:
	case 2:
		insert_elsewhere(work, genes);
		break;
	case 3:
	case 4:
		swap_two(work, genes);
		break;
	case 5:
	case 6:
		change_link(work, genes);
		break;
	default:
		change_pick(work, genes);
		break;
	}
}

/* Nothing more to gain? */
static bool as_good_as_it_gets(const struct plan_work *work)
{
	return work->best_cost.late_jar_s == 0 && work->best_cost.finish <= work->bound;
}

static void improve(struct plan_work *work, long until)
{
	int stale = 0;

	work->now = work->best;
	work->now_cost = work->best_cost;
	while (work->placings < until && !as_good_as_it_gets(work)) {
		bool kick = stale >= STALE_AFTER;
		int moves = kick ? KICK_MOVES : 1 + (int)chance(work, 2);

		work->trial = kick ? work->best : work->now;
		while (moves-- > 0)
			change_something(work, &work->trial);
		if (kick)
			work->now_cost.finish = FINISH_NEVER;
		stale = kick || try_genes(work) ? 0 : stale + 1;
		if (kick)
			(void)try_genes(work);
	}
}

/* Jars should not stand about: the shortest cap on waiting that costs no time. */
static void wait_less(struct plan_work *work)
{
	static const int caps_minutes[] = {0, 2, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180};

	work->now = work->best;
	work->now_cost = work->best_cost;
	for (size_t i = 0; i < sizeof(caps_minutes) / sizeof(caps_minutes[0]); i++) {
		work->trial = work->best;
		work->trial.wait_cap = caps_minutes[i] * 60;
		(void)try_genes(work);
	}
}

void search_schedule(struct plan_work *work)
{
	int effort = work->in->effort_percent == 0 ? 100 : work->in->effort_percent;
	long most = (long)PLACINGS_USUAL * effort / 100;

	work->chance = 2463534242u; /* the example seed of the paper */
	work->placings = 0;
	memset(&work->trial, 0, sizeof(work->trial));
	work->trial.wait_cap = PLAN_NO_LIMIT;
	work->best_cost = (struct cost){.late_jar_s = INT64_MAX};
	work->now_cost = work->best_cost;
	try_rules(work);
	if (work->in->batch_count <= ALL_ORDERS_UP_TO && !as_good_as_it_gets(work))
		try_all_orders(work, most);
	improve(work, most);
	wait_less(work);
	build_schedule(work, &work->best);
}
