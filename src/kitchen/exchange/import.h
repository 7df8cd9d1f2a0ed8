/*
 * import.h - an old notebook, or the CSV export of another log, into this log.
 *
 * Looked through as a whole first; written, when that is asked for and nothing is
 * wrong, as one act that can be undone from the house.  Forms: docs/import.md.
 *
 * All of it is judged by the gate (engine/gate/gate.h).  A notebook's loads are unknown at
 * best: they were written in a notebook, not watched by this program.  One that is NOT
 * VALID by its own words comes back to the seal check, and its jars get a fate; all
 * others stand on the shelf.  An export's loads are judged anew from what it has on
 * record, and never better than it called them; a line that was changed since is a
 * problem.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_IMPORT_H
#define STILLROOM_KITCHEN_EXCHANGE_IMPORT_H

#include <stdbool.h>
#include <stddef.h>

#include "kitchen/board/board.h"

#define IMPORT_PROBLEMS_KEPT 200
#define IMPORT_WHY_BYTES 240
#define IMPORT_CAUTIONS_KEPT 200
#define IMPORT_CAUTION_BYTES 700

struct import_problem {
	char file[32]; /* "" the file itself; of a folder: "jars.csv" */
	long line;
	char why[IMPORT_WHY_BYTES]; /* may hold what somebody typed */
};

/* A line of a notebook from which nobody eats or gives away. */
struct import_caution {
	long line;
	bool stop;                           /* NOT VALID; else low-acid and unknown, or of no food that is known */
	char sentence[IMPORT_CAUTION_BYTES]; /* "green beans: NOT VALID: ..." */
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
	size_t caution_count;
	size_t stop_count; /* of these */
	size_t foodless;   /* lines of no food that is known: they count as low-acid */
	struct import_caution cautions[IMPORT_CAUTIONS_KEPT]; /* by line; told before and after it is written */
};

/* `path`: a file, or the folder of an export.  True when it could be read through;
 * nothing is written then unless `write` is set and there is no problem.
 * False: FAULT_MISSING, FAULT_IO, FAULT_MISUSE (its first line names no columns that
 * are known), FAULT_MEMORY, or a fault of the log. */
bool kitchen_import(struct kitchen *kitchen, const char *path, bool write, struct import_result *result,
                    struct fault *fault);

#endif
