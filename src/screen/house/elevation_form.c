/*
 * elevation_form.c - how high the kitchen is, typed or measured, and what that changes.
 */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "base/text.h"
#include "kitchen/house/house.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

#define FOR_ELEVATION_BYTES 80
#define FOR_ASKING_BYTES 320

struct elevation_answers {
	char words[FOR_ELEVATION_BYTES];  /* with its unit */
	char boiled[FOR_ELEVATION_BYTES]; /* what a thermometer in boiling water reads; "": nobody measured */
	struct elevation read;
	int loads;       /* made at the old elevation, that got less than this one asks for */
	bool runs;       /* a load is in a canner */
	bool wrong;      /* the old elevation was wrong all along; else the kitchen has moved */
	int found_wrong; /* loads, when it was set */
};

static struct elevation_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* --- what is typed --------------------------------------------------------------------- */

static bool has_letter(const char *text)
{
	for (; *text != '\0'; text++)
		if ((*text >= 'a' && *text <= 'z') || (*text >= 'A' && *text <= 'Z') || *text == '\'')
			return true;
	return false;
}

static bool is_metric(const struct desk *desk)
{
	return desk_units(desk) == UNITS_METRIC;
}

static const char *unit_here(const struct desk *desk)
{
	return is_metric(desk) ? "m" : "ft";
}

/* A number alone is in the unit that stands beside the field. */
static void with_unit(const struct desk *desk, const char *text, char *buffer, size_t size)
{
	(void)snprintf(buffer, size, "%s%s%s", text, has_letter(text) ? "" : " ",
	               has_letter(text) ? "" : unit_here(desk));
}

static bool is_temperature(const char *text)
{
	size_t length = strlen(text);

	return length > 1 && strchr("FfCc", text[length - 1]) != NULL && strspn(text, "0123456789. ") == length - 1;
}

/* "3,200 ft", "975 m". */
static void height_words(int64_t um, bool metric, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	text_add_grouped(&text, lround((double)um / (double)(metric ? METRE_UM : FOOT_UM)));
	text_add(&text, metric ? " m" : " ft");
}

/* Its unit, and what it is in the other one: "3200_ ft (975 m)". */
static void typed_unit(const struct desk *desk, int n, struct text *text)
{
	const char *typed = desk->entry.text;
	bool metric = has_letter(typed) ? strchr(typed, 'm') != NULL : is_metric(desk);
	char words[FOR_ELEVATION_BYTES];
	struct elevation read;

	(void)n;
	if (!has_letter(typed))
		text_add(text, "%s", unit_here(desk));
	with_unit(desk, typed, words, sizeof(words));
	if (typed[0] == '\0' || !elevation_read(words, &read, NULL) || !read.known)
		return;
	height_words(read.um, !metric, words, sizeof(words));
	text_add(text, "%s(%s)", text->used > 0 ? " " : "", words);
}

static bool something_runs(const struct desk *desk)
{
	const struct board *board = kitchen_board(desk->kitchen);

	for (size_t i = 0; i < board->stations; i++)
		if (strip_has_load(&board->strips[i]))
			return true;
	return false;
}

/* The measured height as it would be typed, with what it may be off. */
static bool boil_typed(struct desk *desk, const char *text, struct fault *fault)
{
	struct elevation_answers *answers = answers_of(desk);

	if (!kitchen_boiled_elevation(text, &answers->read, fault))
		return false;
	text_copy(answers->boiled, sizeof(answers->boiled), text);
	(void)snprintf(answers->words, sizeof(answers->words), "%lld ft +- %lld ft",
	               (long long)(answers->read.um / FOOT_UM), (long long)(answers->read.slack_um / FOOT_UM));
	return true;
}

static bool height_typed(struct desk *desk, const char *text, struct fault *fault)
{
	struct elevation_answers *answers = answers_of(desk);

	answers->boiled[0] = '\0';
	with_unit(desk, text, answers->words, sizeof(answers->words));
	return elevation_read(answers->words, &answers->read, fault);
}

static bool typed(struct desk *desk, const char *text)
{
	struct elevation_answers *answers = answers_of(desk);
	struct fault fault = { 0 };

	text += strspn(text, " ");
	if (text[0] == '\0') {
		desk_say(desk, ROLE_CAUTION, "Type a height such as 3200, or what boiling water reads, such as 206F.");
		return false;
	}
	if (strlen(text) > FOR_ELEVATION_BYTES - 8) {
		desk_say(desk, ROLE_CAUTION, "That is too long for a height.");
		return false;
	}
	answers->runs = something_runs(desk);
	if ((is_temperature(text) ? boil_typed : height_typed)(desk, text, &fault) &&
	    kitchen_elevation_touches(desk->kitchen, answers->words, &answers->loads, &fault))
		return true;
	desk_say_fault(desk, &fault);
	return false;
}

static void said(const struct desk *desk, struct text *text)
{
	char words[48];

	elevation_words(&answers_of(desk)->read, words, sizeof(words));
	text_add(text, "%s", words);
}

/* --- what it means ------------------------------------------------------------------------ */

static int two(const struct desk *desk)
{
	(void)desk;
	return 2;
}

/* Back to the height, to be typed again. */
static bool ask_again(struct desk *desk)
{
	form_to(desk, entry_view.form(desk), &elevation_form.questions[0]);
	return false;
}

static bool was_boiled(const struct desk *desk)
{
	return answers_of(desk)->boiled[0] != '\0';
}

/* As high as it may be; what was typed is as high as that. */
static void most_words(const struct desk *desk, char *buffer, size_t size)
{
	const struct elevation *read = &answers_of(desk)->read;

	height_words(read->um + (was_boiled(desk) ? read->slack_um : 0), is_metric(desk), buffer, size);
}

static const char *boil_put(const struct desk *desk)
{
	static char words[FOR_ASKING_BYTES]; /* until the next call */
	char height[48];

	height_words(answers_of(desk)->read.um, is_metric(desk), height, sizeof(height));
	(void)snprintf(words, sizeof(words),
	               "Water that boils at %s is at about %s. It may be off by %.1f F, so the tables are read higher "
	               "than that.",
	               answers_of(desk)->boiled, height, BOIL_OFF_F);
	return words;
}

static void boil_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	char most[48];

	most_words(desk, most, sizeof(most));
	if (n == 0)
		(void)snprintf(buffer, size, "go by %s, till looked up", most);
	else
		text_copy(buffer, size, "no, type it again");
}

static bool boil_taken(struct desk *desk, int n)
{
	return n == 0 || ask_again(desk);
}

static bool is_below(const struct desk *desk)
{
	const struct elevation *read = &answers_of(desk)->read;

	return read->known && read->um + read->slack_um < 0;
}

static bool is_outside(const struct desk *desk)
{
	const struct elevation *read = &answers_of(desk)->read;

	return is_below(desk) || (read->known && !elevation_within_top(read, NO_PROCESS_ABOVE_FT));
}

static const char *outside_put(const struct desk *desk)
{
	static char words[FOR_ASKING_BYTES]; /* until the next call */
	char height[48];
	char end[48];

	most_words(desk, height, sizeof(height));
	height_words(is_below(desk) ? 0 : NO_PROCESS_ABOVE_FT * FOOT_UM, is_metric(desk), end, sizeof(end));
	if (is_below(desk))
		(void)snprintf(words, sizeof(words),
		               "%s is below the tables, which begin at %s: their lowest row is used. Is it right?",
		               height, end);
	else
		(void)snprintf(words, sizeof(words),
		               "%s is above the tables, which end at %s: NO process will be given here. Is it right?",
		               height, end);
	return words;
}

static const char *const rights[] = { "no, type it again", "yes, it is so", NULL };

static bool right_taken(struct desk *desk, int n)
{
	return n == 1 || ask_again(desk);
}

/* --- what was made before ------------------------------------------------------------------- */

/* A kitchen with a canner on does not move. */
static bool may_have_moved(const struct desk *desk)
{
	return answers_of(desk)->loads > 0 && !answers_of(desk)->runs;
}

static const char *moved_put(const struct desk *desk)
{
	static char words[FOR_ASKING_BYTES]; /* until the next call */

	(void)snprintf(words, sizeof(words), "%s made before got less than this height asks for.",
	               count_words(answers_of(desk)->loads, "load").words);
	return words;
}

static const char *const moves[] = { "the height before was wrong", "the kitchen has moved", NULL };

static bool moved_taken(struct desk *desk, int n)
{
	answers_of(desk)->wrong = n == 0;
	return true;
}

/* --- the act ----------------------------------------------------------------------------------- */

static bool begin(struct desk *desk, int64_t id)
{
	(void)id;
	answers_of(desk)->wrong = true; /* until somebody says that the kitchen has moved */
	return true;
}

/* Up to 1,000 ft the tables have their shortest minutes and lowest pressures (A539, rev. 2015, Guides 2 to 7): a
 * figure too few, 320 for 3,200, is found by nothing else. */
#define SHORTEST_UP_TO_UM (INT64_C(1000) * 304800)

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	struct elevation_answers *answers = answers_of(desk);

	said(desk, noted);
	if (answers->read.known && answers->read.um + answers->read.slack_um <= SHORTEST_UP_TO_UM)
		text_add(noted, ": process times are the shortest there");
	answers->found_wrong = 0;
	answers->wrong = answers->runs || (answers->loads > 0 && answers->wrong);
	if (answers->wrong)
		return kitchen_elevation_was_wrong(desk->kitchen, answers->words, &answers->found_wrong, fault);
	if (was_boiled(desk))
		return kitchen_set_elevation_boiled(desk->kitchen, answers->boiled, fault);
	return kitchen_set_elevation(desk->kitchen, answers->words, fault);
}

/* What was looked up again. */
static void then(struct desk *desk)
{
	int loads = answers_of(desk)->found_wrong;
	char words[FOR_ASKING_BYTES];
	struct text holds = TEXT_OVER(words);

	kitchen_say_holds(desk->kitchen, &holds);
	if (loads > 0)
		desk_say(desk, ROLE_STOP,
		         "Noted: %s %s NOT valid and at the seal check (0): each jar needs a fate. (u undoes)",
		         count_words(loads, "load").words, count_noun(loads, "is").words);
	else if (answers_of(desk)->wrong)
		desk_say(desk, ROLE_DONE, "Noted%s. What else they need now: w.", words);
}

static const struct question questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "Elevation",
	  .asks = "How high is the kitchen?",
	  .help = "A map, a phone or the weather service's page for your town says it; not the average of a county. "
	          "Or boil water, with a thermometer in it, and type what it reads: 206F.",
	  .unit = typed_unit,
	  .answer = said,
	  .typed = typed },
	{ .kind = ASK_CHOICE,
	  .name = "Measured",
	  .asks = "How high is it?",
	  .put = boil_put,
	  .asked = was_boiled,
	  .count = two,
	  .words = boil_words,
	  .take = boil_taken },
	{ .kind = ASK_CHOICE,
	  .name = "The tables",
	  .asks = "Is it right?",
	  .put = outside_put,
	  .stop = true,
	  .asked = is_outside,
	  .list = rights,
	  .take = right_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Until now",
	  .asks = "Has the kitchen moved, or was it wrong?",
	  .put = moved_put,
	  .stop = true,
	  .asked = may_have_moved,
	  .list = moves,
	  .take = moved_taken },
};

const struct entry_form elevation_form = {
	.name = "elevation",
	.title = "How high the kitchen is",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = sizeof(struct elevation_answers),
	.begin = begin,
	.done = done,
	.then = then,
};
