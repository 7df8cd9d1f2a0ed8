/*
 * canner.h - rows of lots, loads, their phases and jars, and what bears on a process.
 */
#ifndef STILLROOM_LOG_ROWS_CANNER_H
#define STILLROOM_LOG_ROWS_CANNER_H

#include <stdbool.h>
#include <stdint.h>

#include "base/moment.h"
#include "engine/food/food.h"
#include "engine/gate/gate.h"
#include "engine/physics/elevation.h"
#include "engine/process/process.h"
#include "log/rows/common.h"
#include "log/rows/house.h"

struct log_lid_box {
	int64_t id;
	char label[NAME_MAX_BYTES];
	int64_t bought_wall_ms; /* 0: not noted */
	int lids;
	int used; /* jars that carry one; filled on reading */
	bool retired;
};

struct log_lot {
	int64_t id;
	char code[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	char food[NAME_MAX_BYTES];
	char pack[WORD_MAX_BYTES];
	enum acidity acidity;
	int64_t made_wall_ms;
	enum origin origin;                  /* whose recipe it was made by */
	char origin_words[ORIGIN_WORDS_MAX]; /* what own_recipe_judge said of it; "" nothing */
};

/* In the log "canner": only loads are moved about. */
enum load_place { PLACE_STATION, PLACE_RACK, PLACE_SHELF, PLACE_COUNT };

struct log_load {
	int64_t id;
	int64_t station_id;
	enum method method;
	enum load_place place;
	int minutes;        /* 0: not noted, in a notebook */
	int pressure_psi;   /* NO_PRESSURE: none */
	int headspace_thou; /* 0: not noted, in a notebook */
	char jar_in_table[WORD_MAX_BYTES];
	char source[SOURCE_MAX_BYTES];
	enum confirmed confirmed;
	struct elevation elevation; /* not known: only when a notebook does not say it */
	char elevation_by[NAME_MAX_BYTES];
	/* What the gate said last, and which version of it; filled on reading, written by
	 * log_put_judgement alone. OPEN and version 0: it was never asked. */
	enum verdict verdict;
	char verdict_why[SENTENCE_MAX_BYTES];
	int gate;
	int64_t process_ended_wall_ms; /* 0: not yet */
	int broken;
	int64_t opened_wall_ms;
	bool method_not_noted;         /* from a notebook that does not say it; `method` means nothing */
	char note[SENTENCE_MAX_BYTES]; /* what a notebook says besides */
};

/* Written down in a notebook and not by this program: `confirmed` means nothing.
 * (No process of the tables is without a headspace.) */
static inline bool load_from_notebook(const struct log_load *load)
{
	return load->headspace_thou == 0;
}

enum phase_end { PHASE_RUNNING, PHASE_DONE, PHASE_LOST, PHASE_CUT_SHORT, PHASE_STOPPED, PHASE_END_COUNT };

struct log_phase {
	int64_t id;
	int64_t work_id; /* loads, runs and batches have their numbers in one row */
	char name[WORD_MAX_BYTES];
	struct moment began;
	int64_t required_ms;
	int64_t acknowledged_wall_ms; /* began.wall_ms and how long after; 0: no */
	int64_t ended_wall_ms;        /* 0: running */
	enum phase_end ended_why;
	int64_t lasted_ms; /* once it has ended: by the clock that nobody sets */
};

enum jar_state { JAR_UNCHECKED, JAR_SEALED, JAR_UNSEALED, JAR_DOUBTFUL, JAR_BROKEN, JAR_STATE_COUNT };

enum siphoning { SIPHON_NONE, SIPHON_SLIGHT, SIPHON_UNDER_HALF, SIPHON_OVER_HALF, SIPHON_COUNT };

enum jar_fate { FATE_NONE, FATE_FRIDGE, FATE_FREEZER, FATE_REPROCESS, FATE_DISCARD, FATE_COUNT };

/* The three methods of the seal check, and what each said. */
enum seal_method { SEAL_PRESS, SEAL_TAP, SEAL_EYE, SEAL_METHOD_COUNT };

enum seal_tick { TICK_NONE, TICK_GOOD, TICK_BAD, TICK_COUNT };

/* Why a jar that was kept is no longer there. */
enum jar_gone {
	GONE_NOT,
	GONE_USED,
	GONE_GIVEN,
	GONE_SPOILED,
	GONE_MISSING,
	GONE_THROWN_OUT,
	GONE_NOT_NOTED,
	/* a notebook does not say where it went */ GONE_COUNT
};

struct log_jar {
	int64_t id;
	int64_t load_id;      /* 0: filled and waiting for a canner */
	int64_t batch_id;     /* 0: packed without a pot */
	int64_t drying_id;    /* a package of dried food; 0: a jar */
	struct moment filled; /* wall_ms 0: not noted */
	int64_t lot_id;
	int64_t lid_box_id; /* 0: not noted */
	int place_in_load;  /* 0: waiting */
	char size[WORD_MAX_BYTES];
	enum jar_state state;
	enum siphoning siphoning;
	enum jar_fate fate;
	int64_t fate_by_wall_ms;        /* 0: no deadline */
	int64_t fate_done_wall_ms;      /* 0: not yet */
	int64_t checked_wall_ms;        /* 0: not yet */
	char closed_by[NAME_MAX_BYTES]; /* initials of who filled and closed it; "" nobody said */
	enum seal_tick ticks[SEAL_METHOD_COUNT];
	char checked_by[NAME_MAX_BYTES]; /* initials; "" nobody said */
	int64_t from_jar_id;             /* the jar this one was before it was processed again; 0: none */
	enum jar_gone gone_why;
	int64_t gone_wall_ms; /* 0: still there */
	enum acid acid;       /* what was said of its acid when it was filled */
	enum verdict verdict; /* the gate's for this jar; filled on reading */
	enum acidity acidity; /* of its lot; filled on reading */
};

/* Nobody eats it, gives it away or puts a best-by date on it (engine/gate/gate.h). */
static inline bool jar_is_blocked(const struct log_jar *jar)
{
	return verdict_blocks(jar->verdict, jar->acidity);
}

/* What somebody saw or said that bears on a process and stands in no other row. */
enum mark_kind {
	/* Of a load: */
	MARK_STOPPED,     /* given up; the words say where */
	MARK_FOUND_WRONG, /* found afterward */
	MARK_VENT_CUT,    /* and why */
	MARK_EARLIER,     /* the hold began `amount` ms before its key; who saw it */
	MARK_FORCED_COOLING,
	MARK_WEIGHT_EARLY,
	MARK_RESTARTED,      /* the computer restarted in the hold */
	MARK_CLOCK_BEGAN,    /* another clock at the beginning and at the end of the hold, */
	MARK_CLOCK_ENDED,    /* `amount` ms of its day (the end may lie beyond 24 h) */
	MARK_IMPORTED_WORSE, /* the log it came from called it unknown (1) or not valid (2): `amount`; and why */
	MARK_RAISED,         /* an elevation found wrong in the process: what it is to get; it was to run `amount` ms */
	MARK_VENTED,         /* for `amount` ms, as a notebook says */
	/* Of a lot: */
	MARK_NOT_AS_RECIPE,
	MARK_MULTIPLIED,    /* `amount` batches in one pot, more than the recipe allows; why */
	MARK_VINEGAR,       /* its acid, tenths of a percent */
	MARK_POT_STOOD,     /* done in the pot for `amount` ms before it was filled */
	MARK_ACID_LEFT_OUT, /* and why */
	MARK_ACID_INSTEAD, /* its words: the name (engine/food/food.h) of the acid taken for its jars instead of the recipe's */
	MARK_KIND_COUNT
};

struct log_mark {
	int64_t id;
	int64_t load_id; /* exactly one of load and lot is not 0 */
	int64_t lot_id;
	int64_t phase_id; /* the phase it is about, and counts with; 0: none */
	enum mark_kind kind;
	int64_t amount;
	char words[SENTENCE_MAX_BYTES];
	int64_t wall_ms;
	char who[NAME_MAX_BYTES];
};

/* What the gate said of a load or batch, or of a jar of a load that differs. */
struct log_judgement {
	int64_t jar_id; /* 0: the load or batch */
	enum verdict verdict;
	int gate;                         /* GATE_VERSION of the one that said it */
	char reasons[SENTENCE_MAX_BYTES]; /* ids of gate_reasons, blanks between */
	char why[SENTENCE_MAX_BYTES];
};

/* Jars of one lot that carry lids of one box. */
struct log_lid_use {
	char lot[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	int jars;
	int64_t made_wall_ms; /* of the lot */
};

/* How long phases of a kind have lasted that ended as they should: kept by the log.
 * Left out: those of over PHASE_FORGOTTEN_MS, at which nobody looked. */
#define PHASE_FORGOTTEN_MS (INT64_C(3) * 3600 * 1000) /* house rule */
struct log_phase_mean {
	enum station_kind kind;    /* of the load's method, a juicer or a pot */
	char name[WORD_MAX_BYTES]; /* of the phase */
	int64_t count;
	int64_t sum_ms;
};

#endif
