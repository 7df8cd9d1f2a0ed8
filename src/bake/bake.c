/*
 * bake - turns the reference tables and the log's layout in schema/ into C.
 *
 *   bake process JAR.csv PROCESS.csv...   const struct process_row process_rows[]
 *   bake jar JAR.csv                      const struct jar_size jar_sizes[]
 *   bake product PRODUCT.csv              const struct product products[]
 *   bake yield YIELD.csv                  const struct yield_row yield_rows[]
 *   bake recipe RECIPE.csv INGREDIENT.csv... [-- JAR.csv NEEDS... PROCESS.csv...]
 *                                         const struct recipe recipes[]
 *   bake step STEP.csv RECIPE.csv...      const struct recipe_step recipe_steps[]
 *   bake food NEEDS... JAR.csv PROCESS.csv...
 *                                         const struct food foods[] and what it refers to
 *   bake layout LOG.sql [NNNN_name.sql...]
 *                                         const struct layouts log_layouts
 *
 * NEEDS are food.csv, acid_rule.csv, ingredient_class.csv, own_recipe.csv,
 * ingredient.csv and suspect_step.csv, in this order.
 *
 * Runs on the machine that builds, needs nothing but a C library, and prints to
 * standard output.  A wrong figure in a table could hurt somebody, so nothing
 * is guessed or passed over: any defect ends the build with FILE:LINE: what.
 * CSV is RFC 4180 (quoted fields, doubled quotes, LF or CRLF), UTF-8, with one
 * header line that is checked name by name.
 */
#include "bake/bake.h"

#include "bake/food.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

/* Pairs of files up to "--", then the other tables. */
static void recipe_words(int argc, char **argv)
{
	int tables = 2;

	while (tables < argc && strcmp(argv[tables], "--") != 0)
		tables++;
	if (tables + 2 + FOOD_FILES < argc)
		bake_recipe(argv + 2, tables - 2, argv[tables + 1], argv + tables + 2, argv + tables + 2 + FOOD_FILES,
		            argc - tables - 2 - FOOD_FILES);
	else
		bake_recipe(argv + 2, tables - 2, NULL, NULL, NULL, 0);
}

int main(int argc, char **argv)
{
	const char *verb = argc >= 3 ? argv[1] : "";

	if (argc >= 4 && strcmp(verb, "process") == 0) {
		bake_process(argv[2], argv + 3, argc - 3);
	} else if (argc == 3 && strcmp(verb, "jar") == 0) {
		bake_jar(argv[2]);
	} else if (argc == 3 && strcmp(verb, "product") == 0) {
		bake_product(argv[2]);
	} else if (argc == 3 && strcmp(verb, "yield") == 0) {
		bake_yield(argv[2]);
	} else if (argc >= 4 && strcmp(verb, "recipe") == 0) {
		recipe_words(argc, argv);
	} else if (argc >= 4 && strcmp(verb, "step") == 0) {
		bake_step(argv[2], argv + 3, argc - 3);
	} else if (argc > 3 + FOOD_FILES && strcmp(verb, "food") == 0) {
		bake_food(argv + 2, argv[2 + FOOD_FILES], argv + 3 + FOOD_FILES, argc - 3 - FOOD_FILES);
	} else if (strcmp(verb, "layout") == 0) {
		bake_layout(argv[2], argv + 3, argc - 3);
	} else {
		fprintf(stderr, "usage: bake process JAR.csv PROCESS.csv... | jar JAR.csv | "
		                "product PRODUCT.csv | yield YIELD.csv | recipe RECIPE.csv INGREDIENT.csv... "
		                "[-- JAR.csv NEEDS... PROCESS.csv...] | step STEP.csv RECIPE.csv... | "
		                "food NEEDS... JAR.csv PROCESS.csv... | layout LOG.sql [NNNN_name.sql...]\n"
		                "NEEDS: food.csv acid_rule.csv ingredient_class.csv own_recipe.csv ingredient.csv "
		                "suspect_step.csv\n");
		return 2;
	}
	bake_release();
	if (fflush(stdout) != 0 || ferror(stdout))
		bake_die("standard output", 0, "cannot be written: %s", strerror(errno));
	return 0;
}
