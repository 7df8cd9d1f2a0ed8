/*
 * house_views.h - the views of the house: the kitchen, its stations, lid boxes, supplies and
 * own recipes; and the first steps of a new one.
 */
#ifndef STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H
#define STILLROOM_SCREEN_HOUSE_HOUSE_VIEWS_H

#include <stdbool.h>

struct desk;
struct warning;

/* What ENTRY_READING is opened for. */
enum house_reading { READS_WATER, READS_AIR, READS_STORE };

/* What a warning says to whoever is here already, where the elevation is a line; NULL: as it stands. */
const char *house_warned(const struct warning *warning);
/* Is the kitchen still without its elevation, or without a station?  Then the board opens with its first steps. */
bool first_steps_wanted(const struct desk *desk);
/* Likewise, or was nothing canned in it yet?  Then the board leads back to its first steps. */
bool first_steps_open(const struct desk *desk);

#endif
