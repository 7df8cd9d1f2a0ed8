/*
 * load_facts.h - the loads that a person chose, each with its record and how its clock stands, for a report.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_LOAD_FACTS_H
#define STILLROOM_KITCHEN_EXCHANGE_LOAD_FACTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/board/load_record.h"
#include "kitchen/file/open_day.h"

/* Open loads are always chosen; which of the shelved ones besides? */
struct load_choice {
	bool all;          /* every one */
	const char *since; /* a date: those opened on it or later; NULL: today's */
};

struct load_facts {
	struct load_record record; /* all parts but the marks */
	struct log_phase phase;
	bool running; /* is in `phase`; false once shelved */
	const char *phase_words;
	bool timed;
	int64_t seconds_left; /* timed: negative when over */
	int hold_starts;
};

/* The loads a person chose, oldest first, malloc'ed: free with facts_free. */
bool facts_read(struct day *day, const struct load_choice *choice, struct load_facts **rows, size_t *count,
                struct fault *fault);
/* The same loads with nothing but their rows: `record.load` alone is filled in. */
bool facts_choose(struct kitchen *kitchen, const struct load_choice *choice, struct load_facts **rows, size_t *count,
                  struct fault *fault);
void facts_free(struct load_facts *rows, size_t count);

#endif
