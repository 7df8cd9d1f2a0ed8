/*
 * load_acts.c - what is done to a load from filled jars to the cooling rack.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "kitchen/kitchen_private.h"

#define MINUTE_MS (INT64_C(60) * 1000)
/* Process errors: redo within 2 h, else throw out (UNL and one ISU text; the
 * stricter of two published windows). */
#define PROCESS_ERROR_WINDOW_MS (INT64_C(2) * 3600 * 1000)

/* --- starting a load ---------------------------------------------------------- */

static void fill_query(const struct kitchen *kitchen, const struct load_order *order,
                       enum method method, struct process_query *query)
{
	query->food = order->food;
	query->pack = order->pack;
	query->jar = order->jar;
	query->method = method;
	query->elevation = kitchen->board.house.elevation;
	query->pressure_psi = order->pressure_psi;
}

bool kitchen_process(const struct kitchen *kitchen, const struct load_order *order,
                     struct process *out, struct fault *fault)
{
	struct process_query query;
	struct log_station station;

	if (!log_station_get(kitchen->log, order->station_id, &station, fault))
		return false;
	fill_query(kitchen, order, station.kind, &query);
	return process_find(&query, out, fault);
}

int station_room(const struct log_station *station, const struct jar_size *jar, bool *stated)
{
	int index = jar_size_index(jar);

	if (stated != NULL)
		*stated = index >= 0 && station->capacity[index] > 0;
	/* A smaller jar stands where a larger one does. */
	for (int i = index; i >= 0 && i < (int)jar_size_count; i++)
		if (station->capacity[i] > 0)
			return station->capacity[i];
	return 0;
}

static const struct strip *free_canner(const struct kitchen *kitchen, int64_t station_id,
                                       struct fault *fault)
{
	for (size_t i = 0; i < kitchen->board.canners; i++) {
		const struct strip *strip = &kitchen->board.strips[i];

		if (strip->station.id != station_id)
			continue;
		if (!strip->has_load)
			return strip;
		fault_set(fault, FAULT_STALE, "%s already holds %s.", strip->station.name, strip->holds);
		return NULL;
	}
	fault_set(fault, FAULT_MISSING, "There is no such canner.");
	return NULL;
}

static bool check_room(const struct log_station *station, const struct load_order *order,
                       struct fault *fault)
{
	const struct jar_size *jar = jar_size_named(order->jar);
	int room = jar == NULL ? 0 : station_room(station, jar, NULL);

	if (order->jars < 1)
		return fault_set(fault, FAULT_REFUSED, "A load has at least one jar.");
	if (room == 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s has no stated room for %s. State it in the house view first.",
		                 station->name, jar == NULL ? order->jar : jar->plural);
	if (order->jars > room)
		return fault_set(fault, FAULT_REFUSED,
		                 "%s takes %d %s; the other %d wait for the next load.", station->name,
		                 room, jar->plural, order->jars - room);
	return true;
}

static bool check_lids(struct kitchen *kitchen, const struct load_order *order, struct fault *fault)
{
	struct log_lid_box box;

	if (order->lid_box_id == 0)
		return true;
	if (!log_lid_box_get(kitchen->log, order->lid_box_id, &box, fault))
		return false;
	if (box.lids - box.used < order->jars)
		return fault_set(fault, FAULT_REFUSED,
		                 "Lid box \"%s\" has %d lids left and the load needs %d. Flat lids are used once.",
		                 box.label, box.lids - box.used, order->jars);
	return true;
}

static bool put_lot(struct act *act, const struct load_order *order, const struct process *process,
                    struct log_lot *lot, struct fault *fault)
{
	char prefix[32];
	char date[16];
	int number;

	memset(lot, 0, sizeof(*lot));
	clock_words_date(act->entry.at.wall_ms, date, sizeof(date));
	(void)snprintf(prefix, sizeof(prefix), "%s-B", date);
	if (!log_next_lot_number(act->kitchen->log, prefix, &number, fault))
		return false;
	(void)snprintf(lot->code, sizeof(lot->code), "%s%d", prefix, number);
	text_copy(lot->product, sizeof(lot->product), order->product);
	text_copy(lot->food, sizeof(lot->food), process->row->food);
	text_copy(lot->pack, sizeof(lot->pack), process->row->pack);
	lot->acidity = process->row->acidity;
	lot->made_wall_ms = act->entry.at.wall_ms;
	return log_put_lot(act->kitchen->log, lot, fault);
}

static bool put_load(struct act *act, const struct strip *canner, const struct process *process,
                     struct log_load *load, struct fault *fault)
{
	const struct log_house *house = &act->kitchen->board.house;

	memset(load, 0, sizeof(*load));
	load->station_id = canner->station.id;
	load->method = canner->station.kind;
	load->place = PLACE_CANNER;
	load->minutes = process->minutes;
	load->pressure_psi = process->pressure_psi;
	load->headspace_thou = process->row->headspace_thou;
	text_copy(load->jar_in_table, sizeof(load->jar_in_table), process->jar_in_table->name);
	text_copy(load->source, sizeof(load->source), process->row->source);
	load->confirmed = process->row->confirmed;
	load->elevation = house->elevation;
	text_copy(load->elevation_by, sizeof(load->elevation_by), house->elevation_by);
	load->opened_wall_ms = act->entry.at.wall_ms;
	return log_put_load(act->kitchen->log, load, fault);
}

static bool put_jars(struct act *act, const struct load_order *order, const struct process *process,
                     int64_t load_id, int64_t lot_id, struct fault *fault)
{
	for (int place = 1; place <= order->jars; place++) {
		struct log_jar jar = {
			.load_id = load_id,
			.lot_id = lot_id,
			.lid_box_id = order->lid_box_id,
			.place_in_load = place,
		};

		text_copy(jar.size, sizeof(jar.size), process->jar->name);
		if (!log_put_jar(act->kitchen->log, &jar, fault))
			return false;
	}
	return true;
}

static bool put_phase(struct act *act, const struct log_load *load, const struct phase_rule *rule,
                      struct fault *fault)
{
	struct log_phase phase = {
		.load_id = load->id,
		.began = act->entry.at,
		.required_ms = phase_required_ms(rule, load),
	};

	text_copy(phase.name, sizeof(phase.name), phase_name_stored(rule->name));
	return log_put_phase(act->kitchen->log, &phase, fault);
}

static bool write_load(struct act *act, const struct strip *canner, const struct load_order *order,
                       const struct process *process, struct log_load *load, struct fault *fault)
{
	struct log_lot lot;

	return put_lot(act, order, process, &lot, fault) &&
	       put_load(act, canner, process, load, fault) &&
	       put_jars(act, order, process, load->id, lot.id, fault) &&
	       put_phase(act, load, phase_rule_first(load->method), fault);
}

bool kitchen_start_load(struct kitchen *kitchen, const struct load_order *order, int64_t *load_id,
                        struct fault *fault)
{
	const struct strip *canner = free_canner(kitchen, order->station_id, fault);
	struct process process;
	struct log_load load;
	struct act act;

	if (canner == NULL || !kitchen_process(kitchen, order, &process, fault) ||
	    !check_room(&canner->station, order, fault))
		return false;
	if (!act_begin(&act, kitchen, "start_load", canner->station.id, 0, fault))
		return false;
	/* Inside the transaction, so that two terminals cannot both take the last lids. */
	if (!check_lids(kitchen, order, fault) ||
	    !write_load(&act, canner, order, &process, &load, fault))
		return act_fail(&act);
	act.entry.load_id = load.id;
	*load_id = load.id;
	return act_commit(&act, fault, "%s: load started, %d %s %s, %d min", canner->station.name,
	                  order->jars, order->jars == 1 ? process.jar->words : process.jar->plural,
	                  order->product, load.minutes);
}

/* --- phases ------------------------------------------------------------------- */

bool phase_change(struct act *act, const struct strip *strip, enum phase_end why,
                  const struct phase_rule *next, struct fault *fault)
{
	struct log_phase ending = strip->phase;

	ending.ended_wall_ms = act->entry.at.wall_ms;
	ending.ended_why = why;
	return log_put_phase(act->kitchen->log, &ending, fault) &&
	       (next == NULL || put_phase(act, &strip->load, next, fault));
}

/* What a load becomes when its running phase ends as it should. */
static void judge(struct log_load *load, const struct strip *strip, const struct moment *now)
{
	if (strip->rule->name != PHASE_HOLD || load->verdict == VERDICT_NOT_VALID)
		return; /* a failed process keeps the moment it failed: its window runs */
	load->process_ended_wall_ms = now->wall_ms;
	if (load->verdict != VERDICT_OPEN)
		return;
	load->verdict = VERDICT_VALID;
	if (strip->hold_across_restart)
		text_copy(load->verdict_why, sizeof(load->verdict_why),
		          "The computer restarted during the hold; its time rests on the wall clock.");
}

/* A load whose process failed is not left to cool for half a day: its jars need
 * a fate within two hours. */
static const struct phase_rule *after(const struct strip *strip)
{
	const struct phase_rule *next = phase_rule_next(strip->load.method, strip->rule);

	if (strip->rule->name == PHASE_UNLOAD && strip->load.verdict == VERDICT_NOT_VALID)
		return phase_rule_of(strip->load.method, PHASE_SEAL_CHECK);
	return next;
}

static bool refuse_bounce(const struct strip *strip, const struct moment *now, struct fault *fault)
{
	/* No finger bounces across a restart; a wall clock that came back wrong must
	 * not hold up what waits for a person. */
	if (!moment_same_boot(&strip->phase.began, now) || strip_passed_ms(strip, now) >= PRESS_AGAIN_MS)
		return true;
	return fault_set(fault, FAULT_STALE, "%s: \"%s\" has only just begun; that press did not count.",
	                 strip_title(strip), strip->rule->words);
}

static bool refuse_early(const struct strip *strip, int64_t passed_ms, bool sure,
                         struct fault *fault)
{
	const struct phase_rule *rule = strip->rule;
	char left_words[24];
	struct text left = TEXT_OVER(left_words);

	text_add_duration(&left, moment_seconds_left(strip->phase.required_ms, passed_ms));
	if (rule->kind == PHASE_TIMED && passed_ms < strip->phase.required_ms) {
		if (rule->early == EARLY_NEVER)
			return fault_set(fault, FAULT_REFUSED,
			                 "%s: %s left of the %s. Only exceptions (x) end it sooner.",
			                 strip_title(strip), left_words, rule->words);
		return sure || fault_set(fault, FAULT_CONFIRM, "%s: %s left of the %s. End it now all the same?",
		                         strip_title(strip), left_words, rule->words);
	}
	if (rule->kind == PHASE_WATCHED && passed_ms < rule->soon_s * INT64_C(1000) && !sure)
		return fault_set(fault, FAULT_CONFIRM, "%s: so soon? Have you SEEN it: %s?",
		                 strip_title(strip), rule->step);
	return true;
}

static bool refuse_unfinished_check(const struct strip *strip, struct fault *fault)
{
	if (strip->rule->name != PHASE_SEAL_CHECK)
		return true;
	if (strip->unchecked > 0)
		return fault_set(fault, FAULT_REFUSED, "%d of %d jars are not checked yet.", strip->unchecked,
		                 strip->jars);
	if (strip->without_fate > 0)
		return fault_set(fault, FAULT_REFUSED,
		                 "%d jar%s still without a fate: fridge, freezer, reprocess or discard.",
		                 strip->without_fate, strip->without_fate == 1 ? " is" : "s are");
	return true;
}

bool kitchen_step(struct kitchen *kitchen, int64_t load_id, int64_t phase_id, bool sure,
                  struct fault *fault)
{
	const struct strip *found = kitchen_strip_at(kitchen, load_id, phase_id, fault);
	const struct phase_rule *next;
	struct log_load load;
	struct strip strip;
	struct act act;
	int64_t passed;

	if (found == NULL)
		return false;
	strip = *found; /* the board is read again on commit */
	next = after(&strip);
	if (!act_begin(&act, kitchen, "step", strip.station.id, load_id, fault))
		return false;
	passed = strip_passed_ms(&strip, &act.entry.at);
	if (!refuse_bounce(&strip, &act.entry.at, fault) || !refuse_early(&strip, passed, sure, fault) ||
	    !refuse_unfinished_check(&strip, fault))
		return act_fail(&act);
	load = strip.load;
	load.place = next == NULL ? PLACE_SHELF : next->place;
	judge(&load, &strip, &act.entry.at);
	act.entry.breaks_hold = strip.rule->name == PHASE_HOLD;
	if (!phase_change(&act, &strip, PHASE_DONE, next, fault) || !log_put_load(kitchen->log, &load, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "%s: %s (%s > %s)", strip_title(&strip), strip.rule->step,
	                  strip.rule->words, next == NULL ? "shelved" : next->words);
}

bool kitchen_lost(struct kitchen *kitchen, int64_t load_id, int64_t phase_id, struct fault *fault)
{
	const struct strip *found = kitchen_strip_at(kitchen, load_id, phase_id, fault);
	struct log_load load;
	struct strip strip;
	struct act act;

	if (found == NULL)
		return false;
	strip = *found;
	if (strip.rule->lost_to == PHASE_NO_PHASE)
		return fault_set(fault, FAULT_REFUSED, "%s: nothing can be lost in \"%s\".", strip_title(&strip),
		                 strip.rule->words);
	if (!act_begin(&act, kitchen, "lost", strip.station.id, load_id, fault))
		return false;
	act.entry.breaks_hold = true;
	load = strip.load;
	if (load.verdict == VERDICT_UNKNOWN) {
		/* What was estimated is gone with the hold it was about. */
		load.verdict = VERDICT_OPEN;
		load.verdict_why[0] = '\0';
	}
	if (!phase_change(&act, &strip, PHASE_LOST, phase_rule_of(load.method, strip.rule->lost_to), fault) ||
	    !log_put_load(kitchen->log, &load, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "%s: %s", strip_title(&strip), strip.rule->lost);
}

bool kitchen_acknowledge(struct kitchen *kitchen, int64_t load_id, int64_t phase_id,
                         struct fault *fault)
{
	const struct strip *strip = kitchen_strip_at(kitchen, load_id, phase_id, fault);
	struct log_phase phase;
	struct face face;
	struct act act;
	char name[NAME_MAX_BYTES];

	if (strip == NULL)
		return false;
	if (!act_begin(&act, kitchen, "heard", strip->station.id, load_id, fault))
		return false;
	strip_face(strip, &act.entry.at, &face);
	if (!face.ringing) {
		fault_set(fault, FAULT_REFUSED, "%s: no alarm is ringing.", strip_title(strip));
		return act_fail(&act);
	}
	phase = strip->phase;
	phase.acknowledged_wall_ms = act.entry.at.wall_ms;
	text_copy(name, sizeof(name), strip_title(strip));
	if (!log_put_phase(kitchen->log, &phase, fault))
		return act_fail(&act);
	return act_commit(&act, fault, "%s: alarm heard (%s)", name, strip->rule->words);
}

/* --- exceptions ---------------------------------------------------------------- */

static bool redo_window_open(const struct log_load *load, const struct moment *now)
{
	return load->verdict == VERDICT_NOT_VALID && load->process_ended_wall_ms > 0 &&
	       now->wall_ms - load->process_ended_wall_ms <= PROCESS_ERROR_WINDOW_MS;
}

const char *exception_words(const struct strip *strip, enum exception exception,
                            const struct moment *now)
{
	const struct phase_rule *rule = strip->has_load ? strip->rule : NULL;
	struct face face;

	if (rule == NULL)
		return NULL;
	strip_face(strip, now, &face);
	switch (exception) {
	case EXCEPTION_LOST: /* also after the time: it may be found out only then */
		return rule->lost_to == PHASE_NO_PHASE ? NULL : rule->lost;
	case EXCEPTION_STOP:
		return rule->stop_to == PHASE_NO_PHASE ? NULL
		           : "heat is gone or the load is given up: process NOT valid";
	case EXCEPTION_VENT_SHORT:
		return rule->name == PHASE_VENT && rule->kind == PHASE_TIMED && !face.due
		           ? "vent was cut short and weight is on: process NOT valid" : NULL;
	case EXCEPTION_EARLIER:
		return rule->name == PHASE_HOLD && !face.due && strip->load.verdict == VERDICT_OPEN
		           ? "someone saw the hold begin earlier than the key: time is estimated" : NULL;
	case EXCEPTION_BROKEN_JAR:
		return strip->load.place == PLACE_CANNER && strip->load.broken < strip->jars
		           ? "a jar broke: leave the rest in, go on" : NULL;
	case EXCEPTION_REDO:
		return rule->name == PHASE_UNLOAD && redo_window_open(&strip->load, now)
		           ? "the whole process again, full time, new lids if they had sealed" : NULL;
	case EXCEPTION_COUNT:
		break;
	}
	return NULL;
}

static void fail_process(struct log_load *load, const struct moment *now, const char *why)
{
	if (load->verdict == VERDICT_NOT_VALID)
		return; /* the first failure counts: its window runs */
	load->verdict = VERDICT_NOT_VALID;
	load->process_ended_wall_ms = now->wall_ms;
	text_copy(load->verdict_why, sizeof(load->verdict_why), why);
}

static bool stop(struct act *act, const struct strip *strip, struct fault *fault)
{
	const struct phase_rule *next = phase_rule_of(strip->load.method, strip->rule->stop_to);
	int64_t passed = strip_passed_ms(strip, &act->entry.at);
	struct log_load load = strip->load;
	char why[SENTENCE_MAX_BYTES];
	struct text text = TEXT_OVER(why);

	text_add(&text, "stopped in %s%s after ", strip->rule->words,
	         strip->phase.required_ms > 0 && passed >= strip->phase.required_ms ? ", found" : "");
	text_add_duration(&text, passed / 1000);
	if (strip->rule->name == PHASE_HOLD)
		text_add(&text, " of %d:00", load.minutes);
	fail_process(&load, &act->entry.at, why);
	act->entry.breaks_hold = true;
	return phase_change(act, strip, PHASE_STOPPED, next, fault) &&
	       log_put_load(act->kitchen->log, &load, fault);
}

static bool cut_vent(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_load load = strip->load;
	char why[SENTENCE_MAX_BYTES];
	struct text text = TEXT_OVER(why);

	text_add(&text, "vent cut short after ");
	text_add_duration(&text, strip_passed_ms(strip, &act->entry.at) / 1000);
	text_add(&text, " of 10:00");
	fail_process(&load, &act->entry.at, why);
	act->entry.breaks_hold = true;
	return phase_change(act, strip, PHASE_CUT_SHORT, phase_rule_next(load.method, strip->rule), fault) &&
	       log_put_load(act->kitchen->log, &load, fault);
}

/* A hold may be said to have begun earlier when someone watched it, never before
 * the phase that led to it had begun; the process then counts as "unknown". */
static bool begin_earlier(struct act *act, const struct strip *strip, int minutes,
                          struct fault *fault)
{
	struct log_phase *phases;
	struct log_load load = strip->load;
	struct log_phase hold = strip->phase;
	int64_t back = minutes * MINUTE_MS;
	int64_t room = 0;
	size_t count;

	if (!log_phases(act->kitchen->log, load.id, &phases, &count, fault))
		return false;
	if (count >= 2)
		room = moment_between(&phases[count - 2].began, &hold.began);
	free(phases);
	if (minutes < 1 || back > room)
		return fault_set(fault, FAULT_REFUSED,
		                 "The hold cannot have begun %d min before the key: give 1 to %lld min.",
		                 minutes, (long long)(room / MINUTE_MS));
	hold.began.wall_ms -= back;
	hold.began.awake_ms -= back;
	load.verdict = VERDICT_UNKNOWN;
	(void)snprintf(load.verdict_why, sizeof(load.verdict_why),
	               "start of the hold estimated: %d min before the key, as a person saw it", minutes);
	return log_put_phase(act->kitchen->log, &hold, fault) &&
	       log_put_load(act->kitchen->log, &load, fault);
}

static bool count_broken(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_load load = strip->load;

	load.broken++;
	return log_put_load(act->kitchen->log, &load, fault);
}

static bool redo_process(struct act *act, const struct strip *strip, struct fault *fault)
{
	const struct phase_rule *first = phase_rule_first(strip->load.method);
	struct log_load load = strip->load;

	load.verdict = VERDICT_OPEN;
	load.process_ended_wall_ms = 0;
	load.verdict_why[0] = '\0';
	return phase_change(act, strip, PHASE_DONE, first, fault) &&
	       log_put_load(act->kitchen->log, &load, fault);
}

bool kitchen_exception(struct kitchen *kitchen, int64_t load_id, int64_t phase_id,
                       enum exception exception, int minutes, struct fault *fault)
{
	static const char *const verbs[] = {
		[EXCEPTION_LOST] = "lost", [EXCEPTION_STOP] = "stop",
		[EXCEPTION_VENT_SHORT] = "vent_short", [EXCEPTION_EARLIER] = "began_earlier",
		[EXCEPTION_BROKEN_JAR] = "broken_jar", [EXCEPTION_REDO] = "redo_process",
	};
	const struct strip *found = kitchen_strip_at(kitchen, load_id, phase_id, fault);
	struct moment now = kitchen_now(kitchen);
	struct strip strip;
	const char *words;
	struct act act;
	bool done = false;

	if (found == NULL)
		return false;
	strip = *found;
	words = exception_words(&strip, exception, &now);
	if (words == NULL)
		return fault_set(fault, FAULT_REFUSED, "%s: not possible in \"%s\".", strip_title(&strip),
		                 strip.rule->words);
	if (exception == EXCEPTION_LOST)
		return kitchen_lost(kitchen, load_id, phase_id, fault);
	if (!act_begin(&act, kitchen, verbs[exception], strip.station.id, load_id, fault))
		return false;
	switch (exception) {
	case EXCEPTION_STOP: done = stop(&act, &strip, fault); break;
	case EXCEPTION_VENT_SHORT: done = cut_vent(&act, &strip, fault); break;
	case EXCEPTION_EARLIER: done = begin_earlier(&act, &strip, minutes, fault); break;
	case EXCEPTION_BROKEN_JAR: done = count_broken(&act, &strip, fault); break;
	case EXCEPTION_REDO: done = redo_process(&act, &strip, fault); break;
	case EXCEPTION_LOST:
	case EXCEPTION_COUNT: break;
	}
	if (!done)
		return act_fail(&act);
	return act_commit(&act, fault, "%s: %s", strip_title(&strip), words);
}
