/*
 * log_migrate.c - laying out a new log, and bringing an older one up to date by
 * numbered migrations.
 *
 * All that is missing is applied in one transaction together with the number of
 * the newest layout in user_version: a death in the middle leaves the log as it
 * was. A log that already holds something is copied to its backups first.
 */
#include <stdlib.h>
#include <string.h>

#include "log/disk/log_private.h"
#include "log/file/file.h"

#define STRICT_SINCE 3037000 /* SQLite documentation, stricttables.html */

static void blank(char *sql, const char *phrase, const char *instead)
{
	size_t length = strlen(phrase);
	size_t shorter = strlen(instead);
	for (char *at = strstr(sql, phrase); at != NULL; at = strstr(at, phrase)) {
		memcpy(at, instead, shorter);
		memset(at + shorter, ' ', length - shorter);
	}
}

char *layout_without_strict(const char *sql)
{
	char *copy = strdup(sql);
	if (copy == NULL)
		return NULL;
	blank(copy, ") STRICT;", ");");
	blank(copy, ") STRICT, WITHOUT ROWID;", ") WITHOUT ROWID;");
	return copy;
}

static int run_text(sqlite3 *db, const char *sql)
{
	if (sqlite3_libversion_number() >= STRICT_SINCE)
		return sqlite3_exec(db, sql, NULL, NULL, NULL);
	char *plain = layout_without_strict(sql);
	if (plain == NULL)
		return SQLITE_NOMEM;
	int rc = sqlite3_exec(db, plain, NULL, NULL, NULL);
	free(plain);
	return rc;
}

static int set_pragma(sqlite3 *db, const char *name, long long value)
{
	char sql[80];
	sqlite3_snprintf((int)sizeof(sql), sql, "PRAGMA %s = %lld", name, value);
	return sqlite3_exec(db, sql, NULL, NULL, NULL);
}

/* All from layout *version (0: an empty file) up to layout `last`. */
static int apply_to(sqlite3 *db, const struct layouts *layouts, int64_t *version, int64_t last)
{
	int rc = SQLITE_OK;
	if (*version == 0) {
		rc = run_text(db, layouts->schema);
		if (rc == SQLITE_OK)
			rc = set_pragma(db, "application_id", LOG_APPLICATION_ID);
		*version = layouts->first;
	}
	for (; rc == SQLITE_OK && *version < last; (*version)++)
		rc = run_text(db, layouts->migrations[*version - layouts->first]);
	return rc == SQLITE_OK ? set_pragma(db, "user_version", (long long)*version) : rc;
}

int layout_make(sqlite3 *db, const struct layouts *layouts, int64_t version)
{
	int64_t from = 0;
	int rc = sqlite3_exec(db, "PRAGMA legacy_alter_table = ON; BEGIN", NULL, NULL, NULL);
	if (rc == SQLITE_OK)
		rc = apply_to(db, layouts, &from, version);
	return rc == SQLITE_OK ? sqlite3_exec(db, "COMMIT", NULL, NULL, NULL) : rc;
}

/* Another process may have been faster: what version is it now? */
static int version_now(sqlite3 *db, int64_t *version)
{
	int64_t tables = 0;
	int rc = connection_integer(db, "SELECT count(*) FROM sqlite_master", &tables);
	if (rc == SQLITE_OK)
		rc = connection_integer(db, "PRAGMA user_version", version);
	if (rc == SQLITE_OK && *version == 0 && tables > 0)
		rc = SQLITE_NOTADB; /* another program's tables have come meanwhile */
	return rc;
}

static int apply_missing(sqlite3 *db, const struct layouts *layouts)
{
	char why[80];
	int64_t version = 0;
	int rc = sqlite3_exec(db, "BEGIN IMMEDIATE", NULL, NULL, NULL);
	if (rc == SQLITE_OK)
		rc = version_now(db, &version);
	bool is_behind = version < layout_newest(layouts);
	bool held_something = version > 0;
	if (rc == SQLITE_OK && is_behind)
		rc = apply_to(db, layouts, &version, layout_newest(layouts));
	/* foreign keys are off during a migration so that tables can be rebuilt
	 * (SQLite documentation, lang_altertable.html, section 7) */
	if (rc == SQLITE_OK && is_behind && held_something)
		rc = connection_check(db, false, why, sizeof(why));
	if (rc == SQLITE_OK)
		rc = sqlite3_exec(db, "COMMIT", NULL, NULL, NULL);
	return rc;
}

/* PATH.backups/2026-09-14_before_10.db: the day is that of the newest entry, and
 * the name sorts behind that day's own backup, which is older. */
static bool back_up_first(struct log *log, int64_t version, struct fault *fault)
{
	char name[64];
	char day[16] = "1970-01-01";
	int64_t wall_ms = 0;
	int rc = connection_integer(log->db, "SELECT coalesce(max(wall_ms), 0) FROM journal", &wall_ms);
	if (rc != SQLITE_OK)
		return log_fault(log, rc, fault);
	backup_day(wall_ms, day, sizeof(day));
	sqlite3_snprintf((int)sizeof(name), name, "%s_before_%lld.db", day, (long long)version + 1);
	char *target = backup_path(log->path, name, fault);
	bool ok = target != NULL && backup_copy(log->db, log->path, target, fault);
	free(target);
	return ok;
}

static bool migrate_all(struct log *log, struct fault *fault)
{
	int rc = apply_missing(log->db, log->layouts);
	if (rc == SQLITE_OK)
		return true;
	(void)log_fault(log, rc, fault);
	if (sqlite3_get_autocommit(log->db) == 0)
		(void)sqlite3_exec(log->db, "ROLLBACK", NULL, NULL, NULL);
	return false;
}

bool log_migrate(struct log *log, int64_t version, struct fault *fault)
{
	if (version > 0 && !back_up_first(log, version, fault))
		return false;
	/* and a table that views and triggers speak of can be rebuilt: they find the new
	 * one by its name. Its own triggers go with the old one. */
	int rc = sqlite3_exec(log->db, "PRAGMA foreign_keys = OFF; PRAGMA legacy_alter_table = ON", NULL, NULL, NULL);
	bool ok = rc == SQLITE_OK ? migrate_all(log, fault) : log_fault(log, rc, fault);
	rc = sqlite3_exec(log->db, "PRAGMA foreign_keys = ON; PRAGMA legacy_alter_table = OFF", NULL, NULL, NULL);
	return ok && (rc == SQLITE_OK || log_fault(log, rc, fault));
}
