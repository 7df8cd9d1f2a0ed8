/*
 * plan_views.h - the views of what is to come: the forecast of a fruit, the plan of the day.
 */
#ifndef STILLROOM_SCREEN_PLAN_PLAN_VIEWS_H
#define STILLROOM_SCREEN_PLAN_PLAN_VIEWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "log/rows/plan.h"

struct ahead;
struct desk;
struct sources;
struct text;

/* The fruit that the forecast is of, and what it came to, when it was known last. */
const char *forecast_fruit(const struct desk *desk);
const struct ahead *forecast_ahead(const struct desk *desk);
/* What the forecast rests on, and with it what is missing for it. */
void forecast_sources(const struct desk *desk, struct sources *page);
/* A time of day as it is answered; false: it says what is wrong. */
void plan_time_now(int minutes, struct text *text);
bool plan_time_typed(struct desk *desk, const char *text, int *minutes);
/* Behind a form: among the rows. */
void plan_show_rows(struct desk *desk);

/* From `scroll_ms` after now on; `first` is the station at the top, and stays where the last is to be seen. */
void plan_ribbon_draw(const struct desk *desk, int64_t scroll_ms, int *first, int row, int rows);
/* What the accepted plan starts there next; NULL: nothing.  Valid until the next act. */
const struct log_plan_run *desk_planned_run(const struct desk *desk, int64_t station_id);
struct planned_batch {
	const struct log_plan_batch *planned; /* for this pot; NULL: nothing */
	int64_t at_ms;                        /* when; 0: now */
	bool juice_to_come;
	const struct log_plan_batch *begin; /* what can be begun here: that one, or while its juice is still to
	                                       come another; NULL: nothing that is planned */
};
void desk_planned_batch(const struct desk *desk, int64_t station_id, struct planned_batch *out);

#endif
