/*
 * recipe_choice.c - see recipe_choice.h.
 */
#include "screen/ui/recipe_choice.h"

#include <stdio.h>
#include <string.h>

#include "engine/process/pack.h"
#include "kitchen/board/book.h"
#include "screen/ui/desk.h"

int recipe_choices(const struct desk *desk)
{
	return (int)kitchen_recipe_count(desk->kitchen);
}

const char *recipe_choice_name(const struct desk *desk, int n)
{
	return n < recipe_choices(desk) ? kitchen_recipe(desk->kitchen, (size_t)n)->name : NULL;
}

void recipe_choice_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct recipe *recipe = kitchen_recipe(desk->kitchen, (size_t)n);
	struct text text = text_over(buffer, size);

	text_add(&text, "%s", recipe->name);
	if (recipe->pectin != PECTIN_NONE)
		text_add(&text, ", %s", pectin_words(recipe->pectin));
	if (!recipe_may_start(recipe, NULL))
		text_add(&text, "  (not canned)");
	else if (recipe->food[0] == '\0')
		text_add(&text, "  (no published process)");
	if (recipe_awaits_sheet(recipe))
		text_add(&text, "  (asks for its sheet)");
}

/* The n-th word of a blank-separated list; false when there is none. */
static bool nth_word(const char *list, int n, char *buffer, size_t size)
{
	while (*list != '\0') {
		size_t length = strcspn(list, " ");

		if (n-- == 0) {
			(void)snprintf(buffer, size, "%.*s", (int)length, list);
			return true;
		}
		list += length;
		list += strspn(list, " ");
	}
	buffer[0] = '\0';
	return false;
}

bool recipe_pack(const struct recipe *recipe, int n, char *buffer, size_t size)
{
	return nth_word(recipe->packs, n, buffer, size);
}

bool recipe_jar(const struct recipe *recipe, const char *pack, int n, char *buffer, size_t size)
{
	for (int i = 0; nth_word(recipe->jars, i, buffer, size); i++)
		if (recipe_allows_pair(recipe, pack, buffer) && n-- == 0)
			return true;
	return false;
}

const char *recipe_pack_says(const struct recipe *recipe, int n)
{
	char word[WORD_MAX_BYTES];

	return recipe != NULL && recipe_pack(recipe, n, word, sizeof(word)) ? pack_words(word) : NULL;
}

const char *recipe_jar_says(const struct recipe *recipe, const char *pack, int n)
{
	char word[WORD_MAX_BYTES];

	return recipe != NULL && recipe_jar(recipe, pack, n, word, sizeof(word)) ? jar_size_words(word, 2) : NULL;
}

int recipe_pack_offered(const struct recipe *recipe)
{
	char usual[WORD_MAX_BYTES];
	char word[WORD_MAX_BYTES];
	int offered = 0;

	if (recipe == NULL || !recipe_usual_pack(recipe, NULL, usual, sizeof(usual)))
		return 0;
	for (int n = 0; recipe_pack(recipe, n, word, sizeof(word)); n++)
		if (strcmp(word, usual) == 0)
			offered = n;
	return offered;
}
