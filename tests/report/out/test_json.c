/*
 * The JSON writer: one valid document whatever the strings hold (RFC 8259).
 */
#include <check.h>
#include <float.h>
#include <locale.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "report/out/json.h"
#include "support/tests.h"

static char *written;
static size_t written_size;
static FILE *stream;

static struct json begin(void)
{
	stream = open_memstream(&written, &written_size);
	ck_assert_ptr_nonnull(stream);
	return json_begin(stream);
}

static void ck_written(const char *expected)
{
	ck_assert_int_eq(fclose(stream), 0);
	ck_assert_str_eq(written, expected);
	free(written);
}

static void ck_text(const char *text, const char *expected)
{
	struct json json = begin();

	json_text(&json, NULL, text);
	ck_written(expected);
}

static void ck_measure(double value, enum json_unit unit, const char *expected)
{
	struct json json = begin();

	json_measure(&json, NULL, value, unit);
	ck_written(expected);
}

static void ck_instant(int64_t wall_ms, const char *expected)
{
	struct json json = begin();

	json_instant(&json, NULL, wall_ms);
	ck_written(expected);
}

START_TEST(quotes_and_backslashes_are_escaped)
{
	ck_text("a \"b\" \\ /", "\"a \\\"b\\\" \\\\ /\"");
	ck_text("", "\"\"");
	ck_text(NULL, "null");
}
END_TEST

START_TEST(control_characters_never_come_through)
{
	ck_text("a\033[2J\007\n\t\177", "\"a\\u001b[2J\\u0007\\u000a\\u0009\\u007f\"");
	ck_text("a\342\200\256b", "\"a\\u202eb\""); /* turns the direction of writing */
	ck_text("\302\233 31m", "\"\\u009b 31m\""); /* C1: one-character CSI */
}
END_TEST

START_TEST(what_is_not_utf8_becomes_the_replacement_character)
{
	ck_text("\377x", "\"\357\277\275x\"");
	ck_text("\303", "\"\357\277\275\"");                                                 /* cut off */
	ck_text("\300\257", "\"\357\277\275\357\277\275\"");                                 /* overlong '/' */
	ck_text("\355\240\200", "\"\357\277\275\357\277\275\357\277\275\"");                 /* a surrogate */
	ck_text("\364\220\200\200", "\"\357\277\275\357\277\275\357\277\275\357\277\275\""); /* above U+10FFFF */
}
END_TEST

START_TEST(other_characters_stay_as_they_are)
{
	ck_text("cr\303\250me \342\202\254 \360\237\215\207", "\"cr\303\250me \342\202\254 \360\237\215\207\"");
}
END_TEST

START_TEST(measures_have_the_digits_they_earn)
{
	ck_measure(203.4999999, JSON_DEGREES, "203.5");
	ck_measure(211.465460702688, JSON_DEGREES, "211.5");
	ck_measure(85.41742104225499, JSON_KILOPASCALS, "85.42");
	ck_measure(0.625, JSON_INCHES, "0.625");
	ck_measure(0.25, JSON_INCHES, "0.25");
	ck_measure(1.0, JSON_INCHES, "1");
	ck_measure(1417.32, JSON_METERS, "1417.3");
	ck_measure(100.0, JSON_GRAMS, "100");
	ck_measure(9071.847, JSON_GRAMS, "9071.8");
	ck_measure(-15.5, JSON_DEGREES, "-15.5");
	ck_measure(-0.01, JSON_DEGREES, "0");
	ck_measure(1.0 / 3.0, JSON_SHARE, "0.333");
	ck_measure(2.0 / 3.0, JSON_LITERS, "0.67");
	ck_measure((double)NAN, JSON_METERS, "null");
	ck_measure((double)INFINITY, JSON_METERS, "null");
	ck_measure(DBL_MAX, JSON_METERS, "null");
	ck_measure(-1e12, JSON_SHARE, "null");
	ck_measure(999999999999.0, JSON_SHARE, "999999999999");
}
END_TEST

START_TEST(whole_numbers_keep_every_digit)
{
	struct json json = begin();

	json_open_array(&json, NULL, JSON_FLAT);
	json_whole(&json, NULL, INT64_MIN);
	json_whole(&json, NULL, INT64_MAX);
	json_close(&json);
	ck_written("[-9223372036854775808, 9223372036854775807]\n");
}
END_TEST

START_TEST(decimals_are_exact_and_carry_no_needless_digit)
{
	static const struct {
		int64_t value;
		int scale;
		const char *words;
	} numbers[] = { { 0, 3, "0" },
		        { 5, 0, "5" },
		        { 1417320000, 6, "1417.32" },
		        { -9, 3, "-0.009" },
		        { -12000, 3, "-12" },
		        { 10, 3, "0.01" },
		        { INT64_MIN, 3, "-9223372036854775.808" },
		        { INT64_MAX, 9, "9223372036.854775807" } };

	for (size_t i = 0; i < sizeof(numbers) / sizeof(numbers[0]); i++) {
		struct json json = begin();

		json_decimal(&json, NULL, numbers[i].value, numbers[i].scale);
		ck_written(numbers[i].words);
	}
}
END_TEST

/* The machine may have none of these; then there is nothing to show. */
START_TEST(the_decimal_sign_of_the_locale_does_not_show)
{
	const char *const names[] = { "de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "ps_AF.UTF-8" };

	for (size_t i = 0; i < sizeof(names) / sizeof(names[0]); i++) {
		if (setlocale(LC_NUMERIC, names[i]) == NULL)
			continue;
		ck_measure(0.25, JSON_INCHES, "0.25");
		ck_measure(-1417.32, JSON_METERS, "-1417.3");
	}
	(void)setlocale(LC_NUMERIC, "C");
}
END_TEST

START_TEST(instants_are_utc_with_milliseconds)
{
	ck_instant(INT64_C(1789387533412), "\"2026-09-14T12:05:33.412Z\"");
	ck_instant(-1, "\"1969-12-31T23:59:59.999Z\"");
	ck_instant(0, "null");
	ck_instant(INT64_MAX, "\"292278994-08-17T07:12:55.807Z\"");
}
END_TEST

START_TEST(members_of_lines_stand_on_their_own_lines)
{
	struct json json = begin();

	json_open_object(&json, NULL, JSON_LINES);
	json_text(&json, "a", "x");
	json_open_array(&json, "rows", JSON_LINES);
	json_open_object(&json, NULL, JSON_FLAT);
	json_whole(&json, "b", 1);
	json_null(&json, "c");
	json_close(&json);
	json_open_object(&json, NULL, JSON_FLAT);
	json_close(&json);
	json_close(&json);
	json_open_array(&json, "none", JSON_LINES);
	json_close(&json);
	json_bool(&json, "d", false);
	json_close(&json);
	ck_written("{\n\t\"a\": \"x\",\n\t\"rows\": [\n\t\t{\"b\": 1, \"c\": null},\n\t\t{}\n\t],\n"
	           "\t\"none\": [],\n\t\"d\": false\n}\n");
}
END_TEST

static const struct listed_test listed[] = {
	TEST(quotes_and_backslashes_are_escaped),
	TEST(control_characters_never_come_through),
	TEST(what_is_not_utf8_becomes_the_replacement_character),
	TEST(other_characters_stay_as_they_are),
	TEST(measures_have_the_digits_they_earn),
	TEST(whole_numbers_keep_every_digit),
	TEST(decimals_are_exact_and_carry_no_needless_digit),
	TEST(the_decimal_sign_of_the_locale_does_not_show),
	TEST(instants_are_utc_with_milliseconds),
	TEST(members_of_lines_stand_on_their_own_lines),
};

TESTS("json", listed)
