/*
 * moment.h - an instant as the log keeps it, and the time between two of them.
 *
 * The engine never reads a clock; the kitchen's clock object (kitchen/board/clock.h)
 * makes moments and hands them down.
 *
 * wall_ms   UTC, milliseconds since 1970-01-01; may be stepped by a person or a
 *           time server.
 * awake_ms  milliseconds since this boot, counting suspended time, never
 *           stepped; meaningless after a restart of the computer.
 * boot      the identity of the boot that awake_ms belongs to; "" = not known.
 */
#ifndef STILLROOM_BASE_MOMENT_H
#define STILLROOM_BASE_MOMENT_H

#include <stdbool.h>
#include <stdint.h>

#define BOOT_ID_MAX 40

struct moment {
	int64_t wall_ms;
	int64_t awake_ms;
	char boot[BOOT_ID_MAX];
};

bool moment_same_boot(const struct moment *a, const struct moment *b);

/* Milliseconds from `from` to `to`.  Within one boot the suspend-proof reading
 * serves, so a stepped wall clock moves nothing; across boots the wall clock
 * does.  May be negative when the wall clock went backwards across a restart:
 * callers treat that as "no time has passed" (fails safe: a hold gets longer). */
int64_t moment_between(const struct moment *from, const struct moment *to);

/* `ms` before it. What was before this boot is of one that is not known: the wall clock serves. */
struct moment moment_before(const struct moment *moment, int64_t ms);

/* How far the wall clock moved against the suspend-proof one between two
 * moments of one boot, in milliseconds (positive: the wall clock was set
 * forward).  0 across boots, where it cannot be known. */
int64_t moment_wall_step(const struct moment *from, const struct moment *to);

/* Whole seconds left of `required_ms` after `elapsed_ms`, rounded so that a
 * clock shows 0 only when the time is really over: 1 ms left shows 1 s.
 * Time over is negative and rounds toward zero, so that 0 is shown for the
 * whole first second over. A negative elapsed time counts as 0. */
int64_t moment_seconds_left(int64_t required_ms, int64_t elapsed_ms);

#endif
