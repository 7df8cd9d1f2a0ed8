/*
 * reading_form.c - what an instrument reads in the house: boiling water, the air, the store.
 */
#include <stdio.h>
#include <string.h>

#include "base/text.h"
#include "engine/physics/boiling.h"
#include "kitchen/house/house.h"
#include "screen/house/house_views.h"
#include "screen/ui/desk.h"
#include "screen/ui/entry_view.h"

#define READING_BYTES 80

struct reading_answers {
	enum house_reading which;
	char shown[READING_BYTES]; /* as it is offered, or was typed; "": not read */
	char exact[READING_BYTES]; /* what stands in the log, of which `shown` is rounded */
};

static struct reading_answers *answers_of(const struct desk *desk)
{
	return entry_answers(desk);
}

static const char *unit_of(const struct desk *desk)
{
	if (answers_of(desk)->which == READS_AIR)
		return "kPa";
	return desk_units(desk) == UNITS_METRIC ? "C" : "F";
}

/* What stands there: it is offered as it is shown elsewhere, and Enter keeps it as it is. */
static void stands(const struct desk *desk, bool known, double value)
{
	struct reading_answers *answers = answers_of(desk);
	const char *unit = unit_of(desk);

	if (!known)
		return;
	(void)snprintf(answers->exact, sizeof(answers->exact), "%.3f%s", value, unit[0] == 'F' ? "C" : unit);
	(void)snprintf(answers->shown, sizeof(answers->shown), "%.1f",
	               unit[0] == 'F' ? fahrenheit_from_celsius(value) : value);
}

static bool begin(struct desk *desk, int64_t id)
{
	const struct log_house *house = &kitchen_board(desk->kitchen)->house;

	answers_of(desk)->which = (enum house_reading)id;
	switch (answers_of(desk)->which) {
	case READS_WATER: stands(desk, house->measured_boil_mc > 0, house->measured_boil_mc / 1000.0); break;
	case READS_AIR: stands(desk, house->barometer_pa > 0, house->barometer_pa / 1000.0); break;
	case READS_STORE: stands(desk, house->storage_wall_ms != 0, (double)house->storage_mc / 1000.0); break;
	}
	return true;
}

static bool is_water(const struct desk *desk)
{
	return answers_of(desk)->which == READS_WATER;
}

static bool is_air(const struct desk *desk)
{
	return answers_of(desk)->which == READS_AIR;
}

static bool is_store(const struct desk *desk)
{
	return answers_of(desk)->which == READS_STORE;
}

static bool is_bare(const char *text)
{
	return text[0] != '\0' && strspn(text, "0123456789.,- ") == strlen(text);
}

static void beside(const struct desk *desk, int n, struct text *text)
{
	const char *typed = desk->entry.open ? desk->entry.text : answers_of(desk)->shown;

	(void)n;
	if (typed[0] == '\0' || is_bare(typed))
		text_add(text, "%s", unit_of(desk));
}

static void reading_now(const struct desk *desk, struct text *text)
{
	text_add(text, "%s", answers_of(desk)->shown);
}

static bool reading_typed(struct desk *desk, const char *text)
{
	struct reading_answers *answers = answers_of(desk);

	if (strlen(text) > READING_BYTES - 8) {
		desk_say(desk, ROLE_CAUTION, "That is too long for what an instrument reads.");
		return false;
	}
	if (strcmp(text, answers->shown) == 0 && answers->exact[0] != '\0')
		return true;
	text_copy(answers->shown, sizeof(answers->shown), text);
	(void)snprintf(answers->exact, sizeof(answers->exact), "%s%s", text, is_bare(text) ? unit_of(desk) : "");
	return true;
}

static bool done(struct desk *desk, struct text *noted, struct fault *fault)
{
	static bool (*const put[])(struct kitchen *, const char *, struct fault *) = {
		[READS_WATER] = kitchen_set_measured_boil,
		[READS_AIR] = kitchen_set_barometer,
		[READS_STORE] = kitchen_set_storage,
	};
	const struct reading_answers *answers = answers_of(desk);

	if (answers->shown[0] == '\0')
		text_add(noted, "nothing was read");
	else
		text_add(noted, "%s%s%s", answers->shown, is_bare(answers->shown) ? " " : "",
		         is_bare(answers->shown) ? unit_of(desk) : "");
	return put[answers->which](desk->kitchen, answers->exact, fault);
}

#define READ(word, about) \
	.kind = ASK_TEXT, .name = (word), .asked = (about), .unit = beside, .text = reading_now, .typed = reading_typed

static const struct question questions[] = {
	{ READ("Boils at", is_water), .asks = "What does a thermometer in boiling water read?",
	  .help = "Nothing: nobody measured it." },
	{ READ("Barometer", is_air), .asks = "What does a barometer in the kitchen read?",
	  .help =
	      "As it reads right there, not what the weather service says, which is reduced to sea level. Nothing: not "
	      "read." },
	{ READ("Store", is_store), .asks = "How warm is it where the jars are kept?", .help = "Nothing: not read." },
};

const struct entry_form reading_form = {
	.name = "reading",
	.title = "What is measured in the house",
	.questions = questions,
	.count = sizeof(questions) / sizeof(questions[0]),
	.size = sizeof(struct reading_answers),
	.begin = begin,
	.done = done,
};
