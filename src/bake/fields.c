/*
 * fields.c - one field of a record as a text, a number or a word of a list.
 */
#include "bake/bake.h"

#include <stdlib.h>
#include <string.h>

#include "engine/recipe/amount.h"

#define DIGITS "0123456789"

const char *field_text(const struct record *record, size_t index, const char *name, size_t size)
{
	const char *text = record->field[index];

	if (*text == '\0')
		bake_die(record->path, record->line, "%s is empty", name);
	return field_maybe(record, index, name, size);
}

const char *field_maybe(const struct record *record, size_t index, const char *name, size_t size)
{
	if (strlen(record->field[index]) >= size)
		bake_die(record->path, record->line, "%s is longer than %zu bytes", name, size - 1);
	return record->field[index];
}

int field_number(const struct record *record, size_t index, const char *name, int least, int most)
{
	const char *text = record->field[index];
	size_t digits = strspn(text, DIGITS);
	long number = strtol(text, NULL, 10);

	if (digits == 0 || text[digits] != '\0' || digits > 6 || (digits > 1 && text[0] == '0'))
		bake_die(record->path, record->line, "%s is not a whole number: \"%s\"", name, text);
	if (number < least || number > most)
		bake_die(record->path, record->line, "%s is %ld, outside %d to %d", name, number, least, most);
	return (int)number;
}

int field_number_maybe(const struct record *record, size_t index, const char *name, int most)
{
	return record->field[index][0] == '\0' ? 0 : field_number(record, index, name, 1, most);
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

bool field_answer(const struct record *record, size_t index, const char *name)
{
	static const char *const answers[] = { "no", "yes" };

	return field_word(record, index, name, answers, 2) == 1;
}

bool next_part(const char **list, const char *gap, char *part, size_t size)
{
	const char *end = strstr(*list, gap);
	size_t length = end == NULL ? strlen(*list) : (size_t)(end - *list);

	if (**list == '\0')
		return false;
	if (length >= size)
		length = size - 1; /* longer than any name, and so found in no table */
	memcpy(part, *list, length);
	part[length] = '\0';
	*list = end == NULL ? *list + strlen(*list) : end + strlen(gap);
	return true;
}

/* --- amounts ------------------------------------------------------------------------ */

/* One number and one unit: of what a person may type besides, the tables have nothing. */
static const char *amount_text(const struct record *record, size_t index, const char *name)
{
	const char *text = record->field[index];
	const char *at = text + strspn(text, DIGITS);
	size_t places = *at == '.' ? strspn(at + 1, DIGITS) : 0;

	if (at == text || places > 3 || at[places + (*at == '.')] != ' ' ||
	    strpbrk(at + places + (*at == '.'), DIGITS) != NULL)
		bake_die(record->path, record->line, "%s is not a number, a blank and a unit: \"%s\"", name, text);
	return text;
}

static int64_t amount_of(const struct record *record, const char *name, const char *text, bool read, int64_t amount,
                         const struct fault *fault)
{
	if (!read)
		bake_die(record->path, record->line, "%s \"%s\": %s", name, text, fault->sentence);
	if (amount <= 0)
		bake_die(record->path, record->line, "%s is nothing: \"%s\"", name, text);
	return amount;
}

int64_t field_amount(const struct record *record, size_t index, const char *name, enum supply_kind supply,
                     enum measure *measure)
{
	const char *text = amount_text(record, index, name);
	struct fault fault;
	int64_t amount = 0;
	bool read;

	*measure = supply_measure(supply);
	read = supply == SUPPLY_OTHER ? amount_read_any(text, supply, measure, &amount, &fault)
	                              : amount_read_level(text, supply, &amount, &fault);
	return amount_of(record, name, text, read, amount, &fault);
}

int64_t field_volume(const struct record *record, size_t index, const char *name)
{
	struct fault fault;
	int64_t ul = 0;
	bool read;

	if (record->field[index][0] == '\0')
		return 0;
	read = amount_read(amount_text(record, index, name), MEASURE_VOLUME, SUPPLY_OTHER, &ul, &fault);
	return amount_of(record, name, record->field[index], read, ul, &fault);
}
