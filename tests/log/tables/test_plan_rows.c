/*
 * The rows of the day plan come back as they were put, the schema refuses what
 * cannot be, undo takes them back; and how long phases last is summed by triggers:
 * after any acts and undos the sums are those of a recount.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/plan.h"
#include "log/tables/pot.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

/* Written without the triggers' own SQL. */
static const char recount[] =
    "WITH meant AS (SELECT CASE WHEN run.id IS NOT NULL THEN 'juicer' WHEN batch.id IS NOT NULL "
    " THEN 'pot' ELSE load.method END AS kind, phase.name, count(*), sum(lasted_ms) FROM phase "
    " LEFT JOIN load ON load.id = work_id LEFT JOIN run ON run.id = work_id LEFT JOIN batch ON batch.id = work_id WHERE required_ms = 0 AND ended_why = 'done' AND "
    " lasted_ms >= 0 AND lasted_ms <= 3 * 3600 * 1000 GROUP BY 1, 2) ";

static void sums_are_right(void)
{
	char sql[900];
	(void)snprintf(sql, sizeof(sql),
	               "%s SELECT count(*) FROM (SELECT * FROM meant EXCEPT SELECT * FROM phase_mean)", recount);
	ck_assert_int_eq(kit_number(kit.path, sql), 0);
	(void)snprintf(sql, sizeof(sql),
	               "%s SELECT count(*) FROM (SELECT * FROM phase_mean EXCEPT SELECT * FROM meant)", recount);
	ck_assert_int_eq(kit_number(kit.path, sql), 0);
}

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	sums_are_right();
	ck_assert(kit_whole(kit.path));
	kit_clear(&kit);
}

static int64_t commit(const char *sentence)
{
	struct log_entry entry = kit_entry(sentence, 0, 0);
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	return entry.id;
}

static void undo(int64_t id)
{
	struct log_entry entry = kit_entry("undone", 0, 0);
	KIT_OK(&kit, log_undo(kit.log, id, &entry, &kit.fault));
}

START_TEST(settings_come_back_as_put)
{
	struct log_plan_house house;
	KIT_OK(&kit, log_plan_house_get(kit.log, &house, &kit.fault));
	ck_assert_int_eq(house.burners, 4);
	ck_assert_int_eq(house.cooling_jars, COOLING_NO_LIMIT);
	ck_assert_int_eq(house.charge_mg, 5443108); /* 12 lb */
	ck_assert_int_eq(house.late_minutes, 30);
	ck_assert(!house.meals_in_turns);
	house = (struct log_plan_house){ 2, 1, 90, 45, 8000000, 20, true };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_plan_house(kit.log, &house, &kit.fault));
	int64_t act = commit("settings");
	struct log_plan_house read;
	KIT_OK(&kit, log_plan_house_get(kit.log, &read, &kit.fault));
	ck_assert_mem_eq(&read, &house, sizeof(read));
	undo(act);
	KIT_OK(&kit, log_plan_house_get(kit.log, &read, &kit.fault));
	ck_assert_int_eq(read.burners, 4);
	ck_assert_int_eq(read.cooling_jars, COOLING_NO_LIMIT);
}
END_TEST

START_TEST(rows_come_back_as_put_and_go_by_undo)
{
	char *before = kit_dump(kit.path, false);
	struct log_helper helper = { .initials = "MK", .from_minutes = -1 };
	struct log_plan_break rest = { .start_minutes = 720, .end_minutes = 765 };
	struct log_plan_run run = { .fruit = "grapes", .fruit_mg = 5443108, .ready_minutes = 510 };
	struct log_plan_batch batch = { .recipe = "grape jelly",
		                        .pack = "hot",
		                        .jar = "half_pint",
		                        .multiple = 1,
		                        .ready_minutes = -1,
		                        .after_runs = PLAN_RUNS_AS_NEEDED };
	struct log_plan_block block = { .station_id = 1, .jars = 9, .start_wall_ms = 1000, .end_wall_ms = 2000 };
	struct log_plan plan = {
		.day_wall_ms = 5, .start_minutes = 480, .accepted_wall_ms = 6, .accepted_finish_wall_ms = 7
	};
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_helper(kit.log, &helper, &kit.fault));
	KIT_OK(&kit, log_put_plan_break(kit.log, &rest, &kit.fault));
	KIT_OK(&kit, log_put_plan_run(kit.log, &run, &kit.fault));
	KIT_OK(&kit, log_put_plan_batch(kit.log, &batch, &kit.fault));
	KIT_OK(&kit, log_put_plan_block(kit.log, &block, &kit.fault));
	KIT_OK(&kit, log_put_plan(kit.log, &plan, &kit.fault));
	int64_t act = commit("rows");

	size_t count;
	struct log_helper *helpers;
	KIT_OK(&kit, log_helpers(kit.log, &helpers, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_str_eq(helpers[0].initials, "MK");
	ck_assert_int_eq(helpers[0].from_minutes, -1);
	free(helpers);
	struct log_plan_break *breaks;
	KIT_OK(&kit, log_plan_breaks(kit.log, &breaks, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(breaks[0].end_minutes, 765);
	free(breaks);
	struct log_plan_run *runs;
	KIT_OK(&kit, log_plan_runs(kit.log, &runs, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_mem_eq(&runs[0], &run, sizeof(run));
	free(runs);
	struct log_plan_batch *batches;
	KIT_OK(&kit, log_plan_batches(kit.log, &batches, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_mem_eq(&batches[0], &batch, sizeof(batch));
	free(batches);
	struct log_plan_block *blocks;
	KIT_OK(&kit, log_plan_blocks(kit.log, &blocks, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_mem_eq(&blocks[0], &block, sizeof(block));
	free(blocks);
	struct log_plan read;
	KIT_OK(&kit, log_plan_get(kit.log, &read, &kit.fault));
	ck_assert_mem_eq(&read, &plan, sizeof(plan));

	undo(act);
	char *after = kit_dump(kit.path, false);
	ck_assert_str_eq(after, before);
	free(before);
	free(after);
}
END_TEST

START_TEST(clearing_the_plan_is_taken_back_row_by_row)
{
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	for (int i = 0; i < 5; i++) {
		struct log_plan_run run = { .fruit = "plums", .fruit_mg = 1000 + i, .ready_minutes = -1 };
		struct log_plan_block block = { .station_id = 1, .start_wall_ms = i, .end_wall_ms = i + 1 };
		KIT_OK(&kit, log_put_plan_run(kit.log, &run, &kit.fault));
		KIT_OK(&kit, log_put_plan_block(kit.log, &block, &kit.fault));
	}
	(void)commit("rows");
	char *before = kit_dump(kit.path, false);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_clear_plan_blocks(kit.log, &kit.fault));
	KIT_OK(&kit, log_clear_plan_rows(kit.log, &kit.fault));
	int64_t act = commit("cleared");
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM plan_run"), 0);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM plan_block"), 0);
	undo(act);
	char *after = kit_dump(kit.path, false);
	ck_assert_str_eq(after, before);
	free(before);
	free(after);
}
END_TEST

static void refused(bool done)
{
	ck_assert(!done);
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
}

START_TEST(the_schema_refuses_what_cannot_be)
{
	struct log_plan_house house = { .burners = 21, .cooling_jars = -1, .charge_mg = 1, .late_minutes = 1 };
	struct log_plan_break rest = { .start_minutes = 700, .end_minutes = 700 };
	struct log_plan_run run = { .fruit = "grapes", .ready_minutes = -1 };
	struct log_helper nobody = { .from_minutes = -1 };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	refused(log_put_plan_house(kit.log, &house, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	refused(log_put_plan_break(kit.log, &rest, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	refused(log_put_plan_run(kit.log, &run, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	refused(log_put_helper(kit.log, &nobody, &kit.fault));
	/* Outside an act nothing is written. */
	ck_assert(!log_put_plan_house(kit.log, &house, &kit.fault));
	ck_assert(!log_remove_helper(kit.log, 1, &kit.fault));
	ck_assert(!log_clear_plan_rows(kit.log, &kit.fault));
}
END_TEST

/* --- lengths of phases -------------------------------------------------------------------- */

static int64_t put_phase(int64_t load_id, const char *name, int64_t required_ms, int64_t lasted_ms, enum phase_end why,
                         int64_t *act)
{
	struct log_phase phase = { .work_id = load_id,
		                   .required_ms = required_ms,
		                   .ended_wall_ms = KIT_MORNING_MS,
		                   .ended_why = why,
		                   .lasted_ms = lasted_ms };
	phase.began.wall_ms = KIT_MORNING_MS;
	ck_assert(text_copy(phase.name, sizeof(phase.name), name));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_phase(kit.log, &phase, &kit.fault));
	*act = commit(name);
	return phase.id;
}

static struct log_phase_mean mean_of(const char *name)
{
	struct log_phase_mean out = { 0 };
	struct log_phase_mean *rows;
	size_t count;
	KIT_OK(&kit, log_phase_means(kit.log, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].name, name) == 0)
			out = rows[i];
	free(rows);
	return out;
}

START_TEST(phases_without_a_clock_are_summed_and_undone)
{
	struct log_entry entry = kit_entry("load", 1, 0);
	int64_t act;
	int64_t second;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "L1", 2, &entry, &kit.fault));
	(void)put_phase(entry.work_id, "come_up", 0, 1500000, PHASE_DONE, &act);
	(void)put_phase(entry.work_id, "come_up", 0, 1300000, PHASE_DONE, &second);
	struct log_phase_mean mean = mean_of("come_up");
	ck_assert_int_eq(mean.kind, STATION_BOILING_WATER);
	ck_assert_int_eq(mean.count, 2);
	ck_assert_int_eq(mean.sum_ms, 2800000);
	sums_are_right();
	undo(second);
	ck_assert_int_eq(mean_of("come_up").sum_ms, 1500000);
	undo(act);
	ck_assert_int_eq(mean_of("come_up").count, 0);
}
END_TEST

static struct log_load load_of(int64_t id)
{
	struct log_load load;
	KIT_OK(&kit, log_load_get(kit.log, id, &load, &kit.fault));
	return load;
}

/* As an import writes them.  Whatever order a redo brings the rows back in, each phase counts
 * for what it is of. */
START_TEST(what_comes_back_with_its_phases_is_summed)
{
	struct log_entry entry = kit_entry("load", 1, 0);
	KIT_OK(&kit, kit_start_load(kit.log, 1, "L1", 2, &entry, &kit.fault));
	struct log_load load = load_of(entry.work_id);
	struct log_run run = {
		.station_id = 1, .fruit = "plums", .fruit_mg = 1, .water_every_ms = 1, .opened_wall_ms = 1
	};
	load.id = 0;
	load.place = PLACE_SHELF;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_load(kit.log, &load, &kit.fault));
	KIT_OK(&kit, log_put_run(kit.log, &run, &kit.fault));
	const int64_t works[] = { load.id, run.id };
	for (int i = 0; i < 2; i++) {
		struct log_phase phase = { .work_id = works[i],
			                   .name = "unload",
			                   .began.wall_ms = KIT_MORNING_MS,
			                   .ended_wall_ms = KIT_MORNING_MS,
			                   .ended_why = PHASE_DONE,
			                   .lasted_ms = 100000 };
		KIT_OK(&kit, log_put_phase(kit.log, &phase, &kit.fault));
	}
	int64_t both = commit("both");
	sums_are_right();
	undo(both);
	ck_assert_int_eq(mean_of("unload").count, 0);
	entry = kit_entry("again", 0, 0);
	KIT_OK(&kit, log_undo(kit.log, both + 1, &entry, &kit.fault));
	ck_assert_int_eq(load_of(load.id).place, PLACE_SHELF);
	ck_assert_int_eq(
	    kit_number(kit.path, "SELECT count(*) FROM phase_mean WHERE name = 'unload' AND sum_ms = 100000"), 2);
	sums_are_right();
}
END_TEST

START_TEST(clocks_stops_and_forgotten_phases_are_left_out)
{
	struct log_entry entry = kit_entry("load", 1, 0);
	int64_t act;
	KIT_OK(&kit, kit_start_load(kit.log, 1, "L1", 2, &entry, &kit.fault));
	(void)put_phase(entry.work_id, "hold", 600000, 600000, PHASE_DONE, &act);
	(void)put_phase(entry.work_id, "come_up", 0, 100000, PHASE_STOPPED, &act);
	(void)put_phase(entry.work_id, "unload", 0, PHASE_FORGOTTEN_MS + 1, PHASE_DONE, &act);
	ck_assert_int_eq(mean_of("hold").count, 0);
	ck_assert_int_eq(mean_of("come_up").count, 0);
	ck_assert_int_eq(mean_of("unload").count, 0);
	(void)put_phase(entry.work_id, "unload", 0, PHASE_FORGOTTEN_MS, PHASE_DONE, &act);
	ck_assert_int_eq(mean_of("unload").count, 1);
}
END_TEST

START_TEST(heat_of_its_own_is_taken_back)
{
	struct log_station station;
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	ck_assert(!station.own_heat);
	station.own_heat = true;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_station(kit.log, &station, &kit.fault));
	int64_t heat = commit("own heat");
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	ck_assert(station.own_heat);
	undo(heat);
	KIT_OK(&kit, log_station_get(kit.log, 1, &station, &kit.fault));
	ck_assert(!station.own_heat);
}
END_TEST

/* What was said comes in the place of what was said before, in its order, and is in no journal. */
START_TEST(what_was_said_comes_back_in_its_order_without_an_entry)
{
	static const struct log_plan_said said[] = {
		{ .batch_id = 7, .link = 255, .pick = 3, .wait_cap_s = 600 },
		{ .plan_run_id = 4, .late = 12, .wait_cap_s = 600 },
		{ .plan_batch_id = 9, .link = 1, .wait_cap_s = 600 },
		{ .run_id = 5, .wait_cap_s = 600 },
	};
	int64_t entries = kit_number(kit.path, "SELECT count(*) FROM journal");
	struct log_plan_said *rows;
	size_t count;

	for (size_t first = 0; first < 3; first += 2) { /* all of them, then fewer */
		KIT_OK(&kit, log_begin(kit.log, &kit.fault));
		KIT_OK(&kit, log_put_plan_said(kit.log, said + first, 4 - first, &kit.fault));
		KIT_OK(&kit, log_commit_unjournaled(kit.log, &kit.fault));
		KIT_OK(&kit, log_plan_said(kit.log, &rows, &count, &kit.fault));
		ck_assert_uint_eq(count, 4 - first);
		for (size_t i = 0; i < count; i++) {
			const struct log_plan_said *wanted = &said[first + i];

			ck_assert_int_eq(rows[i].plan_run_id, wanted->plan_run_id);
			ck_assert_int_eq(rows[i].plan_batch_id, wanted->plan_batch_id);
			ck_assert_int_eq(rows[i].run_id, wanted->run_id);
			ck_assert_int_eq(rows[i].batch_id, wanted->batch_id);
			ck_assert_int_eq(rows[i].link, wanted->link);
			ck_assert_int_eq(rows[i].pick, wanted->pick);
			ck_assert_int_eq(rows[i].late, wanted->late);
			ck_assert_int_eq(rows[i].wait_cap_s, wanted->wait_cap_s);
		}
		free(rows);
	}
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM journal"), entries);
}
END_TEST

START_TEST(without_a_limit_of_waiting_none_comes_back)
{
	struct log_plan_said row = { .run_id = 5, .wait_cap_s = -1 };
	struct log_plan_said *rows;
	size_t count;

	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_plan_said(kit.log, &row, 1, &kit.fault));
	KIT_OK(&kit, log_commit_unjournaled(kit.log, &kit.fault));
	ck_assert_int_eq(kit_number(kit.path, "SELECT wait_cap_s IS NULL FROM plan_said"), 1);
	KIT_OK(&kit, log_plan_said(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(rows[0].wait_cap_s, -1);
	free(rows);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("rows", .begin = begin, .end = end),
	TEST(settings_come_back_as_put),
	TEST(rows_come_back_as_put_and_go_by_undo),
	TEST(clearing_the_plan_is_taken_back_row_by_row),
	TEST(the_schema_refuses_what_cannot_be),
	TEST(what_was_said_comes_back_in_its_order_without_an_entry),
	TEST(without_a_limit_of_waiting_none_comes_back),
	TEST(phases_without_a_clock_are_summed_and_undone),
	TEST(what_comes_back_with_its_phases_is_summed),
	TEST(clocks_stops_and_forgotten_phases_are_left_out),
	TEST(heat_of_its_own_is_taken_back),
};

TESTS("rows of the day plan", listed)
