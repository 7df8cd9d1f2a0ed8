/*
 * plan_mip.h - the least last end of a day as a mixed-integer program, written in the
 * LP format that open solvers read.  For tests.
 *
 * A formulation by time slots, made from the eleven rules of engine/schedule/day_plan.h and not
 * from the planner: a variable for each start that a rule allows, and one row a slot for
 * each thing that is shared.  Alike stations are counted together.
 *
 * It knows: runs, batches, loads, burners, fillers, people, breaks, wait limits, ready
 * times.  It does not know (and the day must not have): work that is going on, stations
 * that are free later, people who come later, pots only for some batches, a clean-down.
 * All times and lengths must be whole slots.
 */
#ifndef STILLROOM_TESTS_PLAN_MIP_H
#define STILLROOM_TESTS_PLAN_MIP_H

#include <stdio.h>

#include "engine/schedule/day_plan.h"

/* Write the program for a day that is over after `slots` slots at most. The objective's
 * value is the number of slots until everything has ended. */
void plan_mip_write(FILE *out, const struct plan_input *in, int slot_s, int slots);

#endif
