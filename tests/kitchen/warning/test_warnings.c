/* Each warning: when it fires, when it does not, and at its very edge.  More of
 * loads: test_warnings_loads.c; of pots, lids and supplies: test_warnings_pots.c. */
#include <stdio.h>
#include <string.h>

#include "kitchen/board/clock.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
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

static bool fires(const char *id, int64_t load_id)
{
	return kk_warned(&kit, id, load_id) != NULL;
}

static void says(const char *id, int64_t load_id, enum severity severity, const char *words)
{
	kk_warns(&kit, id, load_id, severity, words);
}

static void pass_until(int64_t wall_ms)
{
	kk_pass_until(&kit, wall_ms);
}

/* --- about the house ------------------------------------------------------------------ */

START_TEST(a_quiet_kitchen_has_nothing_to_warn_of)
{
	struct warning warnings[WARNINGS_MAX];

	ck_assert_uint_eq(kitchen_warnings(kit.kitchen, &kit.clock.now, warnings, NULL), 0);
	(void)kk_start(&kit, BIG_KETTLE, 9);
	ck_assert_uint_eq(kitchen_warnings(kit.kitchen, &kit.clock.now, warnings, NULL), 0);
}
END_TEST

START_TEST(an_elevation_not_set_stops)
{
	ck_assert(!fires("elevation-unset", 0));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	says("elevation-unset", 0, SEVERITY_STOP, "no process");
}
END_TEST

/* Weather moves it 1 to 2 F: more than 2.5 F away (common practice, no source). */
START_TEST(boiling_water_that_does_not_fit_the_elevation)
{
	double boils_f = kitchen_board(kit.kitchen)->boil.boiling_point_f;
	char words[40];

	for (int tenths = -30; tenths <= 30; tenths++) {
		double off = tenths / 10.0 + (tenths > 0 ? 0.002 : tenths < 0 ? -0.002 : 0); /* past millidegrees */

		(void)snprintf(words, sizeof(words), "%.4fF", boils_f + off);
		KK_OK(&kit, kitchen_set_measured_boil(kit.kitchen, words, &kit.fault));
		ck_assert_msg(fires("boil-disagrees", 0) == (tenths <= -25 || tenths >= 25), "off by %d tenths",
		              tenths);
	}
	says("boil-disagrees", 0, SEVERITY_CAUTION, "3.0 F hotter");
	KK_OK(&kit, kitchen_set_measured_boil(kit.kitchen, "", &kit.fault));
	ck_assert(!fires("boil-disagrees", 0));
}
END_TEST

START_TEST(above_8000_ft_the_tables_differ)
{
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "8000 ft", &kit.fault));
	ck_assert(!fires("above-tables", 0));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "8001 ft", &kit.fault));
	says("above-tables", 0, SEVERITY_CAUTION, "8,000 ft");
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "7990ft+-20", &kit.fault)); /* may be above */
	ck_assert(fires("above-tables", 0));
}
END_TEST

/* PNW421: dial gauges are checked every year. */
START_TEST(a_dial_gauge_a_year_after_its_check)
{
	struct log_station station = kk_canner(&kit, DIAL_CANNER)->station;

	ck_assert(!fires("gauge-unchecked", 0));
	pass_until(station.gauge_checked_wall_ms + 365 * DAY_MS);
	ck_assert(!fires("gauge-unchecked", 0));
	kk_pass(&kit, 1);
	says("gauge-unchecked", 0, SEVERITY_CAUTION, "over a year old");
	ck_assert_int_eq(kk_warned(&kit, "gauge-unchecked", 0)->station_id, station.id);
	station.gauge_checked_wall_ms = 0;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
	says("gauge-unchecked", 0, SEVERITY_CAUTION, "no check is on record");
	station.retired = true;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
	ck_assert(!fires("gauge-unchecked", 0));
}
END_TEST

START_TEST(only_dial_gauges_are_asked_for_their_check)
{
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "canner 5 weighted_gauge W pint=9", kk_station(&kit, DIAL_CANNER),
	                               &kit.fault));
	ck_assert(!fires("gauge-unchecked", 0));
}
END_TEST

/* Midnight is noticed by whoever draws the board. */
static void next_morning(void)
{
	pass_until(clock_day_start(kit.clock.now.wall_ms) + DAY_MS + 9 * HOUR_MS);
	KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
}

static void load_of_the_day(void)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_UNLOAD);
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
}

START_TEST(an_elevation_set_since_the_last_day_is_asked_about_until_the_next)
{
	load_of_the_day();
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "5000 ft", &kit.fault));
	ck_assert(!fires("elevation-changed", 0)); /* no day lies between */
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "4650 ft", &kit.fault));
	next_morning();
	ck_assert(!fires("elevation-changed", 0));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "5000 ft", &kit.fault));
	says("elevation-changed", 0, SEVERITY_CAUTION, "On the last day it was 4,650 ft");
	says("elevation-changed", 0, SEVERITY_CAUTION, "Is 5,000 ft (1,524 m) right");
	load_of_the_day();
	ck_assert(fires("elevation-changed", 0)); /* all day */
	next_morning();
	ck_assert(!fires("elevation-changed", 0));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "4650 ft", &kit.fault));
	says("elevation-changed", 0, SEVERITY_CAUTION, "On the last day it was 5,000 ft");
}
END_TEST

START_TEST(an_elevation_set_back_or_unset_is_not_a_changed_one)
{
	load_of_the_day();
	next_morning();
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	ck_assert(!fires("elevation-changed", 0) && fires("elevation-unset", 0));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "4650 ft+-1", &kit.fault)); /* known less well */
	ck_assert(fires("elevation-changed", 0));
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "4650 ft", &kit.fault));
	ck_assert(!fires("elevation-changed", 0));
}
END_TEST

/* A539, NCSU-472: 50 to 70 F is best, never above 95 F. */
START_TEST(a_store_that_is_warm_or_hot)
{
	ck_assert(!fires("storage-warm", 0) && !fires("storage-hot", 0)); /* not read */
	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "70F", &kit.fault));
	ck_assert(!fires("storage-warm", 0) && !fires("storage-hot", 0));
	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "70.01F", &kit.fault));
	says("storage-warm", 0, SEVERITY_NOTE, "read at 70.0 F");
	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "35C", &kit.fault)); /* 95 F */
	ck_assert(fires("storage-warm", 0) && !fires("storage-hot", 0));
	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "95.01F", &kit.fault));
	says("storage-hot", 0, SEVERITY_CAUTION, "never pass 95 F");
	ck_assert(!fires("storage-warm", 0)); /* not said twice */
	KK_OK(&kit, kk_undo(&kit, 0));
	ck_assert(fires("storage-warm", 0));
	kk_pass(&kit, 24 * HOUR_MS + 1);
	ck_assert(!fires("storage-warm", 0)); /* a note of the day it was read */
	KK_OK(&kit, kitchen_set_storage(kit.kitchen, "", &kit.fault));
	ck_assert(!fires("storage-warm", 0) && !fires("storage-hot", 0));
}
END_TEST

/* NCSU-472: use within one year. */
START_TEST(a_jar_a_year_on_the_shelf_until_it_is_thrown_out)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t made = kit.clock.now.wall_ms;

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	pass_until(made + 365 * DAY_MS);
	ck_assert(!fires("jars-old", 0));
	kk_pass(&kit, 1);
	says("jars-old", 0, SEVERITY_NOTE, "Use 2026-09-14-B1 first");
	KK_OK(&kit, kitchen_found_wrong(kit.kitchen, load_id, "half of them bulge", &kit.fault));
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault));
	ck_assert(!fires("jars-old", 0));
}
END_TEST

/* --- about a load ------------------------------------------------------------------------ */

START_TEST(a_process_not_valid_stops_until_the_load_is_shelved)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert(!fires("process-not-valid", 0));
	kk_pass(&kit, 3 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	says("hold-short", load_id, SEVERITY_STOP, "its hold ran 3:00 of 10:00");
	ck_assert(!fires("process-not-valid", 0)); /* not said twice */
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert(fires("hold-short", load_id));
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_DISCARD, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	ck_assert(!fires("hold-short", 0));
}
END_TEST

START_TEST(an_estimated_process_is_said_to_be_unknown)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert(!fires("process-unknown", 0));
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 4));
	says("process-unknown", load_id, SEVERITY_CAUTION, "4 min before the key");
}
END_TEST

START_TEST(a_restart_is_shown_in_every_timed_phase_in_the_canner)
{
	static const enum phase_name timed[] = { PHASE_VENT, PHASE_HOLD, PHASE_WAIT };
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, timed[_i]);
	ck_assert(!fires("restarted-in-phase", 0));
	test_clock_restart(&kit.clock, 10 * SECOND_MS);
	kk_reopen(&kit);
	says("restarted-in-phase", load_id, SEVERITY_CAUTION, "Compare with another clock");
}
END_TEST

START_TEST(a_restart_is_no_matter_to_what_has_no_clock_or_stands_on_the_rack)
{
	static const enum phase_name quiet[] = { PHASE_LOADED, PHASE_COME_UP, PHASE_UNLOAD, PHASE_COOLING };
	int64_t load_id = kk_start(&kit, WEIGHT_CANNER, 7);

	kk_to(&kit, load_id, quiet[_i]);
	test_clock_restart(&kit.clock, 10 * SECOND_MS);
	kk_reopen(&kit);
	ck_assert(!fires("restarted-in-phase", 0));
}
END_TEST

/* Planning times: A539 Guide 1; vent of a steam canner: common practice. */
START_TEST(what_is_watched_longer_than_planned)
{
	static const struct {
		int digit;
		enum phase_name name;
		int minutes;
	} watched[] = {
		{ BIG_KETTLE, PHASE_COME_UP, 30 },    { WEIGHT_CANNER, PHASE_COME_UP, 15 },
		{ STEAM_CANNER, PHASE_VENT, 20 },     { DIAL_CANNER, PHASE_PRESSURISE, 10 },
		{ DIAL_CANNER, PHASE_COOL_DOWN, 60 },
	};
	int64_t load_id = kk_start(&kit, watched[_i].digit, 7);

	kk_to(&kit, load_id, watched[_i].name);
	kk_pass(&kit, watched[_i].minutes * MINUTE_MS);
	ck_assert(!fires("hold-not-begun", 0));
	kk_pass(&kit, 1);
	says("hold-not-begun", load_id, SEVERITY_CAUTION, "then Space");
	kk_step(&kit, load_id);
	ck_assert(!fires("hold-not-begun", 0));
}
END_TEST

START_TEST(seals_not_checked_24_h_after_the_process)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	pass_until(kk_load(&kit, load_id).process_ended_wall_ms + 24 * HOUR_MS);
	ck_assert_int_eq(strip_seal_overdue_ms(kk_strip(&kit, load_id)), kit.clock.now.wall_ms);
	ck_assert(!fires("seals-overdue", 0));
	kk_pass(&kit, 1);
	says("seals-overdue", load_id, SEVERITY_CAUTION, "24 h");
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_step(&kit, load_id);
	ck_assert(!fires("seals-overdue", 0));
}
END_TEST

START_TEST(a_load_in_the_canner_has_no_overdue_seals)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_UNLOAD);
	kk_pass(&kit, 30 * HOUR_MS);
	ck_assert_int_eq(strip_seal_overdue_ms(kk_strip(&kit, load_id)), 0);
	ck_assert(!fires("seals-overdue", 0));
	ck_assert_int_eq(strip_seal_overdue_ms(kk_canner(&kit, LOW_KETTLE)), 0);
}
END_TEST

START_TEST(a_process_of_common_practice_is_noted)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 9);
	int64_t load_id;

	(void)snprintf(order.pack, sizeof(order.pack), "hot_unsterile_jar");
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	says("practice-row", load_id, SEVERITY_NOTE, "Common practice, no source");
	ck_assert(!fires("practice-row", kk_start(&kit, LOW_KETTLE, 7)));
}
END_TEST

/* --- about a fate ---------------------------------------------------------------------------- */

START_TEST(a_fate_is_warned_of_in_its_last_hour_and_when_it_is_over)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);
	int64_t by;

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 5), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 5), FATE_REPROCESS, &kit.fault));
	by = kk_jar_row(&kit, load_id, 5).fate_by_wall_ms;
	pass_until(by - HOUR_MS - 1);
	ck_assert(!fires("fate-closing", 0));
	kk_pass(&kit, 1);
	says("fate-closing", load_id, SEVERITY_CAUTION, "60 min left to process again 1 jar of 2026-09-14-B1 (f).");
	pass_until(by - 1);
	ck_assert(fires("fate-closing", load_id) && !fires("fate-closed", 0));
	kk_pass(&kit, 1);
	ck_assert(!fires("fate-closing", 0));
	says("fate-closed", load_id, SEVERITY_STOP, "do not taste");
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 5), FATE_DISCARD, &kit.fault));
	ck_assert(!fires("fate-closed", 0));
}
END_TEST

START_TEST(a_fate_of_a_shelved_load_is_still_warned_of)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 5), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 5), FATE_FREEZER, &kit.fault));
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	kk_step(&kit, load_id);
	kk_pass(&kit, 24 * HOUR_MS);
	ck_assert(fires("fate-closed", load_id));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_done(&kit, kk_jar(&kit, load_id, 5), false)); /* too late */
	KK_OK(&kit, kk_bin(&kit, kk_jar(&kit, load_id, 5)));
	ck_assert(!fires("fate-closed", 0));
}
END_TEST

/* --- all together ------------------------------------------------------------------------------ */

START_TEST(the_worst_stand_first_and_the_list_has_an_end)
{
	struct warning warnings[WARNINGS_MAX];
	size_t count;

	for (int load = 0; load < 9; load++) {
		int64_t load_id = kk_start(&kit, BIG_KETTLE, 9);

		kk_pass(&kit, 2 * SECOND_MS);
		KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
		kk_pass(&kit, 2 * SECOND_MS);
		kk_step(&kit, load_id);
		kk_pass(&kit, 2 * SECOND_MS);
		for (int place = 1; place <= 9; place++) { /* each for itself: its own deadline */
			KK_OK(&kit,
			      kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, place), FATE_FRIDGE, &kit.fault));
			kk_pass(&kit, SECOND_MS);
		}
		/* the lids of two boxes do not reach that far */
		if (load == 4)
			KK_OK(&kit, kitchen_setup_line(kit.kitchen, "lids \"Box A, spring\" 600", BOX_A, &kit.fault));
	}
	kk_pass(&kit, 80 * HOUR_MS);
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	count = kitchen_warnings(kit.kitchen, &kit.clock.now, warnings, NULL);
	ck_assert_uint_eq(count, WARNINGS_MAX); /* 1 + 9 + 81 would fire */
	ck_assert_str_eq(warnings[0].id, "elevation-unset");
	for (size_t i = 0; i + 1 < count; i++)
		ck_assert_int_ge(warnings[i].severity, warnings[i + 1].severity);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("warnings", .begin = begin, .end = end, .seconds = 30),
	TEST(a_quiet_kitchen_has_nothing_to_warn_of),
	TEST(an_elevation_not_set_stops),
	TEST(boiling_water_that_does_not_fit_the_elevation),
	TEST(above_8000_ft_the_tables_differ),
	TEST(a_dial_gauge_a_year_after_its_check),
	TEST(only_dial_gauges_are_asked_for_their_check),
	TEST(an_elevation_set_since_the_last_day_is_asked_about_until_the_next),
	TEST(an_elevation_set_back_or_unset_is_not_a_changed_one),
	TEST(a_store_that_is_warm_or_hot),
	TEST(a_jar_a_year_on_the_shelf_until_it_is_thrown_out),
	TEST(a_process_not_valid_stops_until_the_load_is_shelved),
	TEST(an_estimated_process_is_said_to_be_unknown),
	EACH(a_restart_is_shown_in_every_timed_phase_in_the_canner, 0, 3),
	EACH(a_restart_is_no_matter_to_what_has_no_clock_or_stands_on_the_rack, 0, 4),
	EACH(what_is_watched_longer_than_planned, 0, 5),
	TEST(seals_not_checked_24_h_after_the_process),
	TEST(a_load_in_the_canner_has_no_overdue_seals),
	TEST(a_process_of_common_practice_is_noted),
	TEST(a_fate_is_warned_of_in_its_last_hour_and_when_it_is_over),
	TEST(a_fate_of_a_shelved_load_is_still_warned_of),
	TEST(the_worst_stand_first_and_the_list_has_an_end),
};

KK_TESTS("warnings", listed)
