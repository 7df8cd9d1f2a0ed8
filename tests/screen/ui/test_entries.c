/* What is entered as a form: nothing is written before the last answer, then one act. */
#include <locale.h>
#include <string.h>

#include "engine/process/process.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/book.h"
#include "kitchen/board/look.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "log/tables/canner.h"
#include "screen/house/house_views.h"
#include "screen/stock/stock_views.h"
#include "screen/ui/entry_view.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;
static int presses;

static void begin(void)
{
	(void)setlocale(LC_ALL, "");
	dk_begin(&dk, "xterm-256color", 24, 80);
	pk_stock(&dk.kit);
	dk_pass(&dk, 0);
	presses = 0;
}

static void end(void)
{
	dk_end(&dk);
}

static void press(long key)
{
	dk_key(&dk, key);
	presses++;
}

static void type(const char *text)
{
	dk_type(&dk, text);
	presses += (int)strlen(text);
}

/* "text" and Enter. */
static void answer(const char *text)
{
	type(text);
	press(KEY_CODE_ENTER);
}

/* An entry is opened as its view would, from the view that shows what it is about. */
static void enter(enum view_name from, enum entry_name name, int64_t id)
{
	desk_open(&dk.desk, from);
	desk_enter(&dk.desk, name, id);
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
}

static enum view_name home_of(enum entry_name name)
{
	return name == ENTRY_JUICE                                                   ? VIEW_JUICE
	       : name == ENTRY_FOUND || name == ENTRY_CHECK || name == ENTRY_SOLD_BY ? VIEW_SUPPLIES
	       : name == ENTRY_RECKONED || name == ENTRY_PLANNED_RUN || name == ENTRY_PLANNED_BATCH ||
	               name == ENTRY_PLANNED_DRYING
	           ? VIEW_PLAN
	           : VIEW_HOUSE;
}

/* --- nothing before the last answer ------------------------------------------------------ */

/* Is it the last that is asked, as things are answered? */
static bool is_last(const struct form *form)
{
	for (size_t i = form->at + 1; i < form->count; i++)
		if (form_asks(&dk.desk, &form->questions[i]))
			return false;
	return true;
}

/* They need a pot, or jars that wait: the days of tests/pictures go through them. */
static bool needs_work(enum entry_name name)
{
	return name == ENTRY_AWAY || name == ENTRY_SHEET || name == ENTRY_TRAYS;
}

START_TEST(esc_at_any_question_leaves_the_log_as_it_was)
{
	enum entry_name name = (enum entry_name)_i;
	size_t count = dk.desk.entries[name]->count;
	int64_t before = kk_journal(&dk.kit);

	if (needs_work(name))
		return;
	for (size_t n = 0; n < count; n++) {
		enter(home_of(name), name, 0);
		for (size_t i = 0; i < n && dk.desk.view == VIEW_ENTRY; i++) {
			const struct form *form = entry_view.form(&dk.desk);

			if (is_last(form))
				break;
			if (form_question(form)->kind == ASK_TEXT && !dk.desk.entry.offered)
				dk_type(&dk, form_question(form)->unit != NULL ? "100" : "a name");
			else if (form_question(form)->kind == ASK_NUMBER)
				dk_type(&dk, "9");
			dk_key(&dk, KEY_CODE_ENTER);
		}
		ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
		dk_key(&dk, KEY_CODE_ESCAPE);
		ck_assert_int_eq(dk.desk.view, home_of(name));
		ck_assert(!dk.desk.entry.open);
		ck_assert_int_eq(kk_journal(&dk.kit), before);
	}
}
END_TEST

START_TEST(an_example_is_no_answer)
{
	enter(VIEW_HOUSE, ENTRY_LID_BOX, 0);
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "such as Box A"));
	ck_assert_str_eq(dk.desk.entry.text, "");
	press(KEY_CODE_ENTER);
	dk_says(&dk, "Give the box a short name");
	enter(VIEW_JUICE, ENTRY_JUICE, 0);
	press(KEY_CODE_ENTER);
	dk_says(&dk, "Type the name of the fruit, such as grape.");
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
}
END_TEST

/* What is typed next takes the place of what was refused, a line or a number; Backspace changes it. */
START_TEST(what_was_refused_is_typed_over)
{
	enter(VIEW_JUICE, ENTRY_JUICE, 0);
	answer("grape");
	answer("12 lb");
	ck_assert_str_ne(dk.desk.message, "");
	ck_assert_str_eq(dk.desk.entry.text, "12 lb");
	type("1");
	ck_assert_str_eq(dk.desk.entry.text, "1");
	answer("2 lb");
	press(KEY_CODE_BACKSPACE);
	press(KEY_CODE_BACKSPACE);
	answer("qt");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "3 gal"));
	ck_assert_uint_eq(entry_view.form(&dk.desk)->at, 2);

	enter(VIEW_HOUSE, ENTRY_STATION, kk_station(&dk.kit, DIAL_CANNER));
	press(KEY_CODE_ENTER);
	press(KEY_CODE_ENTER);
	answer("2"); /* of another station */
	dk_says(&dk, "Key 2 is already");
	answer("5"); /* not 25 */
	ck_assert_uint_eq(entry_view.form(&dk.desk)->at, 3);
}
END_TEST

START_TEST(up_and_left_go_one_back_with_what_was_answered)
{
	static const long back[] = { KEY_CODE_UP, KEY_CODE_LEFT };

	enter(VIEW_HOUSE, ENTRY_LID_BOX, 0);
	answer("Box C");
	answer("24");
	press(back[_i]);
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "24_ lids"));
	press(back[_i]);
	ck_assert_str_eq(dk.desk.entry.text, "Box C");
	answer("Box D"); /* typing replaces */
	press(KEY_CODE_ENTER);
	press(KEY_CODE_ENTER);
	dk_says(&dk, "Noted: Box D, 24 lids.");
}
END_TEST

/* Whoever takes letters back does not mean to leave: a line, a list, a number. */
START_TEST(backspace_and_up_never_leave_a_form)
{
	enter(VIEW_HOUSE, ENTRY_LID_BOX, 0);
	press(KEY_CODE_BACKSPACE);
	press(KEY_CODE_UP);
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	answer("Box C");
	ck_assert_uint_eq(entry_view.form(&dk.desk)->at, 1);
	enter(VIEW_HOUSE, ENTRY_STATION, 0);
	type("MK");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Nothing here is called that: a canner, juicer, pot or dryer."));
	for (int n = 0; n < 4; n++)
		press(KEY_CODE_BACKSPACE);
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	answer("pot");
	ck_assert_str_eq(dk.desk.entry.text, "Pot");
	for (int n = 0; n < 4; n++)
		press(KEY_CODE_BACKSPACE);
	ck_assert_uint_eq(entry_view.form(&dk.desk)->at, 0);
	press(KEY_CODE_LEFT);
	ck_assert_int_eq(dk.desk.view, VIEW_HOUSE);
}
END_TEST

START_TEST(letters_where_a_figure_is_asked_for_say_so)
{
	enter(VIEW_HOUSE, ENTRY_STATION, kk_station(&dk.kit, DIAL_CANNER));
	press(KEY_CODE_ENTER);
	press(KEY_CODE_ENTER);
	type("M");
	dk_says(&dk, "A number is asked for here, 1 to 9: type figures.");
	answer("5");
	ck_assert_uint_eq(entry_view.form(&dk.desk)->at, 3);
}
END_TEST

/* --- a station ------------------------------------------------------------------------------ */

START_TEST(a_canner_that_heats_itself_is_one_entry_with_what_was_answered)
{
	const struct log_station *station;
	int64_t before;

	kk_ok(&dk.kit,
	      kitchen_setup_line(dk.kit.kitchen, "canner 5 dial_gauge \"Dial\" pint=9 retired",
	                         kk_station(&dk.kit, DIAL_CANNER), &dk.kit.fault),
	      "a key is free");
	before = kk_journal(&dk.kit);
	enter(VIEW_HOUSE, ENTRY_STATION, 0);
	answer("dial");
	answer("Third gauge");
	press(KEY_CODE_DOWN);
	press(KEY_CODE_ENTER);
	answer("12");
	dk_says(&dk, "Watts: a whole number from 100 to 20000, or nothing.");
	press(KEY_CODE_EMPTY_LINE);
	answer("1500");
	answer("many");
	dk_says(&dk, "Jars it takes: a whole number from 1 to 99, or nothing.");
	press(KEY_CODE_EMPTY_LINE);
	answer("9");
	answer("7");
	press(KEY_CODE_DOWN);
	press(KEY_CODE_DOWN);
	press(KEY_CODE_ENTER);
	answer("spring");
	dk_says(&dk, "A day is year, month and day, like 2026-08-30; or today, or nothing.");
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	press(KEY_CODE_EMPTY_LINE);
	answer("2026-03-01");
	dk_says(&dk, "Noted: Third gauge, dial-gauge pressure canner, key 5. (u undoes)");
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	station = &kk_canner(&dk.kit, 5)->station;
	ck_assert_str_eq(station->name, "Third gauge");
	ck_assert_int_eq(station->kind, STATION_DIAL_GAUGE);
	ck_assert(station->own_heat);
	ck_assert_int_eq(station->watts, 1500);
	ck_assert_int_eq(station->capacity[jar_size_index(jar_size_named("pint"))], 9);
	ck_assert_int_eq(station->capacity[jar_size_index(jar_size_named("quart"))], 7);
	ck_assert_int_eq(station->wall, WALL_LOCK);
	ck_assert_int_eq(station->gauge_checked_wall_ms, INT64_C(1772323200000));
}
END_TEST

START_TEST(a_station_that_is_changed_keeps_what_is_only_taken)
{
	struct log_station before = kk_canner(&dk.kit, WEIGHT_CANNER)->station;
	int64_t entries = kk_journal(&dk.kit);

	enter(VIEW_HOUSE, ENTRY_STATION, before.id);
	press(KEY_CODE_ENTER);
	answer("Heavy one");
	while (dk.desk.view == VIEW_ENTRY)
		press(KEY_CODE_ENTER);
	ck_assert_int_eq(kk_journal(&dk.kit), entries + 1);
	ck_assert_str_eq(kk_canner(&dk.kit, WEIGHT_CANNER)->station.name, "Heavy one");
	text_copy(before.name, sizeof(before.name), "Heavy one");
	ck_assert_mem_eq(before.capacity, kk_canner(&dk.kit, WEIGHT_CANNER)->station.capacity, sizeof(before.capacity));
	ck_assert_int_eq(kk_canner(&dk.kit, WEIGHT_CANNER)->station.kind, before.kind);
	ck_assert_int_eq(kk_canner(&dk.kit, WEIGHT_CANNER)->station.wall, before.wall);
	ck_assert(!kk_canner(&dk.kit, WEIGHT_CANNER)->station.retired);
}
END_TEST

/* --- the house -------------------------------------------------------------------------------- */

START_TEST(the_times_of_the_house_are_one_entry)
{
	const struct log_house *house = &kitchen_board(dk.kit.kitchen)->house;
	int64_t before = kk_journal(&dk.kit);
	int water = house->water_minutes;

	enter(VIEW_HOUSE, ENTRY_TIMES, 0);
	answer("soon");
	dk_says(&dk, "Minutes of a run: a whole number from 1 to 600, or nothing.");
	press(KEY_CODE_EMPTY_LINE);
	answer("64");
	press(KEY_CODE_EMPTY_LINE);
	press(KEY_CODE_ENTER); /* not known */
	answer("31");
	dk_says(&dk, "from 1 to 30.");
	press(KEY_CODE_EMPTY_LINE);
	answer("25");
	press(KEY_CODE_ENTER);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_int_eq(house->run_minutes, 64);
	ck_assert_int_eq(house->first_juice_minutes, 0);
	ck_assert_int_eq(house->water_minutes, water); /* each juicer has its own */
	ck_assert_int_eq(house->jar_wait_minutes, 25);
	ck_assert_int_eq(house->stand_minutes, 0);
}
END_TEST

START_TEST(what_was_read_is_kept_to_its_last_figure_by_enter)
{
	const struct log_house *house = &kitchen_board(dk.kit.kitchen)->house;

	KK_OK(&dk.kit, kitchen_set_measured_boil(dk.kit.kitchen, "95.1C", &dk.kit.fault));
	enter(VIEW_HOUSE, ENTRY_READING, READS_WATER);
	dk_key(&dk, KEY_CODE_ENTER); /* offered as 203.2 F */
	ck_assert_int_eq(house->measured_boil_mc, 95100);
	enter(VIEW_HOUSE, ENTRY_READING, READS_WATER);
	answer("204");
	ck_assert_int_eq(house->measured_boil_mc, 95556);
	enter(VIEW_HOUSE, ENTRY_READING, READS_AIR);
	answer("85.4");
	ck_assert_int_eq(house->barometer_pa, 85400);
	enter(VIEW_HOUSE, ENTRY_READING, READS_STORE);
	answer("18C");
	ck_assert_int_eq(house->storage_mc, 18000);
	enter(VIEW_HOUSE, ENTRY_READING, READS_STORE);
	dk_key(&dk, KEY_CODE_EMPTY_LINE);
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert_int_eq(house->storage_wall_ms, 0);
}
END_TEST

START_TEST(the_units_are_one_entry)
{
	int64_t before = kk_journal(&dk.kit);

	enter(VIEW_HOUSE, ENTRY_UNITS, 0);
	press(KEY_CODE_DOWN);
	press(KEY_CODE_ENTER);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_int_eq(desk_units(&dk.desk), UNITS_METRIC);
	dk_says(&dk, "Noted: kilograms, liters.");
}
END_TEST

/* --- the shelf ---------------------------------------------------------------------------------- */

START_TEST(a_lid_box_offers_the_number_of_the_last_and_is_one_entry)
{
	int64_t before = kk_journal(&dk.kit);
	struct log_lid_box box;

	enter(VIEW_SUPPLIES, ENTRY_LID_BOX, 0);
	answer("Box C");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "48_ lids"));
	press(KEY_CODE_ENTER);
	answer("last week");
	dk_says(&dk, "A day is year, month and day, like 2026-08-30; or today, or nothing.");
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	press(KEY_CODE_EMPTY_LINE);
	answer("2026-08-30");
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_int_eq(dk.desk.view, VIEW_SUPPLIES);
	KK_OK(&dk.kit, log_lid_box_get(dk.kit.log, 3, &box, &dk.kit.fault));
	ck_assert_str_eq(box.label, "Box C");
	ck_assert_int_eq(box.lids, 48);
	ck_assert_int_eq(box.bought_wall_ms, INT64_C(1788048000000));
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "lids Box C")); /* the shelf was read anew */
}
END_TEST

/* A bare number is in the unit beside it; another unit may be typed. */
START_TEST(what_came_in_is_one_entry_in_the_unit_that_stands_there)
{
	static const struct {
		const char *kind;
		const char *shown;
		const char *typed;
		enum supply_kind supply;
		const char *amount;
	} cases[] = {
		{ "sug", "_ lb", "20", SUPPLY_SUGAR, "20 lb" },
		{ "sug", "_ lb", "2.5 kg", SUPPLY_SUGAR, "2.5 kg" },
		{ "lemon", "_ qt", "2", SUPPLY_LEMON_JUICE, "2 qt" },
	};
	int64_t before = kk_journal(&dk.kit);
	int64_t stock = pk_supply(&dk.kit, cases[_i].supply, "");

	enter(VIEW_HOUSE, ENTRY_SUPPLY, 0);
	answer(cases[_i].kind);
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, cases[_i].shown));
	answer("some");
	dk_says(&dk, "That is not an amount: write it like ");
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	press(KEY_CODE_EMPTY_LINE);
	answer("0");
	dk_says(&dk, "It must be more than nothing.");
	press(KEY_CODE_EMPTY_LINE);
	answer(cases[_i].typed);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_int_eq(pk_supply(&dk.kit, cases[_i].supply, "") - stock,
	                 pk_amount(cases[_i].supply, cases[_i].amount));
}
END_TEST

START_TEST(jars_that_came_in_are_asked_for_their_size)
{
	int64_t stock = pk_supply(&dk.kit, SUPPLY_JAR, "quart");

	enter(VIEW_HOUSE, ENTRY_SUPPLY, 0);
	answer("jar");
	answer("quarts"); /* "quart" alone is in quarter-pints, too */
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "_ pieces"));
	answer("12");
	ck_assert_int_eq(pk_supply(&dk.kit, SUPPLY_JAR, "quart"), stock + 12);
}
END_TEST

START_TEST(sugar_is_noted_with_less_than_half_of_the_keys_its_line_took)
{
	enter(VIEW_HOUSE, ENTRY_SUPPLY, 0);
	answer("s");
	answer("20");
	dk_says(&dk, "Noted: 20 lb sugar came in.");
	ck_assert_int_le(2 * presses, (int)strlen("supply sugar \"20 lb\"") + 1);
}
END_TEST

/* From the board: sugar stands twelve lines down, and its count took eighteen keys there. */
START_TEST(a_count_takes_half_of_the_keys_and_is_one_entry)
{
	int64_t before = kk_journal(&dk.kit);

	press('g');
	press('c');
	press(KEY_CODE_UP);
	type("sug");
	press(KEY_CODE_ENTER);
	ck_assert_str_eq(dk.desk.entry.text, "20 lb"); /* as it stands there */
	answer("35");
	dk_says(&dk, "Noted: sugar, 35 lb found. (u undoes)");
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_int_le(presses, 10);
	ck_assert_int_eq(dk.desk.view, VIEW_SUPPLIES);
	ck_assert_str_eq(shelf_here(&dk.desk)->name, "sugar"); /* where the next one is looked for */
	presses = 0;
	answer("34"); /* of the line under the cursor, a figure is enough */
	dk_says(&dk, "Noted: sugar, 34 lb found.");
	ck_assert_int_eq(presses, 3);
	press('c');
	ck_assert_str_eq(dk.desk.entry.text, "34 lb"); /* as it stands there */
	type("x");
	press(KEY_CODE_ENTER);
	dk_says(&dk, "That is not an amount");
	press(KEY_CODE_EMPTY_LINE);
	answer("0");
	dk_says(&dk, "Noted: sugar, ");
	ck_assert_int_eq(shelf_here(&dk.desk)->amount, 0);
}
END_TEST

START_TEST(a_shelf_check_writes_down_only_what_was_found_otherwise)
{
	int64_t before = kk_journal(&dk.kit);
	int kept = 0;

	desk_open(&dk.desk, VIEW_SUPPLIES);
	press(KEY_CODE_DOWN); /* counted */
	press('k');
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Space keeps it")); /* in an empty line and on an offer */
	type("7 ");                                /* behind what was typed it is a blank, which nobody sees */
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Enter keeps it"));
	ck_assert(!dk_sees(&dk, "Space keeps it"));
	press(KEY_CODE_ENTER);
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "Space keeps the amount as it is"));
	while (dk.desk.view == VIEW_ENTRY && kept < 40) {
		press(kept % 2 == 0 ? ' ' : KEY_CODE_ENTER);
		kept++;
	}
	ck_assert_int_eq(dk.desk.view, VIEW_SUPPLIES);
	ck_assert_int_gt(kept, 1);
	dk_says(&dk, "Shelf check: 1 counted, ");
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
}
END_TEST

START_TEST(what_came_in_is_of_the_line_under_the_cursor_and_left_chooses_another)
{
	desk_open(&dk.desk, VIEW_SUPPLIES);
	press('r');
	answer("12");
	dk_says(&dk, "Noted: 12 quarter-pints came in.");
	press('r');
	press(KEY_CODE_LEFT);
	ck_assert_str_eq(form_question(entry_view.form(&dk.desk))->name, "Size");
	press(KEY_CODE_DOWN);
	press(KEY_CODE_ENTER);
	answer("3");
	dk_says(&dk, "Noted: 3 half-pints came in.");
	press('b');
	answer("12");
	dk_says(&dk, "Noted: quarter-pints, bought by 12. (u undoes)");
	press('b');
	press(KEY_CODE_EMPTY_LINE);
	press(KEY_CODE_ENTER);
	dk_says(&dk, "Noted: quarter-pints, bought loose.");
}
END_TEST

START_TEST(juice_from_elsewhere_is_one_entry)
{
	int64_t before = kk_journal(&dk.kit);

	enter(VIEW_JUICE, ENTRY_JUICE, 0);
	answer("grape");
	answer("lots");
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	press(KEY_CODE_EMPTY_LINE);
	answer("3 gal");
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	press(KEY_CODE_ENTER);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_int_eq(pk_juice_of(&dk.kit, "grape"), pk_ul("3 gal"));
	dk_says(&dk, "chilled");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "grape, chilled, 0 h old"));
}
END_TEST

START_TEST(initials_are_letters_and_a_helper_comes_at_a_time_of_day)
{
	size_t count;

	enter(VIEW_PLAN, ENTRY_RECKONED, 0);
	press(KEY_CODE_ENTER);
	answer("9:30");
	dk_says(&dk, "Initials are 1 to 4 letters, such as MK.");
	press(KEY_CODE_EMPTY_LINE);
	answer("Maria");
	dk_says(&dk, "Initials are 1 to 4 letters, such as MK.");
	press(KEY_CODE_EMPTY_LINE);
	answer("MK");
	answer("30");
	dk_says(&dk, "A helper comes at a time of that day, 0:00 to 23:59, such as 9:30.");
	press(KEY_CODE_EMPTY_LINE);
	answer("23:59");
	ck_assert_int_eq(kitchen_helpers(dk.kit.kitchen, &count)[0].from_minutes, 23 * 60 + 59);
	ck_assert_uint_eq(count, 1);
}
END_TEST

START_TEST(a_helper_takes_half_of_the_keys_and_is_one_entry)
{
	int64_t before = kk_journal(&dk.kit);
	const struct log_helper *helpers;
	size_t count;

	desk_open(&dk.desk, VIEW_PLAN);
	dk_key(&dk, 'n');
	press('e');
	press(KEY_CODE_ENTER);
	answer("MK");
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	press(KEY_CODE_ENTER);
	dk_says(&dk, "Noted: MK helps.");
	ck_assert_int_le(presses, 12 / 2);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	helpers = kitchen_helpers(dk.kit.kitchen, &count);
	ck_assert_uint_eq(count, 1);
	ck_assert_str_eq(helpers[0].initials, "MK");
	ck_assert_int_eq(helpers[0].from_minutes, PLAN_ANY_TIME);
	enter(VIEW_PLAN, ENTRY_RECKONED, 0);
	press(KEY_CODE_ENTER);
	answer("MK");
	dk_says(&dk, "MK helps already: take other initials.");
}
END_TEST

START_TEST(a_meal_and_the_burners_are_one_entry_each)
{
	int64_t before = kk_journal(&dk.kit);
	const struct log_plan_break *meals;
	size_t count;

	enter(VIEW_PLAN, ENTRY_RECKONED, 0);
	press(KEY_CODE_DOWN);
	press(KEY_CODE_ENTER);
	answer("12:00");
	answer("later");
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	press(KEY_CODE_EMPTY_LINE);
	answer("12:45");
	meals = kitchen_breaks(dk.kit.kitchen, &count);
	ck_assert_uint_eq(count, 1);
	ck_assert_int_eq(meals[0].start_minutes, 720);
	ck_assert_int_eq(meals[0].end_minutes, 765);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	enter(VIEW_PLAN, ENTRY_RECKONED, 0);
	press(KEY_CODE_DOWN);
	press(KEY_CODE_DOWN);
	press(KEY_CODE_ENTER);
	answer("21");
	dk_says(&dk, "Burners: a whole number from 0 to 20");
	press(KEY_CODE_EMPTY_LINE);
	answer("3");
	while (dk.desk.view == VIEW_ENTRY)
		press(KEY_CODE_ENTER);
	ck_assert_int_eq(kk_journal(&dk.kit), before + 2);
	ck_assert_int_eq(kitchen_plan_house(dk.kit.kitchen)->burners, 3);
	ck_assert_int_eq(kitchen_plan_house(dk.kit.kitchen)->cooling_jars, COOLING_NO_LIMIT);
}
END_TEST

/* --- left and come back to -------------------------------------------------------------------------- */

/* --- a recipe --------------------------------------------------------------------------------- */

#define PRESSES_AS_A_LINE 560 /* an own recipe, typed as lines of a kitchen file */

static const struct recipe *own(const char *name)
{
	const struct recipe *recipe = kitchen_recipe_named(dk.kit.kitchen, name);

	ck_assert_msg(recipe != NULL, "%s is no recipe", name);
	return recipe;
}

/* The process, packs and jars as they are: on to what is typed next. */
static void go_on_to_lines(void)
{
	for (int i = 0; i < 10 && !dk.desk.entry.open; i++)
		press(KEY_CODE_ENTER);
	ck_assert(dk.desk.entry.open);
}

START_TEST(an_own_recipe_is_a_copy_of_another_with_its_fruit_changed_first)
{
	const struct recipe *recipe;
	const struct recipe *like = recipe_named("grape jelly");
	int64_t before = kk_journal(&dk.kit);

	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("grape jelly");
	answer("quince");
	ck_assert_str_eq(dk.desk.entry.text, "quince jelly");
	press(KEY_CODE_ENTER); /* the name */
	press(KEY_CODE_ENTER); /* the food */
	while (dk.desk.view == VIEW_ENTRY)
		press(KEY_CODE_ENTER); /* each line as it is */
	dk_says(&dk, "quince jelly");
	recipe = own("quince jelly");
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	ck_assert_uint_eq(recipe->ingredient_count, like->ingredient_count);
	for (size_t i = 0; i < like->ingredient_count; i++) {
		ck_assert_int_eq(recipe->ingredients[i].amount, like->ingredients[i].amount);
		ck_assert_ptr_null(strstr(recipe->ingredients[i].name, "grape"));
	}
	ck_assert_str_eq(recipe->source, "house recipe, no source");
	ck_assert_str_eq(recipe->food, like->food);
	ck_assert_str_eq(recipe->jars, like->jars);
	ck_assert_msg(presses <= PRESSES_AS_A_LINE / 2, "%d key presses", presses);
	ck_assert_int_eq(presses, 28);
}
END_TEST

/* What is typed replaces the amount of a line, in any unit of what it is; an emptied one goes. */
START_TEST(the_lines_of_an_own_recipe_are_kept_or_typed_over)
{
	const struct recipe *recipe;

	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("berry jam without added pectin");
	while (!dk.desk.entry.open)
		press(KEY_CODE_ENTER); /* its fruit as it is */
	answer("yard jam");
	go_on_to_lines();
	answer("a lot");
	ck_assert_str_ne(dk.desk.message, "");
	answer("5 cups");
	press(KEY_CODE_EMPTY_LINE);
	press(KEY_CODE_ENTER);
	while (dk.desk.view == VIEW_ENTRY && dk.desk.message[0] == '\0')
		press(KEY_CODE_ENTER);
	recipe = own("yard jam");
	ck_assert_int_eq(recipe->ingredients[0].measure, MEASURE_VOLUME);
	ck_assert_int_eq(recipe->ingredients[0].amount, 1182941);
	ck_assert_uint_eq(recipe->ingredient_count,
	                  recipe_named("berry jam without added pectin")->ingredient_count - 1);
}
END_TEST

static void until_asked(const char *words)
{
	for (int i = 0; i < 30 && !dk_sees(&dk, words); i++)
		press(KEY_CODE_ENTER);
	ck_assert_msg(dk_sees(&dk, words), "\"%s\" is not asked", words);
}

/* What is not wanted of them is left, and taken up again; one of each there must be. */
START_TEST(packs_and_jars_are_kept_or_left_one_by_one)
{
	const struct recipe *recipe;

	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("grape jelly");
	answer("quince");
	answer("our quinces");
	until_asked("How may it be packed?");
	press(KEY_CODE_DOWN);
	ck_assert(dk_sees(&dk, "kept:  hot pack, jars boiled first"));
	press(' ');
	ck_assert(dk_sees(&dk, "left:  hot pack, jars boiled first"));
	press(KEY_CODE_DOWN);
	press(' '); /* none is left now */
	press(KEY_CODE_UP);
	press(KEY_CODE_UP);
	press(' ');
	dk_says(&dk, "Keep one at least");
	press(KEY_CODE_DOWN);
	press(' ');
	press(KEY_CODE_UP);
	press(' ');
	ck_assert(dk_sees(&dk, "Into which jars may it go?"));
	ck_assert(dk_sees(&dk, "left:  quarter-pints")); /* a smaller one than those tested */
	ck_assert(dk_sees(&dk, "kept:  half-pints"));
	for (int i = 0; i < 4; i++)
		press(KEY_CODE_DOWN);
	ck_assert(dk_sees(&dk, "kept:  pints"));
	press(' ');
	ck_assert(dk_sees(&dk, "go on with half-pints"));
	for (int i = 0; i < 4; i++)
		press(KEY_CODE_UP);
	until_asked("Where does it come from?");
	press(KEY_CODE_ENTER);
	recipe = own("our quinces");
	ck_assert_str_eq(recipe->packs, "hot_sterile_jar");
	ck_assert(!recipe_allows_jar(recipe, "pint"));
	ck_assert(recipe_allows_jar(recipe, "half_pint"));
}
END_TEST

/* What the other has not goes in where it belongs; one on no list is called as it is typed. */
START_TEST(a_line_that_the_other_has_not_is_added_to_the_copy)
{
	const struct recipe *recipe;
	size_t count = recipe_named("grape jelly")->ingredient_count;

	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("grape jelly");
	answer("quince");
	until_asked("Does anything else go in?");
	press(KEY_CODE_DOWN);
	press(' ');
	answer("zzz"); /* on no list */
	answer("rose petals");
	answer("nothing");
	ck_assert_str_ne(dk.desk.message, "");
	answer("1 cup");
	press(' '); /* at the start */
	ck_assert(dk_sees(&dk, "Does anything else go in?"));
	press(KEY_CODE_DOWN);
	press(' ');
	answer("cinnamon");
	answer("1/2 tsp");
	press(KEY_CODE_DOWN);
	press(' '); /* at the boil, behind the sugar */
	until_asked("Where does it come from?");
	press(KEY_CODE_ENTER);
	recipe = own("quince jelly");
	ck_assert_uint_eq(recipe->ingredient_count, count + 2);
	ck_assert_str_eq(recipe->ingredients[count + 1].name, "dried spice");
	ck_assert_str_eq(recipe->ingredients[count + 1].known, "dried spice");
	ck_assert_int_eq(recipe->ingredients[count + 1].adding, ADD_AT_BOIL);
	ck_assert_str_eq(recipe->ingredients[count - 1].name, "rose petals");
	ck_assert_str_eq(recipe->ingredients[count - 1].known, "");
}
END_TEST

/* A line that was emptied stays so when another goes in before it. */
START_TEST(a_line_that_is_left_out_stays_out_behind_one_that_is_added)
{
	const struct recipe *recipe;
	const struct recipe *like = recipe_named("berry jam without added pectin");

	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("berry jam without added pectin");
	while (!dk.desk.entry.open)
		press(KEY_CODE_ENTER);
	answer("yard jam");
	go_on_to_lines();
	press(KEY_CODE_ENTER);
	for (size_t i = 1; i < like->ingredient_count; i++) {
		press(KEY_CODE_EMPTY_LINE);
		press(KEY_CODE_ENTER);
	}
	press(KEY_CODE_DOWN);
	press(' ');
	answer("cinnamon");
	answer("1/2 tsp");
	press(' ');
	until_asked("Where does it come from?");
	press(KEY_CODE_ENTER);
	recipe = own("yard jam");
	ck_assert_uint_eq(recipe->ingredient_count, 2);
	ck_assert_str_eq(recipe->ingredients[1].name, "dried spice");
}
END_TEST

/* Two kinds of tomatillo salsa are one printed recipe; an own one is of one kind. */
START_TEST(what_may_stand_for_another_line_is_left_out_and_it_says_so)
{
	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("tomatillo green salsa");
	dk_says(&dk, "Left out: green tomatoes (instead of tomatillos): each line of your own recipe goes in.");
}
END_TEST

/* The tables say it of a food; where none fits, the kitchen does. */
START_TEST(without_a_process_one_says_how_acid_it_is)
{
	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("grape jelly");
	answer("quince");
	answer("shelf quinces");
	answer("zzz"); /* only that none fits */
	ck_assert(dk_sees(&dk, "How acid is it?"));
	press(KEY_CODE_DOWN);
	press(KEY_CODE_DOWN);
	press(' ');
	until_asked("Where does it come from?");
	press(KEY_CODE_ENTER);
	ck_assert_str_eq(own("shelf quinces")->food, "");
	ck_assert_int_eq(own("shelf quinces")->acidity, ACIDITY_LOW_ACID);
}
END_TEST

/* Those of another's sheet came with the copy. */
START_TEST(the_minutes_of_a_sheet_are_typed_over_and_emptied)
{
	struct fault fault = { 0 };

	ck_assert_msg(kitchen_setup_line(dk.kit.kitchen,
	                                 "sheet \"grape jelly, low sugar\" pectin=\"5 tsp\" calcium=\"3 tsp\" "
	                                 "acid=\"3 tbsp lemon juice\" multiple=5 minutes=15",
	                                 0, &fault),
	              "%s", fault.sentence);
	for (int i = 0; i < 2; i++) {
		enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
		answer("grape jelly, low sugar");
		answer("quince");
		answer(i == 0 ? "twenty" : "none");
		until_asked("How long does the sheet of its pectin process it");
		ck_assert_str_eq(dk.desk.entry.text, "15");
		if (i == 0) {
			answer("twenty");
			dk_says(&dk, "Minutes of its sheet: a whole number from 1 to 600");
			answer("20");
		} else {
			press(KEY_CODE_EMPTY_LINE);
			press(KEY_CODE_ENTER);
		}
		press(KEY_CODE_ENTER);
	}
	ck_assert_int_eq(own("twenty")->sheet_minutes, 20);
	ck_assert_int_eq(own("none")->sheet_minutes, 0);
}
END_TEST

START_TEST(no_two_recipes_have_one_name)
{
	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("grape jelly");
	press(KEY_CODE_ENTER); /* the same fruit */
	ck_assert_str_eq(dk.desk.entry.text, "grape jelly, our own");
	answer("grape jelly");
	dk_says(&dk, "There is a recipe \"grape jelly\" already; give this one another name.");
	answer("ours");
	ck_assert_int_ne(dk.desk.entry.open, true);
}
END_TEST

/* What must not be canned as that food is not kept, and it says why. */
START_TEST(a_fruit_that_is_not_allowed_is_refused_at_the_end)
{
	int64_t before = kk_journal(&dk.kit);

	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("grape jelly");
	answer("banana");
	for (int i = 0; i < 20 && dk.desk.message[0] == '\0'; i++)
		press(KEY_CODE_ENTER);
	dk_says(&dk, "Not kept as jam or jelly with added pectin");
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	ck_assert_int_eq(kk_journal(&dk.kit), before);
}
END_TEST

/* The lines of one that is there are changed one by one, and all of it is one act. */
START_TEST(an_own_recipe_is_changed_line_by_line_and_saved_as_one_act)
{
	const struct recipe *recipe;
	int64_t before;

	enter(VIEW_HOUSE, ENTRY_OWN_RECIPE, 0);
	answer("grape jelly");
	answer("quince");
	while (dk.desk.view == VIEW_ENTRY)
		press(KEY_CODE_ENTER);
	before = kk_journal(&dk.kit);
	for (size_t i = 0; i < kitchen_recipe_count(dk.kit.kitchen); i++)
		if (kitchen_recipe(dk.kit.kitchen, i) == own("quince jelly"))
			desk_open_for(&dk.desk, VIEW_RECIPE,
			              (struct opening){ .id = kitchen_recipe_own_id(dk.kit.kitchen, i) });
	ck_assert_int_eq(dk.desk.view, VIEW_RECIPE);
	press(' ');
	answer("quince jelly of ours");
	go_on_to_lines();
	answer("Aunt Odile");
	dk_says(&dk, "s saves the recipe");
	press(KEY_CODE_UP);
	press(KEY_CODE_UP);
	for (int i = 0; i < 9; i++)
		press(KEY_CODE_DOWN); /* to the last line, which adds one */
	press(' ');
	answer("cinnamon"); /* one of the names of a dried spice */
	ck_assert_str_eq(dk.desk.entry.text, "dried spice");
	answer("cinnamon");
	answer("1/2 tsp");
	while (dk.desk.view == VIEW_ENTRY)
		press(KEY_CODE_ENTER);
	ck_assert_int_eq(kk_journal(&dk.kit), before);
	press('s');
	ck_assert_int_eq(kk_journal(&dk.kit), before + 1);
	recipe = own("quince jelly of ours");
	ck_assert_str_eq(recipe->source, "Aunt Odile");
	ck_assert_uint_eq(recipe->ingredient_count, recipe_named("grape jelly")->ingredient_count + 1);
	/* It goes in at the start, so it stands before the sugar that goes in at the boil. */
	ck_assert_str_ne(recipe->ingredients[recipe->ingredient_count - 1].name, "cinnamon");
}
END_TEST

START_TEST(what_is_half_entered_is_there_when_one_comes_back_from_what_rings)
{
	enter(VIEW_HOUSE, ENTRY_LID_BOX, 0);
	answer("Box C");
	press(KEY_CODE_ENTER);
	type("2026-");
	desk_leave_for_board(&dk.desk);
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
	desk_go_back(&dk.desk);
	type("08-30");
	press(KEY_CODE_ENTER);
	dk_says(&dk, "Noted: Box C, 48 lids.");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("entries", .begin = begin, .end = end),
	EACH(esc_at_any_question_leaves_the_log_as_it_was, 0, ENTRY_COUNT),
	TEST(an_example_is_no_answer),
	TEST(what_was_refused_is_typed_over),
	EACH(up_and_left_go_one_back_with_what_was_answered, 0, 2),
	TEST(backspace_and_up_never_leave_a_form),
	TEST(letters_where_a_figure_is_asked_for_say_so),
	TEST(a_canner_that_heats_itself_is_one_entry_with_what_was_answered),
	TEST(a_station_that_is_changed_keeps_what_is_only_taken),
	TEST(the_times_of_the_house_are_one_entry),
	TEST(what_was_read_is_kept_to_its_last_figure_by_enter),
	TEST(the_units_are_one_entry),
	TEST(a_lid_box_offers_the_number_of_the_last_and_is_one_entry),
	EACH(what_came_in_is_one_entry_in_the_unit_that_stands_there, 0, 3),
	TEST(jars_that_came_in_are_asked_for_their_size),
	TEST(sugar_is_noted_with_less_than_half_of_the_keys_its_line_took),
	TEST(a_count_takes_half_of_the_keys_and_is_one_entry),
	TEST(a_shelf_check_writes_down_only_what_was_found_otherwise),
	TEST(what_came_in_is_of_the_line_under_the_cursor_and_left_chooses_another),
	TEST(juice_from_elsewhere_is_one_entry),
	TEST(initials_are_letters_and_a_helper_comes_at_a_time_of_day),
	TEST(a_helper_takes_half_of_the_keys_and_is_one_entry),
	TEST(a_meal_and_the_burners_are_one_entry_each),
	TEST(an_own_recipe_is_a_copy_of_another_with_its_fruit_changed_first),
	TEST(the_lines_of_an_own_recipe_are_kept_or_typed_over),
	TEST(packs_and_jars_are_kept_or_left_one_by_one),
	TEST(a_line_that_the_other_has_not_is_added_to_the_copy),
	TEST(a_line_that_is_left_out_stays_out_behind_one_that_is_added),
	TEST(what_may_stand_for_another_line_is_left_out_and_it_says_so),
	TEST(without_a_process_one_says_how_acid_it_is),
	TEST(the_minutes_of_a_sheet_are_typed_over_and_emptied),
	TEST(no_two_recipes_have_one_name),
	TEST(a_fruit_that_is_not_allowed_is_refused_at_the_end),
	TEST(an_own_recipe_is_changed_line_by_line_and_saved_as_one_act),
	TEST(what_is_half_entered_is_there_when_one_comes_back_from_what_rings),
};
KK_TESTS("entries", listed)
