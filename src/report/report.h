/*
 * report.h - all answers without a screen: one document on a stream, as text for
 * people or as JSON for programs (docs/json.md lists every key).
 *
 * Arguments are the words of the command line; NULL is "not given".  Each
 * function returns true when the answer was written, or false with a fault:
 * FAULT_REFUSED for a question the tables do not answer, and the refusal was
 * written in the place of the answer; any other, such as FAULT_MISUSE for words
 * that cannot be read, and nothing was written.  Write errors stay in
 * ferror(out).
 *
 * Each stands in the header of its room; this one is above them all.
 */
#ifndef STILLROOM_REPORT_REPORT_H
#define STILLROOM_REPORT_REPORT_H

#include "report/board/board_report.h"
#include "report/history/seasons_report.h"
#include "report/out/answer.h"
#include "report/pantry/pantry_report.h"
#include "report/plan/plan_reports.h"
#include "report/process/process_report.h"

#endif
