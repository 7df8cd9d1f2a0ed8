/* log_lot.c - lots: everything that bears one code. */
#include <stdlib.h>
#include <string.h>

#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"
#include "log/tables/pantry.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_lot, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER },
	{ IN(code), .kind = CELL_TEXT, OUT("lot", "code on the labels") },
	{ IN(product), .kind = CELL_TEXT, OUT("product", "what the label says") },
	{ IN(food), .kind = CELL_TEXT, OUT("food", "of the process tables; may be empty") },
	{ IN(pack), .kind = CELL_TEXT, OUT("pack", "") },
	{ IN(acidity), .kind = CELL_WORD, WORDS(acidity), OUT("acidity", "{}") },
	{ IN(made_wall_ms), .kind = CELL_INSTANT, OUT("made", "") },
	{ IN(origin), .kind = CELL_WORD, WORDS(origin), .lack = MAY_BE_NULL,
	  OUT("origin", "whose recipe: {}; empty: not said") },
	{ IN(origin_words), .kind = CELL_TEXT, OUT("origin_words", "what was said of an own recipe") },
};
/* clang-format on */

const struct log_table table_of_lots = {
	.name = "lots",
	.meaning = "everything that bears one code",
	.checked = true,
	COLUMNS(columns),
	.table = "lot",
	.row_size = sizeof(struct log_lot),
	.from = "lot",
	.order = "code",
};

bool log_lot_get(struct log *log, int64_t id, struct log_lot *out, struct fault *fault)
{
	struct query query = query_start(log, LOT_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_lots, out, "such lot", fault);
}

bool log_lot_made(struct log *log, const char *product, int64_t made_wall_ms, struct log_lot *out, struct fault *fault)
{
	struct query query = query_start(log, LOT_MADE);
	bind_text(&query, product, NAME_MAX_BYTES);
	bind_integer(&query, made_wall_ms);
	return query_row(&query, &table_of_lots, out, "such lot", fault);
}

bool log_lot_named(struct log *log, const char *code, struct log_lot *out, struct fault *fault)
{
	struct query query = query_start(log, LOT_NAMED);
	bind_text(&query, code, NAME_MAX_BYTES);
	return query_row(&query, &table_of_lots, out, "such lot", fault);
}

static void read_lot_kept(struct query *query, void *into)
{
	struct log_lot_kept *kept = into;
	take_row(query, &table_of_lots, &kept->lot);
	kept->jars = take_integer(query);
}

bool log_lots_kept(struct log *log, struct log_lot_kept **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LOTS_KEPT);
	return query_list(&query, read_lot_kept, sizeof(**rows), rows, count, fault);
}

/* What stands behind the prefix of a lot code, as in 2026-09-14 -B3. */
static void read_lot_number(struct query *query, void *into)
{
	int64_t *number = into;
	const char *tail = take_name(query);
	tail += strcspn(tail, "0123456789");
	int64_t value = 0;
	for (; *tail >= '0' && *tail <= '9' && value < 1000000; tail++)
		value = value * 10 + (*tail - '0');
	*number = value;
}

bool log_next_lot_number(struct log *log, const char *prefix, int *number, struct fault *fault)
{
	struct query query = query_start(log, LOT_CODES);
	bind_text(&query, prefix, NAME_MAX_BYTES);
	void *rows;
	size_t count;
	if (!query_list(&query, read_lot_number, sizeof(int64_t), &rows, &count, fault))
		return false;
	const int64_t *numbers = rows;
	int64_t highest = 0;
	for (size_t i = 0; i < count; i++)
		if (numbers[i] > highest)
			highest = numbers[i];
	free(rows);
	*number = (int)highest + 1;
	return true;
}

bool log_put_lot(struct log *log, struct log_lot *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? LOT_INSERT : LOT_UPDATE);
	bind_row(&query, &table_of_lots, row);
	return put_row(&query, &row->id, 0, "lot", fault);
}
