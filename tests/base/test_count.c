#include <check.h>
#include <string.h>

#include "base/count.h"
#include "support/tests.h"

START_TEST(one_is_one_and_all_else_is_many)
{
	ck_assert_str_eq(count_words(1, "jar").words, "1 jar");
	ck_assert_str_eq(count_words(0, "jar").words, "0 jars");
	ck_assert_str_eq(count_words(2, "jar").words, "2 jars");
	ck_assert_str_eq(count_words(-1, "jar").words, "-1 jars");
	ck_assert_str_eq(count_words(INT64_MAX, "jar").words, "9223372036854775807 jars");
}
END_TEST

START_TEST(nouns_are_formed_by_rule)
{
	ck_assert_str_eq(count_words(1, "box").words, "1 box");
	ck_assert_str_eq(count_words(2, "box").words, "2 boxes");
	ck_assert_str_eq(count_noun(2, "batch").words, "batches");
	ck_assert_str_eq(count_noun(2, "dish").words, "dishes");
	ck_assert_str_eq(count_noun(2, "glass").words, "glasses");
	ck_assert_str_eq(count_noun(2, "supply").words, "supplies");
	ck_assert_str_eq(count_noun(2, "tray").words, "trays");
}
END_TEST

START_TEST(only_the_last_word_changes)
{
	ck_assert_str_eq(count_words(2, "lid box").words, "2 lid boxes");
	ck_assert_str_eq(count_words(1, "juicer run").words, "1 juicer run");
	ck_assert_str_eq(count_noun(3, "fill place").words, "fill places");
}
END_TEST

START_TEST(what_has_no_rule_stands_in_the_table)
{
	ck_assert_str_eq(count_words(1, "person").words, "1 person");
	ck_assert_str_eq(count_words(3, "person").words, "3 people");
	ck_assert_str_eq(count_noun(1, "is").words, "is");
	ck_assert_str_eq(count_noun(0, "is").words, "are");
	ck_assert_str_eq(count_noun(2, "was").words, "were");
	ck_assert_str_eq(count_noun(2, "has").words, "have");
	ck_assert_str_eq(count_noun(2, "waits").words, "wait");
	ck_assert_str_eq(count_noun(2, "needs").words, "need");
	ck_assert_str_eq(count_noun(2, "comes").words, "come");
	ck_assert_str_eq(count_noun(2, "goes").words, "go");
}
END_TEST

START_TEST(a_noun_too_long_is_cut)
{
	char noun[COUNTED_BYTES + 20];

	memset(noun, 'a', sizeof(noun));
	noun[sizeof(noun) - 1] = '\0';
	ck_assert_uint_eq(strlen(count_words(2, noun).words), COUNTED_BYTES - 1);
}
END_TEST

static const struct listed_test listed[] = {
	TEST(one_is_one_and_all_else_is_many),      TEST(nouns_are_formed_by_rule), TEST(only_the_last_word_changes),
	TEST(what_has_no_rule_stands_in_the_table), TEST(a_noun_too_long_is_cut),
};

TESTS("count", listed)
