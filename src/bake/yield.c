/*
 * yield.c - pounds of fruit for a quart of juice.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"

#define COLUMNS 6
#define NAMES_MAX 256
#define MOST_LB_THOUSANDTHS 50000
/* The row for whatever has none of its own; it stands last. */
#define ANY_FRUIT "any fruit"

static void print_yield(const struct record *record)
{
	int most = field_thousandths(record, 1, "most_lb", MOST_LB_THOUSANDTHS);
	int likely = field_thousandths(record, 2, "likely_lb", MOST_LB_THOUSANDTHS);
	int least = field_thousandths(record, 3, "least_lb", MOST_LB_THOUSANDTHS);
	enum confirmed confirmed = field_confirmed(record, 5, "confirmed");

	/* Without a spread nothing could be weighed against a kitchen's own runs. */
	if (most <= likely || likely <= least)
		bake_die(record->path, record->line, "most_lb, likely_lb and least_lb do not fall");
	printf("\t{ ");
	print_string(field_text(record, 0, "fruit", NAME_BYTES));
	printf(", %d, %d, %d, ", most, likely, least);
	print_string(field_text(record, 4, "source", SOURCE_BYTES));
	printf(", %s },\n", confirmed_constants[confirmed]);
}

void bake_yield(const char *path)
{
	static const char *const header[COLUMNS] = {
		"fruit", "most_lb", "likely_lb", "least_lb", "source", "confirmed"
	};
	struct source source = source_read(path);
	struct record record;
	const char *seen[NAMES_MAX];
	size_t count = 0;

	header_read(&source, header, COLUMNS);
	print_top("engine/recipe/juice_yield.h");
	printf("const struct yield_row yield_rows[] = {\n");
	while (row_read(&source, &record, COLUMNS)) {
		for (size_t i = 0; i < count; i++) {
			if (text_same_name(seen[i], record.field[0]))
				bake_die(path, record.line, "the fruit \"%s\" already exists", record.field[0]);
		}
		seen[next_row(&record, &count, NAMES_MAX)] = record.field[0];
		print_yield(&record);
	}
	if (count == 0 || strcmp(seen[count - 1], ANY_FRUIT) != 0)
		bake_die(path, source.reader.line, "the last row is not \"" ANY_FRUIT "\"");
	print_count("yield_row_count", "yield_rows");
}
