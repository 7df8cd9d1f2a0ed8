/* From the pot to the canner: filling, jars that wait, corrections of their count. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "log/tables/pot.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;
static int64_t batch_id;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "3 gal");
	(void)pk_juice(&kit, "apples", "3 gal");
}

static void end(void)
{
	kk_end(&kit);
}

static void says(const char *words)
{
	ck_assert_msg(strstr(kit.fault.sentence, words) != NULL, "\"%s\" does not say \"%s\"", kit.fault.sentence,
	              words);
}

/* A batch in its fill phase. */
static int64_t batch_to_fill(int digit, const char *recipe, const char *jar, int multiple)
{
	int64_t id = pk_batch(&kit, digit, recipe, jar, multiple);

	pk_to(&kit, digit, PHASE_FILL);
	pk_jars_ready(&kit, id);
	return id;
}

static void jelly(void)
{
	batch_id = batch_to_fill(WIDE_POT, "grape jelly", "half_pint", 1);
}

static bool fill(const char *jar, int jars, int64_t box, bool acid_in, bool sure)
{
	return pk_try_fill(&kit, batch_id, jar, jars, box, acid_in, sure);
}

/* Refused with these words, and nothing written. */
static void no_fill(const char *jar, int jars, int64_t box, enum fault_kind kind, const char *words)
{
	char *rows = pk_rows(&kit);
	bool done = fill(jar, jars, box, true, true);

	says(words);
	kk_refused(&kit, done, kind, words);
	pk_same_rows(&kit, rows);
}

static int jars_of(int64_t id, const char *size)
{
	int jars = 0;

	KK_OK(&kit, kitchen_jars_filled(kit.kitchen, id, size, &jars, &kit.fault));
	return jars;
}

static struct log_jar newest_jar(int64_t id)
{
	struct log_jar *rows;
	struct log_jar found = { 0 };
	size_t count;

	KK_OK(&kit, log_jars_of_batch(kit.log, id, &rows, &count, &kit.fault));
	if (count > 0)
		found = rows[count - 1];
	free(rows);
	return found;
}

/* --- filling -------------------------------------------------------------------------- */

START_TEST(jars_of_several_sizes_are_filled_from_one_batch)
{
	jelly();
	KK_OK(&kit, kitchen_warm_jars(kit.kitchen, batch_id, true, &kit.fault));
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, false));
	KK_OK(&kit, fill("pint", 1, BOX_B, false, false));
	KK_OK(&kit, fill("half_pint", 1, 0, false, false));
	ck_assert_int_eq(jars_of(batch_id, "half_pint"), 6);
	ck_assert_int_eq(jars_of(batch_id, "pint"), 1);
	ck_assert_int_eq(strip_batch(kk_canner(&kit, WIDE_POT))->filled, 7);
	ck_assert_int_eq(pk_waiting(&kit), 7);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 5);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_B), 1);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "half_pint"), 60 - 6);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "pint"), 60 - 1);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "quart"), 20);
	ck_assert_int_eq(newest_jar(batch_id).filled.wall_ms, kit.clock.now.wall_ms);
	ck_assert_int_eq(newest_jar(batch_id).lot_id, strip_batch(kk_canner(&kit, WIDE_POT))->row.lot_id);
	ck_assert_int_eq(newest_jar(batch_id).load_id, 0);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 0); /* none is in a canner yet */
}
END_TEST

static const char *pack_now(void)
{
	return kk_canner(&kit, WIDE_POT)->lot.pack;
}

/* A batch whose minutes are those of jars boiled first, and nobody has said that they were. */
static void jelly_not_said(void)
{
	jelly();
	ck_assert_str_eq(pack_now(), "hot_sterile_jar");
	KK_OK(&kit, kitchen_warm_jars(kit.kitchen, batch_id, false, &kit.fault));
}

static void stay_as_they_are(const char *words)
{
	char *rows = pk_rows(&kit);
	bool done = kitchen_jars_not_boiled(kit.kitchen, batch_id, &kit.fault);

	says(words);
	kk_refused(&kit, done, FAULT_REFUSED, words);
	pk_same_rows(&kit, rows);
}

/* USDA AIB 539 (rev. 2015), Guide 7: jelly in jars boiled first; boiled 10 minutes and one more for each 1,000 ft. */
START_TEST(jars_are_boiled_first_where_their_minutes_suppose_it)
{
	jelly_not_said();
	no_fill("half_pint", 5, BOX_A, FAULT_REFUSED, "boiled 14 min");
	KK_OK(&kit, kitchen_warm_jars(kit.kitchen, batch_id, true, &kit.fault));
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, false));
	stay_as_they_are("Some of its jars are filled");
}
END_TEST

START_TEST(jars_not_boiled_first_get_the_longer_process)
{
	struct pick pick;

	jelly_not_said();
	KK_OK(&kit, kitchen_jars_not_boiled(kit.kitchen, batch_id, &kit.fault));
	ck_assert_str_eq(pack_now(), "hot_unsterile_jar");
	stay_as_they_are("does not ask for jars boiled first");
	ck_assert(pk_undo(&kit, SUBJECT_BATCH, batch_id));
	ck_assert_str_eq(pack_now(), "hot_sterile_jar");
	KK_OK(&kit, kitchen_jars_not_boiled(kit.kitchen, batch_id, &kit.fault));
	KK_REFUSED(&kit, FAULT_CONFIRM, fill("half_pint", 5, BOX_A, false, false));
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, true));
	pick = pk_pick(batch_id, "half_pint", 5);
	(void)pk_load(&kit, BIG_KETTLE, &pick, 1);
	ck_assert_int_eq(strip_load(kk_canner(&kit, BIG_KETTLE))->row.minutes, 15);
}
END_TEST

START_TEST(jars_that_no_table_has_unboiled_are_boiled)
{
	batch_id = batch_to_fill(WIDE_POT, "strawberry-rhubarb jelly", "half_pint", 1);
	stay_as_they_are(
	    "No process is published for strawberry-rhubarb jelly in jars not boiled first. Boil them 14 min");
}
END_TEST

START_TEST(cold_jars_are_asked_about)
{
	jelly_not_said();
	KK_OK(&kit, kitchen_jars_not_boiled(kit.kitchen, batch_id, &kit.fault));
	KK_REFUSED(&kit, FAULT_CONFIRM, fill("half_pint", 5, BOX_A, false, false));
	ck_assert_int_eq(pk_waiting(&kit), 0);
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, true));
	KK_OK(&kit, kitchen_warm_jars(kit.kitchen, batch_id, true, &kit.fault));
	KK_OK(&kit, fill("half_pint", 1, BOX_A, false, false));
	KK_OK(&kit, kitchen_warm_jars(kit.kitchen, batch_id, false, &kit.fault));
	KK_REFUSED(&kit, FAULT_CONFIRM, fill("half_pint", 1, BOX_A, false, false));
}
END_TEST

START_TEST(what_cannot_be_filled_is_refused)
{
	jelly();
	no_fill("quart", 1, 0, FAULT_REFUSED, "does not go in that jar");
	no_fill("jug", 1, 0, FAULT_REFUSED, "does not go in that jar");
	no_fill("half_pint", 0, 0, FAULT_MISUSE, "1 to 99");
	no_fill("half_pint", 100, 0, FAULT_MISUSE, "1 to 99");
	no_fill("half_pint", 61, BOX_A, FAULT_REFUSED, "60 lids left");
	no_fill("half_pint", 1, 77, FAULT_MISSING, "");
	KK_OK(&kit, fill("half_pint", 60, BOX_A, false, true));
	no_fill("half_pint", 1, BOX_A, FAULT_REFUSED, "0 lids left");
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 60);
}
END_TEST

START_TEST(only_a_batch_in_its_fill_phase_is_filled)
{
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	for (int phase = PHASE_TO_BOIL; phase < PHASE_FILL; phase++) {
		if (phase == PHASE_GEL_POINT)
			continue; /* grape jelly goes by the clock */
		pk_to(&kit, WIDE_POT, (enum phase_name)phase);
		no_fill("half_pint", 5, BOX_A, FAULT_REFUSED, "Nothing is being filled from");
	}
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_jars_ready(&kit, batch_id);
	KK_OK(&kit, fill("half_pint", 8, BOX_A, false, true));
	pk_to(&kit, WIDE_POT, PHASE_RINSE);
	no_fill("half_pint", 1, BOX_A, FAULT_REFUSED, "Nothing is being filled from");
	kk_pass(&kit, MINUTE_MS);
	pk_step(&kit, WIDE_POT);
	no_fill("half_pint", 1, BOX_A, FAULT_STALE, "no longer in a pot");
}
END_TEST

/* The pot stands there an hour; a canner whose jars are in and cold comes first. */
START_TEST(an_empty_pot_waits_behind_all_that_holds_food)
{
	int64_t load_id;

	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_jars_ready(&kit, batch_id);
	KK_OK(&kit, fill("half_pint", 8, BOX_A, false, true));
	pk_to(&kit, WIDE_POT, PHASE_RINSE);
	kk_pass(&kit, 59 * MINUTE_MS);
	load_id = kk_start(&kit, LOW_KETTLE, 7);
	ck_assert_int_lt(strip_urgency(kk_strip(&kit, load_id), &kit.clock.now),
	                 strip_urgency(kk_canner(&kit, WIDE_POT), &kit.clock.now));
	ck_assert_int_lt(strip_urgency(kk_canner(&kit, WIDE_POT), &kit.clock.now),
	                 strip_urgency(kk_canner(&kit, DEEP_POT), &kit.clock.now));
}
END_TEST

/* 2 tbsp of bottled lemon juice a quart, half a pint: A539 Guide 3, CSU, PSU. */
START_TEST(tomatoes_are_filled_only_with_acid_in_every_jar)
{
	int64_t lemon = pk_supply(&kit, SUPPLY_LEMON_JUICE, "");

	batch_id = batch_to_fill(DEEP_POT, "crushed tomatoes", "quart", 1);
	KK_REFUSED(&kit, FAULT_STOPPED, fill("quart", 5, BOX_A, false, true)); /* not even when sure */
	KK_REFUSED(&kit, FAULT_STOPPED, fill("pint", 1, BOX_A, false, true));
	ck_assert_int_eq(pk_waiting(&kit), 0);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), lemon);
	KK_OK(&kit, fill("quart", 5, BOX_A, true, true));
	pk_says(&kit, "bottled lemon juice in every jar");
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), lemon - 5 * pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp"));
	KK_OK(&kit, fill("pint", 4, BOX_A, true, true));
	ck_assert_int_le(
	    llabs(pk_supply(&kit, SUPPLY_LEMON_JUICE, "") - (lemon - 7 * pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp"))), 4);
}
END_TEST

START_TEST(acid_is_asked_for_even_when_the_recipe_is_no_longer_known)
{
	struct log_recipe own = { .pectin = PECTIN_NONE,
		                  .acidity = ACIDITY_ACIDIFIED,
		                  .headspace_thou = 500,
		                  .multiple_max = 1,
		                  .foam_percent = 20,
		                  .boil_off_high_percent = 10,
		                  .ingredient_count = 1 };

	ck_assert(text_copy(own.name, sizeof(own.name), "our tomatoes") &&
	          text_copy(own.food, sizeof(own.food), "tomatoes crushed") &&
	          text_copy(own.packs, sizeof(own.packs), "hot") &&
	          text_copy(own.jars, sizeof(own.jars), "pint quart") &&
	          text_copy(own.source, sizeof(own.source), "house recipe, no source"));
	own.ingredients[0] = (struct log_recipe_ingredient){ .supply = SUPPLY_LEMON_JUICE,
		                                             .measure = MEASURE_VOLUME,
		                                             .amount = pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp"),
		                                             .adding = ADD_IN_JAR };
	ck_assert(text_copy(own.ingredients[0].name, NAME_MAX_BYTES, "bottled lemon juice"));
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	batch_id = batch_to_fill(DEEP_POT, "our tomatoes", "quart", 1);
	own.retired = true;
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	ck_assert_ptr_null(strip_batch(kk_canner(&kit, DEEP_POT))->recipe);
	KK_REFUSED(&kit, FAULT_STOPPED, fill("quart", 5, BOX_A, false, true));
	KK_OK(&kit, fill("quart", 5, BOX_A, true, true));
}
END_TEST

/* --- waiting --------------------------------------------------------------------------- */

START_TEST(waiting_jars_show_their_age_and_are_warned_of_past_the_limit)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];

	jelly();
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, true));
	kk_pass(&kit, 5 * MINUTE_MS);
	KK_OK(&kit, fill("pint", 1, BOX_A, false, true));
	kk_pass(&kit, (JAR_WAIT_MINUTES - 5) * MINUTE_MS);
	ck_assert_uint_eq(kitchen_waiting(kit.kitchen, &kit.clock.now, groups), 2);
	ck_assert_str_eq(groups[0].size, "half_pint");
	ck_assert_int_eq(groups[0].jars, 5);
	ck_assert_int_eq(groups[0].waited_ms, JAR_WAIT_MINUTES * MINUTE_MS);
	ck_assert_int_eq(groups[1].waited_ms, (JAR_WAIT_MINUTES - 5) * MINUTE_MS);
	ck_assert_ptr_null(kk_warned(&kit, "jars-wait", 0)); /* at the limit: not yet past it */
	kk_pass(&kit, 1);
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-wait", 0));
	ck_assert_ptr_nonnull(strstr(kk_warned(&kit, "jars-wait", 0)->sentence, "20 min"));
	{
		struct pick old = pk_pick(batch_id, "half_pint", 5);

		(void)pk_load(&kit, BIG_KETTLE, &old, 1);
	}
	ck_assert_ptr_null(kk_warned(&kit, "jars-wait", 0)); /* the pint waits 15 min */
	kk_pass(&kit, 5 * MINUTE_MS);
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-wait", 0));
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, 21, 0, &kit.fault));
	ck_assert_ptr_null(kk_warned(&kit, "jars-wait", 0));
}
END_TEST

START_TEST(the_age_of_jars_does_not_move_with_the_wall_clock)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];

	jelly();
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, true));
	kk_pass(&kit, 7 * MINUTE_MS);
	test_clock_step_wall(&kit.clock, -HOUR_MS);
	(void)kitchen_waiting(kit.kitchen, &kit.clock.now, groups);
	ck_assert_int_eq(groups[0].waited_ms, 7 * MINUTE_MS);
	test_clock_step_wall(&kit.clock, 3 * HOUR_MS);
	(void)kitchen_waiting(kit.kitchen, &kit.clock.now, groups);
	ck_assert_int_eq(groups[0].waited_ms, 7 * MINUTE_MS);
	ck_assert_ptr_null(kk_warned(&kit, "jars-wait", 0));
}
END_TEST

START_TEST(jars_past_their_limit_are_filled_again_and_not_loaded)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];

	jelly();
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, true));
	kk_pass(&kit, STANDING_MAX_MS);
	(void)kitchen_waiting(kit.kitchen, &kit.clock.now, groups);
	ck_assert(!groups[0].too_long); /* at the limit: not yet past it */
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-wait", 0));
	ck_assert_ptr_null(kk_warned(&kit, "jars-stood", 0));
	kk_pass(&kit, 1);
	(void)kitchen_waiting(kit.kitchen, &kit.clock.now, groups);
	ck_assert(groups[0].too_long);
	ck_assert_ptr_null(kk_warned(&kit, "jars-wait", 0)); /* nothing says to load them */
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-stood", 0));
	/* Others are still to be loaded soon, and their own minutes count. */
	KK_OK(&kit, fill("pint", 1, BOX_A, false, true));
	kk_pass(&kit, JAR_WAIT_MINUTES * MINUTE_MS + 1);
	ck_assert_ptr_nonnull(strstr(kk_warned(&kit, "jars-wait", 0)->sentence, "20 min, and"));
	ck_assert_ptr_nonnull(kk_warned(&kit, "jars-stood", 0));
}
END_TEST

/* --- into canners ------------------------------------------------------------------------ */

START_TEST(one_batch_spills_over_two_canners)
{
	struct loader_proposal offer;
	int64_t loads[2];

	batch_id = batch_to_fill(DEEP_POT, "grape juice", "pint", 2);
	KK_OK(&kit, fill("pint", 14, BOX_A, false, true));
	KK_OK(&kit, fill("quart", 2, BOX_B, false, true));
	kitchen_propose(kit.kitchen, &kit.clock.now, 0, &offer);
	ck_assert_uint_ge(offer.count, 2);
	for (size_t i = 0; i < 2; i++)
		KK_OK(&kit, kitchen_load_waiting(kit.kitchen, offer.proposals[i].station_id, offer.proposals[i].picks,
		                                 offer.proposals[i].pick_count, NO_PRESSURE, &loads[i], &kit.fault));
	ck_assert_int_eq(strip_load(kk_strip(&kit, loads[0]))->jars + strip_load(kk_strip(&kit, loads[1]))->jars +
	                     pk_waiting(&kit),
	                 16);
	ck_assert_int_eq(kk_strip(&kit, loads[0])->lot.id, kk_strip(&kit, loads[1])->lot.id);
	ck_assert_int_eq(kitchen_board(kit.kitchen)->jars_today, 16 - pk_waiting(&kit));
	/* Lids and jars were counted when they were filled, and only then. */
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A) + kk_lids_used(&kit, BOX_B), 16);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "pint"), 60 - 14);
}
END_TEST

/* At 4,650 ft crushed tomatoes 45 min in pints and 55 in quarts (A539 Guide 3). */
START_TEST(mixed_sizes_take_the_longest_process)
{
	struct pick picks[2];
	int64_t load_id;

	batch_id = batch_to_fill(DEEP_POT, "crushed tomatoes", "quart", 1);
	KK_OK(&kit, fill("pint", 5, BOX_A, true, true));
	KK_OK(&kit, fill("quart", 2, BOX_A, true, true));
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "canner 1 boiling_water \"Big kettle\" pint=9 quart=7",
	                               kk_station(&kit, BIG_KETTLE), &kit.fault));
	picks[0] = pk_pick(batch_id, "pint", 5);
	picks[1] = pk_pick(batch_id, "quart", 2);
	load_id = pk_load(&kit, BIG_KETTLE, picks, 2);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 55);
	ck_assert_str_eq(kk_strip(&kit, load_id)->holds, "7 jars crushed tomatoes");
	kk_to(&kit, load_id, PHASE_HOLD);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 55 * 60);
}
END_TEST

/* Jars of two batches, filled by turns. */
START_TEST(one_load_of_two_batches_holds_two_lots)
{
	struct pick picks[2];
	int64_t other;
	int64_t load_id;

	jelly();
	other = batch_to_fill(DEEP_POT, "grape juice", "pint", 1);
	for (int turn = 0; turn < 3; turn++) {
		pk_fill(&kit, batch_id, "half_pint", 2, BOX_A);
		kk_pass(&kit, SECOND_MS);
		pk_fill(&kit, other, "pint", 1, BOX_A);
		kk_pass(&kit, SECOND_MS);
	}
	picks[0] = pk_pick(batch_id, "half_pint", 6);
	picks[1] = pk_pick(other, "pint", 3);
	load_id = pk_load(&kit, BIG_KETTLE, picks, 2);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->jars, 9);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->lots, 2);
	ck_assert_int_eq(pk_waiting(&kit), 0);
}
END_TEST

START_TEST(jars_without_a_common_process_do_not_go_together)
{
	struct pick picks[2];
	int64_t other;
	int64_t load_id;
	char *rows;

	batch_id = batch_to_fill(DEEP_POT, "crushed tomatoes", "pint", 1);
	other = batch_to_fill(WIDE_POT, "green beans", "pint", 1);
	pk_fill(&kit, batch_id, "pint", 3, BOX_A);
	pk_fill(&kit, other, "pint", 3, BOX_A);
	picks[0] = pk_pick(batch_id, "pint", 3);
	picks[1] = pk_pick(other, "pint", 3);
	rows = pk_rows(&kit);
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_load_waiting(kit.kitchen, kk_station(&kit, BIG_KETTLE), picks, 2, NO_PRESSURE, &load_id,
	                                &kit.fault));
	pk_same_rows(&kit, rows);
	/* Tomatoes 20 min at 10 lb or 15 at 15, beans 20 at 15 alone (A539 Guides 3 and 4). */
	load_id = pk_load(&kit, WEIGHT_CANNER, picks, 2);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 20);
	ck_assert_int_eq(kk_load(&kit, load_id).pressure_psi, 15);
}
END_TEST

START_TEST(more_jars_than_a_canner_takes_are_refused)
{
	struct pick pick;
	int64_t load_id;
	char *rows;

	batch_id = batch_to_fill(DEEP_POT, "grape juice", "pint", 2);
	KK_OK(&kit, fill("pint", 12, BOX_A, false, true));
	rows = pk_rows(&kit);
	pick = pk_pick(batch_id, "pint", 10);
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_load_waiting(kit.kitchen, kk_station(&kit, BIG_KETTLE), &pick, 1, NO_PRESSURE, &load_id,
	                                &kit.fault));
	pk_same_rows(&kit, rows);
	pick = pk_pick(batch_id, "pint", 9);
	(void)pk_load(&kit, BIG_KETTLE, &pick, 1);
	pick = pk_pick(batch_id, "pint", 4); /* three are left */
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_load_waiting(kit.kitchen, kk_station(&kit, LOW_KETTLE), &pick, 1, NO_PRESSURE, &load_id,
	                                &kit.fault));
	ck_assert_int_eq(pk_waiting(&kit), 3);
}
END_TEST

/* --- corrections ---------------------------------------------------------------------------- */

static bool recount(const char *jar, int jars)
{
	return kitchen_batch_jars(kit.kitchen, batch_id, jar, jars, &kit.fault);
}

START_TEST(a_recount_moves_jars_and_lids_by_the_difference)
{
	char *rows;

	jelly();
	KK_OK(&kit, fill("half_pint", 8, BOX_A, false, true));
	rows = pk_rows(&kit);
	KK_OK(&kit, recount("half_pint", 6));
	pk_says(&kit, "Corrected");
	ck_assert_int_eq(pk_waiting(&kit), 6);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 6);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "half_pint"), 60 - 6);
	KK_OK(&kit, recount("half_pint", 9));
	ck_assert_int_eq(pk_waiting(&kit), 9);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 9);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "half_pint"), 60 - 9);
	KK_OK(&kit, recount("pint", 1));
	ck_assert_int_eq(pk_waiting(&kit), 10);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "pint"), 60 - 1);
	KK_OK(&kit, recount("half_pint", 0));
	ck_assert_int_eq(pk_waiting(&kit), 1);
	for (int i = 0; i < 4; i++)
		KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(jars_found_later_were_filled_when_the_others_were)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	int64_t filled_ms;

	jelly();
	KK_OK(&kit, fill("half_pint", 5, BOX_A, false, true));
	filled_ms = kit.clock.now.wall_ms;
	kk_pass(&kit, 15 * MINUTE_MS);
	KK_OK(&kit, recount("half_pint", 7));
	ck_assert_int_eq(newest_jar(batch_id).filled.wall_ms, filled_ms);
	KK_OK(&kit, recount("pint", 1));
	ck_assert_int_eq(newest_jar(batch_id).filled.wall_ms, filled_ms);
	(void)kitchen_waiting(kit.kitchen, &kit.clock.now, groups);
	ck_assert_int_eq(groups[1].waited_ms, 15 * MINUTE_MS);
}
END_TEST

START_TEST(a_recount_takes_no_more_lids_than_the_box_has)
{
	jelly();
	KK_OK(&kit, fill("half_pint", 48, BOX_B, false, true));
	KK_REFUSED(&kit, FAULT_REFUSED, recount("half_pint", 49));
	ck_assert_int_eq(kk_lids_used(&kit, BOX_B), 48);
	ck_assert_int_eq(pk_waiting(&kit), 48);
}
END_TEST

START_TEST(jars_in_a_canner_are_not_recounted_away)
{
	struct pick pick;
	char *rows;

	jelly();
	KK_OK(&kit, fill("half_pint", 8, BOX_A, false, true));
	pick = pk_pick(batch_id, "half_pint", 5);
	(void)pk_load(&kit, BIG_KETTLE, &pick, 1);
	rows = pk_rows(&kit);
	KK_REFUSED(&kit, FAULT_REFUSED, recount("half_pint", 4));
	pk_same_rows(&kit, rows);
	KK_OK(&kit, recount("half_pint", 5));
	ck_assert_int_eq(pk_waiting(&kit), 0);
	ck_assert_int_eq(strip_load(kk_strip(&kit, strip_load(kk_canner(&kit, BIG_KETTLE))->row.id))->jars, 5);
}
END_TEST

START_TEST(a_recount_is_no_way_round_the_filling)
{
	batch_id = pk_batch(&kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	KK_REFUSED(&kit, FAULT_REFUSED, recount("quart", 5)); /* nothing has been filled yet */
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	KK_REFUSED(&kit, FAULT_REFUSED, recount("quart", 5)); /* acid has not been asked about */
	KK_OK(&kit, fill("quart", 5, BOX_A, true, true));
	KK_REFUSED(&kit, FAULT_REFUSED, recount("half_pint", 2)); /* not a jar of the recipe */
	KK_REFUSED(&kit, FAULT_MISUSE, recount("jug", 2));
	KK_REFUSED(&kit, FAULT_MISUSE, recount("quart", -1));
	KK_REFUSED(&kit, FAULT_MISUSE, recount("quart", 100));
	ck_assert_int_eq(pk_waiting(&kit), 5);
	KK_OK(&kit, recount("quart", 6));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""),
	                 pk_amount(SUPPLY_LEMON_JUICE, "1 qt") - 6 * pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp"));
}
END_TEST

/* --- jars no canner takes ----------------------------------------------------------------- */

START_TEST(jars_put_away_wait_no_more_and_keep_their_place_in_the_counts)
{
	static const enum jar_fate away[] = { FATE_FRIDGE, FATE_FREEZER, FATE_DISCARD };
	char *rows;

	jelly();
	KK_OK(&kit, fill("half_pint", 6, BOX_A, false, true));
	KK_OK(&kit, fill("pint", 1, BOX_A, false, true));
	rows = pk_rows(&kit);
	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_put_away(kit.kitchen, batch_id, "half_pint", FATE_REPROCESS, &kit.fault));
	KK_OK(&kit, kitchen_put_away(kit.kitchen, batch_id, "half_pint", away[_i], &kit.fault));
	ck_assert_int_eq(pk_waiting(&kit), 1);
	ck_assert_int_eq(jars_of(batch_id, "half_pint"), 6);
	ck_assert_int_eq(kk_lids_used(&kit, BOX_A), 7);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, away[_i] == FATE_DISCARD ? 0 : 6);
	KK_REFUSED(&kit, FAULT_STALE, kitchen_put_away(kit.kitchen, batch_id, "half_pint", away[_i], &kit.fault));
	if (away[_i] != FATE_DISCARD) {
		KK_OK(&kit, kk_done(&kit, kitchen_board(kit.kitchen)->fates[0].id, true));
		/* Eaten they are gone; frozen they stay on the list and ask for nothing. */
		ck_assert_uint_eq(kitchen_board(kit.kitchen)->fate_count, away[_i] == FATE_FRIDGE ? 0 : 6);
		ck_assert_uint_eq(asides_waiting(kitchen_board(kit.kitchen)), 0);
		KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	}
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	pk_same_rows(&kit, rows);
}
END_TEST

START_TEST(a_closing_freezer_window_of_jars_put_away_names_no_load)
{
	jelly();
	KK_OK(&kit, fill("half_pint", 6, BOX_A, false, true));
	KK_OK(&kit, kitchen_put_away(kit.kitchen, batch_id, "half_pint", FATE_FREEZER, &kit.fault));
	kk_pass(&kit, HOUR_MS);
	ck_assert_ptr_nonnull(kk_warned(&kit, "fate-closing", 0));
	ck_assert_ptr_null(strstr(kk_warned(&kit, "fate-closing", 0)->sentence, "load 0"));
	kk_pass(&kit, HOUR_MS);
	ck_assert_ptr_nonnull(kk_warned(&kit, "fate-closed", 0));
	ck_assert_ptr_null(strstr(kk_warned(&kit, "fate-closed", 0)->sentence, "load 0"));
}
END_TEST

/* --- undo ------------------------------------------------------------------------------------ */

START_TEST(undo_of_fill_load_and_batch_restores_every_stock)
{
	char *before = pk_rows(&kit);
	char *started;
	char *filled;
	struct pick pick;
	int64_t load_id;

	batch_id = pk_batch(&kit, WIDE_POT, "apple jelly, low sugar", "half_pint", 2);
	kk_pass(&kit, 2 * SECOND_MS);
	started = pk_rows(&kit);
	while (pk_name(&kit, WIDE_POT) != PHASE_FILL) {
		pk_step(&kit, WIDE_POT);
		kk_pass(&kit, 2 * SECOND_MS);
	}
	KK_OK(&kit, fill("half_pint", 9, BOX_A, true, true));
	filled = pk_rows(&kit);
	pick = pk_pick(batch_id, "half_pint", 7);
	load_id = pk_load(&kit, BIG_KETTLE, &pick, 1);
	KK_REFUSED(&kit, FAULT_CONFLICT, pk_undo(&kit, SUBJECT_BATCH, batch_id)); /* they are in the canner */
	KK_OK(&kit, pk_undo(&kit, SUBJECT_LOAD, load_id));
	pk_same_rows(&kit, filled);
	while (pk_name(&kit, WIDE_POT) != PHASE_TO_BOIL)
		KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	pk_same_rows(&kit, started);
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	pk_same_rows(&kit, before);
	ck_assert_int_eq(kk_canner(&kit, WIDE_POT)->content, STRIP_EMPTY);
}
END_TEST

START_TEST(a_fill_done_again_takes_no_lid_that_is_gone)
{
	jelly();
	KK_OK(&kit, fill("half_pint", 40, BOX_B, false, true));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	ck_assert_int_eq(kk_lids_used(&kit, BOX_B), 0);
	{
		struct load_order order = kk_order(&kit, BIG_KETTLE, 9);
		int64_t load_id;

		order.lid_box_id = BOX_B;
		KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	}
	/* 39 of 48 are left: the 40 of the filling are not. */
	KK_REFUSED(&kit, FAULT_CONFLICT, pk_redo(&kit, SUBJECT_BATCH, batch_id));
	ck_assert_int_eq(kk_lids_used(&kit, BOX_B), 9);
	ck_assert_int_eq(pk_waiting(&kit), 0);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("filling", .begin = begin, .end = end),
	TEST(jars_of_several_sizes_are_filled_from_one_batch),
	TEST(jars_are_boiled_first_where_their_minutes_suppose_it),
	TEST(jars_not_boiled_first_get_the_longer_process),
	TEST(jars_that_no_table_has_unboiled_are_boiled),
	TEST(cold_jars_are_asked_about),
	TEST(what_cannot_be_filled_is_refused),
	TEST(only_a_batch_in_its_fill_phase_is_filled),
	TEST(an_empty_pot_waits_behind_all_that_holds_food),
	TEST(tomatoes_are_filled_only_with_acid_in_every_jar),
	TEST(acid_is_asked_for_even_when_the_recipe_is_no_longer_known),
	TEST(waiting_jars_show_their_age_and_are_warned_of_past_the_limit),
	TEST(jars_past_their_limit_are_filled_again_and_not_loaded),
	TEST(the_age_of_jars_does_not_move_with_the_wall_clock),
	GROUP("loading", .begin = begin, .end = end),
	TEST(one_batch_spills_over_two_canners),
	TEST(mixed_sizes_take_the_longest_process),
	TEST(one_load_of_two_batches_holds_two_lots),
	TEST(jars_without_a_common_process_do_not_go_together),
	TEST(more_jars_than_a_canner_takes_are_refused),
	EACH(jars_put_away_wait_no_more_and_keep_their_place_in_the_counts, 0, 3),
	TEST(a_closing_freezer_window_of_jars_put_away_names_no_load),
	GROUP("corrections", .begin = begin, .end = end),
	TEST(a_recount_moves_jars_and_lids_by_the_difference),
	TEST(jars_found_later_were_filled_when_the_others_were),
	TEST(a_recount_takes_no_more_lids_than_the_box_has),
	TEST(jars_in_a_canner_are_not_recounted_away),
	TEST(a_recount_is_no_way_round_the_filling),
	TEST(undo_of_fill_load_and_batch_restores_every_stock),
	TEST(a_fill_done_again_takes_no_lid_that_is_gone),
};

KK_TESTS("filling", listed)
