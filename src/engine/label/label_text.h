/*
 * label_text.h - words on a label: where lines break, how large the type may be, what
 * is cut when even the smallest does not fit.
 *
 * Nobody knows the font that will be used, so lines are reckoned with the widths of a
 * wide bold one (advances of a free sans-serif, measured; capitals W and m are its
 * widest letters): words come out narrower than reckoned, not wider.
 *
 * Lengths: micrometres; type: hundredths of a point (1 pt = 1/72 in); widths of text:
 * thousandths of the type size, or of a column.
 */
#ifndef STILLROOM_ENGINE_LABEL_LABEL_TEXT_H
#define STILLROOM_ENGINE_LABEL_LABEL_TEXT_H

#include <stdbool.h>
#include <stddef.h>

enum label_measure {
	LABEL_PRINT,  /* proportional type */
	LABEL_COLUMNS /* equal letters: a column is 1000 */
};

/* Bytes of `text` (valid UTF-8, no line ends) that make its next line in `room`:
 * broken at a separating dot, else at a blank, else between letters; at least one letter.
 * 0 only for "". The blanks at the break are left to label_next. */
size_t label_break(const char *text, int room, enum label_measure measure);
/* Where the line after one of `length` bytes begins: blanks, and a separating dot,
 * passed over. */
const char *label_next(const char *text, size_t length);
int label_lines(const char *text, int room, enum label_measure measure);
/* Shorten in place until it takes at most `lines`; what is cut shows as "...". */
void label_cut(char *text, size_t size, int room, int lines, enum label_measure measure);

#define LABEL_LINES_MAX 4
struct label_words {
	const char *product;
	const char *lines[LABEL_LINES_MAX];
	size_t line_count;
	const char *warning; /* "" none */
};

struct label_fit {
	int product_cpt;  /* type of the product, hundredths of a point */
	int body_cpt;     /* of everything else */
	int product_room; /* room of a line of each, for label_break */
	int body_room;
	int product_lines; /* at most so many of each are shown: label_cut to them */
	int warning_lines;
};

#define LEADING_PERCENT 118 /* from line to line, of the type size */
/* The largest type in which all of it fits into width x height. */
struct label_fit label_fit(const struct label_words *words, int width_um, int height_um);

/* On `rows` lines of `columns` equal letters: only what must be cut is told. */
struct label_fit label_fit_columns(const struct label_words *words, int columns, int rows);

#endif
