/*
 * The terminal layer on a real pseudo-terminal: what comes in becomes events,
 * and whatever happens, modes and screen are as they were.
 *
 * This program is also the board under test: `test_terminal --harness` opens the
 * terminal, draws a small frame and writes one line for each event to
 * descriptor 3 when there is one.  It can be tried by hand as well.  Keys there:
 *   q leave   c crash   a abort()   e exit() without closing   b bell   w a tick in 50 ms
 *   n a tick now
 *
 * The harness is the child of a small "shell", which owns the session and the
 * terminal, because a process without such a parent cannot be stopped.
 */
#include <check.h>
#include <curses.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

#include "kitchen/board/clock.h"
#include "screen/term/digits.h"
#include "screen/term/terminal.h"
#include "screen/term/wake.h"
#include "support/tests.h"

#define REPORT_FD 3
#define LIMIT_MS 120000 /* only for what hangs */
#define CAPTURE_BYTES 262144

/* ---- The harness ---- */

static void report(const char *format, ...) __attribute__((format(printf, 1, 2)));
static void report(const char *format, ...)
{
	char line[512];
	va_list args;

	va_start(args, format);
	int length = vsnprintf(line, sizeof(line), format, args);
	va_end(args);
	if (length > 0 && write(REPORT_FD, line, (size_t)length) < 0)
		return;
}

static void crash(void)
{
	char *page = mmap(NULL, 4096, PROT_NONE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);

	*(volatile char *)page = 1;
}

static void harness_frame(struct terminal *terminal, const char *last)
{
	const char *text = getenv("HARNESS_TEXT");
	int rows = 0;
	int cols = 0;

	terminal_size(terminal, &rows, &cols);
	terminal_begin_frame(terminal);
	terminal_fill(terminal, 0, 0, cols, ROLE_HEADER, GLYPH_SPACE);
	terminal_putf(terminal, 0, 1, cols - 2, ROLE_HEADER, "harness %dx%d", rows, cols);
	terminal_put(terminal, 1, 0, cols, ROLE_RUNNING, last);
	terminal_put(terminal, 2, 0, 20, ROLE_ALARM, text ? text : "");
	terminal_fill(terminal, 3, -5, 10, ROLE_PLAIN, GLYPH_HOLD);
	terminal_fill(terminal, 3, 0, 9999, ROLE_QUIET, GLYPH_WATCHED);
	digits_draw(terminal, 5, 2, "1:07:05", DIGITS_TALL, ROLE_STRONG);
	digits_draw(terminal, 12, -4, "8:88:88", DIGITS_GIANT, ROLE_STRONG);
	terminal_put(terminal, rows, 0, cols, ROLE_PLAIN, "below the window");
	terminal_put(terminal, rows - 1, cols - 1, 5, ROLE_PLAIN, "corner");
	terminal_end_frame(terminal);
}

static bool harness_key(struct terminal *terminal, struct wake *wake, const struct terminal_input *in)
{
	if (in->is_function_key) {
		report("function %d\n", in->key);
		return true;
	}
	report("key %u\n", (unsigned)in->ch);
	switch (in->ch) {
	case 'q': return false;
	case 'c': crash(); return true;
	case 'a': abort();
	case 'e': exit(7);
	case 'b': terminal_bell(terminal); return true;
	case 'd': report("delay %d\n", get_escdelay()); return true;
	case 'w': wake_at_awake_ms(wake, clock_awake_ms() + 50); return true;
	case 'n': wake_at_awake_ms(wake, 0); return true;
	default: return true;
	}
}

/* What an event is called in the report; true to go on. */
static bool harness_event(struct terminal *terminal, struct wake *wake, const struct terminal_input *in)
{
	int rows = 0;
	int cols = 0;

	switch (in->event) {
	case TERMINAL_NOTHING: return true;
	case TERMINAL_KEY: return harness_key(terminal, wake, in);
	case TERMINAL_RESIZED:
		terminal_size(terminal, &rows, &cols);
		report("resized %dx%d\n", rows, cols);
		return true;
	case TERMINAL_STOP: report("stop %d\n", in->signal); return false;
	case TERMINAL_GONE: report("gone\n"); return false;
	case TERMINAL_TICK: report("tick %d\n", in->due); return true;
	case TERMINAL_CONTINUED: report("continued\n"); return true;
	case TERMINAL_PASTE:
		report("paste %s %zu", in->paste_whole ? "whole" : "cut", strlen(in->paste));
		for (const char *at = in->paste; at - in->paste < 40 && *at != '\0'; at++)
			report(" %02x", (unsigned)(unsigned char)*at);
		report("\n");
		return true;
	}
	return true;
}

/* How long three more waits take once the terminal is gone: no spinning. */
static void harness_after_gone(struct terminal *terminal, struct wake *wake)
{
	struct terminal_input in;
	int64_t from = clock_awake_ms();

	for (int i = 0; i < 3; i++)
		terminal_wait(terminal, wake, &in);
	report("waited %s\n", clock_awake_ms() - from >= 600 ? "long" : "short");
}

#define SIGNALS 65 /* numbers 1 to 64 */

static void read_handlers(struct sigaction handlers[SIGNALS])
{
	memset(handlers, 0, SIGNALS * sizeof(handlers[0]));
	for (int i = 1; i < SIGNALS; i++)
		(void)sigaction(i, NULL, &handlers[i]);
}

/* What every signal does is as it was before the terminal was opened. */
static void report_handlers(const struct sigaction before[SIGNALS])
{
	struct sigaction now[SIGNALS];
	int other = 0;

	read_handlers(now);
	for (int i = 1; i < SIGNALS && other == 0; i++)
		if (now[i].sa_handler != before[i].sa_handler)
			other = i;
	report("other handler %d\n", other);
}

static int harness(void)
{
	struct sigaction before[SIGNALS];
	struct terminal_wishes wishes = { .ascii = getenv("HARNESS_ASCII") != NULL };
	struct terminal *terminal = NULL;
	struct wake *wake = NULL;
	struct fault fault = { 0 };
	struct terminal_input in = { 0 };
	sigset_t hup;

	sigemptyset(&hup);
	sigaddset(&hup, SIGHUP);
	if (getenv("HARNESS_NOHUP"))
		sigprocmask(SIG_BLOCK, &hup, NULL);
	read_handlers(before);
	if (!wake_open(&wake, &fault) || !terminal_open(&wishes, &terminal, &fault)) {
		report("fault %s\n", fault.sentence);
		wake_close(wake);
		return 2;
	}
	report("open utf8=%d color=%d\n", terminal_utf8(terminal), terminal_color(terminal));
	do {
		harness_frame(terminal, "waiting");
		terminal_wait(terminal, wake, &in);
	} while (harness_event(terminal, wake, &in));
	if (in.event == TERMINAL_GONE)
		harness_after_gone(terminal, wake);
	terminal_close(terminal);
	wake_close(wake);
	if (getenv("HARNESS_HANDLERS"))
		report_handlers(before);
	return 0;
}

/* ---- The shell between the test and the harness ---- */

static void run_harness(const char *self)
{
	sigset_t background;

	/* Take the foreground, which a background process may do only while
	 * SIGTTOU is blocked. */
	sigemptyset(&background);
	sigaddset(&background, SIGTTOU);
	sigprocmask(SIG_BLOCK, &background, NULL);
	setpgid(0, 0);
	tcsetpgrp(0, getpid());
	sigprocmask(SIG_UNBLOCK, &background, NULL);
	signal(SIGHUP, SIG_DFL);
	execl(self, self, "--harness", (char *)NULL);
	_exit(120);
}

static void report_status(int status)
{
	if (WIFSTOPPED(status))
		report("stopped\n");
	else if (WIFSIGNALED(status))
		report("killed %d\n", WTERMSIG(status));
	else if (WIFEXITED(status))
		report("exited %d\n", WEXITSTATUS(status));
}

static void shell(const char *slave, const char *self)
{
	int status = 0;

	setsid();
	int fd = open(slave, O_RDWR);
	if (fd < 0 || ioctl(fd, TIOCSCTTY, 0) != 0)
		_exit(121);
	for (int i = 0; i < 3; i++)
		if (dup2(fd, i) < 0)
			_exit(122);
	if (fd > REPORT_FD)
		close(fd);
	signal(SIGHUP, SIG_IGN);
	pid_t pid = fork();
	if (pid == 0)
		run_harness(self);
	report("pid %d\n", (int)pid);
	do {
		if (waitpid(pid, &status, WUNTRACED) != pid)
			_exit(123);
		report_status(status);
	} while (WIFSTOPPED(status));
	_exit(0);
}

/* ---- The test's side ---- */

static const char *self_path;
static int master = -1;
static int slave_kept = -1; /* keeps the line alive after the harness has left */
static int reports = -1;
static pid_t shell_pid;
static pid_t harness_pid;
static struct termios modes_before;
static char screen[CAPTURE_BYTES]; /* everything the harness has sent */
static size_t screen_used;
static char lines[16384]; /* everything it has reported */
static size_t lines_used;
static size_t lines_read; /* where expect() looks on */

static int64_t now_ms(void)
{
	struct timespec now;

	clock_gettime(CLOCK_MONOTONIC, &now);
	return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

static void take(int fd, char *buffer, size_t size, size_t *used)
{
	if (size - *used <= 1)
		ck_abort_msg("capture is full");
	ssize_t got = read(fd, buffer + *used, size - *used - 1);
	if (got > 0)
		*used += (size_t)got;
	buffer[*used] = '\0';
}

/* Read what has come, for at most `wait_ms`; false when nothing came. */
static bool pump(int wait_ms)
{
	struct pollfd fds[] = { { .fd = master, .events = POLLIN }, { .fd = reports, .events = POLLIN } };

	if (poll(fds, 2, wait_ms) <= 0)
		return false;
	if (fds[0].revents & POLLIN)
		take(master, screen, sizeof(screen), &screen_used);
	if (fds[1].revents & POLLIN)
		take(reports, lines, sizeof(lines), &lines_used);
	return (fds[0].revents | fds[1].revents) & POLLIN;
}

/* The next report must begin like this within the limit; returns the rest. */
static const char *expect(const char *start)
{
	int64_t until = now_ms() + LIMIT_MS;
	size_t length = strlen(start);

	for (;;) {
		char *line = lines + lines_read;
		char *end = memchr(line, '\n', lines_used - lines_read);
		if (end) {
			*end = '\0';
			lines_read = (size_t)(end + 1 - lines);
			ck_assert_msg(strncmp(line, start, length) == 0, "expected \"%s\", got \"%s\"", start, line);
			return line + length;
		}
		pump(100);
		if (now_ms() > until)
			ck_abort_msg("\"%s\" did not come", start);
	}
}

/* Nothing more is to be reported for a while. */
static void expect_silence(int ms)
{
	int64_t until = now_ms() + ms;

	while (now_ms() < until)
		pump(20);
	ck_assert_msg(lines_read == lines_used, "unexpected: %s", lines + lines_read);
}

static void drain_screen(void)
{
	while (pump(50))
		;
}

static void type(const char *keys)
{
	ck_assert_int_eq(write(master, keys, strlen(keys)), (ssize_t)strlen(keys));
}

static void set_size(unsigned short rows, unsigned short cols)
{
	struct winsize size = { .ws_row = rows, .ws_col = cols };

	ck_assert_int_eq(ioctl(master, TIOCSWINSZ, &size), 0);
}

static void launch(void)
{
	int pipe_ends[2];
	char name[128];

	master = posix_openpt(O_RDWR | O_NOCTTY);
	ck_assert_int_ge(master, 0);
	ck_assert_int_eq(grantpt(master), 0);
	ck_assert_int_eq(unlockpt(master), 0);
	snprintf(name, sizeof(name), "%s", ptsname(master));
	slave_kept = open(name, O_RDWR | O_NOCTTY);
	ck_assert_int_ge(slave_kept, 0);
	ck_assert_int_eq(tcgetattr(slave_kept, &modes_before), 0);
	set_size(24, 80);
	ck_assert_int_eq(pipe(pipe_ends), 0);
	reports = pipe_ends[0];
	shell_pid = fork();
	ck_assert_int_ge(shell_pid, 0);
	if (shell_pid == 0) {
		int out = fcntl(pipe_ends[1], F_DUPFD, 10);
		close(master);
		close(slave_kept);
		close(reports);
		close(pipe_ends[1]);
		dup2(out, REPORT_FD);
		close(out);
		shell(name, self_path);
	}
	close(pipe_ends[1]);
	harness_pid = (pid_t)atoi(expect("pid "));
}

static void launch_open(void)
{
	launch();
	expect("open ");
	drain_screen();
}

static void start(void)
{
	setenv("TERM", "xterm-256color", 1);
	setenv("LC_ALL", "C.UTF-8", 1);
	unsetenv("NO_COLOR");
	unsetenv("ESCDELAY");
	unsetenv("LINES");
	unsetenv("COLUMNS");
	screen_used = 0;
	lines_used = 0;
	lines_read = 0;
	shell_pid = 0;
	harness_pid = 0;
}

static void end(void)
{
	if (harness_pid > 0)
		kill(harness_pid, SIGKILL);
	if (shell_pid > 0)
		waitpid(shell_pid, NULL, 0);
	if (master >= 0)
		close(master);
	close(slave_kept);
	close(reports);
}

/* The last place of a byte string in what was sent; -1 when nowhere. */
static long last_place(const char *bytes)
{
	size_t length = strlen(bytes);

	for (size_t i = screen_used; i-- > 0;)
		if (i + length <= screen_used && memcmp(screen + i, bytes, length) == 0)
			return (long)i;
	return -1;
}

/* The sequences of TERM=xterm-256color: alternate screen, cursor, keypad, marked pastes. */
static void check_restored(void)
{
	struct termios now;

	drain_screen();
	ck_assert_int_ge(last_place("\x1b[?1049h"), 0);
	ck_assert_int_gt(last_place("\x1b[?1049l"), last_place("\x1b[?1049h"));
	ck_assert_int_gt(last_place("\x1b[?25h"), last_place("\x1b[?25l"));
	ck_assert_int_gt(last_place("\x1b[?1l"), last_place("\x1b[?1h"));
	ck_assert_int_ge(last_place("\x1b[?2004h"), 0);
	ck_assert_int_gt(last_place("\x1b[?2004l"), last_place("\x1b[?2004h"));
	ck_assert_int_eq(tcgetattr(slave_kept, &now), 0);
	ck_assert_uint_eq(now.c_iflag, modes_before.c_iflag);
	ck_assert_uint_eq(now.c_oflag, modes_before.c_oflag);
	ck_assert_uint_eq(now.c_cflag, modes_before.c_cflag);
	ck_assert_uint_eq(now.c_lflag, modes_before.c_lflag);
	ck_assert_int_eq(memcmp(now.c_cc, modes_before.c_cc, sizeof(now.c_cc)), 0);
}

static void check_taken(void)
{
	struct termios now;

	drain_screen();
	ck_assert_int_gt(last_place("\x1b[?1049h"), last_place("\x1b[?1049l"));
	ck_assert_int_gt(last_place("\x1b[?2004h"), last_place("\x1b[?2004l"));
	ck_assert_int_eq(tcgetattr(slave_kept, &now), 0);
	ck_assert_uint_eq(now.c_lflag & (tcflag_t)(ICANON | ECHO), 0);
}

/* ---- Ways to leave ---- */

START_TEST(a_key_leaves_and_everything_is_restored)
{
	launch_open();
	check_taken();
	type("q");
	expect("key 113");
	expect("exited 0");
	check_restored();
}
END_TEST

static const int stops[] = { SIGTERM, SIGHUP, SIGINT, SIGQUIT };

START_TEST(a_stopping_signal_leaves_cleanly)
{
	launch_open();
	ck_assert_int_eq(kill(harness_pid, stops[_i]), 0);
	ck_assert_int_eq(atoi(expect("stop ")), stops[_i]);
	expect("exited 0");
	check_restored();
}
END_TEST

/* Those that curses puts in place would find its memory gone. */
START_TEST(the_handlers_of_before_come_back)
{
	setenv("HARNESS_HANDLERS", "1", 1);
	launch_open();
	type("q");
	expect("key 113");
	ck_assert_str_eq(expect("other handler "), "0");
	expect("exited 0");
	unsetenv("HARNESS_HANDLERS");
}
END_TEST

static const int meaningless[] = { SIGXFSZ, SIGUSR1, SIGUSR2, SIGALRM, SIGVTALRM, SIGPROF, SIGPIPE, 34, 64 };

START_TEST(a_signal_that_means_nothing_does_nothing)
{
	launch_open();
	ck_assert_int_eq(kill(harness_pid, meaningless[_i]), 0);
	type("x");
	expect("key 120");
	type("q");
	expect("key 113");
	expect("exited 0");
	check_restored();
}
END_TEST

START_TEST(control_c_and_control_backslash_are_keys)
{
	launch_open();
	type("\x03");
	expect("key 3");
	type("\x1c");
	expect("key 28");
	type("q");
	expect("key 113");
	expect("exited 0");
	check_restored();
}
END_TEST

START_TEST(exit_without_closing_restores)
{
	launch_open();
	type("e");
	expect("key 101");
	expect("exited 7");
	check_restored();
}
END_TEST

/* A sanitizer may turn the crash into an exit of its own; it is an end anyway. */
static void expect_death(int signal_number)
{
	const char *line = expect("");

	if (strncmp(line, "exited ", 7) == 0)
		ck_assert_int_ne(atoi(line + 7), 0);
	else {
		ck_assert_int_eq(strncmp(line, "killed ", 7), 0);
		ck_assert_int_eq(atoi(line + 7), signal_number);
	}
}

START_TEST(a_crash_restores_and_still_is_a_crash)
{
	launch_open();
	type("c");
	expect("key 99");
	expect_death(SIGSEGV);
	check_restored();
}
END_TEST

START_TEST(an_abort_restores_and_still_is_an_abort)
{
	launch_open();
	type("a");
	expect("key 97");
	expect_death(SIGABRT);
	check_restored();
}
END_TEST

static const int crashes[] = { SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGSYS, SIGTRAP, SIGXCPU };

START_TEST(a_crash_signal_from_outside_restores)
{
	launch_open();
	ck_assert_int_eq(kill(harness_pid, crashes[_i]), 0);
	expect_death(crashes[_i]);
	check_restored();
}
END_TEST

/* ---- A terminal that nobody reads ---- */

/* The next report, while what the harness sends is not read. */
static const char *expect_unread(const char *start)
{
	int screen_end = master;

	master = -1; /* poll() passes over it */
	const char *rest = expect(start);
	master = screen_end;
	return rest;
}

/* Whole frames, until the line holds far more than it can. */
static void fill_line(void)
{
	for (int i = 0; i < 150; i++) {
		ck_assert_int_eq(kill(harness_pid, SIGCONT), 0);
		expect_unread("continued");
	}
}

START_TEST(a_terminal_that_nobody_reads_holds_up_no_tick_and_no_end)
{
	launch_open();
	fill_line();
	type("n");
	expect_unread("key 110");
	expect_unread("tick 1");
	ck_assert_int_eq(kill(harness_pid, SIGTERM), 0);
	expect_unread("stop 15");
	expect_unread("exited 0");
}
END_TEST

/* What was left out is not missed: the newest frame comes when there is room. */
START_TEST(who_reads_again_gets_the_newest_frame)
{
	size_t opened;

	launch_open();
	opened = screen_used; /* what it was opened with is kept, to be compared with its end */
	fill_line();
	set_size(20, 70);
	expect_unread("resized 20x70");
	screen_used = opened;
	for (int i = 0; i < 200 && last_place("harness 20x70") < 0; i++) {
		pump(50);
		if (screen_used > CAPTURE_BYTES / 2 && last_place("harness 20x70") < 0)
			screen_used = opened;
	}
	ck_assert_int_ge(last_place("harness 20x70"), 0);
	type("q");
	expect("key 113");
	expect("exited 0");
	check_restored();
}
END_TEST

/* ---- Stopping and going on ---- */

START_TEST(control_z_gives_the_screen_back_and_fg_takes_it_again)
{
	launch_open();
	for (int round = 0; round < 2; round++) {
		type("\x1a");
		expect("stopped");
		check_restored();
		kill(harness_pid, SIGCONT);
		expect("continued");
		check_taken();
		ck_assert_int_gt(last_place("harness"), last_place("\x1b[?1049h"));
	}
	expect_silence(100);
	type("q");
	expect("key 113");
	expect("exited 0");
	check_restored();
}
END_TEST

START_TEST(a_hard_stop_is_followed_by_a_full_repaint)
{
	launch_open();
	kill(harness_pid, SIGSTOP);
	expect("stopped");
	drain_screen();
	/* A shell puts its own modes back meanwhile. */
	ck_assert_int_eq(tcsetattr(slave_kept, TCSANOW, &modes_before), 0);
	screen_used = 0;
	kill(harness_pid, SIGCONT);
	expect("continued");
	check_taken();
	ck_assert_int_gt(last_place("harness"), last_place("\x1b[?1049h"));
	type("q");
	expect("key 113");
	expect("exited 0");
	check_restored();
}
END_TEST

START_TEST(a_resize_while_stopped_is_noticed)
{
	launch_open();
	type("\x1a");
	expect("stopped");
	drain_screen();
	set_size(30, 100);
	kill(harness_pid, SIGCONT);
	expect("continued");
	drain_screen();
	ck_assert_int_ge(last_place("30x100"), 0);
	type("q");
	expect("key 113");
}
END_TEST

START_TEST(killed_while_stopped_leaves_without_drawing)
{
	launch_open();
	type("\x1a");
	expect("stopped");
	drain_screen();
	long before = last_place("\x1b[?1049h");
	kill(harness_pid, SIGTERM);
	kill(harness_pid, SIGCONT);
	ck_assert_int_eq(atoi(expect("stop ")), SIGTERM);
	expect("exited 0");
	check_restored();
	ck_assert_int_eq(last_place("\x1b[?1049h"), before);
}
END_TEST

/* ---- What comes in ---- */

START_TEST(a_resize_is_an_event_and_is_drawn)
{
	launch_open();
	set_size(40, 120);
	ck_assert_str_eq(expect("resized "), "40x120");
	set_size(5, 10);
	ck_assert_str_eq(expect("resized "), "5x10");
	set_size(1, 1);
	ck_assert_str_eq(expect("resized "), "1x1");
	set_size(24, 80);
	ck_assert_str_eq(expect("resized "), "24x80");
	drain_screen();
	ck_assert_int_ge(last_place("40x120"), 0);
	expect_silence(100);
}
END_TEST

START_TEST(keys_come_one_by_one_in_order)
{
	launch_open();
	type("xyz\r");
	expect("key 120");
	expect("key 121");
	expect("key 122");
	expect("key 13");
}
END_TEST

START_TEST(characters_are_whole_even_when_their_bytes_are_not)
{
	launch_open();
	type("\xc3");
	expect_silence(120);
	type("\xa9");
	expect("key 233");
	type("\xe2\x82\xac");
	expect("key 8364");
}
END_TEST

START_TEST(a_broken_character_does_not_swallow_the_next_key)
{
	launch_open();
	type("\xffx");
	expect("key 65533");
	expect("key 120");
	type("\xc3y");
	expect("key 121");
	type("z");
	expect("key 122");
}
END_TEST

START_TEST(function_keys_and_escape_are_told_apart)
{
	launch_open();
	type("\x1bOA");
	ck_assert_int_eq(atoi(expect("function ")), KEY_UP);
	type("\x1bOP");
	ck_assert_int_eq(atoi(expect("function ")), KEY_F(1));
	type("\x1b");
	expect("key 27");
	type("d");
	expect("key 100");
	/* How long a lone Escape waits for the rest of a function key; the library's own
	 * delay, 1,000 ms, would be felt. */
	ck_assert_int_le(atoi(expect("delay ")), 100);
}
END_TEST

/* Both are there before the first is read: Escape is no Alt that swallows a key. */
START_TEST(a_key_right_after_escape_is_a_key)
{
	launch_open();
	type("\x1bx\x1b\x1bz\x1b\x1bOA");
	expect("key 27");
	expect("key 120");
	expect("key 27");
	expect("key 27");
	expect("key 122");
	expect("key 27");
	ck_assert_int_eq(atoi(expect("function ")), KEY_UP);
}
END_TEST

START_TEST(control_s_is_a_key_and_freezes_nothing)
{
	launch_open();
	type("\x13");
	expect("key 19");
	type("x");
	expect("key 120");
}
END_TEST

START_TEST(a_tick_comes_once)
{
	launch_open();
	type("w");
	expect("key 119");
	expect("tick 1");
	expect_silence(150);
}
END_TEST

START_TEST(pasted_keys_cannot_hold_up_a_tick_nor_ticks_a_key)
{
	launch_open();
	type("nxnyz");
	expect("key 110");
	expect("tick 1");
	expect("key 120");
	expect("key 110");
	expect("tick 1");
	expect("key 121");
	expect("key 122");
}
END_TEST

/* ---- Pastes ---- */

START_TEST(a_paste_is_one_event_and_no_keys)
{
	launch_open();
	type("x\x1b[200~q c\xc3\xa9\r\x03\x1b[201~y");
	expect("key 120");
	ck_assert_str_eq(expect("paste "), "whole 7 71 20 63 c3 a9 0d 03");
	expect("key 121");
	expect_silence(50);
}
END_TEST

START_TEST(a_paste_may_come_in_pieces_and_a_tick_in_between)
{
	launch_open();
	type("w");
	expect("key 119");
	type("\x1b[200~quit");
	expect("tick 1");
	expect_silence(50);
	type("e\x1b[201~");
	ck_assert_str_eq(expect("paste "), "whole 5 71 75 69 74 65");
}
END_TEST

START_TEST(too_long_a_paste_is_cut_and_says_so)
{
	char many[3000];

	memset(many, 'e', sizeof(many) - 1);
	many[sizeof(many) - 1] = '\0';
	launch_open();
	type("\x1b[200~");
	type(many);
	type("\x1b[201~z");
	ck_assert_int_eq(strncmp(expect("paste "), "cut 1023 65", 11), 0);
	expect("key 122");
}
END_TEST

START_TEST(a_function_key_in_a_paste_makes_it_not_whole)
{
	launch_open();
	type("\x1b[200~a\x1bOAb\x1b[201~");
	ck_assert_str_eq(expect("paste "), "cut 2 61 62");
}
END_TEST

START_TEST(a_paste_whose_end_is_lost_is_over_after_a_silence)
{
	launch_open();
	type("\x1b[200~qq");
	expect_silence(2500);
	type("x");
	ck_assert_str_eq(expect("paste "), "cut 2 71 71");
	expect("key 120");
}
END_TEST

START_TEST(an_end_without_a_beginning_is_nothing)
{
	launch_open();
	type("\x1b[201~x");
	expect("key 120");
}
END_TEST

START_TEST(a_terminal_of_another_kind_is_not_asked)
{
	setenv("TERM", "vt52", 1);
	launch_open();
	ck_assert_int_lt(last_place("\x1b[?2004h"), 0);
}
END_TEST

/* ---- A terminal that goes away ---- */

START_TEST(a_closed_window_ends_the_board)
{
	launch_open();
	close(slave_kept);
	slave_kept = -1;
	close(master);
	master = -1;
	/* Who gets the signal depends on the session; either way it is the end. */
	const char *line = expect("");
	ck_assert_msg(strcmp(line, "stop 1") == 0 || strcmp(line, "gone") == 0, "%s", line);
	if (strcmp(line, "gone") == 0)
		expect("waited long");
	expect("exited 0");
}
END_TEST

START_TEST(a_closed_window_is_noticed_without_a_signal_and_never_spins)
{
	setenv("HARNESS_NOHUP", "1", 1);
	launch_open();
	close(slave_kept);
	slave_kept = -1;
	close(master);
	master = -1;
	expect("gone");
	expect("waited long");
	expect("exited 0");
}
END_TEST

/* ---- What goes out ---- */

START_TEST(hostile_text_is_drawn_harmless)
{
	setenv("HARNESS_TEXT", "a\x1b]0;owned\x07\xe2\x80\xae\xffz", 1);
	launch_open();
	ck_assert_int_eq(last_place("\x1b]0;"), -1);
	ck_assert_int_eq(last_place("\xe2\x80\xae"), -1);
	ck_assert_int_ge(last_place("a?]0;owned???z"), 0);
}
END_TEST

START_TEST(color_is_used_and_no_color_turns_it_off)
{
	launch();
	ck_assert_str_eq(expect("open "), "utf8=1 color=1");
	drain_screen();
	ck_assert_int_ge(last_place("48;5;22"), 0);
	end();
	start();
	setenv("NO_COLOR", "1", 1);
	launch();
	ck_assert_str_eq(expect("open "), "utf8=1 color=0");
	drain_screen();
	ck_assert_int_eq(last_place("8;5;"), -1);
	ck_assert_int_eq(last_place("\x1b[3"), -1);
	ck_assert_int_ge(last_place("harness"), 0);
	end();
	start();
	setenv("NO_COLOR", "", 1); /* present and empty does not count */
	launch();
	ck_assert_str_eq(expect("open "), "utf8=1 color=1");
}
END_TEST

static bool screen_is_ascii(void)
{
	for (size_t i = 0; i < screen_used; i++)
		if ((unsigned char)screen[i] >= 0x80)
			return false;
	return true;
}

START_TEST(ascii_by_locale_and_by_wish)
{
	setenv("HARNESS_TEXT", "Gelée", 1);
	launch_open();
	ck_assert(!screen_is_ascii());
	end();
	start();
	setenv("LC_ALL", "C", 1);
	launch();
	ck_assert_str_eq(expect("open "), "utf8=0 color=1");
	drain_screen();
	ck_assert(screen_is_ascii());
	ck_assert_int_ge(last_place("Gelee"), 0);
	end();
	start();
	setenv("HARNESS_ASCII", "1", 1);
	launch();
	ck_assert_str_eq(expect("open "), "utf8=0 color=1");
	drain_screen();
	ck_assert(screen_is_ascii());
}
END_TEST

START_TEST(tall_digits_are_drawn)
{
	launch_open();
	ck_assert_int_ge(last_place("█████"), 0);
	end();
	start();
	setenv("LC_ALL", "C", 1);
	launch_open();
	ck_assert_int_ge(last_place("#####"), 0);
}
END_TEST

START_TEST(the_true_size_wins_over_the_environment)
{
	setenv("LINES", "10", 1);
	setenv("COLUMNS", "20", 1);
	launch_open();
	ck_assert_int_ge(last_place("24x80"), 0);
}
END_TEST

/* ---- Refusals ---- */

static void check_refused_untouched(const char *word)
{
	const char *sentence = expect("fault ");

	ck_assert_msg(strstr(sentence, word) != NULL, "%s", sentence);
	expect("exited 2");
	drain_screen();
	ck_assert_uint_eq(screen_used, 0);
}

START_TEST(a_terminal_without_a_movable_cursor_is_refused)
{
	setenv("TERM", "dumb", 1);
	launch();
	check_refused_untouched("cannot move its cursor");
}
END_TEST

START_TEST(an_unknown_or_missing_kind_is_refused)
{
	setenv("TERM", "no-such-terminal", 1);
	launch();
	check_refused_untouched("TERM=no-such-terminal");
	end();
	start();
	unsetenv("TERM");
	launch();
	check_refused_untouched("TERM is not set");
}
END_TEST

START_TEST(streams_that_are_no_terminal_are_refused)
{
	struct terminal *terminal = NULL;
	struct fault fault = { 0 };
	int null = open("/dev/null", O_RDWR);

	ck_assert_int_ge(null, 0);
	ck_assert_int_eq(dup2(null, 0), 0);
	ck_assert(!terminal_open(NULL, &terminal, &fault));
	ck_assert_int_eq(fault.kind, FAULT_MISUSE);
	ck_assert_ptr_nonnull(strstr(fault.sentence, "standard input"));
	terminal_close(NULL);
	close(null);
}
END_TEST

static const struct listed_test listed[] = {
	GROUP("terminal", .begin = start, .end = end, .seconds = 30),
	TEST(a_key_leaves_and_everything_is_restored),
	EACH(a_stopping_signal_leaves_cleanly, 0, 4),
	TEST(the_handlers_of_before_come_back),
	EACH_OF(a_signal_that_means_nothing_does_nothing, meaningless),
	TEST(control_c_and_control_backslash_are_keys),
	TEST(exit_without_closing_restores),
	TEST(a_crash_restores_and_still_is_a_crash),
	TEST(an_abort_restores_and_still_is_an_abort),
	EACH(a_crash_signal_from_outside_restores, 0, 8),
	TEST(a_terminal_that_nobody_reads_holds_up_no_tick_and_no_end),
	TEST(who_reads_again_gets_the_newest_frame),
	TEST(control_z_gives_the_screen_back_and_fg_takes_it_again),
	TEST(a_hard_stop_is_followed_by_a_full_repaint),
	TEST(a_resize_while_stopped_is_noticed),
	TEST(killed_while_stopped_leaves_without_drawing),
	TEST(a_closed_window_ends_the_board),
	TEST(a_closed_window_is_noticed_without_a_signal_and_never_spins),
	TEST(a_resize_is_an_event_and_is_drawn),
	TEST(keys_come_one_by_one_in_order),
	TEST(characters_are_whole_even_when_their_bytes_are_not),
	TEST(a_broken_character_does_not_swallow_the_next_key),
	TEST(function_keys_and_escape_are_told_apart),
	TEST(a_key_right_after_escape_is_a_key),
	TEST(control_s_is_a_key_and_freezes_nothing),
	TEST(a_tick_comes_once),
	TEST(pasted_keys_cannot_hold_up_a_tick_nor_ticks_a_key),
	TEST(a_paste_is_one_event_and_no_keys),
	TEST(a_paste_may_come_in_pieces_and_a_tick_in_between),
	TEST(too_long_a_paste_is_cut_and_says_so),
	TEST(a_function_key_in_a_paste_makes_it_not_whole),
	TEST(a_paste_whose_end_is_lost_is_over_after_a_silence),
	TEST(an_end_without_a_beginning_is_nothing),
	TEST(a_terminal_of_another_kind_is_not_asked),
	TEST(hostile_text_is_drawn_harmless),
	TEST(color_is_used_and_no_color_turns_it_off),
	TEST(ascii_by_locale_and_by_wish),
	TEST(tall_digits_are_drawn),
	TEST(the_true_size_wins_over_the_environment),
	TEST(a_terminal_without_a_movable_cursor_is_refused),
	TEST(an_unknown_or_missing_kind_is_refused),
	TEST(streams_that_are_no_terminal_are_refused),
};

int main(int argc, char **argv)
{
	struct rlimit no_core = { 0, 0 };

	setrlimit(RLIMIT_CORE, &no_core);
	if (argc > 1 && strcmp(argv[1], "--harness") == 0)
		return harness();
	self_path = argv[0];
	return tests_run(tests_suite("terminal", listed, LISTED_COUNT(listed)));
}
