/*
 * Tall digits: sizes, shapes and cutting.
 */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include "kitchen/board/phases.h"
#include "screen/term/digits.h"
#include "support/tests.h"

static const enum digits_height heights[] = { DIGITS_TALL, DIGITS_GIANT };

START_TEST(widths_are_those_of_the_contract)
{
	ck_assert_int_eq(digits_rows(DIGITS_TALL), 5);
	ck_assert_int_eq(digits_columns("59:59", DIGITS_TALL), 26);
	ck_assert_int_eq(digits_columns("1:07:05", DIGITS_TALL), 35);
	ck_assert_int_eq(digits_columns("-1:07:05", DIGITS_TALL), 39);
	ck_assert_int_eq(digits_rows(DIGITS_GIANT), 7);
	ck_assert_int_eq(digits_columns("59:59", DIGITS_GIANT), 47);
	ck_assert_int_eq(digits_columns("1:07:05", DIGITS_GIANT), 63);
	ck_assert_int_eq(digits_columns("-1:07:05", DIGITS_GIANT), 70);
	ck_assert_int_eq(digits_columns("+25_MIN", DIGITS_TALL), 36);
	ck_assert_int_eq(digits_columns("+1_H_45", DIGITS_TALL), 33);
	ck_assert_int_eq(digits_columns("+25_MIN", DIGITS_GIANT), 53);
	ck_assert_int_eq(digits_columns("+1_H_45", DIGITS_GIANT), 55);
	ck_assert_int_eq(digits_columns("", DIGITS_TALL), 0);
}
END_TEST

START_TEST(every_row_of_every_character_is_as_wide_as_announced)
{
	char out[64];

	for (size_t h = 0; h < 2; h++)
		for (const char *at = "0123456789:-+_ HIMNx"; *at; at++) {
			const char one[2] = { *at, '\0' };
			int columns = digits_columns(one, heights[h]);
			for (int row = 0; row < digits_rows(heights[h]); row++) {
				size_t used = digits_row(one, heights[h], row, out, sizeof(out));
				ck_assert_uint_eq(used, (size_t)columns);
				ck_assert_uint_eq(strspn(out, "# "), used);
			}
		}
}
END_TEST

START_TEST(all_digits_have_one_width)
{
	for (size_t h = 0; h < 2; h++)
		for (const char *at = "123456789 "; *at; at++) {
			const char one[2] = { *at, '\0' };
			ck_assert_int_eq(digits_columns(one, heights[h]), digits_columns("0", heights[h]));
		}
}
END_TEST

/* Cells in which two characters of one width differ. */
static int difference(char a, char b, enum digits_height height)
{
	const char one[2] = { a, '\0' };
	const char other[2] = { b, '\0' };
	char left[64];
	char right[64];
	int count = 0;

	for (int row = 0; row < digits_rows(height); row++) {
		digits_row(one, height, row, left, sizeof(left));
		digits_row(other, height, row, right, sizeof(right));
		for (size_t i = 0; left[i]; i++)
			count += left[i] != right[i];
	}
	return count;
}

/* From afar a single cell is not seen; a stroke of the tall font is two wide. */
START_TEST(no_two_digits_can_be_taken_for_one_another)
{
	for (size_t h = 0; h < 2; h++)
		for (int a = '0'; a <= '9'; a++)
			for (int b = a + 1; b <= '9'; b++)
				ck_assert_msg(difference((char)a, (char)b, heights[h]) >= 3, "%c and %c", a, b);
}
END_TEST

START_TEST(a_clock_looks_like_this)
{
	static const char *const picture[] = {
		"## ##    #### ", "## ## ##    ##", "#####     ### ", "   ## ## ##   ", "   ##    #####",
	};
	char out[64];

	for (int row = 0; row < 5; row++) {
		digits_row("4:2", DIGITS_TALL, row, out, sizeof(out));
		ck_assert_str_eq(out, picture[row]);
	}
}
END_TEST

/* "5 JARS OUT", over 80 columns with a margin, and no letter of it missing. */
START_TEST(every_job_can_be_written_tall)
{
	for (enum station_kind kind = 0; kind <= STATION_POT; kind++)
		for (const struct phase_rule *rule = phase_rule_first(kind); rule != NULL;
		     rule = phase_rule_next(kind, rule)) {
			for (const char *at = rule->job == NULL ? "" : rule->job; *at != '\0'; at++) {
				const char one[2] = { *at, '\0' };
				char out[16];

				digits_row(one, DIGITS_TALL, 1, out, sizeof(out));
				ck_assert_msg((*at == ' ') == (strchr(out, '#') == NULL), "%c", *at);
			}
			if (rule->job != NULL)
				ck_assert_int_le(digits_columns(rule->job, DIGITS_TALL) + 12, 66);
		}
	ck_assert_int_eq(digits_columns("5 JARS OUT", DIGITS_TALL), 60);
}
END_TEST

START_TEST(a_job_looks_like_this)
{
	static const char *const picture[] = {
		"#####       ##   ##  ###  ###### ##### #### ", "##          ##   ## ## ##   ##   ##    ## ##",
		"####        ## # ## #####   ##   ####  #### ", "   ##       ####### ## ##   ##   ##    ## ##",
		"####         ## ##  ## ##   ##   ##### ## ##",
	};
	char out[64];

	for (int row = 0; row < 5; row++) {
		digits_row("5 WATER", DIGITS_TALL, row, out, sizeof(out));
		ck_assert_str_eq(out, picture[row]);
	}
}
END_TEST

START_TEST(an_unknown_character_is_a_space)
{
	char out[64];

	digits_row("1x", DIGITS_TALL, 4, out, sizeof(out));
	ck_assert_str_eq(out, "#####      ");
}
END_TEST

START_TEST(a_row_is_cut_at_the_buffer)
{
	char out[8];

	memset(out, 'z', sizeof(out));
	ck_assert_uint_eq(digits_row("55", DIGITS_TALL, 0, out, sizeof(out)), 7);
	ck_assert_str_eq(out, "##### #");
	ck_assert_uint_eq(digits_row("88", DIGITS_TALL, 0, out, 1), 0);
	ck_assert_str_eq(out, "");
}
END_TEST

START_TEST(a_row_outside_the_font_is_empty)
{
	char out[8] = "zzz";

	ck_assert_uint_eq(digits_row("8", DIGITS_TALL, 5, out, sizeof(out)), 0);
	ck_assert_str_eq(out, "");
	ck_assert_uint_eq(digits_row("8", DIGITS_TALL, -1, out, sizeof(out)), 0);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(widths_are_those_of_the_contract),
	TEST(every_row_of_every_character_is_as_wide_as_announced),
	TEST(all_digits_have_one_width),
	TEST(no_two_digits_can_be_taken_for_one_another),
	TEST(a_clock_looks_like_this),
	TEST(every_job_can_be_written_tall),
	TEST(a_job_looks_like_this),
	TEST(an_unknown_character_is_a_space),
	TEST(a_row_is_cut_at_the_buffer),
	TEST(a_row_outside_the_font_is_empty),
};

TESTS("digits", listed)
