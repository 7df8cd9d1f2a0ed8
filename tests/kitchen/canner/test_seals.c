/* The morning after: which jars sealed, and what becomes of the others. */
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t load_id;

static void begin(void)
{
	kk_begin(&kit);
	load_id = kk_start(&kit, BIG_KETTLE, 9);
}

static void end(void)
{
	kk_end(&kit);
}

/* As if each jar of the load had gone through a right process, 12 h ago. */
static void to_check(void)
{
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
}

/* Stopped in the hold; the jars are out of the canner. */
static void to_failed(void)
{
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 2 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	kk_pass(&kit, 3 * MINUTE_MS);
	kk_step(&kit, load_id);
	kk_pass(&kit, 10 * SECOND_MS);
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_SEAL_CHECK);
}

static void until_after_process(int64_t ms)
{
	kk_pass(&kit, kk_load(&kit, load_id).process_ended_wall_ms + ms - kit.clock.now.wall_ms);
}

static bool mark(int place, enum jar_state state)
{
	return kk_mark(&kit, kk_jar(&kit, load_id, place), state);
}

static bool lose(int place, enum siphoning siphoning)
{
	return kitchen_jar_siphoning(kit.kitchen, kk_jar(&kit, load_id, place), siphoning, &kit.fault);
}

static bool fate(int place, enum jar_fate fate_chosen)
{
	return kitchen_jar_fate(kit.kitchen, kk_jar(&kit, load_id, place), fate_chosen, &kit.fault);
}

static bool all_sealed(void)
{
	return kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault);
}

static bool fate_rest(enum jar_fate fate_chosen)
{
	return kitchen_fate_rest(kit.kitchen, load_id, fate_chosen, &kit.fault);
}

/* --- marking ----------------------------------------------------------------------- */

/* A539: check seals after 12 to 24 h. */
START_TEST(seals_are_looked_at_after_12_h)
{
	kk_to(&kit, load_id, PHASE_COOLING);
	kk_pass(&kit, 12 * HOUR_MS - 1);
	ck_assert(!kk_face(&kit, load_id).due);
	KK_REFUSED(&kit, FAULT_CONFIRM, kk_try_step(&kit, load_id, false));
	kk_pass(&kit, 1);
	ck_assert(kk_face(&kit, load_id).ringing);
	ck_assert_int_eq(kk_face(&kit, load_id).alarm, ALARM_TOMORROW);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
}
END_TEST

START_TEST(nothing_is_sealed_before_the_jars_are_out)
{
	static const enum phase_name inside[] = { PHASE_LOADED, PHASE_HOLD, PHASE_REST, PHASE_UNLOAD };

	for (size_t i = 0; i < sizeof(inside) / sizeof(inside[0]); i++) {
		kk_to(&kit, load_id, inside[i]);
		KK_REFUSED(&kit, FAULT_REFUSED, all_sealed());
		KK_REFUSED(&kit, FAULT_REFUSED, mark(1, JAR_UNSEALED));
		KK_REFUSED(&kit, FAULT_REFUSED, lose(1, SIPHON_SLIGHT));
		KK_REFUSED(&kit, FAULT_REFUSED, fate_rest(FATE_FRIDGE));
	}
}
END_TEST

START_TEST(while_cooling_a_failed_jar_may_be_marked_but_no_seal)
{
	kk_to(&kit, load_id, PHASE_COOLING);
	kk_pass(&kit, HOUR_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, all_sealed());
	KK_REFUSED(&kit, FAULT_REFUSED, mark(1, JAR_SEALED));
	KK_OK(&kit, mark(1, JAR_BROKEN));
	KK_OK(&kit, mark(2, JAR_UNSEALED));
	KK_OK(&kit, fate(2, FATE_FRIDGE));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 7);
}
END_TEST

START_TEST(all_sealed_is_one_act)
{
	int64_t before;

	to_check();
	before = kk_journal(&kit);
	KK_OK(&kit, all_sealed());
	ck_assert_int_eq(kk_journal(&kit), before + 1);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 0);
	for (int place = 1; place <= 9; place++) {
		ck_assert_int_eq(kk_jar_row(&kit, load_id, place).state, JAR_SEALED);
		ck_assert_int_eq(kk_jar_row(&kit, load_id, place).checked_wall_ms, kit.clock.now.wall_ms);
	}
	KK_REFUSED(&kit, FAULT_REFUSED, all_sealed()); /* nothing left to mark */
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 9);
}
END_TEST

START_TEST(exceptions_marked_first_are_left_alone_by_all_sealed)
{
	to_check();
	KK_OK(&kit, mark(3, JAR_UNSEALED));
	KK_OK(&kit, mark(4, JAR_DOUBTFUL));
	KK_OK(&kit, mark(5, JAR_BROKEN));
	KK_OK(&kit, lose(6, SIPHON_UNDER_HALF));
	KK_OK(&kit, all_sealed());
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 3).state, JAR_UNSEALED);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 4).state, JAR_DOUBTFUL);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 5).state, JAR_BROKEN);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 6).state, JAR_SEALED);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 6).siphoning, SIPHON_UNDER_HALF);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 2);
}
END_TEST

START_TEST(a_mark_can_be_set_back_to_not_looked_at)
{
	to_check();
	KK_OK(&kit, mark(3, JAR_UNSEALED));
	KK_OK(&kit, fate(3, FATE_FREEZER));
	KK_OK(&kit, mark(3, JAR_UNCHECKED));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 3).checked_wall_ms, 0);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 3).fate, FATE_NONE);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 9);
}
END_TEST

START_TEST(a_jar_broken_today_is_not_counted_as_made_today)
{
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 9);
	kk_to(&kit, load_id, PHASE_COOLING);
	KK_OK(&kit, mark(9, JAR_BROKEN));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 8);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 9); /* its lid is gone all the same */
}
END_TEST

/* --- what needs a fate ---------------------------------------------------------------- */

/* One method failing counts as unsealed: doubtful too (common practice, no
 * source).  Over half the liquid lost: NCHFP liquid-loss answer. */
START_TEST(who_needs_a_fate)
{
	static const bool needs[JAR_STATE_COUNT] = { [JAR_UNSEALED] = true, [JAR_DOUBTFUL] = true };

	for (int state = 0; state < JAR_STATE_COUNT; state++) {
		struct log_jar jar = { .state = (enum jar_state)state, .verdict = VERDICT_VALID };

		ck_assert_int_eq(jar_needs_fate(&jar), needs[state]);
		jar.siphoning = SIPHON_UNDER_HALF;
		ck_assert_int_eq(jar_needs_fate(&jar), needs[state]);
		jar.siphoning = SIPHON_OVER_HALF;
		ck_assert_int_eq(jar_needs_fate(&jar), state != JAR_BROKEN);
	}
}
END_TEST

/* Not valid; and low-acid food of which nobody knows that it was (21 CFR 114.3). */
START_TEST(a_jar_that_nobody_may_eat_needs_a_fate)
{
	for (int acidity = 0; acidity < ACIDITY_COUNT; acidity++) {
		struct log_jar jar = { .state = JAR_SEALED, .acidity = (enum acidity)acidity };

		jar.verdict = VERDICT_UNKNOWN;
		ck_assert_int_eq(jar_needs_fate(&jar), acidity == ACIDITY_LOW_ACID);
		jar.verdict = VERDICT_NOT_VALID;
		ck_assert(jar_needs_fate(&jar));
		jar.state = JAR_BROKEN;
		ck_assert(!jar_needs_fate(&jar));
	}
}
END_TEST

START_TEST(a_good_jar_gets_no_fate)
{
	to_check();
	KK_REFUSED(&kit, FAULT_REFUSED, fate(1, FATE_FRIDGE));
	KK_OK(&kit, mark(1, JAR_SEALED));
	KK_REFUSED(&kit, FAULT_REFUSED, fate(1, FATE_DISCARD));
	KK_REFUSED(&kit, FAULT_REFUSED, fate_rest(FATE_FRIDGE));
}
END_TEST

START_TEST(a_jar_found_good_after_all_loses_its_fate)
{
	to_check();
	KK_OK(&kit, mark(1, JAR_DOUBTFUL));
	KK_OK(&kit, fate(1, FATE_REPROCESS));
	KK_OK(&kit, mark(1, JAR_SEALED));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate, FATE_NONE);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate_by_wall_ms, 0);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0);
}
END_TEST

/* --- windows -------------------------------------------------------------------------- */

/* Plain seal failure: reprocess within 24 h (A539, UNL, MSU-593). */
START_TEST(a_plain_seal_failure_leaves_24_h_to_the_millisecond)
{
	int64_t ended;

	to_check();
	ended = kk_load(&kit, load_id).process_ended_wall_ms;
	KK_OK(&kit, mark(1, JAR_UNSEALED));
	KK_OK(&kit, mark(2, JAR_UNSEALED));
	until_after_process(24 * HOUR_MS);
	KK_OK(&kit, fate(1, (enum jar_fate)_i));
	if (_i != FATE_FRIDGE)
		ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate_by_wall_ms, ended + 24 * HOUR_MS);
	kk_pass(&kit, 1);
	KK_REFUSED(&kit, FAULT_REFUSED, fate(2, (enum jar_fate)_i));
	KK_OK(&kit, fate(2, FATE_DISCARD)); /* always open */
}
END_TEST

/* Process error: 2 h, then discard (UNL, one ISU text; the stricter of two). */
START_TEST(a_process_error_leaves_2_h_to_the_millisecond)
{
	int64_t ended;

	to_failed();
	ended = kk_load(&kit, load_id).process_ended_wall_ms;
	until_after_process(2 * HOUR_MS);
	KK_OK(&kit, fate(1, (enum jar_fate)_i));
	if (_i != FATE_FRIDGE)
		ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate_by_wall_ms, ended + 2 * HOUR_MS);
	kk_pass(&kit, 1);
	KK_REFUSED(&kit, FAULT_REFUSED, fate(2, (enum jar_fate)_i));
	KK_OK(&kit, fate(2, FATE_DISCARD));
}
END_TEST

START_TEST(an_estimated_process_is_treated_as_a_wrong_one)
{
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_EARLIER, 3));
	kk_to(&kit, load_id, PHASE_COOLING);
	KK_OK(&kit, mark(1, JAR_UNSEALED));
	KK_OK(&kit, mark(2, JAR_UNSEALED));
	until_after_process(2 * HOUR_MS);
	KK_OK(&kit, fate(1, FATE_REPROCESS));
	kk_pass(&kit, 1);
	KK_REFUSED(&kit, FAULT_REFUSED, fate(2, FATE_REPROCESS));
}
END_TEST

/* Fridge: "several days" (A539), three days here: common practice, no source.
 * Over half the liquid lost: 2-3 days (NCHFP liquid-loss answer), the shorter. */
START_TEST(a_fridge_jar_has_days_from_when_it_goes_in)
{
	to_check();
	KK_OK(&kit, mark(1, JAR_UNSEALED));
	KK_OK(&kit, fate(1, FATE_FRIDGE));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate_by_wall_ms, kit.clock.now.wall_ms + 72 * HOUR_MS);
	KK_OK(&kit, lose(2, SIPHON_OVER_HALF));
	KK_OK(&kit, fate(2, FATE_FRIDGE));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 2).fate_by_wall_ms, kit.clock.now.wall_ms + 48 * HOUR_MS);
}
END_TEST

START_TEST(over_half_lost_leaves_the_fridge_or_the_bin)
{
	to_check();
	KK_OK(&kit, lose(1, SIPHON_OVER_HALF));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 1);
	KK_REFUSED(&kit, FAULT_REFUSED, fate(1, FATE_REPROCESS));
	KK_REFUSED(&kit, FAULT_REFUSED, fate(1, FATE_FREEZER));
	KK_OK(&kit, fate(1, FATE_FRIDGE));
	KK_OK(&kit, fate(1, FATE_DISCARD));
}
END_TEST

START_TEST(a_loss_seen_after_the_fate_was_chosen_asks_for_it_again)
{
	to_check();
	KK_OK(&kit, mark(1, JAR_UNSEALED));
	KK_OK(&kit, fate(1, FATE_REPROCESS));
	KK_OK(&kit, lose(1, SIPHON_OVER_HALF));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate, FATE_NONE);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 1);
	KK_OK(&kit, fate(1, FATE_FRIDGE));
	KK_OK(&kit, lose(1, SIPHON_OVER_HALF)); /* no change, no question */
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate, FATE_FRIDGE);
}
END_TEST

START_TEST(a_sealed_jar_that_lost_its_liquid_may_go_to_the_fridge_any_day)
{
	to_check();
	KK_OK(&kit, all_sealed());
	KK_OK(&kit, lose(1, SIPHON_OVER_HALF));
	until_after_process(60 * HOUR_MS);
	KK_OK(&kit, fate(1, FATE_FRIDGE));
}
END_TEST

START_TEST(the_bin_is_at_once_and_done)
{
	to_check();
	KK_OK(&kit, mark(1, JAR_UNSEALED));
	KK_OK(&kit, fate(1, FATE_DISCARD));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate_done_wall_ms, kit.clock.now.wall_ms);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate_by_wall_ms, 0);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_done(&kit, kk_jar(&kit, load_id, 1), false));
}
END_TEST

/* A539: suspect low-acid and tomato jars are treated as toxic. */
START_TEST(low_acid_and_tomato_jars_get_the_longer_advice_for_the_bin)
{
	struct log_lot jelly = { .food = "jam or jelly with added pectin", .acidity = ACIDITY_ACID };
	struct log_lot tomato = { .food = "tomatoes crushed", .acidity = ACIDITY_ACIDIFIED };
	struct log_lot beans = { .food = "green beans (snap and Italian)", .acidity = ACIDITY_LOW_ACID };

	ck_assert_ptr_null(strstr(jar_fate_advice(FATE_DISCARD, &jelly), "30 min"));
	ck_assert_ptr_nonnull(strstr(jar_fate_advice(FATE_DISCARD, &tomato), "30 min"));
	ck_assert_ptr_nonnull(strstr(jar_fate_advice(FATE_DISCARD, &beans), "30 min"));
	for (int which = FATE_FRIDGE; which < FATE_COUNT; which++) {
		ck_assert_str_ne(jar_fate_advice((enum jar_fate)which, &jelly), "");
		ck_assert_str_ne(jar_fate_words((enum jar_fate)which), "?");
	}
}
END_TEST

/* --- many at once and shelving ----------------------------------------------------------- */

START_TEST(fate_rest_gives_one_fate_to_all_that_wait_for_one)
{
	int64_t before;

	to_failed();
	KK_OK(&kit, mark(1, JAR_BROKEN));
	KK_OK(&kit, fate(2, FATE_FREEZER));
	before = kk_journal(&kit);
	KK_OK(&kit, fate_rest(FATE_DISCARD));
	ck_assert_int_eq(kk_journal(&kit), before + 1);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate, FATE_NONE);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 2).fate, FATE_FREEZER);
	for (int place = 3; place <= 9; place++)
		ck_assert_int_eq(kk_jar_row(&kit, load_id, place).fate, FATE_DISCARD);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 0);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 0); /* no look at lids is needed */
	KK_REFUSED(&kit, FAULT_REFUSED, fate_rest(FATE_DISCARD));
	kk_step(&kit, load_id);
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
}
END_TEST

START_TEST(fate_rest_too_late_changes_no_jar)
{
	to_failed();
	until_after_process(2 * HOUR_MS + 1);
	KK_REFUSED(&kit, FAULT_REFUSED, fate_rest(FATE_FRIDGE));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 9);
	KK_OK(&kit, fate_rest(FATE_DISCARD));
}
END_TEST

START_TEST(a_load_is_not_shelved_before_everything_is_decided)
{
	to_check();
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	for (int place = 1; place < 9; place++)
		KK_OK(&kit, mark(place, JAR_SEALED));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	KK_OK(&kit, mark(9, JAR_DOUBTFUL));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	KK_OK(&kit, fate(9, FATE_REPROCESS));
	KK_OK(&kit, lose(8, SIPHON_OVER_HALF)); /* sealed, but over half is gone */
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	KK_OK(&kit, fate(8, FATE_FRIDGE));
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
	ck_assert_ptr_null(kk_find(&kit, load_id));
}
END_TEST

START_TEST(a_fate_is_carried_out_after_the_load_is_shelved)
{
	int64_t jar;

	to_check();
	KK_OK(&kit, mark(9, JAR_UNSEALED));
	KK_OK(&kit, fate(9, FATE_FREEZER));
	KK_OK(&kit, all_sealed());
	kk_step(&kit, load_id);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 1);
	jar = kitchen_board(kit.kitchen)->fates[0].id;
	ck_assert_int_eq(jar, kk_jar(&kit, load_id, 9));
	KK_REFUSED(&kit, FAULT_STALE, fate(9, FATE_DISCARD)); /* marks end with the check */
	KK_OK(&kit, kk_done(&kit, jar, false));
	ck_assert_uint_eq(asides_waiting(kitchen_board(kit.kitchen)), 0);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 1); /* it is in the freezer */
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 9).fate_done_wall_ms, kit.clock.now.wall_ms);
	KK_OK(&kit, kk_done(&kit, jar, false));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0); /* and eaten */
	KK_REFUSED(&kit, FAULT_REFUSED, kk_done(&kit, jar, false));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_done(&kit, kk_jar(&kit, load_id, 1), false));
}
END_TEST

/* Jar 1 of the load is in the fridge: a plain seal failure, three days to eat it. */
static int64_t into_the_fridge(void)
{
	to_check();
	KK_OK(&kit, mark(1, JAR_UNSEALED));
	KK_OK(&kit, fate(1, FATE_FRIDGE));
	KK_OK(&kit, all_sealed());
	kk_step(&kit, load_id);
	return kk_jar(&kit, load_id, 1);
}

static bool do_aside(int64_t jar_id, enum aside what, bool in_time)
{
	return kitchen_aside(kit.kitchen, &(struct aside_order){ .jar_id = jar_id, .what = what, .in_time = in_time },
	                     &kit.fault);
}

START_TEST(a_fridge_jar_stays_on_the_list_until_it_is_eaten)
{
	int64_t jar = into_the_fridge();
	char said[SENTENCE_MAX_BYTES];
	char words[80];

	kk_reopen(&kit);
	ck_assert_uint_eq(asides_waiting(kitchen_board(kit.kitchen)), 1);
	aside_words_near(&kitchen_board(kit.kitchen)->fates[0], kit.clock.now.wall_ms, words, sizeof(words));
	ck_assert_ptr_eq(strstr(words, "in the fridge, eat by "), words);
	kk_pass(&kit, 60 * HOUR_MS);
	ck_assert_ptr_nonnull(kk_warned(&kit, "fridge-ends", load_id));
	KK_OK(&kit, do_aside(jar, ASIDE_EATEN, false));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).gone_why, GONE_USED);
	ck_assert_ptr_null(kk_warned(&kit, "fridge-ends", 0));
	KK_OK(&kit, kitchen_undo_fate(kit.kitchen, said, sizeof(said), &kit.fault));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 1);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).gone_why, GONE_NOT);
}
END_TEST

START_TEST(after_its_days_a_fridge_jar_is_thrown_out_or_was_eaten_in_time)
{
	int64_t jar = into_the_fridge();

	kk_pass(&kit, 73 * HOUR_MS);
	ck_assert_ptr_nonnull(kk_warned(&kit, "fridge-over", load_id));
	KK_REFUSED(&kit, FAULT_REFUSED, do_aside(jar, ASIDE_EATEN, false));
	KK_REFUSED(&kit, FAULT_REFUSED, do_aside(jar, ASIDE_FROZEN, false));
	if (_i == 0) {
		KK_OK(&kit, do_aside(jar, ASIDE_BINNED, false));
		ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).fate, FATE_DISCARD);
	} else {
		KK_OK(&kit, do_aside(jar, ASIDE_EATEN, true));
		ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).gone_why, GONE_USED);
	}
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0);
	ck_assert_ptr_null(kk_warned(&kit, "fridge-over", 0));
}
END_TEST

START_TEST(a_fridge_jar_goes_to_the_freezer_and_is_eaten_from_there)
{
	int64_t jar = into_the_fridge();
	char words[80];

	KK_OK(&kit, do_aside(jar, ASIDE_FROZEN, false));
	aside_words_near(&kitchen_board(kit.kitchen)->fates[0], kit.clock.now.wall_ms, words, sizeof(words));
	ck_assert_ptr_eq(strstr(words, "in the freezer since "), words);
	KK_REFUSED(&kit, FAULT_REFUSED, do_aside(jar, ASIDE_FROZEN, false));
	kk_pass(&kit, 90 * 24 * HOUR_MS);
	ck_assert_ptr_null(kk_warned(&kit, "fridge-over", 0));
	KK_OK(&kit, do_aside(jar, ASIDE_EATEN, false));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 0);
}
END_TEST

/* NCHFP: over half the liquid gone is fridge and 2-3 days, nothing else. */
START_TEST(a_jar_that_lost_its_liquid_is_not_frozen_later)
{
	to_check();
	KK_OK(&kit, all_sealed());
	KK_OK(&kit, lose(1, SIPHON_OVER_HALF));
	KK_OK(&kit, fate(1, FATE_FRIDGE));
	KK_REFUSED(&kit, FAULT_REFUSED, do_aside(kk_jar(&kit, load_id, 1), ASIDE_FROZEN, false));
	KK_OK(&kit, do_aside(kk_jar(&kit, load_id, 1), ASIDE_EATEN, false));
}
END_TEST

START_TEST(open_fates_stand_with_the_nearest_deadline_first)
{
	to_check();
	KK_OK(&kit, mark(1, JAR_UNSEALED));
	KK_OK(&kit, mark(2, JAR_UNSEALED));
	KK_OK(&kit, fate(1, FATE_FRIDGE));
	KK_OK(&kit, fate(2, FATE_FREEZER));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 2);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->fates[0].place_in_load, 2);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->fates[1].place_in_load, 1);
}
END_TEST

START_TEST(taking_back_a_fate_carried_out_opens_it_again)
{
	char said[SENTENCE_MAX_BYTES];
	int64_t jar;

	KK_REFUSED(&kit, FAULT_MISSING, kitchen_undo_fate(kit.kitchen, said, sizeof(said), &kit.fault));
	to_check();
	KK_OK(&kit, mark(9, JAR_UNSEALED));
	KK_OK(&kit, fate(9, FATE_FREEZER));
	KK_OK(&kit, all_sealed());
	kk_step(&kit, load_id);
	jar = kk_jar(&kit, load_id, 9);
	KK_OK(&kit, kk_done(&kit, jar, false));
	KK_OK(&kit, kitchen_undo_fate(kit.kitchen, said, sizeof(said), &kit.fault));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, 1);
	/* A second press reaches no further back. */
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_undo_fate(kit.kitchen, said, sizeof(said), &kit.fault));
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
}
END_TEST

/* --- the three methods ------------------------------------------------------------------ */

static bool tick(int place, enum seal_method method, enum seal_tick said)
{
	return kitchen_jar_tick(kit.kitchen, kk_jar(&kit, load_id, place), method, said, &kit.fault);
}

/* A539, MSU-951: press, tap, eye level; one failing = unsealed: common practice, no source. */
START_TEST(three_good_make_it_sealed_and_one_bad_doubtful)
{
	to_check();
	KK_OK(&kit, tick(1, SEAL_PRESS, TICK_GOOD));
	KK_OK(&kit, tick(1, SEAL_TAP, TICK_GOOD));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_UNCHECKED);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).checked_wall_ms, 0);
	KK_OK(&kit, tick(1, SEAL_EYE, TICK_GOOD));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_SEALED);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).checked_wall_ms, kit.clock.now.wall_ms);
	ck_assert_str_eq(kk_jar_row(&kit, load_id, 1).checked_by, "AB");
	KK_OK(&kit, tick(1, SEAL_TAP, TICK_BAD));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_DOUBTFUL);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->without_fate, 1); /* counts as unsealed */
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_SEALED);
}
END_TEST

START_TEST(one_bad_is_enough_whatever_the_others_say)
{
	for (int method = 0; method < SEAL_METHOD_COUNT; method++) {
		if (method == 0)
			to_check();
		KK_OK(&kit, tick(method + 1, (enum seal_method)method, TICK_BAD));
		ck_assert_int_eq(kk_jar_row(&kit, load_id, method + 1).state, JAR_DOUBTFUL);
	}
}
END_TEST

START_TEST(unchecked_is_by_no_method)
{
	to_check();
	KK_OK(&kit, tick(1, SEAL_TAP, TICK_BAD));
	KK_OK(&kit, mark(1, JAR_SEALED));
	for (int method = 0; method < SEAL_METHOD_COUNT; method++)
		ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).ticks[method], TICK_GOOD);
	KK_OK(&kit, mark(1, JAR_UNCHECKED));
	for (int method = 0; method < SEAL_METHOD_COUNT; method++)
		ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).ticks[method], TICK_NONE);
	ck_assert_str_eq(kk_jar_row(&kit, load_id, 1).checked_by, "");
	KK_OK(&kit, all_sealed());
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 9).ticks[SEAL_EYE], TICK_GOOD);
	ck_assert_str_eq(kk_jar_row(&kit, load_id, 9).checked_by, "AB");
}
END_TEST

static bool sealed_by(int place, unsigned methods)
{
	return kitchen_jar_sealed(kit.kitchen, kk_jar(&kit, load_id, place), methods, &kit.fault);
}

/* A look that nobody took is not on record as one. */
START_TEST(sealed_writes_good_only_for_the_methods_used)
{
	to_check();
	KK_OK(&kit, tick(3, SEAL_EYE, TICK_GOOD));
	KK_OK(&kit, sealed_by(1, SEAL_BY(SEAL_TAP)));
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY(SEAL_PRESS) | SEAL_BY(SEAL_EYE), &kit.fault));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 0);
	for (int place = 1; place <= 9; place++) {
		struct log_jar jar = kk_jar_row(&kit, load_id, place);

		ck_assert_int_eq(jar.state, JAR_SEALED);
		ck_assert_int_eq(jar.ticks[SEAL_PRESS], place == 1 ? TICK_NONE : TICK_GOOD);
		ck_assert_int_eq(jar.ticks[SEAL_TAP], place == 1 ? TICK_GOOD : TICK_NONE);
		ck_assert_int_eq(jar.ticks[SEAL_EYE], place == 1 ? TICK_NONE : TICK_GOOD);
	}
	KK_OK(&kit, tick(1, SEAL_PRESS, TICK_GOOD)); /* one more look takes nothing back */
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_SEALED);
	KK_OK(&kit, tick(1, SEAL_EYE, TICK_BAD));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_DOUBTFUL);
}
END_TEST

START_TEST(sealed_by_no_method_is_refused)
{
	to_check();
	KK_REFUSED(&kit, FAULT_REFUSED, sealed_by(1, 0));
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_all_sealed(kit.kitchen, load_id, 0, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED, sealed_by(1, SEAL_BY(SEAL_METHOD_COUNT)));
	KK_REFUSED(&kit, FAULT_MISUSE,
	           kitchen_jar_state(kit.kitchen, kk_jar(&kit, load_id, 1), JAR_SEALED, &kit.fault));
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->unchecked, 9);
}
END_TEST

START_TEST(a_method_that_failed_must_be_tried_again)
{
	to_check();
	KK_OK(&kit, tick(1, SEAL_TAP, TICK_BAD));
	ck_assert(!sealed_by(1, SEAL_BY(SEAL_PRESS) | SEAL_BY(SEAL_EYE)));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "Jar 1 failed when tapped"));
	kit.fault = (struct fault){ 0 };
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_DOUBTFUL);
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).ticks[SEAL_PRESS], TICK_NONE);
	KK_OK(&kit, sealed_by(1, SEAL_BY(SEAL_TAP)));
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).state, JAR_SEALED);
}
END_TEST

START_TEST(a_jar_that_is_no_question_takes_no_tick)
{
	kk_to(&kit, load_id, PHASE_COOLING);
	KK_REFUSED(&kit, FAULT_REFUSED, tick(1, SEAL_PRESS, TICK_GOOD));
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, mark(1, JAR_BROKEN));
	KK_REFUSED(&kit, FAULT_REFUSED, tick(1, SEAL_PRESS, TICK_GOOD));
	KK_OK(&kit, mark(2, JAR_UNSEALED));
	KK_REFUSED(&kit, FAULT_REFUSED, tick(2, SEAL_PRESS, TICK_GOOD));
}
END_TEST

START_TEST(who_has_the_board_looks_at_the_seals_whoever_has_the_canner)
{
	to_check();
	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, BIG_KETTLE), "ZZ", &kit.fault));
	KK_OK(&kit, mark(1, JAR_SEALED));
	ck_assert_str_eq(kk_jar_row(&kit, load_id, 1).checked_by, "AB");
	kitchen_set_who(kit.kitchen, "");
	KK_OK(&kit, mark(2, JAR_SEALED));
	ck_assert_str_eq(kk_jar_row(&kit, load_id, 2).checked_by, "ZZ");
}
END_TEST

START_TEST(the_round_holds_what_is_past_its_12_h)
{
	int64_t ids[4];
	int64_t second;

	kk_to(&kit, load_id, PHASE_COOLING);
	kk_pass(&kit, 2 * HOUR_MS);
	second = kk_start(&kit, LOW_KETTLE, 7);
	kk_to(&kit, second, PHASE_COOLING);
	ck_assert_uint_eq(kitchen_round(kit.kitchen, &kit.clock.now, ids, 4), 0);
	kk_pass(&kit, 10 * HOUR_MS); /* the second came in meanwhile */
	ck_assert_uint_eq(kitchen_round(kit.kitchen, &kit.clock.now, ids, 4), 1);
	ck_assert_int_eq(ids[0], load_id);
	kk_pass(&kit, 2 * HOUR_MS);
	ck_assert_uint_eq(kitchen_round(kit.kitchen, &kit.clock.now, ids, 4), 2);
	ck_assert_int_eq(ids[1], second);
	ck_assert_uint_eq(kitchen_round(kit.kitchen, &kit.clock.now, ids, 1), 1);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	ck_assert_uint_eq(kitchen_round(kit.kitchen, &kit.clock.now, ids, 4), 2);
	KK_OK(&kit, all_sealed());
	kk_pass(&kit, 10 * SECOND_MS);
	kk_step(&kit, load_id);
	ck_assert_uint_eq(kitchen_round(kit.kitchen, &kit.clock.now, ids, 4), 1);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("seals", .begin = begin, .end = end),
	TEST(seals_are_looked_at_after_12_h),
	TEST(nothing_is_sealed_before_the_jars_are_out),
	TEST(while_cooling_a_failed_jar_may_be_marked_but_no_seal),
	TEST(all_sealed_is_one_act),
	TEST(exceptions_marked_first_are_left_alone_by_all_sealed),
	TEST(a_mark_can_be_set_back_to_not_looked_at),
	TEST(a_jar_broken_today_is_not_counted_as_made_today),
	TEST(who_needs_a_fate),
	TEST(a_jar_that_nobody_may_eat_needs_a_fate),
	TEST(a_good_jar_gets_no_fate),
	TEST(a_jar_found_good_after_all_loses_its_fate),
	EACH(a_plain_seal_failure_leaves_24_h_to_the_millisecond, FATE_FRIDGE, FATE_DISCARD),
	EACH(a_process_error_leaves_2_h_to_the_millisecond, FATE_FRIDGE, FATE_DISCARD),
	TEST(an_estimated_process_is_treated_as_a_wrong_one),
	TEST(a_fridge_jar_has_days_from_when_it_goes_in),
	TEST(over_half_lost_leaves_the_fridge_or_the_bin),
	TEST(a_loss_seen_after_the_fate_was_chosen_asks_for_it_again),
	TEST(a_sealed_jar_that_lost_its_liquid_may_go_to_the_fridge_any_day),
	TEST(the_bin_is_at_once_and_done),
	TEST(low_acid_and_tomato_jars_get_the_longer_advice_for_the_bin),
	TEST(fate_rest_gives_one_fate_to_all_that_wait_for_one),
	TEST(fate_rest_too_late_changes_no_jar),
	TEST(a_load_is_not_shelved_before_everything_is_decided),
	TEST(a_fate_is_carried_out_after_the_load_is_shelved),
	TEST(a_fridge_jar_stays_on_the_list_until_it_is_eaten),
	EACH(after_its_days_a_fridge_jar_is_thrown_out_or_was_eaten_in_time, 0, 2),
	TEST(a_fridge_jar_goes_to_the_freezer_and_is_eaten_from_there),
	TEST(a_jar_that_lost_its_liquid_is_not_frozen_later),
	TEST(open_fates_stand_with_the_nearest_deadline_first),
	TEST(taking_back_a_fate_carried_out_opens_it_again),
	TEST(three_good_make_it_sealed_and_one_bad_doubtful),
	TEST(one_bad_is_enough_whatever_the_others_say),
	TEST(unchecked_is_by_no_method),
	TEST(sealed_writes_good_only_for_the_methods_used),
	TEST(sealed_by_no_method_is_refused),
	TEST(a_method_that_failed_must_be_tried_again),
	TEST(a_jar_that_is_no_question_takes_no_tick),
	TEST(who_has_the_board_looks_at_the_seals_whoever_has_the_canner),
	TEST(the_round_holds_what_is_past_its_12_h),
};

KK_TESTS("seals", listed)
