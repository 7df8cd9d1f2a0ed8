/*
 * import.h - an old notebook, or the CSV export of another log, into this log.
 *
 * Looked through as a whole first; written, when that is asked for and nothing is
 * wrong, as one act that can be undone from the house.  Forms: docs/import.md.
 *
 * A notebook's loads stand on the shelf with an unknown process: they were written in
 * a notebook, not watched by this program, whatever the notebook says.  An export's
 * are what this program wrote, and keep their verdict; a line that was changed since is
 * a problem.
 */
#ifndef STILLROOM_KITCHEN_IMPORT_H
#define STILLROOM_KITCHEN_IMPORT_H

#include <stdbool.h>
#include <stddef.h>

#include "kitchen/kitchen.h"

#define IMPORT_PROBLEMS_KEPT 200
#define IMPORT_WHY_BYTES 240

struct import_problem {
	char file[32]; /* "" the file itself; of a folder: "jars.csv" */
	long line;
	char why[IMPORT_WHY_BYTES]; /* may hold what somebody typed */
};

struct import_result {
	bool notebook; /* else an export */
	bool written;
	size_t lines;
	size_t lots;
	size_t loads;
	size_t jars;
	size_t new_boxes; /* lid boxes the log does not know */
	size_t problem_count;
	struct import_problem problems[IMPORT_PROBLEMS_KEPT]; /* the first of them, by file and line */
};

/* `path`: a file, or the folder of an export.  True when it could be read through;
 * nothing is written then unless `write` is set and there is no problem.
 * False: FAULT_MISSING, FAULT_IO, FAULT_MISUSE (its first line names no columns that
 * are known), FAULT_MEMORY, or a fault of the log. */
bool kitchen_import(struct kitchen *kitchen, const char *path, bool write, struct import_result *result,
                    struct fault *fault);

#endif
