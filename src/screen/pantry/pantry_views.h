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

struct recall_card {
	struct list_state list;
	struct log_recall *recalls;
	size_t count;
	enum trace_about about; /* while it is asked which */
	/* Jars traced, or those of a recall. */
	char words[NAME_MAX_BYTES * 2];
	char said[SENTENCE_MAX_BYTES];
	struct log_recall recall; /* id 0: only traced */
	struct list_state jar_list;
	struct log_traced *jars;
	size_t jar_count;
	enum view_name from; /* the view to go back to */
};

struct recall_card *recall_card(const struct desk *desk);

void recalls_view_enter(struct desk *desk);
void recalls_key(struct desk *desk); /* the lot that jars spoiled of, or that list */
bool some_spoiled(const struct desk *desk);
void recalls_view_refresh(struct desk *desk);
/* Trace the jars of something and show them; Esc goes back to the present view. */
void trace_view_enter(struct desk *desk, enum trace_about about, const char *words);
void recall_view_open(struct desk *desk, int64_t recall_id);

#endif
