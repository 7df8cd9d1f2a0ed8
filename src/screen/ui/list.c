/*
 * list.c - see list.h: the one way in which lines are moved among and drawn.
 */
#include "screen/ui/list.h"

#include <string.h>

#include "base/text.h"
#include "screen/ui/desk.h"
#include "screen/ui/paragraph.h"

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
