/*
 * views.c - see views.h.
 */
#include "screen/app/views.h"

#include "screen/board/board_views.h"
#include "screen/canner/canner_views.h"
#include "screen/history/history_views.h"
#include "screen/house/house_views.h"
#include "screen/pantry/pantry_views.h"
#include "screen/plan/plan_views.h"
#include "screen/pot/pot_views.h"
#include "screen/stock/stock_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

/* clang-format off */
#define VIEW_BY_NAME(TAG, word) [VIEW_##TAG] = &(word##_view),
const struct view *const screen_views[] = { EACH_VIEW(VIEW_BY_NAME) };
/* clang-format on */

const struct entry_form *const screen_entries[] = {
	[ENTRY_ELEVATION] = &elevation_form,
	[ENTRY_NAME] = &name_form,
	[ENTRY_STATION] = &station_form,
	[ENTRY_TIMES] = &times_form,
	[ENTRY_UNITS] = &units_form,
	[ENTRY_LID_BOX] = &lid_box_form,
	[ENTRY_SUPPLY] = &supply_form,
	[ENTRY_JUICE] = &juice_form,
	[ENTRY_RECKONED] = &reckoned_form,
	[ENTRY_PLANNED_RUN] = &planned_run_form,
	[ENTRY_PLANNED_BATCH] = &planned_batch_form,
	[ENTRY_OWN_RECIPE] = &own_recipe_form,
	[ENTRY_INGREDIENT] = &ingredient_form,
	[ENTRY_DRYING] = &drying_form,
	[ENTRY_TRAYS] = &trays_form,
};
_Static_assert(sizeof(screen_entries) / sizeof(screen_entries[0]) == ENTRY_COUNT, "a form for every name");
