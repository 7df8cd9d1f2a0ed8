/*
 * subject.h - what the rules of the warnings look at: one struct for each subject,
 * filled by whoever asks.
 *
 * A new subject is a line of RULE_SUBJECTS, a struct about_... and, below it, NAMES_OF_...:
 * what a sentence may name of it and how that is said (the forms of rule.c); the tag, the
 * unions and the type of its rules follow from the line.
 *
 * Units: milliseconds, whole jars, thousandths of a degree Fahrenheit; times run
 * from the past to now.  Words are the caller's and need only last for the question.
 */
#ifndef STILLROOM_ENGINE_RULES_SUBJECT_H
#define STILLROOM_ENGINE_RULES_SUBJECT_H

#include <stdbool.h>
#include <stdint.h>

#include "engine/gate/gate.h"
#include "engine/physics/elevation.h"
#include "engine/process/process.h"
#include "engine/recipe/recipe.h"
#include "engine/recipe/scaling.h"
#include "engine/stats/odds.h"

/* What one set of facts is about: OF(TAG, member of the unions below, in words). */
/* clang-format off */
#define RULE_SUBJECTS(OF) \
	OF(HOUSE, house, "the house") \
	OF(LOAD, load, "a load") \
	OF(NOTEBOOK, notebook, "a load") \
	OF(RUN, run, "a juicer's run") \
	OF(BATCH, batch, "a batch") \
	OF(DRYING, drying, "what is dried") \
	OF(CLOCK, clock, "a running phase") \
	OF(WAITING, waiting, "jars that wait") \
	OF(FATE, fate, "a jar set aside") \
	OF(STATION, station, "a station") \
	OF(LID_BOX, lid_box, "a lid box") \
	OF(PERSON, person, "who closes jars") \
	OF(SUPPLY, supply, "a supply") \
	OF(RECALL, recall, "a recall") \
	OF(SPOILED, spoiled, "a recall") \
	OF(SHELVED, shelved, "a load on the shelf") \
	/* What a key is about to do: only stops, asked before it is done. */ \
	OF(KEY_CLOCK, key_clock, "a key about to act") \
	OF(KEY_LOAD, key_load, "a key about to act") \
	OF(KEY_STOOD, key_stood, "a key about to act") \
	OF(KEY_BATCH, key_batch, "a key about to act") \
	OF(KEY_FILL, key_fill, "a key about to act") \
	OF(KEY_AGAINST, key_against, "a key about to act") \
	OF(KEY_FATE, key_fate, "a key about to act") \
	OF(KEY_TAKE, key_take, "a key about to act")

#define RULE_TAG(TAG, subject, words) ABOUT_##TAG,
#define RULE_TAG_OF(TAG, subject, words) about_##subject = ABOUT_##TAG,
enum rule_about {
	RULE_SUBJECTS(RULE_TAG)
	ABOUT_COUNT,
	/* The same by the member's name. */
	RULE_SUBJECTS(RULE_TAG_OF)
};
/* clang-format on */

/* The computer's clock against the log. */
struct wall_clock {
	int64_t behind_ms;      /* so far before the log's last entry; 0: it is not */
	const char *says;       /* "Mon 14 Sep 08:00" */
	const char *last_entry; /* when that was written */
};

#define FACT_NOT_READ INT32_MIN

struct about_house {
	struct elevation elevation;
	struct elevation elevation_before; /* on the last day on which a load was made */
	int boil_off_mf;                   /* measured boiling point less what the elevation gives; 0: not measured */
	int storage_mf;                    /* warmth of the store; FACT_NOT_READ */
	int64_t storage_ms;                /* since that was read */
	int waiting;                       /* filled jars without a canner, not past their limit */
	int left_over;                     /* of all that wait, more than the canners take in this round */
	int unpublished;                   /* of these, without a published process */
	int64_t waited_ms;                 /* the one that waits longest */
	int64_t wait_limit_ms;
	const char *kept_lot; /* of the oldest jar that is kept; NULL: none is */
	int64_t kept_ms;
	struct wall_clock clock;
	bool plan_runs;           /* a plan was accepted for this day, and work of it is left */
	int64_t plan_late_ms;     /* finish as it looks now, less the one accepted */
	int64_t plan_limit_ms;    /* later than that is warned of */
	const char *finish_words; /* "17:40" */
};
/* clang-format off */
#define NAMES_OF_house \
	NAMED(house, elevation, FORM_ELEVATION), \
	NAMED(house, elevation_before, FORM_ELEVATION), \
	NAMED_AS(house, "boil_off", boil_off_mf, FORM_DEGREES), \
	NAMED_AS(house, "boil_side", boil_off_mf, FORM_BOIL_SIDE), \
	NAMED_AS(house, "storage", storage_mf, FORM_DEGREES), \
	NAMED(house, left_over, FORM_JARS), \
	NAMED(house, unpublished, FORM_JARS), \
	NAMED_AS(house, "waited", waited_ms, FORM_MINUTES), \
	NAMED_AS(house, "wait_limit", wait_limit_ms, FORM_MINUTES), \
	NAMED(house, kept_lot, FORM_WORDS), \
	NAMED_AS(house, "clock_words", clock.says, FORM_WORDS), \
	NAMED_AS(house, "last_words", clock.last_entry, FORM_WORDS), \
	NAMED_AS(house, "plan_late", plan_late_ms, FORM_HOURS), \
	NAMED_AS(house, "finish", finish_words, FORM_WORDS)
/* clang-format on */

/* What sentences call work at a station. */
struct called {
	const char *station;
	int digit; /* its key */
	const char *lot;
	const char *product;
};

/* In a canner or on the rack. */
struct about_load {
	struct called called;
	enum verdict verdict;
	const char *why; /* of the verdict */
	enum method method;
	enum acidity acidity;
	int jars;
	bool in_canner;
	bool larger_than_tested;
	bool practice_row;
	int minutes;          /* required */
	bool asks_more;       /* at the elevation set now: longer, at more pressure, or nothing at all */
	int minutes_here;     /* there; 0: no such process */
	const char *raised;   /* what it is to get since the elevation was mended; "" nothing */
	bool hold_over;       /* the hold has been left */
	int64_t held_ms;      /* the last hold that was ended, by the clock that nobody sets */
	int64_t hold_ms;      /* what it had to be */
	int64_t vent_held_ms; /* a vent of its own that has been left; NOT_ON_RECORD: none was */
	int64_t vent_ms;
	int64_t reached_ms; /* the watched phase before its hold took so long; NOT_ON_RECORD: none */
	int64_t soon_ms;    /* and can hardly be over sooner */
	int hold_starts;
	bool heats;           /* in the canner, and its hold has not begun */
	bool cold;            /* its heat was never on: nothing was processed */
	int64_t way_ms;       /* from filling, or a lost hold, until a hold began or now: the longest */
	int64_t way_limit_ms; /* engine/gate/gate.h */
	int64_t steamed_ms;   /* steam: all holds together, the running one too */
	int unchecked;
	int64_t seals_due_in_ms; /* until 24 h after the process; negative: over */
	bool cooling_out;        /* out of the canner, its process over */
	int fateless;            /* jars that need a fate and have none */
	int over_half;           /* of these, for liquid lost */
	int windowed;            /* of these, jars on which a window closes */
	int64_t window_in_ms;    /* until nothing but the bin is left for them */
	int window_hours;
	int liquid_lost; /* jars that lost any */
	int broken;
};
/* clang-format off */
#define NAMES_OF_load \
	CALLED(load), \
	NAMED(load, why, FORM_WORDS), \
	NAMED(load, minutes, FORM_COUNT), \
	NAMED_AS(load, "held", held_ms, FORM_DURATION), \
	NAMED_AS(load, "hold", hold_ms, FORM_DURATION), \
	NAMED_AS(load, "vent_held", vent_held_ms, FORM_DURATION), \
	NAMED_AS(load, "vent", vent_ms, FORM_DURATION), \
	NAMED_AS(load, "reached_in", reached_ms, FORM_DURATION), \
	NAMED(load, raised, FORM_WORDS), \
	NAMED(load, hold_starts, FORM_COUNT), \
	NAMED_AS(load, "steamed", steamed_ms, FORM_MINUTES), \
	NAMED(load, fateless, FORM_JARS), \
	NAMED(load, over_half, FORM_JARS), \
	NAMED(load, windowed, FORM_JARS), \
	NAMED_AS(load, "window_left", window_in_ms, FORM_LEFT), \
	NAMED(load, window_hours, FORM_COUNT), \
	NAMED(load, liquid_lost, FORM_JARS), \
	NAMED(load, broken, FORM_JARS), \
	NAMED_AS(load, "way", way_ms, FORM_HOURS), \
	NAMED_AS(load, "way_limit", way_limit_ms, FORM_HOURS), \
	NAMED_AS(load, "here_words", minutes_here, FORM_HERE)
/* clang-format on */

/* A load that somebody else wrote down: no clock of it ran here. */
struct about_notebook {
	struct called called;
	enum verdict verdict;
	const char *why;
	int fateless;
};
/* clang-format off */
#define NAMES_OF_notebook \
	CALLED(notebook), \
	NAMED(notebook, why, FORM_WORDS), \
	NAMED_AS(notebook, "jars", fateless, FORM_JARS)
/* clang-format on */

/* Fruit in a juicer. */
struct about_run {
	struct called called; /* its lot is its fruit */
	bool water_counts;
	int64_t water_in_ms; /* until the water must be looked at; negative: over */
	int64_t dry_in_ms;   /* until the pan may have boiled dry; negative: it may */
};
/* clang-format off */
#define NAMES_OF_run \
	CALLED(run)
/* clang-format on */

/* On trays, in conditioning jars, or to be packed. */
struct about_drying {
	struct called called;
	bool dries;
	bool conditions;
	bool packs;         /* pieces, which are conditioned first */
	bool own_hours;     /* published nowhere */
	int64_t look_in_ms; /* until it is looked at or shaken; negative: over */
	int64_t high_in_ms; /* until the most that it is said to take is over; negative: it is */
	int64_t conditioned_ms;
	int64_t condition_ms; /* engine/drying/drying.h */
	const char *pretreat; /* to be done before it is spread; "" nothing, or too late */
};
/* clang-format off */
#define NAMES_OF_drying \
	CALLED(drying), \
	NAMED_AS(drying, "conditioned", conditioned_ms, FORM_HOURS), \
	NAMED(drying, pretreat, FORM_WORDS)
/* clang-format on */

/* Food off the heat and in no canner: done in its pot, or filled. */
struct standing {
	bool stands;
	enum acidity acidity;
	int64_t stood_ms; /* for so long */
	int64_t limit_ms; /* the most that is allowed: engine/gate/gate.h */
};

/* In a pot. */
struct about_batch {
	struct called called;
	enum verdict verdict;
	const char *why; /* of the verdict */
	bool published;
	bool in_pot;          /* before its jars are filled */
	bool nowhere;         /* no canner will be free for its jars in time */
	int64_t canner_in_ms; /* -1: none at all */
	struct standing standing;
	int64_t wait_limit_ms; /* of the house, for whatever stands */
};
/* clang-format off */
#define NAMES_OF_batch \
	CALLED(batch), \
	NAMED(batch, why, FORM_WORDS), \
	NAMED_AS(batch, "canner_in", canner_in_ms, FORM_LEFT), \
	STANDING(batch)
/* clang-format on */

/* The running phase of a load, run or batch. */
struct about_clock {
	struct called called;
	const char *phase; /* in words */
	const char *step;  /* what the step key says in it */
	enum { CLOCK_NONE, CLOCK_TIMED, CLOCK_WATCHED, CLOCK_HANDS } clock;
	bool on_rack;
	bool is_loaded; /* a canner filled, and no heat yet */
	bool is_rinse;
	int64_t passed_ms;
	int64_t planned_ms;   /* watched: as long as it may take */
	int64_t wall_step_ms; /* so far the wall clock was moved meanwhile; negative: back */
	bool restarted;
};
/* clang-format off */
#define NAMES_OF_clock \
	CALLED(clock), \
	NAMED(clock, phase, FORM_WORDS), \
	NAMED(clock, step, FORM_WORDS), \
	NAMED_AS(clock, "passed", passed_ms, FORM_MINUTES), \
	NAMED_AS(clock, "planned", planned_ms, FORM_MINUTES), \
	NAMED_AS(clock, "wall_step", wall_step_ms, FORM_MINUTES), \
	NAMED_AS(clock, "wall_way", wall_step_ms, FORM_WAY)
/* clang-format on */

/* Filled jars of one batch and size that have no canner. */
struct about_waiting {
	const char *product;
	int jars;
	struct standing standing;
	bool published;
	bool larger_than_tested;
	bool pressure_canner; /* one stands here */
	bool some_canner;     /* one here has a process and room for it */
};
/* clang-format off */
#define NAMES_OF_waiting \
	NAMED(waiting, product, FORM_WORDS), \
	NAMED(waiting, jars, FORM_JARS), \
	STANDING(waiting)
/* clang-format on */

/* Jars set aside, until that is done. */
struct about_fate {
	const char *lot;
	const char *fate; /* what is to be done: "reprocess" */
	int jars;
	bool limited;
	int64_t in_ms;  /* until it is too late */
	bool in_fridge; /* and the limit is by when it is eaten */
};
/* clang-format off */
#define NAMES_OF_fate \
	NAMED(fate, lot, FORM_WORDS), \
	NAMED(fate, fate, FORM_WORDS), \
	NAMED(fate, jars, FORM_JARS), \
	NAMED_AS(fate, "fate_left", in_ms, FORM_LEFT)
/* clang-format on */

/* A canner, with work in it or without. */
struct about_station {
	const char *station;
	bool dial_gauge;
	bool gauge_known; /* a check of it is on record */
	int64_t gauge_ms; /* since that */
	struct two_groups seals;
};
/* clang-format off */
#define NAMES_OF_station \
	NAMED(station, station, FORM_WORDS), \
	NAMED_AS(station, "gauge_words", gauge_known, FORM_CHECKED), \
	SEALS(station)
/* clang-format on */

struct about_lid_box {
	const char *box;
	bool twice;     /* another box in use bears the same label */
	int64_t age_ms; /* since it was bought; 0: not known */
	int lids;
	int lids_used;
	struct two_groups seals;
};
/* clang-format off */
#define NAMES_OF_lid_box \
	NAMED(lid_box, box, FORM_WORDS), \
	NAMED(lid_box, lids, FORM_COUNT), \
	NAMED(lid_box, lids_used, FORM_JARS), \
	SEALS(lid_box)
/* clang-format on */

/* Who closes jars. */
struct about_person {
	const char *person;
	struct two_groups seals;
};
/* clang-format off */
#define NAMES_OF_person \
	NAMED(person, person, FORM_WORDS), \
	SEALS(person)
/* clang-format on */

/* So much of a supply, and how this house measures it. */
struct supply_amount {
	int64_t amount;
	enum measure measure;
	enum unit_system units;
};

struct about_supply {
	const char *supply;
	enum supply_kind kind;
	bool is_lids; /* all boxes in use together: of no kind */
	struct supply_amount stock;
	struct supply_amount needed; /* by what is open and planned */
};
/* clang-format off */
#define NAMES_OF_supply \
	NAMED(supply, supply, FORM_WORDS), \
	NAMED(supply, stock, FORM_AMOUNT), \
	NAMED(supply, needed, FORM_AMOUNT)
/* clang-format on */

/* Jars that must be found. */
struct about_recall {
	const char *recall; /* what of: "lid box Box A" */
	const char *why;
	const char *noun; /* jars, packages: what those to find are, else those not found */
	int recalled;     /* still to be found */
	int not_found;    /* looked for, and not found */
};
/* clang-format off */
#define NAMES_OF_recall \
	NAMED(recall, recall, FORM_WORDS), \
	NAMED(recall, why, FORM_WORDS), \
	NAMED(recall, noun, FORM_WORDS), \
	NAMED(recall, recalled, FORM_COUNT), \
	NAMED(recall, not_found, FORM_COUNT)
/* clang-format on */

/* A lot that is to be recalled. */
struct about_spoiled {
	const char *lot;
	int spoiled;
	int jars;         /* all of it; the others were not looked at since */
	const char *noun; /* what all those are: jars, packages */
};
/* clang-format off */
#define NAMES_OF_spoiled \
	NAMED(spoiled, lot, FORM_WORDS), \
	NAMED(spoiled, spoiled, FORM_COUNT), \
	NAMED(spoiled, noun, FORM_WORDS), \
	NAMED(spoiled, jars, FORM_COUNT)
/* clang-format on */

/* A load of the past with kept jars: what the gate of today says of it, and that of
 * its day did not. */
struct about_shelved {
	const char *lot;
	const char *why;
	bool worse;
	bool blocks; /* some of it is not to be eaten */
};
/* clang-format off */
#define NAMES_OF_shelved \
	NAMED(shelved, lot, FORM_WORDS), \
	NAMED(shelved, why, FORM_WORDS)
/* clang-format on */

/* Work is started, or a timed phase. */
struct about_key_clock {
	struct wall_clock clock;
};
/* clang-format off */
#define NAMES_OF_key_clock \
	NAMED_AS(key_clock, "clock_words", clock.says, FORM_WORDS), \
	NAMED_AS(key_clock, "last_words", clock.last_entry, FORM_WORDS)
/* clang-format on */

/* A load is started for which there is no process. */
struct about_key_load {
	bool elevation_known;
	enum method method;
	enum acidity acidity;
	const char *why; /* what the engine says */
};
/* clang-format off */
#define NAMES_OF_key_load \
	NAMED(key_load, why, FORM_WORDS)
/* clang-format on */

/* Food that stood is loaded or filled. */
struct about_key_stood {
	const char *product;
	struct standing standing;
};
/* clang-format off */
#define NAMES_OF_key_stood \
	NAMED(key_stood, product, FORM_WORDS), \
	STANDING(key_stood)
/* clang-format on */

/* A batch is started. */
struct about_key_batch {
	const char *product;
	const char *why;     /* it cannot be */
	bool recipe_refused; /* an own recipe with what must not be in it; `why` says */
	bool regular_pectin;
	int multiple;
	int multiple_max;
};
/* clang-format off */
#define NAMES_OF_key_batch \
	NAMED(key_batch, product, FORM_WORDS), \
	NAMED(key_batch, why, FORM_WORDS), \
	NAMED(key_batch, multiple, FORM_COUNT), \
	NAMED(key_batch, multiple_max, FORM_COUNT)
/* clang-format on */

/* Jars are filled, or acid is put into a pot. */
struct about_key_fill {
	bool acid_needed;
	bool acid_in;
	const char *why; /* what acid */
	bool vinegar_asked;
	int vinegar_tenths; /* percent; 0: not said */
};
/* clang-format off */
#define NAMES_OF_key_fill \
	NAMED(key_fill, why, FORM_WORDS)
/* clang-format on */

/* A phase is changed against its rule. */
struct about_key_against {
	const char *station;
	bool vent_cut;
	bool earlier_start;
};
/* clang-format off */
#define NAMES_OF_key_against \
	NAMED(key_against, station, FORM_WORDS)
/* clang-format on */

/* A fate is chosen for a jar. */
struct about_key_fate {
	const char *why; /* it is not open to it; NULL: it is */
};
/* clang-format off */
#define NAMES_OF_key_fate \
	NAMED(key_fate, why, FORM_WORDS)
/* clang-format on */

/* Jars are taken out of the pantry, to be eaten or given away. */
struct about_key_take {
	const char *lot;
	bool blocked; /* by its process they are not to be eaten */
	const char *why;
	int recalled; /* jars of the lot still to be found */
	int spoiled;  /* of its jars; the others were not looked at since */
	int jars;
	const char *noun; /* what those are: jars, packages */
};
/* clang-format off */
#define NAMES_OF_key_take \
	NAMED(key_take, lot, FORM_WORDS), \
	NAMED(key_take, why, FORM_WORDS), \
	NAMED(key_take, recalled, FORM_COUNT), \
	NAMED(key_take, noun, FORM_WORDS), \
	NAMED(key_take, spoiled, FORM_COUNT), \
	NAMED(key_take, jars, FORM_COUNT)
/* clang-format on */

/* One of them, and which: FACTS makes no other pairs. */
#define RULE_MEMBER(TAG, subject, words) struct about_##subject subject;
struct facts {
	enum rule_about about;
	/* clang-format off */
	union {
		RULE_SUBJECTS(RULE_MEMBER)
	};
	/* clang-format on */
};

/* Facts about a subject, by the name of its member. */
#define FACTS(subject, told) ((struct facts){ .about = about_##subject, .subject = (told) })

#endif
