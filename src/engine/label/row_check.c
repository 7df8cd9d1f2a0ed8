#include "engine/label/row_check.h"

#include <inttypes.h>
#include <stdio.h>

#define PRIME UINT64_C(0x100000001b3) /* RFC 9923, FNV prime of 64 bits */
#define FIELD_END "\x1f"              /* unit separator: no field holds it */

uint64_t row_check_bytes(uint64_t check, const char *bytes, size_t length)
{
	for (size_t i = 0; i < length; i++)
		check = (check ^ (unsigned char)bytes[i]) * PRIME;
	return check;
}

uint64_t row_check_field(uint64_t check)
{
	return row_check_bytes(check, FIELD_END, 1);
}

void row_check_words(uint64_t check, char words[ROW_CHECK_WORDS])
{
	(void)snprintf(words, ROW_CHECK_WORDS, "%016" PRIx64, check);
}
