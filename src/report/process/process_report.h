/*
 * process_report.h - what the published tables say: boiling, processes, foods.
 */
#ifndef STILLROOM_REPORT_PROCESS_PROCESS_REPORT_H
#define STILLROOM_REPORT_PROCESS_PROCESS_REPORT_H

#include <stddef.h>

#include "report/out/answer.h"

struct boil_words {
	const char *elevation;
	const char *barometer;
	const char *measured;
};
bool report_boil(const struct report *to, const struct boil_words *words, struct fault *fault);

struct process_words {
	const char *food;
	const char *pack;
	const char *jar;
	const char *method;
	const char *const *elevations; /* one answer for each, in this order */
	size_t elevation_count;        /* 0: not given */
	const char *pressure;
};
/* Of several elevations JSON makes an array.  When one of them is refused the
 * others are answered all the same; *fault is the last refusal. */
bool report_process(const struct report *to, const struct process_words *words, struct fault *fault);

/* What process can be asked: foods, packs and jar sizes with an offered row. */
bool report_foods(const struct report *to, const char *method, struct fault *fault);

#endif
