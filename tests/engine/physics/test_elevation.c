#include <check.h>
#include <string.h>

#include "engine/physics/elevation.h"
#include "support/tests.h"

static struct elevation read_words(const char *words)
{
	struct elevation elevation;
	struct fault fault = { 0 };

	ck_assert_msg(elevation_read(words, &elevation, &fault), "\"%s\": %s", words, fault.sentence);
	return elevation;
}

START_TEST(feet_are_read_exactly_and_taken_as_meant)
{
	static const char *const words[] = {
		"4650ft", "4,650 ft", "4650 feet", "  4650\tFT ", "4650.0ft", "4650'", "4,650foot",
	};

	for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++) {
		struct elevation elevation = read_words(words[i]);

		ck_assert(elevation.known);
		ck_assert_int_eq(elevation.um, 4650 * FOOT_UM);
		ck_assert_int_eq(elevation.slack_um, 0);
	}
	ck_assert_int_eq(read_words("1000.4ft").um, 304921920);
	ck_assert_int_eq(read_words("-282 ft").um, -282 * FOOT_UM);
	ck_assert_int_eq(read_words("0ft").um, 0);
}
END_TEST

START_TEST(metres_carry_half_of_their_last_digit)
{
	ck_assert_int_eq(read_words("1417 m").um, 1417 * METRE_UM);
	ck_assert_int_eq(read_words("1417 m").slack_um, 500000);
	ck_assert_int_eq(read_words("1417.5m").um, 1417500000);
	ck_assert_int_eq(read_words("1417.5m").slack_um, 50000);
	ck_assert_int_eq(read_words("1,417.25 metres").slack_um, 5000);
	ck_assert_int_eq(read_words("-86 meters").um, -86 * METRE_UM);
	ck_assert_int_eq(read_words("-86 m").slack_um, 500000);
}
END_TEST

START_TEST(a_stated_uncertainty_is_kept)
{
	static const char *const words[] = {
		"4650ft+-50", "4650+-50 ft", "4,650 ft \302\261 50 ft", "4650 ft +/- 50", "4650\302\26150ft",
	};

	for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++) {
		ck_assert_int_eq(read_words(words[i]).um, 4650 * FOOT_UM);
		ck_assert_int_eq(read_words(words[i]).slack_um, 50 * FOOT_UM);
	}
	ck_assert_int_eq(read_words("4650ft+-10m").slack_um, 10 * METRE_UM);
	ck_assert_int_eq(read_words("1417m+-15").slack_um, 15 * METRE_UM);
	/* The typed digits bound what is known, whatever is claimed. */
	ck_assert_int_eq(read_words("1417m+-0").slack_um, 500000);
}
END_TEST

START_TEST(feet_too_fine_to_be_exact_are_widened_not_lost)
{
	struct elevation elevation = read_words("1000.123456ft");

	ck_assert_int_eq(elevation.um, 304837630); /* 304,837,629.39 rounded up */
	ck_assert_int_eq(elevation.slack_um, 1);
}
END_TEST

START_TEST(exact_words_are_read_as_the_very_same)
{
	static const char *const words[] = { "4650ft",       "1417m",   "1417.5m",    "-12.25ft",
		                             "4650ft+-50ft", "unknown", "1417.1234m", "1000ft" };
	static const char *const said[] = { "4650ft", "1417m",   "1417.5m",    "-12.25ft",
		                            NULL,     "unknown", "1417.1234m", "1000ft" };

	for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++) {
		struct elevation before;
		struct elevation after;
		struct fault fault = { 0 };
		char exact[80];

		ck_assert_msg(elevation_read(words[i], &before, &fault), "%s", fault.sentence);
		elevation_exact_words(&before, exact, sizeof(exact));
		ck_assert_msg(elevation_read(exact, &after, &fault), "%s", fault.sentence);
		ck_assert_int_eq(after.known, before.known);
		ck_assert_int_eq(after.um, before.um);
		ck_assert_int_eq(after.slack_um, before.slack_um);
		if (said[i] != NULL)
			ck_assert_str_eq(exact, said[i]);
	}
}
END_TEST

START_TEST(not_known_is_an_answer)
{
	ck_assert(!read_words("unknown").known);
	ck_assert(!read_words("Unknown").known);
	ck_assert(!read_words("").known);
	ck_assert(!read_words("  ").known);
}
END_TEST

START_TEST(anything_else_is_misuse)
{
	static const char *const words[] = {
		"4650",
		"ft",
		"high",
		"4650 mi",
		"4,65 ft",
		"46,50 ft",
		"4,650,0 ft",
		",650 ft",
		"4650,ft",
		"1234,567 ft",
		"4650. ft",
		".5 ft",
		"4650 ft +-",
		"4650ft+--5",
		"1e3 ft",
		"4650ft 20ft",
		"99999999999999999999 ft",
		"4650..5 ft",
		"4 650 ft",
		"0x10 ft",
		"nan ft",
		"-",
		"--5 ft",
		"1.1234567 m",
	};

	for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++) {
		struct elevation elevation = { .um = 7 };
		struct fault fault = { 0 };

		ck_assert_msg(!elevation_read(words[i], &elevation, &fault), "\"%s\" was read", words[i]);
		ck_assert_int_eq(fault.kind, FAULT_MISUSE);
		ck_assert_ptr_nonnull(strstr(fault.sentence, "4,650 ft or 1417 m"));
		ck_assert_int_eq(elevation.um, 7);
	}
}
END_TEST

/* Three digits behind a point: decimals here, thousands in other countries. */
START_TEST(a_point_that_may_part_thousands_is_asked_about)
{
	static const struct {
		const char *words;
		const char *ask;
	} cases[] = {
		{ "1.417 m", "write 1417 m or 1.42 m, instead of: 1.417 m" },
		{ "4.650 ft", "write 4650 ft or 4.65 ft" },
		{ "4.650'", "write 4650 ft or 4.65 ft" },
		{ "-1.417m", "write 1417 m or 1.42 m" },
		{ "0.305 m", "write 305 m or 0.31 m" },
		{ "12.192 m", "write 12192 m or 12.19 m" },
		{ "304.800 m", "write 304800 m or 304.80 m" },
		{ "1417.995 m", "write 1417995 m or 1418.00 m" },
		{ "4650 ft +- 1.000", "write 1000 ft or 1.00 ft" },
		{ "1.417 +-5 m", "write 1417 m or 1.42 m" },
	};
	static const char *const plain[] = {
		"4,650ft",   "1,417 m",     "1,417.000 m",  "1.42 m",   "1.4170 m",
		"1417.50 m", "1417.5000 m", "12345.678 ft", "4650.0ft",
	};

	for (size_t i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
		struct elevation elevation = { .um = 7 };
		struct fault fault = { 0 };

		ck_assert_msg(!elevation_read(cases[i].words, &elevation, &fault), "\"%s\" was read", cases[i].words);
		ck_assert_int_eq(fault.kind, FAULT_MISUSE);
		ck_assert_msg(strstr(fault.sentence, cases[i].ask) != NULL, "%s", fault.sentence);
		ck_assert_int_eq(elevation.um, 7);
	}
	for (size_t i = 0; i < sizeof(plain) / sizeof(plain[0]); i++)
		ck_assert(read_words(plain[i]).known);
	ck_assert_int_eq(read_words("4,650ft").um, 4650 * FOOT_UM);
}
END_TEST

START_TEST(no_kitchen_stands_in_the_sea_or_in_the_sky)
{
	struct elevation elevation;
	struct fault fault = { 0 };

	ck_assert_int_eq(read_words("-1500ft").um, -1500 * FOOT_UM);
	ck_assert_int_eq(read_words("30000ft").um, 30000 * FOOT_UM);
	ck_assert(!elevation_read("-1501ft", &elevation, &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	ck_assert(!elevation_read("46500ft", &elevation, &fault));
	ck_assert_ptr_nonnull(strstr(fault.sentence, "46500ft"));
	ck_assert(!elevation_read("500ft+-40000", &elevation, &fault));
}
END_TEST

START_TEST(the_printed_edge_belongs_to_its_band)
{
	struct elevation edge = read_words("1000ft");
	struct elevation above = read_words("1000.4ft");
	struct elevation metres = read_words("305m"); /* 1,000.7 ft, up to 1,002.3 */
	struct elevation wide = read_words("990ft+-20");
	struct elevation unknown = read_words("unknown");

	ck_assert(elevation_within_top(&edge, 1000));
	ck_assert(!elevation_within_top(&above, 1000));
	ck_assert(!elevation_within_top(&metres, 1000));
	ck_assert(!elevation_within_top(&metres, 1002));
	ck_assert(elevation_within_top(&metres, 1003));
	ck_assert(!elevation_within_top(&wide, 1000));
	ck_assert(!elevation_within_top(&unknown, 1000000));
}
END_TEST

START_TEST(feet_and_metres_agree)
{
	struct elevation elevation = read_words("4650ft");
	char words[40];

	ck_assert_int_eq(elevation.um, 4650 * FOOT_UM);
	ck_assert_double_eq_tol(elevation_metres(&elevation), 1417.32, 1e-9);
	elevation_words(&elevation, words, sizeof(words));
	ck_assert_str_eq(words, "4,650 ft (1,417 m)");
	elevation = read_words("-282ft");
	elevation_words(&elevation, words, sizeof(words));
	ck_assert_str_eq(words, "-282 ft (-86 m)");
	elevation = read_words("unknown");
	elevation_words(&elevation, words, sizeof(words));
	ck_assert_str_eq(words, "not known");
}
END_TEST

static const struct listed_test listed[] = {
	TEST(feet_are_read_exactly_and_taken_as_meant),
	TEST(metres_carry_half_of_their_last_digit),
	TEST(a_stated_uncertainty_is_kept),
	TEST(feet_too_fine_to_be_exact_are_widened_not_lost),
	TEST(exact_words_are_read_as_the_very_same),
	TEST(not_known_is_an_answer),
	TEST(anything_else_is_misuse),
	TEST(a_point_that_may_part_thousands_is_asked_about),
	TEST(no_kitchen_stands_in_the_sea_or_in_the_sky),
	TEST(the_printed_edge_belongs_to_its_band),
	TEST(feet_and_metres_agree),
};

TESTS("elevation", listed)
