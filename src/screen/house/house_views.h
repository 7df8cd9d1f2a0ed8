/*
 * house_views.h - the views of the house: the kitchen, its stations, lid boxes, supplies and
 * own recipes.
 */
#ifndef STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H
#define STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H

struct desk;
struct entry_form;
struct view;

extern const struct view house_view;

/* What is entered of the house (screen/ui/entry_view.h). */
extern const struct entry_form elevation_form;
extern const struct entry_form name_form;
extern const struct entry_form station_form;
extern const struct entry_form times_form;
extern const struct entry_form units_form;

void house_view_refresh(struct desk *desk);
void house_view_welcome(struct desk *desk); /* what a kitchen without stations is asked for first */

#endif
