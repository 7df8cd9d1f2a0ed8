/* Between which shares may the true share of failures lie? */
#include <check.h>
#include <math.h>

#include "engine/stats/interval.h"
#include "support/tests.h"

static void is(int64_t failed, int64_t looked, double low, double high, double tolerance)
{
	struct interval interval = interval_of_share(failed, looked);

	ck_assert_double_eq_tol(interval.low, low, tolerance);
	ck_assert_double_eq_tol(interval.high, high, tolerance);
}

START_TEST(printed_values_come_out)
{
	/* SciPy reference, BinomTestResult.proportion_ci, example with method "exact":
	 * binomtest(k=7, n=50, p=0.1); read in the SciPy documentation. */
	is(7, 50, 0.05819170033997342, 0.26739600249700846, 1e-12);
	/* R, help of binom.test, Mendel's 682 of 925: from memory. */
	is(682, 925, 0.7076683, 0.7654066, 5e-8);
	/* R. G. Newcombe, Statistics in Medicine 17 (1998), table I, method 5
	 * (Clopper-Pearson): from memory. */
	is(81, 263, 0.2527, 0.3676, 5e-5);
	is(15, 148, 0.0578, 0.1617, 5e-5);
	is(1, 29, 0.0009, 0.1776, 5e-5);
	is(0, 20, 0.0, 0.1684, 5e-5);
}
END_TEST

/* Where nothing failed high solves (1 - high)^n = 2.5 %, where all did low^n. */
START_TEST(the_ends_are_closed_forms)
{
	for (int n = 1; n < 2000; n = n * 2 + 1) {
		double root = pow(0.025, 1.0 / n);

		is(0, n, 0.0, 1.0 - root, 1e-12);
		is(n, n, root, 1.0, 1e-12);
	}
}
END_TEST

static double chance_of_at_most(int k, int n, double p)
{
	double sum = 0.0;

	for (int i = 0; i <= k; i++)
		sum += exp(lgamma(n + 1.0) - lgamma(i + 1.0) - lgamma(n - i + 1.0) + i * log(p) + (n - i) * log1p(-p));
	return sum;
}

/* What the interval is by its definition, summed term by term. */
START_TEST(each_end_leaves_a_tail_of_one_in_forty)
{
	for (int n = 2; n <= 60; n += 7) {
		for (int k = 1; k < n; k++) {
			struct interval interval = interval_of_share(k, n);

			ck_assert_double_eq_tol(1.0 - chance_of_at_most(k - 1, n, interval.low), 0.025, 1e-9);
			ck_assert_double_eq_tol(chance_of_at_most(k, n, interval.high), 0.025, 1e-9);
		}
	}
}
END_TEST

/* With many jars the normal interval is near: p -+ 1.959964 sqrt(p (1 - p) / n). */
START_TEST(a_million_jars_are_no_trouble)
{
	double spread = 1.959964 * sqrt(0.02 * 0.98 / 1e6);

	is(20000, 1000000, 0.02 - spread, 0.02 + spread, 2e-6);
	is(1, 1000000, 2.53e-8, 5.58e-6, 2e-8);
	is(999999, 1000000, 1.0 - 5.58e-6, 1.0 - 2.53e-8, 2e-8);
}
END_TEST

START_TEST(what_makes_no_sense_says_nothing)
{
	is(0, 0, 0.0, 1.0, 1e-15);
	is(-1, 5, 0.0, 1.0, 1e-15);
	is(6, 5, 0.0, 1.0, 1e-15);
	is(1, -5, 0.0, 1.0, 1e-15);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(printed_values_come_out),
	TEST(the_ends_are_closed_forms),
	TEST(each_end_leaves_a_tail_of_one_in_forty),
	TEST(a_million_jars_are_no_trouble),
	TEST(what_makes_no_sense_says_nothing),
};

TESTS("interval", listed)
