/* When a copy of the log is made: at the ends of things, and never an hour behind. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/file/backups.h"
#include "log/file/file.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

static bool due(void)
{
	return kitchen_backup_due(kit.kitchen, kit.clock.now.awake_ms);
}

static void back_up(void)
{
	KK_OK(&kit, kitchen_backup(kit.kitchen, kit.clock.now.awake_ms, &kit.fault));
	ck_assert(!due());
}

static size_t copies(void)
{
	struct log_copy *rows;
	size_t count;

	KK_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	free(rows);
	return count;
}

static int64_t newest_in_copies(void)
{
	struct log_copy *rows;
	size_t count;
	int64_t newest;

	KK_OK(&kit, log_backups(kit.path, &rows, &count, &kit.fault));
	newest = count > 0 ? rows[0].newest : 0;
	free(rows);
	return newest;
}

START_TEST(one_is_made_at_the_opening)
{
	ck_assert(due());
	back_up();
	ck_assert_int_eq(newest_in_copies(), kk_journal(&kit));
}
END_TEST

START_TEST(the_evenings_seal_round_is_in_a_backup)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	(void)due();
	back_up();
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert_ptr_null(kk_find(&kit, load_id)); /* off the rack */
	ck_assert(due());
	back_up();
	ck_assert_int_eq(newest_in_copies(), kk_journal(&kit));
}
END_TEST

START_TEST(one_is_made_when_the_last_station_is_free)
{
	int64_t first = kk_start(&kit, BIG_KETTLE, 9);
	int64_t second = kk_start(&kit, LOW_KETTLE, 7);

	(void)due();
	back_up();
	kk_to(&kit, first, PHASE_COOLING);
	back_up(); /* whatever an hour has made due meanwhile */
	kk_to(&kit, second, PHASE_UNLOAD);
	back_up();
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, second);
	ck_assert(due());
}
END_TEST

START_TEST(nothing_is_in_the_log_alone_for_more_than_an_hour)
{
	(void)due();
	back_up();
	(void)kk_start(&kit, BIG_KETTLE, 9);
	ck_assert(!due());
	kk_pass(&kit, HOUR_MS - 1);
	ck_assert(!due());
	kk_pass(&kit, 1);
	ck_assert(due());
	back_up();
	kk_pass(&kit, 3 * HOUR_MS);
	ck_assert(!due()); /* nothing was done */
}
END_TEST

START_TEST(midnight_makes_one_due)
{
	(void)due();
	(void)kk_start(&kit, BIG_KETTLE, 9);
	back_up();
	kk_pass(&kit, 15 * HOUR_MS - 1);
	ck_assert(!due());
	kk_pass(&kit, 1);
	ck_assert(due());
	back_up();
	ck_assert_uint_eq(copies(), 1); /* there was nothing new to copy */
}
END_TEST

START_TEST(one_that_failed_is_tried_again)
{
	char folder[400];
	FILE *file;

	(void)due();
	(void)snprintf(folder, sizeof(folder), "%s.backups", kit.path);
	file = fopen(folder, "w"); /* in the way */
	ck_assert_ptr_nonnull(file);
	ck_assert_int_eq(fclose(file), 0);
	ck_assert(!kitchen_backup(kit.kitchen, kit.clock.now.awake_ms, &kit.fault));
	ck_assert(!due());
	ck_assert_int_eq(remove(folder), 0);
	kk_pass(&kit, 10 * MINUTE_MS);
	ck_assert(due());
	back_up();
	ck_assert_uint_eq(copies(), 1);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("backups", .begin = begin, .end = end),
	TEST(one_is_made_at_the_opening),
	TEST(the_evenings_seal_round_is_in_a_backup),
	TEST(one_is_made_when_the_last_station_is_free),
	TEST(nothing_is_in_the_log_alone_for_more_than_an_hour),
	TEST(midnight_makes_one_due),
	TEST(one_that_failed_is_tried_again),
};

KK_TESTS("kitchen backups", listed)
