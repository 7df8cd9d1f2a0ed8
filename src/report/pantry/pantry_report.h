/*
 * pantry_report.h - jars kept, jars traced, recalls.
 */
#ifndef STILLROOM_REPORT_PANTRY_PANTRY_REPORT_H
#define STILLROOM_REPORT_PANTRY_PANTRY_REPORT_H

#include "kitchen/pantry/recall.h"
#include "report/out/answer.h"

/* Jars left by product and size, the oldest first. */
bool report_pantry(const struct report *to, struct day *day, struct fault *fault);

struct recall_words {
	enum trace_about about;
	const char *which; /* as kitchen_trace_of takes it; NULL: the open recalls instead */
	bool all;          /* those that are done, too */
};
/* Every jar of something, its state and where it is; or recalls with their jars. */
bool report_recall(const struct report *to, struct day *day, const struct recall_words *words, struct fault *fault);

#endif
