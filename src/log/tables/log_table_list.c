/*
 * log_table_list.c - the tables of an export: statement and columns side by side.
 *
 * Amounts leave the program in grams, millilitres and pieces with their exact
 * decimals; lengths in inches, heights in metres, spans in seconds.
 */
#include "log/tables/columns.h"

/* clang-format off */
#define TEXT(said, words) { .kind = CELL_TEXT, .name = (said), .meaning = (words) }
#define WHOLE(said, words) { .kind = CELL_NUMBER, .name = (said), .meaning = (words) }
#define DECIMAL(said, digits, words) { .kind = CELL_NUMBER, .scale = (digits), .name = (said), .meaning = (words) }
#define INSTANT(said, words) { .kind = CELL_INSTANT, .name = (said), .meaning = (words) }
#define FLAG(said, words) { .kind = CELL_FLAG, .name = (said), .meaning = (words) }
/* Those that may be empty. */
#define SOME_TEXT(said, words) { .kind = CELL_TEXT, .lack = MAY_LACK, .name = (said), .meaning = (words) }
#define SOME_WHOLE(said, words) { .kind = CELL_NUMBER, .lack = MAY_LACK, .name = (said), .meaning = (words) }
#define SOME_DECIMAL(said, digits, words) \
	{ .kind = CELL_NUMBER, .scale = (digits), .lack = MAY_LACK, .name = (said), .meaning = (words) }
#define SOME_INSTANT(said, words) { .kind = CELL_INSTANT, .lack = MAY_LACK, .name = (said), .meaning = (words) }
/* clang-format on */

static const struct log_column rules_aside_columns[] = {
	TEXT("rule", "a warning this house does not want to see"),
	INSTANT("since", ""),
};

static const struct log_column journal_columns[] = {
	WHOLE("entry", "number"),
	INSTANT("at", ""),
	TEXT("verb", "short name of the act"),
	TEXT("who", "initials"),
	SOME_WHOLE("station", "empty: about none"),
	SOME_WHOLE("load", "empty: about none"),
	SOME_WHOLE("run", "empty: about none"),
	SOME_WHOLE("batch", "empty: about none"),
	TEXT("sentence", "what was done"),
	SOME_WHOLE("undoes", "entry it takes back; empty: none"),
};

/* clang-format off */
#define TABLE(array, one, words, statement) \
	&(const struct log_table){ .name = #array, .meaning = (words), .single = (one), .columns = array##_columns, \
		.column_count = sizeof(array##_columns) / sizeof(array##_columns[0]), .sql = (statement) }
/* clang-format on */

const struct log_table *const log_tables[] = {
	&table_of_house,
	&table_of_stations,
	&table_of_station_rooms,
	&table_of_lid_boxes,
	&table_of_supplies,
	&table_of_supply_moves,
	&table_of_recipes,
	&table_of_recipe_ingredients,
	&table_of_runs,
	&table_of_juice,
	&table_of_juice_uses,
	&table_of_batches,
	&table_of_batch_amounts,
	&table_of_lots,
	&table_of_loads,
	&table_of_phases,
	&table_of_marks,
	&table_of_jars,
	&table_of_recalls,
	&table_of_recall_jars,
	&table_of_plan_house,
	&table_of_helpers,
	&table_of_plan_breaks,
	&table_of_plan,
	&table_of_plan_runs,
	&table_of_plan_batches,
	&table_of_plan_blocks,
	TABLE(rules_aside, false, "warnings set aside", "SELECT rule, since_wall_ms FROM rule_aside ORDER BY rule"),
	TABLE(journal, false, "what was done, by whom",
	      "SELECT id, wall_ms, verb, who, station_id, load_id, run_id, batch_id, sentence, undoes_id "
	      "FROM journal ORDER BY id"),
};

const size_t log_table_count = sizeof(log_tables) / sizeof(log_tables[0]);
