/*
 * process_report.h - what the published tables say: boiling, processes, foods.
 */
#ifndef STILLROOM_REPORT_PROCESS_PROCESS_REPORT_H
#define STILLROOM_REPORT_PROCESS_PROCESS_REPORT_H

#include "report/out/answer.h"

/* From --measured, else --barometer, else --elevation. */
bool report_boil(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

/* Of several elevations JSON makes an array.  When one of them is refused the
 * others are answered all the same; *fault is the last refusal. */
bool report_process(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

/* What process can be asked: foods, packs and jar sizes with an offered row. */
bool report_foods(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

#endif
