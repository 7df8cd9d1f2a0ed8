#include <check.h>
#include <string.h>

#include "engine/recipe/scaling.h"
#include "support/tests.h"

#define QUART_UL INT64_C(946353)

static const struct recipe *recipe(const char *name)
{
	const struct recipe *found = recipe_named(name);

	ck_assert_msg(found != NULL, "no recipe %s", name);
	return found;
}

/* A built-in recipe completed with an invented sheet: 5 tsp of pectin (3 g each), 3 tsp
 * of calcium solution, no acid, four batches a pot. */
static struct recipe completed(const char *name)
{
	struct recipe copy = *recipe(name);

	copy.multiple_max = 4;
	for (size_t i = 0; i < copy.ingredient_count; i++) {
		if (copy.ingredients[i].supply == SUPPLY_PECTIN_LOW)
			copy.ingredients[i].amount = 15000;
		if (copy.ingredients[i].supply == SUPPLY_CALCIUM_SOLUTION)
			copy.ingredients[i].amount = 14787;
	}
	return copy;
}

static const struct measured *line(const struct scaled *scaled, const char *name)
{
	for (size_t i = 0; i < scaled->count; i++) {
		if (strcmp(scaled->lines[i].ingredient->name, name) == 0)
			return &scaled->lines[i].measured;
	}
	ck_abort_msg("no ingredient %s", name);
	return NULL;
}

START_TEST(four_low_sugar_batches_are_a_gallon)
{
	struct recipe jelly = completed("grape jelly, low sugar");
	struct scaled scaled;

	ck_assert(scale_lines(&jelly, 4, UNITS_US, NULL, &scaled, NULL));
	ck_assert_str_eq(line(&scaled, "grape juice")->words, "1 gal");
	ck_assert_str_eq(line(&scaled, "sugar")->words, "8 cups");
	ck_assert_str_eq(line(&scaled, "low-methoxyl pectin")->words, "6 tbsp + 2 tsp");
	ck_assert_str_eq(line(&scaled, "calcium solution")->words, "1/4 cup");
	ck_assert(!scaled.rounding_shown);
}
END_TEST

/* USDA AIB 539 (rev. 2015), page 1-30; MSU sheets 01600961, 01600551. */
START_TEST(regular_pectin_is_one_batch_a_pot)
{
	struct scaled scaled;

	ck_assert(scale_lines(recipe("grape jelly"), 1, UNITS_US, NULL, &scaled, NULL));
	ck_assert_str_eq(line(&scaled, "sugar")->words, "7 cups");
	ck_assert_int_eq(largest_multiple(recipe("grape jelly"), 100 * QUART_UL), 1);
}
END_TEST

START_TEST(low_methoxyl_goes_up_to_the_stated_limit)
{
	struct recipe jelly = completed("apple jelly, low sugar");

	ck_assert_int_eq(largest_multiple(&jelly, 0), 4);
	ck_assert_int_eq(largest_multiple(&jelly, 1000 * QUART_UL), 4);
}
END_TEST

START_TEST(a_pot_keeps_its_room_for_foam)
{
	struct recipe of_sheet = completed("grape jelly, low sugar");
	const struct recipe *jelly = &of_sheet;
	int64_t full = batch_volume_ul(jelly) * 100 / (100 - jelly->foam_percent);
	struct fault fault = { 0 };

	ck_assert_int_eq(largest_multiple(jelly, 2 * full + 2), 2);
	ck_assert_int_eq(largest_multiple(jelly, 2 * full - 2), 1);
	ck_assert_int_eq(largest_multiple(jelly, full - 2), 0);
	ck_assert_int_eq(largest_multiple(jelly, 0), 4);
	ck_assert(fits_pot(jelly, 2, 2 * full + 2, UNITS_US, &fault));
	ck_assert(!fits_pot(jelly, 3, 2 * full + 2, UNITS_US, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "This pot takes 2"));
	ck_assert(!fits_pot(jelly, 1, full - 2, UNITS_US, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "larger pot"));
}
END_TEST

/* The largest multiple fits the pot, and one more does not or is not allowed. */
START_TEST(every_recipe_and_pot_agree_on_the_limit)
{
	for (size_t i = 0; i < recipe_count; i++) {
		for (int64_t pot = QUART_UL; pot < 40 * QUART_UL; pot += QUART_UL) {
			int most = largest_multiple(&recipes[i], pot);

			ck_assert_int_le(most, recipes[i].multiple_max);
			ck_assert(most == recipes[i].multiple_max ||
			          !fits_pot(&recipes[i], most + 1, pot, UNITS_US, NULL));
			ck_assert(most == 0 || fits_pot(&recipes[i], most, pot, UNITS_METRIC, NULL));
		}
	}
}
END_TEST

/* Before its sheet's amounts are known a recipe is neither scaled nor has it a yield. */
START_TEST(a_recipe_that_waits_for_its_sheet_is_refused)
{
	struct recipe jelly = completed("apple jelly, low sugar");
	const struct recipe *waits = recipe("apple jelly, low sugar");
	struct scaled scaled;
	struct yield yield;
	struct fault fault = { 0 };

	ck_assert(scale_lines(&jelly, 1, UNITS_US, "pint", &scaled, NULL));
	ck_assert(!scale_lines(waits, 1, UNITS_US, "pint", &scaled, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_ptr_nonnull(
	    strstr(fault.sentence, "The sheet's amounts of apple jelly, low sugar are not known yet"));
	ck_assert(!pot_yield(waits, 1, "pint", &yield, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "are not known yet"));
}
END_TEST

START_TEST(nonsense_is_refused)
{
	struct scaled scaled;
	struct fault fault = { 0 };

	ck_assert(!scale_lines(recipe("grape juice"), 0, UNITS_US, NULL, &scaled, &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	ck_assert(!scale_lines(recipe("grape juice"), 1, UNITS_US, "half_pint", &scaled, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert(!scale_lines(recipe("grape juice"), 1, UNITS_US, "bucket", &scaled, &fault));
}
END_TEST

START_TEST(what_goes_into_jars_is_told_for_the_jar)
{
	struct scaled scaled;

	ck_assert(scale_lines(recipe("crushed tomatoes"), 1, UNITS_US, "quart", &scaled, NULL));
	ck_assert_str_eq(line(&scaled, "bottled lemon juice")->words, "2 tbsp");
	ck_assert_str_eq(line(&scaled, "canning salt")->words, "1 tsp");
	ck_assert_str_eq(line(&scaled, "tomatoes")->words, "22 lb");
	ck_assert(scale_lines(recipe("crushed tomatoes"), 1, UNITS_US, "pint", &scaled, NULL));
	ck_assert_str_eq(line(&scaled, "bottled lemon juice")->words, "1 tbsp");
	ck_assert_str_eq(line(&scaled, "canning salt")->words, "1/2 tsp");
	ck_assert(scale_lines(recipe("crushed tomatoes"), 1, UNITS_METRIC, "quart", &scaled, NULL));
	ck_assert_str_eq(line(&scaled, "bottled lemon juice")->words, "2 x 15 mL");
}
END_TEST

START_TEST(a_rounding_over_two_percent_is_marked)
{
	struct recipe odd = *recipe("grape juice");
	struct scaled scaled;

	odd.ingredients[0].amount = 200; /* a third of 1/8 tsp */
	ck_assert(scale_lines(&odd, 1, UNITS_US, NULL, &scaled, NULL));
	ck_assert(scaled.rounding_shown);
	for (size_t i = 0; i < recipe_count; i++) {
		struct recipe one = recipe_awaits_sheet(&recipes[i]) ? completed(recipes[i].name) : recipes[i];

		ck_assert(scale_lines(&one, 1, UNITS_US, NULL, &scaled, NULL));
		ck_assert_msg(!scaled.rounding_shown, "%s", recipes[i].name);
	}
}
END_TEST

static const struct listed_test listed[] = {
	TEST(four_low_sugar_batches_are_a_gallon),
	TEST(regular_pectin_is_one_batch_a_pot),
	TEST(low_methoxyl_goes_up_to_the_stated_limit),
	TEST(a_pot_keeps_its_room_for_foam),
	TEST(every_recipe_and_pot_agree_on_the_limit),
	TEST(a_recipe_that_waits_for_its_sheet_is_refused),
	TEST(nonsense_is_refused),
	TEST(what_goes_into_jars_is_told_for_the_jar),
	TEST(a_rounding_over_two_percent_is_marked),
};

TESTS("scaling", listed)
