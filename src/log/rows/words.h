/*
 * words.h - words of the enums as stored.
 */
#ifndef STILLROOM_LOG_ROWS_WORDS_H
#define STILLROOM_LOG_ROWS_WORDS_H

#include <stdbool.h>

#include "engine/gate/gate.h"
#include "log/rows/canner.h"
#include "log/rows/house.h"
#include "log/rows/pantry.h"
#include "log/rows/pot.h"

const char *station_kind_name(enum station_kind kind); /* as stored */
bool station_kind_from_name(const char *name, enum station_kind *out);

/* Words of the enums as stored; "?" when out of range. */
const char *load_place_name(enum load_place place);
const char *verdict_name(enum verdict verdict);
const char *jar_state_name(enum jar_state state);
const char *siphoning_name(enum siphoning siphoning);
const char *jar_fate_name(enum jar_fate fate);
const char *juice_state_name(enum juice_state state);
const char *juice_why_name(enum juice_why why);
const char *seal_tick_name(enum seal_tick tick); /* TICK_NONE: "" */
const char *jar_gone_name(enum jar_gone gone);   /* GONE_NOT: "" */
const char *trace_about_name(enum trace_about about);
const char *recall_outcome_name(enum recall_outcome outcome); /* RECALL_TO_FIND: "" */

#endif
