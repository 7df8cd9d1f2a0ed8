/* Whose file is it, and may it be used? */
#define _GNU_SOURCE /* unshare */
#include <check.h>
#include <sched.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "log/file/file.h"
#include "log/file/layout.h"
#include "log/tables/house.h"
#include "support/fault_word.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

static void begin(void)
{
	kit_init(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

START_TEST(a_new_log_is_made_with_its_folders)
{
	(void)snprintf(kit.path, sizeof(kit.path), "%s/a/b c/log.db", kit.folder);
	kit_open(&kit, LOG_CREATE);
	ck_assert_str_eq(log_path(kit.log), kit.path);
	ck_assert_int_eq(kit_number(kit.path, "SELECT journal_mode = 'wal' FROM pragma_journal_mode"), 1);
	kit_close(&kit);
	struct stat status;
	char folder[440];
	(void)snprintf(folder, sizeof(folder), "%s/a", kit.folder);
	ck_assert_int_eq(stat(folder, &status), 0);
	ck_assert_int_eq(status.st_mode & 0777, 0700);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA application_id"), LOG_APPLICATION_ID);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), layout_newest(&log_layouts));
	ck_assert_int_eq(kit_number(kit.path, "SELECT journal_mode = 'delete' FROM pragma_journal_mode"), 1);
}
END_TEST

/* The application id stands at byte 68, big-endian: SQLite documentation, fileformat2.html */
START_TEST(the_file_itself_carries_our_mark)
{
	unsigned char header[100];
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	FILE *file = fopen(kit.path, "rb");
	ck_assert_ptr_nonnull(file);
	ck_assert_uint_eq(fread(header, 1, sizeof(header), file), sizeof(header));
	ck_assert_int_eq(fclose(file), 0);
	ck_assert_mem_eq(header + 68, "Stlr", 4);
}
END_TEST

START_TEST(closing_leaves_one_file)
{
	char side[500];
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	(void)snprintf(side, sizeof(side), "%s-wal", kit.path);
	ck_assert(!kit_exists(side));
	(void)snprintf(side, sizeof(side), "%s-shm", kit.path);
	ck_assert(!kit_exists(side));
	kit_open(&kit, LOG_LOOK);
	kit_close(&kit);
	ck_assert(!kit_exists(side));
}
END_TEST

START_TEST(what_was_recorded_is_there_after_reopening)
{
	struct log_entry entry = kit_entry("Canner set up", 0, 0);
	struct log_station station;
	kit_open(&kit, LOG_CREATE);
	KIT_OK(&kit, kit_put_canner(kit.log, 4, "Old tin", &entry, &kit.fault));
	kit_reopen(&kit);
	KIT_OK(&kit, log_station_get(kit.log, entry.station_id, &station, &kit.fault));
	ck_assert_int_eq(station.digit, 4);
	ck_assert_str_eq(station.name, "Old tin");
}
END_TEST

START_TEST(a_missing_log_is_made_only_when_asked)
{
	kit_refused(&kit, LOG_WRITE, FAULT_MISSING);
	kit_refused(&kit, LOG_LOOK, FAULT_MISSING);
	ck_assert(!kit_exists(kit.path));
}
END_TEST

START_TEST(an_empty_file_becomes_a_log_only_when_asked)
{
	kit_write_file(kit.path, "", 0);
	kit_refused(&kit, LOG_WRITE, FAULT_NOT_OURS);
	kit_refused(&kit, LOG_LOOK, FAULT_NOT_OURS);
	struct stat status;
	ck_assert_int_eq(stat(kit.path, &status), 0);
	ck_assert_int_eq(status.st_size, 0);
	kit_open(&kit, LOG_CREATE);
}
END_TEST

START_TEST(a_text_file_is_refused_and_left_alone)
{
	char text[] = "Dear diary, today 14 pints of quince jelly.\n";
	char back[sizeof(text)] = "";
	for (int mode = LOG_CREATE; mode <= LOG_LOOK; mode++) {
		kit_write_file(kit.path, text, strlen(text));
		kit_refused(&kit, (enum log_mode)mode, FAULT_NOT_OURS);
	}
	FILE *file = fopen(kit.path, "rb");
	ck_assert_ptr_nonnull(file);
	ck_assert_uint_eq(fread(back, 1, sizeof(back), file), strlen(text));
	ck_assert_int_eq(fclose(file), 0);
	ck_assert_str_eq(back, text);
}
END_TEST

START_TEST(a_large_text_file_is_refused)
{
	char *text = malloc(100000);
	ck_assert_ptr_nonnull(text);
	memset(text, 'q', 100000);
	kit_write_file(kit.path, text, 100000);
	free(text);
	kit_refused(&kit, LOG_CREATE, FAULT_NOT_OURS);
}
END_TEST

START_TEST(the_database_of_another_program_is_refused)
{
	kit_write_file(kit.path, "", 0);
	kit_sql(kit.path, "CREATE TABLE song (title TEXT)");
	kit_refused(&kit, LOG_CREATE, FAULT_NOT_OURS);
	kit_refused(&kit, LOG_WRITE, FAULT_NOT_OURS);
	kit_refused(&kit, LOG_LOOK, FAULT_NOT_OURS);
	kit_sql(kit.path, "PRAGMA application_id = 42");
	kit_refused(&kit, LOG_CREATE, FAULT_NOT_OURS);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM sqlite_master"), 1);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA application_id"), 42);
}
END_TEST

START_TEST(a_database_with_a_number_but_no_tables_is_not_taken_for_new)
{
	kit_write_file(kit.path, "", 0);
	kit_sql(kit.path, "PRAGMA user_version = 3");
	kit_refused(&kit, LOG_CREATE, FAULT_NOT_OURS);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), 3);
}
END_TEST

START_TEST(a_folder_or_a_pipe_is_refused)
{
	ck_assert_int_eq(mkdir(kit.path, 0700), 0);
	kit_refused(&kit, LOG_CREATE, FAULT_NOT_OURS);
	ck_assert_int_eq(rmdir(kit.path), 0);
	ck_assert_int_eq(mkfifo(kit.path, 0600), 0);
	kit_refused(&kit, LOG_CREATE, FAULT_NOT_OURS);
}
END_TEST

START_TEST(a_newer_log_is_refused_with_both_numbers)
{
	char known[40];
	(void)snprintf(known, sizeof(known), "up to %d", (int)layout_newest(&log_layouts));
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	kit_sql(kit.path, "PRAGMA user_version = 907");
	kit_refused(&kit, LOG_WRITE, FAULT_NEWER);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "number 907"));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, known));
	kit_refused(&kit, LOG_LOOK, FAULT_NEWER);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), 907);
}
END_TEST

START_TEST(a_log_from_before_the_first_release_is_refused_and_left_alone)
{
	const int layouts[] = { 1, log_layouts.first - 1 };
	char number[40];
	char sql[60];
	(void)snprintf(number, sizeof(number), "number %d,", layouts[_i]);
	(void)snprintf(sql, sizeof(sql), "PRAGMA user_version = %d", layouts[_i]);
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	kit_sql(kit.path, sql);
	char *before = kit_dump(kit.path, true);
	for (int mode = LOG_CREATE; mode <= LOG_LOOK; mode++) {
		kit_refused(&kit, (enum log_mode)mode, FAULT_OLDER);
		ck_assert_ptr_nonnull(strstr(kit.fault.sentence, number));
		ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "move this one and its backups away to start over."));
	}
	char *after = kit_dump(kit.path, true);
	ck_assert_str_eq(after, before);
	ck_assert_int_eq(kit_number(kit.path, "PRAGMA user_version"), layouts[_i]);
	free(before);
	free(after);
}
END_TEST

/* What the sentence says can be done. */
START_TEST(with_the_old_log_moved_away_a_new_one_begins)
{
	char away[520];
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	kit_sql(kit.path, "PRAGMA user_version = 8");
	kit_refused(&kit, LOG_CREATE, FAULT_OLDER);
	(void)snprintf(away, sizeof(away), "%s.old", kit.path);
	ck_assert_int_eq(rename(kit.path, away), 0);
	kit_open(&kit, LOG_CREATE);
}
END_TEST

START_TEST(a_log_without_its_tables_is_damaged)
{
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	kit_sql(kit.path, "DROP TABLE phase");
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
}
END_TEST

START_TEST(a_dangling_reference_is_damage)
{
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	kit_sql(kit.path, "INSERT INTO station_capacity (station_id, jar, jars) VALUES (77, 'pint', 7)");
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "refers to"));
}
END_TEST

START_TEST(special_names_are_plain_files)
{
	static const char *const names[] = { ":memory:", "file:log.db?mode=memory", "", NULL };
	ck_assert_int_eq(chdir(kit.folder), 0);
	for (int i = 0; names[i] != NULL; i++) {
		struct log *log = NULL;
		bool opened = log_open(names[i], LOG_CREATE, &log, &kit.fault);
		ck_assert_msg(opened == (names[i][0] != '\0'), "\"%s\": %s", names[i], kit.fault.sentence);
		log_close(log);
		ck_assert(names[i][0] == '\0' || kit_exists(names[i]));
	}
	ck_assert_int_eq(chdir("/"), 0);
}
END_TEST

START_TEST(a_very_long_path_still_gives_a_sentence)
{
	char path[3000];
	struct log *log;
	memset(path, 'x', sizeof(path));
	path[sizeof(path) - 1] = '\0';
	ck_assert(!log_open(path, LOG_CREATE, &log, &kit.fault));
	ck_assert_ptr_null(log);
	ck_assert_msg(kit.fault.kind != FAULT_NONE && kit.fault.sentence[strlen(kit.fault.sentence) - 1] == '.', "%s",
	              kit.fault.sentence);
}
END_TEST

START_TEST(a_fault_is_not_asked_for)
{
	struct log *log;
	ck_assert(!log_open(kit.path, LOG_WRITE, &log, NULL));
	ck_assert_ptr_null(log);
	log_close(NULL);
}
END_TEST

/* --- rights: tried as a person without them, in a process of its own ------------ */

struct attempt {
	mode_t folder_mode;
	mode_t file_mode;
	enum log_mode mode;
	enum fault_kind kind; /* FAULT_NONE: it works */
};

static enum fault_kind kind_as_nobody(enum log_mode mode)
{
	int status;
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		struct log *log;
		struct fault fault = { .kind = FAULT_NONE };
		if (getuid() == 0 && (setgid(65534) != 0 || setuid(65534) != 0))
			_exit(99);
		if (log_open(kit.path, mode, &log, &fault))
			log_close(log);
		else
			(void)fprintf(stderr, "%s\n", fault.sentence);
		_exit((int)fault.kind);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	ck_assert(WIFEXITED(status));
	ck_assert_int_ne(WEXITSTATUS(status), 99);
	return (enum fault_kind)WEXITSTATUS(status);
}

/* Everything above the folder must let others pass. */
static bool reachable_by_others(void)
{
	int status;
	pid_t child = fork();
	ck_assert_int_ge(child, 0);
	if (child == 0) {
		if (getuid() == 0 && (setgid(65534) != 0 || setuid(65534) != 0))
			_exit(1);
		_exit(access(kit.folder, X_OK) == 0 ? 0 : 1);
	}
	ck_assert_int_eq(waitpid(child, &status, 0), child);
	return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

/* The runner's own folder may be closed to others: then take the public one. */
static void move_to_public_folder(void)
{
	ck_assert_int_eq(chmod(kit.folder, 0755), 0);
	if (reachable_by_others())
		return;
	kit_clear(&kit);
	ck_assert_int_eq(setenv("TMPDIR", "/tmp", 1), 0);
	kit_init(&kit);
	ck_assert_int_eq(chmod(kit.folder, 0755), 0);
	ck_assert(reachable_by_others());
}

static const struct attempt attempts[] = {
	{ 0755, 0444, LOG_WRITE, FAULT_READ_ONLY }, { 0755, 0444, LOG_CREATE, FAULT_READ_ONLY },
	{ 0777, 0444, LOG_WRITE, FAULT_READ_ONLY }, { 0555, 0666, LOG_WRITE, FAULT_READ_ONLY },
	{ 0555, 0444, LOG_LOOK, FAULT_NONE }, /* it was ended cleanly: nothing need be made beside it */
	{ 0777, 0444, LOG_LOOK, FAULT_NONE },       { 0777, 0666, LOG_WRITE, FAULT_NONE },
	{ 0777, 0000, LOG_LOOK, FAULT_IO },
};

START_TEST(a_log_one_may_not_write_says_so)
{
	const struct attempt *attempt = &attempts[_i];
	move_to_public_folder();
	kit_open(&kit, LOG_CREATE);
	kit_close(&kit);
	ck_assert_int_eq(chmod(kit.path, attempt->file_mode), 0);
	ck_assert_int_eq(chmod(kit.folder, attempt->folder_mode), 0);
	enum fault_kind kind = kind_as_nobody(attempt->mode);
	ck_assert_int_eq(chmod(kit.folder, 0755), 0);
	ck_assert_msg(kind == attempt->kind, "attempt %d: expected %s, got %s", _i, fault_word(attempt->kind),
	              fault_word(kind));
}
END_TEST

/* Needs the right to mount; elsewhere the test has nothing to try. */
START_TEST(a_log_on_a_read_only_disk_can_still_be_looked_at)
{
	struct log_entry entry = kit_entry("Canner set up", 0, 0);
	struct log_station station;
	char disk[440];
	(void)snprintf(disk, sizeof(disk), "%s/disk 100%%?", kit.folder);
	ck_assert_int_eq(mkdir(disk, 0755), 0);
	if (unshare(CLONE_NEWNS) != 0 || mount("none", "/", "none", MS_REC | MS_PRIVATE, NULL) != 0 ||
	    mount("none", disk, "tmpfs", 0, "size=1m") != 0)
		return;
	(void)snprintf(kit.path, sizeof(kit.path), "%s/log.db", disk);
	kit_open(&kit, LOG_CREATE);
	KIT_OK(&kit, kit_put_canner(kit.log, 4, "Old tin", &entry, &kit.fault));
	kit_close(&kit);
	ck_assert_int_eq(mount("none", disk, "none", MS_REMOUNT | MS_RDONLY, NULL), 0);
	kit_refused(&kit, LOG_WRITE, FAULT_READ_ONLY);
	kit_open(&kit, LOG_LOOK);
	KIT_OK(&kit, log_station_get(kit.log, entry.station_id, &station, &kit.fault));
	kit_close(&kit);
	ck_assert_int_eq(umount(disk), 0);
}
END_TEST

START_TEST(a_folder_one_may_not_write_gets_no_log)
{
	move_to_public_folder();
	ck_assert_int_eq(chmod(kit.folder, 0555), 0);
	enum fault_kind here = kind_as_nobody(LOG_CREATE);
	(void)snprintf(kit.path, sizeof(kit.path), "%s/new/log.db", kit.folder);
	enum fault_kind deeper = kind_as_nobody(LOG_CREATE);
	ck_assert_int_eq(chmod(kit.folder, 0755), 0);
	ck_assert_str_eq(fault_word(here), fault_word(FAULT_READ_ONLY));
	ck_assert_str_eq(fault_word(deeper), fault_word(FAULT_READ_ONLY));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("identity", .begin = begin, .end = end),
	TEST(a_new_log_is_made_with_its_folders),
	TEST(the_file_itself_carries_our_mark),
	TEST(closing_leaves_one_file),
	TEST(what_was_recorded_is_there_after_reopening),
	TEST(a_missing_log_is_made_only_when_asked),
	TEST(an_empty_file_becomes_a_log_only_when_asked),
	TEST(a_text_file_is_refused_and_left_alone),
	TEST(a_large_text_file_is_refused),
	TEST(the_database_of_another_program_is_refused),
	TEST(a_database_with_a_number_but_no_tables_is_not_taken_for_new),
	TEST(a_folder_or_a_pipe_is_refused),
	TEST(a_newer_log_is_refused_with_both_numbers),
	EACH(a_log_from_before_the_first_release_is_refused_and_left_alone, 0, 2),
	TEST(with_the_old_log_moved_away_a_new_one_begins),
	TEST(a_log_without_its_tables_is_damaged),
	TEST(a_dangling_reference_is_damage),
	TEST(special_names_are_plain_files),
	TEST(a_very_long_path_still_gives_a_sentence),
	TEST(a_fault_is_not_asked_for),
	EACH_OF(a_log_one_may_not_write_says_so, attempts),
	TEST(a_folder_one_may_not_write_gets_no_log),
	TEST(a_log_on_a_read_only_disk_can_still_be_looked_at), /* last: it mounts */
};

TESTS("log identity", listed)
