/*
 * forecast.h - before the day: this fruit, these products > juice, batches, jars,
 * lids, canner loads and what else is needed; and the other way round.
 *
 * Every figure is low, likely and high.  Low joins the low yield of juice with
 * the jars a batch surely fills, high joins the high yield with the jars to have
 * ready (scaling.h, struct yield): the ends are not odds but what to be prepared
 * for.  Batches are whole ones: a recipe is never stretched.  They are cooked in pots
 * of `in_pot` batches, what is left in one smaller pot; jars are those of the pots.
 *
 * Fruit that goes in whole by volume ("5.5 cups crushed") is taken at 1 g a mL:
 * common practice, no source; what is peeled and pitted away is not known.
 *
 * Units: uL, mg, pieces.
 */
#ifndef STILLROOM_ENGINE_RECIPE_FORECAST_H
#define STILLROOM_ENGINE_RECIPE_FORECAST_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/process/process.h"
#include "engine/recipe/fruit.h"
#include "engine/recipe/juice_yield.h"
#include "engine/recipe/recipe.h"
#include "engine/recipe/scaling.h"

#define FORECAST_PRODUCTS_MAX 8
#define FORECAST_BATCHES_MAX 9999

struct forecast_product {
	const struct recipe *recipe;
	const struct jar_size *jar;
	int batches; /* asked for; 0: as many as there is fruit for, in turn with the others */
	int in_pot;  /* batches one pot holds; 0 as 1 */
	int room;    /* jars of this size in one canner load; 0: no canner here takes it */
};

struct forecast_order {
	char fruit[FRUIT_NAME_BYTES];
	int64_t fruit_mg;  /* free: of no run or batch yet */
	int64_t juice_ul;  /* in stock, free, and used first; 0: none */
	int64_t run_mg;    /* in juicers or planned for them: its juice is to come */
	int64_t spoken_ul; /* of that juice, for other batches */
	struct juice_yield yield;
	enum unit_system units; /* what the kitchen's tools are marked in */
	size_t count;
	struct forecast_product products[FORECAST_PRODUCTS_MAX];
};

struct forecast_line {
	int batches[BOUND_COUNT];
	int jars[BOUND_COUNT];
	int loads[BOUND_COUNT]; /* all 0 when no canner takes it */
};

struct forecast {
	bool juice;                    /* some product is made of juice */
	int64_t juice_ul[BOUND_COUNT]; /* there will be: stock, and what the fruit gives that no product takes whole */
	int64_t juice_left_ul[BOUND_COUNT];
	int64_t fruit_left_mg[BOUND_COUNT]; /* without a product of juice */
	size_t count;
	struct forecast_line lines[FORECAST_PRODUCTS_MAX];
	int jars[BOUND_COUNT]; /* of all products, and as many lids */
	int loads[BOUND_COUNT];
};

/* The ingredient of a recipe that the fruit becomes: the first one whose name
 * fruit_makes.  NULL: the recipe is not made of it. */
const struct ingredient *forecast_ingredient(const struct recipe *recipe, const char *fruit);

/* FAULT_REFUSED: no product, one that is not made of the fruit, a jar the recipe
 * does not allow.  FAULT_MISUSE: amounts below nothing or over AMOUNT_..._MAX. */
bool forecast_make(const struct forecast_order *order, struct forecast *out, struct fault *fault);

/* How much fruit `jars` jars of the first product of the order take; its fruit is
 * not looked at, its juice in stock is.  Low: with the best yields; high: surely. */
struct fruit_need {
	int batches[BOUND_COUNT];
	int64_t juice_ul[BOUND_COUNT]; /* from the fruit; 0 when it goes in whole */
	int64_t fruit_mg[BOUND_COUNT];
};
bool forecast_fruit_for(const struct forecast_order *order, int jars, struct fruit_need *out, struct fault *fault);

/* --- what it takes ------------------------------------------------------------- */

enum need_kind { NEED_SUPPLY, NEED_LIDS, NEED_TRAYS /* of the plan, not of a forecast */ };

/* Amounts as the kitchen's tools fill them (measure_amount), what goes into jars
 * for as many jars as there may be. */
struct supply_need {
	enum need_kind kind;
	enum supply_kind supply;
	const struct jar_size *jar; /* jars: the size; else NULL */
	const char *name;           /* SUPPLY_OTHER: the ingredient's; else NULL */
	enum measure measure;
	bool optional; /* the recipes can do without */
	int64_t amount[BOUND_COUNT];
};
#define SUPPLY_NEEDS_MAX (FORECAST_PRODUCTS_MAX * RECIPE_INGREDIENTS_MAX + FORECAST_PRODUCTS_MAX + 2)

/* Jars by size, lids, bands, then ingredients in the order of the recipes, without
 * the fruit itself, its juice and water; returns how many. */
size_t forecast_needs(const struct forecast_order *order, const struct forecast *forecast,
                      struct supply_need out[SUPPLY_NEEDS_MAX]);

#endif
