/* What is done before or between, over hours or days. */
#include "engine/recipe/recipe.h"

#include <string.h>

#include "base/text.h"

#define MINUTES_AN_HOUR 60
#define MINUTES_A_DAY (24 * MINUTES_AN_HOUR)
#define MINUTES_A_WEEK (7 * MINUTES_A_DAY)

size_t recipe_steps_of(const struct recipe *recipe, const struct recipe_step **first)
{
	size_t at = 0;
	size_t count = 0;

	while (at < recipe_step_count && strcmp(recipe_steps[at].recipe, recipe->name) != 0)
		at++;
	while (at + count < recipe_step_count && strcmp(recipe_steps[at + count].recipe, recipe->name) == 0)
		count++;
	*first = count > 0 ? &recipe_steps[at] : NULL;
	return count;
}

/* The largest unit of which both ends are whole numbers; a day stays 24 hours, as
 * soaks are told. */
void recipe_step_time(const struct recipe_step *step, char *buffer, size_t size)
{
	static const struct {
		int minutes;
		int least; /* from so many of them on */
		const char *one;
		const char *many;
	} units[] = {
		{ MINUTES_A_WEEK, 1, "week", "weeks" },
		{ MINUTES_A_DAY, 2, "day", "days" },
		{ MINUTES_AN_HOUR, 1, "hour", "hours" },
		{ 1, 1, "minute", "minutes" },
	};
	struct text text = text_over(buffer, size);

	for (size_t i = 0; step->high_minutes > 0 && i < sizeof(units) / sizeof(units[0]); i++) {
		int unit = units[i].minutes;

		if (step->low_minutes % unit != 0 || step->high_minutes % unit != 0 ||
		    step->low_minutes < units[i].least * unit)
			continue;
		if (step->low_minutes < step->high_minutes)
			text_add(&text, "%d to ", step->low_minutes / unit);
		text_add(&text, "%d %s", step->high_minutes / unit,
		         step->high_minutes == unit ? units[i].one : units[i].many);
		return;
	}
}
