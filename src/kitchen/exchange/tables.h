/*
 * tables.h - everything in the log as plain tables, and the way back.
 *
 * The tables are those of log/query/tables.h, which this header hands on.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_TABLES_H
#define STILLROOM_KITCHEN_EXCHANGE_TABLES_H

#include "kitchen/board/board.h"
#include "log/query/tables.h"

/* As log_table_read. */
bool tables_read(struct kitchen *kitchen, const struct log_table *table,
                 bool (*row)(void *state, const struct log_cell *cells, struct fault *fault), void *state,
                 struct fault *fault);
/* All tables read between these two are of one instant. */
bool tables_begin(struct kitchen *kitchen, struct fault *fault);
void tables_end(struct kitchen *kitchen);

#endif
