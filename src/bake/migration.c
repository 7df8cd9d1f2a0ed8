/*
 * migration.c - migrations of the log, byte for byte.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* NNNN_name.sql with NNNN = number: a hole or a double would leave logs behind. */
static void
check_migration_name(const char *path, int number)
{
	const char *slash = strrchr(path, '/');
	const char *name = slash == NULL ? path : slash + 1;
	size_t length = strlen(name);

	if (length < 10 || strspn(name, "0123456789") != 4 || name[4] != '_' ||
	    strcmp(name + length - 4, ".sql") != 0)
		bake_die(path, 1, "a migration is named NNNN_name.sql");
	if (strtol(name, NULL, 10) != number)
		bake_die(path, 1, "migration %04d is expected here", number);
}

/* As an array of characters: a string literal may not be longer than 4,095
 * bytes in C17. */
static void
print_migration(const struct source *source, int number)
{
	printf("static const char migration_%04d[] = {", number);
	for (size_t i = 0; i < source->size; i++) {
		printf("%s'", i % 16 == 0 ? "\n\t" : " ");
		print_byte(source->bytes[i], '\'');
		printf("',");
	}
	printf("\n\t'\\0',\n};\n\n");
}

void
bake_migration(char *const *paths, int count)
{
	print_top("log/migrations.h");
	for (int i = 0; i < count; i++) {
		struct source source;

		check_migration_name(paths[i], i + 1);
		source = source_read(paths[i]);
		print_migration(&source, i + 1);
	}
	printf("const char *const log_migrations[] = {\n");
	for (int i = 0; i < count; i++)
		printf("\tmigration_%04d,\n", i + 1);
	printf("};\n\nconst size_t log_migration_count = sizeof(log_migrations) / "
	       "sizeof(log_migrations[0]);\n");
}
