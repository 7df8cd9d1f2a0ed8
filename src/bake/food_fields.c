/*
 * food_fields.c - fields that the tables of needs have and others have not.
 */
#include "bake/food.h"

#include <string.h>

const char *field_maybe(const struct record *record, size_t index, const char *name, size_t size)
{
	if (strlen(record->field[index]) >= size)
		bake_die(record->path, record->line, "%s is longer than %zu bytes", name, size - 1);
	return bake_copy(record->field[index]);
}

int64_t field_volume(const struct record *record, size_t index, const char *name)
{
	struct amount amount;

	if (record->field[index][0] == '\0')
		return 0;
	amount = field_amount(record, index, name, 0);
	if (amount.measure != MEASURE_VOLUME)
		bake_die(record->path, record->line, "%s is no volume: \"%s\"", name, record->field[index]);
	return amount.amount;
}

int field_whole_maybe(const struct record *record, size_t index, const char *name, int most)
{
	return record->field[index][0] == '\0' ? 0 : field_number(record, index, name, 1, most);
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

size_t class_index(const struct larder *larder, const struct record *record, const char *id)
{
	for (size_t i = 0; i < larder->class_count; i++) {
		if (strcmp(larder->classes[i].id, id) == 0)
			return i;
	}
	bake_die(record->path, record->line, "unknown ingredient class: \"%s\"", id);
}

uint64_t field_classes(const struct larder *larder, const struct record *record, size_t index)
{
	const char *list = record->field[index];
	char id[ID_BYTES];
	uint64_t bits = 0;

	while (next_part(&list, " ", id, sizeof(id))) {
		uint64_t bit = UINT64_C(1) << class_index(larder, record, id);

		if ((bits & bit) != 0)
			bake_die(record->path, record->line, "the class \"%s\" is there twice", id);
		bits |= bit;
	}
	return bits;
}

size_t known_index(const struct larder *larder, const char *name)
{
	for (size_t i = 0; i < larder->known_count; i++) {
		const char *list = larder->known[i].also;
		char part[NAME_BYTES];

		if (same_name(larder->known[i].name, name))
			return i;
		while (next_part(&list, "; ", part, sizeof(part))) {
			if (same_name(part, name))
				return i;
		}
	}
	return NONE;
}
