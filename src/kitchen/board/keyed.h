/*
 * keyed.h - the words "key=value" of a line of a kitchen file: one table for a kind of line
 * says how each is read into its row and written from it, so that what is read can be written.
 */
#ifndef STILLROOM_KITCHEN_BOARD_KEYED_H
#define STILLROOM_KITCHEN_BOARD_KEYED_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"
#include "base/text.h"
#include "engine/recipe/scaling.h"

struct keyed {
	const char *key;
	bool is_flag; /* without a value; written when `write` says anything */
	/* False: it cannot be that; with a fault, or none: what is right is said of all keys. */
	bool (*read)(void *row, const char *value, struct fault *fault);
	/* Nothing: it is not said, which reads as it is. */
	void (*write)(const void *row, enum unit_system units, struct text *value);
};

enum keyed_read { KEYED_READ, KEYED_NOT_ONE, KEYED_WRONG };

enum keyed_read keyed_read(const struct keyed *keys, size_t count, const char *word, void *row, struct fault *fault);
void keyed_write(const struct keyed *keys, size_t count, const void *row, enum unit_system units, struct text *line);
/* A blank and the word, between quotes where it must be. */
void keyed_word(struct text *line, const char *word);
void keyed_pair(struct text *line, const char *key, const char *value); /* " key=value", so guarded */

#endif
