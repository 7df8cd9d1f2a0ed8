/*
 * import_write.c - the plan becomes one act.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "kitchen/act/verdict.h"
#include "kitchen/exchange/import_private.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"

static bool put_frame(struct import_plan *plan, struct fault *fault)
{
	struct log *log = plan->kitchen->log;

	for (size_t i = 0; i < plan->station_count; i++)
		if (plan->stations[i].id == 0 && !log_put_station(log, &plan->stations[i], fault))
			return false;
	for (size_t i = 0; i < plan->box_count; i++)
		if (plan->boxes[i].needed > 0 && plan->boxes[i].row.retired &&
		    !log_put_lid_box(log, &plan->boxes[i].row, fault))
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

static bool put_phases(struct import_plan *plan, struct fault *fault)
{
	for (size_t i = 0; i < plan->phase_count; i++) {
		plan->phases[i].row.work_id = plan->loads[plan->phases[i].load].row.id;
		if (!log_put_phase(plan->kitchen->log, &plan->phases[i].row, fault))
			return false;
	}
	return true;
}

static bool put_marks(struct import_plan *plan, struct fault *fault)
{
	for (size_t i = 0; i < plan->mark_count; i++) {
		struct plan_mark *mark = &plan->marks[i];

		mark->row.load_id = mark->load == NO_LOAD ? 0 : plan->loads[mark->load].row.id;
		mark->row.lot_id = mark->lot == NAME_UNKNOWN ? 0 : plan->lots[mark->lot].id;
		mark->row.phase_id = mark->phase == NO_PHASE ? 0 : plan->phases[mark->phase].row.id;
		if (!log_put_mark(plan->kitchen->log, &mark->row, fault))
			return false;
	}
	return true;
}

/* The log it came from may have known what no file tells: the gate never thinks better
 * of a load than that log did. */
static bool note_worse(struct import_plan *plan, struct act *act, struct fault *fault)
{
	if (!judge_touched(act, fault))
		return false;
	for (size_t i = 0; i < plan->load_count; i++) {
		const struct plan_load *was = &plan->loads[i];
		struct log_mark mark = { .load_id = was->row.id,
			                 .kind = MARK_IMPORTED_WORSE,
			                 .amount = verdict_badness(was->row.verdict) };
		struct log_load is;

		if (!log_load_get(plan->kitchen->log, was->row.id, &is, fault))
			return false;
		if (mark.amount <= verdict_badness(is.verdict))
			continue;
		text_copy(mark.words, sizeof(mark.words), was->row.verdict_why);
		if (!act_mark(act, &mark, fault))
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
	if (!act_begin(&act, plan->kitchen, VERB_IMPORT, 0, fault))
		return false;
	if (!put_frame(plan, fault) || !put_loads(plan, fault) || !put_jars(plan, fault) || !put_phases(plan, fault) ||
	    !put_marks(plan, fault) || !note_worse(plan, &act, fault))
		return act_fail(&act);
	act_says_text(&act, name);
	act_says_number(&act, (int64_t)plan->lot_count);
	act_says_number(&act, (int64_t)plan->load_count);
	act_says_number(&act, (int64_t)plan->jar_count);
	return act_commit(&act, fault);
}
