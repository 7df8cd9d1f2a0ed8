/*
 * facts.h - what the rules of the engine look at, gathered from the board.  For
 * the kitchen floor only.
 */
#ifndef STILLROOM_KITCHEN_WARNING_FACTS_H
#define STILLROOM_KITCHEN_WARNING_FACTS_H

#include "engine/rules/rule.h"
#include "kitchen/act/act.h"

/* Facts with room for words that are made for them; its words point into it, into
 * the board and into constants. */
struct gathered {
	struct facts facts;
	/* What a warning about them belongs to; 0: nothing of the kind. */
	int64_t station_id;
	int64_t load_id;
	int64_t batch_id;
	char words[3][FACT_WORDS_BYTES];
};

/* Called once for each thing there is to ask about. */
typedef void facts_reader(void *context, const struct gathered *gathered);
void facts_gather(const struct kitchen *kitchen, const struct moment *now, facts_reader *read, void *context);

#endif
