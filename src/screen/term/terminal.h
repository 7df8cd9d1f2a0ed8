/*
 * terminal.h - the only place that starts and stops curses, and the only one
 * that reads keys or writes to the screen.
 *
 * What it promises
 *  - After terminal_close(), exit(), any signal that ends the program and any
 *    crash the caller's screen, cursor and line discipline are as they were.
 *    kill -9 cannot be handled by anybody; `reset` helps then.
 *  - Nothing of curses is called from a signal handler.  Handlers set a flag
 *    and write a byte to a pipe; terminal_wait() does the work.
 *  - Text of users is cleaned before it is drawn (glyph.h), so that a name can
 *    never move the cursor, change colors or hide what follows it.
 *  - The terminal is asked to mark what is pasted (bracketed paste, xterm's control
 *    sequences, "Bracketed Paste Mode"), and asked to stop that whenever the screen is
 *    given back.  A paste without an end is over after two seconds of silence.
 *  - It never spins: a terminal that has gone away is an event, and asking again
 *    afterwards waits a quarter of a second each time.
 *
 * While a terminal is open the program writes nothing to stdout or stderr.
 * There can be one open terminal in a process, because signals and curses
 * itself know only one.
 *
 * Rows and columns count from 0 at the top left.  Everything is clipped: a
 * position or width outside the window draws nothing and is no error.
 */
#ifndef STILLROOM_SCREEN_TERM_TERMINAL_H
#define STILLROOM_SCREEN_TERM_TERMINAL_H

#include <stdbool.h>
#include <stdint.h>
#include <wchar.h>

#include "base/fault.h"
#include "screen/term/glyph.h"

struct terminal;
struct wake;

struct terminal_wishes {
	bool ascii;    /* draw with ASCII only, even where UTF-8 would do */
	bool no_color; /* as if NO_COLOR were set; bold and reverse stay */
};

/*
 * Take over the terminal.  Checks that stdin and stdout are terminals, that
 * TERM is known and that it can move the cursor; otherwise fills in *fault
 * (FAULT_MISUSE for what the user can change, FAULT_IO or FAULT_MEMORY) and
 * leaves the screen untouched.  Calls setlocale(LC_ALL, "").  `wishes` may be
 * NULL.  The caller owns *out and ends it with terminal_close().
 */
bool terminal_open(const struct terminal_wishes *wishes, struct terminal **out, struct fault *fault);

/* Give the terminal back.  NULL and a second call are harmless as long as the
 * pointer is not used again; exit() calls it for a terminal still open. */
void terminal_close(struct terminal *terminal);

bool terminal_utf8(const struct terminal *terminal);  /* public for its test */
bool terminal_color(const struct terminal *terminal); /* public for its test */
void terminal_size(const struct terminal *terminal, int *rows, int *cols);

/* ---- What comes in ---- */

enum terminal_event {
	TERMINAL_NOTHING,   /* woken for no reason of ours: just wait again */
	TERMINAL_KEY,       /* one key; more may be waiting */
	TERMINAL_RESIZED,   /* rows and cols have changed: draw a whole frame */
	TERMINAL_STOP,      /* SIGTERM, SIGHUP, SIGINT or SIGQUIT: leave */
	TERMINAL_GONE,      /* nobody is at the other end any more: leave */
	TERMINAL_TICK,      /* the wake time has come, or the wall clock was set */
	TERMINAL_CONTINUED, /* back from a stop (Ctrl-Z and fg): draw a whole frame */
	TERMINAL_PASTE,     /* a paste has come to its end: it is text and no keys */
};

#define TERMINAL_PASTE_MAX 1024 /* bytes of a paste that are kept, the zero included */

struct terminal_input {
	enum terminal_event event;
	bool is_function_key; /* KEY: `key` holds a KEY_* of curses.h, `ch` is 0 */
	wint_t ch;            /* KEY: the character as wide text, else 0; Enter is '\r',
	                         Escape is 27, an undecodable byte is U+FFFD */
	int key;              /* KEY: a function key (KEY_UP, KEY_BACKSPACE, KEY_F(1)...) */
	const char *paste;    /* PASTE: its bytes as they came, valid until the next wait */
	bool paste_whole;     /* PASTE: nothing is missing and no function key was in it */
	int signal;           /* STOP: which signal */
	bool due;             /* TICK: the armed time has come; it is disarmed now */
	bool wall_stepped;    /* TICK: the wall clock was set by a second or more */
	int64_t wall_step_ms; /* TICK: by how much; positive is forward */
};

/*
 * Wait for one thing to happen and say what.  Order when several have: stop,
 * continue, resize, then keys and ticks by turns, so that a pasted page cannot
 * hold up an alarm and a fast tick cannot hold up a key.  `wake` may be NULL.
 */
void terminal_wait(struct terminal *terminal, struct wake *wake, struct terminal_input *out);

/* ---- What goes out ---- */

/* What a piece of text means.  How that looks is decided in terminal.c alone.
 * No meaning is carried by color only: the views add a word or a glyph. */
enum role {
	ROLE_PLAIN,
	ROLE_QUIET,    /* of less weight: frames, axes, hints */
	ROLE_STRONG,   /* of more weight */
	ROLE_HEADER,   /* the bar at the top */
	ROLE_SELECTED, /* under the cursor */
	ROLE_ALARM,    /* sounding now and not acknowledged */
	ROLE_CAUTION,  /* a warning to read */
	ROLE_STOP,     /* a warning that forbids going on */
	ROLE_RUNNING,  /* a clock runs */
	ROLE_WAITING,  /* waits for a person */
	ROLE_DONE,     /* finished, good */
	ROLE_KEY,      /* a key to press */
	ROLE_PRACTICE, /* rehearsal: nothing here is real */
	ROLE_COUNT
};

/* Start a frame from an empty screen, and show it.  Between the two, draw. */
void terminal_begin_frame(struct terminal *terminal);
void terminal_end_frame(struct terminal *terminal);

/*
 * Where the terminal's own cursor stands when the frame is shown, for who reads with the
 * ears or the fingers: here, unless something is drawn as ROLE_SELECTED behind this; then
 * where the first such text begins.  Without it: at the top left.
 */
void terminal_cursor(struct terminal *terminal, int row, int col);

/*
 * Draw cleaned text, at most max_cols columns of it; a cut ends in the ellipsis
 * glyph.  Returns the columns used (0 when nothing could be drawn).
 * terminal_putf() formats first, into at most 1,023 bytes.
 */
int terminal_put(struct terminal *terminal, int row, int col, int max_cols, enum role role, const char *utf8);
int terminal_putf(struct terminal *terminal, int row, int col, int max_cols, enum role role, const char *format, ...)
    __attribute__((format(printf, 6, 7)));

/* Fill `cols` columns of a row with one glyph. */
void terminal_fill(struct terminal *terminal, int row, int col, int cols, enum role role, enum glyph shape);

/* Ring, or flash where there is no bell.  May do nothing at all (beep(3X)), so
 * it never is the only alarm. */
void terminal_bell(struct terminal *terminal);

/* The shape as this terminal can show it (see glyph.h); one column wide. */
const char *glyph(const struct terminal *terminal, enum glyph shape);

#endif
