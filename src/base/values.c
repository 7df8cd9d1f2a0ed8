/*
 * values.c - see values.h.  Of JSON no more than arrays of strings and integers: a
 * fraction, an exponent or a word (true, null) is refused.
 */
#include "base/values.h"

#include <assert.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "base/utf8.h"

#define NUMBER_ROOM 21 /* -9223372036854775808 and its comma; "...", fits too */
#define SHORTENED "..."

/* --- writing ------------------------------------------------------------------ */

struct values_line values_over(char *buffer, size_t size)
{
	assert(size >= VALUES_BYTES);
	memcpy(buffer, "[]", 3);
	return (struct values_line){ .at = buffer, .size = size, .used = 2 };
}

/* Over the closing bracket; it is put back by close_line. */
static void open_value(struct values_line *line)
{
	assert(line->count < VALUES_MAX);
	line->used--;
	if (line->count++ > 0)
		line->at[line->used++] = ',';
}

static void close_line(struct values_line *line)
{
	line->at[line->used++] = ']';
	line->at[line->used] = '\0';
}

static void put_bytes(struct values_line *line, const char *bytes, size_t length)
{
	memcpy(line->at + line->used, bytes, length);
	line->used += length;
}

/* A character as it stands in a string; its bytes. */
static size_t guarded(const char *at, size_t bytes, uint32_t character, char out[8])
{
	if (bytes == 0) {
		out[0] = '?';
		return 1;
	}
	if (character < 0x20)
		return (size_t)snprintf(out, 8, "\\u%04x", (unsigned)character);
	if (character == '"' || character == '\\') {
		out[0] = '\\';
		out[1] = (char)character;
		return 2;
	}
	memcpy(out, at, bytes);
	return bytes;
}

/* Up to where a text may reach: beyond are the quote, the bracket, the zero, and the
 * numbers that may follow. */
static size_t text_end(const struct values_line *line)
{
	return line->size - 3 - (VALUES_MAX - line->count) * NUMBER_ROOM;
}

/* The whole of it in one string of at most `room` bytes; else its beginning that leaves
 * room for the dots.  False: shortened. */
static bool put_characters(struct values_line *line, const char *text)
{
	size_t end = text_end(line);
	size_t left = strlen(text);
	size_t dots_at = line->used; /* where they still fit */

	while (left > 0) {
		uint32_t character = 0;
		size_t bytes = utf8_next(text, left, &character);
		char out[8];
		size_t length = guarded(text, bytes, character, out);

		if (line->used + length > end) {
			line->used = dots_at;
			put_bytes(line, SHORTENED, strlen(SHORTENED));
			return false;
		}
		put_bytes(line, out, length);
		if (line->used + strlen(SHORTENED) <= end)
			dots_at = line->used;
		bytes = bytes == 0 ? 1 : bytes;
		text += bytes;
		left -= bytes;
	}
	return true;
}

bool values_add_text(struct values_line *line, const char *text)
{
	bool whole;

	open_value(line);
	put_bytes(line, "\"", 1);
	whole = put_characters(line, text);
	put_bytes(line, "\"", 1);
	close_line(line);
	return whole;
}

void values_add_number(struct values_line *line, int64_t number)
{
	open_value(line);
	line->used += (size_t)snprintf(line->at + line->used, line->size - line->used, "%" PRId64, number);
	close_line(line);
}

/* --- reading ------------------------------------------------------------------ */

struct reader {
	const char *at;
	struct values *out;
	size_t used; /* of out->bytes */
};

static void skip_blanks(struct reader *reader)
{
	reader->at += strspn(reader->at, " \t\r\n");
}

static bool keep(struct reader *reader, const char *bytes, size_t length)
{
	if (reader->used + length > sizeof(reader->out->bytes))
		return false;
	memcpy(reader->out->bytes + reader->used, bytes, length);
	reader->used += length;
	return true;
}

/* The four digits after \u: a character of ASCII alone, which is all that is written so. */
static bool read_code(struct reader *reader)
{
	unsigned code = 0;
	char byte;

	for (int i = 0; i < 4; i++) {
		static const char digits[] = "0123456789abcdef0123456789ABCDEF";
		const char *digit = *reader->at == '\0' ? NULL : strchr(digits, *reader->at);

		if (digit == NULL)
			return false;
		code = code * 16 + (unsigned)(digit - digits) % 16;
		reader->at++;
	}
	byte = (char)code;
	return code > 0 && code < 0x80 && keep(reader, &byte, 1);
}

static bool read_guarded(struct reader *reader)
{
	static const char signs[] = "\"\\/bfnrt";
	static const char meant[] = "\"\\/\b\f\n\r\t";
	const char *sign;

	reader->at++;
	if (*reader->at == 'u') {
		reader->at++;
		return read_code(reader);
	}
	sign = *reader->at == '\0' ? NULL : strchr(signs, *reader->at);
	if (sign == NULL)
		return false;
	reader->at++;
	return keep(reader, &meant[sign - signs], 1);
}

static bool read_string(struct reader *reader, struct value *value)
{
	value->text = reader->out->bytes + reader->used;
	for (reader->at++; *reader->at != '"';) {
		uint32_t character;
		size_t bytes = utf8_next(reader->at, strnlen(reader->at, 4), &character);

		if (*reader->at == '\\') {
			if (!read_guarded(reader))
				return false;
			continue;
		}
		if (bytes == 0 || character < 0x20 || !keep(reader, reader->at, bytes))
			return false;
		reader->at += bytes;
	}
	reader->at++;
	return keep(reader, "", 1);
}

/* Digits, counted down: the smallest number has no opposite. */
static bool read_number(struct reader *reader, struct value *value)
{
	bool negative = *reader->at == '-';
	const char *first = reader->at + negative;
	size_t digits = strspn(first, "0123456789");
	int64_t below = 0;

	if (digits == 0 || (digits > 1 && *first == '0'))
		return false;
	for (size_t i = 0; i < digits; i++) {
		int digit = first[i] - '0';

		if (below < (INT64_MIN + digit) / 10)
			return false;
		below = below * 10 - digit;
	}
	if (!negative && below == INT64_MIN)
		return false;
	value->is_number = true;
	value->number = negative ? below : -below;
	reader->at = first + digits;
	return true;
}

static bool read_value(struct reader *reader)
{
	struct values *out = reader->out;
	struct value *value = &out->list[out->count];

	if (out->count == VALUES_MAX)
		return false;
	*value = (struct value){ .text = "" };
	out->count++;
	return *reader->at == '"' ? read_string(reader, value) : read_number(reader, value);
}

bool values_read(const char *line, struct values *out)
{
	struct reader reader = { .at = line, .out = out };

	out->count = 0;
	skip_blanks(&reader);
	if (*reader.at++ != '[')
		return false;
	skip_blanks(&reader);
	while (*reader.at != ']') {
		if (out->count > 0) {
			if (*reader.at++ != ',')
				return false;
			skip_blanks(&reader);
		}
		if (!read_value(&reader))
			return false;
		skip_blanks(&reader);
	}
	reader.at++;
	skip_blanks(&reader);
	return *reader.at == '\0';
}
