/*
 * Text for a terminal, and readings with their units.
 */
#include <check.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#include "engine/physics/reading.h"
#include "report/cli/plain.h"
#include "support/tests.h"

static void ck_plain(const char *text, const char *expected)
{
	char *written;
	size_t size;
	FILE *stream = open_memstream(&written, &size);

	ck_assert_ptr_nonnull(stream);
	plain_put(stream, text);
	ck_assert_int_eq(fclose(stream), 0);
	ck_assert_str_eq(written, expected);
	free(written);
}

START_TEST(a_name_cannot_drive_the_terminal)
{
	ck_plain("a\033]0;x\007b", "a?]0;x?b");
	ck_plain("a\nb\tc\177", "a?b?c?");
	ck_plain("\302\23331m", "?31m");       /* C1 */
	ck_plain("\342\200\256evil", "?evil"); /* right-to-left override */
	ck_plain("\342\201\246x\342\200\250y", "?x?y");
	ck_plain("\377\303", "??");
}
END_TEST

START_TEST(ordinary_names_stay_whole)
{
	ck_plain("Qu\303\251tsch & Mus, 1/2 \"hot\"", "Qu\303\251tsch & Mus, 1/2 \"hot\"");
	ck_plain("", "");
	ck_plain(NULL, "");
}
END_TEST

static void ck_column(const char *text, const char *expected)
{
	char *written;
	size_t size;
	FILE *stream = open_memstream(&written, &size);

	ck_assert_ptr_nonnull(stream);
	plain_put_column(stream, text, 5, 6);
	ck_assert_int_eq(fclose(stream), 0);
	ck_assert_str_eq(written, expected);
	free(written);
}

START_TEST(a_column_is_as_wide_for_letters_of_several_bytes)
{
	ck_column("", "      ");
	ck_column("Tall", "Tall  ");
	ck_column("Tall juicer", "Tall  ");
	ck_column("Gr\303\274n", "Gr\303\274n  ");
	ck_column("K\303\274che\303\251s", "K\303\274che ");
	ck_column("a\033b", "a?b   ");
}
END_TEST

static void ck_temperature(const char *words, double celsius)
{
	double read = -1000.0;

	ck_assert_msg(reading_temperature(words, &read), "%s", words);
	ck_assert_double_eq_tol(read, celsius, 1e-9);
}

START_TEST(temperatures_are_read_with_their_unit)
{
	ck_temperature("212F", 100.0);
	ck_temperature("203.1 f", (203.1 - 32.0) / 1.8);
	ck_temperature(" 95.1\302\260C ", 95.1);
	ck_temperature("-4 deg C", -4.0);
}
END_TEST

START_TEST(pressures_are_read_with_their_unit)
{
	double kpa = 0.0;

	ck_assert(reading_pressure("85.4 kPa", &kpa));
	ck_assert_double_eq_tol(kpa, 85.4, 1e-9);
	ck_assert(reading_pressure("854hPa", &kpa));
	ck_assert_double_eq_tol(kpa, 85.4, 1e-9);
	ck_assert(reading_pressure("854 mbar", &kpa));
	ck_assert_double_eq_tol(kpa, 85.4, 1e-9);
}
END_TEST

START_TEST(anything_else_is_no_reading)
{
	const char *const words[] = { "",     "F",    "203.1", "203,1F",  "0x20F",   "nanF",
		                      "infC", "1e2F", "203.F", "203.1FF", "203.1 K", "12345678901234567890F",
		                      "+-3C" };
	double read = 77.0;

	for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++)
		ck_assert_msg(!reading_temperature(words[i], &read), "%s", words[i]);
	ck_assert(!reading_pressure("85.4", &read));
	ck_assert(!reading_pressure("25 psi", &read));
	ck_assert(!reading_pressure("kPa", &read));
	ck_assert_double_eq(read, 77.0);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(a_name_cannot_drive_the_terminal),
	TEST(ordinary_names_stay_whole),
	TEST(a_column_is_as_wide_for_letters_of_several_bytes),
	TEST(temperatures_are_read_with_their_unit),
	TEST(pressures_are_read_with_their_unit),
	TEST(anything_else_is_no_reading),
};

TESTS("plain", listed)
