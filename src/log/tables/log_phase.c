/* log_phase.c - phases: what a work goes through. */
#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"

#define STILL_RUNS (-1) /* how long it lasted: stored as null */

/* clang-format off */
#define IN(member) COLUMN(struct log_phase, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("phase", "number"), RANGE(1, ID_MOST) },
	{ IN(work_id), .kind = CELL_NUMBER, OUT("work", "number of the load, run or batch"), RANGE(1, ID_MOST) },
	{ IN(name), .kind = CELL_TEXT, OUT("name", "come_up, vent, hold ...") },
	{ .column = "began_wall_ms", MEMBER(struct log_phase, began.wall_ms), .kind = CELL_INSTANT, OUT("began", "") },
	{ .column = "began_awake_ms", MEMBER(struct log_phase, began.awake_ms), .kind = CELL_AWAKE },
	{ .column = "began_boot", MEMBER(struct log_phase, began.boot), .kind = CELL_TEXT },
	{ IN(required_ms), .kind = CELL_NUMBER, .scale = 3,
	  OUT("required_s", "seconds; 0: no clock, waits for a person"), RANGE(0, INT64_MAX) },
	{ IN(acknowledged_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("acknowledged", "the alarm was heard") },
	{ IN(ended_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("ended", "empty: it goes on") },
	{ IN(ended_why), .kind = CELL_WORD, WORDS(phase_end), .lack = MAY_BE_NULL, OUT("ended_why", "{}") },
	{ IN(lasted_ms), .kind = CELL_NUMBER, .scale = 3, .lack = MAY_BE_NULL, .none = STILL_RUNS,
	  SELECTED("coalesce(phase.lasted_ms, max(0, phase.ended_wall_ms - phase.began_wall_ms))"),
	  OUT("lasted_s", "seconds, by the clock that nobody sets"), RANGE(0, INT64_MAX) },
};
/* clang-format on */

const struct log_table table_of_phases = {
	.name = "phases",
	.meaning = "what loads, runs and batches went through",
	.checked = true,
	COLUMNS(columns),
	.table = "phase",
	.row_size = sizeof(struct log_phase),
	.from = "phase",
	.order = "phase.id",
};

static void read_phase(struct query *query, void *into)
{
	struct log_phase *phase = into;
	take_row(query, &table_of_phases, phase);
	if (phase->lasted_ms == STILL_RUNS)
		phase->lasted_ms = 0;
}

static bool phase_query(struct log *log, enum statement which, struct log_subject work, struct query *query,
                        struct fault *fault)
{
	if (work.kind < SUBJECT_LOAD || work.kind >= SUBJECT_KIND_COUNT)
		return fault_set(fault, FAULT_REFUSED, "Only work has phases. This is a bug in the program.");
	*query = query_start(log, which);
	bind_integer(query, work.id);
	return true;
}

bool log_phase_running(struct log *log, struct log_subject work, struct log_phase *out, struct fault *fault)
{
	struct query query;
	return phase_query(log, PHASE_OPEN, work, &query, fault) &&
	       query_get(&query, read_phase, out, "phase running there", fault);
}

bool log_phases(struct log *log, struct log_subject work, struct log_phase **rows, size_t *count, struct fault *fault)
{
	struct query query;
	*rows = NULL;
	*count = 0;
	return phase_query(log, PHASE_LIST, work, &query, fault) &&
	       query_list(&query, read_phase, sizeof(**rows), rows, count, fault);
}

bool log_put_phase(struct log *log, struct log_phase *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? PHASE_INSERT : PHASE_UPDATE);
	struct log_phase stored = *row;
	if (stored.ended_wall_ms == 0)
		stored.lasted_ms = STILL_RUNS;
	bind_row(&query, &table_of_phases, &stored);
	return put_row(&query, &row->id, 0, "phase", fault);
}
