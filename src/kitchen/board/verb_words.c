/*
 * verb_words.c - the sentence of an act from its verb's template and its values.
 */
#include <assert.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "base/values.h"
#include "engine/food/food.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/verbs.h"
#include "log/rows/words.h"

#define WITH_MAX 2

/* One place of a template: {2:goods 0 1} is the value 2, said with 0 and 1, and
 * {1:count lid box} the value 1 before its noun. */
struct place {
	size_t value;
	const struct saying *saying;
	size_t with[WITH_MAX];
	char noun[24];
};

struct said {
	const struct values *values;
	enum unit_system units;
	struct text *text;
};

/* How a value is said: the word behind the colon. */
struct saying {
	const char *word;
	bool is_number; /* else a text */
	size_t with_count;
	bool with_number; /* the values it is said with are */
	void (*say)(const struct said *said, const struct place *place);
};

/* --- ways of saying --------------------------------------------------------------------------- */

static const struct value *value_of(const struct said *said, const struct place *place)
{
	return &said->values->list[place->value];
}

static const struct value *with_of(const struct said *said, const struct place *place, size_t n)
{
	return &said->values->list[place->with[n]];
}

static void say_text(const struct said *said, const struct place *place)
{
	text_add(said->text, "%s", value_of(said, place)->text);
}

static void say_number(const struct said *said, const struct place *place)
{
	text_add(said->text, "%lld", (long long)value_of(said, place)->number);
}

static void say_nothing(const struct said *said, const struct place *place)
{
	(void)said;
	(void)place;
}

static void say_count(const struct said *said, const struct place *place)
{
	text_add(said->text, "%s", count_words(value_of(said, place)->number, place->noun).words);
}

static void say_verb(const struct said *said, const struct place *place)
{
	text_add(said->text, "%s", count_noun(value_of(said, place)->number, place->noun).words);
}

static void add_amount(const struct said *said, enum measure measure, int64_t amount)
{
	char words[64];

	amount_words(measure, amount, said->units, words, sizeof(words));
	text_add(said->text, "%s", words);
}

static void say_mass(const struct said *said, const struct place *place)
{
	add_amount(said, MEASURE_MASS, value_of(said, place)->number);
}

static void say_volume(const struct said *said, const struct place *place)
{
	add_amount(said, MEASURE_VOLUME, value_of(said, place)->number);
}

/* In the measure named beside it. */
static void say_measured(const struct said *said, const struct place *place)
{
	for (int measure = 0; measure < MEASURE_COUNT; measure++)
		if (strcmp(measure_name((enum measure)measure), with_of(said, place, 0)->text) == 0) {
			add_amount(said, (enum measure)measure, value_of(said, place)->number);
			return;
		}
	say_number(said, place);
}

/* In the measure of the ledger of the supply beside it. */
static void say_of(const struct said *said, const struct place *place)
{
	enum supply_kind kind;

	if (supply_from_name(with_of(said, place, 0)->text, &kind))
		add_amount(said, supply_measure(kind), value_of(said, place)->number);
	else
		say_number(said, place);
}

static const char *supply_said(const char *name)
{
	enum supply_kind kind;

	return supply_from_name(name, &kind) ? supply_words(kind) : name;
}

static const char *size_said(const char *name, int64_t jars)
{
	const struct jar_size *size = jar_size_named(name);

	return size == NULL ? name : jar_size_words(size->name, jars);
}

/* "20 lb of sugar", "144 half-pints", "12 bands": of a supply and, of jars, a size. */
static void say_goods(const struct said *said, const struct place *place)
{
	const char *kind_name = with_of(said, place, 0)->text;
	const char *size = with_of(said, place, 1)->text;
	enum supply_kind kind;

	say_of(said, place);
	if (size[0] != '\0')
		text_add(said->text, " %s", size_said(size, value_of(said, place)->number));
	else if (supply_from_name(kind_name, &kind) && supply_measure(kind) == MEASURE_EACH)
		text_add(said->text, " %s", supply_words(kind));
	else
		text_add(said->text, " of %s", supply_said(kind_name));
}

static void say_supply(const struct said *said, const struct place *place)
{
	text_add(said->text, "%s", supply_said(value_of(said, place)->text));
}

static void say_acid(const struct said *said, const struct place *place)
{
	const char *name = value_of(said, place)->text;
	enum acid acid;

	text_add(said->text, "%s", acid_from_name(name, &acid) ? acid_words(acid) : name);
}

/* A jar size for the number beside it. */
static void say_jars(const struct said *said, const struct place *place)
{
	text_add(said->text, "%s", size_said(value_of(said, place)->text, with_of(said, place, 0)->number));
}

static void say_sizes(const struct said *said, const struct place *place)
{
	text_add(said->text, "%s", size_said(value_of(said, place)->text, 0));
}

static void say_station(const struct said *said, const struct place *place)
{
	const char *name = value_of(said, place)->text;

	for (int kind = 0; kind < STATION_KIND_COUNT; kind++)
		if (strcmp(station_kind_name((enum station_kind)kind), name) == 0)
			name = station_kind_words((enum station_kind)kind);
	text_add(said->text, "%s", name);
}

static void say_hours(const struct said *said, const struct place *place)
{
	text_add_hours(said->text, value_of(said, place)->number);
}

static void say_clock(const struct said *said, const struct place *place)
{
	text_add_duration(said->text, value_of(said, place)->number);
}

/* As one of clock_words_... writes it. */
static void say_written(const struct said *said, const struct place *place,
                        void (*written)(int64_t value, char *buffer, size_t size))
{
	char words[32];

	written(value_of(said, place)->number, words, sizeof(words));
	text_add(said->text, "%s", words);
}

static void say_hour(const struct said *said, const struct place *place)
{
	say_written(said, place, clock_words_hour);
}

static void say_date(const struct said *said, const struct place *place)
{
	say_written(said, place, clock_words_date);
}

static void say_day(const struct said *said, const struct place *place)
{
	say_written(said, place, clock_words_day_hour);
}

static void say_time(const struct said *said, const struct place *place)
{
	say_written(said, place, clock_words_time);
}

static void say_height(const struct said *said, const struct place *place)
{
	const struct elevation elevation = { .known = true, .um = value_of(said, place)->number };
	char words[48];

	elevation_words(&elevation, words, sizeof(words));
	text_add(said->text, "%s", words);
}

static void say_fahrenheit(const struct said *said, const struct place *place)
{
	text_add(said->text, "%.1f F", fahrenheit_from_celsius((double)value_of(said, place)->number / 1000.0));
}

/* clang-format off */
static const struct saying sayings[] = {
	{ "", false, 0, false, say_text },
	{ "n", true, 0, false, say_number },
	{ "flag", true, 0, false, say_nothing },     /* 0: the part it stands in is left out */
	{ "count", true, 0, false, say_count }, /* "2 jars", of {1:count jar} */
	{ "verb", true, 0, false, say_verb },   /* "are", of {1:verb is} */
	{ "mass", true, 0, false, say_mass },        /* mg */
	{ "volume", true, 0, false, say_volume },    /* uL */
	{ "measured", true, 1, false, say_measured },
	{ "of", true, 1, false, say_of },
	{ "goods", true, 2, false, say_goods },
	{ "supply", false, 0, false, say_supply },   /* by stored name */
	{ "acid", false, 0, false, say_acid },       /* likewise */
	{ "jars", false, 1, true, say_jars },        /* a size of schema/jar.csv */
	{ "sizes", false, 0, false, say_sizes },     /* likewise, of many */
	{ "station", false, 0, false, say_station }, /* a kind, by stored name */
	{ "hours", true, 0, false, say_hours },      /* minutes */
	{ "clock", true, 0, false, say_clock },      /* seconds */
	{ "hour", true, 0, false, say_hour },        /* an instant, ms: "14:05" */
	{ "date", true, 0, false, say_date },        /* likewise: "2026-09-14" */
	{ "day", true, 0, false, say_day },          /* likewise: "Mon 14 Sep 14:05" */
	{ "time", true, 0, false, say_time },        /* minutes after midnight: "08:30" */
	{ "height", true, 0, false, say_height },    /* um above the sea */
	{ "fahrenheit", true, 0, false, say_fahrenheit }, /* thousandths of a degree Celsius */
};
/* clang-format on */

/* --- reading a template ------------------------------------------------------------------------- */

static bool read_index(const char **at, size_t *index)
{
	if (**at < '0' || **at > '9')
		return false;
	for (*index = 0; **at >= '0' && **at <= '9' && *index < VALUES_MAX; (*at)++)
		*index = *index * 10 + (size_t)(**at - '0');
	return *index < VALUES_MAX;
}

static const struct saying *saying_named(const char *word, size_t length)
{
	for (size_t i = 0; i < sizeof(sayings) / sizeof(sayings[0]); i++)
		if (strlen(sayings[i].word) == length && memcmp(sayings[i].word, word, length) == 0)
			return &sayings[i];
	return NULL;
}

static bool takes_noun(const struct saying *saying)
{
	return saying->say == say_count || saying->say == say_verb;
}

/* " lid box" before the closing brace. */
static bool read_noun(const char **at, struct place *place)
{
	size_t length = strcspn(*at, "}");

	if (length < 2 || length > sizeof(place->noun) || **at != ' ')
		return false;
	memcpy(place->noun, *at + 1, length - 1);
	*at += length;
	return true;
}

/* The place that begins at its brace; what follows it, or NULL: it is no place. */
static const char *read_place(const char *at, struct place *place)
{
	*place = (struct place){ .saying = &sayings[0] };
	at++;
	if (!read_index(&at, &place->value))
		return NULL;
	if (*at == ':') {
		size_t length = strcspn(++at, " }");

		place->saying = saying_named(at, length);
		if (place->saying == NULL)
			return NULL;
		at += length;
	}
	for (size_t i = 0; i < place->saying->with_count; i++)
		if (*at++ != ' ' || !read_index(&at, &place->with[i]))
			return NULL;
	if (takes_noun(place->saying) && !read_noun(&at, place))
		return NULL;
	return *at == '}' ? at + 1 : NULL;
}

/* The next place before `end`; NULL: there is none. */
static const char *next_place(const char *at, const char *end, struct place *place)
{
	at += strcspn(at, "{");
	return at < end ? read_place(at, place) : NULL;
}

/* What kinds of values a template has. */
struct kinds {
	size_t count;
	enum { KIND_FREE, KIND_TEXT, KIND_NUMBER } list[VALUES_MAX];
};

/* False: it was used as the other kind before. */
static bool take_kind(struct kinds *kinds, size_t value, bool is_number)
{
	bool free = kinds->list[value] == KIND_FREE;

	if (!free && (kinds->list[value] == KIND_NUMBER) != is_number)
		return false;
	kinds->list[value] = is_number ? KIND_NUMBER : KIND_TEXT;
	if (value >= kinds->count)
		kinds->count = value + 1;
	return true;
}

static bool take_kinds(struct kinds *kinds, const struct place *place)
{
	bool agree = take_kind(kinds, place->value, place->saying->is_number);

	for (size_t i = 0; i < place->saying->with_count; i++)
		agree = take_kind(kinds, place->with[i], place->saying->with_number) && agree;
	return agree;
}

static bool kinds_of(const char *template, struct kinds *kinds)
{
	const char *end = template + strlen(template);
	struct place place;
	bool agree = true;

	memset(kinds, 0, sizeof(*kinds));
	for (const char *at = template; (at = next_place(at, end, &place)) != NULL;)
		agree = take_kinds(kinds, &place) && agree;
	for (size_t i = 0; i < kinds->count; i++)
		agree = agree && kinds->list[i] != KIND_FREE;
	return agree;
}

/* --- saying it ------------------------------------------------------------------------------------ */

static bool is_there(const struct value *value, const struct saying *saying)
{
	if (saying->say == say_nothing)
		return value->number != 0;
	return value->is_number || value->text[0] != '\0';
}

static bool all_are_there(const struct said *said, const char *at, const char *end)
{
	struct place place;

	while ((at = next_place(at, end, &place)) != NULL)
		if (!is_there(value_of(said, &place), place.saying))
			return false;
	return true;
}

static void say_part(const struct said *said, const char *at, const char *end)
{
	while (at < end) {
		struct place place;
		size_t plain = strcspn(at, "{");

		plain = plain < (size_t)(end - at) ? plain : (size_t)(end - at);
		text_add(said->text, "%.*s", (int)plain, at);
		at += plain;
		if (at == end)
			return;
		at = read_place(at, &place);
		assert(at != NULL); /* a test looks at every template */
		if (is_there(value_of(said, &place), place.saying))
			place.saying->say(said, &place);
	}
}

static void say_template(const struct said *said, const char *at)
{
	while (*at != '\0') {
		const char *open = at + strcspn(at, "[");
		const char *bar;
		const char *end;

		say_part(said, at, open);
		if (*open == '\0')
			return;
		bar = open + strcspn(open, "|]");
		end = open + strcspn(open, "]");
		if (all_are_there(said, open + 1, bar))
			say_part(said, open + 1, bar);
		else if (bar < end)
			say_part(said, bar + 1, end);
		at = end + 1;
	}
}

/* A number may be missing: an empty text stands in its place. */
static bool values_fit(const char *template, const struct values *values)
{
	struct kinds kinds;

	if (!kinds_of(template, &kinds) || kinds.count != values->count)
		return false;
	for (size_t i = 0; i < values->count; i++) {
		const struct value *value = &values->list[i];

		if (value->is_number ? kinds.list[i] != KIND_NUMBER
		                     : kinds.list[i] == KIND_NUMBER && value->text[0] != '\0')
			return false;
	}
	return true;
}

bool verb_has_values(enum verb verb, const char *said)
{
	const char *template = verb_template(verb);
	struct values values;

	return template != NULL && values_read(said, &values) && values_fit(template, &values);
}

/* What no table of ours explains, as it stands. */
static void say_as_it_stands(struct text *text, const char *verb, const struct values *values)
{
	text_add(text, "? %s", verb);
	for (size_t i = 0; i < values->count; i++) {
		const struct value *value = &values->list[i];

		text_add(text, i == 0 ? ": " : ", ");
		if (value->is_number)
			text_add(text, "%lld", (long long)value->number);
		else
			text_add(text, "%s", value->text);
	}
}

static const char *undo_words(enum verb verb)
{
	return verb == VERB_REDO ? "Redone: " : "Undone: ";
}

/* `stored`: the name of the verb, which may be in no table. */
static void say_act(struct text *text, enum unit_system units, enum verb verb, const char *stored, const char *line,
                    bool undone)
{
	const char *template = verb_template(verb);
	struct values values;
	struct said said = { .values = &values, .units = units, .text = text };

	if (!values_read(line, &values))
		say_as_it_stands(text, stored, &(struct values){ .count = 0 });
	else if (template == NULL || !values_fit(template, &values))
		say_as_it_stands(text, stored, &values);
	else
		say_template(&said, undone ? verb_undone_template(verb) : template);
}

void entry_words(const struct kitchen *kitchen, const struct log_entry *entry, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (entry->undoes_id != 0)
		text_add(&text, "%s", undo_words(entry_verb(entry)));
	say_act(&text, kitchen->board.house.units, entry_act(entry), entry->act_verb, entry->said,
	        entry_verb(entry) == VERB_UNDO);
}

void entry_tell(const void *with, const char *verb, const char *said, char *buffer, size_t size)
{
	const struct kitchen *kitchen = with;
	struct text text = text_over(buffer, size);
	enum verb which = verb_named(verb);

	if (which == VERB_UNDO || which == VERB_REDO)
		text_add(&text, "%s", undo_words(which));
	else
		say_act(&text, kitchen->board.house.units, which, verb, said, false);
}
