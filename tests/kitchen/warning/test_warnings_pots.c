/* Warnings about lids and who closes jars, supplies, jars that wait, pots and batches. */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/outlook.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "log/tables/canner.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "4 gal");
}

static void end(void)
{
	kk_end(&kit);
}

static bool fires(const char *id)
{
	return kk_fires(&kit, id);
}

static void stops(const char *id, const char *words)
{
	kk_warns(&kit, id, 0, SEVERITY_STOP, words);
}

static void cautions(const char *id, const char *words)
{
	kk_warns(&kit, id, 0, SEVERITY_CAUTION, words);
}

/* --- lids and hands ------------------------------------------------------------------- */

static int64_t checked(int digit, int64_t box)
{
	struct load_order order = kk_order(&kit, digit, 7);
	int64_t load_id = 0;

	order.lid_box_id = box;
	KK_OK(&kit, kitchen_start_load(kit.kitchen, &order, &load_id, &kit.fault));
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	return load_id;
}

static void mark(int64_t load_id, int place, enum jar_state state)
{
	KK_OK(&kit, kk_mark(&kit, kk_jar(&kit, load_id, place), state));
}

/* 5 of 7 against 0 of 7 come by chance once in 95 times, 6 once in 429 (Fisher's exact
 * test, one-sided: C(7,5)/C(14,5) = 21/2002, C(7,6)/C(14,6) = 7/3003); clear is under
 * 1 in 100. */
static void six_of_seven(const char *id, int64_t bad, int64_t good, const char *words)
{
	for (int place = 1; place <= 7; place++)
		mark(bad, place, place % 2 == 0 ? JAR_DOUBTFUL : JAR_UNSEALED);
	ck_assert(!fires(id)); /* there is nothing to compare with */
	mark(bad, 6, JAR_SEALED);
	mark(bad, 7, JAR_SEALED);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, good, SEAL_BY_ALL_THREE, &kit.fault));
	ck_assert(!fires(id)); /* 5 */
	mark(bad, 6, JAR_UNSEALED);
	cautions(id, words);
	mark(bad, 6, JAR_BROKEN); /* says nothing of the lid: 5 of 6 against 0 of 7, 1 in 214 */
	cautions(id, "5 of 6");
	mark(bad, 5, JAR_BROKEN); /* 4 of 5: 1 in 99, C(5,4)/C(12,4) = 5/495 */
	ck_assert(!fires(id));
}

START_TEST(a_lid_box_that_fails_more_than_the_others)
{
	int64_t bad = checked(LOW_KETTLE, BOX_A);
	int64_t good = checked(LOW_KETTLE, BOX_B);

	six_of_seven("lid-box-failures", bad, good,
	             "Set Box A, spring aside and check every load from it: 6 of 7 failed, 0 of 7");
	ck_assert(!fires("canner-failures") && !fires("person-failures"));
}
END_TEST

START_TEST(a_canner_whose_lids_fail_more_than_elsewhere)
{
	int64_t bad = checked(LOW_KETTLE, BOX_A);
	int64_t good = checked(BIG_KETTLE, BOX_A);

	six_of_seven("canner-failures", bad, good, "cool-down of Low kettle: 6 of 7 lids failed, 0 of 7 elsewhere");
	ck_assert(!fires("lid-box-failures") && !fires("person-failures"));
}
END_TEST

/* A batch filled by somebody, processed and cooled. */
static int64_t filled_by(int pot, const char *initials)
{
	int64_t batch_id;
	struct pick pick;
	int64_t load_id;

	KK_OK(&kit, kitchen_set_station_who(kit.kitchen, kk_station(&kit, pot), initials, &kit.fault));
	batch_id = pk_batch(&kit, pot, "grape jelly", "half_pint", 1);
	pk_to(&kit, pot, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", 7, 0);
	pick = pk_pick(batch_id, "half_pint", 7);
	load_id = pk_load(&kit, BIG_KETTLE, &pick, 1);
	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	return load_id;
}

START_TEST(a_person_whose_lids_fail_more_than_the_others)
{
	int64_t bad = filled_by(WIDE_POT, "EN");
	int64_t good = filled_by(DEEP_POT, "RS");

	six_of_seven("person-failures", bad, good, "with EN: 6 of 7 lids failed, 0 of 7");
	ck_assert(!fires("lid-box-failures") && !fires("canner-failures"));
}
END_TEST

START_TEST(a_new_season_begins_the_count_anew)
{
	int64_t bad = checked(LOW_KETTLE, BOX_A);
	int64_t good = checked(LOW_KETTLE, BOX_B);

	for (int place = 1; place <= 7; place++)
		mark(bad, place, JAR_UNSEALED);
	KK_OK(&kit, kitchen_all_sealed(kit.kitchen, good, SEAL_BY_ALL_THREE, &kit.fault));
	ck_assert(fires("lid-box-failures"));
	kk_pass_until(&kit, INT64_C(1798761600000) - 1); /* the last moment of 2026, UTC */
	KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
	ck_assert(fires("lid-box-failures"));
	kk_pass(&kit, 1);
	KK_OK(&kit, kitchen_refresh(kit.kitchen, false, &kit.fault));
	ck_assert(!fires("lid-box-failures"));
}
END_TEST

static void recount(int64_t box_id, int lids, bool retired)
{
	struct log_lid_box box;

	KK_OK(&kit, log_lid_box_get(kit.log, box_id, &box, &kit.fault));
	box.lids = lids;
	box.retired = retired;
	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
}

START_TEST(a_box_counted_again_below_what_was_used)
{
	(void)kk_start(&kit, BIG_KETTLE, 7);
	recount(BOX_A, 7, false);
	ck_assert(!fires("lids-used-twice"));
	recount(BOX_A, 6, false);
	stops("lids-used-twice", "Count Box A, spring: 7 jars have its lids, and it had 6");
	KK_OK(&kit, kk_undo(&kit, 0));
	ck_assert(!fires("lids-used-twice"));
}
END_TEST

START_TEST(a_box_listed_twice_under_one_label)
{
	struct log_lid_box box = { .label = "box a, Spring", .lids = 12 };

	ck_assert(!fires("lid-box-listed-twice"));
	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
	cautions("lid-box-listed-twice", "box a, Spring is on the list twice");
	(void)text_copy(box.label, sizeof(box.label), "Box A, spring, second");
	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
	ck_assert(!fires("lid-box-listed-twice"));
	KK_OK(&kit, kk_undo(&kit, 0));
	recount(BOX_A, 60, true); /* used up: its label is free */
	ck_assert(!fires("lid-box-listed-twice"));
}
END_TEST

/* MSU-498: at least 5 years from manufacture. */
START_TEST(lids_bought_over_5_years_ago)
{
	struct log_lid_box box;

	KK_OK(&kit, log_lid_box_get(kit.log, BOX_A, &box, &kit.fault));
	kk_pass_until(&kit, box.bought_wall_ms + 5 * 365 * DAY_MS);
	ck_assert(!fires("lids-old"));
	kk_pass(&kit, 1);
	kk_warns(&kit, "lids-old", 0, SEVERITY_NOTE, "Box A, spring was bought over 5 years ago");
	box.bought_wall_ms = 0; /* nobody knows */
	KK_OK(&kit, kitchen_put_lid_box(kit.kitchen, &box, &kit.fault));
	ck_assert(!fires("lids-old"));
}
END_TEST

/* --- supplies -------------------------------------------------------------------------- */

static struct batch_need need_of(int digit, const char *recipe, const char *jar)
{
	struct batch_order order = pk_order(&kit, digit, recipe, jar, 1);
	struct batch_need need;

	KK_OK(&kit, kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault));
	return need;
}

static void count(enum supply_kind kind, const char *size, int64_t counted)
{
	KK_OK(&kit, kitchen_supply_count(kit.kitchen, kind, size, counted, &kit.fault));
}

START_TEST(jars_short_of_what_is_cooking)
{
	int likely = need_of(WIDE_POT, "grape jelly", "half_pint").yield.jars_likely;
	int64_t batch_id;

	count(SUPPLY_JAR, "half_pint", 0);
	ck_assert(!fires("jars-short")); /* nothing cooks */
	count(SUPPLY_JAR, "half_pint", likely);
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	ck_assert(!fires("jars-short"));
	count(SUPPLY_JAR, "half_pint", likely - 1);
	cautions("jars-short", "Get more half-pints before starting another pot: ");
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", likely - 1, 0);
	ck_assert(fires("jars-short")); /* for the last one */
	pk_fill(&kit, batch_id, "half_pint", 1, 0);
	ck_assert(!fires("jars-short"));
	cautions("stock-below-nothing", "Count half-pints: the list says -1");
	count(SUPPLY_JAR, "half_pint", 0);
	ck_assert(!fires("stock-below-nothing"));
}
END_TEST

START_TEST(lids_of_all_boxes_together_short_of_what_is_cooking)
{
	int likely = need_of(WIDE_POT, "grape jelly", "half_pint").yield.jars_likely;

	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	recount(BOX_A, 3, false);
	recount(BOX_B, likely - 3, false);
	ck_assert(!fires("lids-short"));
	recount(BOX_B, likely - 4, false);
	cautions("lids-short", "Get more lids before starting another pot: ");
	recount(BOX_A, 3, true);
	recount(BOX_B, likely, true);
	ck_assert(!fires("lids-short")); /* no box is listed: lids are not counted here */
}
END_TEST

START_TEST(acid_short_of_what_is_still_to_be_filled)
{
	struct batch_need need = need_of(DEEP_POT, "crushed tomatoes", "quart");
	int64_t each = pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp");
	int64_t batch_id = pk_batch(&kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	int likely = need.yield.jars_likely;

	count(SUPPLY_LEMON_JUICE, "", likely * each);
	ck_assert(!fires("acid-short"));
	count(SUPPLY_LEMON_JUICE, "", likely * each - 1);
	cautions("acid-short", "stop that product:");
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "quart", likely - 1, 0);
	cautions("acid-short", "Get more bottled lemon juice, or stop that product: pots and plan need 2 tbsp, ");
	count(SUPPLY_LEMON_JUICE, "", each);
	ck_assert(!fires("acid-short"));
}
END_TEST

/* An own recipe with something in each jar. */
static struct log_recipe own(enum supply_kind in_jar)
{
	struct log_recipe own = { .pectin = PECTIN_NONE,
		                  .acidity = ACIDITY_ACID,
		                  .headspace_thou = 250,
		                  .multiple_max = 2,
		                  .foam_percent = 40,
		                  .boil_off_low_percent = 10,
		                  .boil_off_high_percent = 30,
		                  .ingredient_count = in_jar == SUPPLY_OTHER ? 1 : 2 };

	ck_assert(text_copy(own.name, sizeof(own.name), "house grapes") &&
	          text_copy(own.food, sizeof(own.food), "jelly without added pectin") &&
	          text_copy(own.packs, sizeof(own.packs), "hot_sterile_jar") &&
	          text_copy(own.jars, sizeof(own.jars), "half_pint pint") &&
	          text_copy(own.source, sizeof(own.source), "house recipe, no source"));
	own.ingredients[0] = (struct log_recipe_ingredient){ .name = "grape juice",
		                                             .supply = SUPPLY_JUICE,
		                                             .measure = MEASURE_VOLUME,
		                                             .amount = pk_ul("2 qt"),
		                                             .adding = ADD_AT_START };
	own.ingredients[1] = (struct log_recipe_ingredient){ .name = "what goes in the jar",
		                                             .supply = in_jar,
		                                             .measure = supply_measure(in_jar),
		                                             .amount = 4000,
		                                             .adding = ADD_IN_JAR };
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	return own;
}

START_TEST(whatever_else_goes_into_the_jars_may_be_short)
{
	static const struct {
		enum supply_kind kind;
		const char *id;
		const char *words;
	} others[] = {
		{ SUPPLY_SUGAR, "sugar-short", "do not cut the sugar:" },
		{ SUPPLY_SALT, "supply-short", "Get " },
	};
	int64_t takes;

	(void)own(others[_i].kind);
	pk_receive(&kit, others[_i].kind, "", "2 lb");
	takes = need_of(WIDE_POT, "house grapes", "half_pint").lines[1].takes;
	ck_assert_int_gt(takes, 0);
	(void)pk_batch(&kit, WIDE_POT, "house grapes", "half_pint", 1);
	count(others[_i].kind, "", takes);
	ck_assert(!fires(others[_i].id));
	count(others[_i].kind, "", takes - 1);
	cautions(others[_i].id, others[_i].words);
}
END_TEST

/* --- jars that wait ---------------------------------------------------------------------- */

static int64_t filled(int digit, const char *recipe, const char *jar, int jars)
{
	int64_t batch_id = pk_batch(&kit, digit, recipe, jar, 1);

	pk_to(&kit, digit, PHASE_FILL);
	pk_fill(&kit, batch_id, jar, jars, 0);
	return batch_id;
}

static void retire(int digit)
{
	struct log_station station = kk_canner(&kit, digit)->station;

	station.retired = true;
	KK_OK(&kit, kitchen_put_station(kit.kitchen, &station, &kit.fault));
}

/* Jelly goes into both kettles and the dome: 9 + 7 + 7. */
START_TEST(more_jars_than_the_canners_take_in_a_round)
{
	int64_t batch_id = filled(WIDE_POT, "grape jelly", "half_pint", 23);

	ck_assert(!fires("jars-over-room"));
	pk_fill(&kit, batch_id, "half_pint", 1, 0);
	cautions("jars-over-room", "no canner in this round for 1 jar");
	KK_OK(&kit, kitchen_batch_jars(kit.kitchen, batch_id, "half_pint", 23, &kit.fault));
	ck_assert(!fires("jars-over-room"));
}
END_TEST

START_TEST(low_acid_jars_wait_where_no_pressure_canner_stands)
{
	(void)filled(DEEP_POT, "green beans", "pint", 7);
	(void)filled(WIDE_POT, "grape jelly", "half_pint", 4);
	retire(WEIGHT_CANNER);
	ck_assert(!fires("low-acid-waits"));
	retire(DIAL_CANNER);
	stops("low-acid-waits", "Put 7 jars of green beans in the fridge or freezer");
	ck_assert(!fires("no-canner-takes")); /* not said twice, and not of the jelly */
}
END_TEST

/* A recipe that is out of use says no longer which jars it is for. */
START_TEST(jars_larger_than_any_tested_wait)
{
	struct log_recipe recipe = own(SUPPLY_OTHER);
	int64_t batch_id = filled(WIDE_POT, "house grapes", "half_pint", 3);

	recipe.retired = true;
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	ck_assert(!fires("large-jars-wait"));
	pk_fill(&kit, batch_id, "quart", 2, 0);
	stops("large-jars-wait", "Put 2 jars of house grapes in the fridge or freezer");
	ck_assert(!fires("no-canner-takes"));
	KK_OK(&kit, kitchen_put_away(kit.kitchen, batch_id, "quart", FATE_FRIDGE, &kit.fault));
	ck_assert(!fires("large-jars-wait"));
}
END_TEST

/* A quart of juice fits the dome and the weight canner; only the dome has a process. */
START_TEST(jars_wait_that_no_canner_has_room_and_a_process_for)
{
	(void)filled(WIDE_POT, "grape juice", "quart", 3);
	ck_assert(!fires("no-canner-takes"));
	retire(STEAM_CANNER);
	cautions("no-canner-takes", "room for 3 jars of grape juice");
}
END_TEST

/* --- pots -------------------------------------------------------------------------------- */

static int64_t filled_in_ms(int digit)
{
	struct stretch stretches[STRETCHES_MAX];
	size_t count = strip_outlook(kk_canner(&kit, digit), &kit.clock.now, stretches);

	for (size_t i = 0; i < count; i++)
		if (stretches[i].name == PHASE_FILL)
			return stretches[i].from_ms;
	ck_abort_msg("no filling ahead");
	return 0;
}

/* A jelly load just begun keeps the dome 33 min (planning times of the phases). */
START_TEST(a_pot_whose_jars_would_wait_too_long)
{
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	ck_assert(!fires("pot-nowhere"));
	(void)kk_start(&kit, BIG_KETTLE, 7);
	(void)kk_start(&kit, LOW_KETTLE, 7);
	ck_assert(!fires("pot-nowhere"));
	(void)kk_start(&kit, STEAM_CANNER, 7);
	ck_assert_int_gt(33 * MINUTE_MS, filled_in_ms(WIDE_POT) + 2 * MINUTE_MS);
	for (int wait = 1; wait <= 30; wait++) {
		KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, wait, 0, &kit.fault));
		ck_assert_int_eq(fires("pot-nowhere"), 33 * MINUTE_MS > filled_in_ms(WIDE_POT) + wait * MINUTE_MS);
	}
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, 1, 0, &kit.fault));
	cautions("pot-nowhere", "no canner for its jars before 33 min");
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	ck_assert(!fires("pot-nowhere")); /* jars-wait and jars-over-room speak then */
}
END_TEST

START_TEST(a_pot_for_which_no_canner_stands_here)
{
	(void)pk_batch(&kit, DEEP_POT, "green beans", "pint", 1);
	retire(WEIGHT_CANNER);
	ck_assert(!fires("pot-no-canner"));
	retire(DIAL_CANNER);
	cautions("pot-no-canner", "no canner here has a process for green beans");
	ck_assert(!fires("pot-nowhere"));
}
END_TEST

START_TEST(a_pot_that_stands_unrinsed_for_over_10_min)
{
	(void)filled(WIDE_POT, "grape jelly", "half_pint", 7);
	kk_pass(&kit, MINUTE_MS);
	pk_step(&kit, WIDE_POT);
	ck_assert_int_eq(pk_name(&kit, WIDE_POT), PHASE_RINSE);
	kk_pass(&kit, 10 * MINUTE_MS);
	ck_assert(!fires("pot-not-rinsed"));
	kk_pass(&kit, 1);
	kk_warns(&kit, "pot-not-rinsed", 0, SEVERITY_NOTE, "Rinse Wide pot before its next batch");
	pk_step(&kit, WIDE_POT);
	ck_assert(!fires("pot-not-rinsed"));
}
END_TEST

START_TEST(a_canner_that_stands_loaded_for_over_10_min)
{
	(void)kk_start(&kit, BIG_KETTLE, 7);
	kk_pass(&kit, 10 * MINUTE_MS);
	ck_assert(!fires("loaded-no-hold"));
	kk_pass(&kit, 1);
	cautions("loaded-no-hold", "Heat on? On the board press 1, then Space: Big kettle has stood loaded for 10 min");
}
END_TEST

/* --- what is wrong with a batch ---------------------------------------------------------- */

START_TEST(a_batch_made_otherwise_is_said_to_be_unknown_while_it_is_in_the_pot)
{
	int64_t batch_id = filled(WIDE_POT, "grape jelly", "half_pint", 7);

	ck_assert(!fires("batch-unknown"));
	KK_OK(&kit, pk_try(&kit, WIDE_POT, EXCEPTION_RECIPE, 0));
	cautions("batch-unknown", "not as the recipe says: by hand, watched");
	ck_assert_int_eq(kk_warned(&kit, "batch-unknown", 0)->batch_id, batch_id);
	ck_assert(!fires("batch-not-valid"));
	pk_to(&kit, WIDE_POT, PHASE_RINSE);
	ck_assert(fires("batch-unknown"));
	kk_pass(&kit, MINUTE_MS);
	pk_step(&kit, WIDE_POT);
	ck_assert(!fires("batch-unknown"));
}
END_TEST

START_TEST(an_acidified_batch_made_otherwise_is_not_valid)
{
	(void)filled(DEEP_POT, "crushed tomatoes", "quart", 5);
	ck_assert(!fires("batch-not-valid"));
	KK_OK(&kit, pk_try(&kit, DEEP_POT, EXCEPTION_RECIPE, 0));
	stops("batch-not-valid", "counts as NOT VALID (not as the recipe says: by hand, watched)");
	ck_assert(!fires("batch-unknown"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("lids", .begin = begin, .end = end, .seconds = 30),
	TEST(a_lid_box_that_fails_more_than_the_others),
	TEST(a_canner_whose_lids_fail_more_than_elsewhere),
	TEST(a_person_whose_lids_fail_more_than_the_others),
	TEST(a_new_season_begins_the_count_anew),
	TEST(a_box_counted_again_below_what_was_used),
	TEST(a_box_listed_twice_under_one_label),
	TEST(lids_bought_over_5_years_ago),
	TEST(jars_short_of_what_is_cooking),
	TEST(lids_of_all_boxes_together_short_of_what_is_cooking),
	TEST(acid_short_of_what_is_still_to_be_filled),
	EACH(whatever_else_goes_into_the_jars_may_be_short, 0, 2),
	GROUP("pots", .begin = begin, .end = end, .seconds = 30),
	TEST(more_jars_than_the_canners_take_in_a_round),
	TEST(low_acid_jars_wait_where_no_pressure_canner_stands),
	TEST(jars_larger_than_any_tested_wait),
	TEST(jars_wait_that_no_canner_has_room_and_a_process_for),
	TEST(a_pot_whose_jars_would_wait_too_long),
	TEST(a_pot_for_which_no_canner_stands_here),
	TEST(a_pot_that_stands_unrinsed_for_over_10_min),
	TEST(a_canner_that_stands_loaded_for_over_10_min),
	TEST(a_batch_made_otherwise_is_said_to_be_unknown_while_it_is_in_the_pot),
	TEST(an_acidified_batch_made_otherwise_is_not_valid),
};

KK_TESTS("warnings of pots, lids and supplies", listed)
