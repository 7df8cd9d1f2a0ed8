/*
 * sheet_form.c - what the sheet of a low-methoxyl pectin says for one batch.  It is asked for from
 * the batch card, the first time because nothing can be started without it, later to change it.
 */
#include "base/text.h"
#include "kitchen/board/book.h"
#include "kitchen/recipe/sheet.h"
#include "screen/pot/pot_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

struct sheet_answers {
	char recipe[NAME_MAX_BYTES];
	struct sheet sheet;
	bool given[SHEET_FIELD_COUNT];
};

static struct sheet_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static bool begin(struct desk *desk, int64_t id)
{
	struct sheet_answers *answers = answers_of(desk);
	bool kept;

	(void)id;
	text_copy(answers->recipe, sizeof(answers->recipe), batch_view_recipe(desk));
	kept = kitchen_sheet(desk->kitchen, answers->recipe, &answers->sheet);
	for (int field = 0; field < SHEET_FIELD_COUNT; field++)
		answers->given[field] = kept;
	return recipe_has_sheet(answers->recipe);
}

/* --- the questions ---------------------------------------------------------------------- */

/* "4 cups grape juice, 2 cups sugar": what a batch is, as far as the recipe says. */
static void batch_words(const struct desk *desk, const struct recipe *recipe, struct text *text)
{
	bool first = true;

	for (size_t i = 0; i < recipe->ingredient_count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];
		struct measured measured;

		if (item->amount == 0)
			continue;
		measure_amount(item->measure, item->supply, item->amount, desk_units(desk), &measured);
		text_add(text, "%s%s %s", first ? "" : ", ", measured.words, item->name);
		first = false;
	}
}

/* Asked of one batch, so that it is told what that is; then what may be typed. */
static const char *put(const struct desk *desk)
{
	static char words[400]; /* until the next call */
	const struct form *form = entry_view.form(desk);
	enum sheet_field field = (enum sheet_field)form->at;
	const struct recipe *built_in = recipe_named(answers_of(desk)->recipe);
	struct text text = TEXT_OVER(words);

	text_add(&text, "As its own sheet says");
	if (field <= SHEET_ACID && built_in != NULL) {
		text_add(&text, " for one batch: ");
		batch_words(desk, built_in, &text);
		text_add(&text, ".");
	} else {
		text_add(&text, ":");
	}
	text_add(&text, " %s Type %s.", form_question(form)->asks, sheet_field_form(field));
	return words;
}

static void now(const struct desk *desk, enum sheet_field field, struct text *text)
{
	char words[96];

	if (!answers_of(desk)->given[field])
		return;
	sheet_words(&answers_of(desk)->sheet, field, desk_units(desk), words, sizeof(words));
	text_add(text, "%s", words);
}

static bool typed(struct desk *desk, enum sheet_field field, const char *text)
{
	struct sheet_answers *answers = answers_of(desk);
	struct fault fault = { 0 };

	if (!sheet_read(&answers->sheet, field, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	answers->given[field] = true;
	return true;
}

/* How a field stands, and how it is typed. */
#define FIELD(word, field) \
	static void word##_now(const struct desk *desk, struct text *text) \
	{ \
		now(desk, field, text); \
	} \
	static bool word##_typed(struct desk *desk, const char *text) \
	{ \
		return typed(desk, field, text); \
	}
FIELD(pectin, SHEET_PECTIN)
FIELD(calcium, SHEET_CALCIUM)
FIELD(acid, SHEET_ACID)
FIELD(multiple, SHEET_MULTIPLE)
FIELD(minutes, SHEET_MINUTES)

#define OF_SHEET(word) .kind = ASK_TEXT, .put = put, .space_takes = true, .text = word##_now, .typed = word##_typed

static const struct question questions[SHEET_FIELD_COUNT] = {
	{ OF_SHEET(pectin), .name = "Pectin", .asks = "How much low-methoxyl pectin?" },
	{ OF_SHEET(calcium), .name = "Calcium", .asks = "How much calcium solution?" },
	{ OF_SHEET(acid), .name = "Acid", .asks = "How much acid, and which?" },
	{ OF_SHEET(multiple), .name = "Batches", .asks = "How many batches in one pot?" },
	{ OF_SHEET(minutes), .name = "Minutes", .asks = "How many minutes of process?", .counts = "min" },
};

/* --- the act --------------------------------------------------------------------------------- */

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct sheet_answers *answers = answers_of(desk);

	text_add(noted, "the sheet of %s, kept as this kitchen's own", answers->recipe);
	return kitchen_put_sheet(desk->kitchen, answers->recipe, &answers->sheet, fault);
}

const struct entry_form sheet_form = {
	.name = "sheet",
	.title = "The sheet of its pectin",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = sizeof(struct sheet_answers),
	.begin = begin,
	.done = done,
	.behind = "s changes it. (u undoes)",
	.then = batch_view_go_on,
};

void sheet_sources(struct sources *page)
{
	sources_add(page, &(struct source_of){ .source = "MSU-960" },
	            "Low-methoxyl pectin: amounts, acid and calcium as its own sheet says, none of them changed");
	sources_add(page,
	            &(struct source_of){ .source = "MSU-960",
	                                 .how = "the longer of the two is the process, so that neither is shortened" },
	            "The sheet may ask for a longer process than the table");
	sources_add(page, &(struct source_of){ .source = "common practice, no source" },
	            "More than one batch in a pot only where the sheet allows it");
}
