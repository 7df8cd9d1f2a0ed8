/*
 * setup_stock.c - the lines of a kitchen file that are about what is there: supplies, juice,
 * lids, recipes of the kitchen's own and the sheets of pectins.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/words.h"
#include "engine/recipe/amount.h"
#include "kitchen/board/board_private.h"
#include "kitchen/board/keyed.h"
#include "kitchen/house/house.h"
#include "kitchen/house/setup_private.h"
#include "kitchen/pot/pot.h"
#include "kitchen/recipe/recipe_lines.h"
#include "kitchen/recipe/sheet.h"
#include "kitchen/stock/shelf.h"
#include "kitchen/stock/stock.h"
#include "log/rows/words.h"
#include "log/tables/canner.h"
#include "log/tables/pot.h"
#include "log/tables/stock.h"

/* supply sugar "20 lb" / supply jar half_pint 144; from the house view, and none of it, a count */
bool line_supply(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	bool by_size = words->count == 4;
	const char *size = by_size ? words_at(words, 2) : "";
	enum supply_kind kind;
	int64_t amount;

	if (!supply_from_name(words_at(words, 1), &kind))
		return fault_set(fault, FAULT_MISUSE, "there is no supply \"%s\"", words_at(words, 1));
	if (by_size && jar_size_named(size) == NULL)
		return fault_set(fault, FAULT_MISUSE, "there is no jar size \"%s\"", size);
	if (!amount_read(words_at(words, by_size ? 3 : 2), supply_measure(kind), kind, &amount, fault))
		return false;
	return id > 0 || amount == 0 ? kitchen_supply_count(kitchen, kind, size, amount, fault)
	                             : kitchen_supply_in(kitchen, kind, size, amount, fault);
}

/* What one buys of it at a time; 0: loose. */
bool line_sold(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	bool by_size = words->count == 4;
	enum supply_kind kind;
	int64_t amount;

	(void)id;
	if (!supply_from_name(words_at(words, 1), &kind))
		return fault_set(fault, FAULT_MISUSE, "there is no supply \"%s\"", words_at(words, 1));
	return amount_read(words_at(words, by_size ? 3 : 2), supply_measure(kind), kind, &amount, fault) &&
	       kitchen_sell_by(kitchen, kind, by_size ? words_at(words, 2) : "", amount, fault);
}

/* juice "grape" "2 gal" chilled */
bool line_juice(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	enum juice_state state = JUICE_HOT;
	int64_t ul;

	(void)id;
	if (words->count > 3)
		while (state < JUICE_STATE_COUNT && strcmp(juice_state_name(state), words_at(words, 3)) != 0)
			state++;
	if (state == JUICE_STATE_COUNT)
		return fault_set(fault, FAULT_MISUSE, "juice is hot, chilled or frozen");
	return amount_read(words_at(words, 2), MEASURE_VOLUME, SUPPLY_JUICE, &ul, fault) &&
	       kitchen_juice_in(kitchen, words_at(words, 1), ul, state, fault);
}

/* " sugar "20 lb"", " jar half_pint 60" */
static void write_supply(FILE *out, const char *word, enum supply_kind kind, const char *size, int64_t amount,
                         enum unit_system units)
{
	char line[SETUP_LINE_MAX];
	char words[64];
	struct text text = TEXT_OVER(line);

	amount_exact_words(supply_measure(kind), kind, amount, units, words, sizeof(words));
	keyed_word(&text, supply_name(kind));
	if (size[0] != '\0')
		keyed_word(&text, size);
	keyed_word(&text, words);
	(void)fprintf(out, "%s%s\n", word, line);
}

/* Below nothing, as only a miscounted ledger can be, is nothing. */
bool write_supplies(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	struct log_supply *rows;
	size_t count;

	if (!kitchen_supplies(kitchen, &rows, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		write_supply(out, word, rows[i].kind, rows[i].size, rows[i].stock > 0 ? rows[i].stock : 0,
		             kitchen->board.house.units);
	free(rows);
	return true;
}

bool write_sold(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	struct log_sold_by *rows;
	size_t count;

	if (!log_sold_by(kitchen->log, &rows, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++)
		write_supply(out, word, rows[i].kind, rows[i].size, rows[i].amount, kitchen->board.house.units);
	free(rows);
	return true;
}

bool write_juice(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	struct log_juice *rows;
	size_t count;

	if (!log_juices_left(kitchen->log, &rows, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		char line[SETUP_LINE_MAX];
		char words[64];
		struct text text = TEXT_OVER(line);

		amount_exact_words(MEASURE_VOLUME, SUPPLY_JUICE, rows[i].left_ul, kitchen->board.house.units, words,
		                   sizeof(words));
		keyed_word(&text, rows[i].kind);
		keyed_word(&text, words);
		keyed_word(&text, juice_state_name(rows[i].state));
		(void)fprintf(out, "%s%s\n", word, line);
	}
	free(rows);
	return true;
}

/* --- lids --------------------------------------------------------------------------------- */

bool line_lids(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct log_lid_box box = { .id = id };

	if (!text_copy(box.label, sizeof(box.label), words_at(words, 1)))
		return fault_set(fault, FAULT_MISUSE, "the label is too long");
	if (!word_number(words_at(words, 2), 0, 100000, &box.lids))
		return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a number of lids", words_at(words, 2));
	for (size_t i = 3; i < words->count; i++) {
		if (strcmp(words_at(words, i), "retired") == 0)
			box.retired = true;
		else if (!clock_read_date(words_at(words, i), &box.bought_wall_ms))
			return fault_set(fault, FAULT_MISUSE, "\"%s\" is not a date like 2026-08-30",
			                 words_at(words, i));
	}
	return kitchen_put_lid_box(kitchen, &box, fault);
}

/* Those still in the box; a box can be noted too small. */
bool write_lids(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	struct log_lid_box *rows;
	size_t count;

	if (!log_lid_boxes_all(kitchen->log, &rows, &count, fault))
		return false;
	for (size_t i = 0; i < count; i++) {
		char line[SETUP_LINE_MAX];
		char date[16];
		struct text text = TEXT_OVER(line);

		keyed_word(&text, rows[i].label);
		text_add(&text, " %d", rows[i].lids > rows[i].used ? rows[i].lids - rows[i].used : 0);
		clock_words_date(rows[i].bought_wall_ms, date, sizeof(date));
		if (rows[i].bought_wall_ms != 0)
			text_add(&text, " %s", date);
		text_add(&text, "%s", rows[i].retired ? " retired" : "");
		(void)fprintf(out, "%s%s\n", word, line);
	}
	free(rows);
	return true;
}

/* --- sheets and recipes ----------------------------------------------------------------------- */

/* Which field of a sheet "key=value" gives; SHEET_FIELD_COUNT: none. */
static int sheet_field_of(const char *word, const char **value)
{
	int field = 0;

	for (; field < SHEET_FIELD_COUNT; field++) {
		const char *key = sheet_field_key((enum sheet_field)field);
		size_t length = strlen(key);

		if (strncmp(word, key, length) == 0 && word[length] == '=') {
			*value = word + length + 1;
			break;
		}
	}
	return field;
}

static bool all_given(unsigned given, struct fault *fault)
{
	for (int field = 0; field < SHEET_FIELD_COUNT; field++)
		if ((given & 1u << field) == 0)
			return fault_set(fault, FAULT_MISUSE, "the sheet's %s is missing: %s=, %s",
			                 sheet_field_words((enum sheet_field)field),
			                 sheet_field_key((enum sheet_field)field),
			                 sheet_field_form((enum sheet_field)field));
	return true;
}

/* sheet "grape jelly, low sugar" pectin="N tsp" ...: every field is said. */
bool line_sheet(struct kitchen *kitchen, const struct words *words, int64_t id, struct fault *fault)
{
	struct sheet sheet = { 0 };
	unsigned given = 0;

	(void)id;
	for (size_t i = 2; i < words->count; i++) {
		const char *value = "";
		int field = sheet_field_of(words_at(words, i), &value);

		if (field == SHEET_FIELD_COUNT)
			return fault_set(
			    fault, FAULT_MISUSE,
			    "\"%s\" is not pectin=, calcium=, acid=, multiple= or minutes=", words_at(words, i));
		if (!sheet_read(&sheet, (enum sheet_field)field, value, fault))
			return false;
		given |= 1u << field;
	}
	return all_given(given, fault) && kitchen_put_sheet(kitchen, words_at(words, 1), &sheet, fault);
}

static void write_sheet(const struct kitchen *kitchen, const char *word, FILE *out, const char *recipe,
                        const struct sheet *sheet)
{
	char line[SETUP_LINE_MAX];
	struct text text = TEXT_OVER(line);

	keyed_word(&text, recipe);
	for (int field = 0; field < SHEET_FIELD_COUNT; field++) {
		char words[96];

		sheet_words(sheet, (enum sheet_field)field, kitchen->board.house.units, words, sizeof(words));
		keyed_pair(&text, sheet_field_key((enum sheet_field)field), words);
	}
	(void)fprintf(out, "%s%s\n", word, line);
}

/* All lines of a recipe; false: one is too long for a line of a file. */
static bool recipe_lines(const struct log_recipe *recipe, enum unit_system units, char *buffer, size_t size)
{
	struct text text = text_over(buffer, size);
	char line[RECIPE_LINE_MAX_BYTES];
	bool whole = recipe_line_words(recipe, line, sizeof(line));

	text_add(&text, "%s\n", line);
	for (size_t i = 0; whole && i < recipe->ingredient_count; i++) {
		whole = ingredient_picked_words(&recipe->ingredients[i], units, line, sizeof(line));
		text_add(&text, "%s\n", line);
	}
	return whole && !text.cut;
}

#define RECIPE_LINES_BYTES ((size_t)RECIPE_LINE_MAX_BYTES * (1 + OWN_INGREDIENTS_MAX))

/* Is it just what its sheet makes of a built-in one? */
static bool is_of_sheet(const struct kitchen *kitchen, const struct log_recipe *recipe, const char *lines,
                        struct sheet *sheet)
{
	struct log_recipe made;
	char *made_lines;
	bool same;

	if (!kitchen_sheet(kitchen, recipe->name, sheet) || !sheet_recipe(recipe->name, sheet, &made, NULL))
		return false;
	made_lines = malloc(RECIPE_LINES_BYTES);
	same = made_lines != NULL && recipe_lines(&made, UNITS_US, made_lines, RECIPE_LINES_BYTES) &&
	       strcmp(lines, made_lines) == 0;
	free(made_lines);
	return same;
}

/* A recipe whose sheet was given and nothing else is a `sheet`, the others a `recipe`. */
static bool write_book(const struct kitchen *kitchen, const char *word, bool sheets, FILE *out, struct fault *fault)
{
	char *lines = malloc(RECIPE_LINES_BYTES);
	struct log_recipe *rows = NULL;
	struct sheet sheet;
	size_t count = 0;
	bool done = lines != NULL || fault_set(fault, FAULT_MEMORY, "Not enough memory to write the recipes.");

	done = done && log_recipes_all(kitchen->log, &rows, &count, fault);
	for (size_t i = 0; done && i < count; i++) {
		if (!recipe_lines(&rows[i], UNITS_US, lines, RECIPE_LINES_BYTES))
			done = fault_set(fault, FAULT_REFUSED,
			                 "The recipe %s is too long for a line of a kitchen file.", rows[i].name);
		else if (is_of_sheet(kitchen, &rows[i], lines, &sheet) != sheets)
			continue;
		else if (sheets)
			write_sheet(kitchen, word, out, rows[i].name, &sheet);
		else
			(void)fputs(lines, out);
	}
	free(rows);
	free(lines);
	return done;
}

bool write_sheets(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	return write_book(kitchen, word, true, out, fault);
}

bool write_recipes(const struct kitchen *kitchen, const char *word, FILE *out, struct fault *fault)
{
	return write_book(kitchen, word, false, out, fault);
}
