/*
 * export_json.c - every table in one JSON document, and what that looks like.
 */
#include "base/text.h"
#include "kitchen/board/clock.h"
#include "kitchen/exchange/tables.h"
#include "kitchen/file/open_day.h"
#include "report/exchange/export.h"
#include "report/out/json.h"
#include "report/out/log_document.h"
#include <string.h>

struct json_table {
	struct json *json;
	const struct log_table *table;
	const struct log_column *columns[TABLE_COLUMNS_MAX];
	size_t column_count;
};

static void put_cell(struct json *json, const struct log_column *column, const struct log_cell *cell)
{
	char words[32];

	if (cell->null) {
		json_null(json, column->name);
		return;
	}
	switch (column->kind) {
	case CELL_TEXT:
	case CELL_WORD:
	case CELL_SENTENCE: json_text(json, column->name, cell->text); break;
	case CELL_AWAKE:
	case CELL_BITS:
	case CELL_BYTES:
	case CELL_NUMBER: json_decimal(json, column->name, cell->number, column->scale); break;
	case CELL_FLAG: json_bool(json, column->name, cell->number != 0); break;
	case CELL_INSTANT:
		clock_words_utc(cell->number, words, sizeof(words));
		json_text(json, column->name, words);
		break;
	}
}

static bool put_row(void *state, const struct log_cell *cells, struct fault *fault)
{
	const struct json_table *to = state;

	(void)fault;
	json_open_object(to->json, to->table->single ? to->table->name : NULL,
	                 to->table->single ? JSON_LINES : JSON_FLAT);
	for (size_t i = 0; i < to->column_count; i++)
		put_cell(to->json, to->columns[i], &cells[i]);
	json_close(to->json);
	return true;
}

static bool put_table(struct json *json, struct day *day, const struct log_table *table, struct fault *fault)
{
	struct json_table to = { .json = json, .table = table };
	bool done;

	to.column_count = tables_columns(table, to.columns);
	if (!table->single)
		json_open_array(json, table->name, JSON_LINES);
	done = tables_read(day_kitchen(day), table, put_row, &to, fault);
	if (!table->single)
		json_close(json);
	return done;
}

bool export_json(FILE *out, struct day *day, struct fault *fault)
{
	struct moment now = kitchen_now(day_kitchen(day));
	struct json json = json_begin(out);
	bool done = true;

	json_open_object(&json, NULL, JSON_LINES);
	json_text(&json, "document", "stillroom export");
	json_whole(&json, "version", EXPORT_VERSION);
	log_document_head(&json, day_kitchen(day), &now);
	for (size_t i = 0; done && i < tables_count(); i++)
		done = put_table(&json, day, tables_at(i), fault);
	json_close(&json);
	return done;
}

/* --- the schema ------------------------------------------------------------------------ */

static const char *type_of(const struct log_column *column)
{
	switch (column->kind) {
	case CELL_AWAKE:
	case CELL_BITS:
	case CELL_BYTES:
	case CELL_NUMBER: return column->scale == 0 ? "integer" : "number";
	case CELL_FLAG: return "boolean";
	case CELL_TEXT:
	case CELL_WORD:
	case CELL_SENTENCE:
	case CELL_INSTANT: break;
	}
	return "string";
}

static void put_type(struct json *json, const char *type, bool may_lack)
{
	if (!may_lack) {
		json_text(json, "type", type);
		return;
	}
	json_open_array(json, "type", JSON_FLAT);
	json_text(json, NULL, type);
	json_text(json, NULL, "null");
	json_close(json);
}

/* With the words of an enum for "{}". */
static void put_meaning(struct json *json, const struct log_column *column)
{
	const char *braces = strstr(column->meaning, "{}");
	char buffer[400];
	struct text text = TEXT_OVER(buffer);
	const char *comma = "";
	const char *word;

	if (braces == NULL) {
		json_text(json, "description", column->meaning);
		return;
	}
	text_add(&text, "%.*s", (int)(braces - column->meaning), column->meaning);
	for (int i = 0; (word = tables_word(column, i)) != NULL; i++) {
		if (word[0] == '\0')
			continue;
		text_add(&text, "%s%s", comma, word);
		comma = ", ";
	}
	text_add(&text, "%s", braces + strlen("{}"));
	json_text(json, "description", buffer);
}

static void put_column(struct json *json, const struct log_column *column)
{
	json_open_object(json, column->name, JSON_FLAT);
	put_type(json, type_of(column), column->lack != NEVER_LACKS);
	if (column->kind == CELL_INSTANT)
		json_text(json, "format", "date-time");
	if (column->meaning[0] != '\0')
		put_meaning(json, column);
	json_close(json);
}

static void put_row_schema(struct json *json, const struct log_table *table)
{
	const struct log_column *columns[TABLE_COLUMNS_MAX];
	size_t count = tables_columns(table, columns);

	json_text(json, "type", "object");
	json_open_array(json, "required", JSON_FLAT);
	for (size_t i = 0; i < count; i++)
		json_text(json, NULL, columns[i]->name);
	json_close(json);
	json_open_object(json, "properties", JSON_LINES);
	for (size_t i = 0; i < count; i++)
		put_column(json, columns[i]);
	json_close(json);
}

static void put_table_schema(struct json *json, const struct log_table *table)
{
	json_open_object(json, table->name, JSON_LINES);
	json_text(json, "description", table->meaning);
	if (table->single) {
		put_row_schema(json, table);
	} else {
		json_text(json, "type", "array");
		json_open_object(json, "items", JSON_LINES);
		put_row_schema(json, table);
		json_close(json);
	}
	json_close(json);
}

static void put_head_schema(struct json *json)
{
	static const struct log_column head[] = {
		{ .name = "now",
		  .kind = CELL_INSTANT,
		  .meaning = "by the clock of the log; a practice log has a fast one" },
		{ .name = "practice_speed", .kind = CELL_NUMBER, .meaning = "0 in a real log" },
		{ .name = "invented", .kind = CELL_FLAG, .meaning = "true: the data are made up" },
	};

	json_open_object(json, "document", JSON_FLAT);
	json_text(json, "const", "stillroom export");
	json_close(json);
	json_open_object(json, "version", JSON_FLAT);
	json_whole(json, "const", EXPORT_VERSION);
	json_close(json);
	for (size_t i = 0; i < sizeof(head) / sizeof(head[0]); i++)
		put_column(json, &head[i]);
}

void export_schema(FILE *out)
{
	static const char *const head[] = { "document", "version", "now", "practice_speed", "invented" };
	struct json json = json_begin(out);

	json_open_object(&json, NULL, JSON_LINES);
	json_text(&json, "$schema", "https://json-schema.org/draft/2020-12/schema");
	json_text(&json, "title", "stillroom export");
	json_text(&json, "description",
	          "What \"stillroom export json\" writes; the columns of \"stillroom export csv\" are the same. "
	          "New keys may come: readers skip what they do not know.");
	json_text(&json, "type", "object");
	json_open_array(&json, "required", JSON_FLAT);
	for (size_t i = 0; i < sizeof(head) / sizeof(head[0]); i++)
		json_text(&json, NULL, head[i]);
	for (size_t i = 0; i < tables_count(); i++)
		json_text(&json, NULL, tables_at(i)->name);
	json_close(&json);
	json_open_object(&json, "properties", JSON_LINES);
	put_head_schema(&json);
	for (size_t i = 0; i < tables_count(); i++)
		put_table_schema(&json, tables_at(i));
	json_close(&json);
	json_close(&json);
}
