/*
 * commands.h - every command of the program, in one table.
 *
 * What is done with the words, `--help`, what is said of misuse and docs/commands.md come from it.
 * commands[0] is the one without a word: the board.
 *
 * A row has the word, a line of help and more of it, what it needs of a log, its options,
 * those it cannot do without, and its function, `run`, which is declared in the header of its
 * room.  `run` gets the words, the open log and where the answer goes.  A refusal
 * (FAULT_REFUSED) is written as the answer by whoever asked, in JSON too.  Words that can be
 * judged before a log is opened are judged by `check`.  A new option is a row of
 * cli/arguments.c and a name in arguments.h.  JSON begins with json_open_document or
 * log_document_open; a measure is written by json_measure, with its unit.
 */
#ifndef STILLROOM_REPORT_COMMAND_COMMANDS_H
#define STILLROOM_REPORT_COMMAND_COMMANDS_H

#include <stddef.h>

#include "report/cli/arguments.h"
#include "report/out/answer.h"

extern const struct command commands[];
extern const size_t command_count;

/* The words of the command line, answered on standard output: gives the exit status, 0 done,
 * 1 failed, 2 not understood (both with a sentence on standard error), 3 refused (the sentence
 * is the answer).  An answer that did not arrive whole is a failure. */
int commands_answer(int argc, char **argv, const struct full_screen *screen);

#endif
