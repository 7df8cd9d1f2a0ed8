/*
 * pantry.h - jars kept, traced and recalled.  Manner: log/tables/canner.h.
 */
#ifndef STILLROOM_LOG_TABLES_PANTRY_H
#define STILLROOM_LOG_TABLES_PANTRY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/canner.h"
#include "log/rows/pantry.h"

struct log;

bool log_lots_kept(struct log *log, struct log_lot_kept **rows, size_t *count, struct fault *fault);

/* Jars set aside whose fate is not carried out, and what is in fridge and freezer, of any load; the
 * nearest deadline first, what is frozen last. */
bool log_jars_with_open_fate(struct log *log, struct log_jar **rows, size_t *count, struct fault *fault);

/* Jars in loads opened in [from, to) that are not broken. */
bool log_jars_made_between(struct log *log, int64_t from_wall_ms, int64_t to_wall_ms, int *jars, struct fault *fault);

/* Of the jars kept that may be eaten, one of the oldest lot; FAULT_MISSING: none. */
bool log_jar_oldest(struct log *log, struct log_jar *out, struct fault *fault);

/* What is kept, by product and size; `from_week`: use is counted from that week on
 * (an instant divided by LOG_WEEK_MS); `old_wall_ms`: jars made before it are counted as old. */
bool log_pantry(struct log *log, int64_t from_week, int64_t old_wall_ms, struct log_pantry_line **rows, size_t *count,
                struct fault *fault);

/* The lots of one line, oldest first. */
bool log_pantry_lots(struct log *log, const char *product, const char *size, struct log_pantry_lot **rows,
                     size_t *count, struct fault *fault);
bool log_pantry_recalled(struct log *log, struct log_pantry_part **rows, size_t *count, struct fault *fault);
bool log_pantry_blocked(struct log *log, struct log_pantry_part **rows, size_t *count, struct fault *fault);

/* Jars kept of a lot and size, the first `most` of them by id. */
bool log_jars_kept(struct log *log, int64_t lot_id, const char *size, int64_t most, struct log_jar **rows,
                   size_t *count, struct fault *fault);

/* Jars of a product and size that were used, given away or not found, the newest to go first, at
 * most `most`; those a count did not find before all others. */
bool log_jars_gone(struct log *log, const char *product, const char *size, int64_t most, struct log_jar **rows,
                   size_t *count, struct fault *fault);
bool log_lot_by_code(struct log *log, const char *code, struct log_lot *out,
                     struct fault *fault); /* capitals do not matter */

/* Loads that share jars with a load because they were processed again, before or after. */
bool log_loads_linked(struct log *log, int64_t load_id, int64_t **ids, size_t *count, struct fault *fault);

/* Every jar of it, and what became of it under a new lid; by lot, load and place. */
bool log_trace(struct log *log, const struct log_trace *trace, struct log_traced **rows, size_t *count,
               struct fault *fault);
bool log_recalls(struct log *log, struct log_recall **rows, size_t *count, struct fault *fault); /* newest first */
bool log_recalls_open(struct log *log, struct log_recall **rows, size_t *count,
                      struct fault *fault); /* with jars to find, oldest first */

/* Its jars with their marks, as log_trace orders them. */
bool log_recall_jars(struct log *log, int64_t recall_id, struct log_traced **rows, size_t *count, struct fault *fault);

/* The marks of a jar with that outcome; RECALL_TO_FIND: by which open recalls still look for it. */
bool log_marks_of_jar(struct log *log, int64_t jar_id, enum recall_outcome outcome, struct log_recall_jar **rows,
                      size_t *count, struct fault *fault);

/* How many jars of a lot an open recall still looks for. */
bool log_lot_recalled(struct log *log, int64_t lot_id, int64_t *jars, struct fault *fault);
bool log_lots_spoiled(struct log *log, struct log_lot_spoiled **rows, size_t *count, struct fault *fault);
bool log_put_recall(struct log *log, struct log_recall *row, struct fault *fault);

/* Inserted, or its outcome changed when it is there. */
bool log_put_recall_jar(struct log *log, const struct log_recall_jar *row, struct fault *fault);

#endif
