/*
 * paragraph.h - text in a window: broken at blanks, told whole or briefly, never cut in the middle of what it says.
 */
#ifndef STILLROOM_SCREEN_UI_PARAGRAPH_H
#define STILLROOM_SCREEN_UI_PARAGRAPH_H

#include <stddef.h>

#include "screen/term/role.h"

struct desk;

/* Bytes of the first line when text is broken at blanks to `cols` columns. */
size_t desk_line_bytes(const char *text, int cols);
/* Draw text over several lines, broken at blanks; returns lines used. */
int desk_paragraph_lines(const char *text, int cols); /* that it would take */
int desk_paragraph(const struct desk *desk, int row, int col, int cols, int rows, enum role role, const char *text);
/* The same for a caution that the page behind @ has too: whole, or where it has no room the way
 * to it, never a part. */
int desk_whole(const struct desk *desk, int row, int col, int cols, int rows, enum role role, const char *text);
/* Several of them, one below the other: those that find room, and the way to the others once. */
#define CAUTION_LINES_MAX 8
struct caution_lines {
	const char *words[CAUTION_LINES_MAX];
	int count;
};
void caution_line_add(struct caution_lines *cautions, const char *words); /* NULL or nothing: it adds none */
int desk_cautions(const struct desk *desk, int row, int rows, const struct caution_lines *cautions);
/* A page of a text that may be longer than the window; returns its bytes, blanks behind it included. */
size_t desk_page(const struct desk *desk, int row, int rows, enum role role, const char *text);
/* An explanation: of its sentences those that find room, none cut; the first `keep` bytes are not left out.
 * desk_sentences leaves the others out of the buffer. */
void desk_sentences(char *buffer, int cols, int rows, size_t keep);
int desk_explain(const struct desk *desk, int row, int rows, const char *text);
/* What is being done, over the rows it needs, three at most; returns them. */
int desk_title(const struct desk *desk, int row, const char *words);
/* One row: the words, or where they find no room the brief ones. */
void desk_fit(const struct desk *desk, int row, enum role role, const char *words, const char *brief);

#endif
