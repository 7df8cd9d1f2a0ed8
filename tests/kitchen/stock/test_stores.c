/* The kitchen's own recipes, their lines, and the ledgers of supplies. */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "kitchen/house/house.h"
#include "kitchen/recipe/own.h"
#include "kitchen/recipe/recipe_lines.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/stock.h"
#include "support/kitchen_kit.h"
#include "support/tests.h"

static struct kitchen_kit kit;

static void begin(void)
{
	kk_begin(&kit);
}

static void end(void)
{
	kk_end(&kit);
}

static void said(const char *sentence)
{
	ck_assert_str_eq(kk_said(&kit), sentence);
}

static void refusal_says(const char *words)
{
	ck_assert_msg(strstr(kit.fault.sentence, words) != NULL, "\"%s\" does not say \"%s\"", kit.fault.sentence,
	              words);
}

/* --- lines -------------------------------------------------------------------------------- */

#define JAM_LINE \
	"recipe \"Raspberry jam\" food=\"jam without added pectin\" packs=\"hot_sterile_jar\" " \
	"jars=\"half_pint pint\" pectin=none acidity=acid hold=0 headspace=1/4 multiple=2 foam=50 " \
	"boiloff=30-45 gel=yes caution=\"It \\\"spits\\\"\" source=\"house recipe, no source\""
#define BERRY_LINE \
	"ingredient \"raspberries\" supply=other amount=\"9 cups\" form=\"crushed\" when=at_start as=\"raspberry\""
#define SUGAR_LINE "ingredient \"sugar\" supply=sugar amount=\"6 cups\" when=at_start as=\"sugar\""
#define ZEST_LINE "ingredient \"orange zest\" supply=other amount=\"1 1/2 tsp\" when=last as=\"unlisted\" optional"

static bool try_recipe(const char *line, struct log_recipe *recipe)
{
	struct words words;

	ck_assert(words_split(line, &words, NULL));
	memset(&kit.fault, 0, sizeof(kit.fault));
	return recipe_line_read(&words, recipe, &kit.fault);
}

static bool try_ingredient(const char *line, struct log_recipe_ingredient *ingredient)
{
	struct words words;

	ck_assert(words_split(line, &words, NULL));
	memset(&kit.fault, 0, sizeof(kit.fault));
	return ingredient_line_read(&words, ingredient, &kit.fault);
}

static struct log_recipe jam(void)
{
	static const char *const lines[] = { BERRY_LINE, SUGAR_LINE, ZEST_LINE };
	struct log_recipe recipe = { 0 };

	KK_OK(&kit, try_recipe(JAM_LINE, &recipe));
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		KK_OK(&kit, try_ingredient(lines[i], &recipe.ingredients[recipe.ingredient_count++]));
	return recipe;
}

START_TEST(a_recipe_line_sets_all_of_a_recipe)
{
	struct log_recipe recipe = jam();

	ck_assert_str_eq(recipe.name, "Raspberry jam");
	ck_assert_str_eq(recipe.food, "jam without added pectin");
	ck_assert_str_eq(recipe.packs, "hot_sterile_jar");
	ck_assert_str_eq(recipe.jars, "half_pint pint");
	ck_assert_int_eq(recipe.pectin, PECTIN_NONE);
	ck_assert_int_eq(recipe.acidity, ACIDITY_ACID);
	ck_assert_int_eq(recipe.gel_test, GEL_TEST_TEMPERATURE);
	ck_assert_int_eq(recipe.boil_hold_s, 0);
	ck_assert_int_eq(recipe.headspace_thou, 250);
	ck_assert_int_eq(recipe.multiple_max, 2);
	ck_assert_int_eq(recipe.foam_percent, 50);
	ck_assert_int_eq(recipe.boil_off_low_percent, 30);
	ck_assert_int_eq(recipe.boil_off_high_percent, 45);
	ck_assert_str_eq(recipe.caution, "It \"spits\"");
	ck_assert_str_eq(recipe.source, "house recipe, no source");
	ck_assert(!recipe.retired);
	ck_assert_int_eq(recipe.ingredients[1].amount, 1200000); /* 6 cups at 200 g */
	ck_assert_int_eq(recipe.ingredients[1].measure, MEASURE_MASS);
	ck_assert_int_eq(recipe.ingredients[2].adding, ADD_LAST);
	ck_assert(recipe.ingredients[2].optional);
	ck_assert(!recipe.ingredients[1].optional);
	ck_assert_str_eq(recipe.ingredients[0].form, "crushed");
}
END_TEST

START_TEST(lines_are_written_as_they_were_read)
{
	static const char *const lines[] = { BERRY_LINE, SUGAR_LINE, ZEST_LINE };
	struct log_recipe recipe = jam();
	char buffer[RECIPE_LINE_MAX_BYTES];
	char small[20];

	ck_assert(recipe_line_words(&recipe, buffer, sizeof(buffer)));
	ck_assert_str_eq(buffer, "recipe \"Raspberry jam\" food=\"jam without added pectin\" "
	                         "packs=\"hot_sterile_jar\" jars=\"half_pint pint\" pectin=none "
	                         "acidity=acid hold=0 headspace=1/4 multiple=2 foam=50 boiloff=30-45 "
	                         "gel=yes caution=\"It \\\"spits\\\"\" source=\"house recipe, no source\"");
	for (size_t i = 0; i < 3; i++) {
		ck_assert(ingredient_picked_words(&recipe.ingredients[i], UNITS_US, buffer, sizeof(buffer)));
		ck_assert_str_eq(buffer, lines[i]);
	}
	ck_assert(!recipe_line_words(&recipe, small, sizeof(small)));
	ck_assert(!ingredient_picked_words(&recipe.ingredients[0], UNITS_US, small, sizeof(small)));
}
END_TEST

/* Every built-in recipe fits into lines and comes back the same, those that wait for a
 * sheet with what an invented one says, but for what only built-in ones have: soaks, and
 * what is packed cold. */
START_TEST(built_in_recipes_go_through_lines_unchanged)
{
	const struct recipe *from = &recipes[_i];
	struct log_recipe row = { .headspace_thou = from->headspace_thou };
	struct log_recipe read = { 0 };
	char buffer[RECIPE_LINE_MAX_BYTES];

	ck_assert(
	    text_copy(row.name, sizeof(row.name), from->name) && text_copy(row.food, sizeof(row.food), from->food) &&
	    text_copy(row.packs, sizeof(row.packs), from->packs) && text_copy(row.jars, sizeof(row.jars), from->jars));
	(void)text_copy(row.caution, sizeof(row.caution), from->caution);
	(void)text_copy(row.source, sizeof(row.source), from->source);
	row.pectin = from->pectin;
	row.acidity = from->acidity;
	row.gel_test = from->gel_test;
	row.boil_hold_s = from->boil_hold_s;
	row.multiple_max = recipe_awaits_sheet(from) ? 3 : from->multiple_max;
	row.sheet_minutes = recipe_awaits_sheet(from) ? 25 : 0;
	row.foam_percent = from->foam_percent;
	row.boil_off_low_percent = from->boil_off_low_percent;
	row.boil_off_high_percent = from->boil_off_high_percent;
	row.vinegar_percent = from->vinegar_percent;
	row.acid_swap = from->acid_swap;
	row.yield_low_ul = from->yield_low_ul;
	row.yield_high_ul = from->yield_high_ul;
	ck_assert(recipe_line_words(&row, buffer, sizeof(buffer)));
	KK_OK(&kit, try_recipe(buffer, &read));
	ck_assert_mem_eq(&read, &row, sizeof(row));
	for (size_t i = 0; i < from->ingredient_count; i++) {
		const struct ingredient *item = &from->ingredients[i];
		struct log_recipe_ingredient one = { .supply = item->supply,
			                             .measure = item->measure,
			                             .amount = item->amount > 0 ? item->amount : 7500,
			                             .amount_most = item->amount_most,
			                             .adding = item->adding,
			                             .optional = item->optional };
		struct log_recipe_ingredient again;

		ck_assert(text_copy(one.name, sizeof(one.name), item->name) &&
		          text_copy(one.form, sizeof(one.form), item->form));
		for (int units = 0; units < UNIT_SYSTEM_COUNT; units++) {
			ck_assert(ingredient_picked_words(&one, (enum unit_system)units, buffer, sizeof(buffer)));
			if (item->adding >= OWN_ADDINGS) {
				KK_REFUSED(&kit, FAULT_MISUSE, try_ingredient(buffer, &again));
				continue;
			}
			KK_OK(&kit, try_ingredient(buffer, &again));
			ck_assert_msg(again.amount == one.amount && again.amount_most == one.amount_most &&
			                  again.measure == one.measure,
			              "%s", buffer);
			ck_assert_str_eq(again.name, one.name);
			ck_assert_str_eq(again.form, one.form);
			ck_assert_int_eq(again.supply, one.supply);
			ck_assert_int_eq(again.adding, one.adding);
			ck_assert_int_eq(again.optional, one.optional);
			ck_assert_str_eq(again.known, one.known);
		}
	}
}
END_TEST

/* A name that is itself on the list needs no more; as= says what any other one is. */
START_TEST(an_ingredient_is_picked_by_its_name_or_by_as)
{
	struct log_recipe_ingredient ingredient;
	char buffer[RECIPE_LINE_MAX_BYTES];

	KK_OK(&kit, try_ingredient("ingredient Grapes supply=fruit amount=\"4 lb\"", &ingredient));
	ck_assert_str_eq(ingredient.known, "grape");
	ck_assert(ingredient_picked_words(&ingredient, UNITS_US, buffer, sizeof(buffer)));
	ck_assert_ptr_nonnull(strstr(buffer, " as=\"grape\""));
	KK_OK(&kit, try_ingredient("ingredient \"Concord grapes\" amount=\"5 cup\"", &ingredient));
	ck_assert_str_eq(ingredient.known, "");
	KK_OK(&kit, try_ingredient("ingredient \"Concord grapes\" amount=\"5 cup\" as=grapes", &ingredient));
	ck_assert_str_eq(ingredient.known, "grape");
	ck_assert(ingredient_picked_words(&ingredient, UNITS_US, buffer, sizeof(buffer)));
	ck_assert_ptr_nonnull(strstr(buffer, " as=\"grape\""));
	KK_OK(&kit, try_ingredient("ingredient Grapes amount=\"5 cup\" as=unlisted", &ingredient));
	ck_assert_str_eq(ingredient.known, "");
	KK_REFUSED(&kit, FAULT_MISUSE, try_ingredient("ingredient Grapes amount=\"5 cup\" as=moon", &ingredient));
}
END_TEST

START_TEST(what_a_line_does_not_say_has_its_default)
{
	struct log_recipe recipe = jam();
	struct log_recipe_ingredient ingredient;

	recipe.id = 5;
	KK_OK(&kit, try_recipe("recipe \"Plain\" acidity=low_acid", &recipe));
	ck_assert_int_eq(recipe.id, 5);
	ck_assert_uint_eq(recipe.ingredient_count, 3); /* these stay */
	ck_assert_str_eq(recipe.food, "");
	ck_assert_str_eq(recipe.source, "");
	ck_assert_int_eq(recipe.acidity, ACIDITY_LOW_ACID);
	ck_assert_int_eq(recipe.gel_test, GEL_TEST_NONE);
	ck_assert_int_eq(recipe.headspace_thou, 250);
	ck_assert_int_eq(recipe.multiple_max, 1);
	ck_assert_int_eq(recipe.foam_percent, 33);
	ck_assert_int_eq(recipe.vinegar_percent, 0);
	ck_assert_int_eq(recipe.acid_swap, ACID_SWAP_NONE);
	ck_assert_int_eq(recipe.yield_low_ul, 0);
	ck_assert_int_eq(recipe.yield_high_ul, 0);
	/* The tables know how acid their foods are. */
	KK_OK(&kit, try_recipe("recipe \"Beans\" food=\"green beans (snap and Italian)\" retired", &recipe));
	ck_assert_int_eq(recipe.acidity, ACIDITY_LOW_ACID);
	ck_assert(recipe.retired);
	KK_OK(&kit, try_ingredient("ingredient \"water\" amount=\"1 qt\"", &ingredient));
	ck_assert_int_eq(ingredient.supply, SUPPLY_OTHER);
	ck_assert_int_eq(ingredient.adding, ADD_AT_START);
	ck_assert_str_eq(ingredient.form, "");
}
END_TEST

START_TEST(a_line_tells_vinegar_yield_and_a_range)
{
	struct log_recipe recipe = { 0 };
	struct log_recipe_ingredient line;

	KK_OK(&kit, try_recipe("recipe A acidity=acid vinegar=5 lemon=yes yield=\"6 qt\"", &recipe));
	ck_assert_int_eq(recipe.vinegar_percent, 5);
	ck_assert_int_eq(recipe.acid_swap, ACID_SWAP_LEMON_FOR_VINEGAR);
	ck_assert_int_eq(recipe.yield_low_ul, recipe.yield_high_ul);
	KK_OK(&kit, try_recipe("recipe A acidity=acid yield=\"1 L to 1.5 L\"", &recipe));
	ck_assert_int_eq(recipe.yield_low_ul, 1000000);
	ck_assert_int_eq(recipe.yield_high_ul, 1500000);
	KK_OK(&kit, try_ingredient("ingredient dill amount=\"4 to 5\"", &line));
	ck_assert_int_eq(line.amount, 4);
	ck_assert_int_eq(line.amount_most, 5);
}
END_TEST

START_TEST(headspace_is_read_in_inches)
{
	static const struct {
		const char *words;
		int thou;
	} cases[] = { { "1/4", 250 },   { "1/2", 500 },        { "1", 1000 },        { "1-1/4", 1250 },
		      { "3/8", 375 },   { "0.25", 250 },       { "1.125", 1125 },    { "1/3", 333 },
		      { "0.333", 333 }, { "\"1/4 in\"", 250 }, { "\"1 1/4\"", 1250 } };

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct log_recipe recipe = { 0 };
		struct log_recipe again = { 0 };
		char line[RECIPE_LINE_MAX_BYTES];
		struct text text = TEXT_OVER(line);

		text_add(&text, "recipe \"A\" acidity=acid headspace=%s", cases[i].words);
		KK_OK(&kit, try_recipe(line, &recipe));
		ck_assert_int_eq(recipe.headspace_thou, cases[i].thou);
		ck_assert(recipe_line_words(&recipe, line, sizeof(line)));
		KK_OK(&kit, try_recipe(line, &again));
		ck_assert_int_eq(again.headspace_thou, cases[i].thou);
	}
}
END_TEST

START_TEST(a_line_with_a_wrong_word_says_which)
{
	static const struct {
		const char *line;
		const char *says;
	} cases[] = {
		{ "recipe", "needs a name" },
		{ "recipe \"\" acidity=acid", "needs a name" },
		{ "recipe \"A\"", "acidity=" },
		{ "recipe \"A\" food=\"moon cheese\"", "acidity=" },
		{ "recipe \"A\" acidity=sour", "acid, acidified or low_acid" },
		{ "recipe \"A\" acidity=acid pectin=lots", "none, regular or low_methoxyl" },
		{ "recipe \"A\" acidity=acid hold=1m", "hold=" },
		{ "recipe \"A\" acidity=acid hold=", "hold=" },
		{ "recipe \"A\" acidity=acid hold=-1", "hold=" },
		{ "recipe \"A\" acidity=acid hold=99999999999", "hold=" },
		{ "recipe \"A\" acidity=acid multiple=0", "multiple=" },
		{ "recipe \"A\" acidity=acid foam=100", "foam=" },
		{ "recipe \"A\" acidity=acid boiloff=15-5", "boiloff=" },
		{ "recipe \"A\" acidity=acid boiloff=5-", "boiloff=" },
		{ "recipe \"A\" acidity=acid gel=maybe", "yes or no" },
		{ "recipe \"A\" acidity=acid headspace=0", "headspace=" },
		{ "recipe \"A\" acidity=acid headspace=1/0", "headspace=" },
		{ "recipe \"A\" acidity=acid headspace=4", "headspace=" },
		{ "recipe \"A\" acidity=acid headspace=1/4x", "headspace=" },
		{ "recipe \"A\" acidity=acid headspace=0.12345", "headspace=" },
		{ "recipe \"A\" acidity=acid headspace=1.", "headspace=" },
		{ "recipe \"A\" acidity=acid color=red", "\"color=red\" is not one of food=" },
		{ "recipe \"A\" acidity=acid foods=x", "is not one of" },
		{ "recipe \"A\" acidity=acid acidity=acid", "twice" },
		{ "recipe \"A\" acidity=acid loud", "is not one of" },
		{ "recipe \"A\" acidity=acid vinegar=4", "vinegar= is a whole number from 5 to 10" },
		{ "recipe \"A\" acidity=acid yield=\"6 lb\"", "yield= is a volume" },
		{ "recipe \"A\" acidity=acid yield=\"some\"", "yield=: " },
		{ "recipe \"A\" acidity=acid lemon=perhaps", "lemon= is yes or no" },
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct log_recipe recipe = jam();
		struct log_recipe before = recipe;

		ck_assert_msg(!try_recipe(cases[i].line, &recipe), "%s", cases[i].line);
		ck_assert_int_eq(kit.fault.kind, FAULT_MISUSE);
		refusal_says(cases[i].says);
		ck_assert_mem_eq(&recipe, &before, sizeof(recipe));
	}
}
END_TEST

START_TEST(an_ingredient_line_with_a_wrong_word_says_which)
{
	static const struct {
		const char *line;
		const char *says;
	} cases[] = {
		{ "ingredient", "needs a name" },
		{ "ingredient \"salt\"", "Say how much of salt" },
		{ "ingredient \"salt\" amount=\"\"", "amount= of salt" },
		{ "ingredient \"salt\" amount=\"0 g\"", "The amount of salt is zero" },
		{ "ingredient \"salt\" amount=\"3 pinches\"", "\"pinches\"" },
		{ "ingredient \"salt\" amount=\"2 tsp to 1 tsp\"", "From the smaller amount to the larger" },
		{ "ingredient \"salt\" amount=\"2 tsp\" supply=salty", "supply=" },
		{ "ingredient \"salt\" amount=\"2 tsp\" when=soon", "when=" },
		{ "ingredient \"salt\" amount=\"2 tsp\" amount=\"3 tsp\"", "twice" },
		{ "ingredient \"salt\" amount=\"2 tsp\" fine", "is not one of supply=" },
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct log_recipe_ingredient ingredient = { .amount = 77 };

		ck_assert_msg(!try_ingredient(cases[i].line, &ingredient), "%s", cases[i].line);
		ck_assert_int_eq(kit.fault.kind, FAULT_MISUSE);
		refusal_says(cases[i].says);
		ck_assert_int_eq(ingredient.amount, 77);
	}
}
END_TEST

/* --- recipes of the log --- */

START_TEST(built_in_recipes_come_first)
{
	ck_assert_uint_eq(kitchen_recipe_count(kit.kitchen), recipe_count);
	ck_assert_uint_ge(recipe_count, 12);
	ck_assert_ptr_eq(kitchen_recipe(kit.kitchen, 0), &recipes[0]);
	ck_assert_ptr_null(kitchen_recipe(kit.kitchen, recipe_count));
	ck_assert_int_eq(kitchen_recipe_own_id(kit.kitchen, 0), 0);
	ck_assert_int_eq(kitchen_recipe_own_id(kit.kitchen, recipe_count), 0);
	ck_assert_ptr_eq(kitchen_recipe_named(kit.kitchen, recipes[3].name), &recipes[3]);
	ck_assert_ptr_null(kitchen_recipe_named(kit.kitchen, "Raspberry jam"));
}
END_TEST

START_TEST(a_recipe_of_ones_own_is_kept)
{
	struct log_recipe recipe = jam();
	struct log_recipe kept;
	const struct recipe *own;

	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	said("Recipe added: Raspberry jam, 3 ingredients, jam without added pectin");
	kk_reopen(&kit);
	ck_assert_uint_eq(kitchen_recipe_count(kit.kitchen), recipe_count + 1);
	own = kitchen_recipe(kit.kitchen, recipe_count);
	ck_assert_str_eq(own->name, "Raspberry jam");
	ck_assert_uint_eq(own->ingredient_count, 3);
	ck_assert_str_eq(own->ingredients[0].form, "crushed");
	ck_assert_int_eq(own->ingredients[1].amount, 1200000);
	ck_assert(own->ingredients[2].optional);
	ck_assert_ptr_eq(kitchen_recipe_named(kit.kitchen, "raspberry jam"), own);
	ck_assert_int_eq(kitchen_recipe_own_id(kit.kitchen, recipe_count), recipe.id);
	KK_OK(&kit, kitchen_own_recipe(kit.kitchen, recipe.id, &kept, &kit.fault));
	ck_assert_str_eq(kept.caution, "It \"spits\"");
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_own_recipe(kit.kitchen, 99, &kept, &kit.fault));
}
END_TEST

START_TEST(a_recipe_is_edited_and_retired)
{
	struct log_recipe recipe = jam();

	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	recipe.ingredient_count = 2;
	ck_assert(text_copy(recipe.name, sizeof(recipe.name), "Blackberry jam"));
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	ck_assert_uint_eq(kitchen_recipe_count(kit.kitchen), recipe_count + 1);
	ck_assert_uint_eq(kitchen_recipe_named(kit.kitchen, "Blackberry jam")->ingredient_count, 2);
	ck_assert_ptr_null(kitchen_recipe_named(kit.kitchen, "Raspberry jam"));
	recipe.retired = true;
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	said("Recipe changed: Blackberry jam, 2 ingredients, jam without added pectin, retired");
	ck_assert_uint_eq(kitchen_recipe_count(kit.kitchen), recipe_count);
}
END_TEST

START_TEST(a_recipe_without_a_process_is_kept_and_says_so)
{
	struct log_recipe recipe = jam();

	recipe.food[0] = '\0';
	recipe.packs[0] = '\0';
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	said("Recipe added: Raspberry jam, 3 ingredients, no published process");
	ck_assert_str_eq(kitchen_recipe_named(kit.kitchen, "Raspberry jam")->food, "");
}
END_TEST

/* A recipe the check refuses is nowhere written. */
static void recipe_refused(struct log_recipe *recipe, const char *says)
{
	int64_t before = kk_journal(&kit);
	bool put = kitchen_put_recipe(kit.kitchen, recipe, &kit.fault);

	if (!put)
		refusal_says(says);
	kk_refused(&kit, put, FAULT_REFUSED, says);
	ck_assert_int_eq(kk_journal(&kit), before);
}

START_TEST(a_recipe_that_breaks_a_rule_is_refused)
{
	struct log_recipe recipe = jam();

	recipe.source[0] = '\0';
	recipe_refused(&recipe, "where the recipe comes from");
	recipe = jam();
	ck_assert(text_copy(recipe.food, sizeof(recipe.food), "moon cheese"));
	recipe_refused(&recipe, "moon cheese");
	recipe = jam();
	recipe.acidity = ACIDITY_LOW_ACID;
	recipe_refused(&recipe, "acid in the tables");
	recipe = jam();
	recipe.ingredient_count = 0;
	recipe_refused(&recipe, "ingredients");
	recipe = jam();
	ck_assert(text_copy(recipe.name, sizeof(recipe.name), recipes[0].name));
	recipe_refused(&recipe, "built-in");
	ck_assert(text_copy(recipe.name, sizeof(recipe.name), "GRAPE-JELLY"));
	recipe_refused(&recipe, "built-in");
	recipe = jam();
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	recipe = jam();
	recipe_refused(&recipe, "already");
	recipe = jam();
	recipe.id = 99;
	ck_assert(text_copy(recipe.name, sizeof(recipe.name), "Other jam"));
	KK_REFUSED(&kit, FAULT_MISSING, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
}
END_TEST

START_TEST(a_new_recipe_is_undone_in_the_house)
{
	struct log_subject house = { .kind = SUBJECT_HOUSE };
	struct log_recipe recipe = jam();
	char words[SENTENCE_MAX_BYTES];

	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &recipe, &kit.fault));
	KK_OK(&kit, kitchen_undo(kit.kitchen, house, words, sizeof(words), &kit.fault));
	ck_assert_uint_eq(kitchen_recipe_count(kit.kitchen), recipe_count);
	KK_OK(&kit, kitchen_redo(kit.kitchen, house, words, sizeof(words), &kit.fault));
	ck_assert_uint_eq(kitchen_recipe_named(kit.kitchen, "Raspberry jam")->ingredient_count, 3);
}
END_TEST

/* --- supplies --------------------------------------------------------------------------------- */

static int64_t stock(enum supply_kind kind, const char *size)
{
	struct log_supply supply;

	return log_supply_of(kit.log, kind, size, &supply, NULL) ? supply.stock : -1;
}

static bool in(enum supply_kind kind, const char *size, int64_t amount)
{
	return kitchen_supply_in(kit.kitchen, kind, size, amount, &kit.fault);
}

static bool counted(enum supply_kind kind, const char *size, int64_t amount)
{
	return kitchen_supply_count(kit.kitchen, kind, size, amount, &kit.fault);
}

START_TEST(receipts_begin_a_ledger_and_add_to_it)
{
	struct log_supply *rows;
	size_t count;

	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), -1);
	KK_OK(&kit, in(SUPPLY_SUGAR, "", 9071847));
	said("Supplies: 20 lb of sugar came in, 20 lb now");
	KK_OK(&kit, in(SUPPLY_SUGAR, "ignored", 5556507));
	said("Supplies: 12 lb 4 oz of sugar came in, 32 lb 4 oz now");
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), 9071847 + 5556507);
	KK_OK(&kit, in(SUPPLY_JAR, "half-pint", 144));
	said("Supplies: 144 half-pints came in, 144 now");
	KK_OK(&kit, in(SUPPLY_JAR, "pint", 1));
	said("Supplies: 1 pint came in, 1 now");
	ck_assert_int_eq(stock(SUPPLY_JAR, "half_pint"), 144);
	KK_OK(&kit, kitchen_supplies(kit.kitchen, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	free(rows);
}
END_TEST

START_TEST(words_of_supplies_are_in_the_units_of_the_house)
{
	KK_OK(&kit, kitchen_set_units(kit.kitchen, UNITS_METRIC, &kit.fault));
	KK_OK(&kit, in(SUPPLY_SUGAR, "", 9071847));
	said("Supplies: 9.07 kg of sugar came in, 9.07 kg now");
	KK_OK(&kit, in(SUPPLY_LEMON_JUICE, "", 2350000));
	said("Supplies: 2.35 L of bottled lemon juice came in, 2.35 L now");
}
END_TEST

START_TEST(a_count_sets_what_was_found)
{
	KK_OK(&kit, in(SUPPLY_SUGAR, "", 9071847));
	KK_OK(&kit, counted(SUPPLY_SUGAR, "", 8618255));
	said("Supplies counted: 19 lb of sugar (before: 20 lb)");
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), 8618255);
	KK_OK(&kit, counted(SUPPLY_SUGAR, "", 8618255));
	said("Supplies counted: 19 lb of sugar (before: 19 lb)");
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), 8618255);
	KK_OK(&kit, counted(SUPPLY_SUGAR, "", 0));
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), 0);
	/* A first count begins the ledger. */
	KK_OK(&kit, counted(SUPPLY_JAR, "quart", 30));
	said("Supplies counted: 30 quarts (before: not kept track of)");
	ck_assert_int_eq(stock(SUPPLY_JAR, "quart"), 30);
}
END_TEST

START_TEST(every_move_stays_in_the_ledger)
{
	struct log_supply supply;
	struct log_supply_move *moves;
	size_t count;

	KK_OK(&kit, in(SUPPLY_SALT, "", 1000000));
	KK_OK(&kit, counted(SUPPLY_SALT, "", 900000));
	ck_assert(log_supply_of(kit.log, SUPPLY_SALT, "", &supply, NULL));
	KK_OK(&kit, log_supply_moves_newest(kit.log, supply.id, 100, &moves, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(moves[1].why, SUPPLY_RECEIPT);
	ck_assert_int_eq(moves[1].amount, 1000000);
	ck_assert_int_eq(moves[0].why, SUPPLY_CORRECTION);
	ck_assert_int_eq(moves[0].amount, -100000);
	ck_assert_int_eq(moves[0].wall_ms, kit.clock.now.wall_ms);
	free(moves);
}
END_TEST

static void supply_refused(bool done, enum fault_kind kind, const char *says)
{
	if (!done)
		refusal_says(says);
	kk_refused(&kit, done, kind, says);
}

START_TEST(what_is_no_supply_is_refused)
{
	int64_t before = kk_journal(&kit);

	supply_refused(in(SUPPLY_JUICE, "", 1000), FAULT_REFUSED, "Juice");
	supply_refused(in(SUPPLY_OTHER, "", 1000), FAULT_REFUSED, "No ledger");
	supply_refused(in((enum supply_kind)77, "", 1000), FAULT_REFUSED, "No ledger");
	supply_refused(in(SUPPLY_JAR, "pail", 10), FAULT_MISUSE, "pail");
	supply_refused(in(SUPPLY_JAR, "", 10), FAULT_MISUSE, "jar size");
	supply_refused(in(SUPPLY_SUGAR, "", 0), FAULT_MISUSE, "how much");
	supply_refused(in(SUPPLY_SUGAR, "", -5), FAULT_MISUSE, "how much");
	supply_refused(in(SUPPLY_SUGAR, "", INT64_MAX), FAULT_MISUSE, "more than");
	supply_refused(counted(SUPPLY_SUGAR, "", -1), FAULT_MISUSE, "less than zero");
	supply_refused(counted(SUPPLY_JUICE, "", 1), FAULT_REFUSED, "Juice");
	ck_assert_int_eq(kk_journal(&kit), before);
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), -1);
}
END_TEST

START_TEST(a_receipt_is_undone_with_its_ledger)
{
	struct log_subject house = { .kind = SUBJECT_HOUSE };
	char words[SENTENCE_MAX_BYTES];

	KK_OK(&kit, in(SUPPLY_SUGAR, "", 1000000));
	KK_OK(&kit, kitchen_undo(kit.kitchen, house, words, sizeof(words), &kit.fault));
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), -1);
	KK_OK(&kit, kitchen_redo(kit.kitchen, house, words, sizeof(words), &kit.fault));
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), 1000000);
}
END_TEST

static bool move(enum supply_kind kind, const char *size, int64_t amount, enum supply_why why)
{
	struct act act;

	KK_OK(&kit, act_begin(&act, kit.kitchen, VERB_PLAN_DROP, 0, &kit.fault));
	if (!supply_move(&act, kind, size, amount, why, &kit.fault))
		return act_fail(&act);
	return act_commit(&act, &kit.fault);
}

START_TEST(use_is_taken_off_only_where_there_is_a_ledger)
{
	KK_OK(&kit, move(SUPPLY_SUGAR, "", -5000, SUPPLY_USE));
	KK_OK(&kit, move(SUPPLY_SUGAR, "", -5000, SUPPLY_CORRECTION));
	KK_OK(&kit, move(SUPPLY_OTHER, "", -5000, SUPPLY_USE));
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), -1);
	KK_OK(&kit, in(SUPPLY_SUGAR, "", 8000));
	KK_OK(&kit, move(SUPPLY_SUGAR, "", -5000, SUPPLY_USE));
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), 3000);
	KK_OK(&kit, move(SUPPLY_SUGAR, "", -1000, SUPPLY_CORRECTION));
	ck_assert_int_eq(stock(SUPPLY_SUGAR, ""), 2000);
	KK_OK(&kit, in(SUPPLY_JAR, "pint", 12));
	KK_OK(&kit, move(SUPPLY_JAR, "Pints", -5, SUPPLY_USE));
	ck_assert_int_eq(stock(SUPPLY_JAR, "pint"), 7);
	KK_REFUSED(&kit, FAULT_MISUSE, move(SUPPLY_JAR, "pail", -5, SUPPLY_USE));
}
END_TEST

/* The recipes are counted in a table, so the list is no constant. */
int main(void)
{
	const struct listed_test listed[] = {
		GROUP("lines", .begin = begin, .end = end),
		TEST(a_recipe_line_sets_all_of_a_recipe),
		TEST(lines_are_written_as_they_were_read),
		EACH(built_in_recipes_go_through_lines_unchanged, 0, (int)recipe_count),
		TEST(an_ingredient_is_picked_by_its_name_or_by_as),
		TEST(what_a_line_does_not_say_has_its_default),
		TEST(a_line_tells_vinegar_yield_and_a_range),
		TEST(headspace_is_read_in_inches),
		TEST(a_line_with_a_wrong_word_says_which),
		TEST(an_ingredient_line_with_a_wrong_word_says_which),
		GROUP("own", .begin = begin, .end = end),
		TEST(built_in_recipes_come_first),
		TEST(a_recipe_of_ones_own_is_kept),
		TEST(a_recipe_is_edited_and_retired),
		TEST(a_recipe_without_a_process_is_kept_and_says_so),
		TEST(a_recipe_that_breaks_a_rule_is_refused),
		TEST(a_new_recipe_is_undone_in_the_house),
		GROUP("supplies", .begin = begin, .end = end),
		TEST(receipts_begin_a_ledger_and_add_to_it),
		TEST(words_of_supplies_are_in_the_units_of_the_house),
		TEST(a_count_sets_what_was_found),
		TEST(every_move_stays_in_the_ledger),
		TEST(what_is_no_supply_is_refused),
		TEST(a_receipt_is_undone_with_its_ledger),
		TEST(use_is_taken_off_only_where_there_is_a_ledger),
	};

	return kk_run(tests_suite("stores", listed, LISTED_COUNT(listed)));
}
