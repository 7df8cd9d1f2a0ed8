/*
 * process_refusal.h - the sentences with which a process is refused.  For
 * engine/process/process.c only.  Each function fills in *fault and returns false.
 */
#ifndef STILLROOM_ENGINE_PROCESS_PROCESS_REFUSAL_H
#define STILLROOM_ENGINE_PROCESS_PROCESS_REFUSAL_H

#include <stdbool.h>
#include <stddef.h>

#include "engine/process/process.h"

/* What was asked for, as far as it has been understood. */
struct process_search {
	const struct process_query *query;
	const char *food; /* as in the tables */
	const char *pack; /* as in the tables; "" when they lack the method */
	size_t begin;     /* the food's rows lie in process_rows[begin .. end) */
	size_t end;
	const struct jar_size *jar;          /* asked for */
	const struct jar_size *jar_in_table; /* tested size that stands for it */
};

bool refuse_food(const char *asked, struct fault *fault);
bool refuse_low_acid(const char *food, struct fault *fault);
bool refuse_pack(const struct process_search *search, struct fault *fault);
bool refuse_jar(const char *asked, struct fault *fault);
bool refuse_method(const struct process_search *search, struct fault *fault);
bool refuse_jar_too_large(const struct process_search *search, const struct jar_size *largest, struct fault *fault);
bool refuse_above_bands(const struct process_search *search, int last_top_ft, struct fault *fault);
/* `pressure_psi`: NO_PRESSURE when none of the rows here is confirmed. */
bool refuse_unconfirmed(const struct process_search *search, int pressure_psi, struct fault *fault);
/* `stops_at_ft`: where the asked pressure ends in the table below here; 0: it
 * does not.  `offered`: the rows that apply here, longest first. */
bool refuse_pressure(const struct process_search *search, int stops_at_ft, const struct process_row *const *offered,
                     size_t count, struct fault *fault);
bool refuse_steam_hold(const struct process_search *search, int minutes, struct fault *fault);

#endif
