#include "support/copy.h"

#include <check.h>
#include <stdio.h>

bool copy_file(const char *from, const char *to)
{
	static char block[1 << 16];
	FILE *in = fopen(from, "rb");
	FILE *out;
	size_t got;

	if (in == NULL)
		return false;
	out = fopen(to, "wb");
	ck_assert_ptr_nonnull(out);
	do {
		got = fread(block, 1, sizeof(block), in);
		ck_assert_uint_eq(fwrite(block, 1, got, out), got);
	} while (got == sizeof(block));
	ck_assert(!ferror(in));
	ck_assert_int_eq(fclose(in), 0);
	ck_assert_int_eq(fclose(out), 0);
	return true;
}
