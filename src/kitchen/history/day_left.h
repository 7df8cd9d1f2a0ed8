/*
 * day_left.h - when nothing runs any more: what the day gave, and what is left to do.
 */
#ifndef STILLROOM_KITCHEN_HISTORY_DAY_LEFT_H
#define STILLROOM_KITCHEN_HISTORY_DAY_LEFT_H

#include <stdbool.h>
#include <stddef.h>

#include "kitchen/board/board.h"

#define DAY_LEFT_MAX 6 /* lines: made, seals, set aside, left, used up, clean down */

/* Sentences, those that have nothing to say left out. */
struct day_left {
	size_t count;
	char lines[DAY_LEFT_MAX][200];
};

/* False: work is in hand or jars wait for a canner, or no jar was made today. */
bool kitchen_day_left(const struct kitchen *kitchen, const struct moment *now, struct day_left *out);

#endif
