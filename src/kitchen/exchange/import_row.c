/*
 * import_row.c - a line of our own export, read back into the struct of its row: the
 * descriptor of its table says what stands in which column.
 */
#include <assert.h>
#include <string.h>

#include "engine/label/row_check.h"
#include "kitchen/exchange/import_private.h"
#include "kitchen/exchange/tables.h"

/* Of a name that the table has. */
static size_t column_named(const struct import_file *file, const char *name)
{
	size_t column = 0;

	while (column + 1 < file->column_count && strcmp(file->columns[column].name, name) != 0)
		column++;
	assert(strcmp(file->columns[column].name, name) == 0);
	return column;
}

const char *import_named(const struct import_file *file, const char *name)
{
	return import_field(file, column_named(file, name));
}

/* --- one value -------------------------------------------------------------------------- */

static bool read_word(const struct import_file *file, struct import_draft *draft, size_t at,
                      const struct log_column *column, int64_t *value)
{
	const char *text = import_field(file, at);
	const char *word;

	*value = column->none;
	if (text[0] == '\0' && column->lack != NEVER_LACKS)
		return true;
	for (int i = 0; (word = tables_word(column, i)) != NULL; i++) {
		*value = i;
		if (strcmp(word, text) == 0)
			return true;
	}
	return draft_problem(draft, file->line, "%s: \"%.40s\" is not a word an export uses", column->name, text);
}

static bool read_instant(const struct import_file *file, struct import_draft *draft, size_t at,
                         const struct log_column *column, int64_t *wall_ms)
{
	const char *text = import_field(file, at);

	*wall_ms = column->none;
	if (text[0] == '\0' && column->lack != NEVER_LACKS)
		return true;
	return clock_read_utc(text, wall_ms) ||
	       draft_problem(draft, file->line, "%s: \"%.40s\" is not a time like 2026-09-14T12:05:33.412Z",
	                     column->name, text);
}

static bool read_number(const struct import_file *file, struct import_draft *draft, size_t at,
                        const struct log_column *column, int64_t *value)
{
	if (column->scale == 0)
		return import_whole(file, draft, at, column->least, column->most, column->none, value);
	if (!import_decimal(file, draft, at, column->scale, column->none, value))
		return false;
	return *value == column->none || (*value >= column->least && *value <= column->most) ||
	       draft_problem(draft, file->line, "%s: \"%.40s\" is out of range", column->name, import_field(file, at));
}

static bool read_flag(const struct import_file *file, struct import_draft *draft, size_t at, int64_t *value)
{
	const char *text = import_field(file, at);

	*value = strcmp(text, "yes") == 0;
	return *value != 0 || strcmp(text, "no") == 0 ||
	       draft_problem(draft, file->line, "%s: \"%.40s\" is neither yes nor no", file->described[at]->name, text);
}

static bool read_column(const struct import_file *file, struct import_draft *draft, size_t at, void *row)
{
	const struct log_column *column = file->described[at];
	int64_t value;
	bool done;

	if (column->kind == CELL_TEXT)
		return import_text(file, draft, at, column_text(column, row), column->size, true);
	if (column->kind == CELL_WORD) {
		done = read_word(file, draft, at, column, &value);
	} else if (column->kind == CELL_INSTANT) {
		done = read_instant(file, draft, at, column, &value);
	} else if (column->kind == CELL_FLAG) {
		done = read_flag(file, draft, at, &value);
	} else {
		assert(column->kind == CELL_NUMBER); /* no table that comes in has others */
		done = read_number(file, draft, at, column, &value);
	}
	if (done)
		column_set(column, row, value);
	return done;
}

bool import_word(const struct import_file *file, struct import_draft *draft, const char *name, int *word)
{
	size_t at = column_named(file, name);
	int64_t value;
	bool done = read_word(file, draft, at, file->described[at], &value);

	*word = (int)value;
	return done;
}

bool import_name(const struct import_file *file, struct import_draft *draft, const char *name, char *buffer,
                 size_t size)
{
	return import_text(file, draft, column_named(file, name), buffer, size, true);
}

bool import_number(const struct import_file *file, struct import_draft *draft, const char *name, int64_t *out)
{
	size_t at = column_named(file, name);

	return read_number(file, draft, at, file->described[at], out);
}

/* --- a line ------------------------------------------------------------------------------- */

/* Is the row still as the export wrote it? */
static bool is_unchanged(const struct import_file *file, struct import_draft *draft)
{
	size_t last = file->column_count - 1; /* the check */
	uint64_t check = ROW_CHECK_BEGIN;
	char words[ROW_CHECK_WORDS];

	for (size_t i = 0; i < last; i++) {
		const char *text = import_field(file, i);

		check = row_check_field(row_check_bytes(check, text, strlen(text)));
	}
	row_check_words(check, words);
	return strcmp(words, import_field(file, last)) == 0 ||
	       draft_problem(draft, file->line,
	                     "this line was changed after the export. Use the files as exported, and make the "
	                     "correction on the board");
}

bool import_row(const struct import_file *file, struct import_draft *draft, void *row)
{
	memset(row, 0, file->table->row_size);
	if (!is_unchanged(file, draft))
		return false;
	for (size_t i = 0; i < file->described_count; i++)
		if (file->described[i]->size != 0 && !read_column(file, draft, i, row))
			return false;
	return true;
}

bool import_table(struct import_draft *draft, const char *folder, const char *name, const struct log_table *table,
                  import_adder *add, struct fault *fault)
{
	const struct log_column *columns[TABLE_COLUMNS_MAX];
	struct import_column needed[COLUMNS_MAX];
	size_t count = log_table_out(table, columns);
	struct import_file file;
	bool done = true;

	assert(count < COLUMNS_MAX);
	for (size_t i = 0; i < count; i++)
		needed[i] = (struct import_column){ .name = columns[i]->name, .needed = true };
	needed[count] = (struct import_column){ .name = "check", .needed = true };
	if (!import_open(&file, folder, name, needed, count + 1, fault))
		return false;
	file.table = table;
	file.described = columns;
	file.described_count = count;
	draft->file = name;
	while (done && import_next(&file, draft))
		done = add(&file, draft, fault);
	import_close(&file);
	return done;
}
