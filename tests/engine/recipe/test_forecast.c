/* Fruit to jars and back, and what it takes. */
#include <check.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "engine/recipe/forecast.h"
#include "support/tests.h"

#define LB INT64_C(453592) /* mg, near enough */
#define QUART 946353

static struct fault fault;

static struct forecast_product product(const char *name, const char *jar, int batches, int room)
{
	struct forecast_product out = { recipe_named(name), jar_size_named(jar), batches, 1, room };

	ck_assert_ptr_nonnull(out.recipe);
	ck_assert_ptr_nonnull(out.jar);
	return out;
}

static struct forecast_order order_of(const char *fruit, int64_t pounds)
{
	struct forecast_order order = { .count = 0 };

	ck_assert(text_copy(order.fruit, sizeof(order.fruit), fruit));
	ck_assert(amount_read("1 lb", MEASURE_MASS, SUPPLY_FRUIT, &order.fruit_mg, &fault));
	order.fruit_mg *= pounds;
	juice_yield_of(fruit, order.fruit_mg, NULL, &order.yield);
	return order;
}

static struct forecast made(const struct forecast_order *order)
{
	struct forecast out;

	ck_assert_msg(forecast_make(order, &out, &fault), "%s", fault.sentence);
	return out;
}

/* 24.5 lb of grapes give 7 quarts (AIB 539): 28 cups, 5 batches of 5 cups and 3
 * cups over. At 3.714 lb a quart 26.4 cups, at 2.889 33.9. */
START_TEST(grapes_make_whole_batches_of_jelly)
{
	struct forecast_order order = order_of("grapes", 49);
	struct yield yield;
	struct forecast out;

	order.fruit_mg /= 2;
	order.products[order.count++] = product("grape jelly", "half_pint", 0, 9);
	out = made(&order);
	ck_assert(pot_yield(recipe_named("grape jelly"), 1, "half_pint", &yield, &fault));
	ck_assert(out.juice);
	ck_assert_int_eq(out.lines[0].batches[BOUND_LOW], 5);
	ck_assert_int_eq(out.lines[0].batches[BOUND_LIKELY], 5);
	ck_assert_int_eq(out.lines[0].batches[BOUND_HIGH], 6);
	ck_assert_int_eq(out.lines[0].jars[BOUND_LOW], 5 * yield.jars_low);
	ck_assert_int_eq(out.lines[0].jars[BOUND_LIKELY], 5 * yield.jars_likely);
	ck_assert_int_eq(out.lines[0].jars[BOUND_HIGH], 6 * yield.jars_high);
	ck_assert_int_eq(out.lines[0].loads[BOUND_LIKELY], (5 * yield.jars_likely + 8) / 9);
	ck_assert_int_eq((int)((double)out.juice_ul[BOUND_LIKELY] / QUART * 100 + 0.5), 700);
	ck_assert_int_eq((int)((double)out.juice_left_ul[BOUND_LIKELY] / QUART * 100 + 0.5), 75); /* 3 cups */
	ck_assert_int_eq(out.jars[BOUND_HIGH], out.lines[0].jars[BOUND_HIGH]);
}
END_TEST

START_TEST(batches_asked_for_come_first_and_the_others_share)
{
	struct forecast_order order = order_of("grapes", 70); /* 20 quarts: 80 cups */
	struct forecast out;

	order.products[order.count++] = product("grape jelly without added pectin", "half_pint", 0, 9); /* 4 cups */
	order.products[order.count++] = product("grape juice", "quart", 2, 7);                          /* 16 cups */
	order.products[order.count++] = product("grape jelly", "pint", 0, 9);                           /* 5 cups */
	out = made(&order);
	ck_assert_int_eq(out.lines[1].batches[BOUND_LIKELY], 2); /* 32 cups; 48 are left */
	ck_assert_int_eq(out.lines[0].batches[BOUND_LIKELY], 5); /* in turn: 5 of each are 45, 3 are left */
	ck_assert_int_eq(out.lines[2].batches[BOUND_LIKELY], 5);
	ck_assert_int_eq(out.jars[BOUND_LIKELY], out.lines[0].jars[BOUND_LIKELY] + out.lines[1].jars[BOUND_LIKELY] +
	                                             out.lines[2].jars[BOUND_LIKELY]);
	order.products[1].batches = 50; /* more than there is fruit for */
	out = made(&order);
	ck_assert_int_eq(out.lines[1].batches[BOUND_LIKELY], 5);
	ck_assert_int_eq(out.lines[0].batches[BOUND_LIKELY], 0);
}
END_TEST

START_TEST(juice_in_stock_is_used_first)
{
	struct forecast_order order = order_of("grapes", 0);
	struct forecast out;

	order.juice_ul = 5 * 236588 + 100;
	order.products[order.count++] = product("grape jelly", "half_pint", 0, 0);
	out = made(&order);
	ck_assert_int_eq(out.lines[0].batches[BOUND_LOW], 1);
	ck_assert_int_eq(out.lines[0].batches[BOUND_HIGH], 1);
	ck_assert_int_eq(out.lines[0].loads[BOUND_HIGH], 0); /* no canner is known */
	order.fruit_mg = 4 * LB; /* a quart and more: not enough for a second one at the low yield */
	out = made(&order);
	ck_assert_int_eq(out.lines[0].batches[BOUND_LOW], 1);
	ck_assert_int_eq(out.lines[0].batches[BOUND_HIGH], 2);
}
END_TEST

/* AIB 539: 22 lb of tomatoes for 7 quarts crushed; no juice is made of them. */
START_TEST(fruit_that_goes_in_whole_needs_no_juicer)
{
	struct forecast_order order = order_of("tomatoes", 45);
	struct forecast out;

	order.products[order.count++] = product("crushed tomatoes", "quart", 0, 7);
	out = made(&order);
	ck_assert(!out.juice);
	for (int bound = 0; bound < BOUND_COUNT; bound++)
		ck_assert_int_eq(out.lines[0].batches[bound], 2);
	ck_assert_int_ge(out.lines[0].jars[BOUND_LIKELY], 14);
	ck_assert_int_eq(out.juice_ul[BOUND_LIKELY], 0);
	ck_assert_double_eq_tol((double)out.fruit_left_mg[BOUND_LIKELY] / LB, 1.0, 0.001);
}
END_TEST

START_TEST(what_is_not_made_of_the_fruit_is_refused)
{
	struct forecast_order order = order_of("apples", 40);
	struct forecast out;
	struct fruit_need need;

	ck_assert(!forecast_make(&order, &out, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	order.products[order.count++] = product("grape jelly", "half_pint", 0, 9);
	ck_assert(!forecast_make(&order, &out, &fault));
	ck_assert_str_eq(fault.sentence, "grape jelly is not made from apples.");
	order.products[0] = product("apple jelly", "quart", 0, 9);
	ck_assert(!forecast_make(&order, &out, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "does not go in"));
	order.products[0] = product("apple jelly", "pint", 0, 9);
	order.fruit_mg = -1;
	ck_assert(!forecast_make(&order, &out, &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	order.fruit_mg = 0;
	ck_assert(!forecast_fruit_for(&order, 0, &need, &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
}
END_TEST

START_TEST(the_largest_amount_ends_and_stays_in_bounds)
{
	struct forecast_order order = order_of("grapes", 0);
	struct forecast out;

	order.fruit_mg = AMOUNT_MG_MAX;
	for (int i = 0; i < FORECAST_PRODUCTS_MAX; i++)
		order.products[order.count++] = product("grape jelly", "half_pint", 0, 1);
	out = made(&order);
	ck_assert_int_gt(out.lines[7].batches[BOUND_LIKELY], 0);
	ck_assert_int_le(out.lines[0].batches[BOUND_HIGH], FORECAST_BATCHES_MAX);
	ck_assert_int_gt(out.jars[BOUND_HIGH], out.jars[BOUND_LOW]);
}
END_TEST

/* There and back: the fruit said to be sure is enough at the low end, a batch's
 * fruit less is not. */
START_TEST(the_fruit_said_to_be_sure_gives_the_jars_wanted)
{
	static const int wanted[] = { 1, 12, 60, 61, 500 };

	for (size_t i = 0; i < sizeof(wanted) / sizeof(wanted[0]); i++) {
		struct forecast_order order = order_of("grapes", 0);
		struct fruit_need need;
		struct forecast out;

		order.products[order.count++] = product("grape jelly", "pint", 0, 9);
		ck_assert(forecast_fruit_for(&order, wanted[i], &need, &fault));
		ck_assert_int_le(need.fruit_mg[BOUND_LOW], need.fruit_mg[BOUND_LIKELY]);
		ck_assert_int_le(need.fruit_mg[BOUND_LIKELY], need.fruit_mg[BOUND_HIGH]);
		order.fruit_mg = need.fruit_mg[BOUND_HIGH];
		out = made(&order);
		ck_assert_int_ge(out.jars[BOUND_LOW], wanted[i]);
		ck_assert_int_eq(out.lines[0].batches[BOUND_LOW], need.batches[BOUND_HIGH]);
		order.fruit_mg -= order.fruit_mg / need.batches[BOUND_HIGH] / 2;
		out = made(&order);
		ck_assert_int_lt(out.jars[BOUND_LOW], wanted[i] + 1);
		order.fruit_mg = need.fruit_mg[BOUND_LIKELY];
		out = made(&order);
		ck_assert_int_ge(out.jars[BOUND_LIKELY], wanted[i]);
	}
}
END_TEST

START_TEST(juice_in_stock_saves_fruit)
{
	struct forecast_order order = order_of("grapes", 0);
	struct fruit_need without;
	struct fruit_need with;

	order.products[order.count++] = product("grape juice", "quart", 0, 7);
	ck_assert(forecast_fruit_for(&order, 14, &without, &fault));
	order.juice_ul = 4 * QUART;
	ck_assert(forecast_fruit_for(&order, 14, &with, &fault));
	ck_assert_int_eq((without.juice_ul[BOUND_LIKELY] - with.juice_ul[BOUND_LIKELY]) / QUART, 4);
	/* 4 quarts are 14 lb at 3.5 lb a quart (AIB 539) */
	ck_assert_double_eq_tol((double)(without.fruit_mg[BOUND_LIKELY] - with.fruit_mg[BOUND_LIKELY]) / LB, 14.0,
	                        0.01);
	order.juice_ul = 100 * INT64_C(1000000);
	ck_assert(forecast_fruit_for(&order, 14, &with, &fault));
	ck_assert_int_eq(with.fruit_mg[BOUND_HIGH], 0);
}
END_TEST

/* --- what it takes -------------------------------------------------------------------- */

static const struct supply_need *need_of(const struct supply_need *needs, size_t count, enum supply_kind kind)
{
	for (size_t i = 0; i < count; i++)
		if (needs[i].kind == NEED_SUPPLY && needs[i].supply == kind)
			return &needs[i];
	ck_abort_msg("there is no need of %s", supply_name(kind));
	return NULL;
}

START_TEST(needs_are_those_of_the_recipes)
{
	struct forecast_order order = order_of("grapes", 70);
	struct supply_need needs[SUPPLY_NEEDS_MAX];
	struct forecast out;
	size_t count;

	order.products[order.count++] = product("grape jelly", "half_pint", 3, 9);
	order.products[order.count++] = product("grape jelly without added pectin", "half_pint", 2, 9);
	out = made(&order);
	count = forecast_needs(&order, &out, needs);
	/* So Easy to Preserve, as in schema/recipe.csv: 7 cups of 200 g; 3 cups. */
	ck_assert_int_eq(need_of(needs, count, SUPPLY_SUGAR)->amount[BOUND_LIKELY], (3 * 7 + 2 * 3) * 200000);
	ck_assert_int_eq(need_of(needs, count, SUPPLY_JAR)->amount[BOUND_HIGH], out.jars[BOUND_HIGH]);
	ck_assert_ptr_eq(need_of(needs, count, SUPPLY_JAR)->jar, jar_size_named("half_pint"));
	ck_assert_int_eq(need_of(needs, count, SUPPLY_BAND)->amount[BOUND_LOW], out.jars[BOUND_LOW]);
	/* three packages of 1.75 oz */
	ck_assert_double_eq_tol((double)need_of(needs, count, SUPPLY_PECTIN_REGULAR)->amount[BOUND_LOW],
	                        3 * 1.75 * 28349.523125, 3000);
	ck_assert_uint_eq(count, 5); /* jars, lids, bands, pectin, sugar: no juice */
	ck_assert_int_eq(needs[1].kind, NEED_LIDS);
}
END_TEST

/* A539 Guide 3: 2 tbsp of bottled lemon juice a quart. */
START_TEST(what_goes_into_the_jars_is_for_all_of_them)
{
	struct forecast_order order = order_of("tomatoes", 44);
	struct supply_need needs[SUPPLY_NEEDS_MAX];
	struct forecast out;
	size_t count;

	order.products[order.count++] = product("crushed tomatoes", "pint", 0, 9);
	out = made(&order);
	count = forecast_needs(&order, &out, needs);
	ck_assert_double_eq_tol((double)need_of(needs, count, SUPPLY_LEMON_JUICE)->amount[BOUND_LIKELY] /
	                            out.jars[BOUND_LIKELY],
	                        14786.76, 1.0); /* a tablespoon a pint */
	ck_assert(need_of(needs, count, SUPPLY_SALT)->optional);
	ck_assert(!need_of(needs, count, SUPPLY_LEMON_JUICE)->optional);
}
END_TEST

START_TEST(water_is_not_shopped_for)
{
	struct forecast_order order = order_of("peaches", 40);
	struct supply_need needs[SUPPLY_NEEDS_MAX];
	struct forecast out;
	size_t count;

	order.products[order.count++] = product("peaches in light syrup", "quart", 0, 7);
	out = made(&order);
	count = forecast_needs(&order, &out, needs);
	ck_assert_uint_eq(count, 4); /* jars, lids, bands, sugar */
	ck_assert_int_eq(need_of(needs, count, SUPPLY_SUGAR)->amount[BOUND_LIKELY], 2 * 450000); /* 2 1/4 cups a load */
}
END_TEST

static const struct listed_test listed[] = {
	TEST(grapes_make_whole_batches_of_jelly),
	TEST(batches_asked_for_come_first_and_the_others_share),
	TEST(juice_in_stock_is_used_first),
	TEST(fruit_that_goes_in_whole_needs_no_juicer),
	TEST(what_is_not_made_of_the_fruit_is_refused),
	TEST(the_largest_amount_ends_and_stays_in_bounds),
	TEST(the_fruit_said_to_be_sure_gives_the_jars_wanted),
	TEST(juice_in_stock_saves_fruit),
	TEST(needs_are_those_of_the_recipes),
	TEST(what_goes_into_the_jars_is_for_all_of_them),
	TEST(water_is_not_shopped_for),
};

TESTS("forecast", listed)
