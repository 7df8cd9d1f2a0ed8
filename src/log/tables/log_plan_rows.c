/*
 * log_plan_rows.c - the day plan: who helps, meals, what shall be made, how it was
 * accepted; how long phases last here.
 */
#include <string.h>

#include "log/query/query.h"

#define ANY_TIME (-1) /* stored as null */

static void read_plan_house(struct query *query, void *into)
{
	struct log_plan_house *house = into;
	memset(house, 0, sizeof(*house));
	house->burners = take_int(query);
	house->fillers = take_int(query);
	house->cooling_jars = (int)take_or(query, COOLING_NO_LIMIT);
	house->clean_minutes = take_int(query);
	house->charge_mg = take_integer(query);
	house->late_minutes = take_int(query);
	house->meals_in_turns = take_int(query) != 0;
}

static void read_helper(struct query *query, void *into)
{
	struct log_helper *helper = into;
	memset(helper, 0, sizeof(*helper));
	helper->id = take_integer(query);
	TAKE_TEXT(query, helper->initials);
	helper->from_minutes = (int)take_or(query, ANY_TIME);
}

static void read_break(struct query *query, void *into)
{
	struct log_plan_break *rest = into;
	memset(rest, 0, sizeof(*rest));
	rest->id = take_integer(query);
	rest->start_minutes = take_int(query);
	rest->end_minutes = take_int(query);
}

static void read_plan(struct query *query, void *into)
{
	struct log_plan *plan = into;
	memset(plan, 0, sizeof(*plan));
	plan->day_wall_ms = take_wall(query);
	plan->start_minutes = (int)take_or(query, ANY_TIME);
	plan->accepted_wall_ms = take_wall(query);
	plan->accepted_finish_wall_ms = take_wall(query);
	plan->finished_wall_ms = take_wall(query);
}

static void read_plan_run(struct query *query, void *into)
{
	struct log_plan_run *run = into;
	memset(run, 0, sizeof(*run));
	run->id = take_integer(query);
	TAKE_TEXT(query, run->fruit);
	run->fruit_mg = take_integer(query);
	run->ready_minutes = (int)take_or(query, ANY_TIME);
	run->run_id = take_integer(query);
}

static void read_plan_batch(struct query *query, void *into)
{
	struct log_plan_batch *batch = into;
	memset(batch, 0, sizeof(*batch));
	batch->id = take_integer(query);
	TAKE_TEXT(query, batch->recipe);
	TAKE_TEXT(query, batch->pack);
	TAKE_TEXT(query, batch->jar);
	batch->multiple = take_int(query);
	batch->ready_minutes = (int)take_or(query, ANY_TIME);
	batch->after_runs = (int)take_or(query, PLAN_RUNS_AS_NEEDED);
	batch->batch_id = take_integer(query);
}

static void read_block(struct query *query, void *into)
{
	struct log_plan_block *block = into;
	memset(block, 0, sizeof(*block));
	block->id = take_integer(query);
	block->station_id = take_integer(query);
	block->plan_run_id = take_integer(query);
	block->plan_batch_id = take_integer(query);
	block->jars = take_int(query);
	block->start_wall_ms = take_wall(query);
	block->end_wall_ms = take_wall(query);
}

static void read_phase_mean(struct query *query, void *into)
{
	struct log_phase_mean *mean = into;
	memset(mean, 0, sizeof(*mean));
	mean->kind = (enum station_kind)take_word(query, &words_of_station_kind);
	TAKE_TEXT(query, mean->name);
	mean->count = take_integer(query);
	mean->sum_ms = take_integer(query);
}

bool log_plan_house_get(struct log *log, struct log_plan_house *out, struct fault *fault)
{
	struct query query = query_start(log, PLAN_HOUSE_GET);
	return query_get(&query, read_plan_house, out, "settings of the day plan", fault);
}

bool log_plan_get(struct log *log, struct log_plan *out, struct fault *fault)
{
	struct query query = query_start(log, PLAN_GET);
	return query_get(&query, read_plan, out, "day plan", fault);
}

bool log_helpers(struct log *log, struct log_helper **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, HELPER_LIST);
	void *list;
	bool ok = query_list(&query, read_helper, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_plan_breaks(struct log *log, struct log_plan_break **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_BREAK_LIST);
	void *list;
	bool ok = query_list(&query, read_break, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_plan_runs(struct log *log, struct log_plan_run **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_RUN_LIST);
	void *list;
	bool ok = query_list(&query, read_plan_run, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_plan_batches(struct log *log, struct log_plan_batch **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_BATCH_LIST);
	void *list;
	bool ok = query_list(&query, read_plan_batch, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_plan_blocks(struct log *log, struct log_plan_block **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PLAN_BLOCK_LIST);
	void *list;
	bool ok = query_list(&query, read_block, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
}

bool log_phase_means(struct log *log, struct log_phase_mean **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, PHASE_MEANS);
	void *list;
	bool ok = query_list(&query, read_phase_mean, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
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
	bind_integer(&query, row->burners);
	bind_integer(&query, row->fillers);
	bind_unless(&query, row->cooling_jars, COOLING_NO_LIMIT);
	bind_integer(&query, row->clean_minutes);
	bind_integer(&query, row->charge_mg);
	bind_integer(&query, row->late_minutes);
	bind_integer(&query, row->meals_in_turns);
	return run_in_act(log, &query, fault);
}

bool log_put_plan(struct log *log, const struct log_plan *row, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, PLAN_UPDATE);
	bind_unless(&query, row->day_wall_ms, 0);
	bind_unless(&query, row->start_minutes, ANY_TIME);
	bind_unless(&query, row->accepted_wall_ms, 0);
	bind_unless(&query, row->accepted_finish_wall_ms, 0);
	bind_unless(&query, row->finished_wall_ms, 0);
	return run_in_act(log, &query, fault);
}

bool log_put_helper(struct log *log, struct log_helper *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? HELPER_INSERT : HELPER_UPDATE);
	BIND_TEXT(&query, row->initials);
	bind_unless(&query, row->from_minutes, ANY_TIME);
	return put_row(&query, &row->id, 0, "helper", fault);
}

bool log_put_plan_break(struct log *log, struct log_plan_break *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_BREAK_INSERT : PLAN_BREAK_UPDATE);
	bind_integer(&query, row->start_minutes);
	bind_integer(&query, row->end_minutes);
	return put_row(&query, &row->id, 0, "break", fault);
}

bool log_put_plan_run(struct log *log, struct log_plan_run *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_RUN_INSERT : PLAN_RUN_UPDATE);
	BIND_TEXT(&query, row->fruit);
	bind_integer(&query, row->fruit_mg);
	bind_unless(&query, row->ready_minutes, ANY_TIME);
	bind_unless(&query, row->run_id, 0);
	return put_row(&query, &row->id, 0, "planned run", fault);
}

bool log_put_plan_batch(struct log *log, struct log_plan_batch *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_BATCH_INSERT : PLAN_BATCH_UPDATE);
	BIND_TEXT(&query, row->recipe);
	BIND_TEXT(&query, row->pack);
	BIND_TEXT(&query, row->jar);
	bind_integer(&query, row->multiple);
	bind_unless(&query, row->ready_minutes, ANY_TIME);
	bind_unless(&query, row->after_runs, PLAN_RUNS_AS_NEEDED);
	bind_unless(&query, row->batch_id, 0);
	return put_row(&query, &row->id, 0, "planned batch", fault);
}

bool log_put_plan_block(struct log *log, struct log_plan_block *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PLAN_BLOCK_INSERT : PLAN_BLOCK_UPDATE);
	bind_integer(&query, row->station_id);
	bind_unless(&query, row->plan_run_id, 0);
	bind_unless(&query, row->plan_batch_id, 0);
	bind_integer(&query, row->jars);
	bind_integer(&query, row->start_wall_ms);
	bind_integer(&query, row->end_wall_ms);
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
