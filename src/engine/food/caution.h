/*
 * caution.h - what a person must know beside the minutes of a process: acid, vent,
 * what may not be in the jar, whose recipe it must be.  Said from the tables of
 * needs (engine/food/food.h), sources there.
 */
#ifndef STILLROOM_ENGINE_FOOD_CAUTION_H
#define STILLROOM_ENGINE_FOOD_CAUTION_H

#include <stddef.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/process/process.h"

#define CAUTIONS_MAX 12
#define CAUTION_BYTES 1200

struct cautions {
	size_t count;
	char sentence[CAUTIONS_MAX][CAUTION_BYTES];
};

/* The acid is told for the jar of the answer, the vent for its method. */
void process_cautions(const struct process *process, struct cautions *out);

/* "must not be added: flour; rice; ..."; nothing where nothing is barred. */
void food_must_not_words(const struct food *food, struct text *text);

#endif
