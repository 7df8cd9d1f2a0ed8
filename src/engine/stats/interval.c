#include "engine/stats/interval.h"

#include <math.h>

#define TAIL ((1.0 - INTERVAL_CONFIDENCE) / 2.0)
#define TERMS_MAX 20000 /* about the root of the count; a million jars take 2,000 */
#define TERM_SETTLED 1e-15
#define SMALLEST 1e-300
#define HALVINGS 60 /* of 0 to 1: below what a double tells apart */

static double not_zero(double value)
{
	return fabs(value) < SMALLEST ? SMALLEST : value;
}

/*
 * The continued fraction of the incomplete beta function (Abramowitz and Stegun,
 * Handbook of Mathematical Functions, 26.5.8), from its head by Lentz's method as
 * Thompson and Barnett amended it (J. Comput. Phys. 64, 1986): from memory, and
 * held against printed values by tests/engine/stats/test_interval.c.
 */
static double fraction(double a, double b, double x)
{
	double c = 1.0;
	double d = 1.0 / not_zero(1.0 - (a + b) * x / (a + 1.0));
	double value = d;

	for (int m = 1; m < TERMS_MAX; m++) {
		double even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
		double odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
		double step;

		d = 1.0 / not_zero(1.0 + even * d);
		c = not_zero(1.0 + even / c);
		value *= d * c;
		d = 1.0 / not_zero(1.0 + odd * d);
		c = not_zero(1.0 + odd / c);
		step = d * c;
		value *= step;
		if (fabs(step - 1.0) < TERM_SETTLED)
			break;
	}
	return value;
}

/* I_x(a, b), the chance of `a` or more in a + b - 1 when each has the chance x. */
static double beta_share(double a, double b, double x)
{
	double front;

	if (x <= 0.0)
		return 0.0;
	if (x >= 1.0)
		return 1.0;
	front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log1p(-x));
	/* on this side of its mean it settles fast; on the other by symmetry */
	if (x < (a + 1.0) / (a + b + 2.0))
		return front * fraction(a, b, x) / a;
	return 1.0 - front * fraction(b, a, 1.0 - x) / b;
}

/* The x at which I_x(a, b) is `chance`; it only ever grows with x. */
static double beta_at(double a, double b, double chance)
{
	double low = 0.0;
	double high = 1.0;

	for (int i = 0; i < HALVINGS; i++) {
		double middle = (low + high) / 2.0;

		if (beta_share(a, b, middle) < chance)
			low = middle;
		else
			high = middle;
	}
	return (low + high) / 2.0;
}

struct interval interval_of_share(int64_t failed, int64_t looked)
{
	struct interval interval = { .low = 0.0, .high = 1.0 };
	double k = (double)failed;
	double n = (double)looked;

	if (looked <= 0 || failed < 0 || failed > looked)
		return interval;
	if (failed > 0)
		interval.low = beta_at(k, n - k + 1.0, TAIL);
	if (failed < looked)
		interval.high = beta_at(k + 1.0, n - k, 1.0 - TAIL);
	return interval;
}
