/*
 * log_open.c - opening the log: identity, settings, checks, statements.
 *
 * Order matters. Who the file belongs to is asked before anything is written;
 * its health before it is migrated; and the file is only ever looked at through
 * SQLite or stat(), never with open() and close(), which would drop the locks
 * of another connection of this process (SQLite documentation, howtocorrupt.html).
 */
#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include "log/disk/log_private.h"
#include "log/file/file.h"
#include "log/history/find_words.h"
#include "log/journal/acts.h"
#include "log/query/query.h"
#include "log/query/tables.h"

#define MARK_BUSY_MS 5000 /* a report may be reading while the log is marked as in use */

#define TEXT_OF(number) TEXT_OF_EXPANDED(number)
#define TEXT_OF_EXPANDED(number) #number

/* A setting is made, then read back: a PRAGMA that is not understood or not
 * possible fails without a word. */
struct setting {
	const char *set;
	const char *get;
	const char *expected;
};

static const struct setting settings_always[] = {
	{ "PRAGMA busy_timeout = " TEXT_OF(LOG_BUSY_MS), "PRAGMA busy_timeout", TEXT_OF(LOG_BUSY_MS) },
	{ "PRAGMA trusted_schema = OFF", "PRAGMA trusted_schema", "0" },
	{ "PRAGMA cell_size_check = ON", "PRAGMA cell_size_check", "1" },
	{ "PRAGMA temp_store = MEMORY", "PRAGMA temp_store", "2" },
	{ "PRAGMA recursive_triggers = OFF", "PRAGMA recursive_triggers", "0" },
	{ "PRAGMA foreign_keys = ON", "PRAGMA foreign_keys", "1" },
};

static const struct setting settings_writing[] = {
	{ "PRAGMA journal_mode = WAL", "PRAGMA journal_mode", "wal" },
	{ "PRAGMA synchronous = FULL", "PRAGMA synchronous", "2" },
};

/* A connection that only looks never checkpoints: before SQLite 3.51.3 two
 * checkpointing connections can race (SQLite documentation, wal.html, "WAL-reset
 * bug"), and a -wal that it found is not its to take away. */
static const struct setting settings_looking[] = {
	{ "PRAGMA query_only = ON", "PRAGMA query_only", "1" },
	{ "PRAGMA wal_autocheckpoint = 0", "PRAGMA wal_autocheckpoint", "0" },
};

/* A log that is missing may be begun. */
static bool may_begin(const struct log *log)
{
	return log->mode == LOG_CREATE || log->mode == LOG_BOARD;
}

static bool apply_settings(struct log *log, const struct setting *settings, size_t count, struct fault *fault)
{
	for (size_t i = 0; i < count; i++) {
		char answer[32];
		int rc = sqlite3_exec(log->db, settings[i].set, NULL, NULL, NULL);
		if (rc == SQLITE_OK)
			rc = connection_text(log->db, settings[i].get, answer, sizeof(answer));
		if (rc != SQLITE_OK)
			return log_fault(log, rc, fault);
		if (strcmp(answer, settings[i].expected) != 0)
			return fault_set(fault, FAULT_IO,
			                 "%s cannot be kept safely where it is (%s answers "
			                 "\"%s\"). Keep the log on a local disk.",
			                 path_shown(log->path), settings[i].get, answer);
	}
	return true;
}

#define APPLY(log, settings, fault) apply_settings((log), (settings), sizeof(settings) / sizeof((settings)[0]), (fault))

/* --- the file ------------------------------------------------------------- */

/* Make each missing folder on the way to `path`, and have it on the disk. */
static bool make_folders(const char *path, struct fault *fault)
{
	char *way = strdup(path);
	if (way == NULL)
		return system_fault(path, "make its folder", ENOMEM, fault);
	bool ok = true;
	for (char *slash = strchr(way + 1, '/'); ok && slash != NULL; slash = strchr(slash + 1, '/')) {
		*slash = '\0';
		struct stat status;
		if (stat(way, &status) != 0) {
			if (mkdir(way, 0700) != 0 && errno != EEXIST)
				ok = system_fault(way, "make the folder", errno, fault);
			else
				ok = folder_sync(way, fault);
		}
		*slash = '/';
	}
	free(way);
	return ok;
}

static bool missing_file(struct log *log, struct fault *fault)
{
	char backup[SENTENCE_MAX_BYTES];
	if (!may_begin(log))
		return fault_set(fault, FAULT_MISSING,
		                 "There is no log %s. Check the name, or start the "
		                 "board once to make it.",
		                 path_shown(log->path));
	if (backup_newest_whole(log->path, backup, sizeof(backup)))
		return fault_set(
		    fault, FAULT_MISSING,
		    "%s is missing, though it has backups (newest: %s). "
		    "Put that one back with \"stillroom restore\" or, to start over, move its folder away.",
		    path_shown(log->path), path_shown(backup));
	if (side_file_bytes(log->path, "-wal") > 0) /* SQLite would take it away */
		return fault_set(fault, FAULT_MISSING,
		                 "%s is missing, but its latest entries are still there (%s-wal). Bring the log "
		                 "back beside it, or move that file away to start over.",
		                 path_shown(log->path), path_shown(log->path));
	return make_folders(log->path, fault);
}

/* SQLite would let everybody read it; it gives -wal and -shm the rights of the log. */
static bool make_file(const struct log *log, struct fault *fault)
{
	int fd = open(log->path, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, LOG_FILE_MODE);
	if (fd < 0)
		return errno == EEXIST || system_fault(log->path, "make the log", errno, fault);
	(void)close(fd); /* nobody can have had it open */
	return true;
}

static bool look_at_file(struct log *log, struct fault *fault)
{
	struct stat status;
	if (log->path[0] == '\0')
		return fault_set(fault, FAULT_MISSING, "The name of the log is empty; give one.");
	if (stat(log->path, &status) == 0) {
		if (!S_ISREG(status.st_mode))
			return fault_set(fault, FAULT_NOT_OURS,
			                 "%s is not a file but %s. Choose another name "
			                 "for the log.",
			                 path_shown(log->path),
			                 S_ISDIR(status.st_mode) ? "a folder" : "a device or similar");
		return true;
	}
	if (errno != ENOENT)
		return system_fault(log->path, "find the log", errno, fault);
	return missing_file(log, fault);
}

/* On a disk mounted read-only nobody can change the file, and SQLite has to be
 * told so, or it would want to make a -shm (SQLite documentation, wal.html,
 * "Read-Only Databases"). A -wal that still holds something must not be passed
 * over, though. */
static bool is_on_read_only_disk(const char *path)
{
	struct statvfs disk;
	struct stat status;
	char *wal = sqlite3_mprintf("%s-wal", path);
	bool fixed = wal != NULL && statvfs(path, &disk) == 0 && (disk.f_flag & ST_RDONLY) != 0 &&
	             (stat(wal, &status) != 0 || status.st_size == 0);
	sqlite3_free(wal);
	return fixed;
}

static bool open_as(struct log *log, bool immutable, struct fault *fault)
{
	int rc = immutable ? open_immutable(log->path, &log->db)
	                   : connection_open(log->path, SQLITE_OPEN_READWRITE, &log->db);
	if (log->db == NULL)
		return fault_set(fault, FAULT_MEMORY,
		                 "Not enough memory to open the log. Close other "
		                 "programs, then try again.");
	if (rc == SQLITE_OK)
		rc = hold_checkpoints(log->db, true);
	if (rc == SQLITE_OK)
		rc = find_words_for_sql(log->db);
	return rc == SQLITE_OK || log_fault(log, rc, fault);
}

static bool open_file(struct log *log, struct fault *fault)
{
	bool immutable = only_looks(log) && is_on_read_only_disk(log->path);
	if (may_begin(log) && !make_file(log, fault))
		return false;
	if (!open_as(log, immutable, fault) || !beside_look(log, fault))
		return false;
	if (!only_looks(log) || !log->without_wal || immutable)
		return true;
	(void)sqlite3_close(log->db); /* not even an empty -wal is made beside it */
	return open_as(log, true, fault);
}

/* --- whose file is it? ------------------------------------------------------ */

struct identity {
	int64_t pages;
	int64_t application_id;
	int64_t version;
};

static int read_identity(struct log *log, struct identity *identity)
{
	/* one transaction: another process may be making the log just now */
	int rc = sqlite3_exec(log->db, "BEGIN", NULL, NULL, NULL);
	if (rc == SQLITE_OK)
		rc = connection_integer(log->db, "SELECT count(*) FROM sqlite_master", &identity->pages);
	if (rc == SQLITE_OK)
		rc = connection_integer(log->db, "PRAGMA page_count", &identity->pages);
	if (rc == SQLITE_OK)
		rc = connection_integer(log->db, "PRAGMA application_id", &identity->application_id);
	if (rc == SQLITE_OK)
		rc = connection_integer(log->db, "PRAGMA user_version", &identity->version);
	int ended = SQLITE_OK;
	if (sqlite3_get_autocommit(log->db) == 0)
		ended = sqlite3_exec(log->db, "ROLLBACK", NULL, NULL, NULL);
	return rc == SQLITE_OK ? ended : rc;
}

static bool not_ours(const struct log *log, const char *what, struct fault *fault)
{
	return fault_set(fault, FAULT_NOT_OURS,
	                 "%s is %s; nothing was changed in it. Choose another "
	                 "name for the log.",
	                 path_shown(log->path), what);
}

/* An empty file becomes a log on LOG_CREATE, unless it was one before. */
static bool identify_empty(const struct log *log, struct fault *fault)
{
	char backup[SENTENCE_MAX_BYTES];
	if (!may_begin(log))
		return not_ours(log, "empty", fault);
	if (backup_newest_whole(log->path, backup, sizeof(backup)))
		return fault_set(fault, FAULT_DAMAGED, "it is empty");
	return true;
}

static bool layout_is_known(const struct log *log, int64_t version, struct fault *fault)
{
	int64_t newest = layout_newest(log->layouts);
	if (version > newest)
		return fault_set(fault, FAULT_NEWER,
		                 "%s was written by a newer stillroom (its layout is "
		                 "number %lld, this program knows up to %lld). Install the newer program.",
		                 path_shown(log->path), (long long)version, (long long)newest);
	if (version < 1)
		return fault_set(fault, FAULT_DAMAGED, "its layout has no number");
	if (version < log->layouts->first)
		return fault_set(fault, FAULT_OLDER,
		                 "%s was written by a stillroom from before the first "
		                 "release (its layout is number %lld, this program reads from %d on); nothing "
		                 "was changed in it. Choose another name for the log, or move this one and its "
		                 "backups away to start over.",
		                 path_shown(log->path), (long long)version, log->layouts->first);
	return true;
}

/* *version: 0 for an empty file that may become a log. */
static bool identify(struct log *log, int64_t *version, struct fault *fault)
{
	struct identity identity = { 0 };
	int rc = read_identity(log, &identity);
	if ((rc & 0xff) == SQLITE_NOTADB)
		return not_ours(log, "not a stillroom log", fault);
	if (rc != SQLITE_OK)
		return log_fault(log, rc, fault);
	*version = identity.version;
	if (identity.pages == 0)
		return identify_empty(log, fault);
	if (identity.application_id != LOG_APPLICATION_ID)
		return not_ours(log, "the database of another program", fault);
	return layout_is_known(log, identity.version, fault) && schema_is_ours(log, identity.version, fault);
}

/* --- all together ------------------------------------------------------------- */

static bool check_pages(struct log *log, bool thorough, struct fault *fault)
{
	char why[120];
	int rc = connection_check(log->db, thorough, why, sizeof(why));
	if ((rc & 0xff) == SQLITE_CORRUPT)
		return fault_set(fault, FAULT_DAMAGED, "%s",
		                 why[0] == '\0' || strcmp(why, "ok") == 0 ? sqlite3_errstr(rc) : why);
	return rc == SQLITE_OK || log_fault(log, rc, fault);
}

/* After an unclean end every page and every index is looked at.  Who only looks does without,
 * and the board has it done beside it; a log that is to be migrated is checked before. */
static bool check_health(struct log *log, int64_t version, struct fault *fault)
{
	log->unchecked = log->mode == LOG_BOARD && version == layout_newest(log->layouts);
	if (!log->unchecked && log->mode != LOG_LOOK && !check_pages(log, log->unclean || log->without_wal, fault))
		return false;
	return newest_entry_is_whole(log, fault);
}

static bool check_writable(struct log *log, struct fault *fault)
{
	if (only_looks(log) || sqlite3_db_readonly(log->db, "main") == 0)
		return true;
	return log_fault(log, SQLITE_READONLY, fault);
}

static bool bring_up_to_date(struct log *log, int64_t version, struct fault *fault)
{
	int64_t newest = layout_newest(log->layouts);
	if (version == newest)
		return true;
	if (!only_looks(log))
		return log_migrate(log, version, fault);
	return fault_set(fault, FAULT_READ_ONLY,
	                 "%s was written by an older stillroom (its layout is "
	                 "number %lld, this program's is %lld). Start the board on it once to bring it "
	                 "up to date.",
	                 path_shown(log->path), (long long)version, (long long)newest);
}

/* The log is marked as in use (its header says -wal), and both are on the disk: from
 * here on a copy of the file without the -wal can be told. */
static bool mark_in_use(struct log *log, struct fault *fault)
{
	(void)sqlite3_busy_timeout(log->db, MARK_BUSY_MS);
	bool ok = APPLY(log, settings_writing, fault);
	(void)sqlite3_busy_timeout(log->db, LOG_BUSY_MS);
	int64_t pages;
	int rc = ok ? connection_integer(log->db, "PRAGMA page_count", &pages) : SQLITE_OK; /* makes the -wal */
	if (rc == SQLITE_OK && ok && !log->unchecked)
		rc = hold_checkpoints(log->db, false);
	if (rc != SQLITE_OK)
		return log_fault(log, rc, fault);
	stands_remember(log);
	if (log->mode == LOG_BOARD)
		watch_open(log);
	return ok && folder_sync(log->path, fault);
}

static int is_delete(void *taken, int columns, char **values, char **names)
{
	(void)names;
	*(bool *)taken = columns == 1 && values[0] != NULL && strcmp(values[0], "delete") == 0;
	return 0;
}

/* The mark is taken off by whoever is the last to leave: all is in the one file then. Who
 * is not alone, or cannot, leaves the -wal to the next. SQLite takes the -wal away first and
 * writes the mark in a transaction of its own; the lock is kept from the one to the other, or
 * somebody who comes just then would keep the mark on and be told of a copy. */
static void end_cleanly(struct log *log)
{
	if (log->db == NULL)
		return;
	bool kept = log_is_damaged(log) || (log->unchecked && log_has_wal(log)); /* not moved into the file */
	bool may = !log->opening && !only_looks(log) && !kept && !log->unsynced && log_stands(log, NULL);
	bool taken = false; /* what could not be changed is answered as it was, without an error */
	int64_t pages;
	(void)sqlite3_busy_timeout(log->db, 0);
	if (may &&
	    sqlite3_exec(log->db, "PRAGMA locking_mode = EXCLUSIVE; PRAGMA journal_mode = DELETE", is_delete, &taken,
	                 NULL) == SQLITE_OK &&
	    taken)
		return;
	(void)hold_checkpoints(log->db, true);
	if (may) /* the disk may have let the mark stand when the -wal was gone: this makes one */
		(void)connection_integer(log->db, "PRAGMA page_count", &pages);
}

/* What every act needs, and one statement of each of the tables that make the record:
 * a log that lacks one is told at once. The others are prepared when first asked, since
 * to prepare them all would take longer than anything else in opening. */
#define WORK_GETS(TAG, word) TAG##_GET,
static const enum statement prepared_first[] = { BEGIN_ACT, COMMIT_ACT,   ROLLBACK_ACT, ENTRY_NEWEST,
	                                         HOUSE_GET, STATION_LIST, LID_BOX_LIST, LOT_GET,
	                                         JAR_GET,   PHASE_LIST,   JUICE_GET,    EACH_WORK(WORK_GETS) };

static bool prepare(struct log *log, struct fault *fault)
{
	for (size_t i = 0; i < sizeof(prepared_first) / sizeof(prepared_first[0]); i++) {
		int rc = log_prepare(log, prepared_first[i]);
		if (rc == SQLITE_ERROR) /* no such table or column */
			return fault_set(fault, FAULT_DAMAGED, "%s", sqlite3_errmsg(log->db));
		if (rc != SQLITE_OK)
			return log_fault(log, rc, fault);
	}
	return true;
}

static bool open_steps(struct log *log, struct fault *fault)
{
	int64_t version = 0;
	if (!look_at_file(log, fault) || !open_file(log, fault) || !APPLY(log, settings_always, fault) ||
	    !identify(log, &version, fault) || !check_writable(log, fault))
		return false;
	if (version > 0 && !check_health(log, version, fault))
		return false;
	if (!bring_up_to_date(log, version, fault))
		return false;
	/* WAL only now: a new file has got its identity in one rollback-journalled
	 * transaction, so that a crash leaves it either empty or ours. */
	if (only_looks(log) ? !APPLY(log, settings_looking, fault) : !mark_in_use(log, fault))
		return false;
	return prepare(log, fault);
}

/* A file that fails its checks, or is not even a database any more though it has
 * backups: what is wrong, once, and the command that puts the newest backup back. */
static void tell_damage(const char *path, struct fault *fault)
{
	char backup[SENTENCE_MAX_BYTES];
	char cause[160];
	bool damaged = fault->kind == FAULT_DAMAGED;
	if (!damaged && fault->kind != FAULT_NOT_OURS)
		return;
	bool found = backup_newest_whole(path, backup, sizeof(backup));
	sqlite3_snprintf((int)sizeof(cause), cause, "%s", damaged ? fault->sentence : "it no longer begins like a log");
	if (found)
		(void)fault_set(fault, FAULT_DAMAGED,
		                "%s is damaged (%s). \"stillroom restore\" puts a backup in its place; the newest "
		                "good one is %s.",
		                path_shown(path), cause, path_shown(backup));
	else if (damaged)
		(void)fault_set(fault, FAULT_DAMAGED,
		                "%s is damaged (%s), and no good backup was found in "
		                "%s.backups. Keep a copy of the file before trying to repair it.",
		                path_shown(path), cause, path_shown(path));
}

static struct log *new_log(const char *path, enum log_mode mode, const struct layouts *layouts)
{
	struct log *log = calloc(1, sizeof(*log));
	if (log == NULL)
		return NULL;
	log->mode = mode;
	log->layouts = layouts;
	log->tables = log_tables;
	log->table_count = log_table_count;
	log->opening = true;
	log->watch = -1;
	log->path = strdup(path);
	if (log->path == NULL) {
		free(log);
		return NULL;
	}
	return log;
}

bool log_open(const char *path, enum log_mode mode, struct log **out, struct fault *fault)
{
	return log_open_laid_out(path, mode, &log_layouts, out, fault);
}

bool log_open_laid_out(const char *path, enum log_mode mode, const struct layouts *layouts, struct log **out,
                       struct fault *fault)
{
	struct fault why = { .kind = FAULT_NONE };
	struct log *log = new_log(path, mode, layouts);
	*out = NULL;
	if (log == NULL)
		return fault_set(fault, FAULT_MEMORY,
		                 "Not enough memory to open the log. Close other "
		                 "programs, then try again.");
	if (open_steps(log, &why)) {
		log->opening = false;
		*out = log;
		return true;
	}
	log_close(log);
	tell_damage(path, &why);
	if (fault != NULL)
		*fault = why;
	return false;
}

/* --- the check that comes later ------------------------------------------------ */

bool log_check(struct log *log, struct fault *fault)
{
	struct fault why = { .kind = FAULT_NONE };
	bool opening = log->opening;
	log->opening = true; /* tell_damage makes the sentence */
	bool whole = check_pages(log, true, &why) && newest_entry_is_whole(log, &why);
	log->opening = opening;
	if (whole)
		return true;
	tell_damage(log->path, &why);
	if (fault != NULL)
		*fault = why;
	return false;
}

bool log_is_unchecked(const struct log *log)
{
	return log->unchecked;
}

bool log_has_wal(const struct log *log)
{
	return side_file_bytes(log->path, "-wal") > 0;
}

bool log_checked(struct log *log, const char *damage, struct fault *fault)
{
	if (damage != NULL) {
		sqlite3_snprintf((int)sizeof(log->damage), log->damage, "%s", damage);
		log->unchecked = false;
		return true;
	}
	int rc = log->unchecked ? hold_checkpoints(log->db, false) : SQLITE_OK;
	log->unchecked = log->unchecked && rc != SQLITE_OK;
	return rc == SQLITE_OK || log_fault(log, rc, fault);
}

void log_close(struct log *log)
{
	if (log == NULL)
		return;
	log_abandon(log);
	for (int i = 0; i < STATEMENT_COUNT; i++)
		(void)sqlite3_finalize(log->statements[i]);
	watch_close(log);
	end_cleanly(log);
	(void)sqlite3_close(log->db);
	free(log->path);
	free(log);
}

const char *log_path(const struct log *log)
{
	return log->path;
}

const char *log_notice(const struct log *log)
{
	return log->notice;
}
