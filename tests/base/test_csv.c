/*
 * CSV: what RFC 4180 says, what is refused, and that no bytes whatever get the reader
 * out of its buffer.
 */
#include <check.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/csv.h"
#include "support/tests.h"

#define FIELDS 8

static char *text;
static struct csv_reader reader;
static struct csv_field fields[FIELDS];
static size_t count;
static long line;
static struct fault fault;

/* Exactly the byte more that the header asks for, so that valgrind and the
 * sanitizers see one too many. */
static void begin_bytes(const char *bytes, size_t length)
{
	free(text);
	text = malloc(length + 1);
	ck_assert_ptr_nonnull(text);
	memcpy(text, bytes, length);
	reader = csv_begin(text, length);
}

static void begin(const char *words)
{
	begin_bytes(words, strlen(words));
}

static void end(void)
{
	free(text);
	text = NULL;
}

static enum csv_answer next(void)
{
	return csv_next(&reader, fields, FIELDS, &count, &line, &fault);
}

/* The next record is these fields, with '|' between them. */
static void ck_record(const char *wanted)
{
	char got[400] = "";
	size_t used = 0;
	enum csv_answer answer = next();

	ck_assert_msg(answer == CSV_RECORD, "no record: %s", fault.sentence);
	for (size_t i = 0; i < count; i++) {
		ck_assert_uint_eq(strlen(fields[i].text), fields[i].length);
		used += (size_t)snprintf(got + used, sizeof(got) - used, "%s%s", i > 0 ? "|" : "", fields[i].text);
	}
	ck_assert_str_eq(got, wanted);
}

static void ck_wrong(const char *words)
{
	ck_assert_int_eq(next(), CSV_WRONG);
	ck_assert_msg(strstr(fault.sentence, words) != NULL, "%s", fault.sentence);
}

/* RFC 4180, section 2, rules 1, 2, 5, 6 and 7. */
START_TEST(records_are_read_as_the_rfc_has_them)
{
	begin("aaa,bbb,ccc\r\nzzz,yyy,xxx");
	ck_record("aaa|bbb|ccc");
	ck_record("zzz|yyy|xxx");
	ck_assert_int_eq(next(), CSV_END);
	begin("\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,yyy,xxx\r\n\"aaa\",\"b\"\"bb\",\"\"\r\n");
	ck_record("aaa|b \r\nbb|ccc");
	ck_record("zzz|yyy|xxx");
	ck_record("aaa|b\"bb|");
	ck_assert_int_eq(next(), CSV_END);
}
END_TEST

START_TEST(lines_may_end_in_any_of_three_ways_and_are_counted)
{
	begin("a\nb\r\n\r\n\nc\rd\r\"e\rf\ng\r\nh\",i\nj");
	ck_record("a");
	ck_record("b");
	ck_record("c");
	ck_assert_int_eq(line, 5);
	ck_record("d");
	ck_assert_int_eq(line, 6);
	ck_record("e\rf\ng\r\nh|i");
	ck_assert_int_eq(line, 7);
	ck_record("j");
	ck_assert_int_eq(line, 11);
}
END_TEST

START_TEST(empty_fields_and_a_byte_order_mark_are_understood)
{
	begin("\xef\xbb\xbfname,,\n,\n\"\"\n");
	ck_record("name||");
	ck_record("|");
	ck_record("");
	ck_assert_int_eq(next(), CSV_END);
	begin("");
	ck_assert_int_eq(next(), CSV_END);
	begin("\xef\xbb\xbf");
	ck_assert_int_eq(next(), CSV_END);
}
END_TEST

START_TEST(semicolons_and_tabs_separate_when_the_first_line_has_no_comma)
{
	begin("a;b\n\"1;2\";3,4\n");
	ck_record("a|b");
	ck_record("1;2|3,4");
	begin("a\tb\nc;d\te\n");
	ck_record("a|b");
	ck_record("c;d|e");
	begin("a,b;c\n");
	ck_record("a|b;c");
}
END_TEST

START_TEST(what_cannot_be_meant_is_refused_and_the_next_line_is_read)
{
	static const char nul[] = "a\0b,c\nnext";

	begin("6\" pot,x\nnext");
	ck_wrong("quotation mark stands inside a field");
	ck_record("next");
	begin("\"a\" b,c\nnext");
	ck_wrong("after a closing quotation mark");
	ck_record("next");
	begin("a\n\"b,c\nd\n");
	ck_record("a");
	ck_wrong("is not closed");
	ck_assert_int_eq(line, 2);
	ck_assert_int_eq(next(), CSV_END);
	begin_bytes(nul, sizeof(nul) - 1);
	ck_wrong("zero byte");
	ck_record("next");
	begin("caf\xe9,x\nnext");
	ck_wrong("not UTF-8");
	ck_record("next");
	begin("\xed\xa0\x80\nnext"); /* a surrogate */
	ck_wrong("not UTF-8");
	begin("1,2,3,4,5,6,7,8,9\nnext");
	ck_wrong("more fields than columns");
	ck_record("next");
}
END_TEST

START_TEST(a_field_of_a_megabyte_is_one_field)
{
	size_t size = (size_t)1 << 20;
	char *long_one = malloc(size + 8);

	ck_assert_ptr_nonnull(long_one);
	memset(long_one, 'q', size);
	memcpy(long_one, "\"", 1);
	memcpy(long_one + size - 1, "\",x\n", 4);
	begin_bytes(long_one, size + 3);
	free(long_one);
	ck_assert_int_eq(next(), CSV_RECORD);
	ck_assert_uint_eq(count, 2);
	ck_assert_uint_eq(fields[0].length, size - 2);
	ck_assert_str_eq(fields[1].text, "x");
}
END_TEST

/* xorshift, so that a failing round can be repeated. */
static uint64_t state;

static unsigned dice(unsigned sides)
{
	state ^= state << 13;
	state ^= state >> 7;
	state ^= state << 17;
	return (unsigned)(state % sides);
}

START_TEST(no_bytes_lead_out_of_the_buffer)
{
	static const char likely[] = "\"\"\"\",,\n\r\r\n;\t=-'a\0\xff\xc3\xa9\xef\xbb\xbf";
	char bytes[64] = "";

	state = (uint64_t)_i * 2654435761u + 88172645463325252u;
	for (int round = 0; round < 400; round++) {
		size_t length = dice(sizeof(bytes) + 1);
		int answers = 0;

		for (size_t i = 0; i < length; i++)
			bytes[i] = dice(4) == 0 ? (char)dice(256) : likely[dice(sizeof(likely))];
		begin_bytes(bytes, length);
		for (;;) {
			enum csv_answer answer = next();

			if (answer == CSV_END)
				break;
			ck_assert_int_le(++answers, (int)length + 1); /* it always moves on */
			for (size_t i = 0; answer == CSV_RECORD && i < count; i++) {
				ck_assert(fields[i].text >= text && fields[i].text + fields[i].length <= text + length);
				ck_assert_uint_eq(strlen(fields[i].text), fields[i].length);
			}
		}
	}
}
END_TEST

/* What is written guarded and read without its guard is what it was. */
START_TEST(the_guard_comes_off_as_it_went_on)
{
	static const char letters[] = "'''=+-@\t\r\nab ";
	char plain[8] = "";
	char guarded[10];

	state = (uint64_t)_i + 88172645463325252u;
	for (int round = 0; round < 3000; round++) {
		size_t length = dice(sizeof(plain));
		size_t guard;
		size_t size;

		for (size_t i = 0; i < length; i++)
			plain[i] = letters[dice(sizeof(letters) - 1)];
		guard = csv_wants_guard(plain, length) ? 1 : 0;
		guarded[0] = '\'';
		memcpy(guarded + guard, plain, length);
		size = length + guard;
		ck_assert(size == 0 || strchr("=+-@\t\r\n", guarded[0]) == NULL);
		ck_assert_uint_eq(csv_guard_length(guarded, size), guard);
	}
}
END_TEST

START_TEST(only_what_looks_like_a_formula_is_guarded)
{
	static const char *const formulas[] = { "=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "\nx", "'=1", "''+" };
	static const char *const words[] = { "", "grape jelly", "'tis", "'", "''", "a=b", " =1", "1-2" };

	for (size_t i = 0; i < sizeof(formulas) / sizeof(formulas[0]); i++)
		ck_assert_msg(csv_wants_guard(formulas[i], strlen(formulas[i])), "%s", formulas[i]);
	for (size_t i = 0; i < sizeof(words) / sizeof(words[0]); i++)
		ck_assert_msg(!csv_wants_guard(words[i], strlen(words[i])), "%s", words[i]);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("reader", .end = end),
	TEST(records_are_read_as_the_rfc_has_them),
	TEST(lines_may_end_in_any_of_three_ways_and_are_counted),
	TEST(empty_fields_and_a_byte_order_mark_are_understood),
	TEST(semicolons_and_tabs_separate_when_the_first_line_has_no_comma),
	TEST(what_cannot_be_meant_is_refused_and_the_next_line_is_read),
	TEST(a_field_of_a_megabyte_is_one_field),
	EACH(no_bytes_lead_out_of_the_buffer, 0, 10),
	EACH(the_guard_comes_off_as_it_went_on, 0, 3),
	TEST(only_what_looks_like_a_formula_is_guarded),
};

TESTS("csv", listed)
