/*
 * canner_views.h - the views of loads: begun, looked at for their seals, jars set aside and
 * processed again.
 */
#ifndef STILLROOM_SCREEN_CANNER_CANNER_VIEWS_H
#define STILLROOM_SCREEN_CANNER_CANNER_VIEWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/fault.h"
#include "engine/process/process.h"
#include "kitchen/canner/canner.h"
#include "kitchen/canner/reprocess.h"
#include "screen/ui/picker.h"

struct desk;
struct view;

enum start_field {
	START_PRODUCT,
	START_PACK,
	START_JAR,
	START_PRESSURE,
	START_COUNT,
	START_LIDS,
	START_ACID,    /* which acid is in: only of a food that takes some */
	START_VINEGAR, /* how strong: only of a printed recipe that lives by it */
	START_READY
};

#define START_PRODUCTS_MAX 256
struct start_card {
	struct load_order order;
	enum method method;
	enum start_field field;
	struct picker picker;
	struct number_entry count;
	struct {
		const char *name;
		const char *food;
		const char *caution;
	} products[START_PRODUCTS_MAX];
	size_t product_count;
	size_t product; /* chosen */
	struct log_lid_box *boxes;
	size_t box_count;
	bool has_process;
	struct process process;
};

struct loader_card {
	int64_t station_id;
	int group; /* waiting group under the cursor */
	bool putting_away;
	struct loader_plan plan;
	struct moment proposed; /* when it was; it stands as long as jars and canners do */
	uint64_t stood;         /* those it was made for, as a number */
	int pressure_psi;
	bool has_process;
	struct process process;
	char refusal[FAULT_SENTENCE_MAX];
};

struct seal_card {
	int64_t load_id;
	int cursor;
	struct log_jar *jars;
	size_t count;
	bool choosing_fate;
	bool fate_for_all;
	bool round;          /* all loads past their 12 h, one after the other */
	bool asking;         /* by which methods the lids of this load are looked at */
	bool asking_for_all; /* then: every other jar is sealed, not only the one under the cursor */
	unsigned methods;    /* as said for this load, SEAL_BY(); 0: not said yet */
};

/* Jars to be processed again: which canner, which lids. */
struct reprocess_card {
	int64_t jar_id;
	int canner;       /* among the free ones of the method */
	int box;          /* among the boxes; box_count: not noted */
	bool asking_acid; /* which acid went in again */
	struct picker picker;
	enum acid acid;
	int64_t station_id; /* and the lids, while it is asked */
	int64_t box_id;
	struct log_lid_box *boxes;
	size_t box_count;
	bool planned;
	struct reprocess_plan plan;
	char refusal[FAULT_SENTENCE_MAX];
};

extern const struct view start_view;
extern const struct view loader_view;
extern const struct view seals_view;
extern const struct view fates_view;
extern const struct view reprocess_view;

void seal_round_enter(struct desk *desk); /* all loads past their 12 h */
/* The jar of a load that is to be processed again. */
void reprocess_view_enter(struct desk *desk, int64_t jar_id);

/* The jars of a seal check (seal_picture.c). */
int seal_picture_wide(int cols); /* jars in a row */
void seal_picture_draw(struct desk *desk, int top, int rows, int cols);

#endif
