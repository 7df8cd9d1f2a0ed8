/*
 * print.c - C as bake prints it.
 */
#include "bake/bake.h"

#include <stdio.h>

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
