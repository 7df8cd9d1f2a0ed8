/*
 * print.c - C as bake prints it.
 */
#include "bake/bake.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

void print_top(const char *include)
{
	printf("/* Made by bake from schema/; change the tables there. */\n#include \"%s\"\n\n", include);
}

/* Three octal digits end an escape for certain; ? could begin a trigraph. */
void print_byte(char byte, char quote)
{
	if (byte == quote || byte == '\\')
		printf("\\%c", byte);
	else if ((unsigned char)byte < 0x20 || (unsigned char)byte >= 0x7f || byte == '?')
		printf("\\%03o", (unsigned int)(unsigned char)byte);
	else
		putchar(byte);
}

void print_string(const char *text)
{
	putchar('"');
	for (; *text != '\0'; text++)
		print_byte(*text, '"');
	putchar('"');
}

void print_field(const char *indent, const char *name, const char *text)
{
	printf("%s.%s = ", indent, name);
	print_string(text);
	printf(",\n");
}

void print_count(const char *count, const char *array)
{
	printf("};\n\nconst size_t %s = sizeof(%s) / sizeof(%s[0]);\n", count, array, array);
}

int bake_end(void)
{
	if (fflush(stdout) != 0 || ferror(stdout))
		bake_die("standard output", 0, "cannot be written: %s", strerror(errno));
	return 0;
}
