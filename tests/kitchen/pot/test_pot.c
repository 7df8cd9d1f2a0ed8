/* Pots: what a batch needs, its phases, its amounts and what they take off. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/look.h"
#include "kitchen/board/outlook.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "log/tables/pot.h"
#include "support/pot_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

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

/* Refused with these words, and nothing written. */
static void refused(const struct batch_order *order, enum fault_kind kind, const char *words)
{
	int64_t before = kk_journal(&kit);
	char *rows = pk_rows(&kit);
	bool done = pk_try_batch(&kit, order);

	says(words);
	kk_refused(&kit, done, kind, words);
	ck_assert_int_eq(kk_journal(&kit), before);
	pk_same_rows(&kit, rows);
}

static struct batch_need need_of(const struct batch_order *order)
{
	struct batch_need need;

	KK_OK(&kit, kitchen_batch_need(kit.kitchen, order, &need, &kit.fault));
	return need;
}

static int64_t set_stock(enum supply_kind supply, const char *size, int64_t amount)
{
	int64_t was = pk_supply(&kit, supply, size);

	KK_OK(&kit, kitchen_supply_count(kit.kitchen, supply, size, amount, &kit.fault));
	return was;
}

/* --- phases ------------------------------------------------------------------------ */

#define LONGEST 8

/* By the recipes of schema/recipe.csv: what goes in when, and how long it boils. */
static const struct walk {
	const char *recipe;
	const char *jar;
	int hold_s;
	enum phase_name phase[LONGEST];
} walks[] = {
	{ "grape jelly",
	  "half_pint",
	  60,
	  { PHASE_TO_BOIL, PHASE_SUGAR_IN, PHASE_BACK_TO_BOIL, PHASE_BOIL_HOLD, PHASE_OFF, PHASE_FILL, PHASE_RINSE } },
	{ "apple jelly", "half_pint", 0, { PHASE_TO_BOIL, PHASE_GEL_POINT, PHASE_OFF, PHASE_FILL, PHASE_RINSE } },
	{ "apple butter",
	  "pint",
	  0,
	  { PHASE_TO_BOIL, PHASE_SUGAR_IN, PHASE_BACK_TO_BOIL, PHASE_OFF, PHASE_FILL, PHASE_RINSE } },
	{ "crushed tomatoes", "quart", 300, { PHASE_TO_BOIL, PHASE_BOIL_HOLD, PHASE_OFF, PHASE_FILL, PHASE_RINSE } },
	{ "pears in light syrup",
	  "quart",
	  300,
	  { PHASE_TO_BOIL, PHASE_SUGAR_IN, PHASE_BACK_TO_BOIL, PHASE_BOIL_HOLD, PHASE_OFF, PHASE_FILL, PHASE_RINSE } },
	{ "grape juice", "pint", 0, { PHASE_TO_BOIL, PHASE_OFF, PHASE_FILL, PHASE_RINSE } },
	{ "green beans", "pint", 0, { PHASE_TO_BOIL, PHASE_OFF, PHASE_FILL, PHASE_RINSE } },
};
#define WALKS (int)(sizeof(walks) / sizeof(walks[0]))

START_TEST(a_batch_walks_through_its_phases_and_leaves_the_pot_free)
{
	const struct walk *walk = &walks[_i];
	int64_t batch_id = pk_batch(&kit, DEEP_POT, walk->recipe, walk->jar, 1);

	for (int i = 0; walk->phase[i] != PHASE_NO_PHASE; i++) {
		const struct strip *strip = kk_canner(&kit, DEEP_POT);
		int hold_s = walk->phase[i] == PHASE_BOIL_HOLD ? walk->hold_s : 0;

		ck_assert_int_eq(strip->content, STRIP_BATCH);
		ck_assert_int_eq(strip->rule->name, walk->phase[i]);
		ck_assert_int_eq(strip->phase.required_ms, hold_s * SECOND_MS);
		ck_assert_int_eq(pk_face(&kit, DEEP_POT).timed, hold_s > 0);
		if (walk->phase[i] == PHASE_FILL)
			pk_fill(&kit, batch_id, walk->jar, 5, 0);
		kk_pass(&kit, hold_s > 0 ? hold_s * SECOND_MS : 11 * MINUTE_MS);
		/* In good time: nothing is asked, but whether all is in that goes in. */
		KK_OK(&kit, pk_try_step(&kit, DEEP_POT, walk->phase[i] == PHASE_SUGAR_IN));
	}
	ck_assert_int_eq(kk_canner(&kit, DEEP_POT)->content, STRIP_EMPTY);
	ck_assert_int_eq(pk_waiting(&kit), 5);
}
END_TEST

static bool says_any(const char *sentence, const char *const *words)
{
	for (; *words != NULL; words++)
		if (strstr(sentence, *words) != NULL)
			return true;
	return false;
}

START_TEST(what_has_no_pectin_to_break_down_does_not_spoil_in_its_boil)
{
	(void)pk_batch(&kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	pk_to(&kit, DEEP_POT, PHASE_BOIL_HOLD);
	kk_pass(&kit, 5 * MINUTE_MS);
	ck_assert(pk_face(&kit, DEEP_POT).ringing);
	ck_assert_int_eq(pk_face(&kit, DEEP_POT).alarm, ALARM_LIFT);
}
END_TEST

/* All that a pot says on its way to `to`: what to do, what the key says, what to mind. */
static void hear_pot(enum phase_name to, struct text *all)
{
	while (pk_name(&kit, DEEP_POT) != to) {
		const struct phase_rule *rule = kk_canner(&kit, DEEP_POT)->rule;

		text_add(all, "%s; %s; %s; %s; %s\n", rule->words, rule->act, rule->due != NULL ? rule->due : "",
		         rule->step, rule->caution);
		kk_pass(&kit, 11 * MINUTE_MS);
		KK_OK(&kit, pk_try_step(&kit, DEEP_POT, true));
	}
}

/* A539 Guide 2, page 2-26: a minute's boil, then the drained apples are folded in; Guide 3,
 * page 3-7: crushed tomatoes boil gently 5 minutes.  Nothing there is skimmed or gels. */
START_TEST(a_pot_speaks_of_what_it_makes)
{
	static const char *const of_jelly[] = { "skim", "kimmed", "sugar", "pectin", "jelly", NULL };
	static const struct {
		const char *recipe;
		const char *jar;
		bool gels;
		bool folds;
	} pots[] = {
		{ "crushed tomatoes", "quart", false, false },
		{ "apple pie filling, 1 quart", "quart", false, true },
		{ "bread-and-butter pickles", "pint", false, false },
		{ "chayote and pear relish", "pint", false, false }, /* its last goes into the boil */
		{ "grape jelly", "half_pint", true, false },
		{ "apple jelly", "half_pint", true, false },
	};
	char said[2000] = "";
	struct text all = TEXT_OVER(said);

	KK_OK(&kit, kitchen_supply_in(kit.kitchen, SUPPLY_VINEGAR, "", pk_ul("2 gal"), &kit.fault));
	(void)pk_batch(&kit, DEEP_POT, pots[_i].recipe, pots[_i].jar, 1);
	hear_pot(PHASE_FILL, &all);
	ck_assert_msg(says_any(said, of_jelly) == pots[_i].gels, "%s", said);
	ck_assert_msg((strstr(said, "Fold in at once what goes in last") != NULL) == pots[_i].folds, "%s", said);
}
END_TEST

/* Green beans are packed raw and covered with boiling water (A539 Guide 4, page 4-9):
 * nothing is stirred in the pot to a rolling boil, nothing is skimmed. */
START_TEST(raw_pack_is_not_told_to_cook_its_food)
{
	static const char *const of_hot_pack[] = { "tir", "rolling", "skim", "juice", "OFF", "the heat", NULL };
	int64_t batch_id = pk_batch(&kit, DEEP_POT, "green beans", "pint", 1);
	int raw = 0;

	for (const struct strip *strip = kk_canner(&kit, DEEP_POT); pk_name(&kit, DEEP_POT) != PHASE_RINSE;
	     strip = kk_canner(&kit, DEEP_POT)) {
		const struct phase_rule *hot = phase_rule_of(STATION_POT, strip->rule->name);

		ck_assert_str_eq(strip->lot.pack, "raw");
		ck_assert((strip->rule->only & POT_RAW) != 0 && hot->only == 0);
		ck_assert_int_eq(strip->rule->kind, hot->kind);
		ck_assert_int_eq(strip->rule->stop_to, hot->stop_to);
		ck_assert_int_eq(strip->rule->soon_s, hot->soon_s);
		ck_assert(!says_any(strip->rule->step, of_hot_pack) && !says_any(strip->rule->caution, of_hot_pack));
		ck_assert_msg(!says_any(pk_face(&kit, DEEP_POT).act, of_hot_pack), "%s", pk_face(&kit, DEEP_POT).act);
		ck_assert(strip->rule->source[0] != '\0');
		raw += strstr(pk_face(&kit, DEEP_POT).act, "raw") != NULL;
		if (strip->rule->name == PHASE_FILL)
			pk_fill(&kit, batch_id, "pint", 5, 0);
		kk_pass(&kit, 11 * MINUTE_MS);
		KK_OK(&kit, pk_try_step(&kit, DEEP_POT, false));
	}
	ck_assert_int_eq(raw, 3);
	pk_says(&kit, "count the jars (fill > rinse)");
	(void)pk_batch(&kit, WIDE_POT, "grape juice", "pint", 1); /* hot pack keeps its words */
	ck_assert(says_any(pk_face(&kit, WIDE_POT).act, of_hot_pack));
}
END_TEST

START_TEST(every_row_of_a_pot_or_juicer_says_what_to_do_and_where_that_comes_from)
{
	enum station_kind kind = _i == 0 ? STATION_POT : STATION_JUICER;

	for (const struct phase_rule *rule = phase_rule_first(kind); rule != NULL; rule = phase_rule_next(kind, rule)) {
		ck_assert(rule->words[0] != '\0' && rule->act[0] != '\0' && rule->step[0] != '\0');
		ck_assert(rule->caution[0] != '\0' && rule->source[0] != '\0');
		ck_assert_int_eq(rule->kind == PHASE_TIMED, rule->due != NULL);
		ck_assert_int_eq(rule->lost_to != PHASE_NO_PHASE, rule->lost != NULL);
		if (rule->lost_to != PHASE_NO_PHASE)
			ck_assert_ptr_nonnull(phase_rule_of(kind, rule->lost_to));
		if (rule->stop_to != PHASE_NO_PHASE)
			ck_assert_ptr_nonnull(phase_rule_of(kind, rule->stop_to));
		ck_assert_ptr_eq(phase_rule_named(kind, phase_name_stored(rule->name)), rule);
		if (rule->kind != PHASE_TIMED)
			ck_assert(rule->planned_max_s > 0 && rule->planned_min_s <= rule->planned_max_s);
	}
}
END_TEST

/* Juice that boils is syrup yet: A539 (rev. 2015), Guide 7, pages 7-5 and 7-6, boil to the jellying
 * point, by one of its tests.  8 F over boiling water: 4,650 ft boils at 203.5 F. */
START_TEST(jelly_without_added_pectin_is_cooked_to_the_gel_point)
{
	static const char *const kinds[] = { "apple jelly", "berry jam without added pectin" };
	struct face face;

	if (_i == 1)
		pk_receive(&kit, SUPPLY_FRUIT, "", "20 lb");
	(void)pk_batch(&kit, DEEP_POT, kinds[_i], "half_pint", 1);
	kk_pass(&kit, 11 * MINUTE_MS);
	pk_step(&kit, DEEP_POT);
	pk_says(&kit, "(to boil > gel point)");
	face = pk_face(&kit, DEEP_POT);
	ck_assert(!face.timed && !face.ringing);
	ck_assert_str_eq(face.act, "Cook to 211.5 F here, or till drops run together and "
	                           "sheet off the spoon");
	kk_pass(&kit, MINUTE_MS);
	ck_assert(!pk_try_step(&kit, DEEP_POT, false));
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFIRM);
	says("so soon? Have you SEEN it: gel point");
	kk_pass(&kit, 20 * MINUTE_MS);
	kk_warns(&kit, "hold-not-begun", 0, SEVERITY_CAUTION, "Is it there (gel point: off the heat)?");
	KK_OK(&kit, pk_try_step(&kit, DEEP_POT, false));
	ck_assert_int_eq(pk_name(&kit, DEEP_POT), PHASE_OFF);
}
END_TEST

START_TEST(the_gel_point_is_that_of_the_water_measured_here)
{
	KK_OK(&kit, kitchen_set_measured_boil(kit.kitchen, "202.9F", &kit.fault));
	(void)pk_batch(&kit, DEEP_POT, "apple jelly", "half_pint", 1);
	pk_to(&kit, DEEP_POT, PHASE_GEL_POINT);
	ck_assert_str_eq(pk_face(&kit, DEEP_POT).act, "Cook to 210.9 F here, or till "
	                                              "drops run together and sheet off the spoon");
	kk_pass(&kit, 5 * MINUTE_MS);
	pk_step(&kit, DEEP_POT);
	ck_assert_str_eq(pk_face(&kit, DEEP_POT).act, kk_canner(&kit, DEEP_POT)->rule->act);
}
END_TEST

START_TEST(the_boil_hold_rings_at_its_second_and_spoils)
{
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_BOIL_HOLD);
	kk_pass(&kit, 60 * SECOND_MS - 1);
	ck_assert(!pk_face(&kit, WIDE_POT).ringing);
	ck_assert_int_eq(pk_face(&kit, WIDE_POT).left_s, 1);
	KK_REFUSED(&kit, FAULT_CONFIRM, pk_try_step(&kit, WIDE_POT, false));
	kk_pass(&kit, 1);
	ck_assert(pk_face(&kit, WIDE_POT).ringing);
	ck_assert_int_eq(pk_face(&kit, WIDE_POT).alarm, ALARM_SPOILS);
	KK_OK(&kit, pk_try_step(&kit, WIDE_POT, false));
	ck_assert_int_eq(pk_name(&kit, WIDE_POT), PHASE_OFF);
	ck_assert(!pk_face(&kit, WIDE_POT).ringing);
}
END_TEST

START_TEST(a_boil_that_spoils_comes_before_jars_that_wait_to_be_lifted)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);

	kk_to(&kit, load_id, PHASE_HOLD);
	(void)pk_run(&kit, TALL_JUICER, "plums", "9 lb");
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	kk_pass(&kit, WATER_MINUTES * MINUTE_MS); /* the hold and the water are over */
	pk_to(&kit, WIDE_POT, PHASE_BOIL_HOLD);
	kk_pass(&kit, MINUTE_MS);
	ck_assert(kk_face(&kit, load_id).ringing && pk_face(&kit, TALL_JUICER).ringing);
	ck_assert_int_lt(strip_urgency(kk_canner(&kit, WIDE_POT), &kit.clock.now),
	                 strip_urgency(kk_canner(&kit, TALL_JUICER), &kit.clock.now));
	ck_assert_int_lt(strip_urgency(kk_canner(&kit, TALL_JUICER), &kit.clock.now),
	                 strip_urgency(kk_canner(&kit, BIG_KETTLE), &kit.clock.now));
}
END_TEST

START_TEST(a_lost_boil_goes_back_to_the_boil_and_holds_in_full_again)
{
	static const struct {
		const char *recipe;
		const char *jar;
		int hold_s;
	} held[] = { { "grape jelly", "half_pint", 60 }, { "crushed tomatoes", "quart", 300 } };
	const struct past_phase *past;

	(void)pk_batch(&kit, DEEP_POT, held[_i].recipe, held[_i].jar, 1);
	pk_to(&kit, DEEP_POT, PHASE_BOIL_HOLD);
	kk_pass(&kit, held[_i].hold_s * SECOND_MS - 1);
	KK_OK(&kit, kitchen_lost(kit.kitchen, pk_phase(&kit, DEEP_POT), &kit.fault));
	ck_assert_int_eq(pk_name(&kit, DEEP_POT), PHASE_BACK_TO_BOIL);
	past = &kk_canner(&kit, DEEP_POT)->past[kk_canner(&kit, DEEP_POT)->past_count - 1];
	ck_assert_int_eq(past->name, PHASE_BOIL_HOLD);
	ck_assert_int_eq(past->why, PHASE_LOST);
	kk_pass(&kit, 3 * MINUTE_MS);
	pk_step(&kit, DEEP_POT);
	ck_assert_int_eq(pk_name(&kit, DEEP_POT), PHASE_BOIL_HOLD);
	ck_assert_int_eq(pk_face(&kit, DEEP_POT).left_s, held[_i].hold_s);
}
END_TEST

START_TEST(only_the_boil_hold_can_be_lost)
{
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);

	for (int phase = PHASE_TO_BOIL; phase <= PHASE_FILL; phase++) {
		if (phase == PHASE_GEL_POINT)
			continue; /* grape jelly goes by the clock */
		pk_to(&kit, WIDE_POT, (enum phase_name)phase);
		if (phase == PHASE_BOIL_HOLD)
			continue;
		KK_REFUSED(&kit, FAULT_REFUSED, kitchen_lost(kit.kitchen, pk_phase(&kit, WIDE_POT), &kit.fault));
	}
	pk_fill(&kit, batch_id, "half_pint", 8, 0);
	pk_to(&kit, WIDE_POT, PHASE_RINSE);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_lost(kit.kitchen, pk_phase(&kit, WIDE_POT), &kit.fault));
}
END_TEST

START_TEST(a_batch_taken_off_the_heat_goes_to_off)
{
	static const enum phase_name hot[] = { PHASE_TO_BOIL, PHASE_SUGAR_IN, PHASE_BACK_TO_BOIL, PHASE_BOIL_HOLD };

	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, hot[_i]);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_OK(&kit, pk_try(&kit, WIDE_POT, EXCEPTION_STOP, 0));
	ck_assert_int_eq(pk_name(&kit, WIDE_POT), PHASE_OFF);
	kk_pass(&kit, 10 * SECOND_MS);
	KK_REFUSED(&kit, FAULT_REFUSED, pk_try(&kit, WIDE_POT, EXCEPTION_STOP, 0));
}
END_TEST

START_TEST(a_pot_takes_the_next_batch_only_when_it_is_rinsed)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);

	for (int phase = PHASE_TO_BOIL; phase <= PHASE_FILL; phase++) {
		if (phase == PHASE_GEL_POINT)
			continue; /* grape jelly goes by the clock */
		pk_to(&kit, WIDE_POT, (enum phase_name)phase);
		refused(&order, FAULT_STALE, "already holds");
	}
	kk_pass(&kit, 5 * MINUTE_MS);
	KK_REFUSED(&kit, FAULT_CONFIRM, pk_try_step(&kit, WIDE_POT, false)); /* not one jar: asked first */
	pk_fill(&kit, batch_id, "half_pint", 8, 0);
	pk_step(&kit, WIDE_POT);
	ck_assert_int_eq(pk_name(&kit, WIDE_POT), PHASE_RINSE);
	refused(&order, FAULT_STALE, "already holds");
	kk_pass(&kit, 5 * MINUTE_MS);
	pk_step(&kit, WIDE_POT);
	KK_OK(&kit, pk_try_batch(&kit, &order));
}
END_TEST

START_TEST(a_batch_that_gave_no_jar_is_given_up_and_leaves_the_pot)
{
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);

	pk_to(&kit, WIDE_POT, PHASE_FILL);
	kk_pass(&kit, 5 * MINUTE_MS);
	KK_OK(&kit, pk_try_step(&kit, WIDE_POT, true));
	ck_assert_int_eq(pk_name(&kit, WIDE_POT), PHASE_RINSE);
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	ck_assert_int_eq(pk_name(&kit, WIDE_POT), PHASE_FILL);
}
END_TEST

START_TEST(a_pot_takes_no_load_and_no_run_and_a_canner_no_batch)
{
	struct load_order load = kk_order(&kit, BIG_KETTLE, 3);
	struct batch_order order = pk_order(&kit, BIG_KETTLE, "grape jelly", "half_pint", 1);
	int64_t id;

	load.station_id = kk_station(&kit, WIDE_POT);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_start_load(kit.kitchen, &load, &id, &kit.fault));
	refused(&order, FAULT_MISSING, "no such pot");
	order.station_id = 99;
	refused(&order, FAULT_MISSING, "no such station");
}
END_TEST

/* --- what a batch needs -------------------------------------------------------------- */

/* Every counted line of some recipes, one after the other too small by 1 uL or mg. */
static const struct {
	const char *recipe;
	const char *jar;
	enum supply_kind supply;
	const char *says;
} lines[] = {
	{ "grape jelly", "half_pint", SUPPLY_SUGAR, "Not enough sugar" },
	{ "grape jelly", "half_pint", SUPPLY_PECTIN_REGULAR, "Not enough regular pectin" },
	{ "apple jelly, low sugar", "pint", SUPPLY_SUGAR, "Not enough sugar" },
	{ "apple jelly, low sugar", "pint", SUPPLY_LEMON_JUICE, "Not enough bottled lemon juice" },
	{ "apple jelly, low sugar", "pint", SUPPLY_CALCIUM_SOLUTION, "Not enough calcium solution" },
	{ "apple jelly, low sugar", "pint", SUPPLY_PECTIN_LOW, "Not enough low-methoxyl pectin" },
	{ "apple butter", "pint", SUPPLY_FRUIT, "Not enough apples" },
	{ "peaches in light syrup", "quart", SUPPLY_FRUIT, "Not enough peaches" },
};
#define LINES (int)(sizeof(lines) / sizeof(lines[0]))

START_TEST(a_batch_is_refused_when_a_counted_supply_is_short_by_the_least)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, lines[_i].recipe, lines[_i].jar, 1);
	struct batch_need need = need_of(&order);
	int64_t filled = 0;

	for (size_t i = 0; i < need.scaled.count; i++)
		if (need.scaled.lines[i].ingredient->supply == lines[_i].supply)
			filled = need.scaled.lines[i].measured.filled;
	ck_assert_int_gt(filled, 0);
	ck_assert_int_eq(need.short_lines, 0);
	set_stock(lines[_i].supply, "", filled - 1);
	ck_assert_int_eq(need_of(&order).short_lines, 1);
	refused(&order, FAULT_REFUSED, lines[_i].says);
	set_stock(lines[_i].supply, "", filled);
	ck_assert_int_eq(need_of(&order).short_lines, 0);
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(pk_supply(&kit, lines[_i].supply, ""), 0);
}
END_TEST

START_TEST(a_supply_nobody_counts_is_never_short)
{
	struct batch_order order;

	kk_end(&kit);
	pk_begin(&kit);
	(void)pk_juice(&kit, "grapes", "1 gal");
	order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	ck_assert_int_eq(need_of(&order).jars_stock, -1);
	ck_assert(!need_of(&order).lines[2].counted);
	KK_OK(&kit, pk_try_batch(&kit, &order));
}
END_TEST

START_TEST(a_batch_is_refused_when_its_juice_is_short)
{
	struct batch_order order;
	struct log_juice *rows;
	size_t count;

	kk_end(&kit);
	pk_begin(&kit);
	order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	(void)pk_juice(&kit, "apples", "3 gal"); /* of another fruit */
	refused(&order, FAULT_REFUSED, "Not enough grape juice");
	(void)pk_juice(&kit, "grapes", "3 cups");
	KK_OK(&kit, kitchen_juice_in(kit.kitchen, "Grape", pk_ul("2 cups") - pk_ul("5 cups") / 1000 - 1, JUICE_FROZEN,
	                             &kit.fault));
	refused(&order, FAULT_REFUSED, "Do not stretch it");
	KK_OK(&kit, kitchen_juices(kit.kitchen, &rows, &count, &kit.fault));
	KK_OK(&kit, kitchen_juice_left(kit.kitchen, rows[count - 1].id, pk_ul("5 cups") - pk_ul("3 cups"),
	                               JUICE_CORRECTION, &kit.fault));
	free(rows);
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(pk_juice_of(&kit, "grapes") + pk_juice_of(&kit, "Grape"), 0);
	ck_assert_int_eq(pk_juice_of(&kit, "apples"), pk_ul("3 gal"));
}
END_TEST

/* "1.18 l" for 5 cups: forecast and plan say that it is enough. */
START_TEST(juice_that_was_measured_a_hair_short_is_enough_and_all_taken)
{
	int64_t measured = pk_ul("5 cups") - pk_ul("5 cups") / 1000;
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	struct batch_need need;

	kk_end(&kit);
	pk_begin(&kit);
	KK_OK(&kit, kitchen_juice_in(kit.kitchen, "grapes", measured, JUICE_HOT, &kit.fault));
	need = need_of(&order);
	ck_assert_int_eq(need.lines[0].takes, measured);
	ck_assert_int_eq(need.short_lines, 0);
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(pk_juice_of(&kit, "grapes"), 0);
	/* Acid, sugar and the rest are weighed against the shelf as they are. */
	pk_receive(&kit, SUPPLY_SUGAR, "", "1 lb");
	(void)pk_juice(&kit, "grapes", "5 cups");
	order = pk_order(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	refused(&order, FAULT_REFUSED, "Not enough sugar");
}
END_TEST

/* Juice goes by the fruit it came from. */
START_TEST(juice_serves_what_is_made_of_its_fruit_and_nothing_else)
{
	static const struct {
		const char *kind;
		const char *recipe;
		bool serves;
	} pairs[] = {
		{ "grapes", "grape jelly", true },
		{ "Grape", "grape jelly", true },
		{ "grape juice", "grape jelly", true },
		{ "blackberries", "blackberry jelly", true },
		{ "blackberry", "blackberry jelly", true },
		{ "plums", "plum jelly", true },
		{ "apples", "apple jelly", true },
		{ "apple", "grape jelly", false },
		{ "grapefruit", "grape jelly", false },
		{ "berries", "blackberry jelly", false },
		{ "s", "grape jelly", false },
		{ "rape", "grape jelly", false },
		{ "pineapples", "apple jelly", false },
		{ "grap", "grape jelly", false },
	};

	for (size_t i = 0; i < sizeof(pairs) / sizeof(pairs[0]); i++) {
		struct batch_order order;
		struct batch_need need;

		kk_end(&kit);
		pk_begin(&kit);
		(void)pk_juice(&kit, pairs[i].kind, "1 gal");
		order = pk_order(&kit, WIDE_POT, pairs[i].recipe, "half_pint", 1);
		need = need_of(&order);
		ck_assert_msg((need.short_lines == 0) == pairs[i].serves, "%s for %s: %d", pairs[i].kind,
		              pairs[i].recipe, need.short_lines);
		ck_assert_int_eq(need.lines[0].stock, pairs[i].serves ? pk_ul("1 gal") : 0);
	}
}
END_TEST

START_TEST(a_batch_is_refused_when_jars_are_short_by_one)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	int likely = need_of(&order).yield.jars_likely;

	ck_assert(need_of(&order).yield_known);
	ck_assert_int_gt(likely, 0);
	set_stock(SUPPLY_JAR, "half_pint", likely - 1);
	ck_assert_int_eq(need_of(&order).jars_stock, likely - 1);
	refused(&order, FAULT_REFUSED, "Not enough jars");
	set_stock(SUPPLY_JAR, "half_pint", likely);
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_JAR, "half_pint"), likely); /* taken when they are filled */
}
END_TEST

START_TEST(a_receipt_ends_a_shortage)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);

	set_stock(SUPPLY_SUGAR, "", pk_amount(SUPPLY_SUGAR, "6 cups"));
	refused(&order, FAULT_REFUSED, "7 cups needed");
	pk_receive(&kit, SUPPLY_SUGAR, "", "4 lb");
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_SUGAR, ""), pk_amount(SUPPLY_SUGAR, "6 cups") +
	                                                        pk_amount(SUPPLY_SUGAR, "4 lb") -
	                                                        pk_amount(SUPPLY_SUGAR, "7 cups"));
}
END_TEST

/* Sugar twice: each amount is there, both together are not. */
START_TEST(two_lines_of_one_supply_are_short_together)
{
	struct log_recipe own = { .pectin = PECTIN_NONE,
		                  .acidity = ACIDITY_ACID,
		                  .headspace_thou = 250,
		                  .multiple_max = 1,
		                  .foam_percent = 30,
		                  .boil_off_high_percent = 10,
		                  .ingredient_count = 2 };
	struct batch_order order;

	ck_assert(text_copy(own.name, sizeof(own.name), "double sweet") &&
	          text_copy(own.jars, sizeof(own.jars), "half_pint") &&
	          text_copy(own.source, sizeof(own.source), "house recipe, no source"));
	for (size_t i = 0; i < 2; i++) {
		own.ingredients[i] = (struct log_recipe_ingredient){ .supply = SUPPLY_SUGAR,
			                                             .measure = MEASURE_MASS,
			                                             .amount = 1000000,
			                                             .adding = i == 0 ? ADD_AT_START : ADD_AT_BOIL };
		ck_assert(text_copy(own.ingredients[i].name, NAME_MAX_BYTES, i == 0 ? "sugar" : "more sugar"));
	}
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	order = pk_order(&kit, WIDE_POT, "double sweet", "half_pint", 1);
	set_stock(SUPPLY_SUGAR, "", 1999999);
	refused(&order, FAULT_REFUSED, "Not enough more sugar");
	set_stock(SUPPLY_SUGAR, "", 2000000);
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_SUGAR, ""), 0);
}
END_TEST

/* Optional lemon juice: too little of it is left out, and no more is taken than is there. */
START_TEST(what_is_optional_and_short_is_left_out)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "apple jelly", "half_pint", 1);
	int64_t batch_id = 0;

	set_stock(SUPPLY_LEMON_JUICE, "", pk_amount(SUPPLY_LEMON_JUICE, "1 tbsp"));
	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, false, &batch_id, &kit.fault));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), pk_amount(SUPPLY_LEMON_JUICE, "1 tbsp"));
	ck_assert_int_eq(pk_amount_row(&kit, batch_id, "bottled lemon juice").used, 0);
	ck_assert_int_eq(pk_amount_row(&kit, batch_id, "bottled lemon juice").wanted,
	                 pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp"));
}
END_TEST

/* 2 tbsp a quart (A539 Guide 3): as many as the batch is likely to fill. */
START_TEST(acid_for_the_jars_must_be_there_before_the_pot_is_started)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	int64_t acid = need_of(&order).yield.jars_likely * pk_amount(SUPPLY_LEMON_JUICE, "2 tbsp");

	set_stock(SUPPLY_LEMON_JUICE, "", acid - 1);
	refused(&order, FAULT_REFUSED, "Not enough bottled lemon juice");
	set_stock(SUPPLY_LEMON_JUICE, "", acid);
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_LEMON_JUICE, ""), acid); /* it goes with the jars */
}
END_TEST

/* One batch a pot: A539 Guide 7, MSU-961. */
START_TEST(regular_pectin_is_not_multiplied_and_the_offer_is_made)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "grape jelly", "half_pint", _i);

	refused(&order, FAULT_STOPPED, "separate batches");
	{
		char offer[40];
		struct text text = TEXT_OVER(offer);

		text_add(&text, "Make %d separate batches", _i);
		refused(&order, FAULT_STOPPED, offer);
	}
}
END_TEST

START_TEST(low_methoxyl_is_multiplied_up_to_its_limit_and_the_pot)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "apple jelly, low sugar", "half_pint", 4);

	pk_receive(&kit, SUPPLY_PECTIN_LOW, "", "8 oz");
	pk_receive(&kit, SUPPLY_CALCIUM_SOLUTION, "", "2 cups");
	refused(&order, FAULT_REFUSED, "This pot takes 3");
	order.multiple = 3;
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_str_eq(kk_canner(&kit, WIDE_POT)->holds, "3 x apple jelly, low sugar");
	order = pk_order(&kit, DEEP_POT, "apple jelly, low sugar", "half_pint", 6);
	refused(&order, FAULT_STOPPED, "allows 5");
	order.multiple = 0;
	refused(&order, FAULT_MISUSE, "1 batch");
	order.multiple = 4;
	KK_OK(&kit, pk_try_batch(&kit, &order));
	ck_assert_int_eq(strip_batch(kk_canner(&kit, DEEP_POT))->row.multiple, 4);
	ck_assert_int_eq(pk_juice_of(&kit, "apples"), pk_ul("3 gal") - 3 * pk_ul("1 qt") - 4 * pk_ul("1 qt"));
}
END_TEST

START_TEST(a_batch_goes_only_where_its_recipe_allows)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "quart", 1);

	refused(&order, FAULT_REFUSED, "does not go in that jar");
	order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	(void)text_copy(order.pack, sizeof(order.pack), "raw");
	refused(&order, FAULT_REFUSED, "is packed");
	(void)text_copy(order.recipe, sizeof(order.recipe), "quince jelly");
	refused(&order, FAULT_MISSING, "no recipe");
}
END_TEST

/* --- where the jars would go ------------------------------------------------------------ */

/* A jelly load just begun keeps the steam canner 1 + 15 + 10 + 5 + 2 min (planning
 * times of the phases); a pot takes 20 min to its jars, common practice, no source. */
START_TEST(a_batch_without_a_canner_in_time_is_asked_about)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	int64_t id;

	(void)kk_start(&kit, BIG_KETTLE, 7);
	(void)kk_start(&kit, LOW_KETTLE, 7);
	ck_assert_int_eq(need_of(&order).canner_in_ms, 0); /* the steam canner */
	(void)kk_start(&kit, STEAM_CANNER, 7);
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, 32 - 20, 0, &kit.fault));
	ck_assert_int_eq(need_of(&order).canner_in_ms, 33 * MINUTE_MS);
	ck_assert(need_of(&order).nowhere_to_go);
	refused(&order, FAULT_CONFIRM, "No canner is free in time");
	KK_OK(&kit, kitchen_start_batch(kit.kitchen, &order, true, &id, &kit.fault));
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, id));
	KK_OK(&kit, kitchen_set_minutes(kit.kitchen, 70, 45, 20, 33 - 20, 0, &kit.fault));
	ck_assert(!need_of(&order).nowhere_to_go);
	KK_OK(&kit, pk_try_batch(&kit, &order));
}
END_TEST

START_TEST(a_canner_without_room_for_the_jar_is_no_place_to_go)
{
	static const char *const lines_here[] = { "elevation 4650 ft", "canner 1 boiling_water \"Small\" half_pint=7",
		                                  "pot 8 \"Wide pot\" \"8 qt\"" };
	struct batch_order order;

	kk_end(&kit);
	kk_begin_empty(&kit);
	for (size_t i = 0; i < 3; i++)
		KK_OK(&kit, kitchen_setup_line(kit.kitchen, lines_here[i], 0, &kit.fault));
	(void)pk_juice(&kit, "grapes", "2 gal");
	order = pk_order(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	ck_assert_int_eq(need_of(&order).canner_in_ms, 0);
	order = pk_order(&kit, WIDE_POT, "grape jelly", "pint", 1);
	ck_assert_int_eq(need_of(&order).canner_in_ms, -1);
	refused(&order, FAULT_CONFIRM, "No canner here");
}
END_TEST

START_TEST(low_acid_food_waits_for_a_pressure_canner)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, "green beans", "pint", 1);

	(void)kk_start(&kit, WEIGHT_CANNER, 7);
	ck_assert_int_eq(need_of(&order).canner_in_ms, 0); /* the other one */
	(void)kk_start(&kit, DIAL_CANNER, 7);
	ck_assert_int_gt(need_of(&order).canner_in_ms, HOUR_MS);
	refused(&order, FAULT_CONFIRM, "No canner is free in time");
}
END_TEST

/* --- amounts ------------------------------------------------------------------------------ */

START_TEST(what_goes_in_is_written_down_and_taken_off_in_one_act)
{
	int64_t before = kk_journal(&kit);
	int64_t pectin = pk_supply(&kit, SUPPLY_PECTIN_REGULAR, "");
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	struct log_batch_amount *rows;
	size_t count;

	ck_assert_int_eq(kk_journal(&kit), before + 1);
	KK_OK(&kit, kitchen_batch_amounts(kit.kitchen, batch_id, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_str_eq(rows[0].ingredient, "grape juice");
	ck_assert_int_eq(rows[0].wanted, pk_ul("5 cups"));
	ck_assert_int_eq(rows[0].used, pk_ul("5 cups"));
	ck_assert_str_eq(rows[1].ingredient, "regular pectin");
	ck_assert_int_eq(rows[1].used, pk_amount(SUPPLY_PECTIN_REGULAR, "1.75 oz"));
	ck_assert_str_eq(rows[2].ingredient, "sugar");
	ck_assert_int_eq(rows[2].used, 7 * SUGAR_MG_PER_CUP);
	ck_assert_int_eq(rows[2].place, 3);
	free(rows);
	ck_assert_int_eq(pk_juice_of(&kit, "grapes"), pk_ul("3 gal") - pk_ul("5 cups"));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_SUGAR, ""), pk_amount(SUPPLY_SUGAR, "20 lb") - 7 * SUGAR_MG_PER_CUP);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_PECTIN_REGULAR, ""),
	                 pectin - pk_amount(SUPPLY_PECTIN_REGULAR, "1.75 oz"));
}
END_TEST

START_TEST(a_corrected_amount_moves_its_ledger_by_the_difference)
{
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	int64_t left = pk_supply(&kit, SUPPLY_SUGAR, "");
	int64_t juice = pk_juice_of(&kit, "grapes");
	char *rows = pk_rows(&kit);

	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 3, 1500000, "", &kit.fault));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_SUGAR, ""), left - 100000);
	ck_assert_int_eq(pk_amount_row(&kit, batch_id, "sugar").used, 1500000);
	ck_assert_int_eq(pk_amount_row(&kit, batch_id, "sugar").wanted, 1400000);
	pk_says(&kit, "Corrected");
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 3, 1250001, "", &kit.fault));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_SUGAR, ""), left + 149999);
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 1, pk_ul("6 cups"), "", &kit.fault));
	ck_assert_int_eq(pk_juice_of(&kit, "grapes"), juice - pk_ul("6 cups") + pk_ul("5 cups"));
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 1, 1, "", &kit.fault));
	ck_assert_int_eq(pk_juice_of(&kit, "grapes"), pk_ul("3 gal") - 1);
	for (int i = 0; i < 4; i++)
		KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	pk_same_rows(&kit, rows);
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_batch_amount(kit.kitchen, batch_id, 4, 1, "", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_batch_amount(kit.kitchen, batch_id, 3, -1, "", &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_batch_amount(kit.kitchen, 99, 3, 1, "", &kit.fault));
}
END_TEST

START_TEST(a_correction_takes_no_more_juice_than_there_is)
{
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	char *rows = pk_rows(&kit);

	KK_REFUSED(&kit, FAULT_REFUSED,
	           kitchen_batch_amount(kit.kitchen, batch_id, 1, pk_ul("3 gal") + 1, "", &kit.fault));
	pk_same_rows(&kit, rows);
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 1, pk_ul("3 gal"), "", &kit.fault));
	ck_assert_int_eq(pk_juice_of(&kit, "grapes"), 0);
}
END_TEST

START_TEST(juice_is_taken_oldest_first_and_given_back_where_it_came_from)
{
	int64_t first;
	int64_t second;
	int64_t batch_id;

	kk_end(&kit);
	pk_begin(&kit);
	first = pk_juice(&kit, "grapes", "3 cups");
	kk_pass(&kit, MINUTE_MS);
	second = pk_juice(&kit, "grapes", "4 cups");
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	ck_assert_int_eq(pk_juice_left(&kit, first), 0);
	ck_assert_int_eq(pk_juice_left(&kit, second), pk_ul("7 cups") - pk_ul("5 cups"));
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 1, pk_ul("1 cup"), "", &kit.fault));
	/* No lot holds more than was ever make this. */
	ck_assert_int_le(pk_juice_left(&kit, second), pk_ul("4 cups"));
	ck_assert_int_eq(pk_juice_left(&kit, first) + pk_juice_left(&kit, second),
	                 pk_ul("3 cups") + pk_ul("4 cups") - pk_ul("1 cup"));
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 1, 0, "", &kit.fault));
	ck_assert_int_eq(pk_juice_left(&kit, first), pk_ul("3 cups"));
	ck_assert_int_eq(pk_juice_left(&kit, second), pk_ul("4 cups"));
}
END_TEST

START_TEST(amounts_of_a_finished_batch_are_corrected_too)
{
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	int64_t left;

	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", 8, BOX_A);
	pk_to(&kit, WIDE_POT, PHASE_RINSE);
	kk_pass(&kit, MINUTE_MS);
	pk_step(&kit, WIDE_POT);
	kk_pass(&kit, DAY_MS);
	left = pk_supply(&kit, SUPPLY_SUGAR, "");
	KK_OK(&kit, kitchen_batch_amount(kit.kitchen, batch_id, 3, 1300000, "", &kit.fault));
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_SUGAR, ""), left + 100000);
	KK_OK(&kit, kitchen_batch_note(kit.kitchen, batch_id, "set soft", &kit.fault));
	{
		struct log_batch batch;

		KK_OK(&kit, log_batch_get(kit.log, batch_id, &batch, &kit.fault));
		ck_assert_str_eq(batch.note, "set soft");
		ck_assert(!batch.open);
	}
}
END_TEST

/* --- the card, undo, two terminals ----------------------------------------------------------- */

START_TEST(lines_of_the_card_are_ticked_and_unticked)
{
	int64_t batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);

	KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 0, true, &kit.fault));
	KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 31, true, &kit.fault));
	ck_assert_uint_eq(strip_batch(kk_canner(&kit, WIDE_POT))->row.ticks, 0x80000001u);
	KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 0, false, &kit.fault));
	ck_assert_uint_eq(strip_batch(kk_canner(&kit, WIDE_POT))->row.ticks, 0x80000000u);
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	ck_assert_uint_eq(strip_batch(kk_canner(&kit, WIDE_POT))->row.ticks, 0x80000001u);
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_tick(kit.kitchen, batch_id, 32, true, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISUSE, kitchen_tick(kit.kitchen, batch_id, -1, true, &kit.fault));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_tick(kit.kitchen, 99, 1, true, &kit.fault));
}
END_TEST

#define WHOLE_WAY 16

START_TEST(each_act_of_a_batch_is_taken_back_and_done_again)
{
	char *rows[WHOLE_WAY];
	int64_t batch_id = 0;
	int acts = 0;

	rows[acts++] = pk_rows(&kit);
	batch_id = pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	while (kk_canner(&kit, WIDE_POT)->content == STRIP_BATCH) {
		ck_assert_int_lt(acts, WHOLE_WAY - 3);
		kk_pass(&kit, 2 * SECOND_MS);
		rows[acts++] = pk_rows(&kit);
		if (pk_name(&kit, WIDE_POT) == PHASE_TO_BOIL && acts == 2) {
			KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 1, true, &kit.fault));
			rows[acts++] = pk_rows(&kit);
			KK_OK(&kit, kitchen_warm_jars(kit.kitchen, batch_id, true, &kit.fault));
			rows[acts++] = pk_rows(&kit);
		}
		if (pk_name(&kit, WIDE_POT) == PHASE_FILL) {
			pk_fill(&kit, batch_id, "half_pint", 8, BOX_A);
			rows[acts++] = pk_rows(&kit);
		}
		pk_step(&kit, WIDE_POT);
	}
	rows[acts++] = pk_rows(&kit);
	for (int i = acts - 2; i >= 0; i--) {
		KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, batch_id));
		pk_same_rows(&kit, strdup(rows[i]));
	}
	KK_REFUSED(&kit, FAULT_MISSING, pk_undo(&kit, SUBJECT_BATCH, batch_id));
	for (int i = 1; i < acts; i++) {
		KK_OK(&kit, pk_redo(&kit, SUBJECT_BATCH, batch_id));
		pk_same_rows(&kit, strdup(rows[i]));
	}
	for (int i = 0; i < acts; i++)
		free(rows[i]);
}
END_TEST

START_TEST(two_terminals_never_pour_the_same_juice)
{
	struct batch_order order = pk_order(&kit, DEEP_POT, "grape jelly", "half_pint", 1);
	struct kitchen_kit other;
	struct log_juice *rows;
	size_t count;
	int64_t id;

	KK_OK(&kit, kitchen_juices(kit.kitchen, &rows, &count, &kit.fault));
	KK_OK(&kit, kitchen_juice_left(kit.kitchen, rows[0].id, pk_ul("5 cups"), JUICE_CORRECTION, &kit.fault));
	free(rows);
	kk_second(&kit, &other);
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	/* Looked at before the other poured: nothing is taken for it twice. */
	ck_assert(!kitchen_start_batch(other.kitchen, &order, true, &id, &other.fault));
	ck_assert(!kitchen_start_batch(other.kitchen, &order, true, &id, &other.fault));
	ck_assert_int_eq(other.fault.kind, FAULT_REFUSED);
	kk_close(&other);
	ck_assert_int_eq(pk_juice_of(&kit, "grapes"), 0);
	ck_assert_int_eq(kk_canner(&kit, DEEP_POT)->content, STRIP_EMPTY);
}
END_TEST

START_TEST(outlook_of_a_batch_lies_end_to_end_and_leaves_out_what_is_not_done)
{
	const struct walk *walk = &walks[_i];
	struct stretch stretches[STRETCHES_MAX];
	size_t count;
	size_t phases = 0;

	(void)pk_batch(&kit, DEEP_POT, walk->recipe, walk->jar, 1);
	while (walk->phase[phases] != PHASE_NO_PHASE)
		phases++;
	for (size_t at = 0; walk->phase[at] != PHASE_FILL; at++) {
		pk_to(&kit, DEEP_POT, walk->phase[at]);
		kk_pass(&kit, 10 * SECOND_MS);
		count = strip_outlook(kk_canner(&kit, DEEP_POT), &kit.clock.now, stretches);
		ck_assert_uint_eq(count, phases);
		for (size_t i = 0; i < count; i++) {
			ck_assert_int_eq(stretches[i].name, walk->phase[i]);
			if (i > 0)
				ck_assert_int_eq(stretches[i].from_ms, stretches[i - 1].to_ms);
		}
		ck_assert_int_eq(strip_free_in_ms(kk_canner(&kit, DEEP_POT), &kit.clock.now),
		                 stretches[count - 1].to_ms);
	}
}
END_TEST

START_TEST(the_one_line_that_goes_in_is_ticked_off_by_its_step)
{
	(void)pk_batch(&kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&kit, WIDE_POT, PHASE_SUGAR_IN);
	kk_pass(&kit, MINUTE_MS);
	ck_assert_uint_eq(strip_batch(kk_canner(&kit, WIDE_POT))->row.ticks, 0);
	KK_OK(&kit, pk_try_step(&kit, WIDE_POT, false));
	pk_says(&kit, "Wide pot: it is in: 7 cups of sugar (sugar in > back to boil)");
	ck_assert_uint_eq(strip_batch(kk_canner(&kit, WIDE_POT))->row.ticks, 1u << 2);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, pk_undo(&kit, SUBJECT_BATCH, strip_batch(kk_canner(&kit, WIDE_POT))->row.id));
	ck_assert_uint_eq(strip_batch(kk_canner(&kit, WIDE_POT))->row.ticks, 0);
}
END_TEST

START_TEST(of_several_lines_those_not_ticked_are_read_out_first)
{
	int64_t batch_id = pk_batch(&kit, DEEP_POT, "apple butter", "pint", 1);

	pk_to(&kit, DEEP_POT, PHASE_SUGAR_IN);
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 2, true, &kit.fault));
	KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, 3, true, &kit.fault));
	ck_assert(!pk_try_step(&kit, DEEP_POT, false));
	ck_assert_int_eq(kit.fault.kind, FAULT_CONFIRM);
	says("is all of it in? Not ticked off: ");
	ck_assert_int_eq(pk_name(&kit, DEEP_POT), PHASE_SUGAR_IN);
	KK_OK(&kit, pk_try_step(&kit, DEEP_POT, true));
	pk_says(&kit, "tbsp of ground cloves (add > back to boil)");
	ck_assert_uint_eq(strip_batch(kk_canner(&kit, DEEP_POT))->row.ticks >> 2 & 0xf, 0xf);
}
END_TEST

START_TEST(nothing_is_asked_of_lines_that_are_ticked_off)
{
	int64_t batch_id = pk_batch(&kit, DEEP_POT, "apple butter", "pint", 1);

	pk_to(&kit, DEEP_POT, PHASE_SUGAR_IN);
	kk_pass(&kit, MINUTE_MS);
	for (int line = 0; line < 8; line++)
		KK_OK(&kit, kitchen_tick(kit.kitchen, batch_id, line, true, &kit.fault));
	KK_OK(&kit, pk_try_step(&kit, DEEP_POT, false));
	pk_says(&kit, "Deep pot: it is in (add > back to boil)");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("phases", .begin = begin, .end = end),
	EACH(a_batch_walks_through_its_phases_and_leaves_the_pot_free, 0, WALKS),
	TEST(raw_pack_is_not_told_to_cook_its_food),
	EACH(a_pot_speaks_of_what_it_makes, 0, 6),
	EACH(every_row_of_a_pot_or_juicer_says_what_to_do_and_where_that_comes_from, 0, 2),
	EACH(jelly_without_added_pectin_is_cooked_to_the_gel_point, 0, 2),
	TEST(the_gel_point_is_that_of_the_water_measured_here),
	TEST(the_boil_hold_rings_at_its_second_and_spoils),
	TEST(what_has_no_pectin_to_break_down_does_not_spoil_in_its_boil),
	TEST(a_boil_that_spoils_comes_before_jars_that_wait_to_be_lifted),
	EACH(a_lost_boil_goes_back_to_the_boil_and_holds_in_full_again, 0, 2),
	TEST(only_the_boil_hold_can_be_lost),
	EACH(a_batch_taken_off_the_heat_goes_to_off, 0, 4),
	TEST(a_pot_takes_the_next_batch_only_when_it_is_rinsed),
	TEST(a_batch_that_gave_no_jar_is_given_up_and_leaves_the_pot),
	TEST(a_pot_takes_no_load_and_no_run_and_a_canner_no_batch),
	EACH(outlook_of_a_batch_lies_end_to_end_and_leaves_out_what_is_not_done, 0, WALKS),
	GROUP("needs", .begin = begin, .end = end),
	EACH(a_batch_is_refused_when_a_counted_supply_is_short_by_the_least, 0, LINES),
	TEST(a_supply_nobody_counts_is_never_short),
	TEST(a_batch_is_refused_when_its_juice_is_short),
	TEST(juice_that_was_measured_a_hair_short_is_enough_and_all_taken),
	TEST(juice_serves_what_is_made_of_its_fruit_and_nothing_else),
	TEST(a_batch_is_refused_when_jars_are_short_by_one),
	TEST(a_receipt_ends_a_shortage),
	TEST(two_lines_of_one_supply_are_short_together),
	TEST(what_is_optional_and_short_is_left_out),
	TEST(acid_for_the_jars_must_be_there_before_the_pot_is_started),
	EACH(regular_pectin_is_not_multiplied_and_the_offer_is_made, 2, 4),
	TEST(low_methoxyl_is_multiplied_up_to_its_limit_and_the_pot),
	TEST(a_batch_goes_only_where_its_recipe_allows),
	TEST(a_batch_without_a_canner_in_time_is_asked_about),
	TEST(a_canner_without_room_for_the_jar_is_no_place_to_go),
	TEST(low_acid_food_waits_for_a_pressure_canner),
	GROUP("amounts", .begin = begin, .end = end),
	TEST(what_goes_in_is_written_down_and_taken_off_in_one_act),
	TEST(a_corrected_amount_moves_its_ledger_by_the_difference),
	TEST(a_correction_takes_no_more_juice_than_there_is),
	TEST(juice_is_taken_oldest_first_and_given_back_where_it_came_from),
	TEST(amounts_of_a_finished_batch_are_corrected_too),
	TEST(lines_of_the_card_are_ticked_and_unticked),
	TEST(the_one_line_that_goes_in_is_ticked_off_by_its_step),
	TEST(of_several_lines_those_not_ticked_are_read_out_first),
	TEST(nothing_is_asked_of_lines_that_are_ticked_off),
	TEST(each_act_of_a_batch_is_taken_back_and_done_again),
	TEST(two_terminals_never_pour_the_same_juice),
};

KK_TESTS("pot", listed)
