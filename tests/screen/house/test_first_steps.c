/* The first steps of a new kitchen: what the log has is done, and each leads to the next. */
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "kitchen/act/undo.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/stock/stock.h"
#include "screen/house/house_views.h"
#include "screen/ui/entry_view.h"
#include "support/desk_kit.h"
#include "support/tests.h"

#define MORNING_MS INT64_C(1789372800000) /* 2026-09-14 8:00 */

static struct desk_kit dk;

static void begin(void)
{
	(void)setlocale(LC_ALL, "");
	dk_begin_in(&dk, NULL, MORNING_MS, "xterm-256color", 24, 80);
}

static void end(void)
{
	dk_end(&dk);
}

static const struct log_house *house(void)
{
	return &kitchen_board(dk.kit.kitchen)->house;
}

static void answer(const char *text)
{
	dk_type(&dk, text);
	dk_key(&dk, KEY_CODE_ENTER);
}

static void keys(long key, int times)
{
	for (int i = 0; i < times; i++)
		dk_key(&dk, key);
}

/* The step under the cursor is that one. */
static void stands_at(const char *name)
{
	char row[120];
	int mark;

	ck_assert_int_eq(dk.desk.view, VIEW_FIRST_STEPS);
	dk_draw(&dk);
	dk_row(dk_cursor(&dk, &mark, row, sizeof(row)), row, sizeof(row));
	ck_assert_msg(strstr(row, name) != NULL, "not at %s but at: %s", name, row);
}

static void line(const char *words)
{
	KK_OK(&dk.kit, kitchen_setup_line(dk.kit.kitchen, words, 0, &dk.kit.fault));
	dk_pass(&dk, 0);
}

/* --- the first field ---------------------------------------------------------------------- */

START_TEST(a_number_typed_into_the_first_field_is_the_elevation)
{
	dk_key(&dk, ' '); /* on the empty board */
	stands_at("Elevation");
	dk_key(&dk, ' ');
	answer("3200");
	ck_assert_int_eq(house()->elevation.um, 3200 * FOOT_UM);
	ck_assert_int_eq(house()->elevation.slack_um, 0);
	ck_assert_str_eq(house()->name, "");
	dk_says(&dk, "Noted: 3,200 ft (975 m).");
	stands_at("Name");
}
END_TEST

/* Who left a figure out is told what the one typed means; u takes it back. */
START_TEST(an_elevation_of_the_shortest_times_says_so)
{
	dk_key(&dk, ' ');
	dk_key(&dk, ' ');
	answer("320");
	dk_says(&dk, "Noted: 320 ft (98 m): process times are the shortest there. (u undoes)");
	desk_enter(&dk.desk, ENTRY_ELEVATION, 0);
	answer("1001");
	dk_says(&dk, "Noted: 1,001 ft (305 m). (u undoes)");
}
END_TEST

START_TEST(a_number_typed_on_the_page_itself_is_the_elevation)
{
	dk_key(&dk, ' ');
	stands_at("Elevation");
	answer("3200");
	ck_assert_int_eq(house()->elevation.um, 3200 * FOOT_UM);
	ck_assert_str_eq(house()->name, "");
	stands_at("Name");
	dk_type(&dk, "3"); /* no number is asked for there */
	stands_at("Name");
}
END_TEST

START_TEST(a_number_is_asked_about_before_it_is_a_name)
{
	int64_t before = kk_journal(&dk.kit);

	desk_open(&dk.desk, VIEW_HOUSE);
	desk_enter(&dk.desk, ENTRY_NAME, 0);
	answer("3,200 ft");
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	dk_key(&dk, ' '); /* no */
	answer("1234");
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	dk_key(&dk, KEY_CODE_DOWN); /* yes */
	dk_key(&dk, ' ');
	ck_assert_str_eq(house()->name, "1234");
	desk_enter(&dk.desk, ENTRY_NAME, 0);
	answer("Cabin 12");
	ck_assert_str_eq(house()->name, "Cabin 12");
}
END_TEST

static const struct {
	const char *units; /* a line of a kitchen file */
	const char *typed;
	int64_t um;
} heights[] = {
	{ "units us", "3200", 3200 * FOOT_UM },        { "units us", "4,650", 4650 * FOOT_UM },
	{ "units us", "1417 m", 1417 * METRE_UM },     { "units metric", "1417", 1417 * METRE_UM },
	{ "units metric", "3200 ft", 3200 * FOOT_UM }, { "units us", "3200'", 3200 * FOOT_UM },
};

START_TEST(a_number_alone_is_in_the_unit_that_stands_beside_it)
{
	line(heights[_i].units);
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	dk_key(&dk, ' ');
	answer(heights[_i].typed);
	ck_assert_int_eq(house()->elevation.um, heights[_i].um);
}
END_TEST

START_TEST(what_cannot_be_a_height_is_not_written_down)
{
	static const char *const typed[] = { "", "high", "4.650", "31000", "150C", "98.6F" };
	int64_t before = kk_journal(&dk.kit);

	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	dk_key(&dk, ' ');
	for (size_t i = 0; i < sizeof(typed) / sizeof(typed[0]); i++) {
		dk_key(&dk, KEY_CODE_EMPTY_LINE);
		answer(typed[i]);
		ck_assert_msg(dk.desk.entry.open && dk.desk.message[0] != '\0', "%s", typed[i]);
	}
	ck_assert_int_eq(kk_journal(&dk.kit), before);
}
END_TEST

/* --- measured, and outside the tables ------------------------------------------------------------ */

START_TEST(a_measured_height_is_read_as_high_as_it_may_be)
{
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	dk_key(&dk, ' ');
	answer("206 f");
	ck_assert(!house()->elevation.known); /* it is told what that means first */
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "go by 4,633 ft, till looked up"));
	dk_key(&dk, ' ');
	ck_assert(house()->elevation.known);
	ck_assert(!elevation_within_top(&house()->elevation, 4632));
	ck_assert(elevation_within_top(&house()->elevation, 4633));
	ck_assert_int_gt(house()->measured_boil_mc, 0);
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "done Elevation         3,263 ft (995 m), measured: up to 4,633 ft (1,412 m)"));
}
END_TEST

START_TEST(a_height_outside_the_tables_is_asked_about)
{
	static const char *const outside[] = { "12000", "-300" };

	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	dk_key(&dk, ' ');
	answer(outside[_i]);
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, _i == 0 ? "NO process will be" : "their lowest row is used"));
	dk_key(&dk, ' '); /* no */
	ck_assert(dk.desk.entry.open);
	answer(outside[_i]);
	dk_key(&dk, KEY_CODE_DOWN);
	dk_key(&dk, ' ');
	ck_assert(house()->elevation.known);
	ck_assert_int_eq(house()->elevation.um, (_i == 0 ? 12000 : -300) * FOOT_UM);
}
END_TEST

/* --- done is what the log has ---------------------------------------------------------------------- */

static void elevation(void)
{
	line("elevation 4650 ft");
}

static void name(void)
{
	line("kitchen \"Quince Hollow\"");
}

static void station(void)
{
	line("canner 1 boiling_water \"Big kettle\" pint=9");
}

static void helper(void)
{
	line("helper MK");
}

static void lids(void)
{
	line("lids \"Box A\" 60");
}

static void sugar(void)
{
	line("supply sugar \"20 lb\"");
}

static void planned(void)
{
	line("canner 1 boiling_water \"Big kettle\" pint=9");
	line("pot 2 \"Wide pot\" \"8 qt\"");
	line("batch \"apple butter\" jar=pint");
}

static const struct {
	const char *name;
	void (*act)(void);
	const char *row;
} done[] = {
	{ "Elevation", elevation, "done Elevation         4,650 ft (1,417 m)" },
	{ "Name", name, "done Name              Quince Hollow" },
	{ "Stations", station, "done Stations          Big kettle" },
	{ "Helpers", helper, "done Helpers           MK" },
	{ "Lids", lids, "done Lids              Box A, 60 left" },
	{ "Shelf", sugar, "done Shelf             1 line counted" },
	{ "Plan the day", planned, "done Plan the day      0 runs, 1 batch" },
};

START_TEST(a_step_is_done_when_the_log_has_it_and_open_when_it_is_undone)
{
	char open[80];
	char said[SENTENCE_MAX_BYTES];

	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	(void)snprintf(open, sizeof(open), "open %s", done[_i].name);
	dk_draw(&dk);
	ck_assert_msg(dk_sees(&dk, open), "%s", open);
	done[_i].act();
	dk_draw(&dk);
	ck_assert_msg(dk_sees(&dk, done[_i].row) && !dk_sees(&dk, open), "%s", done[_i].row);
	KK_OK(&dk.kit, kitchen_undo(dk.kit.kitchen, (struct log_subject){ SUBJECT_HOUSE, 0 }, said, sizeof(said),
	                            &dk.kit.fault));
	dk_draw(&dk);
	ck_assert_msg(dk_sees(&dk, open), "%s", open);
}
END_TEST

START_TEST(the_times_of_a_juicer_are_asked_for_where_one_stands)
{
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	dk_draw(&dk);
	ck_assert(!dk_sees(&dk, "Juicer's times"));
	line("juicer 1 \"Tall juicer\"");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "open Juicer's times"));
	line("times run=70 water=20 wait=20");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "done Juicer's times    a run of 70 min"));
}
END_TEST

START_TEST(the_board_opens_with_them_until_there_is_an_elevation_and_a_station)
{
	ck_assert(first_steps_wanted(&dk.desk));
	station();
	ck_assert(first_steps_wanted(&dk.desk));
	elevation();
	ck_assert(!first_steps_wanted(&dk.desk));
}
END_TEST

/* --- each leads to the next ---------------------------------------------------------------------------- */

START_TEST(a_station_asks_for_another_among_the_first_steps_alone)
{
	elevation();
	name();
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	stands_at("Stations");
	dk_key(&dk, ' ');
	answer("pot");
	answer("Wide pot");
	answer("8");
	ck_assert_uint_eq(kitchen_board(dk.kit.kitchen)->stations, 1);
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "What else is there?"));
	keys(KEY_CODE_ENTER, 3); /* like the one before it */
	ck_assert_uint_eq(kitchen_board(dk.kit.kitchen)->stations, 2);
	ck_assert_str_eq(kitchen_board(dk.kit.kitchen)->strips[1].station.name, "Pot");
	ck_assert_int_eq(kitchen_board(dk.kit.kitchen)->strips[1].station.kind, STATION_POT);
	ck_assert_int_eq(kitchen_board(dk.kit.kitchen)->strips[1].station.volume_ul,
	                 kitchen_board(dk.kit.kitchen)->strips[0].station.volume_ul);
	answer("that"); /* is all */
	ck_assert_uint_eq(kitchen_board(dk.kit.kitchen)->stations, 2);
	stands_at("Helpers");
	dk_key(&dk, 'h');
	desk_enter(&dk.desk, ENTRY_STATION, 0);
	answer("pot");
	answer("Third pot");
	dk_key(&dk, KEY_CODE_ENTER);
	answer("8");
	ck_assert_int_eq(dk.desk.view, VIEW_HOUSE);
}
END_TEST

START_TEST(helpers_are_named_one_after_the_other)
{
	size_t count;

	elevation();
	name();
	station();
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	stands_at("Helpers");
	dk_key(&dk, ' ');
	answer("MK");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Who else helps? Nothing, and Enter: nobody."));
	dk_says(&dk, "Noted: MK helps.");
	answer("JO");
	(void)kitchen_helpers(dk.kit.kitchen, &count);
	ck_assert_uint_eq(count, 2);
	answer(" "); /* is nobody */
	stands_at("Lids");
	(void)kitchen_helpers(dk.kit.kitchen, &count);
	ck_assert_uint_eq(count, 2);
}
END_TEST

START_TEST(a_new_kitchen_finds_back_from_the_board_until_its_first_load)
{
	elevation();
	name();
	station();
	lids();
	desk_show_board(&dk.desk);
	dk_draw(&dk);
	dk_key(&dk, 'f');
	stands_at("Helpers");
	desk_show_board(&dk.desk);
	(void)kk_start(&dk.kit, 1, 7);
	dk_pass(&dk, 0);
	dk_key(&dk, 'f');
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
}
END_TEST

START_TEST(the_first_load_asks_at_once_what_goes_in)
{
	elevation();
	name();
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	keys(KEY_CODE_UP, 20);
	keys(KEY_CODE_DOWN, 20);
	stands_at("First load");
	dk_key(&dk, ' ');
	dk_says(&dk, "A load needs a canner: add one under Stations.");
	station();
	dk_key(&dk, ' ');
	ck_assert_int_eq(dk.desk.view, VIEW_START);
	dk_type(&dk, "plum");
	ck_assert_int_eq(dk.desk.view, VIEW_START);
}
END_TEST

START_TEST(nobody_tastes_is_said_before_the_first_load)
{
	elevation();
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	keys(KEY_CODE_DOWN, 20);
	dk_key(&dk, KEY_CODE_UP);
	stands_at("Never taste");
	dk_key(&dk, ' ');
	ck_assert_int_eq(dk.desk.view, VIEW_SIGNS);
	dk_key(&dk, KEY_CODE_ESCAPE);
	stands_at("First load");
}
END_TEST

/* --- how many keys it takes ------------------------------------------------------------------------------ */

static int pressed;

static void press(long key)
{
	dk_key(&dk, key);
	pressed++;
}

static void enter(int times)
{
	while (times-- > 0)
		press(KEY_CODE_ENTER);
}

/* Typed, and taken. */
static void give(const char *text)
{
	for (const char *at = text; *at != '\0'; at++)
		press((unsigned char)*at);
	enter(1);
}

static void all_stations(void)
{
	press(' ');
	give("juicer");
	enter(1); /* its name */
	give("45");
	give("70");
	enter(2); /* a second one */
	give("30");
	give("pot");
	enter(1);
	give("8");
	give("boil");
	enter(1);
	give("7");
	give("7");
	enter(4); /* a second one */
	give("dry");
	enter(1);
	give("4");
	give("that");
	ck_assert_uint_eq(kitchen_board(dk.kit.kitchen)->stations, 6);
}

/* Half-pints, pints, sugar, lemon juice, salt and pectin are some of the lines. */
static void six_supplies(void)
{
	static const char *const counts[] = { "", "48", "", "60", "", "", "24", "", "12", "20 lb", "2 qt" };

	press(' ');
	press('k');
	for (size_t i = 0; i < sizeof(counts) / sizeof(counts[0]); i++)
		if (counts[i][0] == '\0')
			press(' ');
		else
			give(counts[i]);
	press(KEY_CODE_ESCAPE);
	press(KEY_CODE_ESCAPE);
}

static void two_runs_and_a_batch(void)
{
	press(' ');
	press('r');
	give("grapes");
	enter(1);
	give("2");
	enter(1);
	press('b');
	give("grape jelly");
	enter(5);
	press(KEY_CODE_ESCAPE);
}

START_TEST(from_nothing_to_a_running_clock_in_so_many_keys)
{
	size_t count;
	int stations;

	pressed = 0;
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	press(' ');
	give("3200");
	press(' ');
	give("Hill kitchen");
	all_stations();
	stations = pressed;
	stands_at("Helpers");
	press(' ');
	give("MK");
	give("JO");
	enter(1);
	press(' ');
	give("Box A");
	give("60");
	enter(1);
	stands_at("Shelf");
	six_supplies();
	press(KEY_CODE_DOWN); /* the forecast is for another day */
	stands_at("Plan the day");
	two_runs_and_a_batch();
	ck_assert_uint_eq(kitchen_board(dk.kit.kitchen)->stations, 6);
	(void)kitchen_plan_runs(dk.kit.kitchen, &count);
	ck_assert_uint_eq(count, 2);
	(void)kitchen_plan_batches(dk.kit.kitchen, &count);
	ck_assert_uint_eq(count, 1);
	while (dk.desk.view == VIEW_FIRST_STEPS) {
		char row[120];
		int mark;

		dk_draw(&dk);
		dk_row(dk_cursor(&dk, &mark, row, sizeof(row)), row, sizeof(row));
		press(strstr(row, "First load") != NULL ? ' ' : KEY_CODE_DOWN);
	}
	give("peaches");
	while (dk.desk.view == VIEW_START)
		enter(1);
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
	dk_pass(&dk, 2 * SECOND_MS);
	press(' '); /* the heat is on */
	dk_pass(&dk, 30 * MINUTE_MS);
	press(' '); /* it boils */
	ck_assert_int_eq(desk_selected(&dk.desk)->rule->name, PHASE_HOLD);
	ck_assert_int_le(stations, 75);
	ck_assert_int_le(pressed, 175);
}
END_TEST

static const struct {
	const char *name;
	int down;
	enum view_name view;
	const char *next;
} views[] = {
	{ "Shelf", 3, VIEW_SUPPLIES, "Shelf" }, /* nothing was counted: it is still open */
	{ "Forecast", 4, VIEW_FORECAST, "Plan the day" },
	{ "Plan the day", 5, VIEW_PLAN, "Plan the day" },
};

START_TEST(a_view_of_a_step_leads_back_and_is_else_left_for_the_board)
{
	elevation();
	name();
	station();
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	stands_at("Helpers");
	keys(KEY_CODE_DOWN, views[_i].down - 1);
	stands_at(views[_i].name);
	dk_key(&dk, ' ');
	ck_assert_int_eq(dk.desk.view, views[_i].view);
	dk_key(&dk, KEY_CODE_ESCAPE);
	if (dk.desk.view == views[_i].view) /* out of the line it asked in */
		dk_key(&dk, KEY_CODE_ESCAPE);
	stands_at(views[_i].next);
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
	desk_open(&dk.desk, VIEW_PLAN);
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
}
END_TEST

START_TEST(the_house_leads_to_them)
{
	desk_open(&dk.desk, VIEW_HOUSE);
	dk_key(&dk, 'f');
	stands_at("Elevation");
}
END_TEST

START_TEST(it_is_rehearsed_when_nothing_goes_on)
{
	elevation();
	name();
	station();
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	keys(KEY_CODE_DOWN, 5);
	stands_at("Rehearse");
	dk_key(&dk, ' ');
	ck_assert(dk.rehearse && dk.desk.leaving);
}
END_TEST

START_TEST(nobody_rehearses_while_clocks_of_the_day_run)
{
	elevation();
	name();
	station();
	lids();
	(void)kk_start(&dk.kit, 1, 7);
	dk_pass(&dk, 0);
	desk_open(&dk.desk, VIEW_FIRST_STEPS);
	stands_at("Helpers");
	keys(KEY_CODE_DOWN, 5);
	stands_at("Rehearse");
	dk_key(&dk, ' ');
	ck_assert(!dk.rehearse && !dk.desk.leaving);
	dk_says(&dk, "its clocks would not ring meanwhile");
	ck_assert(dk_sees(&dk, "done First load"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("first steps", .begin = begin, .end = end),
	TEST(a_number_typed_into_the_first_field_is_the_elevation),
	TEST(an_elevation_of_the_shortest_times_says_so),
	TEST(a_number_typed_on_the_page_itself_is_the_elevation),
	TEST(a_number_is_asked_about_before_it_is_a_name),
	EACH(a_number_alone_is_in_the_unit_that_stands_beside_it, 0, 6),
	TEST(what_cannot_be_a_height_is_not_written_down),
	TEST(a_measured_height_is_read_as_high_as_it_may_be),
	EACH(a_height_outside_the_tables_is_asked_about, 0, 2),
	EACH(a_step_is_done_when_the_log_has_it_and_open_when_it_is_undone, 0, 7),
	TEST(the_times_of_a_juicer_are_asked_for_where_one_stands),
	TEST(the_board_opens_with_them_until_there_is_an_elevation_and_a_station),
	TEST(a_station_asks_for_another_among_the_first_steps_alone),
	EACH(a_view_of_a_step_leads_back_and_is_else_left_for_the_board, 0, 3),
	TEST(helpers_are_named_one_after_the_other),
	TEST(a_new_kitchen_finds_back_from_the_board_until_its_first_load),
	TEST(the_first_load_asks_at_once_what_goes_in),
	TEST(nobody_tastes_is_said_before_the_first_load),
	TEST(from_nothing_to_a_running_clock_in_so_many_keys),
	TEST(the_house_leads_to_them),
	TEST(it_is_rehearsed_when_nothing_goes_on),
	TEST(nobody_rehearses_while_clocks_of_the_day_run),
};
KK_TESTS("first steps", listed)
