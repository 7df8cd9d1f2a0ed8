/* The start of a schedule: what is going on, who has not come yet, breaks. */
#include <string.h>

#include "engine/schedule/day_plan_private.h"

static void copy_line(struct line *to, const struct line *from)
{
	to->capacity = from->capacity;
	to->count = from->count;
	memcpy(to->at, from->at, (size_t)from->count * sizeof(from->at[0]));
	memcpy(to->used, from->used, (size_t)from->count * sizeof(from->used[0]));
}

/* As a struct assignment, but without the room that is not in use. */
void copy_schedule(const struct plan_input *in, struct schedule *to, const struct schedule *from)
{
	size_t loads = (size_t)from->load_count;

	copy_line(&to->people, &from->people);
	copy_line(&to->burners, &from->burners);
	copy_line(&to->fillers, &from->fillers);
	for (int i = 0; i < in->station_count; i++) {
		size_t works = (size_t)from->lanes[i].count;

		to->lanes[i].count = from->lanes[i].count;
		memcpy(to->lanes[i].start, from->lanes[i].start, works * sizeof(int));
		memcpy(to->lanes[i].end, from->lanes[i].end, works * sizeof(int));
	}
	memcpy(to->runs, from->runs, (size_t)in->run_count * sizeof(from->runs[0]));
	memcpy(to->pots, from->pots, (size_t)in->batch_count * sizeof(from->pots[0]));
	memcpy(to->filled, from->filled, (size_t)in->batch_count * sizeof(from->filled[0]));
	memcpy(to->loads, from->loads, loads * sizeof(from->loads[0]));
	memcpy(to->contents, from->contents, loads * sizeof(from->contents[0]));
	to->load_count = from->load_count;
	to->broken = from->broken;
}

/* Half of those who are there eat first. */
static void note_meals(struct plan_work *work)
{
	const struct plan_input *in = work->in;

	work->closed_count = 0;
	work->change_count = 0;
	for (int i = 0; i < in->break_count; i++) {
		const struct plan_break *meal = &in->breaks[i];
		int there = plan_people_there(in, meal->start_s);

		if (!plan_eats_in_turns(in, i)) {
			work->closed[work->closed_count++] = *meal;
			continue;
		}
		line_add(&work->schedule.people, meal->start_s, meal->end_s, there / 2);
		line_add(&work->schedule.people, meal->end_s, plan_meal_end(in, i), there - there / 2);
		work->changes[work->change_count++] = meal->end_s;
	}
}

/* Those who have not come yet, and those who eat, are people taken. */
static void clear_lines(struct plan_work *work)
{
	const struct plan_input *in = work->in;
	struct schedule *schedule = &work->schedule;

	line_clear(&schedule->people, in->people_count);
	for (int i = 0; i < in->people_count; i++)
		line_add(&schedule->people, -PLAN_TIME_MAX_S, in->people[i].from_s, 1);
	note_meals(work);
	line_clear(&schedule->burners, in->burners);
	line_clear(&schedule->fillers, in->fillers);
}

void note_filled(struct plan_work *work, int batch)
{
	const struct plan_batch *of = &work->in->batches[batch];

	work->schedule.filled[batch] =
	    work->schedule.pots[batch].start + work->batches[batch].rigid - of->rinse.length_s;
}

static void go_on(struct plan_work *work)
{
	const struct plan_input *in = work->in;
	struct schedule *schedule = &work->schedule;

	for (int i = 0; i < in->batch_count; i++) {
		schedule->pots[i] = (struct spot){ .station = PLAN_NONE };
		schedule->filled[i] = in->batches[i].filled_at_s;
		if (in->batches[i].stage != PLAN_IN_POT)
			continue;
		schedule->pots[i] = (struct spot){ .station = in->batches[i].station, .start = in->start_s };
		shape_go_on(work, &work->batches[i], &schedule->pots[i]);
		note_filled(work, i);
	}
	for (int i = 0; i < in->run_count; i++) {
		schedule->runs[i] = (struct spot){ .station = in->runs[i].station, .start = in->start_s };
		if (schedule->runs[i].station != PLAN_NONE)
			shape_go_on(work, &work->runs[i], &schedule->runs[i]);
	}
	for (int i = 0; i < in->running_load_count; i++) {
		const struct plan_running_load *load = &in->running_loads[i];

		schedule->loads[i] = (struct spot){ .station = load->station, .start = in->start_s };
		schedule->contents[i] = (struct plan_load){ .family = PLAN_NONE, .running = i, .jars = load->jars };
		shape_go_on(work, &work->running[i], &schedule->loads[i]);
	}
	schedule->load_count = in->running_load_count;
}

static void end_what_goes_on(struct plan_work *work)
{
	const struct plan_input *in = work->in;
	struct schedule *schedule = &work->schedule;

	for (int i = 0; i < in->batch_count; i++)
		if (in->batches[i].stage == PLAN_IN_POT)
			shape_end(work, &work->batches[i], &schedule->pots[i]);
	for (int i = 0; i < in->running_load_count; i++)
		shape_end(work, &work->running[i], &schedule->loads[i]);
	for (int i = 0; i < in->run_count; i++)
		if (schedule->runs[i].station != PLAN_NONE)
			shape_end(work, &work->runs[i], &schedule->runs[i]);
	for (int i = 0; i < in->station_count; i++)
		if (schedule->lanes[i].count == 0)
			lane_add(&schedule->lanes[i], -PLAN_TIME_MAX_S, in->stations[i].free_at_s);
}

static int quiet_from(const struct plan_work *work)
{
	const struct plan_input *in = work->in;
	const struct schedule *schedule = &work->schedule;
	int quiet = in->start_s;

	for (int i = 0; i < in->break_count; i++)
		quiet = later(quiet, plan_meal_end(in, i));
	for (int i = 0; i < in->people_count; i++)
		quiet = later(quiet, in->people[i].from_s);
	for (int i = 0; i < in->batch_count; i++)
		quiet = later(quiet, in->batches[i].ready_s);
	for (int i = 0; i < in->station_count; i++)
		if (schedule->lanes[i].count > 0 && in->stations[i].kind != PLAN_DRYER)
			quiet = later(quiet, schedule->lanes[i].end[schedule->lanes[i].count - 1]);
	return quiet;
}

void build_start(struct plan_work *work)
{
	const struct plan_input *in = work->in;

	work->schedule.load_count = 0;
	work->schedule.broken = false;
	for (int i = 0; i < in->station_count; i++)
		work->schedule.lanes[i].count = 0;
	clear_lines(work);
	go_on(work);
	end_what_goes_on(work);
	copy_schedule(in, &work->start, &work->schedule);
	work->quiet_s = quiet_from(work);
}
