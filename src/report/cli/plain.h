/*
 * plain.h - text that people typed, made harmless for a terminal or a file.
 *
 * For standard output and standard error only; the board has its own, finer
 * cleaning (screen/term/glyph.h).
 */
#ifndef STILLROOM_REPORT_CLI_PLAIN_H
#define STILLROOM_REPORT_CLI_PLAIN_H

#include <stdint.h>
#include <stdio.h>

/* One character of a zero-terminated text that has not ended.  Returns its
 * bytes, 1 to 4, or 0 when the byte at `in` begins no valid UTF-8 (RFC 3629:
 * no overlong forms, no surrogates, nothing above U+10FFFF). */
size_t plain_decode(const char *in, uint32_t *character);

/* Write `text`; each control character (C0, DEL, C1), mark that turns the
 * direction of writing, line separator and byte that is not UTF-8 becomes '?'.
 * NULL writes nothing. Errors stay in ferror(out). */
void plain_put(FILE *out, const char *text);

/* The same, cut to `most` characters and filled up with blanks to `columns`. */
void plain_put_column(FILE *out, const char *text, int most, int columns);

#endif
