/*
 * day_list.c - what was begun on a day, for looking back and correcting.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/board_private.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)

struct day_rows {
	struct log_run *runs;
	struct log_batch *batches;
	struct log_load *loads;
	size_t run_count;
	size_t batch_count;
	size_t load_count;
};

static bool read_rows(const struct kitchen *kitchen, int64_t wall_ms, struct day_rows *rows, struct fault *fault)
{
	int64_t from = clock_day_start(wall_ms);
	/* A day of 25 hours ends where the next one begins. */
	int64_t to = clock_day_start(from + DAY_MS + DAY_MS / 8);

	return log_runs_between(kitchen->log, from, to, &rows->runs, &rows->run_count, fault) &&
	       log_batches_between(kitchen->log, from, to, &rows->batches, &rows->batch_count, fault) &&
	       log_loads_between(kitchen->log, from, to, &rows->loads, &rows->load_count, fault);
}

static void free_rows(struct day_rows *rows)
{
	free(rows->runs);
	free(rows->batches);
	free(rows->loads);
}

static void run_item(const struct kitchen *kitchen, const struct log_run *run, struct day_item *item)
{
	struct log_juice *juices;
	char weight[48];
	char volume[48];
	int64_t drawn = 0;
	size_t count = 0;

	if (log_juices_of_run(kitchen->log, run->id, &juices, &count, NULL)) {
		for (size_t i = 0; i < count; i++)
			drawn += juices[i].made_ul;
		free(juices);
	}
	amount_words(MEASURE_MASS, run->fruit_mg, kitchen->board.house.units, weight, sizeof(weight));
	amount_words(MEASURE_VOLUME, drawn, kitchen->board.house.units, volume, sizeof(volume));
	item->subject = (struct log_subject){ SUBJECT_RUN, run->id };
	item->opened_wall_ms = run->opened_wall_ms;
	item->open = run->open;
	(void)snprintf(item->words, sizeof(item->words), "run: %s %.60s, %s juice", weight, run->fruit,
	               drawn > 0 ? volume : "no");
}

int jars_filled(const struct log_jar *rows, size_t count, const char *size)
{
	int jars = 0;

	for (size_t i = 0; i < count; i++)
		jars += rows[i].from_jar_id == 0 && (size == NULL || strcmp(rows[i].size, size) == 0);
	return jars;
}

static void batch_item(const struct kitchen *kitchen, const struct log_batch *batch, struct day_item *item)
{
	struct log_jar *jars;
	struct log_lot lot = { 0 };
	size_t count = 0;
	int filled = 0;

	if (log_jars_of_batch(kitchen->log, batch->id, &jars, &count, NULL)) {
		filled = jars_filled(jars, count, NULL);
		free(jars);
	}
	(void)log_lot_get(kitchen->log, batch->lot_id, &lot, NULL);
	item->subject = (struct log_subject){ SUBJECT_BATCH, batch->id };
	item->opened_wall_ms = batch->opened_wall_ms;
	item->open = batch->open;
	(void)snprintf(item->words, sizeof(item->words), "batch %.24s: %d x %.60s, %d jars", lot.code, batch->multiple,
	               batch->recipe, filled);
}

static void load_item(const struct kitchen *kitchen, const struct log_load *load, struct day_item *item)
{
	struct log_jar *jars;
	struct log_lot lot = { 0 };
	char minutes[24] = "minutes not noted";
	size_t count = 0;

	if (log_jars(kitchen->log, load->id, &jars, &count, NULL)) {
		if (count > 0)
			(void)log_lot_get(kitchen->log, jars[0].lot_id, &lot, NULL);
		free(jars);
	}
	item->subject = (struct log_subject){ SUBJECT_LOAD, load->id };
	item->opened_wall_ms = load->opened_wall_ms;
	item->open = load->place != PLACE_SHELF;
	if (load->minutes > 0)
		(void)snprintf(minutes, sizeof(minutes), "%d min", load->minutes);
	(void)snprintf(item->words, sizeof(item->words), "load: %zu jars %.60s, %s, %s", count, lot.product, minutes,
	               load->verdict == VERDICT_OPEN ? load_place_name(load->place) : verdict_name(load->verdict));
}

static int by_age(const void *a, const void *b)
{
	const struct day_item *one = a;
	const struct day_item *other = b;

	return (one->opened_wall_ms > other->opened_wall_ms) - (one->opened_wall_ms < other->opened_wall_ms);
}

bool kitchen_day(const struct kitchen *kitchen, int64_t wall_ms, struct day_item **rows, size_t *count,
                 struct fault *fault)
{
	struct day_rows read = { 0 };
	struct day_item *items = NULL;
	size_t used = 0;

	*rows = NULL;
	*count = 0;
	if (read_rows(kitchen, wall_ms, &read, fault)) {
		items = calloc(read.run_count + read.batch_count + read.load_count + 1, sizeof(*items));
		if (items == NULL)
			fault_set(fault, FAULT_MEMORY, "There is no memory left for the day.");
	}
	for (size_t i = 0; items != NULL && i < read.run_count; i++)
		run_item(kitchen, &read.runs[i], &items[used++]);
	for (size_t i = 0; items != NULL && i < read.batch_count; i++)
		batch_item(kitchen, &read.batches[i], &items[used++]);
	for (size_t i = 0; items != NULL && i < read.load_count; i++)
		load_item(kitchen, &read.loads[i], &items[used++]);
	free_rows(&read);
	if (items == NULL)
		return false;
	qsort(items, used, sizeof(*items), by_age);
	*rows = items;
	*count = used;
	return true;
}

bool kitchen_run_get(const struct kitchen *kitchen, int64_t run_id, struct log_run *out, struct fault *fault)
{
	return log_run_get(kitchen->log, run_id, out, fault);
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
