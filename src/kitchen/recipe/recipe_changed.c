/*
 * recipe_changed.c - what of a recipe still holds when its lines are changed, and what does not, in words.
 */
#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/recipe/own.h"

static bool same_line(const struct log_recipe_ingredient *a, const struct log_recipe_ingredient *b)
{
	return a->supply == b->supply && a->measure == b->measure && a->amount == b->amount &&
	       a->amount_most == b->amount_most && a->adding == b->adding && strcmp(a->known, b->known) == 0;
}

static bool same_lines(const struct log_recipe *a, const struct log_recipe *b)
{
	bool same = a->ingredient_count == b->ingredient_count;

	for (size_t i = 0; same && i < a->ingredient_count; i++)
		same = same_line(&a->ingredients[i], &b->ingredients[i]);
	return same;
}

static int64_t sum_of(const struct log_recipe *recipe, enum supply_kind supply)
{
	int64_t sum = 0;

	for (size_t i = 0; i < recipe->ingredient_count; i++)
		if (recipe->ingredients[i].supply == supply)
			sum += recipe->ingredients[i].amount;
	return sum;
}

void recipe_keep_what_holds(const struct log_recipe *was, struct log_recipe *now)
{
	if (!same_lines(was, now)) {
		now->yield_low_ul = 0;
		now->yield_high_ul = 0;
	}
	if (sum_of(now, SUPPLY_VINEGAR) == 0) {
		now->vinegar_percent = 0;
		now->acid_swap = ACID_SWAP_NONE;
	}
}

/* --- in words ------------------------------------------------------------------------------------ */

static void amount_or_none(struct text *text, enum supply_kind supply, int64_t amount, enum unit_system units)
{
	char words[64];

	amount_exact_words(supply_measure(supply), supply, amount, units, words, sizeof(words));
	text_add(text, "%s", amount > 0 ? words : "none");
}

static void acid_changed(const struct log_recipe *was, const struct log_recipe *now, enum unit_system units,
                         struct text *text)
{
	static const enum supply_kind acids[] = { SUPPLY_VINEGAR, SUPPLY_LEMON_JUICE, SUPPLY_CITRIC_ACID };
	const char *before = "ITS ACID IS CHANGED: ";

	for (size_t i = 0; i < sizeof(acids) / sizeof(acids[0]); i++) {
		int64_t had = sum_of(was, acids[i]);
		int64_t has = sum_of(now, acids[i]);

		if (had == has)
			continue;
		text_add(text, "%s%s ", before, supply_words(acids[i]));
		amount_or_none(text, acids[i], has, units);
		text_add(text, ", was ");
		amount_or_none(text, acids[i], had, units);
		before = "; ";
	}
	if (before[0] == ';')
		text_add(text, ". ");
}

/* The line of the same name; NULL: it is not there any more. */
static const struct log_recipe_ingredient *line_named(const struct log_recipe *recipe, const char *name)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++)
		if (strcmp(recipe->ingredients[i].name, name) == 0)
			return &recipe->ingredients[i];
	return NULL;
}

static void range_words(const struct log_recipe *was, const struct log_recipe *now, enum unit_system units,
                        struct text *text)
{
	for (size_t i = 0; i < was->ingredient_count; i++) {
		const struct log_recipe_ingredient *line = &was->ingredients[i];
		const struct log_recipe_ingredient *here = line_named(now, line->name);
		struct amount_range range = { line->measure, line->amount, line->amount_most };
		char words[AMOUNT_RANGE_BYTES];

		if (line->amount_most == 0 || here == NULL || here->amount_most > 0)
			continue;
		amount_range_words(&range, line->supply, units, words, sizeof(words));
		text_add(text, "Of %s it was %s. ", line->name, words);
	}
}

static void yield_words(const struct log_recipe *was, enum unit_system units, struct text *text)
{
	struct amount_range range = { MEASURE_VOLUME, was->yield_low_ul, 0 };
	char words[AMOUNT_RANGE_BYTES];

	if (was->yield_high_ul > was->yield_low_ul)
		range.most = was->yield_high_ul;
	amount_range_words(&range, SUPPLY_OTHER, units, words, sizeof(words));
	text_add(text, "What a batch fills, %s, was of other lines and is left out. ", words);
}

void recipe_changed_words(const struct log_recipe *was, const struct log_recipe *now, enum unit_system units,
                          struct text *text)
{
	const struct known_ingredient *fruit = recipe_fruit(now);
	struct log_recipe printed = *was;

	if (fruit != NULL)
		recipe_set_fruit(&printed, fruit); /* lines are found by their names */
	acid_changed(&printed, now, units, text);
	if (was->vinegar_percent > 0 && now->vinegar_percent == 0)
		text_add(text, "With its vinegar goes that it is of %d %%. ", was->vinegar_percent);
	range_words(&printed, now, units, text);
	if (was->yield_low_ul > 0 && now->yield_low_ul == 0)
		yield_words(was, units, text);
}
