/*
 * answer_command.c - words in, answer and exit status out.
 */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "kitchen/file/open_day.h"
#include "report/cli/plain.h"
#include "report/command/commands.h"
#include "report/house/log_path.h"

enum status { STATUS_DONE, STATUS_FAILED, STATUS_MISUSE, STATUS_REFUSED };

static enum status status_of(const struct fault *fault)
{
	switch (fault->kind) {
	case FAULT_MISUSE: return STATUS_MISUSE;
	case FAULT_REFUSED: return STATUS_REFUSED;
	default: return STATUS_FAILED;
	}
}

static void complain(const struct command *command, const struct fault *fault)
{
	(void)fputs("stillroom: ", stderr);
	plain_put(stderr, fault->sentence);
	if (fault->kind == FAULT_MISUSE)
		(void)fprintf(stderr, " (help: stillroom %s%s--help)", command->word,
		              command->word[0] == '\0' ? "" : " ");
	(void)fputc('\n', stderr);
}

/* --- one command ------------------------------------------------------------------------- */

static bool needs_log(const struct arguments *arguments)
{
	for (int i = 0; i < OPTION_COUNT; i++)
		if (arguments->given[i] && (arguments->command->without_log & (UINT64_C(1) << i)) != 0)
			return false;
	return arguments->command->log != COMMAND_NO_LOG;
}

/* *day stays NULL where no open log is needed. */
static bool ready_log(struct arguments *arguments, struct day **day, struct fault *fault)
{
	enum command_log log = arguments->command->log;
	bool writes = log == COMMAND_LOG_WRITTEN && arguments->given[OPTION_YES];

	if (!needs_log(arguments))
		return true;
	if (!log_path_find(arguments, arguments->log_path, sizeof(arguments->log_path), fault))
		return false;
	return log == COMMAND_LOG_NAMED || report_open(arguments->log_path, writes ? LOG_CREATE : LOG_LOOK, day, fault);
}

static bool run(struct arguments *arguments, struct report *to, struct fault *fault)
{
	const struct command *command = arguments->command;
	struct day *day = NULL;
	bool done;

	if (command->check != NULL && !command->check(arguments, to, fault))
		return false;
	if (!ready_log(arguments, &day, fault))
		return false;
	done = command->run(arguments, day, to, fault);
	day_close(day);
	return done;
}

/* A refusal is what was asked for; anything else is told beside it. */
static enum status answer(struct arguments *arguments, struct report *to)
{
	struct fault fault = { .kind = FAULT_NONE };
	enum status status;

	if (arguments->given[OPTION_HELP]) {
		arguments_help(to->out, commands, arguments->command);
		return STATUS_DONE;
	}
	if (arguments->given[OPTION_VERSION]) {
		(void)fputs("stillroom " STILLROOM_VERSION "\n", to->out);
		return STATUS_DONE;
	}
	if (run(arguments, to, &fault))
		return STATUS_DONE;
	status = status_of(&fault);
	if (status != STATUS_REFUSED)
		complain(arguments->command, &fault);
	else if (!to->told)
		report_refusal(to, &fault);
	return status;
}

/* --- in and out ----------------------------------------------------------------------------- */

/* An answer that did not arrive whole is no answer. */
static enum status close_output(enum status status)
{
	bool whole = ferror(stdout) == 0;
	int why = 0;

	if (fclose(stdout) != 0) {
		why = errno;
		whole = false;
	}
	if (whole)
		return status;
	(void)fprintf(stderr, "stillroom: the answer could not be written in full%s%s\n", why != 0 ? ": " : "",
	              why != 0 ? strerror(why) : ""); /* NOLINT(concurrency-mt-unsafe) */
	return STATUS_FAILED;
}

int commands_answer(int argc, char **argv, const struct full_screen *screen)
{
	struct report to = { .out = stdout, .screen = screen };
	struct arguments arguments;
	struct fault fault = { .kind = FAULT_NONE };

	if (!arguments_read(argc, argv, commands, &arguments, &fault)) {
		complain(arguments.command, &fault);
		return STATUS_MISUSE;
	}
	to.json = arguments.given[OPTION_JSON];
	return (int)close_output(answer(&arguments, &to));
}
