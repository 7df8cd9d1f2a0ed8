/*
 * verbs.h - what can be done, by its name in the journal, and the sentence that is made of
 * an act when it is shown.
 *
 * The journal keeps verb and values: numbers in the units of the log, names and what was
 * typed as text, what may be missing as an empty text (base/values.h).  Which values a verb
 * has, in which order, and how they are said stands in the table of each_verb.h alone: amounts
 * are said in the units of the house, instants in the time of this place.  entry_words makes
 * the sentence, for views, export, search and undo; an undo has no values, and the log reads
 * those of the act its chain began with.
 *
 * A new verb is a line of that table, whose head explains the places of a sentence, and one of
 * tests/kitchen/board/test_verbs.c.  No code compares stored names; it asks entry_verb, or
 * through undos entry_act.
 *
 * In this room because the board asks for the last verb; acts are written by kitchen/act.
 */
#ifndef STILLROOM_KITCHEN_BOARD_VERBS_H
#define STILLROOM_KITCHEN_BOARD_VERBS_H

#include "kitchen/board/board.h"
#include "kitchen/board/each_verb.h"
#include "log/rows/journal.h"

/* clang-format off */
#define VERB_TAG(TAG, stored, template, to) VERB_##TAG,
enum verb {
	VERB_UNKNOWN, /* of another program, or of a later layout */
	EACH_VERB(VERB_TAG)
	VERB_COUNT
};
/* clang-format on */

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

/* What its sentence is made from: each_verb.h says how it is written.  NULL: of an undo, a redo
 * and VERB_UNKNOWN. */
const char *verb_template(enum verb verb);
/* The same values, when it was taken back. */
const char *verb_undone_template(enum verb verb);
/* Are these the values that the verb has: as many, each of its kind? */
bool verb_has_values(enum verb verb, const char *said);

#endif
