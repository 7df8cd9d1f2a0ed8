/*
 * verdict.h - evidence for the gate (engine/gate/gate.h) from the rows of the log, and
 * its answer beside them.  Inside the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_ACT_VERDICT_H
#define STILLROOM_KITCHEN_ACT_VERDICT_H

#include <stdbool.h>

#include "kitchen/act/act.h"

/* Judge every load whose evidence the act has touched, as part of the act: before it
 * is committed, an undo and a redo too. */
bool judge_touched(struct act *act, struct fault *fault);

/* A load that stands in no log yet: the jars of one lot, which go by the lot's id. */
struct drafted_load {
	const struct log_load *load;
	const struct log_lot *lot;
	struct log_jar *jars; /* 1 to 99 */
	size_t jar_count;
	struct log_mark *marks;
	size_t mark_count;
};
/* What the gate will say of it.  Nothing is written. */
bool judge_drafted(const struct kitchen *kitchen, const struct drafted_load *drafted, struct judgement *out,
                   struct fault *fault);

/* A load on which this gate is harder than the one that judged it in its day. */
struct judged_anew {
	int64_t load_id;
	char lot[NAME_MAX_BYTES];
	bool blocks;                  /* some jar of it is not to be eaten, and was */
	char why[SENTENCE_MAX_BYTES]; /* all that stands against the worst of its kept jars */
};
/* Loads with kept jars that an older gate judged, looked at by this one in memory: those
 * that come out worse, malloc'ed.  Nothing is written: what was said of a day stays. */
bool judge_anew(struct kitchen *kitchen, struct judged_anew **rows, size_t *count, struct fault *fault);

#endif
