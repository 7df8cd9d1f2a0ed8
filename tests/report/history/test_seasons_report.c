/* Reports of the seasons, over names that try to break out. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/file/open_day.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/dryer.h"
#include "report/cli/arguments.h"
#include "report/command/commands.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define HOSTILE "pears \"wild\"\n\033]0;x\007\302\233\342\200\256 \377"

static struct log_kit kit;
static struct day *day;

static void put_load(const char *product, int number, int64_t wall_ms, int failed)
{
	struct log_lot lot = {
		.food = "pears halved", .pack = "hot", .acidity = ACIDITY_ACID, .made_wall_ms = wall_ms
	};
	struct log_load load = { .station_id = 1,
		                 .place = PLACE_SHELF,
		                 .minutes = 20,
		                 .pressure_psi = NO_PRESSURE,
		                 .headspace_thou = 500,
		                 .jar_in_table = "pint",
		                 .source = "invented",
		                 .elevation = { .known = true },
		                 .process_ended_wall_ms = wall_ms,
		                 .opened_wall_ms = wall_ms };
	struct log_entry entry = kit_entry("put", 1, 0);

	(void)snprintf(lot.product, sizeof(lot.product), "%s", product);
	(void)snprintf(lot.code, sizeof(lot.code), "2026-09-14-B%d", number);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	KIT_OK(&kit, kit_judge(kit.log, load.id, VERDICT_VALID, "", &kit.fault));
	for (int place = 1; place <= 9; place++) {
		struct log_jar jar = { .load_id = load.id,
			               .lot_id = lot.id,
			               .place_in_load = place,
			               .size = "pint",
			               .state = place <= failed ? JAR_UNSEALED : JAR_SEALED,
			               .checked_wall_ms = wall_ms };

		(void)snprintf(jar.closed_by, sizeof(jar.closed_by), "%s", "A\033[2JB");
		KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	}
	entry.work_id = load.id;
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
}

static void put_drying(const char *product, int64_t fruit_mg, int64_t puree_ul, int packages)
{
	struct log_lot lot = {
		.pack = "fruit", .code = "2026-09-14-B9", .acidity = ACIDITY_ACID, .made_wall_ms = KIT_MORNING_MS
	};
	struct log_drying drying = { .station_id = 1,
		                     .class = DRYING_FRUIT,
		                     .fruit_mg = fruit_mg,
		                     .puree_ul = puree_ul,
		                     .trays = 2,
		                     .low_ms = 1,
		                     .high_ms = 1,
		                     .packages = packages,
		                     .opened_wall_ms = KIT_MORNING_MS };
	struct log_entry entry = kit_entry("put", 1, 0);

	(void)snprintf(lot.product, sizeof(lot.product), "%s", product);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	drying.lot_id = lot.id;
	KIT_OK(&kit, log_put_drying(kit.log, &drying, &kit.fault));
	entry.work_id = drying.id;
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
}

static void begin(void)
{
	struct fault fault;

	kit_start(&kit);
	put_load(HOSTILE, 1, KIT_MORNING_MS, 2);
	put_load("grape jelly", 2, KIT_MORNING_MS + KIT_DAY_MS, 0);
	put_load("grape jelly", 3, KIT_MORNING_MS - 400 * KIT_DAY_MS, 1);
	put_drying("plum leather", 0, 709765, 6);
	kit_close(&kit);
	ck_assert(day_open(kit.path, LOG_LOOK, &day, &fault));
}

static void end(void)
{
	day_close(day);
	kit_clear(&kit);
}

static char *written_season(bool json, int year)
{
	char words[8];
	struct arguments arguments = { .operand = words };
	struct report to = { .json = json };
	char *text;
	size_t size;

	to.out = open_memstream(&text, &size);
	ck_assert_ptr_nonnull(to.out);
	(void)snprintf(words, sizeof(words), "%d", year);
	ck_assert_msg(command_named(commands, year == 0 ? "seasons" : "season")->run(&arguments, day, &to, &kit.fault),
	              "%s", kit.fault.sentence);
	ck_assert_int_eq(fclose(to.out), 0);
	return text;
}

static void holds(const char *text, const char *part)
{
	ck_assert_msg(strstr(text, part) != NULL, "no %s in: %s", part, text);
}

START_TEST(the_years_stand_beside_one_another)
{
	char *text = written_season(false, 0);
	char *json = written_season(true, 0);

	/* Clopper-Pearson, 2 of 18 and 1 of 9: the fewer, the wider */
	holds(text, "2026           18       2   11.1% (1.4-34.7)");
	holds(text, "2025            9       1   11.1% (0.3-48.2)");
	holds(text, "By year: lids that did not seal\n");
	holds(text, "### 11.1% (0.3-48.2)\n");
	holds(text, "By year: jars\n  2025                   ###############                9\n"
	            "  2026                   ############################## 18\n");
	holds(json, "{\"season\": 2026, \"jars\": 18, \"broken\": 0, \"loads\": 2,");
	holds(json, "\"lids_looked\": 18, \"lids_failed\": 2");
	holds(json, "\"lids_failed_low\": 0.0");
	holds(json, "\"lids_failed_high\": 0.34");
	holds(json, "\"busiest_station\": null, \"busiest_min\": 0");
	holds(json, "\"juice_l_per_kg\": null");
	free(text);
	free(json);
}
END_TEST

START_TEST(a_year_tells_rates_with_how_sure_they_are)
{
	char *text = written_season(false, 2026);
	char *json = written_season(true, 2026);

	holds(text, "18 jars in 2 loads");
	/* Clopper-Pearson, 2 of 18: 1.4 to 34.7 %, as engine/stats/interval.h has it */
	holds(text, "11.1% (1.4-34.7) 2 of 18");
	holds(text, "Lids not sealed, by product");
	holds(json, "\"by_canner\": [\n");
	holds(json, "\"lids_looked\": 18, \"lids_failed\": 2, \"share\": 0.11");
	holds(json, "\"stations\": [");
	free(text);
	free(json);
}
END_TEST

START_TEST(what_was_dried_is_told_of_the_years_and_of_one)
{
	char *years = written_season(false, 0);
	char *all = written_season(true, 0);
	char *text = written_season(false, 2026);
	char *json = written_season(true, 2026);

	holds(years, "By year: packages of dried food\n"
	             "  2025                                                  -\n"
	             "  2026                   ############################## 6\n");
	holds(all, "\"dryings\": 1, \"packages\": 6, \"dried_fruit_kg\": 0, \"dried_puree_l\": 0.71, "
	           "\"dried_min\": 0,");
	holds(text, "  6 packages of dried food from 1 drying\n");
	holds(text, "\nPackages of dried food, by product\n"
	            "  plum leather           ############################## 6 of 3 cups puree in 1 drying\n");
	holds(json, "\"dried\": [\n");
	holds(json, "{\"product\": \"plum leather\", \"dryings\": 1, \"packages\": 6, \"fruit_kg\": 0, "
	            "\"puree_l\": 0.71, \"dried_min\": 0}");
	free(years);
	free(all);
	free(text);
	free(json);
}
END_TEST

/* Nothing that was typed reaches the terminal as an order to it, nor as a line of its own. */
START_TEST(hostile_names_stay_names)
{
	for (int json = 0; json <= 1; json++) {
		char *text = written_season(json == 1, 2026);

		for (const char *at = text; *at != '\0'; at++)
			ck_assert_msg((unsigned char)*at >= 0x20 || *at == '\n' || (json == 1 && *at == '\t'),
			              "byte %d in: %s", *at, text);
		ck_assert_ptr_null(strstr(text, "\302\233"));
		ck_assert_ptr_null(strstr(text, "\377"));
		if (json == 0) {
			ck_assert_ptr_null(strstr(text, "\342\200\256"));
			holds(text, "pears \"wild\"?");
			holds(text, "A?[2JB");
		} else {
			holds(text, "pears \\\"wild\\\"\\u000a\\u001b]0;x\\u0007");
		}
		free(text);
	}
}
END_TEST

START_TEST(a_year_without_work_is_said)
{
	struct report to = { .out = stdout };

	ck_assert(
	    !command_named(commands, "season")->run(&(struct arguments){ .operand = "1999" }, day, &to, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	ck_assert_str_eq(kit.fault.sentence, "Nothing was made in 1999.");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("seasons", .begin = begin, .end = end),
	TEST(the_years_stand_beside_one_another),
	TEST(what_was_dried_is_told_of_the_years_and_of_one),
	TEST(a_year_tells_rates_with_how_sure_they_are),
	TEST(hostile_names_stay_names),
	TEST(a_year_without_work_is_said),
};

TESTS("seasons report", listed)
