/*
 * When to wake. The wall clock is never set by these tests; what a step means is
 * checked as arithmetic.
 */
#include <check.h>
#include <poll.h>

#include "kitchen/board/clock.h"
#include "screen/term/wake.h"
#include "support/tests.h"

static struct wake *wake;

static void open_wake(void)
{
	struct fault fault = { 0 };

	ck_assert_msg(wake_open(&wake, &fault), "%s", fault.sentence);
}

static void close_wake(void)
{
	wake_close(wake);
	wake = NULL;
}

/* Wait as terminal_wait() does, at most `limit_ms`; true when it woke. */
static bool sleep_on(int limit_ms)
{
	struct pollfd fds[WAKE_FDS_MAX];
	size_t count = wake_fds(wake, fds);
	int timeout = wake_timeout_ms(wake);

	if (timeout < 0 || timeout > limit_ms)
		return poll(fds, (nfds_t)count, limit_ms) > 0;
	return poll(fds, (nfds_t)count, timeout) >= 0;
}

START_TEST(wakes_once_and_not_early)
{
	int64_t at = clock_awake_ms() + 60;

	ck_assert(wake_at_awake_ms(wake, at));
	ck_assert(!wake_read(wake).due);
	ck_assert(sleep_on(5000));
	ck_assert_int_ge(clock_awake_ms(), at);
	ck_assert(wake_read(wake).due);
	ck_assert(!wake_read(wake).due);
	ck_assert(!sleep_on(30));
}
END_TEST

START_TEST(a_time_already_past_wakes_at_once)
{
	static const int64_t past[] = { 0, 1, 999, 1000 };

	for (size_t i = 0; i < sizeof(past) / sizeof(past[0]); i++) {
		ck_assert(wake_at_awake_ms(wake, past[i]));
		ck_assert(sleep_on(5000));
		ck_assert(wake_read(wake).due);
	}
}
END_TEST

START_TEST(a_new_time_replaces_the_old_one)
{
	ck_assert(wake_at_awake_ms(wake, clock_awake_ms() + 20));
	ck_assert(wake_at_awake_ms(wake, clock_awake_ms() + 60000));
	ck_assert(!sleep_on(60));
	ck_assert(!wake_read(wake).due);
}
END_TEST

START_TEST(never_disarms)
{
	ck_assert(wake_at_awake_ms(wake, clock_awake_ms() + 20));
	ck_assert(wake_at_awake_ms(wake, WAKE_NEVER));
	ck_assert(!sleep_on(60));
	ck_assert(!wake_read(wake).due);
}
END_TEST

START_TEST(an_untouched_wall_clock_is_no_news)
{
	for (int i = 0; i < 3; i++) {
		struct wake_news news = wake_read(wake);
		ck_assert(!news.wall_stepped);
		ck_assert_int_eq(news.wall_step_ms, 0);
	}
}
END_TEST

START_TEST(the_timeout_is_never_early_and_never_endless)
{
	ck_assert_int_eq(wake_timeout_between(1000, WAKE_NEVER), -1);
	ck_assert_int_eq(wake_timeout_between(1000, 1000), 0);
	ck_assert_int_eq(wake_timeout_between(1000, 1), 0);
	ck_assert_int_eq(wake_timeout_between(1000, 1001), 1);
	ck_assert_int_eq(wake_timeout_between(1000, 61000), 60000);
	ck_assert_int_eq(wake_timeout_between(1000, 61001), 60000);
	ck_assert_int_eq(wake_timeout_between(0, INT64_MAX), 60000);
	ck_assert_int_eq(wake_timeout_between(-5, INT64_MAX), 60000);
}
END_TEST

START_TEST(a_step_is_what_the_wall_moved_beyond_the_time_awake)
{
	ck_assert_int_eq(wake_step_between(1000000, 500, 1060000, 60500), 0);
	ck_assert_int_eq(wake_step_between(1000000, 500, 1000000 + 7200000, 500), 7200000);
	ck_assert_int_eq(wake_step_between(1000000, 500, 1000000 - 86400000, 1500), -86401000);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("wake", .begin = open_wake, .end = close_wake),
	TEST(wakes_once_and_not_early),
	TEST(a_time_already_past_wakes_at_once),
	TEST(a_new_time_replaces_the_old_one),
	TEST(never_disarms),
	TEST(an_untouched_wall_clock_is_no_news),
	TEST(the_timeout_is_never_early_and_never_endless),
	TEST(a_step_is_what_the_wall_moved_beyond_the_time_awake),
};

TESTS("wake", listed)
