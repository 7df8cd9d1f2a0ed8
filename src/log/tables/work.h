/*
 * work.h - the rows of any kind of work.  Manner: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_TABLES_WORK_H
#define STILLROOM_LOG_TABLES_WORK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/common.h"

struct log;

/* `kind`: one of EACH_WORK.  `rows`: the address of a pointer to the struct of its rows, or of a
 * pointer to void; a row is log_works_row_size bytes then. */
size_t log_works_row_size(enum subject_kind kind);

/* Those in a station, and what is not at its end yet after it: loads on the rack, what is conditioned; oldest first. */
bool log_works_open(struct log *log, enum subject_kind kind, void *rows, size_t *count, struct fault *fault);

/* Opened in [from, to), ended ones too, oldest first. */
bool log_works_between(struct log *log, enum subject_kind kind, int64_t from_wall_ms, int64_t to_wall_ms, void *rows,
                       size_t *count, struct fault *fault);

#endif
