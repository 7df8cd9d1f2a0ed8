#include "kitchen/board/phases.h"

#include <assert.h>
#include <stddef.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/board/kinds.h"

#define PHASE_STORED(TAG, word) [PHASE_##TAG] = #word,
static const char *const stored[] = { [PHASE_NO_PHASE] = "", EACH_PHASE(PHASE_STORED) };

static const char *const alarms[] = {
	[ALARM_NONE] = "none",     [ALARM_TOMORROW] = "look_tomorrow", [ALARM_LIFT] = "lift_jars",
	[ALARM_DRY] = "burns_dry", [ALARM_SPOILS] = "spoils_now",
};
static_assert(sizeof(alarms) / sizeof(alarms[0]) == ALARM_COUNT, "a word for every alarm");

/* The first from that row on that is a phase of its own there. */
static const struct phase_rule *from(const struct phase_rule *rule, enum station_kind kind)
{
	for (; rule->name != PHASE_NO_PHASE; rule++)
		if ((rule->stations & AT_STATION(kind)) != 0 && rule->only == 0)
			return rule;
	return NULL;
}

const struct phase_rule *phase_rule_first(enum station_kind kind)
{
	return from(work_kind_at(kind)->phases, kind);
}

const struct phase_rule *phase_rule_next(enum station_kind kind, const struct phase_rule *rule)
{
	return from(rule + 1, kind);
}

const struct phase_rule *phase_rule_for_pot(const struct phase_rule *rule, unsigned pot)
{
	const struct phase_rule *after = rule + 1;

	while (after->only != 0 && (after->only & pot) == 0)
		after++;
	return after->only != 0 ? after : rule;
}

void phase_words(const char *words, const char *at, char *buffer, size_t size)
{
	static const char mark[] = "{at}";
	const char *here = words == NULL ? NULL : strstr(words, mark);
	struct text text = text_over(buffer, size);

	if (here == NULL)
		text_add(&text, "%s", words == NULL ? "" : words);
	else
		text_add(&text, "%.*s%s%s", (int)(here - words), words, at, here + sizeof(mark) - 1);
}

const struct phase_rule *phase_rule_of(enum station_kind kind, enum phase_name name)
{
	const struct phase_rule *rule = phase_rule_first(kind);

	while (rule != NULL && rule->name != name)
		rule = phase_rule_next(kind, rule);
	return rule;
}

const struct phase_rule *phase_rule_named(enum station_kind kind, const char *stored_name)
{
	for (int name = PHASE_NO_PHASE + 1; name < PHASE_NAME_COUNT; name++)
		if (strcmp(stored[name], stored_name) == 0)
			return phase_rule_of(kind, (enum phase_name)name);
	return NULL;
}

/* Which kind of canner works by which method. */
static const struct canner {
	enum station_kind kind;
	enum method method;
} canners[] = {
	{ STATION_BOILING_WATER, METHOD_BOILING_WATER },
	{ STATION_STEAM, METHOD_STEAM },
	{ STATION_DIAL_GAUGE, METHOD_DIAL_GAUGE },
	{ STATION_WEIGHTED_GAUGE, METHOD_WEIGHTED_GAUGE },
};
#define CANNER_COUNT (sizeof(canners) / sizeof(canners[0]))
static_assert(CANNER_COUNT == METHOD_COUNT, "a canner for every method");

enum method station_method(enum station_kind kind)
{
	for (size_t i = 0; i < CANNER_COUNT; i++)
		if (canners[i].kind == kind)
			return canners[i].method;
	return METHOD_COUNT;
}

enum station_kind method_station(enum method method)
{
	for (size_t i = 0; i < CANNER_COUNT; i++)
		if (canners[i].method == method)
			return canners[i].kind;
	return STATION_KIND_COUNT;
}

bool station_is_canner(enum station_kind kind)
{
	return station_method(kind) != METHOD_COUNT;
}

#define STATION_WORDS(TAG, stored, words) words,
const char *station_kind_words(enum station_kind kind)
{
	static const char *const words[] = { EACH_STATION(STATION_WORDS) };

	if (station_is_canner(kind))
		return method_words(station_method(kind));
	return (unsigned)kind < STATION_KIND_COUNT ? words[kind] : "?";
}

const char *station_kind_brief(enum station_kind kind)
{
	static const char *const methods[METHOD_COUNT] = { [METHOD_BOILING_WATER] = "boiling water",
		                                           [METHOD_STEAM] = "steam canner",
		                                           [METHOD_DIAL_GAUGE] = "dial gauge",
		                                           [METHOD_WEIGHTED_GAUGE] = "weighted gauge" };

	return station_is_canner(kind) ? methods[station_method(kind)] : station_kind_words(kind);
}

const char *phase_name_stored(enum phase_name name)
{
	return (unsigned)name < PHASE_NAME_COUNT ? stored[name] : "?";
}

static enum load_place place_of(enum phase_name name)
{
	for (size_t kind = 0; kind < WORK_KINDS; kind++)
		for (const struct phase_rule *rule = work_kinds[kind]->phases; rule->name != PHASE_NO_PHASE; rule++)
			if (rule->name == name)
				return rule->place;
	return PLACE_COUNT;
}

void phases_at_station(char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	for (int name = PHASE_LOADED; name < PHASE_NAME_COUNT; name++)
		if (place_of((enum phase_name)name) == PLACE_STATION)
			text_add(&text, "%s%s", text.used > 0 ? " " : "", stored[name]);
}

const char *alarm_name(enum alarm alarm)
{
	return (unsigned)alarm < ALARM_COUNT ? alarms[alarm] : "?";
}
