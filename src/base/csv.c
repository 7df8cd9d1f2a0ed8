#include "base/csv.h"

#include <string.h>

#include "base/utf8.h"

static char csv_separator(const char *text, size_t length)
{
	static const char candidates[] = ",;\t";
	size_t line = 0;

	while (line < length && text[line] != '\n' && text[line] != '\r')
		line++;
	for (size_t i = 0; i + 1 < sizeof(candidates); i++)
		if (memchr(text, candidates[i], line) != NULL)
			return candidates[i];
	return ',';
}

struct csv_reader csv_begin(char *text, size_t length)
{
	size_t mark = length >= 3 && memcmp(text, "\xef\xbb\xbf", 3) == 0 ? 3 : 0;

	return (struct csv_reader){
		.at = text + mark,
		.end = text + length,
		.separator = csv_separator(text + mark, length - mark),
		.line = 1,
	};
}

/* Over a line end of any kind, if one is here. */
static bool pass_line_end(struct csv_reader *reader)
{
	if (reader->at == reader->end || (*reader->at != '\n' && *reader->at != '\r'))
		return false;
	if (*reader->at == '\r' && reader->at + 1 < reader->end && reader->at[1] == '\n')
		reader->at++;
	reader->at++;
	reader->line++;
	return true;
}

static enum csv_answer wrong(struct csv_reader *reader, struct fault *fault, const char *why)
{
	fault_set(fault, FAULT_MISUSE, "%s", why);
	while (reader->at < reader->end && !pass_line_end(reader))
		reader->at++;
	return CSV_WRONG;
}

static bool at_field_end(const struct csv_reader *reader)
{
	return reader->at == reader->end || *reader->at == reader->separator || *reader->at == '\n' ||
	       *reader->at == '\r';
}

/* The inside of a quoted field moves together over its doubled quotes.  NULL, or
 * what is wrong. */
static const char *take_quoted(struct csv_reader *reader, struct csv_field *field)
{
	char *to = ++reader->at;

	field->text = to;
	for (;;) {
		if (reader->at == reader->end)
			return "a quotation mark is not closed";
		if (*reader->at == '"') {
			if (reader->at + 1 == reader->end || reader->at[1] != '"')
				break;
			reader->at++;
		}
		if (*reader->at == '\n' ||
		    (*reader->at == '\r' && reader->at + 1 < reader->end && reader->at[1] != '\n'))
			reader->line++;
		*to++ = *reader->at++;
	}
	field->length = (size_t)(to - field->text);
	reader->at++;
	return at_field_end(reader) ? NULL
	                            : "after a closing quotation mark comes the next field or the end of the line";
}

static const char *take_bare(struct csv_reader *reader, struct csv_field *field)
{
	field->text = reader->at;
	while (!at_field_end(reader)) {
		if (*reader->at == '"')
			return "a quotation mark stands inside a field: write the field between quotation marks and "
			       "the mark in it twice";
		reader->at++;
	}
	field->length = (size_t)(reader->at - field->text);
	return NULL;
}

static const char *check_text(const struct csv_field *field)
{
	uint32_t character = 0;

	for (size_t at = 0; at < field->length;) {
		size_t length = utf8_next(field->text + at, field->length - at, &character);

		if (length == 0)
			return "there are bytes that are not UTF-8: save the file as UTF-8";
		if (character == 0)
			return "there is a zero byte; this is not a text file";
		at += length;
	}
	return NULL;
}

/* Fields up to the end of the record, which is passed.  NULL, or what is wrong. */
static const char *take_fields(struct csv_reader *reader, struct csv_field *fields, size_t max, size_t *count)
{
	for (;;) {
		bool quoted = reader->at < reader->end && *reader->at == '"';
		struct csv_field field;
		const char *why = quoted ? take_quoted(reader, &field) : take_bare(reader, &field);
		char *behind;

		if (why == NULL)
			why = check_text(&field);
		if (why == NULL && *count == max)
			why = "there are more fields than columns";
		if (why != NULL)
			return why;
		fields[(*count)++] = field;
		behind = field.text + field.length;
		if (reader->at < reader->end && *reader->at == reader->separator) {
			reader->at++;
			*behind = '\0';
			continue;
		}
		(void)pass_line_end(reader);
		*behind = '\0'; /* over the separator, the quote or the line end; at the end over the byte more */
		return NULL;
	}
}

enum csv_answer csv_next(struct csv_reader *reader, struct csv_field *fields, size_t max, size_t *count, long *line,
                         struct fault *fault)
{
	const char *why;

	*count = 0;
	while (pass_line_end(reader))
		continue;
	*line = reader->line;
	if (reader->at == reader->end)
		return CSV_END;
	why = take_fields(reader, fields, max, count);
	return why == NULL ? CSV_RECORD : wrong(reader, fault, why);
}

/* --- formulas ------------------------------------------------------------------------ */

/* Does a formula begin behind the apostrophes? */
static bool formula_behind(const char *text, size_t length, size_t apostrophes)
{
	return apostrophes < length && text[apostrophes] != '\0' && strchr("=+-@\t\r\n", text[apostrophes]) != NULL;
}

static size_t apostrophes(const char *text, size_t length)
{
	size_t count = 0;

	while (count < length && text[count] == '\'')
		count++;
	return count;
}

bool csv_wants_guard(const char *text, size_t length)
{
	return formula_behind(text, length, apostrophes(text, length));
}

size_t csv_guard_length(const char *text, size_t length)
{
	size_t count = apostrophes(text, length);

	return count > 0 && formula_behind(text, length, count) ? 1 : 0;
}
