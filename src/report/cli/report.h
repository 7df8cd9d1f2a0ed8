/*
 * report.h - answers without a screen: one document on a stream, as text for
 * people or as JSON for programs (docs/json.md lists every key).
 *
 * Arguments are the words of the command line; NULL is "not given".  Each
 * function returns true when the answer was written, or false with a fault:
 * FAULT_REFUSED for a question the tables do not answer, and the refusal was
 * written in the place of the answer; any other, such as FAULT_MISUSE for words
 * that cannot be read, and nothing was written.  Write errors stay in
 * ferror(out).
 */
#ifndef STILLROOM_REPORT_CLI_REPORT_H
#define STILLROOM_REPORT_CLI_REPORT_H

#include <stdbool.h>
#include <stdio.h>

#include "base/fault.h"
#include "kitchen/exchange/load_facts.h"
#include "kitchen/file/open_day.h"
#include "kitchen/pantry/recall.h"

struct report {
	FILE *out; /* the caller's */
	bool json;
};

/* A refusal is an answer too; boil and process write theirs by this. */
void report_refusal(const struct report *to, const struct fault *fault);

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

bool report_loads(const struct report *to, struct day *day, const struct load_choice *choice, struct fault *fault);
bool report_jars(const struct report *to, struct day *day, const struct load_choice *choice, struct fault *fault);
/* Every rule there is: docs/warnings.md. */
void report_rules(const struct report *to);
/* Of the board as it was when the day was opened. */
void report_warnings(const struct report *to, struct day *day);

/* Every supply, lid box and juice. */
bool report_supplies(const struct report *to, struct day *day, struct fault *fault);

/* Jars left by product and size, the oldest first. */
bool report_pantry(const struct report *to, struct day *day, struct fault *fault);

struct recall_words {
	enum trace_about about;
	const char *which; /* as kitchen_trace_of takes it; NULL: the open recalls instead */
	bool all;          /* those that are done, too */
};
/* Every jar of something, its state and where it is; or recalls with their jars. */
bool report_recall(const struct report *to, struct day *day, const struct recall_words *words, struct fault *fault);

/* The seasons beside one another; one of them (FAULT_MISSING: nothing was made). */
bool report_seasons(const struct report *to, struct day *day, struct fault *fault);
bool report_season(const struct report *to, struct day *day, int year, struct fault *fault);

struct ahead_words {
	const char *fruit;
	const char *weight;
	const char *const *products; /* as wish_read takes them */
	size_t product_count;
	const char *jar;    /* of the products that name none */
	const char *want;   /* jars */
	const char *in_pot; /* batches in one pot at most; NULL: one */
	bool juice_in_stock;
};
/* This fruit, these products; and what is missing for them.  Refusals are written
 * in the place of the answer. */
bool report_forecast(const struct report *to, struct day *day, const struct ahead_words *words, struct fault *fault);
bool report_shortage(const struct report *to, struct day *day, const struct ahead_words *words, struct fault *fault);

/* The day plan as it stands: finish, what is next, ribbons, tasks, what one more of
 * something would save.  A day that cannot be is refused with the planner's sentence. */
bool report_plan(const struct report *to, struct day *day, struct fault *fault);

#endif
