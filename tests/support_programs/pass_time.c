/*
 * pass_time.c - put the clock of a practice log forward, so that a test at a terminal
 * need not wait and loses no window of time on a busy machine.
 *
 *   pass_time LOG MINUTES
 *
 * Nobody may have the board open: it reads the clock's setting when it opens.
 */
#include <stdio.h>
#include <stdlib.h>

#include "kitchen/board/clock.h"
#include "log/file/file.h"
#include "log/journal/acts.h"
#include "log/tables/house.h"

static struct system_clock computer;
static struct practice_clock practice;

static bool put_forward(struct log *log, int64_t ms, struct fault *fault)
{
	struct log_entry entry = { .verb = "practice", .said = "[]" };
	struct log_house house;
	struct clock clock;

	if (!log_house_get(log, &house, fault))
		return false;
	if (house.practice_speed == 0)
		return fault_set(fault, FAULT_REFUSED, "this is a real log: its time is not ours to pass");
	house.practice_wall_ms += ms;
	clock = clock_practice(&practice, clock_system(&computer), house.practice_speed, house.practice_wall_ms,
	                       house.practice_real_wall_ms);
	entry.at = clock_now(&clock);
	if (!log_begin(log, fault))
		return false;
	if (log_put_house(log, &house, fault) && log_commit(log, &entry, fault))
		return true;
	log_abandon(log);
	return false;
}

int main(int argc, char **argv)
{
	struct fault fault = { 0 };
	struct log *log = NULL;
	long minutes = argc == 3 ? strtol(argv[2], NULL, 10) : 0;
	bool done;

	if (minutes <= 0) {
		(void)fputs("usage: pass_time LOG MINUTES\n", stderr);
		return 2;
	}
	done = log_open(argv[1], LOG_WRITE, &log, &fault) && put_forward(log, minutes * INT64_C(60000), &fault);
	log_close(log);
	if (!done)
		(void)fprintf(stderr, "pass_time: %s\n", fault.sentence);
	return done ? 0 : 1;
}
