/*
 * connection.c - a connection to a database file, and what it says of its health.
 */
#include <stdlib.h>
#include <string.h>

#include "log/disk/log_private.h"

#define CHECKPOINT_PAGES 1000 /* SQLite's own number */

int connection_open(const char *path, int flags, sqlite3 **db)
{
	*db = NULL;
	/* "./" keeps ":memory:" and "file:..." from meaning anything special. */
	char *plain = sqlite3_mprintf("%s%s", path[0] == '/' ? "" : "./", path);
	if (plain == NULL)
		return SQLITE_NOMEM;
	int rc = sqlite3_open_v2(plain, db, flags, NULL);
	sqlite3_free(plain);
	if (rc == SQLITE_OK)
		rc = sqlite3_extended_result_codes(*db, 1);
	return rc;
}

bool only_looks(const struct log *log)
{
	return log->mode == LOG_LOOK || log->mode == LOG_INSPECT;
}

int connection_integer(sqlite3 *db, const char *sql, int64_t *out)
{
	sqlite3_stmt *statement;
	int rc = sqlite3_prepare_v2(db, sql, -1, &statement, NULL);
	if (rc != SQLITE_OK)
		return rc;
	rc = sqlite3_step(statement);
	if (rc == SQLITE_ROW)
		*out = sqlite3_column_int64(statement, 0);
	int ended = sqlite3_finalize(statement);
	if (rc == SQLITE_DONE)
		return SQLITE_EMPTY;
	return ended;
}

/* The first column of the first row as text, "" when there is none. */
int connection_text(sqlite3 *db, const char *sql, char *buffer, size_t size)
{
	sqlite3_stmt *statement;
	buffer[0] = '\0';
	int rc = sqlite3_prepare_v2(db, sql, -1, &statement, NULL);
	if (rc != SQLITE_OK)
		return rc;
	if (sqlite3_step(statement) == SQLITE_ROW) {
		const unsigned char *text = sqlite3_column_text(statement, 0);
		sqlite3_snprintf((int)size, buffer, "%s", text == NULL ? "" : (const char *)text);
	}
	return sqlite3_finalize(statement);
}

/* A check that could not read a page for want of memory or through a disk error
 * says so in its complaint, "... error code=7". That is no damage. */
static int complaint_code(const char *complaint)
{
	static const char mark[] = "error code=";
	const char *at = strstr(complaint, mark);
	long code = at == NULL ? SQLITE_CORRUPT : strtol(at + sizeof(mark) - 1, NULL, 10);
	int primary = (int)(code & 0xff);
	return primary == SQLITE_NOMEM || primary == SQLITE_IOERR || primary == SQLITE_BUSY ? (int)code
	                                                                                    : SQLITE_CORRUPT;
}

/* Of "*** in database main ***" and lines of complaints the first complaint. */
static void keep_first_complaint(char *why)
{
	char *end = strchr(why, '\n');
	if (strncmp(why, "***", 3) == 0 && end != NULL)
		memmove(why, end + 1, strlen(end + 1) + 1);
	end = strchr(why, '\n');
	if (end != NULL)
		*end = '\0';
}

/* Of ten complaints the first is told.  Asked for one alone, SQLite 3.46 ends its walk
 * at a page for which there is no memory, and when there is none for that complaint
 * either, takes it for unsaid and reads counts that the walk has not set. */
int connection_check(sqlite3 *db, bool thorough, char *why, size_t size)
{
	int rc = connection_text(db, thorough ? "PRAGMA integrity_check(10)" : "PRAGMA quick_check(10)", why, size);
	if (rc != SQLITE_OK)
		return rc;
	if (strcmp(why, "ok") != 0) {
		keep_first_complaint(why);
		return complaint_code(why);
	}
	rc = connection_text(db, "PRAGMA foreign_key_check", why, size);
	if (rc == SQLITE_OK && why[0] != '\0') {
		sqlite3_snprintf((int)size, why, "a row refers to one that is not there");
		return SQLITE_CORRUPT;
	}
	return rc;
}

/* Until a log has passed its check, and for who only looks, nothing of the -wal is
 * moved into the file: what is damaged stays as it is, and can still be put aside. */
int hold_checkpoints(sqlite3 *db, bool hold)
{
	int rc = sqlite3_db_config(db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, hold ? 1 : 0, NULL);
	return rc == SQLITE_OK ? sqlite3_wal_autocheckpoint(db, hold ? 0 : CHECKPOINT_PAGES) : rc;
}

int open_immutable(const char *path, sqlite3 **db)
{
	sqlite3_str *uri = sqlite3_str_new(NULL);
	sqlite3_str_appendf(uri, "file:%s", path[0] == '/' ? "" : "./");
	for (const char *at = path; *at != '\0'; at++)
		sqlite3_str_appendf(uri, strchr("%?#", *at) == NULL ? "%c" : "%%%02x", (unsigned char)*at);
	sqlite3_str_appendall(uri, "?immutable=1");
	char *name = sqlite3_str_finish(uri);
	if (name == NULL)
		return SQLITE_NOMEM;
	int rc = sqlite3_open_v2(name, db, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL);
	sqlite3_free(name);
	return rc == SQLITE_OK ? sqlite3_extended_result_codes(*db, 1) : rc;
}

int connection_look(const char *path, sqlite3 **db)
{
	int rc = side_file_bytes(path, "-wal") > 0 ? connection_open(path, SQLITE_OPEN_READONLY, db)
	                                           : open_immutable(path, db);
	return rc == SQLITE_OK ? hold_checkpoints(*db, true) : rc;
}
