/*
 * signals.c - flags and a pipe for the loop, a rescue for the crash.
 */
#include "screen/term/signals.h"

#include "kitchen/board/board.h"
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <string.h>
#include <unistd.h>

#define ARRAY_COUNT(a) (sizeof(a) / sizeof((a)[0]))
#define CRASH_STACK_BYTES 65536

/* Caught for the loop; the first four end the program. */
static const int watched[] = { SIGTERM, SIGHUP, SIGINT, SIGQUIT, SIGTSTP, SIGCONT, SIGWINCH };
#define STOPPING 4

/* SIGXCPU: whoever limits the time of a program wants it to end. */
static const int crashes[] = { SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGSYS, SIGTRAP, SIGXCPU };

/* They would end the program with the terminal as it is, and mean nothing to it: a file
 * that may not grow (SIGXFSZ) is told by the write itself. */
static const int unheeded[] = {
	SIGPIPE,   SIGXFSZ, SIGUSR1, SIGUSR2, SIGALRM, SIGVTALRM, SIGPROF,
#ifdef SIGIO
	SIGIO,
#endif
#ifdef SIGPWR
	SIGPWR,
#endif
#ifdef SIGSTKFLT
	SIGSTKFLT,
#endif
};
#define REALTIME_MAX 64
#ifdef SIGRTMIN
#define FIRST_REALTIME SIGRTMIN
#else
#define FIRST_REALTIME 0 /* macOS has none */
#endif

/* State that a handler must reach and no argument can carry to it. */
static volatile sig_atomic_t flagged[ARRAY_COUNT(watched)];
static int pipe_fds[2] = { -1, -1 };
static struct sigaction watched_before[ARRAY_COUNT(watched)];
static struct sigaction crashes_before[ARRAY_COUNT(crashes)];
static struct sigaction ignored_before[ARRAY_COUNT(unheeded)];
static struct sigaction realtime_before[REALTIME_MAX];
static bool remembered;
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
		if (fcntl(pipe_fds[i], F_SETFL, O_NONBLOCK) != 0 || fcntl(pipe_fds[i], F_SETFD, FD_CLOEXEC) != 0)
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
	struct sigaction action = { .sa_handler = on_watched };

	sigemptyset(&action.sa_mask);
	for (size_t i = 0; i < ARRAY_COUNT(watched); i++) {
		flagged[i] = 0;
		sigaction(watched[i], &action, NULL);
	}
}

static int realtime_count(void)
{
#ifdef SIGRTMIN
	int count = SIGRTMAX - SIGRTMIN + 1;

	return count < REALTIME_MAX ? count : REALTIME_MAX;
#else
	return 0;
#endif
}

static void ignore_others(void)
{
	struct sigaction ignore = { .sa_handler = SIG_IGN };

	sigemptyset(&ignore.sa_mask);
	for (size_t i = 0; i < ARRAY_COUNT(unheeded); i++)
		sigaction(unheeded[i], &ignore, NULL);
	for (int i = 0; i < realtime_count(); i++)
		sigaction(FIRST_REALTIME + i, &ignore, NULL);
}

void signals_remember(void)
{
	for (size_t i = 0; i < ARRAY_COUNT(watched); i++)
		sigaction(watched[i], NULL, &watched_before[i]);
	for (size_t i = 0; i < ARRAY_COUNT(crashes); i++)
		sigaction(crashes[i], NULL, &crashes_before[i]);
	for (size_t i = 0; i < ARRAY_COUNT(unheeded); i++)
		sigaction(unheeded[i], NULL, &ignored_before[i]);
	for (int i = 0; i < realtime_count(); i++)
		sigaction(FIRST_REALTIME + i, NULL, &realtime_before[i]);
	remembered = true;
}

static void put_back(void)
{
	for (size_t i = 0; i < ARRAY_COUNT(watched); i++)
		sigaction(watched[i], &watched_before[i], NULL);
	for (size_t i = 0; i < ARRAY_COUNT(crashes); i++)
		sigaction(crashes[i], &crashes_before[i], NULL);
	for (size_t i = 0; i < ARRAY_COUNT(unheeded); i++)
		sigaction(unheeded[i], &ignored_before[i], NULL);
	for (int i = 0; i < realtime_count(); i++)
		sigaction(FIRST_REALTIME + i, &realtime_before[i], NULL);
	remembered = false;
}

static void catch_crashes(void)
{
	stack_t stack = { .ss_sp = crash_stack, .ss_size = sizeof(crash_stack) };
	struct sigaction action = { .sa_sigaction = on_crash, .sa_flags = SA_SIGINFO };

	/* Everything is blocked in the handler, SIGTTOU too, so that tcsetattr()
	 * works from the background. */
	sigfillset(&action.sa_mask);
	if (sigaltstack(&stack, NULL) == 0)
		action.sa_flags |= SA_ONSTACK;
	for (size_t i = 0; i < ARRAY_COUNT(crashes); i++)
		sigaction(crashes[i], &action, NULL);
}

bool signals_open(int fd, const struct termios *modes, const char *bytes, size_t length, struct fault *fault)
{
	if (!make_pipe()) {
		int error = errno;
		close_pipe();
		return fault_set(fault, FAULT_IO, "The system could not open a pipe: %s.", strerror(error));
	}
	rescue.fd = fd;
	rescue.modes = *modes;
	rescue.length = length < sizeof(rescue.bytes) ? length : sizeof(rescue.bytes);
	memcpy(rescue.bytes, bytes, rescue.length);
	ignore_others();
	catch_watched();
	catch_crashes();
	return true;
}

void signals_close(void)
{
	const stack_t no_stack = { .ss_flags = SS_DISABLE };

	if (remembered)
		put_back();
	if (pipe_fds[0] < 0)
		return;
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
	struct sigaction normal = { .sa_handler = SIG_DFL };
	struct sigaction ours;

	sigemptyset(&normal.sa_mask);
	if (sigaction(SIGTSTP, &normal, &ours) != 0)
		return;
	raise(SIGTSTP);
	sigaction(SIGTSTP, &ours, NULL);
}
