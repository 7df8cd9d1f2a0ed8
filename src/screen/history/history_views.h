/*
 * history_views.h - the views of looking back: the years, one of them, what was made, one of that.
 */
#ifndef STILLROOM_SCREEN_HISTORY_HISTORY_VIEWS_H
#define STILLROOM_SCREEN_HISTORY_HISTORY_VIEWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/history/seasons.h"
#include "screen/ui/list.h"
#include "screen/ui/picker.h"
#include "screen/ui/view.h"

struct desk;

/* Looking back: the seasons, one of them, what was made. */
struct back_card {
	struct log_season *seasons;
	size_t season_count;
	struct list_state season_list;
	enum season_measure measure;
	int year; /* whose figures are shown */
	struct figure *figures;
	size_t figure_count;
	struct list_state figure_list; /* cursor: first line drawn; top: how many were */
	struct log_wish wish;
	struct works page;
	struct list_state page_list;
	int page_rows;    /* that found room in the last frame */
	int64_t older_id; /* where the next page begins, to either side */
	int64_t newer_id;
	bool picking_product; /* else a state */
	struct picker picker;
	struct log_name *products;
	size_t product_count;
};

struct back_card *back_card(const struct desk *desk);

void seasons_view_enter(struct desk *desk);
void works_view_enter(struct desk *desk, int season); /* 0: every one */
void works_view_search(struct desk *desk);            /* asks for words */
void works_view_lot(struct desk *desk);               /* the batch and the loads of what is open */

#endif
