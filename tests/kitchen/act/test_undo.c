/* Taking back and doing again: every row as it was, and nothing forgotten. */
#include <stdlib.h>
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t load_id; /* 0: an act of the house */

static void begin(void)
{
	kk_begin(&kit);
	load_id = 0;
}

static void end(void)
{
	kk_end(&kit);
}

static bool undo(void)
{
	return kk_undo(&kit, load_id);
}

static bool redo(void)
{
	return kk_redo(&kit, load_id);
}

/* --- every kind of act, each with what must come before it --------------------------- */

static int64_t phase(void)
{
	return kk_phase(&kit, load_id);
}

static void jelly_to(enum phase_name name)
{
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	kk_to(&kit, load_id, name);
	kk_pass(&kit, 3 * MINUTE_MS);
}

/* clang-format off */
static void in_loaded(void) { jelly_to(PHASE_LOADED); }
static void in_come_up(void) { jelly_to(PHASE_COME_UP); }
static void in_hold(void) { jelly_to(PHASE_HOLD); }
static void in_unload(void) { jelly_to(PHASE_UNLOAD); }
static void in_check(void) { jelly_to(PHASE_SEAL_CHECK); }
/* clang-format on */

static void in_hold_over(void)
{
	in_hold();
	kk_pass(&kit, 10 * MINUTE_MS);
}

static void in_cooling_over(void)
{
	jelly_to(PHASE_COOLING);
	kk_pass(&kit, 12 * HOUR_MS);
}

static void beans_in_vent(void)
{
	load_id = kk_start(&kit, WEIGHT_CANNER, 9);
	kk_to(&kit, load_id, PHASE_VENT);
	kk_pass(&kit, 3 * MINUTE_MS);
}

static void stopped(void)
{
	in_hold();
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	kk_pass(&kit, MINUTE_MS);
}

static void one_unsealed(void)
{
	in_check();
	KK_OK(&kit, kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 4), JAR_UNSEALED, &kit.fault));
}

static void one_for_the_freezer(void)
{
	one_unsealed();
	KK_OK(&kit, kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 4), FATE_FREEZER, &kit.fault));
}

static void all_decided(void)
{
	one_for_the_freezer();
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
}

static void shelved(void)
{
	all_decided();
	kk_step(&kit, load_id);
	kk_pass(&kit, MINUTE_MS);
}

static bool do_start(void)
{
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	return true;
}

/* clang-format off */
static bool do_step(void) { return kk_try_step(&kit, load_id, true); }
static bool do_lost(void) { return kitchen_lost(kit.kitchen, phase(), &kit.fault); }
static bool do_heard(void) { return kitchen_acknowledge(kit.kitchen, phase(), &kit.fault); }
static bool do_stop(void) { return kk_try(&kit, load_id, EXCEPTION_STOP, 0); }
static bool do_vent_short(void) { return kk_try(&kit, load_id, EXCEPTION_VENT_SHORT, 0); }
static bool do_earlier(void) { return kk_try(&kit, load_id, EXCEPTION_EARLIER, 2); }
static bool do_broken(void) { return kk_try(&kit, load_id, EXCEPTION_BROKEN_JAR, 0); }
static bool do_again(void) { return kk_try(&kit, load_id, EXCEPTION_REDO, 0); }
static bool do_all_sealed(void) { return kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault); }
/* clang-format on */

static bool do_jar_state(void)
{
	return kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 2), JAR_DOUBTFUL, &kit.fault);
}

static bool do_siphoning(void)
{
	return kitchen_jar_siphoning(kit.kitchen, kk_jar(&kit, load_id, 2), SIPHON_OVER_HALF, &kit.fault);
}

static bool do_fate(void)
{
	return kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, 4), FATE_REPROCESS, &kit.fault);
}

static bool do_fate_rest(void)
{
	return kitchen_fate_rest(kit.kitchen, load_id, FATE_FRIDGE, &kit.fault);
}

static bool do_fate_done(void)
{
	return kk_done(&kit, kk_jar(&kit, load_id, 4), false);
}

/* clang-format off */
static bool do_name(void) { return kitchen_set_name(kit.kitchen, "Low Hollow", &kit.fault); }
static bool do_elevation(void) { return kitchen_set_elevation(kit.kitchen, "1417 m", &kit.fault); }
static bool do_unknown(void) { return kitchen_set_elevation(kit.kitchen, "unknown", &kit.fault); }
static bool do_boiled(void) { return kitchen_set_elevation_boiled(kit.kitchen, "206F", &kit.fault); }
static bool do_boil(void) { return kitchen_set_measured_boil(kit.kitchen, "203.5F", &kit.fault); }
static bool do_barometer(void) { return kitchen_set_barometer(kit.kitchen, "85.4 kPa", &kit.fault); }
static bool do_real(void) { return kitchen_set_invented(kit.kitchen, false, &kit.fault); }
/* clang-format on */

static bool do_add_canner(void)
{
	return kitchen_setup_line(kit.kitchen, "canner 9 steam \"Ninth\" pint=5", 0, &kit.fault);
}

static bool do_edit_canner(void)
{
	return kitchen_setup_line(kit.kitchen, "canner 8 dial_gauge \"Other\" quart=4 gauge_checked=2026-01-02",
	                          kk_station(&kit, LOW_KETTLE), &kit.fault);
}

static bool do_retire(void)
{
	return kitchen_setup_line(kit.kitchen, "canner 2 boiling_water \"Low kettle\" pint=7 retired",
	                          kk_station(&kit, LOW_KETTLE), &kit.fault);
}

static bool do_add_lids(void)
{
	return kitchen_setup_line(kit.kitchen, "lids \"Box C\" 12", 0, &kit.fault);
}

static bool do_edit_lids(void)
{
	return kitchen_setup_line(kit.kitchen, "lids \"Box A, less\" 50 retired", BOX_A, &kit.fault);
}

static const struct {
	const char *name;
	void (*before)(void);
	bool (*act)(void);
} acts[] = {
	{ "start", NULL, do_start },
	{ "heat on", in_loaded, do_step },
	{ "start of the hold", in_come_up, do_step },
	{ "end of the hold", in_hold_over, do_step },
	{ "jars are out", in_unload, do_step },
	{ "seal check begins", in_cooling_over, do_step },
	{ "shelved", all_decided, do_step },
	{ "boil lost", in_hold, do_lost },
	{ "vent lost", beans_in_vent, do_lost },
	{ "alarm heard", in_hold_over, do_heard },
	{ "stop", in_hold, do_stop },
	{ "vent short", beans_in_vent, do_vent_short },
	{ "began earlier", in_hold, do_earlier },
	{ "broken jar", in_hold, do_broken },
	{ "whole process again", stopped, do_again },
	{ "all sealed", one_unsealed, do_all_sealed },
	{ "jar state", in_check, do_jar_state },
	{ "siphoning", in_check, do_siphoning },
	{ "fate", one_unsealed, do_fate },
	{ "other fate", one_for_the_freezer, do_fate },
	{ "fate of the rest", one_unsealed, do_fate_rest },
	{ "fate done", shelved, do_fate_done },
	{ "kitchen name", NULL, do_name },
	{ "elevation", NULL, do_elevation },
	{ "elevation by boiling water", NULL, do_boiled },
	{ "elevation unknown", NULL, do_unknown },
	{ "measured boil", NULL, do_boil },
	{ "barometer", NULL, do_barometer },
	{ "invented", NULL, do_real },
	{ "add canner", NULL, do_add_canner },
	{ "edit canner", NULL, do_edit_canner },
	{ "retire canner", NULL, do_retire },
	{ "add lids", NULL, do_add_lids },
	{ "edit lids", NULL, do_edit_lids },
};
#define ACTS (int)(sizeof(acts) / sizeof(acts[0]))

static void prepare(int i)
{
	if (acts[i].before != NULL)
		acts[i].before();
}

static void same(const char *a, const char *b, int i, const char *when)
{
	ck_assert_msg(strcmp(a, b) == 0, "%s, %s:\n--- expected\n%s--- found\n%s", acts[i].name, when, a, b);
}

START_TEST(an_act_taken_back_or_done_again_leaves_every_row_as_it_was)
{
	char *before;
	char *after;
	char *dump;

	prepare(_i);
	before = kk_dump(kit.log);
	KK_OK(&kit, acts[_i].act());
	after = kk_dump(kit.log);
	ck_assert_str_ne(before, after);
	for (int round = 0; round < 3; round++) { /* to and fro */
		kk_pass(&kit, 10 * SECOND_MS);
		KK_OK(&kit, undo());
		dump = kk_dump(kit.log);
		same(before, dump, _i, "undone");
		free(dump);
		kk_pass(&kit, 10 * SECOND_MS);
		KK_OK(&kit, redo());
		dump = kk_dump(kit.log);
		same(after, dump, _i, "done again");
		free(dump);
	}
	free(after);
	free(before);
}
END_TEST

START_TEST(the_journal_keeps_the_act_its_undo_and_its_redo)
{
	struct log_entry newest;
	int64_t before;

	prepare(_i);
	before = kk_journal(&kit);
	KK_OK(&kit, acts[_i].act());
	KK_OK(&kit, undo());
	KK_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
	ck_assert_str_eq(newest.verb, "undo");
	ck_assert_int_eq(newest.undoes_id, before + 1);
	ck_assert_int_eq(strncmp(kk_words(&kit, &newest), "Undone: ", 8), 0);
	KK_OK(&kit, redo());
	KK_OK(&kit, log_newest_entry(kit.log, &newest, &kit.fault));
	ck_assert_str_eq(newest.verb, "redo");
	ck_assert_int_eq(newest.undoes_id, before + 2);
	ck_assert_int_eq(strncmp(kk_words(&kit, &newest), "Redone: ", 8), 0);
	ck_assert_ptr_null(strstr(kk_words(&kit, &newest), "Undone: "));
	ck_assert_int_eq(newest.id, before + 3);
}
END_TEST

START_TEST(an_undo_is_taken_back_for_2_min_and_no_longer)
{
	char *before;
	char *after;

	prepare(_i);
	KK_OK(&kit, acts[_i].act());
	KK_REFUSED(&kit, FAULT_MISSING, redo()); /* nothing is undone yet */
	KK_OK(&kit, undo());
	kk_pass(&kit, BREAK_UNDO_MS);
	KK_OK(&kit, redo());
	KK_OK(&kit, undo());
	before = kk_dump(kit.log);
	kk_pass(&kit, BREAK_UNDO_MS + 1);
	KK_REFUSED(&kit, FAULT_REFUSED, redo());
	after = kk_dump(kit.log);
	same(before, after, _i, "refused");
	free(after);
	free(before);
}
END_TEST

/* --- chains ------------------------------------------------------------------------------ */

START_TEST(the_whole_story_of_a_load_can_be_taken_back_step_by_step)
{
	static const enum phase_name back[] = { PHASE_COOLING, PHASE_UNLOAD, PHASE_REST };
	char *dumps[3];

	load_id = kk_start(&kit, BIG_KETTLE, 9);
	kk_to(&kit, load_id, PHASE_REST);
	dumps[2] = kk_dump(kit.log);
	kk_to(&kit, load_id, PHASE_UNLOAD);
	dumps[1] = kk_dump(kit.log);
	kk_to(&kit, load_id, PHASE_COOLING);
	dumps[0] = kk_dump(kit.log);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	for (int i = 0; i < 3; i++) {
		char *dump;

		KK_OK(&kit, undo());
		ck_assert_int_eq(kk_name(&kit, load_id), back[i]);
		dump = kk_dump(kit.log);
		ck_assert_str_eq(dump, dumps[i]);
		free(dump);
		free(dumps[i]);
	}
	KK_REFUSED(&kit, FAULT_REFUSED, undo()); /* the hold ended long ago */
}
END_TEST

START_TEST(undone_steps_are_done_again_in_their_order)
{
	load_id = kk_start(&kit, WEIGHT_CANNER, 9);
	kk_to(&kit, load_id, PHASE_VENT);
	KK_OK(&kit, undo());
	KK_OK(&kit, undo());
	KK_OK(&kit, undo());
	ck_assert_ptr_null(kk_find(&kit, load_id));
	KK_OK(&kit, redo());
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_LOADED);
	KK_OK(&kit, redo());
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COME_UP);
	KK_OK(&kit, redo());
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_VENT);
	KK_REFUSED(&kit, FAULT_MISSING, redo());
}
END_TEST

START_TEST(after_a_fresh_act_there_is_nothing_to_do_again)
{
	in_hold();
	KK_OK(&kit, do_broken());
	KK_OK(&kit, undo());
	KK_OK(&kit, do_lost());
	KK_REFUSED(&kit, FAULT_MISSING, redo());
}
END_TEST

START_TEST(acts_on_other_loads_do_not_stand_in_the_way)
{
	int64_t other = kk_start(&kit, LOW_KETTLE, 7);

	in_hold();
	KK_OK(&kit, do_broken());
	kk_pass(&kit, 5 * SECOND_MS);
	kk_step(&kit, other);
	KK_OK(&kit, undo());
	ck_assert_int_eq(kk_load(&kit, load_id).broken, 0);
	ck_assert_int_eq(kk_name(&kit, other), PHASE_COME_UP);
	kk_pass(&kit, 5 * SECOND_MS);
	kk_step(&kit, other);
	KK_OK(&kit, redo());
	ck_assert_int_eq(kk_load(&kit, load_id).broken, 1);
}
END_TEST

START_TEST(a_redo_does_not_bring_back_an_old_clock)
{
	in_come_up();
	kk_step(&kit, load_id); /* the hold begins ... */
	kk_pass(&kit, 5 * SECOND_MS);
	KK_OK(&kit, undo()); /* ... by mistake */
	kk_pass(&kit, 9 * MINUTE_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, redo());
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 600);
}
END_TEST

/* --- what stands in the way ----------------------------------------------------------------- */

START_TEST(jars_do_not_go_back_into_a_canner_that_is_taken)
{
	char *before;
	char *after;

	in_unload();
	kk_step(&kit, load_id);
	(void)kk_start(&kit, BIG_KETTLE, 5);
	before = kk_dump(kit.log);
	KK_REFUSED(&kit, FAULT_CONFLICT, undo());
	after = kk_dump(kit.log);
	ck_assert_str_eq(before, after);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_COOLING);
	free(after);
	free(before);
}
END_TEST

START_TEST(a_start_whose_lot_code_was_taken_meanwhile_is_not_done_again)
{
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	KK_OK(&kit, undo());
	(void)kk_start(&kit, LOW_KETTLE, 7); /* 2026-09-14-B1 now */
	KK_REFUSED(&kit, FAULT_CONFLICT, redo());
	ck_assert(!strip_has_load(kk_canner(&kit, BIG_KETTLE)));
}
END_TEST

START_TEST(a_canner_that_has_held_jars_is_not_undone)
{
	KK_OK(&kit, do_add_canner());
	(void)kk_start(&kit, 9, 3);
	KK_REFUSED(&kit, FAULT_CONFLICT, undo());
}
END_TEST

START_TEST(a_lid_box_in_use_is_not_undone)
{
	(void)kk_start(&kit, BIG_KETTLE, 9);
	load_id = 0;
	KK_OK(&kit, do_add_lids());
	KK_OK(&kit, undo()); /* nothing hangs on it yet */
	load_id = 0;
	KK_OK(&kit, do_add_lids());
	{
		struct load_order order = kk_order(&kit, LOW_KETTLE, 3);
		struct log_lid_box *boxes;
		size_t count;
		int64_t started;

		KK_OK(&kit, log_lid_boxes(kit.log, &boxes, &count, &kit.fault));
		order.lid_box_id = boxes[count - 1].id;
		free(boxes);
		KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &started, &kit.fault));
	}
	KK_REFUSED(&kit, FAULT_CONFLICT, undo());
}
END_TEST

START_TEST(a_canners_key_taken_meanwhile_stays_taken)
{
	KK_OK(&kit, do_retire());
	{
		struct log_station station = { .digit = LOW_KETTLE, .kind = STATION_STEAM, .name = "New" };

		KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
	}
	KK_OK(&kit, undo()); /* the new one */
	KK_OK(&kit, undo()); /* the retirement */
	ck_assert_str_eq(kk_canner(&kit, LOW_KETTLE)->station.name, "Low kettle");
}
END_TEST

/* --- undo at an empty canner, and in the house ------------------------------------------------- */

START_TEST(at_an_empty_canner_undo_brings_the_last_load_back)
{
	struct log_subject station = { SUBJECT_STATION, kk_station(&kit, BIG_KETTLE) };
	char said[SENTENCE_MAX_BYTES];

	in_unload();
	kk_step(&kit, load_id);
	ck_assert(!strip_has_load(kk_canner(&kit, BIG_KETTLE)));
	KK_OK(&kit, kitchen_undo(kit.kitchen, station, said, sizeof(said), &kit.fault));
	ck_assert_int_eq(strip_load(kk_canner(&kit, BIG_KETTLE))->row.id, load_id);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_UNLOAD);
	ck_assert_ptr_nonnull(strstr(said, "jars are out"));
	KK_OK(&kit, kitchen_redo(kit.kitchen, kk_about(load_id), said, sizeof(said), &kit.fault));
	ck_assert(!strip_has_load(kk_canner(&kit, BIG_KETTLE)));
}
END_TEST

START_TEST(a_start_taken_back_is_done_again_at_the_empty_canner)
{
	struct log_subject station = { SUBJECT_STATION, kk_station(&kit, BIG_KETTLE) };
	char said[SENTENCE_MAX_BYTES];

	load_id = kk_start(&kit, BIG_KETTLE, 9);
	KK_OK(&kit, undo());
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 0);
	KK_OK(&kit, kitchen_redo(kit.kitchen, station, said, sizeof(said), &kit.fault));
	ck_assert_int_eq(strip_load(kk_canner(&kit, BIG_KETTLE))->row.id, load_id);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 9);
}
END_TEST

START_TEST(undo_in_the_house_leaves_the_canners_alone)
{
	KK_OK(&kit, do_name());
	in_come_up();
	load_id = 0;
	KK_OK(&kit, undo());
	ck_assert_str_eq(kitchen_board(kit.kitchen)->house.name, "Quince Hollow");
	ck_assert(strip_has_load(kk_canner(&kit, BIG_KETTLE)));
}
END_TEST

START_TEST(undo_does_not_change_a_canner_under_a_load)
{
	char *before;
	char *after;

	KK_OK(&kit, do_edit_canner());
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	before = kk_dump(kit.log);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_undo(&kit, 0));
	after = kk_dump(kit.log);
	ck_assert_str_eq(before, after);
	kk_to(&kit, load_id, PHASE_COOLING);
	KK_OK(&kit, kk_undo(&kit, 0));
	free(after);
	free(before);
}
END_TEST

/* What is undone is told, not ordered. */
START_TEST(an_undone_loss_does_not_read_as_an_order)
{
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, MINUTE_MS);
	kk_lost(&kit, load_id);
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert_msg(strstr(kk_said(&kit), "Undone: Big kettle goes on as it was. It had been noted: boil lost") !=
	                  NULL,
	              "%s", kk_said(&kit));
}
END_TEST

START_TEST(nor_does_redo)
{
	KK_OK(&kit, do_elevation());
	KK_OK(&kit, undo());
	load_id = kk_start(&kit, BIG_KETTLE, 9);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_redo(&kit, 0));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->house.elevation.um, 4650 * FOOT_UM);
}
END_TEST

START_TEST(a_practice_log_is_not_made_a_real_one_by_undo)
{
	kk_end(&kit);
	kk_begin_empty(&kit);
	KK_OK(&kit, kitchen_set_practice(kit.kitchen, 60, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED, undo());
	ck_assert_int_eq(kitchen_board(kit.kitchen)->house.practice_speed, 60);
}
END_TEST

START_TEST(on_a_new_log_there_is_nothing_to_undo)
{
	kk_end(&kit);
	kk_begin_empty(&kit);
	KK_REFUSED(&kit, FAULT_MISSING, undo());
	KK_REFUSED(&kit, FAULT_MISSING, redo());
	load_id = 5;
	KK_REFUSED(&kit, FAULT_MISSING, undo());
}
END_TEST

START_TEST(undo_works_on_after_the_program_was_closed)
{
	char *before;
	char *after;

	in_hold();
	before = kk_dump(kit.log);
	KK_OK(&kit, do_lost());
	kk_reopen(&kit);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, undo());
	after = kk_dump(kit.log);
	ck_assert_str_eq(before, after);
	free(after);
	free(before);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("every kind", .begin = begin, .end = end),
	EACH(an_act_taken_back_or_done_again_leaves_every_row_as_it_was, 0, ACTS),
	EACH(an_undo_is_taken_back_for_2_min_and_no_longer, 0, ACTS),
	EACH(the_journal_keeps_the_act_its_undo_and_its_redo, 0, ACTS),
	GROUP("chains", .begin = begin, .end = end),
	TEST(the_whole_story_of_a_load_can_be_taken_back_step_by_step),
	TEST(undone_steps_are_done_again_in_their_order),
	TEST(after_a_fresh_act_there_is_nothing_to_do_again),
	TEST(acts_on_other_loads_do_not_stand_in_the_way),
	TEST(a_redo_does_not_bring_back_an_old_clock),
	TEST(undo_works_on_after_the_program_was_closed),
	GROUP("in the way", .begin = begin, .end = end),
	TEST(jars_do_not_go_back_into_a_canner_that_is_taken),
	TEST(a_start_whose_lot_code_was_taken_meanwhile_is_not_done_again),
	TEST(a_canner_that_has_held_jars_is_not_undone),
	TEST(a_lid_box_in_use_is_not_undone),
	TEST(a_canners_key_taken_meanwhile_stays_taken),
	TEST(at_an_empty_canner_undo_brings_the_last_load_back),
	TEST(a_start_taken_back_is_done_again_at_the_empty_canner),
	TEST(undo_in_the_house_leaves_the_canners_alone),
	TEST(undo_does_not_change_a_canner_under_a_load),
	TEST(an_undone_loss_does_not_read_as_an_order),
	TEST(nor_does_redo),
	TEST(a_practice_log_is_not_made_a_real_one_by_undo),
	TEST(on_a_new_log_there_is_nothing_to_undo),
};

KK_TESTS("undo", listed)
