/* Jars that wait for a canner: the split, the process in common, the load. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/outlook.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/step.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define POT 6
#define POT_LINE "pot 6 \"Wide pot\" \"16 qt\""

static struct kitchen_kit kit;
static int64_t load_id;

static void begin(void)
{
	kk_begin(&kit);
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, POT_LINE, 0, &kit.fault));
	load_id = 0;
}

static void end(void)
{
	kk_end(&kit);
}

/* --- jars that wait ----------------------------------------------------------------- */

/* What is filled, at 4,650 ft; times from USDA AIB 539 by the process tables. */
struct filled {
	const char *product;
	const char *food;
	const char *pack;
	enum acidity acidity;
};

static const struct filled jelly = { "grape jelly", "jam or jelly with added pectin", "hot_sterile_jar",
	                             ACIDITY_ACID }; /* 10 min */
static const struct filled slow_jelly = { "low-sugar jelly", "jam or jelly with added pectin", "hot_unsterile_jar",
	                                  ACIDITY_ACID }; /* 15 min */
static const struct filled tomatoes = { "crushed tomatoes", "tomatoes crushed", "hot",
	                                ACIDITY_ACIDIFIED }; /* pints 45, quarts 55 min */
static const struct filled whole_tomatoes = { "whole tomatoes", "tomatoes whole or halved in tomato juice", "hot",
	                                      ACIDITY_ACIDIFIED };
static const struct filled peaches = { "peaches", "peaches", "hot", ACIDITY_ACID }; /* 30, 35 min */
static const struct filled beans = { "green beans", "green beans (snap and Italian)", "raw", ACIDITY_LOW_ACID };
static const struct filled syrup = { "quince syrup", "", "", ACIDITY_ACID };

static void put_jars(int64_t batch_id, int64_t lot_id, const char *size, int jars)
{
	for (int i = 0; i < jars; i++) {
		struct log_jar jar = { .batch_id = batch_id, .lot_id = lot_id, .filled = kit.clock.now };

		ck_assert(text_copy(jar.size, sizeof(jar.size), size));
		KK_OK(&kit, log_put_jar(kit.log, &jar, &kit.fault));
	}
}

/* A batch whose pot is long rinsed and whose jars stand there; its id. */
static int64_t fill(const struct filled *what, const char *size, int jars)
{
	static int number;
	struct log_lot lot = { .acidity = what->acidity, .made_wall_ms = kit.clock.now.wall_ms };
	struct log_batch batch = { .multiple = 1, .headspace_thou = 250 };
	struct log_entry entry = { .at = kit.clock.now, .verb = "fill", .said = "[\"filled\"]" };
	struct text code = TEXT_OVER(lot.code);

	batch.station_id = kk_station(&kit, POT);
	batch.opened_wall_ms = kit.clock.now.wall_ms;
	batch.published = what->food[0] != '\0';
	text_add(&code, "2026-09-14-T%d", ++number);
	ck_assert(text_copy(lot.product, sizeof(lot.product), what->product) &&
	          text_copy(lot.food, sizeof(lot.food), what->food) &&
	          text_copy(lot.pack, sizeof(lot.pack), what->pack) &&
	          text_copy(batch.recipe, sizeof(batch.recipe), what->product) &&
	          text_copy(batch.source, sizeof(batch.source), "house recipe, no source"));
	KK_OK(&kit, log_begin(kit.log, &kit.fault));
	KK_OK(&kit, log_put_lot(kit.log, &lot, &kit.fault));
	batch.lot_id = lot.id;
	KK_OK(&kit, log_put_batch(kit.log, &batch, &kit.fault));
	put_jars(batch.id, lot.id, size, jars);
	KK_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
	kk_pass(&kit, MINUTE_MS);
	return batch.id;
}

static struct pick pick_of(int64_t batch_id, const char *size, int jars)
{
	struct pick pick = { .batch_id = batch_id, .jars = jars };

	ck_assert(text_copy(pick.size, sizeof(pick.size), size));
	return pick;
}

static struct loader_proposal propose(void)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct loader_proposal offer;

	kitchen_propose(kit.kitchen, &now, 0, &offer);
	return offer;
}

static int waiting(void)
{
	return (int)kitchen_board(kit.kitchen)->waiting_count;
}

static bool load(int digit, const struct pick *picks, size_t count)
{
	return kitchen_load_waiting(kit.kitchen, kk_station(&kit, digit), picks, count, NO_PRESSURE, &load_id,
	                            &kit.fault);
}

static struct process common(int digit, const struct pick *picks, size_t count, int pressure_psi)
{
	struct process process;

	KK_OK(&kit, kitchen_common_process(kit.kitchen, kk_station(&kit, digit), picks, count, pressure_psi, &process,
	                                   &kit.fault));
	return process;
}

/* No process in common, with these words in the sentence. */
static void no_process(int digit, const struct pick *picks, size_t count, int pressure_psi, const char *says)
{
	struct process process;
	bool found = kitchen_common_process(kit.kitchen, kk_station(&kit, digit), picks, count, pressure_psi, &process,
	                                    &kit.fault);

	ck_assert_msg(found || strstr(kit.fault.sentence, says) != NULL, "\"%s\" does not say \"%s\"",
	              kit.fault.sentence, says);
	kk_refused(&kit, found, FAULT_REFUSED, says);
}

/* Loading is refused, and nothing is written. */
static void no_load(int digit, const struct pick *picks, size_t count, enum fault_kind kind, const char *says)
{
	int64_t before = kk_journal(&kit);
	int jars = waiting();
	bool loaded = load(digit, picks, count);

	ck_assert_msg(loaded || strstr(kit.fault.sentence, says) != NULL, "\"%s\" does not say \"%s\"",
	              kit.fault.sentence, says);
	kk_refused(&kit, loaded, kind, says);
	ck_assert_int_eq(kk_journal(&kit), before);
	KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
	ck_assert_int_eq(waiting(), jars);
}

START_TEST(waiting_jars_are_told_by_batch_and_size_the_longest_first)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	struct moment now;
	int64_t first = fill(&jelly, "half_pint", 4);
	int64_t second = fill(&tomatoes, "pint", 3);
	size_t count;

	kk_pass(&kit, 9 * MINUTE_MS);
	now = kitchen_now(kit.kitchen);
	count = kitchen_waiting(kit.kitchen, &now, groups);
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(groups[0].batch_id, first);
	ck_assert_int_eq(groups[0].jars, 4);
	ck_assert_int_eq(groups[0].waited_ms, 11 * MINUTE_MS);
	ck_assert_str_eq(groups[0].lot.product, "grape jelly");
	ck_assert_str_eq(groups[0].size, "half_pint");
	ck_assert_int_eq(groups[1].batch_id, second);
	ck_assert_int_eq(groups[1].jars, 3);
	ck_assert_int_eq(groups[1].waited_ms, 10 * MINUTE_MS);
}
END_TEST

START_TEST(nothing_waits_in_an_empty_kitchen)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	struct moment now = kitchen_now(kit.kitchen);
	struct loader_proposal offer = propose();

	ck_assert_uint_eq(kitchen_waiting(kit.kitchen, &now, groups), 0);
	ck_assert_uint_eq(offer.count, 0);
	ck_assert_int_eq(offer.left_over, 0);
}
END_TEST

/* --- the split ------------------------------------------------------------------------ */

static void proposed(const struct loader_proposal *offer, size_t n, int digit, int jars)
{
	ck_assert_uint_gt(offer->count, n);
	ck_assert_int_eq(offer->proposals[n].station_id, kk_station(&kit, digit));
	ck_assert_int_eq(offer->proposals[n].jars, jars);
}

START_TEST(one_batch_spills_over_several_canners)
{
	int64_t batch = fill(&jelly, "half_pint", 20);
	struct loader_proposal offer = propose();

	/* 9 + 7 by the kettles; the steam canner takes its 7 quarts' room of smaller jars. */
	ck_assert_uint_eq(offer.count, 3);
	proposed(&offer, 0, BIG_KETTLE, 9);
	proposed(&offer, 1, LOW_KETTLE, 7);
	proposed(&offer, 2, STEAM_CANNER, 4);
	ck_assert_int_eq(offer.left_over, 0);
	for (size_t i = 0; i < offer.count; i++) {
		ck_assert_uint_eq(offer.proposals[i].pick_count, 1);
		ck_assert_int_eq(offer.proposals[i].picks[0].batch_id, batch);
		ck_assert_int_eq(offer.proposals[i].free_in_ms, 0);
	}
}
END_TEST

START_TEST(what_no_canner_takes_is_left_over)
{
	struct loader_proposal offer;

	fill(&jelly, "half_pint", 30);
	offer = propose();
	ck_assert_int_eq(offer.left_over, 30 - 9 - 7 - 7);
	fill(&syrup, "pint", 5);
	offer = propose();
	ck_assert_int_eq(offer.left_over, 30 - 9 - 7 - 7 + 5);
}
END_TEST

START_TEST(one_load_holds_several_batches)
{
	int64_t first = fill(&jelly, "pint", 5);
	int64_t second = fill(&slow_jelly, "half_pint", 3);
	struct loader_proposal offer = propose();

	ck_assert_uint_eq(offer.count, 1);
	proposed(&offer, 0, BIG_KETTLE, 8);
	ck_assert_uint_eq(offer.proposals[0].pick_count, 2);
	ck_assert_int_eq(offer.proposals[0].picks[0].batch_id, first);
	ck_assert_int_eq(offer.proposals[0].picks[0].jars, 5);
	ck_assert_int_eq(offer.proposals[0].picks[1].batch_id, second);
	ck_assert_int_eq(offer.proposals[0].picks[1].jars, 3);
}
END_TEST

START_TEST(low_acid_food_goes_to_pressure_canners_only)
{
	struct loader_proposal offer;

	fill(&beans, "pint", 20);
	offer = propose();
	ck_assert_uint_eq(offer.count, 2);
	proposed(&offer, 0, WEIGHT_CANNER, 9);
	proposed(&offer, 1, DIAL_CANNER, 9);
	ck_assert_int_eq(offer.left_over, 2);
}
END_TEST

START_TEST(canners_that_are_free_come_before_those_that_will_be)
{
	int64_t early = kk_start(&kit, LOW_KETTLE, 7);
	struct moment now;
	struct loader_proposal offer;

	kk_to(&kit, early, PHASE_HOLD);
	(void)kk_start(&kit, BIG_KETTLE, 9);
	fill(&jelly, "half_pint", 30);
	offer = propose();
	now = kitchen_now(kit.kitchen);
	ck_assert_uint_eq(offer.count, 3);
	proposed(&offer, 0, STEAM_CANNER, 7);
	ck_assert_int_eq(offer.proposals[0].free_in_ms, 0);
	proposed(&offer, 1, LOW_KETTLE, 7);
	ck_assert_int_eq(offer.proposals[1].free_in_ms, strip_free_in_ms(kk_canner(&kit, LOW_KETTLE), &now));
	proposed(&offer, 2, BIG_KETTLE, 9);
	ck_assert_int_gt(offer.proposals[2].free_in_ms, offer.proposals[1].free_in_ms);
	ck_assert_int_eq(offer.left_over, 7);
}
END_TEST

/* A canner whose jars should have been lifted is expected free at any moment, but
 * it is not empty. */
/* Does not go into the canner at this key, and this is said of it. */
static void does_not_go(int digit, const char *says)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct loader_proposal offer;
	struct fault why = { 0 };

	kitchen_propose(kit.kitchen, &now, kk_station(&kit, digit), &offer);
	ck_assert(!kitchen_takes_waiting(kit.kitchen, &now, kk_station(&kit, digit), &offer, &why));
	ck_assert_msg(strstr(why.sentence, says) != NULL, "\"%s\" does not say \"%s\"", why.sentence, says);
}

static void goes(int digit)
{
	struct moment now = kitchen_now(kit.kitchen);
	struct loader_proposal offer;

	kitchen_propose(kit.kitchen, &now, kk_station(&kit, digit), &offer);
	ck_assert(kitchen_takes_waiting(kit.kitchen, &now, kk_station(&kit, digit), &offer, &kit.fault));
}

START_TEST(why_waiting_jars_do_not_go_into_a_canner_is_said)
{
	does_not_go(BIG_KETTLE, "No filled jars wait.");
	(void)fill(&peaches, "quart", 4);
	does_not_go(BIG_KETTLE, "Big kettle takes no quarts: too tall for it, or none are set (h).");
	goes(WEIGHT_CANNER);
	does_not_go(POT, "is not a canner");
}
END_TEST

START_TEST(low_acid_jars_are_told_that_they_need_pressure)
{
	(void)fill(&beans, "pint", 4);
	does_not_go(BIG_KETTLE, "ressure");
	goes(WEIGHT_CANNER);
}
END_TEST

START_TEST(jars_that_stood_too_long_are_told_to_be_reheated)
{
	(void)fill(&beans, "pint", 4);
	kk_pass(&kit, 10 * 60 * MINUTE_MS);
	does_not_go(WEIGHT_CANNER, "Reheat and fill again");
}
END_TEST

START_TEST(a_canner_that_is_not_free_takes_none_while_others_take_them_all)
{
	(void)kk_start(&kit, BIG_KETTLE, 7);
	(void)fill(&jelly, "pint", 4);
	goes(LOW_KETTLE);
	does_not_go(BIG_KETTLE, "Big kettle is not free.");
}
END_TEST

START_TEST(a_canner_over_its_time_is_not_free_now)
{
	int64_t first = kk_start(&kit, BIG_KETTLE, 9);
	struct loader_proposal offer;

	kk_to(&kit, first, PHASE_UNLOAD);
	kk_pass(&kit, 3 * HOUR_MS);
	fill(&jelly, "half_pint", 20);
	offer = propose();
	ck_assert_uint_eq(offer.count, 3);
	proposed(&offer, 2, BIG_KETTLE, 6);
	ck_assert_int_gt(offer.proposals[2].free_in_ms, 0);
}
END_TEST

START_TEST(mixed_sizes_have_the_room_of_the_largest_jar)
{
	int64_t quarts = fill(&tomatoes, "quart", 5);
	int64_t pints = fill(&tomatoes, "pint", 9);
	struct loader_proposal offer;

	/* Only the pressure canner takes 7 quarts at 55 min; a kettle has no room for
	 * quarts and steam stops at 45 min. */
	offer = propose();
	ck_assert_uint_eq(offer.count, 2);
	proposed(&offer, 0, BIG_KETTLE, 9);
	ck_assert_int_eq(offer.proposals[0].picks[0].batch_id, pints);
	proposed(&offer, 1, WEIGHT_CANNER, 5);
	ck_assert_int_eq(offer.proposals[1].picks[0].batch_id, quarts);
	(void)kk_start(&kit, BIG_KETTLE, 9);
	(void)kk_start(&kit, LOW_KETTLE, 7);
	offer = propose();
	proposed(&offer, 0, WEIGHT_CANNER, 7); /* 5 quarts and 2 pints, not 9 */
	ck_assert_int_eq(offer.proposals[0].picks[1].jars, 2);
	proposed(&offer, 1, STEAM_CANNER, 7); /* the other pints: 45 min are still allowed */
}
END_TEST

/* Whatever waits, a proposal can be carried out, and no jar is told twice. */
START_TEST(any_proposal_can_be_loaded)
{
	static const struct filled *const kinds[] = { &jelly, &slow_jelly, &tomatoes, &peaches, &beans, &syrup };
	static const char *const sizes[] = { "half_pint", "pint", "quart" };
	struct dice dice = dice_from((uint64_t)_i + 1);
	struct loader_proposal offer;
	int told = 0;
	int all;

	for (int batches = 1 + dice_roll(&dice, 7); batches > 0; batches--)
		fill(kinds[dice_roll(&dice, 6)], sizes[dice_roll(&dice, 3)], 1 + dice_roll(&dice, 14));
	all = waiting();
	offer = propose();
	for (size_t i = 0; i < offer.count; i++) {
		const struct proposal *proposal = &offer.proposals[i];

		told += proposal->jars;
		KK_OK(&kit, kitchen_load_waiting(kit.kitchen, proposal->station_id, proposal->picks,
		                                 proposal->pick_count, NO_PRESSURE, &load_id, &kit.fault));
		ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->jars, proposal->jars);
	}
	ck_assert_int_eq(told + offer.left_over, all);
	ck_assert_int_eq(waiting(), offer.left_over);
	for (size_t i = 0; i < offer.count; i++)
		ck_assert_int_gt(offer.proposals[i].jars, 0);
}
END_TEST

/* From its number of jars on: what stands before that is its verdict. */
static const char *told_from(const char *words)
{
	const char *holds = kk_strip(&kit, load_id)->holds;
	const char *from = strstr(holds, words);

	return from != NULL ? from : holds;
}

START_TEST(several_pots_of_one_product_are_told_as_one)
{
	struct pick picks[3];

	picks[0] = pick_of(fill(&jelly, "half_pint", 2), "half_pint", 2);
	picks[1] = pick_of(fill(&jelly, "half_pint", 3), "half_pint", 3);
	ck_assert(load(BIG_KETTLE, picks, 2));
	ck_assert_str_eq(told_from("5 half"), "5 half-pints grape jelly");
	picks[0] = pick_of(fill(&jelly, "half_pint", 2), "half_pint", 2);
	picks[1] = pick_of(fill(&jelly, "half_pint", 3), "half_pint", 3);
	picks[2] = pick_of(fill(&slow_jelly, "half_pint", 1), "half_pint", 1);
	ck_assert(load(LOW_KETTLE, picks, 3));
	ck_assert_str_eq(told_from("6 half"), "6 half-pints grape jelly and low-sugar jelly");
}
END_TEST

/* --- the process in common ------------------------------------------------------------- */

START_TEST(a_mixed_load_takes_the_longest_process)
{
	struct pick picks[2];
	struct process process;

	picks[0] = pick_of(fill(&peaches, "pint", 4), "pint", 4);
	picks[1] = pick_of(fill(&tomatoes, "pint", 4), "pint", 4);
	process = common(BIG_KETTLE, picks, 1, NO_PRESSURE);
	ck_assert_int_eq(process.minutes, 30); /* A539 Guide 2, peaches, 3,001 to 6,000 ft */
	process = common(BIG_KETTLE, picks, 2, NO_PRESSURE);
	ck_assert_int_eq(process.minutes, 45); /* A539 Guide 3, crushed tomatoes, the same */
	ck_assert_str_eq(process.row->food, "tomatoes crushed");
	ck_assert_int_eq(process.pressure_psi, NO_PRESSURE);
	ck_assert_uint_eq(process.option_count, 0);
}
END_TEST

/* Weighted gauge above 1,000 ft: beans 20 min at 15 psi (A539 Guide 4), crushed
 * tomatoes 20 min at 10 or 15 min at 15 psi (Guide 3). */
START_TEST(a_pressure_load_has_one_pressure_for_all)
{
	struct pick picks[2];
	struct process process;

	picks[0] = pick_of(fill(&tomatoes, "pint", 4), "pint", 4);
	picks[1] = pick_of(fill(&beans, "pint", 4), "pint", 4);
	process = common(WEIGHT_CANNER, picks, 1, NO_PRESSURE);
	ck_assert_int_eq(process.minutes, 20);
	ck_assert_int_eq(process.pressure_psi, 10);
	ck_assert_uint_eq(process.option_count, 1);
	ck_assert_int_eq(process.options[0].pressure_psi, 15);
	ck_assert_int_eq(process.options[0].minutes, 15);
	process = common(WEIGHT_CANNER, picks, 2, NO_PRESSURE);
	ck_assert_int_eq(process.minutes, 20);
	ck_assert_int_eq(process.pressure_psi, 15);
	ck_assert_uint_eq(process.option_count, 0);
	process = common(WEIGHT_CANNER, picks, 2, 15);
	ck_assert_int_eq(process.minutes, 20);
	no_process(WEIGHT_CANNER, picks, 2, 10, "green beans");
	process = common(WEIGHT_CANNER, picks, 1, 15);
	ck_assert_int_eq(process.minutes, 15);
}
END_TEST

/* Crushed 20 min at 10 or 15 at 15 psi, whole in juice 40 at 10 or 25 at 15 (A539
 * Guide 3, weighted gauge above 1,000 ft): every pair on offer is the longest. */
START_TEST(each_pressure_offered_to_a_mix_has_its_longest_time)
{
	struct pick picks[2];
	struct process process;

	for (int turn = 0; turn < 2; turn++) {
		picks[turn] = pick_of(fill(&tomatoes, "pint", 2), "pint", 2);
		picks[1 - turn] = pick_of(fill(&whole_tomatoes, "pint", 2), "pint", 2);
		process = common(WEIGHT_CANNER, picks, 2, NO_PRESSURE);
		ck_assert_int_eq(process.minutes, 40);
		ck_assert_int_eq(process.pressure_psi, 10);
		ck_assert_uint_eq(process.option_count, 1);
		ck_assert_int_eq(process.options[0].minutes, 25);
		ck_assert_int_eq(process.options[0].pressure_psi, 15);
		ck_assert_int_eq(common(WEIGHT_CANNER, picks, 2, 15).minutes, 25);
	}
}
END_TEST

START_TEST(a_mix_without_a_common_pressure_is_refused)
{
	struct pick picks[3];

	picks[0] = pick_of(fill(&tomatoes, "pint", 2), "pint", 2);
	picks[1] = pick_of(fill(&peaches, "pint", 2), "pint", 2); /* 10 min at 10 psi only */
	picks[2] = pick_of(fill(&beans, "pint", 2), "pint", 2);   /* 20 min at 15 psi only */
	ck_assert_int_eq(common(WEIGHT_CANNER, picks, 2, NO_PRESSURE).minutes, 20);
	no_process(WEIGHT_CANNER, picks, 3, NO_PRESSURE, "green beans");
	no_process(WEIGHT_CANNER, picks, 3, NO_PRESSURE, "no pressure in common");
	no_load(WEIGHT_CANNER, picks, 3, FAULT_REFUSED, "no pressure in common");
}
END_TEST

START_TEST(what_one_lot_may_not_have_no_load_gets)
{
	struct pick picks[2];

	picks[0] = pick_of(fill(&jelly, "pint", 2), "pint", 2);
	picks[1] = pick_of(fill(&beans, "pint", 2), "pint", 2);
	no_process(BIG_KETTLE, picks, 2, NO_PRESSURE, "green beans (2026-09-14-T");
	no_process(BIG_KETTLE, picks, 2, NO_PRESSURE, "pressure");
	no_process(WEIGHT_CANNER, picks, 2, NO_PRESSURE, "grape jelly");
	picks[1] = pick_of(fill(&syrup, "pint", 2), "pint", 2);
	no_process(BIG_KETTLE, picks, 2, NO_PRESSURE, "quince syrup");
	no_process(BIG_KETTLE, picks, 2, NO_PRESSURE, "no published process");
	picks[1] = pick_of(fill(&jelly, "quart", 2), "quart", 2);
	no_process(BIG_KETTLE, picks, 2, NO_PRESSURE, "quart");
	picks[1] = pick_of(fill(&tomatoes, "quart", 2), "quart", 2); /* 55 min: steam stops at 45 */
	no_process(STEAM_CANNER, picks, 2, NO_PRESSURE, "crushed tomatoes");
	no_load(STEAM_CANNER, &picks[1], 1, FAULT_REFUSED, "crushed tomatoes");
}
END_TEST

START_TEST(no_elevation_no_process)
{
	struct pick pick = pick_of(fill(&jelly, "pint", 2), "pint", 2);

	KK_OK(&kit, kitchen_set_elevation(kit.kitchen, "", &kit.fault));
	no_process(BIG_KETTLE, &pick, 1, NO_PRESSURE, "elevation");
	ck_assert_uint_eq(propose().count, 0);
	ck_assert_int_eq(propose().left_over, 2);
}
END_TEST

/* --- loading ------------------------------------------------------------------------------ */

START_TEST(a_load_takes_the_jars_in_the_order_they_waited)
{
	struct log_entry newest;
	struct log_jar jar;
	struct pick picks[2];
	int64_t first = fill(&jelly, "pint", 6);
	int64_t second = fill(&slow_jelly, "half_pint", 4);
	int64_t filled = kitchen_board(kit.kitchen)->waiting[0].filled.wall_ms;

	/* Picked the other way round, and not all of them. */
	picks[0] = pick_of(second, "half_pint", 2);
	picks[1] = pick_of(first, "pint", 5);
	KK_OK(&kit, load(BIG_KETTLE, picks, 2));
	ck_assert_int_eq(waiting(), 3);
	for (int place = 1; place <= 7; place++) {
		jar = kk_jar_row(&kit, load_id, place);
		ck_assert_int_eq(jar.batch_id, place <= 5 ? first : second);
		ck_assert_str_eq(jar.size, place <= 5 ? "pint" : "half_pint");
	}
	ck_assert_int_eq(kk_jar_row(&kit, load_id, 1).filled.wall_ms, filled);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 15); /* A539 Guide 7 with CU: 10 + 5 */
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_LOADED);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->lots, 2);
	ck_assert(log_newest_entry(kit.log, &newest, NULL));
	ck_assert_str_eq(newest.verb, "load_waiting");
	ck_assert_int_eq(newest.work_id, load_id);
	ck_assert_ptr_nonnull(strstr(kk_said(&kit), "Big kettle: load started, 15 min: 2 half-pints low-sugar"));
	ck_assert_ptr_nonnull(strstr(kk_said(&kit), "5 pints grape jelly (2026-09-14-T"));
	kk_to(&kit, load_id, PHASE_COOLING);
}
END_TEST

START_TEST(an_undone_load_waits_again_and_is_loaded_again)
{
	struct pick pick = pick_of(fill(&jelly, "pint", 6), "pint", 5);
	char *before = kk_dump(kit.log);
	char *after;

	KK_OK(&kit, load(BIG_KETTLE, &pick, 1));
	ck_assert_int_eq(waiting(), 1);
	KK_OK(&kit, kk_undo(&kit, load_id));
	ck_assert_int_eq(waiting(), 6);
	ck_assert_int_eq(kk_canner(&kit, BIG_KETTLE)->content, STRIP_EMPTY);
	after = kk_dump(kit.log);
	ck_assert_str_eq(after, before);
	free(before);
	free(after);
	KK_OK(&kit, kk_redo(&kit, load_id));
	ck_assert_int_eq(waiting(), 1);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->jars, 5);
}
END_TEST

START_TEST(a_load_that_cannot_be_writes_nothing)
{
	int64_t batch = fill(&jelly, "pint", 12);
	struct pick picks[PICKS_MAX + 1];

	for (size_t i = 0; i <= PICKS_MAX; i++)
		picks[i] = pick_of(batch, "pint", 1);
	no_load(BIG_KETTLE, picks, 0, FAULT_REFUSED, "1 to 8");
	no_load(BIG_KETTLE, picks, PICKS_MAX + 1, FAULT_REFUSED, "1 to 8");
	picks[0].jars = 0;
	no_load(BIG_KETTLE, picks, 1, FAULT_REFUSED, "at least one");
	picks[0].jars = -1;
	no_load(BIG_KETTLE, picks, 1, FAULT_REFUSED, "at least one");
	picks[0].jars = INT32_MAX;
	no_load(BIG_KETTLE, picks, 1, FAULT_REFUSED, "at least one");
	picks[0].jars = 10;
	no_load(BIG_KETTLE, picks, 1, FAULT_REFUSED, "takes 9 jars");
	picks[0].jars = 7;
	no_load(POT, picks, 1, FAULT_REFUSED, "not a canner");
	no_load(STEAM_CANNER, (struct pick[]){ pick_of(batch, "pail", 1) }, 1, FAULT_MISUSE, "pail");
	no_load(STEAM_CANNER, (struct pick[]){ pick_of(batch, "quart", 1) }, 1, FAULT_STALE, "quarts");
	no_load(STEAM_CANNER, (struct pick[]){ pick_of(99, "pint", 1) }, 1, FAULT_STALE, "pints");
	KK_OK(&kit, load(BIG_KETTLE, picks, 1));
	picks[0].jars = 1;
	no_load(BIG_KETTLE, picks, 1, FAULT_STALE, "");
	picks[0].jars = 6; /* only 5 of the 12 are left */
	no_load(LOW_KETTLE, picks, 1, FAULT_REFUSED, "1 of the pints");
}
END_TEST

START_TEST(quarts_and_pints_together_are_no_more_than_quarts_alone)
{
	struct pick picks[2];

	picks[0] = pick_of(fill(&tomatoes, "pint", 4), "pint", 4);
	picks[1] = pick_of(fill(&tomatoes, "quart", 4), "quart", 4);
	no_load(WEIGHT_CANNER, picks, 2, FAULT_REFUSED, "takes 7 jars when quarts are among them");
	no_load(BIG_KETTLE, &picks[1], 1, FAULT_REFUSED, "no room set for quarts");
	picks[0].jars = 3;
	KK_OK(&kit, load(WEIGHT_CANNER, picks, 2));
	ck_assert_int_eq(kk_load(&kit, load_id).pressure_psi, 10);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 20);
}
END_TEST

START_TEST(the_same_lot_may_be_picked_twice)
{
	int64_t batch = fill(&jelly, "pint", 5);
	struct pick picks[2];

	picks[0] = pick_of(batch, "pint", 2);
	picks[1] = pick_of(batch, "pint", 2);
	KK_OK(&kit, load(BIG_KETTLE, picks, 2));
	ck_assert_int_eq(waiting(), 1);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->jars, 4);
}
END_TEST

/* The first jars go into the canner while the pot is still being emptied. */
START_TEST(a_batch_still_being_filled_may_be_loaded)
{
	struct batch_order order = { .station_id = kk_station(&kit, POT), .multiple = 1 };
	struct pick pick;
	int64_t batch = 0;

	ck_assert(text_copy(order.recipe, sizeof(order.recipe), "crushed tomatoes") &&
	          text_copy(order.pack, sizeof(order.pack), "hot") && text_copy(order.jar, sizeof(order.jar), "pint"));
	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, true, &batch, &kit.fault));
	for (int steps = 0; kk_canner(&kit, POT)->rule->name != PHASE_FILL; steps++) {
		ck_assert_int_lt(steps, 8);
		kk_pass(&kit, 15 * MINUTE_MS);
		KK_OK(&kit, kitchen_step(kit.kitchen, kk_canner(&kit, POT)->phase.id, true, &kit.fault));
	}
	KK_OK(&kit, pk_try_fill(&kit, batch, "pint", 7, 0, true, true));
	pick = pick_of(batch, "pint", 7);
	KK_OK(&kit, load(LOW_KETTLE, &pick, 1));
	ck_assert_int_eq(kk_canner(&kit, POT)->rule->name, PHASE_FILL);
	KK_OK(&kit, pk_try_fill(&kit, batch, "pint", 2, 0, true, true));
	ck_assert_int_eq(waiting(), 2);
	ck_assert_int_eq(strip_batch(kk_canner(&kit, POT))->filled, 9);
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, 45);
}
END_TEST

START_TEST(two_terminals_do_not_load_the_same_jars)
{
	struct pick pick = pick_of(fill(&jelly, "pint", 7), "pint", 7);
	struct kitchen_kit second;
	int64_t other = 0;

	kk_second(&kit, &second);
	KK_OK(&kit, load(BIG_KETTLE, &pick, 1));
	KK_REFUSED(&second, FAULT_STALE,
	           kitchen_load_waiting(second.kitchen, kk_station(&second, LOW_KETTLE), &pick, 1, NO_PRESSURE, &other,
	                                &second.fault));
	ck_assert_int_eq(other, 0);
	kk_close(&second);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->jars, 7);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("split", .begin = begin, .end = end),
	TEST(waiting_jars_are_told_by_batch_and_size_the_longest_first),
	TEST(nothing_waits_in_an_empty_kitchen),
	TEST(one_batch_spills_over_several_canners),
	TEST(what_no_canner_takes_is_left_over),
	TEST(one_load_holds_several_batches),
	TEST(low_acid_food_goes_to_pressure_canners_only),
	TEST(canners_that_are_free_come_before_those_that_will_be),
	TEST(why_waiting_jars_do_not_go_into_a_canner_is_said),
	TEST(low_acid_jars_are_told_that_they_need_pressure),
	TEST(jars_that_stood_too_long_are_told_to_be_reheated),
	TEST(a_canner_that_is_not_free_takes_none_while_others_take_them_all),
	TEST(a_canner_over_its_time_is_not_free_now),
	TEST(mixed_sizes_have_the_room_of_the_largest_jar),
	TEST(several_pots_of_one_product_are_told_as_one),
	EACH(any_proposal_can_be_loaded, 0, 40),
	GROUP("process", .begin = begin, .end = end),
	TEST(a_mixed_load_takes_the_longest_process),
	TEST(a_pressure_load_has_one_pressure_for_all),
	TEST(each_pressure_offered_to_a_mix_has_its_longest_time),
	TEST(a_mix_without_a_common_pressure_is_refused),
	TEST(what_one_lot_may_not_have_no_load_gets),
	TEST(no_elevation_no_process),
	GROUP("loading", .begin = begin, .end = end),
	TEST(a_load_takes_the_jars_in_the_order_they_waited),
	TEST(an_undone_load_waits_again_and_is_loaded_again),
	TEST(a_load_that_cannot_be_writes_nothing),
	TEST(quarts_and_pints_together_are_no_more_than_quarts_alone),
	TEST(the_same_lot_may_be_picked_twice),
	TEST(a_batch_still_being_filled_may_be_loaded),
	TEST(two_terminals_do_not_load_the_same_jars),
};

KK_TESTS("loader", listed)
