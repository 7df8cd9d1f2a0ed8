/*
 * The closing page of a day of Quince Hollow (invented): silent while anything runs; then what
 * the day gave, and what is left to do.
 */
#include <check.h>
#include <string.h>

#include "kitchen/history/day_left.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/stock/stock.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static struct day_left left;

static void begin(void)
{
	pk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

static bool look(void)
{
	struct moment now = kitchen_now(kit.kitchen);

	return kitchen_day_left(kit.kitchen, &now, &left);
}

static bool says(const char *words)
{
	for (size_t i = 0; i < left.count; i++)
		if (strstr(left.lines[i], words) != NULL)
			return true;
	return false;
}

START_TEST(nothing_is_said_before_a_jar_is_made_or_while_anything_runs)
{
	int64_t load_id;

	ck_assert(!look());
	load_id = kk_start(&kit, BIG_KETTLE, 7);
	ck_assert(!look());
	kk_to(&kit, load_id, PHASE_UNLOAD);
	ck_assert(!look());
	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert(look());
	(void)kk_start(&kit, LOW_KETTLE, 5);
	ck_assert(!look());
}
END_TEST

START_TEST(it_says_what_was_made_and_when_the_seals_are_checked)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	char hour[8];

	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert(look());
	clock_words_hour(kit.clock.now.wall_ms + 12 * HOUR_MS, hour, sizeof(hour));
	ck_assert(says("7 jars today. On the rack: 7 "));
	ck_assert(says("7 jars cool: check the seals from "));
	ck_assert_msg(says(hour), "%s", left.lines[1]);
	ck_assert(!says("d in the plan"));
	ck_assert(!says("Left for tomorrow"));
	ck_assert(!says("Used up"));
}
END_TEST

START_TEST(it_says_what_is_left_and_what_is_used_up)
{
	pk_receive(&kit, SUPPLY_FRUIT, "", "12 lb");
	pk_receive(&kit, SUPPLY_SUGAR, "", "2 lb");
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_SUGAR, "", 0, &kit.fault));
	(void)pk_juice(&kit, "grape", "1 gal");
	kk_to(&kit, kk_start(&kit, BIG_KETTLE, 7), PHASE_COOLING);
	ck_assert(look());
	ck_assert(says("Left for tomorrow: 12 lb of fruit, 1 gal of juice."));
	ck_assert(says("Used up: sugar."));
}
END_TEST

START_TEST(a_plan_that_is_worked_off_leaves_the_washing_up)
{
	kk_ok(&kit, kitchen_setup_line(kit.kitchen, "helper MK", 0, &kit.fault), "helper");
	kk_ok(&kit, kitchen_setup_line(kit.kitchen, "batch \"apple butter\" jar=pint", 0, &kit.fault), "batch");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	kk_to(&kit, kk_start(&kit, BIG_KETTLE, 7), PHASE_COOLING);
	ck_assert(look());
	ck_assert(says("1 planned thing has not been begun: see the plan (p)."));
	ck_assert(!says("Wash"));
	KK_OK(&kit, kitchen_plan_finish(kit.kitchen, true, &kit.fault));
	ck_assert(look());
	ck_assert(!says("planned thing")); /* nothing of a finished day is called for */
	ck_assert(!says("Wash"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("left", .begin = begin, .end = end, .seconds = 60),
	TEST(nothing_is_said_before_a_jar_is_made_or_while_anything_runs),
	TEST(it_says_what_was_made_and_when_the_seals_are_checked),
	TEST(it_says_what_is_left_and_what_is_used_up),
	TEST(a_plan_that_is_worked_off_leaves_the_washing_up),
};

KK_TESTS("what a day leaves", listed)
