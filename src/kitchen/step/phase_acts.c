/*
 * phase_acts.c - what moves a load, a run or a batch from phase to phase: the
 * next step, a lost condition, an alarm heard, the exceptions.
 */
#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/pot/pot.h"
#include "kitchen/step/kind_acts.h"
#include "log/tables/canner.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define CLOCK_DAY_MS (INT64_C(24) * 60 * MINUTE_MS)

/* --- the next step -------------------------------------------------------------- */

static bool check_bounce(const struct strip *strip, const struct moment *now, struct fault *fault)
{
	/* No finger bounces across a restart; a wall clock that came back wrong must
	 * not hold up what waits for a person. */
	if (!moment_same_boot(&strip->phase.began, now) || strip_passed_ms(strip, now) >= PRESS_AGAIN_MS)
		return true;
	return fault_set(fault, FAULT_STALE, "%s: \"%s\" has only just begun; that press did not count.",
	                 strip_title(strip), strip->rule->words);
}

static bool check_early(const struct strip *strip, int64_t passed_ms, bool sure, struct fault *fault)
{
	const struct phase_rule *rule = strip->rule;
	char left_words[24];
	struct text left = TEXT_OVER(left_words);

	text_add_duration(&left, moment_seconds_left(strip->phase.required_ms, passed_ms));
	if (rule->kind == PHASE_TIMED && passed_ms < strip->phase.required_ms) {
		if (rule->early == EARLY_NEVER)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s: %s left of the %s. Only exceptions (x) end it sooner.",
			                 strip_title(strip), left_words, rule->words);
		return sure || fault_set(fault, FAULT_CONFIRM, "%s: %s left of the %s. End it now anyway?",
		                         strip_title(strip), left_words, rule->words);
	}
	return true;
}

/* Is the end of a watched phase asked about?  The clock does not tell of a vent lock:
 * that is asked every time. */
static bool asks_first(const struct strip *strip, int64_t passed_ms)
{
	if (strip->rule->name == PHASE_COOL_DOWN && strip->station.wall == WALL_LOCK)
		return true;
	return strip->rule->kind == PHASE_WATCHED && passed_ms < strip_soon_ms(strip, strip->rule);
}

static bool refuse_cool_down(const struct strip *strip, int64_t passed_ms, struct fault *fault)
{
	char passed[24];
	struct text text = TEXT_OVER(passed);

	text_add_duration(&text, passed_ms / 1000);
	if (strip->station.wall == WALL_LOCK)
		return fault_set(fault, FAULT_CONFIRM,
		                 "%s: has the vent lock dropped by itself, and is nothing "
		                 "hissing?",
		                 strip_title(strip));
	return fault_set(fault, FAULT_CONFIRM,
	                 "%s: zero %s after heat off? A heavy canner takes about %lld min by itself.%s",
	                 strip_title(strip), passed, (long long)(strip_soon_ms(strip, strip->rule) / MINUTE_MS),
	                 strip->station.wall == WALL_NOT_SAID
	                     ? " Has it a vent lock? Say so in the house view (h): wall=heavy or wall=lock."
	                     : "");
}

static bool check_seen(const struct strip *strip, int64_t passed_ms, bool sure, struct fault *fault)
{
	if (sure || !asks_first(strip, passed_ms))
		return true;
	if (strip->rule->name == PHASE_COOL_DOWN)
		return refuse_cool_down(strip, passed_ms, fault);
	return fault_set(fault, FAULT_CONFIRM, "%s: so soon? Have you SEEN it: %s?", strip_title(strip),
	                 strip->said.step);
}

/* What was asked and confirmed all the same, for the story: that the vent lock has
 * dropped, or the seconds passed and those it was sooner than. */
static void say_confirmed(struct act *act, const struct strip *strip, int64_t passed_ms)
{
	bool asked = asks_first(strip, passed_ms);
	bool lock = asked && strip->rule->name == PHASE_COOL_DOWN && strip->station.wall == WALL_LOCK;

	act_says_number(act, lock);
	if (asked && !lock) {
		act_says_number(act, passed_ms / 1000);
		act_says_number(act, strip_soon_ms(strip, strip->rule) / 1000);
	} else {
		act_says_nothing(act);
		act_says_nothing(act);
	}
}

static bool check_finished(const struct strip *strip, bool sure, struct fault *fault)
{
	const struct kind_acts *kind = strip_acts(strip);

	return strip->rule->asks == ASKS_NOTHING || kind->finished == NULL || kind->finished(strip, sure, fault);
}

static bool check_put_in(const struct kitchen *kitchen, struct strip *strip, bool sure, struct text *said,
                         struct fault *fault)
{
	const struct kind_acts *kind = strip_acts(strip);

	return kind->puts_in == NULL || kind->puts_in(kitchen, strip, sure, said, fault);
}

/* With what went in, for the story. */
static void say_step(struct act *act, const struct strip *strip, const char *put_in)
{
	char words[256];
	struct text text = TEXT_OVER(words);

	text_add(&text, "%s%s%s", strip->said.step, put_in[0] != '\0' ? ": " : "", put_in);
	act_says_text(act, words);
}

/* No clock of this computer ran through such a hold. */
static bool note_restart(struct act *act, const struct strip *strip, struct fault *fault)
{
	const struct strip_load *load = strip_load(strip);

	return load == NULL || !load->hold_across_restart || mark_phase(act, strip, MARK_RESTARTED, 0, "", fault);
}

static bool check_clock_read(const struct strip *strip, bool sure, struct fault *fault)
{
	if (sure || !strip_wants_clock(strip))
		return true;
	return fault_set(
	    fault, FAULT_CONFIRM,
	    "%s: the computer restarted during this hold, and nobody read another clock: the process is UNKNOWN then. "
	    "End it anyway?",
	    strip_title(strip));
}

bool kitchen_step(struct kitchen *kitchen, int64_t phase_id, bool sure, struct fault *fault)
{
	const struct phase_rule *next;
	struct strip strip;
	struct act act;
	int64_t passed;
	char words[200];
	struct text put_in = TEXT_OVER(words);

	if (!kitchen_strip_at(kitchen, phase_id, &strip, fault))
		return false;
	next = strip_next(&strip);
	if (next != NULL && next->kind == PHASE_TIMED && !check_clock(kitchen, fault))
		return false;
	if (!act_begin(&act, kitchen, VERB_STEP, strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	passed = strip_passed_ms(&strip, &act.entry.at);
	act.entry.breaks_hold = strip.rule->name == PHASE_HOLD;
	if (!check_bounce(&strip, &act.entry.at, fault) || !check_early(&strip, passed, sure, fault) ||
	    !check_seen(&strip, passed, sure, fault) || !check_clock_read(&strip, sure, fault) ||
	    !check_finished(&strip, sure, fault) || !check_put_in(kitchen, &strip, sure, &put_in, fault) ||
	    !note_restart(&act, &strip, fault) || !phase_change(&act, &strip, PHASE_DONE, next, fault) ||
	    !strip_acts(&strip)->move_on(&act, &strip, next, fault))
		return act_fail(&act);
	act_says_text(&act, strip_title(&strip));
	say_step(&act, &strip, words);
	act_says_text(&act, strip.rule->words);
	act_says_text(&act, next != NULL ? next->words : strip_kind(&strip)->shelved);
	say_confirmed(&act, &strip, passed);
	return act_commit(&act, fault);
}

/* --- another clock --------------------------------------------------------------- */

#define READ_MAX_MS (INT64_C(12) * 3600 * 1000) /* no hold is so long: the times were turned round */

static bool check_read(const struct strip *strip, int64_t held_ms, bool sure, struct fault *fault)
{
	char words[64];
	struct text text = TEXT_OVER(words);

	if (!strip_has_load(strip) || !strip_load(strip)->hold_across_restart)
		return fault_set(fault, FAULT_REFUSED, "%s: this computer's own clock ran through all of it.",
		                 strip_title(strip));
	if (held_ms > READ_MAX_MS)
		return fault_set(fault, FAULT_MISUSE,
		                 "The second time is before the first: first when it began, then when it ended.");
	if (held_ms >= strip->phase.required_ms || sure)
		return true;
	text_add_duration(&text, held_ms / 1000);
	text_add(&text, " of ");
	text_add_duration(&text, strip->phase.required_ms / 1000);
	return fault_set(fault, FAULT_CONFIRM,
	                 "%s: by that clock it has run %s. Leave it on, and read again. End it, NOT VALID?",
	                 strip_title(strip), words);
}

bool kitchen_clock_read(struct kitchen *kitchen, int64_t phase_id, int64_t began_ms, int64_t ended_ms, bool sure,
                        struct fault *fault)
{
	struct strip strip;
	struct act act;

	if (!kitchen_strip_at(kitchen, phase_id, &strip, fault))
		return false;
	if (began_ms < 0 || began_ms >= CLOCK_DAY_MS || ended_ms < 0 || ended_ms >= CLOCK_DAY_MS)
		return fault_set(fault, FAULT_MISUSE, "A clock shows 0:00 to 23:59.");
	if (ended_ms < began_ms) /* over midnight */
		ended_ms += CLOCK_DAY_MS;
	if (!check_read(&strip, ended_ms - began_ms, sure, fault) ||
	    !act_begin(&act, kitchen, VERB_CLOCK_READ, strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	if (!mark_phase(&act, &strip, MARK_CLOCK_BEGAN, began_ms, "", fault) ||
	    !mark_phase(&act, &strip, MARK_CLOCK_ENDED, ended_ms, "", fault))
		return act_fail(&act);
	act_says_text(&act, strip_title(&strip));
	act_says_number(&act, (ended_ms - began_ms) / 1000);
	return act_commit(&act, fault);
}

static bool fall_back(struct act *act, const struct strip *strip, const struct phase_rule *next, struct fault *fault)
{
	const struct kind_acts *kind = strip_acts(strip);

	return kind->fall_back == NULL || kind->fall_back(act, strip, next, fault);
}

bool kitchen_lost(struct kitchen *kitchen, int64_t phase_id, struct fault *fault)
{
	const struct phase_rule *next;
	struct strip strip;
	struct act act;

	if (!kitchen_strip_at(kitchen, phase_id, &strip, fault))
		return false;
	if (strip.rule->lost_to == PHASE_NO_PHASE)
		return fault_set(fault, FAULT_REFUSED, "%s: nothing can be lost in \"%s\".", strip_title(&strip),
		                 strip.rule->words);
	if (!act_begin(&act, kitchen, VERB_LOST, strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	act.entry.breaks_hold = true;
	next = phase_rule_of(strip.station.kind, strip.rule->lost_to);
	if (!phase_change(&act, &strip, PHASE_LOST, next, fault) || !fall_back(&act, &strip, next, fault))
		return act_fail(&act);
	act_says_text(&act, strip_title(&strip));
	act_says_text(&act, strip.rule->lost);
	return act_commit(&act, fault);
}

/* --- alarms --------------------------------------------------------------------- */

static bool hear(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_phase phase = strip->phase;

	/* On the clock of the phase: one that is set meanwhile changes nothing of how long it is quiet. */
	phase.acknowledged_wall_ms = phase.began.wall_ms + strip_passed_ms(strip, &act->entry.at);
	return log_put_phase(act->kitchen->log, &phase, fault);
}

bool kitchen_acknowledge(struct kitchen *kitchen, int64_t phase_id, struct fault *fault)
{
	struct strip strip;
	struct face face;
	struct act act;

	if (!kitchen_strip_at(kitchen, phase_id, &strip, fault))
		return false;
	if (!act_begin(&act, kitchen, VERB_HEARD, strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	strip_face(&strip, &act.entry.at, &face);
	if (!face.ringing) {
		fault_set(fault, FAULT_REFUSED, "%s: no alarm is ringing.", strip_title(&strip));
		return act_fail(&act);
	}
	if (!(face.water_due ? strip_acts(&strip)->second_seen(&act, &strip, fault) : hear(&act, &strip, fault)))
		return act_fail(&act);
	if (face.water_due)
		act_is(&act, strip_acts(&strip)->second_verb);
	act_says_text(&act, strip_title(&strip));
	act_says_text(&act, strip.rule->words);
	return act_commit(&act, fault);
}

/* --- exceptions ---------------------------------------------------------------- */

const char *exception_words(const struct strip *strip, enum exception exception, const struct moment *now)
{
	if (strip->content == STRIP_EMPTY)
		return NULL;
	switch (exception) {
	case EXCEPTION_LOST: /* also after the time: it may be found out only then */
		return strip->rule->lost_to == PHASE_NO_PHASE ? NULL : strip->rule->lost;
	case EXCEPTION_STOP: return strip->rule->stop_to == PHASE_NO_PHASE ? NULL : strip_acts(strip)->stop_words;
	default: return strip_acts(strip)->words(strip, exception, now);
	}
}

static bool stop(struct act *act, const struct strip *strip, struct fault *fault)
{
	const struct kind_acts *kind = strip_acts(strip);

	act->entry.breaks_hold = true;
	return phase_change(act, strip, PHASE_STOPPED, phase_rule_of(strip->station.kind, strip->rule->stop_to),
	                    fault) &&
	       (kind->stopped == NULL || kind->stopped(act, strip, fault));
}

/* Exceptions that are acts of their own. */
static bool is_other_act(enum exception exception)
{
	return exception == EXCEPTION_LOST || exception == EXCEPTION_DRAW || exception == EXCEPTION_WRONG ||
	       exception == EXCEPTION_RECIPE;
}

static bool other_act(struct kitchen *kitchen, const struct strip *strip, enum exception exception, int64_t amount,
                      const char *reason, struct fault *fault)
{
	switch (exception) {
	case EXCEPTION_LOST: return kitchen_lost(kitchen, strip->phase.id, fault);
	case EXCEPTION_DRAW: return kitchen_juice_out(kitchen, strip->phase.id, amount, fault);
	case EXCEPTION_WRONG: return kitchen_found_wrong(kitchen, strip_load(strip)->row.id, reason, fault);
	case EXCEPTION_RECIPE: return kitchen_batch_wrong(kitchen, strip_batch(strip)->row.id, reason, fault);
	default: return false;
	}
}

/* What would go on against a rule needs a reason; what makes a record worse at once
 * does not: nobody writes while the stove is out. */
static bool stop_holds(const struct strip *strip, enum exception exception, const char *reason, struct fault *fault)
{
	struct about_key_against key = { .station = strip->station.name,
		                         .vent_cut = exception == EXCEPTION_VENT_SHORT,
		                         .earlier_start = exception == EXCEPTION_EARLIER };

	return !stops_let_pass(&FACTS(key_against, key), reason, fault);
}

bool kitchen_exception(struct kitchen *kitchen, int64_t phase_id, enum exception exception, int64_t amount,
                       const char *reason, struct fault *fault)
{
	static const enum verb verbs[] = {
		[EXCEPTION_LOST] = VERB_LOST,
		[EXCEPTION_STOP] = VERB_STOP,
		[EXCEPTION_VENT_SHORT] = VERB_VENT_SHORT,
		[EXCEPTION_EARLIER] = VERB_BEGAN_EARLIER,
		[EXCEPTION_BROKEN_JAR] = VERB_BROKEN_JAR,
		[EXCEPTION_REDO] = VERB_REDO_PROCESS,
		[EXCEPTION_WATER] = VERB_WATER,
		[EXCEPTION_DRAW] = VERB_JUICE_OUT,
		[EXCEPTION_WRONG] = VERB_FOUND_WRONG,
		[EXCEPTION_RECIPE] = VERB_BATCH_WRONG,
		[EXCEPTION_FORCED] = VERB_FORCED_COOLING,
		[EXCEPTION_WEIGHT] = VERB_WEIGHT_EARLY,
		[EXCEPTION_BOILED] = VERB_BOILED_AGAIN,
	};
	static_assert(sizeof(verbs) / sizeof(verbs[0]) == EXCEPTION_COUNT, "a verb for every exception");
	struct moment now = kitchen_now(kitchen);
	struct strip strip;
	const char *words;
	struct act act;

	if (!kitchen_strip_at(kitchen, phase_id, &strip, fault))
		return false;
	words = exception_words(&strip, exception, &now);
	if (words == NULL)
		return fault_set(fault, FAULT_REFUSED, "%s: not possible in \"%s\".", strip_title(&strip),
		                 strip.rule->words);
	if (is_other_act(exception))
		return other_act(kitchen, &strip, exception, amount, reason, fault);
	if (stop_holds(&strip, exception, reason, fault))
		return false;
	if (!act_begin(&act, kitchen, verbs[exception], strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	if (!(exception == EXCEPTION_STOP ? stop(&act, &strip, fault)
	                                  : strip_acts(&strip)->except(&act, &strip, exception, amount, reason, fault)))
		return act_fail(&act);
	act_says_text(&act, strip_title(&strip));
	act_says_text(&act, words);
	act_says_text(&act, reason);
	return act_commit(&act, fault);
}

/* --- found out afterwards -------------------------------------------------------- */

/* The id of the newest hold of a load; 0: none. */
static bool last_hold(struct act *act, int64_t load_id, int64_t *phase_id, struct fault *fault)
{
	struct log_subject subject = { SUBJECT_LOAD, load_id };
	struct log_phase *phases;
	size_t count;

	*phase_id = 0;
	if (!log_phases(act->kitchen->log, subject, &phases, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (strcmp(phases[i].name, phase_name_stored(PHASE_HOLD)) == 0)
			*phase_id = phases[i].id;
	free(phases);
	return true;
}

bool kitchen_found_wrong(struct kitchen *kitchen, int64_t load_id, const char *why, struct fault *fault)
{
	struct log_mark mark = { .load_id = load_id, .kind = MARK_FOUND_WRONG };
	const struct strip *strip;
	struct log_load load;
	struct act act;

	if (why[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Say in a few words what was wrong.");
	if (!log_load_get(kitchen->log, load_id, &load, fault))
		return false;
	strip = kitchen_strip(kitchen, load_id, NULL);
	if (load.process_ended_wall_ms == 0 || (strip != NULL && !found_wrong_later(strip)) ||
	    (load.verdict != VERDICT_VALID && load.verdict != VERDICT_UNKNOWN))
		return fault_set(fault, FAULT_REFUSED, "Its process is not over, or does not count already.");
	if (!act_begin(&act, kitchen, VERB_FOUND_WRONG, load.station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_LOAD, load_id });
	text_copy(mark.words, sizeof(mark.words), why);
	/* Its two hours run from the end of the process; it counts until that is run again. */
	if (!last_hold(&act, load_id, &mark.phase_id, fault) || !act_mark(&act, &mark, fault))
		return act_fail(&act);
	act_says_text(&act, why);
	return act_commit(&act, fault);
}
