/* What the sheet of a low-methoxyl pectin says: asked once, kept, changed later. */
#include <string.h>

#include "base/text.h"
#include "kitchen/act/undo.h"
#include "kitchen/board/book.h"
#include "kitchen/board/verbs.h"
#include "kitchen/canner/canner.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/plan/plan.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/own.h"
#include "kitchen/recipe/sheet.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/ahead.h"
#include "support/pot_kit.h"
#include "support/tests.h"

#define JELLY "grape jelly, low sugar"
#define UNKNOWN "The sheet's amounts of grape jelly, low sugar are not known yet"

static struct kitchen_kit kit;

/* A kitchen that has its stations and a full shelf, and has read no sheet. */
static void begin(void)
{
	static const char *const lines[] = { "juicer 6 \"Tall juicer\"", "pot 8 \"Wide pot\" \"8 qt\"",
		                             "times run=70 first=45 water=20 wait=20", "helper MK" };

	kk_begin(&kit);
	for (size_t i = 0; i < sizeof(lines) / sizeof(lines[0]); i++)
		KK_OK(&kit, kitchen_setup_line(kit.kitchen, lines[i], 0, &kit.fault));
	pk_stock(&kit);
	(void)pk_juice(&kit, "grapes", "3 gal");
}

static void end(void)
{
	kk_end(&kit);
}

/* What was tried was refused, and the sentence says so. */
static void refused(bool done, enum fault_kind kind, const char *says)
{
	ck_assert(!done);
	ck_assert_int_eq(kit.fault.kind, kind);
	ck_assert_msg(strstr(kit.fault.sentence, says) != NULL, "\"%s\" does not say \"%s\"", kit.fault.sentence, says);
	memset(&kit.fault, 0, sizeof(kit.fault));
}

static struct sheet typed(const char *const words[SHEET_FIELD_COUNT])
{
	struct sheet sheet = { 0 };

	for (int field = 0; field < SHEET_FIELD_COUNT; field++)
		KK_OK(&kit, sheet_read(&sheet, (enum sheet_field)field, words[field], &kit.fault));
	return sheet;
}

static void give(const char *pectin, const char *calcium, const char *acid, const char *multiple, const char *minutes)
{
	const char *const words[SHEET_FIELD_COUNT] = { pectin, calcium, acid, multiple, minutes };
	struct sheet sheet = typed(words);

	KK_OK(&kit, kitchen_put_sheet(kit.kitchen, JELLY, &sheet, &kit.fault));
}

/* What one batch takes of a supply; -1: no line of it. */
static int64_t taken(enum supply_kind kind)
{
	const struct recipe *recipe = kitchen_recipe_named(kit.kitchen, JELLY);

	for (size_t i = 0; i < recipe->ingredient_count; i++)
		if (recipe->ingredients[i].supply == kind)
			return recipe->ingredients[i].amount;
	return -1;
}

/* --- before anything is known ---------------------------------------------------------- */

START_TEST(no_batch_is_started_and_the_sentence_says_what_to_type_where)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, JELLY, "half_pint", 1);
	struct batch_need need;
	struct sheet sheet;

	ck_assert(recipe_has_sheet(JELLY) && !kitchen_sheet(kit.kitchen, JELLY, &sheet));
	refused(kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault), FAULT_REFUSED, UNKNOWN);
	refused(kitchen_batch_need(kit.kitchen, &order, &need, &kit.fault), FAULT_REFUSED,
	        "Choose it on the batch card of a pot and type what the sheet of your pectin says");
	refused(pk_try_batch(&kit, &order), FAULT_REFUSED, UNKNOWN);
	(void)text_copy(order.reason, sizeof(order.reason), "by eye"); /* no reason replaces an amount */
	refused(pk_try_batch(&kit, &order), FAULT_REFUSED, UNKNOWN);
	ck_assert_int_eq(kk_canner(&kit, WIDE_POT)->content, STRIP_EMPTY);
}
END_TEST

START_TEST(forecast_and_plan_say_what_is_missing)
{
	struct log_plan_batch batch = { .multiple = 1,
		                        .ready_minutes = PLAN_ANY_TIME,
		                        .after_runs = PLAN_RUNS_AS_NEEDED };
	struct wishes wishes = { .fruit_mg = 27000000, .count = 1 };
	struct ahead ahead;
	int64_t id;

	(void)text_copy(wishes.fruit, sizeof(wishes.fruit), "grapes");
	(void)text_copy(wishes.wish[0].recipe, sizeof(wishes.wish[0].recipe), JELLY);
	refused(kitchen_look_ahead(kit.kitchen, &wishes, &ahead, &kit.fault), FAULT_REFUSED, UNKNOWN);
	(void)text_copy(batch.recipe, sizeof(batch.recipe), JELLY);
	refused(kitchen_plan_add_batch(kit.kitchen, &batch, &id, &kit.fault), FAULT_REFUSED, UNKNOWN);
}
END_TEST

/* Planned while it was known, then the sheet was taken back. */
START_TEST(a_plan_that_has_lost_its_sheet_is_refused_not_counted_as_nothing)
{
	struct log_plan_batch batch = { .multiple = 1,
		                        .ready_minutes = PLAN_ANY_TIME,
		                        .after_runs = PLAN_RUNS_AS_NEEDED };
	struct log_recipe own;
	const struct kitchen_plan *plan;
	struct moment now;
	int64_t id;

	give("5 tsp", "3 tsp", "none", "2", "none");
	(void)text_copy(batch.recipe, sizeof(batch.recipe), JELLY);
	KK_OK(&kit, kitchen_plan_add_batch(kit.kitchen, &batch, &id, &kit.fault));
	now = kitchen_now(kit.kitchen);
	plan = kitchen_plan(kit.kitchen, &now);
	ck_assert_msg(plan->possible, "%s", plan->why.sentence);
	for (size_t i = 0; i < kitchen_recipe_count(kit.kitchen); i++)
		if (kitchen_recipe_own_id(kit.kitchen, i) != 0)
			KK_OK(&kit,
			      kitchen_own_recipe(kit.kitchen, kitchen_recipe_own_id(kit.kitchen, i), &own, &kit.fault));
	own.retired = true;
	KK_OK(&kit, kitchen_put_recipe(kit.kitchen, &own, &kit.fault));
	plan = kitchen_plan(kit.kitchen, &now);
	ck_assert(!plan->possible);
	ck_assert_msg(strstr(plan->why.sentence, UNKNOWN) != NULL, "%s", plan->why.sentence);
}
END_TEST

/* --- typing it ----------------------------------------------------------------------------- */

START_TEST(typed_once_it_stands_in_the_place_of_the_built_in_recipe)
{
	size_t count = kitchen_recipe_count(kit.kitchen);
	struct sheet sheet;

	give("5 tsp", "3 tsp", "2 tbsp lemon juice", "3", "25");
	pk_says(&kit, "The sheet's amounts of grape jelly, low sugar: low-methoxyl pectin: 5 tsp");
	pk_says(&kit, "acid: 2 tbsp bottled lemon juice, batches in one pot: 3, minutes of process: 25");
	ck_assert_uint_eq(kitchen_recipe_count(kit.kitchen), count);
	ck_assert_int_eq(taken(SUPPLY_PECTIN_LOW), 15000); /* 3 g a teaspoon: engine/recipe/recipe.h */
	ck_assert_int_eq(taken(SUPPLY_CALCIUM_SOLUTION), pk_ul("3 tsp"));
	ck_assert_int_eq(taken(SUPPLY_LEMON_JUICE), pk_ul("2 tbsp"));
	ck_assert_int_eq(taken(SUPPLY_JUICE), pk_ul("4 cups")); /* the rest as built in */
	ck_assert(kitchen_sheet(kit.kitchen, JELLY, &sheet));
	ck_assert_int_eq(sheet.multiple, 3);
	ck_assert_int_eq(sheet.minutes, 25);
	kk_reopen(&kit);
	ck_assert_int_eq(taken(SUPPLY_PECTIN_LOW), 15000);
	(void)pk_batch(&kit, WIDE_POT, JELLY, "half_pint", 2);
	ck_assert_int_eq(pk_supply(&kit, SUPPLY_CALCIUM_SOLUTION, ""),
	                 pk_amount(SUPPLY_CALCIUM_SOLUTION, "2 cups") - pk_amount(SUPPLY_CALCIUM_SOLUTION, "6 tsp"));
}
END_TEST

START_TEST(it_is_taken_back_and_done_again_in_the_house)
{
	struct batch_order order = pk_order(&kit, WIDE_POT, JELLY, "half_pint", 1);
	char said[SENTENCE_MAX_BYTES];
	char *rows = pk_rows(&kit);

	give("5 tsp", "3 tsp", "none", "3", "none");
	KK_OK(&kit, kitchen_undo_about(kit.kitchen, DONE_TO_RECIPES, said, sizeof(said), &kit.fault));
	ck_assert_ptr_nonnull(strstr(said, "The sheet's amounts of " JELLY));
	pk_same_rows(&kit, rows);
	refused(pk_try_batch(&kit, &order), FAULT_REFUSED, UNKNOWN);
	KK_OK(&kit, pk_redo(&kit, SUBJECT_HOUSE, 0));
	KK_OK(&kit, pk_try_batch(&kit, &order));
}
END_TEST

START_TEST(changed_later_each_line_is_there_once)
{
	size_t lines;

	give("5 tsp", "3 tsp", "2 tbsp lemon juice", "3", "25");
	lines = kitchen_recipe_named(kit.kitchen, JELLY)->ingredient_count;
	give("20 g", "1 tbsp", "1/2 tsp citric acid", "2", "none");
	ck_assert_uint_eq(kitchen_recipe_named(kit.kitchen, JELLY)->ingredient_count, lines);
	ck_assert_int_eq(taken(SUPPLY_PECTIN_LOW), 20000);
	ck_assert_int_eq(taken(SUPPLY_LEMON_JUICE), -1);
	ck_assert_int_eq(taken(SUPPLY_CITRIC_ACID), CITRIC_ACID_MG_PER_TSP / 2);
	ck_assert_int_eq(kitchen_recipe_named(kit.kitchen, JELLY)->multiple_max, 2);
	ck_assert_int_eq(kitchen_recipe_named(kit.kitchen, JELLY)->sheet_minutes, 0);
	give("20 g", "none", "none", "2", "none");
	ck_assert_int_eq(taken(SUPPLY_CITRIC_ACID), -1);
	ck_assert_int_eq(taken(SUPPLY_CALCIUM_SOLUTION), -1);
	give("20 g", "2 tsp", "none", "2", "none");
	ck_assert_int_eq(taken(SUPPLY_CALCIUM_SOLUTION), pk_ul("2 tsp"));
}
END_TEST

static const struct {
	enum sheet_field field;
	const char *words;
} wrong[] = {
	{ SHEET_PECTIN, "5" },         { SHEET_PECTIN, "none" },      { SHEET_PECTIN, "0 tsp" },
	{ SHEET_PECTIN, "" },          { SHEET_CALCIUM, "some" },     { SHEET_CALCIUM, "3 lb" },
	{ SHEET_ACID, "2 tbsp" },      { SHEET_ACID, "lemon juice" }, { SHEET_ACID, "2 tbsp fresh lemon juice" },
	{ SHEET_ACID, "2 tbsp cola" }, { SHEET_MULTIPLE, "0" },       { SHEET_MULTIPLE, "17" },
	{ SHEET_MULTIPLE, "none" },    { SHEET_MINUTES, "0" },        { SHEET_MINUTES, "ten" },
};

START_TEST(a_wrong_answer_says_what_would_be_right)
{
	const char *const good[SHEET_FIELD_COUNT] = { "5 tsp", "3 tsp", "2 tbsp vinegar", "3", "25" };
	struct sheet sheet = typed(good);
	struct sheet before = sheet;

	refused(sheet_read(&sheet, wrong[_i].field, wrong[_i].words, &kit.fault), FAULT_MISUSE,
	        sheet_field_form(wrong[_i].field));
	ck_assert_mem_eq(&sheet, &before, sizeof(sheet));
}
END_TEST

START_TEST(what_is_offered_again_reads_back_the_same)
{
	static const char *const answers[][SHEET_FIELD_COUNT] = {
		{ "5 tsp", "3 tsp", "2 tbsp lemon juice", "3", "25" },
		{ "17.3 g", "40 mL", "1 1/4 tsp citric acid", "16", "none" },
		{ "1/4 cup", "none", "1/3 cup vinegar", "1", "600" },
		{ "2 1/2 tbsp", "1 tbsp + 1 tsp", "none", "2", "1" },
	};

	for (size_t i = 0; i < sizeof(answers) / sizeof(answers[0]); i++)
		for (int units = 0; units < UNIT_SYSTEM_COUNT; units++) {
			struct sheet sheet = typed(answers[i]);
			struct sheet again = { 0 };

			for (int field = 0; field < SHEET_FIELD_COUNT; field++) {
				char words[96];

				sheet_words(&sheet, (enum sheet_field)field, (enum unit_system)units, words,
				            sizeof(words));
				KK_OK(&kit, sheet_read(&again, (enum sheet_field)field, words, &kit.fault));
			}
			ck_assert_mem_eq(&again, &sheet, sizeof(sheet));
		}
}
END_TEST

START_TEST(only_a_recipe_that_leaves_its_amounts_to_a_sheet_takes_one)
{
	struct sheet sheet = { .pectin_mg = 15000, .multiple = 2 };

	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_put_sheet(kit.kitchen, "grape jelly", &sheet, &kit.fault));
	KK_REFUSED(&kit, FAULT_REFUSED, kitchen_put_sheet(kit.kitchen, "gravel jelly", &sheet, &kit.fault));
	ck_assert(!recipe_has_sheet("grape jelly"));
}
END_TEST

START_TEST(a_line_of_a_kitchen_file_gives_every_field)
{
	const char *line = "sheet \"" JELLY "\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=none multiple=3";

	refused(kitchen_setup_line(kit.kitchen, line, 0, &kit.fault), FAULT_MISUSE, "minutes of process is missing");
	line = "sheet \"" JELLY "\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=none multiple=3 sugar=3";
	refused(kitchen_setup_line(kit.kitchen, line, 0, &kit.fault), FAULT_MISUSE, "\"sugar=3\" is not");
	line = "sheet \"" JELLY "\" pectin=\"5 tsp\" calcium=\"3 tsp\" acid=none multiple=3 minutes=none";
	KK_OK(&kit, kitchen_setup_line(kit.kitchen, line, 0, &kit.fault));
	ck_assert_int_eq(taken(SUPPLY_PECTIN_LOW), 15000);
}
END_TEST

/* --- its minutes of process ---------------------------------------------------------------- */

static int minutes_of_load(const char *sheet_minutes)
{
	int64_t batch_id;
	struct pick pick;

	give("5 tsp", "3 tsp", "none", "3", sheet_minutes);
	batch_id = pk_batch(&kit, WIDE_POT, JELLY, "half_pint", 1);
	give("5 tsp", "3 tsp", "none", "3", "90"); /* does not reach a pot at work */
	pk_to(&kit, WIDE_POT, PHASE_FILL);
	pk_fill(&kit, batch_id, "half_pint", 4, BOX_A);
	pick = pk_pick(batch_id, "half_pint", 4);
	return kk_load(&kit, pk_load(&kit, BIG_KETTLE, &pick, 1)).minutes;
}

/* Unsterile jars at 4,650 ft: 15 min by schema/process_fruit_tomato_jam.csv. */
START_TEST(the_longer_of_table_and_sheet_counts)
{
	static const struct {
		const char *sheet;
		int minutes;
	} loads[] = { { "none", 15 }, { "10", 15 }, { "15", 15 }, { "25", 25 } };
	int minutes = minutes_of_load(loads[_i].sheet);
	const struct log_load load = kk_load(&kit, strip_load(kk_canner(&kit, BIG_KETTLE))->row.id);

	ck_assert_int_eq(minutes, loads[_i].minutes);
	ck_assert_int_eq(strstr(load.source, "sheet of the pectin") != NULL, loads[_i].minutes > 15);
}
END_TEST

/* Nor is a process that failed run again for less. */
START_TEST(the_whole_process_again_is_as_long_as_the_sheet_says)
{
	int minutes = minutes_of_load("25");
	int64_t load_id = strip_load(kk_canner(&kit, BIG_KETTLE))->row.id;

	kk_to(&kit, load_id, PHASE_HOLD);
	kk_pass(&kit, 3 * MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_STOP, 0));
	kk_pass(&kit, MINUTE_MS);
	KK_OK(&kit, kk_try(&kit, load_id, EXCEPTION_REDO, 0));
	ck_assert_int_eq(kk_load(&kit, load_id).minutes, minutes);
	kk_to(&kit, load_id, PHASE_COOLING);
	ck_assert_msg(kk_load(&kit, load_id).verdict == VERDICT_VALID, "%s", kk_load(&kit, load_id).verdict_why);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("sheet", .begin = begin, .end = end),
	TEST(no_batch_is_started_and_the_sentence_says_what_to_type_where),
	TEST(forecast_and_plan_say_what_is_missing),
	TEST(a_plan_that_has_lost_its_sheet_is_refused_not_counted_as_nothing),
	TEST(typed_once_it_stands_in_the_place_of_the_built_in_recipe),
	TEST(it_is_taken_back_and_done_again_in_the_house),
	TEST(changed_later_each_line_is_there_once),
	EACH_OF(a_wrong_answer_says_what_would_be_right, wrong),
	TEST(what_is_offered_again_reads_back_the_same),
	TEST(only_a_recipe_that_leaves_its_amounts_to_a_sheet_takes_one),
	TEST(a_line_of_a_kitchen_file_gives_every_field),
	EACH(the_longer_of_table_and_sheet_counts, 0, 4),
	TEST(the_whole_process_again_is_as_long_as_the_sheet_says),
};

KK_TESTS("sheet", listed)
