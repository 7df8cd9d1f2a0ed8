/*
 * What next, of Quince Hollow (invented): stations, helpers, the jars that wait and the
 * loader say one thing, and it stands while nobody does anything.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "support/plan_check.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void line(const char *words)
{
	kk_ok(&kit, kitchen_setup_line(kit.kitchen, words, 0, &kit.fault), words);
}

/* It is 9:00. */
static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	line("helper MK");
	line("helper JO");
	line("helper RW");
	line("plan burners=9 cooling=any clean=30");
	line("juice \"grape\" \"4 gal\" chilled");
}

static void end(void)
{
	kk_end(&kit);
}

static const struct kitchen_plan *plan_now(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	const struct kitchen_plan *plan = kitchen_plan(kit.kitchen, &now);
	char said[200] = "";

	ck_assert_msg(plan->possible, "%s", plan->why.sentence);
	ck_assert_msg(plan_check(plan->input, plan->plan, said, sizeof(said)), "%s", said);
	return plan;
}

static struct plan_next at_station(int digit)
{
	struct moment now = kitchen_now(kit.kitchen);
	const struct kitchen_plan *plan = plan_now();
	struct plan_next next = { 0 };

	for (size_t i = 0; i < plan->station_count; i++)
		if (plan->stations[i].digit == digit)
			plan_next_station(plan, kitchen_board(kit.kitchen), i, &now, &next);
	return next;
}

static struct plan_next for_waiting(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct plan_next next;

	ck_assert(plan_next_waiting(plan_now(), kitchen_board(kit.kitchen), &now, &next));
	return next;
}

static struct loader_proposal loader(int64_t station_id)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct loader_proposal offer;

	kitchen_propose(kit.kitchen, &now, station_id, &offer);
	return offer;
}

/* Jars of the next load that the plan has for a station. */
static int planned_jars(int64_t station_id)
{
	const struct kitchen_plan *plan = plan_now();

	for (int i = 0; i < plan->plan->load_count; i++)
		if (plan->plan->loads[i].running == PLAN_NONE &&
		    plan->station_ids[plan->plan->loads[i].station] == station_id)
			return plan->plan->loads[i].jars;
	return 0;
}

/* The loader proposes what the plan says, for each canner. */
static void loader_and_plan_agree(void)
{
	struct loader_proposal proposed = loader(0);

	ck_assert_uint_gt(proposed.count, 0);
	for (size_t i = 0; i < proposed.count; i++) {
		const struct proposal *proposal = &proposed.proposals[i];

		ck_assert_int_eq(proposal->jars + proposal->to_come, planned_jars(proposal->station_id));
	}
}

/* A pot of jelly is filled into so many pints. */
static void fill_pints(int jars)
{
	int64_t batch_id = pk_batch(&kit, DEEP_POT, "grape jelly, low sugar", "pint", 4);

	pk_to(&kit, DEEP_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "pint", jars, 0);
	for (int i = 0; i < 2; i++) { /* rinse, rinsed */
		kk_pass(&kit, 3 * MINUTE_MS);
		pk_step(&kit, DEEP_POT);
	}
}

/* --- the screens that contradicted -------------------------------------------------------- */

/* Three filled jars over their limit, canners free, and a meal going on: now, says everything. */
START_TEST(jars_that_wait_are_loaded_now_by_all_accounts)
{
	struct plan_next waiting;
	struct loader_proposal proposed;

	line("batch \"grape jelly, low sugar\" multiple=4 jar=pint times=2");
	line("break 9:55 11:30");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	fill_pints(3);
	kk_pass(&kit, 30 * MINUTE_MS);
	waiting = for_waiting();
	ck_assert(waiting.now);
	ck_assert_int_eq(waiting.kind, PLAN_LOAD);
	ck_assert(at_station(waiting.digit).now);
	ck_assert_str_eq(at_station(waiting.digit).words, waiting.words);
	proposed = loader(0);
	ck_assert_int_eq(proposed.proposals[0].station_id, waiting.station_id);
	ck_assert_int_eq(proposed.proposals[0].free_in_ms, 0);
	ck_assert_int_eq(proposed.proposals[0].jars, 3);
	loader_and_plan_agree();
}
END_TEST

/* The canner that the plan loads next; 0: none. */
static int loaded_next(void)
{
	const struct kitchen_plan *plan = plan_now();

	for (int i = 0; i < plan->plan->task_count; i++)
		if (plan->plan->tasks[i].kind == PLAN_LOAD && !plan->plan->tasks[i].running)
			return plan->stations[plan->plan->tasks[i].station].digit;
	return 0;
}

static bool told_to_heat(void)
{
	return strstr(at_station(loaded_next()).words, "Heat canner water (180 F, raw 140 F). Load ") != NULL;
}

/* A539 Guide 1, page 1-18: the water is hot before the jars come; some 20 to 30 min to boil. */
START_TEST(the_water_of_a_canner_is_heated_before_its_jars_come)
{
	line("batch \"grape jelly, low sugar\" multiple=4 jar=pint times=1");
	line("break 9:00 10:30");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	ck_assert_int_eq(at_station(loaded_next()).kind, PLAN_LOAD);
	ck_assert(!told_to_heat()); /* it would boil dry */
	kk_pass(&kit, 90 * MINUTE_MS);
	(void)pk_batch(&kit, DEEP_POT, "grape jelly, low sugar", "pint", 4);
	pk_to(&kit, DEEP_POT, PHASE_OFF);
	ck_assert(told_to_heat());
}
END_TEST

START_TEST(jars_that_stand_filled_are_loaded_and_nothing_is_heated_first)
{
	line("batch \"grape jelly, low sugar\" multiple=4 jar=pint times=1");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	fill_pints(3);
	ck_assert(at_station(loaded_next()).now);
	ck_assert(!told_to_heat());
}
END_TEST

/* Four gallons of juice and two free pots. */
START_TEST(free_pots_beside_enough_juice_are_told_to_start)
{
	line("batch \"grape jelly, low sugar\" multiple=2 jar=pint times=4");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	ck_assert(at_station(WIDE_POT).now);
	ck_assert_int_eq(at_station(WIDE_POT).kind, PLAN_TO_BOIL);
	ck_assert(at_station(DEEP_POT).now);
	ck_assert_int_eq(at_station(DEEP_POT).kind, PLAN_TO_BOIL);
}
END_TEST

/* Eleven pints wait; nobody presses a key.  Minute by minute plan and loader say the same, and
 * the same as before. */
START_TEST(what_was_said_stands_from_minute_to_minute)
{
	struct loader_proposal before;

	line("batch \"grape jelly, low sugar\" multiple=4 jar=pint times=2");
	line("run grapes \"12 lb\" times=2");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	fill_pints(11);
	before = loader(0);
	loader_and_plan_agree();
	for (int minute = 0; minute < 12; minute++) {
		struct loader_proposal after;

		kk_pass(&kit, MINUTE_MS);
		after = loader(0);
		loader_and_plan_agree();
		ck_assert_uint_eq(after.count, before.count);
		for (size_t i = 0; i < after.count; i++) {
			ck_assert_int_eq(after.proposals[i].station_id, before.proposals[i].station_id);
			ck_assert_int_eq(after.proposals[i].jars, before.proposals[i].jars);
		}
	}
}
END_TEST

/* Who stands at another free canner may have what would wait, and nothing else is changed. */
START_TEST(at_a_canner_without_a_part_in_it_what_would_wait_is_offered)
{
	struct loader_proposal proposed;
	int jars = 0;

	line("batch \"grape jelly, low sugar\" multiple=4 jar=pint");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	fill_pints(3);
	proposed = loader(kk_station(&kit, for_waiting().digit));
	for (size_t i = 0; i < proposed.count; i++)
		jars += proposed.proposals[i].jars;
	ck_assert_int_eq(jars + proposed.left_over, 3);
	ck_assert_int_eq(proposed.left_over, 0);
}
END_TEST

/* --- what cannot be begun yet ----------------------------------------------------------------- */

static bool instead(int digit, struct plan_next *next)
{
	struct moment now = kitchen_now(kit.kitchen);
	const struct kitchen_plan *plan = plan_now();

	for (size_t i = 0; i < plan->station_count; i++)
		if (plan->stations[i].digit == digit)
			return plan_next_instead(plan, kitchen_board(kit.kitchen), i, &now, next);
	ck_abort_msg("there is no station %d", digit);
	return false;
}

/* Nothing is here of its juice, and nothing runs that would bring it. */
START_TEST(a_batch_whose_juice_is_not_here_is_told_as_that_and_not_as_now)
{
	struct plan_next next;

	line("batch \"apple jelly\"");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	next = at_station(WIDE_POT);
	ck_assert(!next.nothing);
	ck_assert(next.juice_to_come);
	ck_assert(!next.now);
	ck_assert_int_eq(next.late_ms, 0);
	ck_assert_str_eq(next.words, "Wide pot to the boil: apple jelly; its juice is not here yet");
	ck_assert(!instead(WIDE_POT, &next));
	ck_assert(next.nothing);
	(void)pk_juice(&kit, "apple", "1 gal");
	next = at_station(WIDE_POT);
	ck_assert(!next.juice_to_come);
	ck_assert(next.now);
	ck_assert_str_eq(next.words, "Wide pot to the boil: apple jelly");
}
END_TEST

/* One helper: the deep pot stands until there is apple juice, and grape juice is here. */
START_TEST(what_is_here_is_offered_in_the_place_of_what_is_not)
{
	size_t batches;
	size_t helpers;
	const struct log_plan_batch *rows;
	struct plan_next next;

	for (int i = 0; i < 2; i++)
		KK_OK(&kit,
		      kitchen_remove_helper(kit.kitchen, kitchen_helpers(kit.kitchen, &helpers)[0].id, &kit.fault));
	line("run apples \"12 lb\" times=3");
	line("batch \"apple juice\" jar=pint multiple=2");
	line("batch \"grape jelly, low sugar\" multiple=1 jar=pint times=4");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	rows = kitchen_plan_batches(kit.kitchen, &batches);
	next = at_station(DEEP_POT);
	ck_assert_int_eq(next.plan_id, rows[0].id);
	ck_assert(next.juice_to_come);
	ck_assert_str_eq(next.words, "Deep pot to the boil: 2 x apple juice"); /* at an hour to come */
	ck_assert(instead(DEEP_POT, &next));
	ck_assert(!next.juice_to_come);
	ck_assert_int_gt(next.plan_id, rows[0].id);
}
END_TEST

/* --- when it is worked out ----------------------------------------------------------------- */

/* What the plan does not depend on leaves it alone: an ingredient is ticked, sugar comes in. */
START_TEST(an_act_the_plan_does_not_depend_on_leaves_it_alone)
{
	uint64_t version;
	int64_t batch_id;

	line("batch \"grape jelly, low sugar\" multiple=4 jar=pint times=3");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	batch_id = pk_batch(&kit, DEEP_POT, "grape jelly, low sugar", "pint", 4);
	version = plan_now()->version;
	kk_pass(&kit, 20 * SECOND_MS);
	KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 0, true, &kit.fault));
	pk_receive(&kit, SUPPLY_SUGAR, "", "5 lb");
	ck_assert_uint_eq(plan_now()->version, version);
	ck_assert_int_eq(plan_now()->planned, 2);
	ck_assert_int_eq(plan_now()->going_on, 1);
	pk_step(&kit, DEEP_POT); /* this it depends on */
	ck_assert_uint_gt(plan_now()->version, version);
}
END_TEST

/* In slices there is an answer at once, and at the end the same as in one go. */
START_TEST(in_slices_the_last_plan_repaired_is_the_first_answer)
{
	int64_t whole;
	int slices = 0;

	line("batch \"grape jelly, low sugar\" multiple=4 jar=pint times=4");
	line("run grapes \"12 lb\" times=4");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	(void)plan_now();
	kitchen_plan_in_slices(kit.kitchen, true);
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	ck_assert_int_eq(plan_now()->going_on, 1);
	ck_assert(kitchen_plan_searching(kit.kitchen));
	while (kitchen_plan_searching(kit.kitchen)) {
		kitchen_plan_search(kit.kitchen);
		(void)plan_now(); /* keeps the rules at any time */
		slices++;
	}
	ck_assert_int_gt(slices, 1);
	whole = plan_now()->finish_ms;
	kitchen_plan_in_slices(kit.kitchen, false);
	kk_pass(&kit, 61 * SECOND_MS);
	ck_assert_int_le(plan_now()->finish_ms, whole + 5 * MINUTE_MS);
	ck_assert(!kitchen_plan_searching(kit.kitchen));
}
END_TEST

/* Without an accepted plan the jars are spread as ever. */
START_TEST(without_a_plan_the_loader_spreads_the_jars)
{
	struct moment now;
	struct plan_next next;

	fill_pints(11);
	now = kitchen_now(kit.kitchen);
	ck_assert(!plan_next_waiting(kitchen_plan(kit.kitchen, &now), kitchen_board(kit.kitchen), &now, &next));
	ck_assert_int_eq(loader(0).proposals[0].jars, 9);
	ck_assert_int_eq(loader(0).proposals[1].jars, 2);
	ck_assert_int_eq(loader(0).left_over, 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("next", .begin = begin, .end = end, .seconds = 60),
	TEST(jars_that_wait_are_loaded_now_by_all_accounts),
	TEST(the_water_of_a_canner_is_heated_before_its_jars_come),
	TEST(jars_that_stand_filled_are_loaded_and_nothing_is_heated_first),
	TEST(free_pots_beside_enough_juice_are_told_to_start),
	TEST(what_was_said_stands_from_minute_to_minute),
	TEST(at_a_canner_without_a_part_in_it_what_would_wait_is_offered),
	TEST(a_batch_whose_juice_is_not_here_is_told_as_that_and_not_as_now),
	TEST(what_is_here_is_offered_in_the_place_of_what_is_not),
	TEST(an_act_the_plan_does_not_depend_on_leaves_it_alone),
	TEST(in_slices_the_last_plan_repaired_is_the_first_answer),
	TEST(without_a_plan_the_loader_spreads_the_jars),
};

KK_TESTS("what next", listed)
