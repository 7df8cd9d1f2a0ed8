/*
 * export_csv.c - a table of the log as comma-separated values.
 */
#include <string.h>

#include "engine/csv.h"
#include "engine/utf8.h"
#include "kitchen/clock.h"
#include "report/export.h"
#include "report/json.h"

static bool stays(uint32_t character)
{
	return !utf8_is_control(character) || character == '\t' || character == '\n' || character == '\r';
}

static bool wants_quotes(const char *text, size_t length)
{
	for (size_t i = 0; i < length; i++)
		if (text[i] != '\0' && strchr(",\"\r\n", text[i]) != NULL)
			return true;
	return false;
}

static void put_text(FILE *out, const char *text, size_t length)
{
	bool quoted = wants_quotes(text, length);

	if (quoted)
		(void)fputc('"', out);
	if (csv_wants_guard(text, length))
		(void)fputc('\'', out);
	for (size_t at = 0; at < length;) {
		uint32_t character = 0;
		size_t bytes = utf8_next(text + at, length - at, &character);

		if (bytes == 0 || !stays(character))
			(void)fputc('?', out);
		else
			(void)fwrite(text + at, 1, bytes, out);
		if (character == '"' && bytes == 1)
			(void)fputc('"', out);
		at += bytes == 0 ? 1 : bytes;
	}
	if (quoted)
		(void)fputc('"', out);
}

static void put_cell(FILE *out, const struct log_column *column, const struct log_cell *cell)
{
	char words[DECIMAL_BYTES];

	if (cell->null)
		return;
	switch (column->kind) {
	case CELL_TEXT: put_text(out, cell->text, cell->length); return;
	case CELL_NUMBER: decimal_words(cell->number, column->scale, words, sizeof(words)); break;
	case CELL_INSTANT: clock_words_utc(cell->number, words, sizeof(words)); break;
	case CELL_FLAG: (void)snprintf(words, sizeof(words), "%s", cell->number != 0 ? "yes" : "no"); break;
	}
	(void)fputs(words, out);
}

struct csv_table {
	FILE *out;
	const struct log_table *table;
};

static bool put_row(void *state, const struct log_cell *cells, struct fault *fault)
{
	const struct csv_table *csv = state;

	(void)fault;
	for (size_t i = 0; i < csv->table->column_count; i++) {
		if (i > 0)
			(void)fputc(',', csv->out);
		put_cell(csv->out, &csv->table->columns[i], &cells[i]);
	}
	(void)fputs("\r\n", csv->out);
	return true;
}

bool export_csv(FILE *out, struct day *day, const struct log_table *table, struct fault *fault)
{
	struct csv_table csv = { out, table };

	for (size_t i = 0; i < table->column_count; i++)
		(void)fprintf(out, "%s%s", i > 0 ? "," : "", table->columns[i].name);
	(void)fputs("\r\n", out);
	return tables_read(day_kitchen(day), table, put_row, &csv, fault);
}
