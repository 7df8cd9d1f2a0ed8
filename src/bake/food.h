/*
 * food.h - what each food needs, as bake holds it between reading and printing: the
 * structs of the engine, which point to each other here as they will there.
 */
#ifndef STILLROOM_BAKE_FOOD_H
#define STILLROOM_BAKE_FOOD_H

#include "bake/bake.h"

#define ID_BYTES 64
#define TEXT_BYTES 512
#define NOTE_TEXT_BYTES 1024

#define RULES_MAX 64
#define CLASSES_MAX 64 /* one bit each */
#define KNOWN_MAX 1024
#define FOODS_MAX 512
#define OWN_MAX 1024
#define STEPS_MAX 64
#define MADE_OF_MAX 40

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

/* Beside each row the line it stands on. */
struct larder {
	struct food_files files;
	struct acid_rule rules[RULES_MAX];
	long rule_lines[RULES_MAX];
	size_t rule_count;
	struct ingredient_class classes[CLASSES_MAX];
	long class_lines[CLASSES_MAX];
	size_t class_count;
	struct known_ingredient known[KNOWN_MAX];
	size_t known_count;
	struct food foods[FOODS_MAX];
	long food_lines[FOODS_MAX];
	const struct known_ingredient *made_of[FOODS_MAX][MADE_OF_MAX];
	size_t food_count;
	struct own_fruit fruits[OWN_MAX];
	long fruit_lines[OWN_MAX];
	size_t fruit_count;
	struct own_condition conditions[OWN_MAX];
	long condition_lines[OWN_MAX];
	size_t condition_count;
	struct suspect_step steps[STEPS_MAX];
	size_t step_count;
};

const struct food *larder_food(const struct larder *larder, const char *name);              /* NULL: none */
const struct known_ingredient *larder_known(const struct larder *larder, const char *name); /* NULL: none */

extern const char *const group_names[SUSPECT_GROUP_COUNT];

/* food_own.c */
void owns_read(struct larder *larder);
void steps_read(struct larder *larder);
#define EVERY_JAR "any" /* when a step is done whatever the jar looks like */

void larder_print(const struct larder *larder);

#endif
