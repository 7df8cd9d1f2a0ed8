/*
 * pantry.h - rows of jars kept, traced and recalled.
 */
#ifndef STILLROOM_LOG_ROWS_PANTRY_H
#define STILLROOM_LOG_ROWS_PANTRY_H

#include <stdbool.h>
#include <stdint.h>

#include "engine/gate/gate.h"
#include "engine/process/process.h"
#include "log/rows/canner.h"
#include "log/rows/common.h"

#define LOG_WEEK_MS INT64_C(604800000) /* weeks in which the use of jars is counted */

/* Jars kept (sealed, without a fate, not gone) of one product and size. */
struct log_pantry_line {
	char product[NAME_MAX_BYTES];
	char size[WORD_MAX_BYTES];
	int64_t jars;
	struct log_lot oldest;      /* of these, the lot made first */
	enum verdict verdict;       /* the worst of its kept jars' loads */
	int64_t old_jars;           /* made before the instant asked about */
	int64_t used;               /* used or given in the weeks asked about */
	int64_t first_made_wall_ms; /* the first lot of that product ever */
};

/* Jars kept of one lot and size. */
struct log_pantry_lot {
	struct log_lot lot;
	char size[WORD_MAX_BYTES];
	int64_t jars;
	enum verdict verdict; /* the worst of their loads */
};

/* A lot of which jars spoiled, while others are kept that no recall has looked at since. */
struct log_lot_spoiled {
	int64_t lot_id;
	char code[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	int64_t spoiled;
	int64_t jars; /* that sealed and were kept, those gone since too */
	bool dried;   /* packages of dried food */
};

/* Jars kept of one lot and size that are not to be eaten: those an open recall still
 * looks for, or those that verdict_blocks. */
struct log_pantry_part {
	int64_t lot_id;
	char product[NAME_MAX_BYTES];
	char size[WORD_MAX_BYTES];
	int64_t jars;
};

/* What jars can be traced from. */
/* clang-format off */
#define WORK_TRACED(TAG, word) TRACE_##TAG,
enum trace_about {
	TRACE_LOT,
	TRACE_LID_BOX,
	EACH_WORK(WORK_TRACED)
	TRACE_PRODUCT,
	TRACE_DAY,
	TRACE_ABOUT_COUNT
};
/* clang-format on */

struct log_trace {
	enum trace_about about;
	int64_t id;                   /* of the lot, lid box, load, batch, run or drying */
	char product[NAME_MAX_BYTES]; /* capitals do not matter */
	int64_t from_wall_ms;         /* the day is [from, to) */
	int64_t to_wall_ms;
};

enum recall_outcome {
	RECALL_TO_FIND,
	RECALL_THROWN_OUT,
	RECALL_NOT_FOUND,
	RECALL_CLEARED,
	RECALL_REPROCESSED, /* it is another jar now, which the recall follows */
	RECALL_GONE,        /* somebody says that it is gone: it is looked for no more */
	RECALL_OUTCOME_COUNT
};

struct log_recall {
	int64_t id;
	enum trace_about about;
	char which[NAME_MAX_BYTES];     /* an id, a product, a day as 2026-09-14 */
	char words[SENTENCE_MAX_BYTES]; /* what it was called then */
	char reason[SENTENCE_MAX_BYTES];
	int64_t opened_wall_ms;
	int64_t jars;      /* and packages; filled on reading */
	int64_t packages;  /* of these, dried food; filled on reading */
	int64_t to_find;   /* of these, still to be found; filled on reading */
	int64_t not_found; /* of these, looked for and not found; it stays open for them too */
};

struct log_recall_jar {
	int64_t recall_id;
	int64_t jar_id;
	enum recall_outcome outcome;
	int64_t outcome_wall_ms; /* 0: to be found */
	char who[NAME_MAX_BYTES];
};

/* A jar and all that says where it is. */
struct log_traced {
	struct log_jar jar;
	char lot[NAME_MAX_BYTES];
	char product[NAME_MAX_BYTES];
	char food[NAME_MAX_BYTES];
	enum acidity acidity;
	int64_t made_wall_ms;
	char pot_lot[NAME_MAX_BYTES]; /* a package: of the pot that it was dried out of; "" none */
	enum load_place place;        /* only with a load */
	enum verdict verdict;
	int64_t next_jar_id;        /* what it became when it was processed again; 0: nothing */
	bool recalled;              /* an open recall still looks for it */
	struct log_recall_jar mark; /* of the recall that was asked for; recall_id 0: traced only */
};

/* Lots with jars that sealed and have no fate, by code, and how many. */
struct log_lot_kept {
	struct log_lot lot;
	int64_t jars;
};

#endif
