/*
 * plan_forms.c - what is entered of those who help, when they eat, and what the plan finds
 * in the house.
 */
#include <stdio.h>
#include <string.h>

#include "base/count.h"
#include "engine/recipe/amount.h"
#include "kitchen/plan/plan.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

#define COOLING_MAX 9999 /* jars: a larger number is a slip of the finger */
#define MINUTES_MAX 600  /* log_plan_house */

enum planned_with { WITH_HELPER, WITH_BREAK, WITH_HOUSE, WITH_COUNT };

struct planned_answers {
	enum planned_with what;
	struct log_helper helper;
	struct log_plan_break meal; /* both 0: not said yet */
	struct log_plan_house house;
};

static struct planned_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

/* Among the first steps helpers are asked for, one after the other, and nothing else. */
static bool is_among_first(const struct desk *desk)
{
	return entry_from(desk) == VIEW_FIRST_STEPS;
}

static bool is_any(const struct desk *desk)
{
	return !is_among_first(desk);
}

static bool begin(struct desk *desk, int64_t id)
{
	(void)id;
	answers_of(desk)->helper.from_minutes = PLAN_ANY_TIME;
	answers_of(desk)->house = *kitchen_plan_house(desk->kitchen);
	return true;
}

static bool is_helper(const struct desk *desk)
{
	return answers_of(desk)->what == WITH_HELPER;
}

static bool has_hours(const struct desk *desk)
{
	return is_helper(desk) && is_any(desk);
}

static const char *next_helper_put(const struct desk *desk)
{
	size_t count;

	(void)kitchen_helpers(desk->kitchen, &count);
	return is_among_first(desk) && count > 0 ? "Who else helps? Nothing, and Enter: nobody." : NULL;
}

static bool is_break(const struct desk *desk)
{
	return answers_of(desk)->what == WITH_BREAK;
}

static bool is_house(const struct desk *desk)
{
	return answers_of(desk)->what == WITH_HOUSE;
}

/* --- which ------------------------------------------------------------------------------ */

static const char *const whats[WITH_COUNT + 1] = {
	[WITH_HELPER] = "somebody who helps",
	[WITH_BREAK] = "a break for a meal",
	[WITH_HOUSE] = "burners, places, cleaning up",
};

static void what_said(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", whats[answers_of(desk)->what]);
}

static int what_now(const struct desk *desk)
{
	return (int)answers_of(desk)->what;
}

static bool what_taken(struct desk *desk, int n)
{
	answers_of(desk)->what = (enum planned_with)n;
	return true;
}

/* --- times of the day ----------------------------------------------------------------------- */

static void time_words(int minutes, struct text *text)
{
	char words[8];

	plan_time_words(minutes, words, sizeof(words));
	text_add(text, "%s", words);
}

static bool time_typed(struct desk *desk, const char *text, int *minutes)
{
	struct fault fault = { 0 };

	if (plan_time_read(text, minutes, &fault))
		return true;
	desk_say_fault(desk, &fault);
	return false;
}

/* --- a helper --------------------------------------------------------------------------------- */

static void initials_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", answers_of(desk)->helper.initials);
}

static bool initials_typed(struct desk *desk, const char *text)
{
	size_t count;
	const struct log_helper *helpers = kitchen_helpers(desk->kitchen, &count);
	char initials[sizeof(helpers->initials)];
	struct fault fault = { 0 };

	for (size_t i = 0; i < count; i++)
		if (strcmp(helpers[i].initials, text) == 0) {
			desk_say(desk, ROLE_CAUTION, "%s helps already: take other initials.", text);
			return false;
		}
	if (text[strspn(text, " ")] == '\0' && is_among_first(desk)) { /* that was all of them */
		desk_leave_entry(desk);
		return false;
	}
	if (!plan_initials_fine(text, &fault) || !text_copy(initials, sizeof(initials), text)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	return text_copy(answers_of(desk)->helper.initials, sizeof(initials), initials);
}

static void from_now(const struct desk *desk, struct text *text)
{
	time_words(answers_of(desk)->helper.from_minutes, text);
}

static bool from_typed(struct desk *desk, const char *text)
{
	struct fault fault = { 0 };
	int minutes = PLAN_ANY_TIME;

	if (text[0] != '\0' && !time_typed(desk, text, &minutes))
		return false;
	if (!plan_comes_fine(minutes, &fault)) {
		desk_say_fault(desk, &fault);
		return false;
	}
	answers_of(desk)->helper.from_minutes = minutes;
	return true;
}

/* --- a meal -------------------------------------------------------------------------------------- */

static void begins_now(const struct desk *desk, struct text *text)
{
	if (answers_of(desk)->meal.start_minutes > 0)
		time_words(answers_of(desk)->meal.start_minutes, text);
}

static bool begins_typed(struct desk *desk, const char *text)
{
	return time_typed(desk, text, &answers_of(desk)->meal.start_minutes);
}

static void ends_now(const struct desk *desk, struct text *text)
{
	if (answers_of(desk)->meal.end_minutes > 0)
		time_words(answers_of(desk)->meal.end_minutes, text);
}

static bool ends_typed(struct desk *desk, const char *text)
{
	return time_typed(desk, text, &answers_of(desk)->meal.end_minutes);
}

/* --- the house -------------------------------------------------------------------------------------- */

static void burners_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%d", answers_of(desk)->house.burners);
}

static bool burners_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 0, BURNERS_MAX, 0, "Burners", &answers_of(desk)->house.burners);
}

static void fillers_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%d", answers_of(desk)->house.fillers);
}

static bool fillers_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 0, BURNERS_MAX, 0, "Places to fill at", &answers_of(desk)->house.fillers);
}

static void cooling_now(const struct desk *desk, struct text *text)
{
	if (answers_of(desk)->house.cooling_jars != COOLING_NO_LIMIT)
		text_add(text, "%d", answers_of(desk)->house.cooling_jars);
}

static bool cooling_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 0, COOLING_MAX, COOLING_NO_LIMIT, "Room to cool",
	                         &answers_of(desk)->house.cooling_jars);
}

static void clean_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%d", answers_of(desk)->house.clean_minutes);
}

static bool clean_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 0, MINUTES_MAX, 0, "Minutes to clean up",
	                         &answers_of(desk)->house.clean_minutes);
}

static void late_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%d", answers_of(desk)->house.late_minutes);
}

static bool late_typed(struct desk *desk, const char *text)
{
	return entry_read_number(desk, text, 1, MINUTES_MAX, 1, "Minutes late", &answers_of(desk)->house.late_minutes);
}

static void charge_now(const struct desk *desk, struct text *text)
{
	entry_amount_now(desk, MEASURE_MASS, SUPPLY_FRUIT, answers_of(desk)->house.charge_mg, text);
}

static bool charge_typed(struct desk *desk, const char *text)
{
	return entry_read_supply(desk, text, SUPPLY_FRUIT, "", &answers_of(desk)->house.charge_mg);
}

/* --- the act -------------------------------------------------------------------------------------------- */

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	struct planned_answers answers = *answers_of(desk);
	char words[2][8];

	switch (answers.what) {
	case WITH_HELPER:
		plan_time_words(answers.helper.from_minutes, words[0], sizeof(words[0]));
		text_add(noted, "%s helps%s%s", answers.helper.initials, words[0][0] != '\0' ? ", from " : "",
		         words[0]);
		return kitchen_put_helper(desk->kitchen, &answers.helper, fault);
	case WITH_BREAK:
		plan_time_words(answers.meal.start_minutes, words[0], sizeof(words[0]));
		plan_time_words(answers.meal.end_minutes, words[1], sizeof(words[1]));
		text_add(noted, "a meal from %s to %s", words[0], words[1]);
		return kitchen_put_break(desk->kitchen, &answers.meal, fault);
	default:
		text_add(noted, "%s", count_words(answers.house.burners, "burner").words);
		return kitchen_set_plan_house(desk->kitchen, &answers.house, fault);
	}
}

static const struct question questions[] = {
	{ .kind = ASK_CHOICE,
	  .name = "What",
	  .asks = "What do you want to add or change?",
	  .asked = is_any,
	  .list = whats,
	  .offers = what_now,
	  .answer = what_said,
	  .take = what_taken },
	{ .kind = ASK_TEXT,
	  .name = "Initials",
	  .asks = "Who helps?",
	  .put = next_helper_put,
	  .help = "In initials, such as MK.",
	  .asked = is_helper,
	  .text = initials_now,
	  .typed = initials_typed },
	{ .kind = ASK_TEXT,
	  .name = "From",
	  .asks = "From when on?",
	  .help = "A time like 9:30. Nothing: from the start.",
	  .asked = has_hours,
	  .text = from_now,
	  .typed = from_typed },
	{ .kind = ASK_TEXT,
	  .name = "Begins",
	  .asks = "When does the meal begin?",
	  .help = "A time like 12:00.",
	  .asked = is_break,
	  .text = begins_now,
	  .typed = begins_typed },
	{ .kind = ASK_TEXT,
	  .name = "Ends",
	  .asks = "When does it end?",
	  .help = "A time like 12:45.",
	  .asked = is_break,
	  .text = ends_now,
	  .typed = ends_typed },
	{ .kind = ASK_TEXT,
	  .name = "Burners",
	  .asks = "How many burners does the house have?",
	  .help = "Those that stations without heat of their own share.",
	  .asked = is_house,
	  .text = burners_now,
	  .typed = burners_typed },
	{ .kind = ASK_TEXT,
	  .name = "Places",
	  .asks = "At how many places can jars be filled?",
	  .help = "0: as many as people.",
	  .asked = is_house,
	  .text = fillers_now,
	  .typed = fillers_typed },
	{ .kind = ASK_TEXT,
	  .name = "Cooling",
	  .asks = "Room for how many jars to cool, untouched?",
	  .help = "Nothing: for any number.",
	  .asked = is_house,
	  .counts = "jars",
	  .text = cooling_now,
	  .typed = cooling_typed },
	{ .kind = ASK_TEXT,
	  .name = "Cleaning up",
	  .asks = "How long does cleaning up take, with all hands?",
	  .asked = is_house,
	  .counts = "min",
	  .text = clean_now,
	  .typed = clean_typed },
	{ .kind = ASK_TEXT,
	  .name = "Late",
	  .asks = "How late may the day end before it is warned of?",
	  .asked = is_house,
	  .counts = "min",
	  .text = late_now,
	  .typed = late_typed },
	{ .kind = ASK_TEXT,
	  .name = "Basket",
	  .asks = "How much fruit goes into a juicer's basket?",
	  .help = "A weight with its unit: 12 lb, 5.5 kg.",
	  .asked = is_house,
	  .text = charge_now,
	  .typed = charge_typed },
};

static void then(struct desk *desk)
{
	if (is_among_first(desk))
		desk_enter(desk, ENTRY_RECKONED, 0);
}

const struct entry_form reckoned_form = {
	.name = "plan",
	.title = "What the plan goes by here",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = sizeof(struct planned_answers),
	.begin = begin,
	.done = done,
	.then = then,
};
