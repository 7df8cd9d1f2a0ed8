/*
 * plan_said.c - what the plan has said, kept in the log: after a start of the program people
 * go on by what they were told.
 */
#include <stdlib.h>
#include <string.h>

#include "kitchen/plan/plan_private.h"
#include "log/journal/acts.h"
#include "log/tables/plan.h"

#define SAID_MAX (PLAN_RUNS_MAX + PLAN_BATCHES_MAX)

/* Both were cleared before they were written. */
static bool same(const struct plan_said *one, const struct plan_said *other)
{
	/* NOLINTNEXTLINE(bugprone-suspicious-memory-comparison,cert-exp42-c,cert-flp37-c) */
	return memcmp(one, other, sizeof(*one)) == 0;
}

/* --- as rows ------------------------------------------------------------------------------ */

/* The planner's number of a row: plan_item_id. */
static int64_t id_of_row(const struct log_plan_said *row)
{
	if (row->run_id != 0 || row->batch_id != 0)
		return row->run_id != 0 ? -row->run_id : -row->batch_id;
	return row->plan_run_id != 0 ? row->plan_run_id : row->plan_batch_id;
}

static void from_rows(const struct log_plan_said *rows, size_t count, struct plan_said *said)
{
	memset(said, 0, sizeof(*said));
	said->wait_cap = count == 0 ? 0 : rows[0].wait_cap_s;
	for (size_t i = 0; i < count && said->count < SAID_MAX; i++) {
		said->items[said->count].id = id_of_row(&rows[i]);
		said->items[said->count].is_run = rows[i].plan_run_id != 0 || rows[i].run_id != 0;
		said->items[said->count].link = (unsigned char)rows[i].link;
		said->items[said->count].pick = (unsigned char)rows[i].pick;
		said->items[said->count++].late = (unsigned char)rows[i].late;
	}
}

static size_t to_rows(const struct plan_said *said, struct log_plan_said rows[SAID_MAX])
{
	for (int i = 0; i < said->count; i++) {
		int64_t id = said->items[i].id;
		struct log_plan_said row = { .link = said->items[i].link,
			                     .pick = said->items[i].pick,
			                     .late = said->items[i].late,
			                     .wait_cap_s = said->wait_cap };

		if (said->items[i].is_run)
			*(id < 0 ? &row.run_id : &row.plan_run_id) = id < 0 ? -id : id;
		else
			*(id < 0 ? &row.batch_id : &row.plan_batch_id) = id < 0 ? -id : id;
		rows[i] = row;
	}
	return (size_t)said->count;
}

/* --- recalling ------------------------------------------------------------------------------ */

/* Nothing has been said yet but what was accepted: its order. */
static void said_as_accepted(struct planning *planning)
{
	struct plan_said *said = &planning->said;

	said->wait_cap = PLAN_NO_LIMIT;
	for (size_t i = 0; i < planning->rows->block_count && said->count < SAID_MAX; i++) {
		const struct log_plan_block *block = &planning->rows->blocks[i]; /* by start */

		bool is_run;
		int64_t row = plan_block_row(block, &is_run);

		if (row == 0)
			continue;
		said->items[said->count].is_run = is_run;
		said->items[said->count++].id = row;
	}
}

void plan_said_recall(struct planning *planning)
{
	struct plan_said logged;

	from_rows(planning->rows->said, planning->rows->said_count, &logged);
	if (logged.count > 0 && !same(&logged, &planning->logged)) {
		planning->said = logged;
		planning->kept = logged;
	}
	planning->logged = logged;
	if (planning->said.count == 0)
		said_as_accepted(planning);
}

/* --- keeping -------------------------------------------------------------------------------- */

static bool put(struct kitchen *kitchen, const struct plan_said *said, struct fault *fault)
{
	struct log_plan_said rows[SAID_MAX];
	size_t count = to_rows(said, rows);

	if (!log_begin(kitchen->log, fault))
		return false;
	if (log_put_plan_said(kitchen->log, rows, count, fault))
		return log_commit_unjournaled(kitchen->log, fault);
	log_abandon(kitchen->log);
	return false;
}

/* By what this terminal said and kept, not by what the log has: two of them that say different
 * things must not go on correcting each other. */
bool kitchen_plan_keep(struct kitchen *kitchen, struct fault *fault)
{
	struct planning *planning = kitchen->planning;

	if (!planning->out.possible || planning->reads != kitchen->reads || !plan_is_gone_by(planning) ||
	    same(&planning->said, &planning->kept))
		return true;
	planning->kept = planning->said;
	if (!put(kitchen, &planning->said, fault) || !planned_read_said(kitchen, fault))
		return false;
	planning->logged = planning->said;
	return true;
}
