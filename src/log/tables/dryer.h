/*
 * dryer.h - what is dried.  Manner: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_TABLES_DRYER_H
#define STILLROOM_LOG_TABLES_DRYER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/dryer.h"

struct log;

bool log_drying_get(struct log *log, int64_t id, struct log_drying *out, struct fault *fault);
/* What was taken of a batch for trays, all together. */
bool log_batch_trayed(struct log *log, int64_t batch_id, int64_t *ul, struct fault *fault);
/* What was taken of it, oldest first. */
bool log_dryings_of_batch(struct log *log, int64_t batch_id, struct log_drying **rows, size_t *count,
                          struct fault *fault);
bool log_put_drying(struct log *log, struct log_drying *row, struct fault *fault);

#endif
