/*
 * plan_lines.c - the day plan as lines of a kitchen file.
 *
 *   helper  MK from=9:30
 *   break   12:00 12:45
 *   plan    burners=4 fillers=2 cooling=120 clean=30 late=30 charge="12 lb"
 *   day     8:00
 *   run     "grapes" "12 lb" at=8:30 times=5
 *   batch   "grape jelly" jar=half_pint times=4
 */
#include "kitchen/plan/plan_lines.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "kitchen/file/open_day.h"

/* The value of "name=value"; NULL: another name. */
static const char *value_of(const char *word, const char *name)
{
	size_t length = strlen(name);

	return strncmp(word, name, length) == 0 && word[length] == '=' ? word + length + 1 : NULL;
}

static bool not_understood(const char *word, const char *known, struct fault *fault)
{
	return fault_set(fault, FAULT_MISUSE, "\"%.80s\" is not understood here: %s", word, known);
}

bool plan_line_helper(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_helper helper = { .id = id, .from_minutes = PLAN_ANY_TIME };
	const char *from;

	if (!text_copy(helper.initials, sizeof(helper.initials), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "Initials must be short.");
	if (words->count > 2) {
		from = value_of(words_at(words, 2), "from");
		if (from == NULL)
			return not_understood(words_at(words, 2), "from=9:30", fault);
		if (!plan_time_read(from, &helper.from_minutes, fault))
			return false;
	}
	return kitchen_put_helper(kitchen, &helper, fault);
}

bool plan_line_break(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_plan_break row = { .id = id };

	return plan_time_read(words_at(words, 1), &row.start_minutes, fault) &&
	       plan_time_read(words_at(words, 2), &row.end_minutes, fault) && kitchen_put_break(kitchen, &row, fault);
}

/* plan burners=4 ...; what is not named stays. cooling=any: no limit. */
bool plan_line_house(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_plan_house house = *kitchen_plan_house(kitchen);
	const struct {
		const char *name;
		int *value;
		int most;
	} numbers[] = {
		{ "burners", &house.burners, BURNERS_MAX }, { "fillers", &house.fillers, BURNERS_MAX },
		{ "cooling", &house.cooling_jars, 9999 },   { "clean", &house.clean_minutes, 600 },
		{ "late", &house.late_minutes, 600 },
	};

	(void)id;
	for (size_t i = 1; i < words->count; i++) {
		const char *word = words_at(words, i);
		const char *value = value_of(word, "charge");
		size_t n = 0;

		if (value != NULL) {
			if (!amount_read(value, MEASURE_MASS, SUPPLY_FRUIT, &house.charge_mg, fault))
				return false;
			continue;
		}
		value = value_of(word, "meals");
		if (value != NULL) {
			if (!plan_meals_read(value, &house.meals_in_turns, fault))
				return false;
			continue;
		}
		if (strcmp(word, "cooling=any") == 0) {
			house.cooling_jars = COOLING_NO_LIMIT;
			continue;
		}
		while (n < 5 && value_of(word, numbers[n].name) == NULL)
			n++;
		if (n == 5 || !word_number(value_of(word, numbers[n].name), 0, numbers[n].most, numbers[n].value))
			return not_understood(
			    word,
			    "burners=4 fillers=2 cooling=120 (or any) clean=30 late=30 charge=\"12 lb\" meals=turns (or together)",
			    fault);
	}
	return kitchen_set_plan_house(kitchen, &house, fault);
}

bool plan_line_day(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	int64_t day = 0;
	int start = PLAN_ANY_TIME;

	(void)id;
	if (strcmp(words_at(words, 1), "now") != 0 && !plan_time_read(words_at(words, 1), &start, fault))
		return false;
	if (words->count > 2 && !clock_read_date(words_at(words, 2), &day))
		return fault_set(fault, FAULT_MISUSE, "\"%.40s\" is not a date like 2026-09-14", words_at(words, 2));
	return kitchen_plan_start(kitchen, day, start, fault);
}

static bool read_times(const char *value, struct fault *fault, int *times)
{
	return word_number(value, 1, PLAN_BATCHES_MAX, times) ||
	       fault_set(fault, FAULT_MISUSE, "\"%.40s\" is not a number of times", value);
}

bool plan_line_run(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_plan_run row = { .id = id, .ready_minutes = PLAN_ANY_TIME };
	int times = 1;

	if (!text_copy(row.fruit, sizeof(row.fruit), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "That name is too long.");
	for (size_t i = 2; i < words->count; i++) {
		const char *word = words_at(words, i);
		const char *at = value_of(word, "at");
		const char *count = value_of(word, "times");

		if (at != NULL      ? !plan_time_read(at, &row.ready_minutes, fault)
		    : count != NULL ? !read_times(count, fault, &times)
		                    : !amount_read(word, MEASURE_MASS, SUPPLY_FRUIT, &row.fruit_mg, fault))
			return false;
	}
	if (id > 0)
		return kitchen_plan_change_run(kitchen, &row, fault);
	return kitchen_plan_add_runs(kitchen, &row, times, fault);
}

enum batch_word { BATCH_JAR, BATCH_PACK, BATCH_AT, BATCH_TIMES, BATCH_MULTIPLE, BATCH_AFTER, BATCH_WORD_COUNT };

static bool read_batch_word(const char *word, struct log_plan_batch *row, int *times, struct fault *fault)
{
	static const char *const names[BATCH_WORD_COUNT] = {
		[BATCH_JAR] = "jar",     [BATCH_PACK] = "pack",         [BATCH_AT] = "at",
		[BATCH_TIMES] = "times", [BATCH_MULTIPLE] = "multiple", [BATCH_AFTER] = "after",
	};
	const char *value = NULL;
	int which = -1;

	while (value == NULL && ++which < BATCH_WORD_COUNT)
		value = value_of(word, names[which]);
	switch (which) {
	case BATCH_JAR:
		return text_copy(row->jar, sizeof(row->jar), value) || not_understood(word, "jar=half_pint", fault);
	case BATCH_PACK:
		return text_copy(row->pack, sizeof(row->pack), value) || not_understood(word, "pack=hot", fault);
	case BATCH_AT: return plan_time_read(value, &row->ready_minutes, fault);
	case BATCH_TIMES: return read_times(value, fault, times);
	case BATCH_MULTIPLE:
		if (word_number(value, 1, 99, &row->multiple))
			return true;
		break;
	case BATCH_AFTER:
		if (word_number(value, 0, PLAN_RUNS_MAX, &row->after_runs))
			return true;
		break;
	default: break;
	}
	return not_understood(word, "jar=pint pack=hot multiple=1 times=2 at=10:00 after=2", fault);
}

bool plan_line_batch(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_plan_batch row = {
		.id = id, .multiple = 1, .ready_minutes = PLAN_ANY_TIME, .after_runs = PLAN_RUNS_AS_NEEDED
	};
	int times = 1;

	if (!text_copy(row.recipe, sizeof(row.recipe), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "That name is too long.");
	for (size_t i = 2; i < words->count; i++)
		if (!read_batch_word(words_at(words, i), &row, &times, fault))
			return false;
	if (id > 0)
		return kitchen_plan_change_batch(kitchen, &row, fault);
	return kitchen_plan_add_batches(kitchen, &row, times, fault);
}
