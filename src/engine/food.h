/*
 * food.h - what each food of the process tables needs beside its minutes.
 *
 * Data: schema/food.csv with acid_rule.csv, ingredient_class.csv,
 * own_recipe.csv, ingredient.csv and suspect_step.csv, baked in at build; a food
 * of the process tables without a line here does not build.  Each line carries
 * its source; where a note says "our caution" the source does not ask so much.
 *
 * No code reads meaning out of a name: whoever wants to know whether a jar needs
 * acid, what may not be in it or how it is thrown away asks here.
 *
 * Units: acid in whole microlitres by spoon (powders too: a level spoon), per jar.
 */
#ifndef STILLROOM_ENGINE_FOOD_H
#define STILLROOM_ENGINE_FOOD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "engine/process.h"
#include "engine/recipe.h"

/* --- acid ------------------------------------------------------------------------ */

/* What can be said of a jar's acid.  AS_PRINTED: the acid of the recipe (or the
 * ferment's own) is in as its page or sheet prints it. */
enum acid {
	ACID_NOT_SAID,
	ACID_NONE_ASKED, /* recipe or sheet asks for none, and somebody said so */
	ACID_LEFT_OUT,
	ACID_LEMON_JUICE, /* bottled */
	ACID_CITRIC,
	ACID_VINEGAR, /* 5 percent */
	ACID_AS_PRINTED,
	ACID_COUNT
};

const char *acid_name(enum acid acid);  /* as stored: "lemon_juice" */
const char *acid_words(enum acid acid); /* "bottled lemon juice" */
bool acid_from_name(const char *name, enum acid *out);
enum supply_kind acid_supply(enum acid acid); /* SUPPLY_OTHER: none */

enum acid_kind { ACID_PER_JAR, ACID_BY_RECIPE, ACID_BY_FERMENTATION, ACID_KIND_COUNT };

struct acid_dose {
	enum acid acid;
	int64_t pint_ul;  /* 0: no figure published for a pint */
	int64_t quart_ul;
	const char *words_pint;  /* "1 tbsp", as printed; "" none */
	const char *words_quart;
	const char *source;
};

#define ACID_DOSES_MAX 3
struct acid_rule {
	const char *id;
	enum acid_kind kind;
	struct acid_dose doses[ACID_DOSES_MAX]; /* PER_JAR: any one of them; others: what the recipe prints */
	size_t dose_count;
	const char *condition;
	const char *reason;
	const char *source;
};

/* How much of an acid a jar of that size gets under the rule, scaled from the
 * printed pint (half-pints, 12 oz) or quart; a size in between takes the next larger
 * printed figure; half gallons twice the quart.  0: this acid is not offered for that
 * size (no figure is ever worked out from a larger jar's). */
int64_t acid_for_jar(const struct acid_rule *rule, enum acid acid, const struct jar_size *jar);

/* --- ingredients ------------------------------------------------------------------- */

/* What must not be in a food, by class; at most 64, one bit each. */
struct ingredient_class {
	const char *id;     /* "thickener" */
	const char *words;  /* for a sentence: "a thickener" */
	const char *covers;
	const char *reason;
	const char *source;
};
extern const struct ingredient_class ingredient_classes[];
extern const size_t ingredient_class_count;
const struct ingredient_class *ingredient_class_named(const char *id);

/* What an own recipe's line may be picked from.  A fruit is judged by the food's list
 * of fruits, a class by must_not_contain; harmless ones (sugar, water, salt, dried
 * spice, pectin) are neither. */
enum ingredient_is { INGREDIENT_FRUIT, INGREDIENT_OF_CLASS, INGREDIENT_ACID, INGREDIENT_HARMLESS, INGREDIENT_UNLISTED, INGREDIENT_IS_COUNT };
struct known_ingredient {
	const char *name; /* "grape", "onion", "sugar" */
	enum ingredient_is is;
	uint64_t classes; /* bits of ingredient_classes */
	enum acid acid;   /* of INGREDIENT_ACID */
	enum supply_kind supply; /* its usual ledger */
	const char *source;
};
extern const struct known_ingredient known_ingredients[];
extern const size_t known_ingredient_count;
const struct known_ingredient *known_ingredient_named(const char *name); /* NULL: unlisted, and so unknown */

/* --- foods ------------------------------------------------------------------------------ */

enum own_recipe { OWN_NONE, OWN_JAM_JELLY, OWN_JUICE, OWN_PUREE, OWN_WHOLE_FRUIT, OWN_RECIPE_COUNT };
enum suspect_group { SUSPECT_ACID, SUSPECT_LOW_ACID_OR_TOMATO, SUSPECT_GROUP_COUNT };

struct food {
	const char *name; /* of the process tables */
	enum acidity acidity;
	const struct acid_rule *acid_rule; /* NULL: none */
	uint64_t must_not_contain;  /* bits of ingredient_classes; bind own recipes and changes */
	uint64_t printed_exception; /* allowed inside the guide's own recipe and amount only */
	enum own_recipe own_recipe; /* which own recipes may use its rows */
	bool thickener_printed;     /* the printed recipe itself thickens: words in the caution */
	int vent_minutes;           /* pressure canner; 0: none is used */
	enum suspect_group suspect;
	bool reprocess;             /* a jar may be processed again */
	const char *caution;        /* one short sentence, or "" */
	const char *source;
	const char *note;
};
extern const struct food foods[];
extern const size_t food_count;
const struct food *food_named(const char *name); /* NULL: none; case, blanks, dashes do not matter */

struct suspect_step {
	enum suspect_group group;
	int step;
	const char *when;
	const char *act;
	const char *source;
};
extern const struct suspect_step suspect_steps[];
extern const size_t suspect_step_count;

/* --- own recipes ------------------------------------------------------------------------ */

enum fruit_status { FRUIT_ALLOWED, FRUIT_ALLOWED_WITH_ACID, FRUIT_TESTED_RECIPE_ONLY, FRUIT_EXCLUDED, FRUIT_STATUS_COUNT };
struct own_fruit {
	const char *food;
	const char *fruit; /* a known ingredient */
	enum fruit_status status;
	const char *condition;
	const char *reason;
	const char *source;
};
extern const struct own_fruit own_fruits[];
extern const size_t own_fruit_count;

/* Where a recipe stands. */
enum origin {
	ORIGIN_NOT_SAID,
	ORIGIN_PRINTED,     /* a published recipe, as printed */
	ORIGIN_OWN_CLASS,   /* own recipe that may use the food's rows */
	ORIGIN_OWN_UNKNOWN, /* own recipe, not tested: the minutes are those of the food */
	ORIGIN_REFUSED,     /* must not be canned with these rows */
	ORIGIN_COUNT
};
const char *origin_name(enum origin origin);
bool origin_from_name(const char *name, enum origin *out);

#define ORIGIN_WORDS_MAX 300
struct recipe_standing {
	enum origin origin;
	enum pectin pectin;
	bool acid_asked;   /* each jar's batch must say that its acid is in */
	int multiple_max;  /* batches one pot may hold under this standing */
	char words[ORIGIN_WORDS_MAX]; /* "own recipe, class: jelly with added pectin"; "not a tested recipe: ..."; the reason of a refusal */
};

/* Judge an own recipe by its ingredients alone: its name is never read.  Refused:
 * a class the food's line bars, an excluded or unlisted fruit, acidified food without
 * its acid, a food whose rows no own recipe may use when it is acidified or low-acid
 * with a barred ingredient.  Unknown: an unlisted ingredient, a food for which no own
 * recipe is trusted.  See docs/reference.md for the reading of each line. */
void own_recipe_judge(const struct recipe *recipe, struct recipe_standing *out);

#endif
