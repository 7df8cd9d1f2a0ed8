/*
 * sheet_view.c - what the sheet of a low-methoxyl pectin says for one batch, asked
 * field by field.  It opens from the batch card, the first time because nothing can
 * be started without it, later to change what was typed.
 */
#include <string.h>

#include "base/text.h"
#include "kitchen/board/book.h"
#include "kitchen/board/verbs.h"
#include "kitchen/pantry/pantry.h"
#include "kitchen/recipe/sheet.h"
#include "screen/pot/pot_views.h"
#include "screen/ui/desk.h"

/* What the sheet of a recipe's pectin says, while it is typed. */
struct sheet_card {
	char recipe[NAME_MAX_BYTES];
	struct sheet sheet;
	unsigned given; /* bit n: field n */
	bool kept;      /* in the log already */
	struct list_state list;
};

static const struct view_state card_state = { sizeof(struct sheet_card), NULL };

static struct sheet_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_SHEET);
}

static bool is_given(const struct desk *desk, int field)
{
	return (card_of(desk)->given & 1u << field) != 0;
}

/* The first field not given yet; SHEET_FIELD_COUNT: none is missing. */
static int missing_field(const struct desk *desk)
{
	int field = 0;

	while (field < SHEET_FIELD_COUNT && is_given(desk, field))
		field++;
	return field;
}

static void field_words(const struct desk *desk, int field, char *buffer, size_t size)
{
	buffer[0] = '\0';
	if (is_given(desk, field))
		sheet_words(&card_of(desk)->sheet, (enum sheet_field)field, desk_units(desk), buffer, size);
}

/* --- asking --------------------------------------------------------------------------- */

static bool keep(struct desk *desk)
{
	struct fault fault = { 0 };
	bool first = !card_of(desk)->kept;

	if (!kitchen_put_sheet(desk->kitchen, card_of(desk)->recipe, &card_of(desk)->sheet, &fault)) {
		desk_say_fault(desk, &fault);
		return true;
	}
	card_of(desk)->kept = true;
	if (first)
		batch_view_go_on(desk);
	desk_say(desk, ROLE_DONE, "Kept as this kitchen's own. %s", first ? "s changes it." : "(u undoes)");
	return true;
}

static void ask(struct desk *desk);

static bool field_typed(struct desk *desk, const char *text)
{
	struct sheet_card *card = card_of(desk);
	struct fault fault = { 0 };

	if (!sheet_read(&card->sheet, (enum sheet_field)card->list.cursor, text, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	card->given |= 1u << card->list.cursor;
	if (missing_field(desk) == SHEET_FIELD_COUNT)
		return keep(desk);
	card->list.cursor = missing_field(desk);
	ask(desk); /* the line stays open for the next question */
	return false;
}

static void ask(struct desk *desk)
{
	enum sheet_field field = (enum sheet_field)card_of(desk)->list.cursor;
	char prompt[64];
	char words[96];
	struct text text = TEXT_OVER(prompt);

	field_words(desk, (int)field, words, sizeof(words));
	text_add(&text, "%s:", sheet_field_words(field));
	desk_offer(desk, prompt, words, field_typed);
	desk_say(desk, ROLE_PLAIN, "Type %s.", sheet_field_form(field));
}

void sheet_view_enter(struct desk *desk, const char *recipe)
{
	struct sheet_card *card = card_of(desk);

	memset(card, 0, sizeof(*card));
	text_copy(card->recipe, sizeof(card->recipe), recipe);
	card->kept = kitchen_sheet(desk->kitchen, recipe, &card->sheet);
	card->given = card->kept ? (1u << SHEET_FIELD_COUNT) - 1 : 0;
	desk_show_view(desk, VIEW_SHEET);
	if (!card->kept)
		ask(desk);
}

/* --- drawing ------------------------------------------------------------------------------ */

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

static void draw(const struct desk *desk, int top, int rows)
{
	const struct sheet_card *card = card_of(desk);
	const struct recipe *built_in = recipe_named(card->recipe);
	char words[300];
	struct text text = TEXT_OVER(words);
	int window_rows;
	int cols;
	int row = top + 1;

	terminal_size(desk->terminal, &window_rows, &cols);
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG, card->recipe);
	for (int field = 0; field < SHEET_FIELD_COUNT && row < top + rows; field++) {
		bool here = field == card->list.cursor;
		char value[96];

		field_words(desk, field, value, sizeof(value));
		terminal_put(desk->terminal, row, 1, 1, ROLE_STRONG,
		             here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		terminal_putf(desk->terminal, row++, 3, cols - 4, here ? ROLE_SELECTED : ROLE_PLAIN, "%-20s %s",
		              sheet_field_words((enum sheet_field)field),
		              is_given(desk, field) ? value : "not known yet");
	}
	text_add(&text, "As your pectin's sheet says for one batch: ");
	if (built_in != NULL)
		batch_words(desk, built_in, &text);
	text_add(&text, ". Asked once, kept as this kitchen's own.");
	if (row < top + rows)
		desk_paragraph(desk, row, 3, cols - 4, top + rows - row, ROLE_QUIET, words);
}

/* --- keys ---------------------------------------------------------------------------------- */

static void back(struct desk *desk)
{
	batch_view_go_on(desk);
}

static void undo(struct desk *desk)
{
	struct sheet_card *card = card_of(desk);

	desk_undo_about(desk, DONE_TO_RECIPES, "the recipes");
	card->kept = kitchen_sheet(desk->kitchen, card->recipe, &card->sheet);
	if (!card->kept)
		card->given = 0;
}

static void up(struct desk *desk)
{
	list_move(&card_of(desk)->list, -1, SHEET_FIELD_COUNT);
}

static void down(struct desk *desk)
{
	list_move(&card_of(desk)->list, 1, SHEET_FIELD_COUNT);
}

static bool is_kept(const struct desk *desk)
{
	return card_of(desk)->kept;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "type it", "Type what the sheet says in the line under the cursor.", NULL,
	  ask },
	{ KEY_CODE_ESCAPE, KEY_CODE_LEFT, "Esc", "back", "Back to the batch card.", NULL, back },
	{ 'u', 0, "u", "undo", "Undo the last change to a sheet or recipe.", is_kept, undo },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
};

static void sources(const struct desk *desk, struct sources *page)
{
	const struct recipe *recipe = kitchen_recipe_named(desk->kitchen, card_of(desk)->recipe);

	sources_add(page, &(struct source_of){ .source = "MSU-960" },
	            "Low-methoxyl pectin: amounts, acid and calcium as its own sheet says, none of them changed");
	sources_add(page,
	            &(struct source_of){ .source = "MSU-960",
	                                 .how = "the longer of the two is the process, so that neither is shortened" },
	            "The sheet may ask for a longer process than the table");
	sources_add(page, &(struct source_of){ .source = "common practice, no source" },
	            "More than one batch in a pot only where the sheet allows it");
	if (recipe != NULL)
		sources_add_recipe(page, recipe);
}

const struct view sheet_view = {
	.title = "Sheet of the pectin",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.draw = draw,
	.sources = sources,
	.keeps = true,
};
