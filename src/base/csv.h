/*
 * csv.h - reading comma-separated values, record by record, in the memory they lie
 * in; and the rule that makes a cell harmless for a spreadsheet.
 *
 * RFC 4180: fields between commas, "quotes" around a field that holds commas, line
 * ends or quotes, a quote inside written twice.  Besides that a record may end with
 * LF or CR alone, as other systems write it, and blank lines are passed over.  What
 * is refused, rather than guessed at: a quote inside a field without quotes, words
 * after a closing quote, a quote that is never closed, a zero byte, bytes that are
 * not UTF-8.
 */
#ifndef STILLROOM_BASE_CSV_H
#define STILLROOM_BASE_CSV_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"

/* `separator`: a comma, unless the first line has none and semicolons or tabs instead, as
 * some spreadsheets write them. */
struct csv_reader {
	char *at;
	char *end;
	char separator;
	long line; /* of `at`, from 1 */
};

/* `text` is changed while it is read and must have one byte more than `length`.  A
 * byte order mark at its beginning is passed over. */
struct csv_reader csv_begin(char *text, size_t length);

struct csv_field {
	char *text; /* zero-terminated, without its quotes */
	size_t length;
};

enum csv_answer {
	CSV_RECORD,
	CSV_END,
	CSV_WRONG, /* *fault says why; the reader stands behind that line */
};
/* The next record: at most `max` fields (more are wrong); *line is where it begins. */
enum csv_answer csv_next(struct csv_reader *reader, struct csv_field *fields, size_t max, size_t *count, long *line,
                         struct fault *fault);

/* A spreadsheet takes a cell that begins with = + - @, a tab or a line end for a
 * formula.  Such text is written with an apostrophe before it, and so is text that
 * has apostrophes before one of these: then one apostrophe can be taken away again
 * without a doubt. */
bool csv_wants_guard(const char *text, size_t length);
/* Bytes of guard before the text of a field: 0 or 1. */
size_t csv_guard_length(const char *text, size_t length);

#endif
