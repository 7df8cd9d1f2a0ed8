/*
 * backups.h - when copies of the log are made, and what to do when it can hold no more.
 *
 * A copy is made at the opening, at midnight, when a seal round is over, when the last
 * station has become free, on leaving, and whenever something is not in one for an hour.
 * Nothing is copied when nothing was recorded since the last (log/file/file.h).
 */
#ifndef STILLROOM_KITCHEN_FILE_BACKUPS_H
#define STILLROOM_KITCHEN_FILE_BACKUPS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/board/board.h"
#include "log/rows/file.h"

#define BACKUP_BEHIND_MS INT64_C(3600000) /* the longest that an act may be in one file only */
#define BACKUP_RETRY_MS INT64_C(600000)   /* after one that failed */

/* Is it time for one?  Looks at the board as it was read last.  `awake_ms` is real time,
 * also in practice. */
bool kitchen_backup_due(struct kitchen *kitchen, int64_t awake_ms);
/* One is begun, by whomever. */
void kitchen_backup_begun(struct kitchen *kitchen);
/* It was made, or not: it holds the board as it was after so many `reads`. */
void kitchen_backup_ended(struct kitchen *kitchen, int64_t awake_ms, bool made, uint64_t reads);
/* Make one in this process, if anything is not in one.  Faults: those of log_backup. */
bool kitchen_backup(struct kitchen *kitchen, int64_t awake_ms, struct fault *fault);

/* What the person should know of this opening (log_notice), or "". */
const char *kitchen_notice(const struct kitchen *kitchen);

/* Becomes readable when somebody writes to the log, until the next kitchen_refresh; -1: the
 * system tells nothing, kitchen_refresh has to ask. */
int kitchen_log_watch(const struct kitchen *kitchen);
/* How soon kitchen_refresh has to be called again, real ms; KITCHEN_IS_TOLD: when kitchen_log_watch
 * can be read, and once a minute. */
#define KITCHEN_IS_TOLD INT64_MAX
int64_t kitchen_look_again_ms(const struct kitchen *kitchen);

/* Can the open log hold what is done?  FAULT_UNSAFE: no; acts are refused until it can.
 * FAULT_DAMAGED: its check found damage.
 * Asks the disk; to be asked once a minute. */
bool kitchen_log_is_safe(struct kitchen *kitchen, struct fault *fault);
/* Did its check find damage?  So it stays then. */
bool kitchen_log_is_damaged(const struct kitchen *kitchen);
/* Write what stands to a new file, checked.  Faults: those of log_save_copy. */
bool kitchen_save_copy(struct kitchen *kitchen, const char *path, bool replace, struct fault *fault);
/* The backups of a log, and one put in the place of a damaged log: as log_backups and
 * log_restore_backup, with their faults. */
bool backups_list(const char *path, struct log_copy **rows, size_t *count, struct fault *fault);
bool backups_restore(const char *path, const char *name, char *used, size_t used_size, struct fault *fault);

#endif
