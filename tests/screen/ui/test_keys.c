/* What a key goes to: which station, which question, which line. */
#include <locale.h>
#include <string.h>

#include "kitchen/step/step.h"
#include "screen/app/views.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/form.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void begin(void)
{
	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, NULL, 0, 0);
}

static void begin_drawn(void)
{
	(void)setlocale(LC_ALL, "");
	dk_begin(&dk, "xterm-256color", 24, 80);
}

static void end(void)
{
	dk_end(&dk);
}

/* The big kettle waits for its boil; the water of both juicers rings, the taller first. */
static int64_t kettle_and_ringing_juicers(void)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	dk_pass(&dk, MINUTE_MS);
	(void)pk_run(&dk.kit, OLD_JUICER, "apples", "10 lb");
	dk_pass(&dk, (WATER_MINUTES - 1) * MINUTE_MS);
	kk_step(&dk.kit, load_id); /* heat is on: come-up */
	dk_pass(&dk, MINUTE_MS);
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
	ck_assert_uint_eq(dk.desk.rung_count, 2);
	return load_id;
}

/* --- to what rings ------------------------------------------------------------------------ */

START_TEST(one_key_goes_to_what_rings_and_again_to_the_next)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
	dk_says(&dk, "6 Tall juicer: Water pan: look");
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert_int_eq(dk_selected(&dk), OLD_JUICER);
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
}
END_TEST

START_TEST(where_nothing_rings_the_key_moves_nothing)
{
	dk_key(&dk, '2');
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert_int_eq(dk_selected(&dk), 2);
	dk_says(&dk, "Nothing rings.");
}
END_TEST

/* Each view, as it stands when nothing was read for it: the key must not need that. */
START_TEST(it_is_the_same_key_in_every_view)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	desk_show_view(&dk.desk, (enum view_name)_i);
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
}
END_TEST

START_TEST(no_table_of_a_view_gives_a_key_of_every_view_another_meaning)
{
	const struct view *view = screen_views[_i];
	const struct view_key *everywhere;
	size_t count = desk_keys_everywhere(&everywhere);

	for (size_t k = 0; k < view->key_count; k++)
		for (size_t e = 0; e < count; e++)
			ck_assert_msg(view->keys[k].key != everywhere[e].key || view->keys[k].act == everywhere[e].act,
			              "%s: %s", view->title, view->keys[k].cap);
}
END_TEST

static bool kept_text(struct desk *desk, const char *text)
{
	(void)desk;
	(void)text;
	return true;
}

START_TEST(what_was_being_typed_is_there_again_with_escape)
{
	(void)kettle_and_ringing_juicers();
	desk_open(&dk.desk, VIEW_HOUSE);
	desk_ask(&dk.desk, "Its name:", "", kept_text);
	dk_type(&dk, "Blue pot");
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert(!dk.desk.entry.open);
	dk_key(&dk, 'a');
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk.desk.view, VIEW_HOUSE);
	ck_assert(dk.desk.entry.open);
	ck_assert_str_eq(dk.desk.entry.text, "Blue pot");
}
END_TEST

/* The board asks too: for a weight, for juice, for initials. */
START_TEST(a_line_of_the_board_is_there_again_at_its_station)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	dk_key(&dk, 'i');
	dk_key(&dk, KEY_CODE_EMPTY_LINE);
	dk_type(&dk, "JO");
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
	ck_assert(!dk.desk.entry.open);
	dk_key(&dk, 'a');
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk_selected(&dk), 1);
	ck_assert(dk.desk.entry.open);
	ck_assert_str_eq(dk.desk.entry.text, "JO");
	dk_key(&dk, KEY_CODE_ENTER);
	dk_says(&dk, "Noted: JO has Big kettle.");
	dk_key(&dk, KEY_CODE_ESCAPE); /* once: nothing is left to go back to */
	ck_assert(!dk.desk.entry.open);
}
END_TEST

/* Two such lines share what they are about: the fruit of a run, the clock that is read. */
START_TEST(another_line_of_the_board_takes_the_place_of_the_one_left)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	dk_key(&dk, 'i');
	dk_key(&dk, KEY_CODE_TAB);
	dk_key(&dk, 'i');
	dk_key(&dk, KEY_CODE_ESCAPE);
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
	ck_assert(!dk.desk.entry.open);
}
END_TEST

START_TEST(escape_on_the_board_goes_nowhere_once_another_view_was_opened)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '2');
	dk_key(&dk, ' '); /* asked: the juicers ring */
	dk_key(&dk, KEY_CODE_ENTER);
	ck_assert_int_eq(dk.desk.view, VIEW_START);
	dk_key(&dk, KEY_CODE_TAB);
	dk_key(&dk, 'w');
	dk_key(&dk, KEY_CODE_ESCAPE);
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
}
END_TEST

/* --- whether to leave ------------------------------------------------------------------------ */

static const long noes[] = { 'n', KEY_CODE_ESCAPE };

START_TEST(a_line_being_typed_is_as_it_was_when_nobody_leaves)
{
	desk_open(&dk.desk, VIEW_HOUSE);
	desk_ask(&dk.desk, "Its name:", "", kept_text);
	dk_type(&dk, "Blue pot");
	dk_key(&dk, KEY_CODE_LEFT);
	dk_key(&dk, KEY_CODE_INTERRUPT);
	ck_assert_int_eq(dk.desk.view, VIEW_LEAVE);
	dk_key(&dk, KEY_CODE_INTERRUPT); /* asked twice */
	dk_key(&dk, noes[_i]);
	ck_assert_int_eq(dk.desk.view, VIEW_HOUSE);
	ck_assert(dk.desk.entry.open);
	dk_type(&dk, "o");
	ck_assert_str_eq(dk.desk.entry.text, "Blue poot");
	ck_assert(!dk.desk.leaving);
}
END_TEST

/* The question stands, and something rings: there and back. */
START_TEST(a_line_being_typed_outlasts_both_the_question_and_what_rings)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	dk_key(&dk, 'i');
	dk_key(&dk, KEY_CODE_EMPTY_LINE);
	dk_type(&dk, "JO");
	dk_key(&dk, KEY_CODE_INTERRUPT);
	dk_key(&dk, KEY_CODE_TAB);
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
	dk_key(&dk, KEY_CODE_INTERRUPT);
	dk_key(&dk, 'n');
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert_int_eq(dk_selected(&dk), 1);
	ck_assert(dk.desk.entry.open);
	ck_assert_str_eq(dk.desk.entry.text, "JO");
}
END_TEST

START_TEST(whoever_stays_is_where_the_question_came)
{
	enum view_name name = (enum view_name)_i;

	if (name == VIEW_LEAVE)
		return;
	desk_show_view(&dk.desk, name);
	dk_key(&dk, KEY_CODE_INTERRUPT);
	ck_assert_int_eq(dk.desk.view, VIEW_LEAVE);
	dk_key(&dk, 'n');
	ck_assert_int_eq(dk.desk.view, name);
	ck_assert(!dk.desk.entry.open);
}
END_TEST

/* --- asked whether to leave, in the middle of a form --------------------------------------------- */

/* A station half entered: its kind, its name, some pints, and figures of the quarts not yet taken. */
static void half_a_station(void)
{
	desk_open(&dk.desk, VIEW_HOUSE);
	desk_enter(&dk.desk, ENTRY_STATION, 0);
	dk_type(&dk, "weighted");
	dk_key(&dk, KEY_CODE_ENTER);
	dk_type(&dk, "Tall canner\n");
	dk_key(&dk, ' '); /* a burner */
	dk_type(&dk, "16\n7");
}

static void half_a_station_is_there(void)
{
	dk_draw(&dk);
	ck_assert_int_eq(dk.desk.view, VIEW_ENTRY);
	ck_assert(dk_sees(&dk, "Kind            weighted-gauge pressure canner"));
	ck_assert(dk_sees(&dk, "Name            Tall canner"));
	ck_assert(dk_sees(&dk, "Pints           16 jars"));
	ck_assert(dk_sees(&dk, "Quarts          7_"));
}

START_TEST(who_stays_finds_all_answers_of_a_form)
{
	half_a_station();
	half_a_station_is_there();
	dk_key(&dk, KEY_CODE_INTERRUPT);
	dk_key(&dk, KEY_CODE_INTERRUPT); /* again: one question */
	ck_assert_int_eq(dk.desk.view, VIEW_LEAVE);
	dk_key(&dk, 'n');
	half_a_station_is_there();
	dk_key(&dk, KEY_CODE_INTERRUPT);
	dk_key(&dk, KEY_CODE_ESCAPE);
	half_a_station_is_there();
	dk_type(&dk, "\n");
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "How does it show that its pressure is gone?"));
}
END_TEST

/* --- one row for each key ---------------------------------------------------------------------- */

/* In how many rows of the page of keys that cap stands. */
static int rows_of(const char *cap)
{
	char row[120];
	int rows = 0;

	do {
		dk_draw(&dk);
		for (int i = 0; i < 23; i++) {
			dk_row(i, row, sizeof(row));
			rows += strncmp(row + 1, cap, strlen(cap)) == 0 && row[1 + strlen(cap)] == ' ';
		}
		dk_key(&dk, ' ');
	} while (dk.desk.view == VIEW_HELP);
	return rows;
}

START_TEST(each_key_has_one_row_and_says_what_it_does_now)
{
	dk_key(&dk, '?');
	ck_assert_int_eq(rows_of("a"), 0); /* nothing rings */
	dk_key(&dk, '?');
	ck_assert_int_eq(rows_of("h"), 1);
	dk_key(&dk, '?');
	ck_assert_int_eq(rows_of("j"), 1);
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '6');
	dk_key(&dk, '?');
	dk_draw(&dk);
	ck_assert(dk_sees(&dk, "The water of this juicer was seen and topped up"));
	ck_assert(!dk_sees(&dk, "The pan that was dry has cooled"));
	ck_assert_int_eq(rows_of("a"), 1);
}
END_TEST

START_TEST(no_view_has_more_keys_than_the_page_counts)
{
	const struct view_key *everywhere;

	ck_assert_uint_le(screen_views[_i]->key_count + desk_keys_everywhere(&everywhere), HELP_ROWS_MAX);
}
END_TEST

/* --- the same key soon after itself -------------------------------------------------------------- */

static const struct question *question(void)
{
	return form_question(view_of(&dk.desk, dk.desk.view)->form(&dk.desk));
}

/* The card of a load, its first question just taken, and the next one drawn. */
static const struct question *second_question(void)
{
	const struct question *first;

	desk_open_for(&dk.desk, VIEW_START, (struct opening){ .id = 1 });
	first = question();
	dk_draw(&dk);
	dk_key(&dk, ' ');
	dk_draw(&dk);
	ck_assert_ptr_ne(question(), first);
	return question();
}

START_TEST(a_new_question_that_was_to_be_read_is_answered_by_the_same_key)
{
	const struct question *second = second_question();

	dk_key_after(&dk, QUESTION_READ_MS, ' ');
	ck_assert_ptr_ne(question(), second);
	dk_says_not(&dk, "Too soon");
}
END_TEST

START_TEST(a_new_question_that_nobody_can_have_read_is_not)
{
	const struct question *second = second_question();

	dk_key_after(&dk, QUESTION_READ_MS - 1, ' ');
	ck_assert_ptr_eq(question(), second);
	dk_says(&dk, "Too soon after the last press: that one did not count.");
}
END_TEST

/* What the press that counted has said stays, and the other is not swallowed in silence. */
START_TEST(a_press_too_soon_is_said_beside_what_the_first_one_said)
{
	dk_key(&dk, '3');
	dk_key(&dk, 'u');
	dk_says(&dk, "Nothing to undo.");
	dk_key_after(&dk, HELD_KEY_MS - 1, 'u');
	dk_says(&dk, "Nothing to undo. Too soon after the last press: that one did not count.");
	dk_key_after(&dk, 1000, 'u');
	dk_says_not(&dk, "Too soon");
}
END_TEST

START_TEST(one_that_was_not_drawn_yet_is_not_answered)
{
	const struct question *first;
	const struct question *second;

	desk_open_for(&dk.desk, VIEW_START, (struct opening){ .id = 1 });
	first = question();
	dk_key(&dk, ' ');
	second = question();
	ck_assert_ptr_ne(second, first);
	dk_key_after(&dk, HELD_KEY_MS - 1, ' ');
	ck_assert_ptr_eq(question(), second);
}
END_TEST

START_TEST(a_finger_that_rests_on_the_key_answers_nothing_more)
{
	const struct question *second = second_question();

	for (int i = 0; i < 100; i++) {
		dk_key_after(&dk, 40, ' ');
		dk_draw(&dk);
	}
	ck_assert_ptr_eq(question(), second);
}
END_TEST

START_TEST(what_is_recorded_is_not_done_by_a_press_that_bounced)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	dk_pass(&dk, 3 * SECOND_MS);
	dk_key(&dk, '1');
	dk_key(&dk, ' '); /* heat is on */
	dk_draw(&dk);
	dk_key_after(&dk, HELD_KEY_MS - 1, ' ');
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
}
END_TEST

/* --- a step while another station rings --------------------------------------------------------- */

START_TEST(the_first_space_says_what_it_would_do_and_the_second_does_it)
{
	int64_t load_id = kettle_and_ringing_juicers();
	int64_t journal = kk_journal(&dk.kit);

	dk_pass(&dk, 3 * MINUTE_MS); /* it may boil by now */
	dk_key(&dk, '1');
	dk_key(&dk, ' ');
	ck_assert_int_eq(kk_journal(&dk.kit), journal);
	dk_says(
	    &dk,
	    "1 Big kettle: full rolling boil: start the hold? Press Space again if so. But 6 Tall juicer rings: Tab.");
	dk_key(&dk, ' ');
	if (kk_name(&dk.kit, load_id) == PHASE_COME_UP) /* the kitchen asks for its own reasons */
		dk_key(&dk, ' ');
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_HOLD);
}
END_TEST

START_TEST(at_the_station_that_rings_nothing_is_asked)
{
	int64_t journal;

	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '6');
	journal = kk_journal(&dk.kit);
	dk_key(&dk, ' ');
	ck_assert_int_eq(kk_journal(&dk.kit), journal + 1); /* steady boil: the run */
}
END_TEST

START_TEST(the_question_lapses_after_5_s)
{
	int64_t load_id = kettle_and_ringing_juicers();

	dk_key(&dk, '1');
	dk_key(&dk, ' ');
	dk_key_after(&dk, AGAIN_SHORT_MS + 1, ' ');
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
	dk_says(&dk, "Press Space again if so. But 6");
	dk_pass(&dk, AGAIN_SHORT_MS + 1);
	dk_says(&dk, "");
}
END_TEST

START_TEST(the_question_lapses_when_another_alarm_starts)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	dk_pass(&dk, 3 * SECOND_MS);
	(void)pk_run(&dk.kit, OLD_JUICER, "apples", "10 lb");
	dk_pass(&dk, WATER_MINUTES * MINUTE_MS - 3 * SECOND_MS); /* one rings, the other in 3 s */
	ck_assert_uint_eq(dk.desk.rung_count, 1);
	dk_key_after(&dk, 100, '1');
	dk_key_after(&dk, 100, ' ');
	dk_says(&dk, "heat is on? Press Space again if so. But 6");
	dk_pass(&dk, 3 * SECOND_MS);
	ck_assert_uint_eq(dk.desk.rung_count, 2);
	dk_says(&dk, "");
	dk_key_after(&dk, 100, KEY_CODE_ENTER); /* within the 5 s */
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_LOADED);
	dk_says(&dk, "Press Space again if so.");
}
END_TEST

START_TEST(the_question_is_about_one_station)
{
	int64_t load_id = kettle_and_ringing_juicers();
	int64_t other_id = kk_start(&dk.kit, LOW_KETTLE, 7);

	dk_pass(&dk, 0);
	dk_key(&dk, '1');
	dk_key(&dk, ' ');
	dk_key(&dk, '2');
	dk_key(&dk, ' ');
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
	ck_assert_int_eq(kk_name(&dk.kit, other_id), PHASE_LOADED);
	dk_says(&dk, "2 Low kettle: heat is on?");
}
END_TEST

START_TEST(a_lost_boil_is_asked_about_too)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	kk_to(&dk.kit, load_id, PHASE_HOLD);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	dk_pass(&dk, WATER_MINUTES * MINUTE_MS);
	KK_OK(&dk.kit, kitchen_acknowledge(dk.kit.kitchen, kk_phase(&dk.kit, load_id), &dk.kit.fault));
	dk_pass(&dk, 0);
	dk_key(&dk, '1');
	dk_key(&dk, 'l');
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_HOLD);
	dk_says(&dk, "1 Big kettle: boil lost: back to the boil, full time again? Press l again if so.");
	dk_key(&dk, 'l');
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
}
END_TEST

/* --- an alarm is answered ------------------------------------------------------------------------- */

START_TEST(water_is_answered_from_another_view_by_saying_it_twice)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, 'w');
	ck_assert_int_eq(dk.desk.view, VIEW_WARNINGS);
	dk_key(&dk, 'a');
	ck_assert(pk_face(&dk.kit, TALL_JUICER).ringing);
	dk_says(&dk, "6 Tall juicer: was its water checked and topped up? Press a again if so.");
	dk_key(&dk, 'a');
	ck_assert(!pk_face(&dk.kit, TALL_JUICER).ringing);
	dk_says(&dk, "Noted: 6 Tall juicer, water checked and topped up.");
	ck_assert_int_eq(dk.desk.view, VIEW_WARNINGS);
}
END_TEST

START_TEST(the_station_of_the_alarm_answers_at_once)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '7');
	dk_key(&dk, 'a');
	ck_assert(!pk_face(&dk.kit, OLD_JUICER).ringing);
	ck_assert(pk_face(&dk.kit, TALL_JUICER).ringing);
	dk_says(&dk, "Noted: 7 Old juicer, water checked and topped up. (u undoes)");
}
END_TEST

/* Every view in which letters are not typed. */
START_TEST(an_alarm_is_heard_from_every_view_and_it_is_said)
{
	enum view_name name = (enum view_name)_i;
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	kk_to(&dk.kit, load_id, PHASE_HOLD);
	dk_pass(&dk, kk_strip(&dk.kit, load_id)->phase.required_ms);
	ck_assert(kk_face(&dk.kit, load_id).ringing);
	desk_show_view(&dk.desk, name);
	if (view_of(&dk.desk, name)->types != NULL && view_of(&dk.desk, name)->types(&dk.desk, 'a'))
		dk_key(&dk, KEY_CODE_TAB);
	dk_key(&dk, 'a');
	ck_assert(!kk_face(&dk.kit, load_id).ringing);
	dk_says(&dk, "Heard: 1 Big kettle, quiet until ");
	dk_says(&dk, ". Still to do: Heat OFF");
}
END_TEST

/* --- numbers and words that nothing asks for ---------------------------------------------------------- */

START_TEST(quarts_typed_right_after_heat_off_reach_no_other_station)
{
	int64_t journal;

	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&dk.kit, RUN_MINUTES * MINUTE_MS);
	dk_pass(&dk, 0);
	dk_key(&dk, '6');
	dk_key(&dk, 'a'); /* the water, then the run */
	dk_key(&dk, 'a');
	dk_key(&dk, ' ');
	ck_assert_int_eq(pk_name(&dk.kit, TALL_JUICER), PHASE_DRAIN);
	journal = kk_journal(&dk.kit);
	dk_type(&dk, "8 qt\n");
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
	ck_assert_int_eq(kk_journal(&dk.kit), journal);
	dk_says(&dk, "No number is needed yet");
	dk_key(&dk, ' ');
	dk_type(&dk, "8 qt\n");
	ck_assert_int_eq(pk_name(&dk.kit, TALL_JUICER), PHASE_NO_PHASE);
}
END_TEST

START_TEST(a_station_is_chosen_all_the_same_when_its_figure_comes_again)
{
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&dk.kit, RUN_MINUTES * MINUTE_MS);
	dk_pass(&dk, 0);
	dk_key(&dk, '6');
	dk_keys(&dk, "aa ");
	dk_key(&dk, '8');
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
	dk_key_after(&dk, 1100, '8');
	ck_assert_int_eq(dk_selected(&dk), WIDE_POT);
}
END_TEST

/* By somebody in a hurry, who never leaves the keys alone for a second. */
START_TEST(keys_that_go_on_being_refused_are_not_refused_in_silence)
{
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&dk.kit, RUN_MINUTES * MINUTE_MS);
	dk_pass(&dk, 0);
	dk_key(&dk, '6');
	dk_keys(&dk, "aa ");
	for (int i = 0; i < 20; i++) {
		dk_key_after(&dk, 900, i % 2 == 0 ? '8' : '9');
		ck_assert_str_ne(dk.desk.message, "");
	}
	ck_assert_int_eq(dk_selected(&dk), TALL_JUICER);
	dk_says(&dk, "Keys pressed without a pause count as words. Wait a second");
	dk_key_after(&dk, 1100, '8');
	ck_assert_int_eq(dk_selected(&dk), WIDE_POT);
}
END_TEST

START_TEST(once_the_number_was_asked_for_a_figure_is_a_station_again)
{
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&dk.kit, RUN_MINUTES * MINUTE_MS);
	dk_pass(&dk, 0);
	dk_key(&dk, '6');
	dk_keys(&dk, "aa ");
	dk_key(&dk, KEY_CODE_ENTER); /* juice out? */
	dk_key_after(&dk, 100, KEY_CODE_ESCAPE);
	dk_key_after(&dk, 100, '8');
	ck_assert_int_eq(dk_selected(&dk), WIDE_POT);
}
END_TEST

START_TEST(an_amount_typed_where_nothing_asks_chooses_nothing_and_opens_nothing)
{
	(void)kk_start(&dk.kit, BIG_KETTLE, 7);
	dk_pass(&dk, 0);
	dk_key(&dk, '2');
	dk_pass(&dk, MINUTE_MS);
	dk_type(&dk, "1.5 gal\n");
	ck_assert_int_eq(dk.desk.view, VIEW_BOARD);
	ck_assert_int_eq(dk_selected(&dk), 2);
	dk_says(&dk, "No number is needed now");
	dk_key_after(&dk, 2000, '5'); /* after a pause keys are keys */
	ck_assert_int_eq(dk_selected(&dk), 5);
}
END_TEST

static bool takes(const struct desk *desk, long key)
{
	return view_of(desk, desk->view)->types != NULL && view_of(desk, desk->view)->types(desk, key);
}

/* Every view, with work everywhere and two alarms: nothing is chosen, opened, answered or recorded. */
START_TEST(an_amount_typed_where_nothing_asks_does_nothing_in_any_view)
{
	enum view_name name = (enum view_name)_i;
	int64_t journal;

	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	desk_show_view(&dk.desk, name);
	if (takes(&dk.desk, '1'))
		return;
	journal = kk_journal(&dk.kit);
	dk_pass(&dk, 2000);
	dk_type(&dk, "1.5 gal\n");
	ck_assert_int_eq(dk.desk.view, name);
	ck_assert(!dk.desk.entry.open);
	ck_assert(!dk.desk.leaving);
	ck_assert_int_eq(dk_selected(&dk), 1);
	ck_assert_int_eq(kk_journal(&dk.kit), journal);
	ck_assert_uint_eq(dk.desk.rung_count, 2);
	dk_says(&dk, "No number is needed now: none of it counted.");
}
END_TEST

/* The first letter is a key until the second one comes: then what it did is taken back. */
START_TEST(words_typed_where_nothing_asks_leave_all_as_it_was)
{
	enum view_name name = (enum view_name)_i;
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);
	int64_t phase_id;

	kk_to(&dk.kit, load_id, PHASE_HOLD);
	phase_id = kk_phase(&dk.kit, load_id);
	dk_pass(&dk, kk_strip(&dk.kit, load_id)->phase.required_ms);
	dk_key(&dk, '1');
	desk_show_view(&dk.desk, name);
	if (takes(&dk.desk, 'a') || view_of(&dk.desk, name)->marks)
		return;
	dk_pass(&dk, 2000);
	dk_type(&dk, "apples, plums and quinces\n");
	ck_assert_int_eq(dk.desk.view, name);
	ck_assert(!dk.desk.entry.open);
	ck_assert(!dk.desk.leaving);
	ck_assert_int_eq(dk_selected(&dk), 1);
	ck_assert_int_eq(kk_phase(&dk.kit, load_id), phase_id);
	ck_assert(kk_face(&dk.kit, load_id).ringing);
	dk_says(&dk, "Nothing asks for words now: none of it counted.");
}
END_TEST

/* A step is one of the things that an amount does when its blank is taken for a key. */
START_TEST(a_step_that_a_typed_amount_made_is_taken_back)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	dk_pass(&dk, MINUTE_MS);
	dk_key(&dk, '2');
	dk_pass(&dk, 2000);
	dk_type(&dk, "1 ");
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
	dk_type(&dk, "gal\n");
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_LOADED);
	ck_assert_int_eq(dk_selected(&dk), 2);
	dk_says(&dk, "No number is needed now");
}
END_TEST

/* An undo is taken back too: what it undid stands. */
START_TEST(a_word_that_begins_with_the_key_of_undo_undoes_nothing)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	dk_pass(&dk, MINUTE_MS);
	dk_keys(&dk, "1 ");
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
	dk_pass(&dk, 2000);
	dk_type(&dk, "until\n");
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
}
END_TEST

START_TEST(keys_of_a_practised_hand_are_keys)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	dk_key_after(&dk, 200, '6'); /* it rings, the first does not: a number */
	ck_assert_int_ne(dk_selected(&dk), TALL_JUICER);
	dk_pass(&dk, 2000);
	dk_key(&dk, '6'); /* a figure and a letter */
	dk_key_after(&dk, 120, 'a');
	ck_assert(!pk_face(&dk.kit, TALL_JUICER).ringing);
	dk_key_after(&dk, 120, '7');
	dk_key_after(&dk, 120, 'a');
	ck_assert(!pk_face(&dk.kit, OLD_JUICER).ringing);
	dk_key_after(&dk, 300, 'w'); /* two letters, by somebody who looks between */
	ck_assert_int_eq(dk.desk.view, VIEW_WARNINGS);
}
END_TEST

/* --- two figures where two stations ring ---------------------------------------------------- */

START_TEST(figures_of_two_stations_that_ring_choose_one_after_the_other)
{
	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	dk_key(&dk, '6');
	dk_key_after(&dk, 120, '7');
	ck_assert_int_eq(dk_selected(&dk), OLD_JUICER);
	dk_key_after(&dk, 400, 'a');
	ck_assert(!pk_face(&dk.kit, OLD_JUICER).ringing);
	ck_assert(pk_face(&dk.kit, TALL_JUICER).ringing);
}
END_TEST

/* Two stations ring, and what is typed is a number all the same: with what follows it. */
static const char *const numbers[] = { "67\n", "67 qt\n", "67.5\n", "676\n", "67a" };

START_TEST(a_number_of_two_stations_that_ring_is_a_number_when_it_goes_on)
{
	int64_t load_id = kettle_and_ringing_juicers();
	int64_t journal;

	dk_key(&dk, '1');
	dk_pass(&dk, 2000);
	journal = kk_journal(&dk.kit);
	dk_type(&dk, numbers[_i]);
	ck_assert_int_eq(dk_selected(&dk), BIG_KETTLE);
	ck_assert_int_eq(kk_journal(&dk.kit), journal);
	ck_assert_int_eq(kk_name(&dk.kit, load_id), PHASE_COME_UP);
	ck_assert_uint_eq(dk.desk.rung_count, 2);
	dk_says(&dk, "No number is needed now");
}
END_TEST

/* The old juicer waits for its quarts, both others ring. */
START_TEST(where_a_number_is_near_two_figures_are_one_whatever_rings)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	(void)pk_run(&dk.kit, OLD_JUICER, "apples", "10 lb");
	pk_to(&dk.kit, OLD_JUICER, PHASE_DRAIN);
	kk_to(&dk.kit, load_id, PHASE_HOLD);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	dk_pass(&dk, kk_strip(&dk.kit, load_id)->phase.required_ms + WATER_MINUTES * MINUTE_MS);
	ck_assert_uint_eq(dk.desk.rung_count, 2);
	dk_key(&dk, '7');
	dk_pass(&dk, 2000);
	dk_type(&dk, "16");
	ck_assert_int_eq(dk_selected(&dk), OLD_JUICER);
	dk_says(&dk, "No number is needed now");
}
END_TEST

/* --- a paste ---------------------------------------------------------------------------------------- */

#define NOTE "Rinse 3 pots.\rThen load 7 quarts, lost: 2.\r"

/* Every view, with work everywhere: nothing is recorded, and nothing moves. */
START_TEST(a_paste_outside_a_text_field_does_nothing_and_says_so)
{
	enum view_name name = (enum view_name)_i;
	int64_t journal;

	(void)kettle_and_ringing_juicers();
	dk_key(&dk, '1');
	desk_show_view(&dk.desk, name);
	journal = kk_journal(&dk.kit);
	desk_paste(&dk.desk, NOTE, true);
	ck_assert_int_eq(kk_journal(&dk.kit), journal);
	ck_assert_int_eq(dk.desk.view, name);
	ck_assert_int_eq(dk_selected(&dk), 1);
	dk_says(&dk, "Pasted text does nothing here: none of it was used.");
}
END_TEST

START_TEST(in_a_line_a_paste_is_text)
{
	desk_ask(&dk.desk, "Note:", "so: ", kept_text);
	desk_paste(&dk.desk, "1.5 gal, q\xc3\xa9\n", true); /* the end of its line is none of it */
	ck_assert(dk.desk.entry.open);
	ck_assert_str_eq(dk.desk.entry.text, "so: 1.5 gal, q\xc3\xa9");
	desk_offer(&dk.desk, "Note:", "offered", kept_text);
	desk_paste(&dk.desk, "mine", true);
	ck_assert_str_eq(dk.desk.entry.text, "mine");
}
END_TEST

static const struct {
	const char *text;
	bool whole;
} no_line[] = {
	{ "two\nlines", true }, { "a\x1b[2J", true }, { "a\tb", true }, { "a\x7f", true },
	{ "a\xc2\x9b", true },  { "a\xff", true },    { "", true },     { "cut off", false },
};
#define NO_LINES (int)(sizeof(no_line) / sizeof(no_line[0]))

START_TEST(what_is_not_one_line_of_text_is_not_taken)
{
	desk_ask(&dk.desk, "Note:", "so", kept_text);
	desk_paste(&dk.desk, no_line[_i].text, no_line[_i].whole);
	ck_assert(dk.desk.entry.open);
	ck_assert_str_eq(dk.desk.entry.text, "so");
	dk_says(&dk, "Not pasted");
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("ringing", .begin = begin, .end = end),
	TEST(one_key_goes_to_what_rings_and_again_to_the_next),
	TEST(where_nothing_rings_the_key_moves_nothing),
	EACH(it_is_the_same_key_in_every_view, 0, VIEW_COUNT),
	EACH(no_table_of_a_view_gives_a_key_of_every_view_another_meaning, 0, VIEW_COUNT),
	TEST(what_was_being_typed_is_there_again_with_escape),
	TEST(a_line_of_the_board_is_there_again_at_its_station),
	TEST(another_line_of_the_board_takes_the_place_of_the_one_left),
	TEST(escape_on_the_board_goes_nowhere_once_another_view_was_opened),
	GROUP("leaving", .begin = begin, .end = end),
	EACH(a_line_being_typed_is_as_it_was_when_nobody_leaves, 0, 2),
	TEST(a_line_being_typed_outlasts_both_the_question_and_what_rings),
	EACH(whoever_stays_is_where_the_question_came, 0, VIEW_COUNT),
	GROUP("first", .begin = begin, .end = end),
	TEST(the_first_space_says_what_it_would_do_and_the_second_does_it),
	TEST(at_the_station_that_rings_nothing_is_asked),
	TEST(the_question_lapses_after_5_s),
	TEST(the_question_lapses_when_another_alarm_starts),
	TEST(the_question_is_about_one_station),
	TEST(a_lost_boil_is_asked_about_too),
	GROUP("answers", .begin = begin, .end = end),
	TEST(water_is_answered_from_another_view_by_saying_it_twice),
	TEST(the_station_of_the_alarm_answers_at_once),
	EACH(an_alarm_is_heard_from_every_view_and_it_is_said, 0, VIEW_COUNT),
	GROUP("words", .begin = begin, .end = end),
	TEST(quarts_typed_right_after_heat_off_reach_no_other_station),
	TEST(a_station_is_chosen_all_the_same_when_its_figure_comes_again),
	TEST(keys_that_go_on_being_refused_are_not_refused_in_silence),
	TEST(once_the_number_was_asked_for_a_figure_is_a_station_again),
	TEST(an_amount_typed_where_nothing_asks_chooses_nothing_and_opens_nothing),
	EACH(an_amount_typed_where_nothing_asks_does_nothing_in_any_view, 0, VIEW_COUNT),
	EACH(words_typed_where_nothing_asks_leave_all_as_it_was, 0, VIEW_COUNT),
	TEST(a_step_that_a_typed_amount_made_is_taken_back),
	TEST(a_word_that_begins_with_the_key_of_undo_undoes_nothing),
	TEST(keys_of_a_practised_hand_are_keys),
	TEST(figures_of_two_stations_that_ring_choose_one_after_the_other),
	EACH(a_number_of_two_stations_that_ring_is_a_number_when_it_goes_on, 0,
	     (int)(sizeof(numbers) / sizeof(numbers[0]))),
	TEST(where_a_number_is_near_two_figures_are_one_whatever_rings),
	GROUP("paste", .begin = begin, .end = end),
	EACH(a_paste_outside_a_text_field_does_nothing_and_says_so, 0, VIEW_COUNT),
	TEST(in_a_line_a_paste_is_text),
	EACH(what_is_not_one_line_of_text_is_not_taken, 0, NO_LINES),
	GROUP("soon after", .begin = begin_drawn, .end = end),
	TEST(who_stays_finds_all_answers_of_a_form),
	TEST(each_key_has_one_row_and_says_what_it_does_now),
	EACH(no_view_has_more_keys_than_the_page_counts, 0, VIEW_COUNT),
	TEST(a_new_question_that_was_to_be_read_is_answered_by_the_same_key),
	TEST(a_new_question_that_nobody_can_have_read_is_not),
	TEST(a_press_too_soon_is_said_beside_what_the_first_one_said),
	TEST(one_that_was_not_drawn_yet_is_not_answered),
	TEST(a_finger_that_rests_on_the_key_answers_nothing_more),
	TEST(what_is_recorded_is_not_done_by_a_press_that_bounced),
};

KK_TESTS("keys", listed)
