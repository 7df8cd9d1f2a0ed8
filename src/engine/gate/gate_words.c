/*
 * gate_words.c - what each reason of the gate makes of a process, and its sentence.
 */
#include <string.h>

#include "engine/gate/gate.h"

#define PRACTICE "common practice, no source"
#define MINUTE_MS 60000

/* clang-format off */
#define ALL(verdict)                      \
	{                                 \
		verdict, verdict, verdict \
	}
#define NOT_VALID(id, sentence, source)                      \
	{                                                    \
		id, ALL(VERDICT_NOT_VALID), sentence, source \
	}
#define UNKNOWN(id, sentence, source)                      \
	{                                                  \
		id, ALL(VERDICT_UNKNOWN), sentence, source \
	}
#define REMARK(id, sentence, source)                     \
	{                                                \
		id, ALL(VERDICT_VALID), sentence, source \
	}
#define WORSE_LOW_ACID(id, sentence, source)                                                \
	{                                                                                   \
		id, {VERDICT_UNKNOWN, VERDICT_UNKNOWN, VERDICT_NOT_VALID}, sentence, source \
	}
#define WORSE_ACIDIFIED(id, sentence, source)                                               \
	{                                                                                   \
		id, {VERDICT_UNKNOWN, VERDICT_NOT_VALID, VERDICT_UNKNOWN}, sentence, source \
	}
#define LOW_ACID_ONLY(id, sentence, source)                                           \
	{                                                                             \
		id, {VERDICT_VALID, VERDICT_VALID, VERDICT_UNKNOWN}, sentence, source \
	}
/* clang-format on */

const struct gate_reason_row gate_reasons[GATE_REASON_COUNT] = {
	[GATE_STOPPED] = NOT_VALID("stopped", "{words}", "full time without a break: A539, NCSU-242"),
	[GATE_FOUND_WRONG] = NOT_VALID("found-wrong", "found after the process: {words}", PRACTICE),
	[GATE_IMPORTED_NOT_VALID] =
	    NOT_VALID("imported-not-valid", "not valid in the log it came from{:words}", PRACTICE),
	[GATE_IMPORTED_UNKNOWN] = UNKNOWN("imported-unknown", "unknown in the log it came from{:words}", PRACTICE),
	[GATE_LOW_ACID_NO_PRESSURE] =
	    NOT_VALID("low-acid-no-pressure", "low-acid food that was not pressure canned", "A539; 21 CFR 114.3"),
	[GATE_ACID_LEFT_OUT] = NOT_VALID("acid-left-out", "acid not in every jar{:words}", "A539 Guide 3, CSU, PSU"),
	[GATE_ACID_OTHER] =
	    NOT_VALID("acid-other", "{words} is not a published acid for this food and jar", "A539 Guide 3"),
	[GATE_VINEGAR_WEAK] =
	    NOT_VALID("vinegar-weak", "the vinegar has {a}.{b} percent, and 5 is needed{:words}", "A539 Guide 6"),
	[GATE_RECIPE_REFUSED] = NOT_VALID("recipe-refused", "{words}", "A539: tested recipes only"),
	[GATE_NO_PROCESS] = NOT_VALID("no-process", "{words}", "A539: tested recipes only"),
	[GATE_TOO_SHORT] =
	    NOT_VALID("too-short", "it was given {a} min and needs {b} at {words}", "the published table"),
	[GATE_TOO_LITTLE_PRESSURE] =
	    NOT_VALID("too-little-pressure", "it was given {a} psi and needs {b} at {words}", "the published table"),
	[GATE_HOLD_SHORT] = NOT_VALID("hold-short", "its hold ran {a:time} of {b:time}", "full time: A539, NCSU-242"),
	[GATE_VENT_SHORT] =
	    NOT_VALID("vent-short", "it vented {a:time} of {b:time}{:words}", "10 min: A539, PNW421, KSU"),
	[GATE_CLOCK_SHORT] =
	    NOT_VALID("clock-short", "by another clock the hold ran {a:time} of {b:time}", "full time: A539"),
	[GATE_CLOCK_NOT_READ] = WORSE_LOW_ACID(
	    "clock-not-read", "the computer restarted during the hold, and nobody read another clock", PRACTICE),
	[GATE_NOT_AS_RECIPE] = WORSE_ACIDIFIED("not-as-recipe", "not as the recipe says: {words}",
	                                       "acid forgotten: A539 Guide 3; tested recipes only: A539"),
	[GATE_STOOD] = UNKNOWN(
	    "stood", "its jars stood {a:hours} before the canner was heated, and {b:hours} is the limit", PRACTICE),
	[GATE_SLOW_HEAT] = WORSE_LOW_ACID(
	    "slow-heat", "its jars were {a:hours} without the heat of a hold, and {b:hours} is the limit", PRACTICE),
	[GATE_POT_STOOD] =
	    UNKNOWN("pot-stood", "the food stood {a:hours} in the pot, and {b:hours} is the limit", PRACTICE),
	[GATE_ZERO_EARLY] = LOW_ACID_ONLY(
	    "zero-early", "the pressure was gone after {a:time}, sooner than the {b:time} such a canner takes",
	    "A539 Guide 1; PNW421"),
	[GATE_FORCED_COOLING] = LOW_ACID_ONLY("forced-cooling", "the canner was cooled by force", "A539 Guide 1"),
	[GATE_WEIGHT_EARLY] =
	    LOW_ACID_ONLY("weight-early", "the weight was lifted before the pressure was gone", "A539 Guide 1"),
	[GATE_EARLIER] =
	    UNKNOWN("earlier", "the start of the hold is an estimate, {a} min before the key{:words}", PRACTICE),
	[GATE_MULTIPLIED] = UNKNOWN("multiplied", "{a} batches in one pot{:words}", "the recipe's own limit"),
	[GATE_OWN_RECIPE] = UNKNOWN("own-recipe", "{words}", "A539: tested recipes only"),
	[GATE_ORIGIN_NOT_SAID] = UNKNOWN("origin-not-said", "nobody noted whose recipe it was", PRACTICE),
	[GATE_FOOD_NOT_SAID] = UNKNOWN("food-not-said", "it is not a food in the published tables", PRACTICE),
	[GATE_PACK_NOT_SAID] = UNKNOWN("pack-not-said", "nobody noted whether it was packed hot or raw", PRACTICE),
	[GATE_METHOD_NOT_SAID] = UNKNOWN("method-not-said", "nobody noted the canner", PRACTICE),
	[GATE_ELEVATION_NOT_SAID] = UNKNOWN("elevation-not-said", "nobody noted the elevation", "A539"),
	[GATE_MINUTES_NOT_SAID] = UNKNOWN("minutes-not-said", "nobody noted the time", PRACTICE),
	[GATE_PRESSURE_NOT_SAID] = UNKNOWN("pressure-not-said", "nobody noted the pressure", PRACTICE),
	[GATE_HOLD_NOT_SAID] = UNKNOWN("hold-not-said", "there is no hold on record", "full time: A539, NCSU-242"),
	[GATE_VENT_NOT_SAID] = UNKNOWN("vent-not-said", "there is no vent on record", "A539, PNW421, KSU"),
	[GATE_ACID_NOT_SAID] = UNKNOWN("acid-not-said", "nobody said that its acid is in", "A539 Guide 3, CSU, PSU"),
	[GATE_VINEGAR_NOT_SAID] =
	    UNKNOWN("vinegar-not-said", "nobody noted the strength of the vinegar{:words}", "A539 Guide 6"),
	[GATE_NOTEBOOK] = UNKNOWN("notebook", "written in a notebook, not by this program", PRACTICE),
	[GATE_CLOCK_READ] =
	    REMARK("clock-read", "the computer restarted during the hold; by another clock it ran {a:time}", PRACTICE),
	[GATE_PRACTICE] = REMARK("practice", "the minutes are common practice, no source", PRACTICE),
	[GATE_OWN_CLASS] = REMARK("own-class", "{words}", "A539"),
	[GATE_ABOVE_TABLES] = REMARK("above-tables", "above 8,000 ft another published table may ask for more",
	                             "A539; Utah State University Extension"),
};

/* One placeholder, without its braces. */
static void add_field(struct text *text, const struct finding *finding, const char *name, size_t length)
{
	int64_t number = name[0] == 'b' ? finding->b : finding->a;

	if (name[0] == ':')
		text_add(text, "%s%s", finding->words[0] != '\0' ? ": " : "", finding->words);
	else if (name[0] == 'w')
		text_add(text, "%s", finding->words);
	else if (length == 1)
		text_add(text, "%lld", (long long)number);
	else if (name[2] == 't')
		text_add_duration(text, (number > 0 ? number : 0) / 1000);
	else
		text_add_hours(text, (number > 0 ? number : 0) / MINUTE_MS);
}

static void say_one(struct text *text, const struct finding *finding)
{
	const char *at = gate_reasons[finding->reason].sentence;

	while (*at != '\0') {
		const char *open = strchr(at, '{');
		const char *close = open == NULL ? NULL : strchr(open, '}');

		if (close == NULL) {
			text_add(text, "%s", at);
			return;
		}
		text_add(text, "%.*s", (int)(open - at), at);
		add_field(text, finding, open + 1, (size_t)(close - open - 1));
		at = close + 1;
	}
}

void gate_say(const struct judgement *judgement, struct text *text)
{
	for (size_t i = 0; i < judgement->count; i++) {
		text_add(text, "%s", i == 0 ? "" : "; ");
		say_one(text, &judgement->findings[i]);
	}
}

void gate_ids(const struct judgement *judgement, struct text *text)
{
	for (size_t i = 0; i < judgement->count; i++)
		text_add(text, "%s%s", i == 0 ? "" : " ", gate_reasons[judgement->findings[i].reason].id);
}
