#include "kitchen/exchange/calendar.h"
#include "base/count.h"
#include "base/with_room.h"
#include "kitchen/dryer/dryer.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "kitchen/act/act.h"
#include "kitchen/canner/aside.h"
#include "kitchen/canner/canner.h"
#include "kitchen/exchange/labels.h"
#include "log/query/tables.h"
#include "log/tables/canner.h"
#include "log/tables/pantry.h"

#define HOUR_MINUTES 60
#define DAY_MINUTES (24 * HOUR_MINUTES)
#define BEST_BY_NOTICE_DAYS 14 /* time to plan the meals; common practice, no source */

struct gathering {
	struct kitchen *kitchen;
	struct calendar_event *rows;
	size_t count;
	size_t room;
	int64_t birth_ms;
};

static struct calendar_event *new_event(struct gathering *all, struct fault *fault)
{
	struct calendar_event *rows =
	    with_room(all->rows, all->count, &all->room, sizeof(*rows), "the calendar", fault);

	if (rows == NULL)
		return NULL;
	all->rows = rows;
	memset(&all->rows[all->count], 0, sizeof(*all->rows));
	return &all->rows[all->count++];
}

/* The beginning of the journal tells this log from every other. */
static void set_uid(const struct gathering *all, struct calendar_event *event, const char *kind, const char *what)
{
	(void)snprintf(event->uid, sizeof(event->uid), "%s-%s.%" PRId64 "@stillroom.invalid", kind, what,
	               all->birth_ms);
}

static void set_summary(const struct gathering *all, struct calendar_event *event, const char *what,
                        const struct log_lot *lot)
{
	char product[NAME_MAX_BYTES];
	char code[NAME_MAX_BYTES];

	utf8_clean(product, sizeof(product), lot->product);
	utf8_clean(code, sizeof(code), lot->code);
	(void)snprintf(event->summary, sizeof(event->summary), "%s%s: %s (lot %s)",
	               all->kitchen->board.house.practice_speed > 0 ? "PRACTICE: " : "", what, product, code);
}

/* --- seal checks ------------------------------------------------------------------------ */

static bool add_seal_check(struct gathering *all, const struct strip *strip, struct fault *fault)
{
	const struct strip_load *in = strip_load(strip);
	const struct phase_rule *rule = phase_rule_of(strip->station.kind, PHASE_SEAL_CHECK);
	int64_t overdue = strip_seal_overdue_ms(strip);
	struct calendar_event *event;
	char what[96];

	if (overdue == 0)
		return true;
	event = new_event(all, fault);
	if (event == NULL)
		return false;
	(void)snprintf(what, sizeof(what), "load-%" PRId64, in->row.id);
	set_uid(all, event, "seal-check", what);
	(void)snprintf(what, sizeof(what), "Check the seals of %s", count_words(in->jars, "jar").words);
	set_summary(all, event, what, &strip->lot);
	(void)text_copy(event->description, sizeof(event->description), rule != NULL ? rule->act : "");
	event->start_wall_ms = strip->phase.began.wall_ms + (strip->rule->name == PHASE_COOLING ? COOLING_MS : 0);
	event->end_wall_ms = overdue > event->start_wall_ms ? overdue : 0;
	return true;
}

static bool add_seal_checks(struct gathering *all, struct fault *fault)
{
	const struct board *board = &all->kitchen->board;

	for (size_t i = board->stations; i < board->stations + board->racked; i++)
		if (!add_seal_check(all, &board->strips[i], fault))
			return false;
	return true;
}

/* --- fates ------------------------------------------------------------------------------ */

/* One event for all that `first` stands for; it is the first of them in the list. */
static bool add_fate(struct gathering *all, const struct log_jar *first, int jars, struct fault *fault)
{
	struct calendar_event *event = new_event(all, fault);
	struct log_lot lot;
	char what[96];
	int64_t at;

	if (event == NULL || !log_lot_get(all->kitchen->log, first->lot_id, &lot, fault))
		return false;
	(void)snprintf(what, sizeof(what), "jar-%" PRId64, first->id);
	set_uid(all, event, "fate", what);
	(void)snprintf(what, sizeof(what), "%s %s now", count_words(jars, "jar").words, aside_words(first, &at));
	set_summary(all, event, what, &lot);
	(void)text_copy(event->description, sizeof(event->description), jar_fate_sourced(first->fate, &lot));
	event->start_wall_ms = at;
	event->alarm_minutes = first->fate == FATE_FRIDGE ? 12 * HOUR_MINUTES : HOUR_MINUTES;
	return true;
}

static bool add_fates(struct gathering *all, struct fault *fault)
{
	const struct board *board = &all->kitchen->board;
	const struct log_jar *fates = board->fates;

	for (size_t i = 0; i < board->fate_count; i++) {
		int jars = fates[i].fate_by_wall_ms == 0 ? 0 : asides_told(board, i); /* 0: no deadline */

		if (jars > 0 && !add_fate(all, &fates[i], jars, fault))
			return false;
	}
	return true;
}

/* --- best by ---------------------------------------------------------------------------- */

/* Jars that nobody eats are best by no day. */
static int64_t eatable(const struct log_lot_kept *kept, const struct log_pantry_part *blocked, size_t count)
{
	int64_t jars = kept->jars;

	for (size_t i = 0; i < count; i++)
		jars -= blocked[i].lot_id == kept->lot.id ? blocked[i].jars : 0;
	return jars;
}

static bool add_best_by(struct gathering *all, const struct log_lot_kept *kept, int64_t jars, struct fault *fault)
{
	struct calendar_event *event = new_event(all, fault);
	char code[NAME_MAX_BYTES];
	bool dried = lot_is_dried(&kept->lot);
	char what[96];

	if (event == NULL)
		return false;
	utf8_clean(code, sizeof(code), kept->lot.code);
	set_uid(all, event, "best-by", code);
	(void)snprintf(what, sizeof(what), "Best by today, %lld %s", (long long)jars, kept_noun(jars, !dried, dried));
	set_summary(all, event, what, &kept->lot);
	(void)text_copy(event->description, sizeof(event->description),
	                dried
	                    ? "Look at it: damp but sound, dry it again; molded, throw it out. It keeps longer cool "
	                      "(" DRYING_KEEP_SOURCE ")."
	                    : "Use within a year of making (NCSU-472). Look before you open; never taste to find out.");
	clock_words_date(lot_best_by_ms(all->kitchen, &kept->lot), event->date, sizeof(event->date));
	event->alarm_minutes = BEST_BY_NOTICE_DAYS * DAY_MINUTES;
	return true;
}

static bool add_best_bys(struct gathering *all, struct fault *fault)
{
	struct log_pantry_part *blocked = NULL;
	struct log_lot_kept *kept = NULL;
	size_t blocked_count;
	size_t count;
	bool done = log_lots_kept(all->kitchen->log, &kept, &count, fault) &&
	            log_pantry_blocked(all->kitchen->log, &blocked, &blocked_count, fault);

	for (size_t i = 0; done && i < count; i++) {
		int64_t jars = eatable(&kept[i], blocked, blocked_count);

		done = jars <= 0 || add_best_by(all, &kept[i], jars, fault);
	}
	free(kept);
	free(blocked);
	return done;
}

bool calendar_events(struct kitchen *kitchen, struct calendar_event **rows, size_t *count, struct fault *fault)
{
	struct gathering all = { .kitchen = kitchen };
	bool done = log_birth(kitchen->log, &all.birth_ms, fault) && add_seal_checks(&all, fault) &&
	            add_fates(&all, fault) && add_best_bys(&all, fault);

	if (done && all.count == 0)
		done = fault_set(fault, FAULT_REFUSED,
		                 "Nothing to remind you of: no seal check, no deadline, no jars on the shelf.");
	if (!done) {
		free(all.rows);
		all.rows = NULL;
		all.count = 0;
	}
	*rows = all.rows;
	*count = all.count;
	return done;
}
