/*
 * board_report.h - loads, jars and warnings.
 */
#ifndef STILLROOM_REPORT_BOARD_BOARD_REPORT_H
#define STILLROOM_REPORT_BOARD_BOARD_REPORT_H

#include "kitchen/exchange/load_facts.h"
#include "report/out/answer.h"

bool report_loads(const struct report *to, struct day *day, const struct load_choice *choice, struct fault *fault);
bool report_jars(const struct report *to, struct day *day, const struct load_choice *choice, struct fault *fault);
/* Every rule there is: docs/warnings.md. */
void report_rules(const struct report *to);
/* Of the board as it was when the day was opened. */
void report_warnings(const struct report *to, struct day *day);

#endif
