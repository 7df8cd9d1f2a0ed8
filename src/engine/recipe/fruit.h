/*
 * fruit.h - the names people give a fruit: "Grapes", "grape", "wine grapes".
 *
 * English words only.  Names are compared in a plain form: lower case, one blank
 * between words, each word in the singular by its ending ("blackberries" >
 * "blackberry", "peaches" > "peach", "tomatoes" > "tomato").
 */
#ifndef STILLROOM_ENGINE_RECIPE_FRUIT_H
#define STILLROOM_ENGINE_RECIPE_FRUIT_H

#include <stdbool.h>
#include <stddef.h>

#define FRUIT_NAME_BYTES 96 /* a longer name is cut */

/* The plain form of a name, at most FRUIT_NAME_BYTES - 1 bytes. */
void fruit_plain(const char *name, char buffer[FRUIT_NAME_BYTES]);

/* "Grapes" and "grape"; not "grapes" and "wine grapes". */
bool fruit_same(const char *a, const char *b);

/* Does a name speak of the fruit in whole words?  "grapes" are in "grape juice";
 * "pineapples" are not in "apple juice", nor "wine grapes" in "grape juice". */
bool fruit_in(const char *fruit, const char *name);

/* May an ingredient be made of the fruit?  As fruit_in, and also by the last
 * word of the fruit: "wine grapes" make "grape juice", any "-berries" make
 * "berries". */
bool fruit_makes(const char *fruit, const char *ingredient);

#endif
