#include "engine/process/process.h"
#include "engine/process/pack.h"

#include <string.h>

#include "base/text.h"
#include "engine/process/process_refusal.h"
#include "engine/process/process_walk.h"

#define ROWS_HERE_MAX (PROCESS_OPTIONS_MAX + 1) /* the one given and the others; bake checks */

/* The offered rows that apply at the elevation, longest hold first. */
struct rows_here {
	const struct process_row *row[ROWS_HERE_MAX];
	size_t count;
};

static bool row_is_of_pack(const struct process_row *row, const struct process_search *search)
{
	return row_serves(row, search->query->method) && strcmp(row->food, search->food) == 0 &&
	       strcmp(row->pack, search->pack) == 0;
}

static bool row_is_in_cell(const struct process_row *row, const struct process_search *search)
{
	return row->jar == jar_size_index(search->jar_in_table) && row_is_of_pack(row, search);
}

/* Does some part of the elevation lie above everything the next lower band
 * holds?  Below the first band's zero the first band still serves. */
static bool reaches_band(const struct process_row *row, int64_t um)
{
	return row->alt_min_ft == 0 || um > (row->alt_min_ft - 1) * FOOT_UM;
}

static bool row_applies(const struct process_row *row, const struct elevation *elevation)
{
	return elevation_within_top(elevation, row_top_ft(row)) &&
	       reaches_band(row, elevation->um + elevation->slack_um);
}

/* Find the food, and where its rows lie, so that the rest need not go through
 * the whole table again. */
static bool find_food(struct process_search *search)
{
	const char *food = food_in_table(search->query->food);

	if (food == NULL)
		return false;
	search->food = food;
	for (size_t i = 0; i < process_row_count; i++) {
		if (strcmp(process_rows[i].food, food) != 0)
			continue;
		if (search->end == 0)
			search->begin = i;
		search->end = i + 1;
	}
	return true;
}

static bool find_pack(struct process_search *search, struct fault *fault)
{
	bool method_known = false;

	for (size_t i = search->begin; i < search->end; i++) {
		const struct process_row *row = &process_rows[i];

		if (!row_serves(row, search->query->method) || strcmp(row->food, search->food) != 0)
			continue;
		method_known = true;
		if (text_same_name(row->pack, search->query->pack)) {
			search->pack = row->pack;
			return true;
		}
	}
	/* Without any row for the method there is no pack to list; that refusal
	 * comes after the jar's. */
	return method_known ? refuse_pack(search, fault) : true;
}

/* The smallest tested size that is not smaller than the one asked for.  A size
 * counts as tested whatever its confirmed word, so that an unconfirmed row is
 * never passed over in favour of a larger jar's. */
static bool find_tested_jar(struct process_search *search, struct fault *fault)
{
	int asked = jar_size_index(search->jar);
	int best = -1;
	int largest = 0;

	for (size_t i = search->begin; i < search->end; i++) {
		const struct process_row *row = &process_rows[i];

		if (!row_is_of_pack(row, search))
			continue;
		if (row->jar > largest)
			largest = row->jar;
		if (row->jar >= asked && (best < 0 || row->jar < best))
			best = row->jar;
	}
	if (best < 0)
		return refuse_jar_too_large(search, &jar_sizes[largest], fault);
	search->jar_in_table = &jar_sizes[best];
	return true;
}

/* Turn the words of the query into names of the tables, refusing in the order
 * in which an answer is most useful. */
static bool understand(struct process_search *search, struct fault *fault)
{
	const struct process_query *query = search->query;

	if (!query->elevation.known)
		return fault_set(fault, FAULT_REFUSED,
		                 "the elevation of this kitchen is not known, so no process is given; "
		                 "find it on a map and set it, such as 4,650 ft or 1417 m");
	if (!find_food(search))
		return refuse_food(query->food, fault);
	if (!method_has_pressure(query->method) && process_rows[search->begin].acidity == ACIDITY_LOW_ACID)
		return refuse_low_acid(search->food, fault);
	if (!find_pack(search, fault))
		return false;
	search->jar = jar_size_named(query->jar);
	if (search->jar == NULL)
		return refuse_jar(query->jar, fault);
	if (search->pack[0] == '\0')
		return refuse_method(search, fault);
	return find_tested_jar(search, fault);
}

/* Longer holds first; of equal holds the higher pressure. */
static bool comes_before(const struct process_row *a, const struct process_row *b)
{
	if (a->minutes != b->minutes)
		return a->minutes > b->minutes;
	return a->pressure_psi > b->pressure_psi;
}

/* Does another table ask more of the same cell and pressure here?  The stricter
 * governs, and the shorter time is no choice.  Of equal ones the first is given. */
static bool outdone(const struct process_search *search, const struct process_row *row)
{
	for (size_t i = search->begin; i < search->end; i++) {
		const struct process_row *other = &process_rows[i];

		if (row_is_in_cell(other, search) && other->pressure_psi == row->pressure_psi && row_offered(other) &&
		    row_applies(other, &search->query->elevation) &&
		    (other->minutes > row->minutes || (other->minutes == row->minutes && other < row)))
			return true;
	}
	return false;
}

static void add_row_here(struct rows_here *here, const struct process_row *row)
{
	size_t place;

	if (here->count == ROWS_HERE_MAX)
		return;
	for (place = here->count++; place > 0 && comes_before(row, here->row[place - 1]); place--)
		here->row[place] = here->row[place - 1];
	here->row[place] = row;
}

static bool find_rows_here(const struct process_search *search, struct rows_here *here, struct fault *fault)
{
	bool applies = false;
	int last_top_ft = 0;

	for (size_t i = search->begin; i < search->end; i++) {
		const struct process_row *row = &process_rows[i];

		if (!row_is_in_cell(row, search))
			continue;
		if (row_top_ft(row) > last_top_ft)
			last_top_ft = row_top_ft(row);
		if (!row_applies(row, &search->query->elevation))
			continue;
		applies = true;
		if (row_offered(row) && !outdone(search, row))
			add_row_here(here, row);
	}
	if (!applies)
		return refuse_above_bands(search, last_top_ft, fault);
	return here->count > 0 || refuse_unconfirmed(search, NO_PRESSURE, fault);
}

/* The chosen pressure is not among the rows offered here: say why. */
static bool explain_pressure(const struct process_search *search, const struct rows_here *here, struct fault *fault)
{
	int stops_at_ft = 0;

	for (size_t i = search->begin; i < search->end; i++) {
		const struct process_row *row = &process_rows[i];

		if (!row_is_in_cell(row, search) || row->pressure_psi != search->query->pressure_psi)
			continue;
		if (row_applies(row, &search->query->elevation))
			return refuse_unconfirmed(search, row->pressure_psi, fault);
		if (!elevation_within_top(&search->query->elevation, row_top_ft(row)) && row_top_ft(row) > stops_at_ft)
			stops_at_ft = row_top_ft(row);
	}
	return refuse_pressure(search, stops_at_ft, here->row, here->count, fault);
}

/* The row to give; NULL with a fault when the chosen pressure is not offered. */
static const struct process_row *choose_row(const struct process_search *search, const struct rows_here *here,
                                            struct fault *fault)
{
	if (search->query->pressure_psi == NO_PRESSURE)
		return here->row[0];
	for (size_t i = 0; i < here->count; i++) {
		if (here->row[i]->pressure_psi == search->query->pressure_psi)
			return here->row[i];
	}
	explain_pressure(search, here, fault);
	return NULL;
}

/* A sheet can only lengthen what the table says. */
static int longer(int minutes, const struct process_query *query)
{
	return minutes < query->sheet_minutes ? query->sheet_minutes : minutes;
}

static void fill_in(const struct process_search *search, const struct rows_here *here, const struct process_row *row,
                    struct process *out)
{
	const struct elevation *elevation = &search->query->elevation;

	*out = (struct process){
		.row = row,
		.jar = search->jar,
		.jar_in_table = search->jar_in_table,
		.method = search->query->method,
		.minutes = longer(row->minutes, search->query),
		.pressure_psi = row->pressure_psi,
		.jar_sized_up = search->jar != search->jar_in_table,
		.band_raised = !reaches_band(row, elevation->um),
		.above_tables = !method_has_pressure(search->query->method) &&
		                !elevation_within_top(elevation, SECOND_TABLE_ABOVE_FT) && row->alt_max_ft == NO_TOP_FT,
		.jars_sterile = pack_has_jars(row->pack, JARS_BOILED_FIRST),
	};
	for (size_t i = 0; i < here->count; i++) {
		if (here->row[i] != row)
			out->options[out->option_count++] = (struct process_option){
				.minutes = longer(here->row[i]->minutes, search->query),
				.pressure_psi = here->row[i]->pressure_psi,
			};
	}
}

bool process_find(const struct process_query *query, struct process *out, struct fault *fault)
{
	struct process_query asked = *query;
	struct process_search search = { .query = &asked, .food = "", .pack = "" };
	struct rows_here here = { .count = 0 };
	const struct process_row *row;

	if ((int)query->method < 0 || query->method >= METHOD_COUNT)
		return fault_set(fault, FAULT_MISUSE,
		                 "no such canning method; the methods are: boiling_water, "
		                 "steam, dial_gauge, weighted_gauge");
	if (query->pressure_psi != NO_PRESSURE && !method_has_pressure(query->method))
		return fault_set(fault, FAULT_MISUSE, "a %s has no pressure to choose; leave it out",
		                 method_words(query->method));
	asked.food = query->food == NULL ? "" : query->food;
	asked.pack = query->pack == NULL ? "" : query->pack;
	asked.jar = query->jar == NULL ? "" : query->jar;
	if (!understand(&search, fault) || !find_rows_here(&search, &here, fault))
		return false;
	row = choose_row(&search, &here, fault);
	if (row == NULL)
		return false;
	if (query->method == METHOD_STEAM && longer(row->minutes, query) > STEAM_HOLD_MAX_MINUTES)
		return refuse_steam_hold(&search, longer(row->minutes, query), fault);
	fill_in(&search, &here, row, out);
	return true;
}

bool process_pack_is_practice(const char *food, const char *pack, enum method method, const struct elevation *elevation)
{
	const struct jar_size *jar = NULL;

	while ((jar = process_next_jar(food, method, pack, jar)) != NULL) {
		struct process_query query = { .food = food,
			                       .pack = pack,
			                       .jar = jar->name,
			                       .method = method,
			                       .elevation = *elevation,
			                       .pressure_psi = NO_PRESSURE };
		struct process process = { 0 };

		if (process_find(&query, &process, NULL) && process.row != NULL &&
		    process.row->confirmed == CONFIRMED_PRACTICE)
			return true;
	}
	return false;
}
