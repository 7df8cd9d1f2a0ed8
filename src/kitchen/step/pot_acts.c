/*
 * pot_acts.c - what the acts know of batches: what goes in, their end, another recipe, a second boil.
 */
#include <stdlib.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/look.h"
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
		return "not as the recipe says (no acid, fresh juice, other pectin): jars marked";
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
	return strip_batch(strip)->filled > 0 || strip_batch(strip)->taken_ul > 0 || sure ||
	       fault_set(fault, FAULT_CONFIRM, "%s: no jar was filled. Is the batch given up?", strip_title(strip));
}

/* A line of the card that goes in now, and is not ticked off.  What may be left out, and what was
 * put down as not used, is not waited for. */
static bool is_open(const struct strip_batch *batch, const struct strip *strip, const struct log_batch_amount *amount,
                    size_t n)
{
	const struct ingredient *line = ingredient_of(batch->recipe, amount);

	return line != NULL && !line->optional && batch_goes_in(strip, line->adding) && n < 32 &&
	       (batch->row.ticks & 1u << n) == 0 && (amount->used > 0 || amount->wanted == 0);
}

static void add_amount(const struct kitchen *kitchen, const struct log_batch_amount *amount, struct text *text)
{
	struct measured measured;

	if (amount->used > 0) {
		measure_amount(amount->measure, amount->supply, amount->used, kitchen_board(kitchen)->house.units,
		               &measured);
		text_add(text, "%s of ", measured.words);
	}
	text_add(text, "%s", amount->ingredient);
}

/* The step says "it is in".  Where one line is open that is the line, and nobody with the sugar in hand
 * wants to open the card as well: it is ticked off with the step.  Of several one may be forgotten: they
 * are read out first, and the second press ticks them all off. */
static bool puts_in(const struct kitchen *kitchen, struct strip *strip, bool sure, struct text *said,
                    struct fault *fault)
{
	const struct strip_batch *batch = strip_batch(strip);
	struct log_batch_amount *amounts;
	uint32_t ticks = 0;
	size_t count;
	int open = 0;

	if (!kitchen_batch_amounts(kitchen, batch->row.id, &amounts, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		if (!is_open(batch, strip, &amounts[i], i))
			continue;
		text_add(said, "%s", open++ == 0 ? "" : ", ");
		add_amount(kitchen, &amounts[i], said);
		ticks |= 1u << i;
	}
	free(amounts);
	if (open > 1 && !sure)
		return fault_set(fault, FAULT_CONFIRM, "%s: is all of it in? Not ticked off: %s.", strip_title(strip),
		                 said->at);
	strip->in.batch.row.ticks |= ticks;
	return true;
}

const struct kind_acts batch_acts = {
	.content = STRIP_BATCH,
	.move_on = move_on,
	.finished = finished,
	.puts_in = puts_in,
	.stop_words = "off the heat before its time",
	.words = words_of,
	.except = except,
};
