/*
 * juicer_acts.c - what the acts know of juicer runs: their end, their water, juice drawn on the way.
 */
#include "kitchen/step/kind_acts.h"
#include "log/tables/pot.h"

static bool move_on(struct act *act, const struct strip *strip, const struct phase_rule *next, struct fault *fault)
{
	struct log_run run = strip_run(strip)->row;

	run.open = next != NULL;
	return log_put_run(act->kitchen->log, &run, fault);
}

static bool see_water(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_run run = strip_run(strip)->row;

	run.water = act->entry.at;
	run.water_checks++;
	return log_put_run(act->kitchen->log, &run, fault);
}

static const char *words_of(const struct strip *strip, enum exception exception, const struct moment *now)
{
	if (exception == EXCEPTION_WATER && strip->rule->name != PHASE_DRAIN)
		return strip_dry_in_ms(strip, now) <= 0
		           ? "heat off, the pan has cooled and is filled: its clock starts again"
		           : "water checked and topped up: its clock starts again";
	if (exception == EXCEPTION_DRAW && strip->rule->name == PHASE_RUN)
		return "some juice is drawn off now: measure it";
	return NULL;
}

static bool except(struct act *act, const struct strip *strip, enum exception exception, int64_t amount,
                   const char *reason, struct fault *fault)
{
	(void)amount;
	(void)reason;
	return exception == EXCEPTION_WATER && see_water(act, strip, fault);
}

static bool finished(const struct strip *strip, bool sure, struct fault *fault)
{
	(void)sure;
	return fault_set(fault, FAULT_REFUSED, "%s: measure the juice first; 0 is an answer.", strip_title(strip));
}

const struct kind_acts run_acts = {
	.content = STRIP_RUN,
	.move_on = move_on,
	.finished = finished,
	.second_verb = VERB_WATER_SEEN,
	.second_seen = see_water,
	.stop_words = "the run ends early: draw what juice there is",
	.words = words_of,
	.except = except,
};
