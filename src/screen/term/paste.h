/*
 * paste.h - a paste while it comes in, byte by byte.  Used by terminal.c only.
 */
#ifndef STILLROOM_SCREEN_TERM_PASTE_H
#define STILLROOM_SCREEN_TERM_PASTE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "screen/term/terminal.h"

#define PASTE_SILENCE_MS 2000 /* a paste whose end was lost is over then: our choice */

struct paste {
	bool open;
	bool whole; /* all that came was kept */
	size_t length;
	int64_t last_ms; /* real time of the last byte */
	char text[TERMINAL_PASTE_MAX];
};

void paste_begin(struct paste *paste, int64_t now_ms);
/* A byte; what is no byte, as a function key is, makes the paste not whole. */
void paste_add(struct paste *paste, int value, int64_t now_ms);
/* Has nothing come for so long that the end must have been lost? */
bool paste_is_lost(const struct paste *paste, int64_t now_ms);
void paste_end(struct paste *paste);

#endif
