/*
 * find_words.h - the words somebody looks for, where they stand, and the loads, runs
 * and batches that hold all of them.
 *
 * A word is found as any part of what is written, in capitals or not: that is so of the
 * letters A to Z alone. Every other letter and every sign is compared as it stands, so
 * that "é" finds neither "É" nor "e", and "%" nothing but a percent sign. Words are parted
 * by blanks, and each may stand somewhere else.
 *
 * A search is one look through all that is written, WORDS_NOTED of log/query/statements.c:
 * note_words remembers which words stand at which work, and the page is read from those that
 * have all of them.  What else should be found is another arm of that statement.  Verb and
 * values of all entries about a work stand in one piece in the table `told`; note_told looks
 * through the sentences that the kitchen makes of them (entry_tell), so that what is shown is
 * found.
 */
#ifndef STILLROOM_LOG_HISTORY_FIND_WORDS_H
#define STILLROOM_LOG_HISTORY_FIND_WORDS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "log/disk/log_private.h"
#include "log/rows/history.h"

struct found_work; /* which of the words stand there */
struct told_entry; /* which of them stand in the sentence of a verb and its values */

struct find_words {
	char typed[FIND_MAX_BYTES]; /* in small letters, cut into words */
	const char *words[FIND_WORDS_MAX];
	size_t lengths[FIND_WORDS_MAX];
	int count;
	struct found_work *works; /* by number, with gaps */
	size_t room;              /* a power of two; 0: nothing is found yet */
	size_t used;
	size_t found; /* hold all words */
	struct log_teller teller;
	struct told_entry *told; /* the same is said again and again; NULL: nothing was told yet */
};

/* Take apart what was typed; FAULT_MISUSE: more than FIND_WORDS_MAX words. Nobody tells yet. It points into
 * itself, so that it may not be moved. Free with find_words_clear. */
bool find_words_read(struct find_words *find, const char *typed, struct fault *fault);
void find_words_clear(struct find_words *find);            /* of {0} is allowed */
bool find_words_may_be_day(const struct find_words *find); /* may one of them be part of 2026-09-14? */

/* For SQL, where `find` is a pointer bound as FIND_POINTER:
 *   words_in(find, text, ...)             does any of the words stand there?
 *   note_words(find, work_id, text, ...)  which of them do is noted of that load, run or batch;
 *                                         always false, so that a WHERE with it brings no rows
 *   note_told(find, work_id, entries)     likewise, of the sentences of a row of `told` and of who it was
 *   work_found(find, work_id)             true of everything when none is bound */
#define FIND_POINTER "find_words"
int find_words_for_sql(sqlite3 *db);

#endif
