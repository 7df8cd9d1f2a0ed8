/*
 * subject.h - what the rules of the warnings look at: one struct for each subject,
 * filled by whoever asks.
 *
 * A new subject is a line of RULE_SUBJECTS, a struct about_... and a table of names
 * in rule.c; the tag, the unions and the type of its rules follow from the line.
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
	int waiting;                       /* filled jars without a canner */
	int left_over;                     /* of these, more than the canners take in this round */
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

/* A load that somebody else wrote down: no clock of it ran here. */
struct about_notebook {
	struct called called;
	enum verdict verdict;
	const char *why;
	int fateless;
};

/* Fruit in a juicer. */
struct about_run {
	struct called called; /* its lot is its fruit */
	bool water_counts;
	int64_t water_in_ms; /* until the water must be looked at; negative: over */
	int64_t dry_in_ms;   /* until the pan has surely boiled dry; negative: it has */
};

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

/* Jars set aside, until that is done. */
struct about_fate {
	const char *lot;
	const char *fate; /* what is to be done: "reprocess" */
	int jars;
	bool limited;
	int64_t in_ms;  /* until it is too late */
	bool in_fridge; /* and the limit is by when it is eaten */
};

/* A canner, with work in it or without. */
struct about_station {
	const char *station;
	bool dial_gauge;
	bool gauge_known; /* a check of it is on record */
	int64_t gauge_ms; /* since that */
	struct two_groups seals;
};

struct about_lid_box {
	const char *box;
	bool twice;     /* another box in use bears the same label */
	int64_t age_ms; /* since it was bought; 0: not known */
	int lids;
	int lids_used;
	struct two_groups seals;
};

/* Who closes jars. */
struct about_person {
	const char *person;
	struct two_groups seals;
};

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

/* Jars that must be found. */
struct about_recall {
	const char *recall; /* what of: "lid box Box A" */
	const char *why;
	int recalled;  /* still to be found */
	int not_found; /* looked for, and not found */
};

/* A lot that is to be recalled. */
struct about_spoiled {
	const char *lot;
	int spoiled;
	int jars; /* all of it; the others were not looked at since */
};

/* A load of the past with kept jars: what the gate of today says of it, and that of
 * its day did not. */
struct about_shelved {
	const char *lot;
	const char *why;
	bool worse;
	bool blocks; /* some of it is not to be eaten */
};

/* Work is started, or a timed phase. */
struct about_key_clock {
	struct wall_clock clock;
};

/* A load is started for which there is no process. */
struct about_key_load {
	bool elevation_known;
	enum method method;
	enum acidity acidity;
	const char *why; /* what the engine says */
};

/* Food that stood is loaded or filled. */
struct about_key_stood {
	const char *product;
	struct standing standing;
};

/* A batch is started. */
struct about_key_batch {
	const char *product;
	const char *why;     /* it cannot be */
	bool recipe_refused; /* an own recipe with what must not be in it; `why` says */
	bool regular_pectin;
	int multiple;
	int multiple_max;
};

/* Jars are filled, or acid is put into a pot. */
struct about_key_fill {
	bool acid_needed;
	bool acid_in;
	const char *why; /* what acid */
	bool vinegar_asked;
	int vinegar_tenths; /* percent; 0: not said */
};

/* A phase is changed against its rule. */
struct about_key_against {
	const char *station;
	bool vent_cut;
	bool earlier_start;
};

/* A fate is chosen for a jar. */
struct about_key_fate {
	const char *why; /* it is not open to it; NULL: it is */
};

/* Jars are taken out of the pantry, to be eaten or given away. */
struct about_key_take {
	const char *lot;
	bool blocked; /* by its process they are not to be eaten */
	const char *why;
	int recalled; /* jars of the lot still to be found */
	int spoiled;  /* of its jars; the others were not looked at since */
	int jars;
};

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
