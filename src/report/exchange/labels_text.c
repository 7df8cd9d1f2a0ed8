/*
 * labels_text.c - labels in equal letters, for any printer and any pair of eyes.
 */
#include <string.h>

#include "base/utf8.h"
#include "engine/label/label_text.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/recipe/sheet.h"
#include "report/cli/plain.h"
#include "report/exchange/labels.h"

#define LETTER_UM (INCH_UM / 10)
#define LINE_UM (INCH_UM / 6)
#define COLUMNS_MIN 30
#define ROWS_MIN 8
#define FORM_FEED '\f'
#define CAUTION_COLUMNS 78

struct cell {
	int columns;
	int rows;
};

/* One column is left white, so that neighbours do not run together. */
static struct cell cell_of(const struct label_sheet *sheet)
{
	return (struct cell){
		.columns = label_width_um(sheet) / LETTER_UM - 1,
		.rows = label_height_um(sheet) / LINE_UM,
	};
}

bool labels_text_fits(const struct label_print *print, struct fault *fault)
{
	struct cell cell = cell_of(&print->sheet);

	return (cell.columns >= COLUMNS_MIN && cell.rows >= ROWS_MIN) ||
	       fault_set(
	           fault, FAULT_MISUSE,
	           "in plain text such a label would be %d letters in %d lines, and %d in %d is the least: take fewer "
	           "columns or rows, or html",
	           cell.columns, cell.rows, COLUMNS_MIN, ROWS_MIN);
}

/* Line `wanted` of a text; false, with the number still wanted behind it, when it
 * has not so many. */
static bool line_of(const char *text, int room, int *wanted, const char **line, size_t *length)
{
	for (; *text != '\0'; text = label_next(text, *length)) {
		*length = label_break(text, room, LABEL_COLUMNS);
		*line = text;
		if ((*wanted)-- == 0)
			return true;
	}
	return false;
}

static int put_columns(FILE *out, const char *line, size_t length)
{
	char copy[1024];
	int columns = 0;

	(void)snprintf(copy, sizeof(copy), "%.*s", (int)length, line);
	plain_put(out, copy);
	for (const char *at = copy; *at != '\0';) {
		uint32_t character = 0;
		size_t bytes = utf8_next(at, strnlen(at, 4), &character);

		columns += bytes == 0 ? 1 : utf8_columns(character);
		at += bytes == 0 ? 1 : bytes;
	}
	return columns;
}

static void put_blanks(FILE *out, int count)
{
	for (int i = 0; i < count; i++)
		(void)fputc(' ', out);
}

/* Line `row` of a label behind `blanks`; returns the columns both took, 0 when the
 * label has no such line. */
static int put_row(FILE *out, const struct label_print *print, const struct label *label, int row, int blanks)
{
	struct cell cell = cell_of(&print->sheet);
	struct label_words words;
	struct label_fit fit;
	struct label copy = *label;
	const char *line = "";
	size_t length = 0;

	label_words(label, &words);
	fit = label_fit_columns(&words, cell.columns, cell.rows);
	label_cut(copy.product, sizeof(copy.product), fit.product_room, fit.product_lines, LABEL_COLUMNS);
	label_cut(copy.warning, sizeof(copy.warning), fit.body_room, fit.warning_lines, LABEL_COLUMNS);
	if (line_of(copy.product, fit.product_room, &row, &line, &length) ||
	    line_of(copy.warning, fit.body_room, &row, &line, &length) ||
	    line_of(copy.made, fit.body_room, &row, &line, &length) ||
	    line_of(copy.process, fit.body_room, &row, &line, &length) ||
	    line_of(copy.place, fit.body_room, &row, &line, &length)) {
		put_blanks(out, blanks);
		return blanks + put_columns(out, line, length);
	}
	return 0;
}

/* One line of print across the labels that stand side by side. */
static void put_line(FILE *out, const struct label_print *print, int first, int row)
{
	int columns = 0;

	for (int i = 0; i < print->sheet.columns; i++) {
		const struct label *label = label_at(print, first + i);
		int x;
		int y;

		if (label == NULL)
			continue;
		label_corner(&print->sheet, i, &x, &y);
		columns += put_row(out, print, label, row, x / LETTER_UM - columns);
	}
	(void)fputc('\n', out);
}

static void put_sheet(FILE *out, const struct label_print *print, int sheet)
{
	int per_sheet = labels_per_sheet(&print->sheet);
	struct cell cell = cell_of(&print->sheet);
	int line = 0;

	for (int row = 0; row < print->sheet.rows; row++) {
		int first = sheet * per_sheet + row * print->sheet.columns;
		int x;
		int y;

		label_corner(&print->sheet, row * print->sheet.columns, &x, &y);
		for (; line < y / LINE_UM; line++)
			(void)fputc('\n', out);
		for (int i = 0; i < cell.rows; i++, line++)
			put_line(out, print, first, i);
	}
}

void labels_put_text(FILE *out, const struct label_print *print)
{
	int sheets = labels_sheets(print);

	for (int sheet = 0; sheet < sheets; sheet++) {
		put_sheet(out, print, sheet);
		(void)fputc(FORM_FEED, out);
	}
	(void)fputs(CAUTION_TITLE "\n", out);
	for (const char *const *caution = label_cautions; *caution != NULL; caution++) {
		const char *text = *caution;
		const char *lead = "- ";

		while (*text != '\0') {
			size_t length = label_break(text, (CAUTION_COLUMNS - 2) * 1000, LABEL_COLUMNS);

			(void)fprintf(out, "%s%.*s\n", lead, (int)length, text);
			text = label_next(text, length);
			lead = "  ";
		}
	}
}
