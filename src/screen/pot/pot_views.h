/*
 * pot_views.h - the views of juice and batches: begun, followed, filled, and own recipes.
 */
#ifndef STILLROOM_SCREEN_POT_POT_VIEWS_H
#define STILLROOM_SCREEN_POT_POT_VIEWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/sheet.h"
#include "kitchen/stock/acid_asked.h"
#include "screen/ui/list.h"
#include "screen/ui/picker.h"

struct desk;
struct view;

extern const struct view batch_view;
extern const struct view sheet_view;
extern const struct view fill_view;
extern const struct view card_view;
extern const struct view juice_view;
extern const struct view recipe_view;

void batch_view_go_on(struct desk *desk); /* back from the sheet of its recipe */
void sheet_view_enter(struct desk *desk, const char *recipe);

#endif
