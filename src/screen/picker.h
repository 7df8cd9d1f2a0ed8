/*
 * picker.h - one choice out of a list, moved through with arrows or narrowed by
 * typing a few letters.  Shared by the cards of the screen.
 */
#ifndef STILLROOM_SCREEN_PICKER_H
#define STILLROOM_SCREEN_PICKER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct desk;

struct picker {
	int cursor;
	bool moved;      /* since the last letter */
	char filter[32]; /* lower case, without blanks */
};

void picker_reset(struct picker *picker);
/* Letters, digits and Backspace narrow the list; true when the key was taken. */
bool picker_typed(struct picker *picker, long key);
/* Does a name hold the letters typed, blanks aside? */
bool picker_matches(const struct picker *picker, const char *name);
void picker_move(struct picker *picker, int by, int count);
/* Is the Space just pressed the blank inside a name being typed, rather than a
 * choice?  So while letters stand that are not the whole of `name`, the one at the
 * mark, several names hold them and nothing was moved. */
bool picker_blank(struct desk *desk, const struct picker *picker, const char *name, int count);
/* Draw `count` choices; `words` writes the n-th. */
void picker_draw(struct desk *desk, const struct picker *picker, int top, int rows, int cols, int count,
                 void (*words)(const struct desk *desk, int n, char *buffer, size_t size));

/* A number typed digit by digit: the first digit replaces what was offered. */
struct number_entry {
	int value;
	bool touched;
};
bool number_typed(struct number_entry *number, long key, int max);

/* Lid boxes as choices; the last one, n == count, is "not noted" (id 0). */
struct log_lid_box;
void lid_box_words(const struct log_lid_box *boxes, size_t count, int n, char *buffer, size_t size);
/* Take the n-th for so many jars; false, and it is said, when it has too few. */
bool lid_box_choose(struct desk *desk, const struct log_lid_box *boxes, size_t count, int n, int jars,
                    int64_t *id);

#endif
