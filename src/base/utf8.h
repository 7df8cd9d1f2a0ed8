/*
 * utf8.h - one character at a time, and how wide it is.
 *
 * RFC 3629: no overlong forms, no surrogates, nothing above U+10FFFF.
 */
#ifndef STILLROOM_BASE_UTF8_H
#define STILLROOM_BASE_UTF8_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* The character at the beginning of `left` bytes.  Returns its bytes, 1 to 4, or 0
 * when they begin no valid UTF-8 (and when `left` is 0). */
size_t utf8_next(const char *in, size_t left, uint32_t *character);

/* C0, DEL and C1: what a terminal may take for a command. */
bool utf8_is_control(uint32_t character);

/* What turns the direction of writing (Bidi_Control), line separators, and the mark
 * some editors begin a file with: harmless to a terminal, but they make a name look
 * like another. */
bool utf8_is_trick(uint32_t character);

/* Columns in print of equal letters: 0 for combining marks and joiners, 2 for
 * East Asian wide characters and pictures (the large blocks of Unicode's
 * EastAsianWidth.txt; single exceptions inside them are not told apart), else 1. */
int utf8_columns(uint32_t character);

/* Copy with every control character, trick and byte that is not UTF-8 replaced by
 * '?', tabs and line ends by a blank. */
void utf8_clean(char *buffer, size_t size, const char *from);

#endif
