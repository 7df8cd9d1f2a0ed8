/* Starting a load: what fits, what is left, what the tables give. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t load_id;

static void begin(void)
{
	kk_begin(&kit);
	load_id = 0;
}

static void end(void)
{
	kk_end(&kit);
}

static bool start(const struct load_order *order)
{
	return kitchen_start_load(kit.kitchen, order, &load_id, &kit.fault);
}

static struct load_order order_of(int digit, const char *food, const char *pack, const char *jar, int jars)
{
	struct load_order order = kk_order(&kit, digit, jars);

	ck_assert(text_copy(order.food, sizeof(order.food), food) && text_copy(order.pack, sizeof(order.pack), pack) &&
	          text_copy(order.jar, sizeof(order.jar), jar));
	kk_say_acid(&order);
	return order;
}

/* Refused with this word in the sentence, and nothing is written. */
static void refused(const struct load_order *order, enum fault_kind kind, const char *word)
{
	int64_t before = kk_journal(&kit);
	bool started = start(order);

	ck_assert_msg(started || strstr(kit.fault.sentence, word) != NULL, "\"%s\" does not say \"%s\"",
	              kit.fault.sentence, word);
	kk_refused(&kit, started, kind, word);
	ck_assert_int_eq(kk_journal(&kit), before);
	ck_assert_int_eq(load_id, 0);
}

/* --- room ------------------------------------------------------------------------ */

START_TEST(nine_pints_fit_a_canner_of_nine_and_ten_do_not)
{
	struct load_order order = order_of(BIG_KETTLE, "tomatoes crushed", "hot", "pint", 10);

	refused(&order, FAULT_REFUSED, "takes 9");
	order.jars = 9;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->jars, 9);
}
END_TEST

START_TEST(smaller_jars_stand_where_larger_ones_do)
{
	struct load_order order = kk_order(&kit, LOW_KETTLE, 8);
	const struct strip *canner = kk_canner(&kit, LOW_KETTLE);
	bool stated = true;

	ck_assert_int_eq(station_room(&canner->station, jar_size_named("half_pint"), &stated), 7);
	ck_assert(!stated);
	ck_assert_int_eq(station_room(&canner->station, jar_size_named("pint"), &stated), 7);
	ck_assert(stated);
	refused(&order, FAULT_REFUSED, "takes 7");
	order.jars = 7;
	KK_OK(&kit, start(&order));
}
END_TEST

START_TEST(jars_larger_than_any_stated_room_do_not_fit)
{
	struct load_order order = order_of(BIG_KETTLE, "grape juice", "hot", "half_gallon", 1);

	ck_assert_int_eq(station_room(&kk_canner(&kit, BIG_KETTLE)->station, jar_size_named("half_gallon"), NULL), 0);
	ck_assert_int_eq(station_room(&kk_canner(&kit, BIG_KETTLE)->station, jar_size_named("quart"), NULL), 0);
	refused(&order, FAULT_REFUSED, "no room set");
}
END_TEST

START_TEST(a_load_has_at_least_one_jar)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 0);

	refused(&order, FAULT_REFUSED, "at least one");
	order.jars = -3;
	refused(&order, FAULT_REFUSED, "at least one");
	order.jars = 1;
	KK_OK(&kit, start(&order));
	ck_assert_str_eq(kk_strip(&kit, load_id)->holds, "1 half-pint grape jelly");
}
END_TEST

START_TEST(a_canner_takes_one_load_at_a_time)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 7);
	int64_t first = kk_start(&kit, BIG_KETTLE, 7);

	refused(&order, FAULT_STALE, "already holds");
	kk_to(&kit, first, PHASE_UNLOAD);
	refused(&order, FAULT_STALE, "already holds");
	kk_to(&kit, first, PHASE_COOLING); /* on the rack: the canner is free */
	KK_OK(&kit, start(&order));
}
END_TEST

START_TEST(a_canner_that_is_not_there_or_retired_takes_nothing)
{
	struct load_order order = kk_order(&kit, LOW_KETTLE, 7);
	struct log_station station = kk_canner(&kit, LOW_KETTLE)->station;

	station.retired = true;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
	refused(&order, FAULT_MISSING, "no such station");
	order.station_id = 99;
	refused(&order, FAULT_MISSING, "no such station");
}
END_TEST

/* --- lids --------------------------------------------------------------------------- */

START_TEST(a_load_takes_a_lid_a_jar_and_no_more_than_are_left)
{
	struct log_lid_box box = { .label = "Last ones", .lids = 10 };
	struct load_order order = kk_order(&kit, BIG_KETTLE, 7);

	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
	order.lid_box_id = box.id;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(kk_lids_used(&kit, box.id), 7);
	load_id = 0;
	order.station_id = kk_station(&kit, LOW_KETTLE);
	order.jars = 4;
	refused(&order, FAULT_REFUSED, "3 lids left");
	order.jars = 3;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(kk_lids_used(&kit, box.id), 10);
}
END_TEST

START_TEST(a_load_whose_lids_are_not_noted_takes_none)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 9);

	order.lid_box_id = 0;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A) + kk_lids_used(&kit, BOX_B), 0);
	load_id = 0;
	order.station_id = kk_station(&kit, LOW_KETTLE);
	order.jars = 7;
	order.lid_box_id = 99;
	refused(&order, FAULT_MISSING, "");
}
END_TEST

/* --- the process --------------------------------------------------------------------- */

START_TEST(the_process_in_the_load_is_the_tables)
{
	struct load_order order = kk_order(&kit, DIAL_CANNER, 7);
	struct process process;
	struct log_load load;
	struct log_lot lot;

	KK_OK(&kit, kitchen_process(kit.kitchen, &order, &process, &kit.fault));
	ck_assert_int_eq(kk_journal(&kit), 10); /* a look writes nothing */
	KK_OK(&kit, start(&order));
	load = kk_load(&kit, load_id);
	lot = kk_strip(&kit, load_id)->lot;
	/* A539 Guide 4, snap beans, raw pints: 20 min, 13 lb at 4,001-6,000 ft. */
	ck_assert_int_eq(load.minutes, 20);
	ck_assert_int_eq(load.pressure_psi, 13);
	ck_assert_int_eq(load.headspace_thou, 1000);
	ck_assert_str_eq(load.jar_in_table, "pint");
	ck_assert_str_eq(load.source, process.row->source);
	ck_assert_ptr_nonnull(strstr(load.source, "Guide 4, table Snap and Italian Beans (dial-gauge), page 4-9"));
	ck_assert_int_eq(load.confirmed, CONFIRMED_YES);
	ck_assert_int_eq(load.method, METHOD_DIAL_GAUGE);
	ck_assert_int_eq(load.elevation.um, 4650 * FOOT_UM);
	ck_assert_int_eq(load.verdict, VERDICT_OPEN);
	ck_assert_int_eq(load.opened_wall_ms, kit.clock.now.wall_ms);
	ck_assert_str_eq(lot.food, "green beans (snap and Italian)");
	ck_assert_str_eq(lot.pack, "raw");
	ck_assert_int_eq(lot.acidity, ACIDITY_LOW_ACID);
	ck_assert_str_eq(lot.product, "green beans");
}
END_TEST

START_TEST(a_jar_smaller_than_tested_gets_the_row_of_the_next_larger)
{
	/* NCHFP on jar sizes: the next larger tested size. */
	struct load_order order =
	    order_of(BIG_KETTLE, "jam or jelly with added pectin", "hot_sterile_jar", "twelve_ounce", 9);

	KK_OK(&kit, start(&order));
	ck_assert_str_eq(kk_load(&kit, load_id).jar_in_table, "pint");
	ck_assert_str_eq(kk_jar_row(&kit, load_id, 1).size, "twelve_ounce");
	ck_assert_str_eq(kk_strip(&kit, load_id)->holds, "9 12-ounce jars grape jelly");
}
END_TEST

START_TEST(names_as_people_write_them_are_kept_as_the_tables_spell_them)
{
	struct load_order order =
	    order_of(BIG_KETTLE, "Jam or JELLY with added-pectin", "Hot Sterile-Jar", "Half-Pint", 3);

	KK_OK(&kit, start(&order));
	ck_assert_str_eq(kk_strip(&kit, load_id)->lot.food, "jam or jelly with added pectin");
	ck_assert_str_eq(kk_strip(&kit, load_id)->lot.pack, "hot_sterile_jar");
	ck_assert_str_eq(kk_jar_row(&kit, load_id, 3).size, "half_pint");
}
END_TEST

START_TEST(a_lower_pressure_may_be_chosen_where_the_table_has_it)
{
	/* A539 Guide 3, crushed tomatoes, pints, above 1,000 ft: 20 min at
	 * 10 lb or 15 min at 15 lb. */
	struct load_order order = order_of(WEIGHT_CANNER, "tomatoes crushed", "hot", "pint", 9);

	order.pressure_psi = 15;
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 15);
	ck_assert_int_eq(kk_load(&kit, load_id).pressure_psi, 15);
}
END_TEST

START_TEST(without_an_elevation_there_is_no_load)
{
	struct load_order order = kk_order(&kit, BIG_KETTLE, 7);

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault));
	refused(&order, FAULT_REFUSED, "levation");
}
END_TEST

START_TEST(low_acid_food_is_not_taken_by_a_boiling_water_or_steam_canner)
{
	struct load_order order = order_of(_i, "green beans (snap and Italian)", "raw", "pint", 7);

	refused(&order, FAULT_REFUSED, "low-acid");
}
END_TEST

/* Dial pressures above 8,000 ft: not read, not in the tables. */
START_TEST(a_dial_canner_above_8000_ft_is_refused_and_a_weighted_one_is_not)
{
	struct load_order order = kk_order(&kit, DIAL_CANNER, 7);

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "8001 ft", &kit.fault));
	refused(&order, FAULT_REFUSED, "8,000");
	load_id = kk_start(&kit, WEIGHT_CANNER, 7);
	ck_assert_int_eq(kk_load(&kit, load_id).pressure_psi, 15);
}
END_TEST

/* Peaches, raw: pints 40 min and quarts 45 in the open top band of A539, Guide 2; 45 and
 * 50 in the timetable of Utah State University Extension, 8,001-10,000 ft. The stricter
 * governs, and the load is written down with the source it has its time from. */
START_TEST(above_8000_ft_a_load_gets_the_longer_time_and_above_10000_none)
{
	struct load_order order = order_of(BIG_KETTLE, "peaches", "raw", "pint", 7);
	struct load_order steam = order_of(STEAM_CANNER, "peaches", "raw", "quart", 7);
	struct load_order weighted = kk_order(&kit, WEIGHT_CANNER, 7);

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "10001 ft", &kit.fault));
	refused(&order, FAULT_REFUSED, "above 10,000 ft");
	refused(&steam, FAULT_REFUSED, "above 10,000 ft");
	refused(&weighted, FAULT_REFUSED, "240 F");
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "8001 ft", &kit.fault));
	refused(&steam, FAULT_REFUSED, "45");
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 45);
	ck_assert_ptr_nonnull(strstr(kk_load(&kit, load_id).source, "Utah State University"));
}
END_TEST

START_TEST(a_steam_canner_takes_no_hold_over_45_min)
{
	/* NCHFP newsflash on steam canners: 45 min or less. A539 Guide 3:
	 * crushed tomatoes at 3,001-6,000 ft, pints 45 min, quarts 55 min. */
	struct load_order order = order_of(STEAM_CANNER, "tomatoes crushed", "hot", "quart", 7);

	refused(&order, FAULT_REFUSED, "45");
	(void)text_copy(order.jar, sizeof(order.jar), "pint");
	KK_OK(&kit, start(&order));
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 45);
}
END_TEST

START_TEST(what_the_tables_do_not_have_is_not_started)
{
	struct load_order food = order_of(BIG_KETTLE, "moon cheese", "hot", "pint", 7);
	struct load_order pack = order_of(BIG_KETTLE, "tomatoes crushed", "raw", "pint", 7);
	struct load_order jar = order_of(BIG_KETTLE, "tomatoes crushed", "hot", "bucket", 7);

	refused(&food, FAULT_REFUSED, "moon cheese");
	refused(&pack, FAULT_REFUSED, "");
	refused(&jar, FAULT_REFUSED, "bucket");
}
END_TEST

START_TEST(an_elevation_set_later_does_not_reach_into_a_started_load)
{
	load_id = kk_start(&kit, BIG_KETTLE, 7);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_set_elevation(kit.kitchen, "500 ft", &kit.fault));
	kk_to(&kit, load_id, PHASE_COOLING);
	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "500 ft", &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).elevation.um, 4650 * FOOT_UM);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 10);
	load_id = kk_start(&kit, BIG_KETTLE, 7);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 5); /* A539 Guide 7, to 1,000 ft */
}
END_TEST

/* --- lots and jars --------------------------------------------------------------------- */

static void code_is(int digit, const char *code)
{
	load_id = kk_start(&kit, digit, 3);
	ck_assert_str_eq(kk_strip(&kit, load_id)->lot.code, code);
}

START_TEST(lot_codes_run_on_through_the_day_and_begin_anew_with_the_next)
{
	code_is(BIG_KETTLE, "2026-09-14-B1");
	code_is(LOW_KETTLE, "2026-09-14-B2");
	test_clock_set_wall(&kit.clock, KK_MORNING_MS + 15 * HOUR_MS - 1); /* 23:59:59.999 UTC */
	code_is(STEAM_CANNER, "2026-09-14-B3");
	kk_reopen(&kit);
	kk_pass(&kit, 1);
	code_is(DIAL_CANNER, "2026-09-15-B1");
	code_is(WEIGHT_CANNER, "2026-09-15-B2");
}
END_TEST

START_TEST(more_than_nine_lots_a_day_still_count_on)
{
	char code[40];

	for (int lot = 1; lot <= 12; lot++) {
		(void)snprintf(code, sizeof(code), "2026-09-14-B%d", lot);
		code_is(BIG_KETTLE, code);
		kk_pass(&kit, 2 * SECOND_MS);
		KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
		kk_pass(&kit, 2 * SECOND_MS);
		kk_step(&kit, load_id);
	}
}
END_TEST

START_TEST(each_jar_is_a_row_with_its_place_lot_and_lid_box)
{
	struct log_jar *jars;
	size_t count;

	load_id = kk_start(&kit, BIG_KETTLE, 9);
	KK_OK(&kit, log_jars(kit.log, load_id, &jars, &count, &kit.fault));
	ck_assert_uint_eq(count, 9);
	for (size_t i = 0; i < count; i++) {
		ck_assert_int_eq(jars[i].place_in_load, (int)i + 1);
		ck_assert_int_eq(jars[i].lot_id, kk_strip(&kit, load_id)->lot.id);
		ck_assert_int_eq(jars[i].lid_box_id, BOX_A);
		ck_assert_int_eq(jars[i].state, JAR_UNCHECKED);
		ck_assert_int_eq(jars[i].fate, FATE_NONE);
	}
	free(jars);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 9);
}
END_TEST

START_TEST(the_journal_says_who_started_what)
{
	struct log_entry entry;

	kitchen_set_who(kit.kitchen, "QX");
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	KK_OK(&kit, log_newest_entry(kit.log, &entry, &kit.fault));
	ck_assert_str_eq(entry.verb, "start_load");
	ck_assert_str_eq(entry.who, "QX");
	ck_assert_int_eq(entry.work_id, load_id);
	ck_assert_int_eq(entry.station_id, kk_station(&kit, BIG_KETTLE));
	ck_assert_str_eq(kk_words(&kit, &entry), "Big kettle: load started, 9 half-pints grape jelly, 10 min");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("start", .begin = begin, .end = end),
	TEST(nine_pints_fit_a_canner_of_nine_and_ten_do_not),
	TEST(smaller_jars_stand_where_larger_ones_do),
	TEST(jars_larger_than_any_stated_room_do_not_fit),
	TEST(a_load_has_at_least_one_jar),
	TEST(a_canner_takes_one_load_at_a_time),
	TEST(a_canner_that_is_not_there_or_retired_takes_nothing),
	TEST(a_load_takes_a_lid_a_jar_and_no_more_than_are_left),
	TEST(a_load_whose_lids_are_not_noted_takes_none),
	TEST(the_process_in_the_load_is_the_tables),
	TEST(a_jar_smaller_than_tested_gets_the_row_of_the_next_larger),
	TEST(names_as_people_write_them_are_kept_as_the_tables_spell_them),
	TEST(a_lower_pressure_may_be_chosen_where_the_table_has_it),
	TEST(without_an_elevation_there_is_no_load),
	EACH(low_acid_food_is_not_taken_by_a_boiling_water_or_steam_canner, BIG_KETTLE, BIG_KETTLE + 1),
	EACH(low_acid_food_is_not_taken_by_a_boiling_water_or_steam_canner, STEAM_CANNER, STEAM_CANNER + 1),
	TEST(a_dial_canner_above_8000_ft_is_refused_and_a_weighted_one_is_not),
	TEST(above_8000_ft_a_load_gets_the_longer_time_and_above_10000_none),
	TEST(a_steam_canner_takes_no_hold_over_45_min),
	TEST(what_the_tables_do_not_have_is_not_started),
	TEST(an_elevation_set_later_does_not_reach_into_a_started_load),
	TEST(lot_codes_run_on_through_the_day_and_begin_anew_with_the_next),
	TEST(more_than_nine_lots_a_day_still_count_on),
	TEST(each_jar_is_a_row_with_its_place_lot_and_lid_box),
	TEST(the_journal_says_who_started_what),
};

KK_TESTS("start", listed)
