/*
 * export_csv.c - a table of the log as comma-separated values.
 */
#include <string.h>

#include "base/csv.h"
#include "base/utf8.h"
#include "engine/label/row_check.h"
#include "kitchen/board/clock.h"
#include "kitchen/exchange/tables.h"
#include "kitchen/file/open_day.h"
#include "report/exchange/export.h"
#include "report/out/json.h"

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

struct csv_table {
	FILE *out;
	const struct log_table *table;
	const struct log_column *columns[TABLE_COLUMNS_MAX];
	size_t column_count;
	uint64_t check; /* of the row so far, as an import reads it: without quotes and guards */
};

static void put_bytes(struct csv_table *csv, const char *bytes, size_t length)
{
	(void)fwrite(bytes, 1, length, csv->out);
	csv->check = row_check_bytes(csv->check, bytes, length);
}

static void put_text(struct csv_table *csv, const char *text, size_t length)
{
	bool quoted = wants_quotes(text, length);

	if (quoted)
		(void)fputc('"', csv->out);
	if (csv_wants_guard(text, length))
		(void)fputc('\'', csv->out);
	for (size_t at = 0; at < length;) {
		uint32_t character = 0;
		size_t bytes = utf8_next(text + at, length - at, &character);

		if (bytes == 0 || !stays(character))
			put_bytes(csv, "?", 1);
		else
			put_bytes(csv, text + at, bytes);
		if (character == '"' && bytes == 1)
			(void)fputc('"', csv->out);
		at += bytes == 0 ? 1 : bytes;
	}
	if (quoted)
		(void)fputc('"', csv->out);
}

static void put_cell(struct csv_table *csv, const struct log_column *column, const struct log_cell *cell)
{
	char words[DECIMAL_BYTES];

	if (cell->null)
		return;
	switch (column->kind) {
	case CELL_TEXT:
	case CELL_WORD:
	case CELL_SENTENCE: put_text(csv, cell->text, cell->length); return;
	case CELL_AWAKE:
	case CELL_BITS:
	case CELL_BYTES:
	case CELL_NUMBER: decimal_words(cell->number, column->scale, words, sizeof(words)); break;
	case CELL_INSTANT: clock_words_utc(cell->number, words, sizeof(words)); break;
	case CELL_FLAG: (void)snprintf(words, sizeof(words), "%s", cell->number != 0 ? "yes" : "no"); break;
	}
	put_bytes(csv, words, strlen(words));
}

static bool put_row(void *state, const struct log_cell *cells, struct fault *fault)
{
	struct csv_table *csv = state;
	char check[ROW_CHECK_WORDS];

	(void)fault;
	csv->check = ROW_CHECK_BEGIN;
	for (size_t i = 0; i < csv->column_count; i++) {
		if (i > 0)
			(void)fputc(',', csv->out);
		put_cell(csv, csv->columns[i], &cells[i]);
		csv->check = row_check_field(csv->check);
	}
	row_check_words(csv->check, check);
	if (csv->table->checked)
		(void)fprintf(csv->out, ",%s", check);
	(void)fputs("\r\n", csv->out);
	return true;
}

bool export_csv(FILE *out, struct day *day, const struct log_table *table, struct fault *fault)
{
	struct csv_table csv = { .out = out, .table = table };

	csv.column_count = tables_columns(table, csv.columns);
	for (size_t i = 0; i < csv.column_count; i++)
		(void)fprintf(out, "%s%s", i > 0 ? "," : "", csv.columns[i]->name);
	(void)fputs(table->checked ? ",check\r\n" : "\r\n", out);
	return tables_read(day_kitchen(day), table, put_row, &csv, fault);
}
