/*
 * raise.c - a load that runs under an elevation found wrong: its process is looked up
 * again, and where the right one asks more, it gets more.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "kitchen/canner/canner_private.h"
#include "log/tables/canner.h"

#define MINUTE_MS (INT64_C(60) * 1000)

/* The pair that serves: at the pressure the load has, or the next higher one. */
static struct process_option pair_from(const struct process *process, int pressure_psi)
{
	struct process_option found = { .minutes = process->minutes, .pressure_psi = process->pressure_psi };

	for (size_t i = 0; i < process->option_count; i++) {
		const struct process_option *pair = &process->options[i];
		bool serves = pair->pressure_psi >= pressure_psi;

		if ((serves && found.pressure_psi < pressure_psi) ||
		    (serves && pair->pressure_psi < found.pressure_psi))
			found = *pair;
	}
	return found;
}

/* The fewest minutes at the pressure the load has: less pressure is enough where the table
 * gives it.  0: none at that pressure. */
static int minutes_at_most(const struct log_load *load, const struct process *process)
{
	int least = process->pressure_psi <= load->pressure_psi ? process->minutes : 0;

	for (size_t i = 0; i < process->option_count; i++) {
		const struct process_option *pair = &process->options[i];

		if (pair->pressure_psi <= load->pressure_psi && (least == 0 || pair->minutes < least))
			least = pair->minutes;
	}
	return least;
}

static bool find_at(struct act *act, const struct log_load *load, const struct log_house *house,
                    struct process *process, struct fault *fault)
{
	struct log_jar *jars;
	size_t count;
	bool found;

	if (!log_jars(act->kitchen->log, load->id, &jars, &count, fault))
		return false;
	found = process_of_jars(act->kitchen, load->method, jars, count, &house->elevation, process, fault);
	free(jars);
	return found;
}

static void use_pair(struct process *process, int pressure_psi)
{
	struct process_option pair = pair_from(process, pressure_psi);

	process->minutes = pair.minutes;
	process->pressure_psi = pair.pressure_psi;
}

static void say_raised(const struct strip *strip, const struct log_load *load, struct text *text)
{
	int more = load->minutes - strip_load(strip)->row.minutes;

	if (load->pressure_psi > strip_load(strip)->row.pressure_psi)
		text_add(text, "raise to %d psi, then the full %d min from the start", load->pressure_psi,
		         load->minutes);
	else if (more > 0)
		text_add(text, "hold %d min: %d more", load->minutes, more);
	else
		text_add(text, "hold %d min again: %d less", load->minutes, -more);
}

/* A hold at too little pressure does not count; one that was only too short goes on. */
static bool hold_follows(struct act *act, const struct strip *strip, const struct log_load *load, struct fault *fault)
{
	struct strip raised = *strip;

	if (strip->rule->name != PHASE_HOLD)
		return true;
	if (load->pressure_psi > strip_load(strip)->row.pressure_psi) {
		act->entry.breaks_hold = true;
		raised.in.load.row = *load;
		return phase_change(act, &raised, PHASE_LOST, phase_rule_of(strip->station.kind, strip->rule->lost_to),
		                    fault);
	}
	if (raised.phase.required_ms < load->minutes * MINUTE_MS)
		raised.phase.acknowledged_wall_ms = 0;
	raised.phase.required_ms = load->minutes * MINUTE_MS;
	return log_put_phase(act->kitchen->log, &raised.phase, fault);
}

static bool put_raised(struct act *act, const struct strip *strip, struct log_load *load, struct text *said,
                       struct fault *fault)
{
	struct log_mark mark = { .load_id = load->id,
		                 .kind = MARK_RAISED,
		                 .amount = strip_load(strip)->row.minutes * MINUTE_MS };
	struct text words = TEXT_OVER(mark.words);

	say_raised(strip, load, &words);
	text_add(said, "%s%s: %s", said->used > 0 ? "; " : "", strip_title(strip), mark.words);
	return log_put_load(act->kitchen->log, load, fault) && act_mark(act, &mark, fault) &&
	       hold_follows(act, strip, load, fault);
}

/* What the load has is enough. It keeps what it was begun with; what a raise added goes
 * again, down to the row of the elevation that now stands. */
static bool keep_or_lower(struct act *act, const struct strip *strip, const struct log_house *house, int least,
                          struct text *said, struct fault *fault)
{
	const struct strip_load *in = strip_load(strip);
	struct log_load load = in->row;
	int begun = in->begun_minutes > 0 ? in->begun_minutes : load.minutes;

	load.elevation = house->elevation;
	text_copy(load.elevation_by, sizeof(load.elevation_by), house->elevation_by);
	load.minutes = least > begun ? least : begun;
	if (load.minutes < in->row.minutes)
		return put_raised(act, strip, &load, said, fault);
	load.minutes = in->row.minutes;
	if (least < load.minutes)
		text_add(said, "%s%s: keeps its %d min (%d would do)", said->used > 0 ? "; " : "", strip_title(strip),
		         load.minutes, least);
	return log_put_load(act->kitchen->log, &load, fault) && hold_follows(act, strip, &load, fault);
}

bool raise_running(struct act *act, const struct strip *strip, const struct log_house *house, struct text *said,
                   struct fault *fault)
{
	const struct strip_load *in = strip_load(strip);
	struct log_load load = in->row;
	struct process process = { 0 };
	struct fault why = { 0 };
	bool found = find_at(act, &load, house, &process, &why);
	int least = found ? minutes_at_most(&load, &process) : 0;

	if (!found && why.kind != FAULT_REFUSED)
		return fault_set(fault, why.kind, "%s", why.sentence);
	if (!found) { /* the gate says so */
		load.elevation = house->elevation;
		return log_put_load(act->kitchen->log, &load, fault);
	}
	if (least > 0 && least <= load.minutes)
		return keep_or_lower(act, strip, house, least, said, fault);
	use_pair(&process, load.pressure_psi);
	set_process(&load, &process, house);
	if (load.pressure_psi < in->row.pressure_psi) /* longer, and the pressure it has does */
		load.pressure_psi = in->row.pressure_psi;
	return put_raised(act, strip, &load, said, fault);
}

bool look_up_again(struct act *act, const struct strip *strip, struct log_load *load, struct fault *fault)
{
	const struct log_house *house = &act->kitchen->board.house;
	struct process process = { 0 };

	*load = strip_load(strip)->row;
	if (!find_at(act, load, house, &process, fault))
		return false;
	use_pair(&process, load->pressure_psi);
	set_process(load, &process, house);
	return true;
}
