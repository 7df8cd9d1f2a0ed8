/* row.c - a row of a table in the log and in its struct, column by column. */
#include <assert.h>
#include <string.h>

#include "log/query/query.h"

char *column_text(const struct log_column *column, void *row)
{
	return (char *)row + column->at;
}

int64_t column_get(const struct log_column *column, const void *row)
{
	const char *member = (const char *)row + column->at;
	int64_t number = 0;
	uint32_t bits = 0;
	int narrow = 0;
	bool flag = false;

	if (column->size == sizeof(flag)) {
		memcpy(&flag, member, sizeof(flag));
		return flag;
	}
	if (column->size == sizeof(number)) {
		memcpy(&number, member, sizeof(number));
		return number;
	}
	assert(column->size == sizeof(narrow));
	if (column->kind == CELL_BITS) {
		memcpy(&bits, member, sizeof(bits));
		return bits;
	}
	memcpy(&narrow, member, sizeof(narrow)); /* an int or an enum */
	return narrow;
}

void column_set(const struct log_column *column, void *row, int64_t value)
{
	char *member = (char *)row + column->at;
	uint32_t bits = (uint32_t)value;
	int narrow = (int)value;
	bool flag = value != 0;

	if (column->size == sizeof(flag)) {
		memcpy(member, &flag, sizeof(flag));
	} else if (column->size == sizeof(value)) {
		memcpy(member, &value, sizeof(value));
	} else if (column->kind == CELL_BITS) {
		memcpy(member, &bits, sizeof(bits));
	} else {
		assert(column->size == sizeof(narrow));
		memcpy(member, &narrow, sizeof(narrow));
	}
}

/* --- reading ------------------------------------------------------------------------------ */

static int64_t take_value(struct query *query, const struct log_column *column)
{
	if (column->lack != NEVER_LACKS && next_is_null(query)) {
		query->taken++;
		return column->none;
	}
	switch (column->kind) {
	case CELL_WORD: return take_index(query, column->words);
	case CELL_INSTANT: return take_wall(query);
	case CELL_AWAKE: return take_awake(query);
	case CELL_SENTENCE:
	case CELL_NUMBER: return column->size == sizeof(int) ? take_int(query) : take_integer(query);
	case CELL_BITS: return take_between(query, 0, UINT32_MAX);
	case CELL_FLAG: return take_between(query, 0, 1);
	case CELL_BYTES:
	case CELL_TEXT: break;
	}
	return take_integer(query);
}

void take_row(struct query *query, const struct log_table *table, void *row)
{
	memset(row, 0, table->row_size);
	for (size_t i = 0; i < table->column_count; i++) {
		const struct log_column *column = &table->columns[i];

		if (column->size == 0)
			continue;
		if (column->kind == CELL_TEXT)
			take_text(query, column_text(column, row), column->size);
		else
			column_set(column, row, take_value(query, column));
	}
}

static void read_row(struct query *query, void *into)
{
	take_row(query, query->table, into);
}

bool query_row(struct query *query, const struct log_table *table, void *into, const char *what, struct fault *fault)
{
	query->table = table;
	return query_get(query, read_row, into, what, fault);
}

bool query_rows(struct query *query, const struct log_table *table, void *rows, size_t *count, struct fault *fault)
{
	query->table = table;
	return query_list(query, read_row, table->row_size, rows, count, fault);
}

/* --- writing ------------------------------------------------------------------------------ */

static void bind_column(struct query *query, const struct log_column *column, const void *row)
{
	int64_t value;

	if (column->kind == CELL_TEXT) {
		bind_text(query, (const char *)row + column->at, column->size);
		return;
	}
	value = column_get(column, row);
	if (column->kind == CELL_WORD)
		bind_name(query, word_at(column->words, (int)value));
	else if (column->lack == MAY_BE_NULL)
		bind_unless(query, value, column->none);
	else
		bind_integer(query, value);
}

void bind_row(struct query *query, const struct log_table *table, const void *row)
{
	for (size_t i = 1; i < table->column_count; i++) /* 0: the key, bound last */
		if (table->columns[i].column != NULL && table->columns[i].size != 0)
			bind_column(query, &table->columns[i], row);
}
