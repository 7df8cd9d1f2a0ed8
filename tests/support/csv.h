/*
 * csv.h - a small reader of the tables in schema/ for tests, written apart from
 * the one in src/bake so that an error in either shows.  Ends the test with a
 * failure when a file or a column is missing.
 */
#ifndef STILLROOM_TESTS_CSV_H
#define STILLROOM_TESTS_CSV_H

#include <stddef.h>

struct csv {
	char *text;   /* the file, cut into fields in place */
	char **cells; /* columns * (rows + 1), header first; point into text */
	size_t columns;
	size_t rows; /* without the header */
};

/* Read FOLDER/name, FOLDER being $SCHEMA or else "schema".  Free with csv_free. */
struct csv csv_read(const char *name);
void csv_free(struct csv *csv);

/* A field by row (from 0) and column name. */
const char *csv_at(const struct csv *csv, size_t row, const char *column);

/* A field as a whole number; `if_empty` for an empty one. */
int csv_number(const struct csv *csv, size_t row, const char *column, int if_empty);

#endif
