/* The forecast on the screen: its keys act, or say why they do not. */
#include <locale.h>

#include "kitchen/plan/plan.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void begin(void)
{
	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", 24, 80);
	pk_stock(&dk.kit);
}

static void end(void)
{
	dk_end(&dk);
}

static void press(long key)
{
	dk_pass(&dk, SECOND_MS);
	dk_key(&dk, key);
}

static void enter(const char *words)
{
	dk_type(&dk, words);
	press(KEY_CODE_ENTER);
}

static void open_forecast(void)
{
	press('g');
	press('f');
	ck_assert(dk_sees(&dk, "Which fruit:"));
}

START_TEST(a_key_that_cannot_act_says_why)
{
	open_forecast();
	enter("grapes");
	press(KEY_CODE_ESCAPE);
	press('p');
	ck_assert(dk_sees(&dk, "First say how much of it there will be: e."));
	press('e');
	press(KEY_CODE_ENTER);
	enter("60 lb");
	ck_assert(dk_sees(&dk, "[x] grape jelly "));
	press(' ');
	press('b');
	ck_assert(dk_sees(&dk, "First choose with Space what to make from it."));
}
END_TEST

START_TEST(batches_a_pot_are_asked_where_a_chosen_recipe_may_be_multiplied)
{
	open_forecast();
	enter("grapes");
	enter("60 lb");
	press('v');
	ck_assert(dk_sees(&dk, "One batch a pot: this recipe is not multiplied."));
	for (int i = 0; i < 3; i++)
		press(KEY_CODE_DOWN);
	press(' ');
	ck_assert(dk_sees(&dk, "[x] grape juice"));
	press('v');
	ck_assert(dk_sees(&dk, "Batches a pot, 1 to "));
	enter("2");
	ck_assert(dk_sees(&dk, ", 2 in a pot"));
}
END_TEST

START_TEST(without_a_fruit_esc_goes_back_at_once)
{
	open_forecast();
	dk_type(&dk, "gra");
	press(KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk.desk.view, VIEW_SUPPLIES);
	press('f');
	ck_assert(dk_sees(&dk, "Which fruit:"));
	enter("grapes");
	press(KEY_CODE_ESCAPE); /* there is one now, and what it may become */
	ck_assert_int_eq(dk.desk.view, VIEW_FORECAST);
	ck_assert(dk_sees(&dk, "[x] grape jelly "));
}
END_TEST

START_TEST(left_is_a_batch_fewer_and_right_one_more_up_to_all_there_is)
{
	open_forecast();
	enter("grapes");
	enter("60 lb");
	press(KEY_CODE_RIGHT); /* all there is fruit for stands there already */
	dk_says(&dk, "As many as there is fruit for: 13 batches.");
	ck_assert(dk_sees(&dk, "grape jelly: batches 13 "));
	press(KEY_CODE_LEFT);
	ck_assert(dk_sees(&dk, "grape jelly: batches 12"));
	press(KEY_CODE_LEFT);
	ck_assert(dk_sees(&dk, "grape jelly: batches 11"));
	press(KEY_CODE_RIGHT);
	ck_assert(dk_sees(&dk, "grape jelly: batches 12"));
	for (int i = 0; i < 11; i++)
		press(KEY_CODE_LEFT);
	ck_assert(dk_sees(&dk, "grape jelly: batches 1"));
	press(KEY_CODE_LEFT);
	dk_says(&dk, "One batch is the fewest: Space takes it out.");
	ck_assert(dk_sees(&dk, "grape jelly: batches 1"));
}
END_TEST

START_TEST(why_larger_jars_have_a_wider_range_is_said)
{
	open_forecast();
	enter("grapes");
	enter("60 lb");
	ck_assert(dk_sees(&dk, "fills its own jars: a rest that fills no whole half-pint is none at the low"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("forecast", .begin = begin, .end = end, .seconds = 30),
	TEST(a_key_that_cannot_act_says_why),
	TEST(without_a_fruit_esc_goes_back_at_once),
	TEST(left_is_a_batch_fewer_and_right_one_more_up_to_all_there_is),
	TEST(why_larger_jars_have_a_wider_range_is_said),
	TEST(batches_a_pot_are_asked_where_a_chosen_recipe_may_be_multiplied),
};

KK_TESTS("the forecast view", listed)
