/*
 * log_table_list.c - the tables that leave the program, in the order of an export.
 *
 * Amounts leave the program in grams, milliliters and pieces with their exact
 * decimals; lengths in inches, heights in meters, spans in seconds.
 */
#include "log/tables/columns.h"

#define TABLE_OF_ITS(TAG, word) &table_of_##word,

/* clang-format off */
const struct log_table *const log_tables[] = {
	&table_of_house,
	&table_of_stations,
	&table_of_station_rooms,
	&table_of_lid_boxes,
	&table_of_supplies,
	&table_of_supply_moves,
	&table_of_recipes,
	&table_of_recipe_ingredients,
	EACH_WORK(TABLE_OF_ITS)
	&table_of_juice,
	&table_of_juice_uses,
	&table_of_batch_amounts,
	&table_of_lots,
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
	&table_of_rules_off,
	&table_of_journal,
};
/* clang-format on */

const size_t log_table_count = sizeof(log_tables) / sizeof(log_tables[0]);
