/*
 * copy.h - one file as it is, for logs that every test of a program begins with.
 */
#ifndef STILLROOM_TESTS_COPY_H
#define STILLROOM_TESTS_COPY_H

#include <stdbool.h>

/* False when there is no `from`; anything else that fails ends the test. */
bool copy_file(const char *from, const char *to);

#endif
