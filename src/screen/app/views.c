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
#include "screen/ui/list_views.h"

const struct view *const screen_views[] = {
	[VIEW_BOARD] = &board_view,
	[VIEW_START] = &start_view,
	[VIEW_BATCH] = &batch_view,
	[VIEW_SHEET] = &sheet_view,
	[VIEW_FILL] = &fill_view,
	[VIEW_CARD] = &card_view,
	[VIEW_JUICE] = &juice_view,
	[VIEW_LOADER] = &loader_view,
	[VIEW_DAY] = &day_view,
	[VIEW_PLAN] = &plan_view,
	[VIEW_EXCEPTIONS] = &exceptions_view,
	[VIEW_SEALS] = &seals_view,
	[VIEW_HOUSE] = &house_view,
	[VIEW_FIRST_STEPS] = &first_steps_view,
	[VIEW_SUPPLIES] = &supplies_view,
	[VIEW_LEDGER] = &ledger_view,
	[VIEW_FORECAST] = &forecast_view,
	[VIEW_SHORTAGE] = &shortage_view,
	[VIEW_RECIPE] = &recipe_view,
	[VIEW_WARNINGS] = &warnings_view,
	[VIEW_FATES] = &fates_view,
	[VIEW_REPROCESS] = &reprocess_view,
	[VIEW_PANTRY] = &pantry_view,
	[VIEW_RECALLS] = &recalls_view,
	[VIEW_TRACE] = &trace_view,
	[VIEW_STEPS] = &steps_view,
	[VIEW_SIGNS] = &signs_view,
	[VIEW_STORY] = &story_view,
	[VIEW_SEASONS] = &seasons_view,
	[VIEW_SEASON] = &season_view,
	[VIEW_WORKS] = &works_view,
	[VIEW_WORKS_PICK] = &works_pick_view,
	[VIEW_PAST] = &past_view,
	[VIEW_SOURCES] = &sources_view,
	[VIEW_HELP] = &help_view,
	[VIEW_ENTRY] = &entry_view,
	[VIEW_LEAVE] = &leave_view,
};
_Static_assert(sizeof(screen_views) / sizeof(screen_views[0]) == VIEW_COUNT, "a view for every name");

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
