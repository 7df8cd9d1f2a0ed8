/*
 * What no plan can beat.  Each argument forgets most of the rules:
 *
 *   path      one batch on an empty day: pot, then as many rounds of all canners as its
 *             jars ask for
 *   stations  the work of a stage, shared evenly among its stations from when the first
 *             work can reach them, and then the least that follows the last of it
 *   people,   the same, over the hours that people (burners, fillers) are there at all
 *   burners,
 *   fillers
 *
 * The largest of them, and the clean-down after it, is the bound.
 */
#include "engine/schedule/day_plan_private.h"

/* Least figures of one batch. */
struct least {
	int at_pot; /* can reach a pot */
	int filled;
	int out;    /* its jars can be out */
	int cycle;  /* of a load of its family */
	int rounds; /* of all canners together, for its jars alone */
	int after_fill;
};

static bool family_canner(const struct plan_work *work, int family, int station)
{
	return room_for(work->in, station, family) > 0;
}

static int least_cycle(const struct plan_work *work, int family)
{
	int least = PLAN_TIME_MAX_S;

	for (int i = 0; i < work->in->station_count; i++)
		if (family_canner(work, family, i) && work->loads[family][i].whole < least)
			least = work->loads[family][i].whole;
	return least;
}

static int room_of_all(const struct plan_work *work, int family)
{
	int room = 0;

	for (int i = 0; i < work->in->station_count; i++)
		room += room_for(work->in, i, family);
	return room;
}

/* The earliest end of a run on a day with nothing else new. */
static int run_alone(const struct plan_work *work, int run)
{
	const struct plan_input *in = work->in;
	int end = FINISH_NEVER;

	if (in->runs[run].station != PLAN_NONE)
		return work->start.runs[run].end;
	for (int i = 0; i < in->station_count; i++) {
		struct spot spot;

		if (in->stations[i].kind != in->runs[run].at)
			continue;
		spot = shape_fit(
		    work, &work->start, &work->runs[run],
		    &(struct asked_place){ .station = i, .earliest = later(in->start_s, in->runs[run].ready_s) });
		if (spot.end < end)
			end = spot.end;
	}
	return end;
}

static void fill_alone(const struct plan_work *work, int batch, struct least *least)
{
	const struct plan_input *in = work->in;
	const struct plan_batch *of = &in->batches[batch];
	int start = FINISH_NEVER;

	least->at_pot = later(in->start_s, of->ready_s);
	least->filled = work->start.filled[batch];
	if (of->stage != PLAN_TO_DO)
		return;
	for (int run = of->first_run; run < of->first_run + of->run_count; run++)
		least->at_pot = later(least->at_pot, run_alone(work, run));
	for (int i = 0; i < in->station_count; i++) {
		struct spot spot;

		if (in->stations[i].kind != PLAN_POT || (of->pots != 0 && (of->pots & 1u << i) == 0))
			continue;
		spot = shape_fit(work, &work->start, &work->batches[batch],
		                 &(struct asked_place){ .station = i, .earliest = least->at_pot });
		if (spot.start < start)
			start = spot.start;
	}
	least->filled = start + work->batches[batch].rigid - of->rinse.length_s;
}

static struct least alone(const struct plan_work *work, int batch)
{
	const struct plan_input *in = work->in;
	const struct plan_batch *of = &in->batches[batch];
	struct least least = { 0 };
	int room = room_of_all(work, of->family);

	fill_alone(work, batch, &least);
	least.cycle = least_cycle(work, of->family);
	least.rounds = room > 0 ? (of->jars + room - 1) / room : 0;
	least.after_fill = least.rounds * least.cycle;
	least.out = FINISH_NEVER;
	for (int i = 0; i < in->station_count; i++) {
		struct spot spot;

		if (!family_canner(work, of->family, i))
			continue;
		spot = shape_fit(work, &work->start, &work->loads[of->family][i],
		                 &(struct asked_place){ .station = i,
		                                        .earliest = later(in->start_s, least.filled),
		                                        .in_meals = of->stage == PLAN_FILLED });
		if (spot.end < least.out)
			least.out = spot.end;
	}
	least.out += (least.rounds - 1) * least.cycle;
	return least;
}

/* --- work of a stage -------------------------------------------------------------------- */

/* Work to be done at a stage, the earliest it can begin, and what follows it at least. */
struct load_of {
	int64_t work;
	int from;
	int after;
};

/* When `count` machines that are there from `from[]` have done the work at best. */
static int shared_evenly(const int *from, int count, int64_t work)
{
	int64_t low = 0;
	int64_t high = FINISH_NEVER;

	while (low < high) {
		int64_t end = (low + high) / 2;
		int64_t done = 0;

		for (int i = 0; i < count; i++)
			done += end > from[i] ? end - from[i] : 0;
		if (done >= work)
			high = end;
		else
			low = end + 1;
	}
	return (int)low;
}

static int stations_bound(const struct plan_work *work, enum plan_station_kind kind, const struct load_of *load)
{
	int from[PLAN_STATIONS_MAX] = { 0 };
	int count = 0;

	if (load->work == 0)
		return 0;
	for (int i = 0; i < work->in->station_count; i++) {
		const struct lane *lane = &work->start.lanes[i];

		if (work->in->stations[i].kind != kind)
			continue;
		from[count] = lane->count == 0 ? work->in->start_s : lane->end[lane->count - 1];
		from[count] = later(from[count], load->from);
		count++;
	}
	return shared_evenly(from, count, load->work) + load->after;
}

/* The same along a line, which knows when how many are there. */
static int line_bound(const struct line *line, const struct load_of *load)
{
	int64_t left = load->work;
	int step = 0;

	if (left == 0)
		return 0;
	for (; step < line->count; step++) {
		int begins = later(line->at[step], load->from);
		int64_t there = line->capacity - line->used[step];
		int64_t length = step + 1 < line->count ? line->at[step + 1] - begins : FINISH_NEVER;

		if (there <= 0 || length <= 0)
			continue;
		if (there * length >= left)
			return begins + (int)((left + there - 1) / there) + load->after;
		left -= there * length;
	}
	return 0;
}

/* --- canners ------------------------------------------------------------------------------ */

static int most_room(const struct plan_work *work, int family)
{
	int most = 0;

	for (int i = 0; i < work->in->station_count; i++)
		most = later(most, room_for(work->in, i, family));
	return most;
}

static int jars_of_family(const struct plan_work *work, int family)
{
	int jars = 0;

	for (int i = 0; i < work->in->batch_count; i++)
		if (work->in->batches[i].family == family)
			jars += work->in->batches[i].jars;
	return jars;
}

static int loads_of_family(const struct plan_work *work, int family)
{
	int jars = jars_of_family(work, family);
	int room = most_room(work, family);

	return jars == 0 || room == 0 ? 0 : (jars + room - 1) / room;
}

static int64_t least64(int64_t a, int64_t b)
{
	return a < b ? a : b;
}

/* Least canner time of a family: loads as if all went into the largest canner, or jars
 * as if all went into the one that takes least time a jar; each is a bound. */
static int64_t family_canner_time(const struct plan_work *work, int family)
{
	int jars = jars_of_family(work, family);
	int64_t by_loads = (int64_t)loads_of_family(work, family) * least_cycle(work, family);
	int64_t by_jars = INT64_MAX;

	if (jars == 0)
		return 0;
	for (int i = 0; i < work->in->station_count; i++)
		if (family_canner(work, family, i))
			by_jars = least64(by_jars,
			                  (int64_t)jars * work->loads[family][i].whole / room_for(work->in, i, family));
	return by_loads > by_jars ? by_loads : by_jars;
}

/* Loads are whole: one canner gets at least its share of them, rounded up. */
static int whole_loads_bound(const struct plan_work *work, int from)
{
	int first = FINISH_NEVER;
	int canners = 0;
	int loads = 0;
	int cycle = FINISH_NEVER;

	for (int i = 0; i < work->in->station_count; i++) {
		const struct lane *lane = &work->start.lanes[i];
		int there = lane->count == 0 ? 0 : lane->end[lane->count - 1];

		if (work->in->stations[i].kind != PLAN_CANNER)
			continue;
		canners++;
		if (later(there, from) < first)
			first = later(there, from);
	}
	for (int i = 0; i < work->in->family_count; i++) {
		if (loads_of_family(work, i) == 0)
			continue;
		loads += loads_of_family(work, i);
		if (least_cycle(work, i) < cycle)
			cycle = least_cycle(work, i);
	}
	return loads == 0 ? 0 : first + (loads + canners - 1) / canners * cycle;
}

/* --- sums --------------------------------------------------------------------------------- */

static int64_t people_time(const struct shape *shape)
{
	int64_t sum = 0;

	for (int i = 0; i < shape->span_count; i++)
		sum += (int64_t)shape->spans[i].length_s * shape->spans[i].people;
	return sum;
}

/* Least of something over the canners of a family. */
static int64_t least_of_load(const struct plan_work *work, int family, int64_t (*of)(const struct shape *))
{
	int64_t least = INT64_MAX;

	for (int i = 0; i < work->in->station_count; i++)
		if (family_canner(work, family, i))
			least = least64(least, of(&work->loads[family][i]));
	return least;
}

static int64_t heat_time(const struct shape *shape)
{
	return shape->heat.length;
}

static int64_t after_heat(const struct shape *shape)
{
	return shape->whole - shape->heat.length;
}

static bool all_on_burners(const struct plan_input *in, enum plan_station_kind kind)
{
	for (int i = 0; i < in->station_count; i++)
		if (in->stations[i].kind == kind && !in->stations[i].on_burner)
			return false;
	return true;
}

static bool new_run(const struct plan_work *work, int run)
{
	return work->in->runs[run].station == PLAN_NONE && !run_outlasts(&work->in->runs[run]);
}

static bool new_batch(const struct plan_work *work, int batch)
{
	return work->in->batches[batch].stage == PLAN_TO_DO;
}

static int people_bound(const struct plan_work *work)
{
	const struct plan_input *in = work->in;
	struct load_of load = { .from = in->start_s };

	for (int i = 0; i < in->run_count; i++)
		load.work += new_run(work, i) ? people_time(&work->runs[i]) : 0;
	for (int i = 0; i < in->batch_count; i++)
		load.work += new_batch(work, i) ? people_time(&work->batches[i]) : 0;
	for (int i = 0; i < in->family_count; i++)
		if (loads_of_family(work, i) > 0)
			load.work += loads_of_family(work, i) * least_of_load(work, i, people_time);
	return line_bound(&work->start.people, &load);
}

static int burners_bound(const struct plan_work *work)
{
	const struct plan_input *in = work->in;
	struct load_of load = { .from = in->start_s };
	int64_t after = INT64_MAX;

	if (all_on_burners(in, PLAN_JUICER))
		for (int i = 0; i < in->run_count; i++)
			load.work += new_run(work, i) ? work->runs[i].heat.length : 0;
	if (all_on_burners(in, PLAN_POT))
		for (int i = 0; i < in->batch_count; i++)
			load.work += new_batch(work, i) ? work->batches[i].heat.length : 0;
	for (int i = 0; i < in->family_count; i++) {
		if (loads_of_family(work, i) == 0)
			continue;
		after = least64(after, least_of_load(work, i, after_heat));
		if (all_on_burners(in, PLAN_CANNER))
			load.work += loads_of_family(work, i) * least_of_load(work, i, heat_time);
	}
	for (int i = 0; i < in->run_count; i++) /* a run may be the last thing on a burner */
		after = least64(after, work->runs[i].whole - work->runs[i].heat.length);
	load.after = after == INT64_MAX ? 0 : (int)after;
	return line_bound(&work->start.burners, &load);
}

static int fillers_bound(const struct plan_work *work, const struct load_of *pots)
{
	struct load_of load = { .from = pots->from };

	if (work->in->fillers == 0)
		return 0;
	for (int i = 0; i < work->in->batch_count; i++)
		load.work += new_batch(work, i) ? work->batches[i].filler.length : 0;
	return line_bound(&work->start.fillers, &load);
}

/* --- all of them ---------------------------------------------------------------------------- */

struct bounds {
	int at[PLAN_STAGE_COUNT + 1];
	struct load_of juicers;
	struct load_of pots;
	struct load_of canners;
};

static void add_batch(const struct plan_work *work, int batch, struct bounds *bounds)
{
	const struct plan_batch *of = &work->in->batches[batch];
	struct least least = alone(work, batch);
	int after_pot = later(0, least.after_fill - of->rinse.length_s);

	bounds->at[PLAN_STAGE_PATH] = later(bounds->at[PLAN_STAGE_PATH], least.out);
	if (least.filled < bounds->canners.from)
		bounds->canners.from = later(work->in->start_s, least.filled);
	if (!new_batch(work, batch))
		return;
	bounds->pots.work += work->batches[batch].rigid;
	if (least.at_pot < bounds->pots.from)
		bounds->pots.from = least.at_pot;
	if (after_pot < bounds->pots.after)
		bounds->pots.after = after_pot;
}

static void add_run(const struct plan_work *work, int run, struct bounds *bounds)
{
	if (!new_run(work, run))
		return;
	bounds->juicers.work += work->runs[run].whole;
	if (later(work->in->start_s, work->in->runs[run].ready_s) < bounds->juicers.from)
		bounds->juicers.from = later(work->in->start_s, work->in->runs[run].ready_s);
}

/* After the last run there is at least the shortest batch, if every run has a batch. */
static int after_runs(const struct plan_work *work)
{
	const struct plan_input *in = work->in;
	int after = FINISH_NEVER;

	for (int run = 0; run < in->run_count; run++) {
		int mine = 0;

		for (int i = 0; i < in->batch_count; i++) {
			const struct plan_batch *of = &in->batches[i];
			int way = work->batches[i].rigid - of->rinse.length_s + least_cycle(work, of->family);

			if (run >= of->first_run && run < of->first_run + of->run_count && new_batch(work, i))
				mine = later(mine, way);
		}
		if (new_run(work, run) && mine < after)
			after = mine;
	}
	return after == FINISH_NEVER ? 0 : after;
}

int plan_bound(struct plan_work *work, enum plan_stage *says)
{
	const struct plan_input *in = work->in;
	struct bounds bounds = { .juicers.from = FINISH_NEVER,
		                 .pots.from = FINISH_NEVER,
		                 .pots.after = FINISH_NEVER,
		                 .canners.from = FINISH_NEVER };
	int best = PLAN_STAGE_PATH;

	for (int i = 0; i < in->batch_count; i++)
		add_batch(work, i, &bounds);
	for (int i = 0; i < in->run_count; i++)
		add_run(work, i, &bounds);
	for (int i = 0; i < in->family_count; i++)
		bounds.canners.work += family_canner_time(work, i);
	bounds.juicers.after = after_runs(work);
	bounds.at[PLAN_STAGE_JUICERS] = stations_bound(work, PLAN_JUICER, &bounds.juicers);
	bounds.at[PLAN_STAGE_POTS] = stations_bound(work, PLAN_POT, &bounds.pots);
	bounds.at[PLAN_STAGE_CANNERS] =
	    later(stations_bound(work, PLAN_CANNER, &bounds.canners), whole_loads_bound(work, bounds.canners.from));
	bounds.at[PLAN_STAGE_BURNERS] = burners_bound(work);
	bounds.at[PLAN_STAGE_FILLERS] = fillers_bound(work, &bounds.pots);
	bounds.at[PLAN_STAGE_PEOPLE] = people_bound(work);
	for (int i = 0; i < PLAN_STAGE_COUNT; i++)
		if (bounds.at[i] > bounds.at[best])
			best = i;
	*says = (enum plan_stage)best;
	return clean_down_start(in, later(in->start_s, bounds.at[best])) + in->clean_down.length_s;
}
