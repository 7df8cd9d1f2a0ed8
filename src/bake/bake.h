/*
 * bake.h - what the files of the baking program share.
 *
 * Every failure ends the program with one line, FILE:LINE: what (bake_die); no
 * function here returns an error.  Memory of bake_room and bake_copy belongs to
 * one list that bake_release frees at the end; nobody else frees it.  Numbers
 * are exact integers in the units their names give.
 */
#ifndef STILLROOM_BAKE_BAKE_H
#define STILLROOM_BAKE_BAKE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define FIELDS_MAX 20
#define RECORD_BYTES 4096
#define NO_NUMBER (-1)

/* Limits of the log that keeps copies of these texts (src/log/log.h). */
#define NAME_BYTES 96
#define WORD_BYTES 24
#define SOURCE_BYTES 256

/* --- memory and failure (memory.c) --------------------------------------- */

/* line 0: the whole file. */
void bake_die(const char *path, long line, const char *format, ...) __attribute__((noreturn, format(printf, 3, 4)));
void *bake_room(void *old, size_t count, size_t size); /* never NULL; as realloc */
char *bake_copy(const char *text);
void bake_release(void); /* everything handed out so far becomes invalid */

/* --- files and CSV (csv.c) ------------------------------------------------ */

/* A whole file in memory, and how far it has been read. */
struct source {
	const char *path;
	char *bytes;
	size_t size;
	size_t at;
	long line; /* of the byte at `at` */
};

/* The fields point into `bytes` and end with the next read. */
struct record {
	const char *path;
	long line; /* it began on */
	size_t count;
	const char *field[FIELDS_MAX];
	char bytes[RECORD_BYTES];
};

struct source source_read(const char *path);
void header_read(struct source *source, const char *const *names, size_t count);
/* The first `least` names, or all of the `most`; which of the two it was. */
size_t header_read_either(struct source *source, const char *const *names, size_t least, size_t most);
bool row_read(struct source *source, struct record *record, size_t count); /* false: at the end */

/* --- fields (fields.c) ---------------------------------------------------- */

const char *field_text(const struct record *record, size_t index, const char *name, size_t size);
int field_number(const struct record *record, size_t index, const char *name, int least, int most);
/* Inches with up to three decimals, as exact thousandths. */
int field_thousandths(const struct record *record, size_t index, const char *name, int most);
/* The index of the field among `words`. */
size_t field_word(const struct record *record, size_t index, const char *name, const char *const *words, size_t count);
/* Are these names that a person would take for the same? (text_same_name of the engine) */
bool same_name(const char *a, const char *b);

/* --- printing C (print.c) ------------------------------------------------- */

void print_top(const char *include);
void print_byte(char byte, char quote);
void print_string(const char *text);

/* --- jar sizes (jar.c) ---------------------------------------------------- */

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

struct jars jars_read(const char *path);
void bake_jar(const char *path);

/* --- process tables (process.c) ------------------------------------------- */

#define PACK_COUNT 5
#define ACIDITY_COUNT 3
#define LOW_ACID 2 /* of acidity_names */
extern const char *const pack_names[PACK_COUNT];
extern const char *const acidity_names[ACIDITY_COUNT];
extern const char *const acidity_constants[ACIDITY_COUNT];

struct process {
	const char *food;
	size_t pack; /* of pack_names */
	size_t jar;  /* of the jars */
	size_t method;
	int headspace_thou;
	int alt_min_ft;
	int alt_max_ft; /* NO_NUMBER: none printed */
	int minutes;
	int pressure_psi; /* NO_NUMBER: none */
	size_t acidity;   /* of acidity_names */
	const char *source;
	size_t confirmed;
	const char *path;
	long line;
};

struct processes {
	struct process *row;
	size_t count;
};

void processes_add(struct processes *table, const char *path, const struct jars *jars);
bool process_offered(const struct process *row); /* confirmed well enough to be used */
void bake_process(const char *jar_path, char *const *paths, int count);

/* --- recipes (recipe.c, recipe_amount.c) ----------------------------------- */

struct amount {
	size_t measure; /* of measure_constants: volume, mass, each */
	int64_t amount; /* uL, mg or pieces; rounded once, half up */
};

#define MEASURE_VOLUME 0
#define MEASURE_MASS 1
#define MEASURE_EACH 2

/* "4 cup", "1.5 tsp", "500 g", "24.5 lb", "3 each": a decimal of at most three
 * places, a blank, a unit.  mg_a_cup > 0: spoons and cups of something that is
 * kept by weight come out as a mass. */
struct amount field_amount(const struct record *record, size_t index, const char *name, int64_t mg_a_cup);

/* `books`: recipes and their ingredients, file by file in turn.  jar_path NULL: without
 * the other tables, so foods, packs and jars are not looked up.  food_paths: the files
 * of bake/food.h in their order. */
void bake_recipe(char *const *books, int book_count, const char *jar_path, char *const *food_paths,
                 char *const *process_paths, int count);
void bake_step(const char *path, char *const *recipe_paths, int count);

/* --- what each food needs (food.c) ----------------------------------------- */

void bake_food(char *const *food_paths, const char *jar_path, char *const *process_paths, int count);

/* --- the rest --------------------------------------------------------------- */

void bake_product(const char *path);
void bake_yield(const char *path);
void bake_layout(const char *schema_path, char *const *paths, int count);

#endif
