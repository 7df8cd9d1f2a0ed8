#include <check.h>

#include "engine/recipe/scaling.h"
#include "support/tests.h"

/* Density of sucrose solutions at 20 C, read on the tables page of the Second
 * Physics Laboratory, Nicolaus Copernicus University, Torun (kg/m3 there).  Its
 * rows were read up to 37 %; above, 40 and 50 % read on a calculator's page that
 * names the CRC Handbook, and 60 and 65 % from memory (NBS Circular C440). */
static const struct {
	double brix;
	double density;
	double tolerance;
} published[] = {
	{ 0, 0.99823, 0.00001 }, { 5, 1.01784, 0.0003 },  { 10, 1.03813, 0.0003 }, { 15, 1.05916, 0.0003 },
	{ 20, 1.08094, 0.0003 }, { 25, 1.10354, 0.0003 }, { 30, 1.12698, 0.0003 }, { 35, 1.15127, 0.0003 },
	{ 37, 1.16124, 0.0003 }, { 40, 1.1764, 0.0005 },  { 50, 1.2296, 0.0005 },  { 60, 1.2865, 0.002 },
	{ 65, 1.3163, 0.002 },
};

/* Of water and the volume of the sugar dissolved in it, g/mL. */
static double density_at(double brix)
{
	double ml_per_g = (double)dissolved_sugar_ul(INT64_C(1000000000), brix) / 1e9;
	double sugar = brix / 100.0;

	return 1.0 / (sugar * ml_per_g + (1.0 - sugar) / 0.99823);
}

START_TEST(densities_are_the_published_ones)
{
	for (size_t i = 0; i < sizeof(published) / sizeof(published[0]); i++)
		ck_assert_double_eq_tol(density_at(published[i].brix), published[i].density, published[i].tolerance);
}
END_TEST

/* Water and dissolved sugar together have the volume that the density gives. */
START_TEST(sugar_and_water_fill_what_the_density_says)
{
	for (size_t i = 1; i < sizeof(published) / sizeof(published[0]); i++) {
		double sugar_g = 10.0 * published[i].brix; /* in a kilogram of solution */
		double water_ml = (1000.0 - sugar_g) / 0.99823;
		double sum_ml =
		    water_ml + (double)dissolved_sugar_ul((int64_t)(sugar_g * 1000 + 0.5), published[i].brix) / 1000.0;

		ck_assert_double_eq_tol(sum_ml, 1000.0 / published[i].density, 1000.0 * published[i].tolerance);
	}
}
END_TEST

/* schema/measures.csv: 615, 625, 630 uL a gram at 5, 50, 65 Brix (NBS C440; the
 * upper two from memory). */
START_TEST(the_curve_passes_its_points)
{
	ck_assert_int_eq(dissolved_sugar_ul(1000000, 5), 615000);
	ck_assert_int_eq(dissolved_sugar_ul(1000000, 50), 625000);
	ck_assert_int_eq(dissolved_sugar_ul(1000000, 65), 630000);
	ck_assert_int_eq(dissolved_sugar_ul(1000000, 0), 615000);
	ck_assert_int_eq(dissolved_sugar_ul(1000000, 80), 630000);
	ck_assert_int_eq(dissolved_sugar_ul(0, 50), 0);
	for (int brix = 1; brix <= 70; brix++)
		ck_assert_double_gt(density_at(brix), density_at(brix - 1));
}
END_TEST

/* A built-in recipe, completed with an invented sheet where it waits for one: 4 tsp of
 * pectin (3 g each), 1/3 cup of calcium solution, four batches a pot. */
static struct recipe completed(const char *name)
{
	struct recipe copy = *recipe_named(name);

	if (!recipe_awaits_sheet(&copy))
		return copy;
	copy.multiple_max = 4;
	for (size_t i = 0; i < copy.ingredient_count; i++) {
		if (copy.ingredients[i].supply == SUPPLY_PECTIN_LOW)
			copy.ingredients[i].amount = 12000;
		if (copy.ingredients[i].supply == SUPPLY_CALCIUM_SOLUTION)
			copy.ingredients[i].amount = 78863;
	}
	return copy;
}

static struct yield yield_of(const char *name, int multiple, const char *jar)
{
	struct recipe recipe = completed(name);
	struct yield yield;

	ck_assert_msg(pot_yield(&recipe, multiple, jar, &yield, NULL), "%s in %s", name, jar);
	return yield;
}

/* 1 gal juice + 8 cups sugar and what goes with them: about 12 pints (common practice,
 * no source). */
START_TEST(a_gallon_of_juice_gives_about_twelve_pints)
{
	struct yield yield = yield_of("grape jelly, low sugar", 4, "pint");

	ck_assert_int_le(yield.jars_low, 12);
	ck_assert_int_ge(yield.jars_high, 12);
	ck_assert_int_ge(yield.jars_low, 10);
	ck_assert_int_le(yield.jars_high, 13);
	/* 3,785 + 315 mL of liquid, 48 g of pectin and 1,600 g of sugar at about 0.62 mL a gram. */
	ck_assert_int_ge(yield.volume_high_ul, 5050000);
	ck_assert_int_le(yield.volume_high_ul, 5150000);
}
END_TEST

/* Yields printed with the recipes; sources in schema/recipe.csv. */
START_TEST(printed_yields_lie_within_the_range)
{
	static const struct {
		const char *recipe;
		const char *jar;
		int low;
		int high;
	} printed[] = {
		{ "grape jelly", "half_pint", 8, 9 },
		{ "strawberry jam", "half_pint", 9, 10 },
		{ "berry jam without added pectin", "half_pint", 7, 8 },
		{ "apple jelly", "half_pint", 4, 5 },
		{ "apple butter", "pint", 8, 9 },
		{ "peaches in light syrup", "quart", 7, 7 },
		{ "pears in light syrup", "quart", 7, 7 },
		{ "crushed tomatoes", "quart", 7, 7 },
		{ "green beans", "quart", 7, 7 },
	};

	for (size_t i = 0; i < sizeof(printed) / sizeof(printed[0]); i++) {
		struct yield yield = yield_of(printed[i].recipe, 1, printed[i].jar);

		ck_assert_msg(yield.jars_low <= printed[i].high && yield.jars_high >= printed[i].low &&
		                  yield.jars_likely >= printed[i].low - 1 && yield.jars_likely <= printed[i].high + 1,
		              "%s: %d to %d, likely %d", printed[i].recipe, yield.jars_low, yield.jars_high,
		              yield.jars_likely);
	}
}
END_TEST

START_TEST(ranges_are_in_order_for_every_recipe_and_jar)
{
	for (size_t i = 0; i < recipe_count; i++) {
		for (size_t j = 0; j < jar_size_count; j++) {
			struct yield one;

			if (!recipe_allows_jar(&recipes[i], jar_sizes[j].name))
				continue;
			one = yield_of(recipes[i].name, 1, jar_sizes[j].name);
			ck_assert_int_ge(one.jars_low, 1);
			ck_assert_int_le(one.jars_low, one.jars_likely);
			ck_assert_int_le(one.jars_likely, one.jars_high);
			ck_assert_int_le(one.volume_low_ul, one.volume_high_ul);
		}
	}
}
END_TEST

START_TEST(a_jar_the_recipe_does_not_allow_is_refused)
{
	struct yield yield;
	struct fault fault = { 0 };

	ck_assert(!pot_yield(recipe_named("grape jelly"), 1, "quart", &yield, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert(!pot_yield(recipe_named("grape jelly"), 1, NULL, &yield, &fault));
}
END_TEST

/* Nominal volumes: schema/jar.csv; shares: common practice, no source. */
START_TEST(a_jar_takes_less_the_larger_its_headspace)
{
	const struct jar_size *quart = jar_size_named("quart");

	ck_assert_int_eq(jar_fill_ul(quart, 250), 889572);
	ck_assert_int_eq(jar_fill_ul(quart, 500), 842254);
	ck_assert_int_eq(jar_fill_ul(quart, 1000), 757082);
	ck_assert_int_eq(jar_fill_ul(jar_size_named("half_pint"), 250), 222393);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(densities_are_the_published_ones),
	TEST(sugar_and_water_fill_what_the_density_says),
	TEST(the_curve_passes_its_points),
	TEST(a_gallon_of_juice_gives_about_twelve_pints),
	TEST(printed_yields_lie_within_the_range),
	TEST(ranges_are_in_order_for_every_recipe_and_jar),
	TEST(a_jar_the_recipe_does_not_allow_is_refused),
	TEST(a_jar_takes_less_the_larger_its_headspace),
};

TESTS("yield", listed)
