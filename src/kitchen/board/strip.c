/*
 * strip.c - one line of the board: its clocks, what comes next, how urgent it is, and which strip is meant.
 */
#include <string.h>

#include "kitchen/act/act.h"
#include "kitchen/board/kinds.h"

/* --- clocks ------------------------------------------------------------------- */

int64_t strip_passed_ms(const struct strip *strip, const struct moment *now)
{
	int64_t passed = moment_between(&strip->phase.began, now);

	return passed > 0 ? passed : 0;
}

const struct strip_load *strip_load(const struct strip *strip)
{
	return strip->content == STRIP_LOAD ? &strip->in.load : NULL;
}

const struct strip_batch *strip_batch(const struct strip *strip)
{
	return strip->content == STRIP_BATCH ? &strip->in.batch : NULL;
}

bool strip_on_rack(const struct strip *strip)
{
	return strip->racked;
}

bool strip_wants_clock(const struct strip *strip)
{
	const struct strip_load *load = strip_load(strip);

	return load != NULL && load->hold_across_restart && load->clock_read_ms == NOT_ON_RECORD;
}

struct log_subject strip_subject(const struct strip *strip)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind == NULL ? (struct log_subject){ SUBJECT_STATION, strip->station.id }
	                    : (struct log_subject){ kind->subject, kind->id(strip) };
}

int64_t strip_work_id(const struct strip *strip)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind == NULL ? 0 : kind->id(strip);
}

/* --- words ---------------------------------------------------------------------- */

/* Before the contents wherever they are shown: what is not as it should be is seen. */
const char *verdict_mark(enum verdict verdict, const struct log_lot *lot)
{
	if (verdict == VERDICT_UNKNOWN && lot->origin == ORIGIN_OWN_UNKNOWN)
		return "UNKNOWN, not a tested recipe: ";
	return verdict == VERDICT_NOT_VALID ? "NOT VALID: " : verdict == VERDICT_UNKNOWN ? "UNKNOWN: " : "";
}

const char *strip_product(const struct strip *strip)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind == NULL || kind->made_of == NULL ? strip->lot.product : kind->made_of(strip);
}

const char *strip_lot_words(const struct strip *strip)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind == NULL || kind->made_of == NULL ? strip->lot.code : kind->made_of(strip);
}

const char *strip_title(const struct strip *strip)
{
	return strip_on_rack(strip) ? strip->lot.code : strip->station.name;
}

const struct phase_rule *strip_worded(const struct strip *strip, const struct phase_rule *rule)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind == NULL || kind->worded == NULL || rule == NULL ? rule : kind->worded(strip, rule);
}

static bool phase_is_skipped(const struct strip *strip, const struct phase_rule *rule)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind != NULL && kind->skips != NULL && kind->skips(strip, rule);
}

const struct phase_rule *strip_next(const struct strip *strip)
{
	const struct phase_rule *next = strip->rule;

	/* A load whose process failed is not left to cool for half a day: its jars
	 * need a fate within two hours. */
	if (strip->rule->name == PHASE_UNLOAD && strip_load(strip)->row.verdict == VERDICT_NOT_VALID)
		return phase_rule_of(strip->station.kind, PHASE_SEAL_CHECK);
	do
		next = phase_rule_next(strip->station.kind, next);
	while (next != NULL && phase_is_skipped(strip, next));
	return strip_worded(strip, next);
}

int64_t strip_work_ms(const struct strip *strip)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind == NULL ? 0 : kind->required_ms(strip);
}

int64_t strip_required_ms(const struct strip *strip, const struct phase_rule *rule)
{
	if (rule->kind != PHASE_TIMED)
		return 0;
	return rule->required_ms == OF_THE_WORK ? strip_work_ms(strip) : rule->required_ms;
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
	const struct strip_load *in = strip_load(strip);

	/* Not told which it is: asked as the one that takes longer. */
	if (rule->name == PHASE_COOL_DOWN && strip->station.wall != WALL_LOCK)
		return cool_down_least_ms(WALL_HEAVY, in->largest_jar);
	/* After a lost boil the water is hot. */
	if (rule->name == PHASE_COME_UP && in->hold_starts == 0 && in->boils_ms > rule->soon_s * INT64_C(1000))
		return in->boils_ms;
	return rule->soon_s * INT64_C(1000);
}

/* Of an answered alarm whose step is still to be made: until it comes back.  It was answered
 * so long after its phase began (phase_acts.c), by the clock that nobody sets; later than now
 * only when a clock went backwards: then nobody knows, and it rings. */
static int64_t quiet_left_ms(const struct strip *strip, int64_t passed)
{
	int64_t answered = strip->phase.acknowledged_wall_ms - strip->phase.began.wall_ms;
	int64_t left = strip->quiet_ms - (passed - answered);

	if (strip->phase.acknowledged_wall_ms == 0 || passed < strip->phase.required_ms || passed < answered)
		return 0;
	return left > 0 ? left : 0;
}

void strip_face(const struct strip *strip, const struct moment *now, struct face *out)
{
	const struct work_kind *kind = strip_kind(strip);
	int64_t passed;

	memset(out, 0, sizeof(*out));
	if (kind == NULL) {
		out->act = "Free";
		out->brief = out->act;
		return;
	}
	passed = strip_passed_ms(strip, now);
	out->timed = strip->phase.required_ms > 0;
	out->passed_s = passed / 1000;
	out->left_s = moment_seconds_left(strip->phase.required_ms, passed);
	out->due = out->timed && passed >= strip->phase.required_ms;
	out->quiet_s = (quiet_left_ms(strip, passed) + 999) / 1000;
	out->ringing = out->due && out->quiet_s == 0;
	out->clock_rings = out->ringing;
	out->alarm = strip->rule->alarm;
	out->job = out->due ? strip->rule->job : NULL;
	out->act = out->due ? strip->rule->due : strip->said.act;
	out->brief = !out->due                        ? strip->said.brief
	             : strip->rule->due_brief != NULL ? strip->rule->due_brief
	                                              : strip->rule->due;
	if (out->due && strip_wants_clock(strip)) {
		out->act = "RESTARTED: read another clock before the hold ends";
		out->brief = "RESTARTED: read another clock";
	}
	if (strip->rule->name == PHASE_SEAL_CHECK && strip_load(strip)->row.verdict == VERDICT_NOT_VALID) {
		out->act = "Process NOT VALID: give every jar a fate now";
		out->brief = "Give every jar a fate";
	}
	if (kind->second_clock != NULL)
		kind->second_clock(strip, now, out);
}

int64_t strip_second_in_ms(const struct strip *strip, const struct moment *now)
{
	const struct work_kind *kind = strip_kind(strip);

	return kind == NULL || kind->second_left_ms == NULL ? 0 : kind->second_left_ms(strip, now);
}

int64_t strip_rings_in_ms(const struct strip *strip, const struct moment *now)
{
	const struct work_kind *kind = strip_kind(strip);
	int64_t passed = kind == NULL ? 0 : strip_passed_ms(strip, now);
	int64_t left = kind == NULL ? 0 : strip->phase.required_ms - passed;
	int64_t next;

	if (kind != NULL && left <= 0)
		left = quiet_left_ms(strip, passed);
	next = left > 0 ? left : INT64_MAX;
	left = strip_second_in_ms(strip, now);
	return left > 0 && left < next ? left : next;
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
	/* Waiting for a person: after every running clock, longest wait first; an empty pot behind
	 * all that holds food. */
	return (strip_on_rack(strip) || strip->rule->emptied ? 2 * base : base) - face.passed_s;
}

int64_t strip_seal_overdue_ms(const struct strip *strip)
{
	if (!strip_on_rack(strip) || !strip_has_load(strip) || strip_load(strip)->row.process_ended_wall_ms == 0)
		return 0;
	return strip_load(strip)->row.process_ended_wall_ms + SEAL_OVERDUE_MS;
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

bool kitchen_strip_at(const struct kitchen *kitchen, int64_t phase_id, struct strip *out, struct fault *fault)
{
	const struct board *board = &kitchen->board;

	for (size_t i = 0; i < board->stations + board->racked; i++)
		if (board->strips[i].content != STRIP_EMPTY && board->strips[i].phase.id == phase_id) {
			*out = board->strips[i];
			return true;
		}
	return fault_set(fault, FAULT_STALE, "That station has already moved on. Look again.");
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

void kitchen_say_holds(const struct kitchen *kitchen, struct text *text)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct strip *strip = &kitchen->board.strips[i];

		if (strip_has_load(strip) && strip_before_end(strip))
			text_add(text, "; %s now holds %d min", strip_title(strip), strip_load(strip)->row.minutes);
	}
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
