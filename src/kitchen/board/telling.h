/*
 * telling.h - the lines of what is known of one work, while they are written (past.c).
 */
#ifndef STILLROOM_KITCHEN_BOARD_TELLING_H
#define STILLROOM_KITCHEN_BOARD_TELLING_H

#include "kitchen/board/board_private.h"
#include "kitchen/history/seasons.h"

struct telling {
	const struct kitchen *kitchen;
	struct past_line *rows;
	size_t count;
};

void tell(struct telling *telling, enum past_kind kind, const char *format, ...) __attribute__((format(printf, 3, 4)));
/* "Load, 2026-09-14 14:05, Big kettle" */
void tell_title(struct telling *telling, const char *what, int64_t wall_ms, int64_t station_id);
/* The juice that went into a batch, each with its run: "Juice: 2 gal of grapes, juicer run 3". */
void tell_juices(struct telling *telling, int64_t batch_id);
enum unit_system units_of(const struct telling *telling);

/* As work_kind.tell. */
bool tell_load(struct telling *telling, int64_t id, struct fault *fault);
bool tell_batch(struct telling *telling, int64_t id, struct fault *fault);

#endif
