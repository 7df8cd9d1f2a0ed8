/* Where a kitchen's own recipe stands. */
#include <check.h>
#include <stdio.h>
#include <string.h>

#include "engine/food/food.h"
#include "engine/recipe/scaling.h"
#include "support/tests.h"

#define WITH_PECTIN "jam or jelly with added pectin"
#define JAM "jam without added pectin"
#define JELLY "jelly without added pectin"
#define PUREE "fruit puree (not fig or tomato)"
#define CUP INT64_C(236588)
#define TBSP (CUP / 16)

static struct recipe recipe;
static struct recipe_standing standing;

static void begin(const char *food, enum pectin pectin)
{
	recipe = (struct recipe){ .name = "house",
		                  .food = food,
		                  .jars = "half_pint pint",
		                  .pectin = pectin,
		                  .multiple_max = 3,
		                  .source = "house recipe, no source" };
}

/* As it is typed in cups: of what is kept by weight, the weight of so many cups. */
static void put(const char *known, enum supply_kind supply, int64_t ul)
{
	int64_t mg_per_cup = supply_mg_per_cup(supply);
	enum measure measure = supply == SUPPLY_OTHER ? MEASURE_VOLUME : supply_measure(supply);

	recipe.ingredients[recipe.ingredient_count++] = (struct ingredient){
		.name = known,
		.known = known,
		.supply = supply,
		.measure = measure,
		.form = "",
		.amount = mg_per_cup > 0 ? (ul * mg_per_cup + CUP / 2) / CUP : ul,
	};
}

static enum origin judged(void)
{
	own_recipe_judge(&recipe, &standing);
	return standing.origin;
}

static void stands(enum origin origin, const char *words)
{
	ck_assert_msg(judged() == origin, "%s: %s (%s)", recipe.food, origin_name(standing.origin), standing.words);
	ck_assert_msg(strstr(standing.words, words) != NULL, "\"%s\" not in: %s", words, standing.words);
	ck_assert_int_eq(standing.multiple_max > 0, origin != ORIGIN_REFUSED);
}

/* Everything a class asks for, with enough sugar and acid for any of its fruit. */
static void begin_class(const struct food *food, const char *fruit)
{
	bool pectin = strcmp(food->name, WITH_PECTIN) == 0;
	bool juice = food->own_recipe == OWN_JUICE || strcmp(food->name, JELLY) == 0;

	begin(food->name, pectin ? PECTIN_REGULAR : PECTIN_NONE);
	put(fruit, juice ? SUPPLY_JUICE : SUPPLY_OTHER, 4 * CUP);
	put("sugar", SUPPLY_SUGAR, 7 * CUP);
	if (pectin)
		put("regular pectin", SUPPLY_PECTIN_REGULAR, 49000);
	if (food->own_recipe == OWN_JAM_JELLY)
		put("bottled lemon juice", SUPPLY_LEMON_JUICE, CUP / 2);
}

/* --- every line of the table ------------------------------------------------------------ */

START_TEST(every_listed_fruit_stands_where_its_line_says)
{
	size_t allowed = 0;
	size_t refused = 0;

	for (size_t i = 0; i < own_fruit_count; i++) {
		const struct own_fruit *line = &own_fruits[i];
		bool may = line->status == FRUIT_ALLOWED || line->status == FRUIT_ALLOWED_WITH_ACID;

		if (known_ingredient_named(line->fruit) == NULL)
			continue; /* "any other" */
		begin_class(food_named(line->food), line->fruit);
		ck_assert_msg(judged() == (may ? ORIGIN_OWN_CLASS : ORIGIN_REFUSED), "%s in %s: %s, %s", line->fruit,
		              line->food, origin_name(standing.origin), standing.words);
		allowed += may;
		refused += !may;
	}
	ck_assert_uint_ge(allowed, 70);
	ck_assert_uint_ge(refused, 45);
}
END_TEST

START_TEST(a_fruit_without_a_line_is_refused_everywhere)
{
	for (size_t f = 0; f < food_count; f++) {
		for (size_t i = 0; foods[f].own_recipe != OWN_NONE && i < known_ingredient_count; i++) {
			const struct known_ingredient *fruit = &known_ingredients[i];
			const struct own_fruit *line;

			if (fruit->is != INGREDIENT_FRUIT)
				continue;
			line = own_fruit_of(&foods[f], fruit);
			if (line != NULL && line->status <= FRUIT_ALLOWED_WITH_ACID)
				continue;
			begin_class(&foods[f], fruit->name);
			ck_assert_msg(judged() == ORIGIN_REFUSED, "%s in %s", fruit->name, foods[f].name);
		}
	}
}
END_TEST

/* A barred ingredient refuses whatever else is in, for each food and each that it bars. */
START_TEST(every_barred_class_refuses_in_every_food)
{
	size_t cases = 0;

	for (size_t f = 0; f < food_count; f++) {
		for (size_t i = 0; i < known_ingredient_count; i++) {
			const struct known_ingredient *item = &known_ingredients[i];
			bool part = false;

			for (size_t m = 0; m < foods[f].made_of_count; m++)
				part = part || foods[f].made_of[m] == item;
			if ((item->classes & foods[f].must_not_contain) == 0 || part)
				continue;
			begin(foods[f].name, PECTIN_NONE);
			put("sugar", SUPPLY_SUGAR, 4 * CUP);
			put(item->name, SUPPLY_OTHER, 2 * CUP);
			ck_assert_msg(judged() == ORIGIN_REFUSED, "%s in %s: %s", item->name, foods[f].name,
			              standing.words);
			cases++;
		}
	}
	ck_assert_uint_ge(cases, 5000);
}
END_TEST

/* No own recipe of vegetables in vinegar, salsa, ketchup, ferments or fillings can be trusted. */
START_TEST(acid_by_a_recipe_takes_no_recipe_of_ones_own)
{
	for (size_t f = 0; f < food_count; f++) {
		const struct acid_rule *rule = foods[f].acid_rule;

		if (rule == NULL || rule->kind == ACID_PER_JAR || foods[f].own_recipe != OWN_NONE ||
		    (rule->kind == ACID_BY_RECIPE && foods[f].acidity == ACIDITY_ACID))
			continue;
		begin(foods[f].name, PECTIN_NONE);
		put("vinegar", SUPPLY_VINEGAR, 6 * CUP);
		put("bottled lemon juice", SUPPLY_LEMON_JUICE, 2 * CUP);
		stands(ORIGIN_REFUSED, "tested recipe");
	}
}
END_TEST

/* No class allows what the food's own line does not, whatever the ingredients. */
START_TEST(only_foods_with_a_class_give_one)
{
	for (size_t f = 0; f < food_count; f++) {
		if (foods[f].own_recipe != OWN_NONE)
			continue;
		for (size_t i = 0; i < known_ingredient_count; i++) {
			begin(foods[f].name, PECTIN_NONE);
			put(known_ingredients[i].name, SUPPLY_OTHER, 4 * CUP);
			ck_assert(judged() == ORIGIN_OWN_UNKNOWN || standing.origin == ORIGIN_REFUSED);
		}
	}
}
END_TEST

/* --- jam and jelly ------------------------------------------------------------------------ */

static void with_pectin(const char *fruit, enum supply_kind supply)
{
	begin(WITH_PECTIN, PECTIN_REGULAR);
	put(fruit, supply, 5 * CUP);
	put("sugar", SUPPLY_SUGAR, 7 * CUP);
	put("regular pectin", SUPPLY_PECTIN_REGULAR, 49000);
}

START_TEST(a_class_says_its_name_and_its_batches)
{
	with_pectin("grape", SUPPLY_JUICE);
	stands(ORIGIN_OWN_CLASS, "own recipe, class: jelly with added pectin");
	ck_assert_int_eq(standing.multiple_max, 1); /* regular pectin: one batch (Guide 1, p. 1-30) */
	ck_assert_int_eq(standing.pectin, PECTIN_REGULAR);
	ck_assert(!standing.acid_asked);
	with_pectin("strawberry", SUPPLY_OTHER);
	stands(ORIGIN_OWN_CLASS, "own recipe, class: jam with added pectin");
}
END_TEST

START_TEST(low_methoxyl_pectin_follows_its_own_sheet)
{
	begin(WITH_PECTIN, PECTIN_LOW_METHOXYL);
	put("grape", SUPPLY_JUICE, 4 * CUP);
	put("low-methoxyl pectin", SUPPLY_PECTIN_LOW, TBSP);
	put("calcium solution", SUPPLY_CALCIUM_SOLUTION, TBSP);
	stands(ORIGIN_OWN_CLASS, "jelly with added pectin");
	ck_assert_int_eq(standing.multiple_max, 3);
	recipe.multiple_max = 0; /* without a word of the sheet */
	stands(ORIGIN_OWN_CLASS, "jelly with added pectin");
	ck_assert_int_eq(standing.multiple_max, 1);
}
END_TEST

START_TEST(mixed_fruit_must_all_be_listed)
{
	with_pectin("grape", SUPPLY_JUICE);
	put("plum", SUPPLY_JUICE, CUP);
	stands(ORIGIN_OWN_CLASS, "class");
	put("watermelon", SUPPLY_JUICE, CUP);
	stands(ORIGIN_REFUSED, "watermelon");
}
END_TEST

/* USDA AIB 539, rev. 2015, Guide 7: 2 tbsp for 4 to 4 1/2 cups of apricots, for 5 1/2 to 6 of peaches. */
START_TEST(fruit_of_middling_acidity_needs_its_lemon_juice)
{
	with_pectin("apricot", SUPPLY_OTHER);
	stands(ORIGIN_REFUSED, "lemon juice");
	put("vinegar", SUPPLY_VINEGAR, CUP);
	stands(ORIGIN_REFUSED, "lemon juice"); /* another acid is not what is printed */
	recipe.ingredient_count--;
	put("bottled lemon juice", SUPPLY_LEMON_JUICE, TBSP);
	stands(ORIGIN_REFUSED, "lemon juice");
	recipe.ingredient_count--;
	put("bottled lemon juice", SUPPLY_LEMON_JUICE, 3 * TBSP);
	stands(ORIGIN_OWN_CLASS, "class");
	ck_assert(standing.acid_asked);
	recipe.ingredients[3].optional = true;
	stands(ORIGIN_REFUSED, "lemon juice");
	begin(JAM, PECTIN_NONE);
	put("yellow-flesh peach", SUPPLY_OTHER, 6 * CUP);
	put("sugar", SUPPLY_SUGAR, 5 * CUP);
	put("bottled lemon juice", SUPPLY_LEMON_JUICE, 2 * TBSP);
	stands(ORIGIN_OWN_CLASS, "class");
}
END_TEST

/* 1/2 tsp a batch against foam, with pectin only: Guide 7, p. 7-7 to 7-8. */
START_TEST(butter_against_foam_is_half_a_teaspoon)
{
	with_pectin("grape", SUPPLY_JUICE);
	put("butter", SUPPLY_BUTTER, TBSP / 6);
	stands(ORIGIN_OWN_CLASS, "class");
	recipe.ingredient_count--;
	put("butter", SUPPLY_BUTTER, TBSP / 3);
	stands(ORIGIN_REFUSED, "butter");
	begin(JAM, PECTIN_NONE);
	put("blackberry", SUPPLY_OTHER, 4 * CUP);
	put("sugar", SUPPLY_SUGAR, 4 * CUP);
	put("butter", SUPPLY_BUTTER, TBSP / 6);
	stands(ORIGIN_REFUSED, "butter");
}
END_TEST

/* Guide 7, p. 7-6 to 7-7: 4 cups of sugar to 4 cups of berries, to 4 1/2 of apricots, to 5 1/2 of peaches. */
START_TEST(jam_without_pectin_has_its_sugar)
{
	begin(JAM, PECTIN_NONE);
	put("blackberry", SUPPLY_OTHER, 4 * CUP);
	put("sugar", SUPPLY_SUGAR, 4 * CUP);
	stands(ORIGIN_OWN_CLASS, "jam without added pectin");
	ck_assert_int_eq(standing.multiple_max, 1); /* either method, one batch: Guide 1, p. 1-30 */
	recipe.ingredients[1].amount -= 20000;
	stands(ORIGIN_OWN_UNKNOWN, "less sugar");
	begin(JAM, PECTIN_NONE);
	put("apricot", SUPPLY_OTHER, 9 * CUP / 2);
	put("sugar", SUPPLY_SUGAR, 4 * CUP);
	put("bottled lemon juice", SUPPLY_LEMON_JUICE, 2 * TBSP);
	stands(ORIGIN_OWN_CLASS, "class");
}
END_TEST

START_TEST(fruit_by_weight_is_judged_by_weight)
{
	begin(JAM, PECTIN_NONE);
	put("raspberry", SUPPLY_FRUIT, 2000000); /* 2 kg */
	put("sugar", SUPPLY_SUGAR, 0);
	recipe.ingredients[1].amount = 2000000;
	stands(ORIGIN_OWN_CLASS, "class");
	recipe.ingredients[1].amount = 1900000;
	stands(ORIGIN_OWN_UNKNOWN, "less sugar");
	recipe.ingredients[0].measure = MEASURE_EACH;
	recipe.ingredients[0].amount = 40;
	stands(ORIGIN_OWN_UNKNOWN, "by volume or weight");
}
END_TEST

/* Guide 7, p. 7-5: 3/4 cup of sugar a cup of juice; no more than 6 to 8 cups at a time. */
START_TEST(jelly_without_pectin_has_its_sugar_and_its_size)
{
	begin(JELLY, PECTIN_NONE);
	put("plum", SUPPLY_JUICE, 4 * CUP);
	put("sugar", SUPPLY_SUGAR, 3 * CUP);
	stands(ORIGIN_OWN_CLASS, "jelly without added pectin");
	recipe.ingredients[1].amount -= 20000;
	stands(ORIGIN_OWN_UNKNOWN, "less sugar");
	begin(JELLY, PECTIN_NONE);
	put("plum", SUPPLY_JUICE, 7 * CUP);
	put("sugar", SUPPLY_SUGAR, 7 * CUP);
	stands(ORIGIN_OWN_UNKNOWN, "more juice");
	begin(JELLY, PECTIN_NONE);
	put("quince", SUPPLY_JUICE, 4 * CUP);
	put("sugar", SUPPLY_SUGAR, 4 * CUP);
	stands(ORIGIN_REFUSED, "quince"); /* not one of the five of its table */
}
END_TEST

START_TEST(the_pectin_must_be_one_of_the_class)
{
	begin(WITH_PECTIN, PECTIN_NONE);
	put("grape", SUPPLY_JUICE, 4 * CUP);
	put("sugar", SUPPLY_SUGAR, 4 * CUP);
	stands(ORIGIN_OWN_UNKNOWN, "no pectin added");
	with_pectin("grape", SUPPLY_JUICE);
	recipe.ingredients[1].amount = 0;
	stands(ORIGIN_OWN_UNKNOWN, "sugar of its sheet");
}
END_TEST

/* Wisconsin Extension: a teaspoon of herb or flavoring at most. */
START_TEST(a_teaspoon_of_herb_and_flavoring_in_a_jam)
{
	with_pectin("strawberry", SUPPLY_OTHER);
	put("vanilla extract", SUPPLY_OTHER, TBSP / 3);
	stands(ORIGIN_OWN_CLASS, "class");
	put("dried spice", SUPPLY_OTHER, TBSP / 6);
	stands(ORIGIN_OWN_UNKNOWN, "teaspoon"); /* both together */
	with_pectin("strawberry", SUPPLY_OTHER);
	put("fresh herb", SUPPLY_OTHER, TBSP / 3);
	stands(ORIGIN_OWN_CLASS, "class");
	recipe.ingredient_count--;
	put("fresh herb", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "fresh herb");
}
END_TEST

START_TEST(what_is_on_no_list_is_not_known)
{
	with_pectin("grape", SUPPLY_JUICE);
	put("", SUPPLY_OTHER, CUP);
	recipe.ingredients[3].name = "grandmother's secret";
	stands(ORIGIN_OWN_UNKNOWN, "grandmother's secret is on no list");
	put("flour", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "flour: slows heat"); /* the worse counts */
	with_pectin("grape", SUPPLY_JUICE);
	recipe.ingredients[0].known = NULL;
	stands(ORIGIN_OWN_UNKNOWN, "pick what it is");
}
END_TEST

/* --- purees, juice, whole fruit ------------------------------------------------------------- */

START_TEST(pumpkin_butter_is_refused_under_any_name)
{
	static const char *const names[] = { "Pumpkin butter", "Plum butter", "Apple jelly, printed" };

	for (size_t i = 0; i < 3; i++) {
		begin(PUREE, PECTIN_NONE);
		recipe.name = names[i];
		put("pumpkin", SUPPLY_OTHER, 8 * CUP);
		put("sugar", SUPPLY_SUGAR, 4 * CUP);
		put("dried spice", SUPPLY_OTHER, TBSP);
		stands(ORIGIN_REFUSED, "pumpkin: low acid and dense; freeze it");
		recipe.ingredients[0].known = "plum";
		stands(ORIGIN_OWN_CLASS, "fruit puree");
		ck_assert_int_eq(standing.multiple_max, 3);
	}
}
END_TEST

START_TEST(purees_take_sugar_and_spice_only)
{
	begin(PUREE, PECTIN_NONE);
	put("apple", SUPPLY_FRUIT, 4000000);
	put("water", SUPPLY_OTHER, CUP);
	stands(ORIGIN_OWN_CLASS, "fruit puree");
	put("corn starch", SUPPLY_OTHER, TBSP);
	stands(ORIGIN_REFUSED, "thicken after opening");
	begin("applesauce", PECTIN_NONE);
	put("apple", SUPPLY_FRUIT, 4000000);
	stands(ORIGIN_OWN_CLASS, "applesauce");
	put("pear", SUPPLY_FRUIT, 1000000);
	stands(ORIGIN_REFUSED, "pear");
}
END_TEST

START_TEST(juice_is_of_its_fruit_and_sugar)
{
	begin("grape juice", PECTIN_NONE);
	put("grape", SUPPLY_JUICE, 16 * CUP);
	put("sugar", SUPPLY_SUGAR, CUP);
	stands(ORIGIN_OWN_CLASS, "grape juice");
	put("bottled lemon juice", SUPPLY_LEMON_JUICE, TBSP);
	stands(ORIGIN_OWN_UNKNOWN, "nothing but sugar");
	begin("grape juice", PECTIN_NONE);
	put("apple", SUPPLY_JUICE, 16 * CUP);
	stands(ORIGIN_REFUSED, "apple");
}
END_TEST

START_TEST(whole_fruit_stays_alone_in_its_syrup)
{
	begin("peaches", PECTIN_NONE);
	put("yellow-flesh peach", SUPPLY_FRUIT, 8000000);
	put("water", SUPPLY_OTHER, 9 * CUP);
	put("sugar", SUPPLY_SUGAR, 2 * CUP);
	put("packing juice", SUPPLY_OTHER, CUP);
	stands(ORIGIN_OWN_CLASS, "peaches, the fruit alone");
	put("white-flesh peach", SUPPLY_FRUIT, 1000000);
	stands(ORIGIN_REFUSED, "white-flesh peach");
	begin("peaches", PECTIN_NONE);
	put("sugar", SUPPLY_SUGAR, 2 * CUP);
	stands(ORIGIN_OWN_UNKNOWN, "no fruit");
	begin("peaches", PECTIN_NONE);
	put("yellow-flesh peach", SUPPLY_FRUIT, 8000000);
	put("regular pectin", SUPPLY_PECTIN_REGULAR, 49000);
	stands(ORIGIN_OWN_UNKNOWN, "no part of this class");
}
END_TEST

/* --- foods without a class -------------------------------------------------------------------- */

START_TEST(garlic_pesto_in_oil_on_pickled_peppers_is_refused)
{
	begin("pickled hot peppers", PECTIN_NONE);
	put("garlic", SUPPLY_OTHER, CUP);
	put("pesto", SUPPLY_OTHER, 2 * CUP);
	put("oil", SUPPLY_OTHER, 4 * CUP);
	stands(ORIGIN_REFUSED, "garlic");
	begin("pickled hot peppers", PECTIN_NONE);
	put("hot pepper", SUPPLY_OTHER, 8 * CUP);
	stands(ORIGIN_REFUSED, "");
}
END_TEST

START_TEST(soup_takes_vegetables_of_its_list_and_no_noodles)
{
	begin("soup without seafood", PECTIN_NONE);
	put("carrot", SUPPLY_OTHER, 4 * CUP);
	put("chicken", SUPPLY_FRUIT, 1000000);
	put("water", SUPPLY_OTHER, 16 * CUP);
	put("canning salt", SUPPLY_SALT, TBSP);
	stands(ORIGIN_OWN_UNKNOWN, "not a tested recipe; the minutes are those of soup without seafood");
	put("noodle", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "noodle");
	recipe.ingredient_count--;
	put("flour", SUPPLY_OTHER, TBSP);
	stands(ORIGIN_REFUSED, "flour");
	recipe.ingredient_count--;
	put("cream", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "cream");
	recipe.ingredient_count--;
	put("cabbage", SUPPLY_OTHER, CUP); /* no process of its own */
	stands(ORIGIN_REFUSED, "cabbage");
	recipe.ingredient_count--;
	put("fish", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "fish");
}
END_TEST

static void tomatoes(enum supply_kind acid, int64_t ul)
{
	begin("tomatoes crushed", PECTIN_NONE);
	recipe.jars = "quart";
	put("tomato", SUPPLY_FRUIT, 10000000);
	if (ul > 0) {
		put("", acid, ul);
		recipe.ingredients[1].adding = ADD_IN_JAR;
	}
}

START_TEST(acidified_food_needs_its_acid)
{
	tomatoes(SUPPLY_OTHER, 0);
	stands(ORIGIN_REFUSED, "no acid in every jar; 2 tbsp bottled lemon juice or 1/2 tsp citric acid");
	ck_assert(standing.acid_asked);
	tomatoes(SUPPLY_LEMON_JUICE, 2 * TBSP + 10);
	stands(ORIGIN_OWN_UNKNOWN, "the minutes are those of tomatoes crushed");
	ck_assert(standing.acid_asked);
	put("onion", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "onion: raises the pH");
	tomatoes(SUPPLY_VINEGAR, 4 * TBSP + 10);
	stands(ORIGIN_OWN_UNKNOWN, "tomatoes crushed");
	recipe.food = "tomato sauce standard"; /* vinegar is not for sauce */
	stands(ORIGIN_REFUSED, "no acid in every jar");
	begin("figs", PECTIN_NONE);
	put("fig", SUPPLY_FRUIT, 4000000);
	stands(ORIGIN_REFUSED, "no acid in every jar");
	put("melon", SUPPLY_FRUIT, 4000000);
	stands(ORIGIN_REFUSED, "melon");
}
END_TEST

START_TEST(low_acid_food_stays_plain)
{
	begin("green beans (snap and Italian)", PECTIN_NONE);
	put("green bean", SUPPLY_FRUIT, 6000000);
	put("canning salt", SUPPLY_SALT, TBSP);
	stands(ORIGIN_OWN_UNKNOWN, "green beans");
	put("bacon", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "bacon");
	begin("spaghetti sauce without meat", PECTIN_NONE);
	put("tomato", SUPPLY_FRUIT, 6000000);
	put("onion", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, ""); /* a mixture of one's own */
	begin("mixed vegetables", PECTIN_NONE);
	put("carrot", SUPPLY_OTHER, 6 * CUP);
	put("greens", SUPPLY_OTHER, 6 * CUP);
	stands(ORIGIN_REFUSED, "greens: packs tight");
	begin("sweet potatoes", PECTIN_NONE);
	put("mashed vegetable", SUPPLY_OTHER, 6 * CUP);
	stands(ORIGIN_REFUSED, "mashed vegetable");
}
END_TEST

/* printed_exception is for the guide's own recipe: an own one gains nothing by it. */
START_TEST(a_printed_exception_opens_nothing)
{
	begin("mango salsa", PECTIN_NONE);
	put("unripe mango", SUPPLY_OTHER, 6 * CUP);
	put("vinegar", SUPPLY_VINEGAR, 2 * CUP);
	stands(ORIGIN_REFUSED, "unripe mango");
	begin("cantaloupe pickles", PECTIN_NONE);
	put("underripe cantaloupe", SUPPLY_OTHER, 6 * CUP);
	put("vinegar", SUPPLY_VINEGAR, 4 * CUP);
	stands(ORIGIN_REFUSED, "underripe cantaloupe");
	begin("grape-plum jelly", PECTIN_REGULAR);
	put("grape", SUPPLY_JUICE, 4 * CUP);
	put("butter", SUPPLY_BUTTER, TBSP / 6);
	stands(ORIGIN_REFUSED, "butter");
	begin("apple pie filling", PECTIN_NONE);
	put("apple", SUPPLY_FRUIT, 4000000);
	put("cook-type modified starch", SUPPLY_OTHER, CUP);
	stands(ORIGIN_REFUSED, "");
}
END_TEST

START_TEST(acid_food_without_a_class_is_not_tested)
{
	begin("berry syrup", PECTIN_NONE);
	put("blueberry", SUPPLY_FRUIT, 3000000);
	put("sugar", SUPPLY_SUGAR, 6 * CUP);
	stands(ORIGIN_OWN_UNKNOWN, "not a tested recipe; the minutes are those of berry syrup");
	put("elderberry", SUPPLY_FRUIT, 3000000);
	stands(ORIGIN_REFUSED, "elderberry");
}
END_TEST

START_TEST(a_recipe_without_a_food_has_no_standing_in_the_tables)
{
	begin("", PECTIN_NONE);
	put("grape", SUPPLY_JUICE, CUP);
	stands(ORIGIN_OWN_UNKNOWN, "no published process");
	recipe.food = "moon cheese";
	stands(ORIGIN_REFUSED, "no food moon cheese");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("own_recipe", .seconds = 30),
	TEST(every_listed_fruit_stands_where_its_line_says),
	TEST(a_fruit_without_a_line_is_refused_everywhere),
	TEST(every_barred_class_refuses_in_every_food),
	TEST(acid_by_a_recipe_takes_no_recipe_of_ones_own),
	TEST(only_foods_with_a_class_give_one),
	TEST(a_class_says_its_name_and_its_batches),
	TEST(low_methoxyl_pectin_follows_its_own_sheet),
	TEST(mixed_fruit_must_all_be_listed),
	TEST(fruit_of_middling_acidity_needs_its_lemon_juice),
	TEST(butter_against_foam_is_half_a_teaspoon),
	TEST(jam_without_pectin_has_its_sugar),
	TEST(fruit_by_weight_is_judged_by_weight),
	TEST(jelly_without_pectin_has_its_sugar_and_its_size),
	TEST(the_pectin_must_be_one_of_the_class),
	TEST(a_teaspoon_of_herb_and_flavoring_in_a_jam),
	TEST(what_is_on_no_list_is_not_known),
	TEST(pumpkin_butter_is_refused_under_any_name),
	TEST(purees_take_sugar_and_spice_only),
	TEST(juice_is_of_its_fruit_and_sugar),
	TEST(whole_fruit_stays_alone_in_its_syrup),
	TEST(garlic_pesto_in_oil_on_pickled_peppers_is_refused),
	TEST(soup_takes_vegetables_of_its_list_and_no_noodles),
	TEST(acidified_food_needs_its_acid),
	TEST(low_acid_food_stays_plain),
	TEST(a_printed_exception_opens_nothing),
	TEST(acid_food_without_a_class_is_not_tested),
	TEST(a_recipe_without_a_food_has_no_standing_in_the_tables),
};

TESTS("own_recipe", listed)
