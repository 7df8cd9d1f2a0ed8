#include "engine/rules/rule.h"
#include "base/count.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "engine/recipe/amount.h"

#define MINUTE_MS 60000

/* How a fact is written into a sentence: OF(form, what it is a form of). */
/* clang-format off */
#define FORMS(OF) \
	OF(FORM_WORDS, const char *) \
	OF(FORM_COUNT, int) \
	OF(FORM_JARS, int)           /* "1 jar", "3 jars" */ \
	OF(FORM_MINUTES, int64_t)    /* ms, whole minutes begun and done */ \
	OF(FORM_LEFT, int64_t)       /* ms to come, in minutes rounded up */ \
	OF(FORM_DURATION, int64_t)   /* ms as "7:05" */ \
	OF(FORM_HOURS, int64_t)      /* ms as "3 h 12 min" */ \
	OF(FORM_DEGREES, int)        /* thousandths of a degree, without its sign */ \
	OF(FORM_NUMBER, int64_t) \
	OF(FORM_ELEVATION, struct elevation) \
	OF(FORM_AMOUNT, struct supply_amount) \
	OF(FORM_HERE, int)           /* minutes: "it is 15 min"; 0: "there is no such process" */ \
	OF(FORM_WAY, int64_t)        /* "back" below 0, else "on" */ \
	OF(FORM_BOIL_SIDE, int)      /* "hotter" above 0, else "cooler" */ \
	OF(FORM_CHECKED, bool)       /* when a gauge was last checked, in words */

#define FORM(form, type) form,
enum form { FORMS(FORM) };
#define FACT_OF(form, type) typedef type fact_of_##form;
FORMS(FACT_OF)
/* clang-format on */

struct name {
	const char *name;
	enum form form;
	size_t at;
};

/* clang-format off */
#define AT(subject) offsetof(struct facts, subject)
/* A form for another type than the field's does not compile. */
#define FITTING(subject, field, form) _Generic(((struct about_##subject *)NULL)->field, fact_of_##form: (form))
#define NAMED(subject, field, form) NAMED_AS(subject, #field, field, form)
#define NAMED_AS(subject, name, field, form) \
	{ name, FITTING(subject, field, form), AT(subject) + offsetof(struct about_##subject, field) }
#define CALLED(subject) \
	NAMED_AS(subject, "station", called.station, FORM_WORDS), \
	NAMED_AS(subject, "digit", called.digit, FORM_COUNT), \
	NAMED_AS(subject, "lot", called.lot, FORM_WORDS), \
	NAMED_AS(subject, "product", called.product, FORM_WORDS)
#define STANDING(subject) \
	NAMED_AS(subject, "stood", standing.stood_ms, FORM_HOURS), \
	NAMED_AS(subject, "stand_limit", standing.limit_ms, FORM_HOURS)
#define SEALS(subject) \
	NAMED_AS(subject, "failed", seals.failed, FORM_NUMBER), \
	NAMED_AS(subject, "looked", seals.looked, FORM_NUMBER), \
	NAMED_AS(subject, "others_failed", seals.others_failed, FORM_NUMBER), \
	NAMED_AS(subject, "others_looked", seals.others_looked, FORM_NUMBER)

#define NAME_TABLE(TAG, subject, words) static const struct name subject##_names[] = { NAMES_OF_##subject };
RULE_SUBJECTS(NAME_TABLE)
/* clang-format on */

/* What there is to say of a subject: its own words, and the names of its facts. */
static const struct subject {
	const char *words;
	const struct name *names;
	size_t count;
} subjects[] = {
/* clang-format off */
#define NAMES_OF(TAG, subject, words) [ABOUT_##TAG] = { words, subject##_names, sizeof(subject##_names) / sizeof(struct name) },
	RULE_SUBJECTS(NAMES_OF)
	/* clang-format on */
};
static_assert(sizeof(subjects) / sizeof(subjects[0]) == ABOUT_COUNT, "words for everything");

static void say_elevation(const struct elevation *elevation, struct text *out)
{
	char words[64];

	elevation_words(elevation, words, sizeof(words));
	text_add(out, "%s", words);
}

static void say_here(int minutes, struct text *out)
{
	if (minutes > 0)
		text_add(out, "it is %d min", minutes);
	else
		text_add(out, "there is no such process");
}

static void say_amount(const struct supply_amount *amount, struct text *out)
{
	char words[64];

	amount_words(amount->measure, amount->amount, amount->units, words, sizeof(words));
	text_add(out, "%s", words);
}

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
	case FORM_JARS: text_add(out, "%s", count_words(*(const int *)at, "jar").words); break;
	case FORM_MINUTES: text_add(out, "%lld min", (long long)(llabs(ms) / MINUTE_MS)); break;
	case FORM_LEFT: text_add(out, "%lld min", (long long)((ms + MINUTE_MS - 1) / MINUTE_MS)); break;
	case FORM_DURATION: text_add_duration(out, ms / 1000); break;
	case FORM_HOURS: text_add_hours(out, ms / MINUTE_MS); break;
	case FORM_DEGREES: text_add(out, "%.1f F", fabs(*(const int *)at / 1000.0)); break;
	case FORM_NUMBER: text_add(out, "%lld", (long long)*(const int64_t *)at); break;
	case FORM_ELEVATION: say_elevation(at, out); break;
	case FORM_HERE: say_here(*(const int *)at, out); break;
	case FORM_WAY: text_add(out, "%s", *(const int64_t *)at < 0 ? "back" : "on"); break;
	case FORM_AMOUNT: say_amount(at, out); break;
	case FORM_CHECKED:
		text_add(out, "%s", *(const bool *)at ? "the last check is over a year old" : "no check is on record");
		break;
	case FORM_BOIL_SIDE: text_add(out, "%s", *(const int *)at > 0 ? "hotter" : "cooler"); break;
	}
}

static const struct name *name_at(const struct subject *subject, const char *at, size_t length)
{
	for (size_t i = 0; i < subject->count; i++)
		if (strlen(subject->names[i].name) == length && strncmp(subject->names[i].name, at, length) == 0)
			return &subject->names[i];
	return NULL;
}

int64_t rule_due_ms(const struct rule *rule, const struct facts *facts)
{
	assert(rule->about == facts->about);
	switch (rule->about) {
/* clang-format off */
#define DUE(TAG, subject, words) case ABOUT_##TAG: return rule->due.subject(&facts->subject);
	RULE_SUBJECTS(DUE)
	/* clang-format on */
	case ABOUT_COUNT: break;
	}
	return RULE_NEVER;
}

bool rule_say(const struct rule *rule, const struct facts *facts, struct text *out)
{
	const char *at = rule->sentence;

	assert(rule->about == facts->about);
	while (*at != '\0') {
		size_t plain = strcspn(at, "{");
		size_t length;
		const struct name *name;

		text_add(out, "%.*s", (int)plain, at);
		at += plain;
		if (*at == '\0')
			break;
		length = strcspn(at + 1, "}");
		name = name_at(&subjects[facts->about], at + 1, length);
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
		if (rules[i].about == facts->about && rule_due_ms(&rules[i], facts) <= 0)
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
	return (unsigned)about < ABOUT_COUNT ? subjects[about].words : "?";
}
