/*
 * count.h - a number and its noun agree: "1 jar", "2 jars", "0 boxes".
 *
 * The noun is given as it stands behind a one, without a number: "jar", "lid box".
 * Only its last word changes.  What a word that is not formed by rule becomes stands in
 * the table of count.c, with the verbs that go with a count ("is", "has", "waits").
 *
 * The answers are structs, for use within one expression:
 *
 *	text_add(text, "%s of %s", count_words(jars, "jar").words, product);
 */
#ifndef STILLROOM_BASE_COUNT_H
#define STILLROOM_BASE_COUNT_H

#include <stdint.h>

#define COUNTED_BYTES 48 /* nouns are short and ours: a longer one is cut */

struct counted {
	char words[COUNTED_BYTES];
};

struct counted count_words(int64_t count, const char *noun); /* "1 jar", "2 jars" */
struct counted count_noun(int64_t count, const char *noun);  /* the noun alone: "jar", "jars" */

#endif
