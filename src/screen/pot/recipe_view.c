/*
 * recipe_view.c - a recipe of the kitchen's own, written down line by line in the
 * words of a kitchen file.  Nothing is kept until it is saved and passes its
 * check; it needs a source, and a food of the process tables or none.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "base/words.h"
#include "kitchen/board/book.h"
#include "kitchen/recipe/own.h"
#include "kitchen/recipe/recipe_lines.h"
#include "screen/house/house_views.h"
#include "screen/pot/pot_views.h"
#include "screen/ui/desk.h"

#define FOODS_MAX 256

struct recipe_card {
	struct log_recipe recipe; /* being written down */
	bool unsaved;
	enum { RECIPE_LINES, RECIPE_FOOD, RECIPE_INGREDIENT } choosing; /* its food, or what a line is */
	const struct known_ingredient *known;                           /* picked, while its amount is asked for */
	struct picker picker;
	const char *foods[FOODS_MAX]; /* that have a process; of the tables */
	size_t food_count;
	struct list_state list;
};

static const struct view_state card_state = { sizeof(struct recipe_card), NULL };

static struct recipe_card *card_of(const struct desk *desk)
{
	return desk_state(desk, VIEW_RECIPE);
}

#define NEW_RECIPE_BEGINS "recipe \"Quince jelly"
#define NEW_RECIPE \
	NEW_RECIPE_BEGINS "\" food=\"jelly without added pectin\" packs=\"hot_sterile_jar hot_unsterile_jar\" " \
	                  "jars=\"half_pint pint\" pectin=none acidity=acid hold=0 headspace=1/4 multiple=1 foam=33 " \
	                  "boiloff=5-15 gel=yes source=\"house recipe, no source\""
#define STANDING_ROWS 4 /* what is said of it, below its lines */

static bool recipe_typed(struct desk *desk, const char *text)
{
	struct log_recipe draft = card_of(desk)->recipe;
	struct fault fault = { 0 };
	struct words words;

	if (!words_split(text, &words, &fault) || !recipe_line_read(&words, &draft, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	card_of(desk)->recipe = draft;
	card_of(desk)->unsaved = true;
	return true;
}

/* From its beginning, with the name to be changed first. */
static void write_new(struct desk *desk)
{
	desk_ask(desk, "New:", NEW_RECIPE, recipe_typed);
	desk->entry.at = strlen(NEW_RECIPE_BEGINS);
}

static void enter(struct desk *desk, const struct opening *opening)
{
	struct fault fault = { 0 };

	memset(&card_of(desk)->recipe, 0, sizeof(card_of(desk)->recipe));
	card_of(desk)->unsaved = false;
	card_of(desk)->choosing = RECIPE_LINES;
	card_of(desk)->list = (struct list_state){ 0 };
	if (opening->id != 0 && !kitchen_own_recipe(desk->kitchen, opening->id, &card_of(desk)->recipe, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	desk_show_view(desk, VIEW_RECIPE);
	if (opening->id == 0)
		write_new(desk);
}

/* Row 0 is the recipe, then its ingredients, then "(add an ingredient)". */
static int line_count(const struct desk *desk)
{
	return (int)card_of(desk)->recipe.ingredient_count + 2;
}

static void line_words(const struct desk *desk, int line, char *buffer, size_t size)
{
	if (line == 0)
		(void)recipe_line_words(&card_of(desk)->recipe, buffer, size);
	else if (line <= (int)card_of(desk)->recipe.ingredient_count)
		(void)ingredient_picked_words(&card_of(desk)->recipe.ingredients[line - 1],
		                              kitchen_board(desk->kitchen)->house.units, buffer, size);
	else
		text_copy(buffer, size, "(add an ingredient)");
}

/* --- choosing a food of the process tables ------------------------------------------ */

/* Foods that have a process in any canner, looked up once when the view opens: the tables are
 * long, and the list is asked for each of its rows at every frame. */
static void read_foods(struct desk *desk)
{
	card_of(desk)->food_count = 0;
	for (size_t i = 0; i < food_count && card_of(desk)->food_count < FOODS_MAX; i++)
		if (process_is_offered(foods[i].name))
			card_of(desk)->foods[card_of(desk)->food_count++] = foods[i].name;
}

/* The n-th of them that holds the letters typed, NULL: any; the last choice of all is none. */
static const char *food_at(const struct desk *desk, int n, const struct picker *picker)
{
	for (size_t i = 0; i < card_of(desk)->food_count; i++)
		if ((picker == NULL || picker_matches(picker, card_of(desk)->foods[i])) && n-- == 0)
			return card_of(desk)->foods[i];
	return NULL;
}

static const char *nth_food(const struct desk *desk, int n)
{
	return food_at(desk, n, &card_of(desk)->picker);
}

static int foods_listed(const struct desk *desk)
{
	int count = 1;

	for (size_t i = 0; i < card_of(desk)->food_count; i++)
		count += picker_matches(&card_of(desk)->picker, card_of(desk)->foods[i]);
	return count;
}

static void food_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const char *food = nth_food(desk, n);

	text_copy(buffer, size, food != NULL ? food : "(none fits: no published process, and it says so)");
}

static void choose_food(struct desk *desk)
{
	struct log_recipe *recipe = &card_of(desk)->recipe;
	const char *food;

	food = nth_food(desk, card_of(desk)->picker.cursor);
	if (picker_blank(desk, &card_of(desk)->picker, food != NULL ? food : "", foods_listed(desk)))
		return;
	text_copy(recipe->food, sizeof(recipe->food), food != NULL ? food : "");
	if (food == NULL)
		recipe->packs[0] = '\0';
	else
		(void)process_acidity(food, &recipe->acidity);
	card_of(desk)->choosing = RECIPE_LINES;
	card_of(desk)->unsaved = true;
	desk_say(desk, ROLE_PLAIN, "Its packs and jars must be in the table: saving checks that.");
}

static void pick_food(struct desk *desk)
{
	read_foods(desk);
	picker_reset(&card_of(desk)->picker);
	card_of(desk)->choosing = RECIPE_FOOD;
}

static bool writing(const struct desk *desk)
{
	return card_of(desk)->choosing == RECIPE_LINES;
}

static bool picking(const struct desk *desk)
{
	return card_of(desk)->choosing == RECIPE_FOOD;
}

static bool picking_ingredient(const struct desk *desk)
{
	return card_of(desk)->choosing == RECIPE_INGREDIENT;
}

/* --- what an ingredient is ------------------------------------------------------------ */

/* The n-th of the list that holds the letters typed; NULL: the last choice, none of it. */
static const struct known_ingredient *nth_known(const struct desk *desk, int n)
{
	for (size_t i = 0; i < known_ingredient_count; i++) {
		const struct known_ingredient *known = &known_ingredients[i];

		if ((picker_matches(&card_of(desk)->picker, known->name) ||
		     picker_matches(&card_of(desk)->picker, known->also)) &&
		    n-- == 0)
			return known;
	}
	return NULL;
}

static int known_listed(const struct desk *desk)
{
	int count = 0;

	while (nth_known(desk, count) != NULL)
		count++;
	return count + 1;
}

static void known_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct known_ingredient *known = nth_known(desk, n);
	struct text text = text_over(buffer, size);

	if (known == NULL)
		text_add(&text, "(on no list: the recipe counts as not tested)");
	else
		text_add(&text, "%s%s%s%s", known->name, known->also[0] != '\0' ? "  (" : "", known->also,
		         known->also[0] != '\0' ? ")" : "");
}

static const char *choice_name(const struct desk *desk, int n)
{
	if (card_of(desk)->choosing == RECIPE_FOOD)
		return food_at(desk, n, NULL);
	return n < (int)known_ingredient_count ? known_ingredients[n].name : NULL;
}

static bool types(const struct desk *desk, long key)
{
	return card_of(desk)->choosing != RECIPE_LINES && picker_types(desk, &card_of(desk)->picker, key, choice_name);
}

static bool choice_typed(struct desk *desk, long key)
{
	if (!types(desk, key))
		return false;
	picker_typed(desk, &card_of(desk)->picker, key, choice_name);
	return true;
}

static bool ingredient_typed(struct desk *desk, const char *text);

static bool at_ingredient(const struct desk *desk)
{
	return card_of(desk)->list.cursor >= 1 &&
	       card_of(desk)->list.cursor <= (int)card_of(desk)->recipe.ingredient_count;
}

/* As a line of a kitchen file; form, supply and when are changed in it afterward. */
static bool amount_typed(struct desk *desk, const char *amount)
{
	const struct known_ingredient *known = card_of(desk)->known;
	char words[ENTRY_MAX];
	struct text text = TEXT_OVER(words);

	text_add(&text, "ingredient ");
	words_quote(&text, known->name);
	text_add(&text, " supply=%s when=at_start as=", supply_name(known->supply));
	words_quote(&text, known->name);
	text_add(&text, " amount=");
	words_quote(&text, amount);
	return ingredient_typed(desk, words);
}

/* A new line begins with what was picked; of one that is there only that is changed. */
static void choose_known(struct desk *desk)
{
	const struct known_ingredient *known = nth_known(desk, card_of(desk)->picker.cursor);
	const char *name = known != NULL ? known->name : "";
	char prompt[80];

	if (picker_blank(desk, &card_of(desk)->picker, name, known_listed(desk)))
		return;
	card_of(desk)->choosing = RECIPE_LINES;
	if (at_ingredient(desk)) {
		struct log_recipe_ingredient *line = &card_of(desk)->recipe.ingredients[card_of(desk)->list.cursor - 1];

		text_copy(line->known, sizeof(line->known), name);
		card_of(desk)->unsaved = true;
		return;
	}
	card_of(desk)->known = known;
	if (known == NULL) {
		desk_ask(desk, "New:", "ingredient \"NAME\" amount=\"1 cup\" when=at_start as=unlisted",
		         ingredient_typed);
		return;
	}
	(void)snprintf(prompt, sizeof(prompt), "How much %.50s in one batch:", known->name);
	desk_ask(desk, prompt, "", amount_typed);
}

static void pick_ingredient(struct desk *desk)
{
	if (card_of(desk)->list.cursor == 0) {
		desk_say(desk, ROLE_CAUTION, "Move to an ingredient first. The food of the recipe: f.");
		return;
	}
	if (!at_ingredient(desk) && card_of(desk)->recipe.ingredient_count >= RECIPE_INGREDIENTS_MAX) {
		desk_say(desk, ROLE_CAUTION, "A recipe has at most %d ingredients.", RECIPE_INGREDIENTS_MAX);
		return;
	}
	picker_reset(&card_of(desk)->picker);
	card_of(desk)->choosing = RECIPE_INGREDIENT;
}

/* Where it stands as it is written now. */
static void standing_draw(struct desk *desk, int row, int rows, int cols)
{
	char words[ORIGIN_WORDS_MAX + 10];
	struct text text = TEXT_OVER(words);
	struct recipe_standing standing;
	enum role role;

	if (card_of(desk)->recipe.ingredient_count == 0)
		return;
	kitchen_recipe_draft_stands(&card_of(desk)->recipe, &standing);
	role = standing.origin == ORIGIN_REFUSED       ? ROLE_STOP
	       : standing.origin == ORIGIN_OWN_UNKNOWN ? ROLE_CAUTION
	                                               : ROLE_DONE;
	text_add(&text, "%s%s", standing.origin == ORIGIN_REFUSED ? "REFUSED: " : "", standing.words);
	desk_paragraph(desk, row, 1, cols - 2, rows, role, words);
}

static void draw(struct desk *desk, int top, int rows)
{
	int window_rows;
	int cols;
	int row = top + 1;

	terminal_size(desk->terminal, &window_rows, &cols);
	if (picking_ingredient(desk)) {
		terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG, "What is it? Type letters. %s_",
		              card_of(desk)->picker.filter);
		picker_draw(desk, &card_of(desk)->picker, top + 1, rows - 1, cols, known_listed(desk), known_words);
		return;
	}
	if (picking(desk)) {
		terminal_putf(desk->terminal, top, 1, cols - 2, ROLE_STRONG,
		              "Which food of the process tables? Type letters. %s_", card_of(desk)->picker.filter);
		picker_draw(desk, &card_of(desk)->picker, top + 1, rows - 1, cols, foods_listed(desk), food_words);
		return;
	}
	terminal_put(desk->terminal, top, 1, cols - 2, ROLE_STRONG,
	             "A recipe of your own. s saves it; without a published process it says so everywhere.");
	for (int i = 0; i < line_count(desk) && row < top + rows - STANDING_ROWS; i++) {
		bool here = i == card_of(desk)->list.cursor;
		char words[ENTRY_MAX];

		bool typed = here && desk->entry.open; /* the foot has room for a part of it */

		line_words(desk, i, words, sizeof(words));
		if (typed)
			text_copy(words, sizeof(words), desk->entry.text);
		terminal_put(desk->terminal, row, 1, 1, ROLE_STRONG,
		             here ? glyph(desk->terminal, GLYPH_SELECTION) : " ");
		row += desk_paragraph(desk, row, 3, cols - 4,
		                      typed    ? top + rows - STANDING_ROWS - row
		                      : i == 0 ? 5
		                               : 2,
		                      here ? ROLE_SELECTED : ROLE_PLAIN, words);
	}
	standing_draw(desk, top + rows - STANDING_ROWS, STANDING_ROWS, cols);
}

static bool ingredient_typed(struct desk *desk, const char *text)
{
	struct log_recipe *recipe = &card_of(desk)->recipe;
	size_t n = (size_t)card_of(desk)->list.cursor - 1;
	struct log_recipe_ingredient ingredient;
	struct fault fault = { 0 };
	struct words words;

	memset(&ingredient, 0, sizeof(ingredient));
	if (!words_split(text, &words, &fault) || !ingredient_line_read(&words, &ingredient, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (n == recipe->ingredient_count && n < OWN_INGREDIENTS_MAX)
		recipe->ingredient_count++;
	if (n < recipe->ingredient_count)
		recipe->ingredients[n] = ingredient;
	card_of(desk)->unsaved = true;
	return true;
}

static void change(struct desk *desk)
{
	char words[ENTRY_MAX];
	int line = card_of(desk)->list.cursor;

	line_words(desk, line, words, sizeof(words));
	if (line == 0)
		desk_ask(desk, "Change:", words, recipe_typed);
	else if (line <= (int)card_of(desk)->recipe.ingredient_count)
		desk_ask(desk, "Change:", words, ingredient_typed);
	else if (card_of(desk)->recipe.ingredient_count < OWN_INGREDIENTS_MAX)
		pick_ingredient(desk);
	else
		desk_say(desk, ROLE_CAUTION, "A recipe has at most %d ingredients.", OWN_INGREDIENTS_MAX);
}

static void take_out(struct desk *desk)
{
	struct log_recipe *recipe = &card_of(desk)->recipe;
	size_t n = (size_t)card_of(desk)->list.cursor - 1;

	if (card_of(desk)->list.cursor < 1 || n >= recipe->ingredient_count)
		return;
	memmove(&recipe->ingredients[n], &recipe->ingredients[n + 1],
	        (recipe->ingredient_count - n - 1) * sizeof(recipe->ingredients[0]));
	recipe->ingredient_count--;
	card_of(desk)->unsaved = true;
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
	house_view_refresh(desk);
	kitchen_recipe_draft_stands(&card_of(desk)->recipe, &standing);
	desk_say(desk, standing.origin == ORIGIN_OWN_CLASS ? ROLE_DONE : ROLE_CAUTION, "Saved (u undoes): %s.",
	         standing.words);
}

static void back(struct desk *desk)
{
	if (!writing(desk)) {
		card_of(desk)->choosing = RECIPE_LINES;
		return;
	}
	if (card_of(desk)->unsaved) {
		card_of(desk)->unsaved = false; /* asked once */
		desk_say(desk, ROLE_CAUTION, "Not saved: s saves it. Esc again discards it.");
		return;
	}
	desk_show_view(desk, VIEW_HOUSE);
}

static void move(struct desk *desk, int by)
{
	if (picking(desk))
		picker_move(&card_of(desk)->picker, by, foods_listed(desk));
	else if (picking_ingredient(desk))
		picker_move(&card_of(desk)->picker, by, known_listed(desk));
	else
		list_move(&card_of(desk)->list, by, line_count(desk));
}

static void up(struct desk *desk)
{
	move(desk, -1);
}

static void down(struct desk *desk)
{
	move(desk, 1);
}

static const char *const pages[] = { "lines", "food", "ingredient", NULL };

static int page(const struct desk *desk)
{
	return (int)card_of(desk)->choosing;
}

static const struct view_key keys[] = {
	{ ' ', KEY_CODE_ENTER, "Space", "change", "Change the line under the cursor, or add an ingredient.", writing,
	  change },
	{ ' ', KEY_CODE_ENTER, "Space", "this food", "The recipe uses this food's process rows.", picking,
	  choose_food },
	{ ' ', KEY_CODE_ENTER, "Space", "it is this", "The ingredient is this; it decides what the recipe counts as.",
	  picking_ingredient, choose_known },
	{ 'i', 0, "i", "what it is", "Pick what the ingredient under the cursor is from the list.", writing,
	  pick_ingredient },
	{ 'f', 0, "f", "food", "Choose its food from the process tables.", writing, pick_food },
	{ 's', 0, "s", "save", "Save the recipe, if it passes its check.", writing, save },
	{ 'd', 0, "d", "take out", "Take the ingredient under the cursor out.", writing, take_out },
	{ KEY_CODE_ESCAPE, 0, "Esc", "back", "Back to the house; what is not saved is lost.", NULL, back },
	{ KEY_CODE_UP, 0, "Up", NULL, "The line above.", NULL, up },
	{ KEY_CODE_DOWN, 0, "Down", NULL, "The line below.", NULL, down },
};

const struct view recipe_view = {
	.title = "Own recipe",
	.state = &card_state,
	.pages = pages,
	.page = page,
	.keys = keys,
	.key_count = sizeof(keys) / sizeof(keys[0]),
	.enter = enter,
	.draw = draw,
	.keeps = true,
	.typed = choice_typed,
	.types = types,
};
