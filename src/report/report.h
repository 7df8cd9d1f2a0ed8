/*
 * report.h - all answers without a screen: one document on a stream, as text for
 * people or as JSON for programs (docs/json.md lists every key).
 *
 * Each takes the parsed words of the command line, the open log (NULL for those that
 * need none) and where the answer goes.  True: it was written.  False with
 * FAULT_REFUSED: a question the tables or the log do not answer; whoever asked writes the
 * sentence in the place of the answer, unless `told`.  False with any other, such as
 * FAULT_MISUSE for words that cannot be read: nothing was written.  Write errors stay in
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
