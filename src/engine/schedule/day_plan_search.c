/*
 * The search: orders by a few rules of thumb, all orders of a small day, then small
 * changes to the best, kept when they are no worse.  Chance comes from a generator with
 * a fixed seed and the end from a count of batches placed, so that the same input gives
 * the same plan on every machine.
 */
#include <string.h>

#include "engine/schedule/day_plan_private.h"

/* Batches placed: a small day costs less for each, and is to be planned the better. */
#define SMALL(items) ((items) < 8 ? 8 : (items))
#define PLACINGS_USUAL(items) (20000 + 12000000 / ((SMALL(items) + 4) * (SMALL(items) + 4)))
#define ALL_ORDERS_UP_TO 4 /* batches: 24 orders */
#define ROUNDS 2
/* At first, hills of that part of the day are walked over; lower ones where there are
 * fewer steps for each batch. */
#define HILL(items) ((items) <= 12 ? 10 : 40)

/* --- chance ---------------------------------------------------------------------------- */

/* Marsaglia 2003, "Xorshift RNGs", Journal of Statistical Software 8(14): 13, 17, 5. */
static unsigned chance(struct plan_work *work, unsigned below)
{
	unsigned x = work->chance;

	x ^= x << 13;
	x ^= x >> 17;
	x ^= x << 5;
	work->chance = x;
	return below == 0 ? 0 : x % below; /* nothing to choose among: runs or loads alone */
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
	case BY_READY: return of->ready_s;
	case LONG_LOADS_FIRST: return -canner_time(work, batch);
	case SHORT_POTS_FIRST: return pot_time(work, batch);
	case BY_FAMILY: return of->family;
	case BY_JOHNSON: return johnson_key(work, batch);
	case BY_INDEX:
	case RULE_COUNT: break;
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

static int items(const struct plan_work *work)
{
	return work->in->batch_count + work->in->run_count;
}

/* Insertion keeps the order of the input among equals. */
static void order_by(const struct plan_work *work, enum rule rule, unsigned char *order)
{
	for (int i = 0; i < work->in->batch_count; i++) {
		int64_t key = key_of(work, rule, i);
		int place = i;

		while (place > 0 && key_of(work, rule, order[place - 1]) > key) {
			order[place] = order[place - 1];
			place--;
		}
		order[place] = (unsigned char)i;
	}
}

/* All runs before the batches, or each when a batch needs it. */
static void order_with_runs(const struct plan_work *work, enum rule rule, bool runs_first, struct genes *genes)
{
	int runs = work->in->run_count;
	int batches = work->in->batch_count;

	order_by(work, rule, &genes->order[runs_first ? runs : 0]);
	for (int i = 0; i < runs; i++)
		genes->order[runs_first ? i : batches + i] = (unsigned char)ITEM_OF_RUN(i);
}

/* --- trials -------------------------------------------------------------------------------- */

/* How high a schedule stands; lower is better.  Mostly its finish, and a little how
 * early its loads are out on the average, so that there is a way down where many have
 * the same finish. */
static int64_t height(const struct schedule *schedule)
{
	return schedule->cost.late_jar_s * 4 + (int64_t)schedule->cost.finish * 8 + schedule->mean_load_end;
}

/* Build the trial, keep it if it is the best so far, and go there when it is no more
 * than `rise` above where we are. */
static void try_genes(struct plan_work *work, int64_t rise)
{
	int64_t trial;

	first_come(work, &work->trial);
	build_schedule(work, &work->trial);
	if (cost_less(&work->schedule.cost, &work->best_cost)) {
		work->best = work->trial;
		work->best_cost = work->schedule.cost;
	}
	trial = height(&work->schedule);
	if (trial > work->now_height + rise)
		return;
	work->now = work->trial;
	work->now_height = trial;
}

static const unsigned char all_links[] = { LINK_NONE, LINK_JOIN, LINK_DEFER };

/* The n-th of the rules of thumb, with runs first or when they are needed, links and picks;
 * false: there are no more. */
#define LINKS_AND_PICKS 6

static bool try_rule(struct plan_work *work, int n)
{
	static const unsigned char picks[] = { PICK_FIRST_OUT, PICK_MOST_JARS };
	int rule = n / (2 * LINKS_AND_PICKS);
	bool runs_first = n / LINKS_AND_PICKS % 2 == 0;

	if (rule >= RULE_COUNT)
		return false;
	if (!runs_first && work->in->run_count == 0)
		return true;
	if (n % LINKS_AND_PICKS == 0)
		order_with_runs(work, (enum rule)rule, runs_first, &work->trial);
	memset(work->trial.link, all_links[n % LINKS_AND_PICKS / 2], sizeof(work->trial.link));
	memset(work->trial.pick, picks[n % 2], sizeof(work->trial.pick));
	try_genes(work, 0);
	return true;
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

/* All orders with one link, then with the next; false: there are no more. */
static bool try_order(struct plan_work *work)
{
	struct search *search = &work->search;
	unsigned char *order = &work->trial.order[work->in->run_count];
	struct genes this_one;

	if (search->at == (int)sizeof(all_links))
		return false;
	if (!search->begun) {
		work->trial = work->best;
		order_with_runs(work, BY_INDEX, true, &work->trial);
		for (int i = 0; i < work->in->batch_count; i++)
			order[i] = (unsigned char)i;
		memset(work->trial.link, all_links[search->at], sizeof(work->trial.link));
	}
	this_one = work->trial;
	try_genes(work, 0);
	work->trial = this_one; /* the one after it, not after what it is the same as */
	search->begun = work->placings < search->most && next_order(order, work->in->batch_count);
	search->at += !search->begun;
	return true;
}

/* --- small changes --------------------------------------------------------------------------- */

static void insert_elsewhere(struct plan_work *work, struct genes *genes)
{
	unsigned count = (unsigned)items(work);
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
	unsigned a = chance(work, (unsigned)items(work));
	unsigned b = chance(work, (unsigned)items(work));
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

static void change_late(struct plan_work *work, struct genes *genes)
{
	static const unsigned char minutes[] = { 0, 0, 0, 2, 5, 10, 20, 30 };
	int item = genes->order[chance(work, (unsigned)items(work))];

	genes->late[item] = minutes[chance(work, sizeof(minutes))];
}

/* One of the ways to change a plan a little, the likelier the larger its share. */
static void change_something(struct plan_work *work, struct genes *genes)
{
	static const struct {
		unsigned share;
		void (*change)(struct plan_work *work, struct genes *genes);
	} ways[] = {
		{ 3, insert_elsewhere }, { 2, swap_two }, { 2, change_link }, { 1, change_pick }, { 1, change_late }
	};
	unsigned at = chance(work, 9);
	size_t way = 0;

	while (at >= ways[way].share)
		at -= ways[way++].share;
	ways[way].change(work, genes);
}

/* Nothing more to gain, or no batch to move about (what goes on is laid out as it is,
 * runs in their order)? */
static bool as_good_as_it_gets(const struct plan_work *work)
{
	if (work->in->batch_count == 0)
		return true;
	return work->best_cost.late_jar_s == 0 && work->best_cost.finish <= work->bound;
}

/* A step of a walk, at first over hills, later only down; from the best again each round.
 * False: the last round is over. */
static bool walk(struct plan_work *work)
{
	struct search *search = &work->search;
	int64_t left;
	int64_t highest;

	if (search->at == ROUNDS)
		return false;
	if (!search->begun) {
		search->from = work->placings;
		search->until = work->placings + search->each;
		build_schedule(work, &work->best);
		work->now = work->best;
		work->now_height = height(&work->schedule);
		search->begun = true;
	}
	if (work->placings >= search->until || as_good_as_it_gets(work)) {
		search->begun = false;
		search->at++;
		return true;
	}
	left = 1000 * (search->until - work->placings) / (search->until - search->from + 1);
	highest = (int64_t)(work->best_cost.finish - work->in->start_s) * 8 / HILL(items(work)) * left / 1000;
	work->trial = work->now;
	for (int moves = 1 + (int)chance(work, 2); moves > 0; moves--)
		change_something(work, &work->trial);
	try_genes(work, highest * chance(work, 1000) / 1000);
	return true;
}

/* Jars should not stand about: the shortest cap on waiting that costs no time.  False: there
 * are no more caps. */
static bool wait_less(struct plan_work *work)
{
	static const int caps_minutes[] = { 0, 2, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180 };
	struct search *search = &work->search;

	if (search->at == (int)(sizeof(caps_minutes) / sizeof(caps_minutes[0])))
		return false;
	if (search->at == 0)
		work->trial = work->best;
	work->trial.wait_cap = caps_minutes[search->at++] * 60;
	build_schedule(work, &work->trial);
	work->placings += items(work); /* it takes as long, whatever it is for */
	if (cost_less(&work->schedule.cost, &work->best_cost)) {
		work->best = work->trial;
		work->best_cost = work->schedule.cost;
	}
	return true;
}

/* --- what was said -------------------------------------------------------------------------- */

/* Fewer jars late, or late by five minutes of one jar less; or an earlier finish by what
 * is worth telling everybody something else; or jars beside a free canner, or a free
 * pot, that need not stand. */
static bool worth_changing(const struct cost *best, const struct cost *said)
{
	if (no_worse(best, said) && (best->standing < said->standing || best->begun > said->begun))
		return true;
	return best->late_jars < said->late_jars || best->late_jar_s + PLAN_HOLD_S < said->late_jar_s ||
	       (best->late_jar_s <= said->late_jar_s && best->finish + PLAN_HOLD_S <= said->finish);
}

/* What was said before stands, unless it is worth changing. */
static void hold_on(struct plan_work *work)
{
	if (!work->search.has_said || worth_changing(&work->best_cost, &work->search.said_cost))
		return;
	work->held = cost_less(&work->best_cost, &work->search.said_cost);
	work->best = work->search.said;
	work->best_cost = work->search.said_cost;
}

/* --- step by step ----------------------------------------------------------------------------- */

void search_begin(struct plan_work *work)
{
	struct search *search = &work->search;
	int effort = work->in->effort_percent == 0 ? 100 : work->in->effort_percent;

	*search = (struct search){ .most = (long)PLACINGS_USUAL(items(work)) * effort / 100 };
	work->held = false;
	work->chance = 2463534242u; /* the example seed of the paper */
	work->placings = 0;
	work->best_cost = (struct cost){ .late_jar_s = INT64_MAX };
	work->now_height = INT64_MAX / 2;
	search->has_said = genes_of_said(work->in, work->in->hold, &search->said);
	if (search->has_said) {
		first_come(work, &search->said);
		build_schedule(work, &search->said);
		search->said_cost = work->schedule.cost;
		begin_now(work, &search->said, &search->said_cost);
	}
	memset(&work->trial, 0, sizeof(work->trial));
	work->trial.wait_cap = PLAN_NO_LIMIT;
}

static void next_stage(struct plan_work *work)
{
	struct search *search = &work->search;

	search->at = 0;
	search->begun = false;
	search->stage++;
	if (search->stage == SEARCH_ORDERS && (work->in->batch_count > ALL_ORDERS_UP_TO || as_good_as_it_gets(work)))
		search->stage++;
	if (search->stage == SEARCH_WALK)
		search->each = (search->most - work->placings) / ROUNDS;
	if (search->stage != SEARCH_OVER)
		return;
	begin_now(work, &work->best, &work->best_cost);
	hold_on(work);
}

bool search_more(struct plan_work *work, long placings)
{
	struct search *search = &work->search;
	long until = work->placings + placings;

	while (search->stage != SEARCH_OVER && work->placings < until) {
		bool more = false;

		switch (search->stage) {
		case SEARCH_RULES: more = try_rule(work, search->at++); break;
		case SEARCH_ORDERS: more = try_order(work); break;
		case SEARCH_WALK: more = walk(work); break;
		case SEARCH_WAITS: more = wait_less(work); break;
		case SEARCH_OVER: break;
		}
		if (!more)
			next_stage(work);
	}
	return search->stage == SEARCH_OVER;
}
