/*
 * recipe_amount.c - amounts as a person writes them, exactly.
 *
 * NIST Handbook 44 App. C (schema/measures.csv): 1 gal = 3,785,411,784 nL, 4 qt,
 * 8 pint, 16 cup, 128 fl_oz, 256 tbsp, 768 tsp; 1 lb = 453,592,370 ug, 16 oz.
 */
#include "bake/bake.h"

#include <string.h>

#define NL_PER_GALLON INT64_C(3785411784)
#define UG_PER_POUND INT64_C(453592370)
#define CUPS_PER_GALLON 16
#define DIGITS_MAX 5
#define PLACES 3
#define THOUSAND INT64_C(1000)

/* One unit is whole / parts nL or ug; `spoon`: a kitchen volume a powder may be told in. */
static const struct unit {
	const char *name;
	size_t measure;
	int64_t whole;
	int64_t parts;
	bool spoon;
} units[] = {
	{ "gal", MEASURE_VOLUME, NL_PER_GALLON, 1, true },
	{ "qt", MEASURE_VOLUME, NL_PER_GALLON, 4, true },
	{ "pint", MEASURE_VOLUME, NL_PER_GALLON, 8, true },
	{ "cup", MEASURE_VOLUME, NL_PER_GALLON, CUPS_PER_GALLON, true },
	{ "fl_oz", MEASURE_VOLUME, NL_PER_GALLON, 128, true },
	{ "tbsp", MEASURE_VOLUME, NL_PER_GALLON, 256, true },
	{ "tsp", MEASURE_VOLUME, NL_PER_GALLON, 768, true },
	{ "L", MEASURE_VOLUME, INT64_C(1000000000), 1, false },
	{ "mL", MEASURE_VOLUME, INT64_C(1000000), 1, false },
	{ "lb", MEASURE_MASS, UG_PER_POUND, 1, false },
	{ "oz", MEASURE_MASS, UG_PER_POUND, 16, false },
	{ "kg", MEASURE_MASS, INT64_C(1000000000), 1, false },
	{ "g", MEASURE_MASS, INT64_C(1000000), 1, false },
	{ "each", MEASURE_EACH, INT64_C(1000), 1, false },
};

/* The number in front of the blank in thousandths; -1: not one. */
static int64_t thousandths_of(const char *text, const char **unit)
{
	int64_t number = 0;
	int digits = 0;
	int places = 0;

	for (; *text >= '0' && *text <= '9' && digits < DIGITS_MAX; text++, digits++)
		number = number * 10 + (*text - '0');
	if (digits == 0)
		return -1;
	if (*text == '.') {
		text++;
		for (; *text >= '0' && *text <= '9' && places < PLACES; text++, places++)
			number = number * 10 + (*text - '0');
		if (places == 0)
			return -1;
	}
	if (*text != ' ')
		return -1;
	for (; places < PLACES; places++)
		number *= 10;
	*unit = text + 1;
	return number;
}

static int64_t half_up(int64_t number, int64_t divisor)
{
	return (number + divisor / 2) / divisor;
}

struct amount field_amount(const struct record *record, size_t index, const char *name, int64_t mg_a_cup)
{
	const char *text = record->field[index];
	const char *word = "";
	int64_t number = thousandths_of(text, &word);
	struct amount amount;

	if (number < 0)
		bake_die(record->path, record->line, "%s is not a number, a blank and a unit: \"%s\"", name, text);
	for (size_t i = 0; i < sizeof(units) / sizeof(units[0]); i++) {
		const struct unit *unit = &units[i];

		if (strcmp(unit->name, word) != 0)
			continue;
		amount.measure = unit->measure;
		if (unit->measure == MEASURE_EACH && number % THOUSAND != 0)
			bake_die(record->path, record->line, "%s is not a whole number of pieces: \"%s\"", name, text);
		amount.amount = half_up(number * unit->whole, unit->parts * THOUSAND * THOUSAND);
		if (unit->spoon && mg_a_cup > 0) {
			amount.measure = MEASURE_MASS;
			amount.amount = half_up(number * mg_a_cup * CUPS_PER_GALLON, unit->parts * THOUSAND);
		}
		if (amount.amount <= 0)
			bake_die(record->path, record->line, "%s is nothing: \"%s\"", name, text);
		return amount;
	}
	bake_die(record->path, record->line, "unknown unit of %s: \"%s\"", name, text);
}
