/*
 * log_words.c - the words the enums are stored under. They are the CHECK lists
 * of schema/migration; a new word needs a migration as well.
 */
#include <assert.h>

#include "log/log_private.h"

#define WORDS(array, enum_count) \
	static_assert(sizeof(array) / sizeof((array)[0]) == (enum_count), #array " misses a word")

static const char *const places[] = {
	[PLACE_CANNER] = "canner",
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

static const char *const phase_ends[] = {
	[PHASE_RUNNING] = "", /* stored as null */
	[PHASE_DONE] = "done",
	[PHASE_LOST] = "lost",
	[PHASE_CUT_SHORT] = "cut_short",
	[PHASE_STOPPED] = "stopped",
};
WORDS(phase_ends, PHASE_END_COUNT);

static const char *const jar_states[] = {
	[JAR_UNCHECKED] = "unchecked",
	[JAR_SEALED] = "sealed",
	[JAR_UNSEALED] = "unsealed",
	[JAR_DOUBTFUL] = "doubtful",
	[JAR_BROKEN] = "broken",
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
	[FATE_NONE] = "none",
	[FATE_FRIDGE] = "fridge",
	[FATE_FREEZER] = "freezer",
	[FATE_REPROCESS] = "reprocess",
	[FATE_DISCARD] = "discard",
};
WORDS(fates, FATE_COUNT);

const struct words words_of_place = {places, PLACE_COUNT};
const struct words words_of_verdict = {verdicts, VERDICT_COUNT};
const struct words words_of_phase_end = {phase_ends, PHASE_END_COUNT};
const struct words words_of_jar_state = {jar_states, JAR_STATE_COUNT};
const struct words words_of_siphoning = {siphonings, SIPHON_COUNT};
const struct words words_of_fate = {fates, FATE_COUNT};

static const char *word(const struct words *words, int index)
{
	return index >= 0 && index < words->count ? words->list[index] : "?";
}

const char *load_place_name(enum load_place place)
{
	return word(&words_of_place, (int)place);
}

const char *verdict_name(enum verdict verdict)
{
	return word(&words_of_verdict, (int)verdict);
}

const char *phase_end_name(enum phase_end end)
{
	return word(&words_of_phase_end, (int)end);
}

const char *jar_state_name(enum jar_state state)
{
	return word(&words_of_jar_state, (int)state);
}

const char *siphoning_name(enum siphoning siphoning)
{
	return word(&words_of_siphoning, (int)siphoning);
}

const char *jar_fate_name(enum jar_fate fate)
{
	return word(&words_of_fate, (int)fate);
}
