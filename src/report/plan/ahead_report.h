/*
 * ahead_report.h - shared by the forecast, the shortage list and what is on the shelf: their
 * questions, amounts and the heads of their documents.
 */
#ifndef STILLROOM_REPORT_PLAN_AHEAD_REPORT_H
#define STILLROOM_REPORT_PLAN_AHEAD_REPORT_H

#include <stdbool.h>

#include "kitchen/file/open_day.h"
#include "kitchen/stock/ahead.h"
#include "report/cli/command.h"
#include "report/out/json.h"

/* What both commands take, and what is said of it. */
#define AHEAD_TAKES \
	(TAKES(FRUIT) | TAKES(WEIGHT) | TAKES(PRODUCT) | TAKES(JAR) | TAKES(WANT) | TAKES(IN_POT) | \
	 TAKES(JUICE_IN_STOCK))
#define AHEAD_MORE \
	"With --want instead of --weight it says how much fruit that many jars take. Products\n" \
	"with a number of batches come first, the others share what is left in turn. --in-pot\n" \
	"says how many batches you cook in one pot, as far as recipe and pots allow it.\n" \
	"  stillroom forecast --fruit grapes --weight 60lb --product \"grape jelly\"\n" \
	"  stillroom shortage --fruit grapes --product \"grape juice\" --want 60 --jar pint\n"

/* FAULT_MISUSE for words that cannot be read. */
bool ahead_read(const struct kitchen *kitchen, const struct arguments *arguments, struct ahead *out,
                struct fault *fault);

/* What holds for the whole document; leaves the object open. */
void ahead_open(struct json *json, const struct day *day, const struct ahead *ahead);
/* Grams, milliliters, pieces: what people and programs count in, and how many of ours one of them has. */
const char *ahead_unit(enum measure measure);
int ahead_per(enum measure measure);
/* An amount in thousandths (`per` 1000: uL as mL, mg as g) or in pieces (`per` 1). */
void ahead_amount(struct json *json, const char *key, int64_t value, int per);
/* "key": {"low": 1, "likely": 2, "high": 3}, each as ahead_amount. */
void ahead_bounds(struct json *json, const char *key, const int64_t *values, int per);
void ahead_int_bounds(struct json *json, const char *key, const int *values);

#endif
