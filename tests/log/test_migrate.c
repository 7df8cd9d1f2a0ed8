/*
 * An older log is brought up to date, after a copy of it was put aside.
 *
 * This program brings its own list of migrations: the real ones and one more.
 */
#include <assert.h>
#include <check.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The real list under another name, and its texts. */
#define log_migrations real_migrations
#define log_migration_count real_migration_count
#include "migrations.c"
#undef log_migrations
#undef log_migration_count

#include "log/log_private.h"
#include "support/log_kit.h"

extern const char *const log_migrations[];
extern const size_t log_migration_count;

static_assert(sizeof(real_migrations) / sizeof(real_migrations[0]) == 8,
              "name the new migration's text in log_migrations below, before the invented one");

/* Rebuilds a table others refer to: only possible with foreign keys off, and, since
 * triggers name it, with their check put off (SQLite documentation, lang_altertable.html). */
static const char invented[] =
	"PRAGMA legacy_alter_table = ON;"
	"CREATE TABLE lot_new (id INTEGER PRIMARY KEY, code TEXT NOT NULL UNIQUE, product TEXT NOT NULL,"
	" food TEXT NOT NULL, pack TEXT NOT NULL, acidity TEXT NOT NULL, made_wall_ms INTEGER NOT NULL,"
	" note TEXT NOT NULL DEFAULT 'none') STRICT;"
	"INSERT INTO lot_new SELECT *, 'old' FROM lot;"
	"DROP TABLE lot;"
	"ALTER TABLE lot_new RENAME TO lot;"
	"PRAGMA legacy_alter_table = OFF;";

const char *const log_migrations[] = {migration_0001, migration_0002, migration_0003, migration_0004,
                                      migration_0005, migration_0006, migration_0007, migration_0008, invented};
const size_t log_migration_count = sizeof(log_migrations) / sizeof(log_migrations[0]);

static struct log_kit kit;

static void begin(void)
{
	kit_init(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

/* A log as the first version of the program left it. */
static void make_old_log(void)
{
	kit_older_log(kit.path, 1);
	kit_sql(kit.path,
	        "INSERT INTO lot VALUES (1, '2026-09-14-B1', 'quince jelly', 'jelly', 'hot', 'acid', 5);"
	        "INSERT INTO station VALUES (1, 1, 'steam', 'x', NULL, 0);"
	        "INSERT INTO load VALUES (1, 1, 'steam', 'canner', 10, NULL, 250, 'pint', 's', 'yes', 0, 0, "
	        "'', 'open', '', NULL, 0, 5);"
	        "INSERT INTO jar (load_id, lot_id, place_in_load, size) VALUES (1, 1, 1, 'pint');"
	        "INSERT INTO journal VALUES (1, 1789376400000, 0, '', 'v', '', 1, 1, 's', NULL, 0, x'')");
}

START_TEST(a_new_log_gets_every_migration)
{
	kit_open(&kit, LOG_CREATE);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), (int)log_migration_count);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(note) FROM lot"), 0);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA application_id"), LOG_APPLICATION_ID);
}
END_TEST

START_TEST(an_older_log_is_copied_then_migrated)
{
	char copy[600];
	struct log_lot lot;
	make_old_log();
	char *before = kit_dump(kit.path, true);
	kit_open(&kit, LOG_WRITE);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), (int)log_migration_count);
	ck_assert_int_eq(kit_number(kit.path, "SELECT note = 'old' FROM lot"), 1);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 1);
	ck_assert(kit_whole(kit.path));
	KIT_OK(&kit, log_lot_get(kit.log, 1, &lot, &kit.fault));
	ck_assert_str_eq(lot.product, "quince jelly");
	(void)snprintf(copy, sizeof(copy), "%s.backups/2026-09-14_before_2.db", kit.path);
	char *kept = kit_dump(copy, true);
	ck_assert_str_eq(kept, before);
	ck_assert_int_eq(kit_number(copy, "PRAGMA user_version"), 1);
	free(before);
	free(kept);
}
END_TEST

START_TEST(foreign_keys_are_on_again_afterwards)
{
	struct log_jar jar = {.load_id = 1, .lot_id = 404, .place_in_load = 2, .size = "pint"};
	make_old_log();
	kit_open(&kit, LOG_WRITE);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	ck_assert(!log_put_jar(kit.log, &jar, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
}
END_TEST

START_TEST(looking_does_not_migrate)
{
	make_old_log();
	kit_refused(&kit, LOG_LOOK, FAULT_READ_ONLY);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "older"));
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), 1);
}
END_TEST

START_TEST(a_migration_that_fails_changes_nothing)
{
	make_old_log();
	kit_sql(kit.path, "CREATE TABLE lot_new (in_the_way, too)");
	char *before = kit_dump(kit.path, true);
	ck_assert(!log_open(kit.path, LOG_WRITE, &kit.log, &kit.fault));
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), 1); /* not even number 2 stays */
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

START_TEST(the_copy_made_before_serves_when_the_log_breaks)
{
	char used[600];
	make_old_log();
	kit_open(&kit, LOG_WRITE);
	kit_close(&kit);
	kit_write_file(kit.path, "broken", 6);
	KIT_OK(&kit, log_restore_backup(kit.path, used, sizeof(used), &kit.fault));
	ck_assert_ptr_nonnull(strstr(used, "_before_2.db"));
	kit_open(&kit, LOG_WRITE);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), (int)log_migration_count);
}
END_TEST

/* Libraries before 3.37 do not know STRICT; everything else must stay. */
START_TEST(strict_is_left_out_for_older_libraries)
{
	char *plain = migration_without_strict(migration_0001);
	sqlite3 *db;
	ck_assert_ptr_nonnull(plain);
	ck_assert_ptr_nonnull(strstr(migration_0001, "STRICT"));
	ck_assert_ptr_null(strstr(plain, "STRICT"));
	ck_assert_ptr_nonnull(strstr(plain, ") WITHOUT ROWID;"));
	ck_assert_int_eq(sqlite3_open(":memory:", &db), SQLITE_OK);
	ck_assert_msg(sqlite3_exec(db, plain, NULL, NULL, NULL) == SQLITE_OK, "%s", sqlite3_errmsg(db));
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
	free(plain);
	plain = migration_without_strict("a) STRICT; b");
	ck_assert_ptr_nonnull(plain);
	ck_assert_ptr_eq(strstr(plain, "a);"), plain);
	ck_assert_str_eq(plain + strlen(plain) - 2, " b");
	free(plain);
}
END_TEST

int main(void)
{
	Suite *suite = suite_create("log migrations");
	TCase *tests = tcase_create("migrations");
	tcase_add_checked_fixture(tests, begin, end);
	tcase_add_test(tests, a_new_log_gets_every_migration);
	tcase_add_test(tests, an_older_log_is_copied_then_migrated);
	tcase_add_test(tests, foreign_keys_are_on_again_afterwards);
	tcase_add_test(tests, looking_does_not_migrate);
	tcase_add_test(tests, a_migration_that_fails_changes_nothing);
	tcase_add_test(tests, the_copy_made_before_serves_when_the_log_breaks);
	tcase_add_test(tests, strict_is_left_out_for_older_libraries);
	suite_add_tcase(suite, tests);
	SRunner *runner = srunner_create(suite);
	srunner_run_all(runner, CK_NORMAL);
	int failed = srunner_ntests_failed(runner);
	srunner_free(runner);
	return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
