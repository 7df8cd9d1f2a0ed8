/*
 * backup_command.c - copies of the log: making one, listing them, putting one back.
 */
#include <errno.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/clock.h"
#include "kitchen/canner/aside.h"
#include "kitchen/file/backups.h"
#include "kitchen/file/open_day.h"
#include "log/rows/journal.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"

#define ANSWER_BYTES 32
#define KIB 1024

static void say(FILE *out, const char *words, const char *path)
{
	(void)fputs(words, out);
	plain_put(out, path);
	(void)fputc('\n', out);
}

/* --- backup ------------------------------------------------------------------------- */

/* A folder takes the copy under the name of the log. */
static bool name_target(const char *to, const char *log_path, char *target, size_t size, struct fault *fault)
{
	const char *slash = strrchr(log_path, '/');
	struct stat status;
	struct text text = text_over(target, size);

	text_add(&text, "%s", to);
	if (stat(to, &status) == 0 && S_ISDIR(status.st_mode))
		text_add(&text, "/%s", slash == NULL ? log_path : slash + 1);
	return !text.cut || fault_set(fault, FAULT_IO, "the path of the copy is too long");
}

static bool copy_to(FILE *out, struct kitchen *kitchen, const struct arguments *arguments, struct fault *fault)
{
	char target[LOG_PATH_BYTES];

	if (!name_target(arguments->operand, arguments->log_path, target, sizeof(target), fault) ||
	    !kitchen_save_copy(kitchen, target, arguments->given[OPTION_YES], fault))
		return false;
	say(out, "Written and checked: ", target);
	return true;
}

static bool copy_beside(FILE *out, struct kitchen *kitchen, const char *log_path, struct fault *fault)
{
	if (!kitchen_backup(kitchen, 0, fault))
		return false;
	(void)fputs("All of ", out);
	plain_put(out, log_path);
	(void)fputs(" is in ", out);
	plain_put(out, log_path);
	(void)fputs(".backups now.\n", out);
	return true;
}

static bool backup_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	return arguments->operand != NULL ? copy_to(to->out, day_kitchen(day), arguments, fault)
	                                  : copy_beside(to->out, day_kitchen(day), arguments->log_path, fault);
}

/* --- restore ------------------------------------------------------------------------- */

static void print_missing(FILE *out, const struct log_copy *copy)
{
	if (!copy->whole)
		(void)fputs("damaged", out);
	else if (copy->aside)
		(void)fputs("set aside by a restore", out);
	else if (copy->missing == ENTRY_NOT_KNOWN)
		(void)fputs("what it lacks is not known", out);
	else if (copy->missing == 0)
		(void)fputs("lacks nothing", out);
	else
		(void)fprintf(out, "lacks %s", count_words(copy->missing, "action").words);
}

static void print_list(FILE *out, const struct log_copy *rows, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		char date[16];
		char hour[8];

		clock_words_date(rows[i].newest_wall_ms, date, sizeof(date));
		clock_words_hour(rows[i].newest_wall_ms, hour, sizeof(hour));
		(void)fprintf(out, "%3zu  up to %s %s  %7" PRId64 " KiB  ", i + 1, rows[i].newest < 0 ? "?" : date,
		              rows[i].newest < 0 ? "" : hour, rows[i].bytes / KIB);
		print_missing(out, &rows[i]);
		(void)fputs("  ", out);
		plain_put(out, rows[i].name);
		(void)fputc('\n', out);
	}
}

static bool put_back(FILE *out, const char *log_path, const char *name, struct fault *fault)
{
	char used[LOG_PATH_BYTES];

	if (!backups_restore(log_path, name, used, sizeof(used), fault))
		return false;
	say(out, "Put back: ", used);
	(void)fputs("The old log is kept beside it (.damaged-1 ...).\n", out);
	return true;
}

/* -1: none. */
static int read_choice(FILE *out, size_t count)
{
	char answer[ANSWER_BYTES];
	char *end;
	long number;

	(void)fprintf(out, "Which one should replace the log? Type its number, or Enter for none: ");
	(void)fflush(out);
	if (fgets(answer, sizeof(answer), stdin) == NULL)
		return -1;
	number = strtol(answer, &end, 10);
	return end != answer && *end == '\n' && number >= 1 && (size_t)number <= count ? (int)number - 1 : -1;
}

static const struct log_copy *newest_whole(const struct log_copy *rows, size_t count)
{
	for (size_t i = 0; i < count; i++)
		if (rows[i].whole && !rows[i].aside)
			return &rows[i];
	return NULL;
}

/* With --yes: that one or the newest; else a person at a terminal is asked. */
static bool choose(FILE *out, const struct arguments *arguments, const struct log_copy *rows, size_t count,
                   struct fault *fault)
{
	const char *log_path = arguments->log_path;
	const struct log_copy *newest = newest_whole(rows, count);
	int chosen;

	if (arguments->given[OPTION_YES]) {
		if (arguments->operand == NULL && newest != NULL && newest->missing > 0)
			(void)fprintf(out, "The newest good backup lacks %s of the log.\n",
			              count_words(newest->missing, "action").words);
		return put_back(out, log_path, arguments->operand, fault);
	}
	print_list(out, rows, count);
	if (arguments->operand != NULL || count == 0 || isatty(STDIN_FILENO) == 0)
		return fault_set(
		    fault, FAULT_MISUSE,
		    "this puts %s in place of %s (the old log is kept beside it); close every board on it, then add "
		    "--yes",
		    arguments->operand != NULL ? arguments->operand : "the newest good backup", log_path);
	chosen = read_choice(out, count);
	if (chosen < 0)
		return fault_set(fault, FAULT_REFUSED, "nothing was changed");
	return put_back(out, log_path, rows[chosen].name, fault);
}

/* Without --yes it lists the backups and, at a terminal, asks which. */
static bool restore_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct log_copy *rows;
	size_t count;
	bool done;

	(void)day;
	if (!backups_list(arguments->log_path, &rows, &count, fault))
		return false;
	done = choose(to->out, arguments, rows, count, fault);
	free(rows);
	return done;
}

static const struct command listed[] = {
	{
	    .word = "backup",
	    .operand = "[TO]",
	    .help = "write a complete, checked copy of the log, even while a board has it open",
	    .more = "TO is a file or a folder, best on another disk; an existing file is replaced only\n"
	            "with --yes. Without TO the copy goes into the folder beside the log that ends in\n"
	            ".backups, where the board makes its own. Moving to another computer: docs/moving.md.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .log = COMMAND_LOG_LOOKED_AT,
	    .run = backup_command,
	},
	{
	    .word = "restore",
	    .operand = "[BACKUP]",
	    .help = "list the backups; replace a damaged log with one",
	    .more = "It says how far each backup goes and how many actions of the log it lacks, and asks which.\n"
	            "With --yes it takes BACKUP (a name from the list, or a file), else the newest good one.\n"
	            "The old log is kept beside it. An undamaged log is left alone unless a backup is named.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .log = COMMAND_LOG_NAMED,
	    .run = restore_command,
	},
};

const struct commands backup_commands = COMMANDS(listed);
