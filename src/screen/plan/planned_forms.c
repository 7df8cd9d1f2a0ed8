/*
 * planned_forms.c - what is planned for a day: the fruit of a juicer's basket, a batch.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "engine/recipe/amount.h"
#include "engine/recipe/fruit.h"
#include "kitchen/board/book.h"
#include "kitchen/plan/plan.h"
#include "kitchen/stock/shelf.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"
#include "screen/ui/recipe_choice.h"

/* --- shared by both ------------------------------------------------------------------- */

static void number_words(int number, struct text *text)
{
	text_add(text, "%d", number);
}

void plan_time_now(int minutes, struct text *text)
{
	char words[8];

	plan_time_words(minutes, words, sizeof(words));
	text_add(text, "%s", words);
}

bool plan_time_typed(struct desk *desk, const char *text, int *minutes)
{
	struct fault fault = { 0 };

	*minutes = PLAN_ANY_TIME;
	if (text[0] == '\0' || plan_time_read(text, minutes, &fault))
		return true;
	desk_say_fault(desk, &fault);
	return false;
}

static void times_words(int times, struct text *text)
{
	if (times > 1)
		text_add(text, ", %s", count_words(times, "time").words);
}

/* --- fruit ---------------------------------------------------------------------------- */

struct run_answers {
	struct log_plan_run run;
	int times;
};

static struct run_answers *run_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static bool run_begin(struct desk *desk, int64_t id)
{
	(void)id;
	run_of(desk)->run.fruit_mg = kitchen_plan_house(desk->kitchen)->charge_mg;
	run_of(desk)->run.ready_minutes = PLAN_ANY_TIME;
	run_of(desk)->times = 1;
	return true;
}

/* The n-th fruit that is planned already, each once; NULL: there are no more. */
static const char *planned_fruit(const struct desk *desk, int n)
{
	size_t count;
	const struct log_plan_run *runs = kitchen_plan_runs(desk->kitchen, &count);

	for (size_t i = 0; i < count; i++) {
		bool again = false;

		for (size_t before = 0; before < i; before++)
			again = again || fruit_same(runs[before].fruit, runs[i].fruit);
		if (!again && !runs[i].dries && n-- == 0)
			return runs[i].fruit;
	}
	return NULL;
}

static bool is_planned(const struct desk *desk, const char *fruit)
{
	const char *planned;

	for (int n = 0; (planned = planned_fruit(desk, n)) != NULL; n++)
		if (fruit_same(planned, fruit))
			return true;
	return false;
}

/* What is planned already, as the house calls it, then all fruit that is known. */
static const char *fruit_word(const struct desk *desk, int n)
{
	int planned = 0;

	while (planned_fruit(desk, planned) != NULL)
		planned++;
	if (n < planned)
		return planned_fruit(desk, n);
	n -= planned;
	for (size_t i = 0; i < known_ingredient_count; i++)
		if (known_ingredients[i].is == INGREDIENT_FRUIT && !is_planned(desk, known_ingredients[i].name) &&
		    n-- == 0)
			return known_ingredients[i].name;
	return NULL;
}

/* The last one is any other name. */
static int fruits(const struct desk *desk)
{
	int count = 0;

	while (fruit_word(desk, count) != NULL)
		count++;
	return count + 1;
}

static void fruit_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	const char *fruit = fruit_word(desk, n);
	char typed[ENTRY_MAX];

	entry_letters(desk, typed, sizeof(typed));
	if (fruit != NULL)
		text_copy(buffer, size, fruit);
	else
		(void)snprintf(buffer, size, typed[0] != '\0' ? "(call it %.60s)" : "(another: type its name)", typed);
}

static int fruit_now(const struct desk *desk)
{
	const char *fruit;

	for (int n = 0; (fruit = fruit_word(desk, n)) != NULL; n++)
		if (strcmp(fruit, run_of(desk)->run.fruit) == 0)
			return n;
	return run_of(desk)->run.fruit[0] != '\0' ? fruits(desk) - 1 : 0;
}

static void fruit_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", run_of(desk)->run.fruit);
}

static bool fruit_taken(struct desk *desk, int n)
{
	struct log_plan_run *run = &run_of(desk)->run;
	const char *fruit = fruit_word(desk, n);
	char typed[ENTRY_MAX];
	char name[sizeof(run->fruit)];

	entry_letters(desk, typed, sizeof(typed));
	if (fruit == NULL && typed[0] == '\0' && run->fruit[0] != '\0')
		return true; /* as it was called before */
	if (fruit == NULL && typed[0] == '\0') {
		desk_say(desk, ROLE_CAUTION, "Type the name of the fruit.");
		return false;
	}
	if (!text_copy(name, sizeof(name), fruit != NULL ? fruit : typed)) {
		desk_say(desk, ROLE_CAUTION, "Give it a shorter name, at most %d letters.", NAME_MAX_BYTES - 1);
		return false;
	}
	return text_copy(run->fruit, sizeof(run->fruit), name);
}

static void weight_now(const struct desk *desk, struct text *text)
{
	entry_amount_now(desk, MEASURE_MASS, SUPPLY_FRUIT, run_of(desk)->run.fruit_mg, text);
}

static void weight_beside(const struct desk *desk, int n, struct text *text)
{
	int64_t by = 0;
	char words[64];

	(void)n;
	entry_unit_beside(desk, MEASURE_MASS, SUPPLY_FRUIT, text);
	if (!kitchen_sold_by(desk->kitchen, SUPPLY_FRUIT, "", &by, NULL) || by == 0)
		return;
	amount_words(MEASURE_MASS, by, desk_units(desk), words, sizeof(words));
	text_add(text, "%sbought by %s", text->used > 0 ? "; " : "", words);
}

static bool weight_typed(struct desk *desk, const char *text)
{
	return entry_read_supply(desk, text, SUPPLY_FRUIT, "", &run_of(desk)->run.fruit_mg);
}

static void baskets_now(const struct desk *desk, struct text *text)
{
	number_words(run_of(desk)->times, text);
}

static bool baskets_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 1, PLAN_RUNS_MAX, 1, "Baskets", &run_of(desk)->times);
}

static void arrives_now(const struct desk *desk, struct text *text)
{
	plan_time_now(run_of(desk)->run.ready_minutes, text);
}

static bool arrives_typed(struct desk *desk, const char *text)
{
	return plan_time_typed(desk, text, &run_of(desk)->run.ready_minutes);
}

static bool run_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct run_answers *answers = run_of(desk);
	char words[64];

	amount_words(MEASURE_MASS, answers->run.fruit_mg, desk_units(desk), words, sizeof(words));
	text_add(noted, "planned %s %s", words, answers->run.fruit);
	times_words(answers->times, noted);
	return kitchen_plan_add_runs(desk->kitchen, &answers->run, answers->times, fault);
}

static const struct question run_questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "Fruit",
	  .asks = "Which fruit? Type letters.",
	  .count = fruits,
	  .words = fruit_words,
	  .word = fruit_word,
	  .any_name = true,
	  .offers = fruit_now,
	  .answer = fruit_said,
	  .take = fruit_taken },
	{ .kind = ASK_TEXT,
	  .name = "A basket",
	  .asks = "How much goes into one basket?",
	  .help = "With another unit, that one counts: 12 lb, 5.5 kg.",
	  .unit = weight_beside,
	  .text = weight_now,
	  .answer = weight_now,
	  .typed = weight_typed },
	{ .kind = ASK_TEXT,
	  .name = "Baskets",
	  .asks = "How many such baskets?",
	  .counts = "times",
	  .text = baskets_now,
	  .typed = baskets_typed },
	{ .kind = ASK_TEXT,
	  .name = "Arrives",
	  .asks = "When does it arrive?",
	  .help = "A time like 8:30. Nothing: it is here.",
	  .text = arrives_now,
	  .typed = arrives_typed },
};

const struct entry_form planned_run_form = {
	.name = "run",
	.title = "Fruit for the plan",
	.questions = run_questions,
	.count = sizeof(run_questions) / sizeof(run_questions[0]),
	.size = sizeof(struct run_answers),
	.begin = run_begin,
	.done = run_done,
	.then = plan_show_rows,
};

/* --- a batch -------------------------------------------------------------------------------- */

struct batch_answers {
	struct log_plan_batch batch;
	int times;
};

static struct log_plan_batch *batch_of(const struct desk *desk)
{
	struct batch_answers *answers = entry_answers(desk);

	return &answers->batch;
}

static int *times_of(const struct desk *desk)
{
	struct batch_answers *answers = entry_answers(desk);

	return &answers->times;
}

static const struct recipe *recipe_of(const struct desk *desk)
{
	return kitchen_recipe_named(desk->kitchen, batch_of(desk)->recipe);
}

static bool batch_begin(struct desk *desk, int64_t id)
{
	(void)id;
	batch_of(desk)->multiple = 1;
	batch_of(desk)->ready_minutes = PLAN_ANY_TIME;
	batch_of(desk)->after_runs = PLAN_RUNS_AS_NEEDED;
	*times_of(desk) = 1;
	return true;
}

static int recipe_now(const struct desk *desk)
{
	const char *name;

	for (int n = 0; (name = recipe_choice_name(desk, n)) != NULL; n++)
		if (strcmp(name, batch_of(desk)->recipe) == 0)
			return n;
	return 0;
}

static void recipe_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", batch_of(desk)->recipe);
}

/* Jars, packs and numbers of another are none of it. */
static bool recipe_taken(struct desk *desk, int n)
{
	const struct recipe *recipe = kitchen_recipe(desk->kitchen, (size_t)n);
	struct fault fault = { 0 };

	if (!recipe_may_start(recipe, &fault) || !recipe_has_amounts(recipe, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	if (strcmp(batch_of(desk)->recipe, recipe->name) != 0) {
		batch_of(desk)->pack[0] = '\0';
		batch_of(desk)->jar[0] = '\0';
		batch_of(desk)->multiple = 1;
	}
	return text_copy(batch_of(desk)->recipe, sizeof(batch_of(desk)->recipe), recipe->name);
}

static const char *pack_at(const struct desk *desk, int n)
{
	return recipe_pack_says(recipe_of(desk), n);
}

static bool has_packs(const struct desk *desk)
{
	return pack_at(desk, 0) != NULL;
}

static int pack_now(const struct desk *desk)
{
	char word[WORD_MAX_BYTES];

	for (int n = 0; recipe_pack(recipe_of(desk), n, word, sizeof(word)); n++)
		if (strcmp(word, batch_of(desk)->pack) == 0)
			return n;
	return recipe_pack_offered(recipe_of(desk));
}

static void pack_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", pack_words(batch_of(desk)->pack));
}

static bool pack_taken(struct desk *desk, int n)
{
	return recipe_pack(recipe_of(desk), n, batch_of(desk)->pack, sizeof(batch_of(desk)->pack));
}

static const char *jar_at(const struct desk *desk, int n)
{
	return recipe_jar_says(recipe_of(desk), batch_of(desk)->pack, n);
}

/* As before, else the usual one. */
static int jar_now(const struct desk *desk)
{
	const struct jar_size *usual = usual_jar(recipe_of(desk));
	const char *jar = batch_of(desk)->jar[0] != '\0' ? batch_of(desk)->jar : usual != NULL ? usual->name : "";
	char word[WORD_MAX_BYTES];

	for (int n = 0; recipe_jar(recipe_of(desk), batch_of(desk)->pack, n, word, sizeof(word)); n++)
		if (strcmp(word, jar) == 0)
			return n;
	return 0;
}

static void jar_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", jar_size_words(batch_of(desk)->jar, 2));
}

static bool jar_taken(struct desk *desk, int n)
{
	return recipe_jar(recipe_of(desk), batch_of(desk)->pack, n, batch_of(desk)->jar, sizeof(batch_of(desk)->jar));
}

static bool may_multiply(const struct desk *desk)
{
	return recipe_of(desk) != NULL && multiple_allowed(recipe_of(desk)) > 1;
}

static void in_pot_now(const struct desk *desk, struct text *text)
{
	number_words(batch_of(desk)->multiple, text);
}

static void in_pot_unit(const struct desk *desk, int n, struct text *text)
{
	(void)n;
	text_add(text, "times, at most %d", recipe_of(desk) != NULL ? multiple_allowed(recipe_of(desk)) : 1);
}

static bool in_pot_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 1, multiple_allowed(recipe_of(desk)), 1, "Times the recipe in one pot",
	                         &batch_of(desk)->multiple);
}

static void pots_now(const struct desk *desk, struct text *text)
{
	number_words(*times_of(desk), text);
}

static bool pots_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 1, PLAN_BATCHES_MAX, 1, "Such batches", times_of(desk));
}

static void not_before_now(const struct desk *desk, struct text *text)
{
	plan_time_now(batch_of(desk)->ready_minutes, text);
}

static bool not_before_typed(struct desk *desk, const char *text)
{
	return plan_time_typed(desk, text, &batch_of(desk)->ready_minutes);
}

/* As much as it needs; none of this day; after so many baskets. */
static int waits(const struct desk *desk)
{
	size_t runs;

	(void)kitchen_plan_runs(desk->kitchen, &runs);
	return 2 + (int)runs;
}

static bool has_runs(const struct desk *desk)
{
	return waits(desk) > 2;
}

static void wait_words(const struct desk *desk, int n, char *buffer, size_t size)
{
	(void)desk;
	if (n == 0)
		text_copy(buffer, size, "as soon as there is enough of it");
	else if (n == 1)
		text_copy(buffer, size, "it is here already, or none is needed");
	else
		(void)snprintf(buffer, size, "after %d planned %s", n - 1, n == 2 ? "basket" : "baskets");
}

static int wait_now(const struct desk *desk)
{
	return batch_of(desk)->after_runs - PLAN_RUNS_AS_NEEDED;
}

static void wait_said(const struct desk *desk, struct text *text)
{
	char words[64];

	wait_words(desk, wait_now(desk), words, sizeof(words));
	text_add(text, "%s", words);
}

static bool wait_taken(struct desk *desk, int n)
{
	batch_of(desk)->after_runs = n + PLAN_RUNS_AS_NEEDED;
	return true;
}

static bool batch_done(struct desk *desk, struct text *noted, struct fault *fault)
{
	const struct log_plan_batch *batch = batch_of(desk);

	text_add(noted, "planned ");
	if (batch->multiple > 1)
		text_add(noted, "%d x ", batch->multiple);
	text_add(noted, "%s in %s", batch->recipe, jar_size_words(batch->jar, 2));
	times_words(*times_of(desk), noted);
	return kitchen_plan_add_batches(desk->kitchen, batch, *times_of(desk), fault);
}

static const struct question batch_questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "Recipe",
	  .asks = "Which recipe? Type letters.",
	  .count = recipe_choices,
	  .words = recipe_choice_words,
	  .word = recipe_choice_name,
	  .none = "No recipe by that name.",
	  .offers = recipe_now,
	  .answer = recipe_said,
	  .take = recipe_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Pack",
	  .asks = "Which jars and pack?",
	  .asked = has_packs,
	  .nth = pack_at,
	  .passes = true,
	  .offers = pack_now,
	  .answer = pack_said,
	  .take = pack_taken },
	{ .kind = ASK_CHOICE,
	  .name = "Jars",
	  .asks = "Which size?",
	  .nth = jar_at,
	  .word = jar_at,
	  .none = "No process is printed for that pack in any jar it goes in.",
	  .offers = jar_now,
	  .answer = jar_said,
	  .take = jar_taken },
	{ .kind = ASK_TEXT,
	  .name = "In a pot",
	  .asks = "How many times the recipe in one pot?",
	  .asked = may_multiply,
	  .unit = in_pot_unit,
	  .text = in_pot_now,
	  .typed = in_pot_typed },
	{ .kind = ASK_TEXT,
	  .name = "Batches",
	  .asks = "How many such batches, one after the other?",
	  .text = pots_now,
	  .typed = pots_typed },
	{ .kind = ASK_CHOICE,
	  .name = "Juice",
	  .asks = "When will its juice be here?",
	  .asked = has_runs,
	  .count = waits,
	  .words = wait_words,
	  .offers = wait_now,
	  .answer = wait_said,
	  .take = wait_taken },
	{ .kind = ASK_TEXT,
	  .name = "Not before",
	  .asks = "Not before when?",
	  .help = "A time like 10:00. Nothing: at any time.",
	  .text = not_before_now,
	  .typed = not_before_typed },
};

const struct entry_form planned_batch_form = {
	.name = "batch",
	.title = "A batch for the plan",
	.questions = batch_questions,
	.count = sizeof(batch_questions) / sizeof(batch_questions[0]),
	.size = sizeof(struct batch_answers),
	.begin = batch_begin,
	.done = batch_done,
	.then = plan_show_rows,
};
