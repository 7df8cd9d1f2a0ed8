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
#ifndef STILLROOM_ENGINE_FOOD_FOOD_H
#define STILLROOM_ENGINE_FOOD_FOOD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "engine/process/process.h"
#include "engine/recipe/recipe.h"

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
	int64_t pint_ul; /* 0: no figure published for a pint */
	int64_t quart_ul;
	const char *words_pint; /* "1 tbsp", as printed; "" none */
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

extern const struct acid_rule acid_rules[];
extern const size_t acid_rule_count;

/* How much of an acid a jar of that size gets under the rule: below a pint by volume
 * of the printed pint (half-pints, 12 oz), rounded up; between a pint and a quart the
 * quart's; half gallons twice the quart.  0: not offered for that size: a pint's figure
 * is never worked out from a quart's.  By volume: our reading, no source. */
int64_t acid_for_jar(const struct acid_rule *rule, enum acid acid, const struct jar_size *jar);

/* Does the recipe put an acid of the rule into each of its jars, not less than is
 * printed for a quart (recipe.h: ADD_IN_JAR), and is it offered for all its sizes? */
bool acid_in_every_jar(const struct acid_rule *rule, const struct recipe *recipe);

/* "2 tbsp bottled lemon juice or 1/2 tsp citric acid", as printed for a quart. */
void acid_rule_words(const struct acid_rule *rule, char *buffer, size_t size);

/* --- ingredients ------------------------------------------------------------------- */

/* What must not be in a food, by class; at most 64, one bit each. */
struct ingredient_class {
	const char *id;    /* "thickener" */
	const char *words; /* for a sentence: "a thickener" */
	const char *covers;
	const char *reason;
	const char *instead; /* what to do: "thicken after opening" */
	const char *source;
};
extern const struct ingredient_class ingredient_classes[];
extern const size_t ingredient_class_count;
const struct ingredient_class *ingredient_class_named(const char *id);

/* What an own recipe's line may be picked from.  A fruit is judged by the food's list
 * of fruits, a class by must_not_contain; harmless ones (sugar, water, salt, dried
 * spice, pectin) are neither. */
enum ingredient_is {
	INGREDIENT_FRUIT,
	INGREDIENT_OF_CLASS,
	INGREDIENT_ACID,
	INGREDIENT_HARMLESS,
	INGREDIENT_UNLISTED,
	INGREDIENT_IS_COUNT
};
struct known_ingredient {
	const char *name; /* "grape", "onion", "sugar" */
	const char *also; /* other names, "; " between them */
	enum ingredient_is is;
	uint64_t classes;         /* bits of ingredient_classes */
	enum acid acid;           /* of INGREDIENT_ACID */
	enum supply_kind supply;  /* its usual ledger */
	unsigned int harmless_in; /* of INGREDIENT_HARMLESS: a bit (1u << own_recipe) for each kind */
	int64_t jam_most_ul;      /* herb and flavoring: a batch of jam or jelly takes this much, all
	                           * together; 0: no such figure */
	const char *source;
};
extern const struct known_ingredient known_ingredients[];
extern const size_t known_ingredient_count;
const struct known_ingredient *
known_ingredient_named(const char *name); /* NULL: unlisted, and so unknown; plurals too */
/* Is the name one of it, in the singular or the plural? */
bool known_ingredient_called(const struct known_ingredient *item, const char *name);
/* What an ingredient of a recipe is: what it was picked as, or else what its supply
 * says (sugar, bottled lemon juice, a pectin ...).  NULL: unlisted. */
const struct known_ingredient *ingredient_picked(const struct ingredient *ingredient);

/* --- foods ------------------------------------------------------------------------------ */

enum own_recipe { OWN_NONE, OWN_JAM_JELLY, OWN_JUICE, OWN_PUREE, OWN_WHOLE_FRUIT, OWN_RECIPE_COUNT };
enum suspect_group { SUSPECT_ACID, SUSPECT_LOW_ACID_OR_TOMATO, SUSPECT_GROUP_COUNT };

struct food {
	const char *name; /* of the process tables */
	enum acidity acidity;
	const struct acid_rule *acid_rule;             /* NULL: none */
	uint64_t must_not_contain;                     /* bits of ingredient_classes; bind own recipes and changes */
	uint64_t printed_exception;                    /* allowed inside the guide's own recipe and amount only */
	enum own_recipe own_recipe;                    /* which own recipes may use its rows */
	const struct known_ingredient *const *made_of; /* OWN_NONE: what may be in an own recipe beside
	                                                * harmless ones; barred classes spare it */
	size_t made_of_count;
	bool thickener_printed; /* the printed recipe itself thickens */
	const char *thickener;  /* with what, and how much; "" */
	int vent_minutes;       /* pressure canner; 0: none is used */
	int heat_minutes;       /* on high with the vent open before that; 0: not asked */
	int64_t water_ul;       /* into the canner; 0: as the canner says */
	int canner_low_qt;      /* size of the canner; 0: any */
	int canner_high_qt;
	enum suspect_group suspect;
	bool reprocess;            /* a jar may be processed again */
	const char *reprocess_why; /* a sentence where it may not, or "" */
	const char *caution;       /* one short sentence, or "" */
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
/* All steps of a group, one after the other. */
extern const char *const suspect_words[SUSPECT_GROUP_COUNT];

/* --- own recipes ------------------------------------------------------------------------ */

enum fruit_status {
	FRUIT_ALLOWED,
	FRUIT_ALLOWED_WITH_ACID,
	FRUIT_TESTED_RECIPE_ONLY,
	FRUIT_EXCLUDED,
	FRUIT_STATUS_COUNT
};
/* FRUIT_TESTED_RECIPE_ONLY refuses an own recipe as FRUIT_EXCLUDED does. */
struct own_fruit {
	const char *food;
	const char *fruit; /* a known ingredient; OWN_ANY_OTHER: all without a line; OWN_ANY_VEGETABLE */
	enum fruit_status status;
	int sugar_least_permille; /* of the fruit by volume; 0: no figure */
	int64_t acid_least_ul;    /* bottled lemon juice ... */
	int64_t acid_for_ul;      /* ... for so much fruit; 0: none asked */
	const char *condition;
	const char *reason;
	const char *source;
};
extern const struct own_fruit own_fruits[];
extern const size_t own_fruit_count;
#define OWN_ANY_OTHER "any other"
#define OWN_ANY_VEGETABLE "any vegetable"
const struct own_fruit *own_fruit_of(const struct food *food, const struct known_ingredient *fruit);

/* What all own recipes of a food keep, by pectin. */
struct own_condition {
	const char *food;
	enum pectin pectin;
	const char *words;          /* "jam with added pectin" */
	const char *words_of_juice; /* where all fruit comes as juice: "jelly with added pectin" */
	int multiple_max;           /* 0: as far as the recipe itself says */
	int64_t juice_most_ul;      /* of fruit or juice in one batch; 0: no figure */
	int64_t butter_most_ul;     /* a batch, against foam; 0: none */
	const char *condition;
	const char *source;
};
extern const struct own_condition own_conditions[];
extern const size_t own_condition_count;

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

#define ORIGIN_WORDS_MAX 300
struct recipe_standing {
	enum origin origin;
	enum pectin pectin;
	bool acid_asked;  /* each jar's batch must say that its acid is in */
	int multiple_max; /* batches one pot may hold under this standing */
	char words
	    [ORIGIN_WORDS_MAX]; /* "own recipe, class: jelly with added pectin"; "not a tested recipe: ..."; the reason of a refusal */
};

/* Judge an own recipe by its ingredients alone: its name is never read.  Refused:
 * a class the food's line bars, an excluded or unlisted fruit, acidified food without
 * its acid, a food whose rows no own recipe may use when it is acidified or low-acid
 * with a barred ingredient.  Unknown: an unlisted ingredient, a food for which no own
 * recipe is trusted.  See docs/reference.md for the reading of each line. */
void own_recipe_judge(const struct recipe *recipe, struct recipe_standing *out);

#endif
