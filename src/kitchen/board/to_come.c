/*
 * to_come.c - what a pot on the board will likely still fill, and take of the acid that goes into jars.
 */
#include "kitchen/stock/stock_private.h"

int batch_jars_to_come(const struct strip *strip)
{
	struct yield yield;

	if (strip->recipe == NULL || strip->batch.jar[0] == '\0' || strip->rule->name == PHASE_RINSE ||
	    !pot_yield(strip->recipe, strip->batch.multiple, strip->batch.jar, &yield, NULL) ||
	    yield.jars_likely <= strip->filled)
		return 0;
	return yield.jars_likely - strip->filled;
}

int64_t batch_acid_to_come(const struct strip *strip, enum supply_kind kind)
{
	const struct jar_size *jar = jar_size_named(strip->batch.jar);
	int64_t each = 0;

	for (size_t i = 0; strip->recipe != NULL && jar != NULL && i < strip->recipe->ingredient_count; i++) {
		const struct ingredient *ingredient = &strip->recipe->ingredients[i];

		if (ingredient->adding != ADD_IN_JAR || ingredient->optional || ingredient_is_alternative(ingredient))
			continue;
		if (strip->acid_instead != ACID_NOT_SAID && acid_of(ingredient) != ACID_NOT_SAID)
			each += acid_supply(strip->acid_instead) == kind
			            ? acid_share(strip->lot.food, strip->acid_instead, jar)
			            : 0;
		else if (ingredient->supply == kind)
			each += jar_share(ingredient, jar);
	}
	return each == 0 ? 0 : each * batch_jars_to_come(strip);
}
