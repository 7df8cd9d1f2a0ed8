/*
 * arguments.h - the words of the command line, read by tables.
 *
 * Options are those of the program as a whole and may stand anywhere; each
 * command names the ones it takes, and any other is misuse.  GNU style: long
 * options may be shortened while they stay unambiguous, "--" ends them.
 */
#ifndef STILLROOM_REPORT_CLI_ARGUMENTS_H
#define STILLROOM_REPORT_CLI_ARGUMENTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include "base/fault.h"

enum option_name {
	OPTION_FILE,
	OPTION_JSON,
	OPTION_ASCII,
	OPTION_NO_COLOR,
	OPTION_ELEVATION,
	OPTION_BAROMETER,
	OPTION_MEASURED,
	OPTION_FOOD,
	OPTION_PACK,
	OPTION_JAR,
	OPTION_METHOD,
	OPTION_PRESSURE,
	OPTION_ALL,
	OPTION_SINCE,
	OPTION_FRUIT,
	OPTION_WEIGHT,
	OPTION_PRODUCT,
	OPTION_WANT,
	OPTION_IN_POT,
	OPTION_JUICE_IN_STOCK,
	OPTION_LOT,
	OPTION_LID_BOX,
	OPTION_LOAD,
	OPTION_BATCH,
	OPTION_RUN,
	OPTION_DRYING,
	OPTION_DAY,
	OPTION_RULES,
	OPTION_KITCHEN,
	OPTION_SCRATCH,
	OPTION_SPEED,
	OPTION_FORMAT,
	OPTION_OUT,
	OPTION_EVERY_JAR,
	OPTION_PAGE,
	OPTION_GRID,
	OPTION_MARGIN,
	OPTION_GAP,
	OPTION_COPIES,
	OPTION_START,
	OPTION_TABLE,
	OPTION_SCHEMA,
	OPTION_YES,
	OPTION_PRINT,
	OPTION_HELP,
	OPTION_VERSION,
	OPTION_COUNT
};

#define TAKES(option) (UINT64_C(1) << OPTION_##option)
#define ELEVATIONS_MAX 32
#define PRODUCTS_MAX 8

#define LOG_PATH_BYTES 4096

struct arguments;
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
	/* True: done.  False with FAULT_REFUSED: refused; with any other: it failed, or the words
	 * cannot be read (FAULT_MISUSE).  `day` is the open log, NULL where none is needed open. */
	bool (*run)(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
};

struct arguments {
	const struct command *command; /* never NULL once read */
	bool given[OPTION_COUNT];
	const char *value[OPTION_COUNT];        /* NULL: not given, or without a value; points into argv */
	const char *elevations[ELEVATIONS_MAX]; /* all of them, in their order */
	size_t elevation_count;
	const char *products[PRODUCTS_MAX]; /* all of them, in their order */
	size_t product_count;
	const char *operand; /* NULL: none */
	const char *second;
	char log_path[LOG_PATH_BYTES]; /* of commands that need a log; see command/log_path.h */
};

/* Read argv; `commands[0]` is the one without a word.  False with FAULT_MISUSE;
 * out->command then is the command meant, as far as it was understood.  When
 * help or version is given, nothing is checked to be missing. */
bool arguments_read(int argc, char **argv, const struct command *commands, size_t count, struct arguments *out,
                    struct fault *fault);

/* A whole number in words; FAULT_MISUSE: it is not `what` ("a speed") from least to most.
 * NULL: *out stays. */
bool whole_read(const char *words, const char *what, int least, int most, int *out, struct fault *fault);

/* Help about the program, or about one command when it has a word. */
void arguments_help(FILE *out, const struct command *commands, size_t count, const struct command *about);

#endif
