/*
 * answer.h - what every answer without a screen goes by: where it is written, and as what.
 */
#ifndef STILLROOM_REPORT_OUT_ANSWER_H
#define STILLROOM_REPORT_OUT_ANSWER_H

#include <stdbool.h>
#include <stdio.h>

#include "base/fault.h"
#include "kitchen/file/open_day.h"

struct json;

struct report {
	FILE *out; /* the caller's */
	bool json;
};

/* A refusal is an answer too; it is written in the place of one. */
void report_refusal(const struct report *to, const struct fault *fault);
/* The same as one of several answers of a document. */
void report_refusal_among(const struct report *to, struct json *json, const struct fault *fault);
/* day_open, and what the person should know of it goes to standard error. */
bool report_open(const char *path, enum log_mode mode, struct day **day, struct fault *fault);

#endif
