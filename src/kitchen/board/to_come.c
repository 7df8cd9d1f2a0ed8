/*
 * to_come.c - what a pot on the board will likely still fill, and take of the acid that goes into jars.
 */
#include "kitchen/stock/stock_private.h"

int batch_jars_to_come(const struct strip *strip)
{
	struct yield yield;

	if (strip_batch(strip)->recipe == NULL || strip_batch(strip)->row.jar[0] == '\0' ||
	    strip->rule->name == PHASE_RINSE ||
	    !pot_yield(strip_batch(strip)->recipe, strip_batch(strip)->row.multiple, strip_batch(strip)->row.jar,
	               &yield, NULL) ||
	    yield.jars_likely <= strip_batch(strip)->filled)
		return 0;
	return yield.jars_likely - strip_batch(strip)->filled;
}

int64_t batch_acid_to_come(const struct strip *strip, enum supply_kind kind)
{
	const struct jar_size *jar = jar_size_named(strip_batch(strip)->row.jar);
	int64_t each = 0;

	for (size_t i = 0;
	     strip_batch(strip)->recipe != NULL && jar != NULL && i < strip_batch(strip)->recipe->ingredient_count;
	     i++) {
		const struct ingredient *ingredient = &strip_batch(strip)->recipe->ingredients[i];

		if (ingredient->adding != ADD_IN_JAR || ingredient->optional || ingredient_is_alternative(ingredient))
			continue;
		if (strip_batch(strip)->acid_instead != ACID_NOT_SAID && acid_of(ingredient) != ACID_NOT_SAID)
			each += acid_supply(strip_batch(strip)->acid_instead) == kind
			            ? acid_share(strip->lot.food, strip_batch(strip)->acid_instead, jar)
			            : 0;
		else if (ingredient->supply == kind)
			each += jar_share(ingredient, jar);
	}
	return each == 0 ? 0 : each * batch_jars_to_come(strip);
}
