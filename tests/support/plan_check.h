/*
 * plan_check.h - does a plan keep the rules of engine/schedule/day_plan.h?
 *
 * Written from the rules, not from the planner: it looks at the tasks and loads
 * alone and shares no code with it.  For tests.
 */
#ifndef STILLROOM_TESTS_PLAN_CHECK_H
#define STILLROOM_TESTS_PLAN_CHECK_H

#include "engine/schedule/day_plan.h"

/* False, with the first offence in `said`. */
bool plan_check(const struct plan_input *in, const struct day_plan *plan, char *said, size_t size);

#endif
