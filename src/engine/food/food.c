/* Lookups in the tables of what each food needs. */
#include "engine/food/food.h"

#include <string.h>

#include "base/text.h"
#include "engine/food/acid.h"
#include "engine/recipe/scaling.h"

#define PINT_OUNCES 16
#define QUART_OUNCES 32

/* --- acid ------------------------------------------------------------------------ */

static const struct acid_dose *dose_of(const struct acid_rule *rule, enum acid acid)
{
	for (size_t i = 0; rule != NULL && i < rule->dose_count; i++) {
		if (rule->doses[i].acid == acid)
			return &rule->doses[i];
	}
	return NULL;
}

int64_t acid_for_jar(const struct acid_rule *rule, enum acid acid, const struct jar_size *jar)
{
	const struct acid_dose *dose = dose_of(rule, acid);

	if (dose == NULL || jar == NULL || rule->kind != ACID_PER_JAR)
		return 0;
	if (jar->fluid_ounces <= PINT_OUNCES)
		return (dose->pint_ul * jar->fluid_ounces + PINT_OUNCES - 1) / PINT_OUNCES;
	if (jar->fluid_ounces <= QUART_OUNCES)
		return dose->quart_ul;
	return (dose->quart_ul * jar->fluid_ounces + QUART_OUNCES - 1) / QUART_OUNCES;
}

int64_t acid_in_ledger(enum acid acid, int64_t ul)
{
	int64_t mg_per_cup = supply_mg_per_cup(acid_supply(acid));

	return mg_per_cup == 0 ? ul : (ul * mg_per_cup + CUP_UL / 2) / CUP_UL;
}

static bool offered_for_all(const struct acid_rule *rule, enum acid acid, const struct recipe *recipe)
{
	for (size_t i = 0; i < jar_size_count; i++) {
		if (recipe_allows_jar(recipe, jar_sizes[i].name) && acid_for_jar(rule, acid, &jar_sizes[i]) == 0)
			return false;
	}
	return true;
}

bool acid_in_every_jar(const struct acid_rule *rule, const struct recipe *recipe)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		const struct known_ingredient *known = ingredient_picked(item);

		for (size_t d = 0;
		     known != NULL && item->adding == ADD_IN_JAR && !item->optional && d < rule->dose_count; d++) {
			const struct acid_dose *dose = &rule->doses[d];

			if (known->acid == dose->acid && acid_supply(dose->acid) == item->supply &&
			    item->amount >= acid_in_ledger(dose->acid, dose->quart_ul) &&
			    offered_for_all(rule, dose->acid, recipe))
				return true;
		}
	}
	return false;
}

void acid_rule_words(const struct acid_rule *rule, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	for (size_t i = 0; i < rule->dose_count; i++)
		text_add(&text, "%s%s%s%s", i == 0 ? "" : " or ", rule->doses[i].words_quart,
		         rule->doses[i].words_quart[0] == '\0' ? "" : " ", acid_words(rule->doses[i].acid));
}

/* --- ingredients ------------------------------------------------------------------- */

const struct ingredient_class *ingredient_class_named(const char *id)
{
	for (size_t i = 0; id != NULL && i < ingredient_class_count; i++) {
		if (strcmp(ingredient_classes[i].id, id) == 0)
			return &ingredient_classes[i];
	}
	return NULL;
}

const struct known_ingredient *known_ingredient_named(const char *name)
{
	if (name == NULL || name[strspn(name, " -_")] == '\0')
		return NULL;
	/* What is stored is the name itself; the other names are for what is typed. */
	for (size_t i = 0; i < known_ingredient_count; i++) {
		if (strcmp(known_ingredients[i].name, name) == 0)
			return &known_ingredients[i];
	}
	for (size_t i = 0; i < known_ingredient_count; i++) {
		if (known_ingredient_called(&known_ingredients[i], name))
			return &known_ingredients[i];
	}
	return NULL;
}

const struct known_ingredient *ingredient_picked(const struct ingredient *ingredient)
{
	if (ingredient->known != NULL && ingredient->known[0] != '\0')
		return known_ingredient_named(ingredient->known);
	/* "Fruit", "juice" and "other" are kinds of many things. */
	if (ingredient->supply == SUPPLY_OTHER || ingredient->supply == SUPPLY_FRUIT ||
	    ingredient->supply == SUPPLY_JUICE)
		return NULL;
	for (size_t i = 0; i < known_ingredient_count; i++) {
		if (known_ingredients[i].supply == ingredient->supply)
			return &known_ingredients[i];
	}
	return NULL;
}

/* --- foods ------------------------------------------------------------------------- */

const struct food *food_named(const char *name)
{
	for (size_t i = 0; name != NULL && i < food_count; i++) {
		if (text_same_name(foods[i].name, name))
			return &foods[i];
	}
	return NULL;
}

const struct own_fruit *own_fruit_of(const struct food *food, const struct known_ingredient *fruit)
{
	const struct own_fruit *other = NULL;

	for (size_t i = 0; i < own_fruit_count; i++) {
		if (strcmp(own_fruits[i].food, food->name) != 0)
			continue;
		if (strcmp(own_fruits[i].fruit, fruit->name) == 0)
			return &own_fruits[i];
		if (strcmp(own_fruits[i].fruit, OWN_ANY_OTHER) == 0)
			other = &own_fruits[i];
	}
	return other;
}
