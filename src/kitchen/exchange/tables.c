#include "kitchen/exchange/tables.h"

#include "kitchen/board/board_private.h"

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
