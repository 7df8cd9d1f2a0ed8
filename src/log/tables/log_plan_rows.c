/*
 * log_plan_rows.c - the day plan: who helps, meals, what shall be made, how it was
 * accepted; how long phases last here.
 */
#include <string.h>

#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/plan.h"

#define ANY_TIME (-1) /* stored as null */
#define NO_CAP (-1)   /* stored as null */

/* clang-format off */
#define IN(member) COLUMN(struct log_plan_house, member)
static const struct log_column house_columns[] = {
	{ .column = "id", .kind = CELL_NUMBER }, /* 1 */
	{ IN(burners), .kind = CELL_NUMBER, OUT("burners", "of the stove") },
	{ IN(fillers), .kind = CELL_NUMBER, OUT("fillers", "how many fill jars at a time; 0: as many as there are") },
	{ IN(cooling_jars), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, .none = COOLING_NO_LIMIT,
	  OUT("cooling_jars", "room to cool; empty: no limit") },
	{ IN(clean_minutes), .kind = CELL_NUMBER, OUT("clean_minutes", "to clean up at the end") },
	{ IN(charge_mg), .kind = CELL_NUMBER, .scale = 3, OUT("charge_g", "fruit in a basket") },
	{ IN(late_minutes), .kind = CELL_NUMBER, OUT("late_minutes", "how much later than planned is warned of") },
	{ IN(meals_in_turns), .kind = CELL_FLAG, OUT("meals_in_turns", "helpers eat half by half") },
};
#undef IN

#define IN(member) COLUMN(struct log_helper, member)
static const struct log_column helper_columns[] = {
	{ IN(id), .kind = CELL_NUMBER },
	{ IN(initials), .kind = CELL_TEXT, OUT("initials", "") },
	{ IN(from_minutes), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, .none = ANY_TIME,
	  OUT("from_minutes", "after local midnight; empty: from the start") },
};
#undef IN

#define IN(member) COLUMN(struct log_plan_break, member)
static const struct log_column break_columns[] = {
	{ IN(id), .kind = CELL_NUMBER },
	{ IN(start_minutes), .kind = CELL_NUMBER, OUT("start_minutes", "after local midnight") },
	{ IN(end_minutes), .kind = CELL_NUMBER, OUT("end_minutes", "") },
};
#undef IN

#define IN(member) COLUMN(struct log_plan, member)
static const struct log_column plan_columns[] = {
	{ .column = "id", .kind = CELL_NUMBER }, /* 1 */
	{ IN(day_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("day", "local midnight; empty: the day it is") },
	{ IN(start_minutes), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, .none = ANY_TIME,
	  OUT("start_minutes", "after local midnight; empty: at once") },
	{ IN(accepted_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("accepted", "empty: a draft") },
	{ IN(accepted_finish_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("accepted_finish", "") },
	{ IN(finished_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("finished", "empty: not yet") },
};
#undef IN

#define IN(member) COLUMN(struct log_plan_run, member)
static const struct log_column run_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("planned_run", "number") },
	{ IN(fruit), .kind = CELL_TEXT, OUT("fruit", "") },
	{ IN(fruit_mg), .kind = CELL_NUMBER, .scale = 3, OUT("fruit_g", "0: puree") },
	{ IN(ready_minutes), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, .none = ANY_TIME,
	  OUT("ready_minutes", "after local midnight, not before; empty: any time") },
	{ IN(run_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("run", "or drying that it became; empty: not begun") },
	{ IN(dries), .kind = CELL_FLAG, OUT("dried", "in a dryer, not juiced") },
	{ IN(puree_ul), .kind = CELL_NUMBER, .scale = 3, OUT("puree_ml", "to be dried as leather; 0: fruit by weight") },
	{ IN(hours_low), .kind = CELL_NUMBER, OUT("hours_low", "of the house; 0: as published, and of a run") },
	{ IN(hours_high), .kind = CELL_NUMBER, OUT("hours_high", "") },
};
#undef IN

#define IN(member) COLUMN(struct log_plan_batch, member)
static const struct log_column batch_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("planned_batch", "number") },
	{ IN(recipe), .kind = CELL_TEXT, OUT("recipe", "") },
	{ IN(pack), .kind = CELL_TEXT, OUT("pack", "") },
	{ IN(jar), .kind = CELL_TEXT, OUT("jar", "") },
	{ IN(multiple), .kind = CELL_NUMBER, OUT("multiple", "times the recipe") },
	{ IN(ready_minutes), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, .none = ANY_TIME,
	  OUT("ready_minutes", "after local midnight, not before; empty: any time") },
	{ IN(after_runs), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, .none = PLAN_RUNS_AS_NEEDED,
	  OUT("after_runs", "how many runs it waits for; empty: as many as give its juice") },
	{ IN(batch_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("batch", "that it became; empty: not begun") },
};
#undef IN

#define IN(member) COLUMN(struct log_plan_block, member)
static const struct log_column block_columns[] = {
	{ IN(id), .kind = CELL_NUMBER },
	{ IN(station_id), .kind = CELL_NUMBER, OUT("station", "") },
	{ IN(plan_run_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("planned_run", "empty: about none") },
	{ IN(plan_batch_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("planned_batch", "empty: about none") },
	{ IN(jars), .kind = CELL_NUMBER, OUT("jars", "") },
	{ IN(start_wall_ms), .kind = CELL_INSTANT, OUT("start", "as accepted") },
	{ IN(end_wall_ms), .kind = CELL_INSTANT, OUT("end", "") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_plan_house = {
	.name = "plan_house",
	.meaning = "what the day plan goes by",
	.single = true,
	COLUMNS(house_columns),
	.table = "plan_house",
	.row_size = sizeof(struct log_plan_house),
	.from = "plan_house",
	.order = "plan_house.id",
};

const struct log_table table_of_helpers = {
	.name = "helpers",
	.meaning = "who helps",
	COLUMNS(helper_columns),
	.table = "helper",
	.row_size = sizeof(struct log_helper),
	.from = "helper",
	.order = "helper.id",
};

const struct log_table table_of_plan_breaks = {
	.name = "plan_breaks",
	.meaning = "meals",
	COLUMNS(break_columns),
	.table = "plan_break",
	.row_size = sizeof(struct log_plan_break),
	.from = "plan_break",
	.order = "plan_break.start_minutes, plan_break.id",
};

const struct log_table table_of_plan = {
	.name = "plan",
	.meaning = "the day plan",
	.single = true,
	COLUMNS(plan_columns),
	.table = "plan",
	.row_size = sizeof(struct log_plan),
	.from = "plan",
	.order = "plan.id",
};

const struct log_table table_of_plan_runs = {
	.name = "plan_runs",
	.meaning = "its juicer runs",
	COLUMNS(run_columns),
	.table = "plan_run",
	.row_size = sizeof(struct log_plan_run),
	.from = "plan_run",
	.order = "plan_run.id",
};

const struct log_table table_of_plan_batches = {
	.name = "plan_batches",
	.meaning = "its batches",
	COLUMNS(batch_columns),
	.table = "plan_batch",
	.row_size = sizeof(struct log_plan_batch),
	.from = "plan_batch",
	.order = "plan_batch.id",
};

const struct log_table table_of_plan_blocks = {
	.name = "plan_blocks",
	.meaning = "who was to stand where, as accepted",
	COLUMNS(block_columns),
	.table = "plan_block",
	.row_size = sizeof(struct log_plan_block),
	.from = "plan_block",
	.order = "plan_block.start_wall_ms, plan_block.id",
};

static void read_phase_mean(struct query *query, void *into)
{
	struct log_phase_mean *mean = into;
	memset(mean, 0, sizeof(*mean));
	mean->kind = (enum station_kind)take_word(query, &words_of_station_kind);
	TAKE_TEXT(query, mean->name);
	mean->count = take_integer(query);
	mean->sum_ms = take_integer(query);
}

static void read_said(struct query *query, void *into)
{
	struct log_plan_said *said = into;
	said->plan_run_id = take_integer(query);
	said->plan_batch_id = take_integer(query);
	said->run_id = take_integer(query);
	said->batch_id = take_integer(query);
	said->link = (int)take_between(query, 0, UINT8_MAX);
	said->pick = (int)take_between(query, 0, UINT8_MAX);
	said->late = (int)take_between(query, 0, UINT8_MAX);
	said->wait_cap_s = (int)take_between(query, NO_CAP, INT32_MAX);
}

bool log_plan_house_get(struct log *log, struct log_plan_house *out, struct fault *fault)
{
	struct query query = query_start(log, PLAN_HOUSE_GET);
	return query_row(&query, &table_of_plan_house, out, "settings of the day plan", fault);
}

bool log_plan_get(struct log *log, struct log_plan *out, struct fault *fault)
{
	struct query query = query_start(log, PLAN_GET);
	return query_row(&query, &table_of_plan, out, "day plan", fault);
}

bool log_helpers(struct log *log, struct log_helper **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, HELPER_LIST);
	return query_rows(&query, &table_of_helpers, rows, count, fault);
}

bool log_plan_breaks(struct log *log, struct log_plan_break **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_BREAK_LIST);
	return query_rows(&query, &table_of_plan_breaks, rows, count, fault);
}

bool log_plan_runs(struct log *log, struct log_plan_run **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_RUN_LIST);
	return query_rows(&query, &table_of_plan_runs, rows, count, fault);
}

bool log_plan_batches(struct log *log, struct log_plan_batch **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_BATCH_LIST);
	return query_rows(&query, &table_of_plan_batches, rows, count, fault);
}

bool log_plan_blocks(struct log *log, struct log_plan_block **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_BLOCK_LIST);
	return query_rows(&query, &table_of_plan_blocks, rows, count, fault);
}

bool log_plan_said(struct log *log, struct log_plan_said **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_SAID_LIST);
	return query_list(&query, read_said, sizeof(**rows), rows, count, fault);
}

bool log_phase_means(struct log *log, struct log_phase_mean **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PHASE_MEANS);
	return query_list(&query, read_phase_mean, sizeof(**rows), rows, count, fault);
}

/* --- writing ------------------------------------------------------------------- */

static bool run_in_act(struct log *log, struct query *query, struct fault *fault)
{
	return query_run(query, fault) || put_spoilt(log);
}

static bool remove_row(struct log *log, enum statement which, int64_t id, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, which);
	bind_integer(&query, id);
	if (!run_in_act(log, &query, fault))
		return false;
	if (sqlite3_changes(log->db) > 0)
		return true;
	(void)fault_set(fault, FAULT_MISSING, "The log has no such row of the day plan; look again.");
	return put_spoilt(log);
}

static bool clear_rows(struct log *log, enum statement which, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, which);
	return run_in_act(log, &query, fault);
}

bool log_put_plan_house(struct log *log, const struct log_plan_house *row, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, PLAN_HOUSE_UPDATE);
	bind_row(&query, &table_of_plan_house, row);
	bind_integer(&query, 1);
	return run_in_act(log, &query, fault);
}

bool log_put_plan(struct log *log, const struct log_plan *row, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, PLAN_UPDATE);
	bind_row(&query, &table_of_plan, row);
	bind_integer(&query, 1);
	return run_in_act(log, &query, fault);
}

bool log_put_helper(struct log *log, struct log_helper *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? HELPER_INSERT : HELPER_UPDATE);
	bind_row(&query, &table_of_helpers, row);
	return put_row(&query, &row->id, 0, "helper", fault);
}

bool log_put_plan_break(struct log *log, struct log_plan_break *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_BREAK_INSERT : PLAN_BREAK_UPDATE);
	bind_row(&query, &table_of_plan_breaks, row);
	return put_row(&query, &row->id, 0, "break", fault);
}

bool log_put_plan_run(struct log *log, struct log_plan_run *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_RUN_INSERT : PLAN_RUN_UPDATE);
	bind_row(&query, &table_of_plan_runs, row);
	return put_row(&query, &row->id, 0, "planned run", fault);
}

bool log_put_plan_batch(struct log *log, struct log_plan_batch *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_BATCH_INSERT : PLAN_BATCH_UPDATE);
	bind_row(&query, &table_of_plan_batches, row);
	return put_row(&query, &row->id, 0, "planned batch", fault);
}

bool log_put_plan_block(struct log *log, struct log_plan_block *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_BLOCK_INSERT : PLAN_BLOCK_UPDATE);
	bind_row(&query, &table_of_plan_blocks, row);
	return put_row(&query, &row->id, 0, "piece of the accepted plan", fault);
}

bool log_remove_helper(struct log *log, int64_t id, struct fault *fault)
{
	return remove_row(log, HELPER_DELETE, id, fault);
}

bool log_remove_plan_break(struct log *log, int64_t id, struct fault *fault)
{
	return remove_row(log, PLAN_BREAK_DELETE, id, fault);
}

bool log_remove_plan_run(struct log *log, int64_t id, struct fault *fault)
{
	return remove_row(log, PLAN_RUN_DELETE, id, fault);
}

bool log_remove_plan_batch(struct log *log, int64_t id, struct fault *fault)
{
	return remove_row(log, PLAN_BATCH_DELETE, id, fault);
}

bool log_clear_plan_blocks(struct log *log, struct fault *fault)
{
	return clear_rows(log, PLAN_BLOCK_CLEAR, fault);
}

bool log_clear_plan_rows(struct log *log, struct fault *fault)
{
	return clear_rows(log, PLAN_BATCH_CLEAR, fault) && clear_rows(log, PLAN_RUN_CLEAR, fault);
}

/* --- what was said -------------------------------------------------------------- */

bool log_clear_plan_said(struct log *log, struct fault *fault)
{
	return clear_rows(log, PLAN_SAID_CLEAR, fault);
}

static bool put_said(struct log *log, const struct log_plan_said *row, int64_t place, struct fault *fault)
{
	struct query query = query_start(log, PLAN_SAID_INSERT);
	bind_unless(&query, row->plan_run_id, 0);
	bind_unless(&query, row->plan_batch_id, 0);
	bind_unless(&query, row->run_id, 0);
	bind_unless(&query, row->batch_id, 0);
	bind_integer(&query, row->link);
	bind_integer(&query, row->pick);
	bind_integer(&query, row->late);
	bind_unless(&query, row->wait_cap_s, NO_CAP);
	bind_integer(&query, place);
	return run_in_act(log, &query, fault);
}

bool log_put_plan_said(struct log *log, const struct log_plan_said *rows, size_t count, struct fault *fault)
{
	bool ok = log_clear_plan_said(log, fault);
	for (size_t i = 0; ok && i < count; i++)
		ok = put_said(log, &rows[i], (int64_t)i + 1, fault);
	return ok;
}
