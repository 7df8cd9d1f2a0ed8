#include "engine/rules/rule.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define MINUTE_MS 60000

/* How a fact is written into a sentence. */
enum form {
	FORM_WORDS,    /* const char * */
	FORM_COUNT,    /* int */
	FORM_JARS,     /* int: "1 jar", "3 jars" */
	FORM_MINUTES,  /* int64_t ms, whole minutes begun and done */
	FORM_LEFT,     /* int64_t ms to come, in minutes rounded up */
	FORM_DURATION, /* int64_t ms as "7:05" */
	FORM_HOURS,    /* int64_t ms as "3 h 12 min" */
	FORM_DEGREES,  /* int, thousandths of a degree, without its sign */
	FORM_NUMBER,   /* int64_t */
};

struct name {
	const char *name;
	enum form form;
	size_t at;
};

/* clang-format off */
#define NAMED(field, form) { #field, form, offsetof(struct facts, field) }
#define NAMED_AS(name, field, form) { name, form, offsetof(struct facts, field) }
/* clang-format on */

static const struct name names[] = {
	NAMED(station, FORM_WORDS),
	NAMED(digit, FORM_COUNT),
	NAMED(lot, FORM_WORDS),
	NAMED(product, FORM_WORDS),
	NAMED(phase, FORM_WORDS),
	NAMED(why, FORM_WORDS),
	NAMED(step, FORM_WORDS),
	NAMED(elevation, FORM_WORDS),
	NAMED(elevation_before, FORM_WORDS),
	NAMED_AS("boil_off", boil_off_mf, FORM_DEGREES),
	NAMED(boil_side, FORM_WORDS),
	NAMED_AS("storage", storage_mf, FORM_DEGREES),
	NAMED(waiting, FORM_JARS),
	NAMED(left_over, FORM_JARS),
	NAMED(unpublished, FORM_JARS),
	NAMED_AS("waited", waited_ms, FORM_MINUTES),
	NAMED_AS("wait_limit", wait_limit_ms, FORM_MINUTES),
	NAMED(kept_lot, FORM_WORDS),
	NAMED_AS("plan_late", plan_late_ms, FORM_MINUTES),
	NAMED_AS("finish", finish_words, FORM_WORDS),
	NAMED(jars, FORM_JARS),
	NAMED(minutes, FORM_COUNT),
	NAMED(here_words, FORM_WORDS),
	NAMED_AS("held", held_ms, FORM_DURATION),
	NAMED_AS("hold", hold_ms, FORM_DURATION),
	NAMED_AS("vent_held", vent_held_ms, FORM_DURATION),
	NAMED_AS("vent", vent_ms, FORM_DURATION),
	NAMED_AS("reached_in", reached_ms, FORM_DURATION),
	NAMED(raised, FORM_WORDS),
	NAMED(hold_starts, FORM_COUNT),
	NAMED_AS("steamed", steamed_ms, FORM_MINUTES),
	NAMED(unchecked, FORM_JARS),
	NAMED(fateless, FORM_JARS),
	NAMED(over_half, FORM_JARS),
	NAMED(windowed, FORM_JARS),
	NAMED_AS("window_left", window_in_ms, FORM_LEFT),
	NAMED(window_hours, FORM_COUNT),
	NAMED(liquid_lost, FORM_JARS),
	NAMED(broken, FORM_JARS),
	NAMED_AS("canner_in", canner_in_ms, FORM_LEFT),
	NAMED(clock_words, FORM_WORDS),
	NAMED(last_words, FORM_WORDS),
	NAMED_AS("stood", stood_ms, FORM_HOURS),
	NAMED_AS("way", way_ms, FORM_HOURS),
	NAMED_AS("way_limit", way_limit_ms, FORM_HOURS),
	NAMED_AS("stand_limit", stand_limit_ms, FORM_HOURS),
	NAMED_AS("passed", passed_ms, FORM_MINUTES),
	NAMED_AS("planned", planned_ms, FORM_MINUTES),
	NAMED_AS("wall_step", wall_step_ms, FORM_MINUTES),
	NAMED(wall_way, FORM_WORDS),
	NAMED(fate, FORM_WORDS),
	NAMED_AS("fate_left", fate_in_ms, FORM_LEFT),
	NAMED(gauge_words, FORM_WORDS),
	NAMED(box, FORM_WORDS),
	NAMED(lids, FORM_COUNT),
	NAMED(lids_used, FORM_COUNT),
	NAMED_AS("failed", seals.failed, FORM_NUMBER),
	NAMED_AS("looked", seals.looked, FORM_NUMBER),
	NAMED_AS("others_failed", seals.others_failed, FORM_NUMBER),
	NAMED_AS("others_looked", seals.others_looked, FORM_NUMBER),
	NAMED(person, FORM_WORDS),
	NAMED(supply, FORM_WORDS),
	NAMED_AS("stock", stock_words, FORM_WORDS),
	NAMED_AS("needed", needed_words, FORM_WORDS),
	NAMED(recall, FORM_WORDS),
	NAMED(recalled, FORM_JARS),
	NAMED(not_found, FORM_JARS),
	NAMED(spoiled, FORM_COUNT),
	NAMED(multiple, FORM_COUNT),
	NAMED(multiple_max, FORM_COUNT),
	NAMED(pot_takes, FORM_COUNT),
};

static void say_fact(const struct name *name, const struct facts *facts, struct text *out)
{
	const void *at = (const char *)facts + name->at;
	int64_t ms = name->form >= FORM_MINUTES && name->form <= FORM_HOURS ? *(const int64_t *)at : 0;

	switch (name->form) {
	case FORM_WORDS: {
		const char *words = *(const char *const *)at;

		text_add(out, "%s", words != NULL ? words : "");
		break;
	}
	case FORM_COUNT: text_add(out, "%d", *(const int *)at); break;
	case FORM_JARS: text_add(out, "%d jar%s", *(const int *)at, *(const int *)at == 1 ? "" : "s"); break;
	case FORM_MINUTES: text_add(out, "%lld min", (long long)(llabs(ms) / MINUTE_MS)); break;
	case FORM_LEFT: text_add(out, "%lld min", (long long)((ms + MINUTE_MS - 1) / MINUTE_MS)); break;
	case FORM_DURATION: text_add_duration(out, ms / 1000); break;
	case FORM_HOURS: text_add_hours(out, ms / MINUTE_MS); break;
	case FORM_DEGREES: text_add(out, "%.1f F", abs(*(const int *)at) / 1000.0); break;
	case FORM_NUMBER: text_add(out, "%lld", (long long)*(const int64_t *)at); break;
	}
}

static const struct name *name_at(const char *at, size_t length)
{
	for (size_t i = 0; i < sizeof(names) / sizeof(names[0]); i++)
		if (strlen(names[i].name) == length && strncmp(names[i].name, at, length) == 0)
			return &names[i];
	return NULL;
}

bool rule_say(const struct rule *rule, const struct facts *facts, struct text *out)
{
	const char *at = rule->sentence;

	while (*at != '\0') {
		size_t plain = strcspn(at, "{");
		size_t length;
		const struct name *name;

		text_add(out, "%.*s", (int)plain, at);
		at += plain;
		if (*at == '\0')
			break;
		length = strcspn(at + 1, "}");
		name = name_at(at + 1, length);
		if (name == NULL)
			return false;
		say_fact(name, facts, out);
		at += length + 2;
	}
	return true;
}

const struct rule *rule_named(const char *id)
{
	for (size_t i = 0; i < rule_count; i++)
		if (strcmp(rules[i].id, id) == 0)
			return &rules[i];
	return NULL;
}

const struct rule *rule_holding(const struct facts *facts)
{
	for (size_t i = 0; i < rule_count; i++)
		if (rules[i].about == ABOUT_KEY && rules[i].due_ms(facts) <= 0)
			return &rules[i];
	return NULL;
}

const char *severity_name(enum severity severity)
{
	static const char *const severities[] = { "note", "caution", "stop" };

	return (unsigned)severity < SEVERITY_COUNT ? severities[severity] : "?";
}

const char *rule_about_words(enum rule_about about)
{
	static const char *const abouts[] = {
		[ABOUT_HOUSE] = "the house",
		[ABOUT_LOAD] = "a load",
		[ABOUT_RUN] = "a juicer's run",
		[ABOUT_BATCH] = "a batch",
		[ABOUT_CLOCK] = "a running phase",
		[ABOUT_WAITING] = "jars that wait",
		[ABOUT_FATE] = "a jar set aside",
		[ABOUT_STATION] = "a station",
		[ABOUT_LID_BOX] = "a lid box",
		[ABOUT_PERSON] = "who closes jars",
		[ABOUT_SUPPLY] = "a supply",
		[ABOUT_RECALL] = "a recall",
		[ABOUT_SHELVED] = "a load on the shelf",
		[ABOUT_KEY] = "a key about to act",
	};
	static_assert(sizeof(abouts) / sizeof(abouts[0]) == ABOUT_COUNT, "words for everything");

	return (unsigned)about < ABOUT_COUNT ? abouts[about] : "?";
}
