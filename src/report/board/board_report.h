/*
 * board_report.h - loads, jars and warnings.
 */
#ifndef STILLROOM_REPORT_BOARD_BOARD_REPORT_H
#define STILLROOM_REPORT_BOARD_BOARD_REPORT_H

#include "report/out/answer.h"

bool report_loads(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
bool report_jars(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
/* Of the board as it was when the day was opened; with --rules, for which `day` may be NULL, every rule
 * there is: docs/warnings.md. */
bool report_warnings(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

#endif
