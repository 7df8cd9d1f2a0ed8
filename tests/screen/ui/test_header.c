/* The top of the window: how far off its plan the day is, and in other views the most urgent clock. */
#include <locale.h>
#include <stdlib.h>

#include "kitchen/board/board_private.h"
#include "kitchen/house/house.h"
#include "kitchen/plan/plan.h"
#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void begin(void)
{
	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", 40, 120);
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

START_TEST(how_far_off_its_plan_a_day_is_stands_in_words)
{
	line("helper MK");
	line("helper JO");
	line("plan burners=5 cooling=any clean=30");
	line("juice \"grape\" \"1 gal\" chilled");
	line("batch \"grape jelly\" times=2");
	KK_OK(&dk.kit, kitchen_plan_accept(dk.kit.kitchen, &dk.kit.fault));
	dk_pass(&dk, SECOND_MS);
	ck_assert(dk_sees(&dk, ", ends about "));
	ck_assert(!dk_sees(&dk, " late") && !dk_sees(&dk, " early"));
	dk_pass(&dk, 20 * MINUTE_MS); /* nobody begins */
	ck_assert(dk_sees(&dk, ", 20 min late  4,650 ft"));
}
END_TEST

START_TEST(a_clock_that_falls_is_left_and_one_that_rises_is_over)
{
	(void)pk_run(&dk.kit, TALL_JUICER, "grapes", "12 lb");
	dk_pass(&dk, MINUTE_MS);
	dk_key(&dk, 'g');
	ck_assert(dk_sees(&dk, "6 Tall juicer  water check 18 min left"));
	dk_pass(&dk, 19 * MINUTE_MS + SECOND_MS);
	ck_assert(dk_sees(&dk, "BURNS DRY: 6 Tall juicer  water check OVER BY 0:02  Water pan"));
}
END_TEST

START_TEST(that_nothing_is_real_is_whole_in_every_window)
{
	static const struct {
		int rows;
		int cols;
		const char *words;
	} windows[] = {
		{ 40, 120, " PRACTICE, nothing is real, 60 times as fast  " },
		{ 24, 80, " PRACTICE, nothing is real  " },
		{ 24, 40, " PRACTICE, nothing is real  " },
		{ 12, 40, "PRACTICE 09:00 " },
	};

	for (size_t i = 0; i < sizeof(windows) / sizeof(windows[0]); i++) {
		dk_end(&dk);
		dk_begin(&dk, "xterm-256color", windows[i].rows, windows[i].cols);
		dk.kit.kitchen->board.house.practice_speed = 60; /* only a new log is made one */
		dk_pass(&dk, SECOND_MS);
		ck_assert_msg(dk_sees(&dk, windows[i].words), "%s", windows[i].words);
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("header", .begin = begin, .end = end),
	TEST(how_far_off_its_plan_a_day_is_stands_in_words),
	TEST(a_clock_that_falls_is_left_and_one_that_rises_is_over),
	TEST(that_nothing_is_real_is_whole_in_every_window),
};

KK_TESTS("header", listed)
