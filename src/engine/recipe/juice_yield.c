#include "engine/recipe/juice_yield.h"

#include <math.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/fruit.h"

#define UL_PER_QUART 946352.946
#define KG_PER_THOU_LB 0.00045359237

const struct yield_row *yield_row_of(const char *fruit)
{
	for (size_t i = 0; i + 1 < yield_row_count; i++)
		if (fruit_same(fruit, yield_rows[i].fruit))
			return &yield_rows[i];
	/* A row of two words ("sour cherries") does not serve by one of them. */
	for (size_t i = 0; i + 1 < yield_row_count; i++)
		if (strchr(yield_rows[i].fruit, ' ') == NULL && fruit_makes(fruit, yield_rows[i].fruit))
			return &yield_rows[i];
	return &yield_rows[yield_row_count - 1];
}

/* What a published weight for a quart means, uL a kg. */
static double yield_of_pounds(int thou_lb)
{
	return UL_PER_QUART / (thou_lb * KG_PER_THOU_LB);
}

double pounds_of_yield(double ul_per_kg)
{
	return UL_PER_QUART / (ul_per_kg * KG_PER_THOU_LB * 1000.0);
}

struct weighed weigh(double prior_mean, double prior_variance, double own_mean, double own_variance, double runs)
{
	double sum = runs * prior_variance + own_variance;
	struct weighed out = { .weight = runs * prior_variance / sum };

	out.mean = prior_mean * own_variance / sum + own_mean * out.weight;
	out.variance = prior_variance * own_variance / sum;
	return out;
}

static double variance_of(const struct juice_runs *own, double mean)
{
	double variance = ((double)own->yield_square_sum - mean * (double)own->yield_sum) / (double)(own->runs - 1);

	return variance > 0.0 ? variance : 0.0; /* rounding, when all are alike */
}

/* Runs the day will take, by the mean charge of the runs before. */
static double runs_ahead(const struct juice_runs *own, int64_t fruit_mg)
{
	double charge = (double)own->fruit_mg / (double)own->runs;
	double runs = charge > 0.0 ? ceil((double)fruit_mg / charge - 0.001) : 1.0;

	return runs < 1.0 ? 1.0 : runs;
}

static void weigh_own(const struct juice_runs *own, int64_t fruit_mg, struct juice_yield *out)
{
	double spread = (out->ul_per_kg[BOUND_HIGH] - out->ul_per_kg[BOUND_LOW]) / 4.0;
	double variance = variance_of(own, out->own_mean);
	struct weighed both =
	    weigh(out->ul_per_kg[BOUND_LIKELY], spread * spread, out->own_mean, variance, (double)own->runs);
	double around = 2.0 * sqrt(both.variance + variance / runs_ahead(own, fruit_mg));

	out->own = true;
	out->weight = both.weight;
	out->ul_per_kg[BOUND_LIKELY] = both.mean;
	out->ul_per_kg[BOUND_HIGH] = both.mean + around;
	/* A log of slips of the pen is still no promise of less than nothing. */
	out->ul_per_kg[BOUND_LOW] = around < 0.9 * both.mean ? both.mean - around : 0.1 * both.mean;
}

void juice_yield_of(const char *fruit, int64_t fruit_mg, const struct juice_runs *own, struct juice_yield *out)
{
	*out = (struct juice_yield){ .row = yield_row_of(fruit) };
	out->ul_per_kg[BOUND_LOW] = yield_of_pounds(out->row->most_thou_lb);
	out->ul_per_kg[BOUND_LIKELY] = yield_of_pounds(out->row->likely_thou_lb);
	out->ul_per_kg[BOUND_HIGH] = yield_of_pounds(out->row->least_thou_lb);
	if (own == NULL || own->runs < 1)
		return;
	out->runs = own->runs;
	out->own_mean = (double)own->yield_sum / (double)own->runs;
	if (own->runs >= OWN_RUNS_MIN)
		weigh_own(own, fruit_mg, out);
}

void juice_yield_how(const struct juice_yield *yield, struct text *text)
{
	if (!yield->own) {
		text_add(text, "the published range as it stands; own runs %lld, and they count from %d on",
		         (long long)yield->runs, OWN_RUNS_MIN);
		return;
	}
	text_add(text,
	         "normal-normal model: own runs %lld with a mean of %.2f lb have a weight of %.0f %%, the published "
	         "figure the rest; low and high are 2 standard deviations of what a day's runs give. That the "
	         "published range spans 2 of them on either side: our judgement, no source",
	         (long long)yield->runs, pounds_of_yield(yield->own_mean), yield->weight * 100.0);
}
