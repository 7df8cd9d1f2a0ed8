/*
 * Sheets of labels: their words, and where the labels lie.
 */
#include <check.h>
#include <string.h>

#include "engine/label/label_sheet.h"
#include "support/tests.h"

static struct fault fault;

static struct label_sheet sheet_of(const char *page, const char *grid, const char *margin, const char *gap)
{
	struct label_sheet sheet = label_sheet_usual();

	ck_assert_msg(label_sheet_page(&sheet, page, &fault) && label_sheet_grid(&sheet, grid, &fault) &&
	                  label_sheet_margin(&sheet, margin, &fault) && label_sheet_gap(&sheet, gap, &fault),
	              "%s", fault.sentence);
	return sheet;
}

START_TEST(pages_go_by_name_or_by_size)
{
	struct label_sheet sheet = label_sheet_usual();

	ck_assert(label_sheet_page(&sheet, "A4", &fault)); /* ISO 216: 210 x 297 mm */
	ck_assert_int_eq(sheet.page_width_um, 210000);
	ck_assert_int_eq(sheet.page_height_um, 297000);
	ck_assert(label_sheet_page(&sheet, "8.5x11in", &fault));
	ck_assert_int_eq(sheet.page_width_um, 215900);
	ck_assert_int_eq(sheet.page_height_um, 279400);
	ck_assert(label_sheet_page(&sheet, "62mm x 10cm", &fault));
	ck_assert_int_eq(sheet.page_width_um, 62000);
	ck_assert_int_eq(sheet.page_height_um, 100000);
}
END_TEST

START_TEST(margins_are_one_two_or_four_lengths)
{
	struct label_sheet sheet = sheet_of("letter", "3x10", "0.5in", "0");

	ck_assert_int_eq(sheet.top_um, 12700);
	ck_assert_int_eq(sheet.left_um, 12700);
	sheet = sheet_of("letter", "3x10", "12.7mm, 5mm", "3mm,1mm");
	ck_assert_int_eq(sheet.bottom_um, 12700);
	ck_assert_int_eq(sheet.right_um, 5000);
	ck_assert_int_eq(sheet.gap_x_um, 3000);
	ck_assert_int_eq(sheet.gap_y_um, 1000);
	sheet = sheet_of("letter", "3x10", "1mm,2mm,3mm,4mm", "3mm");
	ck_assert_int_eq(sheet.top_um, 1000);
	ck_assert_int_eq(sheet.right_um, 2000);
	ck_assert_int_eq(sheet.bottom_um, 3000);
	ck_assert_int_eq(sheet.left_um, 4000);
	ck_assert_int_eq(sheet.gap_y_um, 3000);
}
END_TEST

START_TEST(what_is_not_understood_changes_nothing)
{
	static const char *const pages[] = {
		"", "a7", "210x297", "210", "1x1mm", "2x2m", "210x297mm ", "99999x1mm", "x"
	};
	static const char *const grids[] = { "",     "3",     "3x",     "0x3",  "3x0",  "21x1",
		                             "1x61", "3.5x2", "3x10x2", "-1x2", "3 x 4" };
	static const char *const margins[] = { "",     "5",      "5mm,", "1mm,2mm,3mm", "1mm,2mm,3mm,4mm,5mm",
		                               "-1mm", "5miles", "1e9mm" };
	struct label_sheet before = label_sheet_usual();
	struct label_sheet sheet = before;

	for (size_t i = 0; i < sizeof(pages) / sizeof(pages[0]); i++)
		ck_assert_msg(!label_sheet_page(&sheet, pages[i], &fault), "%s", pages[i]);
	for (size_t i = 0; i < sizeof(grids) / sizeof(grids[0]); i++)
		ck_assert_msg(!label_sheet_grid(&sheet, grids[i], &fault), "%s", grids[i]);
	for (size_t i = 0; i < sizeof(margins) / sizeof(margins[0]); i++)
		ck_assert_msg(!label_sheet_margin(&sheet, margins[i], &fault), "%s", margins[i]);
	ck_assert(!label_sheet_gap(&sheet, "1mm,2mm,3mm", &fault));
	ck_assert_int_eq(memcmp(&sheet, &before, sizeof(sheet)), 0);
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
}
END_TEST

START_TEST(labels_lie_in_their_grid_and_never_outside_the_page)
{
	struct label_sheet sheet = sheet_of("letter", "3x10", "12.7mm,5mm", "3mm,0");
	int right = 0;
	int bottom = 0;
	int x;
	int y;

	ck_assert_int_eq(labels_per_sheet(&sheet), 30);
	label_corner(&sheet, 0, &x, &y);
	ck_assert_int_eq(x, 5000);
	ck_assert_int_eq(y, 12700);
	ck_assert_int_eq(label_height_um(&sheet), 25400);
	label_corner(&sheet, 4, &x, &y);
	ck_assert_int_eq(x, 5000 + label_width_um(&sheet) + 3000);
	ck_assert_int_eq(y, 12700 + 25400);
	label_corner(&sheet, 29, &x, &y);
	right = x + label_width_um(&sheet);
	bottom = y + label_height_um(&sheet);
	ck_assert_int_le(right, 215900 - 5000);
	ck_assert_int_ge(right, 215900 - 5000 - 3); /* but for a rounded micrometre a column */
	ck_assert_int_le(bottom, 279400 - 12700);
}
END_TEST

START_TEST(too_small_is_refused)
{
	struct label_sheet sheet = sheet_of("a4", "5x13", "10mm", "0"); /* 38 x 21.3 mm */

	ck_assert(label_sheet_check(&sheet, &fault));
	sheet = sheet_of("a4", "6x13", "10mm", "0");
	ck_assert(!label_sheet_check(&sheet, &fault));
	sheet = sheet_of("a4", "5x14", "10mm", "0");
	ck_assert(!label_sheet_check(&sheet, &fault));
	sheet = sheet_of("a4", "1x1", "200mm", "0");
	ck_assert(!label_sheet_check(&sheet, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "no room"));
}
END_TEST

static const struct listed_test listed[] = {
	TEST(pages_go_by_name_or_by_size),
	TEST(margins_are_one_two_or_four_lengths),
	TEST(what_is_not_understood_changes_nothing),
	TEST(labels_lie_in_their_grid_and_never_outside_the_page),
	TEST(too_small_is_refused),
};

TESTS("label sheet", listed)
