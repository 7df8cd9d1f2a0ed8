/*
 * acid_lines.c - acid as recipes ask for it and as it went into a pot or its jars.
 */
#include <stdlib.h>
#include <string.h>

#include "engine/food/acid.h"
#include "engine/food/food.h"
#include "engine/gate/gate.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/board_private.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"

static enum acid acid_of_supply(enum supply_kind supply)
{
	for (int acid = ACID_LEMON_JUICE; acid < ACID_COUNT; acid++)
		if (supply != SUPPLY_OTHER && acid_supply((enum acid)acid) == supply)
			return (enum acid)acid;
	return ACID_NOT_SAID;
}

enum acid acid_of(const struct ingredient *ingredient)
{
	return acid_of_supply(ingredient->supply);
}

static bool is_asked(const struct ingredient *line)
{
	return !line->optional && acid_of(line) != ACID_NOT_SAID;
}

const struct ingredient *acid_asked_by(const struct recipe *recipe)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++)
		if (is_asked(&recipe->ingredients[i]))
			return &recipe->ingredients[i];
	return NULL;
}

const struct ingredient *acid_in_jar(const struct recipe *recipe)
{
	for (size_t i = 0; recipe != NULL && i < recipe->ingredient_count; i++)
		if (recipe->ingredients[i].adding == ADD_IN_JAR && is_asked(&recipe->ingredients[i]))
			return &recipe->ingredients[i];
	return NULL;
}

const struct ingredient *ingredient_of(const struct recipe *recipe, const struct log_batch_amount *amount)
{
	for (size_t i = 0; recipe != NULL && i < recipe->ingredient_count; i++)
		if (strcmp(recipe->ingredients[i].name, amount->ingredient) == 0)
			return &recipe->ingredients[i];
	return NULL;
}

bool amount_is_acid(const struct recipe *recipe, const struct log_batch_amount *amount)
{
	const struct ingredient *line = ingredient_of(recipe, amount);

	return acid_of_supply(amount->supply) != ACID_NOT_SAID && amount->wanted > 0 &&
	       (line == NULL || !line->optional);
}

/* What the card says of acid in the pot; `text` NULL: not told in words. */
bool look_in_pot(const struct kitchen *kitchen, const struct log_batch *batch, enum acid *acid, struct text *text,
                 struct fault *fault)
{
	const struct recipe *recipe = kitchen_recipe_named(kitchen, batch->recipe);
	struct log_batch_amount *amounts;
	size_t count;

	*acid = ACID_NONE_ASKED;
	if (!log_batch_amounts(kitchen->log, batch->id, &amounts, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		struct measured measured;

		if (!amount_is_acid(recipe, &amounts[i]))
			continue;
		measure_amount(amounts[i].measure, amounts[i].supply, amounts[i].wanted, kitchen->board.house.units,
		               &measured);
		if (text != NULL)
			text_add(text, "%s%s of %s", *acid == ACID_NONE_ASKED ? "" : " and ", measured.words,
			         amounts[i].ingredient);
		if (amounts[i].used < amounts[i].wanted)
			*acid = ACID_LEFT_OUT;
		else if (*acid == ACID_NONE_ASKED)
			*acid = ACID_AS_PRINTED;
	}
	free(amounts);
	return true;
}

bool acid_in_pot(const struct kitchen *kitchen, int64_t batch_id, enum acid *acid, struct fault *fault)
{
	struct log_batch batch;

	return log_batch_get(kitchen->log, batch_id, &batch, fault) && look_in_pot(kitchen, &batch, acid, NULL, fault);
}

bool acid_taken_instead(const struct kitchen *kitchen, int64_t lot_id, enum acid *acid, struct fault *fault)
{
	struct log_mark *marks;
	size_t count;

	*acid = ACID_NOT_SAID;
	if (!log_marks_of_lot(kitchen->log, lot_id, &marks, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		if (marks[i].kind == MARK_ACID_INSTEAD)
			(void)acid_from_name(marks[i].words, acid);
	free(marks);
	return true;
}

int64_t acid_share(const char *food, enum acid acid, const struct jar_size *jar)
{
	const struct food *line = food_named(food);

	return line == NULL ? 0 : acid_in_ledger(acid, acid_for_jar(line->acid_rule, acid, jar));
}
