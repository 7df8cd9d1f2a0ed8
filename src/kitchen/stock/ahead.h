/*
 * ahead.h - before the day: what this kitchen can make of a fruit, with its own
 * canners and runs, and what it lacks for it.
 *
 * Nothing here writes.  Recipes in the answers are the kitchen's and valid until
 * its next act.
 */
#ifndef STILLROOM_KITCHEN_STOCK_AHEAD_H
#define STILLROOM_KITCHEN_STOCK_AHEAD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "base/text.h"
#include "engine/recipe/forecast.h"
#include "kitchen/board/board.h"
#include "kitchen/stock/goods.h"

/* What shall be made. */
struct wish {
	char recipe[NAME_MAX_BYTES];
	char jar[WORD_MAX_BYTES]; /* "" = the usual one of the product */
	int batches;              /* 0: as many as there is fruit for */
};

struct wishes {
	char fruit[NAME_MAX_BYTES];
	int64_t fruit_mg;
	bool juice_in_stock; /* use it as well */
	int jars;            /* wanted of the first product; 0: what the fruit gives */
	int in_pot;          /* batches cooked in one pot at most; 0: one.  Of each product no more
	                         than its recipe and the largest pot here allow */
	size_t count;
	struct wish wish[FORECAST_PRODUCTS_MAX];
};

/* "grape jelly", "grape jelly in pints", "3 x grape jelly in half-pints": a
 * recipe's name, how many batches, the jar.  FAULT_MISUSE: no such recipe or jar,
 * a number that is none. */
bool wish_read(const struct kitchen *kitchen, const char *words, struct wish *out, struct fault *fault);

/* Batches of the recipe that may be cooked in one pot of this kitchen: what the recipe, its
 * pectin and the largest pot allow; 1 at least. */
int kitchen_batches_in_pot(const struct kitchen *kitchen, const struct recipe *recipe);
#define IN_POT_MAX 99 /* of a wish */

/* The jar a recipe is usually filled into. */
const struct jar_size *usual_jar(const struct recipe *recipe);

/* The n-th recipe that is made of the fruit; NULL: there are no more. */
const struct recipe *kitchen_makes(const struct kitchen *kitchen, const char *fruit, size_t n);
/* Is a recipe here for its juice alone, in jars?  Not every juice has a process that is published. */
bool kitchen_jars_juice(const struct kitchen *kitchen, const char *fruit);
/* Is it made into something here, has it a published yield of its own, or was it run before? */
bool kitchen_knows_fruit(const struct kitchen *kitchen, const char *fruit);

struct ahead {
	struct forecast_order order; /* its fruit and juice: what is free of them */
	struct forecast forecast;
	int64_t fruit_mg;                                   /* as wished, what is spoken for with it */
	struct fruit_spoken spoken;                         /* for other runs and batches */
	struct fruit_need need;                             /* with jars wanted: how much fruit */
	int jars;                                           /* as wished */
	struct goods trays;                                 /* for what else is planned: to be dried */
	char canner[FORECAST_PRODUCTS_MAX][NAME_MAX_BYTES]; /* the roomiest that takes it; "" none here */
};

/* With jars wanted there is exactly one product, the fruit of the wish is not
 * looked at, and the forecast is that of the batches likely needed with fruit
 * enough.  Faults: those of forecast.h; FAULT_MISUSE: no such recipe. */
bool kitchen_look_ahead(const struct kitchen *kitchen, const struct wishes *wishes, struct ahead *out,
                        struct fault *fault);

/* What is spoken for of the fruit, and what the forecast is of: "; 36 lb of it planned, for 24 jars.  Of the other
 * 12 lb:"; nothing when all of it is free. */
void ahead_spoken_words(const struct ahead *ahead, struct text *text);

/* "trays to dry on: 10 planned, 8 free"; nothing when the plan dries nothing. */
void ahead_tray_words(const struct ahead *ahead, struct text *text);

/* --- what is missing (shortage.c) --------------------------------------------------- */

struct shortage_line {
	struct supply_need need;
	struct goods goods;
	int64_t missing[BOUND_COUNT]; /* beyond what is free, with what is spoken for and not here; 0: enough.
	                                 Not counted: all of it */
	int64_t sold_by;              /* what one buys at a time: house setting; jars and bands else
	                                 by the dozen, lids by the newest box; 0: loose */
	char name[NAME_MAX_BYTES];    /* "half-pints", "flat lids", "sugar" */
	char instead[240];            /* acid that is missing: "crushed tomatoes: 1/2 tsp citric acid in each quart,
	                      100 g here"; "" nothing else serves */
};

/* A line for each need, in the order of forecast_needs, and one for trays where the plan dries something; malloc'ed. */
bool kitchen_shortage(const struct kitchen *kitchen, const struct ahead *ahead, struct shortage_line **rows,
                      size_t *count, struct fault *fault);

/* Is it missing for certain (likely), perhaps (only when all yields well), or not? */
enum lack { LACK_NONE, LACK_PERHAPS, LACK_LIKELY, LACK_NOT_COUNTED };
enum lack shortage_lack(const struct shortage_line *line);

/* What is here: "84", "84, spoken for 60", "not counted". */
void shortage_here(const struct shortage_line *line, enum unit_system units, char *buffer, size_t size);

/* "lids", "jar": what kind of thing it is, for programs. */
const char *shortage_kind(const struct shortage_line *line);

/* What to buy for one bound, in units one buys: "3 x 5 lb", "2 dozen", "1 box of
 * 60", loose "12 lb"; "" nothing. */
void shortage_buy(const struct shortage_line *line, enum bound bound, enum unit_system units, char *buffer,
                  size_t size);

#endif
