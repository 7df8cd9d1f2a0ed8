/*
 * recipe_check.c - the rules of a recipe, as recipe_check() of the engine has
 * them for a kitchen's own, and what the tables of processes and needs say.
 */
#include "bake/recipe.h"

#include <string.h>

#define CUP_UL INT64_C(236588)
#define PINT_OUNCES 16

/* Any letter of either size; `word` in small letters. */
static bool holds(const char *text, const char *word)
{
	for (; *text != '\0'; text++) {
		size_t i = 0;

		while (word[i] != '\0' && (text[i] | 0x20) == word[i])
			i++;
		if (word[i] == '\0')
			return true;
	}
	return false;
}

/* Its strength varies: Colorado State and Penn State Extension. */
static void check_lemon(const char *path, const struct ingredient *item, const struct larder *larder)
{
	size_t known = known_index(larder, item->name);

	if (item->supply == LEMON_JUICE && holds(item->form, "fresh"))
		bake_die(path, item->line, "fresh lemon juice as the acid; its strength varies");
	if (known == NONE)
		return;
	for (size_t i = 0; i < larder->class_count; i++) {
		if (strcmp(larder->classes[i].id, "fresh_lemon_juice_as_acid") == 0 &&
		    (larder->known[known].classes >> i & 1) != 0)
			bake_die(path, item->line, "fresh lemon juice as the acid; its strength varies");
	}
	if (larder->known[known].acid == ACID_LEMON && item->supply != LEMON_JUICE)
		bake_die(path, item->line, "lemon juice is the supply lemon_juice, from a bottle");
}

void check_ingredient(const char *path, const struct ingredient *item, const struct larder *larder)
{
	size_t measure = supplies[item->supply].measure;

	if (measure != ANY_MEASURE && item->amount.measure != measure)
		bake_die(path, item->line, "%s is kept by %s, and the amount is not", supply_names[item->supply],
		         measure == MEASURE_MASS ? "weight" : "volume");
	check_lemon(path, item, larder);
}

static bool has_supply(const struct recipe *recipe, size_t supply)
{
	for (size_t i = 0; i < recipe->count; i++) {
		if (recipe->ingredients[i].supply == supply)
			return true;
	}
	return false;
}

static void check_pectin(const struct recipe *recipe)
{
	/* USDA AIB 539 Guide 7; MSU sheet 01600961. */
	if (recipe->pectin == REGULAR && recipe->multiple_max > 1)
		bake_die(recipe->path, recipe->line, "regular pectin is never multiplied in one pot");
	if ((recipe->pectin == REGULAR) != (has_supply(recipe, PECTIN_REGULAR) || has_supply(recipe, PECTIN_LIQUID)) ||
	    (recipe->pectin == LOW_METHOXYL) != has_supply(recipe, PECTIN_LOW))
		bake_die(recipe->path, recipe->line, "the ingredients hold another pectin than \"%s\"",
		         pectin_names[recipe->pectin]);
	/* Added pectin needs no gel test: USDA AIB 539 Guide 7. */
	if (recipe->pectin != NO_PECTIN && recipe->gel_test != NO_GEL_TEST)
		bake_die(recipe->path, recipe->line, "a gel test with added pectin");
}

/* All of the sheet's figures are left to it, or none. */
static void check_sheet(const struct recipe *recipe)
{
	bool waits = recipe->multiple_max == 0;

	for (size_t i = 0; i < recipe->count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		bool of_sheet = item->supply == PECTIN_LOW || item->supply == CALCIUM_SOLUTION;

		if (of_sheet && (item->amount.amount == 0) != waits)
			bake_die(recipe->path, recipe->line, "multiple_max and the amount of %s: give both or neither",
			         item->name);
		if (waits && (item->supply == LEMON_JUICE || item->supply == CITRIC_ACID || item->supply == VINEGAR))
			bake_die(recipe->path, recipe->line, "the acid is the sheet's, too: leave %s out", item->name);
	}
	if (waits && recipe->pectin != LOW_METHOXYL)
		bake_die(recipe->path, recipe->line, "multiple_max is empty");
}

static void check_ranges(const struct recipe *recipe)
{
	if (recipe->count == 0)
		bake_die(recipe->path, recipe->line, "the recipe \"%s\" has no ingredients", recipe->name);
	if (recipe->boil_off_low > recipe->boil_off_high)
		bake_die(recipe->path, recipe->line, "boil_off_low_percent is above boil_off_high_percent");
	if (recipe->yield_low_ul > recipe->yield_high_ul || (recipe->yield_low_ul == 0) != (recipe->yield_high_ul == 0))
		bake_die(recipe->path, recipe->line, "yield_low and yield_high are no range");
	if (recipe->jars[0] == '\0' || (recipe->food[0] != '\0' && recipe->packs[0] == '\0'))
		bake_die(recipe->path, recipe->line, "no %s", recipe->jars[0] == '\0' ? "jars" : "packs");
}

/* The next word of a blank-separated list as an index; false at its end. */
static bool next_word(const char **list, char *word, size_t size)
{
	size_t length = strcspn(*list, " ");

	if (length == 0)
		return false;
	if (length >= size)
		length = size - 1;
	memcpy(word, *list, length);
	word[length] = '\0';
	*list += strcspn(*list, " ");
	*list += **list == ' ' ? 1 : 0;
	return true;
}

static size_t jar_of(const struct recipe *recipe, const struct jars *jars, const char *word)
{
	for (size_t i = 0; i < jars->count; i++) {
		if (strcmp(jars->row[i].name, word) == 0)
			return i;
	}
	bake_die(recipe->path, recipe->line, "unknown jar: \"%s\"", word);
}

/* The acid's supply, and what a spoon of it is in the ledger's measure. */
static int64_t dose_amount(const struct dose *dose, size_t *supply)
{
	*supply = dose->acid == ACID_LEMON ? LEMON_JUICE : dose->acid == ACID_CITRIC ? CITRIC_ACID : VINEGAR;
	if (supplies[*supply].mg_a_cup == 0)
		return dose->quart_ul;
	return (dose->quart_ul * supplies[*supply].mg_a_cup + CUP_UL / 2) / CUP_UL;
}

/* Do all its jars get a printed amount?  A pint's is not worked out from a quart's. */
static bool dose_fits(const struct dose *dose, const struct recipe *recipe, const struct tables *tables)
{
	const char *jars = recipe->jars;
	char jar[WORD_BYTES];

	while (next_word(&jars, jar, sizeof(jar))) {
		const struct jar *size = &tables->jars.row[jar_of(recipe, &tables->jars, jar)];

		if (size->fluid_ounces <= PINT_OUNCES && dose->pint_ul == 0)
			return false;
	}
	return true;
}

/* Acid in every jar where the food's rule asks for it (food.csv, acid_rule.csv). */
static void check_acid(const struct recipe *recipe, const struct tables *tables)
{
	const struct food *food = larder_food(&tables->larder, recipe->food);
	const struct rule *rule = food == NULL || food->rule == NONE ? NULL : &tables->larder.rules[food->rule];

	if (rule == NULL || rule->kind != PER_JAR)
		return;
	for (size_t i = 0; i < recipe->count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];

		for (size_t d = 0; d < rule->dose_count; d++) {
			size_t supply;
			int64_t least = dose_amount(&rule->doses[d], &supply);

			if (item->adding == IN_JAR && item->optional != OPTIONAL && item->supply == supply &&
			    item->amount.amount >= least && dose_fits(&rule->doses[d], recipe, tables))
				return;
		}
	}
	bake_die(recipe->path, recipe->line, "no acid in every jar as the rule \"%s\" prints it", rule->id);
}

static void check_packs(const struct recipe *recipe)
{
	const char *list = recipe->packs;
	char word[WORD_BYTES];

	while (next_word(&list, word, sizeof(word))) {
		size_t i = 0;

		while (i < PACK_COUNT && strcmp(pack_names[i], word) != 0)
			i++;
		if (i == PACK_COUNT)
			bake_die(recipe->path, recipe->line, "unknown pack: \"%s\"", word);
	}
}

/* Is there a row that may be used for this pack and jar?  Its acidity and its
 * headspace must be the recipe's. */
static bool pair_in_table(const struct recipe *recipe, const struct processes *processes, const char *pack, size_t jar)
{
	bool found = false;

	for (size_t i = 0; i < processes->count; i++) {
		const struct process *row = &processes->row[i];

		if (strcmp(row->food, recipe->food) != 0 || strcmp(pack_names[row->pack], pack) != 0 ||
		    row->jar < jar || !process_offered(row))
			continue;
		if (row->acidity != recipe->acidity)
			bake_die(recipe->path, recipe->line, "the food is %s in %s:%ld", acidity_names[row->acidity],
			         row->path, row->line);
		if (row->jar == jar && row->headspace_thou != recipe->headspace_thou)
			bake_die(recipe->path, recipe->line, "the headspace differs from %s:%ld", row->path, row->line);
		found = true;
	}
	return found;
}

/* Each word of `list` must go with some word of `others`: pints may ask for jars
 * boiled first where quarts do not. */
static void check_pairs(const struct recipe *recipe, const struct tables *tables, const char *list, const char *others,
                        bool jars)
{
	char word[WORD_BYTES];
	char other[WORD_BYTES] = "";

	while (next_word(&list, word, sizeof(word))) {
		const char *left = others;
		bool found = false;

		while (next_word(&left, other, sizeof(other))) {
			size_t jar = jar_of(recipe, &tables->jars, jars ? word : other);

			found = pair_in_table(recipe, &tables->processes, jars ? other : word, jar) || found;
		}
		if (!found)
			bake_die(recipe->path, recipe->line, "no process of \"%s\", %s, in a %s jar may be offered",
			         recipe->food, jars ? other : word, jars ? word : other);
	}
}

static void check_jars(const struct recipe *recipe, const struct tables *tables)
{
	if (recipe->food[0] == '\0')
		return;
	check_pairs(recipe, tables, recipe->jars, recipe->packs, true);
	check_pairs(recipe, tables, recipe->packs, recipe->jars, false);
}

/* An alternative takes the place of a line that is counted. */
static void check_choices(const struct recipe *recipe)
{
	for (size_t i = 0; i < recipe->count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		bool found = item->instead_of[0] == '\0';

		for (size_t k = 0; !found && k < recipe->count; k++)
			found = recipe->ingredients[k].instead_of[0] == '\0' &&
			        strcmp(recipe->ingredients[k].name, item->instead_of) == 0;
		if (!found)
			bake_die(recipe->path, recipe->line, "\"%s\" is instead of \"%s\", which is not in it",
			         item->name, item->instead_of);
	}
}

static void check_vinegar(const struct recipe *recipe)
{
	if ((recipe->vinegar_percent > 0 || recipe->acid_swap == LEMON_FOR_VINEGAR) && !has_supply(recipe, VINEGAR))
		bake_die(recipe->path, recipe->line, "something is said of vinegar, and there is none");
}

void check_recipe(const struct recipe *recipe, const struct tables *tables)
{
	check_ranges(recipe);
	check_pectin(recipe);
	check_choices(recipe);
	check_vinegar(recipe);
	check_sheet(recipe);
	check_acid(recipe, tables);
	check_packs(recipe);
	if (tables->processes.count > 0)
		check_jars(recipe, tables);
}
