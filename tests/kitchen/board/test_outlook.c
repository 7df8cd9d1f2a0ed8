/* What lies behind a load and ahead of it, for the ribbon. */
#include "kitchen/board/outlook.h"
#include "kitchen/step/step.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static struct stretch stretches[STRETCHES_MAX];
static size_t count;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

static void look(int64_t load_id)
{
	count = strip_outlook(kk_strip(&kit, load_id), &kit.clock.now, stretches);
}

static int64_t free_in(int64_t load_id)
{
	return strip_free_in_ms(kk_strip(&kit, load_id), &kit.clock.now);
}

/* Each stretch ends where the next begins, now lies in the running one. */
static void is_one_line(void)
{
	size_t running = 0;

	ck_assert_uint_gt(count, 0);
	for (size_t i = 0; i < count; i++) {
		ck_assert_int_le(stretches[i].from_ms, stretches[i].to_ms);
		if (i > 0)
			ck_assert_int_eq(stretches[i].from_ms, stretches[i - 1].to_ms);
		if (i > 0) /* past, then running, then expected */
			ck_assert_int_ge(stretches[i].kind, stretches[i - 1].kind);
		running += stretches[i].kind == STRETCH_RUNNING;
		if (stretches[i].kind == STRETCH_PAST)
			ck_assert_int_le(stretches[i].to_ms, 0);
		if (stretches[i].kind == STRETCH_RUNNING)
			ck_assert(stretches[i].from_ms <= 0 && stretches[i].to_ms >= 0);
	}
	ck_assert_uint_eq(running, 1);
}

START_TEST(an_empty_canner_has_no_outlook_and_is_free_now)
{
	const struct strip *strip = kk_canner(&kit, BIG_KETTLE);

	ck_assert_uint_eq(strip_outlook(strip, &kit.clock.now, stretches), 0);
	ck_assert_int_eq(strip_free_in_ms(strip, &kit.clock.now), 0);
}
END_TEST

START_TEST(stretches_lie_end_to_end_in_every_phase)
{
	static const int digits[] = { BIG_KETTLE, STEAM_CANNER, WEIGHT_CANNER, DIAL_CANNER };
	int64_t load_id = kk_start(&kit, digits[_i], 7);
	enum station_kind kind = kk_strip(&kit, load_id)->station.kind;

	for (const struct phase_rule *rule = phase_rule_first(kind); rule != NULL; rule = phase_rule_next(kind, rule)) {
		/* Low-acid food that was hours on its way does not count, and is not left to cool. */
		if (rule->name == PHASE_COOLING && kk_load(&kit, load_id).verdict == VERDICT_NOT_VALID)
			continue;
		kk_to(&kit, load_id, rule->name);
		look(load_id);
		is_one_line();
		kk_pass(&kit, 3 * MINUTE_MS + 7);
		look(load_id);
		is_one_line();
		kk_pass(&kit, 3 * HOUR_MS); /* long over */
		look(load_id);
		is_one_line();
	}
}
END_TEST

/* Planning times: come-up 20-30 min, pressurise 3-5, cool-down 20-60 (A539
 * Guide 1), the middle of each; loaded 0-2 and unload 0-4 min are ours. */
START_TEST(a_canner_is_free_after_what_remains_of_its_stages)
{
	int64_t jelly = kk_start(&kit, BIG_KETTLE, 9);
	int64_t beans = kk_start(&kit, WEIGHT_CANNER, 7);

	ck_assert_int_eq(free_in(jelly), (1 + 25 + 10 + 5 + 2) * MINUTE_MS);
	/* loaded 1, come-up 13.5, vent 10, pressurise 4, hold 20, cool-down 40, wait 10, unload 2 */
	ck_assert_int_eq(free_in(beans), 100 * MINUTE_MS + 30 * SECOND_MS);
	kk_to(&kit, jelly, PHASE_HOLD);
	ck_assert_int_eq(free_in(jelly), (10 + 5 + 2) * MINUTE_MS);
	kk_pass(&kit, 4 * MINUTE_MS);
	ck_assert_int_eq(free_in(jelly), (6 + 5 + 2) * MINUTE_MS);
	kk_pass(&kit, 30 * MINUTE_MS); /* over, and could end any moment */
	ck_assert_int_eq(free_in(jelly), (5 + 2) * MINUTE_MS);
	kk_to(&kit, jelly, PHASE_COOLING);
	ck_assert_int_eq(free_in(jelly), 0);
}
END_TEST

START_TEST(the_sum_of_what_remains_in_the_canner_is_when_it_is_free)
{
	int64_t load_id = kk_start(&kit, DIAL_CANNER, 7);

	for (int minute = 0; minute < 30; minute++) {
		int64_t sum = 0;

		look(load_id);
		for (size_t i = 0; i < count && stretches[i].name != PHASE_COOLING; i++)
			sum += stretches[i].kind == STRETCH_RUNNING    ? stretches[i].to_ms
			       : stretches[i].kind == STRETCH_EXPECTED ? stretches[i].to_ms - stretches[i].from_ms
			                                               : 0;
		ck_assert_int_eq(free_in(load_id), sum);
		kk_pass(&kit, MINUTE_MS);
		if (minute % 7 == 6)
			(void)kk_try_step(&kit, load_id, true);
	}
}
END_TEST

START_TEST(a_lost_hold_is_marked_lost_and_the_next_is_expected_in_full)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);
	bool lost = false;

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	kk_lost(&kit, load_id);
	kk_pass(&kit, 2 * MINUTE_MS);
	look(load_id);
	is_one_line();
	for (size_t i = 0; i < count; i++) {
		lost = lost || (stretches[i].lost && stretches[i].name == PHASE_HOLD &&
		                stretches[i].from_ms == -6 * MINUTE_MS && stretches[i].to_ms == -2 * MINUTE_MS);
		if (stretches[i].kind == STRETCH_EXPECTED && stretches[i].name == PHASE_HOLD)
			ck_assert_int_eq(stretches[i].to_ms - stretches[i].from_ms, 10 * MINUTE_MS);
	}
	ck_assert(lost);
}
END_TEST

START_TEST(a_wall_clock_set_since_does_not_shift_the_past)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 2 * MINUTE_MS);
	test_clock_step_wall(&kit.clock, (_i == 0 ? 2 : -2) * HOUR_MS);
	look(load_id);
	is_one_line();
	ck_assert_int_eq(stretches[1].name, PHASE_COME_UP);
	ck_assert_int_eq(stretches[1].from_ms, -27 * MINUTE_MS);
	ck_assert_int_eq(stretches[1].to_ms, -2 * MINUTE_MS);
	kk_pass(&kit, 8 * MINUTE_MS);
	kk_step(&kit, load_id); /* stamped by the new wall clock */
	look(load_id);
	is_one_line();
}
END_TEST

START_TEST(a_hold_said_to_have_begun_earlier_takes_its_time_from_the_come_up)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_HOLD);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 4));
	look(load_id);
	is_one_line();
	ck_assert_int_eq(stretches[1].to_ms, -4 * MINUTE_MS);
	ck_assert_int_eq(stretches[1].from_ms, -25 * MINUTE_MS);
}
END_TEST

START_TEST(a_load_with_many_losses_keeps_its_newest_stretches)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	for (int i = 0; i < 12; i++) {
		kk_to(&kit, load_id, PHASE_HOLD);
		kk_pass(&kit, 2 * MINUTE_MS);
		kk_lost(&kit, load_id);
	}
	look(load_id);
	is_one_line();
	ck_assert_uint_eq(kk_strip(&kit, load_id)->past_count, PAST_PHASES_MAX);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->hold_starts, 12);
	ck_assert_int_eq(stretches[PAST_PHASES_MAX - 1].name, PHASE_HOLD);
	ck_assert_int_eq(stretches[PAST_PHASES_MAX].kind, STRETCH_RUNNING);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("outlook", .begin = begin, .end = end),
	TEST(an_empty_canner_has_no_outlook_and_is_free_now),
	EACH(stretches_lie_end_to_end_in_every_phase, 0, 4),
	TEST(a_canner_is_free_after_what_remains_of_its_stages),
	TEST(the_sum_of_what_remains_in_the_canner_is_when_it_is_free),
	TEST(a_lost_hold_is_marked_lost_and_the_next_is_expected_in_full),
	EACH(a_wall_clock_set_since_does_not_shift_the_past, 0, 2),
	TEST(a_hold_said_to_have_begun_earlier_takes_its_time_from_the_come_up),
	TEST(a_load_with_many_losses_keeps_its_newest_stretches),
};

KK_TESTS("outlook", listed)
