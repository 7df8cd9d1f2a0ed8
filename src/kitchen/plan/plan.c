/*
 * plan.c - the standing plan: worked out when needed, kept until it can be stale,
 * and held against what was accepted.
 */
#include "kitchen/plan/plan.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/plan/plan_private.h"

#define LATE_MS (INT64_C(60) * 1000) /* so much later than the plan: worked out anew */
#define WHOLE_SEARCH 1000000000L
#define SLICE 1000L /* placings: some 2 ms */

struct planning *planning_new(const struct kitchen *kitchen)
{
	struct planning *planning = calloc(1, sizeof(*planning));

	if (planning == NULL)
		return NULL;
	planning->rows = &kitchen->planned;
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
	free(planning->work);
	free(planning);
}

int64_t plan_wall_ms(const struct kitchen_plan *plan, int64_t seconds)
{
	return plan->zero_wall_ms + seconds * 1000;
}

/* --- items and blocks -------------------------------------------------------------------- */

bool plan_span_of(const struct day_plan *day, bool is_run, int index, int *start_s, int *end_s, int *station)
{
	bool found = false;

	for (int i = 0; i < day->task_count; i++) {
		const struct plan_task *task = &day->tasks[i];

		if ((is_run ? task->run : task->batch) != index || task->load != PLAN_NONE)
			continue;
		*start_s = !found || task->start_s < *start_s ? task->start_s : *start_s;
		*end_s = !found || task->end_s > *end_s ? task->end_s : *end_s;
		*station = task->station;
		found = true;
	}
	return found;
}

static void item_begun(const struct kitchen *kitchen, struct plan_item *item)
{
	const struct board *board = &kitchen->board;

	for (size_t i = 0; i < board->stations && item->state == ITEM_GOING_ON; i++) {
		const struct strip *strip = &board->strips[i];

		if (strip_kind(strip) == plan_item_kind(item) && strip_work_id(strip) == item->work_id)
			item->start_ms = strip_kind(strip)->opened_ms(strip);
	}
}

static void tell_item(const struct kitchen *kitchen, struct planning *planning, struct plan_item *item)
{
	struct kitchen_plan *out = &planning->out;
	int start_s = 0;
	int end_s = 0;
	int station;

	for (size_t i = 0; i < planning->rows->block_count && item->plan_id != 0; i++) {
		const struct log_plan_block *block = &planning->rows->blocks[i];
		bool is_run;

		if (plan_block_row(block, &is_run) != item->plan_id || is_run != item->is_run)
			continue;
		item->accepted_start_ms = block->start_wall_ms;
		item->accepted_end_ms = block->end_wall_ms;
	}
	if (out->possible && item->index != PLAN_NONE &&
	    plan_span_of(&planning->day, item->is_run, item->index, &start_s, &end_s, &station)) {
		item->start_ms = plan_wall_ms(out, start_s);
		item->end_ms = plan_wall_ms(out, end_s);
	}
	item_begun(kitchen, item);
	out->planned += item->state == ITEM_PLANNED;
	/* What dries goes on by itself: the day does not wait for it. */
	out->going_on += (item->state == ITEM_GOING_ON && !item->dries) || item->state == ITEM_WAITING;
	out->done += item->state == ITEM_DONE || (item->state == ITEM_GOING_ON && item->dries && item->plan_id != 0);
}

static bool is_of_loads(const struct log_plan_block *block)
{
	bool is_run;

	return plan_block_row(block, &is_run) == 0;
}

/* Which work took an accepted block: as its row says; the n-th block of loads of a
 * canner belongs to the n-th load there since then. */
static int64_t taken_by(const struct planning *planning, size_t at)
{
	const struct log_plan_block *block = &planning->rows->blocks[at];
	bool is_run;
	int64_t row = plan_block_row(block, &is_run);
	size_t before = 0;

	if (is_run)
		return plan_taken_by_run(planning, row);
	for (size_t i = 0; i < planning->rows->batch_count && row != 0; i++)
		if (planning->rows->batches[i].id == row)
			return planning->rows->batches[i].batch_id;
	if (row != 0)
		return 0;
	for (size_t i = 0; i < at; i++)
		before += planning->rows->blocks[i].station_id == block->station_id &&
		          is_of_loads(&planning->rows->blocks[i]);
	for (size_t i = 0; i < planning->rows->load_count; i++)
		if (planning->rows->loads[i].station_id == block->station_id && before-- == 0)
			return planning->rows->loads[i].id;
	return 0;
}

static void tell_blocks(struct planning *planning)
{
	size_t count = planning->rows->block_count;

	count = count < PLAN_BLOCKS_MAX ? count : PLAN_BLOCKS_MAX;
	for (size_t i = 0; i < count; i++)
		planning->block_rows[i] =
		    (struct plan_block){ .row = planning->rows->blocks[i], .work_id = taken_by(planning, i) };
	planning->out.blocks = planning->block_rows;
	planning->out.block_count = count;
}

/* --- stations --------------------------------------------------------------------------------- */

static const struct plan_item *item_with(const struct planning *planning, const struct work_kind *kind, int64_t work_id)
{
	for (size_t i = 0; i < planning->out.item_count; i++)
		if (plan_item_kind(&planning->items[i]) == kind && planning->items[i].work_id == work_id)
			return &planning->items[i];
	return NULL;
}

static const struct plan_block *block_of_load(const struct planning *planning, int64_t station_id, int64_t load_id)
{
	for (size_t i = 0; i < planning->out.block_count; i++) {
		const struct plan_block *block = &planning->block_rows[i];

		if (block->row.station_id == station_id && is_of_loads(&block->row) && block->work_id == load_id)
			return block;
	}
	return NULL;
}

/* What is in it: when it ends. */
static void tell_busy(const struct planning *planning, const struct strip *strip, int station,
                      struct plan_station_state *state)
{
	const struct kitchen_plan *out = &planning->out;
	const struct plan_item *item;
	const struct plan_block *block;

	if (strip->content != STRIP_LOAD) {
		item = item_with(planning, strip_kind(strip), strip_work_id(strip));
		state->accepted_ms = item == NULL ? 0 : item->accepted_end_ms;
		state->expected_ms = item == NULL ? 0 : item->end_ms;
		return;
	}
	block = block_of_load(planning, strip->station.id, strip_load(strip)->row.id);
	state->accepted_ms = block == NULL ? 0 : block->row.end_wall_ms;
	for (int i = 0; i < planning->day.load_count && out->possible; i++)
		if (planning->day.loads[i].station == station && planning->day.loads[i].running != PLAN_NONE)
			state->expected_ms = plan_wall_ms(out, planning->day.loads[i].end_s);
}

/* What comes next: when it begins. */
static void tell_free(const struct planning *planning, int station, struct plan_station_state *state)
{
	const struct kitchen_plan *out = &planning->out;
	const struct plan_task *next = NULL;
	const struct plan_block *block;

	for (int i = 0; i < planning->day.task_count && next == NULL && out->possible; i++)
		if (planning->day.tasks[i].station == station)
			next = &planning->day.tasks[i];
	if (next == NULL)
		return;
	block = block_of_load(planning, state->station_id, 0);
	state->expected_ms = plan_wall_ms(out, next->start_s);
	if (next->run != PLAN_NONE)
		state->accepted_ms = planning->items[out->run_items[next->run]].accepted_start_ms;
	else if (next->load == PLAN_NONE && next->batch != PLAN_NONE)
		state->accepted_ms = planning->items[out->batch_items[next->batch]].accepted_start_ms;
	else if (block != NULL)
		state->accepted_ms = block->row.start_wall_ms;
}

static void tell_stations(const struct kitchen *kitchen, struct planning *planning)
{
	struct kitchen_plan *out = &planning->out;

	out->station_count = (size_t)planning->input.station_count;
	for (int i = 0; i < planning->input.station_count; i++) {
		const struct strip *strip = &kitchen->board.strips[planning->strip_of[i]];
		struct plan_station_state *state = &out->stations[i];

		*state = (struct plan_station_state){ .station_id = strip->station.id,
			                              .digit = strip->station.digit,
			                              .strip = planning->strip_of[i] };
		state->permille = out->possible ? planning->day.stations[i].permille : 0;
		if (strip->content == STRIP_EMPTY)
			tell_free(planning, i, state);
		else
			tell_busy(planning, strip, i, state);
		if (state->accepted_ms != 0 && state->expected_ms != 0)
			state->late_ms = state->expected_ms - state->accepted_ms;
	}
}

/* --- without batches ------------------------------------------------------------------------------ */

static int run_s(const struct plan_run *run)
{
	return run->set_up.length_s + run->run.length_s + run->drain.length_s;
}

static int process_s(const struct plan_process *process)
{
	return process->load.length_s + process->come_up.length_s + process->hold.length_s + process->rest.length_s +
	       process->unload.length_s;
}

/* When the runs and loads that go on will be over. */
static int rest_ends_s(const struct plan_input *input)
{
	int end = input->start_s;

	for (int i = 0; i < input->running_load_count; i++) {
		int load_s = input->start_s + process_s(&input->running_loads[i].left);

		end = load_s > end ? load_s : end;
	}
	for (int i = 0; i < input->run_count; i++) {
		int run_end_s = input->start_s + run_s(&input->runs[i]);

		if (input->runs[i].at != PLAN_JUICER)
			continue; /* a dryer: the day does not wait for it */
		end = run_end_s > end ? run_end_s : end;
	}
	return end + input->clean_down.length_s;
}

/* Neither a batch nor a run that is still to be started: the end is told from what runs. */
static bool nothing_to_arrange(const struct plan_input *input)
{
	for (int i = 0; i < input->run_count; i++)
		if (input->runs[i].station == PLAN_NONE)
			return false;
	return input->batch_count == 0;
}

bool plan_is_runs_alone(const struct kitchen_plan *plan)
{
	bool any = false;

	for (size_t i = 0; i < plan->item_count; i++) {
		if (!plan->items[i].is_run)
			return false;
		any = any || (plan->items[i].plan_id != 0 && !plan->items[i].dries);
	}
	return any && plan->input->batch_count == 0;
}

/* --- the finish --------------------------------------------------------------------------------- */

static bool board_is_idle(const struct kitchen *kitchen)
{
	for (size_t i = 0; i < kitchen->board.stations; i++)
		if (strip_holds_up_day(&kitchen->board.strips[i]))
			return false;
	return kitchen->board.waiting_count == (size_t)kitchen->board.waiting_unpublished;
}

static void tell_finish(const struct kitchen *kitchen, struct planning *planning)
{
	struct kitchen_plan *out = &planning->out;
	const struct log_plan *plan = &planning->rows->plan;

	out->accepted_wall_ms = plan->accepted_wall_ms;
	out->accepted_finish_ms = plan->accepted_finish_wall_ms;
	out->finished_wall_ms = plan->finished_wall_ms;
	out->nothing_left = out->planned == 0 && board_is_idle(kitchen);
	if (out->finished_wall_ms != 0)
		out->finish_ms = out->finished_wall_ms;
	else if (out->possible)
		out->finish_ms = plan_wall_ms(out, planning->day.finish_s);
	else if (nothing_to_arrange(&planning->input) && out->planned + out->going_on + out->done > 0)
		out->finish_ms = plan_wall_ms(out, rest_ends_s(&planning->input));
	if (out->accepted_finish_ms != 0 && out->finish_ms != 0)
		out->late_ms = out->finish_ms - out->accepted_finish_ms;
}

static enum plan_state state_of(const struct planning *planning)
{
	if (planning->rows->plan.finished_wall_ms != 0)
		return PLAN_OVER;
	if (planning->rows->run_count == 0 && planning->rows->batch_count == 0)
		return PLAN_EMPTY;
	return planning->rows->plan.accepted_wall_ms != 0 ? PLAN_ACCEPTED : PLAN_DRAFT;
}

/* --- working it out --------------------------------------------------------------------------------- */

static const char *name_batch(const void *context, int batch)
{
	const struct planning *planning = context;

	return planning->items[planning->out.batch_items[batch]].words;
}

/* --- the search ------------------------------------------------------------------------------------ */

/* A plan is made after every act and must not be felt.  The planner looks longest at
 * small days, where a part of it finds the same; steps by trial on invented days. */
static int effort_for(int items)
{
	return items <= 4 ? 10 : items <= 8 ? 25 : items < 20 ? 50 : 100;
}

bool plan_is_gone_by(const struct planning *planning)
{
	const struct plan_input *input = &planning->input;
	bool runs = planning->rows->plan.accepted_wall_ms != 0 || input->running_load_count > 0;

	for (int i = 0; i < input->run_count; i++)
		runs = runs || (input->runs[i].station != PLAN_NONE && input->runs[i].at == PLAN_JUICER);
	for (int i = 0; i < input->batch_count; i++)
		runs = runs || input->batches[i].stage != PLAN_TO_DO;
	return runs;
}

static bool make_day(struct planning *planning)
{
	struct plan_names names = { .batch = name_batch, .context = planning };

	if (planning->input.run_count + planning->input.running_load_count + planning->input.batch_count == 0)
		return fault_set(&planning->out.why, FAULT_REFUSED, "There is nothing to plan: add a batch first.");
	if (nothing_to_arrange(&planning->input))
		return fault_set(&planning->out.why, FAULT_REFUSED,
		                 "Nothing is left to be started: the board shows what is still running.");
	plan_said_recall(planning);
	planning->input.effort_percent = effort_for(planning->input.run_count + planning->input.batch_count);
	planning->input.hold = plan_is_gone_by(planning) ? &planning->said : NULL;
	if (!day_plan_begin(&planning->input, &names, planning->work, &planning->out.why))
		return false;
	planning->input.hold = NULL; /* the search has its own copy */
	planning->searching = planning->in_slices && day_plan_has_answer(planning->work);
	if (!planning->searching)
		(void)day_plan_more(planning->work, WHOLE_SEARCH);
	if (!day_plan_tell(planning->work, &planning->day, &planning->out.why))
		return false;
	planning->said = planning->day.said;
	return true;
}

/* Is the moment at which somebody should press a key over, and by how much?  Each
 * task ends with a key; the first one of a run, batch or load begins with one. */
static int64_t stale_in_ms(const struct planning *planning, const struct moment *now)
{
	int64_t now_ms = now->wall_ms - planning->out.zero_wall_ms;
	int64_t soonest = INT64_C(86400000);

	if (!planning->out.possible)
		return LATE_MS;
	for (int i = 0; i < planning->day.task_count; i++) {
		const struct plan_task *task = &planning->day.tasks[i];
		bool begins = !task->running && (task->kind == PLAN_TO_BOIL || task->kind == PLAN_LOAD);
		int64_t due = (begins ? task->start_s : task->end_s) * INT64_C(1000) + LATE_MS - now_ms;

		if (task->kind != PLAN_BREAK && task->kind != PLAN_CLEAN_DOWN && task->kind != PLAN_LOOK &&
		    due < soonest)
			soonest = due;
	}
	return soonest > 0 ? soonest : LATE_MS;
}

/* What is said of the plan beside the plan itself. */
static void tell_all(const struct kitchen *kitchen, struct planning *planning)
{
	struct kitchen_plan *out = &planning->out;

	out->planned = 0;
	out->going_on = 0;
	out->done = 0;
	for (size_t i = 0; i < out->item_count; i++)
		tell_item(kitchen, planning, &planning->items[i]);
	tell_blocks(planning);
	tell_stations(kitchen, planning);
	tell_finish(kitchen, planning);
}

/* Nothing that the plan depends on has changed, and nothing is late: it stands, whatever
 * else was written down. */
static bool plan_stands(const struct kitchen *kitchen, const struct planning *planning, bool was_possible,
                        const struct moment *at, const struct moment *now)
{
	return was_possible && still_stands(kitchen, at, kitchen->reads, planning->again_ms, now) &&
	       plan_input_same(&planning->input, &planning->fresh);
}

static void work_out(const struct kitchen *kitchen, struct planning *planning, const struct moment *now)
{
	struct kitchen_plan *out = &planning->out;
	struct moment at = out->at;
	uint64_t version = out->version;
	bool was_possible = out->possible;

	memset(out, 0, sizeof(*out));
	out->state = state_of(planning);
	out->input = &planning->input;
	out->plan = &planning->day;
	out->items = planning->items;
	out->station_ids = planning->station_ids;
	out->possible = plan_build_input(kitchen, planning, now);
	if (out->possible && plan_stands(kitchen, planning, was_possible, &at, now)) {
		out->at = at;
		out->version = version;
	} else {
		memset(planning->extras, 0, sizeof(planning->extras));
		out->at = *now;
		out->version = version + 1;
		planning->searching = false;
		planning->input = planning->fresh;
		out->possible = out->possible && make_day(planning);
		planning->again_ms = stale_in_ms(planning, now);
	}
	tell_all(kitchen, planning);
	planning->reads = kitchen->reads;
}

const struct kitchen_plan *kitchen_plan(const struct kitchen *kitchen, const struct moment *now)
{
	if (!still_stands(kitchen, &kitchen->planning->out.at, kitchen->planning->reads, kitchen->planning->again_ms,
	                  now))
		work_out(kitchen, kitchen->planning, now);
	return &kitchen->planning->out;
}

uint64_t kitchen_plan_version(const struct kitchen *kitchen)
{
	return kitchen->planning->out.version;
}

/* --- in slices ------------------------------------------------------------------------------------ */

void kitchen_plan_in_slices(struct kitchen *kitchen, bool on)
{
	kitchen->planning->in_slices = on;
}

bool kitchen_plan_searching(const struct kitchen *kitchen)
{
	return kitchen->planning->searching && kitchen->planning->reads == kitchen->reads;
}

static void search(const struct kitchen *kitchen, long placings)
{
	struct planning *planning = kitchen->planning;

	if (!kitchen_plan_searching(kitchen) || !day_plan_more(planning->work, placings))
		return;
	planning->searching = false;
	if (!day_plan_tell(planning->work, &planning->fresh_day, NULL))
		return;
	/* Both were cleared.  What was said stands: */
	/* NOLINTNEXTLINE(bugprone-suspicious-memory-comparison,cert-exp42-c,cert-flp37-c) */
	if (memcmp(&planning->fresh_day.said, &planning->day.said, sizeof(planning->day.said)) == 0)
		return;
	planning->day = planning->fresh_day;
	planning->said = planning->day.said;
	planning->out.version++;
	planning->again_ms = stale_in_ms(planning, &planning->out.at);
	tell_all(kitchen, planning);
}

void kitchen_plan_search(struct kitchen *kitchen)
{
	search(kitchen, SLICE);
}

bool kitchen_plan_what_if(const struct kitchen *kitchen, const struct moment *now, enum plan_extra extra,
                          struct plan_what_if *out, struct fault *fault)
{
	const struct kitchen_plan *plan = kitchen_plan(kitchen, now);
	struct planning *planning = kitchen->planning;

	memset(out, 0, sizeof(*out));
	search(kitchen, WHOLE_SEARCH); /* the question needs its room */
	if ((unsigned)extra >= PLAN_EXTRA_COUNT)
		return fault_set(fault, FAULT_MISUSE, "You cannot add one more of that.");
	if (!plan->possible)
		return fault_set(fault, plan->why.kind, "%s", plan->why.sentence);
	if (!planning->extras[extra].known) {
		planning->extras[extra].fine =
		    day_plan_what_if(&planning->input, &planning->day, extra, planning->work,
		                     &planning->extras[extra].answer, &planning->extras[extra].why);
		planning->extras[extra].known = true;
	}
	*out = planning->extras[extra].answer;
	return planning->extras[extra].fine ||
	       fault_set(fault, planning->extras[extra].why.kind, "%s", planning->extras[extra].why.sentence);
}

void plan_what_if_say(const struct plan_what_if *what, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (what->saves_s <= -60)
		text_add(&text, "costs %d min", -what->saves_s / 60);
	else if (what->saves_s < 60)
		text_add(&text, "saves nothing");
	else
		text_add(&text, "saves %d min", what->saves_s / 60);
}
