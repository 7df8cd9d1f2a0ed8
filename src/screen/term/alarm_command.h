/*
 * alarm_command.h - the user's own command, run when an alarm sounds.
 *
 * The command is a list of arguments from the configuration and is started
 * without a shell; nothing of an alarm ever becomes part of the list.  What the
 * alarm is about arrives in the environment, byte for byte as it was typed:
 *
 *   STILLROOM_ALARM    the kind of alarm
 *   STILLROOM_STATION  the station's name
 *   STILLROOM_PRODUCT  what it holds
 *   STILLROOM_ACT      what to do now, in words
 *
 * Its stdin, stdout and stderr are /dev/null, its signals are the defaults and
 * it is a process group of its own, so that Ctrl-C at the board does not reach
 * it.  It is never waited for: a command that hangs delays nothing, it only is
 * not started again for the same kind of alarm.  It outlives the board.
 */
#ifndef STILLROOM_SCREEN_TERM_ALARM_COMMAND_H
#define STILLROOM_SCREEN_TERM_ALARM_COMMAND_H

#include <stdbool.h>

#include "base/fault.h"

#define ALARM_COMMAND_KINDS 16 /* kinds 0..15, numbered by the caller */

struct alarm_command;

/* All text UTF-8; NULL stands for "". */
struct alarm_command_news {
	const char *alarm;
	const char *station;
	const char *product;
	const char *act;
};

enum alarm_command_outcome {
	ALARM_COMMAND_STARTED,
	ALARM_COMMAND_NONE,         /* no command is configured */
	ALARM_COMMAND_RUNNING,      /* the last one of this kind has not ended yet */
	ALARM_COMMAND_FAILED,       /* could not be started; *fault filled in, once */
	ALARM_COMMAND_FAILED_AGAIN, /* still cannot be; *fault left alone */
};

/* `argv` ends in NULL and is copied; NULL or empty means no command.  The
 * caller closes *out. */
bool alarm_command_open(const char *const *argv, struct alarm_command **out, struct fault *fault);

/* Forget the command; one that still runs goes on. */
void alarm_command_close(struct alarm_command *command);

enum alarm_command_outcome alarm_command_run(struct alarm_command *command, unsigned kind,
                                             const struct alarm_command_news *news, struct fault *fault);

/* Collect the commands that have ended; call it at every tick.  False, with
 * *fault filled in, the first time one ended with a failure; true otherwise. */
bool alarm_command_reap(struct alarm_command *command, struct fault *fault);

/* How many are running now. */
int alarm_command_running(const struct alarm_command *command); /* public for its test */

#endif
