/*
 * An older log is brought up to date, after a copy of it was put aside.
 *
 * The migrations are invented: this file hands its own list to the log, which follows
 * whatever the program has. It is also the example of how one is written.
 */
#include <check.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "log/disk/log_private.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/failing.h"
#include "support/log_kit.h"
#include "support/tests.h"

/* A column more. It is written out in full: a column that is missing in a stored row is
 * captured as null (seen with SQLite 3.40), and an undo would want to bring that back. */
static const char adds_a_column[] = "ALTER TABLE jar ADD COLUMN shelf TEXT NOT NULL DEFAULT '';"
                                    "UPDATE jar SET shelf = '';"
                                    "CREATE VIEW station_names AS SELECT digit, name FROM station;";

/* A list of words grows, so that the table is made anew, its index with it. Others refer
 * to it and a view names it: only possible while foreign keys are off and that check is
 * put off (SQLite documentation, lang_altertable.html), as they are during a migration. */
static const char rebuilds_a_table[] =
    "CREATE TABLE station_new ("
    " id INTEGER PRIMARY KEY,"
    " digit INTEGER NOT NULL CHECK (digit BETWEEN 1 AND 9),"
    " kind TEXT NOT NULL CHECK (kind IN ('boiling_water', 'steam', 'dial_gauge', 'weighted_gauge', 'juicer', 'pot',"
    "  'drier')),"
    " name TEXT NOT NULL CHECK (length(name) > 0),"
    " gauge_checked_wall_ms INTEGER,"
    " retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1)),"
    " volume_ul INTEGER CHECK (volume_ul > 0),"
    " who TEXT NOT NULL DEFAULT '',"
    " own_heat INTEGER NOT NULL DEFAULT 0 CHECK (own_heat IN (0, 1)),"
    " wall TEXT CHECK (wall IN ('heavy', 'lock')),"
    " watts INTEGER CHECK (watts > 0),"
    " trays INTEGER, tray_wide_thou INTEGER, tray_deep_thou INTEGER, water_minutes INTEGER"
    ") STRICT;"
    "INSERT INTO station_new SELECT * FROM station;"
    "DROP TABLE station;"
    "ALTER TABLE station_new RENAME TO station;"
    "CREATE UNIQUE INDEX station_digit ON station (digit) WHERE retired = 0;";

static const char fails_at_its_end[] =
    "CREATE TABLE cellar (id INTEGER PRIMARY KEY); INSERT INTO cellar VALUES (1), (1);";
static const char leaves_jars_without_a_lot[] = "DELETE FROM lot;";

#define LIST_MAX 200
static const char *list[LIST_MAX];
static struct layouts ahead; /* the program's layouts and two invented ones */
static struct log_kit kit;

static int64_t now_layout(void)
{
	return layout_newest(&log_layouts);
}

/* The program's own list with these two behind it. */
static void lay_out(const char *first, const char *second)
{
	size_t count = log_layouts.migration_count;
	ck_assert_uint_le(count + 2, LIST_MAX);
	for (size_t i = 0; i < count; i++)
		list[i] = log_layouts.migrations[i];
	list[count] = first;
	list[count + 1] = second;
	ahead = (struct layouts){ .first = log_layouts.first,
		                  .schema = log_layouts.schema,
		                  .migrations = list,
		                  .migration_count = count + 2 };
}

static void begin(void)
{
	kit_init(&kit);
	lay_out(adds_a_column, rebuilds_a_table);
}

static void end(void)
{
	(void)failing_disarm();
	kit_clear(&kit);
}

static int64_t load_id;
static int64_t load_act;

/* A log as the program leaves it: a canner, a load in it, three jars. */
static void make_log(void)
{
	struct log_entry canner = kit_entry("Canner set up", 0, 0);
	struct log_entry load = kit_entry("Load started", 0, 0);
	kit_open(&kit, LOG_CREATE);
	KIT_OK(&kit, kit_put_canner(kit.log, 1, "Big enamel", &canner, &kit.fault));
	KIT_OK(&kit, kit_start_load(kit.log, canner.station_id, "2026-09-14-B1", 3, &load, &kit.fault));
	load_id = load.work_id;
	load_act = load.id;
	kit_close(&kit);
}

static bool open_ahead(enum log_mode mode)
{
	memset(&kit.fault, 0, sizeof(kit.fault));
	return log_open_laid_out(kit.path, mode, &ahead, &kit.log, &kit.fault);
}

static void is_migrated(void)
{
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), now_layout() + 2);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA application_id"), LOG_APPLICATION_ID);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM sqlite_schema WHERE name = 'station' AND "
	                                      "sql LIKE '%drier%'"),
	                 1);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM sqlite_schema WHERE name = 'station_digit'"), 1);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(shelf) FROM jar"),
	                 kit_number(kit.path, "SELECT count(*) FROM jar"));
	ck_assert(kit_whole(kit.path));
}

START_TEST(a_new_log_gets_every_migration)
{
	KIT_OK(&kit, open_ahead(LOG_CREATE));
	is_migrated();
}
END_TEST

START_TEST(an_older_log_is_copied_then_migrated)
{
	char copy[600];
	struct log_lot lot;
	make_log();
	char *before = kit_dump(kit.path, true);
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	is_migrated();
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 3);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM station_names WHERE name = 'Big enamel'"), 1);
	KIT_OK(&kit, log_lot_get(kit.log, 1, &lot, &kit.fault));
	ck_assert_str_eq(lot.code, "2026-09-14-B1");
	(void)snprintf(copy, sizeof(copy), "%s.backups/2026-09-14_before_%d.db", kit.path, (int)now_layout() + 1);
	char *kept = kit_dump(copy, true);
	ck_assert_str_eq(kept, before);
	ck_assert_int_eq(kit_number(copy, "PRAGMA user_version"), now_layout());
	free(before);
	free(kept);
}
END_TEST

START_TEST(a_log_up_to_date_is_left_as_it_is)
{
	make_log();
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	kit_close(&kit);
	char *before = kit_dump(kit.path, true);
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

START_TEST(foreign_keys_are_on_again_afterwards)
{
	make_log();
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	struct log_jar jar = { .load_id = load_id, .lot_id = 404, .place_in_load = 9, .size = "pint" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	ck_assert(!log_put_jar(kit.log, &jar, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
}
END_TEST

START_TEST(an_act_from_before_is_undone_and_redone)
{
	struct log_entry undo = kit_entry("undo", 1, load_id);
	struct log_entry redo = kit_entry("redo", 1, load_id);
	make_log();
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	char *before = kit_dump(kit.path, false);
	KIT_OK(&kit, log_undo(kit.log, load_act, &undo, &kit.fault));
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 0);
	KIT_OK(&kit, log_undo(kit.log, undo.id, &redo, &kit.fault));
	char *after = kit_dump(kit.path, false);
	ck_assert_str_eq(before, after);
	free(before);
	free(after);
}
END_TEST

START_TEST(looking_does_not_migrate)
{
	make_log();
	ck_assert(!open_ahead(LOG_LOOK));
	ck_assert_int_eq(kit.fault.kind, FAULT_READ_ONLY);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "older"));
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), now_layout());
}
END_TEST

/* Neither the migration that failed nor the one before it leaves a trace. */
START_TEST(a_migration_that_fails_changes_nothing)
{
	static const char *const second[] = { fails_at_its_end, leaves_jars_without_a_lot };
	make_log();
	lay_out(adds_a_column, second[_i]);
	char *before = kit_dump(kit.path, true);
	int64_t objects = kit_number(kit.path, "SELECT count(*) FROM sqlite_schema");
	ck_assert(!open_ahead(LOG_WRITE));
	ck_assert_ptr_null(kit.log);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), now_layout());
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM sqlite_schema"), objects);
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(before, after);
	ck_assert(kit_whole(kit.path));
	free(before);
	free(after);
	kit_open(&kit, LOG_WRITE); /* and the program that wrote it goes on with it */
}
END_TEST

START_TEST(the_copy_made_before_serves_when_the_log_breaks)
{
	char used[600];
	char name[40];
	make_log();
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	kit_close(&kit);
	kit_write_file(kit.path, "broken", 6);
	KIT_OK(&kit, log_restore_backup(kit.path, NULL, used, sizeof(used), &kit.fault));
	(void)snprintf(name, sizeof(name), "_before_%d.db", (int)now_layout() + 1);
	ck_assert_ptr_nonnull(strstr(used, name));
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	is_migrated();
}
END_TEST

/* Libraries before 3.37 do not know STRICT; everything else must stay. */
START_TEST(strict_is_left_out_for_older_libraries)
{
	char *plain = layout_without_strict(log_layouts.schema);
	sqlite3 *db;
	ck_assert_ptr_nonnull(plain);
	ck_assert_ptr_nonnull(strstr(log_layouts.schema, "STRICT"));
	ck_assert_ptr_null(strstr(plain, "STRICT"));
	ck_assert_ptr_nonnull(strstr(plain, ") WITHOUT ROWID;"));
	ck_assert_int_eq(sqlite3_open(":memory:", &db), SQLITE_OK);
	ck_assert_msg(sqlite3_exec(db, plain, NULL, NULL, NULL) == SQLITE_OK, "%s", sqlite3_errmsg(db));
	ck_assert_int_eq(sqlite3_close(db), SQLITE_OK);
	free(plain);
	plain = layout_without_strict("a) STRICT; b");
	ck_assert_ptr_nonnull(plain);
	ck_assert_ptr_eq(strstr(plain, "a);"), plain);
	ck_assert_str_eq(plain + strlen(plain) - 2, " b");
	free(plain);
}
END_TEST

/* --- a migration that does not come to its end ---------------------------------------------- */

static char *old_bytes; /* reachable, when a child dies in the middle */
static size_t old_size;

static void keep_old_file(void)
{
	make_log();
	FILE *file = fopen(kit.path, "rb");
	ck_assert_ptr_nonnull(file);
	ck_assert_int_eq(fseek(file, 0, SEEK_END), 0);
	old_size = (size_t)ftell(file);
	old_bytes = malloc(old_size);
	ck_assert_ptr_nonnull(old_bytes);
	ck_assert_int_eq(fseek(file, 0, SEEK_SET), 0);
	ck_assert_uint_eq(fread(old_bytes, 1, old_size, file), old_size);
	ck_assert_int_eq(fclose(file), 0);
}

/* The file of before again, what the last attempt left beside it gone. */
static void put_old_file(void)
{
	char side[520];
	static const char *const ends[] = { "-wal", "-shm", "-journal" };
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
		if (!open_ahead(LOG_WRITE))
			_exit(1);
		log_close(kit.log);
		_exit(0);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert(WIFEXITED(status));
	ck_assert(WEXITSTATUS(status) == 0 || WEXITSTATUS(status) == FAILING_DEATH_STATUS);
	return WEXITSTATUS(status) == 0;
}

/* Every row, once it has come through without a death. */
static char *migrated_rows(void)
{
	put_old_file();
	KIT_OK(&kit, open_ahead(LOG_WRITE));
	kit_close(&kit);
	return kit_dump(kit.path, true);
}

START_TEST(a_death_in_the_middle_is_made_good_at_the_next_start)
{
	bool lived = false;
	int deaths = 0;
	keep_old_file();
	char *then = migrated_rows();
	for (int n = 1; n < 2000 && !lived; n += n < 20 ? 1 : 19) {
		put_old_file();
		lived = lives(n);
		deaths += !lived;
		KIT_OK(&kit, open_ahead(LOG_WRITE));
		kit_close(&kit);
		char *now = kit_dump(kit.path, true);
		ck_assert_msg(strcmp(now, then) == 0, "n = %d:\n%s", n, now);
		free(now);
		is_migrated();
	}
	ck_assert(lived);
	ck_assert_int_gt(deaths, 10);
	free(then);
	free(old_bytes);
}
END_TEST

/* Memory or disk runs out: the log stays what it was, or is wholly migrated. */
START_TEST(a_failure_in_the_middle_changes_nothing)
{
	int untouched = 0;
	keep_old_file();
	char *before = kit_dump(kit.path, true);
	char *then = migrated_rows();
	for (int n = 1; n < 20000; n += n < 20 ? 1 : 331) {
		put_old_file();
		if (_i == 0)
			failing_arm_memory(n, FAILING_ONCE);
		else
			failing_arm_disk(n, FAILING_ONCE, true);
		bool ok = open_ahead(LOG_WRITE);
		bool sprung = failing_disarm();
		kit_close(&kit);
		bool is_old = kit_number(kit.path, "PRAGMA user_version") == now_layout();
		ck_assert_msg(ok || sprung, "n = %d: %s", n, kit.fault.sentence);
		ck_assert(!(ok && is_old)); /* a fault without a change may come of a later step of opening */
		untouched += is_old;
		char *now = kit_dump(kit.path, true);
		ck_assert_msg(strcmp(now, is_old ? before : then) == 0, "n = %d: half a migration is left:\n%s", n,
		              now);
		free(now);
		ck_assert(kit_whole(kit.path));
		if (!sprung)
			break;
	}
	ck_assert_int_gt(untouched, 2);
	free(before);
	free(then);
	free(old_bytes);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("migrations", .begin = begin, .end = end, .seconds = 60),
	TEST(a_new_log_gets_every_migration),
	TEST(an_older_log_is_copied_then_migrated),
	TEST(a_log_up_to_date_is_left_as_it_is),
	TEST(foreign_keys_are_on_again_afterwards),
	TEST(an_act_from_before_is_undone_and_redone),
	TEST(looking_does_not_migrate),
	EACH(a_migration_that_fails_changes_nothing, 0, 2),
	TEST(the_copy_made_before_serves_when_the_log_breaks),
	TEST(strict_is_left_out_for_older_libraries),
	TEST(a_death_in_the_middle_is_made_good_at_the_next_start),
	EACH(a_failure_in_the_middle_changes_nothing, 0, 2),
};

int main(void)
{
	failing_install();
	return tests_run(tests_suite("log migrations", listed, LISTED_COUNT(listed)));
}
