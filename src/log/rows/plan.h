/*
 * plan.h - rows of the day plan (kitchen/plan/plan.h).
 */
#ifndef STILLROOM_LOG_ROWS_PLAN_H
#define STILLROOM_LOG_ROWS_PLAN_H

#include <stdbool.h>
#include <stdint.h>

#include "log/rows/common.h"

/* What a plan needs to know of the house beside its stations. */
#define BURNERS_MAX 20
#define COOLING_NO_LIMIT (-1)
struct log_plan_house {
	int burners;         /* shared ones, 0 to BURNERS_MAX */
	int fillers;         /* places to fill at, 0 to BURNERS_MAX; 0: as many as people */
	int cooling_jars;    /* room for jars to cool untouched; COOLING_NO_LIMIT */
	int clean_minutes;   /* clean-down at the end, 0 to 600, by all */
	int64_t charge_mg;   /* fruit in a juicer's basket: house setting */
	int late_minutes;    /* a finish this much later than accepted is warned of, 1 to 600: house rule */
	bool meals_in_turns; /* helpers eat half by half; else all together */
};

/* Somebody who helps on such a day. */
struct log_helper {
	int64_t id;
	char initials[NAME_MAX_BYTES];
	int from_minutes; /* after local midnight; -1: from the start */
};

/* A meal: nobody works. */
struct log_plan_break {
	int64_t id;
	int start_minutes;
	int end_minutes;
};

/* The one plan there is: rows, then accepted, then finished. */
struct log_plan {
	int64_t day_wall_ms;      /* local midnight of its day; 0: today */
	int start_minutes;        /* of that day; -1: at once */
	int64_t accepted_wall_ms; /* 0: a draft */
	int64_t accepted_finish_wall_ms;
	int64_t finished_wall_ms; /* 0: not yet */
};

/* A planned charge of a juicer, or of a dryer / a planned batch. Order: by id. */
struct log_plan_run {
	int64_t id;
	char fruit[NAME_MAX_BYTES];
	int64_t fruit_mg;  /* 0: puree */
	int ready_minutes; /* the fruit arrives; -1: it is there */
	int64_t run_id;    /* the run or drying that it became; 0: not begun */
	bool dries;        /* in a dryer */
	int64_t puree_ul;  /* to be dried as leather; 0: fruit by weight */
	int hours_low;     /* of the house; 0: as published, and of a run */
	int hours_high;
};

#define PLAN_RUNS_AS_NEEDED (-1)
struct log_plan_batch {
	int64_t id;
	char recipe[NAME_MAX_BYTES];
	char pack[WORD_MAX_BYTES]; /* "" without a published process */
	char jar[WORD_MAX_BYTES];
	int multiple;
	int ready_minutes; /* not before; -1: any time */
	int after_runs;    /* waits for so many planned runs of its fruit: 0 juice in stock (or whole
	                      fruit); PLAN_RUNS_AS_NEEDED: as many as give the juice, batches in order */
	int64_t batch_id;  /* the batch that it became; 0: not begun */
};

/* A piece of work at a station, as it was planned when the plan was accepted. */
struct log_plan_block {
	int64_t id;
	int64_t station_id;
	int64_t plan_run_id;   /* 0 unless a run */
	int64_t plan_batch_id; /* 0 unless a batch in a pot */
	int jars;              /* loads (neither of both); else 0 */
	int64_t start_wall_ms;
	int64_t end_wall_ms;
};

/* A piece of work in what the plan told people last (struct plan_said); one of the four ids is not 0. */
struct log_plan_said {
	int64_t plan_run_id;
	int64_t plan_batch_id;
	int64_t run_id; /* that nobody planned */
	int64_t batch_id;
	int link; /* 0 to 255, as the next two */
	int pick;
	int late;
	int wait_cap_s; /* of the whole plan; -1: none */
};

#endif
