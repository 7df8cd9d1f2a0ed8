/*
 * bake - turns the reference tables and the migrations of schema/ into C.
 *
 *   bake process JAR.csv PROCESS.csv...   const struct process_row process_rows[]
 *   bake jar JAR.csv                      const struct jar_size jar_sizes[]
 *   bake product PRODUCT.csv              const struct product products[]
 *   bake migration NNNN_name.sql...       const char *const log_migrations[]
 *
 * Runs on the machine that builds, needs nothing but a C library, and prints to
 * standard output.  A wrong figure in a table could hurt somebody, so nothing
 * is guessed or passed over: any defect ends the build with FILE:LINE: what.
 * CSV is RFC 4180 (quoted fields, doubled quotes, LF or CRLF), UTF-8, with one
 * header line that is checked name by name.
 */
#include <errno.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define FIELDS_MAX 16
#define RECORD_BYTES 4096
#define NO_NUMBER (-1)

/* Limits of the log that keeps copies of these texts (src/log/log.h). */
#define NAME_BYTES 96
#define WORD_BYTES 24
#define SOURCE_BYTES 256

/* src/engine/process.h: PROCESS_OPTIONS_MAX others beside the one given. */
#define ROWS_IN_BAND_MAX 7

/* A whole file in memory, and how far it has been read. */
struct source {
	const char *path;
	char *bytes;
	size_t size;
	size_t at;
	long line; /* of the byte at `at` */
};

struct record {
	const char *path;
	long line; /* it began on */
	size_t count;
	const char *field[FIELDS_MAX];
	char bytes[RECORD_BYTES];
};

static void die(const char *path, long line, const char *format, ...)
    __attribute__((noreturn, format(printf, 3, 4)));

static void
die(const char *path, long line, const char *format, ...)
{
	va_list args;

	if (line > 0)
		fprintf(stderr, "%s:%ld: ", path, line);
	else
		fprintf(stderr, "%s: ", path);
	va_start(args, format);
	vfprintf(stderr, format, args);
	va_end(args);
	fputc('\n', stderr);
	exit(1);
}

static void *
room_for(void *old, size_t count, size_t size)
{
	void *bytes = realloc(old, count * size);

	if (bytes == NULL)
		die("bake", 0, "no memory left");
	return bytes;
}

static char *
copy_of(const char *text)
{
	size_t size = strlen(text) + 1;

	return memcpy(room_for(NULL, size, 1), text, size);
}

/* --- files and CSV ------------------------------------------------------- */

static struct source
source_read(const char *path)
{
	struct source source = { .path = path, .line = 1 };
	size_t room = 0;
	FILE *file = fopen(path, "rb");

	if (file == NULL)
		die(path, 0, "cannot be read: %s", strerror(errno));
	do {
		room = room == 0 ? 65536 : room * 2;
		source.bytes = room_for(source.bytes, room, 1);
		source.size += fread(source.bytes + source.size, 1, room - source.size, file);
	} while (source.size == room);
	if (ferror(file))
		die(path, 0, "cannot be read: %s", strerror(errno));
	fclose(file);
	if (source.size == 0)
		die(path, 1, "the file is empty");
	for (size_t i = 0, line = 1; i < source.size; i++) {
		if (source.bytes[i] == '\n')
			line++;
		if (source.bytes[i] == '\0')
			die(path, (long)line, "a zero byte; is this a text file?");
	}
	return source;
}

/* The next byte without taking it; EOF at the end. */
static int
peek(const struct source *source)
{
	return source->at < source->size ? (unsigned char)source->bytes[source->at] : EOF;
}

static int
take(struct source *source)
{
	int byte = peek(source);

	if (byte != EOF)
		source->at++;
	if (byte == '\n')
		source->line++;
	return byte;
}

static void
put(struct record *record, size_t *used, char byte)
{
	if (*used == RECORD_BYTES)
		die(record->path, record->line, "the line is longer than %d bytes", RECORD_BYTES);
	record->bytes[(*used)++] = byte;
}

static void
take_quoted(struct source *source, struct record *record, size_t *used)
{
	long opened = source->line;

	take(source);
	for (;;) {
		int byte = take(source);

		if (byte == EOF)
			die(source->path, opened, "a quoted field is never closed");
		if (byte == '"' && peek(source) != '"')
			break;
		if (byte == '"')
			take(source);
		put(record, used, (char)byte);
	}
	if (peek(source) != ',' && peek(source) != '\r' && peek(source) != '\n' && peek(source) != EOF)
		die(source->path, source->line, "text behind a closing quote");
}

static void
take_bare(struct source *source, struct record *record, size_t *used)
{
	while (peek(source) != ',' && peek(source) != '\r' && peek(source) != '\n' &&
	       peek(source) != EOF) {
		if (peek(source) == '"')
			die(source->path, source->line, "a quote inside a field that is not quoted");
		put(record, used, (char)take(source));
	}
}

/* Letters, signs and UTF-8 only, and no stray spaces around them. */
static void
check_text(const struct record *record, const char *field)
{
	size_t length = strlen(field);

	for (const char *at = field; *at != '\0'; at++) {
		if ((unsigned char)*at < 0x20 || *at == 0x7f)
			die(record->path, record->line, "a control character in a field");
	}
	if (length > 0 && (field[0] == ' ' || field[length - 1] == ' '))
		die(record->path, record->line, "a space at the end of the field \"%s\"", field);
}

/* The next record; false at the end of the file. */
static bool
record_read(struct source *source, struct record *record)
{
	size_t used = 0;
	int byte;

	if (peek(source) == EOF)
		return false;
	record->path = source->path;
	record->line = source->line;
	record->count = 0;
	do {
		if (record->count == FIELDS_MAX)
			die(source->path, record->line, "more than %d fields", FIELDS_MAX);
		record->field[record->count++] = record->bytes + used;
		if (peek(source) == '"')
			take_quoted(source, record, &used);
		else
			take_bare(source, record, &used);
		put(record, &used, '\0');
		byte = take(source);
	} while (byte == ',');
	if (byte == '\r' && take(source) != '\n')
		die(source->path, record->line, "a carriage return without a line feed");
	for (size_t i = 0; i < record->count; i++)
		check_text(record, record->field[i]);
	return true;
}

static void
header_read(struct source *source, const char *const *names, size_t count)
{
	struct record record = { .count = 0 };

	if (!record_read(source, &record) || record.count != count)
		die(source->path, 1, "the header has %zu columns instead of %zu", record.count, count);
	for (size_t i = 0; i < count; i++) {
		if (strcmp(record.field[i], names[i]) != 0)
			die(source->path, 1, "column %zu is \"%s\" instead of \"%s\"", i + 1, record.field[i],
			    names[i]);
	}
}

static bool
row_read(struct source *source, struct record *record, size_t count)
{
	if (!record_read(source, record))
		return false;
	if (record->count != count)
		die(record->path, record->line, "%zu fields instead of %zu", record->count, count);
	return true;
}

/* --- fields -------------------------------------------------------------- */

static const char *
field_text(const struct record *record, size_t index, const char *name, size_t size)
{
	const char *text = record->field[index];

	if (*text == '\0')
		die(record->path, record->line, "%s is empty", name);
	if (strlen(text) >= size)
		die(record->path, record->line, "%s is longer than %zu bytes", name, size - 1);
	return text;
}

static int
field_number(const struct record *record, size_t index, const char *name, int least, int most)
{
	const char *text = record->field[index];
	size_t digits = strspn(text, "0123456789");
	long number = strtol(text, NULL, 10);

	if (digits == 0 || text[digits] != '\0' || digits > 6 || (digits > 1 && text[0] == '0'))
		die(record->path, record->line, "%s is not a whole number: \"%s\"", name, text);
	if (number < least || number > most)
		die(record->path, record->line, "%s is %ld, outside %d to %d", name, number, least, most);
	return (int)number;
}

/* Inches with up to three decimals, as exact thousandths. */
static int
field_thousandths(const struct record *record, size_t index, const char *name, int most)
{
	const char *text = record->field[index];
	const char *at = text;
	int number = 0;
	int decimals = 0;

	for (; *at >= '0' && *at <= '9' && at - text < 3; at++)
		number = number * 10 + (*at - '0');
	if (at == text || (*at != '\0' && *at != '.') || (*at == '.' && at[1] == '\0'))
		die(record->path, record->line, "%s is not a decimal number: \"%s\"", name, text);
	if (*at == '.')
		at++;
	for (; *at >= '0' && *at <= '9' && decimals < 3; at++, decimals++)
		number = number * 10 + (*at - '0');
	if (*at != '\0')
		die(record->path, record->line, "%s is not a decimal number with at most three "
		    "decimals: \"%s\"", name, text);
	for (; decimals < 3; decimals++)
		number *= 10;
	if (number < 1 || number > most)
		die(record->path, record->line, "%s is out of range: \"%s\"", name, text);
	return number;
}

static size_t
field_word(const struct record *record, size_t index, const char *name, const char *const *words,
           size_t count)
{
	for (size_t i = 0; i < count; i++) {
		if (strcmp(record->field[index], words[i]) == 0)
			return i;
	}
	die(record->path, record->line, "unknown %s: \"%s\"", name, record->field[index]);
}

/* Names that a person would take for the same (as text_same_name of the engine). */
static bool
same_name(const char *a, const char *b)
{
	for (;;) {
		a += strspn(a, " -_");
		b += strspn(b, " -_");
		if (*a == '\0' || *b == '\0')
			return *a == *b;
		if ((*a >= 'A' && *a <= 'Z' ? *a - 'A' + 'a' : *a) !=
		    (*b >= 'A' && *b <= 'Z' ? *b - 'A' + 'a' : *b))
			return false;
		a++;
		b++;
	}
}

/* --- printing ------------------------------------------------------------ */

static void
print_top(const char *include)
{
	printf("/* Made by bake from schema/; change the tables there. */\n#include \"%s\"\n\n", include);
}

/* Three octal digits end an escape for certain; ? could begin a trigraph. */
static void
print_byte(char byte, char quote)
{
	if (byte == quote || byte == '\\')
		printf("\\%c", byte);
	else if ((unsigned char)byte < 0x20 || (unsigned char)byte >= 0x7f || byte == '?')
		printf("\\%03o", (unsigned int)(unsigned char)byte);
	else
		putchar(byte);
}

static void
print_string(const char *text)
{
	putchar('"');
	for (; *text != '\0'; text++)
		print_byte(*text, '"');
	putchar('"');
}

/* --- jar sizes ----------------------------------------------------------- */

struct jar {
	const char *name;
	const char *words;
	const char *plural;
	int fluid_ounces;
	const char *source;
	long line;
};

struct jars {
	struct jar *row;
	size_t count;
};

/* No word for one size may mean another, and sizes rise: "the next larger
 * tested size" is read off the order of this table. */
static void
check_jar(const char *path, const struct jars *jars, const struct jar *jar)
{
	for (size_t i = 0; i < jars->count; i++) {
		const struct jar *other = &jars->row[i];

		if (same_name(jar->name, other->name) || same_name(jar->words, other->words) ||
		    same_name(jar->plural, other->plural))
			die(path, jar->line, "the jar size is already on line %ld", other->line);
		if (jar->fluid_ounces <= other->fluid_ounces)
			die(path, jar->line, "jar sizes are listed smallest first");
	}
}

static struct jars
jars_read(const char *path)
{
	static const char *const header[] = { "name", "words", "plural", "fluid_ounces", "source" };
	struct source source = source_read(path);
	struct record record;
	struct jars jars = { 0 };

	header_read(&source, header, 5);
	while (row_read(&source, &record, 5)) {
		struct jar jar = {
			.name = copy_of(field_text(&record, 0, "name", WORD_BYTES)),
			.words = copy_of(field_text(&record, 1, "words", WORD_BYTES)),
			.plural = copy_of(field_text(&record, 2, "plural", WORD_BYTES)),
			.fluid_ounces = field_number(&record, 3, "fluid_ounces", 1, 256),
			.source = copy_of(field_text(&record, 4, "source", SOURCE_BYTES)),
			.line = record.line,
		};

		check_jar(path, &jars, &jar);
		jars.row = room_for(jars.row, jars.count + 1, sizeof(jars.row[0]));
		jars.row[jars.count++] = jar;
	}
	if (jars.count == 0)
		die(path, 2, "no rows");
	free(source.bytes);
	return jars;
}

static void
bake_jar(const char *path)
{
	struct jars jars = jars_read(path);

	print_top("engine/process.h");
	printf("const struct jar_size jar_sizes[] = {\n");
	for (size_t i = 0; i < jars.count; i++) {
		printf("\t{ ");
		print_string(jars.row[i].name);
		printf(", ");
		print_string(jars.row[i].words);
		printf(", ");
		print_string(jars.row[i].plural);
		printf(", %d, ", jars.row[i].fluid_ounces);
		print_string(jars.row[i].source);
		printf(" },\n");
	}
	printf("};\n\n_Static_assert(sizeof(jar_sizes) / sizeof(jar_sizes[0]) <= JAR_SIZES_MAX,\n"
	       "               \"more jar sizes than JAR_SIZES_MAX\");\n"
	       "const size_t jar_size_count = sizeof(jar_sizes) / sizeof(jar_sizes[0]);\n");
}

/* --- process tables ------------------------------------------------------ */

static const char *const packs[] = {
	"hot", "raw", "hot_sterile_jar", "raw_sterile_jar", "hot_unsterile_jar",
};
static const char *const methods[] = { "boiling_water", "dial_gauge", "weighted_gauge" };
static const char *const method_constants[] = {
	"METHOD_BOILING_WATER", "METHOD_DIAL_GAUGE", "METHOD_WEIGHTED_GAUGE",
};
static const char *const acidities[] = { "acid", "acidified", "low_acid" };
static const char *const acidity_constants[] = {
	"ACIDITY_ACID", "ACIDITY_ACIDIFIED", "ACIDITY_LOW_ACID",
};
static const char *const confirmations[] = { "yes", "practice", "disputed", "memory" };
static const char *const confirmation_constants[] = {
	"CONFIRMED_YES", "CONFIRMED_PRACTICE", "CONFIRMED_DISPUTED", "CONFIRMED_MEMORY",
};

#define BOILING_WATER 0 /* in `methods` */
#define LOW_ACID 2      /* in `acidities` */

struct process {
	const char *food;
	size_t pack;
	size_t jar;
	size_t method;
	int headspace_thou;
	int alt_min_ft;
	int alt_max_ft; /* NO_NUMBER: none printed */
	int minutes;
	int pressure_psi; /* NO_NUMBER: none */
	size_t acidity;
	const char *source;
	size_t confirmed;
	const char *path;
	long line;
};

struct processes {
	struct process *row;
	size_t count;
};

static size_t
field_jar(const struct record *record, size_t index, const struct jars *jars)
{
	for (size_t i = 0; i < jars->count; i++) {
		if (strcmp(record->field[index], jars->row[i].name) == 0)
			return i;
	}
	die(record->path, record->line, "unknown jar: \"%s\"", record->field[index]);
}

static struct process
process_from(const struct record *record, const struct jars *jars)
{
	struct process row = {
		.food = copy_of(field_text(record, 0, "food", NAME_BYTES)),
		.pack = field_word(record, 1, "style_of_pack", packs, 5),
		.jar = field_jar(record, 2, jars),
		.method = field_word(record, 3, "method", methods, 3),
		.headspace_thou = field_thousandths(record, 4, "headspace_in", 3000),
		.alt_min_ft = field_number(record, 5, "alt_min_ft", 0, 30000),
		.alt_max_ft = NO_NUMBER,
		.minutes = field_number(record, 7, "minutes", 1, 600),
		.pressure_psi = NO_NUMBER,
		.acidity = field_word(record, 9, "acidity", acidities, 3),
		.source = copy_of(field_text(record, 10, "source", SOURCE_BYTES)),
		.confirmed = field_word(record, 11, "confirmed", confirmations, 4),
		.path = record->path,
		.line = record->line,
	};

	if (record->field[6][0] != '\0')
		row.alt_max_ft = field_number(record, 6, "alt_max_ft", row.alt_min_ft, 30000);
	if (record->field[8][0] != '\0')
		row.pressure_psi = field_number(record, 8, "pressure_psi", 1, 30);
	if (row.method == BOILING_WATER && row.pressure_psi != NO_NUMBER)
		die(row.path, row.line, "a pressure in a boiling-water canner");
	if (row.method != BOILING_WATER && row.pressure_psi == NO_NUMBER)
		die(row.path, row.line, "no pressure in a pressure canner");
	if (row.method == BOILING_WATER && row.acidity == LOW_ACID)
		die(row.path, row.line, "low-acid food in a boiling-water canner");
	return row;
}

static bool
same_cell(const struct process *a, const struct process *b)
{
	return a->pack == b->pack && a->jar == b->jar && a->method == b->method &&
	       strcmp(a->food, b->food) == 0;
}

static bool
same_band(const struct process *a, const struct process *b)
{
	return a->alt_min_ft == b->alt_min_ft && a->alt_max_ft == b->alt_max_ft;
}

static bool
bands_overlap(const struct process *a, const struct process *b)
{
	return (a->alt_max_ft == NO_NUMBER || b->alt_min_ft <= a->alt_max_ft) &&
	       (b->alt_max_ft == NO_NUMBER || a->alt_min_ft <= b->alt_max_ft);
}

static void
check_pair(const struct process *row, const struct process *other)
{
	if (strcmp(row->food, other->food) != 0) {
		if (same_name(row->food, other->food))
			die(row->path, row->line, "the food \"%s\" is spelt \"%s\" in %s:%ld", row->food,
			    other->food, other->path, other->line);
		return;
	}
	if (row->acidity != other->acidity)
		die(row->path, row->line, "the food has another acidity in %s:%ld", other->path,
		    other->line);
	if (!same_cell(row, other))
		return;
	if (same_band(row, other) && row->pressure_psi == other->pressure_psi)
		die(row->path, row->line, "the same cell is already in %s:%ld", other->path, other->line);
	if (!same_band(row, other) && bands_overlap(row, other))
		die(row->path, row->line, "the band overlaps that of %s:%ld", other->path, other->line);
}

/* The bands of a table lie end to end from 0 ft; a hole would be a kitchen
 * that gets no answer, or a typing error in an edge. */
static void
check_row(const struct processes *table, size_t index)
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
		joined = joined || other->alt_max_ft == row->alt_min_ft - 1;
		in_band += same_band(row, other) ? 1 : 0;
	}
	if (!joined)
		die(row->path, row->line, "no band of the same table ends at %d ft", row->alt_min_ft - 1);
	if (in_band > ROWS_IN_BAND_MAX)
		die(row->path, row->line, "more than %d options in one band", ROWS_IN_BAND_MAX);
}

static void
processes_add(struct processes *table, const char *path, const struct jars *jars)
{
	static const char *const header[] = {
		"food", "style_of_pack", "jar", "method", "headspace_in", "alt_min_ft", "alt_max_ft",
		"minutes", "pressure_psi", "acidity", "source", "confirmed",
	};
	struct source source = source_read(path);
	struct record record;
	size_t before = table->count;

	header_read(&source, header, 12);
	while (row_read(&source, &record, 12)) {
		table->row = room_for(table->row, table->count + 1, sizeof(table->row[0]));
		table->row[table->count++] = process_from(&record, jars);
	}
	if (table->count == before)
		die(path, 2, "no rows");
	free(source.bytes);
}

static void
print_process(const struct process *row)
{
	printf("\t{ ");
	print_string(row->food);
	printf(", \"%s\", %zu, %s, %d, %d, ", packs[row->pack], row->jar,
	       method_constants[row->method], row->headspace_thou, row->alt_min_ft);
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

static void
bake_process(const char *jar_path, char *const *paths, int count)
{
	struct jars jars = jars_read(jar_path);
	struct processes table = { 0 };

	for (int i = 0; i < count; i++)
		processes_add(&table, paths[i], &jars);
	for (size_t i = 0; i < table.count; i++)
		check_row(&table, i);
	print_top("engine/process.h");
	printf("const struct process_row process_rows[] = {\n");
	for (size_t i = 0; i < table.count; i++)
		print_process(&table.row[i]);
	printf("};\n\nconst size_t process_row_count = sizeof(process_rows) / sizeof(process_rows[0]);\n");
}

/* --- products ------------------------------------------------------------ */

/* The row's caution may be empty; the rest may not. */
static void
print_product(const struct record *record)
{
	static const char *const names[] = { "name", "food", "usual_jar", "caution", "source" };
	static const size_t sizes[] = { NAME_BYTES, NAME_BYTES, WORD_BYTES, SOURCE_BYTES, SOURCE_BYTES };

	printf("\t{ ");
	for (size_t i = 0; i < 5; i++) {
		if (i != 3 || record->field[i][0] != '\0')
			field_text(record, i, names[i], sizes[i]);
		print_string(record->field[i]);
		printf(i < 4 ? ", " : " },\n");
	}
}

static void
bake_product(const char *path)
{
	static const char *const header[] = { "name", "food", "usual_jar", "caution", "source" };
	struct source source = source_read(path);
	struct record record;
	char **seen = NULL;
	size_t count = 0;

	header_read(&source, header, 5);
	print_top("engine/product.h");
	printf("const struct product products[] = {\n");
	while (row_read(&source, &record, 5)) {
		for (size_t i = 0; i < count; i++) {
			if (same_name(seen[i], record.field[0]))
				die(path, record.line, "the product \"%s\" is there already", record.field[0]);
		}
		seen = room_for(seen, count + 1, sizeof(seen[0]));
		seen[count++] = copy_of(record.field[0]);
		print_product(&record);
	}
	if (count == 0)
		die(path, 2, "no rows");
	printf("};\n\nconst size_t product_count = sizeof(products) / sizeof(products[0]);\n");
	free(source.bytes);
}

/* --- migrations ---------------------------------------------------------- */

/* NNNN_name.sql with NNNN = number: a hole or a double would leave logs behind. */
static void
check_migration_name(const char *path, int number)
{
	const char *slash = strrchr(path, '/');
	const char *name = slash == NULL ? path : slash + 1;
	size_t length = strlen(name);

	if (length < 10 || strspn(name, "0123456789") != 4 || name[4] != '_' ||
	    strcmp(name + length - 4, ".sql") != 0)
		die(path, 1, "a migration is named NNNN_name.sql");
	if (strtol(name, NULL, 10) != number)
		die(path, 1, "migration %04d is expected here", number);
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

static void
bake_migration(char *const *paths, int count)
{
	print_top("log/migrations.h");
	for (int i = 0; i < count; i++) {
		struct source source;

		check_migration_name(paths[i], i + 1);
		source = source_read(paths[i]);
		print_migration(&source, i + 1);
		free(source.bytes);
	}
	printf("const char *const log_migrations[] = {\n");
	for (int i = 0; i < count; i++)
		printf("\tmigration_%04d,\n", i + 1);
	printf("};\n\nconst size_t log_migration_count = sizeof(log_migrations) / "
	       "sizeof(log_migrations[0]);\n");
}

int
main(int argc, char **argv)
{
	if (argc >= 4 && strcmp(argv[1], "process") == 0) {
		bake_process(argv[2], argv + 3, argc - 3);
	} else if (argc == 3 && strcmp(argv[1], "jar") == 0) {
		bake_jar(argv[2]);
	} else if (argc == 3 && strcmp(argv[1], "product") == 0) {
		bake_product(argv[2]);
	} else if (argc >= 3 && strcmp(argv[1], "migration") == 0) {
		bake_migration(argv + 2, argc - 2);
	} else {
		fprintf(stderr, "usage: bake process JAR.csv PROCESS.csv... | jar JAR.csv | "
		                "product PRODUCT.csv | migration NNNN_name.sql...\n");
		return 2;
	}
	if (fflush(stdout) != 0 || ferror(stdout))
		die("standard output", 0, "cannot be written: %s", strerror(errno));
	return 0;
}
