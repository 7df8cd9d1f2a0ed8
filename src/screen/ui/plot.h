/*
 * plot.h - figures as bars, ranges and columns.
 */
#ifndef STILLROOM_SCREEN_UI_PLOT_H
#define STILLROOM_SCREEN_UI_PLOT_H

#include "screen/term/role.h"

struct desk;

/* A bar, and a range with a mark in it, over `cols` columns; shares from 0 to 1. */
void plot_bar(const struct desk *desk, int row, int col, int cols, enum role role, double share);
void plot_range(const struct desk *desk, int row, int col, int cols, double low, double at, double high);
/* Columns side by side, each `each` wide, over `rows` rows; the marked one stands out. */
void plot_columns(const struct desk *desk, int top, int rows, int col, int each, const double *shares, int count,
                  int marked);

#endif
