/*
 * recipe_forms.c - a recipe of the kitchen's own, begun as a copy of another: its fruit
 * first, then each of its lines.
 */
#include <stdio.h>
#include <string.h>

#include "engine/food/food.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/book.h"
#include "kitchen/recipe/own.h"
#include "kitchen/recipe/recipe_lines.h"
#include "screen/pot/pot_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/recipe_choice.h"

#define SOURCE_USUAL "house recipe, no source"

#define FOODS_MAX 256
#define CHANGED_BYTES 400
#define ANOTHER "Another" /* the question that is asked again behind each line that was added */

struct own_answers {
	char like[NAME_MAX_BYTES]; /* the recipe it is a copy of */
	struct log_recipe recipe;
	bool left_out[OWN_INGREDIENTS_MAX];
	bool adds; /* a line that the other has not: */
	struct log_recipe_ingredient added;
	const char *foods[FOODS_MAX]; /* that have a process; of the tables */
	size_t food_count;
	bool all; /* of one that is there: what is seldom changed too */
	char changed[CHANGED_BYTES];
};

static struct own_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static struct log_recipe *recipe_of(const struct desk *desk)
{
	return &answers_of(desk)->recipe;
}

static void read_foods(struct own_answers *answers);

/* One that is there is changed in the view that shows its lines. */
static bool begin(struct desk *desk, int64_t id)
{
	read_foods(answers_of(desk));
	if (id != 0)
		*recipe_of(desk) = *recipe_draft(desk);
	return true;
}

static bool is_new(const struct desk *desk)
{
	return recipe_of(desk)->id == 0;
}

static bool is_there(const struct desk *desk)
{
	return !is_new(desk);
}

static bool asks_all(const struct desk *desk)
{
	return is_there(desk) && answers_of(desk)->all;
}

/* --- which one --------------------------------------------------------------------------- */

static int like_now(const struct desk *desk)
{
	const char *name;

	for (int n = 0; (name = recipe_choice_name(desk, n)) != NULL; n++)
		if (strcmp(name, answers_of(desk)->like) == 0)
			return n;
	return 0;
}

static void like_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", answers_of(desk)->like);
}

static bool like_taken(struct desk *desk, int n)
{
	struct own_answers *answers = answers_of(desk);
	const struct recipe *like = kitchen_recipe(desk->kitchen, (size_t)n);
	struct log_recipe copy;
	struct fault fault = { 0 };
	char left_out[FAULT_SENTENCE_MAX];
	struct text text = TEXT_OVER(left_out);

	if (strcmp(like->name, answers->like) == 0)
		return true; /* as it was changed before */
	if (!recipe_begin_own(like, &copy, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	memset(answers->left_out, 0, sizeof(answers->left_out));
	answers->recipe = copy;
	recipe_left_out_words(like, &text);
	if (text.used > 0)
		desk_say(desk, ROLE_CAUTION, "%s", left_out);
	text_copy(answers->recipe.source, sizeof(answers->recipe.source), SOURCE_USUAL);
	return text_copy(answers->like, sizeof(answers->like), like->name);
}

/* --- its fruit ------------------------------------------------------------------------------ */

static const struct known_ingredient *fruit_at(int n)
{
	for (size_t i = 0; i < known_ingredient_count; i++)
		if (known_ingredients[i].is == INGREDIENT_FRUIT && n-- == 0)
			return &known_ingredients[i];
	return NULL;
}

static bool has_fruit(const struct desk *desk)
{
	return is_new(desk) && recipe_fruit(recipe_of(desk)) != NULL;
}

static const char *fruit_word(const struct desk *desk, int n)
{
	(void)desk;
	return fruit_at(n) != NULL ? fruit_at(n)->name : NULL;
}

static int fruit_now(const struct desk *desk)
{
	for (int n = 0; fruit_at(n) != NULL; n++)
		if (fruit_at(n) == recipe_fruit(recipe_of(desk)))
			return n;
	return 0;
}

static void fruit_said(const struct desk *desk, struct text *text)
{
	if (has_fruit(desk))
		text_add(text, "%s", recipe_fruit(recipe_of(desk))->name);
}

static bool fruit_taken(struct desk *desk, int n)
{
	recipe_set_fruit(recipe_of(desk), fruit_at(n));
	return true;
}

/* --- its food in the tables ------------------------------------------------------------------- */

/* Foods that have a process in any canner, looked up once: the tables are long, and the list is
 * asked for each of its rows at every frame. */
static void read_foods(struct own_answers *answers)
{
	answers->food_count = 0;
	for (size_t i = 0; i < food_count && answers->food_count < FOODS_MAX; i++)
		if (process_is_offered(foods[i].name))
			answers->foods[answers->food_count++] = foods[i].name;
}

/* The last choice of all is none. */
static int foods_and_none(const struct desk *desk)
{
	return (int)answers_of(desk)->food_count + 1;
}

static const char *food_word(const struct desk *desk, int n)
{
	return n < (int)answers_of(desk)->food_count ? answers_of(desk)->foods[n] : NULL;
}

static void food_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const char *food = food_word(desk, n);

	text_copy(buffer, size, food != NULL ? food : "(none fits: no published process, and it says so)");
}

static int food_now(const struct desk *desk)
{
	const char *food;
	int n = 0;

	for (; (food = food_word(desk, n)) != NULL; n++)
		if (strcmp(food, recipe_of(desk)->food) == 0)
			return n;
	return n;
}

static void food_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", recipe_of(desk)->food[0] != '\0' ? recipe_of(desk)->food : "no published process");
}

static bool food_taken(struct desk *desk, int n)
{
	const char *food = food_word(desk, n) != NULL ? food_word(desk, n) : "";

	if (strcmp(recipe_of(desk)->food, food) != 0)
		recipe_set_food(recipe_of(desk), food);
	return true;
}

/* The tables say it of a food; without one the kitchen must. */
static bool has_no_food(const struct desk *desk)
{
	return recipe_of(desk)->food[0] == '\0';
}

static const char *acidity_at(const struct desk *desk, int n)
{
	(void)desk;
	return n < ACIDITY_COUNT ? acidity_words((enum acidity)n) : NULL;
}

/* --- its packs and jars: all of that food at first, each kept or left -------------------------- */

static const struct pack *pack_at(const struct desk *desk, int n)
{
	const struct pack *pack = NULL;

	while ((pack = recipe_next_pack(recipe_of(desk), pack)) != NULL && n-- > 0)
		;
	return pack;
}

static const struct jar_size *jar_at(const struct desk *desk, int n)
{
	const struct jar_size *jar = NULL;

	while ((jar = recipe_next_jar(recipe_of(desk), jar)) != NULL && n-- > 0)
		;
	return jar;
}

/* The first choice is to go on with them as they stand. */
static int packs_and_on(const struct desk *desk)
{
	int n = 0;

	while (pack_at(desk, n) != NULL)
		n++;
	return n + 1;
}

static int jars_and_on(const struct desk *desk)
{
	int n = 0;

	while (jar_at(desk, n) != NULL)
		n++;
	return n + 1;
}

static bool has_packs(const struct desk *desk)
{
	return pack_at(desk, 1) != NULL;
}

static bool has_jars(const struct desk *desk)
{
	return jar_at(desk, 1) != NULL;
}

static void kept_words(bool keeps, const char *name, char *buffer, size_t size)
{
	(void)snprintf(buffer, size, "%s %s", keeps ? "kept: " : "left: ", name);
}

static void on_words(const struct desk *desk, void (*said)(const struct desk *, struct text *), char *buffer,
                     size_t size)
{
	struct text text = text_over(buffer, size);

	text_add(&text, "go on with ");
	said(desk, &text);
}

static void packs_said(const struct desk *desk, struct text *text)
{
	const struct pack *pack = NULL;
	const char *between = "";

	while ((pack = recipe_next_pack(recipe_of(desk), pack)) != NULL)
		if (recipe_keeps_pack(recipe_of(desk), pack)) {
			text_add(text, "%s%s", between, pack->words);
			between = "; ";
		}
	if (between[0] == '\0')
		text_add(text, "none");
}

static void jars_said(const struct desk *desk, struct text *text)
{
	const struct jar_size *jar = NULL;
	const char *between = "";

	while ((jar = recipe_next_jar(recipe_of(desk), jar)) != NULL)
		if (recipe_keeps_jar(recipe_of(desk), jar)) {
			text_add(text, "%s%s", between, jar->plural);
			between = ", ";
		}
	if (between[0] == '\0')
		text_add(text, "none");
}

static void packs_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct pack *pack = n > 0 ? pack_at(desk, n - 1) : NULL;

	if (pack == NULL)
		on_words(desk, packs_said, buffer, size);
	else
		kept_words(recipe_keeps_pack(recipe_of(desk), pack), pack->words, buffer, size);
}

static void jars_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const struct jar_size *jar = n > 0 ? jar_at(desk, n - 1) : NULL;

	if (jar == NULL)
		on_words(desk, jars_said, buffer, size);
	else
		kept_words(recipe_keeps_jar(recipe_of(desk), jar), jar->plural, buffer, size);
}

/* The question stays until it is gone on from; one of them there must be. */
static bool packs_taken(struct desk *desk, int n)
{
	struct log_recipe *recipe = recipe_of(desk);
	const struct pack *pack = n > 0 ? pack_at(desk, n - 1) : NULL;

	desk->message[0] = '\0';
	if (pack != NULL)
		recipe_keep_pack(recipe, pack, !recipe_keeps_pack(recipe, pack));
	else if (recipe->packs[0] == '\0')
		desk_say(desk, ROLE_CAUTION, "Keep one at least: Down, then Space on it.");
	return pack == NULL && recipe->packs[0] != '\0';
}

static bool jars_taken(struct desk *desk, int n)
{
	struct log_recipe *recipe = recipe_of(desk);
	const struct jar_size *jar = n > 0 ? jar_at(desk, n - 1) : NULL;

	desk->message[0] = '\0';
	if (jar != NULL)
		recipe_keep_jar(recipe, jar, !recipe_keeps_jar(recipe, jar));
	else if (recipe->jars[0] == '\0')
		desk_say(desk, ROLE_CAUTION, "Keep one at least: Down, then Space on it.");
	return jar == NULL && recipe->jars[0] != '\0';
}

/* --- its name ----------------------------------------------------------------------------------- */

static bool is_taken(const struct desk *desk, const char *name)
{
	for (size_t i = 0; i < kitchen_recipe_count(desk->kitchen); i++)
		if (text_same_name(kitchen_recipe(desk->kitchen, i)->name, name) &&
		    (is_new(desk) || kitchen_recipe_own_id(desk->kitchen, i) != recipe_of(desk)->id))
			return true;
	return false;
}

/* No two have one name. */
static void name_now(const struct desk *desk, struct text *text)
{
	const char *name = recipe_of(desk)->name;

	text_add(text, "%s%s", name, is_taken(desk, name) ? ", our own" : "");
}

static void name_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", recipe_of(desk)->name);
}

static bool name_typed(struct desk *desk, const char *text)
{
	struct log_recipe *recipe = recipe_of(desk);
	char name[sizeof(recipe->name)];

	if (text[0] == '\0' || !text_copy(name, sizeof(name), text)) {
		desk_say(desk, ROLE_CAUTION, "Give it a name, at most %d letters.", (int)sizeof(name) - 1);
		return false;
	}
	if (is_taken(desk, name)) {
		desk_say(desk, ROLE_CAUTION, "There is a recipe \"%s\" already; give this one another name.", name);
		return false;
	}
	return text_copy(recipe->name, sizeof(recipe->name), name);
}

/* --- its lines ------------------------------------------------------------------------------------- */

static bool has_line(const struct desk *desk, size_t n)
{
	return is_new(desk) && n < recipe_of(desk)->ingredient_count;
}

static void line_what(const struct desk *desk, size_t n, struct text *text)
{
	const struct log_recipe_ingredient *line = &recipe_of(desk)->ingredients[n];

	if (!has_line(desk, n))
		return;
	text_add(text, "%s", line->name);
	if (line->supply == SUPPLY_VINEGAR && recipe_of(desk)->vinegar_percent > 0)
		text_add(text, " of %d %%", recipe_of(desk)->vinegar_percent);
	text_add(text, "%s%s", line->form[0] != '\0' ? ", " : "", line->form);
	text_add(text, "%s%s", line->adding == ADD_IN_JAR ? ", in each quart jar" : "",
	         line->optional ? ", if wanted" : "");
}

static void line_now(const struct desk *desk, size_t n, struct text *text)
{
	if (has_line(desk, n) && !answers_of(desk)->left_out[n])
		ingredient_amount_words(desk, &recipe_of(desk)->ingredients[n], text);
}

static void line_said(const struct desk *desk, size_t n, struct text *text)
{
	if (answers_of(desk)->left_out[n])
		text_add(text, "no");
	line_now(desk, n, text);
	text_add(text, " ");
	line_what(desk, n, text);
}

static bool line_typed(struct desk *desk, size_t n, const char *text)
{
	answers_of(desk)->left_out[n] = text[0] == '\0';
	return text[0] == '\0' || ingredient_amount_typed(desk, &recipe_of(desk)->ingredients[n], text);
}

#define LINE(n) \
	static bool has_line_##n(const struct desk *desk) \
	{ \
		return has_line(desk, n); \
	} \
	static void line_beside_##n(const struct desk *desk, int unused, struct text *text) \
	{ \
		(void)unused; \
		line_what(desk, n, text); \
	} \
	static void line_now_##n(const struct desk *desk, struct text *text) \
	{ \
		line_now(desk, n, text); \
	} \
	static void line_said_##n(const struct desk *desk, struct text *text) \
	{ \
		line_said(desk, n, text); \
	} \
	static bool line_typed_##n(struct desk *desk, const char *text) \
	{ \
		return line_typed(desk, n, text); \
	}
LINE(0)
LINE(1)
LINE(2)
LINE(3)
LINE(4)
LINE(5)
LINE(6)
LINE(7)
LINE(8)
LINE(9)
LINE(10)
LINE(11)
_Static_assert(OWN_INGREDIENTS_MAX == 12, "a question for each line");

/* --- a line that the other has not -------------------------------------------------------------- */

static const char *const anothers[] = { "that is all", "one more ingredient", NULL };

static bool may_add(const struct desk *desk)
{
	return is_new(desk) && recipe_of(desk)->ingredient_count < OWN_INGREDIENTS_MAX;
}

static bool adds(const struct desk *desk)
{
	return may_add(desk) && answers_of(desk)->adds;
}

static bool adds_unlisted(const struct desk *desk)
{
	return adds(desk) && answers_of(desk)->added.known[0] == '\0';
}

static int another_now(const struct desk *desk)
{
	(void)desk;
	return 0;
}

static void another_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", anothers[answers_of(desk)->adds]);
}

static bool another_taken(struct desk *desk, int n)
{
	answers_of(desk)->adds = n == 1;
	answers_of(desk)->added = (struct log_recipe_ingredient){ .adding = ADD_AT_START };
	return true;
}

static void added_said(const struct desk *desk, struct text *text)
{
	const char *known = answers_of(desk)->added.known;

	text_add(text, "%s", known[0] != '\0' ? known : "on no list");
}

static bool added_taken(struct desk *desk, int n)
{
	ingredient_is_choice(&answers_of(desk)->added, n);
	return true;
}

static void added_name_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", answers_of(desk)->added.name);
}

static bool added_name_typed(struct desk *desk, const char *text)
{
	return ingredient_name_typed(desk, &answers_of(desk)->added, text);
}

static void added_amount_now(const struct desk *desk, struct text *text)
{
	ingredient_amount_words(desk, &answers_of(desk)->added, text);
}

static bool added_amount_typed(struct desk *desk, const char *text)
{
	return ingredient_amount_typed(desk, &answers_of(desk)->added, text);
}

/* Among the others, then: one more? */
static bool added_when_taken(struct desk *desk, int n)
{
	struct own_answers *answers = answers_of(desk);
	size_t count = answers->recipe.ingredient_count;
	size_t at;

	answers->added.adding = (enum adding)n;
	at = recipe_put_line(&answers->recipe, count, &answers->added);
	memmove(&answers->left_out[at + 1], &answers->left_out[at], (count - at) * sizeof(answers->left_out[0]));
	answers->left_out[at] = false;
	answers->adds = false;
	if (!may_add(desk))
		return true;
	entry_ask(desk, ANOTHER);
	return false;
}

/* --- its source, and the act --------------------------------------------------------------------------- */

static void source_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", recipe_of(desk)->source);
}

static bool source_typed(struct desk *desk, const char *text)
{
	struct log_recipe *recipe = recipe_of(desk);
	char source[sizeof(recipe->source)];

	if (text[0] == '\0' || !text_copy(source, sizeof(source), text)) {
		desk_say(desk, ROLE_CAUTION, "Say where it comes from, or: %s.", SOURCE_USUAL);
		return false;
	}
	return text_copy(recipe->source, sizeof(recipe->source), source);
}

/* --- what else there is of one that is there ------------------------------------------------ */

static const char *const uses[] = { "in use", "put away", NULL };

static const char *const alls[] = { "that is all", "pectin, boiling, headspace and so on", NULL };

static const char *pectin_at(const struct desk *desk, int n)
{
	(void)desk;
	return n < PECTIN_COUNT ? pectin_words((enum pectin)n) : NULL;
}

/* A copy brings those of another's sheet, so a new one is asked too. */
static bool has_sheet(const struct desk *desk)
{
	const struct log_recipe *recipe = recipe_of(desk);

	return (is_new(desk) || answers_of(desk)->all) &&
	       (recipe->pectin == PECTIN_LOW_METHOXYL || recipe->sheet_minutes > 0);
}

static const int headspaces[] = { 125, 250, 500, 750, 1000, 1250, 1500 };

/* What stands there, where it is none of these. */
static int headspace_count(const struct desk *desk)
{
	(void)desk;
	return 1 + (int)(sizeof(headspaces) / sizeof(headspaces[0]));
}

static void headspace_words_at(const struct desk *desk, int n, char *buffer, size_t size)
{
	char words[24];

	headspace_words(n > 0 ? headspaces[n - 1] : recipe_of(desk)->headspace_thou, words, sizeof(words));
	(void)snprintf(buffer, size, "%s%s", words, n == 0 ? ", as it is" : "");
}

static void headspace_said(const struct desk *desk, struct text *text)
{
	char words[24];

	headspace_words(recipe_of(desk)->headspace_thou, words, sizeof(words));
	text_add(text, "%s", words);
}

static bool headspace_taken(struct desk *desk, int n)
{
	if (n > 0)
		recipe_of(desk)->headspace_thou = headspaces[n - 1];
	return true;
}

static void most_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%d", recipe_of(desk)->boil_off_high_percent);
}

static bool most_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, recipe_of(desk)->boil_off_low_percent, RECIPE_PERCENT_MAX,
	                         RECIPE_PERCENT_MAX, "What boils off at most", &recipe_of(desk)->boil_off_high_percent);
}

static const char *const gels[] = { "when its time is over", "when it gels: by temperature or sheet", NULL };

static int gel_now(const struct desk *desk)
{
	return recipe_of(desk)->gel_test != GEL_TEST_NONE;
}

static bool gel_taken(struct desk *desk, int n)
{
	recipe_of(desk)->gel_test = n == 1 ? GEL_TEST_TEMPERATURE : GEL_TEST_NONE;
	return true;
}

static void caution_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", recipe_of(desk)->caution);
}

static bool caution_typed(struct desk *desk, const char *text)
{
	struct log_recipe *recipe = recipe_of(desk);
	char caution[sizeof(recipe->caution)];

	if (text_copy(caution, sizeof(caution), text))
		return text_copy(recipe->caution, sizeof(recipe->caution), caution);
	desk_say(desk, ROLE_CAUTION, "In fewer words, at most %d letters.", (int)sizeof(caution) - 1);
	return false;
}

/* The one it is like, as its copy was begun. */
static bool as_begun(const struct desk *desk, struct log_recipe *out)
{
	const struct recipe *like = kitchen_recipe_named(desk->kitchen, answers_of(desk)->like);

	return like != NULL && recipe_begin_own(like, out, NULL);
}

/* As answered, without the lines that are left out and what held for others. */
static void read_answers(const struct desk *desk, struct log_recipe *out)
{
	const struct own_answers *answers = answers_of(desk);
	struct log_recipe was;

	*out = answers->recipe;
	out->ingredient_count = 0;
	for (size_t i = 0; i < answers->recipe.ingredient_count; i++)
		if (!answers->left_out[i])
			out->ingredients[out->ingredient_count++] = answers->recipe.ingredients[i];
	if (is_new(desk) && as_begun(desk, &was))
		recipe_keep_what_holds(&was, out);
}

/* What does not hold for it of the one it is like, and its acid; nothing: all does. */
static const char *changed_words(const struct desk *desk)
{
	struct own_answers *answers = answers_of(desk);
	struct text text = TEXT_OVER(answers->changed);
	struct log_recipe was;
	struct log_recipe now;

	if (!as_begun(desk, &was))
		return "";
	read_answers(desk, &now);
	recipe_changed_words(&was, &now, desk_units(desk), &text);
	recipe_left_out_words(kitchen_recipe_named(desk->kitchen, answers->like), &text);
	return answers->changed;
}

static bool is_changed(const struct desk *desk)
{
	return is_new(desk) && changed_words(desk)[0] != '\0';
}

static const char *const saves[] = { "keep it so", NULL };

static bool save_taken(struct desk *desk, int n)
{
	(void)desk;
	(void)n;
	return true;
}

static bool own_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	struct log_recipe recipe;
	struct recipe_standing standing;

	read_answers(desk, &recipe);
	kitchen_recipe_draft_stands(&recipe, &standing);
	text_add(noted, "%s, %s", recipe.name, standing.words);
	if (is_there(desk)) {
		recipe_draft_is(desk, &recipe);
		return true;
	}
	return kitchen_put_recipe(desk->kitchen, &recipe, fault);
}

/* That it is not a tested one is no good news. */
static void own_then(struct desk *desk)
{
	struct recipe_standing standing;
	struct log_recipe recipe;

	read_answers(desk, &recipe);
	kitchen_recipe_draft_stands(&recipe, &standing);
	if (is_there(desk))
		desk_say(desk, ROLE_DONE, "Noted. s saves the recipe.");
	else if (standing.origin != ORIGIN_OWN_CLASS)
		desk_say(desk, ROLE_CAUTION, "Noted (u undoes): %s, %s.", recipe.name, standing.words);
}

static const struct question own_questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "Like",
	  .asks = "Which recipe is it like? Type letters.",
	  .help = "All of it is copied, and changed line by line.",
	  .asked = is_new,
	  .count = recipe_choices,
	  .words = recipe_choice_words,
	  .word = recipe_choice_name,
	  .none = "No recipe by that name.",
	  .offers = like_now,
	  .answer = like_said,
	  .take = like_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Fruit",
	  .asks = "Of which fruit is it made?",
	  .help = "Type letters.",
	  .asked = has_fruit,
	  .nth = fruit_word,
	  .word = fruit_word,
	  .none = "No fruit by that name is known.",
	  .offers = fruit_now,
	  .answer = fruit_said,
	  .take = fruit_taken },
	{ .kind = ASK_TEXT,
	  .name = "Name",
	  .asks = "What is it called?",
	  .text = name_now,
	  .answer = name_said,
	  .typed = name_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Process",
	  .asks = "Which food of the process tables is it? Type letters.",
	  .count = foods_and_none,
	  .words = food_words,
	  .word = food_word,
	  .offers = food_now,
	  .answer = food_said,
	  .take = food_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Acidity",
	  .asks = "How acid is it?",
	  .help = "Where it is in doubt: low-acid.",
	  .asked = has_no_food,
	  .nth = acidity_at,
	  KEEPS_CHOICE(struct own_answers, recipe.acidity) },
	{ .kind = ASK_CHOICE,
	  .name = "Packs",
	  .asks = "How may it be packed?",
	  .help = "Space on one keeps it or leaves it.",
	  .asked = has_packs,
	  .count = packs_and_on,
	  .words = packs_words,
	  .answer = packs_said,
	  .take = packs_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Jars",
	  .asks = "Into which jars may it go?",
	  .help = "Space on one keeps it or leaves it.",
	  .asked = has_jars,
	  .count = jars_and_on,
	  .words = jars_words,
	  .answer = jars_said,
	  .take = jars_taken },
	{ .kind = ASK_TEXT,
	  .name = "Line 1",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_0,
	  .unit = line_beside_0,
	  .text = line_now_0,
	  .answer = line_said_0,
	  .typed = line_typed_0 },
	{ .kind = ASK_TEXT,
	  .name = "Line 2",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_1,
	  .unit = line_beside_1,
	  .text = line_now_1,
	  .answer = line_said_1,
	  .typed = line_typed_1 },
	{ .kind = ASK_TEXT,
	  .name = "Line 3",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_2,
	  .unit = line_beside_2,
	  .text = line_now_2,
	  .answer = line_said_2,
	  .typed = line_typed_2 },
	{ .kind = ASK_TEXT,
	  .name = "Line 4",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_3,
	  .unit = line_beside_3,
	  .text = line_now_3,
	  .answer = line_said_3,
	  .typed = line_typed_3 },
	{ .kind = ASK_TEXT,
	  .name = "Line 5",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_4,
	  .unit = line_beside_4,
	  .text = line_now_4,
	  .answer = line_said_4,
	  .typed = line_typed_4 },
	{ .kind = ASK_TEXT,
	  .name = "Line 6",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_5,
	  .unit = line_beside_5,
	  .text = line_now_5,
	  .answer = line_said_5,
	  .typed = line_typed_5 },
	{ .kind = ASK_TEXT,
	  .name = "Line 7",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_6,
	  .unit = line_beside_6,
	  .text = line_now_6,
	  .answer = line_said_6,
	  .typed = line_typed_6 },
	{ .kind = ASK_TEXT,
	  .name = "Line 8",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_7,
	  .unit = line_beside_7,
	  .text = line_now_7,
	  .answer = line_said_7,
	  .typed = line_typed_7 },
	{ .kind = ASK_TEXT,
	  .name = "Line 9",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_8,
	  .unit = line_beside_8,
	  .text = line_now_8,
	  .answer = line_said_8,
	  .typed = line_typed_8 },
	{ .kind = ASK_TEXT,
	  .name = "Line 10",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_9,
	  .unit = line_beside_9,
	  .text = line_now_9,
	  .answer = line_said_9,
	  .typed = line_typed_9 },
	{ .kind = ASK_TEXT,
	  .name = "Line 11",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_10,
	  .unit = line_beside_10,
	  .text = line_now_10,
	  .answer = line_said_10,
	  .typed = line_typed_10 },
	{ .kind = ASK_TEXT,
	  .name = "Line 12",
	  .asks = "How much of it in one batch?",
	  .help = "Enter keeps it. Nothing: it is left out.",
	  .asked = has_line_11,
	  .unit = line_beside_11,
	  .text = line_now_11,
	  .answer = line_said_11,
	  .typed = line_typed_11 },
	{ .kind = ASK_CHOICE,
	  .name = ANOTHER,
	  .asks = "Does anything else go in?",
	  .asked = may_add,
	  .list = anothers,
	  .offers = another_now,
	  .answer = another_said,
	  .take = another_taken },
	{ .kind = ASK_CHOICE,
	  .name = "What",
	  .asks = "What is it? Type letters.",
	  .help = "This decides what the recipe counts as.",
	  .asked = adds,
	  .count = ingredient_choices,
	  .words = ingredient_choice_words,
	  .word = ingredient_choice_name,
	  .also = ingredient_choice_also,
	  .answer = added_said,
	  .take = added_taken },
	{ .kind = ASK_TEXT,
	  .name = "Called",
	  .asks = "What do you call it?",
	  .asked = adds_unlisted,
	  .text = added_name_now,
	  .typed = added_name_typed },
	{ .kind = ASK_TEXT,
	  .name = "Amount",
	  .asks = "How much of it in one batch?",
	  .help = "With its unit: 5 cups, 1 lb 8 oz, 2 tbsp.",
	  .asked = adds,
	  .text = added_amount_now,
	  .typed = added_amount_typed },
	{ .kind = ASK_CHOICE,
	  .name = "When",
	  .asks = "When does it go in?",
	  .asked = adds,
	  .list = ingredient_whens,
	  .take = added_when_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Use",
	  .asks = "Is it still used?",
	  .asked = is_there,
	  .list = uses,
	  KEEPS_YES(struct own_answers, recipe.retired) },
	{ .kind = ASK_CHOICE,
	  .name = "More",
	  .asks = "Is there more to change of it?",
	  .asked = is_there,
	  .list = alls,
	  KEEPS_YES(struct own_answers, all) },
	{ .kind = ASK_CHOICE,
	  .name = "Pectin",
	  .asks = "Which pectin goes in?",
	  .asked = asks_all,
	  .nth = pectin_at,
	  KEEPS_CHOICE(struct own_answers, recipe.pectin) },
	{ .kind = ASK_TEXT,
	  .name = "Its sheet",
	  .asks = "How long does the sheet of its pectin process it at your elevation?",
	  .help = "Nothing: it prints none.",
	  .asked = has_sheet,
	  .counts = "minutes",
	  KEEPS_NUMBER(struct own_answers, recipe.sheet_minutes, 1, SHEET_MINUTES_MAX, 0, "Minutes of its sheet") },
	{ .kind = ASK_TEXT,
	  .name = "In a pot",
	  .asks = "How many batches may one pot hold?",
	  .asked = asks_all,
	  KEEPS_NUMBER(struct own_answers, recipe.multiple_max, 1, RECIPE_MULTIPLE_MAX, 1, "Batches in one pot") },
	{ .kind = ASK_TEXT,
	  .name = "Boiled",
	  .asks = "How long at the full boil?",
	  .help = "0: off as soon as it boils again.",
	  .asked = asks_all,
	  .counts = "seconds",
	  KEEPS_NUMBER(struct own_answers, recipe.boil_hold_s, 0, RECIPE_HOLD_MAX_S, 0, "Seconds at the boil") },
	{ .kind = ASK_CHOICE,
	  .name = "Headspace",
	  .asks = "How much headspace?",
	  .asked = asks_all,
	  .count = headspace_count,
	  .words = headspace_words_at,
	  .answer = headspace_said,
	  .take = headspace_taken },
	{ .kind = ASK_TEXT,
	  .name = "Foam",
	  .asks = "How much of the pot is left free for foam?",
	  .asked = asks_all,
	  .counts = "%",
	  KEEPS_NUMBER(struct own_answers, recipe.foam_percent, 0, RECIPE_PERCENT_MAX, 0, "Room for foam") },
	{ .kind = ASK_TEXT,
	  .name = "Boils off",
	  .asks = "How much boils off at least?",
	  .asked = asks_all,
	  .counts = "%",
	  KEEPS_NUMBER(struct own_answers, recipe.boil_off_low_percent, 0, RECIPE_PERCENT_MAX, 0, "What boils off") },
	{ .kind = ASK_TEXT,
	  .name = "At most",
	  .asks = "How much boils off at most?",
	  .asked = asks_all,
	  .counts = "%",
	  .text = most_now,
	  .typed = most_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Done",
	  .asks = "When is it done?",
	  .asked = asks_all,
	  .list = gels,
	  .offers = gel_now,
	  .take = gel_taken },
	{ .kind = ASK_TEXT,
	  .name = "Caution",
	  .asks = "What is to be said with it?",
	  .help = "Nothing: nothing.",
	  .asked = asks_all,
	  .text = caution_now,
	  .typed = caution_typed },
	{ .kind = ASK_TEXT,
	  .name = "Source",
	  .asks = "Where does it come from?",
	  .help = "A changed recipe is no longer the printed one.",
	  .text = source_now,
	  .typed = source_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Changed",
	  .asks = "It is not as the one it is like. Keep it so?",
	  .put = changed_words,
	  .stop = true,
	  .asked = is_changed,
	  .list = saves,
	  .take = save_taken },
};

const struct entry_form own_recipe_form = {
	.name = "recipe",
	.title = "A recipe of your own",
	.changes = "Your recipe as it is now",
	.questions = own_questions,
	.count = sizeof(own_questions) / sizeof(own_questions[0]),
	.size = sizeof(struct own_answers),
	.begin = begin,
	.done = own_done,
	.then = own_then,
};
