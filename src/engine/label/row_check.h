/*
 * row_check.h - tells whether a row of text is still as it was written.
 *
 * FNV-1a with 64 bits (RFC 9923): finds a slip or a change by hand, not a forger.
 * Pure.
 */
#ifndef STILLROOM_ENGINE_LABEL_ROW_CHECK_H
#define STILLROOM_ENGINE_LABEL_ROW_CHECK_H

#include <stddef.h>
#include <stdint.h>

#define ROW_CHECK_BEGIN UINT64_C(0xcbf29ce484222325) /* RFC 9923, offset basis of 64 bits */

/* The check with some more bytes. */
uint64_t row_check_bytes(uint64_t check, const char *bytes, size_t length);
/* The check with the end of a field: "ab", "c" differs from "a", "bc". */
uint64_t row_check_field(uint64_t check);

#define ROW_CHECK_WORDS 17
/* 16 hexadecimal digits. */
void row_check_words(uint64_t check, char words[ROW_CHECK_WORDS]);

#endif
