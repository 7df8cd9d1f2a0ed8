/*
 * day_plan_private.h - what the files of the day planner share.
 *
 *   day_plan.c          make a plan; what one more of something would give
 *   day_plan_refuse.c   days that cannot be, in sentences
 *   day_plan_line.c     time lines: who and what is taken when
 *   day_plan_shape.c    work as a pattern of needs; the earliest place for it
 *   day_plan_build.c    an order and some choices -> a whole schedule
 *   day_plan_search.c   many orders and choices -> the best schedule found
 *   day_plan_hold.c     what was said before, to be held on to
 *   day_plan_alike.c    batches that are alike: who takes which juice
 *   day_plan_now.c      free canners and pots that could begin
 *   day_plan_bound.c    what no plan can beat
 *   day_plan_tell.c     a schedule -> tasks, people, loads, shares, queue
 */
#ifndef STILLROOM_ENGINE_SCHEDULE_DAY_PLAN_PRIVATE_H
#define STILLROOM_ENGINE_SCHEDULE_DAY_PLAN_PRIVATE_H

#include "engine/schedule/day_plan.h"

#define SPANS 5 /* of the longest kind of work */

/* --- time lines ------------------------------------------------------------------ */

/* How many of a common thing (people, burners, fillers) are taken when: used[i] from
 * at[i] until at[i + 1], the last for good.  at[0] lies before everything. */
#define LINE_STEPS_MAX (2 * PLAN_SPANS_MAX + 4 * PLAN_BREAKS_MAX + 2 * PLAN_PEOPLE_MAX + 4)
struct line {
	int capacity;
	int count;
	int at[LINE_STEPS_MAX];
	int used[LINE_STEPS_MAX];
};

void line_clear(struct line *line, int capacity);
/* `amount` more (or, below 0, less) from `from` until `to`. */
void line_add(struct line *line, int from, int to, int amount);
/* The earliest time >= `from` at which `amount` are there for `length` on end. */
int line_fit(const struct line *line, int from, int length, int amount);

/* When one station is taken; in order, apart from each other. */
#define LANE_WORKS_MAX (PLAN_LOADS_MAX + 2)
struct lane {
	int count;
	int start[LANE_WORKS_MAX];
	int end[LANE_WORKS_MAX];
};

void lane_add(struct lane *lane, int start, int end);
void lane_remove(struct lane *lane, int start, int end);
/* The end of the first work that overlaps start .. end; `start` if there is none. */
int lane_fit(const struct lane *lane, int start, int end);

/* --- shapes ------------------------------------------------------------------------ */

/* A need within a piece of work: from `offset` after its start, for `length`. */
struct need {
	int offset;
	int length;
	int amount;
};

/* A piece of work (run, batch in its pot, load) as the planner sees it: `spans` in
 * order; all but a last one that may come later are rigid, one at once after the
 * other.  The needs are those of the rigid part; people of neighbouring spans that
 * are alike make one need. */
struct shape {
	struct plan_span spans[SPANS];
	int offsets[SPANS];
	int span_count;
	bool last_waits; /* the last span may come later */
	int rigid;       /* length of the rigid part */
	int whole;       /* least length of all of it */
	int people_count;
	struct need people[SPANS];
	struct need heat; /* length 0: no burner, even where the station uses one */
	struct need filler;
	int bound_count; /* spans that bind people (amount), or are watched (0): in no meal */
	struct need bound[SPANS];
};

void shape_of_run(const struct plan_run *run, struct shape *shape);
void shape_of_batch(const struct plan_batch *batch, struct shape *shape);
void shape_of_load(const struct plan_process *process, struct shape *shape);

/* Where a piece of work is. */
struct spot {
	int station; /* PLAN_NONE: not placed */
	int start;
	int last_start; /* of the span that may come later */
	int end;
};

/* --- schedules --------------------------------------------------------------------- */

/* What joins a batch to the next in the order: they are placed together, so that their
 * pots may be put off until the jars need not wait too long. */
enum link {
	LINK_NONE,       /* all jars so far go into loads now */
	LINK_JOIN,       /* only full loads; what is left waits for the next batch's jars */
	LINK_DEFER,      /* no load before the next batch has found its pot */
	LINK_AFTER_RUNS, /* no load before the runs that come next in the order are placed */
	LINK_COUNT
};

/* Which canner takes the next load; from PICK_CANNER on, that station, but only the first
 * of the loads that are made when a batch has found its pot. */
enum canner_pick { PICK_FIRST_OUT, PICK_FIRST_IN, PICK_MOST_JARS, PICK_CANNER /* + station */ };

/* A schedule in short: build_schedule() makes the whole of it. */
#define ITEMS_MAX (PLAN_BATCHES_MAX + PLAN_RUNS_MAX)
#define ITEM_OF_RUN(run) (PLAN_BATCHES_MAX + (run)) /* below: a batch */
struct genes {
	unsigned char order[ITEMS_MAX];       /* batches and runs, first to place first; a run that a
	                                 * batch needs is placed with it at the latest */
	unsigned char link[PLAN_BATCHES_MAX]; /* by batch */
	unsigned char pick[PLAN_BATCHES_MAX]; /* by batch: for the loads made when it has its pot */
	unsigned char late[ITEMS_MAX];        /* by item: drain or unload so many minutes later, so that
	                                * what is placed next may have the hands */
	int wait_cap;                         /* jars should not wait longer, if that can be had; PLAN_NO_LIMIT */
};

/* Compared in this order; late_jars beside. */
struct cost {
	int late_jars;
	int64_t late_jar_s;
	int finish;
	int standing; /* jars that stand filled, and go into no canner at start_s */
	int loads;    /* those of them that do go into so many: of two ways the fewer */
	int begun;    /* batches that begin at start_s: the more the better */
	int64_t waiting_jar_s;
};

#define FINISH_NEVER (INT32_MAX / 2)

struct schedule {
	struct line people;
	struct line burners;
	struct line fillers;
	struct lane lanes[PLAN_STATIONS_MAX];
	struct spot runs[PLAN_RUNS_MAX];
	struct spot pots[PLAN_BATCHES_MAX];
	int filled[PLAN_BATCHES_MAX]; /* when the batch's jars are filled */
	struct spot loads[PLAN_LOADS_MAX];
	struct plan_load contents[PLAN_LOADS_MAX]; /* station and times as in loads[] */
	int load_count;
	int last_end;
	bool broken; /* a batch found no place within its wait limit, or loads ran out */
	struct cost cost;
	int64_t mean_load_end; /* of the new ones; tells nearly as good schedules apart */
};

/* Batches that are linked, and runs between them, while they are placed together. */
#define GROUP_MAX PLAN_PARTS_MAX /* batches */
#define GROUP_ITEMS_MAX (2 * GROUP_MAX)
struct group {
	int item_count;
	int items[GROUP_ITEMS_MAX];
	int count;  /* batches among them */
	int link;   /* of the last of these */
	int placed; /* batches that have found a pot, and of each of these: */
	int batches[GROUP_MAX];
	int left[GROUP_MAX]; /*   its jars that are in no load yet */
	int not_before[GROUP_MAX];
	int first_load; /* loads from here on are the group's */
};

/* Where the search stands between two of its steps. */
enum search_stage { SEARCH_RULES, SEARCH_ORDERS, SEARCH_WALK, SEARCH_WAITS, SEARCH_OVER };
struct search {
	enum search_stage stage;
	int at;     /* which rule, link, round or cap */
	bool begun; /* the link or round has */
	long most;  /* placings in all */
	long each;  /* placings of a round */
	long from;  /* of the round that goes on */
	long until;
	bool has_said;
	struct genes said; /* what was said before */
	struct cost said_cost;
};

struct plan_work {
	const struct plan_input *in;
	int closed_count; /* meals when nobody works */
	struct plan_break closed[PLAN_BREAKS_MAX];
	int change_count; /* moments when those who eat and those who work change */
	int changes[PLAN_BREAKS_MAX];
	struct shape runs[PLAN_RUNS_MAX];
	struct shape batches[PLAN_BATCHES_MAX];
	struct shape loads[PLAN_FAMILIES_MAX][PLAN_STATIONS_MAX];
	struct shape running[PLAN_STATIONS_MAX];
	/* By batch: of those like it the one whose juice is there first, and the next after
	 * this one; PLAN_NONE: no more. */
	int first_alike[PLAN_BATCHES_MAX];
	int next_alike[PLAN_BATCHES_MAX];
	int quiet_s; /* from then on no break, arrival or running work is in the way */
	int total_people;
	struct schedule schedule;
	struct schedule start; /* with what is going on, and nothing else */
	struct genes safe;     /* picks that keep the wait limits on an empty day */
	struct genes best;
	struct genes now;
	struct genes trial;
	struct cost best_cost;
	bool held;
	struct search search;
	int64_t now_height; /* what the search walks down: day_plan_search.c */
	int bound;          /* a finish that cannot be beaten */
	long placings;
	long placings_max;
	unsigned chance;
	struct plan_input other; /* of a what-if */
};

/* day_plan_refuse.c: is the input in range, and can the day be at all? */
bool plan_in_range(const struct plan_input *in, struct fault *fault);
bool plan_possible(const struct plan_input *in, const struct plan_names *names, struct fault *fault);
bool plan_limits_can_be_kept(const struct plan_names *names, struct plan_work *work, struct fault *fault);

/* day_plan_shape.c: find the earliest place of a shape at a station, note it, forget it.
 * A last span that may come later comes at least `late` seconds later. */
struct asked_place {
	int station;
	int earliest;
	int late;
	bool in_meals; /* the rigid part need not wait for the end of a meal */
};
struct spot shape_fit(const struct plan_work *work, const struct schedule *schedule, const struct shape *shape,
                      const struct asked_place *asked);
void shape_take(struct plan_work *work, const struct shape *shape, const struct spot *spot);
void shape_give_back(struct plan_work *work, const struct shape *shape, const struct spot *spot);
/* Work that is going on: first the rigid parts of all, then what may come later. */
void shape_go_on(struct plan_work *work, const struct shape *shape, const struct spot *spot);
void shape_end(struct plan_work *work, const struct shape *shape, struct spot *spot);
int plan_people_there(const struct plan_input *in, int at);
int after_meals(const struct plan_input *in, int start, int length);

/* Rule 13: the day does not wait for its end. */
static inline bool run_outlasts(const struct plan_run *run)
{
	return run->at == PLAN_DRYER;
}

static inline int later(int a, int b)
{
	return a > b ? a : b;
}

/* day_plan_start.c: work->start with its quiet_s; filled[] of a batch that has a pot. */
void build_start(struct plan_work *work);
void copy_schedule(const struct plan_input *in, struct schedule *to, const struct schedule *from);
void note_filled(struct plan_work *work, int batch);

/* What must be put off, and by how much, so that jars need not wait too long. */
struct delay {
	int member; /* PLAN_NONE: nothing */
	int by;
};

/* day_plan_place.c: the earliest place of a run, of a batch in a pot (its runs first),
 * and loads of what the group has filled: all of it, or only full ones. */
void place_run(struct plan_work *work, const struct genes *genes, int run);
int batch_ready(struct plan_work *work, const struct genes *genes, int batch); /* its runs are placed; juice is there */
void place_pot(struct plan_work *work, const struct genes *genes, int batch, int not_before);
struct delay load_jars(struct plan_work *work, const struct genes *genes, struct group *group, bool full, int cap);
int room_for(const struct plan_input *in, int station, int family); /* jars; 0: none */

/* day_plan_build.c */
void build_schedule(struct plan_work *work, const struct genes *genes);
/* On an empty day after quiet_s: can the batch keep its wait limit with this pick? */
bool build_alone(struct plan_work *work, int batch, int pick, int *longest_wait);
bool cost_less(const struct cost *a, const struct cost *b);
int clean_down_start(const struct plan_input *in, int last_end);

/* day_plan_search.c: begin, with what was said before as the first answer, then so many
 * placings more at a time; true: it is over.  The search itself does not begin there: what
 * has grown worse as the day moved on is a poor place to begin.  At its end work->best is the
 * answer, held or found, and work->best_cost. */
void search_begin(struct plan_work *work);
bool search_more(struct plan_work *work, long placings);

/* day_plan_hold.c: what was said before as genes of this input; what these genes say. */
bool genes_of_said(const struct plan_input *in, const struct plan_said *said, struct genes *genes);
void said_of_genes(const struct plan_input *in, const struct genes *genes, struct plan_said *said);

/* day_plan_alike.c: which batches are alike; the same genes, but of these the one placed first
 * is the one whose juice is there first. */
void note_alike(struct plan_work *work);
void first_come(const struct plan_work *work, struct genes *genes);

/* day_plan_now.c: change them a little until jars that stand filled go into a free canner, and
 * a free pot beside what it needs begins now, if nothing ends later for it.  Neither a later
 * end nor more late jars, and no more jars that stand? */
void begin_now(struct plan_work *work, struct genes *genes, struct cost *cost);
bool no_worse(const struct cost *a, const struct cost *b);

/* day_plan_bound.c */
int plan_bound(struct plan_work *work, enum plan_stage *says);

/* day_plan_tell.c */
void tell_plan(struct plan_work *work, struct day_plan *plan);

#endif
