/*
 * What each fruit has yielded is kept by triggers: after any acts, undos and
 * redos the sums are those of a recount; an older log gets them when it is
 * brought up to date.  Also here: in what amounts one buys, and who moved a supply.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;
static int64_t juicer_id;

static void begin(void)
{
	struct log_entry entry = kit_entry("Set up", 0, 0);
	kit_start(&kit);
	KIT_OK(&kit, kit_put_station(kit.log, 3, STATION_JUICER, &entry, &kit.fault));
	juicer_id = entry.station_id;
}

/* The recount is written without the triggers' own SQL: each run by itself. */
static const char recount[] =
    "WITH one AS (SELECT lower(trim(fruit)) AS fruit, fruit_mg, "
    " (SELECT coalesce(sum(made_ul), 0) FROM juice WHERE juice.run_id = run.id) AS ul "
    " FROM run WHERE (SELECT NOT at_station FROM work WHERE work.id = run.id)), "
    "counted AS (SELECT fruit, fruit_mg, ul, (ul * 1000000 - ul * 1000000 % fruit_mg) / fruit_mg AS y "
    " FROM one WHERE ul > 0 AND ul <= fruit_mg * 2), "
    "meant AS (SELECT fruit, count(*), sum(fruit_mg), sum(ul), sum(y), sum(y * y) FROM counted GROUP BY fruit) ";

static void sums_are_right(void)
{
	char sql[1200];
	(void)snprintf(sql, sizeof(sql),
	               "%s SELECT count(*) FROM (SELECT * FROM meant EXCEPT SELECT * FROM fruit_yield)", recount);
	ck_assert_int_eq(kit_number(kit.path, sql), 0);
	(void)snprintf(sql, sizeof(sql),
	               "%s SELECT count(*) FROM (SELECT * FROM fruit_yield EXCEPT SELECT * FROM meant)", recount);
	ck_assert_int_eq(kit_number(kit.path, sql), 0);
	ck_assert(kit_whole(kit.path));
}

static void end(void)
{
	sums_are_right();
	kit_clear(&kit);
}

/* --- acts ------------------------------------------------------------------------------ */

static int64_t commit(const char *sentence, int64_t run_id)
{
	struct log_entry entry = kit_entry(sentence, juicer_id, 0);
	entry.work_id = run_id;
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	return entry.id;
}

static int64_t put_run(const char *fruit, int64_t fruit_mg, int64_t ul, bool open, int64_t *run_id)
{
	struct log_run run = { .station_id = juicer_id,
		               .fruit_mg = fruit_mg,
		               .open = open,
		               .water_every_ms = 1,
		               .opened_wall_ms = KIT_MORNING_MS };
	struct log_juice juice = { .made_ul = ul };
	ck_assert(text_copy(run.fruit, sizeof(run.fruit), fruit));
	ck_assert(text_copy(juice.kind, sizeof(juice.kind), fruit));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_run(kit.log, &run, &kit.fault));
	juice.run_id = run.id;
	KIT_OK(&kit, log_put_juice(kit.log, &juice, &kit.fault));
	*run_id = run.id;
	return commit("run", run.id);
}

static void undo(int64_t entry_id)
{
	struct log_entry entry = kit_entry("undone", juicer_id, 0);
	KIT_OK(&kit, log_undo(kit.log, entry_id, &entry, &kit.fault));
}

static struct log_fruit_yield only_yield(void)
{
	struct log_fruit_yield *rows;
	struct log_fruit_yield out;
	size_t count;
	KIT_OK(&kit, log_fruit_yields(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	out = rows[0];
	free(rows);
	return out;
}

static size_t yields(void)
{
	struct log_fruit_yield *rows;
	size_t count;
	KIT_OK(&kit, log_fruit_yields(kit.log, &rows, &count, &kit.fault));
	free(rows);
	return count;
}

START_TEST(a_run_that_is_over_is_counted_and_an_open_one_is_not)
{
	int64_t run_id;
	(void)put_run("Grapes ", 6000000, 3000000, true, &run_id);
	ck_assert_uint_eq(yields(), 0);
	struct log_run run;
	KIT_OK(&kit, log_run_get(kit.log, run_id, &run, &kit.fault));
	run.open = false;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_run(kit.log, &run, &kit.fault));
	int64_t ended = commit("run done", run_id);
	struct log_fruit_yield yield = only_yield();
	ck_assert_str_eq(yield.fruit, "grapes");
	ck_assert_int_eq(yield.runs.runs, 1);
	ck_assert_int_eq(yield.runs.fruit_mg, 6000000);
	ck_assert_int_eq(yield.runs.juice_ul, 3000000);
	ck_assert_int_eq(yield.runs.yield_sum, 500000);
	ck_assert_int_eq(yield.runs.yield_square_sum, INT64_C(250000000000));
	undo(ended);
	ck_assert_uint_eq(yields(), 0);
}
END_TEST

START_TEST(slips_of_the_pen_are_left_out)
{
	int64_t run_id;
	(void)put_run("grapes", 1000, 2001, false, &run_id); /* over 2 L a kg */
	(void)put_run("grapes", 1000000, 0, false, &run_id); /* nothing measured */
	(void)put_run("grapes", INT64_MAX / 2, INT64_MAX / 4, false, &run_id);
	ck_assert_uint_eq(yields(), 0);
	(void)put_run("grapes", 1000, 2000, false, &run_id);
	ck_assert_int_eq(only_yield().runs.yield_sum, 2000000);
	/* The recount would run over on the large one: take it out of both. */
	kit_sql(kit.path, "UPDATE run SET fruit_mg = 1000000 WHERE fruit_mg > 1000000000; "
	                  "UPDATE juice SET made_ul = 3 WHERE made_ul > 1000000000");
}
END_TEST

/* --- random acts ---------------------------------------------------------------------------- */

static unsigned long seed;

static int chance(int sides)
{
	seed = (seed * 1103515245UL + 12345UL) & 0x7fffffffUL;
	return (int)((seed >> 8) % (unsigned long)sides);
}

static void change_run(int64_t run_id)
{
	static const char *const fruits[] = { "grapes", "Grapes", "apples", "quinces" };
	struct log_run run;
	struct log_juice *juices;
	size_t count;
	if (!log_run_get(kit.log, run_id, &run, NULL))
		return;
	KIT_OK(&kit, log_juices_of_run(kit.log, run_id, &juices, &count, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	if (chance(2) == 0)
		ck_assert(text_copy(run.fruit, sizeof(run.fruit), fruits[chance(4)]));
	if (chance(2) == 0)
		run.fruit_mg = 100 + chance(9000000);
	KIT_OK(&kit, log_put_run(kit.log, &run, &kit.fault));
	if (chance(2) == 0) { /* more is drawn */
		struct log_juice more = { .run_id = run_id, .made_ul = chance(2000000), .kind = "x" };
		KIT_OK(&kit, log_put_juice(kit.log, &more, &kit.fault));
	}
	if (chance(2) == 0 && count > 0) { /* measured again, or it was another run's */
		struct log_juice *one = &juices[chance((int)count)];
		one->made_ul = chance(3000000);
		one->run_id = chance(3) == 0 ? 1 + chance((int)run_id) : one->run_id;
		if (!log_put_juice(kit.log, one, NULL)) {
			log_abandon(kit.log);
			free(juices);
			return;
		}
	}
	free(juices);
	(void)commit("changed", run_id);
}

/* Whatever is in force about the juicer is taken back, or what was taken back comes again. */
static void undo_or_redo(void)
{
	struct log_subject subject = { .kind = SUBJECT_STATION, .id = juicer_id };
	struct log_entry last;
	struct log_entry entry = kit_entry("undone", juicer_id, 0);
	if (log_last_act(kit.log, subject, chance(2) == 0, &last, NULL) && strcmp(last.said, "[\"Set up\"]") != 0)
		(void)log_undo(kit.log, last.id, &entry, NULL);
}

START_TEST(the_sums_are_a_recount_after_any_acts_and_undos)
{
	int64_t run_id = 0;
	seed = (unsigned long)_i * 7919UL + 1UL;
	for (int i = 0; i < 120; i++) {
		switch (chance(5)) {
		case 0:
			(void)put_run(chance(2) == 0 ? "grapes" : "Apples", 1000000 + chance(5000000), chance(4000000),
			              false, &run_id);
			break;
		case 1:
		case 2:
			if (run_id > 0)
				change_run(1 + chance((int)run_id));
			break;
		default: undo_or_redo(); break;
		}
		if (i % 10 == 0)
			sums_are_right();
	}
	ck_assert_int_gt(run_id, 0);
}
END_TEST

/* --- ledgers --------------------------------------------------------------------------------------- */

START_TEST(the_newest_moves_come_first_and_say_who)
{
	struct log_supply supply = { .kind = SUPPLY_SUGAR };
	struct log_supply_move *moves;
	size_t count;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_supply(kit.log, &supply, &kit.fault));
	for (int i = 1; i <= 5; i++) {
		struct log_supply_move move = {
			.supply_id = supply.id, .amount = i, .why = SUPPLY_RECEIPT, .wall_ms = i
		};
		ck_assert(text_copy(move.who, sizeof(move.who), i == 5 ? "KM" : ""));
		KIT_OK(&kit, log_put_supply_move(kit.log, &move, &kit.fault));
	}
	(void)commit("moves", 0);
	KIT_OK(&kit, log_supply_moves_newest(kit.log, supply.id, 3, &moves, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_int_eq(moves[0].amount, 5);
	ck_assert_str_eq(moves[0].who, "KM");
	ck_assert_int_eq(moves[2].amount, 3);
	free(moves);
}
END_TEST

START_TEST(what_one_buys_at_a_time_is_kept_and_undone)
{
	struct log_sold_by sold = { .kind = SUPPLY_SUGAR, .amount = 5 };
	struct log_sold_by jars = { .kind = SUPPLY_JAR, .size = "pint", .amount = 12 };
	struct log_sold_by *rows;
	size_t count;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_sold_by(kit.log, &sold, &kit.fault));
	KIT_OK(&kit, log_put_sold_by(kit.log, &jars, &kit.fault));
	int64_t first = commit("sold", 0);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	sold.amount = 7;
	KIT_OK(&kit, log_put_sold_by(kit.log, &sold, &kit.fault));
	jars.amount = 0;
	KIT_OK(&kit, log_put_sold_by(kit.log, &jars, &kit.fault));
	int64_t second = commit("sold", 0);
	KIT_OK(&kit, log_sold_by(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(rows[0].amount, 7);
	free(rows);
	undo(second);
	KIT_OK(&kit, log_sold_by(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(rows[0].kind, SUPPLY_JAR);
	ck_assert_str_eq(rows[0].size, "pint");
	ck_assert_int_eq(rows[1].amount, 5);
	free(rows);
	undo(first);
	KIT_OK(&kit, log_sold_by(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 0);
	free(rows);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	sold.amount = -1;
	ck_assert(!log_put_sold_by(kit.log, &sold, &kit.fault));
	log_abandon(kit.log);
	ck_assert(!log_put_sold_by(kit.log, &sold, &kit.fault)); /* outside an act */
}
END_TEST

START_TEST(the_lids_of_a_box_are_told_by_lot)
{
	struct log_lid_box box = { .label = "Box A", .lids = 60 };
	struct log_lot lots[2] = {
		{ .code = "L1", .product = "grape jelly", .food = "f", .pack = "hot", .made_wall_ms = 7 },
		{ .code = "L2", .product = "plum jelly", .food = "f", .pack = "hot", .made_wall_ms = 8 }
	};
	struct log_lid_use *uses;
	size_t count;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lid_box(kit.log, &box, &kit.fault));
	for (int i = 0; i < 2; i++)
		KIT_OK(&kit, log_put_lot(kit.log, &lots[i], &kit.fault));
	for (int i = 0; i < 5; i++) {
		struct log_jar jar = { .lot_id = lots[i / 3].id, .lid_box_id = box.id, .size = "pint" };
		KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	}
	(void)commit("jars", 0);
	KIT_OK(&kit, log_lid_uses(kit.log, box.id, &uses, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_str_eq(uses[0].lot, "L2");
	ck_assert_int_eq(uses[0].jars, 2);
	ck_assert_str_eq(uses[1].product, "grape jelly");
	ck_assert_int_eq(uses[1].jars, 3);
	ck_assert_int_eq(uses[1].made_wall_ms, 7);
	free(uses);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("yields", .begin = begin, .end = end, .seconds = 60),
	TEST(a_run_that_is_over_is_counted_and_an_open_one_is_not),
	TEST(slips_of_the_pen_are_left_out),
	EACH(the_sums_are_a_recount_after_any_acts_and_undos, 0, 8),
	TEST(the_newest_moves_come_first_and_say_who),
	TEST(what_one_buys_at_a_time_is_kept_and_undone),
	TEST(the_lids_of_a_box_are_told_by_lot),
};

TESTS("yields and ledgers", listed)
