/*
 * planned.c - the rows of the day plan, read with the board, and what supplies the planned batches
 * and trays the planned dryings will take.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "engine/drying/drying.h"
#include "kitchen/board/board_private.h"
#include "log/tables/plan.h"
#include "log/tables/pot.h"
#include "log/tables/work.h"

void planned_free(struct planned *planned)
{
	free(planned->helpers);
	free(planned->breaks);
	free(planned->runs);
	free(planned->batches);
	free(planned->blocks);
	free(planned->said);
	free(planned->means);
	free(planned->juices);
	free(planned->loads);
}

/* --- what it takes --------------------------------------------------------------------- */

static void add_need(struct planned *planned, enum supply_kind kind, const char *size, int64_t amount)
{
	size_t at = 0;

	while (at < planned->need_count &&
	       (planned->needs[at].kind != kind || strcmp(planned->needs[at].size, size) != 0))
		at++;
	if (at == PLAN_NEEDS_MAX || amount <= 0)
		return;
	if (at == planned->need_count) {
		planned->needs[at] = (struct plan_need){ .kind = kind };
		text_copy(planned->needs[at].size, sizeof(planned->needs[at].size), size);
		planned->need_count++;
	}
	planned->needs[at].amount += amount;
}

static void need_batch(const struct kitchen *kitchen, struct planned *planned, const struct log_plan_batch *batch)
{
	const struct recipe *recipe = kitchen_recipe_named(kitchen, batch->recipe);
	const struct jar_size *jar = jar_size_named(batch->jar);
	struct scaled scaled;
	struct yield yield;

	if (recipe == NULL || jar == NULL || !pot_yield(recipe, batch->multiple, batch->jar, &yield, NULL) ||
	    !scale_lines(recipe, batch->multiple, kitchen->board.house.units, batch->jar, &scaled, NULL))
		return;
	add_need(planned, SUPPLY_JAR, jar->name, yield.jars_likely);
	planned->planned_jars += yield.jars_likely;
	for (size_t i = 0; i < scaled.count; i++) {
		const struct ingredient *item = scaled.lines[i].ingredient;

		if (item->optional || item->supply == SUPPLY_OTHER || item->supply == SUPPLY_JUICE)
			continue;
		add_need(planned, item->supply, "", line_takes(&scaled.lines[i], jar, yield.jars_likely));
	}
}

static void add_up_needs(const struct kitchen *kitchen, struct planned *planned)
{
	planned->need_count = 0;
	planned->planned_jars = 0;
	if (planned->plan.finished_wall_ms != 0)
		return;
	for (size_t i = 0; i < planned->run_count; i++)
		if (planned->runs[i].run_id == 0 && planned->runs[i].fruit_mg > 0)
			add_need(planned, SUPPLY_FRUIT, "", planned->runs[i].fruit_mg);
	for (size_t i = 0; i < planned->batch_count; i++)
		if (planned->batches[i].batch_id == 0)
			need_batch(kitchen, planned, &planned->batches[i]);
	add_need(planned, SUPPLY_BAND, "", planned->planned_jars);
}

int64_t plan_needs_of(const struct kitchen *kitchen, enum supply_kind kind, const char *size)
{
	const struct planned *planned = &kitchen->planned;

	for (size_t i = 0; i < planned->need_count; i++)
		if (planned->needs[i].kind == kind && strcmp(planned->needs[i].size, size) == 0)
			return planned->needs[i].amount;
	return 0;
}

int plan_jars_to_come(const struct kitchen *kitchen)
{
	return kitchen->planned.planned_jars;
}

/* --- reading ------------------------------------------------------------------------------ */

static bool read_house(struct kitchen *kitchen, struct planned *planned, struct fault *fault)
{
	struct log_helper *helpers;
	struct log_plan_break *breaks;
	struct log_phase_mean *means;
	size_t count;

	if (!log_plan_house_get(kitchen->log, &planned->house, fault) ||
	    !log_helpers(kitchen->log, &helpers, &count, fault))
		return false;
	free(planned->helpers);
	planned->helpers = helpers;
	planned->helper_count = count;
	if (!log_plan_breaks(kitchen->log, &breaks, &count, fault))
		return false;
	free(planned->breaks);
	planned->breaks = breaks;
	planned->break_count = count;
	if (!log_phase_means(kitchen->log, &means, &count, fault))
		return false;
	free(planned->means);
	planned->means = means;
	planned->mean_count = count;
	return true;
}

static bool read_rows(struct kitchen *kitchen, struct planned *planned, struct fault *fault)
{
	struct log_plan_run *runs;
	struct log_plan_batch *batches;
	size_t count;

	if (!log_plan_get(kitchen->log, &planned->plan, fault) || !log_plan_runs(kitchen->log, &runs, &count, fault))
		return false;
	free(planned->runs);
	planned->runs = runs;
	planned->run_count = count;
	if (!log_plan_batches(kitchen->log, &batches, &count, fault))
		return false;
	free(planned->batches);
	planned->batches = batches;
	planned->batch_count = count;
	return true;
}

/* What was accepted, with the loads begun since then. */
static bool read_accepted(struct kitchen *kitchen, struct planned *planned, struct fault *fault)
{
	struct log_plan_block *blocks;
	struct log_load *loads = NULL;
	size_t count;
	size_t load_count = 0;

	if (!log_plan_blocks(kitchen->log, &blocks, &count, fault))
		return false;
	free(planned->blocks);
	planned->blocks = blocks;
	planned->block_count = 0;
	planned->block_count = count;
	if (planned->plan.accepted_wall_ms != 0 &&
	    !log_works_between(kitchen->log, SUBJECT_LOAD, planned->plan.accepted_wall_ms, INT64_MAX, &loads,
	                       &load_count, fault))
		return false;
	free(planned->loads);
	planned->loads = loads;
	planned->load_count = load_count;
	return true;
}

bool planned_read_said(struct kitchen *kitchen, struct fault *fault)
{
	struct planned *planned = &kitchen->planned;
	struct log_plan_said *said;
	size_t count;

	if (!log_plan_said(kitchen->log, &said, &count, fault))
		return false;
	free(planned->said);
	planned->said = said;
	planned->said_count = count;
	return true;
}

static bool read_juices(struct kitchen *kitchen, struct planned *planned, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;

	if (!log_juices_left(kitchen->log, &juices, &count, fault))
		return false;
	free(planned->juices);
	planned->juices = juices;
	planned->juice_count = count;
	kitchen->board.juice_ul = 0;
	for (size_t i = 0; i < count; i++)
		kitchen->board.juice_ul += juices[i].left_ul;
	return true;
}

bool planned_read(struct kitchen *kitchen, struct fault *fault)
{
	struct planned *planned = &kitchen->planned;

	if (!read_house(kitchen, planned, fault) || !read_rows(kitchen, planned, fault) ||
	    !read_accepted(kitchen, planned, fault) || !planned_read_said(kitchen, fault) ||
	    !read_juices(kitchen, planned, fault))
		return false;
	add_up_needs(kitchen, planned);
	return true;
}

int64_t plan_trays_of(const struct kitchen *kitchen, const struct log_plan_run *row)
{
	const struct log_station *dryer = NULL;

	for (size_t i = 0; i < kitchen->board.stations && dryer == NULL; i++)
		if (kitchen->board.strips[i].station.kind == STATION_DRYER &&
		    kitchen->board.strips[i].station.tray_wide_thou > 0)
			dryer = &kitchen->board.strips[i].station;
	return drying_trays(row->fruit_mg, row->puree_ul, dryer == NULL ? 0 : dryer->tray_wide_thou,
	                    dryer == NULL ? 0 : dryer->tray_deep_thou);
}
