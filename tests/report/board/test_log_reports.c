/*
 * Reports of a log: loads, jars and warnings of an invented kitchen on a fast
 * practice clock, with names that try to break out.
 */
#include <check.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "kitchen/house/new_log.h"
#include "kitchen/step/step.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "report/cli/arguments.h"
#include "report/command/commands.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define SPEED 60
#define BETWEEN_PRESSES_US (40 * 1000) /* 2.4 s of practice time: more than PRESS_AGAIN_MS */
#define HOSTILE "grape \"jelly\"\033[2J\377"

static struct log_kit kit;
static struct day *day;
static struct fault fault;

static void ck_done(bool done)
{
	ck_assert_msg(done, "%s", fault.sentence);
}

static void open_day_again(void)
{
	day_close(day);
	day = NULL;
	ck_done(day_open(kit.path, LOG_CREATE, &day, &fault));
}

static void set_up(void)
{
	struct log_station canner = { .digit = 1, .kind = STATION_BOILING_WATER, .name = "Big kettle" };
	struct log_lid_box box = { .label = "Box A", .lids = 60 };
	struct kitchen *kitchen;

	kit_init(&kit);
	day = NULL;
	open_day_again();
	ck_done(kitchen_set_practice(day_kitchen(day), SPEED, &fault));
	open_day_again();
	kitchen = day_kitchen(day);
	ck_done(kitchen_set_elevation(kitchen, "4650ft", &fault));
	canner.capacity[jar_size_index(jar_size_named("half_pint"))] = 9;
	ck_done(kitchen_put_station(kitchen, &canner, &fault));
	ck_done(kitchen_put_lid_box(kitchen, &box, &fault));
}

static void tear_down(void)
{
	day_close(day);
	kit_clear(&kit);
}

static int64_t start_load(const char *product)
{
	struct load_order order = {
		.station_id = kitchen_board(day_kitchen(day))->strips[0].station.id,
		.food = "jam or jelly with added pectin",
		.pack = "hot_unsterile_jar",
		.jar = "half_pint",
		.jars = 3,
		.pressure_psi = NO_PRESSURE,
		.lid_box_id = 1,
		.acid = ACID_AS_PRINTED,
	};
	int64_t load_id = 0;

	(void)snprintf(order.product, sizeof(order.product), "%s", product);
	ck_done(kitchen_start_load(day_kitchen(day), &order, &load_id, &fault));
	return load_id;
}

static int64_t running_phase(int64_t load_id)
{
	const struct strip *strip = &kitchen_board(day_kitchen(day))->strips[0];

	ck_assert_int_eq(strip_load(strip)->row.id, load_id);
	return strip->phase.id;
}

static void step(int64_t load_id)
{
	(void)usleep(BETWEEN_PRESSES_US);
	ck_done(kitchen_step(day_kitchen(day), running_phase(load_id), true, &fault));
}

static char *report(bool json, const char *word, struct arguments arguments)
{
	struct report to = { .json = json };
	char *written;
	size_t size;

	to.out = open_memstream(&written, &size);
	ck_assert_ptr_nonnull(to.out);
	ck_done(command_named(commands, word)->run(&arguments, day, &to, &fault));
	ck_assert_int_eq(fclose(to.out), 0);
	return written;
}

static void ck_holds(const char *written, const char *part)
{
	ck_assert_msg(strstr(written, part) != NULL, "no %s in: %s", part, written);
}

static void ck_free_of(const char *written, const char *part)
{
	ck_assert_msg(strstr(written, part) == NULL, "%s in: %s", part, written);
}

START_TEST(an_empty_log_gives_empty_lists)
{
	char *json = report(true, "loads", (struct arguments){ .given[OPTION_ALL] = true });
	char *text = report(false, "jars", (struct arguments){ .given[OPTION_ALL] = true });

	ck_holds(json, "\"practice_speed\": 60,\n");
	ck_holds(json, "\"loads\": []\n");
	ck_assert_str_eq(text, "There are no such jars.\n");
	free(json);
	free(text);
}
END_TEST

/* 15 min: common practice, no source (schema/process_fruit_tomato_jam.csv). */
START_TEST(a_load_in_its_hold_tells_what_is_left)
{
	int64_t load = start_load("grape jelly");
	const char *left;
	char *json;
	long seconds;

	step(load); /* heat on */
	step(load); /* full rolling boil */
	json = report(true, "loads", (struct arguments){ 0 });
	ck_holds(json, "{\"id\": 1, \"lot\": ");
	ck_holds(json, "\"product\": \"grape jelly\", \"food\": \"jam or jelly with added pectin\"");
	ck_holds(json, "\"station\": \"Big kettle\", \"method\": \"boiling_water\", \"place\": \"canner\"");
	ck_holds(json, "\"phase\": \"hold\", \"phase_began\": \"2");
	ck_holds(json, "\"hold_starts\": 1, ");
	ck_holds(json, "\"pressure_psi\": null, \"jars\": 3, \"verdict\": \"open\"");
	ck_holds(json, "\"elevation_m\": 1417.3}");
	left = strstr(json, "\"seconds_left\": ");
	ck_assert_ptr_nonnull(left);
	seconds = strtol(left + strlen("\"seconds_left\": "), NULL, 10);
	ck_assert_int_le(seconds, 15L * 60);
	ck_assert_int_gt(seconds, 0);
	free(json);
}
END_TEST

START_TEST(a_phase_without_a_clock_has_no_seconds)
{
	char *json;

	start_load("grape jelly");
	json = report(true, "loads", (struct arguments){ 0 });
	ck_holds(json, "\"phase\": \"loaded\"");
	ck_holds(json, "\"seconds_left\": null");
	free(json);
}
END_TEST

START_TEST(a_lost_boil_shows_as_a_second_start)
{
	int64_t load = start_load("grape jelly");
	char *json;
	char *text;

	step(load);
	step(load);
	(void)usleep(BETWEEN_PRESSES_US);
	ck_done(kitchen_lost(day_kitchen(day), running_phase(load), &fault));
	step(load);
	json = report(true, "loads", (struct arguments){ 0 });
	text = report(false, "loads", (struct arguments){ 0 });
	ck_holds(json, "\"hold_starts\": 2, ");
	ck_holds(text, ", hold started 2 times\n");
	free(json);
	free(text);
}
END_TEST

START_TEST(hostile_names_stay_names)
{
	char *json;
	char *text;

	start_load(HOSTILE);
	json = report(true, "loads", (struct arguments){ 0 });
	text = report(false, "loads", (struct arguments){ 0 });
	ck_holds(json, "\"product\": \"grape \\\"jelly\\\"\\u001b[2J\357\277\275\"");
	ck_free_of(json, "\033");
	ck_holds(text, "grape \"jelly\"?[2J?\n");
	ck_free_of(text, "\033");
	free(json);
	free(text);
}
END_TEST

START_TEST(every_jar_is_told_with_its_lids)
{
	char *json;
	char *text;

	start_load("grape jelly");
	json = report(true, "jars", (struct arguments){ 0 });
	text = report(false, "jars", (struct arguments){ 0 });
	ck_holds(json,
	         "\"place\": 3, \"size\": \"half_pint\", \"state\": \"unchecked\", "
	         "\"siphoning\": \"none\", \"fate\": \"none\", \"fate_by\": null, "
	         "\"fate_done\": null, \"press\": null, \"tap\": null, \"eye\": null, "
	         "\"checked\": null, \"checked_by\": \"\", \"gone\": null, \"gone_at\": null, \"lid_box\": \"Box A\", "
	         "\"verdict\": \"open\", \"reasons\": [\"practice\"]}\n");
	ck_free_of(json, "\"place\": 4,");
	ck_holds(text, ", jar 1: half_pint, unchecked; lids Box A\n");
	free(json);
	free(text);
}
END_TEST

/* Two batches that shared a canner: each jar under its own code. */
START_TEST(a_load_of_two_lots_tells_both)
{
	struct log_entry entry = { .verb = "test", .said = "[\"Another lot\"]" };
	struct log *log = day_log(day);
	struct log_jar *jars;
	struct log_lot lot;
	size_t count;
	char *json;
	char *text;

	start_load("grape jelly");
	ck_done(log_jars(log, 1, &jars, &count, &fault));
	ck_done(log_lot_get(log, jars[0].lot_id, &lot, &fault));
	ck_done(log_begin(log, &fault));
	lot.id = 0;
	(void)snprintf(lot.code, sizeof(lot.code), "P9");
	(void)snprintf(lot.product, sizeof(lot.product), "plum jam");
	ck_done(log_put_lot(log, &lot, &fault));
	jars[1].lot_id = lot.id;
	ck_done(log_put_jar(log, &jars[1], &fault));
	ck_done(log_commit(log, &entry, &fault));
	free(jars);
	json = report(true, "loads", (struct arguments){ .given[OPTION_ALL] = true });
	ck_holds(json, "\"id\": 1, \"lot\": null, \"product\": null, ");
	ck_holds(json, "\"product\": \"grape jelly\", \"food\": \"jam or jelly with added pectin\", \"pack\": "
	               "\"hot_unsterile_jar\", \"jars\": 2}, {\"lot\": \"P9\", \"product\": \"plum jam\", ");
	ck_holds(json, "\"jars\": 1}], ");
	ck_holds(json, "\"reasons\": [\"practice\"], \"gate\": 2, ");
	text = report(false, "loads", (struct arguments){ .given[OPTION_ALL] = true });
	ck_holds(text, ": 2 half-pints grape jelly; lot P9: 1 half-pint plum jam\n");
	free(text);
	free(json);
	text = report(false, "jars", (struct arguments){ .given[OPTION_ALL] = true });
	ck_holds(text, "load 1, lot P9, jar 2: ");
	ck_free_of(text, "lot P9, jar 1: ");
	ck_free_of(text, "lot P9, jar 3: ");
	free(text);
	json = report(true, "jars", (struct arguments){ .given[OPTION_ALL] = true });
	ck_holds(json, "\"lot\": \"P9\", \"place\": 2, ");
	free(json);
}
END_TEST

START_TEST(warnings_carry_their_source)
{
	char *json;

	start_load("grape jelly");
	open_day_again();
	json = report(true, "warnings", (struct arguments){ 0 });
	ck_holds(json, "{\"id\": \"practice-row\", \"severity\": \"note\", \"station\": \"Big kettle\", "
	               "\"load\": 1, \"sentence\": \"");
	ck_holds(json, "\"source\": \"common practice, no source\"");
	free(json);
}
END_TEST

START_TEST(open_loads_are_told_whatever_the_date)
{
	char *json;

	start_load("grape jelly");
	json = report(true, "loads", (struct arguments){ .value[OPTION_SINCE] = "2999-01-01" });
	ck_holds(json, "\"id\": 1,");
	free(json);
}
END_TEST

START_TEST(a_wrong_choice_is_misuse)
{
	const struct arguments wrong[] = {
		{ .value[OPTION_SINCE] = "yesterday" },
		{ .given[OPTION_ALL] = true, .value[OPTION_SINCE] = "2026-09-14" },
	};
	struct report to = { .out = stdout };

	for (size_t i = 0; i < 2; i++) {
		ck_assert(!command_named(commands, "loads")->run(&wrong[i], day, &to, &fault));
		ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	}
}
END_TEST

/* --- new logs -------------------------------------------------------------------------- */

START_TEST(practice_takes_over_the_kitchen_but_not_its_work)
{
	char scratch[500];
	struct new_log_order order = { .path = scratch, .copy_from = kit.path, .practice_speed = 7 };
	struct log_lid_box *boxes;
	struct day *copy;
	size_t count;

	start_load("grape jelly");
	(void)snprintf(scratch, sizeof(scratch), "%s/deep/scratch.db", kit.folder);
	ck_done(new_log_make(&order, &fault));
	ck_done(day_open(scratch, LOG_LOOK, &copy, &fault));
	ck_assert_int_eq(kitchen_board(day_kitchen(copy))->house.practice_speed, 7);
	ck_assert(kitchen_board(day_kitchen(copy))->house.elevation.um == 4650 * FOOT_UM);
	ck_assert_uint_eq(kitchen_board(day_kitchen(copy))->stations, 1);
	ck_assert(!strip_has_load(&kitchen_board(day_kitchen(copy))->strips[0]));
	ck_done(log_lid_boxes(day_log(copy), &boxes, &count, &fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(boxes[0].lids, 57); /* three are on jars */
	free(boxes);
	day_close(copy);
	ck_assert(!new_log_make(&order, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
}
END_TEST

START_TEST(a_log_that_cannot_be_filled_is_not_left_behind)
{
	char path[500];
	char none[500];
	struct new_log_order order = { .path = path, .copy_from = none };

	(void)snprintf(path, sizeof(path), "%s/new.db", kit.folder);
	(void)snprintf(none, sizeof(none), "%s/none.db", kit.folder);
	ck_assert(!new_log_make(&order, &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISSING);
	ck_assert(access(path, F_OK) != 0);
}
END_TEST

START_TEST(a_missing_log_with_backups_is_not_made_anew)
{
	char path[500];
	char backups[520];
	struct new_log_order order = { .path = path };

	(void)snprintf(path, sizeof(path), "%s/lost.db", kit.folder);
	(void)snprintf(backups, sizeof(backups), "%s.backups", path);
	kit_write_file(backups, "", 0);
	ck_assert(!new_log_make(&order, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("reports", .begin = set_up, .end = tear_down, .seconds = 30),
	TEST(an_empty_log_gives_empty_lists),
	TEST(a_load_in_its_hold_tells_what_is_left),
	TEST(a_phase_without_a_clock_has_no_seconds),
	TEST(a_lost_boil_shows_as_a_second_start),
	TEST(hostile_names_stay_names),
	TEST(every_jar_is_told_with_its_lids),
	TEST(a_load_of_two_lots_tells_both),
	TEST(warnings_carry_their_source),
	TEST(open_loads_are_told_whatever_the_date),
	TEST(a_wrong_choice_is_misuse),
	TEST(practice_takes_over_the_kitchen_but_not_its_work),
	TEST(a_log_that_cannot_be_filled_is_not_left_behind),
	TEST(a_missing_log_with_backups_is_not_made_anew),
};

TESTS("log reports", listed)
