/*
 * pot.h - rows of juicer runs, juice and batches.
 */
#ifndef STILLROOM_LOG_ROWS_POT_H
#define STILLROOM_LOG_ROWS_POT_H

#include <stdbool.h>
#include <stdint.h>

#include "base/moment.h"
#include "engine/gate/gate.h"
#include "engine/recipe/juice_yield.h"
#include "engine/recipe/recipe.h"
#include "log/rows/common.h"

struct log_run {
	int64_t id;
	int64_t station_id;
	char fruit[NAME_MAX_BYTES];
	int64_t fruit_mg;
	bool open;
	int64_t water_every_ms;
	struct moment water; /* when the water was last seen; wall_ms 0: heat not on yet */
	int water_checks;
	int64_t opened_wall_ms;
};

enum juice_state { JUICE_HOT, JUICE_CHILLED, JUICE_FROZEN, JUICE_STATE_COUNT };

struct log_juice {
	int64_t id;
	int64_t run_id; /* 0: brought in */
	char kind[NAME_MAX_BYTES];
	int64_t made_ul;
	int64_t left_ul; /* made less used; filled on reading */
	enum juice_state state;
	int64_t made_wall_ms;
	int64_t state_wall_ms;
};

enum juice_why { JUICE_FOR_BATCH, JUICE_CORRECTION, JUICE_DISCARDED, JUICE_WHY_COUNT };

struct log_juice_use {
	int64_t id;
	int64_t juice_id;
	int64_t batch_id; /* 0: none */
	int64_t ul;
	enum juice_why why;
	int64_t wall_ms;
};

struct log_batch {
	int64_t id;
	int64_t station_id;
	int64_t lot_id;
	char recipe[NAME_MAX_BYTES];
	int multiple;
	int boil_hold_s;
	int headspace_thou;
	char source[SOURCE_MAX_BYTES];
	bool published; /* false: no published process */
	uint32_t ticks;
	bool warm_jars;
	bool open;
	char note[SENTENCE_MAX_BYTES];
	int64_t opened_wall_ms;
	/* What the gate said last of its recipe, acid and pot, as of a load: never VALID. */
	enum verdict verdict;
	char verdict_why[SENTENCE_MAX_BYTES];
	char jar[WORD_MAX_BYTES]; /* the size it is meant for; "" not said */
	int sheet_minutes;        /* of process by the sheet of its pectin; 0: it prints none */
};

struct log_batch_amount {
	int64_t id;
	int64_t batch_id;
	int place;
	char ingredient[NAME_MAX_BYTES];
	enum supply_kind supply;
	enum measure measure;
	int64_t wanted;
	int64_t used;
};

/* Sums over the runs of a fruit that are over: see run_yield in schema/log.sql. */
struct log_fruit_yield {
	char fruit[NAME_MAX_BYTES]; /* as written, in lower case */
	struct juice_runs runs;
};

#endif
