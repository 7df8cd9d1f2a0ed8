/*
 * journal.h - a row of the journal.
 */
#ifndef STILLROOM_LOG_ROWS_JOURNAL_H
#define STILLROOM_LOG_ROWS_JOURNAL_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/moment.h"
#include "base/values.h"
#include "log/rows/common.h"

#define SAID_MAX_BYTES VALUES_BYTES /* values of an act: base/values.h */
#define ENTRY_NOT_KNOWN (-1)
struct log_entry {
	int64_t id; /* filled by the log */
	struct moment at;
	char verb[WORD_MAX_BYTES];
	char who[NAME_MAX_BYTES];
	int64_t station_id; /* 0: none */
	int64_t work_id;    /* the load, run or batch; 0: none */
	/* What the act was about, a line of base/values.h; its sentence is made when it is shown
	 * (kitchen/board/verbs.h).  An undo or a redo has none of its own and is stored with "[]". */
	char said[SAID_MAX_BYTES];
	int64_t undoes_id; /* 0: none */
	int64_t undone_by; /* 0: still stands; filled on reading */
	/* Filled on reading: the verb of the act that its chain of undos began with, the act's own
	 * when it is no undo; `said` is then what was said of that act. */
	char act_verb[WORD_MAX_BYTES];
	bool breaks_hold; /* the act ended a hold or a vent; see kitchen_undo */
};

/* Makes the sentence of an entry of the journal from its verb and values, as a person reads it: a
 * search looks there. It must say the same of the same within one search. NULL: the values as they
 * are stored. */
struct log_teller {
	void (*tell)(const void *with, const char *verb, const char *said, char *buffer, size_t size);
	const void *with;
};

#endif
