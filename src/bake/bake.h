/*
 * bake.h - what the files of the baking programs share.
 *
 * Rows are held in the structs of the engine and read by its own readers of CSV,
 * words and amounts.  A rule of the tables that the program knows too is written once, in
 * the engine; bake_recipes asks recipe_check_printed of each recipe.  Every failure ends the program with one line, FILE:LINE: what
 * (bake_die); no function here returns an error.  Texts point into the files, which
 * stay in memory until the end.  Numbers are exact integers in the units their names
 * give.
 */
#ifndef STILLROOM_BAKE_BAKE_H
#define STILLROOM_BAKE_BAKE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "base/csv.h"
#include "engine/food/food.h"
#include "engine/process/pack.h"
#include "engine/process/process.h"
#include "engine/recipe/recipe.h"

#define FIELDS_MAX 20

/* Limits of the log that keeps copies of these texts (src/log/rows). */
#define NAME_BYTES 96
#define WORD_BYTES 24
#define SOURCE_BYTES 256

/* --- files and CSV (file.c) ------------------------------------------------ */

/* line 0: the whole file. */
void bake_die(const char *path, long line, const char *format, ...) __attribute__((noreturn, format(printf, 3, 4)));

/* A whole file in memory, and how far its records have been read. */
struct source {
	const char *path;
	const char *text;
	size_t size;
	struct csv_reader reader;
};

struct record {
	const char *path;
	long line; /* it began on */
	size_t count;
	const char *field[FIELDS_MAX];
};

struct source source_read(const char *path);
const char *kept_text(const char *text); /* a copy that stays as the files do */
void header_read(struct source *source, const char *const *names, size_t count);
/* The first `least` names, or all of the `most`; which of the two it was. */
size_t header_read_either(struct source *source, const char *const *names, size_t least, size_t most);
bool row_read(struct source *source, struct record *record, size_t count); /* false: at the end */
/* The place of one row more in a table of `most`. */
size_t next_row(const struct record *record, size_t *count, size_t most);

/* --- fields (fields.c) ---------------------------------------------------- */

const char *field_text(const struct record *record, size_t index, const char *name, size_t size);
const char *field_maybe(const struct record *record, size_t index, const char *name, size_t size); /* may be empty */
int field_number(const struct record *record, size_t index, const char *name, int least, int most);
int field_number_maybe(const struct record *record, size_t index, const char *name, int most); /* from 1; empty: 0 */
/* Inches with up to three decimals, as exact thousandths. */
int field_thousandths(const struct record *record, size_t index, const char *name, int most);
/* A decimal of at most three places, a blank, a unit, by the engine's reader: in the
 * measure of the supply's ledger; other: in that of the unit. */
int64_t field_amount(const struct record *record, size_t index, const char *name, enum supply_kind supply,
                     enum measure *measure);
int64_t field_volume(const struct record *record, size_t index, const char *name); /* uL; empty: 0 */
/* The index of the field among `words`. */
size_t field_word(const struct record *record, size_t index, const char *name, const char *const *words, size_t count);
bool field_answer(const struct record *record, size_t index, const char *name); /* "yes" or "no" */
/* The next of a list whose parts are set apart by `gap`; false at the end. */
bool next_part(const char **list, const char *gap, char *part, size_t size);

/* --- enums of the engine: their words read, their names in C printed (enums.c) ----- */

enum acid field_acid(const struct record *record, size_t index, const char *name);
enum acidity field_acidity(const struct record *record, size_t index, const char *name);
enum adding field_adding(const struct record *record, size_t index, const char *name);
enum confirmed field_confirmed(const struct record *record, size_t index, const char *name);
enum jars_ready field_jars_ready(const struct record *record, size_t index, const char *name);
enum method field_method(const struct record *record, size_t index, const char *name);
enum packed field_packed(const struct record *record, size_t index, const char *name);
enum pectin field_pectin(const struct record *record, size_t index, const char *name);
enum supply_kind field_supply(const struct record *record, size_t index, const char *name);

extern const char *const acid_constants[ACID_COUNT];
extern const char *const acidity_constants[ACIDITY_COUNT];
extern const char *const adding_constants[ADDING_COUNT];
extern const char *const confirmed_constants[CONFIRMED_COUNT];
extern const char *const jars_ready_constants[JARS_READY_COUNT];
extern const char *const measure_constants[MEASURE_COUNT];
extern const char *const method_constants[METHOD_COUNT];
extern const char *const packed_constants[PACKED_COUNT];
extern const char *const pectin_constants[PECTIN_COUNT];
extern const char *const supply_constants[SUPPLY_KIND_COUNT];

/* --- printing C (print.c) ------------------------------------------------- */

void print_top(const char *include);
void print_byte(char byte, char quote);
void print_string(const char *text);
void print_field(const char *indent, const char *name, const char *text); /* .name = "text", */
/* The end of an array and the count of its rows. */
void print_count(const char *count, const char *array);
int bake_end(void); /* the exit status */

/* --- tables ------------------------------------------------------------------ */

struct jars {
	struct jar_size row[JAR_SIZES_MAX];
	long line[JAR_SIZES_MAX];
	size_t count;
};

struct jars jars_read(const char *path);
void bake_jar(const char *path);

struct pack_lines {
	struct pack row[PACKS_MAX];
	long line[PACKS_MAX];
	size_t count;
};

struct pack_lines packs_read(const char *path);
void bake_pack(const char *path);

/* What the lines of the process tables refer to. */
struct referred {
	struct jars jars;
	struct pack_lines packs;
};

#define PROCESS_ROWS_MAX 4096
struct process_line {
	struct process_row row; /* .jar: of the jars */
	const char *path;
	long line;
};

struct processes {
	struct process_line row[PROCESS_ROWS_MAX];
	size_t count;
};

/* `tables`: the files of jars, packs, then processes. */
void processes_read(struct processes *table, char *const *tables, int count);
void bake_process(char *const *tables, int count);

/* food_paths: the files of bake/food.h in their order. */
void bake_food(char *const *food_paths, char *const *tables, int count);
void bake_product(const char *path);
void bake_yield(const char *path);
void bake_drying(const char *path, const char *keep_path);
void bake_layout(const char *schema_path, char *const *paths, int count);

/* --- recipes, by the program that is linked with the tables above ---------------- */

/* `books`: recipes and their ingredients, file by file in turn. */
void bake_recipe(char *const *books, int count);
void bake_step(const char *path, char *const *recipe_paths, int count);

#endif
