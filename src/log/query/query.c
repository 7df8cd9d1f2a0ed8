/* query.c - see query.h. The only place that steps a statement of the list. */
#include <errno.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "log/query/query.h"

#define WALL_LEAST_MS INT64_C(-30610224000000) /* 1000-01-01, as early as a notebook may be */
#define WALL_MOST_MS INT64_C(253402300799999)  /* 9999-12-31 */

int log_prepare(struct log *log, enum statement which)
{
	if (log->statements[which] != NULL)
		return SQLITE_OK;
	char sql[STATEMENT_MAX_BYTES];
	if (!statement_write(log, which, sql, sizeof(sql)))
		return SQLITE_INTERNAL;
	return sqlite3_prepare_v3(log->db, sql, -1, SQLITE_PREPARE_PERSISTENT, &log->statements[which], NULL);
}

struct query query_start(struct log *log, enum statement which)
{
	struct query query = { .log = log, .rc = log_prepare(log, which) };
	query.statement = log->statements[which];
	return query;
}

static void note(struct query *query, int rc)
{
	if (query->rc == SQLITE_OK)
		query->rc = rc;
}

void bind_integer(struct query *query, int64_t value)
{
	note(query, sqlite3_bind_int64(query->statement, ++query->bound, value));
}

void bind_unless(struct query *query, int64_t value, int64_t null_value)
{
	if (value == null_value)
		note(query, sqlite3_bind_null(query->statement, ++query->bound));
	else
		bind_integer(query, value);
}

void bind_text(struct query *query, const char *text, size_t size)
{
	note(query,
	     sqlite3_bind_text(query->statement, ++query->bound, text, (int)strnlen(text, size), SQLITE_TRANSIENT));
}

void bind_name(struct query *query, const char *name)
{
	if (name[0] == '\0' || strcmp(name, "?") == 0)
		note(query, sqlite3_bind_null(query->statement, ++query->bound));
	else
		note(query, sqlite3_bind_text(query->statement, ++query->bound, name, -1, SQLITE_STATIC));
}

void bind_bytes(struct query *query, const void *bytes, int size)
{
	if (size == 0)
		note(query, sqlite3_bind_zeroblob(query->statement, ++query->bound, 0));
	else
		note(query, sqlite3_bind_blob(query->statement, ++query->bound, bytes, size, SQLITE_STATIC));
}

bool next_is_null(const struct query *query)
{
	return sqlite3_column_type(query->statement, query->taken) == SQLITE_NULL;
}

int64_t take_integer(struct query *query)
{
	return sqlite3_column_int64(query->statement, query->taken++);
}

int64_t take_between(struct query *query, int64_t least, int64_t most)
{
	int64_t value = take_integer(query);
	if (value >= least && value <= most)
		return value;
	query->unreadable = true;
	return 0;
}

int64_t take_wall(struct query *query)
{
	return take_between(query, WALL_LEAST_MS, WALL_MOST_MS);
}

int64_t take_awake(struct query *query)
{
	return take_between(query, 0, WALL_MOST_MS);
}

int take_int(struct query *query)
{
	int64_t value = take_integer(query);
	if (value < INT_MIN || value > INT_MAX) {
		query->unreadable = true;
		return 0;
	}
	return (int)value;
}

bool take_flag(struct query *query)
{
	return take_integer(query) != 0;
}

const char *take_name(struct query *query)
{
	int column = query->taken++;
	const unsigned char *text = sqlite3_column_text(query->statement, column);
	if (text != NULL)
		return (const char *)text;
	if (sqlite3_column_type(query->statement, column) != SQLITE_NULL)
		note(query, SQLITE_NOMEM); /* a value that could not be made into text */
	return "";
}

void take_text(struct query *query, char *buffer, size_t size)
{
	(void)text_copy(buffer, size, take_name(query)); /* a longer text is cut, by the header */
}

static int index_of(struct query *query, const char *name, const struct enum_words *words)
{
	for (int i = 0; i < words->count; i++)
		if (strcmp(name, word_at(words, i)) == 0)
			return i;
	query->unreadable = true;
	return 0;
}

int take_index(struct query *query, const struct enum_words *words)
{
	return index_of(query, take_name(query), words);
}

int take_word(struct query *query, const struct enum_words *words)
{
	const char *name = take_name(query);
	return name[0] == '\0' ? 0 : index_of(query, name, words);
}

/* Without memory even a ROLLBACK can fail. An act that is over must not go on in
 * the dark: roll it back before anything is read or written again. */
static int end_stale_transaction(struct log *log)
{
	if (log->in_act || log->looking || sqlite3_get_autocommit(log->db) != 0)
		return SQLITE_OK;
	(void)sqlite3_step(log->statements[ROLLBACK_ACT]);
	return sqlite3_reset(log->statements[ROLLBACK_ACT]);
}

/* Step once and hand the row to `read`. SQLITE_ROW, SQLITE_DONE or an error. */
static int step(struct query *query, row_reader *read, void *into)
{
	if (query->rc != SQLITE_OK)
		return query->rc;
	int rc = end_stale_transaction(query->log);
	if (rc != SQLITE_OK)
		return rc;
	errno = 0; /* log_fault looks at it */
	rc = sqlite3_step(query->statement);
	if (rc != SQLITE_ROW || read == NULL)
		return rc;
	query->taken = 0;
	read(query, into);
	if (query->rc != SQLITE_OK)
		return query->rc;
	return query->unreadable ? SQLITE_MISMATCH : SQLITE_ROW;
}

/* Say what went wrong, before the reset clears it; reset in every case. */
static bool finish(struct query *query, int rc, struct fault *fault)
{
	bool ok = rc == SQLITE_ROW || rc == SQLITE_DONE;
	if (!ok && query->unreadable)
		(void)fault_set(fault, FAULT_DAMAGED,
		                "%s holds a value this program does not know. Check it with a newer "
		                "stillroom, or go back to a backup with \"stillroom restore\".",
		                path_shown(query->log->path));
	else if (!ok)
		(void)log_fault(query->log, rc, fault);
	if (query->statement == NULL) /* it could not be prepared */
		return ok;
	(void)sqlite3_reset(query->statement); /* repeats the error already seen */
	(void)sqlite3_clear_bindings(query->statement);
	return ok;
}

bool query_run(struct query *query, struct fault *fault)
{
	return finish(query, step(query, NULL, NULL), fault);
}

bool query_one(struct query *query, row_reader *read, void *into, bool *found, struct fault *fault)
{
	int rc = step(query, read, into);
	*found = rc == SQLITE_ROW;
	return finish(query, rc, fault);
}

bool query_get(struct query *query, row_reader *read, void *into, const char *what, struct fault *fault)
{
	bool found;
	if (!query_one(query, read, into, &found, fault))
		return false;
	if (!found)
		return fault_set(fault, FAULT_MISSING, "The log has no %s; look again.", what);
	return true;
}

static void read_integer(struct query *query, void *into)
{
	*(int64_t *)into = take_integer(query);
}

bool query_integer(struct query *query, int64_t *out, struct fault *fault)
{
	return query_get(query, read_integer, out, "such number", fault);
}

/* Room for one more row in an array that doubles. */
static bool grow(char **rows, size_t size, size_t count, size_t *room)
{
	if (count < *room)
		return true;
	size_t more = *room == 0 ? 8 : *room * 2;
	char *grown = more > SIZE_MAX / size ? NULL : realloc(*rows, more * size);
	if (grown == NULL)
		return false;
	*rows = grown;
	*room = more;
	return true;
}

bool query_list(struct query *query, row_reader *read, size_t size, void *rows, size_t *count, struct fault *fault)
{
	char *list = NULL;
	size_t room = 0;
	size_t used = 0;
	int rc = SQLITE_ROW;
	while (rc == SQLITE_ROW) {
		if (!grow(&list, size, used, &room)) {
			rc = SQLITE_NOMEM;
			break;
		}
		memset(list + used * size, 0, size);
		rc = step(query, read, list + used * size);
		if (rc == SQLITE_ROW)
			used++;
	}
	bool ok = finish(query, rc, fault);
	if (!ok || used == 0) {
		free(list);
		list = NULL;
		used = 0;
	}
	memcpy(rows, &list, sizeof(list)); /* a pointer to structs of whatever kind */
	*count = used;
	return ok;
}
