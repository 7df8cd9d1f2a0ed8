/*
 * keeper.h - a process beside the board that checks or copies the log.
 *
 * It is this same program, started anew with a word that no person types, and has a
 * connection of its own: a connection must not be carried over a fork (SQLite
 * documentation, howtocorrupt.html).  It only reads the log.  Over a copy it holds one read
 * transaction: in a -wal a reader holds up no writer, and the backup API begins again only
 * when its source has changed between two steps.  It says how it went in one struct through
 * a pipe; whoever ends without that has died.  A second pipe tells it that the board has
 * gone: then it ends, too.
 */
#ifndef STILLROOM_KITCHEN_FILE_KEEPER_H
#define STILLROOM_KITCHEN_FILE_KEEPER_H

#include <stdbool.h>
#include <stdint.h>
#include <sys/types.h>

#include "base/fault.h"

#define KEEPER_WORD "keep-log" /* the first word of its command line */

enum keeper_job {
	KEEPER_CHECK,  /* log_check */
	KEEPER_BACKUP, /* log_backup */
	KEEPER_JOB_COUNT,
};

struct keeper {
	pid_t pid; /* 0: none is running */
	int news;  /* what it says can be read here, and its end; -1 */
	int life;  /* open as long as we live; -1 */
	enum keeper_job job;
};

enum keeper_end {
	KEEPER_RUNS,
	KEEPER_DONE, /* the job is done, or it could not be and *fault has why */
	KEEPER_DIED, /* it ended without a word; *fault says how */
};

void keeper_init(struct keeper *keeper);

/* Start `program` on the log `path`.  A backup is named by wall_ms.  FAULT_IO, FAULT_MEMORY:
 * it cannot be started.  None may be running. */
bool keeper_start(struct keeper *keeper, const char *program, enum keeper_job job, const char *path, int64_t wall_ms,
                  struct fault *fault);

/* How is it?  Never waits.  When it has ended, it is collected; KEEPER_DONE with
 * FAULT_NONE in *fault: all is well. */
enum keeper_end keeper_look(struct keeper *keeper, struct fault *fault);

/* End it and wait until it has ended; nothing when none is running. */
void keeper_stop(struct keeper *keeper);

/* The words of a keeper's command line: false for any other command line. */
bool keeper_asked(int argc, char *const argv[]);
/* What the keeper itself does; the exit status. */
int keeper_main(char *const argv[]);

#endif
