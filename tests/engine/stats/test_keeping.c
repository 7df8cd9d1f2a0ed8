/* How long jars last at the rate they are used. */
#include <check.h>

#include "engine/stats/keeping.h"
#include "support/tests.h"

#define DAY INT64_C(86400000)
#define WEEK (7 * DAY)
#define NOW (2000 * WEEK + 3 * DAY)

START_TEST(this_week_and_the_25_before_it_count)
{
	ck_assert_int_eq(use_from_week(NOW), 1975);
	ck_assert_int_eq(use_from_week(2000 * WEEK - 1), 1974);
}
END_TEST

START_TEST(weeks_left_at_the_rate_used)
{
	/* 25 weeks and 3 days: 25.43; 10 used in it: 20 last 50.86 weeks */
	ck_assert_int_eq(weeks_left(20, 10, NOW, 0), 50);
	ck_assert_int_eq(weeks_left(0, 10, NOW, 0), 0);
	ck_assert_int_eq(weeks_left(1000000, 6, NOW, 0), 4238095);
}
END_TEST

START_TEST(too_little_use_tells_nothing)
{
	ck_assert_int_eq(weeks_left(20, USE_JARS_LEAST - 1, NOW, 0), WEEKS_UNKNOWN);
	ck_assert_int_ne(weeks_left(20, USE_JARS_LEAST, NOW, 0), WEEKS_UNKNOWN);
}
END_TEST

START_TEST(a_new_product_is_not_spread_over_half_a_year)
{
	/* made 10 weeks ago, 10 used: one a week */
	ck_assert_int_eq(weeks_left(7, 10, NOW, NOW - 10 * WEEK), 7);
	/* made on Monday: counted as four weeks */
	ck_assert_int_eq(weeks_left(6, 6, NOW, NOW - DAY), 4);
	/* a clock that went back */
	ck_assert_int_eq(weeks_left(6, 6, NOW, NOW + DAY), 4);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(this_week_and_the_25_before_it_count),
	TEST(weeks_left_at_the_rate_used),
	TEST(too_little_use_tells_nothing),
	TEST(a_new_product_is_not_spread_over_half_a_year),
};

TESTS("keeping", listed)
