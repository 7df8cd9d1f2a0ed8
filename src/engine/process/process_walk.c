#include "engine/process/process_walk.h"

#include <string.h>

#include "base/text.h"

bool row_offered(const struct process_row *row)
{
	return row->confirmed == CONFIRMED_YES || row->confirmed == CONFIRMED_PRACTICE;
}

bool row_serves(const struct process_row *row, enum method method)
{
	if (method == METHOD_STEAM)
		return row->method == METHOD_BOILING_WATER && row->acidity != ACIDITY_LOW_ACID;
	return row->method == method;
}

int row_top_ft(const struct process_row *row)
{
	return row->alt_max_ft < NO_PROCESS_ABOVE_FT ? row->alt_max_ft : NO_PROCESS_ABOVE_FT;
}

bool row_begins_food(size_t index)
{
	const char *food = process_rows[index].food;

	/* From the row above upward: a food's rows stand together, so a row that
	 * is not its first is nearly always known at once. */
	for (size_t i = index; i > 0; i--) {
		if (strcmp(process_rows[i - 1].food, food) == 0)
			return false;
	}
	return true;
}

const char *food_in_table(const char *name)
{
	for (size_t i = 0; name != NULL && i < process_row_count; i++) {
		if (text_same_name(name, process_rows[i].food))
			return process_rows[i].food;
	}
	return NULL;
}

/* An offered row that the method can carry out somewhere. */
static bool row_usable(const struct process_row *row, enum method method)
{
	return row_offered(row) && row_serves(row, method) &&
	       (method != METHOD_STEAM || row->minutes <= STEAM_HOLD_MAX_MINUTES);
}

bool process_has_food(enum method method, const char *food)
{
	for (size_t i = 0; food != NULL && i < process_row_count; i++) {
		if (row_usable(&process_rows[i], method) && strcmp(process_rows[i].food, food) == 0)
			return true;
	}
	return false;
}

bool process_is_offered(const char *food)
{
	for (size_t i = 0; i < process_row_count; i++) {
		if (row_offered(&process_rows[i]) && strcmp(process_rows[i].food, food) == 0)
			return true;
	}
	return false;
}

static bool row_is_of(const struct process_row *row, const char *food, const char *pack)
{
	return strcmp(row->food, food) == 0 && text_same_name(row->pack, pack);
}

const char *process_next_food(enum method method, const char *after)
{
	size_t at = 0;

	while (after != NULL && at < process_row_count && !text_same_name(process_rows[at].food, after))
		at++;
	/* On from there: that no food ahead of it is asked about again keeps the walk short. */
	for (size_t i = after == NULL ? 0 : at + 1; i < process_row_count; i++) {
		if (row_begins_food(i) && process_has_food(method, process_rows[i].food))
			return process_rows[i].food;
	}
	return NULL;
}

/* Does an earlier usable row have the pack of row `index`? */
static bool pack_seen(size_t index, enum method method)
{
	const struct process_row *row = &process_rows[index];

	for (size_t i = 0; i < index; i++) {
		if (row_usable(&process_rows[i], method) && row_is_of(&process_rows[i], row->food, row->pack))
			return true;
	}
	return false;
}

const char *process_next_pack(const char *food, enum method method, const char *after)
{
	const char *known = food_in_table(food);
	bool past = after == NULL;

	for (size_t i = 0; known != NULL && i < process_row_count; i++) {
		const struct process_row *row = &process_rows[i];

		if (strcmp(row->food, known) != 0 || !row_usable(row, method) || pack_seen(i, method))
			continue;
		if (past)
			return row->pack;
		past = text_same_name(row->pack, after);
	}
	return NULL;
}

const struct jar_size *process_next_jar(const char *food, enum method method, const char *pack,
                                        const struct jar_size *after)
{
	int past = after == NULL ? -1 : jar_size_index(after);
	int next = JAR_SIZES_MAX;

	for (size_t i = 0; i < process_row_count; i++) {
		const struct process_row *row = &process_rows[i];

		if (row->jar > past && row->jar < next && row_usable(row, method) && text_same_name(row->food, food) &&
		    text_same_name(row->pack, pack))
			next = row->jar;
	}
	return next == JAR_SIZES_MAX ? NULL : &jar_sizes[next];
}

bool process_acidity(const char *food, enum acidity *out)
{
	for (size_t i = 0; food != NULL && i < process_row_count; i++) {
		if (text_same_name(food, process_rows[i].food)) {
			*out = process_rows[i].acidity;
			return true;
		}
	}
	return false;
}
