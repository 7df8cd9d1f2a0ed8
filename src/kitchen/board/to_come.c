/*
 * to_come.c - what a pot on the board will likely still fill, and take of the acid that goes into jars.
 */
#include "kitchen/stock/stock_private.h"

int batch_jars_to_come(const struct strip *strip)
{
	const struct strip_batch *in = strip_batch(strip);
	struct yield yield;

	if (in->recipe == NULL || in->row.jar[0] == '\0' || strip->rule->name == PHASE_RINSE ||
	    !pot_yield_less(in->recipe, in->row.multiple, in->row.jar, in->taken_ul, &yield, NULL) ||
	    yield.jars_likely <= in->filled)
		return 0;
	return yield.jars_likely - in->filled;
}

int64_t batch_acid_to_come(const struct strip *strip, enum supply_kind kind)
{
	const struct strip_batch *in = strip_batch(strip);
	const struct jar_size *jar = jar_size_named(in->row.jar);
	int64_t each = 0;

	for (size_t i = 0; in->recipe != NULL && jar != NULL && i < in->recipe->ingredient_count; i++) {
		const struct ingredient *ingredient = &in->recipe->ingredients[i];

		if (ingredient->adding != ADD_IN_JAR || ingredient->optional || ingredient_is_alternative(ingredient))
			continue;
		if (in->acid_instead != ACID_NOT_SAID && acid_of(ingredient) != ACID_NOT_SAID)
			each += acid_supply(in->acid_instead) == kind
			            ? acid_share(strip->lot.food, in->acid_instead, jar)
			            : 0;
		else if (ingredient->supply == kind)
			each += jar_share(ingredient, jar);
	}
	return each == 0 ? 0 : each * batch_jars_to_come(strip);
}
