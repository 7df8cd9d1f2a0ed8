/*
 * import_command.c - "stillroom import".
 */
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "kitchen/exchange/import.h"
#include "kitchen/file/open_day.h"
#include "report/cli/plain.h"
#include "report/exchange/out_commands.h"
#include "report/out/answer.h"

static void put_problems(const struct import_result *result, const char *path)
{
	for (size_t i = 0; i < result->problem_count && i < IMPORT_PROBLEMS_KEPT; i++) {
		const struct import_problem *problem = &result->problems[i];

		plain_put(stdout, path);
		(void)printf("%s%s:%ld: ", problem->file[0] != '\0' ? "/" : "", problem->file, problem->line);
		plain_put(stdout, problem->why);
		(void)fputc('\n', stdout);
	}
	if (result->problem_count > IMPORT_PROBLEMS_KEPT)
		(void)printf("... and %zu more\n", result->problem_count - IMPORT_PROBLEMS_KEPT);
}

static void put_counts(const struct import_result *result)
{
	(void)printf("%zu line%s: %zu lot%s, %zu load%s, %zu jar%s", result->lines, result->lines == 1 ? "" : "s",
	             result->lots, result->lots == 1 ? "" : "s", result->loads, result->loads == 1 ? "" : "s",
	             result->jars, result->jars == 1 ? "" : "s");
	if (result->new_boxes > 0)
		(void)printf(", %zu lid box%s new here", result->new_boxes, result->new_boxes == 1 ? "" : "es");
	(void)fputs(".\n", stdout);
}

/* What nobody may eat is said line by line, before it is written and after. */
static void put_cautions(const struct import_result *result)
{
	for (size_t i = 0; i < result->caution_count && i < IMPORT_CAUTIONS_KEPT; i++) {
		(void)printf("line %ld: ", result->cautions[i].line);
		plain_put(stdout, result->cautions[i].sentence);
		(void)fputs(".\n", stdout);
	}
	if (result->caution_count > IMPORT_CAUTIONS_KEPT)
		(void)printf("... and %zu lines more that nobody may eat from\n",
		             result->caution_count - IMPORT_CAUTIONS_KEPT);
	if (result->foodless > 0)
		(void)printf(
		    "Of %zu line%s the food is not known. A column \"food\" names it, as stillroom foods lists them, and what "
		    "is acid food then counts as acid.\n",
		    result->foodless, result->foodless == 1 ? "" : "s");
}

static bool say(const struct import_result *result, const char *path, struct fault *fault)
{
	put_problems(result, path);
	if (result->problem_count > 0)
		return fault_set(fault, FAULT_REFUSED, "nothing was imported: %zu thing%s to mend in %zu lines",
		                 result->problem_count, result->problem_count == 1 ? "" : "s", result->lines);
	put_cautions(result);
	put_counts(result);
	if (result->written && result->stop_count > 0)
		(void)fputs(
		    "Imported, no process as valid. What is NOT VALID stands at the seal check: give each jar a fate (e). "
		    "The house view (h) can take it back with u.\n",
		    stdout);
	else if (result->written && result->notebook)
		(void)fputs("Imported, every process as unknown. The house view (h) can take it back with u.\n",
		            stdout);
	else if (result->written)
		(void)fputs("Imported. The house view (h) can take it back with u.\n", stdout);
	else if (result->lots == 0)
		(void)fputs("There is nothing to import.\n", stdout);
	else
		(void)fputs("Nothing is written yet: --yes imports it.\n", stdout);
	return true;
}

bool import_command(const struct arguments *arguments, const char *log_path, struct fault *fault)
{
	bool write = arguments->given[OPTION_YES];
	struct import_result *result;
	struct day *day;
	bool done;

	if (strcmp(arguments->operand, "csv") != 0)
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not csv", arguments->operand);
	result = calloc(1, sizeof(*result));
	if (result == NULL)
		return fault_set(fault, FAULT_MEMORY, "there is no memory left for the import");
	done = report_open(log_path, write ? LOG_CREATE : LOG_LOOK, &day, fault);
	if (done) {
		done = kitchen_import(day_kitchen(day), arguments->second, write, result, fault);
		if (!done && fault->kind == FAULT_MISUSE)
			fault->kind = FAULT_NOT_OURS; /* a file is wrong, not the words of the command line */
		done = done && say(result, arguments->second, fault);
		day_close(day);
	}
	free(result);
	return done;
}
