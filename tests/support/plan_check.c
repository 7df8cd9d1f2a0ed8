#include "support/plan_check.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

struct look {
	const struct plan_input *in;
	const struct day_plan *plan;
	char *said;
	size_t size;
};

__attribute__((format(printf, 2, 3))) static bool bad(struct look *look, const char *format, ...)
{
	va_list args;

	va_start(args, format);
	(void)vsnprintf(look->said, look->size, format, args);
	va_end(args);
	return false;
}

/* The one task of a kind of a piece of work; NULL: none, or more than one. */
static const struct plan_task *the_task(const struct look *look, enum plan_task_kind kind, int run, int batch, int load)
{
	const struct plan_task *found = NULL;

	for (int i = 0; i < look->plan->task_count; i++) {
		const struct plan_task *task = &look->plan->tasks[i];

		if (task->kind != kind || task->run != run || task->batch != batch || task->load != load)
			continue;
		if (found != NULL)
			return NULL;
		found = task;
	}
	return found;
}

/* A piece of work: its spans by kind, in order. */
struct work {
	const char *what;
	int number;
	int run;
	int batch;
	int load;
	int station;
	bool running;
	enum plan_task_kind first;
	int count;
	const struct plan_span *spans[5];
	bool last_waits;
};

/* Rules 1 to 3: every span is there, as long as it should be, at its station, in order.
 * Gives the start of the whole and the end. */
static bool spans_follow(struct look *look, const struct work *work, int *start, int *end)
{
	bool begun = false;
	int at = 0;

	for (int i = 0; i < work->count; i++) {
		const struct plan_task *task;

		if (work->spans[i]->length_s == 0)
			continue;
		task = the_task(look, work->first + (enum plan_task_kind)i, work->run, work->batch, work->load);
		if (task == NULL)
			return bad(look, "%s %d: span %d missing or twice", work->what, work->number, i);
		if (task->end_s - task->start_s != work->spans[i]->length_s)
			return bad(look, "%s %d: span %d has a wrong length", work->what, work->number, i);
		if (task->station != work->station || task->running != work->running)
			return bad(look, "%s %d: span %d at a wrong station", work->what, work->number, i);
		if (begun && task->start_s != at && !(work->last_waits && i == work->count - 1 && task->start_s > at))
			return bad(look, "%s %d: span %d begins at %d, not %d", work->what, work->number, i,
			           task->start_s, at);
		/* Of work going on with nothing left but what may come later, the start is the plan's. */
		if (!begun)
			*start = work->running && work->last_waits && i == work->count - 1 ? look->in->start_s
			                                                                   : task->start_s;
		begun = true;
		at = task->end_s;
	}
	*end = at;
	if (!begun)
		return bad(look, "%s %d: has no span at all", work->what, work->number);
	return true;
}

static int station_of(const struct look *look, int run, int batch)
{
	for (int i = 0; i < look->plan->task_count; i++) {
		const struct plan_task *task = &look->plan->tasks[i];

		if (task->load == PLAN_NONE &&
		    ((run != PLAN_NONE && task->run == run) || (batch != PLAN_NONE && task->batch == batch)))
			return task->station;
	}
	return PLAN_NONE;
}

/* What is known of each piece of work once its spans are right. */
struct found {
	int run_end[PLAN_RUNS_MAX];
	int filled[PLAN_BATCHES_MAX];
	int in_loads[PLAN_BATCHES_MAX];
	int taken_count;
	struct {
		int station;
		int start;
		int end;
		int awaited; /* until then the day waits for it */
	} taken[PLAN_RUNS_MAX + PLAN_BATCHES_MAX + PLAN_LOADS_MAX];
};

/* From when on a station may take new work, for all we know of it itself. */
static int free_at(const struct look *look, int station)
{
	const struct plan_input *in = look->in;
	bool going_on = false;

	for (int i = 0; i < in->running_load_count; i++)
		going_on |= in->running_loads[i].station == station;
	for (int i = 0; i < in->batch_count; i++)
		going_on |= in->batches[i].stage == PLAN_IN_POT && in->batches[i].station == station;
	for (int i = 0; i < in->run_count; i++)
		going_on |= in->runs[i].station == station;
	return going_on ? in->start_s : in->stations[station].free_at_s;
}

static bool take(struct look *look, struct found *found, const struct work *work, int start, int end)
{
	if (work->running && start != look->in->start_s)
		return bad(look, "%s %d: was going on and begins at %d", work->what, work->number, start);
	if (!work->running && (start < look->in->start_s || start < free_at(look, work->station)))
		return bad(look, "%s %d: begins at %d, too early", work->what, work->number, start);
	for (int i = 0; i < found->taken_count; i++)
		if (found->taken[i].station == work->station && found->taken[i].start < end &&
		    start < found->taken[i].end)
			return bad(look, "%s %d: its station is taken", work->what, work->number); /* rule 5 */
	found->taken[found->taken_count].station = work->station;
	found->taken[found->taken_count].start = start;
	found->taken[found->taken_count].end = end;
	found->taken[found->taken_count].awaited = end;
	found->taken_count++;
	return true;
}

static bool check_run(struct look *look, struct found *found, int index)
{
	const struct plan_run *run = &look->in->runs[index];
	struct work work = { .what = "run",
		             .number = index,
		             .run = index,
		             .batch = PLAN_NONE,
		             .load = PLAN_NONE,
		             .running = run->station != PLAN_NONE,
		             .first = PLAN_SET_UP,
		             .count = 3,
		             .spans = { &run->set_up, &run->run, &run->drain },
		             .last_waits = true };
	int start = 0;
	bool taken;

	work.station = station_of(look, index, PLAN_NONE);
	if (work.station == PLAN_NONE || look->in->stations[work.station].kind != run->at ||
	    (work.running && work.station != run->station))
		return bad(look, "run %d: is in no juicer or dryer, or the wrong one", index);
	if (!spans_follow(look, &work, &start, &found->run_end[index]))
		return false;
	if (!work.running && start < run->ready_s)
		return bad(look, "run %d: begins before its fruit is there", index);
	taken = take(look, found, &work, start, found->run_end[index]);
	found->taken[found->taken_count - 1].awaited =
	    run->at == PLAN_DRYER ? start + run->set_up.length_s : found->run_end[index]; /* rule 13 */
	return taken;
}

static bool check_pot(struct look *look, struct found *found, int index)
{
	const struct plan_batch *batch = &look->in->batches[index];
	struct work work = { .what = "batch",
		             .number = index,
		             .run = PLAN_NONE,
		             .batch = index,
		             .load = PLAN_NONE,
		             .running = batch->stage == PLAN_IN_POT,
		             .first = PLAN_TO_BOIL,
		             .count = 5,
		             .spans = { &batch->to_boil, &batch->boil, &batch->off, &batch->fill, &batch->rinse } };
	int start = 0;
	int end = 0;

	found->filled[index] = batch->filled_at_s;
	if (batch->stage == PLAN_FILLED)
		return true;
	work.station = station_of(look, PLAN_NONE, index);
	if (work.station == PLAN_NONE || look->in->stations[work.station].kind != PLAN_POT ||
	    (work.running && work.station != batch->station) ||
	    (!work.running && batch->pots != 0 && (batch->pots & 1u << work.station) == 0))
		return bad(look, "batch %d: is in no pot, or the wrong one", index);
	if (!spans_follow(look, &work, &start, &end))
		return false;
	if (!work.running && start < batch->ready_s)
		return bad(look, "batch %d: begins before it is ready", index);
	for (int run = batch->first_run; !work.running && run < batch->first_run + batch->run_count; run++)
		if (start < found->run_end[run])
			return bad(look, "batch %d: begins before its juice is there", index);
	found->filled[index] = end - batch->rinse.length_s;
	return take(look, found, &work, start, end);
}

static bool check_contents(struct look *look, struct found *found, int index)
{
	const struct plan_load *load = &look->plan->loads[index];
	int jars = 0;

	for (int i = 0; i < load->part_count; i++) {
		const struct plan_batch *batch = &look->in->batches[load->parts[i].batch];
		int wait = load->start_s - found->filled[load->parts[i].batch];

		if (batch->family != load->family || load->parts[i].jars <= 0)
			return bad(look, "load %d: holds jars of another family, or none", index);
		if (wait < 0)
			return bad(look, "load %d: begins before its jars are filled", index);
		if (batch->wait_limit_s != PLAN_NO_LIMIT && batch->stage == PLAN_TO_DO && wait > batch->wait_limit_s)
			return bad(look, "load %d: jars of batch %d waited %d s", index, load->parts[i].batch, wait);
		found->in_loads[load->parts[i].batch] += load->parts[i].jars;
		jars += load->parts[i].jars;
	}
	if (jars != load->jars || jars > look->in->stations[load->station].jars[look->in->families[load->family].jar])
		return bad(look, "load %d: holds %d jars", index, jars);
	return true;
}

static bool check_load(struct look *look, struct found *found, int index)
{
	const struct plan_load *load = &look->plan->loads[index];
	const struct plan_process *process;
	struct work work = { .what = "load",
		             .number = index,
		             .run = PLAN_NONE,
		             .batch = PLAN_NONE,
		             .load = index,
		             .station = load->station,
		             .running = load->running != PLAN_NONE,
		             .first = PLAN_LOAD,
		             .count = 5,
		             .last_waits = true };
	int start = 0;
	int end = 0;

	if (look->in->stations[load->station].kind != PLAN_CANNER)
		return bad(look, "load %d: is in no canner", index);
	if (work.running) {
		process = &look->in->running_loads[load->running].left;
		if (look->in->running_loads[load->running].station != load->station)
			return bad(look, "load %d: has moved", index);
	} else {
		process = &look->in->families[load->family].at[load->station];
		if (!process->possible || !check_contents(look, found, index))
			return process->possible ? false : bad(look, "load %d: has no process here", index);
	}
	work.spans[0] = &process->load;
	work.spans[1] = &process->come_up;
	work.spans[2] = &process->hold;
	work.spans[3] = &process->rest;
	work.spans[4] = &process->unload;
	if (!spans_follow(look, &work, &start, &end))
		return false;
	if (start != load->start_s || end != load->end_s)
		return bad(look, "load %d: its times are not those of its tasks", index);
	return take(look, found, &work, start, end);
}

/* --- rules 6 to 9: what is shared -------------------------------------------------------- */

static const struct plan_span *span_of(const struct look *look, const struct plan_task *task)
{
	const struct plan_input *in = look->in;
	const struct plan_process *process;

	if (task->kind == PLAN_LOOK)
		return NULL;
	if (task->run != PLAN_NONE)
		return &(&in->runs[task->run].set_up)[task->kind - PLAN_SET_UP];
	if (task->batch != PLAN_NONE)
		return &(&in->batches[task->batch].to_boil)[task->kind - PLAN_TO_BOIL];
	if (task->load != PLAN_NONE) {
		const struct plan_load *load = &look->plan->loads[task->load];

		process = load->running != PLAN_NONE ? &in->running_loads[load->running].left
		                                     : &in->families[load->family].at[load->station];
		return &(&process->load)[task->kind - PLAN_LOAD];
	}
	return task->kind == PLAN_CLEAN_DOWN ? &in->clean_down : NULL;
}

/* Is what it does settled, because it was going on at the start? */
static bool settled(const struct plan_task *task)
{
	return task->running && task->kind != PLAN_DRAIN && task->kind != PLAN_UNLOAD;
}

static bool takes_burner(const struct look *look, const struct plan_task *task)
{
	switch (task->kind) {
	case PLAN_SET_UP:
	case PLAN_RUN:
	case PLAN_TO_BOIL:
	case PLAN_BOIL:
	case PLAN_LOAD:
	case PLAN_COME_UP:
	case PLAN_HOLD: return look->in->stations[task->station].on_burner;
	default: return false;
	}
}

static int there_at(const struct plan_input *in, int at)
{
	int there = 0;

	for (int i = 0; i < in->people_count; i++)
		there += in->people[i].from_s <= at;
	return there;
}

/* How long the whole meal lasts: twice as long when half of them eat at a time. */
static bool in_turns(const struct plan_input *in, int meal, int *end)
{
	int length = in->breaks[meal].end_s - in->breaks[meal].start_s;
	bool turns = in->in_turns && there_at(in, in->breaks[meal].start_s) >= 2;

	if (meal + 1 < in->break_count && in->breaks[meal + 1].start_s < in->breaks[meal].end_s + length)
		turns = false;
	*end = in->breaks[meal].end_s + (turns ? length : 0);
	return turns;
}

/* What a moment takes of a shared thing. */
struct taken {
	int people;
	int burners;
	int fillers;
	bool new_people;
	bool new_burners;
	bool new_fillers;
};

static void add_taken(const struct look *look, const struct plan_task *task, struct taken *taken)
{
	const struct plan_span *span = span_of(look, task);
	bool is_new = !settled(task);

	if (span != NULL && span->people > 0) {
		taken->people += span->people;
		taken->new_people |= is_new;
	}
	if (takes_burner(look, task)) {
		taken->burners++;
		taken->new_burners |= is_new;
	}
	if (task->kind == PLAN_FILL) {
		taken->fillers++;
		taken->new_fillers |= is_new;
	}
}

/* Rules 6 to 8, at the moment a task begins: nothing can come to be too much later. */
static bool check_moment(struct look *look, int at)
{
	const struct plan_input *in = look->in;
	struct taken taken = { 0 };
	int there;
	int eat;

	there = there_at(in, at);
	for (int i = 0; i < in->break_count; i++) {
		int end;

		if (!in_turns(in, i, &end) || at < in->breaks[i].start_s || at >= end)
			continue;
		eat = there_at(in, in->breaks[i].start_s);
		there -= at < in->breaks[i].end_s ? eat / 2 : eat - eat / 2;
	}
	for (int i = 0; i < look->plan->task_count; i++)
		if (look->plan->tasks[i].start_s <= at && look->plan->tasks[i].end_s > at)
			add_taken(look, &look->plan->tasks[i], &taken);
	if (taken.people > there && taken.new_people)
		return bad(look, "at %d: %d people needed, %d there", at, taken.people, there);
	if (taken.burners > in->burners && taken.new_burners)
		return bad(look, "at %d: %d burners needed", at, taken.burners);
	if (in->fillers > 0 && taken.fillers > in->fillers && taken.new_fillers)
		return bad(look, "at %d: %d fillers needed", at, taken.fillers);
	return true;
}

/* Nobody may eat while it lasts: hands are bound to it, or a person's eye. */
static bool watched(const struct look *look, const struct plan_task *task)
{
	switch (task->kind) {
	case PLAN_TO_BOIL:
	case PLAN_BOIL:
	case PLAN_OFF:
	case PLAN_FILL:
	case PLAN_RINSE:
	case PLAN_LOAD:
	case PLAN_COME_UP:
	case PLAN_CLEAN_DOWN: return true;
	case PLAN_BREAK:
	case PLAN_LOOK: return false;
	default: return span_of(look, task)->people > 0;
	}
}

/* Jars that stood filled when the plan was made are loaded in a meal, too. */
static bool comes_first(const struct look *look, const struct plan_task *task)
{
	const struct plan_load *load;

	if (task->load == PLAN_NONE || (task->kind != PLAN_LOAD && task->kind != PLAN_COME_UP))
		return false;
	load = &look->plan->loads[task->load];
	for (int i = 0; i < load->part_count; i++)
		if (look->in->batches[load->parts[i].batch].stage == PLAN_FILLED)
			return true;
	return false;
}

/* Rule 9. */
static bool check_breaks(struct look *look, const struct plan_task *task)
{
	if (settled(task) || !watched(look, task))
		return true;
	for (int i = 0; i < look->in->break_count; i++) {
		const struct plan_break *meal = &look->in->breaks[i];
		int end;
		bool turns = in_turns(look->in, i, &end);
		bool whole = !turns || task->kind == PLAN_CLEAN_DOWN;

		if (whole && !comes_first(look, task) && task->start_s < end && task->end_s > meal->start_s)
			return bad(look, "%s at %d: in a meal", plan_task_words(task->kind), task->start_s);
		if (turns && span_of(look, task)->people > 0 && task->start_s < meal->end_s &&
		    task->end_s > meal->end_s)
			return bad(look, "%s at %d: from one sitting into the other", plan_task_words(task->kind),
			           task->start_s);
	}
	return true;
}

static int count_bits(unsigned set)
{
	int count = 0;

	for (int i = 0; i < 32; i++)
		count += (set >> i & 1u) != 0;
	return count;
}

/* Is the meal the other's own, not one they all sit down to and may get up from? */
static bool bound_by(const struct look *look, const struct plan_task *task)
{
	int end;

	if (task->kind != PLAN_BREAK)
		return true;
	for (int i = 0; i < look->in->break_count; i++)
		if (in_turns(look->in, i, &end) && task->start_s >= look->in->breaks[i].start_s && task->end_s <= end)
			return true;
	return false;
}

/* Everyone does one thing at a time, and only when there. */
static bool only_one_thing(struct look *look, int index)
{
	const struct plan_task *task = &look->plan->tasks[index];

	for (int i = 0; i < look->in->people_count; i++) {
		if ((task->people >> i & 1u) == 0)
			continue;
		if (look->in->people[i].from_s > task->start_s)
			return bad(look, "%s at %d: by someone not there", plan_task_words(task->kind), task->start_s);
		for (int j = index + 1; j < look->plan->task_count; j++) {
			const struct plan_task *other = &look->plan->tasks[j];

			if (bound_by(look, other) && !(settled(task) && other->kind == PLAN_BREAK) &&
			    (other->people >> i & 1u) != 0 && other->start_s < task->end_s &&
			    task->start_s < other->end_s)
				return bad(look, "person %d does two things at %d", i, other->start_s);
		}
	}
	return true;
}

/* Rule 8 again, by name. */
static bool check_names(struct look *look, int index)
{
	const struct plan_task *task = &look->plan->tasks[index];
	const struct plan_span *span = span_of(look, task);

	if (task->kind == PLAN_LOOK)
		return count_bits(task->people) <= 1 && only_one_thing(look, index);
	if (task->kind == PLAN_BREAK || (task->kind == PLAN_CLEAN_DOWN && look->in->clean_down.people == 0))
		return true;
	if (!settled(task) && count_bits(task->people) != span->people)
		return bad(look, "%s at %d: has not its people", plan_task_words(task->kind), task->start_s);
	return only_one_thing(look, index);
}

/* Rule 12: from heat on to the end of the run its water is looked at in time. */
static bool check_looks(struct look *look, int index)
{
	const struct plan_run *run = &look->in->runs[index];
	const struct plan_task *span = the_task(look, PLAN_RUN, index, PLAN_NONE, PLAN_NONE);
	int every = span == NULL ? 0 : look->in->stations[span->station].look_every_s;
	int due = span == NULL ? 0 : span->start_s + (run->station == PLAN_NONE ? every : run->look_first_s);
	int until = span == NULL ? 0 : span->end_s;
	int looks = 0;

	if (run->at == PLAN_DRYER && until > look->plan->finish_s)
		until = look->plan->finish_s; /* rule 13 */

	for (int i = 0; i < look->plan->task_count; i++) {
		const struct plan_task *task = &look->plan->tasks[i];

		if (task->kind != PLAN_LOOK || task->run != index)
			continue;
		looks++;
		if (span == NULL || task->end_s - task->start_s != PLAN_LOOK_S || task->station != span->station ||
		    due >= until)
			return bad(look, "run %d: a look that is none", index);
		if (task->start_s > look->in->start_s && (task->end_s > due || task->start_s < due - PLAN_LOOK_EARLY_S))
			return bad(look, "run %d: looked at from %d, due %d", index, task->start_s, due);
		due += every;
	}
	if (every == 0 ? looks > 0 : span != NULL && due < until)
		return bad(look, "run %d: %d looks", index, looks);
	return true;
}

/* --- the end of the day -------------------------------------------------------------------- */

/* Rules 10 and 11, and every jar in one load (4). */
static bool check_whole(struct look *look, const struct found *found)
{
	const struct plan_input *in = look->in;
	const struct plan_task *clean = the_task(look, PLAN_CLEAN_DOWN, PLAN_NONE, PLAN_NONE, PLAN_NONE);
	int last = in->start_s;
	int running = 0;
	int jars = 0;

	for (int i = 0; i < found->taken_count; i++)
		last = found->taken[i].awaited > last ? found->taken[i].awaited : last;
	if (last != look->plan->last_out_s)
		return bad(look, "last out is %d, not %d", last, look->plan->last_out_s);
	if (in->clean_down.length_s > 0 &&
	    (clean == NULL || clean->start_s < last || clean->end_s != look->plan->finish_s ||
	     clean->end_s - clean->start_s != in->clean_down.length_s || clean->people == 0))
		return bad(look, "clean-down missing or at a wrong time");
	if (in->clean_down.length_s == 0 && look->plan->finish_s != last)
		return bad(look, "finish is %d, not %d", look->plan->finish_s, last);
	for (int i = 0; i < in->batch_count; i++) {
		jars += in->batches[i].jars;
		if (found->in_loads[i] != in->batches[i].jars)
			return bad(look, "batch %d: %d jars in loads", i, found->in_loads[i]);
	}
	for (int i = 0; i < look->plan->load_count; i++)
		if (look->plan->loads[i].running != PLAN_NONE) {
			running++;
			jars += look->plan->loads[i].jars;
		}
	if (running != in->running_load_count)
		return bad(look, "%d loads are going on", running);
	if (in->cooling_jars != PLAN_NO_LIMIT && jars > in->cooling_jars)
		return bad(look, "%d jars on racks for %d", jars, in->cooling_jars);
	return true;
}

/* NOLINTNEXTLINE(readability-non-const-parameter): what is wrong is written into it, by bad() */
bool plan_check(const struct plan_input *in, const struct day_plan *plan, char *said, size_t size)
{
	struct look look = { .in = in, .plan = plan, .said = said, .size = size };
	struct found found = { 0 };

	for (int i = 0; i < in->run_count; i++)
		if (!check_run(&look, &found, i) || !check_looks(&look, i))
			return false;
	for (int i = 0; i < in->batch_count; i++)
		if (!check_pot(&look, &found, i))
			return false;
	for (int i = 0; i < plan->load_count; i++)
		if (!check_load(&look, &found, i))
			return false;
	for (int i = 0; i < plan->task_count; i++)
		if (!check_moment(&look, plan->tasks[i].start_s) || !check_breaks(&look, &plan->tasks[i]) ||
		    !check_names(&look, i))
			return false;
	return check_whole(&look, &found);
}
