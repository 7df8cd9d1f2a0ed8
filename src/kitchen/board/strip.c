/*
 * strip.c - one line of the board: its clocks, what comes next, how urgent it is, and which strip is meant.
 */
#include <string.h>

#include "kitchen/act/act.h"

#define MINUTE_MS (INT64_C(60) * 1000)

/* --- clocks ------------------------------------------------------------------- */

int64_t strip_passed_ms(const struct strip *strip, const struct moment *now)
{
	int64_t passed = moment_between(&strip->phase.began, now);

	return passed > 0 ? passed : 0;
}

int64_t strip_work_id(const struct strip *strip)
{
	return strip_subject(strip).kind == SUBJECT_STATION ? 0 : strip_subject(strip).id;
}

struct log_subject strip_subject(const struct strip *strip)
{
	switch (strip->content) {
	case STRIP_LOAD: return (struct log_subject){ SUBJECT_LOAD, strip->load.id };
	case STRIP_RUN: return (struct log_subject){ SUBJECT_RUN, strip->run.id };
	case STRIP_BATCH: return (struct log_subject){ SUBJECT_BATCH, strip->batch.id };
	case STRIP_EMPTY: break;
	}
	return (struct log_subject){ SUBJECT_STATION, strip->station.id };
}

const char *strip_title(const struct strip *strip)
{
	return strip_on_rack(strip) ? strip->lot.code : strip->station.name;
}

/* A recipe with nothing to add at the boil has no second boil. */
static bool adds_at_boil(const struct strip *strip)
{
	for (size_t i = 0; strip->recipe != NULL && i < strip->recipe->ingredient_count; i++)
		if (strip->recipe->ingredients[i].adding == ADD_AT_BOIL ||
		    strip->recipe->ingredients[i].adding == ADD_LAST)
			return true;
	return strip->recipe == NULL; /* not known any more: leave no step out */
}

/* Liquid pectin goes into the boil; what a pot without a gel has last, after its boil-hold. */
static unsigned pot_of(const struct strip *strip)
{
	const struct recipe *recipe = strip->recipe;
	unsigned pot = strncmp(strip->lot.pack, "raw", 3) == 0 ? POT_RAW : 0; /* "raw_sterile_jar" too */

	if (recipe == NULL)
		return pot;
	if (recipe->pectin != PECTIN_NONE || recipe->gel_test != GEL_TEST_NONE)
		return pot | POT_GELS;
	for (size_t i = 0; i < recipe->ingredient_count && strip->batch.boil_hold_s > 0; i++)
		if (recipe->ingredients[i].adding == ADD_LAST)
			return pot | POT_FOLDS;
	return pot;
}

const struct phase_rule *strip_worded(const struct strip *strip, const struct phase_rule *rule)
{
	return strip->content == STRIP_BATCH && rule != NULL ? phase_rule_for_pot(rule, pot_of(strip)) : rule;
}

static bool phase_is_skipped(const struct strip *strip, const struct phase_rule *rule)
{
	if (strip->content != STRIP_BATCH)
		return false;
	if (rule->name == PHASE_SUGAR_IN || rule->name == PHASE_BACK_TO_BOIL)
		return !adds_at_boil(strip);
	return rule->name == PHASE_BOIL_HOLD && strip->batch.boil_hold_s == 0;
}

const struct phase_rule *strip_next(const struct strip *strip)
{
	const struct phase_rule *next = strip->rule;

	/* A load whose process failed is not left to cool for half a day: its jars
	 * need a fate within two hours. */
	if (strip->rule->name == PHASE_UNLOAD && strip->load.verdict == VERDICT_NOT_VALID)
		return phase_rule_of(strip->station.kind, PHASE_SEAL_CHECK);
	do
		next = phase_rule_next(strip->station.kind, next);
	while (next != NULL && phase_is_skipped(strip, next));
	return strip_worded(strip, next);
}

int64_t strip_required_ms(const struct kitchen *kitchen, const struct strip *strip, const struct phase_rule *rule)
{
	if (rule->kind != PHASE_TIMED)
		return 0;
	if (rule->required_ms != OF_THE_WORK)
		return rule->required_ms;
	switch (strip->content) {
	case STRIP_LOAD: return strip->load.minutes * MINUTE_MS;
	case STRIP_RUN: return kitchen->board.house.run_minutes * MINUTE_MS;
	case STRIP_BATCH: return strip->batch.boil_hold_s * INT64_C(1000);
	case STRIP_EMPTY: break;
	}
	return 0;
}

int64_t strip_dry_in_ms(const struct strip *strip, const struct moment *now)
{
	return (1 + WATER_DRY_INTERVALS) * strip->run.water_every_ms - moment_between(&strip->run.water, now);
}

bool phase_comes_before_end(enum phase_name name)
{
	switch (name) {
	case PHASE_LOADED:
	case PHASE_COME_UP:
	case PHASE_VENT:
	case PHASE_PRESSURISE:
	case PHASE_HOLD: return true;
	default: return false;
	}
}

bool strip_before_end(const struct strip *strip)
{
	return phase_comes_before_end(strip->rule->name);
}

int64_t strip_soon_ms(const struct strip *strip, const struct phase_rule *rule)
{
	/* Not told which it is: asked as the one that takes longer. */
	if (rule->name == PHASE_COOL_DOWN && strip->station.wall != WALL_LOCK)
		return cool_down_least_ms(WALL_HEAVY, strip->largest_jar);
	/* After a lost boil the water is hot. */
	if (rule->name == PHASE_COME_UP && strip->hold_starts == 0 && strip->boils_ms > rule->soon_s * INT64_C(1000))
		return strip->boils_ms;
	return rule->soon_s * INT64_C(1000);
}

static void water_face(const struct strip *strip, const struct moment *now, struct face *out)
{
	int64_t passed;

	if (strip->content != STRIP_RUN || strip->run.water.wall_ms == 0 || strip->rule->name == PHASE_DRAIN)
		return;
	passed = moment_between(&strip->run.water, now);
	passed = passed > 0 ? passed : 0;
	out->water = true;
	out->water_left_s = moment_seconds_left(strip->run.water_every_ms, passed);
	out->water_due = passed >= strip->run.water_every_ms;
	if (!out->water_due)
		return;
	out->ringing = true;
	out->alarm = ALARM_DRY; /* worse than juice that waits to be drawn */
	out->water_dry = strip_dry_in_ms(strip, now) <= 0;
	out->job = out->water_dry ? "HEAT OFF" : "WATER";
	out->act = out->water_dry ? "Heat OFF; no water into a dry hot pan: let it cool"
	                          : "Water pan: look, top up with hot water, then press a";
}

void strip_face(const struct strip *strip, const struct moment *now, struct face *out)
{
	int64_t passed;

	memset(out, 0, sizeof(*out));
	if (strip->content == STRIP_EMPTY) {
		out->act = "Free";
		return;
	}
	passed = strip_passed_ms(strip, now);
	out->timed = strip->phase.required_ms > 0;
	out->passed_s = passed / 1000;
	out->left_s = moment_seconds_left(strip->phase.required_ms, passed);
	out->due = out->timed && passed >= strip->phase.required_ms;
	out->ringing = out->due && strip->phase.acknowledged_wall_ms == 0;
	out->clock_rings = out->ringing;
	out->alarm = strip->rule->alarm;
	out->job = out->due ? strip->rule->job : NULL;
	out->act = out->due ? strip->rule->due : strip->rule->act;
	if (out->due && strip->hold_across_restart && strip->clock_read_ms == NOT_ON_RECORD)
		out->act = "RESTARTED: read another clock before the hold ends";
	if (strip->rule->name == PHASE_SEAL_CHECK && strip->load.verdict == VERDICT_NOT_VALID)
		out->act = "Process NOT VALID: give every jar a fate now";
	water_face(strip, now, out);
}

int64_t strip_urgency(const struct strip *strip, const struct moment *now)
{
	struct face face;
	int64_t base = INT64_C(1) << 40;

	strip_face(strip, now, &face);
	if (strip->content == STRIP_EMPTY)
		return 3 * base;
	if (face.ringing)
		return -base * face.alarm + face.left_s;
	if (face.timed && face.due && !strip_on_rack(strip))
		return face.left_s - base / 2;
	if (face.water && (!face.timed || face.water_left_s < face.left_s))
		return face.water_left_s;
	if (face.timed)
		return face.left_s;
	/* Waiting for a person: after every running clock, longest wait first. */
	return (strip_on_rack(strip) ? 2 * base : base) - face.passed_s;
}

int64_t strip_seal_overdue_ms(const struct strip *strip)
{
	if (!strip_on_rack(strip) || strip->load.process_ended_wall_ms == 0)
		return 0;
	return strip->load.process_ended_wall_ms + SEAL_OVERDUE_MS;
}

/* --- which one is meant --------------------------------------------------------- */

static const struct strip *find_strip(const struct kitchen *kitchen, struct log_subject subject)
{
	const struct board *board = &kitchen->board;

	for (size_t i = 0; i < board->stations + board->racked; i++) {
		struct log_subject its = strip_subject(&board->strips[i]);

		if (its.kind == subject.kind && its.id == subject.id)
			return &board->strips[i];
	}
	return NULL;
}

const struct strip *kitchen_strip(const struct kitchen *kitchen, int64_t load_id, struct fault *fault)
{
	const struct strip *strip = find_strip(kitchen, (struct log_subject){ SUBJECT_LOAD, load_id });

	if (strip == NULL)
		fault_set(fault, FAULT_STALE, "That load is no longer on the board.");
	return strip;
}

const struct strip *kitchen_batch_strip(const struct kitchen *kitchen, int64_t batch_id, struct fault *fault)
{
	const struct strip *strip = find_strip(kitchen, (struct log_subject){ SUBJECT_BATCH, batch_id });

	if (strip == NULL)
		fault_set(fault, FAULT_STALE, "That batch is no longer in a pot.");
	return strip;
}

const struct strip *kitchen_strip_at(const struct kitchen *kitchen, int64_t phase_id, struct fault *fault)
{
	const struct board *board = &kitchen->board;

	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (board->strips[i].content != STRIP_EMPTY && board->strips[i].phase.id == phase_id)
			return &board->strips[i];
	fault_set(fault, FAULT_STALE, "That station has already moved on. Look again.");
	return NULL;
}

const struct strip *kitchen_free_station(const struct kitchen *kitchen, int64_t station_id, struct fault *fault)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];

		if (strip->station.id != station_id)
			continue;
		if (strip->content == STRIP_EMPTY)
			return strip;
		fault_set(fault, FAULT_STALE, "%s already holds %s.", strip->station.name, strip->holds);
		return NULL;
	}
	fault_set(fault, FAULT_MISSING, "There is no such station.");
	return NULL;
}

/* --- canners ---------------------------------------------------------------------- */

bool canners_are_empty(const struct kitchen *kitchen, const char *what, struct fault *fault)
{
	for (size_t i = 0; i < kitchen->board.stations; i++)
		if (strip_has_load(&kitchen->board.strips[i]))
			return fault_set(fault, FAULT_REFUSED, "%s holds a load: the %s is not changed under it.",
			                 kitchen->board.strips[i].station.name, what);
	return true;
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
