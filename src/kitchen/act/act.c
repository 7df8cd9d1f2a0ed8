#include "kitchen/act/verdict.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "log/file/file.h"
#include "log/journal/acts.h"

void kitchen_set_who(struct kitchen *kitchen, const char *initials)
{
	text_copy(kitchen->who, sizeof(kitchen->who), initials);
}

const char *kitchen_who(const struct kitchen *kitchen)
{
	return kitchen->who;
}

/* --- acts ------------------------------------------------------------------- */

bool board_is_current(struct kitchen *kitchen, struct fault *fault)
{
	if (!log_changed_elsewhere(kitchen->log))
		return true;
	log_abandon(kitchen->log);
	return kitchen_refresh(kitchen, true, fault) &&
	       fault_set(fault, FAULT_STALE, "Another terminal just changed this log. Check the board and try again.");
}

const char *who_acts(const struct kitchen *kitchen, int64_t station_id)
{
	for (size_t i = 0; i < kitchen->board.stations; i++) {
		const struct log_station *station = &kitchen->board.strips[i].station;

		if (station->id == station_id && station->who[0] != '\0')
			return station->who;
	}
	return kitchen->who;
}

bool act_begin(struct act *act, struct kitchen *kitchen, enum verb verb, int64_t station_id, struct fault *fault)
{
	memset(act, 0, sizeof(*act));
	act->kitchen = kitchen;
	act->said = values_over(act->entry.said, sizeof(act->entry.said));
	act->entry.at = kitchen_now(kitchen);
	act->entry.station_id = station_id;
	act_is(act, verb);
	text_copy(act->entry.who, sizeof(act->entry.who), who_acts(kitchen, station_id));
	return log_begin(kitchen->log, fault) && board_is_current(kitchen, fault);
}

void act_is(struct act *act, enum verb verb)
{
	text_copy(act->entry.verb, sizeof(act->entry.verb), verb_stored(verb));
}

void act_says_text(struct act *act, const char *text)
{
	(void)values_add_text(&act->said, text);
}

void act_says_number(struct act *act, int64_t number)
{
	values_add_number(&act->said, number);
}

void act_says_nothing(struct act *act)
{
	act_says_text(act, "");
}

void act_about(struct act *act, struct log_subject subject)
{
	int64_t *id = log_entry_id(&act->entry, subject.kind);

	act->about = subject;
	if (id != NULL)
		*id = subject.id;
}

bool act_commit(struct act *act, struct fault *fault)
{
	assert(verb_has_values(entry_verb(&act->entry), act->entry.said));
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

/* --- undo -------------------------------------------------------------------- */
