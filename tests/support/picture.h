/*
 * picture.h - the window as curses holds it, as an SVG picture: what stands in each
 * cell, its colors, bold and underline, on a fixed grid.
 *
 * The same window gives the same bytes.  Text stays text, so that it can be found and
 * read aloud; bars and lines of the drawing characters become rectangles, which meet
 * without a gap whatever the font.
 */
#ifndef STILLROOM_TESTS_PICTURE_H
#define STILLROOM_TESTS_PICTURE_H

#include <stdio.h>

struct picture {
	const char *title; /* a few words, for those who do not see it */
	const char *words; /* a sentence or two of what is to be seen */
	int rows;
	int cols;
};

/* What was drawn last, of a terminal with 256 colors.  Errors stay in ferror(out). */
void picture_write(FILE *out, const struct picture *picture);

#endif
