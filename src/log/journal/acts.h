/*
 * acts.h - acts, their undo and their story.
 *
 * Every change is an act: log_begin, some log_put_... calls, then log_commit with a
 * journal entry, or log_abandon.  The changes of the act are captured by SQLite's
 * session extension and stored beside the journal entry in the same transaction: either
 * all of it is on the disk when log_commit returns true, or none of it is.  log_undo
 * applies the inverse of an act, and is an act itself: it can be undone, too.  The journal
 * is never updated or deleted, which triggers of schema/log.sql see to.  After any fault
 * inside an act call log_abandon.
 *
 * A table whose rows acts change stands in the list of log_act.c, children first.
 */
#ifndef STILLROOM_LOG_JOURNAL_ACTS_H
#define STILLROOM_LOG_JOURNAL_ACTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/common.h"
#include "log/rows/journal.h"

struct log;

/* Where an entry has the id of such a subject; NULL: nowhere, it is the house. */
int64_t *log_entry_id(struct log_entry *entry, enum subject_kind kind);
bool log_begin(struct log *log, struct fault *fault); /* BEGIN IMMEDIATE */

/* The loads and batches whose evidence the open act has touched so far: a row of
 * theirs, of a phase, jar, lot or mark of theirs was written or taken away, and they are
 * still there; malloc'ed, each once. */
bool log_touched(struct log *log, struct log_subject **rows, size_t *count, struct fault *fault);
bool log_commit(struct log *log, struct log_entry *entry, struct fault *fault);
/* In the place of log_commit: what is no act's and has no entry (plan_said).  Refused, and nothing of it
 * on the disk, when a row that acts capture was changed. */
bool log_commit_unjournaled(struct log *log, struct fault *fault);
void log_abandon(struct log *log);

/* Undo act `id` (which may itself be an undo: that makes a redo) as a new act.
 * `entry` carries at, who, verb, station and work of the new act; undoes_id is set
 * here (an act that was undone and redone is undone through its redo).  FAULT_CONFLICT when rows the act touched have changed
 * since or the result would break a rule of the schema; nothing is changed then.
 * FAULT_MISSING when there is no such act or it has been undone already.  The kitchen takes
 * the two steps below; in one it is for tests. */
bool log_undo(struct log *log, int64_t id, struct log_entry *entry, struct fault *fault);

/* The same in two steps, for who must look at the rows before they are committed: after
 * the first the act is open, and ends by the second or by log_abandon.  `called`: how a
 * refusal begins, "It" or the act's sentence in quotation marks. */
bool log_undo_begin(struct log *log, int64_t id, const char *called, struct log_entry *entry, struct fault *fault);
bool log_undo_commit(struct log *log, struct log_entry *entry, struct fault *fault);

/* What an undo or a redo would take back about a subject.  Undos form chains:
 * act A, its undo U (undoes A), a redo R (undoes U), the next undo (undoes R) ...
 * The newest link of a chain, the one nobody has undone, is its tip; at an even
 * depth (A, R) the act is in force, at an odd depth (U) it is taken back.
 *   undone = false: the newest tip of even depth: log_undo of it is an undo.
 *   undone = true:  the newest tip of odd depth, provided no fresh act (one with
 *                   undoes_id 0) about that subject is newer: log_undo of it is
 *                   a redo.
 * FAULT_MISSING: there is none.  SUBJECT_HOUSE: acts about no station, load, run
 * or batch. */
bool log_last_act(struct log *log, struct log_subject subject, bool undone, struct log_entry *out, struct fault *fault);

/* Of the house, the newest tip of even depth whose id is below that one (INT64_MAX: of all). */
bool log_house_act_before(struct log *log, int64_t id, struct log_entry *out, struct fault *fault);

/* The act that the chain of undos and redos of entry `id` began with; itself when
 * it is no undo.  FAULT_MISSING: no such entry. */
bool log_root_act(struct log *log, int64_t id, struct log_entry *out, struct fault *fault);

/* FAULT_MISSING: no such entry. */
bool log_entry_get(struct log *log, int64_t id, struct log_entry *out, struct fault *fault);

/* The story of a subject, oldest first. */
bool log_story(struct log *log, struct log_subject subject, struct log_entry **rows, size_t *count,
               struct fault *fault);

/* The newest entry of the whole journal; FAULT_MISSING on an empty journal. */
bool log_newest_entry(struct log *log, struct log_entry *out, struct fault *fault);

#endif
