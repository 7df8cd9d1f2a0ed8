/* What rings is seen from across the room, as many as the window has room for. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "kitchen/step/step.h"
#include "screen/term/digits.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void end(void)
{
	dk_end(&dk);
}

/* The waters of two juicers, then a hold of each kettle, then the boil-holds of two pots. */
static void ring(const char *kind, int rows, int cols, int ringing)
{
	int64_t big_id;
	int64_t low_id;

	dk_begin(&dk, kind, rows, cols);
	pk_stock(&dk.kit);
	big_id = kk_start(&dk.kit, BIG_KETTLE, 7);
	low_id = kk_start(&dk.kit, LOW_KETTLE, 6);
	(void)pk_juice(&dk.kit, "grape", "4 qt");
	(void)pk_batch(&dk.kit, WIDE_POT, "grape jelly", "half_pint", 1);
	(void)pk_juice(&dk.kit, "grape", "4 qt");
	(void)pk_batch(&dk.kit, DEEP_POT, "grape jelly", "half_pint", 1);
	if (ringing >= 3)
		kk_to(&dk.kit, big_id, PHASE_HOLD);
	if (ringing >= 4)
		kk_to(&dk.kit, low_id, PHASE_HOLD);
	if (ringing >= 5)
		pk_to(&dk.kit, WIDE_POT, PHASE_BOIL_HOLD);
	if (ringing >= 6)
		pk_to(&dk.kit, DEEP_POT, PHASE_BOIL_HOLD);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	kk_pass(&dk.kit, MINUTE_MS);
	if (ringing >= 2)
		(void)pk_run(&dk.kit, OLD_JUICER, "apples", "10 lb");
	dk_pass(&dk, WATER_MINUTES * MINUTE_MS + 5 * SECOND_MS);
	ck_assert_uint_eq(dk.desk.rung_count, (size_t)ringing);
}

/* --- whole windows ------------------------------------------------------------------------ */

START_TEST(one_is_seen_large_with_its_job_at_80x24)
{
	static const char *const picture[] = {
		" Quince Hollow (invented) Mon 14 Sep 09:21  4,650 ft 203.5F 13 jars  6 warnings",
		"  ███    ██   ██  ███  ██████ █████ ████                     ██      ███  █████",
		" ██      ██   ██ ██ ██   ██   ██    ██ ██               █  ████  ██ ██ ██ ██",
		" ████    ██ █ ██ █████   ██   ████  ████               ███   ██     ██ ██ ████",
		" ██ ██   ███████ ██ ██   ██   ██    ██ ██               █    ██  ██ ██ ██    ██",
		"  ███     ██ ██  ██ ██   ██   █████ ██ ██                  █████     ███  ████",
		" Tall juicer  BURNS DRY  Water pan: look, top up with hot water, then press a",
		" 12 lb grapes: none drawn",
		"▌1 Big kettle      loaded       for 21 min 7 half-pints grape jelly",
		" 2 Low kettle      loaded       for 21 min 6 half-pints grape jelly",
		" 3 Weight canner   free, weighted-gauge pressure canner",
		" 4 Dome            free, atmospheric steam canner",
		" 5 Needle canner   free, dial-gauge pressure canner",
		" 6!Tall juicer     heat         for 21 min WATER +1:05 Top up hot, then press a",
		" 7 Old juicer      free, steam juicer",
		" 8 Wide pot        to boil      for 21 min grape jelly",
		" 9 Deep pot        to boil      for 21 min grape jelly",
		" time                           ┬09:30         ┬10:00         ┬10:30",
		" 1 Big kettle     ░░░░░░░░░░│···········█████▒▒▒·",
		" 2 Low kettle     ░░░░░░░░░░│···········█████▒▒▒·",
		" caution: Is it there (full rolling boil)? On the board press 8, then Space:",
		" to boil has lasted more than 20 min at Wide pot.",
		"",
		" Space heat is on  a alarm heard  u undo  x exceptions       Tab rings   ? keys",
	};

	ring("xterm-256color", 24, 80, 1);
	dk_shows(&dk, picture, (int)(sizeof(picture) / sizeof(picture[0])));
}
END_TEST

START_TEST(two_are_seen_large_and_the_third_is_counted_at_80x24)
{
	static const char *const picture[] = {
		" Quince Hollow (invented) Mon 14 Sep 10:11  4,650 ft 203.5F 13 jars  7 warnings",
		"  ███    ██   ██  ███  ██████ █████ ████                     ██      ███  █████",
		" ██      ██   ██ ██ ██   ██   ██    ██ ██               █  ████  ██ ██ ██ ██",
		" ████    ██ █ ██ █████   ██   ████  ████               ███   ██     ██ ██ ████",
		" ██ ██   ███████ ██ ██   ██   ██    ██ ██               █    ██  ██ ██ ██    ██",
		"  ███     ██ ██  ██ ██   ██   █████ ██ ██                  █████     ███  ████",
		" Tall juicer  BURNS DRY  Water pan: look, top up with hot water, then press a",
		" █████   ██   ██  ███  ██████ █████ ████                    ███      ███  █████",
		"    ██   ██   ██ ██ ██   ██   ██    ██ ██               █  ██ ██ ██ ██ ██ ██",
		"   ██    ██ █ ██ █████   ██   ████  ████               ███ ██ ██    ██ ██ ████",
		"  ██     ███████ ██ ██   ██   ██    ██ ██               █  ██ ██ ██ ██ ██    ██",
		"  ██      ██ ██  ██ ██   ██   █████ ██ ██                   ███      ███  ████",
		" Old juicer  BURNS DRY  Top up hot, then press a  (10 lb apples)     and 1 more",
		"▌1!Big kettle      hold             +11:05 Heat OFF, lid off: 5 min rest",
		" 2 Low kettle      loaded       for 71 min 6 half-pints grape jelly",
		" 6!Tall juicer     heat         for 21 min WATER +1:05 Top up hot, then press a",
		" 7!Old juicer      heat         for 20 min WATER +0:05 Top up hot, then press a",
		" 8 Wide pot        to boil      for 71 min grape jelly",
		" 9 Deep pot        to boil      for 71 min grape jelly",
		"   3 more stations, free",
		" caution: Is it there (full rolling boil)? On the board press 8, then Space:",
		" to boil has lasted more than 20 min at Wide pot.",
		"",
		" Space heat off, lid off  a alarm heard  l lost  u undo      Tab rings   ? keys",
	};

	ring("xterm-256color", 24, 80, 3);
	dk_shows(&dk, picture, (int)(sizeof(picture) / sizeof(picture[0])));
}
END_TEST

START_TEST(six_at_80x24_without_color)
{
	static const char *const picture[] = {
		" Quince Hollow (invented) Mon 14 Sep 11:31  4,650 ft 203.5F 13 jars  4 warnings",
		"  ███     ███  █████ █████       ██ ██ █████  ███  ██████",
		" ██ ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██",
		"  ███    ██ ██ ████  ████        █████ ████  █████   ██",
		" ██ ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██",
		"  ███     ███  ██    ██          ██ ██ █████ ██ ██   ██",
		" Wide pot  SPOILS NOW  OVER BY 35:05  OFF the heat NOW, skim  (grape jelly)",
		"  ███     ███  █████ █████       ██ ██ █████  ███  ██████",
		" ██ ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██",
		"  ████   ██ ██ ████  ████        █████ ████  █████   ██",
		"    ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██",
		"  ███     ███  ██    ██          ██ ██ █████ ██ ██   ██",
		" Deep pot  SPOILS NOW  OVER BY 20:05  OFF the heat NOW, skim         and 4 more",
		"▌1!Big kettle      hold           +1:31:05 Heat OFF, lid off: 5 min rest",
		" 2!Low kettle      hold             +41:05 Heat OFF, lid off: 5 min rest",
		" 6!Tall juicer     heat         for 21 min WATER +1:05 Top up hot, then press a",
		" 7!Old juicer      heat         for 20 min WATER +0:05 Top up hot, then press a",
		" 8!Wide pot        boil-hold        +35:05 OFF the heat NOW, skim",
		" 9!Deep pot        boil-hold        +20:05 OFF the heat NOW, skim",
		"   3 more stations, free",
		"",
		"",
		"",
		" Space heat off, lid off  a alarm heard  l lost  u undo      Tab rings   ? keys",
	};

	ring("vt100", 24, 80, 6);
	dk_shows(&dk, picture, (int)(sizeof(picture) / sizeof(picture[0])));
}
END_TEST

START_TEST(four_are_seen_large_and_two_are_counted_at_120x40)
{
	static const char *const picture[] = {
		" Quince Hollow (invented data)      Mon 14 Sep 11:31  4,650 ft  boils 203.5 F  jelly 211.5 F  13 jars today  4 warnings",
		"  ███     ███  █████ █████       ██ ██ █████  ███  ██████                                    ████  █████     ███  █████",
		" ██ ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██                                   █     ██ ██    ██ ██ ██ ██",
		"  ███    ██ ██ ████  ████        █████ ████  █████   ██                                  ███  ███  ████     ██ ██ ████",
		" ██ ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██                                   █     ██    ██ ██ ██ ██    ██",
		"  ███     ███  ██    ██          ██ ██ █████ ██ ██   ██                                      ████  ████      ███  ████",
		" Wide pot  SPOILS NOW  OFF the heat NOW, skim  (grape jelly)",
		"  ███     ███  █████ █████       ██ ██ █████  ███  ██████                                    ████   ███      ███  █████",
		" ██ ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██                                   █     ██ ██ ██ ██ ██ ██ ██",
		"  ████   ██ ██ ████  ████        █████ ████  █████   ██                                  ███  ███  ██ ██    ██ ██ ████",
		"    ██   ██ ██ ██    ██          ██ ██ ██    ██ ██   ██                                   █  ██    ██ ██ ██ ██ ██    ██",
		"  ███     ███  ██    ██          ██ ██ █████ ██ ██   ██                                      █████  ███      ███  ████",
		" Deep pot  SPOILS NOW  OFF the heat NOW, skim  (grape jelly)",
		"  ███    ██   ██  ███  ██████ █████ ████                                                             ██      ███  █████",
		" ██      ██   ██ ██ ██   ██   ██    ██ ██                                                       █  ████  ██ ██ ██ ██",
		" ████    ██ █ ██ █████   ██   ████  ████                                                       ███   ██     ██ ██ ████",
		" ██ ██   ███████ ██ ██   ██   ██    ██ ██                                                       █    ██  ██ ██ ██    ██",
		"  ███     ██ ██  ██ ██   ██   █████ ██ ██                                                          █████     ███  ████",
		" Tall juicer  BURNS DRY  Water pan: look, top up with hot water, then press a  (12 lb grapes)",
		" █████   ██   ██  ███  ██████ █████ ████                                                            ███      ███  █████",
		"    ██   ██   ██ ██ ██   ██   ██    ██ ██                                                       █  ██ ██ ██ ██ ██ ██",
		"   ██    ██ █ ██ █████   ██   ████  ████                                                       ███ ██ ██    ██ ██ ████",
		"  ██     ███████ ██ ██   ██   ██    ██ ██                                                       █  ██ ██ ██ ██ ██    ██",
		"  ██      ██ ██  ██ ██   ██   █████ ██ ██                                                           ███      ███  ████",
		" Old juicer  BURNS DRY  Water pan: look, top up with hot water, then press a  (10 lb apples)                 and 2 more",
		"▌1!Big kettle             hold           +1:31:05 Heat OFF, lid off: the 5 min rest begins",
		" 2!Low kettle             hold             +41:05 Heat OFF, lid off: the 5 min rest begins",
		" 3 Weight canner          free, weighted-gauge pressure canner",
		" 4 Dome                   free, atmospheric steam canner",
		" 5 Needle canner          free, dial-gauge pressure canner",
		" 6!Tall juicer            heat         for 21 min WATER +1:05 Water pan: look, top up with hot water, then press a",
		" 7!Old juicer             heat         for 20 min WATER +0:05 Water pan: look, top up with hot water, then press a",
		" 8!Wide pot               boil-hold        +35:05 OFF the heat NOW, skim",
		" 9!Deep pot               boil-hold        +20:05 OFF the heat NOW, skim",
		" time                           ┬11:30         ┬11:45         ┬12:00         ┬12:15         ┬12:30         ┬12:45",
		" 1 Big kettle     ████████████████│▒▒▒▒··",
		"",
		"",
		"",
		" Space heat off, lid off  a alarm heard  l lost  u undo  x exceptions  j juice  i initials  h house  Tab rings   ? keys",
	};

	ring("xterm-256color", 40, 120, 6);
	dk_shows(&dk, picture, (int)(sizeof(picture) / sizeof(picture[0])));
}
END_TEST

START_TEST(the_smallest_window_has_number_job_and_count)
{
	static const char *const picture[] = {
		"10:11 4,650 ft 203.5F 13 jars 7 warnings",
		"  ███                ██      ███  █████",
		" ██             █  ████  ██ ██ ██ ██",
		" ████          ███   ██     ██ ██ ████",
		" ██ ██          █    ██  ██ ██ ██    ██",
		"  ███              █████     ███  ████",
		" WATER  Tall juicer          and 2 more",
		"▌1!Big kettle    hold            +11:05",
		" 6!Tall juicer   heat        for 21 min",
		"   7 more stations, 1 rings: Tab",
		" caution: w shows it",
		" Space heat off, lid off  Tab rings   ?",
	};

	ring("xterm-256color", 12, 40, 3);
	dk_shows(&dk, picture, (int)(sizeof(picture) / sizeof(picture[0])));
}
END_TEST

/* --- the one that rings is the red one ------------------------------------------------------- */

/* While the alarm's flash is lit, which it is when it begins. */
START_TEST(when_the_water_rings_the_water_is_red_and_the_run_is_not)
{
	int row;
	int col;

	dk_begin(&dk, "xterm-256color", 24, 80);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	dk_pass(&dk, WATER_MINUTES * MINUTE_MS - 5 * MINUTE_MS);
	row = dk_row_of(&dk, "WATER +0:00", &col);
	ck_assert_int_eq(dk_role_at(&dk, row, col), ROLE_ALARM);
	row = dk_row_of(&dk, "run  ", &col);
	ck_assert_int_eq(dk_role_at(&dk, row, col), ROLE_RUNNING);
	row = dk_row_of(&dk, "55 min", &col);
	ck_assert_int_eq(dk_role_at(&dk, row, col), ROLE_RUNNING);
}
END_TEST

START_TEST(when_the_run_rings_the_run_is_red_and_the_water_is_not)
{
	int row;
	int col;

	dk_begin(&dk, "xterm-256color", 24, 80);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	kk_pass(&dk.kit, RUN_MINUTES * MINUTE_MS - MINUTE_MS);
	KK_OK(&dk.kit, kitchen_acknowledge(dk.kit.kitchen, pk_phase(&dk.kit, TALL_JUICER), &dk.kit.fault)); /* water */
	dk_pass(&dk, MINUTE_MS);
	row = dk_row_of(&dk, "run  ", &col);
	ck_assert_int_eq(dk_role_at(&dk, row, col), ROLE_ALARM);
	row = dk_row_of(&dk, "water 19 min", &col);
	ck_assert_int_eq(dk_role_at(&dk, row, col), ROLE_RUNNING);
}
END_TEST

/* --- every window size ------------------------------------------------------------------------ */

START_TEST(all_that_ring_are_shown_or_counted_in_every_window)
{
	static const int sizes[][2] = { { 12, 40 },  { 12, 80 },  { 24, 40 }, { 24, 80 },
		                        { 30, 100 }, { 40, 120 }, { 60, 200 } };
	char more[24];
	int shown = 0;

	ring("xterm-256color", sizes[_i][0], sizes[_i][1], 6);
	for (int row = 0; row < sizes[_i][0]; row++)
		shown += dk_band_at(&dk, row);
	shown /= digits_rows(DIGITS_TALL);
	ck_assert_int_ge(shown, 1);
	(void)snprintf(more, sizeof(more), "and %d more", 6 - shown);
	ck_assert_msg(shown == 6 || dk_sees(&dk, more), "%s", more);
}
END_TEST

START_TEST(a_message_hides_neither_the_job_nor_how_many_more_ring)
{
	int col;

	ring("xterm-256color", 12, 40, 6);
	dk_keys(&dk, "3 "); /* a question of two rows */
	(void)dk_row_of(&dk, "OFF HEAT  +35:", &col);
	(void)dk_row_of(&dk, "Wide pot", &col);
	(void)dk_row_of(&dk, "and 5 more", &col);
}
END_TEST

START_TEST(another_view_tells_how_many_more_ring_and_which_key_goes_there)
{
	int row;
	int col;

	ring("xterm-256color", 12, 40, 3);
	dk_key(&dk, 'h');
	(void)dk_row_of(&dk, "and 2 more", &col);
	row = dk_row_of(&dk, "Tab rings", &col);
	ck_assert_int_eq(row, 11);
}
END_TEST

/* --- stations that find no row ------------------------------------------------------------------ */

START_TEST(stations_without_a_row_are_counted_and_the_first_to_ring_is_named)
{
	int col;

	dk_begin(&dk, "xterm-256color", 12, 40);
	kk_to(&dk.kit, kk_start(&dk.kit, BIG_KETTLE, 7), PHASE_HOLD);
	kk_to(&dk.kit, kk_start(&dk.kit, LOW_KETTLE, 6), PHASE_HOLD);
	dk_pass(&dk, SECOND_MS);
	(void)dk_row_of(&dk, "7 more stations, free", &col);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	(void)pk_run(&dk.kit, OLD_JUICER, "apples", "10 lb");
	dk_pass(&dk, SECOND_MS);
	(void)dk_row_of(&dk, "7 more stations; 6 rings at 11:00", &col);
}
END_TEST

/* Free stations are all alike, but for those that the plan wants now. */
START_TEST(a_station_to_be_started_now_is_shown_or_named)
{
	int col;

	dk_begin(&dk, "xterm-256color", 12, 40);
	pk_stock(&dk.kit);
	KK_OK(&dk.kit, kitchen_setup_line(dk.kit.kitchen, "helper MK", 0, &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_setup_line(dk.kit.kitchen, "helper JO", 0, &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_setup_line(dk.kit.kitchen, "helper AL", 0, &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_setup_line(dk.kit.kitchen, "run grapes \"12 lb\" times=2", 0, &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_setup_line(dk.kit.kitchen, "batch \"strawberry jam\"", 0, &dk.kit.fault));
	KK_OK(&dk.kit, kitchen_plan_accept(dk.kit.kitchen, &dk.kit.fault));
	kk_to(&dk.kit, kk_start(&dk.kit, BIG_KETTLE, 7), PHASE_HOLD);
	dk_pass(&dk, SECOND_MS);
	dk_key(&dk, '1');
	(void)dk_row_of(&dk, "free; now: ", &col);
	(void)dk_row_of(&dk, "7 more stations; start ", &col);
	(void)dk_row_of(&dk, " now", &col);
}
END_TEST

/* --- the key that answers ------------------------------------------------------------------------- */

START_TEST(the_key_that_answers_the_water_is_named_before_the_step)
{
	int col;

	dk_begin(&dk, "xterm-256color", 12, 40);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb"); /* heats: its step has long words */
	dk_pass(&dk, WATER_MINUTES * MINUTE_MS);
	dk_key(&dk, '6');
	ck_assert_int_eq(dk_row_of(&dk, " a water topped up", &col), 11);
	ck_assert_int_eq(col, 0);
	dk_key(&dk, 'a');
	ck_assert_int_eq(dk_row_of(&dk, " Space steady boil", &col), 11);
}
END_TEST

START_TEST(the_step_is_read_after_coming_away_from_what_was_being_typed)
{
	int col;

	ring("xterm-256color", 12, 40, 1);
	dk_key(&dk, 'h');
	dk_key(&dk, ' ');
	ck_assert(dk.desk.entry.open);
	dk_key(&dk, KEY_CODE_TAB);
	dk_key(&dk, '1'); /* while the juicer rings */
	ck_assert_int_eq(dk_row_of(&dk, " Space heat is on  u undo Tab rings", &col), 11);
	dk_key(&dk, KEY_CODE_ESCAPE);
	ck_assert(dk.desk.entry.open);
}
END_TEST

START_TEST(no_water_is_asked_for_a_pan_that_ran_dry)
{
	int col;

	dk_begin(&dk, "xterm-256color", 24, 80);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	dk_key(&dk, '6');
	dk_pass(&dk, 62 * MINUTE_MS);
	(void)dk_row_of(&dk, "Heat OFF, let it cool: no water into a", &col);
	ck_assert_int_eq(dk_row_of(&dk, " hot dry pan", &col), 7); /* whole, before what it holds */
	ck_assert_int_eq(dk_row_of(&dk, " Space heat off, draw the juice  a cooled, topped up", &col), 23);
	ck_assert(!dk_sees(&dk, "a water topped up"));
	dk_key(&dk, 'a');
	dk_says(&dk, "Noted: 6 Tall juicer, its pan has cooled and is filled.");
}
END_TEST

/* In a list whose lines are chosen by figures, the key of a station is said to be the board's. */
START_TEST(a_key_named_in_a_list_of_figures_is_the_boards)
{
	int col;

	dk_begin(&dk, "xterm-256color", 24, 80);
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	pk_to(&dk.kit, TALL_JUICER, PHASE_RUN);
	dk_key(&dk, '6');
	dk_pass(&dk, 22 * MINUTE_MS);
	dk_key(&dk, 'x');
	(void)dk_row_of(&dk, "Look at the water of Tall juicer NOW.", &col);
	ck_assert(dk_sees(&dk, "on the board press 6, a."));
	dk_pass(&dk, 20 * MINUTE_MS);
	ck_assert(dk_sees(&dk, "heat off, the pan has cooled and is filled"));
	ck_assert(!dk_sees(&dk, "op up with hot water"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("windows", .end = end),
	TEST(one_is_seen_large_with_its_job_at_80x24),
	TEST(two_are_seen_large_and_the_third_is_counted_at_80x24),
	TEST(six_at_80x24_without_color),
	TEST(four_are_seen_large_and_two_are_counted_at_120x40),
	TEST(the_smallest_window_has_number_job_and_count),
	TEST(when_the_water_rings_the_water_is_red_and_the_run_is_not),
	TEST(when_the_run_rings_the_run_is_red_and_the_water_is_not),
	EACH(all_that_ring_are_shown_or_counted_in_every_window, 0, 7),
	TEST(a_message_hides_neither_the_job_nor_how_many_more_ring),
	TEST(another_view_tells_how_many_more_ring_and_which_key_goes_there),
	TEST(stations_without_a_row_are_counted_and_the_first_to_ring_is_named),
	TEST(a_station_to_be_started_now_is_shown_or_named),
	TEST(the_key_that_answers_the_water_is_named_before_the_step),
	TEST(the_step_is_read_after_coming_away_from_what_was_being_typed),
	TEST(no_water_is_asked_for_a_pan_that_ran_dry),
	TEST(a_key_named_in_a_list_of_figures_is_the_boards),
};

KK_TESTS("ringing", listed)
