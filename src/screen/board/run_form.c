/*
 * run_form.c - a juicer run that begins, or what was written down of one: fruit and weight, and
 * for the first run of a station when its water must be looked at.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "engine/recipe/amount.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/shelf.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

struct run_answers {
	int64_t id;                   /* what is corrected; 0: one begins */
	struct log_station station;   /* where */
	bool knows_water;             /* when it must be looked at stands in the house */
	char fruit[NAME_MAX_BYTES];   /* "": not said yet */
	char strange[NAME_MAX_BYTES]; /* a fruit that no recipe knows, asked about once */
	int64_t mg;                   /* 0: not said yet */
};

static struct run_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* --- what it begins with ------------------------------------------------------------------ */

static bool begin_corrected(struct desk *desk, int64_t id)
{
	struct fault fault = { 0 };
	struct log_run run;

	if (!kitchen_run_get(desk->kitchen, id, &run, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	text_copy(answers_of(desk)->fruit, NAME_MAX_BYTES, run.fruit);
	text_copy(answers_of(desk)->strange, NAME_MAX_BYTES, run.fruit); /* it was asked about then */
	answers_of(desk)->mg = run.fruit_mg;
	return true;
}

/* As planned, where the day goes by a plan. */
static bool begin(struct desk *desk, int64_t id)
{
	struct run_answers *answers = answers_of(desk);
	const struct strip *strip = desk_selected(desk);
	const struct log_plan_run *planned;

	answers->id = id;
	if (id != 0)
		return begin_corrected(desk, id);
	if (strip == NULL)
		return false;
	answers->station = strip->station;
	answers->knows_water = station_water_minutes(&kitchen_board(desk->kitchen)->house, &strip->station) > 0;
	planned = desk_planned_run(desk, strip->station.id);
	if (planned != NULL) {
		text_copy(answers->fruit, sizeof(answers->fruit), planned->fruit);
		answers->mg = planned->fruit_mg;
	}
	return true;
}

/* --- its questions ---------------------------------------------------------------------------- */

/* No clock of a pan that boils dry is forgotten, and none is guessed. */
static bool asks_water(const struct desk *desk)
{
	return answers_of(desk)->id == 0 && !answers_of(desk)->knows_water;
}

static void water_now(const struct desk *desk, struct text *text)
{
	if (answers_of(desk)->station.water_minutes > 0)
		text_add(text, "%d", answers_of(desk)->station.water_minutes);
}

static bool water_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 1, STATION_WATER_MAX, 1, "Its water",
	                         &answers_of(desk)->station.water_minutes);
}

static void fruit_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", answers_of(desk)->fruit);
}

static bool fruit_typed(struct desk *desk, const char *text)
{
	struct run_answers *answers = answers_of(desk);

	if (text[0] == '\0' || strlen(text) >= sizeof(answers->fruit)) {
		desk_say(desk, ROLE_CAUTION, "Type the name of the fruit, such as grapes.");
		return false;
	}
	if (!text_same_name(text, answers->fruit) && answers->id == 0)
		answers->mg = 0; /* what was planned was of another */
	text_copy(answers->fruit, sizeof(answers->fruit), text);
	/* Whatever else is typed here would stand on every jar. */
	if (kitchen_knows_fruit(desk->kitchen, text) || text_same_name(text, answers->strange))
		return true;
	text_copy(answers->strange, sizeof(answers->strange), text);
	desk_say(desk, ROLE_CAUTION,
	         "No recipe here is made of \"%.40s\". Is it a fruit? Then Enter again; or type another, such as "
	         "grapes.",
	         text);
	return false;
}

static void weight_beside(const struct desk *desk, int n, struct text *text)
{
	(void)n;
	entry_unit_beside(desk, MEASURE_MASS, SUPPLY_FRUIT, text);
}

static void weight_now(const struct desk *desk, struct text *text)
{
	if (answers_of(desk)->mg == 0)
		return;
	entry_amount_now(desk, MEASURE_MASS, SUPPLY_FRUIT, answers_of(desk)->mg, text);
}

static bool weight_typed(struct desk *desk, const char *text)
{
	return entry_read_supply(desk, text, SUPPLY_FRUIT, "", &answers_of(desk)->mg);
}

/* --- the act --------------------------------------------------------------------------------------- */

static bool start(struct desk *desk, struct fault *fault)
{
	struct run_answers *answers = answers_of(desk);
	int64_t run_id;

	if (!answers->knows_water && !kitchen_put_station(desk->kitchen, &answers->station, fault))
		return false;
	answers->knows_water = true;
	return kitchen_start_run(desk->kitchen, answers->station.id, answers->fruit, answers->mg, &run_id, fault);
}

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	struct run_answers *answers = answers_of(desk);
	char words[48];

	amount_words(MEASURE_MASS, answers->mg, desk_units(desk), words, sizeof(words));
	text_add(noted, "%s, %s%s", answers->fruit, words, answers->id == 0 ? "; its water clock runs" : "");
	if (answers->id != 0)
		return kitchen_run_fruit(desk->kitchen, answers->id, answers->fruit, answers->mg, fault);
	return start(desk, fault);
}

static const struct question questions[] = {
	{ .kind = ASK_TEXT,
	  .name = "Water",
	  .asks = "After how many minutes must its water be looked at?",
	  .help = WATER_HELP,
	  .asked = asks_water,
	  .counts = "min",
	  .text = water_now,
	  .typed = water_typed },
	{ .kind = ASK_TEXT,
	  .name = "Fruit",
	  .asks = "Which fruit is in the basket?",
	  .help = "Its name, such as grapes.",
	  .text = fruit_now,
	  .typed = fruit_typed },
	{ .kind = ASK_TEXT,
	  .name = "Weight",
	  .asks = "How much of it?",
	  .help = "With another unit, that one counts: 5.5 kg, 1 lug.",
	  .unit = weight_beside,
	  .text = weight_now,
	  .typed = weight_typed },
};

const struct entry_form run_form = {
	.name = "run",
	.title = "A run in the juicer",
	.changes = "A run as it really was",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = sizeof(struct run_answers),
	.begin = begin,
	.done = done,
};
