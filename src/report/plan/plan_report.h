/*
 * plan_report.h - shared by the two forms of the day plan's report.
 */
#ifndef STILLROOM_REPORT_PLAN_PLAN_REPORT_H
#define STILLROOM_REPORT_PLAN_PLAN_REPORT_H

#include <stdio.h>

#include "kitchen/file/open_day.h"
#include "kitchen/plan/plan.h"

/* Who takes part in a task, for a line: "MK+JO", "all" of more than three; "" nobody. */
void plan_report_people(const struct kitchen_plan *plan, unsigned people, char *buffer, size_t size);

void plan_report_text(FILE *out, struct day *day, const struct kitchen_plan *plan, const struct moment *now);

#endif
