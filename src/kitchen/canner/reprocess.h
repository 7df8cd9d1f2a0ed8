/*
 * reprocess.h - jars that did not seal are processed again: a load of its own, with
 * new flat lids, the same food, pack and jars, the same method and the full time.
 *
 * A539, UNL, MSU-593: within 24 h of a process that was right, rim checked, new lid,
 * emptied, reheated, hot packed, same method, same full time; UNL and one ISU text:
 * within 2 h when the process itself was wrong.  KSU: without a tested hot pack not at
 * all.  The lot code gains "R1", then "R2" (common practice, no source).
 */
#ifndef STILLROOM_KITCHEN_CANNER_REPROCESS_H
#define STILLROOM_KITCHEN_CANNER_REPROCESS_H

#include "engine/food/acid.h"
#include "kitchen/board/board.h"

/* What a reprocess of a jar, and of those like it, would be. */
struct reprocess_proposal {
	struct log_load load; /* it was in */
	struct log_lot lot;
	char new_code[NAME_MAX_BYTES]; /* of the lot it becomes */
	char pack[NAME_MAX_BYTES];     /* it is reheated: hot, also where the lot was packed raw */
	int jars;                      /* of its lot and load that are to be processed again */
	int room;                      /* how many of these the canner takes */
	int64_t by_wall_ms;            /* deadline: the canner must be loaded by then */
	struct process process;
	/* Its liquid was lost or is replaced, and its acid with it: what may be said of the acid
	 * that goes in again (engine/food/acid.h), of jars of all the sizes; 0: nothing is asked. */
	enum acid answers[ACID_COUNT];
	size_t answer_count;
};

/* `station_id` must be a canner of the load's own method.  Refused when the window is
 * closed, the food is never processed again (schema/food.csv), the batch itself is not
 * valid, there is no hot pack or no process here, or
 * the jar is not set aside for it. */
bool kitchen_reprocess_propose(const struct kitchen *kitchen, int64_t jar_id, int64_t station_id,
                               struct reprocess_proposal *out, struct fault *fault);

struct reprocess_order {
	int64_t jar_id;
	int64_t station_id;
	int64_t lid_box_id; /* 0: not noted */
	enum acid acid;     /* that went in again; ACID_NOT_SAID */
	const char *reason; /* typed against a stop; "" none */
};

/* Start that load with as many of the jars as the canner takes, each with a new lid.  The
 * old jars are dealt with; what was seen of them stays, and the new ones name them.  One
 * act, of the new load.  FAULT_STOPPED: acid is asked and none of the answers given; with
 * a reason the jars are not valid. */
bool kitchen_reprocess(struct kitchen *kitchen, const struct reprocess_order *order, int64_t *load_id,
                       struct fault *fault);

#endif
