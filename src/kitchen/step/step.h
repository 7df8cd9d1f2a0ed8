/*
 * step.h - what moves a load, a run or a batch from phase to phase.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_STEP_STEP_H
#define STILLROOM_KITCHEN_STEP_STEP_H

#include "kitchen/board/board.h"

#define PRESS_AGAIN_MS 1500 /* a second press this soon is a bouncing finger */
/* The next step of a load, run or batch: a condition seen or a thing done.
 * FAULT_CONFIRM sooner than it can hardly be: then the story keeps that it was asked.  What goes into a
 * pot in that phase is ticked off by its step; FAULT_CONFIRM where several lines of it were not.
 * `phase_id` is the running phase the person was looking at.  The seal check's
 * step shelves the load and is refused while a jar is unchecked or lacks a fate;
 * the drain of a juicer ends with kitchen_juice_out; filling ends only with jars. */
bool kitchen_step(struct kitchen *kitchen, int64_t phase_id, bool sure, struct fault *fault);
/* A hold in which the computer restarted, read off another clock: ms of that clock's day
 * (an end before the beginning is of the next day).  A hold too short by that clock:
 * FAULT_CONFIRM, and when `sure` the gate finds it so.  Without a reading kitchen_step
 * asks (FAULT_CONFIRM) before it ends such a hold, and the process is unknown. */
bool kitchen_clock_read(struct kitchen *kitchen, int64_t phase_id, int64_t began_ms, int64_t ended_ms, bool sure,
                        struct fault *fault);
/* Boil, steam or pressure was lost: the full time again. */
bool kitchen_lost(struct kitchen *kitchen, int64_t phase_id, struct fault *fault);
/* The alarm was heard; a ringing water clock: the water was seen and topped up. */
bool kitchen_acknowledge(struct kitchen *kitchen, int64_t phase_id, struct fault *fault);

/* --- exceptions of the present phase --- */

enum exception {
	EXCEPTION_LOST,       /* as kitchen_lost */
	EXCEPTION_STOP,       /* the process is given up: not valid */
	EXCEPTION_VENT_SHORT, /* vent was cut short: not valid */
	EXCEPTION_EARLIER,    /* the condition was reached earlier than the key: estimated */
	EXCEPTION_BROKEN_JAR, /* a jar broke in the canner */
	EXCEPTION_REDO,       /* the full process again, within 2 h of the failure */
	EXCEPTION_WRONG,      /* something was wrong with a finished process; see kitchen_found_wrong */
	EXCEPTION_RECIPE,     /* the batch was not made as its recipe says; see kitchen_batch_wrong */
	EXCEPTION_WATER,      /* the juicer's water was topped up before its clock rang */
	EXCEPTION_DRAW,       /* some juice is drawn while the run goes on */
	EXCEPTION_FORCED,     /* the canner was cooled by force: low-acid food becomes unknown */
	EXCEPTION_WEIGHT,     /* the weight came off before zero: likewise */
	EXCEPTION_BOILED,     /* what stands in the pot was boiled again: it is off the heat from now */
	EXCEPTION_COUNT
};

/* Is the exception open to the strip now, and what does its line say? NULL: no. */
const char *exception_words(const struct strip *strip, enum exception exception, const struct moment *now);
/* `amount`: EXCEPTION_EARLIER minutes (1 to the time since the phase before
 * began); EXCEPTION_DRAW uL of juice; else unused.  `reason`: what was wrong
 * (WRONG, RECIPE); why a stop is gone against (VENT_SHORT, EARLIER: FAULT_STOPPED
 * without one); else "". What only makes a record worse needs none. */
bool kitchen_exception(struct kitchen *kitchen, int64_t phase_id, enum exception exception, int64_t amount,
                       const char *reason, struct fault *fault);
/* Something was wrong with a process that was over and counted: not valid, with
 * the reason.  Its two hours run from the end of the process, not from now.  A
 * load that cools or stands on the shelf comes back to the seal check, where each
 * jar gets its fate. */
bool kitchen_found_wrong(struct kitchen *kitchen, int64_t load_id, const char *why, struct fault *fault);

#endif
