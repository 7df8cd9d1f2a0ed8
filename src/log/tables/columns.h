/*
 * columns.h - how a descriptor of a table is written down.
 *
 * The first column of a table is its key.  The order is that of an export.
 */
#ifndef STILLROOM_LOG_TABLES_COLUMNS_H
#define STILLROOM_LOG_TABLES_COLUMNS_H

#include <stddef.h>

#include "log/disk/log_private.h"
#include "log/query/tables.h"

#define MEMBER(row, member) .at = offsetof(row, member), .size = sizeof(((row *)NULL)->member)
/* A column that has the name of its member. */
#define COLUMN(row, member) .column = #member, MEMBER(row, member)
#define WORDS(of) .words = (&words_of_##of)
#define SELECTED(text) .sql = (text) /* instead of the column */
#define OUT(said, explained) .name = (said), .meaning = (explained)
#define RANGE(from, to) .least = (from), .most = (to)
/* The unit of a measured amount, and the factor that brings pieces to the same three
 * decimals as g and ml. */
#define UNIT_OF_MEASURE "CASE measure WHEN 'each' THEN 'each' WHEN 'volume' THEN 'ml' ELSE 'g' END"
#define FACTOR_OF_MEASURE "CASE measure WHEN 'each' THEN 1000 ELSE 1 END"
#define COLUMNS(array) .columns = (array), .column_count = sizeof(array) / sizeof((array)[0])

extern const struct log_table table_of_house;
extern const struct log_table table_of_stations;
extern const struct log_table table_of_station_rooms;
extern const struct log_table table_of_lid_boxes;
extern const struct log_table table_of_supplies;
extern const struct log_table table_of_supply_moves;
extern const struct log_table table_of_recipes;
extern const struct log_table table_of_recipe_ingredients;
extern const struct log_table table_of_runs;
extern const struct log_table table_of_juice;
extern const struct log_table table_of_juice_uses;
extern const struct log_table table_of_batches;
extern const struct log_table table_of_batch_amounts;
extern const struct log_table table_of_lots;
extern const struct log_table table_of_loads;
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
extern const struct log_table table_of_rules_aside;

#endif
