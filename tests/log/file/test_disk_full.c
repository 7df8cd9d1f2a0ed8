/*
 * No room left. A limit on the size of a file stops SQLite where a full disk
 * would, for any user; a small disk of its own is filled where mounting is
 * allowed.
 */
#define _GNU_SOURCE /* unshare */
#include <check.h>
#include <sched.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "log/file/file.h"
#include "log/tables/house.h"
#include "support/fault_word.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

/* No file of this process may grow beyond `bytes`. */
static void limit(rlim_t bytes)
{
	struct rlimit room;
	/* No ck_assert here or under a limit: Check notes each in a file of its own,
	 * which would stop growing too. */
	if (getrlimit(RLIMIT_FSIZE, &room) != 0)
		abort();
	room.rlim_cur = bytes < room.rlim_max ? bytes : room.rlim_max;
	if (setrlimit(RLIMIT_FSIZE, &room) != 0)
		abort();
}

static void begin(void)
{
	ck_assert(signal(SIGXFSZ, SIG_IGN) != SIG_ERR);
	kit_start(&kit);
}

static void end(void)
{
	limit(RLIM_INFINITY);
	kit_clear(&kit);
}

static bool start(struct log_entry *entry)
{
	*entry = kit_entry("Loaded", 0, 0);
	memset(&kit.fault, 0, sizeof(kit.fault));
	return kit_start_load(kit.log, 1, "2026-09-14-B1", 40, entry, &kit.fault);
}

static void is_full(void)
{
	ck_assert_msg(kit.fault.kind == FAULT_DISK_FULL, "%s: %s", fault_word(kit.fault.kind), kit.fault.sentence);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "log.db is full"));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "Free some space"));
}

START_TEST(an_act_without_room_is_wholly_absent_and_goes_through_later)
{
	struct log_entry entry;
	char *before = kit_dump(kit.path, true);
	bool done = false;
	int failed = 0;
	for (rlim_t room = 4096; !done && room < 400000; room += 2500) {
		limit(room);
		done = start(&entry);
		limit(RLIM_INFINITY);
		if (!done) {
			is_full();
			ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "the last key was not recorded"));
			failed++;
			char *now = kit_dump(kit.path, true);
			ck_assert_str_eq(now, before);
			free(now);
			ck_assert(kit_whole(kit.path));
		}
	}
	free(before);
	ck_assert(done);
	ck_assert_int_gt(failed, 3);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 40);
	kit_reopen(&kit);
	ck_assert(kit_whole(kit.path));
}
END_TEST

START_TEST(a_new_log_without_room_can_be_made_later)
{
	struct log *log;
	kit_close(&kit);
	ck_assert_int_eq(unlink(kit.path), 0);
	for (rlim_t room = 0; room < 60000; room += 10000) {
		limit(room);
		bool opened = log_open(kit.path, LOG_CREATE, &log, &kit.fault);
		limit(RLIM_INFINITY);
		ck_assert(!opened);
		is_full();
	}
	kit_open(&kit, LOG_CREATE);
	ck_assert(kit_whole(kit.path));
}
END_TEST

START_TEST(a_backup_without_room_leaves_no_half_copy)
{
	char name[520];
	struct log_entry entry;
	(void)snprintf(name, sizeof(name), "%s.backups/2026-09-14_090000_2.db", kit.path);
	KIT_OK(&kit, start(&entry));
	limit(50000);
	bool made = log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault);
	limit(RLIM_INFINITY);
	ck_assert(!made);
	ck_assert_msg(kit.fault.kind == FAULT_DISK_FULL, "%s", kit.fault.sentence);
	ck_assert(!kit_exists(name));
	(void)snprintf(name, sizeof(name), "%s.backups", kit.path);
	ck_assert_msg(rmdir(name) == 0, "something was left in %s", name);
	KIT_OK(&kit, log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault));
}
END_TEST

START_TEST(a_log_without_room_can_still_be_read_and_closed)
{
	struct log_entry entry;
	struct log_station station;
	limit(4096);
	bool started = start(&entry);
	struct fault why = { 0 };
	bool read = log_station_get(kit.log, 1, &station, &why);
	kit_close(&kit);
	limit(RLIM_INFINITY);
	ck_assert(!started);
	ck_assert_msg(read, "%s", why.sentence);
	kit_open(&kit, LOG_WRITE);
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	ck_assert(kit_whole(kit.path));
}
END_TEST

/* --- a real disk that is full ------------------------------------------------------ */

static bool small_disk(const char *folder)
{
	return unshare(CLONE_NEWNS) == 0 && mount("none", "/", "none", MS_REC | MS_PRIVATE, NULL) == 0 &&
	       mount("none", folder, "tmpfs", 0, "size=4m") == 0;
}

static void fill(const char *folder, char *name, size_t size)
{
	static const char block[4096];
	(void)snprintf(name, size, "%s/ballast", folder);
	FILE *file = fopen(name, "wb");
	ck_assert_ptr_nonnull(file);
	(void)setvbuf(file, NULL, _IONBF, 0);
	while (fwrite(block, 1, sizeof(block), file) == sizeof(block))
		;
	(void)fclose(file);
}

START_TEST(a_full_disk_is_named_and_space_freed_helps)
{
	char disk[450];
	char ballast[470];
	struct log_entry entry = kit_entry("Canner 1", 0, 0);
	(void)snprintf(disk, sizeof(disk), "%s/disk", kit.folder);
	ck_assert_int_eq(mkdir(disk, 0755), 0);
	if (!small_disk(disk))
		return;
	kit_close(&kit);
	(void)snprintf(kit.path, sizeof(kit.path), "%s/log.db", disk);
	kit_open(&kit, LOG_CREATE);
	KIT_OK(&kit, kit_put_canner(kit.log, 1, "Big enamel", &entry, &kit.fault));
	fill(disk, ballast, sizeof(ballast));
	ck_assert(!start(&entry));
	is_full();
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), 0);
	ck_assert(!log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DISK_FULL);
	ck_assert_int_eq(unlink(ballast), 0);
	KIT_OK(&kit, start(&entry));
	KIT_OK(&kit, log_backup(kit.log, KIT_MORNING_MS, NULL, &kit.fault));
	ck_assert(kit_whole(kit.path));
	kit_close(&kit);
	ck_assert_int_eq(umount(disk), 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("disk full", .begin = begin, .end = end, .seconds = 30),
	TEST(an_act_without_room_is_wholly_absent_and_goes_through_later),
	TEST(a_new_log_without_room_can_be_made_later),
	TEST(a_backup_without_room_leaves_no_half_copy),
	TEST(a_log_without_room_can_still_be_read_and_closed),
	TEST(a_full_disk_is_named_and_space_freed_helps),
};

TESTS("log disk full", listed)
