#include "base/count.h"

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "base/text.h"

static const struct form {
	const char *one;
	const char *many;
} irregular[] = {
	{ "person", "people" }, { "is", "are" },     { "was", "were" }, { "has", "have" },   { "waits", "wait" },
	{ "needs", "need" },    { "comes", "come" }, { "goes", "go" },  { "rings", "ring" }, { "cools", "cool" },
};

static bool ends_in(const char *word, const char *ending)
{
	size_t length = strlen(word);
	size_t tail = strlen(ending);

	return length >= tail && strcmp(word + length - tail, ending) == 0;
}

static bool hisses(const char *word)
{
	return ends_in(word, "s") || ends_in(word, "x") || ends_in(word, "ch") || ends_in(word, "sh");
}

/* "supply", but not "tray". */
static bool ends_in_consonant_y(const char *word)
{
	size_t length = strlen(word);

	return length > 1 && word[length - 1] == 'y' && strchr("aeiou", word[length - 2]) == NULL;
}

static void add_many(struct text *text, const char *word)
{
	for (size_t i = 0; i < sizeof(irregular) / sizeof(irregular[0]); i++)
		if (strcmp(irregular[i].one, word) == 0) {
			text_add(text, "%s", irregular[i].many);
			return;
		}
	if (hisses(word))
		text_add(text, "%ses", word);
	else if (ends_in_consonant_y(word))
		text_add(text, "%.*sies", (int)(strlen(word) - 1), word);
	else
		text_add(text, "%ss", word);
}

static void add_noun(struct text *text, int64_t count, const char *noun)
{
	const char *blank = strrchr(noun, ' ');
	const char *last = blank == NULL ? noun : blank + 1;

	text_add(text, "%.*s", (int)(last - noun), noun);
	if (count == 1)
		text_add(text, "%s", last);
	else
		add_many(text, last);
}

struct counted count_words(int64_t count, const char *noun)
{
	struct counted counted = { .words = "" };
	struct text text = TEXT_OVER(counted.words);

	text_add(&text, "%lld ", (long long)count);
	add_noun(&text, count, noun);
	return counted;
}

struct counted count_noun(int64_t count, const char *noun)
{
	struct counted counted = { .words = "" };
	struct text text = TEXT_OVER(counted.words);

	add_noun(&text, count, noun);
	return counted;
}
