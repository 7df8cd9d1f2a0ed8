/*
 * plan_rows.c - the rows of the day plan, read with the board, and what supplies
 * the planned batches will take.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/plan/plan_private.h"

struct planning *planning_new(void)
{
	struct planning *planning = calloc(1, sizeof(*planning));

	if (planning == NULL)
		return NULL;
	planning->work = malloc(plan_work_size());
	if (planning->work != NULL)
		return planning;
	free(planning);
	return NULL;
}

void planning_free(struct planning *planning)
{
	if (planning == NULL)
		return;
	free(planning->helpers);
	free(planning->breaks);
	free(planning->runs);
	free(planning->batches);
	free(planning->blocks);
	free(planning->block_rows);
	free(planning->means);
	free(planning->juices);
	free(planning->loads);
	free(planning->work);
	free(planning);
}

/* --- what it takes --------------------------------------------------------------------- */

static void add_need(struct planning *planning, enum supply_kind kind, const char *size, int64_t amount)
{
	size_t at = 0;

	while (at < planning->need_count &&
	       (planning->needs[at].kind != kind || strcmp(planning->needs[at].size, size) != 0))
		at++;
	if (at == PLAN_NEEDS_MAX || amount <= 0)
		return;
	if (at == planning->need_count) {
		planning->needs[at] = (struct plan_need){ .kind = kind };
		text_copy(planning->needs[at].size, sizeof(planning->needs[at].size), size);
		planning->need_count++;
	}
	planning->needs[at].amount += amount;
}

static void need_batch(const struct kitchen *kitchen, struct planning *planning, const struct log_plan_batch *batch)
{
	const struct recipe *recipe = kitchen_recipe_named(kitchen, batch->recipe);
	const struct jar_size *jar = jar_size_named(batch->jar);
	struct scaled scaled;
	struct yield yield;

	if (recipe == NULL || jar == NULL || !pot_yield(recipe, batch->multiple, batch->jar, &yield, NULL) ||
	    !scale_lines(recipe, batch->multiple, kitchen->board.house.units, batch->jar, &scaled, NULL))
		return;
	add_need(planning, SUPPLY_JAR, jar->name, yield.jars_likely);
	planning->planned_jars += yield.jars_likely;
	for (size_t i = 0; i < scaled.count; i++) {
		const struct ingredient *item = scaled.lines[i].ingredient;

		if (item->optional || item->supply == SUPPLY_OTHER || item->supply == SUPPLY_JUICE)
			continue;
		add_need(planning, item->supply, "", line_takes(&scaled.lines[i], jar, yield.jars_likely));
	}
}

static void add_up_needs(const struct kitchen *kitchen, struct planning *planning)
{
	planning->need_count = 0;
	planning->planned_jars = 0;
	if (planning->plan.finished_wall_ms != 0)
		return;
	for (size_t i = 0; i < planning->run_count; i++)
		if (planning->runs[i].run_id == 0)
			add_need(planning, SUPPLY_FRUIT, "", planning->runs[i].fruit_mg);
	for (size_t i = 0; i < planning->batch_count; i++)
		if (planning->batches[i].batch_id == 0)
			need_batch(kitchen, planning, &planning->batches[i]);
	add_need(planning, SUPPLY_BAND, "", planning->planned_jars);
}

int64_t plan_needs_of(const struct kitchen *kitchen, enum supply_kind kind, const char *size)
{
	const struct planning *planning = kitchen->planning;

	for (size_t i = 0; i < planning->need_count; i++)
		if (planning->needs[i].kind == kind && strcmp(planning->needs[i].size, size) == 0)
			return planning->needs[i].amount;
	return 0;
}

int plan_jars_to_come(const struct kitchen *kitchen)
{
	return kitchen->planning->planned_jars;
}

/* --- reading ------------------------------------------------------------------------------ */

static bool read_house(struct kitchen *kitchen, struct planning *planning, struct fault *fault)
{
	struct log_helper *helpers;
	struct log_plan_break *breaks;
	struct log_phase_mean *means;
	size_t count;

	if (!log_plan_house_get(kitchen->log, &planning->house, fault) ||
	    !log_helpers(kitchen->log, &helpers, &count, fault))
		return false;
	free(planning->helpers);
	planning->helpers = helpers;
	planning->helper_count = count;
	if (!log_plan_breaks(kitchen->log, &breaks, &count, fault))
		return false;
	free(planning->breaks);
	planning->breaks = breaks;
	planning->break_count = count;
	if (!log_phase_means(kitchen->log, &means, &count, fault))
		return false;
	free(planning->means);
	planning->means = means;
	planning->mean_count = count;
	return true;
}

static bool read_rows(struct kitchen *kitchen, struct planning *planning, struct fault *fault)
{
	struct log_plan_run *runs;
	struct log_plan_batch *batches;
	size_t count;

	if (!log_plan_get(kitchen->log, &planning->plan, fault) || !log_plan_runs(kitchen->log, &runs, &count, fault))
		return false;
	free(planning->runs);
	planning->runs = runs;
	planning->run_count = count;
	if (!log_plan_batches(kitchen->log, &batches, &count, fault))
		return false;
	free(planning->batches);
	planning->batches = batches;
	planning->batch_count = count;
	return true;
}

/* What was accepted, with the loads begun since then. */
static bool read_accepted(struct kitchen *kitchen, struct planning *planning, struct fault *fault)
{
	struct log_plan_block *blocks;
	struct plan_block *room;
	struct log_load *loads = NULL;
	size_t count;
	size_t load_count = 0;

	if (!log_plan_blocks(kitchen->log, &blocks, &count, fault))
		return false;
	free(planning->blocks);
	planning->blocks = blocks;
	planning->block_count = 0;
	room = realloc(planning->block_rows, (count + 1) * sizeof(*room));
	if (room == NULL)
		return fault_set(fault, FAULT_MEMORY, "There is no memory left for the day plan.");
	planning->block_rows = room;
	planning->block_count = count;
	if (planning->plan.accepted_wall_ms != 0 &&
	    !log_loads_between(kitchen->log, planning->plan.accepted_wall_ms, INT64_MAX, &loads, &load_count, fault))
		return false;
	free(planning->loads);
	planning->loads = loads;
	planning->load_count = load_count;
	return true;
}

static bool read_juices(struct kitchen *kitchen, struct planning *planning, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;

	if (!log_juices_left(kitchen->log, &juices, &count, fault))
		return false;
	free(planning->juices);
	planning->juices = juices;
	planning->juice_count = count;
	kitchen->board.juice_ul = 0;
	for (size_t i = 0; i < count; i++)
		kitchen->board.juice_ul += juices[i].left_ul;
	return true;
}

bool planning_read(struct kitchen *kitchen, struct fault *fault)
{
	struct planning *planning = kitchen->planning;

	planning->reads = 0;
	if (!read_house(kitchen, planning, fault) || !read_rows(kitchen, planning, fault) ||
	    !read_accepted(kitchen, planning, fault) || !read_juices(kitchen, planning, fault))
		return false;
	add_up_needs(kitchen, planning);
	return true;
}
