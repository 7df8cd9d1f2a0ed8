#include "engine/recipe/amount.h"

#include <assert.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

#include "engine/recipe/amount_units.h"

#define WHOLE_DIGITS_MAX 10
#define PART_DIGITS_MAX 6
#define TEASPOONS_A_CUP 48

struct unit {
	const char *name;
	enum measure measure;
	int64_t grains;
	int teaspoons; /* what it holds, for powders told so; 0: none is told in it */
};

static const struct unit units_known[] = {
	{ "gallon", MEASURE_VOLUME, GALLON, 768 },
	{ "gal", MEASURE_VOLUME, GALLON, 768 },
	{ "quart", MEASURE_VOLUME, QUART, 192 },
	{ "qt", MEASURE_VOLUME, QUART, 192 },
	{ "pint", MEASURE_VOLUME, PINT, 96 },
	{ "pt", MEASURE_VOLUME, PINT, 96 },
	{ "cup", MEASURE_VOLUME, CUP, 48 },
	{ "floz", MEASURE_VOLUME, FLUID_OUNCE, 6 },
	{ "tablespoon", MEASURE_VOLUME, TABLESPOON, 3 },
	{ "tbsp", MEASURE_VOLUME, TABLESPOON, 3 },
	{ "teaspoon", MEASURE_VOLUME, TEASPOON, 1 },
	{ "tsp", MEASURE_VOLUME, TEASPOON, 1 },
	{ "litre", MEASURE_VOLUME, 1000000 * UL, 0 },
	{ "liter", MEASURE_VOLUME, 1000000 * UL, 0 },
	{ "l", MEASURE_VOLUME, 1000000 * UL, 0 },
	{ "dl", MEASURE_VOLUME, 100000 * UL, 0 },
	{ "cl", MEASURE_VOLUME, 10000 * UL, 0 },
	{ "ml", MEASURE_VOLUME, 1000 * UL, 0 },
	{ "ul", MEASURE_VOLUME, UL, 0 },
	{ "pound", MEASURE_MASS, POUND, 0 },
	{ "lb", MEASURE_MASS, POUND, 0 },
	{ "ounce", MEASURE_MASS, OUNCE, 0 },
	{ "oz", MEASURE_MASS, OUNCE, 0 },
	{ "kg", MEASURE_MASS, 1000000 * MG, 0 },
	{ "gram", MEASURE_MASS, 1000 * MG, 0 },
	{ "g", MEASURE_MASS, 1000 * MG, 0 },
	{ "mg", MEASURE_MASS, MG, 0 },
	{ "dozen", MEASURE_EACH, 12 * PIECE, 0 },
	{ "piece", MEASURE_EACH, PIECE, 0 },
	{ "each", MEASURE_EACH, PIECE, 0 },
	/* What things come in: what one holds is said, or known of the house. */
	{ "bushel", MEASURE_COUNT, 0, 0 },
	{ "bu", MEASURE_COUNT, 0, 0 },
	{ "lug", MEASURE_COUNT, 0, 0 },
	{ "box", MEASURE_COUNT, 0, 0 },
	{ "bag", MEASURE_COUNT, 0, 0 },
	{ "sack", MEASURE_COUNT, 0, 0 },
	{ "crate", MEASURE_COUNT, 0, 0 },
	{ "case", MEASURE_COUNT, 0, 0 },
	{ "bottle", MEASURE_COUNT, 0, 0 },
	{ "package", MEASURE_COUNT, 0, 0 },
};

/* What is read for: a powder may be told in cups, a box may be known. */
struct asked {
	enum measure measure;
	int64_t mg_per_cup; /* 0: not told in cups */
	int64_t bought;     /* at a time, in its measure; 0: not known */
};

static int64_t grains_of_one(enum measure measure)
{
	return measure == MEASURE_VOLUME ? UL : measure == MEASURE_MASS ? MG : PIECE;
}

static int64_t most(enum measure measure)
{
	return measure == MEASURE_VOLUME ? AMOUNT_UL_MAX : measure == MEASURE_MASS ? AMOUNT_MG_MAX : AMOUNT_PIECES_MAX;
}

/* whole + part / of */
struct number {
	int64_t whole;
	int64_t part;
	int64_t of;
};

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static const char *past_blanks(const char *at)
{
	while (*at == ' ' || *at == '\t')
		at++;
	return at;
}

static bool read_digits(const char **at, int most_digits, int64_t *out)
{
	int digits = 0;

	for (*out = 0; digit(**at); (*at)++) {
		if (++digits > most_digits)
			return false;
		*out = *out * 10 + (**at - '0');
	}
	return digits > 0;
}

static bool read_decimals(const char **at, struct number *out)
{
	const char *from = *at;

	if (!read_digits(at, PART_DIGITS_MAX, &out->part))
		return false;
	for (const char *c = from; c < *at; c++)
		out->of *= 10;
	return true;
}

/* The "/2" behind a number of parts. */
static bool read_divisor(const char **at, struct number *out)
{
	(*at)++;
	return read_digits(at, PART_DIGITS_MAX, &out->of) && out->of > 0;
}

/* "3", "2.5", ".5", "1/2", "1 1/2" */
static bool read_number(const char **at, struct number *out)
{
	const char *next;
	int64_t parts;

	*out = (struct number){ .of = 1 };
	if (!(**at == '.' && digit((*at)[1])) && !read_digits(at, WHOLE_DIGITS_MAX, &out->whole))
		return false;
	if (**at == '.') {
		(*at)++;
		return read_decimals(at, out);
	}
	if (**at == '/') {
		out->part = out->whole;
		out->whole = 0;
		return read_divisor(at, out);
	}
	next = past_blanks(*at);
	if (next == *at || !read_digits(&next, PART_DIGITS_MAX, &parts) || *next != '/')
		return true; /* what follows is not a part of this number */
	*at = next;
	out->part = parts;
	return read_divisor(at, out) && out->part < out->of;
}

/* "cups", "lbs.", "fl oz": the letters of a unit, those of "fl oz" together. */
static void read_name(const char **at, char *name, size_t size)
{
	size_t used = 0;

	for (;;) {
		for (; letter(**at); (*at)++)
			if (used < size - 1)
				name[used++] = **at;
		name[used] = '\0';
		if (**at == '.')
			(*at)++;
		if (strcasecmp(name, "fl") != 0)
			return;
		*at = past_blanks(*at);
		if (!letter(**at))
			return;
	}
}

/* The name of a unit, or more than one of it: "cups", "lbs", "boxes", but not "gs". */
static bool names(const char *word, const char *name)
{
	size_t length = strlen(name);
	const char *more = name[length - 1] == 'x' ? "es" : "s";

	return strncasecmp(word, name, length) == 0 &&
	       (word[length] == '\0' || (length > 1 && strcasecmp(word + length, more) == 0));
}

static bool read_unit(const char **at, const struct unit **out, struct fault *fault)
{
	char name[16];

	read_name(at, name, sizeof(name));
	*out = NULL;
	if (name[0] == '\0')
		return true;
	for (size_t i = 0; i < sizeof(units_known) / sizeof(units_known[0]); i++)
		if (names(name, units_known[i].name)) {
			*out = &units_known[i];
			return true;
		}
	return fault_set(fault, FAULT_MISUSE,
	                 "\"%s\" is not a unit this program knows: gal, qt, pt, cup, fl oz, tbsp, tsp, L, mL, "
	                 "lb, oz, kg, g or dozen.",
	                 name);
}

static const char *example(enum measure measure)
{
	return measure == MEASURE_VOLUME ? "3 qt, 1 1/2 cups or 2.5 L"
	       : measure == MEASURE_MASS ? "20 lb, 12 oz or 2.5 kg"
	                                 : "144 or 12 dozen";
}

static const char *one_holds(enum measure measure)
{
	return measure == MEASURE_VOLUME ? "2 qt" : measure == MEASURE_MASS ? "25 lb" : "12";
}

static bool wrong_measure(const struct unit *unit, enum measure measure, struct fault *fault)
{
	static const char *const what[] = { "a volume", "a weight", "a count" };
	static const char *const how[] = { "measured by volume", "weighed", "counted in pieces" };
	bool ounces = measure == MEASURE_VOLUME && strcmp(unit->name, "oz") == 0;

	static_assert(MEASURE_VOLUME == 0 && MEASURE_MASS == 1 && MEASURE_EACH == 2, "as above");
	return fault_set(fault, FAULT_MISUSE, "\"%s\" is %s and this is %s: write it like %s.%s", unit->name,
	                 what[unit->measure], how[measure], example(measure),
	                 ounces ? " Ounces of volume are fl oz." : "");
}

/* Grains of one `unit` (NULL: none was written) of the measure. */
static bool grains_of(const struct unit *unit, const struct asked *asked, const struct number *number, int64_t *grains,
                      struct fault *fault)
{
	enum measure measure = asked->measure;
	bool nothing = number->whole == 0 && number->part == 0;

	*grains = PIECE;
	if (unit == NULL)
		return measure == MEASURE_EACH || nothing ||
		       fault_set(fault, FAULT_MISUSE, "A number alone does not say how much: write it like %s.",
		                 example(measure));
	if (measure == MEASURE_MASS && unit->teaspoons > 0 && asked->mg_per_cup > 0)
		*grains = asked->mg_per_cup * MG / TEASPOONS_A_CUP * unit->teaspoons;
	else if (unit->measure == measure)
		*grains = unit->grains;
	else
		return wrong_measure(unit, measure, fault);
	return true;
}

/* number x grains, rounded; false when it is more than `limit`.  *rest: there was
 * something to round.  What the remainder is multiplied by has 10 digits at most,
 * and it has 6 itself. */
static bool times(const struct number *number, int64_t grains, int64_t limit, int64_t *out, bool *rest)
{
	int64_t quotient = grains / number->of;
	int64_t left = grains % number->of * number->part;

	if (number->whole > limit / grains || (quotient > 0 && number->part > limit / quotient))
		return false;
	*rest = left % number->of != 0;
	*out = number->whole * grains + quotient * number->part + (left + number->of / 2) / number->of;
	return *out <= limit;
}

static bool is_container(const struct unit *unit)
{
	return unit != NULL && unit->measure == MEASURE_COUNT;
}

/* What one box holds, behind "of", else as much as is bought at a time. */
static bool held_by_one(const char **at, const struct unit *container, const struct asked *asked, int64_t *grains,
                        struct fault *fault)
{
	int64_t limit = most(asked->measure) * grains_of_one(asked->measure);
	const char *next = past_blanks(*at);
	const struct unit *unit;
	struct number number;
	bool rest;

	*grains = asked->bought * grains_of_one(asked->measure);
	if (strncasecmp(next, "of", 2) == 0 && !letter(next[2])) {
		next = past_blanks(next + 2);
		*grains = 0;
		if (read_number(&next, &number)) {
			next = past_blanks(next);
			if (!read_unit(&next, &unit, fault) ||
			    (!is_container(unit) && !grains_of(unit, asked, &number, grains, fault)))
				return false;
			if (*grains > 0 && !times(&number, *grains, limit, grains, &rest))
				return fault_set(fault, FAULT_MISUSE, "That is more than any kitchen holds. Check it.");
			*at = next;
		}
	}
	return *grains > 0 || fault_set(fault, FAULT_MISUSE, "Say what one %s holds here, as in 1 %s of %s.",
	                                container->name, container->name, one_holds(asked->measure));
}

static bool read_terms(const char *at, const struct asked *asked, int64_t *sum, struct fault *fault)
{
	enum measure measure = asked->measure;
	int64_t limit = most(measure) * grains_of_one(measure);

	*sum = 0;
	do {
		const struct unit *unit;
		struct number number;
		int64_t grains;
		int64_t term;
		bool rest;

		if (!read_number(&at, &number))
			return fault_set(fault, FAULT_MISUSE, "That is not an amount: write it like %s.",
			                 example(measure));
		at = past_blanks(at);
		if (!read_unit(&at, &unit, fault) ||
		    !(is_container(unit) ? held_by_one(&at, unit, asked, &grains, fault)
		                         : grains_of(unit, asked, &number, &grains, fault)))
			return false;
		if (!times(&number, grains, limit, &term, &rest) || term > limit - *sum)
			return fault_set(fault, FAULT_MISUSE, "That is more than any kitchen holds. Check it.");
		if (rest && measure == MEASURE_EACH)
			return fault_set(fault, FAULT_MISUSE, "Pieces are whole numbers.");
		*sum += term;
		at = past_blanks(at);
		if (*at == '+')
			at = past_blanks(at + 1);
		else if (unit == NULL && *at != '\0')
			return fault_set(fault, FAULT_MISUSE, "That is not an amount: write it like %s.",
			                 example(measure));
		else if (*at == '\0')
			return true;
	} while (true);
}

static bool read_whole_units(const char *words, const struct asked *asked, int64_t *out, struct fault *fault)
{
	int64_t one = grains_of_one(asked->measure);
	int64_t sum;

	if (!read_terms(past_blanks(words), asked, &sum, fault))
		return false;
	*out = (sum + one / 2) / one;
	return true;
}

bool amount_read(const char *words, enum measure measure, enum supply_kind supply, int64_t *out, struct fault *fault)
{
	return amount_read_bought(words, measure, supply, 0, out, fault);
}

bool amount_read_bought(const char *words, enum measure measure, enum supply_kind supply, int64_t bought, int64_t *out,
                        struct fault *fault)
{
	struct asked asked = { measure, supply == SUPPLY_SUGAR ? SUGAR_MG_PER_CUP : 0, bought };

	return read_whole_units(words, &asked, out, fault);
}

bool amount_read_level(const char *words, enum supply_kind supply, int64_t *out, struct fault *fault)
{
	struct asked asked = { supply_measure(supply), supply_mg_per_cup(supply), 0 };

	return read_whole_units(words, &asked, out, fault);
}

/* The measure of the first unit written, of what is in a box; pieces when there is none. */
static enum measure measure_written(const char *at)
{
	const struct unit *unit = NULL;

	do {
		while (*at != '\0' && !digit(*at))
			at++;
		while (*at != '\0' && !letter(*at))
			at++;
		if (!read_unit(&at, &unit, NULL) || unit == NULL)
			return MEASURE_EACH;
	} while (is_container(unit));
	return unit->measure;
}

bool amount_read_any(const char *words, enum supply_kind supply, enum measure *measure, int64_t *out,
                     struct fault *fault)
{
	enum measure found = supply == SUPPLY_SUGAR ? MEASURE_MASS : measure_written(words);

	if (!amount_read(words, found, supply, out, fault))
		return false;
	*measure = found;
	return true;
}

#define AT_MOST "at most "
#define TO " to "

bool amount_read_range(const char *words, enum supply_kind supply, struct amount_range *out, struct fault *fault)
{
	struct amount_range read = { .most = 0 };
	bool at_most = strncasecmp(words, AT_MOST, strlen(AT_MOST)) == 0;
	const char *least = at_most ? words + strlen(AT_MOST) : words;
	const char *to = strstr(least, TO);
	char first[AMOUNT_RANGE_BYTES];

	if (strlen(least) >= sizeof(first) || (at_most && to != NULL))
		return fault_set(fault, FAULT_MISUSE, "That is not an amount: write it like 4 cups to 5 cups.");
	(void)snprintf(first, sizeof(first), "%.*s", to != NULL ? (int)(to - least) : (int)strlen(least), least);
	if (!amount_read_any(first, supply, &read.measure, &read.amount, fault))
		return false;
	if (to != NULL && !amount_read(to + strlen(TO), read.measure, supply, &read.most, fault))
		return false;
	if (to != NULL && read.most <= read.amount)
		return fault_set(fault, FAULT_MISUSE, "From the smaller amount to the larger: 4 cups to 5 cups.");
	if (at_most)
		read.most = read.amount;
	*out = read;
	return true;
}
