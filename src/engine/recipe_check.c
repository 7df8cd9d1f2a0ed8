/* recipe_check(): the rules a recipe must keep, built in or a kitchen's own. */
#include "engine/recipe.h"

#include <string.h>

#include "engine/scaling.h"
#include "engine/text.h"

#define BOIL_HOLD_MOST_S 3600
#define MULTIPLE_MOST 16
#define FOAM_MOST 75
#define BOIL_OFF_MOST 90
#define WORD_BYTES 32

static char
lower(char letter)
{
	return (char)(letter >= 'A' && letter <= 'Z' ? letter - 'A' + 'a' : letter);
}

/* `word` in small letters. */
static bool
holds(const char *text, const char *word)
{
	for (; text != NULL && *text != '\0'; text++) {
		size_t i = 0;

		while (word[i] != '\0' && lower(text[i]) == word[i])
			i++;
		if (word[i] == '\0')
			return true;
	}
	return false;
}

static bool
empty(const char *text)
{
	return text == NULL || text[strspn(text, " ")] == '\0';
}

static bool
check_numbers(const struct recipe *recipe, struct fault *fault)
{
	if (recipe->boil_hold_s < 0 || recipe->boil_hold_s > BOIL_HOLD_MOST_S)
		return fault_set(fault, FAULT_REFUSED, "%s: a boil-hold is 0 to %d seconds.", recipe->name,
		                 BOIL_HOLD_MOST_S);
	if (recipe->headspace_thou <= 0 || recipe->headspace_thou > 3000)
		return fault_set(fault, FAULT_REFUSED, "%s: the headspace is missing.", recipe->name);
	if (recipe->multiple_max < 1 || recipe->multiple_max > MULTIPLE_MOST)
		return fault_set(fault, FAULT_REFUSED, "%s: one pot holds 1 to %d batches.", recipe->name,
		                 MULTIPLE_MOST);
	if (recipe->foam_percent < 0 || recipe->foam_percent > FOAM_MOST)
		return fault_set(fault, FAULT_REFUSED, "%s: the room for foam is 0 to %d %% of the pot.",
		                 recipe->name, FOAM_MOST);
	if (recipe->boil_off_low_percent < 0 ||
	    recipe->boil_off_low_percent > recipe->boil_off_high_percent ||
	    recipe->boil_off_high_percent > BOIL_OFF_MOST)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: what boils off is a range from low to high, 0 to %d %%.", recipe->name,
		                 BOIL_OFF_MOST);
	if (recipe->yield_low_ul < 0 || recipe->yield_low_ul > recipe->yield_high_ul ||
	    (recipe->yield_low_ul == 0) != (recipe->yield_high_ul == 0))
		return fault_set(fault, FAULT_REFUSED, "%s: the yield is a range from low to high.",
		                 recipe->name);
	return true;
}

static bool
check_ingredient(const struct recipe *recipe, size_t index, struct fault *fault)
{
	const struct ingredient *item = &recipe->ingredients[index];

	if (empty(item->name) || item->amount <= 0)
		return fault_set(fault, FAULT_REFUSED, "%s: ingredient %zu has no %s.", recipe->name,
		                 index + 1, empty(item->name) ? "name" : "amount");
	if (strcmp(supply_name(item->supply), "?") == 0 || strcmp(adding_name(item->adding), "?") == 0 ||
	    strcmp(measure_name(item->measure), "?") == 0 || item->supply == SUPPLY_JAR ||
	    item->supply == SUPPLY_BAND)
		return fault_set(fault, FAULT_REFUSED, "%s: \"%s\" is of no kind a pot takes.", recipe->name,
		                 item->name);
	if (item->supply != SUPPLY_OTHER && item->measure != supply_measure(item->supply))
		return fault_set(fault, FAULT_REFUSED, "%s: %s is kept by %s; give its amount so.",
		                 recipe->name, item->name, measure_name(supply_measure(item->supply)));
	if (index > 0 && item->adding < recipe->ingredients[index - 1].adding)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: list ingredients in the order they go in; \"%s\" comes too late.",
		                 recipe->name, item->name);
	if (item->supply == SUPPLY_LEMON_JUICE ? holds(item->name, "fresh") || holds(item->form, "fresh")
	                                       : holds(item->name, "lemon juice"))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: the acid is bottled lemon juice. Fresh juice varies in strength, so no "
		                 "rate holds for it.", recipe->name);
	return true;
}

static bool
has_supply(const struct recipe *recipe, enum supply_kind supply)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		if (recipe->ingredients[i].supply == supply)
			return true;
	}
	return false;
}

static bool
check_pectin(const struct recipe *recipe, struct fault *fault)
{
	if (strcmp(pectin_name(recipe->pectin), "?") == 0 || (int)recipe->gel_test < 0 ||
	    (int)recipe->gel_test >= GEL_TEST_COUNT)
		return fault_set(fault, FAULT_REFUSED, "%s: say which pectin and which gel test.",
		                 recipe->name);
	if (recipe->pectin == PECTIN_REGULAR && recipe->multiple_max > 1)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: regular pectin is made one batch a pot; a larger one often stays soft.",
		                 recipe->name);
	if ((recipe->pectin == PECTIN_REGULAR) != has_supply(recipe, SUPPLY_PECTIN_REGULAR) ||
	    (recipe->pectin == PECTIN_LOW_METHOXYL) != has_supply(recipe, SUPPLY_PECTIN_LOW))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: the pectin named (%s) and the one among the ingredients differ.",
		                 recipe->name, pectin_words(recipe->pectin));
	if (recipe->pectin != PECTIN_NONE && recipe->gel_test != GEL_TEST_NONE)
		return fault_set(fault, FAULT_REFUSED, "%s: with added pectin there is no gel test.",
		                 recipe->name);
	return true;
}

/* Foods to which the published rate a jar belongs; sauces and salsas have their
 * acid in the tested recipe. */
static bool
takes_tomato_acid(const char *food)
{
	return strncmp(food, "tomatoes ", 9) == 0 || strcmp(food, "tomato juice") == 0 ||
	       strcmp(food, "tomato sauce standard") == 0;
}

static bool
check_tomatoes(const struct recipe *recipe, struct fault *fault)
{
	const struct jar_size *quart = jar_size_named("quart");

	if (!takes_tomato_acid(recipe->food))
		return true;
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		int64_t least = tomato_acid_ul(item->supply, quart);

		if (item->supply == SUPPLY_CITRIC_ACID)
			least = CITRIC_ACID_MG_PER_TSP / 2;
		if (least > 0 && item->adding == ADD_IN_JAR && !item->optional && item->amount >= least)
			return true;
	}
	return fault_set(fault, FAULT_REFUSED,
	                 "%s: tomatoes take acid in every jar: 2 tbsp bottled lemon juice, 1/2 tsp citric "
	                 "acid or 4 tbsp vinegar of 5 %% a quart.", recipe->name);
}

/* The next word of a blank-separated list; false at its end. A longer word than
 * any name is cut, and so found in no table. */
static bool
next_word(const char **list, char *word, size_t size)
{
	size_t length;

	if (*list == NULL)
		return false;
	*list += strspn(*list, " ");
	length = strcspn(*list, " ");
	if (length == 0)
		return false;
	memcpy(word, *list, length < size ? length : size - 1);
	word[length < size ? length : size - 1] = '\0';
	*list += length;
	return true;
}

/* Do the tables have a row that may be offered for this jar or a larger one? */
static bool
pair_offered(const char *food, const char *pack, const struct jar_size *jar)
{
	for (int method = 0; method < METHOD_COUNT; method++) {
		const struct jar_size *tested = NULL;

		while ((tested = process_next_jar(food, (enum method)method, pack, tested)) != NULL) {
			if (jar_size_index(tested) >= jar_size_index(jar))
				return true;
		}
	}
	return false;
}

static bool
check_packs(const struct recipe *recipe, const struct jar_size *jar, struct fault *fault)
{
	const char *packs = recipe->packs;
	char pack[WORD_BYTES];
	bool any = false;

	while (next_word(&packs, pack, sizeof(pack))) {
		any = true;
		if (recipe->food[0] != '\0' && !pair_offered(recipe->food, pack, jar))
			return fault_set(fault, FAULT_REFUSED,
			                 "%s: the tables have no process for %s, %s, in a %s jar.", recipe->name,
			                 recipe->food, pack, jar->words);
	}
	if (!any && recipe->food[0] != '\0')
		return fault_set(fault, FAULT_REFUSED, "%s: say how it is packed.", recipe->name);
	return true;
}

static bool
check_process(const struct recipe *recipe, struct fault *fault)
{
	const char *jars = recipe->jars;
	char name[WORD_BYTES];
	enum acidity acidity;
	bool any = false;

	if (recipe->food[0] != '\0' && !process_acidity(recipe->food, &acidity))
		return fault_set(fault, FAULT_REFUSED, "%s: the tables have no food \"%s\".", recipe->name,
		                 recipe->food);
	if (recipe->food[0] != '\0' && acidity != recipe->acidity)
		return fault_set(fault, FAULT_REFUSED, "%s: %s is %s in the tables.", recipe->name,
		                 recipe->food, acidity_words(acidity));
	while (next_word(&jars, name, sizeof(name))) {
		const struct jar_size *jar = jar_size_named(name);

		any = true;
		if (jar == NULL)
			return fault_set(fault, FAULT_REFUSED, "%s: there is no jar size \"%s\".", recipe->name,
			                 name);
		if (!check_packs(recipe, jar, fault))
			return false;
	}
	if (!any)
		return fault_set(fault, FAULT_REFUSED, "%s: say which jars it may be filled into.",
		                 recipe->name);
	return true;
}

bool
recipe_check(const struct recipe *recipe, struct fault *fault)
{
	if (empty(recipe->name))
		return fault_set(fault, FAULT_REFUSED, "The recipe has no name.");
	if (!recipe_has_amounts(recipe, fault))
		return false;
	if (empty(recipe->source))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: say where the recipe comes from, or \"house recipe, no source\".",
		                 recipe->name);
	if (recipe->food == NULL || strcmp(acidity_name(recipe->acidity), "?") == 0)
		return fault_set(fault, FAULT_REFUSED, "%s: the food or its acidity is missing.",
		                 recipe->name);
	if (recipe->ingredient_count == 0 || recipe->ingredient_count > RECIPE_INGREDIENTS_MAX)
		return fault_set(fault, FAULT_REFUSED, "%s: a recipe has 1 to %d ingredients.", recipe->name,
		                 RECIPE_INGREDIENTS_MAX);
	if (!check_numbers(recipe, fault))
		return false;
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		if (!check_ingredient(recipe, i, fault))
			return false;
	}
	return check_pectin(recipe, fault) && check_tomatoes(recipe, fault) &&
	       check_process(recipe, fault);
}
