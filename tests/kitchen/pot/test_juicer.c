/* Juicer runs: their clocks, the water that must be seen, the juice they give. */
#include <stdlib.h>
#include <string.h>

#include "kitchen/board/outlook.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "log/tables/pot.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

static struct log_run run_row(int64_t run_id)
{
	struct log_run run = { 0 };

	KK_OK(&kit, log_run_get(kit.log, run_id, &run, &kit.fault));
	return run;
}

static bool heard(void)
{
	return kitchen_acknowledge(kit.kitchen, pk_phase(&kit, TALL_JUICER), &kit.fault);
}

static bool juice_out(const char *words)
{
	return kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), pk_ul(words), &kit.fault);
}

static bool draw(const char *words)
{
	return pk_try(&kit, TALL_JUICER, EXCEPTION_DRAW, pk_ul(words));
}

/* The only juice of a run. */
static struct log_juice juice_row(int64_t run_id)
{
	struct log_juice *rows;
	struct log_juice found;
	size_t count;

	KK_OK(&kit, log_juices_of_run(kit.log, run_id, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	found = rows[0];
	free(rows);
	return found;
}

/* --- phases ---------------------------------------------------------------------- */

START_TEST(a_run_goes_from_heat_to_run_to_drain)
{
	static const struct {
		enum phase_name name;
		enum phase_kind kind;
	} way[] = { { PHASE_HEAT, PHASE_WATCHED }, { PHASE_RUN, PHASE_TIMED }, { PHASE_DRAIN, PHASE_BY_HAND } };
	const struct phase_rule *rule = phase_rule_first(STATION_JUICER);

	for (size_t i = 0; i < sizeof(way) / sizeof(way[0]); i++) {
		ck_assert_ptr_nonnull(rule);
		ck_assert_int_eq(rule->name, way[i].name);
		ck_assert_int_eq(rule->kind, way[i].kind);
		rule = phase_rule_next(STATION_JUICER, rule);
	}
	ck_assert_ptr_null(rule);
	ck_assert_int_eq(phase_rule_of(STATION_JUICER, PHASE_RUN)->required_ms, OF_THE_WORK);
}
END_TEST

START_TEST(a_run_walks_through_them_and_leaves_the_juicer_free)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	const struct strip *strip = kk_canner(&kit, TALL_JUICER);

	ck_assert_int_eq(strip->content, STRIP_RUN);
	ck_assert_int_eq(strip_run(strip)->row.id, run_id);
	ck_assert_str_eq(strip->holds, "12 lb grapes");
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_HEAT);
	ck_assert(!pk_face(&kit, TALL_JUICER).timed);
	kk_pass(&kit, 3 * HOUR_MS); /* waiting alone starts no clock */
	KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_HEAT);
	KK_OK(&kit, pk_try_step(&kit, TALL_JUICER, false));
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_RUN);
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->phase.began.wall_ms, kit.clock.now.wall_ms);
	kk_pass(&kit, RUN_MINUTES * MINUTE_MS);
	KK_OK(&kit, pk_try_step(&kit, TALL_JUICER, false));
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_DRAIN);
	kk_pass(&kit, 5 * MINUTE_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, pk_try_step(&kit, TALL_JUICER, true)); /* measure first */
	KK_OK(&kit, juice_out("5 qt"));
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_NO_PHASE);
	ck_assert(!run_row(run_id).open);
	(void)pk_run(&kit, TALL_JUICER, "apples", "5 kg");
}
END_TEST

START_TEST(the_run_is_as_long_as_the_house_says_when_it_begins)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	(void)pk_run(&kit, OLD_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->phase.required_ms, RUN_MINUTES * MINUTE_MS);
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 61, 45, 20, 20, 0, &kit.fault));
	pk_to(&kit, OLD_JUICER, PHASE_RUN);
	ck_assert_int_eq(kk_canner(&kit, OLD_JUICER)->phase.required_ms, 61 * MINUTE_MS);
	/* Not the one that runs already. */
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->phase.required_ms, RUN_MINUTES * MINUTE_MS);
}
END_TEST

/* --- a house that has not set its times -------------------------------------------- */

/* Nobody but the house knows how soon a pan of its juicers boils dry. */
START_TEST(without_a_water_interval_no_run_is_started)
{
	int64_t run_id;

	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, RUN_MINUTES, 45, 0, 20, 0, &kit.fault));
	ck_assert(
	    !kitchen_start_run(kit.kitchen, kk_station(&kit, TALL_JUICER), "grapes", 5000000, &run_id, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_msg(strstr(kit.fault.sentence, "house view (h). A dry pan burns.") != NULL, "%s", kit.fault.sentence);
	memset(&kit.fault, 0, sizeof(kit.fault));
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->content, STRIP_EMPTY);
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 0, 0, 12, 20, 0, &kit.fault));
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	kk_pass(&kit, 12 * MINUTE_MS);
	ck_assert(pk_face(&kit, TALL_JUICER).water_due);
}
END_TEST

/* One on the stove boils its pan down sooner than an electric one: each has minutes of its own. */
START_TEST(each_juicer_goes_by_its_own_water_and_by_the_house_where_it_has_none)
{
	struct log_station tall = kk_canner(&kit, TALL_JUICER)->station;

	tall.water_minutes = 12;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &tall, &kit.fault));
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, RUN_MINUTES, 45, 30, 20, 0, &kit.fault));
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	(void)pk_run(&kit, OLD_JUICER, "grapes", "12 lb");
	kk_pass(&kit, 12 * MINUTE_MS);
	ck_assert(pk_face(&kit, TALL_JUICER).water_due);
	ck_assert(!pk_face(&kit, OLD_JUICER).water_due);
	ck_assert_int_eq(pk_face(&kit, OLD_JUICER).water_left_s, 18 * 60);
}
END_TEST

START_TEST(its_own_minutes_are_enough_where_the_house_has_none)
{
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, RUN_MINUTES, 45, 0, 20, 0, &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "juicer 7 \"Old juicer\" water=15", kk_station(&kit, OLD_JUICER),
	                               &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE,
	           kitchen_setup_line(kit.kitchen, "juicer 7 \"Old juicer\" water=0", kk_station(&kit, OLD_JUICER),
	                              &kit.fault));
	(void)pk_run(&kit, OLD_JUICER, "grapes", "12 lb");
	kk_pass(&kit, 15 * MINUTE_MS);
	ck_assert(pk_face(&kit, OLD_JUICER).water_due);
}
END_TEST

/* The house says 45 min to the first juice: before half of that nothing can be drawn, after it perhaps. */
START_TEST(juice_is_early_until_half_the_way_to_the_first)
{
	const struct board *board = kitchen_board(kit.kitchen);
	struct moment now;

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	now = kitchen_now(kit.kitchen);
	ck_assert(strip_juice_is_early(board, kk_canner(&kit, TALL_JUICER), &now));
	ck_assert_int_eq(strip_first_juice_ms(board, kk_canner(&kit, TALL_JUICER)) - now.wall_ms, 45 * MINUTE_MS);
	kk_pass(&kit, 45 * MINUTE_MS / 2 - 1);
	now = kitchen_now(kit.kitchen);
	ck_assert(strip_juice_is_early(board, kk_canner(&kit, TALL_JUICER), &now));
	kk_pass(&kit, 1);
	now = kitchen_now(kit.kitchen);
	ck_assert(!strip_juice_is_early(board, kk_canner(&kit, TALL_JUICER), &now));
}
END_TEST

START_TEST(a_run_without_a_length_counts_up_and_never_rings_that_it_is_over)
{
	struct stretch stretches[STRETCHES_MAX];
	struct moment now;

	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 0, 0, 20, 20, 0, &kit.fault));
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->phase.required_ms, 0);
	for (int look = 1; look <= 12; look++) {
		struct face face;

		kk_pass(&kit, 15 * MINUTE_MS);
		KK_OK(&kit, pk_try(&kit, TALL_JUICER, EXCEPTION_WATER, 0));
		face = pk_face(&kit, TALL_JUICER);
		ck_assert(!face.timed && !face.due && !face.ringing);
		ck_assert_int_eq(face.passed_s, look * 15 * 60);
		ck_assert(face.water && !face.water_due);
	}
	now = kitchen_now(kit.kitchen);
	for (size_t i = 0; i < strip_outlook(kk_canner(&kit, TALL_JUICER), &now, stretches); i++)
		if (stretches[i].kind == STRETCH_RUNNING)
			ck_assert_int_eq(stretches[i].to_ms, 0);
	ck_assert(!strip_end_known(kk_canner(&kit, TALL_JUICER)));
	kk_pass(&kit, 25 * MINUTE_MS); /* its water clock rings all the same */
	ck_assert(pk_face(&kit, TALL_JUICER).water_due);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).alarm, ALARM_DRY);
	KK_OK(&kit, pk_try_step(&kit, TALL_JUICER, false)); /* not asked whether it is early */
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_DRAIN);
	ck_assert(strip_end_known(kk_canner(&kit, TALL_JUICER)));
}
END_TEST

/* Is the plan refused since nobody knows how long a run takes? */
static bool plan_asks_for_it(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	const struct kitchen_plan *plan = kitchen_plan(kit.kitchen, &now);

	return !plan->possible && strstr(plan->why.sentence, "set it in the house view (h)") != NULL;
}

static void one_run(int minutes)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&kit, minutes * MINUTE_MS);
	KK_OK(&kit, pk_try_step(&kit, TALL_JUICER, false));
	KK_OK(&kit, juice_out("5 qt"));
}

START_TEST(no_run_is_planned_before_the_house_or_the_log_knows_how_long_it_takes)
{
	struct log_plan_run run = { .fruit = "grapes", .fruit_mg = 5443108, .ready_minutes = PLAN_ANY_TIME };
	int64_t id;

	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 0, 0, 20, 20, 0, &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "helper MK", 0, &kit.fault));
	KK_OK(&kit, kitchen_plan_add_run(kit.kitchen, &run, &id, &kit.fault));
	ck_assert(plan_asks_for_it());
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 64, 0, 20, 20, 0, &kit.fault));
	ck_assert(!plan_asks_for_it());
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 0, 0, 20, 20, 0, &kit.fault));
	for (int i = 1; i <= PLAN_OWN_MIN; i++) {
		ck_assert_msg(plan_asks_for_it(), "after %d runs", i - 1);
		one_run(50 + i);
		run.id = 0; /* the row before became that run */
		KK_OK(&kit, kitchen_plan_add_run(kit.kitchen, &run, &id, &kit.fault));
	}
	ck_assert(!plan_asks_for_it());
}
END_TEST

START_TEST(the_run_is_over_at_its_time_and_asked_about_before)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	for (int minute = 0; minute < 60; minute += 15) {
		kk_pass(&kit, 15 * MINUTE_MS);
		KK_OK(&kit, pk_try(&kit, TALL_JUICER, EXCEPTION_WATER, 0));
	}
	kk_pass(&kit, 10 * MINUTE_MS - 1);
	ck_assert(!pk_face(&kit, TALL_JUICER).due);
	ck_assert(!pk_face(&kit, TALL_JUICER).ringing);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).left_s, 1);
	KK_REFUSED(&kit, FAULT_CONFIRM, pk_try_step(&kit, TALL_JUICER, false));
	kk_pass(&kit, 1);
	ck_assert(pk_face(&kit, TALL_JUICER).ringing);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).alarm, ALARM_LIFT);
	KK_OK(&kit, pk_try_step(&kit, TALL_JUICER, false));
}
END_TEST

START_TEST(a_run_may_be_ended_early_and_goes_to_the_drain)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");

	if (_i == 1)
		pk_to(&kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, pk_try(&kit, TALL_JUICER, EXCEPTION_STOP, 0));
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_DRAIN);
	ck_assert(run_row(run_id).open);
	KK_OK(&kit, juice_out("0"));
	ck_assert(!run_row(run_id).open);
}
END_TEST

START_TEST(only_a_juicer_takes_a_run_and_only_one)
{
	int64_t run_id;
	int64_t twelve = pk_amount(SUPPLY_FRUIT, "12 lb");

	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_start_run(kit.kitchen, kk_station(&kit, WIDE_POT), "grapes", twelve, &run_id, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_start_run(kit.kitchen, kk_station(&kit, BIG_KETTLE), "grapes", twelve, &run_id, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_start_run(kit.kitchen, 99, "grapes", twelve, &run_id, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE,
	           kitchen_start_run(kit.kitchen, kk_station(&kit, TALL_JUICER), "", twelve, &run_id, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE,
	           kitchen_start_run(kit.kitchen, kk_station(&kit, TALL_JUICER), "grapes", 0, &run_id, &kit.fault));
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	KK_REFUSED(
	    &kit, FAULT_STALE,
	    kitchen_start_run(kit.kitchen, kk_station(&kit, TALL_JUICER), "grapes", twelve, &run_id, &kit.fault));
}
END_TEST

START_TEST(a_juicer_takes_no_load_and_no_batch)
{
	struct load_order load = kk_order(&kit, BIG_KETTLE, 3);
	struct batch_order batch = pk_order(&kit, TALL_JUICER, "grape jelly", "half_pint", 1);
	int64_t id;

	load.station_id = kk_station(&kit, TALL_JUICER);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_start_load(kit.kitchen, &load, &id, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_start_batch(kit.kitchen, &batch, true, &id, &kit.fault));
}
END_TEST

START_TEST(exceptions_of_loads_are_not_open_to_a_run)
{
	static const enum exception of_loads[] = { EXCEPTION_LOST, EXCEPTION_VENT_SHORT, EXCEPTION_EARLIER,
		                                   EXCEPTION_BROKEN_JAR, EXCEPTION_REDO };

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	for (int phase = PHASE_HEAT; phase <= PHASE_DRAIN; phase++) {
		pk_to(&kit, TALL_JUICER, (enum phase_name)phase);
		kk_pass(&kit, 5 * MINUTE_MS);
		for (size_t i = 0; i < sizeof(of_loads) / sizeof(of_loads[0]); i++)
			KK_REFUSED(&kit, FAULT_REFUSED, pk_try(&kit, TALL_JUICER, of_loads[i], 1));
	}
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_lost(kit.kitchen, pk_phase(&kit, TALL_JUICER), &kit.fault));
}
END_TEST

/* --- the water --------------------------------------------------------------------- */

START_TEST(the_water_clock_runs_from_heat_on)
{
	struct face face;

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	face = pk_face(&kit, TALL_JUICER);
	ck_assert(face.water);
	ck_assert_int_eq(face.water_left_s, WATER_MINUTES * 60);
	kk_pass(&kit, 5 * MINUTE_MS);
	pk_step(&kit, TALL_JUICER); /* the run begins; the water goes on */
	face = pk_face(&kit, TALL_JUICER);
	ck_assert_int_eq(face.left_s, RUN_MINUTES * 60);
	ck_assert_int_eq(face.water_left_s, (WATER_MINUTES - 5) * 60);
}
END_TEST

START_TEST(the_water_clock_rings_at_its_time_and_not_1_ms_before)
{
	struct face face;

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	if (_i == 1)
		pk_to(&kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&kit, WATER_MINUTES * MINUTE_MS - 1 - (_i == 1 ? 5 * MINUTE_MS : 0));
	face = pk_face(&kit, TALL_JUICER);
	ck_assert(!face.water_due && !face.ringing);
	ck_assert_int_eq(face.water_left_s, 1);
	ck_assert_ptr_null(kk_warned(&kit, "water-overdue", 0));
	KK_REFUSED(&kit, FAULT_REFUSED, heard());
	kk_pass(&kit, 1);
	face = pk_face(&kit, TALL_JUICER);
	ck_assert(face.water_due && face.ringing);
	ck_assert(!face.clock_rings); /* the run goes on as it should */
	ck_assert_str_eq(face.job, "WATER");
	ck_assert_int_eq(face.alarm, ALARM_DRY);
	ck_assert_int_eq(face.water_left_s, 0);
	ck_assert_ptr_nonnull(kk_warned(&kit, "water-overdue", 0));
	ck_assert_int_eq(kk_warned(&kit, "water-overdue", 0)->station_id, kk_station(&kit, TALL_JUICER));
	KK_OK(&kit, heard());
	ck_assert_ptr_null(kk_warned(&kit, "water-overdue", 0));
}
END_TEST

START_TEST(seen_water_starts_its_clock_again_and_again)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");

	pk_to(&kit, TALL_JUICER, PHASE_RUN); /* 5 min */
	kk_pass(&kit, (WATER_MINUTES - 5) * MINUTE_MS);
	for (int checks = 1; checks <= 3; checks++) {
		kk_pass(&kit, 137); /* it rings until somebody comes */
		ck_assert(pk_face(&kit, TALL_JUICER).water_due);
		KK_OK(&kit, heard());
		ck_assert_int_eq(run_row(run_id).water_checks, checks);
		ck_assert(!pk_face(&kit, TALL_JUICER).ringing);
		ck_assert_int_eq(pk_face(&kit, TALL_JUICER).water_left_s, WATER_MINUTES * 60);
		KK_REFUSED(&kit, FAULT_REFUSED, heard());
		kk_pass(&kit, WATER_MINUTES * MINUTE_MS - 1);
		ck_assert(!pk_face(&kit, TALL_JUICER).water_due);
		kk_pass(&kit, 1);
	}
}
END_TEST

START_TEST(overdue_water_rings_on_and_tells_by_how_much)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	kk_pass(&kit, (WATER_MINUTES + 7) * MINUTE_MS);
	ck_assert(pk_face(&kit, TALL_JUICER).ringing);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).water_left_s, -7 * 60);
	kk_reopen(&kit);
	ck_assert(pk_face(&kit, TALL_JUICER).ringing);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).water_left_s, -7 * 60);
}
END_TEST

/* Its whole interval overdue: whoever comes then must not pour water into the pan. */
START_TEST(a_pan_long_overdue_is_dry_and_gets_no_water)
{
	struct moment now;
	struct face face;

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	kk_pass(&kit, 2 * WATER_MINUTES * MINUTE_MS - 1);
	face = pk_face(&kit, TALL_JUICER);
	ck_assert(face.water_due && !face.water_dry);
	ck_assert_ptr_nonnull(strstr(face.act, "top up with hot water"));
	ck_assert_ptr_nonnull(kk_warned(&kit, "water-overdue", 0));
	ck_assert_ptr_null(kk_warned(&kit, "pan-dry", 0));
	kk_pass(&kit, 1);
	face = pk_face(&kit, TALL_JUICER);
	now = kitchen_now(kit.kitchen);
	ck_assert(face.water_due && face.water_dry && face.ringing);
	ck_assert_int_eq(face.alarm, ALARM_DRY);
	ck_assert_ptr_nonnull(strstr(face.act, "Heat OFF"));
	ck_assert_ptr_null(strstr(face.act, "top up"));
	ck_assert_ptr_null(strstr(exception_words(kk_canner(&kit, TALL_JUICER), EXCEPTION_WATER, &now), "topped up"));
	ck_assert_ptr_null(kk_warned(&kit, "water-overdue", 0));
	ck_assert_ptr_nonnull(strstr(kk_warned(&kit, "pan-dry", 0)->sentence, "no water into a hot dry pan"));
	kk_pass(&kit, 45 * MINUTE_MS); /* 65 min overdue */
	ck_assert(pk_face(&kit, TALL_JUICER).water_dry);
	KK_OK(&kit, heard());
	ck_assert(!pk_face(&kit, TALL_JUICER).water_dry);
	ck_assert_ptr_null(kk_warned(&kit, "pan-dry", 0));
	kk_pass(&kit, 3 * WATER_MINUTES * MINUTE_MS);
	ck_assert(pk_face(&kit, TALL_JUICER).water_dry);
	pk_to(&kit, TALL_JUICER, PHASE_DRAIN); /* the heat is off */
	ck_assert(!pk_face(&kit, TALL_JUICER).water_dry);
	ck_assert_ptr_null(kk_warned(&kit, "pan-dry", 0));
}
END_TEST

START_TEST(water_topped_up_before_its_alarm_starts_the_clock_again)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");

	kk_pass(&kit, 11 * MINUTE_MS);
	KK_OK(&kit, pk_try(&kit, TALL_JUICER, EXCEPTION_WATER, 0));
	ck_assert_int_eq(run_row(run_id).water_checks, 1);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).water_left_s, WATER_MINUTES * 60);
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_HEAT); /* it moves nothing else */
	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_REFUSED(&kit, FAULT_REFUSED, pk_try(&kit, TALL_JUICER, EXCEPTION_WATER, 0));
}
END_TEST

START_TEST(water_comes_before_the_end_of_the_run_and_each_is_heard_by_itself)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&kit, RUN_MINUTES * MINUTE_MS);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).alarm, ALARM_DRY);
	KK_OK(&kit, heard());
	pk_says(&kit, "water checked");
	ck_assert(pk_face(&kit, TALL_JUICER).ringing); /* the run is over all the same */
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).alarm, ALARM_LIFT);
	KK_OK(&kit, heard());
	ck_assert(!pk_face(&kit, TALL_JUICER).ringing);
	ck_assert(pk_face(&kit, TALL_JUICER).due);
	kk_pass(&kit, WATER_MINUTES * MINUTE_MS);
	ck_assert(pk_face(&kit, TALL_JUICER).ringing); /* the pan does not wait */
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).alarm, ALARM_DRY);
}
END_TEST

START_TEST(no_water_clock_after_the_heat_is_off)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	kk_pass(&kit, HOUR_MS);
	ck_assert(!pk_face(&kit, TALL_JUICER).water);
	ck_assert(!pk_face(&kit, TALL_JUICER).ringing);
	ck_assert_ptr_null(kk_warned(&kit, "water-overdue", 0));
}
END_TEST

START_TEST(an_undone_water_check_rings_again)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");

	kk_pass(&kit, 21 * MINUTE_MS);
	KK_OK(&kit, heard());
	KK_OK(&kit, pk_undo(&kit, SUBJECT_RUN, run_id));
	ck_assert(pk_face(&kit, TALL_JUICER).water_due);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).water_left_s, -60);
	ck_assert_int_eq(run_row(run_id).water_checks, 0);
}
END_TEST

START_TEST(the_water_clock_survives_a_wall_clock_that_is_set)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	kk_pass(&kit, 5 * MINUTE_MS);
	test_clock_step_wall(&kit.clock, -2 * HOUR_MS);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).water_left_s, 15 * 60);
	test_clock_step_wall(&kit.clock, 4 * HOUR_MS);
	ck_assert_int_eq(pk_face(&kit, TALL_JUICER).water_left_s, 15 * 60);
}
END_TEST

/* --- the juice ------------------------------------------------------------------------ */

START_TEST(juice_drawn_in_the_run_is_stock_and_the_run_goes_on)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	int64_t began;

	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	began = kk_canner(&kit, TALL_JUICER)->phase.began.wall_ms;
	kk_pass(&kit, 45 * MINUTE_MS);
	KK_OK(&kit, draw("3 qt"));
	ck_assert_int_eq(pk_name(&kit, TALL_JUICER), PHASE_RUN);
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->phase.began.wall_ms, began);
	ck_assert_int_eq(strip_run(kk_canner(&kit, TALL_JUICER))->drawn_ul, pk_ul("3 qt"));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->juice_ul, pk_ul("3 qt"));
	ck_assert_str_eq(juice_row(run_id).kind, "grapes");
	ck_assert_int_eq(juice_row(run_id).state, JUICE_HOT);
	ck_assert_int_eq(juice_row(run_id).made_ul, pk_ul("3 qt"));
	ck_assert_int_eq(juice_row(run_id).left_ul, pk_ul("3 qt"));
	ck_assert_int_eq(juice_row(run_id).made_wall_ms, kit.clock.now.wall_ms);
	kk_pass(&kit, 25 * MINUTE_MS);
	pk_step(&kit, TALL_JUICER);
	KK_OK(&kit, juice_out("2 qt"));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->juice_ul, pk_ul("3 qt") + pk_ul("2 qt"));
}
END_TEST

START_TEST(nothing_is_drawn_before_the_run_and_nothing_of_nothing)
{
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	KK_REFUSED(&kit, FAULT_REFUSED, draw("1 qt"));
	KK_REFUSED(&kit, FAULT_REFUSED, juice_out("1 qt"));
	pk_to(&kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&kit, MINUTE_MS);
	KK_REFUSED(&kit, FAULT_MISUSE, draw("0"));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), -1, &kit.fault));
	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_REFUSED(&kit, FAULT_REFUSED, draw("1 qt")); /* there it is measured out, once */
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), -1, &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->juice_ul, 0);
}
END_TEST

START_TEST(nothing_in_the_drain_ends_the_run_without_juice)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	struct log_juice *rows;
	size_t count;

	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_OK(&kit, juice_out("0"));
	ck_assert(!run_row(run_id).open);
	KK_OK(&kit, log_juices_of_run(kit.log, run_id, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	free(rows);
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->content, STRIP_EMPTY);
}
END_TEST

START_TEST(juice_is_measured_out_once)
{
	int64_t phase_id;

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	phase_id = pk_phase(&kit, TALL_JUICER);
	KK_OK(&kit, juice_out("5 qt"));
	KK_REFUSED(&kit, FAULT_STALE, kitchen_juice_out(kit.kitchen, phase_id, pk_ul("5 qt"), &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->juice_ul, pk_ul("5 qt"));
}
END_TEST

START_TEST(juice_is_chilled_and_frozen_and_keeps_its_age)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	int64_t made;
	int64_t id;

	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_OK(&kit, juice_out("5 qt"));
	made = kit.clock.now.wall_ms;
	id = juice_row(run_id).id;
	kk_pass(&kit, HOUR_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_juice_state(kit.kitchen, id, JUICE_HOT, &kit.fault));
	KK_OK(&kit, kitchen_juice_state(kit.kitchen, id, JUICE_CHILLED, &kit.fault));
	ck_assert_int_eq(juice_row(run_id).state, JUICE_CHILLED);
	ck_assert_int_eq(juice_row(run_id).state_wall_ms, kit.clock.now.wall_ms);
	kk_pass(&kit, DAY_MS);
	KK_OK(&kit, kitchen_juice_state(kit.kitchen, id, JUICE_FROZEN, &kit.fault));
	ck_assert_int_eq(juice_row(run_id).state, JUICE_FROZEN);
	ck_assert_int_eq(juice_row(run_id).made_wall_ms, made);
	ck_assert_int_eq(juice_row(run_id).left_ul, pk_ul("5 qt"));
	ck_assert_int_eq(run_row(run_id).fruit_mg, pk_amount(SUPPLY_FRUIT, "12 lb"));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_HOUSE, 0));
	ck_assert_int_eq(juice_row(run_id).state, JUICE_CHILLED);
	ck_assert_int_eq(juice_row(run_id).state_wall_ms, made + HOUR_MS);
}
END_TEST

START_TEST(juice_measured_again_is_a_move_of_its_own)
{
	int64_t id = pk_juice(&kit, "grapes", "5 qt");
	struct log_juice row;

	KK_OK(&kit, kitchen_juice_left(kit.kitchen, id, pk_ul("4 qt"), JUICE_CORRECTION, &kit.fault));
	KK_OK(&kit, log_juice_get(kit.log, id, &row, &kit.fault));
	ck_assert_int_eq(row.left_ul, pk_ul("4 qt"));
	ck_assert_int_eq(row.made_ul, pk_ul("5 qt")); /* what was measured stays written */
	pk_says(&kit, "1 gal left");
	KK_OK(&kit, kitchen_juice_left(kit.kitchen, id, 0, JUICE_DISCARDED, &kit.fault));
	ck_assert_int_eq(pk_juice_left(&kit, id), 0);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->juice_ul, 0);
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_juice_left(kit.kitchen, id, -1, JUICE_CORRECTION, &kit.fault));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_HOUSE, 0));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_HOUSE, 0));
	ck_assert_int_eq(pk_juice_left(&kit, id), pk_ul("5 qt"));
}
END_TEST

/* --- corrections and undo ----------------------------------------------------------------- */

START_TEST(fruit_is_taken_off_its_ledger_and_a_correction_moves_the_difference)
{
	int64_t lb = pk_amount(SUPPLY_FRUIT, "1 lb");
	int64_t run_id;

	pk_receive(&kit, SUPPLY_FRUIT, "", "100 lb");
	run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_FRUIT, ""),
	                 pk_amount(SUPPLY_FRUIT, "100 lb") - pk_amount(SUPPLY_FRUIT, "12 lb"));
	KK_OK(&kit, kitchen_run_fruit(kit.kitchen, run_id, "grapes", pk_amount(SUPPLY_FRUIT, "13 lb"), &kit.fault));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_FRUIT, ""),
	                 pk_amount(SUPPLY_FRUIT, "100 lb") - pk_amount(SUPPLY_FRUIT, "13 lb"));
	pk_says(&kit, "Corrected");
	KK_OK(&kit, kitchen_run_fruit(kit.kitchen, run_id, "grapes", 10 * lb, &kit.fault));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_FRUIT, ""), pk_amount(SUPPLY_FRUIT, "100 lb") - 10 * lb);
	ck_assert_int_eq(strip_run(kk_canner(&kit, TALL_JUICER))->row.fruit_mg, 10 * lb);
	KK_OK(&kit, pk_undo(&kit, SUBJECT_RUN, run_id));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_RUN, run_id));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_RUN, run_id)); /* the start itself */
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_FRUIT, ""), pk_amount(SUPPLY_FRUIT, "100 lb"));
	ck_assert_int_eq(kk_canner(&kit, TALL_JUICER)->content, STRIP_EMPTY);
}
END_TEST

START_TEST(a_corrected_fruit_is_the_fruit_of_its_juice_too)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "graps", "12 lb");
	char *before;

	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_OK(&kit, juice_out("5 qt"));
	before = pk_rows(&kit);
	KK_OK(&kit, kitchen_run_fruit(kit.kitchen, run_id, "grapes", pk_amount(SUPPLY_FRUIT, "12 lb"), &kit.fault));
	ck_assert_str_eq(run_row(run_id).fruit, "grapes");
	ck_assert_str_eq(juice_row(run_id).kind, "grapes"); /* else no recipe can have it */
	ck_assert_int_eq(juice_row(run_id).left_ul, pk_ul("5 qt"));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_RUN, run_id));
	pk_same_rows(&kit, before);
}
END_TEST

START_TEST(a_correction_is_refused_what_a_start_is_refused)
{
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	int64_t before = kk_journal(&kit);

	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_run_fruit(kit.kitchen, run_id, "", 1, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_run_fruit(kit.kitchen, run_id, "grapes", 0, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_run_fruit(kit.kitchen, 99, "grapes", 1, &kit.fault));
	ck_assert_int_eq(kk_journal(&kit), before);
}
END_TEST

START_TEST(each_act_of_a_run_is_taken_back_and_done_again)
{
	char *rows[8];
	int64_t run_id;
	int acts = 0;

	pk_receive(&kit, SUPPLY_FRUIT, "", "100 lb");
	rows[acts++] = pk_rows(&kit);
	run_id = pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	kk_pass(&kit, 5 * SECOND_MS);
	rows[acts++] = pk_rows(&kit);
	KK_OK(&kit, pk_try(&kit, TALL_JUICER, EXCEPTION_WATER, 0));
	rows[acts++] = pk_rows(&kit);
	pk_step(&kit, TALL_JUICER);
	kk_pass(&kit, 5 * SECOND_MS);
	rows[acts++] = pk_rows(&kit);
	KK_OK(&kit, draw("1 qt"));
	rows[acts++] = pk_rows(&kit);
	pk_step(&kit, TALL_JUICER);
	kk_pass(&kit, 5 * SECOND_MS);
	rows[acts++] = pk_rows(&kit);
	KK_OK(&kit, juice_out("2 qt"));
	rows[acts++] = pk_rows(&kit);
	for (int i = acts - 2; i >= 0; i--) {
		KK_OK(&kit, pk_undo(&kit, SUBJECT_RUN, run_id));
		pk_same_rows(&kit, strdup(rows[i]));
	}
	for (int i = 1; i < acts; i++) {
		KK_OK(&kit, pk_redo(&kit, SUBJECT_RUN, run_id));
		pk_same_rows(&kit, strdup(rows[i]));
	}
	for (int i = 0; i < acts; i++)
		free(rows[i]);
}
END_TEST

START_TEST(no_undo_leaves_less_than_no_juice)
{
	int64_t id = pk_juice(&kit, "grapes", "5 cups");
	int64_t batch_id;
	char *before;

	KK_OK(&kit, kitchen_juice_left(kit.kitchen, id, pk_ul("10 cups"), JUICE_CORRECTION, &kit.fault));
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	(void)pk_batch(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	ck_assert_int_eq(pk_juice_left(&kit, id), 0);
	before = pk_rows(&kit);
	/* That there were ten cups and not five is not taken back while ten are used. */
	KK_REFUSED(&kit, FAULT_CONFLICT, pk_undo(&kit, SUBJECT_HOUSE, 0));
	pk_same_rows(&kit, before);
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_HOUSE, 0));
	ck_assert_int_eq(pk_juice_left(&kit, id), 0);
	kk_reopen(&kit);
}
END_TEST

START_TEST(outlook_of_a_run_lies_end_to_end_and_ends_free)
{
	struct stretch stretches[STRETCHES_MAX];
	size_t count;

	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	for (int phase = PHASE_HEAT; phase <= PHASE_DRAIN; phase++) {
		const struct strip *strip;

		pk_to(&kit, TALL_JUICER, (enum phase_name)phase);
		kk_pass(&kit, MINUTE_MS);
		strip = kk_canner(&kit, TALL_JUICER);
		count = strip_outlook(strip, &kit.clock.now, stretches);
		ck_assert_uint_eq(count, 3);
		for (size_t i = 1; i < count; i++)
			ck_assert_int_eq(stretches[i].from_ms, stretches[i - 1].to_ms);
		ck_assert_int_eq(strip_free_in_ms(strip, &kit.clock.now), stretches[2].to_ms);
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("phases", .begin = begin, .end = end),
	TEST(a_run_goes_from_heat_to_run_to_drain),
	TEST(a_run_walks_through_them_and_leaves_the_juicer_free),
	TEST(the_run_is_as_long_as_the_house_says_when_it_begins),
	TEST(without_a_water_interval_no_run_is_started),
	TEST(juice_is_early_until_half_the_way_to_the_first),
	TEST(each_juicer_goes_by_its_own_water_and_by_the_house_where_it_has_none),
	TEST(its_own_minutes_are_enough_where_the_house_has_none),
	TEST(a_run_without_a_length_counts_up_and_never_rings_that_it_is_over),
	TEST(no_run_is_planned_before_the_house_or_the_log_knows_how_long_it_takes),
	TEST(the_run_is_over_at_its_time_and_asked_about_before),
	EACH(a_run_may_be_ended_early_and_goes_to_the_drain, 0, 2),
	TEST(only_a_juicer_takes_a_run_and_only_one),
	TEST(a_juicer_takes_no_load_and_no_batch),
	TEST(exceptions_of_loads_are_not_open_to_a_run),
	TEST(outlook_of_a_run_lies_end_to_end_and_ends_free),
	GROUP("water", .begin = begin, .end = end),
	TEST(the_water_clock_runs_from_heat_on),
	EACH(the_water_clock_rings_at_its_time_and_not_1_ms_before, 0, 2),
	TEST(seen_water_starts_its_clock_again_and_again),
	TEST(overdue_water_rings_on_and_tells_by_how_much),
	TEST(a_pan_long_overdue_is_dry_and_gets_no_water),
	TEST(water_topped_up_before_its_alarm_starts_the_clock_again),
	TEST(water_comes_before_the_end_of_the_run_and_each_is_heard_by_itself),
	TEST(no_water_clock_after_the_heat_is_off),
	TEST(an_undone_water_check_rings_again),
	TEST(the_water_clock_survives_a_wall_clock_that_is_set),
	GROUP("juice", .begin = begin, .end = end),
	TEST(juice_drawn_in_the_run_is_stock_and_the_run_goes_on),
	TEST(nothing_is_drawn_before_the_run_and_nothing_of_nothing),
	TEST(nothing_in_the_drain_ends_the_run_without_juice),
	TEST(juice_is_measured_out_once),
	TEST(juice_is_chilled_and_frozen_and_keeps_its_age),
	TEST(juice_measured_again_is_a_move_of_its_own),
	TEST(fruit_is_taken_off_its_ledger_and_a_correction_moves_the_difference),
	TEST(a_corrected_fruit_is_the_fruit_of_its_juice_too),
	TEST(a_correction_is_refused_what_a_start_is_refused),
	TEST(each_act_of_a_run_is_taken_back_and_done_again),
	TEST(no_undo_leaves_less_than_no_juice),
};

KK_TESTS("juicer", listed)
