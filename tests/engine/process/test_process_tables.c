/* Every row of schema/process_*.csv, read at run time, against the look-up; and
 * what must hold for all of them. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/process/process.h"
#include "support/csv.h"
#include "support/tests.h"

#define OPEN_TOP_FT 10000   /* the highest foot at which an open band is given */
#define SECOND_FROM_FT 8001 /* where another table may ask more than the open band */

static const char *const files[] = {
	"process_fruit_tomato_jam.csv",
	"process_vegetable_meat_pickle.csv",
	"process_above_8000ft.csv",
};
#define FILES (sizeof(files) / sizeof(files[0]))
#define GUIDE_FILES 2 /* their bands begin at 0 ft */
#define SECOND 2      /* a state extension's timetable, one band */

static struct csv tables[FILES];
static struct csv physics;

static void open_tables(void)
{
	for (size_t i = 0; i < FILES; i++)
		tables[i] = csv_read(files[i]);
	physics = csv_read("physics.csv");
}

static void close_tables(void)
{
	for (size_t i = 0; i < FILES; i++)
		csv_free(&tables[i]);
	csv_free(&physics);
}

static struct elevation feet(int ft)
{
	return (struct elevation){ .known = true, .um = ft * FOOT_UM };
}

static struct process_query query_of(const struct csv *table, size_t row)
{
	struct process_query query = {
		.food = csv_at(table, row, "food"),
		.pack = csv_at(table, row, "style_of_pack"),
		.jar = csv_at(table, row, "jar"),
		.pressure_psi = csv_number(table, row, "pressure_psi", NO_PRESSURE),
	};

	ck_assert(method_from_name(csv_at(table, row, "method"), &query.method));
	return query;
}

static bool same_words(const struct csv *a, size_t row_a, const struct csv *b, size_t row_b, const char *column)
{
	return strcmp(csv_at(a, row_a, column), csv_at(b, row_b, column)) == 0;
}

static bool same_cell(const struct csv *a, size_t row_a, const struct csv *b, size_t row_b)
{
	return same_words(a, row_a, b, row_b, "food") && same_words(a, row_a, b, row_b, "style_of_pack") &&
	       same_words(a, row_a, b, row_b, "jar") && same_words(a, row_a, b, row_b, "method");
}

/* Where an open band is no longer given, because the second table asks more or
 * because all tables end. */
static int open_top_ft(const struct csv *table, size_t row)
{
	const struct csv *second = &tables[SECOND];

	for (size_t i = 0; i < second->rows; i++)
		if (same_cell(table, row, second, i))
			return SECOND_FROM_FT - 1;
	return OPEN_TOP_FT;
}

/* The lowest, middle or highest foot of a row's band. */
static int foot_of_band(const struct csv *table, size_t row, int which)
{
	int low = csv_number(table, row, "alt_min_ft", 0);
	int high = csv_number(table, row, "alt_max_ft", open_top_ft(table, row));

	return which == 0 ? low : which == 1 ? (low + high) / 2 : high;
}

static void check_given(const struct csv *table, size_t row, int ft)
{
	struct process_query query = query_of(table, row);
	struct process process;
	struct fault fault = { 0 };

	query.elevation = feet(ft);
	ck_assert_msg(process_find(&query, &process, &fault), "%s at %d ft: %s", query.food, ft, fault.sentence);
	ck_assert_msg(process.minutes == csv_number(table, row, "minutes", 0) &&
	                  process.pressure_psi == query.pressure_psi,
	              "%s, %s, %s at %d ft: %d min, %d psi", query.food, query.pack, query.jar, ft, process.minutes,
	              process.pressure_psi);
	ck_assert_str_eq(process.row->food, query.food);
	ck_assert_str_eq(process.row->pack, query.pack);
	ck_assert_str_eq(process.jar_in_table->name, query.jar);
	ck_assert_str_eq(process.row->source, csv_at(table, row, "source"));
	ck_assert_str_eq(confirmed_name(process.row->confirmed), csv_at(table, row, "confirmed"));
	ck_assert_str_eq(acidity_name(process.row->acidity), csv_at(table, row, "acidity"));
	ck_assert_int_eq(process.row->headspace_thou,
	                 (int)(strtod(csv_at(table, row, "headspace_in"), NULL) * 1000 + 0.5));
	ck_assert(!process.jar_sized_up && !process.band_raised);
	ck_assert_int_eq(process.above_tables,
	                 table != &tables[SECOND] && ft >= SECOND_FROM_FT && !method_has_pressure(query.method));
}

START_TEST(every_row_gives_exactly_its_process)
{
	const struct csv *table = &tables[_i];

	if (_i == SECOND)
		ck_assert_uint_eq(table->rows, 30);
	else
		ck_assert_uint_gt(table->rows, 700);
	for (size_t row = 0; row < table->rows; row++) {
		for (int which = 0; which < 3; which++)
			check_given(table, row, foot_of_band(table, row, which));
	}
}
END_TEST

/* All of it has been read; what has not is tested in test_unconfirmed.c. */
START_TEST(every_row_is_confirmed_or_said_to_be_practice)
{
	const struct csv *table = &tables[_i];

	for (size_t row = 0; row < table->rows; row++) {
		const char *source = csv_at(table, row, "source");
		const char *word = csv_at(table, row, "confirmed");
		bool practice = strncmp(source, "common practice, no source", 26) == 0;

		ck_assert_msg(strcmp(word, practice ? "practice" : "yes") == 0, "%s, from \"%s\": %s",
		              csv_at(table, row, "food"), source, word);
	}
}
END_TEST

START_TEST(the_baked_tables_hold_every_row)
{
	size_t rows = 0;

	for (size_t i = 0; i < FILES; i++)
		rows += tables[i].rows;
	ck_assert_uint_eq(process_row_count, rows);
}
END_TEST

START_TEST(steam_is_boiling_water_or_refused)
{
	const struct csv *table = &tables[_i];
	int same = 0;
	int too_long = 0;

	for (size_t row = 0; row < table->rows; row++) {
		struct process_query query = query_of(table, row);
		struct process process;
		struct fault fault = { 0 };

		if (query.method != METHOD_BOILING_WATER)
			continue;
		query.method = METHOD_STEAM;
		query.elevation = feet(foot_of_band(table, row, 2));
		if (csv_number(table, row, "minutes", 0) <= STEAM_HOLD_MAX_MINUTES) {
			same++;
			check_given(table, row, foot_of_band(table, row, 2));
			ck_assert_msg(process_find(&query, &process, &fault), "%s", fault.sentence);
			ck_assert_int_eq(process.minutes, csv_number(table, row, "minutes", 0));
			ck_assert_int_eq(process.method, METHOD_STEAM);
		} else {
			too_long++;
			ck_assert(!process_find(&query, &process, &fault));
			ck_assert_int_eq(fault.kind, FAULT_REFUSED);
			ck_assert_ptr_nonnull(strstr(fault.sentence, "use a boiling-water canner"));
		}
	}
	ck_assert_int_gt(same, _i == SECOND ? 20 : 50);
	ck_assert(_i == 1 || too_long > 0);
}
END_TEST

/* --- the tops of the tables -------------------------------------------------- */

/* Utah State University Extension's timetable, 8,001-10,000 ft, against the open top
 * band of USDA AIB 539: each of its cells is longer, so it governs, from the foot on
 * that its band begins, and is no option beside the shorter one. */
START_TEST(the_second_table_governs_from_8001_to_10000_feet)
{
	const struct csv *table = &tables[SECOND];

	for (size_t row = 0; row < table->rows; row++) {
		struct process_query query = query_of(table, row);
		struct process guide;
		struct process second;

		query.elevation = feet(SECOND_FROM_FT - 1);
		ck_assert(process_find(&query, &guide, NULL));
		ck_assert(!guide.above_tables && guide.row->alt_max_ft == NO_TOP_FT);
		query.elevation.slack_um = 1; /* perhaps above: the stricter side */
		ck_assert(process_find(&query, &second, NULL));
		ck_assert_int_eq(second.minutes, csv_number(table, row, "minutes", 0));
		ck_assert_int_gt(second.minutes, guide.minutes);
		ck_assert_str_eq(second.row->source, csv_at(table, row, "source"));
		ck_assert(second.band_raised && !second.above_tables);
		ck_assert_uint_eq(second.option_count, 0);
	}
}
END_TEST

static void refused_above(struct process_query *query, struct elevation elevation)
{
	struct process process;
	struct fault fault = { 0 };

	query->elevation = elevation;
	ck_assert_msg(!process_find(query, &process, &fault), "%s, %s: %d min", query->food, query->jar,
	              process.minutes);
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	if (query->method == METHOD_WEIGHTED_GAUGE)
		ck_assert_ptr_nonnull(strstr(fault.sentence, "15 psi no longer reaches 240 F"));
	if (query->method != METHOD_DIAL_GAUGE)
		ck_assert_msg(strstr(fault.sentence, "no time is given above 10,000 ft") != NULL, "%s", fault.sentence);
}

START_TEST(nothing_is_given_above_10000_feet)
{
	const struct csv *table = &tables[_i];
	struct elevation perhaps = { .known = true, .um = OPEN_TOP_FT * FOOT_UM, .slack_um = 1 };

	for (size_t row = 0; row < table->rows; row++) {
		struct process_query query = query_of(table, row);

		query.pressure_psi = NO_PRESSURE;
		refused_above(&query, feet(OPEN_TOP_FT + 1));
		refused_above(&query, feet(29000));
		refused_above(&query, perhaps);
		if (query.method != METHOD_BOILING_WATER)
			continue;
		query.method = METHOD_STEAM;
		refused_above(&query, feet(OPEN_TOP_FT + 1));
		refused_above(&query, perhaps);
	}
}
END_TEST

/* --- invariants ------------------------------------------------------------ */

/* Both sides of every edge that is printed anywhere, and beyond. */
static const int rising_ft[] = { -200, 0,    500,  1000, 1001, 2000, 2001, 3000,  3001,
	                         4000, 4001, 5000, 6000, 6001, 8000, 8001, 10000, 10001 };
#define RISING (sizeof(rising_ft) / sizeof(rising_ft[0]))

START_TEST(minutes_never_fall_with_altitude)
{
	const struct csv *table = &tables[_i];
	int rises = 0;

	for (size_t row = 0; row < table->rows; row++) {
		struct process_query query = query_of(table, row);

		/* Once a table is enough; each has a lowest band. */
		if (csv_number(table, row, "alt_min_ft", 0) != 0)
			continue;
		/* With this row's pressure chosen, and with none chosen. */
		for (int chosen = 0; chosen < 2; chosen++) {
			int last = 0;

			if (chosen == 1 && !method_has_pressure(query.method))
				continue;
			query.pressure_psi = chosen == 0 ? NO_PRESSURE : query_of(table, row).pressure_psi;
			for (size_t i = 0; i < RISING; i++) {
				struct process process;

				query.elevation = feet(rising_ft[i]);
				if (!process_find(&query, &process, NULL))
					continue;
				ck_assert_msg(process.minutes >= last, "%s, %s, %s at %d ft: %d after %d min",
				              query.food, query.pack, query.jar, rising_ft[i], process.minutes, last);
				rises += last > 0 && process.minutes > last ? 1 : 0;
				last = process.minutes;
			}
		}
	}
	ck_assert_int_gt(rises, 0);
}
END_TEST

START_TEST(minutes_never_fall_with_jar_size)
{
	const struct csv *table = &tables[_i];
	int sized_up = 0;

	for (size_t row = 0; row < table->rows; row++) {
		struct process_query query = query_of(table, row);
		int last = 0;

		query.elevation = feet(foot_of_band(table, row, 1));
		for (size_t jar = 0; jar < jar_size_count; jar++) {
			struct process process;

			query.jar = jar_sizes[jar].name;
			if (!process_find(&query, &process, NULL))
				continue;
			ck_assert_msg(process.minutes >= last, "%s, %s, %s: %d after %d min", query.food, query.pack,
			              query.jar, process.minutes, last);
			ck_assert_int_ge(jar_size_index(process.jar_in_table), (int)jar);
			ck_assert_int_eq(process.jar_sized_up, process.jar != process.jar_in_table);
			sized_up += process.jar_sized_up ? 1 : 0;
			last = process.minutes;
		}
	}
	ck_assert_int_gt(sized_up, 0);
}
END_TEST

START_TEST(the_longest_hold_is_given_and_the_others_fall)
{
	const struct csv *table = &tables[_i];

	for (size_t row = 0; row < table->rows; row++) {
		struct process_query query = query_of(table, row);
		struct process process;
		int last;

		query.pressure_psi = NO_PRESSURE;
		query.elevation = feet(foot_of_band(table, row, 0));
		if (!process_find(&query, &process, NULL))
			continue;
		last = process.minutes;
		for (size_t i = 0; i < process.option_count; i++) {
			ck_assert_int_le(process.options[i].minutes, last);
			ck_assert_int_ne(process.options[i].pressure_psi, process.pressure_psi);
			last = process.options[i].minutes;
		}
	}
}
END_TEST

/* --- other printed figures, each row of schema/physics.csv naming its source - */

/* "2001-4000" or "6001-up": up to `top_ft` */
static void read_band(const char *words, int top_ft, int *low, int *high)
{
	char end[8];

	ck_assert_int_eq(sscanf(words, "%d-%7s", low, end), 2);
	*high = strcmp(end, "up") == 0 ? top_ft : (int)strtol(end, NULL, 10);
}

/* All food of an acidity, in all its packs, in pints, at one foot. */
static int check_pressures(enum method method, enum acidity acidity, int ft, int psi)
{
	int checked = 0;
	const char *food = NULL;

	while ((food = process_next_food(method, food)) != NULL) {
		const char *pack = NULL;
		enum acidity own;

		ck_assert(process_acidity(food, &own));
		while (own == acidity && (pack = process_next_pack(food, method, pack)) != NULL) {
			struct process_query query = {
				.food = food,
				.pack = pack,
				.jar = "pint",
				.method = method,
				.elevation = feet(ft),
				.pressure_psi = NO_PRESSURE,
			};
			struct process process;

			if (!process_find(&query, &process, NULL))
				continue;
			ck_assert_msg(process.pressure_psi == psi, "%s at %d ft: %d psi", food, ft,
			              process.pressure_psi);
			checked++;
		}
	}
	return checked;
}

START_TEST(gauge_pressures_are_those_printed_for_the_elevation)
{
	/* USDA AIB 539 altitude pressures, PNW 421 and Michigan State 01600353. */
	static const struct {
		const char *group;
		enum method method;
		enum acidity acidity;
		int least;
	} groups[] = {
		{ "dial_gauge_low_acid", METHOD_DIAL_GAUGE, ACIDITY_LOW_ACID, 25 },
		{ "weighted_gauge_low_acid", METHOD_WEIGHTED_GAUGE, ACIDITY_LOW_ACID, 25 },
		{ "dial_gauge_acid_food", METHOD_DIAL_GAUGE, ACIDITY_ACID, 10 },
		{ "weighted_gauge_acid_food", METHOD_WEIGHTED_GAUGE, ACIDITY_ACID, 10 },
	};
	int rows = 0;

	for (size_t i = 0; i < physics.rows; i++) {
		for (size_t g = 0; g < sizeof(groups) / sizeof(groups[0]); g++) {
			int psi;
			int low;
			int high;

			if (strcmp(csv_at(&physics, i, "quantity"), groups[g].group) != 0)
				continue;
			psi = csv_number(&physics, i, "value", 0);
			read_band(csv_at(&physics, i, "input"), OPEN_TOP_FT, &low, &high);
			ck_assert_int_ge(check_pressures(groups[g].method, groups[g].acidity, low, psi),
			                 groups[g].least);
			ck_assert_int_ge(check_pressures(groups[g].method, groups[g].acidity, high, psi),
			                 groups[g].least);
			rows++;
		}
	}
	ck_assert_int_eq(rows, 12);
}
END_TEST

START_TEST(sample_bands_of_the_guide_are_met)
{
	static const struct {
		const char *quantity;
		const char *food;
		const char *pack;
		const char *jar;
	} samples[] = {
		{ "usda_band_example: peaches hot pint", "peaches", "hot", "pint" },
		{ "usda_band_example: applesauce hot pint", "applesauce", "hot", "pint" },
		{ "usda_band_example: cherries hot quart", "cherries whole", "hot", "quart" },
		{ "usda_band_example: grape juice hot pint or quart", "grape juice", "hot_sterile_jar", "quart" },
	};
	int rows = 0;

	for (size_t i = 0; i < physics.rows; i++) {
		for (size_t s = 0; s < sizeof(samples) / sizeof(samples[0]); s++) {
			struct process_query query = {
				.food = samples[s].food,
				.pack = samples[s].pack,
				.jar = samples[s].jar,
				.method = METHOD_BOILING_WATER,
				.pressure_psi = NO_PRESSURE,
			};
			struct process process;
			int low;
			int high;

			if (strcmp(csv_at(&physics, i, "quantity"), samples[s].quantity) != 0)
				continue;
			read_band(csv_at(&physics, i, "input"), SECOND_FROM_FT - 1, &low, &high);
			query.elevation = feet((low + high) / 2);
			ck_assert(process_find(&query, &process, NULL));
			ck_assert_int_eq(process.minutes, csv_number(&physics, i, "value", 0));
			rows++;
		}
	}
	ck_assert_int_eq(rows, 16);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("process tables", .begin = open_tables, .end = close_tables, .seconds = 60),
	TEST(the_baked_tables_hold_every_row),
	EACH(every_row_gives_exactly_its_process, 0, FILES),
	EACH(every_row_is_confirmed_or_said_to_be_practice, 0, FILES),
	EACH(steam_is_boiling_water_or_refused, 0, FILES),
	TEST(the_second_table_governs_from_8001_to_10000_feet),
	EACH(nothing_is_given_above_10000_feet, 0, FILES),
	EACH(minutes_never_fall_with_altitude, 0, GUIDE_FILES),
	EACH(minutes_never_fall_with_jar_size, 0, FILES),
	EACH(the_longest_hold_is_given_and_the_others_fall, 0, FILES),
	TEST(gauge_pressures_are_those_printed_for_the_elevation),
	TEST(sample_bands_of_the_guide_are_met),
};

TESTS("process tables", listed)
