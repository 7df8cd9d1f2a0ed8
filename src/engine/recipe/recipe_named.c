#include "base/text.h"
#include "engine/recipe/recipe.h"

const struct recipe *recipe_named(const char *name)
{
	for (size_t i = 0; name != NULL && i < recipe_count; i++) {
		if (text_same_name(name, recipes[i].name))
			return &recipes[i];
	}
	return NULL;
}
