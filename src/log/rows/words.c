/*
 * words.c - the words the enums are stored under. They are the CHECK lists
 * of schema/log.sql; a new word goes into both.
 */
#include <assert.h>

#include "base/text.h"
#include "engine/drying/drying.h"
#include "log/rows/enum_words.h"
#include "log/rows/journal.h"
#include "log/rows/stock.h"
#include "log/rows/words.h"

const char *word_at(const struct enum_words *words, int index)
{
	if (index >= 0 && index < words->count && words->list != NULL)
		return words->list[index];
	if (index >= 0 && index < words->count && words->name != NULL)
		return words->name(index);
	return "?";
}

#define WORDS(array, enum_count) \
	static_assert(sizeof(array) / sizeof((array)[0]) == (enum_count), #array " misses a word")

static const char *const places[] = {
	[PLACE_STATION] = "canner",
	[PLACE_RACK] = "rack",
	[PLACE_SHELF] = "shelf",
};
WORDS(places, PLACE_COUNT);

static const char *const verdicts[] = {
	[VERDICT_OPEN] = "open",
	[VERDICT_VALID] = "valid",
	[VERDICT_NOT_VALID] = "not_valid",
	[VERDICT_UNKNOWN] = "unknown",
};
WORDS(verdicts, VERDICT_COUNT);

static const char *const walls[] = {
	[WALL_NOT_SAID] = "", /* stored as null */
	[WALL_HEAVY] = "heavy",
	[WALL_LOCK] = "lock",
};
WORDS(walls, WALL_COUNT);

static const char *const marks[] = {
	[MARK_STOPPED] = "stopped",
	[MARK_FOUND_WRONG] = "found_wrong",
	[MARK_VENT_CUT] = "vent_cut",
	[MARK_EARLIER] = "earlier",
	[MARK_FORCED_COOLING] = "forced_cooling",
	[MARK_WEIGHT_EARLY] = "weight_early",
	[MARK_RESTARTED] = "restarted",
	[MARK_CLOCK_BEGAN] = "clock_began",
	[MARK_CLOCK_ENDED] = "clock_ended",
	[MARK_IMPORTED_WORSE] = "imported_worse",
	[MARK_RAISED] = "raised",
	[MARK_VENTED] = "vented",
	[MARK_NOT_AS_RECIPE] = "not_as_recipe",
	[MARK_MULTIPLIED] = "multiplied",
	[MARK_VINEGAR] = "vinegar",
	[MARK_POT_STOOD] = "pot_stood",
	[MARK_ACID_LEFT_OUT] = "acid_left_out",
	[MARK_ACID_INSTEAD] = "acid_instead",
};
WORDS(marks, MARK_KIND_COUNT);

static const char *const phase_ends[] = {
	[PHASE_RUNNING] = "", /* stored as null */
	[PHASE_DONE] = "done", [PHASE_LOST] = "lost", [PHASE_CUT_SHORT] = "cut_short", [PHASE_STOPPED] = "stopped",
};
WORDS(phase_ends, PHASE_END_COUNT);

static const char *const jar_states[] = {
	[JAR_UNCHECKED] = "unchecked", [JAR_SEALED] = "sealed", [JAR_UNSEALED] = "unsealed",
	[JAR_DOUBTFUL] = "doubtful",   [JAR_BROKEN] = "broken",
};
WORDS(jar_states, JAR_STATE_COUNT);

static const char *const siphonings[] = {
	[SIPHON_NONE] = "none",
	[SIPHON_SLIGHT] = "slight",
	[SIPHON_UNDER_HALF] = "under_half",
	[SIPHON_OVER_HALF] = "over_half",
};
WORDS(siphonings, SIPHON_COUNT);

static const char *const fates[] = {
	[FATE_NONE] = "none",           [FATE_FRIDGE] = "fridge",   [FATE_FREEZER] = "freezer",
	[FATE_REPROCESS] = "reprocess", [FATE_DISCARD] = "discard",
};
WORDS(fates, FATE_COUNT);

/* A canner is stored under the name of its method. */
#define STATION_STORED(TAG, stored, words) [STATION_##TAG] = #stored,
static const char *const station_kinds[] = { EACH_STATION(STATION_STORED) };
WORDS(station_kinds, STATION_KIND_COUNT);

static const char *const unit_systems[] = {
	[UNITS_US] = "us",
	[UNITS_METRIC] = "metric",
};
WORDS(unit_systems, UNIT_SYSTEM_COUNT);

static const char *const juice_states[] = {
	[JUICE_HOT] = "hot",
	[JUICE_CHILLED] = "chilled",
	[JUICE_FROZEN] = "frozen",
};
WORDS(juice_states, JUICE_STATE_COUNT);

static const char *const juice_whys[] = {
	[JUICE_FOR_BATCH] = "batch",
	[JUICE_CORRECTION] = "correction",
	[JUICE_DISCARDED] = "discarded",
};
WORDS(juice_whys, JUICE_WHY_COUNT);

static const char *const supply_whys[] = {
	[SUPPLY_RECEIPT] = "receipt",
	[SUPPLY_USE] = "use",
	[SUPPLY_CORRECTION] = "correction",
};
WORDS(supply_whys, SUPPLY_WHY_COUNT);

static const char *const tallies[] = {
	[TALLY_HOUSE] = "house",
	[TALLY_LID_BOX] = "lid_box",
	[TALLY_CANNER] = "canner",
	[TALLY_PERSON] = "person",
};
WORDS(tallies, TALLY_ABOUT_COUNT);

static const char *const ticks[] = {
	[TICK_NONE] = "", /* stored as null */
	[TICK_GOOD] = "good",
	[TICK_BAD] = "bad",
};
WORDS(ticks, TICK_COUNT);

static const char *const gones[] = {
	[GONE_NOT] = "", /* stored as null */
	[GONE_USED] = "used",
	[GONE_GIVEN] = "given",
	[GONE_SPOILED] = "spoiled",
	[GONE_MISSING] = "missing",
	[GONE_NOT_NOTED] = "not_noted",
	[GONE_THROWN_OUT] = "thrown_out",
};
WORDS(gones, GONE_COUNT);

#define WORK_TRACE_WORD(TAG, word) [TRACE_##TAG] = #word,
/* clang-format off */
static const char *const traces[] = {
	[TRACE_LOT] = "lot", [TRACE_LID_BOX] = "lid_box", EACH_WORK(WORK_TRACE_WORD)
	[TRACE_PRODUCT] = "product", [TRACE_DAY] = "day",
};
/* clang-format on */
WORDS(traces, TRACE_ABOUT_COUNT);

static const char *const outcomes[] = {
	[RECALL_TO_FIND] = "", /* stored as null */
	[RECALL_THROWN_OUT] = "thrown_out",
	[RECALL_NOT_FOUND] = "not_found",
	[RECALL_CLEARED] = "cleared",
	[RECALL_REPROCESSED] = "reprocessed",
	[RECALL_GONE] = "gone",
};
WORDS(outcomes, RECALL_OUTCOME_COUNT);

const struct enum_words words_of_tick = { .list = ticks, .count = TICK_COUNT };
const struct enum_words words_of_gone = { .list = gones, .count = GONE_COUNT };
const struct enum_words words_of_trace = { .list = traces, .count = TRACE_ABOUT_COUNT };
const struct enum_words words_of_outcome = { .list = outcomes, .count = RECALL_OUTCOME_COUNT };
/* Of work: never the house or a station. */
#define WORK_WORD(TAG, word) [SUBJECT_##TAG] = #word,
/* clang-format off */
static const char *const works[] = { [SUBJECT_HOUSE] = "?", [SUBJECT_STATION] = "?", EACH_WORK(WORK_WORD) };
/* clang-format on */
WORDS(works, SUBJECT_KIND_COUNT);

const struct enum_words words_of_place = { .list = places, .count = PLACE_COUNT };
const struct enum_words words_of_verdict = { .list = verdicts, .count = VERDICT_COUNT };
const struct enum_words words_of_wall = { .list = walls, .count = WALL_COUNT };
const struct enum_words words_of_mark = { .list = marks, .count = MARK_KIND_COUNT };
const struct enum_words words_of_phase_end = { .list = phase_ends, .count = PHASE_END_COUNT };
const struct enum_words words_of_jar_state = { .list = jar_states, .count = JAR_STATE_COUNT };
const struct enum_words words_of_siphoning = { .list = siphonings, .count = SIPHON_COUNT };
const struct enum_words words_of_fate = { .list = fates, .count = FATE_COUNT };
const struct enum_words words_of_station_kind = { .list = station_kinds, .count = STATION_KIND_COUNT };
const struct enum_words words_of_units = { .list = unit_systems, .count = UNIT_SYSTEM_COUNT };
const struct enum_words words_of_juice_state = { .list = juice_states, .count = JUICE_STATE_COUNT };
const struct enum_words words_of_juice_why = { .list = juice_whys, .count = JUICE_WHY_COUNT };
const struct enum_words words_of_supply_why = { .list = supply_whys, .count = SUPPLY_WHY_COUNT };
const struct enum_words words_of_tally = { .list = tallies, .count = TALLY_ABOUT_COUNT };
const struct enum_words words_of_work = { .list = works, .count = SUBJECT_KIND_COUNT };

/* Enums whose words the engine has; what is not said is null in the log. */

static const char *acidity_word(int index)
{
	return acidity_name((enum acidity)index);
}

static const char *acid_word(int index)
{
	return index == ACID_NOT_SAID ? "" : acid_name((enum acid)index);
}

static const char *origin_word(int index)
{
	return index == ORIGIN_NOT_SAID ? "" : origin_name((enum origin)index);
}

static const char *drying_class_word(int index)
{
	return drying_class_name((enum drying_class)index);
}

static const char *method_word(int index)
{
	return method_name((enum method)index);
}

static const char *confirmed_word(int index)
{
	return confirmed_name((enum confirmed)index);
}

static const char *pectin_word(int index)
{
	return pectin_name((enum pectin)index);
}

static const char *adding_word(int index)
{
	return adding_name((enum adding)index);
}

static const char *measure_word(int index)
{
	return measure_name((enum measure)index);
}

static const char *supply_word(int index)
{
	return supply_name((enum supply_kind)index);
}

const struct enum_words words_of_pectin = { .count = PECTIN_COUNT, .name = pectin_word };
const struct enum_words words_of_own_adding = { .count = OWN_ADDINGS, .name = adding_word };
const struct enum_words words_of_measure = { .count = MEASURE_COUNT, .name = measure_word };
const struct enum_words words_of_supply = { .count = SUPPLY_KIND_COUNT, .name = supply_word };
const struct enum_words words_of_acidity = { .count = ACIDITY_COUNT, .name = acidity_word };
const struct enum_words words_of_acid = { .count = ACID_COUNT, .name = acid_word };
const struct enum_words words_of_origin = { .count = ORIGIN_COUNT, .name = origin_word };
const struct enum_words words_of_drying_class = { .count = DRYING_REFUSED, .name = drying_class_word };
const struct enum_words words_of_method = { .count = METHOD_COUNT, .name = method_word };
static_assert(CONFIRMED_YES == 0 && CONFIRMED_PRACTICE == 1, "the two a load can have come first");
const struct enum_words words_of_confirmed = { .count = CONFIRMED_PRACTICE + 1, .name = confirmed_word };

const char *load_place_name(enum load_place place)
{
	return word_at(&words_of_place, (int)place);
}

const char *verdict_name(enum verdict verdict)
{
	return word_at(&words_of_verdict, (int)verdict);
}

const char *jar_state_name(enum jar_state state)
{
	return word_at(&words_of_jar_state, (int)state);
}

const char *siphoning_name(enum siphoning siphoning)
{
	return word_at(&words_of_siphoning, (int)siphoning);
}

const char *jar_fate_name(enum jar_fate fate)
{
	return word_at(&words_of_fate, (int)fate);
}

const char *station_kind_name(enum station_kind kind)
{
	return word_at(&words_of_station_kind, (int)kind);
}

bool station_kind_from_name(const char *name, enum station_kind *out)
{
	enum method method;

	if (method_from_name(name, &method)) /* the words people use for a canner too */
		name = method_name(method);
	for (enum station_kind kind = 0; name != NULL && kind < STATION_KIND_COUNT; kind++) {
		if (text_same_name(name, station_kinds[kind])) {
			*out = kind;
			return true;
		}
	}
	return false;
}

const char *juice_state_name(enum juice_state state)
{
	return word_at(&words_of_juice_state, (int)state);
}

const char *juice_why_name(enum juice_why why)
{
	return word_at(&words_of_juice_why, (int)why);
}

const char *seal_tick_name(enum seal_tick tick)
{
	return word_at(&words_of_tick, (int)tick);
}

const char *jar_gone_name(enum jar_gone gone)
{
	return word_at(&words_of_gone, (int)gone);
}

const char *trace_about_name(enum trace_about about)
{
	return word_at(&words_of_trace, (int)about);
}

const char *recall_outcome_name(enum recall_outcome outcome)
{
	return word_at(&words_of_outcome, (int)outcome);
}
