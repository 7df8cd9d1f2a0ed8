/*
 * shown.h - a window as plain text, to be kept in a file and compared whole.
 *
 * First what stands in each row, blanks at the end left out, one line a row.  Below a line
 * of dashes: what the view asks for, if it asks; where the terminal's own cursor stands;
 * and of each row that is not all plain the runs of cells that are drawn alike, as columns
 * and role.  Rows and columns count from 1.  The same window gives the same bytes.
 */
#ifndef STILLROOM_TESTS_SHOWN_H
#define STILLROOM_TESTS_SHOWN_H

#include <stdio.h>

struct desk_kit;

/* What was drawn last, of a terminal with color.  Errors stay in ferror(out). */
void shown_write(FILE *out, struct desk_kit *dk);

#endif
