/*
 * book.h - the recipes that the kitchen knows, read with the board.
 */
#ifndef STILLROOM_KITCHEN_BOARD_BOOK_H
#define STILLROOM_KITCHEN_BOARD_BOOK_H

#include "kitchen/board/board.h"

/* Every recipe, built-in ones first (or, sheet.h, what completes one), then the kitchen's own; valid until the
 * next act. */
size_t kitchen_recipe_count(const struct kitchen *kitchen);
const struct recipe *kitchen_recipe(const struct kitchen *kitchen, size_t n);
const struct recipe *kitchen_recipe_named(const struct kitchen *kitchen, const char *name);
int64_t kitchen_recipe_own_id(const struct kitchen *kitchen, size_t n); /* 0: built in */
/* Where a recipe stands: the guide's own as printed, one of the house by what is in it
 * (engine/food/food.h: own_recipe_judge). */
void recipe_stands(const struct recipe *recipe, struct recipe_standing *out);
/* The same of one being written down. */
void kitchen_recipe_draft_stands(const struct log_recipe *recipe, struct recipe_standing *out);
/* Batches one pot may hold: as the recipe says, and of one of the house no more than its
 * class or the pectin's sheet. */
int multiple_allowed(const struct recipe *recipe);

#endif
