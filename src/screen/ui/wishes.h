/*
 * wishes.h - what the board is opened with, and what it asks of whoever opens it.
 */
#ifndef STILLROOM_SCREEN_UI_WISHES_H
#define STILLROOM_SCREEN_UI_WISHES_H

#include <stdbool.h>

#include "base/fault.h"
#include "engine/label/label_sheet.h"
#include "kitchen/exchange/labels.h"
#include "log/rows/common.h"

struct kitchen;
struct log_subject;

struct board_wishes {
	const char *program; /* this one: started anew to check and copy the log (kitchen/file/keeper.h) */
	bool ascii;
	bool no_color;
	bool rehearsal; /* a practice log is wanted; a real one is refused, and the other way round */
	bool *rehearse; /* set when the board was left for practice, to be opened again behind it */
	/* Write the labels of a load, or of the lot of a batch, to a file beside the log: the
	 * screen cannot do that by itself. */
	bool (*labels)(struct kitchen *kitchen, const struct log_subject *about, const char *log_path,
	               const struct label_sheet *sheet, enum label_format format, struct labels_saved *saved,
	               struct fault *fault);
};

#endif
