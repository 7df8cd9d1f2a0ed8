/* Texts and numbers in one line: what goes in comes out, what does not fit is shortened
 * between characters, and no bytes whatever lead out of the buffer. */
#include <check.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "base/values.h"
#include "support/tests.h"

static char buffer[VALUES_BYTES];
static struct values_line line;
static struct values values;

static void begin(void)
{
	line = values_over(buffer, sizeof(buffer));
}

static const char *text_at(size_t n)
{
	ck_assert(values_read(buffer, &values));
	ck_assert_uint_lt(n, values.count);
	ck_assert(!values.list[n].is_number);
	return values.list[n].text;
}

START_TEST(texts_and_numbers_stand_in_their_order)
{
	ck_assert(values_add_text(&line, "Big kettle"));
	values_add_number(&line, 9);
	ck_assert(values_add_text(&line, ""));
	ck_assert_str_eq(buffer, "[\"Big kettle\",9,\"\"]");
	ck_assert(values_read(buffer, &values));
	ck_assert_uint_eq(values.count, 3);
	ck_assert_str_eq(values.list[0].text, "Big kettle");
	ck_assert(values.list[1].is_number);
	ck_assert_int_eq(values.list[1].number, 9);
	ck_assert_str_eq(values.list[1].text, "");
	ck_assert_str_eq(values.list[2].text, "");
}
END_TEST

START_TEST(a_line_without_values_is_whole)
{
	ck_assert_str_eq(buffer, "[]");
	ck_assert(values_read(buffer, &values));
	ck_assert_uint_eq(values.count, 0);
}
END_TEST

static const char *const texts[] = {
	"\"quoted\"",         "back\\slash", "tab\tline\nend\r", "\x01\x1f\x7f",
	"ünder 3 °F, 漬物 🍐", "','\"];[",    "\\u0041",          "?",
};

START_TEST(any_text_comes_back)
{
	ck_assert(values_add_text(&line, texts[_i]));
	ck_assert_str_eq(text_at(0), texts[_i]);
}
END_TEST

START_TEST(bytes_that_are_no_utf8_are_said_to_be_none)
{
	ck_assert(values_add_text(&line, "a\xff\xc3xb\xe2\x82"));
	ck_assert_str_eq(text_at(0), "a??xb??");
}
END_TEST

static const int64_t numbers[] = { 0, 1, -1, 60000, INT64_MAX, INT64_MIN, INT64_MIN + 1, 1789362000000 };

START_TEST(any_number_comes_back)
{
	values_add_number(&line, numbers[_i]);
	ck_assert(values_read(buffer, &values));
	ck_assert(values.list[0].is_number);
	ck_assert_int_eq(values.list[0].number, numbers[_i]);
}
END_TEST

/* Every length around the end, in characters of one to four bytes and such as are guarded. */
START_TEST(a_long_text_is_shortened_between_characters)
{
	static const char *const signs[] = { "w", "ü", "漬", "🍐", "\"", "\x02" };
	char text[4 * VALUES_BYTES + 1];
	size_t kept;

	for (size_t length = 1; length < VALUES_BYTES; length++) {
		struct text out = TEXT_OVER(text);
		bool whole;

		begin();
		for (size_t i = 0; i < length; i++)
			text_add(&out, "%s", signs[_i]);
		values_add_number(&line, INT64_MIN);
		whole = values_add_text(&line, text);
		kept = strlen(text_at(1));
		ck_assert_uint_lt(strlen(buffer), VALUES_BYTES);
		if (whole) {
			ck_assert_str_eq(text_at(1), text);
			continue;
		}
		ck_assert_uint_eq((kept - 3) % strlen(signs[_i]), 0);
		ck_assert_int_eq(strncmp(text_at(1), text, kept - 3), 0);
		ck_assert_str_eq(text_at(1) + kept - 3, "...");
	}
}
END_TEST

START_TEST(a_sentence_of_text_has_room)
{
	char text[401];

	memset(text, 'w', sizeof(text) - 1);
	text[sizeof(text) - 1] = '\0';
	ck_assert(values_add_text(&line, text));
	ck_assert_str_eq(text_at(0), text);
}
END_TEST

START_TEST(what_follows_a_long_text_is_there)
{
	char text[VALUES_BYTES];

	memset(text, 'w', sizeof(text) - 1);
	text[sizeof(text) - 1] = '\0';
	for (int i = 0; i < VALUES_MAX; i++)
		if (i % 2 == _i)
			ck_assert(!values_add_text(&line, text));
		else
			values_add_number(&line, INT64_MIN + i);
	ck_assert(values_read(buffer, &values));
	ck_assert_uint_eq(values.count, VALUES_MAX);
	for (int i = 0; i < VALUES_MAX; i++)
		if (i % 2 == _i)
			ck_assert_str_eq(values.list[i].text + strlen(values.list[i].text) - 3, "...");
		else
			ck_assert_int_eq(values.list[i].number, INT64_MIN + i);
}
END_TEST

START_TEST(other_writers_blanks_and_guards_are_read)
{
	ck_assert(values_read(" [ \"a\\u0042\\/\\n\" ,\t-7 ]\n", &values));
	ck_assert_uint_eq(values.count, 2);
	ck_assert_str_eq(values.list[0].text, "aB/\n");
	ck_assert_int_eq(values.list[1].number, -7);
}
END_TEST

static const char *const broken[] = {
	"",
	" ",
	"[",
	"[]]",
	"[] x",
	"x",
	"{}",
	"\"a\"",
	"7",
	"[,]",
	"[1,]",
	"[,1]",
	"[1 2]",
	"[01]",
	"[-]",
	"[1.5]",
	"[1e3]",
	"[true]",
	"[null]",
	"[\"a]",
	"[\"a\\\"]",
	"[\"\\x\"]",
	"[\"\\u00\"]",
	"[\"\\u0000\"]",
	"[\"\\u00e9\"]",
	"[\"\\ud83c\\udf50\"]",
	"[\"\n\"]",
	"[\"\xff\"]",
	"[[1]]",
	"[9223372036854775808]",
	"[-9223372036854775809]",
	"[1,2,3,4,5,6,7,8,9,10,11,12,13]",
};

START_TEST(what_is_no_such_line_is_refused)
{
	ck_assert_msg(!values_read(broken[_i], &values), "%s", broken[_i]);
}
END_TEST

/* The line lies in a block of its very size, so that valgrind and the sanitizers see a
 * byte too many. */
START_TEST(no_bytes_lead_out_of_the_buffer)
{
	static const char some[] = "[]\",\\u0-19a .{\xc3\xbc\xff\n";
	unsigned seed = (unsigned)_i + 1;

	for (int round = 0; round < 2000; round++) {
		size_t length = (size_t)(rand_r(&seed) % 40);
		char *bytes = malloc(length + 1);

		ck_assert_ptr_nonnull(bytes);
		for (size_t i = 0; i < length; i++)
			bytes[i] = some[(size_t)rand_r(&seed) % (sizeof(some) - 1)];
		bytes[length] = '\0';
		if (length > 0)
			bytes[0] = '[';
		if (values_read(bytes, &values))
			ck_assert_uint_le(values.count, VALUES_MAX);
		free(bytes);
	}
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("line", .begin = begin),
	TEST(texts_and_numbers_stand_in_their_order),
	TEST(a_line_without_values_is_whole),
	EACH_OF(any_text_comes_back, texts),
	TEST(bytes_that_are_no_utf8_are_said_to_be_none),
	EACH_OF(any_number_comes_back, numbers),
	EACH(a_long_text_is_shortened_between_characters, 0, 6),
	TEST(a_sentence_of_text_has_room),
	EACH(what_follows_a_long_text_is_there, 0, 2),
	TEST(other_writers_blanks_and_guards_are_read),
	EACH_OF(what_is_no_such_line_is_refused, broken),
	EACH(no_bytes_lead_out_of_the_buffer, 0, 10),
};

TESTS("values", listed)
