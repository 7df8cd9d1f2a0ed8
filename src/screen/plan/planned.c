/*
 * planned.c - what the plan would start at an empty station next, so that the
 * questions of a run or a batch come with their answers.
 */
#include <string.h>

#include "kitchen/plan/plan.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"

/* The first task of a kind at the station that has not begun; NULL: none. */
static const struct plan_task *first_task(const struct desk *desk, int64_t station_id, enum plan_task_kind kind)
{
	const struct kitchen_plan *plan = desk_plan(desk);

	if (plan->state != PLAN_ACCEPTED || !plan->possible)
		return NULL;
	for (int i = 0; i < plan->plan->task_count; i++) {
		const struct plan_task *task = &plan->plan->tasks[i];

		if (task->kind == kind && !task->running && task->station >= 0 &&
		    plan->station_ids[task->station] == station_id)
			return task;
	}
	return NULL;
}

static int64_t plan_id_of(const struct desk *desk, int item)
{
	const struct kitchen_plan *plan = desk_plan(desk);

	return item >= 0 && item < (int)plan->item_count ? plan->items[item].plan_id : 0;
}

const struct log_plan_run *desk_planned_run(const struct desk *desk, int64_t station_id)
{
	const struct plan_task *task = first_task(desk, station_id, PLAN_SET_UP);
	int64_t id = task == NULL ? 0 : plan_id_of(desk, desk_plan(desk)->run_items[task->run]);
	size_t count;
	const struct log_plan_run *rows = kitchen_plan_runs(desk->kitchen, &count);

	for (size_t i = 0; i < count; i++)
		if (id != 0 && rows[i].id == id)
			return &rows[i];
	return NULL;
}

const struct log_plan_batch *desk_planned_batch(const struct desk *desk, int64_t station_id)
{
	const struct plan_task *task = first_task(desk, station_id, PLAN_TO_BOIL);
	int64_t id = task == NULL ? 0 : plan_id_of(desk, desk_plan(desk)->batch_items[task->batch]);
	size_t count;
	const struct log_plan_batch *rows = kitchen_plan_batches(desk->kitchen, &count);

	for (size_t i = 0; i < count; i++)
		if (id != 0 && rows[i].id == id)
			return &rows[i];
	return NULL;
}
