/*
 * import_plan.c - what an import would put into the log.
 */
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/text.h"
#include "base/with_room.h"
#include "kitchen/board/board_private.h"
#include "kitchen/exchange/import_private.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"

#define WHAT "the import"

struct log_lot *plan_lot(struct import_plan *plan, struct fault *fault)
{
	struct log_lot *rows = with_room(plan->lots, plan->lot_count, &plan->lot_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	plan->lots = rows;
	memset(&rows[plan->lot_count], 0, sizeof(*rows));
	return &rows[plan->lot_count++];
}

struct plan_load *plan_load(struct import_plan *plan, struct fault *fault)
{
	struct plan_load *rows = with_room(plan->loads, plan->load_count, &plan->load_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	plan->loads = rows;
	memset(&rows[plan->load_count], 0, sizeof(*rows));
	return &rows[plan->load_count++];
}

struct plan_jar *plan_jar(struct import_plan *plan, struct fault *fault)
{
	struct plan_jar *rows = with_room(plan->jars, plan->jar_count, &plan->jar_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	plan->jars = rows;
	memset(&rows[plan->jar_count], 0, sizeof(*rows));
	return &rows[plan->jar_count++];
}

struct plan_phase *plan_phase(struct import_plan *plan, struct fault *fault)
{
	struct plan_phase *rows =
	    with_room(plan->phases, plan->phase_count, &plan->phase_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	plan->phases = rows;
	memset(&rows[plan->phase_count], 0, sizeof(*rows));
	return &rows[plan->phase_count++];
}

struct plan_mark *plan_mark(struct import_plan *plan, struct fault *fault)
{
	struct plan_mark *rows = with_room(plan->marks, plan->mark_count, &plan->mark_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	plan->marks = rows;
	memset(&rows[plan->mark_count], 0, sizeof(*rows));
	return &rows[plan->mark_count++];
}

static struct plan_box *new_box(struct import_plan *plan, struct fault *fault)
{
	struct plan_box *rows = with_room(plan->boxes, plan->box_count, &plan->box_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	plan->boxes = rows;
	memset(&rows[plan->box_count], 0, sizeof(*rows));
	return &rows[plan->box_count++];
}

static struct log_station *new_station(struct import_plan *plan, struct fault *fault)
{
	struct log_station *rows =
	    with_room(plan->stations, plan->station_count, &plan->station_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	plan->stations = rows;
	memset(&rows[plan->station_count], 0, sizeof(*rows));
	return &rows[plan->station_count++];
}

bool plan_station(struct import_plan *plan, const char *name, enum station_kind kind, enum canner_wall wall,
                  size_t *station, struct fault *fault)
{
	struct log_station *row;

	for (*station = 0; *station < plan->station_count; (*station)++)
		if (plan->stations[*station].kind == kind && plan->stations[*station].wall == wall &&
		    strcmp(plan->stations[*station].name, name) == 0)
			return true;
	row = new_station(plan, fault);
	if (row == NULL)
		return false;
	row->kind = kind;
	row->wall = wall;
	row->digit = 1; /* of a station out of use it means nothing */
	row->retired = true;
	return text_copy(row->name, sizeof(row->name), name);
}

bool plan_lid(struct import_plan *plan, long line, const char *label, size_t *box, struct fault *fault)
{
	struct plan_box *at;

	*box = NAME_UNKNOWN;
	if (label[0] == '\0')
		return true;
	for (size_t i = 0; i < plan->box_count && *box == NAME_UNKNOWN; i++)
		if (strcmp(plan->boxes[i].row.label, label) == 0)
			*box = i;
	if (*box == NAME_UNKNOWN) {
		at = new_box(plan, fault);
		if (at == NULL)
			return false;
		at->row.retired = true; /* its lids are all used */
		(void)text_copy(at->row.label, sizeof(at->row.label), label);
		*box = plan->box_count - 1;
		plan->result->new_boxes++;
	}
	at = &plan->boxes[*box];
	at->needed++;
	if (at->row.id == 0)
		at->row.lids = at->needed;
	else if (at->row.retired && at->needed > at->row.lids - at->row.used)
		at->row.lids = at->row.used + at->needed;
	else if (at->needed == at->row.lids - at->row.used + 1) /* told once */
		(void)plan_problem(plan, line, "lid box \"%.60s\" has %d lids left: flat lids are used once", label,
		                   at->row.lids - at->row.used);
	return true;
}

bool plan_reject(struct import_plan *plan, const char *name, struct fault *fault)
{
	return names_add(&plan->rejected, name) != NAME_UNKNOWN ||
	       fault_set(fault, FAULT_MEMORY, "Not enough memory for the import.");
}

/* Boxes in use come before those that are not: the same label may be on several. */
static bool take_boxes(struct import_plan *plan, struct fault *fault)
{
	struct log_lid_box *rows;
	size_t count;
	bool done = true;

	if (!log_lid_boxes_all(plan->kitchen->log, &rows, &count, fault))
		return false;
	for (int retired = 0; done && retired <= 1; retired++) {
		for (size_t i = 0; done && i < count; i++) {
			struct plan_box *box;

			if (rows[i].retired != (retired == 1))
				continue;
			box = new_box(plan, fault);
			done = box != NULL;
			if (done)
				box->row = rows[i];
		}
	}
	free(rows);
	return done;
}

static bool plan_begin(struct import_plan *plan, struct fault *fault)
{
	plan->file = "";
	if (!log_stations_all(plan->kitchen->log, &plan->stations, &plan->station_count, fault))
		return false;
	plan->station_room = plan->station_count;
	return take_boxes(plan, fault);
}

static void plan_free(struct import_plan *plan)
{
	free(plan->lots);
	free(plan->loads);
	free(plan->jars);
	free(plan->phases);
	free(plan->marks);
	free(plan->boxes);
	free(plan->stations);
	names_free(&plan->codes);
	names_free(&plan->rejected);
}

static bool read_plan(struct import_plan *plan, const char *path, struct fault *fault)
{
	struct stat status;

	plan->result->notebook = stat(path, &status) != 0 || !S_ISDIR(status.st_mode);
	return plan->result->notebook ? import_notebook(plan, path, fault) : import_export(plan, path, fault);
}

bool kitchen_import(struct kitchen *kitchen, const char *path, bool write, struct import_result *result,
                    struct fault *fault)
{
	struct import_plan plan = { .kitchen = kitchen, .result = result };
	bool done;

	memset(result, 0, sizeof(*result));
	done = plan_begin(&plan, fault) && read_plan(&plan, path, fault);
	result->lots = plan.lot_count;
	result->loads = plan.load_count;
	result->jars = plan.jar_count;
	if (done && write && result->problem_count == 0 && plan.lot_count > 0) {
		done = import_write(&plan, path, fault);
		result->written = done;
	}
	plan_free(&plan);
	return done;
}
