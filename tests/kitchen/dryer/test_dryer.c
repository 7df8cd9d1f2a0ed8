/* Dryings: their clocks, the looks, the test, conditioning, and packages in the pantry. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/scaling.h"
#include "kitchen/board/board_private.h"
#include "kitchen/dryer/dryer.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/history/seasons.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "kitchen/pot/juice.h"
#include "kitchen/step/step.h"
#include "kitchen/warning/warnings.h"
#include "log/tables/canner.h"
#include "log/tables/dryer.h"
#include "support/log_kit.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define BOX_DRYER 9
#define HOURS(n) ((n)*INT64_C(3600) * 1000)

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin(&kit);
	pk_receive(&kit, SUPPLY_FRUIT, "", "100 lb");
	KK_OK(&kit,
	      kitchen_setup_line(kit.kitchen, "dryer 9 \"Box dryer\" trays=6 size=\"14 x 14 in\"", 0, &kit.fault));
}

static void end(void)
{
	kk_end(&kit);
}

static struct drying_order order_of(const char *food, int64_t mg, int64_t ul, int low, int high, int trays)
{
	struct drying_order order = { .station_id = kk_canner(&kit, BOX_DRYER)->station.id,
		                      .fruit_mg = mg,
		                      .puree_ul = ul,
		                      .hours_low = low,
		                      .hours_high = high,
		                      .trays = trays };

	ck_assert(text_copy(order.food, sizeof(order.food), food));
	return order;
}

static bool start(struct drying_order order, int64_t *id)
{
	return kitchen_start_drying(kit.kitchen, &order, id, &kit.fault);
}

static int64_t apples(void)
{
	int64_t id;

	KK_OK(&kit, start(order_of("apples", pk_amount(SUPPLY_FRUIT, "5 lb"), 0, 8, 14, 4), &id));
	return id;
}

static struct log_drying row_of(int64_t id)
{
	struct log_drying row;

	KK_OK(&kit, log_drying_get(kit.log, id, &row, &kit.fault));
	return row;
}

/* What stands on the rack: the only one. */
static const struct strip *racked(void)
{
	const struct board *board = kitchen_board(kit.kitchen);

	ck_assert_uint_eq(board->racked, 1);
	return &board->strips[board->stations];
}

static void step(void)
{
	kk_pass(&kit, 5000);
	pk_step(&kit, BOX_DRYER);
}

static void step_racked(bool sure)
{
	kk_pass(&kit, 5000);
	KK_OK(&kit, kitchen_step(kit.kitchen, racked()->phase.id, sure, &kit.fault));
}

static void to_condition(void)
{
	step();
	kk_pass(&kit, HOURS(8));
	step();
	step();
}

START_TEST(hours_that_are_published_nowhere_are_asked_of_the_house_and_marked)
{
	int64_t id;

	ck_assert(!start(order_of("apples", pk_amount(SUPPLY_FRUIT, "5 lb"), 0, 0, 0, 4), &id));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "not published"));
	id = apples();
	ck_assert(row_of(id).own_hours);
	ck_assert_int_eq(row_of(id).low_ms, HOURS(8));
	pk_says(&kit, "Box dryer: drying started, apples on 4 trays, 8 to 14 h, hours of this house");
}
END_TEST

/* 24 to 36 h: MU Extension GH1563. */
START_TEST(published_hours_are_taken_whatever_the_house_says)
{
	int64_t id;

	KK_OK(&kit, start(order_of("prunes", pk_amount(SUPPLY_FRUIT, "5 lb"), 0, 2, 3, 4), &id));
	ck_assert(!row_of(id).own_hours);
	ck_assert_int_eq(row_of(id).low_ms, HOURS(24));
	ck_assert_int_eq(row_of(id).high_ms, HOURS(36));
	ck_assert_str_eq(row_of(id).test, "leathery; the stone does not slip when squeezed");
}
END_TEST

/* USDA FSIS, Jerky and Food Safety. */
START_TEST(meat_is_not_dried_here)
{
	int64_t id;

	ck_assert(!start(order_of("jerky", pk_amount(SUPPLY_FRUIT, "5 lb"), 0, 4, 6, 2), &id));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "160 F"));
	ck_assert_int_eq(kk_canner(&kit, BOX_DRYER)->content, STRIP_EMPTY);
}
END_TEST

START_TEST(fruit_is_taken_from_the_shelf_and_comes_back_with_an_undo)
{
	int64_t id = apples();

	ck_assert_int_eq(pk_supply(&kit, SUPPLY_FRUIT, ""),
	                 pk_amount(SUPPLY_FRUIT, "100 lb") - pk_amount(SUPPLY_FRUIT, "5 lb"));
	ck_assert(pk_undo(&kit, SUBJECT_DRYING, id));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_FRUIT, ""), pk_amount(SUPPLY_FRUIT, "100 lb"));
	ck_assert_int_eq(kk_canner(&kit, BOX_DRYER)->content, STRIP_EMPTY);
}
END_TEST

START_TEST(leather_keeps_the_name_of_its_fruit)
{
	int64_t id;

	ck_assert(!start(order_of("plum puree", pk_amount(SUPPLY_FRUIT, "4 lb"), 0, 0, 0, 2), &id));
	ck_assert_str_eq(kit.fault.sentence, "Measure the puree: \"3 cups\" or \"700 ml\".");
	KK_OK(&kit, start(order_of("plum puree", 0, pk_ul("3 cups"), 0, 0, 0), &id));
	ck_assert_int_eq(row_of(id).class, DRYING_LEATHER);
	ck_assert(!row_of(id).own_hours);
	ck_assert_int_eq(row_of(id).low_ms, HOURS(6));
	pk_says(&kit, "Box dryer: drying started, plum leather on 2 trays, 6 to 8 h");
}
END_TEST

/* 1/8 in deep: NCHFP, Drying: Fruit Leathers. */
START_TEST(leather_takes_the_trays_of_its_puree_and_no_more_than_there_are)
{
	int64_t id;

	ck_assert(!start(order_of("fruit leather", 0, pk_ul("4 qt"), 0, 0, 0), &id));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "10 trays"));
	KK_OK(&kit, start(order_of("fruit leather", 0, pk_ul("3 cups"), 0, 0, 0), &id));
	ck_assert_int_eq(row_of(id).trays, 2);
	ck_assert_int_eq(row_of(id).low_ms, HOURS(6));
	ck_assert_int_eq(row_of(id).high_ms, HOURS(8));
}
END_TEST

/* Every 1 1/2 h: MSU 01600528. */
START_TEST(the_look_rings_every_hour_and_a_half_and_is_counted)
{
	int64_t id = apples();

	step();
	kk_pass(&kit, HOURS(1));
	ck_assert(!pk_face(&kit, BOX_DRYER).water_due);
	kk_pass(&kit, HOURS(1) / 2);
	ck_assert(pk_face(&kit, BOX_DRYER).ringing);
	ck_assert_str_eq(pk_face(&kit, BOX_DRYER).job, "LOOK");
	KK_OK(&kit, kitchen_acknowledge(kit.kitchen, pk_phase(&kit, BOX_DRYER), &kit.fault));
	ck_assert(!pk_face(&kit, BOX_DRYER).ringing);
	ck_assert_int_eq(row_of(id).looks, 1);
	pk_says(&kit, "Box dryer: seen to (dry)");
	kk_pass(&kit, HOURS(3) / 2);
	ck_assert(pk_face(&kit, BOX_DRYER).water_due);
}
END_TEST

START_TEST(damp_by_the_test_it_goes_back_and_is_tested_at_the_next_look)
{
	(void)apples();
	step();
	kk_pass(&kit, HOURS(8));
	ck_assert(pk_face(&kit, BOX_DRYER).due);
	step();
	ck_assert_int_eq(pk_name(&kit, BOX_DRYER), PHASE_TEST);
	kk_pass(&kit, 5000);
	KK_OK(&kit, kitchen_lost(kit.kitchen, pk_phase(&kit, BOX_DRYER), &kit.fault));
	ck_assert_int_eq(pk_name(&kit, BOX_DRYER), PHASE_DRY);
	ck_assert_int_eq(kk_canner(&kit, BOX_DRYER)->phase.required_ms, DRYING_LOOK_MS);
}
END_TEST

START_TEST(pieces_are_conditioned_beside_the_dryer_and_shaken_daily)
{
	int64_t id = apples();

	to_condition();
	ck_assert_int_eq(kk_canner(&kit, BOX_DRYER)->content, STRIP_EMPTY);
	ck_assert_int_eq(racked()->rule->name, PHASE_CONDITION);
	ck_assert_int_eq(racked()->phase.required_ms, HOURS(240));
	kk_pass(&kit, HOURS(24));
	KK_OK(&kit, kitchen_acknowledge(kit.kitchen, racked()->phase.id, &kit.fault));
	ck_assert_int_eq(row_of(id).shakes, 1);
	kk_pass(&kit, HOURS(216));
	step_racked(false);
	ck_assert_int_eq(racked()->rule->name, PHASE_PACK);
}
END_TEST

START_TEST(conditioning_is_not_ended_early_unasked)
{
	(void)apples();
	to_condition();
	kk_pass(&kit, HOURS(24));
	ck_assert(!kitchen_step(kit.kitchen, racked()->phase.id, false, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFIRM);
}
END_TEST

/* Water on a lid: it is on the trays again, and nothing else is spread there meanwhile. */
START_TEST(dried_again_it_is_in_its_dryer)
{
	int64_t id = apples();
	int64_t other;

	to_condition();
	kk_pass(&kit, HOURS(24));
	KK_OK(&kit, kitchen_lost(kit.kitchen, racked()->phase.id, &kit.fault));
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, 0);
	ck_assert_int_eq(pk_name(&kit, BOX_DRYER), PHASE_DRY);
	ck_assert(row_of(id).at_station);
	ck_assert(!start(order_of("apples", pk_amount(SUPPLY_FRUIT, "5 lb"), 0, 8, 14, 4), &other));
	ck_assert(pk_undo(&kit, SUBJECT_DRYING, id));
	ck_assert_int_eq(racked()->rule->name, PHASE_CONDITION);
}
END_TEST

START_TEST(dried_again_it_goes_to_another_dryer_or_waits_for_one)
{
	int64_t id = apples();
	int64_t other;

	to_condition();
	other = apples();
	ck_assert_int_ne(other, id);
	kk_pass(&kit, HOURS(24));
	ck_assert(!kitchen_lost(kit.kitchen, racked()->phase.id, &kit.fault));
	ck_assert_str_eq(kit.fault.sentence, "Box dryer is taken: dry it again as soon as it is free.");
	ck_assert_int_eq(racked()->rule->name, PHASE_CONDITION);
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "dryer 8 \"Old dryer\"", 0, &kit.fault));
	KK_OK(&kit, kitchen_lost(kit.kitchen, racked()->phase.id, &kit.fault));
	ck_assert_int_eq(pk_name(&kit, 8), PHASE_DRY);
	ck_assert_int_eq(row_of(id).station_id, kk_canner(&kit, 8)->station.id);
}
END_TEST

START_TEST(leather_is_not_conditioned)
{
	int64_t id;

	KK_OK(&kit, start(order_of("fruit leather", 0, pk_ul("2 cups"), 0, 0, 0), &id));
	to_condition();
	ck_assert_int_eq(racked()->rule->name, PHASE_PACK);
}
END_TEST

/* Ten days later, packed into three. */
static int64_t packed(void)
{
	int64_t id = apples();

	to_condition();
	kk_pass(&kit, HOURS(240));
	step_racked(false);
	KK_OK(&kit, kitchen_pack(kit.kitchen, racked()->phase.id, 3, &kit.fault));
	return id;
}

START_TEST(packages_stand_in_the_pantry_and_wait_for_no_canner)
{
	struct pantry_line *lines;
	size_t count;
	int64_t id = packed();

	ck_assert_int_eq(row_of(id).packages, 3);
	ck_assert(!row_of(id).open);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->racked, 0);
	ck_assert_uint_eq(kitchen_board(kit.kitchen)->waiting_count, 0);
	KK_OK(&kit, kitchen_pantry(kit.kitchen, &lines, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_str_eq(lines[0].product, "apples");
	ck_assert_int_eq(lines[0].jars, 3);
	ck_assert_int_eq(lines[0].blocked, 0);
	/* a store nobody has read counts as warm: 6 months, NCHFP */
	ck_assert_int_eq(lines[0].best_by_wall_ms, clock_months_later(lines[0].oldest.made_wall_ms, 6));
	free(lines);
}
END_TEST

/* A year of dried food alone is a season, too; conditioning is no hour on the heat. */
START_TEST(a_season_tells_what_was_dried)
{
	struct season season;
	struct figure *figures;
	size_t count;
	bool told = false;

	(void)packed();
	KK_OK(&kit, kitchen_season(kit.kitchen, 2026, &season, &kit.fault));
	ck_assert_int_eq(season.sum.loads, 0);
	ck_assert_int_eq(season.sum.dryings, 1);
	ck_assert_int_eq(season.sum.packages, 3);
	ck_assert_int_eq(season.sum.dried_mg, pk_amount(SUPPLY_FRUIT, "5 lb"));
	ck_assert_int_eq(season.sum.dried_ul, 0);
	ck_assert_int_eq(season.sum.dried_ms, HOURS(8) + 5000);
	ck_assert_uint_eq(season.dried_count, 1);
	ck_assert_str_eq(season.dried[0].product, "apples");
	ck_assert_int_eq(season.dried[0].packages, 3);
	ck_assert_int_eq(season.dried[0].fruit_mg, pk_amount(SUPPLY_FRUIT, "5 lb"));
	ck_assert_int_eq(season.dried[0].dried_ms, HOURS(8) + 5000);
	ck_assert_uint_eq(season.station_count, 1);
	ck_assert_int_eq(season.stations[0].busy_ms, HOURS(8) + 15000); /* with spreading and the test */
	KK_OK(&kit, season_figures(&season, UNITS_US, &figures, &count, &kit.fault));
	for (size_t i = 0; i < count; i++) {
		ck_assert_ptr_null(strstr(figures[i].words, "VALID")); /* it had no process */
		told = told || strcmp(figures[i].words, "3 of 5 lb in 1 drying, 8 h 00") == 0;
	}
	ck_assert(told);
	free(figures);
	season_clear(&season);
}
END_TEST

/* 6 months in a store nobody has read: NCHFP. */
START_TEST(packages_are_old_by_their_own_best_by)
{
	struct pantry_line *lines;
	size_t count;

	(void)packed();
	kk_pass(&kit, HOURS(24 * 160));
	KK_OK(&kit, kitchen_pantry(kit.kitchen, &lines, &count, &kit.fault));
	ck_assert_int_eq(lines[0].over_a_year, 0);
	free(lines);
	kk_pass(&kit, HOURS(24 * 25));
	KK_OK(&kit, kitchen_pantry(kit.kitchen, &lines, &count, &kit.fault));
	ck_assert_int_eq(lines[0].over_a_year, 3);
	ck_assert_str_eq(pantry_past_words(&lines[0].oldest), "PAST BEST-BY");
	free(lines);
}
END_TEST

START_TEST(a_package_is_taken_out_like_a_jar)
{
	struct take take = { .product = "apples", .size = "package", .jars = 2, .why = GONE_USED };
	struct pantry_line *lines;
	size_t count;

	(void)packed();
	KK_OK(&kit, kitchen_take_out(kit.kitchen, &take, NULL, &kit.fault));
	KK_OK(&kit, kitchen_pantry(kit.kitchen, &lines, &count, &kit.fault));
	ck_assert_int_eq(lines[0].jars, 1);
	free(lines);
}
END_TEST

START_TEST(a_label_says_that_it_is_dried_and_nothing_of_a_process)
{
	struct log_lot lot;
	struct label_choice choice = { .every_jar = false };
	struct label *labels;
	size_t count;

	KK_OK(&kit, log_lot_get(kit.log, row_of(packed()).lot_id, &lot, &kit.fault));
	choice.lot = lot.code;
	KK_OK(&kit, labels_read(kit.kitchen, &choice, &labels, &count, &kit.fault));
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(labels[0].jars, 3);
	ck_assert_str_eq(labels[0].process, "package \xc2\xb7 dried");
	ck_assert_str_eq(labels[0].warning, "");
	free(labels);
}
END_TEST

/* What is wrong is said: the word is not one of a process. */
START_TEST(packed_before_its_ten_days_it_is_warned_of)
{
	static struct warning warnings[WARNINGS_MAX];
	struct moment now;
	size_t count;
	bool told = false;

	(void)apples();
	to_condition();
	kk_pass(&kit, HOURS(24));
	step_racked(true);
	now = kitchen_now(kit.kitchen);
	count = kitchen_warnings(kit.kitchen, &now, warnings, NULL);
	for (size_t i = 0; i < count; i++)
		told = told || strcmp(warnings[i].id, "not-conditioned") == 0;
	ck_assert(told);
}
END_TEST

/* --- out of a pot ------------------------------------------------------------------------ */

#define POT_DRYER 7

static int64_t batch_id;

/* A pot of invented jam that is being filled, and a dryer. */
static void begin_pot(void)
{
	pk_begin(&kit);
	pk_stock(&kit);
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, "juicer 7 \"Old juicer\" retired", kk_station(&kit, OLD_JUICER),
	                               &kit.fault));
	KK_OK(&kit,
	      kitchen_setup_line(kit.kitchen, "dryer 7 \"Box dryer\" trays=6 size=\"14 x 14 in\"", 0, &kit.fault));
	batch_id = pk_batch(&kit, WIDE_POT, "berry jam without added pectin", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_FILL);
}

static bool to_trays(const char *amount, int64_t *id)
{
	struct drying_order order = { .station_id = kk_station(&kit, POT_DRYER),
		                      .puree_ul = pk_ul(amount),
		                      .hours_low = 8,
		                      .hours_high = 20,
		                      .batch_id = batch_id };

	return kitchen_start_drying(kit.kitchen, &order, id, &kit.fault);
}

static int jars_to_come(void)
{
	return batch_jars_to_come(kk_canner(&kit, WIDE_POT));
}

static struct yield yield_less(const char *amount)
{
	struct yield yield;

	KK_OK(&kit, pot_yield_less(recipe_named("berry jam without added pectin"), 1, "half_pint",
	                           amount == NULL ? 0 : pk_ul(amount), &yield, &kit.fault));
	return yield;
}

START_TEST(what_goes_to_the_trays_fills_no_jar)
{
	int64_t id;

	pk_fill(&kit, batch_id, "half_pint", 2, 0);
	ck_assert_int_eq(jars_to_come(), yield_less(NULL).jars_likely - 2);
	KK_OK(&kit, to_trays("3 cups", &id));
	ck_assert_int_eq(strip_batch(kk_canner(&kit, WIDE_POT))->taken_ul, pk_ul("3 cups"));
	/* 3 cups are three half-pints to the brim, and more with their headspace */
	ck_assert_int_le(yield_less("3 cups").jars_likely, yield_less(NULL).jars_likely - 3);
	ck_assert_int_eq(jars_to_come(), yield_less("3 cups").jars_likely - 2);
	ck_assert_int_eq(row_of(id).batch_id, batch_id);
	ck_assert_int_eq(row_of(id).class, DRYING_LEATHER);
	ck_assert_str_eq(kk_canner(&kit, POT_DRYER)->lot.product, "berry jam without added pectin leather");
	ck_assert_ptr_nonnull(strip_drying(kk_canner(&kit, POT_DRYER))->published);
}
END_TEST

START_TEST(taken_to_the_trays_by_mistake_it_is_in_the_pot_again)
{
	char *rows = pk_rows(&kit);
	int before = jars_to_come();
	int64_t id;

	KK_OK(&kit, to_trays("3 cups", &id));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_DRYING, id));
	ck_assert_int_eq(jars_to_come(), before);
	pk_same_rows(&kit, rows);
	KK_OK(&kit, pk_redo(&kit, SUBJECT_DRYING, id));
	ck_assert_int_lt(jars_to_come(), before);
}
END_TEST

START_TEST(no_more_goes_to_the_trays_than_a_pot_has_left)
{
	bool published;
	int64_t most;
	int64_t less;
	int64_t id;

	KK_OK(&kit, kitchen_may_take(kit.kitchen, batch_id, &most, &published, &kit.fault));
	ck_assert_int_eq(most, yield_less(NULL).volume_high_ul);
	pk_fill(&kit, batch_id, "half_pint", 5, 0);
	KK_OK(&kit, kitchen_may_take(kit.kitchen, batch_id, &less, &published, &kit.fault));
	ck_assert_int_eq(less, most - 5 * jar_fill_ul(jar_size_named("half_pint"),
	                                              strip_batch(kk_canner(&kit, WIDE_POT))->row.headspace_thou));
	ck_assert(!to_trays("20 cups", &id));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_msg(strstr(kit.fault.sentence, "There is no more than") != NULL, "%s", kit.fault.sentence);
}
END_TEST

/* No amount of sugar is published with the hours of leather. */
START_TEST(sweetened_puree_has_the_hours_of_the_house)
{
	struct drying_order order = { .station_id = kk_station(&kit, POT_DRYER),
		                      .puree_ul = pk_ul("1 cup"),
		                      .batch_id = batch_id };
	int64_t id;

	ck_assert(!kitchen_start_drying(kit.kitchen, &order, &id, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "not published"));
	KK_OK(&kit, to_trays("1 cup", &id));
	ck_assert(row_of(id).own_hours);
	ck_assert_int_eq(row_of(id).low_ms, HOURS(8));
}
END_TEST

/* No hours are published for what gels. */
START_TEST(a_jelly_with_pectin_does_not_go_to_the_trays)
{
	int64_t most;
	bool published;

	(void)pk_juice(&kit, "grapes", "3 gal");
	batch_id = pk_batch(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, DEEP_POT, PHASE_FILL);
	ck_assert(!kitchen_may_take(kit.kitchen, batch_id, &most, &published, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_str_eq(kit.fault.sentence, "grape jelly has pectin added: no hours are published for drying it. "
	                                     "Leather is made of puree.");
}
END_TEST

START_TEST(only_a_pot_that_is_being_filled_gives_to_the_trays)
{
	int64_t id;

	pk_fill(&kit, batch_id, "half_pint", 2, 0);
	kk_pass(&kit, 5000);
	pk_step(&kit, WIDE_POT);
	ck_assert(!to_trays("1 cup", &id));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "Nothing is being filled"));
}
END_TEST

/* No jar was filled, and yet it is not given up. */
START_TEST(a_pot_that_went_to_the_trays_is_not_given_up)
{
	int64_t id;

	kk_pass(&kit, 5000);
	ck_assert(!pk_try_step(&kit, WIDE_POT, false));
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFIRM);
	KK_OK(&kit, to_trays("3 cups", &id));
	KK_OK(&kit, pk_try_step(&kit, WIDE_POT, false));
}
END_TEST

static bool in_past(enum subject_kind kind, int64_t id, const char *words)
{
	struct past_line *lines;
	bool told = false;
	size_t count;

	KK_OK(&kit, kitchen_past(kit.kitchen, (struct log_subject){ kind, id }, &lines, &count, &kit.fault));
	for (size_t i = 0; i < count; i++)
		told = told || strstr(lines[i].words, words) != NULL;
	free(lines);
	return told;
}

/* From the leather to its pot, and from the pot to the trays. */
START_TEST(the_record_tells_where_leather_came_from)
{
	char words[80];
	int64_t id;

	KK_OK(&kit, to_trays("3 cups", &id));
	(void)snprintf(words, sizeof(words), "To the trays of a dryer: 3 cups, drying %lld, not packed", (long long)id);
	ck_assert(in_past(SUBJECT_BATCH, batch_id, words));
	ck_assert(in_past(SUBJECT_DRYING, id, "Taken from the pot of lot"));
}
END_TEST

/* --- recalled ------------------------------------------------------------------------------ */

static size_t traced(enum trace_about about, const char *words, struct log_traced **rows)
{
	char said[SENTENCE_MAX_BYTES];
	struct log_trace trace;
	size_t count;

	KK_OK(&kit, kitchen_trace_of(kit.kitchen, about, words, &trace, said, &kit.fault));
	KK_OK(&kit, kitchen_trace(kit.kitchen, &trace, rows, &count, &kit.fault));
	return count;
}

/* Two jars are filled, the rest is dried and packed into three. */
static int64_t jam_and_leather(void)
{
	int64_t id;

	pk_fill(&kit, batch_id, "half_pint", 2, 0);
	KK_OK(&kit, to_trays("3 cups", &id));
	kk_pass(&kit, 5000);
	pk_step(&kit, POT_DRYER);
	kk_pass(&kit, HOURS(20));
	pk_step(&kit, POT_DRYER);
	kk_pass(&kit, 5000);
	pk_step(&kit, POT_DRYER);
	KK_OK(&kit, kitchen_pack(kit.kitchen, racked()->phase.id, 3, &kit.fault));
	return id;
}

static void leads_to_all(enum trace_about about, const char *words)
{
	struct log_traced *rows;
	size_t count = traced(about, words, &rows);
	int packages = 0;
	char counted[64];

	ck_assert_uint_eq(count, 5);
	traced_count_words(rows, count, counted, sizeof(counted));
	ck_assert_str_eq(counted, "2 jars and 3 packages");
	for (size_t i = 0; i < count; i++) {
		if (rows[i].jar.drying_id == 0)
			continue;
		packages++;
		ck_assert_int_eq(jar_where(&rows[i]), WHERE_SHELF);
		ck_assert_str_eq(traced_state_words(&rows[i]), "dried");
		ck_assert_str_eq(rows[i].pot_lot, kk_canner(&kit, WIDE_POT)->lot.code);
	}
	ck_assert_int_eq(packages, 3);
	free(rows);
}

START_TEST(a_pot_its_lot_product_and_day_lead_to_the_packages_dried_out_of_it)
{
	char number[24];

	(void)jam_and_leather();
	(void)snprintf(number, sizeof(number), "%lld", (long long)batch_id);
	leads_to_all(TRACE_BATCH, number);
	leads_to_all(TRACE_LOT, kk_canner(&kit, WIDE_POT)->lot.code);
	leads_to_all(TRACE_PRODUCT, kk_canner(&kit, WIDE_POT)->lot.product);
	leads_to_all(TRACE_DAY, "2026-09-14");
}
END_TEST

START_TEST(a_juicer_run_leads_through_the_pot_to_the_packages)
{
	char sql[200];
	char number[24];
	int64_t id = jam_and_leather();
	int64_t run_id = pk_run(&kit, TALL_JUICER, "grapes", "24 lb");

	pk_to(&kit, TALL_JUICER, PHASE_DRAIN);
	KK_OK(&kit, kitchen_juice_out(kit.kitchen, pk_phase(&kit, TALL_JUICER), pk_ul("2 gal"), &kit.fault));
	(void)snprintf(sql, sizeof(sql),
	               "INSERT INTO juice_use (juice_id, batch_id, ul, why, wall_ms) "
	               "SELECT id, %lld, 1000000, 'batch', 0 FROM juice WHERE run_id = %lld",
	               (long long)batch_id, (long long)run_id);
	kit_sql(kit.path, sql);
	(void)snprintf(number, sizeof(number), "%lld", (long long)run_id);
	leads_to_all(TRACE_RUN, number);
	/* and back, in the record of the drying */
	(void)snprintf(number, sizeof(number), "juicer run %lld", (long long)run_id);
	ck_assert(in_past(SUBJECT_DRYING, id, number));
	ck_assert(in_past(SUBJECT_BATCH, batch_id, "drying"));
}
END_TEST

START_TEST(a_drying_leads_to_its_packages_alone)
{
	char number[24];
	struct log_traced *rows;

	(void)snprintf(number, sizeof(number), "%lld", (long long)jam_and_leather());
	ck_assert_uint_eq(traced(TRACE_DRYING, number, &rows), 3);
	free(rows);
	ck_assert_int_eq(trace_about_work(SUBJECT_DRYING), TRACE_DRYING);
}
END_TEST

/* What is not packed when the pot is recalled is taken in when it is. */
START_TEST(a_recalled_pot_stops_its_packages)
{
	struct take take = { .size = "package", .jars = 1, .why = GONE_USED };
	char number[24];
	char product[NAME_MAX_BYTES];
	int64_t id = jam_and_leather();
	struct log_lot lot;

	KK_OK(&kit, log_lot_get(kit.log, row_of(id).lot_id, &lot, &kit.fault));
	text_copy(product, sizeof(product), lot.product);
	take.product = product;
	(void)snprintf(number, sizeof(number), "%lld", (long long)batch_id);
	kk_pass(&kit, 5000);
	KK_OK(&kit, kitchen_recall(kit.kitchen, TRACE_BATCH, number, "burnt", &id, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_take_out(kit.kitchen, &take, NULL, &kit.fault));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("dryer", .begin = begin, .end = end),
	TEST(hours_that_are_published_nowhere_are_asked_of_the_house_and_marked),
	TEST(published_hours_are_taken_whatever_the_house_says),
	TEST(meat_is_not_dried_here),
	TEST(fruit_is_taken_from_the_shelf_and_comes_back_with_an_undo),
	TEST(leather_keeps_the_name_of_its_fruit),
	TEST(leather_takes_the_trays_of_its_puree_and_no_more_than_there_are),
	TEST(the_look_rings_every_hour_and_a_half_and_is_counted),
	TEST(damp_by_the_test_it_goes_back_and_is_tested_at_the_next_look),
	TEST(pieces_are_conditioned_beside_the_dryer_and_shaken_daily),
	TEST(conditioning_is_not_ended_early_unasked),
	TEST(dried_again_it_is_in_its_dryer),
	TEST(dried_again_it_goes_to_another_dryer_or_waits_for_one),
	TEST(leather_is_not_conditioned),
	TEST(packages_stand_in_the_pantry_and_wait_for_no_canner),
	TEST(a_season_tells_what_was_dried),
	TEST(packages_are_old_by_their_own_best_by),
	TEST(a_package_is_taken_out_like_a_jar),
	TEST(a_label_says_that_it_is_dried_and_nothing_of_a_process),
	TEST(packed_before_its_ten_days_it_is_warned_of),

	GROUP("out of a pot", .begin = begin_pot, .end = end),
	TEST(what_goes_to_the_trays_fills_no_jar),
	TEST(taken_to_the_trays_by_mistake_it_is_in_the_pot_again),
	TEST(no_more_goes_to_the_trays_than_a_pot_has_left),
	TEST(sweetened_puree_has_the_hours_of_the_house),
	TEST(a_jelly_with_pectin_does_not_go_to_the_trays),
	TEST(only_a_pot_that_is_being_filled_gives_to_the_trays),
	TEST(a_pot_that_went_to_the_trays_is_not_given_up),
	TEST(the_record_tells_where_leather_came_from),
	TEST(a_pot_its_lot_product_and_day_lead_to_the_packages_dried_out_of_it),
	TEST(a_juicer_run_leads_through_the_pot_to_the_packages),
	TEST(a_drying_leads_to_its_packages_alone),
	TEST(a_recalled_pot_stops_its_packages),
};

KK_TESTS("dryings", listed)
