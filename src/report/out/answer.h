/*
 * answer.h - what every answer without a screen goes by: where it is written, and as what.
 */
#ifndef STILLROOM_REPORT_OUT_ANSWER_H
#define STILLROOM_REPORT_OUT_ANSWER_H

#include <stdbool.h>
#include <stdio.h>

#include "base/fault.h"
#include "engine/label/label_sheet.h"
#include "kitchen/file/open_day.h"

struct arguments;
struct json;

/* What the program lends the commands of its screen, which reports do not know. */
struct full_screen {
	/* The board on a log; `rehearsal`: on a practice log, and on no other.  *rehearse becomes true
	 * when somebody left it to practise. */
	bool (*board)(const struct arguments *arguments, const char *log_path, bool rehearsal, bool *rehearse,
	              struct fault *fault);
	/* How labels are set by the configuration file. */
	bool (*labels)(struct label_sheet *sheet, enum label_format *format, struct fault *fault);
};

struct report {
	FILE *out; /* the caller's */
	bool json;
	bool told; /* a refusal has been written already, among other answers */
	const struct full_screen *screen;
};

/* A refusal is an answer too; it is written in the place of one. */
void report_refusal(const struct report *to, const struct fault *fault);
/* The same as one of several answers of a document. */
void report_refusal_among(struct report *to, struct json *json, const struct fault *fault);
/* day_open, and what the person should know of it goes to standard error. */
bool report_open(const char *path, enum log_mode mode, struct day **day, struct fault *fault);

#endif
