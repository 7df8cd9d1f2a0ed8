/* From whatever jars have in common to every one of them; recalls, to the last jar. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/canner/canner.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/pot/pot.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/kitchen_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

static int64_t start(int digit, int jars, int64_t box)
{
	struct load_order order = kk_order(&kit, digit, jars);
	int64_t load_id;

	order.lid_box_id = box;
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	return load_id;
}

static void seal(int64_t load_id)
{
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
}

static void shelve(int64_t load_id)
{
	seal(load_id);
	kk_pass(&kit, 10 * SECOND_MS);
	kk_step(&kit, load_id);
}

static size_t traced(enum trace_about about, const char *words, struct log_traced **rows)
{
	char said[SENTENCE_MAX_BYTES];
	struct log_trace trace;
	size_t count;

	KK_OK(&kit, kitchen_trace_of(kit.kitchen, about, words, &trace, said, &kit.fault));
	KK_OK(&kit, kitchen_trace(kit.kitchen, &trace, rows, &count, &kit.fault));
	return count;
}

static int in_place(enum trace_about about, const char *words, enum jar_where where)
{
	struct log_traced *rows;
	size_t count = traced(about, words, &rows);
	int found = 0;

	for (size_t i = 0; i < count; i++)
		found += jar_where(&rows[i]) == where;
	free(rows);
	return found;
}

static size_t how_many(enum trace_about about, const char *words)
{
	struct log_traced *rows;
	size_t count = traced(about, words, &rows);

	free(rows);
	return count;
}

static bool take(int jars, enum jar_gone why)
{
	struct pantry_line *rows;
	struct pantry_line line;
	size_t count;
	struct take order = { .jars = jars, .why = why };

	KK_OK(&kit, kitchen_pantry(kit.kitchen, &rows, &count, &kit.fault));
	ck_assert_uint_gt(count, 0);
	line = rows[0];
	free(rows);
	order.product = line.product;
	order.size = line.size;
	return kitchen_take_out(kit.kitchen, &order, NULL, &kit.fault);
}

static bool recall(enum trace_about about, const char *words, int64_t *id)
{
	return kitchen_recall(kit.kitchen, about, words, "buckled lids", id, &kit.fault);
}

static int64_t to_find(int64_t id)
{
	struct log_recall *rows;
	int64_t left = -1;
	size_t count;

	KK_OK(&kit, kitchen_recalls(kit.kitchen, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (rows[i].id == id)
			left = rows[i].to_find;
	free(rows);
	return left;
}

/* The first jar of a recall in that place that is still to be found; 0: none. */
static int64_t one_in(int64_t recall_id, enum jar_where where)
{
	struct log_traced *rows;
	int64_t jar_id = 0;
	size_t count;

	KK_OK(&kit, kitchen_recall_jars(kit.kitchen, recall_id, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count && jar_id == 0; i++)
		if (jar_where(&rows[i]) == where &&
		    rows[i].mark.outcome == (where == WHERE_MISSING ? RECALL_NOT_FOUND : RECALL_TO_FIND))
			jar_id = rows[i].jar.id;
	free(rows);
	return jar_id;
}

static bool follow(int64_t recall_id, int64_t jar_id, enum recall_outcome outcome, bool like)
{
	return kitchen_follow_up(kit.kitchen, recall_id, jar_id, outcome, like, NULL, &kit.fault);
}

static bool undo(void)
{
	char said[SENTENCE_MAX_BYTES];

	return kitchen_undo_recall(kit.kitchen, said, sizeof(said), &kit.fault);
}

/* --- traces -------------------------------------------------------------------------------- */

START_TEST(a_lid_box_leads_to_its_jars_wherever_they_are)
{
	int64_t first = start(BIG_KETTLE, 9, BOX_A);

	shelve(first);
	KK_OK(&kit, take(2, GONE_USED));
	KK_OK(&kit, take(1, GONE_GIVEN));
	KK_OK(&kit, take(1, GONE_SPOILED));
	(void)start(LOW_KETTLE, 7, BOX_A);
	(void)start(BIG_KETTLE, 5, BOX_B);
	ck_assert_uint_eq(how_many(TRACE_LID_BOX, "Box A, spring"), 16);
	ck_assert_uint_eq(how_many(TRACE_LID_BOX, "box a"), 16); /* a part that only one has */
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A, spring", WHERE_SHELF), 5);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A, spring", WHERE_USED), 2);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A, spring", WHERE_GIVEN), 1);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A, spring", WHERE_DISCARDED), 1);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A, spring", WHERE_CANNER), 7);
	ck_assert_uint_eq(how_many(TRACE_LID_BOX, "summer"), 5);
}
END_TEST

START_TEST(load_lot_product_and_day_lead_to_their_jars)
{
	int64_t load_id = start(BIG_KETTLE, 9, 0);
	char number[24];
	struct log_lot lot;

	(void)snprintf(number, sizeof(number), "%lld", (long long)load_id);
	KK_OK(&kit, log_lot_get(kit.log, kk_jar_row(&kit, load_id, 1).lot_id, &lot, &kit.fault));
	ck_assert_uint_eq(how_many(TRACE_LOAD, number), 9);
	ck_assert_uint_eq(how_many(TRACE_LOT, lot.code), 9);
	ck_assert_uint_eq(how_many(TRACE_LOT, "2026-09-14-b1"), 9);
	ck_assert_uint_eq(how_many(TRACE_PRODUCT, lot.product), 9);
	ck_assert_uint_eq(how_many(TRACE_DAY, "2026-09-14"), 9);
	ck_assert_uint_eq(how_many(TRACE_DAY, "2026-09-13"), 0);
	ck_assert_uint_eq(how_many(TRACE_PRODUCT, "nothing of the kind"), 0);
}
END_TEST

START_TEST(what_is_not_there_is_said)
{
	static const struct { /* NOLINT(clang-analyzer-optin.performance.Padding): as one reads it */
		enum trace_about about;
		const char *words;
		enum fault_kind kind;
	} wrong[] = {
		{ TRACE_LOT, "2026-09-14-B9", FAULT_MISSING },
		{ TRACE_LID_BOX, "Box Z", FAULT_MISSING },
		{ TRACE_LID_BOX, "Box", FAULT_MISSING },
		{ TRACE_LOAD, "99", FAULT_MISSING },
		{ TRACE_LOAD, "one", FAULT_MISUSE },
		{ TRACE_BATCH, "99", FAULT_MISSING },
		{ TRACE_RUN, "99", FAULT_MISSING },
		{ TRACE_DAY, "yesterday", FAULT_MISUSE },
		{ TRACE_PRODUCT, "", FAULT_MISUSE },
		{ TRACE_LOT, "\033[2J'; DROP TABLE jar", FAULT_MISSING },
	};
	char said[SENTENCE_MAX_BYTES];
	struct log_trace trace;

	for (size_t i = 0; i < sizeof(wrong) / sizeof(wrong[0]); i++)
		KK_REFUSED(&kit, wrong[i].kind,
		           kitchen_trace_of(kit.kitchen, wrong[i].about, wrong[i].words, &trace, said, &kit.fault));
}
END_TEST

START_TEST(jars_set_aside_are_told_apart)
{
	int64_t load_id = start(BIG_KETTLE, 9, BOX_A);

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	for (int place = 1; place <= 6; place++)
		KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, place), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 5), JAR_BROKEN, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 1), FATE_FRIDGE, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 2), FATE_FREEZER, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 3), FATE_DISCARD, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 4), FATE_FRIDGE, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 6), FATE_REPROCESS, &kit.fault));
	KK_OK(&kit, kk_done(&kit, kk_jar(&kit, load_id, 1), false));
	KK_OK(&kit, kk_done(&kit, kk_jar(&kit, load_id, 2), false));
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_USED), 1); /* jar 1 is eaten */
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_FRIDGE), 1);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_FREEZER), 1);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_SET_ASIDE), 1);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_DISCARDED), 2);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_RACK), 3);
}
END_TEST

/* --- recalls ----------------------------------------------------------------------------------- */

START_TEST(a_recall_stops_until_its_last_jar_is_followed_up)
{
	int64_t id;

	shelve(start(BIG_KETTLE, 9, BOX_A));
	KK_OK(&kit, take(2, GONE_GIVEN));
	ck_assert_ptr_null(kk_warned(&kit, "recall-open", 0));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A, spring", &id));
	ck_assert_int_eq(to_find(id), 9);
	ck_assert_ptr_nonnull(kk_warned(&kit, "recall-open", 0));
	ck_assert_ptr_nonnull(strstr(kk_warned(&kit, "recall-open", 0)->sentence,
	                             "Find 9 jars of the recall (R): lid box Box A, spring, buckled lids."));
	ck_assert(!take(1, GONE_USED));
	ck_assert_str_eq(kit.fault.rule, "key-recalled");
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_THROWN_OUT, true));
	ck_assert_int_eq(to_find(id), 2);
	KK_OK(&kit, follow(id, one_in(id, WHERE_GIVEN), RECALL_NOT_FOUND, false));
	ck_assert_ptr_nonnull(kk_warned(&kit, "recall-open", 0));
	KK_OK(&kit, follow(id, one_in(id, WHERE_GIVEN), RECALL_THROWN_OUT, false));
	ck_assert_int_eq(to_find(id), 0);
	ck_assert_ptr_null(kk_warned(&kit, "recall-open", 0));
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_DISCARDED), 8);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_GIVEN), 1);
}
END_TEST

START_TEST(a_cleared_jar_may_be_eaten_again)
{
	int64_t id;

	shelve(start(BIG_KETTLE, 2, BOX_A));
	KK_OK(&kit, recall(TRACE_DAY, "2026-09-14", &id));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_CLEARED, false));
	ck_assert(!take(1, GONE_USED)); /* one of the lot is still looked for */
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_CLEARED, false));
	KK_OK(&kit, take(2, GONE_USED));
}
END_TEST

START_TEST(what_was_not_found_may_turn_up)
{
	int64_t id;
	int64_t jar_id;

	shelve(start(BIG_KETTLE, 1, BOX_A));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	jar_id = one_in(id, WHERE_SHELF);
	KK_OK(&kit, follow(id, jar_id, RECALL_NOT_FOUND, false));
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_MISSING), 1);
	KK_REFUSED(&kit, FAULT_REFUSED, follow(id, jar_id, RECALL_NOT_FOUND, false));
	KK_OK(&kit, follow(id, jar_id, RECALL_CLEARED, false));
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_SHELF), 1);
	KK_REFUSED(&kit, FAULT_REFUSED, follow(id, jar_id, RECALL_THROWN_OUT, false));
	KK_OK(&kit, undo());
	KK_OK(&kit, follow(id, jar_id, RECALL_THROWN_OUT, false));
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_DISCARDED), 1);
}
END_TEST

static struct log_recall the_recall(int64_t id)
{
	struct log_recall found = { .id = 0 };
	struct log_recall *rows;
	size_t count;

	KK_OK(&kit, kitchen_recalls(kit.kitchen, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		if (rows[i].id == id)
			found = rows[i];
	free(rows);
	return found;
}

START_TEST(a_recall_stays_open_for_what_was_not_found_until_somebody_says_it_is_gone)
{
	struct log_recall now;
	int64_t id;
	int64_t again;

	shelve(start(BIG_KETTLE, 3, BOX_A));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_THROWN_OUT, false));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_NOT_FOUND, true));
	now = the_recall(id);
	ck_assert_int_eq(now.to_find, 0);
	ck_assert_int_eq(now.not_found, 2);
	ck_assert(recall_is_open(&now));
	ck_assert_ptr_null(kk_warned(&kit, "recall-open", 0));
	kk_warns(&kit, "recall-not-found", 0, SEVERITY_CAUTION,
	         "NOT FOUND: 2 jars of the recall (R): lid box Box A, spring, buckled lids.");
	KK_REFUSED(&kit, FAULT_REFUSED, recall(TRACE_LID_BOX, "Box A", &again)); /* the open one has them all */
	KK_OK(&kit, follow(id, one_in(id, WHERE_MISSING), RECALL_GONE, true));
	now = the_recall(id);
	ck_assert_int_eq(now.not_found, 0);
	ck_assert(!recall_is_open(&now));
	ck_assert(!kk_fires(&kit, "recall-not-found"));
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_MISSING), 2);
	KK_OK(&kit, undo());
	now = the_recall(id);
	ck_assert_int_eq(now.not_found, 2);
	ck_assert(kk_fires(&kit, "recall-not-found"));
}
END_TEST

START_TEST(a_jar_said_to_be_gone_that_a_count_finds_is_looked_for_again)
{
	struct log_recall now;
	int64_t id;

	shelve(start(BIG_KETTLE, 3, BOX_A));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_GONE, true));
	now = the_recall(id);
	ck_assert(!recall_is_open(&now));
	KK_OK(&kit, kitchen_pantry_count(kit.kitchen, "grape jelly", "half_pint", 0, 1, &kit.fault));
	ck_assert_int_eq(to_find(id), 1);
}
END_TEST

START_TEST(a_jar_that_a_count_brings_back_is_looked_for_again)
{
	int64_t id;

	shelve(start(BIG_KETTLE, 3, BOX_A));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_NOT_FOUND, true));
	ck_assert_int_eq(to_find(id), 0);
	KK_OK(&kit, kitchen_pantry_count(kit.kitchen, "grape jelly", "half_pint", 0, 2, &kit.fault));
	ck_assert_int_eq(to_find(id), 2);
	ck_assert(!take(1, GONE_USED));
	ck_assert_str_eq(kit.fault.rule, "key-recalled");
}
END_TEST

START_TEST(a_recalled_jar_that_spoiled_is_thrown_out)
{
	int64_t id;

	shelve(start(BIG_KETTLE, 3, BOX_A));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	KK_OK(&kit, take(1, GONE_SPOILED));
	ck_assert_int_eq(to_find(id), 2);
	ck_assert_int_eq(in_place(TRACE_LID_BOX, "Box A", WHERE_DISCARDED), 1);
}
END_TEST

START_TEST(capitals_do_not_lead_to_another_lot)
{
	struct log_lot lots[] = { { .code = "L1", .product = "plum jam", .acidity = ACIDITY_ACID },
		                  { .code = "l1", .product = "pears", .acidity = ACIDITY_ACID },
		                  { .code = "spring-a", .product = "peaches", .acidity = ACIDITY_ACID } };
	static const char *const asked[][2] = { { "L1", "plum jam" }, { "l1", "pears" }, { "Spring-A", "peaches" } };
	struct log_entry entry = { .at = kit.clock.now, .verb = "test", .said = "[\"Lots\"]" };
	struct log_trace trace;
	char said[SENTENCE_MAX_BYTES];

	KK_OK(&kit, log_begin(kit.log, &kit.fault));
	for (size_t i = 0; i < 3; i++)
		KK_OK(&kit, log_put_lot(kit.log, &lots[i], &kit.fault));
	KK_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	for (size_t i = 0; i < 3; i++) {
		KK_OK(&kit, kitchen_trace_of(kit.kitchen, TRACE_LOT, asked[i][0], &trace, said, &kit.fault));
		ck_assert_msg(strstr(said, asked[i][1]) != NULL, "%s: %s", asked[i][0], said);
	}
}
END_TEST

START_TEST(a_recall_is_undone)
{
	int64_t id;
	char *before;
	char *after;

	shelve(start(BIG_KETTLE, 9, BOX_A));
	before = kk_dump(kit.log);
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_THROWN_OUT, true));
	KK_OK(&kit, undo());
	ck_assert_int_eq(to_find(id), 9);
	KK_OK(&kit, undo());
	ck_assert_int_eq(to_find(id), -1);
	after = kk_dump(kit.log);
	ck_assert_str_eq(after, before);
	KK_OK(&kit, kk_redo(&kit, 0));
	ck_assert_int_eq(to_find(id), 9);
	free(before);
	free(after);
}
END_TEST

START_TEST(recalled_again_it_takes_in_what_has_come_since)
{
	int64_t first;
	int64_t again;

	shelve(start(BIG_KETTLE, 9, BOX_A));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &first));
	KK_REFUSED(&kit, FAULT_REFUSED, recall(TRACE_LID_BOX, "box a, SPRING", &again));
	(void)start(LOW_KETTLE, 7, BOX_A);
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &again));
	ck_assert_int_eq(again, first);
	ck_assert_int_eq(to_find(first), 16);
}
END_TEST

START_TEST(a_recall_wants_a_reason_and_jars)
{
	int64_t id;

	KK_REFUSED(&kit, FAULT_REFUSED, recall(TRACE_LID_BOX, "Box A", &id));
	(void)start(BIG_KETTLE, 9, BOX_A);
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_recall(kit.kitchen, TRACE_LID_BOX, "Box A", "", &id, &kit.fault));
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
}
END_TEST

START_TEST(a_jar_in_a_canner_is_not_thrown_out_yet_and_one_on_the_rack_is)
{
	int64_t load_id = start(BIG_KETTLE, 9, BOX_A);
	int64_t id;

	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	KK_REFUSED(&kit, FAULT_REFUSED, follow(id, one_in(id, WHERE_CANNER), RECALL_THROWN_OUT, true));
	kk_to(&kit, load_id, PHASE_COOLING);
	KK_OK(&kit, follow(id, one_in(id, WHERE_RACK), RECALL_THROWN_OUT, true));
	ck_assert_int_eq(to_find(id), 0);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 0);
}
END_TEST

/* --- from the pot and the juicer ------------------------------------------------------------------ */

static void begin_with_pots(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
}

START_TEST(a_run_and_a_batch_lead_to_their_jars)
{
	char number[24];
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "24 lb");
	int64_t batch_id;

	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_OK(&kit, kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), pk_ul("2 gal"), &kit.fault));
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", 5, BOX_A);
	(void)snprintf(number, sizeof(number), "%lld", (long long)run_id);
	ck_assert_uint_eq(how_many(TRACE_RUN, number), 5);
	ck_assert_int_eq(in_place(TRACE_RUN, number, WHERE_WAITING), 5);
	(void)snprintf(number, sizeof(number), "%lld", (long long)batch_id);
	ck_assert_uint_eq(how_many(TRACE_BATCH, number), 5);
	ck_assert_uint_eq(how_many(TRACE_LID_BOX, "Box A"), 5);
}
END_TEST

START_TEST(a_waiting_jar_that_is_thrown_out_waits_no_longer)
{
	int64_t batch_id;
	int64_t id;

	(void)pk_juice(&kit, "grapes", "3 gal");
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", 5, BOX_A);
	ck_assert_int_eq(pk_waiting(&kit), 5);
	KK_OK(&kit, recall(TRACE_LID_BOX, "Box A", &id));
	KK_OK(&kit, follow(id, one_in(id, WHERE_WAITING), RECALL_THROWN_OUT, true));
	ck_assert_int_eq(pk_waiting(&kit), 0);
	ck_assert_int_eq(to_find(id), 0);
}
END_TEST

/* --- spoiled jars --------------------------------------------------------------------------------- */

static bool lot_is_stopped(void)
{
	return kitchen_board(kit.kitchen)->spoiled_count > 0;
}

static void spoiled_lot(void)
{
	shelve(start(BIG_KETTLE, 7, BOX_A));
	KK_OK(&kit, take(3, GONE_SPOILED));
}

START_TEST(jars_that_spoiled_hold_up_the_others_of_their_lot)
{
	char lot[NAME_MAX_BYTES];
	int64_t id;

	shelve(start(BIG_KETTLE, 7, BOX_A));
	KK_OK(&kit, take(1, GONE_USED));
	ck_assert(!lot_is_stopped());
	KK_OK(&kit, take(3, GONE_SPOILED));
	ck_assert(lot_is_stopped());
	ck_assert_int_eq(kitchen_board(kit.kitchen)->spoiled[0].spoiled, 3);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->spoiled[0].jars, 7);
	text_copy(lot, sizeof(lot), kitchen_board(kit.kitchen)->spoiled[0].code);
	KK_REFUSED(&kit, FAULT_REFUSED, take(1, GONE_USED));
	KK_REFUSED(&kit, FAULT_REFUSED, take(1, GONE_GIVEN));
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, recall(TRACE_LOT, lot, &id));
	ck_assert(!lot_is_stopped()); /* the recall is the stop now */
	KK_REFUSED(&kit, FAULT_REFUSED, take(1, GONE_USED));
	KK_OK(&kit, follow(id, one_in(id, WHERE_USED), RECALL_CLEARED, true));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_CLEARED, true));
	KK_OK(&kit, take(1, GONE_USED));
}
END_TEST

START_TEST(a_recall_done_with_before_a_jar_spoiled_does_not_cover_it)
{
	char lot[NAME_MAX_BYTES];
	int64_t id;

	spoiled_lot();
	text_copy(lot, sizeof(lot), kitchen_board(kit.kitchen)->spoiled[0].code);
	KK_OK(&kit, recall(TRACE_LOT, lot, &id));
	KK_OK(&kit, follow(id, one_in(id, WHERE_SHELF), RECALL_CLEARED, true));
	ck_assert(!lot_is_stopped());
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, take(1, GONE_SPOILED));
	ck_assert(lot_is_stopped());
	KK_REFUSED(&kit, FAULT_REFUSED, take(1, GONE_USED));
	KK_OK(&kit, take(3, GONE_SPOILED)); /* none is left, nothing to warn of */
	ck_assert(!lot_is_stopped());
}
END_TEST

START_TEST(spoiled_jars_of_one_lot_leave_another_alone)
{
	spoiled_lot();
	shelve(start(BIG_KETTLE, 7, BOX_A));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->spoiled_count, 1);
	KK_OK(&kit, take(4, GONE_SPOILED)); /* the rest of the older one */
	KK_OK(&kit, take(1, GONE_USED));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("recall", .begin = begin, .end = end),
	TEST(a_lid_box_leads_to_its_jars_wherever_they_are),
	TEST(load_lot_product_and_day_lead_to_their_jars),
	TEST(jars_that_spoiled_hold_up_the_others_of_their_lot),
	TEST(a_recall_done_with_before_a_jar_spoiled_does_not_cover_it),
	TEST(spoiled_jars_of_one_lot_leave_another_alone),
	TEST(what_is_not_there_is_said),
	TEST(jars_set_aside_are_told_apart),
	TEST(a_recall_stops_until_its_last_jar_is_followed_up),
	TEST(a_cleared_jar_may_be_eaten_again),
	TEST(what_was_not_found_may_turn_up),
	TEST(a_recall_stays_open_for_what_was_not_found_until_somebody_says_it_is_gone),
	TEST(a_jar_said_to_be_gone_that_a_count_finds_is_looked_for_again),
	TEST(a_jar_that_a_count_brings_back_is_looked_for_again),
	TEST(a_recalled_jar_that_spoiled_is_thrown_out),
	TEST(capitals_do_not_lead_to_another_lot),
	TEST(a_recall_is_undone),
	TEST(recalled_again_it_takes_in_what_has_come_since),
	TEST(a_recall_wants_a_reason_and_jars),
	TEST(a_jar_in_a_canner_is_not_thrown_out_yet_and_one_on_the_rack_is),
	GROUP("recall from pots", .begin = begin_with_pots, .end = end),
	TEST(a_run_and_a_batch_lead_to_their_jars),
	TEST(a_waiting_jar_that_is_thrown_out_waits_no_longer),
};

KK_TESTS("recall", listed)
