/*
 * typing.h - words typed where nothing asks for them: what looks like them does nothing.
 *
 * A key acts at once, so the first character of a word cannot be told from a key.  It is
 * told by the second, right behind it; what the first one showed, chose and wrote down is
 * then taken back, and all that follows without a pause does nothing.
 */
#ifndef STILLROOM_SCREEN_UI_TYPING_H
#define STILLROOM_SCREEN_UI_TYPING_H

#include <stdbool.h>
#include <stdint.h>

#include "screen/ui/view.h"

struct desk;

#define WORDS_GAP_MS 1000 /* keys this close go on with what is being refused */
#define NUMBER_GAP_MS 350 /* so close behind a figure a character belongs to its number */
#define LETTER_GAP_MS 250 /* so close behind a letter a letter belongs to its word; who means two keys looks between */

#define NOT_LOOKED (-1)

/* What the last key was. */
enum typed {
	TYPED_NOTHING,     /* no character, or one that went into a text field */
	TYPED_FIGURE,      /* it may have chosen a station */
	TYPED_TWO_FIGURES, /* two stations that ring, one after the other */
	TYPED_AMOUNT,      /* a blank behind a figure */
	TYPED_LETTER,
	TYPED_OTHER,
};

struct typing {
	bool refusing; /* what is being typed, to its end */
	enum typed last;
	long key;
	int64_t last_ms; /* real time */
	/* As it was before the first of these characters: */
	enum view_name view;
	int64_t station;
	int64_t load;
	int64_t newest; /* act of the journal before the key that is looked at; NOT_LOOKED: it is no character */
	int64_t acted;  /* what the last of them wrote down; 0: nothing */
};

/* From here on it is text, until a pause. */
void desk_refuse_words(struct desk *desk);
/* Before a key is dispatched; true: it is part of such words, does nothing, and that was said.
 * `counts`: it is no repeat of a held key. */
bool desk_refused_as_words(struct desk *desk, long key, bool counts);
/* After it was: what it wrote down. */
void desk_typed(struct desk *desk);
/* It went into a text field. */
void desk_typed_into_field(struct desk *desk);
/* A figure that is no key where it was pressed begins a number. */
void desk_refuse_number(struct desk *desk);

#endif
