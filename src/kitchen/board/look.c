/*
 * look.c - what the views read beyond the board: screen and report ask the
 * kitchen, never the log.
 */
#include <stdlib.h>
#include <string.h>

#include "kitchen/board/board_private.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"
#include "log/tables/pot.h"

bool kitchen_jars(const struct kitchen *kitchen, int64_t load_id, struct log_jar **rows, size_t *count,
                  struct fault *fault)
{
	return log_jars(kitchen->log, load_id, rows, count, fault);
}

static int by_entry(const void *a, const void *b)
{
	const struct log_entry *one = a;
	const struct log_entry *other = b;

	return (one->id > other->id) - (one->id < other->id);
}

/* Put the story of one more load behind what is there. */
static bool add_story(const struct kitchen *kitchen, int64_t load_id, struct log_entry **rows, size_t *count,
                      struct fault *fault)
{
	struct log_subject subject = { SUBJECT_LOAD, load_id };
	struct log_entry *more;
	struct log_entry *all;
	size_t more_count;

	if (!log_story(kitchen->log, subject, &more, &more_count, fault))
		return false;
	all = realloc(*rows, (*count + more_count + 1) * sizeof(*all));
	if (all == NULL) {
		free(more);
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the story.");
	}
	if (more_count > 0)
		memcpy(all + *count, more, more_count * sizeof(*all));
	free(more);
	*rows = all;
	*count += more_count;
	return true;
}

/* Jars processed again have one story over both loads. */
static bool add_linked(const struct kitchen *kitchen, int64_t load_id, struct log_entry **rows, size_t *count,
                       struct fault *fault)
{
	size_t own = *count;
	size_t linked_count;
	int64_t *linked;
	bool done = true;

	if (!log_loads_linked(kitchen->log, load_id, &linked, &linked_count, fault))
		return false;
	for (size_t i = 0; i < linked_count && done; i++)
		done = add_story(kitchen, linked[i], rows, count, fault);
	free(linked);
	if (done && *count > own)
		qsort(*rows, *count, sizeof(**rows), by_entry);
	return done;
}

bool kitchen_story(const struct kitchen *kitchen, struct log_subject subject, struct log_entry **rows, size_t *count,
                   struct fault *fault)
{
	if (!log_story(kitchen->log, subject, rows, count, fault))
		return false;
	if (subject.kind != SUBJECT_LOAD || add_linked(kitchen, subject.id, rows, count, fault))
		return true;
	free(*rows);
	*rows = NULL;
	*count = 0;
	return false;
}

bool kitchen_lid_boxes(const struct kitchen *kitchen, struct log_lid_box **rows, size_t *count, struct fault *fault)
{
	return log_lid_boxes(kitchen->log, rows, count, fault);
}

bool kitchen_juices(const struct kitchen *kitchen, struct log_juice **rows, size_t *count, struct fault *fault)
{
	return log_juices_left(kitchen->log, rows, count, fault);
}

bool kitchen_batch_amounts(const struct kitchen *kitchen, int64_t batch_id, struct log_batch_amount **rows,
                           size_t *count, struct fault *fault)
{
	return log_batch_amounts(kitchen->log, batch_id, rows, count, fault);
}

bool kitchen_lot_of_jar(const struct kitchen *kitchen, int64_t jar_id, struct log_lot *out, struct fault *fault)
{
	struct log_jar jar;

	return log_jar_get(kitchen->log, jar_id, &jar, fault) && log_lot_get(kitchen->log, jar.lot_id, out, fault);
}

bool kitchen_judgement(const struct kitchen *kitchen, const struct log_jar *jar, struct log_judgement *out,
                       struct fault *fault)
{
	return log_judgement_of_jar(kitchen->log, jar, out, fault);
}

const char *verdict_says(enum verdict verdict)
{
	switch (verdict) {
	case VERDICT_NOT_VALID: return "PROCESS NOT VALID";
	case VERDICT_UNKNOWN: return "PROCESS UNKNOWN";
	case VERDICT_OPEN: return "PROCESS NOT OVER YET";
	case VERDICT_VALID:
	case VERDICT_COUNT: break;
	}
	return "";
}
