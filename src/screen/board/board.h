/*
 * board.h - the full-screen board: opens a log and runs until the person leaves.
 */
#ifndef STILLROOM_SCREEN_BOARD_BOARD_H
#define STILLROOM_SCREEN_BOARD_BOARD_H

#include <stdbool.h>

#include "base/fault.h"
#include "engine/label/label_sheet.h"

struct kitchen;
struct log_subject;

/* Where labels went. */
struct labels_saved {
	char path[4096];
	int labels;
	int sheets;
};

struct board_wishes {
	const char *program; /* this one: started anew to check and copy the log (kitchen/file/keeper.h) */
	bool ascii;
	bool no_colour;
	bool rehearsal; /* a practice log is wanted; a real one is refused, and the other way round */
	/* Write the labels of a load, or of the lot of a batch, to a file beside the log: the
	 * screen cannot do that by itself. */
	bool (*labels)(struct kitchen *kitchen, const struct log_subject *about, const char *log_path,
	               const struct label_sheet *sheet, enum label_format format, struct labels_saved *saved,
	               struct fault *fault);
};

/* True when the person left; false with a fault when the log or the terminal
 * could not be had.  The terminal is restored in either case. */
bool board_run(const char *log_path, const struct board_wishes *wishes, struct fault *fault);

#endif
