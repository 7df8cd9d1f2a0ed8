/* log_drying.c - what is dried. */
#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/dryer.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_drying, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("drying", "number"), RANGE(1, ID_MOST) },
	{ OF_WORK(struct log_drying, station_id, "station_id"), .kind = CELL_NUMBER },
	{ .kind = CELL_TEXT, SELECTED("(SELECT name FROM station WHERE station.id = work.station_id)"),
	  OUT("station", "name of the dryer") },
	{ IN(lot_id), .kind = CELL_NUMBER },
	{ .kind = CELL_TEXT, SELECTED("(SELECT code FROM lot WHERE lot.id = drying.lot_id)"), OUT("lot", "") },
	{ IN(class), .kind = CELL_WORD, WORDS(drying_class), OUT("class", "{}") },
	{ IN(fruit_mg), .kind = CELL_NUMBER, .scale = 3, OUT("fruit_g", "as it was weighed; 0: puree"), RANGE(0, INT64_MAX) },
	{ IN(puree_ul), .kind = CELL_NUMBER, .scale = 3, OUT("puree_ml", "spread for leather; 0: fruit by weight"), RANGE(0, INT64_MAX) },
	{ IN(trays), .kind = CELL_NUMBER, OUT("trays", "0: not noted"), RANGE(0, 60) },
	{ IN(low_ms), .kind = CELL_NUMBER, .scale = 3, OUT("low_s", "until the first test for dryness; 0: not noted"), RANGE(0, INT64_MAX) },
	{ IN(high_ms), .kind = CELL_NUMBER, .scale = 3, OUT("high_s", "the longest that it is said to take"), RANGE(0, INT64_MAX) },
	{ IN(own_hours), .kind = CELL_FLAG, OUT("own_hours", "published nowhere: the house gave them") },
	{ IN(test), .kind = CELL_TEXT, OUT("test", "for dryness") },
	{ IN(source), .kind = CELL_TEXT, OUT("source", "") },
	{ .column = "look_wall_ms", MEMBER(struct log_drying, look.wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL,
	  OUT("looked", "the last look or shake; empty: none") },
	{ .column = "look_awake_ms", MEMBER(struct log_drying, look.awake_ms), .kind = CELL_AWAKE },
	{ .column = "look_boot", MEMBER(struct log_drying, look.boot), .kind = CELL_TEXT },
	{ IN(looks), .kind = CELL_NUMBER, OUT("looks", "how often its trays were seen and turned"), RANGE(0, 100000) },
	{ IN(shakes), .kind = CELL_NUMBER, OUT("shakes", "how often it was shaken while it was conditioned"), RANGE(0, 100000) },
	{ IN(open), .kind = CELL_FLAG, OUT("open", "not packed yet") },
	{ OF_WORK(struct log_drying, at_station, "at_station"), .kind = CELL_FLAG, OUT("at_station", "on its trays") },
	{ IN(packages), .kind = CELL_NUMBER, OUT("packages", "that were packed"), RANGE(0, 99) },
	{ OF_WORK(struct log_drying, opened_wall_ms, "opened_wall_ms"), .kind = CELL_INSTANT, OUT("opened", "") },
	{ IN(batch_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL },
	{ IN(pot_lot_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL },
	{ .kind = CELL_TEXT,
	  SELECTED("(SELECT code FROM lot WHERE lot.id = coalesce(pot_lot_id, "
	           "(SELECT batch.lot_id FROM batch WHERE batch.id = batch_id)))"),
	  .lack = MAY_LACK, OUT("pot_lot", "lot of the pot it was taken from while that was filled; empty: none") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_drying = {
	.name = "dryings",
	.meaning = "what was dried",
	.checked = true,
	COLUMNS(columns),
	.table = "drying",
	.row_size = sizeof(struct log_drying),
	.from = "drying JOIN work ON work.id = drying.id",
	.order = "drying.id",
	.holds = "(SELECT product FROM drying JOIN lot ON lot.id = lot_id WHERE drying.id = work_line.ref)",
	.lots = "(SELECT code FROM drying JOIN lot ON lot.id = lot_id WHERE drying.id = work_line.ref)",
	.open = "open = 1",
	.jars = "SELECT id FROM jar WHERE drying_id = ?1",
};

bool log_drying_get(struct log *log, int64_t id, struct log_drying *out, struct fault *fault)
{
	struct query query = query_start(log, DRYING_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_drying, out, "such drying", fault);
}

bool log_batch_trayed(struct log *log, int64_t batch_id, int64_t *ul, struct fault *fault)
{
	struct query query = query_start(log, BATCH_TRAYED);
	bind_integer(&query, batch_id);
	return query_integer(&query, ul, fault);
}

bool log_dryings_of_batch(struct log *log, int64_t batch_id, struct log_drying **rows, size_t *count,
                          struct fault *fault)
{
	struct query query = query_start(log, DRYINGS_OF_BATCH);
	bind_integer(&query, batch_id);
	return query_rows(&query, &table_of_drying, rows, count, fault);
}

bool log_put_drying(struct log *log, struct log_drying *row, struct fault *fault)
{
	const struct work_row work = { SUBJECT_DRYING, row->station_id, row->opened_wall_ms, row->at_station, "" };
	int64_t id = row->id;
	if (!put_work(log, &work, &id, 0, fault))
		return false;
	struct query query = query_start(log, row->id == 0 ? DRYING_INSERT : DRYING_UPDATE);
	bind_row(&query, &table_of_drying, row);
	return put_row(&query, &row->id, id, "drying", fault);
}
