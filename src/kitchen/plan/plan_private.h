/*
 * plan_private.h - shared by the files of the day plan only.
 */
#ifndef STILLROOM_KITCHEN_PLAN_PLAN_PRIVATE_H
#define STILLROOM_KITCHEN_PLAN_PLAN_PRIVATE_H

#include "kitchen/act/act.h"
#include "kitchen/board/kinds.h"
#include "kitchen/plan/plan.h"

#define PLAN_BLOCKS_MAX (PLAN_RUNS_MAX + PLAN_BATCHES_MAX + PLAN_LOADS_MAX) /* of one accepted plan */

/* Everything of the day plan that a kitchen keeps; made with it, large. */
struct planning {
	const struct planned *rows; /* of its kitchen */
	/* Worked out from them and the board. */
	struct kitchen_plan out;
	uint64_t reads;   /* the board it was worked out on; 0: none */
	int64_t again_ms; /* after out.at: the day may be later than the plan */
	struct plan_input input;
	struct plan_input fresh; /* as things stand now; the same: the plan stands */
	bool in_slices;
	bool searching; /* slices are left */
	struct day_plan day;
	struct day_plan fresh_day; /* when the last slice is done */
	struct plan_work *work;
	struct plan_said said;   /* by the last plan; held on to while the day runs */
	struct plan_said logged; /* as the log had it when it was last looked at */
	struct plan_said kept;   /* taken from there or handed to it last */
	struct plan_item items[PLAN_ITEMS_MAX];
	struct plan_block block_rows[PLAN_BLOCKS_MAX];
	int64_t station_ids[PLAN_STATIONS_MAX];
	size_t strip_of[PLAN_STATIONS_MAX]; /* strip of the board, by index of input.stations */
	struct {
		bool known;
		bool fine;
		struct plan_what_if answer;
		struct fault why;
	} extras[PLAN_EXTRA_COUNT];
};

/* What kind of work an item is; of which row an accepted block is (0: of loads), and what took it. */
static inline const struct work_kind *plan_item_kind(const struct plan_item *item)
{
	return work_kind_of(item->dries ? SUBJECT_DRYING : item->is_run ? SUBJECT_RUN : SUBJECT_BATCH);
}

static inline int64_t plan_block_row(const struct log_plan_block *block, bool *is_run)
{
	*is_run = block->plan_run_id != 0;
	return *is_run ? block->plan_run_id : block->plan_batch_id;
}

/* --- plan.c --- */

struct planning *planning_new(const struct kitchen *kitchen); /* NULL: no memory */
void planning_free(struct planning *planning);

/* From the first to the last task of a run, or of a batch in its pot; false: it has
 * none. */
bool plan_span_of(const struct day_plan *day, bool is_run, int index, int *start_s, int *end_s, int *station);

/* Do people go by what was said?  It was accepted, or work is in hand.  A draft is for trying. */
bool plan_is_gone_by(const struct planning *planning);

/* --- plan_said.c --- */

/* Before a plan is made: what a start of the program or another terminal knows better. */
void plan_said_recall(struct planning *planning);

/* --- plan_house.c --- */

/* A time of day in the journal; PLAN_ANY_TIME says nothing. */
void act_says_time(struct act *act, int minutes);
/* PLAN_ANY_TIME or a time of the day or the night after it; else FAULT_MISUSE. */
bool plan_time_fine(int minutes, struct fault *fault);

/* --- plan_acts.c --- */

/* Part of the act that starts it: the next planned one that fits is this one. `dries`: it is a drying. */
bool plan_take_run(struct act *act, int64_t run_id, const char *fruit, bool dries, struct fault *fault);
bool plan_take_batch(struct act *act, const struct log_batch *batch, struct fault *fault);

/* --- plan_times.c --- */

/* A phase whose length is of the work, before it is begun: the minutes of the house, else the
 * mean of this log; 0: not known. */
int plan_work_s(const struct kitchen *kitchen, enum station_kind kind);
/* Add what is left of work that goes on, or all of one to come, to the spans of the planner's struct of it.
 * `timed_s`: what a phase whose length is of the work lasts. */
void plan_what_is_left(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now, void *work);
void plan_all_of_it(const struct kitchen *kitchen, enum station_kind kind, int timed_s, void *work);
/* The spans of a kind of work that lie ahead: what is left when it goes on. */
void plan_batch_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                      const struct recipe *recipe, struct plan_batch *out);
/* `kind` and `minutes` (the published time): of a load still to come. */
void plan_process_spans(const struct kitchen *kitchen, const struct strip *strip, const struct moment *now,
                        enum station_kind kind, int minutes, struct plan_process *out);

/* --- plan_juice.c --- */

/* The run that took a planned one; 0: none. */
int64_t plan_taken_by_run(const struct planning *planning, int64_t plan_id);
bool plan_run_known(const struct kitchen *kitchen, struct fault *fault); /* how long one takes; refused: not known */

/* --- plan_drying.c --- */

/* Of a row that was checked: published, else its own. */
struct drying_hours plan_hours_of(const struct log_plan_run *row);

/* --- plan_input.c --- */

/* Build planning->fresh and items from the rows and the board; false: out.why says why not. */
bool plan_build_input(const struct kitchen *kitchen, struct planning *planning, const struct moment *now);

/* --- plan_same.c --- */

/* Would a plan of the one do for the other?  Time has passed, and what goes on may be a
 * minute ahead or behind. */
bool plan_input_same(const struct plan_input *a, const struct plan_input *b);

#endif
