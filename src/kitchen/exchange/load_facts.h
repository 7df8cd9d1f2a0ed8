/*
 * load_facts.h - everything the log holds about one load, gathered for a report.
 */
#ifndef STILLROOM_KITCHEN_EXCHANGE_LOAD_FACTS_H
#define STILLROOM_KITCHEN_EXCHANGE_LOAD_FACTS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kitchen/file/open_day.h"

/* Open loads are always chosen; which of the shelved ones besides? */
struct load_choice {
	bool all;          /* every one */
	const char *since; /* a date: those opened on it or later; NULL: today's */
};

/* A lot and how many of its jars are in the load. */
struct lot_facts {
	struct log_lot lot;
	size_t jars;
	char size[WORD_MAX_BYTES]; /* of all of them; "" several sizes */
};

struct jar_facts {
	struct log_jar jar;
	size_t lot;                   /* index into the load's lots */
	struct log_judgement said;    /* the gate's answer for this jar */
	char lid_box[NAME_MAX_BYTES]; /* "" = not noted */
};

struct load_facts {
	struct log_load load;
	struct log_station station;
	struct lot_facts *lots; /* owned; in the order of their first jars */
	size_t lot_count;
	struct log_judgement said; /* the gate's answer: the worst of its jars */
	struct log_phase phase;
	bool running; /* is in `phase`; false once shelved */
	const char *phase_words;
	bool timed;
	int64_t seconds_left; /* timed: negative when over */
	int hold_starts;
	struct jar_facts *jars; /* owned */
	size_t jar_count;
};

/* The loads a person chose, oldest first, malloc'ed: free with facts_free. */
bool facts_read(struct day *day, const struct load_choice *choice, struct load_facts **rows, size_t *count,
                struct fault *fault);
/* The same loads with nothing but their rows: `load` alone is filled in. */
bool facts_choose(struct kitchen *kitchen, const struct load_choice *choice, struct load_facts **rows, size_t *count,
                  struct fault *fault);
void facts_free(struct load_facts *rows, size_t count);

#endif
