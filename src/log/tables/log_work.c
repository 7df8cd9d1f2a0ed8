/* log_work.c - the rows of a kind of work by that kind: the descriptor of each, and where it is looked for. */
#include "log/tables/work.h"

#include <assert.h>

#include "log/query/query.h"
#include "log/tables/columns.h"

struct work_table {
	const struct log_table *table;
	enum statement open;
	enum statement between;
};

#define WORK_TABLE(TAG, word) [SUBJECT_##TAG] = { &table_of_##word, TAG##_OPEN, TAG##_BETWEEN },
static const struct work_table works[SUBJECT_KIND_COUNT] = { EACH_WORK(WORK_TABLE) };

static const struct work_table *work_of(enum subject_kind kind)
{
	assert(kind < SUBJECT_KIND_COUNT && works[kind].table != NULL);
	return &works[kind];
}

size_t log_works_row_size(enum subject_kind kind)
{
	return work_of(kind)->table->row_size;
}

bool log_works_open(struct log *log, enum subject_kind kind, void *rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, work_of(kind)->open);
	return query_rows(&query, work_of(kind)->table, rows, count, fault);
}

bool log_works_between(struct log *log, enum subject_kind kind, int64_t from_wall_ms, int64_t to_wall_ms, void *rows,
                       size_t *count, struct fault *fault)
{
	struct query query = query_start(log, work_of(kind)->between);
	bind_integer(&query, from_wall_ms);
	bind_integer(&query, to_wall_ms);
	return query_rows(&query, work_of(kind)->table, rows, count, fault);
}
