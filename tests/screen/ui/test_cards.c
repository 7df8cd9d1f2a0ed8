/* The cards of the screen: names that are picked, numbers that are typed, what is kept. */
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "engine/process/product.h"
#include "kitchen/board/book.h"
#include "kitchen/canner/canner.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/plan/plan.h"
#include "kitchen/step/step.h"
#include "kitchen/stock/stock.h"
#include "screen/ui/entry_view.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void begin(void)
{
	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", 24, 160);
	pk_stock(&dk.kit);
}

static void end(void)
{
	dk_end(&dk);
}

/* What the card asks for; what it was given stands above, behind a sign. */
static bool asks(const char *question)
{
	return dk_sees(&dk, question);
}

static bool took(const char *answer)
{
	char words[200];

	(void)snprintf(words, sizeof(words), " > %s", answer);
	return dk_sees(&dk, words);
}

static void enter_until(const char *question)
{
	while (!asks(question))
		dk_key(&dk, KEY_CODE_ENTER);
}

#define ASKS_RECIPE "What are you cooking?"
#define ASKS_BATCHES "How many batches in this pot?"
#define BATCH_IS_READY "Ready. Space starts the batch"
#define ASKS_PRODUCT "What goes in?"
#define ASKS_JARS "How many jars?"
#define ASKS_SIZE "Filled into which jars?"
#define ASKS_BOX "Lids from which box?"
#define ASKS_ACID "Is the bottled acid in EVERY jar?"
#define FILL_IS_READY "Space writes them down."

static void plan_a_batch(const char *const *lines, size_t count)
{
	for (size_t i = 0; i < count; i++)
		kk_ok(&dk.kit, kitchen_setup_line(dk.kit.kitchen, lines[i], 0, &dk.kit.fault), lines[i]);
	KK_OK(&dk.kit, kitchen_plan_accept(dk.kit.kitchen, &dk.kit.fault));
	dk_pass(&dk, 0);
}

/* --- a pot that the plan has something for --------------------------------------------------- */

START_TEST(a_pot_opens_with_the_batch_that_is_planned_for_it)
{
	static const char *const lines[] = { "helper MK", "batch \"apple jelly\"" };

	(void)pk_juice(&dk.kit, "apple", "1 gal");
	plan_a_batch(lines, 2);
	dk_keys(&dk, "8 ");
	ck_assert(took("apple jelly"));
	ck_assert(asks(BATCH_IS_READY));
	dk_says(&dk, "As planned; Left for another.");
}
END_TEST

START_TEST(a_pot_whose_juice_is_still_to_come_asks_what_else_is_cooked)
{
	static const char *const lines[] = { "helper MK", "batch \"apple jelly\"" };

	plan_a_batch(lines, 2);
	dk_keys(&dk, "8 ");
	ck_assert_int_eq(dk.desk.view, VIEW_BATCH);
	ck_assert(asks(ASKS_RECIPE));
	dk_says(&dk, "Planned: apple jelly, its juice is not here yet.");
}
END_TEST

START_TEST(a_pot_whose_juice_is_still_to_come_opens_with_what_can_be_begun)
{
	static const char *const lines[] = { "helper MK", "run apples \"12 lb\" times=3",
		                             "batch \"apple juice\" jar=pint multiple=2",
		                             "batch \"grape jelly, low sugar\" multiple=1 jar=pint times=4" };

	(void)pk_juice(&dk.kit, "grape", "4 gal");
	plan_a_batch(lines, 4);
	dk_keys(&dk, "9 ");
	ck_assert(took("grape jelly, low sugar"));
	ck_assert(asks(BATCH_IS_READY));
	dk_says(&dk, "Planned for ");
	dk_says(&dk, ": 2 x apple juice, its juice is not here yet. This can begin now.");
}
END_TEST

/* --- names ------------------------------------------------------------------------------- */

static void batch_card(void)
{
	(void)pk_juice(&dk.kit, "grape", "8 qt");
	dk_pass(&dk, 0);
	dk_keys(&dk, "8 ");
	ck_assert_int_eq(dk.desk.view, VIEW_BATCH);
}

START_TEST(the_name_typed_whole_is_the_one_that_is_taken)
{
	static const char *const names[] = { "grape jelly", "grape jelly, low sugar", "Grape Jelly, Low Sugar",
		                             "grapejellylowsugar" };
	static const char *const taken[] = { "grape jelly", "grape jelly, low sugar", "grape jelly, low sugar",
		                             "grape jelly, low sugar" };

	batch_card();
	dk_type(&dk, names[_i]);
	ck_assert(asks(ASKS_RECIPE)); /* no blank of it has chosen */
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert(took(taken[_i]));
}
END_TEST

START_TEST(the_mark_goes_to_a_name_of_which_a_word_begins_so)
{
	batch_card();
	dk_type(&dk, "grape");
	dk_key(&dk, KEY_CODE_EMPTY_LINE); /* begun anew, as on a typed line */
	dk_type(&dk, "chi");              /* "zucchini" holds them too, further up */
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert(took("chile salsa"));
}
END_TEST

/* Each name of the list, blanks, commas, brackets and all. */
START_TEST(every_name_can_be_typed_as_it_is_written)
{
	for (size_t i = 0; i < kitchen_recipe_count(dk.kit.kitchen); i++) {
		const char *name = kitchen_recipe(dk.kit.kitchen, i)->name;

		dk_pass(&dk, 0);
		desk_open_for(&dk.desk, VIEW_BATCH, (struct opening){ .id = kk_station(&dk.kit, WIDE_POT) });
		dk_type(&dk, name);
		ck_assert_int_eq(dk.desk.view, VIEW_BATCH);
		ck_assert(asks(ASKS_RECIPE));
		dk_key(&dk, KEY_CODE_ENTER);
		if (asks(ASKS_RECIPE)) /* it may not be started, and that is said */
			ck_assert_str_ne(dk.desk.message, "");
		else
			ck_assert(dk.desk.view == VIEW_ENTRY ? dk_sees(&dk, "The sheet of its pectin") : took(name));
	}
}
END_TEST

/* Without a look at the kitchen between the letters. */
static void type_at_once(const char *name)
{
	for (const char *at = name; *at != '\0'; at++) {
		dk.desk.awake_ms += 150;
		desk_key(&dk.desk, *at);
	}
}

static void type_product(const char *name)
{
	while (!asks(ASKS_PRODUCT))
		dk_key(&dk, KEY_CODE_LEFT);
	type_at_once(name);
	ck_assert(asks(ASKS_PRODUCT));
	dk_key(&dk, KEY_CODE_ENTER);
}

START_TEST(every_product_can_be_typed_as_it_is_written)
{
	dk_keys(&dk, "1 ");
	ck_assert_int_eq(dk.desk.view, VIEW_START);
	for (const char *food = NULL; (food = process_next_food(METHOD_BOILING_WATER, food)) != NULL;) {
		bool has_name = false; /* of its own: "peach-apple salsa" is "peach apple salsa" of the tables */

		for (size_t i = 0; i < product_count; i++) {
			if (strcmp(food, products[i].food) == 0) {
				type_product(products[i].name);
				ck_assert_msg(took(products[i].name), "%s was not taken", products[i].name);
			}
			has_name = has_name || text_same_name(food, products[i].name);
		}
		type_product(food);
		ck_assert_msg(has_name ? !asks(ASKS_PRODUCT) : took(food), "%s was not taken", food);
	}
}
END_TEST

START_TEST(a_space_where_no_name_goes_on_with_one_chooses)
{
	batch_card();
	dk_type(&dk, "grapejellylow");
	dk_key(&dk, ' '); /* "grape jelly, low sugar" goes on with one */
	ck_assert(asks(ASKS_RECIPE));
	dk_type(&dk, "sugar");
	dk_key(&dk, ' ');
	ck_assert(took("grape jelly, low sugar"));
}
END_TEST

/* --- what is told ------------------------------------------------------------------------- */

/* A539 Guide 3: 1 tbsp of bottled lemon juice a pint, 2 tbsp a quart: each beside its jar. */
START_TEST(acid_is_told_for_a_jar_of_the_size_asked_for)
{
	static const char *const sizes[] = { "pints", "quarts" };
	static const char *const amounts[] = { "1 tbsp ", "2 tbsp " };
	static const char *const words[] = { "bottled lemon juice, in each pint",
		                             "bottled lemon juice, in each quart" };
	int row;
	int col;

	dk_end(&dk);
	dk_begin(&dk, "xterm-256color", 24, 100);
	pk_stock(&dk.kit);
	dk_pass(&dk, 0);
	desk_open_for(&dk.desk, VIEW_BATCH, (struct opening){ .id = kk_station(&dk.kit, DEEP_POT) });
	dk_type(&dk, "crushed tomatoes");
	dk_key(&dk, KEY_CODE_ENTER);
	if (_i == 1)
		dk_key(&dk, KEY_CODE_DOWN);
	enter_until(BATCH_IS_READY);
	ck_assert(took(sizes[_i]));
	ck_assert(dk_sees(&dk, words[_i]));
	row = dk_row_of(&dk, words[_i], &col);
	ck_assert_int_eq(row, dk_row_of(&dk, amounts[_i], &col));
	ck_assert(!dk_sees(&dk, "a quart jar"));
}
END_TEST

/* Whatever has an offered process in any canner is on the list of an own recipe, once. */
START_TEST(an_own_recipe_is_offered_each_food_of_the_tables)
{
	desk_open(&dk.desk, VIEW_HOUSE);
	desk_enter(&dk.desk, ENTRY_OWN_RECIPE, 0);
	dk_type(&dk, "grape jelly");
	for (int i = 0; i < 3; i++)
		dk_key(&dk, KEY_CODE_ENTER);
	ck_assert(asks("Which food of the process tables is it?"));
	for (enum method method = 0; method < METHOD_COUNT; method++) {
		for (const char *food = NULL; (food = process_next_food(method, food)) != NULL;) {
			int rows;

			type_at_once(food);
			rows = dk_rows_of(&dk, food);
			ck_assert_msg(rows == 1, "%s stands %d times", food, rows);
			dk_key(&dk, KEY_CODE_EMPTY_LINE);
		}
	}
}
END_TEST

/* --- going back ----------------------------------------------------------------------------- */

START_TEST(left_keeps_the_number_of_batches)
{
	batch_card();
	dk_type(&dk, "grape jelly, low sugar");
	dk_key(&dk, KEY_CODE_ENTER);
	enter_until(ASKS_BATCHES);
	dk_key(&dk, '2');
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert(asks(BATCH_IS_READY));
	dk_key(&dk, KEY_CODE_LEFT);
	ck_assert(asks(ASKS_BATCHES));
	ck_assert(dk_sees(&dk, ASKS_BATCHES " Type it.  2"));
	dk_key(&dk, KEY_CODE_LEFT);
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert(asks(ASKS_BATCHES));
	ck_assert(dk_sees(&dk, ASKS_BATCHES " Type it.  2"));
	dk_key(&dk, '1'); /* and the first figure still takes its place */
	ck_assert(dk_sees(&dk, ASKS_BATCHES " Type it.  1"));
}
END_TEST

START_TEST(another_recipe_begins_with_one_batch)
{
	batch_card();
	dk_type(&dk, "grape jelly, low sugar");
	dk_key(&dk, KEY_CODE_ENTER);
	enter_until(ASKS_BATCHES);
	dk_key(&dk, '4');
	while (!asks(ASKS_RECIPE))
		dk_key(&dk, KEY_CODE_LEFT);
	dk_type(&dk, "grape jelly");
	dk_key(&dk, KEY_CODE_ENTER);
	enter_until(ASKS_BATCHES);
	ck_assert(dk_sees(&dk, ASKS_BATCHES " Type it.  1"));
}
END_TEST

START_TEST(the_number_of_jars_is_kept_when_going_back_to_it)
{
	dk_keys(&dk, "1 ");
	dk_type(&dk, "grape jelly");
	enter_until(ASKS_JARS);
	dk_key(&dk, '5');
	dk_key(&dk, KEY_CODE_ENTER);
	dk_key(&dk, KEY_CODE_LEFT);
	ck_assert(asks(ASKS_JARS));
	ck_assert(dk_sees(&dk, " 5  half-pints; this canner takes 9"));
}
END_TEST

/* The whole window: the number stands where the load is put together. */
START_TEST(the_load_card_shows_the_number_while_it_is_typed)
{
	dk_end(&dk);
	dk_begin(&dk, "xterm-256color", 24, 80);
	dk_keys(&dk, "1 ");
	dk_type(&dk, "grape jelly");
	enter_until(ASKS_JARS);
	ck_assert(dk_sees(&dk, "1 Big kettle > grape jelly > hot pack, jars not boiled first > 9 half-pints"));
	dk_keys(&dk, "7");
	ck_assert(dk_sees(&dk, "1 Big kettle > grape jelly > hot pack, jars not boiled first > 7 half-pints"));
}
END_TEST

/* --- filling -------------------------------------------------------------------------------- */

START_TEST(a_batch_given_up_is_not_told_to_be_loaded)
{
	(void)pk_batch(&dk.kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	pk_to(&dk.kit, DEEP_POT, PHASE_FILL);
	dk_pass(&dk, 0);
	desk_open_for(&dk.desk, VIEW_FILL, (struct opening){ .id = strip_batch(kk_canner(&dk.kit, DEEP_POT))->row.id });
	dk_pass(&dk, 5000);
	dk_key(&dk, 'd');
	dk_says(&dk, "Is the batch given up?");
	dk_key(&dk, 'd');
	dk_says(&dk, "The batch is given up: empty the pot and rinse it.");
	dk_says_not(&dk, "Load");
}
END_TEST

static bool never_done(struct desk *desk, const char *text)
{
	(void)desk;
	(void)text;
	return false;
}

static void begin_in(int rows, int cols)
{
	dk_end(&dk);
	dk_begin(&dk, "xterm-256color", rows, cols);
}

static int64_t stopped_load(void)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	kk_to(&dk.kit, load_id, PHASE_HOLD);
	kk_pass(&dk.kit, MINUTE_MS);
	ck_assert(kk_try(&dk.kit, load_id, EXCEPTION_STOP, 0));
	kk_to(&dk.kit, load_id, PHASE_SEAL_CHECK);
	dk_pass(&dk, 0);
	return load_id;
}

/* Of what does not count no seal matters; where it goes does. */
START_TEST(the_foot_of_a_load_that_is_not_valid_begins_with_its_fate)
{
	static const int sizes[][2] = { { 24, 80 }, { 12, 40 } };
	int64_t load_id;

	begin_in(sizes[_i][0], sizes[_i][1]);
	load_id = stopped_load();
	desk_open_for(&dk.desk, VIEW_SEALS, (struct opening){ .id = load_id });
	ck_assert(dk_sees(&dk, "Space shelve  f fate"));
	dk_key(&dk, 'f');
	ck_assert(dk_sees(&dk, "This jar goes to:"));
	dk_key(&dk, '4'); /* discard: its steps are shown */
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(kk_jar_row(&dk.kit, load_id, 1).fate, FATE_DISCARD);
}
END_TEST

START_TEST(the_smallest_window_shows_where_a_jar_goes_and_by_when)
{
	int64_t load_id;
	char hour[40];
	char words[80];

	begin_in(12, 40);
	load_id = stopped_load();
	desk_open_for(&dk.desk, VIEW_SEALS, (struct opening){ .id = load_id });
	ck_assert(dk_sees(&dk, "Jar 1: NEEDS A FATE (f), unchecked"));
	dk_key(&dk, 'f');
	ck_assert(dk_sees(&dk, "1  fridge     eat by "));
	ck_assert(dk_sees(&dk, "2  freezer    by "));
	dk_key(&dk, '1');
	clock_words_near(kk_jar_row(&dk.kit, load_id, 1).fate_by_wall_ms, dk.desk.now.wall_ms, hour, sizeof(hour));
	(void)snprintf(words, sizeof(words), "Jar 1 fridge, eat by %s", hour);
	ck_assert(dk_sees(&dk, words));
}
END_TEST

/* What needs a person is read to its end. */
START_TEST(the_smallest_window_shows_the_warning_at_the_cursor_whole)
{
	char line[40 * 8] = "";
	struct text text = TEXT_OVER(line);
	const char *left;

	begin_in(12, 40);
	stopped_load();
	dk_key(&dk, 'w');
	ck_assert_uint_gt(dk.desk.warning_count, 0);
	for (left = dk.desk.warnings[0].sentence; *left != '\0';
	     left += strcspn(left, " "), left += strspn(left, " ")) {
		text = TEXT_OVER(line);
		text_add(&text, "%.*s", (int)strcspn(left, " "), left);
		ck_assert_msg(dk_sees(&dk, line), "%s is not to be seen", line);
	}
}
END_TEST

/* A539 Guide 6, page 6-9: cucumbers and onions go into the boiling syrup. */
START_TEST(the_card_opens_at_what_goes_in_now)
{
	begin_in(12, 40);
	KK_OK(&dk.kit, kitchen_supply_in(dk.kit.kitchen, SUPPLY_VINEGAR, "", pk_ul("2 gal"), &dk.kit.fault));
	(void)pk_batch(&dk.kit, DEEP_POT, "bread-and-butter pickles", "pint", 1);
	dk_pass(&dk, 12 * MINUTE_MS);
	dk_keys(&dk, "9c");
	ck_assert(!dk_sees(&dk, "> cucumbers"));
	dk_key(&dk, KEY_CODE_ESCAPE);
	KK_OK(&dk.kit, pk_try_step(&dk.kit, DEEP_POT, false));
	ck_assert_int_eq(pk_name(&dk.kit, DEEP_POT), PHASE_SUGAR_IN);
	dk_pass(&dk, 0);
	dk_key(&dk, 'c');
	ck_assert(dk_sees(&dk, "cucumbers"));
}
END_TEST

START_TEST(a_blank_does_not_wipe_out_what_a_line_offers)
{
	desk_offer(&dk.desk, "Vinegar, percent on its label:", "5", never_done);
	dk_key(&dk, ' ');
	ck_assert_str_eq(dk.desk.entry.text, "5");
	ck_assert(dk.desk.entry.open);
	dk_key(&dk, '4');
	ck_assert_str_eq(dk.desk.entry.text, "4");
}
END_TEST

START_TEST(a_question_that_leaves_the_line_no_room_stands_above_it_whole)
{
	int col;
	int row;

	begin_in(12, 40);
	desk_offer(&dk.desk, "Thermometer in boiling water, 203.5F (empty: none):", "", never_done);
	dk_type(&dk, "98");
	row = dk_row_of(&dk, "Thermometer in boiling water, 203.5F", &col);
	ck_assert_int_eq(dk_row_of(&dk, "(empty: none):", &col), row + 1);
	ck_assert_int_eq(dk_row_of(&dk, " 98_", &col), row + 2);
	desk_offer(&dk.desk, "Who checks (initials):", "", never_done); /* beside it, where it has room */
	dk_type(&dk, "JO");
	ck_assert(dk_sees(&dk, "Who checks (initials): JO_"));
}
END_TEST

START_TEST(in_the_morning_the_foot_names_what_a_day_begins_with)
{
	static const int sizes[][2] = { { 24, 80 }, { 12, 40 } };
	static const char *const foots[] = { "Space start a load  p plan  g goods  h house",
		                             "Space start a load  p plan" };

	begin_in(sizes[_i][0], sizes[_i][1]);
	dk_key(&dk, '1');
	ck_assert(dk_sees(&dk, foots[_i]));
	ck_assert(dk_sees(&dk, "? keys"));
	ck_assert(!dk_sees(&dk, "0 rack") && !dk_sees(&dk, "j juice")); /* there is none */
	(void)kk_start(&dk.kit, BIG_KETTLE, 7);
	ck_assert(!dk_sees(&dk, "p plan  g goods")); /* now the work comes first */
	ck_assert(dk_sees(&dk, "u undo"));
}
END_TEST

START_TEST(the_keys_that_take_and_throw_out_are_on_every_foot_of_the_pantry)
{
	static const int sizes[][2] = { { 24, 80 }, { 12, 40 } };
	struct take take = { .why = GONE_SPOILED, .jars = 1, .size = "half_pint", .product = "grape jelly" };
	const char *advice;
	int64_t load_id;

	begin_in(sizes[_i][0], sizes[_i][1]);
	load_id = kk_start(&dk.kit, BIG_KETTLE, 7);
	kk_to(&dk.kit, load_id, PHASE_SEAL_CHECK);
	kk_pass(&dk.kit, MINUTE_MS);
	KK_OK(&dk.kit, kitchen_all_sealed(dk.kit.kitchen, load_id, SEAL_BY_ALL_THREE, &dk.kit.fault));
	kk_step(&dk.kit, load_id);
	dk_pass(&dk, 0);
	desk_open(&dk.desk, VIEW_PANTRY);
	ck_assert(dk_sees(&dk, "t take  s spoiled"));
	for (int i = 0; i < 3; i++)
		KK_OK(&dk.kit, kitchen_take_out(dk.kit.kitchen, &take, &advice, &dk.kit.fault));
	dk_pass(&dk, 0);
	ck_assert(dk_sees(&dk, "R its others  t take"));
}
END_TEST

START_TEST(the_question_about_another_clock_says_that_it_may_stay_empty)
{
	int64_t load_id;

	begin_in(24, 80);
	load_id = kk_start(&dk.kit, BIG_KETTLE, 7);
	kk_to(&dk.kit, load_id, PHASE_HOLD);
	kk_pass(&dk.kit, 4 * MINUTE_MS);
	test_clock_restart(&dk.kit.clock, MINUTE_MS);
	kk_reopen(&dk.kit);
	dk.desk.kitchen = dk.kit.kitchen;
	dk_pass(&dk, HOUR_MS);
	dk_key(&dk, '1');
	dk_key(&dk, ' ');
	dk_says(&dk, "empty: nobody read one, and the process is UNKNOWN");
	dk_pass(&dk, MINUTE_MS); /* what was said is gone, the question is not */
	ck_assert(dk_sees(&dk, "Began, by another clock:"));
	ck_assert(dk_sees(&dk, "empty: nobody read one, so UNKNOWN"));
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert_int_eq(kk_load(&dk.kit, load_id).verdict, VERDICT_UNKNOWN);
}
END_TEST

/* Mid-batch, at the jar: crushed tomatoes take bottled lemon juice or citric acid (A539 Guide 3). */
static void ask_acid_with_shelf(int64_t lemon_ul, int64_t citric_mg)
{
	(void)pk_batch(&dk.kit, DEEP_POT, "crushed tomatoes", "quart", 1);
	pk_to(&dk.kit, DEEP_POT, PHASE_FILL);
	KK_OK(&dk.kit, kitchen_supply_count(dk.kit.kitchen, SUPPLY_LEMON_JUICE, "", lemon_ul, &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_supply_count(dk.kit.kitchen, SUPPLY_CITRIC_ACID, "", citric_mg, &dk.kit.fault));
	dk_pass(&dk, 0);
	desk_open_for(&dk.desk, VIEW_FILL, (struct opening){ .id = strip_batch(kk_canner(&dk.kit, DEEP_POT))->row.id });
	dk_key(&dk, KEY_CODE_ENTER);
	dk_keys(&dk, "7");
	dk_key(&dk, KEY_CODE_ENTER);
	dk_key(&dk, KEY_CODE_ENTER); /* the lid box */
	ck_assert(asks(ASKS_ACID));
}

START_TEST(acid_that_the_shelf_has_not_is_said_and_another_offered)
{
	begin_in(24, 100);
	ask_acid_with_shelf(0, 100000);
	dk_says(&dk, "On the shelf, bottled lemon juice: none left, 14 tbsp needed.");
	ck_assert(dk_sees(&dk, "shelf: none left, 14 tbsp needed! "));
	ck_assert(dk_sees(&dk, "citric acid"));
	ck_assert(!dk_sees(&dk, "needed! citric acid"));
	dk_key(&dk, KEY_CODE_DOWN);
	dk_key(&dk, ' ');
	ck_assert(asks(FILL_IS_READY));
	ck_assert(dk_sees(&dk, "citric acid"));
}
END_TEST

START_TEST(acid_that_just_suffices_is_nothing_to_ask_about)
{
	ask_acid_with_shelf(pk_ul("14 tbsp"), 0); /* 2 tbsp in each of 7 quarts */
	dk_key(&dk, ' ');
	ck_assert(asks(FILL_IS_READY));
}
END_TEST

START_TEST(acid_that_the_shelf_has_not_is_asked_about_once)
{
	ask_acid_with_shelf(0, 0);
	dk_key(&dk, ' ');
	dk_says(&dk, "Space again: it is in anyway.");
	ck_assert(asks(ASKS_ACID));
	dk_key(&dk, ' ');
	ck_assert(asks(FILL_IS_READY));
	ck_assert(dk_sees(&dk, "bottled lemon juice"));
}
END_TEST

START_TEST(more_acid_that_was_got_goes_onto_the_shelf)
{
	ask_acid_with_shelf(pk_ul("1 tbsp"), 0);
	dk_keys(&dk, "g");
	dk_type(&dk, "1 qt");
	dk_key(&dk, KEY_CODE_ENTER);
	dk_says(&dk, "On the shelf: 1 qt more of bottled lemon juice.");
	dk_key(&dk, ' ');
	ck_assert(asks(FILL_IS_READY));
	dk_key(&dk, ' ');
	dk_key(&dk, ' '); /* the jars are hot */
	dk_says(&dk, "7 jars filled");
}
END_TEST

/* 4, typed as 40: a pot of jelly fills some eight half-pints. */
START_TEST(more_jars_than_the_pot_gives_are_asked_about_once)
{
	int64_t batch_id;

	(void)pk_juice(&dk.kit, "grape", "8 qt");
	batch_id = pk_batch(&dk.kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&dk.kit, WIDE_POT, PHASE_FILL);
	dk_pass(&dk, 0);
	desk_open_for(&dk.desk, VIEW_FILL, (struct opening){ .id = batch_id });
	dk_key(&dk, KEY_CODE_ENTER); /* the size */
	dk_type(&dk, "40");
	dk_key(&dk, ' ');
	dk_says(&dk, "Really 40 more? Space again if so.");
	dk_key(&dk, KEY_CODE_BACKSPACE);
	dk_key(&dk, ' ');
	ck_assert(asks(ASKS_BOX));
	dk_key(&dk, KEY_CODE_LEFT);
	dk_type(&dk, "40");
	dk_key(&dk, ' ');
	dk_key(&dk, ' ');
	ck_assert(asks(ASKS_BOX));
}
END_TEST

START_TEST(the_lid_box_stays_chosen_from_one_filling_to_the_next)
{
	int64_t batch_id;

	(void)pk_juice(&dk.kit, "grape", "8 qt");
	batch_id = pk_batch(&dk.kit, WIDE_POT, "grape jelly", "half_pint", 1);
	pk_to(&dk.kit, WIDE_POT, PHASE_FILL);
	pk_jars_ready(&dk.kit, batch_id);
	dk_pass(&dk, 0);
	desk_open_for(&dk.desk, VIEW_FILL, (struct opening){ .id = batch_id });
	dk_key(&dk, KEY_CODE_ENTER); /* the size */
	dk_keys(&dk, "3");
	dk_key(&dk, KEY_CODE_ENTER);
	dk_key(&dk, KEY_CODE_DOWN); /* box B */
	dk_key(&dk, KEY_CODE_ENTER);
	enter_until(ASKS_SIZE);
	ck_assert_int_eq(kk_lids_used(&dk.kit, BOX_B), 3);
	dk_key(&dk, KEY_CODE_ENTER);
	dk_keys(&dk, "2");
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert(asks(ASKS_BOX));
	dk_key(&dk, KEY_CODE_ENTER); /* whatever is at the mark */
	enter_until(ASKS_SIZE);
	ck_assert_int_eq(kk_lids_used(&dk.kit, BOX_B), 5);
	ck_assert_int_eq(kk_lids_used(&dk.kit, BOX_A), 0);
}
END_TEST

/* --- undo of the house ------------------------------------------------------------------------ */

START_TEST(an_undo_that_goes_back_over_today_is_asked_about_each_time)
{
	int64_t journal;

	KK_OK(&dk.kit, kitchen_set_name(dk.kit.kitchen, "Upper Hollow", &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_set_name(dk.kit.kitchen, "Lower Hollow", &dk.kit.fault));
	dk_pass(&dk, DAY_MS);
	KK_OK(&dk.kit, kitchen_set_name(dk.kit.kitchen, "Quince Hollow", &dk.kit.fault));
	desk_open(&dk.desk, VIEW_HOUSE);
	dk_key(&dk, 'u'); /* of today */
	ck_assert_str_eq(kitchen_board(dk.kit.kitchen)->house.name, "Lower Hollow");
	for (int day = 0; day < 2; day++) {
		journal = kk_journal(&dk.kit);
		dk_key(&dk, 'u');
		ck_assert_int_eq(kk_journal(&dk.kit), journal);
		dk_says(&dk, "Not from today but from 2026-09-14: ");
		dk_says(&dk, "Press u again to undo it.");
		dk_key(&dk, 'u');
		ck_assert_int_eq(kk_journal(&dk.kit), journal + 1);
	}
	ck_assert_str_eq(kitchen_board(dk.kit.kitchen)->house.name, "Quince Hollow");
}
END_TEST

START_TEST(the_question_of_an_old_undo_lapses)
{
	int64_t journal = kk_journal(&dk.kit);

	dk_pass(&dk, DAY_MS);
	desk_show_view(&dk.desk, VIEW_HOUSE);
	dk_key(&dk, 'u');
	dk_key_after(&dk, SURE_MS + 1, 'u');
	ck_assert_int_eq(kk_journal(&dk.kit), journal);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("names", .begin = begin, .end = end),
	TEST(a_pot_opens_with_the_batch_that_is_planned_for_it),
	TEST(a_pot_whose_juice_is_still_to_come_asks_what_else_is_cooked),
	TEST(a_pot_whose_juice_is_still_to_come_opens_with_what_can_be_begun),
	EACH(the_name_typed_whole_is_the_one_that_is_taken, 0, 4),
	TEST(the_mark_goes_to_a_name_of_which_a_word_begins_so),
	TEST(every_name_can_be_typed_as_it_is_written),
	TEST(every_product_can_be_typed_as_it_is_written),
	TEST(a_space_where_no_name_goes_on_with_one_chooses),
	EACH(acid_is_told_for_a_jar_of_the_size_asked_for, 0, 2),
	TEST(an_own_recipe_is_offered_each_food_of_the_tables),
	GROUP("kept", .begin = begin, .end = end),
	TEST(left_keeps_the_number_of_batches),
	TEST(another_recipe_begins_with_one_batch),
	TEST(the_number_of_jars_is_kept_when_going_back_to_it),
	TEST(the_load_card_shows_the_number_while_it_is_typed),
	TEST(more_jars_than_the_pot_gives_are_asked_about_once),
	TEST(the_lid_box_stays_chosen_from_one_filling_to_the_next),
	TEST(acid_that_just_suffices_is_nothing_to_ask_about),
	TEST(a_blank_does_not_wipe_out_what_a_line_offers),
	TEST(the_card_opens_at_what_goes_in_now),
	TEST(the_smallest_window_shows_where_a_jar_goes_and_by_when),
	TEST(the_smallest_window_shows_the_warning_at_the_cursor_whole),
	TEST(acid_that_the_shelf_has_not_is_said_and_another_offered),
	TEST(acid_that_the_shelf_has_not_is_asked_about_once),
	TEST(more_acid_that_was_got_goes_onto_the_shelf),
	EACH(the_foot_of_a_load_that_is_not_valid_begins_with_its_fate, 0, 2),
	TEST(a_question_that_leaves_the_line_no_room_stands_above_it_whole),
	EACH(in_the_morning_the_foot_names_what_a_day_begins_with, 0, 2),
	EACH(the_keys_that_take_and_throw_out_are_on_every_foot_of_the_pantry, 0, 2),
	TEST(the_question_about_another_clock_says_that_it_may_stay_empty),
	TEST(a_batch_given_up_is_not_told_to_be_loaded),
	TEST(an_undo_that_goes_back_over_today_is_asked_about_each_time),
	TEST(the_question_of_an_old_undo_lapses),
};

KK_TESTS("cards", listed)
