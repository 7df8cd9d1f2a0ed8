/*
 * pot_acts.c - what the acts know of batches: their end, another recipe, a second boil.
 */
#include "kitchen/step/kind_acts.h"
#include "log/tables/pot.h"

static bool move_on(struct act *act, const struct strip *strip, const struct phase_rule *next, struct fault *fault)
{
	struct log_batch batch = strip_batch(strip)->row;

	batch.open = next != NULL;
	return log_put_batch(act->kitchen->log, &batch, fault);
}

static const char *words_of(const struct strip *strip, enum exception exception, const struct moment *now)
{
	(void)now;
	if (exception == EXCEPTION_RECIPE && strip_batch(strip)->row.verdict != VERDICT_NOT_VALID)
		return "not as the recipe says (acid forgotten, fresh juice, other pectin): its jars are marked";
	if (exception == EXCEPTION_BOILED && (strip->rule->name == PHASE_OFF || strip->rule->name == PHASE_FILL))
		return "boiled again: what is in the pot is off the heat from now";
	return NULL;
}

/* Its standing ends, and begins anew with the phase that it is off the heat in. */
static bool boiled_again(struct act *act, const struct strip *strip, struct fault *fault)
{
	return phase_change(act, strip, PHASE_LOST, phase_rule_of(strip->station.kind, PHASE_OFF), fault);
}

static bool except(struct act *act, const struct strip *strip, enum exception exception, int64_t amount,
                   const char *reason, struct fault *fault)
{
	(void)amount;
	(void)reason;
	return exception == EXCEPTION_BOILED && boiled_again(act, strip, fault);
}

static bool finished(const struct strip *strip, bool sure, struct fault *fault)
{
	return strip_batch(strip)->filled > 0 || strip_batch(strip)->trayed_ul > 0 || sure ||
	       fault_set(fault, FAULT_CONFIRM, "%s: no jar was filled. Is the batch given up?", strip_title(strip));
}

const struct kind_acts batch_acts = {
	.content = STRIP_BATCH,
	.move_on = move_on,
	.finished = finished,
	.stop_words = "off the heat before its time",
	.words = words_of,
	.except = except,
};
