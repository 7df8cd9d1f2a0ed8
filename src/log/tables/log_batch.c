/* log_batch.c - pots of a recipe, and what went into them. */
#include "log/query/judged.h"
#include "log/query/packed.h"
#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/pot.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_batch, member)
static const struct log_column batch_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("batch", "number") },
	{ OF_WORK(struct log_batch, station_id, "station_id"), .kind = CELL_NUMBER, OUT("station", "the pot") },
	{ IN(lot_id), .kind = CELL_NUMBER },
	{ .kind = CELL_TEXT, SELECTED("lot.code"), OUT("lot", "") },
	{ IN(recipe), .kind = CELL_TEXT, OUT("recipe", "") },
	{ IN(multiple), .kind = CELL_NUMBER, OUT("multiple", "times the recipe") },
	{ IN(boil_hold_s), .kind = CELL_NUMBER, OUT("boil_hold_s", "seconds of full boil") },
	{ IN(headspace_thou), .kind = CELL_NUMBER, .scale = 3, OUT("headspace_in", "inches") },
	{ IN(source), .kind = CELL_TEXT, OUT("source", "of the recipe") },
	{ IN(published), .kind = CELL_FLAG, OUT("published", "has a published process") },
	{ IN(ticks), .kind = CELL_BITS },
	{ IN(warm_jars), .kind = CELL_FLAG, OUT("warm_jars", "were ticked") },
	{ OF_WORK(struct log_batch, open, "at_station"), .kind = CELL_FLAG, OUT("open", "still in the pot") },
	{ IN(jar), .kind = CELL_TEXT, OUT("jar", "size it was meant for") },
	{ MEMBER(struct log_batch, verdict), .kind = CELL_WORD, WORDS(verdict),
	  SELECTED(JUDGED("batch", "batch.id", "verdict", "'open'")), OUT("verdict", "open, not_valid, unknown") },
	{ MEMBER(struct log_batch, verdict_why), .kind = CELL_TEXT,
	  SELECTED(JUDGED("batch", "batch.id", "why", "''")), OUT("verdict_why", "") },
	{ OF_WORK(struct log_batch, note, "note"), .kind = CELL_TEXT, OUT("note", "") },
	{ OF_WORK(struct log_batch, opened_wall_ms, "opened_wall_ms"), .kind = CELL_INSTANT, OUT("opened", "") },
	{ IN(sheet_minutes), .kind = CELL_NUMBER,
	  OUT("sheet_minutes", "of process by the sheet of its pectin; 0: it prints none") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_batch = {
	.name = "batches",
	.meaning = "pots of a recipe",
	COLUMNS(batch_columns),
	.table = "batch",
	.row_size = sizeof(struct log_batch),
	.from = "batch JOIN work ON work.id = batch.id JOIN lot ON lot.id = batch.lot_id",
	.order = "batch.id",
	.holds = "(SELECT product FROM batch JOIN lot ON lot.id = lot_id WHERE batch.id = work_line.ref)",
	.lots = "(SELECT code FROM batch JOIN lot ON lot.id = lot_id WHERE batch.id = work_line.ref)",
	.jars = "SELECT id FROM jar WHERE batch_id = ?1" DRIED_OUT_OF("batch b") "b.id = ?1",
};

/* clang-format off */
#define IN(member) COLUMN(struct log_batch_amount, member)
static const struct log_column amount_columns[] = {
	{ IN(id), .kind = CELL_NUMBER },
	{ IN(batch_id), .kind = CELL_NUMBER, OUT("batch", "") },
	{ IN(place), .kind = CELL_NUMBER, OUT("place", "from 1") },
	{ IN(ingredient), .kind = CELL_TEXT, OUT("ingredient", "") },
	{ IN(supply), .kind = CELL_WORD, WORDS(supply), OUT("supply", "kind it was taken from") },
	{ IN(measure), .kind = CELL_WORD, WORDS(measure) },
	{ .kind = CELL_TEXT, SELECTED(UNIT_OF_MEASURE), OUT("unit", "g, ml or each") },
	{ IN(wanted), .kind = CELL_NUMBER },
	{ .kind = CELL_NUMBER, .scale = 3, SELECTED("wanted * " FACTOR_OF_MEASURE), OUT("wanted", "by the recipe") },
	{ IN(used), .kind = CELL_NUMBER },
	{ .kind = CELL_NUMBER, .scale = 3, SELECTED("used * " FACTOR_OF_MEASURE), OUT("used", "what went in") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_batch_amounts = {
	.name = "batch_amounts",
	.meaning = "what went into them",
	COLUMNS(amount_columns),
	.table = "batch_amount",
	.row_size = sizeof(struct log_batch_amount),
	.from = "batch_amount",
	.order = "batch_amount.batch_id, batch_amount.place",
};

bool log_batch_get(struct log *log, int64_t id, struct log_batch *out, struct fault *fault)
{
	struct query query = query_start(log, BATCH_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_batch, out, "such batch", fault);
}

bool log_batch_amounts(struct log *log, int64_t batch_id, struct log_batch_amount **rows, size_t *count,
                       struct fault *fault)
{
	struct query query = query_start(log, BATCH_AMOUNTS);
	bind_integer(&query, batch_id);
	return query_rows(&query, &table_of_batch_amounts, rows, count, fault);
}

bool log_put_batch(struct log *log, struct log_batch *row, struct fault *fault)
{
	const struct work_row work = { SUBJECT_BATCH, row->station_id, row->opened_wall_ms, row->open, row->note };
	int64_t id = row->id;
	if (!put_work(log, &work, &id, 0, fault))
		return false;
	struct query query = query_start(log, row->id == 0 ? BATCH_INSERT : BATCH_UPDATE);
	bind_row(&query, &table_of_batch, row);
	return put_row(&query, &row->id, id, "batch", fault);
}

bool log_put_batch_amount(struct log *log, struct log_batch_amount *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? BATCH_AMOUNT_INSERT : BATCH_AMOUNT_UPDATE);
	bind_row(&query, &table_of_batch_amounts, row);
	return put_row(&query, &row->id, 0, "amount of a batch", fault);
}
