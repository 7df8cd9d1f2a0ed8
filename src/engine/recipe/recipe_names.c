/* The words of recipes; no table is asked (bake is linked with this file). */
#include <string.h>

#include "engine/recipe/recipe.h"

static const struct {
	const char *name;
	const char *words;
} pectins[PECTIN_COUNT] = {
	[PECTIN_NONE] = { "none", "no pectin added" },
	[PECTIN_REGULAR] = { "regular", "regular pectin" },
	[PECTIN_LOW_METHOXYL] = { "low_methoxyl", "low-methoxyl pectin" },
};

static const struct {
	const char *name;
	int place;
} addings[ADDING_COUNT] = {
	[ADD_AHEAD] = { "ahead", 0 }, [ADD_AT_START] = { "at_start", 1 }, [ADD_AT_BOIL] = { "at_boil", 2 },
	[ADD_LAST] = { "last", 3 },   [ADD_PACKED] = { "packed", 4 },     [ADD_IN_JAR] = { "in_jar", 5 },
};

static const char *const measures[MEASURE_COUNT] = {
	[MEASURE_VOLUME] = "volume",
	[MEASURE_MASS] = "mass",
	[MEASURE_EACH] = "each",
};

/* mg_per_cup: sources in recipe.h. */
static const struct {
	const char *name;
	const char *words;
	enum measure measure;
	int64_t mg_per_cup;
} supplies[SUPPLY_KIND_COUNT] = {
	[SUPPLY_OTHER] = { "other", "other", MEASURE_EACH, 0 },
	[SUPPLY_JUICE] = { "juice", "juice", MEASURE_VOLUME, 0 },
	[SUPPLY_FRUIT] = { "fruit", "fruit", MEASURE_MASS, 0 },
	[SUPPLY_SUGAR] = { "sugar", "sugar", MEASURE_MASS, INT64_C(200000) },
	[SUPPLY_LEMON_JUICE] = { "lemon_juice", "bottled lemon juice", MEASURE_VOLUME, 0 },
	[SUPPLY_CITRIC_ACID] = { "citric_acid", "citric acid", MEASURE_MASS, INT64_C(220800) },
	[SUPPLY_VINEGAR] = { "vinegar", "vinegar (5 %)", MEASURE_VOLUME, 0 },
	[SUPPLY_PECTIN_REGULAR] = { "pectin_regular", "regular pectin", MEASURE_MASS, 0 },
	[SUPPLY_PECTIN_LIQUID] = { "pectin_liquid", "liquid pectin", MEASURE_MASS, 0 },
	[SUPPLY_PECTIN_LOW] = { "pectin_low", "low-methoxyl pectin", MEASURE_MASS, INT64_C(144000) },
	[SUPPLY_CALCIUM_SOLUTION] = { "calcium_solution", "calcium solution", MEASURE_VOLUME, 0 },
	[SUPPLY_SALT] = { "salt", "canning salt", MEASURE_MASS, INT64_C(288000) },
	[SUPPLY_BUTTER] = { "butter", "butter", MEASURE_MASS, INT64_C(226796) },
	[SUPPLY_JAR] = { "jar", "jars", MEASURE_EACH, 0 },
	[SUPPLY_BAND] = { "band", "screw bands", MEASURE_EACH, 0 },
};

/* The values come from logs and callers, so they are not trusted to be in range. */
static bool is_supply(enum supply_kind kind)
{
	return (int)kind >= 0 && (int)kind < SUPPLY_KIND_COUNT;
}

const char *pectin_name(enum pectin pectin)
{
	return (int)pectin >= 0 && (int)pectin < PECTIN_COUNT ? pectins[pectin].name : "?";
}

const char *pectin_words(enum pectin pectin)
{
	return (int)pectin >= 0 && (int)pectin < PECTIN_COUNT ? pectins[pectin].words : "?";
}

const char *adding_name(enum adding adding)
{
	return (int)adding >= 0 && (int)adding < ADDING_COUNT ? addings[adding].name : "?";
}

int adding_place(enum adding adding)
{
	return (int)adding >= 0 && (int)adding < ADDING_COUNT ? addings[adding].place : 0;
}

const char *measure_name(enum measure measure)
{
	return (int)measure >= 0 && (int)measure < MEASURE_COUNT ? measures[measure] : "?";
}

const char *supply_name(enum supply_kind kind)
{
	return is_supply(kind) ? supplies[kind].name : "?";
}

const char *supply_words(enum supply_kind kind)
{
	return is_supply(kind) ? supplies[kind].words : "?";
}

bool supply_from_name(const char *name, enum supply_kind *out)
{
	for (int kind = 0; name != NULL && kind < SUPPLY_KIND_COUNT; kind++) {
		if (strcmp(supplies[kind].name, name) == 0) {
			*out = (enum supply_kind)kind;
			return true;
		}
	}
	return false;
}

enum measure supply_measure(enum supply_kind kind)
{
	return is_supply(kind) ? supplies[kind].measure : MEASURE_EACH;
}

int64_t supply_mg_per_cup(enum supply_kind kind)
{
	return is_supply(kind) ? supplies[kind].mg_per_cup : 0;
}

bool supply_is_of_sheet(enum supply_kind kind)
{
	return kind == SUPPLY_PECTIN_LOW || kind == SUPPLY_CALCIUM_SOLUTION;
}
