/* usual_pack.c - the pack of a recipe where nobody has said one; stands apart, as the build needs the rest. */
#include <stdio.h>
#include <string.h>

#include "engine/process/pack.h"
#include "engine/recipe/recipe.h"

bool recipe_usual_pack(const struct recipe *recipe, const char *jar, char *pack, size_t size)
{
	const char *at = recipe->packs;
	bool found = false;

	(void)snprintf(pack, size, "%.*s", (int)strcspn(at, " "), at);
	for (size_t length; (length = strcspn(at, " ")) > 0; at += length, at += strspn(at, " ")) {
		char word[PACK_NAME_BYTES];

		(void)snprintf(word, sizeof(word), "%.*s", (int)length, at);
		if ((jar != NULL && !recipe_allows_pair(recipe, word, jar)) ||
		    (found && !pack_has_jars(word, JARS_NOT_BOILED_FIRST)))
			continue;
		(void)snprintf(pack, size, "%s", word);
		found = true;
	}
	return found || recipe->food[0] == '\0';
}
