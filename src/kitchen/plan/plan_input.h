/*
 * plan_input.h - what the planner is told, while it is gathered: shared by plan_input.c and
 * plan_juice.c only.
 */
#ifndef STILLROOM_KITCHEN_PLAN_PLAN_INPUT_H
#define STILLROOM_KITCHEN_PLAN_PLAN_INPUT_H

#include "kitchen/plan/plan_private.h"
#include "kitchen/stock/stock_private.h"

/* The processes of a family, to tell families apart. */
struct family_key {
	int jar;
	int minutes[PLAN_STATIONS_MAX]; /* 0: none */
	int pressure[PLAN_STATIONS_MAX];
};

/* Juice that somebody can take. */
struct pool {
	const char *kind;
	int64_t left_ul;
	int run; /* index into input.runs; PLAN_NONE: in stock */
};
#define POOLS_MAX (PLAN_RUNS_MAX + 64)

struct building {
	const struct kitchen *kitchen;
	struct planning *planning;
	struct plan_input *input;
	const struct moment *now;
	int now_s;
	struct family_key keys[PLAN_FAMILIES_MAX];
	struct pool pools[POOLS_MAX];
	int pool_count;
	char own_fruit[NAME_MAX_BYTES]; /* whose own runs were asked for last */
	struct juice_runs own;
};

/* --- plan_input.c --- */

bool plan_refuse(struct building *building, const char *sentence); /* false, with out.why */
int plan_seconds_of_day(int minutes);
struct plan_item *plan_item_add(struct building *building, bool is_run, int64_t plan_id, int64_t work_id);
/* By which the planner knows it again: below 0, of work that nobody planned. */
int64_t plan_item_id(const struct plan_item *item);
int plan_item_number(const struct building *building, const struct plan_item *item);
/* The strip that holds the work; NULL: none. */
const struct strip *plan_strip_with(const struct building *building, enum strip_content content, int64_t work_id);
int plan_station_of(const struct building *building, const struct strip *strip);
/* Its state, and once it is begun what it holds instead of what its row says. */
void plan_item_stands(const struct building *building, struct plan_item *item, enum strip_content content);
/* An item for each such work at a station that no row has planned. */
void plan_put_unplanned(struct building *building, enum strip_content content);
bool plan_lies_ahead(const struct plan_item *item);

/* --- plan_juice.c --- */

void plan_put_stock(struct building *building);
/* Runs of one fruit stand together, in their order: batches wait for a stretch of them. */
bool plan_put_runs(struct building *building);
/* When the water or trays of one that goes on must be looked at next: as the clock on its strip has it. */
void plan_next_look(const struct strip *strip, const struct moment *now, struct plan_run *out);
/* The runs that a planned batch waits for. */
void plan_wait_for_juice(struct building *building, const struct log_plan_batch *row, const struct recipe *recipe,
                         struct plan_item *item, struct plan_batch *batch);

/* --- plan_drying.c --- */

/* Behind all runs: no batch waits for them. */
bool plan_put_dryings(struct building *building);

#endif
