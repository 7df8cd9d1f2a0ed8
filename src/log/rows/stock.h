/*
 * stock.h - rows of supplies and of the recipes of this kitchen.
 */
#ifndef STILLROOM_LOG_ROWS_STOCK_H
#define STILLROOM_LOG_ROWS_STOCK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "engine/process/process.h"
#include "engine/recipe/recipe.h"
#include "log/rows/common.h"

struct log_supply {
	int64_t id;
	enum supply_kind kind;
	char size[WORD_MAX_BYTES]; /* jars only */
	int64_t stock;             /* sum of its moves; filled on reading */
};

enum supply_why { SUPPLY_RECEIPT, SUPPLY_USE, SUPPLY_CORRECTION, SUPPLY_WHY_COUNT };

struct log_supply_move {
	int64_t id;
	int64_t supply_id;
	int64_t amount;
	enum supply_why why;
	int64_t batch_id; /* 0: none */
	int64_t load_id;  /* 0: none */
	char note[SENTENCE_MAX_BYTES];
	int64_t wall_ms;
	char who[NAME_MAX_BYTES]; /* initials; "" nobody said */
};

/* What one buys of a supply at a time: a bag, a bottle, a box of jars. */
struct log_sold_by {
	enum supply_kind kind;
	char size[WORD_MAX_BYTES]; /* jars only */
	int64_t amount;            /* in the unit of the kind */
};

/* A recipe of the kitchen's own, with room for its words. */
#define RECIPE_TEXT_MAX_BYTES 200
#define OWN_INGREDIENTS_MAX 12 /* the CHECK of recipe_ingredient.place */
struct log_recipe_ingredient {
	char name[NAME_MAX_BYTES];
	enum supply_kind supply;
	enum measure measure;
	int64_t amount;
	char form[NAME_MAX_BYTES];
	enum adding adding;
	bool optional;
	char known[NAME_MAX_BYTES]; /* what it was picked as (engine/food/food.h); "" unlisted */
	int64_t amount_most;        /* as in engine/recipe/recipe.h */
};

struct log_recipe {
	int64_t id;
	char name[NAME_MAX_BYTES];
	char food[NAME_MAX_BYTES]; /* "" = no published process */
	char packs[RECIPE_TEXT_MAX_BYTES];
	char jars[RECIPE_TEXT_MAX_BYTES];
	enum pectin pectin;
	enum acidity acidity;
	enum gel_test gel_test;
	int boil_hold_s;
	int headspace_thou;
	int multiple_max;
	int foam_percent;
	int boil_off_low_percent;
	int boil_off_high_percent;
	char caution[SENTENCE_MAX_BYTES];
	char source[SOURCE_MAX_BYTES];
	bool retired;
	int sheet_minutes;   /* of process, for this elevation, by the sheet of its pectin; 0: it prints none */
	int vinegar_percent; /* of acidity; 0: not said, or no vinegar */
	enum acid_swap acid_swap;
	int64_t yield_low_ul; /* as printed, of one batch; 0: none is */
	int64_t yield_high_ul;
	size_t ingredient_count;
	struct log_recipe_ingredient ingredients[OWN_INGREDIENTS_MAX];
};

#endif
