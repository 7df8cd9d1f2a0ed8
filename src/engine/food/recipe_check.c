/* recipe_check() and recipe_check_printed(): the rules a recipe must keep, a kitchen's own or built in. */
#include "engine/recipe/recipe.h"

#include <string.h>

#include "base/text.h"
#include "engine/food/food.h"

#define BOIL_HOLD_MOST_S 3600
#define MULTIPLE_MOST 16
#define FOAM_MOST 75
#define BOIL_OFF_MOST 90
#define WORD_BYTES 32
#define VINEGAR_PERCENT_MOST 10

static char lower(char letter)
{
	return (char)(letter >= 'A' && letter <= 'Z' ? letter - 'A' + 'a' : letter);
}

/* `word` in small letters. */
static bool holds(const char *text, const char *word)
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

static bool empty(const char *text)
{
	return text == NULL || text[strspn(text, " ")] == '\0';
}

static bool check_numbers(const struct recipe *recipe, struct fault *fault)
{
	if (recipe->boil_hold_s < 0 || recipe->boil_hold_s > BOIL_HOLD_MOST_S)
		return fault_set(fault, FAULT_REFUSED, "%s: a boil-hold is 0 to %d seconds.", recipe->name,
		                 BOIL_HOLD_MOST_S);
	if (recipe->headspace_thou <= 0 || recipe->headspace_thou > 3000)
		return fault_set(fault, FAULT_REFUSED, "%s: the headspace is missing.", recipe->name);
	if (!recipe_awaits_sheet(recipe) && (recipe->multiple_max < 1 || recipe->multiple_max > MULTIPLE_MOST))
		return fault_set(fault, FAULT_REFUSED, "%s: one pot holds 1 to %d batches.", recipe->name,
		                 MULTIPLE_MOST);
	if (recipe->foam_percent < 0 || recipe->foam_percent > FOAM_MOST)
		return fault_set(fault, FAULT_REFUSED, "%s: the room for foam is 0 to %d %% of the pot.", recipe->name,
		                 FOAM_MOST);
	if (recipe->boil_off_low_percent < 0 || recipe->boil_off_low_percent > recipe->boil_off_high_percent ||
	    recipe->boil_off_high_percent > BOIL_OFF_MOST)
		return fault_set(fault, FAULT_REFUSED, "%s: what boils off is a range from low to high, 0 to %d %%.",
		                 recipe->name, BOIL_OFF_MOST);
	if (recipe->yield_low_ul < 0 || recipe->yield_low_ul > recipe->yield_high_ul ||
	    (recipe->yield_low_ul == 0) != (recipe->yield_high_ul == 0))
		return fault_set(fault, FAULT_REFUSED, "%s: the yield is a range from low to high.", recipe->name);
	return true;
}

/* A supply of its own names its ingredient; fruit, juice and other may be anything. */
static bool check_known(const struct recipe *recipe, const struct ingredient *item, struct fault *fault)
{
	bool several = item->supply == SUPPLY_OTHER || item->supply == SUPPLY_FRUIT || item->supply == SUPPLY_JUICE;
	const struct known_ingredient *known = ingredient_picked(item);

	if (known == NULL && !empty(item->known))
		return fault_set(fault, FAULT_REFUSED, "%s: there is no known ingredient \"%s\".", recipe->name,
		                 item->known);
	if (known != NULL && !several && known->is != INGREDIENT_OF_CLASS && known->supply != item->supply)
		return fault_set(fault, FAULT_REFUSED, "%s: %s is not taken from the supply of %s.", recipe->name,
		                 known->name, supply_words(item->supply));
	return true;
}

/* The acid is bottled: fresh juice varies (CSU, PSU).  A name stands for what it is
 * where nothing was picked. */
static bool check_lemon(const struct recipe *recipe, const struct ingredient *item, struct fault *fault)
{
	const struct known_ingredient *known = known_ingredient_named(empty(item->known) ? item->name : item->known);
	const struct ingredient_class *fresh = ingredient_class_named("fresh_lemon_juice_as_acid");
	bool is_fresh = known != NULL && fresh != NULL && (known->classes >> (fresh - ingredient_classes) & 1) != 0;

	if (!is_fresh && !(item->supply == SUPPLY_LEMON_JUICE && holds(item->form, "fresh")) &&
	    !(known != NULL && known->acid == ACID_LEMON_JUICE && item->supply != SUPPLY_LEMON_JUICE))
		return true;
	return fault_set(fault, FAULT_REFUSED,
	                 "%s: the acid is bottled lemon juice. Fresh juice varies in strength, so no "
	                 "rate holds for it.",
	                 recipe->name);
}

static bool check_ingredient(const struct recipe *recipe, size_t index, struct fault *fault)
{
	const struct ingredient *item = &recipe->ingredients[index];
	bool awaited = recipe_awaits_sheet(recipe) && supply_is_of_sheet(item->supply);

	if (empty(item->name) || (item->amount <= 0 && !(awaited && item->amount == 0)))
		return fault_set(fault, FAULT_REFUSED, "%s: ingredient %zu has no %s.", recipe->name, index + 1,
		                 empty(item->name) ? "name" : "amount");
	if (strcmp(supply_name(item->supply), "?") == 0 || strcmp(adding_name(item->adding), "?") == 0 ||
	    strcmp(measure_name(item->measure), "?") == 0 || item->supply == SUPPLY_JAR || item->supply == SUPPLY_BAND)
		return fault_set(fault, FAULT_REFUSED, "%s: \"%s\" does not go in a pot.", recipe->name, item->name);
	if (item->supply != SUPPLY_OTHER && item->measure != supply_measure(item->supply))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: %s is measured by %s; give its amount that "
		                 "way.",
		                 recipe->name, item->name, measure_name(supply_measure(item->supply)));
	if (index > 0 && adding_place(item->adding) < adding_place(recipe->ingredients[index - 1].adding))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: list ingredients in the order they go in; \"%s\" comes too late.", recipe->name,
		                 item->name);
	return check_known(recipe, item, fault) && check_lemon(recipe, item, fault);
}

/* A range, and another line's place. */
static bool check_choice(const struct recipe *recipe, const struct ingredient *item, struct fault *fault)
{
	bool found = !ingredient_is_alternative(item);

	if (item->amount_most != 0 && item->amount_most < item->amount)
		return fault_set(fault, FAULT_REFUSED, "%s: %s, the amounts are a range from low to high.",
		                 recipe->name, item->name);
	for (size_t i = 0; !found && i < recipe->ingredient_count; i++)
		found = !ingredient_is_alternative(&recipe->ingredients[i]) &&
		        strcmp(recipe->ingredients[i].name, item->instead_of) == 0;
	return found || fault_set(fault, FAULT_REFUSED, "%s: %s takes the place of \"%s\", which is not in it.",
	                          recipe->name, item->name, item->instead_of);
}

static bool has_supply(const struct recipe *recipe, enum supply_kind supply)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		if (recipe->ingredients[i].supply == supply)
			return true;
	}
	return false;
}

/* Bottled lemon juice may stand for vinegar, never the other way (A539 Guide 3). */
static bool check_swap(const struct recipe *recipe, struct fault *fault)
{
	bool vinegar = has_supply(recipe, SUPPLY_VINEGAR);

	if (recipe->vinegar_percent < 0 || recipe->vinegar_percent > VINEGAR_PERCENT_MOST ||
	    (recipe->vinegar_percent > 0 && !vinegar) || (recipe->acid_swap == ACID_SWAP_LEMON_FOR_VINEGAR && !vinegar))
		return fault_set(fault, FAULT_REFUSED, "%s: what is said of its vinegar does not fit.", recipe->name);
	return true;
}

static bool check_pectin(const struct recipe *recipe, struct fault *fault)
{
	if (strcmp(pectin_name(recipe->pectin), "?") == 0 || (int)recipe->gel_test < 0 ||
	    (int)recipe->gel_test >= GEL_TEST_COUNT)
		return fault_set(fault, FAULT_REFUSED, "%s: say which pectin and which gel test.", recipe->name);
	if (recipe->pectin == PECTIN_REGULAR && recipe->multiple_max > 1)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: regular pectin is made one batch a pot; a larger one often stays soft.",
		                 recipe->name);
	if ((recipe->pectin == PECTIN_REGULAR) !=
	        (has_supply(recipe, SUPPLY_PECTIN_REGULAR) || has_supply(recipe, SUPPLY_PECTIN_LIQUID)) ||
	    (recipe->pectin == PECTIN_LOW_METHOXYL) != has_supply(recipe, SUPPLY_PECTIN_LOW))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: the pectin named (%s) and the one among the ingredients differ.", recipe->name,
		                 pectin_words(recipe->pectin));
	if (recipe->pectin != PECTIN_NONE && recipe->gel_test != GEL_TEST_NONE)
		return fault_set(fault, FAULT_REFUSED, "%s: with added pectin there is no gel test.", recipe->name);
	return true;
}

static bool check_acid(const struct recipe *recipe, struct fault *fault)
{
	const struct food *food = food_named(recipe->food);
	char words[FAULT_SENTENCE_MAX / 2];

	if (food == NULL || food->acid_rule == NULL || food->acid_rule->kind != ACID_PER_JAR ||
	    acid_in_every_jar(food->acid_rule, recipe))
		return true;
	acid_rule_words(food->acid_rule, words, sizeof(words));
	return fault_set(fault, FAULT_REFUSED,
	                 "%s: %s takes acid in every jar: %s a quart. A pint takes no acid whose "
	                 "amount is not printed for it.",
	                 recipe->name, recipe->food, words);
}

/* The next word of a blank-separated list; false at its end. A longer word than
 * any name is cut, and so found in no table. */
static bool next_word(const char **list, char *word, size_t size)
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

/* Each word of `list` must go with some word of `others`: pints may ask for jars
 * boiled first where quarts do not.  `other` says what was tried last. */
static bool each_has_process(const struct recipe *recipe, const char *list, const char *others, bool jars,
                             struct fault *fault)
{
	char word[WORD_BYTES];
	char other[WORD_BYTES] = "";

	while (next_word(&list, word, sizeof(word))) {
		const char *left = others;
		bool found = false;

		while (!found && next_word(&left, other, sizeof(other)))
			found = recipe_allows_pair(recipe, jars ? other : word, jars ? word : other);
		if (!found)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s: the tables have no process for %s, %s, in a %s jar.", recipe->name,
			                 recipe->food, jars ? other : word, jar_size_named(jars ? word : other)->words);
	}
	return true;
}

static bool check_pairs(const struct recipe *recipe, struct fault *fault)
{
	if (recipe->food[0] == '\0')
		return true;
	if (empty(recipe->packs))
		return fault_set(fault, FAULT_REFUSED, "%s: say how it is packed.", recipe->name);
	return each_has_process(recipe, recipe->jars, recipe->packs, true, fault) &&
	       each_has_process(recipe, recipe->packs, recipe->jars, false, fault);
}

static bool check_process(const struct recipe *recipe, struct fault *fault)
{
	const char *jars = recipe->jars;
	char name[WORD_BYTES];
	enum acidity acidity;
	bool any = false;

	if (recipe->food[0] != '\0' && !process_acidity(recipe->food, &acidity))
		return fault_set(fault, FAULT_REFUSED, "%s: the tables have no food \"%s\".", recipe->name,
		                 recipe->food);
	if (recipe->food[0] != '\0' && acidity != recipe->acidity)
		return fault_set(fault, FAULT_REFUSED, "%s: %s is %s in the tables.", recipe->name, recipe->food,
		                 acidity_words(acidity));
	while (next_word(&jars, name, sizeof(name))) {
		const struct jar_size *jar = jar_size_named(name);

		any = true;
		if (jar == NULL)
			return fault_set(fault, FAULT_REFUSED, "%s: there is no jar size \"%s\".", recipe->name, name);
	}
	if (!any)
		return fault_set(fault, FAULT_REFUSED, "%s: say which jars it may be filled into.", recipe->name);
	return check_pairs(recipe, fault);
}

/* While it waits for its sheet, all of the sheet's figures are left to that. */
static bool check_sheet(const struct recipe *recipe, struct fault *fault)
{
	for (size_t i = 0; recipe_awaits_sheet(recipe) && i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		const struct known_ingredient *known = ingredient_picked(item);

		if (supply_is_of_sheet(item->supply) && item->amount != 0)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s: the amount of %s and how far it is multiplied come from one sheet; "
			                 "give both or neither.",
			                 recipe->name, item->name);
		if (known != NULL && known->is == INGREDIENT_ACID)
			return fault_set(fault, FAULT_REFUSED, "%s: the acid comes from the sheet too; leave %s out.",
			                 recipe->name, item->name);
	}
	return true;
}

bool recipe_check(const struct recipe *recipe, struct fault *fault)
{
	return (empty(recipe->name) || recipe_has_amounts(recipe, fault)) && recipe_check_printed(recipe, fault);
}

bool recipe_check_printed(const struct recipe *recipe, struct fault *fault)
{
	if (empty(recipe->name))
		return fault_set(fault, FAULT_REFUSED, "The recipe has no name.");
	if (empty(recipe->source))
		return fault_set(fault, FAULT_REFUSED,
		                 "%s: say where the recipe comes from, or \"house recipe, no source\".", recipe->name);
	if (recipe->food == NULL || strcmp(acidity_name(recipe->acidity), "?") == 0)
		return fault_set(fault, FAULT_REFUSED, "%s: the food or its acidity is missing.", recipe->name);
	if (recipe->ingredient_count == 0 || recipe->ingredient_count > RECIPE_INGREDIENTS_MAX)
		return fault_set(fault, FAULT_REFUSED, "%s: a recipe has 1 to %d ingredients.", recipe->name,
		                 RECIPE_INGREDIENTS_MAX);
	if (!check_numbers(recipe, fault) || !check_sheet(recipe, fault))
		return false;
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		if (!check_ingredient(recipe, i, fault) || !check_choice(recipe, &recipe->ingredients[i], fault))
			return false;
	}
	return check_pectin(recipe, fault) && check_swap(recipe, fault) && check_acid(recipe, fault) &&
	       check_process(recipe, fault);
}
