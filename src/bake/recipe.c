/*
 * recipe.c - recipes and what goes into them: read, checked by the engine, and
 * printed as C.
 */
#include "bake/recipe.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"

/* recipe_guide.csv and its ingredients have some columns more. */
#define COLUMNS 17
#define GUIDE_COLUMNS 20
#define ITEM_COLUMNS 7
#define GUIDE_ITEM_COLUMNS 9

static const char *const gel_tests[GEL_TEST_COUNT] = {
	[GEL_TEST_NONE] = "none",
	[GEL_TEST_TEMPERATURE] = "temperature",
};
static const char *const gel_constants[GEL_TEST_COUNT] = {
	[GEL_TEST_NONE] = "GEL_TEST_NONE",
	[GEL_TEST_TEMPERATURE] = "GEL_TEST_TEMPERATURE",
};
static const char *const swaps[ACID_SWAP_COUNT] = {
	[ACID_SWAP_NONE] = "",
	[ACID_SWAP_LEMON_FOR_VINEGAR] = "lemon_for_vinegar",
};
static const char *const swap_constants[ACID_SWAP_COUNT] = {
	[ACID_SWAP_NONE] = "ACID_SWAP_NONE",
	[ACID_SWAP_LEMON_FOR_VINEGAR] = "ACID_SWAP_LEMON_FOR_VINEGAR",
};

/* --- reading ---------------------------------------------------------------- */

/* Figures that no recipe has are refused with the rest, by recipe_check_printed. */
#define ANY_FIGURE 999999

/* The columns that only recipe_guide.csv has. */
static void guide_fields(const struct record *record, struct recipe *row)
{
	row->vinegar_percent = field_number_maybe(record, 17, "vinegar_percent", ANY_FIGURE);
	row->acid_swap = (enum acid_swap)field_word(record, 18, "acid_swap", swaps, ACID_SWAP_COUNT);
	row->not_startable = field_maybe(record, 19, "not_startable", SOURCE_BYTES);
}

static struct recipe recipe_from(const struct record *record)
{
	struct recipe row = {
		.name = field_text(record, 0, "name", NAME_BYTES),
		.food = field_maybe(record, 1, "food", NAME_BYTES),
		.packs = field_maybe(record, 2, "packs", SOURCE_BYTES),
		.jars = field_maybe(record, 3, "jars", SOURCE_BYTES),
		.pectin = field_pectin(record, 4, "pectin"),
		.acidity = field_acidity(record, 5, "acidity"),
		.gel_test = (enum gel_test)field_word(record, 6, "gel_test", gel_tests, GEL_TEST_COUNT),
		.boil_hold_s = field_number(record, 7, "boil_hold_s", 0, ANY_FIGURE),
		.headspace_thou = field_thousandths(record, 8, "headspace_in", ANY_FIGURE),
		/* Empty: how far it may be multiplied is said by the sheet of its pectin. */
		.multiple_max = field_number_maybe(record, 9, "multiple_max", ANY_FIGURE),
		.foam_percent = field_number(record, 10, "foam_percent", 0, ANY_FIGURE),
		.boil_off_low_percent = field_number(record, 11, "boil_off_low_percent", 0, ANY_FIGURE),
		.boil_off_high_percent = field_number(record, 12, "boil_off_high_percent", 0, ANY_FIGURE),
		.yield_low_ul = field_volume(record, 13, "yield_low"),
		.yield_high_ul = field_volume(record, 14, "yield_high"),
		.caution = field_maybe(record, 15, "caution", SOURCE_BYTES),
		.source = field_text(record, 16, "source", SOURCE_BYTES),
		.not_startable = "",
	};

	if (record->count == GUIDE_COLUMNS)
		guide_fields(record, &row);
	return row;
}

struct recipe_line *book_find(struct book *book, const char *name)
{
	for (size_t i = 0; i < book->count; i++) {
		if (strcmp(book->row[i].recipe.name, name) == 0)
			return &book->row[i];
	}
	return NULL;
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
			if (text_same_name(book->row[i].recipe.name, recipe.name))
				bake_die(path, record.line, "the recipe \"%s\" is already on line %ld", recipe.name,
				         book->row[i].line);
		}
		book->row[next_row(&record, &book->count, BOOK_MAX)] =
		    (struct recipe_line){ .recipe = recipe, .path = path, .line = record.line };
	}
	if (book->count == before)
		bake_die(path, 2, "no rows");
}

/* The columns that only recipe_guide_ingredient.csv has. */
static void choice_fields(const struct record *record, struct ingredient *item)
{
	enum measure measure;

	item->instead_of = field_maybe(record, 8, "instead_of", NAME_BYTES);
	if (record->field[7][0] == '\0')
		return;
	item->amount_most = field_amount(record, 7, "amount_most", item->supply, &measure);
	if (measure != item->measure)
		bake_die(record->path, record->line, "amount and amount_most are of two measures");
}

static struct ingredient ingredient_from(const struct record *record)
{
	struct ingredient item = {
		.name = field_text(record, 1, "name", NAME_BYTES),
		.supply = field_supply(record, 2, "supply"),
		.form = field_maybe(record, 4, "form", NAME_BYTES),
		.adding = field_adding(record, 5, "adding"),
		.optional = field_answer(record, 6, "optional"),
		.known = "",
		.instead_of = "",
	};

	/* A low-methoxyl pectin and its calcium solution have no amount of ours: what their own
	 * sheet says is typed by the kitchen. */
	item.measure = supply_measure(item.supply);
	if (record->field[3][0] != '\0' || !supply_is_of_sheet(item.supply))
		item.amount = field_amount(record, 3, "amount", item.supply, &item.measure);
	if (record->count == GUIDE_ITEM_COLUMNS)
		choice_fields(record, &item);
	return item;
}

static void ingredients_read(struct book *book, const char *path)
{
	static const char *const header[] = {
		"recipe", "name", "supply", "amount", "form", "adding", "optional", "amount_most", "instead_of",
	};
	struct source source = source_read(path);
	struct record record;
	size_t columns = header_read_either(&source, header, ITEM_COLUMNS, GUIDE_ITEM_COLUMNS);

	while (row_read(&source, &record, columns)) {
		struct recipe_line *line = book_find(book, record.field[0]);
		struct ingredient item = ingredient_from(&record);

		if (line == NULL)
			bake_die(path, record.line, "unknown recipe: \"%s\"", record.field[0]);
		for (size_t i = 0; i < line->recipe.ingredient_count; i++) {
			if (text_same_name(line->recipe.ingredients[i].name, item.name))
				bake_die(path, record.line, "the ingredient \"%s\" is in it already", item.name);
		}
		line->recipe.ingredients[next_row(&record, &line->recipe.ingredient_count, RECIPE_INGREDIENTS_MAX)] =
		    item;
	}
}

/* --- checking ------------------------------------------------------------------- */

/* A jar of a tested size has the headspace that the tables print for it. */
static void check_headspace(const struct recipe_line *line)
{
	for (size_t i = 0; i < process_row_count; i++) {
		const struct process_row *row = &process_rows[i];
		const char *jar = jar_sizes[row->jar].name;

		if (strcmp(row->food, line->recipe.food) == 0 && row->confirmed <= CONFIRMED_PRACTICE &&
		    recipe_allows_pair(&line->recipe, row->pack, jar) &&
		    row->headspace_thou != line->recipe.headspace_thou)
			bake_die(line->path, line->line,
			         "%s: the tables print another headspace for %s, %s, in a %s jar", line->recipe.name,
			         row->food, row->pack, jar);
	}
}

static void check(const struct recipe_line *line)
{
	struct fault fault;

	if (!recipe_check_printed(&line->recipe, &fault))
		bake_die(line->path, line->line, "%s", fault.sentence);
	check_headspace(line);
}

#define INDENT "\t\t"

/* --- printing ------------------------------------------------------------------ */

static void print_ingredient(const struct ingredient *item)
{
	printf("\t\t\t{ .name = ");
	print_string(item->name);
	printf(", .supply = %s,\n\t\t\t  .measure = %s, .amount = %lld, .form = ", supply_constants[item->supply],
	       measure_constants[item->measure], (long long)item->amount);
	print_string(item->form);
	printf(",\n\t\t\t  .adding = %s, .optional = %s, .known = \"\", .amount_most = %lld,\n\t\t\t  .instead_of = ",
	       adding_constants[item->adding], item->optional ? "true" : "false", (long long)item->amount_most);
	print_string(item->instead_of);
	printf(" },\n");
}

static void print_recipe(const struct recipe *recipe)
{
	printf("\t{\n");
	print_field(INDENT, "name", recipe->name);
	print_field(INDENT, "food", recipe->food);
	print_field(INDENT, "packs", recipe->packs);
	print_field(INDENT, "jars", recipe->jars);
	printf("\t\t.pectin = %s, .acidity = %s, .gel_test = %s,\n", pectin_constants[recipe->pectin],
	       acidity_constants[recipe->acidity], gel_constants[recipe->gel_test]);
	printf("\t\t.boil_hold_s = %d, .headspace_thou = %d, .multiple_max = %d,\n", recipe->boil_hold_s,
	       recipe->headspace_thou, recipe->multiple_max);
	printf("\t\t.foam_percent = %d, .boil_off_low_percent = %d, .boil_off_high_percent = %d,\n",
	       recipe->foam_percent, recipe->boil_off_low_percent, recipe->boil_off_high_percent);
	printf("\t\t.yield_low_ul = %lld, .yield_high_ul = %lld,\n", (long long)recipe->yield_low_ul,
	       (long long)recipe->yield_high_ul);
	print_field(INDENT, "caution", recipe->caution);
	print_field(INDENT, "source", recipe->source);
	printf("\t\t.vinegar_percent = %d, .acid_swap = %s,\n", recipe->vinegar_percent,
	       swap_constants[recipe->acid_swap]);
	print_field(INDENT, "not_startable", recipe->not_startable);
	printf("\t\t.ingredient_count = %zu,\n\t\t.ingredients = {\n", recipe->ingredient_count);
	for (size_t i = 0; i < recipe->ingredient_count; i++)
		print_ingredient(&recipe->ingredients[i]);
	printf("\t\t},\n\t},\n");
}

void bake_recipe(char *const *books, int count)
{
	static struct book book;

	for (int i = 0; i + 1 < count; i += 2) {
		recipes_read(&book, books[i]);
		ingredients_read(&book, books[i + 1]);
	}
	for (size_t i = 0; i < book.count; i++)
		check(&book.row[i]);
	print_top("engine/recipe/recipe.h");
	printf("const struct recipe recipes[] = {\n");
	for (size_t i = 0; i < book.count; i++)
		print_recipe(&book.row[i].recipe);
	print_count("recipe_count", "recipes");
}
