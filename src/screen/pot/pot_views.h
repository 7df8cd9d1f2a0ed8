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
struct sources;

/* The own recipe that is shown, as it is written now; it is saved there. */
const struct log_recipe *recipe_draft(const struct desk *desk);
void recipe_draft_is(struct desk *desk, const struct log_recipe *recipe);

/* --- a line of a recipe, asked for in both forms --- */

/* What it can be: the known ingredients, and one on no list at the end. */
int ingredient_choices(const struct desk *desk);
void ingredient_choice_words(const struct desk *desk, int n, char *buffer, size_t size);
const char *ingredient_choice_name(const struct desk *desk, int n); /* NULL: on no list */
const char *ingredient_choice_also(const struct desk *desk, int n);
void ingredient_is_choice(struct log_recipe_ingredient *line, int n); /* nothing else stays but when it goes in */
/* What is typed of it; false: it says what is right. */
bool ingredient_name_typed(struct desk *desk, struct log_recipe_ingredient *line, const char *text);
bool ingredient_amount_typed(struct desk *desk, struct log_recipe_ingredient *line, const char *text);
void ingredient_amount_words(const struct desk *desk, const struct log_recipe_ingredient *line, struct text *text);
/* When it goes in: each `enum adding` that an own recipe can have. */
extern const char *const ingredient_whens[]; /* by enum adding; NULL behind the last */

void batch_view_go_on(struct desk *desk);               /* back from the sheet of its recipe */
const char *batch_view_recipe(const struct desk *desk); /* "" none is chosen yet */
/* For the page behind @: what is left to the sheet of a pectin. */
void sheet_sources(struct sources *page);

#endif
