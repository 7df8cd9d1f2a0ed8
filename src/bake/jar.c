/*
 * jar.c - jar sizes, smallest first.
 */
#include "bake/bake.h"

#include <stdio.h>

/* No word for one size may mean another, and sizes rise: "the next larger
 * tested size" is read off the order of this table. */
static void check_jar(const char *path, const struct jars *jars, const struct jar *jar)
{
	for (size_t i = 0; i < jars->count; i++) {
		const struct jar *other = &jars->row[i];

		if (same_name(jar->name, other->name) || same_name(jar->words, other->words) ||
		    same_name(jar->plural, other->plural))
			bake_die(path, jar->line, "the jar size is already on line %ld", other->line);
		if (jar->fluid_ounces <= other->fluid_ounces)
			bake_die(path, jar->line, "jar sizes are listed smallest first");
	}
}

struct jars jars_read(const char *path)
{
	static const char *const header[] = { "name", "words", "plural", "fluid_ounces", "source" };
	struct source source = source_read(path);
	struct record record;
	struct jars jars = { 0 };

	header_read(&source, header, 5);
	while (row_read(&source, &record, 5)) {
		struct jar jar = {
			.name = bake_copy(field_text(&record, 0, "name", WORD_BYTES)),
			.words = bake_copy(field_text(&record, 1, "words", WORD_BYTES)),
			.plural = bake_copy(field_text(&record, 2, "plural", WORD_BYTES)),
			.fluid_ounces = field_number(&record, 3, "fluid_ounces", 1, 256),
			.source = bake_copy(field_text(&record, 4, "source", SOURCE_BYTES)),
			.line = record.line,
		};

		check_jar(path, &jars, &jar);
		jars.row = bake_room(jars.row, jars.count + 1, sizeof(jars.row[0]));
		jars.row[jars.count++] = jar;
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
