#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "engine/food/food.h"
#include "engine/recipe/recipe.h"
#include "engine/recipe/scaling.h"
#include "support/csv.h"
#include "support/tests.h"

/* --- the built-in recipes ------------------------------------------------------ */

START_TEST(every_built_in_recipe_is_usable)
{
	ck_assert_uint_ge(recipe_count, 14);
	for (size_t i = 0; i < recipe_count; i++) {
		struct fault fault = { 0 };

		if (recipe_awaits_sheet(&recipes[i])) {
			ck_assert(!recipe_check(&recipes[i], &fault));
			ck_assert_int_eq(fault.kind, FAULT_REFUSED);
			ck_assert_ptr_nonnull(strstr(fault.sentence, "are not known yet"));
			ck_assert_msg(recipe_check_printed(&recipes[i], &fault), "%s", fault.sentence);
		} else {
			ck_assert_msg(recipe_check(&recipes[i], &fault), "%s", fault.sentence);
		}
		ck_assert_ptr_eq(recipe_named(recipes[i].name), &recipes[i]);
		for (size_t j = 0; j < i; j++)
			ck_assert_str_ne(recipes[i].name, recipes[j].name);
	}
	ck_assert_ptr_null(recipe_named(NULL));
	ck_assert_ptr_null(recipe_named("no such recipe"));
}
END_TEST

/* Some method must offer a process in this jar at this elevation. */
static bool made_at(const struct recipe *recipe, const char *jar, int64_t feet)
{
	for (enum method method = 0; method < METHOD_COUNT; method++) {
		const char *pack = NULL;

		while ((pack = process_next_pack(recipe->food, method, pack)) != NULL) {
			struct process_query query = {
				.food = recipe->food,
				.pack = pack,
				.jar = jar,
				.method = method,
				.pressure_psi = NO_PRESSURE,
				.elevation = { .known = true, .um = feet * FOOT_UM },
			};
			struct process process;

			if (recipe_allows_pack(recipe, pack) && process_find(&query, &process, NULL))
				return true;
		}
	}
	return false;
}

START_TEST(every_recipe_has_a_process_low_and_high)
{
	for (size_t i = 0; i < recipe_count; i++) {
		const struct recipe *recipe = &recipes[i];
		enum acidity acidity;

		if (recipe->food[0] == '\0')
			continue;
		ck_assert(process_acidity(recipe->food, &acidity));
		ck_assert_int_eq(acidity, recipe->acidity);
		for (size_t j = 0; j < jar_size_count; j++) {
			if (!recipe_allows_jar(recipe, jar_sizes[j].name))
				continue;
			ck_assert_msg(made_at(recipe, jar_sizes[j].name, 1), "%s: %s at 1 ft", recipe->name,
			              jar_sizes[j].name);
			ck_assert_msg(made_at(recipe, jar_sizes[j].name, 4650), "%s: %s at 4,650 ft", recipe->name,
			              jar_sizes[j].name);
		}
	}
}
END_TEST

/* Low-methoxyl pectins differ from maker to maker: no figure of one is built in. */
START_TEST(low_methoxyl_pectin_leaves_its_figures_to_its_sheet)
{
	for (size_t i = 0; i < recipe_count; i++) {
		const struct recipe *recipe = &recipes[i];
		bool low = recipe->pectin == PECTIN_LOW_METHOXYL;

		ck_assert_int_eq(recipe_awaits_sheet(recipe), low);
		ck_assert_int_eq(recipe->multiple_max == 0, low);
		for (size_t k = 0; k < recipe->ingredient_count; k++) {
			const struct ingredient *item = &recipe->ingredients[k];
			bool of_sheet = item->supply == SUPPLY_PECTIN_LOW || item->supply == SUPPLY_CALCIUM_SOLUTION;
			bool acid = item->supply == SUPPLY_LEMON_JUICE || item->supply == SUPPLY_CITRIC_ACID ||
			            item->supply == SUPPLY_VINEGAR;

			ck_assert_int_eq(item->amount == 0, of_sheet);
			ck_assert(!low || !acid);
		}
	}
}
END_TEST

START_TEST(the_book_has_the_kinds_that_a_day_needs)
{
	int pectin[PECTIN_COUNT] = { 0 };
	int low_acid = 0;
	int in_jar = 0;

	for (size_t i = 0; i < recipe_count; i++) {
		pectin[recipes[i].pectin]++;
		low_acid += recipes[i].acidity == ACIDITY_LOW_ACID;
		for (size_t k = 0; k < recipes[i].ingredient_count; k++)
			in_jar += recipes[i].ingredients[k].adding == ADD_IN_JAR &&
			          recipes[i].ingredients[k].supply == SUPPLY_LEMON_JUICE;
	}
	ck_assert_int_ge(pectin[PECTIN_REGULAR], 3);
	ck_assert_int_ge(pectin[PECTIN_LOW_METHOXYL], 2);
	ck_assert_int_ge(pectin[PECTIN_NONE], 7);
	ck_assert_int_eq(low_acid, 7);
	ck_assert_int_eq(in_jar, 3);
}
END_TEST

/* --- the table, read a second time and converted apart from bake --------------- */

/* An empty amount is left to a sheet. */
static int64_t amount_of(const char *text, enum supply_kind supply)
{
	static const struct {
		const char *unit;
		double size; /* uL or mg */
		double cups;
	} units[] = {
		{ "gal", 3785411.784, 16 },
		{ "cup", 236588.2365, 1 },
		{ "tbsp", 14786.76478125, 1.0 / 16 },
		{ "tsp", 4928.92159375, 1.0 / 48 },
		{ "lb", 453592.37, 0 },
		{ "oz", 28349.523125, 0 },
		{ "qt", 946352.946, 4 },
		{ "pint", 473176.473, 2 },
		{ "fl oz", 29573.5295625, 1.0 / 8 },
		{ "each", 1, 0 },
	};
	char *end;
	double number = strtod(text, &end);

	if (*text == '\0')
		return 0;
	for (size_t i = 0; i < sizeof(units) / sizeof(units[0]); i++) {
		if (strcmp(end + 1, units[i].unit) != 0)
			continue;
		if (supply_mg_per_cup(supply) > 0)
			return (int64_t)(number * units[i].cups * (double)supply_mg_per_cup(supply) + 0.5);
		return (int64_t)(number * units[i].size + 0.5);
	}
	ck_abort_msg("unit of %s", text);
	return 0;
}

/* Every line of the file is in the program; how many there are. */
static size_t check_lines(const char *file, bool of_guide)
{
	struct csv csv = csv_read(file);
	size_t rows = csv.rows;

	for (size_t row = 0; row < csv.rows; row++) {
		const struct recipe *recipe = recipe_named(csv_at(&csv, row, "recipe"));
		const struct ingredient *item = NULL;
		enum supply_kind supply;

		ck_assert_ptr_nonnull(recipe);
		for (size_t i = 0; i < recipe->ingredient_count; i++) {
			if (strcmp(recipe->ingredients[i].name, csv_at(&csv, row, "name")) == 0)
				item = &recipe->ingredients[i];
		}
		ck_assert_ptr_nonnull(item);
		ck_assert(supply_from_name(csv_at(&csv, row, "supply"), &supply));
		ck_assert_int_eq(item->supply, supply);
		ck_assert_int_eq(item->amount, amount_of(csv_at(&csv, row, "amount"), supply));
		ck_assert_str_eq(adding_name(item->adding), csv_at(&csv, row, "adding"));
		ck_assert_str_eq(item->form, csv_at(&csv, row, "form"));
		ck_assert_str_eq(item->optional ? "yes" : "no", csv_at(&csv, row, "optional"));
		ck_assert_int_eq(item->amount_most, of_guide ? amount_of(csv_at(&csv, row, "amount_most"), supply) : 0);
		ck_assert_str_eq(item->instead_of, of_guide ? csv_at(&csv, row, "instead_of") : "");
	}
	csv_free(&csv);
	return rows;
}

START_TEST(amounts_are_those_of_the_table)
{
	size_t rows = check_lines("recipe_ingredient.csv", false) + check_lines("recipe_guide_ingredient.csv", true);
	size_t count = 0;

	for (size_t i = 0; i < recipe_count; i++)
		count += recipes[i].ingredient_count;
	ck_assert_uint_eq(count, rows);
}
END_TEST

/* The recipes from `first` on are those of the file; how many there are. */
static size_t check_fields(const char *file, size_t first, bool of_guide)
{
	struct csv csv = csv_read(file);
	size_t rows = csv.rows;

	ck_assert_uint_le(first + rows, recipe_count);
	for (size_t row = 0; row < csv.rows; row++) {
		const struct recipe *recipe = &recipes[first + row];

		ck_assert_str_eq(recipe->name, csv_at(&csv, row, "name"));
		ck_assert_str_eq(recipe->food, csv_at(&csv, row, "food"));
		ck_assert_str_eq(recipe->packs, csv_at(&csv, row, "packs"));
		ck_assert_str_eq(recipe->jars, csv_at(&csv, row, "jars"));
		ck_assert_str_eq(pectin_name(recipe->pectin), csv_at(&csv, row, "pectin"));
		ck_assert_str_eq(acidity_name(recipe->acidity), csv_at(&csv, row, "acidity"));
		ck_assert_int_eq(recipe->boil_hold_s, csv_number(&csv, row, "boil_hold_s", -1));
		ck_assert_int_eq(recipe->multiple_max, csv_number(&csv, row, "multiple_max", 0));
		ck_assert_int_eq(recipe->foam_percent, csv_number(&csv, row, "foam_percent", -1));
		ck_assert_int_eq(recipe->headspace_thou,
		                 (int)(strtod(csv_at(&csv, row, "headspace_in"), NULL) * 1000 + 0.5));
		ck_assert_str_eq(recipe->caution, csv_at(&csv, row, "caution"));
		ck_assert_str_eq(recipe->source, csv_at(&csv, row, "source"));
		ck_assert_int_eq(recipe->vinegar_percent, of_guide ? csv_number(&csv, row, "vinegar_percent", 0) : 0);
		ck_assert_str_eq(recipe->not_startable, of_guide ? csv_at(&csv, row, "not_startable") : "");
		ck_assert_int_eq(recipe->acid_swap, of_guide && strcmp(csv_at(&csv, row, "acid_swap"), "") != 0
		                                        ? ACID_SWAP_LEMON_FOR_VINEGAR
		                                        : ACID_SWAP_NONE);
	}
	csv_free(&csv);
	return rows;
}

START_TEST(fields_are_those_of_the_table)
{
	size_t own = check_fields("recipe.csv", 0, false);

	ck_assert_uint_eq(own + check_fields("recipe_guide.csv", own, true), recipe_count);
}
END_TEST

/* --- what is refused ------------------------------------------------------------- */

static const struct recipe good = {
	.name = "plum jelly of the house", .food = "jelly without added pectin",
	.packs = "hot_sterile_jar", .jars = "half_pint pint", .pectin = PECTIN_NONE,
	.acidity = ACIDITY_ACID, .gel_test = GEL_TEST_TEMPERATURE, .headspace_thou = 250,
	.multiple_max = 1, .foam_percent = 50, .boil_off_low_percent = 20, .boil_off_high_percent = 40,
	.caution = "", .source = "house recipe, no source", .ingredient_count = 2,
	.ingredients = {
		{ .name = "plum juice", .supply = SUPPLY_JUICE, .measure = MEASURE_VOLUME,
		  .amount = 946353, .form = "", .adding = ADD_AT_START },
		{ .name = "sugar", .supply = SUPPLY_SUGAR, .measure = MEASURE_MASS, .amount = 600000,
		  .form = "granulated", .adding = ADD_AT_START },
	},
};

static void refused(const struct recipe *recipe, const char *words)
{
	struct fault fault = { 0 };

	ck_assert_msg(!recipe_check(recipe, &fault), "accepted; expected: %s", words);
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_msg(strstr(fault.sentence, words) != NULL, "\"%s\" not in: %s", words, fault.sentence);
}

#define REFUSED(words, change) \
	do { \
		struct recipe bad = good; \
		change; \
		refused(&bad, words); \
	} while (0)

START_TEST(a_recipe_says_what_it_is_and_where_from)
{
	ck_assert(recipe_check(&good, NULL));
	REFUSED("no name", bad.name = "");
	REFUSED("where the recipe comes from", bad.source = " ");
	REFUSED("where the recipe comes from", bad.source = NULL);
	REFUSED("ingredients", bad.ingredient_count = 0);
	REFUSED("ingredients", bad.ingredient_count = RECIPE_INGREDIENTS_MAX + 1);
	REFUSED("boil-hold", bad.boil_hold_s = -1);
	REFUSED("headspace", bad.headspace_thou = 0);
	REFUSED("1 to 16 batches", bad.multiple_max = 0);
	REFUSED("foam", bad.foam_percent = 100);
	REFUSED("low to high", bad.boil_off_low_percent = 41);
	REFUSED("yield", bad.yield_low_ul = 5);
}
END_TEST

/* Of what is left to the sheet of a pectin, all is. */
START_TEST(a_recipe_that_waits_for_its_sheet_has_none_of_its_figures)
{
	struct recipe waits = good;
	struct ingredient *pectin = &waits.ingredients[2];
	struct fault fault = { 0 };

	waits.pectin = PECTIN_LOW_METHOXYL;
	waits.gel_test = GEL_TEST_NONE;
	waits.multiple_max = 0;
	waits.ingredient_count = 3;
	*pectin = (struct ingredient){ .name = "pectin",
		                       .supply = SUPPLY_PECTIN_LOW,
		                       .measure = MEASURE_MASS,
		                       .form = "",
		                       .adding = ADD_AT_START };
	ck_assert_msg(recipe_check_printed(&waits, &fault), "%s", fault.sentence);
	ck_assert(!recipe_check(&waits, &fault));
	pectin->amount = 4000;
	ck_assert(!recipe_check_printed(&waits, &fault));
	ck_assert_str_eq(fault.sentence, "plum jelly of the house: the amount of pectin and how far it is multiplied "
	                                 "come from one sheet; give both or neither.");
	waits.multiple_max = 2;
	ck_assert(recipe_check_printed(&waits, NULL));
	pectin->amount = 0;
	ck_assert(!recipe_check_printed(&waits, &fault));
	ck_assert_str_eq(fault.sentence, "plum jelly of the house: ingredient 3 has no amount.");
	waits.multiple_max = 0;
	waits.ingredient_count = 4;
	waits.ingredients[3] = (struct ingredient){ .name = "acid",
		                                    .supply = SUPPLY_CITRIC_ACID,
		                                    .measure = MEASURE_MASS,
		                                    .amount = 4000,
		                                    .form = "",
		                                    .adding = ADD_AT_START };
	ck_assert(!recipe_check_printed(&waits, &fault));
	ck_assert_str_eq(fault.sentence, "plum jelly of the house: the acid comes from the sheet too; leave acid out.");
}
END_TEST

START_TEST(a_process_is_chosen_from_the_tables)
{
	REFUSED("no food", bad.food = "moon jelly");
	REFUSED("is acid in the tables", bad.acidity = ACIDITY_LOW_ACID);
	REFUSED("no process", bad.packs = "raw");
	REFUSED("no process", bad.packs = "hot_sterile_jar no_such_pack");
	REFUSED("packed", bad.packs = "");
	REFUSED("no process", bad.jars = "pint quart"); /* larger than tested */
	REFUSED("no jar size", bad.jars = "pint bucket");
	REFUSED("which jars", bad.jars = "");
	/* None fits: it can be recorded, and has no published process. */
	{
		struct recipe own = good;

		own.food = "";
		own.packs = "";
		ck_assert(recipe_check(&own, NULL));
	}
}
END_TEST

START_TEST(pectin_keeps_its_rules)
{
	REFUSED("differ", bad.pectin = PECTIN_LOW_METHOXYL);
	REFUSED("differ", bad.ingredients[1].supply = SUPPLY_PECTIN_REGULAR);
	REFUSED("one batch a pot",
	        (bad.pectin = PECTIN_REGULAR, bad.multiple_max = 2, bad.ingredients[1].supply = SUPPLY_PECTIN_REGULAR));
	REFUSED("no gel test", (bad.pectin = PECTIN_REGULAR, bad.ingredients[1].supply = SUPPLY_PECTIN_REGULAR));
}
END_TEST

START_TEST(ingredients_keep_their_rules)
{
	REFUSED("no name", bad.ingredients[0].name = "");
	REFUSED("no amount", bad.ingredients[0].amount = 0);
	REFUSED("measured by mass", bad.ingredients[1].measure = MEASURE_VOLUME);
	REFUSED("does not go in a pot", bad.ingredients[0].supply = SUPPLY_JAR);
	REFUSED("order", bad.ingredients[0].adding = ADD_AT_BOIL);
}
END_TEST

START_TEST(ranges_alternatives_and_acids_keep_their_rules)
{
	struct recipe liquid = good;

	REFUSED("from low to high", bad.ingredients[0].amount_most = bad.ingredients[0].amount - 1);
	REFUSED("which is not in it", bad.ingredients[0].instead_of = "quince juice");
	REFUSED("which is not in it", bad.ingredients[0].instead_of = "plum juice"); /* itself */
	REFUSED("vinegar does not fit", bad.vinegar_percent = 5);
	REFUSED("vinegar does not fit", bad.acid_swap = ACID_SWAP_LEMON_FOR_VINEGAR);
	/* Regular pectin may be the liquid one. */
	liquid.pectin = PECTIN_REGULAR;
	liquid.gel_test = GEL_TEST_NONE;
	liquid.ingredients[1].supply = SUPPLY_PECTIN_LIQUID;
	ck_assert(recipe_check(&liquid, NULL));
}
END_TEST

/* Colorado State and Penn State Extension: bottled, not fresh. */
START_TEST(fresh_lemon_juice_is_refused_with_the_reason)
{
	REFUSED("varies in strength",
	        (bad.ingredients[0].supply = SUPPLY_LEMON_JUICE, bad.ingredients[0].name = "Fresh lemon juice"));
	REFUSED("varies in strength",
	        (bad.ingredients[0].supply = SUPPLY_LEMON_JUICE, bad.ingredients[0].form = "freshly squeezed"));
	REFUSED("varies in strength",
	        (bad.ingredients[0].supply = SUPPLY_OTHER, bad.ingredients[0].name = "lemon juice"));
}
END_TEST

/* What an ingredient was picked as must be known, and be what its ledger holds. */
START_TEST(a_known_ingredient_is_known_and_of_its_ledger)
{
	REFUSED("no known ingredient", bad.ingredients[0].known = "moon plum");
	REFUSED("supply of sugar", bad.ingredients[1].known = "pumpkin");
	REFUSED("varies in strength",
	        (bad.ingredients[0].supply = SUPPLY_LEMON_JUICE, bad.ingredients[0].known = "fresh lemon juice"));
	{
		struct recipe picked = good;

		picked.ingredients[0].known = "plum";
		picked.ingredients[1].known = "sugar";
		ck_assert(recipe_check(&picked, NULL));
	}
}
END_TEST

START_TEST(tomatoes_without_the_published_acid_are_refused)
{
	struct recipe tomatoes = *recipe_named("crushed tomatoes");

	ck_assert(recipe_check(&tomatoes, NULL));
	ck_assert_int_eq(tomatoes.ingredients[1].amount, acid_for_jar(food_named("tomatoes crushed")->acid_rule,
	                                                              ACID_LEMON_JUICE, jar_size_named("quart")));
	tomatoes.ingredients[1].amount--;
	refused(&tomatoes, "acid in every jar");
	tomatoes.ingredients[1].amount++;
	tomatoes.ingredients[1].optional = true;
	refused(&tomatoes, "acid in every jar");
	tomatoes.ingredients[1].optional = false;
	tomatoes.ingredients[1].supply = SUPPLY_CITRIC_ACID;
	tomatoes.ingredients[1].measure = MEASURE_MASS;
	tomatoes.ingredients[1].name = "citric acid";
	tomatoes.ingredients[1].amount = CITRIC_ACID_MG_PER_TSP / 2;
	ck_assert(recipe_check(&tomatoes, NULL));
	tomatoes.ingredient_count = 1;
	refused(&tomatoes, "acid in every jar");
}
END_TEST

/* --- names ------------------------------------------------------------------------ */

START_TEST(names_go_there_and_back)
{
	for (int kind = 0; kind < SUPPLY_KIND_COUNT; kind++) {
		enum supply_kind back;

		ck_assert(supply_from_name(supply_name((enum supply_kind)kind), &back));
		ck_assert_int_eq(back, kind);
		ck_assert_str_ne(supply_words((enum supply_kind)kind), "?");
		if (supply_mg_per_cup((enum supply_kind)kind) > 0)
			ck_assert_int_eq(supply_measure((enum supply_kind)kind), MEASURE_MASS);
	}
	ck_assert_str_eq(supply_name(SUPPLY_KIND_COUNT), "?");
	ck_assert_str_eq(pectin_words(PECTIN_COUNT), "?");
	ck_assert_str_eq(adding_name(ADDING_COUNT), "?");
	ck_assert_str_eq(measure_name(MEASURE_COUNT), "?");
	ck_assert_int_eq(supply_mg_per_cup(SUPPLY_SUGAR), SUGAR_MG_PER_CUP);
	ck_assert_int_eq(supply_mg_per_cup(SUPPLY_CITRIC_ACID), 48 * CITRIC_ACID_MG_PER_TSP);
	ck_assert(!recipe_allows_jar(&good, "pin"));
	ck_assert(!recipe_allows_jar(&good, "half_pint pint"));
	ck_assert(!recipe_allows_jar(&good, ""));
	ck_assert(!recipe_allows_jar(&good, NULL));
	ck_assert(recipe_allows_jar(&good, "pint"));
	ck_assert(recipe_allows_pack(&good, "hot_sterile_jar"));
}
END_TEST

START_TEST(no_recipe_carries_a_trade_mark)
{
	for (size_t i = 0; i < recipe_count; i++) {
		ck_assert_ptr_null(strstr(recipes[i].caution, "\302\256"));
		for (const char *c = recipes[i].name; *c != '\0'; c++)
			ck_assert_msg(*c < 'A' || *c > 'Z', "%s", recipes[i].name);
	}
}
END_TEST

static const struct listed_test listed[] = {
	TEST(every_built_in_recipe_is_usable),
	TEST(every_recipe_has_a_process_low_and_high),
	TEST(low_methoxyl_pectin_leaves_its_figures_to_its_sheet),
	TEST(the_book_has_the_kinds_that_a_day_needs),
	TEST(amounts_are_those_of_the_table),
	TEST(fields_are_those_of_the_table),
	TEST(a_recipe_says_what_it_is_and_where_from),
	TEST(a_recipe_that_waits_for_its_sheet_has_none_of_its_figures),
	TEST(a_process_is_chosen_from_the_tables),
	TEST(pectin_keeps_its_rules),
	TEST(ingredients_keep_their_rules),
	TEST(ranges_alternatives_and_acids_keep_their_rules),
	TEST(fresh_lemon_juice_is_refused_with_the_reason),
	TEST(a_known_ingredient_is_known_and_of_its_ledger),
	TEST(tomatoes_without_the_published_acid_are_refused),
	TEST(names_go_there_and_back),
	TEST(no_recipe_carries_a_trade_mark),
};

TESTS("recipe", listed)
