/*
 * The tables of a log: those of schema/log.sql, every trigger and view of which can be
 * run, and what the file itself refuses.
 *
 * schema/log.sql is read here as a text and run by the library itself, without the program.
 */
#include <check.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "log/file/layout.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;
static sqlite3 *db;

static void run(sqlite3 *into, const char *sql)
{
	char *error = NULL;
	int rc = sqlite3_exec(into, sql, NULL, NULL, &error);
	ck_assert_msg(rc == SQLITE_OK, "%s", error);
}

static void begin(void)
{
	kit_init(&kit);
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	ck_assert_int_eq(sqlite3_open_v2(kit.path, &db, SQLITE_OPEN_READWRITE, NULL), SQLITE_OK);
	run(db, "PRAGMA foreign_keys = ON");
}

static void end(void)
{
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
	kit_clear(&kit);
}

/* free() it. */
static char *file_text(const char *name)
{
	char path[600];
	const char *folder = getenv("SCHEMA");
	(void)snprintf(path, sizeof(path), "%s/%s", folder == NULL ? "schema" : folder, name);
	FILE *file = fopen(path, "rb");
	ck_assert_msg(file != NULL, "%s", path);
	char *text = calloc(1, 1 << 20);
	ck_assert_ptr_nonnull(text);
	size_t size = fread(text, 1, (1 << 20) - 1, file);
	ck_assert(size > 0 && feof(file));
	ck_assert_int_eq(fclose(file), 0);
	return text;
}

static int add_row(void *into, int count, char **values, char **names)
{
	(void)names;
	for (int i = 0; i < count; i++)
		sqlite3_str_appendf(into, "%s%s", values[i] == NULL ? "(null)" : values[i], i + 1 < count ? " " : "\n");
	return 0;
}

/* What a SELECT answers, a line a row. sqlite3_free() it. */
static char *answer(sqlite3 *from, const char *sql)
{
	sqlite3_str *rows = sqlite3_str_new(from);
	char *error = NULL;
	int rc = sqlite3_exec(from, sql, add_row, rows, &error);
	ck_assert_msg(rc == SQLITE_OK, "%s: %s", sql, error);
	char *text = sqlite3_str_finish(rows);
	return text == NULL ? sqlite3_mprintf("") : text;
}

/* Told from the first difference on: Check does not print long texts. */
static void same_answer(sqlite3 *other, const char *sql)
{
	char *here = answer(db, sql);
	char *there = answer(other, sql);
	size_t same = 0;
	while (here[same] != '\0' && here[same] == there[same])
		same++;
	size_t from = same < 60 ? 0 : same - 60;
	ck_assert_msg(strcmp(here, there) == 0, "the log has\n%.160s\nlog.sql has\n%.160s", here + from, there + from);
	sqlite3_free(here);
	sqlite3_free(there);
}

/* In one transaction: a sync for each table would take seconds on a slow disk. */
static void lay_out_by_hand(sqlite3 *into)
{
	char *text = file_text("log.sql");
	run(into, "BEGIN");
	run(into, text);
	for (size_t i = 0; i < log_layouts.migration_count; i++)
		run(into, log_layouts.migrations[i]);
	run(into, "COMMIT");
	free(text);
}

START_TEST(a_new_log_is_what_log_sql_makes)
{
	char fresh[520];
	sqlite3 *other;
	(void)snprintf(fresh, sizeof(fresh), "%s/fresh.db", kit.folder);
	ck_assert_int_eq(sqlite3_open(fresh, &other), SQLITE_OK);
	lay_out_by_hand(other);
	ck_assert_int_gt(kit_number(fresh, "SELECT count(*) FROM sqlite_schema WHERE type = 'table'"), 10);
	same_answer(other, "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY rowid");
	ck_assert_int_eq(sqlite3_close(other), SQLITE_OK);
	char *here = kit_dump(kit.path, true);
	char *there = kit_dump(fresh, true);
	ck_assert_str_eq(here, there);
	free(here);
	free(there);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), layout_newest(&log_layouts));
	ck_assert(kit_whole(fresh));
	ck_assert(kit_whole(kit.path));
}
END_TEST

START_TEST(what_a_table_refers_to_is_there)
{
	char *missing = answer(
	    db, "SELECT m.name, f.\"table\", f.\"to\" FROM sqlite_schema AS m, pragma_foreign_key_list(m.name) AS f "
	        "WHERE NOT EXISTS (SELECT 1 FROM pragma_table_info(f.\"table\") WHERE name = f.\"to\")");
	ck_assert_str_eq(missing, "");
	sqlite3_free(missing);
}
END_TEST

/* A trigger or view with a mistake in it is found by whoever compiles it first: here. */
START_TEST(every_trigger_and_view_can_be_compiled)
{
	static const char statements[] =
	    "WITH made (name, columns) AS (SELECT m.name, (SELECT group_concat('\"' || name || '\" = \"' || name || '\"') "
	    "  FROM pragma_table_info(m.name)) FROM sqlite_schema AS m WHERE m.type = 'table' "
	    "  AND m.name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND m.name NOT LIKE 'work\\_words%' ESCAPE '\\') "
	    "SELECT 'INSERT INTO ' || name || ' DEFAULT VALUES' FROM made UNION ALL "
	    "SELECT 'DELETE FROM ' || name FROM made UNION ALL "
	    "SELECT 'UPDATE ' || name || ' SET ' || columns FROM made UNION ALL "
	    "SELECT 'SELECT * FROM ' || name FROM sqlite_schema WHERE type = 'view'";
	sqlite3_stmt *each;
	int count = 0;
	ck_assert_int_eq(sqlite3_prepare_v2(db, statements, -1, &each, NULL), SQLITE_OK);
	for (; sqlite3_step(each) == SQLITE_ROW; count++) {
		const char *sql = (const char *)sqlite3_column_text(each, 0);
		sqlite3_stmt *compiled;
		ck_assert_msg(sqlite3_prepare_v2(db, sql, -1, &compiled, NULL) == SQLITE_OK, "%s: %s", sql,
		              sqlite3_errmsg(db));
		ck_assert_int_eq(sqlite3_finalize(compiled), SQLITE_OK);
	}
	ck_assert_int_gt(count, 30);
	ck_assert_int_eq(sqlite3_finalize(each), SQLITE_OK);
}
END_TEST

/* Whatever program writes: these rules stand in the file. */
START_TEST(the_file_refuses_what_cannot_be)
{
	static const char day[] =
	    "INSERT INTO station (id, digit, kind, name) VALUES (1, 1, 'steam', 'Dome');"
	    "INSERT INTO lot VALUES (1, '2026-09-14-B1', 'quince jelly', 'jelly', 'hot', 'acid', 8, 'printed', '');"
	    "INSERT INTO work VALUES (1, 'load', 1, 5, 1, '');"
	    "INSERT INTO load (id, method, minutes, headspace_thou, jar_in_table, source, confirmed,"
	    " elevation_um, elevation_slack_um, elevation_by)"
	    " VALUES (1, 'steam', 10, 250, 'pint', 'invented', 'yes', 0, 0, '');"
	    "INSERT INTO phase (work_id, name, began_wall_ms, began_awake_ms, began_boot) VALUES (1, 'come_up', 1, 1, '');"
	    "INSERT INTO jar (load_id, lot_id, place_in_load, size) VALUES (1, 1, 1, 'pint');"
	    "INSERT INTO journal (wall_ms, awake_ms, boot, verb, said, changes) VALUES (1, 1, '', 'v', 's', x'');";
	static const char second_clock[] =
	    "INSERT INTO phase (work_id, name, began_wall_ms, began_awake_ms, began_boot) VALUES (1, 'hold', 1, 1, '')";
	static const char clock_of_nothing[] =
	    "INSERT INTO phase (name, began_wall_ms, began_awake_ms, began_boot) VALUES ('hold', 1, 1, '')";
	static const char *const refused[] = {
		"UPDATE journal SET said = 'x'",
		"DELETE FROM journal",
		"INSERT INTO house (id) VALUES (2)",
		"INSERT INTO station_capacity VALUES (404, 'pint', 7)",
		"INSERT INTO jar (load_id, lot_id, size) VALUES (1, 404, 'pint')",
		"INSERT INTO jar (load_id, lot_id, place_in_load, size) VALUES (1, 1, 1, 'pint')",
		"INSERT INTO station (digit, kind, name) VALUES (1, 'pot', 'digit taken')",
		"INSERT INTO station (digit, kind, name) VALUES (9, 'oven', 'no such kind')",
		second_clock,
		clock_of_nothing,
		"DELETE FROM station WHERE id = 1",
		"UPDATE load SET minutes = 'ten'",
		"INSERT INTO work (kind, station_id, opened_wall_ms) VALUES ('batch', 1, 6)", /* the canner is taken */
		"INSERT INTO work (kind, station_id, opened_wall_ms, at_station) VALUES ('meal', 1, 6, 0)",
		"INSERT INTO run (id, fruit, fruit_mg, water_every_ms) VALUES (2, 'plums', 1, 1)", /* no such work */
	};
	run(db, day);
	char *before = kit_dump(kit.path, true);
	for (size_t i = 0; i < sizeof(refused) / sizeof(refused[0]); i++)
		ck_assert_msg(sqlite3_exec(db, refused[i], NULL, NULL, NULL) == SQLITE_CONSTRAINT, "%s", refused[i]);
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("schema", .begin = begin, .end = end), TEST(a_new_log_is_what_log_sql_makes),
	TEST(what_a_table_refers_to_is_there),       TEST(every_trigger_and_view_can_be_compiled),
	TEST(the_file_refuses_what_cannot_be),
};

TESTS("log schema", listed)
