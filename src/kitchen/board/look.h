/*
 * look.h - rows of the log for views, and the words of some of them.
 *
 * Arrays are malloc'ed and freed by the caller; rows as log/tables/canner.h says.
 */
#ifndef STILLROOM_KITCHEN_BOARD_LOOK_H
#define STILLROOM_KITCHEN_BOARD_LOOK_H

#include "kitchen/board/board.h"
#include "log/rows/journal.h"

/* Arrays are malloc'ed and freed by the caller; rows as log/tables/canner.h says. */
bool kitchen_jars(const struct kitchen *kitchen, int64_t load_id, struct log_jar **rows, size_t *count,
                  struct fault *fault);
bool kitchen_story(const struct kitchen *kitchen, struct log_subject subject, struct log_entry **rows, size_t *count,
                   struct fault *fault);
bool kitchen_lid_boxes(const struct kitchen *kitchen, struct log_lid_box **rows, size_t *count, struct fault *fault);
bool kitchen_supplies(const struct kitchen *kitchen, struct log_supply **rows, size_t *count, struct fault *fault);
bool kitchen_juices(const struct kitchen *kitchen, struct log_juice **rows, size_t *count, struct fault *fault);
bool kitchen_batch_amounts(const struct kitchen *kitchen, int64_t batch_id, struct log_batch_amount **rows,
                           size_t *count, struct fault *fault);
bool kitchen_batch_get(const struct kitchen *kitchen, int64_t batch_id, struct log_batch *out, struct fault *fault);
/* How many jars of a size the batch filled. */
bool kitchen_jars_filled(const struct kitchen *kitchen, int64_t batch_id, const char *jar, int *jars,
                         struct fault *fault);
bool kitchen_lot_of_jar(const struct kitchen *kitchen, int64_t jar_id, struct log_lot *out, struct fault *fault);
/* "" when there is no such lot. */
void kitchen_lot_code(const struct kitchen *kitchen, int64_t lot_id, char *buffer, size_t size);
/* What the gate said of a jar: its own answer, or its load's. */
bool kitchen_judgement(const struct kitchen *kitchen, const struct log_jar *jar, struct log_judgement *out,
                       struct fault *fault);
const char *verdict_says(enum verdict verdict); /* "PROCESS UNKNOWN"; valid: "" */

/* --- a day --- */

/* A run, batch or load of a day, open or done, for looking back and correcting. */
struct day_item {
	struct log_subject subject;
	int64_t opened_wall_ms;
	bool open;
	char words[240]; /* "run: 12 lb grapes, 1 gal juice" */
};

/* Everything begun on the local day of `wall_ms`, oldest first; malloc'ed. */
bool kitchen_day(const struct kitchen *kitchen, int64_t wall_ms, struct day_item **rows, size_t *count,
                 struct fault *fault);

#endif
