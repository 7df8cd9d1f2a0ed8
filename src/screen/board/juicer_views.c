/*
 * juicer_views.c - juicer runs as the screen knows them: fruit, weight and water are asked for, juice is measured out.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "base/words.h"
#include "kitchen/house/house.h"
#include "kitchen/pot/pot.h"
#include "kitchen/stock/ahead.h"
#include "kitchen/stock/shelf.h"
#include "screen/board/board_views.h"
#include "screen/board/kind_views.h"
#include "screen/plan/plan_views.h"
#include "screen/ui/desk.h"

/* --- begun -------------------------------------------------------------------------------- */

static bool weight_typed(struct desk *desk, const char *text)
{
	const struct strip *strip = desk_selected(desk);
	struct fault fault = { 0 };
	int64_t mg;
	int64_t run_id;

	if (strip == NULL)
		return true;
	if (!kitchen_read_amount(desk->kitchen, text, SUPPLY_FRUIT, "", &mg, &fault) ||
	    !kitchen_start_run(desk->kitchen, strip->station.id, desk->run_fruit, mg, &run_id, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Run started; its water clock runs. (u undoes)");
	return true;
}

static void ask_weight(struct desk *desk)
{
	const struct strip *strip = desk_selected(desk);
	const struct log_plan_run *planned = strip == NULL ? NULL : desk_planned_run(desk, strip->station.id);
	char weight[48] = "";

	if (planned != NULL && strcmp(planned->fruit, desk->run_fruit) == 0)
		amount_words(MEASURE_MASS, planned->fruit_mg, kitchen_board(desk->kitchen)->house.units, weight,
		             sizeof(weight));
	desk_offer(desk, "Weight, 12 lb or 5.5 kg:", weight, weight_typed);
}

static bool fruit_typed(struct desk *desk, const char *text)
{
	bool again = text_same_name(text, desk->run_fruit);

	if (text[0] == '\0') {
		desk_say(desk, ROLE_CAUTION, "Type the name of the fruit, such as grapes.");
		return false;
	}
	text_copy(desk->run_fruit, sizeof(desk->run_fruit), text);
	/* Whatever else is typed here would stand on every jar. */
	if (!again && !kitchen_knows_fruit(desk->kitchen, text)) {
		desk_say(
		    desk, ROLE_CAUTION,
		    "No recipe here is made of \"%.40s\". Is it a fruit? Then Enter again; or type another, such as "
		    "grapes.",
		    text);
		return false;
	}
	desk->message[0] = '\0';
	ask_weight(desk);
	return false; /* the line stays open for the second question */
}

/* As planned, where the day goes by a plan. */
static void ask_fruit(struct desk *desk, int64_t station_id)
{
	const struct log_plan_run *planned = desk_planned_run(desk, station_id);

	desk->run_fruit[0] = '\0'; /* none was typed yet */
	desk_offer(desk, "Fruit in the basket:", planned == NULL ? "" : planned->fruit, fruit_typed);
	desk_say(desk, ROLE_QUIET, "Its name, such as grapes. The weight is asked next.");
}

/* No clock of a pan that boils dry is forgotten, and none is guessed. */
static bool water_typed(struct desk *desk, const char *text)
{
	const struct strip *strip = desk_selected(desk);
	struct log_station station;
	struct fault fault = { 0 };

	if (strip == NULL)
		return true;
	station = strip->station;
	if (!word_number(text, 1, STATION_WATER_MAX, &station.water_minutes)) {
		desk_say(desk, ROLE_CAUTION, "Type minutes, 1 to %d.", STATION_WATER_MAX);
		return false;
	}
	if (!kitchen_put_station(desk->kitchen, &station, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	ask_fruit(desk, station.id);
	return false; /* the line stays open for the fruit */
}

static const char *start_words(const struct desk *desk)
{
	(void)desk;
	return "start a run";
}

static void start(struct desk *desk, const struct strip *strip)
{
	if (station_water_minutes(&kitchen_board(desk->kitchen)->house, &strip->station) > 0) {
		ask_fruit(desk, strip->station.id);
		return;
	}
	desk_ask(desk, "Minutes to water check:", "", water_typed);
	desk_say(desk, ROLE_CAUTION, WATER_HELP);
}

/* --- its juice ------------------------------------------------------------------------------ */

static bool juice_typed(struct desk *desk, const char *text)
{
	const struct strip *strip = desk_selected(desk);
	struct fault fault = { 0 };
	int64_t ul;

	if (strip == NULL || strip->content != STRIP_RUN)
		return true;
	if (!amount_read(text, MEASURE_VOLUME, SUPPLY_JUICE, &ul, &fault) ||
	    !kitchen_juice_out(desk->kitchen, strip->phase.id, ul, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	desk_say(desk, ROLE_DONE, "Noted: the juice is in stock (j), the juicer is free. (u undoes)");
	return true;
}

static void answer(struct desk *desk, const struct strip *strip)
{
	(void)strip;
	desk_ask(desk, "Juice out, 3 qt or 2.8 L:", "", juice_typed);
}

/* When the first juice can be drawn, and how much has been. */
static void drawn_words(const struct desk *desk, const struct strip *strip, struct text *text)
{
	const struct strip_run *in = strip_run(strip);
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;
	char words[48];

	if (strip->rule->name == PHASE_RUN && house->first_juice_minutes > 0 && in->drawn_ul == 0) {
		clock_words_hour(strip->phase.began.wall_ms + house->first_juice_minutes * INT64_C(60000), words,
		                 sizeof(words));
		text_add(text, "first juice about %s (x); ", words);
	}
	amount_words(MEASURE_VOLUME, in->drawn_ul, house->units, words, sizeof(words));
	text_add(text, "%s drawn", in->drawn_ul > 0 ? words : "none");
}

/* --- corrected ------------------------------------------------------------------------------ */

/* "grapes" "24 lb" */
static bool run_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	struct words words;
	int64_t mg;

	if (!words_split(text, &words, &fault) || words.count != 2) {
		desk_say(desk, ROLE_CAUTION, "Write fruit and weight, each in quotes: \"grapes\" \"24 lb\"");
		return false;
	}
	if (!kitchen_read_amount(desk->kitchen, words_at(&words, 1), SUPPLY_FRUIT, "", &mg, &fault) ||
	    !kitchen_run_fruit(desk->kitchen, day_here(desk)->subject.id, words_at(&words, 0), mg, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	day_refresh(desk);
	desk_say(desk, ROLE_DONE, "Corrected. (u undoes)");
	return true;
}

static void correct(struct desk *desk, struct log_subject subject)
{
	struct fault fault = { 0 };
	struct log_run run;
	char weight[48];
	char words[ENTRY_MAX];

	if (!kitchen_run_get(desk->kitchen, subject.id, &run, &fault)) {
		desk_say_fault(desk, &fault);
		return;
	}
	amount_words(MEASURE_MASS, run.fruit_mg, kitchen_board(desk->kitchen)->house.units, weight, sizeof(weight));
	(void)snprintf(words, sizeof(words), "\"%s\" \"%s\"", run.fruit, weight);
	desk_offer(desk, "Really:", words, run_typed);
}

const struct kind_views run_views = {
	.subject = SUBJECT_RUN,
	.start_words = start_words,
	.start = start,
	.answer = answer,
	.beside = drawn_words,
	.whole_line = drawn_words,
	.correct = correct,
};
