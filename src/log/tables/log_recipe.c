/* log_recipe.c - recipes of this kitchen, and what goes into them. */
#include <stdlib.h>
#include <string.h>

#include "log/query/query.h"
#include "log/tables/columns.h"
#include "log/tables/stock.h"

/* clang-format off */
#define IN(member) COLUMN(struct log_recipe, member)
static const struct log_column columns[] = {
	{ IN(id), .kind = CELL_NUMBER, OUT("recipe", "number; the kitchen's own recipes only") },
	{ IN(name), .kind = CELL_TEXT, OUT("name", "") },
	{ IN(food), .kind = CELL_TEXT, OUT("food", "of the process tables; empty: no published process") },
	{ IN(packs), .kind = CELL_TEXT, OUT("packs", "blank-separated") },
	{ IN(jars), .kind = CELL_TEXT, OUT("jars", "sizes, blank-separated") },
	{ IN(pectin), .kind = CELL_WORD, WORDS(pectin), OUT("pectin", "{}") },
	{ IN(acidity), .kind = CELL_WORD, WORDS(acidity), OUT("acidity", "{}") },
	{ IN(gel_test), .kind = CELL_FLAG, OUT("gel_test", "") },
	{ IN(boil_hold_s), .kind = CELL_NUMBER, OUT("boil_hold_s", "seconds of full boil") },
	{ IN(headspace_thou), .kind = CELL_NUMBER, .scale = 3, OUT("headspace_in", "inches") },
	{ IN(multiple_max), .kind = CELL_NUMBER, OUT("multiple_max", "batches one pot may hold") },
	{ IN(foam_percent), .kind = CELL_NUMBER, OUT("foam_percent", "of the pot kept free") },
	{ IN(boil_off_low_percent), .kind = CELL_NUMBER, OUT("boil_off_low_percent", "") },
	{ IN(boil_off_high_percent), .kind = CELL_NUMBER, OUT("boil_off_high_percent", "") },
	{ IN(caution), .kind = CELL_TEXT, OUT("caution", "") },
	{ IN(source), .kind = CELL_TEXT, OUT("source", "") },
	{ IN(retired), .kind = CELL_FLAG, OUT("retired", "") },
	{ IN(sheet_minutes), .kind = CELL_NUMBER,
	  OUT("sheet_minutes", "of process by the sheet of its pectin; 0: it prints none") },
	{ IN(vinegar_percent), .kind = CELL_NUMBER, OUT("vinegar_percent", "acidity of its vinegar; 0: not said") },
	{ IN(acid_swap), .kind = CELL_FLAG, OUT("acid_swap", "bottled lemon juice may replace its vinegar") },
	{ IN(yield_low_ul), .kind = CELL_NUMBER, .scale = 3, OUT("yield_low_ml", "printed; 0: none is") },
	{ IN(yield_high_ul), .kind = CELL_NUMBER, .scale = 3, OUT("yield_high_ml", "") },
};
#undef IN

#define IN(member) COLUMN(struct log_recipe_ingredient, member)
static const struct log_column ingredient_columns[] = {
	{ .column = "recipe_id", .kind = CELL_NUMBER, OUT("recipe", "") },
	{ .column = "place", .kind = CELL_NUMBER, .by_hand = true, OUT("place", "from 1") },
	{ IN(name), .kind = CELL_TEXT, OUT("name", "") },
	{ IN(supply), .kind = CELL_WORD, WORDS(supply), OUT("supply", "kind it is taken from") },
	{ IN(measure), .kind = CELL_WORD, WORDS(measure) },
	{ .kind = CELL_TEXT, SELECTED(UNIT_OF_MEASURE), OUT("unit", "g, ml or each") },
	{ IN(amount), .kind = CELL_NUMBER },
	{ .kind = CELL_NUMBER, .scale = 3, SELECTED("amount * " FACTOR_OF_MEASURE),
	  OUT("amount", "of one batch; in_jar: of a quart jar") },
	{ IN(form), .kind = CELL_TEXT, OUT("form", "") },
	{ IN(adding), .kind = CELL_WORD, WORDS(own_adding), OUT("adding", "{}") },
	{ IN(optional), .kind = CELL_FLAG, OUT("optional", "") },
	{ IN(known), .kind = CELL_TEXT, OUT("known", "ingredient it was picked as; empty: on no list") },
	{ IN(amount_most), .kind = CELL_NUMBER },
	{ .kind = CELL_NUMBER, .scale = 3, SELECTED("amount_most * " FACTOR_OF_MEASURE),
	  OUT("amount_most", "of a range, or the same: no more than it; 0: just the amount") },
};
#undef IN
/* clang-format on */

const struct log_table table_of_recipes = {
	.name = "recipes",
	.meaning = "the kitchen's own recipes",
	COLUMNS(columns),
	.table = "recipe",
	.row_size = sizeof(struct log_recipe),
	.from = "recipe",
	.order = "recipe.id",
};

const struct log_table table_of_recipe_ingredients = {
	.name = "recipe_ingredients",
	.meaning = "what goes into them",
	COLUMNS(ingredient_columns),
	.table = "recipe_ingredient",
	.row_size = sizeof(struct log_recipe_ingredient),
	.from = "recipe_ingredient",
	.order = "recipe_ingredient.recipe_id, recipe_ingredient.place",
};

static bool read_ingredients(struct log *log, struct log_recipe *recipe, struct fault *fault)
{
	struct query query = query_start(log, INGREDIENT_LIST);
	bind_integer(&query, recipe->id);
	struct log_recipe_ingredient *rows;
	size_t count;
	if (!query_rows(&query, &table_of_recipe_ingredients, &rows, &count, fault))
		return false;
	if (count > OWN_INGREDIENTS_MAX)
		count = OWN_INGREDIENTS_MAX; /* the CHECK of the place rules it out */
	if (count > 0)
		memcpy(recipe->ingredients, rows, count * sizeof(recipe->ingredients[0]));
	recipe->ingredient_count = count;
	free(rows);
	return true;
}

static bool read_recipes(struct log *log, enum statement statement, struct log_recipe **rows, size_t *count,
                         struct fault *fault)
{
	struct query query = query_start(log, statement);
	struct log_recipe *recipes_here;
	*rows = NULL;
	if (!query_rows(&query, &table_of_recipes, &recipes_here, count, fault))
		return false;
	for (size_t i = 0; i < *count; i++) {
		if (!read_ingredients(log, &recipes_here[i], fault)) {
			free(recipes_here);
			*count = 0;
			return false;
		}
	}
	*rows = recipes_here;
	return true;
}

bool log_recipes(struct log *log, struct log_recipe **rows, size_t *count, struct fault *fault)
{
	return read_recipes(log, RECIPE_LIST, rows, count, fault);
}

bool log_recipes_all(struct log *log, struct log_recipe **rows, size_t *count, struct fault *fault)
{
	return read_recipes(log, RECIPE_ALL, rows, count, fault);
}

bool log_recipe_get(struct log *log, int64_t id, struct log_recipe *out, struct fault *fault)
{
	struct query query = query_start(log, RECIPE_GET);
	bind_integer(&query, id);
	return query_row(&query, &table_of_recipes, out, "such recipe", fault) && read_ingredients(log, out, fault);
}
static bool put_ingredient(struct log *log, const struct log_recipe_ingredient *row, int64_t recipe_id, size_t place,
                           struct fault *fault)
{
	struct query query = query_start(log, INGREDIENT_INSERT);
	bind_row(&query, &table_of_recipe_ingredients, row);
	bind_integer(&query, (int64_t)place);
	bind_integer(&query, recipe_id);
	return query_run(&query, fault) || put_spoilt(log);
}

/* Replaced as a whole; the capture nets out what stays the same. */
static bool put_ingredients(struct log *log, const struct log_recipe *row, struct fault *fault)
{
	struct query clear = query_start(log, INGREDIENT_CLEAR);
	bind_integer(&clear, row->id);
	if (!query_run(&clear, fault))
		return put_spoilt(log);
	for (size_t i = 0; i < row->ingredient_count && i < OWN_INGREDIENTS_MAX; i++)
		if (!put_ingredient(log, &row->ingredients[i], row->id, i + 1, fault))
			return false;
	return true;
}

bool log_put_recipe(struct log *log, struct log_recipe *row, struct fault *fault)
{
	int64_t id = row->id;
	struct query query = query_start(log, id == 0 ? RECIPE_INSERT : RECIPE_UPDATE);
	bind_row(&query, &table_of_recipes, row);
	if (put_row(&query, &row->id, 0, "recipe", fault) && put_ingredients(log, row, fault))
		return true;
	row->id = id;
	return false;
}
