/* A recipe of the kitchen's own that begins as a copy: what is copied, what is refused. */
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/recipe/own.h"
#include "support/tests.h"

static struct fault fault;

static struct log_recipe copy_of(const char *name)
{
	const struct recipe *from = recipe_named(name);
	struct log_recipe own;

	memset(&own, 0xA5, sizeof(own)); /* all of it is written */
	ck_assert_msg(from != NULL, "%s is no recipe", name);
	ck_assert_msg(recipe_begin_own(from, &own, &fault), "%s", fault.sentence);
	return own;
}

static void refused(const struct recipe *from, const char *words)
{
	struct log_recipe own = { .name = "as it was" };

	memset(&fault, 0, sizeof(fault));
	ck_assert(!recipe_begin_own(from, &own, &fault));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_msg(strstr(fault.sentence, words) != NULL, "%s", fault.sentence);
	ck_assert_str_eq(own.name, "as it was");
}

/* --- what is copied ---------------------------------------------------------------------------- */

START_TEST(all_that_is_printed_is_copied_but_its_source)
{
	const struct recipe *from = recipe_named("grape jelly");
	struct log_recipe own = copy_of("grape jelly");

	ck_assert_int_eq(own.id, 0);
	ck_assert(!own.retired);
	ck_assert_str_eq(own.name, from->name);
	ck_assert_str_eq(own.food, from->food);
	ck_assert_str_eq(own.packs, from->packs);
	ck_assert_str_eq(own.jars, from->jars);
	ck_assert_str_eq(own.caution, from->caution);
	ck_assert_str_eq(own.source, ""); /* a changed one is no longer the printed one */
	ck_assert_int_eq(own.pectin, from->pectin);
	ck_assert_int_eq(own.acidity, from->acidity);
	ck_assert_int_eq(own.gel_test, from->gel_test);
	ck_assert_int_eq(own.boil_hold_s, from->boil_hold_s);
	ck_assert_int_eq(own.headspace_thou, from->headspace_thou);
	ck_assert_int_eq(own.multiple_max, from->multiple_max);
	ck_assert_int_eq(own.foam_percent, from->foam_percent);
	ck_assert_int_eq(own.boil_off_low_percent, from->boil_off_low_percent);
	ck_assert_int_eq(own.boil_off_high_percent, from->boil_off_high_percent);
	ck_assert_int_eq(own.sheet_minutes, 0);
}
END_TEST

START_TEST(each_line_is_copied_and_picked_by_its_name)
{
	const struct recipe *from = recipe_named("grape jelly");
	struct log_recipe own = copy_of("grape jelly");

	ck_assert_uint_eq(own.ingredient_count, from->ingredient_count);
	for (size_t i = 0; i < from->ingredient_count; i++) {
		const struct ingredient *line = &from->ingredients[i];
		const struct known_ingredient *known = known_ingredient_named(line->name);

		ck_assert_str_eq(own.ingredients[i].name, line->name);
		ck_assert_str_eq(own.ingredients[i].form, line->form);
		ck_assert_int_eq(own.ingredients[i].supply, line->supply);
		ck_assert_int_eq(own.ingredients[i].measure, line->measure);
		ck_assert_int_eq(own.ingredients[i].amount, line->amount);
		ck_assert_int_eq(own.ingredients[i].adding, line->adding);
		ck_assert(own.ingredients[i].optional == line->optional);
		ck_assert_str_eq(own.ingredients[i].known, known != NULL ? known->name : "");
	}
	ck_assert_str_eq(recipe_fruit(&own)->name, "grape");
}
END_TEST

START_TEST(yield_vinegar_and_ranges_are_copied)
{
	const struct recipe *from = recipe_named("pickled beets");
	struct log_recipe own = copy_of("pickled beets");
	struct recipe view;
	size_t ranges = 0;

	ck_assert_int_eq(own.vinegar_percent, 5);
	ck_assert_int_gt(own.yield_low_ul, 0);
	ck_assert_int_eq(own.yield_low_ul, from->yield_low_ul);
	ck_assert_int_eq(own.yield_high_ul, from->yield_high_ul);
	recipe_over(&own, &view);
	ck_assert_int_eq(view.vinegar_percent, 5);
	ck_assert_int_eq(view.yield_high_ul, from->yield_high_ul);
	for (size_t i = 0; i < from->ingredient_count; i++) {
		ck_assert_int_eq(view.ingredients[i].amount_most, from->ingredients[i].amount_most);
		ranges += view.ingredients[i].amount_most > view.ingredients[i].amount;
	}
	ck_assert_uint_eq(ranges, 1);
	own = copy_of("tomato taco sauce");
	ck_assert_int_eq(own.acid_swap, ACID_SWAP_LEMON_FOR_VINEGAR);
	recipe_over(&own, &view);
	ck_assert_int_eq(view.acid_swap, ACID_SWAP_LEMON_FOR_VINEGAR);
}
END_TEST

START_TEST(the_minutes_of_a_sheet_are_copied)
{
	struct recipe from = *recipe_named("grape jelly");
	struct log_recipe own;

	from.sheet_minutes = 15;
	from.ingredients[0].known = "plum"; /* picked as another than its name says */
	ck_assert(recipe_begin_own(&from, &own, &fault));
	ck_assert_int_eq(own.sheet_minutes, 15);
	ck_assert_str_eq(own.ingredients[0].known, "plum");
}
END_TEST

START_TEST(what_may_stand_for_another_line_is_left_out_and_said)
{
	const struct recipe *from = recipe_named("tomatillo green salsa");
	struct log_recipe own = copy_of("tomatillo green salsa");
	char words[200] = "";
	struct text text = TEXT_OVER(words);

	ck_assert_uint_eq(own.ingredient_count, from->ingredient_count - 1);
	for (size_t i = 0; i < own.ingredient_count; i++)
		ck_assert_str_ne(own.ingredients[i].name, "green tomatoes");
	recipe_left_out_words(from, &text);
	ck_assert_str_eq(words,
	                 "Left out: green tomatoes (instead of tomatillos): each line of your own recipe goes in.");
	text = TEXT_OVER(words);
	recipe_left_out_words(recipe_named("grape jelly"), &text);
	ck_assert_uint_eq(text.used, 0);
}
END_TEST

/* Whatever is not refused may be kept as it is, with a name and a source, by its own check. */
START_TEST(every_printed_recipe_is_copied_to_one_that_may_be_kept_or_refused)
{
	int copied = 0;

	for (size_t i = 0; i < recipe_count; i++) {
		struct log_recipe own;
		struct recipe view;

		if (!recipe_begin_own(&recipes[i], &own, &fault)) {
			ck_assert_int_eq(fault.kind, FAULT_REFUSED);
			continue;
		}
		ck_assert(text_copy(own.source, sizeof(own.source), "house recipe, no source"));
		recipe_over(&own, &view);
		ck_assert_msg(recipe_check(&view, &fault), "%s", fault.sentence);
		copied++;
	}
	ck_assert_int_gt(copied, 50); /* of some hundred */
}
END_TEST

/* Its name is one of those of regular pectin, which is kept in another ledger. */
START_TEST(liquid_pectin_is_taken_from_its_own_supply)
{
	struct log_recipe own = copy_of("pear-apple jam");
	size_t i = 0;

	while (i < own.ingredient_count && strcmp(own.ingredients[i].name, "liquid pectin") != 0)
		i++;
	ck_assert_uint_lt(i, own.ingredient_count);
	ck_assert_int_eq(own.ingredients[i].supply, SUPPLY_PECTIN_LIQUID);
	ck_assert_str_eq(own.ingredients[i].known, "");
}
END_TEST

/* --- what is refused ------------------------------------------------------------------------------ */

START_TEST(one_that_waits_for_its_sheet_is_refused)
{
	refused(recipe_named("grape jelly, low sugar"), "sheet");
}
END_TEST

START_TEST(one_that_may_not_be_started_is_refused_with_its_reason)
{
	struct recipe from = *recipe_named("grape jelly");

	from.not_startable = "its page cannot be read.";
	refused(&from, "its page cannot be read.");
}
END_TEST

START_TEST(one_of_more_lines_than_an_own_one_has_is_refused)
{
	struct recipe from = *recipe_named("grape jelly");

	while (from.ingredient_count <= OWN_INGREDIENTS_MAX)
		from.ingredients[from.ingredient_count++] = from.ingredients[0];
	refused(&from, "has 13 ingredients: a recipe of your own has at most 12");
}
END_TEST

START_TEST(one_with_a_time_that_an_own_one_has_not_is_refused)
{
	for (int adding = 0; adding < ADDING_COUNT; adding++) {
		struct recipe from = *recipe_named("grape jelly");
		struct log_recipe own;

		from.ingredients[0].adding = (enum adding)adding;
		if (adding < OWN_ADDINGS)
			ck_assert(recipe_begin_own(&from, &own, &fault));
		else
			refused(&from, "soaked ahead or packed cold");
	}
}
END_TEST

/* --- changed ------------------------------------------------------------------------------------------ */

static const struct known_ingredient *known(const char *name)
{
	return known_ingredient_named(name);
}

START_TEST(another_fruit_is_in_its_name_and_in_its_lines)
{
	struct log_recipe own = copy_of("grape jelly");

	recipe_set_fruit(&own, known("quince"));
	ck_assert_str_eq(own.name, "quince jelly");
	ck_assert_str_eq(own.ingredients[0].name, "quince juice");
	ck_assert_str_eq(own.ingredients[0].known, "quince");
	ck_assert_str_eq(own.ingredients[own.ingredient_count - 1].known, "sugar");
}
END_TEST

START_TEST(another_food_brings_its_packs_jars_and_acidity)
{
	struct log_recipe own = copy_of("grape jelly");

	recipe_set_food(&own, "apples sliced");
	ck_assert_str_eq(own.packs, "hot");
	ck_assert_str_eq(own.jars, "pint quart");
	ck_assert_int_eq(own.acidity, ACIDITY_ACID);
	own.acidity = ACIDITY_LOW_ACID;
	recipe_set_food(&own, "");
	ck_assert_str_eq(own.packs, "");
	ck_assert_str_eq(own.jars, "pint quart"); /* it goes into jars all the same */
	ck_assert_int_eq(own.acidity, ACIDITY_LOW_ACID);
}
END_TEST

START_TEST(packs_and_jars_are_kept_in_the_order_of_the_tables)
{
	struct log_recipe own = copy_of("grape jelly");
	const struct jar_size *jar = recipe_next_jar(&own, NULL);

	ck_assert_str_eq(jar->name, "quarter_pint"); /* a smaller one than those tested */
	ck_assert(!recipe_keeps_jar(&own, jar));
	recipe_keep_jar(&own, jar, true);
	ck_assert_str_eq(own.jars, "quarter_pint half_pint pint");
	recipe_keep_jar(&own, jar_size_named("half_pint"), false);
	ck_assert_str_eq(own.jars, "quarter_pint pint");
	while (jar != NULL && strcmp(jar->name, "quart") != 0)
		jar = recipe_next_jar(&own, jar);
	ck_assert_ptr_null(jar); /* none is tested */
	recipe_keep_pack(&own, pack_named("hot_sterile_jar"), false);
	ck_assert(!recipe_keeps_pack(&own, pack_named("hot_sterile_jar")));
	ck_assert_ptr_nonnull(recipe_next_pack(&own, NULL)); /* it can be taken up again */
	recipe_keep_pack(&own, pack_named("hot_unsterile_jar"), true);
	recipe_keep_pack(&own, pack_named("hot_sterile_jar"), true);
	ck_assert_str_eq(own.packs, "hot_sterile_jar hot_unsterile_jar");
}
END_TEST

START_TEST(a_line_stands_with_those_that_go_in_when_it_does)
{
	struct log_recipe own = copy_of("grape jelly");
	struct log_recipe_ingredient line = { .name = "mint", .adding = ADD_AT_START };
	size_t count = own.ingredient_count;
	size_t at = recipe_put_line(&own, count, &line);

	ck_assert_uint_eq(at, count - 1); /* before the sugar, which goes in at the boil */
	ck_assert_uint_eq(own.ingredient_count, count + 1);
	ck_assert_str_eq(own.ingredients[count].name, "sugar");
	line.adding = ADD_LAST;
	ck_assert_uint_eq(recipe_put_line(&own, at, &line), count);
	ck_assert_uint_eq(own.ingredient_count, count + 1);
	ck_assert_str_eq(own.ingredients[count - 1].name, "sugar");
	ck_assert_str_eq(own.ingredients[count].name, "mint");
}
END_TEST

/* What is said of a copy that was changed; it is kept as far as it holds. */
static const char *said_of(const struct log_recipe *was, struct log_recipe *now)
{
	static char words[400];
	struct text text = TEXT_OVER(words);

	recipe_keep_what_holds(was, now);
	recipe_changed_words(was, now, UNITS_US, &text);
	return words;
}

START_TEST(a_copy_that_is_not_changed_keeps_all_and_nothing_is_said)
{
	struct log_recipe was = copy_of("pickled beets");
	struct log_recipe now = was;

	text_copy(now.name, sizeof(now.name), "our beets");
	ck_assert_str_eq(said_of(&was, &now), "");
	ck_assert_int_eq(now.yield_low_ul, was.yield_low_ul);
	ck_assert_int_eq(now.vinegar_percent, 5);
}
END_TEST

START_TEST(another_amount_of_acid_is_said_and_the_yield_goes)
{
	struct log_recipe was = copy_of("pickled beets");
	struct log_recipe now = was;

	ck_assert_int_eq(now.ingredients[0].supply, SUPPLY_VINEGAR);
	now.ingredients[0].amount /= 2;
	ck_assert_str_eq(said_of(&was, &now), "ITS ACID IS CHANGED: vinegar (5 %) 2 cups, was 1 qt. "
	                                      "What a batch fills, 1 gal, was of other lines and is left out. ");
	ck_assert_int_eq(now.vinegar_percent, 5);
	ck_assert_int_eq(now.yield_low_ul, 0);
	ck_assert_int_eq(now.yield_high_ul, 0);
}
END_TEST

START_TEST(other_acid_in_the_place_of_the_vinegar_is_said)
{
	struct log_recipe was = copy_of("chile salsa");
	struct log_recipe now = was;
	size_t at = 0;

	while (now.ingredients[at].supply != SUPPLY_VINEGAR)
		at++;
	now.ingredients[at].supply = SUPPLY_LEMON_JUICE;
	was.yield_low_ul = was.yield_high_ul = 0;
	ck_assert_str_eq(said_of(&was, &now),
	                 "ITS ACID IS CHANGED: vinegar (5 %) none, was 1 cup; bottled lemon juice 1 cup, was none. "
	                 "With its vinegar goes that it is of 5 %. ");
	ck_assert_int_eq(now.vinegar_percent, 0);
	ck_assert_int_eq(now.acid_swap, ACID_SWAP_NONE);
}
END_TEST

START_TEST(a_range_that_is_gone_is_said_and_one_of_another_fruit_is_none)
{
	struct log_recipe was = copy_of("apricot jam without added pectin");
	struct log_recipe now = was;

	recipe_set_fruit(&now, known("plum"));
	ck_assert_str_eq(said_of(&was, &now),
	                 "What a batch fills, 5 cups to 6 cups, was of other lines and is left out. ");
	now.ingredients[0].amount_most = 0;
	ck_assert_str_eq(said_of(&was, &now),
	                 "Of plums it was 1 qt to 4 1/2 cups. "
	                 "What a batch fills, 5 cups to 6 cups, was of other lines and is left out. ");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("copy"),
	TEST(all_that_is_printed_is_copied_but_its_source),
	TEST(each_line_is_copied_and_picked_by_its_name),
	TEST(yield_vinegar_and_ranges_are_copied),
	TEST(the_minutes_of_a_sheet_are_copied),
	TEST(what_may_stand_for_another_line_is_left_out_and_said),
	TEST(every_printed_recipe_is_copied_to_one_that_may_be_kept_or_refused),
	TEST(liquid_pectin_is_taken_from_its_own_supply),
	TEST(one_that_waits_for_its_sheet_is_refused),
	TEST(one_that_may_not_be_started_is_refused_with_its_reason),
	TEST(one_of_more_lines_than_an_own_one_has_is_refused),
	TEST(one_with_a_time_that_an_own_one_has_not_is_refused),
	TEST(another_fruit_is_in_its_name_and_in_its_lines),
	TEST(another_food_brings_its_packs_jars_and_acidity),
	TEST(packs_and_jars_are_kept_in_the_order_of_the_tables),
	TEST(a_line_stands_with_those_that_go_in_when_it_does),
	TEST(a_copy_that_is_not_changed_keeps_all_and_nothing_is_said),
	TEST(another_amount_of_acid_is_said_and_the_yield_goes),
	TEST(other_acid_in_the_place_of_the_vinegar_is_said),
	TEST(a_range_that_is_gone_is_said_and_one_of_another_fruit_is_none),
};

TESTS("recipe copy", listed)
