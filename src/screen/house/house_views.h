/*
 * house_views.h - the view of the house: the kitchen, its stations, lid boxes, supplies and
 * own recipes.
 */
#ifndef STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H
#define STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H

struct desk;
struct view;

extern const struct view house_view;

void house_view_refresh(struct desk *desk);
void house_view_welcome(struct desk *desk); /* what a kitchen without stations is asked for first */

#endif
