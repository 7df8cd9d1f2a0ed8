/* The rules of the look-up: edges, jars, pressures, and each refusal with the
 * words that help. tests/engine/process/test_process_tables.c goes through every row,
 * test_unconfirmed.c through rows that are never offered. */
#include <check.h>
#include <string.h>

#include "base/text.h"
#include "engine/process/pack.h"
#include "engine/process/process.h"
#include "support/fault_word.h"
#include "support/tests.h"

static struct elevation at(const char *words)
{
	struct elevation elevation;
	struct fault fault = { 0 };

	ck_assert_msg(elevation_read(words, &elevation, &fault), "%s", fault.sentence);
	return elevation;
}

static struct process_query ask(const char *food, const char *pack, const char *jar, enum method method,
                                const char *place)
{
	return (struct process_query){
		.food = food,
		.pack = pack,
		.jar = jar,
		.method = method,
		.elevation = at(place),
		.pressure_psi = NO_PRESSURE,
	};
}

static struct process find(const struct process_query *query)
{
	struct process process;
	struct fault fault = { .kind = FAULT_NONE, .sentence = "untouched" };

	ck_assert_msg(process_find(query, &process, &fault), "%s", fault.sentence);
	ck_assert_str_eq(fault.sentence, "untouched");
	return process;
}

static int minutes(const char *food, const char *pack, const char *jar, enum method method, const char *place)
{
	struct process_query query = ask(food, pack, jar, method, place);

	return find(&query).minutes;
}

/* The refusal's sentence holds each of the words. */
static void check_refused(const struct process_query *query, enum fault_kind kind, const char *const *words,
                          size_t count)
{
	struct process process = { .minutes = 7 };
	struct fault fault = { 0 };

	ck_assert(!process_find(query, &process, &fault));
	ck_assert_msg(fault.kind == kind, "%s: %s", fault_word(fault.kind), fault.sentence);
	for (size_t i = 0; i < count; i++)
		ck_assert_msg(strstr(fault.sentence, words[i]) != NULL, "no \"%s\" in: %s", words[i], fault.sentence);
	ck_assert_uint_lt(strlen(fault.sentence), FAULT_SENTENCE_MAX - 1);
	ck_assert_int_eq(process.minutes, 7);
}

#define CHECK_REFUSED(query, ...) \
	check_refused(&(query), FAULT_REFUSED, (const char *const[]){ __VA_ARGS__ }, \
	              sizeof((const char *const[]){ __VA_ARGS__ }) / sizeof(const char *))

/* --- bands ----------------------------------------------------------------- */

START_TEST(the_printed_edge_belongs_to_the_lower_band)
{
	/* Grape juice, pints: 5 min to 1,000 ft, 10 to 6,000, 15 above (AIB 539, page 2-16). */
	static const struct {
		const char *place;
		int minutes;
		bool raised;
	} cases[] = {
		{ "0ft", 5, false },
		{ "1000ft", 5, false },
		{ "1000.4ft", 10, false },
		{ "1001ft", 10, false },
		{ "6000ft", 10, false },
		{ "6000.01ft", 15, false },
		{ "6001ft", 15, false },
		{ "8000ft", 15, false },
		/* 20 min from 8,001 ft (timetable of Utah State University Extension). */
		{ "8000.01ft", 20, false },
		{ "8000ft+-0.1", 20, true },
		{ "10000ft", 20, false },
		{ "9999ft+-1", 20, false },
		/* 304 m is 997 ft, at most 999; 305 m is at least 999.0 and at most 1,002.3. */
		{ "304m", 5, false },
		{ "304.8m", 10, true },
		{ "305m", 10, false },
		{ "1000ft+-0.01", 10, true },
		{ "990ft+-10", 5, false },
		{ "990ft+-10.1", 10, true },
		{ "990ft+-6000", 15, true },
		{ "1001ft+-100", 10, false },
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct process_query query =
		    ask("grape juice", "hot_sterile_jar", "pint", METHOD_BOILING_WATER, cases[i].place);
		struct process process = find(&query);

		ck_assert_msg(process.minutes == cases[i].minutes, "%s: %d min", cases[i].place, process.minutes);
		ck_assert_msg(process.band_raised == cases[i].raised, "%s", cases[i].place);
	}
}
END_TEST

START_TEST(below_sea_level_the_lowest_band_serves)
{
	ck_assert_int_eq(minutes("grape juice", "hot_sterile_jar", "pint", METHOD_BOILING_WATER, "-282ft"), 5);
	ck_assert_int_eq(minutes("green beans (snap and Italian)", "hot", "pint", METHOD_DIAL_GAUGE, "-282ft"), 20);
}
END_TEST

/* Pineapple is not in the timetable that goes on above 8,000 ft, peaches are. */
START_TEST(the_open_band_alone_is_given_with_a_warning_above_8000_feet)
{
	struct process_query query = ask("pineapple", "hot", "pint", METHOD_BOILING_WATER, "8000ft");
	int below = find(&query).minutes;

	ck_assert(!find(&query).above_tables);
	query.elevation = at("8000ft+-1");
	ck_assert(find(&query).above_tables);
	ck_assert_int_eq(find(&query).minutes, below);
	query.method = METHOD_STEAM;
	ck_assert(find(&query).above_tables);
	query.food = "peaches";
	ck_assert(!find(&query).above_tables);
	query.method = METHOD_WEIGHTED_GAUGE;
	ck_assert(!find(&query).above_tables);
}
END_TEST

/* Peaches, hot, pints: 35 min in the guide's top band, 40 in the other table; a jar
 * of 12 oz takes the pint's row in both. */
START_TEST(a_smaller_jar_takes_the_longer_of_both_tables)
{
	struct process_query query = ask("peaches", "hot", "twelve_ounce", METHOD_BOILING_WATER, "8000ft");

	ck_assert_int_eq(find(&query).minutes, 35);
	query.elevation = at("8001ft");
	ck_assert_int_eq(find(&query).minutes, 40);
	ck_assert(find(&query).jar_sized_up);
}
END_TEST

START_TEST(jelly_in_jars_not_boiled_first_is_published_below_1000_feet_only)
{
	/* 10 min: AIB 539, page 1-30; 15 min at 2,500 ft: common practice, no source. */
	struct process_query query =
	    ask("jam or jelly with added pectin", "hot_unsterile_jar", "half_pint", METHOD_BOILING_WATER, "900ft");

	ck_assert_int_eq(find(&query).minutes, 10);
	ck_assert_int_eq(find(&query).row->confirmed, CONFIRMED_YES);
	query.elevation = at("2500ft");
	ck_assert_int_eq(find(&query).minutes, 15);
	ck_assert_int_eq(find(&query).row->confirmed, CONFIRMED_PRACTICE);
}
END_TEST

static bool practice(const char *pack, const char *place)
{
	struct elevation elevation = at(place);

	return process_pack_is_practice("jam or jelly with added pectin", pack, METHOD_BOILING_WATER, &elevation);
}

START_TEST(a_pack_whose_minutes_are_in_no_table_here_is_told_from_the_others)
{
	ck_assert(practice("hot_unsterile_jar", "4650ft"));
	ck_assert(practice("hot_unsterile_jar", "9000ft"));
	ck_assert(!practice("hot_unsterile_jar", "900ft"));
	ck_assert(!practice("hot_sterile_jar", "4650ft"));
	ck_assert(!practice("no such pack", "4650ft"));
}
END_TEST

/* As PACK_IS_PRACTICE says: jars that were not boiled never get less. */
START_TEST(what_is_common_practice_is_longer_than_what_is_published_for_boiled_jars)
{
	size_t seen = 0;

	for (size_t i = 0; i < process_row_count; i++)
		for (size_t n = 0; n < process_row_count; n++) {
			const struct process_row *row = &process_rows[i];
			const struct process_row *boiled = &process_rows[n];

			if (row->confirmed != CONFIRMED_PRACTICE || strcmp(row->pack, "hot_unsterile_jar") != 0 ||
			    strcmp(boiled->pack, "hot_sterile_jar") != 0 || strcmp(row->food, boiled->food) != 0 ||
			    row->jar != boiled->jar || row->alt_min_ft != boiled->alt_min_ft)
				continue;
			ck_assert_int_gt(row->minutes, boiled->minutes);
			seen++;
		}
	ck_assert_uint_gt(seen, 0);
}
END_TEST

/* --- names and jars -------------------------------------------------------- */

START_TEST(names_are_matched_as_people_write_them)
{
	struct process_query query =
	    ask("Jam-or-Jelly with ADDED pectin", "Hot Sterile-Jar", "Half Pint", METHOD_BOILING_WATER, "4650ft");
	struct process process = find(&query);

	ck_assert_str_eq(process.row->food, "jam or jelly with added pectin");
	ck_assert_str_eq(process.jar->name, "half_pint");
	ck_assert_int_eq(process.minutes, 10);
	ck_assert(process.jars_sterile);
	query.pack = "hot_unsterile_jar";
	ck_assert(!find(&query).jars_sterile);
	query.jar = "half-pints";
	ck_assert_str_eq(find(&query).jar->name, "half_pint");
}
END_TEST

START_TEST(a_smaller_jar_takes_the_next_larger_tested_size)
{
	struct process_query query = ask("peaches", "hot", "twelve_ounce", METHOD_BOILING_WATER, "4650ft");
	struct process process = find(&query);

	ck_assert(process.jar_sized_up);
	ck_assert_str_eq(process.jar->name, "twelve_ounce");
	ck_assert_str_eq(process.jar_in_table->name, "pint");
	ck_assert_int_eq(process.minutes, 30); /* USDA AIB 539, peaches hot pints, 3,001-6,000 ft */
	query.jar = "28-ounce jar";
	process = find(&query);
	ck_assert_str_eq(process.jar_in_table->name, "quart");
	query.jar = "pint";
	ck_assert(!find(&query).jar_sized_up);
}
END_TEST

START_TEST(a_jar_larger_than_tested_is_refused)
{
	struct process_query query = ask("peaches", "hot", "half_gallon", METHOD_BOILING_WATER, "4650ft");

	CHECK_REFUSED(query, "half-gallon", "larger than the largest tested (quart)", "quarts");
	query.food = "grape juice";
	ck_assert_str_eq(find(&query).jar_in_table->name, "half_gallon");
}
END_TEST

/* --- pressure -------------------------------------------------------------- */

START_TEST(a_pressure_for_boiling_water_is_misuse)
{
	struct process_query query = ask("peaches", "hot", "quart", METHOD_BOILING_WATER, "unknown");
	const char *const words[] = { "no pressure to choose" };

	query.pressure_psi = 10;
	check_refused(&query, FAULT_MISUSE, words, 1);
	query.method = METHOD_STEAM;
	check_refused(&query, FAULT_MISUSE, words, 1);
	query.method = METHOD_COUNT;
	check_refused(&query, FAULT_MISUSE, (const char *const[]){ "boiling_water" }, 1);
}
END_TEST

START_TEST(without_a_choice_the_longest_hold_is_given)
{
	/* Tomatoes in juice, weighted gauge, to 1,000 ft: 5 psi 40, 10 psi 25, 15 psi 15 min. */
	struct process_query query =
	    ask("tomatoes whole or halved in tomato juice", "hot", "pint", METHOD_WEIGHTED_GAUGE, "500ft");
	struct process process = find(&query);

	ck_assert_int_eq(process.minutes, 40);
	ck_assert_int_eq(process.pressure_psi, 5);
	ck_assert_uint_eq(process.option_count, 2);
	ck_assert_int_eq(process.options[0].minutes, 25);
	ck_assert_int_eq(process.options[0].pressure_psi, 10);
	ck_assert_int_eq(process.options[1].minutes, 15);
	ck_assert_int_eq(process.options[1].pressure_psi, 15);

	query.pressure_psi = 15;
	process = find(&query);
	ck_assert_int_eq(process.minutes, 15);
	ck_assert_int_eq(process.options[0].minutes, 40);
	ck_assert_int_eq(process.options[1].minutes, 25);
}
END_TEST

START_TEST(a_pressure_that_stops_lower_is_not_recommended_here)
{
	struct process_query query =
	    ask("tomatoes whole or halved in tomato juice", "hot", "pint", METHOD_WEIGHTED_GAUGE, "4650ft");

	query.pressure_psi = 5;
	CHECK_REFUSED(query, "5 psi", "not recommended above 1,000 ft", "10 psi for 40 min", "15 psi for 25 min");
	query.elevation = at("1000ft");
	ck_assert_int_eq(find(&query).minutes, 40);
	query.elevation = at("1000ft+-2");
	CHECK_REFUSED(query, "not recommended above 1,000 ft", "perhaps up to 1,002 ft");
}
END_TEST

START_TEST(a_pressure_that_is_not_offered_lists_what_is)
{
	struct process_query query = ask("green beans (snap and Italian)", "hot", "pint", METHOD_DIAL_GAUGE, "4650ft");

	query.pressure_psi = 14; /* belongs to the next band */
	CHECK_REFUSED(query, "14 psi", "not in the table", "13 psi for 20 min");
	query.pressure_psi = 11;
	CHECK_REFUSED(query, "not recommended above 2,000 ft", "13 psi for 20 min");
	query.pressure_psi = 0;
	CHECK_REFUSED(query, "0 psi", "13 psi for 20 min");
}
END_TEST

/* --- refusals -------------------------------------------------------------- */

START_TEST(an_unknown_elevation_gives_no_process)
{
	struct process_query query = ask("peaches", "hot", "quart", METHOD_BOILING_WATER, "unknown");

	CHECK_REFUSED(query, "elevation", "not known");
}
END_TEST

START_TEST(an_unknown_food_is_refused_with_near_names)
{
	struct process_query query = ask("crab apple jelly", "hot", "pint", METHOD_BOILING_WATER, "4650ft");
	char endless[1000];

	CHECK_REFUSED(query, "no published process is on file for \"crab apple jelly\"", "spiced crab apples",
	              "county extension office");
	query.food = "peach";
	CHECK_REFUSED(query, "peaches");
	query.food = "tomato";
	CHECK_REFUSED(query, "tomatoes crushed");
	query.food = "zzz";
	CHECK_REFUSED(query, "\"zzz\"", "county extension office");
	query.food = "";
	CHECK_REFUSED(query, "no published process");
	query.food = NULL;
	CHECK_REFUSED(query, "no published process");
	memset(endless, 'x', sizeof(endless) - 1);
	endless[sizeof(endless) - 1] = '\0';
	query.food = endless;
	CHECK_REFUSED(query, "county extension office");
}
END_TEST

START_TEST(low_acid_food_is_pressure_canned)
{
	struct process_query query =
	    ask("green beans (snap and Italian)", "nonsense", "nonsense", METHOD_BOILING_WATER, "4650ft");

	CHECK_REFUSED(query, "low-acid", "pressure canned");
	query.method = METHOD_STEAM;
	CHECK_REFUSED(query, "low-acid", "pressure canned");
}
END_TEST

START_TEST(no_low_acid_food_gets_time_outside_a_pressure_canner)
{
	for (size_t i = 0; i < process_row_count; i++) {
		const struct process_row *row = &process_rows[i];
		struct process_query query =
		    ask(row->food, row->pack, jar_sizes[row->jar].name, METHOD_BOILING_WATER, "0ft");

		if (row->acidity != ACIDITY_LOW_ACID)
			continue;
		CHECK_REFUSED(query, "pressure canned");
		query.method = METHOD_STEAM;
		CHECK_REFUSED(query, "pressure canned");
	}
}
END_TEST

START_TEST(an_unknown_pack_lists_the_packs_there_are)
{
	struct process_query query = ask("pears halved", "raw", "quart", METHOD_BOILING_WATER, "4650ft");

	CHECK_REFUSED(query, "pears halved", "\"raw\"", "there are: hot");
	query.food = "tomatoes whole or halved in water";
	query.pack = "boiled";
	query.method = METHOD_DIAL_GAUGE;
	CHECK_REFUSED(query, "there are: hot, raw");
}
END_TEST

START_TEST(an_unknown_jar_lists_the_sizes)
{
	struct process_query query = ask("pears halved", "hot", "bucket", METHOD_BOILING_WATER, "4650ft");

	CHECK_REFUSED(query, "\"bucket\"", "half-pint", "quart");
	query.jar = NULL;
	CHECK_REFUSED(query, "half-pint");
}
END_TEST

START_TEST(a_method_without_a_table_lists_those_with_one)
{
	struct process_query query = ask("grape juice", "hot", "quart", METHOD_DIAL_GAUGE, "4650ft");

	CHECK_REFUSED(query, "grape juice", "dial-gauge pressure canner", "boiling-water canner", "steam canner");
	query.food = "pineapple";
	query.method = METHOD_WEIGHTED_GAUGE;
	CHECK_REFUSED(query, "boiling-water canner");
}
END_TEST

START_TEST(above_the_last_dial_gauge_band_there_is_no_process)
{
	struct process_query query = ask("green beans (snap and Italian)", "hot", "pint", METHOD_DIAL_GAUGE, "8000ft");

	ck_assert_int_eq(find(&query).pressure_psi, 14);
	query.elevation = at("8001ft");
	CHECK_REFUSED(query, "last printed band ends at 8,000 ft", "8,001 ft", "extension office", "process authority");
	query.elevation = at("8000ft+-1");
	CHECK_REFUSED(query, "last printed band ends at 8,000 ft", "perhaps up to 8,001 ft");
	query.method = METHOD_WEIGHTED_GAUGE;
	ck_assert_int_eq(find(&query).pressure_psi, 15);
	query.elevation = at("10000ft");
	ck_assert_int_eq(find(&query).pressure_psi, 15);
	query.elevation = at("10001ft");
	CHECK_REFUSED(query, "above 10,000 ft", "15 psi no longer reaches 240 F", "10,001 ft", "extension office");
	query.pressure_psi = 15;
	CHECK_REFUSED(query, "above 10,000 ft", "10,001 ft");
	query.pressure_psi = NO_PRESSURE;
	query.elevation = at("3048m"); /* 10,000 ft, but read to the metre */
	CHECK_REFUSED(query, "above 10,000 ft", "perhaps up to 10,002 ft");
}
END_TEST

START_TEST(steam_for_longer_than_45_minutes_is_refused)
{
	/* Crushed tomatoes, hot quarts: 45 min to 1,000 ft, 50 above (USDA AIB 539 Guide 3). */
	struct process_query query = ask("tomatoes crushed", "hot", "quart", METHOD_STEAM, "1000ft");

	ck_assert_int_eq(find(&query).minutes, 45);
	query.elevation = at("1001ft");
	CHECK_REFUSED(query, "50 min", "45 min", "use a boiling-water canner");
	query.method = METHOD_BOILING_WATER;
	ck_assert_int_eq(find(&query).minutes, 50);
	/* Peaches, raw quarts: 45 min in the guide's top band, 50 in the table above. */
	query = ask("peaches", "raw", "quart", METHOD_STEAM, "8000ft");
	ck_assert_int_eq(find(&query).minutes, 45);
	query.elevation = at("8001ft");
	CHECK_REFUSED(query, "50 min", "45 min", "use a boiling-water canner");
}
END_TEST

/* --- walking and words ----------------------------------------------------- */

/* Is there a jar in which the food can be processed at sea level? */
static bool some_process(const char *food, const char *pack, enum method method)
{
	for (size_t i = 0; i < jar_size_count; i++) {
		struct process_query query = ask(food, pack, jar_sizes[i].name, method, "0ft");
		struct process process;

		if (process_find(&query, &process, NULL))
			return true;
	}
	return false;
}

START_TEST(the_pickers_walk_only_what_can_be_made)
{
	for (enum method method = 0; method < METHOD_COUNT; method++) {
		const char *food = NULL;
		int foods = 0;

		while ((food = process_next_food(method, food)) != NULL) {
			const char *pack = NULL;
			enum acidity acidity;
			int packs = 0;

			ck_assert(process_acidity(food, &acidity));
			ck_assert_msg(process_has_food(method, food), "%s", food);
			ck_assert(method_has_pressure(method) || acidity != ACIDITY_LOW_ACID);
			while ((pack = process_next_pack(food, method, pack)) != NULL) {
				ck_assert_int_lt(packs++, 5);
				ck_assert_msg(some_process(food, pack, method), "%s, %s", food, pack);
			}
			ck_assert_int_gt(packs, 0);
			ck_assert_int_lt(foods++, 200);
		}
		ck_assert_int_gt(foods, 20);
	}
	ck_assert_ptr_null(process_next_food(METHOD_STEAM, "no such food"));
	ck_assert_ptr_null(process_next_pack("no such food", METHOD_STEAM, NULL));
	ck_assert(!process_has_food(METHOD_STEAM, "no such food"));
	ck_assert(!process_has_food(METHOD_BOILING_WATER, "asparagus")); /* low-acid: pressure alone */
	ck_assert(process_has_food(METHOD_WEIGHTED_GAUGE, "asparagus"));
}
END_TEST

START_TEST(foods_come_in_table_order_without_repeats)
{
	ck_assert_str_eq(process_next_food(METHOD_BOILING_WATER, NULL), "jelly without added pectin");
	ck_assert_str_eq(process_next_food(METHOD_BOILING_WATER, "Jelly without added pectin"),
	                 "jam without added pectin");
	ck_assert_str_eq(process_next_pack("peaches", METHOD_STEAM, NULL), "hot");
	ck_assert_str_eq(process_next_pack("peaches", METHOD_STEAM, "hot"), "raw");
	ck_assert_ptr_null(process_next_pack("peaches", METHOD_STEAM, "raw"));
}
END_TEST

START_TEST(words_of_the_tables_are_known)
{
	enum method method;
	enum acidity acidity;

	for (int i = 0; i < METHOD_COUNT; i++) {
		ck_assert(method_from_name(method_name((enum method)i), &method));
		ck_assert_int_eq(method, i);
		ck_assert(method_from_name(method_words((enum method)i), &method));
	}
	ck_assert(!method_from_name("oven", &method));
	ck_assert(!method_from_name(NULL, &method));
	ck_assert_str_eq(method_name(METHOD_COUNT), "?");
	ck_assert_str_eq(method_words((enum method)99), "?");
	ck_assert_str_eq(acidity_words(ACIDITY_LOW_ACID), "low-acid");
	ck_assert_str_eq(acidity_name(ACIDITY_COUNT), "?");
	ck_assert_str_eq(confirmed_name(CONFIRMED_PRACTICE), "practice");
	ck_assert_str_eq(pack_words("hot_sterile_jar"), "hot pack, jars boiled first");
	ck_assert_str_eq(pack_words("boiled"), "?");
	ck_assert(!process_acidity("no such food", &acidity));
	for (size_t i = 0; i < process_row_count; i++)
		ck_assert_str_ne(pack_words(process_rows[i].pack), "?");
	for (size_t i = 0; i < jar_size_count; i++)
		ck_assert_int_eq(jar_size_index(jar_size_named(jar_sizes[i].words)), (int)i);
	ck_assert_ptr_null(jar_size_named("bucket"));
}
END_TEST

/* schema/pack.csv; A539: jars of a process under 10 minutes are boiled first. */
START_TEST(a_pack_says_how_it_is_packed_and_how_its_jars_are_made_ready)
{
	const struct {
		const char *pack;
		bool raw;
		enum jars_ready jars;
	} said[] = {
		{ "hot", false, JARS_EITHER },
		{ "raw", true, JARS_EITHER },
		{ "hot_sterile_jar", false, JARS_BOILED_FIRST },
		{ "raw pack, jars boiled first", true, JARS_BOILED_FIRST },
		{ "hot_unsterile_jar", false, JARS_NOT_BOILED_FIRST },
	};

	ck_assert_uint_eq(pack_row_count, sizeof(said) / sizeof(said[0]));
	for (size_t i = 0; i < sizeof(said) / sizeof(said[0]); i++) {
		ck_assert_int_eq(pack_is_raw(said[i].pack), said[i].raw);
		for (int jars = 0; jars < JARS_READY_COUNT; jars++)
			ck_assert_int_eq(pack_has_jars(said[i].pack, (enum jars_ready)jars), jars == (int)said[i].jars);
	}
	ck_assert_ptr_null(pack_named("rawhide"));
	ck_assert(!pack_is_raw("rawhide"));
	ck_assert(!pack_is_raw(""));
	ck_assert(!pack_has_jars(NULL, JARS_EITHER));
}
END_TEST

/* A539, Guide 1: a shorter process needs jars that were boiled. */
START_TEST(jars_that_are_not_boiled_first_get_ten_minutes_or_more)
{
	for (size_t i = 0; i < process_row_count; i++) {
		const struct process_row *row = &process_rows[i];

		if (pack_has_jars(row->pack, JARS_NOT_BOILED_FIRST))
			ck_assert_int_ge(row->minutes, 10);
	}
}
END_TEST

START_TEST(empty_jars_boil_a_minute_more_for_each_thousand_feet)
{
	/* A539 and MSU 01600323: 10 min, 1 more for each added 1,000 ft. */
	static const struct {
		const char *place;
		int minutes;
	} cases[] = {
		{ "-282ft", 10 },    { "0ft", 10 },    { "1000ft", 10 }, { "1001ft", 11 }, { "2000ft", 11 },
		{ "2000ft+-1", 12 }, { "4650ft", 14 }, { "8000ft", 17 }, { "unknown", 0 },
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct elevation elevation = at(cases[i].place);

		ck_assert_msg(jar_sterilising_minutes(&elevation) == cases[i].minutes, "%s", cases[i].place);
	}
}
END_TEST

START_TEST(headspace_reads_like_a_ruler)
{
	static const struct {
		int thou;
		const char *words;
	} cases[] = {
		{ 125, "1/8 in" },    { 250, "1/4 in" },    { 500, "1/2 in" },   { 1000, "1 in" },
		{ 1250, "1-1/4 in" }, { 1500, "1-1/2 in" }, { 300, "0.300 in" }, { -1, "?" },
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		char words[16];

		headspace_words(cases[i].thou, words, sizeof(words));
		ck_assert_str_eq(words, cases[i].words);
	}
}
END_TEST

static const struct listed_test listed[] = {
	TEST(the_printed_edge_belongs_to_the_lower_band),
	TEST(below_sea_level_the_lowest_band_serves),
	TEST(the_open_band_alone_is_given_with_a_warning_above_8000_feet),
	TEST(a_smaller_jar_takes_the_longer_of_both_tables),
	TEST(jelly_in_jars_not_boiled_first_is_published_below_1000_feet_only),
	TEST(a_pack_whose_minutes_are_in_no_table_here_is_told_from_the_others),
	TEST(what_is_common_practice_is_longer_than_what_is_published_for_boiled_jars),
	TEST(names_are_matched_as_people_write_them),
	TEST(a_smaller_jar_takes_the_next_larger_tested_size),
	TEST(a_jar_larger_than_tested_is_refused),
	TEST(a_pressure_for_boiling_water_is_misuse),
	TEST(without_a_choice_the_longest_hold_is_given),
	TEST(a_pressure_that_stops_lower_is_not_recommended_here),
	TEST(a_pressure_that_is_not_offered_lists_what_is),
	TEST(an_unknown_elevation_gives_no_process),
	TEST(an_unknown_food_is_refused_with_near_names),
	TEST(low_acid_food_is_pressure_canned),
	TEST(no_low_acid_food_gets_time_outside_a_pressure_canner),
	TEST(an_unknown_pack_lists_the_packs_there_are),
	TEST(an_unknown_jar_lists_the_sizes),
	TEST(a_method_without_a_table_lists_those_with_one),
	TEST(above_the_last_dial_gauge_band_there_is_no_process),
	TEST(steam_for_longer_than_45_minutes_is_refused),
	TEST(the_pickers_walk_only_what_can_be_made),
	TEST(foods_come_in_table_order_without_repeats),
	TEST(words_of_the_tables_are_known),
	TEST(a_pack_says_how_it_is_packed_and_how_its_jars_are_made_ready),
	TEST(jars_that_are_not_boiled_first_get_ten_minutes_or_more),
	TEST(empty_jars_boil_a_minute_more_for_each_thousand_feet),
	TEST(headspace_reads_like_a_ruler),
};

TESTS("process", listed)
