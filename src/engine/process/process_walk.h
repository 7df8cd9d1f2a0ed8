/*
 * process_walk.h - questions about the rows of the process tables that the
 * look-up, its refusals and the pickers share.  For files of engine/process*.c
 * only; other floors use process.h.  Returned strings live in the tables.
 */
#ifndef STILLROOM_ENGINE_PROCESS_PROCESS_WALK_H
#define STILLROOM_ENGINE_PROCESS_PROCESS_WALK_H

#include <stdbool.h>
#include <stddef.h>

#include "engine/process/process.h"

/* Is the row known well enough to be given out? */
bool row_offered(const struct process_row *row);

/* May this method use the row?  An atmospheric steam canner uses the
 * boiling-water rows of food that is not low-acid (trade notes, section 2). */
bool row_serves(const struct process_row *row, enum method method);

/* The highest foot at which the row is given: its printed top, or the height above
 * which nothing is. */
int row_top_ft(const struct process_row *row);

/* Is this the first row of its food in the tables? */
bool row_begins_food(size_t index);

/* The food as the tables spell it; NULL when they do not have it. */
const char *food_in_table(const char *name);

#endif
