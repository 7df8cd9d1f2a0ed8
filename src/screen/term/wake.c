/*
 * wake.c - timer descriptors on Linux, a poll timeout elsewhere.
 */
#include "screen/term/wake.h"

#include "kitchen/board/clock.h"
#include <errno.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#if defined(__linux__) && !defined(WAKE_PORTABLE)
#define WAKE_TIMERFD 1
#include <sys/timerfd.h>
#else
#define WAKE_TIMERFD 0
#endif

#define TIMEOUT_MAX_MS 60000
/* The step watch needs some time to be armed for; far enough that it never comes. */
#define WATCH_AHEAD_S (400LL * 24 * 3600)

struct wake {
	int64_t at_ms;   /* armed awake time, WAKE_NEVER when not */
	int64_t wall_ms; /* the two clocks when a step was last told */
	int64_t awake_ms;
	int timer_fd; /* -1 where there are no timer descriptors */
	int watch_fd;
	int also_fd[WAKE_ALSO_COUNT]; /* -1: none */
};

static int64_t clock_ms(clockid_t clock)
{
	struct timespec now = { 0 };

	if (clock_gettime(clock, &now) != 0)
		return 0;
	return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

int wake_timeout_between(int64_t now_ms, int64_t at_ms)
{
	if (at_ms == WAKE_NEVER)
		return -1;
	if (at_ms <= now_ms)
		return 0;
	if (now_ms < 0 || at_ms - now_ms > TIMEOUT_MAX_MS)
		return TIMEOUT_MAX_MS;
	return (int)(at_ms - now_ms);
}

int64_t wake_step_between(int64_t wall_then, int64_t awake_then, int64_t wall_now, int64_t awake_now)
{
	return (wall_now - wall_then) - (awake_now - awake_then);
}

/* ---- Timer descriptors ---- */

#if WAKE_TIMERFD

static bool timers_arm(const struct wake *wake)
{
	struct itimerspec when = { 0 };

	if (wake->at_ms != WAKE_NEVER) {
		int64_t at = wake->at_ms > 0 ? wake->at_ms : 0;
		when.it_value.tv_sec = (time_t)(at / 1000);
		/* All zero would disarm; one nanosecond after the boot is past anyway. */
		when.it_value.tv_nsec = (long)(at % 1000) * 1000000 + (at == 0);
	}
	return timerfd_settime(wake->timer_fd, TFD_TIMER_ABSTIME, &when, NULL) == 0;
}

static bool timers_watch(const struct wake *wake)
{
	struct itimerspec when = { 0 };

	when.it_value.tv_sec = (time_t)(clock_ms(CLOCK_REALTIME) / 1000 + WATCH_AHEAD_S);
	if (timerfd_settime(wake->watch_fd, TFD_TIMER_ABSTIME | TFD_TIMER_CANCEL_ON_SET, &when, NULL) == 0)
		return true;
	/* Set again between two calls: the timer is armed all the same. */
	return errno == ECANCELED;
}

static bool timers_open(struct wake *wake)
{
	wake->timer_fd = timerfd_create(CLOCK_BOOTTIME, TFD_NONBLOCK | TFD_CLOEXEC);
	wake->watch_fd = timerfd_create(CLOCK_REALTIME, TFD_NONBLOCK | TFD_CLOEXEC);
	return wake->timer_fd >= 0 && wake->watch_fd >= 0 && timers_arm(wake) && timers_watch(wake);
}

/* Was the watch cancelled (or did its far day come)?  Rearms it. */
static bool timers_cancelled(const struct wake *wake)
{
	uint64_t expirations = 0;
	ssize_t got = read(wake->watch_fd, &expirations, sizeof(expirations));

	if (got < 0 && errno != ECANCELED)
		return false;
	timers_watch(wake);
	return true;
}

#else

static bool timers_arm(const struct wake *wake)
{
	(void)wake;
	return true;
}

static bool timers_open(struct wake *wake)
{
	wake->timer_fd = -1;
	wake->watch_fd = -1;
	return true;
}

static bool timers_cancelled(const struct wake *wake)
{
	(void)wake;
	return true; /* nobody tells us, so look every time */
}

#endif

/* ---- The public part ---- */

static void remember_clocks(struct wake *wake)
{
	wake->awake_ms = clock_awake_ms();
	wake->wall_ms = clock_ms(CLOCK_REALTIME);
}

bool wake_open(struct wake **out, struct fault *fault)
{
	struct wake *wake = calloc(1, sizeof(*wake));

	if (!wake)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory to set a timer.");
	wake->at_ms = WAKE_NEVER;
	wake->timer_fd = -1;
	wake->watch_fd = -1;
	for (int i = 0; i < WAKE_ALSO_COUNT; i++)
		wake->also_fd[i] = -1;
	remember_clocks(wake);
	if (!timers_open(wake)) {
		int error = errno;
		wake_close(wake);
		return fault_set(fault, FAULT_IO, "The system could not set a timer: %s.", strerror(error));
	}
	*out = wake;
	return true;
}

void wake_close(struct wake *wake)
{
	if (!wake)
		return;
	if (wake->timer_fd >= 0)
		close(wake->timer_fd);
	if (wake->watch_fd >= 0)
		close(wake->watch_fd);
	free(wake);
}

bool wake_at_awake_ms(struct wake *wake, int64_t awake_ms)
{
	wake->at_ms = awake_ms < 0 ? WAKE_NEVER : awake_ms;
	return timers_arm(wake);
}

void wake_also(struct wake *wake, enum wake_also which, int fd)
{
	wake->also_fd[which] = fd;
}

static size_t also_fds(const struct wake *wake, struct pollfd fds[WAKE_ALSO_COUNT])
{
	size_t count = 0;

	for (int i = 0; i < WAKE_ALSO_COUNT; i++)
		if (wake->also_fd[i] >= 0)
			fds[count++] = (struct pollfd){ .fd = wake->also_fd[i], .events = POLLIN };
	return count;
}

static bool also_is_ready(const struct wake *wake)
{
	struct pollfd fds[WAKE_ALSO_COUNT];
	size_t count = also_fds(wake, fds);

	return count > 0 && poll(fds, (nfds_t)count, 0) > 0;
}

size_t wake_fds(const struct wake *wake, struct pollfd fds[WAKE_FDS_MAX])
{
	size_t count = 0;

	if (wake->timer_fd >= 0)
		fds[count++] = (struct pollfd){ .fd = wake->timer_fd, .events = POLLIN };
	if (wake->watch_fd >= 0)
		fds[count++] = (struct pollfd){ .fd = wake->watch_fd, .events = POLLIN };
	return count + also_fds(wake, fds + count);
}

int wake_timeout_ms(const struct wake *wake)
{
	if (WAKE_TIMERFD)
		return -1;
	return wake_timeout_between(clock_awake_ms(), wake->at_ms);
}

static void look_for_step(struct wake *wake, struct wake_news *news)
{
	int64_t step = wake_step_between(wake->wall_ms, wake->awake_ms, clock_ms(CLOCK_REALTIME), clock_awake_ms());

	/* The kernel also cancels after a suspend; that is no step. */
	if (step > -WAKE_STEP_MS && step < WAKE_STEP_MS)
		return;
	news->wall_stepped = true;
	news->wall_step_ms = step;
	remember_clocks(wake);
}

struct wake_news wake_read(struct wake *wake)
{
	struct wake_news news = { 0 };

	/* The clock decides, not the descriptor, which may become readable a moment
	 * after its time; arming for never empties it. */
	if (wake->at_ms != WAKE_NEVER && clock_awake_ms() >= wake->at_ms) {
		news.due = true;
		wake->at_ms = WAKE_NEVER;
		timers_arm(wake);
	}
	news.also = also_is_ready(wake);
	if (timers_cancelled(wake))
		look_for_step(wake, &news);
	return news;
}
