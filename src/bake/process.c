/*
 * process.c - the process tables, checked row by row and against each other.
 */
#include "bake/bake.h"

#include <stdio.h>
#include <string.h>

#include "base/text.h"

#define ROWS_IN_BAND_MAX (PROCESS_OPTIONS_MAX + 1) /* those beside the one given */
#define SECOND_MIN_FT (SECOND_TABLE_ABOVE_FT + 1)
#define SECOND_MAX_FT NO_PROCESS_ABOVE_FT

static int field_jar(const struct record *record, size_t index, const struct jars *jars)
{
	for (size_t i = 0; i < jars->count; i++) {
		if (strcmp(record->field[index], jars->row[i].name) == 0)
			return (int)i;
	}
	bake_die(record->path, record->line, "unknown jar: \"%s\"", record->field[index]);
}

static const char *field_pack(const struct record *record, size_t index, const struct pack_lines *packs)
{
	for (size_t i = 0; i < packs->count; i++) {
		if (strcmp(record->field[index], packs->row[i].name) == 0)
			return packs->row[i].name;
	}
	bake_die(record->path, record->line, "unknown style_of_pack: \"%s\"", record->field[index]);
}

static struct process_line process_from(const struct record *record, const struct referred *to)
{
	struct process_row row = {
		.food = field_text(record, 0, "food", NAME_BYTES),
		.pack = field_pack(record, 1, &to->packs),
		.jar = field_jar(record, 2, &to->jars),
		.method = field_method(record, 3, "method"),
		.headspace_thou = field_thousandths(record, 4, "headspace_in", 3000),
		.alt_min_ft = field_number(record, 5, "alt_min_ft", 0, 30000),
		.alt_max_ft = NO_TOP_FT,
		.minutes = field_number(record, 7, "minutes", 1, 600),
		.pressure_psi = NO_PRESSURE,
		.acidity = field_acidity(record, 9, "acidity"),
		.source = field_text(record, 10, "source", SOURCE_BYTES),
		.confirmed = field_confirmed(record, 11, "confirmed"),
	};

	if (record->field[6][0] != '\0')
		row.alt_max_ft = field_number(record, 6, "alt_max_ft", row.alt_min_ft, 30000);
	if (record->field[8][0] != '\0')
		row.pressure_psi = field_number(record, 8, "pressure_psi", 1, 30);
	if (row.method == METHOD_STEAM)
		bake_die(record->path, record->line, "a steam canner has no rows of its own: it uses boiling water's");
	if (!method_has_pressure(row.method) && row.pressure_psi != NO_PRESSURE)
		bake_die(record->path, record->line, "a pressure in a boiling-water canner");
	if (method_has_pressure(row.method) && row.pressure_psi == NO_PRESSURE)
		bake_die(record->path, record->line, "no pressure in a pressure canner");
	if (!method_has_pressure(row.method) && row.acidity == ACIDITY_LOW_ACID)
		bake_die(record->path, record->line, "low-acid food in a boiling-water canner");
	return (struct process_line){ .row = row, .path = record->path, .line = record->line };
}

/* "yes" and "practice" rows are. */
static bool offered(const struct process_row *row)
{
	return row->confirmed <= CONFIRMED_PRACTICE;
}

static bool same_cell(const struct process_row *a, const struct process_row *b)
{
	return strcmp(a->pack, b->pack) == 0 && a->jar == b->jar && a->method == b->method &&
	       strcmp(a->food, b->food) == 0;
}

static bool same_band(const struct process_row *a, const struct process_row *b)
{
	return a->alt_min_ft == b->alt_min_ft && a->alt_max_ft == b->alt_max_ft;
}

static bool bands_overlap(const struct process_row *a, const struct process_row *b)
{
	return b->alt_min_ft <= a->alt_max_ft && a->alt_min_ft <= b->alt_max_ft;
}

/* Is `row` of the second table, and `open` the open top band it lies over?  No
 * other bands may overlap. */
static bool lies_over(const struct process_row *row, const struct process_row *open)
{
	return row->alt_min_ft == SECOND_MIN_FT && row->alt_max_ft == SECOND_MAX_FT &&
	       row->method == METHOD_BOILING_WATER && same_cell(row, open) && open->alt_max_ft == NO_TOP_FT &&
	       open->alt_min_ft < SECOND_MIN_FT;
}

/* A jar has one headspace; and a row that is not offered would leave the guide's
 * shorter time standing. */
static void check_second(const struct process_line *line, const struct process_line *open)
{
	if (line->row.headspace_thou != open->row.headspace_thou)
		bake_die(line->path, line->line, "the headspace differs from %s:%ld", open->path, open->line);
	if (!offered(&line->row))
		bake_die(line->path, line->line, "not confirmed, over the open band of %s:%ld", open->path, open->line);
}

static void check_pair(const struct process_line *line, const struct process_line *before)
{
	const struct process_row *row = &line->row;
	const struct process_row *other = &before->row;

	if (strcmp(row->food, other->food) != 0) {
		if (text_same_name(row->food, other->food))
			bake_die(line->path, line->line, "the food \"%s\" is spelt \"%s\" in %s:%ld", row->food,
			         other->food, before->path, before->line);
		return;
	}
	if (row->acidity != other->acidity)
		bake_die(line->path, line->line, "the food has another acidity in %s:%ld", before->path, before->line);
	if (!same_cell(row, other))
		return;
	if (same_band(row, other) && row->pressure_psi == other->pressure_psi)
		bake_die(line->path, line->line, "the same cell is already in %s:%ld", before->path, before->line);
	if (!same_band(row, other) && bands_overlap(row, other) && !lies_over(row, other) && !lies_over(other, row))
		bake_die(line->path, line->line, "the band overlaps that of %s:%ld", before->path, before->line);
}

/* The bands of a table lie end to end from 0 ft; a hole would be a kitchen
 * that gets no answer, or a typing error in an edge.  The second table's one
 * band lies over an open one instead. */
static void check_row(const struct processes *table, size_t index)
{
	const struct process_line *line = &table->row[index];
	const struct process_row *row = &line->row;
	bool joined = row->alt_min_ft == 0;
	int in_band = 0;

	for (size_t i = 0; i < table->count; i++) {
		const struct process_row *other = &table->row[i].row;

		if (i < index)
			check_pair(line, &table->row[i]);
		if (!same_cell(row, other))
			continue;
		if (lies_over(row, other))
			check_second(line, &table->row[i]);
		joined = joined || other->alt_max_ft == row->alt_min_ft - 1 || lies_over(row, other);
		in_band += same_band(row, other) ? 1 : 0;
	}
	if (!joined)
		bake_die(line->path, line->line, "no band of the same table ends at %d ft", row->alt_min_ft - 1);
	if (in_band > ROWS_IN_BAND_MAX)
		bake_die(line->path, line->line, "more than %d options in one band", ROWS_IN_BAND_MAX);
}

static void processes_add(struct processes *table, const char *path, const struct referred *to)
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
		struct process_line line = process_from(&record, to);

		table->row[next_row(&record, &table->count, PROCESS_ROWS_MAX)] = line;
	}
	if (table->count == before)
		bake_die(path, 2, "no rows");
}

static void print_process(const struct process_row *row)
{
	printf("\t{ ");
	print_string(row->food);
	printf(", \"%s\", %d, %s, %d, %d, ", row->pack, row->jar, method_constants[row->method], row->headspace_thou,
	       row->alt_min_ft);
	if (row->alt_max_ft == NO_TOP_FT)
		printf("NO_TOP_FT");
	else
		printf("%d", row->alt_max_ft);
	printf(", %d, ", row->minutes);
	if (row->pressure_psi == NO_PRESSURE)
		printf("NO_PRESSURE");
	else
		printf("%d", row->pressure_psi);
	printf(", %s, ", acidity_constants[row->acidity]);
	print_string(row->source);
	printf(", %s },\n", confirmed_constants[row->confirmed]);
}

/* Is there an open band under row `index`, whatever the order of the files? */
static bool is_second(const struct processes *table, size_t index)
{
	for (size_t i = 0; i < table->count; i++)
		if (lies_over(&table->row[index].row, &table->row[i].row))
			return true;
	return false;
}

/* A row, and right behind it the one that lies over it: the rows of a food stand
 * together, in the order of the guide. */
static void print_with_second(const struct processes *table, size_t index)
{
	if (is_second(table, index))
		return;
	print_process(&table->row[index].row);
	for (size_t i = 0; i < table->count; i++)
		if (lies_over(&table->row[i].row, &table->row[index].row))
			print_process(&table->row[i].row);
}

void processes_read(struct processes *table, char *const *tables, int count)
{
	struct referred to = { .jars = jars_read(tables[0]), .packs = packs_read(tables[1]) };

	for (int i = 2; i < count; i++)
		processes_add(table, tables[i], &to);
}

void bake_process(char *const *tables, int count)
{
	static struct processes table;

	processes_read(&table, tables, count);
	for (size_t i = 0; i < table.count; i++)
		check_row(&table, i);
	print_top("engine/process/process.h");
	printf("const struct process_row process_rows[] = {\n");
	for (size_t i = 0; i < table.count; i++)
		print_with_second(&table, i);
	print_count("process_row_count", "process_rows");
}
