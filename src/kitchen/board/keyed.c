/*
 * keyed.c - see keyed.h.
 */
#include "kitchen/board/keyed.h"

#include <string.h>

#include "base/words.h"

enum keyed_read keyed_read(const struct keyed *keys, size_t count, const char *word, void *row, struct fault *fault)
{
	for (size_t i = 0; i < count; i++) {
		size_t length = strlen(keys[i].key);

		if (strncmp(word, keys[i].key, length) != 0 || word[length] != (keys[i].is_flag ? '\0' : '='))
			continue;
		return keys[i].read(row, keys[i].is_flag ? "" : word + length + 1, fault) ? KEYED_READ : KEYED_WRONG;
	}
	return KEYED_NOT_ONE;
}

static void add_value(struct text *line, const char *word)
{
	if (word[0] == '\0' || word[0] == '#' || strpbrk(word, " \t\"\\") != NULL)
		words_quote(line, word);
	else
		text_add(line, "%s", word);
}

void keyed_word(struct text *line, const char *word)
{
	text_add(line, " ");
	add_value(line, word);
}

void keyed_pair(struct text *line, const char *key, const char *value)
{
	text_add(line, " %s=", key);
	add_value(line, value);
}

void keyed_write(const struct keyed *keys, size_t count, const void *row, enum unit_system units, struct text *line)
{
	for (size_t i = 0; i < count; i++) {
		char value[200] = "";
		struct text text = TEXT_OVER(value);

		keys[i].write(row, units, &text);
		if (text.used == 0)
			continue;
		if (keys[i].is_flag)
			text_add(line, " %s", keys[i].key);
		else
			keyed_pair(line, keys[i].key, value);
	}
}
