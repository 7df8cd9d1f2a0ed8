#include <check.h>

#include "base/moment.h"
#include "support/tests.h"

#define HOUR_MS INT64_C(3600000)
#define DAY_MS (24 * HOUR_MS)

static const struct moment noon = { 1789387200000, 5000000, "boot-a" };

START_TEST(one_boot_has_one_identity)
{
	struct moment other = noon;
	struct moment unknown = { noon.wall_ms, noon.awake_ms, "" };

	ck_assert(moment_same_boot(&noon, &other));
	other.boot[5] = 'b';
	ck_assert(!moment_same_boot(&noon, &other));
	/* Two unknown boots are not known to be the same. */
	ck_assert(!moment_same_boot(&unknown, &unknown));
	ck_assert(!moment_same_boot(&noon, &unknown));
}
END_TEST

START_TEST(a_stepped_wall_clock_moves_nothing_within_a_boot)
{
	static const int64_t steps[] = { 2 * HOUR_MS, -2 * HOUR_MS, DAY_MS, -DAY_MS };

	for (size_t i = 0; i < sizeof(steps) / sizeof(steps[0]); i++) {
		struct moment later = noon;

		later.awake_ms += 90000;
		later.wall_ms += 90000 + steps[i];
		ck_assert_int_eq(moment_between(&noon, &later), 90000);
		ck_assert_int_eq(moment_wall_step(&noon, &later), steps[i]);
	}
}
END_TEST

START_TEST(before_this_boot_is_a_boot_not_known)
{
	struct moment earliest = moment_before(&noon, noon.awake_ms);
	struct moment before = moment_before(&noon, noon.awake_ms + 1);

	ck_assert(moment_same_boot(&earliest, &noon));
	ck_assert_int_eq(earliest.awake_ms, 0);
	ck_assert_int_eq(earliest.wall_ms, noon.wall_ms - noon.awake_ms);
	ck_assert_str_eq(before.boot, "");
	ck_assert_int_eq(before.awake_ms, 0);
	ck_assert_int_eq(moment_between(&before, &noon), noon.awake_ms + 1);
}
END_TEST

START_TEST(across_boots_the_wall_clock_serves)
{
	struct moment later = { noon.wall_ms + HOUR_MS, 1000, "boot-b" };

	ck_assert_int_eq(moment_between(&noon, &later), HOUR_MS);
	ck_assert_int_eq(moment_wall_step(&noon, &later), 0);
	later.wall_ms = noon.wall_ms - HOUR_MS;
	ck_assert_int_eq(moment_between(&noon, &later), -HOUR_MS);
}
END_TEST

START_TEST(a_damaged_stamp_gives_a_number_all_the_same)
{
	struct moment first = { INT64_MIN, INT64_MIN, "" };
	struct moment last = { INT64_MAX, INT64_MAX, "" };

	ck_assert_int_eq(moment_between(&first, &last), INT64_MAX);
	ck_assert_int_eq(moment_between(&last, &first), INT64_MIN);
	ck_assert_int_eq(moment_seconds_left(INT64_MIN, INT64_MAX), INT64_MIN / 1000);
}
END_TEST

START_TEST(the_clock_shows_zero_only_when_the_time_is_over)
{
	ck_assert_int_eq(moment_seconds_left(10000, 0), 10);
	ck_assert_int_eq(moment_seconds_left(10000, 1), 10);
	ck_assert_int_eq(moment_seconds_left(10000, 9000), 1);
	ck_assert_int_eq(moment_seconds_left(10000, 9999), 1);
	ck_assert_int_eq(moment_seconds_left(10000, 10000), 0);
}
END_TEST

START_TEST(time_over_counts_on_below_zero)
{
	ck_assert_int_eq(moment_seconds_left(10000, 10999), 0);
	ck_assert_int_eq(moment_seconds_left(10000, 11000), -1);
	ck_assert_int_eq(moment_seconds_left(10000, 70000), -60);
}
END_TEST

START_TEST(a_clock_set_back_never_shortens_a_hold)
{
	ck_assert_int_eq(moment_seconds_left(10000, -1), 10);
	ck_assert_int_eq(moment_seconds_left(10000, -DAY_MS), 10);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(one_boot_has_one_identity),
	TEST(a_stepped_wall_clock_moves_nothing_within_a_boot),
	TEST(before_this_boot_is_a_boot_not_known),
	TEST(across_boots_the_wall_clock_serves),
	TEST(a_damaged_stamp_gives_a_number_all_the_same),
	TEST(the_clock_shows_zero_only_when_the_time_is_over),
	TEST(time_over_counts_on_below_zero),
	TEST(a_clock_set_back_never_shortens_a_hold),
};

TESTS("moment", listed)
