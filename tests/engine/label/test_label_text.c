/*
 * Words on a label: lines never wider than their room, nothing lost but what is shown
 * as cut, and all of it within the label.
 */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include "base/utf8.h"
#include "engine/label/label_text.h"
#include "support/tests.h"

#define DOT "\xc2\xb7"

static char lines[24][200];

static int broken(const char *text, int columns)
{
	int count = 0;

	while (*text != '\0') {
		size_t length = label_break(text, columns * 1000, LABEL_COLUMNS);

		ck_assert_uint_gt(length, 0);
		ck_assert_int_lt(count, 24);
		(void)snprintf(lines[count++], sizeof(lines[0]), "%.*s", (int)length, text);
		text = label_next(text, length);
	}
	return count;
}

static int columns_of(const char *text)
{
	int columns = 0;

	while (*text != '\0') {
		uint32_t character = 0;

		text += utf8_next(text, strnlen(text, 4), &character);
		columns += utf8_columns(character);
	}
	return columns;
}

START_TEST(lines_break_between_facts_then_words_then_letters)
{
	ck_assert_int_eq(broken("4,650 ft (1,417 m) " DOT " best by 2027-09-14", 30), 2);
	ck_assert_str_eq(lines[0], "4,650 ft (1,417 m)");
	ck_assert_str_eq(lines[1], "best by 2027-09-14");
	ck_assert_int_eq(broken("pint " DOT " weighted-gauge pressure canner", 30), 2);
	ck_assert_str_eq(lines[0], "pint " DOT " weighted-gauge pressure");
	ck_assert_str_eq(lines[1], "canner");
	ck_assert_int_eq(broken("grape and apple jelly", 10), 3);
	ck_assert_str_eq(lines[0], "grape and");
	ck_assert_int_eq(broken("donaudampfschiff", 6), 3);
	ck_assert_str_eq(lines[2], "hiff");
	ck_assert_int_eq(broken("", 6), 0);
}
END_TEST

START_TEST(wide_letters_and_marks_are_counted_as_they_print)
{
	/* Five letters two columns wide; an e with an accent as a mark of its own. */
	ck_assert_int_eq(broken("\346\241\203\343\202\270\343\203\243\343\203\240\346\241\203", 6), 2);
	ck_assert_str_eq(lines[0], "\346\241\203\343\202\270\343\203\243");
	ck_assert_int_eq(broken("e\314\201e\314\201e\314\201", 3), 1);
	ck_assert_int_eq(broken("\346\241\203", 1), 1); /* wider than the room: still one letter a line */
}
END_TEST

START_TEST(no_line_is_wider_than_its_room)
{
	const char *text =
	    "Concord grape, crab apple " DOT " \346\241\203\343\202\270\343\203\243\343\203\240 gel\303\251e, "
	    "Donaudampfschifffahrtsgesellschaftsmarmelade";

	for (int columns = 2; columns < 60; columns++) {
		int count;

		if (columns < 8) /* too many lines for the array */
			continue;
		count = broken(text, columns);
		for (int i = 0; i < count; i++)
			ck_assert_msg(columns_of(lines[i]) <= columns, "%d: \"%s\"", columns, lines[i]);
	}
}
END_TEST

START_TEST(what_is_cut_says_so_and_ends_at_a_letter)
{
	char name[96] = "d'\303\251t\303\251 \303\251\303\251\303\251\303\251\303\251\303\251\303\251\303\251 jam";

	label_cut(name, sizeof(name), 9000, 1, LABEL_COLUMNS);
	ck_assert_str_eq(name, "d'\303\251t\303\251...");
	label_cut(name, sizeof(name), 9000, 1, LABEL_COLUMNS);
	ck_assert_str_eq(name, "d'\303\251t\303\251..."); /* it fits: left alone */
}
END_TEST

static int height(const struct label_fit *fit, int body_lines)
{
	return (fit->product_lines * fit->product_cpt + (body_lines + fit->warning_lines) * fit->body_cpt) * 254 / 72 *
	       LEADING_PERCENT / 100;
}

/* Labels of any size from the least that is allowed up, short and long words. */
START_TEST(words_fit_into_the_label)
{
	static const char *const products[] = {
		"jam",
		"Concord grape and crab apple jelly with a little cardamom, from the upper orchard",
		"WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
	};
	char warning[400];

	memset(warning, 'W', sizeof(warning) - 1);
	warning[sizeof(warning) - 1] = '\0';
	for (size_t p = 0; p < 3; p++) {
		for (int w = 0; w < 3; w++) {
			struct label_words words = {
				.product = products[p],
				.lines = { "2026-09-14 " DOT " lot 2026-09-14-B1",
				           "half-pint " DOT " boiling-water canner " DOT " 15 min",
				           "4,650 ft (1,417 m) " DOT " best by 2027-09-14" },
				.line_count = 3,
				.warning = w == 0   ? ""
				           : w == 1 ? "PROCESS NOT VALID: vent cut short"
				                    : warning,
			};

			for (int mm = 0; mm < 60; mm += 3) {
				int width = (33 + 2 * mm) * 1000; /* inside the white edge */
				int tall = (17 + mm) * 1000;
				struct label_fit fit = label_fit(&words, width, tall);
				int body = 0;

				for (size_t i = 0; i < 3; i++)
					body += label_lines(words.lines[i], fit.body_room, LABEL_PRINT);
				ck_assert_msg(height(&fit, body) <= tall, "%d x %d um: %d", width, tall,
				              height(&fit, body));
				ck_assert_int_ge(fit.body_cpt, 500);
				ck_assert_int_ge(fit.product_lines, 1);
				ck_assert(words.warning[0] == '\0' || fit.warning_lines >= 1);
			}
		}
	}
}
END_TEST

START_TEST(more_room_gives_larger_type)
{
	struct label_words words = {
		.product = "grape jelly", .lines = { "2026-09-14" }, .line_count = 1, .warning = ""
	};
	struct label_fit small = label_fit(&words, 40000, 20000);
	struct label_fit large = label_fit(&words, 100000, 50000);

	ck_assert_int_gt(large.product_cpt, small.product_cpt);
	ck_assert_int_gt(large.body_cpt, small.body_cpt);
	ck_assert_int_gt(small.product_cpt, small.body_cpt);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(lines_break_between_facts_then_words_then_letters),
	TEST(wide_letters_and_marks_are_counted_as_they_print),
	TEST(no_line_is_wider_than_its_room),
	TEST(what_is_cut_says_so_and_ends_at_a_letter),
	TEST(words_fit_into_the_label),
	TEST(more_room_gives_larger_type),
};

TESTS("label text", listed)
