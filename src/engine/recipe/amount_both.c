/*
 * amount_both.c - what is asked for and what is there, said in one unit.
 */
#include <stdio.h>

#include "base/text.h"
#include "engine/recipe/amount.h"

struct said_in {
	const char *one;
	const char *more;
	int64_t grains; /* uL or mg of one, rounded: for words alone */
	int64_t from;   /* of amounts from here on; the last of a table: 0 */
	int decimals;   /* -1: in the parts a kitchen has measures for */
};

/* Sources: amount.h. */
static const struct said_in us_liquid[] = { { "gal", "gal", 3785412, 7570824, -1 },
	                                    { "qt", "qt", 946353, 1892706, -1 },
	                                    { "cup", "cups", CUP_UL, CUP_UL / 4, -1 },
	                                    { "tbsp", "tbsp", CUP_UL / 16, CUP_UL / 16, -1 },
	                                    { "tsp", "tsp", CUP_UL / 48, 0, -1 } };
static const struct said_in us_mass[] = { { "lb", "lb", 453592, 453592, -1 }, { "oz", "oz", 28350, 0, -1 } };
static const struct said_in metric_liquid[] = { { "L", "L", 1000000, 1000000, 2 }, { "mL", "mL", 1000, 0, 0 } };
static const struct said_in metric_mass[] = { { "kg", "kg", 1000000, 1000000, 2 }, { "g", "g", 1000, 0, 0 } };

static struct said_in unit_for(enum measure measure, enum supply_kind supply, int64_t asked, enum unit_system units)
{
	int64_t cup = measure == MEASURE_MASS && units == UNITS_US ? supply_mg_per_cup(supply) : 0;
	const struct said_in *unit = measure == MEASURE_VOLUME ? us_liquid : us_mass;

	if (cup > 0) { /* kept by weight, measured in cups and spoons */
		if (asked >= cup / 4)
			return (struct said_in){ "cup", "cups", cup, 0, -1 };
		return asked >= cup / 16 ? (struct said_in){ "tbsp", "tbsp", cup / 16, 0, -1 }
		                         : (struct said_in){ "tsp", "tsp", cup / 48, 0, -1 };
	}
	if (units == UNITS_METRIC)
		unit = measure == MEASURE_VOLUME ? metric_liquid : metric_mass;
	while (unit->from > asked)
		unit++;
	return *unit;
}

static const struct {
	int thousandths;
	const char *words;
} parts[] = { { 0, "" }, { 250, "1/4" }, { 333, "1/3" }, { 500, "1/2" }, { 667, "2/3" }, { 750, "3/4" }, { 1000, "" } };

/* "3-1/2 cups" of thousandths; up or down to a part there is a measure for. */
static void say_parts(const struct said_in *unit, int64_t thousandths, bool up, struct text *text)
{
	int64_t whole = thousandths / 1000;
	size_t part = 0;

	while (parts[part].thousandths < thousandths % 1000)
		part++;
	if (!up && parts[part].thousandths > thousandths % 1000)
		part--;
	whole += parts[part].thousandths / 1000;
	if (whole > 0)
		text_add(text, "%lld", (long long)whole);
	if (parts[part].words[0] != '\0')
		text_add(text, "%s%s", whole > 0 ? "-" : "", parts[part].words);
	text_add(text, " %s", whole > 1 || (whole == 1 && parts[part].words[0] != '\0') ? unit->more : unit->one);
}

static void say_in(const struct said_in *unit, int64_t amount, bool up, struct text *text)
{
	/* To the nearest, so that three cups in whole uL are three; then to what can be said. */
	int64_t thousandths = (amount * 1000 + unit->grains / 2) / unit->grains;

	if (unit->decimals < 0)
		say_parts(unit, thousandths, up, text);
	else if (unit->decimals == 0)
		text_add(text, "%lld %s", (long long)((thousandths + (up ? 999 : 0)) / 1000), unit->one);
	else
		text_add(text, "%lld.%02lld %s", (long long)(thousandths / 1000), (long long)(thousandths % 1000 / 10),
		         unit->one);
}

static bool is_too_little(const struct said_in *unit, int64_t amount)
{
	return amount * 1000 / unit->grains < (unit->decimals < 0 ? 250 : 1);
}

/* In the unit of what is asked, or in its own where that is too coarse: 2 tbsp is no "hardly any". */
static void say_there(enum measure measure, enum supply_kind supply, int64_t there, enum unit_system units,
                      const struct said_in *asked, struct text *text)
{
	struct said_in own = unit_for(measure, supply, there, units);
	const struct said_in *unit = is_too_little(asked, there) ? &own : asked;

	if (is_too_little(unit, there))
		text_add(text, "hardly any");
	else
		say_in(unit, there, false, text);
}

void amount_both(enum measure measure, enum supply_kind supply, int64_t asked, int64_t there, enum unit_system units,
                 struct amount_both *out)
{
	struct text asked_text = TEXT_OVER(out->asked);
	struct text there_text = TEXT_OVER(out->there);
	struct said_in unit = unit_for(measure, supply, asked, units);

	if (measure == MEASURE_EACH) {
		text_add(&asked_text, "%lld", (long long)asked);
		text_add(&there_text, "%lld", (long long)there);
		return;
	}
	say_in(&unit, asked, true, &asked_text);
	if (there <= 0)
		text_add(&there_text, "none");
	else
		say_there(measure, supply, there, units, &unit, &there_text);
}
