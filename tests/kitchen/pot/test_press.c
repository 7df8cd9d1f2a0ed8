/* A press that does not count: too soon, a bouncing finger, a board gone stale. */
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static struct kitchen_kit other; /* a second terminal on the same log */

static void begin(void)
{
	kk_begin(&kit);
	kk_second(&kit, &other);
}

static void end(void)
{
	kk_close(&other);
	kk_end(&kit);
}

static void refresh(struct kitchen_kit *one)
{
	KK_OK(one, kitchen_refresh(one->kitchen, false, &one->fault));
}

/* --- one terminal -------------------------------------------------------------- */

START_TEST(a_second_press_within_one_and_a_half_seconds_does_not_count)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t before;

	kk_to(&kit, load_id, PHASE_UNLOAD);
	kk_pass(&kit, 5 * MINUTE_MS);
	kk_undo(&kit, load_id); /* back in the rest, whose time is over */
	kk_step(&kit, load_id);
	before = kk_journal(&kit);
	KK_REFUSED(&kit, FAULT_STALE, kk_try_step(&kit, load_id, true));
	kk_pass(&kit, PRESS_AGAIN_MS - 1);
	KK_REFUSED(&kit, FAULT_STALE, kk_try_step(&kit, load_id, true));
	ck_assert_int_eq(kk_journal(&kit), before);
	kk_pass(&kit, 1);
	KK_OK(&kit, kk_try_step(&kit, load_id, true));
}
END_TEST

START_TEST(a_press_with_the_phase_that_was_is_stale)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	int64_t was;

	kk_to(&kit, load_id, PHASE_VENT);
	was = kk_phase(&kit, load_id);
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, HOUR_MS);
	KK_REFUSED(&kit, FAULT_STALE, kitchen_step(kit.kitchen, was, true, &kit.fault));
	KK_REFUSED(&kit, FAULT_STALE, kitchen_lost(kit.kitchen, was, &kit.fault));
	KK_REFUSED(&kit, FAULT_STALE, kitchen_acknowledge(kit.kitchen, was, &kit.fault));
	KK_REFUSED(&kit, FAULT_STALE,
	           kitchen_exception(kit.kitchen, was, EXCEPTION_STOP, 0, "by hand, watched", &kit.fault));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_HOLD);
}
END_TEST

START_TEST(a_load_that_is_not_there_is_stale)
{
	KK_REFUSED(&kit, FAULT_STALE, kitchen_step(kit.kitchen, 1, true, &kit.fault));
	KK_REFUSED(&kit, FAULT_STALE, kitchen_lost(kit.kitchen, 1, &kit.fault));
	KK_REFUSED(&kit, FAULT_STALE, kitchen_all_sealed(kit.kitchen, 77, SEAL_BY_ALL_THREE, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kk_done(&kit, 77, false));
}
END_TEST

static const struct {
	int digit;
	enum phase_name name;
	int soon_s;
} watched[] = {
	{ BIG_KETTLE, PHASE_COME_UP, 120 },
	{ STEAM_CANNER, PHASE_VENT, 120 },
	{ WEIGHT_CANNER, PHASE_COME_UP, 120 },
	{ WEIGHT_CANNER, PHASE_PRESSURISE, 60 },
	{ DIAL_CANNER, PHASE_PRESSURISE, 60 },
	{ WEIGHT_CANNER, PHASE_COOL_DOWN, 1800 }, /* A539 (rev. 2015), page 1-22: pints about 30 min */
};

START_TEST(a_condition_seen_too_soon_is_asked_about_once)
{
	int64_t load_id = kk_start(&kit, watched[_i].digit, 7);

	kk_to(&kit, load_id, watched[_i].name);
	kk_pass(&kit, watched[_i].soon_s * SECOND_MS - 1);
	KK_REFUSED(&kit, FAULT_CONFIRM, kk_try_step(&kit, load_id, false));
	ck_assert_int_eq(kk_name(&kit, load_id), watched[_i].name);
	KK_OK(&kit, kk_try_step(&kit, load_id, true));
	ck_assert_int_ne(kk_name(&kit, load_id), watched[_i].name);
}
END_TEST

/* On a small ring 7 quarts cannot boil within minutes, whatever is pressed: a heat balance
 * at 1,500 W from the 140 F of raw pack (A539, Guide 1) needs over a quarter of an hour. */
START_TEST(water_that_cannot_boil_yet_is_asked_about_and_stays_on_record)
{
	struct load_order order = kk_order(&kit, LOW_KETTLE, 7);
	int64_t load_id;

	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "canner 2 boiling_water \"Low kettle\" quart=7 watts=1500",
	                               kk_station(&kit, LOW_KETTLE), &kit.fault));
	ck_assert(text_copy(order.food, sizeof(order.food), "peaches") &&
	          text_copy(order.pack, sizeof(order.pack), "raw") && text_copy(order.jar, sizeof(order.jar), "quart"));
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	kk_to(&kit, load_id, PHASE_COME_UP);
	kk_pass(&kit, 15 * MINUTE_MS);
	KK_REFUSED(&kit, FAULT_CONFIRM, kk_try_step(&kit, load_id, false));
	KK_OK(&kit, kk_try_step(&kit, load_id, true));
	ck_assert_ptr_nonnull(strstr(kk_said(&kit), "asked and confirmed: after 15:00, sooner than "));
	ck_assert_ptr_nonnull(kk_warned(&kit, "hold-early", load_id));
	kk_lost(&kit, load_id); /* the water is hot now */
	kk_pass(&kit, 3 * MINUTE_MS);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
}
END_TEST

START_TEST(a_condition_seen_in_good_time_is_not_asked_about)
{
	int64_t load_id = kk_start(&kit, watched[_i].digit, 7);

	kk_to(&kit, load_id, watched[_i].name);
	kk_pass(&kit, watched[_i].soon_s * SECOND_MS);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
}
END_TEST

START_TEST(an_asked_press_leaves_no_trace)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t before;

	kk_to(&kit, load_id, PHASE_COME_UP);
	before = kk_journal(&kit);
	kk_pass(&kit, MINUTE_MS);
	KK_REFUSED(&kit, FAULT_CONFIRM, kk_try_step(&kit, load_id, false));
	ck_assert_int_eq(kk_journal(&kit), before);
}
END_TEST

/* --- two terminals -------------------------------------------------------------- */

START_TEST(a_refresh_shows_what_the_other_terminal_did)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	refresh(&other);
	ck_assert_int_eq(kk_name(&other, load_id), PHASE_LOADED);
	kk_pass(&kit, MINUTE_MS);
	kk_step(&other, load_id);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_LOADED);
	refresh(&kit);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COME_UP);
}
END_TEST

START_TEST(the_slower_of_two_presses_does_nothing)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t seen = kk_phase(&kit, load_id);

	refresh(&other);
	kk_pass(&kit, 30 * MINUTE_MS);
	KK_OK(&kit, kitchen_step(kit.kitchen, seen, true, &kit.fault));
	KK_REFUSED(&other, FAULT_STALE, kitchen_step(other.kitchen, seen, true, &other.fault));
	ck_assert_int_eq(kk_name(&other, load_id), PHASE_COME_UP); /* and the board is fresh */
	KK_REFUSED(&other, FAULT_STALE, kitchen_step(other.kitchen, seen, true, &other.fault));
}
END_TEST

START_TEST(an_estimate_of_one_terminal_is_not_lost_to_a_step_of_the_other)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t hold;

	kk_to(&kit, load_id, PHASE_HOLD);
	hold = kk_phase(&kit, load_id);
	refresh(&other);
	kk_pass(&kit, 7 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 3));
	KK_REFUSED(&other, FAULT_STALE, kitchen_step(other.kitchen, hold, true, &other.fault));
	KK_OK(&other, kitchen_step(other.kitchen, hold, true, &other.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_UNKNOWN);
}
END_TEST

START_TEST(a_broken_jar_of_one_terminal_is_not_forgotten_by_the_other)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t seen = kk_phase(&kit, load_id);

	refresh(&other);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_BROKEN_JAR, 0));
	KK_REFUSED(&other, FAULT_STALE, kitchen_step(other.kitchen, seen, true, &other.fault));
	KK_OK(&other, kitchen_step(other.kitchen, seen, true, &other.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).broken, 1);
}
END_TEST

START_TEST(two_terminals_never_fill_one_canner)
{
	struct load_order order = kk_order(&other, BIG_KETTLE, 7);
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t second = 0;

	KK_REFUSED(&other, FAULT_STALE, kitchen_start_load(other.kitchen, &order, &second, &other.fault));
	KK_REFUSED(&other, FAULT_STALE, kitchen_start_load(other.kitchen, &order, &second, &other.fault));
	ck_assert_int_eq(strip_load(kk_canner(&other, BIG_KETTLE))->row.id, load_id);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 7);
}
END_TEST

START_TEST(two_terminals_never_take_the_same_lids)
{
	struct log_lid_box box = { .id = BOX_A, .label = "Box A", .lids = 10 };
	struct load_order order = kk_order(&other, LOW_KETTLE, 7);
	int64_t second = 0;

	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
	refresh(&other);
	(void)kk_start(&kit, BIG_KETTLE, 7);
	KK_REFUSED(&other, FAULT_STALE, kitchen_start_load(other.kitchen, &order, &second, &other.fault));
	KK_REFUSED(&other, FAULT_REFUSED, kitchen_start_load(other.kitchen, &order, &second, &other.fault));
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 7);
}
END_TEST

START_TEST(undo_does_not_take_back_what_the_person_has_not_seen)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	refresh(&other);
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	KK_REFUSED(&other, FAULT_STALE, kk_undo(&other, load_id));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COME_UP);
	KK_OK(&other, kk_undo(&other, load_id)); /* seen now */
	refresh(&kit);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_LOADED);
}
END_TEST

START_TEST(a_change_to_the_house_is_not_lost_to_the_other_terminal)
{
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "5000 ft", &kit.fault));
	KK_REFUSED(&other, FAULT_STALE, kitchen_set_name(other.kitchen, "Upper Hollow", &other.fault));
	KK_OK(&other, kitchen_set_name(other.kitchen, "Upper Hollow", &other.fault));
	refresh(&kit);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->house.elevation.um, 5000 * FOOT_UM);
	ck_assert_str_eq(kitchen_board(kit.kitchen)->house.name, "Upper Hollow");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("one terminal", .begin = begin, .end = end),
	TEST(a_second_press_within_one_and_a_half_seconds_does_not_count),
	TEST(a_press_with_the_phase_that_was_is_stale),
	TEST(a_load_that_is_not_there_is_stale),
	EACH_OF(a_condition_seen_too_soon_is_asked_about_once, watched),
	TEST(water_that_cannot_boil_yet_is_asked_about_and_stays_on_record),
	EACH_OF(a_condition_seen_in_good_time_is_not_asked_about, watched),
	TEST(an_asked_press_leaves_no_trace),
	GROUP("two terminals", .begin = begin, .end = end),
	TEST(a_refresh_shows_what_the_other_terminal_did),
	TEST(the_slower_of_two_presses_does_nothing),
	TEST(an_estimate_of_one_terminal_is_not_lost_to_a_step_of_the_other),
	TEST(a_broken_jar_of_one_terminal_is_not_forgotten_by_the_other),
	TEST(two_terminals_never_fill_one_canner),
	TEST(two_terminals_never_take_the_same_lids),
	TEST(undo_does_not_take_back_what_the_person_has_not_seen),
	TEST(a_change_to_the_house_is_not_lost_to_the_other_terminal),
};

KK_TESTS("press", listed)
