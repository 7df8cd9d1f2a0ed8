/*
 * phases.h - what a load, a run and a batch go through, station by station, as
 * one table.
 *
 * No clock starts by itself: a WATCHED phase ends when a person has seen the
 * condition and says so, and only then does the next clock begin.
 *
 *   boiling water   loaded > come-up > HOLD > rest > unload > cooling > seal check
 *   steam           loaded > vent > HOLD > rest > unload > cooling > seal check
 *   pressure        loaded > come-up > VENT > pressurise > HOLD > cool-down > WAIT
 *                   > unload > cooling > seal check
 *   juicer run      heat > RUN > drain          beside them the water clock, which repeats
 *   drying          load trays > DRY > test > CONDITION > pack     leather: no conditioning; beside the
 *                   dry and the condition clock one that repeats, for looks and shakes
 *   pot batch       to boil > sugar in > back to boil > BOIL-HOLD > off > fill > rinse
 *                   (nothing to add at the boil: straight to the boil-hold; a
 *                   boil-hold of 0 s: straight to off).  Jam and jelly without added pectin:
 *                   instead of the boil-hold it is cooked to the gel point, which a person
 *                   sees and no clock tells.  Food packed raw is not boiled: the pot heats
 *                   what covers it, and the same phases say so
 *
 * A lost boil, lost steam or lost pressure ends the hold as "lost" and goes back
 * to where the condition is reached again; the next hold has its full length.
 * Sources of the figures stand in each row (codes as in docs/reference.md).
 *
 * A new phase is a line of EACH_PHASE and a row in the table of its kind of work (load_phases.c,
 * juicer_phases.c, ...); nothing else names phases one by one.
 */
#ifndef STILLROOM_KITCHEN_BOARD_PHASES_H
#define STILLROOM_KITCHEN_BOARD_PHASES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "engine/process/process.h"
#include "log/rows/canner.h"

/* Every phase by name: OF(TAG, its word in the log). */
/* clang-format off */
#define EACH_PHASE(OF) \
	OF(LOADED, loaded) \
	OF(COME_UP, come_up) \
	OF(VENT, vent) \
	OF(PRESSURISE, pressurise) \
	OF(HOLD, hold) \
	OF(COOL_DOWN, cool_down) \
	OF(WAIT, wait) \
	OF(REST, rest) \
	OF(UNLOAD, unload) \
	OF(COOLING, cooling) \
	OF(SEAL_CHECK, seal_check) \
	OF(HEAT, heat) /* juicer */ \
	OF(RUN, run) \
	OF(DRAIN, drain) \
	OF(TO_BOIL, to_boil) /* pot */ \
	OF(SUGAR_IN, sugar_in) \
	OF(BACK_TO_BOIL, back_to_boil) \
	OF(BOIL_HOLD, boil_hold) \
	OF(GEL_POINT, gel_point) \
	OF(OFF, off) \
	OF(FILL, fill) \
	OF(RINSE, rinse) \
	OF(SPREAD, spread) /* dryer */ \
	OF(DRY, dry) \
	OF(TEST, test) \
	OF(CONDITION, condition) \
	OF(PACK, pack)
#define PHASE_TAG(TAG, word) PHASE_##TAG,
enum phase_name { PHASE_NO_PHASE, EACH_PHASE(PHASE_TAG) PHASE_NAME_COUNT };
/* clang-format on */

enum phase_kind {
	PHASE_BY_HAND, /* waits for a person's hands */
	PHASE_WATCHED, /* waits for a condition a person must see */
	PHASE_TIMED,   /* a clock runs down */
};

/* What happens when nobody comes, from worst to mildest. The rhythm and the
 * flash of the alarm differ (screen/term/alarm.h). SPOILS and DRY are for pots and
 * juicers. */
enum alarm { ALARM_NONE, ALARM_TOMORROW, ALARM_LIFT, ALARM_DRY, ALARM_SPOILS, ALARM_COUNT };

/* May a timed phase be ended before its time? */
enum early { EARLY_NEVER, EARLY_ASK };

/* What a phase ends with, beside the step key. */
enum phase_asks {
	ASKS_NOTHING,
	ASKS_MEASURE,  /* juice is measured out, by an act of its own */
	ASKS_JARS,     /* jars are filled */
	ASKS_PACKAGES, /* packages are counted, by an act of its own */
	ASKS_SEALS,    /* every jar is looked at, and has its fate */
};

#define REST_MS (INT64_C(5) * 60 * 1000)       /* A539 (rev. 2015), page 1-18 */
#define WAIT_MS (INT64_C(10) * 60 * 1000)      /* A539 (rev. 2015), page 1-22 */
#define COOLING_MS (INT64_C(12) * 3600 * 1000) /* A539: check seals after 12 to 24 h */
#define SEAL_OVERDUE_MS (INT64_C(24) * 3600 * 1000)
/* A pan whose water clock is overdue by as many of its intervals may have boiled dry: a look is due
 * each half of the time that a full pan lasts (WATER_HELP).  Common practice, no source. */
#define WATER_DRY_INTERVALS 1
#define NO_SPAN 0
#define AT_STATION(kind) (1u << (kind))
#define PHASE_BRIEF_MAX 36 /* with the station's digit they fill 40 columns */
#define JOB_MAX 9          /* letters of a job: with the station's digit they fill 80 columns */
#define OF_THE_WORK (-1)   /* required time is the load's process, the house's run, the recipe's boil-hold */

/* What a pot makes, as far as its phases are worded by it. */
#define POT_RAW 1u   /* packed raw: only what covers the food is in the pot */
#define POT_GELS 2u  /* jam or jelly: it has pectin, or a gel test */
#define POT_FOLDS 4u /* something is folded in after the boil-hold: fruit of a pie filling */

/* A temperature that is another in each kitchen. */
enum phase_heat { HEAT_NONE, HEAT_BOIL, HEAT_JELLY };

struct phase_rule { /* NOLINT(clang-analyzer-optin.performance.Padding): in the order of what they tell */
	enum phase_name name;
	unsigned stations; /* bit 1 << enum station_kind */
	enum phase_kind kind;
	int64_t required_ms; /* TIMED: fixed length, or OF_THE_WORK */
	int planned_min_s;   /* not TIMED: planning time, for the outlook only */
	int planned_max_s;
	int long_s;       /* WATCHED: longer than this is warned of; 0: than planned_max_s */
	enum alarm alarm; /* when a TIMED phase is over */
	/* TIMED: an alarm that was answered, its step still to be made, is quiet for so long; the
	 * more is lost, the sooner it comes back.  All of them: common practice, no source. */
	int again_s;
	enum early early;
	int soon_s; /* WATCHED: an end sooner than this is asked about; a heavy canner cools longer (engine/gate/gate.h) */
	enum phase_name lost_to; /* where a lost condition leads; PHASE_NO_PHASE: cannot be lost */
	enum phase_name stop_to; /* where a stopped process leads; PHASE_NO_PHASE: cannot be stopped */
	enum load_place place;
	bool emptied; /* nothing is in it any more: it can wait for all the others */
	enum phase_asks asks;
	size_t span;       /* its struct plan_span in what the planner knows of the work, by offset; NO_SPAN: none */
	unsigned only;     /* POT_... bits: the phase before it in the words for such a pot; never a step of its own */
	const char *words; /* "come-up" */
	const char *now;   /* said when it begins: "off the heat"; NULL: "come-up begins" */
	const char *act;   /* what to do now */
	const char *brief; /* the same in PHASE_BRIEF_MAX columns, for the smallest window; NULL: act fits there */
	const char *due;   /* TIMED: what to do when the time is over */
	const char *due_brief; /* likewise */
	const char *job;       /* the same in JOB_MAX capitals and blanks, to be read across a room */
	const char *step;      /* what the step key says: a condition seen, or a thing done */
	const char *lost;      /* what the lost key says */
	const char *caution;
	enum phase_heat heat; /* of the temperature that act, step and caution name as {at} */
	const char *source;
};

/* The rule of a phase at a kind of station; NULL when it has no such phase. */
const struct phase_rule *phase_rule_of(enum station_kind kind, enum phase_name name);
const struct phase_rule *phase_rule_named(enum station_kind kind, const char *stored_name);
/* The same phase in the words for a pot of these POT_... bits, where the table has any. */
const struct phase_rule *phase_rule_for_pot(const struct phase_rule *rule, unsigned pot);
/* The phase after `rule` in the table; NULL after the last. */
const struct phase_rule *phase_rule_next(enum station_kind kind, const struct phase_rule *rule);
const struct phase_rule *phase_rule_first(enum station_kind kind);

/* `words` of a phase with `at` for its {at}: "205.7 F here". */
void phase_words(const char *words, const char *at, char *buffer, size_t size);

const char *phase_name_stored(enum phase_name name); /* "come_up" */
/* The stored names of the phases in which the work is at its station and keeps it busy, blank-separated. */
void phases_at_station(char *buffer, size_t size);
#define PHASE_NAMES_BYTES 512
bool station_is_canner(enum station_kind kind);
enum method station_method(enum station_kind kind);     /* a canner's; METHOD_COUNT: it is none */
enum station_kind method_station(enum method method);   /* the canner of a method; STATION_KIND_COUNT: there is none */
const char *station_kind_words(enum station_kind kind); /* "boiling-water canner", "steam juicer", "pot" */
const char *station_kind_brief(enum station_kind kind); /* at most 14 letters: "boiling water" */

const char *alarm_name(enum alarm alarm); /* "lift_jars" */

#endif
