/*
 * commands.h - every command of the program, and the answer to the words of the command line.
 */
#ifndef STILLROOM_REPORT_COMMAND_COMMANDS_H
#define STILLROOM_REPORT_COMMAND_COMMANDS_H

#include "report/cli/command.h"
#include "report/out/answer.h"

extern const struct commands *const commands[]; /* file by file, NULL after the last: for command_at() */

/* The words of the command line, answered on standard output: gives the exit status, 0 done,
 * 1 failed, 2 not understood (both with a sentence on standard error), 3 refused (the sentence
 * is the answer).  An answer that did not arrive whole is a failure. */
int commands_answer(int argc, char **argv, const struct full_screen *screen);

#endif
