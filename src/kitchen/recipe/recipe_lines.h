/*
 * recipe_lines.h - a recipe of the kitchen's own as lines of a kitchen file, and
 * back: one for the recipe and, below it, one for each ingredient.
 *
 *   recipe "Plum butter" food="..." packs="hot" jars="half_pint pint"
 *          pectin=none acidity=acid hold=0 headspace=1/4 multiple=2 foam=33
 *          boiloff=30-50 gel=no caution="..." source="house recipe, no source"
 *          vinegar=5 lemon=yes yield="6 pt to 7 pt"
 *   ingredient "Damson pulp" supply=fruit amount="6 lb" form="sieved" when=at_start as=plum
 *
 * Words are in any order after the name; what is not said has the default below.
 * Nothing is judged here but the form: recipe_check is asked when the recipe is
 * put in the log.  All faults are FAULT_MISUSE and say what the word should be.
 */
#ifndef STILLROOM_KITCHEN_RECIPE_RECIPE_LINES_H
#define STILLROOM_KITCHEN_RECIPE_RECIPE_LINES_H

#include <stdbool.h>
#include <stddef.h>

#include "base/words.h"
#include "engine/recipe/scaling.h"
#include "log/rows/stock.h"

/* Room for any line that WORDS_BYTES let through. */
#define RECIPE_LINE_MAX_BYTES 1024

/* What is more is a slip of the finger. */
#define RECIPE_PERCENT_MAX 95
#define RECIPE_HOLD_MAX_S 7200
#define RECIPE_MULTIPLE_MAX 99
#define SHEET_MINUTES_MAX 600

/* Weaker vinegar than that of the tested recipes is never written down as good: 5 percent, USDA AIB 539
 * (rev. 2015), Guide 3, page 3-5.  The upper end is recipe_check's. */
#define RECIPE_VINEGAR_MIN 5
#define RECIPE_VINEGAR_MAX 10

/* A line whose first word is "recipe".  Sets all but the id and the ingredients,
 * which stay.  Defaults: food "" (no published process), no packs, no jars,
 * pectin none, acidity that of the food (needed when there is no food), hold 0 s,
 * headspace 1/4 in, multiple 1, foam 33 %, boiloff 0-10 %, gel no, minutes
 * 0 (no process printed by the sheet of its pectin), no vinegar= (its percent), lemon
 * (juice may replace the vinegar) no, no yield=, not retired. */
bool recipe_line_read(const struct words *words, struct log_recipe *recipe, struct fault *fault);
/* A line whose first word is "ingredient"; the amount is needed.  Defaults:
 * supply other, no form, at_start, not optional, and the known ingredient of that name
 * if there is one.  as= picks another one, as=unlisted none. */
bool ingredient_line_read(const struct words *words, struct log_recipe_ingredient *out, struct fault *fault);

/* The lines that would set them as they are.  False: cut, it is too long for one
 * line (RECIPE_LINE_MAX_BYTES). */
bool recipe_line_words(const struct log_recipe *recipe, char *buffer, size_t size);
/* With what it was picked as in any case, so that another name typed over it changes
 * nothing of that. */
bool ingredient_picked_words(const struct log_recipe_ingredient *ingredient, enum unit_system units, char *buffer,
                             size_t size);

#endif
