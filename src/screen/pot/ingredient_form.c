/*
 * ingredient_form.c - a line of a recipe of one's own: what it is, how much, when it goes in.
 */
#include <stdio.h>
#include <string.h>

#include "engine/food/food.h"
#include "engine/recipe/amount.h"
#include "kitchen/recipe/own.h"
#include "screen/pot/pot_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

struct line_answers {
	size_t at; /* in its recipe; behind the last: a new one */
	struct log_recipe_ingredient line;
};

static struct log_recipe_ingredient *line_of(const struct desk *desk)
{
	struct line_answers *answers = entry_answers(desk);

	return &answers->line;
}

/* `id` counts from 1. */
static bool begin(struct desk *desk, int64_t id)
{
	struct line_answers *answers = entry_answers(desk);
	const struct log_recipe *recipe = recipe_draft(desk);

	answers->at = id > 0 ? (size_t)id - 1 : recipe->ingredient_count;
	if (answers->at < recipe->ingredient_count)
		answers->line = recipe->ingredients[answers->at];
	if (answers->at < OWN_INGREDIENTS_MAX)
		return true;
	desk_say(desk, ROLE_CAUTION, "A recipe has at most %d ingredients.", OWN_INGREDIENTS_MAX);
	return false;
}

static bool is_new(const struct desk *desk)
{
	const struct line_answers *answers = entry_answers(desk);

	return answers->at >= recipe_draft(desk)->ingredient_count;
}

/* --- what it is: it decides what the recipe counts as ---------------------------------------- */

int ingredient_choices(const struct desk *desk)
{
	(void)desk;
	return (int)known_ingredient_count + 1;
}

const char *ingredient_choice_name(const struct desk *desk, int n)
{
	(void)desk;
	return n < (int)known_ingredient_count ? known_ingredients[n].name : NULL;
}

const char *ingredient_choice_also(const struct desk *desk, int n)
{
	(void)desk;
	return known_ingredients[n].also;
}

void ingredient_choice_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (ingredient_choice_name(desk, n) == NULL)
		text_add(&text, "(on no list: the recipe counts as not tested)");
	else
		text_add(&text, "%s%s%s%s", known_ingredients[n].name,
		         known_ingredients[n].also[0] != '\0' ? "  (" : "", known_ingredients[n].also,
		         known_ingredients[n].also[0] != '\0' ? ")" : "");
}

/* It is called by its name, and kept in its ledger. */
void ingredient_is_choice(struct log_recipe_ingredient *line, int n)
{
	const char *known = ingredient_choice_name(NULL, n);

	*line = (struct log_recipe_ingredient){ .supply = known != NULL ? known_ingredients[n].supply : SUPPLY_OTHER,
		                                .adding = line->adding };
	text_copy(line->name, sizeof(line->name), known != NULL ? known : "");
	text_copy(line->known, sizeof(line->known), known != NULL ? known : "");
}

static int known_now(const struct desk *desk)
{
	const char *known;
	int n = 0;

	for (; (known = ingredient_choice_name(desk, n)) != NULL; n++)
		if (strcmp(known, line_of(desk)->known) == 0)
			return n;
	return is_new(desk) ? 0 : n;
}

static void known_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", line_of(desk)->known[0] != '\0' ? line_of(desk)->known : "on no list");
}

/* Of another thing, what was said of the amount of the one before is none of it. */
static bool known_taken(struct desk *desk, int n)
{
	struct log_recipe_ingredient *line = line_of(desk);
	const char *known = ingredient_choice_name(desk, n);

	if (line->name[0] == '\0' || strcmp(line->known, known != NULL ? known : "") != 0)
		ingredient_is_choice(line, n);
	return true;
}

static void name_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", line_of(desk)->name);
}

bool ingredient_name_typed(struct desk *desk, struct log_recipe_ingredient *line, const char *text)
{
	char name[sizeof(line->name)];

	if (text[0] == '\0' || !text_copy(name, sizeof(name), text)) {
		desk_say(desk, ROLE_CAUTION, "Give it a name, at most %d letters.", (int)sizeof(name) - 1);
		return false;
	}
	return text_copy(line->name, sizeof(line->name), name);
}

static bool name_typed(struct desk *desk, const char *text)
{
	return ingredient_name_typed(desk, line_of(desk), text);
}

/* Fruit may be weighed, or measured as juice. */
static bool is_fruit(const struct desk *desk)
{
	const struct known_ingredient *known = known_ingredient_named(line_of(desk)->known);

	return known != NULL && known->is == INGREDIENT_FRUIT;
}

static const struct {
	enum supply_kind supply;
	const char *words;
} shelves[] = {
	{ SUPPLY_FRUIT, "fruit, off the shelf" },
	{ SUPPLY_JUICE, "its juice, from a run" },
	{ SUPPLY_OTHER, "neither is counted" },
};

static int shelf_count(const struct desk *desk)
{
	(void)desk;
	return (int)(sizeof(shelves) / sizeof(shelves[0]));
}

static void shelf_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	(void)desk;
	text_copy(buffer, size, shelves[n].words);
}

static int shelf_now(const struct desk *desk)
{
	for (int n = 0; n < shelf_count(desk); n++)
		if (shelves[n].supply == line_of(desk)->supply)
			return n;
	return 0;
}

static void shelf_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", shelves[shelf_now(desk)].words);
}

static bool shelf_taken(struct desk *desk, int n)
{
	if (line_of(desk)->supply != shelves[n].supply) { /* it was measured otherwise */
		line_of(desk)->amount = 0;
		line_of(desk)->amount_most = 0;
	}
	line_of(desk)->supply = shelves[n].supply;
	return true;
}

/* --- how much, and when ------------------------------------------------------------------------ */

void ingredient_amount_words(const struct desk *desk, const struct log_recipe_ingredient *line, struct text *text)
{
	struct amount_range range = { line->measure, line->amount, line->amount_most };
	char words[AMOUNT_RANGE_BYTES];

	if (line->amount == 0)
		return;
	amount_range_words(&range, line->supply, desk_units(desk), words, sizeof(words));
	text_add(text, "%s", words);
}

static void amount_now(const struct desk *desk, struct text *text)
{
	ingredient_amount_words(desk, line_of(desk), text);
}

bool ingredient_amount_typed(struct desk *desk, struct log_recipe_ingredient *line, const char *text)
{
	struct fault fault = { 0 };
	struct amount_range range = { 0 };

	if (!amount_read_range(text, line->supply, &range, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (range.amount <= 0) {
		desk_say(desk, ROLE_CAUTION, "It must be more than nothing.");
		return false;
	}
	line->measure = range.measure;
	line->amount = range.amount;
	line->amount_most = range.most;
	return true;
}

static bool amount_typed(struct desk *desk, const char *text)
{
	return ingredient_amount_typed(desk, line_of(desk), text);
}

static void form_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", line_of(desk)->form);
}

static bool form_typed_line(struct desk *desk, const char *text)
{
	struct log_recipe_ingredient *line = line_of(desk);
	char form[sizeof(line->form)];

	if (text_copy(form, sizeof(form), text))
		return text_copy(line->form, sizeof(line->form), form);
	desk_say(desk, ROLE_CAUTION, "In fewer words, at most %d letters.", (int)sizeof(form) - 1);
	return false;
}

const char *const ingredient_whens[OWN_ADDINGS + 1] = {
	[ADD_AT_START] = "at the start, into the cold pot",
	[ADD_AT_BOIL] = "at the full rolling boil",
	[ADD_LAST] = "last of all, into the boiling pot",
	[ADD_IN_JAR] = "into each jar, so much for a quart",
};

static int when_now(const struct desk *desk)
{
	return (int)line_of(desk)->adding;
}

static void when_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", ingredient_whens[when_now(desk)]);
}

static bool when_taken(struct desk *desk, int n)
{
	line_of(desk)->adding = (enum adding)n;
	return true;
}

static const char *const needs[] = { "it is needed", "only if wanted", NULL };

static int need_now(const struct desk *desk)
{
	return line_of(desk)->optional;
}

static bool need_taken(struct desk *desk, int n)
{
	line_of(desk)->optional = n == 1;
	return true;
}

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct line_answers *answers = entry_answers(desk);
	struct log_recipe recipe = *recipe_draft(desk);

	(void)fault;
	(void)recipe_put_line(&recipe, answers->at, &answers->line);
	recipe_draft_is(desk, &recipe);
	text_add(noted, "%s", answers->line.name);
	return true;
}

static const struct question questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "What",
	  .asks = "What is it? Type letters.",
	  .help = "This decides what the recipe counts as.",
	  .count = ingredient_choices,
	  .words = ingredient_choice_words,
	  .word = ingredient_choice_name,
	  .also = ingredient_choice_also,
	  .offers = known_now,
	  .answer = known_said,
	  .take = known_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Shelf",
	  .asks = "Which of it goes in?",
	  .asked = is_fruit,
	  .count = shelf_count,
	  .words = shelf_words,
	  .offers = shelf_now,
	  .answer = shelf_said,
	  .take = shelf_taken },
	{ .kind = ASK_TEXT, .name = "Name", .asks = "What do you call it?", .text = name_now, .typed = name_typed },
	{ .kind = ASK_TEXT,
	  .name = "Amount",
	  .asks = "How much in one batch?",
	  .help = "With its unit: 5 cups, 1 lb 8 oz, 2 tbsp.",
	  .text = amount_now,
	  .typed = amount_typed },
	{ .kind = ASK_TEXT,
	  .name = "Form",
	  .asks = "In which form?",
	  .help = "Such as crushed, or granulated. Nothing: not said.",
	  .text = form_now,
	  .typed = form_typed_line },
	{ .kind = ASK_CHOICE,
	  .name = "When",
	  .asks = "When does it go in?",
	  .list = ingredient_whens,
	  .offers = when_now,
	  .answer = when_said,
	  .take = when_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Needed",
	  .asks = "Is it needed?",
	  .list = needs,
	  .offers = need_now,
	  .take = need_taken },
};

const struct entry_form ingredient_form = {
	.name = "ingredient",
	.title = "Another ingredient",
	.changes = "An ingredient as it is now",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = sizeof(struct line_answers),
	.begin = begin,
	.done = done,
	.behind = "s saves the recipe.",
};
