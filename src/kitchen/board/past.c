/*
 * past.c - what is known of one load, run or batch, however long ago.
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/board/kinds.h"
#include "kitchen/board/load_record.h"
#include "kitchen/board/telling.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/house.h"
#include "log/tables/pantry.h"
#include "log/tables/pot.h"

#define PAST_LINES_MAX 64

void tell(struct telling *telling, enum past_kind kind, const char *format, ...)
{
	struct past_line *line;
	struct text text;
	va_list args;

	if (telling->count == PAST_LINES_MAX)
		return;
	line = &telling->rows[telling->count++];
	line->kind = kind;
	text = TEXT_OVER(line->words);
	va_start(args, format);
	text_addv(&text, format, args);
	va_end(args);
}

enum unit_system units_of(const struct telling *telling)
{
	return telling->kitchen->board.house.units;
}

static void station_name(const struct telling *telling, int64_t id, char name[NAME_MAX_BYTES])
{
	struct log_station station;

	text_copy(name, NAME_MAX_BYTES, "a station");
	if (log_station_get(telling->kitchen->log, id, &station, NULL))
		text_copy(name, NAME_MAX_BYTES, station.name);
}

void tell_title(struct telling *telling, const char *what, int64_t wall_ms, int64_t station_id)
{
	char when[40];
	char hour[8];
	char station[NAME_MAX_BYTES];

	clock_words_date(wall_ms, when, sizeof(when));
	clock_words_hour(wall_ms, hour, sizeof(hour));
	station_name(telling, station_id, station);
	tell(telling, PAST_TITLE, "%s, %s %s, %s", what, when, hour, station);
}

static void tell_verdict(struct telling *telling, enum verdict verdict, const char *why)
{
	switch (verdict) {
	case VERDICT_VALID:
		tell(telling, PAST_GOOD, "Process valid: the full time at the full condition was recorded.");
		break;
	case VERDICT_NOT_VALID: tell(telling, PAST_BAD, "Process NOT VALID: %s", why); break;
	case VERDICT_UNKNOWN: tell(telling, PAST_BAD, "Process unknown: %s", why); break;
	case VERDICT_OPEN:
	case VERDICT_COUNT: break;
	}
}

/* What was written down, and what was not. */
static void tell_notebook(struct telling *telling, const struct log_load *load, const char *pressure)
{
	char minutes[24] = "minutes not noted";
	char height[80] = "not noted";

	if (load->minutes > 0)
		(void)snprintf(minutes, sizeof(minutes), "%d min", load->minutes);
	if (load->elevation.known)
		elevation_words(&load->elevation, height, sizeof(height));
	tell(telling, PAST_FACT, "%s%s, %s; elevation %s", minutes, pressure,
	     load->method_not_noted ? "canner not noted" : method_words(load->method), height);
	tell(telling, PAST_SOURCE, "%s", load->source);
}

static void tell_process(struct telling *telling, const struct log_load *load)
{
	char height[80];
	char headspace[24];
	char pressure[24] = "";
	const struct jar_size *row = jar_size_named(load->jar_in_table);

	elevation_words(&load->elevation, height, sizeof(height));
	headspace_words(load->headspace_thou, headspace, sizeof(headspace));
	if (load->pressure_psi != NO_PRESSURE)
		(void)snprintf(pressure, sizeof(pressure), " at %d psi", load->pressure_psi);
	if (load_from_notebook(load)) {
		tell_notebook(telling, load, pressure);
		return;
	}
	tell(telling, PAST_FACT, "%d min%s, %s, headspace %s, by the row for %s", load->minutes, pressure,
	     method_words(load->method), headspace, row == NULL ? load->jar_in_table : row->plural);
	tell(telling, PAST_SOURCE, "%s%s", load->source,
	     load->confirmed == CONFIRMED_PRACTICE ? " (common practice, no source)" : "");
	tell(telling, PAST_FACT, "Elevation used: %s%s%s", height, load->elevation_by[0] != '\0' ? ", set by " : "",
	     load->elevation_by);
}

/* "Hold 2", "Vent": the phase as people say it; only holds are numbered, since only
 * they are done again in full. */
static void phase_told(const struct log_load *load, const struct log_phase *phase, int holds, char *buffer, size_t size)
{
	const struct phase_rule *rule = phase_rule_named(method_station(load->method), phase->name);
	struct text text = text_over(buffer, size);

	text_add(&text, "%s", rule == NULL ? phase->name : rule->words);
	if (buffer[0] >= 'a' && buffer[0] <= 'z')
		buffer[0] = (char)(buffer[0] - 'a' + 'A');
	if (holds > 0)
		text_add(&text, " %d", holds);
}

/* "Hold 2 was lost after 7:05 of 15:00"; holds: which one this is, 0: none. */
static void tell_phase(struct telling *telling, const struct log_load *load, const struct log_phase *phase, int holds)
{
	static const char *const ends[PHASE_END_COUNT] = {
		[PHASE_DONE] = "ran",
		[PHASE_LOST] = "was lost after",
		[PHASE_CUT_SHORT] = "was cut short after",
		[PHASE_STOPPED] = "was stopped after",
	};
	char name[NAME_MAX_BYTES];
	char lasted[24];
	char of[24] = "";
	struct text lasted_text = TEXT_OVER(lasted);
	struct text of_text = TEXT_OVER(of);

	phase_told(load, phase, holds, name, sizeof(name));
	text_add_duration(&lasted_text, phase->lasted_ms / 1000);
	if (phase->required_ms > 0) {
		text_add(&of_text, " of ");
		text_add_duration(&of_text, phase->required_ms / 1000);
	}
	tell(telling, phase->ended_why == PHASE_DONE ? PAST_FACT : PAST_BAD, "%s %s %s%s%s", name,
	     ends[phase->ended_why], lasted, of, phase->ended_why == PHASE_LOST ? ": full time again" : "");
}

/* Every hold, and of the other phases those that did not end as they should. */
static void tell_holds(struct telling *telling, const struct load_record *record)
{
	int holds = 0;

	for (size_t i = 0; i < record->phase_count; i++) {
		const struct log_phase *phase = &record->phases[i];
		bool hold = strcmp(phase->name, phase_name_stored(PHASE_HOLD)) == 0;

		holds += hold;
		if (phase->ended_why == PHASE_RUNNING || (phase->ended_why == PHASE_DONE && !hold))
			continue;
		tell_phase(telling, &record->load, phase, hold ? holds : 0);
	}
}

/* Jars that did not seal and were processed again: from where, or into which load. */
static void tell_linked(struct telling *telling, int64_t load_id)
{
	int64_t *ids;
	size_t count;

	if (!log_loads_linked(telling->kitchen->log, load_id, &ids, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++)
		if (ids[i] != load_id)
			tell(telling, PAST_FACT, "Jars of it under other lids, processed again: load %" PRId64, ids[i]);
	free(ids);
}

/* Counts of a list of jars. */
struct jar_counts {
	int state[JAR_STATE_COUNT];
	int fate[FATE_COUNT];
	int lost;
	int over_half;
	int gone[GONE_COUNT];
};

static struct jar_counts count_jars(const struct log_jar *jars, size_t count)
{
	struct jar_counts counts = { 0 };

	for (size_t i = 0; i < count; i++) {
		counts.state[jars[i].state]++;
		counts.fate[jars[i].fate]++;
		counts.lost += jars[i].siphoning != SIPHON_NONE;
		counts.over_half += jars[i].siphoning == SIPHON_OVER_HALF;
		counts.gone[jars[i].gone_why]++;
	}
	return counts;
}

static void tell_jars(struct telling *telling, const struct log_jar *jars, size_t count)
{
	static const char *const gone_words[GONE_COUNT] = {
		[GONE_NOT] = "",
		[GONE_USED] = "used",
		[GONE_GIVEN] = "given away",
		[GONE_SPOILED] = "spoiled",
		[GONE_MISSING] = "not found",
		[GONE_THROWN_OUT] = "thrown out",
		[GONE_NOT_NOTED] = "nobody noted where",
	};
	struct jar_counts counts = count_jars(jars, count);
	char words[SENTENCE_MAX_BYTES];
	struct text text = TEXT_OVER(words);

	for (int state = 0; state < JAR_STATE_COUNT; state++)
		if (counts.state[state] > 0)
			text_add(&text, "%s%d %s", text.used == 0 ? "" : ", ", counts.state[state],
			         jar_state_name((enum jar_state)state));
	for (int fate = FATE_FRIDGE; fate < FATE_COUNT; fate++)
		if (counts.fate[fate] > 0)
			text_add(&text, "; to %s: %d", jar_fate_name((enum jar_fate)fate), counts.fate[fate]);
	for (int why = GONE_NOT + 1; why < GONE_COUNT; why++)
		if (counts.gone[why] > 0)
			text_add(&text, "; %s: %d", gone_words[why], counts.gone[why]);
	if (counts.lost > 0)
		text_add(&text, "; liquid lost: %d, over half: %d", counts.lost, counts.over_half);
	tell(telling, PAST_FACT, count == 0 ? "%s" : "%s: %s", count_words((int64_t)count, "jar").words, words);
}

/* A lot, a lid box, a size or a closer, told once with how many jars it has. */
struct group {
	int64_t id;
	char word[NAME_MAX_BYTES];
	int jars;
};
#define GROUPS_MAX 16

static void count_in(struct group groups[GROUPS_MAX], size_t *count, int64_t id, const char *word)
{
	for (size_t i = 0; i < *count; i++) {
		if (groups[i].id == id && strcmp(groups[i].word, word) == 0) {
			groups[i].jars++;
			return;
		}
	}
	if (*count == GROUPS_MAX)
		return;
	groups[*count].id = id;
	groups[*count].jars = 1;
	text_copy(groups[(*count)++].word, NAME_MAX_BYTES, word);
}

static void tell_lots(struct telling *telling, const struct load_record *record)
{
	struct group lots[GROUPS_MAX];
	size_t lot_count = 0;

	for (size_t i = 0; i < record->jar_count; i++)
		count_in(lots, &lot_count, record->jars[i].lot_id, record->jars[i].size);
	for (size_t i = 0; i < lot_count; i++) {
		const struct log_lot *lot = &load_record_lot(record, lots[i].id)->row;

		tell(telling, PAST_FACT, "Lot %s: %d %s %s", lot->code, lots[i].jars,
		     jar_size_words(lots[i].word, lots[i].jars), lot->product);
	}
}

static void tell_lids(struct telling *telling, const struct load_record *record)
{
	struct group people[GROUPS_MAX];
	size_t person_count = 0;

	for (size_t i = 0; i < record->lids_count; i++)
		tell(telling, PAST_FACT, "Lids: %zu from %s", record->lids[i].jars, record->lids[i].row.label);
	for (size_t i = 0; i < record->jar_count; i++)
		if (record->jars[i].closed_by[0] != '\0')
			count_in(people, &person_count, 0, record->jars[i].closed_by);
	for (size_t i = 0; i < person_count; i++)
		tell(telling, PAST_FACT, "Closed by %s: %d", people[i].word, people[i].jars);
}

bool tell_load(struct telling *telling, int64_t id, struct fault *fault)
{
	struct load_record record;

	if (!load_record_read(telling->kitchen->log, id, LOAD_PHASES | LOAD_LIDS, &record, fault))
		return false;
	tell_title(telling, "Load", record.load.opened_wall_ms, record.load.station_id);
	tell_lots(telling, &record);
	tell_verdict(telling, record.load.verdict, record.load.verdict_why);
	tell_process(telling, &record.load);
	if (record.load.note[0] != '\0')
		tell(telling, PAST_FACT, "Note: %s", record.load.note);
	tell_holds(telling, &record);
	tell_linked(telling, id);
	tell_jars(telling, record.jars, record.jar_count);
	tell_lids(telling, &record);
	/* ISU: a seal only shows a vacuum; docs/reference.md. */
	tell(telling, PAST_CAUTION, "A seal shows a vacuum. It is no proof of safety [ISU]; only the process counts.");
	load_record_free(&record);
	return true;
}

static void tell_amounts(struct telling *telling, int64_t batch_id)
{
	struct log_batch_amount *amounts;
	size_t count;

	if (!log_batch_amounts(telling->kitchen->log, batch_id, &amounts, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++) {
		char used[64];

		amount_words(amounts[i].measure, amounts[i].used, units_of(telling), used, sizeof(used));
		tell(telling, PAST_FACT, "%s: %s%s", amounts[i].ingredient, used,
		     amounts[i].used != amounts[i].wanted ? " (not as the recipe says)" : "");
	}
	free(amounts);
}

static void tell_batch_jars(struct telling *telling, int64_t batch_id)
{
	struct group sizes[GROUPS_MAX];
	struct log_jar *jars;
	size_t size_count = 0;
	size_t count;

	if (!log_jars_of_batch(telling->kitchen->log, batch_id, &jars, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++)
		if (jars[i].from_jar_id == 0) /* under its first lid, as jars_filled counts */
			count_in(sizes, &size_count, 0, jars[i].size);
	for (size_t i = 0; i < size_count; i++) {
		tell(telling, PAST_FACT, "Filled: %d %s", sizes[i].jars, jar_size_words(sizes[i].word, sizes[i].jars));
	}
	if (count > 0)
		tell_jars(telling, jars, count);
	free(jars);
}

void tell_juices(struct telling *telling, int64_t batch_id)
{
	struct log_juice_use *uses;
	struct log_juice juice;
	char taken[64];
	size_t count;

	if (!log_juice_uses(telling->kitchen->log, batch_id, &uses, &count, NULL))
		return;
	for (size_t i = 0; i < count; i++) {
		if (!log_juice_get(telling->kitchen->log, uses[i].juice_id, &juice, NULL))
			continue;
		amount_words(MEASURE_VOLUME, uses[i].ul, units_of(telling), taken, sizeof(taken));
		if (juice.run_id == 0)
			tell(telling, PAST_FACT, "Juice: %s of %s, brought in", taken, juice.kind);
		else
			tell(telling, PAST_FACT, "Juice: %s of %s, juicer run %lld", taken, juice.kind,
			     (long long)juice.run_id);
	}
	free(uses);
}

bool tell_batch(struct telling *telling, int64_t id, struct fault *fault)
{
	struct log_batch batch;
	struct log_lot lot = { 0 };

	if (!log_batch_get(telling->kitchen->log, id, &batch, fault))
		return false;
	(void)log_lot_get(telling->kitchen->log, batch.lot_id, &lot, NULL);
	tell_title(telling, "Batch", batch.opened_wall_ms, batch.station_id);
	tell(telling, PAST_FACT, "Lot %s: %d x %s", lot.code, batch.multiple, batch.recipe);
	tell(telling, PAST_SOURCE, "%s", batch.source);
	if (batch.note[0] != '\0')
		tell(telling, PAST_FACT, "Note: %s", batch.note);
	tell_verdict(telling, batch.verdict, batch.verdict_why);
	if (!batch.published)
		tell(telling, PAST_BAD, "No published process: fridge or freezer only.");
	tell_juices(telling, id);
	tell_amounts(telling, id);
	tell_batch_jars(telling, id);
	for (size_t i = 0; i < WORK_KINDS; i++)
		if (work_kinds[i]->tell_taken != NULL)
			work_kinds[i]->tell_taken(telling, id);
	return true;
}

static bool tell_all(struct telling *telling, struct log_subject subject, struct fault *fault)
{
	const struct work_kind *kind = work_kind_of(subject.kind);

	return kind == NULL ? fault_set(fault, FAULT_MISSING, "There is no such load, run or batch.")
	                    : kind->tell(telling, subject.id, fault);
}

bool kitchen_past(const struct kitchen *kitchen, struct log_subject subject, struct past_line **rows, size_t *count,
                  struct fault *fault)
{
	struct telling telling = { .kitchen = kitchen, .rows = calloc(PAST_LINES_MAX, sizeof(struct past_line)) };

	*rows = NULL;
	*count = 0;
	if (telling.rows == NULL)
		return fault_set(fault, FAULT_MEMORY, "Not enough memory for the record.");
	if (!tell_all(&telling, subject, fault)) {
		free(telling.rows);
		return false;
	}
	*rows = telling.rows;
	*count = telling.count;
	return true;
}
