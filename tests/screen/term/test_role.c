/*
 * The palette: read at 4.5 : 1 whatever the ground of the terminal is and whoever looks, and
 * distinct without color.
 */
#include <check.h>
#include <math.h>

#include "screen/term/role.h"
#include "support/tests.h"

struct rgb {
	double part[3]; /* linear light, 0 to 1 */
};

/* WCAG 2.1, definition of relative luminance. */
static double linear(int value)
{
	double part = value / 255.0;

	return part <= 0.03928 ? part / 12.92 : pow((part + 0.055) / 1.055, 2.4);
}

static struct rgb light(int red, int green, int blue)
{
	return (struct rgb){ { linear(red), linear(green), linear(blue) } };
}

/* The customary values of the 256-color cube and grey ramp (from memory:
 * levels 0, 95, 135, 175, 215, 255; greys 8 + 10 n). */
static struct rgb of_many(short color)
{
	static const int level[] = { 0, 95, 135, 175, 215, 255 };
	int cube = color - 16;
	int grey = 8 + 10 * (color - 232);

	ck_assert_int_ge(color, 16);
	return color >= 232 ? light(grey, grey, grey) : light(level[cube / 36], level[cube / 6 % 6], level[cube % 6]);
}

/* Customary values of the eight (from memory). */
static struct rgb of_few(short color)
{
	static const int values[8][3] = { { 0, 0, 0 },   { 205, 0, 0 },   { 0, 205, 0 },   { 205, 205, 0 },
		                          { 0, 0, 238 }, { 205, 0, 205 }, { 0, 205, 205 }, { 229, 229, 229 } };

	ck_assert_int_ge(color, 0);
	ck_assert_int_lt(color, 8);
	return light(values[color][0], values[color][1], values[color][2]);
}

/* Who looks.  Matrices on linear light: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A
 * Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG 15 (6), 2009,
 * doi 10.1109/TVCG.2009.113, protanomaly and deuteranomaly of severity 1.0. */
static const struct {
	const char *who;
	double m[3][3];
} eyes[] = {
	{ "most", { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } } },
	{ "a protanope",
	  { { 0.152286, 1.052583, -0.204868 }, { 0.114503, 0.786281, 0.099216 }, { -0.003882, -0.048116, 1.051998 } } },
	{ "a deuteranope",
	  { { 0.367322, 0.860646, -0.227968 }, { 0.280085, 0.672501, 0.047413 }, { -0.011820, 0.042940, 0.968881 } } },
};
enum { EYES = sizeof(eyes) / sizeof(eyes[0]) };

static double luminance(struct rgb color, int eye)
{
	static const double weight[] = { 0.2126, 0.7152, 0.0722 };
	double sum = 0;

	for (int i = 0; i < 3; i++) {
		double seen = 0;

		for (int k = 0; k < 3; k++)
			seen += eyes[eye].m[i][k] * color.part[k];
		sum += weight[i] * fmin(1, fmax(0, seen));
	}
	return sum;
}

static double contrast(struct rgb a, struct rgb b, int eye)
{
	double one = luminance(a, eye);
	double other = luminance(b, eye);

	return (fmax(one, other) + 0.05) / (fmin(one, other) + 0.05);
}

/* Grounds that terminals have, each with the text its owner reads on it. */
static const struct {
	const char *name;
	int ground;
	int text;
} grounds[] = { { "black", 0x00, 0xff }, { "#1e1e1e", 0x1e, 0xff }, { "white", 0xff, 0x00 } };
enum { GROUNDS = sizeof(grounds) / sizeof(grounds[0]) };

static struct rgb shown(short color, int own, struct rgb (*of)(short color))
{
	return color == ROLE_DEFAULT ? light(own, own, own) : of(color);
}

static void check_role(int role, short fg, short bg, struct rgb (*of)(short color), double least)
{
	for (int g = 0; g < GROUNDS; g++) {
		for (int eye = 0; eye < EYES; eye++) {
			double found = contrast(shown(fg, grounds[g].text, of), shown(bg, grounds[g].ground, of), eye);

			ck_assert_msg(found >= least, "role %d on %s, as %s sees it: %.2f", role, grounds[g].name,
			              eyes[eye].who, found);
		}
	}
}

START_TEST(the_measure_measures)
{
	/* published: black on white is 21 : 1 (WCAG 2.1, note 1 of contrast ratio) */
	ck_assert_double_eq_tol(contrast(light(0, 0, 0), light(255, 255, 255), 0), 21.0, 1e-9);
	/* white stays white and grey grey to all: the rows of the matrices add up to one */
	for (int eye = 0; eye < EYES; eye++)
		ck_assert_double_eq_tol(luminance(light(255, 255, 255), eye), 1.0, 1e-5);
	/* a red that is read on black is not on a dark grey */
	ck_assert_double_lt(contrast(of_many(160), light(0x1e, 0x1e, 0x1e), 0), 3.2);
	/* red is darker to a protanope */
	ck_assert_double_lt(luminance(of_many(160), 1), luminance(of_many(160), 0) / 1.5);
}
END_TEST

/* Reversed it is the same two colors. */
START_TEST(every_role_is_read_on_every_ground_by_everybody)
{
	for (int i = 0; i < ROLE_COUNT; i++) {
		const struct role_look *look = role_look((enum role)i);

		check_role(i, look->many_fg, look->many_bg, of_many, 4.5);
	}
}
END_TEST

/* Of eight colors no red can be had that a deuteranope reads so well; it is bold. */
START_TEST(eight_colors_are_read_on_every_ground)
{
	for (int i = 0; i < ROLE_COUNT; i++) {
		const struct role_look *look = role_look((enum role)i);
		bool red = i == ROLE_ALARM || i == ROLE_STOP;

		check_role(i, look->few_fg, look->few_bg, of_few, red ? 3.7 : 4.5);
		ck_assert(!red || (look->color_attributes & ROLE_ATTR_BOLD));
	}
}
END_TEST

/* A color of ours never meets one that we do not know, also where it is drawn reversed. */
START_TEST(a_role_has_both_colors_or_none)
{
	for (int i = 0; i < ROLE_COUNT; i++) {
		const struct role_look *look = role_look((enum role)i);

		ck_assert_int_eq(look->many_fg == ROLE_DEFAULT, look->many_bg == ROLE_DEFAULT);
		ck_assert_int_eq(look->few_fg == ROLE_DEFAULT, look->few_bg == ROLE_DEFAULT);
		/* bold black is grey on some terminals */
		ck_assert(look->few_fg != 0 || !(look->color_attributes & ROLE_ATTR_BOLD));
	}
}
END_TEST

START_TEST(what_matters_stands_out_without_color)
{
	static const enum role loud[] = { ROLE_STRONG, ROLE_HEADER,  ROLE_SELECTED, ROLE_ALARM, ROLE_CAUTION,
		                          ROLE_STOP,   ROLE_RUNNING, ROLE_WAITING,  ROLE_KEY,   ROLE_PRACTICE };

	for (size_t i = 0; i < sizeof(loud) / sizeof(loud[0]); i++)
		ck_assert_uint_ne(role_look(loud[i])->plain_attributes, ROLE_ATTR_NONE);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(the_measure_measures),
	TEST(every_role_is_read_on_every_ground_by_everybody),
	TEST(eight_colors_are_read_on_every_ground),
	TEST(a_role_has_both_colors_or_none),
	TEST(what_matters_stands_out_without_color),
};

TESTS("role", listed)
