/* log_run.c - juicer runs. */
#include "log/query/packed.h"
#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/pot.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_run, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("run", "number") },
	{ OF_WORK(struct log_run, station_id, "station_id"), .kind = CELL_NUMBER, OUT("station", "the juicer") },
	{ IN(fruit), .kind = CELL_TEXT, OUT("fruit", "") },
	{ IN(fruit_mg), .kind = CELL_NUMBER, .scale = 3, OUT("fruit_g", "") },
	{ OF_WORK(struct log_run, open, "at_station"), .kind = CELL_FLAG, OUT("open", "it still goes on") },
	{ IN(water_every_ms), .kind = CELL_NUMBER },
	{ .column = "water_wall_ms", MEMBER(struct log_run, water.wall_ms), .kind = CELL_INSTANT, .lack = MAY_BE_NULL },
	{ .column = "water_awake_ms", MEMBER(struct log_run, water.awake_ms), .kind = CELL_AWAKE },
	{ .column = "water_boot", MEMBER(struct log_run, water.boot), .kind = CELL_TEXT },
	{ IN(water_checks), .kind = CELL_NUMBER, OUT("water_checks", "how often the water was seen") },
	{ OF_WORK(struct log_run, opened_wall_ms, "opened_wall_ms"), .kind = CELL_INSTANT, OUT("opened", "") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_run = {
	.name = "runs",
	.meaning = "juicer runs",
	COLUMNS(columns),
	.table = "run",
	.row_size = sizeof(struct log_run),
	.from = "run JOIN work ON work.id = run.id",
	.order = "run.id",
	.holds = "(SELECT lower(trim(fruit)) FROM run WHERE run.id = work_line.ref)",
	.jars = "SELECT j.id FROM juice JOIN juice_use u ON u.juice_id = juice.id "
	        "JOIN jar j ON j.batch_id = u.batch_id WHERE juice.run_id = ?1" DRIED_OUT_OF(
	            "juice CROSS JOIN juice_use u ON u.juice_id = juice.id "
	            "CROSS JOIN batch b ON b.id = u.batch_id") "juice.run_id = ?1",
};

bool log_run_get(struct log *log, int64_t id, struct log_run *out, struct fault *fault)
{
	struct query query = query_start(log, RUN_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_run, out, "such run", fault);
}

bool log_put_run(struct log *log, struct log_run *row, struct fault *fault)
{
	const struct work_row work = { SUBJECT_RUN, row->station_id, row->opened_wall_ms, row->open, "" };
	int64_t id = row->id;
	if (!put_work(log, &work, &id, 0, fault))
		return false;
	struct query query = query_start(log, row->id == 0 ? RUN_INSERT : RUN_UPDATE);
	bind_row(&query, &table_of_run, row);
	return put_row(&query, &row->id, id, "run", fault);
}
