/* Two terminals on one log. */
#include <check.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;
static struct log *second;

static void begin(void)
{
	kit_start(&kit);
	KIT_OK(&kit, log_open(kit.path, LOG_WRITE, &second, &kit.fault));
}

static void end(void)
{
	log_close(second);
	second = NULL;
	kit_clear(&kit);
}

static double now_s(void)
{
	struct timespec now;
	ck_assert_int_eq(clock_gettime(CLOCK_MONOTONIC, &now), 0);
	return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static void small_act(struct log *log)
{
	struct log_entry entry = kit_entry("small", 0, 0);
	KIT_OK(&kit, log_begin(log, &kit.fault));
	KIT_OK(&kit, log_commit(log, &entry, &kit.fault));
}

START_TEST(the_one_who_waits_is_told_within_a_second)
{
	struct log_entry undo = kit_entry("undo", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	double start = now_s();
	ck_assert(!log_begin(second, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_BUSY);
	ck_assert(now_s() - start < 1.0);
	start = now_s();
	ck_assert(!log_undo(second, 1, &undo, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_BUSY);
	ck_assert(now_s() - start < 1.0);
	log_abandon(kit.log);
	small_act(second);
}
END_TEST

START_TEST(reading_does_not_wait_and_sees_no_half_act)
{
	struct log_lot lot = { .code = "x" };
	struct log_lot out;
	struct log_entry entry = kit_entry("lot", 0, 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	ck_assert(!log_lot_get(second, lot.id, &out, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	KIT_OK(&kit, log_lot_get(second, lot.id, &out, &kit.fault));
	ck_assert_str_eq(out.code, "x");
}
END_TEST

START_TEST(a_change_by_the_other_is_noticed_once)
{
	ck_assert(log_changed_elsewhere(kit.log)); /* the first time always */
	ck_assert(!log_changed_elsewhere(kit.log));
	small_act(kit.log); /* one's own */
	ck_assert(!log_changed_elsewhere(kit.log));
	small_act(second);
	ck_assert(log_changed_elsewhere(kit.log));
	ck_assert(!log_changed_elsewhere(kit.log));
	KIT_OK(&kit, log_begin(second, &kit.fault));
	log_abandon(second); /* nothing came of it */
	ck_assert(!log_changed_elsewhere(kit.log));
}
END_TEST

/* A connection that has read keeps no old picture that would forbid it to write
 * (SQLITE_BUSY_SNAPSHOT, SQLite documentation, rescode.html). */
START_TEST(they_write_in_turn)
{
	struct log_station *rows;
	size_t count;
	for (int i = 0; i < 20; i++) {
		struct log *log = i % 2 == 0 ? kit.log : second;
		KIT_OK(&kit, log_stations(log, &rows, &count, &kit.fault));
		free(rows);
		small_act(log);
	}
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), 21);
}
END_TEST

START_TEST(what_the_other_changed_since_is_not_undone)
{
	struct log_entry first = kit_entry("Loaded", 0, 0);
	struct log_entry next = kit_entry("Boils", 1, 0);
	struct log_entry undo = kit_entry("Undo", 1, 0);
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 3, &first, &kit.fault));
	KIT_OK(&kit, kit_next_phase(second, first.work_id, "hold", &next, &kit.fault));
	ck_assert(!log_undo(kit.log, first.id, &undo, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFLICT);
}
END_TEST

START_TEST(one_can_look_while_the_other_writes)
{
	struct log *look;
	struct log_entry entry = kit_entry("Canner 2", 0, 0);
	struct log_station station;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_open(kit.path, LOG_LOOK, &look, &kit.fault));
	log_abandon(kit.log);
	KIT_OK(&kit, kit_put_canner(kit.log, 2, "Second", &entry, &kit.fault));
	ck_assert(log_changed_elsewhere(look));
	KIT_OK(&kit, log_station_get(look, entry.station_id, &station, &kit.fault));
	ck_assert_str_eq(station.name, "Second");
	log_close(look);
	small_act(kit.log);
}
END_TEST

START_TEST(the_log_opens_while_another_writes)
{
	struct log *third;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_open(kit.path, LOG_WRITE, &third, &kit.fault));
	log_close(third);
	log_abandon(kit.log);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("two terminals", .begin = begin, .end = end),
	TEST(the_one_who_waits_is_told_within_a_second),
	TEST(reading_does_not_wait_and_sees_no_half_act),
	TEST(a_change_by_the_other_is_noticed_once),
	TEST(they_write_in_turn),
	TEST(what_the_other_changed_since_is_not_undone),
	TEST(one_can_look_while_the_other_writes),
	TEST(the_log_opens_while_another_writes),
};

TESTS("log two terminals", listed)
