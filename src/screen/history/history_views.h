/*
 * history_views.h - the views of looking back: the years, one of them, what was made, one of that.
 */
#ifndef STILLROOM_SCREEN_HISTORY_HISTORY_VIEWS_H
#define STILLROOM_SCREEN_HISTORY_HISTORY_VIEWS_H

#include <stdbool.h>

struct desk;

void seasons_view_enter(struct desk *desk);
/* The year that stands `by` further back among the years; 0: all of them, which stand before the newest.
 * False: there is none. */
bool seasons_view_beside(const struct desk *desk, int season, int by, int *out);
void works_view_enter(struct desk *desk, int season); /* 0: every one */
void works_view_search(struct desk *desk);            /* asks for words */
void works_view_lot(struct desk *desk);               /* the batch and the loads of what is open */

#endif
