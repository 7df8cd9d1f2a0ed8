/*
 * The gate: what each kind of evidence, and each lack of one, makes of a process.
 *
 * Minutes and pressures in the examples are those of USDA AIB 539 (rev. 2015): peaches,
 * hot, quarts, boiling water, 4,650 ft: 35 min (Guide 2); crushed tomatoes, hot,
 * quarts, boiling water, 4,650 ft: 55 min (Guide 3); green beans, raw, quarts, weighted
 * gauge, above 1,000 ft: 25 min at 15 psi (Guide 4).
 */
#include <check.h>
#include <string.h>

#include "engine/gate/gate.h"
#include "support/tests.h"

#define MINUTE INT64_C(60000)
#define BEANS "green beans (snap and Italian)"

static struct load_evidence kettle(int minutes)
{
	struct load_evidence load = { .method_known = true,
		                      .method = METHOD_BOILING_WATER,
		                      .minutes = minutes,
		                      .pressure_psi = NO_PRESSURE,
		                      .held_ms = minutes * MINUTE,
		                      .vented_ms = NOT_ON_RECORD,
		                      .cooled_ms = NOT_ON_RECORD,
		                      .read_held_ms = NOT_ON_RECORD,
		                      .earlier = "",
		                      .vent_cut = "",
		                      .stopped = "",
		                      .wrong = "",
		                      .worse = "" };

	ck_assert(elevation_read("4650ft", &load.elevation, NULL));
	return load;
}

static struct load_evidence canner(int minutes, int psi)
{
	struct load_evidence load = kettle(minutes);

	load.method = METHOD_WEIGHTED_GAUGE;
	load.pressure_psi = psi;
	load.vented_ms = GATE_VENT_MS;
	load.cooled_ms = 50 * MINUTE;
	load.wall = WALL_HEAVY;
	load.largest_jar = jar_size_index(jar_size_named("quart"));
	return load;
}

static struct jar_evidence jar(const char *food, const char *pack, enum acid acid)
{
	return (struct jar_evidence){ .food = food,
		                      .pack = pack,
		                      .jar = "quart",
		                      .acid = acid,
		                      .origin = ORIGIN_PRINTED,
		                      .origin_words = "",
		                      .stood_ms = 5 * MINUTE,
		                      .pot_stood_ms = NOT_ON_RECORD,
		                      .not_as_recipe = "",
		                      .multiple_why = "",
		                      .acid_why = "" };
}

static struct jar_evidence peaches(void)
{
	return jar("peaches", "hot", ACID_NOT_SAID);
}
static struct jar_evidence tomatoes(void)
{
	return jar("tomatoes crushed", "hot", ACID_LEMON_JUICE);
}
static struct jar_evidence beans(void)
{
	return jar(BEANS, "raw", ACID_NOT_SAID);
}

static char said[2000];
static struct judgement judged;

/* The verdict and the ids of all reasons. */
static void is(const struct load_evidence *load, const struct jar_evidence *jar, enum verdict verdict, const char *ids)
{
	char words[400];
	struct text list = TEXT_OVER(words);
	struct text text = TEXT_OVER(said);

	gate_judge(load, jar, 1, &judged, NULL);
	gate_ids(&judged, &list);
	gate_say(&judged, &text);
	ck_assert_str_eq(words, ids);
	ck_assert_int_eq(judged.verdict, verdict);
}

/* --- what is as it should be ---------------------------------------------------------- */

START_TEST(full_evidence_is_valid_without_a_word)
{
	struct load_evidence load = kettle(35);
	struct jar_evidence one = peaches();

	is(&load, &one, VERDICT_VALID, "");
	load = kettle(55);
	one = tomatoes();
	is(&load, &one, VERDICT_VALID, "");
	load = canner(25, 15);
	one = beans();
	is(&load, &one, VERDICT_VALID, "");
}
END_TEST

/* Green beans, A539 guide 4, weighted gauge: hot or raw, quarts 25 min, at 10 psi to
 * 1,000 ft and 15 above. */
START_TEST(a_notebook_that_fell_short_of_every_pack_is_not_valid)
{
	struct load_evidence load = canner(25, 15);
	struct jar_evidence one = jar(BEANS, "", ACID_NOT_SAID);

	load.from_notebook = true;
	load.held_ms = load.cooled_ms = NOT_ON_RECORD;
	is(&load, &one, VERDICT_UNKNOWN, "notebook pack-not-said");
	load.vented_ms = NOT_ON_RECORD;
	is(&load, &one, VERDICT_UNKNOWN, "notebook pack-not-said vent-not-said");
	load.vented_ms = GATE_VENT_MS - 1;
	is(&load, &one, VERDICT_NOT_VALID, "vent-short notebook pack-not-said");
	load.vented_ms = GATE_VENT_MS;
	load.pressure_psi = 10;
	is(&load, &one, VERDICT_NOT_VALID, "too-little-pressure notebook pack-not-said");
	load.elevation.known = false; /* it may have been by the sea */
	is(&load, &one, VERDICT_UNKNOWN, "notebook pack-not-said elevation-not-said");
	load.pressure_psi = 9;
	is(&load, &one, VERDICT_NOT_VALID, "too-little-pressure notebook pack-not-said elevation-not-said");
	load.pressure_psi = 10;
	load.minutes = 24;
	is(&load, &one, VERDICT_NOT_VALID, "too-short notebook pack-not-said elevation-not-said");
	load.minutes = 0;
	is(&load, &one, VERDICT_UNKNOWN, "notebook pack-not-said elevation-not-said minutes-not-said");
}
END_TEST

START_TEST(food_that_needs_acid_and_was_asked_for_none_says_so)
{
	struct load_evidence load = kettle(55);
	struct jar_evidence one = jar("tomatoes crushed", "hot", ACID_NONE_ASKED);

	is(&load, &one, VERDICT_NOT_VALID, "acid-left-out");
	ck_assert_str_eq(said, "acid not in every jar: this food needs it, and none was asked for");
}
END_TEST

START_TEST(a_hold_that_has_not_ended_leaves_it_open)
{
	struct load_evidence load = kettle(35);
	struct jar_evidence one = peaches();

	load.held_ms = NOT_ON_RECORD;
	is(&load, &one, VERDICT_OPEN, "");
	load.elevation.known = false; /* and what is missing already shows */
	is(&load, &one, VERDICT_UNKNOWN, "elevation-not-said");
}
END_TEST

START_TEST(a_longer_hold_is_no_harm_a_shorter_one_is)
{
	struct load_evidence load = kettle(40);
	struct jar_evidence one = peaches();

	is(&load, &one, VERDICT_VALID, "");
	load = kettle(34);
	is(&load, &one, VERDICT_NOT_VALID, "too-short");
	ck_assert_str_eq(said, "it was given 34 min and needs 35 at 4,650 ft (1,417 m)");
	load = kettle(35);
	load.held_ms = 35 * MINUTE - 1000;
	is(&load, &one, VERDICT_NOT_VALID, "hold-short");
	ck_assert_str_eq(said, "its hold ran 34:59 of 35:00");
}
END_TEST

START_TEST(pressure_below_the_table_is_not_valid_above_it_is)
{
	struct load_evidence load = canner(25, 10);
	struct jar_evidence one = beans();

	is(&load, &one, VERDICT_NOT_VALID, "too-little-pressure");
	ck_assert_str_eq(said, "it was given 10 psi and needs 15 at 4,650 ft (1,417 m)");
	ck_assert(elevation_read("500ft", &load.elevation, NULL));
	is(&load, &one, VERDICT_VALID, "");
}
END_TEST

START_TEST(every_reason_is_given_the_worst_first)
{
	struct load_evidence load = kettle(20);
	struct jar_evidence one = tomatoes();

	one.acid = ACID_NOT_SAID;
	one.stood_ms = 3 * 60 * MINUTE + 12 * MINUTE;
	load.earlier_ms = 4 * MINUTE;
	load.earlier = "MK saw it";
	is(&load, &one, VERDICT_NOT_VALID, "too-short stood earlier acid-not-said");
	ck_assert_str_eq(
	    said,
	    "it was given 20 min and needs 55 at 4,650 ft (1,417 m); its jars stood 3 h 12 min before the canner was heated, "
	    "and 2 h is the limit; the start of the hold is an estimate, 4 min before the key: MK saw it; "
	    "nobody said that its acid is in");
}
END_TEST

START_TEST(a_load_is_the_worst_of_its_jars_and_each_jar_its_own)
{
	struct load_evidence load = kettle(55);
	struct jar_evidence jars[3] = { peaches(), tomatoes(), tomatoes() };
	struct judgement own[3];

	jars[2].acid = ACID_LEFT_OUT;
	gate_judge(&load, jars, 3, &judged, own);
	ck_assert_int_eq(judged.verdict, VERDICT_NOT_VALID);
	ck_assert_int_eq(own[0].verdict, VERDICT_VALID);
	ck_assert_int_eq(own[1].verdict, VERDICT_VALID);
	ck_assert_int_eq(own[2].verdict, VERDICT_NOT_VALID);
	ck_assert_uint_eq(judged.count, 1);
}
END_TEST

/* --- each kind of evidence alone --------------------------------------------------------- */

static struct load_evidence load;
static struct jar_evidence one;

static void low_acid_in_water(void)
{
	load = kettle(180);
	one = beans();
}
static void acid_left_out(void)
{
	one.acid = ACID_LEFT_OUT;
}
static void acid_not_said(void)
{
	one.acid = ACID_NOT_SAID;
}
static void acid_none_asked(void)
{
	one.acid = ACID_NONE_ASKED;
}
static void vinegar_in_pint(void)
{
	one.jar = "pint";
	one.acid = ACID_VINEGAR;
}
static void weak_vinegar(void)
{
	one.vinegar_tenths = 45;
}
static void own_unknown(void)
{
	one.origin = ORIGIN_OWN_UNKNOWN;
	one.origin_words = "not a tested recipe";
}
static void own_refused(void)
{
	one.origin = ORIGIN_REFUSED;
	one.origin_words = "flour in it";
}
static void own_class(void)
{
	one.origin = ORIGIN_OWN_CLASS;
	one.origin_words = "own recipe";
}
static void origin_lost(void)
{
	one.origin = ORIGIN_NOT_SAID;
}
static void not_as_recipe(void)
{
	one.not_as_recipe = "no acid";
}
static void multiplied(void)
{
	one.multiple = 3;
	one.multiple_why = "big pot";
}
static void stood(void)
{
	one.stood_ms = STANDING_MAX_MS + 1;
}
static void stood_to_the_limit(void)
{
	one.stood_ms = STANDING_MAX_MS;
}
static void house_limit(void)
{
	one.stood_ms = 45 * MINUTE;
	one.limit_ms = 40 * MINUTE;
}
static void house_cannot_lengthen(void)
{
	one.stood_ms = STANDING_MAX_MS + 1;
	one.limit_ms = 9 * 60 * MINUTE;
}
static void slow(void)
{
	one.way_ms = STANDING_MAX_MS + HEATING_MAX_MS + 1;
}
static void slow_to_the_limit(void)
{
	one.way_ms = STANDING_MAX_MS + HEATING_MAX_MS;
}
static void slow_in_this_house(void)
{
	one.way_ms = 101 * MINUTE;
	one.limit_ms = 40 * MINUTE;
}
static void pot_stood(void)
{
	one.pot_stood_ms = STANDING_MAX_MS + 1;
}
static void longer_sheet(void)
{
	one.sheet_minutes = 60;
}
static void shorter_sheet(void)
{
	one.sheet_minutes = 10;
}
static void no_food(void)
{
	one.food = "plum wine";
}
static void no_pack(void)
{
	one.pack = "";
}
static void no_such_pack(void)
{
	one.pack = "raw";
}
static void no_method(void)
{
	load.method_known = false;
}
static void no_elevation(void)
{
	load.elevation.known = false;
}
static void no_minutes(void)
{
	load.minutes = 0;
	load.held_ms = 0;
}
static void notebook(void)
{
	load.from_notebook = true;
	load.held_ms = NOT_ON_RECORD;
}
static void stopped(void)
{
	load.stopped = "stopped in hold after 5:00 of 55:00";
}
static void wrong_later(void)
{
	load.wrong = "wrong weight";
}
static void was_not_valid(void)
{
	load.worse_was = VERDICT_NOT_VALID;
}
static void was_unknown(void)
{
	load.worse_was = VERDICT_UNKNOWN;
}
static void no_hold(void)
{
	load.held_ms = NOT_ON_RECORD;
	load.over = true;
}
static void earlier(void)
{
	load.earlier_ms = 3 * MINUTE;
}
static void restarted(void)
{
	load.hold_over_restart = true;
}
static void restarted_and_read(void)
{
	restarted();
	load.read_held_ms = 56 * MINUTE;
}
static void restarted_and_short(void)
{
	restarted();
	load.read_held_ms = 40 * MINUTE;
}
static void jar_too_large(void)
{
	one.jar = "half_gallon";
}

static void low_acid(void)
{
	load = canner(25, 15);
	one = beans();
}
static void low_restarted(void)
{
	low_acid();
	restarted();
}
static void low_slow(void)
{
	low_acid();
	one.way_ms = STANDING_LOW_ACID_MAX_MS + HEATING_MAX_MS + 1;
}
static void low_stood(void)
{
	low_acid();
	one.stood_ms = STANDING_LOW_ACID_MAX_MS + 1;
}
static void vent_short(void)
{
	low_acid();
	load.vented_ms = GATE_VENT_MS - 1000;
}
static void vent_cut(void)
{
	low_acid();
	load.vented_ms = 4 * MINUTE;
	load.vent_cut = "in a hurry";
}
static void no_vent(void)
{
	low_acid();
	load.vented_ms = NOT_ON_RECORD;
}
static void no_psi(void)
{
	low_acid();
	load.pressure_psi = NO_PRESSURE;
}
static void zero_early(void)
{
	low_acid();
	load.cooled_ms = 44 * MINUTE;
}
static void zero_early_pints(void)
{
	zero_early();
	load.largest_jar = jar_size_index(jar_size_named("pint"));
	one.jar = "pint";
}
static void zero_early_lock(void)
{
	zero_early();
	load.wall = WALL_LOCK;
	load.cooled_ms = 8 * MINUTE;
}
static void forced(void)
{
	low_acid();
	load.forced_cooling = true;
}
static void weight_early(void)
{
	low_acid();
	load.weight_early = true;
}
static void acid_forced(void)
{
	load = canner(15, 15);
	one = tomatoes();
	load.forced_cooling = true;
}

/* Crushed tomatoes in quarts, 55 min of boiling water, lemon juice in; then one change. */
static const struct {
	const char *what;
	void (*change)(void);
	enum verdict verdict;
	const char *ids;
} changes[] = {
	{ "low acid in water", low_acid_in_water, VERDICT_NOT_VALID, "low-acid-no-pressure" },
	{ "acid left out", acid_left_out, VERDICT_NOT_VALID, "acid-left-out" },
	{ "acid not said", acid_not_said, VERDICT_UNKNOWN, "acid-not-said" },
	{ "none asked", acid_none_asked, VERDICT_NOT_VALID, "acid-left-out" },
	{ "vinegar in a pint", vinegar_in_pint, VERDICT_NOT_VALID, "acid-other" },
	{ "weak vinegar", weak_vinegar, VERDICT_NOT_VALID, "vinegar-weak" },
	{ "own recipe", own_unknown, VERDICT_UNKNOWN, "own-recipe" },
	{ "own recipe refused", own_refused, VERDICT_NOT_VALID, "recipe-refused" },
	{ "own class", own_class, VERDICT_VALID, "own-class" },
	{ "recipe not said", origin_lost, VERDICT_UNKNOWN, "origin-not-said" },
	{ "not as the recipe", not_as_recipe, VERDICT_NOT_VALID, "not-as-recipe" },
	{ "multiplied", multiplied, VERDICT_UNKNOWN, "multiplied" },
	{ "stood", stood, VERDICT_UNKNOWN, "stood" },
	{ "stood to the limit", stood_to_the_limit, VERDICT_VALID, "" },
	{ "the house shortens", house_limit, VERDICT_UNKNOWN, "stood" },
	{ "the house cannot lengthen", house_cannot_lengthen, VERDICT_UNKNOWN, "stood" },
	{ "slow to its hold", slow, VERDICT_UNKNOWN, "slow-heat" },
	{ "slow, to the limit", slow_to_the_limit, VERDICT_VALID, "" },
	{ "the house shortens the way", slow_in_this_house, VERDICT_UNKNOWN, "slow-heat" },
	{ "pot stood", pot_stood, VERDICT_UNKNOWN, "pot-stood" },
	{ "its sheet asks more", longer_sheet, VERDICT_NOT_VALID, "too-short" },
	{ "its sheet asks less", shorter_sheet, VERDICT_VALID, "" },
	{ "no food", no_food, VERDICT_UNKNOWN, "food-not-said" },
	{ "no pack", no_pack, VERDICT_UNKNOWN, "pack-not-said" },
	{ "no such pack", no_such_pack, VERDICT_NOT_VALID, "no-process" },
	{ "no method", no_method, VERDICT_UNKNOWN, "method-not-said" },
	{ "no elevation", no_elevation, VERDICT_UNKNOWN, "elevation-not-said" },
	{ "no minutes", no_minutes, VERDICT_UNKNOWN, "minutes-not-said" },
	{ "notebook", notebook, VERDICT_UNKNOWN, "notebook" },
	{ "stopped", stopped, VERDICT_NOT_VALID, "stopped" },
	{ "wrong later", wrong_later, VERDICT_NOT_VALID, "found-wrong" },
	{ "imported not valid", was_not_valid, VERDICT_NOT_VALID, "imported-not-valid" },
	{ "imported unknown", was_unknown, VERDICT_UNKNOWN, "imported-unknown" },
	{ "no hold on record", no_hold, VERDICT_UNKNOWN, "hold-not-said" },
	{ "earlier", earlier, VERDICT_UNKNOWN, "earlier" },
	{ "restarted", restarted, VERDICT_UNKNOWN, "clock-not-read" },
	{ "restarted and read", restarted_and_read, VERDICT_VALID, "clock-read" },
	{ "restarted and short", restarted_and_short, VERDICT_NOT_VALID, "clock-short" },
	{ "jar too large", jar_too_large, VERDICT_NOT_VALID, "acid" },
	{ "low acid", low_acid, VERDICT_VALID, "" },
	{ "low acid restarted", low_restarted, VERDICT_NOT_VALID, "clock-not-read" },
	{ "low acid slow to its hold", low_slow, VERDICT_NOT_VALID, "slow-heat" },
	{ "low acid stood", low_stood, VERDICT_UNKNOWN, "stood" },
	{ "vent short", vent_short, VERDICT_NOT_VALID, "vent-short" },
	{ "vent cut", vent_cut, VERDICT_NOT_VALID, "vent-short" },
	{ "no vent", no_vent, VERDICT_UNKNOWN, "vent-not-said" },
	{ "no psi", no_psi, VERDICT_UNKNOWN, "pressure-not-said" },
	{ "zero early", zero_early, VERDICT_UNKNOWN, "zero-early" },
	{ "zero early, pints", zero_early_pints, VERDICT_VALID, "" },
	{ "zero by the lock", zero_early_lock, VERDICT_VALID, "" },
	{ "forced", forced, VERDICT_UNKNOWN, "forced-cooling" },
	{ "weight early", weight_early, VERDICT_UNKNOWN, "weight-early" },
	{ "acid food forced", acid_forced, VERDICT_VALID, "forced-cooling" },
};

START_TEST(one_change)
{
	load = kettle(55);
	one = tomatoes();
	changes[_i].change();
	if (strcmp(changes[_i].ids, "acid") != 0) { /* else only the verdict */
		is(&load, &one, changes[_i].verdict, changes[_i].ids);
		return;
	}
	gate_judge(&load, &one, 1, &judged, NULL);
	ck_assert_int_eq(judged.verdict, changes[_i].verdict);
}
END_TEST

/* Every reason is reached by a change above or by a test that names it. */
START_TEST(every_reason_has_an_id_a_sentence_and_a_source)
{
	for (int i = 0; i < GATE_REASON_COUNT; i++) {
		ck_assert_msg(gate_reasons[i].id != NULL && gate_reasons[i].id[0] != '\0', "reason %d has no id", i);
		ck_assert_msg(strlen(gate_reasons[i].sentence) > 0, "%s says nothing", gate_reasons[i].id);
		ck_assert_msg(strlen(gate_reasons[i].source) > 0, "%s names no source", gate_reasons[i].id);
		ck_assert_msg(strstr(gate_reasons[i].sentence, "safe") == NULL, "%s promises", gate_reasons[i].id);
		for (int j = 0; j < i; j++)
			ck_assert_str_ne(gate_reasons[i].id, gate_reasons[j].id);
	}
}
END_TEST

START_TEST(unknown_low_acid_counts_like_not_valid)
{
	ck_assert(verdict_blocks(VERDICT_NOT_VALID, ACIDITY_ACID));
	ck_assert(verdict_blocks(VERDICT_UNKNOWN, ACIDITY_LOW_ACID));
	ck_assert(!verdict_blocks(VERDICT_UNKNOWN, ACIDITY_ACIDIFIED));
	ck_assert(!verdict_blocks(VERDICT_VALID, ACIDITY_LOW_ACID));
}
END_TEST

/* More reasons than there is room for: the worst stay. */
START_TEST(no_reason_of_a_verdict_is_pushed_out_by_a_remark)
{
	struct load_evidence many = kettle(10);
	struct jar_evidence all = tomatoes();

	all.acid = ACID_LEFT_OUT;
	all.origin = ORIGIN_REFUSED;
	all.origin_words = "flour";
	all.not_as_recipe = "a";
	all.multiple = 2;
	all.stood_ms = all.pot_stood_ms = 9 * 60 * MINUTE;
	all.vinegar_tenths = 40;
	many.stopped = "s";
	many.wrong = "w";
	many.worse_was = VERDICT_NOT_VALID;
	many.earlier_ms = MINUTE;
	many.hold_over_restart = true;
	many.held_ms = 5 * MINUTE;
	gate_judge(&many, &all, 1, &judged, NULL);
	ck_assert_int_eq(judged.verdict, VERDICT_NOT_VALID);
	ck_assert_uint_eq(judged.count, 13);
	for (size_t i = 1; i < judged.count; i++)
		ck_assert_int_ge(verdict_badness(judged.findings[i - 1].makes),
		                 verdict_badness(judged.findings[i].makes));
}
END_TEST

START_TEST(a_pot_is_judged_before_any_canner)
{
	struct jar_evidence pot = tomatoes();

	pot.acid = ACID_NOT_SAID; /* it is asked for when the jars are filled */
	gate_judge_pot(&pot, &judged);
	ck_assert_int_eq(judged.verdict, VERDICT_OPEN);
	pot.acid = ACID_LEFT_OUT;
	gate_judge_pot(&pot, &judged);
	ck_assert_int_eq(judged.verdict, VERDICT_NOT_VALID);
	pot = peaches();
	pot.multiple = 4;
	gate_judge_pot(&pot, &judged);
	ck_assert_int_eq(judged.verdict, VERDICT_UNKNOWN);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(full_evidence_is_valid_without_a_word),
	TEST(a_notebook_that_fell_short_of_every_pack_is_not_valid),
	TEST(a_hold_that_has_not_ended_leaves_it_open),
	TEST(food_that_needs_acid_and_was_asked_for_none_says_so),
	TEST(a_longer_hold_is_no_harm_a_shorter_one_is),
	TEST(pressure_below_the_table_is_not_valid_above_it_is),
	TEST(every_reason_is_given_the_worst_first),
	TEST(a_load_is_the_worst_of_its_jars_and_each_jar_its_own),
	EACH_OF(one_change, changes),
	TEST(every_reason_has_an_id_a_sentence_and_a_source),
	TEST(unknown_low_acid_counts_like_not_valid),
	TEST(no_reason_of_a_verdict_is_pushed_out_by_a_remark),
	TEST(a_pot_is_judged_before_any_canner),
};

TESTS("gate", listed)
