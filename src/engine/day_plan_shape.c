/* Work as a pattern of needs, and the earliest place where the pattern fits. */
#include <string.h>

#include "engine/day_plan_private.h"

/* What a span of a kind of work asks for besides its people. */
enum {
	ON_HEAT = 1,
	AT_FILLER = 2,
	WATCHED = 4,
	TIMED = 8,
};

static void add_people(struct shape *shape, int offset, const struct plan_span *span)
{
	struct need *before =
	    shape->people_count == 0 ? NULL : &shape->people[shape->people_count - 1];

	if (span->people == 0)
		return;
	if (before != NULL && before->amount == span->people &&
	    before->offset + before->length == offset)
		before->length += span->length_s;
	else
		shape->people[shape->people_count++] = (struct need){
		    .offset = offset, .length = span->length_s, .amount = span->people};
}

/* The next span of the rigid part. */
static void add_rigid(struct shape *shape, const struct plan_span *span, unsigned asks)
{
	struct need need = {.offset = shape->rigid, .length = span->length_s, .amount = 1};

	shape->offsets[shape->span_count] = shape->rigid;
	shape->spans[shape->span_count++] = *span;
	shape->rigid += span->length_s;
	shape->whole += span->length_s;
	if (span->length_s == 0)
		return;
	add_people(shape, need.offset, span);
	if ((asks & ON_HEAT) != 0)
		shape->heat = (struct need){.offset = 0, .length = shape->rigid, .amount = 1};
	if ((asks & AT_FILLER) != 0)
		shape->filler = need;
	if ((asks & WATCHED) != 0 && span->people == 0)
		shape->watched[shape->watched_count++] = need;
	if ((asks & TIMED) != 0 && span->people == 0)
		shape->timed[shape->timed_count++] = need;
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
	add_rigid(shape, &run->run, ON_HEAT | (run->watched ? WATCHED : TIMED));
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
	add_rigid(shape, &process->hold, ON_HEAT | TIMED);
	add_rigid(shape, &process->rest, 0);
	add_last(shape, &process->unload);
}

int after_breaks(const struct plan_input *in, int start, int length)
{
	if (length <= 0)
		return start;
	for (int i = 0; i < in->break_count; i++)
		if (start < in->breaks[i].end_s && start + length > in->breaks[i].start_s)
			start = in->breaks[i].end_s;
	return start;
}

/* Past the break inside which `at` lies. */
static int not_inside(const struct plan_input *in, int at)
{
	for (int i = 0; i < in->break_count; i++)
		if (at > in->breaks[i].start_s && at < in->breaks[i].end_s)
			return in->breaks[i].end_s;
	return at;
}

static int fit_breaks(const struct plan_input *in, const struct shape *shape, int start)
{
	for (int i = 0; i < shape->watched_count; i++) {
		const struct need *need = &shape->watched[i];

		start = after_breaks(in, start + need->offset, need->length) - need->offset;
	}
	for (int i = 0; i < shape->timed_count; i++) {
		const struct need *need = &shape->timed[i];
		int end = need->offset + need->length;

		start = not_inside(in, start + need->offset) - need->offset;
		start = not_inside(in, start + end) - end;
	}
	return start;
}

/* The earliest start of the rigid part, station or no station. */
static int fit_rigid(const struct plan_work *work, const struct schedule *schedule,
                     const struct shape *shape, bool on_burner, int start)
{
	int before;

	do {
		before = start;
		for (int i = 0; i < shape->people_count; i++) {
			const struct need *need = &shape->people[i];

			start = line_fit(&schedule->people, start + need->offset, need->length,
			                 need->amount) -
			        need->offset;
		}
		if (on_burner)
			start = line_fit(&schedule->burners, start, shape->heat.length, 1);
		if (work->in->fillers > 0)
			start = line_fit(&schedule->fillers, start + shape->filler.offset,
			                 shape->filler.length, 1) -
			        shape->filler.offset;
		if (work->in->break_count > 0)
			start = fit_breaks(work->in, shape, start);
	} while (start != before);
	return start;
}

struct spot shape_fit(const struct plan_work *work, const struct schedule *schedule,
                      const struct shape *shape, int station, int earliest, int late)
{
	bool on_burner = work->in->stations[station].on_burner;
	const struct plan_span *last = &shape->spans[shape->span_count - 1];
	struct spot spot = {.station = station, .start = earliest};
	int next;

	for (;;) {
		/* First past what has the station, or much would be fitted in vain. */
		spot.start =
		    lane_fit(&schedule->lanes[station], spot.start, spot.start + shape->whole);
		next = fit_rigid(work, schedule, shape, on_burner, spot.start);
		spot.end = next + shape->rigid;
		spot.last_start = spot.end;
		if (shape->last_waits) {
			spot.last_start = line_fit(&schedule->people, spot.end + late,
			                           last->length_s, last->people);
			spot.end = spot.last_start + last->length_s;
		}
		spot.start = lane_fit(&schedule->lanes[station], next, spot.end);
		if (spot.start == next)
			return spot;
	}
}

static void note_rigid(struct plan_work *work, const struct shape *shape, const struct spot *spot,
                       int sign)
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

static void note_last(struct plan_work *work, const struct shape *shape, const struct spot *spot,
                      int sign)
{
	const struct plan_span *last = &shape->spans[shape->span_count - 1];

	if (shape->last_waits)
		line_add(&work->schedule.people, spot->last_start,
		         spot->last_start + last->length_s, sign * last->people);
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
		spot->last_start =
		    line_fit(&work->schedule.people, spot->end, last->length_s, last->people);
		spot->end = spot->last_start + last->length_s;
	}
	note_last(work, shape, spot, 1);
	lane_add(&work->schedule.lanes[spot->station], spot->start, spot->end);
}
