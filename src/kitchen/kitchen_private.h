/*
 * kitchen_private.h - shared by the files of the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_PRIVATE_H
#define STILLROOM_KITCHEN_PRIVATE_H

#include "kitchen/kitchen.h"

struct kitchen {
	struct log *log;
	struct clock clock;
	char who[NAME_MAX_BYTES];
	struct board board;
	struct strip *strips;
	struct log_jar *fates;
	int64_t day_start_ms; /* the local day jars_today counts */
	int64_t fate_done_load; /* load of the newest fate carried out, for its undo; 0: none */
};

struct log *kitchen_log(const struct kitchen *kitchen);

/* An act being made: what the journal will say of it. */
struct act {
	struct kitchen *kitchen;
	struct log_entry entry;
};

/* Begin an act at the present moment. */
bool act_begin(struct act *act, struct kitchen *kitchen, const char *verb, int64_t station_id,
               int64_t load_id, struct fault *fault);
/* Commit with the sentence for the journal and read the board again. */
bool act_commit(struct act *act, struct fault *fault, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* Abandon the act; returns false so that a failing line reads `return act_fail(...)`. */
bool act_fail(struct act *act);

/* The strip of a load on the board; NULL with FAULT_STALE when it is gone. */
const struct strip *kitchen_strip(const struct kitchen *kitchen, int64_t load_id,
                                  struct fault *fault);
/* The same, and its phase must be `phase_id`. */
const struct strip *kitchen_strip_at(const struct kitchen *kitchen, int64_t load_id,
                                     int64_t phase_id, struct fault *fault);

/* Refused while a canner holds a load; `what` is what would change under it. */
bool canners_are_empty(const struct kitchen *kitchen, const char *what, struct fault *fault);

int64_t strip_passed_ms(const struct strip *strip, const struct moment *now);

/* End the running phase and begin `next` (NULL: none) as part of an act. */
bool phase_change(struct act *act, const struct strip *strip, enum phase_end why,
                  const struct phase_rule *next, struct fault *fault);

#endif
