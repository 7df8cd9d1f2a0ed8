/*
 * log_path.c - see log_path.h.
 */
#include "report/house/log_path.h"

#include <stdlib.h>

#include "base/text.h"
#include "report/cli/arguments.h"

/* The XDG base directory rules: a folder that is not absolute is ignored. */
static bool usual_log(char *path, size_t size, struct fault *fault)
{
	const char *data = getenv("XDG_DATA_HOME"); /* NOLINT(concurrency-mt-unsafe): one thread */
	const char *home = getenv("HOME");          /* NOLINT(concurrency-mt-unsafe) */
	struct text text = text_over(path, size);

	if (data != NULL && data[0] == '/')
		text_add(&text, "%s/stillroom/log.db", data);
	else if (home != NULL && home[0] == '/')
		text_add(&text, "%s/.local/share/stillroom/log.db", home);
	else
		return fault_set(fault, FAULT_MISSING,
		                 "neither HOME nor XDG_DATA_HOME names a folder: give the path of the log with -f");
	return !text.cut || fault_set(fault, FAULT_IO, "the path of the log is too long");
}

bool log_path_find(const struct arguments *arguments, char *path, size_t size, struct fault *fault)
{
	if (!arguments->given[OPTION_FILE])
		return usual_log(path, size, fault);
	return text_copy(path, size, arguments->value[OPTION_FILE]) ||
	       fault_set(fault, FAULT_IO, "the path of the log is too long");
}
