/*
 * drying.c - what is published of drying food, and how long it keeps.
 */
#include "bake/bake.h"

#include <stdio.h>

#include "engine/drying/drying.h"

static const char *const class_words[] = { "fruit", "vegetable", "leather", "refused" };
static const char *const class_constants[] = { "DRYING_FRUIT", "DRYING_VEGETABLE", "DRYING_LEATHER", "DRYING_REFUSED" };
#define CLASSES (sizeof(class_words) / sizeof(class_words[0]))

enum {
	FOOD,
	ALSO,
	CLASS,
	CUT,
	PRETREATMENT,
	TEMP_LOW,
	TEMP_HIGH,
	HOURS_LOW,
	HOURS_HIGH,
	TEST,
	SOURCE,
	CONFIRMED,
	NOTE,
	BARS,
	FIELDS
};

static void print_row(const struct record *record)
{
	size_t class = field_word(record, CLASS, "class", class_words, CLASSES);
	int low = field_number_maybe(record, HOURS_LOW, "hours_low", DRYING_HOURS_MAX);
	int high = field_number_maybe(record, HOURS_HIGH, "hours_high", DRYING_HOURS_MAX);
	int cold = field_number_maybe(record, TEMP_LOW, "temp_low_f", 200);
	int warm = field_number_maybe(record, TEMP_HIGH, "temp_high_f", 200);

	if ((low == 0) != (high == 0) || low > high)
		bake_die(record->path, record->line, "hours_low and hours_high are no range");
	if ((cold == 0) != (warm == 0) || cold > warm)
		bake_die(record->path, record->line, "temp_low_f and temp_high_f are no range");
	printf("\t{\n");
	print_field("\t\t", "food", field_text(record, FOOD, "food", NAME_BYTES));
	print_field("\t\t", "also", field_maybe(record, ALSO, "also", SOURCE_BYTES));
	printf("\t\t.class = %s,\n", class_constants[class]);
	print_field("\t\t", "cut", field_text(record, CUT, "cut", SOURCE_BYTES));
	print_field("\t\t", "pretreatment", field_maybe(record, PRETREATMENT, "pretreatment", SOURCE_BYTES));
	printf("\t\t.temp_low_f = %d, .temp_high_f = %d, .hours_low = %d, .hours_high = %d,\n", cold, warm, low, high);
	print_field("\t\t", "test", field_maybe(record, TEST, "test", SOURCE_BYTES));
	print_field("\t\t", "source", field_text(record, SOURCE, "source", SOURCE_BYTES));
	printf("\t\t.confirmed = %s,\n", confirmed_constants[field_confirmed(record, CONFIRMED, "confirmed")]);
	print_field("\t\t", "note", field_maybe(record, NOTE, "note", SOURCE_BYTES));
	print_field("\t\t", "bars", field_maybe(record, BARS, "bars", SOURCE_BYTES));
	printf("\t},\n");
}

static void print_keep(const struct record *record)
{
	size_t class = field_word(record, 0, "class", class_words, CLASSES);

	printf("\t{ .class = %s, .store_f = %d, .months = %d, .confirmed = %s,\n", class_constants[class],
	       field_number(record, 1, "store_f", 33, 120), field_number(record, 2, "months", 1, 60),
	       confirmed_constants[field_confirmed(record, 4, "confirmed")]);
	print_field("\t  ", "source", field_text(record, 3, "source", SOURCE_BYTES));
	print_field("\t  ", "note", field_maybe(record, 5, "note", SOURCE_BYTES));
	printf("\t},\n");
}

static void bake_table(const char *path, const char *const *header, size_t fields, void (*print)(const struct record *))
{
	struct source source = source_read(path);
	struct record record;
	size_t count = 0;

	header_read(&source, header, fields);
	while (row_read(&source, &record, fields)) {
		print(&record);
		count++;
	}
	if (count == 0)
		bake_die(path, 2, "no rows");
}

void bake_drying(const char *path, const char *keep_path)
{
	static const char *const header[FIELDS] = { "food",         "also",       "class",       "cut",
		                                    "pretreatment", "temp_low_f", "temp_high_f", "hours_low",
		                                    "hours_high",   "test",       "source",      "confirmed",
		                                    "note",         "bars" };
	static const char *const keep_header[] = { "class", "store_f", "months", "source", "confirmed", "note" };

	print_top("engine/drying/drying.h");
	printf("const struct drying_row drying_rows[] = {\n");
	bake_table(path, header, FIELDS, print_row);
	print_count("drying_row_count", "drying_rows");
	printf("\nconst struct drying_keep drying_keeps[] = {\n");
	bake_table(keep_path, keep_header, 6, print_keep);
	print_count("drying_keep_count", "drying_keeps");
}
