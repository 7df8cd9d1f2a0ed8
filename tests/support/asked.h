/*
 * asked.h - the views of the screen and what those ask that ask one thing after the
 * other, by name: the folders of tests/pictures, and what each must hold.
 */
#ifndef STILLROOM_TESTS_ASKED_H
#define STILLROOM_TESTS_ASKED_H

#include <stdio.h>

#include "screen/ui/view.h"

struct desk;

const char *view_word(enum view_name name);
/* What the view that is shown asks for now, or which of its pages it is; NULL: it has but one. */
const char *asked_word(const struct desk *desk);
/* A line for each view, and one for each view and word that asked_word() may say there. */
void asked_list(FILE *out);

#endif
