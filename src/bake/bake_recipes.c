/*
 * bake_recipes - turns the recipes in schema/ into C.
 *
 *   bake_recipes recipe RECIPE.csv INGREDIENT.csv...   const struct recipe recipes[]
 *   bake_recipes step STEP.csv RECIPE.csv...           const struct recipe_step recipe_steps[]
 *
 * As bake, and linked besides with the tables that bake has made: each recipe is
 * checked by the engine's own rules against the very processes and needs it will meet.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <string.h>

int main(int argc, char **argv)
{
	if (argc >= 4 && argc % 2 == 0 && strcmp(argv[1], "recipe") == 0) {
		bake_recipe(argv + 2, argc - 2);
	} else if (argc >= 4 && strcmp(argv[1], "step") == 0) {
		bake_step(argv[2], argv + 3, argc - 3);
	} else {
		fprintf(stderr,
		        "usage: bake_recipes recipe RECIPE.csv INGREDIENT.csv... | step STEP.csv RECIPE.csv...\n");
		return 2;
	}
	return bake_end();
}
