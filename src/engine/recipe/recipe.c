#include "engine/recipe/recipe.h"

#include <string.h>

#include "base/text.h"

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

/* mg_per_cup: sources in recipe.h; bake has the same figures. */
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

const struct recipe *recipe_named(const char *name)
{
	for (size_t i = 0; name != NULL && i < recipe_count; i++) {
		if (text_same_name(name, recipes[i].name))
			return &recipes[i];
	}
	return NULL;
}

bool recipe_awaits_sheet(const struct recipe *recipe)
{
	return recipe->pectin == PECTIN_LOW_METHOXYL && recipe->multiple_max == 0;
}

bool recipe_has_amounts(const struct recipe *recipe, struct fault *fault)
{
	return !recipe_awaits_sheet(recipe) ||
	       fault_set(fault, FAULT_REFUSED,
	                 "The sheet's amounts of %s are not known yet. Choose it on the batch card of a pot and "
	                 "type what the sheet of your pectin says.",
	                 recipe->name);
}

/* Is `word` one of the blank-separated words of `list`? */
static bool in_list(const char *list, const char *word)
{
	size_t length = word == NULL ? 0 : strlen(word);

	while (length > 0 && list != NULL && *list != '\0') {
		size_t here = strcspn(list, " ");

		if (here == length && memcmp(list, word, length) == 0)
			return true;
		list += here;
		list += strspn(list, " ");
	}
	return false;
}

bool recipe_may_start(const struct recipe *recipe, struct fault *fault)
{
	return recipe->not_startable == NULL || recipe->not_startable[0] == '\0' ||
	       fault_set(fault, FAULT_REFUSED, "%s: %s", recipe->name, recipe->not_startable);
}

bool recipe_allows_jar(const struct recipe *recipe, const char *jar)
{
	return in_list(recipe->jars, jar);
}

bool recipe_allows_pack(const struct recipe *recipe, const char *pack)
{
	return in_list(recipe->packs, pack);
}

/* Do the tables have a row that may be offered for this jar or a larger one? */
static bool pair_offered(const char *food, const char *pack, const struct jar_size *jar)
{
	for (int method = 0; jar != NULL && method < METHOD_COUNT; method++) {
		const struct jar_size *tested = NULL;

		while ((tested = process_next_jar(food, (enum method)method, pack, tested)) != NULL) {
			if (jar_size_index(tested) >= jar_size_index(jar))
				return true;
		}
	}
	return false;
}

bool recipe_allows_pair(const struct recipe *recipe, const char *pack, const char *jar)
{
	if (!recipe_allows_jar(recipe, jar))
		return false;
	if (recipe->food[0] == '\0')
		return true;
	return recipe_allows_pack(recipe, pack) && pair_offered(recipe->food, pack, jar_size_named(jar));
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

bool ingredient_is_alternative(const struct ingredient *ingredient)
{
	return ingredient->instead_of != NULL && ingredient->instead_of[0] != '\0';
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
