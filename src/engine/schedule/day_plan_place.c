/*
 * Each piece of work takes the earliest place that is still there, gaps between earlier
 * work included: runs, pots, and loads made of the jars that a group has left.
 */
#include "engine/schedule/day_plan_private.h"

/* --- pots and runs ---------------------------------------------------------------------- */

void place_run(struct plan_work *work, const struct genes *genes, int run)
{
	const struct plan_input *in = work->in;
	struct spot best = { .station = PLAN_NONE };

	if (work->schedule.runs[run].station != PLAN_NONE)
		return;
	for (int i = 0; i < in->station_count; i++) {
		struct spot spot;

		if (in->stations[i].kind != in->runs[run].at)
			continue;
		spot = shape_fit(work, &work->schedule, &work->runs[run],
		                 &(struct asked_place){ .station = i,
		                                        .earliest = later(in->start_s, in->runs[run].ready_s),
		                                        .late = 60 * genes->late[ITEM_OF_RUN(run)] });
		if (best.station == PLAN_NONE || spot.end < best.end)
			best = spot;
	}
	work->schedule.runs[run] = best;
	shape_take(work, &work->runs[run], &best);
}

/* Juice and fruit are there. */
int batch_ready(struct plan_work *work, const struct genes *genes, int batch)
{
	const struct plan_batch *of = &work->in->batches[batch];
	int ready = later(work->in->start_s, of->ready_s);

	for (int run = of->first_run; run < of->first_run + of->run_count; run++) {
		place_run(work, genes, run);
		ready = later(ready, work->schedule.runs[run].end);
	}
	return ready;
}

void place_pot(struct plan_work *work, const struct genes *genes, int batch, int not_before)
{
	const struct plan_input *in = work->in;
	const struct plan_batch *of = &in->batches[batch];
	struct spot best = { .station = PLAN_NONE };
	int earliest;

	work->placings++;
	if (of->stage != PLAN_TO_DO)
		return;
	earliest = later(batch_ready(work, genes, batch), not_before);
	for (int i = 0; i < in->station_count; i++) {
		struct spot spot;

		if (in->stations[i].kind != PLAN_POT || (of->pots != 0 && (of->pots & 1u << i) == 0))
			continue;
		spot = shape_fit(work, &work->schedule, &work->batches[batch],
		                 &(struct asked_place){ .station = i, .earliest = earliest });
		if (best.station == PLAN_NONE || spot.start < best.start)
			best = spot;
	}
	work->schedule.pots[batch] = best;
	shape_take(work, &work->batches[batch], &best);
	note_filled(work, batch);
}

/* --- loads ------------------------------------------------------------------------------ */

/* A load that could be made of what the group has left. */
struct offer {
	struct spot spot;
	int jars;
};

static int family_of(const struct plan_work *work, const struct group *group, int member)
{
	return work->in->batches[group->batches[member]].family;
}

static int jars_left(const struct plan_work *work, const struct group *group, int head)
{
	int family = family_of(work, group, head);
	int jars = 0;

	for (int i = head; i < group->placed; i++)
		if (family_of(work, group, i) == family)
			jars += group->left[i];
	return jars;
}

/* When the first `jars` of those left, from `head` on, are filled. */
static int jars_ready(const struct plan_work *work, const struct group *group, int head, int jars)
{
	int family = family_of(work, group, head);
	int ready = work->in->start_s;

	for (int i = head; i < group->placed && jars > 0; i++) {
		if (family_of(work, group, i) != family || group->left[i] == 0)
			continue;
		ready = later(ready, work->schedule.filled[group->batches[i]]);
		jars -= group->left[i];
	}
	return ready;
}

static bool offer_better(const struct offer *a, const struct offer *b, int pick)
{
	if (pick == PICK_MOST_JARS && a->jars != b->jars)
		return a->jars > b->jars;
	if (pick == PICK_FIRST_IN && a->spot.start != b->spot.start)
		return a->spot.start < b->spot.start;
	if (a->spot.end != b->spot.end)
		return a->spot.end < b->spot.end;
	return a->jars > b->jars;
}

int room_for(const struct plan_input *in, int station, int family)
{
	if (in->stations[station].kind != PLAN_CANNER || !in->families[family].at[station].possible)
		return 0;
	return in->stations[station].jars[in->families[family].jar];
}

/* The best next load that begins with the jars of `head`; only a full one if asked so. */
static bool find_load(const struct plan_work *work, const struct group *group, int head, bool full, int pick, int late,
                      struct offer *best)
{
	const struct plan_input *in = work->in;
	int family = family_of(work, group, head);
	int left = jars_left(work, group, head);
	bool found = false;
	int only = pick >= PICK_CANNER ? pick - PICK_CANNER : PLAN_NONE;
	enum plan_stage_of_batch stage = in->batches[group->batches[head]].stage;

	if (only >= in->station_count || (only != PLAN_NONE && room_for(in, only, family) == 0))
		only = PLAN_NONE;
	for (int i = 0; i < in->station_count; i++) {
		int room = room_for(in, i, family);
		struct offer offer;

		if (room == 0 || (full && left < room) || (only != PLAN_NONE && i != only))
			continue;
		offer.jars = left < room ? left : room;
		offer.spot = shape_fit(work, &work->schedule, &work->loads[family][i],
		                       &(struct asked_place){ .station = i,
		                                              .earliest = jars_ready(work, group, head, offer.jars),
		                                              .late = late,
		                                              .in_meals = stage == PLAN_FILLED });
		if (!found || offer_better(&offer, best, pick))
			*best = offer;
		found = true;
	}
	return found;
}

/* By how much the jars of a batch wait too long for a load; 0: they do not. */
static int waits_over(const struct plan_work *work, int batch, int start, int cap)
{
	const struct plan_batch *of = &work->in->batches[batch];
	int limit = of->wait_limit_s;
	int over;

	if (cap != PLAN_NO_LIMIT && (limit == PLAN_NO_LIMIT || cap < limit))
		limit = cap;
	if (of->stage != PLAN_TO_DO || limit == PLAN_NO_LIMIT)
		return 0;
	over = start - work->schedule.filled[batch] - limit;
	return over > 0 ? over : 0;
}

/* The member whose jars must go first into a load that starts then: of this family,
 * filled by then, those that stand filled now, then the one whose wait limit ends first. */
static int most_pressing(const struct plan_work *work, const struct group *group, int family, int start)
{
	int best = PLAN_NONE;
	int64_t best_end = 0;

	for (int i = 0; i < group->placed; i++) {
		const struct plan_batch *of = &work->in->batches[group->batches[i]];
		int filled = work->schedule.filled[group->batches[i]];
		int64_t end = of->wait_limit_s == PLAN_NO_LIMIT ? FINISH_NEVER : filled + of->wait_limit_s;

		if (of->family != family || group->left[i] == 0 || filled > start)
			continue;
		if (of->stage == PLAN_FILLED)
			end -= 4 * (int64_t)FINISH_NEVER;
		if (best == PLAN_NONE || end < best_end) {
			best = i;
			best_end = end;
		}
	}
	return best;
}

/* Fill the load from the group's jars; says which batch waits too long, if one does. */
static struct delay take_load(struct plan_work *work, struct group *group, int family, const struct offer *offer,
                              int cap)
{
	struct schedule *schedule = &work->schedule;
	struct plan_load *load = &schedule->contents[schedule->load_count];
	struct delay delay = { .member = PLAN_NONE, .by = 0 };
	int room = offer->jars;

	load->family = family;
	load->running = PLAN_NONE;
	load->jars = offer->jars;
	load->part_count = 0;
	while (room > 0) {
		int member = most_pressing(work, group, family, offer->spot.start);
		int batch = group->batches[member];
		int jars = group->left[member] < room ? group->left[member] : room;
		int over = waits_over(work, batch, offer->spot.start, cap);

		load->parts[load->part_count++] = (struct plan_part){ .batch = batch, .jars = jars };
		group->left[member] -= jars;
		room -= jars;
		if (over > delay.by)
			delay = (struct delay){ .member = member, .by = over };
	}
	schedule->loads[schedule->load_count++] = offer->spot;
	shape_take(work, &work->loads[family][offer->spot.station], &offer->spot);
	return delay;
}

/* Does an earlier member still hold jars of this one's family? Those go first. */
static bool behind_another(const struct plan_work *work, const struct group *group, int member)
{
	for (int i = 0; i < member; i++)
		if (group->left[i] > 0 && family_of(work, group, i) == family_of(work, group, member))
			return true;
	return false;
}

/* Make loads of what is filled: all of it, or only full loads. */
struct delay load_jars(struct plan_work *work, const struct genes *genes, struct group *group, bool full, int cap)
{
	struct delay delay = { .member = PLAN_NONE };
	int last = group->batches[group->placed - 1];
	int pick = genes->pick[last];
	int late = 60 * genes->late[last];

	for (int head = 0; head < group->placed; head++) {
		struct offer offer;

		while (group->left[head] > 0 && !behind_another(work, group, head) &&
		       find_load(work, group, head, full, pick, late, &offer)) {
			if (pick >= PICK_CANNER)
				pick = PICK_FIRST_OUT;
			if (work->schedule.load_count == PLAN_LOADS_MAX) {
				work->schedule.broken = true;
				return delay;
			}
			delay = take_load(work, group, family_of(work, group, head), &offer, cap);
			if (delay.member != PLAN_NONE)
				return delay;
		}
	}
	return delay;
}
