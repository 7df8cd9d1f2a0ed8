/*
 * warnings.h - what is not as it should be with the open work, each with what
 * to do about it.  The rules stand in engine/rules/rule_table.c; this looks at the board
 * and a few tallies, never at history.
 */
#ifndef STILLROOM_KITCHEN_WARNING_WARNINGS_H
#define STILLROOM_KITCHEN_WARNING_WARNINGS_H

#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "base/moment.h"
#include "engine/rules/rule.h"
#include "log/rows/common.h"

#define WARNING_SENTENCE_MAX (SENTENCE_MAX_BYTES + 140) /* why a process is unknown, and the words around it */
#define WARNINGS_MAX 64
#define RULE_REASON_MIN 3 /* letters of a reason: a slip of the finger is none */

struct kitchen;

struct warning {
	const char *id; /* short and stable: "elevation-unset" */
	enum severity severity;
	int64_t load_id;    /* 0: about none */
	int64_t batch_id;   /* 0: about none */
	int64_t station_id; /* 0: about no one station */
	char sentence[WARNING_SENTENCE_MAX];
	const char *source;
	const struct rule *rule;
};

/* Ask every rule now.  Fill `out`, worst first; returns how many there are, at
 * most WARNINGS_MAX: the mildest are left out.  `again_ms` (may be NULL): how long
 * from now until time alone may change the answer. */
size_t kitchen_warnings(const struct kitchen *kitchen, const struct moment *now, struct warning out[WARNINGS_MAX],
                        int64_t *again_ms);

/* The same, asked again only after an act, when a moment has come at which a rule
 * fires, or when the wall clock was moved: for a board that draws often.  Valid
 * until the next call. */
const struct warning *kitchen_warned(struct kitchen *kitchen, const struct moment *now, size_t *count);
/* From now until one more may fire by time alone, in milliseconds, at least 1; RULE_NEVER. What
 * the sentences say of minutes changes with them. */
int64_t kitchen_warned_next_ms(const struct kitchen *kitchen, const struct moment *now);

#endif
