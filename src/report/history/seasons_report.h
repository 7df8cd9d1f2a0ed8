/*
 * seasons_report.h - the years beside one another, and one of them.
 */
#ifndef STILLROOM_REPORT_HISTORY_SEASONS_REPORT_H
#define STILLROOM_REPORT_HISTORY_SEASONS_REPORT_H

#include "report/out/answer.h"

/* The seasons beside one another; one of them (FAULT_MISSING: nothing was made). */
bool report_seasons(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool report_season(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
/* The year can be read. */
bool season_check(const struct arguments *arguments, const struct report *to, struct fault *fault);

#endif
