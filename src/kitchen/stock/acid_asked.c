#include "kitchen/stock/acid_asked.h"

#include <stdlib.h>
#include <string.h>

#include "engine/gate/gate.h"
#include "engine/recipe/amount.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

/* --- what is asked -------------------------------------------------------------------------- */

static bool may_be_none(const enum acid *answers, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (answers[i] == ACID_NONE_ASKED)
			return true;
	return false;
}

size_t kitchen_acid_answers(const struct kitchen *kitchen, const char *product, const struct food *food,
                            const struct jar_size *jar, enum acid out[ACID_COUNT])
{
	const struct recipe *recipe = kitchen_recipe_named(kitchen, product);
	const struct ingredient *line = recipe == NULL ? NULL : acid_asked_by(recipe);
	size_t count = acid_answers(food, jar, out);

	if (food == NULL || recipe == NULL || strcmp(recipe->food, food->name) != 0 || !may_be_none(out, count))
		return count;
	out[0] = line == NULL ? ACID_NONE_ASKED : ACID_AS_PRINTED;
	out[1] = line == NULL ? ACID_AS_PRINTED : ACID_NONE_ASKED;
	return line != NULL && line->amount > 0 ? 1 : 2; /* of 0 the sheet of the pectin says it */
}

/* What was decided when the batch was begun comes first. */
static void ask_in_jar(const struct ingredient *line, const struct food *food, const struct jar_size *jar,
                       enum acid instead, enum unit_system units, struct acid_asked *out)
{
	enum acid published[ACID_COUNT];
	size_t count = food != NULL && food->acid_rule != NULL && food->acid_rule->kind == ACID_PER_JAR
	                   ? acid_answers(food, jar, published)
	                   : 0;
	struct text text = TEXT_OVER(out->words);
	struct measured measured;

	out->asked = true;
	out->in_jar = true;
	if (instead != ACID_NOT_SAID)
		out->answers[out->answer_count++] = instead;
	out->answers[out->answer_count++] = acid_of(line);
	for (size_t i = 0; i < count; i++)
		if (published[i] != acid_of(line) && published[i] != instead)
			out->answers[out->answer_count++] = published[i];
	measure_amount(line->measure, line->supply, jar_share(line, jar), units, &measured);
	text_add(&text, "%s of %s", measured.words, line->name);
}

/* A recipe that is no longer known, of a food that takes acid in each jar. */
static void ask_by_food(const struct food *food, const struct jar_size *jar, struct acid_asked *out)
{
	struct text text = TEXT_OVER(out->words);

	out->asked = true;
	out->in_jar = true;
	out->answer_count = acid_answers(food, jar, out->answers);
	acid_asked_words(food, jar, &text);
}

/* Of a recipe that is no longer known nobody can say that the acid is in the pot. */
static bool ask_in_pot(const struct kitchen *kitchen, const struct log_batch *batch, const struct log_lot *lot,
                       const struct food *food, struct acid_asked *out, struct fault *fault)
{
	bool by_food = food != NULL && food->acid_rule != NULL;
	struct text text = TEXT_OVER(out->words);
	enum acid acid;

	if (!look_in_pot(kitchen, batch, &acid, &text, fault))
		return false;
	out->short_in_pot = acid == ACID_LEFT_OUT;
	out->asked = acid != ACID_NONE_ASKED || lot->acidity == ACIDITY_ACIDIFIED ||
	             (by_food && kitchen_recipe_named(kitchen, batch->recipe) == NULL);
	if (out->asked) {
		out->answers[out->answer_count++] = ACID_AS_PRINTED;
		text_add(&text, "%s", acid == ACID_NONE_ASKED ? "as the recipe says" : ", in the pot");
	}
	return true;
}

static bool vinegar_is_said(const struct kitchen *kitchen, int64_t lot_id, bool *said, struct fault *fault)
{
	struct log_mark *marks;
	size_t count;

	*said = false;
	if (!log_marks_of_lot(kitchen->log, lot_id, &marks, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		*said = *said || marks[i].kind == MARK_VINEGAR;
	free(marks);
	return true;
}

bool kitchen_acid_asked(const struct kitchen *kitchen, int64_t batch_id, const char *jar, struct acid_asked *out,
                        struct fault *fault)
{
	const struct jar_size *size = jar_size_named(jar);
	const struct ingredient *line;
	const struct food *food;
	struct log_batch batch;
	struct log_lot lot;
	enum acid instead;
	bool said = false;

	memset(out, 0, sizeof(*out));
	if (!log_batch_get(kitchen->log, batch_id, &batch, fault) ||
	    !log_lot_get(kitchen->log, batch.lot_id, &lot, fault))
		return false;
	if (!acid_taken_instead(kitchen, lot.id, &instead, fault))
		return false;
	food = food_named(lot.food);
	line = acid_in_jar(kitchen_recipe_named(kitchen, batch.recipe));
	if (line != NULL && size != NULL)
		ask_in_jar(line, food, size, instead, kitchen->board.house.units, out);
	else if (size != NULL && food != NULL && food->acid_rule != NULL && food->acid_rule->kind == ACID_PER_JAR)
		ask_by_food(food, size, out);
	else if (!ask_in_pot(kitchen, &batch, &lot, food, out, fault))
		return false;
	if (food == NULL || !out->asked || !acid_asks_vinegar(food->acid_rule, out->answers[0]))
		return true;
	if (!vinegar_is_said(kitchen, lot.id, &said, fault))
		return false;
	out->vinegar = !said;
	return true;
}

void acid_asked_tick(const struct acid_asked *asked, size_t n, const struct strip *strip, const char *jar, int jars,
                     struct text *text)
{
	const struct food *food = food_named(strip->lot.food);
	const struct jar_size *size = jar_size_named(jar);
	bool published = asked->in_jar && food != NULL && size != NULL && acid_is_answer(food, size, asked->answers[n]);

	if (published)
		acid_answer_words(food, asked->answers[n], size, jars, text);
	else
		text_add(text, "%s: it is in%s", asked->words, asked->in_jar ? " every jar" : "");
}

/* --- instead of ------------------------------------------------------------------------------ */

bool find_acid_instead(const struct kitchen *kitchen, const struct recipe *recipe, const char *jar, int jars,
                       struct acid_instead *out, struct fault *fault)
{
	const struct ingredient *own = acid_in_jar(recipe);
	const struct food *food = food_named(recipe->food);
	const struct jar_size *size = jar_size_named(jar);
	bool published =
	    own != NULL && food != NULL && food->acid_rule != NULL && food->acid_rule->kind == ACID_PER_JAR;
	enum acid answers[ACID_COUNT];
	size_t count = published ? acid_answers(food, size, answers) : 0;

	memset(out, 0, sizeof(*out));
	for (size_t i = 0; i < count && out->acid == ACID_NOT_SAID; i++) {
		struct text text = TEXT_OVER(out->words);
		struct log_supply supply;
		struct fault why = { 0 };
		char stock[64];

		if (answers[i] == acid_of(own))
			continue;
		if (!log_supply_of(kitchen->log, acid_supply(answers[i]), "", &supply, &why)) {
			if (why.kind != FAULT_MISSING)
				return fault_set(fault, why.kind, "%s", why.sentence);
			continue;
		}
		if (supply.stock < acid_share(recipe->food, answers[i], size) * jars)
			continue;
		out->acid = answers[i];
		acid_dose_words(food->acid_rule, answers[i], size, &text);
		amount_words(supply_measure(supply.kind), supply.stock, kitchen->board.house.units, stock,
		             sizeof(stock));
		text_add(&text, " %s in each %s, %s here", acid_words(answers[i]), size->words, stock);
	}
	return true;
}

bool mark_acid_instead(struct act *act, int64_t lot_id, enum acid acid, struct fault *fault)
{
	struct log_mark mark = { .lot_id = lot_id, .kind = MARK_ACID_INSTEAD };

	text_copy(mark.words, sizeof(mark.words), acid_name(acid));
	return act_mark(act, &mark, fault);
}

/* --- what is put down ---------------------------------------------------------------------- */

bool mark_acid_left_out(struct act *act, int64_t lot_id, const char *why, struct fault *fault)
{
	struct log_mark mark = { .lot_id = lot_id, .kind = MARK_ACID_LEFT_OUT };

	text_copy(mark.words, sizeof(mark.words), why);
	return act_mark(act, &mark, fault);
}

bool mark_vinegar(struct act *act, int64_t lot_id, int tenths, const char *why, struct fault *fault)
{
	struct log_mark mark = { .lot_id = lot_id, .kind = MARK_VINEGAR, .amount = tenths };

	if (tenths == 0 && why[0] == '\0')
		return true; /* nobody said a word: what was said before stays */
	text_copy(mark.words, sizeof(mark.words), tenths < VINEGAR_LEAST_TENTHS ? why : "");
	return act_mark(act, &mark, fault);
}
