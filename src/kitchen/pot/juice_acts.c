/*
 * juice_acts.c - juicer runs, and the juice they give: stock from then on.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/plan/plan_private.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/stock_private.h"
#include "log/rows/words.h"
#include "log/tables/pot.h"

#define MINUTE_MS (INT64_C(60) * 1000)

/* --- runs ------------------------------------------------------------------------ */

static bool check_fruit(const char *fruit, int64_t fruit_mg, struct fault *fault)
{
	if (fruit[0] == '\0' || strlen(fruit) >= NAME_MAX_BYTES)
		return fault_set(fault, FAULT_MISUSE, "Say what fruit it is, in a few words.");
	if (fruit_mg <= 0)
		return fault_set(fault, FAULT_MISUSE, "Weigh the fruit: \"12 lb\" or \"5.5 kg\".");
	return true;
}

static bool write_run(struct act *act, const struct log_station *station, const char *fruit, int64_t fruit_mg,
                      struct log_run *run, struct fault *fault)
{
	struct log_subject subject = { .kind = SUBJECT_RUN };

	memset(run, 0, sizeof(*run));
	run->station_id = station->id;
	text_copy(run->fruit, sizeof(run->fruit), fruit);
	run->fruit_mg = fruit_mg;
	run->open = true;
	run->water_every_ms = station_water_minutes(&act->kitchen->board.house, station) * MINUTE_MS;
	run->water = act->entry.at; /* the pan is filled when the heat goes on */
	run->opened_wall_ms = act->entry.at.wall_ms;
	if (!log_put_run(act->kitchen->log, run, fault))
		return false;
	subject.id = run->id;
	act_about(act, subject);
	return supply_move(act, SUPPLY_FRUIT, "", -fruit_mg, SUPPLY_USE, fault) &&
	       plan_take_run(act, run->id, run->fruit, false, fault) &&
	       phase_begin(act, subject, phase_rule_first(STATION_JUICER), 0, fault);
}

bool kitchen_start_run(struct kitchen *kitchen, int64_t station_id, const char *fruit, int64_t fruit_mg,
                       int64_t *run_id, struct fault *fault)
{
	const struct strip *strip = kitchen_free_station(kitchen, station_id, fault);
	struct log_station station;
	struct log_run run;
	struct act act;

	if (strip == NULL || !check_clock(kitchen, fault) || !check_fruit(fruit, fruit_mg, fault))
		return false;
	station = strip->station;
	if (station.kind != STATION_JUICER)
		return fault_set(fault, FAULT_REFUSED, "%s is not a juicer.", station.name);
	if (station_water_minutes(&kitchen->board.house, &station) == 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "How often to check the water of %s is not set: give its minutes first, in the house "
		                 "view (h). A dry pan burns.",
		                 station.name);
	if (!act_begin(&act, kitchen, VERB_START_RUN, station.id, fault))
		return false;
	if (!write_run(&act, &station, fruit, fruit_mg, &run, fault))
		return act_fail(&act);
	*run_id = run.id;
	act_says_text(&act, station.name);
	act_says_number(&act, fruit_mg);
	act_says_text(&act, fruit);
	return act_commit(&act, fault);
}

/* The juice of a run goes by the name of its fruit, or no recipe would find it. */
static bool rename_juice(struct act *act, const struct log_run *run, struct fault *fault)
{
	struct log_juice *juices;
	size_t count;
	bool done = true;

	if (!log_juices_of_run(act->kitchen->log, run->id, &juices, &count, fault))
		return false;
	for (size_t i = 0; i < count && done; i++) {
		if (strcmp(juices[i].kind, run->fruit) == 0)
			continue;
		text_copy(juices[i].kind, sizeof(juices[i].kind), run->fruit);
		done = log_put_juice(act->kitchen->log, &juices[i], fault);
	}
	free(juices);
	return done;
}

bool kitchen_run_fruit(struct kitchen *kitchen, int64_t run_id, const char *fruit, int64_t fruit_mg,
                       struct fault *fault)
{
	struct log_run run;
	int64_t before;
	struct act act;

	if (!check_fruit(fruit, fruit_mg, fault) || !log_run_get(kitchen->log, run_id, &run, fault))
		return false;
	if (!act_begin(&act, kitchen, VERB_EDIT_FRUIT, run.station_id, fault))
		return false;
	act_about(&act, (struct log_subject){ SUBJECT_RUN, run_id });
	before = run.fruit_mg;
	text_copy(run.fruit, sizeof(run.fruit), fruit);
	run.fruit_mg = fruit_mg;
	if (!log_put_run(kitchen->log, &run, fault) || !rename_juice(&act, &run, fault) ||
	    !supply_move(&act, SUPPLY_FRUIT, "", before - fruit_mg, SUPPLY_CORRECTION, fault))
		return act_fail(&act);
	act_says_number(&act, fruit_mg);
	act_says_text(&act, fruit);
	return act_commit(&act, fault);
}

bool kitchen_run_get(const struct kitchen *kitchen, int64_t run_id, struct log_run *out, struct fault *fault)
{
	return log_run_get(kitchen->log, run_id, out, fault);
}

/* --- juice ----------------------------------------------------------------------- */

static bool put_juice(struct act *act, int64_t run_id, const char *kind, int64_t ul, enum juice_state state,
                      struct fault *fault)
{
	struct log_juice juice = {
		.run_id = run_id,
		.made_ul = ul,
		.state = state,
		.made_wall_ms = act->entry.at.wall_ms,
		.state_wall_ms = act->entry.at.wall_ms,
	};

	text_copy(juice.kind, sizeof(juice.kind), kind);
	return log_put_juice(act->kitchen->log, &juice, fault);
}

static bool end_run(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_run run = strip_run(strip)->row;

	run.open = false;
	return phase_change(act, strip, PHASE_DONE, NULL, fault) && log_put_run(act->kitchen->log, &run, fault);
}

bool kitchen_juice_out(struct kitchen *kitchen, int64_t phase_id, int64_t ul, struct fault *fault)
{
	struct strip strip;
	struct act act;
	bool ends;

	if (!kitchen_strip_at(kitchen, phase_id, &strip, fault))
		return false;
	ends = strip.content == STRIP_RUN && strip.rule->name == PHASE_DRAIN;
	if (strip.content != STRIP_RUN || (!ends && strip.rule->name != PHASE_RUN))
		return fault_set(fault, FAULT_REFUSED, "%s: there is no juice to draw now.", strip_title(&strip));
	if (ul < 0 || (ul == 0 && !ends))
		return fault_set(fault, FAULT_MISUSE, "Measure the juice: \"3 qt\" or \"2.8 L\".");
	if (!act_begin(&act, kitchen, VERB_JUICE_OUT, strip.station.id, fault))
		return false;
	act_about(&act, strip_subject(&strip));
	if ((ul > 0 &&
	     !put_juice(&act, strip_run(&strip)->row.id, strip_run(&strip)->row.fruit, ul, JUICE_HOT, fault)) ||
	    (ends && !end_run(&act, &strip, fault)))
		return act_fail(&act);
	act_says_text(&act, strip.station.name);
	act_says_number(&act, ul);
	act_says_text(&act, strip_run(&strip)->row.fruit);
	act_says_number(&act, ends);
	return act_commit(&act, fault);
}

bool kitchen_juice_in(struct kitchen *kitchen, const char *kind, int64_t ul, enum juice_state state,
                      struct fault *fault)
{
	struct act act;

	if (kind[0] == '\0' || strlen(kind) >= NAME_MAX_BYTES || ul <= 0)
		return fault_set(fault, FAULT_MISUSE, "Say which juice and how much.");
	if (!act_begin(&act, kitchen, VERB_JUICE_IN, 0, fault))
		return false;
	if (!put_juice(&act, 0, kind, ul, state, fault))
		return act_fail(&act);
	act_says_number(&act, ul);
	act_says_text(&act, kind);
	act_says_text(&act, juice_state_name(state));
	return act_commit(&act, fault);
}

bool kitchen_juice_state(struct kitchen *kitchen, int64_t juice_id, enum juice_state state, struct fault *fault)
{
	struct log_juice juice;
	struct act act;

	if (!log_juice_get(kitchen->log, juice_id, &juice, fault))
		return false;
	if (juice.state == state)
		return fault_set(fault, FAULT_REFUSED, "That juice is already %s.", juice_state_name(state));
	if (!act_begin(&act, kitchen, VERB_JUICE_STATE, 0, fault))
		return false;
	juice.state = state;
	juice.state_wall_ms = act.entry.at.wall_ms;
	if (!log_put_juice(kitchen->log, &juice, fault))
		return act_fail(&act);
	act_says_text(&act, juice.kind);
	act_says_text(&act, juice_state_name(state));
	return act_commit(&act, fault);
}
