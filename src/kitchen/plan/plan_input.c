/*
 * plan_input.c - what the planner is told: the stations and people of this house,
 * the work that goes on, the jars that wait, and what is planned beside them.
 *
 * Juice: planned batches take it in their order, first what is in stock, then what
 * the runs will likely give (juice_yield.h); a batch waits for the runs it takes
 * juice of, unless its row says otherwise.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/fruit.h"
#include "kitchen/file/open_day.h"
#include "kitchen/plan/plan_private.h"
#include "kitchen/stock/stock_private.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)
#define NO_POT (1u << (PLAN_STATIONS_MAX - 1)) /* a station that is none: nine stand here at most */

/* The processes of a family, to tell families apart. */
struct family_key {
	int jar;
	int minutes[PLAN_STATIONS_MAX]; /* 0: none */
	int pressure[PLAN_STATIONS_MAX];
};

/* Juice that somebody can take. */
struct pool {
	const char *kind;
	int64_t left_ul;
	int run; /* index into input.runs; PLAN_NONE: in stock */
};
#define POOLS_MAX (PLAN_RUNS_MAX + 64)

struct building {
	const struct kitchen *kitchen;
	struct planning *planning;
	struct plan_input *input;
	const struct moment *now;
	int now_s;
	struct family_key keys[PLAN_FAMILIES_MAX];
	struct pool pools[POOLS_MAX];
	int pool_count;
	char own_fruit[NAME_MAX_BYTES]; /* whose own runs were asked for last */
	struct juice_runs own;
};

static bool refuse(struct building *building, const char *sentence)
{
	return fault_set(&building->planning->out.why, FAULT_REFUSED, "%s", sentence);
}

/* --- the clock ------------------------------------------------------------------------------ */

static int seconds_at(const struct building *building, int64_t wall_ms)
{
	int64_t seconds = (wall_ms - building->planning->out.zero_wall_ms) / 1000;

	return seconds < 0 ? 0 : seconds > PLAN_TIME_MAX_S ? PLAN_TIME_MAX_S : (int)seconds;
}

static int seconds_of_day(int minutes)
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
	int start = seconds_of_day(planning->rows->plan.start_minutes);

	planning->out.zero_wall_ms = day_of(planning, building->now);
	building->now_s = seconds_at(building, building->now->wall_ms);
	building->input->start_s = start > building->now_s ? start : building->now_s;
	planning->out.start_ms = plan_wall_ms(&planning->out, building->input->start_s);
}

/* --- who and what is there ---------------------------------------------------------------------- */

static enum plan_station_kind plan_kind(enum station_kind kind)
{
	return kind == STATION_JUICER ? PLAN_JUICER : kind == STATION_POT ? PLAN_POT : PLAN_CANNER;
}

static void put_stations(struct building *building)
{
	const struct board *board = &building->kitchen->board;
	struct plan_input *input = building->input;

	for (size_t i = 0; i < board->stations && input->station_count < PLAN_STATIONS_MAX - 1; i++) {
		const struct log_station *from = &board->strips[i].station;
		struct plan_station *station = &input->stations[input->station_count];

		station->id = from->id;
		station->kind = plan_kind(from->kind);
		station->on_burner = !from->own_heat;
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
		jars += strip_on_rack(&board->strips[i]) ? board->strips[i].jars : 0;
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
		input->people[i].from_s = seconds_of_day(planning->rows->helpers[i].from_minutes);
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
		return refuse(building,
		              "These products need too many different processes for one plan: split the day in two.");
	family.id = input->family_count;
	building->keys[input->family_count] = key;
	input->families[input->family_count++] = family;
	return true;
}

/* --- items ---------------------------------------------------------------------------------------------- */

static struct plan_item *add_item(struct building *building, bool is_run, int64_t plan_id, int64_t work_id)
{
	struct kitchen_plan *out = &building->planning->out;
	struct plan_item *item;

	if (out->item_count == PLAN_ITEMS_MAX)
		return NULL;
	item = &building->planning->items[out->item_count++];
	*item = (struct plan_item){ .is_run = is_run, .plan_id = plan_id, .work_id = work_id, .index = PLAN_NONE };
	return item;
}

/* By which the planner knows it again: below 0, of work that nobody planned. */
static int64_t id_to_planner(const struct plan_item *item)
{
	return item->plan_id != 0 ? item->plan_id : -item->work_id;
}

static int item_number(const struct building *building, const struct plan_item *item)
{
	return (int)(item - building->planning->items);
}

/* The strip that holds the work; NULL: none. */
static const struct strip *strip_with(const struct building *building, enum strip_content content, int64_t work_id)
{
	const struct board *board = &building->kitchen->board;

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content == content && strip_work_id(&board->strips[i]) == work_id)
			return &board->strips[i];
	return NULL;
}

static int station_of(const struct building *building, const struct strip *strip)
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

/* --- runs -------------------------------------------------------------------------------------------------- */

/* A row that no work has taken is still to come, until the day is over. */
static enum plan_item_state state_of_row(const struct building *building, int64_t work_id, const struct strip *strip)
{
	if (work_id != 0)
		return strip != NULL ? ITEM_GOING_ON : ITEM_DONE;
	return building->planning->rows->plan.finished_wall_ms != 0 ? ITEM_NOT_BEGUN : ITEM_PLANNED;
}

static bool lies_ahead(const struct plan_item *item)
{
	return item->state == ITEM_PLANNED || item->state == ITEM_GOING_ON;
}

/* Words of the runs and batches of the plan, in its order. */
static void run_item(struct building *building, const struct log_plan_run *row)
{
	struct plan_item *item = add_item(building, true, row->id, row->run_id);
	const struct strip *strip = row->run_id == 0 ? NULL : strip_with(building, STRIP_RUN, row->run_id);
	char weight[48];

	if (item == NULL)
		return;
	amount_words(MEASURE_MASS, row->fruit_mg, building->kitchen->board.house.units, weight, sizeof(weight));
	(void)snprintf(item->words, sizeof(item->words), "%s %s", weight, row->fruit);
	item->state = state_of_row(building, row->run_id, strip);
	if (strip != NULL)
		text_copy(item->words, sizeof(item->words), strip->holds);
}

static const char *fruit_of(const struct building *building, const struct plan_item *item)
{
	const struct planning *planning = building->planning;
	const struct strip *strip =
	    item->state == ITEM_GOING_ON ? strip_with(building, STRIP_RUN, item->work_id) : NULL;

	if (strip != NULL)
		return strip->run.fruit;
	for (size_t i = 0; i < planning->rows->run_count; i++)
		if (planning->rows->runs[i].id == item->plan_id)
			return planning->rows->runs[i].fruit;
	return "";
}

/* What a run will likely still give. */
static int64_t juice_to_come(struct building *building, const char *fruit, int64_t fruit_mg, int64_t drawn_ul)
{
	struct juice_yield yield;
	double ul;

	if (strcmp(building->own_fruit, fruit) != 0) {
		if (!own_runs(building->kitchen, fruit, &building->own, NULL))
			memset(&building->own, 0, sizeof(building->own));
		text_copy(building->own_fruit, sizeof(building->own_fruit), fruit);
	}
	juice_yield_of(fruit, fruit_mg, &building->own, &yield);
	ul = yield.ul_per_kg[BOUND_LIKELY] * (double)fruit_mg / 1e6 + 0.5;
	return (int64_t)ul > drawn_ul ? (int64_t)ul - drawn_ul : 0;
}

static void add_pool(struct building *building, const char *kind, int64_t ul, int run)
{
	if (building->pool_count < POOLS_MAX && ul > 0)
		building->pools[building->pool_count++] = (struct pool){ .kind = kind, .left_ul = ul, .run = run };
}

static bool put_run(struct building *building, struct plan_item *item)
{
	struct plan_input *input = building->input;
	struct planning *planning = building->planning;
	const struct strip *strip =
	    item->state == ITEM_GOING_ON ? strip_with(building, STRIP_RUN, item->work_id) : NULL;
	const char *fruit = fruit_of(building, item);
	struct plan_run *run = &input->runs[input->run_count];
	int64_t mg = strip != NULL ? strip->run.fruit_mg : 0;
	struct fault why = { 0 };

	if (input->run_count == PLAN_RUNS_MAX)
		return refuse(building, "There are more runs than one plan holds: split the day in two.");
	if (!plan_run_known(building->kitchen, &why))
		return refuse(building, why.sentence);
	memset(run, 0, sizeof(*run));
	run->station = strip != NULL ? station_of(building, strip) : PLAN_NONE;
	run->id = id_to_planner(item);
	for (size_t i = 0; i < planning->rows->run_count && strip == NULL; i++)
		if (planning->rows->runs[i].id == item->plan_id) {
			run->ready_s = seconds_of_day(planning->rows->runs[i].ready_minutes);
			mg = planning->rows->runs[i].fruit_mg;
		}
	plan_run_spans(building->kitchen, strip, building->now, run);
	add_pool(building, fruit, juice_to_come(building, fruit, mg, strip != NULL ? strip->drawn_ul : 0),
	         input->run_count);
	item->index = input->run_count;
	planning->out.run_items[input->run_count++] = item_number(building, item);
	return true;
}

/* Runs of one fruit stand together, in their order: batches wait for a stretch of them. */
static bool put_runs(struct building *building)
{
	struct planning *planning = building->planning;
	const struct board *board = &building->kitchen->board;

	for (size_t i = 0; i < planning->rows->run_count; i++)
		run_item(building, &planning->rows->runs[i]);
	for (size_t i = 0; i < board->stations; i++) {
		struct plan_item *item;

		if (board->strips[i].content != STRIP_RUN || item_of(building, true, board->strips[i].run.id) != NULL)
			continue;
		item = add_item(building, true, 0, board->strips[i].run.id);
		if (item == NULL)
			continue;
		item->state = ITEM_GOING_ON;
		text_copy(item->words, sizeof(item->words), board->strips[i].holds);
	}
	for (size_t i = 0; i < planning->out.item_count; i++) {
		struct plan_item *first = &planning->items[i];

		for (size_t n = i; n < planning->out.item_count; n++) {
			struct plan_item *item = &planning->items[n];

			if (item->index == PLAN_NONE && lies_ahead(item) &&
			    (n == i || fruit_same(fruit_of(building, first), fruit_of(building, item))) &&
			    !put_run(building, item))
				return false;
			if (first->index == PLAN_NONE)
				break; /* done already: it opens no group */
		}
	}
	return true;
}

/* --- juice ------------------------------------------------------------------------------------------------------ */

static void put_stock(struct building *building)
{
	const struct planning *planning = building->planning;

	for (size_t i = 0; i < planning->rows->juice_count && building->pool_count < POOLS_MAX - PLAN_RUNS_MAX; i++)
		add_pool(building, planning->rows->juices[i].kind, planning->rows->juices[i].left_ul, PLAN_NONE);
}

/* The first and last run of the plan that some batch waits for. */
struct stretch_of_runs {
	int first;
	int last;
};

static void stretch_to(struct stretch_of_runs *runs, int run)
{
	if (run == PLAN_NONE)
		return;
	runs->first = runs->first == PLAN_NONE || run < runs->first ? run : runs->first;
	runs->last = run > runs->last ? run : runs->last;
}

/* Take the juice of one ingredient; what there will not be enough of waits for all. */
static void take_from_pools(struct building *building, const char *name, int64_t ul, struct plan_item *item,
                            struct stretch_of_runs *runs)
{
	int64_t got = 0;

	for (int i = 0; i < building->pool_count && !measured_enough(ul, got); i++) {
		struct pool *pool = &building->pools[i];
		int64_t taken = pool->left_ul < ul - got ? pool->left_ul : ul - got;

		if (taken == 0 || !fruit_in(pool->kind, name))
			continue;
		pool->left_ul -= taken;
		got += taken;
		stretch_to(runs, pool->run);
	}
	if (measured_enough(ul, got))
		return;
	item->juice_short = true;
	for (int i = 0; i < building->pool_count; i++)
		if (fruit_in(building->pools[i].kind, name))
			stretch_to(runs, building->pools[i].run);
}

/* The first `count` planned runs that serve the ingredient, done ones counted. */
static void wait_for_first(struct building *building, const char *name, int count, struct stretch_of_runs *runs)
{
	const struct planning *planning = building->planning;

	*runs = (struct stretch_of_runs){ PLAN_NONE, PLAN_NONE };
	for (size_t i = 0; i < planning->out.item_count && count > 0; i++) {
		const struct plan_item *item = &planning->items[i];

		if (!item->is_run || !fruit_in(fruit_of(building, item), name))
			continue;
		stretch_to(runs, item->index);
		count--;
	}
}

static void wait_for_juice(struct building *building, const struct log_plan_batch *row, const struct recipe *recipe,
                           struct plan_item *item, struct plan_batch *batch)
{
	struct stretch_of_runs runs = { PLAN_NONE, PLAN_NONE };

	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *ingredient = &recipe->ingredients[i];

		if (ingredient->supply != SUPPLY_JUICE)
			continue;
		take_from_pools(building, ingredient->name, ingredient->amount * row->multiple, item, &runs);
		if (row->after_runs != PLAN_RUNS_AS_NEEDED)
			wait_for_first(building, ingredient->name, row->after_runs, &runs);
	}
	if (runs.first == PLAN_NONE)
		return;
	batch->first_run = runs.first;
	batch->run_count = runs.last - runs.first + 1;
}

/* --- batches ------------------------------------------------------------------------------------------------------- */

static unsigned pots_for(const struct building *building, const struct recipe *recipe, int multiple)
{
	const struct board *board = &building->kitchen->board;
	unsigned pots = 0;

	for (int i = 0; i < building->input->station_count; i++) {
		const struct log_station *station = &board->strips[building->planning->strip_of[i]].station;

		if (station->kind == STATION_POT &&
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
		(void)refuse(building, "There are more batches than one plan holds: split the day in two.");
		return NULL;
	}
	memset(batch, 0, sizeof(*batch));
	batch->station = PLAN_NONE;
	if (!family_of(building, made, &batch->family))
		return NULL;
	batch->id = id_to_planner(item);
	batch->jars = jars < 1 ? 1 : jars > PLAN_JARS_MAX ? PLAN_JARS_MAX : jars;
	batch->wait_limit_s = building->kitchen->board.house.jar_wait_minutes * 60;
	item->index = input->batch_count;
	building->planning->out.batch_items[input->batch_count++] = item_number(building, item);
	return batch;
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
		return refuse(building, why.sentence);
	item->jars = pot_yield(recipe, row->multiple, row->jar, &yield, NULL) ? yield.jars_likely : 0;
	batch = next_batch(building, item,
	                   &(struct made){ recipe->food, row->pack, jar_size_named(row->jar), recipe->sheet_minutes },
	                   item->jars);
	if (batch == NULL)
		return false;
	batch->ready_s = seconds_of_day(row->ready_minutes);
	batch->pots = pots_for(building, recipe, row->multiple);
	plan_batch_spans(building->kitchen, NULL, building->now, recipe, batch);
	wait_for_juice(building, row, recipe, item, batch);
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
	int station = station_of(building, strip);
	int jars = batch_jars_to_come(strip);
	struct plan_batch left = { .stage = PLAN_IN_POT };
	struct plan_batch *batch;

	item->jars = jars;
	plan_batch_spans(building->kitchen, strip, building->now, strip->recipe, &left);
	if (station == PLAN_NONE)
		return true;
	if (strip->lot.food[0] == '\0' || jars == 0 || jar_size_named(strip->batch.jar) == NULL) {
		building->input->stations[station].free_at_s = building->input->start_s + left_in_pot_s(&left);
		return true;
	}
	batch = next_batch(building, item,
	                   &(struct made){ strip->lot.food, strip->lot.pack, jar_size_named(strip->batch.jar),
	                                   strip->batch.sheet_minutes },
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
	struct plan_item *item = add_item(building, false, row->id, row->batch_id);
	const struct strip *strip = row->batch_id == 0 ? NULL : strip_with(building, STRIP_BATCH, row->batch_id);

	if (item == NULL)
		return;
	if (row->multiple > 1)
		(void)snprintf(item->words, sizeof(item->words), "%d x %s", row->multiple, row->recipe);
	else
		text_copy(item->words, sizeof(item->words), row->recipe);
	item->state = state_of_row(building, row->batch_id, strip);
	if (strip != NULL)
		text_copy(item->words, sizeof(item->words), strip->holds);
}

/* Batches in pots that nobody planned. */
static void add_unplanned(struct building *building)
{
	const struct board *board = &building->kitchen->board;

	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];
		struct plan_item *item;

		if (strip->content != STRIP_BATCH || item_of(building, false, strip->batch.id) != NULL)
			continue;
		item = add_item(building, false, 0, strip->batch.id);
		if (item == NULL)
			continue;
		item->state = ITEM_GOING_ON;
		text_copy(item->words, sizeof(item->words), strip->holds);
	}
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
			item = add_item(building, false, 0, group->batch_id);
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
	add_unplanned(building);
	for (size_t i = first; i < planning->out.item_count; i++) {
		struct plan_item *item = &planning->items[i];
		const struct strip *strip = strip_with(building, STRIP_BATCH, item->work_id);

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
		load->id = strip->load.id;
		load->station = i;
		load->jars = strip->jars;
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
	put_stock(&building);
	if (!put_runs(&building) || !put_batches(&building))
		return false;
	put_loads(&building);
	if (!kitchen->board.house.elevation.known && planning->fresh.batch_count > 0)
		return refuse(
		    &building,
		    "The elevation of the kitchen is not set, so no process time is known: set it first (h).");
	return true;
}
