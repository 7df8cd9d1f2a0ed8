/*
 * The table of commands: each can be asked for, is explained, and stands in docs/commands.md.
 */
#include <check.h>
#include <ctype.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "report/command/commands.h"
#include "support/tests.h"

#define PAGE_BYTES 65536

/* Its help as a person sees it; free() it. */
static char *help_of(const struct command *command)
{
	char *text;
	size_t size;
	FILE *stream = open_memstream(&text, &size);

	ck_assert_ptr_nonnull(stream);
	arguments_help(stream, commands, command);
	ck_assert_int_eq(fclose(stream), 0);
	return text;
}

START_TEST(each_command_has_its_own_word)
{
	const struct command *command;

	ck_assert_str_eq(command_at(commands, 0)->word, "");
	for (size_t i = 1; (command = command_at(commands, i)) != NULL; i++) {
		for (const char *at = command->word; *at != '\0'; at++)
			ck_assert_msg(islower((unsigned char)*at), "\"%s\" is no plain word", command->word);
		ck_assert_str_ne(command->word, "");
		ck_assert_msg(command_named(commands, command->word) == command, "\"%s\" stands twice", command->word);
	}
	ck_assert_ptr_null(command_named(commands, ""));
	ck_assert_ptr_null(command_named(commands, "dance"));
}
END_TEST

START_TEST(each_command_has_help)
{
	const struct command *command;

	for (size_t i = 0; (command = command_at(commands, i)) != NULL; i++) {
		size_t length;
		char *text;

		ck_assert_msg(command->help != NULL && strlen(command->help) > 15, "\"%s\" has no help", command->word);
		length = strlen(command->help);
		ck_assert_msg(length <= 80 && command->help[length - 1] != '.', "\"%s\": %s", command->word,
		              command->help);
		ck_assert_msg(command->more == NULL || command->more[strlen(command->more) - 1] == '\n',
		              "\"%s\": the last line of its help has no end", command->word);
		text = help_of(command);
		ck_assert_msg(strstr(text, command->help) != NULL, "\"%s\" does not say what it does:\n%s",
		              command->word, text);
		free(text);
	}
}
END_TEST

START_TEST(what_a_command_needs_fits_what_it_takes)
{
	const struct command *command;

	for (size_t i = 0; (command = command_at(commands, i)) != NULL; i++) {
		ck_assert_msg(command->run != NULL, "\"%s\" does nothing", command->word);
		ck_assert_msg((command->needs & ~command->takes) == 0, "\"%s\" needs what it does not take",
		              command->word);
		ck_assert_msg((command->without_log & ~command->takes) == 0,
		              "\"%s\" is told of an option it does not take", command->word);
		ck_assert_msg(command->log == COMMAND_NO_LOG || (command->takes & TAKES(FILE)) != 0,
		              "\"%s\" cannot be told which log", command->word);
		ck_assert_msg(command->log != COMMAND_LOG_WRITTEN || (command->takes & TAKES(YES)) != 0,
		              "\"%s\" can never write", command->word);
		ck_assert_msg(command->second == NULL || command->operand != NULL, "\"%s\" has a second word alone",
		              command->word);
	}
}
END_TEST

/* The page of the documents holds the whole help of each. */
START_TEST(each_command_stands_in_its_document)
{
	static char page[PAGE_BYTES];
	const char *repo = getenv("REPO");
	const struct command *command;
	char path[4096];
	FILE *stream;
	size_t size;

	ck_assert_ptr_nonnull(repo);
	(void)snprintf(path, sizeof(path), "%s/docs/commands.md", repo);
	stream = fopen(path, "r");
	ck_assert_ptr_nonnull(stream);
	size = fread(page, 1, sizeof(page) - 1, stream);
	ck_assert_int_eq(fclose(stream), 0);
	ck_assert_uint_lt(size, sizeof(page) - 1);
	page[size] = '\0';
	for (size_t i = 0; (command = command_at(commands, i)) != NULL; i++) {
		char *text = help_of(command);

		ck_assert_msg(strstr(page, text) != NULL, "docs/commands.md has not the help of \"%s\": make docs",
		              command->word);
		free(text);
	}
}
END_TEST

static const struct listed_test listed[] = {
	TEST(each_command_has_its_own_word),
	TEST(each_command_has_help),
	TEST(what_a_command_needs_fits_what_it_takes),
	TEST(each_command_stands_in_its_document),
};

TESTS("commands", listed)
