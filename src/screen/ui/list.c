/*
 * list.c - see list.h.
 */
#include "screen/ui/list.h"

#include "screen/ui/desk.h"

void list_move(struct list_state *list, int by, int count)
{
	list->cursor += by;
	if (list->cursor >= count)
		list->cursor = count - 1;
	if (list->cursor < 0)
		list->cursor = 0;
}

int list_scroll(struct list_state *list, int count, int rows)
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

int list_lines_draw(const struct desk *desk, struct list_state *list, int count, int top, int rows,
                    void (*line)(const struct desk *desk, int n, int row, bool here))
{
	int first = list_scroll(list, count, rows);
	int n = first;

	for (; n < count && n - first < rows; n++) {
		bool here = n == list->cursor;

		terminal_put(desk->terminal, top + n - first, 1, 1, ROLE_STRONG,
		             here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		line(desk, n, top + n - first, here);
	}
	return n - first;
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
