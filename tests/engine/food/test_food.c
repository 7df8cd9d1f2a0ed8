/* What each food needs: the tables as built in, against the files and the printed figures. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/food/food.h"
#include "engine/recipe/scaling.h"
#include "support/csv.h"
#include "support/tests.h"

static const struct acid_rule *rule_of(const char *food)
{
	const struct food *found = food_named(food);

	ck_assert_msg(found != NULL, "%s", food);
	ck_assert_msg(found->acid_rule != NULL, "%s", food);
	return found->acid_rule;
}

/* --- the table, read a second time ------------------------------------------------- */

START_TEST(every_food_of_the_process_tables_has_a_line)
{
	for (size_t i = 0; i < process_row_count; i++) {
		const struct food *food = food_named(process_rows[i].food);

		ck_assert_msg(food != NULL, "%s", process_rows[i].food);
		ck_assert_str_eq(food->name, process_rows[i].food);
		ck_assert_int_eq(food->acidity, process_rows[i].acidity);
	}
	for (size_t i = 0; i < food_count; i++) {
		enum acidity acidity;

		ck_assert_msg(process_acidity(foods[i].name, &acidity), "%s: no table", foods[i].name);
	}
	ck_assert_ptr_null(food_named("moon cheese"));
	ck_assert_ptr_null(food_named(NULL));
	ck_assert_ptr_eq(food_named("Tomatoes  Crushed"), food_named("tomatoes crushed"));
}
END_TEST

/* The blank-separated ids of a field as bits. */
static uint64_t bits_of(const char *list)
{
	uint64_t bits = 0;
	char id[64];
	int used;

	while (sscanf(list, " %63s%n", id, &used) == 1) {
		const struct ingredient_class *class = ingredient_class_named(id);

		ck_assert_msg(class != NULL, "%s", id);
		bits |= UINT64_C(1) << (class - ingredient_classes);
		list += used;
	}
	return bits;
}

static void same_line(const struct food *food, struct csv *csv, size_t row)
{
	static const char *const own[] = { "none", "jam_jelly", "juice", "puree", "whole_fruit" };
	static const char *const group[] = { "acid", "low_acid_or_tomato" };
	const char *rule = csv_at(csv, row, "acid_rule");

	ck_assert_str_eq(food->name, csv_at(csv, row, "food"));
	ck_assert_str_eq(acidity_name(food->acidity), csv_at(csv, row, "acidity"));
	ck_assert_str_eq(food->acid_rule == NULL ? "" : food->acid_rule->id, rule);
	ck_assert_uint_eq(food->must_not_contain, bits_of(csv_at(csv, row, "must_not_contain")));
	ck_assert_uint_eq(food->printed_exception, bits_of(csv_at(csv, row, "printed_exception")));
	ck_assert_str_eq(own[food->own_recipe], csv_at(csv, row, "own_recipe"));
	ck_assert_str_eq(food->thickener, csv_at(csv, row, "thickener"));
	ck_assert_int_eq(food->thickener_printed, food->thickener[0] != '\0');
	ck_assert_int_eq(food->vent_minutes, csv_number(csv, row, "vent_min", 0));
	ck_assert_int_eq(food->heat_minutes, csv_number(csv, row, "heat_min", 0));
	ck_assert_str_eq(group[food->suspect], csv_at(csv, row, "suspect_group"));
	ck_assert_str_eq(food->reprocess ? "yes" : "no", csv_at(csv, row, "reprocess"));
	ck_assert_str_eq(food->reprocess_why, csv_at(csv, row, "reprocess_why"));
	ck_assert_str_eq(food->caution, csv_at(csv, row, "caution"));
	ck_assert_str_eq(food->source, csv_at(csv, row, "source"));
	ck_assert_str_eq(food->note, csv_at(csv, row, "note"));
}

START_TEST(each_line_is_that_of_the_file)
{
	struct csv csv = csv_read("food.csv");

	ck_assert_uint_eq(csv.rows, food_count);
	for (size_t row = 0; row < csv.rows; row++)
		same_line(&foods[row], &csv, row);
	csv_free(&csv);
}
END_TEST

START_TEST(a_refusal_to_process_again_has_its_sentence)
{
	for (size_t i = 0; i < food_count; i++) {
		size_t length = strlen(foods[i].reprocess_why);

		ck_assert_int_eq(foods[i].reprocess, length == 0);
		if (length > 0)
			ck_assert_int_eq(foods[i].reprocess_why[length - 1], '.');
	}
}
END_TEST

/* USDA AIB 539, rev. 2015, Guide 1, p. 1-20: vent 10 minutes; Guide 5: fish in quarts 20 minutes
 * of heating before them and 3 quarts of water, smoked fish 4 quarts. */
START_TEST(pressure_foods_are_vented_and_fish_has_its_water)
{
	const struct food *fish = food_named("fish in quart jars");
	const struct food *smoked = food_named("smoked fish");

	for (size_t i = 0; i < food_count; i++)
		if (foods[i].acidity == ACIDITY_LOW_ACID)
			ck_assert_msg(foods[i].vent_minutes == 10, "%s", foods[i].name);
	ck_assert_int_eq(fish->heat_minutes, 20);
	ck_assert_int_eq(fish->water_ul, 2839059);   /* 3 qt */
	ck_assert_int_eq(smoked->water_ul, 3785412); /* 4 qt */
	ck_assert_int_eq(smoked->canner_low_qt, 16);
	ck_assert_int_eq(smoked->canner_high_qt, 22);
}
END_TEST

/* --- acid ---------------------------------------------------------------------------- */

static int64_t acid(const char *food, enum acid which, const char *jar)
{
	return acid_for_jar(rule_of(food), which, jar_size_named(jar));
}

/* USDA AIB 539, rev. 2015, Guide 3, p. 3-5: 2 tbsp bottled lemon juice, 1/2 tsp citric acid or
 * 4 tbsp vinegar a quart; 1 tbsp or 1/4 tsp a pint; no vinegar is printed for a pint. */
START_TEST(tomatoes_take_the_printed_acid)
{
	static const char *const foods3[] = {
		"tomatoes crushed",
		"tomato juice",
		"tomatoes whole or halved in water",
		"tomatoes whole or halved in tomato juice",
		"tomatoes whole or halved no added liquid",
	};

	for (size_t i = 0; i < sizeof(foods3) / sizeof(foods3[0]); i++) {
		ck_assert_int_eq(acid(foods3[i], ACID_LEMON_JUICE, "quart"), 29574);
		ck_assert_int_eq(acid(foods3[i], ACID_LEMON_JUICE, "pint"), 14787);
		ck_assert_int_eq(acid(foods3[i], ACID_CITRIC, "quart"), 2464);
		ck_assert_int_eq(acid(foods3[i], ACID_CITRIC, "pint"), 1232);
		ck_assert_int_eq(acid(foods3[i], ACID_VINEGAR, "quart"), 59147);
		ck_assert_int_eq(acid(foods3[i], ACID_VINEGAR, "pint"), 0);
		ck_assert_int_eq(acid(foods3[i], ACID_VINEGAR, "half_pint"), 0);
	}
}
END_TEST

/* Guide 3, p. 3-6, 3-8 and 3-13; Guide 2, Figs; NCHFP, Pears, Asian: vinegar is not named there,
 * citric acid not for Asian pears. */
START_TEST(sauce_blends_tomatillos_and_fruit_take_no_vinegar)
{
	static const char *const others[] = {
		"tomato sauce standard", "tomato and vegetable juice blend", "tomatillos", "figs", "asian pears",
	};

	for (size_t i = 0; i < sizeof(others) / sizeof(others[0]); i++) {
		ck_assert_int_eq(acid(others[i], ACID_LEMON_JUICE, "quart"), 29574);
		ck_assert_int_eq(acid(others[i], ACID_LEMON_JUICE, "pint"), 14787);
		ck_assert_int_eq(acid(others[i], ACID_VINEGAR, "quart"), 0);
		ck_assert_int_eq(acid(others[i], ACID_CITRIC, "quart"),
		                 strcmp(others[i], "asian pears") == 0 ? 0 : 2464);
	}
}
END_TEST

START_TEST(other_sizes_get_their_share_and_never_less)
{
	const struct acid_rule *rule = rule_of("tomatoes crushed");

	ck_assert_int_eq(acid("tomatoes crushed", ACID_LEMON_JUICE, "half_pint"), 7394); /* rounded up */
	ck_assert_int_eq(acid("tomatoes crushed", ACID_LEMON_JUICE, "twelve_ounce"), 11091);
	ck_assert_int_eq(acid("tomatoes crushed", ACID_LEMON_JUICE, "twenty_four_ounce"), 29574);
	ck_assert_int_eq(acid("tomatoes crushed", ACID_LEMON_JUICE, "half_gallon"), 2 * 29574);
	ck_assert_int_eq(acid("tomatoes crushed", ACID_VINEGAR, "twenty_four_ounce"), 59147);
	ck_assert_int_eq(acid_for_jar(rule, ACID_LEMON_JUICE, NULL), 0);
	ck_assert_int_eq(acid_for_jar(NULL, ACID_LEMON_JUICE, jar_size_named("pint")), 0);
	ck_assert_int_eq(acid_for_jar(rule, ACID_AS_PRINTED, jar_size_named("pint")), 0);
	ck_assert_int_eq(acid("chile salsa", ACID_VINEGAR, "pint"), 0); /* by the recipe */
}
END_TEST

START_TEST(a_rule_is_told_in_spoons)
{
	char words[200];

	acid_rule_words(rule_of("tomatoes crushed"), words, sizeof(words));
	ck_assert_str_eq(words, "2 tbsp bottled lemon juice or 1/2 tsp citric acid or 4 tbsp vinegar of 5 percent");
}
END_TEST

START_TEST(every_jar_gets_its_acid_or_the_recipe_has_none)
{
	const struct acid_rule *rule = rule_of("tomatoes crushed");
	struct recipe recipe = {
		.jars = "quart",
		.ingredient_count = 1,
		.ingredients = { { .name = "sour",
		                   .supply = SUPPLY_VINEGAR,
		                   .measure = MEASURE_VOLUME,
		                   .amount = 59147,
		                   .adding = ADD_IN_JAR } },
	};

	ck_assert(acid_in_every_jar(rule, &recipe));
	ck_assert(!acid_in_every_jar(rule_of("tomato sauce standard"), &recipe));
	recipe.jars = "pint quart"; /* no pint's vinegar is printed */
	ck_assert(!acid_in_every_jar(rule, &recipe));
	recipe.ingredients[0].supply = SUPPLY_LEMON_JUICE;
	recipe.ingredients[0].amount = 29574;
	ck_assert(acid_in_every_jar(rule, &recipe));
	recipe.ingredients[0].known = "water"; /* picked as something else */
	ck_assert(!acid_in_every_jar(rule, &recipe));
	recipe.ingredients[0].known = "bottled lemon juice";
	recipe.ingredients[0].adding = ADD_AT_START;
	ck_assert(!acid_in_every_jar(rule, &recipe));
}
END_TEST

START_TEST(acids_and_origins_go_there_and_back)
{
	for (int i = 0; i < ACID_COUNT; i++) {
		enum acid back;

		ck_assert(acid_from_name(acid_name((enum acid)i), &back));
		ck_assert_int_eq(back, i);
		ck_assert_str_ne(acid_words((enum acid)i), "?");
	}
	for (int i = 0; i < ORIGIN_COUNT; i++)
		ck_assert_str_ne(origin_name((enum origin)i), "?");
	ck_assert_int_eq(acid_supply(ACID_CITRIC), SUPPLY_CITRIC_ACID);
	ck_assert_int_eq(acid_supply(ACID_LEFT_OUT), SUPPLY_OTHER);
	ck_assert_str_eq(acid_name(ACID_COUNT), "?");
	ck_assert_str_eq(origin_name(ORIGIN_COUNT), "?");
}
END_TEST

/* --- ingredients ------------------------------------------------------------------------- */

START_TEST(an_ingredient_is_found_by_all_its_names)
{
	struct csv csv = csv_read("ingredient.csv");

	ck_assert_uint_eq(csv.rows, known_ingredient_count);
	for (size_t row = 0; row < csv.rows; row++) {
		char *also = strdup(csv_at(&csv, row, "also"));
		char *next = also;

		ck_assert_ptr_nonnull(also);
		ck_assert_str_eq(known_ingredients[row].name, csv_at(&csv, row, "name"));
		ck_assert_ptr_eq(known_ingredient_named(known_ingredients[row].name), &known_ingredients[row]);
		ck_assert_uint_eq(known_ingredients[row].classes, bits_of(csv_at(&csv, row, "classes")));
		while (*next != '\0') {
			char *name = next;

			next += strcspn(next, ";");
			if (*next == ';')
				*next++ = '\0';
			next += strspn(next, " ");
			ck_assert_msg(known_ingredient_named(name) == &known_ingredients[row], "%s", name);
		}
		free(also);
	}
	csv_free(&csv);
	ck_assert_str_eq(known_ingredient_named("Grapes")->name, "grape");
	ck_assert_str_eq(known_ingredient_named("blackberries")->name, "blackberry");
	ck_assert_str_eq(known_ingredient_named("grape juice")->name, "grape");
	ck_assert_ptr_null(known_ingredient_named("Concord grapes"));
	ck_assert_ptr_null(known_ingredient_named(""));
	ck_assert_ptr_null(known_ingredient_named(NULL));
}
END_TEST

/* White or yellow flesh decides: a peach alone is not known. */
START_TEST(a_name_that_may_mean_two_things_is_not_known)
{
	ck_assert_ptr_null(known_ingredient_named("peach"));
	ck_assert_ptr_null(known_ingredient_named("nectarines"));
	ck_assert_str_eq(known_ingredient_named("white peach")->name, "white-flesh peach");
}
END_TEST

START_TEST(a_supply_of_its_own_says_what_it_is)
{
	struct ingredient item = { .name = "anything", .supply = SUPPLY_LEMON_JUICE };

	ck_assert_str_eq(ingredient_picked(&item)->name, "bottled lemon juice");
	item.supply = SUPPLY_SUGAR;
	ck_assert_str_eq(ingredient_picked(&item)->name, "sugar");
	item.known = "pumpkin";
	ck_assert_str_eq(ingredient_picked(&item)->name, "pumpkin");
	item.known = "";
	item.supply = SUPPLY_FRUIT;
	item.name = "grape";
	ck_assert_ptr_null(ingredient_picked(&item)); /* a name says nothing */
}
END_TEST

/* --- a jar that is suspect ------------------------------------------------------------------- */

/* USDA AIB 539, rev. 2015, Guide 1, p. 1-26 to 1-27: which foods count as low-acid or tomato. */
START_TEST(foods_of_each_group_have_their_steps)
{
	static const char *const long_way[] = {
		"tomatoes crushed", "chile salsa",   "blender ketchup", "green beans (snap and Italian)", "figs",
		"meat stock",       "pickled beets", "sauerkraut",
	};
	static const char *const short_way[] = { "jam or jelly with added pectin", "peaches", "apple pie filling" };
	int steps[SUSPECT_GROUP_COUNT] = { 0 };

	for (size_t i = 0; i < sizeof(long_way) / sizeof(long_way[0]); i++)
		ck_assert_msg(food_named(long_way[i])->suspect == SUSPECT_LOW_ACID_OR_TOMATO, "%s", long_way[i]);
	for (size_t i = 0; i < sizeof(short_way) / sizeof(short_way[0]); i++)
		ck_assert_msg(food_named(short_way[i])->suspect == SUSPECT_ACID, "%s", short_way[i]);
	for (size_t i = 0; i < food_count; i++)
		ck_assert(foods[i].acidity != ACIDITY_LOW_ACID || foods[i].suspect == SUSPECT_LOW_ACID_OR_TOMATO);
	for (size_t i = 0; i < suspect_step_count; i++) {
		ck_assert_int_eq(suspect_steps[i].step, ++steps[suspect_steps[i].group]);
		ck_assert_str_ne(suspect_steps[i].act, "");
		ck_assert_str_ne(suspect_steps[i].source, "");
	}
	ck_assert_int_eq(steps[SUSPECT_LOW_ACID_OR_TOMATO], 5);
	ck_assert_int_eq(steps[SUSPECT_ACID], 3);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(every_food_of_the_process_tables_has_a_line),
	TEST(each_line_is_that_of_the_file),
	TEST(a_refusal_to_process_again_has_its_sentence),
	TEST(pressure_foods_are_vented_and_fish_has_its_water),
	TEST(tomatoes_take_the_printed_acid),
	TEST(sauce_blends_tomatillos_and_fruit_take_no_vinegar),
	TEST(other_sizes_get_their_share_and_never_less),
	TEST(a_rule_is_told_in_spoons),
	TEST(every_jar_gets_its_acid_or_the_recipe_has_none),
	TEST(acids_and_origins_go_there_and_back),
	TEST(an_ingredient_is_found_by_all_its_names),
	TEST(a_name_that_may_mean_two_things_is_not_known),
	TEST(a_supply_of_its_own_says_what_it_is),
	TEST(foods_of_each_group_have_their_steps),
};

TESTS("food", listed)
