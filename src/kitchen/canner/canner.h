/*
 * canner.h - loads: begun, made of jars that wait, their seals checked.
 *
 * Each act returns true when the log holds it durably, or false with a fault and
 * nothing changed (kitchen/board/board.h).
 */
#ifndef STILLROOM_KITCHEN_CANNER_CANNER_H
#define STILLROOM_KITCHEN_CANNER_CANNER_H

#include "kitchen/board/board.h"

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
/* FAULT_STOPPED: a food that takes acid, of which nobody said that it is in; vinegar
 * weaker than 5 percent or of unknown strength.  With a reason: not valid, or unknown. */
bool kitchen_start_load(struct kitchen *kitchen, const struct load_order *order, int64_t *load_id, struct fault *fault);

/* --- jars that wait, and which canner takes them --- */

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

struct loader_proposal {
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
                     struct loader_proposal *out);
/* Does a proposal put any of the waiting jars into this canner now or later?  No: the fault says why, of the
 * jars that wait longest. */
bool kitchen_takes_waiting(const struct kitchen *kitchen, const struct moment *now, int64_t station_id,
                           const struct loader_proposal *offer, struct fault *why);
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
 * filled again: they have stood since now. */
bool kitchen_refill(struct kitchen *kitchen, int64_t batch_id, const char *size, struct fault *fault);
/* Waiting jars of one batch and size that no canner will take: into the fridge or
 * the freezer, or out (FATE_REPROCESS is refused: they were not processed). */
bool kitchen_put_away(struct kitchen *kitchen, int64_t batch_id, const char *size, enum jar_fate fate,
                      struct fault *fault);

/* --- seal check --- */

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
/* May the fate be chosen now, and until when would it run (wall ms, 0: at once)? */
bool jar_fate_open(const struct log_jar *jar, const struct log_load *load, enum jar_fate fate, int64_t now_wall_ms,
                   int64_t *by_wall_ms, struct fault *fault);
const char *jar_fate_words(enum jar_fate fate);                              /* "fridge" */
const char *jar_fate_advice(enum jar_fate fate, const struct log_lot *lot);  /* what to do */
const char *jar_fate_sourced(enum jar_fate fate, const struct log_lot *lot); /* the same, with its source */
const char *jar_fate_source(enum jar_fate fate); /* of FATE_DISCARD: "", its steps have theirs (food.h) */
enum suspect_group lot_suspect_group(const struct log_lot *lot);
/* What holds for jars that did not seal, or whose process was wrong, in words and with its
 * source: the refusals above say what follows from it. */
struct unsealed_rule {
	const char *words;
	const char *source;
};
extern const struct unsealed_rule unsealed_rules[];
extern const size_t unsealed_rule_count;

/* Is suspect food of it treated as toxic (low-acid and tomato, A539)? */
bool lot_is_suspect(const struct log_lot *lot);
const char *jar_gone_words(enum jar_gone gone); /* "given away"; GONE_NOT: "kept" */

#endif
