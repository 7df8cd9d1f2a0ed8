/* The day plan on the screen: where its ribbons open. */
#include <locale.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/house/house.h"
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

static void line(const char *words)
{
	kk_ok(&dk.kit, kitchen_setup_line(dk.kit.kitchen, words, 0, &dk.kit.fault), words);
}

static void plan(const char *day)
{
	line("helper MK");
	line(day);
	line("juice \"grape\" \"1 gal\" chilled");
	line("batch \"grape jelly\" times=2");
	dk_pass(&dk, SECOND_MS);
	dk_key(&dk, 'p');
	ck_assert(dk_sees(&dk, "A draft: "));
}

START_TEST(a_day_still_to_begin_opens_at_its_beginning)
{
	plan("day 14:00"); /* it is nine */
	ck_assert(dk_sees(&dk, "14:00"));
	ck_assert(!dk_sees(&dk, "10:00"));
}
END_TEST

START_TEST(a_day_that_goes_on_opens_at_now)
{
	plan("day 8:00");
	ck_assert(dk_sees(&dk, "09:00"));
	ck_assert(!dk_sees(&dk, "14:00"));
}
END_TEST

/* Runs or batches in the plan. */
static int runs(void)
{
	size_t count;

	(void)kitchen_plan_runs(dk.kit.kitchen, &count);
	return (int)count;
}

static int batches(void)
{
	size_t count;

	(void)kitchen_plan_batches(dk.kit.kitchen, &count);
	return (int)count;
}

static void answer(const char *text)
{
	dk_type(&dk, text);
	dk_key(&dk, KEY_CODE_ENTER);
}

static void take(int times)
{
	while (times-- > 0)
		dk_key(&dk, KEY_CODE_ENTER);
}

START_TEST(fruit_is_planned_as_one_act_by_a_known_name)
{
	size_t count;
	const struct log_plan_run *rows;
	int64_t before;

	plan("day 14:00");
	before = kk_journal(&dk.kit);
	dk_key(&dk, 'r');
	answer("gr apes"); /* no fruit of the list begins so */
	dk_key(&dk, KEY_CODE_UP);
	answer("goose");
	answer("12 qt");
	dk_says(&dk, "qt");
	answer("20");
	answer("3");
	answer("16:30");
	rows = kitchen_plan_runs(dk.kit.kitchen, &count);
	ck_assert_uint_eq(count, 3);
	ck_assert_str_eq(rows[2].fruit, "gooseberry");
	ck_assert_int_eq(rows[2].fruit_mg, 9071847);
	ck_assert_int_eq(rows[2].ready_minutes, 16 * 60 + 30);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	dk_says(&dk, "planned 20 lb gooseberry, 3 times");
	dk_key(&dk, 'u');
	ck_assert_int_eq(runs(), 0);
}
END_TEST

START_TEST(fruit_may_have_a_name_of_the_house)
{
	size_t count;

	plan("day 14:00");
	dk_key(&dk, 'r');
	answer("concord grapes");
	take(3);
	ck_assert_str_eq(kitchen_plan_runs(dk.kit.kitchen, &count)[0].fruit, "concord grapes");
	ck_assert_uint_eq(count, 1);
	dk_key(&dk, 'r'); /* it is the first of the list from now on */
	take(4);
	ck_assert_str_eq(kitchen_plan_runs(dk.kit.kitchen, &count)[1].fruit, "concord grapes");
}
END_TEST

START_TEST(a_batch_is_planned_as_one_act)
{
	const struct log_plan_batch *row;
	size_t count;
	int64_t before;

	plan("day 14:00");
	before = kk_journal(&dk.kit);
	dk_key(&dk, 'b');
	answer("apple butter");
	dk_draw(&dk);
	while (!dk_sees(&dk, "Which size?")) {
		take(1);
		dk_draw(&dk);
	}
	answer("pints");
	while (!dk_sees(&dk, "How many such batches")) {
		take(1);
		dk_draw(&dk);
	}
	answer("two");
	dk_says(&dk, "Such batches: a whole number from 1 to 64.");
	answer("2");
	answer("15");
	row = &kitchen_plan_batches(dk.kit.kitchen, &count)[2];
	ck_assert_int_eq(batches(), 4);
	ck_assert_str_eq(row->recipe, "apple butter");
	ck_assert_str_eq(row->jar, "pint");
	ck_assert_int_eq(row->ready_minutes, 15 * 60);
	ck_assert_int_eq(row->after_runs, PLAN_RUNS_AS_NEEDED);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	dk_key(&dk, 'u');
	ck_assert_int_eq(batches(), 2);
}
END_TEST

/* The clean-down is the last of the day, and its end a person's word. */
START_TEST(when_all_is_done_the_key_that_ends_the_day_is_named)
{
	struct pick pick;
	int64_t batch_id;
	int col;

	line("helper MK");
	line("day 8:00");
	line("juice \"grape\" \"2 qt\" chilled");
	line("batch \"grape jelly\" jar=half_pint");
	dk_pass(&dk, SECOND_MS);
	dk_keys(&dk, "pg");
	(void)dk_row_of(&dk, "Ends about ", &col);
	batch_id = pk_batch(&dk.kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&dk.kit, WIDE_POT, PHASE_FILL);
	pk_fill(&dk.kit, batch_id, "half_pint", 7, 0);
	pk_to(&dk.kit, WIDE_POT, PHASE_NO_PHASE);
	pick = pk_pick(batch_id, "half_pint", 7);
	kk_to(&dk.kit, pk_load(&dk.kit, BIG_KETTLE, &pick, 1), PHASE_COOLING);
	dk_pass(&dk, 2 * SECOND_MS);
	dk_key(&dk, KEY_CODE_ESCAPE);
	dk_key(&dk, 'p');
	(void)dk_row_of(&dk, "All that was planned is done: clean down, then press d. The plan said ", &col);
	(void)dk_row_of(&dk, "  d day is done  ", &col);
	dk_key(&dk, 'd');
	ck_assert(dk_sees(&dk, "The day ended at "));
	ck_assert(!dk_sees(&dk, "  d day is done  "));
}
END_TEST

/* --- a name that others begin with ----------------------------------------------------------- */

START_TEST(a_blank_behind_a_whole_name_keeps_it_and_the_foot_says_enter)
{
	dk_keys(&dk, "pb");
	dk_type(&dk, "grap");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Space take it"));
	dk_type(&dk, "e jelly");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Enter take it")); /* a blank may go on: without added pectin */
	dk_type(&dk, " ");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "grape jelly, regular pectin"));
	ck_assert(dk_sees(&dk, "grape jelly without added pectin"));
	ck_assert(dk_sees(&dk, "Space take it")); /* no second one goes on */
	dk_key(&dk, ' ');
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Recipe          grape jelly"));
	ck_assert(!dk_sees(&dk, "without added pectin"));
}
END_TEST

START_TEST(a_blank_that_goes_on_with_no_name_chooses)
{
	dk_keys(&dk, "pb");
	dk_type(&dk, "pears in light syrup");
	dk_key(&dk, ' ');
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Recipe          pears in light syrup"));
}
END_TEST

/* --- undo ------------------------------------------------------------------------------------ */

START_TEST(an_empty_plan_takes_nothing_of_the_house_back)
{
	int64_t before;

	line("rule lids-short off");
	before = kk_journal(&dk.kit);
	dk_keys(&dk, "pu");
	dk_says(&dk, "Nothing was done to the plan that could be undone.");
	ck_assert_int_eq(kk_journal(&dk.kit), before);
}
END_TEST

START_TEST(the_plan_is_undone_in_the_plan_and_the_house_in_the_house)
{
	line("kitchen \"Before\"");
	line("batch \"grape jelly\" times=2");
	line("kitchen \"After\"");
	dk_pass(&dk, SECOND_MS);
	dk_keys(&dk, "pu");
	dk_says(&dk, "Undone: Planned 2 times: 1 x grape jelly in half-pints");
	ck_assert_int_eq(batches(), 0);
	ck_assert_str_eq(kitchen_board(dk.kit.kitchen)->house.name, "After");
	dk_key(&dk, KEY_CODE_ESCAPE);
	line("batch \"grape jelly\"");
	dk_keys(&dk, "hu");
	dk_says(&dk, "Undone: The kitchen is called After");
	ck_assert_int_eq(batches(), 1);
}
END_TEST

START_TEST(that_a_plan_was_accepted_is_taken_back_by_pressing_twice)
{
	plan("day 9:00");
	dk_key(&dk, 'g');
	ck_assert(desk_plan(&dk.desk)->state == PLAN_ACCEPTED);
	dk_key(&dk, 'u');
	dk_says(&dk, "That takes back that the plan was accepted: it is a draft again. Press u again if so.");
	ck_assert(desk_plan(&dk.desk)->state == PLAN_ACCEPTED);
	dk_key(&dk, 'n'); /* something else is no answer */
	dk_key(&dk, 'u');
	ck_assert(desk_plan(&dk.desk)->state == PLAN_ACCEPTED);
	dk_key(&dk, 'u');
	ck_assert(desk_plan(&dk.desk)->state == PLAN_DRAFT);
	dk_says(&dk, "Undone: The plan is accepted");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("ribbons", .begin = begin, .end = end),
	TEST(a_day_still_to_begin_opens_at_its_beginning),
	TEST(a_day_that_goes_on_opens_at_now),
	TEST(fruit_is_planned_as_one_act_by_a_known_name),
	TEST(fruit_may_have_a_name_of_the_house),
	TEST(a_batch_is_planned_as_one_act),
	TEST(when_all_is_done_the_key_that_ends_the_day_is_named),
	TEST(a_blank_behind_a_whole_name_keeps_it_and_the_foot_says_enter),
	TEST(a_blank_that_goes_on_with_no_name_chooses),
	TEST(an_empty_plan_takes_nothing_of_the_house_back),
	TEST(the_plan_is_undone_in_the_plan_and_the_house_in_the_house),
	TEST(that_a_plan_was_accepted_is_taken_back_by_pressing_twice),
};

KK_TESTS("plan view", listed)
