/*
 * acid.h - what a person is asked about the acid of jars, and may answer.
 *
 * The answers are those published for the food and the jar (food.h: acid_rule);
 * whether one serves in the end is the gate's to say.  Sentences are in spoons and
 * cups, as the publications print them.
 */
#ifndef STILLROOM_ENGINE_FOOD_ACID_H
#define STILLROOM_ENGINE_FOOD_ACID_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/text.h"
#include "engine/food/food.h"

#define ACID_ANSWER_BYTES 160

/* What may be said of the acid in jars of a food, the usual answer first; 0: nothing is
 * asked.  By jar: each acid that has a figure for that size.  By recipe or ferment: as
 * printed; a food of which own recipes are jam or jelly: also that none is asked. */
size_t acid_answers(const struct food *food, const struct jar_size *jar, enum acid out[ACID_COUNT]);
bool acid_is_answer(const struct food *food, const struct jar_size *jar, enum acid acid);

/* "2 tbsp": of one jar, as printed where a figure is, else its share in spoons. */
void acid_dose_words(const struct acid_rule *rule, enum acid acid, const struct jar_size *jar, struct text *text);

/* The tick: "bottled lemon juice, 2 tbsp in each of 7 quarts: it is in". */
void acid_answer_words(const struct food *food, enum acid acid, const struct jar_size *jar, int jars,
                       struct text *text);
/* All answers, for a refusal: "2 tbsp bottled lemon juice or 1/2 tsp citric acid". */
void acid_asked_words(const struct food *food, const struct jar_size *jar, struct text *text);

/* Is the vinegar's strength asked with that answer (A539 Guide 6: 5 percent)? */
bool acid_asks_vinegar(const struct acid_rule *rule, enum acid acid);

/* A spoon of it in the measure of its ledger (recipe.h: supply_measure). */
int64_t acid_in_ledger(enum acid acid, int64_t ul);

#endif
