/*
 * command.c - see command.h: one of all commands.
 */
#include "report/cli/command.h"

#include <string.h>

const struct command *command_at(const struct commands *const *all, size_t nth)
{
	for (; *all != NULL; all++) {
		if (nth < (*all)->count)
			return &(*all)->rows[nth];
		nth -= (*all)->count;
	}
	return NULL;
}

const struct command *command_named(const struct commands *const *all, const char *word)
{
	const struct command *command;

	for (size_t i = 1; (command = command_at(all, i)) != NULL; i++)
		if (strcmp(command->word, word) == 0)
			return command;
	return NULL;
}
