/*
 * log_table_list.c - the tables that leave the program, in the order of an export.
 *
 * Amounts leave the program in grams, millilitres and pieces with their exact
 * decimals; lengths in inches, heights in metres, spans in seconds.
 */
#include "log/tables/columns.h"

/* Never written but by a commit (src/log/journal), so that its columns are of the export alone. */
static const struct log_column journal_columns[] = {
	{ .kind = CELL_NUMBER, OUT("entry", "number") },
	{ .kind = CELL_INSTANT, OUT("at", "") },
	{ .kind = CELL_TEXT, OUT("verb", "short name of the act") },
	{ .kind = CELL_TEXT, OUT("who", "initials") },
	{ .kind = CELL_NUMBER, .lack = MAY_LACK, OUT("station", "empty: about none") },
	{ .kind = CELL_NUMBER, .lack = MAY_LACK, OUT("load", "empty: about none") },
	{ .kind = CELL_NUMBER, .lack = MAY_LACK, OUT("run", "empty: about none") },
	{ .kind = CELL_NUMBER, .lack = MAY_LACK, OUT("batch", "empty: about none") },
	{ .kind = CELL_TEXT,
	  OUT("said", "what the act was about, in the order of its verb: an array of JSON; of an undo empty") },
	{ .kind = CELL_NUMBER, .lack = MAY_LACK, OUT("undoes", "entry it takes back; empty: none") },
	{ .kind = CELL_SENTENCE, OUT("sentence", "what was done, made of verb and values when it was exported") },
};

static const struct log_table journal = {
	.name = "journal",
	.meaning = "what was done, by whom",
	COLUMNS(journal_columns),
	.sql = "SELECT id, wall_ms, verb, who, station_id, load_id, run_id, batch_id, said, undoes_id, id "
	       "FROM journal ORDER BY id",
};

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
	&table_of_rules_aside,
	&journal,
};

const size_t log_table_count = sizeof(log_tables) / sizeof(log_tables[0]);
