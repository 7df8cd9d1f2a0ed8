/* The day plan on the screen: where its ribbons open. */
#include <locale.h>
#include <stdlib.h>

#include "kitchen/house/house.h"
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

static const struct listed_test listed[] = {
	GROUP("ribbons", .begin = begin, .end = end),
	TEST(a_day_still_to_begin_opens_at_its_beginning),
	TEST(a_day_that_goes_on_opens_at_now),
};

KK_TESTS("plan view", listed)
