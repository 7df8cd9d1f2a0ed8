/*
 * juice_yield.h - how much juice a fruit gives: what is published, and what the
 * kitchen's own runs say once there are enough of them.
 *
 * Published: pounds of fruit for a quart of juice (schema/yield.csv, baked in,
 * each row with its source; the figures come from schema/measures.csv).
 *
 * Own runs.  From OWN_RUNS_MIN on the two are weighed by the normal-normal model
 * (Johnson, Ott, Dogucu: Bayes Rules!, chapter 5, read in lecture notes on it):
 *
 *   mean     = theta * s2 / (n t2 + s2)  +  ybar * n t2 / (n t2 + s2)
 *   variance = t2 s2 / (n t2 + s2)
 *
 * theta and t2 are the mean and variance of what is believed before, ybar the
 * mean of n runs, s2 the variance of one run.  In the words of credibility theory
 * the weight of the own runs is Z = n / (n + k) with k = s2 / t2: expected process
 * variance over variance of hypothetical means (Buehlmann; read in public
 * summaries of exam texts; Z * observed + (1 - Z) * other: Mahler and Dean,
 * Foundations of Casualty Actuarial Science, 4th ed. 2001, chapter 8).
 *   theta: the published likely yield.
 *   t2:    the published range spans theta +- 2 t, the same book's way to choose
 *          t; that it may be read so here is our judgement, no source.
 *   s2:    the sample variance of the own runs (n - 1).
 * Low and high are 2 standard deviations of the mean yield of a day of m runs:
 * variance + s2 / m, m = the fruit over the mean charge of the own runs.
 *
 * Units: yields in uL of juice a kg of fruit; 1 lb a quart = 946,352.946 uL /
 * 0.45359237 kg (NIST Handbook 44, schema/measures.csv).
 */
#ifndef STILLROOM_ENGINE_RECIPE_JUICE_YIELD_H
#define STILLROOM_ENGINE_RECIPE_JUICE_YIELD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "engine/process/process.h"

/* The low end, what is likely, the high end. */
enum bound { BOUND_LOW, BOUND_LIKELY, BOUND_HIGH, BOUND_COUNT };

#define OWN_RUNS_MIN 5 /* fewer say nothing against the published figures: house rule */

/* Thousandths of a pound of fruit for a quart of juice; most > likely > least. */
struct yield_row {
	const char *fruit; /* "grapes"; the last row is "any fruit" */
	int most_thou_lb;
	int likely_thou_lb;
	int least_thou_lb;
	const char *source;
	enum confirmed confirmed;
};

extern const struct yield_row yield_rows[];
extern const size_t yield_row_count;

/* The row of a fruit: by its name, else by its last word ("wine grapes"), any
 * "-berries" by "berries", else "any fruit".  Never NULL. */
const struct yield_row *yield_row_of(const char *fruit);

/* Pounds for a quart, for people. */
double pounds_of_yield(double ul_per_kg);

/* Sums over runs of one fruit that are over: all that is kept of them. */
struct juice_runs {
	int64_t runs;
	int64_t fruit_mg;
	int64_t juice_ul;
	int64_t yield_sum;        /* of the whole uL a kg of each run */
	int64_t yield_square_sum; /* of their squares */
};

/* The normal-normal model above. */
struct weighed {
	double weight; /* Z, 0 to 1 */
	double mean;
	double variance; /* of the mean */
};
/* prior_variance > 0, own_variance >= 0, runs >= 1.  Public for its test. */
struct weighed weigh(double prior_mean, double prior_variance, double own_mean, double own_variance, double runs);

struct juice_yield {
	double ul_per_kg[BOUND_COUNT];
	const struct yield_row *row; /* what is published */
	int64_t runs;                /* own runs there are */
	bool own;                    /* they are enough and were weighed in */
	double weight;               /* of the own runs; 0 while they are too few */
	double own_mean;             /* of the own runs, uL a kg; 0: none */
};

/* What `fruit_mg` of the fruit will give (0: one charge).  `own` NULL: no runs. */
void juice_yield_of(const char *fruit, int64_t fruit_mg, const struct juice_runs *own, struct juice_yield *out);

/* How the figures of `out` came about, in words, with the figures of the own runs. */
#define YIELD_MODEL_SOURCE \
	"Johnson, Ott, Dogucu: Bayes Rules!, chapter 5; Mahler and Dean, Foundations of Casualty Actuarial Science, " \
	"4th ed. 2001, chapter 8"
struct text;
void juice_yield_how(const struct juice_yield *yield, struct text *text);

#endif
