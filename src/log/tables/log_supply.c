/* log_supply.c - supplies and their ledgers. */
#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/stock.h"

/* The unit a supply is counted in (engine/recipe/recipe.h, supply_measure), and the factor
 * that brings pieces to the same three decimals as g and ml. */
#define UNIT \
	"CASE WHEN supply.kind IN ('jar', 'band') THEN 'each' " \
	"WHEN supply.kind IN ('juice', 'lemon_juice', 'vinegar', 'calcium_solution') THEN 'ml' ELSE 'g' END"
#define FACTOR "CASE WHEN supply.kind IN ('jar', 'band') THEN 1000 ELSE 1 END"

/* clang-format off */
#define IN(member) COLUMN(struct log_supply, member)
static const struct log_column supply_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("supply", "number") },
	{ IN(kind), .kind = CELL_WORD, WORDS(supply), OUT("kind", "sugar, jar, fruit ...") },
	{ IN(size), .kind = CELL_TEXT, OUT("size", "of jars; else empty") },
	{ .kind = CELL_TEXT, SELECTED(UNIT), OUT("unit", "g, ml or each") },
	{ MEMBER(struct log_supply, stock), .kind = CELL_NUMBER, SELECTED("supply_stock.stock") },
	{ .kind = CELL_NUMBER, .scale = 3, SELECTED("supply_stock.stock * " FACTOR), OUT("stock", "sum of its moves") },
	{ .kind = CELL_NUMBER, .scale = 3, SELECTED("sold_by.amount * " FACTOR), .lack = MAY_LACK,
	  OUT("sold_by", "what you buy at a time; empty: loose") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_supplies = {
	.name = "supplies",
	.meaning = "what a ledger is kept of",
	COLUMNS(supply_columns),
	.table = "supply",
	.row_size = sizeof(struct log_supply),
	.from = "supply JOIN supply_stock ON supply_stock.supply_id = supply.id "
	        "LEFT JOIN sold_by ON sold_by.kind = supply.kind AND sold_by.size = supply.size",
	.order = "supply.id",
};

/* clang-format off */
#define IN(member) COLUMN(struct log_supply_move, member)
static const struct log_column move_columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("move", "number") },
	{ IN(supply_id), .kind = CELL_NUMBER, OUT("supply", "") },
	{ .kind = CELL_TEXT, SELECTED(UNIT), OUT("unit", "g, ml or each") },
	{ IN(amount), .kind = CELL_NUMBER },
	{ .kind = CELL_NUMBER, .scale = 3, SELECTED("supply_move.amount * " FACTOR), OUT("amount", "negative: taken out") },
	{ IN(why), .kind = CELL_WORD, WORDS(supply_why), OUT("why", "receipt, use or correction") },
	{ IN(batch_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("batch", "empty: about none") },
	{ IN(load_id), .kind = CELL_NUMBER, .lack = MAY_BE_NULL, OUT("load", "empty: about none") },
	{ IN(note), .kind = CELL_TEXT, OUT("note", "") },
	{ IN(wall_ms), .kind = CELL_INSTANT, OUT("at", "") },
	{ IN(who), .kind = CELL_TEXT, OUT("who", "initials") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_supply_moves = {
	.name = "supply_moves",
	.meaning = "the ledgers",
	COLUMNS(move_columns),
	.table = "supply_move",
	.row_size = sizeof(struct log_supply_move),
	.from = "supply_move JOIN supply ON supply.id = supply_move.supply_id",
	.order = "supply_move.id",
};

bool log_supplies(struct log *log, struct log_supply **rows, size_t *count, struct fault *fault)
{
	struct query query = query_start(log, SUPPLY_LIST);
	return query_rows(&query, &table_of_supplies, rows, count, fault);
}

bool log_supply_of(struct log *log, enum supply_kind kind, const char *size, struct log_supply *out,
                   struct fault *fault)
{
	struct query query = query_start(log, SUPPLY_OF);
	bind_name(&query, supply_name(kind));
	bind_text(&query, size, WORD_MAX_BYTES);
	return query_row(&query, &table_of_supplies, out, "such supply", fault);
}

bool log_supply_moves_newest(struct log *log, int64_t supply_id, int most, struct log_supply_move **rows, size_t *count,
                             struct fault *fault)
{
	struct query query = query_start(log, SUPPLY_MOVES_NEWEST);
	bind_integer(&query, supply_id);
	bind_integer(&query, most);
	return query_rows(&query, &table_of_supply_moves, rows, count, fault);
}

bool log_put_supply(struct log *log, struct log_supply *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? SUPPLY_INSERT : SUPPLY_UPDATE);
	bind_row(&query, &table_of_supplies, row);
	return put_row(&query, &row->id, 0, "supply", fault);
}

bool log_put_supply_move(struct log *log, struct log_supply_move *row, struct fault *fault)
{
	struct query query = query_start(log, row->id == 0 ? SUPPLY_MOVE_INSERT : SUPPLY_MOVE_UPDATE);
	bind_row(&query, &table_of_supply_moves, row);
	return put_row(&query, &row->id, 0, "move of a supply", fault);
}
