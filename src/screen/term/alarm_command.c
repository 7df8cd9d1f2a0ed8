/*
 * alarm_command.c - start the user's command without a shell and forget it.
 */
#include "screen/term/alarm_command.h"

#include <assert.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <sys/wait.h>

#include "kitchen/board/phases.h"
#include "kitchen/file/apart.h"

extern char **environ;

#define OUR_PREFIX "STILLROOM_"
#define OUR_VARIABLES 4

struct alarm_command {
	char **argv;                        /* NULL: no command */
	pid_t running[ALARM_COMMAND_KINDS]; /* 0: none */
	bool told_start;                    /* that it cannot be started */
	bool told_end;                      /* that it ended with a failure */
};

/* ---- Lists of strings ---- */

static void list_free(char **list)
{
	if (!list)
		return;
	for (size_t i = 0; list[i]; i++)
		free(list[i]);
	free(list);
}

static char **list_copy(const char *const *list)
{
	size_t count = 0;

	while (list[count])
		count++;
	char **copy = calloc(count + 1, sizeof(*copy));
	if (!copy)
		return NULL;
	for (size_t i = 0; i < count; i++) {
		copy[i] = strdup(list[i]);
		if (!copy[i]) {
			list_free(copy);
			return NULL;
		}
	}
	return copy;
}

/* ---- Environment ---- */

static char *variable(const char *name, const char *value)
{
	size_t size = strlen(name) + 1 + strlen(value) + 1;
	char *text = malloc(size);

	if (text && snprintf(text, size, "%s=%s", name, value) < 0) {
		free(text);
		return NULL;
	}
	return text;
}

/* The variables of this alarm; false when memory ran out, with what was made
 * already in its place for environment_free(). */
static bool fill_ours(char **ours, const struct alarm_command_news *news)
{
	const char *pairs[OUR_VARIABLES][2] = {
		{ OUR_PREFIX "ALARM", news->alarm },
		{ OUR_PREFIX "STATION", news->station },
		{ OUR_PREFIX "PRODUCT", news->product },
		{ OUR_PREFIX "ACT", news->act },
	};

	for (size_t i = 0; i < OUR_VARIABLES; i++) {
		ours[i] = variable(pairs[i][0], pairs[i][1] ? pairs[i][1] : "");
		if (!ours[i])
			return false;
	}
	return true;
}

/* Only the first OUR_VARIABLES entries are ours; the others belong to environ. */
static void environment_free(char **environment)
{
	for (size_t i = 0; environment && i < OUR_VARIABLES; i++)
		free(environment[i]);
	free(environment);
}

/* Our own variables and everything inherited, except stale ones of our names. */
static char **environment_make(const struct alarm_command_news *news)
{
	size_t inherited = 0;

	while (environ && environ[inherited])
		inherited++;
	char **environment = calloc(OUR_VARIABLES + inherited + 1, sizeof(*environment));
	if (!environment)
		return NULL;
	if (!fill_ours(environment, news)) {
		environment_free(environment);
		return NULL;
	}
	size_t used = OUR_VARIABLES;
	for (size_t i = 0; i < inherited; i++)
		if (strncmp(environ[i], OUR_PREFIX, sizeof(OUR_PREFIX) - 1) != 0)
			environment[used++] = environ[i];
	return environment;
}

/* ---- Starting ---- */

static int redirect(posix_spawn_file_actions_t *actions)
{
	int error = posix_spawn_file_actions_addopen(actions, 0, "/dev/null", O_RDONLY, 0);

	for (int fd = 1; fd <= 2 && error == 0; fd++)
		error = posix_spawn_file_actions_addopen(actions, fd, "/dev/null", O_WRONLY, 0);
	return error;
}

/* Returns 0 or an errno value. */
static int spawn(char **argv, char **environment, pid_t *pid)
{
	posix_spawn_file_actions_t actions;
	int error = posix_spawn_file_actions_init(&actions);

	if (error != 0)
		return error;
	error = redirect(&actions);
	if (error == 0)
		error = start_apart(argv, environment, &actions, pid);
	(void)posix_spawn_file_actions_destroy(&actions);
	return error;
}

/* ---- The public part ---- */

bool alarm_command_open(const char *const *argv, struct alarm_command **out, struct fault *fault)
{
	struct alarm_command *command = calloc(1, sizeof(*command));

	if (command && argv && argv[0]) {
		command->argv = list_copy(argv);
		if (!command->argv) {
			free(command);
			command = NULL;
		}
	}
	if (!command)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to prepare the alarm command.");
	*out = command;
	return true;
}

void alarm_command_close(struct alarm_command *command)
{
	if (!command)
		return;
	list_free(command->argv);
	free(command);
}

static enum alarm_command_outcome failed(struct alarm_command *command, int error, struct fault *fault)
{
	if (command->told_start)
		return ALARM_COMMAND_FAILED_AGAIN;
	command->told_start = true;
	fault_set(fault, error == ENOENT ? FAULT_MISSING : FAULT_IO,
	          "The alarm command %s cannot be started: %s. See alarm_command in the "
	          "configuration.",
	          command->argv[0], strerror(error));
	return ALARM_COMMAND_FAILED;
}

enum alarm_command_outcome alarm_command_run(struct alarm_command *command, unsigned kind,
                                             const struct alarm_command_news *news, struct fault *fault)
{
	pid_t pid = 0;

	assert(kind < ALARM_COMMAND_KINDS);
	if (!command->argv)
		return ALARM_COMMAND_NONE;
	if (command->running[kind] != 0)
		return ALARM_COMMAND_RUNNING;
	char **environment = environment_make(news);
	int error = environment ? spawn(command->argv, environment, &pid) : ENOMEM;
	environment_free(environment);
	if (error != 0)
		return failed(command, error, fault);
	command->running[kind] = pid;
	command->told_start = false;
	return ALARM_COMMAND_STARTED;
}

/* A command stopped by a signal of its own is none of our business, and a
 * status we cannot get (ECHILD) means that somebody else collected it. */
static bool ended_badly(int status)
{
	return WIFEXITED(status) && WEXITSTATUS(status) != 0;
}

bool alarm_command_reap(struct alarm_command *command, struct fault *fault)
{
	int code = 0;

	for (size_t kind = 0; kind < ALARM_COMMAND_KINDS; kind++) {
		int status = 0;
		if (command->running[kind] == 0)
			continue;
		pid_t got = waitpid(command->running[kind], &status, WNOHANG);
		if (got == 0 || (got < 0 && errno == EINTR))
			continue;
		command->running[kind] = 0;
		if (got > 0 && ended_badly(status))
			code = WEXITSTATUS(status);
	}
	if (code == 0 || command->told_end)
		return true;
	command->told_end = true;
	return fault_set(fault, FAULT_IO, "The alarm command %s ended with the failure code %d; try it by hand.",
	                 command->argv[0], code);
}

int alarm_command_running(const struct alarm_command *command)
{
	int count = 0;

	for (size_t kind = 0; kind < ALARM_COMMAND_KINDS; kind++)
		count += command->running[kind] != 0;
	return count;
}
