/*
 * plan_house.c - what a day plan needs to know of the house beside its stations:
 * who helps, burners, meals, cooling space.
 */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/utf8.h"
#include "kitchen/plan/plan_private.h"
#include "log/tables/plan.h"

#define MINUTES_MAX (2 * 24 * 60) /* a day may go on past midnight */

const struct log_plan_house *kitchen_plan_house(const struct kitchen *kitchen)
{
	return &kitchen->planned.house;
}

const struct log_helper *kitchen_helpers(const struct kitchen *kitchen, size_t *count)
{
	*count = kitchen->planned.helper_count;
	return kitchen->planned.helpers;
}

const struct log_plan_break *kitchen_breaks(const struct kitchen *kitchen, size_t *count)
{
	*count = kitchen->planned.break_count;
	return kitchen->planned.breaks;
}

/* --- times of day ----------------------------------------------------------------------- */

bool plan_time_read(const char *words, int *minutes, struct fault *fault)
{
	char *end;
	long hours;
	long rest = 0;
	bool fine;

	errno = 0;
	hours = strtol(words, &end, 10);
	fine = end != words && words[0] >= '0' && words[0] <= '9' && hours >= 0 && hours < 48;
	if (fine && *end == ':') {
		const char *from = end + 1;

		rest = strtol(from, &end, 10);
		fine = end == from + 2 && from[0] >= '0' && from[0] <= '5';
	}
	if (!fine || *end != '\0' || errno != 0)
		return fault_set(fault, FAULT_MISUSE, "\"%.40s\" is not a time of day like 8:30", words);
	*minutes = (int)(hours * 60 + rest);
	return true;
}

void plan_time_words(int minutes, char *buffer, size_t size)
{
	if (minutes == PLAN_ANY_TIME)
		buffer[0] = '\0';
	else
		clock_words_time(minutes, buffer, size);
}

bool plan_time_fine(int minutes, struct fault *fault)
{
	return (minutes >= PLAN_ANY_TIME && minutes < MINUTES_MAX) ||
	       fault_set(fault, FAULT_MISUSE, "That is not a time of day.");
}

/* --- settings ------------------------------------------------------------------------------ */

static bool in_range(int value, int least, int most)
{
	return value >= least && value <= most;
}

static bool check_house(const struct log_plan_house *house, struct fault *fault)
{
	if (!in_range(house->burners, 0, BURNERS_MAX) || !in_range(house->fillers, 0, BURNERS_MAX))
		return fault_set(fault, FAULT_MISUSE, "Burners and places to fill at are 0 to %d.", BURNERS_MAX);
	if (!in_range(house->cooling_jars, COOLING_NO_LIMIT, 9999))
		return fault_set(fault, FAULT_MISUSE, "Room for cooling jars is 0 to 9999.");
	if (!in_range(house->clean_minutes, 0, 600) || !in_range(house->late_minutes, 1, 600))
		return fault_set(fault, FAULT_MISUSE,
		                 "Clean-down is 0 to 600 minutes, the warning of lateness 1 to 600.");
	if (house->charge_mg <= 0 || house->charge_mg > AMOUNT_MG_MAX)
		return fault_set(fault, FAULT_MISUSE,
		                 "That is not what a juicer's basket holds: \"12 lb\" or \"5.5 kg\".");
	return true;
}

bool kitchen_set_plan_house(struct kitchen *kitchen, const struct log_plan_house *house, struct fault *fault)
{
	struct act act;

	if (!check_house(house, fault) || !act_begin(&act, kitchen, VERB_PLAN_HOUSE, 0, fault))
		return false;
	if (!log_put_plan_house(kitchen->log, house, fault))
		return act_fail(&act);
	act_says_number(&act, house->burners);
	act_says_number(&act, house->fillers);
	if (house->cooling_jars == COOLING_NO_LIMIT)
		act_says_nothing(&act);
	else
		act_says_number(&act, house->cooling_jars);
	act_says_number(&act, house->clean_minutes);
	act_says_number(&act, house->charge_mg);
	act_says_number(&act, house->late_minutes);
	act_says_text(&act, plan_meals_words(house->meals_in_turns));
	return act_commit(&act, fault);
}

/* --- people ----------------------------------------------------------------------------------- */

bool plan_initials_fine(const char *initials, struct fault *fault)
{
	size_t left = strlen(initials);
	uint32_t character;
	int letters = 0;

	for (size_t step; (step = utf8_next(initials, left, &character)) > 0; initials += step, left -= step) {
		bool plain = (character >= 'A' && character <= 'Z') || (character >= 'a' && character <= 'z');
		bool between = letters > 0 && (character == ' ' || character == '.'); /* "M. K." */

		if (!plain && !between && character < 0xc0) /* from there on letters of other alphabets */
			break;
		letters += !between;
	}
	return (left == 0 && letters >= 1 && letters <= HELPER_LETTERS) ||
	       fault_set(fault, FAULT_MISUSE, "Initials are 1 to %d letters, such as MK.", HELPER_LETTERS);
}

bool plan_comes_fine(int minutes, struct fault *fault)
{
	return minutes < 24 * 60 ||
	       fault_set(fault, FAULT_MISUSE, "A helper comes at a time of that day, 0:00 to 23:59, such as 9:30.");
}

static bool check_helper(const struct kitchen *kitchen, const struct log_helper *helper, struct fault *fault)
{
	const struct planning *planning = kitchen->planning;

	if (!plan_initials_fine(helper->initials, fault) || !plan_time_fine(helper->from_minutes, fault) ||
	    !plan_comes_fine(helper->from_minutes, fault))
		return false;
	for (size_t i = 0; i < planning->rows->helper_count; i++)
		if (planning->rows->helpers[i].id != helper->id &&
		    text_same_name(planning->rows->helpers[i].initials, helper->initials))
			return fault_set(fault, FAULT_REFUSED, "%s is on the list already.", helper->initials);
	if (helper->id == 0 && planning->rows->helper_count >= PLAN_PEOPLE_MAX)
		return fault_set(fault, FAULT_REFUSED, "A plan holds at most %d helpers.", PLAN_PEOPLE_MAX);
	return true;
}

bool kitchen_put_helper(struct kitchen *kitchen, struct log_helper *helper, struct fault *fault)
{
	struct act act;

	if (!check_helper(kitchen, helper, fault) || !act_begin(&act, kitchen, VERB_HELPER, 0, fault))
		return false;
	if (!log_put_helper(kitchen->log, helper, fault))
		return act_fail(&act);
	act_says_text(&act, helper->initials);
	act_says_time(&act, helper->from_minutes);
	return act_commit(&act, fault);
}

bool kitchen_remove_helper(struct kitchen *kitchen, int64_t id, struct fault *fault)
{
	char initials[NAME_MAX_BYTES] = "";
	struct act act;

	for (size_t i = 0; i < kitchen->planned.helper_count; i++)
		if (kitchen->planned.helpers[i].id == id)
			text_copy(initials, sizeof(initials), kitchen->planned.helpers[i].initials);
	if (initials[0] == '\0')
		return fault_set(fault, FAULT_MISSING, "There is no such helper.");
	if (!act_begin(&act, kitchen, VERB_HELPER_GONE, 0, fault))
		return false;
	if (!log_remove_helper(kitchen->log, id, fault))
		return act_fail(&act);
	act_says_text(&act, initials);
	return act_commit(&act, fault);
}

/* --- meals -------------------------------------------------------------------------------------- */

const char *plan_meals_words(bool in_turns)
{
	return in_turns ? "in turns" : "together";
}

bool plan_meals_read(const char *words, bool *in_turns, struct fault *fault)
{
	if (!text_same_name(words, "in turns") && !text_same_name(words, "turns") && !text_same_name(words, "together"))
		return fault_set(fault, FAULT_MISUSE, "Say how the helpers eat: in turns, or together.");
	*in_turns = !text_same_name(words, "together");
	return true;
}

/* --- breaks -------------------------------------------------------------------------------------- */

bool kitchen_put_break(struct kitchen *kitchen, struct log_plan_break *row, struct fault *fault)
{
	const struct planning *planning = kitchen->planning;
	struct act act;

	if (row->start_minutes < 0 || row->end_minutes >= MINUTES_MAX || row->end_minutes <= row->start_minutes)
		return fault_set(fault, FAULT_MISUSE, "A break has a start and a later end: 12:00 12:45.");
	for (size_t i = 0; i < planning->rows->break_count; i++)
		if (planning->rows->breaks[i].id != row->id &&
		    row->start_minutes < planning->rows->breaks[i].end_minutes &&
		    planning->rows->breaks[i].start_minutes < row->end_minutes)
			return fault_set(fault, FAULT_REFUSED, "There is another break at that time.");
	if (row->id == 0 && planning->rows->break_count >= PLAN_BREAKS_MAX)
		return fault_set(fault, FAULT_REFUSED, "A plan holds at most %d breaks.", PLAN_BREAKS_MAX);
	if (!act_begin(&act, kitchen, VERB_BREAK, 0, fault))
		return false;
	if (!log_put_plan_break(kitchen->log, row, fault))
		return act_fail(&act);
	act_says_time(&act, row->start_minutes);
	act_says_time(&act, row->end_minutes);
	return act_commit(&act, fault);
}

bool kitchen_remove_break(struct kitchen *kitchen, int64_t id, struct fault *fault)
{
	struct act act;

	if (!act_begin(&act, kitchen, VERB_BREAK_GONE, 0, fault))
		return false;
	if (!log_remove_plan_break(kitchen->log, id, fault))
		return act_fail(&act);
	return act_commit(&act, fault);
}
