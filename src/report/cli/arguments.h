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
#include "log/rows/common.h"

/* clang-format off */
#define OPTION_OF_WORK(TAG, word) OPTION_##TAG,
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
	EACH_WORK(OPTION_OF_WORK)
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
/* clang-format on */

#define ELEVATIONS_MAX 32
#define PRODUCTS_MAX 8

#define LOG_PATH_BYTES 4096

struct command;
struct commands;

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
	char log_path[LOG_PATH_BYTES]; /* of commands that need a log; see house/log_path.h */
};

/* Read argv; `all` as in command.h.  False with FAULT_MISUSE;
 * out->command then is the command meant, as far as it was understood.  When
 * help or version is given, nothing is checked to be missing. */
bool arguments_read(int argc, char **argv, const struct commands *const *all, struct arguments *out,
                    struct fault *fault);

/* A whole number in words; FAULT_MISUSE: it is not `what` ("a speed") from least to most.
 * NULL: *out stays. */
bool whole_read(const char *words, const char *what, int least, int most, int *out, struct fault *fault);

/* Help about the program, or about one command when it has a word. */
void arguments_help(FILE *out, const struct commands *const *all, const struct command *about);

#endif
