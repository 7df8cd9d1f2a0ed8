/*
 * backup_command.c - copies of the log: making one, listing them, putting one back.
 */
#include "report/house/backup_command.h"
#include "base/count.h"

#include <errno.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/text.h"
#include "kitchen/board/clock.h"
#include "kitchen/canner/aside.h"
#include "kitchen/file/backups.h"
#include "kitchen/file/open_day.h"
#include "log/rows/journal.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"

#define PATH_BYTES 4096
#define ANSWER_BYTES 32
#define KIB 1024

static void say(const char *words, const char *path)
{
	(void)fputs(words, stdout);
	plain_put(stdout, path);
	(void)fputc('\n', stdout);
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

static bool copy_to(struct kitchen *kitchen, const struct arguments *arguments, const char *log_path,
                    struct fault *fault)
{
	char target[PATH_BYTES];

	if (!name_target(arguments->operand, log_path, target, sizeof(target), fault) ||
	    !kitchen_save_copy(kitchen, target, arguments->given[OPTION_YES], fault))
		return false;
	say("Written and checked: ", target);
	return true;
}

static bool copy_beside(struct kitchen *kitchen, const char *log_path, struct fault *fault)
{
	if (!kitchen_backup(kitchen, 0, fault))
		return false;
	(void)fputs("All of ", stdout);
	plain_put(stdout, log_path);
	(void)fputs(" is in ", stdout);
	plain_put(stdout, log_path);
	(void)fputs(".backups now.\n", stdout);
	return true;
}

bool backup_command(const struct arguments *arguments, const char *log_path, struct fault *fault)
{
	struct day *day;
	bool done;

	if (!report_open(log_path, LOG_LOOK, &day, fault))
		return false;
	done = arguments->operand != NULL ? copy_to(day_kitchen(day), arguments, log_path, fault)
	                                  : copy_beside(day_kitchen(day), log_path, fault);
	day_close(day);
	return done;
}

/* --- restore ------------------------------------------------------------------------- */

static void print_missing(const struct log_copy *copy)
{
	if (!copy->whole)
		(void)fputs("damaged", stdout);
	else if (copy->aside)
		(void)fputs("set aside by a restore", stdout);
	else if (copy->missing == ENTRY_NOT_KNOWN)
		(void)fputs("what it lacks is not known", stdout);
	else if (copy->missing == 0)
		(void)fputs("lacks nothing", stdout);
	else
		(void)printf("lacks %s", count_words(copy->missing, "act").words);
}

static void print_list(const struct log_copy *rows, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		char date[16];
		char hour[8];

		clock_words_date(rows[i].newest_wall_ms, date, sizeof(date));
		clock_words_hour(rows[i].newest_wall_ms, hour, sizeof(hour));
		(void)printf("%3zu  up to %s %s  %7" PRId64 " KiB  ", i + 1, rows[i].newest < 0 ? "?" : date,
		             rows[i].newest < 0 ? "" : hour, rows[i].bytes / KIB);
		print_missing(&rows[i]);
		(void)fputs("  ", stdout);
		plain_put(stdout, rows[i].name);
		(void)fputc('\n', stdout);
	}
}

static bool put_back(const char *log_path, const char *name, struct fault *fault)
{
	char used[PATH_BYTES];

	if (!backups_restore(log_path, name, used, sizeof(used), fault))
		return false;
	say("Put back: ", used);
	(void)fputs("The old log is kept beside it (.damaged-1 ...).\n", stdout);
	return true;
}

/* -1: none. */
static int read_choice(size_t count)
{
	char answer[ANSWER_BYTES];
	char *end;
	long number;

	(void)printf("Which one should replace the log? Type its number, or Enter for none: ");
	(void)fflush(stdout);
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
static bool choose(const struct arguments *arguments, const char *log_path, const struct log_copy *rows, size_t count,
                   struct fault *fault)
{
	const struct log_copy *newest = newest_whole(rows, count);
	int chosen;

	if (arguments->given[OPTION_YES]) {
		if (arguments->operand == NULL && newest != NULL && newest->missing > 0)
			(void)printf("The newest good backup lacks %s of the log.\n",
			             count_words(newest->missing, "act").words);
		return put_back(log_path, arguments->operand, fault);
	}
	print_list(rows, count);
	if (arguments->operand != NULL || count == 0 || isatty(STDIN_FILENO) == 0)
		return fault_set(
		    fault, FAULT_MISUSE,
		    "this puts %s in place of %s (the old log is kept beside it); close every board on it, then add "
		    "--yes",
		    arguments->operand != NULL ? arguments->operand : "the newest good backup", log_path);
	chosen = read_choice(count);
	if (chosen < 0)
		return fault_set(fault, FAULT_REFUSED, "nothing was changed");
	return put_back(log_path, rows[chosen].name, fault);
}

bool restore_command(const struct arguments *arguments, const char *log_path, struct fault *fault)
{
	struct log_copy *rows;
	size_t count;
	bool done;

	if (!backups_list(log_path, &rows, &count, fault))
		return false;
	done = choose(arguments, log_path, rows, count, fault);
	free(rows);
	return done;
}
