#include "engine/recipe/amount.h"

#include <assert.h>

#include "base/text.h"
#include "engine/recipe/amount_units.h"

#define TBSP INT64_C(24) /* eighths of a teaspoon */
#define CUP_EIGHTHS INT64_C(384)
#define OZ_4 INT64_C(32) /* eighths of an ounce */
#define LB_4 INT64_C(512)

/* An amount in `unit` grains instead of `one`, rounded to whole ones. */
static int64_t in_units(int64_t amount, int64_t one, int64_t unit)
{
	int64_t each = unit / one; /* for amounts that no kitchen has */

	if (amount > (INT64_MAX - unit) / one)
		return amount / (each > 0 ? each : 1);
	return (amount * one + unit / 2) / unit;
}

static void add_count(struct text *text, int64_t count, const char *one, const char *more)
{
	if (count > 0)
		text_add(text, "%s%lld %s", text->used > 0 ? " " : "", (long long)count, count == 1 ? one : more);
}

/* "2 1/4 cups", from a number of eighths. */
static void add_eighths(struct text *text, int64_t eighths, const char *one, const char *more)
{
	static const char *const parts[] = { "", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8" };

	if (eighths <= 0)
		return;
	text_add(text, "%s", text->used > 0 ? " " : "");
	if (eighths >= 8)
		text_add(text, "%lld%s", (long long)(eighths / 8), eighths % 8 > 0 ? " " : "");
	text_add(text, "%s %s", parts[eighths % 8], eighths > 8 ? more : one);
}

/* A number of thousandths, with as many of them as asked for and no zeros at the end. */
static void add_decimal(struct text *text, int64_t thousandths, int decimals, const char *unit)
{
	int64_t step = decimals == 0 ? 1000 : decimals == 1 ? 100 : decimals == 2 ? 10 : 1;
	int64_t value = (thousandths + step / 2) / step * step;
	int part = (int)(value % 1000);

	text_add(text, "%lld", (long long)(value / 1000));
	if (part % 100 == 0 && part > 0)
		text_add(text, ".%d", part / 100);
	else if (part % 10 == 0 && part > 0)
		text_add(text, ".%02d", part / 10);
	else if (part > 0)
		text_add(text, ".%03d", part);
	text_add(text, " %s", unit);
}

/* Thousandths of the small unit: "2.5 mL", "350 mL", "2.35 L". */
static void add_metric(struct text *text, int64_t amount, const char *small, const char *large)
{
	if (amount >= 999500)
		add_decimal(text, amount / 1000, 2, large);
	else
		add_decimal(text, amount, amount < 10000 ? 2 : amount < 100000 ? 1 : 0, small);
}

/* How finely a volume is told, all in eighths of a teaspoon. */
static int64_t step_of_volume(int64_t eighths)
{
	static const struct {
		int64_t below;
		int64_t step;
	} steps[] = {
		{ TBSP, 1 },
		{ CUP_EIGHTHS / 2, 2 },
		{ CUP_EIGHTHS, 8 },
		{ 4 * CUP_EIGHTHS, TBSP },
		{ 32 * CUP_EIGHTHS, CUP_EIGHTHS / 4 },
	};

	for (size_t i = 0; i < sizeof(steps) / sizeof(steps[0]); i++)
		if (eighths < steps[i].below)
			return steps[i].step;
	return CUP_EIGHTHS;
}

static void us_volume(struct text *text, int64_t ul)
{
	int64_t eighths = in_units(ul, UL, TEASPOON / 8);
	int64_t step = step_of_volume(eighths);
	int64_t over;

	if (eighths == 0) {
		add_metric(text, ul, "mL", "L");
		return;
	}
	eighths = (eighths + step / 2) / step * step;
	over = eighths % CUP_EIGHTHS;
	add_count(text, eighths / (16 * CUP_EIGHTHS), "gal", "gal");
	add_count(text, eighths / (4 * CUP_EIGHTHS) % 4, "qt", "qt");
	if (over % (CUP_EIGHTHS / 4) == 0) {
		add_eighths(text, eighths % (4 * CUP_EIGHTHS) * 8 / CUP_EIGHTHS, "cup", "cups");
		return;
	}
	add_count(text, eighths / CUP_EIGHTHS % 4, "cup", "cups");
	add_count(text, over / TBSP, "tbsp", "tbsp");
	add_eighths(text, over % TBSP, "tsp", "tsp");
}

static void us_mass(struct text *text, int64_t mg)
{
	int64_t eighths = in_units(mg, MG, OUNCE / 8);
	int64_t step = eighths < OZ_4 ? 1 : eighths < LB_4 ? 2 : 8;

	/* Less than an ounce: a kitchen scale shows it better in grams. */
	if (eighths < 8) {
		add_metric(text, mg, "g", "kg");
		return;
	}
	eighths = (eighths + step / 2) / step * step;
	add_count(text, eighths / 128, "lb", "lb");
	add_eighths(text, eighths % 128, "oz", "oz");
}

static const char *none_words(enum measure measure, enum unit_system units)
{
	if (measure == MEASURE_EACH)
		return "0";
	if (units == UNITS_METRIC)
		return measure == MEASURE_VOLUME ? "0 L" : "0 kg";
	return measure == MEASURE_VOLUME ? "0 qt" : "0 lb";
}

void amount_words(enum measure measure, int64_t amount, enum unit_system units, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);

	if (amount == 0) {
		text_add(&text, "%s", none_words(measure, units));
		return;
	}
	if (amount < 0) {
		/* The minus stands before words made for what is left of the buffer. */
		text_add(&text, "-");
		if (text.used < size && amount > INT64_MIN)
			amount_words(measure, -amount, units, buffer + text.used, size - text.used);
		return;
	}
	if (measure == MEASURE_EACH)
		text_add(&text, "%lld", (long long)amount);
	else if (units == UNITS_METRIC)
		add_metric(&text, amount, measure == MEASURE_VOLUME ? "mL" : "g",
		           measure == MEASURE_VOLUME ? "L" : "kg");
	else if (measure == MEASURE_VOLUME)
		us_volume(&text, amount);
	else
		us_mass(&text, amount);
}

/* --- words that are read back exactly ------------------------------------------------ */

#define PLAIN_ENOUGH 30 /* units to count out; more is easier to read in metric */
#define TWO_MEASURES 8  /* two kinds of tools are as bad as so many more of one */

struct told {
	enum measure measure;
	bool only_sugar;
	int64_t grains;
	int parts_max; /* fractions of it that are usual: down to quarters of a cup */
	const char *one;
	const char *more;
};

static const struct told told[] = {
	{ MEASURE_VOLUME, false, GALLON, 1, "gal", "gal" },
	{ MEASURE_VOLUME, false, QUART, 1, "qt", "qt" },
	{ MEASURE_VOLUME, false, CUP, 4, "cup", "cups" },
	{ MEASURE_VOLUME, false, TABLESPOON, 1, "tbsp", "tbsp" },
	{ MEASURE_VOLUME, false, TEASPOON, 8, "tsp", "tsp" },
	{ MEASURE_MASS, true, SUGAR_CUP, 4, "cup", "cups" },
	{ MEASURE_MASS, true, SUGAR_CUP / 16, 1, "tbsp", "tbsp" },
	{ MEASURE_MASS, true, SUGAR_CUP / 48, 8, "tsp", "tsp" },
	{ MEASURE_MASS, false, POUND, 4, "lb", "lb" },
	{ MEASURE_MASS, false, OUNCE, 8, "oz", "oz" },
};
static_assert(AMOUNT_UL_MAX == AMOUNT_MG_MAX, "one limit keeps both from running over");
#define TOLD_COUNT (sizeof(told) / sizeof(told[0]))

static const struct {
	int parts;
	int awkward; /* as bad as so many whole ones */
} fractions[] = { { 1, 0 }, { 2, 3 }, { 4, 3 }, { 3, 3 }, { 8, 4 } };
#define FRACTION_COUNT (sizeof(fractions) / sizeof(fractions[0]))

/* The amount being put into words, and the plainest so far. */
struct wording {
	enum measure measure;
	enum supply_kind supply;
	int64_t amount;
	int64_t awkward;
	char words[64];
};

static bool fits(const struct wording *wording, const struct told *unit)
{
	return unit->measure == wording->measure && (!unit->only_sugar || wording->supply == SUPPLY_SUGAR);
}

static void keep_if_exact(struct wording *wording, const char *words, int64_t awkward)
{
	int64_t read;

	if (awkward >= wording->awkward || !amount_read(words, wording->measure, wording->supply, &read, NULL) ||
	    read != wording->amount)
		return;
	wording->awkward = awkward;
	text_copy(wording->words, sizeof(wording->words), words);
}

/* `first` whole ones of a unit (NULL: none), and the rest in `unit` and parts of it. */
static void try_unit(struct wording *wording, const struct told *before, int64_t first, const struct told *unit)
{
	int64_t one = unit->measure == MEASURE_VOLUME ? UL : MG;
	int64_t rest = before == NULL ? wording->amount : wording->amount - first * before->grains / one;

	for (size_t i = 0; i < FRACTION_COUNT; i++) {
		int parts = fractions[i].parts;
		int64_t count = in_units(rest, one, unit->grains / parts);
		int64_t awkward = first + count / parts + fractions[i].awkward + (before != NULL ? TWO_MEASURES : 0);
		char words[64];
		struct text text = TEXT_OVER(words);

		if (parts > unit->parts_max || count == 0 || awkward >= wording->awkward ||
		    (parts > 1 && count % parts == 0))
			continue;
		if (before != NULL)
			text_add(&text, "%lld %s + ", (long long)first, first == 1 ? before->one : before->more);
		if (count >= parts)
			text_add(&text, "%lld ", (long long)(count / parts));
		if (parts > 1)
			text_add(&text, "%lld/%d ", (long long)(count % parts), parts);
		text_add(&text, "%s", count <= parts ? unit->one : unit->more);
		keep_if_exact(wording, words, awkward);
	}
}

static void try_us(struct wording *wording)
{
	int64_t one = wording->measure == MEASURE_VOLUME ? UL : MG;

	for (size_t i = 0; i < TOLD_COUNT; i++) {
		int64_t first;

		if (!fits(wording, &told[i]))
			continue;
		try_unit(wording, NULL, 0, &told[i]);
		first = wording->amount / (told[i].grains / one);
		for (size_t j = i + 1; j < TOLD_COUNT && first > 0; j++)
			if (fits(wording, &told[j]) && told[j].only_sugar == told[i].only_sugar)
				try_unit(wording, &told[i], first, &told[j]);
	}
}

static void exact_metric(struct text *text, enum measure measure, int64_t amount)
{
	bool large = amount >= 1000000 && amount % 1000 == 0;

	add_decimal(text, large ? amount / 1000 : amount, 3,
	            measure == MEASURE_VOLUME ? large ? "L" : "mL"
	            : large                   ? "kg"
	                                      : "g");
}

/* As it is told, where that is the very amount: 34 lb. */
static bool said_shortly(enum measure measure, enum supply_kind supply, int64_t amount, enum unit_system units,
                         char *buffer, size_t size)
{
	int64_t read;

	amount_words(measure, amount, units, buffer, size);
	return amount_read(buffer, measure, supply, &read, NULL) && read == amount;
}

void amount_exact_words(enum measure measure, enum supply_kind supply, int64_t amount, enum unit_system units,
                        char *buffer, size_t size)
{
	struct wording wording = { .measure = measure, .supply = supply, .amount = amount, .awkward = PLAIN_ENOUGH };
	struct text text = text_over(buffer, size);
	char plain[64];

	if (measure == MEASURE_EACH || amount <= 0) {
		text_add(&text, "%lld", (long long)amount);
		return;
	}
	/* A whole number of millilitres or grams was hardly meant in cups or ounces. */
	if (amount <= AMOUNT_UL_MAX && (units == UNITS_US || amount % 1000 != 0))
		try_us(&wording);
	if (wording.words[0] != '\0')
		text_add(&text, "%s", wording.words);
	else if (said_shortly(measure, supply, amount, units, plain, sizeof(plain)))
		text_add(&text, "%s", plain);
	else
		exact_metric(&text, measure, amount);
}

void amount_range_words(const struct amount_range *range, enum supply_kind supply, enum unit_system units, char *buffer,
                        size_t size)
{
	char least[64];
	char most[64];
	struct text text = text_over(buffer, size);

	amount_exact_words(range->measure, supply, range->amount, units, least, sizeof(least));
	amount_exact_words(range->measure, supply, range->most, units, most, sizeof(most));
	if (range->most == 0)
		text_add(&text, "%s", least);
	else if (range->most == range->amount)
		text_add(&text, "at most %s", least);
	else
		text_add(&text, "%s to %s", least, most);
}
