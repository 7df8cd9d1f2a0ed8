/*
 * history.h - rows of looking back.
 */
#ifndef STILLROOM_LOG_ROWS_HISTORY_H
#define STILLROOM_LOG_ROWS_HISTORY_H

#include <stdbool.h>
#include <stdint.h>

#include "engine/gate/gate.h"
#include "log/rows/common.h"
#include "log/rows/house.h"
#include "log/rows/journal.h"

/* A load, run or batch of any season as one line. */
struct log_work {
	int64_t id; /* its place in time: a later one is larger; changes when it is corrected */
	struct log_subject subject;
	int season;
	int64_t station_id;
	char product[NAME_MAX_BYTES]; /* loads of several: all of them, cut; runs: the fruit */
	char lot[NAME_MAX_BYTES];     /* likewise; runs: "" */
	enum verdict verdict;         /* runs: OPEN */
	bool open;                    /* still in a station, or its process has no end yet */
	int lost;                     /* boils, steam or pressure lost */
	int64_t fruit_mg;             /* runs that told both */
	int64_t juice_ul;
	int jars; /* loads: not broken */
	int broken;
	int looked; /* lids looked at, and those that had not sealed */
	int failed;
	int64_t opened_wall_ms; /* to the second */
};

enum work_state {
	WORK_ANY,
	WORK_UNSEALED, /* loads with a jar that did not seal, or a doubtful one */
	WORK_NOT_VALID,
	WORK_UNKNOWN,
	WORK_VALID,
	WORK_RESTARTED, /* a boil, steam or pressure was lost */
	WORK_LOSSES,    /* a jar lost liquid */
	WORK_BROKEN,    /* a jar broke */
	WORK_NOTED,     /* a note is on it */
	WORK_OPEN,
	WORK_STATE_COUNT
};

#define FIND_WORDS_MAX 12
#define FIND_MAX_BYTES 256
struct log_wish {
	int season;             /* 0: any */
	enum subject_kind kind; /* SUBJECT_HOUSE: any */
	enum work_state state;
	char product[NAME_MAX_BYTES]; /* exactly this; "": any */
	/* Each word, parted from the next by a blank, is any part of its product, lot, day, ingredients,
	 * notes, reasons, or of what the journal tells of it and by whom: "each" finds peaches. Capitals
	 * count for nothing in the letters A to Z (log/history/find_words.h). */
	char words[FIND_MAX_BYTES];
	struct log_teller teller;
};

/* What of a season is added up besides how much was begun: each is a look of its own through
 * the rows of that year. */
enum season_part {
	SEASON_WITH_JARS = 1,
	SEASON_WITH_VERDICTS = 2,
	SEASON_WITH_SEALS = 4,
	SEASON_WITH_YIELD = 8,
	SEASON_WITH_HOURS = 16,
	SEASON_WITH_COME_UP = 32,
	SEASON_WITH_BUSIEST = 64,
	SEASON_WITH_DRIED = 128,
	SEASON_WHOLE = 255
};

/* The sums of a season: a year, UTC, of when the work was begun; the lids: of when
 * they were looked at. What was not asked for is 0. */
struct log_season {
	int season;
	int64_t loads;
	int64_t runs;
	int64_t batches;
	int64_t jars; /* not broken */
	int64_t broken;
	int64_t not_valid; /* loads */
	int64_t unknown;
	int64_t lost;     /* boils, steam or pressure lost */
	int64_t come_ups; /* loads that came up to a hold or a vent, and their time together */
	int64_t come_up_ms;
	int64_t fruit_mg; /* of runs that told both */
	int64_t juice_ul;
	int64_t acts;
	int64_t worked_ms; /* between acts less than two hours apart: house rule */
	int64_t looked;
	int64_t failed;
	char busiest[NAME_MAX_BYTES]; /* station; "": none was busy */
	int64_t busiest_ms;
	int64_t dryings;
	int64_t packages; /* out of them */
	int64_t dried_mg; /* fruit that went in by weight, and puree that did: each drying has one of both */
	int64_t dried_ul;
	int64_t dried_ms; /* on the heat */
};

/* What was dried of one product. */
struct log_season_dried {
	char product[NAME_MAX_BYTES];
	int64_t dryings;
	int64_t packages;
	int64_t fruit_mg;
	int64_t puree_ul;
	int64_t dried_ms;
};

struct log_season_product {
	char product[NAME_MAX_BYTES];
	int64_t loads;
	int64_t jars;
	int64_t broken;
	int64_t looked; /* here by the season in which they were made */
	int64_t failed;
};

struct log_season_station {
	int64_t station_id;
	char name[NAME_MAX_BYTES];
	enum station_kind kind;
	int64_t works; /* loads, runs or batches */
	int64_t busy_ms;
};

struct log_season_fruit {
	char fruit[NAME_MAX_BYTES]; /* in lower case */
	int64_t runs;
	int64_t fruit_mg;
	int64_t juice_ul;
};

#define COME_UP_MINUTES_MAX 240 /* that or more */
struct log_season_come_up {
	int64_t station_id;
	int minutes; /* begun */
	int64_t loads;
};

/* Every product that was ever in a load, by name; the first NAME_MAX_BYTES - 1 bytes. */
struct log_name {
	char name[NAME_MAX_BYTES];
};

#endif
