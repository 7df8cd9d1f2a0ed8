#include <check.h>
#include <limits.h>
#include <string.h>

#include "base/fault.h"
#include "base/text.h"
#include "base/utf8.h"
#include "support/tests.h"

START_TEST(text_that_fits_is_whole)
{
	char buffer[8];
	struct text text = TEXT_OVER(buffer);

	text_add(&text, "%s", "abc");
	text_add(&text, "%d", 1234);
	ck_assert_str_eq(buffer, "abc1234");
	ck_assert_uint_eq(text.used, 7);
	ck_assert(!text.cut);
}
END_TEST

START_TEST(text_that_does_not_fit_is_cut_and_says_so)
{
	char buffer[8];
	struct text text = TEXT_OVER(buffer);

	text_add(&text, "%s", "abcdefgh");
	ck_assert_str_eq(buffer, "abcdefg");
	ck_assert(text.cut);
	/* Nothing is put behind a gap. */
	text_add(&text, "x");
	ck_assert_str_eq(buffer, "abcdefg");
}
END_TEST

START_TEST(text_is_never_cut_inside_a_character)
{
	/* "jalapeño" and a euro sign, of two and three bytes; four-byte clef. */
	static const char words[] = "n\303\261o\342\202\254\360\235\204\236z";
	/* Whole characters end after 1, 3, 4, 7, 11 and 12 bytes. */
	static const size_t ends[] = { 0, 1, 1, 3, 4, 4, 4, 7, 7, 7, 7, 11, 12 };
	char buffer[16];

	for (size_t room = 0; room < sizeof(ends) / sizeof(ends[0]); room++) {
		memset(buffer, 'X', sizeof(buffer));
		ck_assert_int_eq(text_copy(buffer, room + 1, words), room == 12);
		ck_assert_uint_eq(strlen(buffer), ends[room]);
		ck_assert_int_eq(buffer[room + 1], 'X');
	}
}
END_TEST

START_TEST(a_buffer_of_one_byte_holds_the_empty_text)
{
	char buffer[1] = { 'X' };

	ck_assert(text_copy(buffer, sizeof(buffer), ""));
	ck_assert(!text_copy(buffer, sizeof(buffer), "a"));
	ck_assert_str_eq(buffer, "");
}
END_TEST

START_TEST(names_differ_only_in_what_a_person_hears)
{
	ck_assert(text_same_name("Half-Pint", "half_pint"));
	ck_assert(text_same_name("half pint", "halfpint"));
	ck_assert(text_same_name(" bread-and-butter pickles ", "Bread and Butter Pickles"));
	ck_assert(text_same_name("", " - _"));
	ck_assert(!text_same_name("pint", "pints"));
	ck_assert(!text_same_name("pints", "pint"));
	ck_assert(!text_same_name("half pint", "pint"));
	ck_assert(!text_same_name("", "pint"));
}
END_TEST

static const char *duration(long long seconds)
{
	static char buffer[40];
	struct text text = TEXT_OVER(buffer);

	text_add_duration(&text, seconds);
	return buffer;
}

START_TEST(hours_read_as_people_say_them)
{
	static const struct {
		long long minutes;
		const char *words;
	} said[] = { { 0, "0 min" }, { 59, "59 min" }, { 60, "1 h" }, { 120, "2 h" }, { 192, "3 h 12 min" } };

	for (size_t i = 0; i < sizeof(said) / sizeof(said[0]); i++) {
		char buffer[32];
		struct text text = TEXT_OVER(buffer);

		text_add_hours(&text, said[i].minutes);
		ck_assert_str_eq(buffer, said[i].words);
	}
}
END_TEST

START_TEST(durations_read_like_a_kitchen_clock)
{
	ck_assert_str_eq(duration(0), "0:00");
	ck_assert_str_eq(duration(425), "7:05");
	ck_assert_str_eq(duration(3599), "59:59");
	ck_assert_str_eq(duration(3600), "1:00:00");
	ck_assert_str_eq(duration(4025), "1:07:05");
	ck_assert_str_eq(duration(-5), "-0:05");
	ck_assert_str_eq(duration(-86400), "-24:00:00");
	ck_assert_str_eq(duration(LLONG_MIN), "-2562047788015215:30:08");
}
END_TEST

static const char *grouped(long long number)
{
	static char buffer[40];
	struct text text = TEXT_OVER(buffer);

	text_add_grouped(&text, number);
	return buffer;
}

START_TEST(large_numbers_carry_commas)
{
	ck_assert_str_eq(grouped(0), "0");
	ck_assert_str_eq(grouped(999), "999");
	ck_assert_str_eq(grouped(1000), "1,000");
	ck_assert_str_eq(grouped(-1500), "-1,500");
	ck_assert_str_eq(grouped(1002003), "1,002,003");
	ck_assert_str_eq(grouped(LLONG_MIN), "-9,223,372,036,854,775,808");
	ck_assert_str_eq(grouped(LLONG_MAX), "9,223,372,036,854,775,807");
}
END_TEST

START_TEST(a_fault_keeps_its_kind_and_sentence)
{
	struct fault fault = { 0 };

	ck_assert(!fault_set(&fault, FAULT_REFUSED, "no %s", "row"));
	ck_assert_int_eq(fault.kind, FAULT_REFUSED);
	ck_assert_str_eq(fault.sentence, "no row");
	ck_assert(!fault_set(&fault, FAULT_IO, "again: %s", fault.sentence));
	ck_assert_str_eq(fault.sentence, "again: no row");
	ck_assert(!fault_set(NULL, FAULT_IO, "nobody listens"));
}
END_TEST

START_TEST(a_fault_too_long_for_its_buffer_is_cut)
{
	char words[FAULT_SENTENCE_MAX + 50];
	struct fault fault;

	memset(words, 'a', sizeof(words) - 1);
	words[sizeof(words) - 1] = '\0';
	fault_set(&fault, FAULT_MISUSE, "%s", words);
	ck_assert_uint_eq(strlen(fault.sentence), FAULT_SENTENCE_MAX - 1);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(text_that_fits_is_whole),
	TEST(text_that_does_not_fit_is_cut_and_says_so),
	TEST(text_is_never_cut_inside_a_character),
	TEST(a_buffer_of_one_byte_holds_the_empty_text),
	TEST(names_differ_only_in_what_a_person_hears),
	TEST(hours_read_as_people_say_them),
	TEST(durations_read_like_a_kitchen_clock),
	TEST(large_numbers_carry_commas),
	TEST(a_fault_keeps_its_kind_and_sentence),
	TEST(a_fault_too_long_for_its_buffer_is_cut),
};

TESTS("text", listed)
