/*
 * product.c - everyday names and the foods they may use.
 */
#include "bake/bake.h"

#include <stdio.h>

#include "base/text.h"

#define NAMES_MAX 1024

/* The row's caution may be empty; the rest may not. */
static void print_product(const struct record *record)
{
	static const char *const names[] = { "name", "food", "usual_jar", "caution", "source" };
	static const size_t sizes[] = { NAME_BYTES, NAME_BYTES, WORD_BYTES, SOURCE_BYTES, SOURCE_BYTES };

	printf("\t{ ");
	for (size_t i = 0; i < 5; i++) {
		if (i != 3 || record->field[i][0] != '\0')
			field_text(record, i, names[i], sizes[i]);
		print_string(record->field[i]);
		printf(i < 4 ? ", " : " },\n");
	}
}

void bake_product(const char *path)
{
	static const char *const header[] = { "name", "food", "usual_jar", "caution", "source" };
	struct source source = source_read(path);
	struct record record;
	const char *seen[NAMES_MAX];
	size_t count = 0;

	header_read(&source, header, 5);
	print_top("engine/process/product.h");
	printf("const struct product products[] = {\n");
	while (row_read(&source, &record, 5)) {
		for (size_t i = 0; i < count; i++) {
			if (text_same_name(seen[i], record.field[0]))
				bake_die(path, record.line, "the product \"%s\" already exists", record.field[0]);
		}
		seen[next_row(&record, &count, NAMES_MAX)] = record.field[0];
		print_product(&record);
	}
	if (count == 0)
		bake_die(path, 2, "no rows");
	print_count("product_count", "products");
}
