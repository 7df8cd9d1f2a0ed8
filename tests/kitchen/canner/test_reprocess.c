/*
 * Jars processed again: within their window, by the same method, the full time, under
 * new lids; the old jars stay on record and the new ones are followed from them.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/canner.h"
#include "kitchen/canner/reprocess.h"
#include "kitchen/history/seasons.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "log/tables/canner.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t old_id;

/* Peaches, which may be heated twice. */
static int64_t start(int digit, int jars)
{
	struct load_order order = kk_order(&kit, digit, jars);
	int64_t load_id;

	order.lid_box_id = BOX_A;
	ck_assert(text_copy(order.product, sizeof(order.product), "peaches") &&
	          text_copy(order.food, sizeof(order.food), "peaches") &&
	          text_copy(order.pack, sizeof(order.pack), "hot") && text_copy(order.jar, sizeof(order.jar), "pint"));
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	return load_id;
}

/* A load at its seal check: jars 2 and 3 unsealed, to be processed again. */
static void begin(void)
{
	kk_begin(&kit);
	old_id = start(BIG_KETTLE, 9);
	kk_to(&kit, old_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	for (int place = 2; place <= 3; place++) {
		KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, old_id, place), JAR_UNSEALED, &kit.fault));
		KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, old_id, place), FATE_REPROCESS, &kit.fault));
	}
}

static void end(void)
{
	kk_end(&kit);
}

static bool again(int64_t load_id, int place, int digit, int64_t box, int64_t *new_id)
{
	struct reprocess_order order = { kk_jar(&kit, load_id, place), kk_station(&kit, digit), box, ACID_NOT_SAID,
		                         "" };

	return kitchen_reprocess(kit.kitchen, &order, new_id, &kit.fault);
}

static void code_of(int64_t load_id, char code[NAME_MAX_BYTES])
{
	struct log_lot lot;

	KK_OK(&kit, log_lot_get(kit.log, kk_jar_row(&kit, load_id, 1).lot_id, &lot, &kit.fault));
	(void)snprintf(code, NAME_MAX_BYTES, "%s", lot.code);
}

START_TEST(a_load_of_its_own_with_new_lids_and_the_same_process)
{
	char code[NAME_MAX_BYTES];
	int64_t new_id;
	int before = kk_lids_used(&kit, BOX_B);

	KK_OK(&kit, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	ck_assert_int_ne(new_id, old_id);
	ck_assert_int_eq(strip_load(kk_strip(&kit, new_id))->jars, 2); /* both go in */
	ck_assert_int_eq(kk_name(&kit, new_id), PHASE_LOADED);
	ck_assert_int_eq(kk_load(&kit, new_id).minutes, kk_load(&kit, old_id).minutes);
	ck_assert_int_eq(kk_load(&kit, new_id).method, kk_load(&kit, old_id).method);
	ck_assert_str_eq(kk_jar_row(&kit, new_id, 1).size, kk_jar_row(&kit, old_id, 2).size);
	code_of(new_id, code);
	ck_assert_str_eq(code, "2026-09-14-B1R1");
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 9);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_B), before + 2);
}
END_TEST

START_TEST(the_old_jars_stay_on_record_and_the_new_ones_name_them)
{
	int64_t new_id;

	KK_OK(&kit, again(old_id, 3, LOW_KETTLE, BOX_B, &new_id));
	ck_assert_int_eq(kk_jar_row(&kit, old_id, 2).state, JAR_UNSEALED);
	ck_assert_int_eq(kk_jar_row(&kit, old_id, 2).fate, FATE_REPROCESS);
	ck_assert_int_gt(kk_jar_row(&kit, old_id, 2).fate_done_wall_ms, 0);
	ck_assert_int_eq(kk_jar_row(&kit, new_id, 1).from_jar_id, kk_jar(&kit, old_id, 2));
	ck_assert_int_eq(kk_jar_row(&kit, new_id, 2).from_jar_id, kk_jar(&kit, old_id, 3));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0);
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_jar_sealed(kit.kitchen, kk_jar(&kit, old_id, 2), SEAL_BY_ALL_THREE, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_jar_fate(kit.kitchen, kk_jar(&kit, old_id, 2), FATE_FRIDGE, &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 9); /* no jar was made twice */
}
END_TEST

START_TEST(it_is_undone_as_one_act_and_done_again)
{
	char *before = kk_dump(kit.log);
	char *after;
	int64_t new_id;

	KK_OK(&kit, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	KK_OK(&kit, kk_undo(&kit, new_id));
	after = kk_dump(kit.log);
	ck_assert_str_eq(after, before);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 2);
	KK_OK(&kit, kk_redo(&kit, new_id));
	ck_assert_int_eq(strip_load(kk_strip(&kit, new_id))->jars, 2);
	free(before);
	free(after);
}
END_TEST

START_TEST(once_more_it_becomes_r2)
{
	char code[NAME_MAX_BYTES];
	int64_t first;
	int64_t second;

	KK_OK(&kit, again(old_id, 2, LOW_KETTLE, BOX_B, &first));
	kk_to(&kit, first, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, first, 1), JAR_DOUBTFUL, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, first, 1), FATE_REPROCESS, &kit.fault));
	KK_OK(&kit, again(first, 1, BIG_KETTLE, BOX_B, &second));
	code_of(second, code);
	ck_assert_str_eq(code, "2026-09-14-B1R2");
	ck_assert_int_eq(strip_load(kk_strip(&kit, second))->jars, 1);
}
END_TEST

/* A539, UNL: 24 h from a process that was right. */
START_TEST(after_24_h_it_is_too_late)
{
	int64_t ended = kk_load(&kit, old_id).process_ended_wall_ms;
	int64_t new_id;

	kk_pass(&kit, ended + 24 * HOUR_MS + 1 - kit.clock.now.wall_ms);
	ck_assert(!again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "do not taste"));
	kk_pass(&kit, -1);
	KK_OK(&kit, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
}
END_TEST

/* UNL, one ISU text: 2 h from a process that was wrong. */
START_TEST(after_a_process_error_2_h_are_all_there_is)
{
	int64_t load_id = start(BIG_KETTLE, 9);
	int64_t new_id;

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 2 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	kk_pass(&kit, 3 * MINUTE_MS);
	kk_step(&kit, load_id);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_fate_rest(kit.kitchen, load_id, FATE_REPROCESS, &kit.fault));
	kk_pass(&kit, kk_load(&kit, load_id).process_ended_wall_ms + 2 * HOUR_MS + 1 - kit.clock.now.wall_ms);
	KK_REFUSED(&kit, FAULT_REFUSED, again(load_id, 1, LOW_KETTLE, BOX_B, &new_id));
	kk_pass(&kit, -1);
	KK_OK(&kit, again(load_id, 1, LOW_KETTLE, BOX_B, &new_id));
	ck_assert_int_eq(strip_load(kk_strip(&kit, new_id))->jars, 7); /* as many as that canner takes */
	ck_assert_int_eq(kk_load(&kit, new_id).verdict, VERDICT_OPEN);
	KK_OK(&kit, again(load_id, 8, BIG_KETTLE, BOX_B, &new_id)); /* the others, in the same lot */
	ck_assert_int_eq(strip_load(kk_strip(&kit, new_id))->jars, 2);
}
END_TEST

START_TEST(the_same_method_again_in_a_free_canner_with_lids)
{
	struct log_lid_box box;
	int64_t new_id;
	int64_t other;

	KK_REFUSED(&kit, FAULT_REFUSED, again(old_id, 2, STEAM_CANNER, BOX_B, &new_id));
	KK_REFUSED(&kit, FAULT_REFUSED, again(old_id, 2, WEIGHT_CANNER, BOX_B, &new_id));
	other = kk_start(&kit, LOW_KETTLE, 7);
	KK_REFUSED(&kit, FAULT_STALE, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	(void)other;
	KK_OK(&kit, log_lid_box_get(kit.log, BOX_B, &box, &kit.fault));
	box.lids = box.used + 1;
	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED, again(old_id, 2, BIG_KETTLE, BOX_B, &new_id));
	KK_OK(&kit, again(old_id, 2, BIG_KETTLE, 0, &new_id)); /* not noted */
}
END_TEST

/* schema/food.csv: a gel may break when it is heated again, our caution. */
START_TEST(a_food_that_is_not_processed_again_says_why)
{
	int64_t load_id = kk_start(&kit, LOW_KETTLE, 7); /* jelly */
	int64_t new_id;

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 1), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 1), FATE_REPROCESS, &kit.fault));
	ck_assert(!again(load_id, 1, LOW_KETTLE, BOX_B, &new_id));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_msg(strstr(kit.fault.sentence, "Heating it again may break the gel") != NULL, "%s",
	              kit.fault.sentence);
}
END_TEST

START_TEST(only_jars_set_aside_for_it)
{
	int64_t new_id;

	KK_REFUSED(&kit, FAULT_REFUSED, again(old_id, 1, LOW_KETTLE, BOX_B, &new_id));
	KK_OK(&kit, kk_bin(&kit, kk_jar(&kit, old_id, 2)));
	KK_REFUSED(&kit, FAULT_REFUSED, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	KK_OK(&kit, again(old_id, 3, LOW_KETTLE, BOX_B, &new_id));
	ck_assert_int_eq(strip_load(kk_strip(&kit, new_id))->jars, 1);
}
END_TEST

START_TEST(the_story_runs_over_both_loads)
{
	struct log_entry *rows;
	int64_t new_id;
	size_t count;
	int told = 0;

	KK_OK(&kit, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	for (int i = 0; i < 2; i++) {
		KK_OK(&kit, kitchen_story(kit.kitchen, kk_about(i == 0 ? old_id : new_id), &rows, &count, &kit.fault));
		ck_assert_str_eq(rows[0].verb, "start_load");
		ck_assert_str_eq(rows[count - 1].verb, "reprocess");
		for (size_t j = 0; j < count; j++)
			told += strstr(kk_words(&kit, &rows[j]),
			               "2 jars of 2026-09-14-B1 processed again as 2026-09-14-B1R1") != NULL;
		free(rows);
	}
	ck_assert_int_eq(told, 2);
}
END_TEST

START_TEST(a_trace_follows_the_jar_under_its_new_lid)
{
	char said[SENTENCE_MAX_BYTES];
	struct log_traced *rows;
	struct log_trace trace;
	int64_t new_id;
	size_t count;
	int again_there = 0;

	KK_OK(&kit, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	KK_OK(&kit, kitchen_trace_of(kit.kitchen, TRACE_LID_BOX, "Box A", &trace, said, &kit.fault));
	KK_OK(&kit, kitchen_trace(kit.kitchen, &trace, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 11);
	for (size_t i = 0; i < count; i++)
		again_there += jar_where(&rows[i]) == WHERE_REPROCESSED;
	ck_assert_int_eq(again_there, 2);
	free(rows);
}
END_TEST

START_TEST(a_recall_goes_on_with_the_new_jar)
{
	struct log_recall *recalls;
	struct log_traced *rows;
	int64_t recall_id;
	int64_t new_id;
	size_t count;

	KK_OK(&kit, kitchen_recall(kit.kitchen, TRACE_LID_BOX, "Box A", "buckled", &recall_id, &kit.fault));
	KK_OK(&kit, again(old_id, 2, LOW_KETTLE, BOX_B, &new_id));
	KK_OK(&kit, kitchen_recalls(kit.kitchen, &recalls, &count, &kit.fault));
	ck_assert_int_eq(recalls[0].jars, 11);
	ck_assert_int_eq(recalls[0].to_find, 9);
	free(recalls);
	KK_OK(&kit, kitchen_recall_jars(kit.kitchen, recall_id, &rows, &count, &kit.fault));
	ck_assert_int_eq(rows[1].mark.outcome, RECALL_REPROCESSED);
	free(rows);
	KK_OK(&kit, kk_undo(&kit, new_id));
	KK_OK(&kit, kitchen_recalls(kit.kitchen, &recalls, &count, &kit.fault));
	ck_assert_int_eq(recalls[0].to_find, 9);
	ck_assert_int_eq(recalls[0].jars, 9);
	free(recalls);
}
END_TEST

/* --- from a pot ------------------------------------------------------------------------- */

static void begin_with_pots(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "3 gal");
}

static bool past_says(int64_t batch_id, const char *words)
{
	struct past_line *rows;
	bool said = false;
	size_t count;

	KK_OK(&kit,
	      kitchen_past(kit.kitchen, (struct log_subject){ SUBJECT_BATCH, batch_id }, &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		said |= strcmp(rows[i].words, words) == 0;
	free(rows);
	return said;
}

START_TEST(a_batch_counts_no_jar_twice_and_its_faults_follow)
{
	struct pick picks[1];
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape juice", "pint", 1);
	int64_t load_id;
	int64_t new_id;
	int jars;

	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "pint", 7, BOX_A);
	picks[0] = pk_pick(batch_id, "pint", 7);
	load_id = pk_load(&kit, BIG_KETTLE, picks, 1);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 1), JAR_UNSEALED, &kit.fault));
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 1), FATE_REPROCESS, &kit.fault));
	KK_OK(&kit, again(load_id, 1, LOW_KETTLE, BOX_A, &new_id));
	KK_OK(&kit, kitchen_jars_filled(kit.kitchen, batch_id, "pint", &jars, &kit.fault));
	ck_assert_int_eq(jars, 7);
	ck_assert(past_says(batch_id, "Filled: 7 pints"));
	KK_OK(&kit, kitchen_batch_wrong(kit.kitchen, batch_id, "fresh juice", &kit.fault));
	ck_assert_int_eq(kk_load(&kit, new_id).verdict, VERDICT_UNKNOWN);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("reprocess", .begin = begin, .end = end),
	TEST(a_load_of_its_own_with_new_lids_and_the_same_process),
	TEST(the_old_jars_stay_on_record_and_the_new_ones_name_them),
	TEST(it_is_undone_as_one_act_and_done_again),
	TEST(once_more_it_becomes_r2),
	TEST(after_24_h_it_is_too_late),
	TEST(after_a_process_error_2_h_are_all_there_is),
	TEST(the_same_method_again_in_a_free_canner_with_lids),
	TEST(a_food_that_is_not_processed_again_says_why),
	TEST(only_jars_set_aside_for_it),
	TEST(the_story_runs_over_both_loads),
	TEST(a_trace_follows_the_jar_under_its_new_lid),
	TEST(a_recall_goes_on_with_the_new_jar),
	GROUP("from a pot", .begin = begin_with_pots, .end = end),
	TEST(a_batch_counts_no_jar_twice_and_its_faults_follow),
};

KK_TESTS("reprocess", listed)
