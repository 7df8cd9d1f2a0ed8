#include "engine/label/label_sheet.h"

#include <assert.h>
#include <stddef.h>
#include <string.h>

#include "base/text.h"

#define MM_UM 1000
#define PAGE_MIN_UM (20 * MM_UM)
#define PAGE_MAX_UM (1000 * MM_UM)
#define LABEL_MIN_WIDTH_UM (36 * MM_UM)
#define LABEL_MIN_HEIGHT_UM (20 * MM_UM)
#define LENGTHS_MAX 4

static const struct {
	const char *name;
	int width_um;
	int height_um;
} pages[] = {
	{ "letter", 215900, 279400 }, /* 8 1/2 x 11 in */
	{ "legal", 215900, 355600 },
	{ "a4", 210000, 297000 }, /* ISO 216 */
	{ "a5", 148000, 210000 },
};

static const char *const formats[] = { "html", "svg", "text" };
static_assert(sizeof(formats) / sizeof(formats[0]) == LABEL_FORMAT_COUNT, "a name for every format");

const char *label_format_name(enum label_format format)
{
	return (unsigned)format < LABEL_FORMAT_COUNT ? formats[format] : "?";
}

bool label_format_read(const char *words, enum label_format *out, struct fault *fault)
{
	for (int i = 0; i < LABEL_FORMAT_COUNT; i++) {
		if (!text_same_name(formats[i], words))
			continue;
		*out = (enum label_format)i;
		return true;
	}
	return fault_set(fault, FAULT_MISUSE, "\"%s\" is not html, svg or text", words);
}

struct label_sheet label_sheet_usual(void)
{
	return (struct label_sheet){
		.page_width_um = pages[0].width_um,
		.page_height_um = pages[0].height_um,
		.columns = 2,
		.rows = 5,
		.top_um = INCH_UM / 2,
		.right_um = INCH_UM / 2,
		.bottom_um = INCH_UM / 2,
		.left_um = INCH_UM / 2,
		.gap_x_um = INCH_UM / 10,
		.gap_y_um = INCH_UM / 10,
	};
}

/* --- reading ------------------------------------------------------------------------ */

/* Thousandths of a number with up to three decimals, below 10,000; the text moves on. */
static bool take_number(const char **at, int *thousandths)
{
	const char *in = *at;
	int value = 0;
	int digits = 0;
	int decimals = 0;

	for (; *in >= '0' && *in <= '9' && digits < 4; digits++)
		value = value * 10 + (*in++ - '0');
	if (*in == '.')
		for (in++; *in >= '0' && *in <= '9' && decimals < 3; decimals++)
			value = value * 10 + (*in++ - '0');
	if (digits == 0 || (*in >= '0' && *in <= '9'))
		return false;
	for (; decimals < 3; decimals++)
		value *= 10;
	*at = in;
	*thousandths = value;
	return true;
}

/* "mm", "cm", "in" or an inch sign: micrometres of it; 0: no unit. */
static int take_unit(const char **at)
{
	static const struct {
		const char *word;
		int um;
	} units[] = { { "mm", MM_UM }, { "cm", 10 * MM_UM }, { "in", INCH_UM }, { "\"", INCH_UM } };

	while (**at == ' ')
		(*at)++;
	for (size_t i = 0; i < sizeof(units) / sizeof(units[0]); i++) {
		if (strncmp(*at, units[i].word, strlen(units[i].word)) != 0)
			continue;
		*at += strlen(units[i].word);
		return units[i].um;
	}
	return 0;
}

static int length_um(int thousandths, int unit_um)
{
	return (int)((long long)thousandths * unit_um / 1000);
}

/* Lengths with commas between them, up to `most`; 0: not understood. */
static int read_lengths(const char *words, int *lengths, int most)
{
	int count = 0;

	while (count < most) {
		int thousandths;
		int unit;

		while (*words == ' ')
			words++;
		if (!take_number(&words, &thousandths))
			return 0;
		unit = take_unit(&words);
		if (unit == 0 && thousandths != 0) /* nothing is nothing in any unit */
			return 0;
		lengths[count++] = length_um(thousandths, unit);
		if (lengths[count - 1] > PAGE_MAX_UM)
			return 0;
		while (*words == ' ')
			words++;
		if (*words == '\0')
			return count;
		if (*words++ != ',')
			return 0;
	}
	return 0;
}

/* "210x297mm", "8.5inx11in" */
static bool read_page(const char *words, int *width_um, int *height_um)
{
	int width;
	int height;
	int width_unit;
	int height_unit;

	if (!take_number(&words, &width))
		return false;
	width_unit = take_unit(&words);
	while (*words == ' ')
		words++;
	if (*words != 'x' && *words != 'X')
		return false;
	words++;
	while (*words == ' ')
		words++;
	if (!take_number(&words, &height))
		return false;
	height_unit = take_unit(&words);
	if (height_unit == 0 || *words != '\0')
		return false;
	*width_um = length_um(width, width_unit == 0 ? height_unit : width_unit);
	*height_um = length_um(height, height_unit);
	return true;
}

static bool is_page(int um)
{
	return um >= PAGE_MIN_UM && um <= PAGE_MAX_UM;
}

bool label_sheet_page(struct label_sheet *sheet, const char *words, struct fault *fault)
{
	int width = 0;
	int height = 0;

	for (size_t i = 0; i < sizeof(pages) / sizeof(pages[0]); i++) {
		if (!text_same_name(pages[i].name, words))
			continue;
		sheet->page_width_um = pages[i].width_um;
		sheet->page_height_um = pages[i].height_um;
		return true;
	}
	if (!read_page(words, &width, &height) || !is_page(width) || !is_page(height))
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not a page: letter, legal, a4, a5 or a size like 210x297mm", words);
	sheet->page_width_um = width;
	sheet->page_height_um = height;
	return true;
}

bool label_sheet_grid(struct label_sheet *sheet, const char *words, struct fault *fault)
{
	const char *at = words;
	int columns = 0;
	int rows = 0;
	bool read = take_number(&at, &columns) && (*at == 'x' || *at == 'X');

	at += read;
	if (!read || !take_number(&at, &rows) || *at != '\0' || columns % 1000 != 0 || rows % 1000 != 0 ||
	    columns < 1000 || columns > SHEET_COLUMNS_MAX * 1000 || rows < 1000 || rows > SHEET_ROWS_MAX * 1000)
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not a grid: columns and rows, like 3x10, at most %dx%d", words,
		                 SHEET_COLUMNS_MAX, SHEET_ROWS_MAX);
	sheet->columns = columns / 1000;
	sheet->rows = rows / 1000;
	return true;
}

bool label_sheet_margin(struct label_sheet *sheet, const char *words, struct fault *fault)
{
	int lengths[LENGTHS_MAX];
	int count = read_lengths(words, lengths, LENGTHS_MAX);

	if (count != 1 && count != 2 && count != 4)
		return fault_set(fault, FAULT_MISUSE,
		                 "\"%s\" is not a margin: one length, two (top and bottom, sides) or four (top, "
		                 "right, bottom, left), like 12.7mm,5mm",
		                 words);
	sheet->top_um = lengths[0];
	sheet->right_um = lengths[count > 1 ? 1 : 0];
	sheet->bottom_um = lengths[count > 2 ? 2 : 0];
	sheet->left_um = lengths[count > 2 ? 3 : count > 1 ? 1 : 0];
	return true;
}

bool label_sheet_gap(struct label_sheet *sheet, const char *words, struct fault *fault)
{
	int lengths[2];
	int count = read_lengths(words, lengths, 2);

	if (count == 0)
		return fault_set(
		    fault, FAULT_MISUSE,
		    "\"%s\" is not a gap: one length, or two (between columns, between rows), like 3mm,0mm", words);
	sheet->gap_x_um = lengths[0];
	sheet->gap_y_um = lengths[count - 1];
	return true;
}

/* --- measuring ---------------------------------------------------------------------- */

int label_width_um(const struct label_sheet *sheet)
{
	return (sheet->page_width_um - sheet->left_um - sheet->right_um - (sheet->columns - 1) * sheet->gap_x_um) /
	       sheet->columns;
}

int label_height_um(const struct label_sheet *sheet)
{
	return (sheet->page_height_um - sheet->top_um - sheet->bottom_um - (sheet->rows - 1) * sheet->gap_y_um) /
	       sheet->rows;
}

bool label_sheet_check(const struct label_sheet *sheet, struct fault *fault)
{
	int width = label_width_um(sheet);
	int height = label_height_um(sheet);

	if (width >= LABEL_MIN_WIDTH_UM && height >= LABEL_MIN_HEIGHT_UM)
		return true;
	if (width <= 0 || height <= 0)
		return fault_set(fault, FAULT_MISUSE, "margins and gaps leave no room for labels on that page");
	return fault_set(fault, FAULT_MISUSE,
	                 "that label would be %d x %d mm; %d x %d is the smallest that fits the text", width / MM_UM,
	                 height / MM_UM, LABEL_MIN_WIDTH_UM / MM_UM, LABEL_MIN_HEIGHT_UM / MM_UM);
}

int labels_per_sheet(const struct label_sheet *sheet)
{
	return sheet->columns * sheet->rows;
}

void label_corner(const struct label_sheet *sheet, int place, int *x_um, int *y_um)
{
	*x_um = sheet->left_um + place % sheet->columns * (label_width_um(sheet) + sheet->gap_x_um);
	*y_um = sheet->top_um + place / sheet->columns * (label_height_um(sheet) + sheet->gap_y_um);
}
