#include "kitchen/canner/aside.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/act/act.h"
#include "kitchen/canner/canner.h"
#include "log/journal/acts.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"

const char *aside_done_words(enum aside what)
{
	static const char *const words[] = {
		[ASIDE_EATEN] = "eaten",
		[ASIDE_FROZEN] = "in the freezer",
		[ASIDE_BINNED] = "thrown out",
	};
	static_assert(sizeof(words) / sizeof(words[0]) == ASIDE_COUNT, "words for everything done");

	return (unsigned)what < ASIDE_COUNT ? words[what] : "?";
}

static bool is_frozen(const struct log_jar *jar)
{
	return jar->fate == FATE_FREEZER && jar->fate_done_wall_ms != 0;
}

const char *aside_words(const struct log_jar *jar, int64_t *at)
{
	*at = is_frozen(jar) ? jar->fate_done_wall_ms : jar->fate_by_wall_ms;
	switch (jar->fate) {
	case FATE_FRIDGE: return "in the fridge, eat by";
	case FATE_FREEZER:
		return is_frozen(jar) ? "in the freezer since"
		       : *at != 0     ? "into the freezer by"
		                      : "into the freezer now";
	case FATE_REPROCESS: return *at != 0 ? "to be processed again by" : "to be processed again now";
	default: return *at != 0 ? "to be thrown out by" : "to be thrown out now";
	}
}

void aside_words_near(const struct log_jar *jar, int64_t now_wall_ms, char *buffer, size_t size)
{
	int64_t at;
	const char *words = aside_words(jar, &at);
	char hour[40] = "";

	if (at != 0)
		clock_words_near(at, now_wall_ms, hour, sizeof(hour));
	(void)snprintf(buffer, size, "%s%s%s", words, at != 0 ? " " : "", hour);
}

const char *aside_to_do(enum jar_fate fate)
{
	static const char *const words[] = {
		[FATE_NONE] = "decide",       [FATE_FRIDGE] = "eat",
		[FATE_FREEZER] = "freeze",    [FATE_REPROCESS] = "process again",
		[FATE_DISCARD] = "throw out",
	};
	static_assert(sizeof(words) / sizeof(words[0]) == FATE_COUNT, "words for every fate");

	return (unsigned)fate < FATE_COUNT ? words[fate] : "?";
}

void aside_advice(enum jar_fate fate, const struct log_lot *lot, int64_t by_wall_ms, int64_t now_wall_ms, char *buffer,
                  size_t size)
{
	char hour[40] = "";

	if (by_wall_ms != 0)
		clock_words_near(by_wall_ms, now_wall_ms, hour, sizeof(hour));
	(void)snprintf(buffer, size, "%s%s%s%s", jar_fate_advice(fate, lot),
	               by_wall_ms == 0       ? ""
	               : fate == FATE_FRIDGE ? " Eat by "
	                                     : " By ",
	               hour, by_wall_ms == 0 ? "" : ".");
}

bool aside_is_late(const struct log_jar *jar, int64_t now_wall_ms)
{
	return !is_frozen(jar) && jar->fate_by_wall_ms != 0 && jar->fate_by_wall_ms <= now_wall_ms;
}

size_t asides_waiting(const struct board *board)
{
	size_t count = 0;

	while (count < board->fate_count && !is_frozen(&board->fates[count]))
		count++;
	return count;
}

bool aside_usual(const struct log_jar *jar, enum aside *what)
{
	*what = jar->fate == FATE_FRIDGE || is_frozen(jar) ? ASIDE_EATEN
	        : jar->fate == FATE_FREEZER                ? ASIDE_FROZEN
	                                                   : ASIDE_BINNED;
	return jar->fate != FATE_REPROCESS;
}

static bool alike(const struct log_jar *a, const struct log_jar *b)
{
	return a->lot_id == b->lot_id && a->load_id == b->load_id && a->fate == b->fate &&
	       a->fate_by_wall_ms == b->fate_by_wall_ms && is_frozen(a) == is_frozen(b);
}

int asides_told(const struct board *board, size_t first)
{
	int jars = 0;

	for (size_t i = 0; i < board->fate_count; i++) {
		bool same = alike(&board->fates[i], &board->fates[first]);

		if (same && i < first)
			return 0;
		jars += same;
	}
	return jars;
}

/* A jar belongs to its load, one that never got into a canner to its batch, if it has one. */
static bool jar_belongs_to(struct kitchen *kitchen, const struct log_jar *jar, struct log_subject *subject,
                           int64_t *station_id, struct fault *fault)
{
	struct log_batch batch;
	struct log_load load;

	if (jar->load_id != 0) {
		*subject = (struct log_subject){ SUBJECT_LOAD, jar->load_id };
		if (!log_load_get(kitchen->log, jar->load_id, &load, fault))
			return false;
		*station_id = load.station_id;
		return true;
	}
	if (jar->batch_id == 0) { /* imported: nothing is known of where it was filled */
		*subject = (struct log_subject){ SUBJECT_HOUSE, 0 };
		*station_id = 0;
		return true;
	}
	*subject = (struct log_subject){ SUBJECT_BATCH, jar->batch_id };
	if (!log_batch_get(kitchen->log, jar->batch_id, &batch, fault))
		return false;
	*station_id = batch.station_id;
	return true;
}

/* --- what may be done --------------------------------------------------------------------- */

static bool is_open(const struct log_jar *jar, const struct log_lot *lot, struct fault *fault)
{
	if (jar->fate != FATE_NONE && jar->gone_why == GONE_NOT && (jar->fate_done_wall_ms == 0 || is_frozen(jar)))
		return true;
	return fault_set(fault, FAULT_REFUSED,
	                 "There is nothing left to do for jar %d of "
	                 "%s.",
	                 jar->place_in_load, lot->code);
}

static bool may_be_frozen(const struct log_jar *jar, struct fault *fault)
{
	if (is_frozen(jar))
		return fault_set(fault, FAULT_REFUSED, "It is in the freezer already.");
	if (jar->siphoning == SIPHON_OVER_HALF)
		return fault_set(fault, FAULT_REFUSED,
		                 "Over half the liquid is gone: fridge, eat in 2-3 days, or discard.");
	return true;
}

static bool may_be_done(const struct kitchen *kitchen, const struct log_jar *jar, const struct log_lot *lot,
                        const struct aside_order *order, int64_t now, struct fault *fault)
{
	char hour[40];

	if (!is_open(jar, lot, fault))
		return false;
	if (order->what == ASIDE_BINNED)
		return true;
	if (jar->fate != FATE_FRIDGE && jar->fate != FATE_FREEZER)
		return fault_set(fault, FAULT_MISUSE,
		                 "It is not in the fridge or the freezer: process it again or throw it out.");
	if (order->what == ASIDE_FROZEN && !may_be_frozen(jar, fault))
		return false;
	if (order->what == ASIDE_EATEN && jar->fate == FATE_FREEZER && !is_frozen(jar))
		return fault_set(fault, FAULT_REFUSED,
		                 "It is not in the freezer yet: say that first, or throw it out.");
	if (aside_is_late(jar, now) && !order->in_time) {
		clock_words_near(jar->fate_by_wall_ms, now, hour, sizeof(hour));
		return fault_set(fault, FAULT_REFUSED, "Too late: its time was over %s. Throw it out, do not taste.",
		                 hour);
	}
	return order->what != ASIDE_EATEN || lot_may_be_eaten(kitchen, lot, fault);
}

/* --- acts ----------------------------------------------------------------------------------- */

static void change(struct log_jar *jar, enum aside what, int64_t now)
{
	if (what == ASIDE_EATEN) {
		jar->gone_why = GONE_USED;
		jar->gone_wall_ms = now;
	} else {
		jar->fate = what == ASIDE_FROZEN ? FATE_FREEZER : FATE_DISCARD;
		jar->fate_by_wall_ms = 0;
	}
	if (!is_frozen(jar) || what == ASIDE_BINNED)
		jar->fate_done_wall_ms = now;
}

/* Every jar on the list that `one` stands for. */
static bool put_done(struct act *act, const struct log_jar *one, const struct aside_order *order, int *done,
                     struct fault *fault)
{
	const struct board *board = &act->kitchen->board;

	*done = 0;
	for (size_t i = 0; i < board->fate_count; i++) {
		struct log_jar jar = board->fates[i];

		if (jar.id != one->id && !(order->like && alike(&jar, one)))
			continue;
		/* One among its like may have lost its liquid. */
		if (order->what == ASIDE_FROZEN && !may_be_frozen(&jar, fault))
			return false;
		change(&jar, order->what, act->entry.at.wall_ms);
		if (!log_put_jar(act->kitchen->log, &jar, fault))
			return false;
		(*done)++;
	}
	return true;
}

/* Reachable long after the load is shelved, so it does not ask the strips. */
bool kitchen_aside(struct kitchen *kitchen, const struct aside_order *order, struct fault *fault)
{
	struct log_subject subject;
	struct log_jar jar;
	struct log_lot lot;
	int64_t station_id;
	struct act act;
	int done;

	if (!log_jar_get(kitchen->log, order->jar_id, &jar, fault) ||
	    !jar_belongs_to(kitchen, &jar, &subject, &station_id, fault) ||
	    !log_lot_get(kitchen->log, jar.lot_id, &lot, fault) ||
	    !may_be_done(kitchen, &jar, &lot, order, kitchen_now(kitchen).wall_ms, fault) ||
	    !act_begin(&act, kitchen, VERB_FATE_DONE, station_id, fault))
		return false;
	act_about(&act, subject);
	if (!put_done(&act, &jar, order, &done, fault))
		return act_fail(&act);
	kitchen->fate_done = subject;
	act_says_text(&act, lot.code);
	act_says_number(&act, done);
	act_says_text(&act, aside_done_words(order->what));
	act_says_number(&act, order->in_time);
	return act_commit(&act, fault);
}

bool kitchen_undo_fate(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault)
{
	struct log_entry last;

	/* Never the act before it: shelving is not taken back from here. */
	if (kitchen->fate_done.id == 0 || !log_last_act(kitchen->log, kitchen->fate_done, false, &last, NULL) ||
	    entry_verb(&last) != VERB_FATE_DONE)
		return fault_set(fault, FAULT_MISSING, "Nothing to undo.");
	return kitchen_undo(kitchen, kitchen->fate_done, said, said_size, fault);
}
