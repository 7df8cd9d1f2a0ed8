/*
 * Shapes, and the cleaning of text that people typed.
 */
#include <check.h>
#include <locale.h>
#include <stdlib.h>
#include <string.h>
#include <wchar.h>

#include "screen/term/glyph.h"
#include "support/tests.h"

struct example {
	const char *in;
	const char *out;
};

static void check_clean(const struct example *examples, size_t count)
{
	char out[256];

	for (size_t i = 0; i < count; i++) {
		bool same = glyph_clean(out, sizeof(out), examples[i].in);
		ck_assert_str_eq(out, examples[i].out);
		ck_assert_int_eq(same, strcmp(examples[i].in, examples[i].out) == 0);
	}
}
#define CHECK_CLEAN(list) check_clean((list), sizeof(list) / sizeof((list)[0]))

START_TEST(ordinary_text_stays_as_it_is)
{
	static const struct example list[] = {
		{ "", "" },
		{ "Grape jelly, half-pints", "Grape jelly, half-pints" },
		{ "Gelée de coing – ½ l", "Gelée de coing – ½ l" },
		{ "りんご 12", "りんご 12" },
		{ "jalapen\xcc\x83o", "jalapen\xcc\x83o" },
	};
	CHECK_CLEAN(list);
}
END_TEST

START_TEST(control_bytes_cannot_reach_the_terminal)
{
	static const struct example list[] = {
		{ "\x1b[2Jgone", "?[2Jgone" },
		{ "\x1b]0;title\x07", "?]0;title?" },
		{ "a\x7f"
		  "b\x01",
		  "a?b?" },
		{ "\xc2\x9b"
		  "31mred",
		  "?31mred" }, /* CSI as a C1 control */
		{ "\xc2\x85", "?" },
		{ "one\ttwo\nthree\r", "one two three " },
	};
	CHECK_CLEAN(list);
}
END_TEST

START_TEST(invalid_utf8_is_shown_byte_by_byte)
{
	static const struct example list[] = {
		{ "\xff", "?" },
		{ "caf\xe9!", "caf?!" },
		{ "\xc3", "?" }, /* cut short at the end */
		{ "\xe2\x82", "??" },
		{ "\x9b"
		  "1m",
		  "?1m" },                      /* C1 as a bare byte */
		{ "\xc0\xaf", "??" },           /* overlong slash */
		{ "\xe0\x80\xaf", "???" },      /* overlong again */
		{ "\xed\xa0\x80", "???" },      /* a surrogate */
		{ "\xf4\x90\x80\x80", "????" }, /* above U+10FFFF */
		{ "\xf5\x80\x80\x80", "????" },
	};
	CHECK_CLEAN(list);
}
END_TEST

START_TEST(marks_that_turn_or_hide_text_are_shown_or_dropped)
{
	static const struct example list[] = {
		{ "a\xe2\x80\xae"
		  "b",
		  "a?b" }, /* U+202E right-to-left override */
		{ "a\xe2\x81\xa6"
		  "b",
		  "a?b" }, /* U+2066 isolate */
		{ "a\xe2\x80\x8f"
		  "b",
		  "a?b" }, /* U+200F right-to-left mark */
		{ "a\xe2\x80\xa8"
		  "b",
		  "a?b" }, /* U+2028 line separator */
		{ "a\xe2\x80\x8b"
		  "b",
		  "ab" }, /* U+200B zero width space */
		{ "\xef\xbb\xbf"
		  "a",
		  "a" },                      /* U+FEFF byte order mark */
		{ "a\xef\xb8\x8f", "a" },     /* U+FE0F variation selector */
		{ "a\xf3\xa0\x81\xa1", "a" }, /* U+E0061 tag */
	};
	CHECK_CLEAN(list);
}
END_TEST

START_TEST(combining_marks_need_a_letter_and_are_few)
{
	static const struct example list[] = {
		{ "\xcc\x81"
		  "a",
		  "a" },
		{ " \xcc\x81", " " },
		{ "a\xcc\x81\xcc\x82\xcc\x83\xcc\x84", "a\xcc\x81\xcc\x82" },
		{ "a\x1b\xcc\x81", "a?" },
	};
	CHECK_CLEAN(list);
}
END_TEST

START_TEST(ascii_spelling_keeps_names_readable)
{
	static const struct example list[] = {
		{ "Gelée de coing – ½ l", "Gelee de coing - 1/2 l" },
		{ "Jalapeño “hot” 240 °F", "Jalapeno \"hot\" 240 degF" },
		{ "Äpfel, Weißdorn, Œuf, Łódź", "Apfel, Weissdorn, OEuf, Lodz" },
		{ "e\xcc\x81t\xc3\xa9", "ete" },
		{ "りんご", "???" },
		{ "a\xe2\x80\xae"
		  "b\x1b\xff",
		  "a?b??" },
	};
	char out[256];

	setlocale(LC_ALL, "C");
	for (size_t i = 0; i < sizeof(list) / sizeof(list[0]); i++) {
		ck_assert(!glyph_clean_ascii(out, sizeof(out), list[i].in));
		ck_assert_str_eq(out, list[i].out);
	}
	ck_assert(glyph_clean_ascii(out, sizeof(out), "Plum 3"));
	ck_assert_str_eq(out, "Plum 3");
}
END_TEST

START_TEST(a_small_buffer_cuts_at_a_character)
{
	char out[5];

	ck_assert(!glyph_clean(out, sizeof(out), "abc\xc3\xa9"));
	ck_assert_str_eq(out, "abc");
	ck_assert(glyph_clean(out, sizeof(out), "ab\xc3\xa9"));
	ck_assert_str_eq(out, "ab\xc3\xa9");
	ck_assert(!glyph_clean(out, 1, "a"));
	ck_assert_str_eq(out, "");
}
END_TEST

static bool printable(const char *text)
{
	wchar_t wide[96];

	if (mbstowcs(wide, text, 96) == (size_t)-1)
		return false;
	for (size_t i = 0; wide[i]; i++)
		if (wcwidth(wide[i]) < 0)
			return false;
	return true;
}

/* Whatever bytes come in, what goes out is valid, printable and no longer than
 * the buffer, and cleaning it again changes nothing. */
START_TEST(any_bytes_come_out_printable)
{
	char in[64];
	char out[96];
	char again[96];
	int bad = 0;

	srand(20240917);
	for (int round = 0; round < 10000; round++) {
		size_t length = (size_t)rand() % (sizeof(in) - 1);
		for (size_t i = 0; i < length; i++)
			in[i] = (char)(rand() % 2 ? rand() % 255 + 1 : 0xc2 + rand() % 51);
		in[length] = '\0';
		glyph_clean(out, sizeof(out), in);
		bad += !printable(out);
		bad += !glyph_clean(again, sizeof(again), out);
	}
	ck_assert_int_eq(bad, 0);
}
END_TEST

START_TEST(columns_count_wide_and_combining_characters)
{
	ck_assert_int_eq(glyph_columns(""), 0);
	ck_assert_int_eq(glyph_columns("Gelée"), 5);
	ck_assert_int_eq(glyph_columns("りんご"), 6);
	ck_assert_int_eq(glyph_columns("e\xcc\x81"), 1);
}
END_TEST

static void check_fit(const char *in, int max_cols, enum glyph_set set, const char *want, int cols)
{
	char text[64];

	glyph_clean(text, sizeof(text), in);
	ck_assert_int_eq(glyph_fit(text, sizeof(text), max_cols, set), cols);
	ck_assert_str_eq(text, want);
}

START_TEST(a_cut_shows_an_ellipsis_within_the_room)
{
	check_fit("Grape", 5, GLYPH_SET_FULL, "Grape", 5);
	check_fit("Grapes", 5, GLYPH_SET_FULL, "Grap…", 5);
	check_fit("Grapes", 5, GLYPH_SET_ASCII, "Grap~", 5);
	check_fit("Grapes", 1, GLYPH_SET_FULL, "…", 1);
	check_fit("Grapes", 0, GLYPH_SET_FULL, "", 0);
	check_fit("Grapes", -3, GLYPH_SET_FULL, "", 0);
}
END_TEST

START_TEST(a_cut_never_halves_a_wide_character)
{
	check_fit("りんご", 6, GLYPH_SET_FULL, "りんご", 6);
	check_fit("りんご", 5, GLYPH_SET_FULL, "りん…", 5);
	check_fit("りんご", 4, GLYPH_SET_FULL, "り…", 3);
	check_fit("りんご", 2, GLYPH_SET_FULL, "…", 1);
}
END_TEST

START_TEST(a_cut_without_room_for_the_ellipsis_stays_within_the_buffer)
{
	char text[6] = "abcde";

	ck_assert_int_eq(glyph_fit(text, sizeof(text), 4, GLYPH_SET_FULL), 3);
	ck_assert_str_eq(text, "abc");
}
END_TEST

START_TEST(every_shape_is_one_column_in_every_set)
{
	for (int set = 0; set < GLYPH_SET_COUNT; set++)
		for (int shape = 0; shape < GLYPH_COUNT; shape++) {
			const char *text = glyph_in((enum glyph_set)set, (enum glyph)shape);
			ck_assert_msg(text != NULL, "shape %d", shape);
			ck_assert_int_eq(glyph_columns(text), 1);
		}
}
END_TEST

START_TEST(ascii_shapes_are_ascii)
{
	for (int shape = 0; shape < GLYPH_COUNT; shape++) {
		const char *text = glyph_in(GLYPH_SET_ASCII, (enum glyph)shape);
		ck_assert_uint_eq(strlen(text), 1);
		ck_assert(text[0] >= ' ' && text[0] <= '~');
	}
}
END_TEST

START_TEST(ribbon_shapes_differ_in_every_set)
{
	static const enum glyph ribbon[] = { GLYPH_SPACE,   GLYPH_HOLD,      GLYPH_TIMED,
		                             GLYPH_WATCHED, GLYPH_ESTIMATED, GLYPH_NOW };
	const size_t count = sizeof(ribbon) / sizeof(ribbon[0]);

	for (int set = 0; set < GLYPH_SET_COUNT; set++)
		for (size_t a = 0; a < count; a++)
			for (size_t b = a + 1; b < count; b++)
				ck_assert_str_ne(glyph_in((enum glyph_set)set, ribbon[a]),
				                 glyph_in((enum glyph_set)set, ribbon[b]));
}
END_TEST

START_TEST(levels_are_held_to_their_range)
{
	ck_assert_int_eq(glyph_of_level(-1), GLYPH_LEVEL_0);
	ck_assert_int_eq(glyph_of_level(0), GLYPH_LEVEL_0);
	ck_assert_int_eq(glyph_of_level(3), GLYPH_LEVEL_3);
	ck_assert_int_eq(glyph_of_level(8), GLYPH_LEVEL_8);
	ck_assert_int_eq(glyph_of_level(900), GLYPH_LEVEL_8);
}
END_TEST

static void use_utf8(void)
{
	ck_assert_ptr_nonnull(setlocale(LC_ALL, "C.UTF-8"));
}

static const struct listed_test listed[] = {
	GROUP("glyph", .begin = use_utf8),
	TEST(ordinary_text_stays_as_it_is),
	TEST(control_bytes_cannot_reach_the_terminal),
	TEST(invalid_utf8_is_shown_byte_by_byte),
	TEST(marks_that_turn_or_hide_text_are_shown_or_dropped),
	TEST(combining_marks_need_a_letter_and_are_few),
	TEST(ascii_spelling_keeps_names_readable),
	TEST(a_small_buffer_cuts_at_a_character),
	TEST(any_bytes_come_out_printable),
	TEST(columns_count_wide_and_combining_characters),
	TEST(a_cut_shows_an_ellipsis_within_the_room),
	TEST(a_cut_never_halves_a_wide_character),
	TEST(a_cut_without_room_for_the_ellipsis_stays_within_the_buffer),
	TEST(every_shape_is_one_column_in_every_set),
	TEST(ascii_shapes_are_ascii),
	TEST(ribbon_shapes_differ_in_every_set),
	TEST(levels_are_held_to_their_range),
};

TESTS("glyph", listed)
