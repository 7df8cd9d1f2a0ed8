/*
 * canner.h - lots, loads, phases and jars; how all rows are read and written.
 *
 * Arrays returned through `rows`/`count` are malloc'ed by the log and freed by the caller
 * with free().  Reading works inside or outside an act; a *_get of a missing id:
 * FAULT_MISSING.  Writing only inside one: a row with id 0 is inserted and its id filled
 * in; otherwise the row of that id is replaced (FAULT_MISSING: no such row).
 * FAULT_REFUSED: a rule of the schema forbids it.  Ids of stations, works, phases, jars,
 * juice and moves are never given twice, not even after an undo: a second terminal
 * must be able to tell a phase begun again from the undone one it still shows.
 */
#ifndef STILLROOM_LOG_TABLES_CANNER_H
#define STILLROOM_LOG_TABLES_CANNER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/canner.h"
#include "log/rows/common.h"

struct log;

bool log_lid_boxes(struct log *log, struct log_lid_box **rows, size_t *count,
                   struct fault *fault); /* not retired, by id */
bool log_lid_boxes_all(struct log *log, struct log_lid_box **rows, size_t *count,
                       struct fault *fault); /* retired too, by id */
bool log_lid_box_get(struct log *log, int64_t id, struct log_lid_box *out, struct fault *fault);
bool log_load_get(struct log *log, int64_t id, struct log_load *out, struct fault *fault);

/* The newest load opened before an instant; FAULT_MISSING: none. */
bool log_load_before(struct log *log, int64_t wall_ms, struct log_load *out, struct fault *fault);

/* Phases of a load, run or batch (subject kinds of those names only). */
bool log_phase_running(struct log *log, struct log_subject subject, struct log_phase *out, struct fault *fault);
bool log_phases(struct log *log, struct log_subject subject, struct log_phase **rows, size_t *count,
                struct fault *fault); /* oldest first */
bool log_lid_uses(struct log *log, int64_t lid_box_id, struct log_lid_use **rows, size_t *count,
                  struct fault *fault); /* newest lot first */
bool log_jars(struct log *log, int64_t load_id, struct log_jar **rows, size_t *count,
              struct fault *fault); /* by place */
bool log_jar_get(struct log *log, int64_t id, struct log_jar *out, struct fault *fault);
bool log_marks_of_load(struct log *log, int64_t load_id, struct log_mark **rows, size_t *count,
                       struct fault *fault); /* oldest first */
bool log_marks_of_lot(struct log *log, int64_t lot_id, struct log_mark **rows, size_t *count, struct fault *fault);

/* What the gate said of a jar: its own answer, or its load's. */
bool log_judgement_of_jar(struct log *log, const struct log_jar *jar, struct log_judgement *out, struct fault *fault);
bool log_lot_get(struct log *log, int64_t id, struct log_lot *out, struct fault *fault);

/* The first lot of that product (capitals do not matter) made at that instant. */
bool log_lot_made(struct log *log, const char *product, int64_t made_wall_ms, struct log_lot *out, struct fault *fault);
bool log_lot_named(struct log *log, const char *code, struct log_lot *out,
                   struct fault *fault); /* its code, to the letter */
bool log_jars_of_lot(struct log *log, int64_t lot_id, struct log_jar **rows, size_t *count,
                     struct fault *fault); /* by id */

/* Loads with kept jars that a version of the gate before this one judged last. */
bool log_loads_of_old_gate(struct log *log, int gate, int64_t **ids, size_t *count, struct fault *fault);

/* Lots already made with codes that begin with `prefix` (a date): the next sequence number, from 1. */
bool log_next_lot_number(struct log *log, const char *prefix, int *number, struct fault *fault);
bool log_put_lid_box(struct log *log, struct log_lid_box *row, struct fault *fault);
bool log_put_lot(struct log *log, struct log_lot *row, struct fault *fault);
bool log_put_load(struct log *log, struct log_load *row, struct fault *fault);

/* Insert a load (id 0) that comes back from an export: under the number it had when
 * that is above every number ever given here, else under a fresh one. */
bool log_put_load_numbered(struct log *log, struct log_load *row, int64_t number, struct fault *fault);
bool log_put_phase(struct log *log, struct log_phase *row, struct fault *fault);
bool log_put_jar(struct log *log, struct log_jar *row, struct fault *fault);
bool log_put_mark(struct log *log, struct log_mark *row, struct fault *fault);

/* In the place of what the gate said of a load and its jars, or of a batch, before.  Not
 * captured for undo: after an undo the gate is asked again. */
bool log_put_judgement(struct log *log, struct log_subject subject, const struct log_judgement *rows, size_t count,
                       struct fault *fault);

/* A jar that was counted but never was; only one that waits. */
bool log_remove_jar(struct log *log, int64_t id, struct fault *fault);

#endif
