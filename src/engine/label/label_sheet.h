/*
 * label_sheet.h - a sheet of labels: page, grid, margins, gaps.
 *
 * Lengths are whole micrometres (1 in = 25,400 um, schema/measures.csv).  Words come
 * from the command line or the configuration file.
 */
#ifndef STILLROOM_ENGINE_LABEL_LABEL_SHEET_H
#define STILLROOM_ENGINE_LABEL_LABEL_SHEET_H

#include <stdbool.h>

#include "base/fault.h"

#define INCH_UM 25400
#define SHEET_COLUMNS_MAX 20
#define SHEET_ROWS_MAX 60

struct label_sheet {
	int page_width_um;
	int page_height_um;
	int columns;
	int rows;
	int top_um; /* margins */
	int right_um;
	int bottom_um;
	int left_um;
	int gap_x_um; /* between neighbours */
	int gap_y_um;
};

enum label_format { LABEL_HTML, LABEL_SVG, LABEL_TEXT, LABEL_FORMAT_COUNT };
const char *label_format_name(enum label_format format); /* "html", "svg", "text" */
bool label_format_read(const char *words, enum label_format *out, struct fault *fault);

/* US Letter, 2 x 5, half an inch around, a tenth between. */
struct label_sheet label_sheet_usual(void);

/* Each sets one thing; FAULT_MISUSE with the form that is understood, and *sheet as
 * it was.  A length has its unit, mm, cm or in: "12.7mm".
 *   page    letter, legal, a4, a5, or WIDTHxHEIGHT: "210x297mm"; 20 mm to 1 m
 *   grid    COLUMNSxROWS: "3x10"
 *   margin  one length for all sides, two (top and bottom, sides) or four (top, right,
 *           bottom, left), with commas
 *   gap     one length, or two: between columns, between rows */
bool label_sheet_page(struct label_sheet *sheet, const char *words, struct fault *fault);
bool label_sheet_grid(struct label_sheet *sheet, const char *words, struct fault *fault);
bool label_sheet_margin(struct label_sheet *sheet, const char *words, struct fault *fault);
bool label_sheet_gap(struct label_sheet *sheet, const char *words, struct fault *fault);

/* Is there room for words on a label?  36 x 20 mm at the least: eight lines of the
 * smallest type that can be read. */
bool label_sheet_check(const struct label_sheet *sheet, struct fault *fault);

int label_width_um(const struct label_sheet *sheet);
int label_height_um(const struct label_sheet *sheet);
int labels_per_sheet(const struct label_sheet *sheet);
/* Upper left corner of a label, counted from 0 along the rows, on its own sheet. */
void label_corner(const struct label_sheet *sheet, int place, int *x_um, int *y_um);

#endif
