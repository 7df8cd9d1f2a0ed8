/*
 * dryer.h - rows of what is dried.
 */
#ifndef STILLROOM_LOG_ROWS_DRYER_H
#define STILLROOM_LOG_ROWS_DRYER_H

#include <stdbool.h>
#include <stdint.h>

#include "base/moment.h"
#include "engine/drying/drying.h"
#include "log/rows/common.h"

/* A drying: what was spread on the trays of one dryer at a time.  What was published on that day is copied.  Out of a
 * notebook neither amount, trays nor hours are noted: 0. */
struct log_drying {
	int64_t id;
	int64_t station_id;
	int64_t lot_id;
	enum drying_class class;
	int64_t fruit_mg; /* as it was weighed; 0: puree */
	int64_t puree_ul; /* spread for leather; 0: fruit by weight */
	int trays;
	int64_t low_ms; /* the first test for dryness, since it was spread */
	int64_t high_ms;
	bool own_hours; /* published nowhere: the house gave them */
	char test[SOURCE_MAX_BYTES];
	char source[SOURCE_MAX_BYTES];
	struct moment look; /* last look at the trays, or shake of the jars; wall_ms 0: none yet */
	int looks;
	int shakes;
	bool open;       /* not packed yet */
	bool at_station; /* its trays are still in the dryer */
	int packages;
	int64_t opened_wall_ms;
	int64_t batch_id;   /* the pot it was taken from; 0: fruit or puree of its own */
	int64_t pot_lot_id; /* its lot, where the pot is of another log; 0: none, or batch_id tells */
};

#endif
