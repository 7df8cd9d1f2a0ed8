/*
 * signals.h - signals made safe for a full-screen program.  Used by terminal.c
 * only.
 *
 * Handlers do nothing but set a flag and write a byte to a pipe; the loop polls
 * the pipe and takes the flags.  A flag cannot be lost to a full pipe.
 *
 * After a crash (SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT ...) the handler runs on a
 * stack of its own, writes a byte string made beforehand and puts the line
 * discipline back, both with calls that POSIX allows in a handler, and lets the
 * signal take its former course, so that a core file or a sanitizer's report
 * comes as ever.
 *
 * Handlers are a thing of the process: there is one set of them.
 */
#ifndef STILLROOM_SCREEN_TERM_SIGNALS_H
#define STILLROOM_SCREEN_TERM_SIGNALS_H

#include <stdbool.h>
#include <stddef.h>
#include <termios.h>

#include "base/fault.h"

#define SIGNALS_RESCUE_MAX 256 /* longest byte string for a crash */

/* Note what stands now, before curses installs its own: that is what comes back. */
void signals_remember(void);

/* Install the handlers, after curses has installed its own.  `modes` and
 * `rescue` (at most SIGNALS_RESCUE_MAX bytes, copied) are for a crash; they go to
 * the terminal at `fd`.  Signals that would end the program and mean nothing to it
 * are ignored from here on (SIGPIPE, SIGXFSZ, SIGUSR1, SIGALRM ...). */
bool signals_open(int fd, const struct termios *modes, const char *rescue, size_t rescue_length, struct fault *fault);

/* Put back what was remembered. Harmless when nothing was. */
void signals_close(void);

/* Readable when a flag has been set; -1 when not open. */
int signals_fd(void);

/* Empty the pipe.  Take the flags after this, never before. */
void signals_drain(void);

/* Was this signal caught since it was last taken? Clears the flag. */
bool signals_take(int signal);

/* The first of SIGTERM, SIGHUP, SIGINT, SIGQUIT that is flagged, left flagged;
 * 0 when none. */
int signals_stop_flagged(void);

/* Stop this process as SIGTSTP does; returns after SIGCONT. */
void signals_stop_process(void);

#endif
