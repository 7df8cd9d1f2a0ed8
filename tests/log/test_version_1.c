/*
 * A log of the first version is brought to the second: nothing is lost, and what
 * was done before can still be undone and redone.
 *
 * The old log is made here as the first version made it: its schema, its acts
 * captured over its tables.
 */
#include <check.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "log/migrations.h"
#include "support/failing.h"
#include "support/log_kit.h"

static struct log_kit kit;

static void begin(void)
{
	kit_init(&kit);
}

static void end(void)
{
	(void)failing_disarm();
	kit_clear(&kit);
}

/* --- the first version ------------------------------------------------------------ */

static const char *const old_tables[] = {
	"jar", "phase", "load", "lot", "lid_box", "station_capacity", "station", "house",
};
#define OLD_TABLE_COUNT (sizeof(old_tables) / sizeof(old_tables[0]))

/* A day of invented acts; every column is filled somewhere and null somewhere. */
static const char *const old_acts[] = {
	"UPDATE house SET name = 'Quince Hollow', elevation_um = 1417320000, elevation_slack_um = 15240000,"
	" elevation_by = 'a map', elevation_set_wall_ms = 5, measured_boil_mc = 95230,"
	" barometer_pa = 85400, invented = 1, practice_speed = 60, practice_wall_ms = 6,"
	" practice_real_wall_ms = 7",
	"INSERT INTO station VALUES (1, 1, 'boiling_water', 'Big enamel', NULL, 0);"
	"INSERT INTO station VALUES (2, 2, 'dial_gauge', 'Old iron', 99, 0);"
	"INSERT INTO station VALUES (3, 1, 'weighted_gauge', 'Given away', NULL, 1);"
	"INSERT INTO station_capacity VALUES (1, 'pint', 9), (1, 'half_pint', 12), (2, 'quart', 7);"
	"INSERT INTO lid_box VALUES (1, 'spring', 4, 60, 0), (2, 'empty', NULL, 0, 1)",
	"INSERT INTO lot VALUES (1, '2026-09-14-B1', 'quince jelly', 'jelly', 'hot', 'acid', 8);"
	"INSERT INTO load VALUES (1, 1, 'boiling_water', 'canner', 10, NULL, 250, 'half_pint', 'invented',"
	" 'yes', 1417320000, 0, 'a map', 'open', '', NULL, 0, 100);"
	"INSERT INTO phase VALUES (1, 1, 'come_up', 100, 1, 'boot-1', 0, NULL, NULL, NULL);"
	"INSERT INTO jar (id, load_id, lot_id, lid_box_id, place_in_load, size) VALUES"
	" (1, 1, 1, 1, 1, 'half_pint'), (2, 1, 1, NULL, 2, 'half_pint'), (3, 1, 1, 1, 3, 'half_pint')",
	"UPDATE phase SET ended_wall_ms = 200, ended_why = 'done' WHERE id = 1;"
	"INSERT INTO phase VALUES (2, 1, 'hold', 200, 2, 'boot-1', 600000, NULL, 300, 'lost');"
	"INSERT INTO phase VALUES (3, 1, 'hold', 400, 3, 'boot-1', 600000, 450, NULL, NULL)",
	"UPDATE phase SET ended_wall_ms = 900, ended_why = 'cut_short' WHERE id = 3;"
	"UPDATE load SET place = 'shelf', verdict = 'not_valid', verdict_why = 'cut short',"
	" process_ended_wall_ms = 900, broken = 1 WHERE id = 1;"
	"UPDATE jar SET state = 'broken', siphoning = 'over_half', checked_wall_ms = 950 WHERE id = 1;"
	"UPDATE jar SET state = 'unsealed', fate = 'fridge', fate_by_wall_ms = 2000,"
	" fate_done_wall_ms = 990, checked_wall_ms = 951 WHERE id = 2;"
	"UPDATE jar SET state = 'doubtful', fate = 'reprocess', siphoning = 'slight' WHERE id = 3",
	"INSERT INTO lot VALUES (2, '2026-09-14-B2', 'green beans', 'beans', 'raw', 'low_acid', 9);"
	"INSERT INTO load VALUES (2, 2, 'dial_gauge', 'canner', 25, 13, 1000, 'quart', 'invented',"
	" 'practice', 1417320000, 0, '', 'open', '', NULL, 0, 1000);"
	"INSERT INTO phase VALUES (4, 2, 'vent', 1000, 4, 'boot-1', 600000, NULL, NULL, NULL);"
	"INSERT INTO jar (id, load_id, lot_id, place_in_load, size) VALUES (4, 2, 2, 1, 'quart')",
};
#define OLD_ACT_COUNT (int)(sizeof(old_acts) / sizeof(old_acts[0]))

static void run(sqlite3 *db, const char *sql)
{
	char *error = NULL;
	int rc = sqlite3_exec(db, sql, NULL, NULL, &error);
	ck_assert_msg(rc == SQLITE_OK, "%s: %s", sql, error);
}

static void write_old_entry(sqlite3 *db, int64_t undoes, const void *changes, int size)
{
	sqlite3_stmt *entry;
	ck_assert_int_eq(sqlite3_prepare_v2(db, "INSERT INTO journal (wall_ms, awake_ms, boot, verb, who, "
	                                    "station_id, load_id, sentence, undoes_id, changes) VALUES "
	                                    "(?1, 1, 'boot-1', 'test', 'AB', 1, 1, 'old act', "
	                                    "nullif(?2, 0), ?3)", -1, &entry, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_bind_int64(entry, 1, KIT_MORNING_MS), SQLITE_OK);
	ck_assert_int_eq(sqlite3_bind_int64(entry, 2, undoes), SQLITE_OK);
	ck_assert_int_eq(sqlite3_bind_blob(entry, 3, changes, size, SQLITE_STATIC), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(entry), SQLITE_DONE);
	ck_assert_int_eq(sqlite3_finalize(entry), SQLITE_OK);
}

static sqlite3_session *capture(sqlite3 *db)
{
	sqlite3_session *session;
	ck_assert_int_eq(sqlite3session_create(db, "main", &session), SQLITE_OK);
	for (size_t i = 0; i < OLD_TABLE_COUNT; i++)
		ck_assert_int_eq(sqlite3session_attach(session, old_tables[i]), SQLITE_OK);
	return session;
}

static void record(sqlite3 *db, sqlite3_session *session, int64_t undoes)
{
	void *changes;
	int size;
	ck_assert_int_eq(sqlite3session_changeset(session, &size, &changes), SQLITE_OK);
	ck_assert_int_gt(size, 0);
	write_old_entry(db, undoes, changes, size);
	sqlite3_free(changes);
	sqlite3session_delete(session);
}

static int no_conflict(void *context, int kind, sqlite3_changeset_iter *at)
{
	(void)context;
	(void)at;
	ck_abort_msg("conflict %d", kind);
	return SQLITE_CHANGESET_ABORT;
}

/* The newest act of the old log, undone by the first version. */
static void undo_newest(sqlite3 *db)
{
	sqlite3_stmt *newest;
	void *inverse;
	int size;
	sqlite3_session *session = capture(db);
	ck_assert_int_eq(sqlite3_prepare_v2(db, "SELECT id, changes FROM journal ORDER BY id DESC LIMIT 1",
	                                    -1, &newest, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(newest), SQLITE_ROW);
	int64_t id = sqlite3_column_int64(newest, 0);
	const void *changes = sqlite3_column_blob(newest, 1);
	ck_assert_int_eq(sqlite3changeset_invert(sqlite3_column_bytes(newest, 1), changes, &size,
	                                         &inverse), SQLITE_OK);
	ck_assert_int_eq(sqlite3_finalize(newest), SQLITE_OK);
	ck_assert_int_eq(sqlite3changeset_apply(db, size, inverse, NULL, no_conflict, NULL), SQLITE_OK);
	sqlite3_free(inverse);
	record(db, session, id);
}

/* The first `acts` acts; the last of them undone when `undone`. */
static void make_old_log(int acts, bool undone)
{
	sqlite3 *db;
	kit_older_log(kit.path, 1);
	ck_assert_int_eq(sqlite3_open(kit.path, &db), SQLITE_OK);
	run(db, "PRAGMA foreign_keys = ON");
	for (int i = 0; i < acts; i++) {
		sqlite3_session *session = capture(db);
		run(db, old_acts[i]);
		record(db, session, 0);
	}
	if (undone)
		undo_newest(db);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
}

/* The rows a log of so many acts holds once it has been brought to the present version. */
static char *expected(int acts)
{
	struct log_kit other = kit;
	char *text;
	(void)snprintf(kit.path, sizeof(kit.path), "%s/expected-%d.db", kit.folder, acts);
	make_old_log(acts, false);
	kit.log = NULL;
	kit_open(&kit, LOG_WRITE);
	kit_close(&kit);
	text = kit_dump(kit.path, false);
	kit = other;
	return text;
}

static void holds(int acts)
{
	char *now = kit_dump(kit.path, false);
	char *meant = expected(acts);
	ck_assert_str_eq(now, meant);
	free(now);
	free(meant);
	ck_assert(kit_whole(kit.path));
}

/* --- nothing is lost ------------------------------------------------------------------ */

/* Rows of an old table that are not in the new one, or the other way round. */
static int64_t rows_that_differ(sqlite3 *db, const char *table)
{
	sqlite3_stmt *statement;
	char *columns = NULL;
	char *sql = sqlite3_mprintf("SELECT group_concat('\"' || name || '\"') "
	                            "FROM pragma_table_info(%Q, 'old')", table);
	ck_assert_int_eq(sqlite3_prepare_v2(db, sql, -1, &statement, NULL), SQLITE_OK);
	ck_assert_int_eq(sqlite3_step(statement), SQLITE_ROW);
	columns = sqlite3_mprintf("%s", (const char *)sqlite3_column_text(statement, 0));
	ck_assert_int_eq(sqlite3_finalize(statement), SQLITE_OK);
	sqlite3_free(sql);
	sql = sqlite3_mprintf("SELECT (SELECT count(*) FROM (SELECT %s FROM old.\"%w\" EXCEPT "
	                      "SELECT %s FROM main.\"%w\")) + abs((SELECT count(*) FROM old.\"%w\") - "
	                      "(SELECT count(*) FROM main.\"%w\"))",
	                      columns, table, columns, table, table, table);
	ck_assert_msg(sqlite3_prepare_v2(db, sql, -1, &statement, NULL) == SQLITE_OK, "%s", sql);
	ck_assert_int_eq(sqlite3_step(statement), SQLITE_ROW);
	int64_t rows = sqlite3_column_int64(statement, 0);
	ck_assert_int_eq(sqlite3_finalize(statement), SQLITE_OK);
	sqlite3_free(sql);
	sqlite3_free(columns);
	return rows;
}

START_TEST(every_row_of_every_table_is_carried_over)
{
	char copy[600];
	sqlite3 *db;
	make_old_log(OLD_ACT_COUNT, false);
	for (size_t i = 0; i < OLD_TABLE_COUNT; i++) {
		char sql[80];
		(void)snprintf(sql, sizeof(sql), "SELECT count(*) FROM %s", old_tables[i]);
		ck_assert_msg(kit_number(kit.path, sql) > 0, "the old log has no %s", old_tables[i]);
	}
	char *before = kit_dump(kit.path, true);
	kit_open(&kit, LOG_WRITE);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), (int)log_migration_count);
	ck_assert(kit_whole(kit.path));
	(void)snprintf(copy, sizeof(copy), "%s.backups/2026-09-14_before_2.db", kit.path);
	char *kept = kit_dump(copy, true);
	ck_assert_str_eq(kept, before);
	ck_assert_int_eq(kit_number(copy, "PRAGMA user_version"), 1);
	free(before);
	free(kept);
	ck_assert_int_eq(sqlite3_open(kit.path, &db), SQLITE_OK);
	char *attach = sqlite3_mprintf("ATTACH %Q AS old", copy);
	run(db, attach);
	sqlite3_free(attach);
	for (size_t i = 0; i < OLD_TABLE_COUNT; i++)
		ck_assert_int_eq(rows_that_differ(db, old_tables[i]), 0);
	ck_assert_int_eq(rows_that_differ(db, "journal"), 0);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
}
END_TEST

START_TEST(no_rule_of_the_schema_is_lost)
{
	static const char second_clock[] =
		"INSERT INTO phase (load_id, name, began_wall_ms, began_awake_ms, began_boot) "
		"VALUES (2, 'second clock', 1, 1, '')";
	static const char *const refused[] = {
		"UPDATE journal SET sentence = 'x'",
		"DELETE FROM journal",
		"INSERT INTO station_capacity VALUES (404, 'pint', 7)",
		"INSERT INTO jar (load_id, lot_id, size) VALUES (1, 404, 'pint')",
		"INSERT INTO jar (load_id, lot_id, place_in_load, size) VALUES (1, 1, 1, 'pint')",
		"INSERT INTO station (digit, kind, name) VALUES (1, 'pot', 'digit taken')",
		"INSERT INTO station (digit, kind, name) VALUES (9, 'oven', 'no such kind')",
		second_clock,
		"DELETE FROM station WHERE id = 1",
	};
	make_old_log(OLD_ACT_COUNT, false);
	kit_open(&kit, LOG_WRITE);
	kit_close(&kit);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM sqlite_master WHERE sql LIKE '%\\_new%' "
	                            "ESCAPE '\\'"), 0);
	sqlite3 *db;
	ck_assert_int_eq(sqlite3_open(kit.path, &db), SQLITE_OK);
	run(db, "PRAGMA foreign_keys = ON");
	for (size_t i = 0; i < sizeof(refused) / sizeof(refused[0]); i++)
		ck_assert_msg(sqlite3_exec(db, refused[i], NULL, NULL, NULL) == SQLITE_CONSTRAINT, "%s",
		              refused[i]);
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
}
END_TEST

START_TEST(the_old_rows_are_read_as_rows_of_now)
{
	struct log_house house;
	struct log_station station;
	struct log_jar jar;
	struct log_phase phase;
	struct log_entry *story;
	size_t count;
	make_old_log(OLD_ACT_COUNT, false);
	kit_open(&kit, LOG_WRITE);
	KIT_OK(&kit, log_house_get(kit.log, &house, &kit.fault));
	ck_assert_str_eq(house.name, "Quince Hollow");
	ck_assert_int_eq(house.practice_real_wall_ms, 7);
	ck_assert_int_eq(house.units, UNITS_US);
	ck_assert_int_eq(house.run_minutes, 0); /* nobody had set it */
	KIT_OK(&kit, log_station_get(kit.log, 2, &station, &kit.fault));
	ck_assert_int_eq(station.kind, STATION_DIAL_GAUGE);
	ck_assert_int_eq(station.gauge_checked_wall_ms, 99);
	ck_assert_int_eq(station.volume_ul, 0);
	ck_assert_str_eq(station.who, "");
	KIT_OK(&kit, log_jar_get(kit.log, 2, &jar, &kit.fault));
	ck_assert_int_eq(jar.load_id, 1);
	ck_assert_int_eq(jar.batch_id, 0);
	ck_assert_int_eq(jar.filled.wall_ms, 0);
	ck_assert_int_eq(jar.fate_done_wall_ms, 990);
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(2), &phase, &kit.fault));
	ck_assert_str_eq(phase.name, "vent");
	ck_assert_int_eq(phase.run_id, 0);
	ck_assert_int_eq(phase.batch_id, 0);
	KIT_OK(&kit, log_story(kit.log, kit_load(1), &story, &count, &kit.fault));
	ck_assert_uint_eq(count, OLD_ACT_COUNT);
	ck_assert_int_eq(story[0].run_id, 0);
	ck_assert_str_eq(story[0].sentence, "old act");
	free(story);
}
END_TEST

/* --- what was done before ---------------------------------------------------------------- */

static void undo(int64_t id)
{
	struct log_entry entry = kit_entry("undo", 1, 1);
	KIT_OK(&kit, log_undo(kit.log, id, &entry, &kit.fault));
}

START_TEST(acts_of_the_first_version_are_undone_one_by_one)
{
	make_old_log(OLD_ACT_COUNT, false);
	kit_open(&kit, LOG_WRITE);
	for (int act = OLD_ACT_COUNT; act >= 1; act--) {
		undo(act);
		holds(act - 1);
	}
	/* and, newest undo first, all done again */
	for (int act = 1; act <= OLD_ACT_COUNT; act++) {
		undo(2 * OLD_ACT_COUNT + 1 - act);
		holds(act);
	}
}
END_TEST

START_TEST(an_undo_of_the_first_version_is_redone)
{
	make_old_log(OLD_ACT_COUNT, true);
	kit_open(&kit, LOG_WRITE);
	holds(OLD_ACT_COUNT - 1);
	undo(OLD_ACT_COUNT + 1);
	holds(OLD_ACT_COUNT);
	undo(OLD_ACT_COUNT);
	holds(OLD_ACT_COUNT - 1);
}
END_TEST

START_TEST(an_old_act_that_later_ones_build_on_is_refused)
{
	struct log_jar jar;
	struct log_entry late = kit_entry("A jar noted late", 1, 2);
	struct log_entry entry = kit_entry("undo", 1, 1);
	make_old_log(OLD_ACT_COUNT, false);
	kit_open(&kit, LOG_WRITE);
	KIT_OK(&kit, log_jar_get(kit.log, 4, &jar, &kit.fault));
	jar.id = 0;
	jar.place_in_load = 2;
	jar.lot_id = 1;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &late, &kit.fault));
	char *before = kit_dump(kit.path, true);
	ck_assert(!log_undo(kit.log, OLD_ACT_COUNT, &entry, &kit.fault)); /* would leave it without a load */
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFLICT);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "hangs on it"));
	ck_assert(!log_undo(kit.log, 2, &entry, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFLICT);
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
	undo(late.id);
	undo(OLD_ACT_COUNT);
	holds(OLD_ACT_COUNT - 1);
}
END_TEST

/* --- a migration that does not come to its end ---------------------------------------------- */

static char *old_bytes; /* reachable, when a child dies in the middle */
static size_t old_size;
static char *then;

static void keep_old_file(void)
{
	make_old_log(OLD_ACT_COUNT, false);
	FILE *file = fopen(kit.path, "rb");
	ck_assert_ptr_nonnull(file);
	ck_assert_int_eq(fseek(file, 0, SEEK_END), 0);
	old_size = (size_t)ftell(file);
	old_bytes = malloc(old_size);
	ck_assert_ptr_nonnull(old_bytes);
	rewind(file);
	ck_assert_uint_eq(fread(old_bytes, 1, old_size, file), old_size);
	ck_assert_int_eq(fclose(file), 0);
}

/* The first version's file again, the log of the last attempt gone. */
static void put_old_file(void)
{
	char side[520];
	static const char *const ends[] = {"-wal", "-shm", "-journal"};
	for (size_t i = 0; i < sizeof(ends) / sizeof(ends[0]); i++) {
		(void)snprintf(side, sizeof(side), "%s%s", kit.path, ends[i]);
		(void)unlink(side);
	}
	kit_write_file(kit.path, old_bytes, old_size);
}

static bool lives(int n)
{
	int status;
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		failing_arm_disk(n, FAILING_DEATH, false);
		if (!log_open(kit.path, LOG_WRITE, &kit.log, NULL))
			_exit(1);
		log_close(kit.log);
		_exit(0);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert(WIFEXITED(status));
	ck_assert(WEXITSTATUS(status) == 0 || WEXITSTATUS(status) == FAILING_DEATH_STATUS);
	return WEXITSTATUS(status) == 0;
}

START_TEST(a_death_in_the_middle_is_made_good_at_the_next_start)
{
	bool lived = false;
	then = expected(OLD_ACT_COUNT);
	keep_old_file();
	for (int n = 1; n < 2000 && !lived; n += n < 20 ? 1 : 19) {
		put_old_file();
		lived = lives(n);
		kit_open(&kit, LOG_WRITE);
		kit_close(&kit);
		char *now = kit_dump(kit.path, false);
		ck_assert_msg(strcmp(now, then) == 0, "n = %d:\n%s", n, now);
		free(now);
		ck_assert(kit_whole(kit.path));
	}
	ck_assert(lived);
	free(then);
	free(old_bytes);
}
END_TEST

/* Memory or disk runs out: the log stays what it was, and the copy is whole. */
START_TEST(a_failure_in_the_middle_changes_nothing)
{
	int failed = 0;
	keep_old_file();
	char *before = kit_dump(kit.path, true);
	for (int n = 1; n < 20000; n += n < 20 ? 1 : 331) {
		struct fault fault = {.kind = FAULT_NONE};
		put_old_file();
		if (_i == 0)
			failing_arm_memory(n, FAILING_ONCE);
		else
			failing_arm_disk(n, FAILING_ONCE, true);
		bool ok = log_open(kit.path, LOG_WRITE, &kit.log, &fault);
		bool sprung = failing_disarm();
		kit_close(&kit);
		bool is_old = kit_number(kit.path, "PRAGMA user_version") == 1;
		failed += !ok;
		ck_assert_msg(ok || sprung, "n = %d: %s", n, fault.sentence);
		if (ok || !is_old) { /* done, and perhaps a later step of opening failed */
			ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 4);
		} else {
			char *now = kit_dump(kit.path, true);
			ck_assert_msg(strcmp(now, before) == 0, "n = %d: half a migration is left:\n%s", n, now);
			free(now);
		}
		ck_assert(kit_whole(kit.path));
		if (!sprung)
			break;
	}
	ck_assert_int_gt(failed, 2);
	free(before);
	free(old_bytes);
}
END_TEST

int main(void)
{
	failing_install();
	Suite *suite = suite_create("log of version 1");
	TCase *tests = tcase_create("version 1");
	tcase_add_checked_fixture(tests, begin, end);
	tcase_set_timeout(tests, 60);
	tcase_add_test(tests, every_row_of_every_table_is_carried_over);
	tcase_add_test(tests, no_rule_of_the_schema_is_lost);
	tcase_add_test(tests, the_old_rows_are_read_as_rows_of_now);
	tcase_add_test(tests, acts_of_the_first_version_are_undone_one_by_one);
	tcase_add_test(tests, an_undo_of_the_first_version_is_redone);
	tcase_add_test(tests, an_old_act_that_later_ones_build_on_is_refused);
	tcase_add_test(tests, a_death_in_the_middle_is_made_good_at_the_next_start);
	tcase_add_loop_test(tests, a_failure_in_the_middle_changes_nothing, 0, 2);
	suite_add_tcase(suite, tests);
	SRunner *runner = srunner_create(suite);
	srunner_run_all(runner, CK_NORMAL);
	int failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
