/*
 * day_plan.h - a day's plan: who does what when, until the last jar is out.
 *
 * A hybrid flow shop: juicer -> pot -> canner.  The caller says what stands in
 * the kitchen, who helps and what is to be made, with the planning times of each
 * step; the engine searches for an early finish.  It holds no time of its own:
 * every length comes in with the input (planning times: the phase table of the
 * kitchen and docs/reference.md, published figures for come-up and cool-down, the
 * rest common practice, no source; process times: the published tables, engine/
 * process.h, never shortened by a plan).
 *
 * Units: seconds after a zero of the caller's choice (PLAN_TIME_MAX_S at most;
 * only `filled_at_s` may lie before zero); lengths in seconds; jars and people in
 * whole ones.  Indexes into the arrays of the input; PLAN_NONE is "no index".
 * The caller owns all structs; nothing is allocated and nothing kept between
 * calls.  struct plan_work is large (some 400 kB): not for the stack.
 *
 * THE RULES OF A PLAN (tests/support/plan_check.c checks them on their own)
 *
 *  1 run     set-up > run > drain, in one juicer.  Set-up and run follow each other
 *            at once; the drain may come later, the juicer is taken until its end.
 *            Starts at `ready_s` (the fruit is there) or later.
 *  2 batch   to boil > boil > off > fill > rinse, in one pot, each at once after
 *            the one before: no wait between pot and filling; the pot is taken until
 *            the rinse ends.  Starts at `ready_s` or later and when every run it
 *            needs has been drained.  Batches that are alike (`like`) keep no juice
 *            from one another: whichever comes first takes what is there first.
 *  3 load    load > come-up > hold > rest > unload, in one canner that knows the
 *            family; unload may come later, the canner is taken until its end.  All
 *            jars of a load go in and out together, are of one family (one process,
 *            one jar size), fit the canner, and were filled before it starts.  Its
 *            length does not depend on how many jars are in it.
 *  4 jars    every jar is in exactly one load; from the end of its filling to the
 *            start of its load no more than the batch's wait limit passes.
 *  5 station one piece of work at a time, none before `free_at_s`.
 *  6 burner  a station with `on_burner` takes one of the shared burners: juicer from
 *            set-up to the end of the run, pot from to-boil to the end of the boil,
 *            canner from load to the end of the hold ("off").
 *  7 filler  one of the fillers while a batch is being filled (0: no limit).
 *  8 people  every span takes the people it says, while it lasts; helpers are alike,
 *            each from his or her `from_s` on.  Moments (heat off, hold begins) take
 *            nobody: done in passing.
 *  9 meal    Together: nobody works; no span with people overlaps it, nor does one a
 *            person must watch (all of a batch; load and come-up).  What runs by itself
 *            goes on and may end inside it: a run, a hold (heat off is a moment), a rest;
 *            what follows it with people waits.  Jars that stood filled when the plan was
 *            made come first: they are loaded in a meal, too.
 *            In turns (two or more are there, and time for two sittings before the next
 *            meal): half of them eat, then the others as long; nobody's task goes on from
 *            one sitting into the other.  The others work on.
 * 10 clean   when everything above is over: clean-down, outside meals, by the people
 *            it says.  Its end is the finish.
 * 11 cooling all jars of the day stay on the cooling space (12 to 24 h: A539), so it
 *            bounds the jars of the day.
 * 12 look    the water of a run is looked at by whoever has a minute shortly before it is
 *            due, from a meal, too; when nobody has, in passing.
 * 13 drying  A run in a dryer goes on by itself for hours: when its set-up is over the day waits for
 *            it no longer.  It may go on beyond the finish; its trays are looked at like the
 *            water of rule 12 until then, and what follows (the drain: tested, off the trays) takes nobody.
 *            No batch needs it.
 *
 * Work that is going on (`station` given) has begun: it lasts from `start_s` for what
 * is left of its spans, exactly as it is, even where it breaks rules 6 to 9 (nothing
 * can be done about that now); only what may come later (drain, unload) is planned.
 * Jars that are filled, or in a pot already, may have to wait over their limit; they
 * are then counted in `late_jars`, and waiting less late goes before all else.
 *
 * Objective: least lateness of such jars, then the earliest finish, then the fewest jars
 * that stand filled beside a free canner and the most pots that begin now, then the least
 * waiting of jars (jar-seconds).  What was said before (`hold`) stands unless another
 * plan saves late jars or PLAN_HOLD_S, or begins what stands free and ends no later.
 * The search is deterministic: same input, same plan.
 */
#ifndef STILLROOM_ENGINE_SCHEDULE_DAY_PLAN_H
#define STILLROOM_ENGINE_SCHEDULE_DAY_PLAN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/process/process.h"

#define PLAN_NONE (-1)
#define PLAN_NO_LIMIT (-1)     /* of a wait limit or cooling space: none set */
#define PLAN_TIME_MAX_S 604800 /* seven days; of any time or length given */
#define PLAN_STATIONS_MAX 16
#define PLAN_PEOPLE_MAX 16
#define PLAN_RUNS_MAX 64
#define PLAN_BATCHES_MAX 64
#define PLAN_FAMILIES_MAX 24
#define PLAN_LOADS_MAX 192 /* those going on included */
#define PLAN_PARTS_MAX 6   /* batches in one load */
#define PLAN_BREAKS_MAX 3
#define PLAN_JARS_MAX 400 /* of one batch */
#define PLAN_SPANS_MAX (3 * PLAN_RUNS_MAX + 5 * PLAN_BATCHES_MAX + 5 * PLAN_LOADS_MAX)
#define PLAN_LOOKS_MAX (8 * PLAN_RUNS_MAX)
#define PLAN_TASKS_MAX (PLAN_SPANS_MAX + PLAN_LOOKS_MAX + 2 * PLAN_BREAKS_MAX + 1)
#define PLAN_LOOK_S 60        /* to look at the water of a juicer: common practice, no source */
#define PLAN_LOOK_EARLY_S 300 /* so much sooner than due: common practice, no source */
#define PLAN_HOLD_S 300       /* what another plan must save, or what was said stands: house rule */

/* --- what comes in ---------------------------------------------------------------- */

enum plan_station_kind { PLAN_JUICER, PLAN_POT, PLAN_CANNER, PLAN_DRYER, PLAN_STATION_KIND_COUNT };

struct plan_station {
	int64_t id; /* the caller's own; not looked at */
	enum plan_station_kind kind;
	int look_every_s; /* juicer: its water, dryer: its trays; looked at each so many seconds of heat; 0: never */
	bool on_burner;   /* heated by a shared burner; else it has its own heat */
	int free_at_s;    /* out of use until then; not read while work is going on in it */
	int jars[JAR_SIZES_MAX]; /* canner: jars of each size (index into jar_sizes); 0: none */
};

struct plan_person {
	int64_t id;
	int from_s; /* comes, or is free, then */
};

/* A step: how long and by how many people (0: goes on by itself). */
struct plan_span {
	int length_s; /* 0: no such step here */
	int people;
};

struct plan_break {
	int start_s;
	int end_s;
};

/* One charge of a juicer, or of a dryer. */
struct plan_run {
	int64_t id;
	enum plan_station_kind at; /* PLAN_JUICER or PLAN_DRYER */
	int ready_s;               /* the fruit is there */
	int station;               /* PLAN_NONE: to be done; else the one it is in, spans = what is left */
	int look_first_s;          /* one that has a station: it is first looked at so long after start_s */
	struct plan_span set_up;   /* fill the basket, heat on */
	struct plan_span run;      /* heat and run */
	struct plan_span drain;    /* heat is off: draw off, measure */
};

/* A process in a canner, as lengths. */
struct plan_process {
	bool possible;            /* the canner has a published process for the family */
	struct plan_span load;    /* jars in, lid on; heat is on */
	struct plan_span come_up; /* until the hold may begin: boil, or vent and pressurise */
	struct plan_span hold;    /* the published time */
	struct plan_span rest;    /* heat is off: rest, or cool-down and wait */
	struct plan_span unload;
};

/* Jars that may go into a canner together: same process, same jar size. */
struct plan_family {
	int64_t id;
	int jar;                                   /* index into jar_sizes */
	struct plan_process at[PLAN_STATIONS_MAX]; /* by station; only canners are read */
};

enum plan_stage_of_batch {
	PLAN_TO_DO,
	PLAN_IN_POT, /* in pot `station` since before start_s; spans = what is left */
	PLAN_FILLED, /* jars stand waiting since filled_at_s; spans are not read */
};

struct plan_batch {
	int64_t id;
	enum plan_stage_of_batch stage;
	int station;     /* PLAN_IN_POT: its pot; else not read */
	int filled_at_s; /* PLAN_FILLED: may lie before zero */
	int ready_s;     /* juice or fruit is there (runs come on top) */
	int first_run;   /* runs first_run .. first_run + run_count - 1 must be drained; */
	int run_count;   /*   batches may share a run */
	int64_t like;    /* those of one number are the same to whoever makes them: whichever is begun first
	                  *   takes the juice that is there first; 0: like no other */
	unsigned pots;   /* bit 1u << station: pots large enough; 0: any */
	int family;
	int jars;                 /* PLAN_FILLED: those still waiting */
	int wait_limit_s;         /* from filled to loaded; a house setting; PLAN_NO_LIMIT */
	struct plan_span to_boil; /* on the heat until the boil, watched */
	struct plan_span boil;    /* at the boil, on the heat */
	struct plan_span off;     /* off the heat: skim */
	struct plan_span fill;
	struct plan_span rinse;
};

/* A load that is in its canner; its jars are not in any batch's `jars`. */
struct plan_running_load {
	int64_t id;
	int station;
	int jars;
	struct plan_process left; /* what is left of it; `possible` is not read */
};

/* What a plan has said, by the ids of runs and batches: handed in again, it is held on
 * to.  Two batches may share an id (one in its pot whose first jars wait). */
struct plan_said {
	int count; /* 0: nothing yet */
	int wait_cap;
	struct {
		int64_t id;
		bool is_run;
		unsigned char link;
		unsigned char pick;
		unsigned char late;
	} items[PLAN_RUNS_MAX + PLAN_BATCHES_MAX]; /* in the order they were placed */
};

struct plan_input {
	int start_s; /* nothing new starts before: the start of the day, or now */
	int station_count;
	struct plan_station stations[PLAN_STATIONS_MAX];
	int burners;      /* shared stove burners */
	int fillers;      /* places to fill at; 0: as many as people */
	int cooling_jars; /* room left for jars on racks and towels; PLAN_NO_LIMIT */
	int people_count;
	struct plan_person people[PLAN_PEOPLE_MAX];
	bool in_turns;   /* helpers eat half by half, not all together */
	int break_count; /* in order, apart from each other */
	struct plan_break breaks[PLAN_BREAKS_MAX];
	struct plan_span clean_down; /* people 0: all of them */
	int family_count;
	struct plan_family families[PLAN_FAMILIES_MAX];
	int run_count;
	struct plan_run runs[PLAN_RUNS_MAX];
	int batch_count;
	struct plan_batch batches[PLAN_BATCHES_MAX];
	int running_load_count;
	struct plan_running_load running_loads[PLAN_STATIONS_MAX];
	int effort_percent;           /* of the usual search; 0: 100; more is slower, seldom better */
	const struct plan_said *hold; /* NULL: nothing was said */
};

/* --- what comes out ---------------------------------------------------------------- */

enum plan_task_kind {
	PLAN_SET_UP,
	PLAN_RUN,
	PLAN_DRAIN,
	PLAN_TO_BOIL,
	PLAN_BOIL,
	PLAN_OFF,
	PLAN_FILL,
	PLAN_RINSE,
	PLAN_LOAD,
	PLAN_COME_UP,
	PLAN_HOLD,
	PLAN_REST,
	PLAN_UNLOAD,
	PLAN_BREAK,
	PLAN_CLEAN_DOWN,
	PLAN_LOOK,
	PLAN_TASK_KIND_COUNT
};

/* One span of work in the plan; spans of no length are left out. */
struct plan_task {
	enum plan_task_kind kind;
	bool running; /* belongs to work that was going on at start_s */
	int start_s;
	int end_s;
	int station;     /* PLAN_NONE: break, clean-down */
	int run;         /* PLAN_NONE unless of a run */
	int batch;       /* PLAN_NONE unless of a batch */
	int load;        /* index into day_plan.loads; PLAN_NONE unless of a load */
	unsigned people; /* bit 1u << person; break and clean-down: all who take part */
};

struct plan_part {
	int batch;
	int jars;
};

struct plan_load {
	int station;
	int family;  /* PLAN_NONE: was going on at start_s, */
	int running; /*   as this index of running_loads; else PLAN_NONE */
	int start_s;
	int end_s; /* unloaded */
	int jars;
	int part_count;
	struct plan_part parts[PLAN_PARTS_MAX]; /* of different batches */
};

/* What a share of business is told of; also what a lower bound argues from. */
enum plan_stage {
	PLAN_STAGE_JUICERS,
	PLAN_STAGE_POTS,
	PLAN_STAGE_BURNERS,
	PLAN_STAGE_FILLERS,
	PLAN_STAGE_CANNERS,
	PLAN_STAGE_PEOPLE,
	PLAN_STAGE_COUNT,
	PLAN_STAGE_PATH = PLAN_STAGE_COUNT, /* a bound only: one batch's own way from end to end */
};

struct plan_use {
	int64_t busy_s;
	int permille; /* of the time from start_s to the finish (of all stations of a stage) */
};

/* The longest queue of filled jars, and when it is that long for the first time. */
struct plan_queue {
	int jars; /* 0: no jar ever waits */
	int from_s;
	int until_s; /* when it next changes */
	int station; /* the canner that takes most of them */
	int family;  /* the family of most of them */
};

struct day_plan {
	int finish_s;
	int last_out_s;              /* the last load is out, pots rinsed, juicers drained */
	int bound_s;                 /* no plan can finish earlier */
	enum plan_stage bound_stage; /* what says so */
	int late_jars;               /* already filled or in a pot, and over their limit before a load takes them */
	int64_t waiting_jar_s;       /* jars times seconds from filled to loaded */
	int longest_wait_s;
	int longest_wait_batch; /* PLAN_NONE: no jar waits */
	struct plan_queue queue;
	int task_count;
	struct plan_task tasks[PLAN_TASKS_MAX]; /* by start, then station, then kind */
	int load_count;
	struct plan_load loads[PLAN_LOADS_MAX];      /* by start, then station */
	struct plan_use stations[PLAN_STATIONS_MAX]; /* until the finish */
	struct plan_use stages[PLAN_STAGE_COUNT];    /* a stage the kitchen lacks: zeros */
	enum plan_stage bottleneck;                  /* the stage with the largest share; dryers are none */
	long placings;                               /* how much was searched (batches placed) */
	bool held;                                   /* what was said before stands, though the search found better */
	struct plan_said said;
};

/* Room to search in; its contents mean nothing between calls. */
struct plan_work;
size_t plan_work_size(void); /* bytes to hand in, aligned as malloc does */

/* Do the helpers eat the n-th meal in turns?  When is the last of them done? */
bool plan_eats_in_turns(const struct plan_input *input, int meal);
int plan_meal_end(const struct plan_input *input, int meal);

/* Find a plan.  False, *plan untouched, with a sentence: FAULT_MISUSE for a number out
 * of range (the caller's mistake); FAULT_REFUSED for a day that cannot be: nothing to
 * do, no pot, no canner, no people, a jar no canner takes, a span with more people than
 * there are, no burner for a station that needs one, no juicer for a run, more jars than
 * the cooling space takes, a batch whose last jars cannot be loaded within its wait
 * limit even on an empty day, more loads than PLAN_LOADS_MAX.
 * `names` (may be NULL) gives what the sentences call batch i; else "batch <i + 1>". */
typedef const char *plan_namer(const void *context, int batch);
struct plan_names {
	plan_namer *batch;
	const void *context;
};
/* In slices, so that nobody need wait: begin; more until it says that it is over; tell what is
 * best so far, at any time that has an answer (at once when something was said before and can
 * still be: `hold`).  However it is sliced, the last answer is the same.  Until it is
 * over `input` must stay as it is and where it is.  Some 500 placings are a millisecond. */
bool day_plan_begin(const struct plan_input *input, const struct plan_names *names, struct plan_work *work,
                    struct fault *fault);
bool day_plan_has_answer(const struct plan_work *work);
bool day_plan_more(struct plan_work *work, long placings);
bool day_plan_tell(struct plan_work *work, struct day_plan *plan, struct fault *fault);

/* What one more of something would give, or another way of eating. */
enum plan_extra {
	PLAN_MORE_CANNER, /* like the busiest canner, own heat or burner as that one */
	PLAN_MORE_POT,    /* like the busiest pot */
	PLAN_MORE_JUICER, /* like the busiest juicer */
	PLAN_MORE_BURNER,
	PLAN_MORE_HELPER, /* from start_s on */
	PLAN_EAT_IN_TURNS,
	PLAN_EAT_TOGETHER,
	PLAN_EXTRA_COUNT
};

struct plan_what_if {
	bool counted; /* false: there is none to copy, or no room for one more; they eat so, or there is no
	                 meal at which it would be otherwise */
	int finish_s;
	int saves_s; /* of one more never below 0: the old plan is still there; of a way of eating, it may cost */
};

/* `plan` is the plan of `input`; false only with FAULT_MISUSE. Takes as long as a plan. */
bool day_plan_what_if(const struct plan_input *input, const struct day_plan *plan, enum plan_extra extra,
                      struct plan_work *work, struct plan_what_if *out, struct fault *fault);

/* Words for people: "to boil", "clean-down"; "pots", "people"; "one more canner". */
const char *plan_task_words(enum plan_task_kind kind);
const char *plan_stage_words(enum plan_stage stage);
const char *plan_extra_words(enum plan_extra extra);

#endif
