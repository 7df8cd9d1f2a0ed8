#include "support/csv.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char *whole_file(const char *name)
{
	const char *folder = getenv("SCHEMA");
	char path[1024];
	size_t used = 0;
	size_t room = 1 << 20;
	char *text = malloc(room);
	FILE *file;

	snprintf(path, sizeof(path), "%s/%s", folder == NULL ? "schema" : folder, name);
	file = fopen(path, "r");
	if (text == NULL || file == NULL) {
		ck_abort_msg("cannot read %s", path);
		abort();
	}
	used = fread(text, 1, room, file);
	ck_assert_msg(used > 0 && used < room, "%s is empty or too large", path);
	fclose(file);
	text[used] = '\0';
	return text;
}

static void add_cell(struct csv *csv, size_t *count, char *cell)
{
	char **grown;

	if ((*count & (*count - 1)) == 0) {
		grown = realloc(csv->cells, (*count == 0 ? 1 : *count * 2) * sizeof(csv->cells[0]));
		if (grown == NULL) {
			ck_abort_msg("no memory");
			abort();
		}
		csv->cells = grown;
	}
	csv->cells[(*count)++] = cell;
}

/* Cut one field out of the text in place; returns the byte that ended it. */
static char cut_field(char **at, char **field)
{
	char *to = *at;
	char *from = *at;
	char ended;
	int quoted = *from == '"';

	*field = to;
	if (quoted)
		from++;
	while (*from != '\0' && (quoted || (*from != ',' && *from != '\n'))) {
		if (quoted && *from == '"') {
			from++;
			if (*from != '"') {
				quoted = 0;
				continue;
			}
		}
		*to++ = *from++;
	}
	ended = *from;
	*at = from + (ended != '\0');
	*to = '\0';
	return ended;
}

struct csv csv_read(const char *name)
{
	struct csv csv = { .text = whole_file(name) };
	char *at = csv.text;
	size_t count = 0;

	while (*at != '\0') {
		char *field;
		char ended = cut_field(&at, &field);

		add_cell(&csv, &count, field);
		if (ended != ',' && csv.columns == 0)
			csv.columns = count;
		if (ended != ',')
			ck_assert_msg(count % csv.columns == 0, "%s: a row of another width", name);
	}
	ck_assert_uint_gt(csv.columns, 0);
	csv.rows = count / csv.columns - 1;
	return csv;
}

void csv_free(struct csv *csv)
{
	free(csv->cells);
	free(csv->text);
	*csv = (struct csv){ 0 };
}

const char *csv_at(const struct csv *csv, size_t row, const char *column)
{
	for (size_t i = 0; i < csv->columns; i++) {
		if (strcmp(csv->cells[i], column) == 0)
			return csv->cells[(row + 1) * csv->columns + i];
	}
	ck_abort_msg("no column %s", column);
	abort();
}

int csv_number(const struct csv *csv, size_t row, const char *column, int if_empty)
{
	const char *text = csv_at(csv, row, column);
	char *end;
	long number = strtol(text, &end, 10);

	if (*text == '\0')
		return if_empty;
	ck_assert_msg(*end == '\0', "%s is not a number: %s", column, text);
	return (int)number;
}
