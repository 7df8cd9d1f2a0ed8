#include "kitchen/act/kitchen.h"
#include "kitchen/canner/verdict.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/plan/plan_private.h"

#define MINUTE_MS (INT64_C(60) * 1000)
#define READ_AGAIN 3
#define WALL_MOVED_MS 1000 /* less is a clock kept right, not one set */
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
	kitchen->planning = planning_new();
	if (kitchen->planning == NULL) {
		kitchen_close(kitchen);
		return fault_set(fault, FAULT_MEMORY, "There is no memory left for the day plan.");
	}
	if (!kitchen_refresh(kitchen, true, fault) ||
	    !judge_anew(kitchen, &kitchen->anew, &kitchen->anew_count, fault)) {
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
	free(kitchen->waiting);
	free(kitchen->boxes);
	free(kitchen->supplies);
	free(kitchen->asides);
	free(kitchen->recalls);
	free(kitchen->anew);
	free(kitchen->spoiled);
	free(kitchen->tallies);
	free(kitchen->own);
	free(kitchen->own_recipes);
	free(kitchen->book);
	planning_free(kitchen->planning);
	free(kitchen);
}

struct moment kitchen_now(const struct kitchen *kitchen)
{
	return clock_now(&kitchen->clock);
}

bool still_stands(const struct kitchen *kitchen, const struct moment *at, uint64_t reads, int64_t again_ms,
                  const struct moment *now)
{
	int64_t passed = moment_between(at, now);

	return reads == kitchen->reads && moment_same_boot(at, now) && passed >= 0 && passed < again_ms &&
	       llabs(moment_wall_step(at, now)) < WALL_MOVED_MS;
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

/* --- clocks of a strip ------------------------------------------------------- */

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

/* Who acts: the one who has the station, else whoever has the board. */
static const char *who_acts(const struct kitchen *kitchen, int64_t station_id)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct log_station *station = &kitchen->board.strips[i].station;

		if (station->id == station_id && station->who[0] != '\0')
			return station->who;
	}
	return kitchen->who;
}

bool act_begin(struct act *act, struct kitchen *kitchen, const char *verb, int64_t station_id, struct fault *fault)
{
	memset(act, 0, sizeof(*act));
	act->kitchen = kitchen;
	act->entry.at = kitchen_now(kitchen);
	act->entry.station_id = station_id;
	text_copy(act->entry.verb, sizeof(act->entry.verb), verb);
	text_copy(act->entry.who, sizeof(act->entry.who), who_acts(kitchen, station_id));
	return log_begin(kitchen->log, fault) && board_is_current(kitchen, fault);
}

void act_about(struct act *act, struct log_subject subject)
{
	switch (subject.kind) {
	case SUBJECT_LOAD: act->entry.load_id = subject.id; break;
	case SUBJECT_RUN: act->entry.run_id = subject.id; break;
	case SUBJECT_BATCH: act->entry.batch_id = subject.id; break;
	case SUBJECT_STATION: act->entry.station_id = subject.id; break;
	case SUBJECT_HOUSE:
	case SUBJECT_KIND_COUNT: break;
	}
}

bool act_commit(struct act *act, struct fault *fault, const char *format, ...)
{
	struct text sentence = TEXT_OVER(act->entry.sentence);
	va_list args;

	va_start(args, format);
	text_addv(&sentence, format, args);
	va_end(args);
	if (!judge_touched(act, fault)) {
		log_abandon(act->kitchen->log);
		return false;
	}
	return log_commit(act->kitchen->log, &act->entry, fault) && kitchen_refresh(act->kitchen, true, fault);
}

bool act_fail(struct act *act)
{
	log_abandon(act->kitchen->log);
	return false;
}

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

/* --- undo -------------------------------------------------------------------- */

/* A clock that was broken is never joined together again over a gap nobody
 * watched, and an undone start is not brought back with its old time: only a
 * slip of the finger, soon noticed, is taken back. */
static bool too_late_to_join(const struct kitchen *kitchen, const struct log_entry *last, bool redo,
                             struct fault *fault)
{
	struct log_entry first = *last;
	struct moment now = kitchen_now(kitchen);
	char hour[8];

	/* Counted from the moment the clock was first broken, however often it was taken
	 * back and done again: otherwise each pair of keys would buy two minutes more. */
	if (last->breaks_hold && !redo && !log_root_act(kitchen->log, last->id, &first, fault))
		return true;
	if ((!last->breaks_hold && !redo) || moment_between(&first.at, &now) <= BREAK_UNDO_MS)
		return false;
	clock_words_hour(first.at.wall_ms, hour, sizeof(hour));
	if (redo)
		fault_set(
		    fault, FAULT_REFUSED,
		    "That was undone at %s, more than 2 min ago; its clock is not brought back. Press the step again.",
		    hour);
	else
		fault_set(fault, FAULT_REFUSED,
		          "That clock was ended at %s, more than 2 min ago; it is not joined together again.", hour);
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
static bool may_change_house(const struct kitchen *kitchen, const struct log_entry *last, struct fault *fault)
{
	static const char *const needs_empty[] = { "elevation", "edit_station", "house", "undo", "redo" };

	if (last->load_id != 0 || last->station_id != 0 || last->run_id != 0 || last->batch_id != 0)
		return true;
	if (strcmp(last->verb, "practice") == 0)
		return fault_set(fault, FAULT_REFUSED, "A practice log stays one; make a new log for real work.");
	for (size_t i = 0; i < sizeof(needs_empty) / sizeof(needs_empty[0]); i++)
		if (strcmp(last->verb, needs_empty[i]) == 0)
			return canners_are_empty(kitchen, "house", fault);
	return true;
}

static bool take_back(struct kitchen *kitchen, struct log_subject subject, bool redo, char *said, size_t said_size,
                      struct fault *fault)
{
	struct log_entry last;
	struct act act = { .kitchen = kitchen, .entry = { .at = kitchen_now(kitchen) } };
	struct text sentence = TEXT_OVER(act.entry.sentence);

	if (!board_is_current(kitchen, fault))
		return false;
	if (!log_last_act(kitchen->log, subject, redo, &last, fault))
		return fault_set(fault, FAULT_MISSING,
		                 redo ? "There is nothing to do again here." : "There is nothing to undo here.");
	if (too_late_to_join(kitchen, &last, redo, fault) || !may_change_house(kitchen, &last, fault))
		return false;
	act.entry.station_id = last.station_id;
	act.entry.load_id = last.load_id;
	act.entry.run_id = last.run_id;
	act.entry.batch_id = last.batch_id;
	act.entry.breaks_hold = last.breaks_hold;
	text_copy(act.entry.verb, sizeof(act.entry.verb), redo ? "redo" : "undo");
	text_copy(act.entry.who, sizeof(act.entry.who), who_acts(kitchen, last.station_id));
	text_add(&sentence, "%s%s", redo ? DONE_AGAIN : UNDONE, bare_sentence(last.sentence));
	if (!log_undo_begin(kitchen->log, last.id, &act.entry, fault))
		return false;
	if (!judge_touched(&act, fault))
		return act_fail(&act);
	if (!log_undo_commit(kitchen->log, &act.entry, fault))
		return false;
	text_copy(said, said_size, act.entry.sentence);
	return kitchen_refresh(kitchen, true, fault);
}

bool kitchen_undo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault)
{
	return take_back(kitchen, subject, false, said, said_size, fault);
}

bool kitchen_redo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault)
{
	return take_back(kitchen, subject, true, said, said_size, fault);
}
