/*
 * words.h - split one line a person wrote into words: blanks divide, "double
 * quotes" keep blanks together, a backslash takes the next character as it is,
 * inside quotes and outside.
 */
#ifndef STILLROOM_BASE_WORDS_H
#define STILLROOM_BASE_WORDS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"
#include "base/text.h"

#define WORDS_MAX 20     /* a recipe with all it can say */
#define WORDS_BYTES 1024 /* of all words, ending zeros included */

/* Plain data without pointers; may be copied. */
struct words {
	size_t count;
	size_t start[WORDS_MAX]; /* where each begins in text */
	char text[WORDS_BYTES];
};

/* FAULT_MISUSE with the bare reason ("a quotation mark is not closed."): an open
 * quote, a backslash at the end, too many words, too many bytes. */
bool words_split(const char *line, struct words *out, struct fault *fault);

/* The word of that number, counted from 0; "" when there is none. */
const char *words_at(const struct words *words, size_t n);

/* The way back: a word between quotes, its own quotes and backslashes guarded. */
void words_quote(struct text *text, const char *word);

/* Is the word a whole number from `min` to `max`, and nothing else? */
bool word_number(const char *word, int min, int max, int *out);

#endif
