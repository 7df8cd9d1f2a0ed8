/* The day plan on the screen: where its ribbons open. */
#include <locale.h>
#include <stdlib.h>
#include <string.h>

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

/* What is typed takes the place of the example; Left changes it instead. */
START_TEST(typing_takes_the_place_of_an_example)
{
	static const char keys[] = { 'r', 'b' };

	plan("day 14:00");
	for (size_t i = 0; i < sizeof(keys); i++) {
		dk_key(&dk, keys[i]);
		ck_assert(dk.desk.entry.open);
		ck_assert_str_ne(dk.desk.entry.text, "");
		dk_key(&dk, '5');
		ck_assert_str_eq(dk.desk.entry.text, "5");
		dk_key(&dk, KEY_CODE_ESCAPE);
	}
	dk_key(&dk, 'b');
	dk_key(&dk, KEY_CODE_LEFT);
	dk_key(&dk, '5');
	ck_assert_ptr_nonnull(strstr(dk.desk.entry.text, "grape jelly"));
	ck_assert_ptr_nonnull(strstr(dk.desk.entry.text, "times=52"));
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("ribbons", .begin = begin, .end = end),
	TEST(a_day_still_to_begin_opens_at_its_beginning),
	TEST(a_day_that_goes_on_opens_at_now),
	TEST(typing_takes_the_place_of_an_example),
};

KK_TESTS("plan view", listed)
