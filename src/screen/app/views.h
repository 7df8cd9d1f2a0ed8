/*
 * views.h - the table of all views.  It stands above them: a view knows others by name.
 */
#ifndef STILLROOM_SCREEN_APP_VIEWS_H
#define STILLROOM_SCREEN_APP_VIEWS_H

struct entry_form;
struct view;

extern const struct view *const screen_views[];         /* VIEW_COUNT, by name: for desk->views */
extern const struct entry_form *const screen_entries[]; /* ENTRY_COUNT, by name: for desk->entries */

#endif
