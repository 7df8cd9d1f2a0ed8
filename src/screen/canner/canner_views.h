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
struct sources;

/* Said of minutes that are common practice only; what is known of them stands behind @. */
#define IN_NO_TABLE "These minutes are in no published table."

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

/* For the page behind @: what holds for jars that did not seal. */
void unsealed_sources(struct sources *page);

void seal_round_enter(struct desk *desk); /* all loads past their 12 h */
/* Jars that wait, under the cursor of the loader; false: there are none. */
bool loader_group_here(const struct desk *desk, struct waiting_group *out);
/* The jar of a load that is to be processed again. */
void reprocess_view_enter(struct desk *desk, int64_t jar_id);

/* A seal check, and its jars (seal_picture.c). */
struct seal_card *seal_card(const struct desk *desk);
int seal_picture_wide(int cols); /* jars in a row */
void seal_picture_draw(const struct desk *desk, int top, int rows, int cols);

#endif
