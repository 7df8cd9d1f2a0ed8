/*
 * list.c - lists of lines and paragraphs: the one place where text is broken to a window.
 */
#include "screen/ui/list.h"

#include <string.h>

#include "base/text.h"
#include "screen/ui/desk.h"

#define MORE_TO_KNOW "There is more to know: @"
#define EXPLAIN_BYTES 800
#define PAGE_LINES 10
#define TELLS_FROM_ROWS 3 /* a lower list has no row to spare for how many more there are */

void list_move(struct list_state *list, int by, int count)
{
	list->cursor += by;
	if (list->cursor >= count)
		list->cursor = count - 1;
	if (list->cursor < 0)
		list->cursor = 0;
}

/* First line to show so that the cursor is within `rows`. */
static int scroll(struct list_state *list, int count, int rows)
{
	if (list->cursor < list->top)
		list->top = list->cursor;
	if (list->cursor >= list->top + rows)
		list->top = list->cursor - rows + 1;
	if (list->top > count - rows)
		list->top = count - rows;
	if (list->top < 0)
		list->top = 0;
	return list->top;
}

/* Those of the view that is shown. */
static void move(struct desk *desk, int by)
{
	int count = 0;
	struct list_state *list = view_of(desk, desk->view)->list(desk, &count);

	list_move(list, by, count);
}

void list_above(struct desk *desk)
{
	move(desk, -1);
}

void list_below(struct desk *desk)
{
	move(desk, 1);
}

void list_page_above(struct desk *desk)
{
	move(desk, -PAGE_LINES);
}

void list_page_below(struct desk *desk)
{
	move(desk, PAGE_LINES);
}

/* Bytes of `text` that fit in `cols` columns, broken at a blank where there is
 * one.  Counts bytes as columns but for UTF-8 continuation bytes, which is exact
 * for the program's own words and cut safely by terminal_put for others. */
size_t desk_line_bytes(const char *text, int cols)
{
	size_t length = 0;
	size_t blank = 0;
	int columns = 0;

	while (text[length] != '\0') {
		if (((unsigned char)text[length] & 0xC0u) != 0x80u && ++columns > cols)
			return blank > 0 ? blank : length;
		if (text[length] == ' ')
			blank = length;
		length++;
	}
	return length;
}

int desk_paragraph_lines(const char *text, int cols)
{
	int lines = 0;

	while (*text != '\0' && cols > 0) {
		text += desk_line_bytes(text, cols);
		text += strspn(text, " ");
		lines++;
	}
	return lines;
}

int desk_paragraph(const struct desk *desk, int row, int col, int cols, int rows, enum role role, const char *text)
{
	int used = 0;

	while (*text != '\0' && used < rows && cols > 0) {
		size_t length = desk_line_bytes(text, cols);
		bool last = used == rows - 1;

		/* The last line takes all that is left and shows that it was cut. */
		terminal_putf(desk->terminal, row + used, col, cols, role, "%.*s",
		              last ? (int)strlen(text) : (int)length, text);
		text += length;
		while (*text == ' ')
			text++;
		used++;
	}
	return used;
}

int desk_whole(const struct desk *desk, int row, int col, int cols, int rows, enum role role, const char *text)
{
	if (desk_paragraph_lines(text, cols) <= rows)
		return desk_paragraph(desk, row, col, cols, rows, role, text);
	return desk_paragraph(desk, row, col, cols, rows < 1 ? rows : 1, role, MORE_TO_KNOW);
}

void caution_line_add(struct caution_lines *cautions, const char *words)
{
	if (words != NULL && words[0] != '\0' && cautions->count < CAUTION_LINES_MAX)
		cautions->words[cautions->count++] = words;
}

int desk_cautions(const struct desk *desk, int row, int rows, const struct caution_lines *cautions)
{
	int cols = desk_columns(desk) - 4;
	int used = 0;

	for (int i = 0; i < cautions->count && used < rows; i++) {
		bool last = i + 1 == cautions->count;
		/* The row of the way to the others is kept free. */
		bool fits = desk_paragraph_lines(cautions->words[i], cols) <= rows - used - !last;

		used += desk_paragraph(desk, row + used, 3, cols, fits ? rows - used : 1, ROLE_CAUTION,
		                       fits ? cautions->words[i] : MORE_TO_KNOW);
		if (!fits)
			break;
	}
	return used;
}

/* Without its last sentence; of what stands before `least` nothing is left out. */
static void leave_out_last(char *words, size_t least)
{
	size_t end = strlen(words) - 1;

	while (end > least && !(words[end - 1] == '.' && words[end] == ' '))
		end--;
	words[end > least ? end : least] = '\0';
}

void desk_sentences(char *buffer, int cols, int rows, size_t keep)
{
	while (desk_paragraph_lines(buffer, cols) > rows && strlen(buffer) > keep)
		leave_out_last(buffer, keep);
}

int desk_explain(const struct desk *desk, int row, int rows, const char *text)
{
	int cols = desk_columns(desk) - 4;
	char words[EXPLAIN_BYTES];

	text_copy(words, sizeof(words), text);
	desk_sentences(words, cols, rows, 0);
	return desk_paragraph(desk, row, 3, cols, rows, ROLE_QUIET, words);
}

size_t desk_page(const struct desk *desk, int row, int rows, enum role role, const char *text)
{
	int cols = desk_columns(desk) - 2;
	const char *at = text;

	for (int used = 0; *at != '\0' && used < rows; used++) {
		size_t length = desk_line_bytes(at, cols);

		terminal_putf(desk->terminal, row + used, 1, cols, role, "%.*s", (int)length, at);
		at += length;
		at += strspn(at, " ");
	}
	return (size_t)(at - text);
}

int desk_title(const struct desk *desk, int row, const char *words)
{
	return desk_paragraph(desk, row, 1, desk_columns(desk) - 2, 3, ROLE_STRONG, words);
}

void desk_fit(const struct desk *desk, int row, enum role role, const char *words, const char *brief)
{
	int room = desk_columns(desk) - 2;

	terminal_put(desk->terminal, row, 1, room, role, (int)strlen(words) <= room ? words : brief);
}

/* --- lists ------------------------------------------------------------------------------- */

static struct list_line line_of(const struct desk *desk, const struct list_area *area, int n, bool here, int row)
{
	struct list_line line = { .n = n,
		                  .row = row,
		                  .here = here,
		                  .of = area->of,
		                  .role = ROLE_PLAIN,
		                  .here_role = ROLE_SELECTED,
		                  .col = area->left + 2 };

	area->line(desk, &line);
	return line;
}

static int columns_of(const struct desk *desk, const struct list_line *line)
{
	return line->room > 0 ? line->room : desk_columns(desk) - line->col - 1;
}

/* Rows of the line at the cursor, to its end. */
static int rows_here(const struct desk *desk, const struct list_area *area, int n)
{
	struct list_line line = line_of(desk, area, n, true, NO_ROW);
	int needed = desk_paragraph_lines(line.words, columns_of(desk, &line));

	return needed < 1 ? 1 : needed < area->rows ? needed : area->rows;
}

static void more_draw(const struct desk *desk, const struct list_area *area, int row, int above, int below)
{
	char words[48];
	struct text text = TEXT_OVER(words);

	if (above > 0)
		text_add(&text, "%d above", above);
	if (below > 0)
		text_add(&text, above > 0 ? ", %d below" : "%d more below", below);
	terminal_put(desk->terminal, row, area->left + 2, desk_columns(desk) - area->left - 3, ROLE_PLAIN, words);
}

int list_rows(const struct desk *desk, const struct list_state *list, const struct list_area *area)
{
	return area->count == 0 ? 0 : area->count - 1 + rows_here(desk, area, list->cursor);
}

int list_draw(const struct desk *desk, struct list_state *list, const struct list_area *area)
{
	int rows = area->rows;
	int row = area->top;
	int here = area->count > 0 ? rows_here(desk, area, list->cursor) : 0;
	bool tells = area->count - 1 + here > rows && rows >= TELLS_FROM_ROWS && here < rows;
	int shown;
	int first;

	if (area->count == 0 || rows < 1)
		return 0;
	shown = rows - tells - (here - 1);
	first = scroll(list, area->count, shown);
	for (int n = first; n < area->count && n < first + shown; n++) {
		bool at = n == list->cursor;
		struct list_line line = line_of(desk, area, n, at, row);

		terminal_put(desk->terminal, row, area->left, 1, ROLE_STRONG,
		             at ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		row += desk_paragraph(desk, row, line.col, columns_of(desk, &line), at ? here : 1,
		                      at ? line.here_role : line.role, line.words);
		row += area->air + (line.words[0] == '\0');
	}
	if (tells)
		more_draw(desk, area, row++, first, area->count - first - shown);
	return row - area->top;
}

void scroll_draw(const struct desk *desk, struct list_state *list, int count, int top, int rows,
                 int (*draw)(const struct desk *desk, int n, int row, int rows))
{
	int row = top;
	int n = list->cursor;

	terminal_cursor(desk->terminal, top, 1); /* the first one shown is what keys are about */
	while (n < count && row < top + rows) {
		row += draw(desk, n, row, top + rows - row);
		n++;
	}
	list->top = n - list->cursor;
}

/* No further than to where the last line is in sight. */
void scroll_move(struct list_state *list, int by, int count)
{
	if (by > 0 && list->cursor + list->top >= count)
		return;
	list_move(list, by, count);
}
