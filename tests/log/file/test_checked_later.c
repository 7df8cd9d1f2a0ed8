/* A log that is opened first and checked beside: what may be written to the file meanwhile. */
#include <check.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "log/file/file.h"
#include "log/journal/acts.h"
#include "support/copy.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define ACTS 150 /* more pages of a -wal than SQLite leaves there by itself */

static struct log_kit kit;
static char twin[sizeof(kit.path)];

static void begin(void)
{
	kit_start(&kit);
	kit_close(&kit);
	(void)snprintf(twin, sizeof(twin), "%s/twin.db", kit.folder);
}

static void end(void)
{
	kit_clear(&kit);
}

static bool same_bytes(const char *one, const char *other)
{
	FILE *a = fopen(one, "rb");
	FILE *b = fopen(other, "rb");
	bool same = a != NULL && b != NULL;
	for (int left = 0, right = 0; same && left != EOF; same = left == right) {
		left = fgetc(a);
		right = fgetc(b);
	}
	if (a != NULL)
		(void)fclose(a);
	if (b != NULL)
		(void)fclose(b);
	return same;
}

static int64_t entries(void)
{
	return kit_number(kit.path, "SELECT count(*) FROM journal");
}

START_TEST(until_it_is_checked_nothing_is_moved_into_the_file)
{
	kit_open(&kit, LOG_BOARD);
	ck_assert(log_is_unchecked(kit.log));
	ck_assert(copy_file(kit.path, twin));
	kit_acts(&kit, ACTS);
	ck_assert(same_bytes(kit.path, twin));
	kit_close(&kit);
	ck_assert(same_bytes(kit.path, twin));
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
	ck_assert_int_eq(entries(), 1 + ACTS);
}
END_TEST

START_TEST(after_an_unclean_end_the_next_board_moves_nothing_before_its_check)
{
	kit_open(&kit, LOG_BOARD);
	kit_acts(&kit, ACTS);
	kit_close(&kit); /* unchecked: the -wal stays, as after a death */
	ck_assert(copy_file(kit.path, twin));
	kit_open(&kit, LOG_BOARD);
	kit_acts(&kit, ACTS);
	ck_assert(same_bytes(kit.path, twin));
	KIT_OK(&kit, log_check(kit.log, &kit.fault));
	ck_assert(same_bytes(kit.path, twin));
	KIT_OK(&kit, log_checked(kit.log, NULL, &kit.fault));
	ck_assert(!log_is_unchecked(kit.log));
	kit_acts(&kit, ACTS);
	ck_assert(!same_bytes(kit.path, twin));
	kit_close(&kit);
	ck_assert(!kit_exists(kit_beside(&kit, "-wal")));
	ck_assert_int_eq(entries(), 1 + 3 * ACTS);
	ck_assert(kit_whole(kit.path));
}
END_TEST

START_TEST(a_board_in_which_nothing_was_done_leaves_one_file)
{
	kit_open(&kit, LOG_BOARD);
	kit_close(&kit);
	ck_assert(!kit_exists(kit_beside(&kit, "-wal")));
	kit_open(&kit, LOG_LOOK);
	ck_assert_str_eq(log_notice(kit.log), "");
	kit_close(&kit);
}
END_TEST

START_TEST(damage_that_is_told_later_stops_all_acts_and_leaves_the_file)
{
	struct fault fault = { .kind = FAULT_NONE };
	kit_spoil_index(kit.path);
	kit_open(&kit, LOG_BOARD);
	ck_assert(kit_act(&kit));
	ck_assert(copy_file(kit.path, twin));
	ck_assert(!log_check(kit.log, &fault));
	ck_assert_int_eq(fault.kind, FAULT_DAMAGED);
	ck_assert_ptr_nonnull(strstr(fault.sentence, "is damaged"));
	ck_assert(log_checked(kit.log, fault.sentence, NULL));
	ck_assert(log_is_damaged(kit.log));
	ck_assert(!kit_act(&kit));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
	ck_assert_str_eq(kit.fault.sentence, fault.sentence);
	kit_close(&kit);
	ck_assert(same_bytes(kit.path, twin));
	ck_assert(kit_exists(kit_beside(&kit, "-wal")));
}
END_TEST

START_TEST(who_only_looks_does_not_check_and_who_inspects_does)
{
	kit_spoil_index(kit.path);
	kit_open(&kit, LOG_BOARD);
	ck_assert(kit_act(&kit));
	kit_close(&kit); /* as after an unclean end: a full check is due */
	kit_open(&kit, LOG_LOOK);
	kit_close(&kit);
	kit_refused(&kit, LOG_INSPECT, FAULT_DAMAGED);
	kit_open(&kit, LOG_BOARD);
	kit_close(&kit);
	kit_refused(&kit, LOG_WRITE, FAULT_DAMAGED);
}
END_TEST

/* Readable when somebody else has written, and not again once it was asked. */
START_TEST(a_write_of_another_is_told)
{
	struct log_kit other = kit;
	struct pollfd told = { .events = POLLIN };
	kit_open(&kit, LOG_BOARD);
	(void)log_watch_take(kit.log);
	told.fd = log_watch(kit.log);
	if (told.fd < 0) { /* the system cannot tell */
		kit_close(&kit);
		return;
	}
	ck_assert(!log_watch_take(kit.log));
	kit_open(&other, LOG_BOARD);
	struct log_entry entry = kit_entry("from elsewhere", 0, 0);
	KIT_OK(&other, log_begin(other.log, &other.fault));
	KIT_OK(&other, log_commit(other.log, &entry, &other.fault));
	ck_assert_int_eq(poll(&told, 1, 10000), 1);
	ck_assert(log_watch_take(kit.log));
	ck_assert(!log_watch_take(kit.log));
	ck_assert(log_changed_elsewhere(kit.log));
	kit_close(&other);
	kit_close(&kit);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("checked later", .begin = begin, .end = end),
	TEST(until_it_is_checked_nothing_is_moved_into_the_file),
	TEST(after_an_unclean_end_the_next_board_moves_nothing_before_its_check),
	TEST(a_board_in_which_nothing_was_done_leaves_one_file),
	TEST(damage_that_is_told_later_stops_all_acts_and_leaves_the_file),
	TEST(who_only_looks_does_not_check_and_who_inspects_does),
	TEST(a_write_of_another_is_told),
};

TESTS("log checked later", listed)
