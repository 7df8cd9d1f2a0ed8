/*
 * log_private.h - what the files of src/log share and nobody else may see.
 */
#ifndef STILLROOM_LOG_DISK_LOG_PRIVATE_H
#define STILLROOM_LOG_DISK_LOG_PRIVATE_H

#include <sqlite3.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <sys/types.h>

#include "base/fault.h"
#include "log/file/layout.h"
#include "log/query/statements.h"
#include "log/rows/file.h"
#include "log/rows/journal.h"

#define EVIDENCE_COLUMNS 11

#define COPY_NAME_MAX 64

/* Where a log or a copy of it ends. */
struct copy_end {
	int64_t entry; /* the newest of the journal; 0: none */
	int64_t wall_ms;
};

#define STANDS_FILES 3 /* the log, its -wal and its -shm */

/* One of the files as it was when it was last looked at. */
struct stands {
	bool known;
	dev_t device;
	ino_t inode;
	off_t bytes;
};

struct log {
	sqlite3 *db;
	char *path; /* as the caller gave it */
	enum log_mode mode;
	const struct layouts *layouts;
	const struct log_table *const *tables; /* log_tables */
	size_t table_count;
	sqlite3_stmt *statements[STATEMENT_COUNT]; /* NULL: not asked yet */
	sqlite3_session *session;                  /* captures the act; NULL outside one */
	bool in_act;
	bool looking;    /* between log_look_begin and log_look_end */
	bool act_spoilt; /* a write of this act failed: it may only be abandoned */
	bool version_seen;
	int evidence_place[EVIDENCE_COLUMNS]; /* log_judgement.c; read once */
	bool evidence_placed;
	int64_t data_version;
	int watch;                       /* of the -wal; -1: none (log_watch.c) */
	bool unchecked;                  /* opened by LOG_BOARD and not checked yet */
	char damage[SENTENCE_MAX_BYTES]; /* what the check said of it; "": nothing */
	bool opening;                    /* what is damaged is told bare: log_open makes the sentence */
	bool unclean;                    /* the last end left a -wal; see log_beside.c */
	bool without_wal;                /* in use when it was copied, and no -wal beside it */
	bool unsynced;                   /* a sync failed and none has succeeded since */
	struct stands stands[STANDS_FILES];
	const char *lost;          /* what happened to the open file; NULL: it stands */
	const char *lost_file;     /* ending of the file it happened to */
	struct copy_end backed_up; /* what the newest backup ends with */
	char backed_up_as[COPY_NAME_MAX];
	bool backed_up_known;
	char notice[SENTENCE_MAX_BYTES]; /* what the person should know of this opening */
};

/* --- query.c --- */

/* Make a statement ready, if it is not yet. SQLITE_OK or what is wrong. */
int log_prepare(struct log *log, enum statement which);

/* --- log_fault.c --- */

/* The tail of a path that still fits a sentence. */
const char *path_shown(const char *path);

/* Turn an SQLite result code of this connection into a fault. */
bool log_fault(struct log *log, int rc, struct fault *fault);

/* Turn errno into a fault about `path`; `doing` completes "could not ...". */
bool system_fault(const char *path, const char *doing, int error, struct fault *fault);

/* --- connection.c --- */

/* A connection to `path`, never mistaken for a special name or a URI. */
int connection_open(const char *path, int flags, sqlite3 **db);
/* A connection that leaves a log and what lies beside it as they are. */
int connection_look(const char *path, sqlite3 **db);
/* Nothing is written through it. */
bool only_looks(const struct log *log);
/* The one integer a PRAGMA or SELECT answers; an SQLite code otherwise. */
int connection_integer(sqlite3 *db, const char *sql, int64_t *out);
/* quick_check (or integrity_check when `thorough`) and foreign_key_check.
 * SQLITE_OK, SQLITE_CORRUPT with the first complaint in `why`, or another code. */
int connection_check(sqlite3 *db, bool thorough, char *why, size_t size);
/* The first column of the first row as text; "" when there is no row. */
int connection_text(sqlite3 *db, const char *sql, char *buffer, size_t size);
int hold_checkpoints(sqlite3 *db, bool hold);
/* Read-only and as it lies there, whatever lies beside it. */
int open_immutable(const char *path, sqlite3 **db);

/* --- stands.c --- */

/* PATH and ending, malloc'ed; NULL with a fault. */
char *with_ending(const char *path, const char *ending, struct fault *fault);
/* Bytes of PATH and ending; -1: not there. */
int64_t side_file_bytes(const char *path, const char *ending);
/* Remember the files that are open now, for log_stands. */
void stands_remember(struct log *log);
/* A commit's sync failed: says so, always false. */
bool sync_failed(struct log *log, struct fault *fault);

/* --- paths.c --- */

/* Three texts in a row, malloc'ed; NULL without memory. */
char *joined(const char *first, const char *second, const char *third);
/* Write a folder's entries to the disk. */
bool folder_sync(const char *path_inside, struct fault *fault);
/* The folder of `path`, malloc'ed: "." when it names none. */
char *folder_of(const char *path);

/* --- log_open.c --- */

/* log_open with other layouts than those baked in: how a test tries a migration.
 * `layouts` must live as long as the log. */
bool log_open_laid_out(const char *path, enum log_mode mode, const struct layouts *layouts, struct log **out,
                       struct fault *fault);

/* --- log_watch.c --- */

/* Watch the -wal from now on, where the system can. */
void watch_open(struct log *log);
void watch_close(struct log *log);

/* --- log_beside.c --- */

/* Before SQLite reads: what a -wal beside the log is, whether the log's end is there.
 * Puts a stray -wal aside (only looking: refuses), sets log->unclean and
 * log->without_wal. FAULT_DAMAGED is told bare. */
bool beside_look(struct log *log, struct fault *fault);

/* The first name PATH ending-1, PATH ending-2 ... that is free, with its -wal; malloc'ed. */
char *name_free(const char *path, const char *ending, struct fault *fault);

/* --- log_schema.c --- */

/* Is the log laid out as layout `version` says, and by nothing else? FAULT_DAMAGED,
 * told bare: what is there that no log of ours has, or what is missing. */
bool schema_is_ours(struct log *log, int64_t version, struct fault *fault);

/* --- log_migrate.c --- */

/* Lay out an empty database as layout `version` says. An SQLite code. */
int layout_make(sqlite3 *db, const struct layouts *layouts, int64_t version);

/* Lay out an empty file (version 0), or bring an older log up to the newest of
 * log->layouts. A failure leaves the file as it was. */
bool log_migrate(struct log *log, int64_t version, struct fault *fault);

/* A malloc'ed copy of a layout's text without the keyword STRICT, which SQLite
 * knows from 3.37 on; NULL when there is no memory. */
char *layout_without_strict(const char *sql); /* public for its test */

/* --- log_backup.c --- */

#define LOG_FILE_MODE 0600 /* what a family preserves, gives away and is ill from is theirs */
#define COPY_PART ".part-" /* and the process number: a copy not finished yet */

/* "2026-09-14", the UTC day of an instant. */
void backup_day(int64_t wall_ms, char *buffer, size_t size);

/* A whole, checked and synced copy of an open database under `target`, which is
 * replaced in one step. `from` names the source in a sentence. */
bool backup_copy(sqlite3 *db, const char *from, const char *target, struct fault *fault);

/* PATH.backups/NAME, made if missing. malloc'ed; NULL with a fault. */
char *backup_path(const char *path, const char *name, struct fault *fault);

/* The newest entry of an open database; an SQLite code. */
int copy_end_of(sqlite3 *db, struct copy_end *end);

/* --- log_copies.c --- */

/* The newest backup of `path` that opens whole; false when there is none. */
bool backup_newest_whole(const char *path, char *found, size_t size);

/* The copy that by its name holds most, and what it ends with; zeros when there is none. */
void copies_last(const char *path, struct copy_end *end, char name[COPY_NAME_MAX]);

/* Is that one still there? */
bool copies_have(const char *path, const char *name);

/* "2026-09-14_183000_412.db": made then (UTC), its newest entry is number 412. */
void copy_name(int64_t wall_ms, int64_t entry, char *buffer, size_t size);

/* Half copies of processes that are no more. */
void copies_clear_parts(const char *path);

/* After one was made: thin out by age, clear away what dead processes left. */
void copies_tidy(const char *path, const char *just_made, int64_t wall_ms);

/* The backups that hold more than entry `end` are of a past that was gone back from:
 * they stay under another name and are offered last. */
void copies_set_aside(const char *path, int64_t end);

/* Looks into one file. -1 in end->entry: it cannot be read. */
void copy_look_into(const char *file, struct copy_end *end, bool *whole);

/* --- log_act.c --- */

/* True inside an act that can still be committed. */
bool act_is_open(struct log *log, struct fault *fault);

/* Capture, journal, COMMIT; the act is over either way. */
bool act_finish(struct log *log, struct log_entry *entry, struct fault *fault);

/* --- log_journal.c --- */

/* Has the newest entry all its words and a changeset that can be read? */
bool newest_entry_is_whole(struct log *log, struct fault *fault);

/* --- log_season.c --- */

/* The first instant of a year, from 1 to 10000, UTC. */
int64_t season_began_ms(int season);

#endif
