/*
 * pantry_report.h - jars kept, jars traced, recalls.
 */
#ifndef STILLROOM_REPORT_PANTRY_PANTRY_REPORT_H
#define STILLROOM_REPORT_PANTRY_PANTRY_REPORT_H

#include "report/out/answer.h"

/* Jars left by product and size, the oldest first. */
bool report_pantry(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);

/* Every jar of something, its state and where it is; or recalls with their jars. */
bool report_recall(const struct arguments *arguments, struct day *day, struct report *to, struct fault *fault);
/* At most one thing is asked for. */
bool recall_check(const struct arguments *arguments, const struct report *to, struct fault *fault);

#endif
