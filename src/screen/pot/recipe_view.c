/*
 * recipe_view.c - a recipe of the kitchen's own, line by line.  Each line is changed by a form
 * (recipe_forms.c, ingredient_form.c); nothing is kept until it is saved and passes its
 * check.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/book.h"
#include "kitchen/recipe/own.h"
#include "screen/pot/pot_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/paragraph.h"

struct recipe_card {
	struct log_recipe was;    /* as it is in the log */
	struct log_recipe recipe; /* as it is written now */
	bool unsaved;
	struct list_state list;
};

static const struct view_state card_state = { sizeof(struct recipe_card), NULL };

static struct recipe_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_RECIPE);
}

const struct log_recipe *recipe_draft(const struct desk *desk)
{
	return &card_of(desk)->recipe;
}

void recipe_draft_is(struct desk *desk, const struct log_recipe *recipe)
{
	card_of(desk)->recipe = *recipe;
	recipe_keep_what_holds(&card_of(desk)->was, &card_of(desk)->recipe);
	card_of(desk)->unsaved = true;
}

#define STANDING_ROWS 4 /* what is said of it, below its lines */

static void enter(struct desk *desk, const struct opening *opening)
{
	struct recipe_card *card = card_of(desk);
	struct fault fault = { 0 };

	memset(card, 0, sizeof(*card));
	if (!kitchen_own_recipe(desk->kitchen, opening->id, &card->recipe, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	card->was = card->recipe;
	desk_show_view(desk, VIEW_RECIPE);
}

/* Row 0 is the recipe, then its ingredients, then "(add an ingredient)". */
static int line_count(const struct desk *desk)
{
	return (int)card_of(desk)->recipe.ingredient_count + 2;
}

static bool at_ingredient(const struct desk *desk)
{
	const struct recipe_card *card = card_of(desk);

	return card->list.cursor >= 1 && card->list.cursor <= (int)card->recipe.ingredient_count;
}

static void yield_words(const struct desk *desk, const struct log_recipe *recipe, struct text *text)
{
	struct amount_range range = { MEASURE_VOLUME, recipe->yield_low_ul, 0 };
	char words[AMOUNT_RANGE_BYTES];

	if (recipe->yield_high_ul > recipe->yield_low_ul)
		range.most = recipe->yield_high_ul;
	amount_range_words(&range, SUPPLY_OTHER, desk_units(desk), words, sizeof(words));
	text_add(text, "a batch fills %s; ", words);
}

static void recipe_words(const struct desk *desk, const struct log_recipe *recipe, struct text *text)
{
	char headspace[24];

	headspace_words(recipe->headspace_thou, headspace, sizeof(headspace));
	text_add(text, "%s: %s; %s; ", recipe->name, recipe->food[0] != '\0' ? recipe->food : "no published process",
	         pectin_words(recipe->pectin));
	if (recipe->boil_hold_s > 0)
		text_add(text, "boiled %d s; ", recipe->boil_hold_s);
	text_add(text, "headspace %s; at most %d x in a pot; ", headspace, recipe->multiple_max);
	if (recipe->yield_low_ul > 0)
		yield_words(desk, recipe, text);
	text_add(text, "source: %s%s", recipe->source, recipe->retired ? "; put away" : "");
}

static void ingredient_words(const struct desk *desk, const struct log_recipe_ingredient *line, struct text *text)
{
	static const char *const whens[OWN_ADDINGS] = {
		[ADD_AT_BOIL] = ", at the full boil",
		[ADD_LAST] = ", last of all",
		[ADD_IN_JAR] = ", in each quart jar",
	};
	int percent = line->supply == SUPPLY_VINEGAR ? card_of(desk)->recipe.vinegar_percent : 0;

	ingredient_amount_words(desk, line, text);
	text_add(text, " %s", line->name);
	if (percent > 0)
		text_add(text, " of %d %%", percent);
	if (percent > 0 && card_of(desk)->recipe.acid_swap == ACID_SWAP_LEMON_FOR_VINEGAR)
		text_add(text, " (or as much bottled lemon juice)");
	text_add(text, "%s%s", line->form[0] != '\0' ? ", " : "", line->form);
	text_add(text, "%s%s", whens[line->adding] != NULL ? whens[line->adding] : "",
	         line->optional ? ", if wanted" : "");
	if (line->known[0] == '\0' && line->supply == SUPPLY_OTHER)
		text_add(text, " (on no list)");
	else if (line->known[0] != '\0' && strcmp(line->known, line->name) != 0)
		text_add(text, " (%s)", line->known);
}

static void line_words(const struct desk *desk, int line, char *buffer, size_t size)
{
	const struct log_recipe *recipe = &card_of(desk)->recipe;
	struct text text = text_over(buffer, size);

	if (line == 0)
		recipe_words(desk, recipe, &text);
	else if (line <= (int)recipe->ingredient_count)
		ingredient_words(desk, &recipe->ingredients[line - 1], &text);
	else
		text_add(&text, "(add an ingredient)");
}

/* Where it stands as it is written now. */
static void standing_draw(const struct desk *desk, int row, int rows, int cols)
{
	char words[ORIGIN_WORDS_MAX + 400];
	struct text text = TEXT_OVER(words);
	struct recipe_standing standing;
	enum role role;

	if (card_of(desk)->recipe.ingredient_count == 0)
		return;
	kitchen_recipe_draft_stands(&card_of(desk)->recipe, &standing);
	role = standing.origin == ORIGIN_REFUSED       ? ROLE_STOP
	       : standing.origin == ORIGIN_OWN_UNKNOWN ? ROLE_CAUTION
	                                               : ROLE_DONE;
	recipe_changed_words(&card_of(desk)->was, &card_of(desk)->recipe, desk_units(desk), &text);
	if (text.used > 0 && standing.origin != ORIGIN_REFUSED)
		role = ROLE_CAUTION;
	text_add(&text, "%s%s", standing.origin == ORIGIN_REFUSED ? "REFUSED: " : "", standing.words);
	for (int i = 0; i < rows; i++) /* a long line above may reach down here */
		terminal_fill(desk->terminal, row + i, 0, cols, ROLE_PLAIN, GLYPH_SPACE);
	desk_paragraph(desk, row, 1, cols - 2, rows, role, words);
}

static void line_of(const struct desk *desk, struct list_line *line)
{
	line_words(desk, line->n, line->words, sizeof(line->words));
}

static void draw(const struct desk *desk, int top, int rows)
{
	const struct list_area area = {
		.top = top + 1, .rows = rows - 1 - STANDING_ROWS, .left = 1, .count = line_count(desk), .line = line_of
	};

	desk_fit(desk, top, ROLE_STRONG, "A recipe of your own. s saves it.", "A recipe of your own. s saves it.");
	(void)list_draw(desk, &card_of(desk)->list, &area);
	standing_draw(desk, top + rows - STANDING_ROWS, STANDING_ROWS, desk_columns(desk));
}

static void change(struct desk *desk)
{
	if (card_of(desk)->list.cursor == 0)
		desk_enter(desk, ENTRY_OWN_RECIPE, card_of(desk)->recipe.id);
	else
		desk_enter(desk, ENTRY_INGREDIENT, at_ingredient(desk) ? card_of(desk)->list.cursor : 0);
}

static void take_out(struct desk *desk)
{
	struct log_recipe recipe = card_of(desk)->recipe;
	size_t n = (size_t)card_of(desk)->list.cursor - 1;

	if (card_of(desk)->list.cursor < 1 || n >= recipe.ingredient_count)
		return;
	memmove(&recipe.ingredients[n], &recipe.ingredients[n + 1],
	        (recipe.ingredient_count - n - 1) * sizeof(recipe.ingredients[0]));
	recipe.ingredient_count--;
	recipe_draft_is(desk, &recipe);
}

static void save(struct desk *desk)
{
	struct recipe_standing standing;
	struct fault fault = { 0 };

	if (!kitchen_put_recipe(desk->kitchen, &card_of(desk)->recipe, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	desk_show_view(desk, VIEW_HOUSE);
	kitchen_recipe_draft_stands(&card_of(desk)->recipe, &standing);
	desk_say(desk, standing.origin == ORIGIN_OWN_CLASS ? ROLE_DONE : ROLE_CAUTION, "Saved (u undoes): %s.",
	         standing.words);
}

static void back(struct desk *desk)
{
	if (card_of(desk)->unsaved) {
		card_of(desk)->unsaved = false; /* asked once */
		desk_say(desk, ROLE_CAUTION, "Not saved: s saves it. Esc again discards it.");
		return;
	}
	desk_show_view(desk, VIEW_HOUSE);
}

static struct list_state *list_of(const struct desk *desk, int *count)
{
	*count = line_count(desk);
	return &card_of(desk)->list;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "change", "Change the line under the cursor, or add an ingredient.", NULL,
	  change },
	{ 's', 0, "s", "save", "Save the recipe, if it passes its check.", NULL, save },
	{ 'd', 0, "d", "take out", "Take the ingredient under the cursor out.", at_ingredient, take_out },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the house; what is not saved is lost.", NULL, back },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, list_above },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, list_below },
};

const struct view recipe_view = {
	.title = "Own recipe",
	.state = &card_state,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.list = list_of,
	.draw = draw,
	.keeps = true,
};
