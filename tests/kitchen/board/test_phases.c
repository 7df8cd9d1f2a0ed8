/* The phases of each method: their order, their lengths, what ends them. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/board/kinds.h"
#include "kitchen/canner/canner.h"
#include "kitchen/step/step.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

/* --- as the trade has them ------------------------------------------------------ */

#define LONGEST 12

/* The order of phases: boiling water A539; steam NCHFP, MU, MSU; pressure A539, PNW421, KSU.
 * "unload" and the seal check (A539, MSU-951) follow them all.
 * Fixed lengths: vent 10 min (A539, PNW421, KSU); wait 10 min and rest 5 min
 * (A539, rev. 2015, pages 1-22 and 1-18); seal check after 12 h (A539).
 * Holds at 4,650 ft: jelly in sterile half-pints 10 min (A539 Guide 7);
 * raw green beans in pints 20 min (A539 Guide 4). */
static const struct walk {
	int digit;
	enum station_kind kind;
	struct {
		enum phase_name name;
		int64_t length_ms; /* 0: no clock */
		enum phase_kind kind;
	} phase[LONGEST];
} walks[METHOD_COUNT] = {
	[STATION_BOILING_WATER] = { BIG_KETTLE,
	                            STATION_BOILING_WATER,
	                            { { PHASE_LOADED, 0, PHASE_BY_HAND },
	                              { PHASE_COME_UP, 0, PHASE_WATCHED },
	                              { PHASE_HOLD, 10 * MINUTE_MS, PHASE_TIMED },
	                              { PHASE_REST, 5 * MINUTE_MS, PHASE_TIMED },
	                              { PHASE_UNLOAD, 0, PHASE_BY_HAND },
	                              { PHASE_COOLING, 12 * HOUR_MS, PHASE_TIMED },
	                              { PHASE_SEAL_CHECK, 0, PHASE_BY_HAND } } },
	[STATION_STEAM] = { STEAM_CANNER,
	                    STATION_STEAM,
	                    { { PHASE_LOADED, 0, PHASE_BY_HAND },
	                      { PHASE_VENT, 0, PHASE_WATCHED },
	                      { PHASE_HOLD, 10 * MINUTE_MS, PHASE_TIMED },
	                      { PHASE_REST, 5 * MINUTE_MS, PHASE_TIMED },
	                      { PHASE_UNLOAD, 0, PHASE_BY_HAND },
	                      { PHASE_COOLING, 12 * HOUR_MS, PHASE_TIMED },
	                      { PHASE_SEAL_CHECK, 0, PHASE_BY_HAND } } },
	[STATION_DIAL_GAUGE] = { DIAL_CANNER,
	                         STATION_DIAL_GAUGE,
	                         { { PHASE_LOADED, 0, PHASE_BY_HAND },
	                           { PHASE_COME_UP, 0, PHASE_WATCHED },
	                           { PHASE_VENT, 10 * MINUTE_MS, PHASE_TIMED },
	                           { PHASE_PRESSURISE, 0, PHASE_WATCHED },
	                           { PHASE_HOLD, 20 * MINUTE_MS, PHASE_TIMED },
	                           { PHASE_COOL_DOWN, 0, PHASE_WATCHED },
	                           { PHASE_WAIT, 10 * MINUTE_MS, PHASE_TIMED },
	                           { PHASE_UNLOAD, 0, PHASE_BY_HAND },
	                           { PHASE_COOLING, 12 * HOUR_MS, PHASE_TIMED },
	                           { PHASE_SEAL_CHECK, 0, PHASE_BY_HAND } } },
	[STATION_WEIGHTED_GAUGE] = { WEIGHT_CANNER,
	                             STATION_WEIGHTED_GAUGE,
	                             { { PHASE_LOADED, 0, PHASE_BY_HAND },
	                               { PHASE_COME_UP, 0, PHASE_WATCHED },
	                               { PHASE_VENT, 10 * MINUTE_MS, PHASE_TIMED },
	                               { PHASE_PRESSURISE, 0, PHASE_WATCHED },
	                               { PHASE_HOLD, 20 * MINUTE_MS, PHASE_TIMED },
	                               { PHASE_COOL_DOWN, 0, PHASE_WATCHED },
	                               { PHASE_WAIT, 10 * MINUTE_MS, PHASE_TIMED },
	                               { PHASE_UNLOAD, 0, PHASE_BY_HAND },
	                               { PHASE_COOLING, 12 * HOUR_MS, PHASE_TIMED },
	                               { PHASE_SEAL_CHECK, 0, PHASE_BY_HAND } } },
};

START_TEST(each_method_has_the_phases_of_the_trade_in_their_order)
{
	const struct walk *walk = &walks[_i];
	const struct phase_rule *rule = phase_rule_first(walk->kind);

	for (int i = 0; i < LONGEST && walk->phase[i].name != PHASE_NO_PHASE; i++) {
		ck_assert_ptr_nonnull(rule);
		ck_assert_int_eq(rule->name, walk->phase[i].name);
		ck_assert_int_eq(rule->kind, walk->phase[i].kind);
		ck_assert_ptr_eq(phase_rule_of(walk->kind, rule->name), rule);
		rule = phase_rule_next(walk->kind, rule);
	}
	ck_assert_ptr_null(rule);
}
END_TEST

START_TEST(a_load_walks_from_loaded_to_the_shelf_by_its_steps_alone)
{
	const struct walk *walk = &walks[_i];
	int64_t load_id = kk_start(&kit, walk->digit, 7);

	for (int i = 0; walk->phase[i].name != PHASE_NO_PHASE; i++) {
		int64_t length = walk->phase[i].length_ms;
		const struct strip *strip = kk_strip(&kit, load_id);

		ck_assert_int_eq(strip->rule->name, walk->phase[i].name);
		ck_assert_int_eq(strip->phase.required_ms, length);
		ck_assert_int_eq(kk_face(&kit, load_id).timed, length > 0);
		ck_assert_int_eq(kk_face(&kit, load_id).left_s, length / 1000);
		ck_assert_int_eq(strip_load(strip)->row.place,
		                 i < 1 || strip->rule->name < PHASE_COOLING ? PLACE_STATION : PLACE_RACK);
		if (walk->phase[i].name == PHASE_SEAL_CHECK)
			KK_OK(&kit, kitchen_all_sealed(kit.kitchen, load_id, SEAL_BY_ALL_THREE, &kit.fault));
		/* Pints in a heavy canner are half an hour at zero (A539, page 1-22). */
		kk_pass(&kit, length > 0                               ? length
		              : walk->phase[i].name == PHASE_COOL_DOWN ? 30 * MINUTE_MS
		                                                       : 11 * MINUTE_MS);
		ck_assert_int_eq(kk_face(&kit, load_id).due, length > 0);
		KK_OK(&kit, kk_try_step(&kit, load_id, false)); /* in good time: nothing is asked */
	}
	ck_assert_ptr_null(kk_find(&kit, load_id));
	ck_assert_int_eq(kk_load(&kit, load_id).place, PLACE_SHELF);
	ck_assert_int_eq(kk_load(&kit, load_id).verdict, VERDICT_VALID);
	ck_assert(!strip_has_load(kk_canner(&kit, walk->digit)));
}
END_TEST

START_TEST(the_log_keeps_one_row_a_phase_end_to_end)
{
	const struct walk *walk = &walks[_i];
	int64_t load_id = kk_start(&kit, walk->digit, 7);
	struct log_phase *rows;
	size_t count;

	kk_to(&kit, load_id, PHASE_SEAL_CHECK);
	KK_OK(&kit, log_phases(kit.log, kk_about(load_id), &rows, &count, &kit.fault));
	for (size_t i = 0; i < count; i++) {
		ck_assert_str_eq(rows[i].name, phase_name_stored(walk->phase[i].name));
		ck_assert_int_eq(rows[i].ended_why, i + 1 < count ? PHASE_DONE : PHASE_RUNNING);
		if (i + 1 < count)
			ck_assert_int_eq(rows[i].ended_wall_ms, rows[i + 1].began.wall_ms);
		if (i + 1 < count && rows[i].required_ms > 0)
			ck_assert_int_ge(rows[i].ended_wall_ms - rows[i].began.wall_ms, rows[i].required_ms);
	}
	ck_assert_int_eq(rows[count - 1].ended_wall_ms, 0);
	free(rows);
}
END_TEST

/* --- when a clock starts and when it may end ---------------------------------------- */

START_TEST(no_clock_starts_before_its_condition_was_confirmed)
{
	const struct walk *walk = &walks[_i];
	int64_t load_id = kk_start(&kit, walk->digit, 7);

	for (int i = 0; walk->phase[i].name != PHASE_HOLD; i++) {
		const struct strip *strip;

		kk_pass(&kit, 3 * HOUR_MS); /* waiting alone starts nothing */
		KK_OK(&kit, kitchen_refresh(kit.kitchen, true, &kit.fault));
		strip = kk_strip(&kit, load_id);
		ck_assert_int_eq(strip->rule->name, walk->phase[i].name);
		ck_assert_int_eq(strip_load(strip)->hold_starts, 0);
		kk_step(&kit, load_id);
	}
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_HOLD);
	ck_assert_int_eq(kk_strip(&kit, load_id)->phase.began.wall_ms, kit.clock.now.wall_ms);
	ck_assert_int_eq(strip_load(kk_strip(&kit, load_id))->hold_starts, 1);
}
END_TEST

START_TEST(the_hold_ends_at_its_time_and_not_1_ms_before)
{
	const struct walk *walk = &walks[_i];
	int64_t load_id = kk_start(&kit, walk->digit, 7);
	int64_t hold;

	kk_to(&kit, load_id, PHASE_HOLD);
	hold = kk_strip(&kit, load_id)->phase.required_ms;
	kk_pass(&kit, hold - 1);
	ck_assert(!kk_face(&kit, load_id).due);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, false));
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true)); /* not even when sure */
	kk_pass(&kit, 1);
	ck_assert(kk_face(&kit, load_id).ringing);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, 0);
	KK_OK(&kit, kk_try_step(&kit, load_id, false));
}
END_TEST

START_TEST(the_vent_cannot_be_skipped)
{
	int64_t load_id = kk_start(&kit, _i, 7);

	kk_to(&kit, load_id, PHASE_VENT);
	for (int minutes = 1; minutes < 10; minutes++) {
		kk_pass(&kit, MINUTE_MS);
		KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	}
	kk_pass(&kit, MINUTE_MS - 1);
	KK_REFUSED(&kit, FAULT_REFUSED, kk_try_step(&kit, load_id, true));
	kk_pass(&kit, 1);
	KK_OK(&kit, kk_try_step(&kit, load_id, true));
	ck_assert_int_eq(kk_name(&kit, load_id), PHASE_PRESSURISE);
}
END_TEST

START_TEST(rest_wait_and_cooling_are_asked_about_when_cut_short)
{
	static const enum phase_name asked[] = { PHASE_REST, PHASE_WAIT, PHASE_COOLING };
	int64_t load_id = kk_start(&kit, asked[_i] == PHASE_WAIT ? WEIGHT_CANNER : BIG_KETTLE, 7);

	kk_to(&kit, load_id, asked[_i]);
	kk_pass(&kit, kk_strip(&kit, load_id)->phase.required_ms - 1);
	KK_REFUSED(&kit, FAULT_CONFIRM, kk_try_step(&kit, load_id, false));
	ck_assert_int_eq(kk_name(&kit, load_id), asked[_i]);
	KK_OK(&kit, kk_try_step(&kit, load_id, true));
	ck_assert_int_ne(kk_name(&kit, load_id), asked[_i]);
}
END_TEST

/* --- the alarm --------------------------------------------------------------------------- */

START_TEST(an_alarm_rings_until_it_is_heard_and_the_clock_goes_on)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t phase_id;

	kk_to(&kit, load_id, PHASE_HOLD);
	phase_id = kk_phase(&kit, load_id);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_acknowledge(kit.kitchen, phase_id, &kit.fault));
	kk_pass(&kit, 10 * MINUTE_MS);
	ck_assert(kk_face(&kit, load_id).ringing);
	ck_assert_int_eq(kk_face(&kit, load_id).alarm, ALARM_LIFT);
	kk_pass(&kit, HOUR_MS);
	ck_assert(kk_face(&kit, load_id).ringing);
	KK_OK(&kit, kitchen_acknowledge(kit.kitchen, phase_id, &kit.fault));
	ck_assert(!kk_face(&kit, load_id).ringing);
	ck_assert(kk_face(&kit, load_id).due);
	ck_assert_int_eq(kk_face(&kit, load_id).left_s, -3600);
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_acknowledge(kit.kitchen, phase_id, &kit.fault));
	kk_step(&kit, load_id); /* the next alarm rings anew */
	kk_pass(&kit, 5 * MINUTE_MS);
	ck_assert(kk_face(&kit, load_id).ringing);
}
END_TEST

START_TEST(a_temperature_is_said_as_this_kitchen_has_it)
{
	struct board board = { .boil_known = true, .boil = { .boiling_point_f = 206.1, .jelly_stage_f = 214.1 } };
	char at[40];
	char words[80];

	heat_here_words(&board, HEAT_BOIL, at, sizeof(at));
	ck_assert_str_eq(at, "206.1 F here");
	phase_words("wait for {at} and steam", at, words, sizeof(words));
	ck_assert_str_eq(words, "wait for 206.1 F here and steam");
	phase_words("steady steam", at, words, sizeof(words));
	ck_assert_str_eq(words, "steady steam");
	heat_here_words(&board, HEAT_JELLY, at, sizeof(at));
	ck_assert_str_eq(at, "214.1 F here");
	board.house.units = UNITS_METRIC;
	heat_here_words(&board, HEAT_BOIL, at, sizeof(at));
	ck_assert_str_eq(at, "96.7 C here");
	board.boil_known = false;
	heat_here_words(&board, HEAT_JELLY, at, sizeof(at));
	ck_assert_str_eq(at, "8 F above boiling water");
}
END_TEST

static void fits(const char *words, int most)
{
	char said[1000];

	if (words == NULL)
		return;
	phase_words(words, "206.1 F here", said, sizeof(said));
	ck_assert_msg((int)strlen(said) <= most, "%s: %zu, at most %d", said, strlen(said), most);
}

/* Each is said whole, and has a short wording for a window of 40 columns. */
START_TEST(what_a_phase_says_is_never_cut)
{
	for (int kind = 0; kind < WORK_KINDS; kind++)
		for (const struct phase_rule *rule = work_kinds[kind]->phases; rule->name != PHASE_NO_PHASE; rule++) {
			fits(rule->act, ACT_MAX_BYTES - 1);
			fits(rule->step, ACT_MAX_BYTES - 1);
			fits(rule->caution, ACT_MAX_BYTES - 1);
			fits(rule->brief != NULL ? rule->brief : rule->act, PHASE_BRIEF_MAX);
			fits(rule->due_brief != NULL ? rule->due_brief : rule->due, PHASE_BRIEF_MAX);
		}
}
END_TEST

/* What is lost when nobody comes, and how soon one that was answered comes back. */
START_TEST(an_answered_alarm_of_any_phase_comes_back_the_worse_the_sooner)
{
	int soonest[ALARM_COUNT] = { 0 };
	int latest[ALARM_COUNT] = { 0 };

	for (int kind = 0; kind < STATION_KIND_COUNT; kind++)
		for (const struct phase_rule *plain = phase_rule_first((enum station_kind)kind); plain != NULL;
		     plain = phase_rule_next((enum station_kind)kind, plain))
			for (unsigned pot = 0; pot <= POT_FOLDS; pot = pot == 0 ? 1 : pot * 2) {
				const struct phase_rule *rule = phase_rule_for_pot(plain, pot);

				ck_assert_msg((rule->kind == PHASE_TIMED) == (rule->again_s > 0), "%s", rule->words);
				if (rule->again_s == 0)
					continue;
				if (soonest[rule->alarm] == 0 || rule->again_s < soonest[rule->alarm])
					soonest[rule->alarm] = rule->again_s;
				if (rule->again_s > latest[rule->alarm])
					latest[rule->alarm] = rule->again_s;
			}
	ck_assert_int_gt(latest[ALARM_SPOILS], 0);
	ck_assert_int_lt(latest[ALARM_SPOILS], soonest[ALARM_LIFT]);
	ck_assert_int_lt(latest[ALARM_LIFT], soonest[ALARM_TOMORROW]);
}
END_TEST

/* The hold of the big kettle is over and its alarm was heard; returns how long it is quiet. */
static int64_t heard_hold(int64_t load_id)
{
	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 10 * MINUTE_MS + 20 * SECOND_MS);
	KK_OK(&kit, kitchen_acknowledge(kit.kitchen, kk_phase(&kit, load_id), &kit.fault));
	ck_assert(!kk_face(&kit, load_id).ringing);
	return phase_rule_of(STATION_BOILING_WATER, PHASE_HOLD)->again_s * INT64_C(1000);
}

START_TEST(an_alarm_that_was_heard_rings_again_while_its_step_is_not_made)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t quiet_ms = heard_hold(load_id);

	for (int again = 0; again < 3; again++) {
		ck_assert_int_eq(kk_face(&kit, load_id).quiet_s, quiet_ms / 1000);
		kk_pass(&kit, quiet_ms - 1);
		ck_assert(!kk_face(&kit, load_id).ringing);
		ck_assert_int_eq(kk_face(&kit, load_id).quiet_s, 1);
		ck_assert_int_eq(strip_rings_in_ms(kk_strip(&kit, load_id), &kit.clock.now), 1);
		kk_pass(&kit, 1);
		ck_assert(kk_face(&kit, load_id).ringing && kk_face(&kit, load_id).clock_rings);
		ck_assert_int_eq(kk_face(&kit, load_id).quiet_s, 0);
		KK_OK(&kit, kitchen_acknowledge(kit.kitchen, kk_phase(&kit, load_id), &kit.fault));
	}
	kk_step(&kit, load_id); /* done: the rest begins, and nothing is left to come back */
	kk_pass(&kit, quiet_ms);
	ck_assert(!kk_face(&kit, load_id).ringing);
	ck_assert_int_eq(kk_face(&kit, load_id).quiet_s, 0);
}
END_TEST

START_TEST(a_heard_alarm_comes_back_at_its_time_after_a_start_and_whatever_a_clock_is_set_to)
{
	static const int64_t steps[] = { 0, -HOUR_MS, HOUR_MS };
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	int64_t quiet_ms = heard_hold(load_id);

	kk_pass(&kit, MINUTE_MS);
	test_clock_step_wall(&kit.clock, steps[_i]);
	kk_reopen(&kit);
	ck_assert(!kk_face(&kit, load_id).ringing);
	ck_assert_int_eq(kk_face(&kit, load_id).quiet_s, (quiet_ms - MINUTE_MS) / 1000);
	if (_i == 0) { /* the computer too */
		test_clock_restart(&kit.clock, 30 * SECOND_MS);
		kk_reopen(&kit);
		ck_assert_int_eq(kk_face(&kit, load_id).quiet_s, (quiet_ms - MINUTE_MS) / 1000 - 30);
		kk_pass(&kit, quiet_ms - MINUTE_MS - 30 * SECOND_MS);
	} else {
		kk_pass(&kit, quiet_ms - MINUTE_MS);
	}
	ck_assert(kk_face(&kit, load_id).ringing);
}
END_TEST

START_TEST(hearing_that_is_undone_rings_at_once)
{
	int64_t load_id = kk_start(&kit, BIG_KETTLE, 7);
	char said[SENTENCE_MAX_BYTES];

	(void)heard_hold(load_id);
	KK_OK(&kit, kitchen_undo(kit.kitchen, strip_subject(kk_strip(&kit, load_id)), said, sizeof(said), &kit.fault));
	ck_assert(kk_face(&kit, load_id).ringing);
}
END_TEST

START_TEST(the_most_urgent_is_what_rings_then_what_has_least_time_left)
{
	int64_t ringing = kk_start(&kit, BIG_KETTLE, 7);
	int64_t soon;
	int64_t later;
	int64_t waits;

	soon = kk_start(&kit, LOW_KETTLE, 7);
	later = kk_start(&kit, STEAM_CANNER, 7);
	waits = kk_start(&kit, WEIGHT_CANNER, 7);
	kk_to(&kit, ringing, PHASE_HOLD);
	kk_step(&kit, soon);
	kk_pass(&kit, 30 * SECOND_MS);
	kk_step(&kit, soon);
	kk_step(&kit, later);
	kk_pass(&kit, 30 * SECOND_MS);
	kk_step(&kit, later);
	kk_pass(&kit, 8 * MINUTE_MS + 30 * SECOND_MS);
	ck_assert_int_lt(strip_urgency(kk_strip(&kit, soon), &kit.clock.now),
	                 strip_urgency(kk_strip(&kit, later), &kit.clock.now));
	ck_assert_int_lt(strip_urgency(kk_strip(&kit, later), &kit.clock.now),
	                 strip_urgency(kk_strip(&kit, waits), &kit.clock.now));
	ck_assert_int_lt(strip_urgency(kk_strip(&kit, waits), &kit.clock.now),
	                 strip_urgency(kk_canner(&kit, DIAL_CANNER), &kit.clock.now));
	kk_pass(&kit, 30 * SECOND_MS);
	ck_assert(kk_face(&kit, ringing).ringing);
	ck_assert_int_lt(strip_urgency(kk_strip(&kit, ringing), &kit.clock.now),
	                 strip_urgency(kk_strip(&kit, later), &kit.clock.now));
}
END_TEST

/* --- the table itself ---------------------------------------------------------------------- */

static void is_said(const char *words, const char *what, const struct phase_rule *rule)
{
	ck_assert_msg(words != NULL && words[0] != '\0', "%s has no %s", rule->words, what);
}

START_TEST(every_row_says_what_to_do_and_where_that_comes_from)
{
	for (const struct phase_rule *rule = phase_rule_first((enum station_kind)_i); rule != NULL;
	     rule = phase_rule_next((enum station_kind)_i, rule)) {
		is_said(rule->words, "words", rule);
		is_said(rule->act, "act", rule);
		is_said(rule->step, "step", rule);
		is_said(rule->caution, "caution", rule);
		is_said(rule->source, "source", rule);
		if (rule->kind == PHASE_TIMED) {
			is_said(rule->due, "word for the time being over", rule);
			ck_assert_int_ne(rule->required_ms, 0);
			ck_assert_int_ne(rule->alarm, ALARM_NONE);
		} else {
			ck_assert_int_eq(rule->required_ms, 0);
			ck_assert_int_gt(rule->planned_max_s, 0);
			ck_assert_int_le(rule->planned_min_s, rule->planned_max_s);
			ck_assert_int_eq(rule->alarm, ALARM_NONE);
		}
		if (rule->kind == PHASE_WATCHED) /* seen too soon is asked about, but not for long */
			ck_assert(rule->soon_s > 0 && rule->soon_s <= rule->planned_min_s);
		if (rule->lost_to != PHASE_NO_PHASE)
			is_said(rule->lost, "word for what is lost", rule);
		ck_assert_int_eq(rule->place, rule->name < PHASE_COOLING ? PLACE_STATION : PLACE_RACK);
	}
}
END_TEST

START_TEST(every_phase_a_row_leads_to_exists_for_its_method)
{
	enum station_kind kind = (enum station_kind)_i;

	for (const struct phase_rule *rule = phase_rule_first(kind); rule != NULL; rule = phase_rule_next(kind, rule)) {
		if (rule->lost_to != PHASE_NO_PHASE)
			ck_assert_ptr_nonnull(phase_rule_of(kind, rule->lost_to));
		if (rule->stop_to != PHASE_NO_PHASE)
			ck_assert_ptr_nonnull(phase_rule_of(kind, rule->stop_to));
		ck_assert_ptr_eq(phase_rule_named(kind, phase_name_stored(rule->name)), rule);
	}
}
END_TEST

/* What the planner adds up lies in its spans; the rack is nobody's station. */
START_TEST(each_phase_at_a_station_is_part_of_a_span_and_one_phase_asks)
{
	/* Where nobody stands by, the planner knows of no work. */
	bool planned = work_kind_at((enum station_kind)_i)->planned != PLAN_STATION_KIND_COUNT;
	enum station_kind kind = (enum station_kind)_i;
	int asks = 0;

	for (const struct phase_rule *rule = phase_rule_first(kind); rule != NULL; rule = phase_rule_next(kind, rule)) {
		ck_assert_int_eq(rule->span == NO_SPAN, rule->place == PLACE_RACK || !planned);
		asks += rule->asks != ASKS_NOTHING;
	}
	ck_assert_int_eq(asks, 1);
}
END_TEST

START_TEST(following_the_table_comes_to_an_end)
{
	int rows = 0;

	for (const struct phase_rule *rule = phase_rule_first((enum station_kind)_i); rule != NULL;
	     rule = phase_rule_next((enum station_kind)_i, rule))
		ck_assert_int_lt(++rows, PHASE_NAME_COUNT);
	ck_assert_int_gt(rows, 0);
}
END_TEST

START_TEST(a_phase_of_another_method_is_not_found)
{
	ck_assert_ptr_null(phase_rule_of(STATION_BOILING_WATER, PHASE_VENT));
	ck_assert_ptr_null(phase_rule_of(STATION_STEAM, PHASE_COME_UP));
	ck_assert_ptr_null(phase_rule_of(STATION_DIAL_GAUGE, PHASE_REST));
	ck_assert_ptr_null(phase_rule_of(STATION_WEIGHTED_GAUGE, PHASE_NO_PHASE));
	ck_assert_ptr_null(phase_rule_named(STATION_BOILING_WATER, "vent"));
	ck_assert_ptr_null(phase_rule_named(STATION_BOILING_WATER, ""));
	ck_assert_ptr_null(phase_rule_named(STATION_BOILING_WATER, "hold "));
}
END_TEST

START_TEST(juice_is_measured_jars_are_filled_and_seals_checked_where_that_is_done)
{
	ck_assert_int_eq(phase_rule_of(STATION_JUICER, PHASE_DRAIN)->asks, ASKS_MEASURE);
	ck_assert_int_eq(phase_rule_of(STATION_POT, PHASE_FILL)->asks, ASKS_JARS);
	ck_assert_int_eq(phase_rule_of(STATION_STEAM, PHASE_SEAL_CHECK)->asks, ASKS_SEALS);
}
END_TEST

START_TEST(each_method_has_its_canner_and_back)
{
	int canners = 0;

	for (enum method method = 0; method < METHOD_COUNT; method++) {
		enum station_kind kind = method_station(method);

		ck_assert(station_is_canner(kind));
		ck_assert_int_eq(station_method(kind), method);
		ck_assert_str_eq(station_kind_name(kind), method_name(method)); /* stored under it */
	}
	for (enum station_kind kind = 0; kind < STATION_KIND_COUNT; kind++) {
		canners += station_is_canner(kind);
		if (station_is_canner(kind))
			ck_assert_int_eq(method_station(station_method(kind)), kind);
	}
	ck_assert_int_eq(canners, METHOD_COUNT);
	ck_assert_int_eq(method_station(METHOD_COUNT), STATION_KIND_COUNT);
}
END_TEST

START_TEST(a_canner_has_its_method_and_nothing_else_has_one)
{
	ck_assert_int_eq(station_method(STATION_BOILING_WATER), METHOD_BOILING_WATER);
	ck_assert_int_eq(station_method(STATION_STEAM), METHOD_STEAM);
	ck_assert_int_eq(station_method(STATION_DIAL_GAUGE), METHOD_DIAL_GAUGE);
	ck_assert_int_eq(station_method(STATION_WEIGHTED_GAUGE), METHOD_WEIGHTED_GAUGE);
	ck_assert_int_eq(station_method(STATION_JUICER), METHOD_COUNT);
	ck_assert_int_eq(station_method(STATION_POT), METHOD_COUNT);
}
END_TEST

/* What rings is read across a room: a few capitals, and nothing where nothing rings. */
START_TEST(each_clock_that_rings_names_its_job_in_a_few_capitals)
{
	enum station_kind kind = (enum station_kind)_i;

	for (const struct phase_rule *rule = phase_rule_first(kind); rule != NULL; rule = phase_rule_next(kind, rule)) {
		if (rule->due == NULL) {
			ck_assert_ptr_null(rule->job);
			continue;
		}
		ck_assert_ptr_nonnull(rule->job);
		ck_assert_uint_le(strlen(rule->job), JOB_MAX);
		ck_assert_uint_eq(strspn(rule->job, "ABCDEFGHIJKLMNOPQRSTUVWXYZ "), strlen(rule->job));
	}
}
END_TEST

START_TEST(only_what_heats_can_be_lost_or_stopped)
{
	enum station_kind kind = (enum station_kind)_i;

	ck_assert_int_ne(phase_rule_of(kind, PHASE_HOLD)->lost_to, PHASE_NO_PHASE);
	ck_assert_int_ne(phase_rule_of(kind, PHASE_HOLD)->stop_to, PHASE_NO_PHASE);
	for (const struct phase_rule *rule = phase_rule_of(kind, PHASE_UNLOAD); rule != NULL;
	     rule = phase_rule_next(kind, rule)) {
		ck_assert_int_eq(rule->lost_to, PHASE_NO_PHASE);
		ck_assert_int_eq(rule->stop_to, PHASE_NO_PHASE);
	}
}
END_TEST

/* What stands on the rack or in conditioning jars keeps no station. */
START_TEST(a_station_is_busy_in_the_phases_that_are_at_it)
{
	char names[PHASE_NAMES_BYTES];

	names[0] = ' ';
	phases_at_station(names + 1, sizeof(names) - 2);
	memcpy(names + strlen(names), " ", 2);
	for (int kind = 0; kind < STATION_KIND_COUNT; kind++) {
		const struct phase_rule *rule = phase_rule_first((enum station_kind)kind);

		for (; rule != NULL; rule = phase_rule_next((enum station_kind)kind, rule)) {
			char name[40];

			(void)snprintf(name, sizeof(name), " %s ", phase_name_stored(rule->name));
			ck_assert_msg((strstr(names, name) != NULL) == (rule->place == PLACE_STATION), "%s", name);
		}
	}
	ck_assert_ptr_nonnull(strstr(names, " dry "));
	ck_assert_ptr_null(strstr(names, "condition"));
	ck_assert_ptr_null(strstr(names, "cooling"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("table"),
	EACH(each_method_has_the_phases_of_the_trade_in_their_order, 0, METHOD_COUNT),
	EACH(every_row_says_what_to_do_and_where_that_comes_from, 0, METHOD_COUNT),
	EACH(every_phase_a_row_leads_to_exists_for_its_method, 0, METHOD_COUNT),
	EACH(following_the_table_comes_to_an_end, 0, METHOD_COUNT),
	EACH(each_clock_that_rings_names_its_job_in_a_few_capitals, 0, STATION_POT + 1),
	EACH(only_what_heats_can_be_lost_or_stopped, 0, METHOD_COUNT),
	TEST(a_phase_of_another_method_is_not_found),
	TEST(juice_is_measured_jars_are_filled_and_seals_checked_where_that_is_done),
	EACH(each_phase_at_a_station_is_part_of_a_span_and_one_phase_asks, 0, STATION_KIND_COUNT),
	TEST(a_station_is_busy_in_the_phases_that_are_at_it),
	TEST(each_method_has_its_canner_and_back),
	TEST(a_canner_has_its_method_and_nothing_else_has_one),
	GROUP("walk", .begin = begin, .end = end),
	EACH(a_load_walks_from_loaded_to_the_shelf_by_its_steps_alone, 0, METHOD_COUNT),
	EACH(the_log_keeps_one_row_a_phase_end_to_end, 0, METHOD_COUNT),
	EACH(no_clock_starts_before_its_condition_was_confirmed, 0, METHOD_COUNT),
	EACH(the_hold_ends_at_its_time_and_not_1_ms_before, 0, METHOD_COUNT),
	EACH(rest_wait_and_cooling_are_asked_about_when_cut_short, 0, 3),
	EACH(the_vent_cannot_be_skipped, WEIGHT_CANNER, WEIGHT_CANNER + 1),
	EACH(the_vent_cannot_be_skipped, DIAL_CANNER, DIAL_CANNER + 1),
	TEST(an_alarm_rings_until_it_is_heard_and_the_clock_goes_on),
	TEST(a_temperature_is_said_as_this_kitchen_has_it),
	TEST(what_a_phase_says_is_never_cut),
	TEST(an_answered_alarm_of_any_phase_comes_back_the_worse_the_sooner),
	TEST(an_alarm_that_was_heard_rings_again_while_its_step_is_not_made),
	EACH(a_heard_alarm_comes_back_at_its_time_after_a_start_and_whatever_a_clock_is_set_to, 0, 3),
	TEST(hearing_that_is_undone_rings_at_once),
	TEST(the_most_urgent_is_what_rings_then_what_has_least_time_left),
};

KK_TESTS("phases", listed)
