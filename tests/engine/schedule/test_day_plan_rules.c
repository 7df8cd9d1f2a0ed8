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

static const struct listed_test listed[] = {
	GROUP("rules", .begin = set_up, .end = tear_down, .seconds = 300),
	TEST(no_plan_breaks_a_rule),
	TEST(a_broken_plan_is_found_out),
};

TESTS("day plan rules", listed)
