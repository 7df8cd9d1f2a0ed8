/* The check of a row: published values, and what it must tell apart. */
#include <check.h>
#include <string.h>

#include "engine/label/row_check.h"
#include "support/tests.h"

static uint64_t check_of(const char *text)
{
	return row_check_bytes(ROW_CHECK_BEGIN, text, strlen(text));
}

/* FNV-1a as RFC 9923 defines it, worked out for these texts with python3's integers. */
START_TEST(it_is_the_published_function)
{
	ck_assert_uint_eq(check_of(""), UINT64_C(0xcbf29ce484222325));
	ck_assert_uint_eq(check_of("a"), UINT64_C(0xaf63dc4c8601ec8c));
	ck_assert_uint_eq(check_of("foobar"), UINT64_C(0x85944171f73967e8));
}
END_TEST

START_TEST(where_a_field_ends_matters)
{
	uint64_t one = row_check_bytes(row_check_field(check_of("ab")), "c", 1);
	uint64_t other = row_check_bytes(row_check_field(check_of("a")), "bc", 2);

	ck_assert_uint_ne(one, other);
}
END_TEST

START_TEST(its_words_have_16_digits)
{
	char words[ROW_CHECK_WORDS];

	row_check_words(0xabc, words);
	ck_assert_str_eq(words, "0000000000000abc");
}
END_TEST

static const struct listed_test listed[] = {
	TEST(it_is_the_published_function),
	TEST(where_a_field_ends_matters),
	TEST(its_words_have_16_digits),
};

TESTS("row check", listed)
