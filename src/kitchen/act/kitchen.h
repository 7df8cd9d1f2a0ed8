/*
 * kitchen.h - the working day: what stands where, what is due, and the acts.
 *
 * A `struct kitchen` joins one log and one clock (both owned by the caller and
 * outliving it).  It keeps a picture of the open work, the board, which is read
 * again after each act and whenever another terminal has written.
 *
 * Acts are one function, one transaction, one journal entry each.  Each returns
 * true when the log holds it durably, or false with a fault and nothing changed.
 * FAULT_STOPPED: a stop rule (engine/rules/rule.h) holds it up; a typed reason lets it
 * pass, and marks the process.  FAULT_CONFIRM: allowed but unlikely; call again with `sure` = true after the
 * person has pressed again.  FAULT_STALE: the phase is no longer the one the
 * person was looking at (another terminal, or a second press), or another
 * terminal has written since the board was read, which is read again then.
 *
 * Sources of the figures: phases.h and the tables in the .c files.
 */
#ifndef STILLROOM_KITCHEN_ACT_KITCHEN_H
#define STILLROOM_KITCHEN_ACT_KITCHEN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/food/food.h"
#include "engine/physics/boiling.h"
#include "engine/process/process.h"
#include "engine/recipe/amount.h"
#include "engine/recipe/recipe.h"
#include "engine/recipe/scaling.h"
#include "kitchen/act/clock.h"
#include "kitchen/board/phases.h"
#include "log/log.h"

#define PRESS_AGAIN_MS 1500                    /* a second press this soon is a bouncing finger */
#define BREAK_UNDO_MS (INT64_C(2) * 60 * 1000) /* house rule: a broken hold is joined again only this soon */
#define HOLDS_MAX_BYTES 192
#define STATION_WATTS_MIN 100 /* heat of a canner as stated: what is typed outside is a slip */
#define STATION_WATTS_MAX 20000

struct kitchen;

/* --- the board ------------------------------------------------------------ */

/* A phase a load has been through, for the ribbon. */
#define PAST_PHASES_MAX 12
struct past_phase {
	enum phase_name name;
	int64_t began_wall_ms;
	int64_t ended_wall_ms;
	enum phase_end why;
};

enum strip_content { STRIP_EMPTY, STRIP_LOAD, STRIP_RUN, STRIP_BATCH };

/* One line of the board: a station, empty or with what is in it, or a load on
 * the cooling rack. */
struct strip {
	struct log_station station; /* for a racked load: the canner it was in */
	enum strip_content content;
	/* Only when not empty: */
	struct log_phase phase;
	const struct phase_rule *rule;
	char holds[HOLDS_MAX_BYTES];             /* "9 half-pints grape jelly", "12 lb grapes", "2 x grape jelly" */
	struct past_phase past[PAST_PHASES_MAX]; /* the newest ones, oldest first */
	size_t past_count;
	/* Only with a load: */
	struct log_load load;
	struct log_lot lot;            /* of its first jar; with a batch: the batch's lot */
	int lots;                      /* how many lots the load holds */
	char jar_size[WORD_MAX_BYTES]; /* of its first jar */
	int jars;
	int unchecked;
	int without_fate;         /* jars that need a fate and have none */
	int hold_starts;          /* 2 after one lost boil */
	bool hold_across_restart; /* the computer restarted during the hold */
	char raised[96];          /* what an elevation found wrong asks of it now; "" nothing */
	int64_t clock_read_ms;    /* such a hold by another clock; NOT_ON_RECORD: nobody has read one */
	int largest_jar;          /* index into jar_sizes */
	int64_t boils_ms;         /* boiling water: sooner than that it can hardly boil; 0: not worked out */
	int liquid_lost;          /* jars that lost any liquid */
	int over_half;            /* of those without a fate: over half their liquid gone */
	int windowed;             /* of those without a fate: the window closes on them */
	/* What its phases came to since the load was last begun; -1: none of the kind ended. */
	int64_t held_ms;  /* the last hold */
	int64_t holds_ms; /* all holds together, the running one left out */
	int64_t hold_required_ms;
	int64_t vented_ms;    /* the last vent that has a clock of its own */
	int64_t reached_ms;   /* the watched phase before the last hold */
	int64_t soon_ms;      /* and how soon it can hardly be over */
	int64_t way_ms;       /* to its hold so far, the running phase left out: from filling, or a lost hold */
	int64_t first_way_ms; /* the first of them */
	int64_t way_worst_ms; /* the longest of all */
	int loadings;         /* how often it was begun from the start */
	bool heated;          /* its heat was ever on */
	/* Only with a run: */
	struct log_run run;
	int64_t drawn_ul; /* juice measured out so far */
	int64_t run_ms;   /* how long a run is in this house; 0: not set */
	/* Only with a batch: */
	struct log_batch batch;
	const struct recipe *recipe; /* NULL when it is no longer known */
	int filled;                  /* jars filled so far */
	enum acid acid_instead;      /* that goes into its jars instead of the recipe's own; NOT_SAID: none */
	struct moment off;           /* when it came off the heat; wall_ms 0: it has not */
};

struct board {
	struct log_house house;
	struct boil boil;
	bool boil_known;
	const struct strip *strips; /* stations by digit, then the rack, oldest first */
	size_t stations;
	size_t racked;
	int jars_today;
	const struct log_jar *fates; /* jars set aside, and what is in fridge and freezer (aside.h) */
	size_t fate_count;
	const struct log_jar *waiting; /* filled jars without a canner, longest waiting first */
	size_t waiting_count;
	int waiting_unpublished;         /* of these, without a published process */
	int64_t juice_ul;                /* juice in stock */
	const struct log_lid_box *boxes; /* in use */
	size_t box_count;
	const struct log_supply *supplies;
	size_t supply_count;
	const struct log_recall *recalls; /* open ones, oldest first */
	size_t recall_count;
	const struct log_lot_spoiled *spoiled; /* lots of which jars spoiled, the others not looked at */
	size_t spoiled_count;
	const struct log_aside *asides; /* rules this house has set aside */
	size_t aside_count;
};

/* What the clock of a strip shows at a moment. */
struct face {
	bool timed;       /* counts down; otherwise it counts up since the phase began */
	int64_t left_s;   /* timed: seconds left, negative when over */
	int64_t passed_s; /* since the phase began */
	bool due;         /* timed and over */
	bool ringing;     /* due and not acknowledged, or the water clock is over */
	bool clock_rings; /* it is this clock that rings, not the water clock alone */
	enum alarm alarm; /* the one that rings, else the one of this phase */
	const char *act;  /* what to do now, in words */
	const char *job;  /* when due, what that comes to: "JARS OUT"; else NULL */
	/* Runs: the water clock. */
	bool water; /* it runs */
	int64_t water_left_s;
	bool water_due;
	bool water_dry; /* so long overdue that the pan has surely boiled dry */
};

bool kitchen_open(struct log *log, struct clock clock, struct kitchen **out, struct fault *fault);
void kitchen_close(struct kitchen *kitchen); /* NULL is allowed */

struct moment kitchen_now(const struct kitchen *kitchen);

/* Read the board again when another terminal or a new local day makes it
 * necessary (`force`: in any case). */
bool kitchen_refresh(struct kitchen *kitchen, bool force, struct fault *fault);
/* Valid until the next act or refresh. */
const struct board *kitchen_board(const struct kitchen *kitchen);

/* Is there a load in it, in a canner or on the rack? */
static inline bool strip_has_load(const struct strip *strip)
{
	return strip->content == STRIP_LOAD;
}

static inline bool strip_on_rack(const struct strip *strip)
{
	return strip->content == STRIP_LOAD && strip->load.place == PLACE_RACK;
}

/* The id of the load, run or batch in it; 0: empty. */
int64_t strip_work_id(const struct strip *strip);
/* What its acts are about; of an empty one: the station. */
struct log_subject strip_subject(const struct strip *strip);
/* What the running phase leads to when it ends as it should; NULL: nothing more. */
const struct phase_rule *strip_next(const struct strip *strip);
/* A phase of it in the words for what it makes. */
const struct phase_rule *strip_worded(const struct strip *strip, const struct phase_rule *rule);

/* What to call the strip: its station while the load is in it, else the lot. */
const char *strip_title(const struct strip *strip);
void strip_face(const struct strip *strip, const struct moment *now, struct face *out);
/* Smaller = sooner needs a person: ringing first, then least time left. */
int64_t strip_urgency(const struct strip *strip, const struct moment *now);
/* When the seal check of a racked load is overdue, in wall time; 0: not yet cooling. */
int64_t strip_seal_overdue_ms(const struct strip *strip);
/* A run: until its pan has surely boiled dry; 0 or less: it has. */
int64_t strip_dry_in_ms(const struct strip *strip, const struct moment *now);

/* Who is acting, for the journal ("" = nobody said). */
void kitchen_set_who(struct kitchen *kitchen, const char *initials);

/* --- a load ---------------------------------------------------------------- */

struct load_order {
	int64_t station_id;
	char product[NAME_MAX_BYTES]; /* what the label will say */
	char food[NAME_MAX_BYTES];    /* of the process tables */
	char pack[WORD_MAX_BYTES];
	char jar[WORD_MAX_BYTES];
	int jars;
	int pressure_psi;                /* NO_PRESSURE: the longest option */
	int64_t lid_box_id;              /* 0: not noted */
	enum acid acid;                  /* what was said of the acid in these jars (engine/food/acid.h) */
	int vinegar_tenths;              /* percent of its vinegar, tenths; 0: not said */
	char reason[SENTENCE_MAX_BYTES]; /* typed against a stop; "" none */
};

/* The process the order would get here: a look, nothing is written. */
bool kitchen_process(const struct kitchen *kitchen, const struct load_order *order, struct process *out,
                     struct fault *fault);
/* How many jars of a size a canner takes: its stated capacity, or that of the
 * next larger stated size; 0: nothing is stated that would fit; *stated tells
 * whether this very size is stated (may be NULL). */
int station_room(const struct log_station *station, const struct jar_size *jar, bool *stated);

/* FAULT_STOPPED: a food that takes acid, of which nobody said that it is in; vinegar
 * weaker than 5 percent or of unknown strength.  With a reason: not valid, or unknown. */
bool kitchen_start_load(struct kitchen *kitchen, const struct load_order *order, int64_t *load_id, struct fault *fault);

/* --- jars that wait, and which canner takes them (loader.c) ------------------- */

/* Waiting jars of one batch and size. */
struct waiting_group {
	int64_t batch_id;
	struct log_lot lot;
	char size[WORD_MAX_BYTES];
	int jars;
	int sheet_minutes; /* of process its batch's pectin asks; 0: none */
	int64_t waited_ms; /* of the one that waits longest */
};
#define WAITING_GROUPS_MAX 24
/* Longest waiting first; returns how many groups there are. */
size_t kitchen_waiting(const struct kitchen *kitchen, const struct moment *now,
                       struct waiting_group out[WAITING_GROUPS_MAX]);

/* A load proposed for one canner. */
struct pick {
	int64_t batch_id;
	char size[WORD_MAX_BYTES];
	int jars;
};
#define PICKS_MAX 8
struct proposal {
	int64_t station_id;
	int64_t free_in_ms; /* 0: now */
	struct pick picks[PICKS_MAX];
	size_t pick_count;
	int jars;
	int to_come; /* by the day plan: jars of the same load that are not filled yet */
};
struct loader_plan {
	struct proposal proposals[9];
	size_t count;
	int left_over; /* jars no canner takes in this round */
};
/* While the day goes by an accepted plan (plan.h), what it says of the waiting jars: the
 * next load of each canner.  Else they are spread over the canners that are free, then over
 * those free first (outlook.h); a group goes only where it has a process in common with
 * what is already there.  The canner asked about, if it is free, comes before the
 * others (`first_station_id` 0: none is); the plan stays as it is, but what it loads later
 * elsewhere is offered there. */
void kitchen_propose(const struct kitchen *kitchen, const struct moment *now, int64_t first_station_id,
                     struct loader_plan *out);

/* The one process for all picks in a canner: the longest any of them needs.
 * Refused when they have none in common. `pressure_psi` NO_PRESSURE: the pair
 * with the longest minutes that all have. */
bool kitchen_common_process(const struct kitchen *kitchen, int64_t station_id, const struct pick *picks, size_t count,
                            int pressure_psi, struct process *out, struct fault *fault);
/* Start a load of waiting jars, longest waiting ones first within a pick.  Low-acid
 * jars over their standing limit are refused (rule key-stood). */
bool kitchen_load_waiting(struct kitchen *kitchen, int64_t station_id, const struct pick *picks, size_t count,
                          int pressure_psi, int64_t *load_id, struct fault *fault);

/* Waiting jars of one batch and size were emptied, their food brought to the boil and
 * filled anew: they have stood since now. */
bool kitchen_refill(struct kitchen *kitchen, int64_t batch_id, const char *size, struct fault *fault);

/* Waiting jars of one batch and size that no canner will take: into the fridge or
 * the freezer, or out (FATE_REPROCESS is refused: they were not processed). */
bool kitchen_put_away(struct kitchen *kitchen, int64_t batch_id, const char *size, enum jar_fate fate,
                      struct fault *fault);

/* --- juicers and juice (juice_acts.c) ------------------------------------------ */

/* Refused: not a free juicer, no fruit, no weight, or the house has not said how often
 * the water of a juicer is looked at: a pan that boils dry burns. */
bool kitchen_start_run(struct kitchen *kitchen, int64_t station_id, const char *fruit, int64_t fruit_mg,
                       int64_t *run_id, struct fault *fault);
/* Juice measured out; in the drain it ends the run (0 is allowed there). */
bool kitchen_juice_out(struct kitchen *kitchen, int64_t phase_id, int64_t ul, struct fault *fault);
/* Juice brought along, not from a run of ours. */
bool kitchen_juice_in(struct kitchen *kitchen, const char *kind, int64_t ul, enum juice_state state,
                      struct fault *fault);
bool kitchen_juice_state(struct kitchen *kitchen, int64_t juice_id, enum juice_state state, struct fault *fault);
/* Measured again, or part of it thrown out: what is left now. */
bool kitchen_juice_left(struct kitchen *kitchen, int64_t juice_id, int64_t left_ul, enum juice_why why,
                        struct fault *fault);
bool kitchen_run_fruit(struct kitchen *kitchen, int64_t run_id, const char *fruit, int64_t fruit_mg,
                       struct fault *fault); /* a correction */
bool kitchen_juices(const struct kitchen *kitchen, struct log_juice **rows, size_t *count, struct fault *fault);

/* --- pots and batches (batch_acts.c) --------------------------------------------- */

struct batch_order {
	int64_t station_id;
	char recipe[NAME_MAX_BYTES];
	char pack[WORD_MAX_BYTES]; /* one of the recipe's; "" when it has no published process */
	char jar[WORD_MAX_BYTES];  /* meant to be filled; others may be too */
	int multiple;
	char reason[SENTENCE_MAX_BYTES]; /* typed against a stop; "" none */
	enum acid acid;                  /* taken instead of the recipe's own (batch_need.instead); NOT_SAID: none */
};

/* Another acid that is published for the jar, and of which the shelf holds enough. */
struct acid_instead {
	enum acid acid;  /* NOT_SAID: there is none */
	char words[160]; /* "1/2 tsp citric acid in each quart, 100 g here" */
};

/* What a batch would need, before it is started. */
struct batch_need {
	struct scaled scaled;
	struct yield yield;
	bool yield_known;
	struct {
		bool counted; /* a ledger is kept of it */
		bool is_short;
		bool replaced; /* another acid goes in instead */
		int64_t stock; /* in the unit of the supply */
		int64_t takes; /* off that; in jars: of all that are likely filled; 0: optional, left out */
	} lines[RECIPE_INGREDIENTS_MAX];
	int short_lines;             /* lines whose counted stock is too small */
	struct acid_instead instead; /* of acid in jars that is short; taken: as the order says */
	int64_t jars_stock;          /* of the size meant; -1: not counted */
	int64_t canner_in_ms;        /* when a canner that can process it is free; -1: none stands here */
	bool nowhere_to_go;          /* no canner is free by the time the jars would be filled */
};
bool kitchen_batch_need(const struct kitchen *kitchen, const struct batch_order *order, struct batch_need *out,
                        struct fault *fault);

/* Refused: pot not free or not rinsed, regular pectin multiplied, a counted
 * ingredient, juice or jars short.  FAULT_CONFIRM: no canner would be free. */
bool kitchen_start_batch(struct kitchen *kitchen, const struct batch_order *order, bool sure, int64_t *batch_id,
                         struct fault *fault);
bool kitchen_tick(struct kitchen *kitchen, int64_t batch_id, int line, bool ticked, struct fault *fault);
bool kitchen_warm_jars(struct kitchen *kitchen, int64_t batch_id, bool warm, struct fault *fault);
/* Jars filled from a batch in its fill phase.  FAULT_CONFIRM when the jars were not
 * ticked as warm.  Low-acid food that stood too long in the pot is refused.  Where acid
 * is asked, in the jar or the pot, `acid_in` must be true: otherwise FAULT_STOPPED, and
 * with a reason the jars are not valid. */
struct fill_order {
	int64_t batch_id;
	const char *jar;
	int jars;
	int64_t lid_box_id; /* 0: not noted */
	bool acid_in;       /* as acid_asked.h asks, into the jar or the pot */
	bool sure;
	const char *reason; /* typed against a stop; "" none */
	enum acid acid;     /* which of the answers; ACID_NOT_SAID: the recipe's own */
	int vinegar_tenths; /* percent of the vinegar, tenths; 0: not said now */
};
bool kitchen_fill(struct kitchen *kitchen, const struct fill_order *order, struct fault *fault);
/* The acid was forgotten, or something else was not as the recipe says: the batch,
 * and every load its jars are in, becomes not valid (acidified recipes) or unknown
 * (others).  Loads that are not valid come back to the seal check. */
bool kitchen_batch_wrong(struct kitchen *kitchen, int64_t batch_id, const char *why, struct fault *fault);
/* Corrections: what really went in; jars of a batch that still wait.  FAULT_STOPPED: less acid
 * than the recipe asks for; with a reason its jars are not valid. */
bool kitchen_batch_amount(struct kitchen *kitchen, int64_t batch_id, int place, int64_t used, const char *reason,
                          struct fault *fault);
bool kitchen_batch_jars(struct kitchen *kitchen, int64_t batch_id, const char *jar, int jars, struct fault *fault);
bool kitchen_batch_note(struct kitchen *kitchen, int64_t batch_id, const char *note, struct fault *fault);
bool kitchen_batch_amounts(const struct kitchen *kitchen, int64_t batch_id, struct log_batch_amount **rows,
                           size_t *count, struct fault *fault);

/* --- recipes and supplies (store_acts.c) -------------------------------------------- */

/* Every recipe, built-in ones first (or, sheet.h, what completes one), then the kitchen's own; valid until the
 * next act. */
size_t kitchen_recipe_count(const struct kitchen *kitchen);
const struct recipe *kitchen_recipe(const struct kitchen *kitchen, size_t n);
const struct recipe *kitchen_recipe_named(const struct kitchen *kitchen, const char *name);
int64_t kitchen_recipe_own_id(const struct kitchen *kitchen, size_t n); /* 0: built in */
/* Where a recipe stands: the guide's own as printed, one of the house by what is in it
 * (engine/food/food.h: own_recipe_judge). */
void recipe_stands(const struct recipe *recipe, struct recipe_standing *out);
/* The same of one being written down. */
void kitchen_recipe_draft_stands(const struct log_recipe *recipe, struct recipe_standing *out);
/* Own recipes only: checked by recipe_check; its food must be in the tables or "".
 * Refused with the reason when what is in it must not be canned as that food. */
bool kitchen_put_recipe(struct kitchen *kitchen, struct log_recipe *recipe, struct fault *fault);
bool kitchen_own_recipe(const struct kitchen *kitchen, int64_t id, struct log_recipe *out, struct fault *fault);

bool kitchen_supplies(const struct kitchen *kitchen, struct log_supply **rows, size_t *count, struct fault *fault);
/* A receipt adds; a correction sets what a count found. */
bool kitchen_supply_in(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t amount,
                       struct fault *fault);
bool kitchen_supply_count(struct kitchen *kitchen, enum supply_kind kind, const char *size, int64_t counted,
                          struct fault *fault);

/* The next step of a load, run or batch: a condition seen or a thing done.
 * FAULT_CONFIRM sooner than it can hardly be: then the story keeps that it was asked.
 * `phase_id` is the running phase the person was looking at.  The seal check's
 * step shelves the load and is refused while a jar is unchecked or lacks a fate;
 * the drain of a juicer ends with kitchen_juice_out; filling ends only with jars. */
bool kitchen_step(struct kitchen *kitchen, int64_t phase_id, bool sure, struct fault *fault);
/* A hold in which the computer restarted, read off another clock: ms of that clock's day
 * (an end before the beginning is of the next day).  A hold too short by that clock:
 * FAULT_CONFIRM, and when `sure` the gate finds it so.  Without a reading kitchen_step
 * asks (FAULT_CONFIRM) before it ends such a hold, and the process is unknown. */
bool kitchen_clock_read(struct kitchen *kitchen, int64_t phase_id, int64_t began_ms, int64_t ended_ms, bool sure,
                        struct fault *fault);
/* Boil, steam or pressure was lost: the full time again. */
bool kitchen_lost(struct kitchen *kitchen, int64_t phase_id, struct fault *fault);
/* The alarm was heard; a ringing water clock: the water was seen and topped up. */
bool kitchen_acknowledge(struct kitchen *kitchen, int64_t phase_id, struct fault *fault);

/* --- exceptions of the present phase ---------------------------------------- */

enum exception {
	EXCEPTION_LOST,       /* as kitchen_lost */
	EXCEPTION_STOP,       /* the process is given up: not valid */
	EXCEPTION_VENT_SHORT, /* vent was cut short: not valid */
	EXCEPTION_EARLIER,    /* the condition was reached earlier than the key: estimated */
	EXCEPTION_BROKEN_JAR, /* a jar broke in the canner */
	EXCEPTION_REDO,       /* the full process again, within 2 h of the failure */
	EXCEPTION_WRONG,      /* something was wrong with a finished process; see kitchen_found_wrong */
	EXCEPTION_RECIPE,     /* the batch was not made as its recipe says; see kitchen_batch_wrong */
	EXCEPTION_WATER,      /* the juicer's water was topped up before its clock rang */
	EXCEPTION_DRAW,       /* some juice is drawn while the run goes on */
	EXCEPTION_FORCED,     /* the canner was cooled by force: low-acid food becomes unknown */
	EXCEPTION_WEIGHT,     /* the weight came off before zero: likewise */
	EXCEPTION_BOILED,     /* what stands in the pot was boiled again: it is off the heat from now */
	EXCEPTION_COUNT
};

/* Is the exception open to the strip now, and what does its line say? NULL: no. */
const char *exception_words(const struct strip *strip, enum exception exception, const struct moment *now);
/* `amount`: EXCEPTION_EARLIER minutes (1 to the time since the phase before
 * began); EXCEPTION_DRAW uL of juice; else unused.  `reason`: what was wrong
 * (WRONG, RECIPE); why a stop is gone against (VENT_SHORT, EARLIER: FAULT_STOPPED
 * without one); else "". What only makes a record worse needs none. */
bool kitchen_exception(struct kitchen *kitchen, int64_t phase_id, enum exception exception, int64_t amount,
                       const char *reason, struct fault *fault);

/* Something was wrong with a process that was over and counted: not valid, with
 * the reason.  Its two hours run from the end of the process, not from now.  A
 * load that cools or stands on the shelf comes back to the seal check, where each
 * jar gets its fate. */
bool kitchen_found_wrong(struct kitchen *kitchen, int64_t load_id, const char *why, struct fault *fault);

/* --- seal check ------------------------------------------------------------- */

/* What one method of the check said of a jar.  One bad: doubtful, which counts as
 * unsealed; all three good: sealed; else not checked yet (A539, MSU-951; one failing:
 * common practice, no source).  Refused as kitchen_jar_state is. */
bool kitchen_jar_tick(struct kitchen *kitchen, int64_t jar_id, enum seal_method method, enum seal_tick tick,
                      struct fault *fault);
/* Loads whose seals can be looked at: past their 12 h, or at the check already; oldest
 * first.  Returns how many there are, at most `most`. */
size_t kitchen_round(const struct kitchen *kitchen, const struct moment *now, int64_t *load_ids, size_t most);
/* By which methods somebody looked: bits 1u << enum seal_method. */
#define SEAL_BY(method) (1u << (method))
#define SEAL_BY_ALL_THREE (SEAL_BY(SEAL_METHOD_COUNT) - 1u)

/* Sealed, as somebody saw it: the jar, or every jar not looked at yet.  Only the methods named are
 * written good; what was not tried stays so.  Refused: no method named; a method left out that said
 * bad; before the seal check. */
bool kitchen_jar_sealed(struct kitchen *kitchen, int64_t jar_id, unsigned methods, struct fault *fault);
bool kitchen_all_sealed(struct kitchen *kitchen, int64_t load_id, unsigned methods, struct fault *fault);
/* Any other state; a jar that failed may be marked while the load still cools.  JAR_SEALED is misuse:
 * a seal is said by the methods that showed it. */
bool kitchen_jar_state(struct kitchen *kitchen, int64_t jar_id, enum jar_state state, struct fault *fault);
bool kitchen_jar_siphoning(struct kitchen *kitchen, int64_t jar_id, enum siphoning siphoning, struct fault *fault);
/* Sets the fate and its deadline; refused when the window is closed. */
bool kitchen_jar_fate(struct kitchen *kitchen, int64_t jar_id, enum jar_fate fate, struct fault *fault);
/* The same fate for every jar that needs one and has none. */
bool kitchen_fate_rest(struct kitchen *kitchen, int64_t load_id, enum jar_fate fate, struct fault *fault);
bool kitchen_lot_of_jar(const struct kitchen *kitchen, int64_t jar_id, struct log_lot *out, struct fault *fault);
/* "" when there is no such lot. */
void kitchen_lot_code(const struct kitchen *kitchen, int64_t lot_id, char *buffer, size_t size);

/* What the gate said of a jar: its own answer, or its load's. */
bool kitchen_judgement(const struct kitchen *kitchen, const struct log_jar *jar, struct log_judgement *out,
                       struct fault *fault);

/* Does the jar need a fate (unsealed, doubtful, over half lost, process not valid)? */
bool jar_needs_fate(const struct log_jar *jar);
/* May the fate be chosen now, and until when would it run (wall ms, 0: at once)? */
bool jar_fate_open(const struct log_jar *jar, const struct log_load *load, enum jar_fate fate, int64_t now_wall_ms,
                   int64_t *by_wall_ms, struct fault *fault);
const char *jar_fate_words(enum jar_fate fate); /* "fridge" ... what to do, with source */
const char *jar_fate_advice(enum jar_fate fate, const struct log_lot *lot);
/* Is suspect food of it treated as toxic (low-acid and tomato, A539)? */
bool lot_is_suspect(const struct log_lot *lot);
const char *verdict_says(enum verdict verdict); /* "PROCESS UNKNOWN"; valid: "" */
const char *jar_gone_words(enum jar_gone gone); /* "given away"; GONE_NOT: "kept" */

/* --- undo ------------------------------------------------------------------- */

/* Take back the last act about the subject (strip_subject; SUBJECT_HOUSE).
 * An act that broke or ended a hold can be taken back for BREAK_UNDO_MS only:
 * a hold is never joined together again over a gap nobody watched.
 * `said` gets the sentence of what was undone. */
bool kitchen_undo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault);
/* The act that an undo of the house would take back; false: there is none. */
bool kitchen_last_of_house(const struct kitchen *kitchen, struct log_entry *last);
/* Of the house; refused when the last thing was done in the pantry or to a recall, which
 * nobody sees from the house view. */
bool kitchen_undo_house(struct kitchen *kitchen, char *said, size_t said_size, struct fault *fault);
/* Take back the undo, while nothing else has been done since. */
bool kitchen_redo(struct kitchen *kitchen, struct log_subject subject, char *said, size_t said_size,
                  struct fault *fault);

/* --- the house -------------------------------------------------------------- */

bool kitchen_set_name(struct kitchen *kitchen, const char *name, struct fault *fault);
/* `words` as elevation_read takes them; refused while a load is in a canner. */
bool kitchen_set_elevation(struct kitchen *kitchen, const char *words, struct fault *fault);
/* As kitchen_set_elevation, when the one set before was wrong, not when the kitchen
 * moved: what was made at it is looked up again, and a load that would have needed
 * more is not valid.  One that is in its hold or before it gets what is asked: more
 * minutes, or more pressure and the full time again (rule process-raised).  `loads`: how many.  The other function only counts them. */
bool kitchen_elevation_was_wrong(struct kitchen *kitchen, const char *words, int *loads, struct fault *fault);
bool kitchen_elevation_touches(struct kitchen *kitchen, const char *words, int *loads, struct fault *fault);
/* The computer's clock is before the log's last entry, and somebody looked: it is right,
 * those entries were written by a wrong one.  Ends the stop "clock-behind". */
bool kitchen_clock_is_right(struct kitchen *kitchen, struct fault *fault);
/* A thermometer where the jars are kept, "64F" or "18C"; "" forgets it. */
bool kitchen_set_storage(struct kitchen *kitchen, const char *words, struct fault *fault);
/* Thermometer in boiling water here, "203.1F" or "95.1C"; "" forgets it. */
bool kitchen_set_measured_boil(struct kitchen *kitchen, const char *words, struct fault *fault);
bool kitchen_set_barometer(struct kitchen *kitchen, const char *words, struct fault *fault);
bool kitchen_set_invented(struct kitchen *kitchen, bool invented, struct fault *fault);
bool kitchen_set_practice(struct kitchen *kitchen, int speed, struct fault *fault);
bool kitchen_set_units(struct kitchen *kitchen, enum unit_system units, struct fault *fault);
/* Minutes: a juicer run, first juice, between water checks (each 0: not set), from when
 * on jars that wait are warned of (at most STANDING_ASK_MS), and the longest that they
 * or a finished pot may stand (0: the limits of engine/gate/gate.h, which a house only
 * shortens).  The program has no figure of its own for a juicer: without one a run has
 * no end and no hint, and without a water interval none is started. */
bool kitchen_set_minutes(struct kitchen *kitchen, int run, int first_juice, int water, int jar_wait, int stand,
                         struct fault *fault);
/* Initials of who has the station now; recorded with each act there. */
bool kitchen_set_station_who(struct kitchen *kitchen, int64_t station_id, const char *initials, struct fault *fault);
/* id 0 adds; the digit must be free. A station with work in it cannot change its kind or retire. */
bool kitchen_put_station(struct kitchen *kitchen, struct log_station *station, struct fault *fault);
bool kitchen_put_lid_box(struct kitchen *kitchen, struct log_lid_box *box, struct fault *fault);

/* Read a kitchen file (form: setup.c; example: demo/quince-hollow.kitchen) into a
 * log nothing has been written in.  One act a line; the fault names
 * `path:line: why`, and the lines before it stand: throw the new log away. */
bool kitchen_setup(struct kitchen *kitchen, const char *path, struct fault *fault);

/* One line of a kitchen file as an act, for the house view.  `id` > 0 changes
 * that canner or lid box instead of adding one. */
bool kitchen_setup_line(struct kitchen *kitchen, const char *line, int64_t id, struct fault *fault);
/* The line that would set a station or lid box as it is now. */
void kitchen_station_line(const struct log_station *station, char *buffer, size_t size);
void kitchen_lid_box_line(const struct log_lid_box *box, char *buffer, size_t size);

/* --- the day ------------------------------------------------------------------ */

/* A run, batch or load of a day, open or done, for looking back and correcting. */
struct day_item {
	struct log_subject subject;
	int64_t opened_wall_ms;
	bool open;
	char words[240]; /* "run: 12 lb grapes, 1 gal juice" */
};
/* Everything begun on the local day of `wall_ms`, oldest first; malloc'ed. */
bool kitchen_day(const struct kitchen *kitchen, int64_t wall_ms, struct day_item **rows, size_t *count,
                 struct fault *fault);
bool kitchen_run_get(const struct kitchen *kitchen, int64_t run_id, struct log_run *out, struct fault *fault);
bool kitchen_batch_get(const struct kitchen *kitchen, int64_t batch_id, struct log_batch *out, struct fault *fault);
/* How many jars of a size the batch filled. */
bool kitchen_jars_filled(const struct kitchen *kitchen, int64_t batch_id, const char *jar, int *jars,
                         struct fault *fault);

/* --- reading for views ------------------------------------------------------- */

/* Arrays are malloc'ed and freed by the caller; rows as log.h says. */
bool kitchen_jars(const struct kitchen *kitchen, int64_t load_id, struct log_jar **rows, size_t *count,
                  struct fault *fault);
bool kitchen_story(const struct kitchen *kitchen, struct log_subject subject, struct log_entry **rows, size_t *count,
                   struct fault *fault);
bool kitchen_lid_boxes(const struct kitchen *kitchen, struct log_lid_box **rows, size_t *count, struct fault *fault);

#endif
