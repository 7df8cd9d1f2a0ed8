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

/* For the page behind @: what holds for jars that did not seal. */
void unsealed_sources(struct sources *page);

void seal_round_enter(struct desk *desk); /* all loads past their 12 h */
/* Jars that wait, under the cursor of the loader; false: there are none. */
bool loader_group_here(const struct desk *desk, struct waiting_group *out);
/* The jar of a load that is to be processed again. */
void reprocess_view_enter(struct desk *desk, int64_t jar_id);

/* The jars of a seal check, one of them under the cursor (seal_picture.c). */
struct seal_picture {
	const struct log_jar *jars;
	int count;
	int cursor;
};
int seal_picture_wide(int cols); /* jars in a row */
void seal_picture_draw(const struct desk *desk, const struct seal_picture *picture, int top, int rows, int cols);

#endif
