/*
 * view.h - what a view is: its name, its keys, and what the desk calls it for.
 *
 * A view is one file with one `struct view`: a drawing function that reads the
 * state, a table of keys, and a handler for typed text where it takes any.  Key handlers
 * change state and never draw; the loop in app/loop.c draws one frame after each event.
 *
 * EACH_VIEW is not written by hand: the Makefile looks through screen/ for lines that read
 * "const struct view fates_view = {" and makes OF(FATES, fates) of each, so a view is there
 * when its file is.  The word is also its folder in tests/pictures.
 *
 * Views open one another by name (desk_open); what the views of a room share stands in the
 * header of the room.  Dispatch, the bottom line, `?` and docs/keys.md come from the table of
 * keys.  Which table takes a key is decided in keys.c alone, in this order: keys of every view
 * that go before text, the line being typed, a field of the view (`types`), the view's table,
 * the other keys of every view, the view's `typed`.  A question that is answered by pressing
 * again is desk_ask_again.
 *
 * Rules by their names, sources and methods of statistics stand on no view: `sources` writes
 * them for the page behind @.  A stop or a caution is never cut: it is whole, or one row says
 * which key shows it (desk_whole, `caution` of a question, `warned`);
 * tests/pictures/test_whole.sh looks for others.
 */
#ifndef STILLROOM_SCREEN_UI_VIEW_H
#define STILLROOM_SCREEN_UI_VIEW_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/board/board.h"
#include "screen/ui/each.h"

struct desk;
struct form;
struct list_state;
struct question;
struct sources;
struct warning;

/* clang-format off */
#define VIEW_NAME(TAG, word) VIEW_##TAG,
enum view_name { EACH_VIEW(VIEW_NAME) VIEW_COUNT };
/* clang-format on */

/* Keys beyond the characters: above Unicode, so that one number holds any key. */
enum {
	KEY_CODE_UP = 0x110000,
	KEY_CODE_DOWN,
	KEY_CODE_LEFT,
	KEY_CODE_RIGHT,
	KEY_CODE_PAGE_UP,
	KEY_CODE_PAGE_DOWN,
	KEY_CODE_BACKSPACE,
	KEY_CODE_OTHER,
	KEY_CODE_INTERRUPT = 3,   /* Ctrl-C: asks, from any view */
	KEY_CODE_EMPTY_LINE = 21, /* Ctrl-U */
	KEY_CODE_TAB = 9,
	KEY_CODE_ENTER = '\r',
	KEY_CODE_ESCAPE = 27,
};

/* What a view is opened for; each reads what it needs, the rest is 0. */
struct opening {
	int64_t id;                 /* of a station, batch, load or own recipe */
	struct log_subject subject; /* of the log: a load, batch or run */
	const struct log_lot *lot;  /* of jars that were thrown out; NULL: whatever food it is */
	const char *advice;         /* what to do with them; a constant */
	int entry;                  /* of VIEW_ENTRY: enum entry_name (entry_view.h) */
};

struct view_key {
	long key;
	long other;                              /* a second key for the same, or 0 */
	const char *cap;                         /* as shown: "Space" */
	const char *words;                       /* one or two words for the bottom line; NULL: not shown there */
	const char *help;                        /* a sentence for the key list */
	bool (*usable)(const struct desk *desk); /* NULL: always */
	void (*act)(struct desk *desk);
};

/* What a view keeps while the board is open, all zero at first: nobody else sees it. */
struct view_state {
	size_t size;
	void (*clear)(void *state); /* frees what it holds; NULL: nothing */
};

struct view {
	const char *title;
	const struct view_state *state; /* NULL: it keeps nothing */
	const struct view_key *keys;
	size_t key_count;
	/* Reads what it shows and shows the view, or says why not and leaves the one that is
	 * shown.  NULL: there is nothing to read. */
	void (*enter)(struct desk *desk, const struct opening *opening);
	/* Reads anew what it shows, when an entry it opened was written down.  NULL: it reads at
	 * each frame. */
	void (*again)(struct desk *desk);
	/* What it may ask or show by turns, NULL after the last, and which of them now: each has
	 * a picture (tests/pictures).  NULL: it is one page. */
	const char *const *pages;
	int (*page)(const struct desk *desk);
	/* Its questions, where it has any, and where they stand: then `typed` and `types` are
	 * those of form.h, and each question is a page.  NULL with a form: those of what is
	 * entered (entry_view.h). */
	const struct question *questions;
	size_t question_count;
	struct form *(*form)(const struct desk *desk);
	/* The list that its Up and Down move in, and how many lines it has.  NULL: it has none. */
	struct list_state *(*list)(const struct desk *desk, int *count);
	/* What changes by itself, by the clock or by another hand: before each frame.  NULL: nothing
	 * that it keeps. */
	void (*look)(struct desk *desk);
	/* Draw between `top` and `top + rows`.  It changes nothing but how far its own lists are scrolled. */
	void (*draw)(const struct desk *desk, int top, int rows);
	/* A key not in the table; true when it was taken.  May be NULL. */
	bool (*typed)(struct desk *desk, long key);
	/* Does a field being typed in take the key, before the table?  `typed` then gets it.
	 * NULL: there is no such field. */
	bool (*types)(const struct desk *desk, long key);
	/* True: it asked something, and the key acts only when pressed again.  May be NULL. */
	bool (*asks_first)(struct desk *desk, const struct view_key *key);
	/* Why a key of its table cannot act now.  NULL, or NULL said: the key list has what it is for. */
	const char *(*why_not)(struct desk *desk, const struct view_key *key);
	/* What a warning asks for, in the keys of this view, where the rule's own sentence leads to
	 * it; NULL, or NULL said: in the rule's words. */
	const char *(*warned)(const struct warning *warning);
	bool marks; /* its letters are pressed right behind one another, jar after jar: they are no words */
	bool keeps; /* holds what is not written down yet: one may come back to it */
	/* Where what is shown, or what is chosen of it, comes from (sources.h).  NULL: it is what
	 * was written down here, and nothing else. */
	void (*sources)(const struct desk *desk, struct sources *page);
	/* What Space says in the bottom line, or NULL for its table words. */
	const char *(*space_words)(const struct desk *desk);
};

/* clang-format off */
#define VIEW_OF_NAME(TAG, word) extern const struct view word##_view;
EACH_VIEW(VIEW_OF_NAME)
/* clang-format on */

#endif
