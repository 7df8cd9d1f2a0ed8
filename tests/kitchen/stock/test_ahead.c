/* Before the day: what this kitchen can make, from its own runs too, and what it lacks. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/shelf.h"
#include "support/kitchen_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

/* --- wishes in words ------------------------------------------------------------------ */

static struct wish wish_of(const char *words)
{
	struct wish wish;

	KK_OK(&kit, wish_read(kit.kitchen, words, &wish, &kit.fault));
	return wish;
}

START_TEST(wishes_are_read_in_plain_words)
{
	static const struct {
		const char *words;
		const char *recipe;
		const char *jar;
		int batches;
	} read[] = {
		{ "grape jelly", "grape jelly", "", 0 },
		{ "Grape-Jelly", "grape jelly", "", 0 },
		{ "3 x grape jelly", "grape jelly", "", 3 },
		{ "grape jelly in pints", "grape jelly", "pint", 0 },
		{ "12 x grape jelly, low sugar in half_pint", "grape jelly, low sugar", "half_pint", 12 },
		{ "peaches in light syrup", "peaches in light syrup", "", 0 },
		{ "2 x peaches in light syrup in quarts", "peaches in light syrup", "quart", 2 },
	};

	for (size_t i = 0; i < sizeof(read) / sizeof(read[0]); i++) {
		struct wish wish = wish_of(read[i].words);

		ck_assert_str_eq(wish.recipe, read[i].recipe);
		ck_assert_str_eq(wish.jar, read[i].jar);
		ck_assert_int_eq(wish.batches, read[i].batches);
	}
}
END_TEST

START_TEST(wishes_that_cannot_be_read_say_why)
{
	static const char *const wrong[][2] = {
		{ "gravel jelly", "there is no recipe \"gravel jelly\"" },
		{ "grape jelly in buckets", "there is no jar size \"buckets\"" },
		{ "0 x grape jelly", "number of batches" },
		{ "99999 x grape jelly", "number of batches" },
		{ "", "there is no recipe" },
		{ "3 x ", "there is no recipe" },
	};

	for (size_t i = 0; i < sizeof(wrong) / sizeof(wrong[0]); i++) {
		struct wish wish;

		ck_assert(!wish_read(kit.kitchen, wrong[i][0], &wish, &kit.fault));
		ck_assert_int_eq(kit.fault.kind, FAULT_MISUSE);
		ck_assert_msg(strstr(kit.fault.sentence, wrong[i][1]) != NULL, "%s", kit.fault.sentence);
	}
}
END_TEST

/* --- forecasts --------------------------------------------------------------------------- */

static struct wishes wishes_of(const char *fruit, const char *weight, const char *product)
{
	struct wishes wishes = { .count = 1 };

	ck_assert(text_copy(wishes.fruit, sizeof(wishes.fruit), fruit));
	wishes.fruit_mg = weight == NULL ? 0 : pk_amount(SUPPLY_FRUIT, weight);
	wishes.wish[0] = wish_of(product);
	return wishes;
}

static struct ahead ahead_of(const struct wishes *wishes)
{
	struct ahead out;

	KK_OK(&kit, kitchen_look_ahead(kit.kitchen, wishes, &out, &kit.fault));
	return out;
}

/* A whole run: so much fruit gives so much juice. */
static void run(const char *fruit, const char *weight, const char *juice)
{
	(void)pk_run(&kit, TALL_JUICER, fruit, weight);
	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_OK(&kit, kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), pk_ul(juice), &kit.fault));
}

START_TEST(the_canner_with_most_room_is_named)
{
	struct wishes wishes = wishes_of("grapes", "60 lb", "grape jelly");
	struct ahead ahead = ahead_of(&wishes);

	ck_assert_str_eq(ahead.canner[0], "Big kettle");
	ck_assert_int_eq(ahead.order.products[0].room, 9);
	ck_assert_ptr_eq(ahead.order.products[0].jar, jar_size_named("half_pint")); /* the usual jar */
	ck_assert_str_eq(ahead.order.fruit, "grapes");
	wishes = wishes_of("tomatoes", "60 lb", "crushed tomatoes");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.products[0].room, 7);
}
END_TEST

START_TEST(five_own_runs_are_weighed_in_and_four_are_not)
{
	struct wishes wishes = wishes_of("grapes", "60 lb", "grape juice");
	struct ahead before = ahead_of(&wishes);
	struct ahead after;

	for (int i = 0; i < 4; i++)
		run(i % 2 == 0 ? "Grapes" : "grape", "14 lb", "3 qt"); /* 4.67 lb a quart */
	run("apples", "14 lb", "3 qt");
	kk_pass(&kit, 24 * HOUR_MS); /* their fruit was another day's */
	after = ahead_of(&wishes);
	ck_assert(!after.order.yield.own);
	ck_assert_int_eq(after.order.yield.runs, 4);
	ck_assert_int_eq(after.forecast.juice_ul[BOUND_LIKELY], before.forecast.juice_ul[BOUND_LIKELY]);
	run("grapes", "14 lb", "13 cups");
	kk_pass(&kit, 24 * HOUR_MS);
	after = ahead_of(&wishes);
	ck_assert(after.order.yield.own);
	ck_assert_int_eq(after.order.yield.runs, 5);
	ck_assert_int_lt(after.forecast.juice_ul[BOUND_LIKELY], before.forecast.juice_ul[BOUND_LIKELY]);
	/* The runs alone would give 60 lb / 14 lb times 3.05 quarts. */
	ck_assert_int_gt(after.forecast.juice_ul[BOUND_LIKELY], pk_ul("13 qt"));
	ck_assert_double_gt(after.order.yield.weight, 0.5);
	ck_assert(pk_undo(&kit, SUBJECT_STATION, kk_station(&kit, TALL_JUICER)));
	ck_assert(!ahead_of(&wishes).order.yield.own);
}
END_TEST

START_TEST(juice_in_stock_is_used_when_asked_for)
{
	struct wishes wishes = wishes_of("grapes", NULL, "grape jelly");

	(void)pk_juice(&kit, "Grape", "10 cups");
	(void)pk_juice(&kit, "apples", "10 cups");
	ck_assert_int_eq(ahead_of(&wishes).forecast.jars[BOUND_HIGH], 0);
	wishes.juice_in_stock = true;
	ck_assert_int_eq(ahead_of(&wishes).order.juice_ul, pk_ul("10 cups"));
	ck_assert_int_eq(ahead_of(&wishes).forecast.lines[0].batches[BOUND_LOW], 2);
}
END_TEST

START_TEST(jars_wanted_are_told_in_fruit)
{
	struct wishes wishes = wishes_of("grapes", NULL, "grape juice in pints");
	struct ahead ahead;

	wishes.jars = 60;
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.jars, 60);
	ck_assert_int_gt(ahead.need.fruit_mg[BOUND_HIGH], ahead.need.fruit_mg[BOUND_LIKELY]);
	ck_assert_int_ge(ahead.forecast.jars[BOUND_LIKELY], 60);
	ck_assert_int_eq(ahead.forecast.lines[0].batches[BOUND_HIGH], ahead.need.batches[BOUND_LIKELY]);
	wishes.count = 2;
	wishes.wish[1] = wish_of("grape jelly");
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault));
}
END_TEST

START_TEST(what_cannot_be_answered_is_refused)
{
	struct wishes wishes = wishes_of("apples", "60 lb", "grape jelly");
	struct ahead ahead;

	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault));
	wishes = wishes_of("", "60 lb", "grape jelly");
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault));
	wishes = wishes_of("grapes", "60 lb", "grape jelly in quarts");
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault));
	wishes = wishes_of("grapes", "60 lb", "grape jelly");
	wishes.count = 0;
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault));
	ck_assert_ptr_null(kitchen_makes(kit.kitchen, "gravel", 0));
	/* Four of juice, grape-plum jelly and, with its green grapes, fruit cocktail. */
	ck_assert_ptr_nonnull(kitchen_makes(kit.kitchen, "grapes", 5));
	ck_assert_ptr_null(kitchen_makes(kit.kitchen, "grapes", 6));
	/* Grape spread is kept in the refrigerator, and no batch of it is started. */
	wishes = wishes_of("grapes", "60 lb", "refrigerator grape spread");
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault));
}
END_TEST

/* --- what is missing --------------------------------------------------------------------------- */

static struct shortage_line lack_of(const struct ahead *ahead, const char *name)
{
	struct shortage_line *rows;
	struct shortage_line out = { 0 };
	size_t count;

	KK_OK(&kit, kitchen_shortage(kit.kitchen, ahead, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].name, name) == 0)
			out = rows[i];
	free(rows);
	ck_assert_msg(out.name[0] != '\0', "%s is not needed", name);
	return out;
}

static void buy_is(const struct shortage_line *line, enum bound bound, const char *meant)
{
	char words[80] = "";

	shortage_buy(line, bound, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, meant);
}

/* 2 batches of 7 cups at 200 g: 2,800 g, 6 lb 3 oz. */
START_TEST(missing_is_what_the_shelf_does_not_hold)
{
	struct wishes wishes = wishes_of("grapes", "60 lb", "2 x grape jelly");
	struct ahead ahead = ahead_of(&wishes);
	struct shortage_line line = lack_of(&ahead, "sugar");

	ck_assert_int_eq(shortage_lack(&line), LACK_NOT_COUNTED);
	ck_assert_int_eq(line.need.amount[BOUND_LIKELY], 2800000);
	buy_is(&line, BOUND_LIKELY, "7 lb");
	pk_receive(&kit, SUPPLY_SUGAR, "", "1 lb");
	line = lack_of(&ahead, "sugar");
	ck_assert_int_eq(shortage_lack(&line), LACK_LIKELY);
	buy_is(&line, BOUND_LIKELY, "6 lb");
	KK_OK(&kit, kitchen_sell_by(kit.kitchen, SUPPLY_SUGAR, "", pk_amount(SUPPLY_SUGAR, "5 lb"), &kit.fault));
	line = lack_of(&ahead, "sugar");
	buy_is(&line, BOUND_LIKELY, "2 x 5 lb");
	pk_receive(&kit, SUPPLY_SUGAR, "", "20 lb");
	line = lack_of(&ahead, "sugar");
	ck_assert_int_eq(shortage_lack(&line), LACK_NONE);
	buy_is(&line, BOUND_HIGH, "");
}
END_TEST

START_TEST(jars_come_by_the_dozen_and_lids_by_the_newest_box)
{
	struct wishes wishes = wishes_of("grapes", "60 lb", "grape jelly");
	struct ahead ahead = ahead_of(&wishes);
	struct shortage_line line = lack_of(&ahead, "half-pints");

	ck_assert_int_eq(ahead.forecast.jars[BOUND_LIKELY], 104);
	ck_assert_int_eq(ahead.forecast.jars[BOUND_HIGH], 160);
	pk_receive(&kit, SUPPLY_JAR, "half_pint", "104");
	line = lack_of(&ahead, "half-pints");
	ck_assert_int_eq(shortage_lack(&line), LACK_PERHAPS);
	buy_is(&line, BOUND_LIKELY, "");
	buy_is(&line, BOUND_HIGH, "5 dozen");
	line = lack_of(&ahead, "flat lids"); /* 60 and 48 are here */
	ck_assert_int_eq(line.goods.here, 108);
	ck_assert_int_eq(shortage_lack(&line), LACK_PERHAPS);
	buy_is(&line, BOUND_HIGH, "2 boxes of 48");
	KK_OK(&kit, kitchen_sell_by(kit.kitchen, SUPPLY_JAR, "half_pint", 9, &kit.fault));
	line = lack_of(&ahead, "half-pints");
	buy_is(&line, BOUND_HIGH, "7 boxes of 9"); /* 56 */
}
END_TEST

START_TEST(a_ledger_below_nothing_counts_as_nothing)
{
	struct wishes wishes = wishes_of("grapes", "60 lb", "1 x grape jelly");
	struct shelf_line bands = { .kind = SHELF_SUPPLY, .supply = SUPPLY_SUGAR };
	struct shortage_line line;
	struct ahead ahead = ahead_of(&wishes);
	int64_t batch_id;
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);

	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "3 qt");
	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, true, &batch_id, &kit.fault));
	KK_OK(&kit, kitchen_shelf_count(kit.kitchen, &bands, 0, &kit.fault));
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 3, pk_amount(SUPPLY_SUGAR, "6 lb"), "", &kit.fault));
	line = lack_of(&ahead, "sugar");
	ck_assert_int_lt(line.goods.here, 0);
	ck_assert_int_eq(line.missing[BOUND_LIKELY], line.need.amount[BOUND_LIKELY]);
}
END_TEST

/* Grapes and apples have a recipe of their juice, tomatoes one that begins with the fruit: 60 lb
 * of them are two loads of 7 quarts (23 lb a load: USDA AIB 539, Guide 3, page 3-5). */
START_TEST(juice_in_jars_is_forecast_where_it_has_a_process)
{
	struct wishes wishes = wishes_of("tomatoes", "60 lb", "tomato juice");
	struct ahead ahead = ahead_of(&wishes);

	ck_assert_int_eq(ahead.forecast.lines[0].jars[BOUND_LIKELY], 14);
	ck_assert_str_eq(ahead.order.products[0].jar->name, "quart");
	wishes = wishes_of("grapes", "60 lb", "grape juice");
	ahead = ahead_of(&wishes); /* 17.1 quarts are four gallons and a rest */
	ck_assert_int_eq(ahead.forecast.lines[0].jars[BOUND_LIKELY], 16);
	ck_assert(kitchen_jars_juice(kit.kitchen, "grapes"));
	ck_assert(kitchen_jars_juice(kit.kitchen, "Apple"));
	ck_assert(!kitchen_jars_juice(kit.kitchen, "plums"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("ahead", .begin = begin, .end = end),
	TEST(wishes_are_read_in_plain_words),
	TEST(wishes_that_cannot_be_read_say_why),
	TEST(the_canner_with_most_room_is_named),
	TEST(five_own_runs_are_weighed_in_and_four_are_not),
	TEST(juice_in_stock_is_used_when_asked_for),
	TEST(jars_wanted_are_told_in_fruit),
	TEST(what_cannot_be_answered_is_refused),
	TEST(missing_is_what_the_shelf_does_not_hold),
	TEST(jars_come_by_the_dozen_and_lids_by_the_newest_box),
	TEST(a_ledger_below_nothing_counts_as_nothing),
	TEST(juice_in_jars_is_forecast_where_it_has_a_process),
};

KK_TESTS("ahead", listed)
