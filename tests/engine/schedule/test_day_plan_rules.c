/* Random days against the checker that knows only the rules. */
#include <check.h>
#include <stdlib.h>

#include "engine/schedule/day_plan.h"
#include "support/plan_check.h"
#include "support/plan_days.h"
#include "support/tests.h"

#define DAYS 3000

static struct plan_input in;
static struct day_plan plan;
static struct plan_work *work;

static void set_up(void)
{
	work = malloc(plan_work_size());
	ck_assert_ptr_nonnull(work);
}

static void tear_down(void)
{
	free(work);
}

START_TEST(no_plan_breaks_a_rule)
{
	int planned = 0;

	for (int i = 0; planned < DAYS; i++) {
		struct dice dice = { .state = (uint64_t)i };
		struct fault fault = { 0 };
		char said[200] = "";

		day_by_chance(&in, &dice, 10);
		if (!day_plan_make(&in, NULL, work, &plan, &fault)) {
			ck_assert_msg(fault.kind == FAULT_REFUSED, "day %d: %s", i, fault.sentence);
			continue;
		}
		planned++;
		ck_assert_msg(plan_check(&in, &plan, said, sizeof(said)), "day %d: %s", i, said);
		ck_assert_msg(plan.bound_s <= plan.finish_s, "day %d: bound %d (%s), finish %d", i, plan.bound_s,
		              plan_stage_words(plan.bound_stage), plan.finish_s);
	}
}
END_TEST

/* A plan of a full day, in `plan`. */
static void plan_a_day(int batches)
{
	struct fault fault = { 0 };
	char said[200] = "";

	day_in_quince_hollow(&in, batches);
	in.effort_percent = 5;
	ck_assert_msg(day_plan_make(&in, NULL, work, &plan, &fault), "%s", fault.sentence);
	ck_assert_msg(plan_check(&in, &plan, said, sizeof(said)), "%s", said);
}

static struct plan_task *first_task(enum plan_task_kind kind)
{
	for (int i = 0; i < plan.task_count; i++)
		if (plan.tasks[i].kind == kind)
			return &plan.tasks[i];
	ck_abort_msg("no such task");
	return NULL;
}

/* The checker can fail: each of these breaks one rule. */
START_TEST(a_broken_plan_is_found_out)
{
	char said[200];

	for (int kind = 0; kind < PLAN_TASK_KIND_COUNT; kind++) {
		if (kind == PLAN_BREAK) /* by its people: in test_day_plan.c */
			continue;
		plan_a_day(7);
		first_task((enum plan_task_kind)kind)->end_s += 60;
		ck_assert_msg(!plan_check(&in, &plan, said, sizeof(said)), "%s longer",
		              plan_task_words((enum plan_task_kind)kind));
		plan_a_day(7);
		first_task((enum plan_task_kind)kind)->start_s -= PLAN_LOOK_EARLY_S;
		first_task((enum plan_task_kind)kind)->end_s -= PLAN_LOOK_EARLY_S;
		ck_assert_msg(!plan_check(&in, &plan, said, sizeof(said)), "%s earlier",
		              plan_task_words((enum plan_task_kind)kind));
	}
	plan_a_day(7);
	in.burners = 1;
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
	plan_a_day(7);
	in.people_count = 1;
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
	plan_a_day(7);
	in.batches[0].wait_limit_s = in.batches[1].wait_limit_s = in.batches[2].wait_limit_s = 60;
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
	plan_a_day(7);
	in.breaks[0] = (struct plan_break){ 0, MINUTES(20) };
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
	plan_a_day(7);
	in.runs[0].ready_s = plan.finish_s;
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
	plan_a_day(7);
	plan.loads[0].parts[0].jars--;
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
	plan_a_day(7);
	in.batches[6].jars++;
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
	plan_a_day(7);
	in.cooling_jars = 7 * 12 - 1;
	ck_assert(!plan_check(&in, &plan, said, sizeof(said)));
}
END_TEST

static const struct plan_task *task_of_run(enum plan_task_kind kind, int run)
{
	for (int i = 0; i < plan.task_count; i++)
		if (plan.tasks[i].kind == kind && plan.tasks[i].run == run)
			return &plan.tasks[i];
	ck_abort_msg("no such task");
	return NULL;
}

static void plan_again(void)
{
	struct fault fault = { 0 };
	char said[200] = "";

	ck_assert_msg(day_plan_make(&in, NULL, work, &plan, &fault), "%s", fault.sentence);
	ck_assert_msg(plan_check(&in, &plan, said, sizeof(said)), "%s", said);
}

START_TEST(what_dries_for_hours_does_not_hold_up_the_day)
{
	int finish;
	int dryer;
	int run;

	plan_a_day(3);
	finish = plan.finish_s;
	dryer = day_station(&in, PLAN_DRYER, false);
	run = day_drying(&in, 0, 12);
	plan_again();
	ck_assert_int_gt(task_of_run(PLAN_RUN, run)->end_s, finish);
	ck_assert_int_le(plan.finish_s, finish + MINUTES(10)); /* the hands that spread it */
	ck_assert_int_eq(task_of_run(PLAN_SET_UP, run)->station, dryer);
	ck_assert_int_le(plan.stations[dryer].permille, 1000);
}
END_TEST

/* Its trays must be filled yet. */
START_TEST(a_second_charge_of_a_dryer_waits_for_the_first_and_the_day_for_it)
{
	int first;
	int second;

	plan_a_day(3);
	(void)day_station(&in, PLAN_DRYER, false);
	first = day_drying(&in, 0, 12);
	second = day_drying(&in, 60, 12);
	plan_again();
	ck_assert_int_eq(task_of_run(PLAN_SET_UP, second)->start_s, task_of_run(PLAN_DRAIN, first)->end_s);
	ck_assert_int_ge(plan.finish_s, task_of_run(PLAN_SET_UP, second)->end_s);
	ck_assert_int_lt(plan.finish_s, task_of_run(PLAN_RUN, second)->end_s);
}
END_TEST

START_TEST(trays_are_looked_at_by_whoever_has_a_minute_until_the_day_ends)
{
	int looks = 0;
	int run;

	plan_a_day(3);
	(void)day_station(&in, PLAN_DRYER, false);
	run = day_drying(&in, 0, 30);
	plan_again();
	for (int i = 0; i < plan.task_count; i++) {
		if (plan.tasks[i].kind != PLAN_LOOK || plan.tasks[i].run != run)
			continue;
		looks++;
		ck_assert_int_le(plan.tasks[i].end_s, plan.finish_s);
	}
	ck_assert_int_ge(looks, 1);
	ck_assert_int_eq(task_of_run(PLAN_RUN, run)->people, 0);
}
END_TEST

START_TEST(without_a_dryer_nothing_is_dried)
{
	struct fault fault = { 0 };

	day_in_quince_hollow(&in, 2);
	(void)day_drying(&in, 0, 8);
	ck_assert(!day_plan_make(&in, NULL, work, &plan, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_str_eq(fault.sentence, "There is no dryer for what is to be dried: set one up first.");
}
END_TEST

/* And the days end when its trays are in. */
START_TEST(a_day_may_be_of_drying_alone)
{
	day_init(&in, 1);
	(void)day_station(&in, PLAN_DRYER, false);
	(void)day_drying(&in, 30, 8);
	in.effort_percent = 5;
	plan_again();
	ck_assert_int_eq(plan.finish_s, MINUTES(40));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("rules", .begin = set_up, .end = tear_down, .seconds = 300),
	TEST(no_plan_breaks_a_rule),
	TEST(a_broken_plan_is_found_out),
	TEST(what_dries_for_hours_does_not_hold_up_the_day),
	TEST(a_second_charge_of_a_dryer_waits_for_the_first_and_the_day_for_it),
	TEST(trays_are_looked_at_by_whoever_has_a_minute_until_the_day_ends),
	TEST(without_a_dryer_nothing_is_dried),
	TEST(a_day_may_be_of_drying_alone),
};

TESTS("day plan rules", listed)
