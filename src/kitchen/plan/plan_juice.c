/*
 * plan_juice.c - juicer runs and their juice, as the planner is told of them.
 *
 * Planned batches take juice in their order, first what is in stock, then what
 * the runs will likely give (juice_yield.h); a batch waits for the runs it takes
 * juice of, unless its row says otherwise.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/fruit.h"
#include "kitchen/plan/plan_input.h"

#define SET_UP_S (5 * 60) /* fill a juicer's basket and pan: common practice, no source */

/* --- how long a run takes --------------------------------------------------------------------------- */

bool plan_run_known(const struct kitchen *kitchen, struct fault *fault)
{
	return plan_work_s(kitchen, STATION_JUICER) > 0 ||
	       fault_set(
	           fault, FAULT_REFUSED,
	           "How long a juicer run takes here is not known, so none can be planned: set it in the house view "
	           "(h), in its times. After %d runs the log knows it.",
	           PLAN_OWN_MIN);
}

void plan_next_look(const struct strip *strip, const struct moment *now, struct plan_run *out)
{
	struct face face = { 0 };

	strip_face(strip, now, &face);
	if (face.water)
		out->look_first_s = face.water_left_s < 0 ? 0 : (int)face.water_left_s;
}

static void run_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                      struct plan_run *out)
{
	if (strip != NULL) {
		plan_next_look(strip, now, out);
		plan_what_is_left(kitchen, strip, now, out);
		return;
	}
	out->set_up = (struct plan_span){ .length_s = SET_UP_S, .people = 1 };
	plan_all_of_it(kitchen, STATION_JUICER, plan_work_s(kitchen, STATION_JUICER), out);
}

int64_t plan_taken_by_run(const struct planning *planning, int64_t plan_id)
{
	for (size_t i = 0; i < planning->rows->run_count; i++)
		if (planning->rows->runs[i].id == plan_id)
			return planning->rows->runs[i].run_id;
	return 0;
}

/* --- runs -------------------------------------------------------------------------------------------------- */

/* Words of the runs and batches of the plan, in its order. */
static void run_item(struct building *building, const struct log_plan_run *row)
{
	struct plan_item *item = plan_item_add(building, true, row->id, row->run_id);
	char weight[48];

	if (item == NULL)
		return;
	amount_words(MEASURE_MASS, row->fruit_mg, building->kitchen->board.house.units, weight, sizeof(weight));
	(void)snprintf(item->words, sizeof(item->words), "%s %s", weight, row->fruit);
	plan_item_stands(building, item, STRIP_RUN);
}

static const char *fruit_of(const struct building *building, const struct plan_item *item)
{
	const struct planning *planning = building->planning;
	const struct strip *strip =
	    item->state == ITEM_GOING_ON ? plan_strip_with(building, STRIP_RUN, item->work_id) : NULL;

	if (strip != NULL)
		return strip_run(strip)->row.fruit;
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
	    item->state == ITEM_GOING_ON ? plan_strip_with(building, STRIP_RUN, item->work_id) : NULL;
	const char *fruit = fruit_of(building, item);
	struct plan_run *run = &input->runs[input->run_count];
	int64_t mg = strip != NULL ? strip_run(strip)->row.fruit_mg : 0;
	struct fault why = { 0 };

	if (input->run_count == PLAN_RUNS_MAX)
		return plan_refuse(building, "There are more runs than one plan holds: split the day in two.");
	if (!plan_run_known(building->kitchen, &why))
		return plan_refuse(building, why.sentence);
	memset(run, 0, sizeof(*run));
	run->station = strip != NULL ? plan_station_of(building, strip) : PLAN_NONE;
	run->id = plan_item_id(item);
	for (size_t i = 0; i < planning->rows->run_count && strip == NULL; i++)
		if (planning->rows->runs[i].id == item->plan_id) {
			run->ready_s = plan_seconds_of_day(planning->rows->runs[i].ready_minutes);
			mg = planning->rows->runs[i].fruit_mg;
		}
	run_spans(building->kitchen, strip, building->now, run);
	add_pool(building, fruit, juice_to_come(building, fruit, mg, strip != NULL ? strip_run(strip)->drawn_ul : 0),
	         input->run_count);
	item->index = input->run_count;
	planning->out.run_items[input->run_count++] = plan_item_number(building, item);
	return true;
}

bool plan_put_runs(struct building *building)
{
	struct planning *planning = building->planning;

	for (size_t i = 0; i < planning->rows->run_count; i++)
		if (!planning->rows->runs[i].dries)
			run_item(building, &planning->rows->runs[i]);
	plan_put_unplanned(building, STRIP_RUN);
	for (size_t i = 0; i < planning->out.item_count; i++) {
		struct plan_item *first = &planning->items[i];

		for (size_t n = i; n < planning->out.item_count; n++) {
			struct plan_item *item = &planning->items[n];

			if (item->index == PLAN_NONE && plan_lies_ahead(item) &&
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

void plan_put_stock(struct building *building)
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

		if (!item->is_run || item->dries || !fruit_in(fruit_of(building, item), name))
			continue;
		stretch_to(runs, item->index);
		count--;
	}
}

void plan_wait_for_juice(struct building *building, const struct log_plan_batch *row, const struct recipe *recipe,
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
