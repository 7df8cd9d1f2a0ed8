/*
 * labels.h - what the label of a jar says (A539: content and date; lot, process,
 * elevation and jar size are our own addition).
 *
 * A label never says that food is safe: it says what was done, and where the process
 * was not valid or is not known, that.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_LABELS_H
#define STILLROOM_KITCHEN_EXCHANGE_LABELS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/exchange/load_facts.h"
#include "kitchen/warning/warnings.h"

#define LABELS_MAX 5000      /* a run of printing, not a typing error */
#define LABEL_LOT_COLUMNS 40 /* a longer code is cut */

/* Which jars: those of one load, or of one lot, or of the loads of `loads`. */
struct label_choice {
	int64_t load_id; /* 0: not by load */
	const char *lot; /* NULL: not by lot */
	struct load_choice loads;
	bool every_jar; /* those that have not sealed, or were not looked at, too */
};

/* Text is clean: valid UTF-8 without control characters and marks that turn the
 * direction of writing. */
struct label {
	char product[NAME_MAX_BYTES];
	char made[136];                         /* "2026-09-14 . lot 2026-09-14-B1" */
	char process[200];                      /* "half-pint . boiling-water canner . 15 min" */
	char place[120];                        /* "4,650 ft (1,417 m) . best by 2027-09-14", or "... . DO NOT EAT" */
	char warning[SENTENCE_MAX_BYTES + 120]; /* "PROCESS NOT VALID: ..."; "" nothing to say */
	int jars;                               /* so many jars in a row with this label */
};

/* In the order of loads and of the jars in them, malloc'ed.  FAULT_REFUSED when
 * there is none, with the reason; FAULT_MISSING: no such load or lot. */
bool labels_read(struct kitchen *kitchen, const struct label_choice *choice, struct label **rows, size_t *count,
                 struct fault *fault);

/* Where labels went. */
struct labels_saved {
	char path[4096];
	int labels;
	int sheets;
};

/* The cautions that go with every set of labels, one a line; NULL behind the last. */
extern const char *const label_cautions[];

#endif
