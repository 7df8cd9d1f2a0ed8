#include "kitchen/exchange/tables.h"

#include <string.h>

#include "kitchen/board/board_private.h"
#include "kitchen/board/verbs.h"
#include "log/journal/acts.h"

struct worded {
	struct kitchen *kitchen;
	const struct log_table *table;
	bool (*row)(void *state, const struct log_cell *cells, struct fault *fault);
	void *state;
};

/* The log knows which entry; what it says is the kitchen's. */
static bool put_sentence(const struct kitchen *kitchen, struct log_cell *cell, char *words, size_t size,
                         struct fault *fault)
{
	struct log_entry entry;

	if (!log_entry_get(kitchen->log, cell->number, &entry, fault))
		return false;
	entry_words(kitchen, &entry, words, size);
	cell->text = words;
	cell->length = strlen(words);
	return true;
}

static bool put_row(void *state, const struct log_cell *cells, struct fault *fault)
{
	const struct worded *worded = state;
	const struct log_column *columns[TABLE_COLUMNS_MAX];
	size_t count = log_table_out(worded->table, columns);
	struct log_cell worded_cells[TABLE_COLUMNS_MAX];
	char words[SENTENCE_MAX_BYTES];

	for (size_t i = 0; i < count; i++) {
		worded_cells[i] = cells[i];
		if (columns[i]->kind == CELL_SENTENCE &&
		    !put_sentence(worded->kitchen, &worded_cells[i], words, sizeof(words), fault))
			return false;
	}
	return worded->row(worded->state, worded_cells, fault);
}

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
	struct worded worded = { kitchen, table, row, state };

	return log_table_read(kitchen->log, table, put_row, &worded, fault);
}

bool tables_begin(struct kitchen *kitchen, struct fault *fault)
{
	return log_look_begin(kitchen->log, fault);
}

void tables_end(struct kitchen *kitchen)
{
	log_look_end(kitchen->log);
}
