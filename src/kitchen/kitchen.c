#include "kitchen/kitchen.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "engine/text.h"
#include "kitchen/kitchen_private.h"

#define DAY_MS (INT64_C(24) * 3600 * 1000)
#define READ_AGAIN 3
#define UNDONE "Undone: "
#define DONE_AGAIN "Done again: "

bool kitchen_open(struct log *log, struct clock clock, struct kitchen **out, struct fault *fault)
{
	struct kitchen *kitchen = calloc(1, sizeof(*kitchen));

	*out = NULL;
	if (kitchen == NULL)
		return fault_set(fault, FAULT_MEMORY, "There is no memory left to open the kitchen.");
	kitchen->log = log;
	kitchen->clock = clock;
	if (!kitchen_refresh(kitchen, true, fault)) {
		kitchen_close(kitchen);
		return false;
	}
	*out = kitchen;
	return true;
}

void kitchen_close(struct kitchen *kitchen)
{
	if (kitchen == NULL)
		return;
	free(kitchen->strips);
	free(kitchen->fates);
	free(kitchen);
}

struct moment kitchen_now(const struct kitchen *kitchen)
{
	return clock_now(&kitchen->clock);
}

const struct board *kitchen_board(const struct kitchen *kitchen)
{
	return &kitchen->board;
}

struct log *kitchen_log(const struct kitchen *kitchen)
{
	return kitchen->log;
}

void kitchen_set_who(struct kitchen *kitchen, const char *initials)
{
	text_copy(kitchen->who, sizeof(kitchen->who), initials);
}

/* --- reading the board ------------------------------------------------------ */

bool jar_needs_fate(const struct log_jar *jar, const struct log_load *load)
{
	if (jar->state == JAR_BROKEN)
		return false; /* its food is thrown out with the glass */
	return jar->state == JAR_UNSEALED || jar->state == JAR_DOUBTFUL ||
	       jar->siphoning == SIPHON_OVER_HALF || load->verdict == VERDICT_NOT_VALID;
}

static bool read_jars(struct kitchen *kitchen, struct strip *strip, struct fault *fault)
{
	const struct jar_size *size;
	struct log_jar *jars;
	size_t count;

	if (!log_jars(kitchen->log, strip->load.id, &jars, &count, fault))
		return false;
	if (count == 0) {
		free(jars);
		return fault_set(fault, FAULT_DAMAGED, "Load %lld has no jars on record.",
		                 (long long)strip->load.id);
	}
	strip->jars = (int)count;
	for (size_t i = 0; i < count; i++) {
		/* A jar whose fate is decided needs no look at its lid. */
		strip->unchecked += jars[i].state == JAR_UNCHECKED && jars[i].fate == FATE_NONE;
		strip->without_fate += jar_needs_fate(&jars[i], &strip->load) && jars[i].fate == FATE_NONE;
	}
	text_copy(strip->jar_size, sizeof(strip->jar_size), jars[0].size);
	size = jar_size_named(jars[0].size);
	if (!log_lot_get(kitchen->log, jars[0].lot_id, &strip->lot, fault)) {
		free(jars);
		return false;
	}
	(void)snprintf(strip->holds, sizeof(strip->holds), "%d %s %s", strip->jars,
	               size == NULL ? strip->jar_size : strip->jars == 1 ? size->words : size->plural,
	               strip->lot.product);
	free(jars);
	return true;
}

static void remember(struct strip *strip, const struct log_phase *phase)
{
	const struct phase_rule *rule = phase_rule_named(strip->load.method, phase->name);
	struct past_phase *past;

	if (phase->ended_wall_ms == 0 || rule == NULL)
		return;
	if (strip->past_count == PAST_PHASES_MAX) {
		memmove(strip->past, strip->past + 1, sizeof(strip->past) - sizeof(strip->past[0]));
		strip->past_count--;
	}
	past = &strip->past[strip->past_count++];
	past->name = rule->name;
	past->began_wall_ms = phase->began.wall_ms;
	past->ended_wall_ms = phase->ended_wall_ms;
	past->why = phase->ended_why;
}

static bool read_phases(struct kitchen *kitchen, struct strip *strip, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	struct log_phase *phases;
	size_t count;

	if (!log_phase_running(kitchen->log, strip->load.id, &strip->phase, fault) ||
	    !log_phases(kitchen->log, strip->load.id, &phases, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		strip->hold_starts += strcmp(phases[i].name, phase_name_stored(PHASE_HOLD)) == 0;
		remember(strip, &phases[i]);
	}
	free(phases);
	strip->rule = phase_rule_named(strip->load.method, strip->phase.name);
	if (strip->rule == NULL)
		return fault_set(fault, FAULT_DAMAGED, "Load %lld stands in a phase \"%s\" that this program does not know.",
		                 (long long)strip->load.id, strip->phase.name);
	strip->hold_across_restart = strip->rule->name == PHASE_HOLD &&
	                             !moment_same_boot(&strip->phase.began, &now);
	return true;
}

static bool fill_strip(struct kitchen *kitchen, struct strip *strip, const struct log_load *load,
                       struct fault *fault)
{
	strip->has_load = true;
	strip->load = *load;
	return read_phases(kitchen, strip, fault) && read_jars(kitchen, strip, fault);
}

/* Canners first, each with the load it holds; then the loads on the rack. */
static bool arrange(struct kitchen *kitchen, struct strip *strips,
                    const struct log_station *stations, size_t station_count,
                    const struct log_load *loads, size_t load_count, struct fault *fault)
{
	size_t used = station_count;

	for (size_t i = 0; i < station_count; i++)
		strips[i].station = stations[i];
	for (size_t i = 0; i < load_count; i++) {
		struct strip *strip = NULL;

		for (size_t s = 0; s < station_count && loads[i].place == PLACE_CANNER; s++)
			if (stations[s].id == loads[i].station_id)
				strip = &strips[s];
		if (strip == NULL) {
			strip = &strips[used++];
			if (!log_station_get(kitchen->log, loads[i].station_id, &strip->station, fault))
				return false;
		}
		if (!fill_strip(kitchen, strip, &loads[i], fault))
			return false;
	}
	kitchen->board.canners = station_count;
	kitchen->board.racked = used - station_count;
	return true;
}

static bool read_strips(struct kitchen *kitchen, struct fault *fault)
{
	struct log_station *stations = NULL;
	struct log_load *loads = NULL;
	struct strip *strips = NULL;
	size_t station_count = 0;
	size_t load_count = 0;
	bool done = false;

	if (!log_stations(kitchen->log, &stations, &station_count, fault) ||
	    !log_loads_open(kitchen->log, &loads, &load_count, fault))
		goto out;
	strips = calloc(station_count + load_count + 1, sizeof(*strips));
	if (strips == NULL) {
		fault_set(fault, FAULT_MEMORY, "There is no memory left for the board.");
		goto out;
	}
	if (!arrange(kitchen, strips, stations, station_count, loads, load_count, fault))
		goto out;
	free(kitchen->strips);
	kitchen->strips = strips;
	kitchen->board.strips = strips;
	strips = NULL;
	done = true;
out:
	free(strips);
	free(stations);
	free(loads);
	return done;
}

static void read_boil(struct board *board)
{
	const struct log_house *house = &board->house;
	double barometer_kpa = house->barometer_pa > 0 ? house->barometer_pa / 1000.0 : (double)NAN;
	double measured_c = house->measured_boil_mc > 0 ? house->measured_boil_mc / 1000.0 : (double)NAN;

	board->boil_known = boil_here(&house->elevation, barometer_kpa, measured_c, &board->boil, NULL);
}

static bool read_board(struct kitchen *kitchen, int64_t day, struct fault *fault)
{
	struct log_jar *fates;
	size_t fate_count;

	if (!log_house_get(kitchen->log, &kitchen->board.house, fault) || !read_strips(kitchen, fault) ||
	    !log_jars_made_between(kitchen->log, day, day + DAY_MS + DAY_MS / 8, &kitchen->board.jars_today, fault) ||
	    !log_jars_with_open_fate(kitchen->log, &fates, &fate_count, fault))
		return false;
	free(kitchen->fates);
	kitchen->fates = fates;
	kitchen->board.fates = fates;
	kitchen->board.fate_count = fate_count;
	kitchen->day_start_ms = day;
	read_boil(&kitchen->board);
	return true;
}

bool kitchen_refresh(struct kitchen *kitchen, bool force, struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	int64_t day = clock_day_start(now.wall_ms);

	if (!log_changed_elsewhere(kitchen->log) && !force && day == kitchen->day_start_ms)
		return true;
	/* Rows read one after the other may not fit together when another terminal
	 * writes in between; then they are read once more. */
	for (int again = 0; again < READ_AGAIN; again++)
		if (read_board(kitchen, day, fault))
			return true;
		else if (!log_changed_elsewhere(kitchen->log))
			return false;
	return read_board(kitchen, day, fault);
}

/* --- clocks of a strip ------------------------------------------------------- */

int64_t strip_passed_ms(const struct strip *strip, const struct moment *now)
{
	int64_t passed = moment_between(&strip->phase.began, now);

	return passed > 0 ? passed : 0;
}

const char *strip_title(const struct strip *strip)
{
	return strip->has_load && strip->load.place != PLACE_CANNER ? strip->lot.code : strip->station.name;
}

void strip_face(const struct strip *strip, const struct moment *now, struct face *out)
{
	int64_t passed;

	memset(out, 0, sizeof(*out));
	if (!strip->has_load) {
		out->act = "Free: start a load";
		return;
	}
	passed = strip_passed_ms(strip, now);
	out->timed = strip->phase.required_ms > 0;
	out->passed_s = passed / 1000;
	out->left_s = moment_seconds_left(strip->phase.required_ms, passed);
	out->due = out->timed && passed >= strip->phase.required_ms;
	out->ringing = out->due && strip->phase.acknowledged_wall_ms == 0;
	out->alarm = strip->rule->alarm;
	out->act = out->due ? strip->rule->due : strip->rule->act;
	if (strip->rule->name == PHASE_SEAL_CHECK && strip->load.verdict == VERDICT_NOT_VALID)
		out->act = "Process NOT VALID: give every jar a fate now";
}

int64_t strip_urgency(const struct strip *strip, const struct moment *now)
{
	struct face face;
	int64_t base = INT64_C(1) << 40;

	strip_face(strip, now, &face);
	if (!strip->has_load)
		return 3 * base;
	if (face.ringing)
		return -base * face.alarm + face.left_s;
	if (face.timed)
		return face.due && strip->load.place == PLACE_CANNER ? face.left_s - base / 2 : face.left_s;
	/* Waiting for a person: after every running clock, longest wait first. */
	return (strip->load.place == PLACE_CANNER ? base : 2 * base) - face.passed_s;
}

int64_t strip_seal_overdue_ms(const struct strip *strip)
{
	if (!strip->has_load || strip->load.process_ended_wall_ms == 0 || strip->load.place != PLACE_RACK)
		return 0;
	return strip->load.process_ended_wall_ms + SEAL_OVERDUE_MS;
}

/* --- acts ------------------------------------------------------------------- */

/* An act writes back rows it took from the board.  Asked while nobody else can
 * write: had another terminal written since they were read, its work would be lost. */
static bool board_is_current(struct kitchen *kitchen, struct fault *fault)
{
	if (!log_changed_elsewhere(kitchen->log))
		return true;
	log_abandon(kitchen->log);
	return kitchen_refresh(kitchen, true, fault) &&
	       fault_set(fault, FAULT_STALE, "Another terminal has just written in this log. Look again.");
}

bool act_begin(struct act *act, struct kitchen *kitchen, const char *verb, int64_t station_id,
               int64_t load_id, struct fault *fault)
{
	memset(act, 0, sizeof(*act));
	act->kitchen = kitchen;
	act->entry.at = kitchen_now(kitchen);
	act->entry.station_id = station_id;
	act->entry.load_id = load_id;
	text_copy(act->entry.verb, sizeof(act->entry.verb), verb);
	text_copy(act->entry.who, sizeof(act->entry.who), kitchen->who);
	return log_begin(kitchen->log, fault) && board_is_current(kitchen, fault);
}

bool act_commit(struct act *act, struct fault *fault, const char *format, ...)
{
	struct text sentence = TEXT_OVER(act->entry.sentence);
	va_list args;

	va_start(args, format);
	text_addv(&sentence, format, args);
	va_end(args);
	if (!log_commit(act->kitchen->log, &act->entry, fault))
		return false;
	return kitchen_refresh(act->kitchen, true, fault);
}

bool act_fail(struct act *act)
{
	log_abandon(act->kitchen->log);
	return false;
}

const struct strip *kitchen_strip(const struct kitchen *kitchen, int64_t load_id,
                                  struct fault *fault)
{
	const struct board *board = &kitchen->board;

	for (size_t i = 0; i < board->canners + board->racked; i++)
		if (board->strips[i].has_load && board->strips[i].load.id == load_id)
			return &board->strips[i];
	fault_set(fault, FAULT_STALE, "That load is no longer on the board.");
	return NULL;
}

const struct strip *kitchen_strip_at(const struct kitchen *kitchen, int64_t load_id,
                                     int64_t phase_id, struct fault *fault)
{
	const struct strip *strip = kitchen_strip(kitchen, load_id, fault);

	if (strip != NULL && strip->phase.id != phase_id) {
		fault_set(fault, FAULT_STALE, "%s has already moved on to \"%s\". Look again.",
		          strip_title(strip), strip->rule->words);
		return NULL;
	}
	return strip;
}

/* --- undo -------------------------------------------------------------------- */

/* A clock that was broken is never joined together again over a gap nobody
 * watched, and an undone start is not brought back with its old time: only a
 * slip of the finger, soon noticed, is taken back. */
static bool too_late_to_join(const struct kitchen *kitchen, const struct log_entry *last, bool redo,
                             struct fault *fault)
{
	struct moment now = kitchen_now(kitchen);
	char hour[8];

	if ((!last->breaks_hold && !redo) || moment_between(&last->at, &now) <= BREAK_UNDO_MS)
		return false;
	clock_words_hour(last->at.wall_ms, hour, sizeof(hour));
	if (redo)
		fault_set(fault, FAULT_REFUSED,
		          "That was undone at %s, more than 2 min ago; its clock is not brought back. Press the step again.",
		          hour);
	else
		fault_set(fault, FAULT_REFUSED,
		          "That clock was ended at %s, more than 2 min ago; it is not joined together again.",
		          hour);
	return true;
}

/* The sentence of the act itself, without the "Undone: " of its undo. */
static const char *bare_sentence(const char *sentence)
{
	static const char *const prefixes[] = { UNDONE, DONE_AGAIN };

	for (size_t i = 0; i < sizeof(prefixes) / sizeof(prefixes[0]); i++)
		if (strncmp(sentence, prefixes[i], strlen(prefixes[i])) == 0)
			return sentence + strlen(prefixes[i]);
	return sentence;
}

/* What the acts of the house refuse must not come in by the back door.  An undo
 * or a redo does not say what it was about: it waits too. */
static bool may_change_house(const struct kitchen *kitchen, const struct log_entry *last,
                             struct fault *fault)
{
	static const char *const needs_empty[] = { "elevation", "edit_canner", "house", "undo", "redo" };

	if (last->load_id != 0 || last->station_id != 0)
		return true;
	if (strcmp(last->verb, "practice") == 0)
		return fault_set(fault, FAULT_REFUSED, "A practice log stays one; make a new log for real work.");
	for (size_t i = 0; i < sizeof(needs_empty) / sizeof(needs_empty[0]); i++)
		if (strcmp(last->verb, needs_empty[i]) == 0)
			return canners_are_empty(kitchen, "house", fault);
	return true;
}

static bool take_back(struct kitchen *kitchen, int64_t station_id, int64_t load_id, bool redo,
                      char *said, size_t said_size, struct fault *fault)
{
	struct log_entry last;
	struct log_entry entry = { .at = kitchen_now(kitchen) };
	struct text sentence = TEXT_OVER(entry.sentence);

	if (!board_is_current(kitchen, fault))
		return false;
	if (!log_last_act(kitchen->log, station_id, load_id, redo, &last, fault))
		return fault_set(fault, FAULT_MISSING, redo ? "There is nothing to do again here."
		                                            : "There is nothing to undo here.");
	if (too_late_to_join(kitchen, &last, redo, fault) || !may_change_house(kitchen, &last, fault))
		return false;
	entry.station_id = last.station_id;
	entry.load_id = last.load_id;
	entry.breaks_hold = last.breaks_hold;
	text_copy(entry.verb, sizeof(entry.verb), redo ? "redo" : "undo");
	text_copy(entry.who, sizeof(entry.who), kitchen->who);
	text_add(&sentence, "%s%s", redo ? DONE_AGAIN : UNDONE, bare_sentence(last.sentence));
	if (!log_undo(kitchen->log, last.id, &entry, fault))
		return false;
	text_copy(said, said_size, entry.sentence);
	return kitchen_refresh(kitchen, true, fault);
}

bool kitchen_undo(struct kitchen *kitchen, int64_t station_id, int64_t load_id, char *said,
                  size_t said_size, struct fault *fault)
{
	return take_back(kitchen, station_id, load_id, false, said, said_size, fault);
}

bool kitchen_redo(struct kitchen *kitchen, int64_t station_id, int64_t load_id, char *said,
                  size_t said_size, struct fault *fault)
{
	return take_back(kitchen, station_id, load_id, true, said, said_size, fault);
}
