/*
 * recipe.h - how a product is made in a pot: what goes in, in which order, how
 * long it boils, how far one pot may be multiplied, and where that is published.
 *
 * Built-in recipes are baked in from schema/recipe.csv, recipe_guide.csv and the
 * ingredients beside them; a kitchen's own stand in its log and have the same form.  A recipe names a food of the process tables; where none fits
 * (food == "") it can be recorded but has no published process.
 *
 * Units: volumes in whole microlitres, masses in whole milligrams.
 */
#ifndef STILLROOM_ENGINE_RECIPE_RECIPE_H
#define STILLROOM_ENGINE_RECIPE_RECIPE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/process/process.h"

enum pectin { PECTIN_NONE, PECTIN_REGULAR, PECTIN_LOW_METHOXYL, PECTIN_COUNT };

/* When an ingredient goes in.  A recipe lists them as adding_place() orders them:
 * ahead, the pot's phases, the jars. */
enum adding {
	ADD_AT_START, /* into the cold juice or fruit, before heating */
	ADD_AT_BOIL,  /* at the full rolling boil ("sugar in") */
	ADD_LAST,     /* last of all, into the boiling pot (liquid pectin) */
	ADD_IN_JAR,   /* into each jar before closing (tomato acid) */
	ADD_AHEAD,    /* hours or days before, into a soak that is poured off; built-in recipes only */
	ADD_PACKED,   /* cold into the jars, shared out among them; built-in recipes only */
	ADDING_COUNT
};
#define OWN_ADDINGS (ADD_IN_JAR + 1) /* of those a kitchen's own recipe may have: the log's CHECK */

enum gel_test { GEL_TEST_NONE, GEL_TEST_TEMPERATURE /* or sheet, or cold plate */, GEL_TEST_COUNT };

/* How an amount is measured. */
enum measure {
	MEASURE_VOLUME, /* uL */
	MEASURE_MASS,   /* mg */
	MEASURE_EACH,   /* pieces */
	MEASURE_COUNT
};

/* What the store keeps a ledger of; "other" ingredients are told but not counted. */
enum supply_kind {
	SUPPLY_OTHER,
	SUPPLY_JUICE,            /* from a juicer run; uL; its own ledger */
	SUPPLY_FRUIT,            /* mg */
	SUPPLY_SUGAR,            /* mg */
	SUPPLY_LEMON_JUICE,      /* bottled; uL */
	SUPPLY_CITRIC_ACID,      /* mg */
	SUPPLY_VINEGAR,          /* 5 %; uL */
	SUPPLY_PECTIN_REGULAR,   /* powdered; mg */
	SUPPLY_PECTIN_LIQUID,    /* regular, in pouches; mg */
	SUPPLY_PECTIN_LOW,       /* low-methoxyl; mg */
	SUPPLY_CALCIUM_SOLUTION, /* uL */
	SUPPLY_SALT,             /* mg */
	SUPPLY_BUTTER,           /* mg; against foam */
	SUPPLY_JAR,              /* pieces, by size */
	SUPPLY_BAND,             /* pieces */
	SUPPLY_KIND_COUNT
};

struct ingredient {
	const char *name; /* "bottled lemon juice" */
	enum supply_kind supply;
	enum measure measure; /* its ledger's; any for SUPPLY_OTHER */
	int64_t amount;       /* of one batch (ADD_IN_JAR: of one quart jar, halved for a pint, ...); 0: of a sheet */
	const char *form;     /* "granulated", "packed level", "" */
	enum adding adding;
	bool optional;
	const char *known;      /* the known ingredient it was picked as (engine/food/food.h); "" or NULL: unlisted */
	int64_t amount_most;    /* 0: just `amount`; more than it: a range; the same: no more than it */
	const char *instead_of; /* the line it may take the place of, which is the one counted; or "", NULL */
};

#define RECIPE_INGREDIENTS_MAX 16 /* a batch ticks its lines in the bits of 32 */

/* Which acid may take the place of another, as much of it; never the other way. */
enum acid_swap { ACID_SWAP_NONE, ACID_SWAP_LEMON_FOR_VINEGAR, ACID_SWAP_COUNT };

struct recipe {
	const char *name;
	const char *food;  /* of the process tables; "" = no published process */
	const char *packs; /* pack names it may use, blank-separated: "hot_sterile_jar hot_unsterile_jar" */
	const char *jars;  /* jar sizes it may use, blank-separated: "half_pint pint" */
	enum pectin pectin;
	enum acidity acidity;
	enum gel_test gel_test;
	int boil_hold_s; /* 0: off as soon as it boils again */
	int headspace_thou;
	int multiple_max;         /* batches one pot may hold; 1 = never multiplied; 0: as a sheet says */
	int foam_percent;         /* of the pot's volume kept free for foam */
	int boil_off_low_percent; /* of the volume lost in cooking; low and high of what is likely */
	int boil_off_high_percent;
	int64_t yield_low_ul; /* packed food: nominal jar volume one batch fills; 0: from volumes */
	int64_t yield_high_ul;
	int sheet_minutes; /* of process, by the sheet of its pectin; 0: it prints none */
	const char *caution;
	const char *source;  /* or "house recipe, no source" */
	int vinegar_percent; /* acidity of its vinegar, as printed; 0: none printed, or no vinegar */
	enum acid_swap acid_swap;
	const char *not_startable; /* why no batch of it is started, a sentence; "" or NULL: it may be */
	size_t ingredient_count;
	struct ingredient ingredients[RECIPE_INGREDIENTS_MAX];
};

extern const struct recipe recipes[];
extern const size_t recipe_count;

const struct recipe *recipe_named(const char *name); /* built-in ones only; NULL: none */

/* Is the recipe usable?  Refused with a sentence: it waits for its sheet, no source, no name, a food the
 * tables do not have, a pack or jar unknown, an unknown known ingredient or one kept
 * in another ledger, fresh lemon juice as the acid (its strength varies: CSU, PSU), a multiple above 1 with regular pectin (A539
 * Guide 7, MSU-961), nothing in it, a supply in another measure than its ledger's
 * (so that amounts used can be taken off it as they are), ingredients out of
 * their order of adding, a pectin that is not in it, a gel test with added pectin
 * (A539 Guide 7), an acidity that is not the food's, a food of an acid
 * rule per jar without its acid in every jar (engine/food/food.h), ranges upside down. */
bool recipe_check(const struct recipe *recipe, struct fault *fault);
/* The same for one that is to be built in, which may wait for its sheet: then its
 * multiple, the amounts the sheet gives and the acid are left out, all of them. */
bool recipe_check_printed(const struct recipe *recipe, struct fault *fault);

/* May a batch of it be started?  Refused with its reason: it has no process (it is
 * kept in the refrigerator), or an amount on its page cannot be trusted. */
bool recipe_may_start(const struct recipe *recipe, struct fault *fault);

/* Low-methoxyl pectins differ from maker to maker, so a built-in recipe with one has
 * no amount of it, of its calcium solution and of its acid, and no multiple: those are
 * of its own sheet, and the kitchen gives them once.  Until then the recipe waits for
 * its sheet, is never scaled, and has no yield. */
bool recipe_awaits_sheet(const struct recipe *recipe);
/* Refused while it waits, with what to do. */
bool recipe_has_amounts(const struct recipe *recipe, struct fault *fault);

bool recipe_allows_jar(const struct recipe *recipe, const char *jar);
bool recipe_allows_pack(const struct recipe *recipe, const char *pack);
/* Both, and the tables have a row that may be offered for the two together (a
 * larger tested jar's serves).  With no food: both. */
bool recipe_allows_pair(const struct recipe *recipe, const char *pack, const char *jar);

/* The pack that is meant where nobody has said one: for jars that were not boiled first where the
 * tables have it for this jar, so that nobody gets the shorter process without having asked for it;
 * else the first it may have in that jar; NULL: in any.  False: none, and `pack` is the first it names. */
bool recipe_usual_pack(const struct recipe *recipe, const char *jar, char *pack, size_t size);

/* Names as stored and words for people; "?" when out of range. */
const char *pectin_name(enum pectin pectin);                         /* "low_methoxyl" */
const char *pectin_words(enum pectin pectin);                        /* "low-methoxyl pectin" */
const char *adding_name(enum adding adding);                         /* "at_boil" */
int adding_place(enum adding adding);                                /* its place in the order of a recipe, from 0 */
bool ingredient_is_alternative(const struct ingredient *ingredient); /* has an instead_of */
const char *supply_name(enum supply_kind kind);                      /* "lemon_juice" */
const char *supply_words(enum supply_kind kind);                     /* "bottled lemon juice" */
bool supply_from_name(const char *name, enum supply_kind *out);
enum measure supply_measure(enum supply_kind kind); /* of its ledger */
bool supply_is_of_sheet(enum supply_kind kind);     /* low-methoxyl pectin, its calcium solution */
/* What a level US cup of a supply weighs in mg, for those kept by weight and told
 * in spoons and cups; 0: not told so.  Sugar 200 g: schema/measures.csv, source
 * there.  Citric acid 4.6 g, low-methoxyl pectin 3.0 g, salt 6.0 g a teaspoon and
 * butter half a pound a cup: from memory; weigh your own. */
int64_t supply_mg_per_cup(enum supply_kind kind);
const char *measure_name(enum measure measure); /* "volume" */

/* --- what is done before or between, over hours or days -------------------------- */

/* A step that takes its own time before a batch is in the pot: soaking, brining,
 * fermenting, standing.  Baked in from schema/recipe_step.csv, in the order of the
 * recipes there.  No clock serves them yet. */
struct recipe_step {
	const char *recipe;
	int number;       /* from 1 */
	const char *what; /* "cover with ice in the refrigerator" */
	int low_minutes;  /* 0, 0: no time is printed */
	int high_minutes;
	const char *source; /* guide and page */
};

extern const struct recipe_step recipe_steps[];
extern const size_t recipe_step_count;

/* The steps of a recipe, one after the other from *first; returns how many. */
size_t recipe_steps_of(const struct recipe *recipe, const struct recipe_step **first);
/* "3 to 4 weeks", "12 hours", "20 minutes"; "" where no time is printed. */
void recipe_step_time(const struct recipe_step *step, char *buffer, size_t size);

#endif
