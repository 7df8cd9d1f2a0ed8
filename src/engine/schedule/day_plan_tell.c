/* From a schedule to what people read: tasks with names to them, loads, shares, queue. */
#include <string.h>

#include "engine/schedule/day_plan_private.h"

/* --- tasks ---------------------------------------------------------------------------------- */

static void add_task(struct day_plan *plan, const struct plan_task *task)
{
	if (task->end_s > task->start_s)
		plan->tasks[plan->task_count++] = *task;
}

/* The spans of one piece of work; `task` says whose, `kinds` what each is called. */
static void add_work(struct day_plan *plan, const struct shape *shape, const struct spot *spot,
                     const struct plan_task *whose, const enum plan_task_kind *kinds)
{
	for (int i = 0; i < shape->span_count; i++) {
		bool last = shape->last_waits && i == shape->span_count - 1;
		struct plan_task task = *whose;

		task.kind = kinds[i]; /* NOLINT(clang-analyzer-core.uninitialized.Assign): one for each span */
		task.station = spot->station;
		task.start_s = last ? spot->last_start : spot->start + shape->offsets[i];
		task.end_s = task.start_s + shape->spans[i].length_s;
		task.people = (unsigned)shape->spans[i].people; /* how many, until they are named */
		add_task(plan, &task);
	}
}

static const struct plan_task nobody = {
	.station = PLAN_NONE, .run = PLAN_NONE, .batch = PLAN_NONE, .load = PLAN_NONE
};

static void add_runs(const struct plan_work *work, struct day_plan *plan)
{
	static const enum plan_task_kind kinds[] = { PLAN_SET_UP, PLAN_RUN, PLAN_DRAIN };

	for (int i = 0; i < work->in->run_count; i++) {
		struct plan_task task = nobody;

		task.run = i;
		task.running = work->in->runs[i].station != PLAN_NONE;
		add_work(plan, &work->runs[i], &work->schedule.runs[i], &task, kinds);
	}
}

static void add_batches(const struct plan_work *work, struct day_plan *plan)
{
	static const enum plan_task_kind kinds[] = { PLAN_TO_BOIL, PLAN_BOIL, PLAN_OFF, PLAN_FILL, PLAN_RINSE };

	for (int i = 0; i < work->in->batch_count; i++) {
		struct plan_task task = nobody;

		if (work->in->batches[i].stage == PLAN_FILLED)
			continue;
		task.batch = i;
		task.running = work->in->batches[i].stage == PLAN_IN_POT;
		add_work(plan, &work->batches[i], &work->schedule.pots[i], &task, kinds);
	}
}

/* Loads in order of their start: the plan's index of each. */
static void add_loads(const struct plan_work *work, struct day_plan *plan)
{
	static const enum plan_task_kind kinds[] = { PLAN_LOAD, PLAN_COME_UP, PLAN_HOLD, PLAN_REST, PLAN_UNLOAD };
	const struct schedule *schedule = &work->schedule;
	bool told[PLAN_LOADS_MAX] = { false };

	for (plan->load_count = 0; plan->load_count < schedule->load_count; plan->load_count++) {
		struct plan_load *load = &plan->loads[plan->load_count];
		struct plan_task task = nobody;
		const struct shape *shape;
		int next = PLAN_NONE;

		for (int i = 0; i < schedule->load_count; i++)
			if (!told[i] && (next == PLAN_NONE || schedule->loads[i].start < schedule->loads[next].start ||
			                 (schedule->loads[i].start == schedule->loads[next].start &&
			                  schedule->loads[i].station < schedule->loads[next].station)))
				next = i;
		if (next == PLAN_NONE) /* cannot be: each round tells one of them */
			break;
		told[next] = true;
		load->family = schedule->contents[next].family;
		load->running = schedule->contents[next].running;
		load->jars = schedule->contents[next].jars;
		load->part_count = schedule->contents[next].part_count;
		for (int i = 0; i < load->part_count; i++)
			load->parts[i] = schedule->contents[next].parts[i];
		load->station = schedule->loads[next].station;
		load->start_s = schedule->loads[next].start;
		load->end_s = schedule->loads[next].end;
		task.load = plan->load_count;
		task.running = load->running != PLAN_NONE;
		shape = task.running ? &work->running[load->running] : &work->loads[load->family][load->station];
		add_work(plan, shape, &schedule->loads[next], &task, kinds);
	}
}

static void add_meal(const struct plan_input *in, struct day_plan *plan, const struct plan_task *task)
{
	if (task->end_s > in->start_s && task->start_s < plan->finish_s)
		add_task(plan, task);
}

static void add_breaks_and_clean_down(const struct plan_work *work, struct day_plan *plan)
{
	const struct plan_input *in = work->in;
	struct plan_task task = nobody;

	task.kind = PLAN_BREAK;
	for (int i = 0; i < in->break_count; i++) {
		int there = plan_people_there(in, in->breaks[i].start_s);

		task.start_s = in->breaks[i].start_s;
		task.end_s = in->breaks[i].end_s;
		task.people = plan_eats_in_turns(in, i) ? (unsigned)(there / 2) : 0; /* 0: all */
		add_meal(in, plan, &task);
		task.start_s = task.end_s;
		task.end_s = plan_meal_end(in, i);
		task.people = (unsigned)(there - there / 2);
		add_meal(in, plan, &task);
	}
	task.kind = PLAN_CLEAN_DOWN;
	task.start_s = clean_down_start(in, plan->last_out_s);
	task.end_s = task.start_s + in->clean_down.length_s;
	task.people = (unsigned)in->clean_down.people;
	add_task(plan, &task);
}

static bool task_before(const struct plan_task *a, const struct plan_task *b)
{
	if (a->start_s != b->start_s)
		return a->start_s < b->start_s;
	if (a->station != b->station)
		return a->station < b->station;
	if (a->kind != b->kind)
		return a->kind < b->kind;
	return a->end_s < b->end_s;
}

/* Shell 1959, Communications of the ACM 2(7), 30-32: in place, nothing allocated. */
static void sort_tasks(struct day_plan *plan)
{
	for (int gap = plan->task_count / 2; gap > 0; gap /= 2) {
		for (int i = gap; i < plan->task_count; i++) {
			struct plan_task task = plan->tasks[i];
			int place = i;

			for (; place >= gap && task_before(&task, &plan->tasks[place - gap]); place -= gap)
				plan->tasks[place] = plan->tasks[place - gap];
			plan->tasks[place] = task;
		}
	}
}

/* --- who does it -------------------------------------------------------------------------------- */

struct hands {
	int count;
	int from[PLAN_PEOPLE_MAX];  /* there, or done with the last task */
	int where[PLAN_PEOPLE_MAX]; /* station of the last task */
};

/* Who is there: best someone who is at the station already, else whoever has been idle
 * longest; PLAN_NONE when all are busy. */
static int choose(const struct hands *hands, const struct plan_task *task, unsigned taken)
{
	int best = PLAN_NONE;

	for (int i = 0; i < hands->count; i++) {
		if (hands->from[i] > task->start_s || (taken & 1u << i) != 0)
			continue;
		if (task->station != PLAN_NONE && hands->where[i] == task->station && hands->from[i] == task->start_s)
			return i;
		if (best == PLAN_NONE || hands->from[i] < hands->from[best])
			best = i;
	}
	return best;
}

/* `not_these`: who may not do it. */
static void name_people(struct hands *hands, struct plan_task *task, unsigned not_these)
{
	unsigned wanted = task->people;

	task->people = 0;
	for (; wanted > 0; wanted--) {
		int person = choose(hands, task, task->people | not_these);

		if (person == PLAN_NONE) /* more work is going on than there are hands */
			break;
		task->people |= 1u << person;
	}
	for (int i = 0; i < hands->count; i++) {
		if ((task->people & 1u << i) == 0)
			continue;
		hands->from[i] = task->end_s;
		hands->where[i] = task->station;
	}
}

static unsigned all_there(const struct plan_input *in, int at)
{
	unsigned all = 0;

	for (int i = 0; i < in->people_count; i++)
		all |= in->people[i].from_s <= at ? 1u << i : 0;
	return all;
}

/* The meal of which the task is the last sitting; PLAN_NONE: it is a first or only one. */
static int last_sitting_of(const struct plan_input *in, const struct plan_task *task)
{
	for (int i = 0; i < in->break_count; i++)
		if (in->breaks[i].end_s == task->start_s && plan_eats_in_turns(in, i))
			return i;
	return PLAN_NONE;
}

/* Who eats: everybody, or a half and then those who did not eat with it.  When the plan
 * begins within a sitting, whoever is free has sat down. */
static void name_eaters(const struct plan_input *in, struct hands *hands, struct plan_task *task, unsigned *ate)
{
	int last_of = last_sitting_of(in, task);
	unsigned there = all_there(in, last_of == PLAN_NONE ? task->start_s : in->breaks[last_of].start_s);
	struct plan_task from_now = *task;

	if (task->people == 0) {
		task->people = there;
		return;
	}
	from_now.start_s = later(task->start_s, in->start_s);
	name_people(hands, &from_now, ~there | (last_of == PLAN_NONE ? 0 : *ate));
	task->people = from_now.people;
	*ate = from_now.people;
}

static void name_everybody(const struct plan_input *in, struct day_plan *plan)
{
	struct hands hands = { .count = in->people_count };
	unsigned ate = 0;

	for (int i = 0; i < in->people_count; i++) {
		hands.from[i] = in->people[i].from_s;
		hands.where[i] = PLAN_NONE;
	}
	for (int pass = 0; pass < 2; pass++) { /* at start_s, what goes on has its people first */
		for (int i = 0; i < plan->task_count; i++) {
			struct plan_task *task = &plan->tasks[i];
			bool first = task->running && task->start_s == in->start_s;

			if (first != (pass == 0))
				continue;
			if (task->kind == PLAN_BREAK)
				name_eaters(in, &hands, task, &ate);
			else if (task->kind == PLAN_CLEAN_DOWN && in->clean_down.people == 0)
				task->people = all_there(in, task->start_s);
			else
				name_people(&hands, task, 0);
		}
	}
}

/* --- looks at the water ----------------------------------------------------------------------------- */

/* Who works, or eats in turns, at some time of the minute. */
static unsigned busy_in(const struct plan_input *in, const struct day_plan *plan, int from)
{
	unsigned busy = ~all_there(in, from);

	for (int i = 0; i < plan->task_count; i++) {
		const struct plan_task *task = &plan->tasks[i];
		bool together = task->kind == PLAN_BREAK && task->people == all_there(in, task->start_s);

		if (!together && task->start_s < from + PLAN_LOOK_S && task->end_s > from)
			busy |= task->people;
	}
	return busy;
}

/* As late as somebody has a minute; nobody: when it is due, in passing. */
static void add_look(const struct plan_input *in, struct day_plan *plan, struct plan_task *look, int due)
{
	look->people = 0;
	look->start_s = due - PLAN_LOOK_S;
	for (int early = PLAN_LOOK_S; early <= PLAN_LOOK_EARLY_S; early += PLAN_LOOK_S) {
		int from = due - early;
		unsigned free_ones = from < in->start_s ? 0 : ~busy_in(in, plan, from) & all_there(in, from);

		if (free_ones == 0)
			continue;
		look->start_s = from;
		look->people = free_ones & (~free_ones + 1); /* the first of them */
		break;
	}
	look->start_s = later(look->start_s, in->start_s);
	look->end_s = look->start_s + PLAN_LOOK_S;
	add_task(plan, look);
}

static void add_looks(const struct plan_work *work, struct day_plan *plan)
{
	int before = plan->task_count;

	for (int i = 0; i < work->in->run_count; i++) {
		const struct plan_run *run = &work->in->runs[i];
		const struct spot *spot = &work->schedule.runs[i];
		struct plan_task look = nobody;
		int from = spot->start + work->runs[i].offsets[1];
		int end = from + run->run.length_s;
		int every = work->in->stations[spot->station].look_every_s;
		int first = run->station == PLAN_NONE ? every : run->look_first_s;

		if (run_outlasts(run) && end > plan->finish_s)
			end = plan->finish_s; /* nobody is called for it then; its clock still rings */
		look.kind = PLAN_LOOK;
		look.run = i;
		look.running = run->station != PLAN_NONE;
		look.station = spot->station;
		for (int due = from + first; every > 0 && due < end; due += every)
			if (plan->task_count - before < PLAN_LOOKS_MAX)
				add_look(work->in, plan, &look, due);
	}
}

/* --- shares --------------------------------------------------------------------------------------- */

/* PLAN_STAGE_COUNT: of none, the day is not held up by it. */
static enum plan_stage stage_of(enum plan_station_kind kind)
{
	static const enum plan_stage stages[] = { [PLAN_JUICER] = PLAN_STAGE_JUICERS,
		                                  [PLAN_POT] = PLAN_STAGE_POTS,
		                                  [PLAN_CANNER] = PLAN_STAGE_CANNERS,
		                                  [PLAN_DRYER] = PLAN_STAGE_COUNT };

	return stages[kind];
}

static int bits(unsigned set)
{
	int count = 0;

	for (; set != 0; set &= set - 1)
		count++;
	return count;
}

static bool on_heat(enum plan_task_kind kind)
{
	return kind == PLAN_SET_UP || kind == PLAN_RUN || kind == PLAN_TO_BOIL || kind == PLAN_BOIL ||
	       kind == PLAN_LOAD || kind == PLAN_COME_UP || kind == PLAN_HOLD;
}

static void count_task(const struct plan_input *in, const struct plan_task *task, struct day_plan *plan)
{
	int64_t length = task->end_s - task->start_s;

	if (task->kind == PLAN_BREAK)
		return;
	plan->stages[PLAN_STAGE_PEOPLE].busy_s += length * bits(task->people);
	if (task->kind == PLAN_FILL && in->fillers > 0)
		plan->stages[PLAN_STAGE_FILLERS].busy_s += length;
	if (task->station != PLAN_NONE && in->stations[task->station].on_burner && on_heat(task->kind))
		plan->stages[PLAN_STAGE_BURNERS].busy_s += length;
}

static int within_day(const struct day_plan *plan, int start, int end)
{
	end = end < plan->finish_s ? end : plan->finish_s;
	return end > start ? end - start : 0;
}

static void count_lanes(const struct plan_work *work, struct day_plan *plan)
{
	for (int i = 0; i < work->in->station_count; i++) {
		const struct lane *lane = &work->schedule.lanes[i];
		enum plan_stage stage = stage_of(work->in->stations[i].kind);

		for (int j = 0; j < lane->count; j++)
			if (lane->start[j] >= work->in->start_s) /* else: not free yet */
				plan->stations[i].busy_s += within_day(plan, lane->start[j], lane->end[j]);
		if (stage != PLAN_STAGE_COUNT)
			plan->stages[stage].busy_s += plan->stations[i].busy_s;
	}
}

static int permille(int64_t part, int64_t whole)
{
	return whole <= 0 ? 0 : (int)((part * 1000 + whole / 2) / whole);
}

static void count_shares(const struct plan_work *work, struct day_plan *plan)
{
	const struct plan_input *in = work->in;
	int64_t day = plan->finish_s - in->start_s;
	int there[PLAN_STAGE_COUNT] = { [PLAN_STAGE_BURNERS] = in->burners,
		                        [PLAN_STAGE_FILLERS] = in->fillers,
		                        [PLAN_STAGE_PEOPLE] = in->people_count };

	count_lanes(work, plan);
	for (int i = 0; i < plan->task_count; i++)
		count_task(in, &plan->tasks[i], plan);
	for (int i = 0; i < in->station_count; i++) {
		if (stage_of(in->stations[i].kind) != PLAN_STAGE_COUNT)
			there[stage_of(in->stations[i].kind)]++;
		plan->stations[i].permille = permille(plan->stations[i].busy_s, day);
	}
	for (int i = 0; i < PLAN_STAGE_COUNT; i++) {
		plan->stages[i].permille = permille(plan->stages[i].busy_s, day * there[i]);
		if (plan->stages[i].permille > plan->stages[plan->bottleneck].permille)
			plan->bottleneck = (enum plan_stage)i;
	}
}

/* --- jars that wait ----------------------------------------------------------------------------------- */

/* Jars that wait at a moment; where most of them go to, and of which family they are. */
static int waiting_at(const struct plan_work *work, const struct day_plan *plan, int at, struct plan_queue *queue)
{
	int to[PLAN_STATIONS_MAX] = { 0 };
	int of[PLAN_FAMILIES_MAX] = { 0 };
	int jars = 0;

	*queue = (struct plan_queue){ .from_s = at, .until_s = FINISH_NEVER };
	for (int i = 0; i < plan->load_count; i++) {
		const struct plan_load *load = &plan->loads[i];

		for (int j = 0; j < load->part_count; j++) {
			int filled = work->schedule.filled[load->parts[j].batch];

			if (filled > at && filled < queue->until_s && filled < load->start_s)
				queue->until_s = filled;
			if (filled > at || load->start_s <= at)
				continue;
			jars += load->parts[j].jars;
			to[load->station] += load->parts[j].jars;
			of[load->family] += load->parts[j].jars;
			if (load->start_s < queue->until_s)
				queue->until_s = load->start_s;
		}
	}
	for (int i = 0; i < PLAN_STATIONS_MAX; i++)
		queue->station = to[i] > to[queue->station] ? i : queue->station;
	for (int i = 0; i < PLAN_FAMILIES_MAX; i++)
		queue->family = of[i] > of[queue->family] ? i : queue->family;
	queue->jars = jars;
	return jars;
}

static void find_queue(const struct plan_work *work, struct day_plan *plan)
{
	plan->queue = (struct plan_queue){ .station = PLAN_NONE, .family = PLAN_NONE };
	for (int i = 0; i < work->in->batch_count; i++) {
		struct plan_queue queue;
		int at = later(work->in->start_s, work->schedule.filled[i]);
		int jars = waiting_at(work, plan, at, &queue);

		if (jars > plan->queue.jars || (jars == plan->queue.jars && jars > 0 && at < plan->queue.from_s))
			plan->queue = queue;
	}
}

static void find_waits(const struct plan_work *work, struct day_plan *plan)
{
	plan->longest_wait_batch = PLAN_NONE;
	for (int i = 0; i < plan->load_count; i++) {
		const struct plan_load *load = &plan->loads[i];

		for (int j = 0; j < load->part_count; j++) {
			int batch = load->parts[j].batch;
			int limit = work->in->batches[batch].wait_limit_s;
			int wait = load->start_s - work->schedule.filled[batch];

			if (limit != PLAN_NO_LIMIT && wait > limit)
				plan->late_jars += load->parts[j].jars;
			if (wait <= plan->longest_wait_s)
				continue;
			plan->longest_wait_s = wait;
			plan->longest_wait_batch = batch;
		}
	}
}

void tell_plan(struct plan_work *work, struct day_plan *plan)
{
	memset(plan, 0, sizeof(*plan));
	plan->finish_s = work->schedule.cost.finish;
	plan->last_out_s = work->schedule.last_end;
	plan->waiting_jar_s = work->schedule.cost.waiting_jar_s;
	plan->placings = work->placings;
	plan->bound_s = plan_bound(work, &plan->bound_stage);
	add_runs(work, plan);
	add_batches(work, plan);
	add_loads(work, plan);
	add_breaks_and_clean_down(work, plan);
	sort_tasks(plan);
	name_everybody(work->in, plan);
	add_looks(work, plan);
	sort_tasks(plan);
	plan->held = work->held;
	count_shares(work, plan);
	find_waits(work, plan);
	find_queue(work, plan);
}
