/* Every kind of row comes back as it was put, whatever a person typed. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pantry.h"
#include "log/tables/work.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

/* What a person, a paste or a cat can type. */
static const char *const hostile[] = {
	"O'Brien's \"best\"; DROP TABLE jar; --",
	"two\nlines\r\tand a tab",
	"\x1b[31mred\x1b[0m\x07",
	"Gr\303\274\303\237e \346\242\250 \360\237\215\220 e\314\201",
	"\xff\xfe not UTF-8 \x80",
	"%s%n%d ?1 :a @b $c",
	" ",
};
#define HOSTILE_COUNT (int)(sizeof(hostile) / sizeof(hostile[0]))

/* Between a begin and a commit. */
static void act_begin(void)
{
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
}

static void act_commit(void)
{
	struct log_entry entry = kit_entry("rows", 0, 0);
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	kit_reopen(&kit);
}

#define COPY(array, text) ck_assert(text_copy((array), sizeof(array), (text)))

START_TEST(the_house_comes_back)
{
	struct log_house out;
	struct log_house house = {
		.elevation = { .known = true, .um = 4650 * FOOT_UM, .slack_um = 50 * FOOT_UM },
		.elevation_set_wall_ms = 11,
		.measured_boil_mc = 95230,
		.barometer_pa = 85400,
		.invented = true,
		.practice_speed = 60,
		.practice_wall_ms = 12,
		.practice_real_wall_ms = 13,
		.units = UNITS_METRIC,
		.run_minutes = 65,
		.first_juice_minutes = 0,
		.water_minutes = 15,
		.jar_wait_minutes = 600,
	};
	COPY(house.name, hostile[_i]);
	COPY(house.elevation_by, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_house(kit.log, &house, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_house_get(kit.log, &out, &kit.fault));
	ck_assert_str_eq(out.name, hostile[_i]);
	ck_assert_str_eq(out.elevation_by, hostile[_i]);
	ck_assert(out.elevation.known);
	ck_assert_int_eq(out.elevation.um, 4650 * FOOT_UM);
	ck_assert_int_eq(out.elevation.slack_um, 50 * FOOT_UM);
	ck_assert_int_eq(out.elevation_set_wall_ms, 11);
	ck_assert_int_eq(out.measured_boil_mc, 95230);
	ck_assert_int_eq(out.barometer_pa, 85400);
	ck_assert(out.invented);
	ck_assert_int_eq(out.practice_speed, 60);
	ck_assert_int_eq(out.practice_wall_ms, 12);
	ck_assert_int_eq(out.practice_real_wall_ms, 13);
	ck_assert_int_eq(out.units, UNITS_METRIC);
	ck_assert_int_eq(out.run_minutes, 65);
	ck_assert_int_eq(out.first_juice_minutes, 0);
	ck_assert_int_eq(out.water_minutes, 15);
	ck_assert_int_eq(out.jar_wait_minutes, 600);
}
END_TEST

START_TEST(a_new_house_knows_nothing)
{
	struct log_house house;
	memset(&house, 0xff, sizeof(house));
	KIT_OK(&kit, log_house_get(kit.log, &house, &kit.fault));
	ck_assert_str_eq(house.name, "");
	ck_assert(!house.elevation.known);
	ck_assert_int_eq(house.elevation.um, 0);
	ck_assert_int_eq(house.elevation_set_wall_ms, 0);
	ck_assert_int_eq(house.measured_boil_mc, 0);
	ck_assert_int_eq(house.barometer_pa, 0);
	ck_assert_int_eq(house.practice_speed, 0);
	ck_assert(!house.invented);
	ck_assert_int_eq(house.units, UNITS_US);
	ck_assert_int_eq(house.run_minutes, 0); /* no figure of a juicer is built in */
	ck_assert_int_eq(house.first_juice_minutes, 0);
	ck_assert_int_eq(house.water_minutes, 0);
	ck_assert_int_eq(house.jar_wait_minutes, 20);
}
END_TEST

/* Sea level is a known elevation of 0, and it can be forgotten again. */
START_TEST(elevation_zero_is_not_unknown)
{
	struct log_house house;
	KIT_OK(&kit, log_house_get(kit.log, &house, &kit.fault));
	house.elevation.known = true;
	act_begin();
	KIT_OK(&kit, log_put_house(kit.log, &house, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_house_get(kit.log, &house, &kit.fault));
	ck_assert(house.elevation.known);
	ck_assert_int_eq(house.elevation.um, 0);
	house.elevation.known = false;
	act_begin();
	KIT_OK(&kit, log_put_house(kit.log, &house, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_house_get(kit.log, &house, &kit.fault));
	ck_assert(!house.elevation.known);
}
END_TEST

START_TEST(a_canner_comes_back)
{
	struct log_station out;
	struct log_station station = {
		.digit = 7,
		.kind = STATION_DIAL_GAUGE,
		.gauge_checked_wall_ms = 5,
		.capacity = { [0] = 1, [1] = 99 },
	};
	COPY(station.name, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_station(kit.log, &station, &kit.fault));
	act_commit();
	ck_assert_int_gt(station.id, 0);
	KIT_OK(&kit, log_station_get(kit.log, station.id, &out, &kit.fault));
	ck_assert_str_eq(out.name, hostile[_i]);
	ck_assert_int_eq(out.digit, 7);
	ck_assert_int_eq(out.kind, STATION_DIAL_GAUGE);
	ck_assert_int_eq(out.gauge_checked_wall_ms, 5);
	ck_assert(!out.retired);
	ck_assert_mem_eq(out.capacity, station.capacity, sizeof(out.capacity));
}
END_TEST

START_TEST(the_capacities_of_a_canner_are_replaced)
{
	struct log_station station;
	struct log_station out;
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	ck_assert_int_eq(station.capacity[0], 12);
	station.capacity[0] = 0;
	station.capacity[2] = 7;
	act_begin();
	KIT_OK(&kit, log_put_station(kit.log, &station, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_station_get(kit.log, 1, &out, &kit.fault));
	ck_assert_mem_eq(out.capacity, station.capacity, sizeof(out.capacity));
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM station_capacity"), 2);
}
END_TEST

START_TEST(canners_are_listed_by_digit_without_the_retired)
{
	static const int digits[] = { 9, 2, 5 };
	struct log_station *rows;
	size_t count;
	act_begin();
	for (int i = 0; i < 3; i++) {
		struct log_station station = { .digit = digits[i],
			                       .kind = STATION_STEAM,
			                       .name = "x",
			                       .capacity = { [0] = digits[i] },
			                       .retired = digits[i] == 5 };
		KIT_OK(&kit, log_put_station(kit.log, &station, &kit.fault));
	}
	act_commit();
	KIT_OK(&kit, log_stations(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(rows[0].digit, 1);
	ck_assert_int_eq(rows[1].digit, 2);
	ck_assert_int_eq(rows[1].capacity[0], 2);
	ck_assert_int_eq(rows[2].digit, 9);
	ck_assert_int_eq(rows[2].capacity[0], 9);
	free(rows);
}
END_TEST

START_TEST(a_lid_box_comes_back_and_counts_its_lids)
{
	struct log_lid_box out;
	struct log_lid_box box = { .bought_wall_ms = 8, .lids = 60 };
	struct log_entry entry = kit_entry("Load", 0, 0);
	struct log_jar *jars;
	size_t count;
	COPY(box.label, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_lid_box(kit.log, &box, &kit.fault));
	act_commit();
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 5, &entry, &kit.fault));
	KIT_OK(&kit, log_jars(kit.log, entry.work_id, &jars, &count, &kit.fault));
	act_begin();
	for (int i = 0; i < 3; i++) {
		jars[i].lid_box_id = box.id;
		KIT_OK(&kit, log_put_jar(kit.log, &jars[i], &kit.fault));
	}
	act_commit();
	free(jars);
	KIT_OK(&kit, log_lid_box_get(kit.log, box.id, &out, &kit.fault));
	ck_assert_str_eq(out.label, hostile[_i]);
	ck_assert_int_eq(out.bought_wall_ms, 8);
	ck_assert_int_eq(out.lids, 60);
	ck_assert_int_eq(out.used, 3);
	ck_assert(!out.retired);
}
END_TEST

START_TEST(retired_lid_boxes_are_not_listed)
{
	struct log_lid_box a = { .label = "a", .lids = 1, .retired = true };
	struct log_lid_box b = { .label = "b", .lids = 2 };
	struct log_lid_box *rows;
	size_t count;
	act_begin();
	KIT_OK(&kit, log_put_lid_box(kit.log, &a, &kit.fault));
	KIT_OK(&kit, log_put_lid_box(kit.log, &b, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_lid_boxes(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_str_eq(rows[0].label, "b");
	free(rows);
	KIT_OK(&kit, log_lid_box_get(kit.log, a.id, &b, &kit.fault));
	ck_assert(b.retired);
}
END_TEST

START_TEST(a_lot_comes_back)
{
	struct log_lot out;
	struct log_lot lot = { .acidity = ACIDITY_ACIDIFIED, .made_wall_ms = -3 };
	COPY(lot.code, hostile[_i]);
	COPY(lot.product, hostile[_i]);
	COPY(lot.food, hostile[_i]);
	COPY(lot.pack, "raw");
	act_begin();
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_lot_get(kit.log, lot.id, &out, &kit.fault));
	ck_assert_str_eq(out.code, hostile[_i]);
	ck_assert_str_eq(out.product, hostile[_i]);
	ck_assert_str_eq(out.food, hostile[_i]);
	ck_assert_str_eq(out.pack, "raw");
	ck_assert_int_eq(out.acidity, ACIDITY_ACIDIFIED);
	ck_assert_int_eq(out.made_wall_ms, -3);
}
END_TEST

START_TEST(a_load_comes_back)
{
	struct log_load out;
	struct log_load load = {
		.station_id = 1,
		.method = METHOD_WEIGHTED_GAUGE,
		.place = PLACE_RACK,
		.minutes = 75,
		.pressure_psi = 15,
		.headspace_thou = 1000,
		.jar_in_table = "quart",
		.confirmed = CONFIRMED_PRACTICE,
		.elevation = { .known = true, .um = -20 * METRE_UM, .slack_um = METRE_UM / 2 },
		.process_ended_wall_ms = 77,
		.broken = 2,
		.opened_wall_ms = 66,
	};
	COPY(load.source, hostile[_i]);
	COPY(load.elevation_by, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	KIT_OK(&kit, kit_judge(kit.log, load.id, VERDICT_NOT_VALID, hostile[_i], &kit.fault));
	act_commit();
	KIT_OK(&kit, log_load_get(kit.log, load.id, &out, &kit.fault));
	ck_assert_int_eq(out.station_id, 1);
	ck_assert_int_eq(out.method, METHOD_WEIGHTED_GAUGE);
	ck_assert_int_eq(out.place, PLACE_RACK);
	ck_assert_int_eq(out.minutes, 75);
	ck_assert_int_eq(out.pressure_psi, 15);
	ck_assert_int_eq(out.headspace_thou, 1000);
	ck_assert_str_eq(out.jar_in_table, "quart");
	ck_assert_str_eq(out.source, hostile[_i]);
	ck_assert_int_eq(out.confirmed, CONFIRMED_PRACTICE);
	ck_assert(out.elevation.known);
	ck_assert_int_eq(out.elevation.um, -20 * METRE_UM);
	ck_assert_int_eq(out.elevation.slack_um, METRE_UM / 2);
	ck_assert_str_eq(out.elevation_by, hostile[_i]);
	ck_assert_int_eq(out.verdict, VERDICT_NOT_VALID);
	ck_assert_str_eq(out.verdict_why, hostile[_i]);
	ck_assert_int_eq(out.process_ended_wall_ms, 77);
	ck_assert_int_eq(out.broken, 2);
	ck_assert_int_eq(out.opened_wall_ms, 66);
	load.pressure_psi = NO_PRESSURE;
	load.process_ended_wall_ms = 0;
	act_begin();
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_load_get(kit.log, load.id, &out, &kit.fault));
	ck_assert_int_eq(out.pressure_psi, NO_PRESSURE);
	ck_assert_int_eq(out.process_ended_wall_ms, 0);
}
END_TEST

START_TEST(loads_are_found_by_place_and_by_time)
{
	static const int64_t opened[] = { 300, 100, 200 };
	static const enum load_place places[] = { PLACE_SHELF, PLACE_RACK, PLACE_STATION };
	struct log_load load = { .station_id = 1,
		                 .minutes = 10,
		                 .pressure_psi = NO_PRESSURE,
		                 .headspace_thou = 250,
		                 .elevation = { .known = true } };
	struct log_load *rows;
	size_t count;
	act_begin();
	for (int i = 0; i < 3; i++) {
		load.id = 0;
		load.opened_wall_ms = opened[i];
		load.place = places[i];
		KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	}
	act_commit();
	KIT_OK(&kit, log_works_open(kit.log, SUBJECT_LOAD, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(rows[0].opened_wall_ms, 100);
	ck_assert_int_eq(rows[1].opened_wall_ms, 200);
	free(rows);
	KIT_OK(&kit, log_works_between(kit.log, SUBJECT_LOAD, 100, 300, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	free(rows);
	KIT_OK(&kit, log_works_between(kit.log, SUBJECT_LOAD, 200, 301, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(rows[1].place, PLACE_SHELF);
	free(rows);
	KIT_OK(&kit, log_works_between(kit.log, SUBJECT_LOAD, 301, 400, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	ck_assert_ptr_null(rows);
}
END_TEST

START_TEST(a_phase_comes_back)
{
	struct log_entry entry = kit_entry("Load", 0, 0);
	struct log_phase out;
	struct log_phase *rows;
	size_t count;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 2, &entry, &kit.fault));
	KIT_OK(&kit, kit_next_phase(kit.log, entry.work_id, "hold", &entry, &kit.fault));
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(entry.work_id), &out, &kit.fault));
	ck_assert_str_eq(out.name, "hold");
	out.began = (struct moment){ .wall_ms = 5, .awake_ms = 6 };
	COPY(out.began.boot, hostile[_i]);
	out.acknowledged_wall_ms = 9;
	act_begin();
	KIT_OK(&kit, log_put_phase(kit.log, &out, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_phases(kit.log, kit_load(entry.work_id), &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_str_eq(rows[0].name, "come_up");
	ck_assert_int_eq(rows[0].ended_wall_ms, KIT_MORNING_MS + 60000);
	ck_assert_int_eq(rows[0].ended_why, PHASE_DONE);
	ck_assert_int_eq(rows[0].required_ms, 600000);
	ck_assert_int_eq(rows[1].began.wall_ms, 5);
	ck_assert_int_eq(rows[1].began.awake_ms, 6);
	ck_assert_str_eq(rows[1].began.boot, hostile[_i]);
	ck_assert_int_eq(rows[1].acknowledged_wall_ms, 9);
	ck_assert_int_eq(rows[1].ended_wall_ms, 0);
	ck_assert_int_eq(rows[1].ended_why, PHASE_RUNNING);
	free(rows);
}
END_TEST

START_TEST(a_load_without_a_running_phase_says_so)
{
	struct log_phase phase;
	ck_assert(!log_phase_running(kit.log, kit_load(1), &phase, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
}
END_TEST

START_TEST(a_jar_comes_back)
{
	struct log_entry entry = kit_entry("Load", 0, 0);
	struct log_jar *rows;
	struct log_jar jar;
	size_t count;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 3, &entry, &kit.fault));
	KIT_OK(&kit, log_jars(kit.log, entry.work_id, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	for (int i = 0; i < 3; i++)
		ck_assert_int_eq(rows[i].place_in_load, i + 1);
	ck_assert_int_eq(rows[0].lid_box_id, 0);
	jar = rows[1];
	free(rows);
	COPY(jar.size, "pint");
	jar.state = JAR_DOUBTFUL;
	jar.siphoning = SIPHON_OVER_HALF;
	jar.fate = FATE_REPROCESS;
	jar.fate_by_wall_ms = 3;
	jar.fate_done_wall_ms = 4;
	jar.checked_wall_ms = 5;
	act_begin();
	KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	act_commit();
	struct log_jar out;
	KIT_OK(&kit, log_jar_get(kit.log, jar.id, &out, &kit.fault));
	ck_assert_int_eq(out.load_id, entry.work_id);
	ck_assert_int_eq(out.lot_id, jar.lot_id);
	ck_assert_int_eq(out.place_in_load, 2);
	ck_assert_str_eq(out.size, "pint");
	ck_assert_int_eq(out.state, JAR_DOUBTFUL);
	ck_assert_int_eq(out.siphoning, SIPHON_OVER_HALF);
	ck_assert_int_eq(out.fate, FATE_REPROCESS);
	ck_assert_int_eq(out.fate_by_wall_ms, 3);
	ck_assert_int_eq(out.fate_done_wall_ms, 4);
	ck_assert_int_eq(out.checked_wall_ms, 5);
}
END_TEST

START_TEST(open_fates_come_by_deadline_and_broken_jars_do_not_count)
{
	static const int64_t deadlines[] = { 0, 900, 0, 300, 500 };
	struct log_entry entry = kit_entry("Load", 0, 0);
	struct log_jar *rows;
	size_t count;
	int made;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 5, &entry, &kit.fault));
	KIT_OK(&kit, log_jars(kit.log, entry.work_id, &rows, &count, &kit.fault));
	act_begin();
	for (int i = 1; i < 5; i++) {
		rows[i].fate = FATE_FRIDGE;
		rows[i].fate_by_wall_ms = deadlines[i];
		rows[i].fate_done_wall_ms = i == 4 ? 1 : 0;
		rows[i].state = i == 4 ? JAR_BROKEN : JAR_UNSEALED;
		KIT_OK(&kit, log_put_jar(kit.log, &rows[i], &kit.fault));
	}
	act_commit();
	free(rows);
	KIT_OK(&kit, log_jars_with_open_fate(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(rows[0].place_in_load, 4);
	ck_assert_int_eq(rows[1].place_in_load, 2);
	ck_assert_int_eq(rows[2].place_in_load, 3); /* no deadline: last */
	free(rows);
	KIT_OK(&kit, log_jars_made_between(kit.log, KIT_MORNING_MS, KIT_MORNING_MS + 1, &made, &kit.fault));
	ck_assert_int_eq(made, 4);
	KIT_OK(&kit, log_jars_made_between(kit.log, 0, KIT_MORNING_MS, &made, &kit.fault));
	ck_assert_int_eq(made, 0);
}
END_TEST

START_TEST(lot_numbers_go_on_where_they_stopped)
{
	static const char *const codes[] = { "2026-09-14-B2",  "2026-09-14-B10", "2026-09-14-B3R1",
		                             "2026-09-13-B77", "2026-09-14",     "x2026-09-14-B99" };
	int number = 0;
	KIT_OK(&kit, log_next_lot_number(kit.log, "2026-09-14-B", &number, &kit.fault));
	ck_assert_int_eq(number, 1);
	act_begin();
	for (int i = 0; i < 6; i++) {
		struct log_lot lot = { .pack = "hot" };
		COPY(lot.code, codes[i]);
		KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	}
	act_commit();
	KIT_OK(&kit, log_next_lot_number(kit.log, "2026-09-14-B", &number, &kit.fault));
	ck_assert_int_eq(number, 11);
	KIT_OK(&kit, log_next_lot_number(kit.log, "2026-09-14", &number, &kit.fault));
	ck_assert_int_eq(number, 11);
	KIT_OK(&kit, log_next_lot_number(kit.log, "2026-09-1_", &number, &kit.fault));
	ck_assert_int_eq(number, 1);
}
END_TEST

START_TEST(a_text_too_long_for_its_field_is_cut_at_a_letter)
{
	struct log_station station;
	kit_close(&kit);
	kit_sql(kit.path, "UPDATE station SET name = replace(hex(zeroblob(100)), '0', 'ü')");
	kit_open(&kit, LOG_WRITE);
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	ck_assert_uint_eq(strlen(station.name), NAME_MAX_BYTES - 2);
	ck_assert_str_eq(station.name + NAME_MAX_BYTES - 4, "ü");
}
END_TEST

START_TEST(a_field_without_its_zero_is_not_read_past_its_end)
{
	struct log_station station = { .digit = 3 };
	struct log_station out;
	memset(station.name, 'n', sizeof(station.name));
	act_begin();
	KIT_OK(&kit, log_put_station(kit.log, &station, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_station_get(kit.log, station.id, &out, &kit.fault));
	ck_assert_uint_eq(strlen(out.name), NAME_MAX_BYTES - 1);
}
END_TEST

START_TEST(a_number_no_version_writes_is_damage)
{
	struct log_lid_box box = { .label = "box", .lids = 5 };
	struct log_load load = { .station_id = 1,
		                 .minutes = 10,
		                 .pressure_psi = NO_PRESSURE,
		                 .headspace_thou = 250,
		                 .elevation = { .known = true } };
	act_begin();
	KIT_OK(&kit, log_put_lid_box(kit.log, &box, &kit.fault));
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	act_commit();
	kit_sql(kit.path, "UPDATE load SET minutes = 99999999999");
	ck_assert(!log_load_get(kit.log, load.id, &load, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
	kit_sql(kit.path, "PRAGMA ignore_check_constraints = 1; UPDATE load SET minutes = 10, "
	                  "method = 'splendid'");
	ck_assert(!log_load_get(kit.log, load.id, &load, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
	KIT_OK(&kit, log_lid_box_get(kit.log, box.id, &box, &kit.fault));
}
END_TEST

START_TEST(a_missing_row_is_missing)
{
	struct log_station station;
	struct log_lid_box box;
	struct log_lot lot;
	struct log_load load;
	struct log_jar jar;
	ck_assert(!log_station_get(kit.log, 404, &station, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	ck_assert(!log_lid_box_get(kit.log, 404, &box, NULL));
	ck_assert(!log_lot_get(kit.log, 404, &lot, NULL));
	ck_assert(!log_load_get(kit.log, 404, &load, NULL));
	ck_assert(!log_jar_get(kit.log, 404, &jar, NULL));
	station = (struct log_station){ .id = 404, .digit = 4, .name = "x" };
	act_begin();
	ck_assert(!log_put_station(kit.log, &station, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	log_abandon(kit.log);
}
END_TEST

/* The words are those of the CHECK lists: each is accepted by the schema. */
START_TEST(every_word_of_every_enum_is_stored)
{
	struct log_entry entry = kit_entry("Load", 0, 0);
	struct log_load load;
	struct log_load load_out;
	struct log_phase phase;
	struct log_jar *jars;
	size_t count;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "2026-09-14-B1", 1, &entry, &kit.fault));
	KIT_OK(&kit, log_load_get(kit.log, entry.work_id, &load, &kit.fault));
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(entry.work_id), &phase, &kit.fault));
	KIT_OK(&kit, log_jars(kit.log, entry.work_id, &jars, &count, &kit.fault));
	act_begin();
	for (int i = 0; i < 5; i++) {
		load.method = (enum method)(i % METHOD_COUNT);
		load.place = (enum load_place)(i % PLACE_COUNT);
		KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
		KIT_OK(&kit, kit_judge(kit.log, load.id, (enum verdict)(i % VERDICT_COUNT), "", &kit.fault));
		KIT_OK(&kit, log_load_get(kit.log, load.id, &load_out, &kit.fault));
		ck_assert_int_eq(load_out.method, load.method);
		ck_assert_int_eq(load_out.place, load.place);
		ck_assert_int_eq(load_out.verdict, i % VERDICT_COUNT);
		phase.ended_why = (enum phase_end)(i % PHASE_END_COUNT);
		KIT_OK(&kit, log_put_phase(kit.log, &phase, &kit.fault));
		KIT_OK(&kit, log_phase_running(kit.log, kit_load(load.id), &phase, &kit.fault));
		ck_assert_int_eq(phase.ended_why, i % PHASE_END_COUNT);
		jars[0].state = (enum jar_state)(i % JAR_STATE_COUNT);
		jars[0].siphoning = (enum siphoning)(i % SIPHON_COUNT);
		jars[0].fate = (enum jar_fate)(i % FATE_COUNT);
		KIT_OK(&kit, log_put_jar(kit.log, &jars[0], &kit.fault));
		KIT_OK(&kit, log_jar_get(kit.log, jars[0].id, &jars[0], &kit.fault));
		ck_assert_int_eq(jars[0].state, i % JAR_STATE_COUNT);
		ck_assert_int_eq(jars[0].siphoning, i % SIPHON_COUNT);
		ck_assert_int_eq(jars[0].fate, i % FATE_COUNT);
	}
	act_commit();
	free(jars);
}
END_TEST

START_TEST(a_word_out_of_range_is_a_question_mark)
{
	ck_assert_str_eq(load_place_name(PLACE_COUNT), "?");
	ck_assert_str_eq(verdict_name((enum verdict)99), "?");
	ck_assert_str_eq(jar_state_name(JAR_STATE_COUNT), "?");
	ck_assert_str_eq(siphoning_name(SIPHON_COUNT), "?");
	ck_assert_str_eq(jar_fate_name(FATE_COUNT), "?");
	ck_assert_str_eq(verdict_name(VERDICT_NOT_VALID), "not_valid");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("rows", .begin = begin, .end = end),
	EACH(the_house_comes_back, 0, HOSTILE_COUNT),
	TEST(a_new_house_knows_nothing),
	TEST(elevation_zero_is_not_unknown),
	EACH(a_canner_comes_back, 0, HOSTILE_COUNT),
	TEST(the_capacities_of_a_canner_are_replaced),
	TEST(canners_are_listed_by_digit_without_the_retired),
	EACH(a_lid_box_comes_back_and_counts_its_lids, 0, HOSTILE_COUNT),
	TEST(retired_lid_boxes_are_not_listed),
	EACH(a_lot_comes_back, 0, HOSTILE_COUNT),
	EACH(a_load_comes_back, 0, HOSTILE_COUNT),
	TEST(loads_are_found_by_place_and_by_time),
	EACH(a_phase_comes_back, 0, HOSTILE_COUNT),
	TEST(a_load_without_a_running_phase_says_so),
	TEST(a_jar_comes_back),
	TEST(open_fates_come_by_deadline_and_broken_jars_do_not_count),
	TEST(lot_numbers_go_on_where_they_stopped),
	TEST(a_text_too_long_for_its_field_is_cut_at_a_letter),
	TEST(a_field_without_its_zero_is_not_read_past_its_end),
	TEST(a_number_no_version_writes_is_damage),
	TEST(a_missing_row_is_missing),
	TEST(every_word_of_every_enum_is_stored),
	TEST(a_word_out_of_range_is_a_question_mark),
};

TESTS("log rows", listed)
