/*
 * recipe_acts.c - the kitchen's own recipes, kept.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "kitchen/recipe/own.h"
#include "log/tables/stock.h"

/* One that is put away takes nobody's name. */
static bool name_is_free(const struct kitchen *kitchen, const struct log_recipe *recipe, struct fault *fault)
{
	if (recipe->retired)
		return true;
	for (size_t i = 0; i < kitchen_recipe_count(kitchen); i++) {
		int64_t id = kitchen_recipe_own_id(kitchen, i);

		if ((id != 0 && id == recipe->id) || recipe_awaits_sheet(kitchen_recipe(kitchen, i)) ||
		    !text_same_name(kitchen_recipe(kitchen, i)->name, recipe->name))
			continue;
		return fault_set(fault, FAULT_REFUSED,
		                 id == 0 ? "\"%s\" is a built-in recipe; give yours another name."
		                         : "There is a recipe \"%s\" already; give this one another name.",
		                 recipe->name);
	}
	return true;
}

/* One that is put away is never cooked again. */
static bool check_standing(const struct log_recipe *recipe, struct fault *fault)
{
	struct recipe_standing standing;

	kitchen_recipe_draft_stands(recipe, &standing);
	return recipe->retired || standing.origin != ORIGIN_REFUSED ||
	       fault_set(fault, FAULT_REFUSED, "Not kept as %s: %s.", recipe->food, standing.words);
}

bool put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, enum verb verb, const char *amounts,
                struct fault *fault)
{
	struct recipe view;
	struct act act;

	recipe_over(recipe, &view);
	if (!recipe_check(&view, fault) || !check_standing(recipe, fault) || !name_is_free(kitchen, recipe, fault) ||
	    !act_begin(&act, kitchen, verb, 0, fault))
		return false;
	if (!log_put_recipe(kitchen->log, recipe, fault))
		return act_fail(&act);
	act_says_text(&act, recipe->name);
	if (amounts != NULL) {
		act_says_text(&act, amounts);
	} else {
		act_says_number(&act, (int64_t)recipe->ingredient_count);
		act_says_text(&act, recipe->food);
		act_says_number(&act, recipe->retired);
	}
	return act_commit(&act, fault);
}

bool kitchen_put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, struct fault *fault)
{
	return put_recipe(kitchen, recipe, recipe->id == 0 ? VERB_ADD_RECIPE : VERB_EDIT_RECIPE, NULL, fault);
}

bool kitchen_own_recipe(const struct kitchen *kitchen, int64_t id, struct log_recipe *out, struct fault *fault)
{
	return log_recipe_get(kitchen->log, id, out, fault);
}
