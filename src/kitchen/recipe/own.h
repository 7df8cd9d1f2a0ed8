/*
 * own.h - the kitchen's own recipes.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_RECIPE_OWN_H
#define STILLROOM_KITCHEN_RECIPE_OWN_H

#include "kitchen/board/board.h"
#include "kitchen/board/verbs.h"

/* Own recipes only: checked by recipe_check; its food must be in the tables or "".
 * Refused with the reason when what is in it must not be canned as that food. */
bool kitchen_put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, struct fault *fault);
bool kitchen_own_recipe(const struct kitchen *kitchen, int64_t id, struct log_recipe *out, struct fault *fault);
/* Check an own recipe and keep it, by another name: one act.  Inside the kitchen floor only. */
bool put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, enum verb verb, const char *amounts,
                struct fault *fault);

#endif
