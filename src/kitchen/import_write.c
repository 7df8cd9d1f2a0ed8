/*
 * import_write.c - the plan becomes one act.
 */
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "engine/utf8.h"
#include "kitchen/import_private.h"

static bool put_frame(struct import_plan *plan, struct fault *fault)
{
	struct log *log = plan->kitchen->log;

	for (size_t i = 0; i < plan->station_count; i++)
		if (plan->stations[i].id == 0 && !log_put_station(log, &plan->stations[i], fault))
			return false;
	for (size_t i = 0; i < plan->box_count; i++)
		if (plan->boxes[i].needed > 0 && plan->boxes[i].row.retired && !log_put_lid_box(log, &plan->boxes[i].row, fault))
			return false;
	for (size_t i = 0; i < plan->lot_count; i++)
		if (!log_put_lot(log, &plan->lots[i], fault))
			return false;
	return true;
}

static bool put_loads(struct import_plan *plan, struct fault *fault)
{
	struct log *log = plan->kitchen->log;

	for (size_t i = 0; i < plan->load_count; i++) {
		struct plan_load *load = &plan->loads[i];

		load->row.station_id = plan->stations[load->station].id;
		if (load->number == 0 ? !log_put_load(log, &load->row, fault)
		                      : !log_put_load_numbered(log, &load->row, load->number, fault))
			return false;
	}
	return true;
}

static bool put_jars(struct import_plan *plan, struct fault *fault)
{
	for (size_t i = 0; i < plan->jar_count; i++) {
		struct plan_jar *jar = &plan->jars[i];

		jar->row.load_id = jar->load == NO_LOAD ? 0 : plan->loads[jar->load].row.id;
		jar->row.lot_id = plan->lots[jar->lot].id;
		jar->row.lid_box_id = jar->box == NAME_UNKNOWN ? 0 : plan->boxes[jar->box].row.id;
		jar->row.from_jar_id = jar->from == NO_JAR ? 0 : plan->jars[jar->from].row.id;
		if (!log_put_jar(plan->kitchen->log, &jar->row, fault))
			return false;
	}
	return true;
}

bool import_write(struct import_plan *plan, const char *path, struct fault *fault)
{
	const char *slash = strrchr(path, '/');
	char name[NAME_MAX_BYTES];
	struct act act;

	utf8_clean(name, sizeof(name), slash != NULL && slash[1] != '\0' ? slash + 1 : path);
	if (!act_begin(&act, plan->kitchen, "import", 0, fault))
		return false;
	if (!put_frame(plan, fault) || !put_loads(plan, fault) || !put_jars(plan, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "Imported from %s: %zu lots, %zu loads, %zu jars", name, plan->lot_count,
	                  plan->load_count, plan->jar_count);
}
