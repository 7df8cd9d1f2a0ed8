/*
 * common.h - what all rows of the log share.
 *
 * Rows are plain structs the caller holds; no pointer inside.  Times: base/moment.h.
 * src/screen and src/report see the log by its rows alone.
 */
#ifndef STILLROOM_LOG_ROWS_COMMON_H
#define STILLROOM_LOG_ROWS_COMMON_H

#include <stdbool.h>
#include <stdint.h>

#define NAME_MAX_BYTES 96      /* names a person types, zero included */
#define SENTENCE_MAX_BYTES 400 /* sentences and reasons */
#define SOURCE_MAX_BYTES 256
#define WORD_MAX_BYTES 24 /* phase names, verbs, pack words */

/* The kinds of work, in the order in which the board is read: OF(TAG, word).  The word is that of work.kind and the
 * name of its table in the log, of its member in a strip (struct strip_word, kitchen/board/board.h), and of what it is
 * to the board, to its acts and to the screen (word_kind, word_acts, word_views). */
/* clang-format off */
#define EACH_WORK(OF) \
	OF(LOAD, load) \
	OF(RUN, run) \
	OF(BATCH, batch) \
	OF(DRYING, drying)
/* clang-format on */

/* What acts are about, for undo and for stories. `id` is not used for the house. */
#define WORK_SUBJECT(TAG, word) SUBJECT_##TAG,
enum subject_kind { SUBJECT_HOUSE, SUBJECT_STATION, EACH_WORK(WORK_SUBJECT) SUBJECT_KIND_COUNT };
#define WORK_KINDS (SUBJECT_KIND_COUNT - SUBJECT_STATION - 1)

static inline bool subject_is_work(enum subject_kind kind)
{
	return kind > SUBJECT_STATION && kind < SUBJECT_KIND_COUNT;
}

struct log_subject {
	enum subject_kind kind;
	int64_t id;
};

#endif
