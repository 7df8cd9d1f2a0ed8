/*
 * columns.h - the descriptors of all tables; that of the journal is in its own room.  How one
 * is written: log/query/entries.h.
 *
 * A new table is declared here, stands in log_table_list.c, which is the order of an export
 * (that of a kind of work does by its line of EACH_WORK), and has its statements as "{insert table}", "{update table}" and SELECTs of "{table}".  Acts
 * that change it: log/journal/acts.h.
 */
#ifndef STILLROOM_LOG_TABLES_COLUMNS_H
#define STILLROOM_LOG_TABLES_COLUMNS_H

#include "log/journal/journal.h"
#include "log/query/entries.h"

/* The unit of a measured amount, and the factor that brings pieces to the same three
 * decimals as g and ml. */
#define UNIT_OF_MEASURE "CASE measure WHEN 'each' THEN 'each' WHEN 'volume' THEN 'ml' ELSE 'g' END"
#define FACTOR_OF_MEASURE "CASE measure WHEN 'each' THEN 1000 ELSE 1 END"

extern const struct log_table table_of_house;
extern const struct log_table table_of_stations;
extern const struct log_table table_of_station_rooms;
extern const struct log_table table_of_lid_boxes;
extern const struct log_table table_of_supplies;
extern const struct log_table table_of_supply_moves;
extern const struct log_table table_of_recipes;
extern const struct log_table table_of_recipe_ingredients;
extern const struct log_table table_of_juice;
extern const struct log_table table_of_juice_uses;
extern const struct log_table table_of_batch_amounts;
extern const struct log_table table_of_lots;
extern const struct log_table table_of_jars;
extern const struct log_table table_of_phases;
extern const struct log_table table_of_marks;
extern const struct log_table table_of_recalls;
extern const struct log_table table_of_recall_jars;
extern const struct log_table table_of_plan_house;
extern const struct log_table table_of_helpers;
extern const struct log_table table_of_plan_breaks;
extern const struct log_table table_of_plan;
extern const struct log_table table_of_plan_runs;
extern const struct log_table table_of_plan_batches;
extern const struct log_table table_of_plan_blocks;
extern const struct log_table table_of_rules_off;

/* clang-format off */
#define TABLE_OF_WORK(TAG, word) extern const struct log_table table_of_##word;
EACH_WORK(TABLE_OF_WORK)
/* clang-format on */

#endif
