/*
 * log_private.h - what the files of src/log share and nobody else may see.
 */
#ifndef STILLROOM_LOG_LOG_PRIVATE_H
#define STILLROOM_LOG_LOG_PRIVATE_H

#include <sqlite3.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "log/layout.h"
#include "log/log.h"
#include "log/statements.h"

#define EVIDENCE_COLUMNS 9

struct log {
	sqlite3 *db;
	char *path; /* as the caller gave it */
	enum log_mode mode;
	const struct layouts *layouts;
	sqlite3_stmt *statements[STATEMENT_COUNT]; /* NULL: not asked yet */
	sqlite3_session *session; /* captures the act; NULL outside one */
	bool in_act;
	bool looking; /* between log_look_begin and log_look_end */
	bool act_spoilt; /* a write of this act failed: it may only be abandoned */
	bool version_seen;
	int evidence_place[EVIDENCE_COLUMNS]; /* log_judgement.c; read once */
	bool evidence_placed;
	int64_t data_version;
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

/* --- log_open.c --- */

/* log_open with other layouts than those baked in: how a test tries a migration.
 * `layouts` must live as long as the log. */
bool log_open_laid_out(const char *path, enum log_mode mode, const struct layouts *layouts, struct log **out,
                       struct fault *fault);

/* A connection to `path`, never mistaken for a special name or a URI. */
int connection_open(const char *path, int flags, sqlite3 **db);

/* The one integer a PRAGMA or SELECT answers; an SQLite code otherwise. */
int connection_integer(sqlite3 *db, const char *sql, int64_t *out);

/* quick_check (or integrity_check when `thorough`) and foreign_key_check.
 * SQLITE_OK, SQLITE_CORRUPT with the first complaint in `why`, or another code. */
int connection_check(sqlite3 *db, bool thorough, char *why, size_t size);

/* --- log_migrate.c --- */

/* Lay out an empty file (version 0), or bring an older log up to the newest of
 * log->layouts. A failure leaves the file as it was. */
bool log_migrate(struct log *log, int64_t version, struct fault *fault);

/* A malloc'ed copy of a layout's text without the keyword STRICT, which SQLite
 * knows from 3.37 on; NULL when there is no memory. */
char *layout_without_strict(const char *sql);

/* --- log_backup.c --- */

/* "2026-09-14", the UTC day of an instant. */
void backup_day(int64_t wall_ms, char *buffer, size_t size);

/* The newest backup of `path` that opens whole; false when there is none. */
bool backup_newest_whole(const char *path, char *found, size_t size);

/* A whole, checked and synced copy of an open database under `target`, which is
 * replaced in one step. `from` names the source in a sentence. */
bool backup_copy(sqlite3 *db, const char *from, const char *target, struct fault *fault);

/* PATH.backups/NAME, made if missing. malloc'ed; NULL with a fault. */
char *backup_path(const char *path, const char *name, struct fault *fault);

/* Write a folder's entries to the disk. */
bool folder_sync(const char *path_inside, struct fault *fault);

/* The folder of `path`, malloc'ed: "." when it names none. */
char *folder_of(const char *path);

/* --- log_act.c --- */

/* True inside an act that can still be committed. */
bool act_is_open(struct log *log, struct fault *fault);

/* Capture, journal, COMMIT; the act is over either way. */
bool act_finish(struct log *log, struct log_entry *entry, struct fault *fault);

/* --- log_work.c --- */

/* The full-text search the log uses is a part of SQLite that can be left out. */
bool works_searchable(struct log *log, struct fault *fault);

/* Before a commit: work out anew what the changes of the act, or what a stranger
 * wrote, have made stale. */
bool works_settle(struct log *log, struct fault *fault);

/* --- log_words.c --- */

struct words {
	const char *const *list;
	int count;
};

extern const struct words words_of_place;
extern const struct words words_of_verdict;
extern const struct words words_of_wall;
extern const struct words words_of_mark;
extern const struct words words_of_phase_end;
extern const struct words words_of_jar_state;
extern const struct words words_of_siphoning;
extern const struct words words_of_fate;
extern const struct words words_of_station_kind;
extern const struct words words_of_units;
extern const struct words words_of_juice_state;
extern const struct words words_of_juice_why;
extern const struct words words_of_supply_why;
extern const struct words words_of_tally;
extern const struct words words_of_tick;
extern const struct words words_of_gone;
extern const struct words words_of_trace;
extern const struct words words_of_outcome;
extern const struct words words_of_work;

const char *units_name(enum unit_system units); /* as stored */

#endif
