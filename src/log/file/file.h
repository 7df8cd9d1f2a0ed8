/*
 * file.h - the one file that remembers everything: opening, checking, copying.
 *
 * A `struct log` is one connection to one SQLite file (WAL, synchronous=FULL,
 * foreign keys on).  It hands out typed rows, never a statement.  One process
 * writes at a time; a second terminal may look on and write in turn.  All SQL of the
 * program is in src/log.
 *
 * The header of the file says how it was left: bytes 18 and 19 are 2 while a board has it
 * open, 1 after a clean end and in every backup.  What a -wal beside it is then stands in
 * the table of log_beside.c.  Who only looks never checkpoints.  The open files are looked
 * at by stat() and never opened beside SQLite, which would drop its locks.
 *
 * A board opens with LOG_BOARD, unchecked, since to check reads the whole log; that is done
 * beside it (kitchen/file/upkeep.h).  An import and a setup check before they write, in
 * their own process.
 * Errors: FAULT_* kinds of base/fault.h.
 */
#ifndef STILLROOM_LOG_FILE_FILE_H
#define STILLROOM_LOG_FILE_FILE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/file.h"

#define LOG_APPLICATION_ID 0x53746c72 /* "Stlr", header offset 68 of the file */
#define LOG_BUSY_MS 250               /* longest wait for another writer; the key loop must not hang */

struct log;

/* Open, check identity (application_id, user_version), integrity (quick_check,
 * foreign_key_check; after an unclean end integrity_check) and migrate.  Faults: FAULT_MISSING, FAULT_NOT_OURS,
 * FAULT_NEWER, FAULT_OLDER (laid out before the first release), FAULT_READ_ONLY,
 * FAULT_DISK_FULL, FAULT_DAMAGED (the sentence names the newest backup that opens
 * whole, if there is one), FAULT_BUSY, FAULT_IO, FAULT_MEMORY.  *out is NULL on failure.  A
 * missing or emptied log that has backups is not begun again by LOG_CREATE and LOG_BOARD
 * (FAULT_MISSING, FAULT_DAMAGED, naming the backup).  Before a migration the log is copied to
 * PATH.backups/DAY_before_N.db, which stays. */
bool log_open(const char *path, enum log_mode mode, struct log **out, struct fault *fault);
void log_close(struct log *log); /* NULL is allowed */
const char *log_path(const struct log *log);

/* What the person should know of this opening ("" when nothing): a -wal that is not
 * the log's own was put aside, or the log was copied while a board had it open. */
const char *log_notice(const struct log *log);

/* Do the files that were opened still stand under their names? Asked before each act
 * and each commit, and to be asked once a minute. FAULT_UNSAFE: one was removed, replaced
 * or cut short; so it stays then. */
bool log_stands(struct log *log, struct fault *fault);

/* And after a sync that failed: does the disk take one again?  FAULT_UNSAFE: not yet.
 * FAULT_DAMAGED: the check found the log damaged. */
bool log_is_safe(struct log *log, struct fault *fault);

/* True when another connection has committed since the last call (and on the
 * first call): read everything again. */
bool log_changed_elsewhere(struct log *log);

/* A descriptor that can be read when somebody, this process too, has written to a log opened
 * by LOG_BOARD; -1: the system tells nothing, ask log_changed_elsewhere now and then. */
int log_watch(const struct log *log);

/* Has somebody, since the last call? */
bool log_watch_take(struct log *log);

/* Is every page and every index as it should be, as they stand at this moment?  Reads the
 * whole file: seconds for a large one, in which other connections go on writing.
 * FAULT_DAMAGED: not; the sentence names the newest good backup, if there is one. */
bool log_check(struct log *log, struct fault *fault);

/* Opened by LOG_BOARD and nobody has told yet how the check went?  Until then acts go to
 * the -wal and nothing of it is moved into the file, not even at the end. */
bool log_is_unchecked(const struct log *log);

/* How it went.  NULL: whole.  Else what log_check said of damage: no act is taken any more
 * (FAULT_DAMAGED) and the file stays as it is.  FAULT_IO and others: it could not be
 * noted, and the log counts as unchecked. */
bool log_checked(struct log *log, const char *damage, struct fault *fault);

/* Was damage told? */
bool log_is_damaged(const struct log *log);

/* Does the -wal hold anything? */
bool log_has_wal(const struct log *log);

/* Backups.  A backup is a whole copy, made by the backup API under a temporary name,
 * checked, fsynced and renamed: PATH.backups/2026-09-14_183000_412.db was made then (UTC)
 * and ends with entry 412 of the journal.  Which one is the newest goes by that entry: a
 * wall clock can be wrong for days.
 *
 * log_backup makes one when anything was recorded since the last; *made tells (may be
 * NULL).  It holds what was committed when it was begun, and other connections go on
 * writing.  They are thinned out by age (the table is in log_copies.c). */
bool log_backup(struct log *log, int64_t wall_ms, bool *made, struct fault *fault);

/* Is all that the log holds in one already? */
bool log_is_backed_up(struct log *log);

/* Another process may have made one: look at the folder before the next. */
void log_backed_up_elsewhere(struct log *log);

/* Clear away what a process that was ended while it copied has left. */
void log_clear_parts(const struct log *log);

/* A checked copy anywhere else.  FAULT_REFUSED: something is there that is not to be
 * replaced. */
bool log_save_copy(struct log *log, const char *target, bool replace, struct fault *fault);

/* The backups of `path`, newest first, those set aside last; malloc'ed.  Each is opened
 * and checked.  How many acts a copy lacks is counted from the log's journal when that can
 * still be read. */
bool log_backups(const char *path, struct log_copy **rows, size_t *count, struct fault *fault);

/* Put a backup in the place of a damaged or missing log, or, if it is named, of a whole
 * one.  `name` is one of PATH.backups or a path; NULL: the newest whole one.  What was
 * there is kept beside it as PATH.damaged-N, with its -wal; backups newer than the one
 * put back are set aside.  No connection may be open.  `used` gets the path of the
 * backup.  FAULT_REFUSED: the log is whole and no name was given; FAULT_BUSY: another
 * process has it open; FAULT_MISSING: no whole backup; FAULT_DAMAGED: that one is not. */
bool log_restore_backup(const char *path, const char *name, char *used, size_t used_size, struct fault *fault);

#endif
