/*
 * plan_acts.c - rows of the plan: added, changed, accepted, taken by real work,
 * finished.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "engine/recipe/fruit.h"
#include "kitchen/plan/plan_private.h"
#include "log/tables/plan.h"

const struct log_plan_run *kitchen_plan_runs(const struct kitchen *kitchen, size_t *count)
{
	*count = kitchen->planned.run_count;
	return kitchen->planned.runs;
}

const struct log_plan_batch *kitchen_plan_batches(const struct kitchen *kitchen, size_t *count)
{
	*count = kitchen->planned.batch_count;
	return kitchen->planned.batches;
}

/* --- checks -------------------------------------------------------------------------- */

/* Hours are as published, else of the house; what is refused at the dryer is not planned either. */
static bool check_drying(struct log_plan_run *row, struct fault *fault)
{
	const struct drying_row *published;
	struct drying_hours hours;
	bool leather;

	if (row->fruit[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Say what is dried, in a few words.");
	if (!drying_may(row->fruit, &published, fault))
		return false;
	drying_called(row->fruit, row->fruit, sizeof(row->fruit));
	leather = published != NULL && published->class == DRYING_LEATHER;
	if (leather)
		row->fruit_mg = 0;
	else
		row->puree_ul = 0;
	if (leather && (row->puree_ul <= 0 || row->puree_ul > AMOUNT_UL_MAX))
		return fault_set(fault, FAULT_MISUSE, "Measure the puree: \"3 cups\" or \"700 ml\".");
	if (!leather && (row->fruit_mg <= 0 || row->fruit_mg > AMOUNT_MG_MAX))
		return fault_set(fault, FAULT_MISUSE, "Weigh the fruit: \"12 lb\" or \"5.5 kg\".");
	if (!drying_hours_of(published, row->fruit, row->hours_low, row->hours_high, &hours, fault))
		return false;
	row->hours_low = hours.own ? hours.low : 0;
	row->hours_high = hours.own ? hours.high : 0;
	return plan_time_fine(row->ready_minutes, fault);
}

static bool check_run(const struct kitchen *kitchen, struct log_plan_run *row, struct fault *fault)
{
	if (row->dries)
		return check_drying(row, fault);
	row->puree_ul = row->hours_low = row->hours_high = 0;
	if (row->fruit_mg == 0)
		row->fruit_mg = kitchen->planned.house.charge_mg;
	if (row->fruit[0] == '\0')
		return fault_set(fault, FAULT_MISUSE, "Say what fruit it is.");
	if (row->fruit_mg < 0 || row->fruit_mg > AMOUNT_MG_MAX)
		return fault_set(fault, FAULT_MISUSE, "Weigh the fruit: \"12 lb\" or \"5.5 kg\".");
	return plan_time_fine(row->ready_minutes, fault);
}

static bool check_multiple(const struct recipe *recipe, int multiple, struct fault *fault)
{
	int most = multiple_allowed(recipe);

	if (!recipe_has_amounts(recipe, fault))
		return false;
	if (multiple < 1)
		return fault_set(fault, FAULT_MISUSE, "At least one batch.");
	return multiple <= most ||
	       fault_set(fault, FAULT_REFUSED, "%s is made at most %d at a time: plan separate batches instead.",
	                 recipe->name, most);
}

static bool check_batch(const struct kitchen *kitchen, struct log_plan_batch *row, struct fault *fault)
{
	const struct recipe *recipe = kitchen_recipe_named(kitchen, row->recipe);
	const struct jar_size *usual;

	if (recipe == NULL)
		return fault_set(fault, FAULT_MISUSE, "There is no recipe \"%s\".", row->recipe);
	if (!recipe_may_start(recipe, fault))
		return false;
	text_copy(row->recipe, sizeof(row->recipe), recipe->name);
	usual = usual_jar(recipe);
	if (row->jar[0] == '\0' && usual != NULL)
		text_copy(row->jar, sizeof(row->jar), usual->name);
	if (row->pack[0] == '\0')
		(void)recipe_usual_pack(recipe, row->jar, row->pack, sizeof(row->pack)); /* none: refused below */
	if (jar_size_named(row->jar) == NULL || !recipe_allows_jar(recipe, row->jar))
		return fault_set(fault, FAULT_REFUSED, "%s does not go in that jar: it takes %s.", recipe->name,
		                 recipe->jars);
	text_copy(row->jar, sizeof(row->jar), jar_size_named(row->jar)->name);
	if (recipe->food[0] != '\0' && !recipe_allows_pack(recipe, row->pack))
		return fault_set(fault, FAULT_REFUSED, "%s is packed %s.", recipe->name, recipe->packs);
	if (!recipe_allows_pair(recipe, row->pack, row->jar))
		return fault_set(fault, FAULT_REFUSED, "%s: no process is printed for that pack in that jar.",
		                 recipe->name);
	if (row->after_runs < PLAN_RUNS_AS_NEEDED || row->after_runs > PLAN_RUNS_MAX)
		return fault_set(fault, FAULT_MISUSE, "It waits for 0 to %d runs.", PLAN_RUNS_MAX);
	return check_multiple(recipe, row->multiple, fault) && plan_time_fine(row->ready_minutes, fault);
}

static bool room_for_rows(const struct kitchen *kitchen, size_t runs, size_t batches, struct fault *fault)
{
	const struct planning *planning = kitchen->planning;
	bool over = planning->rows->plan.finished_wall_ms != 0;

	if ((over ? 0 : planning->rows->run_count) + runs > PLAN_RUNS_MAX ||
	    (over ? 0 : planning->rows->batch_count) + batches > PLAN_BATCHES_MAX)
		return fault_set(fault, FAULT_REFUSED, "A plan holds at most %d runs and %d batches.", PLAN_RUNS_MAX,
		                 PLAN_BATCHES_MAX);
	return true;
}

/* --- adding ------------------------------------------------------------------------------ */

static bool forget_all(struct act *act, struct fault *fault)
{
	struct log_plan fresh = { .start_minutes = act->kitchen->planned.plan.start_minutes };

	return log_clear_plan_blocks(act->kitchen->log, fault) && log_clear_plan_rows(act->kitchen->log, fault) &&
	       log_put_plan(act->kitchen->log, &fresh, fault);
}

/* A day that is over makes room for the next one. */
static bool begin_row(struct act *act, struct kitchen *kitchen, enum verb verb, struct fault *fault)
{
	if (!act_begin(act, kitchen, verb, 0, fault))
		return false;
	if (kitchen->planned.plan.finished_wall_ms != 0 && !forget_all(act, fault))
		return act_fail(act);
	return true;
}

void act_says_time(struct act *act, int minutes)
{
	if (minutes == PLAN_ANY_TIME)
		act_says_nothing(act);
	else
		act_says_number(act, minutes);
}

static void say_drying(struct act *act, const struct log_plan_run *row)
{
	struct drying_hours hours = plan_hours_of(row);

	if (row->fruit_mg > 0)
		act_says_number(act, row->fruit_mg);
	else
		act_says_nothing(act);
	if (row->puree_ul > 0)
		act_says_number(act, row->puree_ul);
	else
		act_says_nothing(act);
	act_says_text(act, row->fruit);
	act_says_number(act, hours.low);
	act_says_number(act, hours.high);
	act_says_time(act, row->ready_minutes);
}

static void say_run(struct act *act, const struct log_plan_run *row)
{
	if (row->dries) {
		say_drying(act, row);
		return;
	}
	act_says_number(act, row->fruit_mg);
	act_says_text(act, row->fruit);
	act_says_time(act, row->ready_minutes);
}

static void say_batch(struct act *act, const struct log_plan_batch *row)
{
	act_says_number(act, row->multiple);
	act_says_text(act, row->recipe);
	act_says_text(act, row->jar);
	act_says_time(act, row->ready_minutes);
}

static bool times_fine(int times, int most, struct fault *fault)
{
	return (times >= 1 && times <= most) || fault_set(fault, FAULT_MISUSE, "It is planned 1 to %d times.", most);
}

static bool add_runs(struct kitchen *kitchen, const struct log_plan_run *row, int times, int64_t *id,
                     struct fault *fault)
{
	struct log_plan_run run = *row;
	struct act act;

	if (!times_fine(times, PLAN_RUNS_MAX, fault) || !check_run(kitchen, &run, fault) ||
	    !room_for_rows(kitchen, (size_t)times, 0, fault) ||
	    !begin_row(&act, kitchen,
	               run.dries ? (times > 1 ? VERB_PLAN_ADD_DRYINGS : VERB_PLAN_ADD_DRYING)
	                         : (times > 1 ? VERB_PLAN_ADD_RUNS : VERB_PLAN_ADD_RUN),
	               fault))
		return false;
	for (int i = 0; i < times; i++) {
		run.id = 0;
		run.run_id = 0;
		if (!log_put_plan_run(kitchen->log, &run, fault))
			return act_fail(&act);
	}
	*id = run.id;
	say_run(&act, &run);
	if (times > 1)
		act_says_number(&act, times);
	return act_commit(&act, fault);
}

static bool add_batches(struct kitchen *kitchen, const struct log_plan_batch *row, int times, int64_t *id,
                        struct fault *fault)
{
	struct log_plan_batch batch = *row;
	struct act act;

	if (!times_fine(times, PLAN_BATCHES_MAX, fault) || !check_batch(kitchen, &batch, fault) ||
	    !room_for_rows(kitchen, 0, (size_t)times, fault) ||
	    !begin_row(&act, kitchen, times > 1 ? VERB_PLAN_ADD_BATCHES : VERB_PLAN_ADD_BATCH, fault))
		return false;
	for (int i = 0; i < times; i++) {
		batch.id = 0;
		batch.batch_id = 0;
		if (!log_put_plan_batch(kitchen->log, &batch, fault))
			return act_fail(&act);
	}
	*id = batch.id;
	say_batch(&act, &batch);
	if (times > 1)
		act_says_number(&act, times);
	return act_commit(&act, fault);
}

bool kitchen_plan_add_run(struct kitchen *kitchen, const struct log_plan_run *row, int64_t *id, struct fault *fault)
{
	return add_runs(kitchen, row, 1, id, fault);
}

bool kitchen_plan_add_runs(struct kitchen *kitchen, const struct log_plan_run *row, int times, struct fault *fault)
{
	int64_t id;

	return add_runs(kitchen, row, times, &id, fault);
}

bool kitchen_plan_add_batch(struct kitchen *kitchen, const struct log_plan_batch *row, int64_t *id, struct fault *fault)
{
	return add_batches(kitchen, row, 1, id, fault);
}

bool kitchen_plan_add_batches(struct kitchen *kitchen, const struct log_plan_batch *row, int times, struct fault *fault)
{
	int64_t id;

	return add_batches(kitchen, row, times, &id, fault);
}

/* --- changing ------------------------------------------------------------------------------ */

static const struct log_plan_run *run_row(const struct kitchen *kitchen, int64_t id)
{
	for (size_t i = 0; i < kitchen->planned.run_count; i++)
		if (kitchen->planned.runs[i].id == id)
			return &kitchen->planned.runs[i];
	return NULL;
}

static const struct log_plan_batch *batch_row(const struct kitchen *kitchen, int64_t id)
{
	for (size_t i = 0; i < kitchen->planned.batch_count; i++)
		if (kitchen->planned.batches[i].id == id)
			return &kitchen->planned.batches[i];
	return NULL;
}

static bool no_row(struct fault *fault)
{
	return fault_set(fault, FAULT_STALE, "That is no longer in the plan.");
}

static bool has_begun(struct fault *fault)
{
	return fault_set(fault, FAULT_REFUSED, "That has been started: correct it on the board.");
}

bool kitchen_plan_change_run(struct kitchen *kitchen, const struct log_plan_run *row, struct fault *fault)
{
	const struct log_plan_run *before = run_row(kitchen, row->id);
	struct log_plan_run run = *row;
	struct act act;

	if (before == NULL)
		return no_row(fault);
	if (before->run_id != 0)
		return has_begun(fault);
	run.run_id = 0;
	run.dries = before->dries;
	if (!check_run(kitchen, &run, fault) ||
	    !act_begin(&act, kitchen, run.dries ? VERB_PLAN_CHANGE_DRYING : VERB_PLAN_CHANGE_RUN, 0, fault))
		return false;
	if (!log_put_plan_run(kitchen->log, &run, fault))
		return act_fail(&act);
	say_run(&act, &run);
	return act_commit(&act, fault);
}

bool kitchen_plan_change_batch(struct kitchen *kitchen, const struct log_plan_batch *row, struct fault *fault)
{
	const struct log_plan_batch *before = batch_row(kitchen, row->id);
	struct log_plan_batch batch = *row;
	struct act act;

	if (before == NULL)
		return no_row(fault);
	if (before->batch_id != 0)
		return has_begun(fault);
	batch.batch_id = 0;
	if (!check_batch(kitchen, &batch, fault) || !act_begin(&act, kitchen, VERB_PLAN_CHANGE_BATCH, 0, fault))
		return false;
	if (!log_put_plan_batch(kitchen->log, &batch, fault))
		return act_fail(&act);
	say_batch(&act, &batch);
	return act_commit(&act, fault);
}

bool kitchen_plan_remove(struct kitchen *kitchen, bool is_run, int64_t plan_id, struct fault *fault)
{
	const struct log_plan_run *run = is_run ? run_row(kitchen, plan_id) : NULL;
	const struct log_plan_batch *batch = is_run ? NULL : batch_row(kitchen, plan_id);
	struct act act;

	if (run == NULL && batch == NULL)
		return no_row(fault);
	if ((run != NULL && run->run_id != 0) || (batch != NULL && batch->batch_id != 0))
		return has_begun(fault);
	if (!act_begin(&act, kitchen,
	               run == NULL  ? VERB_PLAN_REMOVE_BATCH
	               : run->dries ? VERB_PLAN_REMOVE_DRYING
	                            : VERB_PLAN_REMOVE_RUN,
	               0, fault))
		return false;
	if (run != NULL)
		say_run(&act, run);
	else
		say_batch(&act, batch);
	if (is_run ? !log_remove_plan_run(kitchen->log, plan_id, fault)
	           : !log_remove_plan_batch(kitchen->log, plan_id, fault))
		return act_fail(&act);
	return act_commit(&act, fault);
}

/* --- from wishes ------------------------------------------------------------------------------ */

/* Fruit that goes in whole is no juicer's. */
static int64_t whole_fruit_mg(const struct ahead *ahead)
{
	int64_t mg = 0;

	for (size_t i = 0; i < ahead->order.count; i++) {
		const struct ingredient *item =
		    forecast_ingredient(ahead->order.products[i].recipe, ahead->order.fruit);
		/* By volume at 1 g a mL, as in forecast.h: 1 uL is 1 mg. */
		if (item != NULL && item->supply != SUPPLY_JUICE)
			mg += item->amount * ahead->forecast.lines[i].batches[BOUND_LIKELY];
	}
	return mg;
}

/* Even charges, none larger than a basket, of which no one counts the hundredth part. */
static int charges(const struct kitchen *kitchen, int64_t mg)
{
	int64_t charge = kitchen->planned.house.charge_mg + kitchen->planned.house.charge_mg / 100;

	return mg <= 0 ? 0 : (int)((mg + charge - 1) / charge);
}

static bool put_charges(struct act *act, const char *fruit, int64_t mg, int count, int ready_minutes,
                        struct fault *fault)
{
	for (int i = 0; i < count; i++) {
		struct log_plan_run run = { .fruit_mg = mg / (count - i), .ready_minutes = ready_minutes };

		mg -= run.fruit_mg;
		text_copy(run.fruit, sizeof(run.fruit), fruit);
		if (!log_put_plan_run(act->kitchen->log, &run, fault))
			return false;
	}
	return true;
}

static struct pots wished_pots(const struct ahead *ahead, size_t product)
{
	return pots_of(ahead->forecast.lines[product].batches[BOUND_LIKELY], ahead->order.products[product].in_pot);
}

/* The pots of all products in turn, as the forecast shares the fruit out. */
static bool put_wished(struct act *act, const struct ahead *ahead, int ready_minutes, struct fault *fault)
{
	for (int round = 0; round < PLAN_BATCHES_MAX; round++)
		for (size_t i = 0; i < ahead->order.count; i++) {
			const struct forecast_product *product = &ahead->order.products[i];
			struct pots pots = wished_pots(ahead, i);
			struct log_plan_batch batch = { .multiple = round < pots.full ? pots.each : pots.rest,
				                        .ready_minutes = PLAN_ANY_TIME,
				                        .after_runs = PLAN_RUNS_AS_NEEDED };

			if (round >= pot_count(&pots))
				continue;
			if (forecast_ingredient(product->recipe, ahead->order.fruit)->supply != SUPPLY_JUICE)
				batch.ready_minutes = ready_minutes;
			text_copy(batch.recipe, sizeof(batch.recipe), product->recipe->name);
			text_copy(batch.jar, sizeof(batch.jar), product->jar->name);
			if (!check_batch(act->kitchen, &batch, fault) ||
			    !log_put_plan_batch(act->kitchen->log, &batch, fault))
				return false;
		}
	return true;
}

bool kitchen_plan_from_wishes(struct kitchen *kitchen, const struct wishes *wishes, int ready_minutes,
                              struct fault *fault)
{
	struct ahead ahead;
	int pots = 0;
	int runs;
	int64_t mg;
	struct act act;

	if (!plan_time_fine(ready_minutes, fault) || !kitchen_look_ahead(kitchen, wishes, &ahead, fault))
		return false;
	mg = wishes->jars != 0 ? ahead.need.fruit_mg[BOUND_LIKELY] : ahead.order.fruit_mg;
	mg -= whole_fruit_mg(&ahead);
	runs = ahead.forecast.juice ? charges(kitchen, mg) : 0;
	if (runs > 0 && !plan_run_known(kitchen, fault))
		return false;
	for (size_t i = 0; i < ahead.order.count; i++) {
		struct pots of_product = wished_pots(&ahead, i);

		pots += pot_count(&of_product);
	}
	if (pots == 0)
		return fault_set(fault, FAULT_REFUSED, "That is not enough fruit for a whole batch.");
	if (!room_for_rows(kitchen, (size_t)runs, (size_t)pots, fault) ||
	    !begin_row(&act, kitchen, VERB_PLAN_WISHES, fault))
		return false;
	if (!put_charges(&act, wishes->fruit, mg, runs, ready_minutes, fault) ||
	    !put_wished(&act, &ahead, ready_minutes, fault))
		return act_fail(&act);
	act_says_number(&act, runs);
	act_says_text(&act, wishes->fruit);
	act_says_number(&act, pots);
	return act_commit(&act, fault);
}

/* --- the day of it --------------------------------------------------------------------------------- */

bool kitchen_plan_start(struct kitchen *kitchen, int64_t day_wall_ms, int start_minutes, struct fault *fault)
{
	struct log_plan plan = kitchen->planned.plan;
	struct act act;

	if (!plan_time_fine(start_minutes, fault) || !begin_row(&act, kitchen, VERB_PLAN_START, fault))
		return false;
	if (plan.finished_wall_ms != 0)
		plan = (struct log_plan){ 0 };
	plan.day_wall_ms = day_wall_ms == 0 ? 0 : clock_day_start(day_wall_ms);
	plan.start_minutes = start_minutes;
	if (!log_put_plan(kitchen->log, &plan, fault))
		return act_fail(&act);
	if (day_wall_ms != 0)
		act_says_number(&act, day_wall_ms);
	else
		act_says_nothing(&act);
	act_says_time(&act, start_minutes);
	return act_commit(&act, fault);
}

int kitchen_plan_begins(const struct kitchen *kitchen)
{
	return kitchen->planned.plan.start_minutes;
}

/* Where a piece of work stands in the plan: its first and last task. */
static bool put_block(struct act *act, const struct kitchen_plan *plan, const struct plan_item *item,
                      struct fault *fault)
{
	struct log_plan_block block = { .plan_run_id = item->is_run ? item->plan_id : 0,
		                        .plan_batch_id = item->is_run ? 0 : item->plan_id };
	int start_s = 0;
	int end_s = 0;
	int station;

	if (!plan_span_of(plan->plan, item->is_run, item->index, &start_s, &end_s, &station))
		return true;
	block.station_id = plan->station_ids[station];
	block.start_wall_ms = plan_wall_ms(plan, start_s);
	block.end_wall_ms = plan_wall_ms(plan, end_s);
	return log_put_plan_block(act->kitchen->log, &block, fault);
}

static bool put_blocks(struct act *act, const struct kitchen_plan *plan, struct fault *fault)
{
	for (size_t i = 0; i < plan->item_count; i++)
		if (plan->items[i].plan_id != 0 && plan->items[i].index != PLAN_NONE &&
		    !put_block(act, plan, &plan->items[i], fault))
			return false;
	for (int i = 0; i < plan->plan->load_count; i++) {
		const struct plan_load *load = &plan->plan->loads[i];
		struct log_plan_block block = { .station_id = plan->station_ids[load->station],
			                        .jars = load->jars,
			                        .start_wall_ms = plan_wall_ms(plan, load->start_s),
			                        .end_wall_ms = plan_wall_ms(plan, load->end_s) };

		if (load->running == PLAN_NONE && !log_put_plan_block(act->kitchen->log, &block, fault))
			return false;
	}
	return true;
}

bool kitchen_plan_accept(struct kitchen *kitchen, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	const struct kitchen_plan *plan;
	struct log_plan row;
	struct act act;

	if (!act_begin(&act, kitchen, VERB_PLAN_ACCEPT, 0, fault))
		return false;
	plan = kitchen_plan(kitchen, &now);
	row = kitchen->planned.plan;
	if (plan->state == PLAN_EMPTY || plan->state == PLAN_OVER) {
		fault_set(fault, FAULT_REFUSED, "There is nothing planned: add a batch first.");
		return act_fail(&act);
	}
	if (!plan->possible) {
		fault_set(fault, plan->why.kind, "%s", plan->why.sentence);
		return act_fail(&act);
	}
	row.day_wall_ms = plan->zero_wall_ms;
	row.accepted_wall_ms = act.entry.at.wall_ms;
	row.accepted_finish_wall_ms = plan->finish_ms;
	/* From here on this is what was said. */
	if (!log_clear_plan_blocks(kitchen->log, fault) || !put_blocks(&act, plan, fault) ||
	    !log_clear_plan_said(kitchen->log, fault) || !log_put_plan(kitchen->log, &row, fault))
		return act_fail(&act);
	memset(&kitchen->planning->kept, 0, sizeof(kitchen->planning->kept));
	act_says_number(&act, row.accepted_finish_wall_ms);
	return act_commit(&act, fault);
}

static bool nothing_open(const struct kitchen *kitchen, struct fault *fault)
{
	const struct board *board = &kitchen->board;

	for (size_t i = 0; i < board->stations; i++)
		if (strip_holds_up_day(&board->strips[i]))
			return fault_set(fault, FAULT_REFUSED, "%s still holds %s.", board->strips[i].station.name,
			                 board->strips[i].holds);
	return board->waiting_count == 0 || fault_set(fault, FAULT_REFUSED, "%s still %s for a canner.",
	                                              count_words((int64_t)board->waiting_count, "jar").words,
	                                              count_noun((int64_t)board->waiting_count, "waits").words);
}

bool kitchen_plan_finish(struct kitchen *kitchen, bool sure, struct fault *fault)
{
	struct planning *planning = kitchen->planning;
	struct log_plan row = planning->rows->plan;
	int open = 0;
	struct act act;

	for (size_t i = 0; i < planning->rows->run_count; i++)
		open += planning->rows->runs[i].run_id == 0;
	for (size_t i = 0; i < planning->rows->batch_count; i++)
		open += planning->rows->batches[i].batch_id == 0;
	if (row.accepted_wall_ms == 0 || row.finished_wall_ms != 0)
		return fault_set(fault, FAULT_REFUSED, "No accepted plan is open.");
	if (!nothing_open(kitchen, fault))
		return false;
	if (open > 0 && !sure)
		return fault_set(fault, FAULT_CONFIRM, "%s %s not been started. End the day anyway?",
		                 count_words(open, "planned task").words, count_noun(open, "has").words);
	if (!act_begin(&act, kitchen, VERB_PLAN_FINISH, 0, fault))
		return false;
	row.finished_wall_ms = act.entry.at.wall_ms;
	if (!log_put_plan(kitchen->log, &row, fault))
		return act_fail(&act);
	return act_commit(&act, fault);
}

bool kitchen_plan_drop(struct kitchen *kitchen, struct fault *fault)
{
	struct act act;

	if (!act_begin(&act, kitchen, VERB_PLAN_DROP, 0, fault))
		return false;
	if (!forget_all(&act, fault))
		return act_fail(&act);
	return act_commit(&act, fault);
}

/* --- real work ------------------------------------------------------------------------------------ */

bool plan_take_run(struct act *act, int64_t run_id, const char *fruit, bool dries, struct fault *fault)
{
	const struct planning *planning = act->kitchen->planning;

	for (size_t i = 0; i < planning->rows->run_count && planning->rows->plan.finished_wall_ms == 0; i++) {
		struct log_plan_run row = planning->rows->runs[i];

		if (row.run_id != 0 || row.dries != dries || !fruit_same(row.fruit, fruit))
			continue;
		row.run_id = run_id;
		return log_put_plan_run(act->kitchen->log, &row, fault);
	}
	return true;
}

/* In the jar that was planned, else in another. */
static const struct log_plan_batch *next_planned(const struct planning *planning, const struct log_batch *batch)
{
	const struct log_plan_batch *other = NULL;

	for (size_t i = 0; i < planning->rows->batch_count && planning->rows->plan.finished_wall_ms == 0; i++) {
		const struct log_plan_batch *row = &planning->rows->batches[i];

		if (row->batch_id != 0 || row->multiple != batch->multiple || strcmp(row->recipe, batch->recipe) != 0)
			continue;
		if (strcmp(row->jar, batch->jar) == 0)
			return row;
		other = other == NULL ? row : other;
	}
	return other;
}

bool plan_take_batch(struct act *act, const struct log_batch *batch, struct fault *fault)
{
	const struct log_plan_batch *next = next_planned(act->kitchen->planning, batch);
	struct log_plan_batch row;

	if (next == NULL)
		return true;
	row = *next;
	row.batch_id = batch->id;
	return log_put_plan_batch(act->kitchen->log, &row, fault);
}
