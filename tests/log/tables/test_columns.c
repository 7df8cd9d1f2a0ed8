/*
 * The descriptors of the tables: each column of the log has its entry and each entry its
 * column, with the type and the words that the log itself checks; and every member of a
 * row comes back from the column it was put into.
 *
 * The layout is asked of a new log and of schema/log.sql run by the library itself.
 */
#include <check.h>
#include <limits.h>
#include <sqlite3.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "log/journal/acts.h"
#include "log/query/query.h"
#include "log/tables/canner.h"
#include "log/tables/columns.h"
#include "log/tables/house.h"
#include "log/tables/pot.h"
#include "support/log_kit.h"

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

/* --- the statements ------------------------------------------------------------------------ */

START_TEST(every_statement_can_be_prepared)
{
	for (int which = 0; which < STATEMENT_COUNT; which++) {
		char sql[STATEMENT_MAX_BYTES];

		ck_assert_msg(statement_write(kit.log, (enum statement)which, sql, sizeof(sql)), "%s",
		              statement_text[which]);
		ck_assert_ptr_null(strpbrk(sql, "{}"));
		ck_assert_msg(log_prepare(kit.log, (enum statement)which) == SQLITE_OK, "%s:\n%s",
		              sqlite3_errmsg(kit.log->db), sql);
	}
}
END_TEST

START_TEST(a_statement_that_does_not_fit_is_none)
{
	char sql[40];

	ck_assert(!statement_write(kit.log, LOT_GET, sql, sizeof(sql)));
}
END_TEST

/* --- the layout ------------------------------------------------------------------------------ */

static const struct log_column *entry_of(const struct log_table *table, const char *column)
{
	const struct log_column *found = NULL;

	for (size_t i = 0; i < table->column_count; i++) {
		const char *name = table->columns[i].column;

		if (name == NULL || strcmp(name, column) != 0)
			continue;
		ck_assert_msg(found == NULL, "%s has %s twice", table->table, column);
		found = &table->columns[i];
	}
	return found;
}

static const char *type_of(const struct log_column *column)
{
	if (column->kind == CELL_BYTES)
		return "BLOB";
	return column->kind == CELL_TEXT || column->kind == CELL_WORD ? "TEXT" : "INTEGER";
}

static size_t columns_with_a_name(const struct log_table *table)
{
	size_t count = 0;

	for (size_t i = 0; i < table->column_count; i++)
		count += table->columns[i].column != NULL;
	return count;
}

static void compare_table(sqlite3 *db, const struct log_table *table)
{
	enum { NAME = 1, TYPE, NOT_NULL, KEY = 5 };
	char *sql = sqlite3_mprintf("PRAGMA table_info(%Q)", table->table);
	sqlite3_stmt *row;
	size_t count = 0;

	ck_assert_int_eq(sqlite3_prepare_v2(db, sql, -1, &row, NULL), SQLITE_OK);
	for (; sqlite3_step(row) == SQLITE_ROW; count++) {
		const char *name = (const char *)sqlite3_column_text(row, NAME);
		const struct log_column *entry = entry_of(table, name);

		ck_assert_msg(entry != NULL, "%s.%s has no entry", table->table, name);
		ck_assert_str_eq((const char *)sqlite3_column_text(row, TYPE), type_of(entry));
		ck_assert_msg((sqlite3_column_int(row, KEY) == 1) == (entry == &table->columns[0]), "key of %s",
		              table->table);
		if (entry != &table->columns[0])
			ck_assert_msg((sqlite3_column_int(row, NOT_NULL) == 0) == (entry->lack == MAY_BE_NULL),
			              "%s.%s: null", table->table, name);
		ck_assert_msg(entry == &table->columns[0] || entry->by_hand != (entry->size != 0),
		              "%s.%s is not written, or twice", table->table, name);
	}
	ck_assert_msg(count == columns_with_a_name(table), "%s: %zu columns", table->table, count);
	ck_assert_int_eq(sqlite3_finalize(row), SQLITE_OK);
	sqlite3_free(sql);
}

static sqlite3 *laid_out_by_hand(void)
{
	const char *folder = getenv("SCHEMA");
	char *text = calloc(1, 1 << 20);
	char path[600];
	sqlite3 *db;
	FILE *file;

	(void)snprintf(path, sizeof(path), "%s/log.sql", folder == NULL ? "schema" : folder);
	file = fopen(path, "rb");
	ck_assert_msg(file != NULL && text != NULL, "%s", path);
	ck_assert_uint_gt(fread(text, 1, (1 << 20) - 1, file), 0);
	ck_assert_int_eq(fclose(file), 0);
	ck_assert_int_eq(sqlite3_open(":memory:", &db), SQLITE_OK);
	ck_assert_int_eq(sqlite3_exec(db, text, NULL, NULL, NULL), SQLITE_OK);
	free(text);
	return db;
}

START_TEST(no_two_columns_share_a_member)
{
	for (size_t i = 0; i < log_table_count; i++)
		for (size_t j = 0; j < log_tables[i]->column_count; j++)
			for (size_t k = 0; k < j; k++) {
				const struct log_column *one = &log_tables[i]->columns[j];
				const struct log_column *other = &log_tables[i]->columns[k];

				ck_assert_msg(one->size == 0 || other->size == 0 || one->at + one->size <= other->at ||
				                  other->at + other->size <= one->at,
				              "%s: entries %zu and %zu", log_tables[i]->name, j, k);
			}
}
END_TEST

START_TEST(every_column_has_an_entry_and_every_entry_a_column)
{
	sqlite3 *by_hand = laid_out_by_hand();

	for (size_t i = 0; i < log_table_count; i++) {
		compare_table(kit.log->db, log_tables[i]);
		compare_table(by_hand, log_tables[i]);
	}
	ck_assert_int_eq(sqlite3_close(by_hand), SQLITE_OK);
}
END_TEST

/* As it is laid out; free() it. */
static char *layout_of(const char *table)
{
	sqlite3_stmt *row;
	char *sql;

	ck_assert_int_eq(
	    sqlite3_prepare_v2(kit.log->db, "SELECT sql FROM sqlite_schema WHERE name = ?", -1, &row, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_bind_text(row, 1, table, -1, SQLITE_STATIC), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(row), SQLITE_ROW);
	sql = strdup((const char *)sqlite3_column_text(row, 0));
	ck_assert_ptr_nonnull(sql);
	ck_assert_int_eq(sqlite3_finalize(row), SQLITE_OK);
	return sql;
}

/* The words of "CHECK (name IN ('a', 'b'))", a blank behind each, or NULL. free() it. */
static char *checked_words(const char *table, const char *column)
{
	char *sql = layout_of(table);
	char *wanted = sqlite3_mprintf("CHECK (%s IN (", column);
	const char *at = strstr(sql, wanted);
	char *words = NULL;
	size_t used = 0;

	if (at != NULL) {
		bool inside = false;

		words = calloc(1, strlen(at) + 1);
		ck_assert_ptr_nonnull(words);
		for (at += strlen(wanted); *at != ')'; at++) {
			if (*at == '\'')
				inside = !inside;
			if (inside && *at != '\'')
				words[used++] = *at;
			else if (*at == '\'' && !inside)
				words[used++] = ' ';
		}
	}
	sqlite3_free(wanted);
	free(sql);
	return words;
}

static bool holds_word(const char *words, const char *word)
{
	size_t length = strlen(word);

	for (const char *at = words; (at = strstr(at, word)) != NULL; at++)
		if ((at == words || at[-1] == ' ') && at[length] == ' ')
			return true;
	return false;
}

/* Each word the log takes is one of the enum and the other way round. */
static void compare_words(const struct log_table *table, const struct log_column *column)
{
	char *words = checked_words(table->table, column->column);
	size_t bytes = 0;
	const char *word;

	if (words == NULL) { /* kinds of supplies grow, so that the log checks none */
		ck_assert_msg(column->words == &words_of_supply, "%s.%s: any word goes", table->table, column->column);
		return;
	}
	for (int i = 0; strcmp(word = word_at(column->words, i), "?") != 0; i++) {
		ck_assert_msg(word[0] != '\0' || (i == 0 && column->lack == MAY_BE_NULL), "%s.%s: no word",
		              table->table, column->column);
		ck_assert_msg(word[0] == '\0' || holds_word(words, word), "%s.%s: %s is not in %s", table->table,
		              column->column, word, words);
		bytes += word[0] == '\0' ? 0 : strlen(word) + 1;
	}
	ck_assert_msg(bytes == strlen(words), "%s.%s: %s", table->table, column->column, words);
	free(words);
}

START_TEST(the_words_are_those_that_the_log_takes)
{
	for (size_t i = 0; i < log_table_count; i++)
		for (size_t j = 0; j < log_tables[i]->column_count; j++) {
			const struct log_column *column = &log_tables[i]->columns[j];

			ck_assert_msg((column->kind == CELL_WORD) == (column->words != NULL), "words of %s",
			              log_tables[i]->name);
			if (column->kind == CELL_WORD && column->column != NULL)
				compare_words(log_tables[i], column);
			ck_assert(column->name == NULL || strstr(column->meaning, "{}") == NULL ||
			          column->words != NULL);
		}
}
END_TEST

/* An import reads each number of a table with a check, and into a member that holds it. */
START_TEST(numbers_that_come_in_have_a_range)
{
	for (size_t i = 0; i < log_table_count; i++)
		for (size_t j = 0; log_tables[i]->checked && j < log_tables[i]->column_count; j++) {
			const struct log_column *column = &log_tables[i]->columns[j];

			if (column->kind != CELL_NUMBER || column->name == NULL)
				continue;
			ck_assert_msg(column->least < column->most, "%s.%s", log_tables[i]->name, column->name);
			ck_assert(column->size != sizeof(int) || (column->least >= INT_MIN && column->most <= INT_MAX));
		}
}
END_TEST

/* --- there and back ----------------------------------------------------------------------------- */

/* The statements of each table on a descriptor. */
static const struct {
	const struct log_table *table;
	enum statement insert;
	enum statement update; /* that of inserting: its rows are only replaced */
	const char *get;
} rows[] = {
	{ &table_of_house, HOUSE_UPDATE, HOUSE_UPDATE, "SELECT {house} FROM house WHERE id = ?" },
	{ &table_of_stations, STATION_INSERT, STATION_UPDATE, "SELECT {station} FROM station WHERE id = ?" },
	{ &table_of_lid_boxes, LID_BOX_INSERT, LID_BOX_UPDATE, "SELECT {lid_box} FROM lid_box WHERE id = ?" },
	{ &table_of_supplies, SUPPLY_INSERT, SUPPLY_UPDATE,
	  "SELECT {supply} FROM supply JOIN supply_stock ON supply_id = supply.id WHERE supply.id = ?" },
	{ &table_of_supply_moves, SUPPLY_MOVE_INSERT, SUPPLY_MOVE_UPDATE,
	  "SELECT {supply_move} FROM supply_move WHERE id = ?" },
	{ &table_of_recipes, RECIPE_INSERT, RECIPE_UPDATE, "SELECT {recipe} FROM recipe WHERE id = ?" },
	{ &table_of_run, RUN_INSERT, RUN_UPDATE,
	  "SELECT {run} FROM run JOIN work ON work.id = run.id WHERE run.id = ?" },
	{ &table_of_drying, DRYING_INSERT, DRYING_UPDATE,
	  "SELECT {drying} FROM drying JOIN work ON work.id = drying.id WHERE drying.id = ?" },
	{ &table_of_juice, JUICE_INSERT, JUICE_UPDATE,
	  "SELECT {juice} FROM juice JOIN juice_left ON juice_id = juice.id WHERE juice.id = ?" },
	{ &table_of_juice_uses, JUICE_USE_INSERT, JUICE_USE_UPDATE, "SELECT {juice_use} FROM juice_use WHERE id = ?" },
	{ &table_of_batch, BATCH_INSERT, BATCH_UPDATE,
	  "SELECT {batch} FROM batch JOIN work ON work.id = batch.id WHERE batch.id = ?" },
	{ &table_of_batch_amounts, BATCH_AMOUNT_INSERT, BATCH_AMOUNT_UPDATE,
	  "SELECT {batch_amount} FROM batch_amount WHERE id = ?" },
	{ &table_of_lots, LOT_INSERT, LOT_UPDATE, "SELECT {lot} FROM lot WHERE id = ?" },
	{ &table_of_load, LOAD_INSERT, LOAD_UPDATE,
	  "SELECT {load} FROM load JOIN work ON work.id = load.id WHERE load.id = ?" },
	{ &table_of_jars, JAR_INSERT, JAR_UPDATE, "SELECT {jar} FROM jar WHERE id = ?" },
	{ &table_of_phases, PHASE_INSERT, PHASE_UPDATE, "SELECT {phase} FROM phase WHERE id = ?" },
	{ &table_of_marks, MARK_INSERT, MARK_UPDATE, "SELECT {mark} FROM mark WHERE id = ?" },
	{ &table_of_station_rooms, CAPACITY_INSERT, CAPACITY_INSERT,
	  "SELECT {station_capacity} FROM station_capacity WHERE station_id = ?" },
	{ &table_of_recipe_ingredients, INGREDIENT_INSERT, INGREDIENT_INSERT,
	  "SELECT {recipe_ingredient} FROM recipe_ingredient WHERE recipe_id = ?" },
	{ &table_of_rules_off, RULE_OFF_INSERT, RULE_OFF_INSERT, "SELECT {rule_off} FROM rule_off WHERE rule = ?" },
	{ &table_of_recalls, RECALL_INSERT, RECALL_UPDATE,
	  "SELECT {recall} FROM recall JOIN recall_left ON recall_id = recall.id WHERE recall.id = ?" },
	{ &table_of_recall_jars, RECALL_JAR_PUT, RECALL_JAR_PUT,
	  "SELECT {recall_jar} FROM recall_jar WHERE recall_id = ?" },
	{ &table_of_plan_house, PLAN_HOUSE_UPDATE, PLAN_HOUSE_UPDATE,
	  "SELECT {plan_house} FROM plan_house WHERE id = ?" },
	{ &table_of_helpers, HELPER_INSERT, HELPER_UPDATE, "SELECT {helper} FROM helper WHERE id = ?" },
	{ &table_of_plan_breaks, PLAN_BREAK_INSERT, PLAN_BREAK_UPDATE,
	  "SELECT {plan_break} FROM plan_break WHERE id = ?" },
	{ &table_of_plan, PLAN_UPDATE, PLAN_UPDATE, "SELECT {plan} FROM plan WHERE id = ?" },
	{ &table_of_plan_runs, PLAN_RUN_INSERT, PLAN_RUN_UPDATE, "SELECT {plan_run} FROM plan_run WHERE id = ?" },
	{ &table_of_plan_batches, PLAN_BATCH_INSERT, PLAN_BATCH_UPDATE,
	  "SELECT {plan_batch} FROM plan_batch WHERE id = ?" },
	{ &table_of_plan_blocks, PLAN_BLOCK_INSERT, PLAN_BLOCK_UPDATE,
	  "SELECT {plan_block} FROM plan_block WHERE id = ?" },
	{ &table_of_journal, ENTRY_INSERT, ENTRY_INSERT, "SELECT {journal} FROM journal WHERE journal.id = ?" },
};
#define ROWS (sizeof(rows) / sizeof(rows[0]))
#define ROW_BYTES 8192
static _Alignas(max_align_t) char put[ROW_BYTES];
static _Alignas(max_align_t) char got[ROW_BYTES];

static int last_word(const struct log_column *column)
{
	int last = 0;

	while (strcmp(word_at(column->words, last + 1), "?") != 0)
		last++;
	return last;
}

/* Differs from what every other column of a row gets; of flags and words, which have too
 * few values, only the `lit` column stands out. */
static int64_t value_for(const struct log_column *column, size_t number, size_t lit)
{
	switch (column->kind) {
	case CELL_FLAG: return number == lit;
	case CELL_BITS: return UINT32_MAX - (int64_t)number;
	case CELL_WORD: return number == lit ? last_word(column) : 0;
	case CELL_INSTANT: return INT64_C(1700000000000) + (int64_t)number;
	case CELL_AWAKE: return INT64_C(5000000000) + (int64_t)number;
	case CELL_NUMBER:
	case CELL_SENTENCE:
	case CELL_BYTES:
	case CELL_TEXT: break;
	}
	return 11 + (int64_t)number;
}

static bool is_put(const struct log_table *table, size_t i)
{
	return i > 0 && table->columns[i].column != NULL && table->columns[i].size != 0;
}

static void fill(const struct log_table *table, size_t lit)
{
	ck_assert_uint_le(table->row_size, ROW_BYTES);
	memset(put, 0, sizeof(put));
	for (size_t i = 0; i < table->column_count; i++) {
		const struct log_column *column = &table->columns[i];

		ck_assert_uint_le(column->at + column->size, table->row_size);
		if (!is_put(table, i))
			continue;
		if (column->kind == CELL_TEXT)
			(void)snprintf(column_text(column, put), column->size, "text %zu of %zu", i, lit);
		else
			column_set(column, put, value_for(column, i, lit));
	}
}

/* All that is null in the log. */
static void empty(const struct log_table *table)
{
	for (size_t i = 1; i < table->column_count; i++) {
		const struct log_column *column = &table->columns[i];

		if (column->lack == MAY_BE_NULL && column->kind != CELL_TEXT)
			column_set(column, put, column->none);
	}
}

/* The one row is there from the beginning. */
static int64_t key_of(const struct log_table *table)
{
	return table->single ? 1 : 7;
}

static void delete_all(const struct log_table *table)
{
	char sql[200];

	(void)snprintf(sql, sizeof(sql), "DELETE FROM %s", table->table);
	ck_assert_int_eq(sqlite3_exec(kit.log->db, sql, NULL, NULL, NULL), SQLITE_OK);
}

static void put_row_of(size_t of, enum statement which)
{
	struct query query = query_start(kit.log, which);
	const struct log_table *table = rows[of].table;

	if (rows[of].update == rows[of].insert && !table->single)
		delete_all(table);
	bind_row(&query, table, put);
	for (size_t i = 0; i < table->column_count; i++)
		if (table->columns[i].by_hand && table->columns[i].kind == CELL_TEXT)
			bind_text(&query, "", 1);
		else if (table->columns[i].by_hand && table->columns[i].kind == CELL_BYTES)
			bind_bytes(&query, "", 0);
		else if (table->columns[i].by_hand)
			bind_integer(&query, 1);
	bind_integer(&query, key_of(table));
	KIT_OK(&kit, query_run(&query, &kit.fault));
}

/* Read into `got`. */
static bool read_back(size_t of)
{
	const struct log_table *table = rows[of].table;
	struct query query = { .log = kit.log };
	char sql[STATEMENT_MAX_BYTES];
	bool done;

	ck_assert(statement_expand(kit.log, rows[of].get, sql, sizeof(sql)));
	ck_assert_int_eq(sqlite3_prepare_v2(kit.log->db, sql, -1, &query.statement, NULL), SQLITE_OK);
	bind_integer(&query, key_of(table));
	done = query_row(&query, table, got, "such row", &kit.fault);
	ck_assert_int_eq(sqlite3_finalize(query.statement), SQLITE_OK);
	return done;
}

static void comes_back(size_t of)
{
	const struct log_table *table = rows[of].table;

	KIT_OK(&kit, read_back(of));
	if (table->columns[0].size != 0 && table->columns[0].kind == CELL_NUMBER)
		ck_assert_int_eq(column_get(&table->columns[0], got), key_of(table));
	for (size_t i = 1; i < table->column_count; i++) {
		const struct log_column *column = &table->columns[i];

		if (!is_put(table, i))
			continue;
		if (column->kind == CELL_TEXT)
			ck_assert_str_eq(column_text(column, got), column_text(column, put));
		else
			ck_assert_msg(column_get(column, got) == column_get(column, put), "%s.%s: %lld, not %lld",
			              table->table, column->column, (long long)column_get(column, got),
			              (long long)column_get(column, put));
	}
}

static int64_t nulls(const struct log_table *table)
{
	int64_t count = 0;

	for (size_t i = 1; i < table->column_count; i++) {
		char sql[200];

		if (table->columns[i].column == NULL)
			continue;
		(void)snprintf(sql, sizeof(sql), "SELECT count(*) FROM %s WHERE %s = %d AND %s IS NULL", table->table,
		               table->columns[0].column, (int)key_of(table), table->columns[i].column);
		count += kit_number(kit.path, sql);
	}
	return count;
}

static int64_t may_be_null(const struct log_table *table)
{
	int64_t count = 0;

	for (size_t i = 1; i < table->column_count; i++)
		count += table->columns[i].lack == MAY_BE_NULL && table->columns[i].kind != CELL_TEXT;
	return count;
}

/* What a row may refer to or hold is not the matter here; only of the lot of a jar
 * and of what is common to all work something is read with it. */
static void let_anything_in(void)
{
	static const char sql[] =
	    "PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON;"
	    "DROP TRIGGER journal_is_not_deleted;"
	    "WITH RECURSIVE n (i) AS (SELECT 10 UNION ALL SELECT i + 1 FROM n WHERE i < 99) "
	    "INSERT INTO lot SELECT i, 'L' || i, 'p', 'f', 'hot', 'acid', i, 'printed', '' FROM n;"
	    "INSERT INTO work VALUES (7, 'load', 1, 1, 0, '')";

	ck_assert_int_eq(sqlite3_exec(kit.log->db, sql, NULL, NULL, NULL), SQLITE_OK);
}

START_TEST(every_member_comes_back_from_its_own_column)
{
	const struct log_table *table = rows[_i].table;

	let_anything_in();
	fill(table, 0);
	put_row_of((size_t)_i, rows[_i].insert);
	comes_back((size_t)_i);
	for (size_t lit = 1; lit < table->column_count; lit++) {
		fill(table, lit);
		put_row_of((size_t)_i, rows[_i].update);
		comes_back((size_t)_i);
	}
}
END_TEST

START_TEST(what_is_not_there_is_null)
{
	const struct log_table *table = rows[_i].table;

	let_anything_in();
	fill(table, 0);
	empty(table);
	put_row_of((size_t)_i, rows[_i].insert);
	comes_back((size_t)_i);
	ck_assert_int_eq(nulls(table), may_be_null(table));
}
END_TEST

START_TEST(a_word_that_is_none_of_its_enum_is_damage)
{
	static const char *const wrong[] = { "", "nonsense" };
	const struct log_table *table = rows[_i].table;

	let_anything_in();
	fill(table, 0);
	put_row_of((size_t)_i, rows[_i].insert);
	for (size_t i = 1; i < table->column_count; i++) {
		const struct log_column *column = &table->columns[i];

		for (size_t j = 0; j < 2 && column->kind == CELL_WORD && column->column != NULL; j++) {
			char *sql = sqlite3_mprintf("UPDATE %s SET %s = %Q", table->table, column->column, wrong[j]);

			ck_assert_int_eq(sqlite3_exec(kit.log->db, sql, NULL, NULL, NULL), SQLITE_OK);
			sqlite3_free(sql);
			/* "" says nothing where nothing may be said. */
			ck_assert_msg(read_back((size_t)_i) == (j == 0 && word_at(column->words, 0)[0] == '\0'),
			              "%s.%s: \"%s\"", table->table, column->column, wrong[j]);
			if (j == 1)
				ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
		}
		if (column->kind == CELL_WORD && column->column != NULL)
			put_row_of((size_t)_i, rows[_i].update);
	}
}
END_TEST

static void ck_stored(const char *select, const char *wanted)
{
	sqlite3_stmt *row;

	ck_assert_int_eq(sqlite3_prepare_v2(kit.log->db, select, -1, &row, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(row), SQLITE_ROW);
	ck_assert_str_eq((const char *)sqlite3_column_text(row, 0), wanted);
	ck_assert_int_eq(sqlite3_finalize(row), SQLITE_OK);
}

/* Most columns take the name of their member; these are told apart by hand. */
START_TEST(a_member_that_stands_deeper_has_the_right_column)
{
	struct log_house house = { .elevation = { .known = true, .um = 21, .slack_um = 22 }, .jar_wait_minutes = 1 };
	struct log_load load = { .station_id = 1,
		                 .pressure_psi = NO_PRESSURE,
		                 .minutes = 1,
		                 .headspace_thou = 1,
		                 .elevation = { .known = true, .um = 31, .slack_um = 32 } };
	struct log_phase phase = { .work_id = 1, .began = { 41, 42, "forty" } };
	struct log_run run = { .station_id = 1, .fruit_mg = 1, .water = { 51, 52, "fifty" } };
	struct log_jar jar = { .lot_id = 11,
		               .filled = { 61, 62, "sixty" },
		               .ticks = { [SEAL_PRESS] = TICK_GOOD, [SEAL_TAP] = TICK_BAD } };

	let_anything_in();
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_house(kit.log, &house, &kit.fault));
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	KIT_OK(&kit, log_put_phase(kit.log, &phase, &kit.fault));
	KIT_OK(&kit, log_put_run(kit.log, &run, &kit.fault));
	KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	ck_stored("SELECT elevation_um || ' ' || elevation_slack_um FROM house", "21 22");
	ck_stored("SELECT elevation_um || ' ' || elevation_slack_um FROM load", "31 32");
	ck_stored("SELECT began_wall_ms || ' ' || began_awake_ms || ' ' || began_boot FROM phase", "41 42 forty");
	ck_stored("SELECT water_wall_ms || ' ' || water_awake_ms || ' ' || water_boot FROM run", "51 52 fifty");
	ck_stored("SELECT filled_wall_ms || ' ' || filled_awake_ms || ' ' || filled_boot FROM jar", "61 62 sixty");
	ck_stored("SELECT press || ' ' || tap || ' ' || coalesce(eye, 'null') FROM jar", "good bad null");
	log_abandon(kit.log);
}
END_TEST

START_TEST(every_table_goes_there_and_back)
{
	ck_assert_uint_eq(log_table_count, ROWS);
}
END_TEST

int main(void)
{
	Suite *suite = suite_create("columns");
	TCase *tests = tcase_create("columns");
	SRunner *runner;
	int failed;

	tcase_add_checked_fixture(tests, begin, end);
	tcase_set_timeout(tests, 60);
	tcase_add_test(tests, every_statement_can_be_prepared);
	tcase_add_test(tests, a_statement_that_does_not_fit_is_none);
	tcase_add_test(tests, no_two_columns_share_a_member);
	tcase_add_test(tests, every_column_has_an_entry_and_every_entry_a_column);
	tcase_add_test(tests, the_words_are_those_that_the_log_takes);
	tcase_add_test(tests, numbers_that_come_in_have_a_range);
	tcase_add_test(tests, a_member_that_stands_deeper_has_the_right_column);
	tcase_add_test(tests, every_table_goes_there_and_back);
	tcase_add_loop_test(tests, every_member_comes_back_from_its_own_column, 0, (int)ROWS);
	tcase_add_loop_test(tests, what_is_not_there_is_null, 0, (int)ROWS);
	tcase_add_loop_test(tests, a_word_that_is_none_of_its_enum_is_damage, 0, (int)ROWS);
	suite_add_tcase(suite, tests);
	runner = srunner_create(suite);
	srunner_run_all(runner, CK_NORMAL);
	failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
