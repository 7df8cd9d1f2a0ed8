/* A lost boil, lost steam, a dropped pressure: the full time again, nothing hidden. */
#include <stdlib.h>
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/step/step.h"
#include "log/tables/canner.h"
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

/* Where the condition is reached again.  Trade notes, section 2: boiling water
 * "bring back to a vigorous boil and restart the full hold" (NCHFP BW, read in
 * part; NCSU FAQ 242); steam: restart when steam was lost (from memory); pressure
 * "bring back to pressure, restart the full hold from zero" (NCHFP PC, read in
 * part; NCSU FAQ 242). */
static const struct {
	int digit;
	enum phase_name back_to;
	int hold_minutes;
} methods[] = {
	{ BIG_KETTLE, PHASE_COME_UP, 10 },
	{ STEAM_CANNER, PHASE_VENT, 10 },
	{ WEIGHT_CANNER, PHASE_PRESSURISE, 20 },
	{ DIAL_CANNER, PHASE_PRESSURISE, 20 },
};
#define METHODS (int)(sizeof(methods) / sizeof(methods[0]))

static int count_holds(int64_t load_id, enum phase_end why)
{
	struct log_phase *rows;
	size_t count;
	int holds = 0;

	KK_OK(&kit, log_phases(kit.log, kk_about(load_id), &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		holds += strcmp(rows[i].name, "hold") == 0 && rows[i].ended_why == why;
	free(rows);
	return holds;
}

START_TEST(a_lost_hold_goes_back_to_where_the_condition_is_reached_again)
{
	int64_t load_id = kk_start(&kit, methods[_i].digit, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	kk_lost(&kit, load_id);
	ck_assert_int_eq(kk_name(&kit, load_id), methods[_i].back_to);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_STATION);
}
END_TEST

START_TEST(the_new_hold_has_its_full_length)
{
	int64_t load_id = kk_start(&kit, methods[_i].digit, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, methods[_i].hold_minutes * MINUTE_MS - 1);
	kk_lost(&kit, load_id);
	kk_pass(&kit, 2 * MINUTE_MS);
	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, methods[_i].hold_minutes * 60);
	kk_pass(&kit, methods[_i].hold_minutes * MINUTE_MS - 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	kk_pass(&kit, 1);
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(both_starts_stay_in_the_log_and_are_counted)
{
	int64_t load_id = kk_start(&kit, methods[_i].digit, 7);

	for (int starts = 1; starts <= 3; starts++) {
		kk_to(&kit, load_id, PHASE_HOLD);
		ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->hold_starts, starts);
		ck_assert_int_eq(count_holds(load_id, PHASE_LOST), starts - 1);
		ck_assert_int_eq(count_holds(load_id, PHASE_RUNNING), 1);
		kk_pass(&kit, 3 * MINUTE_MS);
		kk_lost(&kit, load_id);
	}
	kk_reopen(&kit);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->hold_starts, 3);
	ck_assert_int_eq(count_holds(load_id, PHASE_LOST), 3);
}
END_TEST

/* Venting "if the plume falters, restart the 10 min": common practice, no source. */
START_TEST(a_vent_whose_steam_falters_begins_again_in_full)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 9 * MINUTE_MS);
	kk_lost(&kit, load_id);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COME_UP);
	kk_pass(&kit, 3 * MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 600);
	kk_to(&kit, load_id, PHASE_COOL_DOWN);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
}
END_TEST

START_TEST(what_is_found_out_after_the_time_can_still_be_said)
{
	int64_t load_id = kk_start(&kit, methods[_i].digit, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 40 * MINUTE_MS); /* nobody came; the boil is gone */
	ck_assert_ptr_nonnull(exception_words(kk_strip(&kit, load_id), EXCEPTION_LOST, &kit.clock.now));
	ck_assert_ptr_nonnull(exception_words(kk_strip(&kit, load_id), EXCEPTION_STOP, &kit.clock.now));
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_LOST, 0));
	ck_assert_int_eq(kk_name(&kit, load_id), methods[_i].back_to);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_OPEN);
}
END_TEST

START_TEST(nothing_can_be_lost_where_nothing_is_held)
{
	static const enum phase_name no_loss[] = { PHASE_LOADED, PHASE_COME_UP, PHASE_REST,
		                                   PHASE_UNLOAD, PHASE_COOLING, PHASE_SEAL_CHECK };
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	for (size_t i = 0; i < sizeof(no_loss) / sizeof(no_loss[0]); i++) {
		kk_to(&kit, load_id, no_loss[i]);
		KK_REFUSED(&kit, FAULT_REFUSED, kitchen_lost(kit.kitchen, kk_phase(&kit, load_id), &kit.fault));
		KK_REFUSED(&kit, FAULT_REFUSED, kk_try(&kit, load_id, EXCEPTION_LOST, 0));
	}
}
END_TEST

START_TEST(a_loss_taken_back_within_2_min_joins_the_hold_again)
{
	int64_t load_id = kk_start(&kit, methods[_i].digit, 7);
	int64_t began;

	kk_to(&kit, load_id, PHASE_HOLD);
	began = kk_strip(&kit, load_id)->phase.began.awake_ms;
	kk_pass(&kit, 4 * MINUTE_MS);
	kk_lost(&kit, load_id);
	kk_pass(&kit, BREAK_UNDO_MS);
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_HOLD);
	ck_assert_int_eq(kk_strip(&kit, load_id)->phase.began.awake_ms, began);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->hold_starts, 1);
	ck_assert_int_eq(count_holds(load_id, PHASE_LOST), 0);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, (methods[_i].hold_minutes - 6) * 60);
}
END_TEST

START_TEST(after_2_min_a_broken_hold_is_not_joined)
{
	int64_t load_id = kk_start(&kit, methods[_i].digit, 7);
	int64_t before;

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	kk_lost(&kit, load_id);
	before = kk_journal(&kit);
	kk_pass(&kit, BREAK_UNDO_MS + 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_journal(&kit), before);
	ck_assert_int_eq(kk_name(&kit, load_id), methods[_i].back_to);
}
END_TEST

START_TEST(steps_made_since_do_not_open_the_way_back_to_a_broken_hold)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	kk_lost(&kit, load_id);
	kk_pass(&kit, 3 * MINUTE_MS);
	kk_step(&kit, load_id); /* boiling again */
	kk_pass(&kit, 5 * SECOND_MS);
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COME_UP);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_undo(&kit, load_id));
}
END_TEST

START_TEST(a_hold_ended_long_ago_is_not_opened_again)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t ended;

	kk_to(&kit, load_id, PHASE_REST);
	ended = kk_load(&kit, load_id).process_ended_wall_ms;
	kk_pass(&kit, BREAK_UNDO_MS);
	KK_OK(&kit, kk_undo(&kit, load_id)); /* the wrong canner, noticed at once */
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_HOLD);
	KK_OK(&kit, kk_redo(&kit, load_id));
	kk_pass(&kit, BREAK_UNDO_MS + 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_load(&kit, load_id).process_ended_wall_ms, ended);
}
END_TEST

/* Lost, undone, done again, undone: the two minutes are those of the loss, not of
 * the last key, or the hold could be joined over any gap. */
START_TEST(keys_in_turn_do_not_stretch_the_2_min)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 3 * MINUTE_MS);
	KK_OK(&kit, kitchen_lost(kit.kitchen, kk_strip(&kit, load_id)->phase.id, &kit.fault));
	kk_pass(&kit, 50 * SECOND_MS);
	KK_OK(&kit, kk_undo(&kit, load_id));
	kk_pass(&kit, 50 * SECOND_MS);
	KK_OK(&kit, kk_redo(&kit, load_id));
	kk_pass(&kit, 20 * SECOND_MS); /* exactly 2 min after the loss */
	KK_OK(&kit, kk_undo(&kit, load_id));
	kk_pass(&kit, SECOND_MS);
	KK_OK(&kit, kk_redo(&kit, load_id));
	kk_pass(&kit, SECOND_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COME_UP);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("lost", .begin = begin, .end = end),
	EACH(a_lost_hold_goes_back_to_where_the_condition_is_reached_again, 0, METHODS),
	EACH(the_new_hold_has_its_full_length, 0, METHODS),
	EACH(both_starts_stay_in_the_log_and_are_counted, 0, METHODS),
	TEST(a_vent_whose_steam_falters_begins_again_in_full),
	EACH(what_is_found_out_after_the_time_can_still_be_said, 0, METHODS),
	TEST(nothing_can_be_lost_where_nothing_is_held),
	EACH(a_loss_taken_back_within_2_min_joins_the_hold_again, 0, METHODS),
	EACH(after_2_min_a_broken_hold_is_not_joined, 0, METHODS),
	TEST(steps_made_since_do_not_open_the_way_back_to_a_broken_hold),
	TEST(a_hold_ended_long_ago_is_not_opened_again),
	TEST(keys_in_turn_do_not_stretch_the_2_min),
};

KK_TESTS("lost", listed)
