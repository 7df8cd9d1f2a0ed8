/*
 * load_exceptions.c - what the acts know of loads: their place, and what may go wrong with a process.
 */
#include <stdlib.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/step/kind_acts.h"
#include "log/tables/canner.h"

#define MINUTE_MS (INT64_C(60) * 1000)
/* Process errors: redo within 2 h, else throw out (UNL and one ISU text; the
 * stricter of two published windows). */
#define PROCESS_ERROR_WINDOW_MS (INT64_C(2) * 3600 * 1000)

bool mark_phase(struct act *act, const struct strip *strip, enum mark_kind kind, int64_t amount, const char *words,
                struct fault *fault)
{
	struct log_mark mark = {
		.load_id = strip_load(strip)->row.id, .phase_id = strip->phase.id, .kind = kind, .amount = amount
	};

	text_copy(mark.words, sizeof(mark.words), words);
	return act_mark(act, &mark, fault);
}

/* The process ends with its hold.  One that failed keeps the moment it failed: its
 * window runs. */
static void end_process(struct log_load *load, const struct strip *strip, const struct moment *now)
{
	if (strip->rule->name == PHASE_HOLD && (load->verdict != VERDICT_NOT_VALID || load->process_ended_wall_ms == 0))
		load->process_ended_wall_ms = now->wall_ms;
}

static bool move_on(struct act *act, const struct strip *strip, const struct phase_rule *next, struct fault *fault)
{
	struct log_load load = strip_load(strip)->row;

	load.place = next == NULL ? PLACE_SHELF : next->place;
	end_process(&load, strip, &act->entry.at);
	return log_put_load(act->kitchen->log, &load, fault);
}

/* --- which are open ---------------------------------------------------------------- */

static bool redo_window_open(const struct log_load *load, const struct moment *now)
{
	return load->verdict == VERDICT_NOT_VALID && load->process_ended_wall_ms > 0 &&
	       now->wall_ms - load->process_ended_wall_ms <= PROCESS_ERROR_WINDOW_MS;
}

bool found_wrong_later(const struct strip *strip)
{
	const struct strip_load *in = strip_load(strip);

	return in->row.process_ended_wall_ms > 0 &&
	       (in->row.verdict == VERDICT_VALID || in->row.verdict == VERDICT_UNKNOWN) &&
	       strip->rule->name != PHASE_HOLD;
}

static const char *words_of(const struct strip *strip, enum exception exception, const struct moment *now)
{
	const struct phase_rule *rule = strip->rule;
	struct face face;

	strip_face(strip, now, &face);
	switch (exception) {
	case EXCEPTION_VENT_SHORT:
		return rule->name == PHASE_VENT && rule->kind == PHASE_TIMED && !face.due
		           ? "vent was cut short and weight is on: process NOT valid"
		           : NULL;
	case EXCEPTION_EARLIER:
		return rule->name == PHASE_HOLD && !face.due && strip_load(strip)->row.verdict != VERDICT_NOT_VALID
		           ? "someone saw the hold begin earlier than the key: time is estimated"
		           : NULL;
	case EXCEPTION_BROKEN_JAR:
		return strip_load(strip)->row.place == PLACE_STATION &&
		               strip_load(strip)->row.broken < strip_load(strip)->jars
		           ? "a jar broke: leave the rest in, go on"
		           : NULL;
	case EXCEPTION_FORCED:
		return rule->name == PHASE_COOL_DOWN || rule->name == PHASE_WAIT
		           ? "cooled by force (water, draft, wet cloth): low-acid food counts as UNKNOWN"
		           : NULL;
	case EXCEPTION_WEIGHT:
		return rule->name == PHASE_COOL_DOWN || rule->name == PHASE_WAIT
		           ? "weight lifted before the pressure was zero: low-acid food counts as UNKNOWN"
		           : NULL;
	case EXCEPTION_WRONG:
		return found_wrong_later(strip)
		           ? "found wrong only now (weight, elevation, vent, acid): process NOT valid"
		           : NULL;
	case EXCEPTION_REDO:
		return rule->name == PHASE_UNLOAD && redo_window_open(&strip_load(strip)->row, now)
		           ? "the whole process again, full time, new lids if they had sealed"
		           : NULL;
	default: return NULL;
	}
}

/* --- done ---------------------------------------------------------------------------- */

/* A process that is run again keeps the moment it first failed: two hours are two
 * hours, however often it is tried.  One that was not valid from the start, for what
 * is in the jars, has its two hours from now. */
static bool end_failed(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_load load = strip_load(strip)->row;

	if (load.process_ended_wall_ms != 0)
		return true;
	load.process_ended_wall_ms = act->entry.at.wall_ms;
	return log_put_load(act->kitchen->log, &load, fault);
}

static bool stopped(struct act *act, const struct strip *strip, struct fault *fault)
{
	int64_t passed = strip_passed_ms(strip, &act->entry.at);
	char why[SENTENCE_MAX_BYTES];
	struct text text = TEXT_OVER(why);

	text_add(&text, "stopped in %s%s after ", strip->rule->words,
	         strip->phase.required_ms > 0 && passed >= strip->phase.required_ms ? ", found" : "");
	text_add_duration(&text, passed / 1000);
	if (strip->rule->name == PHASE_HOLD)
		text_add(&text, " of %d:00", strip_load(strip)->row.minutes);
	return end_failed(act, strip, fault) && mark_phase(act, strip, MARK_STOPPED, passed, why, fault);
}

static bool cut_vent(struct act *act, const struct strip *strip, const char *reason, struct fault *fault)
{
	act->entry.breaks_hold = true;
	return phase_change(act, strip, PHASE_CUT_SHORT, strip_next(strip), fault) && end_failed(act, strip, fault) &&
	       mark_phase(act, strip, MARK_VENT_CUT, strip_passed_ms(strip, &act->entry.at), reason, fault);
}

/* A hold may be said to have begun earlier when someone watched it, never before
 * the phase that led to it had begun; the process then counts as "unknown". */
static bool begin_earlier(struct act *act, const struct strip *strip, int64_t minutes, const char *reason,
                          struct fault *fault)
{
	struct log_phase *phases;
	struct log_phase hold = strip->phase;
	int64_t back = minutes * MINUTE_MS;
	int64_t room = 0;
	size_t count;

	if (!log_phases(act->kitchen->log, strip_subject(strip), &phases, &count, fault))
		return false;
	if (count >= 2)
		room = moment_between(&phases[count - 2].began, &hold.began);
	free(phases);
	if (minutes < 1 || back > room)
		return fault_set(fault, FAULT_REFUSED,
		                 "The hold cannot have begun %lld min before the key: give 1 to %lld min.",
		                 (long long)minutes, (long long)(room / MINUTE_MS));
	hold.began = moment_before(&hold.began, back);
	return log_put_phase(act->kitchen->log, &hold, fault) &&
	       mark_phase(act, strip, MARK_EARLIER, back, reason, fault);
}

static bool count_broken(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_load load = strip_load(strip)->row;

	load.broken++;
	return log_put_load(act->kitchen->log, &load, fault);
}

static bool redo_process(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_load load;

	return look_up_again(act, strip, &load, fault) && log_put_load(act->kitchen->log, &load, fault) &&
	       phase_change(act, strip, PHASE_DONE, phase_rule_first(strip->station.kind), fault);
}

static bool except(struct act *act, const struct strip *strip, enum exception exception, int64_t amount,
                   const char *reason, struct fault *fault)
{
	switch (exception) {
	case EXCEPTION_VENT_SHORT: return cut_vent(act, strip, reason, fault);
	case EXCEPTION_EARLIER: return begin_earlier(act, strip, amount, reason, fault);
	case EXCEPTION_BROKEN_JAR: return count_broken(act, strip, fault);
	case EXCEPTION_REDO: return redo_process(act, strip, fault);
	case EXCEPTION_FORCED: return mark_phase(act, strip, MARK_FORCED_COOLING, 0, reason, fault);
	case EXCEPTION_WEIGHT: return mark_phase(act, strip, MARK_WEIGHT_EARLY, 0, reason, fault);
	default: return false;
	}
}

/* Every jar was looked at, and has its fate. */
static bool finished(const struct strip *strip, bool sure, struct fault *fault)
{
	const struct strip_load *in = strip_load(strip);

	(void)sure;
	if (in->unchecked > 0)
		return fault_set(fault, FAULT_REFUSED, "%d of %s %s not checked yet.", in->unchecked,
		                 count_words(in->jars, "jar").words, count_noun(in->unchecked, "is").words);
	if (in->without_fate > 0)
		return fault_set(fault, FAULT_REFUSED, "%s still %s a fate: fridge, freezer, reprocess or discard.",
		                 count_words(in->without_fate, "jar").words,
		                 count_noun(in->without_fate, "needs").words);
	return true;
}

const struct kind_acts load_acts = {
	.content = STRIP_LOAD,
	.finished = finished,
	.move_on = move_on,
	.stop_words = "heat is gone or the load is given up: process NOT valid",
	.stopped = stopped,
	.words = words_of,
	.except = except,
};
