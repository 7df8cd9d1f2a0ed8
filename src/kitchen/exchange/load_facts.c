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

	return (one->load.id > other->load.id) - (one->load.id < other->load.id);
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
		joined[used++].load = open[i];
	for (size_t i = 0; i < opened_count; i++)
		if (opened[i].place == PLACE_SHELF)
			joined[used++].load = opened[i];
	qsort(joined, used, sizeof(*joined), by_age);
	/* Shelved between the two readings: in both lists. */
	*count = 0;
	for (size_t i = 0; i < used; i++)
		if (*count == 0 || joined[*count - 1].load.id != joined[i].load.id)
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
	const struct phase_rule *rule = phase_rule_named(facts->station.kind, facts->phase.name);
	int64_t passed_ms = moment_between(&facts->phase.began, now);

	facts->running = true;
	facts->phase_words = rule != NULL ? rule->words : facts->phase.name;
	facts->timed = facts->phase.required_ms > 0;
	facts->seconds_left = moment_seconds_left(facts->phase.required_ms, passed_ms);
}

static bool read_phases(struct day *day, struct load_facts *facts, struct fault *fault)
{
	struct moment now = kitchen_now(day_kitchen(day));
	struct log_phase *phases;
	size_t count;

	if (!log_phases(day_log(day), (struct log_subject){ SUBJECT_LOAD, facts->load.id }, &phases, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		facts->hold_starts += strcmp(phases[i].name, phase_name_stored(PHASE_HOLD)) == 0;
		if (phases[i].ended_wall_ms != 0)
			continue;
		facts->phase = phases[i];
		read_clock(facts, &now);
	}
	free(phases);
	return true;
}

/* Label of the box a jar's lid came from; one load seldom takes lids from two,
 * so the last box asked for is remembered. */
static bool read_box(struct day *day, struct jar_facts *facts, struct log_lid_box *last, struct fault *fault)
{
	int64_t id = facts->jar.lid_box_id;

	if (id == 0)
		return true;
	if (last->id != id && !log_lid_box_get(day_log(day), id, last, fault))
		return false;
	text_copy(facts->lid_box, sizeof(facts->lid_box), last->label);
	return true;
}

static bool add_lot(struct day *day, struct load_facts *facts, struct jar_facts *jar, struct fault *fault)
{
	struct lot_facts *lot;

	for (jar->lot = 0; jar->lot < facts->lot_count; jar->lot++)
		if (facts->lots[jar->lot].lot.id == jar->jar.lot_id)
			break;
	lot = &facts->lots[jar->lot];
	if (jar->lot == facts->lot_count) {
		facts->lot_count++;
		text_copy(lot->size, sizeof(lot->size), jar->jar.size);
		if (!log_lot_get(day_log(day), jar->jar.lot_id, &lot->lot, fault))
			return false;
	}
	lot->jars++;
	if (strcmp(lot->size, jar->jar.size) != 0)
		lot->size[0] = '\0';
	return true;
}

static bool read_jars(struct day *day, struct load_facts *facts, struct fault *fault)
{
	struct log_jar whole = { .load_id = facts->load.id }; /* no jar of it: the load's own answer */
	struct log_lid_box last = { .id = 0 };
	struct log_jar *jars;
	size_t count;
	bool done;

	if (!log_judgement_of_jar(day_log(day), &whole, &facts->said, fault) ||
	    !log_jars(day_log(day), facts->load.id, &jars, &count, fault))
		return false;
	facts->jars = calloc(count + 1, sizeof(*facts->jars));
	facts->lots = calloc(count + 1, sizeof(*facts->lots));
	done = (facts->jars != NULL && facts->lots != NULL) ||
	       fault_set(fault, FAULT_MEMORY, "Not enough memory for the jars.");
	facts->jar_count = done ? count : 0;
	for (size_t i = 0; done && i < count; i++) {
		facts->jars[i].jar = jars[i];
		done = read_box(day, &facts->jars[i], &last, fault) && add_lot(day, facts, &facts->jars[i], fault) &&
		       log_judgement_of_jar(day_log(day), &jars[i], &facts->jars[i].said, fault);
	}
	free(jars);
	return done;
}

static bool read_facts(struct day *day, struct load_facts *facts, struct fault *fault)
{
	return log_station_get(day_log(day), facts->load.station_id, &facts->station, fault) &&
	       read_phases(day, facts, fault) && read_jars(day, facts, fault);
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
	for (size_t i = 0; rows != NULL && i < count; i++) {
		free(rows[i].jars);
		free(rows[i].lots);
	}
	free(rows);
}
