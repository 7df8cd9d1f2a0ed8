/*
 * recipe.c - recipes and what goes into them: read, and printed as C.
 */
#include "bake/recipe.h"

#include <stdio.h>
#include <string.h>

/* recipe_guide.csv and its ingredients have some columns more. */
#define COLUMNS 17
#define GUIDE_COLUMNS 20
#define ITEM_COLUMNS 7
#define GUIDE_ITEM_COLUMNS 9

const char *const pectin_names[PECTIN_COUNT] = { "none", "regular", "low_methoxyl" };
static const char *const pectin_constants[] = {
	"PECTIN_NONE",
	"PECTIN_REGULAR",
	"PECTIN_LOW_METHOXYL",
};

static const char *const gel_tests[] = { "none", "temperature" };
static const char *const gel_constants[] = { "GEL_TEST_NONE", "GEL_TEST_TEMPERATURE" };

static const char *const addings[ADDINGS] = {
	"at_start", "at_boil", "last", "in_jar", "ahead", "packed",
};
static const char *const adding_constants[ADDINGS] = {
	"ADD_AT_START", "ADD_AT_BOIL", "ADD_LAST", "ADD_IN_JAR", "ADD_AHEAD", "ADD_PACKED",
};
const int adding_places[ADDINGS] = { 1, 2, 3, 5, 0, 4 };

static const char *const swaps[] = { "", "lemon_for_vinegar" };
static const char *const swap_constants[] = { "ACID_SWAP_NONE", "ACID_SWAP_LEMON_FOR_VINEGAR" };

static const char *const measure_constants[] = { "MEASURE_VOLUME", "MEASURE_MASS", "MEASURE_EACH" };
static const char *const answers[] = { "no", "yes" };

const struct supply supplies[SUPPLIES] = {
	{ "SUPPLY_OTHER", ANY_MEASURE, 0 },
	{ "SUPPLY_JUICE", MEASURE_VOLUME, 0 },
	{ "SUPPLY_FRUIT", MEASURE_MASS, 0 },
	{ "SUPPLY_SUGAR", MEASURE_MASS, 200000 },
	{ "SUPPLY_LEMON_JUICE", MEASURE_VOLUME, 0 },
	{ "SUPPLY_CITRIC_ACID", MEASURE_MASS, 220800 },
	{ "SUPPLY_VINEGAR", MEASURE_VOLUME, 0 },
	{ "SUPPLY_PECTIN_REGULAR", MEASURE_MASS, 0 },
	{ "SUPPLY_PECTIN_LIQUID", MEASURE_MASS, 0 },
	{ "SUPPLY_PECTIN_LOW", MEASURE_MASS, 144000 },
	{ "SUPPLY_CALCIUM_SOLUTION", MEASURE_VOLUME, 0 },
	{ "SUPPLY_SALT", MEASURE_MASS, 288000 },
	{ "SUPPLY_BUTTER", MEASURE_MASS, 226796 },
};
const char *const supply_names[SUPPLIES] = {
	"other",   "juice",          "fruit",         "sugar",      "lemon_juice",      "citric_acid",
	"vinegar", "pectin_regular", "pectin_liquid", "pectin_low", "calcium_solution", "salt",
	"butter",
};

/* --- reading ---------------------------------------------------------------- */

/* May be empty; the engine and the log copy it into `size` bytes. */
static const char *field_free(const struct record *record, size_t index, const char *name, size_t size)
{
	if (strlen(record->field[index]) >= size)
		bake_die(record->path, record->line, "%s is longer than %zu bytes", name, size - 1);
	return bake_copy(record->field[index]);
}

static int64_t field_yield(const struct record *record, size_t index, const char *name)
{
	struct amount amount;

	if (record->field[index][0] == '\0')
		return 0;
	amount = field_amount(record, index, name, 0);
	if (amount.measure != MEASURE_VOLUME)
		bake_die(record->path, record->line, "%s is no volume: \"%s\"", name, record->field[index]);
	return amount.amount;
}

/* The columns that only recipe_guide.csv has. */
static void guide_fields(const struct record *record, struct recipe *row)
{
	row->vinegar_percent = 0;
	if (record->field[17][0] != '\0')
		row->vinegar_percent = field_number(record, 17, "vinegar_percent", 1, 10);
	row->acid_swap = field_word(record, 18, "acid_swap", swaps, 2);
	row->not_startable = field_free(record, 19, "not_startable", SOURCE_BYTES);
}

/* Empty: how far it may be multiplied is said by the sheet of its pectin. */
static int field_multiple(const struct record *record, size_t index)
{
	return record->field[index][0] == '\0' ? 0 : field_number(record, index, "multiple_max", 1, 16);
}

static struct recipe recipe_from(const struct record *record)
{
	struct recipe row = {
		.name = bake_copy(field_text(record, 0, "name", NAME_BYTES)),
		.food = field_free(record, 1, "food", NAME_BYTES),
		.packs = field_free(record, 2, "packs", SOURCE_BYTES),
		.jars = field_free(record, 3, "jars", SOURCE_BYTES),
		.pectin = field_word(record, 4, "pectin", pectin_names, PECTIN_COUNT),
		.acidity = field_word(record, 5, "acidity", acidity_names, ACIDITY_COUNT),
		.gel_test = field_word(record, 6, "gel_test", gel_tests, 2),
		.boil_hold_s = field_number(record, 7, "boil_hold_s", 0, 3600),
		.headspace_thou = field_thousandths(record, 8, "headspace_in", 3000),
		.multiple_max = field_multiple(record, 9),
		.foam_percent = field_number(record, 10, "foam_percent", 0, 75),
		.boil_off_low = field_number(record, 11, "boil_off_low_percent", 0, 90),
		.boil_off_high = field_number(record, 12, "boil_off_high_percent", 0, 90),
		.yield_low_ul = field_yield(record, 13, "yield_low"),
		.yield_high_ul = field_yield(record, 14, "yield_high"),
		.caution = field_free(record, 15, "caution", SOURCE_BYTES),
		.source = bake_copy(field_text(record, 16, "source", SOURCE_BYTES)),
		.not_startable = "",
		.path = record->path,
		.line = record->line,
	};

	if (record->count == GUIDE_COLUMNS)
		guide_fields(record, &row);
	return row;
}

void recipes_read(struct book *book, const char *path)
{
	static const char *const header[] = {
		"name",
		"food",
		"packs",
		"jars",
		"pectin",
		"acidity",
		"gel_test",
		"boil_hold_s",
		"headspace_in",
		"multiple_max",
		"foam_percent",
		"boil_off_low_percent",
		"boil_off_high_percent",
		"yield_low",
		"yield_high",
		"caution",
		"source",
		"vinegar_percent",
		"acid_swap",
		"not_startable",
	};
	struct source source = source_read(path);
	struct record record;
	size_t before = book->count;
	size_t columns = header_read_either(&source, header, COLUMNS, GUIDE_COLUMNS);

	while (row_read(&source, &record, columns)) {
		struct recipe recipe = recipe_from(&record);

		for (size_t i = 0; i < book->count; i++) {
			if (same_name(book->row[i].name, recipe.name))
				bake_die(path, recipe.line, "the recipe \"%s\" is already on line %ld", recipe.name,
				         book->row[i].line);
		}
		book->row = bake_room(book->row, book->count + 1, sizeof(book->row[0]));
		book->row[book->count++] = recipe;
	}
	if (book->count == before)
		bake_die(path, 2, "no rows");
}

/* The columns that only recipe_guide_ingredient.csv has. */
static void choice_fields(const struct record *record, struct ingredient *item)
{
	struct amount most;

	item->instead_of = field_free(record, 8, "instead_of", NAME_BYTES);
	if (record->field[7][0] == '\0')
		return;
	most = field_amount(record, 7, "amount_most", supplies[item->supply].mg_a_cup);
	if (most.measure != item->amount.measure || most.amount < item->amount.amount)
		bake_die(record->path, record->line, "amount and amount_most are no range");
	item->amount_most = most.amount;
}

/* A low-methoxyl pectin and its calcium solution have no amount of ours: what their
 * own sheet says is typed by the kitchen. */
static struct amount amount_from(const struct record *record, size_t supply)
{
	struct amount none = { .measure = supplies[supply].measure };

	if (record->field[3][0] == '\0' && (supply == PECTIN_LOW || supply == CALCIUM_SOLUTION))
		return none;
	return field_amount(record, 3, "amount", supplies[supply].mg_a_cup);
}

static struct ingredient ingredient_from(const struct record *record)
{
	size_t supply = field_word(record, 2, "supply", supply_names, SUPPLIES);
	struct ingredient item = {
		.name = bake_copy(field_text(record, 1, "name", NAME_BYTES)),
		.supply = supply,
		.amount = amount_from(record, supply),
		.form = field_free(record, 4, "form", NAME_BYTES),
		.adding = field_word(record, 5, "adding", addings, ADDINGS),
		.optional = field_word(record, 6, "optional", answers, 2),
		.instead_of = "",
		.line = record->line,
	};

	if (record->count == GUIDE_ITEM_COLUMNS)
		choice_fields(record, &item);
	return item;
}

static void ingredients_read(struct book *book, const char *path, const struct larder *larder)
{
	static const char *const header[] = {
		"recipe", "name", "supply", "amount", "form", "adding", "optional", "amount_most", "instead_of",
	};
	struct source source = source_read(path);
	struct record record;
	size_t columns = header_read_either(&source, header, ITEM_COLUMNS, GUIDE_ITEM_COLUMNS);

	while (row_read(&source, &record, columns)) {
		struct recipe *recipe = NULL;
		struct ingredient item = ingredient_from(&record);

		for (size_t i = 0; i < book->count && recipe == NULL; i++) {
			if (strcmp(book->row[i].name, record.field[0]) == 0)
				recipe = &book->row[i];
		}
		if (recipe == NULL)
			bake_die(path, record.line, "unknown recipe: \"%s\"", record.field[0]);
		check_ingredient(path, &item, larder);
		if (recipe->count == INGREDIENTS_MAX)
			bake_die(path, record.line, "more than %d ingredients", INGREDIENTS_MAX);
		for (size_t i = 0; i < recipe->count; i++) {
			if (same_name(recipe->ingredients[i].name, item.name))
				bake_die(path, record.line, "the ingredient is already on line %ld",
				         recipe->ingredients[i].line);
		}
		if (recipe->count > 0 &&
		    adding_places[item.adding] < adding_places[recipe->ingredients[recipe->count - 1].adding])
			bake_die(path, record.line, "ingredients are listed in the order they go in");
		recipe->ingredients[recipe->count++] = item;
	}
}

/* --- printing ------------------------------------------------------------------ */

static void print_ingredient(const struct ingredient *item)
{
	printf("\t\t\t{ .name = ");
	print_string(item->name);
	printf(", .supply = %s,\n\t\t\t  .measure = %s, .amount = %lld, .form = ", supplies[item->supply].constant,
	       measure_constants[item->amount.measure], (long long)item->amount.amount);
	print_string(item->form);
	printf(",\n\t\t\t  .adding = %s, .optional = %s, .known = \"\", .amount_most = %lld,\n\t\t\t  .instead_of = ",
	       adding_constants[item->adding], item->optional == OPTIONAL ? "true" : "false",
	       (long long)item->amount_most);
	print_string(item->instead_of);
	printf(" },\n");
}

static void print_field(const char *name, const char *text)
{
	printf("\t\t.%s = ", name);
	print_string(text);
	printf(",\n");
}

static void print_recipe(const struct recipe *recipe)
{
	printf("\t{\n");
	print_field("name", recipe->name);
	print_field("food", recipe->food);
	print_field("packs", recipe->packs);
	print_field("jars", recipe->jars);
	printf("\t\t.pectin = %s, .acidity = %s, .gel_test = %s,\n", pectin_constants[recipe->pectin],
	       acidity_constants[recipe->acidity], gel_constants[recipe->gel_test]);
	printf("\t\t.boil_hold_s = %d, .headspace_thou = %d, .multiple_max = %d,\n", recipe->boil_hold_s,
	       recipe->headspace_thou, recipe->multiple_max);
	printf("\t\t.foam_percent = %d, .boil_off_low_percent = %d, .boil_off_high_percent = %d,\n",
	       recipe->foam_percent, recipe->boil_off_low, recipe->boil_off_high);
	printf("\t\t.yield_low_ul = %lld, .yield_high_ul = %lld,\n", (long long)recipe->yield_low_ul,
	       (long long)recipe->yield_high_ul);
	print_field("caution", recipe->caution);
	print_field("source", recipe->source);
	printf("\t\t.vinegar_percent = %d, .acid_swap = %s,\n", recipe->vinegar_percent,
	       swap_constants[recipe->acid_swap]);
	print_field("not_startable", recipe->not_startable);
	printf("\t\t.ingredient_count = %zu,\n\t\t.ingredients = {\n", recipe->count);
	for (size_t i = 0; i < recipe->count; i++)
		print_ingredient(&recipe->ingredients[i]);
	printf("\t\t},\n\t},\n");
}

void bake_recipe(char *const *books, int book_count, const char *jar_path, char *const *food_paths,
                 char *const *process_paths, int count)
{
	struct book book = { 0 };
	struct tables tables = { 0 };

	if (jar_path != NULL) {
		tables.jars = jars_read(jar_path);
		tables.larder = larder_read(food_paths);
	}
	for (int i = 0; i < count; i++)
		processes_add(&tables.processes, process_paths[i], &tables.jars);
	for (int i = 0; i + 1 < book_count; i += 2) {
		recipes_read(&book, books[i]);
		ingredients_read(&book, books[i + 1], &tables.larder);
	}
	for (size_t i = 0; i < book.count; i++)
		check_recipe(&book.row[i], &tables);
	print_top("engine/recipe/recipe.h");
	printf("const struct recipe recipes[] = {\n");
	for (size_t i = 0; i < book.count; i++)
		print_recipe(&book.row[i]);
	printf("};\n\nconst size_t recipe_count = sizeof(recipes) / sizeof(recipes[0]);\n");
}
