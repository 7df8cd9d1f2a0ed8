/* What is published of drying, row by row, and what is worked out of it. */
#include <string.h>

#include "engine/drying/drying.h"
#include "support/tests.h"

#define CUPS(n) ((n)*INT64_C(236588))
#define IN(n) ((n)*1000)
#define FAHRENHEIT(f) (((f)-32) * INT64_C(5000) / 9)

static void takes(const char *food, int low, int high)
{
	const struct drying_row *row = drying_named(food);

	ck_assert_ptr_nonnull(row);
	ck_assert_msg(row->hours_low == low && row->hours_high == high, "%s: %d to %d h", food, row->hours_low,
	              row->hours_high);
}

START_TEST(published_hours_are_those_of_the_publications)
{
	takes("fruit leather", 6, 8);    /* NCHFP, Drying: Fruit Leathers, by MU Extension */
	takes("prunes", 24, 36);         /* MU Extension GH1563 */
	takes("sliced tomatoes", 8, 10); /* Oregon State University Extension (2012) */
}
END_TEST

/* K-State and USU name no hours for these: the house says them. */
START_TEST(hours_that_are_not_published_are_not_made_up)
{
	static const char *const foods[] = { "plums",  "apricots",    "peaches",     "nectarines",
		                             "apples", "blueberries", "strawberries" };

	for (size_t i = 0; i < sizeof(foods) / sizeof(foods[0]); i++)
		takes(foods[i], 0, 0);
	ck_assert_ptr_null(drying_named("medlars"));
}
END_TEST

START_TEST(a_disputed_row_is_kept_and_never_offered)
{
	int disputed = 0;

	for (size_t i = 0; i < drying_row_count; i++)
		disputed += drying_rows[i].confirmed == CONFIRMED_DISPUTED;
	ck_assert_int_eq(disputed, 1);
	ck_assert_int_eq(drying_named("apple rings")->confirmed, CONFIRMED_YES);
}
END_TEST

/* USDA FSIS, Jerky and Food Safety: heated inside before it is dried. */
START_TEST(meat_is_refused_by_any_of_its_names)
{
	ck_assert_int_eq(drying_named("meat")->class, DRYING_REFUSED);
	ck_assert_int_eq(drying_named("Jerky")->class, DRYING_REFUSED);
	ck_assert_int_eq(drying_named("fish")->class, DRYING_REFUSED);
	ck_assert_ptr_nonnull(strstr(drying_named("chicken")->pretreatment, "165 F"));
}
END_TEST

/* 2 cups on 13 x 15 in: NCHFP. */
START_TEST(leather_takes_whole_trays_and_never_lies_deeper)
{
	ck_assert_int_eq(leather_trays(CUPS(2), IN(13), IN(15)), 1);
	ck_assert_int_eq(leather_trays(CUPS(3), IN(13), IN(15)), 2);
	ck_assert_int_eq(leather_trays(CUPS(3), IN(14), IN(14)), 2);
	ck_assert_int_eq(leather_trays(CUPS(4), IN(13), IN(15)), 2);
	ck_assert_int_eq(leather_trays(CUPS(4), IN(10), IN(10)), 4); /* 3.9 */
	ck_assert_int_eq(leather_trays(CUPS(2), 0, IN(15)), 0);
	ck_assert_int_eq(leather_trays(0, IN(13), IN(15)), 0);
}
END_TEST

/* NCHFP, Packaging and Storing Dried Foods: fruit 12 months at 60 F, 6 at 80 F; vegetables half of it. */
START_TEST(it_keeps_by_the_warmth_of_the_store)
{
	ck_assert_int_eq(drying_months(DRYING_FRUIT, true, FAHRENHEIT(60)), 12);
	ck_assert_int_eq(drying_months(DRYING_FRUIT, true, FAHRENHEIT(50)), 12);
	ck_assert_int_eq(drying_months(DRYING_FRUIT, true, FAHRENHEIT(80)), 6);
	ck_assert_int_eq(drying_months(DRYING_VEGETABLE, true, FAHRENHEIT(60)), 6);
	ck_assert_int_eq(drying_months(DRYING_VEGETABLE, true, FAHRENHEIT(80)), 3);
	ck_assert_int_eq(drying_months(DRYING_LEATHER, true, FAHRENHEIT(70)), 1);
}
END_TEST

START_TEST(between_two_figures_and_unread_the_shorter_holds)
{
	ck_assert_int_eq(drying_months(DRYING_FRUIT, true, FAHRENHEIT(61)), 6);
	ck_assert_int_eq(drying_months(DRYING_FRUIT, false, 0), 6);
	ck_assert_int_eq(drying_months(DRYING_VEGETABLE, false, 0), 3);
}
END_TEST

START_TEST(a_store_warmer_than_any_figure_has_none)
{
	ck_assert_int_eq(drying_months(DRYING_FRUIT, true, FAHRENHEIT(82)), 0);
	ck_assert_int_eq(drying_months(DRYING_REFUSED, true, FAHRENHEIT(60)), 0);
}
END_TEST

static struct recipe pot_of(enum pectin pectin, struct ingredient second)
{
	struct recipe recipe = { .name = "invented",
		                 .pectin = pectin,
		                 .acidity = ACIDITY_ACID,
		                 .ingredient_count = 2,
		                 .ingredients = { { .name = "strawberries", .supply = SUPPLY_OTHER } } };

	recipe.ingredients[1] = second;
	return recipe;
}

static bool may(struct recipe recipe, bool *published)
{
	struct fault fault = { 0 };
	bool done = leather_may(&recipe, published, &fault);

	ck_assert_int_eq(fault.kind, done ? FAULT_NONE : FAULT_REFUSED);
	return done;
}

START_TEST(fruit_puree_is_published_with_its_acid)
{
	bool published;

	ck_assert(
	    may(pot_of(PECTIN_NONE, (struct ingredient){ .name = "apples", .supply = SUPPLY_FRUIT }), &published));
	ck_assert(published);
	ck_assert(
	    may(pot_of(PECTIN_NONE, (struct ingredient){ .name = "bottled lemon juice", .supply = SUPPLY_LEMON_JUICE }),
	        &published));
	ck_assert(published);
}
END_TEST

START_TEST(a_sweetener_leaves_the_hours_to_the_house)
{
	bool published;

	ck_assert(may(pot_of(PECTIN_NONE, (struct ingredient){ .name = "sugar", .supply = SUPPLY_SUGAR }), &published));
	ck_assert(!published);
	ck_assert(may(pot_of(PECTIN_NONE, (struct ingredient){ .name = "honey", .supply = SUPPLY_OTHER }), &published));
	ck_assert(!published);
}
END_TEST

START_TEST(what_is_no_puree_is_refused)
{
	static const struct ingredient others[] = {
		{ .name = "grape juice", .supply = SUPPLY_JUICE }, { .name = "salt", .supply = SUPPLY_SALT },
		{ .name = "vinegar", .supply = SUPPLY_VINEGAR },   { .name = "butter", .supply = SUPPLY_BUTTER },
		{ .name = "milk", .supply = SUPPLY_OTHER },
	};
	struct recipe low = pot_of(PECTIN_NONE, others[0]);
	bool published;

	for (size_t i = 0; i < sizeof(others) / sizeof(others[0]); i++)
		ck_assert_msg(!may(pot_of(PECTIN_NONE, others[i]), &published), "%s", others[i].name);
	ck_assert(
	    !may(pot_of(PECTIN_REGULAR, (struct ingredient){ .name = "apples", .supply = SUPPLY_FRUIT }), &published));
	low.acidity = ACIDITY_LOW_ACID;
	low.ingredient_count = 1;
	ck_assert(!may(low, &published));
}
END_TEST

static const struct listed_test listed[] = {
	TEST(published_hours_are_those_of_the_publications),
	TEST(hours_that_are_not_published_are_not_made_up),
	TEST(a_disputed_row_is_kept_and_never_offered),
	TEST(meat_is_refused_by_any_of_its_names),
	TEST(leather_takes_whole_trays_and_never_lies_deeper),
	TEST(it_keeps_by_the_warmth_of_the_store),
	TEST(between_two_figures_and_unread_the_shorter_holds),
	TEST(a_store_warmer_than_any_figure_has_none),
	TEST(fruit_puree_is_published_with_its_acid),
	TEST(a_sweetener_leaves_the_hours_to_the_house),
	TEST(what_is_no_puree_is_refused),
};

TESTS("drying", listed)
