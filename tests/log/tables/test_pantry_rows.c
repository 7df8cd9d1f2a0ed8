/*
 * What is kept, used and to be found is counted by triggers: after any acts, undos
 * and redos the counts are those of a recount; an older log gets them when it is
 * brought up to date.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

/* Written without the triggers' own SQL. */
static const char kept[] =
    "(SELECT lot.product, jar.size, lot.made_wall_ms, lot.id, count(*) FROM jar JOIN lot ON lot.id = jar.lot_id "
    "WHERE jar.state = 'sealed' AND jar.fate = 'none' AND jar.gone_why IS NULL GROUP BY lot.id, jar.size)";
static const char used[] =
    "(SELECT lot.product, jar.size, jar.gone_wall_ms / 604800000, count(*) FROM jar JOIN lot ON lot.id = jar.lot_id "
    "WHERE jar.gone_why IN ('used', 'given') AND jar.fate = 'none' GROUP BY lot.product COLLATE NOCASE, 2, 3)";
static const char lines[] = "(SELECT product, size, sum(jars) FROM pantry_lot GROUP BY product, size)";
static const char left[] =
    "(SELECT recall.id, (SELECT count(*) FROM recall_jar WHERE recall_id = recall.id), "
    "(SELECT count(*) FROM recall_jar WHERE recall_id = recall.id AND outcome IS NULL), "
    "(SELECT count(*) FROM recall_jar WHERE recall_id = recall.id AND outcome = 'not_found') FROM recall)";

/* The same rows; products differ by their capitals at most. */
static void same(const char *table, const char *meant)
{
	char sql[1200];
	(void)snprintf(sql, sizeof(sql), "SELECT (SELECT count(*) FROM %s) - (SELECT count(*) FROM %s)", table, meant);
	ck_assert_msg(kit_number(kit.path, sql) == 0, "%s has other rows", table);
	(void)snprintf(sql, sizeof(sql), "SELECT count(*) FROM (SELECT * FROM %s EXCEPT SELECT * FROM %s)", table,
	               meant);
	ck_assert_msg(kit_number(kit.path, sql) == 0, "%s counts otherwise", table);
}

static void counts_are_right(void)
{
	same("pantry_lot", kept);
	same("pantry_use", used);
	same("pantry_line", lines);
	same("recall_left", left);
	ck_assert(kit_whole(kit.path));
}

static void end(void)
{
	counts_are_right();
	kit_clear(&kit);
}

/* --- acts ------------------------------------------------------------------------------ */

static int64_t commit(const char *sentence)
{
	struct log_entry entry = kit_entry(sentence, 0, 0);
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	return entry.id;
}

static int64_t undo(int64_t entry_id)
{
	struct log_entry entry = kit_entry("undone", 0, 0);
	return log_undo(kit.log, entry_id, &entry, &kit.fault) ? entry.id : 0;
}

/* A lot with its jars, in one act: as a notebook is read in. */
static int64_t put_lot(const char *code, const char *product, int jars, enum jar_state state, enum jar_gone gone,
                       struct log_lot *lot)
{
	*lot = (struct log_lot){ .food = "f", .pack = "hot", .made_wall_ms = KIT_MORNING_MS };
	ck_assert(text_copy(lot->code, sizeof(lot->code), code));
	ck_assert(text_copy(lot->product, sizeof(lot->product), product));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_lot(kit.log, lot, &kit.fault));
	for (int i = 0; i < jars; i++) {
		struct log_jar jar = { .lot_id = lot->id,
			               .state = state,
			               .gone_why = gone,
			               .gone_wall_ms = gone == GONE_NOT ? 0 : KIT_MORNING_MS,
			               .size = "pint" };
		KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	}
	return commit(code);
}

static struct log_pantry_line only_line(void)
{
	struct log_pantry_line *rows;
	struct log_pantry_line line;
	size_t count;
	KIT_OK(&kit, log_pantry(kit.log, 0, 0, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	line = rows[0];
	free(rows);
	return line;
}

START_TEST(every_field_of_a_jar_is_kept)
{
	struct log_lot lot;
	struct log_jar jar = { .state = JAR_DOUBTFUL,
		               .ticks = { TICK_GOOD, TICK_BAD, TICK_NONE },
		               .checked_by = "KM",
		               .gone_why = GONE_THROWN_OUT,
		               .gone_wall_ms = 77,
		               .size = "pint" };
	struct log_jar read;
	(void)put_lot("L1", "quince jelly", 1, JAR_SEALED, GONE_NOT, &lot);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	jar.lot_id = lot.id;
	jar.from_jar_id = 1;
	KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	(void)commit("jar");
	KIT_OK(&kit, log_jar_get(kit.log, jar.id, &read, &kit.fault));
	ck_assert_int_eq(read.ticks[SEAL_PRESS], TICK_GOOD);
	ck_assert_int_eq(read.ticks[SEAL_TAP], TICK_BAD);
	ck_assert_int_eq(read.ticks[SEAL_EYE], TICK_NONE);
	ck_assert_str_eq(read.checked_by, "KM");
	ck_assert_int_eq(read.from_jar_id, 1);
	ck_assert_int_eq(read.gone_why, GONE_THROWN_OUT);
	ck_assert_int_eq(read.gone_wall_ms, 77);
}
END_TEST

START_TEST(jars_that_come_back_before_their_lot_are_counted)
{
	struct log_lot lot;
	int64_t put = put_lot("L1", "quince jelly", 5, JAR_SEALED, GONE_NOT, &lot);
	int64_t eaten = put_lot("L2", "Quince Jelly", 3, JAR_SEALED, GONE_USED, &lot);
	ck_assert_int_eq(only_line().jars, 5);
	ck_assert_int_eq(only_line().used, 3); /* capitals do not matter */
	int64_t gone = undo(eaten);
	counts_are_right();
	ck_assert_int_ne(undo(gone), 0);
	ck_assert_int_eq(only_line().used, 3);
	gone = undo(put);
	counts_are_right();
	ck_assert_int_ne(undo(gone), 0);
	ck_assert_int_eq(only_line().jars, 5);
}
END_TEST

START_TEST(a_lot_that_is_renamed_or_dated_anew_takes_its_jars_along)
{
	struct log_lot lot;
	(void)put_lot("L1", "quince jelly", 2, JAR_SEALED, GONE_GIVEN, &lot);
	(void)put_lot("L2", "quince jelly", 5, JAR_SEALED, GONE_NOT, &lot);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	ck_assert(text_copy(lot.product, sizeof(lot.product), "apple jelly"));
	lot.made_wall_ms -= KIT_DAY_MS;
	KIT_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	int64_t renamed = commit("renamed");
	ck_assert_str_eq(only_line().product, "apple jelly");
	ck_assert_int_eq(only_line().used, 0);
	counts_are_right();
	ck_assert_int_ne(undo(renamed), 0);
	ck_assert_int_eq(only_line().used, 2);
}
END_TEST

/* --- any acts ------------------------------------------------------------------------------ */

static uint64_t dice;

static int roll(int sides)
{
	dice = dice * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
	return (int)((dice >> 33) % (uint64_t)sides);
}

static int64_t put_some_lot(int n)
{
	static const char *const products[] = { "quince jelly", "Quince jelly", "beans" };
	char code[32];
	struct log_lot lot;
	(void)snprintf(code, sizeof(code), "L%d", n);
	return put_lot(code, products[roll(3)], 1 + roll(4), (enum jar_state)roll(JAR_STATE_COUNT),
	               (enum jar_gone)roll(GONE_COUNT), &lot);
}

static int64_t change_a_jar(int64_t jars)
{
	struct log_jar jar;
	if (!log_jar_get(kit.log, 1 + roll((int)jars), &jar, &kit.fault))
		return 0;
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	jar.state = (enum jar_state)roll(JAR_STATE_COUNT);
	jar.fate = roll(3) == 0 ? (enum jar_fate)roll(FATE_COUNT) : FATE_NONE;
	jar.gone_why = (enum jar_gone)roll(GONE_COUNT);
	jar.gone_wall_ms = jar.gone_why == GONE_NOT ? 0 : KIT_MORNING_MS + roll(5) * 7 * KIT_DAY_MS;
	(void)text_copy(jar.size, sizeof(jar.size), roll(2) == 0 ? "pint" : "quart");
	KIT_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	return commit("changed");
}

static int64_t recall_some(int64_t jars)
{
	struct log_recall recall = { .about = TRACE_DAY, .which = "2026-09-14", .words = "day", .reason = "r" };
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_recall(kit.log, &recall, &kit.fault));
	for (int i = 0; i < 3; i++) {
		struct log_recall_jar mark = { .recall_id = recall.id,
			                       .jar_id = 1 + roll((int)jars),
			                       .outcome = (enum recall_outcome)roll(RECALL_OUTCOME_COUNT) };
		struct log_jar jar;
		if (log_jar_get(kit.log, mark.jar_id, &jar, NULL))
			KIT_OK(&kit, log_put_recall_jar(kit.log, &mark, &kit.fault));
	}
	return commit("recall");
}

START_TEST(the_counts_are_a_recount_after_any_acts_and_undos)
{
	int64_t entries[60];
	int count = 0;
	dice = (uint64_t)_i * 977 + 5;
	entries[count++] = put_some_lot(0);
	while (count < 60) {
		int64_t jars = kit_number(kit.path, "SELECT coalesce(max(id), 1) FROM jar");
		int64_t entry = 0;
		switch (roll(5)) {
		case 0: entry = put_some_lot(count); break;
		case 1:
		case 2: entry = change_a_jar(jars); break;
		case 3: entry = recall_some(jars); break;
		default: entry = undo(entries[roll(count)]); break; /* may be refused */
		}
		if (entry != 0)
			entries[count++] = entry;
		if (count % 6 == 0)
			counts_are_right();
	}
}
END_TEST

START_TEST(the_oldest_was_made_first_whenever_it_was_put_in)
{
	kit_sql(kit.path,
	        "INSERT INTO lot VALUES (1, 'L1', 'quince jelly', 'jelly', 'hot', 'acid', 5, NULL, ''), "
	        "(2, 'L2', 'quince jelly', 'jelly', 'hot', 'acid', 4, NULL, '');"
	        "INSERT INTO jar (lot_id, size, state, fate) VALUES (1, 'pint', 'sealed', 'none'), "
	        "(1, 'pint', 'unsealed', 'none'), (1, 'pint', 'sealed', 'fridge'), (2, 'pint', 'sealed', 'none'), "
	        "(2, 'quart', 'sealed', 'none')");
	counts_are_right();
	struct log_jar oldest;
	KIT_OK(&kit, log_jar_oldest(kit.log, &oldest, &kit.fault));
	ck_assert_int_eq(oldest.lot_id, 2); /* made first, though put in later */
	struct log_pantry_line *rows;
	size_t count;
	KIT_OK(&kit, log_pantry(kit.log, 0, 0, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(rows[0].jars, 2);
	ck_assert_str_eq(rows[0].oldest.code, "L2");
	ck_assert_int_eq(rows[0].first_made_wall_ms, 4);
	free(rows);
}
END_TEST

START_TEST(a_recall_is_written_inside_an_act_only_and_keeps_every_field)
{
	struct log_lot lot;
	struct log_recall recall = {
		.about = TRACE_LID_BOX, .which = "7", .words = "lid box x", .reason = "\033[2J", .opened_wall_ms = 9
	};
	struct log_recall_jar mark = { .jar_id = 1, .outcome = RECALL_NOT_FOUND, .outcome_wall_ms = 8, .who = "KM" };
	struct log_traced *rows;
	struct log_recall *open;
	struct log_recall *all;
	size_t count;
	(void)put_lot("L1", "quince jelly", 1, JAR_SEALED, GONE_NOT, &lot);
	ck_assert(!log_put_recall(kit.log, &recall, &kit.fault));
	ck_assert(!log_put_recall_jar(kit.log, &mark, &kit.fault));
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	KIT_OK(&kit, log_put_recall(kit.log, &recall, &kit.fault));
	mark.recall_id = recall.id;
	KIT_OK(&kit, log_put_recall_jar(kit.log, &mark, &kit.fault));
	(void)commit("recall");
	KIT_OK(&kit, log_recalls(kit.log, &all, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(all[0].id, recall.id);
	ck_assert_int_eq(all[0].about, TRACE_LID_BOX);
	ck_assert_str_eq(all[0].which, "7");
	ck_assert_str_eq(all[0].reason, "\033[2J");
	ck_assert_int_eq(all[0].jars, 1);
	ck_assert_int_eq(all[0].to_find, 0);
	ck_assert_int_eq(all[0].not_found, 1);
	free(all);
	KIT_OK(&kit, log_recalls_open(kit.log, &open, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(open);
	KIT_OK(&kit, log_recall_jars(kit.log, recall.id, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(rows[0].mark.outcome, RECALL_NOT_FOUND);
	ck_assert_int_eq(rows[0].mark.outcome_wall_ms, 8);
	ck_assert_str_eq(rows[0].mark.who, "KM");
	ck_assert(!rows[0].recalled);
	free(rows);
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
	mark.outcome = RECALL_TO_FIND;
	KIT_OK(&kit, log_put_recall_jar(kit.log, &mark, &kit.fault));
	(void)commit("again");
	KIT_OK(&kit, log_recalls_open(kit.log, &open, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	free(open);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("pantry", .begin = begin, .end = end, .seconds = 60),
	TEST(every_field_of_a_jar_is_kept),
	TEST(jars_that_come_back_before_their_lot_are_counted),
	TEST(a_lot_that_is_renamed_or_dated_anew_takes_its_jars_along),
	EACH(the_counts_are_a_recount_after_any_acts_and_undos, 0, 4),
	TEST(the_oldest_was_made_first_whenever_it_was_put_in),
	TEST(a_recall_is_written_inside_an_act_only_and_keeps_every_field),
};

TESTS("pantry rows", listed)
