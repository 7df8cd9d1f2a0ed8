#include <check.h>
#include <string.h>

#include "base/text.h"
#include "engine/process/process.h"
#include "engine/process/product.h"
#include "engine/recipe/recipe.h"
#include "support/tests.h"

/* Is there a process for the product in its usual jar, by some method, at the
 * invented kitchen's elevation? */
static bool can_be_made(const struct product *product)
{
	for (enum method method = 0; method < METHOD_COUNT; method++) {
		const char *pack = NULL;

		while ((pack = process_next_pack(product->food, method, pack)) != NULL) {
			struct process_query query = {
				.food = product->food,
				.pack = pack,
				.jar = product->usual_jar,
				.method = method,
				.pressure_psi = NO_PRESSURE,
				.elevation = { .known = true, .um = 4650 * FOOT_UM },
			};
			struct process process;

			if (process_find(&query, &process, NULL))
				return true;
		}
	}
	return false;
}

START_TEST(every_product_has_a_food_a_jar_and_a_process)
{
	ck_assert_uint_ge(product_count, 30);
	for (size_t i = 0; i < product_count; i++) {
		const struct product *product = &products[i];
		enum acidity acidity;

		ck_assert_msg(process_acidity(product->food, &acidity), "%s: no food %s", product->name, product->food);
		ck_assert_msg(jar_size_named(product->usual_jar) != NULL, "%s: no jar %s", product->name,
		              product->usual_jar);
		ck_assert_msg(can_be_made(product), "%s: no process", product->name);
		ck_assert_str_ne(product->source, "");
	}
}
END_TEST

START_TEST(products_are_found_by_the_name_people_use)
{
	ck_assert_str_eq(product_named("Grape Jelly")->food, "jam or jelly with added pectin");
	ck_assert_str_eq(product_named("bread and butter pickles") == NULL ? "none" : "one", "one");
	ck_assert_ptr_null(product_named("no such product"));
	ck_assert_ptr_null(product_named(NULL));
	for (size_t i = 0; i < product_count; i++)
		ck_assert_ptr_eq(product_named(products[i].name), &products[i]);
}
END_TEST

/* Of an acidified recipe, salt aside. */
static bool acid_goes_in_each_jar(const struct recipe *recipe)
{
	for (size_t i = 0; recipe->acidity == ACIDITY_ACIDIFIED && i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];

		if (item->adding == ADD_IN_JAR && !item->optional && item->supply != SUPPLY_SALT)
			return true;
	}
	return false;
}

/* Sauces, salsas and the like have their acid in the recipe, and what is low-acid has none. */
static bool acid_is_in_the_recipe(const char *food)
{
	for (size_t i = 0; i < recipe_count; i++) {
		if (strcmp(recipes[i].food, food) == 0 && !acid_goes_in_each_jar(&recipes[i]))
			return true;
	}
	return false;
}

START_TEST(tomatoes_ask_for_acid_by_every_method)
{
	ck_assert(!acid_is_in_the_recipe("tomatoes crushed"));
	ck_assert(!acid_is_in_the_recipe("tomato and vegetable juice blend"));
	for (size_t i = 0; i < product_count; i++) {
		if (strstr(products[i].food, "tomato") == NULL || acid_is_in_the_recipe(products[i].food))
			continue;
		ck_assert_ptr_nonnull(strstr(products[i].caution, "bottled lemon juice"));
		ck_assert_ptr_nonnull(strstr(products[i].caution, "also when pressure canning"));
	}
}
END_TEST

START_TEST(low_acid_products_say_that_they_are)
{
	for (size_t i = 0; i < product_count; i++) {
		enum acidity acidity;

		ck_assert(process_acidity(products[i].food, &acidity));
		ck_assert_int_eq(acidity == ACIDITY_LOW_ACID, strstr(products[i].caution, "Low-acid") != NULL);
	}
}
END_TEST

START_TEST(no_product_carries_a_trade_mark)
{
	static const char *const signs[] = { "\302\256", "\342\204\242", "(R)", "(TM)" };

	for (size_t i = 0; i < product_count; i++) {
		for (size_t s = 0; s < sizeof(signs) / sizeof(signs[0]); s++) {
			ck_assert_ptr_null(strstr(products[i].name, signs[s]));
			ck_assert_ptr_null(strstr(products[i].caution, signs[s]));
		}
		/* Generic names are common nouns: no capital letter. */
		for (const char *c = products[i].name; *c != '\0'; c++)
			ck_assert_msg(*c < 'A' || *c > 'Z', "%s", products[i].name);
	}
}
END_TEST

static const struct listed_test listed[] = {
	TEST(every_product_has_a_food_a_jar_and_a_process),
	TEST(products_are_found_by_the_name_people_use),
	TEST(tomatoes_ask_for_acid_by_every_method),
	TEST(low_acid_products_say_that_they_are),
	TEST(no_product_carries_a_trade_mark),
};

TESTS("product", listed)
