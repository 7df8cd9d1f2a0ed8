/*
 * verdict.h - evidence for the gate (engine/gate.h) from the rows of the log, and
 * its answer beside them.  Inside the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_VERDICT_H
#define STILLROOM_KITCHEN_VERDICT_H

#include <stdbool.h>

#include "kitchen/kitchen_private.h"

/* Judge every load whose evidence the act has touched, as part of the act: before it
 * is committed, an undo and a redo too. */
bool judge_touched(struct act *act, struct fault *fault);

#endif
