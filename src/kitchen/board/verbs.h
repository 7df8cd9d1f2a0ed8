/*
 * verbs.h - what can be done, by its name in the journal, and the sentence that is made of
 * an act when it is shown.
 *
 * The journal keeps verb and values: numbers in the units of the log, names and what was
 * typed as text, what may be missing as an empty text (base/values.h).  Which values a verb
 * has, in which order, and how they are said stands in the table of verbs.c alone: amounts
 * are said in the units of the house, instants in the time of this place.  entry_words makes
 * the sentence, for views, export, search and undo; an undo has no values, and the log reads
 * those of the act its chain began with.
 *
 * A new verb is a line of the enum, a row of the table in verbs.c (whose head explains the
 * places of a sentence) and a line of tests/kitchen/board/test_verbs.c.  Stored names are
 * never changed or used again for something else: logs have them.  Other values: another
 * verb.  No code compares stored names; it asks entry_verb, or through undos entry_act.
 *
 * In this room because the board asks for the last verb; acts are written by kitchen/act.
 */
#ifndef STILLROOM_KITCHEN_BOARD_VERBS_H
#define STILLROOM_KITCHEN_BOARD_VERBS_H

#include "kitchen/board/board.h"
#include "log/rows/journal.h"

enum verb {
	VERB_UNKNOWN, /* of another program, or of a later layout */
	VERB_UNDO,
	VERB_REDO,
	/* pot */
	VERB_START_DRYING,
	VERB_TO_TRAYS,
	VERB_SEEN,
	VERB_PACK,
	VERB_START_RUN,
	VERB_EDIT_FRUIT,
	VERB_JUICE_OUT,
	VERB_JUICE_IN,
	VERB_JUICE_STATE,
	VERB_JUICE_LEFT,
	VERB_START_BATCH,
	VERB_TICK,
	VERB_WARM_JARS,
	VERB_JARS_NOT_BOILED,
	VERB_NOTE,
	VERB_FILL,
	VERB_REFILL,
	VERB_PUT_AWAY,
	VERB_EDIT_AMOUNT,
	VERB_EDIT_JARS,
	VERB_BATCH_WRONG,
	/* canner */
	VERB_START_LOAD,
	VERB_LOAD_WAITING,
	VERB_REPROCESS,
	VERB_ALL_SEALED,
	VERB_JAR_STATE,
	VERB_JAR_TICK,
	VERB_JAR_SIPHONING,
	VERB_JAR_FATE,
	VERB_FATE_REST,
	VERB_FATE_DONE,
	VERB_FOUND_WRONG,
	/* any work */
	VERB_STEP,
	VERB_CLOCK_READ,
	VERB_HEARD,
	VERB_WATER_SEEN,
	VERB_LOST,
	VERB_STOP,
	VERB_VENT_SHORT,
	VERB_BEGAN_EARLIER,
	VERB_BROKEN_JAR,
	VERB_REDO_PROCESS,
	VERB_WATER,
	VERB_FORCED_COOLING,
	VERB_WEIGHT_EARLY,
	VERB_BOILED_AGAIN,
	/* stock */
	VERB_SUPPLY_IN,
	VERB_SUPPLY_COUNT,
	VERB_SOLD_BY,
	VERB_ADD_LIDS,
	VERB_EDIT_LIDS,
	VERB_LIDS_COUNT,
	/* pantry */
	VERB_TAKEN,
	VERB_COUNTED,
	VERB_RECALLED,
	VERB_FOLLOWED,
	/* recipe */
	VERB_ADD_RECIPE,
	VERB_EDIT_RECIPE,
	VERB_SHEET,
	/* plan */
	VERB_PLAN_ADD_RUN,
	VERB_PLAN_ADD_BATCH,
	VERB_PLAN_ADD_RUNS,
	VERB_PLAN_ADD_BATCHES,
	VERB_PLAN_CHANGE_RUN,
	VERB_PLAN_CHANGE_BATCH,
	VERB_PLAN_REMOVE_RUN,
	VERB_PLAN_REMOVE_BATCH,
	VERB_PLAN_ADD_DRYING,
	VERB_PLAN_ADD_DRYINGS,
	VERB_PLAN_CHANGE_DRYING,
	VERB_PLAN_REMOVE_DRYING,
	VERB_PLAN_WISHES,
	VERB_PLAN_START,
	VERB_PLAN_ACCEPT,
	VERB_PLAN_FINISH,
	VERB_PLAN_DROP,
	VERB_PLAN_HOUSE,
	VERB_HELPER,
	VERB_HELPER_GONE,
	VERB_BREAK,
	VERB_BREAK_GONE,
	/* house */
	VERB_NAME,
	VERB_ELEVATION,
	VERB_ELEVATION_BOILED,
	VERB_ELEVATION_WRONG,
	VERB_MEASURED_BOIL,
	VERB_BOIL_FORGOTTEN,
	VERB_STORAGE,
	VERB_STORAGE_FORGOTTEN,
	VERB_BAROMETER,
	VERB_BAROMETER_FORGOTTEN,
	VERB_INVENTED,
	VERB_PRACTICE,
	VERB_PRACTICE_HOUR,
	VERB_CLOCK_RIGHT, /* ends the stop "clock-behind" */
	VERB_UNITS,
	VERB_MINUTES,
	VERB_HOUSE_COPIED,
	VERB_ADD_STATION,
	VERB_EDIT_STATION,
	VERB_WHO,
	VERB_RULE_OFF,
	VERB_TAKE_UP,
	VERB_IMPORT,
	VERB_COUNT
};

/* What an act at no station is about, so that a view takes back what was done in its own
 * subject and nothing else (kitchen_undo_about). */
enum done_to {
	DONE_TO_NOTHING = 0, /* at a station: undone there */
	DONE_TO_HOUSE = 1,
	DONE_TO_HELP = 2, /* who works, meals, places: asked in the house and in the plan */
	DONE_TO_LIDS = 4,
	DONE_TO_SHELF = 8,
	DONE_TO_JUICE = 16,
	DONE_TO_RECIPES = 32,
	DONE_TO_RULES = 64,
	DONE_TO_PLAN = 128,
	DONE_TO_JARS = 256, /* of the pantry, and recalls */
};
enum done_to verb_done_to(enum verb verb);

const char *verb_stored(enum verb verb); /* "start_run"; VERB_UNKNOWN: "?" */
enum verb verb_named(const char *stored);
/* Of the entry itself, and of the act that its chain of undos began with. */
enum verb entry_verb(const struct log_entry *entry);
enum verb entry_act(const struct log_entry *entry);

/* The sentence of an entry of the journal, whole or cut at a character; an undo says what
 * it took back.  A verb or values that are in no table of ours are shown as they stand:
 * "? pickled: Big kettle, 7". */
void entry_words(const struct kitchen *kitchen, const struct log_entry *entry, char *buffer, size_t size);

/* The same of a verb and its values, for a search (struct log_teller): of an undo only that it is one.
 * `with` is the kitchen. */
void entry_tell(const void *with, const char *verb, const char *said, char *buffer, size_t size);

/* --- for who writes --- */

/* What its sentence is made from: verbs.c says how it is written.  NULL: of an undo, a redo
 * and VERB_UNKNOWN. */
const char *verb_template(enum verb verb);
/* The same values, when it was taken back. */
const char *verb_undone_template(enum verb verb);
/* Are these the values that the verb has: as many, each of its kind? */
bool verb_has_values(enum verb verb, const char *said);

#endif
