/* What is said beside the minutes of a process. */
#include <check.h>
#include <string.h>

#include "engine/food/caution.h"
#include "engine/food/food.h"
#include "support/tests.h"

static struct cautions cautions;

static void ask(const char *food, const char *pack, const char *jar, enum method method)
{
	struct process_query query = {
		.food = food,
		.pack = pack,
		.jar = jar,
		.method = method,
		.pressure_psi = NO_PRESSURE,
		.elevation = { .known = true, .um = 300 * FOOT_UM },
	};
	struct process process;
	struct fault fault = { 0 };

	ck_assert_msg(process_find(&query, &process, &fault), "%s", fault.sentence);
	process_cautions(&process, &cautions);
}

static bool says(const char *words)
{
	for (size_t i = 0; i < cautions.count; i++)
		if (strstr(cautions.sentence[i], words) != NULL)
			return true;
	return false;
}

/* USDA AIB 539, rev. 2015, Guide 3, p. 3-5. */
START_TEST(acid_is_told_for_the_jar)
{
	ask("tomatoes crushed", "hot", "quart", METHOD_BOILING_WATER);
	ck_assert(says("each quart, in a pressure canner too: 2 tbsp bottled lemon juice or 1/2 tsp citric acid or "
	               "4 tbsp vinegar of 5 percent"));
	ask("tomatoes crushed", "hot", "pint", METHOD_BOILING_WATER);
	ck_assert(says("1 tbsp bottled lemon juice or 1/4 tsp citric acid"));
	ck_assert(!says("vinegar of 5 percent")); /* no amount is printed for a pint */
	ask("tomatoes crushed", "hot", "half_pint", METHOD_BOILING_WATER);
	ck_assert(says("1-1/2 tsp bottled lemon juice"));
	ask("chile salsa", "hot", "pint", METHOD_BOILING_WATER);
	ck_assert(says("acid by the printed recipe, never less: vinegar"));
	ask("sauerkraut", "hot", "pint", METHOD_BOILING_WATER);
	ck_assert(says("salt as printed"));
	ask("peaches", "hot", "pint", METHOD_BOILING_WATER);
	ck_assert(!says("acid in each") && !says("acid by"));
}
END_TEST

/* USDA AIB 539, rev. 2015, Guide 1, p. 1-20; Guide 5, fish in quart jars. */
START_TEST(a_pressure_canner_is_vented)
{
	ask("asparagus", "hot", "pint", METHOD_DIAL_GAUGE);
	ck_assert(says("vent 10 minutes"));
	ask("fish in quart jars", "raw", "quart", METHOD_DIAL_GAUGE);
	ck_assert(says("3 qt of water in the canner; 20 minutes on high"));
	ask("smoked fish", "raw", "pint", METHOD_DIAL_GAUGE);
	ck_assert(says("a canner of 16 to 22 quarts"));
	ask("peaches", "hot", "pint", METHOD_BOILING_WATER);
	ck_assert(!says("vent"));
}
END_TEST

/* Guide 1, p. 1-10, and the later word of the national center. */
START_TEST(steam_canners_are_told_both_ways)
{
	ask("peaches", "hot", "pint", METHOD_STEAM);
	ck_assert(says("2015 (AIB 539) does not yet recommend steam canners"));
	ck_assert(says("for acid food and at most 45 minutes"));
	ask("peaches", "hot", "pint", METHOD_BOILING_WATER);
	ck_assert(!says("steam"));
}
END_TEST

START_TEST(what_is_in_the_jar_and_whose_recipe_it_is)
{
	ask("apple pie filling", "hot", "quart", METHOD_BOILING_WATER);
	ck_assert(says("cook-type modified starch, 1 1/2 cups for 7 quarts"));
	ck_assert(says("not processed again: Nebraska"));
	ck_assert(says("own recipes: none"));
	ask("jam or jelly with added pectin", "hot_sterile_jar", "half_pint", METHOD_BOILING_WATER);
	ck_assert(says("own recipes (regular pectin): "));
	ck_assert(says("own recipes (low-methoxyl pectin): "));
	ck_assert(says("must not be added: a thickener; flour"));
	ck_assert(says("in its own amount: butter"));
}
END_TEST

/* Every food and pack that is offered has room for all that is said of it. */
START_TEST(nothing_that_is_said_is_cut)
{
	for (size_t i = 0; i < process_row_count; i++) {
		const struct process process = {
			.row = &process_rows[i],
			.jar = &jar_sizes[process_rows[i].jar],
			.jar_in_table = &jar_sizes[process_rows[i].jar],
			.method = process_rows[i].method,
		};

		process_cautions(&process, &cautions);
		ck_assert_uint_gt(cautions.count, 0);
		for (size_t c = 0; c < cautions.count; c++)
			ck_assert_uint_lt(strlen(cautions.sentence[c]), CAUTION_BYTES - 4);
	}
}
END_TEST

static const struct listed_test listed[] = {
	TEST(acid_is_told_for_the_jar),         TEST(a_pressure_canner_is_vented),
	TEST(steam_canners_are_told_both_ways), TEST(what_is_in_the_jar_and_whose_recipe_it_is),
	TEST(nothing_that_is_said_is_cut),
};

TESTS("caution", listed)
