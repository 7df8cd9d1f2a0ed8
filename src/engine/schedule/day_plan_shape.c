/* Work as a pattern of needs, and the earliest place where the pattern fits. */
#include <string.h>

#include "engine/schedule/day_plan_private.h"

/* What a span of a kind of work asks for besides its people. */
enum {
	ON_HEAT = 1,
	AT_FILLER = 2,
	WATCHED = 4,
};

static void add_people(struct shape *shape, int offset, const struct plan_span *span)
{
	struct need *before = shape->people_count == 0 ? NULL : &shape->people[shape->people_count - 1];

	if (span->people == 0)
		return;
	if (before != NULL && before->amount == span->people && before->offset + before->length == offset)
		before->length += span->length_s;
	else
		shape->people[shape->people_count++] =
		    (struct need){ .offset = offset, .length = span->length_s, .amount = span->people };
}

/* The next span of the rigid part. */
static void add_rigid(struct shape *shape, const struct plan_span *span, unsigned asks)
{
	struct need need = { .offset = shape->rigid, .length = span->length_s, .amount = 1 };

	shape->offsets[shape->span_count] = shape->rigid;
	shape->spans[shape->span_count++] = *span;
	shape->rigid += span->length_s;
	shape->whole += span->length_s;
	if (span->length_s == 0)
		return;
	add_people(shape, need.offset, span);
	if ((asks & ON_HEAT) != 0)
		shape->heat = (struct need){ .offset = 0, .length = shape->rigid, .amount = 1 };
	if ((asks & AT_FILLER) != 0)
		shape->filler = need;
	need.amount = span->people;
	if ((asks & WATCHED) != 0 || span->people > 0)
		shape->bound[shape->bound_count++] = need;
}

/* A last span, which may come later. */
static void add_last(struct shape *shape, const struct plan_span *span)
{
	shape->offsets[shape->span_count] = shape->rigid;
	shape->spans[shape->span_count++] = *span;
	shape->whole += span->length_s;
	shape->last_waits = true;
}

void shape_of_run(const struct plan_run *run, struct shape *shape)
{
	memset(shape, 0, sizeof(*shape));
	add_rigid(shape, &run->set_up, ON_HEAT);
	add_rigid(shape, &run->run, ON_HEAT);
	add_last(shape, &run->drain);
}

void shape_of_batch(const struct plan_batch *batch, struct shape *shape)
{
	memset(shape, 0, sizeof(*shape));
	add_rigid(shape, &batch->to_boil, ON_HEAT | WATCHED);
	add_rigid(shape, &batch->boil, ON_HEAT | WATCHED);
	add_rigid(shape, &batch->off, WATCHED);
	add_rigid(shape, &batch->fill, AT_FILLER | WATCHED);
	add_rigid(shape, &batch->rinse, WATCHED);
}

void shape_of_load(const struct plan_process *process, struct shape *shape)
{
	memset(shape, 0, sizeof(*shape));
	add_rigid(shape, &process->load, ON_HEAT | WATCHED);
	add_rigid(shape, &process->come_up, ON_HEAT | WATCHED);
	add_rigid(shape, &process->hold, ON_HEAT);
	add_rigid(shape, &process->rest, 0);
	add_last(shape, &process->unload);
}

/* --- meals ---------------------------------------------------------------------------- */

int plan_people_there(const struct plan_input *in, int at)
{
	int there = 0;

	for (int i = 0; i < in->people_count; i++)
		there += in->people[i].from_s <= at;
	return there;
}

bool plan_eats_in_turns(const struct plan_input *input, int meal)
{
	const struct plan_break *first = &input->breaks[meal];
	int last_end = first->end_s + (first->end_s - first->start_s);

	return input->in_turns && plan_people_there(input, first->start_s) > 1 &&
	       (meal + 1 == input->break_count || last_end <= input->breaks[meal + 1].start_s);
}

int plan_meal_end(const struct plan_input *input, int meal)
{
	const struct plan_break *first = &input->breaks[meal];

	return plan_eats_in_turns(input, meal) ? first->end_s + (first->end_s - first->start_s) : first->end_s;
}

int after_meals(const struct plan_input *in, int start, int length)
{
	if (length <= 0)
		return start;
	for (int i = 0; i < in->break_count; i++)
		if (start < plan_meal_end(in, i) && start + length > in->breaks[i].start_s)
			start = plan_meal_end(in, i);
	return start;
}

/* The earliest start of a span that binds people, or a person's eye. */
static int fit_meals(const struct plan_work *work, const struct need *span, int start, bool in_meals)
{
	for (int i = 0; i < work->closed_count && !in_meals; i++)
		if (start < work->closed[i].end_s && start + span->length > work->closed[i].start_s)
			start = work->closed[i].end_s;
	for (int i = 0; i < work->change_count && span->amount > 0; i++)
		if (start < work->changes[i] && start + span->length > work->changes[i])
			start = work->changes[i];
	return start;
}

static int fit_bound(const struct plan_work *work, const struct shape *shape, int start, bool in_meals)
{
	for (int i = 0; i < shape->bound_count; i++) {
		const struct need *span = &shape->bound[i];

		start = fit_meals(work, span, start + span->offset, in_meals) - span->offset;
	}
	return start;
}

/* --- places --------------------------------------------------------------------------- */

/* The earliest start of the rigid part, station or no station. */
static int fit_rigid(const struct plan_work *work, const struct schedule *schedule, const struct shape *shape,
                     const struct asked_place *asked, int start)
{
	bool on_burner = work->in->stations[asked->station].on_burner;

	int before;

	do {
		before = start;
		for (int i = 0; i < shape->people_count; i++) {
			const struct need *need = &shape->people[i];

			start = line_fit(&schedule->people, start + need->offset, need->length, need->amount) -
			        need->offset;
		}
		if (on_burner)
			start = line_fit(&schedule->burners, start, shape->heat.length, 1);
		if (work->in->fillers > 0)
			start = line_fit(&schedule->fillers, start + shape->filler.offset, shape->filler.length, 1) -
			        shape->filler.offset;
		if (work->in->break_count > 0)
			start = fit_bound(work, shape, start, asked->in_meals);
	} while (start != before);
	return start;
}

/* The earliest start of a last span. */
static int fit_last(const struct plan_work *work, const struct schedule *schedule, const struct plan_span *last,
                    int start)
{
	struct need span = { .length = last->length_s, .amount = last->people };
	int before;

	if (last->length_s == 0 || last->people == 0)
		return start;
	do {
		before = start;
		start = line_fit(&schedule->people, start, last->length_s, last->people);
		start = fit_meals(work, &span, start, false);
	} while (start != before);
	return start;
}

struct spot shape_fit(const struct plan_work *work, const struct schedule *schedule, const struct shape *shape,
                      const struct asked_place *asked)
{
	const struct lane *lane = &schedule->lanes[asked->station];
	const struct plan_span *last = &shape->spans[shape->span_count - 1];
	struct spot spot = { .station = asked->station, .start = asked->earliest };
	int next;

	for (;;) {
		/* First past what has the station, or much would be fitted in vain. */
		spot.start = lane_fit(lane, spot.start, spot.start + shape->whole);
		next = fit_rigid(work, schedule, shape, asked, spot.start);
		spot.end = next + shape->rigid;
		spot.last_start = spot.end;
		if (shape->last_waits) {
			spot.last_start = fit_last(work, schedule, last, spot.end + asked->late);
			spot.end = spot.last_start + last->length_s;
		}
		spot.start = lane_fit(lane, next, spot.end);
		if (spot.start == next)
			return spot;
	}
}

static void note_rigid(struct plan_work *work, const struct shape *shape, const struct spot *spot, int sign)
{
	struct schedule *schedule = &work->schedule;
	int filler = spot->start + shape->filler.offset;

	for (int i = 0; i < shape->people_count; i++) {
		const struct need *need = &shape->people[i];
		int from = spot->start + need->offset;

		line_add(&schedule->people, from, from + need->length, sign * need->amount);
	}
	if (work->in->stations[spot->station].on_burner)
		line_add(&schedule->burners, spot->start, spot->start + shape->heat.length, sign);
	if (work->in->fillers > 0)
		line_add(&schedule->fillers, filler, filler + shape->filler.length, sign);
}

static void note_last(struct plan_work *work, const struct shape *shape, const struct spot *spot, int sign)
{
	const struct plan_span *last = &shape->spans[shape->span_count - 1];

	if (shape->last_waits)
		line_add(&work->schedule.people, spot->last_start, spot->last_start + last->length_s,
		         sign * last->people);
}

void shape_take(struct plan_work *work, const struct shape *shape, const struct spot *spot)
{
	note_rigid(work, shape, spot, 1);
	note_last(work, shape, spot, 1);
	lane_add(&work->schedule.lanes[spot->station], spot->start, spot->end);
}

void shape_give_back(struct plan_work *work, const struct shape *shape, const struct spot *spot)
{
	note_rigid(work, shape, spot, -1);
	note_last(work, shape, spot, -1);
	lane_remove(&work->schedule.lanes[spot->station], spot->start, spot->end);
}

void shape_go_on(struct plan_work *work, const struct shape *shape, const struct spot *spot)
{
	note_rigid(work, shape, spot, 1);
}

void shape_end(struct plan_work *work, const struct shape *shape, struct spot *spot)
{
	const struct plan_span *last = &shape->spans[shape->span_count - 1];

	spot->end = spot->start + shape->rigid;
	spot->last_start = spot->end;
	if (shape->last_waits) {
		spot->last_start = fit_last(work, &work->schedule, last, spot->end);
		spot->end = spot->last_start + last->length_s;
	}
	note_last(work, shape, spot, 1);
	lane_add(&work->schedule.lanes[spot->station], spot->start, spot->end);
}
