/*
 * wake.h - when the loop must wake although no key was pressed.
 *
 * On Linux two timer descriptors: one on CLOCK_BOOTTIME, absolute, which goes on
 * through a suspend and cannot be stepped; one on CLOCK_REALTIME that is
 * cancelled by the kernel when the wall clock is set (timerfd_create(2),
 * TFD_TIMER_CANCEL_ON_SET).  A sleeping computer is not woken by either: the
 * alarm comes when it wakes up.  Elsewhere, or with WAKE_PORTABLE defined, the
 * poll timeout does the work and a set wall clock is noticed at the next wake.
 *
 * Times are `awake_ms` of base/moment.h: milliseconds since this boot,
 * suspended time included.
 */
#ifndef STILLROOM_SCREEN_TERM_WAKE_H
#define STILLROOM_SCREEN_TERM_WAKE_H

#include <poll.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"

#define WAKE_NEVER (-1)
#define WAKE_STEP_MS 1000 /* smaller changes of the wall clock are corrections, not news */

/* What else ends a wait. */
enum wake_also {
	WAKE_KEEPER, /* the log's check or copy has ended */
	WAKE_LOG,    /* somebody has written to the log */
	WAKE_ALSO_COUNT,
};
#define WAKE_FDS_MAX (2 + WAKE_ALSO_COUNT)

struct wake;

struct wake_news {
	bool due;             /* the armed time has come; it is disarmed now */
	bool also;            /* a descriptor of wake_also can be read */
	bool wall_stepped;    /* the wall clock was set by WAKE_STEP_MS or more */
	int64_t wall_step_ms; /* by how much against the awake clock since last told */
};

bool wake_open(struct wake **out, struct fault *fault);
void wake_close(struct wake *wake); /* NULL is harmless */

/* Wake once at this awake time, replacing the one before; a time already past
 * wakes at once; WAKE_NEVER disarms.  False when the system refused. */
bool wake_at_awake_ms(struct wake *wake, int64_t awake_ms);

/* Wake also when `fd` can be read; -1: no longer.  Whoever named it reads it. */
void wake_also(struct wake *wake, enum wake_also which, int fd);

/* For terminal_wait(): what to poll for, and the longest time to poll in
 * milliseconds (-1: for ever).  Returns how many of `fds` were filled in. */
size_t wake_fds(const struct wake *wake, struct pollfd fds[WAKE_FDS_MAX]);
int wake_timeout_ms(const struct wake *wake);

/* What has happened since the last call; never blocks. */
struct wake_news wake_read(struct wake *wake);

/* Pure arithmetic, public for its test.  A poll timeout for a time: 0 when past, -1
 * for WAKE_NEVER, at most a minute, never a millisecond early. */
int wake_timeout_between(int64_t now_ms, int64_t at_ms);

/* How far the wall clock moved against the awake clock between two readings; public for its test. */
int64_t wake_step_between(int64_t wall_then, int64_t awake_then, int64_t wall_now, int64_t awake_now);

#endif
