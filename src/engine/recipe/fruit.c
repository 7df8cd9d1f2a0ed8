#include "engine/recipe/fruit.h"

#include <string.h>

static char lower(char letter)
{
	return letter >= 'A' && letter <= 'Z' ? (char)(letter - 'A' + 'a') : letter;
}

/* Cut the plural ending of the word that ends the text; `word` is where it begins. */
static void cut_plural(char *text, size_t word)
{
	static const struct {
		const char *many;
		const char *one;
	} endings[] = { { "ies", "y" }, { "hes", "h" }, { "oes", "o" }, { "s", "" } };
	size_t length = strlen(text + word);

	for (size_t i = 0; i < sizeof(endings) / sizeof(endings[0]); i++) {
		size_t many = strlen(endings[i].many);
		char *at = text + word + length - many;

		if (length <= many || strcmp(at, endings[i].many) != 0)
			continue;
		memcpy(at, endings[i].one, strlen(endings[i].one) + 1); /* never longer than what it replaces */
		return;
	}
}

void fruit_plain(const char *name, char buffer[FRUIT_NAME_BYTES])
{
	size_t used = 0;

	buffer[0] = '\0';
	while (*(name += strspn(name, " \t-_")) != '\0') {
		size_t word = used > 0 ? used + 1 : 0;
		size_t length = strcspn(name, " \t-_");

		if (word + length >= FRUIT_NAME_BYTES)
			return;
		if (used > 0)
			buffer[used] = ' ';
		for (size_t i = 0; i < length; i++)
			buffer[word + i] = lower(name[i]);
		buffer[word + length] = '\0';
		cut_plural(buffer, word);
		used = word + strlen(buffer + word);
		name += length;
	}
}

bool fruit_same(const char *a, const char *b)
{
	char plain_a[FRUIT_NAME_BYTES];
	char plain_b[FRUIT_NAME_BYTES];

	fruit_plain(a, plain_a);
	fruit_plain(b, plain_b);
	return strcmp(plain_a, plain_b) == 0;
}

/* Both in their plain form. */
static bool words_in(const char *words, const char *name)
{
	size_t length = strlen(words);

	for (const char *at = name; length > 0 && *at != '\0'; at++)
		if ((at == name || at[-1] == ' ') && strncmp(at, words, length) == 0 &&
		    (at[length] == ' ' || at[length] == '\0'))
			return true;
	return false;
}

bool fruit_in(const char *fruit, const char *name)
{
	char plain_fruit[FRUIT_NAME_BYTES];
	char plain_name[FRUIT_NAME_BYTES];

	fruit_plain(fruit, plain_fruit);
	fruit_plain(name, plain_name);
	return words_in(plain_fruit, plain_name);
}

static bool is_a_berry(const char *word)
{
	size_t length = strlen(word);

	return length >= 5 && strcmp(word + length - 5, "berry") == 0;
}

bool fruit_makes(const char *fruit, const char *ingredient)
{
	char plain_fruit[FRUIT_NAME_BYTES];
	char plain_name[FRUIT_NAME_BYTES];
	const char *last;

	fruit_plain(fruit, plain_fruit);
	fruit_plain(ingredient, plain_name);
	last = strrchr(plain_fruit, ' ');
	last = last == NULL ? plain_fruit : last + 1;
	return words_in(plain_fruit, plain_name) || words_in(last, plain_name) ||
	       (is_a_berry(last) && words_in("berry", plain_name));
}
