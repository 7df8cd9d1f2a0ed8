#include "kitchen/exchange/load_facts.h"

#include <stdlib.h>
#include <string.h>

#include "base/moment.h"
#include "base/text.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/phases.h"
#include "kitchen/exchange/labels.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/work.h"

#define FOREVER_MS INT64_MAX

static bool first_moment(const struct kitchen *kitchen, const struct load_choice *choice, int64_t *from_ms,
                         struct fault *fault)
{
	*from_ms = 0;
	if (choice->all && choice->since != NULL)
		return fault_set(fault, FAULT_MISUSE, "all loads, or those since a date: not both");
	if (choice->since != NULL && !clock_read_date(choice->since, from_ms))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a date like 2026-09-14", choice->since);
	if (!choice->all && choice->since == NULL)
		*from_ms = clock_day_start(kitchen_now(kitchen).wall_ms);
	return true;
}

static int by_age(const void *a, const void *b)
{
	const struct load_facts *one = a;
	const struct load_facts *other = b;

	return (one->record.load.id > other->record.load.id) - (one->record.load.id < other->record.load.id);
}

/* Both lists, each load once, oldest first. */
static bool join(const struct log_load *open, size_t open_count, const struct log_load *opened, size_t opened_count,
                 struct load_facts **rows, size_t *count, struct fault *fault)
{
	struct load_facts *joined = calloc(open_count + opened_count + 1, sizeof(*joined));
	size_t used = 0;

	if (joined == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the loads.");
	for (size_t i = 0; i < open_count; i++)
		joined[used++].record.load = open[i];
	for (size_t i = 0; i < opened_count; i++)
		if (opened[i].place == PLACE_SHELF)
			joined[used++].record.load = opened[i];
	qsort(joined, used, sizeof(*joined), by_age);
	/* Shelved between the two readings: in both lists. */
	*count = 0;
	for (size_t i = 0; i < used; i++)
		if (*count == 0 || joined[*count - 1].record.load.id != joined[i].record.load.id)
			joined[(*count)++] = joined[i];
	*rows = joined;
	return true;
}

bool facts_choose(struct kitchen *kitchen, const struct load_choice *choice, struct load_facts **rows, size_t *count,
                  struct fault *fault)
{
	struct log *log = kitchen_log(kitchen);
	struct log_load *open = NULL;
	struct log_load *opened = NULL;
	size_t open_count = 0;
	size_t opened_count = 0;
	int64_t from_ms;
	bool done;

	*rows = NULL;
	*count = 0;
	if (!first_moment(kitchen, choice, &from_ms, fault))
		return false;
	done = log_works_open(log, SUBJECT_LOAD, &open, &open_count, fault) &&
	       log_works_between(log, SUBJECT_LOAD, from_ms, FOREVER_MS, &opened, &opened_count, fault) &&
	       join(open, open_count, opened, opened_count, rows, count, fault);
	free(open);
	free(opened);
	return done;
}

static void read_clock(struct load_facts *facts, const struct moment *now)
{
	const struct phase_rule *rule = phase_rule_named(facts->record.station.kind, facts->phase.name);
	int64_t passed_ms = moment_between(&facts->phase.began, now);

	facts->running = true;
	facts->phase_words = rule != NULL ? rule->words : facts->phase.name;
	facts->timed = facts->phase.required_ms > 0;
	facts->seconds_left = moment_seconds_left(facts->phase.required_ms, passed_ms);
}

static void read_phases(struct load_facts *facts, const struct moment *now)
{
	const struct load_record *record = &facts->record;

	for (size_t i = 0; i < record->phase_count; i++) {
		facts->hold_starts += strcmp(record->phases[i].name, phase_name_stored(PHASE_HOLD)) == 0;
		if (record->phases[i].ended_wall_ms != 0)
			continue;
		facts->phase = record->phases[i];
		read_clock(facts, now);
	}
}

static bool read_facts(struct day *day, struct load_facts *facts, struct fault *fault)
{
	struct log_load load = facts->record.load;
	struct moment now = kitchen_now(day_kitchen(day));

	if (!load_record_of(day_log(day), &load, LOAD_STATION | LOAD_PHASES | LOAD_LIDS | LOAD_SAID, &facts->record,
	                    fault))
		return false;
	read_phases(facts, &now);
	return true;
}

bool facts_read(struct day *day, const struct load_choice *choice, struct load_facts **rows, size_t *count,
                struct fault *fault)
{
	if (!facts_choose(day_kitchen(day), choice, rows, count, fault))
		return false;
	for (size_t i = 0; i < *count; i++) {
		if (!read_facts(day, &(*rows)[i], fault)) {
			facts_free(*rows, *count);
			*rows = NULL;
			*count = 0;
			return false;
		}
	}
	return true;
}

void facts_free(struct load_facts *rows, size_t count)
{
	for (size_t i = 0; rows != NULL && i < count; i++)
		load_record_free(&rows[i].record);
	free(rows);
}
