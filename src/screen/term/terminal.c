/*
 * terminal.c - start, stop and wait.  draw.c has what goes to the screen.
 */
#include "screen/term/terminal.h"

#include <curses.h>
#include <errno.h>
#include <langinfo.h>
#include <locale.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/ioctl.h>
#include <termios.h>
#include <unistd.h>

#include "kitchen/board/clock.h"
#include "kitchen/stock/ahead.h"
#include "screen/term/description.h"
#include "screen/term/role.h"
#include "screen/term/signals.h"
#include "screen/term/terminal_inside.h"
#include "screen/term/wake.h"

#define ESCAPE_DELAY_MS 50 /* our choice: long enough for a slow line, not felt by a hand */
#define GONE_PAUSE_MS 250
#define LEAVE_MS 300      /* our choice: how long a terminal that takes nothing is waited for on leaving */
#define EMPTY_READS_MAX 5 /* "readable" with nothing to read, this often: gone */
#define UNDECODABLE 0xfffd
#define PASTE_AT_ONCE 1024 /* bytes of a paste that are read before somebody else has a turn */

/* Keys of our own, beyond those of curses and of extended descriptions. */
enum { KEY_PASTE_BEGINS = 0x7000, KEY_PASTE_ENDS };

/* For exit(), which passes nothing along. */
static struct terminal *open_terminal;

/* ---- Opening ---- */

static bool set_variable(const char *name)
{
	const char *value = getenv(name);

	return value && value[0] != '\0';
}

static bool check_streams(struct fault *fault)
{
	static const char *const names[] = { "standard input", "standard output" };

	for (int fd = 0; fd < 2; fd++)
		if (!isatty(fd))
			return fault_set(fault, FAULT_MISUSE,
			                 "The board needs a terminal, but %s is not one. Run it in a "
			                 "terminal window, or use a command that prints text.",
			                 names[fd]);
	if (!set_variable("TERM"))
		return fault_set(fault, FAULT_MISUSE,
		                 "The board needs to know the terminal's kind, but TERM is not set. "
		                 "Set it, for example TERM=xterm.");
	return true;
}

static enum glyph_set choose_set(bool ascii)
{
	const char *codeset = nl_langinfo(CODESET);
	const char *kind = getenv("TERM");

	if (ascii || (strcasecmp(codeset, "UTF-8") != 0 && strcasecmp(codeset, "utf8") != 0))
		return GLYPH_SET_ASCII;
	return kind && strncmp(kind, "linux", 5) == 0 ? GLYPH_SET_CONSOLE : GLYPH_SET_FULL;
}

static void make_pairs(void)
{
	bool defaults = use_default_colors() == OK;

	for (int role = ROLE_PLAIN; role < ROLE_COUNT; role++) {
		const struct role_look *look = role_look((enum role)role);
		short fg = COLORS >= 256 ? look->many_fg : look->few_fg;
		short bg = COLORS >= 256 ? look->many_bg : look->few_bg;
		if (!defaults && fg == ROLE_DEFAULT)
			fg = COLOR_WHITE;
		if (!defaults && bg == ROLE_DEFAULT)
			bg = COLOR_BLACK;
		init_pair((short)(role + 1), fg, bg);
	}
}

/* NO_COLOR: present and not empty, whatever it says. */
static bool want_color(const struct terminal_wishes *wishes)
{
	return !set_variable("NO_COLOR") && !wishes->no_color && has_colors();
}

/* Ctrl-S must not freeze the board and with it every alarm, and a slip of Ctrl-C or
 * Ctrl-\ must not end it: they are keys like others, which ask. */
static void keep_control_keys(void)
{
	struct termios modes;

	if (tcgetattr(STDIN_FILENO, &modes) != 0)
		return;
	modes.c_iflag &= ~(tcflag_t)(IXON | IXOFF);
	modes.c_cc[VINTR] = _POSIX_VDISABLE;
	modes.c_cc[VQUIT] = _POSIX_VDISABLE;
	if (tcsetattr(STDIN_FILENO, TCSANOW, &modes) == 0)
		def_prog_mode();
}

static void set_modes(struct terminal *terminal, const struct terminal_wishes *wishes)
{
	cbreak();
	noecho();
	nonl();
	keep_control_keys();
	curs_set(0);
	if (!set_variable("ESCDELAY"))
		set_escdelay(ESCAPE_DELAY_MS);
	keypad(terminal->keys, TRUE);
	define_key(PASTE_BEGINS, KEY_PASTE_BEGINS);
	define_key(PASTE_ENDS, KEY_PASTE_ENDS);
	outlet_catch(terminal->outlet);
	description_mark_pastes(fileno(outlet_file(terminal->outlet)), true);
	outlet_release(terminal->outlet);
	(void)outlet_send(terminal->outlet);
	nodelay(terminal->keys, TRUE);
	typeahead(-1); /* a frame is sent whole, also when keys wait: it may not be sent again */
	terminal->color = want_color(wishes) && start_color() == OK && COLOR_PAIRS > ROLE_COUNT;
	if (terminal->color)
		make_pairs();
}

/* Take the window's true size, which LINES and COLUMNS in the environment would
 * hide from curses.  True when it has changed. */
static bool fit_window(struct terminal *terminal)
{
	struct winsize size = { 0 };
	int rows = terminal->rows;
	int cols = terminal->cols;

	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_row > 0 && size.ws_col > 0 &&
	    (size.ws_row != LINES || size.ws_col != COLS))
		resizeterm(size.ws_row, size.ws_col);
	getmaxyx(stdscr, terminal->rows, terminal->cols);
	return rows != terminal->rows || cols != terminal->cols;
}

static bool start_curses(struct terminal *terminal, struct fault *fault)
{
	terminal->screen = newterm(NULL, outlet_file(terminal->outlet), stdin);
	if (!terminal->screen)
		return fault_set(fault, FAULT_IO, "The screen cannot be started on this terminal. Try TERM=xterm.");
	terminal->keys = newpad(1, 1);
	if (!terminal->keys)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the screen.");
	return true;
}

static void close_at_exit(void)
{
	terminal_close(open_terminal);
}

static bool register_exit(void)
{
	static bool registered;

	if (!registered)
		registered = atexit(close_at_exit) == 0;
	return registered;
}

static bool start(struct terminal *terminal, const struct terminal_wishes *wishes, struct fault *fault)
{
	char rescue[SIGNALS_RESCUE_MAX];
	size_t length = 0;

	if (!check_streams(fault) || !description_check(rescue, &length, fault))
		return false;
	if (tcgetattr(STDIN_FILENO, &terminal->saved) != 0 || !register_exit())
		return fault_set(fault, FAULT_IO, "The terminal does not answer: %s.", strerror(errno));
	terminal->set = choose_set(wishes->ascii);
	terminal->lines = lines_new();
	if (!terminal->lines)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the screen.");
	if (!outlet_open(STDOUT_FILENO, &terminal->outlet, fault))
		return false;
	/* From here on there is something to restore. */
	open_terminal = terminal;
	signals_remember(); /* before curses puts its own there */
	if (!start_curses(terminal, fault))
		return false;
	if (!signals_open(outlet_fd(terminal->outlet), &terminal->saved, rescue, length, fault))
		return false;
	set_modes(terminal, wishes);
	fit_window(terminal);
	return true;
}

bool terminal_open(const struct terminal_wishes *wishes, struct terminal **out, struct fault *fault)
{
	static const struct terminal_wishes none;

	if (open_terminal)
		return fault_set(fault, FAULT_MISUSE, "The board is open already.");
	setlocale(LC_ALL, "");
	/* Numbers in the log's texts and reports keep their point everywhere. */
	setlocale(LC_NUMERIC, "C");
	struct terminal *terminal = calloc(1, sizeof(*terminal));
	if (!terminal)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the screen.");
	if (start(terminal, wishes ? wishes : &none, fault)) {
		*out = terminal;
		return true;
	}
	if (open_terminal) {
		terminal_close(terminal);
	} else {
		outlet_close(terminal->outlet);
		lines_free(terminal->lines);
		free(terminal);
	}
	return false; /* NOLINT(clang-analyzer-unix.Malloc): terminal_close frees what open_terminal names */
}

/* Between outlet_catch and outlet_release: curses has nothing waiting when it starts or stops. */
static void mark_pastes(struct terminal *terminal, bool on)
{
	description_mark_pastes(fileno(outlet_file(terminal->outlet)), on);
}

/* endwin() would wait for a terminal that nobody reads, and so would its way to set the
 * modes. */
static void leave_curses(struct terminal *terminal, int wait_ms)
{
	outlet_catch(terminal->outlet);
	mark_pastes(terminal, false);
	endwin();
	outlet_release(terminal->outlet);
	outlet_send_within(terminal->outlet, wait_ms);
	tcsetattr(STDIN_FILENO, TCSANOW, &terminal->saved);
}

static void free_screen(struct terminal *terminal)
{
	if (terminal->keys)
		delwin(terminal->keys);
	if (terminal->screen)
		delscreen(terminal->screen);
	outlet_close(terminal->outlet);
	lines_free(terminal->lines);
	free(terminal);
}

/* A signal that comes meanwhile, from a key or to a process in the background, waits until
 * the screen is as it was and the handlers of before are back: those of curses would find
 * its memory gone. */
void terminal_close(struct terminal *terminal)
{
	sigset_t all;
	sigset_t before;

	if (!terminal || terminal != open_terminal)
		return;
	open_terminal = NULL;
	sigfillset(&all);
	sigprocmask(SIG_BLOCK, &all, &before);
	if (terminal->screen && !isendwin())
		leave_curses(terminal, LEAVE_MS);
	else if (terminal->screen)
		tcsetattr(STDIN_FILENO, TCSANOW, &terminal->saved);
	signals_close();
	free_screen(terminal);
	sigprocmask(SIG_SETMASK, &before, NULL);
}

bool terminal_utf8(const struct terminal *terminal)
{
	return terminal->set != GLYPH_SET_ASCII;
}

bool terminal_color(const struct terminal *terminal)
{
	return terminal->color;
}

void terminal_size(const struct terminal *terminal, int *rows, int *cols)
{
	*rows = terminal->rows;
	*cols = terminal->cols;
}

/* ---- Signals ---- */

/* Everything again: another program may have drawn and set modes meanwhile. */
static void take_screen_back(struct terminal *terminal)
{
	reset_prog_mode();
	outlet_catch(terminal->outlet);
	mark_pastes(terminal, true);
	wrefresh(curscr);
	keypad(terminal->keys, TRUE); /* the next key would send it otherwise */
	outlet_release(terminal->outlet);
	(void)outlet_send(terminal->outlet);
	fit_window(terminal);
}

static void suspend(struct terminal *terminal)
{
	leave_curses(terminal, LEAVE_MS);
	signals_stop_process();
	signals_take(SIGCONT);
	/* Killed while stopped: the screen is restored already, keep off it. */
	if (signals_stop_flagged() == 0)
		take_screen_back(terminal);
}

static bool take_stop(struct terminal_input *out)
{
	int signal = signals_stop_flagged();

	if (signal == 0 || !signals_take(signal))
		return false;
	out->event = TERMINAL_STOP;
	out->signal = signal;
	return true;
}

static bool take_signal(struct terminal *terminal, struct terminal_input *out)
{
	if (take_stop(out))
		return true;
	if (signals_take(SIGTSTP)) {
		suspend(terminal);
		if (!take_stop(out))
			out->event = TERMINAL_CONTINUED;
		return true;
	}
	if (signals_take(SIGCONT)) {
		leave_curses(terminal, 0);
		take_screen_back(terminal);
		out->event = TERMINAL_CONTINUED;
		return true;
	}
	if (signals_take(SIGWINCH) && fit_window(terminal)) {
		out->event = TERMINAL_RESIZED;
		return true;
	}
	return false;
}

/* ---- Keys ---- */

/* Feed one byte; true when a character is complete (or hopeless). */
static bool decode_byte(struct terminal *terminal, int value, wint_t *out)
{
	char byte = (char)value;
	wchar_t character = 0;
	size_t used = mbrtowc(&character, &byte, 1, &terminal->partial);

	if (used == (size_t)-2)
		return false;
	*out = (wint_t)character;
	if (used != (size_t)-1)
		return true;
	/* A broken character must not swallow the plain key after it. */
	memset(&terminal->partial, 0, sizeof(terminal->partial));
	*out = value < 0x80 ? (wint_t)value : (wint_t)UNDECODABLE;
	return true;
}

/* A paste has come to its end, or its end has been lost. */
static bool finish_paste(struct terminal *terminal, bool ended, struct terminal_input *out)
{
	paste_end(&terminal->paste);
	out->event = TERMINAL_PASTE;
	out->paste = terminal->paste.text;
	out->paste_whole = ended && terminal->paste.whole;
	return true;
}

/* What waits of a paste; true when there is an event: its end, or a pause for others. */
static bool take_paste(struct terminal *terminal, struct terminal_input *out)
{
	for (int i = 0; i < PASTE_AT_ONCE; i++) {
		int64_t now_ms = clock_awake_ms();
		bool lost = paste_is_lost(&terminal->paste, now_ms);
		int value = wgetch(terminal->keys);

		if (value == ERR)
			return lost && finish_paste(terminal, false, out);
		terminal->empty_reads = 0;
		if (lost) {
			ungetch(value); /* a key again */
			return finish_paste(terminal, false, out);
		}
		if (value == KEY_PASTE_ENDS)
			return finish_paste(terminal, true, out);
		if (value != KEY_RESIZE)
			paste_add(&terminal->paste, value, now_ms);
	}
	return true; /* TERMINAL_NOTHING */
}

/* One waiting key; false when there is none.  Bytes are decoded here and not
 * by get_wch(), which drops the keys behind a byte it cannot decode. */
static bool take_key(struct terminal *terminal, struct terminal_input *out)
{
	for (;;) {
		if (terminal->paste.open)
			return take_paste(terminal, out);
		int value = wgetch(terminal->keys);
		if (value == ERR)
			return false;
		terminal->empty_reads = 0;
		if (value == KEY_RESIZE || value == KEY_PASTE_ENDS)
			continue; /* the echo of our own resizeterm(); an end without a beginning */
		if (value == KEY_PASTE_BEGINS) {
			paste_begin(&terminal->paste, clock_awake_ms());
			continue;
		}
		if (value > 0xff) {
			out->event = TERMINAL_KEY;
			out->is_function_key = true;
			out->key = value;
			return true;
		}
		if (decode_byte(terminal, value, &out->ch)) {
			out->event = TERMINAL_KEY;
			return true;
		}
	}
}

/* ---- Waiting ---- */

static bool take_tick(struct wake *wake, struct terminal_input *out)
{
	if (!wake)
		return false;
	struct wake_news news = wake_read(wake);
	if (!news.due && !news.also && !news.wall_stepped)
		return false;
	out->event = TERMINAL_TICK;
	out->due = news.due;
	out->wall_stepped = news.wall_stepped;
	out->wall_step_ms = news.wall_step_ms;
	return true;
}

/* Sleep until something happens; notes when the other end has gone. */
static void sleep_until_news(struct terminal *terminal, const struct wake *wake)
{
	struct pollfd fds[3 + WAKE_FDS_MAX] = {
		{ .fd = STDIN_FILENO, .events = POLLIN },
		{ .fd = signals_fd(), .events = POLLIN },
		{ .fd = outlet_waits(terminal->outlet) ? outlet_fd(terminal->outlet) : -1, .events = POLLOUT },
	};
	size_t count = 3 + (wake ? wake_fds(wake, fds + 3) : 0);

	/* EINTR needs no care: the handler has written to the pipe as well. */
	int ready = poll(fds, (nfds_t)count, wake ? wake_timeout_ms(wake) : -1);
	if (ready <= 0)
		return;
	signals_drain();
	if (fds[0].revents & (POLLHUP | POLLERR | POLLNVAL))
		terminal->hung_up = true;
	if (fds[0].revents & POLLIN)
		terminal->empty_reads++;
	if (fds[2].revents != 0 && outlet_send(terminal->outlet) && terminal->owed)
		terminal_show(terminal);
}

static bool look(struct terminal *terminal, struct wake *wake, struct terminal_input *out)
{
	if (take_signal(terminal, out))
		return true;
	if (terminal->tick_first && take_tick(wake, out)) {
		terminal->tick_first = false;
		return true;
	}
	if (take_key(terminal, out)) {
		terminal->tick_first = true;
		return true;
	}
	return take_tick(wake, out);
}

void terminal_wait(struct terminal *terminal, struct wake *wake, struct terminal_input *out)
{
	memset(out, 0, sizeof(*out));
	while (!terminal->gone) {
		if (look(terminal, wake, out))
			return;
		if (terminal->hung_up || terminal->empty_reads >= EMPTY_READS_MAX) {
			terminal->gone = true;
			out->event = TERMINAL_GONE;
			return;
		}
		sleep_until_news(terminal, wake);
	}
	poll(NULL, 0, GONE_PAUSE_MS);
	out->event = TERMINAL_GONE;
}
