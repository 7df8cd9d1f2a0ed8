/*
 * planned.c - what the plan would start at an empty station next, so that the
 * questions of a run or a batch come with their answers.
 */
#include <string.h>

#include "kitchen/plan/plan.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"

/* Which of the plan's stations it is; false: the day goes by no plan, or it is none of them. */
static bool station_of(const struct desk *desk, int64_t station_id, size_t *station)
{
	const struct kitchen_plan *plan = desk_plan(desk);

	for (*station = 0; *station < plan->station_count; (*station)++)
		if (plan->station_ids[*station] == station_id)
			return plan_goes(plan);
	return false;
}

const struct log_plan_run *desk_planned_run(const struct desk *desk, int64_t station_id)
{
	struct plan_next next;
	size_t station;
	size_t count;
	const struct log_plan_run *rows = kitchen_plan_runs(desk->kitchen, &count);

	if (!station_of(desk, station_id, &station))
		return NULL;
	plan_next_station(desk_plan(desk), kitchen_board(desk->kitchen), station, &desk->now, &next);
	for (size_t i = 0; i < count; i++)
		if (next.kind == PLAN_SET_UP && next.plan_id != 0 && rows[i].id == next.plan_id)
			return &rows[i];
	return NULL;
}

static const struct log_plan_batch *batch_row(const struct desk *desk, const struct plan_next *next)
{
	size_t count;
	const struct log_plan_batch *rows = kitchen_plan_batches(desk->kitchen, &count);

	for (size_t i = 0; i < count; i++)
		if (next->kind == PLAN_TO_BOIL && next->plan_id != 0 && rows[i].id == next->plan_id)
			return &rows[i];
	return NULL;
}

void desk_planned_batch(const struct desk *desk, int64_t station_id, struct planned_batch *out)
{
	const struct kitchen_plan *plan = desk_plan(desk);
	const struct board *board = kitchen_board(desk->kitchen);
	struct plan_next next;
	size_t station;

	*out = (struct planned_batch){ 0 };
	if (!station_of(desk, station_id, &station))
		return;
	plan_next_station(plan, board, station, &desk->now, &next);
	out->planned = batch_row(desk, &next);
	if (out->planned == NULL)
		return;
	out->at_ms = next.now || next.at_ms <= desk->now.wall_ms + PLAN_SOON_MS ? 0 : next.at_ms;
	out->juice_to_come = next.juice_to_come;
	out->begin = out->planned;
	if (next.juice_to_come)
		out->begin = plan_next_instead(plan, board, station, &desk->now, &next) ? batch_row(desk, &next) : NULL;
}
