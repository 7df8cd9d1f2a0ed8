#include "engine/stats/odds.h"

#include <math.h>

#define TERM_NEGLIGIBLE 1e-18 /* of the sum so far: below what a double holds */

static bool makes_sense(const struct two_groups *groups)
{
	return groups->looked >= 0 && groups->others_looked >= 0 && groups->failed >= 0 && groups->others_failed >= 0 &&
	       groups->failed <= groups->looked && groups->others_failed <= groups->others_looked;
}

/* ln of "n over k". */
static double ln_choose(double n, double k)
{
	return lgamma(n + 1.0) - lgamma(k + 1.0) - lgamma(n - k + 1.0);
}

/*
 * P(X >= failed) for X hypergeometric.  The first term by logarithms, each further
 * one from the one before; above the most likely value they fall ever faster, so
 * that a million jars need a handful of terms.  Below it the other tail is summed.
 */
static double tail_from(double from, double looked, double bad, double all)
{
	double most = looked < bad ? looked : bad;
	double term = exp(ln_choose(bad, from) + ln_choose(all - bad, looked - from) - ln_choose(all, looked));
	double sum = term;
	double x = from;

	while (x < most && term > sum * TERM_NEGLIGIBLE) {
		term *= (bad - x) * (looked - x) / ((x + 1.0) * (all - bad - looked + x + 1.0));
		sum += term;
		x += 1.0;
	}
	return sum;
}

static double tail_down_from(double from, double looked, double bad, double all)
{
	double least = looked + bad > all ? looked + bad - all : 0.0;
	double x = from;
	double term;
	double sum;

	if (from < least)
		return 0.0;
	term = exp(ln_choose(bad, from) + ln_choose(all - bad, looked - from) - ln_choose(all, looked));
	sum = term;
	while (x > least && term > sum * TERM_NEGLIGIBLE) {
		term *= x * (all - bad - looked + x) / ((bad - x + 1.0) * (looked - x + 1.0));
		sum += term;
		x -= 1.0;
	}
	return sum;
}

double odds_by_chance(const struct two_groups *groups)
{
	double looked = (double)groups->looked;
	double failed = (double)groups->failed;
	double bad = failed + (double)groups->others_failed;
	double all = looked + (double)groups->others_looked;
	double odds;

	if (!makes_sense(groups) || all < 1.0)
		return 1.0;
	if (failed * all > looked * bad)
		odds = tail_from(failed, looked, bad, all);
	else
		odds = 1.0 - tail_down_from(failed - 1.0, looked, bad, all);
	return odds > 1.0 ? 1.0 : odds < 0.0 ? 0.0 : odds;
}

bool odds_clearly_above(const struct two_groups *groups)
{
	return groups->failed >= ODDS_FAILED_MIN && groups->others_looked > 0 && odds_by_chance(groups) < ODDS_CLEAR;
}
