/*
 * each_verb.h - the table of verbs: the name in the log, the sentence with places for the values, and of an act at no
 * station where it is undone (enum done_to).
 *
 *	{0}            the first value, a text; {1:n} the second, a whole number.  What else may
 *	               stand behind the colon is in the table of verb_words.c
 *	[, {2}]        left out when a value in it says nothing: an empty text, a flag of 0
 *	[{2}|nobody]   the second half then
 *
 * A number that is not there is an empty text too (act_says_nothing).
 *
 * Stored names are never changed or used again for something else: logs have them.  Other values: another verb.
 */
#ifndef STILLROOM_KITCHEN_BOARD_EACH_VERB_H
#define STILLROOM_KITCHEN_BOARD_EACH_VERB_H

#include <stddef.h>

#define PLANNED_DRYING "[{0:mass}|{1:volume}] {2} to dry, {3:n} to {4:n} h[ at {5:time}]"
#define PLANNED_RUN "a run of {0:mass} {1}[ at {2:time}]"
#define PLANNED_BATCH "{0:n} x {1} in {2:sizes}[ from {3:time}]"
#define EXCEPTION_SAYS "{0}: {1}[; {2}]" /* station, what it is, reason */
#define RECIPE_SAYS "{0}, {1:count ingredient}, [{2}|no published process][{3:flag}, retired]"
#define LID_BOX_SAYS "{0}, {1:count lid}[{2:flag}, retired]"
#define STATION_SAYS "{0:n} is {1}, {2:station}[{3:flag}, retired]"

/* clang-format off */
#define EACH_VERB(OF) /* OF(TAG, stored: at most WORD_MAX_BYTES - 1, sentence, what it is done to) */ \
	OF(UNDO, "undo", NULL, NOTHING) \
	OF(REDO, "redo", NULL, NOTHING) \
	/* dryer */ \
	OF(START_DRYING, "start_drying", "{0}: drying started, {1} on {2:count tray}, {3:n} to {4:n} h" \
	   "[{5:flag}, hours of this house]", NOTHING) \
	OF(TO_TRAYS, "to_trays", "{0}: {1:volume} to the trays of {2}: {3} on {4:count tray}, {5:n} to {6:n} h", NOTHING) \
	OF(SEEN, "seen", "{0}: seen to ({1})", NOTHING) \
	OF(PACK, "pack", "{0}: {1:count package} of {2} packed", NOTHING) \
	/* juicer, pot */ \
	OF(START_RUN, "start_run", "{0}: run started, {1:mass} {2}", NOTHING) \
	OF(EDIT_FRUIT, "edit_fruit", "Corrected: the run had {0:mass} {1}", NOTHING) \
	OF(JUICE_OUT, "juice_out", "{0}: {1:volume} of {2} juice measured[{3:flag}, run done]", NOTHING) \
	OF(JUICE_IN, "juice_in", "{0:volume} of {1} juice brought in, {2}", JUICE) \
	OF(JUICE_STATE, "juice_state", "{0} juice: now {1}", JUICE) \
	OF(JUICE_LEFT, "juice_left", "{0} juice: {1:volume} left ({2})", JUICE) \
	OF(START_BATCH, "start_batch", "{0}: batch started, {1:n} x {2}[, instead: {3:acid}][; {4}]", NOTHING) \
	OF(TICK, "tick", "{0}: line {1:n} [{2:flag}done|not done]", NOTHING) \
	OF(WARM_JARS, "warm_jars", "{0}: jars are [{1:flag}hot|not hot]", NOTHING) \
	OF(JARS_NOT_BOILED, "jars_not_boiled", "{0}: its jars were not boiled first; longer process", NOTHING) \
	OF(NOTE, "note", "{0}: note written", NOTHING) \
	OF(FILL, "fill", "{0}: {1:n} {2:jars 1} of {3} filled[, {4}][: {5}]" \
	   "[; the food stood in the pot for {6:hours}]", NOTHING) \
	OF(REFILL, "refill", "{0}: {1:n} {2:jars 1} emptied, reheated and filled again[; they had waited {3:hours}]", NOTHING) \
	OF(PUT_AWAY, "put_away", "{0}: {1:count jar} not canned, put in the {2}", NOTHING) \
	OF(EDIT_AMOUNT, "edit_amount", "Corrected: {0} had {1:measured 2} of {3}[: {4}]", NOTHING) \
	OF(EDIT_JARS, "edit_jars", "Corrected: {0} filled {1:n} {2:jars 1}", NOTHING) \
	OF(BATCH_WRONG, "batch_wrong", "{0}, not as the recipe says: {1}: process [{2:flag}NOT valid|unknown]", NOTHING) \
	/* canner */ \
	OF(START_LOAD, "start_load", "{0}: load started, {1:n} {2:jars 1} {3}, {4:n} min[; {5}]", NOTHING) \
	OF(LOAD_WAITING, "load_waiting", "{0}: load started, {1:n} min: {2}[; its jars waited {3:hours}]", NOTHING) \
	OF(REPROCESS, "reprocess", "{0}: {1:count jar} of {2} processed again as {3}, new lids, {4:n} min " \
	   "(load {5:n} before)[; {6}]", NOTHING) \
	OF(ALL_SEALED, "all_sealed", "{0}: {1:count jar} sealed", NOTHING) \
	OF(JAR_STATE, "jar_state", "{0}: jar {1:n} {2}", NOTHING) \
	OF(JAR_TICK, "jar_tick", "{0}: jar {1:n} {2}: {3}", NOTHING) \
	OF(JAR_SIPHONING, "jar_siphoning", "{0}: jar {1:n} {2}", NOTHING) \
	OF(JAR_FATE, "jar_fate", "{0}: jar {1:n} goes to: {2}", NOTHING) \
	OF(FATE_REST, "fate_rest", "{0}: {1:count jar} {1:verb goes} to: {2}", NOTHING) \
	OF(FATE_DONE, "fate_done", "{0}: {1:count jar} {2}[{3:flag}, in time; noted later]", NOTHING) \
	OF(FOUND_WRONG, "found_wrong", "Process NOT valid, found after the process: {0}", NOTHING) \
	/* any work */ \
	OF(STEP, "step", "{0}: {1} ({2} > {3})[{4:flag}; the vent lock has dropped]" \
	   "[; asked and confirmed: after {5:clock}, sooner than {6:clock}]", NOTHING) \
	OF(CLOCK_READ, "clock_read", "{0}: by another clock the hold has run {1:clock}", NOTHING) \
	OF(HEARD, "heard", "{0}: alarm heard ({1})", NOTHING) \
	OF(WATER_SEEN, "water_seen", "{0}: water checked and topped up ({1})", NOTHING) \
	OF(LOST, "lost", "{0}: {1}", NOTHING) \
	OF(STOP, "stop", EXCEPTION_SAYS, NOTHING) \
	OF(VENT_SHORT, "vent_short", EXCEPTION_SAYS, NOTHING) \
	OF(BEGAN_EARLIER, "began_earlier", EXCEPTION_SAYS, NOTHING) \
	OF(BROKEN_JAR, "broken_jar", EXCEPTION_SAYS, NOTHING) \
	OF(REDO_PROCESS, "redo_process", EXCEPTION_SAYS, NOTHING) \
	OF(WATER, "water", EXCEPTION_SAYS, NOTHING) \
	OF(FORCED_COOLING, "forced_cooling", EXCEPTION_SAYS, NOTHING) \
	OF(WEIGHT_EARLY, "weight_early", EXCEPTION_SAYS, NOTHING) \
	OF(BOILED_AGAIN, "boiled_again", EXCEPTION_SAYS, NOTHING) \
	/* stock */ \
	OF(SUPPLY_IN, "supply_in", "Supplies: {2:goods 0 1} came in, {3:of 0} now", SHELF) \
	OF(SUPPLY_COUNT, "supply_count", "Supplies counted: {2:goods 0 1} (before: [{3:of 0}|not kept track of])", SHELF) \
	OF(SOLD_BY, "sold_by", "Bought: [{1:sizes}|{0:supply}] [by {2:of 0}|loose]", SHELF) \
	OF(ADD_LIDS, "add_lids", "Lid box added: " LID_BOX_SAYS, LIDS) \
	OF(EDIT_LIDS, "edit_lids", "Lid box changed: " LID_BOX_SAYS, LIDS) \
	OF(LIDS_COUNT, "lids_count", "Lid box {0} counted: {1:n} left (before: {2:n})", LIDS) \
	/* pantry */ \
	OF(TAKEN, "pantry_taken", "{0}: {1:n} {2:jars 1} {3} ({4})", JARS) \
	OF(COUNTED, "pantry_counted", "Jars counted: {0:n} {1:jars 0} {2} (before: {3:n})", JARS) \
	OF(RECALLED, "recall", "Recalled: {0}, {1:n} to find: {2}", JARS) \
	OF(FOLLOWED, "recall_follow_up", "Recall {0:n}: {1:count jar} of {2} {3}", JARS) \
	/* recipe */ \
	OF(ADD_RECIPE, "add_recipe", "Recipe added: " RECIPE_SAYS, RECIPES) \
	OF(EDIT_RECIPE, "edit_recipe", "Recipe changed: " RECIPE_SAYS, RECIPES) \
	OF(SHEET, "sheet", "The sheet's amounts of {0}: {1}", RECIPES) \
	/* plan */ \
	OF(PLAN_ADD_RUN, "plan_add_run", "Planned: " PLANNED_RUN, PLAN) \
	OF(PLAN_ADD_BATCH, "plan_add_batch", "Planned: " PLANNED_BATCH, PLAN) \
	OF(PLAN_ADD_RUNS, "plan_add_runs", "Planned {3:n} times: " PLANNED_RUN, PLAN) \
	OF(PLAN_ADD_BATCHES, "plan_add_batches", "Planned {4:n} times: " PLANNED_BATCH, PLAN) \
	OF(PLAN_CHANGE_RUN, "plan_change_run", "Changed in the plan to: " PLANNED_RUN, PLAN) \
	OF(PLAN_CHANGE_BATCH, "plan_change_batch", "Changed in the plan to: " PLANNED_BATCH, PLAN) \
	OF(PLAN_REMOVE_RUN, "plan_remove_run", "Removed from the plan: " PLANNED_RUN, PLAN) \
	OF(PLAN_REMOVE_BATCH, "plan_remove_batch", "Removed from the plan: " PLANNED_BATCH, PLAN) \
	OF(PLAN_ADD_DRYING, "plan_add_drying", "Planned: " PLANNED_DRYING, PLAN) \
	OF(PLAN_ADD_DRYINGS, "plan_add_dryings", "Planned {6:n} times: " PLANNED_DRYING, PLAN) \
	OF(PLAN_CHANGE_DRYING, "plan_change_drying", "Changed in the plan to: " PLANNED_DRYING, PLAN) \
	OF(PLAN_REMOVE_DRYING, "plan_remove_drying", "Removed from the plan: " PLANNED_DRYING, PLAN) \
	OF(PLAN_WISHES, "plan_wishes", "Planned: {0:count run} of {1}, {2:count pot}", PLAN) \
	OF(PLAN_START, "plan_start", "Day of the plan: [{0:date}|today], work begins [at {1:time}|at once]", PLAN) \
	OF(PLAN_ACCEPT, "plan_accept", "The plan is accepted: finish at {0:hour}", PLAN) \
	OF(PLAN_FINISH, "plan_finish", "The day is over: cleaned down", PLAN) \
	OF(PLAN_DROP, "plan_drop", "The plan is dropped", PLAN) \
	OF(PLAN_HOUSE, "plan_house", "For the day plan: {0:count burner}, {1:count fill place}, room for " \
	   "[{2:count jar}|any number of jars], clean-down {3:n} min, charge {4:mass}, " \
	   "late from {5:n} min, meals {6}", HELP) \
	OF(HELPER, "helper", "Helper added: {0}[, from {1:time}]", HELP) \
	OF(HELPER_GONE, "helper_gone", "Helper taken off: {0}", HELP) \
	OF(BREAK, "break", "Meal added: {0:time} to {1:time}", HELP) \
	OF(BREAK_GONE, "break_gone", "Meal taken off", HELP) \
	/* house */ \
	OF(NAME, "name", "The kitchen is called {0}", HOUSE) \
	OF(ELEVATION, "elevation", "Elevation of the kitchen: [{0:height}|not known]", HOUSE) \
	OF(ELEVATION_BOILED, "elevation_boiled", "Elevation by a thermometer in boiling water: about {0:height}", HOUSE) \
	OF(ELEVATION_WRONG, "elevation_wrong", "The elevation was wrong; it is [{0:height}|not known]. " \
	   "{1:count load} {1:verb is} NOT valid[; {2}]", HOUSE) \
	OF(MEASURED_BOIL, "measured_boil", "Boiling water measured with a thermometer", HOUSE) \
	OF(BOIL_FORGOTTEN, "boil_forgotten", "Measured boiling point cleared", HOUSE) \
	OF(STORAGE, "storage", "Store temperature read: {0:fahrenheit}", HOUSE) \
	OF(STORAGE_FORGOTTEN, "storage_forgotten", "Store temperature cleared", HOUSE) \
	OF(BAROMETER, "barometer", "Barometer read", HOUSE) \
	OF(BAROMETER_FORGOTTEN, "barometer_forgotten", "Barometer reading cleared", HOUSE) \
	OF(INVENTED, "invented", "The data of this log are [{0:flag}invented|real]", HOUSE) \
	OF(PRACTICE, "practice", "This is a practice log", HOUSE) \
	OF(PRACTICE_HOUR, "practice_hour", "Practice begins at the hour of the plan", HOUSE) \
	OF(CLOCK_RIGHT, "clock_right", "The clock is right at {0:day}; entries after it are not", HOUSE) /* ends the stop "clock-behind" */ \
	OF(UNITS, "units", "The kitchen measures in [{0:flag}metric|US units]", HOUSE) \
	OF(MINUTES, "minutes", "House times: run [{0:n} min|not set], first juice [{1:n} min|not set], " \
	   "water [{2:n} min|not set], jars wait {3:n} min, stand at most {4:n} min", HOUSE) \
	OF(HOUSE_COPIED, "house_copied", "House settings copied from another log", HOUSE) \
	OF(ADD_STATION, "add_station", "Station added: " STATION_SAYS, HOUSE) \
	OF(EDIT_STATION, "edit_station", "Station changed: " STATION_SAYS, HOUSE) \
	OF(WHO, "who", "{0}: now with [{1}|nobody]", NOTHING) \
	OF(RULE_OFF, "rule_off", "The rule {0} is turned off in this house", RULES) \
	OF(TAKE_UP, "take_up", "The rule {0} is watched again", RULES) \
	OF(IMPORT, "import", "Imported from {0}: {1:count lot}, {2:count load}, {3:count jar}", HOUSE)
/* clang-format on */

#endif
