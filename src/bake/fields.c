/*
 * fields.c - one field of a record as a text, a number or a word of a list.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char *field_text(const struct record *record, size_t index, const char *name, size_t size)
{
	const char *text = record->field[index];

	if (*text == '\0')
		bake_die(record->path, record->line, "%s is empty", name);
	if (strlen(text) >= size)
		bake_die(record->path, record->line, "%s is longer than %zu bytes", name, size - 1);
	return text;
}

int field_number(const struct record *record, size_t index, const char *name, int least, int most)
{
	const char *text = record->field[index];
	size_t digits = strspn(text, "0123456789");
	long number = strtol(text, NULL, 10);

	if (digits == 0 || text[digits] != '\0' || digits > 6 || (digits > 1 && text[0] == '0'))
		bake_die(record->path, record->line, "%s is not a whole number: \"%s\"", name, text);
	if (number < least || number > most)
		bake_die(record->path, record->line, "%s is %ld, outside %d to %d", name, number, least, most);
	return (int)number;
}

/* Inches with up to three decimals, as exact thousandths. */
int field_thousandths(const struct record *record, size_t index, const char *name, int most)
{
	const char *text = record->field[index];
	const char *at = text;
	int number = 0;
	int decimals = 0;

	for (; *at >= '0' && *at <= '9' && at - text < 3; at++)
		number = number * 10 + (*at - '0');
	if (at == text || (*at != '\0' && *at != '.') || (*at == '.' && at[1] == '\0'))
		bake_die(record->path, record->line, "%s is not a decimal number: \"%s\"", name, text);
	if (*at == '.')
		at++;
	for (; *at >= '0' && *at <= '9' && decimals < 3; at++, decimals++)
		number = number * 10 + (*at - '0');
	if (*at != '\0')
		bake_die(record->path, record->line,
		         "%s is not a decimal number with at most three "
		         "decimals: \"%s\"",
		         name, text);
	for (; decimals < 3; decimals++)
		number *= 10;
	if (number < 1 || number > most)
		bake_die(record->path, record->line, "%s is out of range: \"%s\"", name, text);
	return number;
}

size_t field_word(const struct record *record, size_t index, const char *name, const char *const *words, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		if (strcmp(record->field[index], words[i]) == 0)
			return i;
	}
	bake_die(record->path, record->line, "unknown %s: \"%s\"", name, record->field[index]);
}

/* Names that a person would take for the same (as text_same_name of the engine). */
bool same_name(const char *a, const char *b)
{
	for (;;) {
		a += strspn(a, " -_");
		b += strspn(b, " -_");
		if (*a == '\0' || *b == '\0')
			return *a == *b;
		if ((*a >= 'A' && *a <= 'Z' ? *a - 'A' + 'a' : *a) != (*b >= 'A' && *b <= 'Z' ? *b - 'A' + 'a' : *b))
			return false;
		a++;
		b++;
	}
}
