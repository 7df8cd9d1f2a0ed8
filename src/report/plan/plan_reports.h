/*
 * plan_reports.h - what is to come: forecast, what is there for it and what is missing, the plan of
 * the day.
 */
#ifndef STILLROOM_REPORT_PLAN_PLAN_REPORTS_H
#define STILLROOM_REPORT_PLAN_PLAN_REPORTS_H

#include <stddef.h>

#include "report/out/answer.h"

struct ahead_words {
	const char *fruit;
	const char *weight;
	const char *const *products; /* as wish_read takes them */
	size_t product_count;
	const char *jar;    /* of the products that name none */
	const char *want;   /* jars */
	const char *in_pot; /* batches in one pot at most; NULL: one */
	bool juice_in_stock;
};
/* This fruit, these products; and what is missing for them.  Refusals are written
 * in the place of the answer. */
bool report_forecast(const struct report *to, struct day *day, const struct ahead_words *words, struct fault *fault);
bool report_shortage(const struct report *to, struct day *day, const struct ahead_words *words, struct fault *fault);

/* Every supply, lid box and juice. */
bool report_supplies(const struct report *to, struct day *day, struct fault *fault);

/* The day plan as it stands: finish, what is next, ribbons, tasks, what one more of
 * something would save.  A day that cannot be is refused with the planner's sentence. */
bool report_plan(const struct report *to, struct day *day, struct fault *fault);

#endif
