/*
 * board.h - what stands where and what its clocks show: the board.
 *
 * A `struct kitchen` joins one log and one clock (kitchen/file/open_kitchen.h).  It keeps a
 * picture of the open work, which is read again after each act and whenever another
 * terminal has written.
 *
 * Acts, in the headers of the other rooms, are one function, one transaction, one journal
 * entry each.  Each returns true when the log holds it durably, or false with a fault and
 * nothing changed.  FAULT_STOPPED: a stop rule (engine/rules/rule.h) holds it up; a typed
 * reason lets it pass, and marks the process.  FAULT_CONFIRM: allowed but unlikely; call
 * again with `sure` = true after the person has pressed again.  FAULT_STALE: the phase is
 * no longer the one the person was looking at (another terminal, or a second press), or
 * another terminal has written since the board was read, which is read again then.
 *
 * Sources of the figures: phases.h and the tables in the .c files.
 */
#ifndef STILLROOM_KITCHEN_BOARD_BOARD_H
#define STILLROOM_KITCHEN_BOARD_BOARD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/food/food.h"
#include "engine/physics/boiling.h"
#include "engine/process/process.h"
#include "engine/recipe/amount.h"
#include "engine/recipe/recipe.h"
#include "kitchen/board/clock.h"
#include "kitchen/board/phases.h"
#include "log/rows/dryer.h"
#include "log/rows/pantry.h"
#include "log/rows/pot.h"
#include "log/rows/stock.h"

#define HOLDS_MAX_BYTES 192

struct kitchen;

/* A phase a load has been through, for the ribbon. */
#define PAST_PHASES_MAX 12

struct past_phase {
	enum phase_name name;
	int64_t began_wall_ms;
	int64_t ended_wall_ms;
	enum phase_end why;
};

#define STRIP_CONTENT(TAG, word) STRIP_##TAG,
enum strip_content { STRIP_EMPTY, EACH_WORK(STRIP_CONTENT) };

/* What a strip holds of its load, in a canner or on the rack. */
struct strip_load {
	struct log_load row;
	int lots;                      /* how many lots the load holds */
	char jar_size[WORD_MAX_BYTES]; /* of its first jar */
	int jars;
	int unchecked;
	int without_fate;         /* jars that need a fate and have none */
	int hold_starts;          /* 2 after one lost boil */
	bool hold_across_restart; /* the computer restarted during the hold */
	char raised[96];          /* what an elevation found wrong asks of it now; "" nothing */
	int begun_minutes;        /* what it was to hold before it was ever raised; 0: it was not */
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
};

struct strip_run {
	struct log_run row;
	int64_t drawn_ul; /* juice measured out so far */
	int64_t run_ms;   /* how long a run is in this house; 0: not set */
};

struct strip_batch {
	struct log_batch row;
	const struct recipe *recipe; /* NULL when it is no longer known */
	int filled;                  /* jars filled so far */
	int64_t taken_ul;            /* for other work, while it is filled: for the trays of a dryer */
	enum acid acid_instead;      /* that goes into its jars instead of the recipe's own; NOT_SAID: none */
	struct moment off;           /* when it came off the heat; wall_ms 0: it has not */
};

struct strip_drying {
	struct log_drying row;
	const struct drying_row *published; /* of its food today; NULL: nothing is */
	int64_t dried_ms;                   /* phases of drying that are over */
	int64_t conditioned_ms;
};

#define ACT_MAX_BYTES 160
struct phase_said {
	char act[ACT_MAX_BYTES];
	char brief[ACT_MAX_BYTES];
	char step[ACT_MAX_BYTES];
	char caution[ACT_MAX_BYTES];
};

/* One line of the board: a station, empty or with what is in it, or a load on
 * the cooling rack. */
#define STRIP_MEMBER(TAG, word) struct strip_##word word;
struct strip {
	struct log_station station; /* of what is racked: where it was */
	enum strip_content content;
	bool racked; /* its station is free for other work */
	/* Only when not empty: */
	struct log_phase phase;
	const struct phase_rule *rule;
	int64_t quiet_ms;                        /* so long an answered alarm of its phase is */
	struct phase_said said;                  /* what its phase asks, with the temperature of this kitchen in it */
	char holds[HOLDS_MAX_BYTES];             /* "9 half-pints grape jelly", "12 lb grapes", "2 x grape jelly" */
	struct past_phase past[PAST_PHASES_MAX]; /* the newest ones, oldest first */
	size_t past_count;
	struct log_lot lot; /* of a load its first jar's, of a batch the batch's own; a run has none */
	union { /* by content: asked of strip_load, strip_run and strip_batch, filled by its kind (kinds.h) */
		/* clang-format off */
		EACH_WORK(STRIP_MEMBER)
		/* clang-format on */
	} in;
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
	const struct log_rule_off *rules_off; /* rules this house has turned off */
	size_t rule_off_count;
};

/* What a second clock is called. */
struct second_words {
	const char *calm;      /* "water" */
	const char *loud;      /* "WATER" */
	const char *clock;     /* "water check" */
	const char *seen;      /* "water checked and topped up" */
	const char *ask;       /* "was its water checked and topped up?" */
	const char *late;      /* the same when it is too late for that */
	const char *seen_late; /* "its pan has cooled and is filled"; NULL: it is never too late */
};

/* What the clock of a strip shows at a moment. */
struct face {
	bool timed;        /* counts down; otherwise it counts up since the phase began */
	int64_t left_s;    /* timed: seconds left, negative when over */
	int64_t passed_s;  /* since the phase began */
	bool due;          /* timed and over */
	bool ringing;      /* due, and not answered or answered too long ago; or the water clock is over */
	int64_t quiet_s;   /* it would ring, but was answered: until it rings again; 0: not so */
	bool clock_rings;  /* it is this clock that rings, not the water clock alone */
	enum alarm alarm;  /* the one that rings, else the one of this phase */
	const char *act;   /* what to do now, in words */
	const char *brief; /* the same for the smallest window */
	const char *job;   /* when due, what that comes to: "JARS OUT"; else NULL */
	/* Its second clock: the water of a run. */
	const struct second_words *second; /* NULL: it has none that runs */
	bool water;                        /* it runs */
	int64_t water_left_s;
	bool water_due;
	bool water_dry; /* so long overdue that the pan may have boiled dry */
};

struct moment kitchen_now(const struct kitchen *kitchen);
/* Read the board again when another terminal or a new local day makes it
 * necessary (`force`: in any case). */
bool kitchen_refresh(struct kitchen *kitchen, bool force, struct fault *fault);
/* Valid until the next act or refresh. */
const struct board *kitchen_board(const struct kitchen *kitchen);

/* --- a strip --- */

/* What is in it, when that is a load (in a canner or on the rack), a run, a batch; else NULL. */
const struct strip_load *strip_load(const struct strip *strip);
const struct strip_run *strip_run(const struct strip *strip);
const struct strip_batch *strip_batch(const struct strip *strip);
const struct strip_drying *strip_drying(const struct strip *strip);
static inline bool strip_has_load(const struct strip *strip)
{
	return strip->content == STRIP_LOAD;
}
bool strip_on_rack(const struct strip *strip);
/* A hold in which the computer restarted, and nobody has read another clock. */
bool strip_wants_clock(const struct strip *strip);

/* The id of the load, run or batch in it; 0: empty. */
int64_t strip_work_id(const struct strip *strip);
/* What its acts are about; of an empty one: the station. */
struct log_subject strip_subject(const struct strip *strip);
/* What the running phase leads to when it ends as it should; NULL: nothing more. */
const struct phase_rule *strip_next(const struct strip *strip);
/* A phase of it in the words for what it makes. */
const struct phase_rule *strip_worded(const struct strip *strip, const struct phase_rule *rule);
/* A batch: does what is added so go in by the end of its running phase?  What goes in last does so with
 * what goes in at the boil, unless it is folded in after. */
bool batch_goes_in(const struct strip *strip, enum adding adding);
/* The recipe's line of an amount; NULL: the recipe (or NULL) has none of that name. */
const struct ingredient *ingredient_of(const struct recipe *recipe, const struct log_batch_amount *amount);
/* What to call the strip: its station while the load is in it, else the lot. */
const char *strip_title(const struct strip *strip);
/* "; Big kettle now holds 15 min" for each load in or before its hold. */
void kitchen_say_holds(const struct kitchen *kitchen, struct text *text);
void strip_face(const struct strip *strip, const struct moment *now, struct face *out);
/* Smaller = sooner needs a person: ringing first, then least time left. */
int64_t strip_urgency(const struct strip *strip, const struct moment *now);
/* When the seal check of a racked load is overdue, in wall time; 0: not yet cooling. */
int64_t strip_seal_overdue_ms(const struct strip *strip);
/* Since its phase began; 0 while the clock says that it has not. */
int64_t strip_passed_ms(const struct strip *strip, const struct moment *now);
/* Until a clock of it rings; what rings already does not count.  INT64_MAX: none will. */
int64_t strip_rings_in_ms(const struct strip *strip, const struct moment *now);
/* The product and the lot in it; where it has none, what it is made of. */
const char *strip_product(const struct strip *strip);
const char *strip_lot_words(const struct strip *strip);
/* Minutes between looks at the water of a juicer: its own, else those of the house; 0: nobody has said. */
int station_water_minutes(const struct log_house *house, const struct log_station *station);
/* The temperature in the units of the house: "205.7 F here", "96.7 C here"; where nobody has said how high the
 * kitchen stands, in words. */
void heat_here_words(const struct board *board, enum phase_heat heat, char *buffer, size_t size);
/* When the first juice of a run can be there: as the house says, else JUICE_FIRST_MS from when it began.  Is it
 * far sooner than that, and none was drawn yet? */
#define JUICE_FIRST_MS (INT64_C(20) * 60 * 1000) /* common practice, no source */
int64_t strip_first_juice_ms(const struct board *board, const struct strip *strip);
bool strip_juice_is_early(const struct board *board, const struct strip *strip, const struct moment *now);
/* Until its second clock rings, 0 or less: it does; one that has none: 0. */
int64_t strip_second_in_ms(const struct strip *strip, const struct moment *now);
/* A run: until its water must be looked at; until its pan may have boiled dry; 0 or less: now. */
int64_t strip_water_in_ms(const struct strip *strip, const struct moment *now);
int64_t strip_dry_in_ms(const struct strip *strip, const struct moment *now);

/* Does the jar need a fate (unsealed, doubtful, over half lost, process not valid)? */
bool jar_needs_fate(const struct log_jar *jar);
/* How many jars of a size a canner takes: its stated capacity, or that of the
 * next larger stated size; 0: nothing is stated that would fit; *stated tells
 * whether this very size is stated (may be NULL). */
int station_room(const struct log_station *station, const struct jar_size *jar, bool *stated);

/* --- jars that wait --- */

/* Waiting jars of one batch and size. */
struct waiting_group {
	int64_t batch_id;
	struct log_lot lot;
	char size[WORD_MAX_BYTES];
	int jars;
	int sheet_minutes; /* of process its batch's pectin asks; 0: none */
	int64_t waited_ms; /* of the one that waits longest */
	bool too_long;     /* past the limit: loaded as they are, their process is unknown, low-acid not at all */
};

#define WAITING_GROUPS_MAX 24
/* Longest waiting first; returns how many groups there are. */
size_t kitchen_waiting(const struct kitchen *kitchen, const struct moment *now,
                       struct waiting_group out[WAITING_GROUPS_MAX]);

#endif
