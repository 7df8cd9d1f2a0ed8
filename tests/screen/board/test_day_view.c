/* The page of a day: while anything runs what was begun, afterwards what is left to do above it. */
#include <locale.h>

#include "support/desk_kit.h"
#include "support/tests.h"

static struct desk_kit dk;

static void begin(void)
{
	(void)setlocale(LC_ALL, ""); /* as the board does for its terminal */
	dk_begin(&dk, "xterm-256color", 24, 80);
}

static void end(void)
{
	dk_end(&dk);
}

START_TEST(the_day_closes_with_what_is_left_to_do)
{
	int64_t load_id = kk_start(&dk.kit, BIG_KETTLE, 7);

	dk_pass(&dk, 0);
	dk_keys(&dk, "d");
	ck_assert_int_eq(dk.desk.view, VIEW_DAY);
	ck_assert(dk_sees(&dk, "what was started, oldest first"));
	ck_assert(!dk_sees(&dk, "7 jars today."));
	kk_to(&dk.kit, load_id, PHASE_COOLING);
	dk_pass(&dk, 0);
	ck_assert(dk_sees(&dk, "7 jars today. On the rack: 7 "));
	ck_assert(dk_sees(&dk, "7 jars cool: check the seals from "));
	ck_assert(dk_sees(&dk, "what was started, oldest first"));
	dk_key(&dk, KEY_CODE_LEFT); /* of the day before nothing is left */
	ck_assert(!dk_sees(&dk, "7 jars today."));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("day view", .begin = begin, .end = end),
	TEST(the_day_closes_with_what_is_left_to_do),
};

KK_TESTS("the day view", listed)
