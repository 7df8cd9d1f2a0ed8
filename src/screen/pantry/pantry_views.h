/*
 * pantry_views.h - the views of jars kept, of jars traced, and of recalls.
 */
#ifndef STILLROOM_SCREEN_PANTRY_PANTRY_VIEWS_H
#define STILLROOM_SCREEN_PANTRY_PANTRY_VIEWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/pantry/pantry.h"
#include "kitchen/pantry/recall.h"
#include "screen/ui/list.h"
#include "screen/ui/view.h"

struct desk;

void recalls_view_enter(struct desk *desk);
void recalls_key(struct desk *desk); /* the lot that jars spoiled of, or that list */
bool some_spoiled(const struct desk *desk);
void recalls_view_refresh(struct desk *desk);
/* As it was read last; its id is 0 where it is not in the list. */
void recalls_view_find(const struct desk *desk, int64_t recall_id, struct log_recall *out);
/* Trace the jars of something and show them; Esc goes back to the present view. */
void trace_view_enter(struct desk *desk, enum trace_about about, const char *words);
void recall_view_open(struct desk *desk, int64_t recall_id);

#endif
