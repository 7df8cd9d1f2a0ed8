#include "kitchen/stock/goods.h"

#include <stdlib.h>
#include <string.h>

#include "engine/recipe/forecast.h"
#include "engine/recipe/fruit.h"
#include "kitchen/board/clock.h"
#include "kitchen/board/kinds.h"
#include "kitchen/stock/stock_private.h"
#include "log/tables/canner.h"
#include "log/tables/work.h"

/* --- what the pots still take -------------------------------------------------------------- */

/* Jars that they will still fill, of one size (NULL: of any). */
static int jars_to_come(const struct board *board, const char *size)
{
	int jars = 0;

	for (size_t i = 0; i < board->stations; i++) {
		const struct strip *strip = &board->strips[i];

		if (strip->content == STRIP_BATCH && (size == NULL || strcmp(strip_batch(strip)->row.jar, size) == 0))
			jars += batch_jars_to_come(strip);
	}
	return jars;
}

/* Of a supply that goes into each jar. */
static int64_t into_jars(const struct board *board, enum supply_kind kind)
{
	int64_t amount = 0;

	for (size_t i = 0; i < board->stations; i++)
		if (board->strips[i].content == STRIP_BATCH)
			amount += batch_acid_to_come(&board->strips[i], kind);
	return amount;
}

/* --- supplies ---------------------------------------------------------------------------------- */

struct goods supply_goods(const struct kitchen *kitchen, enum supply_kind kind, const char *size)
{
	const struct board *board = &kitchen->board;
	struct goods goods = { .planned = plan_needs_of(kitchen, kind, size) };

	if (kind == SUPPLY_JAR)
		goods.at_work = jars_to_come(board, size);
	else if (kind == SUPPLY_BAND)
		goods.at_work = jars_to_come(board, NULL);
	else
		goods.at_work = into_jars(board, kind);
	for (size_t i = 0; i < board->supply_count; i++)
		if (board->supplies[i].kind == kind && strcmp(board->supplies[i].size, size) == 0) {
			goods.counted = true;
			goods.here = board->supplies[i].stock;
		}
	return goods;
}

struct goods lid_goods(const struct kitchen *kitchen)
{
	const struct board *board = &kitchen->board;
	struct goods goods = { .counted = true,
		               .at_work = jars_to_come(board, NULL),
		               .planned = plan_jars_to_come(kitchen) };

	for (size_t i = 0; i < board->box_count; i++)
		goods.here += board->boxes[i].lids - board->boxes[i].used;
	return goods;
}

/* --- trays --------------------------------------------------------------------------------------- */

static void add_dryer(const struct strip *strip, struct goods *out)
{
	out->counted = out->counted && strip->station.trays > 0;
	out->here += strip->station.trays;
	out->at_work += strip->content == STRIP_EMPTY ? 0 : strip->station.trays;
}

struct goods tray_goods(const struct kitchen *kitchen)
{
	const struct planned *planned = &kitchen->planned;
	struct goods goods = { .counted = true };

	for (size_t i = 0; i < kitchen->board.stations; i++)
		if (kitchen->board.strips[i].station.kind == STATION_DRYER)
			add_dryer(&kitchen->board.strips[i], &goods);
	for (size_t i = 0; i < planned->run_count && planned->plan.finished_wall_ms == 0; i++) {
		int64_t trays = plan_trays_of(kitchen, &planned->runs[i]);

		if (!planned->runs[i].dries || planned->runs[i].run_id != 0)
			continue;
		goods.counted = goods.counted && trays > 0;
		goods.planned += trays > 0 ? trays : 1; /* at least */
	}
	return goods;
}

/* --- fruit and juice --------------------------------------------------------------------------- */

/* The n-th planned batch that nobody has begun, with its recipe; NULL: it is another. */
static const struct recipe *to_begin(const struct kitchen *kitchen, size_t n)
{
	const struct planned *planned = &kitchen->planned;

	if (planned->plan.finished_wall_ms != 0 || planned->batches[n].batch_id != 0)
		return NULL;
	return kitchen_recipe_named(kitchen, planned->batches[n].recipe);
}

struct goods juice_goods(const struct kitchen *kitchen, const char *ingredient)
{
	const struct planned *planned = &kitchen->planned;
	struct goods goods = { .counted = true };

	for (size_t i = 0; i < planned->juice_count; i++)
		if (fruit_in(planned->juices[i].kind, ingredient))
			goods.here += planned->juices[i].left_ul;
	for (size_t i = 0; i < planned->batch_count; i++) {
		const struct recipe *recipe = to_begin(kitchen, i);

		for (size_t n = 0; recipe != NULL && n < recipe->ingredient_count; n++)
			if (recipe->ingredients[n].supply == SUPPLY_JUICE &&
			    fruit_same(recipe->ingredients[n].name, ingredient))
				goods.planned += recipe->ingredients[n].amount * planned->batches[i].multiple;
	}
	return goods;
}

/* What was drawn of a run is in stock: the fruit it came of gives no more. */
static int64_t still_gives_mg(const struct kitchen *kitchen, const struct strip_run *run)
{
	struct juice_runs own = { 0 };
	struct juice_yield yield;
	double drawn_mg;

	(void)own_runs(kitchen, run->row.fruit, &own, NULL);
	juice_yield_of(run->row.fruit, run->row.fruit_mg, &own, &yield);
	drawn_mg = (double)run->drawn_ul * 1e6 / yield.ul_per_kg[BOUND_LIKELY];
	return drawn_mg < (double)run->row.fruit_mg ? run->row.fruit_mg - (int64_t)drawn_mg : 0;
}

/* What a piece of work takes of a fruit: one function a kind, by its row, for what goes on and what is over. */
static int64_t run_takes(const struct kitchen *kitchen, const void *row, const char *fruit)
{
	const struct log_run *run = row;

	(void)kitchen;
	return fruit_same(run->fruit, fruit) ? run->fruit_mg : 0;
}

static int64_t batch_takes(const struct kitchen *kitchen, const void *row, const char *fruit)
{
	const struct log_batch *batch = row;
	const struct recipe *recipe = kitchen_recipe_named(kitchen, batch->recipe);
	const struct ingredient *item = recipe == NULL ? NULL : forecast_ingredient(recipe, fruit);

	return item == NULL || item->supply == SUPPLY_JUICE ? 0 : item->amount * batch->multiple;
}

static int64_t drying_takes(const struct kitchen *kitchen, const void *row, const char *fruit)
{
	const struct log_drying *drying = row;
	struct log_lot lot;

	if (drying->fruit_mg == 0 || !log_lot_get(kitchen->log, drying->lot_id, &lot, NULL))
		return 0;
	return fruit_same(lot.product, fruit) ? drying->fruit_mg : 0;
}

static int64_t strip_takes(const struct kitchen *kitchen, const struct strip *strip, const char *fruit)
{
	switch (strip->content) {
	case STRIP_RUN: return run_takes(kitchen, &strip_run(strip)->row, fruit);
	case STRIP_BATCH: return batch_takes(kitchen, &strip_batch(strip)->row, fruit);
	case STRIP_DRYING: return drying_takes(kitchen, &strip_drying(strip)->row, fruit);
	default: return 0;
	}
}

static void add_going(const struct kitchen *kitchen, const char *fruit, struct fruit_spoken *out)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];
		int64_t takes = strip_takes(kitchen, strip, fruit);

		out->going_mg += takes;
		if (takes > 0 && strip->content == STRIP_RUN)
			out->drain_mg += still_gives_mg(kitchen, strip_run(strip));
	}
}

static int64_t begun_mg(const struct kitchen *kitchen, int64_t since_wall_ms, const char *fruit)
{
	static const struct {
		enum subject_kind kind;
		int64_t (*takes)(const struct kitchen *kitchen, const void *row, const char *fruit);
	} kinds[] = { { SUBJECT_RUN, run_takes }, { SUBJECT_BATCH, batch_takes }, { SUBJECT_DRYING, drying_takes } };
	int64_t begun = 0;

	for (size_t i = 0; i < sizeof(kinds) / sizeof(kinds[0]); i++) {
		size_t size = log_works_row_size(kinds[i].kind);
		char *rows;
		size_t count;

		if (!log_works_between(kitchen->log, kinds[i].kind, since_wall_ms, INT64_MAX, &rows, &count, NULL))
			return 0;
		for (size_t n = 0; n < count; n++)
			begun += kinds[i].takes(kitchen, rows + n * size, fruit);
		free(rows);
	}
	return begun;
}

/* What was begun today and is in no station any more is used, unless the day was cleaned down: then
 * fruit is of another day. */
static int64_t used_mg(const struct kitchen *kitchen, const char *fruit)
{
	int64_t today = clock_day_start(kitchen_now(kitchen).wall_ms);
	int64_t used;

	if (kitchen->planned.plan.finished_wall_ms >= today)
		return 0;
	used = begun_mg(kitchen, today, fruit);
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];
		const struct work_kind *kind = strip_kind(strip);

		if (kind != NULL && kind->opened_ms(strip) >= today)
			used -= strip_takes(kitchen, strip, fruit);
	}
	return used > 0 ? used : 0;
}

struct fruit_spoken fruit_spoken(const struct kitchen *kitchen, const char *fruit)
{
	const struct planned *planned = &kitchen->planned;
	struct fruit_spoken out = { 0 };

	add_going(kitchen, fruit, &out);
	out.used_mg = used_mg(kitchen, fruit);
	for (size_t i = 0; i < planned->run_count && planned->plan.finished_wall_ms == 0; i++)
		if (planned->runs[i].run_id == 0 && fruit_same(planned->runs[i].fruit, fruit))
			*(planned->runs[i].dries ? &out.whole_mg : &out.runs_mg) += planned->runs[i].fruit_mg;
	for (size_t i = 0; i < planned->batch_count; i++) {
		const struct log_plan_batch *row = &planned->batches[i];
		const struct recipe *recipe = to_begin(kitchen, i);
		const struct ingredient *item = recipe == NULL ? NULL : forecast_ingredient(recipe, fruit);
		struct yield yield;

		if (item == NULL)
			continue;
		if (item->supply == SUPPLY_JUICE)
			out.juice_ul += item->amount * row->multiple;
		else
			out.whole_mg += item->amount * row->multiple; /* 1 uL is 1 mg, as in forecast.h */
		out.jars += pot_yield(recipe, row->multiple, row->jar, &yield, NULL) ? yield.jars_likely : 0;
	}
	return out;
}
