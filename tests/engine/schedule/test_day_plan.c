/* The day planner: what it promises, published results, and days that cannot be. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "engine/schedule/day_plan.h"
#include "support/plan_check.h"
#include "support/plan_days.h"
#include "support/tests.h"

static struct plan_input in;
static struct day_plan plan;
static struct day_plan other;
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

static void make(struct day_plan *out)
{
	struct fault fault = { 0 };
	char said[200] = "";

	ck_assert_msg(day_plan_make(&in, NULL, work, out, &fault), "%s", fault.sentence);
	ck_assert_msg(plan_check(&in, out, said, sizeof(said)), "%s", said);
	ck_assert_int_le(out->bound_s, out->finish_s);
}

/* A plain kitchen: one pot, one canner of 9 pints, own heat; 44 minutes a load with a
 * hold of 8. */
static void plain_day(int batches)
{
	day_init(&in, 2);
	(void)day_station(&in, PLAN_POT, false);
	(void)day_station(&in, PLAN_CANNER, false);
	(void)day_family(&in, 9, 25, 8);
	while (in.batch_count < batches)
		(void)day_batch(&in, 0, 9);
}

/* --- what can be said by hand -------------------------------------------------------------- */

/* 15 + 7 + 2 + 10 in the pot, then 2 + 25 + 8 + 5 + 4 in the canner; the rinse goes on
 * beside it. */
START_TEST(one_batch_takes_the_sum_of_its_steps)
{
	plain_day(1);
	in.clean_down = (struct plan_span){ MINUTES(20), 0 };
	make(&plan);
	ck_assert_int_eq(plan.last_out_s, MINUTES(34 + 44));
	ck_assert_int_eq(plan.finish_s, MINUTES(34 + 44 + 20));
	ck_assert_int_eq(plan.finish_s, plan.bound_s);
	ck_assert_int_eq(plan.waiting_jar_s, 0);
	ck_assert_int_eq(plan.queue.jars, 0);
	ck_assert_int_eq(plan.longest_wait_batch, PLAN_NONE);
	ck_assert_int_eq(plan.load_count, 1);
	ck_assert_int_eq(plan.loads[0].jars, 9);
	ck_assert_int_eq(plan.stations[0].busy_s, MINUTES(37));
	ck_assert_int_eq(plan.stations[1].busy_s, MINUTES(44));
	ck_assert_int_eq(plan.stages[PLAN_STAGE_CANNERS].permille, (44 * 1000 + 49) / 98);
}
END_TEST

/* Three batches: the canner is slower than the pot, so it sets the pace. */
/* The end of a day: no batch is left, a load still stands in its canner. */
START_TEST(a_load_alone_is_planned_to_its_end)
{
	struct plan_running_load *load = &in.running_loads[0];

	plain_day(0);
	in.running_load_count = 1;
	*load = (struct plan_running_load){ .station = 1, .jars = 9 };
	load->left.hold = (struct plan_span){ MINUTES(8), 0 };
	load->left.rest = (struct plan_span){ MINUTES(5), 0 };
	load->left.unload = (struct plan_span){ MINUTES(4), 1 };
	make(&plan);
	ck_assert_int_eq(plan.last_out_s, MINUTES(8 + 5 + 4));
}
END_TEST

START_TEST(the_slower_stage_is_the_bottleneck)
{
	plain_day(3);
	make(&plan);
	ck_assert_int_eq(plan.finish_s, MINUTES(34 + 3 * 44));
	ck_assert_int_eq(plan.bottleneck, PLAN_STAGE_CANNERS);
	ck_assert_int_eq(plan.bound_stage, PLAN_STAGE_CANNERS);
	ck_assert_int_eq(plan.finish_s, plan.bound_s);
}
END_TEST

/* The pots could run ahead by 7 minutes a batch; they are put off instead. */
START_TEST(jars_do_not_wait_where_that_costs_no_time)
{
	plain_day(4);
	make(&plan);
	ck_assert_int_eq(plan.finish_s, MINUTES(34 + 4 * 44));
	ck_assert_int_le(plan.longest_wait_s, MINUTES(2));
}
END_TEST

START_TEST(a_queue_is_said_with_place_and_time)
{
	plain_day(1);
	in.stations[1].free_at_s = MINUTES(60);
	in.batches[0].stage = PLAN_FILLED;
	in.batches[0].filled_at_s = -MINUTES(3);
	make(&plan);
	ck_assert_int_eq(plan.queue.jars, 9);
	ck_assert_int_eq(plan.queue.from_s, 0);
	ck_assert_int_eq(plan.queue.until_s, MINUTES(60));
	ck_assert_int_eq(plan.queue.station, 1);
	ck_assert_int_eq(plan.queue.family, 0);
	ck_assert_int_eq(plan.longest_wait_s, MINUTES(63));
	ck_assert_int_eq(plan.waiting_jar_s, 9 * MINUTES(63));
}
END_TEST

/* 5 and 4 jars of two batches make one full load. */
START_TEST(leftovers_share_a_load)
{
	plain_day(2);
	in.batches[0].jars = 5;
	in.batches[1].jars = 4;
	make(&plan);
	ck_assert_int_eq(plan.load_count, 1);
	ck_assert_int_eq(plan.loads[0].part_count, 2);
	in.families[in.family_count++] = in.families[0];
	in.batches[1].family = 1;
	make(&plan);
	ck_assert_int_eq(plan.load_count, 2);
}
END_TEST

/* --- two machines ----------------------------------------------------------------------------- */

struct job {
	int first;
	int second;
};

static int by_johnson(const void *left, const void *right)
{
	const struct job *a = left;
	const struct job *b = right;
	bool a_early = a->first < a->second;
	bool b_early = b->first < b->second;

	if (a_early != b_early)
		return a_early ? -1 : 1;
	return a_early ? a->first - b->first : b->second - a->second;
}

/* Johnson 1954, Naval Research Logistics Quarterly 1, 61-68: the least makespan of two
 * machines in a row. */
static int johnson(struct job *jobs, int count)
{
	int first = 0;
	int second = 0;

	qsort(jobs, (size_t)count, sizeof(jobs[0]), by_johnson);
	for (int i = 0; i < count; i++) {
		first += jobs[i].first;
		second = (first > second ? first : second) + jobs[i].second;
	}
	return second;
}

/* One pot, one canner, many hands, no limit, each batch a load of its own. */
static void two_machines(struct dice *dice, struct job *jobs, int count)
{
	day_init(&in, PLAN_PEOPLE_MAX);
	(void)day_station(&in, PLAN_POT, false);
	(void)day_station(&in, PLAN_CANNER, false);
	for (int i = 0; i < count; i++) {
		struct plan_batch *batch = &in.batches[day_batch(&in, day_family(&in, 9, 5, roll(dice, 90)), 9)];
		const struct plan_process *process = &in.families[batch->family].at[1];

		batch->to_boil.length_s = MINUTES(1 + roll(dice, 80));
		batch->rinse.length_s = 0;
		jobs[i].first =
		    batch->to_boil.length_s + batch->boil.length_s + batch->off.length_s + batch->fill.length_s;
		jobs[i].second = process->load.length_s + process->come_up.length_s + process->hold.length_s +
		                 process->rest.length_s + process->unload.length_s;
	}
}

START_TEST(two_machines_are_planned_as_johnson_does)
{
	struct dice dice = { .state = 1954 };

	for (int i = 0; i < 600; i++) {
		struct job jobs[PLAN_FAMILIES_MAX];
		int count = 2 + roll(&dice, PLAN_FAMILIES_MAX - 1);
		struct fault fault = { 0 };

		two_machines(&dice, jobs, count);
		in.effort_percent = 1;
		ck_assert_msg(day_plan_make(&in, NULL, work, &plan, &fault), "%s", fault.sentence);
		ck_assert_int_eq(plan.finish_s, johnson(jobs, count));
	}
}
END_TEST

/* --- large days ---------------------------------------------------------------------------------- */

/* The gap to what no plan can beat; that bound forgets most rules, so the gap to the
 * best plan is less.  `make bench` prints the figures. */
START_TEST(forty_batches_come_near_the_bound)
{
	day_in_quince_hollow(&in, 40);
	make(&plan);
	ck_assert_int_le(100 * (plan.finish_s - plan.bound_s), 10 * plan.bound_s);
	in.people_count = 1;
	make(&plan);
	ck_assert_int_le(100 * (plan.finish_s - plan.bound_s), 25 * plan.bound_s);
	in.people_count = 3;
	in.burners = 2;
	make(&plan);
	ck_assert_int_le(100 * (plan.finish_s - plan.bound_s), 28 * plan.bound_s);
}
END_TEST

START_TEST(the_largest_day_fits)
{
	day_in_quince_hollow(&in, PLAN_BATCHES_MAX);
	for (int i = 0; i < in.batch_count; i++)
		in.batches[i].jars = 20;
	in.effort_percent = 5;
	make(&plan);
	ck_assert_int_ge(plan.load_count, PLAN_BATCHES_MAX * 20 / 9);
}
END_TEST

START_TEST(the_same_day_gives_the_same_plan)
{
	struct plan_work *another = malloc(plan_work_size());

	ck_assert_ptr_nonnull(another);
	memset(another, 0xa5, plan_work_size());
	day_in_quince_hollow(&in, 7);
	make(&plan);
	ck_assert(day_plan_make(&in, NULL, another, &other, NULL));
	ck_assert_int_eq(plan.task_count, other.task_count);
	/* NOLINTNEXTLINE(bugprone-suspicious-memory-comparison,cert-exp42-c,cert-flp37-c): the same to the byte */
	ck_assert_int_eq(memcmp(&plan, &other, sizeof(plan)), 0);
	free(another);
}
END_TEST

/* --- what if --------------------------------------------------------------------------------------- */

START_TEST(one_more_of_what_is_short_saves_time)
{
	struct plan_what_if what_if;

	plain_day(4);
	make(&plan);
	ck_assert(day_plan_what_if(&in, &plan, PLAN_MORE_CANNER, work, &what_if, NULL));
	ck_assert(what_if.counted);
	ck_assert_int_gt(what_if.saves_s, MINUTES(20));
	ck_assert_int_eq(what_if.finish_s + what_if.saves_s, plan.finish_s);
	ck_assert(day_plan_what_if(&in, &plan, PLAN_MORE_POT, work, &what_if, NULL));
	ck_assert(what_if.counted);
	ck_assert_int_le(what_if.saves_s, MINUTES(5));
	ck_assert(day_plan_what_if(&in, &plan, PLAN_MORE_BURNER, work, &what_if, NULL));
	ck_assert(!what_if.counted);
	ck_assert(day_plan_what_if(&in, &plan, PLAN_MORE_JUICER, work, &what_if, NULL));
	ck_assert(!what_if.counted);
	ck_assert_int_eq(what_if.saves_s, 0);
}
END_TEST

START_TEST(one_more_of_anything_never_costs_time)
{
	day_in_quince_hollow(&in, 7);
	in.burners = 3;
	in.effort_percent = 20;
	make(&plan);
	for (int extra = 0; extra < PLAN_EAT_IN_TURNS; extra++) {
		struct plan_what_if what_if;

		ck_assert(day_plan_what_if(&in, &plan, (enum plan_extra)extra, work, &what_if, NULL));
		ck_assert(what_if.counted);
		ck_assert_int_ge(what_if.saves_s, 0);
		ck_assert_int_ge(what_if.finish_s, 0);
		ck_assert_str_ne(plan_extra_words((enum plan_extra)extra), "?");
	}
}
END_TEST

/* The other way of eating is worked out as if the day were planned so, whichever is the better one. */
START_TEST(another_way_of_eating_saves_and_costs_what_it_does)
{
	struct plan_what_if in_turns;
	struct plan_what_if together;
	int finish;

	plain_day(6);
	in.people_count = 4;
	in.break_count = 1;
	in.breaks[0] = (struct plan_break){ .start_s = MINUTES(60), .end_s = MINUTES(105) };
	make(&plan);
	finish = plan.finish_s;
	ck_assert(day_plan_what_if(&in, &plan, PLAN_EAT_IN_TURNS, work, &in_turns, NULL));
	ck_assert(day_plan_what_if(&in, &plan, PLAN_EAT_TOGETHER, work, &together, NULL));
	ck_assert(in_turns.counted);
	ck_assert(!together.counted); /* they do */
	ck_assert_int_ne(in_turns.saves_s, 0);
	in.in_turns = true;
	make(&plan);
	ck_assert_int_eq(plan.finish_s, in_turns.finish_s);
	ck_assert_int_eq(finish - plan.finish_s, in_turns.saves_s);
	ck_assert(day_plan_what_if(&in, &plan, PLAN_EAT_TOGETHER, work, &together, NULL));
	ck_assert(together.counted);
	ck_assert_int_eq(together.saves_s, -in_turns.saves_s);
	ck_assert(day_plan_what_if(&in, &plan, PLAN_EAT_IN_TURNS, work, &in_turns, NULL));
	ck_assert(!in_turns.counted);
}
END_TEST

START_TEST(without_a_meal_nobody_eats_otherwise)
{
	struct plan_what_if what_if;

	plain_day(4);
	make(&plan);
	for (int extra = PLAN_EAT_IN_TURNS; extra < PLAN_EXTRA_COUNT; extra++) {
		ck_assert(day_plan_what_if(&in, &plan, (enum plan_extra)extra, work, &what_if, NULL));
		ck_assert(!what_if.counted);
		ck_assert_str_ne(plan_extra_words((enum plan_extra)extra), "?");
	}
}
END_TEST

/* --- going on from what happened ------------------------------------------------------------------- */

START_TEST(work_that_goes_on_is_part_of_the_plan)
{
	plain_day(3);
	in.start_s = MINUTES(50);
	in.batches[0].stage = PLAN_IN_POT;
	in.batches[0].station = 0;
	in.batches[0].to_boil.length_s = 0;
	in.batches[0].boil.length_s = MINUTES(4);
	in.running_loads[0] = (struct plan_running_load){ .station = 1, .jars = 7, .left = in.families[0].at[1] };
	in.running_loads[0].left.load.length_s = 0;
	in.running_loads[0].left.come_up.length_s = MINUTES(10);
	in.running_load_count = 1;
	make(&plan);
	ck_assert_int_eq(plan.loads[0].running, 0);
	ck_assert_int_eq(plan.loads[0].end_s, MINUTES(50 + 10 + 8 + 5 + 4));
	ck_assert_int_eq(plan.loads[1].start_s, plan.loads[0].end_s);
	ck_assert_int_eq(plan.finish_s, MINUTES(50 + 27 + 3 * 44));
}
END_TEST

/* Two batches wait: the one that is over its limit first, though it came last. */
START_TEST(jars_over_their_limit_go_first)
{
	plain_day(2);
	for (int i = 0; i < 2; i++) {
		in.batches[i].stage = PLAN_FILLED;
		in.batches[i].filled_at_s = -MINUTES(10 + 5 * i);
	}
	in.batches[0].wait_limit_s = MINUTES(70);
	in.batches[1].wait_limit_s = MINUTES(12);
	make(&plan);
	ck_assert_int_eq(plan.loads[0].parts[0].batch, 1);
	ck_assert_int_eq(plan.late_jars, 9);
}
END_TEST

START_TEST(a_break_is_kept)
{
	plain_day(3);
	in.breaks[0] = (struct plan_break){ MINUTES(60), MINUTES(100) };
	in.break_count = 1;
	make(&plan);
	ck_assert_int_gt(plan.finish_s, MINUTES(34 + 3 * 44));
	for (int i = 0; i < plan.task_count; i++)
		ck_assert(plan.tasks[i].kind != PLAN_BREAK || plan.tasks[i].people == 3);
}
END_TEST

/* --- meals --------------------------------------------------------------------------------- */

static int finish_with_meal(int from_min, int until_min, bool in_turns)
{
	day_in_quince_hollow(&in, 12);
	in.breaks[0] = (struct plan_break){ MINUTES(from_min), MINUTES(until_min) };
	in.break_count = until_min > from_min;
	in.in_turns = in_turns;
	make(&plan);
	return plan.finish_s;
}

/* The meals that cost most of an invented day that begins at 7:30: an early one, a long one,
 * a late one.  In turns each costs no more than itself and 20 minutes. */
START_TEST(a_meal_in_turns_costs_little_more_than_itself)
{
	static const int meals[][2] = { { 300, 330 }, { 180, 210 }, { 270, 315 } };
	int without = finish_with_meal(0, 0, false);

	for (int i = 0; i < 3; i++) {
		int length = meals[i][1] - meals[i][0];
		int with = finish_with_meal(meals[i][0], meals[i][1], true);

		ck_assert_msg(with <= without + MINUTES(length + 20), "meal at %d: %d min, without %d", meals[i][0],
		              with / 60, without / 60);
	}
}
END_TEST

/* Of three, one eats first and then the other two; none of them works meanwhile. */
START_TEST(in_turns_everybody_eats_once)
{
	unsigned ate = 0;
	int sittings = 0;

	(void)finish_with_meal(240, 270, true);
	for (int i = 0; i < plan.task_count; i++) {
		const struct plan_task *task = &plan.tasks[i];

		if (task->kind != PLAN_BREAK)
			continue;
		ck_assert_int_eq(task->start_s, MINUTES(240 + 30 * sittings));
		ck_assert_int_eq(task->end_s, MINUTES(270 + 30 * sittings));
		ck_assert_uint_eq(ate & task->people, 0);
		ate |= task->people;
		sittings++;
	}
	ck_assert_int_eq(sittings, 2);
	ck_assert_uint_eq(ate, 7);
}
END_TEST

/* Nobody is left to work while one person alone eats. */
START_TEST(one_person_alone_takes_no_turns)
{
	plain_day(2);
	in.people_count = 1;
	in.in_turns = true;
	in.breaks[0] = (struct plan_break){ MINUTES(30), MINUTES(60) };
	in.break_count = 1;
	ck_assert(!plan_eats_in_turns(&in, 0));
	ck_assert_int_eq(plan_meal_end(&in, 0), MINUTES(60));
	make(&plan);
	for (int i = 0; i < plan.task_count; i++)
		ck_assert(plan.tasks[i].kind == PLAN_BREAK || plan.tasks[i].people == 0 ||
		          plan.tasks[i].end_s <= MINUTES(30) || plan.tasks[i].start_s >= MINUTES(60));
}
END_TEST

/* A run of 80 minutes ends in the middle of the meal; its juice is drawn off after it. */
START_TEST(what_runs_by_itself_ends_in_a_meal)
{
	day_in_quince_hollow(&in, 1);
	in.breaks[0] = (struct plan_break){ MINUTES(60), MINUTES(105) };
	make(&plan);
	for (int i = 0; i < plan.task_count; i++) {
		if (plan.tasks[i].kind == PLAN_RUN)
			ck_assert_int_eq(plan.tasks[i].end_s, MINUTES(90));
		if (plan.tasks[i].kind == PLAN_DRAIN)
			ck_assert_int_eq(plan.tasks[i].start_s, MINUTES(105));
	}
}
END_TEST

/* Its water is looked at each 20 minutes, a minute each, by somebody, also from the table. */
START_TEST(a_look_at_the_water_is_a_task_of_a_minute)
{
	int looks = 0;

	day_in_quince_hollow(&in, 1);
	in.breaks[0] = (struct plan_break){ MINUTES(60), MINUTES(105) };
	make(&plan);
	for (int i = 0; i < plan.task_count; i++) {
		if (plan.tasks[i].kind != PLAN_LOOK)
			continue;
		ck_assert_int_eq(plan.tasks[i].end_s - plan.tasks[i].start_s, PLAN_LOOK_S);
		ck_assert_int_eq(plan.tasks[i].end_s, MINUTES(10 + 20 * ++looks));
		ck_assert_uint_ne(plan.tasks[i].people, 0);
	}
	ck_assert_int_eq(looks, 3);
}
END_TEST

/* Each juicer has its own: of two runs at once one is looked at each 12 minutes, one each 20. */
START_TEST(the_looks_at_the_water_are_those_of_the_juicer)
{
	int looks[2] = { 0 };

	day_in_quince_hollow(&in, 2);
	in.stations[0].look_every_s = MINUTES(12);
	make(&plan);
	for (int i = 0; i < plan.task_count; i++)
		if (plan.tasks[i].kind == PLAN_LOOK)
			looks[plan.tasks[i].station]++;
	ck_assert_int_eq(looks[0], 6);
	ck_assert_int_eq(looks[1], 3);
}
END_TEST

/* --- what waits, and what was said ------------------------------------------------------------ */

static const struct plan_task *first_at(int station)
{
	for (int i = 0; i < plan.task_count; i++)
		if (plan.tasks[i].station == station)
			return &plan.tasks[i];
	ck_abort_msg("nothing is done at station %d", station);
	return NULL;
}

/* Three jars stand filled, past their limit, and the canner is free: now, meal or no meal. */
START_TEST(jars_that_wait_are_loaded_before_anything_else)
{
	plain_day(4);
	in.people_count = 1;
	in.batches[3].stage = PLAN_FILLED;
	in.batches[3].jars = 3;
	in.batches[3].filled_at_s = -MINUTES(25);
	in.batches[3].wait_limit_s = MINUTES(20);
	in.breaks[0] = (struct plan_break){ 0, MINUTES(45) };
	in.break_count = 1;
	make(&plan);
	ck_assert_int_eq(first_at(1)->kind, PLAN_LOAD);
	ck_assert_int_eq(first_at(1)->start_s, 0);
	ck_assert_int_ge(first_at(0)->start_s, MINUTES(45));
}
END_TEST

/* Two pots free, juice for both: both begin now, though the jars of the second wait a while
 * for a canner, within their limit. */
START_TEST(a_free_pot_beside_its_juice_begins_now)
{
	plain_day(2);
	(void)day_station(&in, PLAN_POT, false);
	in.people_count = 3;
	for (int i = 0; i < 2; i++)
		in.batches[i].wait_limit_s = MINUTES(60);
	make(&plan);
	ck_assert_int_eq(first_at(0)->start_s, 0);
	ck_assert_int_eq(first_at(2)->start_s, 0);
}
END_TEST

/* What was said, in the order of the input and with no links. */
static const struct plan_said *said_in_order(int from)
{
	static struct plan_said said;

	said = (struct plan_said){ .count = in.batch_count, .wait_cap = PLAN_NO_LIMIT };
	for (int i = 0; i < in.batch_count; i++)
		in.batches[i].id = i + 1;
	for (int i = 0; i < in.batch_count; i++)
		said.items[i].id = (i + from) % in.batch_count + 1;
	return &said;
}

/* Their juice is there in ten and in fourteen minutes, and the later was said first.  That stands
 * for batches that differ; of two that are alike the pot begins with what is there. */
START_TEST(juice_is_taken_by_whichever_of_like_batches_begins)
{
	for (int alike = 0; alike < 2; alike++) {
		plain_day(2);
		for (int i = 0; i < 2; i++) {
			in.runs[i] = (struct plan_run){ .id = i + 1 };
			in.runs[i].station = day_station(&in, PLAN_JUICER, false);
			in.runs[i].run = (struct plan_span){ MINUTES(10 + 4 * i), 0 };
			in.batches[i].first_run = i;
			in.batches[i].run_count = 1;
			in.batches[i].like = alike ? 5 : 0;
		}
		in.run_count = 2;
		in.hold = said_in_order(1);
		make(&plan);
		ck_assert_int_eq(first_at(0)->batch, alike ? 0 : 1);
		ck_assert_int_eq(first_at(0)->start_s, alike ? MINUTES(10) : MINUTES(14));
	}
}
END_TEST

/* Two jars are to come of a pot, two of the free one, and the canner takes nine.  One end of the
 * day is far off, so that nothing is won by it: the free pot begins, and all go in together. */
START_TEST(a_free_pot_begins_and_its_jars_share_a_load)
{
	plain_day(3);
	(void)day_station(&in, PLAN_POT, false);
	in.people_count = 4;
	in.batches[0].stage = PLAN_IN_POT;
	in.batches[0].station = 0;
	in.batches[0].jars = in.batches[1].jars = 2;
	in.batches[1].wait_limit_s = MINUTES(20);
	in.batches[2].ready_s = MINUTES(300);
	in.hold = said_in_order(0);
	make(&plan);
	ck_assert_int_eq(first_at(2)->start_s, 0);
	ck_assert_int_eq(plan.loads[0].jars, 4);
}
END_TEST

/* Two and two jars stand filled beside two free canners of nine: they are not split. */
START_TEST(jars_that_fit_one_canner_are_loaded_whole)
{
	plain_day(3);
	(void)day_station(&in, PLAN_CANNER, false);
	(void)day_family(&in, 9, 25, 8);
	in.family_count = 1;
	in.families[0].at[2] = in.families[0].at[1];
	in.stations[2].jars[in.families[0].jar] = 9;
	for (int i = 0; i < 2; i++) {
		in.batches[i].stage = PLAN_FILLED;
		in.batches[i].jars = 2;
	}
	in.batches[2].ready_s = MINUTES(300);
	in.hold = said_in_order(0);
	make(&plan);
	ck_assert_int_eq(plan.loads[0].start_s, 0);
	ck_assert_int_eq(plan.loads[0].jars, 4);
}
END_TEST

/* What the plan tells people to do next at each station, and when, as one number. */
static int64_t told_next(const struct day_plan *day)
{
	int64_t told = 0;

	for (int station = 0; station < in.station_count; station++)
		for (int i = 0; i < day->task_count; i++) {
			if (day->tasks[i].station != station)
				continue;
			told = told * 31 + day->tasks[i].kind * 7 + day->tasks[i].batch * 3 + day->tasks[i].run;
			if (day->tasks[i].load != PLAN_NONE)
				told = told * 31 + day->loads[day->tasks[i].load].jars;
			break;
		}
	return told;
}

/* Nobody presses a key for a quarter of an hour: what each station was told stands, minute by
 * minute, unless another plan saves five minutes or late jars. */
START_TEST(what_was_said_holds_while_nothing_happens)
{
	static struct plan_said said;
	int changes = 0;

	day_in_quince_hollow(&in, 9);
	for (int i = 0; i < in.batch_count; i++)
		in.batches[i].id = in.runs[in.batches[i].first_run].id = i + 1;
	in.batches[0].stage = PLAN_FILLED; /* ten jars for canners of 9 and 7: 9 + 1, 7 + 3, 3 + 7 ... */
	in.batches[0].run_count = 0;
	in.batches[0].jars = 10;
	in.effort_percent = 25;
	make(&plan);
	for (int minute = 1; minute <= 15; minute++) {
		int64_t told = told_next(&plan);

		said = plan.said;
		in.hold = &said;
		in.start_s = MINUTES(minute);
		make(&plan);
		if (told == told_next(&plan))
			continue;
		changes++;
		ck_assert_msg(!plan.held, "minute %d: told something else although held", minute);
	}
	ck_assert_int_le(changes, 1);
}
END_TEST

/* The order stands that was said, until another one saves five minutes. */
START_TEST(what_was_said_changes_for_five_minutes)
{
	static struct plan_said said = { .count = 2, .wait_cap = PLAN_NO_LIMIT };

	for (int longer = 0; longer < 2; longer++) {
		plain_day(2);
		in.batches[0].id = 7;
		in.batches[1].id = 8;
		in.batches[1].to_boil.length_s += MINUTES(longer ? 6 : 4);
		said.items[0].id = 8; /* the longer one first: all the day waits for it */
		said.items[1].id = 7;
		in.hold = &said;
		make(&plan);
		ck_assert_int_eq(plan.held, !longer);
		ck_assert_int_eq(plan.said.items[0].id, longer ? 7 : 8);
	}
}
END_TEST

/* In slices of any size the search goes the same way; begun with what was said, it has an
 * answer at once, which keeps the rules. */
START_TEST(a_search_in_slices_ends_at_the_same_plan)
{
	static const long slices[] = { 1, 37, 5000 };
	struct fault fault = { 0 };
	static struct plan_said said;
	char words[200] = "";

	day_in_quince_hollow(&in, 7);
	for (int i = 0; i < in.batch_count; i++)
		in.batches[i].id = in.runs[in.batches[i].first_run].id = i + 1;
	in.effort_percent = 20;
	make(&plan);
	said = plan.said;
	for (size_t i = 0; i < sizeof(slices) / sizeof(slices[0]); i++) {
		in.hold = NULL;
		ck_assert(day_plan_begin(&in, NULL, work, &fault));
		ck_assert(!day_plan_has_answer(work)); /* nothing was said, nothing is searched */
		while (!day_plan_more(work, slices[i])) {
		}
		ck_assert(day_plan_tell(work, &other, &fault));
		ck_assert_int_eq(plan.finish_s, other.finish_s);
		ck_assert_int_eq(plan.placings, other.placings);
		ck_assert_int_eq(plan.task_count, other.task_count);
		for (int n = 0; n < plan.task_count; n++) {
			ck_assert_int_eq(plan.tasks[n].kind, other.tasks[n].kind);
			ck_assert_int_eq(plan.tasks[n].start_s, other.tasks[n].start_s);
			ck_assert_int_eq(plan.tasks[n].station, other.tasks[n].station);
			ck_assert_uint_eq(plan.tasks[n].people, other.tasks[n].people);
		}
		in.hold = &said;
		ck_assert(day_plan_begin(&in, NULL, work, &fault));
		ck_assert(day_plan_has_answer(work));
		ck_assert(day_plan_tell(work, &other, &fault));
		ck_assert_msg(plan_check(&in, &other, words, sizeof(words)), "%s", words);
		ck_assert_int_eq(other.finish_s, plan.finish_s);
	}
}
END_TEST

/* A jar that would be late is mended, whatever was said. */
START_TEST(what_was_said_changes_for_a_late_jar)
{
	static struct plan_said said = { .count = 2, .wait_cap = PLAN_NO_LIMIT };

	plain_day(2);
	for (int i = 0; i < 2; i++) {
		in.batches[i].id = i + 1;
		in.batches[i].stage = PLAN_FILLED;
		said.items[i].id = i + 1;
	}
	in.batches[0].wait_limit_s = PLAN_NO_LIMIT;
	in.batches[1].wait_limit_s = MINUTES(20);
	in.hold = &said;
	make(&plan);
	ck_assert(!plan.held);
	ck_assert_int_eq(plan.late_jars, 0);
	ck_assert_int_eq(plan.loads[0].parts[0].batch, 1);
}
END_TEST

/* --- days that cannot be ------------------------------------------------------------------------------- */

static void refused(const char *because)
{
	struct fault fault = { 0 };

	plan.finish_s = -7;
	ck_assert_msg(!day_plan_make(&in, NULL, work, &plan, &fault), "planned, not: %s", because);
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_msg(strstr(fault.sentence, because) != NULL, "%s", fault.sentence);
	ck_assert_int_eq(plan.finish_s, -7);
}

START_TEST(impossible_days_get_a_sentence)
{
	day_init(&in, 1);
	refused("nothing to plan");
	plain_day(1);
	in.stations[0].kind = PLAN_JUICER;
	refused("no pot");
	plain_day(1);
	in.stations[1].kind = PLAN_POT;
	refused("no canner");
	plain_day(1);
	in.people_count = 0;
	refused("There is nobody");
	plain_day(1);
	memset(in.stations[1].jars, 0, sizeof(in.stations[1].jars));
	refused("smaller jar");
	plain_day(1);
	in.families[0].at[1].possible = false;
	refused("published process");
	plain_day(1);
	in.batches[0].fill.people = 3;
	refused("takes 3 people and there are 2");
	plain_day(1);
	in.batches[0].pots = 1u << 1;
	refused("No pot here is large enough");
	plain_day(1);
	in.stations[0].on_burner = true;
	in.burners = 0;
	refused("needs a burner");
	plain_day(1);
	in.runs[in.run_count++] = (struct plan_run){ .station = PLAN_NONE, .run = { MINUTES(60), 0 } };
	refused("no juicer");
	plain_day(3);
	in.cooling_jars = 20;
	refused("room for 20");
}
END_TEST

/* 18 jars are two loads of a canner of 9, and the second waits for the first. */
START_TEST(a_limit_that_cannot_be_met_is_said)
{
	plain_day(1);
	in.batches[0].jars = 18;
	in.batches[0].wait_limit_s = MINUTES(40);
	refused("would wait 44 min");
	in.batches[0].wait_limit_s = MINUTES(44);
	make(&plan);
	(void)day_station(&in, PLAN_CANNER, false);
	in.stations[2] = in.stations[1];
	in.families[0].at[2] = in.families[0].at[1];
	in.batches[0].wait_limit_s = MINUTES(2);
	make(&plan);
}
END_TEST

static const char *grape(const void *context, int batch)
{
	return batch == 0 ? context : NULL;
}

START_TEST(sentences_name_the_batch)
{
	struct plan_names names = { .batch = grape, .context = "grape jelly" };
	struct fault fault = { 0 };

	plain_day(1);
	in.families[0].at[1].possible = false;
	ck_assert(!day_plan_make(&in, &names, work, &plan, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "grape jelly"));
	ck_assert(!day_plan_make(&in, NULL, work, &plan, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "batch 1"));
}
END_TEST

static void misuse(void)
{
	struct fault fault = { 0 };

	ck_assert(!day_plan_make(&in, NULL, work, &plan, &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
}

START_TEST(numbers_out_of_range_are_the_callers_mistake)
{
	plain_day(1);
	in.batch_count = PLAN_BATCHES_MAX + 1;
	misuse();
	plain_day(1);
	in.batches[0].family = 1;
	misuse();
	plain_day(1);
	in.batches[0].jars = 0;
	misuse();
	plain_day(1);
	in.batches[0].fill.length_s = -1;
	misuse();
	plain_day(1);
	in.batches[0].run_count = 1;
	misuse();
	plain_day(1);
	in.stations[0].free_at_s = PLAN_TIME_MAX_S + 1;
	misuse();
	plain_day(2);
	in.batches[0].stage = in.batches[1].stage = PLAN_IN_POT;
	misuse();
	plain_day(1);
	in.break_count = 1;
	misuse();
}
END_TEST

START_TEST(everything_has_words)
{
	for (int i = 0; i < PLAN_TASK_KIND_COUNT; i++)
		ck_assert_str_ne(plan_task_words((enum plan_task_kind)i), "?");
	for (int i = 0; i <= PLAN_STAGE_PATH; i++)
		ck_assert_str_ne(plan_stage_words((enum plan_stage)i), "?");
	ck_assert_str_eq(plan_task_words(PLAN_TASK_KIND_COUNT), "?");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("day plan", .begin = set_up, .end = tear_down, .seconds = 300),
	TEST(one_batch_takes_the_sum_of_its_steps),
	TEST(a_load_alone_is_planned_to_its_end),
	TEST(the_slower_stage_is_the_bottleneck),
	TEST(jars_do_not_wait_where_that_costs_no_time),
	TEST(a_queue_is_said_with_place_and_time),
	TEST(leftovers_share_a_load),
	TEST(two_machines_are_planned_as_johnson_does),
	TEST(forty_batches_come_near_the_bound),
	TEST(the_largest_day_fits),
	TEST(the_same_day_gives_the_same_plan),
	TEST(one_more_of_what_is_short_saves_time),
	TEST(one_more_of_anything_never_costs_time),
	TEST(another_way_of_eating_saves_and_costs_what_it_does),
	TEST(without_a_meal_nobody_eats_otherwise),
	TEST(work_that_goes_on_is_part_of_the_plan),
	TEST(jars_over_their_limit_go_first),
	TEST(a_break_is_kept),
	TEST(a_meal_in_turns_costs_little_more_than_itself),
	TEST(in_turns_everybody_eats_once),
	TEST(one_person_alone_takes_no_turns),
	TEST(what_runs_by_itself_ends_in_a_meal),
	TEST(a_look_at_the_water_is_a_task_of_a_minute),
	TEST(the_looks_at_the_water_are_those_of_the_juicer),
	TEST(jars_that_wait_are_loaded_before_anything_else),
	TEST(a_free_pot_beside_its_juice_begins_now),
	TEST(juice_is_taken_by_whichever_of_like_batches_begins),
	TEST(a_free_pot_begins_and_its_jars_share_a_load),
	TEST(jars_that_fit_one_canner_are_loaded_whole),
	TEST(what_was_said_holds_while_nothing_happens),
	TEST(what_was_said_changes_for_five_minutes),
	TEST(what_was_said_changes_for_a_late_jar),
	TEST(a_search_in_slices_ends_at_the_same_plan),
	TEST(impossible_days_get_a_sentence),
	TEST(a_limit_that_cannot_be_met_is_said),
	TEST(sentences_name_the_batch),
	TEST(numbers_out_of_range_are_the_callers_mistake),
	TEST(everything_has_words),
};

TESTS("day plan", listed)
