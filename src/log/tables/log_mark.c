/* log_mark.c - marks: what was seen or said that bears on a process. */
#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_mark, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER },
	{ IN(load_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL,
	  OUT("load", "one of load and lot is given"), RANGE(1, ID_MOST) },
	{ IN(lot_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL },
	{ .kind = CELL_TEXT, SELECTED("lot.code"), .lack = MAY_LACK, OUT("lot", "") },
	{ IN(phase_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("phase", "it is about; empty: none"), RANGE(1, ID_MOST) },
	{ IN(kind), .kind = CELL_WORD, WORDS(mark),
	  OUT("kind", "stopped, found_wrong, vent_cut, not_as_recipe, vinegar ...") },
	{ IN(amount), .kind = CELL_NUMBER, OUT("amount", "ms, batches or tenths of a percent, by the kind; 0: none"),
	  RANGE(0, ID_MOST) },
	{ IN(words), .kind = CELL_TEXT, OUT("words", "what was said") },
	{ IN(wall_ms), .kind = CELL_INSTANT, OUT("at", "") },
	{ IN(who), .kind = CELL_TEXT, OUT("who", "initials") },
};
/* clang-format on */

const struct log_table table_of_marks = {
	.name = "marks",
	.meaning = "what was seen or said that bears on a process",
	.checked = true,
	COLUMNS(columns),
	.table = "mark",
	.row_size = sizeof(struct log_mark),
	.from = "mark LEFT JOIN lot ON lot.id = mark.lot_id",
	.order = "mark.id",
};

bool log_marks_of_load(struct log *log, int64_t load_id, struct log_mark **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, MARKS_OF_LOAD);
	bind_integer(&query, load_id);
	return query_rows(&query, &table_of_marks, rows, count, fault);
}

bool log_marks_of_lot(struct log *log, int64_t lot_id, struct log_mark **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, MARKS_OF_LOT);
	bind_integer(&query, lot_id);
	return query_rows(&query, &table_of_marks, rows, count, fault);
}

bool log_put_mark(struct log *log, struct log_mark *row, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, row->id == 0 ? MARK_INSERT : MARK_UPDATE);
	bind_row(&query, &table_of_marks, row);
	return put_row(&query, &row->id, 0, "mark", fault);
}
