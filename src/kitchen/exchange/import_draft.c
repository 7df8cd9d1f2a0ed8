/*
 * import_draft.c - what an import would put into the log.
 */
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/count.h"
#include "base/text.h"
#include "base/with_room.h"
#include "kitchen/board/board_private.h"
#include "kitchen/exchange/import_private.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"

#define WHAT "the import"

struct log_lot *draft_lot(struct import_draft *draft, struct fault *fault)
{
	struct log_lot *rows = with_room(draft->lots, draft->lot_count, &draft->lot_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->lots = rows;
	memset(&rows[draft->lot_count], 0, sizeof(*rows));
	return &rows[draft->lot_count++];
}

struct draft_load *draft_load(struct import_draft *draft, struct fault *fault)
{
	struct draft_load *rows =
	    with_room(draft->loads, draft->load_count, &draft->load_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->loads = rows;
	memset(&rows[draft->load_count], 0, sizeof(*rows));
	return &rows[draft->load_count++];
}

struct draft_jar *draft_jar(struct import_draft *draft, struct fault *fault)
{
	struct draft_jar *rows = with_room(draft->jars, draft->jar_count, &draft->jar_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->jars = rows;
	memset(&rows[draft->jar_count], 0, sizeof(*rows));
	return &rows[draft->jar_count++];
}

struct draft_drying *draft_drying(struct import_draft *draft, struct fault *fault)
{
	struct draft_drying *rows =
	    with_room(draft->dryings, draft->drying_count, &draft->drying_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->dryings = rows;
	memset(&rows[draft->drying_count], 0, sizeof(*rows));
	return &rows[draft->drying_count++];
}

struct draft_phase *draft_phase(struct import_draft *draft, struct fault *fault)
{
	struct draft_phase *rows =
	    with_room(draft->phases, draft->phase_count, &draft->phase_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->phases = rows;
	memset(&rows[draft->phase_count], 0, sizeof(*rows));
	return &rows[draft->phase_count++];
}

struct draft_mark *draft_mark(struct import_draft *draft, struct fault *fault)
{
	struct draft_mark *rows =
	    with_room(draft->marks, draft->mark_count, &draft->mark_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->marks = rows;
	memset(&rows[draft->mark_count], 0, sizeof(*rows));
	return &rows[draft->mark_count++];
}

static struct draft_box *new_box(struct import_draft *draft, struct fault *fault)
{
	struct draft_box *rows =
	    with_room(draft->boxes, draft->box_count, &draft->box_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->boxes = rows;
	memset(&rows[draft->box_count], 0, sizeof(*rows));
	return &rows[draft->box_count++];
}

static struct log_station *new_station(struct import_draft *draft, struct fault *fault)
{
	struct log_station *rows =
	    with_room(draft->stations, draft->station_count, &draft->station_room, sizeof(*rows), WHAT, fault);

	if (rows == NULL)
		return NULL;
	draft->stations = rows;
	memset(&rows[draft->station_count], 0, sizeof(*rows));
	return &rows[draft->station_count++];
}

bool draft_station(struct import_draft *draft, const char *name, enum station_kind kind, enum canner_wall wall,
                   size_t *station, struct fault *fault)
{
	struct log_station *row;

	for (*station = 0; *station < draft->station_count; (*station)++)
		if (draft->stations[*station].kind == kind && draft->stations[*station].wall == wall &&
		    strcmp(draft->stations[*station].name, name) == 0)
			return true;
	row = new_station(draft, fault);
	if (row == NULL)
		return false;
	row->kind = kind;
	row->wall = wall;
	row->digit = 1; /* of a station out of use it means nothing */
	row->retired = true;
	return text_copy(row->name, sizeof(row->name), name);
}

bool draft_lid(struct import_draft *draft, long line, const char *label, size_t *box, struct fault *fault)
{
	struct draft_box *at;

	*box = NAME_UNKNOWN;
	if (label[0] == '\0')
		return true;
	for (size_t i = 0; i < draft->box_count && *box == NAME_UNKNOWN; i++)
		if (strcmp(draft->boxes[i].row.label, label) == 0)
			*box = i;
	if (*box == NAME_UNKNOWN) {
		at = new_box(draft, fault);
		if (at == NULL)
			return false;
		at->row.retired = true; /* its lids are all used */
		(void)text_copy(at->row.label, sizeof(at->row.label), label);
		*box = draft->box_count - 1;
		draft->result->new_boxes++;
	}
	at = &draft->boxes[*box];
	at->needed++;
	if (at->row.id == 0)
		at->row.lids = at->needed;
	else if (at->row.retired && at->needed > at->row.lids - at->row.used)
		at->row.lids = at->row.used + at->needed;
	else if (at->needed == at->row.lids - at->row.used + 1) /* told once */
		(void)draft_problem(draft, line, "lid box \"%.60s\" has %s left: flat lids are used once", label,
		                    count_words(at->row.lids - at->row.used, "lid").words);
	return true;
}

bool draft_reject(struct import_draft *draft, const char *name, struct fault *fault)
{
	return names_add(&draft->rejected, name) != NAME_UNKNOWN ||
	       fault_set(fault, FAULT_MEMORY, "Not enough memory for the import.");
}

/* Boxes in use come before those that are not: the same label may be on several. */
static bool take_boxes(struct import_draft *draft, struct fault *fault)
{
	struct log_lid_box *rows;
	size_t count;
	bool done = true;

	if (!log_lid_boxes_all(draft->kitchen->log, &rows, &count, fault))
		return false;
	for (int retired = 0; done && retired <= 1; retired++) {
		for (size_t i = 0; done && i < count; i++) {
			struct draft_box *box;

			if (rows[i].retired != (retired == 1))
				continue;
			box = new_box(draft, fault);
			done = box != NULL;
			if (done)
				box->row = rows[i];
		}
	}
	free(rows);
	return done;
}

static bool draft_begin(struct import_draft *draft, struct fault *fault)
{
	draft->file = "";
	if (!log_stations_all(draft->kitchen->log, &draft->stations, &draft->station_count, fault))
		return false;
	draft->station_room = draft->station_count;
	return take_boxes(draft, fault);
}

static void draft_free(struct import_draft *draft)
{
	free(draft->lots);
	free(draft->loads);
	free(draft->jars);
	free(draft->dryings);
	free(draft->phases);
	free(draft->marks);
	free(draft->boxes);
	free(draft->stations);
	names_free(&draft->codes);
	names_free(&draft->rejected);
}

static bool read_plan(struct import_draft *draft, const char *path, struct fault *fault)
{
	struct stat status;

	draft->result->notebook = stat(path, &status) != 0 || !S_ISDIR(status.st_mode);
	return draft->result->notebook ? import_notebook(draft, path, fault) : import_export(draft, path, fault);
}

bool kitchen_import(struct kitchen *kitchen, const char *path, bool write, struct import_result *result,
                    struct fault *fault)
{
	struct import_draft draft = { .kitchen = kitchen, .result = result };
	bool done;

	memset(result, 0, sizeof(*result));
	done = draft_begin(&draft, fault) && read_plan(&draft, path, fault);
	result->lots = draft.lot_count;
	result->loads = draft.load_count;
	result->jars = draft.jar_count;
	if (done && write && result->problem_count == 0 && draft.lot_count > 0) {
		done = import_write(&draft, path, fault);
		result->written = done;
	}
	draft_free(&draft);
	return done;
}
