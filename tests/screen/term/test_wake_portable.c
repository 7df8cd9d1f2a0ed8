/*
 * The wake tests once more, over the way that needs no timer descriptors.  The
 * source is included, so that this way is compiled and run on Linux as well.
 */
#define WAKE_PORTABLE
#include "screen/term/wake.c" /* NOLINT(bugprone-suspicious-include) */

#include "test_wake.c" /* NOLINT(bugprone-suspicious-include) */
