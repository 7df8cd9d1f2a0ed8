/*
 * planned.h - the rows of the day plan, read with the board.  Inside the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_BOARD_PLANNED_H
#define STILLROOM_KITCHEN_BOARD_PLANNED_H

#include "kitchen/board/board.h"
#include "log/rows/plan.h"

#define PLAN_NEEDS_MAX 48

/* Supplies that planned batches will take, once each. */
struct plan_need {
	enum supply_kind kind;
	char size[WORD_MAX_BYTES]; /* jars only */
	int64_t amount;
};

struct planned {
	struct log_plan_house house;
	struct log_plan plan;
	struct log_helper *helpers;
	size_t helper_count;
	struct log_plan_break *breaks;
	size_t break_count;
	struct log_plan_run *runs;
	size_t run_count;
	struct log_plan_batch *batches;
	size_t batch_count;
	struct log_plan_block *blocks;
	size_t block_count;
	struct log_plan_said *said; /* as the log has it, in order */
	size_t said_count;
	struct log_phase_mean *means;
	size_t mean_count;
	struct log_juice *juices; /* in stock */
	size_t juice_count;
	struct log_load *loads; /* begun since the plan was accepted, oldest first */
	size_t load_count;
	struct plan_need needs[PLAN_NEEDS_MAX]; /* of planned batches not begun */
	size_t need_count;
	int planned_jars; /* of all sizes: as many lids and bands */
};

/* Read the rows again, and the juice in stock. */
bool planned_read(struct kitchen *kitchen, struct fault *fault);
bool planned_read_said(struct kitchen *kitchen, struct fault *fault); /* this alone */
/* What it holds; not the struct itself. */
void planned_free(struct planned *planned);
/* What planned batches will take of a supply (SUPPLY_JAR: by size). */
int64_t plan_needs_of(const struct kitchen *kitchen, enum supply_kind kind, const char *size);
int plan_jars_to_come(const struct kitchen *kitchen);
/* Trays that such a row fills at least, of the first dryer here of which the size is said; 0: leather, and none is. */
int64_t plan_trays_of(const struct kitchen *kitchen, const struct log_plan_run *row);

#endif
