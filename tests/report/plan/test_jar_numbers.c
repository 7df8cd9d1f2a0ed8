/*
 * All roads to a number of jars: the same fruit by forecast, shortage list, shelf
 * warning, pot card and plan of Quince Hollow (invented), before and after a pot of it
 * is begun.  A road that is added belongs into this walk.
 */
#include <check.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/recipe/amount.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/ahead.h"
#include "report/cli/arguments.h"
#include "report/command/commands.h"
#include "support/log_kit.h"
#include "support/tests.h"

#define IN_POT 4
#define BATCHES 24
#define RECIPE "grape jelly, low sugar"
#define PRODUCT "24 x " RECIPE " in pints"

static struct log_kit kit;
static struct day *day;
static struct fault fault;

static void line(const char *words)
{
	ck_assert_msg(kitchen_setup_line(day_kitchen(day), words, 0, &fault), "%s: %s", words, fault.sentence);
}

static void set_up(void)
{
	static const char *const lines[] = {
		"invented yes",
		"elevation 4650ft",
		"helper MK",
		"helper JO",
		"canner 1 boiling_water \"Kettle\" pint=9",
		"canner 2 boiling_water \"Other kettle\" pint=9",
		"juicer 6 \"Tall juicer\"",
		"pot 9 \"Deep pot\" \"16 qt\"",
		"times run=70 first=45 water=20 wait=20",
		"plan burners=5 cooling=any clean=30 charge=\"14 lb\"",
		("sheet \"" RECIPE
		 "\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=\"3 tbsp lemon juice\" multiple=5 minutes=none"),
		"supply jar pint 48",
		"lids \"Box\" 48 2026-03-14",
	};

	kit_init(&kit);
	ck_assert_msg(day_open(kit.path, LOG_CREATE, &day, &fault), "%s", fault.sentence);
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		line(lines[i]);
}

static void tear_down(void)
{
	day_close(day);
	kit_clear(&kit);
}

/* --- what is shown ------------------------------------------------------------------------- */

static char *shown(const char *command, bool json)
{
	struct arguments arguments = {
		.value = { [OPTION_FRUIT] = "grapes", [OPTION_WEIGHT] = "84lb", [OPTION_IN_POT] = "4" },
		.products = { PRODUCT },
		.product_count = 1,
	};
	struct report to = { .json = json };
	char *text;
	size_t size;
	bool done;

	to.out = open_memstream(&text, &size);
	ck_assert_ptr_nonnull(to.out);
	memset(&fault, 0, sizeof(fault));
	done = command_named(commands, command)->run(&arguments, day, &to, &fault);
	ck_assert_int_eq(fclose(to.out), 0);
	ck_assert_msg(done, "%s", fault.sentence);
	return text;
}

__attribute__((format(printf, 3, 4))) static void shows(const char *command, bool json, const char *format, ...)
{
	char part[200];
	char *text = shown(command, json);
	va_list values;

	va_start(values, format);
	(void)vsnprintf(part, sizeof(part), format, values);
	va_end(values);
	ck_assert_msg(strstr(text, part) != NULL, "no \"%s\" in:\n%s", part, text);
	free(text);
}

/* The jars of all rows of the plan, as its document has them. */
static int planned_jars(void)
{
	char *text = shown("plan", true);
	int sum = 0;

	for (const char *at = strstr(text, "\"items\""); at != NULL && (at = strstr(at, "\"jars\": ")) != NULL; at++) {
		if (strstr(text, "\"stations\"") != NULL && at > strstr(text, "\"stations\""))
			break;
		sum += atoi(at + strlen("\"jars\": "));
	}
	free(text);
	return sum;
}

static struct batch_order pot_of(const char *jar)
{
	struct batch_order order = { .recipe = RECIPE, .pack = "hot_unsterile_jar", .multiple = IN_POT };
	const struct board *board = kitchen_board(day_kitchen(day));

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].station.kind == STATION_POT)
			order.station_id = board->strips[i].station.id;
	ck_assert(strlen(jar) < sizeof(order.jar));
	memcpy(order.jar, jar, strlen(jar) + 1);
	return order;
}

/* What the card of one pot says. */
static int card_jars(void)
{
	struct batch_order order = pot_of("pint");
	struct batch_need need;

	ck_assert_msg(kitchen_batch_need(day_kitchen(day), &order, &need, &fault), "%s", fault.sentence);
	ck_assert(need.yield_known);
	return need.yield.jars_likely;
}

/* --- the walk -------------------------------------------------------------------------------- */

/* 24 batches of 4 cups are 24 quarts: 84 lb at 3.5 lb a quart (AIB 539).  One batch alone
 * fills 2 pints and a part of a third; four in a pot lose no such part. */
START_TEST(all_roads_lead_to_the_same_number_of_jars)
{
	struct wishes wishes = { .fruit = "grapes", .in_pot = IN_POT, .count = 1 };
	int jars = card_jars() * BATCHES / IN_POT;

	ck_assert_int_eq(jars, 66);
	shows("forecast", true, "\"likely\": %d, ", jars);
	shows("forecast", false, "batches, 4 in a pot");
	shows("shortage", true,
	      "\"name\": \"pints\", \"kind\": \"jar\", \"jar\": \"pint\", \"unit\": \"each\", \"optional\": false, "
	      "\"needed\": {\"low\": 55, \"likely\": %d,",
	      jars);
	shows("shortage", false, "pints: likely %d, here 48", jars);
	ck_assert(wish_read(day_kitchen(day), PRODUCT, &wishes.wish[0], &fault));
	ck_assert(amount_read("84lb", MEASURE_MASS, SUPPLY_FRUIT, &wishes.fruit_mg, &fault));
	ck_assert_msg(kitchen_plan_from_wishes(day_kitchen(day), &wishes, PLAN_ANY_TIME, &fault), "%s", fault.sentence);
	ck_assert_int_eq(planned_jars(), jars);
	shows("warnings", false,
	      "Get more pints before starting another pot: %d needed for what is cooking and planned, 48 here", jars);
	shows("warnings", false,
	      "Get more lids before starting another pot: %d needed for what is cooking and planned, 48 here", jars);
}
END_TEST

/* Six charges of 14 lb give 24 quarts: not one of the pots is short of juice. */
START_TEST(rounding_leaves_no_pot_without_juice)
{
	char *text;

	line("run grapes \"14 lb\" times=6");
	line("batch \"" RECIPE "\" multiple=4 jar=pint times=6");
	text = shown("plan", true);
	ck_assert_msg(strstr(text, "\"juice_short\": true") == NULL, "%s", text);
	free(text);
	line("batch \"" RECIPE "\" jar=pint");
	text = shown("plan", true);
	ck_assert_msg(strstr(text, "\"juice_short\": true") != NULL, "%s", text);
	free(text);
}
END_TEST

/* One batch more than full pots: it is cooked alone, and counted alone. */
START_TEST(what_is_left_is_a_smaller_pot)
{
	struct wishes wishes = { .fruit = "grapes", .in_pot = IN_POT, .count = 1 };
	struct ahead ahead;
	struct batch_order one = pot_of("pint");
	struct batch_need need;
	const struct log_plan_batch *rows;
	size_t count;

	one.multiple = 1;
	ck_assert(kitchen_batch_need(day_kitchen(day), &one, &need, &fault));
	ck_assert(wish_read(day_kitchen(day), "9 x " RECIPE " in pints", &wishes.wish[0], &fault));
	ck_assert(amount_read("84lb", MEASURE_MASS, SUPPLY_FRUIT, &wishes.fruit_mg, &fault));
	ck_assert(kitchen_look_ahead(day_kitchen(day), &wishes, &ahead, &fault));
	ck_assert_int_eq(ahead.forecast.jars[BOUND_LIKELY], 2 * card_jars() + need.yield.jars_likely);
	ck_assert(kitchen_plan_from_wishes(day_kitchen(day), &wishes, PLAN_ANY_TIME, &fault));
	rows = kitchen_plan_batches(day_kitchen(day), &count);
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(rows[0].multiple, 4);
	ck_assert_int_eq(rows[2].multiple, 1);
	ck_assert_int_eq(planned_jars(), ahead.forecast.jars[BOUND_LIKELY]);
}
END_TEST

/* Jars wanted: the fewest batches whose pots give them; sugar as the pots take it. */
START_TEST(wanted_jars_are_counted_by_the_pot)
{
	struct wishes wishes = { .fruit = "grapes", .jars = 66, .count = 1 };
	struct ahead pots;
	struct ahead single;

	ck_assert(wish_read(day_kitchen(day), RECIPE " in pints", &wishes.wish[0], &fault));
	ck_assert(kitchen_look_ahead(day_kitchen(day), &wishes, &single, &fault));
	wishes.in_pot = IN_POT;
	ck_assert(kitchen_look_ahead(day_kitchen(day), &wishes, &pots, &fault));
	ck_assert_int_eq(pots.need.batches[BOUND_LIKELY], BATCHES);
	ck_assert_int_eq(single.need.batches[BOUND_LIKELY], 33); /* two pints each */
	ck_assert_int_eq(pots.forecast.jars[BOUND_LIKELY], 66);
}
END_TEST

/* Neither regular pectin nor a small pot is multiplied because somebody says so. */
START_TEST(no_more_in_a_pot_than_recipe_and_pot_allow)
{
	struct wishes wishes = { .fruit = "grapes", .in_pot = 9, .count = 3 };
	struct ahead ahead;

	ck_assert(wish_read(day_kitchen(day), "grape jelly", &wishes.wish[0], &fault));
	ck_assert(wish_read(day_kitchen(day), RECIPE, &wishes.wish[1], &fault));
	ck_assert(wish_read(day_kitchen(day), "grape juice", &wishes.wish[2], &fault));
	ck_assert(kitchen_look_ahead(day_kitchen(day), &wishes, &ahead, &fault));
	ck_assert_int_eq(ahead.order.products[0].in_pot, 1);
	ck_assert_int_eq(ahead.order.products[1].in_pot, 5);
	ck_assert_int_eq(ahead.order.products[2].in_pot, 3); /* eight by the recipe, but 4 qt each in 16 */
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("jar_numbers", .begin = set_up, .end = tear_down),
	TEST(all_roads_lead_to_the_same_number_of_jars),
	TEST(rounding_leaves_no_pot_without_juice),
	TEST(what_is_left_is_a_smaller_pot),
	TEST(wanted_jars_are_counted_by_the_pot),
	TEST(no_more_in_a_pot_than_recipe_and_pot_allow),
};

TESTS("jar_numbers", listed)
