/*
 * scaling.h - a recipe times a multiple, written in whole kitchen tools.
 *
 * Sources: US measures NIST Handbook 44 App. C (schema/measures.csv; 1 gal =
 * 3,785,411.784 uL, 1 cup = 16 tbsp = 48 tsp); 200 g of granulated sugar a US
 * cup (same file, source there); spoons of 15 / 5 mL in metric kitchens: common
 * practice, no source.
 */
#ifndef STILLROOM_ENGINE_RECIPE_SCALING_H
#define STILLROOM_ENGINE_RECIPE_SCALING_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "base/text.h"
#include "engine/recipe/recipe.h"

enum unit_system { UNITS_US, UNITS_METRIC, UNIT_SYSTEM_COUNT };

#define CUP_UL INT64_C(236588) /* 236,588.2365 rounded; only for display choices */
#define SUGAR_MG_PER_CUP INT64_C(200000)
#define ROUNDING_SHOWN_PERMILLE 20 /* an error over 2 % is said */

/* One line of what to measure: "2 gal + 1 qt" or "5 tbsp + 1 tsp". */
#define MEASURE_PARTS_MAX 6
struct measured {
	int64_t wanted;     /* uL, mg or pieces */
	int64_t filled;     /* what the tools really hold */
	int error_permille; /* (filled - wanted) / wanted; signed; said when over 20 */
	char words[96];
};

/* Round an amount to what a kitchen measures with: US volumes in gallons, quarts,
 * cups, 1/2 1/3 1/4 cups, tbsp, tsp, 1/2 1/4 1/8 tsp; metric in L, jugs marked
 * every 50 mL and 15, 5, 2.5, 1 mL spoons ("3 x 15 mL"); supplies kept by weight
 * that have a weight a cup (supply_mg_per_cup) in cups and spoons (US), in grams
 * (metric) or below 20 g in metric spoons; other masses in lb and 1/4 oz (US) or
 * kg and g, from 1 kg up by 5 g.  At most three tools: the fewest within 0.5 %,
 * else the fewest within 2 %, else the closest.  Acid (lemon juice, citric acid,
 * vinegar) is never rounded down.  Nothing, pieces and what
 * no kitchen measures (over 10,000 L or kg) are said as plain numbers. */
void measure_amount(enum measure measure, enum supply_kind supply, int64_t amount, enum unit_system units,
                    struct measured *out);

struct scaled_line {
	const struct ingredient *ingredient;
	struct measured measured; /* ADD_IN_JAR: of one jar of the size asked for */
	struct measured most;     /* the upper end; wanted 0: no range */
};

/* "2-1/2 to 3 lb", "at most 3 cups", "or 8" (an alternative), "1/2 cup". */
void scaled_line_words(const struct scaled_line *line, char *buffer, size_t size);

struct scaled {
	const struct recipe *recipe;
	int multiple;
	size_t count;
	struct scaled_line lines[RECIPE_INGREDIENTS_MAX];
	bool rounding_shown; /* some line is off by more than 2 % */
};

/* The lines of `multiple` batches (1 or more; less: FAULT_MISUSE).  How far it may be
 * multiplied is not asked (largest_multiple): this is also for what is in the pot already,
 * and for a person who has been told and goes on.  jar NULL: what goes into jars is told
 * for a quart.  A recipe that waits for the sheet of its pectin is refused (recipe.h). */
bool scale_lines(const struct recipe *recipe, int multiple, enum unit_system units, const char *jar, struct scaled *out,
                 struct fault *fault);
/* Is the pot (0: not stated) large enough, foaming room kept?  Refused: no. */
bool fits_pot(const struct recipe *recipe, int multiple, int64_t pot_ul, enum unit_system units, struct fault *fault);

/* The largest multiple the recipe and the pot (0: not stated) allow; 0 when not even one
 * batch fits.  Regular pectin is never multiplied (A539 Guide 7, MSU-961, MSU-551). */
int largest_multiple(const struct recipe *recipe, int64_t pot_ul);

#define CITRIC_ACID_MG_PER_TSP INT64_C(4600) /* from memory; weigh your own and say so */

/* --- yield ------------------------------------------------------------------- */

/* Apparent specific volume of dissolved sugar, uL a gram, by the strength of the
 * solution (degrees Brix): 615 at 5, 625 at 50, 630 at 65, straight lines between
 * (schema/measures.csv: NBS Circular C440; the two upper points from memory). */
int64_t dissolved_sugar_ul(int64_t sugar_mg, double brix); /* public for its test */

/* Volume of one batch before anything boils off: liquids, fruit taken at 1 g a
 * mL, the dissolved sugar's own volume; without pieces, soaks that are poured off,
 * alternatives and what goes into each jar (ADD_IN_JAR). */
int64_t batch_volume_ul(const struct recipe *recipe); /* public for its test */
/* The same without what is packed cold into the jars: what the pot must hold. */
int64_t pot_volume_ul(const struct recipe *recipe);

/* How much a jar takes at a headspace, as a share of its nominal volume.  No
 * published figure was found (schema/measures.csv): a house setting, given here
 * as the default, common practice, no source. */
#define JAR_FILL_QUARTER_INCH_PERMILLE 940
#define JAR_FILL_HALF_INCH_PERMILLE 890
#define JAR_FILL_INCH_PERMILLE 800
int64_t jar_fill_ul(const struct jar_size *jar, int headspace_thou);

/* What goes into one jar of a line that a recipe gives for a quart; never less than its
 * share.  Pieces are for a jar of any size. */
int64_t jar_share(const struct ingredient *item, const struct jar_size *jar);

/* What a pot takes of a line when so many jars are filled from it: what the tools hold,
 * juice as measured, what goes into jars for all of them; of an alternative nothing. */
int64_t line_takes(const struct scaled_line *line, const struct jar_size *jar, int jars);

struct yield {
	int64_t volume_low_ul;
	int64_t volume_high_ul;
	int jars_low; /* whole jars that are surely filled */
	int jars_likely;
	int jars_high; /* jars to have ready */
};

/* Jars of one size from a pot of `multiple` times the recipe: batch_volume_ul less what
 * boils off; for packed food the recipe's own yield over nominal jar volumes.  Whole
 * jars are made of it once, for the whole pot: nothing else in the program says how
 * many jars there will be.  Refused: a jar the recipe does not allow. */
bool pot_yield(const struct recipe *recipe, int multiple, const char *jar, struct yield *out, struct fault *fault);
/* The same when so much of the pot went elsewhere. */
bool pot_yield_less(const struct recipe *recipe, int multiple, const char *jar, int64_t taken_ul, struct yield *out,
                    struct fault *fault);

/* So many batches in pots of `each` at most: full pots, and what is left in one more. */
struct pots {
	int full;
	int each; /* batches in a full one, 1 or more */
	int rest; /* batches in the last; 0: there is none */
};
struct pots pots_of(int batches, int each);
int pot_count(const struct pots *pots); /* the last, smaller one too */

/* Is so much enough for what is measured out?  A thousandth less is measuring, not
 * stretching. */
bool measured_enough(int64_t needed, int64_t there);

#endif
