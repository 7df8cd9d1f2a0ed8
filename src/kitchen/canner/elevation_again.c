/*
 * elevation_again.c - every load made since an elevation was set, looked up at the right one:
 * by a correction, and by the undo of a slip.
 */
#include <stdlib.h>

#include "kitchen/act/undo.h"
#include "kitchen/board/load_record.h"
#include "kitchen/canner/canner_private.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/work.h"

/* The largest jar of a load and its first lot: what its process was looked up for. */
static bool read_made(struct log *log, const struct log_load *load, struct log_lot *lot, const char **jar,
                      struct fault *fault)
{
	struct load_record record;
	bool done;

	if (!load_record_of(log, load, 0, &record, fault))
		return false;
	*jar = jar_sizes[load_record_largest_jar(&record)].name;
	done = record.lot_count > 0;
	if (done)
		*lot = record.lots[0].row;
	load_record_free(&record);
	return done;
}

/* One load made at the elevation that was wrong; counted, and marked when `act`. */
static bool look_again(struct kitchen *kitchen, struct act *act, const struct log_load *made,
                       const struct log_house *right, int *loads, struct text *said, struct fault *fault)
{
	const struct strip *strip = act == NULL ? NULL : kitchen_strip(kitchen, made->id, NULL);
	struct log_load load = *made;
	struct log_lot lot;
	const char *jar;
	int minutes;

	if (load_from_notebook(made)) /* nobody looked its process up */
		return true;
	if (strip != NULL && strip_before_end(strip)) /* it can be mended yet */
		return raise_running(act, strip, right, said, fault);
	if (!read_made(kitchen->log, &load, &lot, &jar, fault))
		return false;
	*loads += load.verdict != VERDICT_NOT_VALID && load_asks_more(&load, &lot, jar, &right->elevation, &minutes);
	if (act == NULL)
		return true;
	load.elevation = right->elevation; /* the gate finds what that makes of it */
	return log_put_load(kitchen->log, &load, fault);
}

bool loads_at_elevation(struct kitchen *kitchen, struct act *act, int64_t since_wall_ms, const struct log_house *right,
                        int *loads, struct text *said, struct fault *fault)
{
	struct log_load *made;
	size_t count;
	bool done = true;

	*loads = 0;
	if (since_wall_ms == 0)
		return true;
	if (!log_works_between(kitchen->log, SUBJECT_LOAD, since_wall_ms, INT64_MAX, &made, &count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++)
		done = look_again(kitchen, act, &made[i], right, loads, said, fault);
	free(made);
	return done;
}

/* When the oldest load in a canner was begun, if that is sooner: what it holds may have
 * followed the elevation that was taken back. */
static int64_t since_running(const struct kitchen *kitchen, int64_t since_wall_ms)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];

		if (strip_has_load(strip) && strip_load(strip)->row.opened_wall_ms < since_wall_ms)
			since_wall_ms = strip_load(strip)->row.opened_wall_ms;
	}
	return since_wall_ms;
}

bool elevation_taken_back(struct act *act, const struct log_entry *first, struct fault *fault)
{
	struct kitchen *kitchen = act->kitchen;
	const struct log_house *house = &kitchen->board.house;
	char words[SENTENCE_MAX_BYTES];
	struct text said = TEXT_OVER(words);
	int loads;

	if (!house->elevation.known && !canners_are_empty(kitchen, "elevation", NULL))
		return fault_set(fault, FAULT_REFUSED,
		                 "Before that no elevation was set, and a canner holds a load: type the right one (h), "
		                 "and the load follows it.");
	return loads_at_elevation(kitchen, act, since_running(kitchen, first->at.wall_ms), house, &loads, &said, fault);
}
