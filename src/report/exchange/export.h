/*
 * export.h - the tables of the log as CSV, JSON and JSON schema, and a calendar.
 *
 * docs/export.md tells the rules, docs/export.schema.json every column.
 */
#ifndef STILLROOM_REPORT_EXCHANGE_EXPORT_H
#define STILLROOM_REPORT_EXCHANGE_EXPORT_H

#include <stdbool.h>
#include <stdio.h>

#include "base/fault.h"
#include "kitchen/exchange/tables.h"
#include "kitchen/file/open_day.h"

#define EXPORT_VERSION 1 /* of the JSON document; new keys do not change it */

/* RFC 4180, a header first.  Text that a spreadsheet would take for a formula is
 * guarded (base/csv.h); control characters but tab, CR and LF, and bytes that are
 * not UTF-8, become '?'. */
bool export_csv(FILE *out, struct day *day, const struct log_table *table, struct fault *fault);

/* One document with every table, all of one instant. */
bool export_json(FILE *out, struct day *day, struct fault *fault);
void export_schema(FILE *out);

/* RFC 5545: seal checks, deadlines of fates, best-by dates. */
bool export_calendar(FILE *out, struct day *day, struct fault *fault);

#endif
