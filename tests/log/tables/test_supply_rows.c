/* Supplies with their ledgers and the kitchen's own recipes come back as they were put. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/journal/acts.h"
#include "log/tables/stock.h"
#include "support/log_kit.h"
#include "support/tests.h"

static struct log_kit kit;

static void begin(void)
{
	kit_start(&kit);
}

static void end(void)
{
	kit_clear(&kit);
}

static const char *const hostile[] = {
	"O'Brien's \"best\"; DROP TABLE jar; --",
	"two\nlines\r\tand a tab \x1b[31m",
	"Gr\303\274\303\237e \346\242\250 \360\237\215\220",
	"\xff\xfe not UTF-8 \x80 %s%n ?1 :a",
};
#define HOSTILE_COUNT (int)(sizeof(hostile) / sizeof(hostile[0]))

#define COPY(array, text) ck_assert(text_copy((array), sizeof(array), (text)))

static void act_begin(void)
{
	KIT_OK(&kit, log_begin(kit.log, &kit.fault));
}

static void act_commit(void)
{
	struct log_entry entry = kit_entry("rows", 0, 0);
	KIT_OK(&kit, log_commit(kit.log, &entry, &kit.fault));
	kit_reopen(&kit);
}

/* --- supplies --------------------------------------------------------------------- */

START_TEST(the_stock_is_the_sum_of_the_ledger)
{
	struct log_supply supply = { .kind = SUPPLY_JAR, .size = "pint", .stock = 404 };
	struct log_supply_move *moves;
	size_t count;
	struct log_supply_move move = { .amount = 24, .why = SUPPLY_RECEIPT, .wall_ms = 3 };
	COPY(move.note, hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_supply(kit.log, &supply, &kit.fault));
	move.supply_id = supply.id;
	KIT_OK(&kit, log_put_supply_move(kit.log, &move, &kit.fault));
	move.id = 0;
	move.amount = -30;
	move.why = SUPPLY_CORRECTION;
	KIT_OK(&kit, log_put_supply_move(kit.log, &move, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_supply_of(kit.log, SUPPLY_JAR, "pint", &supply, &kit.fault));
	ck_assert_int_eq(supply.stock, -6); /* a ledger may show that a receipt was forgotten */
	KIT_OK(&kit, log_supply_moves_newest(kit.log, supply.id, 100, &moves, &count, &kit.fault));
	ck_assert_uint_eq(count, 2);
	ck_assert_int_eq(moves[1].amount, 24);
	ck_assert_int_eq(moves[1].why, SUPPLY_RECEIPT);
	ck_assert_str_eq(moves[1].note, hostile[_i]);
	ck_assert_int_eq(moves[1].wall_ms, 3);
	ck_assert_int_eq(moves[1].batch_id, 0);
	ck_assert_int_eq(moves[1].load_id, 0);
	ck_assert_int_eq(moves[0].why, SUPPLY_CORRECTION);
	moves[0].amount = -4;
	act_begin();
	KIT_OK(&kit, log_put_supply_move(kit.log, &moves[0], &kit.fault));
	act_commit();
	free(moves);
	KIT_OK(&kit, log_supply_of(kit.log, SUPPLY_JAR, "pint", &supply, &kit.fault));
	ck_assert_int_eq(supply.stock, 20);
	ck_assert(!log_supply_of(kit.log, SUPPLY_JAR, "quart", &supply, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
}
END_TEST

START_TEST(every_kind_of_supply_is_stored_once)
{
	struct log_supply *rows;
	size_t count;
	act_begin();
	for (int i = 0; i < SUPPLY_KIND_COUNT; i++) {
		struct log_supply supply = { .kind = (enum supply_kind)i };
		struct log_supply out;
		KIT_OK(&kit, log_put_supply(kit.log, &supply, &kit.fault));
		KIT_OK(&kit, log_supply_of(kit.log, (enum supply_kind)i, "", &out, &kit.fault));
		ck_assert_int_eq(out.kind, i);
		ck_assert_int_eq(out.id, supply.id);
		ck_assert_int_eq(out.stock, 0);
	}
	struct log_supply pints = { .kind = SUPPLY_JAR, .size = "pint" };
	KIT_OK(&kit, log_put_supply(kit.log, &pints, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_supplies(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, SUPPLY_KIND_COUNT + 1);
	for (size_t i = 1; i < count; i++) {
		int order = strcmp(supply_name(rows[i - 1].kind), supply_name(rows[i].kind));
		ck_assert(order < 0 || (order == 0 && strcmp(rows[i - 1].size, rows[i].size) < 0));
	}
	free(rows);
	pints.id = 0;
	act_begin();
	ck_assert(!log_put_supply(kit.log, &pints, &kit.fault));
	log_abandon(kit.log);
	act_begin();
	struct log_supply none = { .kind = SUPPLY_KIND_COUNT };
	ck_assert(!log_put_supply(kit.log, &none, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
	log_abandon(kit.log);
}
END_TEST

/* --- recipes ------------------------------------------------------------------------ */

static struct log_recipe whole_recipe(const char *words)
{
	struct log_recipe recipe = {
		.pectin = PECTIN_LOW_METHOXYL,
		.acidity = ACIDITY_ACIDIFIED,
		.gel_test = GEL_TEST_TEMPERATURE,
		.boil_hold_s = 90,
		.headspace_thou = 250,
		.multiple_max = 4,
		.foam_percent = 40,
		.boil_off_low_percent = 3,
		.boil_off_high_percent = 12,
		.vinegar_percent = 6,
		.acid_swap = ACID_SWAP_LEMON_FOR_VINEGAR,
		.yield_low_ul = 1000,
		.yield_high_ul = 2000,
		.ingredient_count = OWN_INGREDIENTS_MAX,
	};
	COPY(recipe.name, words);
	COPY(recipe.food, words);
	COPY(recipe.packs, "hot_sterile_jar hot_unsterile_jar");
	COPY(recipe.jars, "half_pint pint");
	COPY(recipe.caution, words);
	COPY(recipe.source, "house recipe, no source");
	for (int i = 0; i < OWN_INGREDIENTS_MAX; i++) {
		struct log_recipe_ingredient *ingredient = &recipe.ingredients[i];
		COPY(ingredient->name, words);
		COPY(ingredient->form, words);
		COPY(ingredient->known, i % 2 == 0 ? words : "");
		ingredient->supply = (enum supply_kind)(i + 1);
		ingredient->measure = (enum measure)(i % MEASURE_COUNT);
		ingredient->amount = 1000 + i;
		ingredient->amount_most = i % 3 == 0 ? 0 : 1000 + 2 * i;
		ingredient->adding = (enum adding)(i % OWN_ADDINGS);
		ingredient->optional = i % 2 == 1;
	}
	return recipe;
}

static void recipes_are_equal(const struct log_recipe *a, const struct log_recipe *b)
{
	ck_assert_str_eq(a->name, b->name);
	ck_assert_str_eq(a->food, b->food);
	ck_assert_str_eq(a->packs, b->packs);
	ck_assert_str_eq(a->jars, b->jars);
	ck_assert_int_eq(a->pectin, b->pectin);
	ck_assert_int_eq(a->acidity, b->acidity);
	ck_assert_int_eq(a->gel_test, b->gel_test);
	ck_assert_int_eq(a->boil_hold_s, b->boil_hold_s);
	ck_assert_int_eq(a->headspace_thou, b->headspace_thou);
	ck_assert_int_eq(a->multiple_max, b->multiple_max);
	ck_assert_int_eq(a->foam_percent, b->foam_percent);
	ck_assert_int_eq(a->boil_off_low_percent, b->boil_off_low_percent);
	ck_assert_int_eq(a->boil_off_high_percent, b->boil_off_high_percent);
	ck_assert_int_eq(a->vinegar_percent, b->vinegar_percent);
	ck_assert_int_eq(a->acid_swap, b->acid_swap);
	ck_assert_int_eq(a->yield_low_ul, b->yield_low_ul);
	ck_assert_int_eq(a->yield_high_ul, b->yield_high_ul);
	ck_assert_str_eq(a->caution, b->caution);
	ck_assert_str_eq(a->source, b->source);
	ck_assert_int_eq(a->retired, b->retired);
	ck_assert_uint_eq(a->ingredient_count, b->ingredient_count);
	for (size_t i = 0; i < a->ingredient_count; i++) {
		ck_assert_str_eq(a->ingredients[i].name, b->ingredients[i].name);
		ck_assert_int_eq(a->ingredients[i].supply, b->ingredients[i].supply);
		ck_assert_int_eq(a->ingredients[i].measure, b->ingredients[i].measure);
		ck_assert_int_eq(a->ingredients[i].amount, b->ingredients[i].amount);
		ck_assert_int_eq(a->ingredients[i].amount_most, b->ingredients[i].amount_most);
		ck_assert_str_eq(a->ingredients[i].form, b->ingredients[i].form);
		ck_assert_int_eq(a->ingredients[i].adding, b->ingredients[i].adding);
		ck_assert_int_eq(a->ingredients[i].optional, b->ingredients[i].optional);
		ck_assert_str_eq(a->ingredients[i].known, b->ingredients[i].known);
	}
}

START_TEST(a_recipe_comes_back_with_its_ingredients_in_order)
{
	struct log_recipe out;
	struct log_recipe row = whole_recipe(hostile[_i]);
	act_begin();
	KIT_OK(&kit, log_put_recipe(kit.log, &row, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_recipe_get(kit.log, row.id, &out, &kit.fault));
	recipes_are_equal(&out, &row);
	row.ingredients[0] = row.ingredients[11];
	row.ingredient_count = 2;
	row.pectin = PECTIN_NONE;
	row.gel_test = GEL_TEST_NONE;
	act_begin();
	KIT_OK(&kit, log_put_recipe(kit.log, &row, &kit.fault));
	act_commit();
	KIT_OK(&kit, log_recipe_get(kit.log, row.id, &out, &kit.fault));
	recipes_are_equal(&out, &row);
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM recipe_ingredient"), 2);
}
END_TEST

START_TEST(recipes_are_listed_by_name_without_the_retired)
{
	static const char *const names[] = { "quince jelly", "apple butter", "old jam", "grape juice" };
	struct log_recipe *rows;
	size_t count;
	act_begin();
	for (int i = 0; i < 4; i++) {
		struct log_recipe row = whole_recipe(names[i]);
		row.retired = i == 2;
		row.ingredient_count = (size_t)i;
		KIT_OK(&kit, log_put_recipe(kit.log, &row, &kit.fault));
	}
	act_commit();
	KIT_OK(&kit, log_recipes(kit.log, &rows, &count, &kit.fault));
	ck_assert_uint_eq(count, 3);
	ck_assert_str_eq(rows[0].name, "apple butter");
	ck_assert_uint_eq(rows[0].ingredient_count, 1);
	ck_assert_str_eq(rows[1].name, "grape juice");
	ck_assert_uint_eq(rows[1].ingredient_count, 3);
	ck_assert_str_eq(rows[2].name, "quince jelly");
	ck_assert_uint_eq(rows[2].ingredient_count, 0);
	free(rows);
}
END_TEST

START_TEST(a_recipe_without_a_source_or_with_a_taken_name_is_refused)
{
	struct log_recipe row = whole_recipe("quince jelly");
	act_begin();
	KIT_OK(&kit, log_put_recipe(kit.log, &row, &kit.fault));
	act_commit();
	struct log_recipe again = whole_recipe("quince jelly");
	struct log_recipe bare = whole_recipe("bare");
	bare.source[0] = '\0';
	struct log_recipe empty = whole_recipe("an ingredient of nothing");
	empty.ingredients[3].amount = 0;
	struct log_recipe *const bad[] = { &again, &bare, &empty };
	for (int i = 0; i < 3; i++) {
		act_begin();
		ck_assert(!log_put_recipe(kit.log, bad[i], &kit.fault));
		ck_assert_int_eq(kit.fault.kind, FAULT_REFUSED);
		ck_assert_int_eq(bad[i]->id, 0);
		log_abandon(kit.log);
	}
	ck_assert_int_eq(kit_number(kit.path, "SELECT count(*) FROM recipe"), 1);
}
END_TEST

/* --- both --------------------------------------------------------------------------- */

START_TEST(a_missing_row_is_missing)
{
	struct log_recipe recipe;
	struct log_supply_move move = { .id = 404 };
	ck_assert(!log_recipe_get(kit.log, 404, &recipe, NULL));
	act_begin();
	ck_assert(!log_put_supply_move(kit.log, &move, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	log_abandon(kit.log);
}
END_TEST

START_TEST(nothing_is_written_outside_an_act)
{
	struct log_supply supply = { .kind = SUPPLY_SUGAR };
	struct log_supply_move move = { .supply_id = 1 };
	struct log_recipe recipe = whole_recipe("x");
	ck_assert(!log_put_supply(kit.log, &supply, NULL));
	ck_assert(!log_put_supply_move(kit.log, &move, NULL));
	ck_assert(!log_put_recipe(kit.log, &recipe, &kit.fault));
	ck_assert_ptr_nonnull(strstr(kit.fault.sentence, "outside an act"));
}
END_TEST

START_TEST(every_reason_of_a_move_is_stored)
{
	struct log_supply supply = { .kind = SUPPLY_SUGAR };
	struct log_supply_move *moves;
	size_t count;
	act_begin();
	KIT_OK(&kit, log_put_supply(kit.log, &supply, &kit.fault));
	for (int i = 0; i < SUPPLY_WHY_COUNT; i++) {
		struct log_supply_move move = { .supply_id = supply.id, .why = (enum supply_why)i };
		KIT_OK(&kit, log_put_supply_move(kit.log, &move, &kit.fault));
		KIT_OK(&kit, log_supply_moves_newest(kit.log, supply.id, 100, &moves, &count, &kit.fault));
		ck_assert_int_eq(moves[0].why, i);
		free(moves);
	}
	log_abandon(kit.log);
}
END_TEST

START_TEST(a_value_no_version_writes_is_damage)
{
	struct log_supply supply;
	struct log_recipe recipe = whole_recipe("quince jelly");
	struct log_entry entry = kit_entry("Sugar bought", 0, 0);
	int64_t sugar_id;
	KIT_OK(&kit, kit_put_supply(kit.log, SUPPLY_SUGAR, 1, &sugar_id, &entry, &kit.fault));
	act_begin();
	KIT_OK(&kit, log_put_recipe(kit.log, &recipe, &kit.fault));
	act_commit();
	kit_sql(kit.path, "UPDATE supply SET kind = 'moonlight'");
	ck_assert(!log_supply_of(kit.log, SUPPLY_SUGAR, "", &supply, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_MISSING);
	struct log_supply *rows;
	size_t count;
	ck_assert(!log_supplies(kit.log, &rows, &count, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
	ck_assert_ptr_null(rows);
	kit_sql(kit.path, "PRAGMA ignore_check_constraints = 1; "
	                  "UPDATE recipe_ingredient SET adding = 'at_dawn'");
	ck_assert(!log_recipe_get(kit.log, recipe.id, &recipe, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
	struct log_recipe *recipe_rows;
	ck_assert(!log_recipes(kit.log, &recipe_rows, &count, &kit.fault));
	ck_assert_ptr_null(recipe_rows);
	kit_sql(kit.path, "PRAGMA ignore_check_constraints = 1; UPDATE recipe SET gel_test = 7");
	ck_assert(!log_recipe_get(kit.log, recipe.id, &recipe, &kit.fault));
	ck_assert_int_eq(kit.fault.kind, FAULT_DAMAGED);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("rows", .begin = begin, .end = end),
	EACH(the_stock_is_the_sum_of_the_ledger, 0, HOSTILE_COUNT),
	TEST(every_kind_of_supply_is_stored_once),
	EACH(a_recipe_comes_back_with_its_ingredients_in_order, 0, HOSTILE_COUNT),
	TEST(recipes_are_listed_by_name_without_the_retired),
	TEST(a_recipe_without_a_source_or_with_a_taken_name_is_refused),
	TEST(a_missing_row_is_missing),
	TEST(nothing_is_written_outside_an_act),
	TEST(every_reason_of_a_move_is_stored),
	TEST(a_value_no_version_writes_is_damage),
};

TESTS("log rows of supplies and recipes", listed)
