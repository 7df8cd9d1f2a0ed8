#include "kitchen/exchange/tables.h"

#include <string.h>

#include "kitchen/board/board_private.h"

const struct log_table *tables_at(size_t index)
{
	return index < log_table_count ? log_tables[index] : NULL;
}

size_t tables_count(void)
{
	return log_table_count;
}

const struct log_table *tables_named(const char *name)
{
	return log_table_named(name);
}

size_t tables_columns(const struct log_table *table, const struct log_column *out[TABLE_COLUMNS_MAX])
{
	return log_table_out(table, out);
}

const char *tables_word(const struct log_column *column, int index)
{
	const char *word = word_at(column->words, index);

	return strcmp(word, "?") == 0 ? NULL : word;
}

bool tables_read(struct kitchen *kitchen, const struct log_table *table,
                 bool (*row)(void *state, const struct log_cell *cells, struct fault *fault), void *state,
                 struct fault *fault)
{
	return log_table_read(kitchen->log, table, row, state, fault);
}

bool tables_begin(struct kitchen *kitchen, struct fault *fault)
{
	return log_look_begin(kitchen->log, fault);
}

void tables_end(struct kitchen *kitchen)
{
	log_look_end(kitchen->log);
}
