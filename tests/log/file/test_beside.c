/* What lies beside a log: a -wal that is its own, or is not; an end that is missing;
 * a layout that is not ours; and a log that goes away while it is open. */
#include <check.h>
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
#include "support/copy.h"
#include "support/failing.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define ACTS 60 /* enough for several pages of a -wal */

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	(void)failing_disarm();
	kit_clear(&kit);
}

static int64_t entries(const char *path)
{
	return kit_number(path, "SELECT count(*) FROM journal");
}

/* The program dies: what it wrote last is in the -wal alone.  `first`: done before, by somebody
 * else, while it has the log open; may be NULL. */
static void die_after(void (*first)(void), int count)
{
	int status;
	kit_close(&kit);
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		kit_open(&kit, LOG_WRITE);
		if (first != NULL)
			first();
		kit_acts(&kit, count);
		_exit(0);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert_int_eq(status, 0);
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
}

static void die_after_acts(int count)
{
	die_after(NULL, count);
}

static void back_up(void)
{
	KIT_OK(&kit, log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault));
}

static const char *the_backup(void)
{
	return kit_beside(&kit, ".backups/2026-09-14_090000_1.db");
}

/* --- a -wal that is not the log's own ------------------------------------------------- */

START_TEST(restoring_a_log_that_is_gone_reads_nothing_of_its_wal)
{
	char used[600];
	back_up();
	die_after_acts(ACTS);
	ck_assert_int_eq(unlink(kit.path), 0);
	kit_refused(&kit, LOG_CREATE, FAULT_MISSING);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "stillroom restore"));
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
	KIT_OK(&kit, log_restore_backup(kit.path, NULL, used, sizeof(used), &kit.fault));
	ck_assert(!kit_exists(kit_beside(&kit, "-wal")));
	ck_assert(kit_exists(kit_beside(&kit, ".damaged-1-wal")));
	kit_open(&kit, LOG_WRITE);
	ck_assert_str_eq(log_notice(kit.log), "");
	ck_assert_int_eq(entries(kit.path), 1);
	ck_assert(kit_whole(kit.path));
}
END_TEST

START_TEST(each_wal_of_a_log_that_is_gone_is_kept)
{
	char used[600];
	back_up();
	for (int i = 0; i < 2; i++) {
		die_after_acts(ACTS);
		ck_assert_int_eq(unlink(kit.path), 0);
		KIT_OK(&kit, log_restore_backup(kit.path, NULL, used, sizeof(used), &kit.fault));
		kit_open(&kit, LOG_WRITE);
	}
	ck_assert(kit_exists(kit_beside(&kit, ".damaged-1-wal")));
	ck_assert(kit_exists(kit_beside(&kit, ".damaged-2-wal")));
}
END_TEST

/* As one would do by hand, without the command. */
START_TEST(a_backup_copied_to_the_name_does_not_get_the_old_wal)
{
	back_up();
	die_after_acts(ACTS);
	ck_assert_int_eq(unlink(kit.path), 0);
	char from[600];
	(void)snprintf(from, sizeof(from), "%s", the_backup());
	ck_assert(copy_file(from, kit.path));
	kit_refused(&kit, LOG_LOOK, FAULT_REFUSED); /* who only looks moves nothing */
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
	kit_open(&kit, LOG_WRITE);
	ck_assert_ptr_nonnull(strstr(log_notice(kit.log), ".stray-wal-1"));
	ck_assert(kit_exists(kit_beside(&kit, ".stray-wal-1")));
	ck_assert_int_eq(entries(kit.path), 1);
	kit_acts(&kit, 1);
	kit_reopen(&kit);
	ck_assert_str_eq(log_notice(kit.log), "");
	ck_assert(kit_whole(kit.path));
	ck_assert_int_eq(entries(kit.path), 2);
}
END_TEST

START_TEST(a_wal_whose_log_is_gone_is_not_begun_over)
{
	die_after_acts(ACTS);
	ck_assert_int_eq(unlink(kit.path), 0);
	kit_refused(&kit, LOG_CREATE, FAULT_MISSING);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "-wal"));
	kit_write_file(kit.path, "", 0);
	kit_refused(&kit, LOG_CREATE, FAULT_DAMAGED);
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
}
END_TEST

START_TEST(the_wal_of_a_program_that_died_is_read)
{
	die_after_acts(ACTS);
	kit_open(&kit, LOG_LOOK);
	ck_assert_str_eq(log_notice(kit.log), "");
	kit_close(&kit);
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
	kit_open(&kit, LOG_WRITE);
	ck_assert_str_eq(log_notice(kit.log), "");
	ck_assert_int_eq(entries(kit.path), 1 + ACTS);
	kit_close(&kit);
	ck_assert(!kit_exists(kit_beside(&kit, "-wal")));
	ck_assert_int_eq(entries(kit.path), 1 + ACTS);
}
END_TEST

static off_t bytes_of(const char *path)
{
	struct stat status;
	ck_assert_int_eq(stat(path, &status), 0);
	return status.st_size;
}

static void spoil_an_index(void)
{
	kit_spoil_index(kit.path);
}

/* While it is open: a newer SQLite finds it at an opening that looks for less, too. */
START_TEST(after_an_unclean_end_nothing_is_moved_into_a_log_that_is_not_whole)
{
	die_after(spoil_an_index, ACTS);
	off_t file = bytes_of(kit.path);
	off_t wal = bytes_of(kit_beside(&kit, "-wal"));
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
	ck_assert_int_eq(bytes_of(kit.path), file);
	ck_assert_int_eq(bytes_of(kit_beside(&kit, "-wal")), wal);
}
END_TEST

/* --- the file alone ---------------------------------------------------------------------- */

START_TEST(a_log_copied_in_use_without_its_wal_says_so)
{
	char copy[sizeof(kit.path)];
	(void)snprintf(copy, sizeof(copy), "%s/copy.db", kit.folder);
	kit_acts(&kit, ACTS);
	ck_assert(copy_file(kit.path, copy));
	kit_close(&kit);
	(void)snprintf(kit.path, sizeof(kit.path), "%s", copy);
	for (int i = 0; i < 2; i++) {
		kit_open(&kit, LOG_LOOK);
		ck_assert_ptr_nonnull(strstr(log_notice(kit.log), "stillroom backup"));
		kit_close(&kit);
		ck_assert(!kit_exists(kit_beside(&kit, "-wal")));
	}
	kit_open(&kit, LOG_WRITE);
	ck_assert_ptr_nonnull(strstr(log_notice(kit.log), "stillroom backup"));
	kit_reopen(&kit);
	ck_assert_str_eq(log_notice(kit.log), "");
}
END_TEST

/* Somebody between the two steps of leaving: the -wal gone, the mark not yet, the file locked
 * as SQLite locks it (bytes from 0x40000000 on). */
static pid_t leave_slowly(void)
{
	struct flock whole = { .l_type = F_WRLCK, .l_whence = SEEK_SET, .l_start = 0x40000000, .l_len = 512 };
	int ready[2];
	char byte = 0;
	pid_t child;

	ck_assert_int_eq(pipe(ready), 0);
	child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		int file = open(kit.path, O_RDWR);
		bool left = file >= 0 && fcntl(file, F_SETLK, &whole) == 0 && write(ready[1], "", 1) == 1 &&
		            usleep(200000) == 0 && pwrite(file, "\1\1", 2, 18) == 2;
		_exit(left ? 0 : 1);
	}
	close(ready[1]);
	ck_assert_int_eq(read(ready[0], &byte, 1), 1);
	close(ready[0]);
	return child;
}

START_TEST(a_log_that_is_being_left_is_no_copy)
{
	char copy[sizeof(kit.path)];
	pid_t child;
	int status;

	(void)snprintf(copy, sizeof(copy), "%s/copy.db", kit.folder);
	kit_acts(&kit, ACTS);
	ck_assert(copy_file(kit.path, copy));
	kit_close(&kit);
	(void)snprintf(kit.path, sizeof(kit.path), "%s", copy);
	child = leave_slowly();
	kit_open(&kit, _i == 0 ? LOG_LOOK : LOG_WRITE);
	ck_assert_str_eq(log_notice(kit.log), "");
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert(WIFEXITED(status) && WEXITSTATUS(status) == 0);
}
END_TEST

/* One who comes when the -wal is gone: a board that starts locks the file to read its header. */
static sqlite3_file *comer;

static void come_after_the_wal(void)
{
	sqlite3_vfs *vfs = sqlite3_vfs_find("unix");
	if (comer != NULL || kit_exists(kit_beside(&kit, "-wal")))
		return;
	comer = calloc(1, (size_t)vfs->szOsFile);
	ck_assert_ptr_nonnull(comer);
	int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_MAIN_DB;
	ck_assert_int_eq(vfs->xOpen(vfs, kit.path, comer, flags, &flags), SQLITE_OK);
	(void)comer->pMethods->xLock(comer, SQLITE_LOCK_SHARED);
}

START_TEST(who_comes_while_a_log_is_left_does_not_keep_the_mark_on)
{
	kit_acts(&kit, ACTS);
	failing_after_unlock(come_after_the_wal);
	kit_close(&kit);
	ck_assert_ptr_nonnull(comer);
	comer->pMethods->xClose(comer);
	free(comer);
	ck_assert(!kit_exists(kit_beside(&kit, "-wal")));
	kit_open(&kit, LOG_WRITE);
	ck_assert_str_eq(log_notice(kit.log), "");
}
END_TEST

/* The disk fails once at the n-th use while the log is left; the next time all is as it was. */
START_TEST(a_disk_that_fails_while_a_log_is_left_makes_no_copy_of_it)
{
	bool failed = true;
	for (int n = 1; failed; n++) {
		kit_acts(&kit, 1);
		failing_arm_disk(n, FAILING_ONCE, true);
		kit_close(&kit);
		failed = failing_disarm();
		kit_open(&kit, LOG_WRITE);
		ck_assert_str_eq(log_notice(kit.log), "");
		ck_assert_int_eq(entries(kit.path), 1 + n);
	}
}
END_TEST

START_TEST(a_log_that_was_ended_cleanly_is_one_file_that_can_be_copied)
{
	char copy[sizeof(kit.path)];
	(void)snprintf(copy, sizeof(copy), "%s/copy.db", kit.folder);
	kit_acts(&kit, ACTS);
	kit_close(&kit);
	ck_assert(copy_file(kit.path, copy));
	(void)snprintf(kit.path, sizeof(kit.path), "%s", copy);
	kit_open(&kit, LOG_WRITE);
	ck_assert_str_eq(log_notice(kit.log), "");
	ck_assert_int_eq(entries(kit.path), 1 + ACTS);
}
END_TEST

/* Who leaves first leaves the -wal to the other; nobody is told of a copy. */
START_TEST(of_two_the_last_to_leave_takes_the_mark_off)
{
	struct log *second;
	KIT_OK(&kit, log_open(kit.path, LOG_WRITE, &second, &kit.fault));
	kit_acts(&kit, 3);
	kit_close(&kit);
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
	log_close(second);
	ck_assert(!kit_exists(kit_beside(&kit, "-wal")));
	kit_open(&kit, LOG_WRITE);
	struct log *look;
	KIT_OK(&kit, log_open(kit.path, LOG_LOOK, &look, &kit.fault));
	kit_acts(&kit, 3);
	kit_close(&kit);
	log_close(look);
	kit_open(&kit, LOG_WRITE);
	ck_assert_str_eq(log_notice(kit.log), "");
	ck_assert_int_eq(entries(kit.path), 7);
}
END_TEST

/* By so little that only a sentence gets shorter. */
START_TEST(a_log_whose_end_is_missing_is_damaged)
{
	kit_acts(&kit, ACTS);
	kit_close(&kit);
	ck_assert_int_eq(truncate(kit.path, bytes_of(kit.path) - 50), 0);
	kit_refused(&kit, LOG_LOOK, FAULT_DAMAGED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "its end is missing"));
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
}
END_TEST

START_TEST(a_newest_entry_with_a_hole_is_damage)
{
	kit_sql(kit.path, "INSERT INTO journal (wall_ms, awake_ms, boot, verb, said, changes)"
	                  " VALUES (1, 1, 'b', 'x', 'Boug' || char(0, 0, 0), x'')");
	kit_close(&kit);
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "newest entry"));
}
END_TEST

START_TEST(a_new_log_is_for_its_owner_alone)
{
	static const char *const endings[] = { "", "-wal", "-shm", ".backups/2026-09-14_090000_1.db" };
	struct stat status;
	kit_close(&kit);
	(void)snprintf(kit.path, sizeof(kit.path), "%s/new.db", kit.folder);
	kit_open(&kit, LOG_CREATE);
	kit_acts(&kit, 1);
	back_up();
	for (size_t i = 0; i < sizeof(endings) / sizeof(endings[0]); i++) {
		ck_assert_int_eq(stat(kit_beside(&kit, endings[i]), &status), 0);
		ck_assert_int_eq(status.st_mode & 0777, 0600);
	}
}
END_TEST

/* --- a layout that is not ours ----------------------------------------------------------- */

static const char *const foreign[] = {
	"CREATE TRIGGER evil AFTER INSERT ON journal BEGIN SELECT 1; END",
	"CREATE VIEW endless AS WITH RECURSIVE n (i) AS (VALUES (1) UNION ALL SELECT i + 1 FROM n) SELECT max(i) FROM n",
	"CREATE TABLE more (a)",
	"CREATE TRIGGER season_evil AFTER INSERT ON journal BEGIN SELECT 1; END",
	"DROP VIEW work_line",
	("DROP TRIGGER journal_is_not_deleted;"
	 "CREATE TRIGGER journal_is_not_deleted BEFORE DELETE ON journal BEGIN SELECT 1; END"),
	"DROP INDEX journal_of_work; CREATE INDEX journal_of_work ON journal (work_id)",
};

START_TEST(a_layout_that_is_not_ours_is_refused_before_anything_is_written)
{
	kit_close(&kit);
	kit_sql(kit.path, foreign[_i]);
	for (int mode = LOG_CREATE; mode <= LOG_LOOK; mode++) {
		kit_refused(&kit, (enum log_mode)mode, FAULT_DAMAGED);
		ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "its "));
	}
}
END_TEST

/* --- times out of all sense ---------------------------------------------------------------- */

static const char *const absurd[] = { "9223372036854775807", "-9223372036854775808", "253402300800000" };

START_TEST(a_time_out_of_all_sense_is_damage)
{
	char sql[200];
	struct log_entry entry;
	(void)snprintf(sql, sizeof(sql),
	               "INSERT INTO journal (wall_ms, awake_ms, boot, verb, said, changes)"
	               " VALUES (%s, 1, 'b', 'x', 'y', x'')",
	               absurd[_i]);
	kit_sql(kit.path, sql);
	ck_assert(!log_newest_entry(kit.log, &entry, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
}
END_TEST

/* --- the open log goes away -------------------------------------------------------------- */

static void remove_log(void)
{
	ck_assert_int_eq(unlink(kit.path), 0);
}

static void remove_wal(void)
{
	ck_assert_int_eq(unlink(kit_beside(&kit, "-wal")), 0);
}

static void replace_log(void)
{
	char copy[600];
	(void)snprintf(copy, sizeof(copy), "%s", kit_beside(&kit, ".copy"));
	ck_assert(copy_file(kit.path, copy));
	ck_assert_int_eq(rename(copy, kit.path), 0);
}

static void cut_log(void)
{
	ck_assert_int_eq(truncate(kit.path, 0), 0);
}

static void cut_wal(void)
{
	ck_assert_int_eq(truncate(kit_beside(&kit, "-wal"), 0), 0);
}

static const struct away {
	void (*go)(void);
	const char *word;
	bool can_be_saved; /* what was cut away is gone */
} away[] = {
	{ remove_log, "removed", true }, { remove_wal, "removed", true }, { replace_log, "replaced", true },
	{ cut_log, "cut short", false }, { cut_wal, "cut short", false },
};

START_TEST(nothing_is_recorded_in_a_log_that_has_gone)
{
	const struct away *how = &away[_i];
	kit_acts(&kit, ACTS);
	ck_assert(log_stands(kit.log, &kit.fault));
	how->go();
	ck_assert(!kit_act(&kit));
	ck_assert_int_eq(kit.fault.kind, FAULT_UNSAFE);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, how->word));
	ck_assert(!log_stands(kit.log, &kit.fault));
}
END_TEST

START_TEST(a_log_that_goes_in_the_middle_of_an_act_refuses_it)
{
	struct log_entry entry = kit_entry("half way", 0, 0);
	kit_acts(&kit, 1);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	away[_i].go();
	ck_assert(!log_commit(kit.log, &entry, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_UNSAFE);
}
END_TEST

START_TEST(what_stands_can_be_written_to_a_new_file)
{
	char saved[600];
	kit_acts(&kit, ACTS);
	away[_i].go();
	(void)snprintf(saved, sizeof(saved), "%s/saved.db", kit.folder);
	ck_assert(!kit_act(&kit));
	bool ok = log_save_copy(kit.log, saved, false, &kit.fault);
	ck_assert_msg(ok || !away[_i].can_be_saved, "%s", kit.fault.sentence);
	if (ok) {
		ck_assert_int_eq(entries(saved), 1 + ACTS);
		ck_assert(kit_whole(saved));
	}
}
END_TEST

/* A new log of the name must not lose its -wal to the old one's leaving. */
START_TEST(leaving_takes_nothing_of_another_log_away)
{
	struct log *fresh;
	struct log *old = kit.log;
	kit_acts(&kit, 1);
	ck_assert_int_eq(unlink(kit.path), 0);
	ck_assert_int_eq(unlink(kit_beside(&kit, "-wal")), 0);
	ck_assert_int_eq(unlink(kit_beside(&kit, "-shm")), 0);
	KIT_OK(&kit, log_open(kit.path, LOG_CREATE, &fresh, &kit.fault));
	kit.log = fresh;
	kit_acts(&kit, ACTS);
	log_close(old);
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
	ck_assert_int_eq(entries(kit.path), ACTS);
}
END_TEST

/* --- the disk fails ------------------------------------------------------------------------ */

START_TEST(after_a_failed_sync_neither_is_claimed_and_no_act_is_made_until_one_succeeds)
{
	int said = 0;
	for (int n = 1; n < 12; n++) {
		failing_arm_disk(n, FAILING_FOR_GOOD, false);
		bool ok = kit_act(&kit);
		if (!ok && kit.fault.kind == FAULT_UNSAFE) {
			said++;
			ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "may be lost"));
			ck_assert_ptr_null(strstr(kit.fault.sentence, "nothing of"));
			ck_assert(!kit_act(&kit)); /* the disk still fails: not even begun */
			ck_assert_int_eq(kit.fault.kind, FAULT_UNSAFE);
		}
		(void)failing_disarm();
		kit_acts(&kit, 1);
		ck_assert(kit_whole(kit.path));
	}
	ck_assert_int_gt(said, 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("beside", .begin = begin, .end = end, .seconds = 60),
	TEST(restoring_a_log_that_is_gone_reads_nothing_of_its_wal),
	TEST(each_wal_of_a_log_that_is_gone_is_kept),
	TEST(a_backup_copied_to_the_name_does_not_get_the_old_wal),
	TEST(a_wal_whose_log_is_gone_is_not_begun_over),
	TEST(the_wal_of_a_program_that_died_is_read),
	TEST(after_an_unclean_end_nothing_is_moved_into_a_log_that_is_not_whole),
	TEST(a_log_copied_in_use_without_its_wal_says_so),
	EACH(a_log_that_is_being_left_is_no_copy, 0, 2),
	TEST(who_comes_while_a_log_is_left_does_not_keep_the_mark_on),
	TEST(a_disk_that_fails_while_a_log_is_left_makes_no_copy_of_it),
	TEST(a_log_that_was_ended_cleanly_is_one_file_that_can_be_copied),
	TEST(of_two_the_last_to_leave_takes_the_mark_off),
	TEST(a_log_whose_end_is_missing_is_damaged),
	TEST(a_newest_entry_with_a_hole_is_damage),
	TEST(a_new_log_is_for_its_owner_alone),
	EACH_OF(a_layout_that_is_not_ours_is_refused_before_anything_is_written, foreign),
	EACH_OF(a_time_out_of_all_sense_is_damage, absurd),
	EACH_OF(nothing_is_recorded_in_a_log_that_has_gone, away),
	EACH_OF(a_log_that_goes_in_the_middle_of_an_act_refuses_it, away),
	EACH_OF(what_stands_can_be_written_to_a_new_file, away),
	TEST(leaving_takes_nothing_of_another_log_away),
	TEST(after_a_failed_sync_neither_is_claimed_and_no_act_is_made_until_one_succeeds),
};

int main(void)
{
	failing_install();
	return tests_run(tests_suite("log beside", listed, LISTED_COUNT(listed)));
}
