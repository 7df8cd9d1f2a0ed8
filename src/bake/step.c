/*
 * step.c - what is done before or between, over hours or days.
 */
#include "bake/recipe.h"

#include <stdio.h>
#include <string.h>

static void print_step(const struct record *record)
{
	static const char *const names[] = { "min", "h", "day", "week", "" };
	static const int minutes[] = { 1, 60, 24 * 60, 7 * 24 * 60, 0 };
	size_t unit = field_word(record, 5, "unit", names, 5);
	int low = 0;
	int high = 0;

	if (minutes[unit] > 0) {
		low = field_number(record, 3, "low", 1, 1000);
		high = field_number(record, 4, "high", low, 1000);
	} else if (record->field[3][0] != '\0' || record->field[4][0] != '\0') {
		bake_die(record->path, record->line, "a time without its unit");
	}
	printf("\t{ ");
	print_string(record->field[0]);
	printf(", %d,\n\t  ", field_number(record, 1, "step_no", 1, 99));
	print_string(field_text(record, 2, "what", SOURCE_BYTES));
	printf(", %d, %d,\n\t  ", low * minutes[unit], high * minutes[unit]);
	print_string(field_text(record, 6, "source", SOURCE_BYTES));
	printf(" },\n");
}

/* A recipe's steps follow each other, numbered from 1. */
static void check_step(const struct record *record, struct book *book, const char **last, int *number)
{
	int here = field_number(record, 1, "step_no", 1, 99);

	if (book_find(book, record->field[0]) == NULL)
		bake_die(record->path, record->line, "unknown recipe: \"%s\"", record->field[0]);
	*number = strcmp(*last, record->field[0]) == 0 ? *number + 1 : 1;
	if (here != *number)
		bake_die(record->path, record->line, "step %d of \"%s\" is numbered %d", *number, record->field[0],
		         here);
	*last = record->field[0];
}

void bake_step(const char *path, char *const *recipe_paths, int count)
{
	static const char *const header[] = {
		"recipe", "step_no", "what", "low", "high", "unit", "source",
	};
	struct source source = source_read(path);
	struct record record;
	static struct book book;
	const char *last = "";
	int number = 0;

	for (int i = 0; i < count; i++)
		recipes_read(&book, recipe_paths[i]);
	header_read(&source, header, 7);
	print_top("engine/recipe/recipe.h");
	printf("const struct recipe_step recipe_steps[] = {\n");
	while (row_read(&source, &record, 7)) {
		check_step(&record, &book, &last, &number);
		print_step(&record);
	}
	if (number == 0)
		bake_die(path, 2, "no rows");
	print_count("recipe_step_count", "recipe_steps");
}
