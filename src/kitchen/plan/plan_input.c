/*
 * plan_input.c - what the planner is told: the stations and people of this house,
 * the work that goes on, the jars that wait, and what is planned beside them.
 * Runs and juice: plan_juice.c.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/file/open_day.h"
#include "kitchen/plan/plan_input.h"
#include "kitchen/stock/stock_private.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)
#define NO_POT (1u << (PLAN_STATIONS_MAX - 1)) /* a station that is none: nine stand here at most */

bool plan_refuse(struct building *building, const char *sentence)
{
	return fault_set(&building->planning->out.why, FAULT_REFUSED, "%s", sentence);
}

/* --- the clock ------------------------------------------------------------------------------ */

static int seconds_at(const struct building *building, int64_t wall_ms)
{
	int64_t seconds = (wall_ms - building->planning->out.zero_wall_ms) / 1000;

	return seconds < 0 ? 0 : seconds > PLAN_TIME_MAX_S ? PLAN_TIME_MAX_S : (int)seconds;
}

int plan_seconds_of_day(int minutes)
{
	return minutes == PLAN_ANY_TIME ? 0 : minutes * 60;
}

/* The day of the plan: as set, as accepted, else today.  Work may go on past
 * midnight; a plan of days ago is looked at as of today. */
static int64_t day_of(const struct planning *planning, const struct moment *now)
{
	int64_t today = clock_day_start(now->wall_ms);
	int64_t day = planning->rows->plan.day_wall_ms;

	if (day == 0 || day > now->wall_ms + 5 * DAY_MS)
		return today;
	if (planning->rows->plan.accepted_wall_ms != 0)
		return now->wall_ms - day > 2 * DAY_MS ? today : day;
	return day < today ? today : day;
}

static void set_clock(struct building *building)
{
	struct planning *planning = building->planning;
	int start = plan_seconds_of_day(planning->rows->plan.start_minutes);

	planning->out.zero_wall_ms = day_of(planning, building->now);
	building->now_s = seconds_at(building, building->now->wall_ms);
	building->input->start_s = start > building->now_s ? start : building->now_s;
	planning->out.start_ms = plan_wall_ms(&planning->out, building->input->start_s);
}

/* --- who and what is there ---------------------------------------------------------------------- */

static void put_stations(struct building *building)
{
	const struct board *board = &building->kitchen->board;
	struct plan_input *input = building->input;

	for (size_t i = 0; i < board->stations && input->station_count < PLAN_STATIONS_MAX - 1; i++) {
		const struct log_station *from = &board->strips[i].station;
		struct plan_station *station = &input->stations[input->station_count];

		if (work_kind_at(from->kind)->planned == PLAN_STATION_KIND_COUNT)
			continue;
		station->id = from->id;
		station->kind = work_kind_at(from->kind)->planned;
		station->on_burner = !from->own_heat && !work_kind_at(from->kind)->own_heat;
		if (station->kind == PLAN_JUICER)
			station->look_every_s = station_water_minutes(&board->house, from) * 60;
		if (station->kind == PLAN_DRYER)
			station->look_every_s = (int)(DRYING_LOOK_MS / 1000);
		station->free_at_s = 0;
		for (size_t jar = 0; jar < jar_size_count && station->kind == PLAN_CANNER; jar++)
			station->jars[jar] = station_room(from, &jar_sizes[jar], NULL);
		building->planning->station_ids[input->station_count] = from->id;
		building->planning->strip_of[input->station_count++] = i;
	}
}

static int jars_cooling(const struct board *board)
{
	int jars = 0;

	for (size_t i = board->stations; i < board->stations + board->racked; i++)
		jars += strip_on_rack(&board->strips[i]) && strip_has_load(&board->strips[i])
		            ? strip_load(&board->strips[i])->jars
		            : 0;
	return jars;
}

static void put_house(struct building *building)
{
	const struct log_plan_house *house = &building->planning->rows->house;
	struct plan_input *input = building->input;

	input->burners = house->burners;
	input->fillers = house->fillers;
	input->cooling_jars = PLAN_NO_LIMIT;
	if (house->cooling_jars != COOLING_NO_LIMIT) {
		input->cooling_jars = house->cooling_jars - jars_cooling(&building->kitchen->board);
		input->cooling_jars = input->cooling_jars < 0 ? 0 : input->cooling_jars;
	}
	input->clean_down = (struct plan_span){ .length_s = house->clean_minutes * 60, .people = 0 };
}

static void put_people(struct building *building)
{
	struct planning *planning = building->planning;
	struct plan_input *input = building->input;

	for (size_t i = 0; i < planning->rows->helper_count && i < PLAN_PEOPLE_MAX; i++) {
		input->people[i].id = planning->rows->helpers[i].id;
		input->people[i].from_s = plan_seconds_of_day(planning->rows->helpers[i].from_minutes);
		text_copy(planning->out.people[i], sizeof(planning->out.people[i]),
		          planning->rows->helpers[i].initials);
		input->people_count++;
	}
	input->in_turns = planning->rows->house.meals_in_turns;
	for (size_t i = 0; i < planning->rows->break_count && input->break_count < PLAN_BREAKS_MAX; i++) {
		struct plan_break *rest = &input->breaks[input->break_count];

		rest->start_s = planning->rows->breaks[i].start_minutes * 60;
		rest->end_s = planning->rows->breaks[i].end_minutes * 60;
		input->break_count += rest->end_s > input->start_s;
	}
}

/* What the jars of a batch are, to a canner. */
struct made {
	const char *food;
	const char *pack;
	const struct jar_size *jar; /* NULL: there is no such size */
	int sheet_minutes;
};

/* --- processes --------------------------------------------------------------------------------------- */

static void find_processes(struct building *building, const struct made *made, struct plan_family *family,
                           struct family_key *key)
{
	const struct board *board = &building->kitchen->board;

	for (int i = 0; i < building->input->station_count; i++) {
		const struct log_station *station = &board->strips[building->planning->strip_of[i]].station;
		struct process_query query = { .food = made->food,
			                       .pack = made->pack,
			                       .jar = made->jar->name,
			                       .elevation = board->house.elevation,
			                       .pressure_psi = NO_PRESSURE,
			                       .sheet_minutes = made->sheet_minutes };
		struct process process;

		if (!station_is_canner(station->kind))
			continue;
		query.method = station_method(station->kind);
		if (!process_find(&query, &process, NULL))
			continue;
		key->minutes[i] = process.minutes;
		key->pressure[i] = process.pressure_psi;
		family->at[i].possible = true;
		plan_process_spans(building->kitchen, NULL, building->now, station->kind, process.minutes,
		                   &family->at[i]);
	}
}

/* Jars that have the same minutes and pressure in every canner may go together. */
static bool family_of(struct building *building, const struct made *made, int *index)
{
	struct plan_input *input = building->input;
	struct plan_family family = { .jar = jar_size_index(made->jar) };
	struct family_key key = { .jar = family.jar };

	find_processes(building, made, &family, &key);
	for (*index = 0; *index < input->family_count; (*index)++)
		if (memcmp(&key, &building->keys[*index], sizeof(key)) == 0)
			return true;
	if (input->family_count == PLAN_FAMILIES_MAX)
		return plan_refuse(
		    building, "These products need too many different processes for one plan: split the day in two.");
	family.id = input->family_count;
	building->keys[input->family_count] = key;
	input->families[input->family_count++] = family;
	return true;
}

/* --- items ---------------------------------------------------------------------------------------------- */

struct plan_item *plan_item_add(struct building *building, bool is_run, int64_t plan_id, int64_t work_id)
{
	struct kitchen_plan *out = &building->planning->out;
	struct plan_item *item;

	if (out->item_count == PLAN_ITEMS_MAX)
		return NULL;
	item = &building->planning->items[out->item_count++];
	*item = (struct plan_item){ .is_run = is_run, .plan_id = plan_id, .work_id = work_id, .index = PLAN_NONE };
	return item;
}

int64_t plan_item_id(const struct plan_item *item)
{
	return item->plan_id != 0 ? item->plan_id : -item->work_id;
}

int plan_item_number(const struct building *building, const struct plan_item *item)
{
	return (int)(item - building->planning->items);
}

const struct strip *plan_strip_with(const struct building *building, enum strip_content content, int64_t work_id)
{
	const struct board *board = &building->kitchen->board;

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content == content && strip_work_id(&board->strips[i]) == work_id)
			return &board->strips[i];
	return NULL;
}

int plan_station_of(const struct building *building, const struct strip *strip)
{
	for (int i = 0; i < building->input->station_count; i++)
		if (building->planning->station_ids[i] == strip->station.id)
			return i;
	return PLAN_NONE;
}

static struct plan_item *item_of(const struct building *building, bool is_run, int64_t work_id)
{
	for (size_t i = 0; i < building->planning->out.item_count; i++) {
		struct plan_item *item = &building->planning->items[i];

		if (item->is_run == is_run && item->work_id == work_id && work_id != 0)
			return item;
	}
	return NULL;
}

/* --- rows -------------------------------------------------------------------------------------------------- */

/* A row that no work has taken is still to come, until the day is over. */
static enum plan_item_state row_state(const struct building *building, int64_t work_id, const struct strip *strip)
{
	if (work_id != 0)
		return strip != NULL ? ITEM_GOING_ON : ITEM_DONE;
	return building->planning->rows->plan.finished_wall_ms != 0 ? ITEM_NOT_BEGUN : ITEM_PLANNED;
}

void plan_item_stands(const struct building *building, struct plan_item *item, enum strip_content content)
{
	const struct strip *strip = item->work_id == 0 ? NULL : plan_strip_with(building, content, item->work_id);

	item->state = row_state(building, item->work_id, strip);
	if (strip != NULL)
		text_copy(item->words, sizeof(item->words), strip->holds);
}

void plan_put_unplanned(struct building *building, enum strip_content content)
{
	const struct board *board = &building->kitchen->board;
	bool is_run = content != STRIP_BATCH;

	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		struct plan_item *item;

		if (strip->content != content || item_of(building, is_run, strip_subject(strip).id) != NULL)
			continue;
		item = plan_item_add(building, is_run, 0, strip_subject(strip).id);
		if (item == NULL)
			continue;
		item->dries = content == STRIP_DRYING;
		item->state = ITEM_GOING_ON;
		text_copy(item->words, sizeof(item->words), strip->holds);
	}
}

bool plan_lies_ahead(const struct plan_item *item)
{
	return item->state == ITEM_PLANNED || item->state == ITEM_GOING_ON;
}

/* --- batches ------------------------------------------------------------------------------------------------------- */

static unsigned pots_for(const struct building *building, const struct recipe *recipe, int multiple)
{
	const struct board *board = &building->kitchen->board;
	unsigned pots = 0;

	for (int i = 0; i < building->input->station_count; i++) {
		const struct log_station *station = &board->strips[building->planning->strip_of[i]].station;

		if (building->input->stations[i].kind == PLAN_POT &&
		    fits_pot(recipe, multiple, station->volume_ul, board->house.units, NULL))
			pots |= 1u << i;
	}
	return pots == 0 ? NO_POT : pots;
}

/* The next batch of the input, with what all have in common; NULL: refused. */
static struct plan_batch *next_batch(struct building *building, struct plan_item *item, const struct made *made,
                                     int jars)
{
	struct plan_input *input = building->input;
	struct plan_batch *batch = &input->batches[input->batch_count];

	if (input->batch_count == PLAN_BATCHES_MAX || made->jar == NULL) {
		(void)plan_refuse(building, "There are more batches than one plan holds: split the day in two.");
		return NULL;
	}
	memset(batch, 0, sizeof(*batch));
	batch->station = PLAN_NONE;
	if (!family_of(building, made, &batch->family))
		return NULL;
	batch->id = plan_item_id(item);
	batch->jars = jars < 1 ? 1 : jars > PLAN_JARS_MAX ? PLAN_JARS_MAX : jars;
	batch->wait_limit_s = building->kitchen->board.house.jar_wait_minutes * 60;
	item->index = input->batch_count;
	building->planning->out.batch_items[input->batch_count++] = plan_item_number(building, item);
	return batch;
}

/* The first row of the plan that is the same pot as this one: what whoever makes it sees. */
static int64_t first_like(const struct building *building, const struct log_plan_batch *row)
{
	const struct planned *rows = building->planning->rows;

	for (size_t i = 0; i < rows->batch_count; i++) {
		const struct log_plan_batch *first = &rows->batches[i];

		if (strcmp(first->recipe, row->recipe) == 0 && strcmp(first->pack, row->pack) == 0 &&
		    strcmp(first->jar, row->jar) == 0 && first->multiple == row->multiple &&
		    first->ready_minutes == row->ready_minutes && first->after_runs == row->after_runs)
			return first->id;
	}
	return row->id;
}

static bool put_planned(struct building *building, const struct log_plan_batch *row, struct plan_item *item)
{
	const struct recipe *recipe = kitchen_recipe_named(building->kitchen, row->recipe);
	struct plan_batch *batch;
	struct yield yield;
	struct fault why = { 0 };

	if (recipe == NULL || recipe->food[0] == '\0') {
		item->state = ITEM_LEFT_OUT;
		return true;
	}
	if (!recipe_has_amounts(recipe, &why))
		return plan_refuse(building, why.sentence);
	item->jars = pot_yield(recipe, row->multiple, row->jar, &yield, NULL) ? yield.jars_likely : 0;
	batch = next_batch(building, item,
	                   &(struct made){ recipe->food, row->pack, jar_size_named(row->jar), recipe->sheet_minutes },
	                   item->jars);
	if (batch == NULL)
		return false;
	batch->like = first_like(building, row);
	batch->ready_s = plan_seconds_of_day(row->ready_minutes);
	batch->pots = pots_for(building, recipe, row->multiple);
	plan_batch_spans(building->kitchen, NULL, building->now, recipe, batch);
	plan_wait_for_juice(building, row, recipe, item, batch);
	return true;
}

static int left_in_pot_s(const struct plan_batch *batch)
{
	return batch->to_boil.length_s + batch->boil.length_s + batch->off.length_s + batch->fill.length_s +
	       batch->rinse.length_s;
}

/* What no canner will take, and a pot that is only rinsed, are not the planner's:
 * its pot is busy for so long. */
static bool put_in_pot(struct building *building, const struct strip *strip, struct plan_item *item)
{
	const struct strip_batch *in = strip_batch(strip);
	int station = plan_station_of(building, strip);
	int jars = batch_jars_to_come(strip);
	struct plan_batch left = { .stage = PLAN_IN_POT };
	struct plan_batch *batch;

	item->jars = jars;
	plan_batch_spans(building->kitchen, strip, building->now, in->recipe, &left);
	if (station == PLAN_NONE)
		return true;
	if (strip->lot.food[0] == '\0' || jars == 0 || jar_size_named(in->row.jar) == NULL) {
		building->input->stations[station].free_at_s = building->input->start_s + left_in_pot_s(&left);
		return true;
	}
	batch = next_batch(
	    building, item,
	    &(struct made){ strip->lot.food, strip->lot.pack, jar_size_named(in->row.jar), in->row.sheet_minutes },
	    jars);
	if (batch == NULL)
		return false;
	batch->stage = PLAN_IN_POT;
	batch->station = station;
	batch->to_boil = left.to_boil;
	batch->boil = left.boil;
	batch->off = left.off;
	batch->fill = left.fill;
	batch->rinse = left.rinse;
	return true;
}

static void batch_item(struct building *building, const struct log_plan_batch *row)
{
	struct plan_item *item = plan_item_add(building, false, row->id, row->batch_id);

	if (item == NULL)
		return;
	if (row->multiple > 1)
		(void)snprintf(item->words, sizeof(item->words), "%d x %s", row->multiple, row->recipe);
	else
		text_copy(item->words, sizeof(item->words), row->recipe);
	plan_item_stands(building, item, STRIP_BATCH);
}

/* Jars that wait for a canner, by batch and size. */
static bool put_waiting(struct building *building)
{
	struct waiting_group groups[WAITING_GROUPS_MAX];
	size_t count =
	    building->kitchen->board.waiting_count == 0 ? 0 : kitchen_waiting(building->kitchen, building->now, groups);

	for (size_t i = 0; i < count; i++) {
		const struct waiting_group *group = &groups[i];
		struct plan_item *item = item_of(building, false, group->batch_id);
		int64_t waited_s = group->waited_ms / 1000;
		struct plan_batch *batch;

		if (group->lot.food[0] == '\0')
			continue;
		if (item == NULL) {
			item = plan_item_add(building, false, 0, group->batch_id);
			if (item == NULL)
				continue;
			text_copy(item->words, sizeof(item->words), group->lot.product);
			item->state = ITEM_WAITING;
		}
		item->state = item->state == ITEM_DONE ? ITEM_WAITING : item->state;
		batch = next_batch(building, item,
		                   &(struct made){ group->lot.food, group->lot.pack, jar_size_named(group->size),
		                                   group->sheet_minutes },
		                   group->jars);
		if (batch == NULL)
			return false;
		batch->stage = PLAN_FILLED;
		batch->filled_at_s = building->now_s - (int)(waited_s > PLAN_TIME_MAX_S ? PLAN_TIME_MAX_S : waited_s);
		item->jars += group->jars;
	}
	return true;
}

static bool put_batches(struct building *building)
{
	struct planning *planning = building->planning;
	size_t first = planning->out.item_count;

	for (size_t i = 0; i < planning->rows->batch_count; i++)
		batch_item(building, &planning->rows->batches[i]);
	plan_put_unplanned(building, STRIP_BATCH);
	for (size_t i = first; i < planning->out.item_count; i++) {
		struct plan_item *item = &planning->items[i];
		const struct strip *strip = plan_strip_with(building, STRIP_BATCH, item->work_id);

		if (item->state == ITEM_GOING_ON && strip != NULL && !put_in_pot(building, strip, item))
			return false;
	}
	if (!put_waiting(building))
		return false;
	for (size_t i = 0; i < planning->rows->batch_count; i++)
		if (planning->items[first + i].state == ITEM_PLANNED &&
		    !put_planned(building, &planning->rows->batches[i], &planning->items[first + i]))
			return false;
	return true;
}

/* --- loads ------------------------------------------------------------------------------------------------------------ */

static void put_loads(struct building *building)
{
	const struct board *board = &building->kitchen->board;
	struct plan_input *input = building->input;

	for (int i = 0; i < input->station_count; i++) {
		const struct strip *strip = &board->strips[building->planning->strip_of[i]];
		struct plan_running_load *load = &input->running_loads[input->running_load_count];

		if (strip->content != STRIP_LOAD)
			continue;
		memset(load, 0, sizeof(*load));
		load->id = strip_load(strip)->row.id;
		load->station = i;
		load->jars = strip_load(strip)->jars;
		plan_process_spans(building->kitchen, strip, building->now, strip->station.kind, 0, &load->left);
		input->running_load_count++;
	}
}

bool plan_build_input(const struct kitchen *kitchen, struct planning *planning, const struct moment *now)
{
	struct building building = { .kitchen = kitchen, .planning = planning, .input = &planning->fresh, .now = now };

	memset(&planning->fresh, 0, sizeof(planning->fresh));
	planning->out.item_count = 0;
	set_clock(&building);
	put_stations(&building);
	put_house(&building);
	put_people(&building);
	plan_put_stock(&building);
	if (!plan_put_runs(&building) || !plan_put_dryings(&building) || !put_batches(&building))
		return false;
	put_loads(&building);
	if (!kitchen->board.house.elevation.known && planning->fresh.batch_count > 0)
		return plan_refuse(
		    &building,
		    "The elevation of the kitchen is not set, so no process time is known: set it first (h).");
	return true;
}
