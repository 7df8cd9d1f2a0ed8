/* What each row of a frame was made of, and which rows have become others. */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include "screen/term/lines.h"
#include "support/tests.h"

#define ROWS 3
#define COLS 40

static struct lines *lines;

static void begin(void)
{
	lines = lines_new();
	ck_assert_ptr_nonnull(lines);
}

static void end(void)
{
	lines_free(lines);
}

static void frame(void)
{
	ck_assert(lines_begin(lines, ROWS, COLS));
}

/* A text of `columns` columns; true when it stood there. */
static bool put(int row, int col, int role, const char *text, int columns)
{
	struct mark mark = { .col = col, .room = COLS - col, .role = role, .fill = -1, .text = text };
	bool same = lines_put(lines, row, &mark);

	if (same)
		ck_assert_int_eq(mark.columns, columns);
	else
		lines_took(lines, row, columns);
	return same;
}

START_TEST(a_first_frame_is_another_in_every_row)
{
	frame();
	ck_assert(!put(1, 0, 0, "kettle", 6));
	for (int row = 0; row < ROWS; row++)
		ck_assert(lines_changed(lines, row));
}
END_TEST

START_TEST(the_same_again_has_changed_nowhere)
{
	for (int n = 0; n < 3; n++) {
		frame();
		ck_assert_int_eq(put(0, 0, 0, "kettle", 6), n > 0);
		ck_assert_int_eq(put(0, 10, 1, "14:59", 5), n > 0);
		for (int row = 0; row < ROWS; row++)
			ck_assert_int_eq(lines_changed(lines, row), n == 0);
	}
}
END_TEST

/* Of what a mark is made: each alone makes the row another, and no other row. */
START_TEST(whatever_differs_makes_the_row_another)
{
	static const struct {
		int col;
		int role;
		const char *text;
	} second[] = { { 10, 1, "14:58" }, { 11, 1, "14:59" }, { 10, 2, "14:59" }, { 10, 1, "14:59 " }, { 10, 1, "" } };

	frame();
	(void)put(0, 0, 0, "kettle", 6);
	(void)put(0, 10, 1, "14:59", 5);
	(void)put(1, 0, 0, "pot", 3);
	frame();
	ck_assert(put(0, 0, 0, "kettle", 6));
	ck_assert(!put(0, second[_i].col, second[_i].role, second[_i].text, 5));
	ck_assert(put(1, 0, 0, "pot", 3));
	ck_assert(lines_changed(lines, 0));
	ck_assert(!lines_changed(lines, 1));
}
END_TEST

START_TEST(a_mark_less_and_a_mark_more_are_seen)
{
	frame();
	(void)put(0, 0, 0, "kettle", 6);
	(void)put(0, 10, 1, "14:59", 5);
	frame();
	ck_assert(put(0, 0, 0, "kettle", 6));
	ck_assert(lines_changed(lines, 0));
	frame();
	ck_assert(put(0, 0, 0, "kettle", 6));
	(void)put(0, 10, 1, "14:59", 5);
	ck_assert(lines_changed(lines, 0));
	frame();
	ck_assert(lines_changed(lines, 0)); /* all of it has gone */
}
END_TEST

START_TEST(behind_a_mark_that_differs_the_others_are_the_same)
{
	frame();
	(void)put(0, 0, 0, "kettle", 6);
	(void)put(0, 10, 1, "14:59", 5);
	frame();
	ck_assert(!put(0, 0, 0, "big canner", 10));
	ck_assert(put(0, 10, 1, "14:59", 5));
	ck_assert(lines_changed(lines, 0));
}
END_TEST

/* Only what takes the same columns in the same place can be drawn over what was there. */
START_TEST(places_are_kept_by_marks_as_wide_as_those_before)
{
	static const struct {
		int col;
		const char *text;
		int columns;
		bool one_more;
		bool kept;
	} second[] = {
		{ 10, "14:58", 5, false, true },
		{ 11, "14:58", 5, false, false },
		{ 10, "4:58", 4, false, false },
		{ 10, "14:58", 5, true, false },
	};

	frame();
	(void)put(0, 0, 0, "kettle", 6);
	(void)put(0, 10, 1, "14:59", 5);
	ck_assert(!lines_keep_places(lines, 0)); /* there is nothing to draw over */
	frame();
	(void)put(0, 0, 0, "kettle", 6);
	(void)put(0, second[_i].col, 1, second[_i].text, second[_i].columns);
	if (second[_i].one_more)
		(void)put(0, 20, 1, "more", 4);
	ck_assert(lines_changed(lines, 0));
	ck_assert_int_eq(lines_keep_places(lines, 0), second[_i].kept);
	frame();
	(void)put(0, 0, 0, "kettle", 6); /* one less */
	ck_assert(!lines_keep_places(lines, 0));
}
END_TEST

START_TEST(another_size_begins_anew)
{
	frame();
	(void)put(0, 0, 0, "kettle", 6);
	ck_assert(lines_begin(lines, ROWS + 1, COLS));
	ck_assert(!put(0, 0, 0, "kettle", 6));
	for (int row = 0; row <= ROWS; row++)
		ck_assert(lines_changed(lines, row));
}
END_TEST

START_TEST(the_marks_come_back_in_their_order)
{
	char text[2000];
	struct mark mark;
	size_t at = 0;

	memset(text, 'x', sizeof(text) - 1);
	text[sizeof(text) - 1] = '\0';
	frame();
	(void)put(2, 0, 3, text, COLS);
	mark = (struct mark){ .col = 4, .room = 7, .role = 5, .fill = 2, .text = "" };
	(void)lines_put(lines, 2, &mark);
	ck_assert(lines_next(lines, 2, &at, &mark));
	ck_assert_str_eq(mark.text, text);
	ck_assert_int_eq(mark.role, 3);
	ck_assert_int_eq(mark.columns, COLS);
	ck_assert_int_eq(mark.fill, -1);
	ck_assert(lines_next(lines, 2, &at, &mark));
	ck_assert_int_eq(mark.col, 4);
	ck_assert_int_eq(mark.room, 7);
	ck_assert_int_eq(mark.fill, 2);
	ck_assert(!lines_next(lines, 2, &at, &mark));
}
END_TEST

START_TEST(rows_outside_are_nobodys)
{
	struct mark mark = { .text = "below", .fill = -1 };
	size_t at = 0;

	frame();
	ck_assert(!lines_put(lines, ROWS, &mark));
	ck_assert(!lines_put(lines, -1, &mark));
	ck_assert(!lines_changed(lines, ROWS));
	ck_assert(!lines_next(lines, -1, &at, &mark));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("lines", .begin = begin, .end = end),
	TEST(a_first_frame_is_another_in_every_row),
	TEST(the_same_again_has_changed_nowhere),
	EACH(whatever_differs_makes_the_row_another, 0, 5),
	TEST(a_mark_less_and_a_mark_more_are_seen),
	TEST(behind_a_mark_that_differs_the_others_are_the_same),
	EACH(places_are_kept_by_marks_as_wide_as_those_before, 0, 4),
	TEST(another_size_begins_anew),
	TEST(the_marks_come_back_in_their_order),
	TEST(rows_outside_are_nobodys),
};

TESTS("screen lines", listed)
