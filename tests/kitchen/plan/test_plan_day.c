/*
 * An invented day of Quince Hollow: seven batches are planned, accepted and worked
 * off act by act on a clock that moves only here, by what the plan says is next.
 * The helpers of this test keep their own account of who is busy: hands take the
 * whole planning time, and nobody works at two things.  The day must end within
 * 5 % of the forecast, and no plan made on the way may break a rule of
 * engine/schedule/day_plan.h.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/history/seasons.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "support/plan_check.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define TICK_MS (30 * SECOND_MS)
#define STATIONS 10 /* by digit */
#define HANDS 3
#define STARTED_AFTER 6                    /* acts: each start searches the whole day */
#define EIGHT_MS (KK_MORNING_MS - HOUR_MS) /* 08:00 */

static struct kitchen_kit kit;

/* What a helper of the test is doing at a station. */
static struct work {
	int64_t until_ms; /* hands are at it until then; 0: nobody is */
	bool person;      /* somebody is bound here (a pot: until it is rinsed) */
	int64_t plan_id;  /* set-up: the planned run */
} works[STATIONS];
static int free_hands;

static const char *const lines[] = {
	"kitchen \"Quince Hollow\"",
	"invented yes",
	"elevation 4650ft",
	"times run=70 first=45 water=60 wait=20",
	"canner 1 boiling_water \"Big kettle\" pint=9 quart=7",
	"canner 2 boiling_water \"Low kettle\" pint=7",
	"canner 3 weighted_gauge \"Weight canner\" quart=7 pint=9",
	"juicer 4 \"Tall juicer\"",
	"juicer 5 \"Old juicer\"",
	"pot 6 \"Wide pot\" \"8 qt\"",
	"pot 7 \"Deep pot\" \"24 qt\"",
	"supply jar half_pint 90",
	"supply sugar \"60 lb\"",
	"supply lemon_juice \"2 qt\"",
	"plan burners=5 fillers=2 cooling=120 clean=30 charge=\"12 lb\"",
	"helper MK",
	"helper JO",
	"helper RW from=9:00",
	"break 12:30 13:00",
	"day 8:00",
	"run \"grapes\" \"12 lb\" times=3",
	"run \"grapes\" \"12 lb\" at=9:30",
	"batch \"grape jelly\" pack=hot_sterile_jar times=4",
	"batch \"strawberry jam\" pack=hot_sterile_jar",
	"batch \"apple butter\" jar=pint",
	"batch \"crushed tomatoes\" jar=quart",
};

static void begin(void)
{
	kk_begin_empty(&kit);
	test_clock_set_wall(&kit.clock, EIGHT_MS);
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		KK_OK(&kit, kitchen_setup_line(kit.kitchen, lines[i], 0, &kit.fault));
	memset(works, 0, sizeof(works));
	free_hands = HANDS;
}

static void end(void)
{
	kk_end(&kit);
}

static const struct kitchen_plan *plan_now(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	static uint64_t seen;
	const struct kitchen_plan *plan = kitchen_plan(kit.kitchen, &now);
	char said[200] = "";

	if (plan->possible && plan->version != seen)
		ck_assert_msg(plan_check(plan->input, plan->plan, said, sizeof(said)), "%s", said);
	seen = plan->version;
	return plan;
}

static int64_t now_ms(void)
{
	return kit.clock.now.wall_ms;
}

/* --- helpers at work -------------------------------------------------------------------- */

static bool take_hands(struct work *work)
{
	if (work->person)
		return true;
	if (free_hands == 0)
		return false;
	free_hands--;
	work->person = true;
	return true;
}

static void give_hands(struct work *work)
{
	free_hands += work->person;
	*work = (struct work){ 0 };
}

static int64_t planned_ms(const struct strip *strip)
{
	return (strip->rule->planned_min_s + strip->rule->planned_max_s) * INT64_C(500);
}

/* Does the plan want the task at this station by now? */
static bool plan_wants(const struct kitchen_plan *plan, int64_t station_id, enum plan_task_kind kind)
{
	for (int i = 0; i < plan->plan->task_count && plan->possible; i++) {
		const struct plan_task *task = &plan->plan->tasks[i];

		if (task->station != PLAN_NONE && plan->station_ids[task->station] == station_id && task->kind == kind)
			return plan->zero_wall_ms + task->start_s * INT64_C(1000) <= now_ms();
	}
	return true;
}

static void start_load(const struct kitchen_plan *plan, int64_t station_id, int load)
{
	struct pick picks[PLAN_PARTS_MAX] = { 0 };
	const struct plan_load *from = &plan->plan->loads[load];
	int64_t id;

	for (int i = 0; i < from->part_count; i++) {
		int batch = from->parts[i].batch;

		picks[i].batch_id = plan->items[plan->batch_items[batch]].work_id;
		picks[i].jars = from->parts[i].jars;
		text_copy(picks[i].size, sizeof(picks[i].size),
		          jar_sizes[plan->input->families[plan->input->batches[batch].family].jar].name);
	}
	KK_OK(&kit, kitchen_load_waiting(kit.kitchen, station_id, picks, (size_t)from->part_count, NO_PRESSURE, &id,
	                                 &kit.fault));
}

static void start_batch(const struct kitchen_plan *plan, int64_t station_id, int batch)
{
	const struct plan_item *item = &plan->items[plan->batch_items[batch]];
	size_t count;
	const struct log_plan_batch *rows = kitchen_plan_batches(kit.kitchen, &count);
	struct batch_order order = { .station_id = station_id };
	int64_t id;

	for (size_t i = 0; i < count; i++) {
		if (rows[i].id != item->plan_id)
			continue;
		text_copy(order.recipe, sizeof(order.recipe), rows[i].recipe);
		text_copy(order.pack, sizeof(order.pack), rows[i].pack);
		text_copy(order.jar, sizeof(order.jar), rows[i].jar);
		order.multiple = rows[i].multiple;
	}
	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, true, &id, &kit.fault));
}

static const struct plan_task *first_task(const struct kitchen_plan *plan, int64_t station_id)
{
	for (int i = 0; i < plan->plan->task_count && plan->possible; i++)
		if (plan->plan->tasks[i].station != PLAN_NONE &&
		    plan->station_ids[plan->plan->tasks[i].station] == station_id)
			return &plan->plan->tasks[i];
	return NULL;
}

/* An empty station: begin what the plan says is next there, when it is time. */
static bool begin_work(const struct kitchen_plan *plan, const struct strip *strip, const struct plan_next *next)
{
	struct work *work = &works[strip->station.digit];
	const struct plan_task *task = first_task(plan, strip->station.id);
	int64_t id;

	if (work->until_ms != 0) { /* a juicer being filled */
		if (now_ms() < work->until_ms)
			return false;
		give_hands(work);
		KK_OK(&kit, kitchen_start_run(kit.kitchen, strip->station.id, "grapes",
		                              pk_amount(SUPPLY_FRUIT, "12 lb"), &id, &kit.fault));
		return true;
	}
	if (task == NULL || !next->now || next->nothing || !take_hands(work))
		return false;
	if (task->kind == PLAN_SET_UP) {
		work->until_ms = now_ms() + (task->end_s - task->start_s) * SECOND_MS;
		return false;
	}
	if (task->kind == PLAN_TO_BOIL)
		start_batch(plan, strip->station.id, task->batch);
	else if (task->kind == PLAN_LOAD)
		start_load(plan, strip->station.id, task->load);
	else
		ck_abort_msg("%s begins with %s", strip->station.name, plan_task_words(task->kind));
	return true;
}

static void fill(const struct strip *strip, const struct kitchen_plan *plan)
{
	int jars = 0;

	for (size_t i = 0; i < plan->item_count; i++)
		if (!plan->items[i].is_run && plan->items[i].work_id == strip_batch(strip)->row.id)
			jars = plan->items[i].jars;
	ck_assert_msg(jars > 0, "%s: no jars of %s", strip->station.name, strip->holds);
	pk_fill(&kit, strip_batch(strip)->row.id, strip_batch(strip)->row.jar, jars, 0);
	pk_step(&kit, strip->station.digit);
}

static void draw_juice(const struct strip *strip)
{
	struct juice_yield yield;

	juice_yield_of(strip_run(strip)->row.fruit, strip_run(strip)->row.fruit_mg, NULL, &yield);
	KK_OK(&kit,
	      kitchen_juice_out(kit.kitchen, strip->phase.id,
	                        (int64_t)(yield.ul_per_kg[BOUND_LIKELY] * (double)strip_run(strip)->row.fruit_mg / 1e6),
	                        &kit.fault));
}

static enum plan_task_kind task_of_hands(enum phase_name name)
{
	switch (name) {
	case PHASE_DRAIN: return PLAN_DRAIN;
	case PHASE_UNLOAD: return PLAN_UNLOAD;
	case PHASE_LOADED: return PLAN_LOAD;
	case PHASE_FILL: return PLAN_FILL;
	case PHASE_RINSE: return PLAN_RINSE;
	case PHASE_OFF: return PLAN_OFF;
	default: return PLAN_TO_BOIL;
	}
}

static void end_hands(const struct strip *strip, const struct kitchen_plan *plan, struct work *work)
{
	bool stays = strip->station.kind == STATION_POT && strip->rule->name != PHASE_RINSE;
	struct strip was = *strip;

	work->until_ms = 0;
	if (!stays)
		give_hands(work);
	if (was.rule->name == PHASE_FILL)
		fill(&was, plan);
	else if (was.rule->name == PHASE_DRAIN)
		draw_juice(&was);
	else
		KK_OK(&kit, kitchen_step(kit.kitchen, was.phase.id, true, &kit.fault));
}

/* What goes on: a clock that is over, a condition that is there, hands that are done. */
static bool go_on(const struct kitchen_plan *plan, const struct strip *strip)
{
	struct work *work = &works[strip->station.digit];
	struct moment now = kitchen_now(kit.kitchen);
	struct face face;

	strip_face(strip, &now, &face);
	if (face.water_due) {
		KK_OK(&kit, kitchen_acknowledge(kit.kitchen, strip->phase.id, &kit.fault));
		return true;
	}
	if (strip->rule->kind != PHASE_BY_HAND) {
		if (strip->rule->kind == PHASE_TIMED ? !face.due : face.passed_s * 1000 < planned_ms(strip))
			return false;
		KK_OK(&kit, kitchen_step(kit.kitchen, strip->phase.id, true, &kit.fault));
		return true;
	}
	if (work->until_ms == 0) {
		/* At a pot a helper stands from the heat to the rinse. */
		if (!work->person && !plan_wants(plan, strip->station.id, task_of_hands(strip->rule->name)))
			return false;
		if (!take_hands(work))
			return false;
		work->until_ms = now_ms() + planned_ms(strip);
	}
	if (now_ms() < work->until_ms)
		return false;
	end_hands(strip, plan, work);
	return true;
}

/* One act somewhere; false: there is nothing to do at this moment. */
static bool act_somewhere(void)
{
	const struct kitchen_plan *plan = plan_now();
	const struct board *board = kitchen_board(kit.kitchen);
	struct moment now = kitchen_now(kit.kitchen);
	struct plan_next next[PLAN_STATIONS_MAX];
	size_t count = plan_next_stations(plan, board, &now, next);

	for (size_t i = 0; i < count; i++) {
		const struct strip *strip = &board->strips[plan->stations[i].strip];

		if (strip->content == STRIP_EMPTY ? begin_work(plan, strip, &next[i]) : go_on(plan, strip))
			return true;
	}
	return false;
}

static void read_orders(struct kitchen_kit *board, struct plan_next orders[PLAN_STATIONS_MAX], size_t *count)
{
	struct moment now = kitchen_now(board->kitchen);

	*count = plan_next_stations(kitchen_plan(board->kitchen, &now), kitchen_board(board->kitchen), &now, orders);
}

/* What another start of the program tells each station: at once, and when it has searched. */
static void same_orders_after_a_start(void)
{
	struct plan_next before[PLAN_STATIONS_MAX];
	struct plan_next after[PLAN_STATIONS_MAX];
	struct kitchen_kit started;
	size_t count;
	bool searched = false;

	(void)plan_now();
	KK_OK(&kit, kitchen_plan_keep(kit.kitchen, &kit.fault));
	read_orders(&kit, before, &count);
	kk_second(&kit, &started);
	kitchen_plan_in_slices(started.kitchen, true);
	do {
		size_t again;

		read_orders(&started, after, &again);
		ck_assert_uint_eq(again, count);
		for (size_t i = 0; i < count; i++)
			ck_assert_msg(strcmp(before[i].words, after[i].words) == 0 && before[i].now == after[i].now,
			              "%lld min, %d: \"%s\"%s, then \"%s\"%s",
			              (long long)((now_ms() - EIGHT_MS) / MINUTE_MS), before[i].digit, before[i].words,
			              before[i].now ? " now" : "", after[i].words, after[i].now ? " now" : "");
		searched = !kitchen_plan_searching(started.kitchen);
		while (kitchen_plan_searching(started.kitchen))
			kitchen_plan_search(started.kitchen);
	} while (!searched);
	kk_close(&started);
}

static int64_t work_the_day_off(void (*after_some)(void))
{
	int acts = 0;

	while (!plan_now()->nothing_left) {
		ck_assert_int_lt(now_ms() - EIGHT_MS, 20 * HOUR_MS);
		if (!act_somewhere()) {
			kk_pass(&kit, TICK_MS);
			continue;
		}
		acts++;
		if (after_some != NULL && acts % STARTED_AFTER == 0)
			after_some();
	}
	ck_assert_int_gt(acts, 60);
	return now_ms();
}

START_TEST(seven_batches_end_within_five_percent_of_the_forecast)
{
	const struct kitchen_plan *plan = plan_now();
	int64_t forecast;
	int64_t real;

	ck_assert_msg(plan->possible, "%s", plan->why.sentence);
	ck_assert_int_eq(plan->state, PLAN_DRAFT);
	ck_assert_int_eq(plan->planned, 11);
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	plan = plan_now();
	ck_assert_int_eq(plan->state, PLAN_ACCEPTED);
	ck_assert_int_eq(plan->late_ms, 0);
	forecast = plan->accepted_finish_ms - EIGHT_MS;
	(void)work_the_day_off(NULL);
	ck_assert_int_eq(free_hands, HANDS);
	ck_assert_int_eq(plan_now()->done, 11);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_accept(kit.kitchen, &kit.fault));
	kk_pass(&kit, 30 * MINUTE_MS); /* clean-down */
	KK_OK(&kit, kitchen_plan_finish(kit.kitchen, false, &kit.fault));
	real = plan_now()->finished_wall_ms - EIGHT_MS;
	ck_assert_int_eq(plan_now()->state, PLAN_OVER);
	printf("forecast %lld min, real %lld min\n", (long long)(forecast / MINUTE_MS), (long long)(real / MINUTE_MS));
	ck_assert_msg(llabs(real - forecast) * 20 <= forecast, "forecast %lld min, real %lld min",
	              (long long)(forecast / MINUTE_MS), (long long)(real / MINUTE_MS));
}
END_TEST

START_TEST(the_program_started_anew_gives_the_same_orders)
{
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	same_orders_after_a_start();
	(void)work_the_day_off(same_orders_after_a_start);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("day", .begin = begin, .end = end, .seconds = 60),
	TEST(seven_batches_end_within_five_percent_of_the_forecast),
	TEST(the_program_started_anew_gives_the_same_orders),
};

KK_TESTS("a planned day", listed)
