/*
 * layout.c - the layout of the log and its migrations, byte for byte.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The number of NNNN_name.sql. */
static int migration_number(const char *path)
{
	const char *slash = strrchr(path, '/');
	const char *name = slash == NULL ? path : slash + 1;
	size_t length = strlen(name);

	if (length < 10 || strspn(name, "0123456789") != 4 || name[4] != '_' || strcmp(name + length - 4, ".sql") != 0)
		bake_die(path, 1, "a migration is named NNNN_name.sql");
	return (int)strtol(name, NULL, 10);
}

/* The number that the text gives its layout. */
static int layout_number(const char *path)
{
	static const char mark[] = "PRAGMA user_version = ";
	struct source source = source_read(path);
	const char *at = source.size == 0 ? NULL : strstr(source.text, mark);
	int number = at == NULL ? 0 : (int)strtol(at + sizeof(mark) - 1, NULL, 10);

	if (number < 1)
		bake_die(path, 1, "\"%s...;\" gives the layout its number", mark);
	return number;
}

/* As an array of characters: a string literal may not be longer than 4,095
 * bytes in C17. */
static void print_file(const char *path, const char *name)
{
	struct source source = source_read(path);

	printf("static const char %s[] = {", name);
	for (size_t i = 0; i < source.size; i++) {
		printf("%s'", i % 16 == 0 ? "\n\t" : " ");
		print_byte(source.text[i], '\'');
		printf("',");
	}
	printf("\n\t'\\0',\n};\n\n");
}

/* Numbered without a hole or a double, which would leave logs behind. */
static void print_migrations(char *const *paths, int count, int first)
{
	for (int i = 0; i < count; i++) {
		char name[32];

		if (migration_number(paths[i]) != first + i)
			bake_die(paths[i], 1, "migration %04d is expected here", first + i);
		snprintf(name, sizeof(name), "migration_%04d", first + i);
		print_file(paths[i], name);
	}
	printf("static const char *const migrations[] = {\n");
	for (int i = 0; i < count; i++)
		printf("\tmigration_%04d,\n", first + i);
	printf("\tNULL,\n};\n\n");
}

void bake_layout(const char *schema_path, char *const *paths, int count)
{
	int number = layout_number(schema_path);

	print_top("log/file/layout.h");
	print_file(schema_path, "schema");
	print_migrations(paths, count, number + 1);
	printf("const struct layouts log_layouts = {\n\t.first = %d,\n\t.schema = schema,\n"
	       "\t.migrations = migrations,\n\t.migration_count = %d,\n};\n",
	       number, count);
}
