/*
 * A full day of Quince Hollow (invented) from 7:30, 8 baskets of grapes and 7 pots of jelly,
 * with the meals that cost it two hours while nothing was begun that would end inside one.
 */
#include <check.h>

#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "support/kitchen_kit.h"
#include "support/plan_check.h"
#include "support/tests.h"

#define HALF_PAST_SEVEN_MS (KK_MORNING_MS - 90 * MINUTE_MS)
#define MORE_MINUTES 20 /* beside the meal itself */

static const char *const lines[] = {
	"kitchen \"Quince Hollow\"",
	"invented yes",
	"elevation 4650ft",
	"times run=70 first=45 water=20 wait=20",
	"canner 1 boiling_water \"Big kettle\" pint=9 quart=7",
	"canner 2 boiling_water \"Low kettle\" pint=7",
	"canner 3 boiling_water \"Third kettle\" pint=9",
	"juicer 4 \"Tall juicer\"",
	"juicer 5 \"Old juicer\"",
	"juicer 8 \"New juicer\"",
	"pot 6 \"Wide pot\" \"16 qt\"",
	"pot 7 \"Deep pot\" \"24 qt\"",
	"sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none",
	"plan burners=6 fillers=2 cooling=any clean=30 charge=\"14 lb\"",
	"helper MK",
	"helper JO",
	"helper RW",
	"day 7:30",
	"run \"grapes\" \"14 lb\" times=8",
	"batch \"grape jelly, low sugar\" multiple=4 jar=pint times=7",
};

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin_empty(&kit);
	test_clock_set_wall(&kit.clock, HALF_PAST_SEVEN_MS);
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		KK_OK(&kit, kitchen_setup_line(kit.kitchen, lines[i], 0, &kit.fault));
}

static void end(void)
{
	kk_end(&kit);
}

static void line(const char *words)
{
	kk_ok(&kit, kitchen_setup_line(kit.kitchen, words, 0, &kit.fault), words);
}

/* Minutes from 7:30 to the end. */
static int day_minutes(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	const struct kitchen_plan *plan = kitchen_plan(kit.kitchen, &now);
	char said[200] = "";

	ck_assert_msg(plan->possible, "%s", plan->why.sentence);
	ck_assert_msg(plan_check(plan->input, plan->plan, said, sizeof(said)), "%s", said);
	for (size_t i = 0; i < plan->item_count; i++)
		ck_assert_msg(!plan->items[i].juice_short, "%s has no juice", plan->items[i].words);
	return (int)((plan->finish_ms - HALF_PAST_SEVEN_MS) / MINUTE_MS);
}

static const struct {
	const char *line;
	int minutes;
} meals[] = {
	{ "break 12:30 13:00", 30 },
	{ "break 10:30 11:00", 30 },
	{ "break 12:00 12:45", 45 },
};

START_TEST(a_meal_in_turns_costs_no_more_than_itself_and_twenty_minutes)
{
	int without = day_minutes();

	line("plan meals=turns");
	line(meals[_i].line);
	ck_assert_int_le(day_minutes(), without + meals[_i].minutes + MORE_MINUTES);
}
END_TEST

/* All at the table: what runs by itself goes on, and no juicer stands idle for hours. */
START_TEST(a_meal_together_does_not_cost_twice_its_length)
{
	int without = day_minutes();

	line("plan meals=together");
	line(meals[_i].line);
	ck_assert_int_le(day_minutes(), without + 2 * meals[_i].minutes);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("meals", .begin = begin, .end = end, .seconds = 60),
	EACH(a_meal_in_turns_costs_no_more_than_itself_and_twenty_minutes, 0, 3),
	EACH(a_meal_together_does_not_cost_twice_its_length, 0, 3),
};

KK_TESTS("meals of the plan", listed)
