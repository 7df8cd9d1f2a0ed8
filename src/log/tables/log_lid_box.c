/* log_lid_box.c - boxes of flat lids. */
#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_lid_box, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("box", "number") },
	{ IN(label), .kind = CELL_TEXT, OUT("label", "") },
	{ IN(bought_wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL, OUT("bought", "empty: not noted") },
	{ IN(lids), .kind = CELL_NUMBER, OUT("lids", "in it when it was new") },
	{ MEMBER(struct log_lid_box, used), .kind = CELL_NUMBER,
	  SELECTED("(SELECT used FROM lid_box_use WHERE lid_box_id = lid_box.id)"), OUT("used", "jars that carry one") },
	{ IN(retired), .kind = CELL_FLAG, OUT("retired", "") },
};
/* clang-format on */

const struct log_table table_of_lid_boxes = {
	.name = "lid_boxes",
	.meaning = "boxes of flat lids",
	COLUMNS(columns),
	.table = "lid_box",
	.row_size = sizeof(struct log_lid_box),
	.from = "lid_box",
	.order = "lid_box.id",
};

bool log_lid_boxes(struct log *log, struct log_lid_box **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LID_BOX_LIST);
	return query_rows(&query, &table_of_lid_boxes, rows, count, fault);
}

bool log_lid_boxes_all(struct log *log, struct log_lid_box **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LID_BOX_ALL);
	return query_rows(&query, &table_of_lid_boxes, rows, count, fault);
}

bool log_lid_box_get(struct log *log, int64_t id, struct log_lid_box *out, struct fault *fault)
{
	struct query query = query_start(log, LID_BOX_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_lid_boxes, out, "such lid box", fault);
}

bool log_put_lid_box(struct log *log, struct log_lid_box *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? LID_BOX_INSERT : LID_BOX_UPDATE);
	bind_row(&query, &table_of_lid_boxes, row);
	return put_row(&query, &row->id, 0, "lid box", fault);
}
