/*
 * seasons.h - looking back: what each season came to, the seasons beside one
 * another, and every load, run and batch of them to browse, search and open.
 *
 * A season is a calendar year, UTC.  Arrays are malloc'ed and freed by the caller.
 */
#ifndef STILLROOM_KITCHEN_HISTORY_SEASONS_H
#define STILLROOM_KITCHEN_HISTORY_SEASONS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "kitchen/exchange/labels.h"
#include "kitchen/stock/ahead.h"
#include "log/rows/history.h"

/* --- the sums ----------------------------------------------------------------------- */

/* What the seasons are compared by. */
enum season_measure {
	BY_JARS,
	BY_FAILED,  /* share of lids that did not seal */
	BY_YIELD,   /* juice by weight of fruit */
	BY_HOURS,   /* at work */
	BY_COME_UP, /* mean come-up of a load */
	BY_BUSIEST, /* hours of the station that was busy longest */
	BY_DRIED,   /* packages of dried food */
	BY_COUNT
};
const char *season_measure_words(enum season_measure measure); /* "jars", "lids not sealed" */
/* Newest first; only those in which something was begun.  Besides loads, batches, runs, dryings and jars only
 * what that measure needs is added up; BY_COUNT: everything, which takes several times as long. */
bool kitchen_seasons(const struct kitchen *kitchen, enum season_measure measure, struct log_season **rows,
                     size_t *count, struct fault *fault);
/* False: nothing to measure it by.  Jars; a share, 0 to 1; uL a kg; hours; minutes. */
bool season_value(const struct log_season *season, enum season_measure measure, double *value);
/* The value in words: "312", "2.5% (0.8-5.7)" with where the true share may lie
 * (engine/stats/interval.h), "1.9 qt/10 lb" or "0.61 L/kg", "41 h 20", "22 min", "31 h 05
 * Big kettle". */
void season_value_words(const struct log_season *season, enum season_measure measure, enum unit_system units,
                        char *buffer, size_t size); /* "-": none */

/* How the measure is worked out, in words. */
const char *season_measure_how(enum season_measure measure);

/* How often lids failed, of a product, box, canner or person. */
struct season_rate {
	char name[NAME_MAX_BYTES];
	int64_t looked;
	int64_t failed;
	double low; /* engine/stats/interval.h */
	double high;
	bool clear; /* clearly above the others of the season: engine/stats/odds.h */
};
double season_share(const struct season_rate *rate); /* failed of looked; 0: none looked at */
struct season_rates {
	struct season_rate *rows; /* most failed first */
	size_t count;
};

#define COME_UP_BIN_MINUTES 5
#define COME_UP_BINS (COME_UP_MINUTES_MAX / COME_UP_BIN_MINUTES + 1)

struct season {
	struct log_season sum;
	struct season_rate all;       /* of the whole house */
	struct season_rates products; /* by the season they were made in; the others by the look */
	struct season_rates lid_boxes;
	struct season_rates canners;
	struct season_rates people;
	struct log_season_product *made; /* most jars first */
	size_t made_count;
	struct log_season_fruit *fruits; /* most fruit first */
	size_t fruit_count;
	struct log_season_dried *dried; /* most packages first */
	size_t dried_count;
	struct log_season_station *stations; /* busiest first */
	size_t station_count;
	int64_t come_up[COME_UP_BINS]; /* loads by come-up; the last: 4 h or more */
	int64_t come_ups;
	int come_up_median; /* minutes begun; -1: no load came up */
};
/* FAULT_MISSING: nothing was made in that year.  Free with season_clear. */
bool kitchen_season(const struct kitchen *kitchen, int year, struct season *out, struct fault *fault);
void season_clear(struct season *season); /* of {0} is allowed */

/* A season as lines to draw, for the board and for the report alike. */
enum figure_kind {
	FIGURE_HEADING,
	FIGURE_WORDS, /* a paragraph in `words` */
	FIGURE_BAR,   /* label, `at`, words */
	FIGURE_RATE,  /* label, `low` to `high` with a mark at `at`, words */
};
struct figure {
	enum figure_kind kind;
	char label[NAME_MAX_BYTES];
	char words[160];
	char plain[160]; /* FIGURE_WORDS: what is said where methods are not; "": the words */
	double low;      /* from 0 to 1 of the room there is */
	double at;
	double high;
	bool clear; /* a rate to look at */
};
bool season_figures(const struct season *season, enum unit_system units, struct figure **rows, size_t *count,
                    struct fault *fault);

/* --- browsing and searching ------------------------------------------------------------ */

struct works {
	struct log_work *rows; /* newest first, in either direction */
	size_t count;
};
/* As log_works. */
bool kitchen_works(const struct kitchen *kitchen, const struct log_wish *wish, int64_t from_id, bool older, int most,
                   struct works *out, struct fault *fault);
const char *work_state_words(enum work_state state); /* "any state", "unsealed jars" */
/* "9 jars, 2 did not seal", "12 lb 4 oz, 3 qt juice"; a batch has none: "". */
void work_words(const struct log_work *work, enum unit_system units, char *buffer, size_t size);
/* "NOT VALID", "unknown", "open", "valid", "". */
const char *work_verdict_words(const struct log_work *work);
bool kitchen_product_names(const struct kitchen *kitchen, struct log_name **rows, size_t *count, struct fault *fault);

/* --- one of them -------------------------------------------------------------------------- */

/* What is known of a load, run or batch, to be read from top to bottom. */
enum past_kind {
	PAST_TITLE,
	PAST_FACT,
	PAST_GOOD,    /* a valid process */
	PAST_BAD,     /* not valid, or unknown */
	PAST_CAUTION, /* what a record cannot say */
	PAST_SOURCE,  /* where the fact before it comes from; a board has it one key deeper */
};
struct past_line {
	enum past_kind kind;
	char words[SENTENCE_MAX_BYTES];
};
bool kitchen_past(const struct kitchen *kitchen, struct log_subject subject, struct past_line **rows, size_t *count,
                  struct fault *fault);

#endif
