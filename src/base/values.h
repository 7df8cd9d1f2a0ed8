/*
 * values.h - a few texts and whole numbers in one line: a JSON array of strings and
 * integers, ["Big kettle",9] (RFC 8259).
 *
 * Writing never fails.  A text that does not find room is shortened at a whole character
 * and ends in "..."; a number always finds room, as many values as VALUES_MAX beside it.
 */
#ifndef STILLROOM_BASE_VALUES_H
#define STILLROOM_BASE_VALUES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define VALUES_MAX 12
/* Of one line, with its zero.  Some 500 bytes are left for texts when all numbers are
 * long: more than any sentence has. */
#define VALUES_BYTES 800

struct value {
	bool is_number;
	int64_t number;
	const char *text; /* of a number: "" */
};

/* Texts lie in `bytes`: not to be copied. */
struct values {
	size_t count;
	struct value list[VALUES_MAX];
	char bytes[VALUES_BYTES];
};

/* A line being written into a buffer the caller owns, of VALUES_BYTES at least.  It is
 * whole after each value. */
struct values_line {
	char *at;
	size_t size;
	size_t used;
	size_t count;
};

struct values_line values_over(char *buffer, size_t size); /* "[]" */
/* Bytes that are no UTF-8 become '?'.  False: the text was shortened. */
bool values_add_text(struct values_line *line, const char *text);
void values_add_number(struct values_line *line, int64_t number);

/* False: it is no such line, or has more than VALUES_MAX values or VALUES_BYTES. */
bool values_read(const char *line, struct values *out);

#endif
