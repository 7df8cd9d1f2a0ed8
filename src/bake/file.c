/*
 * file.c - files read whole, records out of them, and the end at the first defect.
 */
#include "bake/bake.h"

#include <errno.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* All the files of one run; those of schema/ have 0.8 MB. */
static char files[4 << 20];
static size_t files_used;

void bake_die(const char *path, long line, const char *format, ...)
{
	va_list args;

	if (line > 0)
		fprintf(stderr, "%s:%ld: ", path, line);
	else
		fprintf(stderr, "%s: ", path);
	va_start(args, format);
	vfprintf(stderr, format, args);
	va_end(args);
	fputc('\n', stderr);
	exit(1);
}

/* What the reader of the engine would let pass; our tables have none of it. */
static void check_bytes(const struct source *source)
{
	long line = 1;

	for (size_t i = 0; i < source->size; i++) {
		if (source->text[i] == '\n')
			line++;
		if (source->text[i] == '\0')
			bake_die(source->path, line, "a zero byte; is this a text file?");
		if (source->text[i] == '\r' && source->text[i + 1] != '\n')
			bake_die(source->path, line, "a carriage return without a line feed");
	}
}

struct source source_read(const char *path)
{
	char *text = files + files_used;
	struct source source = { .path = path, .text = text };
	FILE *file = fopen(path, "rb");

	if (file == NULL)
		bake_die(path, 0, "cannot be read: %s", strerror(errno));
	source.size = fread(text, 1, sizeof(files) - files_used, file);
	if (ferror(file))
		bake_die(path, 0, "cannot be read: %s", strerror(errno));
	fclose(file);
	files_used += source.size + 1; /* the reader puts a zero behind the last field */
	if (files_used > sizeof(files))
		bake_die(path, 0, "all files together are longer than %zu bytes", sizeof(files));
	text[source.size] = '\0';
	if (source.size == 0)
		bake_die(path, 1, "the file is empty");
	check_bytes(&source);
	source.reader = csv_begin(text, source.size);
	source.reader.separator = ',';
	return source;
}

const char *kept_text(const char *text)
{
	size_t size = strlen(text) + 1;
	char *at = files + files_used;

	if (size > sizeof(files) - files_used)
		bake_die("bake", 0, "all texts together are longer than %zu bytes", sizeof(files));
	files_used += size;
	return memcpy(at, text, size);
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
	struct csv_field fields[FIELDS_MAX];
	struct fault fault;
	long line = source->reader.line;
	enum csv_answer answer = csv_next(&source->reader, fields, FIELDS_MAX, &record->count, &record->line, &fault);

	record->path = source->path;
	if (record->line != line)
		bake_die(source->path, line, "an empty line");
	if (answer == CSV_WRONG)
		bake_die(source->path, record->line, "%s", fault.sentence);
	for (size_t i = 0; i < record->count; i++) {
		record->field[i] = fields[i].text;
		check_text(record, record->field[i]);
	}
	return answer == CSV_RECORD;
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

size_t next_row(const struct record *record, size_t *count, size_t most)
{
	if (*count == most)
		bake_die(record->path, record->line, "more than %zu rows", most);
	return (*count)++;
}
