/*
 * From an order of the batches and a few choices to a whole schedule: batch after
 * batch, or a few that are linked.  Where jars would wait too long for a canner, the pot
 * is put off by as much and the group placed again.
 */
#include <string.h>

#include "engine/schedule/day_plan_private.h"

#define TRIES_SOFT 6   /* to keep the cap on waiting, which is only a wish */
#define TRIES_GROUP 12 /* of linked batches, before they are placed one by one */
#define TRIES_ALONE 30 /* of one batch, before it goes to the quiet end of the day */

bool cost_less(const struct cost *a, const struct cost *b)
{
	if (a->late_jar_s != b->late_jar_s)
		return a->late_jar_s < b->late_jar_s;
	if (a->finish != b->finish)
		return a->finish < b->finish;
	if (a->standing != b->standing)
		return a->standing < b->standing;
	if (a->begun != b->begun)
		return a->begun > b->begun;
	return a->waiting_jar_s < b->waiting_jar_s;
}

static void add_item(struct group *group, int item)
{
	group->items[group->item_count++] = item;
	group->count += item < PLAN_BATCHES_MAX;
}

static struct delay place_member(struct plan_work *work, const struct genes *genes, struct group *group, int batch,
                                 int cap)
{
	int member = group->placed++;
	int link = genes->link[batch];

	place_pot(work, genes, batch, group->not_before[member]);
	group->batches[member] = batch;
	group->left[member] = work->in->batches[batch].jars;
	if (link == LINK_DEFER || link == LINK_AFTER_RUNS)
		return (struct delay){ .member = PLAN_NONE };
	return load_jars(work, genes, group, link == LINK_JOIN, cap);
}

static struct delay try_group(struct plan_work *work, const struct genes *genes, struct group *group, int cap)
{
	struct delay delay = { .member = PLAN_NONE };

	group->placed = 0;
	group->first_load = work->schedule.load_count;
	for (int i = 0; i < group->item_count && delay.member == PLAN_NONE; i++) {
		if (group->items[i] >= PLAN_BATCHES_MAX)
			place_run(work, genes, group->items[i] - PLAN_BATCHES_MAX);
		else
			delay = place_member(work, genes, group, group->items[i], cap);
	}
	return delay.member == PLAN_NONE ? load_jars(work, genes, group, false, cap) : delay;
}

static void give_back_group(struct plan_work *work, const struct group *group)
{
	struct schedule *schedule = &work->schedule;

	while (schedule->load_count > group->first_load) {
		int load = --schedule->load_count;
		const struct spot *spot = &schedule->loads[load];

		shape_give_back(work, &work->loads[schedule->contents[load].family][spot->station], spot);
	}
	for (int i = 0; i < group->placed; i++) {
		int batch = group->batches[i];

		if (work->in->batches[batch].stage == PLAN_TO_DO)
			shape_give_back(work, &work->batches[batch], &schedule->pots[batch]);
	}
}

/* Place the group, putting pots off as often as `tries` allows; false: given back. */
static bool place_group(struct plan_work *work, const struct genes *genes, struct group *group, int cap, int tries)
{
	for (; tries > 0; tries--) {
		struct delay delay = try_group(work, genes, group, cap);

		if (delay.member == PLAN_NONE)
			return true;
		group->not_before[delay.member] = work->schedule.pots[group->batches[delay.member]].start + delay.by;
		give_back_group(work, group);
	}
	return false;
}

static void forget_delays(struct group *group)
{
	memset(group->not_before, 0, sizeof(group->not_before));
}

/* When everything placed so far is over. */
static int all_over(const struct plan_work *work)
{
	int over = work->quiet_s;

	for (int i = 0; i < work->in->station_count; i++) {
		const struct lane *lane = &work->schedule.lanes[i];

		if (lane->count > 0)
			over = later(over, lane->end[lane->count - 1]);
	}
	return over;
}

/* One batch, whatever it takes: at the end of the day its limit can be kept, or the day
 * would have been refused. */
static void place_alone(struct plan_work *work, const struct genes *genes, int batch)
{
	struct group group = { 0 };

	add_item(&group, batch);
	if (place_group(work, genes, &group, PLAN_NO_LIMIT, TRIES_ALONE))
		return;
	(void)batch_ready(work, &work->safe, batch);
	group.not_before[0] = all_over(work);
	if (try_group(work, &work->safe, &group, PLAN_NO_LIMIT).member != PLAN_NONE)
		work->schedule.broken = true;
}

static void place_linked(struct plan_work *work, const struct genes *genes, struct group *group)
{
	if (genes->wait_cap != PLAN_NO_LIMIT) {
		if (place_group(work, genes, group, genes->wait_cap, TRIES_SOFT))
			return;
		forget_delays(group);
	}
	if (place_group(work, genes, group, PLAN_NO_LIMIT, TRIES_GROUP))
		return;
	for (int i = 0; i < group->item_count; i++) {
		if (group->items[i] < PLAN_BATCHES_MAX)
			place_alone(work, genes, group->items[i]);
		else
			place_run(work, genes, group->items[i] - PLAN_BATCHES_MAX);
	}
}

/* --- the whole ------------------------------------------------------------------------------ */

/* So many people are there from then on. */
static int people_from(const struct plan_input *in, int people)
{
	int from = PLAN_TIME_MAX_S;

	for (int i = 0; i < in->people_count; i++) {
		int there = 0;

		for (int j = 0; j < in->people_count; j++)
			there += in->people[j].from_s <= in->people[i].from_s;
		if (there >= people && in->people[i].from_s < from)
			from = in->people[i].from_s;
	}
	return from;
}

int clean_down_start(const struct plan_input *in, int last_end)
{
	const struct plan_span *clean = &in->clean_down;

	if (clean->length_s == 0)
		return last_end;
	last_end = later(last_end, people_from(in, clean->people == 0 ? 1 : clean->people));
	return after_meals(in, last_end, clean->length_s);
}

static void count_waiting(const struct plan_work *work, const struct schedule *schedule, struct cost *cost)
{
	for (int i = 0; i < schedule->load_count; i++) {
		const struct plan_load *load = &schedule->contents[i];
		bool now = schedule->loads[i].start == work->in->start_s;
		bool stood = false;

		for (int j = 0; j < load->part_count; j++) {
			const struct plan_part *part = &load->parts[j];
			const struct plan_batch *of = &work->in->batches[part->batch];
			int64_t wait = schedule->loads[i].start - schedule->filled[part->batch];

			cost->waiting_jar_s += wait * part->jars;
			cost->standing += of->stage == PLAN_FILLED && !now ? part->jars : 0;
			stood = stood || of->stage == PLAN_FILLED;
			if (of->wait_limit_s == PLAN_NO_LIMIT || wait <= of->wait_limit_s)
				continue;
			cost->late_jar_s += (wait - of->wait_limit_s) * part->jars;
			cost->late_jars += part->jars;
		}
		cost->loads += now && stood;
	}
}

/* Pots that stand free beside what they need, and are told to begin. */
static int pots_begun(const struct plan_work *work)
{
	const struct plan_input *in = work->in;
	int begun = 0;

	for (int i = 0; i < in->batch_count; i++)
		begun += in->batches[i].stage == PLAN_TO_DO && work->schedule.pots[i].start == in->start_s;
	return begun;
}

/* So long the day waits for it. */
static int run_is_over(const struct plan_work *work, int run)
{
	const struct spot *spot = &work->schedule.runs[run];

	return run_outlasts(&work->in->runs[run]) ? spot->start + work->runs[run].offsets[1] : spot->end;
}

static void count_cost(struct plan_work *work)
{
	const struct plan_input *in = work->in;
	struct schedule *schedule = &work->schedule;

	schedule->last_end = in->start_s;
	for (int i = 0; i < in->run_count; i++)
		schedule->last_end = later(schedule->last_end, run_is_over(work, i));
	for (int i = 0; i < in->batch_count; i++)
		if (in->batches[i].stage != PLAN_FILLED)
			schedule->last_end = later(schedule->last_end, schedule->pots[i].end);
	for (int i = 0; i < schedule->load_count; i++)
		schedule->last_end = later(schedule->last_end, schedule->loads[i].end);
	schedule->cost = (struct cost){ 0 };
	schedule->cost.finish = clean_down_start(in, schedule->last_end) + in->clean_down.length_s;
	if (schedule->broken)
		schedule->cost.finish = FINISH_NEVER;
	schedule->cost.begun = pots_begun(work);
	count_waiting(work, schedule, &schedule->cost);
	schedule->mean_load_end = 0;
	for (int i = in->running_load_count; i < schedule->load_count; i++)
		schedule->mean_load_end += schedule->loads[i].end;
	if (schedule->load_count > in->running_load_count)
		schedule->mean_load_end /= schedule->load_count - in->running_load_count;
}

/* Does the group end before this item of the order? */
static bool group_ends(const struct group *group, int item)
{
	if (group->link == LINK_NONE || group->item_count == GROUP_ITEMS_MAX)
		return true;
	return item < PLAN_BATCHES_MAX && (group->link == LINK_AFTER_RUNS || group->count == GROUP_MAX);
}

/* The next of the order: into the group, or at once. */
static void place_next(struct plan_work *work, const struct genes *genes, struct group *group, int item)
{
	if (group->item_count > 0 && group_ends(group, item)) {
		place_linked(work, genes, group);
		*group = (struct group){ 0 };
	}
	if (group->item_count == 0 && item >= PLAN_BATCHES_MAX)
		place_run(work, genes, item - PLAN_BATCHES_MAX);
	else
		add_item(group, item);
	if (item < PLAN_BATCHES_MAX)
		group->link = genes->link[item];
}

static bool stands_filled(const struct plan_input *in, int item)
{
	return item < PLAN_BATCHES_MAX && in->batches[item].stage == PLAN_FILLED;
}

/* Jars that stand filled come first, whatever the order says of the rest. */
void build_schedule(struct plan_work *work, const struct genes *genes)
{
	const struct plan_input *in = work->in;
	struct group group = { 0 };

	copy_schedule(in, &work->schedule, &work->start);
	for (int filled = 1; filled >= 0; filled--)
		for (int i = 0; i < in->batch_count + in->run_count; i++)
			if (stands_filled(in, genes->order[i]) == (filled == 1))
				place_next(work, genes, &group, genes->order[i]);
	if (group.item_count > 0)
		place_linked(work, genes, &group);
	count_cost(work);
}

bool build_alone(struct plan_work *work, int batch, int pick, int *longest_wait)
{
	struct group group = { 0 };
	struct delay delay;

	copy_schedule(work->in, &work->schedule, &work->start);
	work->safe.pick[batch] = (unsigned char)pick;
	for (int run = 0; run < work->in->run_count; run++)
		place_run(work, &work->safe, run);
	add_item(&group, batch);
	group.not_before[0] = all_over(work);
	delay = try_group(work, &work->safe, &group, PLAN_NO_LIMIT);
	*longest_wait = delay.by + work->in->batches[batch].wait_limit_s;
	return delay.member == PLAN_NONE;
}
