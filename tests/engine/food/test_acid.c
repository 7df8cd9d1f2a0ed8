/*
 * What is asked of acid, and how it is said.
 *
 * USDA AIB 539 (rev. 2015), Guide 3: 2 tbsp of bottled lemon juice or 1/2 tsp of citric
 * acid a quart of tomatoes, half a pint; 4 tbsp of vinegar of 5 percent a quart, no
 * figure for a pint; sauce without vinegar.  Guide 6: vinegar of 5 percent.
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "engine/food/acid.h"
#include "support/tests.h"

static enum acid answers[ACID_COUNT];

static size_t asked(const char *food, const char *jar)
{
	ck_assert_ptr_nonnull(food_named(food));
	return acid_answers(food_named(food), jar_size_named(jar), answers);
}

static void says(const char *food, enum acid acid, const char *jar, int jars, const char *words)
{
	char buffer[ACID_ANSWER_BYTES];
	struct text text = TEXT_OVER(buffer);

	acid_answer_words(food_named(food), acid, jar_size_named(jar), jars, &text);
	ck_assert_str_eq(buffer, words);
}

START_TEST(a_jar_may_have_any_acid_with_a_figure_for_its_size)
{
	ck_assert_uint_eq(asked("tomatoes crushed", "quart"), 3);
	ck_assert_int_eq(answers[0], ACID_LEMON_JUICE);
	ck_assert_int_eq(answers[1], ACID_CITRIC);
	ck_assert_int_eq(answers[2], ACID_VINEGAR);
	ck_assert_uint_eq(asked("tomatoes crushed", "pint"), 2);
	ck_assert_uint_eq(asked("tomato sauce standard", "quart"), 2);
	ck_assert_uint_eq(asked("asian pears", "quart"), 1);
	ck_assert(!acid_is_answer(food_named("tomatoes crushed"), jar_size_named("pint"), ACID_VINEGAR));
	ck_assert(!acid_is_answer(food_named("tomatoes crushed"), jar_size_named("quart"), ACID_NONE_ASKED));
	ck_assert(!acid_is_answer(food_named("tomatoes crushed"), jar_size_named("quart"), ACID_NOT_SAID));
}
END_TEST

START_TEST(by_recipe_it_is_as_printed_and_only_a_jam_may_ask_for_none)
{
	ck_assert_uint_eq(asked("apple butter", "pint"), 1);
	ck_assert_int_eq(answers[0], ACID_AS_PRINTED);
	ck_assert_uint_eq(asked("jam or jelly with added pectin", "half_pint"), 2);
	ck_assert_int_eq(answers[1], ACID_NONE_ASKED);
	ck_assert_uint_eq(asked("sauerkraut", "quart"), 1);
	ck_assert_uint_eq(asked("peaches", "quart"), 0);
	ck_assert_uint_eq(asked("green beans (snap and Italian)", "quart"), 0);
	ck_assert_uint_eq(acid_answers(NULL, jar_size_named("quart"), answers), 0);
}
END_TEST

START_TEST(the_tick_names_kind_and_amount)
{
	says("tomatoes crushed", ACID_LEMON_JUICE, "quart", 7,
	     "bottled lemon juice, 2 tbsp in each of 7 quarts: it is in");
	says("tomatoes crushed", ACID_CITRIC, "pint", 1, "citric acid, 1/4 tsp in the pint: it is in");
	says("apple butter", ACID_AS_PRINTED, "pint", 3, "vinegar of 5 percent as the recipe prints it: it is in");
	says("jam or jelly with added pectin", ACID_NONE_ASKED, "half_pint", 9,
	     "none: neither the recipe nor the pectin's sheet asks for any");
}
END_TEST

START_TEST(the_strength_is_asked_of_vinegar_a_recipe_lives_by)
{
	ck_assert(acid_asks_vinegar(food_named("apple butter")->acid_rule, ACID_AS_PRINTED));
	ck_assert(!acid_asks_vinegar(food_named("apple butter")->acid_rule, ACID_LEFT_OUT));
	ck_assert(!acid_asks_vinegar(food_named("apple pie filling")->acid_rule, ACID_AS_PRINTED));
	ck_assert(!acid_asks_vinegar(food_named("sauerkraut")->acid_rule, ACID_AS_PRINTED));
	ck_assert(!acid_asks_vinegar(NULL, ACID_AS_PRINTED));
}
END_TEST

/* 4.6 g a level teaspoon: from memory, as everywhere here. */
START_TEST(a_spoon_of_it_is_booked_in_the_measure_of_its_ledger)
{
	ck_assert_int_eq(acid_in_ledger(ACID_LEMON_JUICE, 29574), 29574);
	ck_assert_int_le(llabs(acid_in_ledger(ACID_CITRIC, 2464) - 2300), 2); /* 1/2 tsp */
}
END_TEST

static const struct listed_test listed[] = {
	TEST(a_jar_may_have_any_acid_with_a_figure_for_its_size),
	TEST(by_recipe_it_is_as_printed_and_only_a_jam_may_ask_for_none),
	TEST(the_tick_names_kind_and_amount),
	TEST(the_strength_is_asked_of_vinegar_a_recipe_lives_by),
	TEST(a_spoon_of_it_is_booked_in_the_measure_of_its_ledger),
};

TESTS("acid", listed)
