/*
 * import_command.c - "stillroom import".
 */
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "kitchen/exchange/import.h"
#include "kitchen/file/open_day.h"
#include "report/cli/command.h"
#include "report/cli/plain.h"
#include "report/out/answer.h"

static void put_problems(FILE *out, const struct import_result *result, const char *path)
{
	for (size_t i = 0; i < result->problem_count && i < IMPORT_PROBLEMS_KEPT; i++) {
		const struct import_problem *problem = &result->problems[i];

		plain_put(out, path);
		(void)fprintf(out, "%s%s:%ld: ", problem->file[0] != '\0' ? "/" : "", problem->file, problem->line);
		plain_put(out, problem->why);
		(void)fputc('\n', out);
	}
	if (result->problem_count > IMPORT_PROBLEMS_KEPT)
		(void)fprintf(out, "... and %zu more\n", result->problem_count - IMPORT_PROBLEMS_KEPT);
}

static void put_counts(FILE *out, const struct import_result *result)
{
	(void)fprintf(out, "%s: %s, %s, %s", count_words((int64_t)result->lines, "line").words,
	              count_words((int64_t)result->lots, "lot").words,
	              count_words((int64_t)result->loads, "load").words,
	              count_words((int64_t)result->jars, "jar").words);
	if (result->new_boxes > 0)
		(void)fprintf(out, ", %s new here", count_words((int64_t)result->new_boxes, "lid box").words);
	(void)fputs(".\n", out);
}

/* What nobody may eat is said line by line, before it is written and after. */
static void put_cautions(FILE *out, const struct import_result *result)
{
	for (size_t i = 0; i < result->caution_count && i < IMPORT_CAUTIONS_KEPT; i++) {
		(void)fprintf(out, "line %ld: ", result->cautions[i].line);
		plain_put(out, result->cautions[i].sentence);
		(void)fputs(".\n", out);
	}
	if (result->caution_count > IMPORT_CAUTIONS_KEPT)
		(void)fprintf(out, "... and %s that nobody may eat from\n",
		              count_words((int64_t)(result->caution_count - IMPORT_CAUTIONS_KEPT), "more line").words);
	if (result->foodless > 0)
		(void)fprintf(
		    out,
		    "The food is not known on %s. A column \"food\" names it, as \"stillroom foods\" lists it; acid food "
		    "then counts as acid.\n",
		    count_words((int64_t)result->foodless, "line").words);
}

static bool say(FILE *out, const struct import_result *result, const char *path, struct fault *fault)
{
	put_problems(out, result, path);
	if (result->problem_count > 0)
		return fault_set(fault, FAULT_REFUSED, "nothing was imported: %s to fix in %s",
		                 count_words((int64_t)result->problem_count, "thing").words,
		                 count_words((int64_t)result->lines, "line").words);
	put_cautions(out, result);
	put_counts(out, result);
	if (result->written && result->stop_count > 0)
		(void)fputs(
		    "Imported, with no process counted as valid. What is NOT VALID is at the seal check: give each "
		    "jar a fate (e). To undo it: u in the house view (h).\n",
		    out);
	else if (result->written && result->notebook)
		(void)fputs("Imported, with every process as unknown. To undo it: u in the house view (h).\n", out);
	else if (result->written)
		(void)fputs("Imported. To undo it: u in the house view (h).\n", out);
	else if (result->lots == 0)
		(void)fputs("Nothing to import.\n", out);
	else
		(void)fputs("Nothing has been imported yet: --yes imports it.\n", out);
	return true;
}

static bool import_command_check(const struct arguments *arguments, const struct report *to, struct fault *fault)
{
	(void)to;
	return strcmp(arguments->operand, "csv") == 0 ||
	       fault_set(fault, FAULT_MISUSE, "\"%s\" is not csv", arguments->operand);
}

/* With --yes into a log that is open to be written. */
static bool import_command(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault)
{
	struct import_result *result = calloc(1, sizeof(*result));
	bool done;

	if (result == NULL)
		return fault_set(fault, FAULT_MEMORY, "not enough memory for the import");
	done = kitchen_import(day_kitchen(day), arguments->second, arguments->given[OPTION_YES], result, fault);
	if (!done && fault->kind == FAULT_MISUSE)
		fault->kind = FAULT_NOT_OURS; /* a file is wrong, not the words of the command line */
	done = done && say(to->out, result, arguments->second, fault);
	free(result);
	return done;
}

static const struct command listed[] = {
	{
	    .word = "import",
	    .operand = "csv",
	    .second = "PATH",
	    .help = "an old notebook, or the csv export of another log",
	    .more = "PATH is a file with the columns of docs/import.md, or the folder of an export. It imports\n"
	            "all or nothing; without --yes it only says what it would do.\n",
	    .takes = TAKES(FILE) | TAKES(YES),
	    .log = COMMAND_LOG_WRITTEN,
	    .check = import_command_check,
	    .run = import_command,
	},
};

const struct commands import_commands = COMMANDS(listed);
