/*
 * drying_acts.c - what the acts know of dryings: off the trays, looks and shakes.
 */
#include "kitchen/board/board_private.h"
#include "kitchen/step/kind_acts.h"
#include "log/tables/dryer.h"

static bool move_on(struct act *act, const struct strip *strip, const struct phase_rule *next, struct fault *fault)
{
	struct log_drying drying = strip_drying(strip)->row;

	drying.open = next != NULL;
	drying.at_station = next != NULL && next->place == PLACE_STATION;
	return log_put_drying(act->kitchen->log, &drying, fault);
}

/* Its own dryer where that is free, else another one; NULL: all of them dry something. */
static const struct strip *free_dryer(const struct kitchen *kitchen, int64_t own_id)
{
	const struct strip *found = kitchen_free_station(kitchen, own_id, NULL);

	for (size_t i = 0; found == NULL && i < kitchen->board.stations; i++)
		if (kitchen->board.strips[i].station.kind == STATION_DRYER &&
		    kitchen->board.strips[i].content == STRIP_EMPTY)
			found = &kitchen->board.strips[i];
	return found;
}

/* Out of the conditioning jars it goes on the trays again; damp by the test it never left them. */
static bool fall_back(struct act *act, const struct strip *strip, const struct phase_rule *next, struct fault *fault)
{
	struct log_drying drying = strip_drying(strip)->row;
	const struct strip *dryer;

	if (drying.at_station || next->place != PLACE_STATION)
		return true;
	dryer = free_dryer(act->kitchen, drying.station_id);
	if (dryer == NULL)
		return fault_set(fault, FAULT_REFUSED, "%s is taken: dry it again as soon as it is free.",
		                 strip->station.name);
	drying.station_id = dryer->station.id;
	drying.at_station = true;
	return log_put_drying(act->kitchen->log, &drying, fault);
}

static bool see(struct act *act, const struct strip *strip, struct fault *fault)
{
	struct log_drying drying = strip_drying(strip)->row;

	drying.look = act->entry.at;
	if (strip->rule->name == PHASE_CONDITION)
		drying.shakes++;
	else
		drying.looks++;
	return log_put_drying(act->kitchen->log, &drying, fault);
}

static bool finished(const struct strip *strip, bool sure, struct fault *fault)
{
	(void)sure;
	return fault_set(fault, FAULT_REFUSED, "%s: say how many packages first; 0 is an answer.", strip_title(strip));
}

static const char *words_of(const struct strip *strip, enum exception exception, const struct moment *now)
{
	(void)strip;
	(void)exception;
	(void)now;
	return NULL;
}

static bool except(struct act *act, const struct strip *strip, enum exception exception, int64_t amount,
                   const char *reason, struct fault *fault)
{
	(void)act;
	(void)exception;
	(void)amount;
	(void)reason;
	return fault_set(fault, FAULT_REFUSED, "%s: nothing of the kind happens to it.", strip_title(strip));
}

const struct kind_acts drying_acts = {
	.content = STRIP_DRYING,
	.move_on = move_on,
	.fall_back = fall_back,
	.finished = finished,
	.second_verb = VERB_SEEN,
	.second_seen = see,
	.words = words_of,
	.except = except,
};
