/*
 * The palette: readable on dark and on light, and distinct without colour.
 */
#include <check.h>
#include <math.h>

#include "screen/term/role.h"
#include "support/tests.h"

/* WCAG 2.1, definition of relative luminance. */
static double linear(int value)
{
	double part = value / 255.0;

	return part <= 0.03928 ? part / 12.92 : pow((part + 0.055) / 1.055, 2.4);
}

/* The customary values of the 256-colour cube and grey ramp (from memory:
 * levels 0, 95, 135, 175, 215, 255; greys 8 + 10 n). */
static double luminance(short colour)
{
	static const int level[] = { 0, 95, 135, 175, 215, 255 };
	int cube = colour - 16;

	ck_assert_int_ge(colour, 16);
	if (colour >= 232)
		return linear(8 + 10 * (colour - 232));
	return 0.2126 * linear(level[cube / 36]) + 0.7152 * linear(level[cube / 6 % 6]) +
	       0.0722 * linear(level[cube % 6]);
}

static double contrast(double a, double b)
{
	double high = a > b ? a : b;
	double low = a > b ? b : a;

	return (high + 0.05) / (low + 0.05);
}

START_TEST(coloured_text_is_read_on_black_and_on_white)
{
	for (int i = 0; i < ROLE_COUNT; i++) {
		const struct role_look *look = role_look((enum role)i);
		if (look->many_fg == ROLE_DEFAULT || look->many_bg != ROLE_DEFAULT)
			continue;
		double tone = luminance(look->many_fg);
		ck_assert_msg(contrast(tone, 0.0) >= 3.8, "role %d on black", i);
		ck_assert_msg(contrast(tone, 1.0) >= 3.8, "role %d on white", i);
	}
}
END_TEST

START_TEST(text_on_a_background_of_its_own_is_read)
{
	for (int i = 0; i < ROLE_COUNT; i++) {
		const struct role_look *look = role_look((enum role)i);
		if (look->many_bg == ROLE_DEFAULT)
			continue;
		/* A background of our own never meets an unknown foreground. */
		ck_assert_int_ne(look->many_fg, ROLE_DEFAULT);
		ck_assert_int_ne(look->few_fg, ROLE_DEFAULT);
		ck_assert_msg(contrast(luminance(look->many_fg), luminance(look->many_bg)) >= 3.8, "role %d", i);
	}
}
END_TEST

START_TEST(what_matters_stands_out_without_colour)
{
	static const enum role loud[] = { ROLE_STRONG, ROLE_HEADER,  ROLE_SELECTED, ROLE_ALARM, ROLE_CAUTION,
		                          ROLE_STOP,   ROLE_RUNNING, ROLE_WAITING,  ROLE_KEY,   ROLE_PRACTICE };

	for (size_t i = 0; i < sizeof(loud) / sizeof(loud[0]); i++)
		ck_assert_uint_ne(role_look(loud[i])->plain_attributes, ROLE_ATTR_NONE);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(coloured_text_is_read_on_black_and_on_white),
	TEST(text_on_a_background_of_its_own_is_read),
	TEST(what_matters_stands_out_without_colour),
};

TESTS("role", listed)
