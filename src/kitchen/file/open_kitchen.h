/*
 * open_kitchen.h - a kitchen over a log and a clock.
 */
#ifndef STILLROOM_KITCHEN_FILE_OPEN_KITCHEN_H
#define STILLROOM_KITCHEN_FILE_OPEN_KITCHEN_H

#include "kitchen/board/board.h"

struct log;

/* Log and clock stay the caller's and outlive the kitchen. */
bool kitchen_open(struct log *log, struct clock clock, struct kitchen **out, struct fault *fault);
void kitchen_close(struct kitchen *kitchen); /* NULL is allowed */

#endif
