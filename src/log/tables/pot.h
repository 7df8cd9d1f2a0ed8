/*
 * pot.h - juicer runs, juice and batches.  Manner: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_TABLES_POT_H
#define STILLROOM_LOG_TABLES_POT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/canner.h"
#include "log/rows/pot.h"

struct log;

bool log_run_get(struct log *log, int64_t id, struct log_run *out, struct fault *fault);
bool log_juice_get(struct log *log, int64_t id, struct log_juice *out, struct fault *fault);
bool log_juices_left(struct log *log, struct log_juice **rows, size_t *count,
                     struct fault *fault); /* with left_ul > 0, oldest first */
bool log_juices_of_run(struct log *log, int64_t run_id, struct log_juice **rows, size_t *count, struct fault *fault);
bool log_juice_uses(struct log *log, int64_t batch_id, struct log_juice_use **rows, size_t *count, struct fault *fault);
bool log_batch_get(struct log *log, int64_t id, struct log_batch *out, struct fault *fault);
bool log_batch_amounts(struct log *log, int64_t batch_id, struct log_batch_amount **rows, size_t *count,
                       struct fault *fault); /* by place */
bool log_jars_of_batch(struct log *log, int64_t batch_id, struct log_jar **rows, size_t *count,
                       struct fault *fault); /* by id */

/* Filled jars without a load that are not broken and have no fate, longest waiting first. */
bool log_jars_waiting(struct log *log, struct log_jar **rows, size_t *count, struct fault *fault);
bool log_fruit_yields(struct log *log, struct log_fruit_yield **rows, size_t *count,
                      struct fault *fault); /* by fruit */

/* What was taken of a juice, oldest first. */
bool log_uses_of_juice(struct log *log, int64_t juice_id, struct log_juice_use **rows, size_t *count,
                       struct fault *fault);
bool log_put_run(struct log *log, struct log_run *row, struct fault *fault);
bool log_put_juice(struct log *log, struct log_juice *row, struct fault *fault);
bool log_put_juice_use(struct log *log, struct log_juice_use *row, struct fault *fault);
bool log_put_batch(struct log *log, struct log_batch *row, struct fault *fault);
bool log_put_batch_amount(struct log *log, struct log_batch_amount *row, struct fault *fault);

#endif
