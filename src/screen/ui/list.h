/*
 * list.h - lists of lines: a cursor that is kept in sight, or lines of several rows each
 * that are scrolled through.
 *
 * A view with a list says which it is (`list` of view.h); its keys Up and Down are list_above and
 * list_below, and it draws it by list_lines_draw.
 */
#ifndef STILLROOM_SCREEN_UI_LIST_H
#define STILLROOM_SCREEN_UI_LIST_H

#include <stdbool.h>

struct desk;

struct list_state {
	int cursor;
	int top;
};

void list_move(struct list_state *list, int by, int count);
/* First row to show so that the cursor is within `rows`. */
int list_scroll(struct list_state *list, int count, int rows);

/* For the tables of a view: the line above, and below, in its list. */
void list_above(struct desk *desk);
void list_below(struct desk *desk);

/* Draw the lines around the cursor, a row each, the mark before that under it; returns the rows
 * used.  `line` draws the n-th from column LIST_COL on. */
#define LIST_COL 3
int list_lines_draw(const struct desk *desk, struct list_state *list, int count, int top, int rows,
                    void (*line)(const struct desk *desk, int n, int row, bool here));

/* Draw lines `list->cursor` and on between `top` and `top + rows`, each as high as it
 * must be; how many were drawn is left in list->top.  `draw` draws one, in `rows` at
 * most, and says how many it took. */
void scroll_draw(const struct desk *desk, struct list_state *list, int count, int top, int rows,
                 int (*draw)(const struct desk *desk, int n, int row, int rows));
void scroll_move(struct list_state *list, int by, int count);

#endif
