/* picture.c - see picture.h. */
#include "support/picture.h"

#include <check.h>
#include <curses.h>
#include <string.h>
#include <wchar.h>

/* Of the picture, in its own units. */
#define CELL_WIDTH 9
#define CELL_HEIGHT 18
#define BASELINE 13 /* of a cell's text, from its top */
#define FONT_SIZE 15
#define MARGIN 9
#define EIGHTHS 8
#define ROW_CELLS 512

/* The terminal's own colors, where a cell asks for none. */
#define PAPER 0x0d1014L
#define INK 0xd8dee4L

struct cell {
	wchar_t text[CCHARW_MAX + 1]; /* one column of it; empty: the second half of a wide one */
	long ink;                     /* red, green and blue, eight bits each */
	long paper;
	bool bold;
	bool underlined;
};

/* --- a cell -------------------------------------------------------------------------- */

/* xterm's 256: a cube of six levels from 16 on, then 24 grays. */
static long color_of(int number, long own)
{
	static const long level[] = { 0, 95, 135, 175, 215, 255 };
	int in_cube = number - 16;
	int gray = number - 232;

	if (number < 0)
		return own;
	ck_assert_msg(number >= 16 && number < 256, "color %d is none of the 240 that are the same everywhere", number);
	if (gray >= 0)
		return (8 + 10L * gray) * 0x010101L;
	return level[in_cube / 36] << 16 | level[in_cube / 6 % 6] << 8 | level[in_cube % 6];
}

static void read_cell(int row, int col, struct cell *cell)
{
	cchar_t held;
	attr_t attributes;
	short pair = 0;
	short ink = -1;
	short paper = -1;

	memset(cell, 0, sizeof(*cell));
	ck_assert_int_ne(mvin_wch(row, col, &held), ERR);
	ck_assert_int_ne(getcchar(&held, cell->text, &attributes, &pair, NULL), ERR);
	if (pair != 0)
		ck_assert_int_ne(pair_content(pair, &ink, &paper), ERR);
	cell->ink = color_of(ink, INK);
	cell->paper = color_of(paper, PAPER);
	cell->bold = (attributes & A_BOLD) != 0;
	cell->underlined = (attributes & A_UNDERLINE) != 0;
	if (attributes & A_REVERSE) {
		long kept = cell->ink;

		cell->ink = cell->paper;
		cell->paper = kept;
	}
}

static void read_row(int row, int cols, struct cell *cells)
{
	ck_assert_int_le(cols, ROW_CELLS);
	for (int col = 0; col < cols; col++)
		read_cell(row, col, &cells[col]);
}

/* --- paper ----------------------------------------------------------------------------- */

static int left_of(int col)
{
	return MARGIN + col * CELL_WIDTH;
}

static int top_of(int row)
{
	return MARGIN + row * CELL_HEIGHT;
}

static void put_rectangle(FILE *out, double x, double y, double width, double height, long color, double strength)
{
	(void)fprintf(out, "<rect x=\"%g\" y=\"%g\" width=\"%g\" height=\"%g\" fill=\"#%06lx\"", x, y, width, height,
	              color);
	if (strength < 1)
		(void)fprintf(out, " fill-opacity=\"%g\"", strength);
	(void)fputs("/>\n", out);
}

/* One rectangle for neighbors of one color. */
static void put_papers(FILE *out, int row, int cols, const struct cell *cells)
{
	for (int col = 0, after; col < cols; col = after) {
		for (after = col + 1; after < cols && cells[after].paper == cells[col].paper;)
			after++;
		if (cells[col].paper != PAPER)
			put_rectangle(out, left_of(col), top_of(row), (after - col) * CELL_WIDTH, CELL_HEIGHT,
			              cells[col].paper, 1);
	}
}

/* --- drawing characters ------------------------------------------------------------------ */

/* A part of a cell, in eighths from its left and its top. */
struct part {
	wchar_t character;
	int left;
	int top;
	int width;
	int height;
	double strength;
};

static const struct part parts[] = {
	{ L'█', 0, 0, 8, 8, 1 }, { L'▒', 0, 0, 8, 8, 0.55 }, { L'░', 0, 0, 8, 8, 0.28 }, { L'▌', 0, 0, 4, 8, 1 },
	{ L'▁', 0, 7, 8, 1, 1 }, { L'▂', 0, 6, 8, 2, 1 },    { L'▃', 0, 5, 8, 3, 1 },    { L'▄', 0, 4, 8, 4, 1 },
	{ L'▅', 0, 3, 8, 5, 1 }, { L'▆', 0, 2, 8, 6, 1 },    { L'▇', 0, 1, 8, 7, 1 },    { L'▀', 0, 0, 8, 4, 1 },
};

static const struct part *part_of(const struct cell *cell)
{
	for (size_t i = 0; i < sizeof(parts) / sizeof(parts[0]); i++)
		if (cell->text[0] == parts[i].character && cell->text[1] == L'\0')
			return &parts[i];
	return NULL;
}

/* As far as the same part of the same ink goes on; only a part as wide as its cell does. */
static int end_of_part(const struct cell *cells, int col, int cols, const struct part *part)
{
	int after = col + 1;

	while (part->width == EIGHTHS && after < cols && part_of(&cells[after]) == part &&
	       cells[after].ink == cells[col].ink)
		after++;
	return after;
}

static void put_part(FILE *out, int row, int col, int after, const struct part *part, long ink)
{
	put_rectangle(out, left_of(col) + part->left * CELL_WIDTH / (double)EIGHTHS,
	              top_of(row) + part->top * CELL_HEIGHT / (double)EIGHTHS,
	              part->width * (after - col) * CELL_WIDTH / (double)EIGHTHS,
	              part->height * CELL_HEIGHT / (double)EIGHTHS, ink, part->strength);
}

/* --- text ------------------------------------------------------------------------------- */

static bool is_blank(const struct cell *cell)
{
	return cell->text[0] == L' ' || cell->text[0] == L'\0';
}

static bool same_look(const struct cell *one, const struct cell *other)
{
	return one->ink == other->ink && one->bold == other->bold && one->underlined == other->underlined;
}

/* A text ends where its look does, at two blanks and at a part of a cell. */
static int end_of_text(const struct cell *cells, int col, int cols)
{
	int after = col + 1;

	while (after < cols && same_look(&cells[after], &cells[col]) && part_of(&cells[after]) == NULL &&
	       !(is_blank(&cells[after]) &&
	         (after + 1 == cols || is_blank(&cells[after + 1]) || !same_look(&cells[after + 1], &cells[col]))))
		after++;
	return after;
}

static void put_characters(FILE *out, const wchar_t *text)
{
	for (; *text != L'\0'; text++)
		switch (*text) {
		case L'<': (void)fputs("&lt;", out); break;
		case L'>': (void)fputs("&gt;", out); break;
		case L'&': (void)fputs("&amp;", out); break;
		default: (void)fprintf(out, "%lc", (wint_t)*text);
		}
}

/* Whatever font there is, as wide as its cells. */
static void put_text(FILE *out, int row, int col, int after, const struct cell *cells)
{
	(void)fprintf(out, "<text x=\"%d\" y=\"%d\" textLength=\"%d\"", left_of(col), top_of(row) + BASELINE,
	              (after - col) * CELL_WIDTH);
	if (cells[col].ink != INK)
		(void)fprintf(out, " fill=\"#%06lx\"", cells[col].ink);
	if (cells[col].bold)
		(void)fputs(" font-weight=\"bold\"", out);
	if (cells[col].underlined)
		(void)fputs(" text-decoration=\"underline\"", out);
	(void)fputc('>', out);
	for (int i = col; i < after; i++)
		put_characters(out, cells[i].text);
	(void)fputs("</text>\n", out);
}

static void put_inks(FILE *out, int row, int cols, const struct cell *cells)
{
	for (int col = 0, after; col < cols; col = after) {
		const struct part *part = part_of(&cells[col]);

		after = col + 1;
		if (part != NULL) {
			after = end_of_part(cells, col, cols, part);
			put_part(out, row, col, after, part, cells[col].ink);
		} else if (!is_blank(&cells[col])) {
			after = end_of_text(cells, col, cols);
			put_text(out, row, col, after, cells);
		}
	}
}

/* --- all of it ---------------------------------------------------------------------------- */

static void put_head(FILE *out, const struct picture *picture)
{
	int width = picture->cols * CELL_WIDTH + 2 * MARGIN;
	int height = picture->rows * CELL_HEIGHT + 2 * MARGIN;

	(void)fprintf(out,
	              "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" viewBox=\"0 0 %d %d\""
	              " role=\"img\" aria-labelledby=\"title words\">\n",
	              width, height, width, height);
	(void)fprintf(out, "<title id=\"title\">%s</title>\n<desc id=\"words\">%s</desc>\n", picture->title,
	              picture->words);
	(void)fprintf(out, "<rect width=\"%d\" height=\"%d\" rx=\"6\" fill=\"#%06lx\"/>\n", width, height, PAPER);
	(void)fprintf(out,
	              "<g font-family=\"'DejaVu Sans Mono', 'Liberation Mono', monospace\" font-size=\"%d\""
	              " fill=\"#%06lx\" xml:space=\"preserve\">\n",
	              FONT_SIZE, INK);
}

void picture_write(FILE *out, const struct picture *picture)
{
	struct cell cells[ROW_CELLS];

	put_head(out, picture);
	for (int row = 0; row < picture->rows; row++) {
		read_row(row, picture->cols, cells);
		put_papers(out, row, picture->cols, cells);
		put_inks(out, row, picture->cols, cells);
	}
	(void)fputs("</g>\n</svg>\n", out);
}
