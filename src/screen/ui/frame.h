/*
 * frame.h - what comes in and what goes out: a key or a paste to where it belongs, and one
 * whole frame after it.
 */
#ifndef STILLROOM_SCREEN_UI_FRAME_H
#define STILLROOM_SCREEN_UI_FRAME_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct desk;
struct text;
struct view_key;

/* One key from the terminal, to where keys.c says that it goes. */
void desk_key(struct desk *desk, long key);
/* A paste: text for a line or a name being typed, and for nothing else.  `whole`: it is
 * all there and holds no function key. */
void desk_paste(struct desk *desk, const char *text, bool whole);
/* The keys that mean the same in every view; returns how many. */
size_t desk_keys_everywhere(const struct view_key **keys);

/* Read again what others wrote, what is warned of and what rings; let lapse what is over. */
void desk_look(struct desk *desk);
void desk_draw(const struct desk *desk); /* one whole frame */
void desk_was_drawn(struct desk *desk);  /* it is out: a new question on it is read from now on */

/* What is always visible, above (header.c) and below. */
int header_rows(const struct desk *desk);
void header_draw(const struct desk *desk);
/* ", 16 min early" or ", 2 h 4 min late", from whole minutes; nothing for 0. */
void desk_add_late(struct text *text, int64_t minutes);
void footer_draw(const struct desk *desk);
int footer_rows(const struct desk *desk);

#endif
