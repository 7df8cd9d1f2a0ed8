/* log_phase.c - phases: what loads, runs and batches go through. */
#include <assert.h>

#include "log/query/query.h"
#include "log/tables/columns.h"

#define STILL_RUNS (-1) /* how long it lasted: stored as null */

/* clang-format off */
#define IN(member) COLUMN(struct log_phase, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("phase", "number"), RANGE(1, ID_MOST) },
	{ IN(load_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL,
	  OUT("load", "one of load, run and batch is given"), RANGE(1, ID_MOST) },
	{ IN(run_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("run", ""), RANGE(1, ID_MOST) },
	{ IN(batch_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("batch", ""), RANGE(1, ID_MOST) },
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

/* Which of three statements, by the kind of the subject. */
static bool phase_query(struct log *log, struct log_subject subject, const enum statement which[3], struct query *query,
                        struct fault *fault)
{
	if (subject.kind < SUBJECT_LOAD || subject.kind > SUBJECT_BATCH)
		return fault_set(fault, FAULT_REFUSED,
		                 "Only a load, a run or a batch has phases. This is a "
		                 "mistake in the program.");
	*query = query_start(log, which[subject.kind - SUBJECT_LOAD]);
	bind_integer(query, subject.id);
	return true;
}
static_assert(SUBJECT_RUN == SUBJECT_LOAD + 1 && SUBJECT_BATCH == SUBJECT_LOAD + 2,
              "the statements of phases are in another order");

bool log_phase_running(struct log *log, struct log_subject subject, struct log_phase *out, struct fault *fault)
{
	static const enum statement which[] = { PHASE_OPEN_OF_LOAD, PHASE_OPEN_OF_RUN, PHASE_OPEN_OF_BATCH };
	struct query query;
	return phase_query(log, subject, which, &query, fault) &&
	       query_get(&query, read_phase, out, "phase running there", fault);
}

bool log_phases(struct log *log, struct log_subject subject, struct log_phase **rows, size_t *count,
                struct fault *fault)
{
	static const enum statement which[] = { PHASES_OF_LOAD, PHASES_OF_RUN, PHASES_OF_BATCH };
	struct query query;
	void *list = NULL;
	*count = 0;
	bool ok = phase_query(log, subject, which, &query, fault) &&
	          query_list(&query, read_phase, sizeof(**rows), &list, count, fault);
	*rows = list;
	return ok;
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
