/*
 * kinds.h - the kinds of work: what the board knows of a load, a run and a batch, one entry each.
 *
 * Who asks what kind of work it is asks here.  An entry stands in a file of its own
 * (load_kind.c, juicer_kind.c, batch_kind.c); EACH_WORK (log/rows/common.h) lists them.  What its
 * acts do beside is kitchen/step/kind_acts.h, what its keys open screen/board/kind_views.h.
 *
 * A new kind, WORD, touches five files that are not its own:
 *   log/rows/common.h         a line of EACH_WORK.  From it follow SUBJECT_..., STRIP_..., TRACE_...,
 *                             its member of a strip, words, statements, its place in an export, the
 *                             option of `recall`, that undo captures it, and that WORD_kind,
 *                             WORD_phases, WORD_acts, WORD_views and table_of_WORD are asked
 *   log/rows/house.h          its station: a line of EACH_OTHER_STATION, and its word in ANY_STATION
 *   board/phases.h            the names of its phases: lines of EACH_PHASE
 *   board/board.h             its member of the strip's union, given out by a function that says
 *                             NULL when something else is in it
 *   board/each_verb.h         what begins it, and its other acts
 * and has of its own:
 *   schema/log.sql            its words in work.kind, station.kind, work_at and recall.about, and a
 *                             table whose id is the number of its row of `work`; what all kinds have
 *                             in common is in that row alone
 *   log/rows, log/tables      its struct; its descriptor with OF_WORK, `holds`, `lots` and, where they
 *                             are not NULL, `open` and `jars`; its log_put_... by put_work
 *                             (log/query/query.h)
 *   board/WORD_kind.c, WORD_phases.c, step, screen   the entries (juicer_kind.c is the shortest), the
 *                             acts in its room, the form that asks what it begins with
 * Packages of it in the pantry, a row of the plan, a line of the seasons are more; see drying.
 */
#ifndef STILLROOM_KITCHEN_BOARD_KINDS_H
#define STILLROOM_KITCHEN_BOARD_KINDS_H

#include "engine/rules/subject.h"
#include "engine/schedule/day_plan.h"
#include "kitchen/board/board.h"

struct day_item; /* board/look.h */

struct log;
struct telling; /* board/telling.h */

struct work_kind {
	enum strip_content content;
	enum subject_kind subject;
	const char *words;               /* "load", a noun as count_words takes it */
	const char *shelved;             /* what its end is called: "shelved", "done" */
	unsigned stations;               /* AT_STATION bits: where it is done */
	const struct phase_rule *phases; /* what it goes through (phases_private.h) */
	enum plan_station_kind planned;  /* as the planner calls such a station */
	bool has_lot;                    /* it makes jars of a lot */
	bool takes_hands;                /* from the heat to the end somebody stands by it */
	bool outlasts_day;               /* the day is over, and cleaned down, though it goes on */
	bool own_heat;                   /* no burner is needed there */

	/* --- in its strip --- */

	int64_t (*id)(const struct strip *strip);
	int64_t (*opened_ms)(const struct strip *strip);
	/* How long its phase of length OF_THE_WORK lasts; 0: not known. */
	int64_t (*required_ms)(const struct strip *strip);
	/* What is in it, where that is no lot.  NULL: it has one. */
	const char *(*made_of)(const struct strip *strip);
	/* In other words for what it makes; left out for what it makes.  NULL: never. */
	const struct phase_rule *(*worded)(const struct strip *strip, const struct phase_rule *rule);
	bool (*skips)(const struct strip *strip, const struct phase_rule *rule);
	/* A second clock of it: on its face, and how long until it rings (0 or less: it does, or
	 * does not run).  NULL: it has none. */
	void (*second_clock)(const struct strip *strip, const struct moment *now, struct face *out);
	int64_t (*second_left_ms)(const struct strip *strip, const struct moment *now);

	/* What the rules of the warnings look at; NULL: warning/facts.c gathers it, or no rule is about it. */
	void (*facts)(const struct strip *strip, const struct moment *now, struct called called, struct facts *out);

	/* --- taken from a pot that is being filled; NULL: it never is --- */

	/* The batch that it was taken from; 0: none. */
	int64_t (*taken_from)(const struct strip *strip);
	/* How much was taken of a batch for such work, and the same in words. */
	bool (*taken_of)(struct log *log, int64_t batch_id, int64_t *ul, struct fault *fault);
	void (*tell_taken)(struct telling *telling, int64_t batch_id);

	/* --- in the log and of the house --- */

	/* What the house says of required_ms before a work is begun, minutes; 0: nothing. NULL: the
	 * work alone says it. */
	int (*house_minutes)(const struct log_house *house);
	/* A row of it (log/tables/work.h): where it stands, and into its strip. */
	int64_t (*station_of)(const void *row, bool *racked);
	void (*put_in)(struct strip *strip, const void *row);
	/* One phase after the other, with the one before it (NULL: the first).  NULL: nothing is kept of them. */
	void (*account)(struct strip *strip, const struct phase_rule *rule, const struct log_phase *phase,
	                const struct log_phase *before);
	/* The rest of the strip, when its phases have been read: what it holds, in words. */
	bool (*read)(struct kitchen *kitchen, struct strip *strip, struct fault *fault);
	/* Looking back: of a day, in words; one of it, whole. */
	void (*day_item)(const struct kitchen *kitchen, const void *row, struct day_item *item);
	bool (*tell)(struct telling *telling, int64_t id, struct fault *fault);
	/* Which it is, in a line: "load 7, Big kettle, Mon 14:05". */
	bool (*told_apart)(const struct kitchen *kitchen, int64_t id, char line[SENTENCE_MAX_BYTES],
	                   struct fault *fault);
};

/* clang-format off */
#define WORK_KIND(TAG, word) extern const struct work_kind word##_kind;
EACH_WORK(WORK_KIND)
/* clang-format on */

extern const struct work_kind *const work_kinds[WORK_KINDS];

/* NULL: it is no work. */
const struct work_kind *work_kind_of(enum subject_kind subject);
/* What is done at such a station; never NULL. */
const struct work_kind *work_kind_at(enum station_kind station);
/* A batch of this recipe (NULL: it is no longer known) with this boil-hold does not come to that phase. */
bool batch_skips(const struct recipe *recipe, int boil_hold_s, const struct phase_rule *rule);
/* What is in the strip; NULL: nothing. */
const struct work_kind *strip_kind(const struct strip *strip);
/* Is there something in it that the end of the day waits for? */
bool strip_holds_up_day(const struct strip *strip);

#endif
