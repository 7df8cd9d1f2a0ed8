/*
 * process.h - the published process for a food, pack, jar, method and elevation.
 *
 * Looked up in the reference tables (schema/process_*.csv, baked in at build),
 * never interpolated, never shortened.  Where the table has no row there is no
 * process: the answer is a refusal that says what is missing and whom to ask.
 *
 * Units: hold in whole minutes; gauge pressure in whole psi above local air;
 * headspace in thousandths of an inch; band edges in feet, both included.
 * Sources: each row carries its own.
 */
#ifndef STILLROOM_ENGINE_PROCESS_PROCESS_H
#define STILLROOM_ENGINE_PROCESS_PROCESS_H

#include <stdbool.h>
#include <stddef.h>

#include "base/fault.h"
#include "engine/physics/elevation.h"

enum method {
	METHOD_BOILING_WATER,
	METHOD_STEAM, /* atmospheric steam canner: uses boiling-water rows */
	METHOD_DIAL_GAUGE,
	METHOD_WEIGHTED_GAUGE,
	METHOD_COUNT
};

enum acidity { ACIDITY_ACID, ACIDITY_ACIDIFIED, ACIDITY_LOW_ACID, ACIDITY_COUNT };

/* How well a row is known (reference notes in docs/reference.md). Only YES and
 * PRACTICE rows are ever offered. */
enum confirmed { CONFIRMED_YES, CONFIRMED_PRACTICE, CONFIRMED_DISPUTED, CONFIRMED_MEMORY, CONFIRMED_COUNT };

#define NO_PRESSURE (-1)
#define NO_TOP_FT 1000000         /* "no upper limit printed": served to NO_PROCESS_ABOVE_FT */
#define STEAM_HOLD_MAX_MINUTES 45 /* NCHFP newsflash on steam canners; MU: the pan holds no more water */

/* A state extension timetable (schema/process_above_8000ft.csv) goes on where the
 * guide's top band of boiling water is open, from 8,001 to 10,000 ft, with longer
 * times.  Where both have a row the longer one governs. */
#define SECOND_TABLE_ABOVE_FT 8000
/* Where that table ends, nothing is given any more.  In a weighted-gauge canner for
 * another reason: 15 psi above the local air makes 240 F up to 10,311 ft only,
 * computed with engine/physics/boiling.h (tests/engine/physics/test_boiling.c). */
#define NO_PROCESS_ABOVE_FT 10000
#define PROCESS_OPTIONS_MAX 6

/* A jar size, by the name the trade gives its volume. schema/jar.csv, smallest
 * first; sizes between the tested ones exist (12 oz) and use the next larger. */
struct jar_size {
	const char *name;   /* "half_pint" */
	const char *words;  /* "half-pint" */
	const char *plural; /* "half-pints" */
	int fluid_ounces;
	const char *source;
};

extern const struct jar_size jar_sizes[];
extern const size_t jar_size_count;
#define JAR_SIZES_MAX 12 /* static_assert'ed against jar_size_count where it is baked */

struct process_row {
	const char *food;
	const char *pack;
	int jar; /* index into jar_sizes */
	enum method method;
	int headspace_thou;
	int alt_min_ft;
	int alt_max_ft; /* NO_TOP_FT = none printed */
	int minutes;
	int pressure_psi; /* NO_PRESSURE in boiling water */
	enum acidity acidity;
	const char *source;
	enum confirmed confirmed;
};

extern const struct process_row process_rows[];
extern const size_t process_row_count;

struct process_query {
	const char *food;
	const char *pack;
	const char *jar;
	enum method method;
	struct elevation elevation;
	int pressure_psi;  /* NO_PRESSURE: none chosen */
	int sheet_minutes; /* of the sheet of a pectin: the longer of these and the table's; 0: none */
};

struct process_option {
	int minutes;
	int pressure_psi;
};

struct process {
	const struct process_row *row;
	const struct jar_size *jar;          /* asked for */
	const struct jar_size *jar_in_table; /* whose row was used: same or larger */
	enum method method;
	int minutes;
	int pressure_psi;
	struct process_option options[PROCESS_OPTIONS_MAX]; /* the other pairs */
	size_t option_count;
	bool jar_sized_up; /* jar smaller than tested */
	bool band_raised;  /* the elevation's slack touched a higher band */
	bool above_tables; /* above 8,000 ft, and only the guide's open band: warn */
	bool jars_sterile; /* the row supposes jars boiled before filling */
};

/* Find the process.  True and *out filled, or false with FAULT_REFUSED and a
 * sentence: elevation unknown, food / pack / jar not in the table, jar larger
 * than tested, row not confirmed, no row for this band, above 10,000 ft, pressure
 * not offered here, steam over 45 min, low-acid outside a pressure canner.  FAULT_MISUSE:
 * a pressure given for a method without one. */
bool process_find(const struct process_query *query, struct process *out, struct fault *fault);

/* Has the food, by its name in the tables, an offered row in any canner? */
bool process_is_offered(const char *food);

/* Has the food, by its name in the tables, a row that the method can carry out? */
bool process_has_food(enum method method, const char *food);

/* Walk the tables by name, for pickers: foods that have at least one offered
 * row for the method, then packs of a food.  Give NULL to start; NULL at end. */
const char *process_next_food(enum method method, const char *after);
const char *process_next_pack(const char *food, enum method method, const char *after);
/* Jar sizes tested for a pack, smallest first, among offered rows. */
const struct jar_size *process_next_jar(const char *food, enum method method, const char *pack,
                                        const struct jar_size *after);

/* The acidity the tables give a food (any row). False: no such food. */
bool process_acidity(const char *food, enum acidity *out);

/* Names as in the tables: "boiling_water", "low_acid", "yes". Words for people:
 * "boiling-water canner", "low-acid". Out-of-range values give "?". */
const char *method_name(enum method method);
const char *method_words(enum method method);
const char *method_with_article(enum method method); /* "an atmospheric steam canner" */
bool method_from_name(const char *name, enum method *out);
bool method_has_pressure(enum method method);
const char *acidity_name(enum acidity acidity);
const char *acidity_words(enum acidity acidity);
const char *confirmed_name(enum confirmed confirmed);

/* A jar size by name or words; NULL when there is none. */
const struct jar_size *jar_size_named(const char *name);
#define SIZE_PACKAGE "package" /* stands for a size: dried food is packed in anything dry and tight */
/* What is kept and counted: "jars", "packages" of dried food, "jars and packages" where it is both. */
const char *kept_noun(int64_t count, bool jars, bool packages);
const char *jar_size_words(const char *name, int64_t jars); /* "pint", "pints"; no such size: "jar", "jars" */
int jar_size_index(const struct jar_size *size);

/* Would the minutes of a pack, for any jar here, be common practice and of no published
 * table (CONFIRMED_PRACTICE)?  Then it is said where the pack is chosen. */
bool process_pack_is_practice(const char *food, const char *pack, enum method method,
                              const struct elevation *elevation);
#define PACK_IS_PRACTICE \
	"No published table has minutes for this pack at this elevation. These are longer than for jars boiled " \
	"first."

/* Minutes to boil empty jars so that they are sterile: 10 at or below 1,000 ft
 * and 1 more for each further 1,000 ft begun (A539, MSU-323). 0 if unknown. */
#define JAR_STERILISING_SOURCE "A539, MSU-323"
int jar_sterilising_minutes(const struct elevation *elevation);
/* "For jars boiled 13 min before filling, and only for those.": whom minutes are for whose pack supposes it. */
#define JARS_BOILED_BYTES 80
void jars_boiled_words(const struct elevation *elevation, char *buffer, size_t size);

/* The reference rules written out: headspace "1/4 in", pressure "15 psi". */
void headspace_words(int headspace_thou, char *buffer, size_t size);

#endif
