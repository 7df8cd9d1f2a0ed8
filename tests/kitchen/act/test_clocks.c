/* Clocks that are set, sleep, stop and come back wrong: no hold gets shorter. */
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <utmpx.h>

#include "kitchen/canner/canner.h"
#include "kitchen/file/open_day.h"
#include "kitchen/file/open_kitchen.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "log/tables/house.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t load_id; /* jelly, in its hold of 10 min */

static void begin(void)
{
	kk_begin(&kit);
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	kk_to(&kit, load_id, PHASE_HOLD);
}

static void end(void)
{
	kk_end(&kit);
}

static int64_t left(void)
{
	return kk_face(&kit, load_id).left_s;
}

/* --- within one boot ---------------------------------------------------------------- */

static const int64_t steps[] = { 2 * HOUR_MS, -2 * HOUR_MS, DAY_MS, -DAY_MS, 61 * SECOND_MS, -61 * SECOND_MS };
#define STEPS (int)(sizeof(steps) / sizeof(steps[0]))

START_TEST(a_wall_clock_set_during_a_hold_moves_no_second)
{
	kk_pass(&kit, 2 * MINUTE_MS + 500);
	ck_assert_int_eq(left(), 480);
	test_clock_step_wall(&kit.clock, steps[_i]);
	for (int second = 480; second > 0; second--) {
		ck_assert_int_eq(left(), second);
		if (second == 300) {
			KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
			kk_reopen(&kit); /* the program, not the computer */
		}
		ck_assert(!kk_face(&kit, load_id).due);
		kk_pass(&kit, SECOND_MS);
	}
	/* 10 min and half a second of the hold have passed */
	ck_assert(kk_face(&kit, load_id).ringing);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	ck_assert_str_eq(kk_load(&kit, load_id).verdict_why, "");
}
END_TEST

START_TEST(a_wall_clock_set_during_a_hold_does_not_end_it_early)
{
	kk_pass(&kit, 10 * MINUTE_MS - 1);
	test_clock_step_wall(&kit.clock, steps[_i]);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	kk_pass(&kit, 1);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
}
END_TEST

START_TEST(a_wall_clock_that_was_set_is_shown)
{
	const struct warning *warning;

	kk_pass(&kit, 2 * MINUTE_MS);
	ck_assert_ptr_null(kk_warned(&kit, "wall-clock-moved", 0));
	test_clock_step_wall(&kit.clock, steps[_i]);
	warning = kk_warned(&kit, "wall-clock-moved", load_id);
	ck_assert_ptr_nonnull(warning);
	ck_assert_ptr_nonnull(strstr(warning->sentence, steps[_i] < 0 ? "moved back " : "moved on "));
}
END_TEST

START_TEST(a_minute_more_or_less_is_no_matter)
{
	kk_pass(&kit, 2 * MINUTE_MS);
	test_clock_step_wall(&kit.clock, MINUTE_MS);
	ck_assert_ptr_null(kk_warned(&kit, "wall-clock-moved", 0));
	test_clock_step_wall(&kit.clock, 1);
	ck_assert_ptr_nonnull(kk_warned(&kit, "wall-clock-moved", load_id));
	test_clock_step_wall(&kit.clock, -2 * MINUTE_MS - 1);
	ck_assert_ptr_null(kk_warned(&kit, "wall-clock-moved", 0));
	test_clock_step_wall(&kit.clock, -1);
	ck_assert_ptr_nonnull(kk_warned(&kit, "wall-clock-moved", load_id));
}
END_TEST

START_TEST(a_computer_that_slept_has_counted_the_time)
{
	test_clock_pass(&kit.clock, 7 * MINUTE_MS + 30 * SECOND_MS); /* both readings go on asleep */
	ck_assert_int_eq(left(), 150);
	ck_assert_ptr_null(kk_warned(&kit, "wall-clock-moved", 0));
	ck_assert_ptr_null(kk_warned(&kit, "restarted-in-phase", 0));
	test_clock_pass(&kit.clock, 5 * HOUR_MS);
	ck_assert(kk_face(&kit, load_id).ringing);
	ck_assert_int_eq(left(), 150 - 5 * 3600);
}
END_TEST

/* --- across a restart ----------------------------------------------------------------- */

START_TEST(after_a_restart_the_wall_clock_serves)
{
	kk_pass(&kit, 4 * MINUTE_MS);
	test_clock_restart(&kit.clock, 90 * SECOND_MS);
	kk_reopen(&kit);
	ck_assert_int_eq(left(), 600 - 240 - 90);
	kk_pass(&kit, 100 * SECOND_MS);
	ck_assert_int_eq(left(), 600 - 240 - 90 - 100);
}
END_TEST

START_TEST(a_restart_in_a_hold_is_shown_and_stays_on_record)
{
	const struct warning *warning;

	kk_pass(&kit, 4 * MINUTE_MS);
	ck_assert(!strip_load(kk_strip(&kit, load_id))->hold_across_restart);
	test_clock_restart(&kit.clock, MINUTE_MS);
	kk_reopen(&kit);
	ck_assert(strip_load(kk_strip(&kit, load_id))->hold_across_restart);
	warning = kk_warned(&kit, "restarted-in-phase", load_id);
	ck_assert_ptr_nonnull(warning);
	ck_assert_ptr_nonnull(strstr(warning->sentence, "hold"));
	kk_pass(&kit, 5 * MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN); /* until another clock was read */
	ck_assert_ptr_nonnull(strstr(kk_load(&kit, load_id).verdict_why, "restarted during the hold"));
	ck_assert_ptr_null(kk_warned(&kit, "restarted-in-phase", load_id)); /* the rest is of this boot */
}
END_TEST

/* An hour fast, the wall clock ends a hold of 10 min after 2: the other clock tells. */
START_TEST(a_hold_with_a_restart_is_ended_by_another_clock)
{
	int64_t phase_id = kk_phase(&kit, load_id);
	const int64_t noon = 12 * HOUR_MS;

	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_clock_read(kit.kitchen, phase_id, noon, noon + HOUR_MS, true, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	test_clock_restart(&kit.clock, HOUR_MS);
	kk_reopen(&kit);
	ck_assert_ptr_nonnull(strstr(kk_strip(&kit, load_id)->holds, "RESTARTED: "));
	ck_assert(kk_face(&kit, load_id).due);
	ck_assert_ptr_nonnull(strstr(kk_face(&kit, load_id).act, "read another clock"));
	KK_REFUSED(&kit, FAULT_CONFIRM, kk_try_step(&kit, load_id, false));
	KK_REFUSED(&kit, FAULT_CONFIRM,
	           kitchen_clock_read(kit.kitchen, phase_id, noon, noon + 2 * MINUTE_MS, false, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_clock_read(kit.kitchen, phase_id, noon, noon - 1, false, &kit.fault));
	KK_OK(&kit, kitchen_clock_read(kit.kitchen, phase_id, DAY_MS - MINUTE_MS, 9 * MINUTE_MS, false, &kit.fault));
	ck_assert_ptr_null(strstr(kk_strip(&kit, load_id)->holds, "RESTARTED"));
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	ck_assert_ptr_nonnull(strstr(kk_load(&kit, load_id).verdict_why, "by another clock it ran 10:00"));
}
END_TEST

START_TEST(a_hold_too_short_by_another_clock_is_not_valid)
{
	int64_t phase_id = kk_phase(&kit, load_id);

	test_clock_restart(&kit.clock, HOUR_MS);
	kk_reopen(&kit);
	KK_OK(&kit, kitchen_clock_read(kit.kitchen, phase_id, 0, 2 * MINUTE_MS, true, &kit.fault));
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	ck_assert_ptr_nonnull(strstr(kk_load(&kit, load_id).verdict_why, "ran 2:00 of 10:00"));
}
END_TEST

START_TEST(an_hour_off_a_clock_is_read_to_the_second_or_the_minute)
{
	bool to_the_minute;
	int64_t ms;

	ck_assert(clock_read_hour("14:05", &ms, &to_the_minute) && to_the_minute);
	ck_assert_int_eq(ms, 14 * HOUR_MS + 5 * MINUTE_MS);
	ck_assert(clock_read_hour("0:00:30", &ms, &to_the_minute) && !to_the_minute);
	ck_assert_int_eq(ms, 30 * SECOND_MS);
	ck_assert(!clock_read_hour("24:00", &ms, &to_the_minute));
	ck_assert(!clock_read_hour("14:60", &ms, &to_the_minute));
	ck_assert(!clock_read_hour("14:05:", &ms, &to_the_minute));
	ck_assert(!clock_read_hour("1405", &ms, &to_the_minute));
	ck_assert(!clock_read_hour("14:05 pm", &ms, &to_the_minute));
}
END_TEST

START_TEST(a_wall_clock_gone_back_across_a_restart_only_makes_a_hold_longer)
{
	kk_pass(&kit, 4 * MINUTE_MS);
	test_clock_restart(&kit.clock, -_i * HOUR_MS);
	kk_reopen(&kit);
	ck_assert_int_eq(left(), 600); /* nothing counts as passed */
	ck_assert_int_eq(kk_face(&kit, load_id).passed_s, 0);
	for (int minute = 1; minute <= 9; minute++) {
		kk_pass(&kit, MINUTE_MS);
		ck_assert_int_ge(left(), 600 - 240 - 60 * minute);
		KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	}
}
END_TEST

START_TEST(what_waits_for_a_person_is_not_held_up_by_a_wall_clock_gone_back)
{
	int64_t loaded = kk_start(&kit, LOW_KETTLE, 7);
	struct load_order order = kk_order(&kit, WEIGHT_CANNER, 7);
	int64_t other;

	kk_pass(&kit, MINUTE_MS);
	test_clock_restart(&kit.clock, -3 * HOUR_MS);
	kk_reopen(&kit);
	KK_OK(&kit, kk_try_step(&kit, loaded, false)); /* heat is on */
	kk_pass(&kit, 20 * MINUTE_MS);
	/* But no clock begins by it, and no work. */
	kk_warns(&kit, "clock-behind", 0, SEVERITY_STOP, "Set this computer's clock");
	ck_assert(!kk_try_step(&kit, loaded, false));
	ck_assert_str_eq(kit.fault.rule, "key-clock-behind");
	kk_refused(&kit, false, FAULT_REFUSED, "a clock begins");
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_start_load(kit.kitchen, &order, &other, &kit.fault));
	KK_OK(&kit, kitchen_clock_is_right(kit.kitchen, &kit.fault));
	ck_assert(!kk_fires(&kit, "clock-behind"));
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_clock_is_right(kit.kitchen, &kit.fault));
	KK_OK(&kit, kk_try_step(&kit, loaded, false));
	ck_assert_int_eq(kk_face(&kit, loaded).left_s, 600);
	kk_lost(&kit, load_id); /* and the long hold can be begun anew */
	kk_pass(&kit, 5 * MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert_int_eq(left(), 600);
	kk_pass(&kit, 10 * MINUTE_MS);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
}
END_TEST

START_TEST(a_clock_that_was_set_ends_the_stop_by_itself)
{
	test_clock_restart(&kit.clock, -3 * HOUR_MS);
	kk_reopen(&kit);
	ck_assert(kk_fires(&kit, "clock-behind"));
	kk_lost(&kit, load_id); /* written by the wrong clock: that changes nothing */
	ck_assert(kk_fires(&kit, "clock-behind"));
	test_clock_step_wall(&kit.clock, 3 * HOUR_MS);
	ck_assert(!kk_fires(&kit, "clock-behind"));
	kk_pass(&kit, 5 * MINUTE_MS);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
}
END_TEST

START_TEST(two_restarts_count_from_the_first_stamp)
{
	kk_pass(&kit, MINUTE_MS);
	test_clock_restart(&kit.clock, MINUTE_MS);
	kk_reopen(&kit);
	kk_pass(&kit, MINUTE_MS);
	test_clock_restart(&kit.clock, MINUTE_MS);
	kk_reopen(&kit);
	ck_assert_int_eq(left(), 600 - 4 * 60);
}
END_TEST

START_TEST(a_boot_nobody_can_name_counts_by_the_wall_clock)
{
	struct moment a = { .wall_ms = 1000, .awake_ms = 500 };
	struct moment b = { .wall_ms = 4000, .awake_ms = 900 };

	ck_assert(!moment_same_boot(&a, &b));
	ck_assert_int_eq(moment_between(&a, &b), 3000);
}
END_TEST

/* --- the computer's own clock ----------------------------------------------------------- */

/* What the system wrote down when it started; these stand in for its own (getutxid(3)). */
static struct utmpx written;
static bool is_written;

void setutxent(void)
{
}

void endutxent(void)
{
}

/* NOLINTNEXTLINE(readability-inconsistent-declaration-parameter-name): the system's is __id */
struct utmpx *getutxid(const struct utmpx *wanted)
{
	return is_written && wanted->ut_type == BOOT_TIME ? &written : NULL;
}

START_TEST(where_the_kernel_names_no_boot_the_systems_record_of_it_does)
{
	char boot[BOOT_ID_MAX];
	char again[BOOT_ID_MAX];

	written.ut_tv.tv_sec = 1789372800;
	written.ut_tv.tv_usec = 1234;
	is_written = true;
	clock_boot_of_record(boot, sizeof(boot));
	ck_assert_str_eq(boot, "boot-1789372800.001234");
	written.ut_tv.tv_sec += 3600; /* started once more */
	clock_boot_of_record(again, sizeof(again));
	ck_assert_str_ne(again, boot);
	is_written = false;
	clock_boot_of_record(again, sizeof(again));
	ck_assert_str_eq(again, "");
}
END_TEST

START_TEST(the_computers_clock_names_its_boot_and_moves_on)
{
	struct system_clock state;
	struct clock clock = clock_system(&state);
	struct moment a = clock_now(&clock);
	struct moment b;
	struct system_clock again_state;
	struct clock again = clock_system(&again_state);

	b = clock_now(&again);
	ck_assert_str_ne(a.boot, "");
	ck_assert(moment_same_boot(&a, &b));
	ck_assert_int_ge(moment_between(&a, &b), 0);
	ck_assert_int_lt(moment_between(&a, &b), 10 * SECOND_MS);
	ck_assert_int_gt(a.wall_ms, INT64_C(1577836800000)); /* after 2020 */
}
END_TEST

/* --- practice -------------------------------------------------------------------------- */

static void practise(struct practice_clock *state, struct kitchen **kitchen)
{
	struct log_house house;
	struct clock clock;

	KK_OK(&kit, log_house_get(kit.log, &house, &kit.fault));
	ck_assert_int_eq(house.practice_speed, 60);
	clock = clock_practice(state, test_clock_as_clock(&kit.clock), house.practice_speed, house.practice_wall_ms,
	                       house.practice_real_wall_ms);
	KK_OK(&kit, kitchen_open(kit.log, clock, kitchen, &kit.fault));
}

START_TEST(a_practice_clock_goes_on_at_its_speed_when_opened_again)
{
	struct practice_clock state;
	struct kitchen *kitchen;

	kk_end(&kit);
	kk_begin_empty(&kit);
	KK_OK(&kit, kitchen_set_practice(kit.kitchen, 60, &kit.fault));
	for (int opened = 0; opened < 3; opened++) {
		int64_t base = KK_MORNING_MS + opened * 60 * 60 * SECOND_MS;

		practise(&state, &kitchen);
		ck_assert_int_eq(kitchen_now(kitchen).wall_ms, base);
		kk_pass(&kit, 45 * SECOND_MS);
		ck_assert_int_eq(kitchen_now(kitchen).wall_ms, base + 45 * MINUTE_MS);
		kitchen_close(kitchen);
		kk_pass(&kit, 15 * SECOND_MS); /* closed; practice time goes on */
	}
	test_clock_restart(&kit.clock, 10 * SECOND_MS);
	practise(&state, &kitchen);
	ck_assert_int_eq(kitchen_now(kitchen).wall_ms, KK_MORNING_MS + 190 * MINUTE_MS);
	kitchen_close(kitchen);
}
END_TEST

START_TEST(a_hold_in_practice_is_the_same_after_opening_again)
{
	struct practice_clock state;
	struct load_order order;
	const struct strip *strip;
	struct moment now;
	struct face face;
	int64_t started;

	order = kk_order(&kit, BIG_KETTLE, 9);
	order.lid_box_id = 0;
	kk_end(&kit);
	kk_begin_empty(&kit);
	KK_OK(&kit, kitchen_set_practice(kit.kitchen, 60, &kit.fault));
	kitchen_close(kit.kitchen);
	practise(&state, &kit.kitchen);
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "elevation 4650ft", 0, &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "canner 1 boiling_water K pint=9", 0, &kit.fault));
	order.station_id = kk_station(&kit, BIG_KETTLE);
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &started, &kit.fault));
	kk_pass(&kit, SECOND_MS); /* a minute */
	kk_step(&kit, started);
	kk_pass(&kit, 25 * SECOND_MS);
	kk_step(&kit, started);
	kk_pass(&kit, 4 * SECOND_MS);
	kitchen_close(kit.kitchen);
	test_clock_restart(&kit.clock, 2 * SECOND_MS); /* even the computer restarted */
	practise(&state, &kit.kitchen);
	now = kitchen_now(kit.kitchen);
	strip = kk_strip(&kit, started);
	strip_face(strip, &now, &face);
	ck_assert_int_eq(face.left_s, 4 * 60);
	ck_assert(!strip_load(strip)->hold_across_restart);
	/* Its minutes are a second each: an alarm that was heard is quiet for what a hand needs. */
	kk_pass(&kit, 4 * SECOND_MS);
	KK_OK(&kit, kitchen_acknowledge(kit.kitchen, kk_phase(&kit, started), &kit.fault));
	now = kitchen_now(kit.kitchen);
	strip_face(kk_strip(&kit, started), &now, &face);
	ck_assert(!face.ringing);
	ck_assert_int_eq(face.quiet_s, 20 * 60);
}
END_TEST

START_TEST(a_log_opened_for_the_day_runs_by_the_clock_it_was_made_for)
{
	struct new_day {
		struct day *day;
		struct moment now;
	} real, practice;

	kk_close(&kit);
	KK_OK(&kit, day_open(kit.path, LOG_WRITE, &real.day, &kit.fault));
	real.now = kitchen_now(day_kitchen(real.day));
	ck_assert_str_ne(real.now.boot, "practice");
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_set_practice(day_kitchen(real.day), 60, &kit.fault));
	day_close(real.day);
	kk_end(&kit);
	kk_begin_empty(&kit);
	KK_OK(&kit, kitchen_set_practice(kit.kitchen, 3600, &kit.fault));
	kk_close(&kit);
	KK_OK(&kit, day_open(kit.path, LOG_WRITE, &practice.day, &kit.fault));
	practice.now = kitchen_now(day_kitchen(practice.day));
	ck_assert_str_eq(practice.now.boot, "practice");
	day_close(practice.day);
}
END_TEST

/* --- the calendar ------------------------------------------------------------------------- */

static void in_zone(const char *zone)
{
	ck_assert_int_eq(setenv("TZ", zone, 1), 0);
	tzset();
}

static void date_is(const char *date, int64_t wall_ms)
{
	int64_t read = 0;

	ck_assert_msg(clock_read_date(date, &read), "%s is not read", date);
	ck_assert_int_eq(read, wall_ms);
}

START_TEST(a_date_is_read_as_local_midnight)
{
	int64_t read;

	date_is("2026-09-14", KK_MORNING_MS - 9 * HOUR_MS);
	in_zone("MST7");
	date_is("2026-09-14", KK_MORNING_MS - 2 * HOUR_MS);
	in_zone("UTC");
	ck_assert(!clock_read_date("2026-13-01", &read));
	ck_assert(!clock_read_date("2026-02-31", &read));
	ck_assert(!clock_read_date("2026-09-14x", &read));
	ck_assert(!clock_read_date("14.9.2026", &read));
	ck_assert(!clock_read_date("", &read));
	date_is("2028-02-29", INT64_C(1835395200000));
}
END_TEST

START_TEST(a_day_of_23_or_25_hours_begins_at_its_midnight)
{
	/* Central European rules: summer time ends on 25 October 2026, 01:00 UTC. */
	int64_t midnight = INT64_C(1792879200000); /* 2026-10-24 22:00 UTC */

	in_zone("CET-1CEST,M3.5.0,M10.5.0/3");
	ck_assert_int_eq(clock_day_start(midnight), midnight);
	ck_assert_int_eq(clock_day_start(midnight + 25 * HOUR_MS - 1), midnight);
	ck_assert_int_eq(clock_day_start(midnight + 25 * HOUR_MS), midnight + 25 * HOUR_MS);
	in_zone("UTC");
}
END_TEST

START_TEST(near_days_are_said_as_people_say_them)
{
	static const struct {
		int64_t from_now;
		const char *words;
	} near[] = {
		{ 0, "today 09:00" },
		{ -9 * HOUR_MS, "today 00:00" },
		{ -9 * HOUR_MS - 1, "yesterday 23:59" },
		{ 15 * HOUR_MS - 1, "today 23:59" },
		{ 15 * HOUR_MS, "tomorrow 00:00" },
		{ 39 * HOUR_MS - 1, "tomorrow 23:59" },
		{ 39 * HOUR_MS, "Wed 16 Sep 00:00" },
		{ -33 * HOUR_MS, "yesterday 00:00" },
		{ -33 * HOUR_MS - 1, "Sat 12 Sep 23:59" },
	};
	char words[40];

	for (size_t i = 0; i < sizeof(near) / sizeof(near[0]); i++) {
		clock_words_near(KK_MORNING_MS + near[i].from_now, KK_MORNING_MS, words, sizeof(words));
		ck_assert_str_eq(words, near[i].words);
	}
}
END_TEST

START_TEST(jars_are_counted_by_the_local_day)
{
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 9);
	test_clock_set_wall(&kit.clock, KK_MORNING_MS + 15 * HOUR_MS - 1);
	KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 9);
	kk_pass(&kit, 1); /* midnight: read again without being told */
	KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 0);
}
END_TEST

START_TEST(a_year_later_is_the_same_day_but_for_the_leap_day)
{
	static const struct {
		const char *made;
		const char *best;
	} days[] = { { "2026-09-14", "2027-09-14" },
		     { "2024-02-29", "2025-02-28" },
		     { "2023-02-28", "2024-02-28" },
		     { "2025-12-31", "2026-12-31" } };

	for (size_t i = 0; i < sizeof(days) / sizeof(days[0]); i++) {
		int64_t made;
		char best[16];

		ck_assert(clock_read_date(days[i].made, &made));
		clock_words_date(clock_year_later(made + 12 * HOUR_MS), best, sizeof(best));
		ck_assert_str_eq(best, days[i].best);
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("clocks", .begin = begin, .end = end),
	EACH(a_wall_clock_set_during_a_hold_moves_no_second, 0, STEPS),
	EACH(a_wall_clock_set_during_a_hold_does_not_end_it_early, 0, STEPS),
	EACH(a_wall_clock_that_was_set_is_shown, 0, STEPS),
	TEST(a_minute_more_or_less_is_no_matter),
	TEST(a_computer_that_slept_has_counted_the_time),
	TEST(after_a_restart_the_wall_clock_serves),
	TEST(a_restart_in_a_hold_is_shown_and_stays_on_record),
	TEST(a_hold_with_a_restart_is_ended_by_another_clock),
	TEST(a_hold_too_short_by_another_clock_is_not_valid),
	TEST(an_hour_off_a_clock_is_read_to_the_second_or_the_minute),
	EACH(a_wall_clock_gone_back_across_a_restart_only_makes_a_hold_longer, 1, 26),
	TEST(what_waits_for_a_person_is_not_held_up_by_a_wall_clock_gone_back),
	TEST(a_clock_that_was_set_ends_the_stop_by_itself),
	TEST(two_restarts_count_from_the_first_stamp),
	TEST(a_boot_nobody_can_name_counts_by_the_wall_clock),
	TEST(where_the_kernel_names_no_boot_the_systems_record_of_it_does),
	TEST(the_computers_clock_names_its_boot_and_moves_on),
	TEST(a_practice_clock_goes_on_at_its_speed_when_opened_again),
	TEST(a_hold_in_practice_is_the_same_after_opening_again),
	TEST(a_log_opened_for_the_day_runs_by_the_clock_it_was_made_for),
	TEST(a_date_is_read_as_local_midnight),
	TEST(a_day_of_23_or_25_hours_begins_at_its_midnight),
	TEST(a_year_later_is_the_same_day_but_for_the_leap_day),
	TEST(near_days_are_said_as_people_say_them),
	TEST(jars_are_counted_by_the_local_day),
};

KK_TESTS("clocks", listed)
