/*
 * csv.c - files read whole, and CSV records out of them.
 */
#include "bake/bake.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

struct source source_read(const char *path)
{
	struct source source = { .path = path, .line = 1 };
	size_t room = 0;
	FILE *file = fopen(path, "rb");

	if (file == NULL)
		bake_die(path, 0, "cannot be read: %s", strerror(errno));
	do {
		room = room == 0 ? 65536 : room * 2;
		source.bytes = bake_room(source.bytes, room, 1);
		source.size += fread(source.bytes + source.size, 1, room - source.size, file);
	} while (source.size == room);
	if (ferror(file))
		bake_die(path, 0, "cannot be read: %s", strerror(errno));
	fclose(file);
	if (source.size == 0)
		bake_die(path, 1, "the file is empty");
	for (size_t i = 0, line = 1; i < source.size; i++) {
		if (source.bytes[i] == '\n')
			line++;
		if (source.bytes[i] == '\0')
			bake_die(path, (long)line, "a zero byte; is this a text file?");
	}
	return source;
}

/* The next byte without taking it; EOF at the end. */
static int peek(const struct source *source)
{
	return source->at < source->size ? (unsigned char)source->bytes[source->at] : EOF;
}

static int take(struct source *source)
{
	int byte = peek(source);

	if (byte != EOF)
		source->at++;
	if (byte == '\n')
		source->line++;
	return byte;
}

static void put(struct record *record, size_t *used, char byte)
{
	if (*used == RECORD_BYTES)
		bake_die(record->path, record->line, "the line is longer than %d bytes", RECORD_BYTES);
	record->bytes[(*used)++] = byte;
}

static void take_quoted(struct source *source, struct record *record, size_t *used)
{
	long opened = source->line;

	take(source);
	for (;;) {
		int byte = take(source);

		if (byte == EOF)
			bake_die(source->path, opened, "a quoted field is never closed");
		if (byte == '"' && peek(source) != '"')
			break;
		if (byte == '"')
			take(source);
		put(record, used, (char)byte);
	}
	if (peek(source) != ',' && peek(source) != '\r' && peek(source) != '\n' && peek(source) != EOF)
		bake_die(source->path, source->line, "text behind a closing quote");
}

static void take_bare(struct source *source, struct record *record, size_t *used)
{
	while (peek(source) != ',' && peek(source) != '\r' && peek(source) != '\n' && peek(source) != EOF) {
		if (peek(source) == '"')
			bake_die(source->path, source->line, "a quote inside a field that is not quoted");
		put(record, used, (char)take(source));
	}
}

/* Letters, signs and UTF-8 only, and no stray spaces around them. */
static void check_text(const struct record *record, const char *field)
{
	size_t length = strlen(field);

	for (const char *at = field; *at != '\0'; at++) {
		if ((unsigned char)*at < 0x20 || *at == 0x7f)
			bake_die(record->path, record->line, "a control character in a field");
	}
	if (length > 0 && (field[0] == ' ' || field[length - 1] == ' '))
		bake_die(record->path, record->line, "a space at the end of the field \"%s\"", field);
}

/* The next record; false at the end of the file. */
static bool record_read(struct source *source, struct record *record)
{
	size_t used = 0;
	int byte;

	if (peek(source) == EOF)
		return false;
	record->path = source->path;
	record->line = source->line;
	record->count = 0;
	do {
		if (record->count == FIELDS_MAX)
			bake_die(source->path, record->line, "more than %d fields", FIELDS_MAX);
		record->field[record->count++] = record->bytes + used;
		if (peek(source) == '"')
			take_quoted(source, record, &used);
		else
			take_bare(source, record, &used);
		put(record, &used, '\0');
		byte = take(source);
	} while (byte == ',');
	if (byte == '\r' && take(source) != '\n')
		bake_die(source->path, record->line, "a carriage return without a line feed");
	for (size_t i = 0; i < record->count; i++)
		check_text(record, record->field[i]);
	return true;
}

void header_read(struct source *source, const char *const *names, size_t count)
{
	(void)header_read_either(source, names, count, count);
}

size_t header_read_either(struct source *source, const char *const *names, size_t least, size_t most)
{
	struct record record = { .count = 0 };

	if (!record_read(source, &record) || (record.count != least && record.count != most))
		bake_die(source->path, 1, "the header has %zu columns instead of %zu", record.count, least);
	for (size_t i = 0; i < record.count; i++) {
		if (strcmp(record.field[i], names[i]) != 0)
			bake_die(source->path, 1, "column %zu is \"%s\" instead of \"%s\"", i + 1, record.field[i],
			         names[i]);
	}
	return record.count;
}

bool row_read(struct source *source, struct record *record, size_t count)
{
	if (!record_read(source, record))
		return false;
	if (record->count != count)
		bake_die(record->path, record->line, "%zu fields instead of %zu", record->count, count);
	return true;
}
