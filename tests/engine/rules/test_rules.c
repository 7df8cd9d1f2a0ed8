/*
 * Every rule of the warnings, one by one: facts on which it fires, facts beside
 * them on which it does not, and its very edge.  Limits and their sources: the
 * table in src/engine/rules/rule_table.c.
 */
#include <check.h>
#include <string.h>

#include "engine/rules/rule.h"
#include "support/tests.h"

#define MINUTE INT64_C(60000)
#define HOUR (60 * MINUTE)
#define YEAR (365 * 24 * HOUR)

static struct elevation feet(int feet)
{
	return (struct elevation){ .known = true, .um = feet * FOOT_UM };
}

/* Facts about which nothing is to be said. */
static const struct about_house quiet_house = {
	.elevation = { .known = true, .um = 4650 * FOOT_UM },
	.elevation_before = { .known = true, .um = 4650 * FOOT_UM },
	.storage_mf = FACT_NOT_READ,
	.wait_limit_ms = 20 * MINUTE,
};

#define CALLED \
	{ \
		.station = "Big kettle", .digit = 1, .lot = "2026-09-14-B1", .product = "quince jelly" \
	}

static const struct about_load quiet_load = {
	.called = CALLED,
	.verdict = VERDICT_OPEN,
	.why = "a reason",
	.acidity = ACIDITY_ACID,
	.jars = 9,
	.minutes = 10,
	.minutes_here = 15,
	.raised = "",
	.held_ms = 10 * MINUTE,
	.hold_ms = 10 * MINUTE,
	.vent_held_ms = NOT_ON_RECORD,
	.vent_ms = 10 * MINUTE,
	.reached_ms = NOT_ON_RECORD,
	.hold_starts = 1,
	.seals_due_in_ms = HOUR,
	.window_in_ms = 24 * HOUR,
	.window_hours = 24,
};

static const struct about_notebook quiet_notebook = {
	.called = CALLED,
	.verdict = VERDICT_VALID,
	.why = "a reason",
	.fateless = 3,
};

static const struct about_run quiet_run = { .called = CALLED };

static const struct about_drying quiet_drying = {
	.called = CALLED,
	.look_in_ms = 90 * MINUTE,
	.high_in_ms = 90 * MINUTE,
	.condition_ms = 10 * 24 * 60 * MINUTE,
	.pretreat = "",
};

static const struct about_batch quiet_batch = {
	.called = CALLED,
	.verdict = VERDICT_OPEN,
	.why = "a reason",
	.published = true,
	.standing = { .acidity = ACIDITY_ACID },
	.wait_limit_ms = 20 * MINUTE,
};

static const struct about_clock quiet_clock = {
	.called = CALLED,
	.phase = "come-up",
	.step = "full rolling boil",
	.planned_ms = 30 * MINUTE,
};

static const struct about_waiting quiet_waiting = {
	.product = "quince jelly",
	.jars = 9,
	.standing = { .acidity = ACIDITY_ACID },
	.published = true,
	.pressure_canner = true,
	.some_canner = true,
};

static const struct about_fate quiet_fate = { .lot = "2026-09-14-B1", .fate = "reprocess", .jars = 9 };

static const struct about_station quiet_station = { .station = "Big kettle" };
static const struct about_lid_box quiet_lid_box = { .box = "Box A", .lids = 60 };
static const struct about_person quiet_person = { .person = "AB" };

static const struct about_supply quiet_supply = {
	.supply = "pints",
	.stock = { .amount = 10, .measure = MEASURE_EACH },
	.needed = { .measure = MEASURE_EACH },
};

static const struct about_recall quiet_recall = { .recall = "lid box Box A", .why = "a reason", .noun = "jars" };
static const struct about_spoiled quiet_spoiled = { .lot = "2026-09-14-B1", .noun = "jars", .jars = 9 };
static const struct about_shelved quiet_shelved = { .lot = "2026-09-14-B1", .why = "a reason" };

static const struct about_key_clock quiet_key_clock = { .clock = { .behind_ms = 0 } };
static const struct about_key_load quiet_key_load = { .elevation_known = true };
static const struct about_key_stood quiet_key_stood = { .product = "quince jelly" };

static const struct about_key_batch quiet_key_batch = {
	.product = "quince jelly",
	.multiple = 1,
	.multiple_max = 4,
};

static const struct about_key_fill quiet_key_fill = { .acid_needed = false };
static const struct about_key_against quiet_key_against = { .vent_cut = false };
static const struct about_key_fate quiet_key_fate = { .why = NULL };
static const struct about_key_take quiet_key_take = { .lot = "2026-09-14-B1", .jars = 9, .noun = "jars" };

static struct facts quiet(enum rule_about about)
{
	switch (about) {
/* clang-format off */
#define QUIET(TAG, subject, words) case ABOUT_##TAG: return FACTS(subject, quiet_##subject);
	RULE_SUBJECTS(QUIET)
	/* clang-format on */
	case ABOUT_COUNT: break;
	}
	ck_abort_msg("facts about nothing");
}

/* The same where there is something to say: a key without a reason against it is let pass. */
static struct facts with_a_reason(enum rule_about about)
{
	struct facts facts = quiet(about);

	if (about == ABOUT_KEY_LOAD)
		facts.key_load.why = "a reason";
	if (about == ABOUT_KEY_BATCH)
		facts.key_batch.why = "a reason";
	if (about == ABOUT_KEY_FATE)
		facts.key_fate.why = "a reason";
	return facts;
}

/* Is it asked when a key is pressed? */
static bool is_of_key(enum rule_about about)
{
	return strcmp(rule_about_words(about), "a key about to act") == 0;
}

static int64_t due(const char *id, const struct facts *facts)
{
	const struct rule *rule = rule_named(id);

	ck_assert_msg(rule != NULL, "there is no rule %s", id);
	ck_assert_msg(rule->about == facts->about, "%s is about something else", id);
	return rule_due_ms(rule, facts);
}

static void fires(const char *id, const struct facts *facts, const char *says)
{
	char sentence[400];
	struct text text = TEXT_OVER(sentence);

	ck_assert_msg(due(id, facts) <= 0, "%s does not fire", id);
	ck_assert(rule_say(rule_named(id), facts, &text));
	ck_assert_msg(strstr(sentence, says) != NULL, "%s: \"%s\" does not say \"%s\"", id, sentence, says);
}

static void never(const char *id, const struct facts *facts)
{
	ck_assert_msg(due(id, facts) == RULE_NEVER, "%s: %lld", id, (long long)due(id, facts));
}

/* Not yet: in exactly so long. */
static void in(const char *id, const struct facts *facts, int64_t ms)
{
	ck_assert_msg(due(id, facts) == ms, "%s: in %lld ms, not %lld", id, (long long)due(id, facts), (long long)ms);
}

/* --- the table itself ----------------------------------------------------------------- */

START_TEST(nothing_fires_on_quiet_facts)
{
	for (size_t i = 0; i < rule_count; i++) {
		struct facts facts = quiet(rules[i].about);

		ck_assert_msg(rule_due_ms(&rules[i], &facts) > 0, "%s fires on nothing", rules[i].id);
	}
}
END_TEST

START_TEST(every_rule_is_whole_and_its_name_its_own)
{
	for (size_t i = 0; i < rule_count; i++) {
		struct facts facts = with_a_reason(rules[i].about);
		char sentence[400];
		struct text text = TEXT_OVER(sentence);

		ck_assert_ptr_eq(rule_named(rules[i].id), &rules[i]); /* the first of that name is this one */
		ck_assert_str_ne(rules[i].source, "");
		ck_assert_msg(rule_say(&rules[i], &facts, &text), "%s: an unknown {name}", rules[i].id);
		ck_assert_msg(!text.cut && strchr(sentence, '{') == NULL && sentence[0] != '\0', "%s", sentence);
		ck_assert_msg((rules[i].severity == SEVERITY_STOP) == (rules[i].holds_up != NULL), "%s", rules[i].id);
		ck_assert_msg(is_of_key(rules[i].about) || rules[i].over == OVER_NEVER, "%s", rules[i].id);
		ck_assert_msg(!is_of_key(rules[i].about) || rules[i].severity == SEVERITY_STOP, "%s", rules[i].id);
		ck_assert_str_ne(rule_about_words(rules[i].about), "?");
	}
	ck_assert_ptr_null(rule_named("no such rule"));
}
END_TEST

START_TEST(the_table_runs_from_stops_to_notes)
{
	for (size_t i = 0; i + 1 < rule_count; i++)
		ck_assert_int_ge(rules[i].severity, rules[i + 1].severity);
}
END_TEST

/* The binding rule of the whole program. */
START_TEST(no_sentence_says_that_food_is_safe)
{
	for (size_t i = 0; i < rule_count; i++)
		ck_assert_msg(strstr(rules[i].sentence, " safe") == NULL, "%s", rules[i].sentence);
}
END_TEST

/* Whatever is no name of the rule's own subject is none, were it one of all the others. */
START_TEST(a_name_of_another_subject_is_none)
{
	static const struct rule own[] = {
		{ .about = ABOUT_LOAD, .sentence = "{held}" },
		{ .about = ABOUT_HOUSE, .sentence = "{kept_lot}" },
		{ .about = ABOUT_KEY_TAKE, .sentence = "{recalled}" },
	};

	for (size_t i = 0; i < sizeof(own) / sizeof(own[0]); i++)
		for (int about = 0; about < ABOUT_COUNT; about++) {
			struct rule rule = { .about = (enum rule_about)about, .sentence = own[i].sentence };
			struct facts facts = quiet(rule.about);
			char sentence[100];
			struct text text = TEXT_OVER(sentence);
			bool is_own = rule.about == own[i].about ||
			              (own[i].about == ABOUT_KEY_TAKE && rule.about == ABOUT_RECALL);

			ck_assert_msg(rule_say(&rule, &facts, &text) == is_own, "%s of subject %d", rule.sentence,
			              about);
		}
}
END_TEST

START_TEST(an_unknown_name_in_a_sentence_is_noticed)
{
	struct rule rule = { .about = ABOUT_HOUSE, .sentence = "{elevation}: {nothing of the kind}" };
	struct facts facts = quiet(ABOUT_HOUSE);
	char sentence[100];
	struct text text = TEXT_OVER(sentence);

	ck_assert(!rule_say(&rule, &facts, &text));
}
END_TEST

/* --- the house -------------------------------------------------------------------------- */

START_TEST(elevation)
{
	struct facts facts = quiet(ABOUT_HOUSE);

	never("elevation-unset", &facts);
	never("elevation-changed", &facts);
	facts.house.elevation_before = feet(300);
	fires("elevation-changed", &facts, "On the last day it was 300 ft");
	fires("elevation-changed", &facts, "before the next load (h, elevation)");
	facts.house.elevation.known = false;
	never("elevation-changed", &facts); /* the worse rule says it */
	fires("elevation-unset", &facts, "no process");
	facts.house.elevation = feet(8000);
	never("above-tables", &facts);
	facts.house.elevation.slack_um = 1; /* perhaps above it */
	fires("above-tables", &facts, "8,000 ft");
}
END_TEST

START_TEST(boiling_point_by_more_than_the_weather_moves_it)
{
	struct facts facts = quiet(ABOUT_HOUSE);

	facts.house.boil_off_mf = 2500;
	never("boil-disagrees", &facts);
	facts.house.boil_off_mf = 2501;
	fires("boil-disagrees", &facts, "2.5 F hotter");
	facts.house.boil_off_mf = -2500;
	never("boil-disagrees", &facts);
	facts.house.boil_off_mf = -2600;
	fires("boil-disagrees", &facts, "2.6 F cooler");
}
END_TEST

START_TEST(warmth_of_the_store)
{
	struct facts facts = quiet(ABOUT_HOUSE);

	never("storage-warm", &facts); /* not read */
	never("storage-hot", &facts);
	facts.house.storage_mf = 70000;
	never("storage-warm", &facts);
	facts.house.storage_mf = 70001;
	facts.house.storage_ms = 24 * 60 * MINUTE;
	fires("storage-warm", &facts, "70.0 F");
	facts.house.storage_ms++;
	never("storage-warm", &facts); /* said on the day it was read */
	facts.house.storage_mf = 95000;
	never("storage-hot", &facts);
	facts.house.storage_mf = 95001;
	fires("storage-hot", &facts, "95.0 F"); /* however long ago */
	facts.house.storage_ms = 0;
	never("storage-warm", &facts); /* not said twice */
}
END_TEST

START_TEST(jars_that_wait_past_the_limit_of_the_house)
{
	struct facts facts = quiet(ABOUT_HOUSE);

	facts.house.waited_ms = 30 * MINUTE;
	never("jars-wait", &facts); /* none does */
	facts.house.waiting = 3;
	facts.house.waited_ms = 19 * MINUTE;
	in("jars-wait", &facts, MINUTE + 1);
	facts.house.waited_ms = 20 * MINUTE;
	in("jars-wait", &facts, 1);
	facts.house.waited_ms++;
	fires("jars-wait", &facts, "20 min, and the house limit is 20 min");
	facts.house.left_over = 1;
	fires("jars-over-room", &facts, "for 1 jar.");
	facts.house.unpublished = 2;
	fires("jars-unpublished", &facts, "2 jars");
}
END_TEST

START_TEST(a_day_later_than_accepted)
{
	struct facts facts = quiet(ABOUT_HOUSE);

	facts.house.plan_late_ms = 100 * MINUTE;
	facts.house.plan_limit_ms = 30 * MINUTE;
	facts.house.finish_words = "17:40";
	never("plan-behind", &facts); /* no plan runs */
	facts.house.plan_runs = true;
	facts.house.plan_late_ms = 10 * MINUTE;
	in("plan-behind", &facts, 20 * MINUTE + 1); /* at the soonest */
	facts.house.plan_late_ms = 30 * MINUTE;
	in("plan-behind", &facts, 1);
	facts.house.plan_late_ms++;
	fires("plan-behind", &facts, "about 17:40 now, 30 min later");
	facts.house.plan_late_ms = 67 * MINUTE;
	fires("plan-behind", &facts, "about 17:40 now, 1 h 7 min later"); /* as the head line has it */
	facts.house.plan_late_ms = -5 * MINUTE;
	in("plan-behind", &facts, 35 * MINUTE + 1);
}
END_TEST

START_TEST(jars_a_year_old)
{
	struct facts facts = quiet(ABOUT_HOUSE);

	facts.house.kept_ms = 2 * YEAR;
	never("jars-old", &facts); /* none is kept */
	facts.house.kept_lot = "2025-09-01-B2";
	facts.house.kept_ms = YEAR;
	in("jars-old", &facts, 1);
	facts.house.kept_ms++;
	fires("jars-old", &facts, "2025-09-01-B2");
}
END_TEST

/* --- a load -------------------------------------------------------------------------------- */

START_TEST(a_hold_shorter_than_required_even_by_a_second)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.held_ms = 0;
	never("hold-short", &facts); /* it has not been left yet */
	facts.load.hold_over = true;
	facts.load.held_ms = 10 * MINUTE;
	never("hold-short", &facts);
	facts.load.held_ms = 10 * MINUTE - 1000;
	fires("hold-short", &facts, "ran 9:59 of 10:00");
	facts.load.held_ms = 10 * MINUTE - 1;
	fires("hold-short", &facts, "NOT VALID");
}
END_TEST

START_TEST(a_vent_cut_short)
{
	struct facts facts = quiet(ABOUT_LOAD);

	never("vent-short", &facts); /* this canner has none of its own */
	facts.load.vent_held_ms = 10 * MINUTE;
	never("vent-short", &facts);
	facts.load.vent_held_ms--;
	fires("vent-short", &facts, "vented 9:59 of 10:00");
}
END_TEST

START_TEST(what_is_not_valid_is_said_once)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.verdict = VERDICT_NOT_VALID;
	fires("process-not-valid", &facts, "a reason");
	facts.load.hold_over = true;
	facts.load.held_ms = 0;
	never("process-not-valid", &facts);
	facts = quiet(ABOUT_LOAD);
	facts.load.verdict = VERDICT_UNKNOWN;
	fires("process-unknown", &facts, "process unknown, and no seal makes it known. Why: a reason.");
}
END_TEST

START_TEST(a_notebook_of_a_wrong_process)
{
	struct facts facts = quiet(ABOUT_NOTEBOOK);

	facts.notebook.verdict = VERDICT_UNKNOWN;
	never("notebook-not-valid", &facts);
	facts.notebook.verdict = VERDICT_NOT_VALID;
	fires("notebook-not-valid", &facts, "Discard 3 jars of 2026-09-14-B1 (e, then f), do not taste");
	facts.notebook.fateless = 0;
	never("notebook-not-valid", &facts); /* each has its fate */
}
END_TEST

/* What can be wrong with a load, and how far its jars are: bits of a number, so that all
 * of it is gone through together. */
enum {
	HELD_SHORT = 1,
	VENTED_SHORT = 2,
	MARKED = 4,
	ON_RACK = 8,
	NO_FATE = 16,
	WINDOW = 32,
	OVER = 64,
	COLD = 128,
	SLOW = 256,
	ALL_BITS = 512
};

static struct facts load_in_a_bad_way(int bits)
{
	struct about_load load = quiet_load;
	bool wrong = (bits & (MARKED | HELD_SHORT | VENTED_SHORT)) != 0;

	load.hold_over = true;
	load.held_ms = (bits & HELD_SHORT) != 0 ? 5 * MINUTE : 10 * MINUTE;
	load.vent_held_ms = (bits & VENTED_SHORT) != 0 ? 5 * MINUTE : 10 * MINUTE;
	load.verdict = wrong ? VERDICT_NOT_VALID : VERDICT_VALID;
	load.cooling_out = (bits & ON_RACK) != 0;
	load.in_canner = !load.cooling_out;
	load.cold = (bits & COLD) != 0 && wrong && (bits & (HELD_SHORT | VENTED_SHORT)) == 0;
	if ((bits & SLOW) != 0 && wrong) {
		load.acidity = ACIDITY_LOW_ACID;
		load.method = METHOD_WEIGHTED_GAUGE;
		load.way_limit_ms = 120 * MINUTE;
		load.way_ms = 121 * MINUTE;
	}
	load.fateless = (bits & NO_FATE) != 0 && load.cooling_out ? 3 : 0;
	load.windowed = (bits & WINDOW) != 0 && (load.fateless > 0 || !load.cooling_out) ? 3 : 0;
	load.window_hours = 2;
	load.window_in_ms = (bits & OVER) != 0 ? 0 : 1;
	return FACTS(load, load);
}

/* Redo, fates and bin are one matter: one rule speaks, and after the window it is the
 * one that says to discard. */
START_TEST(of_one_load_only_what_can_still_be_done_is_said)
{
	static const char *const ids[] = {
		"hold-short",    "vent-short",     "process-not-valid", "jars-without-fate",
		"window-closed", "not-valid-cold", "not-processed",     "low-acid-slow-heat"
	};
	int said = 0;

	for (int bits = 0; bits < ALL_BITS; bits++) {
		struct facts facts = load_in_a_bad_way(bits);
		bool wrong = facts.load.verdict == VERDICT_NOT_VALID;
		bool over = facts.load.windowed > 0 && (bits & OVER) != 0;
		bool decided = wrong && facts.load.cooling_out && facts.load.fateless == 0 && (bits & OVER) != 0;
		int fired = 0;

		for (size_t i = 0; i < sizeof(ids) / sizeof(ids[0]); i++)
			fired += due(ids[i], &facts) <= 0;
		ck_assert_msg(fired == (over || (wrong && !decided) || facts.load.fateless > 0), "%d at once, bits %d",
		              fired, bits);
		ck_assert_msg((due("window-closed", &facts) <= 0) == over, "bits %d", bits);
		said += fired;
	}
	ck_assert_int_gt(said, 64);
}
END_TEST

START_TEST(what_was_never_heated_is_not_told_to_be_done_again)
{
	struct facts facts = load_in_a_bad_way(MARKED | COLD);

	facts.load.called.digit = 3;
	fires("not-valid-cold", &facts,
	      "Take 2026-09-14-B1 back out (on the board 3, u), fix it and load it again, or give it up (x)");
	facts = load_in_a_bad_way(MARKED | COLD | ON_RACK | NO_FATE);
	fires("not-processed", &facts,
	      "fridge, freezer, fixed and processed, or discard. Nothing was heated (a reason).");
	facts = load_in_a_bad_way(MARKED | SLOW);
	fires("low-acid-slow-heat", &facts,
	      "discard it (f), do not taste: low-acid, 2 h 1 min without the heat of a hold");
}
END_TEST

START_TEST(before_the_window_closes_the_cause_is_said_and_all_that_can_be_done)
{
	struct facts facts = load_in_a_bad_way(HELD_SHORT | VENTED_SHORT | ON_RACK | NO_FATE | WINDOW);

	fires("hold-short", &facts,
	      "Redo 2026-09-14-B1 in full within 2 h, or fridge, freezer, discard (x; on the rack");
	never("vent-short", &facts);
	never("process-not-valid", &facts);
	never("jars-without-fate", &facts);
	in("window-closed", &facts, 1);
	facts.load.window_in_ms = 0;
	never("hold-short", &facts);
	fires("window-closed", &facts, "Discard 3 jars of 2026-09-14-B1, do not taste: the 2 h");
	facts.load.larger_than_tested = true;
	never("jar-too-large", &facts); /* it says fridge or freezer */
	facts.load.over_half = 1;
	never("liquid-over-half", &facts); /* it says fridge */
	facts.load.verdict = VERDICT_VALID;
	fires("liquid-over-half", &facts, "refrigerate 1 jar"); /* a sealed one, of a right process */
}
END_TEST

START_TEST(low_acid_food_without_pressure)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.acidity = ACIDITY_LOW_ACID;
	for (enum method method = 0; method < METHOD_COUNT; method++) {
		facts.load.method = method;
		if (method == METHOD_BOILING_WATER || method == METHOD_STEAM)
			fires("low-acid-no-pressure", &facts, "Big kettle");
		else
			never("low-acid-no-pressure", &facts);
	}
	facts.load.method = METHOD_BOILING_WATER;
	facts.load.acidity = ACIDITY_ACIDIFIED;
	never("low-acid-no-pressure", &facts);
}
END_TEST

START_TEST(a_jar_larger_than_tested)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.larger_than_tested = true;
	fires("jar-too-large", &facts, "larger than any tested");
}
END_TEST

/* NCHFP on steam canners: 45 min or less, the elevation's part included. */
START_TEST(steam_over_45_minutes)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.in_canner = true;
	facts.load.minutes = 46;
	never("steam-too-long", &facts); /* boiling water may be longer */
	facts.load.method = METHOD_STEAM;
	fires("steam-too-long", &facts, "45 min");
	facts.load.minutes = 45;
	never("steam-too-long", &facts); /* no steam yet */
	facts.load.steamed_ms = 44 * MINUTE;
	in("steam-too-long", &facts, MINUTE + 1);
	facts.load.steamed_ms = 45 * MINUTE;
	in("steam-too-long", &facts, 1);
	facts.load.steamed_ms++;
	fires("steam-too-long", &facts, "has steamed 45 min");
	facts.load.in_canner = false;
	never("steam-too-long", &facts);
}
END_TEST

START_TEST(another_elevation_asks_more)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.asks_more = true;
	fires("elevation-other", &facts, "got 10 min; at the elevation set now it is 15 min");
	facts.load.verdict = VERDICT_NOT_VALID;
	never("elevation-other", &facts);
}
END_TEST

START_TEST(a_clock_begun_sooner_than_it_can_be_there)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.in_canner = true;
	facts.load.soon_ms = 2 * MINUTE;
	facts.load.reached_ms = 2 * MINUTE;
	never("hold-early", &facts);
	facts.load.reached_ms--;
	fires("hold-early", &facts, "after only 1:59");
	facts.load.in_canner = false;
	never("hold-early", &facts); /* too late to press l */
}
END_TEST

START_TEST(seals_not_looked_at_for_24_hours)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.unchecked = 9;
	facts.load.seals_due_in_ms = -1;
	never("seals-overdue", &facts); /* not out of the canner */
	facts.load.cooling_out = true;
	fires("seals-overdue", &facts, "over 24 h");
	facts.load.seals_due_in_ms = 0;
	in("seals-overdue", &facts, 1);
	facts.load.seals_due_in_ms = 5;
	in("seals-overdue", &facts, 6);
	facts.load.seals_due_in_ms = -1;
	facts.load.unchecked = 0;
	never("seals-overdue", &facts);
}
END_TEST

/* 24 h for a jar that did not seal, 2 h for a process that was wrong. */
START_TEST(a_window_that_closes_and_is_closed)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.window_in_ms = -1;
	facts.load.fateless = 2;
	never("window-closed", &facts); /* none on which a window closes */
	never("window-closing", &facts);
	facts.load.windowed = 2;
	fires("window-closed", &facts, "Discard 2 jars of 2026-09-14-B1, do not taste: the 24 h");
	never("window-closing", &facts);
	facts.load.window_in_ms = 0;
	fires("window-closed", &facts, "do not taste");
	facts.load.window_in_ms = 1;
	in("window-closed", &facts, 1);
	fires("window-closing", &facts, "1 min left");
	facts.load.window_in_ms = HOUR;
	fires("window-closing", &facts, "60 min left");
	facts.load.window_in_ms = HOUR + 1;
	in("window-closing", &facts, 1);
	facts.load.window_hours = 2;
	facts.load.window_in_ms = 0;
	fires("window-closed", &facts, "the 2 h");
}
END_TEST

START_TEST(liquid_lost)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.cooling_out = true;
	facts.load.fateless = 1;
	fires("jars-without-fate", &facts, "1 jar of");
	never("liquid-over-half", &facts);
	facts.load.over_half = 1;
	fires("liquid-over-half", &facts, "eat in 2-3 days");
	never("jars-without-fate", &facts); /* not said twice */
	facts.load.liquid_lost = 4;
	never("liquid-lost", &facts); /* 4 of 9 */
	facts.load.liquid_lost = 5;
	fires("liquid-lost", &facts, "5 jars");
	facts.load.jars = 10;
	never("liquid-lost", &facts); /* exactly half */
}
END_TEST

START_TEST(small_things_about_a_load)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.broken = 1;
	fires("jar-broke", &facts, "1 jar");
	facts.load.practice_row = true;
	fires("practice-row", &facts, "Common practice, no source");
	facts.load.in_canner = true;
	never("hold-again", &facts);
	facts.load.hold_starts = 2;
	fires("hold-again", &facts, "hold number 2");
	facts.load.minutes = 30;
	never("deep-water", &facts);
	facts.load.minutes = 31;
	fires("deep-water", &facts, "2 in of water");
	facts.load.method = METHOD_WEIGHTED_GAUGE;
	never("deep-water", &facts);
}
END_TEST

START_TEST(a_wall_clock_before_the_log_s_last_entry)
{
	struct facts facts = quiet(ABOUT_HOUSE);
	struct facts key = quiet(ABOUT_KEY_CLOCK);

	facts.house.clock.behind_ms = MINUTE;
	never("clock-behind", &facts);
	facts.house.clock.behind_ms++;
	facts.house.clock.says = "Mon 14 Sep 08:00";
	facts.house.clock.last_entry = "Mon 14 Sep 11:00";
	fires("clock-behind", &facts, "it says Mon 14 Sep 08:00, before the last entry");
	key.key_clock.clock.behind_ms = MINUTE;
	never("key-clock-behind", &key);
	key.key_clock.clock = facts.house.clock;
	fires("key-clock-behind", &key, "(Mon 14 Sep 11:00)");
}
END_TEST

START_TEST(what_a_mended_elevation_asks)
{
	struct facts facts = quiet(ABOUT_LOAD);

	facts.load.in_canner = true;
	facts.load.raised = "";
	never("process-raised", &facts);
	facts.load.raised = "hold 35 min: 15 more";
	fires("process-raised", &facts, "Big kettle: hold 35 min: 15 more. The elevation was wrong");
	facts.load.hold_over = true;
	never("process-raised", &facts);
}
END_TEST

/* --- what stands ------------------------------------------------------------------------------ */

START_TEST(low_acid_food_that_stood_too_long_is_a_stop_and_other_food_a_caution)
{
	struct facts facts = quiet(ABOUT_WAITING);

	never("low-acid-jars-stood", &facts);
	never("jars-stood", &facts);
	facts.waiting.standing.stands = true;
	facts.waiting.standing.stood_ms = 2 * HOUR;
	facts.waiting.standing.limit_ms = 2 * HOUR;
	in("jars-stood", &facts, 1);
	never("low-acid-jars-stood", &facts);
	facts.waiting.standing.stood_ms = 3 * HOUR + 12 * MINUTE;
	fires("jars-stood", &facts, "filled 3 h 12 min ago, over 2 h");
	facts.waiting.standing.acidity = ACIDITY_LOW_ACID;
	facts.waiting.standing.limit_ms = HOUR;
	never("jars-stood", &facts);
	fires("low-acid-jars-stood", &facts, "or discard");
	facts.waiting.standing.stood_ms = HOUR;
	in("low-acid-jars-stood", &facts, 1);
}
END_TEST

START_TEST(a_pot_that_stands)
{
	struct facts facts = quiet(ABOUT_BATCH);

	never("pot-stands", &facts);
	facts.batch.standing.stands = true;
	facts.batch.standing.limit_ms = HOUR;
	facts.batch.standing.stood_ms = 20 * MINUTE;
	in("pot-stands", &facts, 1);
	facts.batch.standing.stood_ms = 61 * MINUTE;
	fires("pot-stands", &facts, "off the heat for 1 h 1 min");
	facts.batch.standing.acidity = ACIDITY_LOW_ACID;
	never("pot-stands", &facts); /* the stop speaks */
	fires("low-acid-pot-stood", &facts, "again (x), or discard");
}
END_TEST

/* A figure is another thing in a list of figures: where a sentence names one as a key, it says of which view. */
START_TEST(a_station_key_in_a_sentence_is_said_to_be_the_boards)
{
	int named = 0;

	for (size_t i = 0; i < rule_count; i++) {
		const char *sentence = rules[i].sentence;

		if (strstr(sentence, "{digit}") == NULL && strstr(sentence, "press 0") == NULL)
			continue;
		named++;
		ck_assert_msg(strstr(sentence, "n the board ") != NULL, "%s: %s", rules[i].id, sentence);
	}
	ck_assert_int_gt(named, 0);
}
END_TEST

/* --- runs, batches, clocks ------------------------------------------------------------------- */

START_TEST(water_of_a_juicer)
{
	struct facts facts = quiet(ABOUT_RUN);

	facts.run.water_in_ms = -1;
	never("water-overdue", &facts); /* no heat yet */
	facts.run.dry_in_ms = 40 * MINUTE;
	facts.run.water_counts = true;
	fires("water-overdue", &facts, "NOW");
	facts.run.water_in_ms = 0;
	fires("water-overdue", &facts, "Big kettle");
	facts.run.water_in_ms = 1;
	in("water-overdue", &facts, 1);
	in("pan-dry", &facts, 40 * MINUTE);
	facts.run.water_in_ms = -40 * MINUTE + 1;
	facts.run.dry_in_ms = 1;
	fires("water-overdue", &facts, "top up");
	in("pan-dry", &facts, 1);
	for (facts.run.dry_in_ms = 0; facts.run.dry_in_ms > -2; facts.run.dry_in_ms--) {
		fires("pan-dry", &facts, "Heat OFF at Big kettle");
		fires("pan-dry", &facts, "no water into a hot dry pan");
		never("water-overdue", &facts); /* it says to pour */
	}
	facts.run.water_counts = false;
	never("pan-dry", &facts); /* the heat is off */
}
END_TEST

/* Past its range and not seen; a jar not shaken; packed before its ten days: MSU 01600528 and 01600529. */
START_TEST(dryings)
{
	struct facts facts = quiet(ABOUT_DRYING);

	never("pretreat", &facts);
	facts.drying.pretreat = "boiling water 30 s";
	fires("pretreat", &facts, "boiling water 30 s");
	facts.drying.dries = true;
	facts.drying.high_in_ms = 0;
	never("dries-too-long", &facts); /* somebody looks */
	facts.drying.look_in_ms = 0;
	fires("dries-too-long", &facts, "Big kettle");
	facts.drying.high_in_ms = 1;
	in("dries-too-long", &facts, 1);
	never("not-shaken", &facts);
	facts.drying.dries = false;
	facts.drying.conditions = true;
	fires("not-shaken", &facts, "water on its lid");
	facts.drying.look_in_ms = 1;
	in("not-shaken", &facts, 1);
	never("not-conditioned", &facts);
	facts.drying.packs = true;
	facts.drying.conditioned_ms = facts.drying.condition_ms - 1;
	fires("not-conditioned", &facts, "of 10 days");
	facts.drying.conditioned_ms++;
	never("not-conditioned", &facts);
}
END_TEST

START_TEST(batches)
{
	struct facts facts = quiet(ABOUT_BATCH);

	facts.batch.in_pot = true;
	facts.batch.canner_in_ms = 50 * MINUTE;
	never("pot-nowhere", &facts);
	facts.batch.nowhere = true;
	fires("pot-nowhere", &facts, "before 50 min");
	never("pot-no-canner", &facts);
	facts.batch.canner_in_ms = -1;
	fires("pot-no-canner", &facts, "quince jelly");
	never("pot-nowhere", &facts);
	facts.batch.in_pot = false;
	never("pot-no-canner", &facts);
	facts.batch.verdict = VERDICT_UNKNOWN;
	fires("batch-unknown", &facts, "a reason");
	facts.batch.verdict = VERDICT_NOT_VALID;
	fires("batch-not-valid", &facts, "NOT VALID (a reason)");
	fires("batch-not-valid", &facts, "1, then u, before the next step");
	facts.batch.published = false;
	fires("no-published-process", &facts, "Refrigerate");
}
END_TEST

START_TEST(running_phases)
{
	struct facts facts = quiet(ABOUT_CLOCK);

	facts.clock.restarted = true;
	never("restarted-in-phase", &facts); /* nothing is timed */
	facts.clock.clock = CLOCK_TIMED;
	fires("restarted-in-phase", &facts, "come-up");
	facts.clock.on_rack = true;
	never("restarted-in-phase", &facts);
	facts = quiet(ABOUT_CLOCK);
	facts.clock.wall_step_ms = -MINUTE;
	never("wall-clock-moved", &facts);
	facts.clock.wall_step_ms--;
	fires("wall-clock-moved", &facts, "moved back 1 min");
	facts.clock.wall_step_ms = MINUTE;
	never("wall-clock-moved", &facts);
	facts.clock.wall_step_ms++;
	ck_assert_int_le(due("wall-clock-moved", &facts), 0);
	facts.clock.passed_ms = 31 * MINUTE;
	never("hold-not-begun", &facts); /* nothing to be seen */
	facts.clock.clock = CLOCK_WATCHED;
	fires("hold-not-begun", &facts, "more than 30 min");
	facts.clock.passed_ms = 30 * MINUTE;
	in("hold-not-begun", &facts, 1);
	facts.clock.is_loaded = true;
	facts.clock.passed_ms = 10 * MINUTE;
	in("loaded-no-hold", &facts, 1);
	facts.clock.passed_ms++;
	fires("loaded-no-hold", &facts, "for 10 min");
	never("pot-not-rinsed", &facts);
	facts.clock.is_rinse = true;
	fires("pot-not-rinsed", &facts, "Rinse");
	facts.clock.passed_ms = 10 * MINUTE;
	in("pot-not-rinsed", &facts, 1);
}
END_TEST

START_TEST(jars_that_no_canner_takes)
{
	struct facts facts = quiet(ABOUT_WAITING);

	facts.waiting.some_canner = false;
	fires("no-canner-takes", &facts, "9 jars of quince jelly");
	facts.waiting.larger_than_tested = true;
	fires("large-jars-wait", &facts, "larger than any tested");
	never("no-canner-takes", &facts);
	facts.waiting.standing.acidity = ACIDITY_LOW_ACID;
	never("low-acid-waits", &facts);
	facts.waiting.pressure_canner = false;
	fires("low-acid-waits", &facts, "no pressure canner");
	never("large-jars-wait", &facts);
	facts.waiting.published = false;
	never("low-acid-waits", &facts); /* another rule says it */
	never("no-canner-takes", &facts);
}
END_TEST

START_TEST(fates)
{
	struct facts facts = quiet(ABOUT_FATE);

	facts.fate.in_ms = -1;
	never("fate-closed", &facts); /* no deadline */
	facts.fate.limited = true;
	fires("fate-closed", &facts, "do not taste");
	never("fate-closing", &facts);
	facts.fate.in_ms = 0;
	fires("fate-closed", &facts, "the time to reprocess is over");
	facts.fate.in_ms = 1;
	in("fate-closed", &facts, 1);
	fires("fate-closing", &facts, "1 min left to reprocess");
	facts.fate.in_ms = HOUR + 1;
	in("fate-closing", &facts, 1);
	never("fridge-ends", &facts);
	facts.fate.in_fridge = true; /* by then it is eaten */
	facts.fate.jars = 2;
	never("fate-closing", &facts);
	fires("fridge-ends", &facts, "Eat 2 jars of");
	facts.fate.in_ms = 12 * HOUR + 1;
	in("fridge-ends", &facts, 1);
	facts.fate.in_ms = 0;
	never("fridge-ends", &facts);
	never("fate-closed", &facts);
	fires("fridge-over", &facts, "Throw out what is left of 2 jars of");
}
END_TEST

START_TEST(a_recall_is_open_until_its_last_jar)
{
	struct facts facts = quiet(ABOUT_RECALL);

	facts.recall.recall = "lid box Box A";
	facts.recall.why = "buckled lids";
	facts.recall.noun = "jar";
	never("recall-open", &facts);
	facts.recall.recalled = 1;
	fires("recall-open", &facts, "Find 1 jar of the recall (R): lid box Box A, buckled lids.");
}
END_TEST

/* --- stations, lids, people, supplies ---------------------------------------------------------- */

START_TEST(a_gauge_a_year_after_its_check)
{
	struct facts facts = quiet(ABOUT_STATION);

	never("gauge-unchecked", &facts); /* it has none */
	facts.station.dial_gauge = true;
	fires("gauge-unchecked", &facts, "no check is on record");
	facts.station.gauge_known = true;
	facts.station.gauge_ms = YEAR;
	in("gauge-unchecked", &facts, 1);
	facts.station.gauge_ms++;
	fires("gauge-unchecked", &facts, "Big kettle checked: the last check is over a year old");
}
END_TEST

START_TEST(failures_clearly_above_the_others)
{
	static const struct {
		const char *id;
		enum rule_about about;
	} clusters[] = {
		{ "lid-box-failures", ABOUT_LID_BOX },
		{ "canner-failures", ABOUT_STATION },
		{ "person-failures", ABOUT_PERSON },
	};
	struct facts facts = quiet(clusters[_i].about);
	struct two_groups *seals = clusters[_i].about == ABOUT_LID_BOX   ? &facts.lid_box.seals
	                           : clusters[_i].about == ABOUT_STATION ? &facts.station.seals
	                                                                 : &facts.person.seals;

	*seals = (struct two_groups){ .looked = 10, .failed = 3, .others_looked = 60, .others_failed = 2 };
	never(clusters[_i].id, &facts); /* 0.0187 */
	seals->others_looked = 90;      /* 0.0066 */
	fires(clusters[_i].id, &facts, "2 of 90");
	seals->others_looked = 0;
	seals->others_failed = 0;
	never(clusters[_i].id, &facts);
}
END_TEST

START_TEST(lid_boxes)
{
	struct facts facts = quiet(ABOUT_LID_BOX);

	facts.lid_box.lids_used = 60;
	never("lids-used-twice", &facts);
	facts.lid_box.lids_used = 61;
	fires("lids-used-twice", &facts, "61 jars have its lids, and it had 60");
	facts.lid_box.twice = true;
	fires("lid-box-listed-twice", &facts, "Box A");
	never("lids-old", &facts); /* the day is not known */
	facts.lid_box.age_ms = 5 * YEAR;
	in("lids-old", &facts, 1);
	facts.lid_box.age_ms++;
	fires("lids-old", &facts, "over 5 years");
}
END_TEST

START_TEST(supplies_below_what_is_needed)
{
	static const struct {
		const char *id;
		enum supply_kind kind;
		bool is_lids;
	} kinds[] = {
		{ "jars-short", SUPPLY_JAR, false },          { "lids-short", SUPPLY_OTHER, true },
		{ "acid-short", SUPPLY_LEMON_JUICE, false },  { "acid-short", SUPPLY_CITRIC_ACID, false },
		{ "acid-short", SUPPLY_VINEGAR, false },      { "sugar-short", SUPPLY_SUGAR, false },
		{ "supply-short", SUPPLY_PECTIN_LOW, false }, { "supply-short", SUPPLY_CALCIUM_SOLUTION, false },
	};
	static const char *const all[] = { "jars-short", "lids-short", "acid-short", "sugar-short", "supply-short" };
	struct facts facts = quiet(ABOUT_SUPPLY);

	facts.supply.kind = kinds[_i].kind;
	facts.supply.is_lids = kinds[_i].is_lids;
	facts.supply.needed.amount = 10;
	for (size_t i = 0; i < sizeof(all) / sizeof(all[0]); i++)
		never(all[i], &facts); /* just enough */
	facts.supply.needed.amount = 11;
	for (size_t i = 0; i < sizeof(all) / sizeof(all[0]); i++)
		ck_assert_int_eq(due(all[i], &facts) <= 0, strcmp(all[i], kinds[_i].id) == 0);
	fires(kinds[_i].id, &facts, ", 10 here");
	facts.supply.needed.amount = 0;
	facts.supply.stock.amount = -5;
	never(kinds[_i].id, &facts); /* nothing is needed */
}
END_TEST

/* Three times 10 lb, each to the milligram, are 30 lb. */
START_TEST(what_is_as_much_as_can_be_measured_is_not_short)
{
	struct facts facts = quiet(ABOUT_SUPPLY);

	facts.supply.kind = SUPPLY_FRUIT;
	facts.supply.needed.measure = facts.supply.stock.measure = MEASURE_MASS;
	facts.supply.needed.amount = 13607772;
	facts.supply.stock.amount = 13607771;
	never("supply-short", &facts);
	facts.supply.stock.amount = 13500000;
	fires("supply-short", &facts, "Get ");
}
END_TEST

START_TEST(a_load_judged_anew)
{
	struct facts facts = quiet(ABOUT_SHELVED);

	facts.shelved.worse = true;
	fires("judged-anew", &facts, "Label 2026-09-14-B1 again by hand");
	never("judged-anew-blocks", &facts);
	facts.shelved.worse = false;
	facts.shelved.blocks = true;
	fires("judged-anew-blocks", &facts, "Do not eat or give away 2026-09-14-B1");
	never("judged-anew", &facts);
}
END_TEST

START_TEST(a_ledger_below_nothing)
{
	struct facts facts = quiet(ABOUT_SUPPLY);

	facts.supply.stock.amount = 0;
	never("stock-below-nothing", &facts);
	facts.supply.stock.amount = -1;
	fires("stock-below-nothing", &facts, "Count pints");
}
END_TEST

/* --- keys ----------------------------------------------------------------------------------------- */

static void holds(const struct facts *facts, const char *id, enum over over)
{
	const struct rule *rule = rule_holding(facts);

	ck_assert_msg(rule != NULL, "%s does not hold the key up", id);
	ck_assert_str_eq(rule->id, id);
	ck_assert_int_eq(rule->over, over);
}

START_TEST(a_load_without_a_process_is_held_up_for_good)
{
	struct facts facts = quiet(ABOUT_KEY_LOAD);

	ck_assert_ptr_null(rule_holding(&facts));
	facts.key_load.why = "no row";
	holds(&facts, "key-no-process", OVER_NEVER);
	facts.key_load.acidity = ACIDITY_LOW_ACID;
	holds(&facts, "key-low-acid", OVER_NEVER);
	facts.key_load.elevation_known = false;
	holds(&facts, "key-no-elevation", OVER_NEVER);
}
END_TEST

START_TEST(low_acid_food_that_stood_is_neither_loaded_nor_filled)
{
	struct facts facts = quiet(ABOUT_KEY_STOOD);

	facts.key_stood.standing.stands = true;
	facts.key_stood.standing.stood_ms = 3 * HOUR;
	facts.key_stood.standing.limit_ms = HOUR;
	ck_assert_ptr_null(rule_holding(&facts)); /* other food goes on, unknown */
	facts.key_stood.standing.acidity = ACIDITY_LOW_ACID;
	holds(&facts, "key-stood", OVER_NEVER);
	fires("key-stood", &facts, "quince jelly is low-acid and stood 3 h; 1 h is the limit");
	facts.key_stood.standing.stood_ms = HOUR;
	ck_assert_ptr_null(rule_holding(&facts));
	in("key-stood", &facts, 1);
}
END_TEST

START_TEST(a_batch_multiplied_too_far_needs_a_reason)
{
	struct facts facts = quiet(ABOUT_KEY_BATCH);

	facts.key_batch.multiple = 4;
	ck_assert_ptr_null(rule_holding(&facts));
	facts.key_batch.multiple = 5;
	holds(&facts, "key-over-limit", OVER_UNKNOWN);
	facts.key_batch.regular_pectin = true;
	facts.key_batch.multiple_max = 1;
	facts.key_batch.multiple = 1;
	ck_assert_ptr_null(rule_holding(&facts));
	facts.key_batch.multiple = 2;
	holds(&facts, "key-pectin-multiplied", OVER_UNKNOWN);
	facts = quiet(ABOUT_KEY_BATCH);
	facts.key_batch.why = "Not enough sugar";
	holds(&facts, "key-short", OVER_NEVER);
	facts.key_batch.recipe_refused = true;
	holds(&facts, "key-recipe-refused", OVER_NEVER);
}
END_TEST

START_TEST(acid_that_is_not_in_makes_it_not_valid)
{
	struct facts facts = quiet(ABOUT_KEY_FILL);

	ck_assert_ptr_null(rule_holding(&facts)); /* none is needed */
	facts.key_fill.acid_needed = true;
	holds(&facts, "key-acid", OVER_NOT_VALID);
	facts.key_fill.acid_in = true;
	ck_assert_ptr_null(rule_holding(&facts));
}
END_TEST

/* A539 (rev. 2015), Guide 1 and Guide 6: vinegar of 5 percent. */
START_TEST(weak_vinegar_is_not_valid_and_unknown_vinegar_unknown)
{
	struct facts facts = quiet(ABOUT_KEY_FILL);

	facts.key_fill.vinegar_tenths = 49;
	ck_assert_ptr_null(rule_holding(&facts)); /* none is asked */
	facts.key_fill.vinegar_asked = true;
	holds(&facts, "key-vinegar-weak", OVER_NOT_VALID);
	facts.key_fill.vinegar_tenths = 50;
	ck_assert_ptr_null(rule_holding(&facts));
	facts.key_fill.vinegar_tenths = 0;
	holds(&facts, "key-vinegar-not-said", OVER_UNKNOWN);
}
END_TEST

START_TEST(what_goes_on_against_a_rule)
{
	struct facts facts = quiet(ABOUT_KEY_AGAINST);

	ck_assert_ptr_null(rule_holding(&facts));
	facts.key_against.vent_cut = true;
	holds(&facts, "key-vent-short", OVER_NOT_VALID);
	facts = quiet(ABOUT_KEY_AGAINST);
	facts.key_against.earlier_start = true;
	holds(&facts, "key-earlier-start", OVER_UNKNOWN);
	facts = quiet(ABOUT_KEY_FATE);
	ck_assert_ptr_null(rule_holding(&facts));
	facts.key_fate.why = "Too late";
	holds(&facts, "key-fate", OVER_NEVER);
}
END_TEST

START_TEST(what_is_recalled_or_not_valid_is_not_taken_out)
{
	struct facts facts = quiet(ABOUT_KEY_TAKE);

	ck_assert_ptr_null(rule_holding(&facts));
	facts.key_take.blocked = true;
	facts.key_take.why = "vent cut short";
	holds(&facts, "key-take-not-valid", OVER_NEVER);
	facts.key_take.recalled = 1;
	holds(&facts, "key-recalled", OVER_NEVER);
	facts.key_take.recalled = 0;
	facts.key_take.spoiled = 1; /* of which jars spoiled: neither, whatever its process was */
	holds(&facts, "key-lot-spoiled", OVER_NEVER);
	facts = quiet(ABOUT_KEY_FATE); /* another key does not take them */
	ck_assert_ptr_null(rule_holding(&facts));
}
END_TEST

START_TEST(one_spoiled_jar_speaks_for_its_lot)
{
	struct facts facts = quiet(ABOUT_SPOILED);

	facts.spoiled.lot = "2026-09-14-A1";
	facts.spoiled.jars = 7;
	facts.spoiled.noun = "jars";
	never("lot-spoiled", &facts);
	facts.spoiled.spoiled = 3;
	fires("lot-spoiled", &facts,
	      "3 of 7 jars of 2026-09-14-A1 spoiled: do not eat the others. Look at each, then recall the lot (R).");
}
END_TEST

static const struct listed_test listed[] = {
	TEST(nothing_fires_on_quiet_facts),
	TEST(every_rule_is_whole_and_its_name_its_own),
	TEST(the_table_runs_from_stops_to_notes),
	TEST(no_sentence_says_that_food_is_safe),
	TEST(a_name_of_another_subject_is_none),
	TEST(an_unknown_name_in_a_sentence_is_noticed),
	TEST(elevation),
	TEST(boiling_point_by_more_than_the_weather_moves_it),
	TEST(warmth_of_the_store),
	TEST(jars_that_wait_past_the_limit_of_the_house),
	TEST(a_day_later_than_accepted),
	TEST(jars_a_year_old),
	TEST(a_hold_shorter_than_required_even_by_a_second),
	TEST(a_vent_cut_short),
	TEST(what_is_not_valid_is_said_once),
	TEST(a_notebook_of_a_wrong_process),
	TEST(of_one_load_only_what_can_still_be_done_is_said),
	TEST(before_the_window_closes_the_cause_is_said_and_all_that_can_be_done),
	TEST(what_was_never_heated_is_not_told_to_be_done_again),
	TEST(low_acid_food_without_pressure),
	TEST(a_jar_larger_than_tested),
	TEST(steam_over_45_minutes),
	TEST(another_elevation_asks_more),
	TEST(a_clock_begun_sooner_than_it_can_be_there),
	TEST(seals_not_looked_at_for_24_hours),
	TEST(a_window_that_closes_and_is_closed),
	TEST(liquid_lost),
	TEST(small_things_about_a_load),
	TEST(low_acid_food_that_stood_too_long_is_a_stop_and_other_food_a_caution),
	TEST(a_pot_that_stands),
	TEST(what_a_mended_elevation_asks),
	TEST(a_wall_clock_before_the_log_s_last_entry),
	TEST(a_station_key_in_a_sentence_is_said_to_be_the_boards),
	TEST(water_of_a_juicer),
	TEST(dryings),
	TEST(batches),
	TEST(running_phases),
	TEST(jars_that_no_canner_takes),
	TEST(fates),
	TEST(a_recall_is_open_until_its_last_jar),
	TEST(a_gauge_a_year_after_its_check),
	EACH(failures_clearly_above_the_others, 0, 3),
	TEST(lid_boxes),
	EACH(supplies_below_what_is_needed, 0, 8),
	TEST(what_is_as_much_as_can_be_measured_is_not_short),
	TEST(a_load_judged_anew),
	TEST(a_ledger_below_nothing),
	TEST(a_load_without_a_process_is_held_up_for_good),
	TEST(low_acid_food_that_stood_is_neither_loaded_nor_filled),
	TEST(a_batch_multiplied_too_far_needs_a_reason),
	TEST(acid_that_is_not_in_makes_it_not_valid),
	TEST(weak_vinegar_is_not_valid_and_unknown_vinegar_unknown),
	TEST(what_goes_on_against_a_rule),
	TEST(what_is_recalled_or_not_valid_is_not_taken_out),
	TEST(one_spoiled_jar_speaks_for_its_lot),
};

TESTS("rules", listed)
