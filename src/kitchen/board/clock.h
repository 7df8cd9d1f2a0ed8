/*
 * clock.h - the one place where time enters the program.
 *
 * The kitchen is handed a `struct clock` and asks it for the moment; the board,
 * the tests and practice mode each hand in their own.  Outside clock.c nobody reads a
 * clock for the kitchen's purposes.  See base/moment.h for what a moment holds, how long it
 * is between two of them (a stepped wall clock moves no timer; across a restart a hold gets
 * longer, never shorter) and how seconds left are rounded.
 *
 * A wall clock that moved by more than a minute against the other is shown, not hidden (rules
 * about CLOCK and HOUSE, engine/rules/rule_table.c).  No clock starts by itself: phases.h.
 */
#ifndef STILLROOM_KITCHEN_BOARD_CLOCK_H
#define STILLROOM_KITCHEN_BOARD_CLOCK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/moment.h"

struct clock {
	void (*read)(void *state, struct moment *now);
	void *state; /* owned by whoever made the clock; outlives it */
};

struct moment clock_now(const struct clock *clock);

/* Real time since the machine started, ms, its sleep included where the system tells: for
 * waits of the program itself, in practice too. */
int64_t clock_awake_ms(void);

/* This boot where the kernel has no name for it: the time the system wrote down when it
 * started, once (getutxid(3), BOOT_TIME; POSIX.1, <utmpx.h>).  Unlike a time reckoned from the
 * two clocks it stays as it is when the wall clock is set.  "": nothing is written down. */
void clock_boot_of_record(char *boot, size_t size);

/* The computer's own clocks: CLOCK_REALTIME, CLOCK_BOOTTIME (CLOCK_MONOTONIC
 * where there is none; there it goes on through sleep: FreeBSD, macOS) and the kernel's boot
 * identity, or the system's record of the boot.  `state` is filled in once and must outlive
 * the clock. */
struct system_clock {
	char boot[BOOT_ID_MAX];
};
struct clock clock_system(struct system_clock *state);

/* A clock for practice logs that runs `speed` times as fast as `real`, set to
 * `practice_wall_ms` when the real wall clock read `real_wall_ms`.  Its moments
 * carry the boot "practice", so a restart of the program changes nothing. */
struct practice_clock {
	struct clock real;
	int speed;
	int64_t base_wall_ms; /* practice time when the program opened */
	struct moment real_at_open;
};
struct clock clock_practice(struct practice_clock *state, struct clock real, int speed, int64_t practice_wall_ms,
                            int64_t real_wall_ms);

/* Local calendar, by the TZ of the process.  Sizes include the zero. */
int64_t clock_day_start(int64_t wall_ms); /* local midnight before or at wall_ms */
/* The same day and hour of the next year; 29 February gives the 28th. */
int64_t clock_year_later(int64_t wall_ms);
int64_t clock_months_later(int64_t wall_ms, int months);
int clock_year_utc(int64_t wall_ms); /* the year in UTC: seasons of the log are told by it */
void clock_words_date(int64_t wall_ms, char *buffer, size_t size);     /* "2026-09-14" */
void clock_words_hour(int64_t wall_ms, char *buffer, size_t size);     /* "14:05" */
void clock_words_time(int64_t minutes, char *buffer, size_t size);     /* after midnight: "08:30" */
void clock_words_day_hour(int64_t wall_ms, char *buffer, size_t size); /* "Mon 14 Sep 14:05" */
/* "today 14:05", "tomorrow 02:10", "yesterday 14:05" or "Mon 14 Sep 14:05". */
void clock_words_near(int64_t wall_ms, int64_t now_wall_ms, char *buffer, size_t size);
/* "2026-09-14T12:05:33.412Z", UTC; size 32.  "" where there is no such year. */
void clock_words_utc(int64_t wall_ms, char *buffer, size_t size);
/* The same back, to the letter. */
bool clock_read_utc(const char *words, int64_t *wall_ms);
/* Read "14:05" or "14:05:30", as some clock on the wall shows it, as ms of its day.
 * *to_the_minute: no seconds were given. */
bool clock_read_hour(const char *words, int64_t *ms, bool *to_the_minute);
/* Read "2026-09-14" as local midnight. */
bool clock_read_date(const char *words, int64_t *wall_ms);

#endif
