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
struct entry_form;
struct view;

extern const struct view batch_view;
extern const struct view sheet_view;
extern const struct view fill_view;
extern const struct view card_view;
extern const struct view juice_view;
extern const struct view recipe_view;
/* A new recipe of one's own, and a line of the one shown (screen/ui/entry_view.h). */
extern const struct entry_form own_recipe_form;
extern const struct entry_form ingredient_form;

/* The own recipe that is shown, as it is written now; it is saved there. */
const struct log_recipe *recipe_draft(const struct desk *desk);
void recipe_draft_is(struct desk *desk, const struct log_recipe *recipe);

void batch_view_go_on(struct desk *desk); /* back from the sheet of its recipe */
void sheet_view_enter(struct desk *desk, const char *recipe);

#endif
