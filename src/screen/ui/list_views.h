/*
 * list_views.h - views that only show: the story of a load, the keys, and the question before
 * leaving.
 */
#ifndef STILLROOM_SCREEN_UI_LIST_VIEWS_H
#define STILLROOM_SCREEN_UI_LIST_VIEWS_H

struct view;

extern const struct view story_view;
extern const struct view help_view;
extern const struct view leave_view;

#endif
