/*
 * test_clock.h - a clock that only moves when a test says so.
 *
 * Wall and suspend-proof time can be moved together (time passes, or the
 * computer sleeps), the wall clock alone (somebody sets it), or the computer can
 * be restarted (a new boot identity, suspend-proof time from zero).
 */
#ifndef STILLROOM_TESTS_TEST_CLOCK_H
#define STILLROOM_TESTS_TEST_CLOCK_H

#include <stdint.h>

#include "kitchen/board/clock.h"

#define SECOND_MS INT64_C(1000)
#define MINUTE_MS (60 * SECOND_MS)
#define HOUR_MS (60 * MINUTE_MS)
#define DAY_MS (24 * HOUR_MS)

struct test_clock {
	struct moment now;
	int boot; /* the number in now.boot */
};

/* Boot 1, an hour after it began, at `wall_ms`. */
void test_clock_init(struct test_clock *clock, int64_t wall_ms);
/* The clock to hand to a kitchen; `clock` must outlive it. */
struct clock test_clock_as_clock(struct test_clock *clock);

void test_clock_pass(struct test_clock *clock, int64_t ms);      /* both readings go on */
void test_clock_step_wall(struct test_clock *clock, int64_t ms); /* the wall clock is set */
void test_clock_set_wall(struct test_clock *clock, int64_t wall_ms);
/* The computer is off for `off_ms` by the wall clock (may be negative: a wall
 * clock that comes back wrong) and has been up for 20 s when this returns. */
void test_clock_restart(struct test_clock *clock, int64_t off_ms);

#endif
