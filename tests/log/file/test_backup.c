/* Copies of what was recorded, and a log that gets one put in its place. */
#include <check.h>
#include <dirent.h>
#include <fcntl.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define PAGE 4096L
#define NINE_HOURS_MS (INT64_C(9) * 3600000) /* from midnight to KIT_MORNING_MS */

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

/* PATH.backups/NAME in a buffer of its own. */
static const char *backup(const char *name)
{
	static char path[600];
	(void)snprintf(path, sizeof(path), "%s.backups/%s", kit.path, name);
	return path;
}

static int files_in_backups(void)
{
	char folder[600];
	int files = 0;
	(void)snprintf(folder, sizeof(folder), "%s.backups", kit.path);
	DIR *dir = opendir(folder);
	ck_assert_ptr_nonnull(dir);
	for (const struct dirent *entry = readdir(dir); entry != NULL; entry = readdir(dir))
		files += entry->d_name[0] != '.';
	ck_assert_int_eq(closedir(dir), 0);
	return files;
}

static void back_up(int64_t wall_ms, bool expected)
{
	bool made = !expected;
	KIT_OK(&kit, log_backup(kit.log, wall_ms, &made, &kit.fault));
	ck_assert_int_eq(made, expected);
}

static void one_more_act(void)
{
	struct log_entry entry = kit_entry("one more", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
}

/* Spoil bytes in the middle of a closed file. */
static void spoil(const char *path, long at, size_t bytes)
{
	unsigned char junk[4096];
	FILE *file = fopen(path, "r+b");
	ck_assert_ptr_nonnull(file);
	memset(junk, 0xA5, sizeof(junk));
	ck_assert_int_eq(fseek(file, at, SEEK_SET), 0);
	ck_assert_uint_eq(fwrite(junk, 1, bytes, file), bytes);
	ck_assert_int_eq(fclose(file), 0);
}

/* The number of the newest entry; kit_start has made the first. */
static const char *made(const char *when, int entry)
{
	char name[60];
	(void)snprintf(name, sizeof(name), "%s_%d.db", when, entry);
	return backup(name);
}

/* --- one whenever something was recorded --------------------------------------------- */

START_TEST(a_backup_is_made_when_something_was_recorded_since_the_last)
{
	back_up(KIT_MORNING_MS, true);
	ck_assert(kit_exists(made("2026-09-14_090000", 1)));
	back_up(KIT_MORNING_MS + 1000, false);
	one_more_act();
	back_up(KIT_MORNING_MS + 1000, true);
	back_up(KIT_MORNING_MS + KIT_DAY_MS, false);
	ck_assert_int_eq(files_in_backups(), 2);
	ck_assert_int_eq(kit_number(made("2026-09-14_090000", 1), "SELECT count(*) FROM journal"), 1);
	ck_assert_int_eq(kit_number(made("2026-09-14_090001", 2), "SELECT count(*) FROM journal"), 2);
}
END_TEST

START_TEST(the_next_opening_knows_what_was_backed_up)
{
	back_up(KIT_MORNING_MS, true);
	kit_reopen(&kit);
	back_up(KIT_MORNING_MS + KIT_DAY_MS, false);
	ck_assert_int_eq(unlink(made("2026-09-14_090000", 1)), 0);
	back_up(KIT_MORNING_MS + KIT_DAY_MS, true);
}
END_TEST

START_TEST(the_name_is_of_the_utc_day)
{
	back_up(KIT_MORNING_MS - NINE_HOURS_MS - 1000, true);
	ck_assert(kit_exists(made("2026-09-13_235959", 1)));
	one_more_act();
	back_up(KIT_MORNING_MS - NINE_HOURS_MS, true);
	ck_assert(kit_exists(made("2026-09-14_000000", 2)));
}
END_TEST

START_TEST(a_backup_is_one_whole_log_of_its_own)
{
	struct log_entry entry = kit_entry("Load", 0, 0);
	struct log_jar *jars;
	size_t count;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 9, &entry, &kit.fault));
	back_up(KIT_MORNING_MS, true);
	char copied[600];
	(void)snprintf(copied, sizeof(copied), "%s", made("2026-09-14_090000", 2));
	char *log = kit_dump(kit.path, true);
	char *copy = kit_dump(copied, true);
	ck_assert_str_eq(log, copy);
	free(log);
	free(copy);
	ck_assert(kit_whole(copied));
	ck_assert_int_eq(kit_number(copied, "SELECT journal_mode = 'delete' FROM pragma_journal_mode"), 1);
	kit_close(&kit);
	(void)snprintf(kit.path, sizeof(kit.path), "%s/log.db.backups/2026-09-14_090000_2.db", kit.folder);
	kit_open(&kit, LOG_LOOK);
	KIT_OK(&kit, log_jars(kit.log, 1, &jars, &count, &kit.fault));
	ck_assert_uint_eq(count, 9);
	free(jars);
}
END_TEST

/* A file, a folder or a link that bears the name: replaced, or said; never followed. */
START_TEST(what_bears_the_name_of_a_backup_does_not_stand_for_one)
{
	char victim[600];
	char name[600];
	(void)snprintf(victim, sizeof(victim), "%s/mine.txt", kit.folder);
	(void)snprintf(name, sizeof(name), "%s", made("2026-09-14_090000", 1));
	kit_write_file(victim, "mine", 4);
	char folder[600];
	(void)snprintf(folder, sizeof(folder), "%s.backups", kit.path);
	ck_assert_int_eq(mkdir(folder, 0700), 0);
	ck_assert_int_eq(symlink(victim, name), 0);
	back_up(KIT_MORNING_MS, true);
	ck_assert_int_eq(kit_number(name, "SELECT count(*) FROM journal"), 1);
	struct stat status;
	ck_assert_int_eq(stat(victim, &status), 0);
	ck_assert_int_eq(status.st_size, 4);
	one_more_act();
	ck_assert_int_eq(mkdir(made("2026-09-14_090000", 2), 0700), 0);
	ck_assert(!log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault));
	ck_assert_int_ne(kit.fault.kind, FAULT_NONE);
}
END_TEST

/* --- kept by age ------------------------------------------------------------------------ */

#define HOUR_MS INT64_C(3600000)

/* A day's work and its backups, for so many days. */
static void days(int from, int count, int a_day)
{
	for (int day = from; day < from + count; day++)
		for (int n = 0; n < a_day; n++) {
			one_more_act();
			back_up(KIT_MORNING_MS + day * KIT_DAY_MS + n * HOUR_MS, true);
		}
}

static int backups_of(const char *day)
{
	char folder[600];
	int files = 0;
	(void)snprintf(folder, sizeof(folder), "%s.backups", kit.path);
	DIR *dir = opendir(folder);
	ck_assert_ptr_nonnull(dir);
	for (const struct dirent *entry = readdir(dir); entry != NULL; entry = readdir(dir))
		files += strncmp(entry->d_name, day, strlen(day)) == 0;
	ck_assert_int_eq(closedir(dir), 0);
	return files;
}

/* From 2026-09-14 to 2026-12-22: two days whole, then days, weeks, four weeks. */
START_TEST(backups_are_thinned_out_by_age)
{
	days(0, 100, 3);
	ck_assert_int_eq(backups_of("2026-12-22"), 3);
	ck_assert_int_eq(backups_of("2026-12-21"), 3);
	for (int day = 9; day < 20; day++) {
		char name[16];
		(void)snprintf(name, sizeof(name), "2026-12-%02d", day);
		ck_assert_msg(backups_of(name) == 1, "%s: %d", name, backups_of(name));
	}
	int november = backups_of("2026-11");
	ck_assert_msg(november == 4 || november == 5, "%d", november);
	ck_assert_int_le(backups_of("2026-09"), 3);
	ck_assert_int_ge(backups_of("2026-09"), 1);
}
END_TEST

/* Each day the last one is what stays. */
START_TEST(of_an_older_day_the_last_backup_stays)
{
	days(0, 5, 3);
	ck_assert_int_eq(backups_of("2026-09-14"), 1);
	ck_assert_int_eq(backups_of("2026-09-14_110000"), 1);
}
END_TEST

START_TEST(other_files_in_the_folder_are_left_alone)
{
	back_up(KIT_MORNING_MS, true);
	kit_write_file(backup("notes.txt"), "mine", 4);
	kit_write_file(backup("2026-01-01.db.txt"), "mine", 4);
	kit_write_file(backup("2026-09-13_before_13.db"), "mine", 4);
	kit_write_file(backup("2026-09-13_before_14.db"), "mine", 4);
	days(1, 40, 1);
	ck_assert(kit_exists(backup("notes.txt")));
	ck_assert(kit_exists(backup("2026-01-01.db.txt")));
	ck_assert(kit_exists(backup("2026-09-13_before_13.db")));
	ck_assert(kit_exists(backup("2026-09-13_before_14.db")));
}
END_TEST

/* A clock years ahead for weeks: what is made after it was set right must not
 * be taken for the oldest, and what was made then does not stay for ever. */
START_TEST(a_wrong_clock_does_not_cost_the_new_backups)
{
	days(4000, 14, 1);
	days(0, 3, 1);
	for (int day = 14; day < 17; day++) {
		char name[16];
		(void)snprintf(name, sizeof(name), "2026-09-%d", day);
		ck_assert_int_eq(backups_of(name), 1);
	}
	days(3, 60, 1);
	ck_assert_int_le(backups_of("2037"), 3);
	ck_assert_int_ge(backups_of("2037"), 1);
}
END_TEST

START_TEST(half_a_copy_of_a_dead_process_is_cleared_away)
{
	int status;
	char part[80];
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0)
		_exit(0);
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	back_up(KIT_MORNING_MS, true);
	(void)snprintf(part, sizeof(part), "2026-09-13_090000_1.db.part-%ld", (long)child);
	kit_write_file(backup(part), "half", 4);
	one_more_act();
	back_up(KIT_MORNING_MS + KIT_DAY_MS, true);
	ck_assert(!kit_exists(backup(part)));
}
END_TEST

START_TEST(a_backup_needs_no_quiet_moment)
{
	struct log *second;
	struct log_entry entry = kit_entry("meanwhile", 0, 0);
	KIT_OK(&kit, log_open(kit.path, LOG_WRITE, &second, &kit.fault));
	KIT_OK(&kit, log_begin(second, &kit.fault));
	back_up(KIT_MORNING_MS, true); /* another terminal is in the middle of an act */
	KIT_OK(&kit, log_commit(second, &entry, &kit.fault));
	log_close(second);
	ck_assert_int_eq(kit_number(made("2026-09-14_090000", 1), "SELECT count(*) FROM journal"), 1);
}
END_TEST

START_TEST(no_backup_is_made_in_the_middle_of_an_act)
{
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	ck_assert(!log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault));
	log_abandon(kit.log);
	back_up(KIT_MORNING_MS, true);
}
END_TEST

START_TEST(a_backup_that_cannot_be_written_says_so)
{
	char folder[600];
	(void)snprintf(folder, sizeof(folder), "%s.backups", kit.path);
	kit_write_file(folder, "in the way", 10);
	ck_assert(!log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault));
	ck_assert_int_ne(kit.fault.kind, FAULT_NONE);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "log.db"));
	one_more_act(); /* and the day goes on */
}
END_TEST

/* --- damage ----------------------------------------------------------------------------- */

static void make_a_log_with_two_backups(void)
{
	struct log_entry entry = kit_entry("Load", 0, 0);
	back_up(KIT_MORNING_MS, true);
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 60, &entry, &kit.fault));
	back_up(KIT_MORNING_MS + KIT_DAY_MS, true);
	one_more_act();
	kit_close(&kit);
}

static void restore(const char *expected)
{
	char used[600];
	KIT_OK(&kit, log_restore_backup(kit.path, NULL, used, sizeof(used), &kit.fault));
	ck_assert_str_eq(used, backup(expected));
	kit_open(&kit, LOG_WRITE);
}

START_TEST(a_damaged_log_names_its_newest_backup_and_gets_it_back)
{
	char kept[600];
	make_a_log_with_two_backups();
	spoil(kit.path, 3 * PAGE, PAGE);
	spoil(kit.path, 5 * PAGE, 100);
	static const enum log_mode modes[] = { LOG_CREATE, LOG_WRITE, LOG_INSPECT };
	for (size_t i = 0; i < sizeof(modes) / sizeof(modes[0]); i++) {
		kit_refused(&kit, modes[i], FAULT_DAMAGED);
		ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "log.db.backups/2026-09-15_090000_2.db"));
	}
	restore("2026-09-15_090000_2.db");
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), 2);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 60);
	ck_assert_int_eq(kit_number(kit.path, "SELECT journal_mode = 'wal' FROM pragma_journal_mode"), 1);
	(void)snprintf(kept, sizeof(kept), "%s.damaged-1", kit.path);
	ck_assert(kit_exists(kept));
	ck_assert(kit_exists(backup("2026-09-15_090000_2.db")));
	one_more_act();
}
END_TEST

START_TEST(a_damaged_backup_is_passed_over)
{
	make_a_log_with_two_backups();
	spoil(kit.path, 3 * PAGE, PAGE);
	spoil(backup("2026-09-15_090000_2.db"), 3 * PAGE, PAGE);
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "log.db.backups/2026-09-14_090000_1.db"));
	restore("2026-09-14_090000_1.db");
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 0);
}
END_TEST

START_TEST(the_newest_backup_is_the_one_with_the_newest_entry)
{
	make_a_log_with_two_backups();
	char older[600];
	(void)snprintf(older, sizeof(older), "%s", backup("2026-09-14_090000_1.db"));
	ck_assert_int_eq(rename(older, backup("2037-01-01_000000_99.db")), 0);
	spoil(kit.path, 0, 100);
	restore("2026-09-15_090000_2.db");
}
END_TEST

/* The first page gone: no longer even a database, but it has backups. */
START_TEST(a_log_whose_first_bytes_are_gone_is_damaged_not_foreign)
{
	make_a_log_with_two_backups();
	spoil(kit.path, 0, 100);
	kit_refused(&kit, LOG_CREATE, FAULT_DAMAGED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "2026-09-15_090000_2.db"));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "stillroom restore"));
	ck_assert_ptr_null(strstr(kit.fault.sentence, "not an error"));
	restore("2026-09-15_090000_2.db");
}
END_TEST

START_TEST(an_emptied_log_is_damaged_not_new)
{
	make_a_log_with_two_backups();
	ck_assert_int_eq(truncate(kit.path, 0), 0);
	kit_refused(&kit, LOG_CREATE, FAULT_DAMAGED);
	restore("2026-09-15_090000_2.db");
}
END_TEST

START_TEST(a_shortened_log_is_damaged)
{
	make_a_log_with_two_backups();
	ck_assert_int_eq(truncate(kit.path, 7 * PAGE + 100), 0);
	kit_refused(&kit, LOG_CREATE, FAULT_DAMAGED);
	restore("2026-09-15_090000_2.db");
}
END_TEST

START_TEST(a_log_that_has_vanished_is_not_silently_begun_anew)
{
	make_a_log_with_two_backups();
	ck_assert_int_eq(unlink(kit.path), 0);
	kit_refused(&kit, LOG_CREATE, FAULT_MISSING);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "2026-09-15_090000_2.db"));
	ck_assert(!kit_exists(kit.path));
	restore("2026-09-15_090000_2.db");
}
END_TEST

START_TEST(damage_without_a_backup_is_said)
{
	char used[600];
	one_more_act();
	kit_close(&kit);
	spoil(kit.path, 3 * PAGE, PAGE);
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "no good backup"));
	ck_assert(!log_restore_backup(kit.path, NULL, used, sizeof(used), &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	ck_assert(kit_exists(kit.path));
}
END_TEST

START_TEST(a_log_that_is_well_is_not_replaced)
{
	char used[600];
	char kept[600];
	make_a_log_with_two_backups();
	ck_assert(!log_restore_backup(kit.path, NULL, used, sizeof(used), &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	(void)snprintf(kept, sizeof(kept), "%s.damaged-1", kit.path);
	ck_assert(!kit_exists(kept));
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), 3);
}
END_TEST

START_TEST(each_damaged_file_is_kept_and_no_old_wal_is_replayed)
{
	char name[600];
	make_a_log_with_two_backups();
	for (int n = 1; n <= 2; n++) {
		spoil(kit.path, 0, 100);
		(void)snprintf(name, sizeof(name), "%s-wal", kit.path);
		kit_write_file(name, "old frames", 10);
		restore("2026-09-15_090000_2.db");
		one_more_act();
		kit_close(&kit);
		ck_assert(!kit_exists(name));
		ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), 3);
		(void)snprintf(name, sizeof(name), "%s.damaged-%d", kit.path, n);
		ck_assert(kit_exists(name));
		(void)snprintf(name, sizeof(name), "%s.restored", kit.path);
		ck_assert(!kit_exists(name));
	}
}
END_TEST

/* --- choosing one ---------------------------------------------------------------------- */

START_TEST(the_list_tells_what_each_backup_lacks)
{
	struct log_copy *rows;
	size_t count;
	make_a_log_with_two_backups();
	spoil(backup("2026-09-14_090000_1.db"), 3 * PAGE, PAGE);
	KIT_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_str_eq(rows[0].name, "2026-09-15_090000_2.db");
	ck_assert_int_eq(rows[0].newest, 2);
	ck_assert_int_eq(rows[0].missing, 1);
	ck_assert_int_eq(rows[0].newest_wall_ms, KIT_MORNING_MS);
	ck_assert(rows[0].whole);
	ck_assert_int_eq(rows[1].missing, 2);
	ck_assert(!rows[1].whole);
	free(rows);
	ck_assert_int_eq(unlink(kit.path), 0);
	KIT_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	ck_assert_int_eq(rows[0].missing, ENTRY_NOT_KNOWN);
	free(rows);
}
END_TEST

START_TEST(an_older_backup_can_be_chosen_and_its_line_goes_on)
{
	char used[600];
	struct log_copy *rows;
	size_t count;
	make_a_log_with_two_backups();
	ck_assert(!log_restore_backup(kit.path, "no-such.db", used, sizeof(used), &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	KIT_OK(&kit, log_restore_backup(kit.path, "2026-09-14_090000_1.db", used, sizeof(used), &kit.fault));
	ck_assert_str_eq(used, backup("2026-09-14_090000_1.db"));
	kit_open(&kit, LOG_WRITE);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), 1);
	one_more_act();
	back_up(KIT_MORNING_MS + 2 * KIT_DAY_MS, true);
	kit_close(&kit);
	char old[600];
	(void)snprintf(old, sizeof(old), "%s.damaged-1", kit.path);
	ck_assert_int_eq(kit_number(old, "SELECT count(*) FROM journal"), 3);
	KIT_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_str_eq(rows[0].name, "2026-09-16_090000_2.db");
	ck_assert_str_eq(rows[2].name, "2026-09-15_090000_2_aside.db");
	ck_assert(rows[2].aside);
	free(rows);
	spoil(kit.path, 0, 100);
	restore("2026-09-16_090000_2.db");
}
END_TEST

START_TEST(a_backup_that_is_not_whole_is_not_put_back)
{
	char used[600];
	make_a_log_with_two_backups();
	spoil(backup("2026-09-14_090000_1.db"), 3 * PAGE, PAGE);
	ck_assert(!log_restore_backup(kit.path, "2026-09-14_090000_1.db", used, sizeof(used), &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), 3);
}
END_TEST

/* A copy that was carried away comes back by its path. */
START_TEST(a_copy_from_elsewhere_is_put_back_by_its_path)
{
	char used[600];
	char saved[600];
	(void)snprintf(saved, sizeof(saved), "%s/carried.db", kit.folder);
	KIT_OK(&kit, log_save_copy(kit.log, saved, false, &kit.fault));
	ck_assert(!log_save_copy(kit.log, saved, false, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	one_more_act();
	kit_close(&kit);
	spoil(kit.path, 0, 100);
	KIT_OK(&kit, log_restore_backup(kit.path, saved, used, sizeof(used), &kit.fault));
	kit_open(&kit, LOG_WRITE);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), 1);
}
END_TEST

/* A process of its own: in ours the lock would not be seen. */
START_TEST(a_log_in_use_is_not_replaced)
{
	int ready[2];
	int done[2];
	int status;
	char used[600];
	char byte = 0;
	make_a_log_with_two_backups();
	ck_assert_int_eq(pipe(ready), 0);
	ck_assert_int_eq(pipe(done), 0);
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		struct log *log;
		bool ok = log_open(kit.path, LOG_WRITE, &log, NULL);
		byte = ok ? 'y' : 'n';
		ok = write(ready[1], &byte, 1) == 1 && read(done[0], &byte, 1) == 1 && ok;
		_exit(ok ? 0 : 1);
	}
	ck_assert_int_eq(read(ready[0], &byte, 1), 1);
	ck_assert_int_eq(byte, 'y');
	spoil(kit.path, 0, 100);
	ck_assert(!log_restore_backup(kit.path, NULL, used, sizeof(used), &kit.fault));
	ck_assert_msg(kit.fault.kind == FAULT_BUSY, "%s", kit.fault.sentence);
	ck_assert_int_eq(write(done[1], &byte, 1), 1);
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_int_eq(WEXITSTATUS(status), 0);
	for (int i = 0; i < 2; i++) {
		ck_assert_int_eq(close(ready[i]), 0);
		ck_assert_int_eq(close(done[i]), 0);
	}
	restore("2026-09-15_090000_2.db");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("backup", .begin = begin, .end = end, .seconds = 60),
	TEST(a_backup_is_made_when_something_was_recorded_since_the_last),
	TEST(the_next_opening_knows_what_was_backed_up),
	TEST(the_name_is_of_the_utc_day),
	TEST(a_backup_is_one_whole_log_of_its_own),
	TEST(what_bears_the_name_of_a_backup_does_not_stand_for_one),
	TEST(backups_are_thinned_out_by_age),
	TEST(of_an_older_day_the_last_backup_stays),
	TEST(other_files_in_the_folder_are_left_alone),
	TEST(a_wrong_clock_does_not_cost_the_new_backups),
	TEST(half_a_copy_of_a_dead_process_is_cleared_away),
	TEST(a_backup_needs_no_quiet_moment),
	TEST(no_backup_is_made_in_the_middle_of_an_act),
	TEST(a_backup_that_cannot_be_written_says_so),
	TEST(a_damaged_log_names_its_newest_backup_and_gets_it_back),
	TEST(a_damaged_backup_is_passed_over),
	TEST(the_newest_backup_is_the_one_with_the_newest_entry),
	TEST(a_log_whose_first_bytes_are_gone_is_damaged_not_foreign),
	TEST(an_emptied_log_is_damaged_not_new),
	TEST(a_shortened_log_is_damaged),
	TEST(a_log_that_has_vanished_is_not_silently_begun_anew),
	TEST(damage_without_a_backup_is_said),
	TEST(a_log_that_is_well_is_not_replaced),
	TEST(each_damaged_file_is_kept_and_no_old_wal_is_replayed),
	TEST(the_list_tells_what_each_backup_lacks),
	TEST(an_older_backup_can_be_chosen_and_its_line_goes_on),
	TEST(a_backup_that_is_not_whole_is_not_put_back),
	TEST(a_copy_from_elsewhere_is_put_back_by_its_path),
	TEST(a_log_in_use_is_not_replaced),
};

TESTS("log backup", listed)
