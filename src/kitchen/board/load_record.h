/*
 * load_record.h - what the log holds of one load: the one reader of it, for board, gate, reports, labels and looking back.
 *
 * For the kitchen and what reports are handed; FAULT_... as log/tables/canner.h has them.
 */
#ifndef STILLROOM_KITCHEN_BOARD_LOAD_RECORD_H
#define STILLROOM_KITCHEN_BOARD_LOAD_RECORD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "log/rows/canner.h"
#include "log/rows/house.h"

struct log;
struct text;

/* What is read beside the load's own row, its jars and their lots. */
enum {
	LOAD_STATION = 1U << 0,
	LOAD_PHASES = 1U << 1,
	LOAD_MARKS = 1U << 2,
	LOAD_LIDS = 1U << 3,
	LOAD_SAID = 1U << 4,
};

/* A lot or a lid box, and how many jars of the load are of it. */
struct load_lot {
	struct log_lot row;
	size_t jars;
	char size[WORD_MAX_BYTES]; /* of all of them; "" several sizes */
};

struct load_lids {
	struct log_lid_box row;
	size_t jars;
};

/* The arrays are owned by the record. */
struct load_record {
	struct log_load load;
	struct log_station station;
	struct log_jar *jars; /* by place */
	size_t jar_count;
	struct load_lot *lots; /* in the order of their first jars */
	size_t lot_count;
	struct load_lids *lids; /* likewise */
	size_t lids_count;
	struct log_judgement *said; /* the gate's answers: of the whole load, then of each jar */
	struct log_phase *phases;   /* oldest first */
	size_t phase_count;
	struct log_mark *marks; /* oldest first */
	size_t mark_count;
};

/* `parts`: LOAD_... or'ed.  What is read is freed with load_record_free, which a failed
 * reading has done. */
bool load_record_read(struct log *log, int64_t load_id, unsigned parts, struct load_record *out, struct fault *fault);
/* The same of a load whose row is known. */
bool load_record_of(struct log *log, const struct log_load *load, unsigned parts, struct load_record *out,
                    struct fault *fault);
void load_record_free(struct load_record *record);

/* NULL: none of that number. */
const struct load_lot *load_record_lot(const struct load_record *record, int64_t lot_id);
const struct load_lids *load_record_lids(const struct load_record *record, int64_t lid_box_id);
/* All it holds, several lots of one product as one: "plum jelly and crabapple jelly". */
void load_record_products(const struct load_record *record, struct text *text);
/* Its largest size: an index into jar_sizes; 0 without jars. */
int load_record_largest_jar(const struct load_record *record);

#endif
