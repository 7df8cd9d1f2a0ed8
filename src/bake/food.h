/*
 * food.h - what each food needs, as bake holds it between reading and printing.
 *
 * Six files refer to each other by name; indices stand for those references here.
 */
#ifndef STILLROOM_BAKE_FOOD_H
#define STILLROOM_BAKE_FOOD_H

#include "bake/bake.h"

#define ID_BYTES 64
#define TEXT_BYTES 512
#define NOTE_TEXT_BYTES 1024
#define DOSES_MAX 3    /* src/engine/food/food.h: ACID_DOSES_MAX */
#define CLASSES_MAX 64 /* one bit each */
#define MADE_OF_MAX 40
#define NONE ((size_t)-1)

/* In the order of the engine's enums. */
#define ACIDS 7
#define ACID_LEMON 3
#define ACID_CITRIC 4
#define ACID_VINEGAR 5
#define PER_JAR 0
#define OWN_NONE 0
#define OWN_KINDS 5
#define IS_FRUIT 0
#define IS_ACID 2
#define IS_HARMLESS 3
#define FRUIT_CONDITION 4 /* a line that is no fruit's: of the whole class */
#define LEMON_SUPPLY 4    /* bake/recipe.h */

extern const char *const acid_names[ACIDS];

struct dose {
	size_t acid;
	int64_t pint_ul; /* 0: not printed */
	int64_t quart_ul;
	const char *words_pint;
	const char *words_quart;
	const char *source;
};

struct rule {
	const char *id;
	size_t kind;
	size_t dose_count;
	struct dose doses[DOSES_MAX];
	const char *condition;
	const char *reason;
	const char *source;
	long line;
};

struct class
{
	const char *id;
	const char *words;
	const char *covers;
	const char *reason;
	const char *instead;
	const char *source;
	long line;
};

struct known {
	const char *name;
	const char *also; /* "; " between them */
	size_t is;
	uint64_t classes;
	size_t acid; /* NONE */
	size_t supply;
	unsigned int harmless_in;
	int64_t jam_most_ul;
	const char *source;
	long line;
};

struct food {
	const char *name;
	size_t acidity;
	size_t rule; /* NONE */
	uint64_t must_not;
	uint64_t exception;
	size_t own;
	size_t made_of[MADE_OF_MAX];
	size_t made_count;
	const char *thickener;
	int vent;
	int heat;
	int64_t water_ul;
	int canner_low_qt;
	int canner_high_qt;
	size_t suspect;
	size_t reprocess;
	const char *why;
	const char *caution;
	const char *source;
	const char *note;
	long line;
};

/* A line of own_recipe.csv: a fruit, or a condition of all of them. */
struct own {
	size_t food;
	const char *fruit;
	size_t status;
	size_t pectin;
	int multiple; /* 0: the recipe's own */
	const char *words;
	const char *words_of_juice;
	int sugar_permille;
	int64_t acid_ul;
	int64_t acid_for_ul;
	int64_t juice_ul;
	int64_t butter_ul;
	const char *condition;
	const char *reason;
	const char *source;
	long line;
};

struct step {
	size_t group;
	int number;
	bool always; /* whatever the jar looks like: when is "any" */
	const char *when;
	const char *act;
	const char *source;
	long line;
};

/* The six files, in the order in which bake is given them. */
struct food_files {
	const char *food;
	const char *rule;
	const char *class;
	const char *own;
	const char *known;
	const char *step;
};
#define FOOD_FILES 6

struct larder {
	struct food_files files;
	struct rule *rules;
	size_t rule_count;
	struct class *classes;
	size_t class_count;
	struct known *known;
	size_t known_count;
	struct food *foods;
	size_t food_count;
	struct own *owns;
	size_t own_count;
	struct step *steps;
	size_t step_count;
};

/* Read all six and check every reference from one to another. */
struct larder larder_read(char *const *paths);
const struct food *larder_food(const struct larder *larder, const char *name); /* NULL: none */
/* Every food of the process tables has a line, of the same acidity. */
void larder_check_tables(const struct larder *larder, const struct processes *processes);

/* food_own.c */
void owns_read(struct larder *larder);
void steps_read(struct larder *larder);

/* food_fields.c */
const char *field_maybe(const struct record *record, size_t index, const char *name, size_t size);
int64_t field_volume(const struct record *record, size_t index, const char *name); /* 0: empty */
int field_whole_maybe(const struct record *record, size_t index, const char *name, int most);
/* The next of a list whose parts are set apart by `gap`; false at the end. */
bool next_part(const char **list, const char *gap, char *part, size_t size);
size_t class_index(const struct larder *larder, const struct record *record, const char *id);
uint64_t field_classes(const struct larder *larder, const struct record *record, size_t index);
size_t known_index(const struct larder *larder, const char *name); /* NONE: there is none */

void larder_print(const struct larder *larder);

#endif
