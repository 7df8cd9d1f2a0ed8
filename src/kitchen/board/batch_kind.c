/*
 * batch_kind.c - batches, as the board knows them: what is in a pot, and which steps it takes.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/process/pack.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/phases_private.h"
#include "kitchen/board/telling.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"

/* --- in its strip --------------------------------------------------------------------- */

static int64_t id(const struct strip *strip)
{
	return strip->in.batch.row.id;
}

static int64_t opened_ms(const struct strip *strip)
{
	return strip->in.batch.row.opened_wall_ms;
}

static int64_t required_ms(const struct strip *strip)
{
	return strip->in.batch.row.boil_hold_s * INT64_C(1000);
}

static bool adds_at_boil(const struct recipe *recipe)
{
	for (size_t i = 0; recipe != NULL && i < recipe->ingredient_count; i++)
		if (recipe->ingredients[i].adding == ADD_AT_BOIL || recipe->ingredients[i].adding == ADD_LAST)
			return true;
	return recipe == NULL; /* not known any more: leave no step out */
}

static bool gels_by_test(const struct recipe *recipe)
{
	return recipe != NULL && recipe->gel_test != GEL_TEST_NONE;
}

/* Liquid pectin goes into the boil; what a pot without a gel has last, after its boil-hold. */
static unsigned pot_of(const struct strip *strip)
{
	const struct recipe *recipe = strip->in.batch.recipe;
	unsigned pot = pack_is_raw(strip->lot.pack) ? POT_RAW : 0;

	if (recipe == NULL)
		return pot;
	if (recipe->pectin != PECTIN_NONE || recipe->gel_test != GEL_TEST_NONE)
		return pot | POT_GELS;
	for (size_t i = 0; i < recipe->ingredient_count && strip->in.batch.row.boil_hold_s > 0; i++)
		if (recipe->ingredients[i].adding == ADD_LAST)
			return pot | POT_FOLDS;
	return pot;
}

static const struct phase_rule *worded(const struct strip *strip, const struct phase_rule *rule)
{
	return phase_rule_for_pot(rule, pot_of(strip));
}

bool batch_goes_in(const struct strip *strip, enum adding adding)
{
	bool folds = (pot_of(strip) & POT_FOLDS) != 0;

	if (strip->rule->name == PHASE_SUGAR_IN)
		return adding == ADD_AT_BOIL || (adding == ADD_LAST && !folds);
	return strip->rule->name == PHASE_OFF && adding == ADD_LAST && folds;
}

bool batch_skips(const struct recipe *recipe, int boil_hold_s, const struct phase_rule *rule)
{
	switch (rule->name) {
	case PHASE_SUGAR_IN:
	case PHASE_BACK_TO_BOIL: return !adds_at_boil(recipe);
	case PHASE_BOIL_HOLD: return boil_hold_s == 0 || gels_by_test(recipe);
	case PHASE_GEL_POINT: return !gels_by_test(recipe);
	default: return false;
	}
}

static bool skips(const struct strip *strip, const struct phase_rule *rule)
{
	return batch_skips(strip->in.batch.recipe, strip->in.batch.row.boil_hold_s, rule);
}

/* --- in the log ----------------------------------------------------------------------- */

static int64_t station_of(const void *row, bool *racked)
{
	*racked = false;
	return ((const struct log_batch *)row)->station_id;
}

static void put_in(struct strip *strip, const void *row)
{
	strip->in.batch.row = *(const struct log_batch *)row;
}

static void account(struct strip *strip, const struct phase_rule *rule, const struct log_phase *phase,
                    const struct log_phase *before)
{
	(void)before;
	if (rule->name == PHASE_OFF)
		strip->in.batch.off = phase->began;
}

static bool find_taken(struct kitchen *kitchen, struct strip_batch *in, struct fault *fault)
{
	in->taken_ul = 0;
	for (size_t i = 0; i < WORK_KINDS; i++) {
		int64_t ul = 0;

		if (work_kinds[i]->taken_of != NULL && !work_kinds[i]->taken_of(kitchen->log, in->row.id, &ul, fault))
			return false;
		in->taken_ul += ul;
	}
	return true;
}

static bool read_batch(struct kitchen *kitchen, struct strip *strip, struct fault *fault)
{
	struct log_jar *jars;
	size_t count;

	if (!log_lot_get(kitchen->log, strip->in.batch.row.lot_id, &strip->lot, fault) ||
	    !log_jars_of_batch(kitchen->log, strip->in.batch.row.id, &jars, &count, fault))
		return false;
	strip->in.batch.filled = jars_filled(jars, count, NULL);
	free(jars);
	if (!find_taken(kitchen, &strip->in.batch, fault))
		return false;
	if (!acid_taken_instead(kitchen, strip->lot.id, &strip->in.batch.acid_instead, fault))
		return false;
	strip->in.batch.recipe = kitchen_recipe_named(kitchen, strip->in.batch.row.recipe);
	strip->rule = strip_worded(strip, strip->rule);
	if (strip->in.batch.row.multiple > 1)
		(void)snprintf(strip->holds, sizeof(strip->holds), "%s%d x %s",
		               verdict_mark(strip->in.batch.row.verdict, &strip->lot), strip->in.batch.row.multiple,
		               strip->lot.product);
	else
		(void)snprintf(strip->holds, sizeof(strip->holds), "%s%s",
		               verdict_mark(strip->in.batch.row.verdict, &strip->lot), strip->lot.product);
	return true;
}

/* --- looking back --------------------------------------------------------------------- */

static void day_item(const struct kitchen *kitchen, const void *row, struct day_item *item)
{
	const struct log_batch *batch = row;
	struct log_jar *jars;
	struct log_lot lot = { 0 };
	size_t count = 0;
	int filled = 0;

	if (log_jars_of_batch(kitchen->log, batch->id, &jars, &count, NULL)) {
		filled = jars_filled(jars, count, NULL);
		free(jars);
	}
	(void)log_lot_get(kitchen->log, batch->lot_id, &lot, NULL);
	item->subject = (struct log_subject){ SUBJECT_BATCH, batch->id };
	item->opened_wall_ms = batch->opened_wall_ms;
	item->open = batch->open;
	(void)snprintf(item->words, sizeof(item->words), "batch %.24s: %d x %.60s, %s", lot.code, batch->multiple,
	               batch->recipe, count_words(filled, "jar").words);
}

static bool told_apart(const struct kitchen *kitchen, int64_t batch_id, char line[SENTENCE_MAX_BYTES],
                       struct fault *fault)
{
	struct log_batch batch;
	struct log_lot lot;

	if (!log_batch_get(kitchen->log, batch_id, &batch, fault) ||
	    !log_lot_get(kitchen->log, batch.lot_id, &lot, fault))
		return false;
	(void)snprintf(line, SENTENCE_MAX_BYTES, "batch %lld, %s, %s", (long long)batch.id, lot.code, batch.recipe);
	return true;
}

const struct work_kind batch_kind = {
	.content = STRIP_BATCH,
	.subject = SUBJECT_BATCH,
	.words = "batch",
	.shelved = "done",
	.stations = AT_STATION(STATION_POT),
	.phases = batch_phases,
	.planned = PLAN_POT,
	.has_lot = true,
	.takes_hands = true,
	.id = id,
	.opened_ms = opened_ms,
	.required_ms = required_ms,
	.worded = worded,
	.skips = skips,
	.station_of = station_of,
	.put_in = put_in,
	.account = account,
	.read = read_batch,
	.day_item = day_item,
	.tell = tell_batch,
	.told_apart = told_apart,
};
