/*
 * plan_reports.h - what is to come: forecast, what is there for it and what is missing, the plan of
 * the day.
 */
#ifndef STILLROOM_REPORT_PLAN_PLAN_REPORTS_H
#define STILLROOM_REPORT_PLAN_PLAN_REPORTS_H

#include "report/out/answer.h"

/* This fruit, these products; and what is missing for them. */
bool report_forecast(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool report_shortage(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

/* Every supply, lid box and juice. */
bool report_supplies(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

/* The day plan as it stands: finish, what is next, ribbons, tasks, what one more of
 * something would save.  A day that cannot be is refused with the planner's sentence. */
bool report_plan(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

#endif
