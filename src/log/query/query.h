/*
 * query.h - running one of the prepared statements: bind, step, read, reset.
 *
 * Start a query, bind its parameters in their order, then run it; running
 * always resets the statement, so that no read lock is left behind. Binding
 * errors are kept and reported by the run. Columns are taken in their order.
 */
#ifndef STILLROOM_LOG_QUERY_QUERY_H
#define STILLROOM_LOG_QUERY_QUERY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/text.h"
#include "log/disk/log_private.h"
#include "log/query/tables.h"

struct query {
	struct log *log;
	sqlite3_stmt *statement;
	int bound;                     /* parameters bound so far */
	int taken;                     /* columns of this row taken so far */
	int rc;                        /* first error of binding */
	bool unreadable;               /* a column held what no version of ours writes */
	const struct log_table *table; /* for query_row and query_rows */
};

/* Reads the present row into `into`. */
typedef void row_reader(struct query *query, void *into);

struct query query_start(struct log *log, enum statement which);

void bind_integer(struct query *query, int64_t value);
void bind_unless(struct query *query, int64_t value, int64_t null_value); /* null when equal */
void bind_text(struct query *query, const char *text, size_t size);       /* size of its buffer */
void bind_name(struct query *query, const char *name);                    /* a constant word; "" and "?" are null */
void bind_bytes(struct query *query, const void *bytes, int size);        /* empty blob when size is 0 */

#define BIND_TEXT(query, array) bind_text((query), (array), sizeof(array))

bool next_is_null(const struct query *query); /* the column that is taken next */
int64_t take_integer(struct query *query);    /* null: 0 */
/* Instants: a year from 1000 to 9999, null: 0. And time since a boot, of at most as long.
 * Anything else is damage: no clock says so, and sums would overflow. */
int64_t take_wall(struct query *query);
int64_t take_awake(struct query *query);
int64_t take_between(struct query *query, int64_t least, int64_t most); /* else damage */
int take_int(struct query *query);
bool take_flag(struct query *query);
void take_text(struct query *query, char *buffer, size_t size);     /* cut at a UTF-8 boundary */
int take_word(struct query *query, const struct enum_words *words); /* null: 0 */
/* As take_word, but null and "" are none of the enum, too: the row is unreadable. */
int take_index(struct query *query, const struct enum_words *words);
const char *take_name(struct query *query); /* valid until the row is left; null: "" */

#define TAKE_TEXT(query, array) take_text((query), (array), sizeof(array))

/* A row as the descriptor of its table has it (row.c): read from the columns of
 * {table}, bound for {insert table} and {update table} but what is worked out by hand. */
void take_row(struct query *query, const struct log_table *table, void *row);
void bind_row(struct query *query, const struct log_table *table, const void *row);

/* What stands for a column in the list of a SELECT (statement_text.c). */
void column_selected(struct text *sql, const struct log_table *table, const struct log_column *column);

/* A statement that answers nothing. */
bool query_run(struct query *query, struct fault *fault);

/* At most one row; *found tells whether there was one. */
bool query_one(struct query *query, row_reader *read, void *into, bool *found, struct fault *fault);

/* As query_one, but a missing row is FAULT_MISSING: "the log has no <what>". */
bool query_get(struct query *query, row_reader *read, void *into, const char *what, struct fault *fault);

/* Every row, as a malloc'ed array of rows of `size` bytes, NULL when none; `rows` is the
 * address of a pointer to such a row. */
bool query_list(struct query *query, row_reader *read, size_t size, void *rows, size_t *count, struct fault *fault);

/* The same for rows of one table, whose columns are all that is selected. */
bool query_row(struct query *query, const struct log_table *table, void *into, const char *what, struct fault *fault);
bool query_rows(struct query *query, const struct log_table *table, void *rows, size_t *count, struct fault *fault);

/* The integer of the only row. */
bool query_integer(struct query *query, int64_t *out, struct fault *fault);

/* --- log_put.c: the end of every log_put_... --- */

/* Bind the id, the last parameter of *_INSERT and *_UPDATE, and run. `fresh` is
 * the id of a new row; 0 lets SQLite choose. `what` as for a missing row. */
bool put_row(struct query *query, int64_t *id, int64_t fresh, const char *what, struct fault *fault);

/* Run an *_UPDATE or *_DELETE whose every parameter is bound; a row must answer to it. */
bool put_change(struct query *query, const char *what, struct fault *fault);

/* What all kinds of work have in common. */
struct work_row {
	enum subject_kind kind;
	int64_t station_id;
	int64_t opened_wall_ms;
	bool at_station;
	const char *note; /* at most SENTENCE_MAX_BYTES of it */
};

/* First of all that is put of a work: what it has in common with others.  *id 0: a new one, whose
 * number is filled in.  `number`: the one wished for, given if it is above every number ever
 * given; 0: none. */
bool put_work(struct log *log, const struct work_row *row, int64_t *id, int64_t number, struct fault *fault);

/* An id that neither the table nor the journal has told of. */
bool put_fresh_id(struct log *log, enum statement which, int64_t *id, struct fault *fault);

/* False, always: after a failed write the act may only be abandoned; see log_commit. */
bool put_spoilt(struct log *log);

#endif
