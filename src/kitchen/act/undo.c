/*
 * undo.c - taking an act back, and taking that back.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/verdict.h"
#include "log/journal/acts.h"

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
		    "That was undone at %s, more than 2 min ago; its clock cannot come back. Press the step again.",
		    hour);
	else
		fault_set(fault, FAULT_REFUSED,
		          "That clock was ended at %s, more than 2 min ago; it cannot be rejoined.", hour);
	return true;
}

static bool sets_elevation(enum verb verb)
{
	return verb == VERB_ELEVATION || verb == VERB_ELEVATION_BOILED || verb == VERB_ELEVATION_WRONG;
}

/* What the acts of the house refuse must not come in by the back door, by a redo neither. */
static bool may_change_house(const struct kitchen *kitchen, const struct log_entry *last, bool redo,
                             struct fault *fault)
{
	static const enum verb needs_empty[] = { VERB_EDIT_STATION, VERB_HOUSE_COPIED, VERB_PRACTICE_HOUR };
	enum verb verb = entry_act(last);

	if (last->station_id != 0 || last->work_id != 0)
		return true;
	if (verb == VERB_PRACTICE)
		return fault_set(fault, FAULT_REFUSED,
		                 "A practice log stays a practice log; make a new one for "
		                 "real work.");
	/* Its rows would raise a pressure under a hold that began at less. */
	if (redo && sets_elevation(verb) && !canners_are_empty(kitchen, "elevation", NULL))
		return fault_set(fault, FAULT_REFUSED,
		                 "A canner holds a load: type the elevation again (h), and the load follows it.");
	for (size_t i = 0; i < sizeof(needs_empty) / sizeof(needs_empty[0]); i++)
		if (verb == needs_empty[i])
			return canners_are_empty(kitchen, "house", fault);
	return true;
}

/* The rows are as they were before it, and what runs has to go by the elevation that now
 * stands.  The board is read again, as that is done on it. */
static bool follow_elevation(struct act *act, const struct log_entry *last, struct fault *fault)
{
	struct kitchen *kitchen = act->kitchen;
	struct log_entry first;
	struct fault none = { 0 };

	if (!sets_elevation(entry_act(last)))
		return true;
	if (log_root_act(kitchen->log, last->id, &first, fault) && kitchen_refresh(kitchen, true, fault) &&
	    kitchen->elevation_back(act, &first, fault))
		return true;
	log_abandon(kitchen->log);
	(void)kitchen_refresh(kitchen, true, &none);
	return false;
}

/* A load that runs has moved on since: the same comes of typing the elevation again. */
static void say_type_again(const struct log_entry *last, struct fault *fault)
{
	if (fault != NULL && fault->kind == FAULT_CONFLICT && sets_elevation(entry_act(last)))
		(void)fault_set(fault, FAULT_CONFLICT,
		                "That elevation cannot be undone: a load has moved on since. Type the right one (h): "
		                "the load follows it.");
}

/* `redo`: the entry is an undo, which is taken back. */
static bool take_entry_back(struct kitchen *kitchen, const struct log_entry *last, bool redo, char *said,
                            size_t said_size, struct fault *fault)
{
	struct act act = { .kitchen = kitchen, .entry = { .at = kitchen_now(kitchen) } };
	char sentence[SENTENCE_MAX_BYTES];
	char called[SENTENCE_MAX_BYTES + 2];
	struct text text;
	bool done;

	if (too_late_to_join(kitchen, last, redo, fault) || !may_change_house(kitchen, last, redo, fault))
		return false;
	act.entry.station_id = last->station_id;
	act.entry.work_id = last->work_id;
	act.entry.breaks_hold = last->breaks_hold;
	act_is(&act, redo ? VERB_REDO : VERB_UNDO);
	text_copy(act.entry.who, sizeof(act.entry.who), who_acts(kitchen, last->station_id));
	entry_words(kitchen, last, sentence, sizeof(sentence));
	(void)snprintf(called, sizeof(called), "\"%s\"", sentence);
	if (!log_undo_begin(kitchen->log, last->id, called, &act.entry, fault)) {
		say_type_again(last, fault);
		return false;
	}
	if (!follow_elevation(&act, last, fault))
		return false;
	if (!judge_touched(&act, fault))
		return act_fail(&act);
	if (!log_undo_commit(kitchen->log, &act.entry, fault))
		return false;
	done = kitchen_refresh(kitchen, true, fault);
	entry_words(kitchen, &act.entry, said, said_size);
	text = text_over(said + strlen(said), said_size - strlen(said)); /* what follows of it */
	if (sets_elevation(entry_act(last)))
		kitchen_say_holds(kitchen, &text);
	return done;
}

static bool take_back(struct kitchen *kitchen, struct log_subject subject, bool redo, char *said, size_t said_size,
                      struct fault *fault)
{
	struct log_entry last;

	if (!board_is_current(kitchen, fault))
		return false;
	if (!log_last_act(kitchen->log, subject, redo, &last, fault))
		return fault_set(fault, FAULT_MISSING, redo ? "Nothing to redo." : "Nothing to undo.");
	return take_entry_back(kitchen, &last, redo, said, said_size, fault);
}

int64_t kitchen_newest_act(const struct kitchen *kitchen)
{
	struct log_entry newest;

	return log_newest_entry(kitchen->log, &newest, NULL) ? newest.id : 0;
}

bool kitchen_undo_act(struct kitchen *kitchen, int64_t id, struct fault *fault)
{
	char said[SENTENCE_MAX_BYTES];
	struct log_entry entry;

	return board_is_current(kitchen, fault) && log_entry_get(kitchen->log, id, &entry, fault) &&
	       take_entry_back(kitchen, &entry, entry_verb(&entry) == VERB_UNDO, said, sizeof(said), fault);
}

bool kitchen_undo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault)
{
	return take_back(kitchen, subject, false, said, said_size, fault);
}

/* So many acts of other subjects may stand before it; what is older is nobody's slip. */
#define ABOUT_ACTS_MAX 500

bool kitchen_last_about(const struct kitchen *kitchen, unsigned about, struct log_entry *last)
{
	int64_t before = INT64_MAX;

	for (int i = 0; i < ABOUT_ACTS_MAX && log_house_act_before(kitchen->log, before, last, NULL); i++) {
		if (((unsigned)verb_done_to(entry_act(last)) & about) != 0)
			return true;
		before = last->id;
	}
	return false;
}

bool kitchen_undo_about(struct kitchen *kitchen, unsigned about, char *said, size_t said_size, struct fault *fault)
{
	struct log_entry last;

	if (!board_is_current(kitchen, fault))
		return false;
	if (!kitchen_last_about(kitchen, about, &last))
		return fault_set(fault, FAULT_MISSING, "Nothing to undo.");
	return take_entry_back(kitchen, &last, false, said, said_size, fault);
}

bool kitchen_redo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault)
{
	return take_back(kitchen, subject, true, said, said_size, fault);
}

bool kitchen_acted_later(const struct kitchen *kitchen, struct log_subject one, struct log_subject other)
{
	struct log_entry of_one;
	struct log_entry of_other;

	return log_last_act(kitchen->log, one, false, &of_one, NULL) &&
	       (!log_last_act(kitchen->log, other, false, &of_other, NULL) || of_one.id > of_other.id);
}
