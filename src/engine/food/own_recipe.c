/*
 * own_recipe.c - where a kitchen's own recipe stands, by what is in it.
 *
 * Each line is judged by the known ingredient it was picked as; names are never
 * read.  The worst that is found counts: refused before unknown before the class.
 */
#include "engine/food/food.h"

#include <stdarg.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/scaling.h"

#define MILLE 1000
#define SUGAR_SLACK_MG 1000 /* amounts are rounded once when they are written down */
#define VOLUME_SLACK_UL 100
#define NO_VOLUME (-1)
#define AMOUNT_MOST INT64_C(1000000000000) /* a thousand tons is no recipe; keeps the sums small */
#define REASON_BYTES 200

struct judge {
	const struct recipe *recipe;
	const struct food *food;
	const struct own_condition *condition; /* of the food and this pectin; NULL */
	enum origin found;                     /* the worst so far */
	char reason[REASON_BYTES];
	bool acid_asked;
};

__attribute__((format(printf, 3, 4))) static void write_words(char *buffer, size_t size, const char *format, ...)
{
	struct text text = text_over(buffer, size);
	va_list args;

	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
}

/* The first reason of the worst kind is kept. */
static void unknown(struct judge *judge, const char *what, const char *why)
{
	if (judge->found >= ORIGIN_OWN_UNKNOWN)
		return;
	judge->found = ORIGIN_OWN_UNKNOWN;
	write_words(judge->reason, sizeof(judge->reason), "%s%s", what, why);
}

static void refuse(struct judge *judge, const char *what, const char *why, const char *instead)
{
	if (judge->found >= ORIGIN_REFUSED)
		return;
	judge->found = ORIGIN_REFUSED;
	write_words(judge->reason, sizeof(judge->reason), "%s: %s; %s", what, why, instead);
}

/* --- amounts --------------------------------------------------------------------- */

/* Of a range, as much as may be. */
static int64_t most_of(const struct ingredient *item)
{
	return item->amount_most > item->amount ? item->amount_most : item->amount;
}

/* uL, at the most; NO_VOLUME: told in pieces.  Fruit by weight is taken at 1 g a mL, as everywhere (scaling.h). */
static int64_t volume_of(const struct ingredient *item)
{
	int64_t mg_per_cup = supply_mg_per_cup(item->supply);

	if (item->measure == MEASURE_EACH || most_of(item) > AMOUNT_MOST)
		return NO_VOLUME;
	if (item->measure == MEASURE_VOLUME)
		return most_of(item);
	return mg_per_cup > 0 ? most_of(item) * CUP_UL / mg_per_cup : most_of(item);
}

/* Of everything that counts as herb and flavoring together; NO_VOLUME: in pieces. */
static int64_t flavoring_of(const struct recipe *recipe)
{
	int64_t sum = 0;

	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct known_ingredient *known = ingredient_picked(&recipe->ingredients[i]);
		int64_t volume = volume_of(&recipe->ingredients[i]);

		if (known == NULL || known->jam_most_ul == 0)
			continue;
		if (volume == NO_VOLUME)
			return NO_VOLUME;
		sum += volume;
	}
	return sum;
}

/* What surely goes into the pot of a supply, in the measure of its ledger: of "at most 2 cups" nothing. */
static int64_t supply_sum(const struct recipe *recipe, enum supply_kind supply)
{
	int64_t sum = 0;

	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		const struct known_ingredient *known = ingredient_picked(item);

		if (item->supply == supply && known != NULL && known->supply == supply && !item->optional &&
		    item->amount_most != item->amount && item->adding != ADD_IN_JAR &&
		    item->measure == supply_measure(supply) && volume_of(item) != NO_VOLUME)
			sum += item->amount;
	}
	return sum;
}

/* --- one ingredient ---------------------------------------------------------------- */

static bool made_of(const struct food *food, const struct known_ingredient *known)
{
	for (size_t i = 0; i < food->made_of_count; i++) {
		if (food->made_of[i] == known)
			return true;
	}
	return false;
}

/* A little herb or flavoring in a jam. */
static bool little_flavoring(const struct judge *judge, const struct known_ingredient *known)
{
	int64_t sum = flavoring_of(judge->recipe);

	return judge->food->own_recipe == OWN_JAM_JELLY && known->jam_most_ul > 0 && sum != NO_VOLUME &&
	       sum <= known->jam_most_ul + VOLUME_SLACK_UL;
}

/* Butter against foam, as far as the condition of the class lets it in. */
static bool little_butter(const struct judge *judge, const struct ingredient *item)
{
	int64_t most = judge->condition == NULL ? 0 : judge->condition->butter_most_ul;
	int64_t sum = 0;

	for (size_t i = 0; i < judge->recipe->ingredient_count; i++) {
		if (judge->recipe->ingredients[i].supply != SUPPLY_BUTTER)
			continue;
		if (volume_of(&judge->recipe->ingredients[i]) == NO_VOLUME)
			return false;
		sum += volume_of(&judge->recipe->ingredients[i]);
	}
	return item->supply == SUPPLY_BUTTER && most > 0 && sum <= most + VOLUME_SLACK_UL;
}

/* Refused by the first class that the food bars. */
static bool barred(struct judge *judge, const struct ingredient *item, const struct known_ingredient *known)
{
	uint64_t bits = known->classes & judge->food->must_not_contain;
	size_t i = 0;

	if (bits == 0 || made_of(judge->food, known) || little_flavoring(judge, known) || little_butter(judge, item))
		return false;
	while ((bits >> i & 1) == 0)
		i++;
	refuse(judge, known->name, ingredient_classes[i].reason, ingredient_classes[i].instead);
	return true;
}

static void judge_fruit(struct judge *judge, const struct known_ingredient *known)
{
	const struct own_fruit *line;

	if (judge->food->own_recipe == OWN_NONE) {
		if (!made_of(judge->food, known))
			refuse(judge, known->name, "it has no line for this food", "use a tested recipe, or freeze it");
		return;
	}
	line = own_fruit_of(judge->food, known);
	if (line == NULL || line->status == FRUIT_EXCLUDED)
		refuse(judge, known->name, line == NULL ? "unknown acidity" : line->reason,
		       "freeze it, or keep it in the fridge");
	else if (line->status == FRUIT_TESTED_RECIPE_ONLY)
		refuse(judge, known->name, line->reason, "use a tested recipe for it, or freeze it");
}

static void judge_harmless(struct judge *judge, const struct known_ingredient *known)
{
	bool belongs = (known->harmless_in >> judge->food->own_recipe & 1) != 0;

	if (!belongs)
		unknown(judge, known->name, " is no part of this class");
	else if (judge->food->own_recipe == OWN_JAM_JELLY && known->jam_most_ul > 0 && !little_flavoring(judge, known))
		unknown(judge, known->name, ": a jam takes a teaspoon of herb and flavoring at most");
}

static void judge_ingredient(struct judge *judge, const struct ingredient *item)
{
	const struct known_ingredient *known = ingredient_picked(item);

	if (known == NULL) {
		unknown(judge, item->name, " is on no list: pick what it is");
		return;
	}
	/* The line of a fruit tells more than its class. */
	if (known->is == INGREDIENT_FRUIT)
		judge_fruit(judge, known);
	if (barred(judge, item, known) || known->is == INGREDIENT_FRUIT)
		return;
	if (known->is == INGREDIENT_HARMLESS)
		judge_harmless(judge, known);
	else if (known->is == INGREDIENT_ACID && judge->food->own_recipe == OWN_JUICE)
		unknown(judge, known->name, ": nothing but sugar goes into this juice");
	else if (known->is == INGREDIENT_OF_CLASS && !made_of(judge->food, known) && !little_flavoring(judge, known) &&
	         !little_butter(judge, item))
		refuse(judge, known->name, "it has no line for this food", "use a tested recipe, or freeze it");
}

/* --- the food ------------------------------------------------------------------------ */

/* Foods whose acid is all that keeps them take no recipe of one's own. */
static void judge_food(struct judge *judge)
{
	const struct acid_rule *rule = judge->food->acid_rule;
	char words[REASON_BYTES];

	if (judge->food->own_recipe != OWN_NONE || rule == NULL)
		return;
	if (rule->kind == ACID_PER_JAR) {
		judge->acid_asked = true;
		if (acid_in_every_jar(rule, judge->recipe))
			return;
		acid_rule_words(rule, words, sizeof(words));
		refuse(judge, judge->food->name, "no acid in every jar", words);
	} else if (rule->kind == ACID_BY_FERMENTATION || judge->food->acidity != ACIDITY_ACID) {
		refuse(judge, judge->food->name, "its acid is measured for a tested recipe only",
		       "use the tested recipe, or keep this in the fridge or freezer");
	}
}

/* --- the class -------------------------------------------------------------------------- */

/* What the lines of the fruit ask for, all fruit together. */
struct asked {
	size_t fruits;
	bool all_juice;
	bool unmeasured; /* some fruit is told in pieces */
	bool with_acid;
	bool with_sugar;
	int64_t fruit_ul;
	int64_t sugar_mg;
	int64_t acid_ul;
};

static void add_fruit(struct asked *asked, const struct ingredient *item, const struct own_fruit *line)
{
	int64_t volume = volume_of(item);
	int64_t sugar_for = item->measure == MEASURE_VOLUME
	                        ? volume * supply_mg_per_cup(SUPPLY_SUGAR) / CUP_UL
	                        : most_of(item); /* by weight: sugar is the lighter of the two, so stricter */

	asked->fruits++;
	asked->all_juice = asked->all_juice && item->supply == SUPPLY_JUICE;
	asked->with_acid = asked->with_acid || line->status == FRUIT_ALLOWED_WITH_ACID;
	asked->with_sugar = asked->with_sugar || line->sugar_least_permille > 0;
	if (volume == NO_VOLUME) {
		asked->unmeasured = true;
		return;
	}
	asked->fruit_ul += volume;
	asked->sugar_mg += sugar_for * line->sugar_least_permille / MILLE;
	if (line->acid_for_ul > 0)
		asked->acid_ul += volume * line->acid_least_ul / line->acid_for_ul;
}

static struct asked asked_of(const struct judge *judge)
{
	struct asked asked = { .all_juice = true };

	for (size_t i = 0; i < judge->recipe->ingredient_count; i++) {
		const struct ingredient *item = &judge->recipe->ingredients[i];
		const struct known_ingredient *known = ingredient_picked(item);
		const struct own_fruit *line =
		    known == NULL || known->is != INGREDIENT_FRUIT ? NULL : own_fruit_of(judge->food, known);

		if (line != NULL)
			add_fruit(&asked, item, line);
	}
	return asked;
}

static void judge_acid(struct judge *judge, const struct asked *asked)
{
	int64_t acid = supply_sum(judge->recipe, SUPPLY_LEMON_JUICE);
	struct measured least;
	char words[REASON_BYTES];

	if (!asked->with_acid)
		return;
	judge->acid_asked = true;
	if (asked->unmeasured) {
		unknown(judge, "say the fruit by volume or weight", ", so that its acid can be judged");
		return;
	}
	if (acid > 0 && acid + VOLUME_SLACK_UL >= asked->acid_ul)
		return;
	measure_amount(MEASURE_VOLUME, SUPPLY_LEMON_JUICE, asked->acid_ul, UNITS_US, &least);
	write_words(words, sizeof(words), "put in %s of bottled lemon juice or more", least.words);
	refuse(judge, judge->food->name, "fruit of middling acidity without enough acid", words);
}

static void judge_sugar(struct judge *judge, const struct asked *asked)
{
	int64_t sugar = supply_sum(judge->recipe, SUPPLY_SUGAR);

	if (judge->condition->pectin == PECTIN_REGULAR && sugar == 0)
		unknown(judge, "no sugar", ": regular pectin takes the sugar of its sheet");
	if (asked->with_sugar && asked->unmeasured)
		unknown(judge, "say the fruit by volume or weight", ", so that its sugar can be judged");
	if (sugar + SUGAR_SLACK_MG < asked->sugar_mg)
		unknown(judge, "less sugar", " than is printed for this fruit");
}

static void judge_class(struct judge *judge, struct recipe_standing *out)
{
	struct asked asked = asked_of(judge);

	if (judge->food->own_recipe == OWN_NONE) {
		unknown(judge, "", "");
		return;
	}
	judge_acid(judge, &asked);
	if (judge->condition == NULL) {
		unknown(judge, "this class is not made with ", pectin_words(judge->recipe->pectin));
		return;
	}
	judge_sugar(judge, &asked);
	if (asked.fruits == 0)
		unknown(judge, "no fruit", " of the class is in it");
	if (judge->condition->juice_most_ul > 0 &&
	    (asked.unmeasured || asked.fruit_ul > judge->condition->juice_most_ul + VOLUME_SLACK_UL))
		unknown(judge, "more juice", " at once than the class takes");
	if (judge->found == ORIGIN_NOT_SAID) {
		judge->found = ORIGIN_OWN_CLASS;
		write_words(out->words, sizeof(out->words), "own recipe, class: %s",
		            asked.all_juice ? judge->condition->words_of_juice : judge->condition->words);
	}
}

/* --- together --------------------------------------------------------------------------- */

static const struct own_condition *condition_of(const struct food *food, enum pectin pectin)
{
	for (size_t i = 0; i < own_condition_count; i++) {
		if (own_conditions[i].pectin == pectin && strcmp(own_conditions[i].food, food->name) == 0)
			return &own_conditions[i];
	}
	return NULL;
}

/* One batch where the class, or regular pectin, says so; else as its sheet says. */
static int multiple_of(const struct judge *judge)
{
	int own = judge->recipe->multiple_max > 1 ? judge->recipe->multiple_max : 1;

	if (judge->found == ORIGIN_REFUSED)
		return 0;
	if (judge->condition == NULL)
		return judge->food->own_recipe == OWN_JAM_JELLY || judge->recipe->pectin == PECTIN_REGULAR ? 1 : own;
	return judge->condition->multiple_max > 0 && judge->condition->multiple_max < own
	           ? judge->condition->multiple_max
	           : own;
}

static void say(const struct judge *judge, struct recipe_standing *out)
{
	if (judge->found == ORIGIN_REFUSED)
		write_words(out->words, sizeof(out->words), "%s", judge->reason);
	else if (judge->found == ORIGIN_OWN_UNKNOWN)
		write_words(out->words, sizeof(out->words), "not a tested recipe; the minutes are those of %s%s%s%s",
		            judge->food->name, judge->reason[0] == '\0' ? "" : " (", judge->reason,
		            judge->reason[0] == '\0' ? "" : ")");
}

static void without_food(const struct recipe *recipe, struct recipe_standing *out)
{
	bool named = recipe->food != NULL && recipe->food[0] != '\0';

	out->origin = named ? ORIGIN_REFUSED : ORIGIN_OWN_UNKNOWN;
	out->multiple_max = named ? 0 : 1;
	write_words(out->words, sizeof(out->words), "%s%s",
	            named ? "the tables have no food " : "not a tested recipe, and no published process",
	            named ? recipe->food : "");
}

void own_recipe_judge(const struct recipe *recipe, struct recipe_standing *out)
{
	struct judge judge = { .recipe = recipe, .food = food_named(recipe->food) };

	*out = (struct recipe_standing){ .pectin = recipe->pectin };
	if (judge.food == NULL) {
		without_food(recipe, out);
		return;
	}
	judge.condition = condition_of(judge.food, recipe->pectin);
	for (size_t i = 0; i < recipe->ingredient_count; i++)
		judge_ingredient(&judge, &recipe->ingredients[i]);
	judge_food(&judge);
	judge_class(&judge, out);
	out->origin = judge.found;
	out->acid_asked = judge.acid_asked;
	out->multiple_max = multiple_of(&judge);
	say(&judge, out);
}
