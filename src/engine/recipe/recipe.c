#include "engine/recipe/recipe.h"

#include <string.h>

bool recipe_awaits_sheet(const struct recipe *recipe)
{
	return recipe->pectin == PECTIN_LOW_METHOXYL && recipe->multiple_max == 0;
}

bool recipe_has_amounts(const struct recipe *recipe, struct fault *fault)
{
	return !recipe_awaits_sheet(recipe) ||
	       fault_set(fault, FAULT_REFUSED,
	                 "The sheet's amounts of %s are not known yet. Choose it on the batch card of a pot and "
	                 "type what the sheet of your pectin says.",
	                 recipe->name);
}

/* Is `word` one of the blank-separated words of `list`? */
static bool in_list(const char *list, const char *word)
{
	size_t length = word == NULL ? 0 : strlen(word);

	while (length > 0 && list != NULL && *list != '\0') {
		size_t here = strcspn(list, " ");

		if (here == length && memcmp(list, word, length) == 0)
			return true;
		list += here;
		list += strspn(list, " ");
	}
	return false;
}

bool recipe_may_start(const struct recipe *recipe, struct fault *fault)
{
	return recipe->not_startable == NULL || recipe->not_startable[0] == '\0' ||
	       fault_set(fault, FAULT_REFUSED, "%s: %s", recipe->name, recipe->not_startable);
}

bool recipe_allows_jar(const struct recipe *recipe, const char *jar)
{
	return in_list(recipe->jars, jar);
}

bool recipe_allows_pack(const struct recipe *recipe, const char *pack)
{
	return in_list(recipe->packs, pack);
}

/* Do the tables have a row that may be offered for this jar or a larger one? */
static bool pair_offered(const char *food, const char *pack, const struct jar_size *jar)
{
	for (enum method method = 0; jar != NULL && method < METHOD_COUNT; method++) {
		const struct jar_size *tested = NULL;

		while ((tested = process_next_jar(food, method, pack, tested)) != NULL) {
			if (jar_size_index(tested) >= jar_size_index(jar))
				return true;
		}
	}
	return false;
}

bool recipe_allows_pair(const struct recipe *recipe, const char *pack, const char *jar)
{
	if (!recipe_allows_jar(recipe, jar))
		return false;
	if (recipe->food[0] == '\0')
		return true;
	return recipe_allows_pack(recipe, pack) && pair_offered(recipe->food, pack, jar_size_named(jar));
}

bool ingredient_is_alternative(const struct ingredient *ingredient)
{
	return ingredient->instead_of != NULL && ingredient->instead_of[0] != '\0';
}
