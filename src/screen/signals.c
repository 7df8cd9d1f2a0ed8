/*
 * signals.c - flags and a pipe for the loop, a rescue for the crash.
 */
#include "screen/signals.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <string.h>
#include <unistd.h>

#define ARRAY_COUNT(a) (sizeof(a) / sizeof((a)[0]))
#define CRASH_STACK_BYTES 65536

/* Caught for the loop; the first four end the program. */
static const int watched[] = {SIGTERM, SIGHUP, SIGINT, SIGQUIT, SIGTSTP, SIGCONT, SIGWINCH};
#define STOPPING 4

static const int crashes[] = {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT};

/* State that a handler must reach and no argument can carry to it. */
static volatile sig_atomic_t flagged[ARRAY_COUNT(watched)];
static int pipe_fds[2] = {-1, -1};
static struct sigaction watched_before[ARRAY_COUNT(watched)];
static struct sigaction crashes_before[ARRAY_COUNT(crashes)];
static struct sigaction pipe_before;
static struct {
	int fd;
	struct termios modes;
	char bytes[SIGNALS_RESCUE_MAX];
	size_t length;
} rescue;
static char crash_stack[CRASH_STACK_BYTES];

/* ---- Handlers: only calls that POSIX lists as safe ---- */

static void on_watched(int signal)
{
	int saved = errno;

	for (size_t i = 0; i < ARRAY_COUNT(watched); i++)
		if (watched[i] == signal)
			flagged[i] = 1;
	/* A full pipe is fine: then the loop wakes anyway. */
	ssize_t ignored = write(pipe_fds[1], "", 1);
	(void)ignored;
	errno = saved;
}

static void on_crash(int signal, siginfo_t *info, void *context)
{
	(void)context;
	ssize_t ignored = write(rescue.fd, rescue.bytes, rescue.length);
	(void)ignored;
	tcsetattr(rescue.fd, TCSANOW, &rescue.modes);
	for (size_t i = 0; i < ARRAY_COUNT(crashes); i++)
		sigaction(crashes[i], &crashes_before[i], NULL);
	/* A fault of the processor happens again on return, with its true address;
	 * one that was sent must be sent again. */
	if (info->si_code <= 0)
		raise(signal);
}

/* ---- Installing ---- */

static bool make_pipe(void)
{
	if (pipe(pipe_fds) != 0)
		return false;
	for (size_t i = 0; i < 2; i++)
		if (fcntl(pipe_fds[i], F_SETFL, O_NONBLOCK) != 0 ||
		    fcntl(pipe_fds[i], F_SETFD, FD_CLOEXEC) != 0)
			return false;
	return true;
}

static void close_pipe(void)
{
	for (size_t i = 0; i < 2; i++) {
		if (pipe_fds[i] >= 0)
			close(pipe_fds[i]);
		pipe_fds[i] = -1;
	}
}

static void catch_watched(void)
{
	struct sigaction action = {.sa_handler = on_watched};

	sigemptyset(&action.sa_mask);
	for (size_t i = 0; i < ARRAY_COUNT(watched); i++) {
		flagged[i] = 0;
		sigaction(watched[i], &action, &watched_before[i]);
	}
}

static void catch_crashes(void)
{
	stack_t stack = {.ss_sp = crash_stack, .ss_size = sizeof(crash_stack)};
	struct sigaction action = {.sa_sigaction = on_crash, .sa_flags = SA_SIGINFO};

	/* Everything is blocked in the handler, SIGTTOU too, so that tcsetattr()
	 * works from the background. */
	sigfillset(&action.sa_mask);
	if (sigaltstack(&stack, NULL) == 0)
		action.sa_flags |= SA_ONSTACK;
	for (size_t i = 0; i < ARRAY_COUNT(crashes); i++)
		sigaction(crashes[i], &action, &crashes_before[i]);
}

bool signals_open(int fd, const struct termios *modes, const char *bytes, size_t length,
                  struct fault *fault)
{
	struct sigaction ignore = {.sa_handler = SIG_IGN};

	if (!make_pipe()) {
		int error = errno;
		close_pipe();
		return fault_set(fault, FAULT_IO, "The system gives no pipe: %s.", strerror(error));
	}
	rescue.fd = fd;
	rescue.modes = *modes;
	rescue.length = length < sizeof(rescue.bytes) ? length : sizeof(rescue.bytes);
	memcpy(rescue.bytes, bytes, rescue.length);
	sigemptyset(&ignore.sa_mask);
	sigaction(SIGPIPE, &ignore, &pipe_before);
	catch_watched();
	catch_crashes();
	return true;
}

void signals_close(void)
{
	const stack_t no_stack = {.ss_flags = SS_DISABLE};

	if (pipe_fds[0] < 0)
		return;
	for (size_t i = 0; i < ARRAY_COUNT(watched); i++)
		sigaction(watched[i], &watched_before[i], NULL);
	for (size_t i = 0; i < ARRAY_COUNT(crashes); i++)
		sigaction(crashes[i], &crashes_before[i], NULL);
	sigaction(SIGPIPE, &pipe_before, NULL);
	sigaltstack(&no_stack, NULL);
	close_pipe();
}

/* ---- For the loop ---- */

int signals_fd(void)
{
	return pipe_fds[0];
}

void signals_drain(void)
{
	char bytes[64];

	while (read(pipe_fds[0], bytes, sizeof(bytes)) > 0)
		;
}

bool signals_take(int signal)
{
	for (size_t i = 0; i < ARRAY_COUNT(watched); i++) {
		if (watched[i] != signal || !flagged[i])
			continue;
		flagged[i] = 0;
		return true;
	}
	return false;
}

int signals_stop_flagged(void)
{
	for (size_t i = 0; i < STOPPING; i++)
		if (flagged[i])
			return watched[i];
	return 0;
}

void signals_stop_process(void)
{
	struct sigaction normal = {.sa_handler = SIG_DFL};
	struct sigaction ours;

	sigemptyset(&normal.sa_mask);
	if (sigaction(SIGTSTP, &normal, &ours) != 0)
		return;
	raise(SIGTSTP);
	sigaction(SIGTSTP, &ours, NULL);
}
