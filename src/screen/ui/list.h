/*
 * list.h - lists of lines: a cursor that is kept in sight, or lines of several rows each
 * that are scrolled through.
 *
 * A view with a list says which it is (`list` of view.h); its keys Up and Down are list_above and
 * list_below, and it draws it by list_draw.
 */
#ifndef STILLROOM_SCREEN_UI_LIST_H
#define STILLROOM_SCREEN_UI_LIST_H

#include <stdbool.h>

#include "screen/term/terminal.h"

struct desk;

struct list_state {
	int cursor;
	int top;
};

void list_move(struct list_state *list, int by, int count);

/* For the tables of a view: the line above, and below, in its list; ten lines. */
void list_above(struct desk *desk);
void list_below(struct desk *desk);
void list_page_above(struct desk *desk);
void list_page_below(struct desk *desk);

#define LIST_WORDS_MAX 400
#define NO_ROW (-1) /* nothing drawn there is seen */

/* A line of a list. */
struct list_line {
	/* Which one is asked for: the n-th, to stand in `row`; NO_ROW: only for what it would be. */
	int n;
	int row;
	bool here;      /* the cursor is there */
	const void *of; /* the area's */

	char words[LIST_WORDS_MAX];
	enum role role;      /* plain at first */
	enum role here_role; /* at the cursor; selected at first */
	int col;             /* where the words begin, and go on in further rows; behind the mark at first */
	int room;            /* columns they may take; 0: to the edge */
};

struct list_area {
	int top;
	int rows;
	int left; /* the column of the mark */
	int air;  /* empty rows between two lines: for a list that has the room */
	int count;
	const void *of; /* what the lines are of, where the desk does not know; may be NULL */
	/* Fills in a line; what stands before its column it draws itself.  One without words it draws
	 * itself, in one row. */
	void (*line)(const struct desk *desk, struct list_line *line);
};

/* Rows that all of them take: no more than area->rows when the one at the cursor is higher than that. */
int list_rows(const struct desk *desk, const struct list_state *list, const struct list_area *area);
/* Draw those that find room: one row each, cut at the edge, and the one at the cursor whole.
 * Where some are not seen the last row says how many.  Returns the rows it took. */
int list_draw(const struct desk *desk, struct list_state *list, const struct list_area *area);

/* Draw lines `list->cursor` and on between `top` and `top + rows`, each as high as it
 * must be; how many were drawn is left in list->top.  `draw` draws one, in `rows` at
 * most, and says how many it took. */
void scroll_draw(const struct desk *desk, struct list_state *list, int count, int top, int rows,
                 int (*draw)(const struct desk *desk, int n, int row, int rows));
void scroll_move(struct list_state *list, int by, int count);

#endif
