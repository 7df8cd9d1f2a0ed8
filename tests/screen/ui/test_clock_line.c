/* The clock of a strip: minutes while there is time, seconds when they matter, never more than there is. */
#include <string.h>

#include "base/text.h"
#include "kitchen/board/phases.h"
#include "screen/term/digits.h"
#include "screen/ui/clock_line.h"
#include "support/tests.h"

#define HOUR_S 3600

static struct strip hold(enum station_kind kind, enum phase_name name, int64_t required_s)
{
	struct strip strip = { .content = kind == STATION_POT ? STRIP_BATCH : STRIP_LOAD };

	strip.station.kind = kind;
	strip.rule = phase_rule_of(kind, name);
	strip.phase.began = (struct moment){ .wall_ms = 1000000, .awake_ms = 5000 };
	strip.phase.required_ms = required_s * 1000;
	return strip;
}

static struct moment after(const struct strip *strip, int64_t ms)
{
	struct moment now = strip->phase.began;

	now.wall_ms += ms;
	now.awake_ms += ms;
	return now;
}

/* Its alarm was heard in its first millisecond, and is quiet for longer than any test. */
static void heard(struct strip *strip)
{
	strip->quiet_ms = 1000 * HOUR_S * INT64_C(1000);
	strip->phase.acknowledged_wall_ms = strip->phase.began.wall_ms + 1;
}

static const char *words_after(const struct strip *strip, int64_t ms)
{
	static char words[2][24];
	static int which;
	struct moment now = after(strip, ms);
	struct face face;

	which = !which;
	strip_face(strip, &now, &face);
	strip_clock_words(strip, &face, words[which], sizeof(words[which]));
	return words[which];
}

START_TEST(time_left_is_said_in_minutes_and_the_last_five_by_the_second)
{
	static const struct {
		int64_t left_ms;
		const char *words;
		const char *tall;
	} cases[] = {
		{ 12 * HOUR_S * 1000, "12 h 00", "12_H_00" },
		{ 6000000, "1 h 40", "1_H_40" },
		{ 5999000, "99 min", "99_MIN" },
		{ 2520000, "42 min", "42_MIN" },
		{ 2519000, "41 min", "41_MIN" }, /* never more than there is */
		{ 300000, "5 min", "5_MIN" },
		{ 299001, "5 min", "5_MIN" }, /* a second begun is a second left */
		{ 299000, "4:59", "4:59" },
		{ 1, "0:01", "0:01" }, /* over only when it is */
		{ 0, "+0:00", "+0:00" },
		{ -299999, "+4:59", "+4:59" },
		{ -1505000, "+25 min", "+25_MIN" },
		{ -6300000, "+1 h 45", "+1_H_45" },
	};
	struct strip strip = hold(STATION_BOILING_WATER, PHASE_HOLD, 12 * HOUR_S);

	heard(&strip);
	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct moment now = after(&strip, strip.phase.required_ms - cases[i].left_ms);
		struct face face;
		char words[24];
		char tall[24];

		strip_face(&strip, &now, &face);
		strip_clock_words(&strip, &face, words, sizeof(words));
		strip_clock_tall(&strip, &face, tall, sizeof(tall));
		ck_assert_str_eq(words, cases[i].words);
		ck_assert_str_eq(tall, cases[i].tall);
		ck_assert_int_lt(digits_columns(tall, DIGITS_TALL), 40);
	}
}
END_TEST

START_TEST(what_rings_and_what_spoils_is_told_by_the_second_however_long)
{
	struct strip canner = hold(STATION_BOILING_WATER, PHASE_HOLD, 600);
	struct strip pot = hold(STATION_POT, PHASE_BOIL_HOLD, 1200);

	ck_assert_str_eq(words_after(&canner, (600 + 1505) * 1000), "+25:05");
	pot.rule = phase_rule_for_pot(pot.rule, POT_GELS);
	ck_assert_str_eq(words_after(&pot, 1000), "19:59");
}
END_TEST

START_TEST(a_wait_counts_up_by_the_second_and_then_by_the_minute)
{
	struct strip strip = hold(STATION_BOILING_WATER, PHASE_COME_UP, 0);

	ck_assert_str_eq(words_after(&strip, 299999), "4:59");
	ck_assert_str_eq(words_after(&strip, 300000), "5 min");
	ck_assert_str_eq(words_after(&strip, 6300000), "1 h 45");
}
END_TEST

/* From one change to the next: nothing changes before, and something does then. */
START_TEST(it_is_known_to_the_millisecond_when_a_clock_shows_something_else)
{
	static const struct {
		enum phase_name phase;
		int64_t required_s;
	} cases[] = { { PHASE_HOLD, 1200 }, { PHASE_COME_UP, 0 } };

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct strip strip = hold(STATION_BOILING_WATER, cases[i].phase, cases[i].required_s);
		int changes = 0;

		heard(&strip);
		for (int64_t ms = 137; ms < 2 * HOUR_S * INT64_C(1000); changes++) {
			struct moment now = after(&strip, ms);
			bool by_second;
			int64_t next = strip_clock_next_ms(&strip, &now, &by_second);

			ck_assert_int_ge(next, 1);
			ck_assert_int_le(next, by_second ? 1000 : 60000);
			ck_assert_str_eq(words_after(&strip, ms), words_after(&strip, ms + next - 1));
			ck_assert_str_ne(words_after(&strip, ms), words_after(&strip, ms + next));
			ms += next;
		}
		ck_assert_int_gt(changes, 300);
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("words"),
	TEST(time_left_is_said_in_minutes_and_the_last_five_by_the_second),
	TEST(what_rings_and_what_spoils_is_told_by_the_second_however_long),
	TEST(a_wait_counts_up_by_the_second_and_then_by_the_minute),
	TEST(it_is_known_to_the_millisecond_when_a_clock_shows_something_else),
};

TESTS("clock line", listed)
