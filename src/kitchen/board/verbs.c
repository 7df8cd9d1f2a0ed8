/*
 * verbs.c - verbs by their names in the log, and what is known of each.
 */
#include "kitchen/board/verbs.h"

#include <string.h>

struct verb_row {
	const char *stored; /* at most WORD_MAX_BYTES - 1 */
	const char *template;
	enum done_to to; /* of an act at no station: where it is undone */
};

#define VERB_ROW(TAG, stored, template, to) [VERB_##TAG] = { stored, template, DONE_TO_##to },
/* clang-format off */
static const struct verb_row rows[VERB_COUNT] = {
	[VERB_UNKNOWN] = { "?", NULL, DONE_TO_NOTHING },
	EACH_VERB(VERB_ROW)
};
/* clang-format on */

/* Of an undo, where the sentence would read as an order: "boil lost: back to the boil". */
static const char *const undone[VERB_COUNT] = {
	[VERB_LOST] = "{0} goes on as it was. It had been noted: {1}",
	[VERB_ELEVATION_WRONG] = "the elevation of [{0:height}|a place not known]",
};

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
	return (int)verb >= 0 && verb < VERB_COUNT && undone[verb] != NULL ? undone[verb] : verb_template(verb);
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
