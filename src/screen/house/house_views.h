/*
 * house_views.h - the views of the house: the kitchen, its stations, lid boxes, supplies and
 * own recipes; and the first steps of a new one.
 */
#ifndef STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H
#define STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H

#include <stdbool.h>

struct desk;
struct entry_form;
struct warning;

/* What is entered of the house (screen/ui/entry_view.h). */
extern const struct entry_form elevation_form;
extern const struct entry_form name_form;
extern const struct entry_form station_form;
extern const struct entry_form times_form;
extern const struct entry_form units_form;

void house_view_refresh(struct desk *desk);
/* What a warning says to whoever is here already, where the elevation is a line; NULL: as it stands. */
const char *house_warned(const struct warning *warning);
/* Is the kitchen still without its elevation, or without a station?  Then the board opens with its first steps. */
bool first_steps_wanted(const struct desk *desk);

#endif
