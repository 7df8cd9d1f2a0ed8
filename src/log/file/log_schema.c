/*
 * log_schema.c - is a log laid out as ours are, and by nothing else?
 *
 * A log that came from somebody else could hold triggers and views of its own, which
 * would run at the first act. Its layout is compared with schema/log.sql before
 * anything of the log but its list of names is read.
 *
 * SQLite keeps each CREATE as it was written, so that a log is nearly always known by
 * its words alone. Where the words differ (a migration, another SQLite, a stranger) a
 * layout of the same number is made in memory and compared name by name; that takes
 * several times as long as all else in opening, and tells what is wrong.
 */
#include <string.h>

#include "log/disk/log_private.h"

/* Names that SQLite gives by itself are left out: of tables and indexes only. */
#define LIST_SQL \
	"SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_master" \
	" WHERE NOT (type IN ('table', 'index') AND name GLOB 'sqlite_*') ORDER BY "

#define CREATE "CREATE "

enum { TYPE, NAME, TABLE, SQL };

static const char *column(sqlite3_stmt *statement, int which)
{
	const char *text = (const char *)sqlite3_column_text(statement, which);
	return text == NULL ? "" : text;
}

/* --- word for word ------------------------------------------------------------------------ */

/* The next statement of a layout's text at or behind `at`; each begins a line. */
static const char *next_create(const char *at, const char *text)
{
	while (at != NULL && at != text && at[-1] != '\n')
		at = strstr(at + 1, CREATE);
	return at;
}

/* True when the log's statements are those of the text, all of them in their order. */
static bool same_words(sqlite3 *db, const char *text)
{
	sqlite3_stmt *row;
	const char *at = next_create(strstr(text, CREATE), text);
	bool same = sqlite3_prepare_v2(db, LIST_SQL "rowid", -1, &row, NULL) == SQLITE_OK;
	int rc = same ? sqlite3_step(row) : SQLITE_ERROR;
	for (; same && rc == SQLITE_ROW; rc = sqlite3_step(row)) {
		const char *sql = column(row, SQL);
		size_t length = strlen(sql);
		same = at != NULL && strncmp(at, sql, length) == 0 && at[length] == ';';
		at = same ? next_create(strstr(at + length, CREATE), text) : at;
	}
	(void)sqlite3_finalize(row);
	return same && rc == SQLITE_DONE && at == NULL;
}

/* --- name by name ------------------------------------------------------------------------- */

/* Length without what only an SQLite that knows STRICT writes down. */
static size_t length_without(const char *sql, const char *ending)
{
	size_t length = strlen(sql);
	size_t cut = strlen(ending);
	return length > cut && strcmp(sql + length - cut, ending) == 0 ? length - cut : length;
}

static bool same_sql(const char *a, const char *b)
{
	static const char *const endings[] = { " STRICT", " STRICT, WITHOUT ROWID" };
	static const char *const plain[] = { "", " WITHOUT ROWID" };
	if (strcmp(a, b) == 0)
		return true;
	for (size_t i = 0; i < sizeof(endings) / sizeof(endings[0]); i++) {
		size_t length = length_without(a, endings[i]);
		if (length < strlen(a) && strncmp(a, b, length) == 0 && strcmp(b + length, plain[i]) == 0)
			return true;
	}
	return false;
}

/* < 0: `log` has something that comes before what ours has; 0: the same. */
static int order(sqlite3_stmt *log, sqlite3_stmt *ours)
{
	int by_type = strcmp(column(log, TYPE), column(ours, TYPE));
	return by_type != 0 ? by_type : strcmp(column(log, NAME), column(ours, NAME));
}

static bool same_row(sqlite3_stmt *log, sqlite3_stmt *ours)
{
	if (strcmp(column(log, TABLE), column(ours, TABLE)) != 0)
		return false;
	return same_sql(column(ours, SQL), column(log, SQL)) || same_sql(column(log, SQL), column(ours, SQL));
}

/* "its trigger "x" is missing". The name may be a stranger's. */
static bool differs(sqlite3_stmt *row, const char *how, struct fault *fault)
{
	return fault_set(fault, FAULT_DAMAGED, "its %s \"%.60s\" %s", column(row, TYPE), column(row, NAME), how);
}

/* Both lists are in the same order. */
static bool compare(struct log *log, sqlite3_stmt *theirs, sqlite3_stmt *ours, struct fault *fault)
{
	int a = sqlite3_step(theirs);
	int b = sqlite3_step(ours);
	while (a == SQLITE_ROW || b == SQLITE_ROW) {
		if ((a != SQLITE_ROW && a != SQLITE_DONE) || (b != SQLITE_ROW && b != SQLITE_DONE))
			break;
		int which = a == SQLITE_DONE ? 1 : b == SQLITE_DONE ? -1 : order(theirs, ours);
		if (which < 0)
			return differs(theirs, "is of no log of this program", fault);
		if (which > 0)
			return differs(ours, "is missing", fault);
		if (!same_row(theirs, ours))
			return differs(ours, "is not as this program makes it", fault);
		a = sqlite3_step(theirs);
		b = sqlite3_step(ours);
	}
	return (a == SQLITE_DONE && b == SQLITE_DONE) || log_fault(log, a == SQLITE_DONE ? b : a, fault);
}

static bool same_names(struct log *log, int64_t version, struct fault *fault)
{
	sqlite3 *fresh = NULL;
	sqlite3_stmt *theirs = NULL;
	sqlite3_stmt *ours = NULL;
	int rc = sqlite3_open_v2(":memory:", &fresh, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL);
	if (rc == SQLITE_OK)
		rc = layout_make(fresh, log->layouts, version);
	if (rc == SQLITE_OK)
		rc = sqlite3_prepare_v2(fresh, LIST_SQL "type, name", -1, &ours, NULL);
	if (rc == SQLITE_OK)
		rc = sqlite3_prepare_v2(log->db, LIST_SQL "type, name", -1, &theirs, NULL);
	bool ok = rc == SQLITE_OK ? compare(log, theirs, ours, fault) : log_fault(log, rc, fault);
	(void)sqlite3_finalize(theirs);
	(void)sqlite3_finalize(ours);
	(void)sqlite3_close(fresh);
	return ok;
}

bool schema_is_ours(struct log *log, int64_t version, struct fault *fault)
{
	if (version == log->layouts->first && same_words(log->db, log->layouts->schema))
		return true;
	return same_names(log, version, fault);
}
