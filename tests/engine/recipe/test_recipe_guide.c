/*
 * The recipes of the guide against its printed pages: USDA Agriculture Information
 * Bulletin 539, Complete Guide to Home Canning, revision of July 2015.  What is
 * printed where stands in tests/data/guide_recipe.csv, the minutes of each recipe's
 * own table in tests/data/guide_recipe_minutes.csv; amounts below were read on the
 * pages named beside them.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/process/product.h"
#include "engine/recipe/amount.h"
#include "engine/recipe/recipe.h"
#include "engine/recipe/scaling.h"
#include "support/csv.h"
#include "support/tests.h"

#define GUIDE "USDA AIB 539 (rev. 2015)"

static const struct recipe *recipe_of(const char *name)
{
	const struct recipe *recipe = recipe_named(name);

	ck_assert_msg(recipe != NULL, "no recipe \"%s\"", name);
	return recipe;
}

static const struct ingredient *line_of(const struct recipe *recipe, const char *name)
{
	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		if (strcmp(recipe->ingredients[i].name, name) == 0)
			return &recipe->ingredients[i];
	}
	ck_abort_msg("%s has no %s", recipe->name, name);
	return NULL;
}

static bool is_of_guide(const struct recipe *recipe)
{
	return strncmp(recipe->source, GUIDE, strlen(GUIDE)) == 0;
}

/* --- all of them -------------------------------------------------------------------- */

START_TEST(every_printed_recipe_is_there_or_left_out_with_a_reason)
{
	struct csv csv = csv_read("../tests/data/guide_recipe.csv");
	size_t left_out = 0;

	ck_assert_uint_eq(csv.rows, 102);
	for (size_t row = 0; row < csv.rows; row++) {
		const char *name = csv_at(&csv, row, "recipe");
		const struct recipe *recipe;

		if (name[0] == '\0') {
			ck_assert_str_ne(csv_at(&csv, row, "left_out"), "");
			left_out++;
			continue;
		}
		ck_assert_str_eq(csv_at(&csv, row, "left_out"), "");
		recipe = recipe_of(name);
		ck_assert_str_eq(recipe->food, csv_at(&csv, row, "food"));
		ck_assert_msg(recipe_may_start(recipe, NULL) == (strcmp(csv_at(&csv, row, "startable"), "yes") == 0),
		              "%s", name);
	}
	ck_assert_uint_eq(left_out, 1); /* jam with the sheet of its pectin: no amounts of its own */
	csv_free(&csv);
}
END_TEST

/* A recipe whose source is the guide is one of the printed ones, and names its page. */
START_TEST(every_recipe_of_the_guide_is_printed_in_it)
{
	struct csv csv = csv_read("../tests/data/guide_recipe.csv");
	size_t count = 0;

	for (size_t i = 0; i < recipe_count; i++) {
		bool found = false;

		if (!is_of_guide(&recipes[i]))
			continue;
		for (size_t row = 0; row < csv.rows; row++) {
			const char *page = csv_at(&csv, row, "page");
			char first[16];

			if (strcmp(csv_at(&csv, row, "recipe"), recipes[i].name) != 0)
				continue;
			(void)snprintf(first, sizeof(first), "%.*s", (int)strcspn(page, ","), page);
			ck_assert_msg(strstr(recipes[i].source, first) != NULL, "%s: page %s", recipes[i].name, first);
			found = true;
		}
		ck_assert_msg(found, "%s", recipes[i].name);
		count++;
	}
	ck_assert_uint_eq(count, 97);
	csv_free(&csv);
}
END_TEST

/* --- minutes ------------------------------------------------------------------------- */

static struct process process_at(const struct csv *csv, size_t row, int feet)
{
	struct process_query query = {
		.food = recipe_of(csv_at(csv, row, "recipe"))->food,
		.pack = csv_at(csv, row, "pack"),
		.jar = csv_at(csv, row, "jar"),
		.pressure_psi = csv_number(csv, row, "pressure_psi", NO_PRESSURE),
		.elevation = { .known = true, .um = feet * FOOT_UM },
	};
	struct process process = { 0 };
	struct fault fault = { 0 };

	ck_assert(method_from_name(csv_at(csv, row, "method"), &query.method));
	ck_assert_msg(process_find(&query, &process, &fault), "%s at %d ft: %s", csv_at(csv, row, "recipe"), feet,
	              fault.sentence);
	return process;
}

START_TEST(the_process_of_a_recipe_is_the_one_printed_with_it)
{
	struct csv csv = csv_read("../tests/data/guide_recipe_minutes.csv");

	ck_assert_uint_eq(csv.rows, 544);
	for (size_t row = 0; row < csv.rows; row++) {
		int ends[] = { csv_number(&csv, row, "alt_min_ft", -1), csv_number(&csv, row, "alt_max_ft", 7999) };

		for (size_t end = 0; end < 2; end++) {
			struct process process = process_at(&csv, row, ends[end]);

			ck_assert_msg(process.minutes == csv_number(&csv, row, "minutes", -1),
			              "%s, %s in a %s at %d ft: %d min, printed %s (%s)", csv_at(&csv, row, "recipe"),
			              csv_at(&csv, row, "pack"), csv_at(&csv, row, "jar"), ends[end], process.minutes,
			              csv_at(&csv, row, "minutes"), csv_at(&csv, row, "source"));
			ck_assert_int_eq(process.pressure_psi, csv_number(&csv, row, "pressure_psi", NO_PRESSURE));
			ck_assert_str_eq(process.jar_in_table->name, csv_at(&csv, row, "jar"));
			ck_assert_int_eq(process.row->headspace_thou,
			                 recipe_of(csv_at(&csv, row, "recipe"))->headspace_thou);
		}
	}
	csv_free(&csv);
}
END_TEST

/* Is there a printed line for this recipe, pack and jar at that height? */
static bool printed_at(const struct csv *csv, const struct recipe *recipe, const char *pack, const char *jar, int feet)
{
	for (size_t row = 0; row < csv->rows; row++) {
		if (strcmp(csv_at(csv, row, "recipe"), recipe->name) == 0 &&
		    strcmp(csv_at(csv, row, "pack"), pack) == 0 && strcmp(csv_at(csv, row, "jar"), jar) == 0 &&
		    csv_number(csv, row, "alt_min_ft", 0) <= feet && feet <= csv_number(csv, row, "alt_max_ft", 99999))
			return true;
	}
	return false;
}

/* Has the table a row of this very jar, by any method? */
static bool tested_in(const char *food, const char *pack, const char *name)
{
	for (enum method method = 0; method < METHOD_COUNT; method++) {
		const struct jar_size *jar = NULL;

		while ((jar = process_next_jar(food, method, pack, jar)) != NULL) {
			if (strcmp(jar->name, name) == 0)
				return true;
		}
	}
	return false;
}

static void check_printed(const struct csv *csv, const struct recipe *recipe, const char *pack)
{
	for (size_t i = 0; i < jar_size_count; i++) {
		const char *jar = jar_sizes[i].name;

		if (!recipe_allows_pair(recipe, pack, jar) || !tested_in(recipe->food, pack, jar))
			continue;
		ck_assert_msg(printed_at(csv, recipe, pack, jar, 0) && printed_at(csv, recipe, pack, jar, 5000),
		              "%s, %s in a %s has no printed minutes", recipe->name, pack, jar);
	}
}

/* Jars that were not boiled before filling have no printed minutes of their own. */
START_TEST(every_pack_and_jar_of_a_recipe_is_printed_low_and_high)
{
	static const char *const packs[] = { "hot", "raw", "hot_sterile_jar", "raw_sterile_jar" };
	struct csv csv = csv_read("../tests/data/guide_recipe_minutes.csv");

	for (size_t i = 0; i < recipe_count; i++) {
		if (!is_of_guide(&recipes[i]) || !recipe_may_start(&recipes[i], NULL))
			continue;
		for (size_t pack = 0; pack < sizeof(packs) / sizeof(packs[0]); pack++)
			check_printed(&csv, &recipes[i], packs[pack]);
		for (size_t j = 0; j < jar_size_count; j++) {
			bool found = !recipe_allows_jar(&recipes[i], jar_sizes[j].name);

			for (size_t pack = 0; pack < sizeof(packs) / sizeof(packs[0]); pack++)
				found = found || printed_at(&csv, &recipes[i], packs[pack], jar_sizes[j].name, 5000);
			ck_assert_msg(found, "%s in a %s", recipes[i].name, jar_sizes[j].name);
		}
	}
	csv_free(&csv);
}
END_TEST

/* --- amounts, as read on the pages ---------------------------------------------------- */

static const struct {
	const char *page;
	const char *recipe;
	const char *ingredient;
	const char *amount;
	const char *most;
} printed[] = {
	{ "7-7", "apricot jam without added pectin", "apricots", "4 cups", "4 1/2 cups" },
	{ "7-7", "peach jam without added pectin", "sugar", "4 cups", "5 cups" },
	{ "7-8", "pear-apple jam", "bottled lemon juice", "1/3 cup", "" },
	{ "7-8", "pear-apple jam", "sugar", "6 1/2 cups", "" },
	{ "7-8", "strawberry-rhubarb jelly", "liquid pectin", "6 oz", "" },
	{ "7-9", "blueberry-spice jam", "blueberries", "2 1/2 pints", "" },
	{ "7-10", "golden pepper jelly", "white distilled vinegar", "1 1/2 cups", "" },
	{ "7-11", "peach-pineapple spread", "sugar", "2 cups", "2 cups" },
	{ "2-8", "spiced apple rings", "white vinegar", "1 1/4 cups", "" },
	{ "2-8", "spiced apple rings", "red food coloring", "1 tsp", "" },
	{ "2-9", "spiced crab apples", "apple cider vinegar", "4 1/2 cups", "" },
	{ "2-11", "berry syrup", "sugar", "6 3/4 cups", "" },
	{ "2-11", "cantaloupe pickles", "cantaloupe", "5 lb", "" },
	{ "2-12", "cantaloupe pickles no sugar added", "cantaloupe", "6 lb", "" },
	{ "2-13", "cranberry orange chutney", "cranberries", "24 oz", "" },
	{ "2-17", "mango sauce", "bottled lemon juice", "4 tbsp", "" },
	{ "2-22", "zucchini-pineapple", "bottled lemon juice", "1 1/2 cups", "" },
	{ "2-23", "spicy cranberry salsa", "sugar", "1 1/3 cups", "" },
	{ "2-25", "peach-apple salsa", "cider vinegar", "2 1/4 cups", "" },
	{ "2-26", "apple pie filling, 1 quart", "sugar", "3/4 cup + 2 tbsp", "" },
	{ "2-26", "apple pie filling, 7 quarts", "modified corn starch for canning", "1 1/2 cups", "" },
	{ "2-27", "cherry pie filling, 7 quarts", "water", "9 1/3 cups", "" },
	{ "2-29", "green tomato pie filling", "bottled lemon juice", "1 cup", "" },
	{ "2-30", "peach pie filling, 7 quarts", "modified corn starch for canning", "2 cups + 3 tbsp", "" },
	{ "3-6", "tomato and vegetable juice blend", "celery, onions, carrots, peppers", "3 cups", "3 cups" },
	{ "3-12", "tomatoes with okra or zucchini, 9 pints", "okra", "2 1/2 lb", "" },
	{ "3-12", "tomatoes with okra or zucchini, 7 quarts", "pearl onions", "4", "5" },
	{ "3-15", "mexican tomato sauce", "chile peppers", "2 1/2 lb", "3 lb" },
	{ "3-17", "cayenne pepper sauce", "canned diced tomatoes", "84 oz", "" },
	{ "3-18", "country western ketchup", "vinegar", "2 2/3 cups", "" },
	{ "3-18", "blender ketchup", "vinegar", "9 cups", "" },
	{ "3-21", "chile salsa", "tomatoes", "5 lb", "" },
	{ "3-22", "chile salsa 2", "tomatoes", "10 cups", "" },
	{ "3-22", "tomatillo green salsa", "bottled lemon juice", "1 cup", "" },
	{ "3-23", "paste tomato salsa", "bottled lemon or lime juice", "2 cups", "" },
	{ "3-24", "slicing tomato salsa", "vinegar", "2 cups", "" },
	{ "3-26", "tomato taco sauce", "vinegar", "2 1/2 cups", "" },
	{ "6-7", "fermented dill pickles", "canning salt", "1/2 cup", "" },
	{ "6-9", "bread-and-butter pickles", "vinegar", "4 cups", "" },
	{ "6-9", "bread-and-butter pickles", "sugar", "4 1/2 cups", "" },
	{ "6-10", "fresh-pack dill pickles", "salt for soaking", "3/4 cup", "" },
	{ "6-10", "fresh-pack dill pickles", "vinegar", "1 1/2 qt", "" },
	{ "6-13", "pickled asparagus, 7 twelve-ounce jars", "canning salt", "1/3 cup", "" },
	{ "6-14", "pickled dilly beans", "dill heads", "8", "16" },
	{ "6-15", "pickled three-bean salad", "bottled lemon juice", "1/4 cup", "" },
	{ "6-15", "pickled beets", "onions", "4", "6" },
	{ "6-19", "pickled dilled okra", "canning salt", "2/3 cup", "" },
	{ "6-23", "pickled jalapeno rings", "cider vinegar", "7 1/2 cups", "" },
	{ "6-24", "pickled sweet green tomatoes", "green tomatoes", "10 lb", "11 lb" },
	{ "6-28", "pickle relish", "white vinegar", "6 cups", "" },
	{ "6-29", "pickled green tomato relish", "vinegar", "1 qt", "" },
	{ "6-32", "tangy tomatillo relish", "cider vinegar", "6 1/2 cups", "" },
	{ "6-34", "reduced-sodium sliced sweet pickles", "vinegar for the syrup", "1 2/3 cups", "" },
};

/* Cups and spoons of the page against what was baked, a uL or mg for rounding.  Salt
 * and butter are told in spoons and kept by weight. */
static void same_amount(const struct recipe *recipe, const struct ingredient *line, const char *words, int64_t amount)
{
	bool spoons = line->supply == SUPPLY_SALT || line->supply == SUPPLY_BUTTER;
	int64_t read = 0;
	struct fault fault = { 0 };

	if (words[0] != '\0')
		ck_assert_msg(amount_read(words, spoons ? MEASURE_VOLUME : line->measure,
		                          spoons ? SUPPLY_OTHER : line->supply, &read, &fault),
		              "%s", fault.sentence);
	if (spoons)
		read = (int64_t)((double)read / 236588.2365 * (double)supply_mg_per_cup(line->supply) + 0.5);
	ck_assert_msg(llabs(read - amount) <= 1, "%s: %s is %lld, printed %s", recipe->name, line->name,
	              (long long)amount, words);
}

START_TEST(amounts_are_those_of_the_pages)
{
	for (size_t i = 0; i < sizeof(printed) / sizeof(printed[0]); i++) {
		const struct recipe *recipe = recipe_of(printed[i].recipe);
		const struct ingredient *line = line_of(recipe, printed[i].ingredient);

		same_amount(recipe, line, printed[i].amount, line->amount);
		same_amount(recipe, line, printed[i].most, line->amount_most);
		ck_assert_msg(strstr(recipe->source, printed[i].page) != NULL, "%s is not of page %s", recipe->name,
		              printed[i].page);
	}
}
END_TEST

/* Pages 2-26 to 2-30: each size has its own amount, and nothing is scaled between them. */
START_TEST(the_lemon_juice_of_a_pie_filling_belongs_to_its_size)
{
	static const struct {
		const char *recipe;
		const char *lemon;
	} fillings[] = {
		{ "apple pie filling, 1 quart", "2 tbsp" },     { "apple pie filling, 7 quarts", "3/4 cup" },
		{ "blueberry pie filling, 1 quart", "3 tbsp" }, { "blueberry pie filling, 7 quarts", "1/2 cup" },
		{ "cherry pie filling, 1 quart", "4 tsp" },     { "cherry pie filling, 7 quarts", "1/2 cup" },
		{ "peach pie filling, 1 quart", "1/4 cup" },    { "peach pie filling, 7 quarts", "1 3/4 cups" },
	};

	for (size_t i = 0; i < sizeof(fillings) / sizeof(fillings[0]); i++) {
		const struct recipe *recipe = recipe_of(fillings[i].recipe);
		const struct ingredient *lemon = line_of(recipe, "bottled lemon juice");

		same_amount(recipe, lemon, fillings[i].lemon, lemon->amount);
		ck_assert_int_eq(lemon->amount_most, 0);
		ck_assert(!lemon->optional);
		ck_assert_int_eq(recipe->multiple_max, 1);
		ck_assert_int_eq(largest_multiple(recipe, 0), 1);
	}
	ck_assert_ptr_null(recipe_named("apple pie filling")); /* no size, no amounts */
}
END_TEST

/* Page 6-8 prints the salt twice; 3 tbsp for each 5 lb is the more. */
START_TEST(sauerkraut_takes_the_larger_of_its_two_printed_salts)
{
	const struct recipe *recipe = recipe_of("sauerkraut");

	same_amount(recipe, line_of(recipe, "cabbage"), "25 lb", line_of(recipe, "cabbage")->amount);
	same_amount(recipe, line_of(recipe, "canning salt"), "15 tbsp", line_of(recipe, "canning salt")->amount);
	ck_assert_ptr_nonnull(strstr(recipe->caution, "prints it twice"));
}
END_TEST

START_TEST(disputed_yields_are_not_used)
{
	static const char *const names[] = {
		"blackberry jelly without added pectin",
		"grape jelly without added pectin",
		"plum jelly",
	};

	for (size_t i = 0; i < sizeof(names) / sizeof(names[0]); i++)
		ck_assert_int_eq(recipe_of(names[i])->yield_high_ul, 0);
	ck_assert_ptr_nonnull(strstr(recipe_of("blackberry jelly without added pectin")->caution, "disputed"));
	ck_assert_ptr_nonnull(strstr(recipe_of("blueberry pie filling, 7 quarts")->caution, "disputed"));
	/* Where none is printed at all. */
	ck_assert_int_eq(recipe_of("peach salsa")->yield_high_ul, 0);
	ck_assert_int_eq(recipe_of("pickled baby carrots")->yield_high_ul, 0);
	ck_assert_int_eq(recipe_of("fermented dill pickles")->yield_high_ul, 0);
}
END_TEST

START_TEST(what_cannot_be_trusted_or_has_no_process_is_kept_and_never_started)
{
	static const struct {
		const char *recipe;
		const char *words;
	} kept[] = {
		{ "mango chutney", "misprints the salt" },
		{ "refrigerated apple spread", "kept in the refrigerator" },
		{ "refrigerator grape spread", "kept in the refrigerator" },
		{ "pickled horseradish sauce", "the refrigerator" },
	};
	size_t count = 0;

	for (size_t i = 0; i < sizeof(kept) / sizeof(kept[0]); i++) {
		struct fault fault = { 0 };

		ck_assert(!recipe_may_start(recipe_of(kept[i].recipe), &fault));
		ck_assert_int_eq(fault.kind, FAULT_REFUSED);
		ck_assert_msg(strstr(fault.sentence, kept[i].words) != NULL, "%s", fault.sentence);
	}
	for (size_t i = 0; i < recipe_count; i++)
		count += !recipe_may_start(&recipes[i], NULL);
	ck_assert_uint_eq(count, 4);
	ck_assert(recipe_may_start(recipe_of("grape jelly"), NULL));
}
END_TEST

/* --- fields ---------------------------------------------------------------------------- */

/* Page 3-19: at least 5 percent; an equal amount of bottled lemon juice for vinegar,
 * not the other way.  The salsas that are written with lemon juice have no swap. */
START_TEST(vinegar_and_what_may_stand_for_it)
{
	size_t swaps = 0;

	for (size_t i = 0; i < recipe_count; i++) {
		const struct recipe *recipe = &recipes[i];
		bool vinegar = false;

		for (size_t k = 0; k < recipe->ingredient_count; k++)
			vinegar = vinegar || recipe->ingredients[k].supply == SUPPLY_VINEGAR;
		ck_assert(recipe->vinegar_percent == 0 || vinegar);
		if (is_of_guide(recipe) && vinegar && strcmp(recipe->name, "mexican tomato sauce") != 0)
			ck_assert_msg(recipe->vinegar_percent == 5, "%s", recipe->name);
		if (recipe->acid_swap == ACID_SWAP_NONE)
			continue;
		ck_assert(vinegar);
		ck_assert_ptr_nonnull(strstr(recipe->source, "Guide 3"));
		swaps++;
	}
	ck_assert_int_eq(recipe_of("mexican tomato sauce")->vinegar_percent, 0); /* page 3-15: none printed */
	ck_assert_uint_eq(swaps, 5);
	ck_assert_int_eq(recipe_of("chile salsa")->acid_swap, ACID_SWAP_LEMON_FOR_VINEGAR);
	ck_assert_int_eq(recipe_of("tomatillo green salsa")->acid_swap, ACID_SWAP_NONE);
	ck_assert_int_eq(recipe_of("tomato paste salsa")->acid_swap, ACID_SWAP_NONE);
	ck_assert_int_eq(recipe_of("mango salsa")->acid_swap, ACID_SWAP_NONE); /* Guide 2 says nothing of it */
}
END_TEST

/* Page 6-7: amounts for each gallon of the container; page 6-6: a 5-gallon crock. */
START_TEST(nothing_is_multiplied_unless_its_page_says_how_far)
{
	for (size_t i = 0; i < recipe_count; i++) {
		if (is_of_guide(&recipes[i]))
			ck_assert_int_eq(recipes[i].multiple_max,
			                 strcmp(recipes[i].name, "fermented dill pickles") == 0 ? 5 : 1);
	}
}
END_TEST

/* Pages 6-12, 6-13 and 6-25. */
START_TEST(a_pack_goes_with_the_jars_that_are_printed_for_it)
{
	const struct recipe *vegetables = recipe_of("pickled mixed vegetables");
	const struct recipe *sweet = recipe_of("14-day sweet pickles");

	ck_assert(recipe_allows_pair(vegetables, "hot_sterile_jar", "pint"));
	ck_assert(recipe_allows_pair(vegetables, "hot", "quart"));
	ck_assert(!recipe_allows_pair(vegetables, "hot_sterile_jar", "quart"));
	ck_assert(!recipe_allows_pair(vegetables, "raw", "pint"));
	ck_assert(recipe_allows_pair(sweet, "raw_sterile_jar", "pint"));
	ck_assert(!recipe_allows_pair(sweet, "raw_sterile_jar", "quart"));
	ck_assert(!recipe_allows_pair(sweet, "raw", "half_pint"));
	ck_assert(recipe_allows_pair(recipe_of("quick sweet pickles"), "raw", "quart"));
}
END_TEST

START_TEST(ranges_and_alternatives_are_said_in_words)
{
	static const struct {
		const char *recipe;
		const char *ingredient;
		const char *words;
	} lines[] = {
		{ "mexican tomato sauce", "chile peppers", "2-1/2 to 3 lb" },
		{ "tomato and vegetable juice blend", "celery, onions, carrots, peppers", "at most 3 cups" },
		{ "peach jam without added pectin", "sugar", "4 to 5 cups" },
		{ "apricot jam without added pectin", "apricots", "1 qt to 4-1/2 cups" },
		{ "pickled dilly beans", "dill heads", "8 to 16" },
		{ "spiced apple rings", "cinnamon sticks", "or 8" },
		{ "fermented dill pickles", "dill heads", "or 4 to 5" },
		{ "pear-apple jam", "bottled lemon juice", "1/3 cup" },
		{ "tomatoes with okra or zucchini, 7 quarts", "pearl onions", "4 to 5" },
	};

	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++) {
		const struct recipe *recipe = recipe_of(lines[i].recipe);
		size_t at = (size_t)(line_of(recipe, lines[i].ingredient) - recipe->ingredients);
		struct scaled scaled;
		char words[64];

		ck_assert(scale_lines(recipe, 1, UNITS_US, NULL, &scaled, NULL));
		scaled_line_words(&scaled.lines[at], words, sizeof(words));
		ck_assert_str_eq(words, lines[i].words);
	}
}
END_TEST

/* A soak, the jars' own and what takes another's place are not in the pot. */
START_TEST(volumes_leave_out_what_is_not_in_the_pot)
{
	const struct recipe *dill = recipe_of("fresh-pack dill pickles");
	const struct recipe *okra = recipe_of("tomatoes with okra or zucchini, 9 pints");
	const struct recipe *salad = recipe_of("pickled baby carrots");

	/* 1-1/2 qt vinegar, 2 qt water, 2 tbsp spice, salt and sugar: not 2 gallons more. */
	ck_assert_int_lt(pot_volume_ul(dill), 3700000);
	ck_assert_int_gt(pot_volume_ul(dill), 3300000);
	/* 9-1/2 lb at 1 g a mL: the zucchini in place of the okra is not there twice. */
	ck_assert_int_le(llabs(pot_volume_ul(okra) - 4309128), 2);
	ck_assert_int_gt(batch_volume_ul(salad), pot_volume_ul(salad)); /* the seed goes into the jars */
}
END_TEST

/* --- steps ------------------------------------------------------------------------------ */

static const struct recipe_step *step_of(const char *name, size_t number)
{
	const struct recipe_step *steps;

	ck_assert_uint_ge(recipe_steps_of(recipe_of(name), &steps), number);
	ck_assert_int_eq(steps[number - 1].number, (int)number);
	return &steps[number - 1];
}

static void takes(const char *name, size_t number, const char *time, const char *page)
{
	const struct recipe_step *step = step_of(name, number);
	char words[40];

	recipe_step_time(step, words, sizeof(words));
	ck_assert_str_eq(words, time);
	ck_assert_msg(strstr(step->source, page) != NULL, "%s: %s", name, step->source);
}

START_TEST(steps_over_hours_and_days_are_those_of_the_pages)
{
	takes("fermented dill pickles", 1, "3 to 4 weeks", "page 6-7");
	takes("fermented dill pickles", 2, "5 to 6 weeks", "page 6-7");
	takes("sauerkraut", 1, "24 to 48 hours", "page 6-8");
	takes("sauerkraut", 2, "3 to 4 weeks", "page 6-8");
	takes("bread-and-butter pickles", 1, "3 to 4 hours", "page 6-9");
	takes("bread-and-butter pickles", 2, "12 to 24 hours", "page 6-9");
	takes("fresh-pack dill pickles", 1, "12 hours", "page 6-10");
	takes("sweet gherkin pickles", 1, "6 to 8 hours", "page 6-11");
	takes("sweet gherkin pickles", 7, "", "page 6-11");
	takes("14-day sweet pickles", 5, "6 days", "page 6-12");
	takes("pickled three-bean salad", 1, "12 to 14 hours", "page 6-15");
	takes("piccalilli", 1, "12 hours", "page 6-27");
	takes("pickle relish", 2, "1 hour", "page 6-28");
	takes("pickle relish", 3, "24 hours", "page 6-28");
	takes("cantaloupe pickles", 1, "18 hours", "page 2-11");
	takes("spiced crab apples", 1, "", "page 2-9"); /* "overnight" */
	takes("tangy tomatillo relish", 1, "15 to 20 minutes", "page 6-31");
}
END_TEST

START_TEST(every_step_is_found_from_its_recipe)
{
	size_t found = 0;

	for (size_t i = 0; i < recipe_count; i++) {
		const struct recipe_step *steps;
		size_t count = recipe_steps_of(&recipes[i], &steps);

		for (size_t k = 0; k < count; k++) {
			ck_assert_int_eq(steps[k].number, (int)k + 1);
			ck_assert_int_le(steps[k].low_minutes, steps[k].high_minutes);
		}
		found += count;
	}
	ck_assert_uint_eq(found, recipe_step_count);
	ck_assert_uint_eq(recipe_steps_of(recipe_of("grape jelly"), &(const struct recipe_step *){ NULL }), 0);
}
END_TEST

/* Page 6-11: what the days add up to is what the list asks for. */
START_TEST(a_soak_over_days_takes_what_the_list_says)
{
	const struct recipe *gherkins = recipe_of("sweet gherkin pickles");

	same_amount(gherkins, line_of(gherkins, "sugar"), "8 cups", line_of(gherkins, "sugar")->amount);
	same_amount(gherkins, line_of(gherkins, "vinegar"), "6 cups", line_of(gherkins, "vinegar")->amount);
	ck_assert_uint_eq(recipe_steps_of(gherkins, &(const struct recipe_step *){ NULL }), 7);
	ck_assert_uint_eq(recipe_steps_of(recipe_of("14-day sweet pickles"), &(const struct recipe_step *){ NULL }), 6);
}
END_TEST

/* --- products ----------------------------------------------------------------------------- */

START_TEST(every_recipe_that_may_be_started_has_a_product)
{
	for (size_t i = 0; i < recipe_count; i++) {
		const struct recipe *recipe = &recipes[i];
		char name[96];
		const struct product *product;

		if (!is_of_guide(recipe) || !recipe_may_start(recipe, NULL))
			continue;
		(void)snprintf(name, sizeof(name), "%.*s", (int)strcspn(recipe->name, ","), recipe->name);
		product = product_named(name);
		ck_assert_msg(product != NULL, "%s", recipe->name);
		ck_assert_str_eq(product->food, recipe->food);
		ck_assert_ptr_nonnull(jar_size_named(product->usual_jar));
	}
}
END_TEST

START_TEST(nothing_of_the_guide_names_a_brand)
{
	static const char *const never[] = { "clear jel", "clearjel", "splenda", "\302\256" };

	for (size_t i = 0; i < recipe_count; i++) {
		for (size_t k = 0; k < recipes[i].ingredient_count; k++) {
			for (size_t n = 0; n < sizeof(never) / sizeof(never[0]); n++) {
				char words[256];

				(void)snprintf(words, sizeof(words), "%s %s", recipes[i].ingredients[k].name,
				               recipes[i].ingredients[k].form);
				for (char *at = words; *at != '\0'; at++)
					*at = (char)(*at >= 'A' && *at <= 'Z' ? *at - 'A' + 'a' : *at);
				ck_assert_ptr_null(strstr(words, never[n]));
			}
		}
	}
}
END_TEST

static const struct listed_test listed[] = {
	TEST(every_printed_recipe_is_there_or_left_out_with_a_reason),
	TEST(every_recipe_of_the_guide_is_printed_in_it),
	TEST(the_process_of_a_recipe_is_the_one_printed_with_it),
	TEST(every_pack_and_jar_of_a_recipe_is_printed_low_and_high),
	TEST(amounts_are_those_of_the_pages),
	TEST(the_lemon_juice_of_a_pie_filling_belongs_to_its_size),
	TEST(sauerkraut_takes_the_larger_of_its_two_printed_salts),
	TEST(disputed_yields_are_not_used),
	TEST(what_cannot_be_trusted_or_has_no_process_is_kept_and_never_started),
	TEST(vinegar_and_what_may_stand_for_it),
	TEST(nothing_is_multiplied_unless_its_page_says_how_far),
	TEST(a_pack_goes_with_the_jars_that_are_printed_for_it),
	TEST(ranges_and_alternatives_are_said_in_words),
	TEST(volumes_leave_out_what_is_not_in_the_pot),
	TEST(steps_over_hours_and_days_are_those_of_the_pages),
	TEST(every_step_is_found_from_its_recipe),
	TEST(a_soak_over_days_takes_what_the_list_says),
	TEST(every_recipe_that_may_be_started_has_a_product),
	TEST(nothing_of_the_guide_names_a_brand),
};

TESTS("recipe_guide", listed)
