/*
 * views.c - see views.h.
 */
#include "screen/app/views.h"

#include "screen/ui/entry_view.h"

/* clang-format off */
#define VIEW_BY_NAME(TAG, word) [VIEW_##TAG] = &(word##_view),
const struct view *const screen_views[] = { EACH_VIEW(VIEW_BY_NAME) };

#define ENTRY_BY_NAME(TAG, word) [ENTRY_##TAG] = &(word##_form),
const struct entry_form *const screen_entries[] = { EACH_ENTRY(ENTRY_BY_NAME) };
/* clang-format on */
