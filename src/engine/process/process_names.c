/* The words of the tables; no table is asked (bake is linked with this file). */
#include "engine/process/pack.h"
#include "engine/process/process.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"

static const char *const method_names[METHOD_COUNT] = {
	[METHOD_BOILING_WATER] = "boiling_water",
	[METHOD_STEAM] = "steam",
	[METHOD_DIAL_GAUGE] = "dial_gauge",
	[METHOD_WEIGHTED_GAUGE] = "weighted_gauge",
};

static const char *const method_people[METHOD_COUNT] = {
	[METHOD_BOILING_WATER] = "boiling-water canner",
	[METHOD_STEAM] = "atmospheric steam canner",
	[METHOD_DIAL_GAUGE] = "dial-gauge pressure canner",
	[METHOD_WEIGHTED_GAUGE] = "weighted-gauge pressure canner",
};

static const char *const acidity_names[ACIDITY_COUNT] = {
	[ACIDITY_ACID] = "acid",
	[ACIDITY_ACIDIFIED] = "acidified",
	[ACIDITY_LOW_ACID] = "low_acid",
};

static const char *const acidity_people[ACIDITY_COUNT] = {
	[ACIDITY_ACID] = "acid",
	[ACIDITY_ACIDIFIED] = "acidified",
	[ACIDITY_LOW_ACID] = "low-acid",
};

static const char *const confirmed_names[CONFIRMED_COUNT] = {
	[CONFIRMED_YES] = "yes",
	[CONFIRMED_PRACTICE] = "practice",
	[CONFIRMED_DISPUTED] = "disputed",
	[CONFIRMED_MEMORY] = "memory",
};

static const char *const packed_names[PACKED_COUNT] = {
	[PACKED_HOT] = "hot",
	[PACKED_RAW] = "raw",
};

static const char *const jars_ready_names[JARS_READY_COUNT] = {
	[JARS_EITHER] = "either",
	[JARS_BOILED_FIRST] = "boiled_first",
	[JARS_NOT_BOILED_FIRST] = "not_boiled_first",
};

/* The values come from logs and callers, so they are not trusted to be in range. */
static const char *word_of(const char *const words[], int count, int value)
{
	return value >= 0 && value < count ? words[value] : "?";
}

const char *method_name(enum method method)
{
	return word_of(method_names, METHOD_COUNT, (int)method);
}

const char *method_words(enum method method)
{
	return word_of(method_people, METHOD_COUNT, (int)method);
}

const char *method_with_article(enum method method)
{
	static const char *const words[] = {
		[METHOD_BOILING_WATER] = "a boiling-water canner",
		[METHOD_STEAM] = "an atmospheric steam canner",
		[METHOD_DIAL_GAUGE] = "a dial-gauge pressure canner",
		[METHOD_WEIGHTED_GAUGE] = "a weighted-gauge pressure canner",
	};
	_Static_assert(sizeof(words) / sizeof(words[0]) == METHOD_COUNT, "words for every method");

	return word_of(words, METHOD_COUNT, (int)method);
}

bool method_from_name(const char *name, enum method *out)
{
	for (int i = 0; name != NULL && i < METHOD_COUNT; i++) {
		if (text_same_name(name, method_names[i]) || text_same_name(name, method_people[i])) {
			*out = (enum method)i;
			return true;
		}
	}
	return false;
}

bool method_has_pressure(enum method method)
{
	return method == METHOD_DIAL_GAUGE || method == METHOD_WEIGHTED_GAUGE;
}

const char *acidity_name(enum acidity acidity)
{
	return word_of(acidity_names, ACIDITY_COUNT, (int)acidity);
}

const char *acidity_words(enum acidity acidity)
{
	return word_of(acidity_people, ACIDITY_COUNT, (int)acidity);
}

const char *confirmed_name(enum confirmed confirmed)
{
	return word_of(confirmed_names, CONFIRMED_COUNT, (int)confirmed);
}

const char *packed_name(enum packed packed)
{
	return word_of(packed_names, PACKED_COUNT, (int)packed);
}

const char *jars_ready_name(enum jars_ready jars)
{
	return word_of(jars_ready_names, JARS_READY_COUNT, (int)jars);
}

int jar_sterilising_minutes(const struct elevation *elevation)
{
	const int64_t thousand_ft = 1000 * FOOT_UM;
	int64_t above;

	if (!elevation->known)
		return 0;
	above = elevation->um + elevation->slack_um - thousand_ft;
	if (above <= 0)
		return 10;
	return 10 + (int)((above + thousand_ft - 1) / thousand_ft);
}

void jars_boiled_words(const struct elevation *elevation, char *buffer, size_t size)
{
	(void)snprintf(buffer, size, "Boil the empty jars first, %d min; only for such jars.",
	               jar_sterilising_minutes(elevation));
}

/* A rule on a kitchen tape is marked in eighths; anything finer is written as
 * a decimal. */
void headspace_words(int headspace_thou, char *buffer, size_t size)
{
	static const char *const eighths[] = { "", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8" };
	struct text text = text_over(buffer, size);
	int inches = headspace_thou / 1000;
	int rest = headspace_thou % 1000;

	if (headspace_thou < 0)
		text_add(&text, "?");
	else if (rest % 125 != 0)
		text_add(&text, "%d.%03d in", inches, rest);
	else if (rest == 0)
		text_add(&text, "%d in", inches);
	else if (inches == 0)
		text_add(&text, "%s in", eighths[rest / 125]);
	else
		text_add(&text, "%d-%s in", inches, eighths[rest / 125]);
}
