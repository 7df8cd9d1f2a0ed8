/*
 * board_report.h - loads, jars and warnings.
 */
#ifndef STILLROOM_REPORT_BOARD_BOARD_REPORT_H
#define STILLROOM_REPORT_BOARD_BOARD_REPORT_H

#include "report/out/answer.h"

/* Why the first load of a day is hardly ever number 1. */
#define LOAD_NUMBERS \
	"A load keeps its number for good: runs and batches are counted along, and the number of\n" \
	"one that was undone is not given again."
bool report_loads(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool report_jars(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
/* Of the board as it was when the day was opened; with --rules, for which `day` may be NULL, every rule
 * there is: docs/warnings.md. */
bool report_warnings(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

#endif
