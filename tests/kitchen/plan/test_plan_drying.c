/* What is to be dried, as rows of the plan: its dryer, its hours, its looks, and who waits for it (nobody). */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan_private.h"
#include "kitchen/step/step.h"
#include "support/plan_check.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define BOX_DRYER 7
#define HOURS(n) ((n)*INT64_C(3600) * 1000)

static struct kitchen_kit kit;

static const char *const lines[] = {
	"dryer 7 \"Box dryer\" trays=6 size=\"14 x 14 in\"",
	"plan burners=5 clean=30 charge=\"12 lb\"",
	"helper MK",
	"helper JO",
};

static void line(const char *words)
{
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, words, 0, &kit.fault));
}

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "juicer 7 \"Old juicer\" retired", kk_station(&kit, OLD_JUICER),
	                               &kit.fault));
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		line(lines[i]);
}

static void end(void)
{
	kk_end(&kit);
}

/* Of a plan that keeps all rules. */
static const struct kitchen_plan *plan(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	const struct kitchen_plan *plan = kitchen_plan(kit.kitchen, &now);
	char said[200] = "";

	if (plan->possible)
		ck_assert_msg(plan_check(plan->input, plan->plan, said, sizeof(said)), "%s", said);
	return plan;
}

static const struct plan_task *task_of(const struct kitchen_plan *plan, enum plan_task_kind kind)
{
	for (int i = 0; i < plan->plan->task_count; i++)
		if (plan->plan->tasks[i].kind == kind && plan->plan->tasks[i].run != PLAN_NONE &&
		    plan->input->runs[plan->plan->tasks[i].run].at == PLAN_DRYER)
			return &plan->plan->tasks[i];
	return NULL;
}

static void says(enum plan_task_kind kind, const char *words)
{
	const struct kitchen_plan *now = plan();
	char said[160];

	ck_assert_ptr_nonnull(task_of(now, kind));
	plan_task_say(now, kitchen_board(kit.kitchen), task_of(now, kind), said, sizeof(said));
	ck_assert_str_eq(said, words);
}

static const struct log_plan_run *row(size_t n)
{
	size_t count;
	const struct log_plan_run *rows = kitchen_plan_runs(kit.kitchen, &count);

	ck_assert_uint_gt(count, n);
	return &rows[n];
}

static int64_t start(const char *food, int64_t mg, int low, int high, int trays)
{
	struct drying_order order = { .station_id = kk_station(&kit, BOX_DRYER),
		                      .fruit_mg = mg,
		                      .hours_low = low,
		                      .hours_high = high,
		                      .trays = trays };
	int64_t id;

	ck_assert(text_copy(order.food, sizeof(order.food), food));
	KK_OK(&kit, kitchen_start_drying(kit.kitchen, &order, &id, &kit.fault));
	return id;
}

START_TEST(what_is_to_dry_is_a_row_with_its_hours_as_a_range)
{
	line("drying \"apples\" \"5 lb\" hours=8-14");
	ck_assert_uint_eq(plan()->item_count, 1);
	ck_assert(plan()->items[0].dries);
	ck_assert_str_eq(plan()->items[0].words, "5 lb apples, 8-14 h");
	says(PLAN_SET_UP, "Load the trays of Box dryer: 5 lb apples, 8-14 h");
	says(PLAN_RUN, "Box dryer dries: 5 lb apples, 8-14 h");
	says(PLAN_DRAIN, "Test, and empty Box dryer: 5 lb apples, 8-14 h");
}
END_TEST

/* The longest that is said; by itself, and looked at every 90 minutes (MSU 01600528). */
START_TEST(its_dryer_is_taken_for_the_longest_and_by_nobody)
{
	const struct plan_task *dry;
	const struct kitchen_plan *now;

	line("drying \"apples\" \"5 lb\" hours=8-14");
	line("batch \"strawberry jam\" times=6");
	now = plan();
	dry = task_of(now, PLAN_RUN);
	ck_assert_int_eq(dry->end_s - dry->start_s, 14 * 3600);
	ck_assert_uint_eq(dry->people, 0);
	ck_assert_int_eq(now->input->stations[dry->station].look_every_s, 90 * 60);
	says(PLAN_LOOK, "Look at and turn the trays of Box dryer: 5 lb apples, 8-14 h");
	ck_assert_int_lt(now->plan->finish_s, dry->end_s);
	ck_assert_int_le(now->plan->stages[now->plan->bottleneck].permille, 1000);
}
END_TEST

/* 24 to 36 h: MU Extension GH1563; 6 to 8 h on 1/8 in: NCHFP. */
START_TEST(published_hours_are_planned_whatever_the_house_says)
{
	line("drying \"prunes\" \"5 lb\" hours=2-3");
	ck_assert_str_eq(plan()->items[0].words, "5 lb prunes, 24-36 h");
	ck_assert_int_eq(row(0)->hours_low, 0);
	line("drying \"fruit leather\" \"3 cups\"");
	ck_assert_str_eq(plan()->items[1].words, "3 cups fruit leather on 2 trays, 6-8 h");
}
END_TEST

START_TEST(what_is_refused_at_the_dryer_is_not_planned)
{
	ck_assert(!kitchen_setup_line(kit.kitchen, "drying \"jerky\" \"5 lb\" hours=4-6", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "160 F"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "drying \"apples\" \"5 lb\"", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "not published"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "drying \"fruit leather\" \"5 lb\"", 0, &kit.fault));
	ck_assert_uint_eq(plan()->item_count, 0);
}
END_TEST

START_TEST(a_drying_takes_its_row_and_an_undo_gives_it_back)
{
	int64_t id;

	line("run \"apples\" \"5 lb\"");
	line("drying \"apples\" \"5 lb\" hours=8-14");
	id = start("apples", pk_amount(SUPPLY_FRUIT, "5 lb"), 8, 14, 4);
	ck_assert_int_eq(row(0)->run_id, 0); /* the juicer's */
	ck_assert_int_eq(row(1)->run_id, id);
	ck_assert_int_eq(plan()->items[1].state, ITEM_GOING_ON);
	KK_OK(&kit, pk_undo(&kit, SUBJECT_DRYING, id));
	ck_assert_int_eq(row(1)->run_id, 0);
	ck_assert_int_eq(plan()->items[1].state, ITEM_PLANNED);
}
END_TEST

/* Apples again tomorrow: the dryer is not free before. */
START_TEST(what_dries_holds_its_dryer_and_the_plan_knows_until_when)
{
	const struct plan_task *dry;

	(void)start("apples", pk_amount(SUPPLY_FRUIT, "5 lb"), 8, 14, 4);
	kk_pass(&kit, 5000);
	pk_step(&kit, BOX_DRYER);
	kk_pass(&kit, HOURS(2));
	line("drying \"plums\" \"5 lb\" hours=10-12");
	line("batch \"strawberry jam\"");
	dry = task_of(plan(), PLAN_RUN);
	ck_assert_int_eq(dry->end_s - plan()->input->start_s, 12 * 3600); /* 14 less 2 */
	ck_assert_uint_eq(plan()->item_count, 3);
	ck_assert_int_eq(plan()->items[1].plan_id, 0); /* nobody planned it */
}
END_TEST

START_TEST(no_batch_waits_for_fruit_that_is_dried)
{
	const struct kitchen_plan *now;

	line("drying \"grapes\" \"20 lb\" hours=20-40");
	line("run \"grapes\" \"12 lb\"");
	line("batch \"grape jelly\" after=1");
	now = plan();
	ck_assert_msg(now->possible, "%s", now->why.sentence);
	ck_assert_int_eq(now->input->batches[0].run_count, 1);
	ck_assert_int_eq(now->input->runs[now->input->batches[0].first_run].at, PLAN_JUICER);
}
END_TEST

START_TEST(its_fruit_is_needed_and_puree_is_not_on_the_shelf)
{
	line("drying \"apples\" \"5 lb\" hours=8-14");
	line("drying \"fruit leather\" \"3 cups\"");
	ck_assert_int_eq(plan_needs_of(kit.kitchen, SUPPLY_FRUIT, ""), pk_amount(SUPPLY_FRUIT, "5 lb"));
}
END_TEST

START_TEST(a_day_ends_while_something_dries)
{
	line("drying \"apples\" \"5 lb\" hours=8-14");
	(void)plan();
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	(void)start("apples", pk_amount(SUPPLY_FRUIT, "5 lb"), 8, 14, 4);
	kk_pass(&kit, 5000);
	pk_step(&kit, BOX_DRYER);
	ck_assert(plan()->nothing_left);
	ck_assert_int_eq(plan()->done, 1);
	KK_OK(&kit, kitchen_plan_finish(kit.kitchen, false, &kit.fault));
}
END_TEST

START_TEST(a_line_may_stand_for_several_rows_and_leather_keeps_its_fruit)
{
	const struct log_plan_run *rows;
	size_t count;

	line("drying \"plum puree\" \"3 cups\" times=2 at=9:00");
	line("drying \"apples\" \"5 lb\" hours=8-14");
	rows = kitchen_plan_runs(kit.kitchen, &count);
	ck_assert_uint_eq(count, 3);
	for (size_t i = 0; i < 2; i++) {
		ck_assert_str_eq(rows[i].fruit, "plum leather");
		ck_assert_int_eq(rows[i].puree_ul, pk_ul("3 cups"));
		ck_assert_int_eq(rows[i].fruit_mg, 0);
		ck_assert_int_eq(rows[i].ready_minutes, 9 * 60);
	}
	ck_assert_str_eq(rows[2].fruit, "apples");
	ck_assert_int_eq(rows[2].hours_low, 8);
	ck_assert(!kitchen_setup_line(kit.kitchen, "drying \"apples\" \"5 lb\" hours=8-14 times=0", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "not a number of times"));
}
END_TEST

START_TEST(a_row_is_changed_and_taken_out)
{
	struct log_plan_run changed;

	line("drying \"apples\" \"5 lb\" hours=8-14");
	pk_says(&kit, "Planned: 5 lb apples to dry, 8 to 14 h");
	changed = *row(0);
	changed.hours_high = 16;
	KK_OK(&kit, kitchen_plan_change_run(kit.kitchen, &changed, &kit.fault));
	ck_assert_str_eq(plan()->items[0].words, "5 lb apples, 8-16 h");
	KK_OK(&kit, kitchen_plan_remove(kit.kitchen, true, row(0)->id, &kit.fault));
	pk_says(&kit, "Removed from the plan: 5 lb apples to dry, 8 to 16 h");
	ck_assert_uint_eq(plan()->item_count, 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("to dry", .begin = begin, .end = end),
	TEST(what_is_to_dry_is_a_row_with_its_hours_as_a_range),
	TEST(its_dryer_is_taken_for_the_longest_and_by_nobody),
	TEST(published_hours_are_planned_whatever_the_house_says),
	TEST(what_is_refused_at_the_dryer_is_not_planned),
	TEST(a_drying_takes_its_row_and_an_undo_gives_it_back),
	TEST(what_dries_holds_its_dryer_and_the_plan_knows_until_when),
	TEST(no_batch_waits_for_fruit_that_is_dried),
	TEST(its_fruit_is_needed_and_puree_is_not_on_the_shelf),
	TEST(a_day_ends_while_something_dries),
	TEST(a_line_may_stand_for_several_rows_and_leather_keeps_its_fruit),
	TEST(a_row_is_changed_and_taken_out),
};

KK_TESTS("dryings of the plan", listed)
