/*
 * recipe.c - recipes and what goes into them, checked as recipe_check() of the
 * engine checks a kitchen's own, and against the process tables.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <string.h>

#define INGREDIENTS_MAX 12 /* src/engine/recipe.h: RECIPE_INGREDIENTS_MAX */

static const char *const pectins[] = { "none", "regular", "low_methoxyl" };
static const char *const pectin_constants[] = {
	"PECTIN_NONE", "PECTIN_REGULAR", "PECTIN_LOW_METHOXYL",
};
#define NO_PECTIN 0
#define REGULAR 1
#define LOW_METHOXYL 2

static const char *const gel_tests[] = { "none", "temperature" };
static const char *const gel_constants[] = { "GEL_TEST_NONE", "GEL_TEST_TEMPERATURE" };

static const char *const addings[] = { "at_start", "at_boil", "last", "in_jar" };
static const char *const adding_constants[] = {
	"ADD_AT_START", "ADD_AT_BOIL", "ADD_LAST", "ADD_IN_JAR",
};
#define IN_JAR 3

static const char *const measure_constants[] = { "MEASURE_VOLUME", "MEASURE_MASS", "MEASURE_EACH" };
static const char *const answers[] = { "no", "yes" };

#define ANY_MEASURE 3
/* Powders that are told in spoons are kept by weight: mg a cup, as
 * supply_mg_per_cup() of the engine, sources there; tests compare the two. */
static const struct {
	const char *constant;
	size_t measure;
	int64_t mg_a_cup;
} supplies[] = {
	{ "SUPPLY_OTHER", ANY_MEASURE, 0 },
	{ "SUPPLY_JUICE", MEASURE_VOLUME, 0 },
	{ "SUPPLY_FRUIT", MEASURE_MASS, 0 },
	{ "SUPPLY_SUGAR", MEASURE_MASS, 200000 },
	{ "SUPPLY_LEMON_JUICE", MEASURE_VOLUME, 0 },
	{ "SUPPLY_CITRIC_ACID", MEASURE_MASS, 220800 },
	{ "SUPPLY_VINEGAR", MEASURE_VOLUME, 0 },
	{ "SUPPLY_PECTIN_REGULAR", MEASURE_MASS, 0 },
	{ "SUPPLY_PECTIN_LOW", MEASURE_MASS, 144000 },
	{ "SUPPLY_CALCIUM_WATER", MEASURE_VOLUME, 0 },
	{ "SUPPLY_SALT", MEASURE_MASS, 288000 },
	{ "SUPPLY_BUTTER", MEASURE_MASS, 226796 },
};
static const char *const supply_names[] = {
	"other", "juice", "fruit", "sugar", "lemon_juice", "citric_acid", "vinegar",
	"pectin_regular", "pectin_low", "calcium_water", "salt", "butter",
};
#define SUPPLIES (sizeof(supplies) / sizeof(supplies[0]))
_Static_assert(SUPPLIES == sizeof(supply_names) / sizeof(supply_names[0]), "one name a supply");
#define LEMON_JUICE 4
#define CITRIC_ACID 5
#define VINEGAR 6
#define PECTIN_REGULAR 7
#define PECTIN_LOW 8

struct ingredient {
	const char *name;
	size_t supply;
	struct amount amount;
	const char *form;
	size_t adding;
	size_t optional;
	long line;
};

struct recipe {
	const char *name;
	const char *food;
	const char *packs;
	const char *jars;
	size_t pectin;
	size_t acidity;
	size_t gel_test;
	int boil_hold_s;
	int headspace_thou;
	int multiple_max;
	int foam_percent;
	int boil_off_low;
	int boil_off_high;
	int64_t yield_low_ul;
	int64_t yield_high_ul;
	const char *caution;
	const char *source;
	const char *path;
	long line;
	size_t count;
	struct ingredient ingredients[INGREDIENTS_MAX];
};

struct book {
	struct recipe *row;
	size_t count;
};

/* What the process tables hold; empty when they were not given. */
struct tables {
	struct jars jars;
	struct processes processes;
};

/* --- reading ---------------------------------------------------------------- */

/* May be empty; the engine and the log copy it into `size` bytes. */
static const char *
field_free(const struct record *record, size_t index, const char *name, size_t size)
{
	if (strlen(record->field[index]) >= size)
		bake_die(record->path, record->line, "%s is longer than %zu bytes", name, size - 1);
	return bake_copy(record->field[index]);
}

static int64_t
field_yield(const struct record *record, size_t index, const char *name)
{
	struct amount amount;

	if (record->field[index][0] == '\0')
		return 0;
	amount = field_amount(record, index, name, 0);
	if (amount.measure != MEASURE_VOLUME)
		bake_die(record->path, record->line, "%s is no volume: \"%s\"", name, record->field[index]);
	return amount.amount;
}

static struct recipe
recipe_from(const struct record *record)
{
	struct recipe row = {
		.name = bake_copy(field_text(record, 0, "name", NAME_BYTES)),
		.food = field_free(record, 1, "food", NAME_BYTES),
		.packs = field_free(record, 2, "packs", SOURCE_BYTES),
		.jars = field_free(record, 3, "jars", SOURCE_BYTES),
		.pectin = field_word(record, 4, "pectin", pectins, 3),
		.acidity = field_word(record, 5, "acidity", acidity_names, ACIDITY_COUNT),
		.gel_test = field_word(record, 6, "gel_test", gel_tests, 2),
		.boil_hold_s = field_number(record, 7, "boil_hold_s", 0, 3600),
		.headspace_thou = field_thousandths(record, 8, "headspace_in", 3000),
		.multiple_max = field_number(record, 9, "multiple_max", 1, 16),
		.foam_percent = field_number(record, 10, "foam_percent", 0, 75),
		.boil_off_low = field_number(record, 11, "boil_off_low_percent", 0, 90),
		.boil_off_high = field_number(record, 12, "boil_off_high_percent", 0, 90),
		.yield_low_ul = field_yield(record, 13, "yield_low"),
		.yield_high_ul = field_yield(record, 14, "yield_high"),
		.caution = field_free(record, 15, "caution", SOURCE_BYTES),
		.source = bake_copy(field_text(record, 16, "source", SOURCE_BYTES)),
		.path = record->path,
		.line = record->line,
	};

	return row;
}

static struct book
recipes_read(const char *path)
{
	static const char *const header[] = {
		"name", "food", "packs", "jars", "pectin", "acidity", "gel_test", "boil_hold_s",
		"headspace_in", "multiple_max", "foam_percent", "boil_off_low_percent",
		"boil_off_high_percent", "yield_low", "yield_high", "caution", "source",
	};
	struct source source = source_read(path);
	struct record record;
	struct book book = { 0 };

	header_read(&source, header, sizeof(header) / sizeof(header[0]));
	while (row_read(&source, &record, sizeof(header) / sizeof(header[0]))) {
		struct recipe recipe = recipe_from(&record);

		for (size_t i = 0; i < book.count; i++) {
			if (same_name(book.row[i].name, recipe.name))
				bake_die(path, recipe.line, "the recipe \"%s\" is already on line %ld", recipe.name,
				         book.row[i].line);
		}
		book.row = bake_room(book.row, book.count + 1, sizeof(book.row[0]));
		book.row[book.count++] = recipe;
	}
	if (book.count == 0)
		bake_die(path, 2, "no rows");
	return book;
}

static char
lower(char letter)
{
	return (char)(letter >= 'A' && letter <= 'Z' ? letter - 'A' + 'a' : letter);
}

/* `word` in small letters. */
static bool
holds(const char *text, const char *word)
{
	for (; *text != '\0'; text++) {
		size_t i = 0;

		while (word[i] != '\0' && lower(text[i]) == word[i])
			i++;
		if (word[i] == '\0')
			return true;
	}
	return false;
}

static void
check_ingredient(const char *path, const struct ingredient *item)
{
	size_t measure = supplies[item->supply].measure;

	if (measure != ANY_MEASURE && item->amount.measure != measure)
		bake_die(path, item->line, "%s is kept by %s, and the amount is not",
		         supply_names[item->supply], measure == MEASURE_MASS ? "weight" : "volume");
	/* Its strength varies: Colorado State and Penn State Extension. */
	if (item->supply == LEMON_JUICE && (holds(item->name, "fresh") || holds(item->form, "fresh")))
		bake_die(path, item->line, "fresh lemon juice as the acid; its strength varies");
	if (holds(item->name, "lemon juice") && item->supply != LEMON_JUICE)
		bake_die(path, item->line, "lemon juice is the supply lemon_juice, from a bottle");
}

static struct ingredient
ingredient_from(const struct record *record)
{
	size_t supply = field_word(record, 2, "supply", supply_names, SUPPLIES);
	struct ingredient item = {
		.name = bake_copy(field_text(record, 1, "name", NAME_BYTES)),
		.supply = supply,
		.amount = field_amount(record, 3, "amount", supplies[supply].mg_a_cup),
		.form = field_free(record, 4, "form", NAME_BYTES),
		.adding = field_word(record, 5, "adding", addings, 4),
		.optional = field_word(record, 6, "optional", answers, 2),
		.line = record->line,
	};

	check_ingredient(record->path, &item);
	return item;
}

static void
ingredients_read(struct book *book, const char *path)
{
	static const char *const header[] = {
		"recipe", "name", "supply", "amount", "form", "adding", "optional",
	};
	struct source source = source_read(path);
	struct record record;

	header_read(&source, header, 7);
	while (row_read(&source, &record, 7)) {
		struct recipe *recipe = NULL;
		struct ingredient item = ingredient_from(&record);

		for (size_t i = 0; i < book->count && recipe == NULL; i++) {
			if (strcmp(book->row[i].name, record.field[0]) == 0)
				recipe = &book->row[i];
		}
		if (recipe == NULL)
			bake_die(path, record.line, "unknown recipe: \"%s\"", record.field[0]);
		if (recipe->count == INGREDIENTS_MAX)
			bake_die(path, record.line, "more than %d ingredients", INGREDIENTS_MAX);
		for (size_t i = 0; i < recipe->count; i++) {
			if (same_name(recipe->ingredients[i].name, item.name))
				bake_die(path, record.line, "the ingredient is already on line %ld",
				         recipe->ingredients[i].line);
		}
		if (recipe->count > 0 && item.adding < recipe->ingredients[recipe->count - 1].adding)
			bake_die(path, record.line, "ingredients are listed in the order they go in");
		recipe->ingredients[recipe->count++] = item;
	}
}

/* --- checking ---------------------------------------------------------------- */

static bool
has_supply(const struct recipe *recipe, size_t supply)
{
	for (size_t i = 0; i < recipe->count; i++) {
		if (recipe->ingredients[i].supply == supply)
			return true;
	}
	return false;
}

static void
check_pectin(const struct recipe *recipe)
{
	/* USDA AIB 539 Guide 7; Michigan State Univ. Extension sheet 01600961. */
	if (recipe->pectin == REGULAR && recipe->multiple_max > 1)
		bake_die(recipe->path, recipe->line, "regular pectin is never multiplied in one pot");
	if ((recipe->pectin == REGULAR) != has_supply(recipe, PECTIN_REGULAR) ||
	    (recipe->pectin == LOW_METHOXYL) != has_supply(recipe, PECTIN_LOW))
		bake_die(recipe->path, recipe->line, "the ingredients hold another pectin than \"%s\"",
		         pectins[recipe->pectin]);
	/* Added pectin needs no gel test: USDA AIB 539 Guide 7. */
	if (recipe->pectin != NO_PECTIN && recipe->gel_test != 0)
		bake_die(recipe->path, recipe->line, "a gel test with added pectin");
}

static void
check_recipe(const struct recipe *recipe)
{
	if (recipe->count == 0)
		bake_die(recipe->path, recipe->line, "the recipe \"%s\" has no ingredients", recipe->name);
	if (recipe->boil_off_low > recipe->boil_off_high)
		bake_die(recipe->path, recipe->line, "boil_off_low_percent is above boil_off_high_percent");
	if (recipe->yield_low_ul > recipe->yield_high_ul ||
	    (recipe->yield_low_ul == 0) != (recipe->yield_high_ul == 0))
		bake_die(recipe->path, recipe->line, "yield_low and yield_high are no range");
	if (recipe->jars[0] == '\0' || (recipe->food[0] != '\0' && recipe->packs[0] == '\0'))
		bake_die(recipe->path, recipe->line, "no %s", recipe->jars[0] == '\0' ? "jars" : "packs");
	check_pectin(recipe);
}

/* USDA AIB 539 Guide 3, Colorado State, Penn State: a quart of tomatoes takes 2
 * tbsp bottled lemon juice, 1/2 tsp citric acid or 4 tbsp vinegar of 5 %. */
static void
check_tomatoes(const struct recipe *recipe)
{
	static const struct {
		size_t supply;
		int64_t least;
	} rates[] = { { LEMON_JUICE, 29574 }, { CITRIC_ACID, 2300 }, { VINEGAR, 59147 } };

	if (strncmp(recipe->food, "tomatoes ", 9) != 0 && strcmp(recipe->food, "tomato juice") != 0 &&
	    strcmp(recipe->food, "tomato sauce standard") != 0)
		return;
	for (size_t i = 0; i < recipe->count; i++) {
		const struct ingredient *item = &recipe->ingredients[i];

		for (size_t r = 0; r < 3; r++) {
			if (item->adding == IN_JAR && item->optional == 0 && item->supply == rates[r].supply &&
			    item->amount.amount >= rates[r].least)
				return;
		}
	}
	bake_die(recipe->path, recipe->line, "tomatoes without the published acid in the jar");
}

/* The next word of a blank-separated list as an index; false at its end. */
static bool
next_word(const char **list, char *word, size_t size)
{
	size_t length = strcspn(*list, " ");

	if (length == 0)
		return false;
	if (length >= size)
		length = size - 1;
	memcpy(word, *list, length);
	word[length] = '\0';
	*list += strcspn(*list, " ");
	*list += **list == ' ' ? 1 : 0;
	return true;
}

static void
check_packs(const struct recipe *recipe)
{
	const char *list = recipe->packs;
	char word[WORD_BYTES];

	while (next_word(&list, word, sizeof(word))) {
		size_t i = 0;

		while (i < PACK_COUNT && strcmp(pack_names[i], word) != 0)
			i++;
		if (i == PACK_COUNT)
			bake_die(recipe->path, recipe->line, "unknown pack: \"%s\"", word);
	}
}

static size_t
jar_of(const struct recipe *recipe, const struct jars *jars, const char *word)
{
	for (size_t i = 0; i < jars->count; i++) {
		if (strcmp(jars->row[i].name, word) == 0)
			return i;
	}
	bake_die(recipe->path, recipe->line, "unknown jar: \"%s\"", word);
}

/* Is there a row that may be used for this pack and jar?  Its acidity and its
 * headspace must be the recipe's. */
static bool
pair_in_table(const struct recipe *recipe, const struct processes *processes, const char *pack,
              size_t jar)
{
	bool found = false;

	for (size_t i = 0; i < processes->count; i++) {
		const struct process *row = &processes->row[i];

		if (strcmp(row->food, recipe->food) != 0 || strcmp(pack_names[row->pack], pack) != 0 ||
		    row->jar < jar || !process_offered(row))
			continue;
		if (row->acidity != recipe->acidity)
			bake_die(recipe->path, recipe->line, "the food is %s in %s:%ld",
			         acidity_names[row->acidity], row->path, row->line);
		if (row->jar == jar && row->headspace_thou != recipe->headspace_thou)
			bake_die(recipe->path, recipe->line, "the headspace differs from %s:%ld", row->path,
			         row->line);
		found = true;
	}
	return found;
}

static void
check_jars(const struct recipe *recipe, const struct tables *tables)
{
	const char *jars = recipe->jars;
	char jar[WORD_BYTES];

	while (next_word(&jars, jar, sizeof(jar))) {
		size_t index = jar_of(recipe, &tables->jars, jar);
		const char *packs = recipe->packs;
		char pack[WORD_BYTES];

		while (next_word(&packs, pack, sizeof(pack))) {
			if (!pair_in_table(recipe, &tables->processes, pack, index))
				bake_die(recipe->path, recipe->line,
				         "no process of \"%s\", %s, in a %s jar may be offered", recipe->food, pack,
				         jar);
		}
	}
}

/* --- printing ------------------------------------------------------------------ */

static void
print_ingredient(const struct ingredient *item)
{
	printf("\t\t\t{ .name = ");
	print_string(item->name);
	printf(", .supply = %s,\n\t\t\t  .measure = %s, .amount = %lld, .form = ",
	       supplies[item->supply].constant, measure_constants[item->amount.measure],
	       (long long)item->amount.amount);
	print_string(item->form);
	printf(",\n\t\t\t  .adding = %s, .optional = %s },\n", adding_constants[item->adding],
	       item->optional == 1 ? "true" : "false");
}

static void
print_field(const char *name, const char *text)
{
	printf("\t\t.%s = ", name);
	print_string(text);
	printf(",\n");
}

static void
print_recipe(const struct recipe *recipe)
{
	printf("\t{\n");
	print_field("name", recipe->name);
	print_field("food", recipe->food);
	print_field("packs", recipe->packs);
	print_field("jars", recipe->jars);
	printf("\t\t.pectin = %s, .acidity = %s, .gel_test = %s,\n", pectin_constants[recipe->pectin],
	       acidity_constants[recipe->acidity], gel_constants[recipe->gel_test]);
	printf("\t\t.boil_hold_s = %d, .headspace_thou = %d, .multiple_max = %d,\n",
	       recipe->boil_hold_s, recipe->headspace_thou, recipe->multiple_max);
	printf("\t\t.foam_percent = %d, .boil_off_low_percent = %d, .boil_off_high_percent = %d,\n",
	       recipe->foam_percent, recipe->boil_off_low, recipe->boil_off_high);
	printf("\t\t.yield_low_ul = %lld, .yield_high_ul = %lld,\n", (long long)recipe->yield_low_ul,
	       (long long)recipe->yield_high_ul);
	print_field("caution", recipe->caution);
	print_field("source", recipe->source);
	printf("\t\t.ingredient_count = %zu,\n\t\t.ingredients = {\n", recipe->count);
	for (size_t i = 0; i < recipe->count; i++)
		print_ingredient(&recipe->ingredients[i]);
	printf("\t\t},\n\t},\n");
}

void
bake_recipe(const char *recipe_path, const char *ingredient_path, const char *jar_path,
            char *const *process_paths, int count)
{
	struct book book = recipes_read(recipe_path);
	struct tables tables = { 0 };

	if (jar_path != NULL)
		tables.jars = jars_read(jar_path);
	for (int i = 0; i < count; i++)
		processes_add(&tables.processes, process_paths[i], &tables.jars);
	ingredients_read(&book, ingredient_path);
	for (size_t i = 0; i < book.count; i++) {
		check_recipe(&book.row[i]);
		check_tomatoes(&book.row[i]);
		check_packs(&book.row[i]);
		if (jar_path != NULL)
			check_jars(&book.row[i], &tables);
	}
	print_top("engine/recipe.h");
	printf("const struct recipe recipes[] = {\n");
	for (size_t i = 0; i < book.count; i++)
		print_recipe(&book.row[i]);
	printf("};\n\nconst size_t recipe_count = sizeof(recipes) / sizeof(recipes[0]);\n");
}
