/* log_juice.c - juice measured out, and where it went. */
#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/pot.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_juice, member)
static const struct log_column juice_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("juice", "number") },
	{ IN(run_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("run", "empty: brought in") },
	{ IN(kind), .kind = CELL_TEXT, OUT("kind", "") },
	{ IN(made_ul), .kind = CELL_NUMBER, .scale = 3, OUT("made_ml", "") },
	{ MEMBER(struct log_juice, left_ul), .kind = CELL_NUMBER, .scale = 3, SELECTED("juice_left.left_ul"),
	  OUT("left_ml", "made less used") },
	{ IN(state), .kind = CELL_WORD, WORDS(juice_state), OUT("state", "{}") },
	{ IN(made_wall_ms), .kind = CELL_INSTANT, OUT("made", "") },
	{ IN(state_wall_ms), .kind = CELL_INSTANT, OUT("state_since", "") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_juice = {
	.name = "juice",
	.meaning = "juice measured out",
	COLUMNS(juice_columns),
	.table = "juice",
	.row_size = sizeof(struct log_juice),
	.from = "juice JOIN juice_left ON juice_left.juice_id = juice.id",
	.order = "juice.id",
};

/* clang-format off */
#define IN(member) COLUMN(struct log_juice_use, member)
static const struct log_column use_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("use", "number") },
	{ IN(juice_id), .kind = CELL_NUMBER, OUT("juice", "") },
	{ IN(batch_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("batch", "empty: none") },
	{ IN(ul), .kind = CELL_NUMBER, .scale = 3, OUT("ml", "taken out; negative: put back") },
	{ IN(why), .kind = CELL_WORD, WORDS(juice_why), OUT("why", "{}") },
	{ IN(wall_ms), .kind = CELL_INSTANT, OUT("at", "") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_juice_uses = {
	.name = "juice_uses",
	.meaning = "where it went",
	COLUMNS(use_columns),
	.table = "juice_use",
	.row_size = sizeof(struct log_juice_use),
	.from = "juice_use",
	.order = "juice_use.id",
};

bool log_juice_get(struct log *log, int64_t id, struct log_juice *out, struct fault *fault)
{
	struct query query = query_start(log, JUICE_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_juice, out, "such juice", fault);
}

bool log_juices_left(struct log *log, struct log_juice **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JUICE_LEFT);
	return query_rows(&query, &table_of_juice, rows, count, fault);
}

bool log_juices_of_run(struct log *log, int64_t run_id, struct log_juice **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JUICES_OF_RUN);
	bind_integer(&query, run_id);
	return query_rows(&query, &table_of_juice, rows, count, fault);
}

bool log_juice_uses(struct log *log, int64_t batch_id, struct log_juice_use **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, JUICE_USES_OF_BATCH);
	bind_integer(&query, batch_id);
	return query_rows(&query, &table_of_juice_uses, rows, count, fault);
}

bool log_uses_of_juice(struct log *log, int64_t juice_id, struct log_juice_use **rows, size_t *count,
                       struct fault *fault)
{
	struct query query = query_start(log, USES_OF_JUICE);
	bind_integer(&query, juice_id);
	return query_rows(&query, &table_of_juice_uses, rows, count, fault);
}

bool log_put_juice(struct log *log, struct log_juice *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? JUICE_INSERT : JUICE_UPDATE);
	bind_row(&query, &table_of_juice, row);
	return put_row(&query, &row->id, 0, "juice", fault);
}

bool log_put_juice_use(struct log *log, struct log_juice_use *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? JUICE_USE_INSERT : JUICE_USE_UPDATE);
	bind_row(&query, &table_of_juice_uses, row);
	return put_row(&query, &row->id, 0, "use of juice", fault);
}
