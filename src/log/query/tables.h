/*
 * tables.h - everything the log holds as plain tables, to leave the program with.
 *
 * Each table is one statement and a list of columns with their meaning; an export
 * writes them as they come and knows no table by name.  Left out: changesets, boots
 * and suspend-proof readings of the journal and the phases, which mean nothing
 * elsewhere, and the tallies, which can be counted again.
 *
 * Rows come in a fixed order, so that the same log gives the same bytes.
 */
#ifndef STILLROOM_LOG_QUERY_TABLES_H
#define STILLROOM_LOG_QUERY_TABLES_H

#include "log/log.h"

enum cell_kind {
	CELL_TEXT,
	CELL_NUMBER,  /* whole, or the whole number of 10^-scale of the unit named */
	CELL_INSTANT, /* milliseconds since 1970, UTC */
	CELL_FLAG,    /* 0 or 1 */
};

struct log_column {
	const char *name; /* with its unit: "fruit_g" */
	enum cell_kind kind;
	int scale;     /* digits behind the decimal point, CELL_NUMBER only */
	bool may_lack; /* null, an empty cell: see words */
	const char *words;
};

#define TABLE_COLUMNS_MAX 24
struct log_table {
	const char *name;
	const char *words;
	bool single;  /* always exactly one row */
	bool checked; /* as CSV with one more column, `check`: engine/label/row_check.h over the others */
	const struct log_column *columns;
	size_t column_count;
	const char *sql;
};

extern const struct log_table log_tables[];
extern const size_t log_table_count;
const struct log_table *log_table_named(const char *name); /* NULL: none */

struct log_cell {
	bool null;
	int64_t number;   /* all kinds but text */
	const char *text; /* zero-terminated; may hold zeros and bytes that are not UTF-8 */
	size_t length;
};

/* Hand the rows of a table to `row`, one after the other; cells live until it
 * returns.  Stops, and answers false with the fault of `row`, when that is false. */
bool log_table_read(struct log *log, const struct log_table *table,
                    bool (*row)(void *state, const struct log_cell *cells, struct fault *fault), void *state,
                    struct fault *fault);

/* All reads between these two see the log as it was at the first of them, whatever
 * another terminal writes meanwhile.  Not inside an act, and no act inside. */
bool log_look_begin(struct log *log, struct fault *fault);
void log_look_end(struct log *log);

/* When the journal began, ms UTC: it is never changed, so this tells one log from
 * another for good.  0: nothing has been written yet. */
bool log_birth(struct log *log, int64_t *wall_ms, struct fault *fault);

#endif
