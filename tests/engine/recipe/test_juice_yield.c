/* Fruit by its names, published yields of juice, and own runs weighed against them. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "engine/recipe/fruit.h"
#include "engine/recipe/juice_yield.h"
#include "support/csv.h"
#include "support/tests.h"

/* --- names ------------------------------------------------------------------------ */

START_TEST(one_and_many_are_the_same_fruit)
{
	ck_assert(fruit_same("Grapes", "grape"));
	ck_assert(fruit_same(" sour-cherries", "Sour cherry "));
	ck_assert(fruit_same("peaches", "peach"));
	ck_assert(fruit_same("tomatoes", "tomato"));
	ck_assert(!fruit_same("grapes", "wine grapes"));
	ck_assert(!fruit_same("grapes", ""));
}
END_TEST

START_TEST(a_fruit_is_found_in_whole_words_only)
{
	ck_assert(fruit_in("grapes", "grape juice"));
	ck_assert(fruit_in("strawberries", "strawberries"));
	ck_assert(!fruit_in("pineapples", "apple juice"));
	ck_assert(!fruit_in("apples", "pineapple juice"));
	ck_assert(!fruit_in("wine grapes", "grape juice"));
	ck_assert(!fruit_in("", "grape juice"));
	ck_assert(fruit_makes("wine grapes", "grape juice"));
	ck_assert(fruit_makes("blackberries", "berries"));
	ck_assert(!fruit_makes("berries", "blackberry juice"));
	ck_assert(!fruit_makes("quinces", "grape juice"));
}
END_TEST

START_TEST(a_name_that_is_too_long_is_cut_and_ends)
{
	char name[400];
	char plain[FRUIT_NAME_BYTES];

	memset(name, 's', sizeof(name) - 1);
	name[sizeof(name) - 1] = '\0';
	fruit_plain(name, plain);
	ck_assert_uint_lt(strlen(plain), sizeof(plain));
	memset(name, ' ', 200);
	fruit_plain(name, plain);
	ck_assert_uint_lt(strlen(plain), sizeof(plain));
}
END_TEST

/* --- published yields --------------------------------------------------------------- */

static const char *measure(const struct csv *csv, const char *item, const char *unit2)
{
	for (size_t i = 0; i < csv->rows; i++)
		if (strcmp(csv_at(csv, i, "item"), item) == 0 && strcmp(csv_at(csv, i, "unit2"), unit2) == 0)
			return csv_at(csv, i, "equals");
	ck_abort_msg("measures.csv has no %s in %s", item, unit2);
	return "";
}

static double quarts(double ul_per_kg, double pounds)
{
	return ul_per_kg * pounds * 0.45359237 / 946352.946;
}

/* USDA AIB 539 (rev. 2015), page 2-15: 3.5 lb a quart of grape juice,
 * 24.5 lb 7 quarts, 26 lb a lug, 7-9 quarts a lug (schema/measures.csv). */
START_TEST(grapes_yield_what_the_quantity_line_says)
{
	struct csv measures = csv_read("measures.csv");
	struct juice_yield yield;

	ck_assert_str_eq(measure(&measures, "grape juice", "quarts yield"), "7-9");
	juice_yield_of("grapes", 0, NULL, &yield);
	ck_assert_double_eq_tol(quarts(yield.ul_per_kg[BOUND_LIKELY], 24.5), 7.0, 0.001);
	ck_assert_double_eq_tol(quarts(yield.ul_per_kg[BOUND_LOW], 26.0), 7.0, 0.002);
	ck_assert_double_eq_tol(quarts(yield.ul_per_kg[BOUND_HIGH], 26.0), 9.0, 0.002);
	ck_assert_double_eq_tol(pounds_of_yield(yield.ul_per_kg[BOUND_LIKELY]), 3.5, 1e-9);
	csv_free(&measures);
}
END_TEST

/* The other rows against the lines of schema/measures.csv that they are made of;
 * the sources stand there. */
START_TEST(the_other_fruits_yield_what_their_lines_say)
{
	static const struct {
		const char *fruit;
		const char *item;
		const char *unit2;
		const char *equals;
		double pounds; /* that give so many quarts */
		double low;
		double high;
	} lines[] = {
		{ "tomatoes", "tomato juice", "quarts yield", "15-18", 53, 15, 18 },
		{ "apples", "apples", "quarts juice", "10-12", 48, 10, 12 },
		{ "sour cherries", "sour cherry juice for jelly (1/2 cup water added)", "cups juice", "3-3.5", 3, 0.75,
		  0.875 },
	};
	struct csv measures = csv_read("measures.csv");

	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++) {
		struct juice_yield yield;

		ck_assert_str_eq(measure(&measures, lines[i].item, lines[i].unit2), lines[i].equals);
		juice_yield_of(lines[i].fruit, 0, NULL, &yield);
		ck_assert_double_eq_tol(quarts(yield.ul_per_kg[BOUND_LOW], lines[i].pounds) / lines[i].low, 1, 0.0005);
		ck_assert_double_eq_tol(quarts(yield.ul_per_kg[BOUND_HIGH], lines[i].pounds) / lines[i].high, 1,
		                        0.0005);
	}
	csv_free(&measures);
}
END_TEST

/* Wisconsin Extension: 2.5 quarts of blackberries give 4 cups, 3 quarts 3.5, 2
 * quarts of berries 4; Georgia table: 36 lb a crate of 24 quarts. */
START_TEST(berries_yield_by_the_weight_of_a_crate)
{
	struct juice_yield black;
	struct juice_yield any;

	juice_yield_of("blackberries", 0, NULL, &black);
	juice_yield_of("raspberries", 0, NULL, &any);
	ck_assert_double_eq_tol(quarts(black.ul_per_kg[BOUND_HIGH], 2.5 * 36 / 24), 1.0, 0.0005);
	ck_assert_double_eq_tol(quarts(black.ul_per_kg[BOUND_LOW], 3.0 * 36 / 24), 0.875, 0.0005);
	ck_assert_double_eq_tol(quarts(any.ul_per_kg[BOUND_HIGH], 2.0 * 36 / 24), 1.0, 0.0005);
	ck_assert_str_eq(any.row->fruit, "berries");
}
END_TEST

/* USDA AIB 539 (rev. 2015), page 7-5: a pound gives a cup of clear juice. */
START_TEST(a_fruit_without_a_row_gives_a_cup_a_pound)
{
	struct juice_yield yield;

	juice_yield_of("quinces", 0, NULL, &yield);
	ck_assert_str_eq(yield.row->fruit, "any fruit");
	ck_assert_double_eq_tol(quarts(yield.ul_per_kg[BOUND_LIKELY], 4.0), 1.0, 1e-9);
	ck_assert_int_eq(yield.row->confirmed, CONFIRMED_PRACTICE);
	ck_assert_str_eq(yield_row_of("cherries")->fruit, "any fruit"); /* sweet ones have no row */
	ck_assert_str_eq(yield_row_of("wine grapes")->fruit, "grapes");
	ck_assert_str_eq(yield_row_of("")->fruit, "any fruit");
}
END_TEST

START_TEST(every_row_has_a_source_and_a_spread)
{
	struct csv csv = csv_read("yield.csv");

	ck_assert_uint_eq(csv.rows, yield_row_count);
	for (size_t i = 0; i < yield_row_count; i++) {
		ck_assert_str_eq(yield_rows[i].fruit, csv_at(&csv, i, "fruit"));
		ck_assert_str_eq(yield_rows[i].source, csv_at(&csv, i, "source"));
		ck_assert_int_gt(yield_rows[i].most_thou_lb, yield_rows[i].likely_thou_lb);
		ck_assert_int_gt(yield_rows[i].likely_thou_lb, yield_rows[i].least_thou_lb);
	}
	csv_free(&csv);
}
END_TEST

/* --- own runs ------------------------------------------------------------------------ */

/* Bayes Rules! (Johnson, Ott, Dogucu), chapter 5, the hippocampus example: prior
 * N(6.5, 0.4^2), sigma 0.5, n 25, mean 5.735; R's summarize_normal_normal printed
 * mean 5.78, var 0.009411765, sd 0.09701425 (read on a reading club's page). */
START_TEST(the_worked_example_of_the_book_comes_out)
{
	struct weighed out = weigh(6.5, 0.16, 5.735, 0.25, 25);

	ck_assert_double_eq_tol(out.mean, 5.78, 0.0005);
	ck_assert_double_eq_tol(out.variance, 0.009411765, 5e-10);
	ck_assert_double_eq_tol(sqrt(out.variance), 0.09701425, 5e-9);
}
END_TEST

/* Z = n / (n + k), k = process variance / variance of the means: a calculator's
 * page prints n 5, 25,000 and 5,000: k 5, Z 0.5; k 25, n 10: Z 28.6 %. */
START_TEST(the_weight_is_the_credibility_factor)
{
	ck_assert_double_eq_tol(weigh(100, 5000, 200, 25000, 5).weight, 0.5, 1e-12);
	ck_assert_double_eq_tol(weigh(100, 5000, 200, 25000, 5).mean, 150.0, 1e-9);
	ck_assert_double_eq_tol(weigh(0, 1, 1, 25, 10).weight, 0.286, 0.0005);
	ck_assert_double_eq_tol(weigh(0, 1, 1, 0, 1).weight, 1.0, 1e-12); /* runs without any scatter */
}
END_TEST

static void add_run(struct juice_runs *runs, int64_t fruit_mg, int64_t yield)
{
	runs->runs++;
	runs->fruit_mg += fruit_mg;
	runs->juice_ul += yield * (fruit_mg / 1000000);
	runs->yield_sum += yield;
	runs->yield_square_sum += yield * yield;
}

/* Grapes: published 596,099 uL a kg.  These five: mean 500,000, s2 = 250,000,000
 * (deviations -20, -10, 0, 10, 20 thousand; 10^9 / 4). */
static struct juice_runs five_runs(int count)
{
	static const int64_t yields[] = { 500000, 490000, 510000, 480000, 520000 };
	struct juice_runs runs = { 0 };

	for (int i = 0; i < count; i++)
		add_run(&runs, 6000000, yields[i]);
	return runs;
}

START_TEST(four_runs_say_nothing_yet_and_five_do)
{
	struct juice_runs runs = five_runs(4);
	struct juice_yield published;
	struct juice_yield yield;

	juice_yield_of("grapes", 0, NULL, &published);
	juice_yield_of("grapes", 0, &runs, &yield);
	ck_assert(!yield.own);
	ck_assert_int_eq(yield.runs, 4);
	for (int bound = 0; bound < BOUND_COUNT; bound++)
		ck_assert_double_eq(yield.ul_per_kg[bound], published.ul_per_kg[bound]);
	runs = five_runs(5);
	juice_yield_of("grapes", 0, &runs, &yield);
	ck_assert(yield.own);
	ck_assert_double_lt(yield.ul_per_kg[BOUND_LIKELY], published.ul_per_kg[BOUND_LIKELY]);
	ck_assert_double_gt(yield.ul_per_kg[BOUND_LIKELY], 500000);
	ck_assert_double_eq_tol(yield.own_mean, 500000, 1e-6);
}
END_TEST

/* The formula written out again, in its other form. */
START_TEST(five_runs_are_weighed_as_the_formula_says)
{
	struct juice_runs runs = five_runs(5);
	struct juice_yield before;
	struct juice_yield yield;
	double t2;
	double z;
	double mean;

	juice_yield_of("grapes", 0, NULL, &before);
	juice_yield_of("grapes", 0, &runs, &yield);
	t2 = pow((before.ul_per_kg[BOUND_HIGH] - before.ul_per_kg[BOUND_LOW]) / 4.0, 2);
	z = 5.0 / (5.0 + 2.5e8 / t2);
	mean = z * 500000.0 + (1.0 - z) * before.ul_per_kg[BOUND_LIKELY];
	ck_assert_double_eq_tol(yield.weight, z, 1e-9);
	ck_assert_double_eq_tol(yield.ul_per_kg[BOUND_LIKELY], mean, 0.01);
	ck_assert_double_eq_tol(yield.ul_per_kg[BOUND_HIGH] - mean, 2.0 * sqrt(1.0 / (5.0 / 2.5e8 + 1.0 / t2) + 2.5e8),
	                        0.01);
	ck_assert_double_eq_tol(yield.ul_per_kg[BOUND_HIGH] - mean, mean - yield.ul_per_kg[BOUND_LOW], 1e-6);
}
END_TEST

START_TEST(a_day_of_many_runs_is_less_uncertain_than_one)
{
	struct juice_runs runs = five_runs(5);
	struct juice_yield one;
	struct juice_yield ten;

	juice_yield_of("grapes", 6000000, &runs, &one); /* a charge, as each run before */
	juice_yield_of("grapes", 60000000, &runs, &ten);
	ck_assert_double_eq_tol(one.ul_per_kg[BOUND_LIKELY], ten.ul_per_kg[BOUND_LIKELY], 1e-9);
	ck_assert_double_lt(ten.ul_per_kg[BOUND_HIGH], one.ul_per_kg[BOUND_HIGH]);
	ck_assert_double_gt(ten.ul_per_kg[BOUND_LOW], one.ul_per_kg[BOUND_LOW]);
}
END_TEST

START_TEST(many_runs_outweigh_what_is_published)
{
	struct juice_runs runs = { 0 };
	struct juice_yield yield;

	for (int i = 0; i < 400; i++)
		add_run(&runs, 6000000, i % 2 == 0 ? 470000 : 490000);
	juice_yield_of("grapes", 0, &runs, &yield);
	ck_assert_double_gt(yield.weight, 0.999);
	ck_assert_double_eq_tol(yield.ul_per_kg[BOUND_LIKELY], 480000, 100);
}
END_TEST

START_TEST(wild_runs_never_promise_less_than_nothing)
{
	struct juice_runs runs = { 0 };
	struct juice_yield yield;

	for (int i = 0; i < 5; i++)
		add_run(&runs, 1000000, i == 0 ? 2000000 : 1);
	juice_yield_of("grapes", 0, &runs, &yield);
	ck_assert_double_gt(yield.ul_per_kg[BOUND_LOW], 0);
	ck_assert_double_lt(yield.ul_per_kg[BOUND_LOW], yield.ul_per_kg[BOUND_LIKELY]);
	memset(&runs, 0, sizeof(runs));
	for (int i = 0; i < 5; i++)
		add_run(&runs, 1000000, 600000);
	juice_yield_of("grapes", 0, &runs, &yield);
	ck_assert_double_eq_tol(yield.weight, 1.0, 1e-9); /* all alike */
	ck_assert_double_eq_tol(yield.ul_per_kg[BOUND_LIKELY], 600000, 1e-6);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(one_and_many_are_the_same_fruit),
	TEST(a_fruit_is_found_in_whole_words_only),
	TEST(a_name_that_is_too_long_is_cut_and_ends),
	TEST(grapes_yield_what_the_quantity_line_says),
	TEST(the_other_fruits_yield_what_their_lines_say),
	TEST(berries_yield_by_the_weight_of_a_crate),
	TEST(a_fruit_without_a_row_gives_a_cup_a_pound),
	TEST(every_row_has_a_source_and_a_spread),
	TEST(the_worked_example_of_the_book_comes_out),
	TEST(the_weight_is_the_credibility_factor),
	TEST(four_runs_say_nothing_yet_and_five_do),
	TEST(five_runs_are_weighed_as_the_formula_says),
	TEST(a_day_of_many_runs_is_less_uncertain_than_one),
	TEST(many_runs_outweigh_what_is_published),
	TEST(wild_runs_never_promise_less_than_nothing),
};

TESTS("juice yield", listed)
