/*
 * verbs.c - the table of verbs: stored name, and the sentence with places for the values.
 *
 *	{0}            the first value, a text; {1:n} the second, a whole number.  What else may
 *	               stand behind the colon is in the table of verb_words.c
 *	[, {2}]        left out when a value in it says nothing: an empty text, a flag of 0
 *	[{2}|nobody]   the second half then
 *
 * A number that is not there is an empty text too (act_says_nothing).
 */
#include "kitchen/board/verbs.h"

#include <assert.h>
#include <string.h>

struct verb_row {
	const char *stored; /* at most WORD_MAX_BYTES - 1 */
	const char *template;
	enum done_to to;    /* of an act at no station: where it is undone */
	const char *undone; /* of its undo, where the template would read as an order; NULL: the template */
};

#define PLANNED_DRYING "[{0:mass}|{1:volume}] {2} to dry, {3:n} to {4:n} h[ at {5:time}]"
#define PLANNED_RUN "a run of {0:mass} {1}[ at {2:time}]"
#define PLANNED_BATCH "{0:n} x {1} in {2:sizes}[ from {3:time}]"
#define EXCEPTION_SAYS "{0}: {1}[; {2}]" /* station, what it is, reason */
#define RECIPE_SAYS "{0}, {1:count ingredient}, [{2}|no published process][{3:flag}, retired]"
#define LID_BOX_SAYS "{0}, {1:count lid}[{2:flag}, retired]"
#define STATION_SAYS "{0:n} is {1}, {2:station}[{3:flag}, retired]"

/* clang-format off */
static const struct verb_row rows[] = {
	[VERB_UNKNOWN] = { "?", NULL, DONE_TO_NOTHING },
	[VERB_UNDO] = { "undo", NULL, DONE_TO_NOTHING },
	[VERB_REDO] = { "redo", NULL, DONE_TO_NOTHING },

	[VERB_START_DRYING] = { "start_drying", "{0}: drying started, {1} on {2:count tray}, {3:n} to {4:n} h"
	                        "[{5:flag}, hours of this house]", DONE_TO_NOTHING },
	[VERB_TO_TRAYS] = { "to_trays", "{0}: {1:volume} to the trays of {2}: {3} on {4:count tray}, {5:n} to {6:n} h", DONE_TO_NOTHING },
	[VERB_SEEN] = { "seen", "{0}: seen to ({1})", DONE_TO_NOTHING },
	[VERB_PACK] = { "pack", "{0}: {1:count package} of {2} packed", DONE_TO_NOTHING },
	[VERB_START_RUN] = { "start_run", "{0}: run started, {1:mass} {2}", DONE_TO_NOTHING },
	[VERB_EDIT_FRUIT] = { "edit_fruit", "Corrected: the run had {0:mass} {1}", DONE_TO_NOTHING },
	[VERB_JUICE_OUT] = { "juice_out", "{0}: {1:volume} of {2} juice measured[{3:flag}, run done]", DONE_TO_NOTHING },
	[VERB_JUICE_IN] = { "juice_in", "{0:volume} of {1} juice brought in, {2}", DONE_TO_JUICE },
	[VERB_JUICE_STATE] = { "juice_state", "{0} juice: now {1}", DONE_TO_JUICE },
	[VERB_JUICE_LEFT] = { "juice_left", "{0} juice: {1:volume} left ({2})", DONE_TO_JUICE },
	[VERB_START_BATCH] = { "start_batch", "{0}: batch started, {1:n} x {2}[, instead: {3:acid}][; {4}]", DONE_TO_NOTHING },
	[VERB_TICK] = { "tick", "{0}: line {1:n} [{2:flag}done|not done]", DONE_TO_NOTHING },
	[VERB_WARM_JARS] = { "warm_jars", "{0}: jars are [{1:flag}hot|not hot]", DONE_TO_NOTHING },
	[VERB_JARS_NOT_BOILED] = { "jars_not_boiled", "{0}: its jars were not boiled first; longer process", DONE_TO_NOTHING },
	[VERB_NOTE] = { "note", "{0}: note written", DONE_TO_NOTHING },
	[VERB_FILL] = { "fill", "{0}: {1:n} {2:jars 1} of {3} filled[, {4}][: {5}]"
	                "[; the food stood in the pot for {6:hours}]", DONE_TO_NOTHING },
	[VERB_REFILL] = { "refill", "{0}: {1:n} {2:jars 1} emptied, reheated and filled again[; they had waited {3:hours}]", DONE_TO_NOTHING },
	[VERB_PUT_AWAY] = { "put_away", "{0}: {1:count jar} not canned, put in the {2}", DONE_TO_NOTHING },
	[VERB_EDIT_AMOUNT] = { "edit_amount", "Corrected: {0} had {1:measured 2} of {3}[: {4}]", DONE_TO_NOTHING },
	[VERB_EDIT_JARS] = { "edit_jars", "Corrected: {0} filled {1:n} {2:jars 1}", DONE_TO_NOTHING },
	[VERB_BATCH_WRONG] = { "batch_wrong", "{0}, not as the recipe says: {1}: process [{2:flag}NOT valid|unknown]", DONE_TO_NOTHING },

	[VERB_START_LOAD] = { "start_load", "{0}: load started, {1:n} {2:jars 1} {3}, {4:n} min[; {5}]", DONE_TO_NOTHING },
	[VERB_LOAD_WAITING] = { "load_waiting", "{0}: load started, {1:n} min: {2}[; its jars waited {3:hours}]", DONE_TO_NOTHING },
	[VERB_REPROCESS] = { "reprocess", "{0}: {1:count jar} of {2} processed again as {3}, new lids, {4:n} min "
	                     "(load {5:n} before)[; {6}]", DONE_TO_NOTHING },
	[VERB_ALL_SEALED] = { "all_sealed", "{0}: {1:count jar} sealed", DONE_TO_NOTHING },
	[VERB_JAR_STATE] = { "jar_state", "{0}: jar {1:n} {2}", DONE_TO_NOTHING },
	[VERB_JAR_TICK] = { "jar_tick", "{0}: jar {1:n} {2}: {3}", DONE_TO_NOTHING },
	[VERB_JAR_SIPHONING] = { "jar_siphoning", "{0}: jar {1:n} {2}", DONE_TO_NOTHING },
	[VERB_JAR_FATE] = { "jar_fate", "{0}: jar {1:n} goes to: {2}", DONE_TO_NOTHING },
	[VERB_FATE_REST] = { "fate_rest", "{0}: {1:count jar} {1:verb goes} to: {2}", DONE_TO_NOTHING },
	[VERB_FATE_DONE] = { "fate_done", "{0}: {1:count jar} {2}[{3:flag}, in time; noted later]", DONE_TO_NOTHING },
	[VERB_FOUND_WRONG] = { "found_wrong", "Process NOT valid, found after the process: {0}", DONE_TO_NOTHING },

	[VERB_STEP] = { "step", "{0}: {1} ({2} > {3})[{4:flag}; the vent lock has dropped]"
	                "[; asked and confirmed: after {5:clock}, sooner than {6:clock}]", DONE_TO_NOTHING },
	[VERB_CLOCK_READ] = { "clock_read", "{0}: by another clock the hold has run {1:clock}", DONE_TO_NOTHING },
	[VERB_HEARD] = { "heard", "{0}: alarm heard ({1})", DONE_TO_NOTHING },
	[VERB_WATER_SEEN] = { "water_seen", "{0}: water checked and topped up ({1})", DONE_TO_NOTHING },
	[VERB_LOST] = { "lost", "{0}: {1}", DONE_TO_NOTHING,
	                "{0} goes on as it was. It had been noted: {1}" },
	[VERB_STOP] = { "stop", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_VENT_SHORT] = { "vent_short", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_BEGAN_EARLIER] = { "began_earlier", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_BROKEN_JAR] = { "broken_jar", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_REDO_PROCESS] = { "redo_process", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_WATER] = { "water", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_FORCED_COOLING] = { "forced_cooling", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_WEIGHT_EARLY] = { "weight_early", EXCEPTION_SAYS, DONE_TO_NOTHING },
	[VERB_BOILED_AGAIN] = { "boiled_again", EXCEPTION_SAYS, DONE_TO_NOTHING },

	[VERB_SUPPLY_IN] = { "supply_in", "Supplies: {2:goods 0 1} came in, {3:of 0} now", DONE_TO_SHELF },
	[VERB_SUPPLY_COUNT] = { "supply_count", "Supplies counted: {2:goods 0 1} (before: [{3:of 0}|not kept track of])", DONE_TO_SHELF },
	[VERB_SOLD_BY] = { "sold_by", "Bought: [{1:sizes}|{0:supply}] [by {2:of 0}|loose]", DONE_TO_SHELF },
	[VERB_ADD_LIDS] = { "add_lids", "Lid box added: " LID_BOX_SAYS, DONE_TO_LIDS },
	[VERB_EDIT_LIDS] = { "edit_lids", "Lid box changed: " LID_BOX_SAYS, DONE_TO_LIDS },
	[VERB_LIDS_COUNT] = { "lids_count", "Lid box {0} counted: {1:n} left (before: {2:n})", DONE_TO_LIDS },

	[VERB_TAKEN] = { "pantry_taken", "{0}: {1:n} {2:jars 1} {3} ({4})", DONE_TO_JARS },
	[VERB_COUNTED] = { "pantry_counted", "Jars counted: {0:n} {1:jars 0} {2} (before: {3:n})", DONE_TO_JARS },
	[VERB_RECALLED] = { "recall", "Recalled: {0}, {1:n} to find: {2}", DONE_TO_JARS },
	[VERB_FOLLOWED] = { "recall_follow_up", "Recall {0:n}: {1:count jar} of {2} {3}", DONE_TO_JARS },

	[VERB_ADD_RECIPE] = { "add_recipe", "Recipe added: " RECIPE_SAYS, DONE_TO_RECIPES },
	[VERB_EDIT_RECIPE] = { "edit_recipe", "Recipe changed: " RECIPE_SAYS, DONE_TO_RECIPES },
	[VERB_SHEET] = { "sheet", "The sheet's amounts of {0}: {1}", DONE_TO_RECIPES },

	[VERB_PLAN_ADD_RUN] = { "plan_add_run", "Planned: " PLANNED_RUN, DONE_TO_PLAN },
	[VERB_PLAN_ADD_BATCH] = { "plan_add_batch", "Planned: " PLANNED_BATCH, DONE_TO_PLAN },
	[VERB_PLAN_ADD_RUNS] = { "plan_add_runs", "Planned {3:n} times: " PLANNED_RUN, DONE_TO_PLAN },
	[VERB_PLAN_ADD_BATCHES] = { "plan_add_batches", "Planned {4:n} times: " PLANNED_BATCH, DONE_TO_PLAN },
	[VERB_PLAN_CHANGE_RUN] = { "plan_change_run", "Changed in the plan to: " PLANNED_RUN, DONE_TO_PLAN },
	[VERB_PLAN_CHANGE_BATCH] = { "plan_change_batch", "Changed in the plan to: " PLANNED_BATCH, DONE_TO_PLAN },
	[VERB_PLAN_REMOVE_RUN] = { "plan_remove_run", "Removed from the plan: " PLANNED_RUN, DONE_TO_PLAN },
	[VERB_PLAN_REMOVE_BATCH] = { "plan_remove_batch", "Removed from the plan: " PLANNED_BATCH, DONE_TO_PLAN },
	[VERB_PLAN_ADD_DRYING] = { "plan_add_drying", "Planned: " PLANNED_DRYING, DONE_TO_PLAN },
	[VERB_PLAN_ADD_DRYINGS] = { "plan_add_dryings", "Planned {6:n} times: " PLANNED_DRYING, DONE_TO_PLAN },
	[VERB_PLAN_CHANGE_DRYING] = { "plan_change_drying", "Changed in the plan to: " PLANNED_DRYING, DONE_TO_PLAN },
	[VERB_PLAN_REMOVE_DRYING] = { "plan_remove_drying", "Removed from the plan: " PLANNED_DRYING, DONE_TO_PLAN },
	[VERB_PLAN_WISHES] = { "plan_wishes", "Planned: {0:count run} of {1}, {2:count pot}", DONE_TO_PLAN },
	[VERB_PLAN_START] = { "plan_start", "Day of the plan: [{0:date}|today], work begins [at {1:time}|at once]", DONE_TO_PLAN },
	[VERB_PLAN_ACCEPT] = { "plan_accept", "The plan is accepted: finish at {0:hour}", DONE_TO_PLAN },
	[VERB_PLAN_FINISH] = { "plan_finish", "The day is over: cleaned down", DONE_TO_PLAN },
	[VERB_PLAN_DROP] = { "plan_drop", "The plan is dropped", DONE_TO_PLAN },
	[VERB_PLAN_HOUSE] = { "plan_house", "For the day plan: {0:count burner}, {1:count fill place}, room for "
	                      "[{2:count jar}|any number of jars], clean-down {3:n} min, charge {4:mass}, "
	                      "late from {5:n} min, meals {6}", DONE_TO_HELP },
	[VERB_HELPER] = { "helper", "Helper added: {0}[, from {1:time}]", DONE_TO_HELP },
	[VERB_HELPER_GONE] = { "helper_gone", "Helper taken off: {0}", DONE_TO_HELP },
	[VERB_BREAK] = { "break", "Meal added: {0:time} to {1:time}", DONE_TO_HELP },
	[VERB_BREAK_GONE] = { "break_gone", "Meal taken off", DONE_TO_HELP },

	[VERB_NAME] = { "name", "The kitchen is called {0}", DONE_TO_HOUSE },
	[VERB_ELEVATION] = { "elevation", "Elevation of the kitchen: [{0:height}|not known]", DONE_TO_HOUSE },
	[VERB_ELEVATION_BOILED] = { "elevation_boiled", "Elevation by a thermometer in boiling water: about {0:height}", DONE_TO_HOUSE },
	[VERB_ELEVATION_WRONG] = { "elevation_wrong", "The elevation was wrong; it is [{0:height}|not known]. "
	                           "{1:count load} {1:verb is} NOT valid[; {2}]", DONE_TO_HOUSE,
	                           "the elevation of [{0:height}|a place not known]" },
	[VERB_MEASURED_BOIL] = { "measured_boil", "Boiling water measured with a thermometer", DONE_TO_HOUSE },
	[VERB_BOIL_FORGOTTEN] = { "boil_forgotten", "Measured boiling point cleared", DONE_TO_HOUSE },
	[VERB_STORAGE] = { "storage", "Store temperature read: {0:fahrenheit}", DONE_TO_HOUSE },
	[VERB_STORAGE_FORGOTTEN] = { "storage_forgotten", "Store temperature cleared", DONE_TO_HOUSE },
	[VERB_BAROMETER] = { "barometer", "Barometer read", DONE_TO_HOUSE },
	[VERB_BAROMETER_FORGOTTEN] = { "barometer_forgotten", "Barometer reading cleared", DONE_TO_HOUSE },
	[VERB_INVENTED] = { "invented", "The data of this log are [{0:flag}invented|real]", DONE_TO_HOUSE },
	[VERB_PRACTICE] = { "practice", "This is a practice log", DONE_TO_HOUSE },
	[VERB_PRACTICE_HOUR] = { "practice_hour", "Practice begins at the hour of the plan", DONE_TO_HOUSE },
	[VERB_CLOCK_RIGHT] = { "clock_right", "The clock is right at {0:day}; entries after it are not", DONE_TO_HOUSE },
	[VERB_UNITS] = { "units", "The kitchen measures in [{0:flag}metric|US units]", DONE_TO_HOUSE },
	[VERB_MINUTES] = { "minutes", "House times: run [{0:n} min|not set], first juice [{1:n} min|not set], "
	                   "water [{2:n} min|not set], jars wait {3:n} min, stand at most {4:n} min", DONE_TO_HOUSE },
	[VERB_HOUSE_COPIED] = { "house_copied", "House settings copied from another log", DONE_TO_HOUSE },
	[VERB_ADD_STATION] = { "add_station", "Station added: " STATION_SAYS, DONE_TO_HOUSE },
	[VERB_EDIT_STATION] = { "edit_station", "Station changed: " STATION_SAYS, DONE_TO_HOUSE },
	[VERB_WHO] = { "who", "{0}: now with [{1}|nobody]", DONE_TO_NOTHING },
	[VERB_RULE_OFF] = { "rule_off", "The rule {0} is turned off in this house", DONE_TO_RULES },
	[VERB_TAKE_UP] = { "take_up", "The rule {0} is watched again", DONE_TO_RULES },
	[VERB_IMPORT] = { "import", "Imported from {0}: {1:count lot}, {2:count load}, {3:count jar}", DONE_TO_HOUSE },
};
/* clang-format on */
static_assert(sizeof(rows) / sizeof(rows[0]) == VERB_COUNT, "a row for every verb");

static const struct verb_row *row_of(enum verb verb)
{
	return &rows[(int)verb >= 0 && verb < VERB_COUNT ? verb : VERB_UNKNOWN];
}

const char *verb_stored(enum verb verb)
{
	return row_of(verb)->stored;
}

const char *verb_template(enum verb verb)
{
	return row_of(verb)->template;
}

const char *verb_undone_template(enum verb verb)
{
	return row_of(verb)->undone != NULL ? row_of(verb)->undone : verb_template(verb);
}

enum verb verb_named(const char *stored)
{
	for (int verb = VERB_UNKNOWN + 1; verb < VERB_COUNT; verb++)
		if (strcmp(rows[verb].stored, stored) == 0)
			return (enum verb)verb;
	return VERB_UNKNOWN;
}

enum verb entry_verb(const struct log_entry *entry)
{
	return verb_named(entry->verb);
}

enum done_to verb_done_to(enum verb verb)
{
	return row_of(verb)->to;
}

enum verb entry_act(const struct log_entry *entry)
{
	return verb_named(entry->act_verb);
}
