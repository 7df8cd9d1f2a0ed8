#include "report/out/json.h"

#include <assert.h>
#include <inttypes.h>
#include <math.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "kitchen/board/board.h"
#include "kitchen/board/clock.h"
#include "report/cli/plain.h"

#define MEASURE_LIMIT 1e12

struct json json_begin(FILE *out)
{
	return (struct json){ .out = out };
}

static void write_text(FILE *out, const char *text)
{
	(void)fputc('"', out);
	while (*text != '\0') {
		uint32_t character = 0;
		size_t length = plain_decode(text, &character);

		if (length == 0)
			(void)fputs("\xef\xbf\xbd", out);
		else if (character == '"' || character == '\\')
			(void)fprintf(out, "\\%c", (int)character);
		else if (utf8_is_control(character) || utf8_is_trick(character))
			(void)fprintf(out, "\\u%04x", (unsigned)character);
		else
			(void)fwrite(text, 1, length, out);
		text += length == 0 ? 1 : length;
	}
	(void)fputc('"', out);
}

static void new_line(struct json *json)
{
	(void)fputc('\n', json->out);
	for (int i = 0; i < json->depth; i++)
		(void)fputc('\t', json->out);
}

/* Comma, line and key before a value. */
static void lead_in(struct json *json, const char *key)
{
	if (json->depth > 0) {
		bool lines = json->at[json->depth - 1].layout == JSON_LINES;

		assert(json->at[json->depth - 1].array == (key == NULL));
		if (json->at[json->depth - 1].begun)
			(void)fputs(lines ? "," : ", ", json->out);
		if (lines)
			new_line(json);
		json->at[json->depth - 1].begun = true;
	}
	if (key != NULL) {
		write_text(json->out, key);
		(void)fputs(": ", json->out);
	}
}

static void open_container(struct json *json, const char *key, enum json_layout layout, bool array)
{
	lead_in(json, key);
	assert(json->depth < JSON_DEPTH_MAX);
	json->at[json->depth].layout = layout;
	json->at[json->depth].array = array;
	json->at[json->depth].begun = false;
	json->depth++;
	(void)fputc(array ? '[' : '{', json->out);
}

void json_open_object(struct json *json, const char *key, enum json_layout layout)
{
	open_container(json, key, layout, false);
}

void json_open_document(struct json *json, enum json_layout layout)
{
	json_open_object(json, NULL, layout);
	json_whole(json, "version", JSON_VERSION);
}

void json_open_array(struct json *json, const char *key, enum json_layout layout)
{
	open_container(json, key, layout, true);
}

void json_close(struct json *json)
{
	assert(json->depth > 0);
	json->depth--;
	if (json->at[json->depth].layout == JSON_LINES && json->at[json->depth].begun)
		new_line(json);
	(void)fputc(json->at[json->depth].array ? ']' : '}', json->out);
	if (json->depth == 0)
		(void)fputc('\n', json->out);
}

void json_text(struct json *json, const char *key, const char *text)
{
	if (text == NULL) {
		json_null(json, key);
		return;
	}
	lead_in(json, key);
	write_text(json->out, text);
}

void json_whole(struct json *json, const char *key, int64_t value)
{
	lead_in(json, key);
	(void)fprintf(json->out, "%" PRId64, value);
}

void json_bool(struct json *json, const char *key, bool value)
{
	lead_in(json, key);
	(void)fputs(value ? "true" : "false", json->out);
}

void json_null(struct json *json, const char *key)
{
	lead_in(json, key);
	(void)fputs("null", json->out);
}

void json_instant(struct json *json, const char *key, int64_t wall_ms)
{
	char words[32];

	clock_words_utc(wall_ms, words, sizeof(words));
	json_text(json, key, wall_ms == 0 || words[0] == '\0' ? NULL : words);
}

void decimal_words(int64_t value, int scale, char *buffer, size_t size)
{
	uint64_t size_of_it = value < 0 ? 0 - (uint64_t)value : (uint64_t)value;
	uint64_t one = 1;
	struct text text = text_over(buffer, size);

	for (int i = 0; i < scale; i++)
		one *= 10;
	text_add(&text, "%s%" PRIu64, value < 0 ? "-" : "", size_of_it / one);
	if (size_of_it % one == 0)
		return;
	text_add(&text, ".%0*" PRIu64, scale, size_of_it % one);
	while (text.used > 0 && buffer[text.used - 1] == '0')
		buffer[--text.used] = '\0';
}

void json_decimal(struct json *json, const char *key, int64_t value, int scale)
{
	char digits[DECIMAL_BYTES];

	decimal_words(value, scale, digits, sizeof(digits));
	lead_in(json, key);
	(void)fputs(digits, json->out);
}

void json_measure(struct json *json, const char *key, double value, enum json_unit unit)
{
	static const int decimals[] = {
		[JSON_METERS] = 1, [JSON_KILOPASCALS] = 2,    [JSON_DEGREES] = 1,     [JSON_INCHES] = 3,
		[JSON_POUNDS] = 2, [JSON_GRAMS] = 1,          [JSON_MILLILITERS] = 1, [JSON_KILOGRAMS] = 2,
		[JSON_LITERS] = 2, [JSON_LITERS_FROM_KG] = 3, [JSON_MINUTES] = 1,     [JSON_SHARE] = 3,
	};
	static_assert(sizeof(decimals) / sizeof(decimals[0]) == JSON_UNIT_COUNT, "digits for every unit");
	int scale = decimals[unit];

	if (isfinite(value) && fabs(value) < MEASURE_LIMIT)
		json_decimal(json, key, llround(value * pow(10.0, scale)), scale);
	else
		json_null(json, key);
}
