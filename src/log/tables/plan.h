/*
 * plan.h - the day plan.  Manner: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_TABLES_PLAN_H
#define STILLROOM_LOG_TABLES_PLAN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/canner.h"
#include "log/rows/plan.h"

struct log;

bool log_plan_house_get(struct log *log, struct log_plan_house *out, struct fault *fault);
bool log_helpers(struct log *log, struct log_helper **rows, size_t *count, struct fault *fault);         /* by id */
bool log_plan_breaks(struct log *log, struct log_plan_break **rows, size_t *count, struct fault *fault); /* by start */
bool log_plan_get(struct log *log, struct log_plan *out, struct fault *fault);
bool log_plan_runs(struct log *log, struct log_plan_run **rows, size_t *count, struct fault *fault);      /* by id */
bool log_plan_batches(struct log *log, struct log_plan_batch **rows, size_t *count, struct fault *fault); /* by id */
bool log_plan_blocks(struct log *log, struct log_plan_block **rows, size_t *count,
                     struct fault *fault);                                                            /* by start, id */
bool log_plan_said(struct log *log, struct log_plan_said **rows, size_t *count, struct fault *fault); /* in order */
bool log_phase_means(struct log *log, struct log_phase_mean **rows, size_t *count, struct fault *fault);
bool log_put_plan_house(struct log *log, const struct log_plan_house *row, struct fault *fault);
bool log_put_helper(struct log *log, struct log_helper *row, struct fault *fault);
bool log_remove_helper(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan_break(struct log *log, struct log_plan_break *row, struct fault *fault);
bool log_remove_plan_break(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan(struct log *log, const struct log_plan *row, struct fault *fault);
bool log_put_plan_run(struct log *log, struct log_plan_run *row, struct fault *fault);
bool log_remove_plan_run(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan_batch(struct log *log, struct log_plan_batch *row, struct fault *fault);
bool log_remove_plan_batch(struct log *log, int64_t id, struct fault *fault);
bool log_put_plan_block(struct log *log, struct log_plan_block *row, struct fault *fault);
bool log_clear_plan_blocks(struct log *log, struct fault *fault);
bool log_clear_plan_rows(struct log *log, struct fault *fault); /* runs and batches */
bool log_clear_plan_said(struct log *log, struct fault *fault);
/* All of it, in the place of what there was; ended by log_commit_unjournaled. */
bool log_put_plan_said(struct log *log, const struct log_plan_said *rows, size_t count, struct fault *fault);

#endif
