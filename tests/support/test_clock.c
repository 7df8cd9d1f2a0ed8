/* test_clock.c - see test_clock.h. */
#include <stdio.h>

#include "support/test_clock.h"

static void name_boot(struct test_clock *clock)
{
	(void)snprintf(clock->now.boot, sizeof(clock->now.boot), "boot-%d", clock->boot);
}

void test_clock_init(struct test_clock *clock, int64_t wall_ms)
{
	*clock = (struct test_clock){ .now = { .wall_ms = wall_ms, .awake_ms = HOUR_MS }, .boot = 1 };
	name_boot(clock);
}

static void read_test(void *state, struct moment *now)
{
	const struct test_clock *clock = state;

	*now = clock->now;
}

struct clock test_clock_as_clock(struct test_clock *clock)
{
	return (struct clock){ .read = read_test, .state = clock };
}

void test_clock_pass(struct test_clock *clock, int64_t ms)
{
	clock->now.wall_ms += ms;
	clock->now.awake_ms += ms;
}

void test_clock_step_wall(struct test_clock *clock, int64_t ms)
{
	clock->now.wall_ms += ms;
}

void test_clock_set_wall(struct test_clock *clock, int64_t wall_ms)
{
	clock->now.wall_ms = wall_ms;
}

void test_clock_restart(struct test_clock *clock, int64_t off_ms)
{
	clock->boot++;
	name_boot(clock);
	clock->now.wall_ms += off_ms;
	clock->now.awake_ms = 20 * SECOND_MS;
}
