/*
 * phases_private.h - what the tables of phases are written with, one for each kind of work.
 */
#ifndef STILLROOM_KITCHEN_BOARD_PHASES_PRIVATE_H
#define STILLROOM_KITCHEN_BOARD_PHASES_PRIVATE_H

#include <stddef.h>

#include "kitchen/board/phases.h"

#define MINUTES(n) (60 * (n))
#define HOURS(n) (3600 * (n))
#define SPAN_OF(work, member) offsetof(struct work, member)

/* In the order in which the work passes through them; behind the last a row without a name. */
/* clang-format off */
#define WORK_PHASES(TAG, word) extern const struct phase_rule word##_phases[];
EACH_WORK(WORK_PHASES)
/* clang-format on */

#endif
