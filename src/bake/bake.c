/*
 * bake - turns the reference tables and the log's layout in schema/ into C.
 *
 *   bake process JAR.csv PACK.csv PROCESS.csv...
 *                                         const struct process_row process_rows[]
 *   bake jar JAR.csv                      const struct jar_size jar_sizes[]
 *   bake pack PACK.csv                    const struct pack pack_rows[]
 *   bake product PRODUCT.csv              const struct product products[]
 *   bake yield YIELD.csv                  const struct yield_row yield_rows[]
 *   bake drying DRYING.csv KEEP.csv       const struct drying_row drying_rows[], drying_keeps[]
 *   bake food NEEDS... JAR.csv PACK.csv PROCESS.csv...
 *                                         const struct food foods[] and what it refers to
 *   bake layout LOG.sql [NNNN_name.sql...]
 *                                         const struct layouts log_layouts
 *
 * NEEDS are food.csv, acid_rule.csv, ingredient_class.csv, own_recipe.csv,
 * ingredient.csv and suspect_step.csv, in this order.  Recipes are baked by
 * bake_recipes, which is linked with these tables.
 *
 * Runs on the machine that builds, needs nothing but a C library, and prints to
 * standard output.  It is linked with the engine's own readers and words.  A wrong
 * figure in a table could hurt somebody, so nothing is guessed or passed over: any
 * defect ends the build with FILE:LINE: what.  CSV is that of base/csv.h without blank
 * lines, with one header line that is checked name by name.
 */
#include "bake/bake.h"

#include "bake/food.h"

#include <stdio.h>
#include <string.h>

int main(int argc, char **argv)
{
	const char *verb = argc >= 3 ? argv[1] : "";

	if (argc >= 5 && strcmp(verb, "process") == 0) {
		bake_process(argv + 2, argc - 2);
	} else if (argc == 3 && strcmp(verb, "jar") == 0) {
		bake_jar(argv[2]);
	} else if (argc == 3 && strcmp(verb, "pack") == 0) {
		bake_pack(argv[2]);
	} else if (argc == 3 && strcmp(verb, "product") == 0) {
		bake_product(argv[2]);
	} else if (argc == 3 && strcmp(verb, "yield") == 0) {
		bake_yield(argv[2]);
	} else if (argc == 4 && strcmp(verb, "drying") == 0) {
		bake_drying(argv[2], argv[3]);
	} else if (argc > 4 + FOOD_FILES && strcmp(verb, "food") == 0) {
		bake_food(argv + 2, argv + 2 + FOOD_FILES, argc - 2 - FOOD_FILES);
	} else if (strcmp(verb, "layout") == 0) {
		bake_layout(argv[2], argv + 3, argc - 3);
	} else {
		fprintf(stderr, "usage: bake process JAR.csv PACK.csv PROCESS.csv... | jar JAR.csv | pack PACK.csv | "
		                "product PRODUCT.csv | yield YIELD.csv | drying DRYING.csv KEEP.csv | "
		                "food NEEDS... JAR.csv PACK.csv PROCESS.csv... | layout LOG.sql [NNNN_name.sql...]\n"
		                "NEEDS: food.csv acid_rule.csv ingredient_class.csv own_recipe.csv ingredient.csv "
		                "suspect_step.csv\n");
		return 2;
	}
	return bake_end();
}
