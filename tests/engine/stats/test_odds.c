/* Failures clearly above the others': against published examples and a plain count. */
#include <check.h>
#include <math.h>

#include "engine/stats/odds.h"
#include "support/tests.h"

static double odds(int64_t failed, int64_t looked, int64_t others_failed, int64_t others_looked)
{
	struct two_groups groups = { looked, failed, others_looked, others_failed };

	return odds_by_chance(&groups);
}

/* The lady tasting tea (Fisher 1935; R's help page of fisher.test, from Agresti 1990,
 * p. 61f: 3 of 4 right, alternative "greater": p = 0.2429). */
START_TEST(the_lady_tasting_tea)
{
	ck_assert_double_eq_tol(odds(3, 4, 1, 4), 17.0 / 70.0, 1e-12);
	ck_assert_double_eq_tol(odds(3, 4, 1, 4), 0.2429, 0.00005);
	ck_assert_double_eq_tol(odds(4, 4, 0, 4), 1.0 / 70.0, 1e-12);
}
END_TEST

/* Convictions of like-sex twins (Fisher 1962), the table as on R's help page of
 * fisher.test; the chance counted with exact fractions. */
START_TEST(the_twins_of_fisher)
{
	ck_assert_double_eq_tol(odds(10, 13, 2, 17), 0.00046518094336290503, 1e-14);
}
END_TEST

/* "n over k" by Pascal's triangle, nothing shared with the code under test. */
static long double choose(int n, int k)
{
	long double row[40] = { 1.0L };

	for (int i = 1; i <= n; i++)
		for (int j = i; j > 0; j--)
			row[j] += row[j - 1];
	return k < 0 || k > n ? 0.0L : row[k];
}

START_TEST(every_small_table_equals_the_plain_count)
{
	for (int looked = 0; looked <= 12; looked++)
		for (int others = 0; others <= 12; others++)
			for (int a = 0; a <= looked; a++)
				for (int b = 0; b <= others; b++) {
					long double sum = 0.0L;

					if (looked + others == 0)
						continue;
					for (int x = a; x <= looked; x++)
						sum += choose(a + b, x) * choose(looked + others - a - b, looked - x);
					sum /= choose(looked + others, looked);
					ck_assert_msg(fabs(odds(a, looked, b, others) - (double)sum) < 1e-11,
					              "%d of %d against %d of %d: %g, counted %Lg", a, looked, b,
					              others, odds(a, looked, b, others), sum);
				}
}
END_TEST

/* A house of a million jars; the chances counted with exact fractions. */
START_TEST(a_million_jars_are_no_trouble)
{
	double clear = odds(6, 60, 9994, 999940); /* 10 % of a box in a house of 1 % */
	double usual = odds(1, 60, 9999, 999940);

	ck_assert_double_eq_tol(clear / 3.1485182543956636e-05, 1.0, 1e-6);
	ck_assert_double_eq_tol(usual, 0.4528531404093446, 1e-6);
	ck_assert_double_eq_tol(odds(0, 60, 10000, 999940), 1.0, 1e-12);
}
END_TEST

START_TEST(nonsense_is_never_an_alarm)
{
	ck_assert_double_eq(odds(5, 4, 0, 10), 1.0);
	ck_assert_double_eq(odds(-1, 4, 0, 10), 1.0);
	ck_assert_double_eq(odds(0, 0, 0, 0), 1.0);
}
END_TEST

/* At the limit: 1 of 100 chances. */
START_TEST(clearly_above_is_less_than_one_in_a_hundred)
{
	struct two_groups one = { 12, 1, 400, 0 };
	struct two_groups below = { 10, 3, 60, 2 }; /* 0.0187 */
	struct two_groups above = { 10, 3, 90, 2 }; /* 0.0066 */
	struct two_groups alone = { 20, 10, 0, 0 };

	ck_assert(!odds_clearly_above(&one)); /* one lid is no cluster */
	ck_assert(odds_by_chance(&below) > ODDS_CLEAR && !odds_clearly_above(&below));
	ck_assert(odds_by_chance(&above) < ODDS_CLEAR && odds_clearly_above(&above));
	ck_assert(!odds_clearly_above(&alone)); /* nothing to compare with */
}
END_TEST

static const struct listed_test listed[] = {
	TEST(the_lady_tasting_tea),
	TEST(the_twins_of_fisher),
	TEST(every_small_table_equals_the_plain_count),
	TEST(a_million_jars_are_no_trouble),
	TEST(nonsense_is_never_an_alarm),
	TEST(clearly_above_is_less_than_one_in_a_hundred),
};

TESTS("odds", listed)
