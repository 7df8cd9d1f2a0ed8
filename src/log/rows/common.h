/*
 * common.h - what all rows of the log share.
 *
 * Rows are plain structs the caller holds; no pointer inside.  Times: base/moment.h.
 * src/screen and src/report see the log by its rows alone.
 */
#ifndef STILLROOM_LOG_ROWS_COMMON_H
#define STILLROOM_LOG_ROWS_COMMON_H

#include <stdint.h>

#define NAME_MAX_BYTES 96      /* names a person types, zero included */
#define SENTENCE_MAX_BYTES 400 /* sentences and reasons */
#define SOURCE_MAX_BYTES 256
#define WORD_MAX_BYTES 24 /* phase names, verbs, pack words */

/* What acts are about, for undo and for stories. `id` is not used for the house. */
enum subject_kind { SUBJECT_HOUSE, SUBJECT_STATION, SUBJECT_LOAD, SUBJECT_RUN, SUBJECT_BATCH, SUBJECT_KIND_COUNT };

struct log_subject {
	enum subject_kind kind;
	int64_t id;
};

#endif
