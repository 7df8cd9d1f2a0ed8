/* What is published of drying, row by row, and what is worked out of it. */
#include <stdio.h>
#include <string.h>

#include "engine/drying/drying.h"
#include "engine/food/food.h"
#include "support/tests.h"

#define CUPS(n) ((n)*INT64_C(236588))
#define POUNDS(n) ((n)*INT64_C(45359237) / 100)
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

static void is_found_as(const char *typed, const char *food)
{
	const struct drying_row *row = drying_named(typed);

	ck_assert_msg(row != NULL && strcmp(row->food, food) == 0, "%s: %s", typed, row == NULL ? "none" : row->food);
}

START_TEST(a_food_is_found_by_its_words)
{
	is_found_as("plum leather", "fruit leather");
	is_found_as("Apple Leather", "fruit leather");
	is_found_as("plum puree", "fruit leather");
	is_found_as("puree of plums", "fruit leather");
	is_found_as("plum", "plums");
	is_found_as("Italian plums", "plums");
	is_found_as("plum halves", "plums");
	is_found_as("plums, stoned", "plums");
	is_found_as("whole plums", "prunes");
	is_found_as("Italian prune plums", "prunes");
	is_found_as("apple slices", "apples");
	is_found_as("tomato", "tomatoes");
	is_found_as("ripe strawberries", "strawberries");
}
END_TEST

/* Another product, or another cut than the published one, has none of its hours. */
START_TEST(what_only_has_the_name_of_a_food_in_it_is_not_that_food)
{
	static const char *const others[] = { "plum jam",  "apple butter",   "tomato paste",
		                              "pineapple", "whole tomatoes", "prune halves" };

	for (size_t i = 0; i < sizeof(others) / sizeof(others[0]); i++)
		ck_assert_msg(drying_named(others[i]) == NULL, "%s", others[i]);
}
END_TEST

static void is_called_then(const char *typed, const char *name)
{
	char called[64];

	drying_called(typed, called, sizeof(called));
	ck_assert_str_eq(called, name);
}

START_TEST(leather_keeps_its_fruit_in_the_name)
{
	is_called_then("plum leather", "plum leather");
	is_called_then("plum puree", "plum leather");
	is_called_then("puree of plums", "plum leather");
	is_called_then("puree", "fruit leather");
	is_called_then("Fruit puree", "fruit leather");
	is_called_then("apple rings", "apple rings");
	is_called_then("medlars", "medlars");
}
END_TEST

START_TEST(only_fruit_is_spread_for_leather)
{
	static const char *const others[] = { "tomato leather", "pumpkin puree", "carrot leather", "beef leather" };
	const struct drying_row *row;
	struct fault fault = { 0 };

	for (size_t i = 0; i < sizeof(others) / sizeof(others[0]); i++)
		ck_assert_msg(!drying_may(others[i], &row, &fault) && fault.kind == FAULT_REFUSED, "%s", others[i]);
	ck_assert(drying_may("banana leather", &row, &fault));
	ck_assert(drying_may("fruit leather", &row, &fault));
	ck_assert(drying_may("medlar leather", &row, &fault));
}
END_TEST

/* K-State and USU name no hours for these: the house says them. */
START_TEST(hours_that_are_not_published_are_not_made_up)
{
	static const char *const unpublished[] = { "plums",  "apricots",    "peaches",     "nectarines",
		                                   "apples", "blueberries", "strawberries" };

	for (size_t i = 0; i < sizeof(unpublished) / sizeof(unpublished[0]); i++)
		takes(unpublished[i], 0, 0);
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
	ck_assert_int_eq(drying_named("beef jerky")->class, DRYING_REFUSED);
	ck_assert_int_eq(drying_named("strips of lamb")->class, DRYING_REFUSED);
	ck_assert_ptr_nonnull(strstr(drying_named("chicken")->pretreatment, "165 F"));
}
END_TEST

/* 1/8 in deep: NCHFP.  195 sq in x 1/8 in = 24.4 cu in = 1.69 cups; 196 sq in: 1.70 cups. */
START_TEST(leather_takes_whole_trays_and_never_lies_deeper)
{
	ck_assert_int_eq(leather_trays(CUPS(1), IN(13), IN(15)), 1);
	ck_assert_int_eq(leather_trays(CUPS(2), IN(13), IN(15)), 2); /* 1.2 */
	ck_assert_int_eq(leather_trays(CUPS(3), IN(14), IN(14)), 2); /* 1.8 */
	ck_assert_int_eq(leather_trays(CUPS(8), IN(14), IN(14)), 5); /* 4.7 */
	ck_assert_int_eq(leather_trays(CUPS(4), IN(10), IN(10)), 5); /* 4.6 */
	ck_assert_int_eq(leather_trays(CUPS(2), 0, IN(15)), 0);
	ck_assert_int_eq(leather_trays(0, IN(13), IN(15)), 0);
}
END_TEST

/* 2 cups of fruit on 13 x 15 in: NCHFP, the most; half of 1/8 in, the least. */
START_TEST(leather_on_too_few_or_too_many_trays_is_told)
{
	int64_t most = 0;

	ck_assert_int_eq(drying_load(0, CUPS(2), 1, IN(13), IN(15), &most), TRAYS_FIT);
	ck_assert_int_eq(most, CUPS(2));
	ck_assert_int_eq(drying_load(0, CUPS(8), 4, IN(14), IN(14), NULL), TRAYS_FIT);
	ck_assert_int_eq(drying_load(0, CUPS(8), 3, IN(14), IN(14), NULL), TRAYS_TOO_FULL);
	ck_assert_int_eq(drying_load(0, CUPS(8), 9, IN(14), IN(14), NULL), TRAYS_FIT);
	ck_assert_int_eq(drying_load(0, CUPS(8), 10, IN(14), IN(14), NULL), TRAYS_TOO_EMPTY);
	ck_assert_int_eq(drying_load(0, CUPS(3), 1, 0, 0, &most), TRAYS_TOO_FULL); /* as on 13 x 15 in */
	ck_assert_int_eq(most, CUPS(2));
}
END_TEST

/* 4 to 6 lb in all on 2 to 4 trays: MSU 01600527. */
START_TEST(pieces_on_too_few_trays_are_told)
{
	int64_t most = 0;

	ck_assert_int_eq(drying_load(POUNDS(6), 0, 2, IN(14), IN(14), &most), TRAYS_FIT);
	ck_assert_int_eq(most, POUNDS(3));
	ck_assert_int_eq(drying_load(POUNDS(7), 0, 2, IN(14), IN(14), NULL), TRAYS_TOO_FULL);
	ck_assert_int_eq(drying_load(POUNDS(1), 0, 6, 0, 0, NULL), TRAYS_FIT);
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

/* What a row bars is found in no food if its word is of no class. */
START_TEST(what_is_barred_is_a_class_of_ingredients)
{
	int words = 0;

	for (size_t i = 0; i < drying_row_count; i++) {
		const char *word = drying_rows[i].bars;

		for (size_t length; (length = strcspn(word, " ")) > 0; word += length, word += strspn(word, " ")) {
			char id[64];

			(void)snprintf(id, sizeof(id), "%.*s", (int)length, word);
			ck_assert_msg(ingredient_class_named(id) != NULL, "%s: \"%s\"", drying_rows[i].food, id);
			words++;
		}
	}
	ck_assert_int_gt(words, 0);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(what_is_barred_is_a_class_of_ingredients),
	TEST(published_hours_are_those_of_the_publications),
	TEST(a_food_is_found_by_its_words),
	TEST(what_only_has_the_name_of_a_food_in_it_is_not_that_food),
	TEST(leather_keeps_its_fruit_in_the_name),
	TEST(only_fruit_is_spread_for_leather),
	TEST(hours_that_are_not_published_are_not_made_up),
	TEST(a_disputed_row_is_kept_and_never_offered),
	TEST(meat_is_refused_by_any_of_its_names),
	TEST(leather_takes_whole_trays_and_never_lies_deeper),
	TEST(leather_on_too_few_or_too_many_trays_is_told),
	TEST(pieces_on_too_few_trays_are_told),
	TEST(it_keeps_by_the_warmth_of_the_store),
	TEST(between_two_figures_and_unread_the_shorter_holds),
	TEST(a_store_warmer_than_any_figure_has_none),
	TEST(fruit_puree_is_published_with_its_acid),
	TEST(a_sweetener_leaves_the_hours_to_the_house),
	TEST(what_is_no_puree_is_refused),
};

TESTS("drying", listed)
