/*
 * The day plan of Quince Hollow (invented): what it needs of the house, its rows,
 * what takes them, what it says of supplies, lateness and what is next.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/house/new_log.h"
#include "kitchen/plan/plan.h"
#include "kitchen/recipe/own.h"
#include "kitchen/stock/stock.h"
#include "support/plan_check.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void line(const char *words)
{
	kk_ok(&kit, kitchen_setup_line(kit.kitchen, words, 0, &kit.fault), words);
}

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	line("helper MK");
	line("helper JO");
	line("plan burners=5 cooling=any clean=30");
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

	if (plan->possible)
		ck_assert_msg(plan_check(plan->input, plan->plan, said, sizeof(said)), "%s", said);
	return plan;
}

static void says_no(const char *part)
{
	const struct kitchen_plan *plan = plan_now();

	ck_assert(!plan->possible);
	ck_assert_msg(strstr(plan->why.sentence, part) != NULL, "\"%s\" says nothing of \"%s\"", plan->why.sentence,
	              part);
}

static void undo_house(void)
{
	char said[SENTENCE_MAX_BYTES];
	struct log_subject house = { .kind = SUBJECT_HOUSE };

	KK_OK(&kit, kitchen_undo(kit.kitchen, house, said, sizeof(said), &kit.fault));
}

static const struct log_plan_run *run_at(size_t n)
{
	size_t count;
	const struct log_plan_run *rows = kitchen_plan_runs(kit.kitchen, &count);

	ck_assert_uint_lt(n, count);
	return &rows[n];
}

static const struct log_plan_batch *batch_at(size_t n)
{
	size_t count;
	const struct log_plan_batch *rows = kitchen_plan_batches(kit.kitchen, &count);

	ck_assert_uint_lt(n, count);
	return &rows[n];
}

static size_t rows(void)
{
	size_t runs;
	size_t batches;

	(void)kitchen_plan_runs(kit.kitchen, &runs);
	(void)kitchen_plan_batches(kit.kitchen, &batches);
	return runs + batches;
}

/* --- the house -------------------------------------------------------------------------- */

START_TEST(times_of_day_are_read_and_written)
{
	static const char *const wrong[] = { "", "x", "-1", "8:5", "8:60", "8:300", "48", "8h", "8:30pm" };
	char words[16];
	int minutes;

	KK_OK(&kit, plan_time_read("8:30", &minutes, &kit.fault));
	ck_assert_int_eq(minutes, 510);
	plan_time_words(minutes, words, sizeof(words));
	ck_assert_str_eq(words, "08:30");
	KK_OK(&kit, plan_time_read("14", &minutes, &kit.fault));
	ck_assert_int_eq(minutes, 840);
	KK_OK(&kit, plan_time_read("25:15", &minutes, &kit.fault)); /* past midnight */
	ck_assert_int_eq(minutes, 1515);
	plan_time_words(PLAN_ANY_TIME, words, sizeof(words));
	ck_assert_str_eq(words, "");
	for (size_t i = 0; i < sizeof(wrong) / sizeof(wrong[0]); i++)
		ck_assert_msg(!plan_time_read(wrong[i], &minutes, &kit.fault), "%s", wrong[i]);
}
END_TEST

START_TEST(the_house_is_set_by_lines_and_taken_back)
{
	struct log_plan_house house;
	size_t count;

	line("plan burners=2 fillers=1 cooling=40 clean=20 late=15 charge=\"10 lb\"");
	house = *kitchen_plan_house(kit.kitchen);
	ck_assert_int_eq(house.burners, 2);
	ck_assert_int_eq(house.fillers, 1);
	ck_assert_int_eq(house.cooling_jars, 40);
	ck_assert_int_eq(house.clean_minutes, 20);
	ck_assert_int_eq(house.late_minutes, 15);
	ck_assert_int_eq(house.charge_mg, pk_amount(SUPPLY_FRUIT, "10 lb"));
	undo_house();
	ck_assert_int_eq(kitchen_plan_house(kit.kitchen)->burners, 5);
	line("plan meals=turns");
	ck_assert(kitchen_plan_house(kit.kitchen)->meals_in_turns);
	pk_says(&kit, "For the day plan: 5 burners, 0 fill places, room for any number of jars, clean-down 30 min, "
	              "charge 12 lb, late from 30 min, meals in turns");
	ck_assert(!kitchen_setup_line(kit.kitchen, "plan meals=never", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "in turns, or together"));
	undo_house();
	ck_assert(!kitchen_plan_house(kit.kitchen)->meals_in_turns);
	line("break 12:00 12:45");
	ck_assert_int_eq(kitchen_breaks(kit.kitchen, &count)->start_minutes, 720);
	undo_house();
	(void)kitchen_breaks(kit.kitchen, &count);
	ck_assert_uint_eq(count, 0);
	(void)kitchen_helpers(kit.kitchen, &count);
	ck_assert_uint_eq(count, 2);
	KK_OK(&kit, kitchen_remove_helper(kit.kitchen, kitchen_helpers(kit.kitchen, &count)[0].id, &kit.fault));
	ck_assert_str_eq(kitchen_helpers(kit.kitchen, &count)[0].initials, "JO");
	ck_assert_uint_eq(count, 1);
}
END_TEST

START_TEST(lines_that_cannot_be_are_refused_with_a_sentence)
{
	memset(&kit.fault, 0, sizeof(kit.fault));
	ck_assert(!kitchen_setup_line(kit.kitchen, "helper MK", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "already"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "helper RW at=9", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "from=9:30"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "break 13:00 12:00", 0, &kit.fault));
	line("break 12:00 12:45");
	ck_assert(!kitchen_setup_line(kit.kitchen, "break 12:30 13:00", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "another break"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "plan burners=99", 0, &kit.fault));
	ck_assert(!kitchen_setup_line(kit.kitchen, "plan hobs=4", 0, &kit.fault));
	ck_assert(!kitchen_setup_line(kit.kitchen, "batch \"quince leather\"", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "no recipe"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "batch \"grape jelly\" jar=quart", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "does not go in that jar"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "batch \"grape jelly\" multiple=2", 0, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "1 at a time"));
	ck_assert(!kitchen_setup_line(kit.kitchen, "run grapes \"0 lb\" times=0", 0, &kit.fault));
	ck_assert_uint_eq(rows(), 0);
}
END_TEST

START_TEST(own_heat_is_a_word_of_a_station_line)
{
	struct log_station kettle;

	line("canner 1 boiling_water \"Big kettle\" pint=9 own_heat retired");
	ck_assert(!kk_canner(&kit, LOW_KETTLE)->station.own_heat);
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "canner 2 boiling_water \"Low kettle\" pint=7 own_heat",
	                               kk_station(&kit, LOW_KETTLE), &kit.fault));
	ck_assert(kk_canner(&kit, LOW_KETTLE)->station.own_heat);
	undo_house();
	ck_assert(!kk_canner(&kit, LOW_KETTLE)->station.own_heat);
	kettle = kk_canner(&kit, LOW_KETTLE)->station;
	kettle.own_heat = true;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &kettle, &kit.fault));
	ck_assert(kk_canner(&kit, LOW_KETTLE)->station.own_heat);
	for (int i = 0; i < plan_now()->input->station_count; i++)
		ck_assert_int_eq(plan_now()->input->stations[i].on_burner,
		                 plan_now()->station_ids[i] != kk_station(&kit, LOW_KETTLE));
	undo_house();
	ck_assert(!kk_canner(&kit, LOW_KETTLE)->station.own_heat);
}
END_TEST

/* --- days that cannot be ------------------------------------------------------------------- */

START_TEST(a_day_that_cannot_be_gets_a_sentence)
{
	size_t count;

	says_no("nothing to plan");
	line("batch \"grape jelly\"");
	ck_assert(plan_now()->items[0].juice_short);
	line("juice \"grape\" \"2 qt\" chilled");
	ck_assert(plan_now()->possible);
	ck_assert(!plan_now()->items[0].juice_short);
	line("plan burners=0");
	says_no("burner");
	line("plan burners=5 cooling=3");
	says_no("cool");
	line("plan cooling=any");
	while (kitchen_helpers(kit.kitchen, &count) != NULL && count > 0)
		KK_OK(&kit, kitchen_remove_helper(kit.kitchen, kitchen_helpers(kit.kitchen, &count)[0].id, &kit.fault));
	says_no("There is nobody");
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_accept(kit.kitchen, &kit.fault));
}
END_TEST

/* Two of them: the second waits for a juicer or a pair of hands, as any plan's work does. */
START_TEST(runs_alone_are_a_plan_that_says_their_juice_has_no_batch)
{
	const struct kitchen_plan *plan;
	int64_t draft_ends_ms;

	line("run \"grapes\" \"12 lb\" times=3");
	plan = plan_now();
	ck_assert_msg(plan->possible, "%s", plan->why.sentence);
	ck_assert_int_eq(plan->planned, 3);
	for (int i = 0; i < 3; i++)
		ck_assert_int_gt(plan->items[i].start_ms, 0);
	ck_assert_int_gt(plan->finish_ms, plan->items[2].end_ms - 1);
	ck_assert(plan_is_runs_alone(plan));
	draft_ends_ms = plan->finish_ms;
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	ck_assert_int_eq(plan_now()->accepted_finish_ms, draft_ends_ms);
	line("batch \"grape jelly\"");
	ck_assert(!plan_is_runs_alone(plan_now()));
}
END_TEST

START_TEST(a_run_that_goes_on_leaves_nothing_to_be_started)
{
	line("run \"grapes\" \"12 lb\"");
	(void)pk_run(&kit, TALL_JUICER, "grapes", "12 lb");
	says_no("Nothing is left to be started");
	ck_assert_int_gt(plan_now()->finish_ms, 0);
}
END_TEST

START_TEST(without_an_elevation_no_process_is_known)
{
	struct kitchen_kit bare;

	kk_begin_empty(&bare);
	KK_OK(&bare, kitchen_setup_line(bare.kitchen, "helper MK", 0, &bare.fault));
	KK_OK(&bare, kitchen_setup_line(bare.kitchen, "pot 6 \"Wide pot\" \"8 qt\"", 0, &bare.fault));
	KK_OK(&bare, kitchen_setup_line(bare.kitchen, "batch \"strawberry jam\"", 0, &bare.fault));
	struct moment now = kitchen_now(bare.kitchen);
	ck_assert(!kitchen_plan(bare.kitchen, &now)->possible);
	ck_assert_ptr_nonnull(strstr(kitchen_plan(bare.kitchen, &now)->why.sentence, "elevation"));
	kk_end(&bare);
}
END_TEST

/* --- rows ---------------------------------------------------------------------------------------- */

START_TEST(wishes_become_runs_by_the_charge_and_batches_by_the_forecast)
{
	struct wishes wishes = { .fruit = "grapes", .fruit_mg = pk_amount(SUPPLY_FRUIT, "60 lb"), .count = 1 };
	struct ahead ahead;
	size_t runs;
	size_t batches;
	int64_t sum = 0;

	KK_OK(&kit, wish_read(kit.kitchen, "grape jelly", &wishes.wish[0], &kit.fault));
	KK_OK(&kit, kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault));
	KK_OK(&kit, kitchen_plan_from_wishes(kit.kitchen, &wishes, 570, &kit.fault));
	(void)kitchen_plan_runs(kit.kitchen, &runs);
	(void)kitchen_plan_batches(kit.kitchen, &batches);
	ck_assert_uint_eq(runs, 5); /* 60 lb by 12 lb */
	ck_assert_uint_eq(batches, (size_t)ahead.forecast.lines[0].batches[BOUND_LIKELY]);
	for (size_t i = 0; i < runs; i++) {
		sum += run_at(i)->fruit_mg;
		ck_assert_int_eq(run_at(i)->ready_minutes, 570);
	}
	ck_assert_int_eq(sum, wishes.fruit_mg);
	ck_assert_str_eq(batch_at(0)->jar, "half_pint");
	ck_assert_msg(plan_now()->possible, "%s", plan_now()->why.sentence);
	/* The fruit is there at 9:30, and 9:00 it is now. */
	ck_assert_int_ge(plan_now()->items[0].start_ms, KK_MORNING_MS + 30 * MINUTE_MS);
	undo_house();
	ck_assert_uint_eq(rows(), 0);
}
END_TEST

START_TEST(rows_are_changed_and_taken_out_until_they_are_begun)
{
	struct log_plan_run run;
	int64_t run_id;

	line("run grapes \"12 lb\" times=2");
	run = *run_at(0);
	run.fruit_mg = pk_amount(SUPPLY_FRUIT, "10 lb");
	KK_OK(&kit, kitchen_plan_change_run(kit.kitchen, &run, &kit.fault));
	ck_assert_int_eq(run_at(0)->fruit_mg, run.fruit_mg);
	run_id = pk_run(&kit, TALL_JUICER, "Grape", "12 lb");
	ck_assert_int_eq(run_at(0)->run_id, run_id);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_change_run(kit.kitchen, &run, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_remove(kit.kitchen, true, run.id, &kit.fault));
	KK_OK(&kit, kitchen_plan_remove(kit.kitchen, true, run_at(1)->id, &kit.fault));
	ck_assert_uint_eq(rows(), 1);
	KK_REFUSED(&kit, FAULT_STALE, kitchen_plan_remove(kit.kitchen, true, 99, &kit.fault));
}
END_TEST

START_TEST(starting_work_takes_the_next_row_that_fits_and_undo_gives_it_back)
{
	char *before;
	int64_t run_id;

	line("run apples \"12 lb\"");
	line("run grapes \"12 lb\" times=2");
	before = pk_rows(&kit);
	run_id = pk_run(&kit, TALL_JUICER, "grapes", "11 lb");
	ck_assert_int_eq(run_at(0)->run_id, 0);
	ck_assert_int_eq(run_at(1)->run_id, run_id);
	ck_assert_int_eq(plan_now()->going_on, 1);
	ck_assert(pk_undo(&kit, SUBJECT_RUN, run_id));
	ck_assert_int_eq(run_at(1)->run_id, 0);
	pk_same_rows(&kit, before);
}
END_TEST

START_TEST(a_batch_takes_the_row_of_its_jar_first)
{
	int64_t batch_id;

	line("juice \"grape\" \"3 gal\" chilled");
	line("batch \"grape jelly\" jar=pint");
	line("batch \"grape jelly\"");
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	ck_assert_int_eq(batch_at(0)->batch_id, 0);
	ck_assert_int_eq(batch_at(1)->batch_id, batch_id);
	batch_id = pk_batch(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	ck_assert_int_eq(batch_at(0)->batch_id, batch_id);
	ck_assert(pk_undo(&kit, SUBJECT_BATCH, batch_id));
	ck_assert_int_eq(batch_at(0)->batch_id, 0);
}
END_TEST

START_TEST(batches_wait_for_the_runs_that_give_their_juice)
{
	const struct plan_input *input;

	line("run grapes \"12 lb\" times=3");
	line("batch \"grape jelly\" times=4");
	input = plan_now()->input;
	ck_assert_int_eq(input->batch_count, 4);
	/* 12 lb give 3.43 qt likely (3.5 lb a quart), a batch takes 5 cups. */
	ck_assert_int_eq(input->batches[0].first_run, 0);
	ck_assert_int_eq(input->batches[0].run_count, 1);
	ck_assert_int_eq(input->batches[2].first_run, 0);
	ck_assert_int_eq(input->batches[2].run_count, 2);
	ck_assert_int_eq(input->batches[3].first_run, 1);
	ck_assert_int_eq(input->batches[3].run_count, 1);
	/* Juice in stock goes first. */
	line("juice \"grape\" \"6 cups\" chilled");
	input = plan_now()->input;
	ck_assert_int_eq(input->batches[0].run_count, 0);
	/* The row may say otherwise. */
	line("batch \"grape jelly\" after=3");
	input = plan_now()->input;
	ck_assert_int_eq(input->batches[4].first_run, 0);
	ck_assert_int_eq(input->batches[4].run_count, 3);
}
END_TEST

START_TEST(what_no_canner_takes_is_left_out_and_said)
{
	struct log_recipe own = {
		.acidity = ACIDITY_ACID, .headspace_thou = 250, .multiple_max = 1, .ingredient_count = 1
	};

	own.ingredients[0] = (struct log_recipe_ingredient){
		.supply = SUPPLY_FRUIT, .measure = MEASURE_MASS, .amount = 2000000, .adding = ADD_AT_START
	};
	ck_assert(text_copy(own.name, NAME_MAX_BYTES, "quince paste") &&
	          text_copy(own.jars, sizeof(own.jars), "pint") &&
	          text_copy(own.source, sizeof(own.source), "house recipe, no source") &&
	          text_copy(own.ingredients[0].name, NAME_MAX_BYTES, "quinces"));
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	line("batch \"strawberry jam\"");
	line("batch \"quince paste\"");
	ck_assert_uint_eq(plan_now()->item_count, 2);
	ck_assert(plan_now()->possible);
	ck_assert_int_eq(plan_now()->planned, 1);
	ck_assert_int_eq(plan_now()->items[0].state, ITEM_PLANNED);
	ck_assert_int_eq(plan_now()->items[0].jars, plan_now()->input->batches[0].jars);
	ck_assert_int_eq(plan_now()->items[1].state, ITEM_LEFT_OUT);
	ck_assert_int_eq(plan_now()->input->batch_count, 1);
}
END_TEST

START_TEST(a_pot_too_small_is_told_by_name)
{
	struct log_station pot = kk_canner(&kit, DEEP_POT)->station;

	pot.volume_ul = pk_ul("4 qt");
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &pot, &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "batch \"crushed tomatoes\" jar=quart", 0, &kit.fault));
	says_no("No pot here is large enough for crushed tomatoes");
}
END_TEST

/* --- practice ----------------------------------------------------------------------------------------- */

START_TEST(a_rehearsal_takes_the_plan_along_and_begins_at_its_hour)
{
	char path[400];
	struct new_log_order order = { .path = path, .copy_from = kit.path, .practice_speed = 60 };
	struct day *day;
	size_t count;
	int64_t begins;

	line("helper RW from=9:30");
	line("break 12:00 12:45");
	line("day 8:00");
	line("juice \"grape\" \"1 gal\" chilled");
	line("run grapes \"12 lb\"");
	line("batch \"grape jelly\" times=2");
	(void)snprintf(path, sizeof(path), "%s.scratch", kit.path);
	KK_OK(&kit, new_log_make(&order, &kit.fault));
	KK_OK(&kit, day_open(path, LOG_WRITE, &day, &kit.fault));
	(void)kitchen_helpers(day_kitchen(day), &count);
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(kitchen_breaks(day_kitchen(day), &count)->end_minutes, 765);
	ck_assert_int_eq(kitchen_plan_house(day_kitchen(day))->burners, 5);
	(void)kitchen_plan_batches(day_kitchen(day), &count);
	ck_assert_uint_eq(count, 2);
	(void)kitchen_plan_runs(day_kitchen(day), &count);
	ck_assert_uint_eq(count, 1);
	ck_assert_int_gt(kitchen_board(day_kitchen(day))->juice_ul, 0);
	begins = kitchen_now(day_kitchen(day)).wall_ms;
	ck_assert_int_eq(clock_day_start(begins) + 8 * HOUR_MS, begins - (begins % HOUR_MS));
	day_close(day);
	(void)remove(path);
}
END_TEST

#define THREE_POUNDS_MG 1360777

static int64_t on_shelf(const struct kitchen *kitchen, enum supply_kind kind, const char *size)
{
	struct log_supply *rows;
	int64_t stock = -1;
	size_t count;

	KK_OK(&kit, kitchen_supplies(kitchen, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (rows[i].kind == kind && strcmp(rows[i].size, size) == 0)
			stock = rows[i].stock;
	free(rows);
	return stock;
}

START_TEST(a_rehearsal_has_the_shelf_of_the_day_and_what_is_short_on_it)
{
	char path[400];
	struct new_log_order order = { .path = path, .copy_from = kit.path, .practice_speed = 60 };
	struct day *day;

	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_SUGAR, "", THREE_POUNDS_MG, &kit.fault));
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_LEMON_JUICE, "", 0, &kit.fault));
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, SUPPLY_JAR, "pint", 5, &kit.fault));
	(void)snprintf(path, sizeof(path), "%s.scratch", kit.path);
	KK_OK(&kit, new_log_make(&order, &kit.fault));
	KK_OK(&kit, day_open(path, LOG_LOOK, &day, &kit.fault));
	ck_assert_int_eq(on_shelf(day_kitchen(day), SUPPLY_SUGAR, ""), THREE_POUNDS_MG);
	ck_assert_int_eq(on_shelf(day_kitchen(day), SUPPLY_LEMON_JUICE, ""), 0);
	ck_assert_int_eq(on_shelf(day_kitchen(day), SUPPLY_JAR, "pint"), 5);
	ck_assert_int_eq(on_shelf(day_kitchen(day), SUPPLY_VINEGAR, ""), on_shelf(kit.kitchen, SUPPLY_VINEGAR, ""));
	day_close(day);
	(void)remove(path);
}
END_TEST

/* --- accepted ---------------------------------------------------------------------------------------- */

static void plan_two(void)
{
	line("juice \"grape\" \"1 gal\" chilled");
	line("batch \"grape jelly\" times=2");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
}

START_TEST(an_accepted_plan_is_what_the_day_is_measured_by)
{
	const struct kitchen_plan *plan;
	int64_t finish;

	plan_two();
	plan = plan_now();
	ck_assert_int_eq(plan->state, PLAN_ACCEPTED);
	ck_assert_int_eq(plan->late_ms, 0);
	ck_assert_uint_gt(plan->block_count, 2);
	ck_assert_int_ne(plan->items[0].accepted_end_ms, 0);
	finish = plan->accepted_finish_ms;
	kk_pass(&kit, 20 * MINUTE_MS); /* nobody begins */
	plan = plan_now();
	ck_assert_int_eq(plan->accepted_finish_ms, finish);
	ck_assert_int_ge(plan->late_ms, 19 * MINUTE_MS);
	ck_assert_int_le(plan->late_ms, 21 * MINUTE_MS);
	ck_assert_int_ge(plan->stations[TALL_JUICER - 1].late_ms, 0);
	/* Undone, it is a draft again. */
	undo_house();
	ck_assert_int_eq(plan_now()->state, PLAN_DRAFT);
	ck_assert_uint_eq(plan_now()->block_count, 0);
}
END_TEST

START_TEST(the_plan_is_kept_until_an_act_or_a_minute_too_late)
{
	uint64_t version;

	plan_two();
	version = plan_now()->version;
	ck_assert_uint_eq(plan_now()->version, version);
	kk_pass(&kit, 59 * SECOND_MS);
	ck_assert_uint_eq(plan_now()->version, version);
	kk_pass(&kit, 2 * SECOND_MS);
	ck_assert_uint_gt(plan_now()->version, version);
	version = plan_now()->version;
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	ck_assert_uint_gt(plan_now()->version, version);
}
END_TEST

/* The first accepted piece of work of the canner. */
static struct plan_block first_block(int digit)
{
	const struct kitchen_plan *plan = plan_now();

	for (size_t i = 0; i < plan->block_count; i++)
		if (plan->blocks[i].row.station_id == kk_station(&kit, digit))
			return plan->blocks[i];
	ck_abort_msg("nothing was planned there");
}

START_TEST(a_load_takes_the_first_block_of_its_canner)
{
	const struct kitchen_plan *plan;
	int64_t batch_id;
	int64_t load_id;
	struct pick pick;

	plan_two();
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", 8, 0);
	pick = pk_pick(batch_id, "half_pint", 8);
	ck_assert_int_eq(first_block(BIG_KETTLE).work_id, 0);
	ck_assert_int_gt(first_block(BIG_KETTLE).row.jars, 0);
	load_id = pk_load(&kit, BIG_KETTLE, &pick, 1);
	ck_assert_int_eq(first_block(BIG_KETTLE).work_id, load_id);
	plan = plan_now();
	for (size_t i = 0; i < plan->station_count; i++)
		if (plan->stations[i].digit == BIG_KETTLE)
			ck_assert_int_eq(plan->stations[i].accepted_ms, first_block(BIG_KETTLE).row.end_wall_ms);
	/* Accepting anew does not stand in the way of taking the load back. */
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	ck_assert(pk_undo(&kit, SUBJECT_LOAD, load_id));
}
END_TEST

START_TEST(a_dropped_plan_comes_back_by_undo)
{
	char *before;

	plan_two();
	before = pk_rows(&kit);
	KK_OK(&kit, kitchen_plan_drop(kit.kitchen, &kit.fault));
	ck_assert_int_eq(plan_now()->state, PLAN_EMPTY);
	undo_house();
	pk_same_rows(&kit, before);
	ck_assert_int_eq(plan_now()->state, PLAN_ACCEPTED);
}
END_TEST

START_TEST(a_day_ends_when_all_is_out_and_the_next_plan_clears_it)
{
	plan_two();
	KK_REFUSED(&kit, FAULT_CONFIRM, kitchen_plan_finish(kit.kitchen, false, &kit.fault));
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_finish(kit.kitchen, true, &kit.fault));
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_finish(kit.kitchen, true, &kit.fault));
	undo_house();
	ck_assert_int_eq(plan_now()->state, PLAN_DRAFT);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_finish(kit.kitchen, true, &kit.fault));
}
END_TEST

START_TEST(an_early_end_is_asked_about_and_the_next_plan_begins_anew)
{
	plan_two();
	KK_OK(&kit, kitchen_plan_finish(kit.kitchen, true, &kit.fault));
	ck_assert_int_eq(plan_now()->state, PLAN_OVER);
	line("batch \"strawberry jam\"");
	ck_assert_uint_eq(rows(), 1);
	ck_assert_int_eq(plan_now()->state, PLAN_DRAFT);
	undo_house();
	ck_assert_uint_eq(rows(), 2);
	ck_assert_int_eq(plan_now()->state, PLAN_OVER);
}
END_TEST

/* Not one helper or station is sent to what was planned and not begun. */
static void nobody_is_called(void)
{
	const struct kitchen_plan *plan = plan_now();
	struct moment now = kitchen_now(kit.kitchen);
	struct plan_next next[PLAN_STATIONS_MAX + PLAN_PEOPLE_MAX];
	size_t count = plan_next_people(plan, kitchen_board(kit.kitchen), &now, next);

	count += plan_next_stations(plan, kitchen_board(kit.kitchen), &now, next + count);
	ck_assert_uint_gt(count, 2);
	for (size_t i = 0; i < count; i++)
		ck_assert_msg(next[i].nothing && !next[i].now, "%s is sent: %s", next[i].who, next[i].words);
	ck_assert_int_eq(plan->planned, 0);
}

START_TEST(nothing_of_a_finished_day_is_called_for)
{
	plan_two();
	line("run grapes \"12 lb\" times=2");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	KK_OK(&kit, kitchen_plan_finish(kit.kitchen, true, &kit.fault));
	nobody_is_called();
	for (size_t i = 0; i < plan_now()->item_count; i++)
		ck_assert_int_eq(plan_now()->items[i].state, ITEM_NOT_BEGUN);
	kk_pass(&kit, 3 * HOUR_MS);
	nobody_is_called();
	ck_assert_int_ne(plan_now()->finish_ms, 0);
}
END_TEST

START_TEST(a_plan_for_tomorrow_begins_tomorrow)
{
	line("juice \"grape\" \"1 gal\" chilled");
	line("batch \"grape jelly\"");
	line("day 8:00 2026-09-15");
	ck_assert_int_eq(plan_now()->start_ms, KK_MORNING_MS + 23 * HOUR_MS);
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	ck_assert_int_eq(plan_now()->late_ms, 0);
	kk_pass(&kit, 23 * HOUR_MS);
	ck_assert_int_eq(plan_now()->late_ms, 0);
	line("day 8:00"); /* today again: it has been 8:00 */
	ck_assert_int_eq(plan_now()->start_ms, KK_MORNING_MS + 23 * HOUR_MS);
}
END_TEST

/* --- planning times -------------------------------------------------------------------------------------- */

static struct plan_time time_of(enum station_kind kind, enum phase_name name)
{
	struct plan_time time;

	for (size_t n = 0; kitchen_plan_time(kit.kitchen, n, &time); n++)
		if (time.kind == kind && time.rule->name == name)
			return time;
	ck_abort_msg("no such planning time");
}

START_TEST(own_means_take_over_from_the_fifth_phase_on)
{
	struct plan_time time = time_of(STATION_BOILING_WATER, PHASE_COME_UP);

	ck_assert_int_eq(time.seconds, 25 * 60); /* 20 to 30 min: A539 Guide 1 */
	ck_assert(!time.is_own);
	for (int i = 0; i < PLAN_OWN_MIN; i++) {
		int64_t load = kk_start(&kit, i % 2 == 0 ? BIG_KETTLE : LOW_KETTLE, 5);

		ck_assert(!time_of(STATION_BOILING_WATER, PHASE_COME_UP).is_own);
		kk_pass(&kit, MINUTE_MS);
		kk_step(&kit, load);
		kk_pass(&kit, 33 * MINUTE_MS);
		kk_step(&kit, load);
		kk_to(&kit, load, PHASE_COOLING);
	}
	time = time_of(STATION_BOILING_WATER, PHASE_COME_UP);
	ck_assert(time.is_own);
	ck_assert_int_eq(time.own_count, 5);
	ck_assert_int_eq(time.seconds, 33 * 60);
	ck_assert_int_eq(time.table_seconds, 25 * 60);
	ck_assert_int_eq(time_of(STATION_STEAM, PHASE_VENT).own_count, 0);
}
END_TEST

START_TEST(process_times_are_those_of_the_tables)
{
	const struct kitchen_plan *plan;
	struct process process;
	struct process_query query = { .food = "jam or jelly with added pectin",
		                       .method = METHOD_BOILING_WATER,
		                       .jar = "half_pint",
		                       .pressure_psi = NO_PRESSURE };

	line("batch \"strawberry jam\"");
	plan = plan_now();
	query.pack = batch_at(0)->pack;
	query.elevation = kitchen_board(kit.kitchen)->house.elevation;
	KK_OK(&kit, process_find(&query, &process, &kit.fault));
	for (int i = 0; i < plan->input->station_count; i++)
		if (plan->station_ids[i] == kk_station(&kit, BIG_KETTLE))
			ck_assert_int_eq(plan->input->families[0].at[i].hold.length_s, process.minutes * 60);
}
END_TEST

/* --- warnings ------------------------------------------------------------------------------------------------ */

START_TEST(supplies_are_needed_for_what_is_planned)
{
	line("supply band 12");
	ck_assert_ptr_null(kk_warned(&kit, "jars-short", 0));
	line("batch \"strawberry jam\" times=4"); /* 4 x 7 cups of sugar, 9 half-pints */
	ck_assert_ptr_null(kk_warned(&kit, "jars-short", 0));
	ck_assert_ptr_nonnull(kk_warned(&kit, "supply-short", 0)); /* bands */
	line("batch \"strawberry jam\" times=4");
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-short", 0)); /* 72 of 60 */
	ck_assert_ptr_nonnull(kk_warned(&kit, "sugar-short", 0));
	ck_assert_ptr_null(kk_warned(&kit, "lids-short", 0)); /* 108 */
	line("batch \"strawberry jam\" times=5");
	ck_assert_ptr_nonnull(kk_warned(&kit, "lids-short", 0));
	KK_OK(&kit, kitchen_plan_drop(kit.kitchen, &kit.fault));
	ck_assert_ptr_null(kk_warned(&kit, "jars-short", 0));
	ck_assert_ptr_null(kk_warned(&kit, "lids-short", 0));
}
END_TEST

START_TEST(acid_for_planned_jars_is_counted)
{
	line("supply citric_acid \"1 oz\"");
	line("batch \"crushed tomatoes\" jar=quart");
	ck_assert_ptr_null(kk_warned(&kit, "acid-short", 0)); /* 7 x 2 tbsp of 1 qt */
	line("batch \"crushed tomatoes\" jar=quart times=4");
	ck_assert_ptr_nonnull(kk_warned(&kit, "acid-short", 0));
}
END_TEST

START_TEST(a_day_far_behind_is_warned_of)
{
	const struct warning *warning;

	plan_two();
	kk_pass(&kit, 29 * MINUTE_MS);
	ck_assert_ptr_null(kk_warned(&kit, "plan-behind", 0));
	kk_pass(&kit, 3 * MINUTE_MS);
	warning = kk_warned(&kit, "plan-behind", 0);
	ck_assert_ptr_nonnull(warning);
	ck_assert_ptr_nonnull(strstr(warning->sentence, "later than accepted"));
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	ck_assert_ptr_null(kk_warned(&kit, "plan-behind", 0));
}
END_TEST

static const char *behind(const struct warning *rows, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].id, "plan-behind") == 0)
			return rows[i].sentence;
	return "";
}

/* A screen is answered with a repaired plan first, whose finish is often later. */
START_TEST(the_finish_warned_of_is_that_of_the_better_plan_once_it_is_found)
{
	struct warning asked[WARNINGS_MAX] = { 0 };
	const struct warning *rows;
	size_t count;
	int better = 0;

	line("plan late=1");
	line("run grapes \"12 lb\" times=4");
	line("batch \"grape jelly\" times=8");
	KK_OK(&kit, kitchen_plan_accept(kit.kitchen, &kit.fault));
	kitchen_plan_in_slices(kit.kitchen, true);
	for (int i = 0; i < 4; i++) {
		static const char *const comes[] = { "helper AL", "helper AN", "helper BO", "helper CY" };
		struct moment now;
		char first[WARNING_SENTENCE_MAX];

		kk_pass(&kit, 10 * MINUTE_MS); /* nobody begins */
		line(comes[i]);
		now = kitchen_now(kit.kitchen);
		rows = kitchen_warned(kit.kitchen, &now, &count);
		text_copy(first, sizeof(first), behind(rows, count));
		while (kitchen_plan_searching(kit.kitchen))
			kitchen_plan_search(kit.kitchen);
		rows = kitchen_warned(kit.kitchen, &now, &count);
		better += strcmp(first, behind(rows, count)) != 0;
		ck_assert_str_eq(behind(rows, count), behind(asked, kitchen_warnings(kit.kitchen, &now, asked, NULL)));
	}
	ck_assert_int_gt(better, 0);
}
END_TEST

/* --- what next -------------------------------------------------------------------------------------------------- */

static size_t people(struct plan_next out[PLAN_PEOPLE_MAX])
{
	struct moment now = kitchen_now(kit.kitchen);

	return plan_next_people(plan_now(), kitchen_board(kit.kitchen), &now, out);
}

START_TEST(nobody_is_late_for_a_meal_that_goes_on)
{
	struct plan_next next[PLAN_PEOPLE_MAX];
	size_t meals = 0;
	size_t count;

	line("break 08:00 23:00");
	plan_two();
	kk_pass(&kit, 30 * MINUTE_MS);
	count = people(next);
	for (size_t i = 0; i < count; i++)
		if (strcmp(next[i].words, "Break") == 0) {
			ck_assert(next[i].now);
			ck_assert_int_eq(next[i].late_ms, 0);
			meals++;
		}
	ck_assert_uint_gt(meals, 0);
}
END_TEST

START_TEST(each_helper_has_one_thing_to_do_now_or_next)
{
	struct plan_next next[PLAN_PEOPLE_MAX];
	char both[400];

	plan_two();
	ck_assert_uint_eq(people(next), 2);
	for (int i = 0; i < 2; i++) {
		ck_assert(next[i].now);
		ck_assert_ptr_nonnull(strstr(next[i].words, "to the boil: grape jelly"));
	}
	ck_assert_int_ne(next[0].digit, next[1].digit);
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, WIDE_POT), "JO", &kit.fault));
	ck_assert_uint_eq(people(next), 2);
	/* Whoever has the station plays its part: in the words of the phase. */
	ck_assert_str_eq(next[1].who, "JO");
	ck_assert_int_eq(next[1].digit, WIDE_POT);
	ck_assert_ptr_nonnull(strstr(next[1].words, "Stir to a full rolling boil"));
	ck_assert_int_eq(next[0].digit, DEEP_POT);
	(void)snprintf(both, sizeof(both), "%s", next[0].words);
	ck_assert_ptr_nonnull(strstr(both, "Deep pot to the boil"));
}
END_TEST

START_TEST(an_alarm_goes_to_whoever_has_the_station_or_is_free)
{
	struct plan_next next[PLAN_PEOPLE_MAX];
	int64_t load = kk_start(&kit, BIG_KETTLE, 5);

	kk_to(&kit, load, PHASE_HOLD);
	kk_pass(&kit, 40 * MINUTE_MS);
	ck_assert_uint_eq(people(next), 2);
	ck_assert(next[0].ringing);
	ck_assert_ptr_nonnull(strstr(next[0].words, "Heat OFF"));
	ck_assert(next[1].nothing || !next[1].now);
	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, BIG_KETTLE), "JO", &kit.fault));
	ck_assert_uint_eq(people(next), 2);
	ck_assert(!next[0].ringing);
	ck_assert(next[1].ringing);
	ck_assert(next[1].now);
}
END_TEST

START_TEST(stations_say_what_is_there_and_what_comes)
{
	struct plan_next next[PLAN_STATIONS_MAX];
	struct moment now;
	size_t count;
	int64_t load;

	plan_two();
	load = kk_start(&kit, DIAL_CANNER, 5);
	kk_to(&kit, load, PHASE_COME_UP);
	now = kitchen_now(kit.kitchen);
	count = plan_next_stations(plan_now(), kitchen_board(kit.kitchen), &now, next);
	ck_assert_uint_eq(count, 9);
	for (size_t i = 0; i < count; i++) {
		if (next[i].digit == DIAL_CANNER) {
			ck_assert(!next[i].now);
			ck_assert_ptr_nonnull(strstr(next[i].words, "steady steam"));
			ck_assert_int_gt(next[i].at_ms, now.wall_ms);
		}
		if (next[i].digit == OLD_JUICER)
			ck_assert(next[i].nothing);
		if (next[i].digit == BIG_KETTLE) {
			ck_assert(!next[i].now);
			ck_assert_ptr_nonnull(strstr(next[i].words, "Load Big kettle: "));
		}
	}
}
END_TEST

START_TEST(one_more_of_something_is_worked_out_once)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct plan_what_if answer;

	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_plan_what_if(kit.kitchen, &now, PLAN_MORE_POT, &answer, &kit.fault));
	plan_two();
	for (int extra = 0; extra < PLAN_EXTRA_COUNT; extra++) {
		KK_OK(&kit, kitchen_plan_what_if(kit.kitchen, &now, (enum plan_extra)extra, &answer, &kit.fault));
		ck_assert_int_ge(answer.saves_s, 0);
	}
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_plan_what_if(kit.kitchen, &now, PLAN_EXTRA_COUNT, &answer, &kit.fault));
}
END_TEST

START_TEST(every_task_has_a_letter_of_its_own)
{
	for (int a = 0; a < PLAN_TASK_KIND_COUNT; a++)
		for (int b = 0; b < a; b++)
			ck_assert_int_ne(plan_task_letter((enum plan_task_kind)a),
			                 plan_task_letter((enum plan_task_kind)b));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("plan", .begin = begin, .end = end, .seconds = 30),
	TEST(times_of_day_are_read_and_written),
	TEST(the_house_is_set_by_lines_and_taken_back),
	TEST(lines_that_cannot_be_are_refused_with_a_sentence),
	TEST(own_heat_is_a_word_of_a_station_line),
	TEST(a_day_that_cannot_be_gets_a_sentence),
	TEST(runs_alone_are_a_plan_that_says_their_juice_has_no_batch),
	TEST(a_run_that_goes_on_leaves_nothing_to_be_started),
	TEST(without_an_elevation_no_process_is_known),
	TEST(wishes_become_runs_by_the_charge_and_batches_by_the_forecast),
	TEST(rows_are_changed_and_taken_out_until_they_are_begun),
	TEST(starting_work_takes_the_next_row_that_fits_and_undo_gives_it_back),
	TEST(a_batch_takes_the_row_of_its_jar_first),
	TEST(batches_wait_for_the_runs_that_give_their_juice),
	TEST(what_no_canner_takes_is_left_out_and_said),
	TEST(a_pot_too_small_is_told_by_name),
	TEST(a_rehearsal_takes_the_plan_along_and_begins_at_its_hour),
	TEST(a_rehearsal_has_the_shelf_of_the_day_and_what_is_short_on_it),
	TEST(an_accepted_plan_is_what_the_day_is_measured_by),
	TEST(the_plan_is_kept_until_an_act_or_a_minute_too_late),
	TEST(a_load_takes_the_first_block_of_its_canner),
	TEST(a_dropped_plan_comes_back_by_undo),
	TEST(a_day_ends_when_all_is_out_and_the_next_plan_clears_it),
	TEST(an_early_end_is_asked_about_and_the_next_plan_begins_anew),
	TEST(nothing_of_a_finished_day_is_called_for),
	TEST(a_plan_for_tomorrow_begins_tomorrow),
	TEST(own_means_take_over_from_the_fifth_phase_on),
	TEST(process_times_are_those_of_the_tables),
	TEST(supplies_are_needed_for_what_is_planned),
	TEST(acid_for_planned_jars_is_counted),
	TEST(a_day_far_behind_is_warned_of),
	TEST(the_finish_warned_of_is_that_of_the_better_plan_once_it_is_found),
	TEST(nobody_is_late_for_a_meal_that_goes_on),
	TEST(each_helper_has_one_thing_to_do_now_or_next),
	TEST(an_alarm_goes_to_whoever_has_the_station_or_is_free),
	TEST(stations_say_what_is_there_and_what_comes),
	TEST(one_more_of_something_is_worked_out_once),
	TEST(every_task_has_a_letter_of_its_own),
};

KK_TESTS("the day plan", listed)
