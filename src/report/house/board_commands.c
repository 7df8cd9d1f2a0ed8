/*
 * board_commands.c - a new log, the board on it, and practice on a log of its own.
 *
 * The board itself is the screen's; report->screen lends it.
 */
#include <errno.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"
#include "kitchen/board/board.h"
#include "kitchen/file/open_day.h"
#include "kitchen/house/house.h"
#include "kitchen/house/new_log.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/house/log_path.h"
#include "report/out/answer.h"

#define PRACTICE_SPEED 60
#define PRACTICE_SPEED_MAX 3600
#define PRACTICE_NAME "/stillroom-practice-XXXXXX.db"
#define PRACTICE_ENDING 3 /* of it: ".db" */

/* --- a new log ----------------------------------------------------------------------- */

static bool make_log(const struct new_log_order *order, struct fault *fault)
{
	bool done = new_log_make(order, fault);

	/* The command was understood; it is the kitchen file that is wrong. */
	if (!done && fault->kind == FAULT_MISUSE)
		fault->kind = FAULT_NOT_OURS;
	return done;
}

static bool setup_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault)
{
	(void)to;
	if (arguments->given[OPTION_PRINT])
		return arguments->operand == NULL ||
		       fault_set(fault, FAULT_MISUSE, "setup --print writes a kitchen file and reads none");
	return arguments->operand != NULL || fault_set(fault, FAULT_MISUSE, "setup needs a KITCHEN_FILE");
}

/* The kitchen of a log, which is only looked at. */
static bool print_kitchen(const struct arguments *arguments, const struct report *to, struct fault *fault)
{
	struct day *day;
	bool done;

	if (!report_open(arguments->log_path, LOG_LOOK, &day, fault))
		return false;
	done = kitchen_setup_print(day_kitchen(day), to->out, fault);
	day_close(day);
	return done;
}

static bool setup_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct new_log_order order = { .path = arguments->log_path, .kitchen_file = arguments->operand };

	(void)day;
	if (arguments->given[OPTION_PRINT])
		return print_kitchen(arguments, to, fault);
	if (!make_log(&order, fault))
		return false;
	(void)fputs("The log is ready: ", to->out);
	plain_put(to->out, arguments->log_path);
	(void)fputc('\n', to->out);
	return true;
}

/* --- practice ---------------------------------------------------------------------------- */

static bool file_has_content(const char *path)
{
	struct stat status;

	return stat(path, &status) == 0 && status.st_size > 0;
}

/* A practice log from before goes on as it is; a real log never becomes one. */
static bool check_scratch(const struct arguments *arguments, const char *path, struct fault *fault)
{
	struct day *day;
	int speed;

	if (arguments->given[OPTION_KITCHEN] || arguments->given[OPTION_SPEED])
		return fault_set(fault, FAULT_REFUSED,
		                 "%s already exists and continues as it is: leave out --kitchen and --speed", path);
	if (!day_open(path, LOG_LOOK, &day, fault))
		return false;
	speed = kitchen_board(day_kitchen(day))->house.practice_speed;
	day_close(day);
	return speed > 0 || fault_set(fault, FAULT_REFUSED, "%s is a real log: practice needs one of its own", path);
}

/* An empty file of a name nobody else has. */
static bool name_scratch(char *path, size_t size, struct fault *fault)
{
	const char *folder = getenv("TMPDIR"); /* NOLINT(concurrency-mt-unsafe): one thread */
	struct text text = text_over(path, size);
	int fd;

	text_add(&text, "%s%s", folder != NULL && folder[0] != '\0' ? folder : "/tmp", PRACTICE_NAME);
	if (text.cut)
		return fault_set(fault, FAULT_IO, "the path in TMPDIR is too long");
	fd = mkstemps(path, PRACTICE_ENDING);
	if (fd < 0)
		return fault_set(fault, FAULT_IO, "%s cannot be created: %s", path,
		                 strerror(errno)); /* NOLINT(concurrency-mt-unsafe) */
	(void)close(fd);
	return true;
}

static bool make_scratch(const struct arguments *arguments, const char *path, struct fault *fault)
{
	char real[LOG_PATH_BYTES];
	struct new_log_order order = {
		.path = path,
		.kitchen_file = arguments->value[OPTION_KITCHEN],
		.practice_speed = PRACTICE_SPEED,
	};

	if (!whole_read(arguments->value[OPTION_SPEED], "a speed", 1, PRACTICE_SPEED_MAX, &order.practice_speed, fault))
		return false;
	if (order.kitchen_file == NULL) {
		if (!log_path_find(arguments, real, sizeof(real), fault))
			return false;
		if (!arguments->given[OPTION_FILE] && !file_has_content(real))
			return fault_set(fault, FAULT_MISSING,
			                 "there is no log yet to copy the kitchen from: name one with -f, or a "
			                 "kitchen file with --kitchen");
		order.copy_from = real;
	}
	return make_log(&order, fault);
}

static bool prepare_scratch(const struct arguments *arguments, char *path, size_t size, struct fault *fault)
{
	if (!arguments->given[OPTION_SCRATCH]) {
		if (!name_scratch(path, size, fault))
			return false;
		if (make_scratch(arguments, path, fault))
			return true;
		(void)unlink(path);
		return false;
	}
	if (!text_copy(path, size, arguments->value[OPTION_SCRATCH]))
		return fault_set(fault, FAULT_IO, "the path of the practice log is too long");
	return file_has_content(path) ? check_scratch(arguments, path, fault) : make_scratch(arguments, path, fault);
}

/* A terminal that takes nothing would hold up the end. */
static bool somebody_reads(void)
{
	struct pollfd out = { .fd = STDOUT_FILENO, .events = POLLOUT };

	return poll(&out, 1, 0) > 0 && (out.revents & POLLOUT) != 0;
}

static bool practise(const struct arguments *arguments, const char *path, struct report *to, struct fault *fault)
{
	bool again = false; /* whoever practises does not begin another practice */
	bool done = to->screen->board(arguments, path, true, &again, fault);

	if (!somebody_reads())
		return done;
	(void)fputs("The practice log is kept. To continue with it: stillroom rehearse --scratch ", to->out);
	plain_put(to->out, path);
	(void)fputc('\n', to->out);
	return done;
}

/* It finds the log to copy the kitchen from by itself, where one is needed. */
static bool rehearse_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	char path[LOG_PATH_BYTES];

	(void)day;
	return prepare_scratch(arguments, path, sizeof(path), fault) && practise(arguments, path, to, fault);
}

/* --- the board ------------------------------------------------------------------------- */

/* With the stations of the log, from its board. */
static bool practise_on(const struct arguments *arguments, struct report *to, struct fault *fault)
{
	char path[LOG_PATH_BYTES];
	struct new_log_order order = {
		.path = path,
		.copy_from = arguments->log_path,
		.practice_speed = PRACTICE_SPEED,
	};

	return name_scratch(path, sizeof(path), fault) && make_log(&order, fault) &&
	       practise(arguments, path, to, fault);
}

static bool board_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	bool rehearse;

	(void)day;
	do {
		rehearse = false;
		if (!to->screen->board(arguments, arguments->log_path, false, &rehearse, fault))
			return false;
	} while (rehearse && practise_on(arguments, to, fault));
	return !rehearse; /* the practice that could not be */
}

static const struct command listed[] = {
	{
	    .word = "",
	    .help = "Timer board and log for big preserving days: opens the board on the usual log",
	    .more = "Exit status: 0 done; 1 something failed, 2 not understood, both said on standard error;\n"
	            "3 refused, and why is the answer on standard output, as text or with --json as JSON.\n",
	    .takes = TAKES(FILE) | TAKES(ASCII) | TAKES(NO_COLOR),
	    .log = COMMAND_LOG_NAMED,
	    .run = board_command,
	},
	{
	    .word = "setup",
	    .operand = "[KITCHEN_FILE]",
	    .help = "make a new log from the description of a kitchen, or write one of a log",
	    .more = "An example of a kitchen file is demo/quince-hollow.kitchen. It is all\n"
	            "or nothing: one wrong line, and no log is made.\n"
	            "With --print and no file the kitchen of the log as it is now is written as such\n"
	            "a file, from which setup makes the same kitchen in a new log.\n",
	    .takes = TAKES(FILE) | TAKES(PRINT),
	    .log = COMMAND_LOG_NAMED,
	    .check = setup_command_check,
	    .run = setup_command,
	},
	{
	    .word = "rehearse",
	    .help = "practice on a fast clock, in a log of its own",
	    .more = "The kitchen comes from --kitchen, else from the log that -f names, else from the\n"
	            "usual log; these are only read. Without --scratch the practice log is a new file in\n"
	            "$TMPDIR.\n",
	    .takes = TAKES(FILE) | TAKES(ASCII) | TAKES(NO_COLOR) | TAKES(KITCHEN) | TAKES(SCRATCH) | TAKES(SPEED),
	    .log = COMMAND_NO_LOG,
	    .run = rehearse_command,
	},
};

const struct commands board_commands = COMMANDS(listed);
