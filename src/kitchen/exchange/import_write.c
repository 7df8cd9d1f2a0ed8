/*
 * import_write.c - the draft becomes one act.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "kitchen/act/verdict.h"
#include "kitchen/exchange/import_private.h"
#include "log/tables/canner.h"
#include "log/tables/dryer.h"
#include "log/tables/house.h"

static bool put_frame(struct import_draft *draft, struct fault *fault)
{
	struct log *log = draft->kitchen->log;

	for (size_t i = 0; i < draft->station_count; i++)
		if (draft->stations[i].id == 0 && !log_put_station(log, &draft->stations[i], fault))
			return false;
	for (size_t i = 0; i < draft->box_count; i++)
		if (draft->boxes[i].needed > 0 && draft->boxes[i].row.retired &&
		    !log_put_lid_box(log, &draft->boxes[i].row, fault))
			return false;
	for (size_t i = 0; i < draft->lot_count; i++)
		if (!log_put_lot(log, &draft->lots[i], fault))
			return false;
	return true;
}

static bool put_loads(struct import_draft *draft, struct fault *fault)
{
	struct log *log = draft->kitchen->log;

	for (size_t i = 0; i < draft->load_count; i++) {
		struct draft_load *load = &draft->loads[i];

		load->row.station_id = draft->stations[load->station].id;
		if (load->number == 0 ? !log_put_load(log, &load->row, fault)
		                      : !log_put_load_numbered(log, &load->row, load->number, fault))
			return false;
	}
	return true;
}

static bool put_dryings(struct import_draft *draft, struct fault *fault)
{
	for (size_t i = 0; i < draft->drying_count; i++) {
		struct draft_drying *drying = &draft->dryings[i];

		drying->row.station_id = draft->stations[drying->station].id;
		drying->row.lot_id = draft->lots[drying->lot].id;
		drying->row.pot_lot_id = drying->pot_lot == NAME_UNKNOWN ? 0 : draft->lots[drying->pot_lot].id;
		if (!log_put_drying(draft->kitchen->log, &drying->row, fault))
			return false;
	}
	return true;
}

static bool put_jars(struct import_draft *draft, struct fault *fault)
{
	for (size_t i = 0; i < draft->jar_count; i++) {
		struct draft_jar *jar = &draft->jars[i];

		jar->row.load_id = jar->load == NO_LOAD ? 0 : draft->loads[jar->load].row.id;
		jar->row.lot_id = draft->lots[jar->lot].id;
		jar->row.drying_id = jar->dried == 0 ? 0 : draft->dryings[jar->dried - 1].row.id;
		jar->row.lid_box_id = jar->box == NAME_UNKNOWN ? 0 : draft->boxes[jar->box].row.id;
		jar->row.from_jar_id = jar->from == NO_JAR ? 0 : draft->jars[jar->from].row.id;
		if (!log_put_jar(draft->kitchen->log, &jar->row, fault))
			return false;
	}
	return true;
}

static bool put_phases(struct import_draft *draft, struct fault *fault)
{
	for (size_t i = 0; i < draft->phase_count; i++) {
		struct draft_phase *phase = &draft->phases[i];

		phase->row.work_id =
		    phase->dried > 0 ? draft->dryings[phase->dried - 1].row.id : draft->loads[phase->load].row.id;
		if (!log_put_phase(draft->kitchen->log, &phase->row, fault))
			return false;
	}
	return true;
}

static bool put_marks(struct import_draft *draft, struct fault *fault)
{
	for (size_t i = 0; i < draft->mark_count; i++) {
		struct draft_mark *mark = &draft->marks[i];

		mark->row.load_id = mark->load == NO_LOAD ? 0 : draft->loads[mark->load].row.id;
		mark->row.lot_id = mark->lot == NAME_UNKNOWN ? 0 : draft->lots[mark->lot].id;
		mark->row.phase_id = mark->phase == NO_PHASE ? 0 : draft->phases[mark->phase].row.id;
		if (!log_put_mark(draft->kitchen->log, &mark->row, fault))
			return false;
	}
	return true;
}

/* The log it came from may have known what no file tells: the gate never thinks better
 * of a load than that log did. */
static bool note_worse(struct import_draft *draft, struct act *act, struct fault *fault)
{
	if (!judge_touched(act, fault))
		return false;
	for (size_t i = 0; i < draft->load_count; i++) {
		const struct draft_load *was = &draft->loads[i];
		struct log_mark mark = { .load_id = was->row.id,
			                 .kind = MARK_IMPORTED_WORSE,
			                 .amount = verdict_badness(was->row.verdict) };
		struct log_load is;

		if (!log_load_get(draft->kitchen->log, was->row.id, &is, fault))
			return false;
		if (mark.amount <= verdict_badness(is.verdict))
			continue;
		text_copy(mark.words, sizeof(mark.words), was->row.verdict_why);
		if (!act_mark(act, &mark, fault))
			return false;
	}
	return true;
}

bool import_write(struct import_draft *draft, const char *path, struct fault *fault)
{
	const char *slash = strrchr(path, '/');
	char name[NAME_MAX_BYTES];
	struct act act;

	utf8_clean(name, sizeof(name), slash != NULL && slash[1] != '\0' ? slash + 1 : path);
	if (!act_begin(&act, draft->kitchen, VERB_IMPORT, 0, fault))
		return false;
	if (!put_frame(draft, fault) || !put_loads(draft, fault) || !put_dryings(draft, fault) ||
	    !put_jars(draft, fault) || !put_phases(draft, fault) || !put_marks(draft, fault) ||
	    !note_worse(draft, &act, fault))
		return act_fail(&act);
	act_says_text(&act, name);
	act_says_number(&act, (int64_t)draft->lot_count);
	act_says_number(&act, (int64_t)draft->load_count);
	act_says_number(&act, (int64_t)draft->jar_count);
	return act_commit(&act, fault);
}
