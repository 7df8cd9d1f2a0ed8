/*
 * upkeep.h - the log is checked and copied beside the board, never in its loop.
 *
 * After an opening the log is checked; until that says "whole" acts stay in the -wal, and
 * damage stops all acts (log_checked).  Copies are made when backups.h says so.  One at a time, by a keeper
 * (keeper.h); what it says, that it died and that it does not come to an end is told.
 */
#ifndef STILLROOM_KITCHEN_FILE_UPKEEP_H
#define STILLROOM_KITCHEN_FILE_UPKEEP_H

#include <stdbool.h>
#include <stdint.h>
#include <sys/types.h>

#include "kitchen/board/board.h"

#define UPKEEP_LIMIT_MS INT64_C(600000) /* our choice; doubled each time it was not enough */
#define UPKEEP_RETRY_MS INT64_C(600000) /* after a check that failed; a copy: BACKUP_RETRY_MS */

struct upkeep;

/* `program` is started for each job, as keeper_main's; both must outlive the upkeep.
 * FAULT_MEMORY. */
bool upkeep_open(struct kitchen *kitchen, const char *program, struct upkeep **out, struct fault *fault);
/* A job that runs is ended.  NULL is allowed. */
void upkeep_close(struct upkeep *upkeep);

/* What has become of the job that runs?  False: *fault is to be told.  Never waits.
 * `awake_ms` is real time, also in practice. */
bool upkeep_look(struct upkeep *upkeep, int64_t awake_ms, struct fault *fault);
/* Start what is due, if nothing runs.  False: it cannot be started. */
bool upkeep_start(struct upkeep *upkeep, int64_t awake_ms, struct fault *fault);

bool upkeep_runs(const struct upkeep *upkeep); /* public for its test */
pid_t upkeep_pid(const struct upkeep *upkeep); /* of the process that does, for tests to kill; 0: none */
/* Becomes readable when upkeep_look has something to see; -1: nothing runs. */
int upkeep_fd(const struct upkeep *upkeep);

/* On leaving: what was recorded is checked and in a copy when this returns true.  `tell` is
 * called with a sentence before a wait that is felt.  False: *fault has why not. */
bool upkeep_finish(struct upkeep *upkeep, void (*tell)(const char *sentence), struct fault *fault);

#endif
