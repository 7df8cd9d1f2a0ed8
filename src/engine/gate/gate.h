/*
 * gate.h - is a process valid?  The one place that answers.
 *
 * From what is on record of a load and its jars: valid, not valid or unknown,
 * with every reason.  Whoever makes jars (a load packed by hand, jars from a
 * pot, a load processed again, a correction, an import) brings what it knows
 * and takes what comes out; nobody else ever names a verdict.
 *
 * Missing is not well: what nobody noted makes a process unknown.  A verdict
 * speaks of the process only.  It never says that food may be eaten.
 *
 * Units: milliseconds, whole minutes, psi over local air; percent of acid in
 * tenths.  Sources of the figures stand beside them and in gate_reasons.
 * GATE_VERSION goes up whenever the same evidence may get another answer; old
 * loads keep the answer they were given.
 */
#ifndef STILLROOM_ENGINE_GATE_GATE_H
#define STILLROOM_ENGINE_GATE_GATE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/text.h"
#include "engine/food/food.h"
#include "engine/physics/elevation.h"
#include "engine/process/process.h"

#define GATE_VERSION 2

enum verdict {
	VERDICT_OPEN, /* the process is not over, and nothing is against it so far */
	VERDICT_VALID,
	VERDICT_NOT_VALID,
	VERDICT_UNKNOWN,
	VERDICT_COUNT
};

/* How long a filled jar, or food done in its pot, may stand before the canner is
 * heated.  No published limit was found: common practice, no source.  A house
 * may shorten them, never lengthen. */
#define STANDING_ASK_MS (INT64_C(30) * 60 * 1000)
#define STANDING_MAX_MS (INT64_C(2) * 3600 * 1000)
#define STANDING_LOW_ACID_MAX_MS (INT64_C(1) * 3600 * 1000)
int64_t standing_limit_ms(enum acidity acidity, int64_t house_ms); /* house_ms 0: no shorter one */
/* From filling until the hold begins: that standing, and an hour to heat in.  A large
 * pressure canner takes 35 to 60 min of it, its vent among them (A539 Guide 1: 12 to 15
 * to steam, 10 of vent, 3 to 5 to pressure); no published limit was found: common
 * practice, no source. */
#define HEATING_MAX_MS (INT64_C(1) * 3600 * 1000)
int64_t way_limit_ms(enum acidity acidity, int64_t house_ms);

#define GATE_VENT_MS (INT64_C(10) * 60 * 1000) /* A539 Guide 1; PNW421; KSU */
/* Pressure falls by itself; a heavy-walled canner without a vent lock takes about so
 * long from heat off (A539 Guide 1, page 1-22; PNW421). */
#define COOL_DOWN_PINTS_MS (INT64_C(30) * 60 * 1000)
#define COOL_DOWN_QUARTS_MS (INT64_C(45) * 60 * 1000)
#define VINEGAR_LEAST_TENTHS 50 /* 5 percent: A539 Guide 6 */

/* How a pressure canner shows that its pressure is gone. */
enum canner_wall {
	WALL_NOT_SAID,
	WALL_HEAVY, /* heavy-walled, no vent lock: by the clock */
	WALL_LOCK,  /* a vent lock that drops */
	WALL_COUNT
};
int64_t cool_down_least_ms(enum canner_wall wall, int largest_jar); /* 0: the clock does not tell */

#define NOT_ON_RECORD (-1)

/* What is known of a load as a whole. */
struct load_evidence {
	bool from_notebook; /* written down by hand, not by this program */
	bool method_known;
	enum method method;
	int minutes;                /* the hold it was given; 0: not noted */
	int pressure_psi;           /* NO_PRESSURE: none, or not noted */
	struct elevation elevation; /* where it was, as is known now */
	enum canner_wall wall;
	int largest_jar; /* index into jar_sizes */

	bool over; /* its jars are out of the canner */

	/* Since it was last begun from the start: */
	int64_t held_ms;        /* the last hold that ran to its end; NOT_ON_RECORD: none did yet */
	int64_t vented_ms;      /* the last vent; NOT_ON_RECORD */
	int64_t cooled_ms;      /* heat off to zero pressure; NOT_ON_RECORD: not over, or no pressure */
	int64_t earlier_ms;     /* the hold was said to have begun so much before its key; 0: no */
	bool hold_over_restart; /* the computer restarted in that hold */
	int64_t read_held_ms;   /* that hold by another clock; NOT_ON_RECORD: nobody read one */
	bool forced_cooling;
	bool weight_early;

	/* What a person said, "" nothing: */
	const char *earlier;    /* who saw it begin */
	const char *vent_cut;   /* why the vent was cut short */
	const char *stopped;    /* where and after how long the process was given up */
	const char *wrong;      /* what was found wrong after it */
	const char *worse;      /* why the log it was imported from thought worse of it */
	enum verdict worse_was; /* and what it called it */
};

/* What is known of one jar. */
struct jar_evidence {
	const char *food; /* of the process tables; "" none */
	const char *pack; /* "" not said */
	const char *jar;  /* size */
	enum acid acid;
	const char *acid_why;    /* why it was left out; NULL or "": nobody said */
	int vinegar_tenths;      /* its percent, tenths; 0: not said */
	const char *vinegar_why; /* why it was used so; NULL or "": nobody said */
	enum origin origin;
	const char *origin_words;  /* as own_recipe_judge gives them */
	int64_t stood_ms;          /* filled, waiting for heat; NOT_ON_RECORD */
	int64_t pot_stood_ms;      /* done in the pot, waiting to be filled; NOT_ON_RECORD */
	int64_t way_ms;            /* from filling, or a lost hold, until a hold began: the longest; NOT_ON_RECORD */
	int sheet_minutes;         /* of process, as the sheet of its pectin asks; 0: none */
	int64_t limit_ms;          /* the house's own standing limit; 0: none */
	const char *not_as_recipe; /* "" nothing was said */
	int multiple;              /* more batches in one pot than its recipe allows; 0: no */
	const char *multiple_why;
};

enum gate_reason {
	GATE_STOPPED,
	GATE_FOUND_WRONG,
	GATE_IMPORTED_NOT_VALID,
	GATE_LOW_ACID_NO_PRESSURE,
	GATE_ACID_LEFT_OUT,
	GATE_ACID_OTHER,
	GATE_VINEGAR_WEAK,
	GATE_RECIPE_REFUSED,
	GATE_NO_PROCESS,
	GATE_TOO_SHORT,
	GATE_TOO_LITTLE_PRESSURE,
	GATE_HOLD_SHORT,
	GATE_VENT_SHORT,
	GATE_CLOCK_SHORT,
	GATE_CLOCK_NOT_READ,
	GATE_NOTEBOOK,
	GATE_NOT_AS_RECIPE,
	GATE_STOOD,
	GATE_SLOW_HEAT,
	GATE_POT_STOOD,
	GATE_ZERO_EARLY,
	GATE_FORCED_COOLING,
	GATE_WEIGHT_EARLY,
	GATE_EARLIER,
	GATE_MULTIPLIED,
	GATE_OWN_RECIPE,
	GATE_ORIGIN_NOT_SAID,
	GATE_FOOD_NOT_SAID,
	GATE_PACK_NOT_SAID,
	GATE_METHOD_NOT_SAID,
	GATE_ELEVATION_NOT_SAID,
	GATE_MINUTES_NOT_SAID,
	GATE_PRESSURE_NOT_SAID,
	GATE_HOLD_NOT_SAID,
	GATE_VENT_NOT_SAID,
	GATE_ACID_NOT_SAID,
	GATE_VINEGAR_NOT_SAID,
	GATE_IMPORTED_UNKNOWN,
	/* Said beside a valid process: */
	GATE_CLOCK_READ,
	GATE_PRACTICE,
	GATE_OWN_CLASS,
	GATE_ABOVE_TABLES,
	GATE_REASON_COUNT
};

struct gate_reason_row {
	const char *id;                    /* as stored: "acid-not-said" */
	enum verdict makes[ACIDITY_COUNT]; /* of acid, acidified, low-acid food; VALID: a remark only */
	const char *
	    sentence; /* {a} {b} numbers, {a:time} "9:30", {a:hours} "3 h 12 min", {words}, {:words} ": ..." or nothing */
	const char *source;
};
extern const struct gate_reason_row gate_reasons[GATE_REASON_COUNT];

#define FINDING_WORDS_MAX 200
struct finding {
	enum gate_reason reason;
	enum verdict makes;
	int64_t a;
	int64_t b;
	char words[FINDING_WORDS_MAX];
};

#define FINDINGS_MAX 16 /* further ones of a worse kind push out remarks */
struct judgement {
	enum verdict verdict;
	size_t count; /* worst first */
	struct finding findings[FINDINGS_MAX];
};

/* Judge a load of `count` jars (at least one): `load` is the worst of its jars with
 * all their reasons, jars[i] the answer for each.  `jar_out` may be NULL. */
void gate_judge(const struct load_evidence *load, const struct jar_evidence *jars, size_t count,
                struct judgement *load_out, struct judgement *jar_out);

/* What stands against jars before any canner: recipe, acid, pot.  OPEN: nothing. */
void gate_judge_pot(const struct jar_evidence *jar, struct judgement *out);

/* All reasons as sentences, worst first, "; " between them; "" when there is none. */
void gate_say(const struct judgement *judgement, struct text *text);
/* Their ids, blanks between them. */
void gate_ids(const struct judgement *judgement, struct text *text);

/* Nobody eats it, gives it away or puts a best-by date on it: not valid, or
 * low-acid and unknown. */
bool verdict_blocks(enum verdict verdict, enum acidity acidity);
/* 0 valid or open, 1 unknown, 2 not valid. */
int verdict_badness(enum verdict verdict);

#endif
