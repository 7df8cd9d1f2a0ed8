/*
 * food_own.c - which own recipes may use a food's rows, and what is done with a
 * jar that is suspect.
 */
#include "bake/food.h"

#include <string.h>

#include "base/text.h"

/* Behind the words of the engine's enum that of a line of another kind: what all own
 * recipes of the food keep. */
static const char *const statuses[] = {
	[FRUIT_ALLOWED] = "allowed",
	[FRUIT_ALLOWED_WITH_ACID] = "allowed_with_acid",
	[FRUIT_TESTED_RECIPE_ONLY] = "tested_recipe_only",
	[FRUIT_EXCLUDED] = "excluded",
	[FRUIT_STATUS_COUNT] = "condition",
};
/* A reading from memory, or one that copies dispute, may refuse and never allow. */
static const char *const confirmations[] = { "yes", "single", "disputed", "memory" };
#define CONFIRMED_TO_ALLOW 1

static const struct food *field_food(const struct larder *larder, const struct record *record)
{
	const struct food *food = larder_food(larder, record->field[0]);

	if (food == NULL)
		bake_die(record->path, record->line, "unknown food: \"%s\"", record->field[0]);
	if (food->own_recipe == OWN_NONE)
		bake_die(record->path, record->line, "no own recipe may use \"%s\"", food->name);
	return food;
}

/* "0.75": cups of sugar a cup of fruit, in thousandths; 0: no figure. */
static int field_sugar(const struct record *record, size_t index)
{
	return record->field[index][0] == '\0' ? 0 : field_thousandths(record, index, "sugar_least", 9999);
}

static int field_multiple(const struct record *record, size_t index)
{
	return strcmp(record->field[index], "own") == 0 ? 0 : field_number(record, index, "multiple", 1, 16);
}

static void add_condition(struct larder *larder, const struct record *record)
{
	struct own_condition row = {
		.food = field_food(larder, record)->name,
		.pectin = field_pectin(record, 3, "pectin"),
		.words = field_text(record, 5, "words", NAME_BYTES),
		.words_of_juice = field_text(record, 6, "words_of_juice", NAME_BYTES),
		.multiple_max = field_multiple(record, 4),
		.juice_most_ul = field_volume(record, 10, "juice_most"),
		.butter_most_ul = field_volume(record, 11, "butter_most"),
		.condition = field_maybe(record, 12, "condition", TEXT_BYTES),
		.source = field_text(record, 14, "source", TEXT_BYTES),
	};
	size_t at;

	if (strcmp(record->field[1], "*") != 0)
		bake_die(record->path, record->line, "a condition is a line of the fruit *");
	for (size_t i = 0; i < larder->condition_count; i++) {
		const struct own_condition *other = &larder->conditions[i];

		if (other->food == row.food && other->pectin == row.pectin)
			bake_die(record->path, record->line, "the same line is already on line %ld",
			         larder->condition_lines[i]);
	}
	at = next_row(record, &larder->condition_count, OWN_MAX);
	larder->conditions[at] = row;
	larder->condition_lines[at] = record->line;
}

static bool is_everything_else(const char *fruit)
{
	return strcmp(fruit, OWN_ANY_OTHER) == 0 || strcmp(fruit, OWN_ANY_VEGETABLE) == 0;
}

static void add_fruit(struct larder *larder, const struct record *record, enum fruit_status status)
{
	struct own_fruit row = {
		.food = field_food(larder, record)->name,
		.fruit = field_text(record, 1, "fruit", NAME_BYTES),
		.status = status,
		.sugar_least_permille = field_sugar(record, 7),
		.acid_least_ul = field_volume(record, 8, "acid_least"),
		.acid_for_ul = field_volume(record, 9, "acid_for"),
		.condition = field_maybe(record, 12, "condition", TEXT_BYTES),
		.reason = field_text(record, 13, "reason", SOURCE_BYTES),
		.source = field_text(record, 14, "source", TEXT_BYTES),
	};
	size_t at;

	if (record->field[5][0] != '\0' || record->field[6][0] != '\0')
		bake_die(record->path, record->line, "words are a condition's");
	if (!is_everything_else(row.fruit) && larder_known(larder, row.fruit) == NULL)
		bake_die(record->path, record->line, "unknown ingredient: \"%s\"", row.fruit);
	if ((row.acid_least_ul == 0) != (row.acid_for_ul == 0) ||
	    (status == FRUIT_ALLOWED_WITH_ACID) != (row.acid_least_ul != 0))
		bake_die(record->path, record->line,
		         "allowed_with_acid says how much acid for how much fruit, and only it");
	for (size_t i = 0; i < larder->fruit_count; i++) {
		if (larder->fruits[i].food == row.food && text_same_name(larder->fruits[i].fruit, row.fruit))
			bake_die(record->path, record->line, "the same line is already on line %ld",
			         larder->fruit_lines[i]);
	}
	at = next_row(record, &larder->fruit_count, OWN_MAX);
	larder->fruits[at] = row;
	larder->fruit_lines[at] = record->line;
}

/* Every class that may be used has a condition and says what becomes of other fruit. */
static void check_complete(const struct larder *larder, size_t index)
{
	const struct food *food = &larder->foods[index];
	bool condition = false;
	bool others = false;

	for (size_t i = 0; i < larder->condition_count; i++)
		condition = condition || larder->conditions[i].food == food->name;
	for (size_t i = 0; i < larder->fruit_count; i++) {
		const struct own_fruit *row = &larder->fruits[i];

		others = others || (row->food == food->name && strcmp(row->fruit, OWN_ANY_OTHER) == 0 &&
		                    row->status > FRUIT_ALLOWED_WITH_ACID);
	}
	if (food->own_recipe != OWN_NONE && (!condition || !others))
		bake_die(larder->files.food, larder->food_lines[index], "own recipes of it have no %s in %s",
		         condition ? "line for any other fruit" : "condition", larder->files.own);
}

void owns_read(struct larder *larder)
{
	static const char *const header[] = {
		"food",           "fruit",       "status",     "pectin",    "multiple",   "words",
		"words_of_juice", "sugar_least", "acid_least", "acid_for",  "juice_most", "butter_most",
		"condition",      "reason",      "source",     "confirmed", "note",
	};
	struct source source = source_read(larder->files.own);
	struct record record;

	header_read(&source, header, 17);
	while (row_read(&source, &record, 17)) {
		size_t status = field_word(&record, 2, "status", statuses, FRUIT_STATUS_COUNT + 1);
		size_t confirmed = field_word(&record, 15, "confirmed", confirmations, 4);

		if (status <= FRUIT_ALLOWED_WITH_ACID && confirmed > CONFIRMED_TO_ALLOW)
			bake_die(record.path, record.line, "\"%s\" never allows", record.field[15]);
		if (status == FRUIT_STATUS_COUNT)
			add_condition(larder, &record);
		else
			add_fruit(larder, &record, (enum fruit_status)status);
	}
	for (size_t i = 0; i < larder->food_count; i++)
		check_complete(larder, i);
}

void steps_read(struct larder *larder)
{
	static const char *const header[] = { "suspect_group", "step", "when", "act", "source" };
	struct source source = source_read(larder->files.step);
	struct record record;
	int last[SUSPECT_GROUP_COUNT] = { 0 };

	header_read(&source, header, 5);
	while (row_read(&source, &record, 5)) {
		struct suspect_step step = {
			.group = (enum suspect_group)field_word(&record, 0, "suspect_group", group_names,
			                                        SUSPECT_GROUP_COUNT),
			.step = field_number(&record, 1, "step", 1, 20),
			.when = field_text(&record, 2, "when", SOURCE_BYTES),
			.act = field_text(&record, 3, "act", SOURCE_BYTES),
			.source = field_text(&record, 4, "source", SOURCE_BYTES),
		};

		if (step.step != ++last[step.group])
			bake_die(record.path, record.line, "step %d of the group comes next", last[step.group]);
		larder->steps[next_row(&record, &larder->step_count, STEPS_MAX)] = step;
	}
	for (size_t i = 0; i < SUSPECT_GROUP_COUNT; i++) {
		if (last[i] == 0)
			bake_die(larder->files.step, 0, "no steps of the group \"%s\"", group_names[i]);
	}
}
