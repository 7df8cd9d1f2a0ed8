/*
 * description.h - the terminal's description, looked at before anything is sent
 * to the terminal.  Used by terminal.c only.
 */
#ifndef STILLROOM_SCREEN_TERM_DESCRIPTION_H
#define STILLROOM_SCREEN_TERM_DESCRIPTION_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"
#include "screen/term/signals.h"

/* A terminal that understands control sequences as ECMA-48 has them is asked to put
 * these around what is pasted, or to stop that, through `fd`; others are left alone. */
#define PASTE_BEGINS "\033[200~"
#define PASTE_ENDS "\033[201~"
void description_mark_pastes(int fd, bool on); /* once curses has been started */

/* Is TERM known, and can it move the cursor?  Then `rescue` holds the bytes that
 * put the screen right after a crash. */
bool description_check(char rescue[SIGNALS_RESCUE_MAX], size_t *length, struct fault *fault);

#endif
