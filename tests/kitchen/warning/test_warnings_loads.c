/* Warnings about a load: its holds, its vent, its jars, and the windows of their fates. */
#include <stdio.h>
#include <string.h>

#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "support/kitchen_kit.h"
#include "support/log_kit.h"
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

static bool fires(const char *id)
{
	return kk_fires(&kit, id);
}

static void stops(const char *id, int64_t load_id, const char *words)
{
	kk_warns(&kit, id, load_id, SEVERITY_STOP, words);
}

static void cautions(const char *id, int64_t load_id, const char *words)
{
	kk_warns(&kit, id, load_id, SEVERITY_CAUTION, words);
}

static void notes(const char *id, int64_t load_id, const char *words)
{
	kk_warns(&kit, id, load_id, SEVERITY_NOTE, words);
}

static int64_t start(int digit, const char *food, const char *pack, const char *jar)
{
	struct load_order order = kk_order(&kit, digit, 7);
	int64_t load_id = 0;

	(void)snprintf(order.food, sizeof(order.food), "%s", food);
	(void)snprintf(order.product, sizeof(order.product), "%s", food);
	(void)snprintf(order.pack, sizeof(order.pack), "%s", pack);
	(void)snprintf(order.jar, sizeof(order.jar), "%s", jar);
	if (strcmp(food, "tomatoes crushed") == 0)
		order.acid = ACID_LEMON_JUICE;
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	return load_id;
}

/* --- elevation ------------------------------------------------------------------------ */

/* A539 Guide 7: 10 min to 6,000 ft, 15 above. */
START_TEST(a_load_that_got_less_than_the_elevation_set_now_asks)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert(!fires("elevation-other"));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "6000 ft", &kit.fault));
	ck_assert(!fires("elevation-other"));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "500 ft", &kit.fault)); /* asks less */
	ck_assert(!fires("elevation-other"));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "6001 ft", &kit.fault));
	cautions("elevation-other", load_id, "got 10 min; at the elevation set now it is 15 min");
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load_id, "elevation", &kit.fault));
	ck_assert(!fires("elevation-other")); /* said by process-not-valid now */
}
END_TEST

/* A539 Guide 4: a dial gauge at 13 psi to 6,000 ft, at 14 psi above. */
START_TEST(a_pressure_that_is_no_longer_published_is_no_process)
{
	int64_t load_id = kk_start(&kit, DIAL_CANNER, 7);

	kk_to(&kit, load_id, PHASE_COOLING);
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "6001 ft", &kit.fault));
	cautions("elevation-other", load_id, "there is no such process");
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	ck_assert(!fires("elevation-other")); /* elevation-unset says it */
}
END_TEST

/* --- the process ---------------------------------------------------------------------- */

/* A boil is hardly there within 2 min of heat on (planning times: A539 Guide 1). */
START_TEST(a_hold_confirmed_too_soon_is_doubted_until_it_is_begun_again)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_pass(&kit, 2 * MINUTE_MS);
	kk_step(&kit, load_id);
	kk_pass(&kit, 2 * MINUTE_MS - 1);
	kk_step(&kit, load_id);
	cautions("hold-early", load_id, "confirmed after only 1:59");
	kk_pass(&kit, MINUTE_MS);
	kk_lost(&kit, load_id);
	ck_assert(!fires("hold-early")); /* that was the answer */
	kk_pass(&kit, 2 * SECOND_MS);
	kk_step(&kit, load_id); /* the water is hot now */
	ck_assert(!fires("hold-early"));
	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert(!fires("hold-early"));
}
END_TEST

START_TEST(a_hold_confirmed_in_exactly_the_shortest_time_is_not_doubted)
{
	static const struct {
		int digit;
		int64_t soon_ms;
	} canners[] = {
		{ BIG_KETTLE, 2 * MINUTE_MS },
		{ STEAM_CANNER, 2 * MINUTE_MS },
		{ WEIGHT_CANNER, MINUTE_MS },
		{ DIAL_CANNER, MINUTE_MS },
	};
	int64_t load_id = kk_start(&kit, canners[_i].digit, 7);
	enum phase_name before = _i == 0 ? PHASE_COME_UP : _i == 1 ? PHASE_VENT : PHASE_PRESSURISE;

	kk_to(&kit, load_id, before);
	kk_pass(&kit, canners[_i].soon_ms);
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_HOLD);
	ck_assert(!fires("hold-early"));
	KK_OK(&kit, kk_undo(&kit, load_id));
	/* An undone start is no start; one too soon in its place is. */
	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert(!fires("hold-early"));
}
END_TEST

START_TEST(a_second_hold_is_noted_while_the_load_is_in_the_canner)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert(!fires("hold-again"));
	kk_lost(&kit, load_id);
	ck_assert(!fires("hold-again")); /* not begun again yet */
	kk_to(&kit, load_id, PHASE_HOLD);
	notes("hold-again", load_id, "hold number 2");
	kk_to(&kit, load_id, PHASE_UNLOAD);
	ck_assert(fires("hold-again"));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert(!fires("hold-again"));
}
END_TEST

/* A539, PNW421, KSU: 10 full minutes. */
START_TEST(a_vent_cut_short_stops_until_the_process_is_done_again)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 10 * MINUTE_MS - 1);
	ck_assert(!fires("vent-short")); /* it runs */
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_VENT_SHORT, 0));
	stops("vent-short", load_id, "it vented 9:59 of 10:00");
	ck_assert(!fires("process-not-valid") && !fires("hold-short"));
	kk_to(&kit, load_id, PHASE_UNLOAD);
	ck_assert(fires("vent-short")); /* a full hold does not mend it */
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_REDO, 0));
	ck_assert(!fires("vent-short"));
	kk_to(&kit, load_id, PHASE_PRESSURISE); /* exactly 10 min */
	ck_assert(!fires("vent-short"));
	kk_to(&kit, load_id, PHASE_UNLOAD);
	ck_assert(!fires("vent-short") && !fires("process-not-valid"));
}
END_TEST

START_TEST(a_process_found_wrong_stops_until_the_load_is_shelved)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t other = kk_start(&kit, LOW_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert(!fires("process-not-valid"));
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load_id, "wrong weight", &kit.fault));
	stops("process-not-valid", load_id, "NOT VALID (found after the process: wrong weight)");
	ck_assert_ptr_null(kk_warned(&kit, "process-not-valid", other));
	ck_assert(!fires("hold-short")); /* the hold was in full */
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_FREEZER, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert(!fires("process-not-valid"));
}
END_TEST

/* NCHFP newsflash on steam canners; MU: the pan holds water for 45 min. */
START_TEST(a_steam_canner_that_has_held_over_45_min_in_all)
{
	int64_t load_id = kk_start(&kit, STEAM_CANNER, 7);

	for (int lost = 0; lost < 4; lost++) {
		kk_to(&kit, load_id, PHASE_HOLD);
		kk_pass(&kit, 9 * MINUTE_MS);
		ck_assert(!fires("steam-too-long"));
		kk_lost(&kit, load_id);
	}
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 9 * MINUTE_MS); /* 45 min */
	ck_assert(!fires("steam-too-long"));
	kk_pass(&kit, 1);
	stops("steam-too-long", load_id, "has steamed 45 min");
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	stops("steam-too-long", load_id, "has steamed 46 min");
	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert(!fires("steam-too-long")); /* out of it */
}
END_TEST

START_TEST(only_a_steam_canner_runs_out_of_water)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	for (int lost = 0; lost < 6; lost++) {
		kk_to(&kit, load_id, PHASE_HOLD);
		kk_pass(&kit, 9 * MINUTE_MS);
		kk_lost(&kit, load_id);
	}
	ck_assert(!fires("steam-too-long"));
}
END_TEST

/* A539 at 4,650 ft: peaches 30 min (Guide 2), crushed tomatoes 45 (Guide 3). */
START_TEST(over_30_min_in_boiling_water_wants_deep_water)
{
	int64_t load_id = start(BIG_KETTLE, "peaches", "hot", "pint");

	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 30);
	ck_assert(!fires("deep-water"));
	load_id = start(LOW_KETTLE, "tomatoes crushed", "hot", "pint");
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 45);
	notes("deep-water", load_id, "over 30 min");
	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert(fires("deep-water"));
	kk_to(&kit, load_id, PHASE_REST);
	ck_assert(!fires("deep-water"));
}
END_TEST

/* No key leads there; a log that was mended by hand, or an older one, may hold it. */
START_TEST(what_should_never_be_in_a_canner_stops)
{
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	int64_t large = kk_start(&kit, BIG_KETTLE, 7);
	char sql[120];

	ck_assert(!fires("low-acid-no-pressure") && !fires("jar-too-large"));
	(void)snprintf(sql, sizeof(sql), "UPDATE load SET method = 'boiling_water' WHERE id = %lld",
	               (long long)load_id);
	kit_sql(kit.path, sql);
	(void)snprintf(sql, sizeof(sql), "UPDATE jar SET size = 'quart' WHERE load_id = %lld AND place_in_load = 7",
	               (long long)large);
	kit_sql(kit.path, sql);
	KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
	stops("low-acid-no-pressure", load_id, "without pressure");
	stops("jar-too-large", large, "larger than any tested");
	ck_assert_ptr_null(kk_warned(&kit, "jar-too-large", load_id));
}
END_TEST

/* --- the jars -------------------------------------------------------------------------- */

static int64_t to_check(int jars)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, jars);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	return load_id;
}

static void mark(int64_t load_id, int place, enum jar_state state)
{
	KK_OK(&kit, kk_mark(&kit, kk_jar(&kit, load_id, place), state));
}

static void lose(int64_t load_id, int place, enum siphoning siphoning)
{
	KK_OK(&kit, kitchen_jar_siphoning(kit.kitchen, kk_jar(&kit, load_id, place), siphoning, &kit.fault));
}

static void decide(int64_t load_id, int place, enum jar_fate fate)
{
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, place), fate, &kit.fault));
}

/* NCHFP answer on liquid loss. */
START_TEST(over_half_the_liquid_gone_goes_to_the_fridge)
{
	int64_t load_id = to_check(7);

	mark(load_id, 2, JAR_SEALED);
	lose(load_id, 2, SIPHON_UNDER_HALF);
	ck_assert(!fires("liquid-over-half"));
	lose(load_id, 2, SIPHON_OVER_HALF);
	stops("liquid-over-half", load_id, "Unseal and refrigerate 1 jar of");
	ck_assert(!fires("jars-without-fate")); /* not said twice */
	decide(load_id, 2, FATE_FRIDGE);
	ck_assert(!fires("liquid-over-half"));
}
END_TEST

/* There is no window on a seal that holds after a right process: what was seen late
 * still goes to the fridge, and is not called past saving. */
START_TEST(over_half_gone_from_a_sealed_jar_has_no_window)
{
	int64_t load_id = to_check(7);

	mark(load_id, 2, JAR_SEALED);
	lose(load_id, 2, SIPHON_OVER_HALF);
	kk_pass_until(&kit, kk_load(&kit, load_id).process_ended_wall_ms + 24 * HOUR_MS - MINUTE_MS);
	ck_assert(!fires("window-closing"));
	kk_pass(&kit, HOUR_MS);
	ck_assert(!fires("window-closed"));
	stops("liquid-over-half", load_id, "Unseal and refrigerate 1 jar of");
	decide(load_id, 2, FATE_FRIDGE);
	mark(load_id, 3, JAR_UNSEALED); /* this one has */
	stops("window-closed", load_id, "Discard 1 jar of");
	lose(load_id, 3, SIPHON_OVER_HALF);
	stops("window-closed", load_id, "Discard 1 jar of");
}
END_TEST

START_TEST(jars_that_need_a_fate_stop_until_they_have_one)
{
	int64_t load_id = to_check(7);

	ck_assert(!fires("jars-without-fate"));
	mark(load_id, 1, JAR_UNSEALED);
	mark(load_id, 4, JAR_DOUBTFUL);
	mark(load_id, 5, JAR_BROKEN); /* thrown out with the glass */
	stops("jars-without-fate", load_id, "what happens to 2 jars of");
	decide(load_id, 1, FATE_FREEZER);
	stops("jars-without-fate", load_id, "what happens to 1 jar of");
	mark(load_id, 4, JAR_SEALED);
	ck_assert(!fires("jars-without-fate"));
}
END_TEST

/* 24 h: A539, UNL. */
START_TEST(the_window_of_an_unsealed_jar_closes_24_h_after_the_process)
{
	int64_t load_id = to_check(7);
	int64_t closes = kk_load(&kit, load_id).process_ended_wall_ms + 24 * HOUR_MS;

	mark(load_id, 1, JAR_UNSEALED);
	kk_pass_until(&kit, closes - HOUR_MS - 1);
	ck_assert(!fires("window-closing"));
	kk_pass(&kit, 1);
	cautions("window-closing", load_id, "Decide on 1 jar of");
	cautions("window-closing", load_id, "60 min left");
	kk_pass_until(&kit, closes - 1);
	cautions("window-closing", load_id, "1 min left");
	ck_assert(!fires("window-closed"));
	kk_pass(&kit, 1);
	ck_assert(!fires("window-closing"));
	stops("window-closed", load_id, "the 24 h for anything else are over");
	kk_pass(&kit, 1);
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 1), FATE_FRIDGE, &kit.fault));
	decide(load_id, 1, FATE_DISCARD);
	ck_assert(!fires("window-closed"));
}
END_TEST

/* 2 h after a process error: UNL and one ISU text. */
START_TEST(the_window_of_a_failed_process_closes_after_2_h)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t closes;

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	closes = kit.clock.now.wall_ms + 2 * HOUR_MS;
	ck_assert(!fires("jars-without-fate")); /* still in the canner, to be done again */
	kk_pass(&kit, 2 * MINUTE_MS);
	kk_step(&kit, load_id);
	stops("hold-short", load_id, "within 2 h, or fridge, freezer, discard");
	ck_assert(!fires("jars-without-fate")); /* the same, once more */
	kk_pass_until(&kit, closes - HOUR_MS - 1);
	ck_assert(!fires("window-closing"));
	kk_pass(&kit, 1);
	cautions("window-closing", load_id, "Decide on 7 jars of");
	kk_pass_until(&kit, closes - 1);
	ck_assert(!fires("window-closed"));
	kk_pass(&kit, 1);
	stops("window-closed", load_id, "the 2 h for anything else are over");
	ck_assert(!fires("hold-short") && !fires("jars-without-fate")); /* nobody redoes it now */
	ck_assert(!fires("seals-overdue"));
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault));
	ck_assert(!fires("hold-short") && !fires("window-closed")); /* nothing is left to say */
}
END_TEST

/* Nobody came for the jars: the 2 h are over in the canner as well. */
START_TEST(a_failed_process_left_in_its_canner_is_not_redone_after_2_h)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 4 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	kk_pass(&kit, 2 * HOUR_MS - 1);
	ck_assert(fires("hold-short") && !fires("window-closed"));
	kk_pass(&kit, 1);
	stops("window-closed", load_id, "Discard 7 jars of");
	ck_assert(!fires("hold-short") && !fires("process-not-valid") && !fires("jars-without-fate"));
}
END_TEST

START_TEST(more_than_half_of_the_jars_that_lost_liquid_are_noted)
{
	int64_t load_id = to_check(8);

	for (int place = 1; place <= 4; place++)
		lose(load_id, place, SIPHON_SLIGHT);
	ck_assert(!fires("liquid-lost")); /* exactly half */
	lose(load_id, 8, SIPHON_UNDER_HALF);
	notes("liquid-lost", load_id, "5 jars of");
	lose(load_id, 1, SIPHON_NONE);
	ck_assert(!fires("liquid-lost"));
}
END_TEST

START_TEST(a_jar_that_broke_in_the_canner_is_noted)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert(!fires("jar-broke"));
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_BROKEN_JAR, 0));
	notes("jar-broke", load_id, "1 jar of");
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert(!fires("jar-broke"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("process", .begin = begin, .end = end, .seconds = 30),
	TEST(a_load_that_got_less_than_the_elevation_set_now_asks),
	TEST(a_pressure_that_is_no_longer_published_is_no_process),
	TEST(a_hold_confirmed_too_soon_is_doubted_until_it_is_begun_again),
	EACH(a_hold_confirmed_in_exactly_the_shortest_time_is_not_doubted, 0, 4),
	TEST(a_second_hold_is_noted_while_the_load_is_in_the_canner),
	TEST(a_vent_cut_short_stops_until_the_process_is_done_again),
	TEST(a_process_found_wrong_stops_until_the_load_is_shelved),
	TEST(a_steam_canner_that_has_held_over_45_min_in_all),
	TEST(only_a_steam_canner_runs_out_of_water),
	TEST(over_30_min_in_boiling_water_wants_deep_water),
	TEST(what_should_never_be_in_a_canner_stops),
	GROUP("jars", .begin = begin, .end = end, .seconds = 30),
	TEST(over_half_the_liquid_gone_goes_to_the_fridge),
	TEST(over_half_gone_from_a_sealed_jar_has_no_window),
	TEST(jars_that_need_a_fate_stop_until_they_have_one),
	TEST(the_window_of_an_unsealed_jar_closes_24_h_after_the_process),
	TEST(the_window_of_a_failed_process_closes_after_2_h),
	TEST(a_failed_process_left_in_its_canner_is_not_redone_after_2_h),
	TEST(more_than_half_of_the_jars_that_lost_liquid_are_noted),
	TEST(a_jar_that_broke_in_the_canner_is_noted),
};

KK_TESTS("warnings of loads", listed)
