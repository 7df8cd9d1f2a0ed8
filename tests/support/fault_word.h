/*
 * fault_word.h - a fault's kind in a word, for what a test says when it fails.
 */
#ifndef STILLROOM_TESTS_FAULT_WORD_H
#define STILLROOM_TESTS_FAULT_WORD_H

#include "base/fault.h"

const char *fault_word(enum fault_kind kind); /* "disk_full" */

#endif
