/*
 * batch_edit.c - correcting what was written down of a batch, and what turned out
 * to be wrong with it.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/act/verdict.h"
#include "kitchen/canner/canner_private.h"
#include "kitchen/pot/pot_private.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"

/* --- corrections ------------------------------------------------------------------------- */

/* What the batch still holds of the juice of uses[at]; 0 when a later use is of
 * the same juice and has been asked about. */
static int64_t still_held(const struct log_juice_use *uses, size_t count, size_t at)
{
	int64_t held = 0;

	for (size_t i = 0; i < count; i++) {
		if (uses[i].juice_id != uses[at].juice_id)
			continue;
		if (i > at)
			return 0;
		held += uses[i].ul;
	}
	return held;
}

/* Back into the juice it was taken from, the last one first, and no more into
 * each than was taken of it. */
static bool give_back_juice(struct act *act, int64_t batch_id, int64_t ul, struct fault *fault)
{
	struct log_juice_use *uses;
	size_t count;
	bool done = true;

	if (!log_juice_uses(act->kitchen->log, batch_id, &uses, &count, fault))
		return false;
	for (size_t i = count; i-- > 0 && ul > 0 && done;) {
		int64_t held = still_held(uses, count, i);
		struct log_juice_use back = { .juice_id = uses[i].juice_id,
			                      .batch_id = batch_id,
			                      .ul = held < ul ? -held : -ul,
			                      .why = JUICE_CORRECTION,
			                      .wall_ms = act->entry.at.wall_ms };

		if (held <= 0)
			continue;
		ul += back.ul;
		done = log_put_juice_use(act->kitchen->log, &back, fault);
	}
	free(uses);
	return done && (ul == 0 || fault_set(fault, FAULT_MISSING, "That batch took no more juice than that."));
}

static bool correct_ledger(struct act *act, const struct log_batch_amount *amount, int64_t more, struct fault *fault)
{
	struct ingredient ingredient = { .name = amount->ingredient,
		                         .supply = amount->supply,
		                         .measure = amount->measure };

	if (amount->supply == SUPPLY_OTHER)
		return true;
	if (amount->supply != SUPPLY_JUICE)
		return supply_move(act, amount->supply, "", -more, SUPPLY_CORRECTION, fault);
	return more > 0 ? take_juice(act, &ingredient, amount->batch_id, more, fault)
	                : give_back_juice(act, amount->batch_id, -more, fault);
}

/* What went into the pot is in the jars that were filled from it. */
static bool correct_acid(struct act *act, const struct recipe *recipe, const struct log_batch_amount *amount,
                         struct fault *fault)
{
	struct log_jar *jars;
	enum acid acid;
	size_t count;
	bool done = true;

	if (!amount_is_acid(recipe, amount))
		return true;
	if (!acid_in_pot(act->kitchen, amount->batch_id, &acid, fault) ||
	    !log_jars_of_batch(act->kitchen->log, amount->batch_id, &jars, &count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++) {
		if (acid == ACID_NONE_ASKED || jars[i].acid == acid)
			continue;
		jars[i].acid = acid;
		done = log_put_jar(act->kitchen->log, &jars[i], fault);
	}
	free(jars);
	return done;
}

/* Acid below what the recipe asks for. */
static bool check_acid(const struct kitchen *kitchen, const struct recipe *recipe,
                       const struct log_batch_amount *amount, int64_t used, const char *reason, bool *left_out,
                       struct fault *fault)
{
	struct measured asked;
	char why[ACID_ANSWER_BYTES];
	struct text text = TEXT_OVER(why);
	struct about_key_fill key = { .why = why };

	*left_out = amount_is_acid(recipe, amount) && used < amount->wanted;
	key.acid_needed = *left_out;
	measure_amount(amount->measure, amount->supply, amount->wanted, kitchen->board.house.units, &asked);
	text_add(&text, "%s of %s, in the pot", asked.words, amount->ingredient);
	return stops_let_pass(&FACTS(key_fill, key), reason, fault);
}

static bool amount_at(const struct kitchen *kitchen, int64_t batch_id, int place, struct log_batch_amount *out,
                      struct fault *fault)
{
	struct log_batch_amount *amounts;
	size_t count;

	memset(out, 0, sizeof(*out));
	if (!log_batch_amounts(kitchen->log, batch_id, &amounts, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (amounts[i].place == place)
			*out = amounts[i];
	free(amounts);
	return out->id != 0 || fault_set(fault, FAULT_MISSING, "The batch has no such line.");
}

static bool write_amount(struct act *act, const struct log_batch *batch, struct log_batch_amount *amount, int64_t used,
                         bool left_out, const char *reason, struct fault *fault)
{
	const struct recipe *recipe = kitchen_recipe_named(act->kitchen, batch->recipe);
	int64_t more = used - amount->used;

	amount->used = used;
	return log_put_batch_amount(act->kitchen->log, amount, fault) && correct_ledger(act, amount, more, fault) &&
	       correct_acid(act, recipe, amount, fault) &&
	       (!left_out || mark_acid_left_out(act, batch->lot_id, reason, fault));
}

bool kitchen_batch_amount(struct kitchen *kitchen, int64_t batch_id, int place, int64_t used, const char *reason,
                          struct fault *fault)
{
	struct log_batch_amount amount;
	struct log_batch batch;
	struct act act;
	bool left_out;

	if (used < 0)
		return fault_set(fault, FAULT_MISSING, "The batch has no such line.");
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault) ||
	    !amount_at(kitchen, batch_id, place, &amount, fault) ||
	    !check_acid(kitchen, kitchen_recipe_named(kitchen, batch.recipe), &amount, used, reason, &left_out,
	                fault) ||
	    !act_begin(&act, kitchen, VERB_EDIT_AMOUNT, batch.station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch_id });
	if (!write_amount(&act, &batch, &amount, used, left_out, reason, fault))
		return act_fail(&act);
	act_says_text(&act, batch.recipe);
	act_says_number(&act, used);
	act_says_text(&act, measure_name(amount.measure));
	act_says_text(&act, amount.ingredient);
	act_says_text(&act, left_out ? reason : "");
	return act_commit(&act, fault);
}

/* More jars than counted: filled with the newest of their size, or of the batch,
 * and with lids of the same box. */
static bool add_jars(struct act *act, const struct strip *strip, const struct log_jar *rows, size_t count,
                     const char *size, int more, struct fault *fault)
{
	const struct log_jar *like = &rows[count - 1];

	for (size_t i = 0; i < count; i++)
		if (strcmp(rows[i].size, size) == 0)
			like = &rows[i];
	return check_lids(act->kitchen, like->lid_box_id, more, fault) &&
	       put_filled(act, strip, size, more, like, fault);
}

/* Jars come from a filling, which asks for the acid; a recount only corrects it. */
static bool check_recount(const struct strip *strip, size_t count, const struct jar_size *size, int more,
                          struct fault *fault)
{
	const struct strip_batch *in = strip_batch(strip);

	if (more <= 0)
		return true;
	if (count == 0)
		return fault_set(fault, FAULT_REFUSED, "No jar of %s has been filled yet; there is nothing to correct.",
		                 in->row.recipe);
	if (in->recipe != NULL && !recipe_allows_jar(in->recipe, size->name))
		return fault_set(fault, FAULT_REFUSED, "%s does not go in that jar.", in->row.recipe);
	return true;
}

/* Fewer jars than counted: the newest waiting ones never were. */
static bool remove_waiting(struct act *act, struct log_jar *jars, size_t count, const char *size, int fewer,
                           struct fault *fault)
{
	for (size_t i = count; i-- > 0 && fewer > 0;) {
		if (jars[i].load_id != 0 || strcmp(jars[i].size, size) != 0 || jars[i].fate != FATE_NONE ||
		    jars[i].state != JAR_UNCHECKED)
			continue;
		if (!log_remove_jar(act->kitchen->log, jars[i].id, fault))
			return false;
		fewer--;
	}
	if (fewer > 0)
		return fault_set(fault, FAULT_REFUSED, "%d of those jars %s in a canner already.", fewer,
		                 count_noun(fewer, "is").words);
	return true;
}

bool kitchen_batch_jars(struct kitchen *kitchen, int64_t batch_id, const char *jar, int jars, struct fault *fault)
{
	const struct jar_size *size = jar_size_named(jar);
	struct strip strip = { .content = STRIP_BATCH };
	struct log_jar *rows;
	struct act act;
	size_t count;
	enum acid acid = ACID_NOT_SAID;
	int have = 0;
	bool done;

	if (size == NULL || jars < 0 || jars > 99)
		return fault_set(fault, FAULT_MISUSE, "Count the jars: 0 to 99, of a known size.");
	if (!log_batch_get(kitchen->log, batch_id, &strip.in.batch.row, fault) ||
	    !log_lot_get(kitchen->log, strip.in.batch.row.lot_id, &strip.lot, fault) ||
	    !log_jars_of_batch(kitchen->log, batch_id, &rows, &count, fault))
		return false;
	strip.in.batch.recipe = kitchen_recipe_named(kitchen, strip.in.batch.row.recipe);
	have = jars_filled(rows, count, size->name);
	for (size_t i = 0; i < count; i++)
		if (i == 0 || strcmp(rows[i].size, size->name) == 0)
			acid = rows[i].acid;
	if (!check_recount(&strip, count, size, jars - have, fault) ||
	    !act_begin(&act, kitchen, VERB_EDIT_JARS, strip_batch(&strip)->row.station_id, fault)) {
		free(rows);
		return false;
	}
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch_id });
	done = jars > have ? add_jars(&act, &strip, rows, count, size->name, jars - have, fault)
	                   : remove_waiting(&act, rows, count, size->name, have - jars, fault);
	free(rows);
	if (!done || !use_with_jars(&act, &strip, size->name, jars - have, acid, fault))
		return act_fail(&act);
	act_says_text(&act, strip_batch(&strip)->row.recipe);
	act_says_number(&act, jars);
	act_says_text(&act, size->name);
	return act_commit(&act, fault);
}

/* --- found wrong -------------------------------------------------------------------------- */

static bool is_marked(struct kitchen *kitchen, const struct log_lot *lot, bool *marked, struct fault *fault)
{
	struct log_mark *marks;
	size_t count;

	*marked = false;
	if (!log_marks_of_lot(kitchen->log, lot->id, &marks, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		*marked = *marked || marks[i].kind == MARK_NOT_AS_RECIPE;
	free(marks);
	return true;
}

bool kitchen_batch_wrong(struct kitchen *kitchen, int64_t batch_id, const char *why, struct fault *fault)
{
	struct log_mark mark = { .kind = MARK_NOT_AS_RECIPE };
	struct log_batch batch;
	struct log_lot lot;
	struct act act;
	bool marked;

	if (why[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Say in a few words what was wrong.");
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault) ||
	    !log_lot_get(kitchen->log, batch.lot_id, &lot, fault) || !is_marked(kitchen, &lot, &marked, fault))
		return false;
	if (marked)
		return fault_set(fault, FAULT_REFUSED, "%s is marked already: %s.", lot.code, batch.verdict_why);
	if (!act_begin(&act, kitchen, VERB_BATCH_WRONG, batch.station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_BATCH, batch_id });
	mark.lot_id = lot.id;
	text_copy(mark.words, sizeof(mark.words), why);
	if (!act_mark(&act, &mark, fault) || !judge_touched(&act, fault) ||
	    !log_batch_get(kitchen->log, batch_id, &batch, fault))
		return act_fail(&act);
	act_says_text(&act, lot.code);
	act_says_text(&act, why);
	act_says_number(&act, batch.verdict == VERDICT_NOT_VALID);
	return act_commit(&act, fault);
}
