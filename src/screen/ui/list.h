/*
 * list.h - lists of lines: a cursor that is kept in sight, or lines of several rows each
 * that are scrolled through.
 */
#ifndef STILLROOM_SCREEN_UI_LIST_H
#define STILLROOM_SCREEN_UI_LIST_H

struct desk;

struct list_state {
	int cursor;
	int top;
};

void list_move(struct list_state *list, int by, int count);
/* First row to show so that the cursor is within `rows`. */
int list_scroll(struct list_state *list, int count, int rows);

/* Draw lines `list->cursor` and on between `top` and `top + rows`, each as high as it
 * must be; how many were drawn is left in list->top.  `draw` draws one, in `rows` at
 * most, and says how many it took. */
void scroll_draw(const struct desk *desk, struct list_state *list, int count, int top, int rows,
                 int (*draw)(const struct desk *desk, int n, int row, int rows));
void scroll_move(struct list_state *list, int by, int count);

#endif
