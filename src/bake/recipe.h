/*
 * recipe.h - recipes as bake holds them, between reading and checking.
 */
#ifndef STILLROOM_BAKE_RECIPE_H
#define STILLROOM_BAKE_RECIPE_H

#include "bake/bake.h"
#include "bake/food.h"

#define INGREDIENTS_MAX 16 /* src/engine/recipe/recipe.h: RECIPE_INGREDIENTS_MAX */

/* In the order of the engine's enums. */
#define PECTIN_COUNT 3
#define NO_PECTIN 0
#define REGULAR 1
#define LOW_METHOXYL 2
#define NO_GEL_TEST 0
#define IN_JAR 3
#define ADDINGS 6
#define LEMON_FOR_VINEGAR 1
#define OPTIONAL 1
#define ANY_MEASURE 3
#define SUPPLIES 13
#define LEMON_JUICE 4
#define CITRIC_ACID 5
#define VINEGAR 6
#define PECTIN_REGULAR 7
#define PECTIN_LIQUID 8
#define PECTIN_LOW 9
#define CALCIUM_SOLUTION 10

/* Powders that are told in spoons are kept by weight: mg a cup, as
 * supply_mg_per_cup() of the engine, sources there; tests compare the two. */
struct supply {
	const char *constant;
	size_t measure; /* of its ledger */
	int64_t mg_a_cup;
};

extern const struct supply supplies[SUPPLIES];
extern const char *const supply_names[SUPPLIES];
extern const char *const pectin_names[PECTIN_COUNT];

struct ingredient {
	const char *name;
	size_t supply;
	struct amount amount;
	const char *form;
	size_t adding;
	size_t optional;
	int64_t amount_most; /* 0: no range */
	const char *instead_of;
	long line;
};

/* Where in the order of a recipe each of the engine's addings comes. */
extern const int adding_places[ADDINGS];

struct recipe {
	const char *name;
	const char *food;
	const char *packs;
	const char *jars;
	size_t pectin;
	size_t acidity;
	size_t gel_test;
	int boil_hold_s;
	int headspace_thou;
	int multiple_max; /* 0: waits for the sheet of its pectin */
	int foam_percent;
	int boil_off_low;
	int boil_off_high;
	int64_t yield_low_ul;
	int64_t yield_high_ul;
	const char *caution;
	const char *source;
	int vinegar_percent;
	size_t acid_swap;
	const char *not_startable;
	const char *path;
	long line;
	size_t count;
	struct ingredient ingredients[INGREDIENTS_MAX];
};

struct book {
	struct recipe *row;
	size_t count;
};

/* What the other tables hold; empty when they were not given. */
struct tables {
	struct jars jars;
	struct larder larder;
	struct processes processes;
};

/* Each ends the program at the first defect.  recipes_read adds to the book. */
void recipes_read(struct book *book, const char *path);
void check_ingredient(const char *path, const struct ingredient *item, const struct larder *larder);
void check_recipe(const struct recipe *recipe, const struct tables *tables);

#endif
