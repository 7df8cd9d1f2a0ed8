/*
 * query.h - running one of the prepared statements: bind, step, read, reset.
 *
 * Start a query, bind its parameters in their order, then run it; running
 * always resets the statement, so that no read lock is left behind. Binding
 * errors are kept and reported by the run. Columns are taken in their order.
 */
#ifndef STILLROOM_LOG_QUERY_H
#define STILLROOM_LOG_QUERY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "log/log_private.h"

struct query {
	struct log *log;
	sqlite3_stmt *statement;
	int bound;       /* parameters bound so far */
	int taken;       /* columns of this row taken so far */
	int rc;          /* first error of binding */
	bool unreadable; /* a column held what no version of ours writes */
};

/* Reads the present row into `into`. */
typedef void row_reader(struct query *query, void *into);

struct query query_start(struct log *log, enum statement which);

void bind_integer(struct query *query, int64_t value);
void bind_unless(struct query *query, int64_t value, int64_t null_value); /* null when equal */
void bind_text(struct query *query, const char *text, size_t size); /* size of its buffer */
void bind_name(struct query *query, const char *name); /* a constant word; "" and "?" are null */
void bind_bytes(struct query *query, const void *bytes, int size); /* empty blob when size is 0 */

#define BIND_TEXT(query, array) bind_text((query), (array), sizeof(array))

int64_t take_integer(struct query *query); /* null: 0 */
int64_t take_or(struct query *query, int64_t null_value);
int take_int(struct query *query);
bool take_flag(struct query *query);
void take_text(struct query *query, char *buffer, size_t size); /* cut at a UTF-8 boundary */
int take_word(struct query *query, const struct words *words); /* null: 0 */
const char *take_name(struct query *query); /* valid until the row is left; null: "" */

#define TAKE_TEXT(query, array) take_text((query), (array), sizeof(array))

/* A statement that answers nothing. */
bool query_run(struct query *query, struct fault *fault);

/* At most one row; *found tells whether there was one. */
bool query_one(struct query *query, row_reader *read, void *into, bool *found, struct fault *fault);

/* As query_one, but a missing row is FAULT_MISSING: "the log has no <what>". */
bool query_get(struct query *query, row_reader *read, void *into, const char *what,
               struct fault *fault);

/* Every row, as a malloc'ed array of rows of `size` bytes; NULL when none. */
bool query_list(struct query *query, row_reader *read, size_t size, void **rows, size_t *count,
                struct fault *fault);

/* The integer of the only row. */
bool query_integer(struct query *query, int64_t *out, struct fault *fault);

#endif
