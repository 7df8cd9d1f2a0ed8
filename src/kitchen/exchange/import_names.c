/* import_names.c - a table of words, open addressing. */
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "engine/label/row_check.h"
#include "kitchen/exchange/import_private.h"

static uint64_t hash_of(const char *word)
{
	return row_check_bytes(ROW_CHECK_BEGIN, word, strlen(word));
}

static size_t slot_of(const struct names *names, const char *word)
{
	size_t slot = (size_t)hash_of(word) & (names->slot_count - 1);

	while (names->slots[slot] != 0 && strcmp(names->words[names->slots[slot] - 1], word) != 0)
		slot = (slot + 1) & (names->slot_count - 1);
	return slot;
}

size_t names_find(const struct names *names, const char *word)
{
	size_t number = names->slot_count == 0 ? 0 : names->slots[slot_of(names, word)];

	return number == 0 ? NAME_UNKNOWN : number - 1;
}

/* At most half full, so that a search is short. */
static bool grow_slots(struct names *names)
{
	size_t more = names->slot_count == 0 ? 64 : names->slot_count * 2;
	size_t *old = names->slots;

	if (names->count * 2 < names->slot_count)
		return true;
	names->slots = calloc(more, sizeof(*names->slots));
	if (names->slots == NULL) {
		names->slots = old;
		return false;
	}
	names->slot_count = more;
	for (size_t i = 0; i < names->count; i++)
		names->slots[slot_of(names, names->words[i])] = i + 1;
	free(old);
	return true;
}

static bool grow_words(struct names *names)
{
	size_t more = names->room == 0 ? 32 : names->room * 2;
	char **grown;

	if (names->count < names->room)
		return true;
	grown = realloc(names->words, more * sizeof(*grown));
	if (grown == NULL)
		return false;
	names->words = grown;
	names->room = more;
	return true;
}

size_t names_add(struct names *names, const char *word)
{
	size_t slot;

	if (!grow_words(names) || !grow_slots(names))
		return NAME_UNKNOWN;
	slot = slot_of(names, word);
	if (names->slots[slot] == 0) {
		names->words[names->count] = strdup(word);
		if (names->words[names->count] == NULL)
			return NAME_UNKNOWN;
		names->slots[slot] = ++names->count;
	}
	return names->slots[slot] - 1;
}

void names_free(struct names *names)
{
	for (size_t i = 0; i < names->count; i++)
		free(names->words[i]);
	free(names->words);
	free(names->slots);
	*names = (struct names){ .words = NULL };
}
