#include <check.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "engine/recipe/scaling.h"
#include "support/csv.h"
#include "support/tests.h"

/* NIST Handbook 44 App. C: 1 gal = 3,785.411784 mL, 768 tsp of 4.92892159375 mL. */
#define NL_PER_GALLON INT64_C(3785411784)

static int64_t eighths_ul(int64_t eighths)
{
	return (eighths * NL_PER_GALLON + 3072000) / 6144000;
}

static const char *us(int64_t eighths, struct measured *out)
{
	measure_amount(MEASURE_VOLUME, SUPPLY_OTHER, eighths_ul(eighths), UNITS_US, out);
	return out->words;
}

#define CUP 384
#define TBSP 24
#define TSP 8

START_TEST(us_volumes_read_as_a_cook_writes_them)
{
	static const struct {
		int eighths;
		const char *words;
	} cases[] = {
		{ 1, "1/8 tsp" },
		{ 2, "1/4 tsp" },
		{ 3, "1/4 tsp + 1/8 tsp" },
		{ TSP, "1 tsp" },
		{ 12, "1-1/2 tsp" },
		{ 3 * TSP, "1 tbsp" },
		{ 4 * TSP, "4 tsp" },
		{ 2 * TBSP, "2 tbsp" },
		{ 4 * TBSP, "1/4 cup" },
		{ 5 * TBSP, "5 tbsp" },
		{ CUP / 3, "1/3 cup" }, /* 5 tbsp + 1 tsp, where there is no 1/3 cup */
		{ 5 * TBSP + 4, "5 tbsp + 1/2 tsp" },
		{ CUP / 2, "1/2 cup" },
		{ 2 * CUP / 3, "2/3 cup" },
		{ CUP, "1 cup" },
		{ 4 * CUP + 2 * CUP / 3, "4-2/3 cups" },
		{ 5 * CUP, "5 cups" },
		{ 8 * CUP, "2 qt" },
		{ 9 * CUP, "2 qt + 1 cup" },
		{ 16 * CUP, "1 gal" },
		{ 28 * CUP, "7 qt" },
		{ 36 * CUP, "2 gal + 1 qt" },
		{ 16 * CUP + CUP / 4, "1 gal + 1/4 cup" },
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct measured out;

		ck_assert_str_eq(us(cases[i].eighths, &out), cases[i].words);
		ck_assert_int_eq(out.error_permille, 0);
	}
}
END_TEST

/* --- the words read back, apart from the code that wrote them ---------------- */

struct unit {
	const char *name;
	double size;
};

static const struct unit us_units[] = {
	{ "gal", 3785411.784 },
	{ "qt", 946352.946 },
	{ "cups", 236588.2365 },
	{ "cup", 236588.2365 },
	{ "tbsp", 14786.76478125 },
	{ "tsp", 4928.92159375 },
	{ NULL, 0 },
};

static double number_of(char *text)
{
	double number = 0;
	char *dash = strchr(text, '-');
	char *slash = strchr(text, '/');

	if (slash == NULL)
		return strtod(text, NULL);
	if (dash != NULL)
		number = strtod(text, NULL);
	return number + strtod(dash == NULL ? text : dash + 1, NULL) / strtod(slash + 1, NULL);
}

/* The sum of "2-3/4 cups + 1 tbsp" and the number of its parts. */
static double sum_of(const char *words, const struct unit *units, int *parts)
{
	char copy[96];
	char *at = copy;
	double sum = 0;

	ck_assert_uint_lt(strlen(words), sizeof(copy));
	memcpy(copy, words, strlen(words) + 1);
	for (*parts = 0; at != NULL; (*parts)++) {
		char *next = strstr(at, " + ");
		char *blank;
		const struct unit *unit = units;

		if (next != NULL) {
			*next = '\0';
			next += 3;
		}
		blank = strchr(at, ' ');
		ck_assert_ptr_nonnull(blank);
		*blank = '\0';
		while (unit->name != NULL && strcmp(unit->name, blank + 1) != 0)
			unit++;
		ck_assert_msg(unit->name != NULL, "%s: unit %s", words, blank + 1);
		sum += number_of(at) * unit->size;
		at = next;
	}
	return sum;
}

/* Every 1/8 tsp to 5 gal: the words hold what `filled` says, within 2 % or it is said. */
START_TEST(every_us_volume_is_close_in_few_tools)
{
	int over = 0;

	for (int64_t eighths = 1; eighths <= INT64_C(5) * 6144; eighths++) {
		struct measured out;
		int parts;
		double sum = sum_of(us(eighths, &out), us_units, &parts);
		double off = (double)(out.filled - out.wanted) / (double)out.wanted;

		ck_assert_double_le_tol(sum - (double)out.filled, 1.0, 1e-6);
		ck_assert_double_ge_tol(sum - (double)out.filled, -1.0, 1e-6);
		ck_assert_int_le(parts, 3);
		ck_assert_double_le(off * 1000 - out.error_permille, 0.5001);
		ck_assert_double_ge(off * 1000 - out.error_permille, -0.5001);
		over += out.error_permille > ROUNDING_SHOWN_PERMILLE || out.error_permille < -ROUNDING_SHOWN_PERMILLE;
	}
	ck_assert_int_eq(over, 0); /* an eighth of a teaspoon is fine enough */
}
END_TEST

START_TEST(what_no_tool_holds_says_its_error)
{
	struct measured out;

	measure_amount(MEASURE_VOLUME, SUPPLY_OTHER, 200, UNITS_US, &out);
	ck_assert_str_eq(out.words, "1/8 tsp");
	ck_assert_int_eq(out.filled, 616);
	ck_assert_int_eq(out.error_permille, 2080);
	measure_amount(MEASURE_VOLUME, SUPPLY_OTHER, 616, UNITS_METRIC, &out);
	ck_assert_str_eq(out.words, "1 x 1 mL");
	ck_assert_int_gt(out.error_permille, ROUNDING_SHOWN_PERMILLE);
}
END_TEST

START_TEST(every_acid_is_enough)
{
	static const enum supply_kind acids[] = { SUPPLY_LEMON_JUICE, SUPPLY_VINEGAR };

	for (size_t a = 0; a < 2; a++) {
		for (int units = 0; units < UNIT_SYSTEM_COUNT; units++) {
			for (int64_t ul = 100; ul < 4000000; ul += 997) {
				struct measured out;

				measure_amount(MEASURE_VOLUME, acids[a], ul, (enum unit_system)units, &out);
				ck_assert_int_ge(out.filled, ul - ul / 20);
				ck_assert_int_ge(out.filled, ul - 40);
			}
		}
	}
	for (int64_t mg = 100; mg < 200000; mg += 331) {
		struct measured out;

		measure_amount(MEASURE_MASS, SUPPLY_CITRIC_ACID, mg, UNITS_US, &out);
		ck_assert_int_ge(out.filled, mg - 40);
	}
}
END_TEST

static const struct unit metric_units[] = {
	{ "L", 1e6 },          { "mL", 1e3 },     { "x 15 mL", 15e3 }, { "x 5 mL", 5e3 },
	{ "x 2.5 mL", 2.5e3 }, { "x 1 mL", 1e3 }, { NULL, 0 },
};

START_TEST(metric_volumes_are_close_or_say_so)
{
	for (int64_t ul = 500; ul < 20000000; ul += ul / 50 + 100) {
		struct measured out;
		int parts;

		measure_amount(MEASURE_VOLUME, SUPPLY_JUICE, ul, UNITS_METRIC, &out);
		ck_assert_double_eq_tol(sum_of(out.words, metric_units, &parts), (double)out.filled, 0.5);
		ck_assert_int_le(parts, 3);
		if (ul >= 100000)
			ck_assert_int_le(abs(out.error_permille), ROUNDING_SHOWN_PERMILLE);
	}
}
END_TEST

START_TEST(metric_amounts_read_as_a_cook_writes_them)
{
	struct measured out;

	measure_amount(MEASURE_VOLUME, SUPPLY_JUICE, 3785412, UNITS_METRIC, &out);
	ck_assert_str_eq(out.words, "3 L + 800 mL");
	measure_amount(MEASURE_VOLUME, SUPPLY_LEMON_JUICE, 45000, UNITS_METRIC, &out);
	ck_assert_str_eq(out.words, "3 x 15 mL");
	measure_amount(MEASURE_VOLUME, SUPPLY_OTHER, 4929, UNITS_METRIC, &out);
	ck_assert_str_eq(out.words, "1 x 5 mL");
	ck_assert_int_eq(out.error_permille, 14);
	measure_amount(MEASURE_MASS, SUPPLY_SUGAR, 1400000, UNITS_METRIC, &out);
	ck_assert_str_eq(out.words, "1 kg + 400 g");
	measure_amount(MEASURE_MASS, SUPPLY_FRUIT, 453592, UNITS_METRIC, &out);
	ck_assert_str_eq(out.words, "454 g");
}
END_TEST

/* schema/measures.csv: 200 g a US cup of granulated sugar, source there. */
START_TEST(sugar_is_measured_in_cups_and_fruit_on_the_scale)
{
	struct measured out;

	measure_amount(MEASURE_MASS, SUPPLY_SUGAR, 7 * SUGAR_MG_PER_CUP, UNITS_US, &out);
	ck_assert_str_eq(out.words, "7 cups");
	measure_amount(MEASURE_MASS, SUPPLY_SUGAR, 20 * SUGAR_MG_PER_CUP, UNITS_US, &out);
	ck_assert_str_eq(out.words, "20 cups");
	ck_assert_int_eq(out.filled, 4000000);
	measure_amount(MEASURE_MASS, SUPPLY_FRUIT, 11113013, UNITS_US, &out); /* 24.5 lb of 453.59237 g */
	ck_assert_str_eq(out.words, "24-1/2 lb");
	ck_assert_int_eq(out.filled, 11113013);
	measure_amount(MEASURE_MASS, SUPPLY_PECTIN_REGULAR, 49612, UNITS_US, &out);
	ck_assert_str_eq(out.words, "1-3/4 oz");
	measure_amount(MEASURE_EACH, SUPPLY_JAR, 7, UNITS_US, &out);
	ck_assert_str_eq(out.words, "7");
	measure_amount(MEASURE_MASS, SUPPLY_CITRIC_ACID, CITRIC_ACID_MG_PER_TSP / 2, UNITS_US, &out);
	ck_assert_str_eq(out.words, "1/2 tsp");
}
END_TEST

START_TEST(extremes_are_survived)
{
	static const int64_t amounts[] = { INT64_MIN, -1, 0, 1, INT64_C(10000000000), INT64_MAX };

	for (size_t i = 0; i < sizeof(amounts) / sizeof(amounts[0]); i++) {
		for (int m = 0; m < MEASURE_COUNT; m++) {
			for (int u = 0; u < UNIT_SYSTEM_COUNT; u++) {
				for (int s = 0; s < SUPPLY_KIND_COUNT; s++) {
					struct measured out;

					measure_amount((enum measure)m, (enum supply_kind)s, amounts[i],
					               (enum unit_system)u, &out);
					ck_assert_str_ne(out.words, "");
				}
			}
		}
	}
}
END_TEST

/* The published measures themselves: schema/measures.csv, NIST Handbook 44. */
START_TEST(published_measures_come_out_whole)
{
	static const struct {
		const char *item;
		const char *words;
	} known[] = {
		{ "US gallon", "1 gal" },       { "US quart", "1 qt" },     { "US cup", "1 cup" },
		{ "US tablespoon", "1 tbsp" },  { "US teaspoon", "1 tsp" }, { "US pint", "2 cups" },
		{ "US fluid ounce", "2 tbsp" },
	};
	struct csv csv = csv_read("measures.csv");
	int seen = 0;

	for (size_t row = 0; row < csv.rows; row++) {
		for (size_t k = 0; k < sizeof(known) / sizeof(known[0]); k++) {
			struct measured out;

			if (strcmp(csv_at(&csv, row, "item"), known[k].item) != 0)
				continue;
			measure_amount(MEASURE_VOLUME, SUPPLY_OTHER,
			               (int64_t)(strtod(csv_at(&csv, row, "equals"), NULL) * 1000 + 0.5), UNITS_US,
			               &out);
			ck_assert_str_eq(out.words, known[k].words);
			ck_assert_int_le(llabs(out.filled - out.wanted), 1);
			seen++;
		}
	}
	ck_assert_int_eq(seen, 7);
	csv_free(&csv);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("measure", .seconds = 30),
	TEST(us_volumes_read_as_a_cook_writes_them),
	TEST(every_us_volume_is_close_in_few_tools),
	TEST(what_no_tool_holds_says_its_error),
	TEST(every_acid_is_enough),
	TEST(metric_volumes_are_close_or_say_so),
	TEST(metric_amounts_read_as_a_cook_writes_them),
	TEST(sugar_is_measured_in_cups_and_fruit_on_the_scale),
	TEST(extremes_are_survived),
	TEST(published_measures_come_out_whole),
};

TESTS("measure", listed)
