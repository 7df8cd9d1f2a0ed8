/*
 * Filled jars and a finished pot that stand before they are heated.  No published
 * limit was found: 30 min, 2 h and 1 h are common practice, no source
 * (src/engine/gate/gate.h); what is tested is that they hold on every road to a jar.
 */
#include <string.h>

#include "engine/gate/gate.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/step/step.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "grape", "4 gal");
}

static void end(void)
{
	kk_end(&kit);
}

static int64_t pot_in_fill(const char *recipe, const char *jar)
{
	int64_t batch_id = pk_batch(&kit, DEEP_POT, recipe, jar, 1);

	pk_to(&kit, DEEP_POT, PHASE_FILL);
	return batch_id;
}

/* Off the heat for so long in all. */
static void stand(int64_t ms)
{
	const struct strip *pot = kk_canner(&kit, DEEP_POT);

	kk_pass(&kit, ms - moment_between(&strip_batch(pot)->off, &kit.clock.now));
}

static struct log_load loaded(int digit, int64_t batch_id, const char *size, int jars)
{
	struct pick pick = pk_pick(batch_id, size, jars);
	int64_t load_id = pk_load(&kit, digit, &pick, 1);

	return kk_load(&kit, load_id);
}

static bool try_load(int digit, int64_t batch_id, const char *size, int jars)
{
	struct pick pick = pk_pick(batch_id, size, jars);
	int64_t load_id;

	return kitchen_load_waiting(kit.kitchen, kk_station(&kit, digit), &pick, 1, NO_PRESSURE, &load_id, &kit.fault);
}

static void open_so_far(const struct log_load *load)
{
	ck_assert_msg(load->verdict == VERDICT_OPEN, "%s", load->verdict_why);
}

static void sentence_has(const char *words)
{
	ck_assert_msg(strstr(kk_said(&kit), words) != NULL, "\"%s\" does not say \"%s\"", kk_said(&kit), words);
}

/* --- filled jars ------------------------------------------------------------------- */

START_TEST(acid_jars_over_the_limit_go_on_unknown_and_the_story_says_how_long)
{
	int64_t batch_id = pot_in_fill("grape juice", "pint");
	struct log_load load;

	pk_fill(&kit, batch_id, "pint", 4, 0);
	kk_pass(&kit, 3 * HOUR_MS + 12 * MINUTE_MS);
	kk_warns(&kit, "jars-stood", 0, SEVERITY_CAUTION, "filled 3 h 12 min ago");
	load = loaded(BIG_KETTLE, batch_id, "pint", 4);
	sentence_has("its jars waited 3 h 12 min");
	ck_assert_int_eq(load.verdict, VERDICT_UNKNOWN);
	ck_assert_ptr_nonnull(strstr(load.verdict_why, "3 h 12 min"));
}
END_TEST

START_TEST(acid_jars_at_the_limit_still_count)
{
	int64_t batch_id = pot_in_fill("grape juice", "pint");
	struct log_load load;

	pk_fill(&kit, batch_id, "pint", 4, 0);
	kk_pass(&kit, STANDING_MAX_MS);
	ck_assert(!kk_fires(&kit, "jars-stood"));
	load = loaded(BIG_KETTLE, batch_id, "pint", 4);
	open_so_far(&load);
}
END_TEST

START_TEST(jars_that_stand_in_the_canner_without_heat_stand_too)
{
	int64_t batch_id = pot_in_fill("grape juice", "pint");
	struct log_load load;

	pk_fill(&kit, batch_id, "pint", 4, 0);
	kk_pass(&kit, HOUR_MS);
	load = loaded(BIG_KETTLE, batch_id, "pint", 4);
	kk_pass(&kit, HOUR_MS + MINUTE_MS);
	kk_step(&kit, load.id); /* heat is on */
	ck_assert_int_eq(kk_load(&kit, load.id).verdict, VERDICT_UNKNOWN);
	ck_assert(kk_undo(&kit, load.id));
	load = kk_load(&kit, load.id);
	open_so_far(&load);
}
END_TEST

START_TEST(low_acid_jars_over_an_hour_are_not_loaded)
{
	int64_t batch_id = pot_in_fill("green beans", "pint");
	struct moment now;
	struct loader_proposal offer;

	pk_fill(&kit, batch_id, "pint", 4, 0);
	kk_pass(&kit, STANDING_LOW_ACID_MAX_MS + 1);
	kk_warns(&kit, "low-acid-jars-stood", 0, SEVERITY_STOP,
	         "Reheat 4 jars of green beans and fill again, or discard");
	ck_assert(!try_load(WEIGHT_CANNER, batch_id, "pint", 4));
	ck_assert_str_eq(kit.fault.rule, "key-stood");
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "stood 1 h; 1 h is the limit"));
	kk_refused(&kit, false, FAULT_REFUSED, "loading");
	now = kitchen_now(kit.kitchen);
	kitchen_propose(kit.kitchen, &now, 0, &offer);
	ck_assert_uint_eq(offer.count, 0);
	ck_assert_int_eq(offer.left_over, 4);
}
END_TEST

START_TEST(jars_reheated_and_filled_anew_may_be_loaded)
{
	int64_t batch_id = pot_in_fill("green beans", "pint");
	struct log_load load;

	pk_fill(&kit, batch_id, "pint", 4, 0);
	kk_pass(&kit, 2 * HOUR_MS);
	KK_OK(&kit, kitchen_refill(kit.kitchen, batch_id, "pint", &kit.fault));
	sentence_has("4 pints emptied, reheated and filled again; they had waited 2 h");
	ck_assert(!kk_fires(&kit, "low-acid-jars-stood"));
	ck_assert(pk_undo(&kit, SUBJECT_BATCH, batch_id));
	KK_REFUSED(&kit, FAULT_REFUSED, try_load(WEIGHT_CANNER, batch_id, "pint", 4));
	ck_assert(pk_redo(&kit, SUBJECT_BATCH, batch_id));
	load = loaded(WEIGHT_CANNER, batch_id, "pint", 4);
	open_so_far(&load);
	KK_REFUSED(&kit, FAULT_STALE, kitchen_refill(kit.kitchen, batch_id, "pint", &kit.fault));
}
END_TEST

/* --- the way to the hold ---------------------------------------------------------------- */

/* Loaded at once: `minutes` go by until its hold, of which 10 of the vent. */
static struct log_load on_its_way(int digit, int64_t batch_id, int minutes)
{
	struct log_load load = loaded(digit, batch_id, "pint", 4);

	kk_pass(&kit, PRESS_AGAIN_MS);
	kk_step(&kit, load.id); /* heat is on */
	if (digit == WEIGHT_CANNER) {
		kk_to(&kit, load.id, PHASE_PRESSURISE); /* 25 min to steam, 10 of vent */
		minutes -= 35;
	}
	kk_pass(&kit, minutes * MINUTE_MS - PRESS_AGAIN_MS);
	return load;
}

static int64_t filled_pot(const char *recipe)
{
	int64_t batch_id = pot_in_fill(recipe, "pint");

	pk_fill(&kit, batch_id, "pint", 4, 0);
	return batch_id;
}

static void ends_in(const struct log_load *load, enum verdict verdict, const char *words)
{
	struct log_load now;

	kk_to(&kit, load->id, PHASE_UNLOAD);
	now = kk_load(&kit, load->id);
	ck_assert_int_eq(now.verdict, verdict);
	ck_assert_msg(strstr(now.verdict_why, words) != NULL, "\"%s\" does not say \"%s\"", now.verdict_why, words);
}

START_TEST(low_acid_jars_hours_on_their_way_to_pressure_are_not_valid)
{
	struct log_load load = on_its_way(WEIGHT_CANNER, filled_pot("green beans"), 119);

	ck_assert(!kk_fires(&kit, "low-acid-slow-heat"));
	kk_pass(&kit, 2 * MINUTE_MS);
	kk_warns(&kit, "low-acid-slow-heat", load.id, SEVERITY_STOP,
	         "2 h 1 min without the heat of a hold, and 2 h is the limit");
	kk_step(&kit, load.id);                          /* it is at pressure after all */
	ck_assert(!kk_fires(&kit, "process-not-valid")); /* it is not to be done again */
	kk_warns(&kit, "low-acid-slow-heat", load.id, SEVERITY_STOP, "discard it (f), do not taste");
	ends_in(&load, VERDICT_NOT_VALID, "without the heat of a hold");
}
END_TEST

START_TEST(the_full_process_again_does_not_make_up_for_the_hours_before)
{
	struct log_load load = on_its_way(WEIGHT_CANNER, filled_pot("green beans"), 121);

	ends_in(&load, VERDICT_NOT_VALID, "without the heat of a hold");
	ck_assert(kk_try(&kit, load.id, EXCEPTION_REDO, 0));
	ends_in(&load, VERDICT_NOT_VALID, "without the heat of a hold");
}
END_TEST

START_TEST(a_large_canner_an_hour_on_its_way_is_nothing)
{
	int64_t batch_id = filled_pot("green beans");
	struct log_load load;

	kk_pass(&kit, 30 * MINUTE_MS); /* as long as a house lets jars wait */
	load = on_its_way(WEIGHT_CANNER, batch_id, 60);
	ends_in(&load, VERDICT_VALID, "");
}
END_TEST

START_TEST(acid_jars_hours_on_their_way_to_the_boil_are_unknown)
{
	struct log_load load = on_its_way(BIG_KETTLE, filled_pot("grape juice"), 179);

	ck_assert(!kk_fires(&kit, "slow-heat"));
	kk_pass(&kit, 2 * MINUTE_MS);
	kk_warns(&kit, "slow-heat", load.id, SEVERITY_CAUTION, "3 h 1 min from filling and no hold yet, over 3 h");
	ends_in(&load, VERDICT_UNKNOWN, "without the heat of a hold");
}
END_TEST

START_TEST(a_lost_hold_starts_the_way_anew_and_its_way_counts_too)
{
	struct log_load load = on_its_way(WEIGHT_CANNER, filled_pot("green beans"), 60);

	kk_step(&kit, load.id);
	kk_pass(&kit, 15 * MINUTE_MS);
	kk_lost(&kit, load.id);
	kk_pass(&kit, 100 * MINUTE_MS);
	ck_assert(!kk_fires(&kit, "low-acid-slow-heat"));
	kk_pass(&kit, 21 * MINUTE_MS);
	ck_assert(kk_fires(&kit, "low-acid-slow-heat"));
	ends_in(&load, VERDICT_NOT_VALID, "without the heat of a hold");
}
END_TEST

START_TEST(a_house_that_shortens_standing_shortens_the_way)
{
	struct log_load load;

	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "times wait=30 stand=40", 0, &kit.fault));
	load = on_its_way(WEIGHT_CANNER, filled_pot("green beans"), 101);
	ends_in(&load, VERDICT_NOT_VALID, "1 h 40 min is the limit");
}
END_TEST

/* --- a pot that stands ---------------------------------------------------------------- */

START_TEST(a_pot_that_stands_is_warned_of_at_the_house_s_minutes)
{
	int64_t batch_id = pot_in_fill("grape juice", "pint");
	struct log_load load;

	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, 30, 0, &kit.fault));
	stand(STANDING_ASK_MS);
	ck_assert(!kk_fires(&kit, "pot-stands"));
	kk_pass(&kit, 1);
	kk_warns(&kit, "pot-stands", 0, SEVERITY_CAUTION, "off the heat for 30 min");
	pk_fill(&kit, batch_id, "pint", 4, 0);
	load = loaded(BIG_KETTLE, batch_id, "pint", 4);
	open_so_far(&load);
}
END_TEST

START_TEST(an_acid_pot_over_the_limit_is_filled_unknown)
{
	int64_t batch_id = pot_in_fill("grape juice", "pint");

	stand(2 * HOUR_MS + 40 * MINUTE_MS);
	pk_fill(&kit, batch_id, "pint", 4, 0);
	sentence_has("the food stood in the pot for 2 h 40 min");
	ck_assert_int_eq(loaded(BIG_KETTLE, batch_id, "pint", 4).verdict, VERDICT_UNKNOWN);
}
END_TEST

START_TEST(a_low_acid_pot_over_an_hour_is_not_filled_before_it_boils_again)
{
	int64_t batch_id = pot_in_fill("green beans", "pint");
	struct log_load load;

	stand(STANDING_LOW_ACID_MAX_MS + 1);
	kk_warns(&kit, "low-acid-pot-stood", 0, SEVERITY_STOP, "Boil Deep pot again (x), or discard");
	KK_REFUSED(&kit, FAULT_REFUSED, pk_try_fill(&kit, batch_id, "pint", 4, 0, true, true));
	KK_OK(&kit, pk_try(&kit, DEEP_POT, EXCEPTION_BOILED, 0));
	sentence_has("boiled again");
	ck_assert(!kk_fires(&kit, "low-acid-pot-stood"));
	kk_pass(&kit, 10 * MINUTE_MS);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "pint", 4, 0);
	load = loaded(WEIGHT_CANNER, batch_id, "pint", 4);
	open_so_far(&load);
}
END_TEST

START_TEST(boiled_again_by_a_slip_is_taken_back_with_its_clock)
{
	int64_t batch_id = pot_in_fill("green beans", "pint");

	stand(STANDING_LOW_ACID_MAX_MS + 1);
	KK_OK(&kit, pk_try(&kit, DEEP_POT, EXCEPTION_BOILED, 0));
	ck_assert(pk_undo(&kit, SUBJECT_BATCH, batch_id));
	ck_assert_int_eq(pk_name(&kit, DEEP_POT), PHASE_FILL);
	KK_REFUSED(&kit, FAULT_REFUSED, pk_try_fill(&kit, batch_id, "pint", 4, 0, true, true));
}
END_TEST

START_TEST(only_what_is_off_the_heat_is_boiled_again)
{
	(void)pk_batch(&kit, DEEP_POT, "grape juice", "pint", 1);
	KK_REFUSED(&kit, FAULT_REFUSED, pk_try(&kit, DEEP_POT, EXCEPTION_BOILED, 0));
	pk_to(&kit, DEEP_POT, PHASE_OFF);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, pk_try(&kit, DEEP_POT, EXCEPTION_BOILED, 0));
	ck_assert_int_eq(pk_name(&kit, DEEP_POT), PHASE_OFF);
	ck_assert_int_eq(moment_between(&strip_batch(kk_canner(&kit, DEEP_POT))->off, &kit.clock.now), 0);
}
END_TEST

/* --- the house -------------------------------------------------------------------------- */

START_TEST(a_house_shortens_the_limits_and_never_lengthens_them)
{
	int64_t batch_id;
	struct log_load load;

	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_setup_line(kit.kitchen, "times wait=31", 0, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_setup_line(kit.kitchen, "times stand=121", 0, &kit.fault));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "times wait=30 stand=40", 0, &kit.fault));
	ck_assert_int_eq(kitchen_board(kit.kitchen)->house.stand_minutes, 40);
	batch_id = pot_in_fill("green beans", "pint");
	pk_fill(&kit, batch_id, "pint", 4, 0);
	kk_pass(&kit, 40 * MINUTE_MS + 1);
	KK_REFUSED(&kit, FAULT_REFUSED, try_load(WEIGHT_CANNER, batch_id, "pint", 4));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "times stand=0", 0, &kit.fault)); /* no shorter one */
	load = loaded(WEIGHT_CANNER, batch_id, "pint", 4);
	open_so_far(&load);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("jars", .begin = begin, .end = end),
	TEST(acid_jars_over_the_limit_go_on_unknown_and_the_story_says_how_long),
	TEST(acid_jars_at_the_limit_still_count),
	TEST(jars_that_stand_in_the_canner_without_heat_stand_too),
	TEST(low_acid_jars_over_an_hour_are_not_loaded),
	TEST(jars_reheated_and_filled_anew_may_be_loaded),
	GROUP("way", .begin = begin, .end = end),
	TEST(low_acid_jars_hours_on_their_way_to_pressure_are_not_valid),
	TEST(a_large_canner_an_hour_on_its_way_is_nothing),
	TEST(the_full_process_again_does_not_make_up_for_the_hours_before),
	TEST(acid_jars_hours_on_their_way_to_the_boil_are_unknown),
	TEST(a_lost_hold_starts_the_way_anew_and_its_way_counts_too),
	TEST(a_house_that_shortens_standing_shortens_the_way),
	GROUP("pots", .begin = begin, .end = end),
	TEST(a_pot_that_stands_is_warned_of_at_the_house_s_minutes),
	TEST(an_acid_pot_over_the_limit_is_filled_unknown),
	TEST(a_low_acid_pot_over_an_hour_is_not_filled_before_it_boils_again),
	TEST(boiled_again_by_a_slip_is_taken_back_with_its_clock),
	TEST(only_what_is_off_the_heat_is_boiled_again),
	TEST(a_house_shortens_the_limits_and_never_lengthens_them),
};

KK_TESTS("standing", listed)
