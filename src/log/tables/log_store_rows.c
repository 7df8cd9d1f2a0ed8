/* log_store_rows.c - before the day: ledgers, what one buys, what fruit yields. */
#include <string.h>

#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

static void read_sold_by(struct query *query, void *into)
{
	struct log_sold_by *sold = into;
	memset(sold, 0, sizeof(*sold));
	sold->kind = (enum supply_kind)take_word(query, &words_of_supply);
	TAKE_TEXT(query, sold->size);
	sold->amount = take_integer(query);
}

static void read_fruit_yield(struct query *query, void *into)
{
	struct log_fruit_yield *yield = into;
	memset(yield, 0, sizeof(*yield));
	TAKE_TEXT(query, yield->fruit);
	yield->runs.runs = take_integer(query);
	yield->runs.fruit_mg = take_integer(query);
	yield->runs.juice_ul = take_integer(query);
	yield->runs.yield_sum = take_integer(query);
	yield->runs.yield_square_sum = take_integer(query);
}

static void read_lid_use(struct query *query, void *into)
{
	struct log_lid_use *use = into;
	memset(use, 0, sizeof(*use));
	TAKE_TEXT(query, use->lot);
	TAKE_TEXT(query, use->product);
	use->jars = take_int(query);
	use->made_wall_ms = take_wall(query);
}

bool log_sold_by(struct log *log, struct log_sold_by **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, SOLD_BY_LIST);
	return query_list(&query, read_sold_by, sizeof(**rows), rows, count, fault);
}

bool log_fruit_yields(struct log *log, struct log_fruit_yield **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, FRUIT_YIELDS);
	return query_list(&query, read_fruit_yield, sizeof(**rows), rows, count, fault);
}

bool log_lid_uses(struct log *log, int64_t lid_box_id, struct log_lid_use **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, LID_USES);
	bind_integer(&query, lid_box_id);
	return query_list(&query, read_lid_use, sizeof(**rows), rows, count, fault);
}

bool log_put_sold_by(struct log *log, const struct log_sold_by *row, struct fault *fault)
{
	if (!act_is_open(log, fault))
		return false;
	struct query query = query_start(log, row->amount == 0 ? SOLD_BY_CLEAR : SOLD_BY_PUT);
	bind_name(&query, supply_name(row->kind));
	BIND_TEXT(&query, row->size);
	if (row->amount != 0)
		bind_integer(&query, row->amount);
	return query_run(&query, fault) || put_spoilt(log);
}
