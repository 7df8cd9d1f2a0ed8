/*
 * plan.h - the day plan: what shall be made, by whom and on what, and how the day
 * really goes beside it.
 *
 * Rows of the plan stand in the log (log/rows/plan.h, struct log_plan_...).  The plan itself
 * is worked out by engine/schedule/day_plan.h from those rows and from what really stands on
 * the board, and is worked out again after each act and when the day runs later
 * than the plan by a minute.  Nothing of it is a rule for the work: a plan never
 * shortens a process time, and the board decides what may be done.
 *
 * Times of day are minutes after local midnight; PLAN_ANY_TIME: from the start.
 * Instants are wall times in ms; 0: none.  Plan seconds count from `zero_wall_ms`.
 * Acts follow the rules of kitchen.h; they are about the house (undo:
 * SUBJECT_HOUSE), except that starting a run, batch or load takes a planned one in
 * the same act and is undone with it.
 *
 * Planning times (plan_times.c): the phase table's (phases.h), or the mean of this
 * kitchen's own log from PLAN_OWN_MIN phases of the kind on, which a trigger keeps.  Process
 * times: the published tables at the house's elevation.
 *
 * plan_input.c tells the planner what is there, who helps and what is planned.  The answer is
 * kept until that changes (plan_same.c) or the day is a minute late.  Then the last plan,
 * repaired, is the first answer, and stands unless the search saves PLAN_HOLD_S or late jars;
 * on the board the search goes on in slices while nobody presses and nothing rings.  What was
 * said last is kept in rows that no act writes (plan_said.c), so that it holds over a start of
 * the program; what was accepted, in plan_block.  What took a planned run or batch stands in
 * its row, written by the act that began the work.
 *
 * Whoever tells what comes next (board, plan view, report, loader) asks plan_next.c and
 * nothing else.  How many jars a pot gives says pot_yield (engine/recipe/scaling.h) alone;
 * tests/report/plan/test_jar_numbers.c walks all who show such a number.
 */
#ifndef STILLROOM_KITCHEN_PLAN_PLAN_H
#define STILLROOM_KITCHEN_PLAN_PLAN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/schedule/day_plan.h"
#include "kitchen/board/planned.h"
#include "kitchen/stock/ahead.h"

#define PLAN_ANY_TIME (-1)
#define PLAN_OWN_MIN 5 /* phases of a kind until the log's own mean is used: house rule */

/* --- the standing plan --------------------------------------------------------------- */

enum plan_state {
	PLAN_EMPTY,    /* nothing is planned; work on the board is shown all the same */
	PLAN_DRAFT,    /* rows, not accepted */
	PLAN_ACCEPTED, /* the day runs by it */
	PLAN_OVER,     /* the day is finished; kept to look at until the next plan begins */
};

enum plan_item_state {
	ITEM_PLANNED,   /* not begun */
	ITEM_GOING_ON,  /* in its juicer, pot or dryer */
	ITEM_WAITING,   /* batches: its jars wait for a canner */
	ITEM_DONE,      /* drained; all its jars are in canners */
	ITEM_LEFT_OUT,  /* batches without a published process: no canner takes them */
	ITEM_NOT_BEGUN, /* the day was ended without it: nobody is called for it any more */
};

/* A row of the plan, or work going on that nobody planned. */
struct plan_item {
	bool is_run; /* in input->runs: a juicer's, or a dryer's */
	bool dries;
	int64_t plan_id; /* of its log_plan_run or log_plan_batch; 0: not planned */
	int64_t work_id; /* of its run, drying or batch; 0: not begun */
	enum plan_item_state state;
	char words[HOLDS_MAX_BYTES]; /* "12 lb grapes", "2 x grape jelly" */
	int jars;                    /* likely to come, or still waiting; runs: 0 */
	int index;                   /* in input->runs or input->batches; PLAN_NONE: not in them */
	int64_t accepted_start_ms;   /* as accepted; 0: not in the accepted plan */
	int64_t accepted_end_ms;     /* drained; pot rinsed */
	int64_t start_ms;            /* now: really begun, or planned; 0: unknown (done, left out) */
	int64_t end_ms;
	bool juice_short; /* planned: the juice to come will not be enough for it */
};
#define PLAN_ITEMS_MAX (PLAN_RUNS_MAX + 2 * PLAN_BATCHES_MAX)

/* How a station stands to the accepted plan. */
struct plan_station_state {
	int64_t station_id;
	int digit;
	size_t strip;        /* on the board */
	int permille;        /* busy, from now (a draft: its start) to the finish */
	int64_t accepted_ms; /* of what is in it, else of what comes next: its end as accepted, else its
	                          start; 0: not in the accepted plan */
	int64_t expected_ms; /* the same as it looks now; 0: nothing more comes */
	int64_t late_ms;     /* expected less accepted; below 0: early; 0 when either is unknown */
};

/* A piece of work at a station as accepted: set-up to drain, pot to rinse, load to unload. */
struct plan_block {
	struct log_plan_block row; /* station, start_ms, end_ms, what, jars, load_id */
	int64_t work_id;           /* the run, batch or load that took it; 0: none yet */
};

struct kitchen_plan {
	enum plan_state state;
	bool possible;        /* false: `why` says why not; input stands, plan does not */
	struct fault why;     /* also when nothing is left to do: FAULT_REFUSED */
	bool nothing_left;    /* all that was planned is done: clean down */
	struct moment at;     /* when it was worked out */
	uint64_t version;     /* another number whenever it was worked out anew */
	int64_t zero_wall_ms; /* the zero of all seconds in input and plan */
	const struct plan_input *input;
	const struct day_plan *plan;
	const int64_t *station_ids;                   /* by index of input->stations, as input->stations[i].id */
	char people[PLAN_PEOPLE_MAX][NAME_MAX_BYTES]; /* initials, by index of input->people */
	size_t item_count;                            /* all rows of the plan in order, then unplanned work */
	const struct plan_item *items;
	int run_items[PLAN_RUNS_MAX];      /* index into items, by index of input->runs */
	int batch_items[PLAN_BATCHES_MAX]; /* and of input->batches */
	size_t station_count;
	struct plan_station_state stations[PLAN_STATIONS_MAX]; /* by index of input->stations */
	size_t block_count;
	const struct plan_block *blocks; /* accepted, by start; none in a draft */
	int64_t start_ms;                /* of the day: planned, or accepted */
	int64_t finish_ms;               /* as it looks now, clean-down included; 0 when not possible */
	int64_t accepted_wall_ms;        /* when it was accepted; 0: never */
	int64_t accepted_finish_ms;
	int64_t finished_wall_ms; /* really: kitchen_plan_finish; 0: not yet */
	int64_t late_ms;          /* finish (now, or real) less accepted; below 0: earlier; 0: not accepted */
	int planned;              /* items by state; left out ones are not counted */
	int going_on;
	int done;
};

/* The plan as things stand; the same answer again until the day runs late or an act changes
 * what it depends on.  Valid until the next act, refresh or call with another `now`.  Never
 * NULL: a day that cannot be has `possible` false and a sentence.  Some 50 ms for
 * 40 batches when it is worked out anew, else nothing. */
const struct kitchen_plan *kitchen_plan(const struct kitchen *kitchen, const struct moment *now);
/* Of the one that was last worked out, without working it out: tells what was said by an older one. */
uint64_t kitchen_plan_version(const struct kitchen *kitchen);

/* For a screen that must not wait.  In slices: a plan that has gone stale is answered with
 * the last one, repaired, and the search for a better one waits for kitchen_plan_search.
 * Off at first; a plan without one before it is searched at once. */
void kitchen_plan_in_slices(struct kitchen *kitchen, bool on);
/* Is there search left? / A slice of it, some milliseconds; when it was the last one the
 * plan's version changes if its answer has. */
bool kitchen_plan_searching(const struct kitchen *kitchen);
void kitchen_plan_search(struct kitchen *kitchen);
/* Keep what the plan has said in the log, if it is new and people go by it, so that it holds
 * when the program is started again.  True when there is nothing to keep.  What could not be
 * kept once is not tried again. */
bool kitchen_plan_keep(struct kitchen *kitchen, struct fault *fault);

/* The wall time of a second of the plan's input or answer. */
int64_t plan_wall_ms(const struct kitchen_plan *plan, int64_t seconds);

/* What one more of something, or the other way of eating, would give; kept with the plan.  Takes as long as a
 * plan the first time: ask for one at a time where a screen must not hang. */
bool kitchen_plan_what_if(const struct kitchen *kitchen, const struct moment *now, enum plan_extra extra,
                          struct plan_what_if *out, struct fault *fault);

/* "saves 12 min", "saves nothing", "costs 5 min". */
void plan_what_if_say(const struct plan_what_if *what, char *buffer, size_t size);

/* --- what next (plan_next.c) --------------------------------------------------------------- */

struct plan_next {
	char who[NAME_MAX_BYTES]; /* initials; "" nobody in particular */
	int64_t station_id;       /* 0: none (break, clean-down, nothing) */
	int digit;                /* of the station; 0: none */
	bool now;                 /* to be done now; else it comes at at_ms */
	bool ringing;             /* it is an alarm of the board */
	bool nothing;             /* nothing more comes today */
	int64_t at_ms;
	int64_t late_ms;          /* now: since when it could have been done; else 0 */
	enum plan_task_kind kind; /* of the planned task; not read when `ringing` or `nothing` */
	int64_t plan_id;          /* the row of the plan that is begun with it (PLAN_SET_UP: a run, PLAN_TO_BOIL:
	                              a batch); 0: none */
	bool juice_to_come;       /* of that batch: not all of its juice is here */
	char words[160];          /* "Set up the Tall juicer: 12 lb grapes" */
	const char *brief;        /* instead of them where they find no room; NULL: nothing else says it */
};

/* One station, by its index in plan->stations / one line a station, by digit / one a
 * helper of the plan.  Pure: a look at the plan and the board.  `out` has room for
 * PLAN_STATIONS_MAX / PLAN_PEOPLE_MAX. */
void plan_next_station(const struct kitchen_plan *plan, const struct board *board, size_t station,
                       const struct moment *now, struct plan_next *out);
size_t plan_next_stations(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                          struct plan_next out[PLAN_STATIONS_MAX]);
size_t plan_next_people(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                        struct plan_next out[PLAN_PEOPLE_MAX]);

/* What can be begun in this empty pot now in the place of a batch whose juice is still to come: the
 * planned one that is called for soonest, and nowhere else now; false: there is none. */
bool plan_next_instead(const struct kitchen_plan *plan, const struct board *board, size_t station,
                       const struct moment *now, struct plan_next *out);

/* Where the jars that stand filled go first; false: nowhere, or the day does not go by an
 * accepted plan. */
bool plan_next_waiting(const struct kitchen_plan *plan, const struct board *board, const struct moment *now,
                       struct plan_next *out);
/* Does the day go by it: accepted, possible, not over? */
bool plan_goes(const struct kitchen_plan *plan);
/* Are juicer runs planned and no batch, so that nothing is said yet of what their juice becomes? */
bool plan_is_runs_alone(const struct kitchen_plan *plan);
#define PLAN_SOON_MS (INT64_C(30) * 1000) /* so near it is now */

/* What a task of the plan is in words: "fill 8 half-pints grape jelly". */
void plan_task_say(const struct kitchen_plan *plan, const struct board *board, const struct plan_task *task,
                   char *buffer, size_t size);
/* The letter of a task in a ribbon, own design; the legend: letter and words. */
char plan_task_letter(enum plan_task_kind kind);

/* --- planning times (plan_times.c) ------------------------------------------------------------ */

struct plan_time {
	enum station_kind kind;
	const struct phase_rule *rule;
	int seconds;       /* used */
	int table_seconds; /* of the phase table: the middle of its planning minutes */
	int own_count;     /* phases of the kind in this log */
	int own_seconds;   /* their mean; 0: none */
	bool is_own;       /* the log's own mean is used */
	int people;        /* hands it takes; 0: goes on by itself */
};
/* The n-th planning time of this kitchen (phases without a fixed length, at the
 * kinds of stations that stand here); false: there are no more. */
bool kitchen_plan_time(const struct kitchen *kitchen, size_t n, struct plan_time *out);

/* --- what is needed beside the board (plan_house.c) ---------------------------------------------- */

/* Rows as the board holds them; valid until the next act. */
const struct log_plan_house *kitchen_plan_house(const struct kitchen *kitchen);
const struct log_helper *kitchen_helpers(const struct kitchen *kitchen, size_t *count);
const struct log_plan_break *kitchen_breaks(const struct kitchen *kitchen, size_t *count);

/* FAULT_MISUSE: out of range (log/tables/plan.h). */
bool kitchen_set_plan_house(struct kitchen *kitchen, const struct log_plan_house *house, struct fault *fault);
/* id 0 adds; another of the same initials is refused. */
bool kitchen_put_helper(struct kitchen *kitchen, struct log_helper *helper, struct fault *fault);
bool kitchen_remove_helper(struct kitchen *kitchen, int64_t id, struct fault *fault);
/* At most PLAN_BREAKS_MAX, apart from each other. */
bool kitchen_put_break(struct kitchen *kitchen, struct log_plan_break *row, struct fault *fault);
bool kitchen_remove_break(struct kitchen *kitchen, int64_t id, struct fault *fault);

/* "8:30", "14:05", "8" as minutes after midnight. */
/* Initials as a helper may have them, 1 to HELPER_LETTERS letters; and a time when one comes, 0:00 to 23:59.
 * FAULT_MISUSE in words. */
#define HELPER_LETTERS 4
bool plan_initials_fine(const char *initials, struct fault *fault);
bool plan_comes_fine(int minutes, struct fault *fault);
bool plan_time_read(const char *words, int *minutes, struct fault *fault);
void plan_time_words(int minutes, char *buffer, size_t size); /* "08:30"; PLAN_ANY_TIME: "" */
/* How the helpers eat: "in turns" or "together". */
bool plan_meals_read(const char *words, bool *in_turns, struct fault *fault);
const char *plan_meals_words(bool in_turns);

/* --- rows of the plan (plan_acts.c) ---------------------------------------------------------------- */

/* In order; valid until the next act. */
const struct log_plan_run *kitchen_plan_runs(const struct kitchen *kitchen, size_t *count);
const struct log_plan_batch *kitchen_plan_batches(const struct kitchen *kitchen, size_t *count);

/* Adding to a day that is over clears it first.  What dries (`dries`) is a run in a dryer: its food, weight or puree,
 * and hours of the house where none are published; refused as at the dryer.  Runs: fruit, fruit_mg (0: a charge
 * of the house), ready_minutes.  FAULT_REFUSED: no recipe, jar or pack of the kind,
 * too many, more than the recipe may be multiplied. A batch without a jar takes the
 * usual one, without a pack the recipe's first. */
bool kitchen_plan_add_run(struct kitchen *kitchen, const struct log_plan_run *row, int64_t *id, struct fault *fault);
/* The same row so many times, 1 to PLAN_RUNS_MAX or PLAN_BATCHES_MAX, in one act. */
bool kitchen_plan_add_runs(struct kitchen *kitchen, const struct log_plan_run *row, int times, struct fault *fault);
bool kitchen_plan_add_batches(struct kitchen *kitchen, const struct log_plan_batch *row, int times,
                              struct fault *fault);
bool kitchen_plan_add_batch(struct kitchen *kitchen, const struct log_plan_batch *row, int64_t *id,
                            struct fault *fault);
/* Refused for one that has been begun. */
bool kitchen_plan_change_run(struct kitchen *kitchen, const struct log_plan_run *row, struct fault *fault);
bool kitchen_plan_change_batch(struct kitchen *kitchen, const struct log_plan_batch *row, struct fault *fault);
bool kitchen_plan_remove(struct kitchen *kitchen, bool is_run, int64_t plan_id, struct fault *fault);
/* The fruit as runs by the charge of a juicer, the batches likely to come of it;
 * added to what is planned, as one act.  `ready_minutes`: when the fruit arrives. */
bool kitchen_plan_from_wishes(struct kitchen *kitchen, const struct wishes *wishes, int ready_minutes,
                              struct fault *fault);
/* The day it is for (local midnight; 0: today) and when work begins that day. */
bool kitchen_plan_start(struct kitchen *kitchen, int64_t day_wall_ms, int start_minutes, struct fault *fault);
int kitchen_plan_begins(const struct kitchen *kitchen); /* minutes; PLAN_ANY_TIME: at once */
/* Take the plan as it stands now as what the day is measured by; again at any time.
 * FAULT_REFUSED with the planner's sentence when it is not possible. */
bool kitchen_plan_accept(struct kitchen *kitchen, struct fault *fault);
/* The clean-down is done: the day is over.  Refused while work is going on or jars
 * wait; FAULT_CONFIRM while planned rows have not been begun. */
bool kitchen_plan_finish(struct kitchen *kitchen, bool sure, struct fault *fault);
/* All rows are forgotten; the work on the board stays. */
bool kitchen_plan_drop(struct kitchen *kitchen, struct fault *fault);

#endif
