/*
 * tables.h - everything in the log as plain tables, and the way back.
 *
 * The tables are those of log/query/tables.h, which this header hands on.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_TABLES_H
#define STILLROOM_KITCHEN_EXCHANGE_TABLES_H

#include "kitchen/board/board.h"
#include "log/query/tables.h"

/* Each table in turn; NULL: there are no more. */
const struct log_table *tables_at(size_t index);
size_t tables_count(void);
const struct log_table *tables_named(const char *name); /* NULL: none */
/* The columns that leave the program, in their order; how many. */
size_t tables_columns(const struct log_table *table, const struct log_column *out[TABLE_COLUMNS_MAX]);
/* The words of a column in their order; NULL: no more. */
const char *tables_word(const struct log_column *column, int index);
/* As log_table_read; cells of CELL_SENTENCE are text here, one in a table at most. */
bool tables_read(struct kitchen *kitchen, const struct log_table *table,
                 bool (*row)(void *state, const struct log_cell *cells, struct fault *fault), void *state,
                 struct fault *fault);
/* All tables read between these two are of one instant. */
bool tables_begin(struct kitchen *kitchen, struct fault *fault);
void tables_end(struct kitchen *kitchen);

#endif
