/*
 * board_views.h - the views of the board: what runs, what rings, what is warned of, the day.
 */
#ifndef STILLROOM_SCREEN_BOARD_BOARD_VIEWS_H
#define STILLROOM_SCREEN_BOARD_BOARD_VIEWS_H

#include <stddef.h>
#include <stdint.h>

#include "kitchen/board/look.h"
#include "screen/ui/list.h"

struct desk;
struct text;

/* The most urgent clock in tall digits, in as many rows as urgent_rows() says. */
void urgent_draw(const struct desk *desk, int row, int rows);
int urgent_rows(const struct desk *desk, int room);
void strips_draw(const struct desk *desk, int row, int rows, int rows_each);
/* What rings, large, in as many rows as ringing_rows() says; 0: no room. */
int ringing_rows(const struct desk *desk, int room);
void ringing_draw(const struct desk *desk, int row, int rows);
/* The process of a load, juice drawn, jars filled: what is of least weight. */
void strip_beside_words(const struct desk *desk, const struct strip *strip, struct text *text);

#endif
