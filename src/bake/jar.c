/*
 * jar.c - jar sizes, smallest first.
 */
#include "bake/bake.h"

#include <stdio.h>

#include "base/text.h"

/* No word for one size may mean another, and sizes rise: "the next larger
 * tested size" is read off the order of this table. */
static void check_jar(const struct record *record, const struct jars *jars, const struct jar_size *jar)
{
	for (size_t i = 0; i < jars->count; i++) {
		const struct jar_size *other = &jars->row[i];

		if (text_same_name(jar->name, other->name) || text_same_name(jar->words, other->words) ||
		    text_same_name(jar->plural, other->plural))
			bake_die(record->path, record->line, "the jar size is already on line %ld", jars->line[i]);
		if (jar->fluid_ounces <= other->fluid_ounces)
			bake_die(record->path, record->line, "jar sizes are listed smallest first");
	}
}

struct jars jars_read(const char *path)
{
	static const char *const header[] = { "name", "words", "plural", "fluid_ounces", "source" };
	struct source source = source_read(path);
	struct record record;
	struct jars jars = { .count = 0 };

	header_read(&source, header, 5);
	while (row_read(&source, &record, 5)) {
		struct jar_size jar = {
			.name = field_text(&record, 0, "name", WORD_BYTES),
			.words = field_text(&record, 1, "words", WORD_BYTES),
			.plural = field_text(&record, 2, "plural", WORD_BYTES),
			.fluid_ounces = field_number(&record, 3, "fluid_ounces", 1, 256),
			.source = field_text(&record, 4, "source", SOURCE_BYTES),
		};
		size_t at;

		check_jar(&record, &jars, &jar);
		at = next_row(&record, &jars.count, JAR_SIZES_MAX);
		jars.row[at] = jar;
		jars.line[at] = record.line;
	}
	if (jars.count == 0)
		bake_die(path, 2, "no rows");
	return jars;
}

void bake_jar(const char *path)
{
	struct jars jars = jars_read(path);

	print_top("engine/process/process.h");
	printf("const struct jar_size jar_sizes[] = {\n");
	for (size_t i = 0; i < jars.count; i++) {
		printf("\t{ ");
		print_string(jars.row[i].name);
		printf(", ");
		print_string(jars.row[i].words);
		printf(", ");
		print_string(jars.row[i].plural);
		printf(", %d, ", jars.row[i].fluid_ounces);
		print_string(jars.row[i].source);
		printf(" },\n");
	}
	printf("};\n\n_Static_assert(sizeof(jar_sizes) / sizeof(jar_sizes[0]) <= JAR_SIZES_MAX,\n"
	       "               \"more jar sizes than JAR_SIZES_MAX\");\n"
	       "const size_t jar_size_count = sizeof(jar_sizes) / sizeof(jar_sizes[0]);\n");
}
