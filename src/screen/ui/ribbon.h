/*
 * ribbon.h - every canner over one time axis, and the axis, of the planned day too.
 */
#ifndef STILLROOM_SCREEN_UI_RIBBON_H
#define STILLROOM_SCREEN_UI_RIBBON_H

#include <stdint.h>

struct desk;

/* A time axis over `cols` columns from `col` on. */
struct axis {
	int col; /* before it: what the ribbon is of */
	int cols;
	int64_t from_ms; /* relative to now */
	int64_t per_col_ms;
};
struct axis axis_of_plan(int cols, int64_t scroll_ms);
int axis_label_cols(const struct axis *axis);
int axis_column(const struct axis *axis, int64_t ms); /* 0 to cols */
void axis_draw(const struct desk *desk, const struct axis *axis, int row);
/* Which station a ribbon is of; its digit alone where there is no room for its name. */
void station_label_draw(const struct desk *desk, const struct axis *axis, int digit, const char *name, int row);

/* Rows the ribbon would use of `room`; 0: not worth it. */
int ribbon_rows(const struct desk *desk, int room);
void ribbon_draw(const struct desk *desk, int row, int rows);

#endif
