/*
 * words.h - split one line of a file a person wrote into words: blanks divide,
 * "double quotes" keep blanks together, a backslash takes the next character as
 * it is, # begins a comment where a word could begin.
 */
#ifndef STILLROOM_ENGINE_WORDS_H
#define STILLROOM_ENGINE_WORDS_H

#include <stdbool.h>
#include <stddef.h>

#include "engine/fault.h"

#define WORDS_MAX 16
#define WORDS_BYTES 1024

struct words {
	size_t count;
	const char *word[WORDS_MAX + 1]; /* ends in NULL; points into text */
	char text[WORDS_BYTES];
};

/* Misuse: an open quote, too many words, a line too long. */
bool words_split(const char *line, struct words *out, struct fault *fault);

#endif
