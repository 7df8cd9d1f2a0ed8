/* Recipes with soaks, alternatives and liquid pectin, and those that are never started. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/acid_asked.h"
#include "kitchen/stock/stock.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	pk_receive(&kit, SUPPLY_VINEGAR, "", "2 gal");
	pk_receive(&kit, SUPPLY_SALT, "", "3 lb");
}

static void end(void)
{
	kk_end(&kit);
}

/* Refused with these words. */
static void refused(bool done, const char *words)
{
	ck_assert_msg(strstr(kit.fault.sentence, words) != NULL, "\"%s\" does not say \"%s\"", kit.fault.sentence,
	              words);
	kk_refused(&kit, done, FAULT_REFUSED, words);
}

/* Page 6-9: 1/2 cup of salt in the soak, 4 cups of vinegar in the pot. */
START_TEST(a_soak_comes_off_the_ledgers_too)
{
	int64_t vinegar = pk_supply(&kit, SUPPLY_VINEGAR, "");
	int64_t salt = pk_supply(&kit, SUPPLY_SALT, "");

	(void)pk_batch(&kit, DEEP_POT, "bread-and-butter pickles", "pint", 1);
	ck_assert_int_eq(vinegar - pk_supply(&kit, SUPPLY_VINEGAR, ""), pk_ul("4 cups"));
	ck_assert_int_eq(salt - pk_supply(&kit, SUPPLY_SALT, ""), 144000); /* 6 g a teaspoon, 48 of them a cup */
}
END_TEST

/* Page 2-8: 3/4 cup of candies, or 8 cinnamon sticks. */
START_TEST(an_alternative_is_written_down_and_not_taken)
{
	int64_t batch = pk_batch(&kit, DEEP_POT, "spiced apple rings", "pint", 1);
	struct log_batch_amount sticks = pk_amount_row(&kit, batch, "cinnamon sticks");

	ck_assert_int_eq(pk_amount_row(&kit, batch, "red hot cinnamon candies").used, pk_ul("3/4 cup"));
	ck_assert_int_eq(sticks.wanted, 8);
	ck_assert_int_eq(sticks.used, 0);
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch, sticks.place, 8, "", &kit.fault));
	ck_assert_int_eq(pk_amount_row(&kit, batch, "cinnamon sticks").used, 8);
}
END_TEST

START_TEST(an_alternative_is_never_short)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "tomatoes with okra or zucchini, 9 pints", "pint", 1);
	struct batch_need need;

	/* 7 lb of tomatoes and 2-1/2 lb of okra, or as much zucchini. */
	KK_OK(&kit,
	      kitchen_supply_count(kit.kitchen, SUPPLY_FRUIT, "", pk_amount(SUPPLY_FRUIT, "9.5 lb") + 2, &kit.fault));
	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	ck_assert_int_eq(need.short_lines, 0);
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_FRUIT, "", pk_amount(SUPPLY_FRUIT, "9 lb"), &kit.fault));
	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	ck_assert_int_eq(need.short_lines, 1);
}
END_TEST

/* Pouches are no packages of powder. */
START_TEST(liquid_pectin_has_a_ledger_of_its_own)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "pear-apple jam", "half_pint", 1);
	int64_t powder = pk_supply(&kit, SUPPLY_PECTIN_REGULAR, "");

	pk_receive(&kit, SUPPLY_PECTIN_LIQUID, "", "3 oz");
	refused(pk_try_batch(&kit, &order), "Not enough liquid pectin");
	pk_receive(&kit, SUPPLY_PECTIN_LIQUID, "", "4 oz");
	(void)pk_batch(&kit, DEEP_POT, "pear-apple jam", "half_pint", 1);
	ck_assert_int_le(llabs(pk_supply(&kit, SUPPLY_PECTIN_LIQUID, "") - pk_amount(SUPPLY_PECTIN_LIQUID, "1 oz")), 2);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_PECTIN_REGULAR, ""), powder);
}
END_TEST

static void never_started(const char *name, const char *words)
{
	struct batch_order order = { .station_id = pk_order(&kit, DEEP_POT, "grape jelly", "pint", 1).station_id,
		                     .jar = "half_pint",
		                     .multiple = 1 };
	struct log_plan_batch planned = { .multiple = 1 };
	int64_t before = kk_journal(&kit);
	int64_t id;

	ck_assert(text_copy(order.recipe, sizeof(order.recipe), name) &&
	          text_copy(planned.recipe, sizeof(planned.recipe), name));
	refused(pk_try_batch(&kit, &order), words);
	refused(kitchen_plan_add_batch(kit.kitchen, &planned, &id, &kit.fault), words);
	ck_assert_int_eq(kk_journal(&kit), before);
}

START_TEST(what_is_not_startable_is_neither_started_nor_planned)
{
	never_started("mango chutney", "misprints the salt");
	never_started("pickled horseradish sauce", "No process is printed for it");
	never_started("refrigerated apple spread", "kept in the refrigerator");
}
END_TEST

/* Page 6-12: pints in jars boiled first, quarts in clean hot ones. */
START_TEST(a_pack_that_is_not_printed_for_the_jar_is_refused)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "14-day sweet pickles", "quart", 1);

	refused(pk_try_batch(&kit, &order), "no process is printed for that pack in that jar");
	ck_assert(text_copy(order.pack, sizeof(order.pack), "raw"));
	KK_OK(&kit, pk_try_batch(&kit, &order));
}
END_TEST

/* Page 6-21: 1/4 tsp of salt a half-pint; the acid that is asked for is the pot's. */
START_TEST(salt_in_each_jar_is_taken_and_not_asked_for_as_acid)
{
	struct acid_asked asked;
	int64_t batch;
	int64_t salt;

	pk_receive(&kit, SUPPLY_LEMON_JUICE, "", "1 qt");
	batch = pk_batch(&kit, DEEP_POT, "marinated peppers", "half_pint", 1);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	salt = pk_supply(&kit, SUPPLY_SALT, "");
	KK_OK(&kit, kitchen_acid_asked(kit.kitchen, batch, "half_pint", &asked, &kit.fault));
	ck_assert(asked.asked && !asked.in_jar && !asked.short_in_pot);
	ck_assert_str_eq(asked.words, "1 cup of bottled lemon juice and 2 cups of white vinegar, in the pot");
	kk_refused(&kit, pk_try_fill(&kit, batch, "half_pint", 9, 0, false, true), FAULT_STOPPED, "acid not said");
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_SALT, ""), salt);
	pk_fill(&kit, batch, "half_pint", 9, 0);
	ck_assert_int_eq(salt - pk_supply(&kit, SUPPLY_SALT, ""), 9 * 1500); /* 6 g a teaspoon */
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("guide recipes", .begin = begin, .end = end),
	TEST(a_soak_comes_off_the_ledgers_too),
	TEST(an_alternative_is_written_down_and_not_taken),
	TEST(an_alternative_is_never_short),
	TEST(liquid_pectin_has_a_ledger_of_its_own),
	TEST(what_is_not_startable_is_neither_started_nor_planned),
	TEST(a_pack_that_is_not_printed_for_the_jar_is_refused),
	TEST(salt_in_each_jar_is_taken_and_not_asked_for_as_acid),
};

KK_TESTS("guide recipes", listed)
