/* What the log says of a process: valid, not valid, unknown - never more. */
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/step/step.h"
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

static const int digits[] = { BIG_KETTLE, STEAM_CANNER, WEIGHT_CANNER, DIAL_CANNER };

static bool offered(int64_t load_id, enum exception exception)
{
	return exception_words(kk_strip(&kit, load_id), exception, &kit.clock.now) != NULL;
}

static void why_says(int64_t load_id, const char *words)
{
	struct log_load load = kk_load(&kit, load_id);

	ck_assert_msg(strstr(load.verdict_why, words) != NULL, "\"%s\" does not say \"%s\"", load.verdict_why, words);
}

START_TEST(a_full_unbroken_hold_is_valid_from_heat_off)
{
	int64_t load_id = kk_start(&kit, digits[_i], 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, kk_strip(&kit, load_id)->phase.required_ms);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
	kk_pass(&kit, MINUTE_MS); /* longer does no harm */
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	ck_assert_str_eq(kk_load(&kit, load_id).verdict_why, "");
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, kit.clock.now.wall_ms);
}
END_TEST

START_TEST(a_stopped_process_is_not_valid_and_says_why)
{
	int64_t load_id = kk_start(&kit, digits[_i], 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 3 * MINUTE_MS + 20 * SECOND_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	why_says(load_id, "stopped in hold after 3:20 of ");
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, kit.clock.now.wall_ms);
	/* A pressure canner cools down by itself all the same (A539). */
	ck_assert_int_eq(kk_name(&kit, load_id),
	                 method_has_pressure(kk_load(&kit, load_id).method) ? PHASE_COOL_DOWN : PHASE_UNLOAD);
}
END_TEST

START_TEST(a_stop_found_out_after_the_time_is_not_valid_either)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 12 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	why_says(load_id, "found after 12:00 of 10:00");
}
END_TEST

START_TEST(a_stop_before_the_hold_is_not_valid)
{
	static const enum phase_name before[] = { PHASE_LOADED, PHASE_COME_UP, PHASE_VENT, PHASE_PRESSURISE };
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, before[_i]);
	kk_pass(&kit, 90 * SECOND_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	why_says(load_id, "after 1:30");
	/* Under pressure nothing is opened; without, the jars can come out. */
	ck_assert_int_eq(kk_name(&kit, load_id), before[_i] == PHASE_PRESSURISE ? PHASE_COOL_DOWN : PHASE_UNLOAD);
}
END_TEST

/* Trade notes, section 2: the vent "cannot be skipped, only recorded as not done
 * (process then not valid)"; section 4: "if already at hold, treat as invalid". */
START_TEST(a_vent_cut_short_is_not_valid_even_when_the_hold_runs_in_full)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	int64_t failed;

	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 10 * MINUTE_MS - 1);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_VENT_SHORT, 0));
	failed = kit.clock.now.wall_ms;
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_PRESSURISE);
	kk_to(&kit, load_id, PHASE_COOL_DOWN);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	why_says(load_id, "it vented 9:59 of 10:00");
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, failed);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
}
END_TEST

START_TEST(the_first_failure_counts_when_there_are_two)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	int64_t failed;

	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_VENT_SHORT, 0));
	failed = kit.clock.now.wall_ms;
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, failed);
	why_says(load_id, "it vented 4:00 of 10:00");
}
END_TEST

START_TEST(a_full_vent_cannot_be_called_short_and_others_have_none)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	int64_t steam = kk_start(&kit, STEAM_CANNER, 7);

	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 10 * MINUTE_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_VENT_SHORT, 0));
	kk_to(&kit, steam, PHASE_VENT); /* a watched phase in a steam canner */
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, steam, EXCEPTION_VENT_SHORT, 0));
}
END_TEST

/* --- begun earlier ----------------------------------------------------------------- */

START_TEST(a_hold_said_to_have_begun_earlier_is_unknown)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD); /* the come-up took 25 min */
	kk_pass(&kit, 2 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 5));
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 3 * 60);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
	why_says(load_id, "an estimate, 5 min before the key");
	kk_pass(&kit, 3 * MINUTE_MS - 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	kk_pass(&kit, 1);
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN); /* for good */
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, kit.clock.now.wall_ms);
}
END_TEST

/* The computer went off in the come-up: the hold began before it was up again. */
START_TEST(a_hold_may_have_begun_before_the_computer_was_up)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_COME_UP);
	kk_pass(&kit, 25 * MINUTE_MS);
	test_clock_restart(&kit.clock, MINUTE_MS);
	kk_step(&kit, load_id);
	kk_pass(&kit, 2 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 5));
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 3 * 60);
	kk_reopen(&kit);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 3 * 60);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
}
END_TEST

START_TEST(earlier_reaches_back_to_heat_on_and_no_further)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_pass(&kit, 30 * MINUTE_MS); /* loaded */
	kk_step(&kit, load_id);
	kk_pass(&kit, 7 * MINUTE_MS + 59 * SECOND_MS); /* come-up */
	kk_step(&kit, load_id);
	kk_pass(&kit, MINUTE_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_EARLIER, 8));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_EARLIER, 0));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_EARLIER, -5));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_EARLIER, 2000000000));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 7));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_EARLIER, 1)); /* once */
}
END_TEST

START_TEST(after_a_loss_earlier_reaches_back_to_the_new_come_up_only)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 9 * MINUTE_MS);
	kk_lost(&kit, load_id);
	kk_pass(&kit, 3 * MINUTE_MS);
	kk_step(&kit, load_id);
	kk_pass(&kit, 2 * SECOND_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_EARLIER, 4));
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 3));
}
END_TEST

START_TEST(an_estimate_is_gone_with_the_hold_it_was_about)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 2 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 5));
	kk_lost(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
	ck_assert_str_eq(kk_load(&kit, load_id).verdict_why, "");
	kk_to(&kit, load_id, PHASE_REST); /* a full hold by the key */
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(a_failed_process_is_not_made_unknown)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_VENT_SHORT, 0));
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_EARLIER, 2));
	kk_lost(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
}
END_TEST

/* --- the whole process again --------------------------------------------------------- */

/* Redo window after a process error: 2 h (UNL and one ISU text, the stricter of
 * two published windows). */
START_TEST(a_failed_process_may_be_done_again_within_2_h)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t failed_ms;

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	failed_ms = kk_load(&kit, load_id).process_ended_wall_ms;
	kk_pass(&kit, 2 * HOUR_MS);
	ck_assert(offered(load_id, EXCEPTION_REDO));
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_REDO, 0));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_LOADED);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, failed_ms); /* its 2 h run on */
	ck_assert_str_eq(kk_load(&kit, load_id).verdict_why, "");
	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 600);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->hold_starts, 2);
	kk_to(&kit, load_id, PHASE_REST);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	ck_assert_int_gt(kk_load(&kit, load_id).process_ended_wall_ms, failed_ms);
}
END_TEST

/* However often it is tried, the two hours run from the first failure. */
START_TEST(a_second_failure_does_not_begin_the_2_h_anew)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t failed_ms;

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	failed_ms = kk_load(&kit, load_id).process_ended_wall_ms;
	kk_pass(&kit, HOUR_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_REDO, 0));
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 3 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, failed_ms);
	kk_pass(&kit, HOUR_MS);
	ck_assert(!offered(load_id, EXCEPTION_REDO));
}
END_TEST

/* A wrong weight seen at the unloading, forgotten acid on the shelf: never "valid". */
START_TEST(what_is_found_wrong_later_takes_the_verdict_back)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t ended_ms;

	kk_to(&kit, load_id, PHASE_REST);
	ended_ms = kk_load(&kit, load_id).process_ended_wall_ms;
	ck_assert(offered(load_id, EXCEPTION_WRONG));
	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert(offered(load_id, EXCEPTION_WRONG));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_found_wrong(kit.kitchen, load_id, "", &kit.fault));
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load_id, "acid forgotten", &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_NOT_VALID);
	ck_assert_ptr_nonnull(strstr(kk_load(&kit, load_id).verdict_why, "acid forgotten"));
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, ended_ms);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_SEAL_CHECK);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 7);
	ck_assert(!offered(load_id, EXCEPTION_WRONG));
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_found_wrong(kit.kitchen, load_id, "again", &kit.fault));
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COOLING);
}
END_TEST

START_TEST(a_shelved_load_found_wrong_comes_back_for_its_fates)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	KK_OK(&kit, kitchen_step(kit.kitchen, kk_strip(&kit, load_id)->phase.id, true, &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load_id, "wrong elevation", &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_RACK);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_SEAL_CHECK);
	kk_pass(&kit, MINUTE_MS);
	/* Half a day later only the bin is left. */
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_fate_rest(kit.kitchen, load_id, FATE_FRIDGE, &kit.fault));
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault));
	KK_OK(&kit, kitchen_step(kit.kitchen, kk_strip(&kit, load_id)->phase.id, true, &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
}
END_TEST

START_TEST(after_2_h_it_is_not_offered)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	kk_pass(&kit, 2 * HOUR_MS + 1);
	ck_assert(!offered(load_id, EXCEPTION_REDO));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_REDO, 0));
}
END_TEST

START_TEST(a_right_process_is_not_offered_again)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_UNLOAD);
	ck_assert(!offered(load_id, EXCEPTION_REDO));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_REDO, 0));
}
END_TEST

START_TEST(jars_of_a_failed_process_are_not_left_to_cool_for_12_h)
{
	int64_t load_id = kk_start(&kit, digits[_i], 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	kk_to(&kit, load_id, PHASE_UNLOAD);
	kk_pass(&kit, 2 * MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_SEAL_CHECK);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 7);
	ck_assert(!strip_has_load(kk_canner(&kit, digits[_i])));
}
END_TEST

/* --- broken jars ---------------------------------------------------------------------- */

START_TEST(broken_jars_are_counted_up_to_all_of_them)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 3);

	kk_to(&kit, load_id, PHASE_HOLD);
	for (int broken = 1; broken <= 3; broken++) {
		kk_pass(&kit, 5 * SECOND_MS);
		KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_BROKEN_JAR, 0));
		ck_assert_int_eq(kk_load(&kit, load_id).broken, broken);
	}
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_BROKEN_JAR, 0));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_HOLD); /* the rest stays in */
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
	kk_to(&kit, load_id, PHASE_COOLING);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_BROKEN_JAR, 0));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("verdicts", .begin = begin, .end = end),
	EACH_OF(a_full_unbroken_hold_is_valid_from_heat_off, digits),
	EACH_OF(a_stopped_process_is_not_valid_and_says_why, digits),
	TEST(a_stop_found_out_after_the_time_is_not_valid_either),
	EACH(a_stop_before_the_hold_is_not_valid, 0, 4),
	TEST(a_vent_cut_short_is_not_valid_even_when_the_hold_runs_in_full),
	TEST(the_first_failure_counts_when_there_are_two),
	TEST(a_full_vent_cannot_be_called_short_and_others_have_none),
	TEST(a_hold_said_to_have_begun_earlier_is_unknown),
	TEST(a_hold_may_have_begun_before_the_computer_was_up),
	TEST(earlier_reaches_back_to_heat_on_and_no_further),
	TEST(after_a_loss_earlier_reaches_back_to_the_new_come_up_only),
	TEST(an_estimate_is_gone_with_the_hold_it_was_about),
	TEST(a_failed_process_is_not_made_unknown),
	TEST(a_failed_process_may_be_done_again_within_2_h),
	TEST(after_2_h_it_is_not_offered),
	TEST(a_second_failure_does_not_begin_the_2_h_anew),
	TEST(what_is_found_wrong_later_takes_the_verdict_back),
	TEST(a_shelved_load_found_wrong_comes_back_for_its_fates),
	TEST(a_right_process_is_not_offered_again),
	EACH_OF(jars_of_a_failed_process_are_not_left_to_cool_for_12_h, digits),
	TEST(broken_jars_are_counted_up_to_all_of_them),
};

KK_TESTS("verdicts", listed)
