/* log_tables.c - reading the tables of tables.h, whatever they are. */
#include <assert.h>
#include <string.h>

#include "base/text.h"
#include "log/disk/log_private.h"
#include "log/query/query.h"
#include "log/query/tables.h"

const struct log_table *log_table_named(const char *name)
{
	for (size_t i = 0; i < log_table_count; i++)
		if (strcmp(log_tables[i]->name, name) == 0)
			return log_tables[i];
	return NULL;
}

size_t log_table_out(const struct log_table *table, const struct log_column *out[TABLE_COLUMNS_MAX])
{
	size_t count = 0;
	assert(table->column_count <= TABLE_COLUMNS_MAX);
	for (size_t i = 0; i < table->column_count; i++)
		if (table->columns[i].name != NULL)
			out[count++] = &table->columns[i];
	return count;
}

/* SQLITE_OK, or SQLITE_NOMEM when a value could not be made into text. */
static int take_cell(sqlite3_stmt *statement, int at, enum cell_kind kind, struct log_cell *cell)
{
	cell->null = sqlite3_column_type(statement, at) == SQLITE_NULL;
	cell->number = 0;
	cell->text = "";
	cell->length = 0;
	if (cell->null)
		return SQLITE_OK;
	if (kind != CELL_TEXT && kind != CELL_WORD) {
		cell->number = sqlite3_column_int64(statement, at);
		return SQLITE_OK;
	}
	cell->text = (const char *)sqlite3_column_text(statement, at);
	if (cell->text == NULL)
		return SQLITE_NOMEM;
	cell->length = (size_t)sqlite3_column_bytes(statement, at);
	return SQLITE_OK;
}

static int take_cells(sqlite3_stmt *statement, const struct log_column *const *columns, size_t count,
                      struct log_cell *cells)
{
	int rc = SQLITE_OK;
	for (size_t i = 0; rc == SQLITE_OK && i < count; i++)
		rc = take_cell(statement, (int)i, columns[i]->kind, &cells[i]);
	return rc;
}

/* All rows of a table in their order; SQLITE_TOOBIG when the text does not fit. */
static int prepare(struct log *log, const struct log_table *table, const struct log_column *const *columns,
                   size_t count, sqlite3_stmt **statement)
{
	char buffer[STATEMENT_MAX_BYTES];
	struct text sql = TEXT_OVER(buffer);
	for (size_t i = 0; i < count; i++) {
		text_add(&sql, i == 0 ? "SELECT " : ", ");
		column_selected(&sql, table, columns[i]);
	}
	text_add(&sql, " FROM %s ORDER BY %s", table->from, table->order);
	return sql.cut ? SQLITE_TOOBIG : sqlite3_prepare_v2(log->db, buffer, -1, statement, NULL);
}

bool log_table_read(struct log *log, const struct log_table *table,
                    bool (*row)(void *state, const struct log_cell *cells, struct fault *fault), void *state,
                    struct fault *fault)
{
	const struct log_column *columns[TABLE_COLUMNS_MAX];
	size_t count = log_table_out(table, columns);
	struct log_cell cells[TABLE_COLUMNS_MAX];
	sqlite3_stmt *statement = NULL;
	bool ok = true;
	int rc = prepare(log, table, columns, count, &statement);
	if (rc == SQLITE_OK && sqlite3_column_count(statement) != (int)count)
		rc = SQLITE_MISUSE;
	while (rc == SQLITE_OK && ok) {
		rc = sqlite3_step(statement);
		if (rc == SQLITE_ROW)
			rc = take_cells(statement, columns, count, cells);
		else
			break;
		if (rc == SQLITE_OK)
			ok = row(state, cells, fault);
	}
	if (ok && rc != SQLITE_DONE)
		ok = log_fault(log, rc, fault);
	(void)sqlite3_finalize(statement);
	return ok;
}

bool log_look_begin(struct log *log, struct fault *fault)
{
	int rc = sqlite3_exec(log->db, "BEGIN", NULL, NULL, NULL);
	log->looking = rc == SQLITE_OK;
	return log->looking || log_fault(log, rc, fault);
}

void log_look_end(struct log *log)
{
	if (log->looking) {
		struct query rollback = query_start(log, ROLLBACK_ACT); /* nothing was written */
		(void)query_run(&rollback, NULL);
	}
	log->looking = false;
}

bool log_birth(struct log *log, int64_t *wall_ms, struct fault *fault)
{
	int rc = connection_integer(log->db, "SELECT coalesce((SELECT wall_ms FROM journal ORDER BY id LIMIT 1), 0)",
	                            wall_ms);
	return rc == SQLITE_OK || log_fault(log, rc, fault);
}
