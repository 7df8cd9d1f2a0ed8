/*
 * juice.h - juicer runs, and juice in stock.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_POT_JUICE_H
#define STILLROOM_KITCHEN_POT_JUICE_H

#include "kitchen/board/board.h"

/* Refused: not a free juicer, no fruit, no weight, or the house has not said how often
 * the water of a juicer is looked at: a pan that boils dry burns. */
bool kitchen_start_run(struct kitchen *kitchen, int64_t station_id, const char *fruit, int64_t fruit_mg,
                       int64_t *run_id, struct fault *fault);
/* Juice measured out; in the drain it ends the run (0 is allowed there). */
bool kitchen_juice_out(struct kitchen *kitchen, int64_t phase_id, int64_t ul, struct fault *fault);
/* Juice brought in, not from a run of ours. */
bool kitchen_juice_in(struct kitchen *kitchen, const char *kind, int64_t ul, enum juice_state state,
                      struct fault *fault);
bool kitchen_juice_state(struct kitchen *kitchen, int64_t juice_id, enum juice_state state, struct fault *fault);
bool kitchen_run_fruit(struct kitchen *kitchen, int64_t run_id, const char *fruit, int64_t fruit_mg,
                       struct fault *fault); /* a correction */

bool kitchen_run_get(const struct kitchen *kitchen, int64_t run_id, struct log_run *out, struct fault *fault);

#endif
