/*
 * amount.h - amounts as people write them, and back: "20 lb", "1 1/2 cups",
 * "3 qt", "2.5 kg", "5 tbsp + 1 tsp", "144".
 *
 * An amount is a whole number in the unit of its measure (recipe.h): uL, mg or
 * pieces.  Reading is integer arithmetic: the terms are added up exactly and
 * rounded once.  The decimal sign is a point whatever the locale.
 *
 * Sources: the US measures of NIST Handbook 44 App. C and the avoirdupois pound
 * (schema/measures.csv: 1 gal = 3,785,411.784 uL; 1 lb = 453.59237 g, 1 oz =
 * 28.349523125 g); 200 g of granulated sugar a US cup (scaling.h, source in
 * schema/measures.csv).
 */
#ifndef STILLROOM_ENGINE_RECIPE_AMOUNT_H
#define STILLROOM_ENGINE_RECIPE_AMOUNT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/recipe/recipe.h"
#include "engine/recipe/scaling.h"

/* The most that is taken for an amount and not for a slip of the finger. */
#define AMOUNT_UL_MAX INT64_C(10000000000) /* 10,000 L */
#define AMOUNT_MG_MAX INT64_C(10000000000) /* 10,000 kg */
#define AMOUNT_PIECES_MAX INT64_C(1000000)

/* Terms with or without "+" between them; a term is a whole number, a decimal, a
 * fraction or both ("1 1/2"), then a unit.  Pieces have none, or "dozen"; a bare
 * 0 is nothing of any measure.  Sugar may be given in cups and spoons.  What things come in, a
 * bushel, lug, box, bag, sack, crate, case, bottle or package, goes with what one holds: "3 lugs of 25 lb".
 * FAULT_MISUSE with a sentence, *out untouched: not an amount, a unit unknown, a
 * weight for a volume or the other way round, a part of a piece, too much. */
bool amount_read(const char *words, enum measure measure, enum supply_kind supply, int64_t *out, struct fault *fault);

/* The same where as much as `bought` (0: not known) is got at a time: "3 lugs" are three times that. */
bool amount_read_bought(const char *words, enum measure measure, enum supply_kind supply, int64_t bought, int64_t *out,
                        struct fault *fault);

/* As amount_read in the measure of the supply's ledger, for what a recipe says: every
 * powder with a weight a cup (supply_mg_per_cup) may be given in level spoons. */
bool amount_read_level(const char *words, enum supply_kind supply, int64_t *out, struct fault *fault);

/* As amount_read, but the unit tells the measure (sugar: always its mass). */
bool amount_read_any(const char *words, enum supply_kind supply, enum measure *measure, int64_t *out,
                     struct fault *fault);

/* What a recipe says of a line: just `amount` (most 0), "4 cups to 5 cups", or "at most 2 cups"
 * (most is the same), as in struct ingredient. */
struct amount_range {
	enum measure measure;
	int64_t amount;
	int64_t most;
};
#define AMOUNT_RANGE_BYTES 140 /* take any in words */

/* As amount_read_any, for each end; FAULT_MISUSE also when the second is not the larger one. */
bool amount_read_range(const char *words, enum supply_kind supply, struct amount_range *out, struct fault *fault);

/* Short words, rounded to what a kitchen measures: "12 lb 4 oz", "3 qt 1 cup",
 * "5 tbsp 1 tsp", "2.35 L", "1.2 kg", "144".  US: volumes to 1/8 tsp under a
 * tablespoon, a tablespoon from a cup up, 1/4 cup from a quart, a cup from 2 gal;
 * masses to 1/8 oz, from 4 oz to 1/4 oz, from 4 lb to an ounce; less than these
 * show goes in mL or g.  Metric: to 0.01 L or kg, below that to 1, from 100 to
 * 0.1, from 10 to 0.01 mL or g.  64 bytes take any. */
void amount_words(enum measure measure, int64_t amount, enum unit_system units, char *buffer, size_t size);

/* What is asked for and what is there, in one unit: "5 cups" and "3-1/2 cups".  The unit is
 * that of what is asked for; powders that have a weight a cup are told in cups and spoons
 * (US).  What is asked for is never rounded down, what is there never up; "none". */
struct amount_both {
	char asked[64];
	char there[64];
};
void amount_both(enum measure measure, enum supply_kind supply, int64_t asked, int64_t there, enum unit_system units,
                 struct amount_both *out);

/* Words for a line a person edits: amount_read makes the very same amount of
 * them.  amount >= 0; at most AMOUNT_..._MAX. */
void amount_exact_words(enum measure measure, enum supply_kind supply, int64_t amount, enum unit_system units,
                        char *buffer, size_t size);
/* The same for amount_read_range: "4 cups to 5 cups". */
void amount_range_words(const struct amount_range *range, enum supply_kind supply, enum unit_system units, char *buffer,
                        size_t size);

#endif
