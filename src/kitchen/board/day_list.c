/*
 * day_list.c - what was begun on a day, for looking back and correcting.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/kinds.h"
#include "log/tables/pot.h"
#include "log/tables/work.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)

int jars_filled(const struct log_jar *rows, size_t count, const char *size)
{
	int jars = 0;

	for (size_t i = 0; i < count; i++)
		jars += rows[i].from_jar_id == 0 && (size == NULL || strcmp(rows[i].size, size) == 0);
	return jars;
}

static int by_age(const void *a, const void *b)
{
	const struct day_item *one = a;
	const struct day_item *other = b;

	return (one->opened_wall_ms > other->opened_wall_ms) - (one->opened_wall_ms < other->opened_wall_ms);
}

/* What was begun then, of one kind, behind the others. */
static bool add_items(const struct kitchen *kitchen, const struct work_kind *kind, int64_t from, int64_t to,
                      struct day_item **items, size_t *used, struct fault *fault)
{
	struct day_item *more;
	void *rows;
	size_t count;

	if (!log_works_between(kitchen->log, kind->subject, from, to, &rows, &count, fault))
		return false;
	more = realloc(*items, (*used + count + 1) * sizeof(**items));
	if (more == NULL) {
		free(rows);
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the day.");
	}
	*items = more;
	memset(more + *used, 0, count * sizeof(*more));
	for (size_t i = 0; i < count; i++)
		kind->day_item(kitchen, (const char *)rows + i * log_works_row_size(kind->subject), &more[(*used)++]);
	free(rows);
	return true;
}

bool kitchen_day(const struct kitchen *kitchen, int64_t wall_ms, struct day_item **rows, size_t *count,
                 struct fault *fault)
{
	int64_t from = clock_day_start(wall_ms);
	/* A day of 25 hours ends where the next one begins. */
	int64_t to = clock_day_start(from + DAY_MS + DAY_MS / 8);
	struct day_item *items = NULL;
	size_t used = 0;
	bool done = true;

	*rows = NULL;
	*count = 0;
	for (size_t i = 0; i < WORK_KINDS && done; i++)
		done = add_items(kitchen, work_kinds[i], from, to, &items, &used, fault);
	if (!done) {
		free(items);
		return false;
	}
	qsort(items, used, sizeof(*items), by_age);
	*rows = items;
	*count = used;
	return true;
}

bool kitchen_batch_get(const struct kitchen *kitchen, int64_t batch_id, struct log_batch *out, struct fault *fault)
{
	return log_batch_get(kitchen->log, batch_id, out, fault);
}

bool kitchen_jars_filled(const struct kitchen *kitchen, int64_t batch_id, const char *jar, int *jars,
                         struct fault *fault)
{
	struct log_jar *rows;
	size_t count;

	*jars = 0;
	if (!log_jars_of_batch(kitchen->log, batch_id, &rows, &count, fault))
		return false;
	*jars = jars_filled(rows, count, jar);
	free(rows);
	return true;
}
