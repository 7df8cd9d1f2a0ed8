/*
 * What the board asks at every refresh stays cheap however many years of jars
 * the log holds: no statement walks a table of history.
 *
 * Steps of SQLite's virtual machine are counted, not seconds: the count is the
 * same on a slow machine (SQLite documentation, c3ref/c_stmtstatus_counter.html).
 */
#include <check.h>
#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "log/disk/log_private.h"
#include "log/history/history.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"
#include "log/tables/work.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

/* --- plans ----------------------------------------------------------------------------- */

/* All that is asked between two keys, and what a key asks before it is done. */
static const enum statement asked[] = {
	HOUSE_GET,
	STATION_LIST,
	STATION_GET,
	CAPACITY_LIST,
	LOAD_GET,
	LOAD_OPEN,
	LOAD_BETWEEN,
	WORK_LAST_ID,
	STATION_FRESH_ID,
	PHASE_LIST,
	PHASE_OPEN,
	JAR_LIST,
	JAR_GET,
	JAR_FATES,
	JAR_MADE,
	JARS_OF_BATCH,
	JARS_WAITING,
	RUN_GET,
	RUN_OPEN,
	JUICE_GET,
	JUICE_LEFT,
	JUICES_OF_RUN,
	JUICE_USES_OF_BATCH,
	BATCH_GET,
	BATCH_OPEN,
	BATCH_AMOUNTS,
	SUPPLY_LIST,
	SUPPLY_OF,
	LOT_GET,
	LID_BOX_GET,
	ENTRY_NEWEST,
	ENTRY_TIP,
	ENTRY_CHANGES,
	ENTRIES_OF_STATION,
	ENTRIES_OF_WORK,
	ENTRIES_OF_HOUSE,
	STANDING_OF_HOUSE,
	STANDING_OF_STATION,
	STANDING_OF_WORK,
	STANDING_OF_HOUSE_BEFORE,
	UNDONE_OF_HOUSE,
	UNDONE_OF_STATION,
	UNDONE_OF_WORK,
	RUN_BETWEEN,
	BATCH_BETWEEN,
	SUPPLY_MOVES_NEWEST,
	SOLD_BY_LIST,
	FRUIT_YIELDS,
	LID_USES,
	USES_OF_JUICE,
	LOAD_BEFORE,
	JAR_OLDEST,
	TALLY_LIST,
	RULE_OFF_LIST,
	LID_BOX_LIST,
	JARS_KEPT,
	JARS_GONE,
	PANTRY_RECALLED,
	PANTRY,
	PANTRY_LOTS,
	LOT_BY_CODE,
	LOT_RECALLED,
	LOADS_LINKED,
	DRYINGS_OF_BATCH,
	TRACE_OF_LOT,
	TRACE_OF_LID_BOX,
	TRACE_OF_LOAD,
	TRACE_OF_BATCH,
	TRACE_OF_RUN,
	TRACE_OF_DRYING,
	TRACE_OF_PRODUCT,
	TRACE_OF_DAY,
	RECALLS_OPEN,
	RECALL_JARS,
	MARKS_OF_JAR,
	LOT_NAMED,
	JARS_OF_LOT,
	LOT_MADE,
	WORKS_BEFORE,
	WORKS_AFTER,
	WORK_GET,
	SEASON_BEFORE,
	SEASON_MADE,
	SEASON_JARS,
	SEASON_VERDICTS,
	SEASON_SEALS,
	SEASON_YIELD,
	SEASON_HOURS,
	SEASON_COME_UP,
	SEASON_BUSIEST,
	SEASON_PRODUCTS,
	SEASON_STATIONS,
	SEASON_FRUITS,
	SEASON_COME_UPS,
};
#define ASKED_COUNT (sizeof(asked) / sizeof(asked[0]))

/* What may be walked from end to end: indexes that hold only what is open, what
 * a house has few of, and the links of a chain of undos. */
static const char *const may_be_scanned[] = {
	"SCAN load USING INDEX load_open",
	"SCAN work USING INDEX work_at_station",
	"SCAN jar USING INDEX jar_waiting",
	"SCAN jar USING INDEX jar_fate_open",
	"SCAN juice_left USING INDEX juice_left_some",
	"SCAN station",                                           /* nine that are used, and those given up */
	"SCAN pantry_lot USING COVERING INDEX pantry_lot_by_age", /* for its first row */
	"SCAN line",                                              /* a row for each product and size */
	"SCAN recall_left USING INDEX recall_open",
	"SCAN recall_left USING COVERING INDEX recall_open",
	"SCAN found", /* what was asked for */
	"SCAN lid_box",
	"SCAN rule_off",
	"SCAN supply_stock",
	"SCAN supply",
	"SCAN supply USING INDEX",
	"SCAN supply USING COVERING INDEX",
	"SCAN sold_by",
	"SCAN fruit_yield USING INDEX sqlite_autoindex_fruit_yield_1",
	"SCAN (subquery-",
	"SCAN link",
	"SCAN CONSTANT ROW",
	"SCAN journal", /* by number, and only for the newest: see below */
};

static bool scan_allowed(enum statement which, const char *detail)
{
	size_t length = strlen(detail);
	if (strncmp(detail, "SCAN journal", 12) == 0)
		return which == ENTRY_NEWEST && length == 12;
	for (size_t i = 0; i < sizeof(may_be_scanned) / sizeof(may_be_scanned[0]); i++) {
		size_t same = strlen(may_be_scanned[i]);
		if (strncmp(detail, may_be_scanned[i], same) == 0 &&
		    (detail[same] == '\0' || detail[same] == ' ' || detail[same - 1] == '-'))
			return true;
	}
	return false;
}

static const char *text_of(enum statement which)
{
	static char sql[STATEMENT_MAX_BYTES];
	ck_assert(statement_write(kit.log, which, sql, sizeof(sql)));
	return sql;
}

static void plan_is_good(enum statement which)
{
	sqlite3_stmt *plan;
	char *sql = sqlite3_mprintf("EXPLAIN QUERY PLAN %s", text_of(which));
	ck_assert_int_eq(sqlite3_prepare_v2(kit.log->db, sql, -1, &plan, NULL), SQLITE_OK);
	int rows = 0;
	while (sqlite3_step(plan) == SQLITE_ROW) {
		const char *detail = (const char *)sqlite3_column_text(plan, 3);
		rows++;
		if (strncmp(detail, "SCAN ", 5) == 0)
			ck_assert_msg(scan_allowed(which, detail), "%s\n  %s", text_of(which), detail);
		ck_assert_msg(strstr(detail, "AUTOMATIC") == NULL, "%s\n  %s", text_of(which), detail);
	}
	ck_assert_int_gt(rows, 0);
	ck_assert_int_eq(sqlite3_finalize(plan), SQLITE_OK);
	sqlite3_free(sql);
}

START_TEST(no_statement_of_the_board_walks_a_table_of_history)
{
	for (size_t i = 0; i < ASKED_COUNT; i++)
		plan_is_good(asked[i]);
}
END_TEST

/* Neither sorted nor counted off: the neighbours are found in the index. */
START_TEST(a_page_of_what_was_made_is_found_by_its_place)
{
	static const char found[] = "SEARCH work USING INDEX work_in_time (<expr>>? AND <expr><?)";
	sqlite3_stmt *plan;
	bool seen = false;
	char *sql = sqlite3_mprintf("EXPLAIN QUERY PLAN %s", text_of(_i == 0 ? WORKS_BEFORE : WORKS_AFTER));
	ck_assert_int_eq(sqlite3_prepare_v2(kit.log->db, sql, -1, &plan, NULL), SQLITE_OK);
	while (sqlite3_step(plan) == SQLITE_ROW) {
		const char *detail = (const char *)sqlite3_column_text(plan, 3);
		bool outermost = sqlite3_column_int(plan, 1) == 0;
		seen = seen || strcmp(detail, found) == 0;
		ck_assert_msg(!outermost || strstr(detail, "TEMP B-TREE") == NULL, "%s", detail);
	}
	ck_assert(seen);
	ck_assert_int_eq(sqlite3_finalize(plan), SQLITE_OK);
	sqlite3_free(sql);
}
END_TEST

/* --- steps ------------------------------------------------------------------------------ */

#define HISTORY_ROWS 100000

/* Years of invented days: 100,000 shelved jars and as many moves of 12 supplies,
 * every batch and run closed, every juice used up. */
static const char history[] =
    "CREATE TEMP TABLE n AS WITH RECURSIVE n (i) AS "
    "(SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 100000) SELECT i FROM n;"
    "BEGIN;"
    "INSERT INTO station (id, digit, kind, name) VALUES (2, 2, 'pot', 'p'), (3, 3, 'juicer', 'j');"
    /* Loads are 1 to 12,000, batches 20,001 and on, runs 30,001 and on. */
    "INSERT INTO work SELECT i, 'load', 1, i, 0, '' FROM n WHERE i <= 12000 UNION ALL "
    " SELECT 20000 + i, 'batch', 2, i, 0, '' FROM n WHERE i <= 8000 UNION ALL "
    " SELECT 30000 + i, 'run', 3, i, 0, '' FROM n WHERE i <= 4000;"
    "INSERT INTO run SELECT 30000 + i, 'quinces', 2000, 1, 1, 1, '', 3 FROM n WHERE i <= 4000;"
    "INSERT INTO juice SELECT i, 30000 + i, 'quince', 1000, 'hot', i, i FROM n WHERE i <= 4000;"
    "INSERT INTO lot SELECT i, 'L' || i, 'p', 'f', 'hot', 'acid', i, 'printed', '' FROM n WHERE i <= 12000;"
    "INSERT INTO batch SELECT 20000 + i, i, 'r', 1, 0, 250, 's', 1, 0, 0, '', 0 FROM n WHERE i <= 8000;"
    "INSERT INTO juice_use SELECT i, 1 + i % 4000, 20000 + i, 500, 'batch', i FROM n WHERE i <= 8000;"
    "INSERT INTO batch_amount SELECT i, 20001 + i % 8000, i / 8000, 'x', 'sugar', 'mass', 1, 1 FROM n "
    " WHERE i <= 40000;"
    "INSERT INTO load SELECT i, 'boiling_water', 1, 10, NULL, 250, 'pint', 's', 'yes', 0, 0, "
    " '', 1, 0, '' FROM n WHERE i <= 12000;"
    "INSERT INTO judgement SELECT i, NULL, NULL, 'valid', 1, '', '' FROM n WHERE i <= 12000;"
    "INSERT INTO jar (id, load_id, lot_id, place_in_load, size, state, batch_id, filled_wall_ms) "
    " SELECT i, 1 + i % 12000, 1 + i % 12000, 1 + i / 12000, 'pint', 'sealed', 20001 + i % 8000, i FROM n;"
    "INSERT INTO phase SELECT i, CASE i % 3 WHEN 0 THEN 1 + i % 12000 WHEN 1 THEN 30001 + i % 4000 "
    " ELSE 20001 + i % 8000 END, 'x', 1, 1, '', 0, NULL, 2, 'done', 1 FROM n;"
    "INSERT INTO supply SELECT i, 'kind' || i, '' FROM n WHERE i <= 12;"
    "UPDATE supply SET kind = 'sugar' WHERE id = 1;"
    "UPDATE supply SET kind = 'jar', size = 'size' || id WHERE id > 1;"
    "INSERT INTO supply_move SELECT i, 1 + i % 12, i % 7 - 3, 'use', 20001 + i % 8000, NULL, '', i, '' FROM n;"
    "INSERT INTO journal SELECT i + 1, 1, 1, '', 'v', '', 1 + i % 3, "
    " CASE i % 3 WHEN 0 THEN 1 + i % 12000 WHEN 1 THEN 20001 + i % 8000 ELSE 30001 + i % 4000 END, 's', NULL, 0, x'' FROM n;"
    "COMMIT;";

/* Steps a statement takes a run, since it was asked last; 0 when it was not run. */
static int steps(enum statement which)
{
	sqlite3_stmt *statement = kit.log->statements[which];
	if (statement == NULL)
		return 0;
	int runs = sqlite3_stmt_status(statement, SQLITE_STMTSTATUS_RUN, 1);
	int taken = sqlite3_stmt_status(statement, SQLITE_STMTSTATUS_VM_STEP, 1);
	return runs > 1 ? taken / runs : taken;
}

static void few_steps(enum statement which, int most)
{
	int taken = steps(which);
	ck_assert_int_gt(taken, 0);
	ck_assert_msg(taken <= most, "%d steps, %d allowed:\n%s", taken, most, text_of(which));
}

/* One step is some 30 ns to 100 ns: 2,000 steps are far below a millisecond. */
#define FEW 2000

static void open_rows_are_found(void)
{
	struct log_load *loads;
	struct log_run *runs;
	struct log_batch *batches;
	struct log_jar *jars;
	struct log_juice *juices;
	struct log_supply *supplies;
	size_t count;
	KIT_OK(&kit, log_works_open(kit.log, SUBJECT_LOAD, &loads, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(loads);
	few_steps(LOAD_OPEN, FEW);
	KIT_OK(&kit, log_works_open(kit.log, SUBJECT_RUN, &runs, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(runs);
	few_steps(RUN_OPEN, FEW);
	KIT_OK(&kit, log_works_open(kit.log, SUBJECT_BATCH, &batches, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(batches);
	few_steps(BATCH_OPEN, FEW);
	KIT_OK(&kit, log_jars_waiting(kit.log, &jars, &count, &kit.fault));
	ck_assert_uint_eq(count, 14);
	free(jars);
	few_steps(JARS_WAITING, FEW);
	KIT_OK(&kit, log_jars_with_open_fate(kit.log, &jars, &count, &kit.fault));
	free(jars);
	few_steps(JAR_FATES, FEW);
	KIT_OK(&kit, log_juices_left(kit.log, &juices, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(juices);
	few_steps(JUICE_LEFT, FEW);
	KIT_OK(&kit, log_supplies(kit.log, &supplies, &count, &kit.fault));
	ck_assert_uint_eq(count, 12);
	free(supplies);
	few_steps(SUPPLY_LIST, FEW);
}

/* A forecast and a ledger, before the day. */
static void sums_stand_ready(void)
{
	struct log_fruit_yield *yields;
	struct log_supply_move *moves;
	size_t count;
	KIT_OK(&kit, log_fruit_yields(kit.log, &yields, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(yields[0].runs.runs, 4000);
	free(yields);
	few_steps(FRUIT_YIELDS, FEW);
	KIT_OK(&kit, log_supply_moves_newest(kit.log, 1, 30, &moves, &count, &kit.fault));
	ck_assert_uint_eq(count, 30);
	ck_assert_int_gt(moves[0].id, moves[29].id);
	free(moves);
	few_steps(SUPPLY_MOVES_NEWEST, FEW);
}

/* What was made, newest first: as long as the page, not as the history. */
static void a_page_is_found(void)
{
	const struct log_wish any = { 0 };
	struct log_work *works;
	size_t count;
	KIT_OK(&kit, log_works(kit.log, &any, INT64_MAX, true, 20, &works, &count, &kit.fault));
	ck_assert_uint_eq(count, 20);
	int64_t oldest = works[19].id;
	free(works);
	few_steps(WORKS_BEFORE, 20 * FEW);
	KIT_OK(&kit, log_works(kit.log, &any, oldest, false, 19, &works, &count, &kit.fault));
	ck_assert_uint_eq(count, 19);
	few_steps(WORKS_AFTER, 20 * FEW);
	free(works);
}

static void rows_of_one_are_found(const struct log_entry *batch, const struct log_entry *run, int64_t load_id)
{
	struct log_phase phase;
	struct log_jar *jars;
	struct log_supply supply;
	size_t count;
	KIT_OK(&kit, log_phase_running(kit.log, kit_batch(batch->work_id), &phase, &kit.fault));
	few_steps(PHASE_OPEN, FEW);
	KIT_OK(&kit, log_phase_running(kit.log, kit_run(run->work_id), &phase, &kit.fault));
	few_steps(PHASE_OPEN, FEW);
	KIT_OK(&kit, log_phase_running(kit.log, kit_load(load_id), &phase, &kit.fault));
	few_steps(PHASE_OPEN, FEW);
	KIT_OK(&kit, log_jars_of_batch(kit.log, batch->work_id, &jars, &count, &kit.fault));
	free(jars);
	few_steps(JARS_OF_BATCH, FEW);
	KIT_OK(&kit, log_jars(kit.log, load_id, &jars, &count, &kit.fault));
	free(jars);
	few_steps(JAR_LIST, FEW);
	KIT_OK(&kit, log_supply_of(kit.log, SUPPLY_SUGAR, "", &supply, &kit.fault));
	few_steps(SUPPLY_OF, FEW);
}

/* What u and r would take: asked for each key shown. */
static void acts_to_undo_are_found(const struct log_entry *batch, const struct log_entry *run, int64_t load_id)
{
	const struct log_subject subjects[] = {
		{ .kind = SUBJECT_HOUSE },
		kit_station(1),
		kit_station(2),
		kit_station(3),
		kit_load(load_id),
		kit_run(run->work_id),
		kit_batch(batch->work_id),
	};
	for (size_t i = 0; i < sizeof(subjects) / sizeof(subjects[0]); i++) {
		struct log_entry entry;
		(void)log_last_act(kit.log, subjects[i], false, &entry, NULL);
		(void)log_last_act(kit.log, subjects[i], true, &entry, NULL);
	}
	(void)log_house_act_before(kit.log, INT64_MAX, &(struct log_entry){ 0 }, NULL);
	for (int which = STANDING_OF_HOUSE; which <= UNDONE_OF_WORK; which++)
		few_steps((enum statement)which, FEW);
}

static int steps_of(const char *sql)
{
	sqlite3_stmt *statement;
	ck_assert_int_eq(sqlite3_prepare_v2(kit.log->db, sql, -1, &statement, NULL), SQLITE_OK);
	ck_assert_msg(sqlite3_step(statement) == SQLITE_DONE, "%s: %s", sql, sqlite3_errmsg(kit.log->db));
	ck_assert_int_eq(sqlite3_changes(kit.log->db), 1);
	int taken = sqlite3_stmt_status(statement, SQLITE_STMTSTATUS_VM_STEP, 0);
	ck_assert_int_eq(sqlite3_finalize(statement), SQLITE_OK);
	return taken;
}

/* An undo takes rows away, and SQLite then looks for their children: there must
 * be an index to find them by. Children before parents, the day's own rows. */
static void rows_go_without_a_search(void)
{
	static const char *const deletions[] = {
		"DELETE FROM load WHERE id = (SELECT max(id) FROM load)",
		"DELETE FROM work WHERE id = (SELECT max(id) FROM work WHERE kind = 'load')",
		"DELETE FROM batch WHERE id = (SELECT max(id) FROM batch)",
		"DELETE FROM work WHERE id = (SELECT max(id) FROM work WHERE kind = 'batch')",
		"DELETE FROM run WHERE id = (SELECT max(id) FROM run)",
		"DELETE FROM work WHERE id = (SELECT max(id) FROM work WHERE kind = 'run')",
		"DELETE FROM lot WHERE id = (SELECT max(id) FROM lot)",
		"INSERT INTO juice (kind, made_ul, made_wall_ms, state_wall_ms) VALUES ('x', 1, 1, 1)",
		"DELETE FROM juice WHERE id = (SELECT max(id) FROM juice)",
		"INSERT INTO supply (kind) VALUES ('x')",
		"DELETE FROM supply WHERE id = (SELECT max(id) FROM supply)",
		"INSERT INTO lid_box (label, lids) VALUES ('x', 1)",
		"DELETE FROM lid_box WHERE id = (SELECT max(id) FROM lid_box)",
	};
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	for (size_t i = 0; i < sizeof(deletions) / sizeof(deletions[0]); i++) {
		int taken = steps_of(deletions[i]);
		ck_assert_msg(taken <= 3 * FEW, "%d steps: %s", taken, deletions[i]); /* 28 jars go with their batch */
	}
	log_abandon(kit.log);
}

START_TEST(a_hundred_thousand_jars_cost_no_more_than_none)
{
	struct log_entry run = kit_entry("Run", 0, 0);
	struct log_entry batch = kit_entry("Batch", 0, 0);
	struct log_entry filled = kit_entry("Filled", 0, 0);
	struct log_entry loaded = kit_entry("Loaded", 0, 0);
	int64_t juice_id;
	kit_close(&kit);
	kit_sql(kit.path, history);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM jar"), HISTORY_ROWS);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM supply_move"), HISTORY_ROWS);
	kit_open(&kit, LOG_WRITE);
	KIT_OK(&kit, kit_start_run(kit.log, 3, &juice_id, &run, &kit.fault));
	KIT_OK(&kit, kit_start_batch(kit.log, 2, "B1", juice_id, 1, &batch, &kit.fault));
	KIT_OK(&kit, kit_fill_jars(kit.log, batch.work_id, 14, &filled, &kit.fault));
	KIT_OK(&kit, kit_load_jars(kit.log, 1, "B2", batch.work_id, &loaded, &kit.fault));
	KIT_OK(&kit, kit_fill_jars(kit.log, batch.work_id, 14, &filled, &kit.fault));
	open_rows_are_found();
	sums_stand_ready();
	a_page_is_found();
	rows_of_one_are_found(&batch, &run, loaded.work_id);
	acts_to_undo_are_found(&batch, &run, loaded.work_id);
	rows_go_without_a_search();
	/* a key writes no more slowly than on the first day */
	for (int which = BEGIN_ACT; which < STATEMENT_COUNT; which++) {
		int taken = steps((enum statement)which);
		ck_assert_msg(taken <= FEW, "%d steps:\n%s", taken, text_of((enum statement)which));
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("plans", .begin = begin, .end = end, .seconds = 60),
	TEST(no_statement_of_the_board_walks_a_table_of_history),
	EACH(a_page_of_what_was_made_is_found_by_its_place, 0, 2),
	TEST(a_hundred_thousand_jars_cost_no_more_than_none),
};

TESTS("log plans", listed)
