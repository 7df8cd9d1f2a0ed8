/*
 * command.h - what a command is, and which there are.
 *
 * A command is a row of a table, which stands below its function in a file of its room:
 *
 *	static const struct command listed[] = { { .word = "oldest", .help = ..., .run = report_oldest }, };
 *	const struct commands pantry_commands = COMMANDS(listed);
 *
 * What is done with the words, `--help`, what is said of misuse, docs/commands.md, manual,
 * completion and the tests of every command come from the row.  The files that have such
 * tables are listed in EACH_COMMANDS, in the order of help.  A new option is a row of
 * arguments.c and a name in arguments.h.
 *
 * An answer is one document on a stream, as text for people or as JSON for programs
 * (docs/json.md lists every key).  JSON begins with json_open_document or log_document_open;
 * a measure is written by json_measure, with its unit.  Write errors stay in ferror(to->out).
 */
#ifndef STILLROOM_REPORT_CLI_COMMAND_H
#define STILLROOM_REPORT_CLI_COMMAND_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "report/cli/arguments.h"

struct day;
struct report;

/* What a command needs of a log; whoever runs it sees to that first. */
enum command_log {
	COMMAND_NO_LOG,        /* nothing */
	COMMAND_LOG_NAMED,     /* its path alone: it opens, makes or replaces the log by itself */
	COMMAND_LOG_LOOKED_AT, /* open to look at */
	COMMAND_LOG_WRITTEN,   /* open to be written with --yes, else to look at */
	COMMAND_LOG_COUNT
};

struct command {
	const char *word;    /* "" = the command without a word */
	const char *operand; /* "KITCHEN_FILE": exactly one; "[TO]": one or none; NULL: none */
	const char *second;  /* one more behind it; NULL: none */
	const char *help;    /* one line, for the list of commands */
	const char *more;    /* whole lines, for the help of this one; may be NULL */
	enum command_log log;
	uint64_t takes;       /* its options */
	uint64_t needs;       /* of these, the ones it cannot do without */
	uint64_t without_log; /* with one of these it needs no log */
	/* Judges the words that can be judged before a log is opened; NULL: none. */
	bool (*check)(const struct arguments *arguments, const struct report *to, struct fault *fault);
	/* True: the answer was written.  False with FAULT_REFUSED: tables or log refuse it, and whoever
	 * asked writes the sentence in the place of the answer, in JSON too, unless it was `told`; with any
	 * other: it failed, or the words cannot be read (FAULT_MISUSE), and nothing was written.  `day` is
	 * the open log, NULL where none is needed open. */
	bool (*run)(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
};

#define TAKES(option) (UINT64_C(1) << OPTION_##option)
#define LOOKS (TAKES(FILE) | TAKES(JSON)) /* those of nearly all that look at a log */

/* Those of one file. */
struct commands {
	const struct command *rows;
	size_t count;
};

#define COMMANDS(listed) \
	{ \
		(listed), sizeof(listed) / sizeof((listed)[0]) \
	}

/* clang-format off */
#define EACH_COMMANDS(OF) \
	OF(board) \
	OF(boil) \
	OF(process) \
	OF(foods) \
	OF(loads) \
	OF(warnings) \
	OF(supplies) \
	OF(pantry) \
	OF(seasons) \
	OF(forecast) \
	OF(shortage) \
	OF(plan) \
	OF(labels) \
	OF(export) \
	OF(import) \
	OF(backup)

#define COMMANDS_OF(name) extern const struct commands name##_commands;
EACH_COMMANDS(COMMANDS_OF)
/* clang-format on */

/* The nth of all, file after file; NULL: there are no more.  `all` is `commands` (command/commands.h).
 * The first is the one without a word, the board. */
const struct command *command_at(const struct commands *const *all, size_t nth);
/* NULL: there is no such word.  The board has none. */
const struct command *command_named(const struct commands *const *all, const char *word);

#endif
