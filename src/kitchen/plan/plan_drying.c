/*
 * plan_drying.c - what is to be dried, as the planner is told of it: a run in a dryer.
 *
 * Its dryer is reckoned with for the longest that is said: published hours, else those of the
 * house (engine/drying/drying.h).  Tested earlier it is free earlier.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/plan/plan_input.h"

#define HOUR_S 3600

struct drying_hours plan_hours_of(const struct log_plan_run *row)
{
	struct drying_hours hours = { 0 };

	(void)drying_hours_of(drying_named(row->fruit), row->fruit, row->hours_low, row->hours_high, &hours, NULL);
	return hours;
}

/* --- how long it takes ----------------------------------------------------------------------- */

static const struct log_plan_run *row_of(const struct building *building, int64_t plan_id)
{
	const struct planned *rows = building->planning->rows;

	for (size_t i = 0; i < rows->run_count; i++)
		if (rows->runs[i].id == plan_id)
			return &rows->runs[i];
	return NULL;
}

/* The clock on its strip runs to the first test. */
static void to_the_longest(const struct strip *strip, const struct moment *now, struct plan_run *run)
{
	const struct strip_drying *in = strip_drying(strip);
	int64_t dried_ms = in->dried_ms;
	int64_t left_s;

	if (strip->rule->name == PHASE_DRY)
		dried_ms += strip_passed_ms(strip, now);
	left_s = (in->row.high_ms - dried_ms) / 1000;
	if (run->run.length_s > 0 && left_s > run->run.length_s)
		run->run.length_s = (int)left_s;
}

static void drying_spans(const struct building *building, const struct strip *strip, const struct log_plan_run *row,
                         struct plan_run *run)
{
	const struct moment *now = building->now;

	if (strip != NULL) {
		plan_next_look(strip, now, run);
		plan_what_is_left(building->kitchen, strip, now, run);
		to_the_longest(strip, now, run);
	} else if (row != NULL) {
		plan_all_of_it(building->kitchen, STATION_DRYER, plan_hours_of(row).high * HOUR_S, run);
	}
	run->drain.people = 0; /* rule 13 of the planner */
}

/* --- in words ---------------------------------------------------------------------------------- */

/* "12 lb apples, 8-14 h", "3 cups fruit leather on 2 trays, 6-8 h" */
static void say_row(const struct building *building, const struct log_plan_run *row, char *words, size_t size)
{
	struct drying_hours hours = plan_hours_of(row);
	struct text text = text_over(words, size);
	int64_t trays = row->puree_ul > 0 ? plan_trays_of(building->kitchen, row) : 0;
	char amount[48];

	amount_words(row->puree_ul > 0 ? MEASURE_VOLUME : MEASURE_MASS,
	             row->puree_ul > 0 ? row->puree_ul : row->fruit_mg, building->kitchen->board.house.units, amount,
	             sizeof(amount));
	text_add(&text, "%s %s", amount, row->fruit);
	if (trays > 0)
		text_add(&text, " on %s", count_words(trays, "tray").words);
	text_add(&text, ", %d-%d h", hours.low, hours.high);
}

/* --- items ------------------------------------------------------------------------------------- */

static void row_item(struct building *building, const struct log_plan_run *row)
{
	struct plan_item *item = plan_item_add(building, true, row->id, row->run_id);

	if (item == NULL)
		return;
	item->dries = true;
	say_row(building, row, item->words, sizeof(item->words));
	plan_item_stands(building, item, STRIP_DRYING);
}

static bool put_drying(struct building *building, struct plan_item *item)
{
	struct plan_input *input = building->input;
	struct plan_run *run = &input->runs[input->run_count];
	const struct log_plan_run *row = row_of(building, item->plan_id);
	const struct strip *strip =
	    item->state == ITEM_GOING_ON ? plan_strip_with(building, STRIP_DRYING, item->work_id) : NULL;

	if (input->run_count == PLAN_RUNS_MAX)
		return plan_refuse(building, "There are more runs than one plan holds: split the day in two.");
	memset(run, 0, sizeof(*run));
	run->at = PLAN_DRYER;
	run->id = plan_item_id(item);
	run->station = strip != NULL ? plan_station_of(building, strip) : PLAN_NONE;
	run->ready_s = row != NULL && strip == NULL ? plan_seconds_of_day(row->ready_minutes) : 0;
	drying_spans(building, strip, row, run);
	item->index = input->run_count;
	building->planning->out.run_items[input->run_count++] = plan_item_number(building, item);
	return true;
}

bool plan_put_dryings(struct building *building)
{
	struct planning *planning = building->planning;
	size_t first = planning->out.item_count;

	for (size_t i = 0; i < planning->rows->run_count; i++)
		if (planning->rows->runs[i].dries)
			row_item(building, &planning->rows->runs[i]);
	plan_put_unplanned(building, STRIP_DRYING); /* the dryer is taken */
	for (size_t i = first; i < planning->out.item_count; i++)
		if (plan_lies_ahead(&planning->items[i]) && !put_drying(building, &planning->items[i]))
			return false;
	return true;
}
