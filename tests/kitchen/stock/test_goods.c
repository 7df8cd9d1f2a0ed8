/* What is free: nothing that is planned or at work is counted a second time. */
#include <stdlib.h>
#include <string.h>

#include "engine/recipe/amount.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/stock.h"
#include "support/kitchen_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void line(const char *words)
{
	kk_ok(&kit, kitchen_setup_line(kit.kitchen, words, 0, &kit.fault), words);
}

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	line("helper MK");
}

static void end(void)
{
	kk_end(&kit);
}

static int64_t lb(int pounds)
{
	return pounds * INT64_C(453592370) / 1000;
}

static struct wishes grapes(int pounds)
{
	struct wishes wishes = { .fruit = "grapes", .fruit_mg = lb(pounds), .count = 1 };

	text_copy(wishes.wish[0].recipe, sizeof(wishes.wish[0].recipe), "grape jelly");
	return wishes;
}

static struct ahead ahead_of(const struct wishes *wishes)
{
	struct ahead out;

	KK_OK(&kit, kitchen_look_ahead(kit.kitchen, wishes, &out, &kit.fault));
	return out;
}

static void says(const struct ahead *ahead, const char *wanted)
{
	char words[160];
	struct text text = TEXT_OVER(words);

	ahead_spoken_words(ahead, &text);
	ck_assert_str_eq(words, wanted);
}

static size_t planned_rows(void)
{
	size_t runs;
	size_t batches;

	(void)kitchen_plan_runs(kit.kitchen, &runs);
	(void)kitchen_plan_batches(kit.kitchen, &batches);
	return runs + batches;
}

START_TEST(fruit_that_is_planned_is_not_forecast_again)
{
	struct wishes wishes = grapes(60);
	struct ahead ahead = ahead_of(&wishes);
	size_t rows;

	ck_assert_int_eq(ahead.forecast.lines[0].batches[BOUND_LIKELY], 13);
	says(&ahead, "");
	KK_OK(&kit, kitchen_plan_from_wishes(kit.kitchen, &wishes, PLAN_ANY_TIME, &kit.fault));
	rows = planned_rows();
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.fruit_mg, lb(60));
	ck_assert_int_eq(ahead.order.fruit_mg, 0);
	ck_assert_int_eq(ahead.forecast.lines[0].batches[BOUND_LIKELY], 0);
	ck_assert_int_eq(ahead.spoken.jars, 104);
	/* And not planned twice. */
	ck_assert(!kitchen_plan_from_wishes(kit.kitchen, &wishes, PLAN_ANY_TIME, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_uint_eq(planned_rows(), rows);
	KK_OK(&kit, kitchen_plan_drop(kit.kitchen, &kit.fault));
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.forecast.lines[0].batches[BOUND_LIKELY], 13);
}
END_TEST

START_TEST(the_rest_of_the_fruit_is_forecast_and_planned)
{
	struct wishes wishes = grapes(24);
	struct ahead before = ahead_of(&wishes);
	struct ahead after;

	line("run \"Grape\" \"12 lb\" times=3"); /* by another name */
	line("batch \"grape jelly\" times=8");
	wishes = grapes(60);
	after = ahead_of(&wishes);
	ck_assert_int_eq(after.order.fruit_mg, lb(60) - 3 * lb(12));
	ck_assert_int_eq(after.spoken.jars, 64);
	says(&after, "; 36 lb of it planned, for 64 jars. Of the other 24 lb:");
	ck_assert_int_ge(after.forecast.lines[0].batches[BOUND_LIKELY],
	                 before.forecast.lines[0].batches[BOUND_LIKELY] - 1);
	ck_assert_int_le(after.forecast.lines[0].batches[BOUND_LIKELY],
	                 before.forecast.lines[0].batches[BOUND_LIKELY] + 1);
	KK_OK(&kit, kitchen_plan_from_wishes(kit.kitchen, &wishes, PLAN_ANY_TIME, &kit.fault));
	after = ahead_of(&wishes);
	ck_assert_int_eq(after.order.fruit_mg, 0);
}
END_TEST

/* 36 lb give 9 quarts and a cup, 12 of them five cups at a time 7 batches: no batch takes it yet. */
START_TEST(juice_of_planned_runs_is_free_until_a_batch_is_planned)
{
	struct wishes wishes = grapes(36);
	struct ahead all = ahead_of(&wishes);
	struct ahead ahead;

	line("run \"grapes\" \"12 lb\" times=3");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, 0);
	for (int bound = 0; bound < BOUND_COUNT; bound++)
		ck_assert_int_eq(ahead.forecast.lines[0].batches[bound], all.forecast.lines[0].batches[bound]);
	says(&ahead, "; all of it planned. Of the juice that is free:");
	line("batch \"grape jelly\" times=2");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.forecast.lines[0].batches[BOUND_LIKELY],
	                 all.forecast.lines[0].batches[BOUND_LIKELY] - 2);
}
END_TEST

START_TEST(fruit_in_a_juicer_is_at_work)
{
	struct wishes wishes = grapes(24);
	struct ahead ahead;

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, lb(24) - lb(12));
	ck_assert_int_eq(ahead.spoken.going_mg, lb(12));
	says(&ahead, "; 12 lb of it at work. Of the other 12 lb:");
	wishes = grapes(12);
	text_copy(wishes.fruit, sizeof(wishes.fruit), "apples");
	text_copy(wishes.wish[0].recipe, sizeof(wishes.wish[0].recipe), "apple jelly");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, lb(12));
}
END_TEST

/* It does not come back by being drained; after clean-down a weight is that of another day. */
START_TEST(fruit_that_was_drained_today_is_used)
{
	struct wishes wishes = grapes(24);
	struct ahead ahead;

	(void)pk_juice(&kit, "grapes", "4 qt");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, lb(24));
	line("run \"grapes\" \"12 lb\"");
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	kk_pass(&kit, 5 * MINUTE_MS);
	KK_OK(&kit, kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), pk_ul("3 qt"), &kit.fault));
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, lb(24) - lb(12));
	says(&ahead, "; 12 lb of it used today. Of the other 12 lb:");
	KK_OK(&kit, kitchen_plan_drop(kit.kitchen, &kit.fault));
	kk_pass(&kit, 24 * HOUR_MS);
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, lb(24));
}
END_TEST

START_TEST(juice_in_stock_goes_to_planned_batches_first)
{
	struct wishes wishes = grapes(0);
	struct ahead ahead;

	(void)pk_juice(&kit, "grapes", "20 cups"); /* of four batches */
	wishes.juice_in_stock = true;
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.forecast.lines[0].batches[BOUND_LIKELY], 4);
	line("batch \"grape jelly\" times=3");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.forecast.lines[0].batches[BOUND_LIKELY], 1);
}
END_TEST

static struct shortage_line lack_of(const struct ahead *ahead, const char *name)
{
	struct shortage_line *rows;
	struct shortage_line line = { .name = "" };
	size_t count;

	KK_OK(&kit, kitchen_shortage(kit.kitchen, ahead, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].name, name) == 0)
			line = rows[i];
	free(rows);
	ck_assert_str_eq(line.name, name);
	return line;
}

/* 60 half-pints and 108 lids are here; two pots of strawberry jam take some 16 of each. */
START_TEST(what_planned_pots_take_is_missing_for_the_next_forecast)
{
	struct wishes wishes = grapes(30);
	struct ahead ahead = ahead_of(&wishes);
	struct shortage_line before = lack_of(&ahead, "half-pints");
	struct shortage_line lids = lack_of(&ahead, "flat lids");
	struct shortage_line after;
	char words[80];

	ck_assert_int_eq(goods_free(&before.goods), 60);
	ck_assert_int_eq(goods_free(&lids.goods), 108);
	shortage_here(&before, UNITS_US, words, sizeof(words));
	ck_assert_str_eq(words, "60");
	line("batch \"strawberry jam\" times=2");
	after = lack_of(&ahead, "half-pints");
	ck_assert_int_gt(after.goods.planned, 0);
	ck_assert_int_eq(goods_free(&after.goods), 60 - after.goods.planned);
	ck_assert_int_eq(after.missing[BOUND_HIGH], after.need.amount[BOUND_HIGH] - goods_free(&after.goods));
	shortage_here(&after, UNITS_US, words, sizeof(words));
	ck_assert_ptr_nonnull(strstr(words, "60, spoken for "));
	lids = lack_of(&ahead, "flat lids");
	ck_assert_int_eq(goods_free(&lids.goods), 108 - after.goods.planned);
}
END_TEST

/* 60 half-pints are here and 104 spoken for: 44 of those are bought too. */
START_TEST(what_is_spoken_for_and_not_here_is_bought_with_the_rest)
{
	struct wishes wishes = grapes(60);
	struct ahead ahead;
	struct shortage_line jars;

	KK_OK(&kit, kitchen_plan_from_wishes(kit.kitchen, &wishes, PLAN_ANY_TIME, &kit.fault));
	wishes = grapes(90);
	ahead = ahead_of(&wishes);
	jars = lack_of(&ahead, "half-pints");
	ck_assert_int_eq(jars.goods.planned, 104);
	ck_assert_int_eq(jars.need.amount[BOUND_LIKELY], 56);
	ck_assert_int_eq(jars.missing[BOUND_LIKELY], 56 + 104 - 60);
}
END_TEST

/* Of 60 half-pints, pots that go on leave too few for one more. */
START_TEST(jars_for_pots_at_work_are_not_there_for_the_next_pot)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	struct batch_need need;
	int64_t batch_id;

	(void)pk_juice(&kit, "grapes", "3 gal");
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	ck_assert_int_eq(need.jars_at_work, 8);
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_JAR, "half_pint", 15, &kit.fault));
	ck_assert(!kitchen_start_batch(kit.kitchen, &order, true, &batch_id, &kit.fault));
	ck_assert_msg(strstr(kit.fault.sentence, "about 8 needed, 15 here, 8 of them for pots at work") != NULL, "%s",
	              kit.fault.sentence);
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_JAR, "half_pint", 16, &kit.fault));
	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, true, &batch_id, &kit.fault));
}
END_TEST

/* --- trays ------------------------------------------------------------------------------- */

/* A pot or a juicer makes room for a dryer. */
static void spare_key(int digit)
{
	const char *retired = digit == 8 ? "pot 8 \"Wide pot\" retired" : "juicer 7 \"Old juicer\" retired";

	KK_OK(&kit, kitchen_setup_line(kit.kitchen, retired, kk_station(&kit, digit), &kit.fault));
}

static void trays_say(const struct ahead *ahead, const char *wanted)
{
	char words[160];
	struct text text = TEXT_OVER(words);

	ahead_tray_words(ahead, &text);
	ck_assert_str_eq(words, wanted);
}

/* The line of the list about trays; need.kind is another where there is none. */
static struct shortage_line tray_line(const struct ahead *ahead)
{
	struct shortage_line *rows;
	struct shortage_line out = { .need.kind = NEED_SUPPLY };
	size_t count;

	KK_OK(&kit, kitchen_shortage(kit.kitchen, ahead, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (rows[i].need.kind == NEED_TRAYS)
			out = rows[i];
	free(rows);
	return out;
}

static void start_drying(int digit, const char *food)
{
	struct drying_order order = {
		.station_id = kk_station(&kit, digit), .fruit_mg = lb(6), .hours_low = 8, .hours_high = 14, .trays = 2
	};
	int64_t id;

	text_copy(order.food, sizeof(order.food), food);
	KK_OK(&kit, kitchen_start_drying(kit.kitchen, &order, &id, &kit.fault));
}

/* 7 lb at 3 lb a tray (MSU 01600527), 3 cups 1/8 in deep on 14 x 14 in (NCHFP): three trays and two. */
START_TEST(trays_for_what_is_planned_to_dry_are_forecast)
{
	struct wishes wishes = grapes(36);
	struct ahead ahead = ahead_of(&wishes);

	trays_say(&ahead, "");
	ck_assert_int_ne(tray_line(&ahead).need.kind, NEED_TRAYS);
	spare_key(8);
	line("dryer 8 \"Box dryer\" trays=6 size=\"14 x 14 in\"");
	line("drying \"apples\" \"7 lb\" hours=8-14");
	line("drying \"fruit leather\" \"3 cups\"");
	ahead = ahead_of(&wishes);
	trays_say(&ahead, "trays to dry on: 5 planned, 6 free");
	ck_assert_int_eq(tray_line(&ahead).missing[BOUND_LIKELY], 0);
}
END_TEST

START_TEST(trays_of_a_dryer_at_work_are_missing)
{
	struct wishes wishes = grapes(36);
	struct shortage_line missing;
	struct ahead ahead;

	spare_key(8);
	line("dryer 8 \"Box dryer\" trays=6 size=\"14 x 14 in\"");
	spare_key(7);
	line("dryer 7 \"Old dryer\" trays=3");
	line("drying \"apples\" \"12 lb\" hours=8-14");
	start_drying(8, "plums");
	ahead = ahead_of(&wishes);
	trays_say(&ahead, "trays to dry on: 4 planned, 3 free");
	missing = tray_line(&ahead);
	ck_assert_str_eq(missing.name, "trays to dry on");
	ck_assert_int_eq(shortage_lack(&missing), LACK_LIKELY);
	ck_assert_int_eq(missing.missing[BOUND_LIKELY], 1);
	ck_assert_str_eq(missing.instead, "dry in turns");
	ck_assert_str_eq(shortage_kind(&missing), "trays");
}
END_TEST

START_TEST(trays_that_nobody_counted_are_not_made_up)
{
	struct wishes wishes = grapes(36);
	struct shortage_line uncounted;
	struct ahead ahead;

	spare_key(8);
	line("dryer 8 \"Box dryer\" trays=6");
	line("drying \"fruit leather\" \"3 cups\"");
	ahead = ahead_of(&wishes);
	trays_say(&ahead, "trays to dry on: not counted; say in the house how many, and of what size");
	uncounted = tray_line(&ahead);
	ck_assert_int_eq(shortage_lack(&uncounted), LACK_NOT_COUNTED);
}
END_TEST

/* It gives no juice. */
START_TEST(fruit_that_is_planned_to_dry_is_spoken_for)
{
	struct wishes wishes = grapes(36);
	struct ahead ahead;

	spare_key(8);
	line("dryer 8 \"Box dryer\" trays=6");
	line("drying \"grapes\" \"6 lb\" hours=20-40");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, lb(36) - lb(6));
	ck_assert_int_eq(ahead.order.run_mg, 0);
	start_drying(8, "grapes");
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.spoken.whole_mg, 0);
	ck_assert_int_eq(ahead.spoken.going_mg, lb(6));
	ck_assert_int_eq(ahead.order.run_mg, 0);
}
END_TEST

START_TEST(fruit_that_was_dried_today_is_used)
{
	struct wishes wishes = grapes(20);
	struct ahead ahead;
	int64_t mg;

	spare_key(8);
	line("dryer 8 \"Box dryer\" trays=6");
	start_drying(8, "grapes");
	ahead = ahead_of(&wishes);
	mg = ahead.order.fruit_mg;
	ck_assert_int_lt(mg, lb(20));
	for (int i = 0; i < 3; i++) { /* on its trays, the test, and it conditions beside the dryer */
		kk_pass(&kit, i == 1 ? HOUR_MS : 5000);
		KK_OK(&kit, pk_try_step(&kit, 8, true));
	}
	ck_assert_int_eq(kk_canner(&kit, 8)->content, STRIP_EMPTY);
	ahead = ahead_of(&wishes);
	ck_assert_int_eq(ahead.order.fruit_mg, mg);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("goods", .begin = begin, .end = end, .seconds = 30),
	TEST(fruit_that_is_planned_is_not_forecast_again),
	TEST(the_rest_of_the_fruit_is_forecast_and_planned),
	TEST(juice_of_planned_runs_is_free_until_a_batch_is_planned),
	TEST(fruit_in_a_juicer_is_at_work),
	TEST(fruit_that_was_drained_today_is_used),
	TEST(juice_in_stock_goes_to_planned_batches_first),
	TEST(what_planned_pots_take_is_missing_for_the_next_forecast),
	TEST(what_is_spoken_for_and_not_here_is_bought_with_the_rest),
	TEST(jars_for_pots_at_work_are_not_there_for_the_next_pot),
	TEST(trays_for_what_is_planned_to_dry_are_forecast),
	TEST(trays_of_a_dryer_at_work_are_missing),
	TEST(trays_that_nobody_counted_are_not_made_up),
	TEST(fruit_that_is_planned_to_dry_is_spoken_for),
	TEST(fruit_that_was_dried_today_is_used),
};

KK_TESTS("goods", listed)
