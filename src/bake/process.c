/*
 * process.c - the process tables, checked row by row and against each other.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <string.h>

const char *const pack_names[PACK_COUNT] = {
	"hot", "raw", "hot_sterile_jar", "raw_sterile_jar", "hot_unsterile_jar",
};
static const char *const methods[] = { "boiling_water", "dial_gauge", "weighted_gauge" };
static const char *const method_constants[] = {
	"METHOD_BOILING_WATER",
	"METHOD_DIAL_GAUGE",
	"METHOD_WEIGHTED_GAUGE",
};
const char *const acidity_names[ACIDITY_COUNT] = { "acid", "acidified", "low_acid" };
const char *const acidity_constants[ACIDITY_COUNT] = {
	"ACIDITY_ACID",
	"ACIDITY_ACIDIFIED",
	"ACIDITY_LOW_ACID",
};
static const char *const confirmations[] = { "yes", "practice", "disputed", "memory" };
static const char *const confirmation_constants[] = {
	"CONFIRMED_YES",
	"CONFIRMED_PRACTICE",
	"CONFIRMED_DISPUTED",
	"CONFIRMED_MEMORY",
};

/* src/engine/process/process.h: PROCESS_OPTIONS_MAX others beside the one given. */
#define ROWS_IN_BAND_MAX 7

#define BOILING_WATER 0 /* in `methods` */

/* One table goes on where the guide prints an open top: boiling water from 8,001
 * to 10,000 ft (schema/process_above_8000ft.csv). */
#define SECOND_MIN_FT 8001
#define SECOND_MAX_FT 10000

static size_t field_jar(const struct record *record, size_t index, const struct jars *jars)
{
	for (size_t i = 0; i < jars->count; i++) {
		if (strcmp(record->field[index], jars->row[i].name) == 0)
			return i;
	}
	bake_die(record->path, record->line, "unknown jar: \"%s\"", record->field[index]);
}

static struct process process_from(const struct record *record, const struct jars *jars)
{
	struct process row = {
		.food = bake_copy(field_text(record, 0, "food", NAME_BYTES)),
		.pack = field_word(record, 1, "style_of_pack", pack_names, PACK_COUNT),
		.jar = field_jar(record, 2, jars),
		.method = field_word(record, 3, "method", methods, 3),
		.headspace_thou = field_thousandths(record, 4, "headspace_in", 3000),
		.alt_min_ft = field_number(record, 5, "alt_min_ft", 0, 30000),
		.alt_max_ft = NO_NUMBER,
		.minutes = field_number(record, 7, "minutes", 1, 600),
		.pressure_psi = NO_NUMBER,
		.acidity = field_word(record, 9, "acidity", acidity_names, ACIDITY_COUNT),
		.source = bake_copy(field_text(record, 10, "source", SOURCE_BYTES)),
		.confirmed = field_word(record, 11, "confirmed", confirmations, 4),
		.path = record->path,
		.line = record->line,
	};

	if (record->field[6][0] != '\0')
		row.alt_max_ft = field_number(record, 6, "alt_max_ft", row.alt_min_ft, 30000);
	if (record->field[8][0] != '\0')
		row.pressure_psi = field_number(record, 8, "pressure_psi", 1, 30);
	if (row.method == BOILING_WATER && row.pressure_psi != NO_NUMBER)
		bake_die(row.path, row.line, "a pressure in a boiling-water canner");
	if (row.method != BOILING_WATER && row.pressure_psi == NO_NUMBER)
		bake_die(row.path, row.line, "no pressure in a pressure canner");
	if (row.method == BOILING_WATER && row.acidity == LOW_ACID)
		bake_die(row.path, row.line, "low-acid food in a boiling-water canner");
	return row;
}

static bool same_cell(const struct process *a, const struct process *b)
{
	return a->pack == b->pack && a->jar == b->jar && a->method == b->method && strcmp(a->food, b->food) == 0;
}

static bool same_band(const struct process *a, const struct process *b)
{
	return a->alt_min_ft == b->alt_min_ft && a->alt_max_ft == b->alt_max_ft;
}

static bool bands_overlap(const struct process *a, const struct process *b)
{
	return (a->alt_max_ft == NO_NUMBER || b->alt_min_ft <= a->alt_max_ft) &&
	       (b->alt_max_ft == NO_NUMBER || a->alt_min_ft <= b->alt_max_ft);
}

/* Is `row` of the second table, and `open` the open top band it lies over?  No
 * other bands may overlap. */
static bool lies_over(const struct process *row, const struct process *open)
{
	return row->alt_min_ft == SECOND_MIN_FT && row->alt_max_ft == SECOND_MAX_FT && row->method == BOILING_WATER &&
	       same_cell(row, open) && open->alt_max_ft == NO_NUMBER && open->alt_min_ft < SECOND_MIN_FT;
}

/* A jar has one headspace; and a row that is not offered would leave the guide's
 * shorter time standing. */
static void check_second(const struct process *row, const struct process *open)
{
	if (row->headspace_thou != open->headspace_thou)
		bake_die(row->path, row->line, "the headspace differs from %s:%ld", open->path, open->line);
	if (!process_offered(row))
		bake_die(row->path, row->line, "not confirmed, over the open band of %s:%ld", open->path, open->line);
}

static void check_pair(const struct process *row, const struct process *other)
{
	if (strcmp(row->food, other->food) != 0) {
		if (same_name(row->food, other->food))
			bake_die(row->path, row->line, "the food \"%s\" is spelt \"%s\" in %s:%ld", row->food,
			         other->food, other->path, other->line);
		return;
	}
	if (row->acidity != other->acidity)
		bake_die(row->path, row->line, "the food has another acidity in %s:%ld", other->path, other->line);
	if (!same_cell(row, other))
		return;
	if (same_band(row, other) && row->pressure_psi == other->pressure_psi)
		bake_die(row->path, row->line, "the same cell is already in %s:%ld", other->path, other->line);
	if (!same_band(row, other) && bands_overlap(row, other) && !lies_over(row, other) && !lies_over(other, row))
		bake_die(row->path, row->line, "the band overlaps that of %s:%ld", other->path, other->line);
}

/* The bands of a table lie end to end from 0 ft; a hole would be a kitchen
 * that gets no answer, or a typing error in an edge.  The second table's one
 * band lies over an open one instead. */
static void check_row(const struct processes *table, size_t index)
{
	const struct process *row = &table->row[index];
	bool joined = row->alt_min_ft == 0;
	int in_band = 0;

	for (size_t i = 0; i < table->count; i++) {
		const struct process *other = &table->row[i];

		if (i < index)
			check_pair(row, other);
		if (!same_cell(row, other))
			continue;
		if (lies_over(row, other))
			check_second(row, other);
		joined = joined || other->alt_max_ft == row->alt_min_ft - 1 || lies_over(row, other);
		in_band += same_band(row, other) ? 1 : 0;
	}
	if (!joined)
		bake_die(row->path, row->line, "no band of the same table ends at %d ft", row->alt_min_ft - 1);
	if (in_band > ROWS_IN_BAND_MAX)
		bake_die(row->path, row->line, "more than %d options in one band", ROWS_IN_BAND_MAX);
}

void processes_add(struct processes *table, const char *path, const struct jars *jars)
{
	static const char *const header[] = {
		"food",       "style_of_pack", "jar",          "method",  "headspace_in", "alt_min_ft",
		"alt_max_ft", "minutes",       "pressure_psi", "acidity", "source",       "confirmed",
	};
	struct source source = source_read(path);
	struct record record;
	size_t before = table->count;

	header_read(&source, header, 12);
	while (row_read(&source, &record, 12)) {
		table->row = bake_room(table->row, table->count + 1, sizeof(table->row[0]));
		table->row[table->count++] = process_from(&record, jars);
	}
	if (table->count == before)
		bake_die(path, 2, "no rows");
}

/* "yes" and "practice", as process.h of the engine. */
bool process_offered(const struct process *row)
{
	return row->confirmed <= 1;
}

static void print_process(const struct process *row)
{
	printf("\t{ ");
	print_string(row->food);
	printf(", \"%s\", %zu, %s, %d, %d, ", pack_names[row->pack], row->jar, method_constants[row->method],
	       row->headspace_thou, row->alt_min_ft);
	if (row->alt_max_ft == NO_NUMBER)
		printf("NO_TOP_FT");
	else
		printf("%d", row->alt_max_ft);
	printf(", %d, ", row->minutes);
	if (row->pressure_psi == NO_NUMBER)
		printf("NO_PRESSURE");
	else
		printf("%d", row->pressure_psi);
	printf(", %s, ", acidity_constants[row->acidity]);
	print_string(row->source);
	printf(", %s },\n", confirmation_constants[row->confirmed]);
}

/* Is there an open band under row `index`, whatever the order of the files? */
static bool is_second(const struct processes *table, size_t index)
{
	for (size_t i = 0; i < table->count; i++)
		if (lies_over(&table->row[index], &table->row[i]))
			return true;
	return false;
}

/* A row, and right behind it the one that lies over it: the rows of a food stand
 * together, in the order of the guide. */
static void print_with_second(const struct processes *table, size_t index)
{
	if (is_second(table, index))
		return;
	print_process(&table->row[index]);
	for (size_t i = 0; i < table->count; i++)
		if (lies_over(&table->row[i], &table->row[index]))
			print_process(&table->row[i]);
}

void bake_process(const char *jar_path, char *const *paths, int count)
{
	struct jars jars = jars_read(jar_path);
	struct processes table = { 0 };

	for (int i = 0; i < count; i++)
		processes_add(&table, paths[i], &jars);
	for (size_t i = 0; i < table.count; i++)
		check_row(&table, i);
	print_top("engine/process/process.h");
	printf("const struct process_row process_rows[] = {\n");
	for (size_t i = 0; i < table.count; i++)
		print_with_second(&table, i);
	printf("};\n\nconst size_t process_row_count = sizeof(process_rows) / sizeof(process_rows[0]);\n");
}
